/* SPDX-License-Identifier: Apache-2.0 */
/* How values look in Python: exact numbers are fractions.Fraction, days are datetime.date, structs are tuples that the
 * package turns into records, enumerators are their numbers. The C code is in ext/. */
%{
#include "ext.h"
%}

%init %{
  if (!py_find_classes() || !py_add_functions(m)) {
#if SWIG_VERSION >= 0x040400
    return -1;
#else
    return NULL;
#endif
  }
%}

/* Their sentences and sources come with the record. */
%ignore rodt_count_format;
%ignore rodt_axle_mismatch_format;
%ignore rodt_axle_mismatch_source;
%ignore rodt_advice_text;
%ignore rodt_advice_source;
%ignore rodt_air_finding_format;
%ignore rodt_air_finding_edge_format;
%ignore rodt_air_limit_edge_format;
%ignore rodt_air_finding_spoken_format;
%ignore rodt_air_finding_note_format;
%ignore rodt_rules_law;
%ignore rodt_rules_air_law;
/* Constants are enumerations in the package. */
%rename("$ignore", %$isenumitem) "";

/* --- Statuses and errors ----------------------------------------------------------------------------- */

%typemap(out) rodt_status {
  if ($1 != RODT_OK) {
    py_raise_status($1);
    SWIG_fail;
  }
  $result = SWIG_Py_Void();
}

%typemap(in, numinputs=0) rodt_error *error {
  $1 = py_call_error();
  memset($1, 0, sizeof *$1);
}

/* --- Texts ------------------------------------------------------------------------------------------- */

%typemap(in) (const char *text, size_t size), (const char *heading, size_t size),
             (const char *a, size_t a_size), (const char *b, size_t b_size) {
  $1 = PyUnicode_Check($input) ? (char *)py_to_text($input, "") : NULL;
  if ($1 == NULL) {
    if (!PyErr_Occurred())
      py_raise_type($input, "the argument", "text");
    SWIG_fail;
  }
  $2 = strlen($1);
}

%typemap(in, numinputs=0) (char *text, size_t size, size_t *needed) (char room[RODT_SENTENCE_SIZE]) {
  $1 = room;
  $2 = sizeof room;
  $3 = NULL;
}
%typemap(argout) (char *text, size_t size, size_t *needed) {
  Py_XDECREF($result);
  $result = PyUnicode_FromString($1);
}

/* --- Exact numbers and days -------------------------------------------------------------------------- */

%define %exact(TYPE, READ)
%typemap(in) TYPE {
  if ($input == Py_None ? !py_raise_type($input, "$1_name", "a number") : !READ($input, "$1_name", &$1))
    SWIG_fail;
}
%typemap(out) TYPE { $result = FROM_EXACT($1); }
%typemap(in, numinputs=0) TYPE *OUTPUT (TYPE answer) { $1 = &answer; }
%typemap(argout) TYPE *OUTPUT {
  Py_XDECREF($result);
  $result = FROM_EXACT(*$1);
}
%enddef

%exact(rodt_length, py_to_length)
%exact(rodt_pressure, py_to_pressure)
%exact(rodt_ratio, py_to_ratio)

%typemap(in) rodt_date {
  if (!py_to_date($input, "day", &$1))
    SWIG_fail;
}
%typemap(out) rodt_date { $result = py_from_date($1); }

%typemap(in, numinputs=0) unsigned *OUTPUT (unsigned answer) { $1 = &answer; }
%typemap(argout) unsigned *OUTPUT {
  Py_XDECREF($result);
  $result = PyLong_FromUnsignedLong(*$1);
}

%typemap(in) const rodt_style *style (rodt_style given) {
  int unit;
  int pressure_unit;
  int comma;
  if (!PyArg_ParseTuple($input, "iip", &unit, &pressure_unit, &comma))
    SWIG_fail;
  given = (rodt_style){.unit = (rodt_unit)unit, .pressure_unit = (rodt_pressure_unit)pressure_unit,
                       .decimal_comma = comma != 0};
  $1 = &given;
}

