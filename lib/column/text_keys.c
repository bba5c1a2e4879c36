/* SPDX-License-Identifier: Apache-2.0 */
/* A loop for each layout that is met in files of millions of rows; sizes of texts differ at random, so the loops do not
 * branch on them. */
#include "column/text_keys.h"

#include "column/text_cells.h"

static cell_key key_of_span(rodt_text_span cell)
{
    return cell.size > CELL_SHORT ? KEY_OF_LONG_TEXT : cell_key_exact(cell.text, cell.text != NULL ? cell.size : 0, 0);
}

static void keys_of_any(const rodt_text_cells *column, size_t first, size_t count, cell_key *keys)
{
    for (size_t i = 0; i < count; i++)
        keys[i] = key_of_span(text_cells_at(column, first + i));
}

/* Of a row, in memory that ends at `end`. */
INLINE cell_key key_before(const rodt_text_cells *column, size_t row, const char *text, size_t size, const char *end)
{
    if (!text_cells_valid(column->valid, row))
        return cell_key_exact("", 0, 0);
    if (size > CELL_SHORT)
        return KEY_OF_LONG_TEXT;
    return (size_t)(end - text) > CELL_SHORT ? cell_key_padded(text, size, 0) : cell_key_exact(text, size, 0);
}

static void keys_of_offsets32(const rodt_text_cells *column, size_t first, size_t count, cell_key *keys)
{
    const int32_t *offset = (const int32_t *)column->cells + column->from + first;
    const char *end = column->bytes + offset[count];
    for (size_t i = 0; i < count; i++)
        keys[i] = key_before(column, first + i, column->bytes + offset[i], (size_t)(offset[i + 1] - offset[i]), end);
}

static void keys_of_offsets64(const rodt_text_cells *column, size_t first, size_t count, cell_key *keys)
{
    const int64_t *offset = (const int64_t *)column->cells + column->from + first;
    const char *end = column->bytes + offset[count];
    for (size_t i = 0; i < count; i++)
        keys[i] = key_before(column, first + i, column->bytes + offset[i], (size_t)(offset[i + 1] - offset[i]), end);
}

#if CELL_LAST_BYTE == 56
#define VIEWS_ARE_KEYS 1

/* A short text is in its view, filled up with zero bytes. Were it not, then its key would be of no cached text. */
static void keys_of_views(const rodt_text_cells *column, size_t first, size_t count, cell_key *keys)
{
    const char *view = (const char *)column->cells + 16 * (column->from + first);
    for (size_t i = 0; i < count; i++, view += 16) {
        uint64_t part[2];
        memcpy(part, view, sizeof part);
        const uint32_t size = (uint32_t)part[0];
        keys[i] = (cell_key){{part[0] >> 32 | part[1] << 32, part[1] >> 32 | (uint64_t)size << CELL_LAST_BYTE}};
        if (size > 12 || !text_cells_valid(column->valid, first + i))
            keys[i] = key_of_span(text_cells_at(column, first + i));
    }
}

#else
#define VIEWS_ARE_KEYS 0
#define keys_of_views keys_of_any
#endif

void rodti_text_keys(const rodt_text_cells *column, size_t first, size_t count, cell_key *keys)
{
    if (column->index == NULL && column->layout == RODT_TEXT_LAYOUT_OFFSETS32)
        keys_of_offsets32(column, first, count, keys);
    else if (column->index == NULL && column->layout == RODT_TEXT_LAYOUT_OFFSETS64)
        keys_of_offsets64(column, first, count, keys);
    else if (column->index == NULL && column->layout == RODT_TEXT_LAYOUT_VIEWS)
        keys_of_views(column, first, count, keys);
    else
        keys_of_any(column, first, count, keys);
}
