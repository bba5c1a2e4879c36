/* SPDX-License-Identifier: Apache-2.0 */
/* What is said of the chambers that the clues allow. */
#include "commands/candidates.h"
#include "ui/compiler.h"

#include <stdio.h>
#include <string.h>

/* A letter alone is no mark by itself, but it is one on a housing that was seen to be of the bolt type. */
rodt_status read_stamp_clue(const char *text, rodt_family family, rodt_chamber *out, rodt_error *error)
{
    char named[80];
    rodt_status status = rodt_chamber_parse(text, out, error);
    if (status == RODT_OK || family != RODT_FAMILY_BOLT || strlen(text) != 1)
        return status;
    snprintf(named, sizeof named, "%s %s", rodt_family_name(family), text);
    return rodt_chamber_parse(named, out, NULL) == RODT_OK ? RODT_OK : status;
}

void name_clues(uint32_t clues, char *words, size_t size)
{
    static const struct {
        uint32_t bit;
        const char *name;
    } names[] = {{RODT_CLUE_STAMP, TO_SAY("stamp")}, {RODT_CLUE_FAMILY, TO_SAY("family")},
                 {RODT_CLUE_PORT_SHAPE, TO_SAY("port shape")}, {RODT_CLUE_TAG, TO_SAY("tag")},
                 {RODT_CLUE_RATED_STROKE, TO_SAY("rated stroke")}, {RODT_CLUE_DIAMETER, TO_SAY("diameter")}};
    words[0] = '\0';
    for (size_t i = 0; i < COUNT_OF(names); i++) {
        size_t used = strlen(words);
        if ((clues & names[i].bit) != 0)
            snprintf(words + used, size - used, "%s%s", used == 0 ? "" : ", ", say(names[i].name));
    }
}

const char *say_contradiction(uint32_t clues, char text[SAID_SIZE])
{
    char names[120];
    name_clues(clues, names, sizeof names);
    snprintf(text, SAID_SIZE, say("the clues contradict each other (%s): one was misread, or parts of two chambers "
                                  "were put together; check again"), names);
    return text;
}

bool candidates_have_one_limit(const rodt_identification *answer)
{
    for (size_t i = 0; i < answer->count; i++) {
        if (rodt_length_compare(answer->candidates[i].limit, answer->strict_limit) != 0)
            return false;
    }
    return answer->without_limit == 0 && answer->contradiction == 0;
}

/* Without a candidate, or without a limit for any of them, the library has nothing to distinguish. */
const char *say_next_observation(const rodt_identification *answer, char text[SAID_SIZE])
{
    if (answer->count == 0)
        return say("no chamber in the tables matches: check and measure again");
    if (!rodt_length_given(answer->strict_limit))
        return say("the rule set has no limit for it: read the rated stroke marked on the housing (--rated), a rule "
                   "set may judge by a part of that");
    if (answer->next_observation == RODT_OBSERVATION_NOTHING && !candidates_have_one_limit(answer))
        return say("look how the housing is held together, and for every sign of long stroke: L or LS in the mark, "
                   "square ports, a trapezoid tag");
    rodt_message message;
    (void)say_message(rodt_observation_message(answer->next_observation, &message), &message, text, SAID_SIZE);
    return text;
}
