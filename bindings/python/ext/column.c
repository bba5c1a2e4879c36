/* SPDX-License-Identifier: Apache-2.0 */
/* Columns of the caller: buffers and tuples of text. Columns of Arrow are in arrow_in.c. */
#include "ext.h"

const size_t py_kind_width[] = {[COLUMN_INT32] = 4, [COLUMN_INT64] = 8, [COLUMN_CODE] = 1, [COLUMN_DAY] = 4,
                                [COLUMN_FLOAT32] = 4, [COLUMN_FLOAT64] = 8};

/* A producer that is written in Python runs its release: with an exception pending it would fail, and its memory would
 * stay. */
#define RELEASE(of)                                                                                                    \
    PyObject *type, *value, *trace;                                                                                    \
    if ((of)->release == NULL)                                                                                         \
        return;                                                                                                        \
    PyErr_Fetch(&type, &value, &trace);                                                                                \
    (of)->release(of);                                                                                                 \
    PyErr_Restore(type, value, trace)

void py_release_array(struct ArrowArray *array)
{
    RELEASE(array);
}

static void release_schema(struct ArrowSchema *schema)
{
    RELEASE(schema);
}

static void release_column(held_column *column)
{
    if (column->has_buffer)
        PyBuffer_Release(&column->buffer);
    for (size_t i = 0; column->arrays != NULL && i < column->count; i++)
        py_release_array(&column->arrays[i]);
    release_schema(&column->schema);
    Py_XDECREF(column->texts);
    Py_XDECREF(column->table);
    free(column->spans);
    free(column->arrays);
    for (size_t i = 0; column->chunks != NULL && i < column->count; i++)
        free(column->chunks[i].no_bits);
    free(column->chunks);
    free(column);
}

static void free_column(PyObject *capsule)
{
    held_column *column = PyCapsule_GetPointer(capsule, COLUMN_CAPSULE);
    if (column != NULL)
        release_column(column);
}

held_column *py_new_column(void)
{
    held_column *column = calloc(1, sizeof *column);
    if (column == NULL)
        PyErr_NoMemory();
    return column;
}

PyObject *py_own_column(held_column *column)
{
    PyObject *capsule = PyCapsule_New(column, COLUMN_CAPSULE, free_column);
    if (capsule == NULL)
        release_column(column);
    return capsule;
}

PyObject *py_free_column(held_column *column)
{
    release_column(column);
    return NULL;
}

column_chunk *py_add_chunk(held_column *column)
{
    column_chunk *more = realloc(column->chunks, (column->count + 1) * sizeof *more);
    if (more == NULL) {
        PyErr_NoMemory();
        return NULL;
    }
    column->chunks = more;
    memset(&more[column->count], 0, sizeof *more);
    return &more[column->count];
}

/* --- Buffers ----------------------------------------------------------------------------------------- */

bool py_raise_column(const char *field, const char *sentence)
{
    PyErr_Format(PyExc_TypeError, "%s: %s", field, sentence);
    return false;
}

char py_format_letter(const char *format)
{
    if (format == NULL)
        return 'B';
    if (format[0] == '@' || format[0] == '=' || (format[0] == '<' && *(const char *)&(int){1} == 1))
        format++;
    return format[0] != '\0' && format[1] == '\0' ? format[0] : '\0';
}

static bool kind_of_buffer(const Py_buffer *buffer, const char *field, column_kind *kind)
{
    char letter = py_format_letter(buffer->format);
    if (letter == 'B' && buffer->itemsize == 1)
        *kind = COLUMN_CODE;
    else if ((letter == 'i' || letter == 'l') && buffer->itemsize == 4)
        *kind = COLUMN_INT32;
    else if ((letter == 'l' || letter == 'q') && buffer->itemsize == 8)
        *kind = COLUMN_INT64;
    else if (letter == 'f' && buffer->itemsize == sizeof(float))
        *kind = COLUMN_FLOAT32;
    else if (letter == 'd' && buffer->itemsize == sizeof(double))
        *kind = COLUMN_FLOAT64;
    else if (letter == 'e')
        return py_raise_column(field, FLOATS);
    else
        return py_raise_column(field, "a column of numbers is int32 or int64, codes of chambers are uint8");
    return true;
}

bool py_check_buffer(const Py_buffer *buffer, const char *field)
{
    if (buffer->ndim != 1)
        return py_raise_column(field, "a column has one dimension");
    if (buffer->shape[0] > 1 && buffer->strides != NULL && buffer->strides[0] != buffer->itemsize)
        return py_raise_column(field, "the cells of this column are not contiguous; make a contiguous copy of it");
    if (buffer->shape[0] > 0 && buffer->itemsize > 0 && (uintptr_t)buffer->buf % (size_t)buffer->itemsize != 0)
        return py_raise_column(field, "the cells of this column are not aligned; make a copy of it");
    return true;
}

PyObject *py_column_from_buffer(PyObject *object, const char *field)
{
    held_column *column = py_new_column();
    if (column == NULL || PyObject_GetBuffer(object, &column->buffer, PyBUF_STRIDES | PyBUF_FORMAT) != 0)
        return column == NULL ? NULL : py_free_column(column);
    column->has_buffer = true;
    if (!py_check_buffer(&column->buffer, field) || !kind_of_buffer(&column->buffer, field, &column->kind))
        return py_free_column(column);
    column_chunk *chunk = py_add_chunk(column);
    if (chunk == NULL)
        return py_free_column(column);
    chunk->rows = column->rows = (size_t)column->buffer.shape[0];
    chunk->cells = column->buffer.buf;
    column->count = 1;
    return py_own_column(column);
}

