/* SPDX-License-Identifier: Apache-2.0 */
/* How values look in Python: exact numbers are fractions.Fraction, days are datetime.date, structs are tuples that the
 * package turns into records, enumerators are their numbers. */
%begin %{
#define PY_SSIZE_T_CLEAN
%}

%{
#include "value.h"
#include "record.h"
#include "finding.h"
#include "vehicle.h"
#include "air.h"
#include "column.h"
#include "arrow_in.h"
#include "judge_columns.h"
#include "arrow_out.h"
%}

%init %{
  if (!find_classes()) {
#if SWIG_VERSION >= 0x040400
    return -1;
#else
    return NULL;
#endif
  }
%}

/* Their sentences and sources come with the record. */
%ignore rodt_count_format;
%ignore rodt_axle_format;
%ignore rodt_axle_source;
%ignore rodt_advice_text;
%ignore rodt_advice_source;
%ignore rodt_air_finding_format;
%ignore rodt_air_edge_format;
%ignore rodt_air_limit_edge_format;
%ignore rodt_rules_law;
%ignore rodt_check_find;
/* Constants are enumerations in the package. */
%rename("$ignore", %$isenumitem) "";

/* --- Statuses and errors ----------------------------------------------------------------------------- */

%typemap(out) rodt_status {
  if ($1 != RODT_OK) {
    raise_status($1);
    SWIG_fail;
  }
  $result = SWIG_Py_Void();
}

%typemap(in, numinputs=0) rodt_error *error {
  memset(&binding_error, 0, sizeof binding_error);
  $1 = &binding_error;
}

/* --- Texts ------------------------------------------------------------------------------------------- */

%typemap(in) (const char *text, size_t size) {
  $1 = PyUnicode_Check($input) ? (char *)text_of($input, "") : NULL;
  if ($1 == NULL) {
    if (!PyErr_Occurred())
      refuse_other($input, "the argument", "text");
    SWIG_fail;
  }
  $2 = strlen($1);
}

%typemap(in, numinputs=0) (char *text, size_t size) (char room[RODT_SENTENCE_SIZE]) {
  $1 = room;
  $2 = sizeof room;
}
%typemap(argout) (char *text, size_t size) {
  Py_XDECREF($result);
  $result = PyUnicode_FromString($1);
}

/* --- Exact numbers and days -------------------------------------------------------------------------- */

%define %exact(TYPE, READ)
%typemap(in) TYPE {
  if ($input == Py_None ? !refuse_other($input, "$1_name", "a number") : !READ($input, "$1_name", &$1))
    SWIG_fail;
}
%typemap(out) TYPE { $result = FROM_EXACT($1); }
%typemap(in, numinputs=0) TYPE *OUTPUT (TYPE answer) { $1 = &answer; }
%typemap(argout) TYPE *OUTPUT {
  Py_XDECREF($result);
  $result = FROM_EXACT(*$1);
}
%enddef

%exact(rodt_length, length_of)
%exact(rodt_pressure, pressure_of)
%exact(rodt_ratio, ratio_of)

%typemap(in) rodt_date {
  if (!date_of($input, "day", &$1))
    SWIG_fail;
}
%typemap(out) rodt_date { $result = from_date($1); }

%typemap(in, numinputs=0) unsigned *OUTPUT (unsigned answer) { $1 = &answer; }
%typemap(argout) unsigned *OUTPUT {
  Py_XDECREF($result);
  $result = PyLong_FromUnsignedLong(*$1);
}

%typemap(in) const rodt_length_style *style (rodt_length_style given) {
  int unit;
  int comma;
  if (!PyArg_ParseTuple($input, "ip", &unit, &comma))
    SWIG_fail;
  given = (rodt_length_style){.unit = (rodt_unit)unit, .decimal_comma = comma != 0};
  $1 = &given;
}

/* A length that was read, and the unit that it was written in. */
%typemap(in, numinputs=0) rodt_unit *OUTPUT (rodt_unit answer) { $1 = &answer; }
%typemap(argout) rodt_unit *OUTPUT { $result = Py_BuildValue("Ni", $result, (int)*$1); }

/* --- Structs ----------------------------------------------------------------------------------------- */

%define %given(TYPE, READ)
%typemap(in) const TYPE * (TYPE given) {
  if (!READ($input, &given))
    SWIG_fail;
  $1 = &given;
}
%enddef

%define %answer(TYPE, WRITE)
%typemap(in, numinputs=0) TYPE *OUTPUT (TYPE answer) { $1 = &answer; }
%typemap(argout) TYPE *OUTPUT {
  Py_XDECREF($result);
  $result = WRITE($1);
}
%enddef

%define %row(TYPE, WRITE)
%typemap(out) const TYPE * { $result = WRITE($1); }
%enddef

%given(rodt_chamber, chamber_of)
%given(rodt_tally, tally_of)
%given(rodt_clues, clues_of)
%given(rodt_air_reading, air_reading_of)
%answer(rodt_chamber, from_chamber)
%answer(rodt_limit_answer, from_answer)
%answer(rodt_identification, from_identification)

/* Judged in the place where it is kept. */
%typemap(in, numinputs=0) rodt_finding *OUTPUT {
  $1 = malloc(sizeof(rodt_finding));
  if ($1 == NULL) {
    PyErr_NoMemory();
    SWIG_fail;
  }
}
%typemap(argout) rodt_finding *OUTPUT {
  Py_XDECREF($result);
  $result = keep_finding($1);
  $1 = NULL;
}
%typemap(freearg) rodt_finding *OUTPUT { free($1); }

