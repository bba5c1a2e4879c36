/* SPDX-License-Identifier: Apache-2.0 */
/* What columns are judged by. rodt_reading_judge alone decides: for fixed other facts its answer is the same between
 * two steps of the stroke, so it is called once for each region between them, and its results are kept. */
#include "column/plan.h"

#include "column/steps.h"
#include "judge/judge.h"

#include <string.h>

/* --- Days -------------------------------------------------------------------------------------------- */

/* Days since 1970-01-01 and back, by the 400 years after which the calendar repeats; years begin in March, so that
 * the leap day is the last. */
static int32_t day_number(rodt_date date)
{
    int32_t year = date.year - (date.month <= 2);
    int32_t month = (date.month + 9) % 12;
    int32_t day_of_year = (153 * month + 2) / 5 + date.day - 1;
    return year * 365 + year / 4 - year / 100 + year / 400 + day_of_year - 719468;
}

/* The year is guessed from the mean length of one and is then at most one too late. */
static rodt_date date_of(int32_t number)
{
    int32_t since = number + 719468;
    int32_t year = (int32_t)((int64_t)since * 400 / 146097) + 1;
    rodt_date date = {0};
    int32_t left;
    do {
        year--;
        left = since - (year * 365 + year / 4 - year / 100 + year / 400);
    } while (left < 0);
    int32_t month = (5 * left + 2) / 153;
    date.day = (int8_t)(left - (153 * month + 2) / 5 + 1);
    date.month = (int8_t)(month < 10 ? month + 3 : month - 9);
    date.year = (int16_t)(year + (date.month <= 2));
    return date;
}

static bool add_cut(rodt_column_plan *plan, int32_t day)
{
    uint32_t at = 0;
    if (day <= COLUMN_FIRST_DAY || day > COLUMN_LAST_DAY)
        return true;
    while (at < plan->cuts && plan->cut[at] < day)
        at++;
    if (at < plan->cuts && plan->cut[at] == day)
        return true;
    if (plan->cuts == RODT_COLUMN_CUTS)
        return false;
    memmove(&plan->cut[at + 1], &plan->cut[at], (plan->cuts - at) * sizeof plan->cut[0]);
    plan->cut[at] = day;
    plan->cuts++;
    return true;
}

static bool add_span(rodt_column_plan *plan, rodt_date from, rodt_date until)
{
    return (!rodt_date_given(from) || add_cut(plan, day_number(from))) &&
           (!rodt_date_given(until) || add_cut(plan, day_number(until) + 1));
}

/* An answer can only change on the first day of a row or of a law, and on the day after the last. */
static bool add_cuts(rodt_column_plan *plan, const rodt_rules *rules)
{
    if (!add_span(plan, rodt_rules_from(rules), rodt_rules_until(rules)))
        return false;
    for (size_t i = 0; i < rodt_rules_limit_count(rules); i++) {
        const rodt_limit *row = rodt_rules_limit_at(rules, i);
        if (!add_span(plan, row->from, row->until))
            return false;
    }
    return true;
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
        reading->day = date_of(era == 0 ? COLUMN_FIRST_DAY : plan->cut[era - 1]);
    }
}

static void set_pressure(const rodt_column_plan *plan, int slot, rodt_reading *reading, uint64_t *reasons)
{
    const int64_t values[RODT_COLUMN_PRESSURES] = {
        [PRESSURE_NONE] = 0,
        [PRESSURE_LOW] = plan->pressure_from - 1,
        [PRESSURE_WITHIN] = plan->pressure_from,
        [PRESSURE_HIGH] = (int64_t)plan->pressure_until + 1};
    if (slot == PRESSURE_OF_PLAN)
        return;
    reading->pressure = (rodt_pressure){0};
    if (slot == PRESSURE_UNREADABLE)
        *reasons |= REASON_BIT(RODT_REASON_OTHER_UNREADABLE);
    else
        rodt_pressure_from_psi(values[slot], RODT_COLUMN_PER_PSI, &reading->pressure);
}

static void set_cell(int32_t cell, rodt_reason unreadable, rodt_length *out, uint64_t *reasons)
{
    *out = (rodt_length){0};
    if (cell >= 0)
        rodt_length_from_inches(cell, RODT_COLUMN_PER_INCH, out);
    else if (cell == CELL_UNREADABLE)
        *reasons |= REASON_BIT(unreadable);
}

