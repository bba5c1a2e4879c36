/* SPDX-License-Identifier: Apache-2.0 */
/* A row of air checks: its cells, which of them go together, and when two rows contradict each other. */
#include "rules/air_row.h"

#include "core/always.h"
#include "core/exact.h"
#include "rules/air_choice.h"
#include "rules/limit_row.h"
#include "rules/words.h"

#include <stdio.h>

/* --- Cells ------------------------------------------------------------------------------------------- */

static bool read_words(table_reader *reader, rodt_air_limit *row)
{
    bool good = rodti_table_name(reader, AIR_CHECK, &rodti_words_air_check, RODT_AIR_CHECK_WARNING, &row->check);
    good &= rodti_table_name(reader, AIR_KIND, &rodti_words_air_kind, 0, &row->kind);
    good &= rodti_table_name(reader, AIR_VEHICLE, &rodti_words_vehicle_class, 0, &row->vehicle);
    good &= rodti_table_name(reader, AIR_COMPARISON, &rodti_words_comparison, 0, &row->comparison);
    good &= rodti_table_name(reader, AIR_MEASURE, &rodti_words_air_measure, 0, &row->measure);
    return good;
}

/* "2" or "2+"; an empty cell is any number. */
static bool read_towed(table_reader *reader, rodt_air_limit *row)
{
    const table_cell *cell = &reader->cells[AIR_TOWED];
    row->towed_units = -1;
    if (cell->size == 0)
        return true;
    row->towed_or_more = cell->size == 2 && cell->text[1] == '+';
    if (text_is_digit((unsigned char)cell->text[0]) && cell->text[0] != '0' &&
        (cell->size == 1 || row->towed_or_more)) {
        row->towed_units = (int16_t)(cell->text[0] - '0');
        return true;
    }
    rodti_table_fault(reader, AIR_TOWED, 1, RODT_E_TABLE, "expected a number of towed units such as 1 or 2+");
    return false;
}

static bool read_built(table_reader *reader, rodt_air_limit *row)
{
    bool good = rodti_table_date(reader, AIR_BUILT_FROM, &row->built_from);
    good &= rodti_table_date(reader, AIR_BUILT_UNTIL, &row->built_until);
    return good && rodti_table_span(reader, AIR_BUILT_UNTIL, row->built_from, row->built_until);
}

/* A pressure, or the word of an event that the time starts at. */
static bool read_span(table_reader *reader, rodt_air_limit *row)
{
    bool good = rodti_table_pressure(reader, AIR_START_KPA, &row->start_kpa);
    good &= rodti_table_pressure(reader, AIR_STOP_KPA, &row->stop_kpa);
    if (rodt_air_span_find(reader->cells[AIR_START].text, &row->span) != RODT_OK ||
        row->span == RODT_AIR_SPAN_PRESSURES) {
        good &= rodti_table_pressure(reader, AIR_START, &row->start);
        good &= rodti_table_pressure(reader, AIR_STOP, &row->stop);
        return good;
    }
    if (table_empty(reader, AIR_STOP))
        return good;
    rodti_table_fault(reader, AIR_STOP, 1, RODT_E_TABLE, "a time from \"%s\" has no pressure at its end",
                      reader->cells[AIR_START].text);
    return false;
}

static bool read_applications(table_reader *reader, rodt_air_limit *row)
{
    rodt_ratio count = {0, 0};
    if (!rodti_table_number(reader, AIR_APPLICATIONS, &count))
        return false;
    if (rodt_ratio_given(count) && (count.den != 1 || count.num < 1 || count.num > RODT_AIR_COUNT_MAX)) {
        rodti_table_fault(reader, AIR_APPLICATIONS, 1, RODT_E_TABLE, "expected a number of applications, 1 to 99");
        return false;
    }
    row->applications = (int16_t)count.num;
    return true;
}

