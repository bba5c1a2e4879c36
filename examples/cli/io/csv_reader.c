/* SPDX-License-Identifier: Apache-2.0 */
/* The reader of comma-separated values: one buffer that slides over the input and grows with a record. */
#include "io/csv_reader.h"

#include <stdlib.h>
#include <string.h>

/* A line feed after the last byte stops the scanning loops, so they need no check for the end. */
static void set_stop(csv_reader *reader) { reader->buffer[reader->end] = '\n'; }

static bool fail(csv_reader *reader, csv_status fault)
{
    reader->fault = fault;
    return false;
}

static bool make_room(csv_reader *reader)
{
    if (reader->begin > 0) {
        memmove(reader->buffer, reader->buffer + reader->begin, reader->end - reader->begin);
        reader->end -= reader->begin;
        reader->begin = 0;
    }
    if (reader->end < reader->capacity)
        return true;
    if (reader->capacity >= CSV_RECORD_MAX)
        return fail(reader, CSV_E_LONG);
    char *grown = realloc(reader->buffer, reader->capacity * 2 + CSV_PAD);
    if (grown == NULL)
        return fail(reader, CSV_E_MEMORY);
    memset(grown + reader->capacity, 0, reader->capacity + CSV_PAD);
    reader->buffer = grown;
    reader->capacity *= 2;
    return true;
}

/* Appends what the source has. False: there is nothing more, or fault says why not. */
static bool more(csv_reader *reader)
{
    if (reader->source_done || !make_room(reader))
        return false;
    size_t room = reader->capacity - reader->end;
    long got = reader->source.read(reader->source.context, reader->buffer + reader->end, room);
    if (got < 0)
        return fail(reader, CSV_E_SOURCE);
    reader->source_done = got == 0;
    reader->end += (size_t)got;
    set_stop(reader);
    return got > 0;
}

/* Makes the byte at offset `at` of the record available. False at the end of the input or on a fault. */
static bool have(csv_reader *reader, size_t at)
{
    while (reader->begin + at >= reader->end) {
        if (!more(reader))
            return false;
    }
    return true;
}

static inline char byte_at(const csv_reader *reader, size_t at) { return reader->buffer[reader->begin + at]; }

bool csv_open(csv_reader *reader, csv_source source, char separator)
{
    *reader = (csv_reader){.source = source, .capacity = CSV_BLOCK, .line = 1, .fault_line = 1,
                           .first_line = true, .separator = separator};
    reader->buffer = calloc(1, CSV_BLOCK + CSV_PAD);
    reader->cells = malloc(CSV_CELLS_MAX * sizeof *reader->cells);
    if (reader->buffer == NULL || reader->cells == NULL) {
        csv_close(reader);
        return false;
    }
    set_stop(reader);
    reader->plain_stop['\n'] = reader->plain_stop['\r'] = 1;
    csv_set_separator(reader, separator);
    return true;
}

void csv_set_separator(csv_reader *reader, char separator)
{
    if (reader->separator != '\n')
        reader->plain_stop[(unsigned char)reader->separator] = 0;
    reader->plain_stop[(unsigned char)separator] = 1;
    reader->separator = separator;
}

bool csv_open_lines(csv_reader *reader, csv_source source)
{
    bool good = csv_open(reader, source, '\n');
    reader->lines = true;
    return good;
}

void csv_close(csv_reader *reader)
{
    free(reader->buffer);
    free(reader->cells);
    reader->buffer = NULL;
    reader->cells = NULL;
}

static bool add_cell(csv_reader *reader, size_t start, size_t end)
{
    if (reader->count == CSV_CELLS_MAX)
        return fail(reader, CSV_E_CELLS);
    reader->cells[reader->count++] = (csv_cell){.start = (uint32_t)start, .end = (uint32_t)end};
    return true;
}

/* A carriage return ends a line before a line feed, at the end of the input (its line feed was cut off), and
 * alone in a file whose first line ends so; elsewhere it is a byte of a cell like any other. `scan` is its
 * offset. */
static bool carriage_return_ends(csv_reader *reader)
{
    if (!have(reader, reader->scan + 1) || byte_at(reader, reader->scan + 1) == '\n')
        return true;
    if (reader->first_line)
        reader->cr_ends = true;
    return reader->cr_ends;
}

