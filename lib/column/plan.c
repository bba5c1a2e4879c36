/* SPDX-License-Identifier: Apache-2.0 */
/* What columns are judged by. rodt_reading_judge alone decides: for fixed other facts its answer is the same between
 * two steps of the stroke, so it is called once for each region between them, and its results are kept. */
#include "column/plan.h"

#include "column/steps.h"
#include "core/error.h"
#include "core/exact.h"
#include "core/fault.h"
#include "core/text.h"
#include "judge/judge.h"

#include <stdlib.h>
#include <string.h>

/* Codes that a plan begins with. */
#define FIRST_ROOM 16

/* --- Days -------------------------------------------------------------------------------------------- */

/* Room for so many cuts. */
static size_t cut_room(size_t cuts)
{
    return cuts <= FEW_CUTS ? FEW_CUTS : FEW_CUTS + (cuts - FEW_CUTS + CUT_GROUP - 1) / CUT_GROUP * CUT_GROUP;
}

static void add_cut(rodt_column_plan *plan, int32_t day)
{
    uint32_t at = 0;
    if (day <= CALENDAR_FIRST_DAY || day > CALENDAR_LAST_DAY)
        return;
    while (at < plan->cuts && plan->cut[at] < day)
        at++;
    if (at < plan->cuts && plan->cut[at] == day)
        return;
    memmove(&plan->cut[at + 1], &plan->cut[at], (plan->cuts - at) * sizeof plan->cut[0]);
    plan->cut[at] = day;
    plan->cuts++;
}

static void add_span(rodt_column_plan *plan, rodt_date from, rodt_date until)
{
    if (rodt_date_given(from))
        add_cut(plan, calendar_day_number(from));
    if (rodt_date_given(until))
        add_cut(plan, calendar_day_number(until) + 1);
}

/* An answer can only change on the first day of a row or of a law, and on the day after the last. */
static void add_cuts(rodt_column_plan *plan, const rodt_rules *rules)
{
    add_span(plan, rodt_rules_from(rules), rodt_rules_until(rules));
    for (size_t i = 0; i < rodt_rules_limit_count(rules); i++) {
        const rodt_limit *row = rodt_rules_limit_at(rules, i);
        add_span(plan, row->from, row->until);
    }
}

static rodt_status find_cuts(rodt_column_plan *plan)
{
    const rodt_rules *law = rodt_rules_law(plan->rules);
    size_t spans = 1 + rodt_rules_limit_count(plan->rules) + (law != NULL ? 1 + rodt_rules_limit_count(law) : 0);
    size_t room = cut_room(2 * spans);
    plan->cut = malloc(room * sizeof plan->cut[0]);
    if (plan->cut == NULL)
        return RODT_E_MEMORY;
    for (size_t i = 0; i < room; i++)
        plan->cut[i] = INT32_MAX;
    add_cuts(plan, plan->rules);
    if (law != NULL)
        add_cuts(plan, law);
    plan->eras = plan->cuts + 3;
    return RODT_OK;
}

/* --- Input of rodt_reading_judge ------------------------------------------------------------------------------ */

/* Uses one day of the period; all give the same result. */
static void set_day(const rodt_column_plan *plan, uint32_t era, rodt_reading *reading, uint64_t *reasons)
{
    if (era == COLUMN_ERA_OF_PLAN(plan))
        return;
    reading->other_day = (rodt_date){0};
    if (era == COLUMN_ERA_UNREADABLE(plan)) {
        reading->day = (rodt_date){0};
        *reasons |= REASON_BIT(RODT_REASON_DATE_UNREADABLE);
    } else {
        reading->day = calendar_date(era == 0 ? CALENDAR_FIRST_DAY : plan->cut[era - 1]);
    }
}

static void set_pressure(const rodt_column_plan *plan, int slot, rodt_reading *reading, uint64_t *reasons)
{
    const int64_t values[PRESSURES] = {
        [PRESSURE_NONE] = 0,
        [PRESSURE_LOW] = plan->pressure_from - 1,
        [PRESSURE_WITHIN] = plan->pressure_from,
        [PRESSURE_HIGH] = (int64_t)plan->pressure_until + 1};
    if (slot == PRESSURE_OF_PLAN)
        return;
    rodt_ratio psi = {0, 0};
    if (slot == PRESSURE_UNREADABLE)
        *reasons |= REASON_BIT(RODT_REASON_OTHER_UNREADABLE);
    else
        (void)rodti_exact_make(values[slot], RODT_COLUMN_PER_PSI, &psi);
    reading->pressure = (rodt_pressure){psi.num, psi.den};
}

/* The common facts hold no reading. */
static void set_cell(int32_t cell, rodt_reason unreadable, rodt_length *out, uint64_t *reasons)
{
    if (cell == CELL_UNREADABLE)
        *reasons |= REASON_BIT(unreadable);
    else if (cell >= 0)
        *out = rodti_column_length(cell, RODT_COLUMN_PER_INCH);
}

/* The input from which one result is computed; the readings are cells. */
typedef struct judge_input {
    rodt_reading reading;
    uint64_t reasons;
    int32_t released;
    int32_t applied;
} judge_input;

