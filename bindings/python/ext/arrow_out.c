/* SPDX-License-Identifier: Apache-2.0 */
/* Answers for Arrow: buffers of Python objects behind capsules, without a copy. */
#include "ext.h"

/*
 * What is handed out is described by a tuple: (format, name, flags, length, nulls, buffers, children, dictionary), with
 * buffers a tuple of objects or None, children a tuple of such tuples, dictionary such a tuple or None.
 */
typedef struct arrow_part {
    const char *format;
    const char *name;
    long long flags, length, nulls;
    PyObject *buffers, *children, *dictionary;
} arrow_part;

static bool read_part(PyObject *tuple, arrow_part *out)
{
    return PyArg_ParseTuple(tuple, "ssLLLOOO", &out->format, &out->name, &out->flags, &out->length, &out->nulls,
                            &out->buffers, &out->children, &out->dictionary);
}

/* --- Schemas ----------------------------------------------------------------------------------------- */

/* The texts are in the tuple, which private_data owns. Whoever releases it may not hold the interpreter's lock. */
static void drop_object(void *object)
{
    if (!Py_IsInitialized())
        return;
    PyGILState_STATE state = PyGILState_Ensure();
    Py_DECREF((PyObject *)object);
    PyGILState_Release(state);
}

static void release_schema(struct ArrowSchema *schema)
{
    for (int64_t i = 0; i < schema->n_children; i++) {
        if (schema->children[i]->release != NULL)
            schema->children[i]->release(schema->children[i]);
        free(schema->children[i]);
    }
    free(schema->children);
    if (schema->dictionary != NULL && schema->dictionary->release != NULL)
        schema->dictionary->release(schema->dictionary);
    free(schema->dictionary);
    drop_object(schema->private_data);
    schema->release = NULL;
}

static bool make_schema(PyObject *tuple, struct ArrowSchema *out);

static struct ArrowSchema *new_schema(PyObject *tuple)
{
    struct ArrowSchema *schema = calloc(1, sizeof *schema);
    if (schema == NULL)
        PyErr_NoMemory();
    else if (!make_schema(tuple, schema)) {
        free(schema);
        schema = NULL;
    }
    return schema;
}

static bool make_schema(PyObject *tuple, struct ArrowSchema *out)
{
    arrow_part part;
    if (!read_part(tuple, &part))
        return false;
    Py_ssize_t count = PyTuple_Size(part.children);
    *out = (struct ArrowSchema){.format = part.format,
                                .name = part.name,
                                .flags = part.flags,
                                .release = release_schema,
                                .private_data = tuple};
    Py_INCREF(tuple);
    out->children = calloc((size_t)count + 1, sizeof *out->children);
    bool made = out->children != NULL;
    for (Py_ssize_t i = 0; made && i < count; i++) {
        out->children[i] = new_schema(PyTuple_GetItem(part.children, i));
        made = out->children[i] != NULL;
        out->n_children += made;
    }
    if (made && part.dictionary != Py_None) {
        out->dictionary = new_schema(part.dictionary);
        made = out->dictionary != NULL;
    }
    if (!made)
        release_schema(out);
    return made;
}

/* --- Arrays ------------------------------------------------------------------------------------------ */

typedef struct array_buffers {
    Py_buffer held[3];
    const void *pointers[3];
    int count;
} array_buffers;

static void release_room(array_buffers *room)
{
    if (Py_IsInitialized()) {
        PyGILState_STATE state = PyGILState_Ensure();
        for (int i = 0; i < room->count; i++) {
            if (room->pointers[i] != NULL)
                PyBuffer_Release(&room->held[i]);
        }
        PyGILState_Release(state);
    }
    free(room);
}

static void release_array(struct ArrowArray *array)
{
    for (int64_t i = 0; i < array->n_children; i++) {
        if (array->children[i]->release != NULL)
            array->children[i]->release(array->children[i]);
        free(array->children[i]);
    }
    free(array->children);
    if (array->dictionary != NULL && array->dictionary->release != NULL)
        array->dictionary->release(array->dictionary);
    free(array->dictionary);
    release_room(array->private_data);
    array->release = NULL;
}

static bool hold_buffers(PyObject *buffers, array_buffers *room)
{
    for (int i = 0; i < PyTuple_Size(buffers) && i < 3; i++) {
        PyObject *object = PyTuple_GetItem(buffers, i);
        if (object != Py_None) {
            if (PyObject_GetBuffer(object, &room->held[i], PyBUF_SIMPLE) != 0)
                return false;
            room->pointers[i] = room->held[i].buf;
        }
        room->count = i + 1;
    }
    return true;
}

static bool make_array(PyObject *tuple, struct ArrowArray *out);

static struct ArrowArray *new_array(PyObject *tuple)
{
    struct ArrowArray *array = calloc(1, sizeof *array);
    if (array == NULL)
        PyErr_NoMemory();
    else if (!make_array(tuple, array)) {
        free(array);
        array = NULL;
    }
    return array;
}