%answer(rodt_count, from_count)
%answer(rodt_air_finding, from_air_finding)
%row(rodt_limit, from_limit)
%row(rodt_chamber_row, from_chamber_row)
%row(rodt_volume_row, from_volume_row)
%row(rodt_air_limit, from_air_limit)
%row(rodt_source, from_source)
%row(rodt_rules, from_rules)

%typemap(in) rodt_position {
  if (!position_of($input, &$1))
    SWIG_fail;
}
%typemap(in, numinputs=0) rodt_position *OUTPUT (rodt_position answer) { $1 = &answer; }
%typemap(argout) rodt_position *OUTPUT {
  Py_XDECREF($result);
  $result = from_position(*$1);
}

%typemap(in, numinputs=0) rodt_date *OUTPUT (rodt_date answer) { $1 = &answer; }
%typemap(argout) rodt_date *OUTPUT {
  Py_XDECREF($result);
  $result = from_date(*$1);
}

%typemap(in, numinputs=0) rodt_stroke_class *OUTPUT (rodt_stroke_class answer) { $1 = &answer; }
%typemap(argout) rodt_stroke_class *OUTPUT {
  Py_XDECREF($result);
  $result = PyLong_FromLong(*$1);
}

%typemap(in, numinputs=0) rodt_evidence *OUTPUT (rodt_evidence answer) {
  answer = RODT_CHECKED;
  $1 = &answer;
}
%typemap(argout) rodt_evidence *OUTPUT { $result = Py_BuildValue("Ni", $result, (int)*$1); }

%typemap(in) rodt_tally *INOUT (rodt_tally answer) {
  if (!tally_of($input, &answer))
    SWIG_fail;
  $1 = &answer;
}
%typemap(argout) rodt_tally *INOUT {
  Py_XDECREF($result);
  $result = from_tally($1);
}

/* --- What is kept whole ------------------------------------------------------------------------------ */

%typemap(in) const rodt_rules * {
  $1 = PyCapsule_GetPointer($input, RULES_CAPSULE);
  if ($1 == NULL)
    SWIG_fail;
}
%typemap(in, numinputs=0) rodt_rules **OUTPUT (rodt_rules *answer) {
  answer = NULL;
  $1 = &answer;
}
%typemap(argout) rodt_rules **OUTPUT {
  Py_XDECREF($result);
  $result = from_rules(*$1);
}

%typemap(in) const rodt_finding * {
  $1 = PyCapsule_GetPointer($input, FINDING_CAPSULE);
  if ($1 == NULL)
    SWIG_fail;
}

%typemap(in) const rodt_reading_text *text (form_room room, rodt_reading_text given) {
  if (!form_of($input, &room, &given))
    SWIG_fail;
  $1 = &given;
}

/* The law that a carrier's own limits stand on, by its id. */
%inline %{
static int finding_verdict(const rodt_finding *finding) { return (int)finding->verdict; }

static PyObject *law_id(const rodt_rules *rules)
{
    const rodt_rules *law = rodt_rules_law(rules);
    return none_or(law == NULL ? NULL : rodt_rules_id(law));
}

/* A chamber that was put together by hand, looked through. */
static PyObject *chamber_check(const rodt_chamber *chamber) { return from_chamber(chamber); }

/* A length in inches as it would be read. */
static PyObject *length(PyObject *inches, const char *field)
{
    rodt_length read;
    return length_of(inches, field, &read) ? FROM_EXACT(read) : NULL;
}

/* Numerator and denominator of a number of the caller. */
static PyObject *rational(PyObject *number, const char *field)
{
    int64_t num;
    int64_t den;
    if (number == Py_None || PyUnicode_Check(number))
        return refuse_other(number, field, PLAIN_NUMBER), NULL;
    return number_of(number, field, &num, &den) ? Py_BuildValue("LL", (long long)num, (long long)den) : NULL;
}

/* A finding for every row, and the first text that could not be read, not raised. */
static PyObject *judge_row(const rodt_reading_text *text, const rodt_rules *rules)
{
    rodt_finding finding;
    rodt_error error = {.status = RODT_OK};
    rodt_status status = rodt_judge_row(text, rules, &finding, &error);
    if (status != RODT_OK) {
        raise_status(status);
        return NULL;
    }
    PyObject *unread = error.status == RODT_OK ? Py_BuildValue("") : make_error(&error);
    return Py_BuildValue("NN", from_finding(&finding), unread);
}
%}

PyObject *finding_values(const rodt_finding *finding);
PyObject *finding_from_values(PyObject *values, const rodt_rules *rules);
PyObject *vehicle_combine(PyObject *ends, unsigned brakes);
PyObject *column_from_buffer(PyObject *object, const char *field);
PyObject *column_from_texts(PyObject *texts, const char *field);
PyObject *column_from_array(PyObject *schema, PyObject *array, const char *name, const char *field);
PyObject *column_from_stream(PyObject *capsule, const char *name, const char *field);
PyObject *table_from_stream(PyObject *capsule);
PyObject *column_of_table(PyObject *capsule, const char *name, const char *field);
PyObject *column_is_text(PyObject *capsule);
PyObject *column_rows(PyObject *capsule);
PyObject *plan_start(const rodt_rules *rules, PyObject *common);
PyObject *plan_add(PyObject *capsule, const rodt_chamber *chamber);
PyObject *columns_judge_numbers(PyObject *capsule, PyObject *columns, PyObject *answers);
PyObject *columns_judge_texts(const rodt_reading_text *text, const rodt_rules *rules, PyObject *columns, PyObject *answers);
PyObject *arrow_schema(PyObject *part);
PyObject *arrow_array(PyObject *part);
PyObject *arrow_stream(PyObject *part);
PyObject *stroke_bits(PyObject *strokes);
