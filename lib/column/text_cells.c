/* SPDX-License-Identifier: Apache-2.0 */
/* Columns of texts: where each cell is, by the layouts of Arrow. */
#include "column/text_cells.h"

#include <string.h>

static const rodt_text_span missing = {NULL, 0};

static bool is_valid(rodt_column_bits bits, size_t row)
{
    size_t bit = bits.from + row;
    return bits.bits == NULL || (bits.bits[bit / 8] >> (bit % 8) & 1) != 0;
}

/* A view: size, then either the text itself or its beginning, the number of a buffer and the place in it. */
static rodt_text_span view_at(const rodt_text_cells *column, size_t cell)
{
    const char *view = (const char *)column->cells + 16 * cell;
    int32_t part[4];
    memcpy(part, view, sizeof part);
    if (part[0] <= 12)
        return (rodt_text_span){view + 4, (size_t)part[0]};
    return (rodt_text_span){(const char *)column->buffers[part[2]] + part[3], (size_t)part[0]};
}

static rodt_text_span span_at(const rodt_text_cells *column, size_t cell)
{
    const int32_t *offset32 = column->cells;
    const int64_t *offset64 = column->cells;
    const rodt_text_span *span = column->cells;
    switch (column->layout) {
    case RODT_TEXT_OFFSETS32:
        return (rodt_text_span){column->bytes + offset32[cell], (size_t)(offset32[cell + 1] - offset32[cell])};
    case RODT_TEXT_OFFSETS64:
        return (rodt_text_span){column->bytes + offset64[cell], (size_t)(offset64[cell + 1] - offset64[cell])};
    case RODT_TEXT_VIEWS: return view_at(column, cell);
    case RODT_TEXT_SPANS: return span[cell];
    case RODT_TEXT_ABSENT:
    default: return missing;
    }
}

/* Numbers are never negative, so those of signed types are read alike. */
static uint64_t number_at(const rodt_text_cells *column, size_t row)
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

rodt_text_span text_cells_at(const rodt_text_cells *column, size_t row)
{
    if (column->layout == RODT_TEXT_ABSENT)
        return missing;
    if (column->index != NULL) {
        uint64_t number = is_valid(column->index_valid, row) ? number_at(column, row) : UINT64_MAX;
        if (number >= column->count)
            return missing;
        row = (size_t)number;
    }
    return is_valid(column->valid, row) ? span_at(column, column->from + row) : missing;
}

/* --- Arrow ------------------------------------------------------------------------------------------- */

static bool is_there(const struct ArrowSchema *schema, const struct ArrowArray *array)
{
    return schema != NULL && array != NULL && schema->release != NULL && array->release != NULL &&
           schema->format != NULL && array->length >= 0 && array->offset >= 0 && array->buffers != NULL;
}

static bool open_texts(const struct ArrowSchema *schema, const struct ArrowArray *array, rodt_text_cells *out)
{
    static const char *const formats[] = {"u", "U", "vu"};
    static const rodt_text_layout layouts[] = {RODT_TEXT_OFFSETS32, RODT_TEXT_OFFSETS64, RODT_TEXT_VIEWS};
    if (!is_there(schema, array) || schema->dictionary != NULL || array->dictionary != NULL)
        return false;
    for (size_t i = 0; i < COUNT_OF(formats); i++) {
        if (strcmp(schema->format, formats[i]) == 0)
            out->layout = layouts[i];
    }
    if (out->layout == RODT_TEXT_ABSENT || array->n_buffers < (out->layout == RODT_TEXT_VIEWS ? 2 : 3))
        return false;
    out->from = (size_t)array->offset;
    out->count = (size_t)array->length;
    out->valid = (rodt_column_bits){array->buffers[0], out->from};
    out->cells = array->buffers[1];
    if (out->layout == RODT_TEXT_VIEWS)
        out->buffers = array->buffers + 2;
    else
        out->bytes = array->buffers[2];
    return out->cells != NULL || array->length == 0;
}

static uint32_t width_of(const char *format)
{
    static const char letters[] = "cCsSiIlL";
    const char *at = format[0] == '\0' || format[1] != '\0' ? NULL : strchr(letters, format[0]);
    return at == NULL ? 0 : 1u << ((at - letters) / 2);
}

rodt_status rodt_text_cells_from_arrow(const struct ArrowSchema *schema, const struct ArrowArray *array,
                                       rodt_text_cells *out)
{
    rodt_text_cells found = {.layout = RODT_TEXT_ABSENT};
    if (out == NULL || !is_there(schema, array))
        return RODT_E_ARGUMENT;
    if (schema->dictionary == NULL) {
        if (!open_texts(schema, array, &found))
            return RODT_E_ARGUMENT;
        *out = found;
        return RODT_OK;
    }
    found.index_width = width_of(schema->format);
    if (found.index_width == 0 || array->n_buffers != 2 || !open_texts(schema->dictionary, array->dictionary, &found))
        return RODT_E_ARGUMENT;
    found.index = array->buffers[1];
    found.index_from = (size_t)array->offset;
    found.index_valid = (rodt_column_bits){array->buffers[0], found.index_from};
    if (found.index == NULL && array->length > 0)
        return RODT_E_ARGUMENT;
    *out = found;
    return RODT_OK;
}
