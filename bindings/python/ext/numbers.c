/* SPDX-License-Identifier: Apache-2.0 */
/* Answers as numbers for tables and drawings. Nothing is judged by them. */
#include "ext.h"

#include <math.h>

#define PARTS_PER_UNIT (RODT_COLUMN_PARTS_PER_INCH / RODT_COLUMN_PER_INCH)

/* Columns of the same length. */
typedef struct answer_pair {
    Py_buffer held[3];
    const int32_t *stroke, *limit;
    const int64_t *parts; /* the strokes once more; NULL = all are whole units */
    Py_ssize_t rows;
} answer_pair;

static void close_pair(answer_pair *pair)
{
    PyBuffer_Release(&pair->held[0]);
    PyBuffer_Release(&pair->held[1]);
    PyBuffer_Release(&pair->held[2]);
}

static bool open_pair(PyObject *strokes, PyObject *parts, PyObject *limits, answer_pair *pair)
{
    PyObject *const each[] = {strokes, limits, parts};
    memset(pair, 0, sizeof *pair);
    for (int i = 0; i < 3; i++) {
        if (each[i] != Py_None && PyObject_GetBuffer(each[i], &pair->held[i], PyBUF_SIMPLE) != 0) {
            close_pair(pair); /* what was not opened needs no closing */
            return false;
        }
    }
    pair->stroke = pair->held[0].buf;
    pair->limit = pair->held[1].buf;
    pair->parts = pair->held[2].buf;
    pair->rows = (pair->held[0].len < pair->held[1].len ? pair->held[0].len : pair->held[1].len) / 4;
    return true;
}

/* The stroke in parts. */
static int64_t parts_at(const answer_pair *pair, Py_ssize_t row)
{
    if (pair->parts != NULL)
        return pair->parts[row];
    return pair->stroke[row] == RODT_COLUMN_NO_STROKE ? RODT_COLUMN_NO_STROKE : pair->stroke[row] * PARTS_PER_UNIT;
}

PyObject *py_answer_margins(PyObject *strokes, PyObject *limits, int none)
{
    answer_pair pair;
    if (!open_pair(strokes, Py_None, limits, &pair))
        return NULL;
    PyObject *made = PyByteArray_FromStringAndSize(NULL, pair.rows * 4);
    int32_t *margin = made == NULL ? NULL : (int32_t *)(void *)PyByteArray_AsString(made);
    for (Py_ssize_t i = 0; margin != NULL && i < pair.rows; i++) {
        const int32_t stroke = pair.stroke[i], limit = pair.limit[i];
        margin[i] = stroke == RODT_COLUMN_NO_STROKE || limit == RODT_COLUMN_NO_LIMIT ? none : limit - stroke;
    }
    close_pair(&pair);
    return made;
}

void py_fill_parts(const int32_t *stroke, size_t rows, int64_t *parts)
{
    for (size_t i = 0; i < rows; i++)
        parts[i] = stroke[i] == RODT_COLUMN_NO_STROKE ? RODT_COLUMN_NO_STROKE : stroke[i] * PARTS_PER_UNIT;
}

bool py_has_finer(const int32_t *stroke, const int64_t *parts, size_t rows)
{
    int64_t finer = 0;
    for (size_t i = 0; i < rows; i++)
        finer |= stroke[i] & ~parts[i]; /* negative where only the parts are there */
    return finer < 0;
}

PyObject *py_answer_parts(PyObject *strokes)
{
    Py_buffer held;
    if (PyObject_GetBuffer(strokes, &held, PyBUF_SIMPLE) != 0)
        return NULL;
    PyObject *made = py_new_room(2 * held.len);
    if (made != NULL)
        py_fill_parts(held.buf, (size_t)held.len / 4, (int64_t *)(void *)PyByteArray_AsString(made));
    PyBuffer_Release(&held);
    return made;
}

#define STEPS 1000 /* as in the summary of the command; the last one holds what is beyond */

