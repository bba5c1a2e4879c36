/* SPDX-License-Identifier: Apache-2.0 */
/* The one table of records: sizes and offsets are the compiler's, kinds are checked by it, and tests/checks/describe
 * compares the rows with the headers. */
#include "describe/records.h"

#include "air/words.h"
#include "chamber/words.h"
#include "column/words.h"
#include "describe/words.h"
#include "identify/words.h"
#include "judge/words.h"
#include "message/words.h"
#include "quantity/words.h"
#include "rules/words.h"
#include "vehicle/words.h"

/* A member may be a pointer, and types stand in declarations.
 * NOLINTBEGIN(bugprone-sizeof-expression,bugprone-macro-parentheses) */

/* A row is written for the record T, and does not compile if the member is of another type. */
#define TYPE(m) (((T *)NULL)->m)
#define ELEMENTS(m, type) _Generic(TYPE(m), type : 1, type * : sizeof TYPE(m) / sizeof(type))
#define ROW(m, type, kind_, unit_, ...)                                                                      \
    {.name = #m, .offset = offsetof(T, m), .size = sizeof(type), .count = ELEMENTS(m, type),                 \
     .kind = RODT_MEMBER_KIND_##kind_, .unit = unit_, __VA_ARGS__}

#define LENGTH(m) ROW(m, rodt_length, LENGTH, "in", .used = NULL)
#define PRESSURE(m) ROW(m, rodt_pressure, PRESSURE, "psi", .used = NULL)
#define RATIO(m, unit) ROW(m, rodt_ratio, RATIO, unit, .used = NULL)
#define DATE(m) ROW(m, rodt_date, DATE, "", .used = NULL)
#define POSITION(m) ROW(m, rodt_position, POSITION, "", .used = NULL)
#define ENUM(m, words) ROW(m, RODT_ENUM32(rodt_##words), ENUMERATOR, "", .enumeration = &rodti_words_##words)
#define SET(m, type, words) ROW(m, type, SET, "", .enumeration = &rodti_words_##words)
#define BOOLEAN(m) ROW(m, bool, BOOLEAN, "", .used = NULL)
#define INTEGER(m, type, unit) ROW(m, type, INTEGER, unit, .used = NULL)
#define UNSIGNED(m, type, unit) ROW(m, type, UNSIGNED, unit, .used = NULL)
#define INDEX(m) ROW(m, size_t, INDEX, "", .used = NULL)
#define TEXT_POINTER(m) ROW(m, const char *, TEXT_POINTER, "", .used = NULL)
#define RECORD(m, of) ROW(m, rodt_##of, RECORD, "", .record = &rodti_record_##of)
#define RECORDS(m, of, counted) ROW(m, rodt_##of, RECORD, "", .record = &rodti_record_##of, .used = counted)
#define RECORD_POINTER(m, of) ROW(m, const rodt_##of *, RECORD_POINTER, "", .record = &rodti_record_##of)
#define RULES(m) ROW(m, const rodt_rules *, RULES, "", .used = NULL)
#define POINTER(m, type) ROW(m, type, POINTER, "", .used = NULL)

/* These are arrays of which the whole is one value. */
#define WHOLE(m, kind_)                                                                                      \
    {.name = #m, .offset = offsetof(T, m), .size = sizeof TYPE(m), .count = 1,                               \
     .kind = RODT_MEMBER_KIND_##kind_, .unit = ""}
#define TEXT(m) WHOLE(m, TEXT)
#define RESERVE(m) WHOLE(m, RESERVE)

/* The record of T, called rodt_OF, with its rows. */
#define DEFINE(of, input_, ...)                                                                              \
    static const rodt_member of##_rows[] = {__VA_ARGS__};                                                    \
    const rodt_record rodti_record_##of = {"rodt_" #of, of##_rows, COUNT_OF(of##_rows), sizeof(T), input_};
#define INPUT(of, ...) DEFINE(of, true, __VA_ARGS__)
#define RESULT(of, ...) DEFINE(of, false, __VA_ARGS__)

/* Every record, in the order of the headers; a row of one may point to any other. */
#define EACH_RECORD(X)                                                                                       \
    X(error_argument) X(error) X(enumerator) X(member) X(ratio) X(style) X(length) X(pressure) X(date) \
    X(argument) X(message) X(table_text) X(catalogue) X(chamber)                                             \
    X(source) X(chamber_row) X(limit) X(limit_answer) X(clues) X(candidate) X(identification) X(reading)     \
    X(finding) X(form) X(position) X(tally) X(count) X(wheel_end) X(axle_finding) X(vehicle_finding)         \
    X(air_limit) X(air_reading) X(air_form) X(air_finding) X(volume_row) X(column_bits) X(column_in)         \
    X(column_out) X(text_span) X(text_cells) X(text_columns)

#define DECLARE(of) extern const rodt_record rodti_record_##of;
EACH_RECORD(DECLARE)

/* --- Values ------------------------------------------------------------------------------------------ */

#define T rodt_error
RESULT(error, ENUM(status, status), UNSIGNED(line, uint32_t, ""), UNSIGNED(column, uint32_t, ""),
       ENUM(code, message_code), TEXT(field), TEXT(text), UNSIGNED(count, uint32_t, ""), RESERVE(reserved_1),
       RECORDS(arguments, error_argument, "count"), RESERVE(reserved))
#undef T

#define T rodt_error_argument
RESULT(error_argument, TEXT_POINTER(name), ENUM(code, message_code), TEXT(word))
#undef T

#define T rodt_enumerator
RESULT(enumerator, INTEGER(number, int64_t, ""), TEXT_POINTER(symbol), TEXT_POINTER(word), TEXT_POINTER(text))
#undef T

#define T rodt_member
RESULT(member, TEXT_POINTER(name), TEXT_POINTER(unit), TEXT_POINTER(used),
       POINTER(enumeration, const rodt_enumeration *), POINTER(record, const rodt_record *),
       UNSIGNED(offset, uint32_t, "bytes"), UNSIGNED(size, uint32_t, "bytes"), UNSIGNED(count, uint32_t, ""),
       ENUM(kind, member_kind))
#undef T

#define T rodt_ratio
INPUT(ratio, INTEGER(num, int64_t, ""), INTEGER(den, int64_t, ""))
#undef T

#define T rodt_style
INPUT(style, ENUM(unit, unit), ENUM(pressure_unit, pressure_unit), BOOLEAN(decimal_comma), RESERVE(reserved))
#undef T

#define T rodt_length
INPUT(length, INTEGER(num, int64_t, ""), INTEGER(den, int64_t, ""))
#undef T

#define T rodt_pressure
INPUT(pressure, INTEGER(num, int64_t, ""), INTEGER(den, int64_t, ""))
#undef T

#define T rodt_date
INPUT(date, INTEGER(year, int16_t, ""), INTEGER(month, int8_t, ""), INTEGER(day, int8_t, ""))
#undef T

/* --- Chambers and rules ------------------------------------------------------------------------------ */

#define T rodt_chamber
INPUT(chamber, ENUM(family, family), ENUM(stroke_class, stroke_class), TEXT(size), TEXT(spring_size),
      LENGTH(rated_stroke), LENGTH(marked_limit), RESERVE(reserved))
#undef T

#define T rodt_source
RESULT(source, TEXT_POINTER(id), TEXT_POINTER(body), TEXT_POINTER(document), TEXT_POINTER(section),
       TEXT_POINTER(edition), TEXT_POINTER(address))
#undef T

#define T rodt_chamber_row
RESULT(chamber_row, ENUM(family, family), TEXT_POINTER(size), LENGTH(outside_diameter), LENGTH(outside_diameter_mm),
       LENGTH(standard_rated_stroke), RECORD_POINTER(source, source))
#undef T

#define T rodt_limit
RESULT(limit, ENUM(family, family), ENUM(stroke_class, stroke_class), TEXT_POINTER(size), LENGTH(rated_stroke),
       LENGTH(rated_stroke_mm), LENGTH(limit), TEXT_POINTER(published), LENGTH(printed_mm), DATE(from), DATE(until),
       RECORD_POINTER(source, source), ENUM(evidence, evidence))
#undef T

#define T rodt_limit_answer
RESULT(limit_answer, ENUM(law_basis, basis), LENGTH(limit), RECORD_POINTER(source, source), ENUM(evidence, evidence),
       LENGTH(law_limit), RECORD_POINTER(law_source, source), ENUM(law_evidence, evidence),
       RECORD_POINTER(law_row, limit), RECORD_POINTER(own_row, limit), BOOLEAN(assumed_clamp),
       BOOLEAN(assumed_standard), BOOLEAN(conflicting_marks), RESERVE(reserved))
#undef T

/* --- Identification ---------------------------------------------------------------------------------- */

#define T rodt_clues
INPUT(clues, RECORD(stamp, chamber), ENUM(family, family), ENUM(port, port), ENUM(tag, tag), LENGTH(rated_stroke),
      LENGTH(diameter), LENGTH(diameter_division), RESERVE(reserved))
#undef T

#define T rodt_candidate
RESULT(candidate, RECORD(chamber, chamber), LENGTH(limit), LENGTH(diameter), LENGTH(diameter_distance),
       SET(clues_for, uint32_t, clue), SET(clues_against, uint32_t, clue), RESERVE(reserved))
#undef T

#define T rodt_argument
RESULT(argument, TEXT_POINTER(name), ENUM(kind, argument_kind), ENUM(code, message_code), RATIO(number, ""), DATE(date),
       INTEGER(digits, int16_t, ""), TEXT_POINTER(text), RESERVE(reserved))
#undef T

#define T rodt_message
RESULT(message, ENUM(code, message_code), UNSIGNED(count, uint32_t, ""), RECORDS(arguments, argument, "count"),
       RESERVE(reserved))
#undef T

#define T rodt_table_text
INPUT(table_text, TEXT_POINTER(english), TEXT_POINTER(said))
#undef T

#define T rodt_catalogue
INPUT(catalogue, TEXT_POINTER(language), POINTER(templates, const char *const *), UNSIGNED(count, size_t, ""),
       POINTER(texts, const rodt_table_text *), UNSIGNED(text_count, size_t, ""), TEXT_POINTER(decimal_sign),
       ENUM(plural, plural_rule), RESERVE(reserved))
#undef T

#define T rodt_identification
RESULT(identification, UNSIGNED(count, size_t, ""), RECORDS(candidates, candidate, "count"), LENGTH(strict_limit),
       UNSIGNED(without_limit, uint32_t, ""), SET(contradiction, uint32_t, clue), ENUM(next_observation, observation),
       RESERVE(reserved))
#undef T

/* --- Strokes ----------------------------------------------------------------------------------------- */

#define T rodt_reading
INPUT(reading, RECORD(chamber, chamber), LENGTH(released), LENGTH(applied), ENUM(unit, unit),
      ENUM(pressure_unit, pressure_unit), LENGTH(division),
      PRESSURE(pressure), PRESSURE(pressure_after), DATE(day), DATE(other_day), ENUM(engine_running, recorded),
      ENUM(spring_brake_applied, recorded), ENUM(drum, drum), LENGTH(other_released), LENGTH(other_applied),
      SET(reasons, uint64_t, reason), RESERVE(reserved))
#undef T

#define T rodt_finding
RESULT(finding, ENUM(verdict, verdict), ENUM(proof, proof), SET(reasons, uint64_t, reason), RECORD(chamber, chamber),
       LENGTH(released), LENGTH(applied), LENGTH(applied_stroke), LENGTH(limit), RECORD_POINTER(source, source),
       ENUM(evidence, evidence), ENUM(law_evidence, evidence), LENGTH(law_limit), RECORD_POINTER(law_source, source),
       LENGTH(margin), LENGTH(long_limit), ENUM(law_basis, basis), ENUM(unit, unit),
       ENUM(pressure_unit, pressure_unit), LENGTH(division),
       RATIO(probability_over, ""), PRESSURE(pressure), PRESSURE(pressure_after), DATE(day), DATE(other_day),
       RECORD_POINTER(law_row, limit), RECORD_POINTER(own_row, limit), RULES(rules), LENGTH(other_released),
       LENGTH(other_applied), RESERVE(reserved))
#undef T

#define T rodt_form
INPUT(form, TEXT_POINTER(chamber), TEXT_POINTER(released), TEXT_POINTER(applied), TEXT_POINTER(stroke_class),
      TEXT_POINTER(rated_stroke), TEXT_POINTER(marked_limit), TEXT_POINTER(psi), TEXT_POINTER(psi_after),
      TEXT_POINTER(division), TEXT_POINTER(date), TEXT_POINTER(unit), TEXT_POINTER(engine), TEXT_POINTER(spring_brake),
      TEXT_POINTER(drum), RESERVE(reserved), RECORD(style, style), ENUM(date_order, date_order),
      DATE(default_day))
#undef T

/* --- Vehicles ---------------------------------------------------------------------------------------- */

#define T rodt_position
INPUT(position, INTEGER(axle, int16_t, ""), ENUM(side, side))
#undef T

#define T rodt_tally
INPUT(tally, UNSIGNED(brakes, uint32_t, "brakes"), UNSIGNED(full, uint32_t, "brakes"),
      UNSIGNED(half, uint32_t, "brakes"), UNSIGNED(unknown, uint32_t, "brakes"),
      UNSIGNED(inoperative, uint32_t, "brakes"), RESERVE(reserved))
#undef T

#define T rodt_count
RESULT(count, ENUM(outcome, outcome), UNSIGNED(brakes, uint32_t, "brakes"), UNSIGNED(unmeasured, uint32_t, "brakes"),
       RECORD(tally, tally), RATIO(defective, "brakes"), RATIO(share, ""), RATIO(worst_share, ""),
       RATIO(known_share, ""), RATIO(criterion, ""), UNSIGNED(whole_needed, uint32_t, "brakes"), RESERVE(reserved))
#undef T

#define T rodt_wheel_end
INPUT(wheel_end, POSITION(position), ENUM(adjuster, adjuster), RECORD(reading, reading), LENGTH(arm_length),
      RESERVE(reserved))
#undef T

#define T rodt_axle_finding
RESULT(axle_finding, INTEGER(axle, int16_t, ""), RESERVE(reserved_1), SET(mismatches, uint32_t, axle_mismatch),
       INDEX(left), INDEX(right), LENGTH(stroke_difference), RATIO(al_left, "in3"), RATIO(al_right, "in3"),
       RESERVE(reserved))
#undef T

#define T rodt_vehicle_finding
RESULT(vehicle_finding, RECORD(count, count), UNSIGNED(in_adjustment, uint32_t, "brakes"),
       UNSIGNED(out_of_adjustment, uint32_t, "brakes"), UNSIGNED(inoperative, uint32_t, "brakes"),
       UNSIGNED(undetermined, uint32_t, "brakes"), UNSIGNED(mismatched_axles, uint32_t, "axles"),
       UNSIGNED(mixed_days, uint32_t, "brakes"), UNSIGNED(axle_count, size_t, "axles"),
       RECORDS(axles, axle_finding, "axle_count"), RESERVE(reserved))
#undef T

/* --- Air --------------------------------------------------------------------------------------------- */

#define T rodt_air_limit
RESULT(air_limit, ENUM(check, air_check), ENUM(kind, air_kind), ENUM(vehicle, vehicle_class),
       INTEGER(towed_units, int16_t, ""), BOOLEAN(towed_or_more), ENUM(comparison, comparison),
       ENUM(measure, air_measure), RATIO(value, ""), RATIO(upper, ""), RATIO(per_towed_unit, ""), ENUM(span, air_span),
       PRESSURE(start), PRESSURE(stop), PRESSURE(start_kpa), PRESSURE(stop_kpa), INTEGER(applications, int16_t, ""),
       BOOLEAN(by_volume), BOOLEAN(half_cut_out), BOOLEAN(below_cut_out), DATE(built_from), DATE(built_until),
       TEXT_POINTER(published), TEXT_POINTER(setup), RECORD_POINTER(source, source), ENUM(evidence, evidence))
#undef T

#define T rodt_air_reading
INPUT(air_reading, ENUM(check, air_check), ENUM(vehicle, vehicle_class), ENUM(span, air_span), ENUM(answer, recorded),
      INTEGER(towed_units, int16_t, ""), INTEGER(applications, int16_t, ""), DATE(built),
      ENUM(pressure_unit, pressure_unit), PRESSURE(pressure), PRESSURE(before), PRESSURE(after), PRESSURE(cut_out),
      PRESSURE(cut_in), RATIO(seconds, "s"),
      RATIO(actual_volume, "in3"), RATIO(required_volume, "in3"), RESERVE(reserved))
#undef T

#define T rodt_air_form
INPUT(air_form, TEXT_POINTER(check), TEXT_POINTER(vehicle), TEXT_POINTER(towed_units), TEXT_POINTER(built),
      TEXT_POINTER(pressure), TEXT_POINTER(before), TEXT_POINTER(after), TEXT_POINTER(cut_out), TEXT_POINTER(cut_in),
      TEXT_POINTER(seconds), TEXT_POINTER(span), TEXT_POINTER(applications), TEXT_POINTER(actual_volume),
      TEXT_POINTER(required_volume), TEXT_POINTER(answer), RESERVE(reserved), RECORD(style, style),
      ENUM(date_order, date_order))
#undef T

#define T rodt_air_finding
RESULT(air_finding, ENUM(result, air_result), ENUM(missing, air_missing), BOOLEAN(major), BOOLEAN(minor),
       BOOLEAN(at_limit), RECORD(reading, air_reading), RATIO(measured, ""), RATIO(allowed, ""),
       RECORD_POINTER(row, air_limit), RECORD_POINTER(law_row, air_limit), RECORD_POINTER(own_row, air_limit),
       ENUM(law_result, air_result), RULES(rules), RESERVE(reserved))
#undef T

#define T rodt_volume_row
RESULT(volume_row, TEXT_POINTER(size), LENGTH(stroke_from), LENGTH(stroke_until), RATIO(volume, "in3"),
       RECORD_POINTER(source, source))
#undef T

/* --- Columns ----------------------------------------------------------------------------------------- */

#define T rodt_column_bits
INPUT(column_bits, POINTER(bits, const uint8_t *), UNSIGNED(from, size_t, ""))
#undef T

#define T rodt_column_in
INPUT(column_in, POINTER(released, const int32_t *), POINTER(applied, const int32_t *),
      POINTER(released64, const int64_t *), POINTER(applied64, const int64_t *), POINTER(chamber, const uint8_t *),
      POINTER(psi, const int32_t *), POINTER(date, const int32_t *), RECORD(released_valid, column_bits),
      RECORD(applied_valid, column_bits), RECORD(chamber_valid, column_bits), RECORD(psi_valid, column_bits),
      RECORD(date_valid, column_bits), RECORD(row_valid, column_bits), RESERVE(reserved))
#undef T

#define T rodt_column_out
INPUT(column_out, POINTER(stroke, int32_t *), POINTER(verdict, uint8_t *), POINTER(reasons, uint64_t *),
      POINTER(flags, uint8_t *), POINTER(limit, int32_t *), POINTER(stroke_parts, int64_t *), RESERVE(reserved))
#undef T

#define T rodt_text_span
INPUT(text_span, POINTER(text, const char *), UNSIGNED(size, size_t, "bytes"))
#undef T

#define T rodt_text_cells
INPUT(text_cells, ENUM(layout, text_layout), UNSIGNED(index_width, uint32_t, "bytes"), POINTER(cells, const void *),
      POINTER(bytes, const char *), POINTER(buffers, const void *const *), UNSIGNED(from, size_t, ""),
      UNSIGNED(count, size_t, ""), RECORD(valid, column_bits), POINTER(index, const void *),
      UNSIGNED(index_from, size_t, ""), RECORD(index_valid, column_bits), RESERVE(reserved))
#undef T

#define T rodt_text_columns
INPUT(text_columns, RECORD(field, text_cells))
#undef T

#define ADDRESS(of) &rodti_record_##of,
const rodt_record *const rodti_records[] = {EACH_RECORD(ADDRESS) NULL};
const size_t rodti_record_total = COUNT_OF(rodti_records) - 1;

/* NOLINTEND(bugprone-sizeof-expression,bugprone-macro-parentheses) */
