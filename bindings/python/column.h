/* SPDX-License-Identifier: Apache-2.0 */
/* Columns of the caller: buffers, Arrow arrays and streams, tuples of text. They are held, never copied. */
#ifndef RODTRAVEL_PYTHON_COLUMN_H
#define RODTRAVEL_PYTHON_COLUMN_H

#include <stdlib.h>

#include "record.h"

#ifndef ARROW_C_STREAM_INTERFACE
#define ARROW_C_STREAM_INTERFACE

/* As the specification has it. */
struct ArrowArrayStream {
    int (*get_schema)(struct ArrowArrayStream *, struct ArrowSchema *out);
    int (*get_next)(struct ArrowArrayStream *, struct ArrowArray *out);
    const char *(*get_last_error)(struct ArrowArrayStream *);
    void (*release)(struct ArrowArrayStream *);
    void *private_data;
};

#endif

#define COLUMN_CAPSULE "rodtravel.column"

typedef enum column_kind { COLUMN_INT32, COLUMN_INT64, COLUMN_CODE, COLUMN_DAY, COLUMN_TEXT } column_kind;

/* A run of rows that lies in one piece. */
typedef struct column_piece {
    size_t rows;
    const void *cells;
    rodt_column_bits valid;
    rodt_text_cells text;
} column_piece;

typedef struct held_column {
    column_kind kind;
    size_t rows;
    size_t count; /* pieces */
    column_piece *pieces;
    bool has_buffer;
    Py_buffer buffer;
    PyObject *texts;
    rodt_text_span *spans;
    struct ArrowSchema schema;
    struct ArrowArray *arrays; /* one a piece */
} held_column;

static void release_column(held_column *column)
{
    if (column->has_buffer)
        PyBuffer_Release(&column->buffer);
    for (size_t i = 0; column->arrays != NULL && i < column->count; i++) {
        if (column->arrays[i].release != NULL)
            column->arrays[i].release(&column->arrays[i]);
    }
    if (column->schema.release != NULL)
        column->schema.release(&column->schema);
    Py_XDECREF(column->texts);
    free(column->spans);
    free(column->arrays);
    free(column->pieces);
    free(column);
}

static void free_column(PyObject *capsule)
{
    held_column *column = PyCapsule_GetPointer(capsule, COLUMN_CAPSULE);
    if (column != NULL)
        release_column(column);
}

static held_column *new_column(void)
{
    held_column *column = calloc(1, sizeof *column);
    if (column == NULL)
        PyErr_NoMemory();
    return column;
}

static PyObject *hold(held_column *column)
{
    PyObject *capsule = PyCapsule_New(column, COLUMN_CAPSULE, free_column);
    if (capsule == NULL)
        release_column(column);
    return capsule;
}

static PyObject *drop(held_column *column)
{
    release_column(column);
    return NULL;
}

/* Room for one more piece. */
static column_piece *add_piece(held_column *column)
{
    column_piece *more = realloc(column->pieces, (column->count + 1) * sizeof *more);
    if (more == NULL) {
        PyErr_NoMemory();
        return NULL;
    }
    column->pieces = more;
    memset(&more[column->count], 0, sizeof *more);
    return &more[column->count];
}

/* --- Buffers ----------------------------------------------------------------------------------------- */

static bool refuse_column(const char *field, const char *sentence)
{
    PyErr_Format(PyExc_TypeError, "%s: %s", field, sentence);
    return false;
}

/* The letter of a native format; 0 = none that is read here. */
static char letter_of(const char *format)
{
    if (format == NULL)
        return 'B';
    if (format[0] == '@' || format[0] == '=' || (format[0] == '<' && *(const char *)&(int){1} == 1))
        format++;
    return format[0] != '\0' && format[1] == '\0' ? format[0] : '\0';
}

static bool kind_of_buffer(const Py_buffer *buffer, const char *field, column_kind *kind)
{
    char letter = letter_of(buffer->format);
    if (letter == 'B' && buffer->itemsize == 1)
        *kind = COLUMN_CODE;
    else if ((letter == 'i' || letter == 'l') && buffer->itemsize == 4)
        *kind = COLUMN_INT32;
    else if ((letter == 'l' || letter == 'q') && buffer->itemsize == 8)
        *kind = COLUMN_INT64;
    else if (letter == 'f' || letter == 'd' || letter == 'e')
        return refuse_column(field, "these are binary floats; a column holds whole numbers of 5 nm (UNITS_PER_INCH, "
                                    "UNITS_PER_64TH, UNITS_PER_MM), or text");
    else
        return refuse_column(field, "a column of numbers is int32 or int64, codes of chambers are uint8");
    return true;
}

