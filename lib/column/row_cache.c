/* SPDX-License-Identifier: Apache-2.0 */
/* Results of rows of a stream: found by the cells of a row, kept with bytes of the caller's. */
#include "rodtravel/row_cache.h"

#include <stdlib.h>
#include <string.h>

#include "column/fine.h"
#include "column/key.h"
#include "core/exact.h"
#include "core/fault.h"

/* Minimum rows for a meaningful hit rate; first and maximum number of chunks skipped (doubles each time). */
#define ROWS_TO_TELL 1000
#define BACKOFF_FIRST 4
#define BACKOFF_MOST 64

#define BYTES_MOST 4096
#define RESULTS_MOST (1u << 20)

/* Keys of rows but for their strokes that are kept at most. */
#define SHAPES_MOST 4096u

typedef size_t rows_finder(rodt_row_cache *cache, const char *row, const uint32_t *ends, size_t stride, size_t rows,
                           void **found);
typedef void *cells_finder(rodt_row_cache *cache, const rodt_text_span *cells);
typedef void *alike_line_finder(rodt_row_cache *cache, const char *row, const uint32_t *ends, rodt_length *stroke,
                                rodt_length *margin);
typedef void *alike_cells_finder(rodt_row_cache *cache, const rodt_text_span *cells, rodt_length *stroke,
                                 rodt_length *margin);

/* What rows that differ in the stroke alone have in common. */
typedef struct row_shape {
    int64_t step[STROKE_STEPS]; /* parts (fine.h) */
    int64_t limit;              /* parts; SHAPE_NO_LIMIT */
} row_shape;

#define SHAPE_NO_LIMIT INT64_MIN

/* A column that rows have. */
typedef struct row_column {
    key_field *keys;
    size_t cell;
    rodt_field field;
    bool is_measurement;
    uint64_t nothing; /* key bits of a cell with nothing in it */
} row_column;

struct rodt_row_cache {
    result_cache results;
    result_cache shapes;   /* by the bits of a row's key */
    result_cache alike;    /* by these and the region of the stroke: what was kept of the first such row */
    rows_finder *find_rows;
    cells_finder *find_cells;
    alike_line_finder *find_alike_line;
    alike_cells_finder *find_alike_cells;
    bool has_unit; /* and its column is the first, because lengths are read by it */
    size_t columns;
    row_column column[RODT_READING_FIELDS];
    row_key key;       /* of the row that was read last; bits KEY_UNCACHEABLE = it has none */
    row_key alike_key; /* the same without its stroke */
    int64_t stroke;    /* of that row, in parts */
    bool is_active;    /* in this chunk results are looked up by their stroke */
    uint64_t read;     /* rows of the chunk that were read */
    uint64_t found;    /* rows of the chunk that were found */
    uint64_t found_alike;
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
    int64_t fine; /* parts (fine.h) of measurements that were read past the cells */
    bool is_fine; /* one of these is no whole number of units, and not cached */
} key_sum;

INLINE void add_meaning(cell_meaning meaning, key_sum *to)
{
    to->bits |= meaning.key_bits;
    to->sum += meaning.value;
}

INLINE rodt_text_span cell_of_line(const row_column *column, const char *row, const uint32_t *ends)
{
    const uint32_t start = ends[column->cell] + 1; /* 0 for the first: the number runs over */
    return (rodt_text_span){row + start, ends[column->cell + 1] - start};
}

/* A cell of a line; up to CELL_SHORT + 1 bytes of it are read, whatever its size. NULL = it is not cached. */
INLINE const cell_meaning *find_cell_of_line(const cell_cache *cells, const row_column *column, const char *row,
                                             const uint32_t *ends, uint64_t tag, cache_hasher *hash)
{
    const rodt_text_span cell = cell_of_line(column, row, ends);
    return cell.size <= CELL_SHORT
               ? cell_cache_find(cells, cell_key_padded(cell.text, cell.size, tag), hash)
               : rodti_cell_cache_probe(&column->keys->cells, cell.text, cell.size, cell_tag_number(tag));
}

INLINE bool add_cell_of_line(const row_column *column, const char *row, const uint32_t *ends, uint64_t tag,
                             key_sum *to, cache_hasher *hash)
{
    const cell_meaning *found = find_cell_of_line(&column->keys->cells, column, row, ends, tag, hash);
    if (found != NULL)
        add_meaning(*found, to);
    return found != NULL;
}

