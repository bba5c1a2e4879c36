/* SPDX-License-Identifier: Apache-2.0 */
/* The steps of an inspection: which a rule set has, by which rows, and their sentences with its figures. */
#include "rodtravel/step.h"

#include "air/aircheck.h"
#include "air/sentence.h"
#include "core/always.h"
#include "rules/air_choice.h"
#include "rules/tables.h"

static bool is_step(rodt_step step) { return step > RODT_STEP_NONE && (unsigned)step < RODT_STEP_END; }

rodt_air_check rodt_step_check(rodt_step step)
{
    return is_step(step) ? (rodt_air_check)rodti_table_steps[step].check : RODT_AIR_CHECK_NONE;
}

rodt_step rodt_step_of_check(rodt_air_check check)
{
    if (check == RODT_AIR_CHECK_CONTAMINATION)
        return RODT_STEP_DRAIN;
    if (check == RODT_AIR_CHECK_TRAILER_BRAKES)
        return RODT_STEP_SUPPLY_VALVE;
    for (unsigned step = 1; step < RODT_STEP_END && check != RODT_AIR_CHECK_NONE; step++) {
        if (rodt_step_check((rodt_step)step) == check)
            return (rodt_step)step;
    }
    return RODT_STEP_NONE;
}

/* --- Which steps ------------------------------------------------------------------------------------- */

static bool has_row(const rodt_rules *rules, rodt_air_check check)
{
    air_rows rows = rodti_air_rows(rodti_air_law(rules));
    for (size_t i = 0; i < rows.count; i++) {
        if (rows.row[i].check == check)
            return true;
    }
    return false;
}

static bool is_done(const rodt_rules *rules, rodt_vehicle_class vehicle, rodt_step step)
{
    switch ((step_when)rodti_table_steps[step].when) {
    case STEP_WITH_ROW: return has_row(rules, (rodt_air_check)rodti_table_steps[step].check);
    case STEP_OF_COMBINATION:
        return vehicle == RODT_VEHICLE_CLASS_ANY || vehicle == RODT_VEHICLE_CLASS_COMBINATION;
    case STEP_WITH_LIMITS: return rodt_rules_limit_count(rules) > 0 || rodt_ratio_given(rules->rated_share);
    case STEP_ALWAYS: break;
    case STEP_WHENS: return ALWAYS(false); /* it is their number */
    }
    return true;
}

rodt_step rodt_step_at(const rodt_rules *rules, rodt_vehicle_class vehicle, size_t index)
{
    for (unsigned step = 1; rules != NULL && step < RODT_STEP_END; step++) {
        if (is_done(rules, vehicle, (rodt_step)step) && index-- == 0)
            return (rodt_step)step;
    }
    return RODT_STEP_NONE;
}

size_t rodt_step_count(const rodt_rules *rules, rodt_vehicle_class vehicle)
{
    size_t count = 0;
    while (rodt_step_at(rules, vehicle, count) != RODT_STEP_NONE)
        count++;
    return count;
}

/* --- By which rows ----------------------------------------------------------------------------------- */

static bool is_built(const rodt_air_limit *row, const rodt_air_reading *of, air_rows rows, air_vehicle *vehicle)
{
    rodt_date days[AIR_DAYS_MAX];
    const rodt_air_check check = (rodt_air_check)row->check;
    size_t count = rodti_air_list_days(rows, check, of->built, days);
    for (size_t i = 0; i < count; i++) {
        vehicle->built = days[i];
        if (rodti_air_is_chosen(rows, row, check, vehicle))
            return true;
    }
    return false;
}

static bool is_towing(const rodt_air_limit *row, const rodt_air_reading *of, air_rows rows, rodt_vehicle_class class)
{
    bool open = class == RODT_VEHICLE_CLASS_COMBINATION && of->towed_units == 0;
    int last = open ? RODT_TOWED_UNITS_MAX : of->towed_units;
    for (int towed = open ? 1 : of->towed_units; towed <= last; towed++) {
        air_vehicle vehicle = {.vehicle = class, .towed_units = towed};
        if (is_built(row, of, rows, &vehicle))
            return true;
    }
    return false;
}

/* True if a vehicle that is like this is judged by the row. */
static bool judges(const rodt_air_limit *row, const rodt_air_reading *of, air_rows rows)
{
    for (unsigned class = RODT_VEHICLE_CLASS_SINGLE; class < RODT_VEHICLE_CLASS_END; class++) {
        bool said = of->vehicle == RODT_VEHICLE_CLASS_ANY || of->vehicle == class;
        bool fits = of->towed_units == 0 || class == RODT_VEHICLE_CLASS_COMBINATION;
        if (said && fits && is_towing(row, of, rows, (rodt_vehicle_class)class))
            return true;
    }
    return false;
}

