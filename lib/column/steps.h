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

/* Whole units, rising; those that are not there are INT32_MAX. */
typedef struct stroke_steps {
    int32_t at[STROKE_STEPS];
    uint32_t count;
} stroke_steps;

/* A length, or a stroke, of so many units of a column. */
rodt_length rodti_column_length(int32_t units);

/* rodt_reading_judge for positions in whole units, or without a stroke. It does not fail: a unit is 1/5080000 in, and
 * the denominators of limits and marks are on a tape, so that all fit in 64 bits. */
rodt_finding rodti_column_judge(const rodt_reading *reading, const rodt_rules *rules);

stroke_steps rodti_stroke_steps_find(const rodt_reading *reading, const rodt_rules *rules);

#endif
