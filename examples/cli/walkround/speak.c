/* SPDX-License-Identifier: Apache-2.0 */
/* What is said aloud in a walk-round before a question: the sentences of its step. */
#include "walkround/walkround.h"
#include "air/steps.h"
#include "input/numbers.h"
#include "ui/wrap.h"

#include <stdio.h>
#include <string.h>

static rodt_step step_of(const walk_item *item)
{
    static const RODT_ENUM32(rodt_step) steps[ASK_IDS] = {
        [ASK_CHOCKS] = RODT_STEP_SECURE,         [ASK_SPRING] = RODT_STEP_RELEASED,
        [ASK_PSI] = RODT_STEP_APPLICATION,       [ASK_HELD] = RODT_STEP_APPLICATION,
        [ASK_PSI_AFTER] = RODT_STEP_APPLICATION, [ASK_CHAMBER] = RODT_STEP_CHAMBER,
        [ASK_CLASS] = RODT_STEP_CHAMBER,         [ASK_RATED] = RODT_STEP_CHAMBER,
        [ASK_MARKED] = RODT_STEP_CHAMBER,        [ASK_ADJUSTER] = RODT_STEP_CHAMBER,
        [ASK_ARM] = RODT_STEP_CHAMBER,           [ASK_END_RELEASED] = RODT_STEP_RELEASED,
        [ASK_END_APPLIED] = RODT_STEP_APPLIED,   [ASK_CHOCKS_AWAY] = RODT_STEP_SPRING_BRAKE};
    return item->check != RODT_AIR_CHECK_NONE ? rodt_step_of_check(item->check) : (rodt_step)steps[item->id];
}

/* The vehicle as far as the record knows it. */
static rodt_air_reading vehicle_of(const inspection_record *record)
{
    rodt_air_reading vehicle = {.check = RODT_AIR_CHECK_NONE};
    const char *word = record->head[HEAD_VEHICLE].text, *built = record->head[HEAD_BUILT].text;
    if (word != NULL && rodt_vehicle_class_find(word, &vehicle.vehicle) != RODT_OK)
        vehicle.vehicle = RODT_VEHICLE_CLASS_ANY;
    if (vehicle.vehicle == RODT_VEHICLE_CLASS_COMBINATION)
        vehicle.towed_units = (int16_t)record->head[HEAD_TOWED].number;
    if (built != NULL && read_built_day(built, &vehicle.built, NULL) != RODT_OK)
        vehicle.built = (rodt_date){0, 0, 0};
    return vehicle;
}

/* Nobody is told to pull against the parking brake of a vehicle that must not move. */
static bool is_forbidden(walk *of, rodt_step step) { return step == RODT_STEP_SPRING_BRAKE && walk_is_bad(of); }

void walk_print_step(walk *of, const walk_item *item)
{
    rodt_step step = step_of(item);
    rodt_air_reading vehicle = vehicle_of(&of->record);
    const rodt_rules *rules = item->check != RODT_AIR_CHECK_NONE ? of->context.air_rules : of->context.rules;
    if (step != RODT_STEP_NONE && !is_forbidden(of, step))
        print_step(walk_out(), step, rules, &vehicle);
}

_Static_assert(RODT_STEP_END <= 32, "a bit for each step");

void walk_speak_before(walk *of, const walk_item *item)
{
    rodt_step step = step_of(item);
    uint32_t bit = (uint32_t)1 << step;
    if (of->speak && (of->steps & bit) == 0)
        walk_print_step(of, item);
    of->steps |= bit;
}
