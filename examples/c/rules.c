/* SPDX-License-Identifier: Apache-2.0 */
/* Dated law: the limit of a clamp 36 on two days in a row, and a carrier's own stricter limit on top. */
#include <rodtravel/rodtravel.h>
#include <stdio.h>
#include <string.h>

static void show(const rodt_rules *rules, const char *mark, int year, int month, int day)
{
    rodt_chamber chamber;
    rodt_date date;
    rodt_limit_answer answer;
    char limit[RODT_LENGTH_TEXT_SIZE] = "none";
    char law[RODT_LENGTH_TEXT_SIZE] = "none";
    if (rodt_chamber_parse(mark, &chamber, NULL) != RODT_OK || rodt_date_make(year, month, day, &date) != RODT_OK ||
        rodt_rules_find_limit(rules, &chamber, date, &answer, NULL) != RODT_OK)
        return;
    if (rodt_length_given(answer.limit))
        rodt_length_format(answer.limit, limit, sizeof limit, NULL);
    if (rodt_length_given(answer.law_limit))
        rodt_length_format(answer.law_limit, law, sizeof law, NULL);
    printf("%-12s %-10s on %04d-%02d-%02d: limit %s, the law's %s\n", rodt_rules_id(rules), mark, year, month, day,
           limit, law);
}

int main(void)
{
    static const char own[] = "family,size,class,limit\n"
                              "clamp,30,standard,1 7/8\n";
    const rodt_rules *law = rodt_rules_find("us-fmcsr");
    show(law, "clamp 36", 2021, 10, 13);
    show(law, "clamp 36", 2021, 10, 14);

    rodt_rules *carrier;
    rodt_error error;
    if (rodt_rules_load(law, "birch-yard", own, strlen(own), &carrier, &error) != RODT_OK) {
        fprintf(stderr, "line %u: %s\n", (unsigned)error.line, error.text);
        return 2;
    }
    show(carrier, "30", 2026, 3, 2);
    rodt_rules_unref(carrier);
    return 0;
}