/* A length or a pressure that was read, and the unit that it was written in. */
%typemap(in, numinputs=0) rodt_unit *OUTPUT (rodt_unit answer),
                          rodt_pressure_unit *OUTPUT (rodt_pressure_unit answer) { $1 = &answer; }
%typemap(argout) rodt_unit *OUTPUT, rodt_pressure_unit *OUTPUT { $result = Py_BuildValue("Ni", $result, (int)*$1); }

/* --- Structs ----------------------------------------------------------------------------------------- */

%define %record(TYPE)
%typemap(in) const TYPE * (TYPE given) {
  if (!TO_RECORD(TYPE, $input, &given))
    SWIG_fail;
  $1 = &given;
}
%typemap(out) const TYPE * { $result = FROM_RECORD(TYPE, $1); }
%typemap(in, numinputs=0) TYPE *OUTPUT (TYPE answer) { $1 = &answer; }
%typemap(argout) TYPE *OUTPUT {
  Py_XDECREF($result);
  $result = FROM_RECORD(TYPE, $1);
}
%enddef

%record(rodt_air_finding)
%record(rodt_air_limit)
%record(rodt_air_reading)
%record(rodt_chamber)
%record(rodt_chamber_row)
%record(rodt_clues)
%record(rodt_count)
%record(rodt_identification)
%record(rodt_limit)
%record(rodt_limit_answer)
%record(rodt_source)
%record(rodt_tally)
%record(rodt_volume_row)

%typemap(out) const rodt_rules * { $result = py_from_rules($1); }

%typemap(in) rodt_position {
  if (!TO_RECORD(rodt_position, $input, &$1))
    SWIG_fail;
}
%typemap(in, numinputs=0) rodt_position *OUTPUT (rodt_position answer) { $1 = &answer; }
%typemap(argout) rodt_position *OUTPUT {
  Py_XDECREF($result);
  $result = FROM_RECORD(rodt_position, $1);
}

%typemap(in, numinputs=0) rodt_date *OUTPUT (rodt_date answer) { $1 = &answer; }
%typemap(argout) rodt_date *OUTPUT {
  Py_XDECREF($result);
  $result = py_from_date(*$1);
}

%typemap(in, numinputs=0) rodt_stroke_class *OUTPUT (rodt_stroke_class answer) { $1 = &answer; }
%typemap(argout) rodt_stroke_class *OUTPUT {
  Py_XDECREF($result);
  $result = PyLong_FromLong(*$1);
}

%typemap(in, numinputs=0) rodt_evidence *OUTPUT (rodt_evidence answer) {
  answer = RODT_EVIDENCE_NONE;
  $1 = &answer;
}
%typemap(argout) rodt_evidence *OUTPUT { $result = Py_BuildValue("Ni", $result, (int)*$1); }

%typemap(in) rodt_tally *INOUT (rodt_tally answer) {
  if (!TO_RECORD(rodt_tally, $input, &answer))
    SWIG_fail;
  $1 = &answer;
}
%typemap(argout) rodt_tally *INOUT {
  Py_XDECREF($result);
  $result = FROM_RECORD(rodt_tally, $1);
}

/* --- Behind capsules --------------------------------------------------------------------------------- */

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
  $result = py_from_rules(*$1);
}

%typemap(in) const rodt_finding * {
  $1 = PyCapsule_GetPointer($input, FINDING_CAPSULE);
  if ($1 == NULL)
    SWIG_fail;
}

%typemap(in) const rodt_form * (number_texts room, rodt_form given) {
  if (!py_to_reading_text($input, &room, &given))
    SWIG_fail;
  $1 = &given;
}

%constant int READING_FIELDS = RODT_READING_FIELDS;
%constant int NEEDED_FIELDS = RODT_FIELD_NEEDED;
%constant int ALL_FIELDS = RODT_FIELD_END;
%constant int NAMES_MAX = CURSOR_NAMES_MAX;

/* Functions of the module's own, without their prefix. */
%rename("%(strip:[py_])s") "";
%include "ext/module.h"
