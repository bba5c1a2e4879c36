/* SPDX-License-Identifier: Apache-2.0 */
/* Texts before a question: the part, the cautions, the set-up of a check, the pressure. */
#include "air/air.h"
#include "walkround/walkround.h"
#include "input/numbers.h"
#include "ui/compiler.h"
#include "ui/format.h"
#include "ui/language.h"
#include "ui/utf8.h"
#include "ui/wrap.h"

#include <stdio.h>
#include <string.h>

/* Whether the vehicle may move must be known before the chocks are taken away. */
static void print_outcome(walk *of)
{
    const inspection *judged = walk_judge(of, &of->record);
    if (judged == NULL)
        return;
    const inspection_outcome outcome = inspection_outcome_of(judged);
    walk_print("", 0, say("By the strokes: %s."), outcome.strokes);
    if (outcome.air != NULL)
        walk_print("", 0, "%s", outcome.air_note);
    if (inspection_warning(judged) != NULL)
        walk_print("", 0, "%s", inspection_warning(judged));
}

static void print_part(const walk *of, walk_part part)
{
    static const char *const what[WALK_PARTS] = {
        [WALK_VEHICLE] = TO_SAY("Enter alone leaves out what you do not know."),
        [WALK_AIR_OFF] =
            TO_SAY("Run the engine until the compressor stops, then turn it off and the key on. The chocks "
                   "stay. If a test has used up the air, build it up again before the next one."),
        [WALK_AIR_ON] = TO_SAY(
            "The chocks stay. Close what was opened, put the trailer lines back, then start the engine."),
        [WALK_SET_UP] = TO_SAY(
            "Build the air up first: a parking brake does not release without air. Then turn the engine "
            "off and release the parking brake on every unit, trailer supply valve open; the chocks stay."),
        [WALK_APPLICATION] = TO_SAY("Nobody at the rods while the pedal goes down."),
        [WALK_RELEASED] =
            TO_SAY("Down the left side, up the right. At each wheel: what it is, and the first reading."),
        [WALK_APPLIED] = TO_SAY("The same way again, with the pedal held.")};
    static const char *const single[WALK_PARTS] = {
        [WALK_AIR_ON] = TO_SAY("The chocks stay. Close what was opened, then start the engine."),
        [WALK_SET_UP] = TO_SAY(
            "Build the air up first: a parking brake does not release without air. Then turn the engine "
            "off and release the parking brake; the chocks stay.")};
    const char *text = single[part] != NULL && !record_may_tow(&of->record) ? single[part] : what[part];
    fputc('\n', walk_out());
    walk_print("", 0, say("Part %d of %d. %s"), (int)part + 1, (int)WALK_PARTS, walk_part_title(part));
    if (text != NULL)
        walk_print("", 0, "%s", say(text));
}

static void print_cautions(void)
{
    static const char *const cautions[] = {
        TO_SAY("Chock the wheels before anybody goes near them."),
        TO_SAY("Never get under a vehicle that can roll; hands off the rods while the pedal goes down or comes up."),
        TO_SAY("A spring brake stores enough energy to kill: never open one."),
        TO_SAY("Do not adjust an automatic adjuster by hand to make it pass. Find the cause and repair it."),
        TO_SAY("A defective vehicle is reported and not driven. The cited law and a licensed inspector decide.")};
    for (size_t i = 0; i < COUNT_OF(cautions); i++)
        walk_print("- ", 2, "%s", say(cautions[i]));
}

/* --- Air checks -------------------------------------------------------------------------------------- */

static bool is_own(const walk *of, const rodt_air_limit *row)
{
    const rodt_rules *rules = of->context.own;
    for (size_t i = 0; rules != NULL && i < rodt_rules_air_count(rules); i++) {
        if (rodt_rules_air_at(rules, i) == row)
            return true;
    }
    return false;
}

static const char *standing(const walk *of, const rodt_air_limit *row)
{
    if (is_own(of, row))
        return say(" (the carrier's own)");
    return row->evidence == RODT_EVIDENCE_CHECKED           ? ""
           : row->evidence == RODT_EVIDENCE_COMMON_PRACTICE ? say(" (common practice)")
                                                            : say(" (unconfirmed)");
}

