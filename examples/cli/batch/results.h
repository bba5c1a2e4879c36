/* SPDX-License-Identifier: Apache-2.0 */
/* What is added to every row: five results, and with --decimals N the same lengths as decimal numbers. */
#ifndef BATCH_RESULTS_H
#define BATCH_RESULTS_H

#include "batch/options.h"

enum { RESULT_STROKE, RESULT_LIMIT, RESULT_MARGIN, RESULT_VERDICT, RESULT_REASONS, RESULTS };
enum { NUMBER_STROKE, NUMBER_LIMIT, NUMBER_MARGIN, NUMBER_USED, NUMBERS };

/* Most digits after the point. */
#define DECIMALS_MAX 6

extern const char *const batch_result_names[RESULTS];

/* The first RESULTS or, with --decimals, RESULTS + NUMBERS results have a name, "margin_mm" in the unit of --unit. */
size_t batch_result_count(const batch_options *options);
const char *batch_result_name(const batch_options *options, size_t at);

/* Lists the codes of reasons, and that of a fault of the whole row unless it is NULL. Returns the size of the list. */
#define REASONS_TEXT_SIZE ((size_t)RODT_REASON_END * 32)
size_t batch_reasons(uint64_t reasons, const char *error, char text[REASONS_TEXT_SIZE]);

#define NUMBER_TEXT_SIZE 48

/* Writes a number in the unit of --unit, rounded to the strict side: a stroke and the used share of the limit up, a
 * limit and a margin down. Returns its size; 0: there is none. */
size_t batch_number(const batch_options *options, const rodt_finding *finding, int number, char text[NUMBER_TEXT_SIZE]);

#endif
