/* SPDX-License-Identifier: Apache-2.0 */
/* Readings belong to the conditions under which they were taken: air, engine and parking brake of another application
 * prove nothing about them. */
#include "walkround/walkround.h"
#include "ui/language.h"

#include <string.h>

static void forget_reading(inspection_record *record, int end, walk_id id)
{
    record->ends[end][walk_questions[id].key] = (record_value){NULL, 0};
}

static bool has(const inspection_record *record, int end, walk_id id)
{
    return record->ends[end][walk_questions[id].key].text != NULL;
}

static bool is_spring_on(const record_value *end)
{
    return end[END_SPRING].text != NULL && strcmp(end[END_SPRING].text, "on") == 0;
}

/* The first reading too was of a rod that the spring brake held out. */
static bool forget_held_out(walk *of)
{
    bool dropped = false;
    for (int end = 0; end < (int)of->trial.end_count; end++) {
        if (!is_spring_on(of->record.ends[end]) || is_spring_on(of->trial.ends[end]) ||
            !has(&of->trial, end, ASK_END_RELEASED))
            continue;
        forget_reading(&of->trial, end, ASK_END_RELEASED);
        forget_reading(&of->trial, end, ASK_END_APPLIED);
        dropped = true;
    }
    return dropped;
}

static size_t find_verdicts(walk *of, const inspection_record *record, rodt_verdict verdicts[VEHICLE_ENDS_MAX])
{
    const inspection *judged = walk_judge(of, record);
    for (size_t i = 0; judged != NULL && i < record->end_count; i++)
        verdicts[i] = judged->vehicle.findings[i].verdict;
    return judged != NULL ? record->end_count : 0;
}

/* Not proven before, and proven by this answer: but the second reading was there before it. */
static bool forget_unproven(walk *of)
{
    rodt_verdict before[VEHICLE_ENDS_MAX], now[VEHICLE_ENDS_MAX];
    bool dropped = false;
    size_t count = find_verdicts(of, &of->record, before);
    if (find_verdicts(of, &of->trial, now) != count)
        return false;
    for (int end = 0; end < (int)count; end++) {
        if (!has(&of->trial, end, ASK_END_APPLIED) || before[end] != RODT_VERDICT_UNDETERMINED ||
            now[end] == RODT_VERDICT_UNDETERMINED)
            continue;
        forget_reading(&of->trial, end, ASK_END_APPLIED);
        dropped = true;
    }
    return dropped;
}

/* Before the pedal goes down again; what was skipped stays skipped. */
static void forget_application(walk *of)
{
    for (int end = 0; end < (int)of->trial.end_count; end++) {
        forget_reading(&of->trial, end, ASK_PSI);
        forget_reading(&of->trial, end, ASK_PSI_AFTER);
    }
    (void)walk_set_step(of, &of->trial, walk_questions[ASK_HELD].name, NULL);
}

static walk_dropped find_dropped(walk *of, const walk_item *item, bool pressed_again)
{
    if (item->id == ASK_SPRING && forget_held_out(of)) {
        forget_application(of);
        return WALK_DROPPED_BOTH;
    }
    for (int end = 0; item->id == ASK_PSI && pressed_again && end < (int)of->trial.end_count; end++)
        forget_reading(&of->trial, end, ASK_PSI_AFTER);
    bool condition = item->id == ASK_SPRING || item->id == ASK_ENGINE || item->id == ASK_PSI;
    if (!condition || !forget_unproven(of))
        return WALK_DROPPED_NONE;
    if (item->id != ASK_PSI)
        forget_application(of);
    return WALK_DROPPED_SECOND;
}

walk_dropped walk_drop_unproven(walk *of, const walk_item *item, bool pressed_again)
{
    walk_dropped dropped = find_dropped(of, item, pressed_again);
    if (dropped != WALK_DROPPED_NONE)
        walk_print("", 0, "%s", say("Readings that were taken before proved nothing: they are asked again."));
    return dropped;
}

bool walk_drop_second(walk *of, const walk_item *item)
{
    walk_item second = {ASK_END_APPLIED, WALK_APPLIED, item->end, RODT_AIR_CHECK_NONE};
    if (item->id != ASK_END_RELEASED || walk_value(&of->trial, &second).text == NULL)
        return true;
    return walk_set(of, &of->trial, &second, (record_value){NULL, 0}) && walk_keep_replaced(of, &second);
}