/* The same for a cell by itself. */
INLINE bool add_cell(const row_column *column, rodt_text_span cell, key_sum *to, cache_hasher *hash)
{
    const uint64_t tag = to->tag & column->keys->tag_mask;
    const cell_cache *cells = &column->keys->cells;
    if (cell.text == NULL) {
        to->bits |= column->nothing;
        return true;
    }
    const cell_meaning *found = cell.size <= CELL_SHORT
                                    ? cell_cache_find(cells, cell_key_exact(cell.text, cell.size, tag), hash)
                                    : rodti_cell_cache_probe(cells, cell.text, cell.size, cell_tag_number(tag));
    if (found != NULL)
        add_meaning(*found, to);
    return found != NULL;
}

INLINE void *find_key(rodt_row_cache *cache, row_key key, cache_hasher *hash)
{
    if ((key.bits & KEY_UNCACHEABLE) != 0)
        return NULL;
    cached_result *result = result_cache_find(&cache->results, key, hash);
    if (result == NULL)
        return NULL;
    result_cache_count(&cache->results, result);
    return result + 1;
}

static const key_sum nothing_added = {0, 0, 0, 0, false};

/* Rows that are looked up together, column by column: so none waits for what is found of another. */
#define ROWS_AT_ONCE 32u

/* The keys of these in the making. */
typedef struct key_sums {
    uint64_t bits[ROWS_AT_ONCE];
    uint32_t sum[ROWS_AT_ONCE];
} key_sums;

/* Whose cells are added: of the first column, with which sums begin; of others; of others in the unit of the first. */
typedef enum column_kind { FIRST_COLUMN, OTHER_COLUMN, OTHER_OF_UNIT } column_kind;

/* Adds a cell of each row. Returns how many rows have one that is cached. */
INLINE size_t add_cell_of_rows(const rodt_row_cache *cache, const row_column *column, const char *row,
                               const uint32_t *ends, size_t stride, size_t rows, column_kind kind, key_sums *to,
                               cache_hasher *hash)
{
    const cell_cache cells = column->keys->cells; /* does not change with what is added */
    for (size_t i = 0; i < rows; i++) {
        const uint64_t tag = kind == OTHER_OF_UNIT
                                 ? cell_tag(key_tag(&cache->keys, to->bits[i])) & column->keys->tag_mask : 0;
        const cell_meaning *found = find_cell_of_line(&cells, column, row, ends + i * stride, tag, hash);
        if (found == NULL)
            return i;
        to->bits[i] = found->key_bits | (kind == FIRST_COLUMN ? 0 : to->bits[i]);
        to->sum[i] = found->value + (kind == FIRST_COLUMN ? 0 : to->sum[i]);
    }
    return rows;
}

/* Looks results up; all are fetched before the first is needed. No row has one that must not be cached. */
INLINE size_t find_keys(const result_cache *results, const key_sums *sums, size_t rows, void **found,
                        cache_hasher *hash)
{
    row_key keys[ROWS_AT_ONCE];
    cached_result *first[ROWS_AT_ONCE];
    for (size_t i = 0; i < rows; i++) {
        keys[i] = key_of_row(sums->bits[i], sums->sum[i]);
        first[i] = result_cache_first(results, keys[i], hash);
        FETCH(first[i]);
    }
    for (size_t i = 0; i < rows; i++) {
        if (!result_has_key(first[i], keys[i]))
            first[i] = rodti_result_cache_probe(results, keys[i]);
        if (first[i] == NULL)
            return i;
        found[i] = first[i] + 1;
    }
    return rows;
}

INLINE size_t find_some_rows(const rodt_row_cache *cache, const char *row, const uint32_t *ends, size_t stride,
                             size_t rows, void **found, cache_hasher *hash)
{
    key_sums sums;
    if (cache->columns == 0)
        memset(&sums, 0, sizeof sums);
    for (size_t i = 0; i < cache->columns; i++) {
        const row_column *column = &cache->column[i];
        if (i == 0)
            rows = add_cell_of_rows(cache, column, row, ends, stride, rows, FIRST_COLUMN, &sums, hash);
        else if (cache->has_unit)
            rows = add_cell_of_rows(cache, column, row, ends, stride, rows, OTHER_OF_UNIT, &sums, hash);
        else
            rows = add_cell_of_rows(cache, column, row, ends, stride, rows, OTHER_COLUMN, &sums, hash);
    }
    return find_keys(&cache->results, &sums, rows, found, hash);
}

