/* SPDX-License-Identifier: Apache-2.0 */
/* A part of the file for `rodtravel batch`, and its delivery. */
#include "batch/batch.h"
#include "batch/cache.h"
#include "batch/input.h"
#include "ui/message.h"

#include <errno.h>
#include <inttypes.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
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

void batch_part_clear(batch_part *part)
{
    part->passed = (passthrough_counts){0};
    part->out.used = 0;
    part->tallied_count = 0;
    part->lines = 0;
    part->taken = 0;
}

bool batch_part_stop(batch_part *part, uint64_t line, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(part->stop_words, sizeof part->stop_words, format, arguments);
    va_end(arguments);
    part->stopped = true;
    part->stop_line = line;
    return false;
}

static bool make_room(batch_part *part)
{
    size_t room = part->tallied_room == 0 ? 256 : part->tallied_room * 2;
    struct batch_tallied *grown = realloc(part->tallied, room * sizeof *grown);
    if (grown == NULL)
        return batch_part_stop(part, 0, "no memory");
    part->tallied = grown;
    part->tallied_room = room;
    return true;
}

bool batch_part_count(batch_part *part, const batch_tally *tally, uint64_t rows)
{
    if (part->tallied_count == part->tallied_room && !make_room(part))
        return false;
    part->tallied[part->tallied_count++] = (struct batch_tallied){*tally, rows};
    return true;
}

void batch_part_judge(batch_part *part)
{
    csv_record record;
    csv_status status = CSV_RECORD;
    batch_cache_begin_chunk(part);
    while (status == CSV_RECORD && !part->stopped) {
        batch_write_cached_rows(part);
        if (part->stopped)
            break;
        status = csv_next(&part->reader, &record);
        if (status == CSV_RECORD && !batch_row(part, &record))
            break;
    }
    (void)batch_cache_flush(part);
    if (status != CSV_RECORD && status != CSV_END) {
        part->stopped = true;
        part->fault = status;
        part->stop_line = part->reader.fault_line;
    }
    part->lines = part->reader.line - 1;
}

/* --- Delivery ------------------------------------------------------------------------------------------ */

static void explain_fault(const batch_part *part, uint64_t line, const batch_input *input)
{
    static const char *const sentences[] = {
        [CSV_E_MEMORY] = "no memory",
        [CSV_E_QUOTES] = "too many quotes that are never closed; is this a CSV file?",
        [CSV_E_LONG] = "a record of more than 16 MiB starts here; is this a CSV file?",
        [CSV_E_CELLS] = "a record of more than 65536 cells starts here; is this a CSV file?"};
    if (part->fault == CSV_E_SOURCE)
        batch_input_explain(input);
    else
        print_error("%s: line %" PRIu64 ": %s", input->name, line, sentences[part->fault]);
}

static bool explain_stop(const batch_part *part, const batch_input *input)
{
    uint64_t line = part->run->line + part->stop_line - 1;
    batch_progress_hide(&part->run->progress);
    if (part->fault == CSV_E_SOURCE && input->error == EINTR)
        print_error("interrupted behind line %" PRIu64 ": the %" PRIu64 " rows that were judged are written and "
                    "complete", part->run->line + part->lines - 1, part->run->counts.rows);
    else if (part->fault != CSV_RECORD)
        explain_fault(part, line, input);
    else if (part->stop_line > 0)
        print_error("line %" PRIu64 ": %s", line, part->stop_words);
    else
        print_error("%s", part->stop_words);
    if (part->stop_hint != NULL)
        print_error("%s", part->stop_hint);
    return false;
}

/* A pipe whose reader has gone is no news to anybody. */
static bool flush_part(batch_part *part)
{
    if (output_flush(&part->out))
        return true;
    batch_progress_hide(&part->run->progress);
    if (part->out.failure != EPIPE)
        print_error("the output cannot be written: %s", strerror(part->out.failure));
    return false;
}

bool batch_deliver(batch_part *part, const batch_input *input)
{
    batch_run *run = part->run;
    if (!flush_part(part))
        return false;
    for (size_t i = 0; i < part->tallied_count; i++)
        batch_count(&run->counts, &part->tallied[i].tally, part->tallied[i].rows, run->options->summary);
    batch_count_passed(&run->counts, &part->passed, run->line);
    if (part->stopped)
        return explain_stop(part, input);
    run->line += part->lines;
    batch_progress_show(&run->progress, run->counts.rows, part->taken);
    return true;
}
