/* SPDX-License-Identifier: Apache-2.0 */
/* Numbers of short texts, for programs that judge a stream of rows. */
#include "rodtravel/row_cache.h"

#include <stdlib.h>

#include "column/cache.h"

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
    const cell_meaning *found = size <= CELL_SHORT
                                    ? cell_cache_find(&map->cells, cell_key_exact(text, size, 0), map->cells.hash)
                                    : rodti_cell_cache_probe(&map->cells, text, size, 0);
    if (found == NULL)
        return false;
    *number = found->value;
    return true;
}

void rodt_text_map_keep(rodt_text_map *map, const char *text, size_t size, uint32_t number)
{
    rodti_cell_cache_keep(&map->cells, text, size, 0, (cell_meaning){.value = number});
}
