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

/* --- As they lie in memory ------------------------------------------------------------------------------ */

/* Bytes of a number or a day; 0 = it is neither. */
static uint32_t width_of_type(duckdb_type type)
{
    switch ((int)type) {
    case DUCKDB_TYPE_TINYINT:
    case DUCKDB_TYPE_UTINYINT: return 1;
    case DUCKDB_TYPE_SMALLINT:
    case DUCKDB_TYPE_USMALLINT: return 2;
    case DUCKDB_TYPE_INTEGER:
    case DUCKDB_TYPE_UINTEGER:
    case DUCKDB_TYPE_DATE: return 4;
    case DUCKDB_TYPE_BIGINT:
    case DUCKDB_TYPE_UBIGINT: return 8;
    default: return 0;
    }
}

/* Of rows that are NULL, too: what they have for a length only takes the longer way. */
static bool all_inline(const duckdb_string_t *text, idx_t rows)
{
    uint32_t longest = 0;
    for (idx_t row = 0; row < rows; row++)
        longest = text[row].value.inlined.length > longest ? text[row].value.inlined.length : longest;
    return longest <= TEXT_INLINE;
}

/* NULL in every row. */
static bool is_empty(const raw_argument *of, idx_t rows)
{
    if (of->type == DUCKDB_TYPE_SQLNULL)
        return true;
    for (idx_t word = 0; of->validity != NULL && word < (rows + 63) / 64; word++) {
        if (of->validity[word] != 0)
            return false;
    }
    return of->validity != NULL;
}

static raw_argument look_at(duckdb_vector vector, idx_t rows)
{
    duckdb_logical_type type = duckdb_vector_get_column_type(vector);
    raw_argument of = {.data = duckdb_vector_get_data(vector), .validity = duckdb_vector_get_validity(vector),
                       .type = duckdb_get_type_id(type)};
    of.is_empty = is_empty(&of, rows);
    if (of.is_empty) {
        of.type = DUCKDB_TYPE_SQLNULL; /* of whatever type */
    } else if (of.type == DUCKDB_TYPE_VARCHAR) {
        of.width = sizeof(duckdb_string_t);
        of.is_elsewhere = !all_inline(of.data, rows);
    } else if (of.type == DUCKDB_TYPE_DECIMAL) {
        of.digits = duckdb_decimal_width(type);
        of.scale = duckdb_decimal_scale(type);
        of.stored_type = duckdb_decimal_internal_type(type);
        of.width = width_of_type(of.stored_type);
    } else {
        of.width = width_of_type(of.type);
    }
    duckdb_destroy_logical_type(&type);
    return of;
}

/* --- By name -------------------------------------------------------------------------------------------- */

/* In SQL a name has no capitals. */
static bool is_name(const char *a, const char *b)
{
    for (; *a != '\0' && (*a | 0x20) == (*b | 0x20); a++)
        b++;
    return *a == *b;
}

/* The argument of a name; SQL_ARGUMENTS = there is none. */
static int find_argument(const char *name)
{
    int number = 0;
    while (number < SQL_ARGUMENTS && !is_name(sql_argument_name(number), name))
        number++;
    return number;
}

/* Where a struct is NULL, DuckDB has NULL in its members, too. */
static const char *look_at_member(const char *function, duckdb_vector vector, idx_t member, const char *name,
                                  arguments *out, char said[SAID_SIZE])
{
    const int number = find_argument(name);
    if (number == SQL_ARGUMENTS || out->is_given[number]) {
        const bool is_unknown = number == SQL_ARGUMENTS;
        snprintf(said, SAID_SIZE, "%s: %s \"%.*s\"%s", function, is_unknown ? "there is no argument" : "the argument",
                 shown_bytes(name, strlen(name)), name, is_unknown ? "" : " is given twice");
        return said;
    }
    out->is_given[number] = true;
    out->raw[number] = look_at(duckdb_struct_vector_get_child(vector, member), out->rows);
    return NULL;
}

/* The last argument may be a struct: its members are arguments by their names. */
static const char *look_at_members(const char *function, duckdb_vector vector, duckdb_logical_type type, int before,
                                   arguments *out, char said[SAID_SIZE])
{
    const char *wrong = NULL;
    for (int i = 0; i < SQL_ARGUMENTS; i++) {
        out->is_given[i] = i < before;
        if (i >= before)
            out->raw[i] = (raw_argument){.type = DUCKDB_TYPE_SQLNULL, .is_empty = true};
    }
    out->count = SQL_ARGUMENTS;
    for (idx_t member = 0; member < duckdb_struct_type_child_count(type) && wrong == NULL; member++) {
        char *name = duckdb_struct_type_child_name(type, member);
        wrong = look_at_member(function, vector, member, name, out, said);
        duckdb_free(name);
    }
    return wrong;
}

const char *look_at_arguments(const char *function, duckdb_data_chunk chunk, arguments *out, char said[SAID_SIZE])
{
    const char *wrong = NULL;
    out->rows = duckdb_data_chunk_get_size(chunk);
    out->count = (int)duckdb_data_chunk_get_column_count(chunk);
    const int last = out->count - 1;
    for (int i = 0; i < out->count; i++)
        out->raw[i] = look_at(duckdb_data_chunk_get_vector(chunk, (idx_t)i), out->rows);
    if (last >= RODT_FIELD_NEEDED && out->raw[last].type == DUCKDB_TYPE_STRUCT) {
        duckdb_vector vector = duckdb_data_chunk_get_vector(chunk, (idx_t)last);
        duckdb_logical_type type = duckdb_vector_get_column_type(vector);
        wrong = look_at_members(function, vector, type, last, out, said);
        duckdb_destroy_logical_type(&type);
    }
    return wrong;
}

