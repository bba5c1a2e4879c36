/* SPDX-License-Identifier: Apache-2.0 */
/* Air checks: the rows that are for a vehicle, and the judgement by all of them. */
#include "air/aircheck.h"
#include "core/text.h"

#include <string.h>

/* A carrier's limits say nothing of air; the law below them does. */
static const rodt_rules *law_of(const rodt_rules *rules) { return rules->law != NULL ? rules->law : rules; }

size_t rodt_rules_air_count(const rodt_rules *rules) { return law_of(rules)->air_count; }

const rodt_air_limit *rodt_rules_air(const rodt_rules *rules, size_t index)
{
    return index < law_of(rules)->air_count ? &law_of(rules)->air[index] : NULL;
}

/* --- Which rows are for a vehicle -------------------------------------------------------------------- */

/* How exactly a row is about the class; -1 = it is not. A bus is a single vehicle where nothing is said of buses. */
static int vehicle_rank(rodt_vehicle_class row, rodt_vehicle_class vehicle)
{
    if (row == vehicle)
        return 2;
    if (row == RODT_VEHICLE_SINGLE && vehicle == RODT_VEHICLE_BUS)
        return 1;
    return row == RODT_VEHICLE_ANY ? 0 : -1;
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

static bool is_for(const rodt_air_limit *row, rodt_check check, const air_vehicle *vehicle)
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

/* True if b takes the place of a: both are for the vehicle and about the same, and b is the more exact one. */
static bool is_displaced(const rodt_air_limit *a, const rodt_air_limit *b, const air_vehicle *vehicle)
{
    if (a->kind != b->kind || a->below_cut_out != b->below_cut_out)
        return false;
    int by_vehicle = vehicle_rank(b->vehicle, vehicle->vehicle) - vehicle_rank(a->vehicle, vehicle->vehicle);
    int by_towed = towed_rank(b, vehicle->towed_units) - towed_rank(a, vehicle->towed_units);
    if (by_vehicle != 0 || !is_one_span(a, b))
        return by_vehicle > 0;
    return by_towed != 0 ? by_towed > 0 : is_dated(b) && !is_dated(a);
}

static bool is_chosen(const rodt_rules *law, const rodt_air_limit *row, rodt_check check, const air_vehicle *vehicle)
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

/* Every row must be kept, so the worst one speaks; a row that times something else speaks last. */
static int weight(const air_outcome *outcome)
{
    static const int weights[] = {[RODT_AIR_NOT_DONE] = -1,
                                  [RODT_AIR_NOTED] = 2,
                                  [RODT_AIR_GOOD] = 3,
                                  [RODT_AIR_UNDETERMINED] = 4,
                                  [RODT_AIR_DEFECTIVE] = 5};
    if (outcome->missing == RODT_AIR_MISSING_ROW || outcome->missing == RODT_AIR_MISSING_SPAN)
        return outcome->missing == RODT_AIR_MISSING_SPAN;
    return weights[outcome->result] + outcome->major;
}

static rodt_status judge_as(const rodt_air_reading *reading, const rodt_rules *law, const air_vehicle *vehicle,
                            air_outcome *out)
{
    *out = (air_outcome){.result = RODT_AIR_UNDETERMINED, .missing = RODT_AIR_MISSING_ROW};
    for (size_t i = 0; i < law->air_count; i++) {
        air_outcome one;
        if (!is_chosen(law, &law->air[i], reading->check, vehicle))
            continue;
        rodt_status status = air_judge_row(&law->air[i], reading, vehicle, &one);
        if (status != RODT_OK)
            return status;
        if (weight(&one) > weight(out))
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

#define CLASSES_MAX 3

static size_t list_classes(const rodt_air_reading *reading, rodt_vehicle_class classes[CLASSES_MAX])
{
    static const rodt_vehicle_class all[CLASSES_MAX] = {RODT_VEHICLE_SINGLE, RODT_VEHICLE_COMBINATION,
                                                        RODT_VEHICLE_BUS};
    bool open = reading->vehicle == RODT_VEHICLE_ANY && reading->towed_units == 0;
    memcpy(classes, all, sizeof all);
    if (open)
        return CLASSES_MAX;
    classes[0] = reading->towed_units > 0 ? RODT_VEHICLE_COMBINATION : reading->vehicle;
    return 1;
}

static air_vehicle make_vehicle(const rodt_air_reading *reading, rodt_vehicle_class vehicle, rodt_date built)
{
    int towed = vehicle != RODT_VEHICLE_COMBINATION ? 0 : reading->towed_units > 0 ? reading->towed_units : 1;
    return (air_vehicle){vehicle, towed, built};
}

static bool agree(const air_outcome *a, const air_outcome *b)
{
    return a->result == b->result && a->major == b->major && a->minor == b->minor;
}

/* Of two that agree, one that can name its row says more. */
static void keep_fuller(air_outcome *kept, const air_outcome *other)
{
    if (kept->row == NULL)
        *kept = *other;
}

/* Judges as every vehicle that it can be. A class decides if it does so on any one day of build. */
static rodt_status judge_all(const rodt_air_reading *reading, const rodt_rules *law, air_outcome *out)
{
    rodt_date days[DAYS_MAX];
    rodt_vehicle_class classes[CLASSES_MAX];
    size_t day_count = list_days(reading, law, days), class_count = list_classes(reading, classes);
    air_outcome kept = {0}, first_of_day = {0}, one;
    rodt_air_missing decides = RODT_AIR_MISSING_NOTHING;
    for (size_t d = 0; d < day_count; d++) {
        for (size_t c = 0; c < class_count; c++) {
            air_vehicle vehicle = make_vehicle(reading, classes[c], days[d]);
            rodt_status status = judge_as(reading, law, &vehicle, &one);
            if (status != RODT_OK)
                return status;
            first_of_day = c == 0 ? one : first_of_day;
            kept = c == 0 && d == 0 ? one : kept;
            if (!agree(&one, &first_of_day))
                decides = RODT_AIR_MISSING_VEHICLE;
            else if (!agree(&one, &kept) && decides == RODT_AIR_MISSING_NOTHING)
                decides = RODT_AIR_MISSING_BUILT;
            keep_fuller(&kept, &one);
        }
    }
    if (decides != RODT_AIR_MISSING_NOTHING)
        kept = (air_outcome){.result = RODT_AIR_UNDETERMINED, .missing = decides};
    *out = kept;
    return RODT_OK;
}

/* --- The judgement ----------------------------------------------------------------------------------- */

static bool is_sound_ratio(int64_t num, int64_t den) { return den == 0 || (den > 0 && num >= 0); }
static bool is_sound_pressure(rodt_pressure p) { return is_sound_ratio(p.num, p.den); }

static bool is_sound_date(rodt_date date)
{
    rodt_date made;
    if (!rodt_date_given(date) || (date.month == 0 && date.day == 0))
        return date.year == 0 || (date.year >= 1900 && date.year <= 2199);
    return rodt_date_make(date.year, date.month, date.day, &made) == RODT_OK;
}

static bool is_sound(const rodt_air_reading *reading)
{
    bool tows = reading->towed_units > 0;
    bool alone = reading->vehicle == RODT_VEHICLE_SINGLE || reading->vehicle == RODT_VEHICLE_BUS;
    return reading->check > RODT_CHECK_NONE && reading->check < RODT_CHECK_END &&
           (unsigned)reading->vehicle <= RODT_VEHICLE_BUS && (unsigned)reading->span <= RODT_SPAN_RECOVERY &&
           (unsigned)reading->answer <= RODT_RECORDED_YES && reading->towed_units >= 0 && !(tows && alone) &&
           reading->applications >= 0 && is_sound_date(reading->built) && is_sound_pressure(reading->pressure) &&
           is_sound_pressure(reading->before) && is_sound_pressure(reading->after) &&
           is_sound_pressure(reading->cut_out) && is_sound_ratio(reading->seconds.num, reading->seconds.den) &&
           is_sound_ratio(reading->actual_volume.num, reading->actual_volume.den) &&
           is_sound_ratio(reading->required_volume.num, reading->required_volume.den);
}

/* The cut-out and the volumes are facts of the vehicle; they are no check that was done. */
static bool is_done(const rodt_air_reading *reading)
{
    return rodt_pressure_given(reading->pressure) || rodt_pressure_given(reading->before) ||
           rodt_pressure_given(reading->after) || rodt_ratio_given(reading->seconds) ||
           reading->answer != RODT_NOT_RECORDED;
}

rodt_status rodt_air_judge(const rodt_air_reading *reading, const rodt_rules *rules, rodt_air_finding *out)
{
    air_outcome outcome = {.result = RODT_AIR_NOT_DONE};
    if (reading == NULL || rules == NULL || out == NULL || !is_sound(reading))
        return RODT_E_ARGUMENT;
    if (is_done(reading)) {
        rodt_status status = judge_all(reading, law_of(rules), &outcome);
        if (status != RODT_OK)
            return status;
    }
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
