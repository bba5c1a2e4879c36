/* SPDX-License-Identifier: Apache-2.0 */
/* Air checks: the rows that are for a vehicle, and the judgement by all of them. */
#include "air/aircheck.h"
#include "core/text.h"

#include <string.h>

/* A carrier's limits say nothing of air; the law below them does. */
static const rodt_rules *law_of(const rodt_rules *rules) { return rules->law != NULL ? rules->law : rules; }

size_t rodt_rules_air_count(const rodt_rules *rules) { return rules != NULL ? law_of(rules)->air_count : 0; }

const rodt_air_limit *rodt_rules_air_at(const rodt_rules *rules, size_t index)
{
    return index < rodt_rules_air_count(rules) ? &law_of(rules)->air[index] : NULL;
}

/* --- Which rows are for a vehicle -------------------------------------------------------------------- */

/* Specificity of the row for the class; -1 = does not apply. A bus is a single vehicle where nothing is said of
 * buses. */
static int vehicle_rank(rodt_vehicle_class row, rodt_vehicle_class vehicle)
{
    if (row == vehicle)
        return 2;
    if (row == RODT_VEHICLE_CLASS_SINGLE && vehicle == RODT_VEHICLE_CLASS_BUS)
        return 1;
    return row == RODT_VEHICLE_CLASS_ANY ? 0 : -1;
}

static int towed_rank(const rodt_air_limit *row, int towed_units)
{
    if (row->towed_units < 0)
        return 0;
    if (row->towed_units == towed_units)
        return row->towed_or_more ? 1 : 2;
    return row->towed_or_more && towed_units > row->towed_units ? 1 : -1;
}

static bool is_dated(const rodt_air_limit *row)
{
    return rodt_date_given(row->built_from) || rodt_date_given(row->built_until);
}

static bool is_for(const rodt_air_limit *row, rodt_air_check check, const air_vehicle *vehicle)
{
    return row->check == check && vehicle_rank(row->vehicle, vehicle->vehicle) >= 0 &&
           towed_rank(row, vehicle->towed_units) >= 0 && rodt_date_compare(row->built_from, vehicle->built) <= 0 &&
           (!rodt_date_given(row->built_until) || rodt_date_compare(vehicle->built, row->built_until) <= 0);
}

static bool is_one_span(const rodt_air_limit *a, const rodt_air_limit *b)
{
    return a->span == b->span && rodt_pressure_compare(a->start, b->start) == 0 &&
           rodt_pressure_compare(a->stop, b->stop) == 0;
}

/* A limit and one of several ways to keep it rank alike. */
static rodt_air_kind rank_of(const rodt_air_limit *row)
{
    return row->kind == RODT_AIR_KIND_EITHER ? RODT_AIR_KIND_LIMIT : row->kind;
}

/* True if b takes the place of a: both are for the vehicle and about the same, and b is the more exact one. */
static bool is_displaced(const rodt_air_limit *a, const rodt_air_limit *b, const air_vehicle *vehicle)
{
    if (rank_of(a) != rank_of(b) || a->below_cut_out != b->below_cut_out)
        return false;
    int by_vehicle = vehicle_rank(b->vehicle, vehicle->vehicle) - vehicle_rank(a->vehicle, vehicle->vehicle);
    int by_towed = towed_rank(b, vehicle->towed_units) - towed_rank(a, vehicle->towed_units);
    if (by_vehicle != 0 || !is_one_span(a, b))
        return by_vehicle > 0;
    return by_towed != 0 ? by_towed > 0 : is_dated(b) && !is_dated(a);
}

static bool is_chosen(const rodt_rules *law, const rodt_air_limit *row, rodt_air_check check,
                      const air_vehicle *vehicle)
{
    if (!is_for(row, check, vehicle))
        return false;
    for (size_t i = 0; i < law->air_count; i++) {
        if (is_for(&law->air[i], check, vehicle) && is_displaced(row, &law->air[i], vehicle))
            return false;
    }
    return true;
}

/* --- All rows together ------------------------------------------------------------------------------- */

/* All rows apply; the worst result is reported, a row for another time span only if there is no other. */
static int severity(const air_outcome *outcome)
{
    static const int weights[] = {[RODT_AIR_RESULT_NOT_DONE] = -1,
                                  [RODT_AIR_RESULT_NOTED] = 2,
                                  [RODT_AIR_RESULT_GOOD] = 3,
                                  [RODT_AIR_RESULT_UNDETERMINED] = 4,
                                  [RODT_AIR_RESULT_DEFECTIVE] = 5};
    if (outcome->missing == RODT_AIR_MISSING_ROW || outcome->missing == RODT_AIR_MISSING_SPAN)
        return outcome->missing == RODT_AIR_MISSING_SPAN;
    return weights[outcome->result] + outcome->major;
}

