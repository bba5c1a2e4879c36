/* SPDX-License-Identifier: Apache-2.0 */
/* Parts of comma-separated values: where whole records end, found without parting them into cells. */
#include "io/csv_reader.h"

#include <stdlib.h>
#include <string.h>

/* A piece of the buffer that is searched; `safe` is the end of the last record that is surely whole. */
typedef struct stretch {
    const char *bytes;
    size_t size;
    size_t safe;
    char separator;
} stretch;

/* The last line feed of from .. until - 1 ends a record there. */
static void take_lines(stretch *of, size_t from, size_t until)
{
    while (until > from && of->bytes[until - 1] != '\n')
        until--;
    if (until > from)
        of->safe = until;
}

static bool find_quote(const stretch *of, size_t from, size_t *at)
{
    const char *found = from < of->size ? memchr(of->bytes + from, '"', of->size - from) : NULL;
    if (found != NULL)
        *at = (size_t)(found - of->bytes);
    return found != NULL;
}

/* The quote that closes a cell. False: none is there, or what stands behind it is not there. */
static bool find_close(const stretch *of, size_t open, size_t *close)
{
    size_t from = open + 1;
    while (find_quote(of, from, close)) {
        if (*close + 1 >= of->size)
            return false;
        if (of->bytes[*close + 1] != '"')
            return true;
        from = *close + 2;
    }
    return false;
}

static bool ends_well(const stretch *of, size_t close)
{
    const char *behind = of->bytes + close + 1;
    return *behind == of->separator || *behind == '\n' ||
           (*behind == '\r' && close + 2 < of->size && behind[1] == '\n');
}

static bool opens_cell(const stretch *of, size_t at)
{
    return at == 0 || of->bytes[at - 1] == of->separator || of->bytes[at - 1] == '\n';
}

/* A record of several lines is taken only if it cannot have too many cells: those are parted in another way. */
static void mind_lines(stretch *of, size_t open, size_t close)
{
    bool several = memchr(of->bytes + open, '\n', close - open) != NULL;
    if (several && of->size - of->safe >= CSV_CELLS_MAX)
        of->size = of->safe + CSV_CELLS_MAX - 1;
}

size_t csv_complete_size(const csv_reader *reader)
{
    size_t size = reader->end - reader->begin;
    if (reader->cr_ends || reader->first_line || reader->fault != CSV_RECORD)
        return 0;
    stretch of = {.bytes = reader->buffer + reader->begin, .size = size < CSV_BLOCK ? size : CSV_BLOCK,
                  .separator = reader->separator};
    size_t from = 0;
    size_t open;
    size_t close;
    while (!reader->lines && find_quote(&of, from, &open)) {
        take_lines(&of, from, open);
        from = open + 1;
        if (!opens_cell(&of, open))
            continue;
        if (!find_close(&of, open, &close) || !ends_well(&of, close))
            return of.safe;
        mind_lines(&of, open, close);
        from = close + 1;
    }
    if (from < of.size)
        take_lines(&of, from, of.size);
    return of.safe;
}

bool csv_open_chunk(csv_reader *part, const csv_reader *whole)
{
    if (!csv_open(part, whole->source, whole->separator))
        return false;
    part->source_done = true;
    part->first_line = false;
    part->lines = whole->lines;
    return true;
}

/* The buffers change hands where they can; only the begun record behind the part is copied. */
static void move_bytes(csv_reader *whole, size_t size, csv_reader *part)
{
    size_t rest = whole->end - whole->begin - size;
    char *bytes = whole->buffer + whole->begin;
    if (whole->capacity != CSV_BLOCK || rest > CSV_BLOCK / 8) {
        memcpy(part->buffer, bytes, size);
        part->begin = 0;
        whole->begin += size;
        return;
    }
    memcpy(part->buffer, bytes + size, rest);
    char *given = whole->buffer;
    whole->buffer = part->buffer;
    part->buffer = given;
    part->begin = whole->begin;
    whole->begin = 0;
    whole->end = rest;
    whole->buffer[rest] = '\n';
}

void csv_move_chunk(csv_reader *whole, size_t size, csv_reader *part)
{
    part->line = whole->line;
    part->fault = CSV_RECORD;
    part->debt = 0;
    move_bytes(whole, size, part);
    part->end = part->begin + size;
    part->buffer[part->end] = '\n';
    whole->debt -= size < whole->debt ? size : whole->debt;
}
