/* SPDX-License-Identifier: Apache-2.0 */
/* The words of an air check, as options and records have them. */
#include "input/air_words.h"

#include <rodtravel/rodtravel.h>

const choice span_words[SPAN_WORDS] = {{"warning", RODT_AIR_SPAN_FROM_WARNING},
                                       {"applications", RODT_AIR_SPAN_FROM_APPLICATIONS},
                                       {"recovery", RODT_AIR_SPAN_RECOVERY}};
const choice vehicle_words[VEHICLE_WORDS] = {{"single", RODT_VEHICLE_CLASS_SINGLE},
                                             {"combination", RODT_VEHICLE_CLASS_COMBINATION},
                                             {"bus", RODT_VEHICLE_CLASS_BUS}};
