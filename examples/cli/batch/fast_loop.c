/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The fast path of `rodtravel batch`: each row is split, looked up in the cache and written before the next is
 * touched. A row that is new or unusual ends the loop: the reference path (csv_next, batch_write_record) takes it,
 * caches its result, and the loop goes on after it. The loop decides nothing.
 *
 * It is compiled once for each kind of processor, with the splitting inline (io/csv_index.h). It copies in steps of a
 * known size, so it may read and write up to STEP - 1 bytes past the end of a cell or row; the asserts below say how
 * much room that needs.
 */
#include "batch/fast_loop.h"
#include "batch/by_vehicle.h"
#include "batch/cache.h"
#include "batch/loose_copy.h"
#include "io/csv_index.h"
#include "ui/compiler.h"

#include <string.h>

_Static_assert(RESULT_BYTES % STEP == 0, "a result is read in whole steps, never beyond its room");
_Static_assert(CSV_PAD >= STEP && CSV_PAD >= SCAN_STEP && CSV_PAD >= RODT_ROW_PAD, "rows are read beyond their ends");

/* A row that was split. */
typedef struct row {
    const char *bytes;
    const uint32_t *ends; /* of its cells, the line end left out; the first is that of the row before */
    uint32_t size;
    uint32_t line_end_size;
} row;

/* A row that has two cells at least, without its line end. */
ALWAYS_INLINE row make_row(const char *bytes, uint32_t *ends, uint32_t count)
{
    uint32_t newline = ends[count];
    uint32_t carriage_return = bytes[newline - 1] == '\r';
    ends[count] = newline - carriage_return;
    return (row){.bytes = bytes, .ends = ends, .size = newline - carriage_return, .line_end_size = 1 + carriage_return};
}

/* A row that was found. */
ALWAYS_INLINE void write_row(output *to, const row *of, const cached_row *cached)
{
    char *at = to->buffer + to->used;
    copy_loosely(at, of->bytes, of->size);
    at += of->size;
    copy_loosely(at, cached->bytes, cached->size);
    at += cached->size;
    memcpy(at, of->bytes + of->size, 2);
    to->used += of->size + cached->size + of->line_end_size;
}

/* Finds a row that differs in its stroke alone, and writes what belongs after this one. */
static bool write_alike(batch_chunk *chunk, const row *of)
{
    rodt_length own[OWN_TEXTS];
    output *to = &chunk->out;
    const cached_row *alike = chunk->cache->has_alike
                                  ? rodt_row_cache_find_alike(chunk->cache->rows, of->bytes, of->ends,
                                                              &own[OWN_STROKE], &own[OWN_MARGIN])
                                  : NULL;
    if (alike == NULL)
        return false;
    copy_loosely(to->buffer + to->used, of->bytes, of->size);
    to->used += of->size;
    batch_cache_write_alike(chunk, alike, own);
    memcpy(to->buffer + to->used, of->bytes + of->size, 2);
    to->used += of->line_end_size;
    return true;
}

/* The text of a cell. False: it is not there as it is written. */
static bool find_text(const row *of, size_t column, name_cell *text)
{
    const uint32_t start = of->ends[column] + 1; /* 0 in the first column: the number runs over */
    text->size = of->ends[column + 1] - start;
    text->text = of->bytes + start;
    if (text->size < 2 || *text->text != '"')
        return true;
    text->text++; /* the quotes of a row that was split are good */
    text->size -= 2;
    return memchr(text->text, '"', text->size) == NULL;
}

/* Looks an attribute of a row up. False: it is not known. */
static bool find_attribute(const row_attribute *attribute, const row *of, uint32_t *number)
{
    *number = attribute->default_number;
    if (attribute->column == COLUMN_NONE)
        return true;
    const uint32_t first = of->ends[attribute->column] + 1;
    const uint32_t size = of->ends[attribute->column + 1] - first;
    *number = 0; /* of nothing */
    return size == 0 || rodt_text_map_get(attribute->numbers, of->bytes + first, size, number);
}

/* Where a row has what names its vehicle, and its day. */
typedef struct owner {
    const char *text;
    uint32_t size;
    uint32_t day;
} owner;

ALWAYS_INLINE bool is_same_owner(const owner *one, const owner *other)
{
    return one->size == other->size && memcmp(one->text, other->text, one->size) == 0;
}

