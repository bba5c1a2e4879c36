/* SPDX-License-Identifier: Apache-2.0 */
/* Which rows of air checks are for a vehicle, and which of them take the place of others. */
#ifndef RODT_AIR_CHOICE_H
#define RODT_AIR_CHOICE_H

#include "core/common.h"
#include "rodtravel/aircheck.h"

/* A vehicle with nothing left open. */
typedef struct air_vehicle {
    rodt_vehicle_class vehicle;
    int towed_units; /* 0 = none */
    rodt_date built;
} air_vehicle;

/* The rows of one rule set. */
typedef struct air_rows {
    const rodt_air_limit *row;
    size_t count;
} air_rows;

/* The rows that are the rule set's own; of a carrier's limits those of the carrier. */
air_rows rodti_air_rows(const rodt_rules *rules);

/* The law whose rows judge: the rule set itself, or what a carrier's air checks are based on. */
const rodt_rules *rodti_air_law(const rodt_rules *rules);

/* True if the row is for the vehicle. */
bool rodti_air_is_for(const rodt_air_limit *row, const air_vehicle *vehicle);

/* True if the row is for the check and the vehicle, and no more exact one is there. */
bool rodti_air_is_chosen(air_rows rows, const rodt_air_limit *row, rodt_air_check check, const air_vehicle *vehicle);

/* The next day of the calendar; one that is not given stays so. A vehicle built on it is beyond a row that ends. */
rodt_date rodti_air_day_after(rodt_date day);

bool rodti_air_is_dated(const rodt_air_limit *row);
bool rodti_air_is_one_span(const rodt_air_limit *a, const rodt_air_limit *b);

/* The row's figure for so many towed units; false if it does not fit. */
bool rodti_air_allowed(const rodt_air_limit *row, int towed_units, rodt_ratio *out);

#endif
