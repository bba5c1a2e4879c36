/* SPDX-License-Identifier: Apache-2.0 */
/* A whole vehicle: six wheel ends, what they weigh together, what does not match on an axle, what to do next. */
#include <rodtravel/rodtravel.h>
#include <stdio.h>
#include <string.h>

static const struct row {
    const char *position, *chamber, *released, *applied, *arm_length;
    rodt_adjuster adjuster;
} rows[] = {
    {"1L", "20 standard", "1 1/2", "3 1/8", "5 1/2", RODT_ADJUSTER_AUTOMATIC},
    {"1R", "20 standard", "1 1/2", "3 1/4", "5 1/2", RODT_ADJUSTER_AUTOMATIC},
    {"2L", "30/30 standard", "2 1/8", "4 3/8", "5 1/2", RODT_ADJUSTER_AUTOMATIC},
    {"2R", "24/30 standard", "2 1/16", "3 3/4", "6", RODT_ADJUSTER_AUTOMATIC},
    {"3L", "30/30 standard", "2", "4 1/8", "6", RODT_ADJUSTER_MANUAL},
    {"3R", "30/30 standard", "2", "3 3/4", "6", RODT_ADJUSTER_MANUAL},
};

enum { COUNT = sizeof rows / sizeof rows[0] };

int main(void)
{
    rodt_wheel_end ends[COUNT] = {0};
    rodt_finding findings[COUNT];
    rodt_advice advice[COUNT];
    rodt_vehicle_finding vehicle;
    char text[RODT_SENTENCE_SIZE];
    for (size_t i = 0; i < COUNT; i++) {
        rodt_reading *reading = &ends[i].reading;
        rodt_position_parse_n(rows[i].position, strlen(rows[i].position), &ends[i].position, NULL);
        rodt_chamber_parse(rows[i].chamber, &reading->chamber, NULL);
        rodt_length_parse(rows[i].released, &reading->released, NULL);
        rodt_length_parse(rows[i].applied, &reading->applied, NULL);
        rodt_length_parse(rows[i].arm_length, &ends[i].arm_length, NULL);
        rodt_pressure_from_psi(95, 1, &reading->pressure);
        ends[i].adjuster = rows[i].adjuster;
    }
    rodt_error error;
    if (rodt_vehicle_judge(ends, COUNT, 0, rodt_rules_find(RODT_DEFAULT_RULES), findings, advice, &vehicle,
                           &error) != RODT_OK) {
        fprintf(stderr, "wheel end %u, %s: %s\n", (unsigned)error.line, error.field, error.text);
        return 2;
    }
    rodt_count_format(&vehicle.count, text, sizeof text, NULL);
    printf("%s: %s\n", rodt_outcome_name(vehicle.count.outcome), text);
    for (size_t i = 0; i < vehicle.axle_count; i++) {
        for (uint32_t bit = 1; bit <= RODT_AXLE_STEERING_DEAD; bit <<= 1) {
            if (rodt_axle_format(&vehicle.axles[i], bit, text, sizeof text, NULL) == RODT_OK)
                printf("%s\n", text);
        }
    }
    for (size_t i = 0; i < COUNT; i++) {
        if (advice[i] != RODT_ADVICE_NONE)
            printf("%s: %s\n", rows[i].position, rodt_advice_text(advice[i]));
    }
    return 0;
}