PyObject *py_answer_steps(PyObject *strokes, PyObject *parts, PyObject *limits)
{
    answer_pair pair;
    uint64_t counts[STEPS + 1] = {0};
    int64_t least = INT64_MAX;
    if (!open_pair(strokes, parts, limits, &pair))
        return NULL;
    for (Py_ssize_t i = 0; i < pair.rows; i++) {
        const int64_t stroke = parts_at(&pair, i), limit = pair.limit[i] * PARTS_PER_UNIT;
        if (stroke == RODT_COLUMN_NO_STROKE || pair.limit[i] == RODT_COLUMN_NO_LIMIT)
            continue;
        least = limit - stroke < least ? limit - stroke : least;
        if (limit == 0)
            continue;
        int64_t step = (200 * stroke + limit - 1) / limit;
        counts[step < STEPS ? step : STEPS]++;
    }
    close_pair(&pair);
    PyObject *steps = PyBytes_FromStringAndSize((const char *)counts, sizeof counts);
    return least == INT64_MAX ? Py_BuildValue("NO", steps, Py_None) : Py_BuildValue("NL", steps, (long long)least);
}

/* --- Sets of reasons ----------------------------------------------------------------------------------- */

void py_free_sets(reason_sets *sets)
{
    free(sets->set);
    free(sets->rows);
    free(sets->slot);
}

/* Its slot, or the free one where it belongs. */
static uint32_t *find_slot(const reason_sets *sets, uint64_t set)
{
    const size_t mask = 2 * sets->room - 1;
    size_t at = (size_t)(set * UINT64_C(0x9E3779B97F4A7C15) >> 32) & mask;
    while (sets->slot[at] != 0 && sets->set[sets->slot[at] - 1] != set)
        at = (at + 1) & mask;
    return &sets->slot[at];
}

/* Doubles the room, a power of two. */
static bool grow_sets(reason_sets *sets)
{
    reason_sets larger = {.count = sets->count, .room = sets->room == 0 ? 64 : 2 * sets->room};
    larger.set = calloc(larger.room, sizeof *larger.set);
    larger.rows = calloc(larger.room, sizeof *larger.rows);
    larger.slot = calloc(2 * larger.room, sizeof *larger.slot);
    if (larger.set == NULL || larger.rows == NULL || larger.slot == NULL) {
        py_free_sets(&larger);
        return false;
    }
    for (size_t i = 0; i < sets->count; i++) {
        larger.set[i] = sets->set[i];
        larger.rows[i] = sets->rows[i];
        *find_slot(&larger, larger.set[i]) = (uint32_t)i + 1;
    }
    py_free_sets(sets);
    *sets = larger;
    return true;
}

/* The number of the set, from 1; 0 = no memory. */
static uint32_t number_of_set(reason_sets *sets, uint64_t set)
{
    if (sets->count == sets->room && !grow_sets(sets))
        return 0;
    uint32_t *slot = find_slot(sets, set);
    if (*slot == 0) {
        sets->set[sets->count++] = set;
        *slot = (uint32_t)sets->count;
    }
    return *slot;
}

bool py_number_sets(const uint64_t *row, size_t count, int32_t *number, reason_sets *sets)
{
    for (size_t i = 0; i < count; i++) {
        const uint32_t of = number_of_set(sets, row[i]); /* asking whether it is the last row's again costs more */
        if (of == 0)
            return false;
        sets->rows[of - 1]++;
        number[i] = (int32_t)of - 1;
    }
    return true;
}

static PyObject *from_set(const void *all, size_t i)
{
    const reason_sets *sets = all;
    return Py_BuildValue("KK", (unsigned long long)sets->set[i], (unsigned long long)sets->rows[i]);
}

PyObject *py_from_sets(const reason_sets *sets) { return py_from_each(sets->count, from_set, sets); }

PyObject *py_answer_sets(PyObject *reasons)
{
    Py_buffer held;
    reason_sets sets = {.count = 0};
    if (PyObject_GetBuffer(reasons, &held, PyBUF_SIMPLE) != 0)
        return NULL;
    const size_t rows = (size_t)held.len / sizeof(uint64_t);
    PyObject *numbers = py_new_room((long long)(rows * sizeof(int32_t)));
    bool made = numbers != NULL;
    if (made && !py_number_sets(held.buf, rows, (int32_t *)(void *)PyByteArray_AsString(numbers), &sets)) {
        PyErr_NoMemory();
        made = false;
    }
    PyObject *both = made ? Py_BuildValue("ON", numbers, py_from_sets(&sets)) : NULL;
    Py_XDECREF(numbers);
    py_free_sets(&sets);
    PyBuffer_Release(&held);
    return both;
}

