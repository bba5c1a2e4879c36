/* SPDX-License-Identifier: Apache-2.0 */
/* One row of a table of limits as text: the released tables and a carrier's own have the same columns. */
#ifndef RODT_LIMIT_ROW_H
#define RODT_LIMIT_ROW_H

#include "rodtravel/rules.h"
#include "rules/table_reader.h"

enum {
    LIMIT_RULES,
    LIMIT_FAMILY,
    LIMIT_SIZE,
    LIMIT_CLASS,
    LIMIT_RATED_STROKE,
    LIMIT_RATED_MM,
    LIMIT_LIMIT,
    LIMIT_LIMIT_MM,
    LIMIT_FROM,
    LIMIT_UNTIL,
    LIMIT_SOURCE,
    LIMIT_EVIDENCE,
    LIMIT_COLUMNS
};

/* Reads all but `rules` and `source`. The row's texts point into the reader, and its source is NULL. False
 * after every fault of the row was reported. */
bool rodti_table_limit(table_reader *reader, rodt_limit *row);

bool rodti_table_family(table_reader *reader, size_t column, RODT_ENUM32(rodt_family) *out);

/* A type number, or the letter of a bolt-type chamber. */
bool rodti_table_size(table_reader *reader, size_t column, rodt_family family);

bool rodti_table_evidence(table_reader *reader, size_t column, RODT_ENUM32(rodt_evidence) *out);

/* True if both dates are not given or in order; reports otherwise. */
bool rodti_table_span(table_reader *reader, size_t until_column, rodt_date from, rodt_date until);

/* True if two spans of days have a day in common; a day that is not given is open. */
bool rodti_days_overlap(rodt_date a_from, rodt_date a_until, rodt_date b_from, rodt_date b_until);

/* True if the two rows can both hold for one chamber on one day, and neither is the more exact one. */
bool rodti_limits_clash(const rodt_limit *a, const rodt_limit *b);

#endif
