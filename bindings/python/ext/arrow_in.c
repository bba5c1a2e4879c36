/* SPDX-License-Identifier: Apache-2.0 */
/* Columns that come by the Arrow interface: arrays, streams, and tables that can be read only once. */
#include "ext.h"

/* The most cells of an array, so that no sum of offsets and no count of bytes overflows. */
#define CELLS_MOST (INT64_MAX / 16)

#define WRONG_FIGURES "the length, offset, buffers or count of missing cells of this Arrow array cannot be"

/* What an array says of itself must be possible. */
static bool is_sane(const struct ArrowArray *array)
{
    return array->length >= 0 && array->length <= CELLS_MOST && array->offset >= 0 && array->offset <= CELLS_MOST &&
           array->null_count >= -1 && (array->n_buffers == 0 || array->buffers != NULL);
}

/* Missing cells are told by a bitmap alone. */
static bool has_bitmap(const struct ArrowArray *array) { return array->n_buffers > 0 && array->buffers[0] != NULL; }

static bool check_schema(const struct ArrowSchema *schema, const char *field)
{
    bool sane = schema->release != NULL && schema->format != NULL && schema->n_children >= 0 &&
                (schema->n_children == 0 || schema->children != NULL);
    for (int64_t i = 0; sane && i < schema->n_children; i++)
        sane = schema->children[i] != NULL && schema->children[i]->release != NULL &&
               schema->children[i]->format != NULL;
    return sane || py_raise_column(field, "this Arrow schema was released, or has no format");
}

static bool kind_of_format(const struct ArrowSchema *schema, const char *field, column_kind *kind)
{
    const char *format = schema->format;
    if (schema->dictionary != NULL || strcmp(format, "u") == 0 || strcmp(format, "U") == 0 ||
        strcmp(format, "vu") == 0 || strcmp(format, "n") == 0)
        *kind = COLUMN_TEXT;
    else if (strcmp(format, "i") == 0)
        *kind = COLUMN_INT32;
    else if (strcmp(format, "l") == 0)
        *kind = COLUMN_INT64;
    else if (strcmp(format, "C") == 0)
        *kind = COLUMN_CODE;
    else if (strcmp(format, "tdD") == 0)
        *kind = COLUMN_DAY;
    else if (strcmp(format, "f") == 0)
        *kind = COLUMN_FLOAT32;
    else if (strcmp(format, "g") == 0)
        *kind = COLUMN_FLOAT64;
    else if (strcmp(format, "e") == 0)
        return py_raise_column(field, FLOATS);
    else if (format[0] == 't')
        return py_raise_column(field, "these are points in time; days are date32, or text such as 2021-10-14");
    else {
        PyErr_Format(PyExc_TypeError,
                     "%s: a column is text, int32, int64, date32, or uint8 codes of chambers; this "
                     "one has the Arrow format \"%s\"",
                     field, format);
        return false;
    }
    return true;
}

/* A column of nulls has no buffers: an empty dictionary, and no row that has a number in it. */
static bool take_nulls(column_chunk *chunk)
{
    static const uint8_t no_number = 0;
    chunk->no_bits = calloc(chunk->rows / 8 + 1, 1);
    chunk->text = (rodt_text_cells){.layout = RODT_TEXT_LAYOUT_SPANS,
                                    .index = &no_number,
                                    .index_width = 1,
                                    .index_valid = {.bits = chunk->no_bits}};
    return chunk->no_bits != NULL || PyErr_NoMemory() != NULL;
}

static bool take_array(held_column *column, const struct ArrowSchema *schema, const struct ArrowArray *array,
                       const char *field, column_chunk *chunk)
{
    if (!is_sane(array))
        return py_raise_column(field, WRONG_FIGURES);
    chunk->rows = (size_t)array->length;
    if (strcmp(schema->format, "n") == 0)
        return take_nulls(chunk);
    if (column->kind == COLUMN_TEXT)
        return rodt_text_cells_from_arrow(schema, array, &chunk->text, NULL) == RODT_OK ||
               py_raise_column(field, "this Arrow array cannot be read as text");
    if (array->n_buffers != 2 || (array->buffers[1] == NULL && array->length > 0))
        return py_raise_column(field, "this Arrow array has no cells");
    if (array->null_count > 0 && !has_bitmap(array))
        return py_raise_column(field, WRONG_FIGURES);
    if (array->buffers[1] != NULL)
        chunk->cells = (const char *)array->buffers[1] + (size_t)array->offset * py_kind_width[column->kind];
    chunk->valid = (rodt_column_bits){array->null_count == 0 ? NULL : array->buffers[0], (size_t)array->offset};
    return true;
}

