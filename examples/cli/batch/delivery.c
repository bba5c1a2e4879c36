/* SPDX-License-Identifier: Apache-2.0 */
/* The delivery of chunks, in the order of the file. */
#include "batch/delivery.h"
#include "ui/message.h"

#include <errno.h>
#include <inttypes.h>
#include <string.h>

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
