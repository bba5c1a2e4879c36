/* SPDX-License-Identifier: Apache-2.0 */
/* Structs of the library as tuples, member by member in the order of the header, and back where one is given. */
#ifndef RODTRAVEL_PYTHON_RECORD_H
#define RODTRAVEL_PYTHON_RECORD_H

#include "value.h"

#define RULES_CAPSULE "rodtravel.rules"
#define FINDING_CAPSULE "rodtravel.finding"

/* --- Rule sets and rows ------------------------------------------------------------------------------ */

static void free_rules(PyObject *capsule) { rodt_rules_free(PyCapsule_GetPointer(capsule, RULES_CAPSULE)); }

/* rodt_rules_free leaves the compiled-in ones alone. */
static PyObject *from_rules(const rodt_rules *rules)
{
    if (rules == NULL)
        Py_RETURN_NONE;
    return PyCapsule_New((void *)(uintptr_t)rules, RULES_CAPSULE, free_rules);
}

static PyObject *from_source(const rodt_source *source)
{
    if (source == NULL)
        Py_RETURN_NONE;
    return Py_BuildValue("ssssss", source->id, source->body, source->document, source->section, source->edition,
                         source->address);
}

static PyObject *from_limit(const rodt_limit *row)
{
    if (row == NULL)
        Py_RETURN_NONE;
    return Py_BuildValue("iisNNNsNNNNi", (int)row->family, (int)row->stroke_class, row->size,
                         FROM_EXACT(row->rated_stroke), from_mm(row->rated_stroke_mm), FROM_EXACT(row->limit),
                         row->published, from_mm(row->printed_mm), from_date(row->from), from_date(row->until),
                         from_source(row->source), (int)row->evidence);
}

static PyObject *from_chamber_row(const rodt_chamber_row *row)
{
    if (row == NULL)
        Py_RETURN_NONE;
    return Py_BuildValue("isNNNN", (int)row->family, row->size, FROM_EXACT(row->outside_diameter),
                         from_mm(row->outside_diameter_mm), FROM_EXACT(row->standard_rated_stroke),
                         from_source(row->source));
}

static PyObject *from_volume_row(const rodt_volume_row *row)
{
    if (row == NULL)
        Py_RETURN_NONE;
    return Py_BuildValue("sNNNN", row->size, FROM_EXACT(row->stroke_from), FROM_EXACT(row->stroke_until),
                         FROM_EXACT(row->volume), from_source(row->source));
}

static PyObject *from_answer(const rodt_limit_answer *answer)
{
    return Py_BuildValue("iNNNNNiNNN", (int)answer->basis, FROM_EXACT(answer->limit), FROM_EXACT(answer->law_limit),
                         from_limit(answer->row), from_limit(answer->own_row), from_source(answer->source),
                         (int)answer->evidence, PyBool_FromLong(answer->assumed_clamp),
                         PyBool_FromLong(answer->assumed_standard), PyBool_FromLong(answer->conflicting_marks));
}

/* --- Chambers and wheel ends ------------------------------------------------------------------------- */

static PyObject *from_chamber(const rodt_chamber *chamber)
{
    return Py_BuildValue("iiNNNN", (int)chamber->family, (int)chamber->stroke_class, none_or(chamber->size),
                         none_or(chamber->spring_size), FROM_EXACT(chamber->rated_stroke),
                         FROM_EXACT(chamber->marked_limit));
}

static bool size_of(PyObject *object, char *out)
{
    if (object == Py_None)
        return true;
    const char *text = PyUnicode_Check(object) ? text_of(object, "size") : NULL;
    if (text == NULL || strlen(text) >= RODT_SIZE_TEXT_SIZE)
        return !PyErr_Occurred() &&
               refuse(RODT_E_UNKNOWN_CHAMBER, "size", "a size is text: a type number or one letter");
    snprintf(out, RODT_SIZE_TEXT_SIZE, "%s", text);
    return true;
}

