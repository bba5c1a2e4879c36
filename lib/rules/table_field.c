/* SPDX-License-Identifier: Apache-2.0 */
/* The values in the cells of a table. A figure is read as on a form, by the library's own readers. */
#include <string.h>

#include "core/always.h"
#include "core/number_parse.h"
#include "rules/table_reader.h"

static bool value_fault(table_reader *reader, size_t column, const rodt_error *error)
{
    rodti_table_value_fault(reader, column, error);
    return false;
}

bool rodti_table_length(table_reader *reader, size_t column, rodt_unit unit, rodt_length *out)
{
    const table_cell *cell = &reader->cells[column];
    rodt_style style = {.unit = unit};
    rodt_length value = {0};
    rodt_error error;
    if (cell->size > 0 && rodt_length_parse_strict_n(cell->text, cell->size, &style, &value, NULL, &error) != RODT_OK)
        return value_fault(reader, column, &error);
    *out = value;
    return true;
}

bool rodti_table_pressure(table_reader *reader, size_t column, rodt_pressure *out)
{
    const table_cell *cell = &reader->cells[column];
    rodt_pressure value = {0};
    rodt_error error;
    if (cell->size > 0 && rodt_pressure_parse_n(cell->text, cell->size, NULL, &value, NULL, &error) != RODT_OK)
        return value_fault(reader, column, &error);
    *out = value;
    return true;
}

bool rodti_table_ratio(table_reader *reader, size_t column, rodt_ratio *out)
{
    rodt_length value;
    if (!rodti_table_length(reader, column, RODT_UNIT_IN, &value))
        return false;
    *out = (rodt_ratio){value.num, value.den};
    return true;
}

bool rodti_table_number(table_reader *reader, size_t column, rodt_ratio *out)
{
    const table_cell *cell = &reader->cells[column];
    text_cursor cursor;
    number_text read = {.value = {0, 0}};
    number_problem problem;
    rodt_error error;
    rodti_number_parse_start(&cursor, cell->text, cell->size);
    if (cell->size > 0 && !rodti_number_parse(&cursor, false, &read, &problem)) {
        rodti_number_explain_error(cell->text, cell->size, false, &problem, &error);
        return value_fault(reader, column, &error);
    }
    if (read.is_too_large || cursor.code != TEXT_END) {
        rodti_table_fault(reader, column, cursor.column, RODT_E_TABLE, "expected a number and nothing more");
        return false;
    }
    *out = (rodt_ratio){read.value.num, read.value.den};
    return true;
}

bool rodti_table_date(table_reader *reader, size_t column, rodt_date *out)
{
    const table_cell *cell = &reader->cells[column];
    rodt_date value = {0};
    rodt_error error;
    if (cell->size > 0 && rodt_date_parse_iso(cell->text, &value, &error) != RODT_OK)
        return value_fault(reader, column, &error);
    *out = value;
    return true;
}

/* "standard, long or any" */
static void list_words(text_writer *list, const char *const *words, size_t count)
{
    rodti_text_begin(list);
    for (size_t i = 0; i < count; i++) {
        rodti_text_put(list, words[i]);
        rodti_text_put(list, i + 2 < count ? ", " : i + 2 == count ? " or " : "");
    }
}

static bool refuse_word(table_reader *reader, size_t column, const char *const *words, size_t count)
{
    text_writer list;
    list_words(&list, words, count);
    char shown[TABLE_SHOWN_SIZE];
    rodti_table_show(&reader->cells[column], shown);
    rodti_table_fault(reader, column, 1, RODT_E_TABLE, "expected %s, found \"%s\"", list.buffer, shown);
    return false;
}

bool rodti_table_name(table_reader *reader, size_t column, const rodt_enumeration *of, uint32_t first, uint32_t *out)
{
    const table_cell *cell = &reader->cells[column];
    const rodt_enumerator *found = rodt_enumerator_find_n(of, cell->text, cell->size);
    const char *names[32];
    size_t count = 0;
    if (cell->size == 0 || (found != NULL && found->number >= (int64_t)first)) {
        *out = cell->size == 0 ? 0 : (uint32_t)found->number;
        return true;
    }
    /* No enumeration of a table has more words. */
    for (size_t i = first; i < rodt_enumerator_count(of) && ALWAYS(count < COUNT_OF(names)); i++)
        names[count++] = rodt_enumerator_at(of, i)->word;
    return refuse_word(reader, column, names, count);
}

bool rodti_table_word(table_reader *reader, size_t column, const char *const *words, size_t count, unsigned *out)
{
    const table_cell *cell = &reader->cells[column];
    if (cell->size == 0) {
        *out = 0;
        return true;
    }
    for (size_t i = 0; i < count; i++) {
        if (strcmp(cell->text, words[i]) == 0) {
            *out = (unsigned)i;
            return true;
        }
    }
    return refuse_word(reader, column, words, count);
}
