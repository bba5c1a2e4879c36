/* SPDX-License-Identifier: Apache-2.0 */
/* What a plan is, and how it is laid out. */
#ifndef RODT_COLUMN_PLAN_H
#define RODT_COLUMN_PLAN_H

#include "column/equivalence.h"
#include "column/steps.h"
#include "judge/reasons.h"
#include "quantity/calendar.h"
#include "rodtravel/column.h"

/* A code is one byte. */
#define COLUMN_CODES 256

/* Eras: one before each cut, one after the last, then the day of the plan and the unreadable day. */
#define COLUMN_ERA_OF_PLAN(plan) ((plan)->cuts + 1)
#define COLUMN_ERA_UNREADABLE(plan) ((plan)->cuts + 2)

/* The pressure of a row; that of the plan is 0. No air at all differs from too little: a rod may then stand still. */
enum { PRESSURE_OF_PLAN, PRESSURE_UNREADABLE, PRESSURE_NONE, PRESSURE_LOW, PRESSURE_WITHIN, PRESSURE_HIGH, PRESSURES };

/* In place of a reading, which is never below zero. */
enum { CELL_MISSING = -1, CELL_UNREADABLE = -2 };

/* Both cells of a row as one number: 0 = both hold a reading. */
#define CELLS(released, applied) (3 * (released) + (applied))

/* Regions of one entry: from 0 on the rows of which a cell holds no reading; then reversed, no movement, hardly any,
 * up to the first step, at it, beyond it, and two more for each further step. A stroke that is none counts as reversed
 * and is brought down from there by its cells. */
enum {
    REGION_REVERSED = -CELLS(CELL_UNREADABLE, CELL_UNREADABLE),
    REGION_NO_MOVEMENT,
    REGION_HARDLY,
    REGION_WITHIN,
    REGION_AT,
    REGION_OVER,
    REGIONS = REGION_WITHIN + 2 * STROKE_STEPS + 1
};
#define REGIONS_OF_ENTRY (PRESSURES * REGIONS)

/* What one region is judged as. */
typedef struct column_result {
    uint64_t reasons;
    int32_t limit; /* RODT_COLUMN_NO_LIMIT */
    uint8_t verdict;
    uint8_t flags;
} column_result;

/* Two strokes at which the results of an entry change. */
typedef struct column_steps {
    int32_t low;
    int32_t high;
} column_steps;

/* A code on the day and at the pressure of the plan. */
typedef struct column_code {
    int32_t step;
    int32_t first; /* its first region */
} column_code;

/* Cuts that a plan has at least, and further ones come in groups; those that are not there are INT32_MAX. */
#define FEW_CUTS 3
#define CUT_GROUP 8

/* An entry is a code on a day of one era. Adding to a plan makes its arrays longer, so nobody may read them then. */
struct rodt_column_plan {
    const rodt_rules *rules;
    rodt_reading common;
    uint32_t codes;
    uint32_t room; /* codes that the arrays have room for */
    uint32_t eras;
    uint32_t cuts;
    uint32_t steps; /* the most that an entry has */
    int32_t pressure_from;
    int32_t pressure_until;
    int32_t *cut;                        /* rising */
    rodt_chamber *chambers;              /* by code */
    column_steps *step[STROKE_STEPS / 2]; /* by entry */
    column_result *results;              /* by region, counted through all entries */
    column_code code[COLUMN_CODES];
};

/* Flags of a row, from its reasons. */
#define REASONS_MISSING                                                                                             \
    (REASON_BIT(RODT_REASON_RELEASED_MISSING) | REASON_BIT(RODT_REASON_APPLIED_MISSING) |                           \
     REASON_BIT(RODT_REASON_CHAMBER_MISSING))
#define REASONS_INVALID                                                                                             \
    (REASON_BIT(RODT_REASON_RELEASED_UNREADABLE) | REASON_BIT(RODT_REASON_APPLIED_UNREADABLE) |                     \
     REASON_BIT(RODT_REASON_CHAMBER_UNREADABLE) | REASON_BIT(RODT_REASON_OTHER_UNREADABLE) |                        \
     REASON_BIT(RODT_REASON_DATE_UNREADABLE))

static inline column_result column_result_of(const rodt_finding *finding)
{
    uint64_t reasons = finding->reasons;
    int32_t limit = RODT_COLUMN_NO_LIMIT;
    (void)rodti_equivalence_length(finding->limit, &limit);
    return (column_result){reasons, limit, (uint8_t)finding->verdict,
                                (uint8_t)(((reasons & REASONS_MISSING) != 0 ? RODT_COLUMN_FLAG_MISSING : 0) |
                                          ((reasons & REASONS_INVALID) != 0 ? RODT_COLUMN_FLAG_INVALID : 0))};
}

/* Longest reading and highest pressure, as for rodt_reading_check: anything above them lost its decimal point. */
#define COLUMN_READING_MOST (RODT_LENGTH_MAX_INCHES * RODT_COLUMN_PER_INCH)
#define COLUMN_PRESSURE_MOST (RODT_PRESSURE_MAX_PSI * RODT_COLUMN_PER_PSI)

/* All ones if the condition holds. */
static inline int32_t column_mask(bool condition) { return -(int32_t)condition; }

/* The second number if the condition holds, else the first; written to compile without a branch. */
static inline int32_t column_pick(bool condition, int32_t otherwise, int32_t if_so)
{
    return (otherwise & ~column_mask(condition)) | (if_so & column_mask(condition));
}

/* The regions before that of a stroke at a step: one when it has reached it, two when it is beyond. */
static inline int32_t column_past(int32_t stroke, int32_t step) { return (stroke >= step) + (stroke > step); }

/* The region of a stroke, or of none, before its steps are counted. A step that is below the whole movement does no
 * harm: what each bound adds never falls, so two strokes of one region are alike at every bound. */
static inline int32_t column_start(int32_t stroke)
{
    return REGION_NO_MOVEMENT + (stroke < 1 ? stroke : 1) + (stroke >= STROKE_MOVED);
}

#endif
