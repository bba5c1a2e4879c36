/* SPDX-License-Identifier: Apache-2.0 */
/* Reservoirs: rated and required volumes of law, and an estimate of what full applications take out of them. */
#include "core/always.h"
#include "core/exact.h"
#include "rules/tables.h"

#include <string.h>

size_t rodt_volume_row_count(void) { return rodti_table_volumes_count; }

const rodt_volume_row *rodt_volume_row_at(size_t index)
{
    return index < rodti_table_volumes_count ? &rodti_table_volumes[index] : NULL;
}

/* Table V is about full stroke, which is what a rated stroke marks. */
static bool holds(const rodt_volume_row *row, const rodt_chamber *chamber)
{
    rodt_length rated = chamber->rated_stroke;
    return strcmp(row->size, chamber->size) == 0 &&
           (!rodt_length_given(rated) || (rodt_length_compare(row->stroke_from, rated) <= 0 &&
                                          rodt_length_compare(rated, row->stroke_until) <= 0));
}

rodt_status rodt_chamber_rated_volume(const rodt_chamber *chamber, rodt_ratio *cubic_inches)
{
    if (chamber == NULL || cubic_inches == NULL || chamber->size[0] == '\0' ||
        memchr(chamber->size, '\0', sizeof chamber->size) == NULL)
        return RODT_E_ARGUMENT;
    if (chamber->family != RODT_FAMILY_UNKNOWN && chamber->family != RODT_FAMILY_CLAMP)
        return RODT_E_UNKNOWN_CHAMBER;
    for (size_t i = 0; i < rodti_table_volumes_count; i++) {
        if (holds(&rodti_table_volumes[i], chamber)) {
            *cubic_inches = rodti_table_volumes[i].volume;
            return RODT_OK;
        }
    }
    return RODT_E_UNKNOWN_CHAMBER;
}

static bool is_positive(rodt_ratio ratio) { return ratio.den > 0 && ratio.num > 0; }

rodt_status rodt_reservoir_required_volume(rodt_ratio chambers, bool trailer, rodt_ratio *cubic_inches)
{
    if (cubic_inches == NULL || !is_positive(chambers))
        return RODT_E_ARGUMENT;
    rodt_ratio multiple = trailer ? rodti_table_multiple_trailer.value : rodti_table_multiple_truck.value;
    return rodti_exact_multiply(chambers, multiple, cubic_inches) ? RODT_OK : RODT_E_RANGE;
}

/* The formula is one row of the air checks; its 25 s are there. */
static const rodt_air_limit *find_formula(void)
{
    const rodt_air_limit *found = NULL;
    for (size_t r = 0; r < rodti_table_rules_count; r++) {
        for (size_t i = 0; i < rodti_table_rules[r].air_count; i++) {
            if (rodti_table_rules[r].air[i].by_volume)
                found = &rodti_table_rules[r].air[i];
        }
    }
    return found;
}

rodt_status rodt_reservoir_build_up_seconds(rodt_ratio actual, rodt_ratio required, rodt_ratio *seconds)
{
    rodt_ratio value;
    const rodt_air_limit *formula = find_formula();
    if (seconds == NULL || !is_positive(actual) || !is_positive(required))
        return RODT_E_ARGUMENT;
    if (NEVER(formula == NULL)) /* the tables have it */
        return RODT_E_INTERNAL;
    bool fits = rodti_exact_multiply(formula->value, actual, &value) && rodti_exact_divide(value, required, seconds);
    return fits ? RODT_OK : RODT_E_RANGE;
}

/* --- The estimate ------------------------------------------------------------------------------------ */

static const rodt_ratio atmosphere = {147, 10}; /* psi; the round figure of the field */

static bool is_gauge(rodt_pressure pressure) { return pressure.den > 0 && pressure.num >= 0; }

static bool is_valid(rodt_pressure pressure, rodt_ratio reservoir, rodt_ratio chambers, rodt_ratio fill)
{
    return is_gauge(pressure) && is_positive(reservoir) && is_positive(chambers) && fill.den > 0 && fill.num >= 0 &&
           fill.num <= fill.den;
}

static bool to_absolute(rodt_pressure gauge, rodt_ratio *out)
{
    return rodti_exact_add(EXACT(gauge), atmosphere, out);
}

/* The part of the air that stays: V / (V + v x fill). */
static bool stays(rodt_ratio reservoir, rodt_ratio chambers, rodt_ratio fill, rodt_ratio *out)
{
    rodt_ratio filled;
    return rodti_exact_multiply(chambers, fill, &filled) &&
           rodti_exact_add(reservoir, filled, &filled) && rodti_exact_divide(reservoir, filled, out);
}

rodt_status rodt_reservoir_estimate_application(rodt_pressure pressure, rodt_ratio reservoir, rodt_ratio chambers,
                                      rodt_ratio fill, rodt_pressure *after)
{
    rodt_ratio absolute, part;
    if (after == NULL || !is_valid(pressure, reservoir, chambers, fill))
        return RODT_E_ARGUMENT;
    if (!stays(reservoir, chambers, fill, &part) || !to_absolute(pressure, &absolute) ||
        !rodti_exact_multiply(absolute, part, &absolute) || !rodti_exact_subtract(absolute, atmosphere, &absolute))
        return RODT_E_RANGE;
    /* A nearly empty reservoir cannot fill a chamber above the air around it; a gauge shows nothing then. */
    *after = absolute.num < 0 ? (rodt_pressure){0, 1} : (rodt_pressure){absolute.num, absolute.den};
    return RODT_OK;
}

#define APPLICATIONS_MAX 99u

/* After n applications part^n of the air is left, and must not be less than `least`. Each leaves less than the one
 * before, so the number is found by halves. */
static unsigned count_applications(rodt_ratio part, rodt_ratio least)
{
    unsigned kept = 0, lost = APPLICATIONS_MAX + 1;
    while (lost - kept > 1) {
        unsigned middle = (kept + lost) / 2;
        if (rodti_exact_compare_power(part, middle, least) >= 0)
            kept = middle;
        else
            lost = middle;
    }
    return kept;
}

rodt_status rodt_reservoir_estimate_applications(rodt_pressure pressure, rodt_pressure least, rodt_ratio reservoir,
                                       rodt_ratio chambers, rodt_ratio fill, unsigned *count)
{
    rodt_ratio start, end, part;
    if (count == NULL || !is_gauge(least) || !is_valid(pressure, reservoir, chambers, fill))
        return RODT_E_ARGUMENT;
    if (!stays(reservoir, chambers, fill, &part) || !to_absolute(pressure, &start) || !to_absolute(least, &end) ||
        !rodti_exact_divide(end, start, &end))
        return RODT_E_RANGE;
    *count = count_applications(part, end);
    return RODT_OK;
}
