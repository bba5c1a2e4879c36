/* SPDX-License-Identifier: Apache-2.0 */
/* Any bytes as comma-separated values, given in pieces of any size: the raw cells, joined again, are the bytes
 * that went in, up to the end or to the record that is refused. The structural index agrees with the reader. */
#include "io/csv_index.h"
#include "io/csv_reader.h"

#include <stdlib.h>
#include <string.h>

#include "source.h"

/* Gives the input in pieces, so that every place is once the end of a block. */
typedef struct pieces {
    const char *data;
    size_t size;
    size_t at;
    size_t piece;
} pieces;

static long give(void *context, char *buffer, size_t size)
{
    pieces *from = context;
    size_t count = from->size - from->at;
    if (count > from->piece)
        count = from->piece;
    if (count > size)
        count = size;
    if (count > 0)
        memcpy(buffer, from->data + from->at, count);
    from->at += count;
    return (long)count;
}

/* The next bytes of the input. */
static size_t match(const pieces *from, size_t at, const char *bytes, size_t size)
{
    demand(size <= from->size - at);
    demand(size == 0 || memcmp(from->data + at, bytes, size) == 0);
    return at + size;
}

static void check_text(const csv_record *record, size_t index)
{
    size_t raw = record->cells[index].end - record->cells[index].start;
    char text[64];
    size_t size = csv_text(record, index, text, sizeof text);
    if (size == CSV_NO_FIT) {
        demand(raw >= sizeof text);
        return;
    }
    demand(size <= raw && size < sizeof text && text[size] == '\0');
    demand(csv_text(record, index, text, size) == CSV_NO_FIT); /* without room for the zero byte */
}

static size_t check_record(const pieces *from, const csv_record *record, char separator, size_t at)
{
    demand(record->count >= 1 && record->count <= CSV_CELLS_MAX);
    for (size_t i = 0; i < record->count; i++) {
        const csv_cell *cell = &record->cells[i];
        demand(cell->start <= cell->end && cell->end <= record->size);
        if (i > 0)
            at = match(from, at, &separator, 1);
        at = match(from, at, record->bytes + cell->start, cell->end - cell->start);
        check_text(record, i);
    }
    (void)csv_is_blank(record);
    return match(from, at, record->line_end, record->line_end_size);
}

static void check(const uint8_t *data, size_t size, char separator, size_t piece)
{
    pieces from = {.data = (const char *)data, .size = size, .piece = piece};
    csv_source bytes = {.read = give, .context = &from};
    csv_reader reader;
    csv_record record;
    if (!csv_open(&reader, bytes, separator))
        return;
    size_t at = 0;
    uint64_t line = 0;
    csv_status status = csv_next(&reader, &record);
    if (reader.bom)
        at = 3;
    while (status == CSV_RECORD) {
        demand(record.line > line);
        line = record.line;
        at = check_record(&from, &record, separator, at);
        status = csv_next(&reader, &record);
    }
    demand(status != CSV_END || at == size);
    demand(status != CSV_E_QUOTES || (reader.fault_line >= line && at < size));
    demand(csv_next(&reader, &record) == status);
    csv_close(&reader);
}

/* --- The structural index ------------------------------------------------------------------------------ */

#define CELLS 64u

/* A row is split as the reader does it, or refused for what the reader alone can read. */
static void check_row(row_splitter *split, const char *bytes, const csv_record *record, char separator)
{
    static uint32_t ends[CELLS + SCAN_ENDS_MORE];
    uint32_t count = split(bytes, separator, CELLS, ends);
    bool refused = record->bad_quotes || record->count > CELLS || memchr(record->bytes, '\n', record->size) != NULL ||
                   memchr(record->bytes, '\0', record->size) != NULL;
    demand((count == 0) == refused && (count == 0 || count == record->count));
    for (uint32_t i = 0; i < count; i++) {
        bool last = i + 1 == count;
        demand(ends[i] == record->cells[i].end + (last ? record->line_end_size - 1 : 0));
    }
}

/* Rows that are split together: those at the start that are as wide as the first. */
typedef struct split_together {
    uint32_t ends[SPLIT_BYTES + SCAN_ENDS_MORE];
    uint32_t cells;
    uint32_t count;
} split_together;

static void split_first_rows(split_together *rows, const char *bytes, size_t size, char separator, uint32_t cells)
{
    rows->cells = cells;
    rows->count = split_rows(bytes, size, separator, cells, rows->ends, scan_find_8, scan_write);
#ifdef SCAN_X86
    static split_together others;
    others.count = split_rows(bytes, size, separator, cells, others.ends, scan_find_16, scan_write);
    demand(others.count == rows->count);
    demand(memcmp(others.ends, rows->ends, (size_t)rows->count * cells * sizeof *rows->ends) == 0);
#endif
}

/* The row of this number, which begins at `at`. */
static void check_together(const split_together *rows, uint32_t number, size_t at, const csv_record *record)
{
    if (number >= rows->count)
        return;
    demand(record->count == rows->cells && !record->bad_quotes && memchr(record->bytes, '"', record->size) == NULL);
    for (uint32_t i = 0; i < rows->cells; i++) {
        const size_t end = record->cells[i].end + (i + 1 == rows->cells ? record->line_end_size - 1 : 0);
        demand(rows->ends[(size_t)number * rows->cells + i] == at + end);
    }
}

/* `bytes` follow the first record, and zero bytes follow them. The complete records of a buffer that could hold a record
 * of too many cells may be told to end early. */
static void check_index(csv_reader *reader, const csv_index_variant *variant, const char *bytes, size_t size)
{
    csv_record record;
    size_t safe = variant->complete_prefix(bytes, size, reader->separator, CSV_CELLS_MAX);
    const bool exact = size < CSV_CELLS_MAX;
    static split_together together;
    uint32_t number = 0;
    size_t at = 0;
    demand(safe <= size);
    while (csv_next(reader, &record) == CSV_RECORD) {
        if (number == 0)
            split_first_rows(&together, bytes, size, reader->separator, (uint32_t)record.count);
        check_together(&together, number++, at, &record);
        size_t end = at + record.size + record.line_end_size;
        bool complete = record.line_end_size > 0 && record.line_end[record.line_end_size - 1] == '\n';
        demand(at >= safe ? at > safe || record.bad_quotes || !complete || !exact : end <= safe && !record.bad_quotes);
        if (complete)
            check_row(variant->split_row, bytes + at, &record, reader->separator);
        at = end;
    }
}

static void check_variants(const uint8_t *data, size_t size, char separator)
{
    csv_index_variant variant;
    csv_reader reader;
    csv_record record;
    char *bytes = calloc(1, size + SCAN_STEP);
    for (size_t i = 0; bytes != NULL && csv_index_get_variant(i, &variant); i++) {
        pieces from = {.data = (const char *)data, .size = size, .piece = 7};
        if (!csv_open(&reader, (csv_source){.read = give, .context = &from}, separator))
            break;
        if (csv_next(&reader, &record) == CSV_RECORD && !reader.cr_ends) {
            size_t first = (reader.bom ? 3 : 0) + record.size + record.line_end_size;
            memcpy(bytes, data + first, size - first);
            memset(bytes + size - first, 0, SCAN_STEP);
            check_index(&reader, &variant, bytes, size - first);
        }
        csv_close(&reader);
    }
    free(bytes);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static const size_t sizes[] = {1, 7, 4096};
    char separator = size % 4 == 0 ? ';' : ',';
    for (size_t i = 0; i < sizeof sizes / sizeof sizes[0]; i++)
        check(data, size, separator, sizes[i]);
    check_variants(data, size, separator);
    return 0;
}
