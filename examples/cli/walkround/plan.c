/* SPDX-License-Identifier: Apache-2.0 */
/* The order of the questions. It follows from the record alone, so that an interrupted walk-round continues
 * where it was. */
#include "walkround/walkround.h"
#include "input/numbers.h"
#include "ui/compiler.h"

#include <string.h>

static void add(walk_plan *plan, walk_id id, walk_part part, int end, rodt_air_check check)
{
    if (plan->count < WALK_ITEMS_MAX)
        plan->items[plan->count++] = (walk_item){id, part, end, check};
}

static void ask(walk_plan *plan, walk_id id)
{
    add(plan, id, walk_questions[id].part, WALK_NONE, RODT_AIR_CHECK_NONE);
}

bool walk_same(const walk_item *a, const walk_item *b)
{
    return a->id == b->id && a->end == b->end && a->check == b->check;
}

/* A step that must be confirmed is asked again if a record that was written by hand has another word for it. */
static bool is_confirmed(const walk_item *item, const char *answer)
{
    bool by_option = item->id == ASK_CAUTIONS && strcmp(answer, STEP_BY_OPTION) == 0;
    return by_option || strcmp(answer, "yes") == 0;
}

bool walk_answered(const inspection_record *record, const walk_item *item)
{
    record_value value = walk_value(record, item);
    if (value.text != NULL && (item->id == ASK_CAUTIONS || item->id == ASK_CHOCKS))
        return is_confirmed(item, value.text);
    if (item->check != RODT_AIR_CHECK_NONE && walk_never_came(record, item->check))
        return true;
    return value.text != NULL || value.number > 0 || walk_skipped(record, item);
}

/* --- Which air checks -------------------------------------------------------------------------------- */

static bool is_vehicle(const inspection_record *record, const char *word)
{
    const char *vehicle = record->head[HEAD_VEHICLE].text;
    return vehicle != NULL && strcmp(vehicle, word) == 0;
}

static bool fits_class(const inspection_record *record, const rodt_air_limit *row)
{
    int towed = record->head[HEAD_TOWED].number;
    if (record->head[HEAD_VEHICLE].text == NULL || row->vehicle == RODT_VEHICLE_CLASS_ANY)
        return true;
    if (!is_vehicle(record, "combination"))
        return row->vehicle == RODT_VEHICLE_CLASS_SINGLE ||
               (row->vehicle == RODT_VEHICLE_CLASS_BUS && is_vehicle(record, "bus"));
    return row->vehicle == RODT_VEHICLE_CLASS_COMBINATION &&
           (towed == 0 || row->towed_units < 0 || row->towed_units == towed ||
            (row->towed_or_more && towed > row->towed_units));
}

static bool fits_built(const inspection_record *record, const rodt_air_limit *row)
{
    rodt_date built;
    const char *text = record->head[HEAD_BUILT].text;
    if (text == NULL || read_built_day(text, &built, NULL) != RODT_OK)
        return true;
    return (!rodt_date_given(row->built_from) || built.year >= row->built_from.year) &&
           (!rodt_date_given(row->built_until) || built.year <= row->built_until.year);
}

bool walk_has_check(const inspection_record *record, rodt_air_check check)
{
    bool trailer = check == RODT_AIR_CHECK_TRACTOR_PROTECTION || check == RODT_AIR_CHECK_SUPPLY_VALVE ||
                   check == RODT_AIR_CHECK_TRAILER_BRAKES;
    return !trailer || record_may_tow(record);
}

static bool fits(const inspection_record *record, const rodt_air_limit *row)
{
    return walk_has_check(record, row->check) && fits_class(record, row) && fits_built(record, row);
}

