/* SPDX-License-Identifier: Apache-2.0 */
/* Answers as numbers for tables and drawings. Nothing is judged by them. */
#include "ext.h"

#include <math.h>

/* Two columns of int32 of the same length. */
typedef struct answer_pair {
    Py_buffer held[2];
    const int32_t *stroke, *limit;
    Py_ssize_t rows;
} answer_pair;

static void close_pair(answer_pair *pair)
{
    PyBuffer_Release(&pair->held[0]);
    PyBuffer_Release(&pair->held[1]);
}

static bool open_pair(PyObject *strokes, PyObject *limits, answer_pair *pair)
{
    if (PyObject_GetBuffer(strokes, &pair->held[0], PyBUF_SIMPLE) != 0)
        return false;
    if (PyObject_GetBuffer(limits, &pair->held[1], PyBUF_SIMPLE) != 0) {
        PyBuffer_Release(&pair->held[0]);
        return false;
    }
    pair->stroke = pair->held[0].buf;
    pair->limit = pair->held[1].buf;
    pair->rows = (pair->held[0].len < pair->held[1].len ? pair->held[0].len : pair->held[1].len) / 4;
    return true;
}

static bool has_margin(const answer_pair *pair, Py_ssize_t row)
{
    return pair->stroke[row] != RODT_COLUMN_NO_STROKE && pair->limit[row] != RODT_COLUMN_NO_LIMIT;
}

PyObject *py_answer_margins(PyObject *strokes, PyObject *limits, int none)
{
    answer_pair pair;
    if (!open_pair(strokes, limits, &pair))
        return NULL;
    PyObject *made = PyByteArray_FromStringAndSize(NULL, pair.rows * 4);
    int32_t *margin = made == NULL ? NULL : (int32_t *)(void *)PyByteArray_AsString(made);
    for (Py_ssize_t i = 0; margin != NULL && i < pair.rows; i++)
        margin[i] = has_margin(&pair, i) ? pair.limit[i] - pair.stroke[i] : none;
    close_pair(&pair);
    return made;
}

#define STEPS 1000 /* as in the summary of the command; the last one holds what is beyond */

PyObject *py_answer_steps(PyObject *strokes, PyObject *limits)
{
    answer_pair pair;
    uint64_t counts[STEPS + 1] = {0};
    if (!open_pair(strokes, limits, &pair))
        return NULL;
    for (Py_ssize_t i = 0; i < pair.rows; i++) {
        if (!has_margin(&pair, i) || pair.limit[i] == 0)
            continue;
        int64_t step = (200 * (int64_t)pair.stroke[i] + pair.limit[i] - 1) / pair.limit[i];
        counts[step < STEPS ? step : STEPS]++;
    }
    close_pair(&pair);
    return PyBytes_FromStringAndSize((const char *)counts, sizeof counts);
}

/* Whole numbers of units are exact in a double, and each quotient is rounded once: a share is above 100 exactly where
 * the stroke is over the limit, and a margin has the sign of the exact one. NAN = there is none. */
static double number_of(const answer_pair *pair, Py_ssize_t row, char kind, int per_unit)
{
    const double stroke = pair->stroke[row], limit = pair->limit[row];
    switch (kind) {
    case 's': return pair->stroke[row] == RODT_COLUMN_NO_STROKE ? (double)NAN : stroke / per_unit;
    case 'l': return pair->limit[row] == RODT_COLUMN_NO_LIMIT ? (double)NAN : limit / per_unit;
    case 'm': return has_margin(pair, row) ? (limit - stroke) / per_unit : (double)NAN;
    default: return has_margin(pair, row) && limit > 0 ? 100 * stroke / limit : (double)NAN;
    }
}

PyObject *py_answer_numbers(PyObject *strokes, PyObject *limits, const char *name, int per_unit)
{
    answer_pair pair;
    Py_ssize_t missing = 0;
    if (!open_pair(strokes, limits, &pair))
        return NULL;
    PyObject *numbers = PyByteArray_FromStringAndSize(NULL, pair.rows * (Py_ssize_t)sizeof(double));
    PyObject *bits = numbers == NULL ? NULL : PyByteArray_FromStringAndSize(NULL, pair.rows / 8 + 1);
    if (bits != NULL) {
        double *to = (double *)(void *)PyByteArray_AsString(numbers);
        unsigned char *bit = (unsigned char *)PyByteArray_AsString(bits);
        memset(bit, 0, (size_t)pair.rows / 8 + 1);
        for (Py_ssize_t i = 0; i < pair.rows; i++) {
            to[i] = number_of(&pair, i, name[0], per_unit);
            bit[i / 8] = (unsigned char)(bit[i / 8] | !isnan(to[i]) << i % 8);
            missing += isnan(to[i]) != 0;
        }
    }
    close_pair(&pair);
    if (bits == NULL) {
        Py_XDECREF(numbers);
        return NULL;
    }
    return Py_BuildValue("NNn", numbers, bits, missing);
}