static void print_check(const walk *of, rodt_air_check check)
{
    const rodt_air_limit *row;
    const char *said = "", *todo = say("  Do:   "), *norm = say("  Rule: ");
    char title[SAID_SIZE];
    fputc('\n', walk_out());
    walk_print("", 0, say("Check: %s"), air_check_title(check, title));
    for (size_t i = 0; (row = walk_next_row(of, check, &i)) != NULL;) {
        if (row->setup[0] != '\0' && strcmp(row->setup, said) != 0)
            walk_print(todo, columns_of_text(todo), "%s", say_table_text(row->setup));
        said = row->setup;
        char rule[AIR_RULE_SIZE], whom[AIR_WHOM_SIZE];
        bool dated = rodt_date_given(row->built_from) || rodt_date_given(row->built_until);
        walk_print(norm, columns_of_text(norm), "%s%s%s%s%s", air_row_rule(row, rule), dated ? "; " : "",
                   dated ? air_row_whom(row, whom) : "", row->kind == RODT_AIR_KIND_USUAL ? say(" (no limit)") : "",
                   standing(of, row));
    }
}

/* --- Which air checks the rule set lacks ------------------------------------------------------------- */

static bool has_rows(const rodt_rules *rules, rodt_air_check check)
{
    const rodt_air_limit *row;
    for (size_t i = 0; (row = air_row_at(rules, i)) != NULL; i++) {
        if (row->check == check)
            return true;
    }
    return false;
}

/* The titles of the checks that the rule set has no figures for. */
static size_t list_missing(const walk *of, char *list, size_t size)
{
    size_t used = 0, count = 0;
    char title[SAID_SIZE];
    list[0] = '\0';
    for (int i = 1; i < RODT_AIR_CHECK_END; i++) {
        rodt_air_check check = (rodt_air_check)i;
        if (has_rows(of->context.air_rules, check) || !walk_has_check(&of->record, check) || used >= size)
            continue;
        used += (size_t)snprintf(list + used, size - used, "%s%s", count > 0 ? ", " : "",
                                 air_check_title(check, title));
        count++;
    }
    return count;
}

static size_t count_checks(const rodt_rules *rules)
{
    size_t count = 0;
    for (int check = 1; check < RODT_AIR_CHECK_END; check++)
        count += has_rows(rules, (rodt_air_check)check);
    return count;
}

/* The rule set of the same country that has most of the air checks; NULL = that is this one. */
static const char *suggest_air_rules(const walk *of)
{
    const char *own = of->record.head[HEAD_RULES].text, *best = NULL;
    size_t most = count_checks(of->context.air_rules);
    for (size_t i = 0; i < rodt_rules_count(); i++) {
        const rodt_rules *rules = rodt_rules_at(i);
        size_t count = count_checks(rules);
        if (strncmp(rodt_rules_id(rules), own, 3) != 0 || count <= most)
            continue;
        most = count;
        best = rodt_rules_id(rules);
    }
    return best;
}

static void print_missing(const walk *of)
{
    char list[700];
    const char *named = of->record.head[HEAD_AIR_RULES].text, *more = suggest_air_rules(of);
    if (list_missing(of, list, sizeof list) == 0)
        return;
    walk_print("", 0, say("Not asked, because %s has no figures for: %s."),
               named != NULL ? named : of->record.head[HEAD_RULES].text, list);
    if (named == NULL && more != NULL)
        walk_print(
            "", 0,
            say("To have them asked, type air and a rule set that has more, now or at any later question: "
                "air %s. Next time: --air-rules %s."),
            more, more);
}

/* --- The pressure to start from ---------------------------------------------------------------------- */

static bool add_volume(const record_value *end, rodt_ratio *sum)
{
    rodt_chamber chamber;
    RODT_ENUM32(rodt_stroke_class) said = RODT_STROKE_CLASS_UNKNOWN;
    rodt_ratio volume;
    if (end[END_CHAMBER].text == NULL || rodt_chamber_parse(end[END_CHAMBER].text, &chamber, NULL) != RODT_OK)
        return false;
    const char *class_text = end[END_CLASS].text;
    if (class_text != NULL && rodt_stroke_class_parse_n(class_text, strlen(class_text), &said, NULL) != RODT_OK)
        said = RODT_STROKE_CLASS_UNKNOWN;
    (void)rodt_chamber_add_class(&chamber, said);
    return rodt_chamber_rated_volume(&chamber, &volume) == RODT_OK && rodt_ratio_add(*sum, volume, sum) == RODT_OK;
}