INLINE size_t find_rows(const rodt_row_cache *cache, const char *row, const uint32_t *ends, size_t stride, size_t rows,
                        void **found, cache_hasher *hash)
{
    size_t known = 0;
    size_t some = ROWS_AT_ONCE;
    for (size_t at = 0; at < rows && known == at; at += some) {
        some = rows - at < some ? rows - at : some;
        known += find_some_rows(cache, row, ends + at * stride, stride, some, found + at, hash);
    }
    return known;
}

INLINE void *find_cells(rodt_row_cache *cache, const rodt_text_span *cells, cache_hasher *hash)
{
    key_sum sum = nothing_added;
    for (size_t i = 0; i < cache->columns; i++) {
        const row_column *column = &cache->column[i];
        if (!add_cell(column, cells[column->field], &sum, hash))
            return NULL;
        if (i == 0 && cache->has_unit)
            sum.tag = cell_tag(key_tag(&cache->keys, sum.bits));
    }
    return find_key(cache, key_of_row(sum.bits, sum.sum), hash);
}

/* --- Rows that differ in the stroke alone ------------------------------------------------------------ */

/* So that the row is found by its stroke when it comes again. */
static void keep_measurement(const row_column *column, rodt_text_span cell, unsigned tag, key_part part)
{
    cell_cache *cells = &column->keys->cells;
    if (rodti_cell_cache_probe(cells, cell.text, cell.size, tag) == NULL)
        rodti_cell_cache_keep(cells, cell.text, cell.size, tag,
                              (cell_meaning){.key_bits = part.bits, .value = (uint32_t)(part.fine / FINE_PER_UNIT)});
}

/* A measurement that is read, not looked up. False: it is not plain. `text` is what the cell says. */
static bool add_measurement(rodt_row_cache *cache, const row_column *column, rodt_text_span cell,
                            rodt_text_span text, key_sum *to)
{
    key_part part;
    const unsigned tag = cell_tag_number(to->tag);
    if (!rodti_key_read_plain(&cache->keys, column->field, text, tag, &part))
        return false;
    to->bits |= part.bits;
    to->fine += part.fine;
    if (part.fine % FINE_PER_UNIT != 0)
        to->is_fine = true;
    else if (cache->is_active)
        keep_measurement(column, cell, tag, part);
    return true;
}

/* Remembers the row, to keep its result. */
static void remember_row(rodt_row_cache *cache, const key_sum *sum)
{
    const bool has_key = (sum->bits & KEY_UNCACHEABLE) == 0;
    const int64_t stroke = (int32_t)sum->sum * FINE_PER_UNIT + sum->fine;
    const bool has_stroke = (sum->bits & KEY_NO_STROKE) == 0;
    cache->alike_key = (row_key){has_key ? sum->bits : KEY_UNCACHEABLE, 0};
    cache->stroke = has_stroke ? stroke : -1;
    cache->key = (row_key){KEY_UNCACHEABLE, 0};
    if (has_key && cache->is_active && !sum->is_fine)
        cache->key = key_of_row(sum->bits, (uint32_t)(stroke / FINE_PER_UNIT));
}

/* A number has no quotes inside, so that the text of its cell is all between the outer ones. */
INLINE rodt_text_span without_quotes(rodt_text_span cell)
{
    const bool is_quoted = cell.size >= 2 && cell.text[0] == '"' && cell.text[cell.size - 1] == '"';
    return is_quoted ? (rodt_text_span){cell.text + 1, cell.size - 2} : cell;
}

/* Adds the cells of a line, those of measurements past the cache. False: one is not known. */
INLINE bool add_line(rodt_row_cache *cache, const char *row, const uint32_t *ends, key_sum *sum, cache_hasher *hash)
{
    for (size_t i = 0; i < cache->columns; i++) {
        const row_column *column = &cache->column[i];
        const rodt_text_span cell = cell_of_line(column, row, ends);
        if (!(column->is_measurement && add_measurement(cache, column, cell, without_quotes(cell), sum)) &&
            !add_cell_of_line(column, row, ends, sum->tag & column->keys->tag_mask, sum, hash))
            return false;
        if (i == 0 && cache->has_unit)
            sum->tag = cell_tag(key_tag(&cache->keys, sum->bits));
    }
    return true;
}

