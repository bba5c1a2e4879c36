/* SPDX-License-Identifier: Apache-2.0 */
/* What `rodtravel batch` says at the end, on standard error. */
#ifndef BATCH_SUMMARY_H
#define BATCH_SUMMARY_H

#include "batch/chunk.h"

void batch_summary(const batch_counts *counts);

/* The same as one JSON object, on standard output. STATUS_CONTINUE or an exit status. */
int batch_summary_json(const batch_run *run);

/* One of its lines. */
void batch_summary_number(const char *name, uint64_t count);

/* Prints what was passed through without a verdict, the errors of whole rows, and the day that undated ones were
 * judged by. */
void batch_notes(const batch_counts *counts, const batch_options *options, const rule_context *context);

#endif