static bool check_buffer(const Py_buffer *buffer, const char *field)
{
    if (buffer->ndim != 1)
        return refuse_column(field, "a column has one dimension");
    if (buffer->shape[0] > 1 && buffer->strides != NULL && buffer->strides[0] != buffer->itemsize)
        return refuse_column(field, "the cells of a column lie side by side; make a contiguous copy of this one");
    if (buffer->shape[0] > 0 && buffer->itemsize > 0 && (uintptr_t)buffer->buf % (size_t)buffer->itemsize != 0)
        return refuse_column(field, "the cells of this column are not aligned; make a copy of it");
    return true;
}

static PyObject *column_from_buffer(PyObject *object, const char *field)
{
    held_column *column = new_column();
    if (column == NULL || PyObject_GetBuffer(object, &column->buffer, PyBUF_STRIDES | PyBUF_FORMAT) != 0)
        return column == NULL ? NULL : drop(column);
    column->has_buffer = true;
    if (!check_buffer(&column->buffer, field) || !kind_of_buffer(&column->buffer, field, &column->kind))
        return drop(column);
    column_piece *piece = add_piece(column);
    if (piece == NULL)
        return drop(column);
    piece->rows = column->rows = (size_t)column->buffer.shape[0];
    piece->cells = column->buffer.buf;
    column->count = 1;
    return hold(column);
}

/* --- Texts ------------------------------------------------------------------------------------------- */

static bool take_texts(held_column *column, const char *field)
{
    for (size_t i = 0; i < column->rows; i++) {
        PyObject *item = PyTuple_GetItem(column->texts, (Py_ssize_t)i);
        Py_ssize_t size = 0;
        if (item == Py_None)
            continue;
        if (!PyUnicode_Check(item)) {
            PyErr_Format(PyExc_TypeError, "%s: row %zu holds a %R, which is no text; a column is text or None in every "
                         "row, or a buffer of whole numbers", field, i, item);
            return false;
        }
        column->spans[i].text = PyUnicode_AsUTF8AndSize(item, &size);
        column->spans[i].size = (size_t)size;
        if (column->spans[i].text == NULL)
            return false;
    }
    return true;
}

static PyObject *column_from_texts(PyObject *texts, const char *field)
{
    held_column *column = PyTuple_Check(texts) ? new_column() : NULL;
    if (column == NULL)
        return PyErr_Occurred() ? NULL : (PyErr_SetString(PyExc_TypeError, "texts are a tuple"), NULL);
    Py_INCREF(texts);
    column->texts = texts;
    column->kind = COLUMN_TEXT;
    column->rows = (size_t)PyTuple_Size(texts);
    column->spans = calloc(column->rows + 1, sizeof *column->spans);
    column_piece *piece = column->spans == NULL ? NULL : add_piece(column);
    if (piece == NULL || !take_texts(column, field))
        return PyErr_Occurred() ? drop(column) : (PyErr_NoMemory(), drop(column));
    piece->rows = column->rows;
    piece->text = (rodt_text_cells){.layout = RODT_TEXT_SPANS, .cells = column->spans};
    column->count = 1;
    return hold(column);
}

/* --- Arrow ------------------------------------------------------------------------------------------- */

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
    else {
        PyErr_Format(PyExc_TypeError, "%s: a column is text, int32, int64, date32, or uint8 codes of chambers; this "
                     "one has the Arrow format \"%s\"", field, format);
        return false;
    }
    return true;
}

static const size_t kind_width[] = {[COLUMN_INT32] = 4, [COLUMN_INT64] = 8, [COLUMN_CODE] = 1, [COLUMN_DAY] = 4};

/* A column of nulls: every row has the same number, and the dictionary is empty. */
static const uint64_t no_number = 0;
static const rodt_text_cells nothing = {.layout = RODT_TEXT_SPANS, .index = &no_number, .index_width = 0};

static bool take_array(held_column *column, const struct ArrowSchema *schema, const struct ArrowArray *array,
                       const char *field, column_piece *piece)
{
    piece->rows = (size_t)array->length;
    if (strcmp(schema->format, "n") == 0) {
        piece->text = nothing;
        return true;
    }
    if (column->kind == COLUMN_TEXT)
        return rodt_text_cells_from_arrow(schema, array, &piece->text) == RODT_OK ||
               refuse_column(field, "this Arrow array cannot be read as text");
    if (array->n_buffers != 2 || array->buffers == NULL || (array->buffers[1] == NULL && array->length > 0))
        return refuse_column(field, "this Arrow array has no cells");
    if (array->buffers[1] != NULL)
        piece->cells = (const char *)array->buffers[1] + (size_t)array->offset * kind_width[column->kind];
    piece->valid = (rodt_column_bits){array->null_count == 0 ? NULL : array->buffers[0], (size_t)array->offset};
    return true;
}