/* The tuple of from_chamber. */
static bool chamber_of(PyObject *object, rodt_chamber *out)
{
    int family;
    int stroke_class;
    PyObject *size;
    PyObject *spring;
    PyObject *rated;
    PyObject *marked;
    memset(out, 0, sizeof *out);
    if (!PyArg_ParseTuple(object, "iiOOOO", &family, &stroke_class, &size, &spring, &rated, &marked))
        return false;
    out->family = (rodt_family)family;
    out->stroke_class = (rodt_stroke_class)stroke_class;
    return size_of(size, out->size) && size_of(spring, out->spring_size) &&
           length_of(rated, "rated stroke", &out->rated_stroke) &&
           length_of(marked, "marked limit", &out->marked_limit);
}

static PyObject *from_position(rodt_position position) { return Py_BuildValue("ii", position.axle, position.side); }

static bool position_of(PyObject *object, rodt_position *out)
{
    return PyArg_ParseTuple(object, "hh", &out->axle, &out->side);
}

static PyObject *from_tally(const rodt_tally *tally)
{
    return Py_BuildValue("IIIII", tally->brakes, tally->full, tally->half, tally->unknown, tally->inoperative);
}

static bool tally_of(PyObject *object, rodt_tally *out)
{
    int64_t part[5];
    memset(out, 0, sizeof *out);
    if (!PyTuple_Check(object) || PyTuple_Size(object) != 5) {
        PyErr_SetString(PyExc_TypeError, "a tally has five numbers");
        return false;
    }
    for (int i = 0; i < 5; i++) {
        if (!long_of(PyTuple_GetItem(object, i), "tally", &part[i]))
            return false;
        if (part[i] < 0 || part[i] > RODT_BRAKES_MAX)
            return refuse(RODT_E_ARGUMENT, "tally", "a number of brakes is 0 to 1 000 000 000");
    }
    *out = (rodt_tally){.brakes = (uint32_t)part[0], .full = (uint32_t)part[1], .half = (uint32_t)part[2],
                        .unknown = (uint32_t)part[3], .inoperative = (uint32_t)part[4]};
    return true;
}

static PyObject *from_count(const rodt_count *count)
{
    char text[RODT_SENTENCE_SIZE];
    if (rodt_count_format(count, text, sizeof text) != RODT_OK)
        text[0] = '\0';
    return Py_BuildValue("iIINNNNNNIs", (int)count->outcome, count->brakes, count->unmeasured,
                         from_tally(&count->tally), FROM_EXACT(count->defective), FROM_EXACT(count->share),
                         FROM_EXACT(count->worst_share), FROM_EXACT(count->known_share), FROM_EXACT(count->criterion),
                         count->whole_needed, text);
}

/* --- Identification ---------------------------------------------------------------------------------- */

static PyObject *from_candidate(const rodt_candidate *candidate)
{
    return Py_BuildValue("NNNNII", from_chamber(&candidate->chamber), FROM_EXACT(candidate->limit),
                         FROM_EXACT(candidate->diameter), FROM_EXACT(candidate->diameter_distance),
                         candidate->clues_for, candidate->clues_against);
}

static PyObject *from_identification(const rodt_identification *found)
{
    PyObject *candidates = PyTuple_New((Py_ssize_t)found->count);
    for (size_t i = 0; candidates != NULL && i < found->count; i++) {
        PyObject *candidate = from_candidate(&found->candidates[i]);
        if (candidate == NULL)
            Py_CLEAR(candidates);
        else
            PyTuple_SetItem(candidates, (Py_ssize_t)i, candidate);
    }
    return candidates == NULL ? NULL
                              : Py_BuildValue("NNIi", candidates, FROM_EXACT(found->strict_limit),
                                              found->contradiction, (int)found->settle_by);
}

static bool clues_of(PyObject *object, rodt_clues *out)
{
    PyObject *stamp;
    PyObject *rated;
    PyObject *diameter;
    PyObject *division;
    int family;
    int port;
    int tag;
    memset(out, 0, sizeof *out);
    if (!PyArg_ParseTuple(object, "OiiiOOO", &stamp, &family, &port, &tag, &rated, &diameter, &division))
        return false;
    out->family = (rodt_family)family;
    out->port = (rodt_port)port;
    out->tag = (rodt_tag)tag;
    return (stamp == Py_None || chamber_of(stamp, &out->stamp)) &&
           length_of(rated, "rated stroke", &out->rated_stroke) &&
           length_of(diameter, "diameter", &out->diameter) &&
           length_of(division, "diameter division", &out->diameter_division);
}

#endif
