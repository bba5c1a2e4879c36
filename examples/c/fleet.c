/* SPDX-License-Identifier: Apache-2.0 */
/* Many wheel ends: every row gets a finding, an unreadable one too, and none of them stops the run. */
#include <rodtravel/rodtravel.h>
#include <stdio.h>

static const rodt_form rows[] = {
    {.chamber = "20", .released = "2 1/4", .applied = "4", .psi = "95", .date = "2026-03-02"},
    {.chamber = "30/30", .released = "1 1/2", .applied = "3 5/8", .psi = "95", .date = "2026-03-02"},
    {.chamber = "24 LS", .released = "2", .applied = "4 1/2", .rated_stroke = "3", .psi = "92"},
    {.chamber = "roto 30", .released = "50.8 mm", .applied = "104 mm", .division = "1 mm"},
    {.chamber = "36", .released = "2", .applied = "4 1/2", .date = "10/11/2021"},
    {.chamber = "T30", .released = "2-Jan", .applied = "3 1/2", .psi = "95"},
};

int main(void)
{
    const rodt_rules *rules = rodt_rules_find(RODT_DEFAULT_RULES);
    unsigned counts[4] = {0};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        rodt_finding finding;
        rodt_error error;
        char sum[RODT_SENTENCE_SIZE];
        if (rodt_form_judge_row(&rows[i], rules, &finding, &error) != RODT_OK)
            return 2;
        counts[finding.verdict]++;
        rodt_finding_format(&finding, sum, sizeof sum, NULL);
        printf("%-8s %-18s %s\n", rows[i].chamber, rodt_verdict_name(finding.verdict), sum);
        if (error.status != RODT_OK)
            printf("         %s: %s\n", error.field, error.text);
    }
    printf("%u in adjustment, %u out, %u inoperative, %u undetermined\n", counts[RODT_VERDICT_IN_ADJUSTMENT],
           counts[RODT_VERDICT_OUT_OF_ADJUSTMENT], counts[RODT_VERDICT_INOPERATIVE], counts[RODT_VERDICT_UNDETERMINED]);
    return 0;
}
