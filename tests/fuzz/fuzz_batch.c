/* SPDX-License-Identifier: Apache-2.0 */
/* Any bytes as rows of a table, or, from a brace on, as lines of JSON, judged one by one, and in chunks through the cache,
 * written or counted by vehicle: the same bytes come out, the same is counted, and the work stops at the same place.
 * Blocks are small here, so that everything is once the end of one. */
#include "batch/by_vehicle.h"
#include "batch/chunk_run.h"

#include <stdlib.h>
#include <string.h>

#include "source.h"

static const char header[] = "chamber,released,applied,psi,date,unit,stroke_class\n";

#define JOBS 1024 /* as many leave room for a few results only */

/* Of both runs. */
static batch_options options = {
    .columns = {.fields = FIELDS_OF_READING, .needed = FIELDS_NEEDED},
    .separator = ',',
    .decimals = -1,
    .no_cache = true,
};

/* Fields of the header above. */
static const rodt_field fields[] = {RODT_FIELD_CHAMBER, RODT_FIELD_RELEASED, RODT_FIELD_APPLIED, RODT_FIELD_PSI,
                                    RODT_FIELD_DATE, RODT_FIELD_UNIT, RODT_FIELD_STROKE_CLASS};

/* What came out. */
typedef struct outcome {
    output out;
    batch_counts counts;
    uint64_t lines;
    csv_status fault;
    uint64_t stop_line;
} outcome;

typedef struct bytes {
    const uint8_t *data;
    size_t size;
    size_t has_chunk;
    size_t at; /* in the header and, after it, in the data */
} bytes;

static long give(void *context, char *buffer, size_t size)
{
    bytes *from = context;
    size_t head = options.columns.members ? 0 : sizeof header - 1;
    size_t count = head + from->size - from->at;
    if (count > from->has_chunk)
        count = from->has_chunk;
    if (count > size)
        count = size;
    for (size_t i = 0; i < count; i++, from->at++)
        buffer[i] = from->at < head ? header[from->at] : (char)from->data[from->at - head];
    return (long)count;
}

/* Takes over what a chunk made, as its delivery would. */
static void deliver(batch_chunk *chunk, outcome *to)
{
    output_bytes(&to->out, chunk->out.buffer, chunk->out.used);
    for (size_t i = 0; i < chunk->tally_count; i++)
        batch_counts_add(&to->counts, &chunk->tallies[i].tally, chunk->tallies[i].rows, false);
    batch_counts_add_passthrough(&to->counts, &chunk->passed, to->lines + 1);
    if (chunk->stopped) {
        to->fault = chunk->fault;
        to->stop_line = to->lines + chunk->stop_line;
    }
    to->lines += chunk->lines;
    batch_chunk_clear(chunk);
}

/* One record by itself. False: there is none, or the run stops. */
static bool read_record(batch_chunk *chunk, csv_reader *reader)
{
    csv_record record;
    csv_status status = csv_next(reader, &record);
    chunk->fault = status == CSV_END ? CSV_RECORD : status;
    chunk->stopped = chunk->fault != CSV_RECORD;
    chunk->stop_line = reader->fault_line;
    bool good = status == CSV_RECORD && batch_chunk_row(chunk, &record);
    batch_chunk_flush(chunk);
    chunk->lines = reader->line - 1;
    return good;
}

static void judge(batch_chunk *chunk, csv_reader *reader, bool in_chunks, outcome *to)
{
    bool good = true;
    while (good) {
        size_t size = in_chunks ? csv_complete_size(reader) : 0;
        reader->line = 1;
        if (size > 0) {
            csv_move_chunk(reader, size, &chunk->reader);
            batch_chunk_judge(chunk);
            good = !chunk->stopped;
        } else {
            good = read_record(chunk, reader);
        }
        deliver(chunk, to);
    }
}

static void read_header(batch_run *whole, csv_reader *reader, csv_record *record)
{
    if (options.columns.members) {
        demand(columns_of_members(&whole->header.columns, &options.columns));
        return;
    }
    demand(csv_next(reader, record) == CSV_RECORD && batch_header_read(&whole->header, record, &options.columns, ','));
    for (size_t i = 0; i < sizeof fields / sizeof fields[0]; i++)
        demand(whole->header.columns.column[fields[i]] == i);
}

static void run(bytes from, bool cached, outcome *to)
{
    csv_reader reader;
    csv_record record;
    batch_run *whole = calloc(1, sizeof *whole);
    batch_chunk *chunk = calloc(1, sizeof *chunk);
    demand(whole != NULL && chunk != NULL && output_open(&to->out, -1));
    const csv_source bytes_of = {give, &from};
    demand(options.columns.members ? csv_open_lines(&reader, bytes_of) : csv_open(&reader, bytes_of, ','));
    options.no_cache = !cached;
    whole->options = &options;
    whole->separator = ',';
    whole->context.rules = rodt_rules_find(RODT_DEFAULT_RULES);
    whole->context.day = (rodt_date){2024, 6, 5};
    read_header(whole, &reader, &record);
    demand(batch_chunk_open(chunk, whole, &reader) && batch_chunk_open_cache(chunk, JOBS));
    if (options.by_count > 0)
        demand(batch_by_find(whole, &record) && batch_by_open(chunk));
    judge(chunk, &reader, cached, to);
    if (options.by_count > 0 && !chunk->stopped) {
        demand(batch_by_finish(chunk));
        deliver(chunk, to);
    }
    if (options.by_count > 0)
        vehicle_groups_close(whole->by);
    batch_chunk_close(chunk);
    batch_header_free(&whole->header);
    csv_close(&reader);
    free(chunk);
    free(whole);
}

static void compare(const outcome *a, const outcome *b)
{
    demand(a->out.used == b->out.used && memcmp(a->out.buffer, b->out.buffer, a->out.used) == 0);
    demand(memcmp(&a->counts, &b->counts, sizeof a->counts) == 0);
    demand(a->lines == b->lines && a->fault == b->fault && a->stop_line == b->stop_line);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static outcome reference;
    static outcome cached;
    const size_t pieces[] = {size + sizeof header, 61, 61};
    options.columns.members = size > 0 && data[0] == '{';
    for (size_t i = size % 2; i < sizeof pieces / sizeof pieces[0]; i += 2) {
        options.by[0] = "stroke_class";
        options.by_count = i == 2 && !options.columns.members;
        memset(&reference, 0, sizeof reference);
        memset(&cached, 0, sizeof cached);
        run((bytes){.data = data, .size = size, .has_chunk = pieces[i]}, false, &reference);
        run((bytes){.data = data, .size = size, .has_chunk = pieces[i]}, true, &cached);
        compare(&reference, &cached);
        output_close(&reference.out);
        output_close(&cached.out);
    }
    return 0;
}
