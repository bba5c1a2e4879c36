/* SPDX-License-Identifier: Apache-2.0 */
/* Aggregates: the wheel ends of a vehicle counted by the roadside criterion. Threads count apart, and add up. */
#include "extension.h"

#include <string.h>

typedef struct count_function {
    const char *name;
    void (*put)(const result_texts *to, idx_t row, const rodt_count *count);
} count_function;

static void put_outcome(const result_texts *to, idx_t row, const rodt_count *count)
{
    put_constant(to, row, rodt_outcome_name((rodt_outcome)count->outcome));
}

static void put_defective(const result_texts *to, idx_t row, const rodt_count *count)
{
    put_exact(to, row, count->defective.num, count->defective.den);
}

static void put_share(const result_texts *to, idx_t row, const rodt_count *count)
{
    put_exact(to, row, count->share.num, count->share.den);
}

static void put_count(const result_texts *to, idx_t row, const rodt_count *count)
{
    char text[RODT_SENTENCE_SIZE] = "";
    (void)rodt_count_format(count, text, sizeof text, NULL); /* the room is always enough */
    put_text(to, row, text, strlen(text));
}

static const count_function count_functions[] = {{"rodt_outcome", put_outcome},
                                                 {"rodt_defective", put_defective},
                                                 {"rodt_share", put_share},
                                                 {"rodt_count", put_count}};

/* --- What DuckDB calls --------------------------------------------------------------------------------- */

static idx_t size_of_state(duckdb_function_info info)
{
    (void)info;
    return sizeof(rodt_tally);
}

/* A state is the memory that the pointer points to. */
static rodt_tally *tally_of(duckdb_aggregate_state state) { return (rodt_tally *)(void *)state; }

static void init_state(duckdb_function_info info, duckdb_aggregate_state state)
{
    (void)info;
    memset(tally_of(state), 0, sizeof(rodt_tally));
}

/* NULL = done, else what is wrong. */
static const char *add_rows(worker *of, duckdb_aggregate_state *states)
{
    rodt_error error;
    for (idx_t row = 0; row < of->rows; row++) {
        rodt_finding finding;
        if (!judge_defect(of, row, &finding))
            return of->said;
        if (rodt_tally_add(tally_of(states[row]), &finding, &error) != RODT_OK)
            return "these are more brakes than any vehicle has";
    }
    return NULL;
}

static void update(duckdb_function_info info, duckdb_data_chunk chunk, duckdb_aggregate_state *states)
{
    const count_function *function = duckdb_aggregate_function_get_extra_info(info);
    worker *of = take_worker();
    if (of == NULL) {
        duckdb_aggregate_function_set_error(info, rodt_status_text(RODT_E_MEMORY));
        return;
    }
    const char *wrong = judge_chunk(of, function->name, chunk) ? add_rows(of, states) : of->said;
    if (wrong != NULL)
        duckdb_aggregate_function_set_error(info, wrong);
    give_worker(of);
}

static void combine(duckdb_function_info info, duckdb_aggregate_state *sources, duckdb_aggregate_state *targets,
                    idx_t count)
{
    for (idx_t i = 0; i < count; i++) {
        const rodt_tally *from = tally_of(sources[i]);
        rodt_tally *to = tally_of(targets[i]);
        if (from->brakes > RODT_BRAKES_MAX - to->brakes) {
            duckdb_aggregate_function_set_error(info, "these are more brakes than any vehicle has");
            return;
        }
        to->brakes += from->brakes;
        to->full += from->full;
        to->half += from->half;
        to->unknown += from->unknown;
        to->inoperative += from->inoperative;
    }
}

static void finalize(duckdb_function_info info, duckdb_aggregate_state *states, duckdb_vector vector, idx_t count,
                     idx_t offset)
{
    const count_function *function = duckdb_aggregate_function_get_extra_info(info);
    const result_texts to = open_texts(vector);
    for (idx_t i = 0; i < count; i++) {
        rodt_count counted;
        rodt_error error;
        if (rodt_tally_judge(tally_of(states[i]), 0, &counted, &error) == RODT_OK)
            function->put(&to, offset + i, &counted);
        else
            duckdb_aggregate_function_set_error(info, error.text);
    }
}

/* --- All of them --------------------------------------------------------------------------------------- */

static bool add_function(duckdb_aggregate_function_set set, const count_function *of, int count,
                         duckdb_logical_type any, duckdb_logical_type text)
{
    duckdb_aggregate_function function = duckdb_create_aggregate_function();
    duckdb_aggregate_function_set_name(function, of->name);
    for (int i = 0; i < count; i++)
        duckdb_aggregate_function_add_parameter(function, any);
    duckdb_aggregate_function_set_return_type(function, text);
    duckdb_aggregate_function_set_special_handling(function);
    duckdb_aggregate_function_set_extra_info(function, (void *)(uintptr_t)of, NULL);
    duckdb_aggregate_function_set_functions(function, size_of_state, init_state, update, combine, finalize);
    const bool added = duckdb_add_aggregate_function_to_set(set, function) == DuckDBSuccess;
    duckdb_destroy_aggregate_function(&function);
    return added;
}

static bool register_count(duckdb_connection connection, const count_function *of)
{
    duckdb_aggregate_function_set set = duckdb_create_aggregate_function_set(of->name);
    duckdb_logical_type any = duckdb_create_logical_type(DUCKDB_TYPE_ANY);
    duckdb_logical_type text = duckdb_create_logical_type(DUCKDB_TYPE_VARCHAR);
    bool added = true;
    for (int count = RODT_FIELD_NEEDED; count <= SQL_ARGUMENTS && added; count++)
        added = add_function(set, of, count, any, text);
    added = added && duckdb_register_aggregate_function_set(connection, set) == DuckDBSuccess;
    duckdb_destroy_logical_type(&any);
    duckdb_destroy_logical_type(&text);
    duckdb_destroy_aggregate_function_set(&set);
    return added;
}

bool register_vehicles(duckdb_connection connection)
{
    bool done = true;
    for (size_t i = 0; i < sizeof count_functions / sizeof *count_functions; i++)
        done = done && register_count(connection, &count_functions[i]);
    return done;
}