/* A row for any vehicle is left out where the same is said of this kind of vehicle. */
static bool is_replaced(const walk *of, const rodt_air_limit *row)
{
    const rodt_air_limit *other;
    bool named = of->record.head[HEAD_VEHICLE].text != NULL && row->vehicle == RODT_VEHICLE_CLASS_ANY;
    for (size_t i = 0; named && (other = air_row_at(of->context.air_rules, i)) != NULL; i++) {
        if (other->vehicle != RODT_VEHICLE_CLASS_ANY && other->check == row->check && other->kind == row->kind &&
            other->span == row->span && rodt_pressure_compare(other->start, row->start) == 0 &&
            fits(&of->record, other))
            return true;
    }
    return false;
}

const rodt_air_limit *walk_next_row(const walk *of, rodt_air_check check, size_t *index)
{
    const rodt_air_limit *row;
    while ((row = air_row_at(of->context.air_rules, (*index)++)) != NULL) {
        if (row->check == check && fits(&of->record, row) && !is_replaced(of, row))
            return row;
    }
    return NULL;
}

/* The readings that the rows of one check need. */
typedef struct check_needs {
    bool any, answer, cut_out, pressures, span, volume;
} check_needs;

static check_needs find_needs(const walk *of, rodt_air_check check)
{
    check_needs needs = {false, false, false, false, false, false};
    const rodt_air_limit *row;
    for (size_t i = 0; (row = walk_next_row(of, check, &i)) != NULL;) {
        needs.any = true;
        needs.answer = needs.answer || row->measure == RODT_AIR_MEASURE_YES_NO;
        needs.cut_out = needs.cut_out || row->half_cut_out || row->below_cut_out;
        needs.pressures = needs.pressures || row->span == RODT_AIR_SPAN_PRESSURES;
        needs.span = needs.span || row->span != RODT_AIR_SPAN_PRESSURES;
        needs.volume = needs.volume || row->by_volume;
    }
    return needs;
}

/* The governor's cut-out is asked for where it decides, and where it was given. */
static bool needs_cut_out(const walk *of, rodt_air_check check)
{
    const inspection_record *record = &of->record;
    int entry = walk_find_check(record, check);
    const char *text = entry == WALK_NONE ? NULL : record->checks[entry][CHECK_PRESSURE].text;
    rodt_air_reading reading = {.check = check};
    rodt_air_finding finding;
    if (text == NULL || rodt_pressure_parse(text, &reading.pressure, NULL) != RODT_OK)
        return false;
    if (record->checks[entry][CHECK_CUT_OUT].text != NULL)
        return true;
    if (record->head[HEAD_BUILT].text != NULL)
        (void)read_built_day(record->head[HEAD_BUILT].text, &reading.built, NULL);
    return rodt_air_reading_judge(&reading, of->context.air_rules, &finding, NULL) == RODT_OK &&
           finding.missing == RODT_AIR_MISSING_CUT_OUT;
}

static bool is_dated(const walk *of)
{
    const rodt_air_limit *row;
    for (size_t i = 0; (row = air_row_at(of->context.air_rules, i)) != NULL; i++) {
        if (rodt_date_given(row->built_from) || rodt_date_given(row->built_until))
            return true;
    }
    return false;
}

static void ask_build_up(walk_plan *plan, walk_part part, const check_needs *needs)
{
    if (needs->pressures) {
        add(plan, ASK_FROM, part, WALK_NONE, RODT_AIR_CHECK_BUILD_UP);
        add(plan, ASK_TO, part, WALK_NONE, RODT_AIR_CHECK_BUILD_UP);
    } else {
        add(plan, ASK_SPAN, part, WALK_NONE, RODT_AIR_CHECK_BUILD_UP);
    }
    add(plan, ASK_SECONDS, part, WALK_NONE, RODT_AIR_CHECK_BUILD_UP);
    if (needs->volume) {
        add(plan, ASK_ACTUAL, part, WALK_NONE, RODT_AIR_CHECK_BUILD_UP);
        add(plan, ASK_REQUIRED, part, WALK_NONE, RODT_AIR_CHECK_BUILD_UP);
    }
}

static bool is_leak_test(rodt_air_check check)
{
    return check == RODT_AIR_CHECK_LOSS_RELEASED || check == RODT_AIR_CHECK_LOSS_APPLIED ||
           check == RODT_AIR_CHECK_AUDIBLE_LEAK;
}