/* --- Texts ------------------------------------------------------------------------------------------- */

static bool to_spans(held_column *column, const char *field)
{
    for (size_t i = 0; i < column->rows; i++) {
        PyObject *item = PyTuple_GetItem(column->texts, (Py_ssize_t)i);
        Py_ssize_t size = 0;
        if (item == Py_None)
            continue;
        if (!PyUnicode_Check(item)) {
            PyErr_Format(PyExc_TypeError,
                         "%s: row %zu holds %R, which is not text; a column is text or None in every "
                         "row, or a buffer of whole numbers",
                         field, i, item);
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

PyObject *py_column_from_texts(PyObject *texts, const char *field)
{
    held_column *column = PyTuple_Check(texts) ? py_new_column() : NULL;
    if (column == NULL)
        return PyErr_Occurred() ? NULL : (PyErr_SetString(PyExc_TypeError, "texts are a tuple"), NULL);
    Py_INCREF(texts);
    column->texts = texts;
    column->kind = COLUMN_TEXT;
    column->rows = (size_t)PyTuple_Size(texts);
    column->spans = calloc(column->rows + 1, sizeof *column->spans);
    column_chunk *chunk = column->spans == NULL ? NULL : py_add_chunk(column);
    if (chunk == NULL || !to_spans(column, field))
        return PyErr_Occurred() ? py_free_column(column) : (PyErr_NoMemory(), py_free_column(column));
    chunk->rows = column->rows;
    chunk->text = (rodt_text_cells){.layout = RODT_TEXT_LAYOUT_SPANS, .cells = column->spans};
    column->count = 1;
    return py_own_column(column);
}

PyObject *py_column_rows(PyObject *capsule)
{
    held_column *column = PyCapsule_GetPointer(capsule, COLUMN_CAPSULE);
    return column == NULL ? NULL : PyLong_FromSize_t(column->rows);
}

PyObject *py_column_first(PyObject *capsule)
{
    const held_column *column = PyCapsule_GetPointer(capsule, COLUMN_CAPSULE);
    if (column == NULL)
        return NULL;
    if (column->kind != COLUMN_TEXT)
        return PyBool_FromLong(0);
    for (size_t i = 0; i < column->count; i++) {
        if (column->chunks[i].rows == 0)
            continue;
        rodt_text_span cell = rodt_text_cells_at(&column->chunks[i].text, 0);
        return cell.text == NULL ? Py_BuildValue("")
                                 : PyUnicode_DecodeUTF8(cell.text, (Py_ssize_t)cell.size, "replace");
    }
    return py_none();
}

/* --- Numbers ------------------------------------------------------------------------------------------ */

static bool is_there(rodt_column_bits bits, size_t row)
{
    size_t at = bits.from + row;
    return bits.bits == NULL || (bits.bits[at / 8] >> (at % 8) & 1) != 0;
}

static PyObject *number_at(column_kind kind, const void *cells, size_t row)
{
    switch (kind) {
    case COLUMN_INT32:
    case COLUMN_DAY: return PyLong_FromLong(((const int32_t *)cells)[row]);
    case COLUMN_INT64: return PyLong_FromLongLong(((const int64_t *)cells)[row]);
    case COLUMN_CODE: return PyLong_FromLong(((const uint8_t *)cells)[row]);
    case COLUMN_FLOAT32: return PyFloat_FromDouble((double)((const float *)cells)[row]);
    case COLUMN_FLOAT64: return PyFloat_FromDouble(((const double *)cells)[row]);
    case COLUMN_TEXT: break;
    }
    return Py_BuildValue("");
}

PyObject *py_column_numbers(PyObject *capsule)
{
    const held_column *column = PyCapsule_GetPointer(capsule, COLUMN_CAPSULE);
    PyObject *all = column == NULL ? NULL : PyTuple_New((Py_ssize_t)column->rows);
    size_t done = 0;
    for (size_t i = 0; all != NULL && i < column->count; i++) {
        const column_chunk *chunk = &column->chunks[i];
        for (size_t row = 0; all != NULL && row < chunk->rows; row++)
            py_tuple_put(&all, done++,
                         is_there(chunk->valid, row) ? number_at(column->kind, chunk->cells, row) : Py_BuildValue(""));
    }
    return all;
}

PyObject *py_column_is_days(PyObject *capsule)
{
    const held_column *column = PyCapsule_GetPointer(capsule, COLUMN_CAPSULE);
    return column == NULL ? NULL : PyBool_FromLong(column->kind == COLUMN_DAY);
}

PyObject *py_column_exact(PyObject *capsule, const char *field)
{
    const held_column *column = PyCapsule_GetPointer(capsule, COLUMN_CAPSULE);
    if (column == NULL)
        return NULL;
    if (column->kind == COLUMN_FLOAT32 || column->kind == COLUMN_FLOAT64)
        return py_raise_column(field, FLOATS) ? capsule : NULL;
    Py_INCREF(capsule);
    return capsule;
}

PyObject *py_column_is_text(PyObject *capsule)
{
    const held_column *column = PyCapsule_GetPointer(capsule, COLUMN_CAPSULE);
    return column == NULL ? NULL : PyBool_FromLong(column->kind == COLUMN_TEXT);
}
