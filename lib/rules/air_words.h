/* SPDX-License-Identifier: Apache-2.0 */
/* Words of air checks: what tables, commands and findings call them. */
#ifndef RODT_AIR_WORDS_H
#define RODT_AIR_WORDS_H

#include "rodtravel/aircheck.h"

/* In the order of the enumerations. */
extern const char *const rodti_air_check_names[RODT_AIR_CHECK_END];
extern const char *const rodti_air_vehicle_names[RODT_VEHICLE_CLASS_BUS + 1];
extern const char *const rodti_air_span_names[RODT_AIR_SPAN_RECOVERY + 1];

#endif