/* The column itself, or the one of that name in a table. */
static int64_t child_of(const struct ArrowSchema *schema, const char *name)
{
    for (int64_t i = 0; i < schema->n_children; i++) {
        if (schema->children[i]->name != NULL && strcmp(schema->children[i]->name, name) == 0)
            return i;
    }
    return -1;
}

static bool take_child(held_column *column, const struct ArrowArray *batch, const char *name, const char *field,
                       column_piece *piece)
{
    int64_t child = child_of(&column->schema, name);
    if (child < 0) {
        PyErr_Format(PyExc_TypeError, "%s: the table has no column of that name", name);
        return false;
    }
    if (batch->null_count != 0 && batch->n_buffers > 0 && batch->buffers[0] != NULL)
        return refuse_column(field, "rows of the table are null as a whole");
    struct ArrowArray part = *batch->children[child]; /* a view: it is released with its batch */
    part.offset += batch->offset;
    part.length = batch->length;
    if (!kind_of_format(column->schema.children[child], field, &column->kind))
        return false;
    return take_array(column, column->schema.children[child], &part, field, piece);
}

/* Takes over the array, whether it can be used or not. */
static bool append(held_column *column, struct ArrowArray *array, const char *name, const char *field)
{
    struct ArrowArray *more = realloc(column->arrays, (column->count + 1) * sizeof *more);
    column_piece *piece = more == NULL ? NULL : add_piece(column);
    if (more != NULL)
        column->arrays = more;
    if (piece == NULL) {
        array->release(array);
        return more == NULL ? (PyErr_NoMemory(), false) : false;
    }
    more[column->count] = *array;
    array->release = NULL;
    const struct ArrowArray *kept = &more[column->count];
    column->count++;
    bool is_table = strcmp(column->schema.format, "+s") == 0;
    bool taken = is_table ? take_child(column, kept, name, field, piece)
                          : kind_of_format(&column->schema, field, &column->kind) &&
                                take_array(column, &column->schema, kept, field, piece);
    column->rows += piece->rows;
    return taken;
}

static PyObject *column_from_array(PyObject *schema, PyObject *array, const char *name, const char *field)
{
    struct ArrowSchema *from_schema = PyCapsule_GetPointer(schema, "arrow_schema");
    struct ArrowArray *from_array = from_schema == NULL ? NULL : PyCapsule_GetPointer(array, "arrow_array");
    held_column *column = from_array == NULL ? NULL : new_column();
    if (column == NULL)
        return NULL;
    if (from_schema->release == NULL || from_array->release == NULL) {
        refuse_column(field, "this Arrow array was released");
        return drop(column);
    }
    column->schema = *from_schema;
    from_schema->release = NULL;
    return append(column, from_array, name, field) ? hold(column) : drop(column);
}

static bool take_stream(held_column *column, struct ArrowArrayStream *stream, const char *name, const char *field)
{
    struct ArrowArray array;
    if (stream->release == NULL)
        return refuse_column(field, "this Arrow stream was used before");
    if (stream->get_schema(stream, &column->schema) != 0)
        return refuse_column(field, "this Arrow stream has no schema");
    for (;;) {
        memset(&array, 0, sizeof array);
        if (stream->get_next(stream, &array) != 0)
            return refuse_column(field, "this Arrow stream broke off");
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
                          : refuse_column(field, "the table has no column of that name");
    }
    return true;
}

static PyObject *column_from_stream(PyObject *capsule, const char *name, const char *field)
{
    struct ArrowArrayStream *stream = PyCapsule_GetPointer(capsule, "arrow_array_stream");
    held_column *column = stream == NULL ? NULL : new_column();
    if (column == NULL)
        return NULL;
    return take_stream(column, stream, name, field) ? hold(column) : drop(column);
}

static PyObject *column_is_text(PyObject *capsule)
{
    held_column *column = PyCapsule_GetPointer(capsule, COLUMN_CAPSULE);
    return column == NULL ? NULL : PyBool_FromLong(column->kind == COLUMN_TEXT);
}

static PyObject *column_rows(PyObject *capsule)
{
    held_column *column = PyCapsule_GetPointer(capsule, COLUMN_CAPSULE);
    return column == NULL ? NULL : PyLong_FromSize_t(column->rows);
}

#endif
