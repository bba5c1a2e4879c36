/* SPDX-License-Identifier: Apache-2.0 */
/* A housing without a legible stamp: what can it be, and what would settle it? */
#include <rodtravel/rodtravel.h>
#include <stdio.h>

int main(void)
{
    rodt_clues clues = {0};
    rodt_identification answer;
    const rodt_date newest = {0};
    clues.port = RODT_PORT_ROUND;
    if (rodt_length_parse("8 1/8", &clues.diameter, NULL) != RODT_OK ||
        rodt_length_parse("1/16", &clues.diameter_division, NULL) != RODT_OK ||
        rodt_clues_identify(&clues, rodt_rules_find(RODT_DEFAULT_RULES), newest, &answer, NULL) != RODT_OK)
        return 2;

    for (size_t i = 0; i < answer.count; i++) {
        char name[RODT_CHAMBER_TEXT_SIZE];
        char limit[RODT_LENGTH_TEXT_SIZE] = "not published";
        rodt_chamber_format(&answer.candidates[i].chamber, name, sizeof name, NULL);
        if (rodt_length_given(answer.candidates[i].limit))
            rodt_length_format(answer.candidates[i].limit, limit, sizeof limit, NULL);
        printf("%zu. %-20s limit %s\n", i + 1, name, limit);
    }
    char strict[RODT_LENGTH_TEXT_SIZE];
    if (rodt_length_format(answer.strict_limit, strict, sizeof strict, NULL) == RODT_OK)
        printf("until it is settled, judge by %s\n", strict);
    printf("next: %s\n", rodt_observation_text(answer.next_observation));
    return 0;
}
