/* SPDX-License-Identifier: Apache-2.0 */
/* The rows of `rodtravel batch`: each one is passed through as it came, its judgement behind it. */
#include "batch.h"

#include <inttypes.h>
#include <string.h>

/* What stands for a text that no reader may take: with zero bytes, or longer than any reading. */
#define UNREADABLE "\xEF\xBF\xBD"

static const char *const result_headings[] = {"applied_stroke", "limit", "margin", "verdict", "reasons"};
#define RESULTS (sizeof result_headings / sizeof result_headings[0])

const char *batch_flaw_code(batch_flaw flaw)
{
    static const char *const codes[BATCH_FLAWS] = {"short-record", "long-record", "bad-quotes"};
    return codes[flaw];
}

void batch_write_header(batch_run *run, const csv_record *record)
{
    output_bytes(&run->out, record->bytes, record->size);
    for (size_t i = 0; i < RESULTS; i++) {
        output_bytes(&run->out, &run->options->separator, 1);
        output_text(&run->out, result_headings[i]);
    }
    output_bytes(&run->out, record->line_end, record->line_end_size);
}

static void write_separators(batch_run *run, size_t count)
{
    for (size_t i = 0; i < count; i++)
        output_bytes(&run->out, &run->options->separator, 1);
}

/* The record as it came, with empty cells up to the width of the header. */
static void write_input(batch_run *run, const csv_record *record)
{
    output_bytes(&run->out, record->bytes, record->size);
    if (record->count < run->header.count)
        write_separators(run, run->header.count - record->count);
}

static void pass_through(batch_run *run, const csv_record *record)
{
    if (run->by != NULL)
        return;
    write_input(run, record);
    write_separators(run, RESULTS);
    output_bytes(&run->out, record->line_end, record->line_end_size);
}

/* The text of a column, or NULL if the row does not have it. */
static const char *cell(batch_run *run, const csv_record *record, batch_word word)
{
    size_t column = run->header.column[word];
    char *text = run->text[word];
    if (column >= record->count)
        return NULL;
    size_t size = csv_text(record, column, text, BATCH_TEXT_SIZE);
    return size == CSV_NO_FIT || memchr(text, '\0', size) != NULL ? UNREADABLE : text;
}

static bool is_empty(const char *text) { return text == NULL || text[strspn(text, " \t\r\n")] == '\0'; }

static rodt_status judge(batch_run *run, const csv_record *record, rodt_finding *finding, bool *undated)
{
    const batch_options *options = run->options;
    rodt_reading_text text = {.chamber = cell(run, record, BATCH_CHAMBER),
                              .released = cell(run, record, BATCH_RELEASED),
                              .applied = cell(run, record, BATCH_APPLIED),
                              .stroke_class = cell(run, record, BATCH_STROKE_CLASS),
                              .rated_stroke = cell(run, record, BATCH_RATED_STROKE),
                              .marked_limit = cell(run, record, BATCH_MARKED_LIMIT),
                              .pressure = cell(run, record, BATCH_PSI),
                              .pressure_after = cell(run, record, BATCH_PSI_AFTER),
                              .division = cell(run, record, BATCH_DIVISION),
                              .day = cell(run, record, BATCH_DATE),
                              .unit = cell(run, record, BATCH_UNIT),
                              .engine = cell(run, record, BATCH_ENGINE),
                              .spring_brake = cell(run, record, BATCH_SPRING_BRAKE),
                              .drum = cell(run, record, BATCH_DRUM),
                              .style = options->style,
                              .date_order = options->date_order,
                              .default_day = run->setting.day};
    *undated = is_empty(text.day);
    return rodt_judge_row(&text, run->setting.rules, finding, NULL);
}

static void write_length(batch_run *run, rodt_length length)
{
    char text[RODT_LENGTH_TEXT_SIZE];
    if (rodt_length_given(length) && rodt_length_write(length, text, sizeof text) == RODT_OK)
        output_text(&run->out, text);
    write_separators(run, 1);
}

