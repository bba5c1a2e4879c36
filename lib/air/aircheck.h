/* SPDX-License-Identifier: Apache-2.0 */
/* Inside the air checks: what a vehicle is taken as, and what one row says of a reading. */
#ifndef RODT_AIRCHECK_INTERNAL_H
#define RODT_AIRCHECK_INTERNAL_H

#include "core/exact.h"
#include "message/message.h"
#include "rules/air_choice.h"

/* What one row, or all rows together, say. The members are those of rodt_air_finding. */
typedef struct air_outcome {
    rodt_air_result result;
    rodt_air_missing missing;
    bool major;
    bool minor;
    bool at_limit;
    rodt_ratio measured;
    rodt_ratio allowed;
    const rodt_air_limit *row;
    int towed_units; /* of the vehicle */
} air_outcome;

#define AIR_DAYS_MAX 32

/* The days of build that can make a difference to a check, the newest first: a vehicle judged alike on all of them is
 * judged. Rows change where one of them begins or has ended. Returns how many there are. */
size_t rodti_air_list_days(air_rows rows, rodt_air_check check, rodt_date built, rodt_date days[AIR_DAYS_MAX]);

/* Judges the reading by the row, which is for the check and the vehicle. RODT_OK, or RODT_E_RANGE. */
rodt_status rodti_air_judge_row(const rodt_air_limit *row, const rodt_air_reading *reading, const air_vehicle *vehicle,
                          air_outcome *out);

/* True for a check that waits for something to come, and it never came. */
bool rodti_air_never_came(const rodt_air_reading *reading);

/* Why the reading cannot be, whatever the rule set; RODT_MESSAGE_NONE = nothing speaks against it. */
rodt_message_code rodti_air_doubt(const rodt_air_reading *reading);

#endif