/* The same of cells by themselves, which are by field. */
INLINE bool add_cells(rodt_row_cache *cache, const rodt_text_span *cells, key_sum *sum, cache_hasher *hash)
{
    for (size_t i = 0; i < cache->columns; i++) {
        const row_column *column = &cache->column[i];
        const rodt_text_span cell = cells[column->field];
        if (!(column->is_measurement && cell.text != NULL && add_measurement(cache, column, cell, cell, sum)) &&
            !add_cell(column, cell, sum, hash))
            return false;
        if (i == 0 && cache->has_unit)
            sum->tag = cell_tag(key_tag(&cache->keys, sum->bits));
    }
    return true;
}

static const row_shape *shape_of(const cached_result *found)
{
    return found != NULL ? (const row_shape *)(const void *)(found + 1) : NULL;
}

/* The result of a row whose cells were added. */
INLINE void *find_region(rodt_row_cache *cache, const key_sum *sum, rodt_length *stroke, rodt_length *margin,
                         cache_hasher *hash)
{
    remember_row(cache, sum);
    row_key key = cache->alike_key;
    const row_shape *shape = shape_of(result_cache_find(&cache->shapes, key, hash));
    if (shape == NULL)
        return NULL;
    key.value = fine_region(shape->step, cache->stroke);
    cached_result *found = result_cache_find(&cache->alike, key, hash);
    if (found == NULL)
        return NULL;
    result_cache_count(&cache->alike, found);
    *stroke = *margin = (rodt_length){0, 0};
    if (cache->stroke >= 0) {
        *stroke = fine_to_length(cache->stroke);
        if (shape->limit != SHAPE_NO_LIMIT)
            *margin = fine_to_length(shape->limit - cache->stroke);
    }
    return found + 1;
}

INLINE void *find_alike_line(rodt_row_cache *cache, const char *row, const uint32_t *ends, rodt_length *stroke,
                             rodt_length *margin, cache_hasher *hash)
{
    key_sum sum = nothing_added;
    cache->key.bits = cache->alike_key.bits = KEY_UNCACHEABLE;
    return add_line(cache, row, ends, &sum, hash) ? find_region(cache, &sum, stroke, margin, hash) : NULL;
}

INLINE void *find_alike_cells(rodt_row_cache *cache, const rodt_text_span *cells, rodt_length *stroke,
                              rodt_length *margin, cache_hasher *hash)
{
    key_sum sum = nothing_added;
    cache->key.bits = cache->alike_key.bits = KEY_UNCACHEABLE;
    return add_cells(cache, cells, &sum, hash) ? find_region(cache, &sum, stroke, margin, hash) : NULL;
}

/* --- One of each for each kind of processor ------------------------------------------------------------ */

static void *find_alike_line_any(rodt_row_cache *cache, const char *row, const uint32_t *ends, rodt_length *stroke,
                                 rodt_length *margin)
{
    return find_alike_line(cache, row, ends, stroke, margin, cache_hash_any);
}

static void *find_alike_cells_any(rodt_row_cache *cache, const rodt_text_span *cells, rodt_length *stroke,
                                  rodt_length *margin)
{
    return find_alike_cells(cache, cells, stroke, margin, cache_hash_any);
}

static size_t find_rows_any(rodt_row_cache *cache, const char *row, const uint32_t *ends, size_t stride, size_t rows,
                            void **found)
{
    return find_rows(cache, row, ends, stride, rows, found, cache_hash_any);
}

static void *find_cells_any(rodt_row_cache *cache, const rodt_text_span *cells)
{
    return find_cells(cache, cells, cache_hash_any);
}

#ifdef CACHE_CRC

CACHE_CRC static void *find_alike_line_crc(rodt_row_cache *cache, const char *row, const uint32_t *ends,
                                           rodt_length *stroke, rodt_length *margin)
{
    return find_alike_line(cache, row, ends, stroke, margin, cache_hash_crc);
}

CACHE_CRC static void *find_alike_cells_crc(rodt_row_cache *cache, const rodt_text_span *cells, rodt_length *stroke,
                                            rodt_length *margin)
{
    return find_alike_cells(cache, cells, stroke, margin, cache_hash_crc);
}

CACHE_CRC static size_t find_rows_crc(rodt_row_cache *cache, const char *row, const uint32_t *ends, size_t stride,
                                      size_t rows, void **found)
{
    return find_rows(cache, row, ends, stride, rows, found, cache_hash_crc);
}

CACHE_CRC static void *find_cells_crc(rodt_row_cache *cache, const rodt_text_span *cells)
{
    return find_cells(cache, cells, cache_hash_crc);
}