/* True if every vehicle that the law's row is for has the carrier's own, of the same measure. */
static bool covers(const rodt_air_limit *own, const rodt_air_limit *law)
{
    bool class = own->vehicle == RODT_VEHICLE_CLASS_ANY || own->vehicle == law->vehicle;
    bool towed = own->towed_units < 0 ||
                 (own->towed_units == law->towed_units && (own->towed_or_more || !law->towed_or_more));
    bool from = !rodt_date_given(own->built_from) || rodt_date_compare(own->built_from, law->built_from) <= 0;
    bool until = !rodt_date_given(own->built_until) || (rodt_date_given(law->built_until) &&
                                                        rodt_date_compare(law->built_until, own->built_until) <= 0);
    return own->check == law->check && own->measure == law->measure && class && towed && from && until &&
           rodti_air_is_one_span(own, law);
}

static bool is_replaced(const rodt_air_limit *row, const rodt_rules *own)
{
    const rodt_air_limit *by;
    for (size_t i = 0; (by = rodt_rules_air_at(own, i)) != NULL; i++) {
        if (covers(by, row))
            return true;
    }
    return false;
}

/* The row of that index among the rule set's own that are for the check and the vehicle; *index is counted down. */
static const rodt_air_limit *own_row_at(const rodt_rules *rules, rodt_air_check check, const rodt_air_reading *vehicle,
                                        const rodt_rules *but, size_t *index)
{
    const rodt_air_limit *row;
    for (size_t i = 0; (row = rodt_rules_air_at(rules, i)) != NULL; i++) {
        if (row->check == check && judges(row, vehicle, rodti_air_rows(rules)) && !is_replaced(row, but) &&
            (*index)-- == 0)
            return row;
    }
    return NULL;
}

const rodt_air_limit *rodt_step_row_at(rodt_step step, const rodt_rules *rules, const rodt_air_reading *vehicle,
                                       size_t index)
{
    static const rodt_air_reading nothing = {.check = RODT_AIR_CHECK_NONE};
    const rodt_air_check check = rodt_step_check(step);
    if (rules == NULL || check == RODT_AIR_CHECK_NONE)
        return NULL;
    const rodt_rules *law = rodti_air_law(rules), *own = law != rules ? rules : NULL;
    const rodt_air_reading *of = vehicle != NULL ? vehicle : &nothing;
    const rodt_air_limit *row = own_row_at(own, check, of, NULL, &index);
    return row != NULL ? row : own_row_at(law, check, of, own, &index);
}

/* --- The sentences ----------------------------------------------------------------------------------- */

/* The rows of the English catalogue are in the order of the steps and their parts. */
_Static_assert(RODT_MESSAGE_STEP_VEHICLE_DEFECTIVE - RODT_MESSAGE_STEP_SECURE_TITLE ==
                   (RODT_STEP_END - 1) * RODT_STEP_PART_END - 1, "a code for each text of each step");

static rodt_message_code code_of(rodt_step step, rodt_step_part part)
{
    return (rodt_message_code)(RODT_MESSAGE_STEP_SECURE_TITLE + (step - 1) * RODT_STEP_PART_END + part);
}

static bool has_figure(const rodt_air_limit *row) { return row != NULL && row->measure != RODT_AIR_MEASURE_YES_NO; }

static void add_do(rodt_message *out, rodt_step step, const rodt_rules *rules, const rodt_air_limit *row)
{
    rodt_pressure from = rodt_rules_pressure_from(rules), until = rodt_rules_pressure_until(rules);
    bool how = row != NULL && row->setup != NULL && row->setup[0] != '\0';
    rodti_message_clause(out, "how", how ? RODT_MESSAGE_STEP_HOW : RODT_MESSAGE_NONE);
    if (how)
        rodti_message_text(out, "setup", row->setup);
    if (step != RODT_STEP_APPLICATION)
        return;
    rodti_message_clause(out, "window", rodt_pressure_given(from) ? RODT_MESSAGE_STEP_WINDOW
                                                                  : RODT_MESSAGE_STEP_WINDOW_NONE);
    rodti_message_pressure(out, "from", from);
    rodti_message_pressure(out, "until", until);
}

static void add_see(rodt_message *out, const rodt_air_limit *row)
{
    bool span = row != NULL && row->check == RODT_AIR_CHECK_BUILD_UP;
    rodti_message_clause(out, "span", span ? RODT_MESSAGE_STEP_SPAN : RODT_MESSAGE_NONE);
    if (span)
        rodti_air_add_span(out, row);
}

static bool is_own(const rodt_rules *rules, const rodt_air_limit *row)
{
    const rodt_air_limit *own;
    for (size_t i = 0; (own = rodt_rules_air_at(rules, i)) != NULL; i++) {
        if (own == row)
            return rodti_air_law(rules) != rules;
    }
    return false;
}

