/* SPDX-License-Identifier: Apache-2.0 */
/* The pull against the parking brake, which a vehicle that is defective, not settled or on chocks is not asked
 * for. */
#include "walkround/walkround.h"
#include "ui/language.h"

#include <string.h>

/* The step of a pull that was refused. */
#define STEP_PULL TO_SAY("pull")

static const walk_item pull = {ASK_ANSWER, WALK_FINISH, WALK_NONE, RODT_AIR_CHECK_SPRING_BRAKE};

static void forget_pull(walk *of, inspection_record *record)
{
    if (walk_find_check(record, pull.check) == WALK_NONE)
        return;
    (void)walk_set(of, record, &pull, (record_value){NULL, 0});
    walk_drop_bare_check(record, pull.check);
}

bool walk_note_parking(walk *of, inspection_record *record, bool failed_before)
{
    if (walk_parking_failed(record))
        return walk_set_step(of, record, STEP_PULL, NULL) && walk_set(of, record, &pull, (record_value){"no", 0});
    if (failed_before)
        forget_pull(of, record);
    return true;
}

const char *walk_refuse_pull(walk *of)
{
    const char *away = record_step(&of->record, walk_questions[ASK_CHOCKS_AWAY].name);
    if (walk_is_bad(of))
        return say("The pull against the parking brake is not done: this vehicle must not be moved under its own power "
                   "before it is repaired.");
    if (walk_is_unsettled(of))
        return say("The pull against the parking brake is not done: it is not settled that this vehicle may be "
                   "driven.");
    return away != NULL && strcmp(away, STEP_SKIPPED) == 0
               ? say("The pull against the parking brake is not done: the chocks are in place and hold the vehicle "
                     "too.")
               : NULL;
}

bool walk_skip_pull(walk *of, inspection_record *record)
{
    return walk_skip(of, record, &pull) && walk_set_step(of, record, STEP_PULL, STEP_SKIPPED);
}

void walk_reopen_pull(walk *of)
{
    if (record_step(&of->record, STEP_PULL) == NULL || walk_refuse_pull(of) != NULL)
        return;
    (void)walk_set_step(of, &of->record, STEP_PULL, NULL);
    walk_drop_bare_check(&of->record, pull.check);
}

void walk_forget_parking(walk *of)
{
    inspection_record *record = &of->record;
    (void)walk_set_step(of, record, walk_questions[ASK_PARKED].name, NULL);
    (void)walk_set_step(of, record, walk_questions[ASK_CHOCKS_AWAY].name, NULL);
    (void)walk_set_step(of, record, STEP_PULL, NULL);
    if (!walk_parking_failed(record))
        forget_pull(of, record);
}
