/* SPDX-License-Identifier: Apache-2.0 */
/* Records of the library as tuples and back, by the library's own description of them. */
#include "ext.h"

/* Reserves and memory do not cross, and a rule set has a capsule of its own. */
static bool crosses(const rodt_member *member)
{
    return member->kind != RODT_MEMBER_KIND_RESERVE && member->kind != RODT_MEMBER_KIND_POINTER &&
           member->kind != RODT_MEMBER_KIND_RULES;
}

static size_t crossing_count(const rodt_record *record)
{
    size_t count = 0;
    for (size_t i = 0; i < rodt_member_count(record); i++)
        count += crosses(rodt_member_at(record, i));
    return count;
}

static int64_t signed_at(const void *at, uint32_t size)
{
    int64_t wide = 0;
    int32_t middle = 0;
    int16_t narrow = 0;
    if (size == sizeof wide)
        return memcpy(&wide, at, sizeof wide), wide;
    if (size == sizeof middle)
        return memcpy(&middle, at, sizeof middle), middle;
    if (size == sizeof narrow)
        return memcpy(&narrow, at, sizeof narrow), narrow;
    return *(const int8_t *)at;
}

static uint64_t unsigned_at(const void *at, uint32_t size)
{
    uint64_t value = (uint64_t)signed_at(at, size);
    return size == sizeof value ? value : value & (((uint64_t)1 << 8 * size) - 1);
}

/* A vehicle's day of build can be its year alone. */
static PyObject *from_day(const rodt_date *date)
{
    return rodt_date_given(*date) && date->month == 0 ? PyLong_FromLong(date->year) : py_from_date(*date);
}

static PyObject *from_exact(const void *at)
{
    int64_t part[2]; /* lengths, pressures and ratios alike */
    memcpy(part, at, sizeof part);
    return py_from_parts(part[0], part[1]);
}

static PyObject *from_number(const rodt_member *member, const void *at)
{
    if (member->kind == RODT_MEMBER_KIND_BOOLEAN)
        return PyBool_FromLong(*(const bool *)at);
    if (member->kind == RODT_MEMBER_KIND_ENUMERATOR || member->kind == RODT_MEMBER_KIND_INTEGER)
        return PyLong_FromLongLong(signed_at(at, member->size));
    uint64_t value = unsigned_at(at, member->size);
    if (member->kind == RODT_MEMBER_KIND_INDEX && value == SIZE_MAX)
        return py_none();
    return PyLong_FromUnsignedLongLong(value);
}

/* Which row of a rule set or of its law it is; -1 = none. */
static long row_number(const rodt_rules *rules, const rodt_limit *row)
{
    for (; row != NULL && rules != NULL; rules = rodt_rules_law(rules)) {
        for (size_t i = 0; i < rodt_rules_limit_count(rules); i++)
            if (rodt_rules_limit_at(rules, i) == row)
                return (long)i;
    }
    return -1;
}

static PyObject *from_pointer(const rodt_member *member, const void *at, const rodt_rules *rows_of)
{
    const void *to;
    memcpy(&to, at, sizeof to);
    if (rows_of != NULL && strcmp(rodt_record_name(member->record), "rodt_limit") == 0)
        return PyLong_FromLong(row_number(rows_of, to));
    if (to == NULL)
        return py_none();
    return member->record != NULL ? py_from_record(member->record, to, rows_of) : PyUnicode_FromString(to);
}

static PyObject *from_value(const rodt_member *member, const void *at, const rodt_rules *rows_of)
{
    switch ((int)member->kind) {
    case RODT_MEMBER_KIND_LENGTH:
    case RODT_MEMBER_KIND_PRESSURE:
    case RODT_MEMBER_KIND_RATIO:
        return from_exact(at);
    case RODT_MEMBER_KIND_DATE:
        return from_day(at);
    case RODT_MEMBER_KIND_POSITION:
        return py_from_record(rodt_record_find("rodt_position"), at, rows_of);
    case RODT_MEMBER_KIND_TEXT:
        return py_from_text(at);
    case RODT_MEMBER_KIND_TEXT_POINTER:
    case RODT_MEMBER_KIND_RECORD_POINTER:
        return from_pointer(member, at, rows_of);
    case RODT_MEMBER_KIND_RECORD:
        return py_from_record(member->record, at, rows_of);
    default:
        return from_number(member, at);
    }
}

