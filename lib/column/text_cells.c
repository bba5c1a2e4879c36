/* SPDX-License-Identifier: Apache-2.0 */
/* Columns of texts out of Arrow arrays: nothing is copied, nothing is released. */
#include "column/text_cells.h"

#include <string.h>

rodt_text_span rodt_text_cells_at(const rodt_text_cells *cells, size_t row) { return text_cells_at(cells, row); }

static bool is_there(const struct ArrowSchema *schema, const struct ArrowArray *array)
{
    return schema != NULL && array != NULL && schema->release != NULL && array->release != NULL &&
           schema->format != NULL && array->length >= 0 && array->offset >= 0 && array->buffers != NULL;
}

static bool open_texts(const struct ArrowSchema *schema, const struct ArrowArray *array, rodt_text_cells *out)
{
    static const char *const formats[] = {"u", "U", "vu"};
    static const rodt_text_layout layouts[] = {RODT_TEXT_LAYOUT_OFFSETS32, RODT_TEXT_LAYOUT_OFFSETS64,
                                               RODT_TEXT_LAYOUT_VIEWS};
    if (!is_there(schema, array) || schema->dictionary != NULL || array->dictionary != NULL)
        return false;
    for (size_t i = 0; i < COUNT_OF(formats); i++) {
        if (strcmp(schema->format, formats[i]) == 0)
            out->layout = layouts[i];
    }
    if (out->layout == RODT_TEXT_LAYOUT_ABSENT || array->n_buffers < (out->layout == RODT_TEXT_LAYOUT_VIEWS ? 2 : 3))
        return false;
    out->from = (size_t)array->offset;
    out->count = (size_t)array->length;
    out->valid = (rodt_column_bits){array->buffers[0], out->from};
    out->cells = array->buffers[1];
    if (out->layout == RODT_TEXT_LAYOUT_VIEWS)
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
    rodt_text_cells found = {.layout = RODT_TEXT_LAYOUT_ABSENT};
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
