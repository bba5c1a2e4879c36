/* SPDX-License-Identifier: Apache-2.0 */
/* Which question comes next: what a break may have undone, the rest of a subject that was gone back to, the first open
 * one of the plan. */
#include "walkround/walkround.h"
#include "ui/compiler.h"
#include "ui/language.h"

#include <string.h>

/* --- Due ---------------------------------------------------------------------------------------------- */

static walk_item step_item(walk_id id)
{
    return (walk_item){id, walk_questions[id].part, WALK_NONE, RODT_AIR_CHECK_NONE};
}

static void add_due(walk_session *at, walk_item item, bool fresh)
{
    const walk *of = at->of;
    if (at->due_count < COUNT_OF(at->due) && walk_find_item(&of->plan, &item) < of->plan.count &&
        walk_answered(&of->record, &item) && !walk_skipped(&of->record, &item))
        at->due[at->due_count++] = (due_question){item, fresh, false};
}

static void add_due_steps(walk_session *at, const walk_id *ids, size_t count)
{
    for (size_t i = 0; i < count; i++)
        add_due(at, step_item(ids[i]), true);
}

static bool take_due(walk_session *at)
{
    if (at->due_count == 0)
        return false;
    at->item = at->due[0].item;
    at->fresh = at->due[0].fresh;
    at->forward = at->due[0].forward;
    at->unsecured = at->unsecured && !at->forward;
    at->due_count--;
    memmove(at->due, at->due + 1, at->due_count * sizeof at->due[0]);
    return true;
}

/* What the measurement rests on is undone once the parking brake was set or the chocks were stowed. */
static bool is_undone(const walk_session *at, const walk_item *to)
{
    const inspection_record *record = &at->of->record;
    walk_item parked = step_item(ASK_PARKED), away = step_item(ASK_CHOCKS_AWAY);
    return walk_is_person(&at->of->input) && to->part >= WALK_AIR_OFF && to->part <= WALK_APPLIED &&
           (at->unsecured || walk_answered(record, &parked) || walk_answered(record, &away));
}

/* Before the question itself; afterwards the vehicle is parked, and pulled, once more. */
static void secure_again(walk_session *at, walk_item to)
{
    static const walk_id released[] = {ASK_SPRING, ASK_ENGINE}, application[] = {ASK_PSI, ASK_HELD};
    bool strokes = to.part >= WALK_SET_UP;
    walk_print("", 0, "%s", strokes ? say("Chock the wheels and release the parking brake first.")
                                    : say("Chock the wheels first."));
    walk_forget_parking(at->of);
    at->unsecured = true;
    at->due_count = 0;
    add_due(at, step_item(ASK_CHOCKS), true);
    if (walk_needs_air_ready(at->of, to.check))
        add_due(at, step_item(ASK_AIR_READY), true);
    if (strokes)
        add_due_steps(at, released, COUNT_OF(released));
    if (to.part == WALK_APPLIED)
        add_due_steps(at, application, COUNT_OF(application));
    at->due[at->due_count++] = (due_question){to, at->fresh || to.part == WALK_APPLIED, true};
    (void)take_due(at);
}

static bool is_doubted(const walk_session *at, const walk_item *item)
{
    return at->again && (item->id == ASK_END_RELEASED || item->id == ASK_END_APPLIED ||
                         walk_questions[item->id].kind == WALK_PRESSURE);
}

void walk_go_to(walk_session *at, walk_item to, bool again)
{
    at->item = to;
    at->again = again;
    at->fresh = is_doubted(at, &to);
    if (is_undone(at, &to))
        secure_again(at, to);
}

bool walk_find_before(const walk *of, size_t here, const char *where, walk_item *out)
{
    char name[WALK_NAME_SIZE];
    while (here-- > 0) {
        walk_step_name(&of->record, &of->plan.items[here], name);
        if ((where[0] != '\0' && walk_text_after(name, where) == NULL &&
             !walk_is_about(&of->record, &of->plan.items[here], where)) ||
            !walk_answered(&of->record, &of->plan.items[here]))
            continue;
        *out = of->plan.items[here];
        return true;
    }
    return false;
}

