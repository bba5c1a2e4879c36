/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Which readings must have the same result. Two readings that are judged by one rule set have the same verdict,
 * reasons, applied stroke, limit and margin if
 *   - their chambers, units, conditions and reasons are the same, and neither has values of a lost blank,
 *   - both days fall in one class, and so do the other days of dates with two meanings,
 *   - both pressures, and both pressures after the application, fall in one class, and
 *   - applied - released is the same or negative in both, or the same readings are missing in both, whatever the other
 *     one is.
 * The division changes none of the five.
 */
#ifndef RODT_EQUIVALENCE_H
#define RODT_EQUIVALENCE_H

#include "core/common.h"
#include "rodtravel/column.h"

/* Class of a day: two days of one class have the same limits for every chamber. 0 for a day that is not given. */
uint32_t rodti_equivalence_day(const rodt_rules *rules, rodt_date day);

/* Where a pressure is in the window of a rule set. Every pressure but 0 is inside where there is no window. */
typedef enum pressure_class {
    PRESSURE_NOT_GIVEN = 0,
    PRESSURE_NO_AIR = 1, /* a rod may then stand still */
    PRESSURE_BELOW = 2,
    PRESSURE_INSIDE = 3,
    PRESSURE_ABOVE = 4
} pressure_class;

pressure_class rodti_equivalence_pressure(const rodt_rules *rules, rodt_pressure pressure);

/* True if the length is a whole number of 1/RODT_COLUMN_PER_INCH in, 0 to INT32_MAX of them: *units is the number, and
 * the difference of two such numbers is the difference of the lengths in that unit. Otherwise *units is untouched. */
bool rodti_equivalence_length(rodt_length length, int32_t *units);

#endif
