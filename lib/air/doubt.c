/* SPDX-License-Identifier: Apache-2.0 */
/* Readings that cannot be, whatever the rule set says of their figures. */
#include "air/aircheck.h"

static bool is_at_least(rodt_pressure pressure, int64_t psi)
{
    return rodt_pressure_given(pressure) && rodti_exact_compare(EXACT(pressure), (rodt_ratio){psi, 1}) >= 0;
}

static bool is_at_most(rodt_pressure pressure, int64_t psi)
{
    return rodt_pressure_given(pressure) && rodti_exact_compare(EXACT(pressure), (rodt_ratio){psi, 1}) <= 0;
}

/* Both were read, and the one that must be lower is not. */
static bool is_not_below(rodt_pressure low, rodt_pressure high)
{
    return rodt_pressure_given(low) && rodt_pressure_given(high) && rodt_pressure_compare(low, high) >= 0;
}

rodt_message_code rodti_air_doubt(const rodt_air_reading *reading)
{
    const rodt_pressure pressure = reading->pressure;
    switch (reading->check) {
    case RODT_AIR_CHECK_WARNING:
        if (is_not_below(pressure, reading->cut_in) || is_not_below(pressure, reading->cut_out))
            return RODT_MESSAGE_AIR_DOUBT_WARNING_ABOVE_CUT_IN;
        return is_at_least(pressure, RODT_WARNING_MOST_PSI) ? RODT_MESSAGE_AIR_DOUBT_TOO_HIGH : RODT_MESSAGE_NONE;
    case RODT_AIR_CHECK_SUPPLY_VALVE:
    case RODT_AIR_CHECK_PARKING_VALVE:
        return is_at_least(pressure, RODT_WARNING_MOST_PSI) ? RODT_MESSAGE_AIR_DOUBT_TOO_HIGH : RODT_MESSAGE_NONE;
    case RODT_AIR_CHECK_CUT_OUT:
        if (is_not_below(reading->cut_in, pressure))
            return RODT_MESSAGE_AIR_DOUBT_CUT_IN_ABOVE_CUT_OUT;
        return is_at_most(pressure, RODT_CUT_OUT_LEAST_PSI) ? RODT_MESSAGE_AIR_DOUBT_CUT_OUT_LOW : RODT_MESSAGE_NONE;
    case RODT_AIR_CHECK_CUT_IN:
        if (is_not_below(pressure, reading->cut_out))
            return RODT_MESSAGE_AIR_DOUBT_CUT_IN_ABOVE_CUT_OUT;
        return is_at_most(pressure, RODT_CUT_IN_LEAST_PSI) ? RODT_MESSAGE_AIR_DOUBT_CUT_IN_LOW : RODT_MESSAGE_NONE;
    case RODT_AIR_CHECK_BUILD_UP:
        return rodt_ratio_given(reading->seconds) && reading->seconds.num == 0 ? RODT_MESSAGE_AIR_DOUBT_NO_TIME
                                                                                : RODT_MESSAGE_NONE;
    default: return RODT_MESSAGE_NONE;
    }
}
