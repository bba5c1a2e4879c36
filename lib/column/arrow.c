/* SPDX-License-Identifier: Apache-2.0 */
/* A record batch of the Arrow C Data Interface as columns: nothing is copied, nothing is released. */
#include "core/common.h"
#include "rodtravel/column.h"

#include <string.h>

/* One child of the batch, ready to point into. */
typedef struct child {
    const char *format;
    const void *cells;
    rodt_column_bits valid;
    size_t from; /* the cell of the first row */
} child;

/* The most cells of an array, so that no sum of offsets and no count of bytes overflows. */
#define CELLS_MOST (INT64_MAX / 16)

/* Checks the array's metadata: no negative counts; nulls require a bitmap. */
static bool is_sane(const struct ArrowArray *array, int64_t buffers)
{
    return array->release != NULL && array->length >= 0 && array->length <= CELLS_MOST && array->offset >= 0 &&
           array->offset <= CELLS_MOST && array->null_count >= -1 && array->n_buffers == buffers &&
           array->buffers != NULL && (array->null_count <= 0 || array->buffers[0] != NULL);
}

/* All formats that are read here have two buffers: the bitmap, which may be NULL, and the cells. */
static bool open_child(const struct ArrowSchema *schema, const struct ArrowArray *array, const struct ArrowArray *batch,
                       child *out)
{
    if (schema->format == NULL || schema->dictionary != NULL || array == NULL || !is_sane(array, 2) ||
        array->dictionary != NULL || array->length - batch->offset < batch->length)
        return false;
    out->format = schema->format;
    out->from = (size_t)(array->offset + batch->offset);
    out->cells = array->buffers[1];
    out->valid = (rodt_column_bits){array->buffers[0], out->from};
    return out->cells != NULL || batch->length == 0;
}

/* An empty batch may have no buffer of cells at all. */
static const void *first_cell(const child *from, size_t width)
{
    return from->cells == NULL ? NULL : (const char *)from->cells + from->from * width;
}

static bool take32(const child *from, const char *format, const int32_t **out, rodt_column_bits *valid)
{
    if (*out != NULL || strcmp(from->format, format) != 0)
        return false;
    *out = first_cell(from, sizeof **out);
    *valid = from->valid;
    return true;
}

static bool take64(const child *from, const int64_t **out, rodt_column_bits *valid)
{
    if (*out != NULL || strcmp(from->format, "l") != 0)
        return false;
    *out = first_cell(from, sizeof **out);
    *valid = from->valid;
    return true;
}

static bool take_code(const child *from, rodt_column_in *in)
{
    if (in->chamber != NULL || strcmp(from->format, "C") != 0)
        return false;
    in->chamber = first_cell(from, 1);
    in->chamber_valid = from->valid;
    return true;
}

static bool is_column(const char *name)
{
    static const char *const names[] = {"released", "applied", "chamber", "pressure", "day"};
    for (size_t i = 0; i < COUNT_OF(names); i++) {
        if (strcmp(name, names[i]) == 0)
            return true;
    }
    return false;
}

static bool take_column(const char *name, const child *from, rodt_column_in *in)
{
    if (strcmp(name, "released") == 0)
        return in->released64 == NULL && (take32(from, "i", &in->released, &in->released_valid) ||
                                          (in->released == NULL && take64(from, &in->released64, &in->released_valid)));
    if (strcmp(name, "applied") == 0)
        return in->applied64 == NULL && (take32(from, "i", &in->applied, &in->applied_valid) ||
                                         (in->applied == NULL && take64(from, &in->applied64, &in->applied_valid)));
    if (strcmp(name, "chamber") == 0)
        return take_code(from, in);
    if (strcmp(name, "pressure") == 0)
        return take32(from, "i", &in->pressure, &in->pressure_valid);
    return take32(from, "tdD", &in->day, &in->day_valid);
}

static bool is_batch(const struct ArrowSchema *schema, const struct ArrowArray *array)
{
    return schema->release != NULL && schema->format != NULL && strcmp(schema->format, "+s") == 0 &&
           schema->dictionary == NULL && is_sane(array, 1) && array->dictionary == NULL && array->n_children > 0 &&
           schema->n_children == array->n_children && schema->children != NULL && array->children != NULL;
}

/* A child that is not wanted may be of any kind, and of a later version of the standard. */
static bool take_child(const struct ArrowSchema *schema, const struct ArrowArray *array,
                       const struct ArrowArray *batch, rodt_column_in *in)
{
    child from;
    if (schema == NULL || schema->release == NULL)
        return false;
    if (schema->name == NULL || !is_column(schema->name))
        return true;
    return open_child(schema, array, batch, &from) && take_column(schema->name, &from, in);
}

static bool is_complete(const rodt_column_in *in)
{
    return (in->released != NULL || in->released64 != NULL) && (in->applied != NULL || in->applied64 != NULL) &&
           in->chamber != NULL;
}

rodt_status rodt_column_in_from_arrow(const struct ArrowSchema *schema, const struct ArrowArray *array,
                                   rodt_column_in *in, size_t *rows)
{
    rodt_column_in found = {0};
    if (schema == NULL || array == NULL || in == NULL || rows == NULL || !is_batch(schema, array))
        return RODT_E_ARGUMENT;
    for (int64_t i = 0; i < array->n_children; i++) {
        if (!take_child(schema->children[i], array->children[i], array, &found))
            return RODT_E_ARGUMENT;
    }
    found.row_valid = (rodt_column_bits){array->buffers[0], (size_t)array->offset};
    if (!is_complete(&found) && array->length > 0)
        return RODT_E_ARGUMENT;
    *in = found;
    *rows = (size_t)array->length;
    return RODT_OK;
}

rodt_status rodt_column_plan_judge_arrow(const rodt_column_plan *plan, const struct ArrowSchema *schema,
                                    const struct ArrowArray *array, const rodt_column_out *out)
{
    rodt_column_in in;
    size_t rows;
    if (plan == NULL || out == NULL)
        return RODT_E_ARGUMENT;
    rodt_status status = rodt_column_in_from_arrow(schema, array, &in, &rows);
    if (status != RODT_OK || rows == 0)
        return status;
    return rodt_column_plan_judge(plan, &in, rows, out);
}