/* The column of that name in a table; -1 = there is none. */
static int64_t child_of(const struct ArrowSchema *schema, const char *name)
{
    for (int64_t i = 0; i < schema->n_children; i++) {
        if (schema->children[i]->name != NULL && strcmp(schema->children[i]->name, name) == 0)
            return i;
    }
    return -1;
}

/* A column of a batch that has all rows of it. */
static bool check_child(const struct ArrowArray *batch, const struct ArrowArray *child, const char *field)
{
    if (child == NULL || child->release == NULL)
        return py_raise_column(field, "this Arrow array was released");
    return (is_sane(child) && child->length - batch->offset >= batch->length) || py_raise_column(field, WRONG_FIGURES);
}

static bool check_batch(const struct ArrowSchema *schema, const struct ArrowArray *batch, const char *field)
{
    if (!is_sane(batch) || batch->n_children != schema->n_children || batch->children == NULL)
        return py_raise_column(field, WRONG_FIGURES);
    if (batch->null_count > 0 || (batch->null_count < 0 && has_bitmap(batch)))
        return py_raise_column(field, "rows of the table are null as a whole");
    return true;
}

static bool take_child(held_column *column, const struct ArrowSchema *schema, const struct ArrowArray *batch,
                       int64_t child, const char *field, column_chunk *chunk)
{
    if (child < 0)
        return py_raise_column(field, "the table has no column of that name");
    if (!check_batch(schema, batch, field) || !check_child(batch, batch->children[child], field))
        return false;
    struct ArrowArray part = *batch->children[child]; /* a view: it is released with its batch */
    part.offset += batch->offset;
    part.length = batch->length;
    if (!kind_of_format(schema->children[child], field, &column->kind))
        return false;
    return take_array(column, schema->children[child], &part, field, chunk);
}

/* Owns the array from here on, whether it can be used or not. */
static bool append(held_column *column, struct ArrowArray *array, const char *name, const char *field)
{
    struct ArrowArray *more = realloc(column->arrays, (column->count + 1) * sizeof *more);
    column_chunk *chunk = more == NULL ? NULL : py_add_chunk(column);
    if (more != NULL)
        column->arrays = more;
    if (chunk == NULL) {
        py_release_array(array);
        return more == NULL ? (PyErr_NoMemory(), false) : false;
    }
    more[column->count] = *array;
    array->release = NULL;
    const struct ArrowArray *own = &more[column->count];
    column->count++;
    bool is_table = strcmp(column->schema.format, "+s") == 0;
    bool taken = is_table ? take_child(column, &column->schema, own, child_of(&column->schema, name), field, chunk)
                          : kind_of_format(&column->schema, field, &column->kind) &&
                                take_array(column, &column->schema, own, field, chunk);
    column->rows += chunk->rows;
    return taken;
}

PyObject *py_column_from_array(PyObject *schema, PyObject *array, const char *name, const char *field)
{
    struct ArrowSchema *from_schema = PyCapsule_GetPointer(schema, "arrow_schema");
    struct ArrowArray *from_array = from_schema == NULL ? NULL : PyCapsule_GetPointer(array, "arrow_array");
    held_column *column = from_array == NULL ? NULL : py_new_column();
    if (column == NULL)
        return NULL;
    if (from_schema->release == NULL || from_array->release == NULL) {
        py_raise_column(field, "this Arrow array was released");
        return py_free_column(column);
    }
    if (!check_schema(from_schema, field))
        return py_free_column(column);
    column->schema = *from_schema;
    from_schema->release = NULL;
    return append(column, from_array, name, field) ? py_own_column(column) : py_free_column(column);
}

static bool take_stream(held_column *column, struct ArrowArrayStream *stream, const char *name, const char *field)
{
    struct ArrowArray array;
    if (stream->release == NULL)
        return py_raise_column(field, "this Arrow stream was used before");
    if (stream->get_schema(stream, &column->schema) != 0)
        return py_raise_column(field, "this Arrow stream has no schema");
    if (!check_schema(&column->schema, field))
        return false;
    for (;;) {
        memset(&array, 0, sizeof array);
        if (stream->get_next(stream, &array) != 0)
            return py_raise_column(field, "this Arrow stream broke off");
        if (array.release == NULL)
            break;
        if (!append(column, &array, name, field))
            return false;
    }
    if (column->count == 0 && strcmp(column->schema.format, "+s") != 0)
        return kind_of_format(&column->schema, field, &column->kind);
    if (column->count == 0) {
        int64_t child = child_of(&column->schema, name);
        return child >= 0 ? kind_of_format(column->schema.children[child], field, &column->kind)
                          : py_raise_column(field, "the table has no column of that name");
    }
    return true;
}