/* An array is a tuple of the elements that are used. */
static PyObject *from_member(const rodt_record *record, const rodt_member *member, const char *value,
                             const rodt_rules *rows_of)
{
    if (member->count == 1)
        return from_value(member, value + member->offset, rows_of);
    size_t count = member->count;
    if (member->used != NULL) {
        const rodt_member *used = rodt_member_find(record, member->used);
        count = unsigned_at(value + used->offset, used->size);
    }
    PyObject *tuple = PyTuple_New((Py_ssize_t)count);
    for (size_t i = 0; tuple != NULL && i < count; i++)
        py_tuple_put(&tuple, i, from_value(member, value + member->offset + i * member->size, rows_of));
    return tuple;
}

PyObject *py_from_record(const rodt_record *record, const void *value, const rodt_rules *rows_of)
{
    if (value == NULL)
        return py_none();
    size_t sentences = py_sentence_count(record);
    PyObject *tuple = PyTuple_New((Py_ssize_t)(crossing_count(record) + sentences));
    size_t item = 0;
    for (size_t i = 0; tuple != NULL && i < rodt_member_count(record); i++) {
        const rodt_member *member = rodt_member_at(record, i);
        if (crosses(member))
            py_tuple_put(&tuple, item++, from_member(record, member, value, rows_of));
    }
    for (size_t i = 0; tuple != NULL && i < sentences; i++)
        py_tuple_put(&tuple, item++, py_sentence_at(record, i, value));
    return tuple;
}

PyObject *py_from_member(const rodt_record *record, int item, const void *value, const rodt_rules *rows_of)
{
    for (size_t i = 0; i < rodt_member_count(record); i++) {
        const rodt_member *member = rodt_member_at(record, i);
        if (crosses(member) && item-- == 0)
            return from_member(record, member, value, rows_of);
    }
    PyErr_SetString(PyExc_IndexError, "the record has no such member");
    return NULL;
}

/* Name, kind, the enumeration or record, and whether it is an array, or its numbers are bits. */
static PyObject *layout_of(const rodt_member *member)
{
    const char *of =
        member->enumeration != NULL ? rodt_enumeration_name(member->enumeration) : rodt_record_name(member->record);
    if (member->kind == RODT_MEMBER_KIND_POSITION)
        of = "rodt_position";
    return Py_BuildValue("sssN", member->name, rodt_member_kind_name((rodt_member_kind)member->kind), of,
                         PyBool_FromLong(member->count > 1 || rodt_enumeration_is_bits(member->enumeration)));
}

PyObject *py_record_layout(const char *name)
{
    const rodt_record *record = rodt_record_find(name);
    PyObject *tuple = PyTuple_New((Py_ssize_t)crossing_count(record));
    size_t item = 0;
    for (size_t i = 0; tuple != NULL && i < rodt_member_count(record); i++)
        if (crosses(rodt_member_at(record, i)))
            py_tuple_put(&tuple, item++, layout_of(rodt_member_at(record, i)));
    return tuple;
}

/* --- Back -------------------------------------------------------------------------------------------- */

static bool to_day(PyObject *object, const char *field, rodt_date *out)
{
    int64_t year = 0;
    if (!PyLong_CheckExact(object))
        return py_to_date(object, field, out);
    if (!py_to_int64(object, field, &year))
        return false;
    if (year < 1900 || year > 2199)
        return py_raise(RODT_E_ARGUMENT, field, "the year is not between 1900 and 2199");
    out->year = (int16_t)year;
    return true;
}

/* A number that does not fit reads back as another one. */
static bool to_number(const rodt_member *member, PyObject *object, void *at)
{
    PyObject *index = PyNumber_Index(object);
    if (index == NULL)
        return false;
    uint64_t value = PyLong_AsUnsignedLongLongMask(index);
    Py_DECREF(index);
    if (PyErr_Occurred())
        return false;
    uint8_t *bytes = at;
    uint16_t narrow = (uint16_t)value;
    uint32_t middle = (uint32_t)value;
    if (member->size == 1)
        *bytes = (uint8_t)value;
    else
        memcpy(at, member->size == 2 ? (void *)&narrow : member->size == 4 ? (void *)&middle : &value, member->size);
    PyObject *stored = from_number(member, at);
    int same = stored == NULL ? -1 : PyObject_RichCompareBool(stored, object, Py_EQ);
    Py_XDECREF(stored);
    return same == 1 || (same == 0 && py_raise(RODT_E_RANGE, member->name, "the number does not fit"));
}

