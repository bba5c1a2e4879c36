/* SPDX-License-Identifier: Apache-2.0 */
/* Columns of texts out of Arrow arrays: nothing is copied, nothing is released. */
#include "column/text_cells.h"

#include <stdio.h>
#include <string.h>

#include "column/check.h"
#include "core/fault.h"

rodt_text_span rodt_text_cells_at(const rodt_text_cells *cells, size_t row) { return text_cells_at(cells, row); }

rodt_status rodti_text_cells_check(const rodt_text_cells *cells, const char *field, rodt_error *error)
{
    char sentence[80];
    if ((unsigned)cells->layout >= RODT_TEXT_LAYOUT_END)
        return rodti_field_error(error, field, "this column has a layout that is not known");
    if (cells->index != NULL && cells->index_width != 1 && cells->index_width != 2 && cells->index_width != 4 &&
        cells->index_width != 8)
        return rodti_field_error(error, field, "an index of a dictionary has 1, 2, 4 or 8 bytes");
    if (rodti_is_zero(cells->reserved, COUNT_OF(cells->reserved)))
        return RODT_OK;
    snprintf(sentence, sizeof sentence, "the reserve of the column %s is zero", field);
    return rodti_field_error(error, "reserved", sentence);
}

rodt_status rodti_row_status(rodt_error *error, size_t row, rodt_status status)
{
    if (error != NULL)
        error->line = (uint32_t)(row + 1) * (row < UINT32_MAX);
    return status;
}

static const char released[] = "this array was released";

static bool is_there(const struct ArrowSchema *schema, const struct ArrowArray *array)
{
    return array != NULL && schema->release != NULL && array->release != NULL;
}

/* Gives what is wrong. */
static const char *open_texts(const struct ArrowSchema *schema, const struct ArrowArray *array, rodt_text_cells *out)
{
    static const char *const formats[] = {"u", "U", "vu"};
    static const rodt_text_layout layouts[] = {RODT_TEXT_LAYOUT_OFFSETS32, RODT_TEXT_LAYOUT_OFFSETS64,
                                               RODT_TEXT_LAYOUT_VIEWS};
    if (!is_there(schema, array))
        return released;
    for (size_t i = 0; i < COUNT_OF(formats) && schema->format != NULL; i++) {
        if (strcmp(schema->format, formats[i]) == 0)
            out->layout = layouts[i];
    }
    if (out->layout == RODT_TEXT_LAYOUT_ABSENT || schema->dictionary != NULL || array->dictionary != NULL)
        return "this array holds no texts: its format is none of u, U and vu";
    if (!arrow_is_sane(array, out->layout == RODT_TEXT_LAYOUT_VIEWS ? 2 : 3))
        return ARROW_NOT_SANE;
    out->from = (size_t)array->offset;
    out->count = (size_t)array->length;
    out->valid = (rodt_column_bits){array->buffers[0], out->from};
    out->cells = array->buffers[1];
    if (out->layout == RODT_TEXT_LAYOUT_VIEWS)
        out->buffers = array->buffers + 2;
    else
        out->bytes = array->buffers[2];
    return out->cells != NULL || array->length == 0 ? NULL : "this array has no cells";
}

static uint32_t width_of(const char *format)
{
    static const char letters[] = "cCsSiIlL";
    const char *at = format == NULL || format[0] == '\0' || format[1] != '\0' ? NULL : strchr(letters, format[0]);
    return at == NULL ? 0 : 1u << ((at - letters) / 2);
}

static const char *open_dictionary(const struct ArrowSchema *schema, const struct ArrowArray *array,
                                   rodt_text_cells *out)
{
    out->index_width = width_of(schema->format);
    if (out->index_width == 0)
        return "the indices of a dictionary are whole numbers";
    if (!arrow_is_sane(array, 2) || array->n_buffers != 2)
        return ARROW_NOT_SANE;
    out->index = array->buffers[1];
    out->index_from = (size_t)array->offset;
    out->index_valid = (rodt_column_bits){array->buffers[0], out->index_from};
    if (out->index == NULL && array->length > 0)
        return "this array has no cells";
    return open_texts(schema->dictionary, array->dictionary, out);
}

rodt_status rodt_text_cells_from_arrow(const struct ArrowSchema *schema, const struct ArrowArray *array,
                                       rodt_text_cells *out, rodt_error *error)
{
    rodt_text_cells found = {.layout = RODT_TEXT_LAYOUT_ABSENT};
    if (schema == NULL || array == NULL || out == NULL)
        return rodti_field_error(error, "", "a schema, an array and room for the cells are needed");
    const char *wrong = !is_there(schema, array)     ? released
                        : schema->dictionary == NULL ? open_texts(schema, array, &found)
                                                     : open_dictionary(schema, array, &found);
    if (wrong != NULL)
        return rodti_field_error(error, "", wrong);
    *out = found;
    return RODT_OK;
}
