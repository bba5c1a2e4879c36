/* SPDX-License-Identifier: Apache-2.0 */
/* Vectors of DuckDB as columns of texts. Short texts lie there as in Arrow's views, and are judged where they are. */
#include "extension.h"

#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* A mask of 64-bit words has the bytes of a bitmap of Arrow on these machines, which are all that DuckDB runs on. */
_Static_assert(__BYTE_ORDER__ == __ORDER_LITTLE_ENDIAN__, "masks are bitmaps");
_Static_assert(sizeof(duckdb_string_t) == 16, "texts are views");

#define TEXT_INLINE 12

/* Wider numbers do not fit in 64 bits. */
#define DECIMAL_DIGITS 18

static rodt_text_span text_at(const void *data, idx_t row)
{
    const duckdb_string_t *text = (const duckdb_string_t *)data + row;
    const uint32_t size = text->value.inlined.length;
    return (rodt_text_span){size <= TEXT_INLINE ? text->value.inlined.inlined : text->value.pointer.ptr, size};
}

static bool is_there(const uint64_t *validity, idx_t row)
{
    return validity == NULL || (validity[row / 64] >> row % 64 & 1) != 0;
}

/* --- Texts --------------------------------------------------------------------------------------------- */

typedef struct argument {
    const void *data;
    const uint64_t *validity;
    duckdb_logical_type type;
    idx_t rows;
    argument_room *room;
    rodt_text_cells *cells;
} argument;

/* Of rows that are NULL, too: what they have for a length only takes the longer way. */
static bool all_inline(const duckdb_string_t *text, idx_t rows)
{
    uint32_t longest = 0;
    for (idx_t row = 0; row < rows; row++)
        longest = text[row].value.inlined.length > longest ? text[row].value.inlined.length : longest;
    return longest <= TEXT_INLINE;
}

static void read_texts(const argument *from)
{
    if (all_inline(from->data, from->rows)) {
        from->cells->layout = RODT_TEXT_LAYOUT_VIEWS;
        from->cells->cells = from->data;
        return;
    }
    for (idx_t row = 0; row < from->rows; row++)
        from->room->span[row] = text_at(from->data, row);
}

/* --- Numbers and days ---------------------------------------------------------------------------------- */

static int64_t integer_at(const void *data, duckdb_type type, idx_t row)
{
    switch ((int)type) {
    case DUCKDB_TYPE_TINYINT: return ((const int8_t *)data)[row];
    case DUCKDB_TYPE_SMALLINT: return ((const int16_t *)data)[row];
    case DUCKDB_TYPE_INTEGER: return ((const int32_t *)data)[row];
    case DUCKDB_TYPE_UTINYINT: return ((const uint8_t *)data)[row];
    case DUCKDB_TYPE_USMALLINT: return ((const uint16_t *)data)[row];
    case DUCKDB_TYPE_UINTEGER: return ((const uint32_t *)data)[row];
    default: return ((const int64_t *)data)[row];
    }
}

/* A number with so many digits after the point. */
static size_t write_decimal(int64_t number, unsigned scale, char *text, size_t size)
{
    uint64_t unit = 1;
    for (unsigned i = 0; i < scale; i++)
        unit *= 10;
    const uint64_t value = number < 0 ? 0 - (uint64_t)number : (uint64_t)number;
    const char *sign = number < 0 ? "-" : "";
    if (scale == 0)
        return (size_t)snprintf(text, size, "%s%" PRIu64, sign, value);
    return (size_t)snprintf(text, size, "%s%" PRIu64 ".%0*" PRIu64, sign, value / unit, (int)scale, value % unit);
}

/* A day that is none of the library's is a text that no reader takes. */
static size_t write_day(int32_t days, char *text, size_t size)
{
    rodt_date day;
    if (rodt_date_from_days(days, &day) != RODT_OK || rodt_date_format(day, text, size, NULL) != RODT_OK)
        snprintf(text, size, SQL_UNREADABLE);
    return strlen(text);
}

static void read_numbers(const argument *from, duckdb_type type, unsigned scale)
{
    const size_t size = sizeof from->room->text[0];
    for (idx_t row = 0; row < from->rows; row++) {
        char *text = from->room->text[row];
        size_t written = 0;
        if (!is_there(from->validity, row))
            continue;
        if (type == DUCKDB_TYPE_DATE)
            written = write_day(((const int32_t *)from->data)[row], text, size);
        else if (type == DUCKDB_TYPE_UBIGINT)
            written = (size_t)snprintf(text, size, "%" PRIu64, ((const uint64_t *)from->data)[row]);
        else
            written = write_decimal(integer_at(from->data, type, row), scale, text, size);
        from->room->span[row] = (rodt_text_span){text, written};
    }
}

/* --- One argument -------------------------------------------------------------------------------------- */

