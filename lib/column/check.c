/* SPDX-License-Identifier: Apache-2.0 */
/* Columns of a caller that can be judged: each fault is told with the name of its column. */
#include "column/check.h"

#include "core/fault.h"

#include <stdio.h>

static const char missing[] = "this column is needed";

typedef struct span {
    const char *name;
    const void *start;
    size_t width; /* bytes of one cell */
} span;

static bool overlap(span a, span b, size_t rows)
{
    uintptr_t first = (uintptr_t)a.start;
    uintptr_t second = (uintptr_t)b.start;
    if (a.start == NULL || b.start == NULL)
        return false;
    return first < second + b.width * rows && second < first + a.width * rows;
}

/* The first `written` columns may overlap nothing; those that are only read may overlap each other. One without a name
 * ends them. */
static rodt_status check_apart(const span *all, size_t written, size_t rows, rodt_error *error)
{
    char sentence[80];
    for (size_t i = 0; i < written; i++) {
        for (size_t k = i + 1; all[k].name != NULL; k++) {
            if (!overlap(all[i], all[k], rows))
                continue;
            snprintf(sentence, sizeof sentence, "this column of answers overlaps the column %s", all[k].name);
            return rodti_field_error(error, all[i].name, sentence);
        }
    }
    return RODT_OK;
}

#define WRITTEN 6

rodt_status rodti_column_check_out(const rodt_column_out *out, size_t rows, rodt_error *error)
{
    const span all[WRITTEN + 1] = {{"stroke", out->stroke, 4},
                                   {"verdict", out->verdict, 1},
                                   {"reasons", out->reasons, 8},
                                   {"flags", out->flags, 1},
                                   {"limit", out->limit, 4},
                                   {"stroke_parts", out->stroke_parts, 8}};
    for (size_t i = 0; i < 3; i++) {
        if (all[i].start == NULL)
            return rodti_field_error(error, all[i].name, missing);
    }
    if (!rodti_is_zero(out->reserved, COUNT_OF(out->reserved)))
        return rodti_field_error(error, "reserved", "the reserve of the columns of answers is zero");
    if (rows > SIZE_MAX / 16)
        return rodti_field_error(error, "", "no memory holds so many rows");
    return check_apart(all, WRITTEN, rows, error);
}

static rodt_status check_reading(const char *name, const int32_t *narrow, const int64_t *wide, rodt_error *error)
{
    if (narrow == NULL && wide == NULL)
        return rodti_field_error(error, name, missing);
    if (narrow != NULL && wide != NULL)
        return rodti_field_error(error, name, "this column is given twice, in 32 and in 64 bits");
    return RODT_OK;
}

static rodt_status check_in(const rodt_column_in *in, rodt_error *error)
{
    rodt_status status = check_reading("released", in->released, in->released64, error);
    if (status == RODT_OK)
        status = check_reading("applied", in->applied, in->applied64, error);
    if (status == RODT_OK && in->chamber == NULL)
        return rodti_field_error(error, "chamber", missing);
    if (status == RODT_OK && !rodti_is_zero(in->reserved, COUNT_OF(in->reserved)))
        return rodti_field_error(error, "reserved", "the reserve of the columns to be judged is zero");
    return status;
}

rodt_status rodti_column_check(const rodt_column_in *in, size_t rows, const rodt_column_out *out, rodt_error *error)
{
    const span all[] = {{"stroke", out->stroke, 4},   {"verdict", out->verdict, 1},    {"reasons", out->reasons, 8},
                        {"flags", out->flags, 1},     {"limit", out->limit, 4},
                        {"stroke_parts", out->stroke_parts, 8}, {"released", in->released, 4},
                        {"applied", in->applied, 4},  {"released", in->released64, 8}, {"applied", in->applied64, 8},
                        {"chamber", in->chamber, 1},  {"psi", in->psi, 4},             {"date", in->date, 4},
                        {.name = NULL}};
    rodt_status status = check_in(in, error);
    if (status == RODT_OK)
        status = rodti_column_check_out(out, rows, error);
    return status == RODT_OK ? check_apart(all, WRITTEN, rows, error) : status;
}
