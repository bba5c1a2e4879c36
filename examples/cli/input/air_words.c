/* SPDX-License-Identifier: Apache-2.0 */
/* The words of an air check, as options and records have them. */
#include "input/air_words.h"

#include <string.h>

const choice span_words[SPAN_WORDS] = {{"warning", RODT_AIR_SPAN_WARNING},
                                       {"applications", RODT_AIR_SPAN_APPLICATIONS},
                                       {"recovery", RODT_AIR_SPAN_RECOVERY}};
const choice vehicle_words[VEHICLE_WORDS] = {{"single", RODT_VEHICLE_CLASS_SINGLE},
                                             {"combination", RODT_VEHICLE_CLASS_COMBINATION},
                                             {"bus", RODT_VEHICLE_CLASS_BUS}};

rodt_air_check air_check_of(const char *text)
{
    RODT_ENUM32(rodt_air_check) check;
    return text != NULL && rodt_air_check_find(text, &check) == RODT_OK ? (rodt_air_check)check : RODT_AIR_CHECK_NONE;
}
