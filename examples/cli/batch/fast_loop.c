/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The fast path of `rodtravel batch`: some rows are split, looked up in the cache together and written one by one. A
 * row that is new or unusual ends the loop: the reference path (csv_next, batch_write_record) takes it, caches its
 * result, and the loop goes on after it. The loop decides nothing.
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

/* Most rows that are looked up together; and fewest bytes that are split together. */
#define ROWS_FOUND 32u
#define SPLIT_LEAST 256u

/* Rows that were split. */
typedef struct row_block {
    const char *bytes; /* from which the ends are counted */
    uint32_t *ends;    /* of the cells of the first row; the first of them is one byte before the row */
    uint32_t cells;    /* of each row */
    uint32_t stride;   /* from the ends of a row to those of the next */
    uint32_t count;
} row_block;

/* One of them. */
typedef struct row {
    const char *bytes;
    const uint32_t *ends; /* of its cells; the first of them is one byte before the row */
    const char *start;
    uint32_t size; /* the line end left out */
    uint32_t line_end_size;
} row;

/* Where lines end in CR LF, the end of the last cell is not where the next row begins, so it has a place of its own. A
 * line that ends otherwise than the first has the CR in its last cell; if that matters, the reference path takes it. */
static void part_line_ends(row_block *rows)
{
    const uint32_t cells = rows->cells;
    if (rows->count == 0 || rows->bytes[rows->ends[cells] - 1] != '\r')
        return;
    rows->stride = cells + 1;
    rows->ends[(size_t)rows->count * rows->stride] = rows->ends[(size_t)rows->count * cells];
    for (uint32_t i = rows->count; i-- > 0;) {
        uint32_t *to = rows->ends + (size_t)i * rows->stride;
        memmove(to, rows->ends + (size_t)i * cells, rows->stride * sizeof *to);
        to[cells] -= rows->bytes[to[cells] - 1] == '\r';
    }
}

ALWAYS_INLINE const uint32_t *ends_of(const row_block *rows, uint32_t number)
{
    return rows->ends + (size_t)number * rows->stride;
}

/* A row, which has two cells at least. */
ALWAYS_INLINE row make_row(const row_block *rows, uint32_t number)
{
    const uint32_t *ends = ends_of(rows, number);
    const uint32_t start = ends[0] + 1;
    const uint32_t newline = ends[rows->stride];
    const uint32_t carriage_return = rows->bytes[newline - 1] == '\r';
    return (row){.bytes = rows->bytes, .ends = ends, .start = rows->bytes + start,
                 .size = newline - carriage_return - start, .line_end_size = 1 + carriage_return};
}

/* A header line may come again. */
static bool is_header(const batch_header *header, const row *of)
{
    return of->size == header->size && memcmp(of->start, header->bytes, of->size) == 0;
}

/* A row that was found. */
ALWAYS_INLINE void write_row(output *to, const row *of, const cached_row *cached)
{
    char *at = to->buffer + to->used;
    copy_loosely(at, of->start, of->size);
    at += of->size;
    copy_loosely(at, cached->bytes, cached->size);
    at += cached->size;
    memcpy(at, of->start + of->size, 2);
    to->used += of->size + cached->size + of->line_end_size;
}

/* Writes a row that differs in its stroke alone from one that is known. */
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
    copy_loosely(to->buffer + to->used, of->start, of->size);
    to->used += of->size;
    batch_cache_write_alike(chunk, alike, own);
    memcpy(to->buffer + to->used, of->start + of->size, 2);
    to->used += of->line_end_size;
    return true;
}