/* The input from which one result is computed; the readings are cells. */
typedef struct judge_input {
    rodt_reading reading;
    uint64_t reasons;
    int32_t released;
    int32_t applied;
} judge_input;

static rodt_status evaluate(const rodt_column_plan *plan, judge_input input, rodt_column_result *result)
{
    rodt_finding finding;
    rodt_reading *reading = &input.reading;
    set_cell(input.released, RODT_REASON_RELEASED_UNREADABLE, &reading->released, &input.reasons);
    set_cell(input.applied, RODT_REASON_APPLIED_UNREADABLE, &reading->applied, &input.reasons);
    reading->reasons |= input.reasons;
    rodt_status status = rodti_reading_judge(reading, plan->rules, &finding);
    if (status == RODT_OK)
        *result = column_result(&finding);
    return status;
}

/* --- The results of one entry ------------------------------------------------------------------------ */

/* Every pair of cells of which one holds no reading. */
static rodt_status fill_incomplete(const rodt_column_plan *plan, judge_input input, rodt_column_result *results)
{
    rodt_status status = RODT_OK;
    for (int32_t released = CELL_UNREADABLE; released <= 0; released++) {
        for (int32_t applied = CELL_UNREADABLE; applied <= 0 && status == RODT_OK; applied++) {
            if ((released | applied) == 0)
                continue;
            input.released = released;
            input.applied = applied;
            status = evaluate(plan, input, &results[REGION_REVERSED + CELLS(released, applied)]);
        }
    }
    return status;
}

static int32_t region(const int32_t *step, uint32_t counted, int32_t stroke)
{
    int32_t found = column_start(stroke);
    for (uint32_t k = 0; k < counted; k++)
        found += column_past(stroke, step[k]);
    return found;
}

/* Every region that a stroke can be in holds 0, 1, a step or the stroke after one. The kernel counts one step, two or
 * all; the longest stroke of all reaches the steps that an entry does not have, so its region depends on how
 * many there are. */
static rodt_status fill_stroke(const rodt_column_plan *plan, const judge_input *input, const stroke_steps *found,
                               rodt_column_result *results)
{
    rodt_column_result result;
    rodt_status status = evaluate(plan, *input, &result);
    for (uint32_t counted = 1; counted <= RODT_COLUMN_STEPS && status == RODT_OK; counted *= 2) {
        if (found->count <= counted)
            results[region(found->at, counted, input->applied)] = result;
    }
    return status;
}

static rodt_status fill_strokes(const rodt_column_plan *plan, judge_input input, const stroke_steps *found,
                                rodt_column_result *results)
{
    rodt_status status = RODT_OK;
    for (int i = 0; i < 2 + 2 * RODT_COLUMN_STEPS && status == RODT_OK; i++) {
        int32_t at = i < 2 ? 0 : found->at[i / 2 - 1];
        if (i % 2 == 1 && at == INT32_MAX)
            continue;
        input.applied = at + i % 2;
        status = fill_stroke(plan, &input, found, results);
    }
    if (status != RODT_OK)
        return status;
    input.released = 1;
    input.applied = 0;
    return evaluate(plan, input, &results[REGION_REVERSED]);
}

static rodt_status fill_entry(rodt_column_plan *plan, judge_input input, uint32_t entry)
{
    stroke_steps found;
    rodt_reading reading = input.reading;
    reading.reasons |= input.reasons;
    rodt_status status = rodti_stroke_steps_find(&reading, plan->rules, &found);
    if (status != RODT_OK)
        return status;
    for (uint32_t k = 0; k < RODT_COLUMN_STEPS / 2; k++)
        plan->step[k][entry] = (rodt_column_steps){found.at[2 * k], found.at[2 * k + 1]};
    for (int slot = 0; slot < RODT_COLUMN_PRESSURES && status == RODT_OK; slot++) {
        rodt_column_result *results = &plan->results[entry * REGIONS_OF_ENTRY + (uint32_t)slot * RODT_COLUMN_REGIONS];
        judge_input pressed = input;
        set_pressure(plan, slot, &pressed.reading, &pressed.reasons);
        status = fill_strokes(plan, pressed, &found, results);
        if (status == RODT_OK)
            status = fill_incomplete(plan, pressed, results);
    }
    if (status == RODT_OK && found.count > plan->steps)
        plan->steps = found.count;
    return status;
}

