/* SPDX-License-Identifier: Apache-2.0 */
/* Air checks: the rows that are for a vehicle, and the judgement by all of them. */
#include "air/aircheck.h"
#include "core/always.h"
#include "core/error.h"
#include "core/fault.h"
#include "core/text.h"
#include "rules/air_strict.h"

/* --- All rows together ------------------------------------------------------------------------------- */

static const int weights[RODT_AIR_RESULT_END] = {[RODT_AIR_RESULT_NOT_DONE] = -1,
                                                 [RODT_AIR_RESULT_NOTED] = 2,
                                                 [RODT_AIR_RESULT_GOOD] = 3,
                                                 [RODT_AIR_RESULT_UNDETERMINED] = 4,
                                                 [RODT_AIR_RESULT_DEFECTIVE] = 5};

/* All rows apply; the worst result is reported, a row for another time span only if there is no other. */
static int severity(const air_outcome *outcome)
{
    if (outcome->missing == RODT_AIR_MISSING_ROW || outcome->missing == RODT_AIR_MISSING_SPAN)
        return outcome->missing == RODT_AIR_MISSING_SPAN;
    return weights[outcome->result] + outcome->major;
}

static rodt_status judge_as(const rodt_air_reading *reading, air_rows rows, const air_vehicle *vehicle,
                            air_outcome *out)
{
    *out = (air_outcome){.result = RODT_AIR_RESULT_UNDETERMINED, .missing = RODT_AIR_MISSING_ROW};
    for (size_t i = 0; i < rows.count; i++) {
        air_outcome one;
        if (!rodti_air_is_chosen(rows, &rows.row[i], reading->check, vehicle))
            continue;
        rodt_status status = rodti_air_judge_row(&rows.row[i], reading, vehicle, &one);
        if (status != RODT_OK)
            return status;
        if (severity(&one) > severity(out))
            *out = one;
    }
    return RODT_OK;
}

/* --- What is not known of the vehicle ---------------------------------------------------------------- */

_Static_assert(2 * AIR_DATED_MAX + 2 <= AIR_DAYS_MAX, "every day of build of a carrier's rows has a place");

/* A day that is not given is before every other. */
static void add_day(rodt_date days[AIR_DAYS_MAX], size_t *count, rodt_date day)
{
    bool inside = rodt_date_compare(days[1], day) < 0 && rodt_date_compare(day, days[0]) < 0;
    if (inside && ALWAYS(*count < AIR_DAYS_MAX)) /* no table has more days */
        days[(*count)++] = day;
}

size_t rodti_air_list_days(air_rows rows, rodt_air_check check, rodt_date built, rodt_date days[AIR_DAYS_MAX])
{
    size_t count = 2;
    days[0] = days[1] = built;
    if (built.month != 0)
        return 1;
    days[0] = (rodt_date){rodt_date_given(built) ? built.year : 2199, 12, 31};
    days[1] = (rodt_date){rodt_date_given(built) ? built.year : 1900, 1, 1};
    for (size_t i = 0; i < rows.count; i++) {
        if (rows.row[i].check != check)
            continue;
        add_day(days, &count, rows.row[i].built_from);
        add_day(days, &count, rodti_air_day_after(rows.row[i].built_until));
    }
    return count;
}

#define VEHICLES_MAX (2 + RODT_TOWED_UNITS_MAX)

/* The vehicles that it can be, the strictest of a kind first; their day of build is set later. */
static size_t list_vehicles(const rodt_air_reading *reading, air_vehicle vehicles[VEHICLES_MAX])
{
    size_t count = 0;
    bool open = reading->vehicle == RODT_VEHICLE_CLASS_ANY && reading->towed_units == 0;
    if (open || reading->vehicle == RODT_VEHICLE_CLASS_SINGLE)
        vehicles[count++] = (air_vehicle){.vehicle = RODT_VEHICLE_CLASS_SINGLE};
    if (open || reading->vehicle == RODT_VEHICLE_CLASS_BUS)
        vehicles[count++] = (air_vehicle){.vehicle = RODT_VEHICLE_CLASS_BUS};
    if (count > 0 && !open)
        return count;
    int first = reading->towed_units > 0 ? reading->towed_units : 1;
    int last = reading->towed_units > 0 ? reading->towed_units : RODT_TOWED_UNITS_MAX;
    for (int towed = first; towed <= last; towed++)
        vehicles[count++] = (air_vehicle){.vehicle = RODT_VEHICLE_CLASS_COMBINATION, .towed_units = towed};
    return count;
}

