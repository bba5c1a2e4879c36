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

/* "31/8", which may have lost its blank, is none. */
static bool read_length(const char *text, rodt_length *out)
{
    return rodt_length_parse_strict(text, out, NULL) == RODT_OK;
}

static bool read_row(const struct row *row, rodt_wheel_end *end)
{
    rodt_reading *reading = &end->reading;
    end->adjuster = row->adjuster;
    return rodt_position_parse_n(row->position, strlen(row->position), &end->position, NULL) == RODT_OK &&
           rodt_chamber_parse(row->chamber, &reading->chamber, NULL) == RODT_OK &&
           read_length(row->released, &reading->released) && read_length(row->applied, &reading->applied) &&
           read_length(row->arm_length, &end->arm_length) &&
           rodt_pressure_from_psi(95, 1, &reading->pressure) == RODT_OK;
}

int main(void)
{
    rodt_wheel_end ends[COUNT] = {0};
    rodt_finding findings[COUNT];
    rodt_advice advice[COUNT];
    rodt_vehicle_finding vehicle;
    char text[RODT_SENTENCE_SIZE];
    for (size_t i = 0; i < COUNT; i++) {
        if (!read_row(&rows[i], &ends[i]))
            return 2;
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
        for (uint32_t bit = 1; bit <= RODT_AXLE_MISMATCH_STEERING_DEAD; bit <<= 1) {
            if (rodt_axle_mismatch_format(&vehicle.axles[i], bit, text, sizeof text, NULL) == RODT_OK)
                printf("%s\n", text);
        }
    }
    for (size_t i = 0; i < COUNT; i++) {
        if (advice[i] != RODT_ADVICE_NONE)
            printf("%s: %s\n", rows[i].position, rodt_advice_text(advice[i]));
    }
    return 0;
}
