/* SPDX-License-Identifier: Apache-2.0 */
/* The cache of one chunk: rows, attributes of rows, names of members. */
#include "batch/cache.h"
#include "batch/object_shape.h"
#include "io/csv_index.h"

#include <stdlib.h>
#include <string.h>

/* Different days of twenty years; and different names in lines of JSON, of which a file has a dozen. */
#define ATTRIBUTES_MOST 8192u
#define NAMES_MOST 64u

static rodt_form form_of(const batch_run *run)
{
    return (rodt_form){.style = run->options->style, .date_order = run->options->date_order,
                               .default_day = run->context.day};
}

/* The members of an object are looked up by their field, the cells of a record by their column. */
static bool open_rows(batch_cache *cache, const batch_run *run, uint32_t results)
{
    const rodt_form form = form_of(run);
    size_t column[RODT_FIELD_ROOM];
    for (size_t i = 0; i < RODT_FIELD_ROOM; i++)
        column[i] = i >= RODT_READING_FIELDS ? RODT_NO_COLUMN
                    : run->options->columns.members ? i : run->header.columns.column[i];
    return rodt_row_cache_new(run->context.rules, &form, column, sizeof(cached_row), results, &cache->rows) == RODT_OK;
}

const rodt_field batch_attribute_fields[ATTRIBUTES] = {[ATTRIBUTE_DAY] = RODT_FIELD_DATE,
                                                       [ATTRIBUTE_POSITION] = RODT_FIELD_POSITION};

static uint32_t default_number(const batch_run *run, size_t at)
{
    return at == ATTRIBUTE_DAY ? batch_day_number(run->context.day) : 0;
}

static void find_owner(batch_cache *cache, const batch_run *run)
{
    const size_t day = cache->attributes[ATTRIBUTE_DAY].column;
    cache->owner_first = cache->owner_last = run->by_column[0];
    for (size_t i = 0; i <= run->options->by_count; i++) {
        const size_t column = i < run->options->by_count ? run->by_column[i] : day;
        if (column != COLUMN_NONE && column < cache->owner_first)
            cache->owner_first = column;
        if (column != COLUMN_NONE && column > cache->owner_last)
            cache->owner_last = column;
    }
}

static bool open_attributes(batch_cache *cache, const batch_run *run)
{
    bool open = true;
    for (size_t i = 0; i < ATTRIBUTES && run->options->by_count > 0; i++) {
        cache->attributes[i] = (row_attribute){.column = run->header.columns.column[batch_attribute_fields[i]],
                                               .default_number = default_number(run, i),
                                               .numbers = rodt_text_map_new(ATTRIBUTES_MOST)};
        open = open && cache->attributes[i].numbers != NULL;
    }
    find_owner(cache, run);
    return open;
}

static bool open_names(batch_cache *cache, const batch_run *run)
{
    if (!run->options->columns.members)
        return true;
    cache->names = rodt_text_map_new(NAMES_MOST);
    cache->shapes = object_shapes_open();
    return cache->names != NULL && cache->shapes != NULL;
}

/* For one row, or for those that are split at once. Where lines end in CR LF, these have an end more each. */
static size_t ends_room(size_t cells)
{
    return 1 + (cells > 2 * SPLIT_BYTES ? cells : 2 * SPLIT_BYTES) + SCAN_ENDS_MORE;
}

batch_cache *batch_cache_open(const batch_run *run, uint32_t results)
{
    batch_cache *cache = calloc(1, sizeof *cache);
    if (cache == NULL)
        return NULL;
    cache->ends = malloc(ends_room(run->header.count) * sizeof *cache->ends);
    if (cache->ends == NULL || !open_rows(cache, run, results) || !open_attributes(cache, run) ||
        !open_names(cache, run)) {
        batch_cache_close(cache);
        return NULL;
    }
    cache->ends[0] = UINT32_MAX; /* one byte before the first */
    cache->split_bytes = SPLIT_BYTES;
    cache->found_rows = 1;
    cache->has_alike = !run->options->summary && run->options->by_count == 0 && run->options->decimals < 0;
    return cache;
}

void batch_cache_close(batch_cache *cache)
{
    if (cache == NULL)
        return;
    for (size_t i = 0; i < ATTRIBUTES; i++)
        rodt_text_map_free(cache->attributes[i].numbers);
    rodt_row_cache_free(cache->rows);
    rodt_text_map_free(cache->names);
    object_shapes_close(cache->shapes);
    free(cache->ends);
    free(cache);
}

/* --- Rows ---------------------------------------------------------------------------------------------- */

void batch_cache_begin_chunk(batch_chunk *chunk)
{
    batch_cache *cache = chunk->cache;
    if (cache == NULL)
        return;
    cache->is_active = rodt_row_cache_begin_chunk(cache->rows) || cache->has_alike;
    if (cache->shapes != NULL)
        object_shapes_begin_chunk(cache->shapes);
}

bool batch_cache_is_active(const batch_chunk *chunk) { return chunk->cache != NULL && chunk->cache->is_active; }