static void choose_finders(rodt_row_cache *cache)
{
    cache->find_rows = CACHE_HAS_CRC() ? find_rows_crc : find_rows_any;
    cache->find_cells = CACHE_HAS_CRC() ? find_cells_crc : find_cells_any;
    cache->find_alike_line = CACHE_HAS_CRC() ? find_alike_line_crc : find_alike_line_any;
    cache->find_alike_cells = CACHE_HAS_CRC() ? find_alike_cells_crc : find_alike_cells_any;
}

#else

static void choose_finders(rodt_row_cache *cache)
{
    cache->find_rows = find_rows_any;
    cache->find_cells = find_cells_any;
    cache->find_alike_line = find_alike_line_any;
    cache->find_alike_cells = find_alike_cells_any;
}

#endif

size_t rodt_row_cache_find_rows(rodt_row_cache *cache, const char *row, const uint32_t *ends, size_t stride,
                                size_t rows, void **found)
{
    return cache->is_active ? cache->find_rows(cache, row, ends, stride, rows, found) : 0;
}

void rodt_row_cache_count(rodt_row_cache *cache, void *const *found, size_t rows)
{
    result_cache results = cache->results; /* a copy, which no result can be part of */
    for (size_t i = 0; i < rows; i++)
        result_cache_count(&results, (cached_result *)found[i] - 1);
    cache->results.hit_count = results.hit_count;
}

void *rodt_row_cache_find(rodt_row_cache *cache, const char *row, const uint32_t *ends)
{
    void *found;
    if (rodt_row_cache_find_rows(cache, row, ends, 0, 1, &found) == 0)
        return NULL;
    rodt_row_cache_count(cache, &found, 1);
    return found;
}

void *rodt_row_cache_find_cells(rodt_row_cache *cache, const rodt_text_span cells[RODT_FIELD_ROOM])
{
    return cache->is_active ? cache->find_cells(cache, cells) : NULL;
}

void *rodt_row_cache_find_alike(rodt_row_cache *cache, const char *row, const uint32_t *ends, rodt_length *stroke,
                                rodt_length *margin)
{
    return cache->find_alike_line(cache, row, ends, stroke, margin);
}

void *rodt_row_cache_find_alike_cells(rodt_row_cache *cache, const rodt_text_span cells[RODT_FIELD_ROOM],
                                      rodt_length *stroke, rodt_length *margin)
{
    return cache->find_alike_cells(cache, cells, stroke, margin);
}

/* --- Making and freeing ------------------------------------------------------------------------------ */

