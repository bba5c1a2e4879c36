/* SPDX-License-Identifier: Apache-2.0 */
/* What every language is given: the functions of the public headers, and which of their arguments are answers. How a
 * value looks in a language is said in its own language.i, which is found on the include path. */
%module rodtravel

%{
#include <rodtravel/rodtravel.h>
%}

/*
 * A language.i has typemaps for these:
 *
 *   rodt_status                     returned: raises unless RODT_OK, else nothing
 *   rodt_error *error               no argument: where the language raises from; emptied before the call
 *   char *text, size_t size, size_t *needed   no argument: the text is an answer
 *   const char *text, size_t size   a text; of fields.h too, whose arguments have other names
 *   TYPE, const TYPE *              a value or a struct given
 *   TYPE *OUTPUT                    no argument: an answer
 */
%include <stdint.i>
%include "language.i"

%nodefaultctor;
%nodefaultdtor;
%rename("$ignore", %$ismember) ""; /* structs go over as whole values */
%rename("$ignore", regexmatch$name="_given$") "";
%ignore rodt_finding_has;
%rename("$ignore", regexmatch$name="^rodt_.*_message$") ""; /* sentences are asked for as texts */

/* Filled row by row by a language's own code, or of use to C alone. */
%ignore rodt_form_judge;
%ignore rodt_reading_judge;
%ignore rodt_vehicle_judge;
%ignore rodt_vehicle_combine;
%ignore rodt_length_parse;
%ignore rodt_length_parse_strict;
%ignore rodt_pressure_parse;
%ignore rodt_seconds_parse;
%ignore rodt_seconds_parse_n;
%ignore rodt_date_parse;
%ignore rodt_date_parse_iso;
%ignore rodt_chamber_parse;
%ignore rodt_ratio_make;
%ignore rodt_ratio_add;
%ignore rodt_ratio_multiply;
%ignore rodt_ratio_compare;
%ignore RODT_RATIO_TEXT_SIZE;
/* Enumerators by their words. */
%rename("$ignore", regexmatch$name="^rodt_(?!rules_)\\w+_find$") "";
%ignore rodt_field_find_n;
%ignore rodt_pressure_convert;
%ignore rodt_form_parse;
%ignore rodt_form_errors;
%ignore rodt_air_form_errors;
%ignore rodt_air_form_parse;
%ignore rodt_air_form_judge;
%ignore rodt_form_get;
%ignore rodt_form_set;
%ignore rodt_length_compare;
%ignore rodt_pressure_compare;
%ignore rodt_date_compare;
%ignore rodt_chamber_add_class;
%ignore rodt_date_to_days;
%ignore rodt_date_from_days;
%ignore rodt_ratio_subtract;
%ignore rodt_ratio_divide;
%ignore rodt_rules_ref;
%ignore rodt_rules_unref;
%ignore rodt_column_plan_new;
%ignore rodt_column_plan_copy;
%ignore rodt_column_plan_free;
%ignore rodt_column_plan_add;
%ignore rodt_column_plan_judge;
%ignore rodt_column_in_from_arrow;
%ignore rodt_column_plan_judge_arrow;

%apply rodt_length *OUTPUT { rodt_length *out };
%apply rodt_unit *OUTPUT { rodt_unit *written };
%apply rodt_pressure_unit *OUTPUT { rodt_pressure_unit *written };
%apply rodt_pressure *OUTPUT { rodt_pressure *out, rodt_pressure *after };
%apply rodt_date *OUTPUT { rodt_date *out };
%apply rodt_chamber *OUTPUT { rodt_chamber *out };
%apply rodt_stroke_class *OUTPUT { rodt_stroke_class *out };
%apply rodt_position *OUTPUT { rodt_position *out };
%apply rodt_rules **OUTPUT { rodt_rules **out };
%apply rodt_limit_answer *OUTPUT { rodt_limit_answer *out };
%apply rodt_identification *OUTPUT { rodt_identification *out };
%apply rodt_tally *INOUT { rodt_tally *tally };
%apply rodt_count *OUTPUT { rodt_count *out };
%apply rodt_evidence *OUTPUT { rodt_evidence *evidence };
%apply rodt_air_finding *OUTPUT { rodt_air_finding *out };
%apply rodt_ratio *OUTPUT { rodt_ratio *pounds, rodt_ratio *factor, rodt_ratio *cubic_inches, rodt_ratio *seconds };
%apply unsigned *OUTPUT { unsigned *count };

%include <rodtravel/api.h>
%include <rodtravel/message_code.h>
%rename("$ignore", regexmatch$name="^RODT_VERSION") ""; /* that of the headers, for the preprocessor */
%include <rodtravel/version.h>
%include <rodtravel/status.h>
%include <rodtravel/fields.h>
%include <rodtravel/ratio.h>
%include <rodtravel/style.h>
%include <rodtravel/length.h>
%include <rodtravel/pressure.h>
%include <rodtravel/date.h>
%include <rodtravel/chamber.h>
%include <rodtravel/rules.h>
%include <rodtravel/identify.h>
%include <rodtravel/stroke.h>
%include <rodtravel/vehicle.h>
%include <rodtravel/aircheck.h>

/* A row belongs to its rule set, so a language asks for the sentences of a row by its index. */
%ignore rodt_step_format;
%include <rodtravel/step.h>
%inline %{
rodt_status rodt_step_text_at(rodt_step step, rodt_step_part part, const rodt_rules *rules,
                              const rodt_air_reading *vehicle, size_t index, char *text, size_t size, size_t *needed) {
  return rodt_step_format(step, part, rules, rodt_step_row_at(step, rules, vehicle, index), text, size, needed);
}
%}

/* Most headings of a table mean no field, which is no error. */
%inline %{
rodt_field rodt_field_of_heading(const char *heading, size_t size) {
  RODT_ENUM32(rodt_field) found;
  return rodt_field_find_n(heading, size, &found) == RODT_OK ? (rodt_field)found : RODT_FIELD_NONE;
}
%}
