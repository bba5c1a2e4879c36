/* SPDX-License-Identifier: Apache-2.0 */
/* Stories of checks in the cab, drawn around the edges of a rule set's rows; the library's own judgement is the key. */
#include "practice/checks.h"
#include "ui/compiler.h"
#include "ui/format.h"
#include "ui/language.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

/* --- Readings ---------------------------------------------------------------------------------------- */

#define FULL_PSI 110
#define FULL_KPA 760
#define RESERVE_PSI 120
#define CUT_OUT_PSI 120

/* How far beyond the edge a figure is, in steps of its measure; below zero it is good. */
static int draw_offset(practice_random *random, practice_level level)
{
    static const int offsets[PRACTICE_LEVELS][6] = {
        {-9, -7, -5, 5, 7, 9}, {-6, -3, -1, 0, 2, 5}, {-1, -1, 0, 0, 1, 1}};
    return offsets[level][practice_below(random, 6)];
}

static int step_of_measure(rodt_air_measure measure)
{
    static const int steps[RODT_AIR_MEASURE_END] = {
        [RODT_AIR_MEASURE_KPA] = 5, [RODT_AIR_MEASURE_SECONDS] = 3, [RODT_AIR_MEASURE_KPA_PER_MINUTE] = 2};
    return steps[measure] > 0 ? steps[measure] : 1;
}

/* The figure that lies so far beyond one edge of the row. */
static rodt_ratio draw_figure(practice_random *random, const rodt_air_limit *row, practice_level level)
{
    bool between = row->comparison == RODT_COMPARISON_BETWEEN;
    bool upper = between && practice_below(random, 2) == 0;
    bool rises =
        upper || row->comparison == RODT_COMPARISON_LESS_THAN || row->comparison == RODT_COMPARISON_NOT_MORE_THAN;
    int offset = draw_offset(random, level) * step_of_measure((rodt_air_measure)row->measure);
    bool rate = row->measure == RODT_AIR_MEASURE_PSI_PER_MINUTE || row->measure == RODT_AIR_MEASURE_KPA_PER_MINUTE;
    if (rate)
        offset = offset / 2;
    const rodt_ratio half_cut_out = {CUT_OUT_PSI / 2, 1};
    rodt_ratio value = rodt_ratio_given(row->value) ? row->value : half_cut_out;
    rodt_ratio figure = upper ? row->upper : value, beyond = {rises ? offset : -offset, 1};
    if (rodt_ratio_add(figure, beyond, &figure) != RODT_OK || figure.num < 0)
        figure = (rodt_ratio){0, 1};
    return figure;
}

static bool set_psi(rodt_pressure *out, int64_t num, int64_t den)
{
    return rodt_pressure_from_psi(num, den, out) == RODT_OK;
}

static bool set_kpa(rodt_pressure *out, int64_t num, int64_t den)
{
    return rodt_pressure_from_kpa(num, den, out) == RODT_OK;
}

static bool set_fall(rodt_air_reading *reading, const rodt_ratio *figure, bool kpa)
{
    int64_t full = (kpa ? FULL_KPA : FULL_PSI) * figure->den;
    int64_t left = full > figure->num ? full - figure->num : 0;
    return (kpa ? set_kpa : set_psi)(&reading->before, full, figure->den) &&
           (kpa ? set_kpa : set_psi)(&reading->after, left, figure->den);
}

/* To whole psi, which is what a gauge shows; the judgement goes by what is shown. */
static bool set_reserve(rodt_air_reading *reading, const rodt_ratio *figure, bool lost)
{
    int64_t percent = figure->num / figure->den;
    int64_t left = RESERVE_PSI * (lost ? 100 - percent : percent) / 100;
    return left > 0 && set_psi(&reading->before, RESERVE_PSI, 1) && set_psi(&reading->after, left, 1);
}

