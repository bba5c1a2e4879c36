/* SPDX-License-Identifier: Apache-2.0 */
/* Whether one row of air checks asks for at least as much as another. */
#ifndef RODT_AIR_STRICT_H
#define RODT_AIR_STRICT_H

#include "rodtravel/aircheck.h"
#include "rules/table_reader.h"

/* Rows with days of build that a carrier may have for one check: every one adds days on which the judge looks. */
#define AIR_DATED_MAX 14

/* True if a reading that keeps the row keeps the law's, too: for so many towed units, and for the same quantity. */
bool rodti_air_is_within(const rodt_air_limit *row, const rodt_air_limit *law, int towed_units);

/* Compares a carrier's row, which the reader is on, with every row of the law for the same check, vehicles and days of
 * build. False after a fault was reported: RODT_E_LAXER, or RODT_E_TABLE for a row that cannot be compared. */
bool rodti_air_check_strict(table_reader *reader, const rodt_rules *law, const rodt_air_limit *row);

#endif
