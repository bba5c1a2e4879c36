/* SPDX-License-Identifier: Apache-2.0 */
/* The rated stroke marked on a housing beside the tables. */
#include "rules/rated_stroke.h"

#include "rules/tables.h"

#include <string.h>

static bool is_equal(rodt_length a, rodt_length b) { return rodt_length_given(a) && rodt_length_compare(a, b) == 0; }

bool rated_stroke_is_marked(rodt_length rated, rodt_length printed_mm, rodt_length mark)
{
    rodt_length mm, whole;
    return is_equal(rated, mark) || is_equal(printed_mm, mark) ||
           (rodt_length_from_mm(1, 1, &mm) == RODT_OK &&
            rodt_length_round(rated, mm, RODT_ROUND_HALF_UP, &whole) == RODT_OK && is_equal(whole, mark));
}

/* The rated stroke of the standard chamber of this family and size; not given = none is known. */
static rodt_length find_standard(const rodt_limit *limit)
{
    for (size_t i = 0; i < table_chambers_count; i++) {
        const rodt_chamber_row *row = &table_chambers[i];
        if (row->family == limit->family && strcmp(row->size, limit->size) == 0)
            return row->standard_rated_stroke;
    }
    return (rodt_length){0};
}

/* A limit is about four fifths of the rated stroke (49 CFR 393.47(e)(2) says so of actuators without a row), so a
 * larger limit does not go with the mark. Type 24 shows why this is asked: some accounts give the standard 24 the
 * 2 1/2 in that others give the long one. */
static bool is_too_large(rodt_length limit, rodt_length mark)
{
    rodt_length usual;
    return rodt_length_scale(mark, (rodt_ratio){4, 5}, &usual) == RODT_OK && rodt_length_compare(limit, usual) > 0;
}

bool rated_stroke_contradicts(const rodt_limit *row, rodt_length mark)
{
    if (!rodt_length_given(mark))
        return false;
    if (rodt_length_compare(mark, row->limit) <= 0)
        return true;
    return row->stroke_class == RODT_CLASS_LONG && !rodt_length_given(row->rated_stroke) &&
           is_too_large(row->limit, mark) &&
           rated_stroke_is_marked(find_standard(row), (rodt_length){0}, mark);
}
