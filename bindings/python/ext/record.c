/* SPDX-License-Identifier: Apache-2.0 */
/* Structs of the library as tuples, and back. */
#include "ext.h"

/* --- Rule sets and rows ------------------------------------------------------------------------------ */

/* rodt_rules_unref leaves the compiled-in ones alone. */
static void free_rules(PyObject *capsule) { rodt_rules_unref(PyCapsule_GetPointer(capsule, RULES_CAPSULE)); }

PyObject *py_from_rules(const rodt_rules *rules)
{
    if (rules == NULL)
        Py_RETURN_NONE;
    return PyCapsule_New((void *)(uintptr_t)rules, RULES_CAPSULE, free_rules);
}

PyObject *py_from_source(const rodt_source *source)
{
    if (source == NULL)
        Py_RETURN_NONE;
    return Py_BuildValue("ssssss", source->id, source->body, source->document, source->section, source->edition,
                         source->address);
}

PyObject *py_from_limit(const rodt_limit *row)
{
    if (row == NULL)
        Py_RETURN_NONE;
    return Py_BuildValue("iisNNNsNNNNi", (int)row->family, (int)row->stroke_class, row->size,
                         FROM_EXACT(row->rated_stroke), py_from_mm(row->rated_stroke_mm), FROM_EXACT(row->limit),
                         row->published, py_from_mm(row->printed_mm), py_from_date(row->from), py_from_date(row->until),
                         py_from_source(row->source), (int)row->evidence);
}

PyObject *py_from_chamber_row(const rodt_chamber_row *row)
{
    if (row == NULL)
        Py_RETURN_NONE;
    return Py_BuildValue("isNNNN", (int)row->family, row->size, FROM_EXACT(row->outside_diameter),
                         py_from_mm(row->outside_diameter_mm), FROM_EXACT(row->standard_rated_stroke),
                         py_from_source(row->source));
}

PyObject *py_from_volume_row(const rodt_volume_row *row)
{
    if (row == NULL)
        Py_RETURN_NONE;
    return Py_BuildValue("sNNNN", row->size, FROM_EXACT(row->stroke_from), FROM_EXACT(row->stroke_until),
                         FROM_EXACT(row->volume), py_from_source(row->source));
}

PyObject *py_from_limit_answer(const rodt_limit_answer *answer)
{
    return Py_BuildValue("iNNNNNiNNN", (int)answer->basis, FROM_EXACT(answer->limit), FROM_EXACT(answer->law_limit),
                         py_from_limit(answer->row), py_from_limit(answer->own_row), py_from_source(answer->source),
                         (int)answer->evidence, PyBool_FromLong(answer->assumed_clamp),
                         PyBool_FromLong(answer->assumed_standard), PyBool_FromLong(answer->conflicting_marks));
}

PyObject *py_law_id(const rodt_rules *rules)
{
    const rodt_rules *law = rodt_rules_law(rules);
    return py_from_text(law == NULL ? NULL : rodt_rules_id(law));
}

/* --- Chambers and wheel ends ------------------------------------------------------------------------- */

PyObject *py_from_chamber(const rodt_chamber *chamber)
{
    return Py_BuildValue("iiNNNN", (int)chamber->family, (int)chamber->stroke_class, py_from_text(chamber->size),
                         py_from_text(chamber->spring_size), FROM_EXACT(chamber->rated_stroke),
                         FROM_EXACT(chamber->marked_limit));
}

static bool to_size(PyObject *object, char *out)
{
    if (object == Py_None)
        return true;
    const char *text = PyUnicode_Check(object) ? py_to_text(object, "size") : NULL;
    if (text == NULL || strlen(text) >= RODT_SIZE_TEXT_SIZE)
        return !PyErr_Occurred() &&
               py_raise(RODT_E_UNKNOWN_CHAMBER, "size", "a size is text: a type number or one letter");
    snprintf(out, RODT_SIZE_TEXT_SIZE, "%s", text);
    return true;
}

/* The tuple of py_from_chamber. */
bool py_to_chamber(PyObject *object, rodt_chamber *out)
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
    return to_size(size, out->size) && to_size(spring, out->spring_size) &&
           py_to_length(rated, "rated_stroke", &out->rated_stroke) &&
           py_to_length(marked, "marked_limit", &out->marked_limit);
}

PyObject *py_chamber_check(const rodt_chamber *chamber) { return py_from_chamber(chamber); }

PyObject *py_from_position(rodt_position position) { return Py_BuildValue("ii", position.axle, position.side); }

bool py_to_position(PyObject *object, rodt_position *out)
{
    return PyArg_ParseTuple(object, "hh", &out->axle, &out->side);
}

PyObject *py_from_tally(const rodt_tally *tally)
{
    return Py_BuildValue("IIIII", tally->brakes, tally->full, tally->half, tally->unknown, tally->inoperative);
}

bool py_to_tally(PyObject *object, rodt_tally *out)
{
    int64_t part[5];
    memset(out, 0, sizeof *out);
    if (!PyTuple_Check(object) || PyTuple_Size(object) != 5) {
        PyErr_SetString(PyExc_TypeError, "a tally has five numbers");
        return false;
    }
    for (int i = 0; i < 5; i++) {
        if (!py_to_int64(PyTuple_GetItem(object, i), "tally", &part[i]))
            return false;
        if (part[i] < 0 || part[i] > RODT_BRAKES_MAX)
            return py_raise(RODT_E_ARGUMENT, "tally", "a number of brakes is 0 to 1 000 000 000");
    }
    *out = (rodt_tally){.brakes = (uint32_t)part[0],
                        .full = (uint32_t)part[1],
                        .half = (uint32_t)part[2],
                        .unknown = (uint32_t)part[3],
                        .inoperative = (uint32_t)part[4]};
    return true;
}

PyObject *py_from_count(const rodt_count *count)
{
    char text[RODT_SENTENCE_SIZE];
    if (rodt_count_format(count, text, sizeof text, NULL) != RODT_OK)
        text[0] = '\0';
    return Py_BuildValue("iIINNNNNNIs", (int)count->outcome, count->brakes, count->unmeasured,
                         py_from_tally(&count->tally), FROM_EXACT(count->defective), FROM_EXACT(count->share),
                         FROM_EXACT(count->worst_share), FROM_EXACT(count->known_share), FROM_EXACT(count->criterion),
                         count->whole_needed, text);
}

/* --- Identification ---------------------------------------------------------------------------------- */

static PyObject *from_candidate(const void *all, size_t i)
{
    const rodt_candidate *candidate = (const rodt_candidate *)all + i;
    return Py_BuildValue("NNNNII", py_from_chamber(&candidate->chamber), FROM_EXACT(candidate->limit),
                         FROM_EXACT(candidate->diameter), FROM_EXACT(candidate->diameter_distance),
                         candidate->clues_for, candidate->clues_against);
}

PyObject *py_from_identification(const rodt_identification *found)
{
    PyObject *candidates = py_from_each(found->count, from_candidate, found->candidates);
    return candidates == NULL ? NULL
                              : Py_BuildValue("NNIi", candidates, FROM_EXACT(found->strict_limit), found->contradiction,
                                              (int)found->next_observation);
}

bool py_to_clues(PyObject *object, rodt_clues *out)
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
    return (stamp == Py_None || py_to_chamber(stamp, &out->stamp)) &&
           py_to_length(rated, "rated_stroke", &out->rated_stroke) &&
           py_to_length(diameter, "diameter", &out->diameter) &&
           py_to_length(division, "diameter_division", &out->diameter_division);
}