static bool read_figures(table_reader *reader, rodt_air_limit *row)
{
    static const char *const by_words[] = {"", "volume", "half-cut-out", "below-cut-out"};
    unsigned by = 0;
    bool good = rodti_table_number(reader, AIR_VALUE, &row->value);
    good &= rodti_table_number(reader, AIR_UPPER, &row->upper);
    good &= rodti_table_number(reader, AIR_PER_TOWED, &row->per_towed_unit);
    good &= rodti_table_word(reader, AIR_BY, by_words, COUNT_OF(by_words), &by);
    row->by_volume = by == 1;
    row->half_cut_out = by == 2;
    row->below_cut_out = by == 3;
    return good;
}

bool rodti_table_air(table_reader *reader, rodt_air_limit *out)
{
    rodt_air_limit row = {.published = reader->cells[AIR_PUBLISHED].text, .setup = reader->cells[AIR_SETUP].text};
    RODT_ENUM32(rodt_evidence) evidence;
    bool good = read_words(reader, &row);
    good &= read_towed(reader, &row);
    good &= read_built(reader, &row);
    good &= read_figures(reader, &row);
    good &= read_span(reader, &row);
    good &= read_applications(reader, &row);
    good &= rodti_table_evidence(reader, AIR_EVIDENCE, &evidence);
    if (!good)
        return false;
    row.evidence = evidence;
    *out = row;
    return true;
}

/* --- What goes together ------------------------------------------------------------------------------ */

/* The columns that belong to some checks alone. */
enum {
    USES_SPAN = 1u << 0,
    USES_APPLICATIONS = 1u << 1,
    USES_VOLUME = 1u << 2,
    USES_HALF_CUT_OUT = 1u << 3,
    USES_BELOW_CUT_OUT = 1u << 4
};

#define MEASURED_IN(measure) (1u << (measure))
#define IN_PRESSURE (MEASURED_IN(RODT_AIR_MEASURE_PSI) | MEASURED_IN(RODT_AIR_MEASURE_KPA))
#define IN_PRESSURE_PER_MINUTE                                                                               \
    (MEASURED_IN(RODT_AIR_MEASURE_PSI_PER_MINUTE) | MEASURED_IN(RODT_AIR_MEASURE_KPA_PER_MINUTE))
#define IN_PERCENT (MEASURED_IN(RODT_AIR_MEASURE_PERCENT_LEFT) | MEASURED_IN(RODT_AIR_MEASURE_PERCENT_LOST))
#define IN_YES_NO MEASURED_IN(RODT_AIR_MEASURE_YES_NO)

/* What a reading of each check can be brought to, which of those columns a row of it may use, and which it must. */
static const struct check_spec {
    unsigned measures;
    unsigned allowed;
    unsigned required;
    bool must_be_no; /* a yes says that something is wrong */
} checks[RODT_AIR_CHECK_END] = {
    [RODT_AIR_CHECK_WARNING] = {IN_PRESSURE, USES_HALF_CUT_OUT, 0, false},
    [RODT_AIR_CHECK_BUILD_UP] = {MEASURED_IN(RODT_AIR_MEASURE_SECONDS), USES_SPAN | USES_VOLUME, USES_SPAN, false},
    [RODT_AIR_CHECK_CUT_OUT] = {IN_PRESSURE, 0, 0, false},
    [RODT_AIR_CHECK_CUT_IN] = {IN_PRESSURE, USES_BELOW_CUT_OUT, 0, false},
    [RODT_AIR_CHECK_LOSS_RELEASED] = {IN_PRESSURE_PER_MINUTE, 0, 0, false},
    [RODT_AIR_CHECK_LOSS_APPLIED] = {IN_PRESSURE_PER_MINUTE, 0, 0, false},
    [RODT_AIR_CHECK_RESERVE] = {IN_PERCENT, USES_APPLICATIONS, USES_APPLICATIONS, false},
    [RODT_AIR_CHECK_SPRING_BRAKE] = {IN_YES_NO, 0, 0, false},
    [RODT_AIR_CHECK_TRACTOR_PROTECTION] = {IN_PRESSURE | IN_YES_NO, 0, 0, false},
    [RODT_AIR_CHECK_SUPPLY_VALVE] = {IN_PRESSURE, 0, 0, false},
    [RODT_AIR_CHECK_PARKING_VALVE] = {IN_PRESSURE, 0, 0, false},
    [RODT_AIR_CHECK_DRAIN] = {IN_YES_NO, 0, 0, false},
    [RODT_AIR_CHECK_AUDIBLE_LEAK] = {IN_YES_NO, 0, 0, true},
    [RODT_AIR_CHECK_CONTAMINATION] = {IN_YES_NO, 0, 0, true},
    [RODT_AIR_CHECK_TRAILER_BRAKES] = {IN_YES_NO, 0, 0, false},
};

