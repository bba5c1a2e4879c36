/* SPDX-License-Identifier: Apache-2.0 */
/* The rated stroke marked on a housing beside the tables. */
#include "rules/rated_stroke.h"

bool rodti_rated_stroke_is_marked(rodt_length rated, rodt_length printed_mm, rodt_length mark)
{
    static const rodt_length mm = {5, 127}; /* in inches */
    rodt_length whole;
    return rodt_length_given(mark) &&
           (rodt_length_compare(rated, mark) == 0 || rodt_length_compare(printed_mm, mark) == 0 ||
            (rodt_length_round(rated, mm, RODT_ROUNDING_HALF_UP, &whole) == RODT_OK &&
             rodt_length_compare(whole, mark) == 0));
}

/* Of all long-stroke chambers with a limit in 49 CFR 393.47(e)(1) type 30 has the largest share of its rated stroke:
 * 2 1/2 of 3 in. A larger share is that of a standard housing. */
static bool is_too_large(rodt_length limit, rodt_length mark)
{
    rodt_length most;
    return rodt_length_scale(mark, (rodt_ratio){5, 6}, &most) == RODT_OK && rodt_length_compare(limit, most) > 0;
}

bool rodti_rated_stroke_contradicts(const rodt_limit *row, rodt_length mark)
{
    if (!rodt_length_given(mark))
        return false;
    if (rodt_length_compare(mark, row->limit) <= 0)
        return true;
    return row->stroke_class == RODT_STROKE_CLASS_LONG && !rodt_length_given(row->rated_stroke) &&
           is_too_large(row->limit, mark);
}
