/* SPDX-License-Identifier: Apache-2.0 */
/* A record batch of the Arrow C Data Interface as columns: nothing is copied, nothing is released. */
#include "column/check.h"
#include "core/fault.h"
#include "rodtravel/column.h"

#include <string.h>

/* One child of the batch, ready to point into. */
typedef struct child {
    const char *format;
    const void *cells;
    rodt_column_bits valid;
    size_t from; /* the cell of the first row */
} child;

/* All formats that are read here have two buffers: the bitmap, which may be NULL, and the cells. Gives what is wrong,
 * or NULL. */
static const char *open_child(const struct ArrowSchema *schema, const struct ArrowArray *array,
                              const struct ArrowArray *batch, child *out)
{
    if (array == NULL || array->release == NULL)
        return "this column was released";
    if (schema->format == NULL)
        return "this column has no format";
    if (schema->dictionary != NULL || array->dictionary != NULL)
        return "a column of numbers has no dictionary";
    if (array->n_buffers != 2 || !arrow_is_sane(array, 2))
        return ARROW_NOT_SANE;
    if (array->length - batch->offset < batch->length)
        return "this column has fewer rows than its batch";
    out->format = schema->format;
    out->from = (size_t)(array->offset + batch->offset);
    out->cells = array->buffers[1];
    out->valid = (rodt_column_bits){array->buffers[0], out->from};
    return out->cells != NULL || batch->length == 0 ? NULL : "this column has no cells";
}

/* An empty batch may have no buffer of cells at all. */
static const void *first_cell(const child *from, size_t width)
{
    return from->cells == NULL ? NULL : (const char *)from->cells + from->from * width;
}

/* The columns of a batch, and what their cells are. */
enum { RELEASED, APPLIED, CHAMBER, PRESSURE, DAY, COLUMNS };
static const struct {
    const char *name;
    const char *format;
    const char *wide; /* NULL = no other */
    const char *wrong;
} columns[COLUMNS] = {
    [RELEASED] = {"released", "i", "l", "a column of readings is int32 or int64"},
    [APPLIED] = {"applied", "i", "l", "a column of readings is int32 or int64"},
    [CHAMBER] = {"chamber", "C", NULL, "a column of chambers is uint8, codes of a plan"},
    [PRESSURE] = {"psi", "i", NULL, "a column of pressures is int32"},
    [DAY] = {"date", "tdD", NULL, "a column of days is date32"}};

/* COLUMNS = none that is looked for. */
static size_t find_column(const char *name)
{
    size_t i = 0;
    while (i < COLUMNS && (name == NULL || strcmp(name, columns[i].name) != 0))
        i++;
    return i;
}

static void set_column(size_t column, const child *from, bool wide, rodt_column_in *in)
{
    const void *cells = first_cell(from, wide ? 8 : column == CHAMBER ? 1 : 4);
    rodt_column_bits *valid[COLUMNS] = {&in->released_valid, &in->applied_valid, &in->chamber_valid,
                                        &in->psi_valid, &in->date_valid};
    *valid[column] = from->valid;
    switch (column) {
    case RELEASED: in->released = wide ? NULL : cells; in->released64 = wide ? cells : NULL; break;
    case APPLIED: in->applied = wide ? NULL : cells; in->applied64 = wide ? cells : NULL; break;
    case CHAMBER: in->chamber = cells; break;
    case PRESSURE: in->psi = cells; break;
    default: in->date = cells; break;
    }
}

static const char *take_column(size_t column, const child *from, rodt_column_in *in)
{
    bool wide = columns[column].wide != NULL && strcmp(from->format, columns[column].wide) == 0;
    if (!wide && strcmp(from->format, columns[column].format) != 0)
        return columns[column].wrong;
    set_column(column, from, wide, in);
    return NULL;
}

/* What is wrong with a batch itself. */
static const char *check_batch(const struct ArrowSchema *schema, const struct ArrowArray *array)
{
    if (schema->release == NULL || array->release == NULL)
        return "this batch was released";
    if (schema->format == NULL || strcmp(schema->format, "+s") != 0)
        return "a record batch is a struct, format \"+s\"";
    if (schema->dictionary != NULL || array->dictionary != NULL)
        return "a record batch has no dictionary";
    if (array->n_buffers != 1 || !arrow_is_sane(array, 1))
        return ARROW_NOT_SANE;
    if (array->n_children <= 0 || schema->n_children != array->n_children || schema->children == NULL ||
        array->children == NULL)
        return "a record batch has columns, and its schema has as many";
    return NULL;
}

/* A child that is not wanted may be of any kind, and of a later version of the standard. */
static rodt_status take_child(const struct ArrowSchema *schema, const struct ArrowArray *array,
                              const struct ArrowArray *batch, bool *seen, rodt_column_in *in, rodt_error *error)
{
    child from;
    if (schema == NULL || schema->release == NULL)
        return rodti_field_error(error, "", "the schema of a column was released");
    size_t column = find_column(schema->name);
    if (column == COLUMNS)
        return RODT_OK;
    const char *wrong = seen[column] ? "the batch has two columns of this name" : NULL;
    if (wrong == NULL)
        wrong = open_child(schema, array, batch, &from);
    if (wrong == NULL)
        wrong = take_column(column, &from, in);
    seen[column] = true;
    return wrong == NULL ? RODT_OK : rodti_field_error(error, columns[column].name, wrong);
}

static rodt_status take_children(const struct ArrowSchema *schema, const struct ArrowArray *array, rodt_column_in *in,
                                 rodt_error *error)
{
    bool seen[COLUMNS] = {false};
    for (int64_t i = 0; i < array->n_children; i++) {
        rodt_status status = take_child(schema->children[i], array->children[i], array, seen, in, error);
        if (status != RODT_OK)
            return status;
    }
    for (size_t i = RELEASED; i <= CHAMBER && array->length > 0; i++) {
        if (!seen[i])
            return rodti_field_error(error, columns[i].name, "the batch lacks this column");
    }
    return RODT_OK;
}

rodt_status rodt_column_in_from_arrow(const struct ArrowSchema *schema, const struct ArrowArray *array,
                                      rodt_column_in *in, size_t *rows, rodt_error *error)
{
    rodt_column_in found = {0};
    if (schema == NULL || array == NULL || in == NULL || rows == NULL)
        return rodti_field_error(error, "", "a schema, an array and room for the columns are needed");
    const char *wrong = check_batch(schema, array);
    if (wrong != NULL)
        return rodti_field_error(error, "", wrong);
    rodt_status status = take_children(schema, array, &found, error);
    if (status != RODT_OK)
        return status;
    found.row_valid = (rodt_column_bits){array->buffers[0], (size_t)array->offset};
    *in = found;
    *rows = (size_t)array->length;
    return RODT_OK;
}

rodt_status rodt_column_plan_judge_arrow(const rodt_column_plan *plan, const struct ArrowSchema *schema,
                                         const struct ArrowArray *array, const rodt_column_out *out,
                                         rodt_error *error)
{
    rodt_column_in in;
    size_t rows = 0;
    if (plan == NULL || out == NULL)
        return rodti_field_error(error, "", "a plan and room for the answers are needed");
    rodt_status status = rodt_column_in_from_arrow(schema, array, &in, &rows, error);
    if (status != RODT_OK || rows == 0)
        return status;
    return rodt_column_plan_judge(plan, &in, rows, out, error);
}