static bool set_figure(rodt_air_reading *reading, const rodt_air_limit *row, rodt_ratio figure)
{
    switch ((rodt_air_measure)row->measure) {
    case RODT_AIR_MEASURE_PSI:
        if (row->below_cut_out && set_psi(&reading->cut_out, CUT_OUT_PSI, 1))
            return set_psi(&reading->pressure, CUT_OUT_PSI * figure.den - figure.num, figure.den);
        return set_psi(&reading->pressure, figure.num, figure.den);
    case RODT_AIR_MEASURE_KPA:
        return set_kpa(&reading->pressure, figure.num, figure.den);
    case RODT_AIR_MEASURE_SECONDS:
        reading->seconds = figure;
        reading->span = row->span;
        reading->before = row->start;
        reading->after = row->stop;
        return !row->by_volume && figure.num > 0;
    case RODT_AIR_MEASURE_PSI_PER_MINUTE:
        return set_fall(reading, &figure, false);
    case RODT_AIR_MEASURE_KPA_PER_MINUTE:
        return set_fall(reading, &figure, true);
    case RODT_AIR_MEASURE_PERCENT_LEFT:
        return set_reserve(reading, &figure, false);
    case RODT_AIR_MEASURE_PERCENT_LOST:
        return set_reserve(reading, &figure, true);
    case RODT_AIR_MEASURE_YES_NO:
        break;
    }
    return false;
}

/* --- Stories ----------------------------------------------------------------------------------------- */

/* Of a yes and of a no; and with figures, of what happened at a pressure. */
static const struct {
    const char *yes;
    const char *no;
    const char *at;
} tales[RODT_AIR_CHECK_END] = {
    [RODT_AIR_CHECK_WARNING] =
        {NULL, TO_SAY("You pump the pedal. The gauge is at 30 psi, and no light or buzzer has come on."),
         TO_SAY("You pump the pedal. Light and buzzer come on as the gauge shows %s.")},
    [RODT_AIR_CHECK_BUILD_UP] =
        {NULL, TO_SAY("The engine runs at the right speed. The gauge stops at 70 psi and rises no more."), NULL},
    [RODT_AIR_CHECK_CUT_OUT] =
        {NULL, TO_SAY("The engine runs. The gauge passes 150 psi, and the compressor pumps on."),
         TO_SAY("The engine runs. The compressor stops pumping as the gauge shows %s.")},
    [RODT_AIR_CHECK_CUT_IN] =
        {NULL, TO_SAY("The engine runs. You pump the pedal down to 60 psi, and the compressor does not start."),
         TO_SAY("The engine runs. You pump the pedal; the compressor starts again at %s.")},
    [RODT_AIR_CHECK_SPRING_BRAKE] =
        {TO_SAY("Parking brake set, low gear, a gentle pull: the truck stays where it is."),
         TO_SAY("Parking brake set, low gear, a gentle pull: the truck creeps forward."), NULL},
    [RODT_AIR_CHECK_TRACTOR_PROTECTION] =
        {TO_SAY("The trailer lines are off, the trailer supply valve is closed. You press the pedal: no air comes "
                "out of the service line."),
         TO_SAY("The trailer lines are off, the trailer supply valve is closed. You press the pedal: air comes "
                "out of the service line."),
         TO_SAY("You let the air out of the trailer lines. The tractor's gauge stops at %s.")},
    [RODT_AIR_CHECK_SUPPLY_VALVE] =
        {TO_SAY("You pull the supply valve. The trailer brakes come on and hold."),
         TO_SAY("You pump the pedal until the gauge is near zero. The supply valve stays in."),
         TO_SAY("You pump the pedal. The trailer supply valve closes by itself at %s.")},
    [RODT_AIR_CHECK_PARKING_VALVE] =
        {NULL, TO_SAY("You pump the pedal until the gauge is near zero. The parking valve stays in."),
         TO_SAY("You pump the pedal. The parking valve pops out at %s.")},
    [RODT_AIR_CHECK_DRAIN] = {TO_SAY("Each drain valve opens by hand, and each reservoir empties."),
                              TO_SAY("The drain valve of the second reservoir cannot be moved by hand."), NULL},
    [RODT_AIR_CHECK_AUDIBLE_LEAK] = {TO_SAY("Engine off, system full: air hisses at a coupling."),
                                     TO_SAY("Engine off, system full: you walk all around and hear nothing."), NULL},
    [RODT_AIR_CHECK_CONTAMINATION] =
        {TO_SAY("A brown, oily sludge comes out of the supply reservoir."),
         TO_SAY("A little clear water comes out of the supply reservoir, then only air."), NULL}};