/* Why it is not read; NULL = it is. A binary fraction is only nearly what was read. */
static const char *read_typed(const argument *from, duckdb_type type)
{
    switch ((int)type) {
    case DUCKDB_TYPE_VARCHAR: read_texts(from); return NULL;
    case DUCKDB_TYPE_TINYINT:
    case DUCKDB_TYPE_SMALLINT:
    case DUCKDB_TYPE_INTEGER:
    case DUCKDB_TYPE_BIGINT:
    case DUCKDB_TYPE_UTINYINT:
    case DUCKDB_TYPE_USMALLINT:
    case DUCKDB_TYPE_UINTEGER:
    case DUCKDB_TYPE_UBIGINT:
    case DUCKDB_TYPE_DATE: read_numbers(from, type, 0); return NULL;
    case DUCKDB_TYPE_DECIMAL:
        if (duckdb_decimal_width(from->type) > DECIMAL_DIGITS)
            return "a DECIMAL of more than 18 digits; give it as VARCHAR";
        read_numbers(from, duckdb_decimal_internal_type(from->type), duckdb_decimal_scale(from->type));
        return NULL;
    case DUCKDB_TYPE_FLOAT:
    case DUCKDB_TYPE_DOUBLE:
        return "a binary fraction, which is only nearly what was read; give it as VARCHAR or DECIMAL";
    default: return "of a type that holds no reading; give it as VARCHAR";
    }
}

/* NULL in every row. */
static bool is_empty(const argument *from, duckdb_type type)
{
    if (type == DUCKDB_TYPE_SQLNULL)
        return true;
    for (idx_t word = 0; from->validity != NULL && word < (from->rows + 63) / 64; word++) {
        if (from->validity[word] != 0)
            return false;
    }
    return from->validity != NULL;
}

/* needed: there must be a column, also of nothing. */
static const char *read_argument(duckdb_vector vector, idx_t rows, bool needed, argument_room *room,
                                 rodt_text_cells *cells)
{
    argument from = {duckdb_vector_get_data(vector), duckdb_vector_get_validity(vector),
                     duckdb_vector_get_column_type(vector), rows, room, cells};
    const duckdb_type type = duckdb_get_type_id(from.type);
    const char *wrong = NULL;
    memset(cells, 0, sizeof *cells);
    cells->layout = RODT_TEXT_LAYOUT_SPANS;
    cells->cells = room->span;
    cells->valid.bits = (const uint8_t *)from.validity;
    if (!is_empty(&from, type))
        wrong = read_typed(&from, type);
    else if (needed)
        memset(room->span, 0, rows * sizeof *room->span);
    else
        cells->layout = RODT_TEXT_LAYOUT_ABSENT; /* nothing to look up */
    duckdb_destroy_logical_type(&from.type);
    return wrong;
}

/* --- All of them --------------------------------------------------------------------------------------- */

static rodt_text_cells *cells_of(arguments *of, int number)
{
    const rodt_field field = sql_argument_field(number);
    return field == RODT_FIELD_NONE ? &of->rules : &of->columns.field[field];
}

static const char *read_into(const char *function, const char *name, duckdb_data_chunk chunk, int number,
                             arguments *of, rodt_text_cells *cells, char said[SAID_SIZE])
{
    if (of->room[number] == NULL)
        of->room[number] = malloc(sizeof *of->room[number]);
    if (of->room[number] == NULL) {
        snprintf(said, SAID_SIZE, "%s: %s", function, rodt_status_text(RODT_E_MEMORY));
        return said;
    }
    const char *wrong = read_argument(duckdb_data_chunk_get_vector(chunk, (idx_t)number),
                                      duckdb_data_chunk_get_size(chunk), number < RODT_FIELD_NEEDED, of->room[number],
                                      cells);
    if (wrong == NULL)
        return NULL;
    snprintf(said, SAID_SIZE, "%s: %s is %s", function, name, wrong);
    return said;
}

const char *read_text_argument(const char *function, duckdb_data_chunk chunk, int number, arguments *of,
                               rodt_text_cells *cells, char said[SAID_SIZE])
{
    return read_into(function, number == 0 ? "the text" : "the unit", chunk, number, of, cells, said);
}

const char *read_arguments(const char *function, duckdb_data_chunk chunk, arguments *out, char said[SAID_SIZE])
{
    const int count = (int)duckdb_data_chunk_get_column_count(chunk);
    const char *wrong = NULL;
    for (int i = count; i < SQL_ARGUMENTS; i++)
        memset(cells_of(out, i), 0, sizeof(rodt_text_cells));
    for (int i = 0; i < count && wrong == NULL; i++)
        wrong = read_into(function, sql_argument_name(i), chunk, i, out, cells_of(out, i), said);
    return wrong;
}
