/* SPDX-License-Identifier: Apache-2.0 */
/* Results of rows of a stream: found by the cells of a row, kept with bytes of the caller's. */
#include "rodtravel/row_cache.h"

#include <stdlib.h>
#include <string.h>

#include "column/key.h"
#include "core/fault.h"

/* Minimum rows for a meaningful hit rate; first and maximum number of chunks skipped (doubles each time). */
#define ROWS_TO_TELL 1000
#define BACKOFF_FIRST 4
#define BACKOFF_MOST 64

#define BYTES_MOST 4096
#define RESULTS_MOST (1u << 20)

typedef void *line_finder(rodt_row_cache *cache, const char *row, const uint32_t *ends);
typedef void *cells_finder(rodt_row_cache *cache, const rodt_text_span *cells);

/* A column that rows have. */
typedef struct row_column {
    key_field *keys;
    size_t cell;
    rodt_field field;
} row_column;

struct rodt_row_cache {
    result_cache results;
    line_finder *find_line;
    cells_finder *find_cells;
    bool has_unit; /* and its column is the first, because lengths are read by it */
    size_t columns;
    row_column column[RODT_READING_FIELDS];
    row_key key;       /* of the row that was read last; bits KEY_UNCACHEABLE = it has none */
    uint64_t read;     /* rows of the chunk that were read */
    uint64_t found;    /* rows of the chunk that were found */
    unsigned backoff_left; /* chunks */
    unsigned backoff_next;
    key_builder keys;
};

/* --- The fast path ----------------------------------------------------------------------------------- */

/* A key in the making. */
typedef struct key_sum {
    uint64_t bits;
    uint64_t tag; /* of the row's unit, as in the key of a cell */
    uint32_t sum;
} key_sum;

INLINE void add_meaning(cell_meaning meaning, key_sum *to)
{
    to->bits |= meaning.key_bits;
    to->sum += meaning.value;
}

/* A cell of a line; up to CELL_SHORT + 1 bytes of it are read, whatever its size. False: it is not cached. */
INLINE bool add_cell_of_line(const row_column *column, const char *row, const uint32_t *ends, key_sum *to,
                             cache_hasher *hash)
{
    const uint32_t start = ends[column->cell] + 1; /* 0 for the first: the number runs over */
    const uint32_t size = ends[column->cell + 1] - start;
    const uint64_t tag = to->tag & column->keys->tag_mask;
    const cell_cache *cells = &column->keys->cells;
    const cell_meaning *found = size <= CELL_SHORT
                                    ? cell_cache_find(cells, cell_key_padded(row + start, size, tag), hash)
                                    : rodti_cell_cache_probe(cells, row + start, size, cell_tag_number(tag));
    if (found != NULL)
        add_meaning(*found, to);
    return found != NULL;
}

/* The same for a cell by itself. */
INLINE bool add_cell(const row_column *column, rodt_text_span cell, key_sum *to, cache_hasher *hash)
{
    const uint64_t tag = to->tag & column->keys->tag_mask;
    const cell_cache *cells = &column->keys->cells;
    const cell_meaning nothing = key_of_nothing(column->field);
    const cell_meaning *found = &nothing;
    if (cell.text != NULL)
        found = cell.size <= CELL_SHORT
                    ? cell_cache_find(cells, cell_key_exact(cell.text, cell.size, tag), hash)
                    : rodti_cell_cache_probe(cells, cell.text, cell.size, cell_tag_number(tag));
    if (found != NULL)
        add_meaning(*found, to);
    return found != NULL;
}

INLINE void *find_key(rodt_row_cache *cache, const key_sum *sum, cache_hasher *hash)
{
    if ((sum->bits & KEY_UNCACHEABLE) != 0)
        return NULL;
    cached_result *result = result_cache_find(&cache->results, key_of_row(sum->bits, sum->sum), hash);
    if (result == NULL)
        return NULL;
    result_cache_count(&cache->results, result);
    return result + 1;
}

INLINE void *find_line(rodt_row_cache *cache, const char *row, const uint32_t *ends, cache_hasher *hash)
{
    key_sum sum = {0, 0, 0};
    const row_column *column = cache->column;
    const row_column *const end = column + cache->columns;
    if (cache->has_unit) {
        if (!add_cell_of_line(column++, row, ends, &sum, hash))
            return NULL;
        sum.tag = cell_tag(key_tag(&cache->keys, sum.bits));
    }
    for (; column < end; column++)
        if (!add_cell_of_line(column, row, ends, &sum, hash))
            return NULL;
    return find_key(cache, &sum, hash);
}

