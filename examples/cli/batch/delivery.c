/* SPDX-License-Identifier: Apache-2.0 */
/* The delivery of chunks, in the order of the file. */
#include "batch/delivery.h"
#include "ui/language.h"
#include "ui/message.h"

#include <errno.h>
#include <string.h>

static void explain_fault(const batch_chunk *chunk, uint64_t line, const input_file *input)
{
    static const char *const sentences[] = {
        [CSV_E_MEMORY] = TO_SAY("no memory"),
        [CSV_E_QUOTES] = TO_SAY("too many quotes that are never closed; is this a CSV file?"),
        [CSV_E_LONG] = TO_SAY("a record of more than 16 MiB starts here; is this a CSV file?"),
        [CSV_E_CELLS] = TO_SAY("a record of more than 65536 cells starts here; is this a CSV file?")};
    if (chunk->fault == CSV_E_SOURCE)
        input_file_explain(input, !chunk->run->options->workbook);
    else
        print_error("%s: line %llu: %s", input->name, (unsigned long long)line, say(sentences[chunk->fault]));
}

static bool explain_stop(const batch_chunk *chunk, const input_file *input)
{
    uint64_t line = chunk->run->line + chunk->stop_line - 1;
    batch_progress_hide(&chunk->run->progress);
    if (chunk->fault == CSV_E_SOURCE && input->error == EINTR && chunk->run->options->workbook)
        print_error("interrupted after line %llu: no workbook is written",
                    (unsigned long long)(chunk->run->line + chunk->lines - 1));
    else if (chunk->fault == CSV_E_SOURCE && input->error == EINTR)
        print_error("interrupted after line %llu: the %llu rows that were judged are written and complete",
                    (unsigned long long)(chunk->run->line + chunk->lines - 1),
                    (unsigned long long)chunk->run->counts.rows);
    else if (chunk->fault != CSV_RECORD)
        explain_fault(chunk, line, input);
    else if (chunk->stop_line > 0)
        print_error("line %llu: %s", (unsigned long long)line, chunk->stop_message);
    else
        print_error("%s", chunk->stop_message);
    if (chunk->stop_hint != NULL)
        print_error("%s", say(chunk->stop_hint));
    return false;
}

/* A pipe whose reader has gone is no error to report. */
static bool flush_chunk(batch_chunk *chunk)
{
    if (output_flush(&chunk->out))
        return true;
    batch_progress_hide(&chunk->run->progress);
    if (chunk->out.failure != EPIPE)
        print_error("the output cannot be written: %s", say_system_error(chunk->out.failure));
    return false;
}

bool batch_deliver(batch_chunk *chunk, const input_file *input)
{
    batch_run *run = chunk->run;
    if (!flush_chunk(chunk))
        return false;
    for (size_t i = 0; i < chunk->tally_count; i++)
        batch_counts_add(&run->counts, &chunk->tallies[i].tally, chunk->tallies[i].rows, run->options->summary);
    batch_counts_add_passthrough(&run->counts, &chunk->passed, run->line);
    if (chunk->stopped)
        return explain_stop(chunk, input);
    run->line += chunk->lines;
    batch_progress_show(&run->progress, run->counts.rows, chunk->bytes_read);
    return true;
}
