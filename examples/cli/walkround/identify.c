/* SPDX-License-Identifier: Apache-2.0 */
/* A stamp that cannot be read: which chambers fit the outside diameter, and what tells them apart. */
#include "walkround/walkround.h"
#include "ui/format.h"

#include <string.h>

static void say_candidate(const rodt_candidate *candidate)
{
    char chamber[RODT_CHAMBER_TEXT_SIZE], limit[WORD_SIZE], diameter[WORD_SIZE];
    walk_say("  ", 4, "%s: diameter %s in, limit %s", format_chamber(&candidate->chamber, chamber),
             format_length(candidate->diameter, diameter), format_length(candidate->limit, limit));
}

bool walk_identify(const walk *of, const char *text, rodt_error *error)
{
    const record_value *head = of->record.head;
    rodt_clues clues = {.port = RODT_PORT_NOT_SEEN};
    rodt_identification found;
    rodt_date day = {0, 0, 0};
    char limit[WORD_SIZE];
    if (rodt_length_parse(text, &clues.diameter, error) != RODT_OK)
        return false;
    (void)rodt_date_parse(head[HEAD_DATE].text, &day, NULL);
    if (rodt_identify(&clues, rodt_rules_find(head[HEAD_RULES].text), day, &found) != RODT_OK || found.count == 0) {
        walk_say("", 0, "No chamber that is known has this diameter.");
        return true;
    }
    for (size_t i = 0; i < found.count; i++)
        say_candidate(&found.candidates[i]);
    if (found.count > 1)
        walk_say("", 0, "Until they are told apart the strictest of them holds: limit %s.",
                 format_length(found.strict_limit, limit));
    walk_say("", 0, "%s", rodt_observation_text(found.settle_by));
    return true;
}
