/* SPDX-License-Identifier: Apache-2.0 */
/* Air checks of one combination by the model driver manual, and how much air a full application takes. */
#include <rodtravel/rodtravel.h>
#include <stdio.h>

/* A tractor with 2 chambers of type 20 and 4 of type 30, 49 CFR 571.121. */
static bool find_volumes(rodt_ratio *chambers, rodt_ratio *required)
{
    rodt_chamber steer, drive;
    rodt_ratio small, large;
    return rodt_chamber_parse("20", &steer, NULL) == RODT_OK && rodt_chamber_parse("30", &drive, NULL) == RODT_OK &&
           rodt_chamber_rated_volume(&steer, &small) == RODT_OK &&
           rodt_chamber_rated_volume(&drive, &large) == RODT_OK &&
           rodt_ratio_multiply(small, (rodt_ratio){2, 1}, &small) == RODT_OK &&
           rodt_ratio_multiply(large, (rodt_ratio){4, 1}, &large) == RODT_OK &&
           rodt_ratio_add(small, large, chambers) == RODT_OK &&
           rodt_reservoir_required_volume(*chambers, false, required) == RODT_OK;
}

static bool estimate(void)
{
    const rodt_pressure before = {100, 1}, least = {60, 1};
    const rodt_ratio whole = {1, 1};
    rodt_ratio chambers, required;
    rodt_pressure after;
    unsigned count;
    char held[RODT_RATIO_TEXT_SIZE], needed[RODT_RATIO_TEXT_SIZE], text[RODT_SENTENCE_SIZE];
    if (!find_volumes(&chambers, &required) ||
        rodt_reservoir_estimate_application(before, required, chambers, whole, &after) != RODT_OK ||
        rodt_reservoir_estimate_applications(before, least, required, chambers, whole, &count) != RODT_OK)
        return false;
    rodt_ratio_format(chambers, held, sizeof held, NULL);
    rodt_ratio_format(required, needed, sizeof needed, NULL);
    rodt_pressure_format(after, text, sizeof text, NULL);
    printf("%s in3 of chambers need %s in3 of reservoirs\n", held, needed);
    printf("estimate: 100 psi falls to %s psi in one full application; %u keep 60 psi\n", text, count);
    return true;
}

int main(void)
{
    const rodt_rules *rules = rodt_rules_find("us-cdl");
    const rodt_air_reading readings[] = {
        {.check = RODT_AIR_CHECK_WARNING, .pressure = {62, 1}},
        {.check = RODT_AIR_CHECK_BUILD_UP, .before = {85, 1}, .after = {100, 1}, .seconds = {38, 1}},
        {.check = RODT_AIR_CHECK_CUT_OUT, .pressure = {125, 1}},
        {.check = RODT_AIR_CHECK_LOSS_APPLIED, .towed_units = 1, .before = {110, 1}, .after = {105, 1}},
        {.check = RODT_AIR_CHECK_SPRING_BRAKE, .answer = RODT_RECORDED_YES},
    };
    char text[RODT_SENTENCE_SIZE];
    for (size_t i = 0; i < sizeof readings / sizeof readings[0]; i++) {
        rodt_air_finding finding;
        if (rodt_air_reading_judge(&readings[i], rules, &finding, NULL) != RODT_OK)
            return 2;
        rodt_air_finding_format(&finding, text, sizeof text, NULL);
        printf("%s\n", text);
        rodt_air_finding_edge_format(&finding, text, sizeof text, NULL);
        printf("  %s\n", text);
    }

    return estimate() ? 0 : 2;
}
