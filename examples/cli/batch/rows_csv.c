/* SPDX-License-Identifier: Apache-2.0 */
/* The rows of a CSV file: each is written as it came, with its judgement as five more cells. */
#include "batch/rows_csv.h"
#include "batch/by_vehicle.h"
#include "batch/cache.h"
#include "batch/results.h"
#include "batch/workbook.h"
#include "ui/language.h"

#include <string.h>

void batch_write_header(batch_chunk *chunk, const csv_record *record)
{
    output_bytes(&chunk->out, record->bytes, record->size);
    for (size_t i = 0; i < batch_result_count(chunk->run->options); i++) {
        output_bytes(&chunk->out, &chunk->run->separator, 1);
        output_text(&chunk->out, batch_result_name(chunk->run->options, i));
    }
    output_bytes(&chunk->out, record->line_end, record->line_end_size);
}

static void write_separators(batch_chunk *chunk, size_t count)
{
    for (size_t i = 0; i < count; i++)
        output_bytes(&chunk->out, &chunk->run->separator, 1);
}

/* The record as it came, with empty cells up to the width of the header. */
static void write_input(batch_chunk *chunk, const csv_record *record)
{
    output_bytes(&chunk->out, record->bytes, record->size);
    if (record->count < chunk->run->header.count)
        write_separators(chunk, chunk->run->header.count - record->count);
}

/* False: the run must stop. */
static bool pass_through(batch_chunk *chunk, const csv_record *record)
{
    if (chunk->run->by != NULL)
        return true;
    if (chunk->run->workbook != NULL)
        return batch_workbook_pass(chunk, record);
    write_input(chunk, record);
    write_separators(chunk, batch_result_count(chunk->run->options));
    output_bytes(&chunk->out, record->line_end, record->line_end_size);
    return true;
}

static rodt_form read_text(batch_chunk *chunk, const csv_record *record)
{
    const char *cell[BATCH_FIELDS];
    for (int field = 0; field < BATCH_FIELDS; field++)
        cell[field] = batch_cell(chunk, record, (rodt_field)field);
    return batch_text(chunk->run, cell);
}

static text_place write_length(batch_chunk *chunk, rodt_length length)
{
    char text[RODT_LENGTH_TEXT_SIZE];
    text_place place = {.start = chunk->out.used};
    if (rodt_length_given(length) && rodt_length_format(length, text, sizeof text, NULL) == RODT_OK)
        output_text(&chunk->out, text);
    place.end = chunk->out.used;
    write_separators(chunk, 1);
    return place;
}

static void write_reasons(batch_chunk *chunk, uint64_t reasons, const char *error)
{
    char text[REASONS_TEXT_SIZE];
    output_bytes(&chunk->out, text, batch_reasons(reasons, error, text));
}

/* A decimal comma that is the separator too stands in quotes. */
static void write_number(batch_chunk *chunk, const rodt_finding *finding, int number)
{
    const batch_options *options = chunk->run->options;
    char text[NUMBER_TEXT_SIZE];
    size_t size = batch_number(options, finding, number, text);
    char *point = size > 0 && options->style.decimal_comma ? memchr(text, '.', size) : NULL;
    bool quoted = point != NULL && chunk->run->separator == ',';
    if (point != NULL)
        *point = ',';
    write_separators(chunk, 1);
    output_bytes(&chunk->out, "\"", quoted);
    output_bytes(&chunk->out, text, size);
    output_bytes(&chunk->out, "\"", quoted);
}

/* False: the run must stop. */
static bool write_row(batch_chunk *chunk, const csv_record *record, const rodt_finding *finding, const char *error)
{
    if (chunk->run->by != NULL)
        return batch_by_row(chunk, record, finding);
    if (chunk->run->workbook != NULL)
        return batch_workbook_row(chunk, record, finding, error);
    write_input(chunk, record);
    write_separators(chunk, 1);
    chunk->own[OWN_STROKE] = write_length(chunk, finding->applied_stroke);
    (void)write_length(chunk, finding->limit);
    chunk->own[OWN_MARGIN] = write_length(chunk, finding->margin);
    output_text(&chunk->out, rodt_verdict_name(finding->verdict));
    output_bytes(&chunk->out, &chunk->run->separator, 1);
    write_reasons(chunk, finding->reasons, error);
    for (int i = 0; i < NUMBERS && chunk->run->options->decimals >= 0; i++)
        write_number(chunk, finding, i);
    output_bytes(&chunk->out, record->line_end, record->line_end_size);
    return true;
}

static bool pass_header(batch_chunk *chunk, const csv_record *record)
{
    chunk->passed.headers++;
    return pass_through(chunk, record);
}

static bool refuse_header(batch_chunk *chunk, const csv_record *record)
{
    chunk->stop_hint = TO_SAY("files with different columns were joined here; judge them one by one");
    return batch_chunk_stop(chunk, record->line, "a second header line with other columns");
}

