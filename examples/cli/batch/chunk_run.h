/* SPDX-License-Identifier: Apache-2.0 */
/* The judgement of a chunk, row by row, on the fast path and the reference path. */
#ifndef BATCH_CHUNK_RUN_H
#define BATCH_CHUNK_RUN_H

#include "batch/chunk.h"

/* Opens the chunk of a worker. False: no memory. Close it in either case. */
bool batch_chunk_open(batch_chunk *chunk, batch_run *run, const csv_reader *input);
/* Attaches a cache, if that is wanted. Call after the header has been read. There are as many chunks as jobs. */
bool batch_chunk_open_cache(batch_chunk *chunk, unsigned jobs);
void batch_chunk_close(batch_chunk *chunk);

/* Judges what the reader of the chunk holds. */
void batch_chunk_judge(batch_chunk *chunk);

/* Judges and writes one record. False: the run must stop. */
bool batch_chunk_row(batch_chunk *chunk, const csv_record *record);

/* Takes the cached rows into the counts of the chunk. */
void batch_chunk_flush(batch_chunk *chunk);

#endif