static const char *gauge_word(rodt_pressure pressure, bool kpa, char word[WORD_SIZE])
{
    rodt_ratio one, number = {pressure.num, pressure.den};
    rodt_pressure unit;
    if (kpa && rodt_pressure_from_kpa(1, 1, &unit) == RODT_OK) {
        one = (rodt_ratio){unit.den, unit.num};
        if (rodt_ratio_multiply(number, one, &number) != RODT_OK)
            number = (rodt_ratio){0, 1};
    }
    char digits[WORD_SIZE];
    snprintf(word, WORD_SIZE, "%.40s %s", format_ratio(number, digits), kpa ? "kPa" : say("psi"));
    return word;
}

static void tell_fall(check_story *story)
{
    const rodt_air_reading *reading = &story->finding.reading;
    const rodt_air_limit *row = story->finding.row;
    char before[WORD_SIZE], after[WORD_SIZE];
    gauge_word(reading->before, story->in_kpa, before);
    gauge_word(reading->after, story->in_kpa, after);
    unsigned long times = row->applications > 0 ? (unsigned long)row->applications : 1;
    if (reading->check == RODT_AIR_CHECK_RESERVE)
        snprintf(story->text, CHECK_STORY_SIZE,
                 say_number("Engine off, gauge at %s. After %lu full application it shows %s.",
                            "Engine off, gauge at %s. After %lu full applications it shows %s.", times),
                 before, times, after);
    else
        snprintf(story->text, CHECK_STORY_SIZE,
                 reading->check == RODT_AIR_CHECK_LOSS_APPLIED
                     ? say("Engine off, brakes applied and held. In one minute the gauge goes from %s to %s.")
                     : say("Engine off, brakes released. In one minute the gauge goes from %s to %s."),
                 before, after);
    story->gauges[0] = reading->before;
    story->gauges[1] = reading->after;
}

/* A tale in the chosen language, the figure in place of its "%s". */
static void put_figure(check_story *story, const char *tale, const char *figure)
{
    const char *said = say(tale), *place = strstr(said, "%s");
    if (place != NULL)
        snprintf(story->text, CHECK_STORY_SIZE, "%.*s%s%s", (int)(place - said), said, figure, place + 2);
}

static void tell_build_up(check_story *story)
{
    static const char *const spans[RODT_AIR_SPAN_END] = {
        "", TO_SAY("From where the warning stops to full pressure the gauge takes %s seconds."),
        TO_SAY("After five full applications, up to full pressure the gauge takes %s seconds."),
        TO_SAY("After one full application, back to the pressure before it the gauge takes %s seconds.")};
    const rodt_air_reading *reading = &story->finding.reading;
    char from[WORD_SIZE], to[WORD_SIZE], seconds[WORD_SIZE];
    format_ratio(reading->seconds, seconds);
    if (reading->span == RODT_AIR_SPAN_PRESSURES)
        snprintf(story->text, CHECK_STORY_SIZE,
                 say("The engine runs as it should. From %s to %s the gauge takes %s seconds."),
                 gauge_word(reading->before, false, from), gauge_word(reading->after, false, to), seconds);
    else
        put_figure(story, spans[reading->span], seconds);
}

static void tell(check_story *story)
{
    const rodt_air_reading *reading = &story->finding.reading;
    char word[WORD_SIZE];
    if (reading->answer != RODT_RECORDED_NOT_RECORDED) {
        const char *tale =
            reading->answer == RODT_RECORDED_YES ? tales[reading->check].yes : tales[reading->check].no;
        snprintf(story->text, CHECK_STORY_SIZE, "%s", tale != NULL ? say(tale) : "");
        return;
    }
    if (rodt_ratio_given(reading->seconds)) {
        tell_build_up(story);
    } else if (rodt_pressure_given(reading->before)) {
        tell_fall(story);
    } else if (tales[reading->check].at != NULL) {
        put_figure(story, tales[reading->check].at, gauge_word(reading->pressure, story->in_kpa, word));
        story->gauges[0] = reading->pressure;
    }
    size_t used = strlen(story->text);
    if (rodt_pressure_given(reading->cut_out))
        snprintf(story->text + used, CHECK_STORY_SIZE - used, say(" The governor cuts out at %s."),
                 gauge_word(reading->cut_out, false, word));
}