static unsigned used_columns(const rodt_air_limit *row)
{
    bool span = row->span != RODT_AIR_SPAN_PRESSURES || rodt_pressure_given(row->start);
    return (span ? USES_SPAN : 0) | (row->applications != 0 ? USES_APPLICATIONS : 0) |
           (row->by_volume ? USES_VOLUME : 0) | (row->half_cut_out ? USES_HALF_CUT_OUT : 0) |
           (row->below_cut_out ? USES_BELOW_CUT_OUT : 0);
}

/* A comparison has the figures that it needs and no others. Half of the cut-out may stand alone. */
static bool fits_comparison(const rodt_air_limit *row)
{
    bool words = row->comparison == RODT_COMPARISON_MUST_BE_YES || row->comparison == RODT_COMPARISON_MUST_BE_NO;
    bool between = row->comparison == RODT_COMPARISON_BETWEEN;
    bool needs_value = !words && (!row->half_cut_out || rodt_ratio_given(row->value));
    if (words != (row->measure == RODT_AIR_MEASURE_YES_NO) || needs_value != rodt_ratio_given(row->value) ||
        between != rodt_ratio_given(row->upper))
        return false;
    return !between || rodti_exact_compare(row->value, row->upper) <= 0;
}

/* Both ends of a span or neither, in order; the printed kPa likewise. */
static bool fits_span(const rodt_air_limit *row)
{
    bool given = rodt_pressure_given(row->start);
    return given == rodt_pressure_given(row->stop) &&
           (!given || rodt_pressure_compare(row->start, row->stop) < 0) &&
           rodt_pressure_given(row->start_kpa) == rodt_pressure_given(row->stop_kpa);
}

/* Towed units are those of a combination; a figure for each of them is for any number of them. */
static bool fits_vehicle(const rodt_air_limit *row)
{
    bool counted = row->towed_units >= 0, per_unit = rodt_ratio_given(row->per_towed_unit);
    return row->vehicle == RODT_VEHICLE_CLASS_COMBINATION ? !(counted && per_unit) : !counted && !per_unit;
}

/* What belongs to one check alone is in its rows, and nowhere else. */
static bool fits_check(const rodt_air_limit *row)
{
    const struct check_spec *spec = &checks[row->check];
    unsigned used = used_columns(row);
    bool answer = row->measure != RODT_AIR_MEASURE_YES_NO ||
                  spec->must_be_no == (row->comparison == RODT_COMPARISON_MUST_BE_NO);
    return (used & ~spec->allowed) == 0 && (spec->required & ~used) == 0 && answer && fits_span(row) &&
           fits_vehicle(row) && (!row->half_cut_out || row->comparison == RODT_COMPARISON_NOT_LESS_THAN);
}

static rodt_ratio without_sign(rodt_ratio of) { return of.num < 0 ? (rodt_ratio){-of.num, of.den} : of; }

/* kPa printed beside psi, or none. Of psi that are not given there is no difference. */
static bool is_printed_beside(rodt_pressure kpa, rodt_pressure psi)
{
    rodt_pressure one;
    rodt_ratio distance;
    rodt_status made = rodt_pressure_from_kpa(1, 1, &one);
    if (!rodt_pressure_given(kpa))
        return true;
    return ALWAYS(made == RODT_OK) /* it is a constant */ && rodti_exact_subtract(EXACT(kpa), EXACT(psi), &distance) &&
           rodti_exact_compare(without_sign(distance), EXACT(one)) <= 0;
}