/* Cells that may have slipped into other columns are not judged: a stroke of theirs would be a guess. */
static bool write_unjudged(batch_chunk *chunk, const csv_record *record, row_error error)
{
    rodt_finding none = {.verdict = RODT_VERDICT_UNDETERMINED};
    batch_repeat repeat = batch_header_compare(&chunk->run->header, record);
    if (repeat == BATCH_OTHER_HEADER && !record->bad_quotes)
        return refuse_header(chunk, record);
    if (repeat == BATCH_SAME_HEADER && !record->bad_quotes)
        return pass_header(chunk, record);
    batch_chunk_add_error(chunk, error, record);
    batch_tally tally = batch_tally_of(&none, chunk->run->options->summary);
    return batch_chunk_count_row(chunk, &tally) && write_row(chunk, record, &none, row_error_code(error));
}

/* The cells of a record by field, with their quotes. */
static void take_cells(const batch_chunk *chunk, const csv_record *record, rodt_text_span cells[RODT_FIELD_ROOM])
{
    for (int field = 0; field < RODT_READING_FIELDS; field++) {
        size_t column = chunk->run->header.columns.column[field];
        cells[field] = (rodt_text_span){NULL, 0};
        if (column == COLUMN_NONE)
            continue;
        const csv_cell *cell = &record->cells[column];
        cells[field] = (rodt_text_span){record->bytes + cell->start, cell->end - cell->start};
    }
}

static bool write_cached(batch_chunk *chunk, const csv_record *record, const cached_row *cached)
{
    if (chunk->run->by != NULL)
        return batch_by_cached(chunk, record, cached);
    output_bytes(&chunk->out, record->bytes, record->size);
    output_bytes(&chunk->out, cached->bytes, cached->size);
    output_bytes(&chunk->out, record->line_end, record->line_end_size);
    return true;
}

/* Caches the result of a row of full width; `at` is where what was written after its own bytes begins. */
static void keep_result(batch_chunk *chunk, const csv_record *record, const rodt_form *text,
                        const rodt_finding *finding, const batch_tally *tally, size_t at)
{
    char brake[RESULT_BYTES];
    if (chunk->cache == NULL || record->count != chunk->run->header.count)
        return;
    if (chunk->run->by != NULL)
        batch_cache_keep(chunk, text, tally, brake, batch_by_result(finding, brake));
    else
        batch_cache_keep(chunk, text, tally, chunk->out.buffer + at, chunk->out.used - at - record->line_end_size);
}

/* Counts and writes a row that was judged. */
static bool write_judged(batch_chunk *chunk, const csv_record *record, const rodt_form *text,
                         const rodt_finding *finding, const batch_tally *tally)
{
    bool is_short = record->count < chunk->run->header.count;
    if (is_short)
        batch_chunk_add_error(chunk, ROW_SHORT_RECORD, record);
    size_t at = chunk->out.used + record->size;
    if (!batch_chunk_count_row(chunk, tally) ||
        !write_row(chunk, record, finding, is_short ? row_error_code(ROW_SHORT_RECORD) : NULL))
        return false;
    keep_result(chunk, record, text, finding, tally, at);
    return true;
}

/* A heading is no chamber: only a row whose chamber cannot be read may be a header line. */
static bool judge_row(batch_chunk *chunk, const csv_record *record)
{
    rodt_finding finding;
    rodt_text_span cells[RODT_FIELD_ROOM];
    const bool is_active = batch_cache_is_active(chunk) && record->count == chunk->run->header.count;
    const cached_row *cached = NULL;
    if (is_active) {
        take_cells(chunk, record, cells);
        if (!chunk->cache->is_new_row)
            cached = rodt_row_cache_find_cells(chunk->cache->rows, cells);
    }
    if (cached != NULL)
        return write_cached(chunk, record, cached);
    const rodt_form text = read_text(chunk, record);
    if (is_active)
        cached = rodt_row_cache_read(chunk->cache->rows, cells, &text);
    if (cached != NULL)
        return write_cached(chunk, record, cached);
    rodt_status status = rodt_form_judge_row(&text, chunk->run->context.rules, &finding, NULL);
    if (status != RODT_OK)
        return batch_chunk_stop_by_status(chunk, record->line, status);
    batch_repeat repeat = BATCH_NO_HEADER;
    if (rodt_finding_has(&finding, RODT_REASON_CHAMBER_UNREADABLE))
        repeat = batch_header_compare(&chunk->run->header, record);
    if (repeat != BATCH_NO_HEADER)
        return repeat == BATCH_SAME_HEADER ? pass_header(chunk, record) : refuse_header(chunk, record);
    batch_tally tally = batch_chunk_tally(chunk, &text, &finding, record);
    return write_judged(chunk, record, &text, &finding, &tally);
}

bool batch_write_record(batch_chunk *chunk, const csv_record *record)
{
    if (record->size == 0 && record->count == 1) {
        chunk->passed.empty_lines++;
        if (chunk->run->workbook != NULL)
            return batch_workbook_pass(chunk, record);
        output_bytes(&chunk->out, record->line_end, chunk->run->by == NULL ? record->line_end_size : 0);
        return true;
    }
    if (batch_header_is_repeated(&chunk->run->header, record))
        return pass_header(chunk, record);
    if (csv_is_blank(record)) {
        chunk->passed.empty_records++;
        return pass_through(chunk, record);
    }
    if (record->bad_quotes)
        return write_unjudged(chunk, record, ROW_BAD_QUOTES);
    if (record->count > chunk->run->header.count)
        return write_unjudged(chunk, record, ROW_LONG_RECORD);
    return judge_row(chunk, record);
}
