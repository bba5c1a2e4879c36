/* SPDX-License-Identifier: Apache-2.0 */
/* A column of wheel ends: whole numbers in, verdicts out, and a missing reading that stops nothing. */
#include <rodtravel/rodtravel.h>
#include <stdio.h>

#define ROWS 5
#define IN_64THS(count) ((count) * RODT_COLUMN_PER_64TH)

int main(void)
{
    const rodt_rules *rules = rodt_rules_find(RODT_DEFAULT_RULES);
    rodt_reading common = {0};
    rodt_chamber chamber;
    rodt_column_plan *plan = NULL;
    uint32_t thirty;
    uint32_t long24;
    if (rodt_pressure_from_psi(95, 1, &common.pressure) != RODT_OK ||
        rodt_column_plan_new(rules, &common, &plan, NULL) != RODT_OK ||
        rodt_chamber_parse("30 standard", &chamber, NULL) != RODT_OK ||
        rodt_column_plan_add(plan, &chamber, &thirty, NULL) != RODT_OK ||
        rodt_chamber_parse("24 long", &chamber, NULL) != RODT_OK ||
        rodt_column_plan_add(plan, &chamber, &long24, NULL) != RODT_OK)
        return 2;

    const int32_t released[ROWS] = {IN_64THS(136), IN_64THS(136), IN_64THS(120), 50 * RODT_COLUMN_PER_MM, 0};
    const int32_t applied[ROWS] = {IN_64THS(264), IN_64THS(265), IN_64THS(120), 101 * RODT_COLUMN_PER_MM, 1};
    const uint32_t codes[ROWS] = {thirty, thirty, thirty, long24, long24};
    uint8_t chambers[ROWS];
    for (int i = 0; i < ROWS; i++)
        chambers[i] = (uint8_t)codes[i];
    const uint8_t valid[1] = {0x0F}; /* the last row has no released reading */
    const rodt_column_in in = {
        .released = released, .applied = applied, .chamber = chambers, .released_valid = {valid, 0}};
    int32_t stroke[ROWS];
    uint8_t verdict[ROWS];
    uint64_t reasons[ROWS];
    const rodt_column_out out = {.stroke = stroke, .verdict = verdict, .reasons = reasons};
    rodt_error error;
    if (rodt_column_plan_judge(plan, &in, ROWS, &out, &error) != RODT_OK) {
        fprintf(stderr, "%s: %s\n", error.field, error.text);
        return 2;
    }
    for (int i = 0; i < ROWS; i++) {
        printf("%10d %-18s", (int)stroke[i], rodt_verdict_name((rodt_verdict)verdict[i]));
        for (int k = 0; k < RODT_REASON_END; k++) {
            if (reasons[i] >> k & 1u)
                printf(" %s", rodt_reason_name((rodt_reason)k));
        }
        printf("\n");
    }
    rodt_column_plan_free(plan);
    return 0;
}