static void write_reasons(batch_run *run, uint64_t reasons, const char *flaw)
{
    const char *blank = "";
    for (int reason = 0; reason < RODT_REASON_END; reason++) {
        if ((reasons >> reason & 1u) == 0)
            continue;
        output_text(&run->out, blank);
        output_text(&run->out, rodt_reason_code((rodt_reason)reason));
        blank = " ";
    }
    if (flaw != NULL) {
        output_text(&run->out, blank);
        output_text(&run->out, flaw);
    }
}

/* False: the run must stop, said on stderr. */
static bool put_row(batch_run *run, const csv_record *record, const rodt_finding *finding, const char *flaw)
{
    if (run->by != NULL)
        return batch_by_row(run, record, finding);
    write_input(run, record);
    write_separators(run, 1);
    write_length(run, finding->applied_stroke);
    write_length(run, finding->limit);
    write_length(run, finding->margin);
    output_text(&run->out, rodt_verdict_name(finding->verdict));
    output_bytes(&run->out, &run->options->separator, 1);
    write_reasons(run, finding->reasons, flaw);
    output_bytes(&run->out, record->line_end, record->line_end_size);
    return true;
}

static bool pass_header(batch_run *run, const csv_record *record)
{
    run->counts.headers++;
    pass_through(run, record);
    return true;
}

static bool refuse_header(const csv_record *record)
{
    complain("line %" PRIu64 ": a second header line with other columns", record->line);
    complain("files with different columns were joined here; judge them one by one");
    return false;
}

/* Cells that may have slipped into other columns are not judged: a stroke of theirs would be a guess. */
static bool give_up_row(batch_run *run, const csv_record *record, batch_flaw flaw)
{
    rodt_finding none = {.verdict = RODT_UNDETERMINED};
    batch_repeat repeat = batch_header_compare(&run->header, record);
    if (repeat == BATCH_OTHER_HEADER && !record->bad_quotes)
        return refuse_header(record);
    if (repeat == BATCH_SAME_HEADER && !record->bad_quotes)
        return pass_header(run, record);
    batch_count_flaw(&run->counts, flaw, record->line);
    batch_count(&run->counts, &none, run->options->summary);
    return put_row(run, record, &none, batch_flaw_code(flaw));
}

/* A heading is no chamber: only where the chamber cannot be read a header line may stand. */
static bool judge_row(batch_run *run, const csv_record *record)
{
    rodt_finding finding;
    bool undated;
    rodt_status status = judge(run, record, &finding, &undated);
    if (status != RODT_OK) {
        complain("line %" PRIu64 ": %s", record->line, rodt_status_text(status));
        return false;
    }
    batch_repeat repeat = BATCH_NO_HEADER;
    if (rodt_finding_has(&finding, RODT_REASON_CHAMBER_UNREADABLE))
        repeat = batch_header_compare(&run->header, record);
    if (repeat != BATCH_NO_HEADER)
        return repeat == BATCH_SAME_HEADER ? pass_header(run, record) : refuse_header(record);
    bool is_short = record->count < run->header.count;
    if (is_short)
        batch_count_flaw(&run->counts, BATCH_SHORT_RECORD, record->line);
    run->counts.undated += undated;
    batch_count(&run->counts, &finding, run->options->summary);
    return put_row(run, record, &finding, is_short ? batch_flaw_code(BATCH_SHORT_RECORD) : NULL);
}

bool batch_row(batch_run *run, const csv_record *record)
{
    if (record->size == 0 && record->count == 1) {
        run->counts.empty_lines++;
        output_bytes(&run->out, record->line_end, run->by == NULL ? record->line_end_size : 0);
        return true;
    }
    if (batch_header_is_repeated(&run->header, record))
        return pass_header(run, record);
    if (csv_is_blank(record)) {
        run->counts.empty_records++;
        pass_through(run, record);
        return true;
    }
    if (record->bad_quotes)
        return give_up_row(run, record, BATCH_BAD_QUOTES);
    if (record->count > run->header.count)
        return give_up_row(run, record, BATCH_LONG_RECORD);
    return judge_row(run, record);
}
