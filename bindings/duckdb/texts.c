/* SPDX-License-Identifier: Apache-2.0 */
/* Functions of single texts. */
#include "extension.h"

#include <string.h>

#define TEXT_SIZE RODT_LENGTH_TEXT_SIZE

_Static_assert(TEXT_SIZE >= SQL_EXACT_SIZE, "an exact number fits");

/* The texts of a row, by argument. False: the result is NULL. */
typedef bool write_text(const rodt_text_span *cell, int count, char text[TEXT_SIZE]);

/* A fraction whose blank may be lost has no second value here, so the strict reader. */
static bool write_length(const rodt_text_span *cell, int count, char text[TEXT_SIZE])
{
    rodt_style style;
    rodt_length length;
    RODT_ENUM32(rodt_unit) written;
    memset(&style, 0, sizeof style);
    if (count > 1 && rodt_unit_parse_n(cell[1].text, cell[1].size, &style.unit, NULL) != RODT_OK)
        return false;
    if (rodt_length_parse_strict_n(cell[0].text, cell[0].size, &style, &length, &written, NULL) != RODT_OK)
        return false;
    return sql_exact_write(length.num, length.den, text) > 0;
}

static bool write_date(const rodt_text_span *cell, int count, char text[TEXT_SIZE])
{
    rodt_date day;
    (void)count;
    return rodt_date_parse_n(cell->text, cell->size, RODT_DATE_ORDER_UNKNOWN, &day, NULL) == RODT_OK &&
           rodt_date_format(day, text, TEXT_SIZE, NULL) == RODT_OK;
}

/* As a tape is read: "2 9/16". */
static bool write_mixed(const rodt_text_span *cell, int count, char text[TEXT_SIZE])
{
    rodt_ratio number;
    (void)count;
    if (!sql_exact_read(cell->text, cell->size, &number))
        return false;
    const rodt_length length = {number.num, number.den};
    return rodt_length_format(length, text, TEXT_SIZE, NULL) == RODT_OK;
}

static const struct text_function {
    const char *name;
    int count;
    write_text *write;
} functions[] = {{"rodt_length", 1, write_length},
                 {"rodt_length", 2, write_length},
                 {"rodt_date", 1, write_date},
                 {"rodt_length_format", 1, write_mixed}};

/* --- Chunks -------------------------------------------------------------------------------------------- */

static void fill(const struct text_function *function, const rodt_text_cells cells[2], idx_t rows, duckdb_vector vector)
{
    const result_texts to = open_texts(vector);
    for (idx_t row = 0; row < rows; row++) {
        char text[TEXT_SIZE];
        rodt_text_span cell[2];
        bool given = true;
        for (int i = 0; i < function->count; i++) {
            cell[i] = rodt_text_cells_at(&cells[i], row);
            given = given && cell[i].text != NULL;
        }
        if (given && function->write(cell, function->count, text))
            put_text(&to, row, text, strlen(text));
        else
            put_null(&to, row);
    }
}

static void call_text(duckdb_function_info info, duckdb_data_chunk chunk, duckdb_vector vector)
{
    const struct text_function *function = duckdb_scalar_function_get_extra_info(info);
    const idx_t rows = duckdb_data_chunk_get_size(chunk);
    rodt_text_cells cells[2];
    worker *of = take_worker();
    bool read = of != NULL;
    if (of == NULL)
        duckdb_scalar_function_set_error(info, rodt_status_text(RODT_E_MEMORY));
    else
        (void)look_at_arguments(function->name, chunk, &of->texts_in, of->said); /* too few for names */
    for (int i = 0; i < function->count && read; i++) {
        read = read_text_argument(function->name, i, &of->texts_in, &cells[i], of->said) == NULL;
        if (!read)
            duckdb_scalar_function_set_error(info, of->said);
    }
    if (read)
        fill(function, cells, rows, vector);
    if (of != NULL)
        give_worker(of);
}

/* --- A decimal ----------------------------------------------------------------------------------------- */

/* DECIMAL(18, 9), which is a whole number of 64 bits. */
#define DECIMAL_PLACES 9

/* The digits of a decimal number without its point. */
static int64_t read_digits(const char *text)
{
    int64_t number = 0;
    for (const char *at = text; *at != '\0'; at++)
        number = *at >= '0' && *at <= '9' ? number * 10 + (*at - '0') : number;
    return text[0] == '-' ? -number : number;
}

