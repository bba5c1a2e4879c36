/* SPDX-License-Identifier: Apache-2.0 */
/* The judgement of a chunk, row by row, on the fast path and the reference path. */
#include "batch/chunk_run.h"
#include "batch/cache.h"
#include "batch/fast_loop.h"
#include "batch/object_loop.h"
#include "batch/rows_csv.h"
#include "batch/rows_ndjson.h"

#include <stdlib.h>
#include <unistd.h>

/* Results that all threads together cache. */
#define RESULTS_MOST 16384u

bool batch_chunk_open(batch_chunk *chunk, batch_run *run, const csv_reader *input)
{
    chunk->run = run;
    return csv_open_chunk(&chunk->reader, input) &&
           output_open(&chunk->out, run->options->json ? OUTPUT_NOWHERE : STDOUT_FILENO);
}

bool batch_chunk_open_cache(batch_chunk *chunk, unsigned jobs)
{
    uint32_t results = RESULTS_MOST;
    while (results > RESULTS_MOST / 2 / jobs)
        results /= 2;
    if (chunk->run->options->no_cache || chunk->run->workbook != NULL)
        return true;
    chunk->cache = batch_cache_open(chunk->run, results);
    return chunk->cache != NULL || batch_chunk_stop(chunk, 0, "no memory");
}

void batch_chunk_close(batch_chunk *chunk)
{
    batch_cache_close(chunk->cache);
    csv_close(&chunk->reader);
    output_close(&chunk->out);
    free(chunk->tallies);
}

bool batch_chunk_row(batch_chunk *chunk, const csv_record *record)
{
    return chunk->run->options->columns.members ? batch_write_object(chunk, record) : batch_write_record(chunk, record);
}

/* Up to the first row of which more is to be done. */
static void write_cached(batch_chunk *chunk)
{
    if (chunk->run->options->columns.members)
        batch_write_cached_objects(chunk);
    else
        batch_write_cached_rows(chunk);
}

/* Without memory the chunk is stopped. */
void batch_chunk_flush(batch_chunk *chunk) { (void)batch_cache_flush(chunk); }

void batch_chunk_judge(batch_chunk *chunk)
{
    csv_record record;
    csv_status status = CSV_RECORD;
    batch_cache_begin_chunk(chunk);
    while (status == CSV_RECORD && !chunk->stopped) {
        if (batch_cache_is_active(chunk))
            write_cached(chunk);
        if (chunk->stopped)
            break;
        status = csv_next(&chunk->reader, &record);
        if (status == CSV_RECORD && !batch_chunk_row(chunk, &record))
            break;
    }
    batch_chunk_flush(chunk);
    if (status != CSV_RECORD && status != CSV_END) {
        chunk->stopped = true;
        chunk->fault = status;
        chunk->stop_line = chunk->reader.fault_line;
    }
    chunk->lines = chunk->reader.line - 1;
}