/* The only row of the law that a carrier's row replaces; NULL if there are several, or none. */
static const rodt_air_limit *law_row_of(const rodt_rules *rules, const rodt_air_limit *own)
{
    air_rows law = rodti_air_rows(rodti_air_law(rules));
    const rodt_air_limit *found = NULL;
    for (size_t i = 0; i < law.count; i++) {
        const rodt_air_limit *row = law.row + i;
        if (!covers(own, row))
            continue;
        if (found != NULL)
            return NULL;
        found = row;
    }
    return found;
}

static void add_required(rodt_message *out, const rodt_rules *rules, const rodt_air_limit *row)
{
    bool own = has_figure(row) && is_own(rules, row);
    const rodt_air_limit *law = own ? law_row_of(rules, row) : NULL;
    rodti_message_clause(out, "required", law != NULL       ? RODT_MESSAGE_STEP_REQUIRED_OWN_BESIDE_LAW
                                          : own             ? RODT_MESSAGE_STEP_REQUIRED_OWN
                                          : has_figure(row) ? RODT_MESSAGE_STEP_REQUIRED
                                                            : RODT_MESSAGE_NONE);
    if (has_figure(row))
        rodti_message_text(out, "published", row->published);
    if (law == NULL)
        return;
    rodti_message_text(out, "law", law->published);
    rodti_message_text(out, "source", law->source->section[0] != '\0' ? law->source->section : law->source->document);
}

static void add_good(rodt_message *out, const rodt_rules *rules, const rodt_air_limit *row)
{
    add_required(out, rules, row);
    rodti_message_clause(out, "at_limit", rodt_rules_at_limit_passes(rules) ? RODT_MESSAGE_STEP_AT_LIMIT_PASSES
                                                                            : RODT_MESSAGE_STEP_AT_LIMIT_FAILS);
}

static bool has_ranks(const rodt_rules *rules)
{
    air_rows rows = rodti_air_rows(rodti_air_law(rules));
    for (size_t i = 0; i < rows.count; i++) {
        if (air_is_major(&rows.row[i]) || air_is_minor(&rows.row[i]))
            return true;
    }
    return false;
}

static rodt_message_code code_of_rank(rodt_step step, const rodt_rules *rules, const rodt_air_limit *row)
{
    const rodt_rules *law = rodt_rules_law(rules);
    if (row != NULL)
        return air_is_major(row)   ? RODT_MESSAGE_STEP_MAJOR
               : air_is_minor(row) ? RODT_MESSAGE_STEP_MINOR
                                   : RODT_MESSAGE_NONE;
    bool major = step == RODT_STEP_COMPARE && rodt_rules_major_source(law != NULL ? law : rules) != NULL;
    return major ? RODT_MESSAGE_STEP_MAJOR : RODT_MESSAGE_NONE;
}

static void add_defective(rodt_message *out, rodt_step step, const rodt_rules *rules, const rodt_air_limit *row)
{
    bool figure = has_figure(row) && row->kind != RODT_AIR_KIND_USUAL;
    rodti_message_clause(out, "action", has_ranks(rules) ? RODT_MESSAGE_STEP_ACTION_RANKED : RODT_MESSAGE_STEP_ACTION);
    rodti_message_clause(out, "rank", code_of_rank(step, rules, row));
    rodti_message_clause(out, "limit", figure ? RODT_MESSAGE_STEP_LIMIT : RODT_MESSAGE_NONE);
    if (figure)
        rodti_air_add_when(out, row, NULL);
}

rodt_status rodt_step_message(rodt_step step, rodt_step_part part, const rodt_rules *rules, const rodt_air_limit *row,
                              rodt_message *out)
{
    if (out == NULL || !is_step(step) || (unsigned)part >= RODT_STEP_PART_END ||
        (row != NULL && rodt_step_of_check((rodt_air_check)row->check) != step))
        return RODT_E_ARGUMENT;
    if (rules == NULL)
        return RODT_E_UNKNOWN_RULES;
    rodti_message_start(out, code_of(step, part));
    switch (part) {
    case RODT_STEP_PART_TITLE: break;
    case RODT_STEP_PART_DO: add_do(out, step, rules, row); break;
    case RODT_STEP_PART_SEE: add_see(out, row); break;
    case RODT_STEP_PART_GOOD: add_good(out, rules, row); break;
    case RODT_STEP_PART_DEFECTIVE: add_defective(out, step, rules, row); break;
    }
    return RODT_OK;
}

rodt_status rodt_step_format(rodt_step step, rodt_step_part part, const rodt_rules *rules, const rodt_air_limit *row,
                             char *text, size_t size, size_t *needed)
{
    rodt_message message;
    return rodti_message_say(rodt_step_message(step, part, rules, row, &message), &message, text, size, needed);
}