static column_result evaluate(const rodt_column_plan *plan, judge_input input)
{
    rodt_reading *reading = &input.reading;
    set_cell(input.released, RODT_REASON_RELEASED_UNREADABLE, &reading->released, &input.reasons);
    set_cell(input.applied, RODT_REASON_APPLIED_UNREADABLE, &reading->applied, &input.reasons);
    reading->reasons |= input.reasons;
    rodt_finding finding = rodti_column_judge(reading, plan->rules);
    return column_result_of(&finding);
}

/* --- The results of one entry ------------------------------------------------------------------------ */

/* Every pair of cells of which one holds no reading. */
static void fill_incomplete(const rodt_column_plan *plan, judge_input input, column_result *results)
{
    for (int32_t released = CELL_UNREADABLE; released <= 0; released++) {
        for (int32_t applied = CELL_UNREADABLE; applied <= 0; applied++) {
            if ((released | applied) == 0)
                continue;
            input.released = released;
            input.applied = applied;
            results[REGION_REVERSED + CELLS(released, applied)] = evaluate(plan, input);
        }
    }
}

static int32_t region(const stroke_steps *found, int32_t stroke)
{
    int32_t at = column_start(stroke);
    for (uint32_t k = 0; k < STROKE_STEPS; k++)
        at += column_past(stroke, (int32_t)found->at[k]);
    return at;
}

static void fill_stroke(const rodt_column_plan *plan, const judge_input *input, const stroke_steps *found,
                        column_result *results)
{
    results[region(found, input->applied)] = evaluate(plan, *input);
}

/* Every region that a stroke can be in holds 0, 1, a whole movement, a step or the stroke after one. A step that an
 * entry does not have is longer than any stroke. */
static void fill_strokes(const rodt_column_plan *plan, judge_input input, const stroke_steps *found,
                         column_result *results)
{
    for (uint32_t i = 0; i < 2 + 2 * found->count; i++) {
        input.applied = (int32_t)(i < 2 ? i : found->at[i / 2 - 1] + i % 2);
        fill_stroke(plan, &input, found, results);
    }
    input.applied = STROKE_MOVED;
    fill_stroke(plan, &input, found, results);
    input.released = 1;
    input.applied = 0;
    results[REGION_REVERSED] = evaluate(plan, input);
}

/* Reasons may leave steps out, and one too many does no harm. */
static void fill_entry(rodt_column_plan *plan, judge_input input, uint32_t entry)
{
    stroke_steps found = rodti_stroke_steps_find(&input.reading, plan->rules, RODT_COLUMN_PER_INCH, INT32_MAX);
    for (uint32_t k = 0; k < STROKE_STEPS / 2; k++)
        plan->step[k][entry] = (column_steps){(int32_t)found.at[2 * k], (int32_t)found.at[2 * k + 1]};
    for (int slot = 0; slot < PRESSURES; slot++) {
        column_result *results = &plan->results[entry * REGIONS_OF_ENTRY + (uint32_t)slot * REGIONS];
        judge_input pressed = input;
        set_pressure(plan, slot, &pressed.reading, &pressed.reasons);
        fill_strokes(plan, pressed, &found, results);
        fill_incomplete(plan, pressed, results);
    }
    if (found.count > plan->steps)
        plan->steps = found.count;
}

/* The array with room for so many, or as it is. */
static void *grow_array(void *array, size_t count, size_t size, bool *grown)
{
    void *made = realloc(array, count * size);
    if (made != NULL)
        return made;
    *grown = false;
    return array;
}

/* Room for one code more. A rule set has so few rows (rules_load.c) that the results of all codes, and their bytes, are
 * counted in 31 bits. */
static rodt_status grow(rodt_column_plan *plan)
{
    if (plan->codes < plan->room)
        return RODT_OK;
    size_t room = plan->room == 0 ? FIRST_ROOM : 2 * (size_t)plan->room;
    size_t entries = room * plan->eras;
    bool grown = true;
    if (plan->codes == COLUMN_CODES)
        return RODT_E_SPACE;
    plan->chambers = grow_array(plan->chambers, room, sizeof plan->chambers[0], &grown);
    plan->results = grow_array(plan->results, entries * REGIONS_OF_ENTRY, sizeof plan->results[0], &grown);
    for (size_t k = 0; k < COUNT_OF(plan->step); k++)
        plan->step[k] = grow_array(plan->step[k], entries, sizeof plan->step[k][0], &grown);
    if (!grown)
        return RODT_E_MEMORY;
    plan->room = (uint32_t)room;
    return RODT_OK;
}

static rodt_status add_code(rodt_column_plan *plan, const rodt_chamber *chamber, uint64_t reasons)
{
    rodt_status status = grow(plan);
    if (status != RODT_OK)
        return status;
    for (uint32_t era = 0; era < plan->eras; era++) {
        judge_input input = {.reading = plan->common, .reasons = reasons};
        input.reading.chamber = *chamber;
        set_day(plan, era, &input.reading, &input.reasons);
        fill_entry(plan, input, plan->codes * plan->eras + era);
    }
    uint32_t entry = plan->codes * plan->eras + COLUMN_ERA_OF_PLAN(plan);
    plan->code[plan->codes] = (column_code){plan->step[0][entry].low, (int32_t)(entry * REGIONS_OF_ENTRY)};
    plan->chambers[plan->codes++] = *chamber;
    return RODT_OK;
}

