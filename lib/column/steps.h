/* SPDX-License-Identifier: Apache-2.0 */
/* The strokes at which a result changes, all else being the same. */
#ifndef RODT_STEPS_H
#define RODT_STEPS_H

#include "core/common.h"
#include "judge/judge.h"
#include "rodtravel/column.h"

/* The limit, the law's, the rated stroke and the printed millimetres. */
#define STROKE_STEPS 4

/* The shortest stroke of a rod that moved as far as a full application moves one. */
#define STROKE_MOVED ((int32_t)(STROKE_HARDLY.num * RODT_COLUMN_PER_INCH / STROKE_HARDLY.den))

/* Whole parts of an inch, rising. */
typedef struct stroke_steps {
    int64_t at[STROKE_STEPS];
    uint32_t count;
} stroke_steps;

/* A length, or a stroke, of so many parts of an inch. */
rodt_length rodti_column_length(int64_t parts, int64_t per_inch);

/* rodt_reading_judge for positions in whole units or parts (fine.h), or without a stroke. It does not fail: the
 * denominators of these, of limits and of marks are on a tape, so that all fit in 64 bits. */
rodt_finding rodti_column_judge(const rodt_reading *reading, const rodt_rules *rules);

/* In so many parts of an inch; those that are not there are `longest`. */
stroke_steps rodti_stroke_steps_find(const rodt_reading *reading, const rodt_rules *rules, int64_t per_inch,
                                     int64_t longest);

#endif
