/* SPDX-License-Identifier: Apache-2.0 */
/* `rodtravel batch`: every row of a CSV file, judged. */
#include "batch.h"
#include "batch_input.h"

#include <errno.h>
#include <inttypes.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

const char *batch_show(const char *text, char shown[BATCH_SHOWN_SIZE])
{
    size_t size = strlen(text);
    size_t cut = size < BATCH_SHOWN_SIZE ? size : BATCH_SHOWN_SIZE - 4;
    while (cut < size && cut > 0 && ((unsigned char)text[cut] & 0xC0) == 0x80)
        cut--;
    memcpy(shown, text, cut);
    memcpy(shown + cut, cut < size ? "..." : "", cut < size ? 4 : 1);
    return shown;
}

/* Says why the reader stopped before the end. */
static void explain_stop(csv_status status, const csv_reader *reader, const batch_input *input)
{
    static const char *const sentences[] = {
        [CSV_E_MEMORY] = "no memory",
        [CSV_E_QUOTES] = "too many quotes that are never closed; is this a CSV file?",
        [CSV_E_LONG] = "a record of more than 16 MiB starts here; is this a CSV file?",
        [CSV_E_CELLS] = "a record of more than 65536 cells starts here; is this a CSV file?"};
    if (status == CSV_E_SOURCE)
        batch_input_explain(input);
    else
        complain("%s: line %" PRIu64 ": %s", input->name, reader->fault_line, sentences[status]);
}

/* A pipe whose reader has gone is no news to anybody. */
static bool flush_output(batch_run *run)
{
    if (output_flush(&run->out))
        return true;
    if (run->out.failure != EPIPE)
        complain("the output cannot be written: %s", strerror(run->out.failure));
    return false;
}

static bool read_header(batch_run *run, csv_reader *reader, const batch_input *input)
{
    csv_record record;
    csv_status status;
    bool rows = run->options->by == NULL;
    if ((status = csv_next(reader, &record)) == CSV_RECORD && reader->bom && rows)
        output_text(&run->out, "\xEF\xBB\xBF");
    for (; status == CSV_RECORD && record.size == 0; status = csv_next(reader, &record)) {
        run->counts.empty_lines++;
        output_bytes(&run->out, record.line_end, rows ? record.line_end_size : 0);
    }
    if (status == CSV_END)
        complain("%s: there is no header line: the input is empty", input->name);
    else if (status != CSV_RECORD)
        explain_stop(status, reader, input);
    if (status != CSV_RECORD || !batch_header_read(&run->header, &record, run->options))
        return false;
    if (!rows)
        return batch_by_open(run, &record);
    batch_write_header(run, &record);
    return true;
}

/* False: the run stopped before the end of the input. */
static bool judge_all(batch_run *run, csv_reader *reader, const batch_input *input)
{
    csv_record record;
    csv_status status;
    if (!read_header(run, reader, input))
        return false;
    while ((status = csv_next(reader, &record)) == CSV_RECORD)
        if (!batch_row(run, &record) || run->out.failure != 0)
            return false;
    if (status == CSV_END)
        return true;
    output_flush(&run->out);
    explain_stop(status, reader, input);
    return false;
}

static int exit_status(const batch_counts *counts)
{
    if (counts->verdict[RODT_OUT_OF_ADJUSTMENT] > 0 || counts->verdict[RODT_INOPERATIVE] > 0)
        return STATUS_OUT;
    return counts->verdict[RODT_UNDETERMINED] > 0 ? STATUS_UNDETERMINED : STATUS_GOOD;
}

static int finish(batch_run *run, bool complete)
{
    if (complete && run->by != NULL)
        complete = batch_by_finish(run);
    if (!flush_output(run) || !complete)
        return STATUS_USAGE;
    batch_notes(&run->counts, run->options, run->setting.day);
    if (run->options->summary)
        batch_summary(&run->counts);
    if (run->options->summary && run->by != NULL)
        batch_by_summary(run);
    return exit_status(&run->counts);
}

static int run_batch(batch_run *run, batch_input *input)
{
    csv_reader reader;
    if (!csv_open(&reader, batch_input_source(input), run->options->separator)) {
        complain("no memory");
        return STATUS_USAGE;
    }
    int status = STATUS_USAGE;
    if (output_open(&run->out, STDOUT_FILENO))
        status = finish(run, judge_all(run, &reader, input));
    else
        complain("no memory");
    output_close(&run->out);
    batch_by_close(run);
    batch_header_free(&run->header);
    csv_close(&reader);
    return status;
}

/* Opens the input and runs; the rule set is ready. */
static int run_file(batch_run *run)
{
    batch_input input;
    if (!batch_input_open(&input, run->options->file, run->options->encoding))
        return STATUS_USAGE;
    int status = STATUS_USAGE;
    if (batch_input_is_output(&input, STDOUT_FILENO))
        complain("%s is the output too; write to another file", input.name);
    else
        status = run_batch(run, &input);
    batch_input_close(&input);
    return status;
}

/* The counts and cells are too large for a small stack. */
static int run_with(const batch_options *options)
{
    batch_run *run = calloc(1, sizeof *run);
    if (run == NULL)
        return complain("no memory");
    run->options = options;
    int status = open_setting(options->rules, options->limits, options->as_of, &run->setting);
    if (status == STATUS_CONTINUE)
        status = run_file(run);
    close_setting(&run->setting);
    free(run);
    return status;
}

int command_batch(int argc, char **argv)
{
    batch_options options;
    int status = batch_options_read(argc, argv, &options);
    if (status != STATUS_CONTINUE)
        return status;
    signal(SIGPIPE, SIG_IGN); /* a reader who has gone is seen as an error of write */
    return run_with(&options);
}
