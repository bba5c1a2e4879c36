/* SPDX-License-Identifier: Apache-2.0 */
/* A vehicle: a list of wheel ends with their findings in, tuples out. */
#ifndef RODTRAVEL_PYTHON_VEHICLE_H
#define RODTRAVEL_PYTHON_VEHICLE_H

#include "finding.h"

typedef struct vehicle_room {
    rodt_wheel_end *ends;
    rodt_finding *findings;
    rodt_advice *advice;
    size_t count;
} vehicle_room;

/* Position, adjuster, arm length, finding. */
static bool end_of(PyObject *tuple, rodt_wheel_end *end, rodt_finding *finding)
{
    PyObject *position;
    PyObject *arm;
    PyObject *capsule;
    int adjuster;
    memset(end, 0, sizeof *end);
    if (!PyArg_ParseTuple(tuple, "OiOO", &position, &adjuster, &arm, &capsule))
        return false;
    const rodt_finding *kept = PyCapsule_GetPointer(capsule, FINDING_CAPSULE);
    if (kept == NULL || !position_of(position, &end->position) || !length_of(arm, "arm length", &end->arm_length))
        return false;
    end->adjuster = (rodt_adjuster)adjuster;
    *finding = *kept;
    return true;
}

static PyObject *remarks_of(const rodt_axle_finding *axle)
{
    PyObject *list = PyList_New(0);
    char text[RODT_SENTENCE_SIZE];
    for (uint32_t bit = 1; list != NULL && bit <= RODT_AXLE_STEERING_DEAD; bit <<= 1) {
        rodt_evidence evidence = RODT_CHECKED;
        if ((axle->mismatches & bit) == 0 || rodt_axle_format(axle, bit, text, sizeof text) != RODT_OK)
            continue;
        const rodt_source *source = rodt_axle_source(bit, &evidence);
        PyObject *remark = Py_BuildValue("IsNi", bit, text, from_source(source), (int)evidence);
        if (remark == NULL || PyList_Append(list, remark) != 0)
            Py_CLEAR(list);
        Py_XDECREF(remark);
    }
    PyObject *tuple = list == NULL ? NULL : PyList_AsTuple(list);
    Py_XDECREF(list);
    return tuple;
}

static long index_or_none(size_t index) { return index == SIZE_MAX ? -1 : (long)index; }

static PyObject *from_axle(const rodt_axle_finding *axle)
{
    return Py_BuildValue("iNllNNN", (int)axle->axle, remarks_of(axle), index_or_none(axle->left),
                         index_or_none(axle->right), FROM_EXACT(axle->stroke_difference), FROM_EXACT(axle->al_left),
                         FROM_EXACT(axle->al_right));
}

static PyObject *from_axles(const rodt_vehicle_finding *found)
{
    PyObject *axles = PyTuple_New((Py_ssize_t)found->axle_count);
    for (size_t i = 0; axles != NULL && i < found->axle_count; i++) {
        PyObject *axle = from_axle(&found->axles[i]);
        if (axle == NULL)
            Py_CLEAR(axles);
        else
            PyTuple_SetItem(axles, (Py_ssize_t)i, axle);
    }
    return axles;
}

static PyObject *from_advices(const vehicle_room *room)
{
    PyObject *all = PyTuple_New((Py_ssize_t)room->count);
    for (size_t i = 0; all != NULL && i < room->count; i++) {
        rodt_evidence evidence = RODT_CHECKED;
        const rodt_source *source = rodt_advice_source(room->advice[i], &evidence);
        PyObject *one = Py_BuildValue("isNi", (int)room->advice[i], rodt_advice_text(room->advice[i]),
                                      from_source(source), (int)evidence);
        if (one == NULL)
            Py_CLEAR(all);
        else
            PyTuple_SetItem(all, (Py_ssize_t)i, one);
    }
    return all;
}

static PyObject *combine(const vehicle_room *room, unsigned brakes)
{
    rodt_vehicle_finding found;
    rodt_status status =
        rodt_vehicle_combine(room->ends, room->count, brakes, room->findings, room->advice, &found);
    if (status == RODT_E_ARGUMENT) {
        refuse(status, "", "there is no wheel end, a position is not said or stands twice, or there are fewer brakes "
                           "than wheel ends");
        return NULL;
    }
    if (status != RODT_OK) {
        raise_status(status);
        return NULL;
    }
    return Py_BuildValue("NIIIIIINN", from_count(&found.count), found.in_adjustment, found.out_of_adjustment,
                         found.inoperative, found.undetermined, found.mismatched_axles, found.mixed_days, from_axles(&found),
                         from_advices(room));
}

static PyObject *vehicle_combine(PyObject *ends, unsigned brakes)
{
    vehicle_room room = {0};
    PyObject *made = NULL;
    if (!PyTuple_Check(ends)) {
        PyErr_SetString(PyExc_TypeError, "wheel ends are a tuple");
        return NULL;
    }
    room.count = (size_t)PyTuple_Size(ends);
    room.ends = calloc(room.count + 1, sizeof *room.ends);
    room.findings = calloc(room.count + 1, sizeof *room.findings);
    room.advice = calloc(room.count + 1, sizeof *room.advice);
    bool sound = room.ends != NULL && room.findings != NULL && room.advice != NULL;
    if (!sound)
        PyErr_NoMemory();
    for (size_t i = 0; sound && i < room.count; i++)
        sound = end_of(PyTuple_GetItem(ends, (Py_ssize_t)i), &room.ends[i], &room.findings[i]);
    if (sound)
        made = combine(&room, brakes);
    free(room.ends);
    free(room.findings);
    free(room.advice);
    return made;
}

#endif
