/* SPDX-License-Identifier: Apache-2.0 */
/* Findings: kept whole behind a capsule, told as a tuple when somebody looks, and made again from that tuple. */
#ifndef RODTRAVEL_PYTHON_FINDING_H
#define RODTRAVEL_PYTHON_FINDING_H

#include <stdlib.h>

#include "record.h"

static void free_finding(PyObject *capsule) { free(PyCapsule_GetPointer(capsule, FINDING_CAPSULE)); }

/* Takes the finding. The package keeps the rule set alive as long as it. */
static PyObject *keep_finding(rodt_finding *kept)
{
    PyObject *capsule = PyCapsule_New(kept, FINDING_CAPSULE, free_finding);
    if (capsule == NULL)
        free(kept);
    return capsule;
}

static PyObject *from_finding(const rodt_finding *finding)
{
    rodt_finding *kept = malloc(sizeof *kept);
    if (kept == NULL)
        return PyErr_NoMemory();
    *kept = *finding;
    return keep_finding(kept);
}

static const rodt_rules *law_of(const rodt_rules *rules)
{
    const rodt_rules *law = rodt_rules_law(rules);
    return law != NULL ? law : rules;
}

/* Which row of a rule set it is; -1 = none. */
static int row_number(const rodt_rules *rules, const rodt_limit *row)
{
    for (size_t i = 0; row != NULL && i < rodt_rules_limit_count(rules); i++) {
        if (rodt_rules_limit(rules, i) == row)
            return (int)i;
    }
    return -1;
}

static PyObject *finding_values(const rodt_finding *f)
{
    return Py_BuildValue(
        "iiKNNNNNNNNiNNNNNNiiiiN", (int)f->verdict, (int)f->proof, (unsigned long long)f->reasons,
        from_chamber(&f->chamber), FROM_EXACT(f->released), FROM_EXACT(f->applied), FROM_EXACT(f->applied_stroke),
        FROM_EXACT(f->limit), FROM_EXACT(f->law_limit), FROM_EXACT(f->margin), FROM_EXACT(f->long_limit),
        (int)f->unit, FROM_EXACT(f->division), FROM_EXACT(f->probability_over), FROM_EXACT(f->pressure),
        FROM_EXACT(f->pressure_after), from_date(f->day), from_date(f->other_day), (int)f->basis, (int)f->evidence,
        row_number(law_of(f->rules), f->limit_row), row_number(f->rules, f->own_row), from_source(f->source));
}

typedef struct finding_parts {
    int verdict, proof, unit, basis, evidence, row, own_row;
    unsigned long long reasons;
    PyObject *chamber, *source;
    PyObject *exact[11]; /* lengths as in exact_of, then chance and two pressures */
    PyObject *day, *other_day;
} finding_parts;

static bool read_parts(PyObject *values, finding_parts *p)
{
    PyObject **e = p->exact;
    return PyArg_ParseTuple(values, "iiKOOOOOOOOiOOOOOOiiiiO", &p->verdict, &p->proof, &p->reasons, &p->chamber, &e[0],
                            &e[1], &e[2], &e[3], &e[4], &e[5], &e[6], &p->unit, &e[7], &e[8], &e[9], &e[10], &p->day,
                            &p->other_day, &p->basis, &p->evidence, &p->row, &p->own_row, &p->source);
}

static bool exact_of(const finding_parts *p, rodt_finding *f)
{
    rodt_length *const lengths[] = {&f->released, &f->applied, &f->applied_stroke, &f->limit,
                                    &f->law_limit, &f->margin, &f->long_limit, &f->division};
    for (size_t i = 0; i < 8; i++) {
        if (!length_of(p->exact[i], "finding", lengths[i]))
            return false;
    }
    return ratio_of(p->exact[8], "finding", &f->probability_over) &&
           pressure_of(p->exact[9], "finding", &f->pressure) &&
           pressure_of(p->exact[10], "finding", &f->pressure_after) && date_of(p->day, "finding", &f->day) &&
           date_of(p->other_day, "finding", &f->other_day) && chamber_of(p->chamber, &f->chamber);
}

