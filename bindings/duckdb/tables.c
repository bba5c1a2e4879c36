/* SPDX-License-Identifier: Apache-2.0 */
/* A table without a database: rodt_limits() has the rows of every rule set. */
#include "extension.h"

#include <string.h>

static const char *const columns[] = {"rules", "family", "size", "stroke_class", "rated_stroke", "stroke_limit",
                                      "from_day", "until_day", "source", "evidence"};
#define COLUMNS (sizeof columns / sizeof *columns)

/* Where a query is. */
typedef struct place {
    size_t rules, row;
} place;

static void bind(duckdb_bind_info info)
{
    duckdb_logical_type text = duckdb_create_logical_type(DUCKDB_TYPE_VARCHAR);
    for (size_t i = 0; i < COLUMNS; i++)
        duckdb_bind_add_result_column(info, columns[i], text);
    duckdb_destroy_logical_type(&text);
}

static void init(duckdb_init_info info)
{
    place *at = duckdb_malloc(sizeof *at);
    if (at == NULL) {
        duckdb_init_set_error(info, rodt_status_text(RODT_E_MEMORY));
        return;
    }
    memset(at, 0, sizeof *at);
    duckdb_init_set_init_data(info, at, duckdb_free);
    duckdb_init_set_max_threads(info, 1);
}

static void put_day(const result_texts *to, idx_t row, rodt_date day)
{
    char text[RODT_DATE_TEXT_SIZE] = "";
    (void)rodt_date_format(day, text, sizeof text, NULL); /* no day has no text */
    put_text(to, row, text, strlen(text));
}

static void put_source(const result_texts *to, idx_t row, const rodt_source *source)
{
    char text[RODT_SOURCE_TEXT_SIZE] = "";
    if (source != NULL)
        (void)rodt_source_format(source, text, sizeof text, NULL); /* the room is always enough */
    put_text(to, row, text, strlen(text));
}

static void put_limit(const result_texts to[COLUMNS], idx_t at, const rodt_rules *rules, const rodt_limit *row)
{
    const char *id = rodt_rules_id(rules);
    put_text(&to[0], at, id, strlen(id));
    put_constant(&to[1], at, rodt_family_name((rodt_family)row->family));
    put_text(&to[2], at, row->size, strlen(row->size));
    put_constant(&to[3], at, rodt_stroke_class_name((rodt_stroke_class)row->stroke_class));
    put_exact(&to[4], at, row->rated_stroke.num, row->rated_stroke.den);
    put_exact(&to[5], at, row->limit.num, row->limit.den);
    put_day(&to[6], at, row->from);
    put_day(&to[7], at, row->until);
    put_source(&to[8], at, row->source);
    put_constant(&to[9], at, rodt_evidence_name((rodt_evidence)row->evidence));
}

static void fill(duckdb_function_info info, duckdb_data_chunk chunk)
{
    place *at = duckdb_function_get_init_data(info);
    result_texts to[COLUMNS];
    idx_t rows = 0;
    for (size_t i = 0; i < COLUMNS; i++)
        to[i] = open_texts(duckdb_data_chunk_get_vector(chunk, i));
    while (rows < duckdb_vector_size() && at->rules < rodt_rules_count()) {
        const rodt_rules *rules = rodt_rules_at(at->rules);
        if (at->row < rodt_rules_limit_count(rules)) {
            put_limit(to, rows++, rules, rodt_rules_limit_at(rules, at->row++));
        } else {
            at->rules++;
            at->row = 0;
        }
    }
    duckdb_data_chunk_set_size(chunk, rows);
}

bool register_tables(duckdb_connection connection)
{
    duckdb_table_function function = duckdb_create_table_function();
    duckdb_table_function_set_name(function, "rodt_limits");
    duckdb_table_function_set_bind(function, bind);
    duckdb_table_function_set_init(function, init);
    duckdb_table_function_set_function(function, fill);
    const bool done = duckdb_register_table_function(connection, function) == DuckDBSuccess;
    duckdb_destroy_table_function(&function);
    return done;
}