bool walk_needs_air_ready(const walk *of, rodt_air_check check)
{
    size_t index = 0;
    return is_leak_test(check) && walk_next_row(of, check, &index) != NULL;
}

bool walk_skip_leak_tests(walk *of, inspection_record *record)
{
    bool good = true;
    for (int i = 0; i < RODT_AIR_CHECK_END; i++) {
        walk_item item = {ASK_ANSWER, WALK_AIR_OFF, WALK_NONE, (rodt_air_check)i};
        if (walk_needs_air_ready(of, item.check) && walk_find_check(record, item.check) == WALK_NONE)
            good = walk_skip(of, record, &item) && good;
    }
    return good;
}

/* Leaks behind the parking brake show only while it is released. */
static void ask_air_ready(walk_plan *plan, const walk *of)
{
    bool needed = false;
    for (int check = 0; check < RODT_AIR_CHECK_END; check++)
        needed = needed || walk_needs_air_ready(of, (rodt_air_check)check);
    if (needed)
        ask(plan, ASK_AIR_READY);
}

static void ask_check(walk_plan *plan, const walk *of, rodt_air_check check, walk_part part)
{
    check_needs needs = find_needs(of, check);
    if (!needs.any)
        return;
    bool loss = check == RODT_AIR_CHECK_LOSS_RELEASED || check == RODT_AIR_CHECK_LOSS_APPLIED;
    if (check == RODT_AIR_CHECK_BUILD_UP) {
        ask_build_up(plan, part, &needs);
    } else if (loss || check == RODT_AIR_CHECK_RESERVE) {
        add(plan, ASK_BEFORE, part, WALK_NONE, check);
        if (loss)
            add(plan, ASK_LENGTH, part, WALK_NONE, check);
        add(plan, ASK_AFTER, part, WALK_NONE, check);
    } else {
        add(plan, needs.answer ? ASK_ANSWER : ASK_PRESSURE, part, WALK_NONE, check);
        if (needs.cut_out && needs_cut_out(of, check))
            add(plan, ASK_CUT_OUT, part, WALK_NONE, check);
    }
}

/* One filling of the reservoirs serves all: what needs a full system first, then what brings the pressure down,
 * the highest first (the warning comes on above what closes the valves), the drains, and the build-up from there.
 * A build-up that is a recovery comes after the applications. */
static void ask_air(walk_plan *plan, const walk *of)
{
    static const rodt_air_check off[] = {RODT_AIR_CHECK_AUDIBLE_LEAK, RODT_AIR_CHECK_LOSS_RELEASED,
                                         RODT_AIR_CHECK_LOSS_APPLIED, RODT_AIR_CHECK_RESERVE,
                                         RODT_AIR_CHECK_TRAILER_BRAKES};
    static const rodt_air_check down[] = {
        RODT_AIR_CHECK_WARNING,       RODT_AIR_CHECK_SUPPLY_VALVE, RODT_AIR_CHECK_TRACTOR_PROTECTION,
        RODT_AIR_CHECK_PARKING_VALVE, RODT_AIR_CHECK_DRAIN,        RODT_AIR_CHECK_CONTAMINATION};
    check_needs build_up = find_needs(of, RODT_AIR_CHECK_BUILD_UP);
    bool recovery = build_up.span && !build_up.pressures;
    ask_air_ready(plan, of);
    for (size_t i = 0; i < COUNT_OF(off); i++)
        ask_check(plan, of, off[i], WALK_AIR_OFF);
    if (recovery)
        ask_check(plan, of, RODT_AIR_CHECK_BUILD_UP, WALK_AIR_OFF);
    for (size_t i = 0; i < COUNT_OF(down); i++)
        ask_check(plan, of, down[i], WALK_AIR_OFF);
    if (find_needs(of, RODT_AIR_CHECK_DRAIN).any || find_needs(of, RODT_AIR_CHECK_CONTAMINATION).any)
        ask(plan, ASK_DRAINS_CLOSED);
    if (!recovery)
        ask_check(plan, of, RODT_AIR_CHECK_BUILD_UP, WALK_AIR_ON);
    ask_check(plan, of, RODT_AIR_CHECK_CUT_OUT, WALK_AIR_ON);
    ask_check(plan, of, RODT_AIR_CHECK_CUT_IN, WALK_AIR_ON);
}