static bool agree(const air_outcome *a, const air_outcome *b)
{
    return a->result == b->result && a->major == b->major && a->minor == b->minor;
}

/* The outcome of all vehicles or of all days: the first one, and whether another differs from it. */
typedef struct fold {
    air_outcome first;
    bool is_started;
    bool differ;
} fold;

/* Of two that agree, one that can name its row says more. */
static void add_outcome(fold *to, const air_outcome *one)
{
    if (!to->is_started || (agree(&to->first, one) && to->first.row == NULL))
        to->first = *one;
    else if (!agree(&to->first, one))
        to->differ = true;
    to->is_started = true;
}

/* A number of towed units that was only guessed and that the rule set has no row for does not count. */
static bool is_unknown_train(const rodt_air_reading *reading, const air_vehicle *vehicle, const air_outcome *one)
{
    return reading->towed_units == 0 && vehicle->towed_units > 1 && one->missing == RODT_AIR_MISSING_ROW;
}

/* The rows of one rule set. Beside a law, a carrier that has no row for a vehicle or times another span asks for
 * nothing, which every reading keeps. */
typedef struct rule_rows {
    air_rows rows;
    bool beside_law;
} rule_rows;

static bool asks_nothing(const air_outcome *one)
{
    return one->missing == RODT_AIR_MISSING_ROW || one->missing == RODT_AIR_MISSING_SPAN;
}

static rodt_status judge_on_day(const rodt_air_reading *reading, rule_rows by, rodt_date built, fold *out)
{
    air_vehicle vehicles[VEHICLES_MAX];
    size_t count = list_vehicles(reading, vehicles);
    *out = (fold){.is_started = false};
    for (size_t i = 0; i < count; i++) {
        air_outcome one;
        vehicles[i].built = built;
        rodt_status status = judge_as(reading, by.rows, &vehicles[i], &one);
        if (status != RODT_OK)
            return status;
        if (by.beside_law && asks_nothing(&one))
            one = (air_outcome){.result = RODT_AIR_RESULT_GOOD};
        if (!is_unknown_train(reading, &vehicles[i], &one))
            add_outcome(out, &one);
    }
    return RODT_OK;
}

/* Judges as every vehicle that it can be. The kind of vehicle decides if it does so on any one day of build. */
static rodt_status judge_all(const rodt_air_reading *reading, rule_rows by, air_outcome *out)
{
    rodt_date days[AIR_DAYS_MAX];
    size_t count = rodti_air_list_days(by.rows, (rodt_air_check)reading->check, reading->built, days);
    fold all = {.is_started = false}, one;
    bool vehicles_differ = false;
    for (size_t d = 0; d < count; d++) {
        rodt_status status = judge_on_day(reading, by, days[d], &one);
        if (status != RODT_OK)
            return status;
        vehicles_differ = vehicles_differ || one.differ;
        add_outcome(&all, &one.first);
    }
    *out = all.first;
    if (vehicles_differ || all.differ)
        *out = (air_outcome){.result = RODT_AIR_RESULT_UNDETERMINED,
                             .missing = vehicles_differ ? RODT_AIR_MISSING_VEHICLE : RODT_AIR_MISSING_BUILT};
    return RODT_OK;
}

/* --- The judgement ----------------------------------------------------------------------------------- */

