/* SPDX-License-Identifier: Apache-2.0 */
/* Columns of the caller: buffers and tuples of text; those of Arrow are in arrow_in.h. They are held, never copied. */
#ifndef RODTRAVEL_PYTHON_COLUMN_H
#define RODTRAVEL_PYTHON_COLUMN_H

#include <stdlib.h>

#include "record.h"

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
    struct ArrowArray *arrays; /* one a piece; NULL where the table has them */
    PyObject *table;           /* whose column it is, if that is held as a whole */
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
    Py_XDECREF(column->table);
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

/* Also what pandas makes of a column of numbers with a gap. */
#define FLOATS "these are binary floats; a column holds text (read a file with dtype=str), or whole numbers of 5 nm " \
               "(UNITS_PER_INCH, UNITS_PER_64TH, UNITS_PER_MM)"

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
        return refuse_column(field, FLOATS);
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
        if (column->spans[i].text == NULL) { /* half of a surrogate pair: this cell cannot be read */
            PyErr_Clear();
            column->spans[i] = (rodt_text_span){"\xEF\xBF\xBD", 3};
        }
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
