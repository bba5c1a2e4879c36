/* SPDX-License-Identifier: Apache-2.0 */
/* How a plan is laid out, and the loops over its rows. */
#ifndef RODT_COLUMN_H
#define RODT_COLUMN_H

#include "common.h"
#include "rodtravel/column.h"

/* Both ends of the calendar in days since 1970-01-01: 1900-01-01 and 2199-12-31. */
#define COLUMN_FIRST_DAY (-25567)
#define COLUMN_LAST_DAY 84005

/* Eras: one before each cut, one after the last, then the day of the plan and the unreadable day. */
#define COLUMN_ERA_OF_PLAN(plan) ((plan)->cuts + 1)
#define COLUMN_ERA_UNREADABLE(plan) ((plan)->cuts + 2)

/* The pressure of a row; that of the plan is 0. */
enum { PRESSURE_OF_PLAN, PRESSURE_UNREADABLE, PRESSURE_LOW, PRESSURE_WITHIN, PRESSURE_HIGH };

/* A cell that holds a reading or does not. Two of them are CELL_KINDS * released + applied. */
enum { CELL_GIVEN, CELL_MISSING, CELL_UNREADABLE, CELL_KINDS };

/* Regions of one entry: swapped, no movement, then two for each step and one behind the last; then the pairs of cells
 * of which one is not given, from REGION_INCOMPLETE + 1. */
#define REGION_INCOMPLETE (2 + 2 * RODT_COLUMN_STEPS)
#define REGIONS_OF_ENTRY (RODT_COLUMN_PRESSURES * RODT_COLUMN_REGIONS)

/* A word is a set of reasons with the verdict in it, in place of the two reasons that no column can have: a cell is
 * a number, so no spreadsheet made a date of it, and a day is one day. */
#define WORD_VERDICT RODT_REASON_SPREADSHEET_DATE
#define WORD_REASONS (~(3u << WORD_VERDICT))

/* A code on the day and at the pressure of the plan: its step, and above it what all its words have in common, with
 * WORD_HAS_LIMIT. The rest of a word is told by the changes. */
#define WORD_HAS_LIMIT (1u << WORD_VERDICT)
#define WORD_RELEASED_UNREADABLE (1u << RODT_REASON_RELEASED_UNREADABLE)
#define WORD_APPLIED_UNREADABLE (1u << RODT_REASON_APPLIED_UNREADABLE)

/* The usual rows: 32-bit readings, none marked as missing, no pressure and no day of their own. */
typedef struct column_plain {
    const int32_t *released;
    const int32_t *applied;
    const uint8_t *chamber;
} column_plain;

/* Any rows, after their cells were looked at: a reading that is none is 0 and has a kind. */
typedef struct column_rows {
    const int32_t *released;
    const int32_t *applied;
    const int32_t *kind;
    const int32_t *entry; /* code * eras + era */
    const int32_t *word;  /* the entry's first word at the pressure */
} column_rows;

typedef struct column_answers {
    int32_t *stroke;
    uint8_t *verdict;
    uint32_t *reasons;
} column_answers;

/* The caller has made sure that no column overlaps another; gcc cannot see it through a table, and
 * clang, which warns where such a word does not help, compares the addresses itself. */
#if defined(__GNUC__) && !defined(__clang__)
#define ROWS_ARE_INDEPENDENT _Pragma("GCC ivdep")
#else
#define ROWS_ARE_INDEPENDENT
#endif

/* All ones if the condition holds. */
static inline int32_t column_mask(bool condition) { return -(int32_t)condition; }

/* The region of a stroke, counted by the steps that it has reached and passed. */
static inline int32_t column_region(int32_t stroke, const int32_t *step, int32_t steps, int32_t entry)
{
    int32_t region = (stroke >= 0) + (stroke > 0);
    for (int32_t k = 0; k < steps; k++) {
        int32_t at = step[k * RODT_COLUMN_ENTRIES + entry];
        region += (stroke >= at) + (stroke > at);
    }
    return region;
}

/* As column_judge_plain, for plans whose changes hold: two loads a row fewer. */
void column_judge_packed(const rodt_column_plan *plan, const column_plain *in, size_t count,
                         const column_answers *out);
void column_judge_plain(const rodt_column_plan *plan, const column_plain *in, size_t count,
                        const column_answers *out);
void column_judge_rows(const rodt_column_plan *plan, const column_rows *in, size_t count, const column_answers *out);

#endif