static bool find_open(walk *of, walk_item *out)
{
    walk_reopen_pull(of);
    of->bad = walk_is_bad(of);
    walk_make_plan(of, &of->plan);
    for (size_t i = 0; i < of->plan.count; i++) {
        if (!walk_answered(&of->record, &of->plan.items[i])) {
            *out = of->plan.items[i];
            return true;
        }
    }
    return false;
}

/* --- After a break ----------------------------------------------------------------------------------- */

/* A test that was cut off begins again with its first pressure. */
static void add_due_check(walk_session *at, const walk_item *open)
{
    if (walk_needs_air_ready(at->of, open->check))
        add_due(at, step_item(ASK_AIR_READY), true);
    add_due(at, (walk_item){ASK_BEFORE, open->part, WALK_NONE, open->check}, true);
    add_due(at, (walk_item){ASK_LENGTH, open->part, WALK_NONE, open->check}, false);
}

/* The parking brake was set overnight, the pedal was released, the pressure fell, somebody took the chocks: whatever
 * the open question rests on is asked again. A file of answers is not. */
static void find_due(walk_session *at, const walk_item *open)
{
    static const walk_id released[] = {ASK_SPRING, ASK_ENGINE}, application[] = {ASK_PSI, ASK_HELD};
    const walk *of = at->of;
    const char *away = record_step(&of->record, walk_questions[ASK_CHOCKS_AWAY].name);
    if (open->part > WALK_SECURE && (away == NULL || strcmp(away, "yes") != 0))
        add_due(at, step_item(ASK_CHOCKS), true);
    if (open->part == WALK_AIR_OFF)
        add_due_check(at, open);
    if (open->part == WALK_AIR_ON)
        add_due(at, step_item(ASK_DRAINS_CLOSED), true);
    if (open->part >= WALK_SET_UP && open->part <= WALK_APPLIED)
        add_due_steps(at, released, COUNT_OF(released));
    if (open->part == WALK_APPLICATION || open->part == WALK_APPLIED)
        add_due_steps(at, application, COUNT_OF(application));
    at->unsecured = open->part == WALK_FINISH;
    if (open->part == WALK_FINISH)
        add_due(at, step_item(ASK_PARKED), true);
    if (at->due_count > 0)
        walk_print("", 0, "%s",
                   say("You stopped in between. What may have changed since is asked again; look before you "
                       "answer."));
    if (open->part == WALK_APPLIED)
        walk_print("", 0, "%s",
                   say("The pedal was released when you stopped. Build the air up, press it again and hold it."));
}

/* --- From question to question ------------------------------------------------------------------------ */

/* The next question of the check or wheel end that was gone back to. The second reading of a wheel end is taken again
 * only under an application that is made again. */
static bool find_forward(walk_session *at)
{
    walk *of = at->of;
    walk_make_plan(of, &of->plan);
    for (size_t i = walk_find_item(&of->plan, &at->item) + 1; i < of->plan.count; i++) {
        const walk_item *item = &of->plan.items[i];
        if (!walk_same_subject(item, &at->item))
            continue;
        bool second = item->part == WALK_APPLIED && at->item.part == WALK_RELEASED;
        if (second && (at->again || walk_answered(&of->record, item))) {
            add_due(at, step_item(ASK_PSI), true);
            add_due(at, step_item(ASK_HELD), true);
            add_due(at, *item, at->again);
        }
        at->item = second ? at->item : *item;
        at->fresh = !second && is_doubted(at, item);
        return !second;
    }
    return false;
}

bool walk_find_next(walk_session *at)
{
    at->fresh = false;
    at->forward = at->forward && find_forward(at);
    return at->forward || take_due(at) || find_open(at->of, &at->item);
}

bool walk_find_chosen(walk_session *at, const char *where)
{
    walk *of = at->of;
    walk_make_plan(of, &of->plan);
    walk_item to;
    bool found = walk_find_before(of, of->plan.count, where, &to);
    if (found)
        walk_go_to(at, to, false);
    return found;
}

bool walk_find_first(walk_session *at)
{
    if (!find_open(at->of, &at->item))
        return false;
    if (walk_is_person(&at->of->input))
        find_due(at, &(walk_item){at->item.id, at->item.part, at->item.end, at->item.check});
    return take_due(at) || find_open(at->of, &at->item);
}

