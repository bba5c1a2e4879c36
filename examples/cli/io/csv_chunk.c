/* SPDX-License-Identifier: Apache-2.0 */
/* Chunks of an input: complete records that move from one reader to another. */
#include "io/csv_index.h"
#include "io/csv_reader.h"

#include <stdlib.h>
#include <string.h>

_Static_assert(CSV_PAD >= SCAN_STEP, "blocks are read beyond the end of a buffer");

static size_t complete_lines(const char *bytes, size_t size)
{
    while (size > 0 && bytes[size - 1] != '\n')
        size--;
    return size;
}

size_t csv_complete_size(const csv_reader *reader)
{
    const char *bytes = reader->buffer + reader->begin;
    size_t size = reader->end - reader->begin;
    if (reader->cr_ends || reader->first_line || reader->fault != CSV_RECORD)
        return 0;
    size = size < CSV_BLOCK ? size : CSV_BLOCK;
    return reader->lines ? complete_lines(bytes, size)
                         : csv_complete_prefix(bytes, size, reader->separator, CSV_CELLS_MAX);
}

bool csv_open_chunk(csv_reader *chunk, const csv_reader *input)
{
    if (!csv_open(chunk, input->source, input->separator))
        return false;
    chunk->source_done = true;
    chunk->first_line = false;
    chunk->lines = input->lines;
    return true;
}

/* The readers swap their buffers where they can; then only the begun record after the chunk is copied. */
static void move_bytes(csv_reader *input, size_t size, csv_reader *chunk)
{
    size_t rest = input->end - input->begin - size;
    char *bytes = input->buffer + input->begin;
    if (input->capacity != CSV_BLOCK || rest > CSV_BLOCK / 8) {
        memcpy(chunk->buffer, bytes, size);
        chunk->begin = 0;
        input->begin += size;
        return;
    }
    memcpy(chunk->buffer, bytes + size, rest);
    char *given = input->buffer;
    input->buffer = chunk->buffer;
    chunk->buffer = given;
    chunk->begin = input->begin;
    input->begin = 0;
    input->end = rest;
    input->buffer[rest] = '\n';
}

void csv_move_chunk(csv_reader *input, size_t size, csv_reader *chunk)
{
    chunk->line = input->line;
    chunk->fault = CSV_RECORD;
    chunk->rescan_used = 0;
    move_bytes(input, size, chunk);
    chunk->end = chunk->begin + size;
    chunk->buffer[chunk->end] = '\n';
    input->rescan_used -= size < input->rescan_used ? size : input->rescan_used;
}