static bool to_text(const rodt_member *member, PyObject *object, char *at)
{
    const char *text = PyUnicode_Check(object) ? py_to_text(object, member->name) : NULL;
    if (text != NULL && strlen(text) < member->size) {
        memcpy(at, text, strlen(text));
        return true;
    }
    return !PyErr_Occurred() && py_raise(RODT_E_ARGUMENT, member->name, "this is no text, or a text that is too long");
}

/* A time can be text, too: "2:05". */
static bool to_ratio(const rodt_member *member, PyObject *object, void *at)
{
    rodt_error error = {.status = RODT_OK};
    if (strcmp(member->unit, "s") != 0 || !PyUnicode_Check(object))
        return py_to_ratio(object, member->name, at);
    const char *text = py_to_text(object, member->name);
    return text != NULL &&
           (rodt_seconds_parse(text, at, &error) == RODT_OK || py_raise_as(&error, member->name));
}

static bool to_value(const rodt_member *member, PyObject *object, void *at)
{
    if (object == Py_None)
        return true;
    switch ((int)member->kind) {
    case RODT_MEMBER_KIND_LENGTH:
        return py_to_length(object, member->name, at);
    case RODT_MEMBER_KIND_PRESSURE:
        return py_to_pressure(object, member->name, at);
    case RODT_MEMBER_KIND_RATIO:
        return to_ratio(member, object, at);
    case RODT_MEMBER_KIND_DATE:
        return to_day(object, member->name, at);
    case RODT_MEMBER_KIND_POSITION:
        return py_to_record(rodt_record_find("rodt_position"), object, at);
    case RODT_MEMBER_KIND_TEXT:
        return to_text(member, object, at);
    case RODT_MEMBER_KIND_RECORD:
        return py_to_record(member->record, object, at);
    case RODT_MEMBER_KIND_TEXT_POINTER:
    case RODT_MEMBER_KIND_RECORD_POINTER: /* into memory of the library */
        return true;
    default:
        return to_number(member, object, at);
    }
}

static bool to_member(const rodt_member *member, PyObject *object, char *at)
{
    if (member->count == 1)
        return to_value(member, object, at);
    for (Py_ssize_t i = 0; PyTuple_Check(object) && i < PyTuple_Size(object) && i < (Py_ssize_t)member->count; i++)
        if (!to_value(member, PyTuple_GetItem(object, i), at + (size_t)i * member->size))
            return false;
    return true;
}

bool py_to_record(const rodt_record *record, PyObject *tuple, void *out)
{
    memset(out, 0, rodt_record_size(record));
    if (!PyTuple_Check(tuple) || (size_t)PyTuple_Size(tuple) < crossing_count(record)) {
        PyErr_Format(PyExc_TypeError, "a %s is a tuple of its members", rodt_record_name(record) + strlen("rodt_"));
        return false;
    }
    Py_ssize_t item = 0;
    for (size_t i = 0; i < rodt_member_count(record); i++) {
        const rodt_member *member = rodt_member_at(record, i);
        if (crosses(member) && !to_member(member, PyTuple_GetItem(tuple, item++), (char *)out + member->offset))
            return false;
    }
    return true;
}

/* --- Rule sets --------------------------------------------------------------------------------------- */

/* rodt_rules_unref leaves the compiled-in ones alone. */
static void free_rules(PyObject *capsule) { rodt_rules_unref(PyCapsule_GetPointer(capsule, RULES_CAPSULE)); }

PyObject *py_from_rules(const rodt_rules *rules)
{
    if (rules == NULL)
        return py_none();
    return PyCapsule_New((void *)(uintptr_t)rules, RULES_CAPSULE, free_rules);
}

static PyObject *id_of(const rodt_rules *law) { return py_from_text(law == NULL ? NULL : rodt_rules_id(law)); }

PyObject *py_law_id(const rodt_rules *rules) { return id_of(rodt_rules_law(rules)); }

PyObject *py_air_law_id(const rodt_rules *rules) { return id_of(rodt_rules_air_law(rules)); }

PyObject *py_chamber_check(const rodt_chamber *chamber)
{
    rodt_error found = {.status = RODT_OK};
    if (rodt_chamber_check(chamber, &found) == RODT_OK)
        return FROM_RECORD(rodt_chamber, chamber);
    rodt_error error = found;
    py_raise_as(&error, strcmp(found.field, "chamber") == 0 ? "size" : found.field); /* as the argument is called */
    return NULL;
}
