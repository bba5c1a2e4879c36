/* SPDX-License-Identifier: Apache-2.0 */
/* `rodtravel batch`: every row of a CSV file, judged. */
#include "batch/by_vehicle.h"
#include "batch/chunk_run.h"
#include "batch/delivery.h"
#include "batch/rows_csv.h"
#include "batch/rows_ndjson.h"
#include "batch/summary.h"
#include "batch/workbook.h"
#include "batch/workers.h"
#include "commands.h"
#include "input/rule_context.h"
#include "input/title_lines.h"
#include "io/interrupt.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/message.h"

#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

/* Lines of JSON have no header, but the first object is checked like the first row of a table. */
static bool check_first_object(batch_chunk *chunk, csv_reader *reader)
{
    batch_run *run = chunk->run;
    csv_record first;
    if (!columns_of_members(&run->header.columns, &run->options->columns) ||
        !columns_unit_agrees(&run->header.columns, run->options->style.unit))
        return false;
    if (csv_next(reader, &first) == CSV_RECORD) {
        batch_check_first_object(chunk, &first);
        csv_unread(reader, &first);
    }
    return true;
}

/* False: the headings name another unit than the one of bare numbers. */
static bool check_first_row(batch_run *run, csv_reader *reader)
{
    csv_record first;
    if (columns_need_first_row(&run->header.columns, &run->options->columns) &&
        csv_next(reader, &first) == CSV_RECORD) {
        columns_check_first_row(&run->header.columns, &run->options->columns, &first);
        csv_unread(reader, &first);
    }
    return columns_unit_agrees(&run->header.columns, run->options->style.unit);
}

/* The reader of the chunk was opened before. */
static csv_status pass_titles(batch_chunk *chunk, csv_reader *reader, title_lines *titles, csv_record *record)
{
    batch_run *run = chunk->run;
    csv_status status = titles_pass(titles, reader, &run->options->columns, run->options->separator_given,
                                    &run->separator, record);
    csv_set_separator(&chunk->reader, run->separator);
    return status;
}

/* Writes the header, or finds in it what takes the place of the rows. */
static bool open_output(batch_chunk *chunk, csv_reader *reader, const title_lines *titles, const csv_record *header)
{
    batch_run *run = chunk->run;
    if (run->options->by_count > 0)
        return batch_by_find(run, header) && check_first_row(run, reader) && batch_by_open(chunk);
    if (run->options->workbook)
        return batch_workbook_open(chunk) && batch_workbook_header(chunk, titles, header) &&
               check_first_row(run, reader);
    output_bytes(&chunk->out, titles->bytes, titles->count > 0 ? titles->size : 0);
    batch_write_header(chunk, header);
    return check_first_row(run, reader);
}

/* Errors of the header are printed at once or when the chunk is delivered. */
static bool read_header(batch_chunk *chunk, csv_reader *reader, title_lines *titles, const input_file *input)
{
    batch_run *run = chunk->run;
    csv_record record;
    csv_status status;
    bool rows = run->options->by_count == 0 && !run->options->workbook;
    if ((status = csv_next(reader, &record)) == CSV_RECORD && reader->bom && rows)
        output_text(&chunk->out, "\xEF\xBB\xBF");
    for (; status == CSV_RECORD && record.size == 0; status = csv_next(reader, &record)) {
        chunk->passed.empty_lines++;
        output_bytes(&chunk->out, record.line_end, rows ? record.line_end_size : 0);
    }
    if (status == CSV_RECORD)
        status = pass_titles(chunk, reader, titles, &record);
    chunk->fault = status == CSV_END ? CSV_RECORD : status;
    chunk->stopped = chunk->fault != CSV_RECORD;
    chunk->stop_line = reader->fault_line;
    if (status == CSV_END)
        print_error("%s: there is no header line: the input is empty", input->name);
    if (status != CSV_RECORD || !batch_header_read(&run->header, &record, &run->options->columns, run->separator))
        return false;
    chunk->lines = reader->line - 1;
    return open_output(chunk, reader, titles, &record);
}

static int exit_status(const batch_counts *counts)
{
    if (counts->verdict[RODT_VERDICT_OUT_OF_ADJUSTMENT] > 0 || counts->verdict[RODT_VERDICT_INOPERATIVE] > 0)
        return STATUS_OUT;
    return counts->verdict[RODT_VERDICT_UNDETERMINED] > 0 ? STATUS_UNDETERMINED : STATUS_GOOD;
}

/* Writes the lines of vehicles that are still open, or the workbook. */
static bool finish(batch_chunk *chunk, const input_file *input)
{
    batch_chunk_clear(chunk);
    bool good = (chunk->run->by == NULL || batch_by_finish(chunk)) &&
                (chunk->run->workbook == NULL || batch_workbook_finish(chunk));
    return batch_deliver(chunk, input) && good;
}

