/* SPDX-License-Identifier: Apache-2.0 */
/* The one list of the words of checks, vehicles and timed spans. */
#include "rules/air_words.h"

#include "core/common.h"

#include <string.h>

const char *const rodti_air_check_names[RODT_AIR_CHECK_END] = {
    [RODT_AIR_CHECK_NONE] = "",
    [RODT_AIR_CHECK_WARNING] = "warning",
    [RODT_AIR_CHECK_BUILD_UP] = "build-up",
    [RODT_AIR_CHECK_CUT_OUT] = "cut-out",
    [RODT_AIR_CHECK_CUT_IN] = "cut-in",
    [RODT_AIR_CHECK_LOSS_RELEASED] = "loss-released",
    [RODT_AIR_CHECK_LOSS_APPLIED] = "loss-applied",
    [RODT_AIR_CHECK_RESERVE] = "reserve",
    [RODT_AIR_CHECK_SPRING_BRAKE] = "spring-brake",
    [RODT_AIR_CHECK_TRACTOR_PROTECTION] = "tractor-protection",
    [RODT_AIR_CHECK_SUPPLY_VALVE] = "supply-valve",
    [RODT_AIR_CHECK_PARKING_VALVE] = "parking-valve",
    [RODT_AIR_CHECK_DRAIN] = "drain",
    [RODT_AIR_CHECK_AUDIBLE_LEAK] = "audible-leak",
    [RODT_AIR_CHECK_CONTAMINATION] = "contamination"};
const char *const rodti_air_vehicle_names[RODT_VEHICLE_CLASS_BUS + 1] = {"any", "single", "combination", "bus"};
const char *const rodti_air_span_names[RODT_AIR_SPAN_RECOVERY + 1] = {[RODT_AIR_SPAN_PRESSURES] = "",
                                                            [RODT_AIR_SPAN_FROM_WARNING] = "warning",
                                                            [RODT_AIR_SPAN_FROM_APPLICATIONS] = "applications",
                                                            [RODT_AIR_SPAN_RECOVERY] = "recovery"};

/* The index of the word, or 0. */
static int find_word(const char *const *words, size_t count, const char *word)
{
    for (size_t i = 1; word != NULL && i < count; i++) {
        if (strcmp(words[i], word) == 0)
            return (int)i;
    }
    return 0;
}

const char *rodt_air_check_name(rodt_air_check check)
{
    return (unsigned)check < RODT_AIR_CHECK_END ? rodti_air_check_names[check] : "";
}

rodt_air_check rodt_air_check_find(const char *name)
{
    return (rodt_air_check)find_word(rodti_air_check_names, COUNT_OF(rodti_air_check_names), name);
}

const char *rodt_vehicle_class_name(rodt_vehicle_class vehicle)
{
    return (unsigned)vehicle < COUNT_OF(rodti_air_vehicle_names) ? rodti_air_vehicle_names[vehicle] : "";
}

const char *rodt_air_span_name(rodt_air_span span)
{
    return (unsigned)span < COUNT_OF(rodti_air_span_names) ? rodti_air_span_names[span] : "";
}

rodt_air_span rodt_air_span_find(const char *name)
{
    return (rodt_air_span)find_word(rodti_air_span_names, COUNT_OF(rodti_air_span_names), name);
}