/* The next line end in the buffer, or the stop behind it. In steps: a line may be full of carriage returns. */
#define LINE_STEP 256
static const char *find_line_end(const csv_reader *reader, const char *at)
{
    const char *const end = reader->buffer + reader->end;
    const char *found = NULL;
    while (at < end && found == NULL) {
        const size_t size = end - at < LINE_STEP ? (size_t)(end - at) : LINE_STEP;
        const char *line_feed = memchr(at, '\n', size);
        found = memchr(at, '\r', line_feed != NULL ? (size_t)(line_feed - at) : size);
        if (found == NULL)
            found = line_feed;
        at += size;
    }
    return found != NULL ? found : end;
}

/* Moves scan to the end of a plain cell. False on a fault. */
static bool scan_plain(csv_reader *reader)
{
    for (;;) {
        const char *at = reader->buffer + reader->begin + reader->scan;
        if (reader->lines)
            at = find_line_end(reader, at);
        while (!reader->plain_stop[(unsigned char)*at])
            at++;
        reader->scan = (size_t)(at - reader->buffer) - reader->begin;
        if (reader->begin + reader->scan == reader->end) {
            if (!have(reader, reader->scan))
                return reader->fault == CSV_RECORD;
            continue;
        }
        if (byte_at(reader, reader->scan) != '\r' || carriage_return_ends(reader))
            return reader->fault == CSV_RECORD;
        reader->scan++;
    }
}

typedef enum quoted_end { QUOTED_GOOD, QUOTED_BAD, QUOTED_FAULT } quoted_end;

/* Counts the lines within a quoted cell; a carriage return counts unless a line feed follows. */
static void count_line(csv_reader *reader, char byte)
{
    bool alone = byte == '\r' && reader->cr_ends &&
                 (!have(reader, reader->scan + 1) || byte_at(reader, reader->scan + 1) != '\n');
    if (byte == '\n' || alone)
        reader->line++;
}

/* True if the quote at scan closes the cell: the input, the line or the cell ends after it. */
static bool closes(csv_reader *reader)
{
    reader->scan++;
    if (!have(reader, reader->scan))
        return true;
    char next = byte_at(reader, reader->scan);
    if (next == '\r')
        return carriage_return_ends(reader);
    return reader->plain_stop[(unsigned char)next] != 0;
}

/* Moves scan from the opening quote to the end of a quoted cell. */
static quoted_end scan_quoted(csv_reader *reader)
{
    for (reader->scan++;; reader->scan++) {
        if (!have(reader, reader->scan))
            return reader->fault == CSV_RECORD ? QUOTED_BAD : QUOTED_FAULT;
        char byte = byte_at(reader, reader->scan);
        if (byte != '"') {
            count_line(reader, byte);
            continue;
        }
        if (have(reader, reader->scan + 1) && byte_at(reader, reader->scan + 1) == '"') {
            reader->scan++;
            continue;
        }
        bool good = closes(reader);
        if (reader->fault != CSV_RECORD)
            return QUOTED_FAULT;
        return good ? QUOTED_GOOD : QUOTED_BAD;
    }
}

/* Splits the record into cells; scan ends on its line end or at the end of the input. */
static quoted_end scan_cells(csv_reader *reader, bool quotes)
{
    reader->scan = 0;
    reader->count = 0;
    for (;;) {
        size_t start = reader->scan;
        quoted_end end = QUOTED_GOOD;
        if (quotes && have(reader, start) && byte_at(reader, start) == '"')
            end = scan_quoted(reader);
        else if (!scan_plain(reader))
            end = QUOTED_FAULT;
        if (end != QUOTED_GOOD)
            return end;
        if (!add_cell(reader, start, reader->scan))
            return QUOTED_FAULT;
        if (!have(reader, reader->scan)) /* a fault would have ended the cell */
            return QUOTED_GOOD;
        char stop = byte_at(reader, reader->scan);
        if (stop == '\n' || stop == '\r')
            return QUOTED_GOOD;
        reader->scan++;
    }
}

static size_t line_end_size(csv_reader *reader)
{
    if (!have(reader, reader->scan))
        return 0;
    bool pair = byte_at(reader, reader->scan) == '\r' && have(reader, reader->scan + 1) &&
                byte_at(reader, reader->scan + 1) == '\n';
    return pair ? 2 : 1;
}

