/* SPDX-License-Identifier: Apache-2.0 */
/* Any bytes as rows of a table, judged one by one, and in chunks through the cache, written or counted by vehicle: the
 * same bytes come out, the same is counted, and the work stops at the same place. Blocks are small here, so that
 * everything is once the end of one. */
#include "batch/by_vehicle.h"
#include "batch/chunk_run.h"

#include <stdlib.h>
#include <string.h>

static const char header[] = "chamber,released,applied,psi,date,unit,stroke_class\n";

/* Of both runs. */
static batch_options options = {.separator = ',', .afresh = true};

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
    size_t piece;
    size_t at; /* in the header and, behind it, in the data */
} bytes;

static void require(bool kept)
{
    if (!kept)
        abort();
}

static long give(void *context, char *buffer, size_t size)
{
    bytes *from = context;
    size_t head = sizeof header - 1;
    size_t count = head + from->size - from->at;
    if (count > from->piece)
        count = from->piece;
    if (count > size)
        count = size;
    for (size_t i = 0; i < count; i++, from->at++)
        buffer[i] = from->at < head ? header[from->at] : (char)from->data[from->at - head];
    return (long)count;
}

/* Takes over what a part made, as its delivery would. */
static void deliver(batch_part *part, outcome *to)
{
    output_bytes(&to->out, part->out.buffer, part->out.used);
    for (size_t i = 0; i < part->tallied_count; i++)
        batch_count(&to->counts, &part->tallied[i].tally, part->tallied[i].rows, false);
    batch_count_passed(&to->counts, &part->passed, to->lines + 1);
    if (part->stopped) {
        to->fault = part->fault;
        to->stop_line = to->lines + part->stop_line;
    }
    to->lines += part->lines;
    batch_part_clear(part);
}

/* One record by itself. False: there is none, or the run stops. */
static bool take_record(batch_part *part, csv_reader *reader)
{
    csv_record record;
    csv_status status = csv_next(reader, &record);
    part->fault = status == CSV_END ? CSV_RECORD : status;
    part->stopped = part->fault != CSV_RECORD;
    part->stop_line = reader->fault_line;
    bool good = status == CSV_RECORD && batch_part_row(part, &record);
    batch_part_flush(part);
    part->lines = reader->line - 1;
    return good;
}

static void judge(batch_part *part, csv_reader *reader, bool in_parts, outcome *to)
{
    bool good = true;
    while (good) {
        size_t size = in_parts ? csv_complete_size(reader) : 0;
        reader->line = 1;
        if (size > 0) {
            csv_move_chunk(reader, size, &part->reader);
            batch_part_judge(part);
            good = !part->stopped;
        } else {
            good = take_record(part, reader);
        }
        deliver(part, to);
    }
}

static void run(bytes from, bool cached, outcome *to)
{
    csv_reader reader;
    csv_record record;
    batch_run *whole = calloc(1, sizeof *whole);
    batch_part *part = calloc(1, sizeof *part);
    require(whole != NULL && part != NULL && output_open(&to->out, -1));
    require(csv_open(&reader, (csv_source){give, &from}, ','));
    options.afresh = !cached;
    whole->options = &options;
    whole->setting.rules = rodt_rules_find(RODT_DEFAULT_RULES);
    whole->setting.day = (rodt_date){2024, 6, 5};
    require(csv_next(&reader, &record) == CSV_RECORD && batch_header_read(&whole->header, &record, &options));
    require(batch_part_open(part, whole, &reader) && batch_part_open_cache(part, 1));
    if (options.by != NULL)
        require(batch_by_find(whole, &record) && batch_by_open(part));
    judge(part, &reader, cached, to);
    if (options.by != NULL && !part->stopped) {
        require(batch_by_finish(part));
        deliver(part, to);
    }
    if (options.by != NULL)
        batch_by_close(whole);
    batch_part_close(part);
    batch_header_free(&whole->header);
    csv_close(&reader);
    free(part);
    free(whole);
}

static void compare(const outcome *a, const outcome *b)
{
    require(a->out.used == b->out.used && memcmp(a->out.buffer, b->out.buffer, a->out.used) == 0);
    require(memcmp(&a->counts, &b->counts, sizeof a->counts) == 0);
    require(a->lines == b->lines && a->fault == b->fault && a->stop_line == b->stop_line);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static outcome reference;
    static outcome cached;
    const size_t pieces[] = {size + sizeof header, 61, 61};
    for (size_t i = 0; i < sizeof pieces / sizeof pieces[0]; i++) {
        options.by = i == 2 ? "stroke_class" : NULL;
        memset(&reference, 0, sizeof reference);
        memset(&cached, 0, sizeof cached);
        run((bytes){.data = data, .size = size, .piece = pieces[i]}, false, &reference);
        run((bytes){.data = data, .size = size, .piece = pieces[i]}, true, &cached);
        compare(&reference, &cached);
        output_close(&reference.out);
        output_close(&cached.out);
    }
    return 0;
}
