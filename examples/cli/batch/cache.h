/* SPDX-License-Identifier: Apache-2.0 */
/* The cache of `rodtravel batch`: what was written after earlier rows, found by their cells
 * (rodtravel/row_cache.h). */
#ifndef BATCH_CACHE_H
#define BATCH_CACHE_H

#include "batch/chunk.h"
#include "batch/loose_copy.h"

#include <string.h>

/* Most bytes of a cached result, a multiple of what is copied in one step. */
#define RESULT_BYTES 192u

/* The result of a row. What is copied comes first, near the key. */
typedef struct cached_row {
    uint32_t size;
    struct {
        uint8_t start, end;
    } own[OWN_TEXTS]; /* where these stand in the bytes */
    char bytes[RESULT_BYTES]; /* all that is written after a row but its line end; with --by what counts of a brake */
    batch_tally tally;
} cached_row;

/* What a row of a vehicle has beside its result, each as one number: the day of its finding and its position. */
enum { ATTRIBUTE_DAY, ATTRIBUTE_POSITION, ATTRIBUTES };
extern const rodt_field batch_attribute_fields[ATTRIBUTES];

typedef struct row_attribute {
    size_t column;             /* COLUMN_NONE: every row has the default */
    uint32_t default_number;
    rodt_text_map *numbers;    /* of cells as they are in the file */
} row_attribute;

typedef struct batch_cache {
    rodt_row_cache *rows;
    row_attribute attributes[ATTRIBUTES]; /* with --by */
    size_t owner_first; /* with --by: the columns of the name and of the day are from here ... */
    size_t owner_last;  /* ... to here */
    rodt_text_map *names;  /* what the names of JSON members mean */
    struct object_shapes *shapes; /* of JSON objects */
    uint32_t *ends;        /* of the cells of rows; before them, the position before the first row */
    uint32_t split_bytes;  /* most that are split at once, and most rows that are looked up at once: */
    uint32_t found_rows;
    bool is_active;        /* in this chunk */
    bool has_alike;        /* rows whose strokes alone differ differ in the own texts alone */
    bool is_new_row;       /* the loop has looked up the row that comes next, in vain */
} batch_cache;

/* NULL: no memory. At most so many results are cached. */
batch_cache *batch_cache_open(const batch_run *run, uint32_t results);
void batch_cache_close(batch_cache *cache);

/* The chunk's reader holds a new chunk. */
void batch_cache_begin_chunk(batch_chunk *chunk);

/* True if rows are looked up. */
bool batch_cache_is_active(const batch_chunk *chunk);

/* Keeps the result of the row that was looked up last, for it and, where there are texts of it, for those alike. The
 * bytes may be in the output, and the own texts of the chunk in them. */
void batch_cache_keep(batch_chunk *chunk, const rodt_form *text, const batch_tally *tally, const char *bytes,
                      size_t size);

/* Writes what belongs after a row that was found alike, and keeps it for the row. The output has ALIKE_ROOM. */
#define ALIKE_ROOM (RESULT_BYTES + (size_t)OWN_TEXTS * RODT_LENGTH_TEXT_SIZE + SMALL_STEP)
void batch_cache_write_alike(batch_chunk *chunk, const cached_row *alike, const rodt_length own[OWN_TEXTS]);

/* Takes the rows that were found into the tallies of the chunk. */
bool batch_cache_flush(batch_chunk *chunk);

/* A position as one number, and back. */
static inline uint32_t batch_position_number(rodt_position position)
{
    return (uint32_t)position.side << 16 | (uint16_t)position.axle;
}

static inline rodt_position batch_position_of(uint32_t number)
{
    return (rodt_position){(int16_t)(number & 0xFFFF), (rodt_side)(number >> 16)};
}

/* A day as one number, and back. */
static inline uint32_t batch_day_number(rodt_date day)
{
    uint32_t number;
    memcpy(&number, &day, sizeof number);
    return number;
}

static inline rodt_date batch_date_of(uint32_t number)
{
    rodt_date day;
    memcpy(&day, &number, sizeof day);
    return day;
}

/* Reads an attribute of a record: a day, or a position; all zero = it cannot be read. A file without such a column has
 * the day of the options, and no positions. */
uint32_t batch_attribute(batch_chunk *chunk, const csv_record *record, size_t at);

/* The same, looked up, for all attributes of a record that has as many cells as the header. */
void batch_read_attributes(batch_chunk *chunk, const csv_record *record, uint32_t numbers[ATTRIBUTES]);

/* Counts a row that was judged, after all cached ones before it. False: no memory. */
bool batch_chunk_count_row(batch_chunk *chunk, const batch_tally *tally);

#endif
