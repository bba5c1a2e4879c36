/* SPDX-License-Identifier: Apache-2.0 */
/* A chunk of the file: its rows, its counts, and how it stops the run. */
#include "batch/chunk.h"
#include "ui/language.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

void batch_chunk_clear(batch_chunk *chunk)
{
    chunk->passed = (passthrough_counts){0};
    chunk->out.used = 0;
    chunk->tally_count = 0;
    chunk->lines = 0;
    chunk->bytes_read = 0;
}

bool batch_chunk_stop(batch_chunk *chunk, uint64_t line, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(chunk->stop_message, sizeof chunk->stop_message, say(format), arguments);
    va_end(arguments);
    chunk->stopped = true;
    chunk->stop_line = line;
    return false;
}

bool batch_chunk_stop_by_status(batch_chunk *chunk, uint64_t line, rodt_status status)
{
    char said[SAID_SIZE];
    return batch_chunk_stop(chunk, line, "%s", say_status(status, said));
}

static bool make_room(batch_chunk *chunk)
{
    size_t room = chunk->tally_room == 0 ? 256 : chunk->tally_room * 2;
    struct counted_tally *grown = realloc(chunk->tallies, room * sizeof *grown);
    if (grown == NULL)
        return batch_chunk_stop(chunk, 0, "no memory");
    chunk->tallies = grown;
    chunk->tally_room = room;
    return true;
}

bool batch_chunk_count(batch_chunk *chunk, const batch_tally *tally, uint64_t rows)
{
    if (chunk->tally_count == chunk->tally_room && !make_room(chunk))
        return false;
    chunk->tallies[chunk->tally_count++] = (struct counted_tally){*tally, rows};
    return true;
}

void batch_chunk_add_error(batch_chunk *chunk, row_error error, const csv_record *record)
{
    if (chunk->passed.errors[error]++ == 0)
        chunk->passed.error_lines[error] = record->line;
}

/* Replaces a text that no reader may get: one with zero bytes, or longer than any reading. */
#define UNREADABLE "\xEF\xBF\xBD"

const char *batch_cell(batch_chunk *chunk, const csv_record *record, rodt_field field)
{
    size_t column = chunk->run->header.columns.column[field];
    char *text = chunk->text[field];
    if (column >= record->count)
        return NULL;
    size_t size = csv_text(record, column, text, COLUMN_TEXT_SIZE);
    if (size == CSV_NO_FIT || memchr(text, '\0', size) != NULL)
        memcpy(text, UNREADABLE, sizeof UNREADABLE);
    return text;
}

rodt_form batch_text(const batch_run *run, const char *const cell[BATCH_FIELDS])
{
    rodt_form text = {.style = run->options->style, .date_order = run->options->date_order,
                              .default_day = run->context.day};
    for (int field = 0; field < RODT_READING_FIELDS; field++)
        rodt_form_set(&text, (rodt_field)field, cell[field]);
    return text;
}

/* True for a row without a day of its own. */
static bool is_undated(const rodt_form *text)
{
    rodt_date day;
    return text->date == NULL ||
           rodt_date_parse_n(text->date, strlen(text->date), text->date_order, &day, NULL) == RODT_E_EMPTY;
}

batch_tally batch_chunk_tally(batch_chunk *chunk, const rodt_form *text, const rodt_finding *finding,
                              const csv_record *record)
{
    batch_tally tally = batch_tally_of(finding, chunk->run->options->summary);
    tally.undated = is_undated(text);
    tally.other_order =
        text->date != NULL && rodt_date_contradicts(text->date, strlen(text->date), text->date_order);
    if (tally.other_order && chunk->passed.other_order_line == 0)
        chunk->passed.other_order_line = record->line;
    return tally;
}