/* The code is taken only when every entry of it is filled. */
static rodt_status add_code(rodt_column_plan *plan, const rodt_chamber *chamber, uint64_t reasons)
{
    if (plan->codes == RODT_COLUMN_CODES || (plan->codes + 1) * plan->eras > RODT_COLUMN_ENTRIES)
        return RODT_E_SPACE;
    uint32_t steps_before = plan->steps;
    for (uint32_t era = 0; era < plan->eras; era++) {
        judge_input input = {.reading = plan->common, .reasons = reasons};
        input.reading.chamber = *chamber;
        set_day(plan, era, &input.reading, &input.reasons);
        rodt_status status = fill_entry(plan, input, plan->codes * plan->eras + era);
        if (status != RODT_OK) {
            plan->steps = steps_before;
            return status;
        }
    }
    uint32_t entry = plan->codes * plan->eras + COLUMN_ERA_OF_PLAN(plan);
    plan->code[plan->codes] = (rodt_column_code){plan->step[0][entry].low, (int32_t)(entry * REGIONS_OF_ENTRY)};
    plan->chambers[plan->codes++] = *chamber;
    return RODT_OK;
}

/* --- A plan ------------------------------------------------------------------------------------------ */

/* The first whole number of a column inside the window, and the last. Even without a window, 0 is not inside. */
static void set_window(rodt_column_plan *plan)
{
    rodt_pressure from = rodt_rules_pressure_from(plan->rules);
    rodt_pressure until = rodt_rules_pressure_until(plan->rules);
    plan->pressure_from = 1;
    plan->pressure_until = INT32_MAX;
    if (!rodt_pressure_given(from) || !rodt_pressure_given(until))
        return;
    plan->pressure_from = (int32_t)((from.num * RODT_COLUMN_PER_PSI + from.den - 1) / from.den);
    plan->pressure_from += plan->pressure_from == 0;
    plan->pressure_until = (int32_t)(until.num * RODT_COLUMN_PER_PSI / until.den);
}

rodt_status rodt_column_plan_start(const rodt_rules *rules, const rodt_reading *common, rodt_column_plan *plan)
{
    static const rodt_chamber none;
    if (rules == NULL || plan == NULL)
        return RODT_E_ARGUMENT;
    rodt_reading kept = {0};
    if (common != NULL)
        kept = *common;
    kept.released = kept.applied = kept.division = (rodt_length){0};
    memset(kept.other_released, 0, sizeof kept.other_released);
    memset(kept.other_applied, 0, sizeof kept.other_applied);
    kept.chamber = none;
    plan->rules = rules;
    plan->common = kept;
    plan->codes = plan->cuts = plan->steps = 0;
    if (rodt_reading_check(&kept, NULL) != RODT_OK)
        return RODT_E_ARGUMENT;
    for (size_t i = 0; i < RODT_COLUMN_CUTS; i++)
        plan->cut[i] = INT32_MAX;
    if (!add_cuts(plan, rules) || (rodt_rules_law(rules) != NULL && !add_cuts(plan, rodt_rules_law(rules))))
        return RODT_E_SPACE;
    plan->eras = plan->cuts + 3;
    set_window(plan);
    rodt_status status = add_code(plan, &none, 0);
    if (status == RODT_OK)
        status = add_code(plan, &none, REASON_BIT(RODT_REASON_CHAMBER_UNREADABLE));
    for (uint32_t code = plan->codes; code < RODT_COLUMN_CODES; code++)
        plan->code[code] = plan->code[RODT_COLUMN_CHAMBER_UNREADABLE];
    return status;
}

rodt_status rodt_column_plan_add(rodt_column_plan *plan, const rodt_chamber *chamber, uint8_t *code)
{
    if (plan == NULL || chamber == NULL || code == NULL || plan->rules == NULL || plan->codes < 2 ||
        rodt_chamber_check(chamber, NULL) != RODT_OK)
        return RODT_E_ARGUMENT;
    rodt_status status = add_code(plan, chamber, 0);
    if (status == RODT_OK)
        *code = (uint8_t)(plan->codes - 1);
    return status;
}