/* A name of NULL: that of the row before. False: the reference path must take the row, or the chunk was stopped. */
ALWAYS_INLINE bool count_brake(batch_chunk *chunk, const row *of, const name_cell *name, uint32_t day)
{
    batch_cache *cache = chunk->cache;
    uint32_t position;
    if (!find_attribute(&cache->attributes[ATTRIBUTE_POSITION], of, &position))
        return false;
    const cached_row *cached = rodt_row_cache_find(cache->rows, of->bytes, of->ends);
    cache->is_new_row = cached == NULL;
    return cached != NULL && batch_by_count(chunk, name, day, position, cached);
}

static bool count_named(batch_chunk *chunk, const row *of, owner *own)
{
    name_cell name[NAME_CELLS_MAX];
    for (size_t i = 0; i < chunk->run->options->by_count; i++) {
        if (!find_text(of, chunk->run->by_column[i], &name[i]))
            return false;
    }
    return find_attribute(&chunk->cache->attributes[ATTRIBUTE_DAY], of, &own->day) &&
           count_brake(chunk, of, name, own->day);
}

/* Counts a row of a vehicle (--by). Most are of the one before. */
ALWAYS_INLINE bool count_row(batch_chunk *chunk, const row *of, owner *before)
{
    const uint32_t start = of->ends[chunk->cache->owner_first] + 1;
    owner own = {of->bytes + start, of->ends[chunk->cache->owner_last + 1] - start, before->day};
    const bool counted = is_same_owner(&own, before) ? count_brake(chunk, of, NULL, own.day)
                                                     : count_named(chunk, of, &own);
    *before = own;
    return counted;
}

static bool is_header(const batch_header *header, const row *of)
{
    return of->size == header->size && memcmp(of->bytes, header->bytes, of->size) == 0;
}

/* Writes a row, or counts it. False: the reference path must take it, or the chunk was stopped. */
ALWAYS_INLINE bool take_row(batch_chunk *chunk, const row *of, bool by, owner *before)
{
    if (by)
        return count_row(chunk, of, before);
    const cached_row *cached = rodt_row_cache_find(chunk->cache->rows, of->bytes, of->ends);
    if (cached != NULL)
        write_row(&chunk->out, of, cached);
    chunk->cache->is_new_row = cached == NULL && !write_alike(chunk, of);
    return !chunk->cache->is_new_row;
}

/* Takes rows up to the first that the reference path must take. */
ALWAYS_INLINE void take_rows(batch_chunk *chunk, scan_finder *find, scan_writer *write, bool by)
{
    batch_cache *cache = chunk->cache;
    csv_reader *reader = &chunk->reader;
    const batch_header *header = &chunk->run->header;
    const uint32_t count = (uint32_t)header->count;
    const char separator = reader->separator;
    const char *at = reader->buffer + reader->begin;
    const char *end = reader->buffer + reader->end;
    uint64_t rows = 0;
    owner before = {.text = "", .size = UINT32_MAX}; /* no name is so long */
    cache->is_new_row = false;
    while (at < end && split_row(at, separator, count, cache->ends + 1, find, write) == count) {
        row next = make_row(at, cache->ends, count);
        if (next.size + next.line_end_size > (size_t)(end - at) || is_header(header, &next) ||
            !output_room(&chunk->out, next.size + ALIKE_ROOM + 2 * STEP) || !take_row(chunk, &next, by, &before))
            break;
        at += next.size + next.line_end_size;
        rows++;
    }
    reader->begin = (size_t)(at - reader->buffer);
    reader->line += rows;
}

/* --- One loop for each kind of processor ----------------------------------------------------------------- */

#ifdef SCAN_X86

static void write_rows_16(batch_chunk *chunk) { take_rows(chunk, scan_find_16, scan_write, false); }
static void count_rows_16(batch_chunk *chunk) { take_rows(chunk, scan_find_16, scan_write, true); }

SCAN_AVX2 static void write_rows_32(batch_chunk *chunk) { take_rows(chunk, scan_find_32, scan_write_8, false); }
SCAN_AVX2 static void count_rows_32(batch_chunk *chunk) { take_rows(chunk, scan_find_32, scan_write_8, true); }

void batch_write_cached_rows(batch_chunk *chunk)
{
    const bool by = chunk->run->by != NULL;
    if (scan_has_avx2())
        (by ? count_rows_32 : write_rows_32)(chunk);
    else
        (by ? count_rows_16 : write_rows_16)(chunk);
}

#else

static void write_rows_8(batch_chunk *chunk) { take_rows(chunk, scan_find_8, scan_write, false); }
static void count_rows_8(batch_chunk *chunk) { take_rows(chunk, scan_find_8, scan_write, true); }

void batch_write_cached_rows(batch_chunk *chunk) { (chunk->run->by != NULL ? count_rows_8 : write_rows_8)(chunk); }

#endif