/* --- Wheel ends -------------------------------------------------------------------------------------- */

/* Down the left side and up the right one; nobody crosses under the vehicle. */
static bool comes_before(const inspection_record *record, int a, int b, bool by_axle)
{
    rodt_position one = walk_position(record, a), two = walk_position(record, b);
    if (by_axle || one.side == two.side) {
        bool up = !by_axle && one.side == RODT_SIDE_RIGHT;
        if (one.axle != two.axle)
            return up ? one.axle > two.axle : one.axle < two.axle;
    }
    return one.side < two.side;
}

static void sort_ends(const walk *of, int ends[VEHICLE_ENDS_MAX])
{
    const inspection_record *record = &of->record;
    for (int i = 0; i < (int)record->end_count; i++) {
        int at = i;
        for (; at > 0 && comes_before(record, i, ends[at - 1], of->by_axle); at--)
            ends[at] = ends[at - 1];
        ends[at] = i;
    }
}

/* The marks that can change the limit of a chamber. */
typedef struct needed_marks {
    bool stroke_class, rated_stroke, limit;
} needed_marks;

static bool has_rated_row(const rodt_rules *rules, const rodt_chamber *chamber)
{
    for (size_t i = 0; i < rodt_rules_limit_count(rules); i++) {
        const rodt_limit *row = rodt_rules_limit_at(rules, i);
        if (strcmp(row->size, chamber->size) == 0 && row->stroke_class == chamber->stroke_class &&
            (row->family == chamber->family || chamber->family == RODT_FAMILY_UNKNOWN) &&
            rodt_length_given(row->rated_stroke))
            return true;
    }
    return false;
}

static needed_marks find_marks(const walk *of, const record_value *end)
{
    const rodt_rules *rules = rodt_rules_find(of->record.head[HEAD_RULES].text);
    needed_marks needed = {false, false, false};
    rodt_chamber chamber;
    rodt_limit_answer answer;
    RODT_ENUM32(rodt_stroke_class) given = RODT_STROKE_CLASS_UNKNOWN;
    const char *class_text = end[END_CLASS].text;
    if (end[END_CHAMBER].text == NULL || rodt_chamber_parse(end[END_CHAMBER].text, &chamber, NULL) != RODT_OK)
        return needed;
    if (class_text != NULL && rodt_stroke_class_parse_n(class_text, strlen(class_text), &given, NULL) != RODT_OK)
        given = RODT_STROKE_CLASS_UNKNOWN;
    bool open = chamber.stroke_class == RODT_STROKE_CLASS_UNKNOWN;
    (void)rodt_chamber_add_class(&chamber, given);
    if (rodt_rules_find_limit(rules, &chamber, of->context.day, &answer, NULL) != RODT_OK)
        return needed;
    needed.limit = answer.law_basis == RODT_BASIS_NONE || answer.law_basis == RODT_BASIS_RATED_SHARE ||
                   answer.law_basis == RODT_BASIS_MARKED_LIMIT;
    needed.stroke_class = open && (answer.assumed_standard || class_text != NULL);
    needed.rated_stroke = needed.limit || has_rated_row(rules, &chamber);
    return needed;
}

