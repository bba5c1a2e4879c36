/* SPDX-License-Identifier: Apache-2.0 */
/* Columns: what the caller gave is checked, then judged on the fast path if it is plain, and block by block if cells
 * can be missing, have 64 bits, or a pressure or a day of their own. */
#include "column/kernel.h"
#include "core/common.h"

/* --- Arguments --------------------------------------------------------------------------------------- */

typedef struct span {
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

bool rodti_column_out_is_apart(const rodt_column_out *out, size_t rows)
{
    const span all[] = {{out->stroke, 4}, {out->verdict, 1}, {out->reasons, 8}, {out->flags, 1}};
    if (rows > SIZE_MAX / 16)
        return false;
    for (size_t i = 0; i < COUNT_OF(all); i++)
        for (size_t k = i + 1; k < COUNT_OF(all); k++)
            if (overlap(all[i], all[k], rows))
                return false;
    return true;
}

/* Columns of answers may overlap nothing; columns that are only read may overlap each other. */
static bool are_apart(const rodt_column_plan *plan, const rodt_column_in *in, size_t rows, const rodt_column_out *out)
{
    const span all[] = {{out->stroke, 4},    {out->verdict, 1},     {out->reasons, 8},    {out->flags, 1},
                        {in->released, 4},   {in->applied, 4},      {in->released64, 8},  {in->applied64, 8},
                        {in->chamber, 1},    {in->pressure, 4},     {in->day, 4}};
    for (size_t i = 0; i < 4; i++) {
        uintptr_t start = (uintptr_t)all[i].start;
        uintptr_t of_plan = (uintptr_t)plan;
        if (start < of_plan + sizeof *plan && of_plan < start + all[i].width * rows)
            return false;
        for (size_t k = i + 1; k < COUNT_OF(all); k++) {
            if (overlap(all[i], all[k], rows))
                return false;
        }
    }
    return true;
}

static bool is_sound(const rodt_column_plan *plan, const rodt_column_in *in, size_t rows, const rodt_column_out *out)
{
    if (plan == NULL || in == NULL || out == NULL || plan->codes < 2)
        return false;
    if ((in->released != NULL) == (in->released64 != NULL) || (in->applied != NULL) == (in->applied64 != NULL))
        return false;
    if (in->chamber == NULL || out->stroke == NULL || out->verdict == NULL || out->reasons == NULL)
        return false;
    return rows <= SIZE_MAX / 16 && are_apart(plan, in, rows, out);
}

/* --- The whole --------------------------------------------------------------------------------------- */

static bool is_plain(const rodt_column_in *in)
{
    return in->released != NULL && in->applied != NULL && in->pressure == NULL && in->day == NULL &&
           in->released_valid.bits == NULL && in->applied_valid.bits == NULL && in->chamber_valid.bits == NULL &&
           in->row_valid.bits == NULL;
}

rodt_status rodt_column_plan_judge(const rodt_column_plan *plan, const rodt_column_in *in, size_t rows,
                              const rodt_column_out *out)
{
    if (!is_sound(plan, in, rows, out))
        return RODT_E_ARGUMENT;
    if (plan->steps <= 1 && is_plain(in))
        rodti_column_judge_plain(plan, in, rows, out);
    else
        rodti_column_judge_blocks(plan, in, rows, out);
    return RODT_OK;
}
