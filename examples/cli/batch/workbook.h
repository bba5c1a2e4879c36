/* SPDX-License-Identifier: Apache-2.0 */
/* `rodtravel batch --format xlsx`: the rows as a worksheet (ISO/IEC 29500) in place of CSV. Cells of the input stay
 * text, so that no formula among them is one; strokes, limits and margins are numbers shown as fractions. */
#ifndef BATCH_WORKBOOK_H
#define BATCH_WORKBOOK_H

#include "batch/chunk.h"
#include "input/title_lines.h"

/* Before all others: gets the library that writes workbooks. STATUS_CONTINUE, or the status after a message. */
int batch_workbook_prepare(void);

/* Each of the following returns false where the run must stop; the chunk says why. */
bool batch_workbook_open(batch_chunk *chunk);
bool batch_workbook_header(batch_chunk *chunk, const title_lines *titles, const csv_record *record);

/* A record that is passed through without a judgement. */
bool batch_workbook_pass(batch_chunk *chunk, const csv_record *record);

/* A row with its judgement; error = the code of a fault of the whole row, or NULL. */
bool batch_workbook_row(batch_chunk *chunk, const csv_record *record, const rodt_finding *finding, const char *error);

/* Closes the workbook and writes it to the output of the chunk. Nothing has been written before. */
bool batch_workbook_finish(batch_chunk *chunk);

void batch_workbook_free(batch_run *run);

#endif
