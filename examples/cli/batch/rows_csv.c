/* SPDX-License-Identifier: Apache-2.0 */
/* The rows of `rodtravel batch`: each one is passed through as it came, its judgement behind it. */
#include "batch/rows_csv.h"
#include "batch/by_vehicle.h"
#include "batch/cache.h"

#include <string.h>

static const char *const result_headings[] = {"applied_stroke", "limit", "margin", "verdict", "reasons"};
#define RESULTS (sizeof result_headings / sizeof result_headings[0])

void batch_write_header(batch_part *part, const csv_record *record)
{
    output_bytes(&part->out, record->bytes, record->size);
    for (size_t i = 0; i < RESULTS; i++) {
        output_bytes(&part->out, &part->run->options->separator, 1);
        output_text(&part->out, result_headings[i]);
    }
    output_bytes(&part->out, record->line_end, record->line_end_size);
}

static void write_separators(batch_part *part, size_t count)
{
    for (size_t i = 0; i < count; i++)
        output_bytes(&part->out, &part->run->options->separator, 1);
}

/* The record as it came, with empty cells up to the width of the header. */
static void write_input(batch_part *part, const csv_record *record)
{
    output_bytes(&part->out, record->bytes, record->size);
    if (record->count < part->run->header.count)
        write_separators(part, part->run->header.count - record->count);
}

static void pass_through(batch_part *part, const csv_record *record)
{
    if (part->run->by != NULL)
        return;
    write_input(part, record);
    write_separators(part, RESULTS);
    output_bytes(&part->out, record->line_end, record->line_end_size);
}

static rodt_reading_text read_text(batch_part *part, const csv_record *record)
{
    const char *cell[BATCH_FIELDS];
    for (int field = 0; field < BATCH_FIELDS; field++)
        cell[field] = batch_cell(part, record, (rodt_field)field);
    return batch_text(part->run, cell);
}

static void write_length(batch_part *part, rodt_length length)
{
    char text[RODT_LENGTH_TEXT_SIZE];
    if (rodt_length_given(length) && rodt_length_format(length, text, sizeof text) == RODT_OK)
        output_text(&part->out, text);
    write_separators(part, 1);
}

static void write_reasons(batch_part *part, uint64_t reasons, const char *flaw)
{
    const char *blank = "";
    for (int reason = 0; reason < RODT_REASON_END; reason++) {
        if ((reasons >> reason & 1u) == 0)
            continue;
        output_text(&part->out, blank);
        output_text(&part->out, rodt_reason_code((rodt_reason)reason));
        blank = " ";
    }
    if (flaw != NULL) {
        output_text(&part->out, blank);
        output_text(&part->out, flaw);
    }
}

/* False: the run must stop. */
static bool put_row(batch_part *part, const csv_record *record, const rodt_finding *finding, const char *flaw)
{
    if (part->run->by != NULL)
        return batch_by_row(part, record, finding);
    write_input(part, record);
    write_separators(part, 1);
    write_length(part, finding->applied_stroke);
    write_length(part, finding->limit);
    write_length(part, finding->margin);
    output_text(&part->out, rodt_verdict_name(finding->verdict));
    output_bytes(&part->out, &part->run->options->separator, 1);
    write_reasons(part, finding->reasons, flaw);
    output_bytes(&part->out, record->line_end, record->line_end_size);
    return true;
}

static bool pass_header(batch_part *part, const csv_record *record)
{
    part->passed.headers++;
    pass_through(part, record);
    return true;
}

static bool refuse_header(batch_part *part, const csv_record *record)
{
    part->stop_hint = "files with different columns were joined here; judge them one by one";
    return batch_part_stop(part, record->line, "a second header line with other columns");
}

/* Cells that may have slipped into other columns are not judged: a stroke of theirs would be a guess. */
static bool give_up_row(batch_part *part, const csv_record *record, row_error flaw)
{
    rodt_finding none = {.verdict = RODT_UNDETERMINED};
    batch_repeat repeat = batch_header_compare(&part->run->header, record);
    if (repeat == BATCH_OTHER_HEADER && !record->bad_quotes)
        return refuse_header(part, record);
    if (repeat == BATCH_SAME_HEADER && !record->bad_quotes)
        return pass_header(part, record);
    batch_part_flaw(part, flaw, record);
    batch_tally tally = batch_tally_of(&none, false, part->run->options->summary);
    return batch_count_row(part, &tally) && put_row(part, record, &none, batch_flaw_code(flaw));
}