bool rodti_air_row_fits(const rodt_air_limit *row, char *fault, size_t size)
{
    const char *check = rodt_air_check_name(row->check);
    if ((checks[row->check].measures & MEASURED_IN(row->measure)) == 0)
        snprintf(fault, size, "check \"%s\" is not measured in \"%s\"", check,
                 rodt_air_measure_name(row->measure));
    else if (!fits_comparison(row))
        snprintf(fault, size, "the figures do not go with \"%s\"", rodt_comparison_name(row->comparison));
    else if (!fits_check(row))
        snprintf(fault, size, "a cell of the row has no place in check \"%s\", or one is missing", check);
    else if (!is_printed_beside(row->start_kpa, row->start) || !is_printed_beside(row->stop_kpa, row->stop))
        snprintf(fault, size, "the printed kPa are more than 1 kPa off the psi");
    else
        return true;
    return false;
}

bool rodti_air_rows_clash(const rodt_air_limit *a, const rodt_air_limit *b)
{
    return a->check == b->check && a->kind == b->kind && a->vehicle == b->vehicle &&
           a->towed_units == b->towed_units && a->below_cut_out == b->below_cut_out && rodti_air_is_one_span(a, b) &&
           rodti_air_is_dated(a) == rodti_air_is_dated(b) &&
           rodti_days_overlap(a->built_from, a->built_until, b->built_from, b->built_until);
}

/* --- In words ---------------------------------------------------------------------------------------- */

static const char *const comparison_texts[RODT_COMPARISON_END] = {"less than", "not more than", "more than",
                                                                  "not less than", "between", "yes", "no"};
static const char *const measure_units[RODT_AIR_MEASURE_END] = {"psi",     "kPa",    "s",      "psi/min",
                                                                "kPa/min", "% left", "% lost", ""};

static void put_ratio(text_writer *writer, rodt_ratio ratio)
{
    char text[RODT_RATIO_TEXT_SIZE];
    rodt_status status = rodt_ratio_format(ratio, text, sizeof text, NULL);
    if (ALWAYS(status == RODT_OK)) /* figures of a row are numbers, and there is room */
        rodti_text_put(writer, text);
}

/* "no" alone would be no rule. */
static const char *rule_of_answer(rodt_air_check check)
{
    switch ((int)check) {
    case RODT_AIR_CHECK_SPRING_BRAKE: return "must hold";
    case RODT_AIR_CHECK_DRAIN: return "must move freely and empty the reservoirs";
    case RODT_AIR_CHECK_AUDIBLE_LEAK: return "no leak heard";
    default: return "no oil or sludge";
    }
}

void rodti_air_row_put(text_writer *writer, const rodt_air_limit *row, int towed_units)
{
    rodt_ratio value;
    if (row->measure == RODT_AIR_MEASURE_YES_NO) {
        rodti_text_put(writer, rule_of_answer((rodt_air_check)row->check));
        return;
    }
    rodti_text_put(writer, comparison_texts[row->comparison]);
    if (!rodt_ratio_given(row->value)) {
        rodti_text_put(writer, " half of the cut-out");
        return;
    }
    if (!rodti_air_allowed(row, towed_units, &value))
        return;
    rodti_text_put(writer, " ");
    put_ratio(writer, value);
    if (row->comparison == RODT_COMPARISON_BETWEEN) {
        rodti_text_put(writer, " and ");
        put_ratio(writer, row->upper);
    }
    rodti_text_putf(writer, " %s", measure_units[row->measure]);
    rodti_text_put(writer, row->by_volume       ? " x actual / required volume"
                           : row->half_cut_out  ? " or half of the cut-out"
                           : row->below_cut_out ? " below the cut-out"
                                                : "");
}
