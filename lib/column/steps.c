/* SPDX-License-Identifier: Apache-2.0 */
/* For fixed other facts the result of rodt_reading_judge is the same between two steps of the stroke. */
#include "column/steps.h"
#include "judge/judge.h"

#include <string.h>

/* The whole number that a length has reached: no stroke lies between it and the length, so the two divide strokes
 * alike. Beyond the longest stroke a step is never passed. */
static rodt_status add_step(rodt_length length, stroke_steps *found)
{
    rodt_length scaled;
    if (!rodt_length_given(length))
        return RODT_OK;
    rodt_status status = rodt_length_scale(length, (rodt_ratio){RODT_COLUMN_PER_INCH, 1}, &scaled);
    if (status != RODT_OK)
        return status;
    int64_t whole = scaled.num / scaled.den;
    int32_t step = whole < INT32_MAX ? (int32_t)whole : INT32_MAX;
    uint32_t at = 0;
    while (at < found->count && found->at[at] < step)
        at++;
    if (at < found->count && found->at[at] == step)
        return RODT_OK;
    memmove(&found->at[at + 1], &found->at[at], (found->count - at) * sizeof found->at[0]);
    found->at[at] = step;
    found->count++;
    return RODT_OK;
}

/* All that rodt_reading_judge compares a stroke with. */
rodt_status rodti_stroke_steps_find(const rodt_reading *reading, const rodt_rules *rules, stroke_steps *found)
{
    rodt_finding finding;
    *found = (stroke_steps){{INT32_MAX, INT32_MAX, INT32_MAX, INT32_MAX}, 0};
    rodt_status status = rodti_reading_judge(reading, rules, &finding);
    if (status == RODT_OK)
        status = add_step(finding.limit, found);
    if (status == RODT_OK)
        status = add_step(finding.law_limit, found);
    if (status == RODT_OK)
        status = add_step(finding.chamber.rated_stroke, found);
    if (status == RODT_OK && finding.law_row != NULL && finding.unit != RODT_UNIT_IN)
        status = add_step(finding.law_row->printed_mm, found);
    return status;
}