static void add_column(rodt_row_cache *cache, rodt_field field, size_t cell)
{
    if (cell != RODT_NO_COLUMN)
        cache->column[cache->columns++] =
            (row_column){.keys = &cache->keys.field[field], .cell = cell, .field = field,
                         .is_measurement = key_is_measurement(field), .nothing = key_of_nothing(field).key_bits};
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
    open = rodti_result_cache_open(&made->results, bytes, results) && open;
    open = rodti_result_cache_open(&made->shapes, sizeof(row_shape), SHAPES_MOST) && open;
    open = rodti_result_cache_open(&made->alike, bytes, results) && open;
    if (!open) {
        rodt_row_cache_free(made);
        return RODT_E_MEMORY;
    }
    add_columns(made, column);
    choose_finders(made);
    made->key.bits = made->alike_key.bits = KEY_UNCACHEABLE;
    made->is_active = true;
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
    rodti_result_cache_close(&cache->shapes);
    rodti_result_cache_close(&cache->alike);
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

static bool add_text(rodt_row_cache *cache, const row_column *column, rodt_text_span cell, const rodt_form *text,
                     key_sum *to)
{
    const char *says = rodt_form_get(text, column->field);
    return says != NULL && cell.text != NULL && column->is_measurement &&
           add_measurement(cache, column, cell, (rodt_text_span){says, strlen(says)}, to);
}

void *rodt_row_cache_read(rodt_row_cache *cache, const rodt_text_span cells[RODT_FIELD_ROOM],
                          const rodt_form *text)
{
    key_sum sum = nothing_added;
    cache->read++;
    for (size_t i = 0; i < cache->columns && (sum.bits & KEY_UNCACHEABLE) == 0; i++) {
        const row_column *column = &cache->column[i];
        const rodt_text_span cell = cells[column->field];
        if (!add_text(cache, column, cell, text, &sum))
            add_meaning(read_cell(cache, column, cell, text, sum.tag), &sum);
        if (i == 0 && cache->has_unit)
            sum.tag = cell_tag(key_tag(&cache->keys, sum.bits));
    }
    remember_row(cache, &sum);
    return find_key(cache, cache->key, cache->results.hash);
}

/* Other cells can have had the same key. NULL = there is no room. */
static void *keep_result(result_cache *results, row_key key)
{
    cached_result *found = rodti_result_cache_probe(results, key);
    return found != NULL ? found + 1 : rodti_result_cache_keep(results, key);
}

void *rodt_row_cache_keep(rodt_row_cache *cache)
{
    row_key key = cache->key;
    cache->key.bits = KEY_UNCACHEABLE;
    return key.bits != KEY_UNCACHEABLE ? keep_result(&cache->results, key) : NULL;
}

/* False: a limit that is no whole number of parts is subtracted by nobody but the judge. */
static bool find_shape(const rodt_row_cache *cache, const rodt_form *text, row_shape *shape)
{
    rodt_reading reading;
    *shape = (row_shape){{INT64_MAX, INT64_MAX, INT64_MAX, INT64_MAX}, SHAPE_NO_LIMIT};
    if (rodt_form_parse(text, &reading, NULL) != RODT_OK)
        return false;
    const rodt_finding finding = rodti_column_judge(&reading, cache->keys.rules);
    const stroke_steps steps = rodti_stroke_steps_find(&reading, cache->keys.rules, FINE_PER_INCH, INT64_MAX);
    memcpy(shape->step, steps.at, sizeof shape->step);
    if (!rodt_length_given(finding.limit))
        return true;
    shape->limit = finding.limit.num * (FINE_PER_INCH / finding.limit.den);
    return FINE_PER_INCH % finding.limit.den == 0;
}

/* NULL: the row has none, or there is no room. */
static const row_shape *keep_shape(rodt_row_cache *cache, const rodt_form *text)
{
    row_shape shape;
    const row_shape *found = shape_of(rodti_result_cache_probe(&cache->shapes, cache->alike_key));
    if (found != NULL || !find_shape(cache, text, &shape))
        return found;
    row_shape *kept = rodti_result_cache_keep(&cache->shapes, cache->alike_key);
    if (kept != NULL)
        *kept = shape;
    return kept;
}

void *rodt_row_cache_keep_alike(rodt_row_cache *cache, const rodt_form *text)
{
    row_key key = cache->alike_key;
    const row_shape *shape = key.bits != KEY_UNCACHEABLE ? keep_shape(cache, text) : NULL;
    cache->alike_key.bits = KEY_UNCACHEABLE;
    if (shape == NULL)
        return NULL;
    key.value = fine_region(shape->step, cache->stroke);
    return keep_result(&cache->alike, key);
}

static bool flush_results(result_cache *results, rodt_row_sink *sink, void *context, uint64_t *rows)
{
    for (uint32_t i = 0; i < results->hit_count; i++) {
        cached_result *result = result_at(results, results->hit_lines[i]);
        *rows += result->hits;
        if (!sink(context, result + 1, result->hits))
            return false;
        result->hits = 0;
    }
    results->hit_count = 0;
    return true;
}

bool rodt_row_cache_flush(rodt_row_cache *cache, rodt_row_sink *sink, void *context)
{
    return flush_results(&cache->results, sink, context, &cache->found) &&
           flush_results(&cache->alike, sink, context, &cache->found_alike);
}

/* A row that is found alike costs three times as much as one that is found, and what it keeps as much again. */
static bool has_many_new(const rodt_row_cache *cache)
{
    return (cache->read > ROWS_TO_TELL && cache->read / 4 > cache->found) ||
           (cache->found_alike > ROWS_TO_TELL && cache->found_alike * 2 > cache->found);
}

/* Rows are counted on until there are enough of them: a chunk may have few. */
bool rodt_row_cache_begin_chunk(rodt_row_cache *cache)
{
    const bool backs_off = cache->backoff_left > 0;
    const bool has_new = !backs_off && has_many_new(cache);
    const bool has_known = !backs_off && cache->found > ROWS_TO_TELL;
    if (backs_off) {
        cache->backoff_left--;
    } else if (has_new) {
        cache->backoff_left = cache->backoff_next;
        cache->backoff_next *= cache->backoff_next < BACKOFF_MOST ? 2 : 1;
    } else if (has_known) {
        cache->backoff_next = BACKOFF_FIRST;
    }
    if (backs_off || has_new || has_known)
        cache->found = cache->read = cache->found_alike = 0;
    cache->is_active = cache->backoff_left == 0;
    return cache->is_active;
}