/* False: the text is no exact number, or one of more than nine digits before the point. */
static bool read_decimal(rodt_text_span cell, int64_t *number)
{
    rodt_ratio exact;
    char text[TEXT_SIZE];
    if (cell.text == NULL || !sql_exact_read(cell.text, cell.size, &exact))
        return false;
    const rodt_length length = {exact.num, exact.den};
    if (rodt_length_format_decimal(length, RODT_UNIT_IN, DECIMAL_PLACES, RODT_ROUNDING_HALF_EVEN, text, sizeof text,
                                   NULL) != RODT_OK || strlen(text) > 1 + 18 + (text[0] == '-'))
        return false;
    *number = read_digits(text);
    return true;
}

static void call_decimal(duckdb_function_info info, duckdb_data_chunk chunk, duckdb_vector vector)
{
    rodt_text_cells cells;
    worker *of = take_worker();
    duckdb_vector_ensure_validity_writable(vector);
    int64_t *numbers = duckdb_vector_get_data(vector);
    uint64_t *validity = duckdb_vector_get_validity(vector);
    if (of == NULL) {
        duckdb_scalar_function_set_error(info, rodt_status_text(RODT_E_MEMORY));
        return;
    }
    (void)look_at_arguments("rodt_decimal", chunk, &of->texts_in, of->said);
    if (read_text_argument("rodt_decimal", 0, &of->texts_in, &cells, of->said) != NULL) {
        duckdb_scalar_function_set_error(info, of->said);
    } else {
        for (idx_t row = 0; row < duckdb_data_chunk_get_size(chunk); row++) {
            if (!read_decimal(rodt_text_cells_at(&cells, row), &numbers[row]))
                duckdb_validity_set_row_invalid(validity, row);
        }
    }
    give_worker(of);
}

/* --- The edition --------------------------------------------------------------------------------------- */

static void call_edition(duckdb_function_info info, duckdb_data_chunk chunk, duckdb_vector vector)
{
    const result_texts to = open_texts(vector);
    (void)info;
    for (idx_t row = 0; row < duckdb_data_chunk_get_size(chunk); row++)
        put_constant(&to, row, rodt_tables_edition());
}

/* --- All of them --------------------------------------------------------------------------------------- */

static bool register_text(duckdb_scalar_function_set set, const struct text_function *of, duckdb_scalar_function_t call)
{
    duckdb_scalar_function function = duckdb_create_scalar_function();
    duckdb_logical_type any = duckdb_create_logical_type(DUCKDB_TYPE_ANY);
    duckdb_logical_type result = call == call_decimal ? duckdb_create_decimal_type(18, DECIMAL_PLACES)
                                                      : duckdb_create_logical_type(DUCKDB_TYPE_VARCHAR);
    for (int i = 0; i < of->count; i++)
        duckdb_scalar_function_add_parameter(function, any);
    duckdb_scalar_function_set_name(function, of->name);
    duckdb_scalar_function_set_return_type(function, result);
    duckdb_scalar_function_set_special_handling(function);
    duckdb_scalar_function_set_extra_info(function, (void *)(uintptr_t)of, NULL);
    duckdb_scalar_function_set_function(function, call);
    const bool added = duckdb_add_scalar_function_to_set(set, function) == DuckDBSuccess;
    duckdb_destroy_logical_type(&any);
    duckdb_destroy_logical_type(&result);
    duckdb_destroy_scalar_function(&function);
    return added;
}

/* Functions of one name follow each other. */
static bool register_set(duckdb_connection connection, const struct text_function *of, size_t count,
                         duckdb_scalar_function_t call)
{
    duckdb_scalar_function_set set = duckdb_create_scalar_function_set(of->name);
    bool added = true;
    for (size_t i = 0; i < count; i++)
        added = added && register_text(set, &of[i], call);
    added = added && duckdb_register_scalar_function_set(connection, set) == DuckDBSuccess;
    duckdb_destroy_scalar_function_set(&set);
    return added;
}

bool register_texts(duckdb_connection connection)
{
    static const struct text_function edition = {"rodt_tables_edition", 0, NULL}, decimal = {"rodt_decimal", 1, NULL};
    return register_set(connection, &functions[0], 2, call_text) &&
           register_set(connection, &functions[2], 1, call_text) &&
           register_set(connection, &functions[3], 1, call_text) &&
           register_set(connection, &decimal, 1, call_decimal) &&
           register_set(connection, &edition, 1, call_edition);
}
