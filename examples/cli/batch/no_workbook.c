/* SPDX-License-Identifier: Apache-2.0 */
/* A build without the library that writes workbooks: the option is refused before any of these is called. */
#include "batch/workbook.h"
#include "ui/message.h"

int batch_workbook_prepare(void)
{
    return print_error("--format xlsx: this program was built without libxlsxwriter, which writes workbooks");
}

bool batch_workbook_open(batch_chunk *chunk)
{
    (void)chunk;
    return false;
}

bool batch_workbook_header(batch_chunk *chunk, const title_lines *titles, const csv_record *record)
{
    (void)titles;
    return batch_workbook_pass(chunk, record);
}

bool batch_workbook_pass(batch_chunk *chunk, const csv_record *record)
{
    (void)record;
    return batch_workbook_open(chunk);
}

bool batch_workbook_row(batch_chunk *chunk, const csv_record *record, const rodt_finding *finding, const char *error)
{
    (void)finding;
    (void)error;
    return batch_workbook_pass(chunk, record);
}

bool batch_workbook_finish(batch_chunk *chunk) { return batch_workbook_open(chunk); }

void batch_workbook_free(batch_run *run) { (void)run; }