static int report(batch_run *run)
{
    batch_progress_hide(&run->progress);
    batch_notes(&run->counts, run->options, &run->context);
    if (run->by != NULL)
        batch_by_note(run);
    if (run->options->json) {
        int status = batch_summary_json(run);
        return status == STATUS_CONTINUE ? exit_status(&run->counts) : status;
    }
    if (run->options->summary)
        batch_summary(&run->counts);
    if (run->options->summary && run->by != NULL)
        batch_by_summary(run);
    return exit_status(&run->counts);
}

/* Threads as wanted, or as make sense; one counts vehicles or writes a workbook. */
static unsigned count_jobs(const batch_options *options, const input_file *input)
{
    long jobs = (long)options->jobs;
    if (options->jobs == 0)
        jobs = input_file_is_small(input) ? 1 : sysconf(_SC_NPROCESSORS_ONLN);
    if (jobs < 1 || options->by_count > 0 || options->workbook)
        jobs = 1;
    return jobs < (long)BATCH_JOBS_MOST ? (unsigned)jobs : BATCH_JOBS_MOST;
}

/* The cache of the first chunk is opened after the header, which decides which columns there are. */
static bool run_chunks(batch_chunk *chunk, csv_reader *reader, const input_file *input)
{
    unsigned jobs = count_jobs(chunk->run->options, input);
    batch_progress_open(&chunk->run->progress, input->size);
    bool members = chunk->run->options->columns.members;
    title_lines titles = {0};
    bool good = members ? check_first_object(chunk, reader) : read_header(chunk, reader, &titles, input);
    titles_free(&titles);
    if (good && !batch_chunk_open_cache(chunk, jobs)) {
        chunk->out.used = 0; /* a header alone would look like a file without rows */
        good = false;
    }
    return batch_deliver(chunk, input) && good && batch_run_workers(chunk->run, chunk, reader, input, jobs) &&
           finish(chunk, input);
}

static bool open_reader(csv_reader *reader, csv_source source, const batch_options *options)
{
    return options->columns.members ? csv_open_lines(reader, source) : csv_open(reader, source, options->separator);
}

/* The cells of a chunk are too large for a small stack. */
static int run_batch(batch_run *run, input_file *input)
{
    csv_reader reader;
    batch_chunk *chunk = calloc(1, sizeof *chunk);
    int status = STATUS_USAGE;
    bool opened = chunk != NULL && open_reader(&reader, input_file_source(input), run->options);
    if (opened && batch_chunk_open(chunk, run, &reader))
        status = run_chunks(chunk, &reader, input) ? report(run) : STATUS_USAGE;
    else
        print_error("no memory");
    vehicle_groups_close(run->by);
    batch_workbook_free(run);
    batch_header_free(&run->header);
    if (chunk != NULL)
        batch_chunk_close(chunk);
    if (opened)
        csv_close(&reader);
    free(chunk);
    return status;
}

/* Opens the input and runs; the rule set is ready. */
static int run_file(batch_run *run)
{
    input_file input;
    if (!input_file_open(&input, run->options->file, run->options->encoding))
        return STATUS_USAGE;
    int status = run_batch(run, &input);
    input_file_close(&input);
    return status;
}

/* The counts are too large for a small stack. */
static int run_with(const batch_options *options)
{
    batch_run *run = calloc(1, sizeof *run);
    if (run == NULL)
        return print_error("no memory");
    run->options = options;
    run->separator = options->separator;
    run->line = 1;
    run->counts.histogram = options->summary ? calloc(1, sizeof *run->counts.histogram) : NULL;
    if (options->summary && run->counts.histogram == NULL) {
        free(run);
        return print_error("no memory");
    }
    int status = rule_context_open(options->rules, NULL, options->limits, options->as_of, &run->context);
    if (status == STATUS_CONTINUE)
        status = run_file(run);
    rule_context_close(&run->context);
    free(run->counts.histogram);
    free(run);
    return status;
}

static int run_command(int argc, char **argv)
{
    batch_options options;
    int status = batch_options_read(&batch_command, argc, argv, &options);
    if (status != STATUS_CONTINUE)
        return status;
    signal(SIGPIPE, SIG_IGN); /* a reader who has gone is seen as an error of write */
    interrupt_listen();
    return run_with(&options);
}

static const file_argument files[] = {{FILE_OPERAND, false}, {BATCH_OPTION_LIMITS, false}};

const command_spec batch_command = {.name = "batch",
                                    .operands = "[FILE|-] [OPTION]...",
                                    .summary = "judge every row of a CSV file",
                                    .help = batch_help,
                                    .options = batch_option_specs,
                                    .option_count = BATCH_OPTIONS,
                                    .files = files,
                                    .file_count = COUNT_OF(files),
                                    .run = run_command};