/* --- Texts --------------------------------------------------------------------------------------------- */

/* One argument that is read. */
typedef struct argument {
    const raw_argument *raw;
    idx_t rows;
    argument_room *room;
    rodt_text_cells *cells;
} argument;

static void read_texts(const argument *from)
{
    if (!from->raw->is_elsewhere) {
        from->cells->layout = RODT_TEXT_LAYOUT_VIEWS;
        from->cells->cells = from->raw->data;
        return;
    }
    for (idx_t row = 0; row < from->rows; row++)
        from->room->span[row] = text_at(from->raw->data, row);
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
    const void *data = from->raw->data;
    const size_t size = sizeof from->room->text[0];
    for (idx_t row = 0; row < from->rows; row++) {
        char *text = from->room->text[row];
        size_t written = 0;
        if (!is_there(from->raw->validity, row))
            continue;
        if (type == DUCKDB_TYPE_DATE)
            written = write_day(((const int32_t *)data)[row], text, size);
        else if (type == DUCKDB_TYPE_UBIGINT)
            written = (size_t)snprintf(text, size, "%" PRIu64, ((const uint64_t *)data)[row]);
        else
            written = write_decimal(integer_at(data, type, row), scale, text, size);
        from->room->span[row] = (rodt_text_span){text, written};
    }
}

/* --- One argument -------------------------------------------------------------------------------------- */

/* Why it is not read; NULL = it is. A binary fraction is only nearly what was read. */
static const char *read_typed(const argument *from)
{
    const raw_argument *raw = from->raw;
    switch ((int)raw->type) {
    case DUCKDB_TYPE_VARCHAR: read_texts(from); return NULL;
    case DUCKDB_TYPE_TINYINT:
    case DUCKDB_TYPE_SMALLINT:
    case DUCKDB_TYPE_INTEGER:
    case DUCKDB_TYPE_BIGINT:
    case DUCKDB_TYPE_UTINYINT:
    case DUCKDB_TYPE_USMALLINT:
    case DUCKDB_TYPE_UINTEGER:
    case DUCKDB_TYPE_UBIGINT:
    case DUCKDB_TYPE_DATE: read_numbers(from, raw->type, 0); return NULL;
    case DUCKDB_TYPE_DECIMAL:
        if (raw->digits > DECIMAL_DIGITS)
            return "a DECIMAL of more than 18 digits; give it as VARCHAR";
        read_numbers(from, raw->stored_type, raw->scale);
        return NULL;
    case DUCKDB_TYPE_FLOAT:
    case DUCKDB_TYPE_DOUBLE:
        return "a binary fraction, which is only nearly what was read; give it as VARCHAR or DECIMAL";
    default: return "of a type that holds no reading; give it as VARCHAR";
    }
}

/* needed: there must be a column, also of nothing. */
static const char *read_argument(const raw_argument *raw, idx_t rows, bool needed, argument_room *room,
                                 rodt_text_cells *cells)
{
    const argument from = {raw, rows, room, cells};
    memset(cells, 0, sizeof *cells);
    cells->layout = RODT_TEXT_LAYOUT_SPANS;
    cells->cells = room->span;
    cells->valid.bits = (const uint8_t *)raw->validity;
    if (!raw->is_empty)
        return read_typed(&from);
    if (needed)
        memset(room->span, 0, rows * sizeof *room->span);
    else
        cells->layout = RODT_TEXT_LAYOUT_ABSENT; /* nothing to look up */
    return NULL;
}

/* --- All of them --------------------------------------------------------------------------------------- */

static rodt_text_cells *cells_of(arguments *of, int number)
{
    const rodt_field field = sql_argument_field(number);
    return field == RODT_FIELD_NONE ? &of->rules : &of->columns.field[field];
}

static const char *read_into(const char *function, const char *name, int number, arguments *of,
                             rodt_text_cells *cells, char said[SAID_SIZE])
{
    if (of->room[number] == NULL)
        of->room[number] = malloc(sizeof *of->room[number]);
    if (of->room[number] == NULL) {
        snprintf(said, SAID_SIZE, "%s: %s", function, rodt_status_text(RODT_E_MEMORY));
        return said;
    }
    const char *wrong = read_argument(&of->raw[number], of->rows, number < RODT_FIELD_NEEDED, of->room[number], cells);
    if (wrong == NULL)
        return NULL;
    snprintf(said, SAID_SIZE, "%s: %s is %s", function, name, wrong);
    return said;
}

const char *read_text_argument(const char *function, int number, arguments *of, rodt_text_cells *cells,
                               char said[SAID_SIZE])
{
    return read_into(function, number == 0 ? "the text" : "the unit", number, of, cells, said);
}

const char *read_arguments(const char *function, arguments *of, char said[SAID_SIZE])
{
    const char *wrong = NULL;
    for (int i = of->count; i < SQL_ARGUMENTS; i++)
        memset(cells_of(of, i), 0, sizeof(rodt_text_cells));
    for (int i = 0; i < of->count && wrong == NULL; i++)
        wrong = read_into(function, sql_argument_name(i), i, of, cells_of(of, i), said);
    return wrong;
}

void read_again(arguments *of)
{
    for (int i = 0; i < of->count; i++) {
        rodt_text_cells *cells = cells_of(of, i);
        cells->valid.bits = (const uint8_t *)of->raw[i].validity;
        if (cells->layout == RODT_TEXT_LAYOUT_VIEWS)
            cells->cells = of->raw[i].data;
    }
}