INLINE void *find_cells(rodt_row_cache *cache, const rodt_text_span *cells, cache_hasher *hash)
{
    key_sum sum = {0, 0, 0};
    for (size_t i = 0; i < cache->columns; i++) {
        const row_column *column = &cache->column[i];
        if (!add_cell(column, cells[column->field], &sum, hash))
            return NULL;
        if (i == 0 && cache->has_unit)
            sum.tag = cell_tag(key_tag(&cache->keys, sum.bits));
    }
    return find_key(cache, &sum, hash);
}

static void *find_line_any(rodt_row_cache *cache, const char *row, const uint32_t *ends)
{
    return find_line(cache, row, ends, cache_hash_any);
}

static void *find_cells_any(rodt_row_cache *cache, const rodt_text_span *cells)
{
    return find_cells(cache, cells, cache_hash_any);
}

#ifdef CACHE_CRC

CACHE_CRC static void *find_line_crc(rodt_row_cache *cache, const char *row, const uint32_t *ends)
{
    return find_line(cache, row, ends, cache_hash_crc);
}

CACHE_CRC static void *find_cells_crc(rodt_row_cache *cache, const rodt_text_span *cells)
{
    return find_cells(cache, cells, cache_hash_crc);
}

static void choose_finders(rodt_row_cache *cache)
{
    cache->find_line = CACHE_HAS_CRC() ? find_line_crc : find_line_any;
    cache->find_cells = CACHE_HAS_CRC() ? find_cells_crc : find_cells_any;
}

#else

static void choose_finders(rodt_row_cache *cache)
{
    cache->find_line = find_line_any;
    cache->find_cells = find_cells_any;
}

#endif

void *rodt_row_cache_find(rodt_row_cache *cache, const char *row, const uint32_t *ends)
{
    return cache->find_line(cache, row, ends);
}

void *rodt_row_cache_find_cells(rodt_row_cache *cache, const rodt_text_span cells[RODT_FIELD_ROOM])
{
    return cache->find_cells(cache, cells);
}

/* --- Making and freeing ------------------------------------------------------------------------------ */

static void add_column(rodt_row_cache *cache, rodt_field field, size_t cell)
{
    if (cell != RODT_NO_COLUMN)
        cache->column[cache->columns++] =
            (row_column){.keys = &cache->keys.field[field], .cell = cell, .field = field};
}

static void add_columns(rodt_row_cache *cache, const size_t column[RODT_FIELD_ROOM])
{
    add_column(cache, RODT_FIELD_UNIT, column[RODT_FIELD_UNIT]);
    cache->has_unit = cache->columns > 0;
    for (int field = 0; field < RODT_READING_FIELDS; field++)
        if (field != RODT_FIELD_UNIT)
            add_column(cache, (rodt_field)field, column[field]);
}

/* A caller of a later version may give a column to a field that this one cannot read. */
static bool has_unknown_field(const size_t column[RODT_FIELD_ROOM])
{
    for (int field = RODT_READING_FIELDS; field < RODT_FIELD_ROOM; field++)
        if (column[field] != RODT_NO_COLUMN)
            return true;
    return false;
}

rodt_status rodt_row_cache_new(const rodt_rules *rules, const rodt_form *form,
                               const size_t column[RODT_FIELD_ROOM], size_t bytes, uint32_t results,
                               rodt_row_cache **cache)
{
    if (rules == NULL)
        return RODT_E_UNKNOWN_RULES;
    if (form == NULL || column == NULL || cache == NULL || bytes == 0 || bytes > BYTES_MOST || results == 0 ||
        results > RESULTS_MOST || has_unknown_field(column))
        return RODT_E_ARGUMENT;
    const rodt_form style = {.style = form->style, .date_order = form->date_order,
                                     .default_day = form->default_day};
    rodt_reading reading;
    if (rodt_form_parse(&style, &reading, NULL) != RODT_OK)
        return RODT_E_ARGUMENT;
    rodt_row_cache *made = calloc(1, sizeof *made);
    if (made == NULL)
        return RODT_E_MEMORY;
    bool open = rodti_key_open(&made->keys, rules, &style, true);
    if (!rodti_result_cache_open(&made->results, bytes, results) || !open) {
        rodt_row_cache_free(made);
        return RODT_E_MEMORY;
    }
    add_columns(made, column);
    choose_finders(made);
    made->key.bits = KEY_UNCACHEABLE;
    made->backoff_next = BACKOFF_FIRST;
    *cache = made;
    return RODT_OK;
}