/* Writes a row that was not found. False: the reference path must take it. */
static bool write_new(batch_chunk *chunk, const row_block *rows, uint32_t number)
{
    const row next = make_row(rows, number);
    const bool passed = is_header(&chunk->run->header, &next) ||
                        !output_room(&chunk->out, next.size + ALIKE_ROOM + 2 * STEP);
    chunk->cache->is_new_row = !passed && !write_alike(chunk, &next);
    return !passed && !chunk->cache->is_new_row;
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
static bool find_attribute(const row_attribute *attribute, const char *bytes, const uint32_t *ends, uint32_t *number)
{
    *number = attribute->default_number;
    if (attribute->column == COLUMN_NONE)
        return true;
    const uint32_t first = ends[attribute->column] + 1;
    const uint32_t size = ends[attribute->column + 1] - first;
    *number = 0; /* of nothing */
    return size == 0 || rodt_text_map_get(attribute->numbers, bytes + first, size, number);
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

/* What is known of a row of a vehicle before it is counted. */
typedef struct known_brake {
    uint32_t position;
    const cached_row *cached;
} known_brake;

static bool count_named(batch_chunk *chunk, const row *of, const known_brake *brake, owner *own)
{
    name_cell name[NAME_CELLS_MAX];
    for (size_t i = 0; i < chunk->run->options->by_count; i++) {
        if (!find_text(of, chunk->run->by_column[i], &name[i]))
            return false;
    }
    return find_attribute(&chunk->cache->attributes[ATTRIBUTE_DAY], of->bytes, of->ends, &own->day) &&
           batch_by_count(chunk, name, own->day, brake->position, brake->cached);
}

/* Counts a row of a vehicle (--by); most are of the one before. False: the reference path must take it, or the chunk
 * was stopped. */
ALWAYS_INLINE bool count_row(batch_chunk *chunk, const row *of, const known_brake *brake, owner *before)
{
    const uint32_t start = of->ends[chunk->cache->owner_first] + 1;
    owner own = {of->bytes + start, of->ends[chunk->cache->owner_last + 1] - start, before->day};
    const bool counted = is_same_owner(&own, before)
                             ? batch_by_count(chunk, NULL, own.day, brake->position, brake->cached)
                             : count_named(chunk, of, brake, &own);
    *before = own;
    return counted;
}

/* Finds the positions of rows. Returns how many are known. */
static uint32_t find_positions(const batch_chunk *chunk, const row_block *rows, uint32_t from, uint32_t count,
                               uint32_t *positions)
{
    const row_attribute *attribute = &chunk->cache->attributes[ATTRIBUTE_POSITION];
    for (uint32_t i = 0; i < count; i++) {
        if (!find_attribute(attribute, rows->bytes, ends_of(rows, from + i), &positions[i]))
            return i;
    }
    return count;
}

/* Counts some rows up to the first that the reference path must take, and returns how many. */
ALWAYS_INLINE uint32_t count_some(batch_chunk *chunk, const row_block *rows, uint32_t from, uint32_t count,
                                  owner *before)
{
    batch_cache *cache = chunk->cache;
    void *found[ROWS_FOUND];
    uint32_t positions[ROWS_FOUND] = {0};
    uint32_t done = 0;
    bool counted = true;
    count = find_positions(chunk, rows, from, count, positions);
    const size_t known = rodt_row_cache_find_rows(cache->rows, rows->bytes, ends_of(rows, from), rows->stride, count,
                                                  found);
    while (counted && done < known) {
        const row next = make_row(rows, from + done);
        if (is_header(&chunk->run->header, &next))
            break;
        counted = count_row(chunk, &next, &(known_brake){positions[done], found[done]}, before);
        done += counted;
    }
    cache->is_new_row = done == known && known < count;
    rodt_row_cache_count(cache->rows, found, done);
    return done;
}

/* Finds some rows and writes them, up to the first that is new, and returns how many. */
ALWAYS_INLINE uint32_t write_some(batch_chunk *chunk, const row_block *rows, uint32_t from, uint32_t count)
{
    batch_cache *cache = chunk->cache;
    void *found[ROWS_FOUND];
    uint32_t done = 0;
    const size_t known = rodt_row_cache_find_rows(cache->rows, rows->bytes, ends_of(rows, from), rows->stride, count,
                                                  found);
    for (; done < known; done++) {
        const row next = make_row(rows, from + done);
        if (is_header(&chunk->run->header, &next) || !output_room(&chunk->out, next.size + ALIKE_ROOM + 2 * STEP))
            break;
        write_row(&chunk->out, &next, found[done]);
    }
    rodt_row_cache_count(cache->rows, found, done);
    return done;
}

/* What is tried at once: more and more where all was good, and else not much more than was. */
static uint32_t next_size(uint32_t size, bool all_good, uint32_t good, uint32_t most)
{
    const uint32_t next = all_good ? size * 2 : good;
    return next < most ? next : most;
}

/* Takes rows that were split, up to the first that the reference path must take, and returns how many. */
ALWAYS_INLINE uint32_t take_block(batch_chunk *chunk, const row_block *rows, bool by, owner *before)
{
    batch_cache *cache = chunk->cache;
    uint32_t done = 0;
    while (done < rows->count) {
        const uint32_t left = rows->count - done;
        const uint32_t tried = left < cache->found_rows ? left : cache->found_rows;
        const uint32_t found = by ? count_some(chunk, rows, done, tried, before) : write_some(chunk, rows, done, tried);
        cache->found_rows = next_size(cache->found_rows, found == tried, found + 1, ROWS_FOUND);
        done += found;
        if (found == tried)
            continue;
        if (by || !write_new(chunk, rows, done))
            break;
        done++;
    }
    return done;
}

/* Splits rows one by one, such as those with quotes. */
static uint32_t split_singly(const char *bytes, size_t size, char separator, uint32_t cells, uint32_t *ends)
{
    const uint32_t most = cells < SPLIT_BYTES / ROWS_FOUND ? ROWS_FOUND : 1;
    uint32_t at = 0;
    uint32_t count = 0;
    while (count < most && at < size && split_row(bytes + at, separator, cells, ends) == cells &&
           ends[cells - 1] < size - at) {
        for (uint32_t i = 0; i < cells; i++)
            ends[i] += at;
        at = ends[cells - 1] + 1;
        ends += cells;
        count++;
    }
    return count;
}

/* Splits the rows that come next; at least one, unless the reference path must take it. */
ALWAYS_INLINE row_block split_block(const batch_chunk *chunk, scan_finder *find, scan_writer *write)
{
    const csv_reader *reader = &chunk->reader;
    const uint32_t cells = (uint32_t)chunk->run->header.count;
    const char *at = reader->buffer + reader->begin;
    const size_t size = reader->end - reader->begin;
    uint32_t *ends = chunk->cache->ends;
    const size_t tried = size < chunk->cache->split_bytes ? size : chunk->cache->split_bytes;
    uint32_t count = split_rows(at, tried, reader->separator, cells, ends + 1, find, write);
    if (count == 0)
        count = split_singly(at, size, reader->separator, cells, ends + 1);
    return (row_block){.bytes = at, .ends = ends, .cells = cells, .stride = cells, .count = count};
}

/* Takes rows up to the first that the reference path must take. */
ALWAYS_INLINE void take_rows(batch_chunk *chunk, scan_finder *find, scan_writer *write, bool by)
{
    batch_cache *cache = chunk->cache;
    csv_reader *reader = &chunk->reader;
    owner before = {.text = "", .size = UINT32_MAX}; /* no name is so long */
    bool all_good = true;
    cache->is_new_row = false;
    while (all_good && reader->begin < reader->end) {
        row_block rows = split_block(chunk, find, write);
        part_line_ends(&rows);
        const uint32_t taken = take_block(chunk, &rows, by, &before);
        const uint32_t size = *ends_of(&rows, taken) + 1; /* 0 of none: the number runs over */
        all_good = taken > 0 && taken == rows.count;
        cache->split_bytes = next_size(cache->split_bytes, all_good, size + SPLIT_LEAST, SPLIT_BYTES);
        reader->begin += size;
        reader->line += taken;
    }
}

/* --- One loop for each kind of processor ----------------------------------------------------------------- */

#ifdef SCAN_X86

static void write_rows_16(batch_chunk *chunk) { take_rows(chunk, scan_find_16, scan_write, false); }
static void count_rows_16(batch_chunk *chunk) { take_rows(chunk, scan_find_16, scan_write, true); }

SCAN_AVX2 static void write_rows_32(batch_chunk *chunk) { take_rows(chunk, scan_find_32, scan_write_group, false); }
SCAN_AVX2 static void count_rows_32(batch_chunk *chunk) { take_rows(chunk, scan_find_32, scan_write_group, true); }

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
