/* SPDX-License-Identifier: Apache-2.0 */
/* A vehicle: a list of wheel ends with their findings in, tuples out. */
#include "ext.h"

typedef struct vehicle_parts {
    rodt_wheel_end *ends;
    rodt_finding *findings;
    rodt_advice *advice;
    size_t count;
} vehicle_parts;

static bool to_wheel_end(PyObject *pair, rodt_wheel_end *end, rodt_finding *finding)
{
    PyObject *values;
    PyObject *capsule;
    if (!PyArg_ParseTuple(pair, "OO", &values, &capsule) || !TO_RECORD(rodt_wheel_end, values, end))
        return false;
    const rodt_finding *held = PyCapsule_GetPointer(capsule, FINDING_CAPSULE);
    if (held != NULL)
        *finding = *held;
    return held != NULL;
}

static PyObject *from_advice(const void *all, size_t i)
{
    rodt_advice advice = ((const rodt_advice *)all)[i];
    RODT_ENUM32(rodt_evidence) evidence = RODT_EVIDENCE_NONE;
    const rodt_source *source = rodt_advice_source(advice, &evidence);
    return Py_BuildValue("isNi", (int)advice, rodt_advice_text(advice), FROM_RECORD(rodt_source, source),
                         (int)evidence);
}

static PyObject *combine(const vehicle_parts *parts, unsigned brakes)
{
    rodt_vehicle_finding found;
    memset(py_call_error(), 0, sizeof(rodt_error));
    rodt_status status = rodt_vehicle_combine(parts->ends, parts->count, brakes, parts->findings, parts->advice, &found,
                                              py_call_error());
    if (status != RODT_OK) {
        py_raise_status(status);
        return NULL;
    }
    PyObject *made = FROM_RECORD(rodt_vehicle_finding, &found);
    PY_JSON(report, rodt_vehicle_json_format, &found, parts->ends, parts->count, parts->findings, parts->advice, NULL,
            NULL, 0);
    PyObject *advice = Py_BuildValue("(NN)", py_from_each(parts->count, from_advice, parts->advice), report);
    PyObject *both = made != NULL && advice != NULL ? PySequence_Concat(made, advice) : NULL;
    Py_XDECREF(made);
    Py_XDECREF(advice);
    return both;
}

PyObject *py_vehicle_combine(PyObject *ends, unsigned brakes)
{
    vehicle_parts parts = {0};
    PyObject *made = NULL;
    if (!PyTuple_Check(ends)) {
        PyErr_SetString(PyExc_TypeError, "wheel ends are a tuple");
        return NULL;
    }
    parts.count = (size_t)PyTuple_Size(ends);
    parts.ends = calloc(parts.count + 1, sizeof *parts.ends);
    parts.findings = calloc(parts.count + 1, sizeof *parts.findings);
    parts.advice = calloc(parts.count + 1, sizeof *parts.advice);
    bool valid = parts.ends != NULL && parts.findings != NULL && parts.advice != NULL;
    if (!valid)
        PyErr_NoMemory();
    for (size_t i = 0; valid && i < parts.count; i++)
        valid = to_wheel_end(PyTuple_GetItem(ends, (Py_ssize_t)i), &parts.ends[i], &parts.findings[i]);
    if (valid)
        made = combine(&parts, brakes);
    free(parts.ends);
    free(parts.findings);
    free(parts.advice);
    return made;
}
