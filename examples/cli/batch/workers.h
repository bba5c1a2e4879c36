/* SPDX-License-Identifier: Apache-2.0 */
/* The worker pool of `rodtravel batch`. */
#ifndef BATCH_WORKERS_H
#define BATCH_WORKERS_H

#include "batch/chunk.h"
#include "input/input_file.h"

#define BATCH_JOBS_MOST 16u

/* Judges a file to its end, on several threads if that is wanted. False: the run stopped before the end, said on
 * stderr. The first chunk holds what was made of the header. */
bool batch_run_workers(batch_run *run, batch_chunk *first, csv_reader *reader, const input_file *input, unsigned jobs);

#endif
