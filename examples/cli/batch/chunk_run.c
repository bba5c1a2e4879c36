/* SPDX-License-Identifier: Apache-2.0 */
/* The judgement of a chunk, row by row, on the fast path and the reference path. */
#include "batch/chunk_run.h"
#include "batch/cache.h"
#include "batch/fast_loop.h"
#include "batch/rows_csv.h"
#include "batch/rows_ndjson.h"

#include <stdlib.h>
#include <unistd.h>

/* Results that all threads together cache. */
#define RESULTS_MOST 65536u

bool batch_part_open(batch_part *part, batch_run *run, const csv_reader *whole)
{
    part->run = run;
    return csv_open_chunk(&part->reader, whole) && output_open(&part->out, STDOUT_FILENO);
}

bool batch_part_open_cache(batch_part *part, unsigned jobs)
{
    uint32_t results = RESULTS_MOST;
    while (results > RESULTS_MOST / 2 / jobs)
        results /= 2;
    if (part->run->options->afresh)
        return true;
    part->cache = batch_cache_open(part->run, results);
    return part->cache != NULL || batch_part_stop(part, 0, "no memory");
}

void batch_part_close(batch_part *part)
{
    batch_cache_close(part->cache);
    csv_close(&part->reader);
    output_close(&part->out);
    free(part->tallied);
}

bool batch_part_row(batch_part *part, const csv_record *record)
{
    return part->run->options->columns.members ? batch_object(part, record) : batch_row(part, record);
}

/* Without memory the chunk is stopped. */
void batch_part_flush(batch_part *part) { (void)batch_cache_flush(part); }

void batch_part_judge(batch_part *part)
{
    csv_record record;
    csv_status status = CSV_RECORD;
    batch_cache_begin_chunk(part);
    while (status == CSV_RECORD && !part->stopped) {
        if (batch_cache_is_active(part) && !part->run->options->columns.members)
            batch_write_cached_rows(part);
        if (part->stopped)
            break;
        status = csv_next(&part->reader, &record);
        if (status == CSV_RECORD && !batch_part_row(part, &record))
            break;
    }
    batch_part_flush(part);
    if (status != CSV_RECORD && status != CSV_END) {
        part->stopped = true;
        part->fault = status;
        part->stop_line = part->reader.fault_line;
    }
    part->lines = part->reader.line - 1;
}
