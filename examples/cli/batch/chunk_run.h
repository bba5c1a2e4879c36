/* SPDX-License-Identifier: Apache-2.0 */
/* The judgement of a chunk, row by row, on the fast path and the reference path. */
#ifndef BATCH_CHUNK_RUN_H
#define BATCH_CHUNK_RUN_H

#include "batch/chunk.h"

/* Makes a part for a thread. False: no memory. Close it in either case. */
bool batch_part_open(batch_part *part, batch_run *run, const csv_reader *whole);
/* Attaches a cache, if that is wanted. Call after the header has been read. There are as many parts as jobs. */
bool batch_part_open_cache(batch_part *part, unsigned jobs);
void batch_part_close(batch_part *part);

/* Judges what the reader of the chunk holds. */
void batch_part_judge(batch_part *part);

/* Judges and writes one record. False: the run must stop. */
bool batch_part_row(batch_part *part, const csv_record *record);

/* Takes the cached rows into the counts of the chunk. */
void batch_part_flush(batch_part *part);

#endif