/* The cut-out and the volumes are facts of the vehicle; they are no check that was done. */
static bool is_done(const rodt_air_reading *reading)
{
    return rodt_pressure_given(reading->pressure) || rodt_pressure_given(reading->before) ||
           rodt_pressure_given(reading->after) || rodt_ratio_given(reading->seconds) ||
           reading->answer != RODT_RECORDED_NOT_RECORDED;
}

/* What cannot be proves nothing. A defect stays one. */
static void apply_doubt(const rodt_air_reading *reading, air_outcome *outcome)
{
    bool passes = outcome->result == RODT_AIR_RESULT_GOOD || outcome->result == RODT_AIR_RESULT_NOTED;
    if (!passes || rodti_air_doubt(reading) == RODT_MESSAGE_NONE)
        return;
    outcome->result = RODT_AIR_RESULT_UNDETERMINED;
    outcome->missing = RODT_AIR_MISSING_SENSE;
    outcome->at_limit = false;
}

static rodt_status check_arguments(const rodt_air_reading *reading, const rodt_rules *rules,
                                   const rodt_air_finding *out, rodt_error *error)
{
    if (out == NULL)
        return rodti_text_error(error, RODT_E_ARGUMENT, 0, "room for a finding is needed");
    if (rules == NULL)
        return rodti_rules_error(error);
    return rodt_air_reading_check(reading, error);
}

/* --- The law and the carrier ------------------------------------------------------------------------- */

typedef struct both_outcomes {
    air_outcome law;
    air_outcome own; /* without a row: the carrier asks for nothing */
} both_outcomes;

/* The law has no row: then the carrier's rows stand alone. */
static rodt_status judge_both(const rodt_air_reading *reading, const rodt_rules *rules, both_outcomes *out)
{
    const rodt_rules *law = rodti_air_law(rules);
    rodt_status status = judge_all(reading, (rule_rows){.rows = rodti_air_rows(law)}, &out->law);
    if (status != RODT_OK || law == rules)
        return status;
    bool beside_law = out->law.missing != RODT_AIR_MISSING_ROW;
    return judge_all(reading, (rule_rows){rodti_air_rows(rules), beside_law}, &out->own);
}

/* A carrier's outcome judges where it is the worse one, where the law has nothing to say, and where both are good but
 * the carrier's figure is tighter. */
static bool own_judges(const both_outcomes *of)
{
    if (of->own.row == NULL && of->own.missing != RODT_AIR_MISSING_VEHICLE &&
        of->own.missing != RODT_AIR_MISSING_BUILT)
        return false;
    if (of->law.missing == RODT_AIR_MISSING_ROW)
        return true;
    if (of->own.result != of->law.result)
        return weights[of->own.result] > weights[of->law.result];
    return of->own.result == RODT_AIR_RESULT_GOOD &&
           !rodti_air_is_within(of->law.row, of->own.row, of->own.towed_units);
}

rodt_status rodt_air_reading_judge(const rodt_air_reading *reading, const rodt_rules *rules, rodt_air_finding *out,
                                   rodt_error *error)
{
    both_outcomes both = {.law = {.result = RODT_AIR_RESULT_NOT_DONE}};
    rodt_status status = check_arguments(reading, rules, out, error);
    if (status != RODT_OK)
        return status;
    if (is_done(reading))
        status = judge_both(reading, rules, &both);
    if (status != RODT_OK)
        return rodti_error_status(error, status);
    apply_doubt(reading, &both.law);
    apply_doubt(reading, &both.own);
    air_outcome judged = own_judges(&both) ? both.own : both.law;
    *out = (rodt_air_finding){.result = judged.result,
                              .missing = judged.missing,
                              .major = judged.major,
                              .minor = judged.minor,
                              .at_limit = judged.at_limit,
                              .reading = *reading,
                              .measured = judged.measured,
                              .allowed = judged.allowed,
                              .row = judged.row,
                              .law_row = both.law.row,
                              .own_row = both.own.row,
                              .law_result = both.law.result,
                              .rules = rules};
    return RODT_OK;
}