void rodt_row_cache_free(rodt_row_cache *cache)
{
    if (cache == NULL)
        return;
    rodti_key_close(&cache->keys);
    rodti_result_cache_close(&cache->results);
    free(cache);
}

/* --- The slow path ----------------------------------------------------------------------------------- */

static cell_meaning read_cell(rodt_row_cache *cache, const row_column *column, rodt_text_span cell,
                              const rodt_form *text, uint64_t row_tag)
{
    const unsigned tag = cell_tag_number(row_tag & column->keys->tag_mask);
    if (cell.text == NULL)
        return key_of_nothing(column->field);
    const cell_meaning *known = rodti_cell_cache_probe(&column->keys->cells, cell.text, cell.size, tag);
    if (known != NULL)
        return *known;
    return rodti_key_read_cell(&cache->keys, column->field, cell, rodt_form_get(text, column->field), text->unit,
                         tag);
}

void *rodt_row_cache_read(rodt_row_cache *cache, const rodt_text_span cells[RODT_FIELD_ROOM],
                          const rodt_form *text)
{
    key_sum sum = {0, 0, 0};
    cache->read++;
    for (size_t i = 0; i < cache->columns && (sum.bits & KEY_UNCACHEABLE) == 0; i++) {
        const row_column *column = &cache->column[i];
        add_meaning(read_cell(cache, column, cells[column->field], text, sum.tag), &sum);
        if (i == 0 && cache->has_unit)
            sum.tag = cell_tag(key_tag(&cache->keys, sum.bits));
    }
    cache->key = (sum.bits & KEY_UNCACHEABLE) != 0 ? (row_key){KEY_UNCACHEABLE, 0} : key_of_row(sum.bits, sum.sum);
    return find_key(cache, &sum, cache->results.hash);
}

void *rodt_row_cache_keep(rodt_row_cache *cache)
{
    row_key key = cache->key;
    cache->key.bits = KEY_UNCACHEABLE;
    return key.bits != KEY_UNCACHEABLE ? rodti_result_cache_keep(&cache->results, key) : NULL;
}

bool rodt_row_cache_flush(rodt_row_cache *cache, rodt_row_sink *sink, void *context)
{
    result_cache *results = &cache->results;
    for (uint32_t i = 0; i < results->hit_count; i++) {
        cached_result *result = (cached_result *)(void *)(results->slots + (size_t)results->hit_slots[i] * CACHE_LINE);
        cache->found += result->hits;
        if (!sink(context, result + 1, result->hits))
            return false;
        result->hits = 0;
    }
    results->hit_count = 0;
    return true;
}

bool rodt_row_cache_begin_chunk(rodt_row_cache *cache)
{
    if (cache->backoff_left > 0) {
        cache->backoff_left--;
    } else if (cache->read > ROWS_TO_TELL && cache->read / 4 > cache->found) {
        cache->backoff_left = cache->backoff_next;
        cache->backoff_next *= cache->backoff_next < BACKOFF_MOST ? 2 : 1;
    } else if (cache->found > ROWS_TO_TELL) {
        cache->backoff_next = BACKOFF_FIRST;
    }
    cache->found = cache->read = 0;
    return cache->backoff_left == 0;
}

/* --- Numbers of texts -------------------------------------------------------------------------------- */

struct rodt_text_map {
    cell_cache cells;
};

rodt_text_map *rodt_text_map_new(uint32_t most)
{
    unsigned bits = 3; /* a table uses 1/8 of its slots before it grows */
    if (most == 0 || most > 1u << 16)
        return NULL;
    while (most >> bits > 0)
        bits++;
    rodt_text_map *map = calloc(1, sizeof *map);
    if (map == NULL || !rodti_cell_cache_open(&map->cells, bits + 3)) {
        free(map);
        return NULL;
    }
    return map;
}

void rodt_text_map_free(rodt_text_map *map)
{
    if (map == NULL)
        return;
    rodti_cell_cache_close(&map->cells);
    free(map);
}

bool rodt_text_map_get(const rodt_text_map *map, const char *text, size_t size, uint32_t *number)
{
    const cell_meaning *found = rodti_cell_cache_probe(&map->cells, text, size, 0);
    if (found == NULL)
        return false;
    *number = found->value;
    return true;
}

void rodt_text_map_keep(rodt_text_map *map, const char *text, size_t size, uint32_t number)
{
    rodti_cell_cache_keep(&map->cells, text, size, 0, (cell_meaning){.value = number});
}
