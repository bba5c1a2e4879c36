/* SPDX-License-Identifier: Apache-2.0 */
/* Functions of a wheel end: each judges a chunk, and fills a vector, or a struct of vectors. */
#include "extension.h"

#include <string.h>

/* --- Parts of a finding -------------------------------------------------------------------------------- */

/* Fills a vector from the answers of a chunk. False: of->said says why. */
typedef bool fill_part(worker *of, duckdb_vector vector);

/* ENUMs have the numbers of the library. */
static bool fill_verdict(worker *of, duckdb_vector vector)
{
    memcpy(duckdb_vector_get_data(vector), of->out.verdict, of->rows);
    return true;
}

/* Then there is no stroke, and no margin. */
#define NO_STROKE_REASONS \
    (RODT_REASON_BIT(RODT_REASON_RELEASED_MISSING) | RODT_REASON_BIT(RODT_REASON_APPLIED_MISSING) | \
     RODT_REASON_BIT(RODT_REASON_RELEASED_UNREADABLE) | RODT_REASON_BIT(RODT_REASON_APPLIED_UNREADABLE))

/* The part of a finding that columns do not hold: a stroke or a limit that is no whole number of their units. */
static bool fill_exact(worker *of, const result_texts *to, idx_t row, size_t offset)
{
    const judged_row *judged = judge_row(of, row);
    rodt_length part;
    if (judged == NULL)
        return false;
    memcpy(&part, (const char *)&judged->finding + offset, sizeof part);
    put_exact(to, row, part.num, part.den);
    return true;
}

static bool fill_stroke(worker *of, duckdb_vector vector)
{
    const result_texts to = open_texts(vector);
    for (idx_t row = 0; row < of->rows; row++) {
        if (of->out.stroke[row] != RODT_COLUMN_NO_STROKE)
            put_units(of, &to, row, of->out.stroke[row]);
        else if (of->out.parts[row] != RODT_COLUMN_NO_STROKE)
            put_parts(&to, row, of->out.parts[row]);
        else if ((of->out.reasons[row] & NO_STROKE_REASONS) != 0)
            put_null(&to, row);
        else if (!fill_exact(of, &to, row, offsetof(rodt_finding, applied_stroke)))
            return false;
    }
    return true;
}

static bool fill_limit(worker *of, duckdb_vector vector)
{
    const result_texts to = open_texts(vector);
    for (idx_t row = 0; row < of->rows; row++) {
        if (of->out.limit[row] != RODT_COLUMN_NO_LIMIT)
            put_units(of, &to, row, of->out.limit[row]);
        else if (!fill_exact(of, &to, row, offsetof(rodt_finding, limit)))
            return false;
    }
    return true;
}

#define PARTS_PER_UNIT (RODT_COLUMN_PARTS_PER_INCH / RODT_COLUMN_PER_INCH)

static bool fill_margin(worker *of, duckdb_vector vector)
{
    const result_texts to = open_texts(vector);
    for (idx_t row = 0; row < of->rows; row++) {
        const int32_t stroke = of->out.stroke[row], limit = of->out.limit[row];
        if (stroke != RODT_COLUMN_NO_STROKE && limit != RODT_COLUMN_NO_LIMIT)
            put_units(of, &to, row, limit - stroke);
        else if (of->out.parts[row] != RODT_COLUMN_NO_STROKE && limit != RODT_COLUMN_NO_LIMIT)
            put_parts(&to, row, limit * PARTS_PER_UNIT - of->out.parts[row]);
        else if ((of->out.reasons[row] & NO_STROKE_REASONS) != 0)
            put_null(&to, row);
        else if (!fill_exact(of, &to, row, offsetof(rodt_finding, margin)))
            return false;
    }
    return true;
}

static bool fill_reasons(worker *of, duckdb_vector vector)
{
    const result_texts to = open_texts(vector);
    for (idx_t row = 0; row < of->rows; row++)
        put_reasons(&to, row, of->out.reasons[row]);
    return true;
}

static bool fill_defect(worker *of, duckdb_vector vector)
{
    uint8_t *defects = duckdb_vector_get_data(vector);
    rodt_finding finding;
    for (idx_t row = 0; row < of->rows; row++) {
        if (!judge_defect(of, row, &finding))
            return false;
        defects[row] = (uint8_t)rodt_finding_defect(&finding);
    }
    return true;
}

/* --- What could not be read ---------------------------------------------------------------------------- */

static void put_status(const result_texts *to, idx_t row, const rodt_error *error)
{
    put_constant(to, row, rodt_status_name((rodt_status)error->status));
}

static void put_field(const result_texts *to, idx_t row, const rodt_error *error)
{
    put_text(to, row, error->field, strlen(error->field));
}

static void put_sentence(const result_texts *to, idx_t row, const rodt_error *error)
{
    put_text(to, row, error->text, strlen(error->text));
}

/* A row without such a reason has nothing that is absent or cannot be read. */
static bool fill_error(worker *of, duckdb_vector vector,
                       void (*put)(const result_texts *to, idx_t row, const rodt_error *error))
{
    const result_texts to = open_texts(vector);
    const uint64_t read = RODT_REASON_BIT(RODT_REASON_CHAMBER_MISSING) - 1;
    const rodt_error none = {0};
    for (idx_t row = 0; row < of->rows; row++) {
        const bool unread = (of->out.reasons[row] & ~read) != 0;
        const judged_row *judged = unread ? judge_row(of, row) : NULL;
        if (unread && judged == NULL)
            return false;
        put(&to, row, unread ? &judged->error : &none);
    }
    return true;
}

