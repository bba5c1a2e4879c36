/* SPDX-License-Identifier: Apache-2.0 */
/* A vehicle: a list of wheel ends with their findings in, tuples out. */
#include "ext.h"

typedef struct vehicle_parts {
    rodt_wheel_end *ends;
    rodt_finding *findings;
    rodt_advice *advice;
    size_t count;
} vehicle_parts;

/* Position, adjuster, arm length, finding. */
static bool to_wheel_end(PyObject *tuple, rodt_wheel_end *end, rodt_finding *finding)
{
    PyObject *position;
    PyObject *arm;
    PyObject *capsule;
    int adjuster;
    memset(end, 0, sizeof *end);
    if (!PyArg_ParseTuple(tuple, "OiOO", &position, &adjuster, &arm, &capsule))
        return false;
    const rodt_finding *held = PyCapsule_GetPointer(capsule, FINDING_CAPSULE);
    if (held == NULL || !py_to_position(position, &end->position) || !py_to_length(arm, "arm_length", &end->arm_length))
        return false;
    end->adjuster = (rodt_adjuster)adjuster;
    *finding = *held;
    return true;
}

static PyObject *from_remarks(const rodt_axle_finding *axle)
{
    PyObject *list = PyList_New(0);
    char text[RODT_SENTENCE_SIZE];
    for (uint32_t bit = 1; list != NULL && bit <= RODT_AXLE_STEERING_DEAD; bit <<= 1) {
        RODT_ENUM32(rodt_evidence) evidence = RODT_EVIDENCE_NONE;
        if ((axle->mismatches & bit) == 0 || rodt_axle_format(axle, bit, text, sizeof text, NULL) != RODT_OK)
            continue;
        const rodt_source *source = rodt_axle_source(bit, &evidence);
        PyObject *remark = Py_BuildValue("IsNi", bit, text, py_from_source(source), (int)evidence);
        if (remark == NULL || PyList_Append(list, remark) != 0)
            Py_CLEAR(list);
        Py_XDECREF(remark);
    }
    PyObject *tuple = list == NULL ? NULL : PyList_AsTuple(list);
    Py_XDECREF(list);
    return tuple;
}

static long index_or_none(size_t index) { return index == SIZE_MAX ? -1 : (long)index; }

static PyObject *from_axle(const void *all, size_t i)
{
    const rodt_axle_finding *axle = (const rodt_axle_finding *)all + i;
    return Py_BuildValue("iNllNNN", (int)axle->axle, from_remarks(axle), index_or_none(axle->left),
                         index_or_none(axle->right), FROM_EXACT(axle->stroke_difference), FROM_EXACT(axle->al_left),
                         FROM_EXACT(axle->al_right));
}

static PyObject *from_advice(const void *all, size_t i)
{
    rodt_advice advice = ((const rodt_advice *)all)[i];
    RODT_ENUM32(rodt_evidence) evidence = RODT_EVIDENCE_NONE;
    const rodt_source *source = rodt_advice_source(advice, &evidence);
    return Py_BuildValue("isNi", (int)advice, rodt_advice_text(advice), py_from_source(source), (int)evidence);
}

static PyObject *combine(const vehicle_parts *parts, unsigned brakes)
{
    rodt_vehicle_finding found;
    rodt_status status =
        rodt_vehicle_combine(parts->ends, parts->count, brakes, parts->findings, parts->advice, &found, NULL);
    if (status == RODT_E_ARGUMENT) {
        py_raise(status, "",
                 "there is no wheel end, a position is missing or given twice, or there are fewer brakes "
                 "than wheel ends");
        return NULL;
    }
    if (status != RODT_OK) {
        py_raise_status(status);
        return NULL;
    }
    return Py_BuildValue("NIIIIIINN", py_from_count(&found.count), found.in_adjustment, found.out_of_adjustment,
                         found.inoperative, found.undetermined, found.mismatched_axles, found.mixed_days,
                         py_from_each(found.axle_count, from_axle, found.axles),
                         py_from_each(parts->count, from_advice, parts->advice));
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
