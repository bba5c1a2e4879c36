/* SPDX-License-Identifier: Apache-2.0 */
/* What an answer was before it was changed after a verdict: a bad brake does not become a good one without a trace. */
#include "walkround/walkround.h"

#include <stdio.h>
#include <string.h>

static bool is_measured(const record_value *end)
{
    return end[END_RELEASED].text != NULL && end[END_APPLIED].text != NULL;
}

/* A verdict was told that rests on the answer. */
static bool is_judged(const walk *of, const walk_item *item)
{
    if (item->end != WALK_NONE)
        return is_measured(of->record.ends[item->end]);
    if (item->check != RODT_AIR_CHECK_NONE)
        return walk_is_check_done(of, item->check);
    for (size_t i = 0; walk_questions[item->id].location == WALK_ALL_ENDS && i < of->record.end_count; i++) {
        if (is_measured(of->record.ends[i]))
            return true;
    }
    return false;
}

/* "4 1/8 (2026-11-20 06:40)", after what was replaced before that. */
static bool keep(walk *of, const walk_item *item, const char *before)
{
    char name[WALK_NAME_SIZE + sizeof STEP_REPLACED], when[WALK_ANSWER_MAX] = "?", text[3 * WALK_ANSWER_MAX];
    walk_step_name(&of->trial, item, name);
    snprintf(name + strlen(name), sizeof STEP_REPLACED, "%s", STEP_REPLACED);
    (void)walk_now(when);
    const char *earlier = record_step(&of->trial, name);
    snprintf(text, sizeof text, "%.390s%s%.390s (%.20s)", earlier != NULL ? earlier : "", earlier != NULL ? "; " : "",
             before, when);
    return walk_set_step(of, &of->trial, name, text);
}

/* An answer that says who repaired it stays. */
static bool ask_repair(walk *of)
{
    const char *name = walk_questions[ASK_REPAIR].name;
    return walk_set_step(of, &of->trial, name, NULL) && walk_set_step(of, &of->trial, STEP_REPAIR_DUE, "yes");
}

bool walk_keep_replaced(walk *of, const walk_item *item)
{
    const record_value was = walk_value(&of->record, item), now = walk_value(&of->trial, item);
    const char *before = was.text;
    if (before == NULL && item->check != RODT_AIR_CHECK_NONE && walk_never_came(&of->record, item->check))
        before = STEP_NEVER;
    if (before == NULL || (now.text != NULL && strcmp(before, now.text) == 0) || !is_judged(of, item))
        return true;
    return keep(of, item, before) && (!walk_is_bad(of) || ask_repair(of));
}
