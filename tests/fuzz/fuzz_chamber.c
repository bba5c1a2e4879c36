/* SPDX-License-Identifier: Apache-2.0 */
/* Any bytes as a chamber mark and as a stroke class: refused with a reason and without a trace, or read to a chamber
 * that is the same when it is written and read again, and that a rule set and the identification can take. */
#include <rodtravel/rodtravel.h>

#include <stdlib.h>
#include <string.h>

#include "source.h"

/* A refusal names its status, a column inside the text and a closed sentence. */
static void check_refusal(rodt_status status, const rodt_error *error, size_t size)
{
    demand(status == error->status);
    demand(error->column <= size + 1);
    demand(memchr(error->text, '\0', sizeof error->text) != NULL);
    demand(error->text[0] != '\0');
    demand(strcmp(rodt_status_text(status), "unknown status") != 0);
}

/* What the clue can be is at least as strict as each of its candidates, and no candidate comes out of nothing. */
static void check_identification(const rodt_chamber *stamp)
{
    static const rodt_date newest = {0};
    rodt_clues clues = {.stamp = *stamp};
    rodt_identification found;
    demand(rodt_clues_identify(&clues, rodt_rules_find(RODT_DEFAULT_RULES), newest, &found, NULL) == RODT_OK);
    demand(found.count > 0 && found.count <= RODT_CANDIDATES_MAX && found.contradiction == 0);
    for (size_t i = 0; i < found.count; i++) {
        const rodt_candidate *candidate = &found.candidates[i];
        demand(strcmp(candidate->chamber.size, stamp->size) == 0);
        demand(candidate->clues_against == 0);
        demand(!rodt_length_given(candidate->limit) ||
                rodt_length_compare(found.strict_limit, candidate->limit) <= 0);
    }
}

static void check_chamber(const char *text, size_t size)
{
    static const rodt_chamber untouched = {.size = "77"};
    rodt_chamber chamber = untouched;
    rodt_chamber again;
    rodt_limit_answer answer;
    rodt_error error;
    char written[RODT_CHAMBER_TEXT_SIZE];
    rodt_status status = rodt_chamber_parse_n(text, size, &chamber, &error);
    if (status != RODT_OK) {
        check_refusal(status, &error, size);
        demand(memcmp(&chamber, &untouched, sizeof chamber) == 0);
        return;
    }
    demand(chamber.size[0] != '\0');
    demand(rodt_chamber_format(&chamber, written, sizeof written, NULL) == RODT_OK);
    demand(rodt_chamber_parse(written, &again, NULL) == RODT_OK);
    demand(memcmp(&chamber, &again, sizeof chamber) == 0);
    demand(rodt_rules_find_limit(rodt_rules_find(RODT_DEFAULT_RULES), &chamber, (rodt_date){0}, &answer, NULL) == RODT_OK);
    check_identification(&chamber);
}

static void check_class(const char *text, size_t size)
{
    RODT_ENUM32(rodt_stroke_class) stroke_class = (rodt_stroke_class)77;
    RODT_ENUM32(rodt_stroke_class) again;
    rodt_error error;
    rodt_status status = rodt_stroke_class_parse_n(text, size, &stroke_class, &error);
    if (status != RODT_OK) {
        check_refusal(status, &error, size);
        demand((int)stroke_class == 77);
        return;
    }
    const char *name = rodt_stroke_class_name(stroke_class);
    demand(rodt_stroke_class_parse_n(name, strlen(name), &again, NULL) == RODT_OK && again == stroke_class);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static const char nothing[1] = "";
    const char *text = data != NULL ? (const char *)data : nothing;
    check_chamber(text, size);
    check_class(text, size);
    return 0;
}
