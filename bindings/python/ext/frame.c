/* SPDX-License-Identifier: Apache-2.0 */
/* The columns of a frame: rows are judged by the block, and what no frame has never leaves the processor's caches. */
#include "ext.h"

#include <math.h>

#define BLOCK 2048

/* A byte of bits holds eight rows, so up to seven rows of a block wait for the next one. */
#define ROOM (BLOCK + 8)

typedef struct waiting_rows {
    int32_t stroke[ROOM], limit[ROOM];
    int64_t parts[ROOM];
    uint64_t reasons[ROOM];
    uint8_t verdict[ROOM], flags[ROOM];
    size_t count;
} waiting_rows;

/* Verdicts, numbers of sets, then doubles and their bits. */
#define COLUMNS (2 + 2 * PY_NUMBERS)

/* The columns in one room, and how many of their rows are made. */
typedef struct frame_columns {
    PyObject *room;
    size_t from[COLUMNS], size[COLUMNS];
    uint8_t *verdict;
    int32_t *set;
    double *number[PY_NUMBERS];
    uint8_t *bits[PY_NUMBERS];
    size_t missing[PY_NUMBERS];
    reason_sets sets;
    size_t rows;
} frame_columns;

typedef struct frame_job {
    rodt_text_plan *plan;
    double per_unit;
    waiting_rows *waiting;
    frame_columns *columns;
} frame_job;

/* Where each column begins, on a cache line of its own; returns the bytes of all. */
static size_t lay_out(frame_columns *columns, size_t rows)
{
    size_t used = 0;
    for (int i = 0; i < COLUMNS; i++) {
        columns->from[i] = used;
        columns->size[i] = i == 0       ? rows
                           : i == 1     ? rows * sizeof *columns->set
                           : i % 2 == 0 ? rows * sizeof *columns->number[0]
                                        : rows / 8 + 1;
        used += (columns->size[i] + 63) / 64 * 64;
    }
    return used;
}

static bool open_columns(frame_columns *columns, size_t rows, kept_rooms *kept)
{
    columns->room = py_take_room(kept, lay_out(columns, rows));
    if (columns->room == NULL)
        return false;
    char *room = PyByteArray_AsString(columns->room);
    columns->verdict = (uint8_t *)room + columns->from[0];
    columns->set = (int32_t *)(void *)(room + columns->from[1]);
    for (int i = 0; i < PY_NUMBERS; i++) {
        columns->number[i] = (double *)(void *)(room + columns->from[2 + 2 * i]);
        columns->bits[i] = (uint8_t *)room + columns->from[3 + 2 * i];
    }
    return true;
}

/* Of a byte. */
static size_t count_bits(unsigned byte)
{
    byte -= byte >> 1 & 0x55;
    byte = (byte & 0x33) + (byte >> 2 & 0x33);
    return (byte + (byte >> 4)) & 0x0F;
}

/* A bit of each row, 0 where a number is missing; eight rows at a time. A number that is there is not negative. */
static void fill_bits(const waiting_rows *from, size_t rows, frame_columns *to)
{
    for (size_t i = 0; i < rows; i += 8) {
        const size_t count = rows - i < 8 ? rows - i : 8;
        unsigned bits[PY_NUMBERS] = {0};
        for (size_t k = 0; k < count; k++) {
            const int32_t limit = from->limit[i + k];
            bits[PY_NUMBER_STROKE] |= (unsigned)(from->parts[i + k] >= 0) << k;
            bits[PY_NUMBER_LIMIT] |= (unsigned)(limit >= 0) << k;
            bits[PY_NUMBER_USED] |= (unsigned)(limit > 0) << k;
        }
        bits[PY_NUMBER_MARGIN] = bits[PY_NUMBER_STROKE] & bits[PY_NUMBER_LIMIT];
        bits[PY_NUMBER_USED] &= bits[PY_NUMBER_MARGIN];
        for (size_t kind = 0; kind < PY_NUMBERS; kind++) {
            to->bits[kind][(to->rows + i) / 8] = (uint8_t)bits[kind];
            to->missing[kind] += count - count_bits(bits[kind]);
        }
    }
}

