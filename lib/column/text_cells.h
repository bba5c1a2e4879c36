/* SPDX-License-Identifier: Apache-2.0 */
/* One cell of a column of texts, by the layouts of Arrow. Inline, so that loops over rows choose the layout outside. */
#ifndef RODT_TEXT_CELLS_H
#define RODT_TEXT_CELLS_H

#include <string.h>

#include "core/common.h"
#include "rodtravel/column_text.h"

/* True if the cells can be read: the layout and the width of indices are known. Fills *error (may be NULL). */
rodt_status rodti_text_cells_check(const rodt_text_cells *cells, const char *field, rodt_error *error);

/* The line of an error is the number of its row, from 1; 0 where that does not fit. Returns status. */
rodt_status rodti_row_status(rodt_error *error, size_t row, rodt_status status);

static inline bool text_cells_valid(rodt_column_bits bits, size_t row)
{
    size_t bit = bits.from + row;
    return bits.bits == NULL || (bits.bits[bit / 8] >> (bit % 8) & 1) != 0;
}

/* A view: size, then either the text itself or its beginning, the number of a buffer and the place in it. */
static inline rodt_text_span text_cells_view(const rodt_text_cells *column, size_t cell)
{
    const char *view = (const char *)column->cells + 16 * cell;
    int32_t part[4];
    memcpy(part, view, sizeof part);
    if (part[0] <= 12)
        return (rodt_text_span){view + 4, (size_t)part[0]};
    return (rodt_text_span){(const char *)column->buffers[part[2]] + part[3], (size_t)part[0]};
}

/* Of a layout that was checked, and is not absent. */
static inline rodt_text_span text_cells_span(const rodt_text_cells *column, size_t cell)
{
    const int32_t *offset32 = column->cells;
    const int64_t *offset64 = column->cells;
    const rodt_text_span *span = column->cells;
    if (column->layout == RODT_TEXT_LAYOUT_OFFSETS32)
        return (rodt_text_span){column->bytes + offset32[cell], (size_t)(offset32[cell + 1] - offset32[cell])};
    if (column->layout == RODT_TEXT_LAYOUT_OFFSETS64)
        return (rodt_text_span){column->bytes + offset64[cell], (size_t)(offset64[cell + 1] - offset64[cell])};
    if (column->layout == RODT_TEXT_LAYOUT_VIEWS)
        return text_cells_view(column, cell);
    return span[cell];
}

/* Numbers are never negative, so those of signed types are read alike. */
static inline uint64_t text_cells_number(const rodt_text_cells *column, size_t row)
{
    const char *at = (const char *)column->index + (column->index_from + row) * column->index_width;
    uint8_t number8;
    uint16_t number16;
    uint32_t number32;
    uint64_t number64;
    switch (column->index_width) {
    case 1: memcpy(&number8, at, sizeof number8); return number8;
    case 2: memcpy(&number16, at, sizeof number16); return number16;
    case 4: memcpy(&number32, at, sizeof number32); return number32;
    default: memcpy(&number64, at, sizeof number64); return number64;
    }
}

/* The text of a row; text NULL = missing, or a number that the dictionary does not have. */
static inline rodt_text_span text_cells_at(const rodt_text_cells *column, size_t row)
{
    if (column->layout == RODT_TEXT_LAYOUT_ABSENT)
        return (rodt_text_span){NULL, 0};
    if (column->index != NULL) {
        uint64_t number = text_cells_valid(column->index_valid, row) ? text_cells_number(column, row) : UINT64_MAX;
        if (number >= column->count)
            return (rodt_text_span){NULL, 0};
        row = (size_t)number;
    }
    if (!text_cells_valid(column->valid, row))
        return (rodt_text_span){NULL, 0};
    return text_cells_span(column, column->from + row);
}

#endif