/* --- All of them ------------------------------------------------------------------------------------- */

static void draw_reading(practice_random *random, const check_stories *of, const rodt_air_limit *row,
                         rodt_air_reading *out)
{
    rodt_air_check check = (rodt_air_check)row->check;
    *out = of->vehicle;
    out->check = row->check;
    unsigned drawn = practice_below(random, 6);
    if (row->measure == RODT_AIR_MEASURE_YES_NO)
        out->answer = drawn % 2 == 0 ? RODT_RECORDED_YES : RODT_RECORDED_NO;
    else if (drawn == 0 && tales[check].no != NULL)
        out->answer = RODT_RECORDED_NO;
    else if (!set_figure(out, row, draw_figure(random, row, of->setting.level)))
        out->answer = RODT_RECORDED_NOT_RECORDED;
    if (row->half_cut_out)
        (void)set_psi(&out->cut_out, CUT_OUT_PSI, 1);
}

/* Only what is good or defective can be asked for; a reading that decides nothing is drawn again. */
static bool draw_story(practice_random *random, const check_stories *of, const rodt_air_limit *row,
                       check_story *out)
{
    for (int i = 0; i < 12; i++) {
        rodt_air_reading reading;
        *out = (check_story){.step = rodt_step_of_check((rodt_air_check)row->check),
                             .in_kpa = row->measure == RODT_AIR_MEASURE_KPA ||
                                       row->measure == RODT_AIR_MEASURE_KPA_PER_MINUTE};
        draw_reading(random, of, row, &reading);
        if (rodt_air_reading_judge(&reading, of->setting.rules, &out->finding, NULL) != RODT_OK)
            continue;
        out->is_good = out->finding.result == RODT_AIR_RESULT_GOOD;
        if (out->is_good || out->finding.result == RODT_AIR_RESULT_DEFECTIVE)
            tell(out);
        if (out->text[0] != '\0')
            return true;
    }
    return false;
}

static void add_securing(practice_random *random, check_stories *of)
{
    static const struct {
        const char *text;
        bool good;
    } list[] = {
        {TO_SAY("Level yard, parking brake set, engine off, chocks tight before and behind a wheel, the helper stands "
                "beside you."), true},
        {TO_SAY("Level yard, parking brake set, engine off; the chocks are still in their holders."), false},
        {TO_SAY("Chocks in place, parking brake set; somebody you cannot see is working at the rear axle."), false},
        {TO_SAY("Chocks before the wheels only, on a ramp that falls to the rear."), false},
        {TO_SAY("Chocks tight on both sides, parking brake set, the key is in your pocket, and everybody is in sight."),
         true},
        {TO_SAY("The chocks are tight, but the engine runs, and the key is in the lock."), false}};
    size_t at = practice_below(random, (unsigned)COUNT_OF(list));
    check_story *story = &of->list[of->count++];
    *story = (check_story){.step = RODT_STEP_SECURE, .is_good = list[at].good};
    snprintf(story->text, CHECK_STORY_SIZE, "%s", say(list[at].text));
}

static void add_check(practice_random *random, check_stories *of, rodt_air_check check)
{
    const rodt_air_limit *row;
    rodt_step step = rodt_step_of_check(check);
    for (size_t i = 0; (row = rodt_step_row_at(step, of->setting.rules, &of->vehicle, i)) != NULL;) {
        bool asked = row->check == check && row->kind != RODT_AIR_KIND_USUAL && !row->by_volume;
        i++;
        if (asked && of->count < CHECK_STORIES_MAX && draw_story(random, of, row, &of->list[of->count])) {
            of->count++;
            return;
        }
    }
}

