/* SPDX-License-Identifier: Apache-2.0 */
/* For programs that judge a stream of rows and write something after each: a cache of what earlier rows came to. */
#ifndef RODTRAVEL_ROW_CACHE_H
#define RODTRAVEL_ROW_CACHE_H

#include "column_text.h"

#ifdef __cplusplus
extern "C" {
#endif

/*
 * Finds the result of an earlier row that must have the same verdict, reasons, applied stroke, limit and margin. With
 * each result it keeps bytes of the caller's, such as the text that was written after that row:
 *
 *     bytes = rodt_row_cache_find(cache, row, ends);
 *     if (bytes == NULL)
 *         bytes = rodt_row_cache_read(cache, cells, &text);
 *     if (bytes == NULL) {
 *         rodt_form_judge_row(&text, rules, &finding, NULL);
 *         bytes = rodt_row_cache_keep(cache);
 *         if (bytes != NULL)
 *             fill in the caller's bytes
 *     }
 *
 * Rows without a chamber, and rows whose chamber cannot be read, are never found: a stream may hold blank rows and
 * headings. The cache is bounded; nothing in it changes a result. One thread at a time; make one for each thread.
 */
typedef struct rodt_row_cache rodt_row_cache;

/* There is no such column. */
#define RODT_NO_COLUMN ((size_t)-1)

/* So many bytes after the last cell of a row must be readable. */
#define RODT_ROW_PAD 32

/*
 * Makes a cache. It allocates memory; free it with rodt_row_cache_free.
 *
 * rules    the cache is a user of it (rodt_rules_ref)
 * form     how rows are written: style, date order and default day. Its texts are not read
 * column   for each field which cell of a row holds it, or RODT_NO_COLUMN; RODT_NO_COLUMN also for what is no field
 * bytes    of the caller's for each result, 1 to 4096
 * results  at most so many are kept, 1 to 1 << 20
 * cache    gets the cache; untouched on failure
 *
 * RODT_OK          *cache is empty and ready
 * RODT_E_UNKNOWN_RULES  rules is NULL
 * RODT_E_ARGUMENT  another pointer is NULL, a number is out of its range, the form holds an unknown enumerator, or a
 *                  field that this version does not know has a column
 * RODT_E_MEMORY    no memory
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_row_cache_new(const rodt_rules *rules, const rodt_form *form,
                                                        const size_t column[RODT_FIELD_ROOM], size_t bytes,
                                                        uint32_t results, rodt_row_cache **cache);

/* NULL is allowed. */
RODT_API void rodt_row_cache_free(rodt_row_cache *cache);

/*
 * The fast path: finds a result by the cells of a row as they are in memory, quotes included. Cell i lies between
 * row + ends[i] + 1 and row + ends[i + 1]; so ends[0] is one byte before the row, UINT32_MAX where `row` is its first.
 * Counts a row for the result. Returns the caller's bytes, valid until the next keep; NULL = not known.
 */
RODT_API void *rodt_row_cache_find(rodt_row_cache *cache, const char *row, const uint32_t *ends);

/*
 * As rodt_row_cache_find, for rows that follow each other, which is faster than one by one. Stops at the first row that
 * is not known, and counts none; rodt_row_cache_count does.
 *
 * row     from which all ends are counted
 * ends    of the first row; those of row k are at ends + k * stride
 * rows    how many are looked up, if each is known
 * found   gets the caller's bytes of each row that was found, valid until the next keep
 *
 * Returns how many rows were found.
 */
RODT_API size_t rodt_row_cache_find_rows(rodt_row_cache *cache, const char *row, const uint32_t *ends, size_t stride,
                                         size_t rows, void **found);

/* Counts one row for each of these results of rodt_row_cache_find_rows. Between the two nothing may be kept. */
RODT_API void rodt_row_cache_count(rodt_row_cache *cache, void *const *found, size_t rows);

/* As rodt_row_cache_find, for cells by field; nothing after a cell is read. A text of NULL = nothing; those without a
 * column are not looked at, so they need not be set. */
RODT_API void *rodt_row_cache_find_cells(rodt_row_cache *cache, const rodt_text_span cells[RODT_FIELD_ROOM]);

/*
 * Finds what was kept for an earlier row that differs in its stroke alone and must have the same verdict, reasons and
 * limit (rodt_row_cache_keep_alike), for a row that rodt_row_cache_find did not find: so rows whose readings never come
 * again are found too. Readings are read, in double quotes or without. Counts a row for the result, and remembers the
 * row for rodt_row_cache_keep. Returns the caller's bytes, valid until the next keep_alike; NULL = not known, and
 * *stroke and *margin are untouched.
 *
 * stroke  gets the applied stroke of this row; {0, 0} = it has none
 * margin  gets its margin; {0, 0} = it has none
 */
RODT_API void *rodt_row_cache_find_alike(rodt_row_cache *cache, const char *row, const uint32_t *ends,
                                         rodt_length *stroke, rodt_length *margin);

/* As rodt_row_cache_find_alike, for the cells of rodt_row_cache_find_cells, which have no quotes around them. */
RODT_API void *rodt_row_cache_find_alike_cells(rodt_row_cache *cache, const rodt_text_span cells[RODT_FIELD_ROOM],
                                               rodt_length *stroke, rodt_length *margin);

/*
 * As rodt_row_cache_find_cells, for a row that was not found: cells that are new are read. Remembers the row for
 * rodt_row_cache_keep.
 *
 * cells  by field; a text of NULL = nothing
 * text   what the cells say, quotes removed; NULL = nothing
 */
RODT_API void *rodt_row_cache_read(rodt_row_cache *cache, const rodt_text_span cells[RODT_FIELD_ROOM],
                                   const rodt_form *text);

/* Keeps the row that was read last as a result; others may be evicted. Returns the caller's bytes, to be filled in,
 * valid until the next keep; NULL = it cannot be kept. */
RODT_API void *rodt_row_cache_keep(rodt_row_cache *cache);

/* Keeps the row that was read last, whose texts these are, for all that differ from it in the stroke alone, as
 * rodt_row_cache_keep does. */
RODT_API void *rodt_row_cache_keep_alike(rodt_row_cache *cache, const rodt_form *text);

/* Takes so many rows of one result. False stops. */
typedef bool rodt_row_sink(void *context, const void *bytes, uint64_t rows);

/* Gives the rows that were found since the last call to the sink, results in the order of their first row. A result
 * whose rows were not given out is never evicted. Returns false if the sink stopped it. */
RODT_API bool rodt_row_cache_flush(rodt_row_cache *cache, rodt_row_sink *sink, void *context);

/* Call it before each chunk of a stream. False: most rows of the last chunks were new, so rodt_row_cache_find finds
 * nothing in this one and rodt_row_cache_keep keeps nothing (back-off); rows that are alike are found. */
RODT_API bool rodt_row_cache_begin_chunk(rodt_row_cache *cache);

/*
 * Numbers that a caller has worked out for short texts: the meaning of a heading, a date. Bounded: a text may be
 * evicted, or not be kept at all. One thread at a time.
 */
typedef struct rodt_text_map rodt_text_map;

/* Keeps about so many texts, 1 to 1 << 16. It allocates memory; NULL = there is none, or `most` is out of its range. */
RODT_API rodt_text_map *rodt_text_map_new(uint32_t most);

/* NULL is allowed. */
RODT_API void rodt_text_map_free(rodt_text_map *map);

/* The number of a text. False: it is not known; *number is untouched. */
RODT_API bool rodt_text_map_get(const rodt_text_map *map, const char *text, size_t size, uint32_t *number);

/* Keeps the number of a text that is not known. */
RODT_API void rodt_text_map_keep(rodt_text_map *map, const char *text, size_t size, uint32_t number);

#ifdef __cplusplus
}
#endif
#endif
