/* SPDX-License-Identifier: Apache-2.0 */
/* A chunk of the file: its rows, its counts, and how it stops the run. */
#include "batch/chunk.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

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

void batch_part_flaw(batch_part *part, row_error flaw, const csv_record *record)
{
    if (part->passed.flaw[flaw]++ == 0)
        part->passed.flaw_line[flaw] = record->line;
}

/* What stands for a text that no reader may take: with zero bytes, or longer than any reading. */
#define UNREADABLE "\xEF\xBF\xBD"

const char *batch_cell(batch_part *part, const csv_record *record, rodt_field field)
{
    size_t column = part->run->header.columns.column[field];
    char *text = part->text[field];
    if (column >= record->count)
        return NULL;
    size_t size = csv_text(record, column, text, COLUMN_TEXT_SIZE);
    if (size == CSV_NO_FIT || memchr(text, '\0', size) != NULL)
        memcpy(text, UNREADABLE, sizeof UNREADABLE);
    return text;
}

rodt_reading_text batch_text(const batch_run *run, const char *const cell[BATCH_FIELDS])
{
    rodt_reading_text text = {.style = run->options->style, .date_order = run->options->date_order,
                              .default_day = run->setting.day};
    for (int field = 0; field < RODT_READING_FIELDS; field++)
        rodt_reading_text_set(&text, (rodt_field)field, cell[field]);
    return text;
}

bool batch_is_undated(const rodt_reading_text *text)
{
    rodt_date day;
    return text->date == NULL ||
           rodt_date_read(text->date, strlen(text->date), text->date_order, &day, NULL) == RODT_E_EMPTY;
}