/* Takes the first rows that wait. All but the last time they are a multiple of eight. */
static rodt_status take_rows(const frame_job *job, size_t rows)
{
    waiting_rows *from = job->waiting;
    frame_columns *to = job->columns;
    memcpy(to->verdict + to->rows, from->verdict, rows);
    const bool finer = py_has_finer(from->stroke, from->parts, rows);
    for (py_number kind = 0; kind < PY_NUMBERS; kind++) {
        py_fill_numbers(kind, from->stroke, from->limit, rows, job->per_unit, to->number[kind] + to->rows);
        if (finer)
            py_fill_finer(kind, from->stroke, from->parts, from->limit, rows, job->per_unit,
                          to->number[kind] + to->rows);
    }
    fill_bits(from, rows, to);
    if (!py_number_sets(from->reasons, rows, to->set + to->rows, &to->sets))
        return RODT_E_MEMORY;
    to->rows += rows;
    from->count -= rows;
    memmove(from->stroke, from->stroke + rows, from->count * sizeof *from->stroke);
    memmove(from->limit, from->limit + rows, from->count * sizeof *from->limit);
    memmove(from->parts, from->parts + rows, from->count * sizeof *from->parts);
    memmove(from->reasons, from->reasons + rows, from->count * sizeof *from->reasons);
    memmove(from->verdict, from->verdict + rows, from->count);
    return RODT_OK;
}

static rodt_status judge_block(const void *of, const cursor *w, size_t rows)
{
    const frame_job *job = of;
    waiting_rows *waiting = job->waiting;
    const rodt_column_out all = {.stroke = waiting->stroke,
                                 .verdict = waiting->verdict,
                                 .reasons = waiting->reasons,
                                 .flags = waiting->flags,
                                 .limit = waiting->limit,
                                 .stroke_parts = waiting->parts};
    const rodt_column_out part = py_answers_at(&all, waiting->count);
    rodt_status status = py_judge_chunk(job->plan, w, rows, &part);
    if (status != RODT_OK)
        return status;
    waiting->count += rows;
    return take_rows(job, waiting->count - waiting->count % 8);
}

static PyObject *from_column(const void *of, size_t i)
{
    const frame_columns *columns = of;
    return py_view_room(columns->room, columns->from[i], columns->size[i]);
}

static PyObject *from_missing(const void *of, size_t i)
{
    return PyLong_FromSize_t(((const frame_columns *)of)->missing[i]);
}

PyObject *py_columns_frame(PyObject *capsule, PyObject *columns, int per_unit)
{
    text_plan *plan = PyCapsule_GetPointer(capsule, TEXT_PLAN_CAPSULE);
    cursor w;
    frame_columns made = {.rows = 0};
    rodt_status status = RODT_E_MEMORY;
    if (plan == NULL || !py_open_cursor(columns, &w) || !py_check_texts(&w))
        return NULL;
    w.most = BLOCK;
    frame_job job = {plan->plan, per_unit, calloc(1, sizeof *job.waiting), &made};
    if (open_columns(&made, w.rows, &plan->rooms) && job.waiting != NULL) {
        Py_BEGIN_ALLOW_THREADS
        status = py_each_chunk(&w, judge_block, &job);
        if (status == RODT_OK)
            status = take_rows(&job, job.waiting->count);
        Py_END_ALLOW_THREADS
    }
    if (status != RODT_OK && !PyErr_Occurred())
        py_raise_status(status);
    PyObject *frame = status != RODT_OK ? NULL
                                        : Py_BuildValue("NNN", py_from_each(COLUMNS, from_column, &made),
                                                        py_from_each(PY_NUMBERS, from_missing, &made),
                                                        py_from_sets(&made.sets));
    free(job.waiting);
    Py_XDECREF(made.room);
    py_free_sets(&made.sets);
    return frame;
}

/* --- Lists --------------------------------------------------------------------------------------------- */

PyObject *py_list_of_numbers(PyObject *cells)
{
    Py_buffer held;
    if (PyObject_GetBuffer(cells, &held, PyBUF_SIMPLE) != 0)
        return NULL;
    const double *number = held.buf;
    const Py_ssize_t rows = held.len / (Py_ssize_t)sizeof *number;
    PyObject *list = PyList_New(rows);
    for (Py_ssize_t i = 0; list != NULL && i < rows; i++) {
        PyObject *item = isnan(number[i]) ? py_none() : PyFloat_FromDouble(number[i]);
        if (item == NULL || PyList_SetItem(list, i, item) != 0)
            Py_CLEAR(list);
    }
    PyBuffer_Release(&held);
    return list;
}

PyObject *py_list_of_codes(PyObject *codes, PyObject *texts)
{
    Py_buffer held;
    if (PyObject_GetBuffer(codes, &held, PyBUF_FORMAT | PyBUF_ND) != 0)
        return NULL;
    const Py_ssize_t rows = held.len / held.itemsize;
    PyObject *list = PyList_New(rows);
    for (Py_ssize_t i = 0; list != NULL && i < rows; i++) {
        const Py_ssize_t code =
            held.itemsize == 1 ? ((const uint8_t *)held.buf)[i] : (Py_ssize_t)((const int32_t *)held.buf)[i];
        PyObject *text = PyList_GetItem(texts, code);
        Py_XINCREF(text);
        if (text == NULL || PyList_SetItem(list, i, text) != 0)
            Py_CLEAR(list);
    }
    PyBuffer_Release(&held);
    return list;
}
