/* SPDX-License-Identifier: Apache-2.0 */
/* Findings: a C struct behind a capsule, converted lazily to a tuple, and made again from that tuple. */
#include "ext.h"

static void free_finding(PyObject *capsule)
{
    rodt_finding *finding = PyCapsule_GetPointer(capsule, FINDING_CAPSULE);
    rodt_rules_unref(finding->rules);
    free(finding);
}

PyObject *py_own_finding(rodt_finding *finding)
{
    PyObject *capsule = PyCapsule_New(finding, FINDING_CAPSULE, free_finding);
    if (capsule == NULL)
        free(finding);
    else
        rodt_rules_ref(finding->rules);
    return capsule;
}

static PyObject *from_finding(const rodt_finding *finding)
{
    rodt_finding *copy = malloc(sizeof *copy);
    if (copy == NULL)
        return PyErr_NoMemory();
    *copy = *finding;
    return py_own_finding(copy);
}

static const rodt_rules *law_of(const rodt_rules *rules)
{
    const rodt_rules *law = rodt_rules_law(rules);
    return law != NULL ? law : rules;
}

PyObject *py_finding_values(const rodt_finding *finding)
{
    return py_from_record(rodt_record_find("rodt_finding"), finding, finding->rules);
}

PyObject *py_finding_value(const rodt_finding *finding, int item)
{
    return py_from_member(rodt_record_find("rodt_finding"), item, finding, finding->rules);
}

PyObject *py_finding_from_values(PyObject *values, int row, int own_row, const rodt_rules *rules)
{
    rodt_finding f;
    rodt_limit_answer answer;
    if (!TO_RECORD(rodt_finding, values, &f))
        return NULL;
    f.law_row = row < 0 ? NULL : rodt_rules_limit_at(law_of(rules), (size_t)row);
    f.own_row = own_row < 0 ? NULL : rodt_rules_limit_at(rules, (size_t)own_row);
    if (rodt_rules_find_limit(rules, &f.chamber, f.day, &answer, NULL) == RODT_OK)
        f.source = answer.source, f.law_source = answer.law_source;
    f.rules = rules;
    return from_finding(&f);
}

PyObject *py_finding_json(const rodt_finding *finding)
{
    PY_JSON(made, rodt_finding_json_format, finding, NULL, 0);
    return made;
}

PyObject *py_identification_json(const rodt_clues *clues, const rodt_rules *rules, rodt_date day)
{
    rodt_identification found;
    rodt_status status = rodt_clues_identify(clues, rules, day, &found, py_call_error());
    if (status != RODT_OK) {
        py_raise_status(status);
        return NULL;
    }
    PY_JSON(made, rodt_identification_json_format, &found, rules, day, NULL, 0);
    return made;
}

PyObject *py_judge_row(const rodt_form *text, const rodt_rules *rules)
{
    rodt_finding finding;
    rodt_error error = {.status = RODT_OK};
    rodt_status status = rodt_form_judge_row(text, rules, &finding, &error);
    if (status != RODT_OK) {
        py_raise_status(status);
        return NULL;
    }
    PyObject *unread = error.status == RODT_OK ? Py_BuildValue("") : py_from_error(&error);
    return Py_BuildValue("NN", from_finding(&finding), unread);
}

/* --- Readings as text -------------------------------------------------------------------------------- */

/* Decimal digits where there are at most nine of them: an exact number has no lost blank, and is no tape fraction.
 * Others stay fractions, and are refused as their texts would be. */
static const char *write_number(PyObject *object, const char *field, char point, char *room)
{
    int64_t num;
    int64_t den;
    int64_t power = 1;
    int digits = 0;
    if (!py_to_number(object, field, &num, &den))
        return NULL;
    for (; den > 0 && power % den != 0 && digits < 9; digits++)
        power *= 10;
    if (den == 1)
        snprintf(room, RODT_LENGTH_TEXT_SIZE, "%lld", (long long)num);
    else if (den > 1 && power % den == 0 && num >= 0)
        snprintf(room, RODT_LENGTH_TEXT_SIZE, "%lld%c%0*lld", (long long)(num / den), point, digits,
                 (long long)(num % den * (power / den)));
    else
        snprintf(room, RODT_LENGTH_TEXT_SIZE, "%lld/%lld", (long long)num, (long long)den);
    return room;
}

static const char *write_date(PyObject *object, const char *field, char *room)
{
    rodt_date date;
    bool read = py_to_date(object, field, &date) && rodt_date_format(date, room, RODT_DATE_TEXT_SIZE, NULL) == RODT_OK;
    return read ? room : NULL;
}

static const char *to_field(PyObject *object, rodt_field field, char point, char *room)
{
    const char *name = rodt_field_name(field);
    if (PyUnicode_Check(object))
        return py_to_text(object, name);
    switch ((int)field) {
    case RODT_FIELD_RELEASED:
    case RODT_FIELD_APPLIED:
    case RODT_FIELD_RATED_STROKE:
    case RODT_FIELD_MARKED_LIMIT:
    case RODT_FIELD_PSI:
    case RODT_FIELD_PSI_AFTER:
    case RODT_FIELD_DIVISION:
        return write_number(object, name, point, room);
    case RODT_FIELD_DATE:
        return write_date(object, name, room);
    default:
        PyErr_Format(PyExc_TypeError, "%s is text", name);
        return NULL;
    }
}

PyObject *py_cell_text(PyObject *cell, int field, int decimal_comma)
{
    char room[RODT_LENGTH_TEXT_SIZE];
    const char *text = to_field(cell, (rodt_field)field, decimal_comma ? ',' : '.', room);
    return text == NULL ? NULL : PyUnicode_FromString(text);
}