static void ask_released(walk_plan *plan, const walk *of, int end)
{
    const needed_marks needed = find_marks(of, of->record.ends[end]);
    add(plan, ASK_CHAMBER, WALK_RELEASED, end, RODT_AIR_CHECK_NONE);
    if (needed.stroke_class)
        add(plan, ASK_CLASS, WALK_RELEASED, end, RODT_AIR_CHECK_NONE);
    if (needed.rated_stroke)
        add(plan, ASK_RATED, WALK_RELEASED, end, RODT_AIR_CHECK_NONE);
    if (needed.limit)
        add(plan, ASK_MARKED, WALK_RELEASED, end, RODT_AIR_CHECK_NONE);
    add(plan, ASK_ADJUSTER, WALK_RELEASED, end, RODT_AIR_CHECK_NONE);
    add(plan, ASK_ARM, WALK_RELEASED, end, RODT_AIR_CHECK_NONE);
    add(plan, ASK_END_RELEASED, WALK_RELEASED, end, RODT_AIR_CHECK_NONE);
}

/* Without an application there is no second reading. */
static bool is_measured(const inspection_record *record, int end)
{
    walk_item released = {ASK_END_RELEASED, WALK_RELEASED, end, RODT_AIR_CHECK_NONE};
    walk_item held = {ASK_HELD, WALK_APPLICATION, WALK_NONE, RODT_AIR_CHECK_NONE};
    return !walk_skipped(record, &released) && !walk_skipped(record, &held);
}

static void ask_strokes(walk_plan *plan, const walk *of)
{
    static const walk_id before[] = {ASK_SPRING, ASK_ENGINE, ASK_DRUM, ASK_DIVISION};
    static const walk_id application[] = {ASK_RESERVOIRS, ASK_PSI, ASK_HELD};
    int ends[VEHICLE_ENDS_MAX] = {0};
    sort_ends(of, ends);
    for (size_t i = 0; i < COUNT_OF(before); i++)
        ask(plan, before[i]);
    if (record_step(&of->record, STEP_FROM) != NULL)
        ask(plan, ASK_KEPT);
    for (size_t i = 0; i < of->record.end_count; i++)
        ask_released(plan, of, ends[i]);
    for (size_t i = 0; i < COUNT_OF(application); i++) {
        if (application[i] != ASK_RESERVOIRS || !rodt_ratio_given(of->reservoirs))
            ask(plan, application[i]);
    }
    for (size_t i = 0; i < of->record.end_count; i++) {
        if (is_measured(&of->record, ends[i]))
            add(plan, ASK_END_APPLIED, WALK_APPLIED, ends[i], RODT_AIR_CHECK_NONE);
    }
    ask(plan, ASK_PSI_AFTER);
}

/* --- The whole ---------------------------------------------------------------------------------------- */

bool walk_same_subject(const walk_item *a, const walk_item *b)
{
    return (a->check != RODT_AIR_CHECK_NONE && a->check == b->check) || (a->end != WALK_NONE && a->end == b->end);
}

size_t walk_find_item(const walk_plan *plan, const walk_item *item)
{
    size_t at = 0;
    while (at < plan->count && !walk_same(&plan->items[at], item))
        at++;
    return at;
}

void walk_make_plan(const walk *of, walk_plan *out)
{
    static const walk_id first[] = {ASK_CAUTIONS, ASK_UNIT, ASK_CARRIER, ASK_INSPECTOR, ASK_PLACE,
                                    ASK_TIME,     ASK_ODOMETER, ASK_VEHICLE, ASK_AXLES};
    const inspection_record *record = &of->record;
    out->count = 0;
    for (size_t i = 0; i < COUNT_OF(first); i++)
        ask(out, first[i]);
    if (is_vehicle(record, "combination") && record->unit_count < 2)
        ask(out, ASK_TOWED);
    if (is_dated(of))
        ask(out, ASK_BUILT);
    ask(out, ASK_PLATES);
    ask(out, ASK_CHOCKS);
    ask_air(out, of);
    ask_strokes(out, of);
    ask(out, ASK_PARKED);
    ask(out, ASK_CHOCKS_AWAY);
    ask_check(out, of, RODT_AIR_CHECK_SPRING_BRAKE, WALK_FINISH);
    if (of->bad || record_step(record, STEP_REPAIR_DUE) != NULL)
        ask(out, ASK_REPAIR);
}
