/* SPDX-License-Identifier: Apache-2.0 */
/* Which wheel ends must have the same answer: for programs that keep answers and give them again. */
#ifndef RODTRAVEL_RECALL_H
#define RODTRAVEL_RECALL_H

#include "column.h"

#ifdef __cplusplus
extern "C" {
#endif

/*
 * A yard writes few different things: a dozen chambers, sixteenths of an inch, some pressures. Whoever judges millions
 * of rows may keep an answer and give it again, and these functions say when that is sure:
 *
 * Two readings that are judged by one rule set have the same verdict, reasons, applied stroke, limit and margin if
 *   - their chambers, units and conditions are the same,
 *   - both days fall in one class (rodt_recall_day), and neither has an `other_day`,
 *   - both pressures, and both pressures after the application, fall in one class (rodt_recall_pressure), and
 *   - applied - released is the same (rodt_recall_length) or negative in both, or the same readings are missing in
 *     both, whatever the other one is.
 * The division changes none of the five. The same holds for rows of texts (rodt_judge_row): one text has one meaning, a
 * text that can be read is worth what it says, and one that cannot is worth the reasons that a row of this text alone
 * has. Nothing is judged here.
 */

/* Class of a day: an integer of which two days of one class have the same limits for every chamber. 0 for a day that
 * is not given and for rules == NULL. */
RODT_API uint32_t rodt_recall_day(const rodt_rules *rules, rodt_date day);

/* Where a pressure lies in the window of a rule set. Every pressure but 0 is inside where there is no window. */
typedef enum rodt_recall_window {
    RODT_RECALL_NOT_GIVEN = 0,
    RODT_RECALL_NO_AIR = 1, /* 0: a rod may then stand still */
    RODT_RECALL_BELOW = 2,
    RODT_RECALL_INSIDE = 3,
    RODT_RECALL_ABOVE = 4
} rodt_recall_window;

/* Class of a pressure; RODT_RECALL_NOT_GIVEN also for rules == NULL. */
RODT_API rodt_recall_window rodt_recall_pressure(const rodt_rules *rules, rodt_pressure pressure);

/* True if the length is a whole number of 1/RODT_COLUMN_PER_INCH in, 0 to INT32_MAX of them: *units is the number, and
 * the difference of two such numbers stands for that of the lengths. Otherwise *units is untouched. */
RODT_API bool rodt_recall_length(rodt_length length, int32_t *units);

#ifdef __cplusplus
}
#endif
#endif
