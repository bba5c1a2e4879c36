/* SPDX-License-Identifier: Apache-2.0 */
/* Buffers for the answers of columns. */
#include "ext.h"

#include <sys/mman.h>

#define HUGE_PAGE ((uintptr_t)0x200000)

/* The kernel is asked for huge pages where whole ones fit: room for answers is written once and soon, and giving out
 * small pages one by one takes half as long as judging the rows that are written into them. */
static void ask_for_huge_pages(const char *bytes, size_t size)
{
    const uintptr_t at = (uintptr_t)bytes;
    const uintptr_t from = (at + HUGE_PAGE - 1) / HUGE_PAGE * HUGE_PAGE, to = (at + size) / HUGE_PAGE * HUGE_PAGE;
#ifdef MADV_HUGEPAGE
    if (from < to)
        (void)madvise((void *)from, to - from, MADV_HUGEPAGE); /* a wish, so nothing is lost where it is refused */
#else
    (void)from, (void)to;
#endif
}

PyObject *py_new_room(long long size)
{
    PyObject *room = PyByteArray_FromStringAndSize(NULL, (Py_ssize_t)size);
    if (room != NULL)
        ask_for_huge_pages(PyByteArray_AsString(room), (size_t)size);
    return room;
}

/* Whether nobody else has a room any more. Counts of references tell that only under the interpreter's lock. */
static bool is_left(PyObject *room)
{
#if defined Py_GIL_DISABLED || defined PYPY_VERSION
    (void)room;
    return false;
#else
    return Py_REFCNT(room) == 1;
#endif
}

/* Few answers do not hold a room for many. */
static bool is_fit(PyObject *room, size_t size)
{
    if (room == NULL)
        return false;
    const size_t found = (size_t)PyByteArray_Size(room);
    return found >= size && found / 2 <= size && is_left(room);
}

PyObject *py_take_room(kept_rooms *kept, size_t size)
{
    if (size > ROOM_KEPT_MOST)
        return py_new_room((long long)size);
    for (int i = 0; i < ROOMS_KEPT; i++) {
        if (is_fit(kept->room[i], size)) {
            Py_INCREF(kept->room[i]);
            return kept->room[i];
        }
    }
    PyObject *made = py_new_room((long long)size);
    if (made == NULL)
        return NULL;
    Py_XDECREF(kept->room[kept->next]);
    kept->room[kept->next] = made;
    kept->next = (kept->next + 1) % ROOMS_KEPT;
    Py_INCREF(made);
    return made;
}

PyObject *py_view_room(PyObject *room, size_t from, size_t size)
{
    PyObject *all = PyMemoryView_FromObject(room);
    PyObject *part = all == NULL ? NULL : PySequence_GetSlice(all, (Py_ssize_t)from, (Py_ssize_t)(from + size));
    Py_XDECREF(all);
    return part;
}

void py_free_rooms(kept_rooms *kept)
{
    for (int i = 0; i < ROOMS_KEPT; i++)
        Py_XDECREF(kept->room[i]);
}

PyObject *py_plan_room(PyObject *capsule, long long size)
{
    return py_take_room(PyCapsule_GetContext(capsule), (size_t)size);
}

void py_release_answers(held_answers *answers)
{
    for (int i = 0; i < answers->count; i++)
        PyBuffer_Release(&answers->buffer[i]);
    answers->count = 0;
}

static bool check_answer(const Py_buffer *buffer, const char *field, size_t rows, char letter, char other)
{
    char found = py_format_letter(buffer->format);
    Py_ssize_t width = letter == 'B' ? 1 : letter == 'Q' ? 8 : 4;
    if (!py_check_buffer(buffer, field))
        return false;
    if ((found != letter && found != other) || buffer->itemsize != width)
        return py_raise_column(field, "an answer has another type: stroke and limit are int32, verdict and flags "
                                      "uint8, reasons uint64");
    if ((size_t)buffer->shape[0] != rows) {
        PyErr_Format(PyExc_ValueError, "%s has room for %zd rows, and there are %zu", field, buffer->shape[0], rows);
        return false;
    }
    return true;
}

bool py_to_answers(PyObject *tuple, size_t rows, held_answers *answers, rodt_column_out *out)
{
    static const char *const fields[ANSWERS] = {"stroke", "verdict", "reasons", "flags", "limit"};
    static const char letters[] = "iBQBi";
    static const char others[] = "lBLBl";
    memset(answers, 0, sizeof *answers);
    memset(out, 0, sizeof *out);
    if (!PyTuple_Check(tuple) || PyTuple_Size(tuple) != ANSWERS) {
        PyErr_SetString(PyExc_TypeError, "answers are the columns stroke, verdict, reasons, flags and, if wanted, "
                                         "limit");
        return false;
    }
    for (int i = 0; i < ANSWERS; i++) {
        PyObject *object = PyTuple_GetItem(tuple, i);
        if (PyObject_GetBuffer(object, &answers->buffer[i], PyBUF_STRIDES | PyBUF_FORMAT | PyBUF_WRITABLE) != 0) {
            PyErr_Clear();
            return py_raise_column(fields[i], "answers go into a writable buffer, such as a NumPy array or an "
                                              "array.array");
        }
        answers->count = i + 1;
        if (!check_answer(&answers->buffer[i], fields[i], rows, letters[i], others[i]))
            return false;
    }
    *out = (rodt_column_out){.stroke = answers->buffer[0].buf,
                             .verdict = answers->buffer[1].buf,
                             .reasons = answers->buffer[2].buf,
                             .flags = answers->buffer[3].buf,
                             .limit = answers->buffer[4].buf};
    return true;
}

rodt_column_out py_answers_at(const rodt_column_out *out, size_t row)
{
    return (rodt_column_out){.stroke = out->stroke + row,
                             .verdict = out->verdict + row,
                             .reasons = out->reasons + row,
                             .flags = out->flags + row,
                             .limit = out->limit + row,
                             .stroke_parts = out->stroke_parts != NULL ? out->stroke_parts + row : NULL};
}

bool py_overlaps(const held_answers *answers, const void *cells, size_t size)
{
    uintptr_t from = (uintptr_t)cells;
    for (int i = 0; cells != NULL && i < answers->count; i++) {
        uintptr_t start = (uintptr_t)answers->buffer[i].buf;
        if (start < from + size && from < start + (size_t)answers->buffer[i].len)
            return true;
    }
    return false;
}