static rodt_status judge_as(const rodt_air_reading *reading, const rodt_rules *law, const air_vehicle *vehicle,
                            air_outcome *out)
{
    *out = (air_outcome){.result = RODT_AIR_RESULT_UNDETERMINED, .missing = RODT_AIR_MISSING_ROW};
    for (size_t i = 0; i < law->air_count; i++) {
        air_outcome one;
        if (!is_chosen(law, &law->air[i], reading->check, vehicle))
            continue;
        rodt_status status = rodti_air_judge_row(&law->air[i], reading, vehicle, &one);
        if (status != RODT_OK)
            return status;
        if (severity(&one) > severity(out))
            *out = one;
    }
    return RODT_OK;
}

/* --- What is not known of the vehicle ---------------------------------------------------------------- */

#define DAYS_MAX 32

/* The days of build that can make a difference, the newest first: a reading judged alike on all of them is judged. */
static size_t list_days(const rodt_air_reading *reading, const rodt_rules *law, rodt_date days[DAYS_MAX])
{
    size_t count = 0;
    if (reading->built.month != 0) {
        days[count++] = reading->built;
    } else if (rodt_date_given(reading->built)) {
        days[count++] = (rodt_date){reading->built.year, 12, 31};
        days[count++] = (rodt_date){reading->built.year, 1, 1};
    } else {
        days[count++] = (rodt_date){2199, 12, 31};
        days[count++] = (rodt_date){1900, 1, 1};
        for (size_t i = 0; i < law->air_count && count + 2 <= DAYS_MAX; i++) {
            const rodt_air_limit *row = &law->air[i];
            if (row->check == reading->check && rodt_date_given(row->built_from))
                days[count++] = row->built_from;
            if (row->check == reading->check && rodt_date_given(row->built_until))
                days[count++] = row->built_until;
        }
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

static rodt_status judge_on_day(const rodt_air_reading *reading, const rodt_rules *law, rodt_date built, fold *out)
{
    air_vehicle vehicles[VEHICLES_MAX];
    size_t count = list_vehicles(reading, vehicles);
    *out = (fold){.is_started = false};
    for (size_t i = 0; i < count; i++) {
        air_outcome one;
        vehicles[i].built = built;
        rodt_status status = judge_as(reading, law, &vehicles[i], &one);
        if (status != RODT_OK)
            return status;
        if (!is_unknown_train(reading, &vehicles[i], &one))
            add_outcome(out, &one);
    }
    return RODT_OK;
}

/* Judges as every vehicle that it can be. The kind of vehicle decides if it does so on any one day of build. */
static rodt_status judge_all(const rodt_air_reading *reading, const rodt_rules *law, air_outcome *out)
{
    rodt_date days[DAYS_MAX];
    size_t count = list_days(reading, law, days);
    fold all = {.is_started = false}, one;
    bool vehicles_differ = false;
    for (size_t d = 0; d < count; d++) {
        rodt_status status = judge_on_day(reading, law, days[d], &one);
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
           reading->answer != RODT_RECORDED_NOTHING;
}

static rodt_status check_arguments(const rodt_air_reading *reading, const rodt_rules *rules,
                                   const rodt_air_finding *out, rodt_error *error)
{
    if (out == NULL)
        return rodti_text_error(error, RODT_E_ARGUMENT, 0, "room for a finding is needed");
    if (rules == NULL)
        return rodti_text_error(error, RODT_E_UNKNOWN_RULES, 0, "%s", rodt_status_text(RODT_E_UNKNOWN_RULES));
    return rodt_air_reading_check(reading, error);
}

rodt_status rodt_air_judge(const rodt_air_reading *reading, const rodt_rules *rules, rodt_air_finding *out,
                           rodt_error *error)
{
    air_outcome outcome = {.result = RODT_AIR_RESULT_NOT_DONE};
    rodt_status status = check_arguments(reading, rules, out, error);
    if (status != RODT_OK)
        return status;
    if (is_done(reading))
        status = judge_all(reading, law_of(rules), &outcome);
    if (status != RODT_OK)
        return rodti_text_error(error, status, 0, "%s", rodt_status_text(status));
    *out = (rodt_air_finding){.result = outcome.result,
                              .missing = outcome.missing,
                              .major = outcome.major,
                              .minor = outcome.minor,
                              .at_limit = outcome.at_limit,
                              .reading = *reading,
                              .measured = outcome.measured,
                              .allowed = outcome.allowed,
                              .row = outcome.row,
                              .rules = rules};
    return RODT_OK;
}
