/* SPDX-License-Identifier: Apache-2.0 */
/* One question, one call: is this brake in adjustment? */
#include <rodtravel/rodtravel.h>
#include <stdio.h>

int main(void)
{
    const rodt_form text = {
        .chamber = "30L",
        .released = "2 3/4",
        .applied = "5 5/16",
        .psi = "95",
        .date = "2026-03-02",
    };
    rodt_finding finding;
    rodt_error error;
    if (rodt_form_judge(&text, rodt_rules_find(RODT_DEFAULT_RULES), &finding, &error) != RODT_OK) {
        fprintf(stderr, "%s, column %u: %s\n", error.field, (unsigned)error.column, error.text);
        return 2;
    }

    char sentence[RODT_SENTENCE_SIZE];
    rodt_finding_format(&finding, sentence, sizeof sentence, NULL);
    printf("%s: %s\n", rodt_verdict_name(finding.verdict), sentence);
    for (int reason = 0; reason < RODT_REASON_END; reason++) {
        if (rodt_finding_reason_format(&finding, (rodt_reason)reason, sentence, sizeof sentence, NULL) == RODT_OK)
            printf("- %s\n", sentence);
    }
    if (finding.source != NULL && rodt_source_format(finding.source, sentence, sizeof sentence, NULL) == RODT_OK)
        printf("%s\n", sentence);
    return finding.verdict == RODT_VERDICT_IN_ADJUSTMENT ? 0 : 1;
}
