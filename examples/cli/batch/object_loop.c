/* SPDX-License-Identifier: Apache-2.0 */
/* As in fast_loop.c an object that is new or unusual ends the loop, which decides nothing. It may read and write up to
 * STEP - 1 bytes past the end of an object. */
#include "batch/object_loop.h"
#include "batch/cache.h"
#include "batch/loose_copy.h"
#include "batch/object_shape.h"

_Static_assert(CSV_PAD >= STEP && CSV_PAD >= SHAPE_STEP, "objects are read beyond their ends");

/* An object that was read. */
typedef struct object_line {
    const char *close; /* behind its brace */
    uint32_t line_end_size;
    rodt_text_span cells[RODT_FIELD_ROOM];
} object_line;

/* A line end follows the brace. */
static bool end_line(object_line *line, const char *end)
{
    const char *at = line->close;
    line->line_end_size = at[0] == '\n' ? 1 : at[0] == '\r' && at[1] == '\n' ? 2 : 0;
    return line->line_end_size > 0 && line->line_end_size <= end - at;
}

static bool read_line(object_shapes *shapes, const char *at, const char *end, object_line *line)
{
    line->close = object_shapes_read(shapes, at, end, line->cells);
    return line->close != NULL && end_line(line, end);
}

/* The object without its closing brace: there is a member, so another can follow. */
static void write_open(output *to, const char *at, uint32_t size)
{
    copy_loosely(to->buffer + to->used, at, size);
    memcpy(to->buffer + to->used + size, ", ", 2);
    to->used += size + 2;
}

/* False: it is not known. */
static bool write_object(batch_chunk *chunk, const char *at, const object_line *line)
{
    output *to = &chunk->out;
    rodt_length own[OWN_TEXTS];
    const uint32_t size = (uint32_t)(line->close - at) - 1;
    const cached_row *cached = rodt_row_cache_find_cells(chunk->cache->rows, line->cells);
    const bool is_alike = cached == NULL && chunk->cache->has_alike;
    if (is_alike)
        cached = rodt_row_cache_find_alike_cells(chunk->cache->rows, line->cells, &own[OWN_STROKE], &own[OWN_MARGIN]);
    if (cached == NULL)
        return false;
    write_open(to, at, size);
    if (is_alike) {
        batch_cache_write_alike(chunk, cached, own);
    } else {
        copy_loosely(to->buffer + to->used, cached->bytes, cached->size);
        to->used += cached->size;
    }
    memcpy(to->buffer + to->used, line->close, 2);
    to->used += line->line_end_size;
    return true;
}

void batch_write_cached_objects(batch_chunk *chunk)
{
    csv_reader *reader = &chunk->reader;
    const char *at = reader->buffer + reader->begin;
    const char *const end = reader->buffer + reader->end;
    object_line line;
    while (at < end && read_line(chunk->cache->shapes, at, end, &line) &&
           output_room(&chunk->out, (size_t)(line.close - at) + ALIKE_ROOM + 2 * STEP) &&
           write_object(chunk, at, &line)) {
        at = line.close + line.line_end_size;
        reader->line++;
    }
    reader->begin = (size_t)(at - reader->buffer);
}
