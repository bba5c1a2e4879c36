/* SPDX-License-Identifier: Apache-2.0 */
/* One row of a table of air checks as text: the released table and a carrier's own have the same columns. */
#ifndef RODT_AIR_ROW_H
#define RODT_AIR_ROW_H

#include "rodtravel/aircheck.h"
#include "rules/table_reader.h"

enum {
    AIR_RULES,
    AIR_CHECK,
    AIR_KIND,
    AIR_VEHICLE,
    AIR_TOWED,
    AIR_BUILT_FROM,
    AIR_BUILT_UNTIL,
    AIR_COMPARISON,
    AIR_VALUE,
    AIR_UPPER,
    AIR_PER_TOWED,
    AIR_MEASURE,
    AIR_START,
    AIR_STOP,
    AIR_START_KPA,
    AIR_STOP_KPA,
    AIR_APPLICATIONS,
    AIR_BY,
    AIR_PUBLISHED,
    AIR_SETUP,
    AIR_SOURCE,
    AIR_EVIDENCE,
    AIR_COLUMNS
};

/* Reads all but `rules` and `source`. An empty kind is a limit, an empty vehicle any. The row's texts point into the
 * reader, and its source is NULL. False after every fault of the row was reported. */
bool rodti_table_air(table_reader *reader, rodt_air_limit *row);

/* True if the figures go together, and with the check. Otherwise fault gets a sentence. */
bool rodti_air_row_fits(const rodt_air_limit *row, char *fault, size_t size);

/* True if the two rows are for the same vehicles, and neither is the more exact one. */
bool rodti_air_rows_clash(const rodt_air_limit *a, const rodt_air_limit *b);

/* "between 110 and 120 psi", as the row has it for so many towed units. */
void rodti_air_row_put(text_writer *writer, const rodt_air_limit *row, int towed_units);

#endif
