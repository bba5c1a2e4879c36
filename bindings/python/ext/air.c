/* SPDX-License-Identifier: Apache-2.0 */
/* Air checks as tuples. */
#include "ext.h"

static PyObject *from_edge(const rodt_air_limit *row)
{
    char text[RODT_SENTENCE_SIZE];
    return PyUnicode_FromString(rodt_air_limit_edge_format(row, text, sizeof text, NULL) == RODT_OK ? text : "");
}

PyObject *py_from_air_limit(const rodt_air_limit *row)
{
    if (row == NULL)
        Py_RETURN_NONE;
    PyObject *first =
        Py_BuildValue("iiiiNiiNNN", (int)row->check, (int)row->kind, (int)row->vehicle, (int)row->towed_units,
                      PyBool_FromLong(row->towed_or_more), (int)row->comparison, (int)row->measure,
                      FROM_EXACT(row->value), FROM_EXACT(row->upper), FROM_EXACT(row->per_towed_unit));
    PyObject *second = Py_BuildValue("iNNiNNN", (int)row->span, FROM_EXACT(row->start), FROM_EXACT(row->stop),
                                     (int)row->applications, PyBool_FromLong(row->by_volume),
                                     PyBool_FromLong(row->half_cut_out), PyBool_FromLong(row->below_cut_out));
    PyObject *third =
        Py_BuildValue("NNssNiN", py_from_date(row->built_from), py_from_date(row->built_until), row->published,
                      row->setup, py_from_source(row->source), (int)row->evidence, from_edge(row));
    PyObject *both = first == NULL || second == NULL ? NULL : PySequence_Concat(first, second);
    PyObject *all = both == NULL || third == NULL ? NULL : PySequence_Concat(both, third);
    Py_XDECREF(first);
    Py_XDECREF(second);
    Py_XDECREF(third);
    Py_XDECREF(both);
    return all;
}

/* A year alone is a day of build too. */
static bool to_built(PyObject *object, rodt_date *out)
{
    int64_t year = 0;
    if (!PyLong_CheckExact(object))
        return py_to_date(object, "built", out);
    memset(out, 0, sizeof *out);
    if (!py_to_int64(object, "built", &year))
        return false;
    if (year < 1900 || year > 2199)
        return py_raise(RODT_E_ARGUMENT, "built", "the year is not between 1900 and 2199");
    out->year = (int16_t)year;
    return true;
}

static PyObject *from_built(rodt_date built)
{
    return rodt_date_given(built) && built.month == 0 ? PyLong_FromLong(built.year) : py_from_date(built);
}

bool py_to_air_reading(PyObject *tuple, rodt_air_reading *out)
{
    int word[4];
    PyObject *o[8];
    memset(out, 0, sizeof *out);
    if (!PyArg_ParseTuple(tuple, "iiiihhOOOOOOOO", &word[0], &word[1], &word[2], &word[3], &out->towed_units,
                          &out->applications, &o[0], &o[1], &o[2], &o[3], &o[4], &o[5], &o[6], &o[7]))
        return false;
    out->check = (rodt_air_check)word[0];
    out->vehicle = (rodt_vehicle_class)word[1];
    out->span = (rodt_air_span)word[2];
    out->answer = (rodt_recorded)word[3];
    return to_built(o[0], &out->built) && py_to_pressure(o[1], "pressure", &out->pressure) &&
           py_to_pressure(o[2], "before", &out->before) && py_to_pressure(o[3], "after", &out->after) &&
           py_to_pressure(o[4], "cut_out", &out->cut_out) && py_to_ratio(o[5], "seconds", &out->seconds) &&
           py_to_ratio(o[6], "actual_volume", &out->actual_volume) &&
           py_to_ratio(o[7], "required_volume", &out->required_volume);
}

static PyObject *from_air_reading(const rodt_air_reading *r)
{
    return Py_BuildValue("iiiiiiNNNNNNNN", (int)r->check, (int)r->vehicle, (int)r->span, (int)r->answer,
                         (int)r->towed_units, (int)r->applications, from_built(r->built), FROM_EXACT(r->pressure),
                         FROM_EXACT(r->before), FROM_EXACT(r->after), FROM_EXACT(r->cut_out), FROM_EXACT(r->seconds),
                         FROM_EXACT(r->actual_volume), FROM_EXACT(r->required_volume));
}

PyObject *py_from_air_finding(const rodt_air_finding *finding)
{
    char sentence[RODT_SENTENCE_SIZE];
    char edge[RODT_SENTENCE_SIZE];
    if (rodt_air_finding_format(finding, sentence, sizeof sentence, NULL) != RODT_OK)
        sentence[0] = '\0';
    if (rodt_air_edge_format(finding, edge, sizeof edge, NULL) != RODT_OK)
        edge[0] = '\0';
    return Py_BuildValue("iiNNNNNNNss", (int)finding->result, (int)finding->missing, PyBool_FromLong(finding->major),
                         PyBool_FromLong(finding->minor), PyBool_FromLong(finding->at_limit),
                         from_air_reading(&finding->reading), FROM_EXACT(finding->measured),
                         FROM_EXACT(finding->allowed), py_from_air_limit(finding->row), sentence, edge);
}
