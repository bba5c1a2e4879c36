/* SPDX-License-Identifier: Apache-2.0 */
/* Lines of JSON: each object is written as it came, with its judgement as five more members. */
#ifndef BATCH_ROWS_NDJSON_H
#define BATCH_ROWS_NDJSON_H

#include "batch/chunk.h"

/* Judges and writes one line that should be an object. False: the run must stop. */
bool batch_write_object(batch_chunk *chunk, const csv_record *record);

/* Checks the members of the first object, as columns_check_first_row does the cells of a row. */
void batch_check_first_object(batch_chunk *chunk, const csv_record *record);

#endif