static void skip_bom(csv_reader *reader)
{
    if (have(reader, 2) && memcmp(reader->buffer, "\xEF\xBB\xBF", 3) == 0) {
        reader->bom = true;
        reader->begin = 3;
    }
}

static csv_status give_fault(csv_reader *reader, uint64_t line)
{
    reader->fault_line = line;
    return reader->fault;
}

/* Every line of an adversarial file could swallow the rest of it, so the bytes that are scanned twice are limited. */
#ifndef RESCAN_BUDGET
#define RESCAN_BUDGET ((size_t)1 << 30)
#endif

/* A stray quote swallows rows until the next one; its line is then scanned again without quotes. The same is done
 * when a record of several lines grows beyond the limits. */
static bool is_swallowing(csv_reader *reader, uint64_t line)
{
    bool too_much = reader->fault == CSV_E_LONG || reader->fault == CSV_E_CELLS;
    if (!too_much || reader->line == line)
        return false;
    reader->fault = CSV_RECORD;
    return true;
}

static quoted_end rescan_line(csv_reader *reader, uint64_t line)
{
    reader->rescan_used += reader->scan;
    if (reader->rescan_used > RESCAN_BUDGET) {
        fail(reader, CSV_E_QUOTES);
        return QUOTED_FAULT;
    }
    reader->line = line;
    return scan_cells(reader, false);
}

static void refund_rescan(csv_reader *reader, size_t taken)
{
    reader->rescan_used -= taken < reader->rescan_used ? taken : reader->rescan_used;
}

csv_status csv_next(csv_reader *reader, csv_record *record)
{
    if (reader->first_line)
        skip_bom(reader);
    uint64_t line = reader->line;
    reader->scan = 0;
    if (reader->fault != CSV_RECORD)
        return reader->fault;
    if (!have(reader, 0))
        return reader->fault == CSV_RECORD ? CSV_END : give_fault(reader, line);
    quoted_end end = scan_cells(reader, !reader->lines);
    bool bad = end == QUOTED_BAD || (end == QUOTED_FAULT && is_swallowing(reader, line));
    if (bad)
        end = rescan_line(reader, line);
    size_t end_size = end == QUOTED_GOOD ? line_end_size(reader) : 0;
    if (reader->fault != CSV_RECORD)
        return give_fault(reader, line);
    const char *bytes = reader->buffer + reader->begin;
    *record = (csv_record){.bytes = bytes, .size = reader->scan, .line_end = bytes + reader->scan,
                           .line_end_size = end_size, .line = line, .cells = reader->cells,
                           .count = reader->count, .bad_quotes = bad};
    reader->begin += reader->scan + end_size;
    refund_rescan(reader, reader->scan + end_size);
    reader->line++;
    reader->first_line = false;
    return CSV_RECORD;
}

void csv_unread(csv_reader *reader, const csv_record *record)
{
    reader->begin -= record->size + record->line_end_size;
    reader->line = record->line;
}

static size_t unquote(const char *from, size_t size, char *text, size_t room)
{
    size_t used = 0;
    for (size_t i = 1; i + 1 < size; i++) {
        if (used + 1 >= room)
            return CSV_NO_FIT;
        text[used++] = from[i];
        if (from[i] == '"')
            i++;
    }
    text[used] = '\0';
    return used;
}

size_t csv_text(const csv_record *record, size_t index, char *text, size_t size)
{
    const char *from = record->bytes + record->cells[index].start;
    size_t length = record->cells[index].end - record->cells[index].start;
    if (size == 0)
        return CSV_NO_FIT;
    if (length > 0 && from[0] == '"' && !record->bad_quotes)
        return unquote(from, length, text, size);
    if (length >= size)
        return CSV_NO_FIT;
    memcpy(text, from, length);
    text[length] = '\0';
    return length;
}

bool csv_is_blank(const csv_record *record)
{
    for (size_t i = 0; i < record->count; i++) {
        const csv_cell *cell = &record->cells[i];
        const char *at = record->bytes + cell->start;
        size_t size = cell->end - cell->start;
        bool quoted = size > 0 && at[0] == '"' && !record->bad_quotes;
        for (size_t k = quoted ? 1 : 0; k + (quoted ? 1 : 0) < size; k++)
            if (at[k] != ' ' && at[k] != '\t' && at[k] != '\r' && at[k] != '\n')
                return false;
    }
    return true;
}