static rodt_ratio find_reservoirs(const walk *of)
{
    const char *text = record_step(&of->record, walk_questions[ASK_RESERVOIRS].name);
    rodt_ratio volume = of->reservoirs;
    if (!rodt_ratio_given(volume) && text != NULL)
        (void)read_ratio(text, false, &volume);
    return volume;
}

/* The pressure that one full application leaves of the greatest allowed one. */
static bool estimate(const walk *of, rodt_pressure from, rodt_pressure *after)
{
    const rodt_ratio whole = {1, 1};
    rodt_ratio chambers = {0, 1}, reservoirs = find_reservoirs(of);
    if (!rodt_ratio_given(reservoirs))
        return false;
    for (size_t i = 0; i < of->record.end_count; i++) {
        if (!add_volume(of->record.ends[i], &chambers))
            return false;
    }
    return rodt_reservoir_estimate_application(from, reservoirs, chambers, whole, after) == RODT_OK;
}

static void print_pressure(const walk *of)
{
    const rodt_rules *rules = rodt_rules_find(of->record.head[HEAD_RULES].text);
    rodt_pressure from = rodt_rules_pressure_from(rules), until = rodt_rules_pressure_until(rules), after;
    char low[WORD_SIZE], high[WORD_SIZE], left[WORD_SIZE];
    if (!rodt_pressure_given(from) || !rodt_pressure_given(until))
        return;
    walk_print("", 0, say("%s asks for %s to %s psi in the reservoirs, engine off."), rodt_rules_id(rules),
               format_pressure(from, low), format_pressure(until, high));
    walk_print(
        "", 0, "%s",
        say("Above it, pump the pedal; below it, run the engine for a while. Then engine off, and read."));
    if (!estimate(of, until, &after) ||
        rodt_length_format_decimal((rodt_length){after.num, after.den}, RODT_UNIT_IN, 0, RODT_ROUNDING_DOWN, left,
                                   sizeof left, NULL) != RODT_OK)
        return;
    walk_print("", 0, say("Start near %s: by estimate one full application takes %s psi down to about %s."), high, high,
               left);
    if (rodt_pressure_compare(after, from) < 0)
        walk_print("", 0, "%s", say("That is below the window: no pass would be proven. Is the volume right?"));
}

/* What nobody was asked for today. */
static void print_described(const walk *of, int end)
{
    char text[WALK_SAID_SIZE];
    if (walk_describe_end(&of->record, end, text, sizeof text) > 0)
        walk_print("", 0, say("%s: %s"), of->record.ends[end][END_POSITION].text, text);
}

void walk_print_intro(walk *of, const walk_item *item)
{
    if (of->part != item->part)
        print_part(of, item->part);
    if (of->part != item->part && item->part == WALK_FINISH)
        print_outcome(of);
    of->part = item->part;
    if (item->check != RODT_AIR_CHECK_NONE && of->check != item->check) {
        print_check(of, item->check);
        walk_print_last_of(of, rodt_air_check_name(item->check));
    }
    of->check = item->check;
    if (item->id == ASK_CAUTIONS)
        print_cautions();
    if (item->id == ASK_KEPT)
        walk_print_kept(of);
    if (item->id == ASK_END_RELEASED && record_step(&of->record, STEP_FROM) != NULL)
        print_described(of, item->end);
    if (item->id == ASK_END_RELEASED || item->id == ASK_END_APPLIED)
        walk_print_last_of(of, of->record.ends[item->end][END_POSITION].text);
    if (item->id == ASK_CHOCKS && !walk_answered(&of->record, item))
        print_missing(of);
    if (item->id == ASK_PSI)
        print_pressure(of);
    walk_speak_before(of, item);
    if (item->id == ASK_CHOCKS_AWAY && walk_parking_failed(&of->record))
        walk_print("", 0, "%s", say("Leave the chocks in: nothing else holds this vehicle. Type skip."));
    else if (item->id == ASK_CHOCKS_AWAY && walk_is_bad(of))
        walk_print("", 0, "%s", say("Leave the chocks in if it will be repaired here: type skip."));
    else if (item->id == ASK_CHOCKS_AWAY && walk_is_unsettled(of))
        walk_print("", 0, "%s", say("Leave the chocks in if it will be measured again: type skip."));
}