static bool fill_error_status(worker *of, duckdb_vector vector) { return fill_error(of, vector, put_status); }
static bool fill_error_field(worker *of, duckdb_vector vector) { return fill_error(of, vector, put_field); }
static bool fill_error_text(worker *of, duckdb_vector vector) { return fill_error(of, vector, put_sentence); }

/* --- Types --------------------------------------------------------------------------------------------- */

typedef duckdb_logical_type make_type(void);

static duckdb_logical_type text_type(void) { return duckdb_create_logical_type(DUCKDB_TYPE_VARCHAR); }

/* A byte a row, and a query groups by it without looking at texts. */
static duckdb_logical_type verdict_type(void)
{
    const char *words[RODT_VERDICT_END];
    for (int verdict = 0; verdict < RODT_VERDICT_END; verdict++)
        words[verdict] = rodt_verdict_name((rodt_verdict)verdict);
    return duckdb_create_enum_type(words, RODT_VERDICT_END);
}

static duckdb_logical_type defect_type(void)
{
    const char *words[RODT_DEFECT_END];
    for (int defect = 0; defect < RODT_DEFECT_END; defect++)
        words[defect] = rodt_defect_name((rodt_defect)defect);
    return duckdb_create_enum_type(words, RODT_DEFECT_END);
}

/* --- Functions ----------------------------------------------------------------------------------------- */

typedef struct part {
    const char *name;     /* in the struct */
    const char *function; /* NULL = in the struct alone */
    fill_part *fill;
    make_type *type;
} part;

static const part parts[] = {{"verdict", "rodt_verdict", fill_verdict, verdict_type},
                             {"stroke", "rodt_stroke", fill_stroke, text_type},
                             {"limit", "rodt_limit", fill_limit, text_type},
                             {"margin", "rodt_margin", fill_margin, text_type},
                             {"reasons", "rodt_reasons", fill_reasons, text_type},
                             {"defect", "rodt_defect", fill_defect, defect_type},
                             {"error_status", NULL, fill_error_status, text_type},
                             {"error_field", NULL, fill_error_field, text_type},
                             {"error_text", NULL, fill_error_text, text_type}};

#define PARTS (sizeof parts / sizeof *parts)

static bool fill_struct(worker *of, duckdb_vector vector)
{
    for (size_t i = 0; i < PARTS; i++) {
        if (!parts[i].fill(of, duckdb_struct_vector_get_child(vector, i)))
            return false;
    }
    return true;
}

static duckdb_logical_type struct_type(void)
{
    duckdb_logical_type types[PARTS];
    const char *names[PARTS];
    for (size_t i = 0; i < PARTS; i++) {
        names[i] = parts[i].name;
        types[i] = parts[i].type();
    }
    duckdb_logical_type made = duckdb_create_struct_type(types, names, PARTS);
    for (size_t i = 0; i < PARTS; i++)
        duckdb_destroy_logical_type(&types[i]);
    return made;
}

static const part whole = {"", "rodt_finding", fill_struct, struct_type};

static void call_part(duckdb_function_info info, duckdb_data_chunk chunk, duckdb_vector vector)
{
    const part *of = duckdb_scalar_function_get_extra_info(info);
    worker *judge = take_worker();
    if (judge == NULL) {
        duckdb_scalar_function_set_error(info, rodt_status_text(RODT_E_MEMORY));
        return;
    }
    if (!judge_chunk(judge, of->function, chunk) || !of->fill(judge, vector))
        duckdb_scalar_function_set_error(info, judge->said);
    give_worker(judge);
}

/* One function for each number of arguments, so that DuckDB itself refuses others. NULL is an argument like others. */
static bool register_part(duckdb_connection connection, const part *of)
{
    duckdb_logical_type result = of->type();
    duckdb_scalar_function_set set = duckdb_create_scalar_function_set(of->function);
    duckdb_logical_type any = duckdb_create_logical_type(DUCKDB_TYPE_ANY);
    bool added = true;
    for (int count = RODT_FIELD_NEEDED; count <= SQL_ARGUMENTS && added; count++) {
        duckdb_scalar_function function = duckdb_create_scalar_function();
        duckdb_scalar_function_set_name(function, of->function);
        for (int i = 0; i < count; i++)
            duckdb_scalar_function_add_parameter(function, any);
        duckdb_scalar_function_set_return_type(function, result);
        duckdb_scalar_function_set_special_handling(function);
        duckdb_scalar_function_set_extra_info(function, (void *)(uintptr_t)of, NULL);
        duckdb_scalar_function_set_function(function, call_part);
        added = duckdb_add_scalar_function_to_set(set, function) == DuckDBSuccess;
        duckdb_destroy_scalar_function(&function);
    }
    added = added && duckdb_register_scalar_function_set(connection, set) == DuckDBSuccess;
    duckdb_destroy_logical_type(&result);
    duckdb_destroy_logical_type(&any);
    duckdb_destroy_scalar_function_set(&set);
    return added;
}

bool register_functions(duckdb_connection connection)
{
    bool done = register_part(connection, &whole);
    for (size_t i = 0; i < PARTS; i++)
        done = done && (parts[i].function == NULL || register_part(connection, &parts[i]));
    return done;
}