/* The result of a row that is cached. */
static const cached_row *find_cached(batch_part *part, const csv_record *record, const rodt_reading_text *text)
{
    rodt_text_span cells[RODT_READING_FIELDS] = {{NULL, 0}};
    if (!batch_cache_is_active(part) || record->count != part->run->header.count)
        return NULL;
    for (int field = 0; field < RODT_READING_FIELDS; field++) {
        size_t column = part->run->header.columns.column[field];
        if (column == COLUMN_NONE)
            continue;
        const csv_cell *cell = &record->cells[column]; /* with its quotes */
        cells[field] = (rodt_text_span){record->bytes + cell->start, cell->end - cell->start};
    }
    return rodt_row_cache_read(part->cache->rows, cells, text);
}

static bool write_cached(batch_part *part, const csv_record *record, const cached_row *cached)
{
    if (part->run->by != NULL)
        return batch_by_cached(part, record, cached);
    output_bytes(&part->out, record->bytes, record->size);
    output_bytes(&part->out, cached->bytes, cached->size);
    output_bytes(&part->out, record->line_end, record->line_end_size);
    return true;
}

/* Caches the result of a row of full width; `at` is where what was written after its own bytes begins. */
static void keep_result(batch_part *part, const csv_record *record, const rodt_finding *finding,
                        const batch_tally *tally, size_t at)
{
    char brake[RESULT_BYTES];
    if (part->cache == NULL || record->count != part->run->header.count)
        return;
    if (part->run->by != NULL)
        batch_cache_keep(part, tally, brake, batch_by_result(finding, brake));
    else
        batch_cache_keep(part, tally, part->out.buffer + at, part->out.used - at - record->line_end_size);
}

/* Counts and writes a row that was judged. */
static bool write_judged(batch_part *part, const csv_record *record, const rodt_finding *finding, bool undated)
{
    bool is_short = record->count < part->run->header.count;
    batch_tally tally = batch_tally_of(finding, undated, part->run->options->summary);
    if (is_short)
        batch_part_flaw(part, BATCH_SHORT_RECORD, record);
    size_t at = part->out.used + record->size;
    if (!batch_count_row(part, &tally) ||
        !put_row(part, record, finding, is_short ? batch_flaw_code(BATCH_SHORT_RECORD) : NULL))
        return false;
    keep_result(part, record, finding, &tally, at);
    return true;
}

/* A heading is no chamber: only a row whose chamber cannot be read may be a header line. */
static bool judge_row(batch_part *part, const csv_record *record)
{
    rodt_finding finding;
    const rodt_reading_text text = read_text(part, record);
    const cached_row *cached = find_cached(part, record, &text);
    if (cached != NULL)
        return write_cached(part, record, cached);
    rodt_status status = rodt_judge_row(&text, part->run->setting.rules, &finding, NULL);
    if (status != RODT_OK)
        return batch_part_stop(part, record->line, "%s", rodt_status_text(status));
    batch_repeat repeat = BATCH_NO_HEADER;
    if (rodt_finding_has(&finding, RODT_REASON_CHAMBER_UNREADABLE))
        repeat = batch_header_compare(&part->run->header, record);
    if (repeat != BATCH_NO_HEADER)
        return repeat == BATCH_SAME_HEADER ? pass_header(part, record) : refuse_header(part, record);
    return write_judged(part, record, &finding, batch_is_undated(&text));
}

bool batch_row(batch_part *part, const csv_record *record)
{
    if (record->size == 0 && record->count == 1) {
        part->passed.empty_lines++;
        output_bytes(&part->out, record->line_end, part->run->by == NULL ? record->line_end_size : 0);
        return true;
    }
    if (batch_header_is_repeated(&part->run->header, record))
        return pass_header(part, record);
    if (csv_is_blank(record)) {
        part->passed.empty_records++;
        pass_through(part, record);
        return true;
    }
    if (record->bad_quotes)
        return give_up_row(part, record, BATCH_BAD_QUOTES);
    if (record->count > part->run->header.count)
        return give_up_row(part, record, BATCH_LONG_RECORD);
    return judge_row(part, record);
}
