/* SPDX-License-Identifier: Apache-2.0 */
/* Any bytes as comma-separated values, given in pieces of any size: the raw cells, joined again, are the bytes
 * that went in, up to the end or to the record that is refused. */
#include "io/csv_reader.h"

#include <stdlib.h>
#include <string.h>

/* A broken promise ends the run, so that the fuzzer keeps the input. */
static void require(bool kept)
{
    if (!kept)
        abort();
}

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
    require(size <= from->size - at);
    require(size == 0 || memcmp(from->data + at, bytes, size) == 0);
    return at + size;
}

static void check_text(const csv_record *record, size_t index)
{
    size_t raw = record->cells[index].end - record->cells[index].start;
    char text[64];
    size_t size = csv_text(record, index, text, sizeof text);
    if (size == CSV_NO_FIT) {
        require(raw >= sizeof text);
        return;
    }
    require(size <= raw && size < sizeof text && text[size] == '\0');
    require(csv_text(record, index, text, size) == CSV_NO_FIT); /* without room for the zero byte */
}

static size_t check_record(const pieces *from, const csv_record *record, char separator, size_t at)
{
    require(record->count >= 1 && record->count <= CSV_CELLS_MAX);
    for (size_t i = 0; i < record->count; i++) {
        const csv_cell *cell = &record->cells[i];
        require(cell->start <= cell->end && cell->end <= record->size);
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
    csv_source source = {.read = give, .context = &from};
    csv_reader reader;
    csv_record record;
    if (!csv_open(&reader, source, separator))
        return;
    size_t at = 0;
    uint64_t line = 0;
    csv_status status = csv_next(&reader, &record);
    if (reader.bom)
        at = 3;
    while (status == CSV_RECORD) {
        require(record.line > line);
        line = record.line;
        at = check_record(&from, &record, separator, at);
        status = csv_next(&reader, &record);
    }
    require(status != CSV_END || at == size);
    require(status != CSV_E_QUOTES || (reader.fault_line >= line && at < size));
    require(csv_next(&reader, &record) == status);
    csv_close(&reader);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static const size_t sizes[] = {1, 2, 7, 4096};
    for (size_t i = 0; i < sizeof sizes / sizeof sizes[0]; i++) {
        check(data, size, ',', sizes[i]);
        check(data, size, ';', sizes[i]);
    }
    return 0;
}
