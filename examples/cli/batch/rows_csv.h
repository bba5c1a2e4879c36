/* SPDX-License-Identifier: Apache-2.0 */
/* The rows of a CSV file: each is written as it came, with its judgement as five more cells. */
#ifndef BATCH_ROWS_CSV_H
#define BATCH_ROWS_CSV_H

#include "batch/chunk.h"

void batch_write_header(batch_chunk *chunk, const csv_record *record);

/* Judges and writes one record. False: the run must stop. */
bool batch_write_record(batch_chunk *chunk, const csv_record *record);

#endif