/* --- A plan ------------------------------------------------------------------------------------------ */

/* The first whole number of a column inside the window, and the last. A window has both ends or none; even without one,
 * 0 is not inside. */
static void set_window(rodt_column_plan *plan)
{
    rodt_pressure from = rodt_rules_pressure_from(plan->rules);
    rodt_pressure until = rodt_rules_pressure_until(plan->rules);
    plan->pressure_from = 1;
    plan->pressure_until = INT32_MAX;
    if (!rodt_pressure_given(from))
        return;
    plan->pressure_from = (int32_t)((from.num * RODT_COLUMN_PER_PSI + from.den - 1) / from.den);
    plan->pressure_from += plan->pressure_from == 0;
    plan->pressure_until = (int32_t)(until.num * RODT_COLUMN_PER_PSI / until.den);
}

/* What a plan uses of the common facts. */
static rodt_reading shared_facts(const rodt_reading *common)
{
    rodt_reading shared = {.reasons = 0};
    if (common == NULL)
        return shared;
    shared = *common;
    shared.chamber = (rodt_chamber){.size = ""};
    shared.released = shared.applied = shared.division = (rodt_length){0};
    memset(shared.other_released, 0, sizeof shared.other_released);
    memset(shared.other_applied, 0, sizeof shared.other_applied);
    return shared;
}

/* The codes that every plan has; all that were not given are unreadable. */
static rodt_status add_first_codes(rodt_column_plan *plan)
{
    static const rodt_chamber none;
    rodt_status status = add_code(plan, &none, 0);
    if (status != RODT_OK)
        return status;
    (void)add_code(plan, &none, REASON_BIT(RODT_REASON_CHAMBER_UNREADABLE)); /* there is room for both */
    for (uint32_t code = plan->codes; code < COLUMN_CODES; code++)
        plan->code[code] = plan->code[RODT_COLUMN_CHAMBER_UNREADABLE];
    return RODT_OK;
}

static rodt_status fail(rodt_error *error, rodt_status status)
{
    return rodti_error_status(error, status);
}

rodt_status rodt_column_plan_new(const rodt_rules *rules, const rodt_reading *common, rodt_column_plan **plan,
                                 rodt_error *error)
{
    if (plan == NULL)
        return rodti_field_error(error, "", "room for a plan is needed");
    if (rules == NULL)
        return rodti_rules_error(error);
    rodt_reading shared = shared_facts(common);
    rodt_status status = rodt_reading_check(&shared, error);
    if (status != RODT_OK)
        return status;
    rodt_column_plan *made = calloc(1, sizeof *made);
    if (made == NULL)
        return fail(error, RODT_E_MEMORY);
    made->rules = rodt_rules_ref(rules);
    made->common = shared;
    set_window(made);
    status = find_cuts(made);
    if (status == RODT_OK)
        status = add_first_codes(made);
    if (status != RODT_OK) {
        rodt_column_plan_free(made);
        return fail(error, status);
    }
    *plan = made;
    return RODT_OK;
}

void rodt_column_plan_free(rodt_column_plan *plan)
{
    if (plan == NULL)
        return;
    for (size_t k = 0; k < COUNT_OF(plan->step); k++)
        free(plan->step[k]);
    free(plan->results);
    free(plan->chambers);
    free(plan->cut);
    rodt_rules_unref(plan->rules);
    free(plan);
}

rodt_status rodt_column_plan_copy(const rodt_column_plan *plan, rodt_column_plan **copy)
{
    if (plan == NULL || copy == NULL)
        return RODT_E_ARGUMENT;
    rodt_column_plan *made = NULL;
    rodt_status status = rodt_column_plan_new(plan->rules, &plan->common, &made, NULL);
    for (uint32_t code = RODT_COLUMN_CHAMBER_UNREADABLE + 1; code < plan->codes && status == RODT_OK; code++)
        status = add_code(made, &plan->chambers[code], 0);
    if (status == RODT_OK)
        *copy = made;
    else
        rodt_column_plan_free(made);
    return status;
}

rodt_status rodt_column_plan_add(rodt_column_plan *plan, const rodt_chamber *chamber, uint32_t *code,
                                 rodt_error *error)
{
    if (plan == NULL || chamber == NULL || code == NULL)
        return rodti_field_error(error, "", "a plan, a chamber and room for its code are needed");
    rodt_status status = rodt_chamber_check(chamber, error);
    if (status != RODT_OK)
        return status;
    status = add_code(plan, chamber, 0);
    if (status == RODT_E_SPACE)
        return rodti_text_error(error, status, 0, "a plan has room for %d chambers", COLUMN_CODES - 2);
    if (status != RODT_OK)
        return fail(error, status);
    *code = plan->codes - 1;
    return RODT_OK;
}
