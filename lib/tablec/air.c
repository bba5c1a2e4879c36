/* SPDX-License-Identifier: Apache-2.0 */
/* Consistency checks of the tables of air checks and of volumes. */
#include <string.h>

#include "core/exact.h"
#include "rules/limit_row.h"
#include "tablec/steps.h"

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
    [RODT_AIR_CHECK_TRACTOR_PROTECTION] = {IN_PRESSURE, 0, 0, false},
    [RODT_AIR_CHECK_SUPPLY_VALVE] = {IN_PRESSURE, 0, 0, false},
    [RODT_AIR_CHECK_PARKING_VALVE] = {IN_PRESSURE, 0, 0, false},
    [RODT_AIR_CHECK_DRAIN] = {IN_YES_NO, 0, 0, false},
    [RODT_AIR_CHECK_AUDIBLE_LEAK] = {IN_YES_NO, 0, 0, true},
    [RODT_AIR_CHECK_CONTAMINATION] = {IN_YES_NO, 0, 0, true},
};

static unsigned used_columns(const air_row *air)
{
    const rodt_air_limit *row = &air->row;
    bool span = row->span != RODT_AIR_SPAN_PRESSURES || rodt_pressure_given(row->start);
    return (span ? USES_SPAN : 0) | (row->applications != 0 ? USES_APPLICATIONS : 0) |
           (air->by == BY_VOLUME ? USES_VOLUME : 0) | (air->by == BY_HALF_CUT_OUT ? USES_HALF_CUT_OUT : 0) |
           (air->by == BY_BELOW_CUT_OUT ? USES_BELOW_CUT_OUT : 0);
}

/* A comparison has the figures that it needs and no others. */
static bool fits_comparison(const rodt_air_limit *row)
{
    bool words = row->comparison == RODT_COMPARISON_MUST_BE_YES || row->comparison == RODT_COMPARISON_MUST_BE_NO;
    bool between = row->comparison == RODT_COMPARISON_BETWEEN;
    if (words != (row->measure == RODT_AIR_MEASURE_YES_NO) || words == rodt_ratio_given(row->value) ||
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
static bool fits_check(const air_row *air)
{
    const rodt_air_limit *row = &air->row;
    const struct check_spec *spec = &checks[row->check];
    unsigned used = used_columns(air);
    bool answer = row->measure != RODT_AIR_MEASURE_YES_NO ||
                  spec->must_be_no == (row->comparison == RODT_COMPARISON_MUST_BE_NO);
    return (used & ~spec->allowed) == 0 && (spec->required & ~used) == 0 && answer && fits_span(row) &&
           fits_vehicle(row) && (air->by != BY_HALF_CUT_OUT || row->comparison == RODT_COMPARISON_NOT_LESS_THAN);
}

/* kPa printed beside psi, or neither of them. */
static bool is_printed_beside(rodt_pressure kpa, rodt_pressure psi)
{
    rodt_pressure one;
    rodt_ratio distance;
    if (!rodt_pressure_given(kpa))
        return true;
    if (!rodt_pressure_given(psi) || rodt_pressure_from_kpa(1, 1, &one) != RODT_OK ||
        !rodti_exact_subtract(EXACT(kpa), EXACT(psi), &distance))
        return false;
    distance.num = distance.num < 0 ? -distance.num : distance.num;
    return rodti_exact_compare(distance, EXACT(one)) <= 0;
}

static bool is_dated(const rodt_air_limit *row)
{
    return rodt_date_given(row->built_from) || rodt_date_given(row->built_until);
}

/* Two rows for the same vehicles, neither of which is the more exact one. */
static bool clash(const air_row *x, const air_row *y)
{
    const rodt_air_limit *a = &x->row, *b = &y->row;
    return strcmp(x->rules, y->rules) == 0 && a->check == b->check && a->kind == b->kind && a->vehicle == b->vehicle &&
           a->towed_units == b->towed_units && (x->by == BY_BELOW_CUT_OUT) == (y->by == BY_BELOW_CUT_OUT) &&
           a->span == b->span && rodt_pressure_compare(a->start, b->start) == 0 &&
           rodt_pressure_compare(a->stop, b->stop) == 0 && is_dated(a) == is_dated(b) &&
           rodti_days_overlap(a->built_from, a->built_until, b->built_from, b->built_until);
}

static void check_air_row(tables *t, const air_row *air)
{
    const char *check = rodt_air_check_name(air->row.check);
    if (tables_rules(t, air->rules) == NULL)
        tables_fault(t, FILE_AIR, air->line, "rule set \"%s\" is not in the table of rule sets", air->rules);
    if ((checks[air->row.check].measures & MEASURED_IN(air->row.measure)) == 0)
        tables_fault(t, FILE_AIR, air->line, "check \"%s\" is not measured in \"%s\"", check,
                     measure_words[air->row.measure]);
    else if (!fits_comparison(&air->row))
        tables_fault(t, FILE_AIR, air->line, "the figures do not go with \"%s\"",
                     comparison_words[air->row.comparison]);
    if (!fits_check(air))
        tables_fault(t, FILE_AIR, air->line, "a cell of the row has no place in check \"%s\", or one is missing",
                     check);
    if (!is_printed_beside(air->row.start_kpa, air->row.start) || !is_printed_beside(air->row.stop_kpa, air->row.stop))
        tables_fault(t, FILE_AIR, air->line, "the printed kPa are more than 1 kPa off the psi");
    tables_cite(t, FILE_AIR, air->line, &air->cited);
}

void tables_check_air(tables *t)
{
    for (size_t i = 0; i < t->air_count; i++) {
        check_air_row(t, &t->air[i]);
        for (size_t k = 0; k < i; k++) {
            if (clash(&t->air[k], &t->air[i]))
                tables_fault(t, FILE_AIR, t->air[i].line, "the check is in line %u already",
                             (unsigned)t->air[k].line);
        }
    }
}

static bool is_same_volume(const volume_line *a, const volume_line *b)
{
    return a->what == b->what && strcmp(a->row.size, b->row.size) == 0;
}

static void check_volume(tables *t, const volume_line *line)
{
    bool chamber = line->what == VOLUME_CHAMBER;
    if (line->row.volume.num <= 0)
        tables_fault(t, FILE_VOLUMES, line->line, "the figure must be above zero");
    if (chamber && rodt_length_compare(line->row.stroke_from, line->row.stroke_until) >= 0)
        tables_fault(t, FILE_VOLUMES, line->line, "the full strokes are not in order");
    if (!chamber && (line->row.size[0] != '\0' || rodt_length_given(line->row.stroke_from) ||
                     rodt_length_given(line->row.stroke_until)))
        tables_fault(t, FILE_VOLUMES, line->line, "a multiple has neither a size nor a full stroke");
    tables_cite(t, FILE_VOLUMES, line->line, &line->cited);
}

void tables_check_volumes(tables *t)
{
    size_t count[VOLUME_WHATS] = {0};
    for (size_t i = 0; i < t->volume_count; i++) {
        check_volume(t, &t->volumes[i]);
        count[t->volumes[i].what]++;
        for (size_t k = 0; k < i; k++) {
            if (is_same_volume(&t->volumes[k], &t->volumes[i]))
                tables_fault(t, FILE_VOLUMES, t->volumes[i].line, "the volume is in line %u already",
                             (unsigned)t->volumes[k].line);
        }
    }
    for (size_t what = 0; what < VOLUME_WHATS; what++) {
        if (count[what] == 0)
            tables_fault(t, FILE_VOLUMES, 0, "no row for \"%s\"", volume_words[what]);
    }
}
