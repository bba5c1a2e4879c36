/* SPDX-License-Identifier: Apache-2.0 */
/* For fixed other facts the result of rodt_reading_judge is the same between two steps of the stroke. */
#include "column/steps.h"
#include "core/exact.h"
#include "judge/judge.h"

#include <string.h>

/* The whole number that a length has reached: no stroke lies between it and the length, so the two divide strokes
 * alike. Beyond the longest stroke a step is never passed. */
static void add_step(rodt_length length, int64_t per_inch, stroke_steps *found)
{
    rodt_ratio parts = {0, 1};
    if (!rodt_length_given(length))
        return;
    (void)rodti_exact_multiply(EXACT(length), (rodt_ratio){per_inch, 1}, &parts); /* a length is at most 24 in */
    int64_t step = parts.num / parts.den;
    uint32_t at = 0;
    while (at < found->count && found->at[at] < step)
        at++;
    if (at < found->count && found->at[at] == step)
        return;
    memmove(&found->at[at + 1], &found->at[at], (found->count - at) * sizeof found->at[0]);
    found->at[at] = step;
    found->count++;
}

rodt_length rodti_column_length(int64_t parts, int64_t per_inch)
{
    rodt_ratio made = {0, 1};
    (void)rodti_exact_make(parts, per_inch, &made);
    return (rodt_length){made.num, made.den};
}

/* A failure would prove nothing. */
rodt_finding rodti_column_judge(const rodt_reading *reading, const rodt_rules *rules)
{
    rodt_finding finding = {.verdict = RODT_VERDICT_UNDETERMINED};
    (void)rodti_reading_judge(reading, rules, &finding);
    return finding;
}

/* All that rodt_reading_judge compares a stroke with. */
stroke_steps rodti_stroke_steps_find(const rodt_reading *reading, const rodt_rules *rules, int64_t per_inch,
                                     int64_t longest)
{
    rodt_finding finding = rodti_column_judge(reading, rules);
    stroke_steps found = {{longest, longest, longest, longest}, 0};
    add_step(finding.limit, per_inch, &found);
    add_step(finding.law_limit, per_inch, &found);
    add_step(finding.chamber.rated_stroke, per_inch, &found);
    if (finding.law_row != NULL && finding.unit != RODT_UNIT_IN)
        add_step(finding.law_row->printed_mm, per_inch, &found);
    return found;
}
