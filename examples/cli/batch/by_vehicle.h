/* SPDX-License-Identifier: Apache-2.0 */
/* `rodtravel batch --by COLUMN`: one line an inspection in place of the rows. */
#ifndef BATCH_BY_VEHICLE_H
#define BATCH_BY_VEHICLE_H

#include "batch/cache.h"

/* Finds the column in the header. False: said on stderr. */
bool batch_by_find(batch_run *run, const csv_record *record);

/* Each of the following returns false where the run must stop. */
bool batch_by_open(batch_chunk *chunk);
bool batch_by_row(batch_chunk *chunk, const csv_record *record, const rodt_finding *finding);
bool batch_by_finish(batch_chunk *chunk);

/* Names what was counted as one vehicle though it is spelled in several ways. */
void batch_by_note(const batch_run *run);
void batch_by_summary(const batch_run *run);

/* What is cached of a finding. Returns its size. */
size_t batch_by_result(const rodt_finding *finding, char bytes[RESULT_BYTES]);

/* A row whose result is cached. */
bool batch_by_cached(batch_chunk *chunk, const csv_record *record, const cached_row *cached);

/* The same on the fast path. A name of NULL: that of the row before, which has the same day. */
bool batch_by_count(batch_chunk *chunk, const name_cell *name, uint32_t day, uint32_t position,
                    const cached_row *cached);

#endif