/* --- Doubles ------------------------------------------------------------------------------------------- */

/* The words of py_answer_numbers begin with these. */
static const char number_letters[PY_NUMBERS] = {'s', 'l', 'm', 'u'};

_Static_assert(RODT_COLUMN_NO_STROKE < 0 && RODT_COLUMN_NO_LIMIT < 0, "a number that is there is not negative");

/* Negative where there is no number. A single comparison of it, and no jump: a compiler takes several rows at once. */
static inline int32_t there(py_number kind, int32_t stroke, int32_t limit)
{
    return (kind == PY_NUMBER_LIMIT ? 0 : stroke) | (kind == PY_NUMBER_STROKE ? 0 : limit) |
           (kind == PY_NUMBER_USED ? -(int32_t)(limit == 0) : 0);
}

/* Whole numbers of units are exact in a double, and each quotient is rounded once: a share is above 100 exactly where
 * the stroke is over the limit, and a margin has the sign of the exact one. NAN = there is none. */
static inline double number_of(py_number kind, int32_t stroke, int32_t limit, double per_unit)
{
    const double used = stroke, most = limit;
    const double number = kind == PY_NUMBER_STROKE   ? used / per_unit
                          : kind == PY_NUMBER_LIMIT  ? most / per_unit
                          : kind == PY_NUMBER_MARGIN ? (most - used) / per_unit
                                                     : 100 * used / (limit + (limit == 0));
    return number + (there(kind, stroke, limit) < 0 ? (double)NAN : 0);
}

/* With the kind as a constant in each loop. */
#define FILL(kind)                                                                                                     \
    case kind:                                                                                                         \
        for (size_t i = 0; i < rows; i++)                                                                              \
            to[i] = number_of(kind, stroke[i], limit[i], per_unit);                                                    \
        break

void py_fill_numbers(py_number kind, const int32_t *stroke, const int32_t *limit, size_t rows, double per_unit,
                     double *restrict to)
{
    switch (kind) {
        FILL(PY_NUMBER_STROKE);
        FILL(PY_NUMBER_LIMIT);
        FILL(PY_NUMBER_MARGIN);
        FILL(PY_NUMBER_USED);
    case PY_NUMBERS: break;
    }
}

/* Parts are exact in a double, too. */
void py_fill_finer(py_number kind, const int32_t *stroke, const int64_t *parts, const int32_t *limit, size_t rows,
                   double per_unit, double *restrict to)
{
    for (size_t i = 0; i < rows; i++) {
        if (stroke[i] != RODT_COLUMN_NO_STROKE || parts[i] == RODT_COLUMN_NO_STROKE)
            continue;
        const double used = (double)parts[i], most = limit[i] * (double)PARTS_PER_UNIT;
        if (kind == PY_NUMBER_STROKE)
            to[i] = used / (per_unit * PARTS_PER_UNIT);
        if (kind == PY_NUMBER_MARGIN && limit[i] >= 0)
            to[i] = (most - used) / (per_unit * PARTS_PER_UNIT);
        if (kind == PY_NUMBER_USED && limit[i] > 0)
            to[i] = 100 * used / most;
    }
}

PyObject *py_answer_numbers(PyObject *strokes, PyObject *parts, PyObject *limits, const char *name, int per_unit)
{
    answer_pair pair;
    if (!open_pair(strokes, parts, limits, &pair))
        return NULL;
    const size_t rows = (size_t)pair.rows;
    PyObject *numbers = py_new_room((long long)(rows * sizeof(double)));
    double *to = numbers == NULL ? NULL : (double *)(void *)PyByteArray_AsString(numbers);
    for (py_number kind = 0; to != NULL && kind < PY_NUMBERS; kind++) {
        if (number_letters[kind] != name[0])
            continue;
        py_fill_numbers(kind, pair.stroke, pair.limit, rows, per_unit, to);
        if (pair.parts != NULL)
            py_fill_finer(kind, pair.stroke, pair.parts, pair.limit, rows, per_unit, to);
    }
    close_pair(&pair);
    return numbers;
}