void checks_generate(const practice_setting *setting, check_stories *out)
{
    practice_random random = {setting->seed};
    practice_build build = setting->build;
    *out = (check_stories){.setting = *setting};
    if (build == PRACTICE_ANY)
        build = practice_below(&random, 2) == 0 ? PRACTICE_TRUCK : PRACTICE_COMBINATION;
    out->vehicle.vehicle = build == PRACTICE_BUS           ? RODT_VEHICLE_CLASS_BUS
                           : build == PRACTICE_COMBINATION ? RODT_VEHICLE_CLASS_COMBINATION
                                                           : RODT_VEHICLE_CLASS_SINGLE;
    out->vehicle.towed_units = build == PRACTICE_COMBINATION;
    out->vehicle.built = (rodt_date){2016, 0, 0};
    add_securing(&random, out);
    rodt_step step;
    for (size_t i = 0;
         (step = rodt_step_at(setting->rules, (rodt_vehicle_class)out->vehicle.vehicle, i)) != RODT_STEP_NONE;
         i++) {
        if (rodt_step_check(step) != RODT_AIR_CHECK_NONE)
            add_check(&random, out, rodt_step_check(step));
        if (step == RODT_STEP_DRAIN)
            add_check(&random, out, RODT_AIR_CHECK_CONTAMINATION);
    }
}

/* --- The key ----------------------------------------------------------------------------------------- */

bool checks_are_ranked(const check_stories *of)
{
    const rodt_air_limit *row;
    for (size_t i = 0; (row = rodt_rules_air_at(of->setting.rules, i)) != NULL; i++) {
        if (row->kind == RODT_AIR_KIND_MAJOR || row->kind == RODT_AIR_KIND_LIMIT_AND_MAJOR ||
            row->kind == RODT_AIR_KIND_LIMIT_AND_MINOR)
            return true;
    }
    return false;
}

const char *checks_result(const check_story *story) { return story->is_good ? TO_SAY("good") : TO_SAY("defective"); }

const char *checks_rank(const check_story *story)
{
    return story->finding.major ? TO_SAY("major") : story->finding.minor ? TO_SAY("minor") : TO_SAY("none");
}

check_action checks_action(const check_story *story)
{
    if (story->is_good)
        return CHECK_GO;
    return story->finding.minor ? CHECK_REPORT : CHECK_STOP;
}

const char *checks_action_name(check_action action)
{
    static const char *const names[] = {TO_SAY("go on"), TO_SAY("report"), TO_SAY("stop")};
    return names[action];
}

const char *checks_action_text(check_action action)
{
    static const char *const texts[] = {TO_SAY("go on with the inspection"),
                                        TO_SAY("write it in the report and tell the carrier"),
                                        TO_SAY("stop: nobody drives or goes on until it is put right")};
    return say(texts[action]);
}

void checks_explain(const check_stories *of, const check_story *story, char text[PRACTICE_TEXT_SIZE])
{
    rodt_step_part part = story->is_good ? RODT_STEP_PART_GOOD : RODT_STEP_PART_DEFECTIVE;
    rodt_message message;
    rodt_status made = story->finding.reading.check != RODT_AIR_CHECK_NONE
                           ? rodt_air_finding_spoken_message(&story->finding, &message)
                           : rodt_step_message(story->step, part, of->setting.rules, NULL, &message);
    (void)say_message(made, &message, text, PRACTICE_TEXT_SIZE);
}

void checks_entitle(const check_stories *of, const check_story *story, char title[PRACTICE_TEXT_SIZE])
{
    rodt_message message;
    (void)say_message(rodt_step_message(story->step, RODT_STEP_PART_TITLE, of->setting.rules, NULL, &message), &message,
                      title, PRACTICE_TEXT_SIZE);
}

void checks_describe(const check_stories *of, char words[PRACTICE_TEXT_SIZE])
{
    static const char *const vehicles[] = {TO_SAY("Vehicle"), TO_SAY("Truck"), TO_SAY("Combination with one trailer"),
                                           TO_SAY("Bus")};
    snprintf(words, PRACTICE_TEXT_SIZE, say("%s, built in 2016, checked by %s. Level %s."),
             say(vehicles[of->vehicle.vehicle]), rodt_rules_id(of->setting.rules),
             say(practice_level_name(of->setting.level)));
}
