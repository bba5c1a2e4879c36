/* SPDX-License-Identifier: Apache-2.0 */
/* A chunk that several functions of a query are asked of is judged once. DuckDB hands it to one function after the
 * other, and reuses its memory for the next chunk: so the arguments are copied, and their bytes are compared. Only a
 * query with several functions pays for copies: they begin when a second function gets what the first one had. */
#include "extension.h"

#include <stdlib.h>
#include <string.h>

static size_t bytes_of_mask(idx_t rows) { return (size_t)(rows + 63) / 64 * sizeof(uint64_t); }

static bool is_same_type(const raw_argument *a, const raw_argument *b)
{
    return a->type == b->type && a->stored_type == b->stored_type && a->digits == b->digits && a->scale == b->scale &&
           (a->validity == NULL) == (b->validity == NULL);
}

static bool is_same_argument(const raw_argument *now, const kept_argument *kept, idx_t rows)
{
    if (!is_same_type(now, &kept->of))
        return false;
    if (now->validity != NULL && memcmp(now->validity, kept->validity, bytes_of_mask(rows)) != 0)
        return false;
    return now->is_empty || memcmp(now->data, kept->data, rows * now->width) == 0;
}

bool is_repeated(kept_chunk *kept, const arguments *in)
{
    if (!kept->there || kept->rows != in->rows || kept->count != in->count)
        return false;
    for (int i = 0; i < in->count; i++) {
        if (!is_same_argument(&in->raw[i], kept->argument[i], in->rows))
            return false;
    }
    kept->used = true;
    return true;
}

/* Whether another function was asked of a column in the same place. What is the same in all rows is made anew for each
 * function, and lies elsewhere. */
static bool is_sibling(const kept_chunk *kept, const char *function, const arguments *in)
{
    bool found = false;
    if (kept->function == NULL || kept->function == function || kept->rows != in->rows || kept->count != in->count)
        return false;
    for (int i = 0; i < in->count; i++)
        found = found || (in->raw[i].data != NULL && kept->from[i] == in->raw[i].data);
    return found;
}

bool begin_chunk(kept_chunk *kept, const char *function, const arguments *in)
{
    const bool is_worth_it = (kept->there && kept->used) || is_sibling(kept, function, in);
    kept->there = kept->used = false;
    kept->function = function;
    kept->rows = in->rows;
    kept->count = in->count;
    for (int i = 0; i < in->count; i++)
        kept->from[i] = in->raw[i].data;
    return is_worth_it;
}

static bool keep_argument(const raw_argument *now, kept_argument **to, idx_t rows)
{
    if (now->is_elsewhere)
        return false;
    if (*to == NULL)
        *to = malloc(sizeof **to);
    if (*to == NULL)
        return false;
    (*to)->of = *now;
    if (now->validity != NULL)
        memcpy((*to)->validity, now->validity, bytes_of_mask(rows));
    if (!now->is_empty)
        memcpy((*to)->data, now->data, rows * now->width);
    return true;
}

void keep_chunk(kept_chunk *kept, const arguments *in)
{
    for (int i = 0; i < in->count; i++) {
        if (!keep_argument(&in->raw[i], &kept->argument[i], kept->rows))
            return;
    }
    kept->there = true;
}

void free_chunk(kept_chunk *kept)
{
    for (int i = 0; i < SQL_ARGUMENTS; i++)
        free(kept->argument[i]);
}