/* `to` is NULL if there is no room. */
static void fill(cached_row *to, const batch_chunk *chunk, const batch_tally *tally, const char *bytes, size_t size)
{
    if (to == NULL)
        return;
    to->size = (uint32_t)size;
    to->tally = *tally;
    memcpy(to->bytes, bytes, size);
    for (size_t i = 0; i < OWN_TEXTS && chunk->cache->has_alike; i++) {
        const char *own = chunk->out.buffer + chunk->own[i].start;
        to->own[i].start = (uint8_t)(own - bytes);
        to->own[i].end = (uint8_t)(to->own[i].start + (chunk->own[i].end - chunk->own[i].start));
    }
}

void batch_cache_keep(batch_chunk *chunk, const rodt_form *text, const batch_tally *tally, const char *bytes,
                      size_t size)
{
    if (!batch_cache_is_active(chunk) || size > RESULT_BYTES || chunk->out.failure != 0)
        return;
    fill(rodt_row_cache_keep(chunk->cache->rows), chunk, tally, bytes, size);
    if (text != NULL && chunk->cache->has_alike)
        fill(rodt_row_cache_keep_alike(chunk->cache->rows, text), chunk, tally, bytes, size);
}

_Static_assert(sizeof(batch_tally) >= SMALL_STEP, "what is read beyond the bytes of a result is its tally");

/* The own texts are at most RODT_LENGTH_TEXT_SIZE bytes, so there is room for what each copies. */
void batch_cache_write_alike(batch_chunk *chunk, const cached_row *alike, const rodt_length own[OWN_TEXTS])
{
    output *out = &chunk->out;
    const size_t first = out->used;
    char *at = out->buffer + first;
    uint32_t copied = 0;
    for (size_t i = 0; i < OWN_TEXTS; i++) {
        const uint32_t start = alike->own[i].start;
        size_t size = 1;
        copy_in_steps(at, alike->bytes + copied, start - copied, SMALL_STEP);
        at += start - copied;
        if (rodt_length_given(own[i]))
            (void)rodt_length_format(own[i], at, RODT_LENGTH_TEXT_SIZE, &size);
        chunk->own[i].start = (size_t)(at - out->buffer);
        at += size - 1;
        chunk->own[i].end = (size_t)(at - out->buffer);
        copied = alike->own[i].end;
    }
    copy_in_steps(at, alike->bytes + copied, alike->size - copied, SMALL_STEP);
    out->used = (size_t)(at - out->buffer) + alike->size - copied;
    batch_cache_keep(chunk, NULL, &alike->tally, out->buffer + first, out->used - first);
}

static bool take_tally(void *context, const void *bytes, uint64_t rows)
{
    const cached_row *cached = bytes;
    return batch_chunk_count(context, &cached->tally, rows);
}

bool batch_cache_flush(batch_chunk *chunk)
{
    return chunk->cache == NULL || rodt_row_cache_flush(chunk->cache->rows, take_tally, chunk);
}

bool batch_chunk_count_row(batch_chunk *chunk, const batch_tally *tally)
{
    return batch_cache_flush(chunk) && batch_chunk_count(chunk, tally, 1);
}

/* --- Attributes ---------------------------------------------------------------------------------------- */

_Static_assert(sizeof(rodt_date) == sizeof(uint32_t), "a day is one number");

static uint32_t read_day(const batch_run *run, const char *text)
{
    rodt_date day;
    bool is_read = rodt_date_parse_n(text, strlen(text), run->options->date_order, &day, NULL) == RODT_OK;
    return is_read ? batch_day_number(day) : 0;
}

static uint32_t read_position(const char *text)
{
    rodt_position position;
    bool is_read = rodt_position_parse_n(text, strlen(text), &position, NULL) == RODT_OK;
    return is_read ? batch_position_number(position) : 0;
}

uint32_t batch_attribute(batch_chunk *chunk, const csv_record *record, size_t at)
{
    rodt_field field = batch_attribute_fields[at];
    if (chunk->run->header.columns.column[field] == COLUMN_NONE)
        return default_number(chunk->run, at);
    const char *text = batch_cell(chunk, record, field);
    if (text == NULL)
        return 0;
    return at == ATTRIBUTE_DAY ? read_day(chunk->run, text) : read_position(text);
}

void batch_read_attributes(batch_chunk *chunk, const csv_record *record, uint32_t numbers[ATTRIBUTES])
{
    for (size_t i = 0; i < ATTRIBUTES; i++) {
        const row_attribute *attribute = &chunk->cache->attributes[i];
        numbers[i] = attribute->default_number;
        if (attribute->column == COLUMN_NONE)
            continue;
        const csv_cell *cell = &record->cells[attribute->column];
        const char *text = record->bytes + cell->start;
        if (rodt_text_map_get(attribute->numbers, text, cell->end - cell->start, &numbers[i]))
            continue;
        numbers[i] = batch_attribute(chunk, record, i);
        rodt_text_map_keep(attribute->numbers, text, cell->end - cell->start, numbers[i]);
    }
}