/* The rule set and the tables are those that judged; the package has looked. */
static PyObject *finding_from_values(PyObject *values, const rodt_rules *rules)
{
    finding_parts p;
    rodt_finding f;
    rodt_limit_answer answer;
    memset(&f, 0, sizeof f);
    if (!read_parts(values, &p) || !exact_of(&p, &f))
        return NULL;
    f.verdict = (rodt_verdict)p.verdict;
    f.proof = (rodt_proof)p.proof;
    f.reasons = p.reasons;
    f.unit = (rodt_unit)p.unit;
    f.basis = (rodt_basis)p.basis;
    f.evidence = (rodt_evidence)p.evidence;
    f.limit_row = p.row < 0 ? NULL : rodt_rules_limit(law_of(rules), (size_t)p.row);
    f.own_row = p.own_row < 0 ? NULL : rodt_rules_limit(rules, (size_t)p.own_row);
    if (p.source != Py_None && rodt_rules_find_limit(rules, &f.chamber, f.day, &answer) == RODT_OK)
        f.source = answer.source;
    f.rules = rules;
    return from_finding(&f);
}

/* --- Readings as text -------------------------------------------------------------------------------- */

#define FORM_TEXTS 14

/* Where numbers are written so that they are read like text. */
typedef struct form_room {
    char text[FORM_TEXTS][RODT_LENGTH_TEXT_SIZE];
} form_room;

static const char *const form_fields[FORM_TEXTS] = {
    "chamber",  "released",       "applied", "stroke class", "rated stroke", "marked limit", "pressure",
    "pressure after", "division", "day",    "unit",         "engine",       "spring brake", "drum"};

static const char *form_number(PyObject *object, const char *field, char *room)
{
    int64_t num;
    int64_t den;
    if (!number_of(object, field, &num, &den))
        return NULL;
    if (den == 1)
        snprintf(room, RODT_LENGTH_TEXT_SIZE, "%lld", (long long)num);
    else
        snprintf(room, RODT_LENGTH_TEXT_SIZE, "%lld/%lld", (long long)num, (long long)den);
    return room;
}

static const char *form_date(PyObject *object, char *room)
{
    rodt_date date;
    return date_of(object, "day", &date) && rodt_date_format(date, room, RODT_DATE_TEXT_SIZE) == RODT_OK ? room : NULL;
}

static bool is_number_field(int i) { return i == 1 || i == 2 || (i >= 4 && i <= 8); }

static bool form_text(PyObject *object, int i, form_room *room, const char **out)
{
    *out = NULL;
    if (object == Py_None)
        return true;
    if (PyUnicode_Check(object))
        *out = text_of(object, form_fields[i]);
    else if (is_number_field(i))
        *out = form_number(object, form_fields[i], room->text[i]);
    else if (i == 9)
        *out = form_date(object, room->text[i]);
    else
        PyErr_Format(PyExc_TypeError, "%s is text", form_fields[i]);
    return *out != NULL;
}

/* Chamber, released, applied and pressure alone: the usual wheel end. */
static bool short_form_of(PyObject *tuple, form_room *room, rodt_reading_text *out)
{
    memset(out, 0, sizeof *out);
    return form_text(PyTuple_GetItem(tuple, 0), 0, room, &out->chamber) &&
           form_text(PyTuple_GetItem(tuple, 1), 1, room, &out->released) &&
           form_text(PyTuple_GetItem(tuple, 2), 2, room, &out->applied) &&
           form_text(PyTuple_GetItem(tuple, 3), 6, room, &out->psi);
}

/* A tuple of the fourteen texts, then unit, decimal comma, order of dates and the default day. */
static bool form_of(PyObject *tuple, form_room *room, rodt_reading_text *out)
{
    const char *text[FORM_TEXTS];
    int style[3];
    if (PyTuple_Check(tuple) && PyTuple_Size(tuple) == 4)
        return short_form_of(tuple, room, out);
    if (!PyTuple_Check(tuple) || PyTuple_Size(tuple) != FORM_TEXTS + 4) {
        PyErr_SetString(PyExc_TypeError, "a reading has fourteen texts and their style");
        return false;
    }
    for (int i = 0; i < FORM_TEXTS; i++) {
        if (!form_text(PyTuple_GetItem(tuple, i), i, room, &text[i]))
            return false;
    }
    for (int i = 0; i < 3; i++)
        style[i] = (int)PyLong_AsLong(PyTuple_GetItem(tuple, FORM_TEXTS + i));
    *out = (rodt_reading_text){
        .chamber = text[0], .released = text[1], .applied = text[2], .stroke_class = text[3], .rated_stroke = text[4],
        .marked_limit = text[5], .psi = text[6], .psi_after = text[7], .division = text[8], .date = text[9],
        .unit = text[10], .engine = text[11], .spring_brake = text[12], .drum = text[13],
        .style = {.unit = (rodt_unit)style[0], .decimal_comma = style[1] != 0},
        .date_order = (rodt_date_order)style[2]};
    return !PyErr_Occurred() && date_of(PyTuple_GetItem(tuple, FORM_TEXTS + 3), "default day", &out->default_day);
}

#endif
