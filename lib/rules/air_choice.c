/* SPDX-License-Identifier: Apache-2.0 */
/* Rows of air checks by vehicle, towed units and day of build. */
#include "rules/air_choice.h"

#include "core/exact.h"
#include "rules/tables.h"

const rodt_rules *rodti_air_law(const rodt_rules *rules) { return rules->air_law != NULL ? rules->air_law : rules; }

air_rows rodti_air_rows(const rodt_rules *rules) { return (air_rows){rules->air, rules->air_count}; }

const rodt_rules *rodt_rules_air_law(const rodt_rules *rules) { return rules != NULL ? rules->air_law : NULL; }

size_t rodt_rules_air_count(const rodt_rules *rules) { return rules != NULL ? rules->air_count : 0; }

const rodt_air_limit *rodt_rules_air_at(const rodt_rules *rules, size_t index)
{
    return index < rodt_rules_air_count(rules) ? &rules->air[index] : NULL;
}

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

rodt_date rodti_air_day_after(rodt_date day)
{
    rodt_date next;
    bool found = rodt_date_given(day) && (rodt_date_make(day.year, day.month, day.day + 1, &next) == RODT_OK ||
                                          rodt_date_make(day.year, day.month + 1, 1, &next) == RODT_OK ||
                                          rodt_date_make(day.year + 1, 1, 1, &next) == RODT_OK);
    return found ? next : (rodt_date){0, 0, 0};
}

bool rodti_air_is_dated(const rodt_air_limit *row)
{
    return rodt_date_given(row->built_from) || rodt_date_given(row->built_until);
}

bool rodti_air_is_for(const rodt_air_limit *row, const air_vehicle *vehicle)
{
    return vehicle_rank(row->vehicle, vehicle->vehicle) >= 0 && towed_rank(row, vehicle->towed_units) >= 0 &&
           rodt_date_compare(row->built_from, vehicle->built) <= 0 &&
           (!rodt_date_given(row->built_until) || rodt_date_compare(vehicle->built, row->built_until) <= 0);
}

bool rodti_air_is_one_span(const rodt_air_limit *a, const rodt_air_limit *b)
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
    if (by_vehicle != 0 || !rodti_air_is_one_span(a, b))
        return by_vehicle > 0;
    return by_towed != 0 ? by_towed > 0 : rodti_air_is_dated(b) && !rodti_air_is_dated(a);
}

bool rodti_air_is_chosen(air_rows rows, const rodt_air_limit *row, rodt_air_check check, const air_vehicle *vehicle)
{
    if (row->check != check || !rodti_air_is_for(row, vehicle))
        return false;
    for (size_t i = 0; i < rows.count; i++) {
        const rodt_air_limit *other = &rows.row[i];
        if (other->check == check && rodti_air_is_for(other, vehicle) && is_displaced(row, other, vehicle))
            return false;
    }
    return true;
}

bool rodti_air_allowed(const rodt_air_limit *row, int towed_units, rodt_ratio *out)
{
    rodt_ratio more;
    *out = row->value;
    if (!rodt_ratio_given(row->per_towed_unit) || towed_units <= 1)
        return true;
    return rodti_exact_multiply(row->per_towed_unit, (rodt_ratio){towed_units - 1, 1}, &more) &&
           rodti_exact_add(*out, more, out);
}