PyObject *py_column_from_stream(PyObject *capsule, const char *name, const char *field)
{
    struct ArrowArrayStream *stream = PyCapsule_GetPointer(capsule, "arrow_array_stream");
    held_column *column = stream == NULL ? NULL : py_new_column();
    if (column == NULL)
        return NULL;
    return take_stream(column, stream, name, field) ? py_own_column(column) : py_free_column(column);
}

/* --- Tables that are read once ----------------------------------------------------------------------- */

static bool keep_batch(held_column *table, struct ArrowArray *batch)
{
    struct ArrowArray *more = realloc(table->arrays, (table->count + 1) * sizeof *more);
    if (more == NULL) {
        py_release_array(batch);
        PyErr_NoMemory();
        return false;
    }
    table->arrays = more;
    more[table->count++] = *batch;
    return true;
}

static bool begin_stream(held_column *table, struct ArrowArrayStream *stream)
{
    if (stream->release == NULL)
        return py_raise_column("table", "this Arrow stream was used before");
    if (stream->get_schema(stream, &table->schema) != 0)
        return py_raise_column("table", "this Arrow stream has no schema");
    if (!check_schema(&table->schema, "table"))
        return false;
    return strcmp(table->schema.format, "+s") == 0 ||
           py_raise_column("table", "this Arrow stream holds no table");
}

static bool keep_batches(held_column *table, struct ArrowArrayStream *stream)
{
    struct ArrowArray batch;
    if (!begin_stream(table, stream))
        return false;
    for (;;) {
        memset(&batch, 0, sizeof batch);
        if (stream->get_next(stream, &batch) != 0)
            return py_raise_column("table", "this Arrow stream broke off");
        if (batch.release == NULL)
            return true;
        if (!keep_batch(table, &batch))
            return false;
    }
}

PyObject *py_table_from_stream(PyObject *capsule)
{
    struct ArrowArrayStream *stream = PyCapsule_GetPointer(capsule, "arrow_array_stream");
    held_column *table = stream == NULL ? NULL : py_new_column();
    if (table == NULL)
        return NULL;
    return keep_batches(table, stream) ? py_own_column(table) : py_free_column(table);
}

PyObject *py_table_next(PyObject *capsule)
{
    struct ArrowArrayStream *stream = PyCapsule_GetPointer(capsule, "arrow_array_stream");
    struct ArrowArray batch = {.release = NULL};
    held_column *table = stream == NULL ? NULL : py_new_column();
    if (table == NULL)
        return NULL;
    if (!begin_stream(table, stream))
        return py_free_column(table);
    if (stream->get_next(stream, &batch) != 0)
        return py_raise_column("table", "this Arrow stream broke off"), py_free_column(table);
    if (batch.release == NULL) {
        py_free_column(table);
        return Py_BuildValue("");
    }
    return keep_batch(table, &batch) ? py_own_column(table) : py_free_column(table);
}

static PyObject *name_of_child(const void *all, size_t i)
{
    const char *name = ((struct ArrowSchema *const *)all)[i]->name;
    return name == NULL ? Py_BuildValue("") : PyUnicode_DecodeUTF8(name, (Py_ssize_t)strlen(name), "replace");
}

PyObject *py_table_names(PyObject *capsule)
{
    const held_column *table = PyCapsule_GetPointer(capsule, COLUMN_CAPSULE);
    return table == NULL ? NULL : py_from_each((size_t)table->schema.n_children, name_of_child, table->schema.children);
}

PyObject *py_column_of_table(PyObject *capsule, int number, const char *field)
{
    const held_column *table = PyCapsule_GetPointer(capsule, COLUMN_CAPSULE);
    held_column *column = table == NULL ? NULL : py_new_column();
    if (column == NULL)
        return NULL;
    Py_INCREF(capsule);
    column->table = capsule;
    if (!kind_of_format(table->schema.children[number], field, &column->kind))
        return py_free_column(column);
    for (size_t i = 0; i < table->count; i++) {
        column_chunk *chunk = py_add_chunk(column);
        if (chunk == NULL || !take_child(column, &table->schema, &table->arrays[i], number, field, chunk))
            return py_free_column(column);
        column->rows += chunk->rows;
        column->count++;
    }
    return py_own_column(column);
}