static bool make_array(PyObject *tuple, struct ArrowArray *out)
{
    arrow_part part;
    array_buffers *room = read_part(tuple, &part) ? calloc(1, sizeof *room) : NULL;
    if (room == NULL)
        return PyErr_Occurred() ? false : (PyErr_NoMemory(), false);
    Py_ssize_t count = PyTuple_Size(part.children);
    *out = (struct ArrowArray){.length = part.length,
                               .null_count = part.nulls,
                               .release = release_array,
                               .private_data = room,
                               .buffers = room->pointers};
    out->children = calloc((size_t)count + 1, sizeof *out->children);
    bool made = out->children != NULL && hold_buffers(part.buffers, room);
    out->n_buffers = room->count;
    for (Py_ssize_t i = 0; made && i < count; i++) {
        out->children[i] = new_array(PyTuple_GetItem(part.children, i));
        made = out->children[i] != NULL;
        out->n_children += made;
    }
    if (made && part.dictionary != Py_None) {
        out->dictionary = new_array(part.dictionary);
        made = out->dictionary != NULL;
    }
    if (!made)
        release_array(out);
    return made;
}

/* --- Capsules ---------------------------------------------------------------------------------------- */

static void free_schema(PyObject *capsule)
{
    struct ArrowSchema *schema = PyCapsule_GetPointer(capsule, "arrow_schema");
    if (schema->release != NULL)
        schema->release(schema);
    free(schema);
}

static void free_array(PyObject *capsule)
{
    struct ArrowArray *array = PyCapsule_GetPointer(capsule, "arrow_array");
    if (array->release != NULL)
        array->release(array);
    free(array);
}

PyObject *py_arrow_schema(PyObject *part)
{
    struct ArrowSchema *schema = new_schema(part);
    return schema == NULL ? NULL : PyCapsule_New(schema, "arrow_schema", free_schema);
}

PyObject *py_arrow_array(PyObject *part)
{
    struct ArrowArray *array = new_array(part);
    return array == NULL ? NULL : PyCapsule_New(array, "arrow_array", free_array);
}

/* --- Streams of one batch ---------------------------------------------------------------------------- */

static int stream_schema(struct ArrowArrayStream *stream, struct ArrowSchema *out)
{
    PyGILState_STATE state = PyGILState_Ensure();
    bool made = make_schema(stream->private_data, out);
    PyErr_Clear();
    PyGILState_Release(state);
    return made ? 0 : 12; /* ENOMEM */
}

/* The next batch of a stream whose only one was delivered. */
static int stream_end(struct ArrowArrayStream *stream, struct ArrowArray *out)
{
    (void)stream;
    memset(out, 0, sizeof *out);
    return 0;
}

static int stream_batch(struct ArrowArrayStream *stream, struct ArrowArray *out)
{
    PyGILState_STATE state = PyGILState_Ensure();
    bool made = make_array(stream->private_data, out);
    PyErr_Clear();
    PyGILState_Release(state);
    stream->get_next = stream_end;
    return made ? 0 : 12;
}

static const char *stream_error(struct ArrowArrayStream *stream)
{
    (void)stream;
    return "no memory";
}

static void release_stream(struct ArrowArrayStream *stream)
{
    drop_object(stream->private_data);
    stream->release = NULL;
}

static void free_stream(PyObject *capsule)
{
    struct ArrowArrayStream *stream = PyCapsule_GetPointer(capsule, "arrow_array_stream");
    if (stream->release != NULL)
        stream->release(stream);
    free(stream);
}

PyObject *py_arrow_stream(PyObject *part)
{
    struct ArrowArrayStream *stream = calloc(1, sizeof *stream);
    if (stream == NULL)
        return PyErr_NoMemory();
    *stream = (struct ArrowArrayStream){.get_schema = stream_schema,
                                        .get_next = stream_batch,
                                        .get_last_error = stream_error,
                                        .release = release_stream,
                                        .private_data = part};
    Py_INCREF(part);
    return PyCapsule_New(stream, "arrow_array_stream", free_stream);
}

PyObject *py_given_bits(PyObject *cells, int none)
{
    Py_buffer from;
    if (PyObject_GetBuffer(cells, &from, PyBUF_FORMAT | PyBUF_ND) != 0)
        return NULL;
    Py_ssize_t rows = from.len / from.itemsize;
    PyObject *bits = PyByteArray_FromStringAndSize(NULL, rows / 8 + 1);
    Py_ssize_t missing = 0;
    unsigned char *to = bits == NULL ? NULL : (unsigned char *)PyByteArray_AsString(bits);
    for (Py_ssize_t i = 0; to != NULL && i < rows; i++) {
        bool given = (from.itemsize == 8 ? ((const int64_t *)from.buf)[i] : ((const int32_t *)from.buf)[i]) != none;
        to[i / 8] = (unsigned char)(i % 8 == 0 ? given : to[i / 8] | given << (i % 8));
        missing += !given;
    }
    PyBuffer_Release(&from);
    return bits == NULL ? NULL : Py_BuildValue("Nn", bits, missing);
}