static bool set_fields(PyObject *const *object, number_texts *room, rodt_form *out)
{
    for (int i = 0; i < RODT_READING_FIELDS; i++) {
        if (object[i] == Py_None)
            continue;
        const char *text = to_field(object[i], (rodt_field)i, out->style.decimal_comma ? ',' : '.', room->text[i]);
        if (text == NULL)
            return false;
        rodt_form_set(out, (rodt_field)i, text);
    }
    return true;
}

static bool to_style(PyObject *tuple, rodt_form *out)
{
    int style[4];
    for (int i = 0; i < 4; i++)
        style[i] = (int)PyLong_AsLong(PyTuple_GetItem(tuple, RODT_READING_FIELDS + i));
    out->style = (rodt_style){.unit = (rodt_unit)style[0], .pressure_unit = (rodt_pressure_unit)style[1],
                              .decimal_comma = style[2] != 0};
    out->date_order = (rodt_date_order)style[3];
    return !PyErr_Occurred() &&
           py_to_date(PyTuple_GetItem(tuple, RODT_READING_FIELDS + 4), "default_date", &out->default_day);
}

bool py_to_reading_text(PyObject *tuple, number_texts *room, rodt_form *out)
{
    memset(out, 0, sizeof *out);
    if (!PyTuple_Check(tuple) || PyTuple_Size(tuple) != RODT_READING_FIELDS + 5) {
        PyErr_SetString(PyExc_TypeError, "a reading is a tuple of texts and their style");
        return false;
    }
    if (!to_style(tuple, out))
        return false;
    PyObject *text[RODT_READING_FIELDS];
    for (int i = 0; i < RODT_READING_FIELDS; i++)
        text[i] = PyTuple_GetItem(tuple, i);
    return set_fields(text, room, out);
}

/* --- Findings of the package --------------------------------------------------------------------------- */

static struct {
    PyObject *type, *verdicts;
    PyObject *kept, *rules; /* names of its members */
} findings;

PyObject *py_finding_class(PyObject *type, PyObject *verdicts)
{
    Py_INCREF(type);
    Py_INCREF(verdicts);
    findings.type = type;
    findings.verdicts = verdicts;
    findings.kept = PyUnicode_InternFromString("_kept");
    findings.rules = PyUnicode_InternFromString("_rules");
    return findings.kept == NULL || findings.rules == NULL ? NULL : py_none();
}

PyObject *py_finding(PyObject *kept, PyObject *rules)
{
    PyObject *made = PyType_GenericAlloc((PyTypeObject *)findings.type, 0);
    if (made != NULL && (PyObject_GenericSetAttr(made, findings.kept, kept) != 0 ||
                         PyObject_GenericSetAttr(made, findings.rules, rules) != 0))
        Py_CLEAR(made);
    return made;
}

/* A capsule of the finding. */
static PyObject *own_judged(const rodt_form *text, PyObject *rules)
{
    PyObject *kept = PyObject_GetAttr(rules, findings.kept);
    const rodt_rules *law = kept == NULL ? NULL : PyCapsule_GetPointer(kept, RULES_CAPSULE);
    Py_XDECREF(kept); /* its Rules holds it */
    if (law == NULL)
        return NULL;
    rodt_finding *finding = malloc(sizeof *finding);
    memset(py_call_error(), 0, sizeof(rodt_error));
    rodt_status status = finding == NULL ? RODT_E_MEMORY : rodt_form_judge(text, law, finding, py_call_error());
    if (status == RODT_OK)
        return py_own_finding(finding);
    free(finding);
    py_raise_status(status);
    return NULL;
}

/* judge(rules, unit, decimal comma, the texts of a reading). SWIG would make a tuple of them first. */
static PyObject *judge(PyObject *module, PyObject *const *given, Py_ssize_t count)
{
    enum { RULES, UNIT, DECIMAL_COMMA, TEXTS };
    number_texts room;
    (void)module;
    if (count != TEXTS + RODT_READING_FIELDS) {
        PyErr_SetString(PyExc_TypeError, "judge takes rules, a unit, a decimal sign and the texts of a reading");
        return NULL;
    }
    rodt_form text = {.style = {.unit = (rodt_unit)PyLong_AsLong(given[UNIT]),
                                .decimal_comma = PyObject_IsTrue(given[DECIMAL_COMMA]) != 0}};
    if (PyErr_Occurred() || !set_fields(given + TEXTS, &room, &text))
        return NULL;
    PyObject *kept = own_judged(&text, given[RULES]);
    PyObject *made = kept == NULL ? NULL : py_finding(kept, given[RULES]);
    Py_XDECREF(kept);
    return made;
}

bool py_add_functions(PyObject *module)
{
    static PyMethodDef functions[] = {{"judge", (PyCFunction)(void (*)(void))judge, METH_FASTCALL, NULL}, {0}};
    return PyModule_AddFunctions(module, functions) == 0;
}

/* One that is no verdict, of a damaged finding, is missing as in every other enumeration. */
static PyObject *verdict_at(rodt_verdict verdict)
{
    if ((size_t)verdict < RODT_VERDICT_END)
        return Py_BuildValue("O", PyTuple_GetItem(findings.verdicts, (Py_ssize_t)verdict));
    PyObject *number = PyLong_FromLong((int)verdict);
    PyErr_SetObject(PyExc_KeyError, number);
    Py_XDECREF(number);
    return NULL;
}

PyObject *py_verdict_of(PyObject *finding)
{
    PyObject *kept = PyObject_GetAttr(finding, findings.kept);
    const rodt_finding *of = kept == NULL ? NULL : PyCapsule_GetPointer(kept, FINDING_CAPSULE);
    PyObject *verdict = of == NULL ? NULL : verdict_at((rodt_verdict)of->verdict);
    Py_XDECREF(kept);
    return verdict;
}
