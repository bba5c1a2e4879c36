/* SPDX-License-Identifier: Apache-2.0 */
/* How a plan is laid out. */
#ifndef RODT_COLUMN_PLAN_H
#define RODT_COLUMN_PLAN_H

#include "judge/reasons.h"
#include "rodtravel/column.h"

/* Both ends of the calendar in days since 1970-01-01: 1900-01-01 and 2199-12-31. */
#define COLUMN_FIRST_DAY (-25567)
#define COLUMN_LAST_DAY 84005

/* Eras: one before each cut, one after the last, then the day of the plan and the unreadable day. */
#define COLUMN_ERA_OF_PLAN(plan) ((plan)->cuts + 1)
#define COLUMN_ERA_UNREADABLE(plan) ((plan)->cuts + 2)

/* The pressure of a row; that of the plan is 0. No air at all differs from too little: a rod may then stand still. */
enum { PRESSURE_OF_PLAN, PRESSURE_UNREADABLE, PRESSURE_NONE, PRESSURE_LOW, PRESSURE_WITHIN, PRESSURE_HIGH };

/* In place of a reading, which is never below zero. */
enum { CELL_MISSING = -1, CELL_UNREADABLE = -2 };

/* Both cells of a row as one number: 0 = both hold a reading. */
#define CELLS(released, applied) (3 * (released) + (applied))

/* Regions of one entry: from 0 on the rows of which a cell holds no reading; then reversed, no movement, up to the
 * first step, at it, beyond it, and two more for each further step. A stroke that is none counts as reversed and is
 * brought down from there by its cells. */
enum {
    REGION_REVERSED = -CELLS(CELL_UNREADABLE, CELL_UNREADABLE),
    REGION_NO_MOVEMENT,
    REGION_WITHIN,
    REGION_AT,
    REGION_OVER,
    REGION_LAST = REGION_WITHIN + 2 * RODT_COLUMN_STEPS
};
#define REGIONS_OF_ENTRY (RODT_COLUMN_PRESSURES * RODT_COLUMN_REGIONS)

/* Flags of a row, from its reasons. */
#define REASONS_MISSING                                                                                             \
    (REASON_BIT(RODT_REASON_RELEASED_MISSING) | REASON_BIT(RODT_REASON_APPLIED_MISSING) |                           \
     REASON_BIT(RODT_REASON_CHAMBER_MISSING))
#define REASONS_INVALID                                                                                             \
    (REASON_BIT(RODT_REASON_RELEASED_UNREADABLE) | REASON_BIT(RODT_REASON_APPLIED_UNREADABLE) |                     \
     REASON_BIT(RODT_REASON_CHAMBER_UNREADABLE) | REASON_BIT(RODT_REASON_OTHER_UNREADABLE) |                        \
     REASON_BIT(RODT_REASON_DATE_UNREADABLE))

static inline rodt_column_result column_result(const rodt_finding *finding)
{
    uint64_t reasons = finding->reasons;
    return (rodt_column_result){reasons, (uint8_t)finding->verdict,
                                (uint8_t)(((reasons & REASONS_MISSING) != 0 ? RODT_COLUMN_FLAG_MISSING : 0) |
                                          ((reasons & REASONS_INVALID) != 0 ? RODT_COLUMN_FLAG_INVALID : 0))};
}

/* All ones if the condition holds. */
static inline int32_t column_mask(bool condition) { return -(int32_t)condition; }

/* The second number if the condition holds, else the first; written to compile without a branch. */
static inline int32_t column_pick(bool condition, int32_t otherwise, int32_t if_so)
{
    return (otherwise & ~column_mask(condition)) | (if_so & column_mask(condition));
}

/* The regions before that of a stroke at a step: one when it has reached it, two when it is beyond. */
static inline int32_t column_past(int32_t stroke, int32_t step) { return (stroke >= step) + (stroke > step); }

/* The region of a stroke, or of none, before its steps are counted. */
static inline int32_t column_start(int32_t stroke) { return REGION_NO_MOVEMENT + (stroke < 1 ? stroke : 1); }

#endif
