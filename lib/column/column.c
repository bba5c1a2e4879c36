/* SPDX-License-Identifier: Apache-2.0 */
/* Columns: what the caller gave is checked, then judged on the fast path if it is plain, and block by block if cells
 * can be missing, have 64 bits, or a pressure or a day of their own. */
#include "column/check.h"
#include "column/fine.h"
#include "column/kernel.h"
#include "column/plan.h"
#include "core/fault.h"

static bool is_plain(const rodt_column_in *in)
{
    return in->released != NULL && in->applied != NULL && in->psi == NULL && in->date == NULL &&
           in->released_valid.bits == NULL && in->applied_valid.bits == NULL && in->chamber_valid.bits == NULL &&
           in->row_valid.bits == NULL;
}

static void fill_parts(const int32_t *stroke, size_t rows, int64_t *parts)
{
    for (size_t i = 0; i < rows; i++)
        parts[i] = stroke[i] == RODT_COLUMN_NO_STROKE ? RODT_COLUMN_NO_STROKE : stroke[i] * FINE_PER_UNIT;
}

rodt_status rodt_column_plan_judge(const rodt_column_plan *plan, const rodt_column_in *in, size_t rows,
                                   const rodt_column_out *out, rodt_error *error)
{
    if (plan == NULL || in == NULL || out == NULL)
        return rodti_field_error(error, "", "a plan, columns and room for the answers are needed");
    rodt_status status = rodti_column_check(in, rows, out, error);
    if (status != RODT_OK)
        return status;
    if (plan->steps <= 1 && is_plain(in))
        rodti_column_judge_plain(plan, in, rows, out);
    else
        rodti_column_judge_blocks(plan, in, rows, out);
    if (out->stroke_parts != NULL)
        fill_parts(out->stroke, rows, out->stroke_parts);
    return RODT_OK;
}
