/* SPDX-License-Identifier: Apache-2.0 */
/* Warnings of answers that can be read but are unlikely. They are shown immediately, while the tape is still in the
 * hand. */
#include "walkround/walkround.h"
#include "input/numbers.h"
#include "ui/compiler.h"
#include "ui/format.h"
#include "ui/language.h"

#include <stdio.h>
#include <string.h>

/* The warnings so far: lines that are counted. */
typedef struct warning_list {
    vehicle_line line;
    void *context;
    size_t count;
} warning_list;

static void warn(warning_list *warnings, const char *text)
{
    warnings->line(warnings->context, "", text);
    warnings->count++;
}

/* --- Wheel ends -------------------------------------------------------------------------------------- */

static void warn_stroke(warning_list *warnings, const rodt_finding *finding)
{
    static const rodt_reason reasons[] = {RODT_REASON_READINGS_SWAPPED, RODT_REASON_NO_MOVEMENT,
                                          RODT_REASON_HARDLY_MOVED, RODT_REASON_BEYOND_RATED_STROKE,
                                          RODT_REASON_LOST_BLANK};
    char sentence[SAID_SIZE];
    for (size_t i = 0; i < COUNT_OF(reasons); i++) {
        if (finding_reason(finding, reasons[i], sentence))
            warn(warnings, sentence);
    }
    if (!rodt_finding_has(finding, RODT_REASON_BEYOND_RATED_STROKE) && finding_is_beyond_travel(finding))
        warn(warnings, say("that is more than the full travel of a standard chamber of this size: look at the "
                           "chamber and the tape again"));
}

static const rodt_axle_finding *find_axle(const inspection *judged, int16_t axle)
{
    for (size_t i = 0; judged != NULL && i < judged->vehicle.vehicle.axle_count; i++) {
        if (judged->vehicle.vehicle.axles[i].axle == axle)
            return &judged->vehicle.vehicle.axles[i];
    }
    return NULL;
}

/* The differences that the answer can cause. A class that is still to be asked is no difference. */
static uint32_t find_differences(const inspection_record *trial, const walk_item *item)
{
    rodt_chamber chamber;
    const char *text = trial->ends[item->end][END_CHAMBER].text;
    if (item->id == ASK_ARM)
        return RODT_AXLE_MISMATCH_ARM_DIFFERS;
    if (item->id == ASK_CLASS)
        return RODT_AXLE_MISMATCH_CLASS_DIFFERS;
    if (item->id != ASK_CHAMBER || text == NULL || rodt_chamber_parse(text, &chamber, NULL) != RODT_OK)
        return 0;
    uint32_t marks = RODT_AXLE_MISMATCH_SIZE_DIFFERS | RODT_AXLE_MISMATCH_SPRING_DIFFERS |
                     RODT_AXLE_MISMATCH_FAMILY_DIFFERS;
    return chamber.stroke_class == RODT_STROKE_CLASS_UNKNOWN ? marks : marks | RODT_AXLE_MISMATCH_CLASS_DIFFERS;
}

static void warn_axle(warning_list *warnings, const rodt_axle_finding *axle, uint32_t bits)
{
    char sentence[SAID_SIZE];
    rodt_message message;
    for (uint32_t bit = 1; axle != NULL && bit <= RODT_AXLE_MISMATCH_STEERING_DEAD; bit <<= 1) {
        if ((bit & bits) != 0 &&
            say_message(rodt_axle_mismatch_message(axle, bit, &message), &message, sentence, sizeof sentence))
            warn(warnings, sentence);
    }
}

/* Bounds of our own around what brakes have; outside them the answer was meant for a neighbouring question. */
static void warn_size(warning_list *warnings, walk_id id, rodt_length length)
{
    const rodt_length least = id == ASK_ARM ? (rodt_length){7, 2} : (rodt_length){1, 1};
    const rodt_length most = id == ASK_ARM ? (rodt_length){9, 1} : (rodt_length){4, 1};
    if (!rodt_length_given(length) ||
        (rodt_length_compare(length, least) >= 0 && rodt_length_compare(length, most) <= 0))
        return;
    warn(warnings, id == ASK_ARM
                       ? say("that is hardly the length of a slack arm: is it the answer to another question?")
                       : say("that is hardly the rated stroke of a chamber: is it the answer to another question?"));
}

/* Far beyond what lies between a chamber and its pin. */
static void warn_reading(warning_list *warnings, rodt_length length, int most)
{
    if (rodt_length_given(length) && rodt_length_compare(length, (rodt_length){most, 1}) > 0)
        warn(warnings, say("that is hardly the distance from the chamber face to the pin: look at the tape again"));
}

#define RELEASED_MOST 7 /* inches, choices of ours */
#define APPLIED_MOST 10

static void warn_end(walk *of, warning_list *warnings, const inspection_record *trial, const walk_item *item)
{
    const inspection *judged = walk_judge(of, trial);
    if (judged == NULL)
        return;
    const rodt_finding *finding = &judged->vehicle.findings[item->end];
    if (item->id == ASK_END_APPLIED || item->id == ASK_END_RELEASED)
        warn_stroke(warnings, finding);
    else
        warn_axle(warnings, find_axle(judged, walk_position(trial, item->end).axle), find_differences(trial, item));
    if (item->id == ASK_END_RELEASED)
        warn_reading(warnings, finding->released, RELEASED_MOST);
    if (item->id == ASK_END_APPLIED)
        warn_reading(warnings, finding->applied, APPLIED_MOST);
    if (item->id == ASK_ARM)
        warn_size(warnings, item->id, judged->vehicle.ends[item->end].arm_length);
    if (item->id == ASK_RATED)
        warn_size(warnings, item->id, finding->chamber.rated_stroke);
    if (item->id == ASK_CHAMBER && finding->law_basis == RODT_BASIS_NONE)
        warn(warnings, say("no limit is published for this chamber under the rule set; is the mark read right?"));
}

/* --- Pressures --------------------------------------------------------------------------------------- */

static void warn_window(warning_list *warnings, const inspection_record *trial, const walk_item *item)
{
    const rodt_rules *rules = rodt_rules_find(trial->head[HEAD_RULES].text);
    rodt_pressure from = rodt_rules_pressure_from(rules), until = rodt_rules_pressure_until(rules), read, before;
    char low[WORD_SIZE], high[WORD_SIZE], sentence[SAID_SIZE];
    const char *text = walk_value(trial, item).text;
    if (text == NULL || rodt_pressure_parse(text, &read, NULL) != RODT_OK)
        return;
    bool below = rodt_pressure_given(from) && rodt_pressure_compare(read, from) < 0;
    bool above = rodt_pressure_given(until) && rodt_pressure_compare(read, until) > 0;
    snprintf(sentence, sizeof sentence,
             below ? say("below the %s to %s psi of %s: too little air: a brake that passes here may be bad")
                   : say("above the %s to %s psi of %s: too much air: a brake that fails here may be good"),
             format_pressure(from, low), format_pressure(until, high), rodt_rules_id(rules));
    if (below || above)
        warn(warnings, sentence);
    text = trial->ends[0][END_PSI].text;
    if (item->id == ASK_PSI_AFTER && text != NULL && rodt_pressure_parse(text, &before, NULL) == RODT_OK &&
        rodt_pressure_compare(read, before) > 0)
        warn(warnings, say("the pressure rose though the engine is off: look at the gauge again"));
}

/* Bounds of our own around what each check can show, in psi; far outside of any law. */
static const struct {
    int least, most;
    const char *text;
} bounds[RODT_AIR_CHECK_END] = {
    [RODT_AIR_CHECK_WARNING] = {10, 100, TO_SAY("a warning hardly comes on there: look at the gauge again")},
    [RODT_AIR_CHECK_CUT_OUT] = {81, 170,
                                TO_SAY(
                                    "a governor hardly stops the compressor there: look at the gauge again")},
    [RODT_AIR_CHECK_CUT_IN] = {61, 170,
                               TO_SAY(
                                   "a governor hardly starts the compressor there: look at the gauge again")},
    [RODT_AIR_CHECK_TRACTOR_PROTECTION] = {10, 100, TO_SAY("that is hardly so: look at the gauge again")},
    [RODT_AIR_CHECK_SUPPLY_VALVE] = {10, 100,
                                     TO_SAY("the valve hardly closes there: look at the gauge again")},
    [RODT_AIR_CHECK_PARKING_VALVE] = {10, 100,
                                      TO_SAY("the valve hardly pops out there: look at the gauge again")}};

static bool is_between(rodt_pressure read, int least, int most)
{
    return rodt_pressure_compare(read, (rodt_pressure){least, 1}) >= 0 &&
           rodt_pressure_compare(read, (rodt_pressure){most, 1}) <= 0;
}

static bool is_likely(rodt_air_check check, rodt_pressure read)
{
    return is_between(read, bounds[check].least, bounds[check].most);
}

static void warn_gauge(warning_list *warnings, const walk_item *item, rodt_pressure read)
{
    bool own = item->id == ASK_PRESSURE && bounds[item->check].text != NULL;
    if (own ? !is_likely(item->check, read) : !is_between(read, 10, 170))
        warn(warnings, own ? say(bounds[item->check].text)
                           : say("that is hardly the pressure of an air brake system: look at the gauge again"));
}

static bool read_check(const inspection_record *record, rodt_air_check check, rodt_pressure *out)
{
    int entry = walk_find_check(record, check);
    const char *text = entry == WALK_NONE ? NULL : record->checks[entry][CHECK_PRESSURE].text;
    return text != NULL && rodt_pressure_parse(text, out, NULL) == RODT_OK;
}

#define ORDER_SIZE ((size_t)4 * SAID_SIZE)

/* Where this answer is likely by itself and an earlier one is not, that one is named. */
static void format_order(const rodt_air_check pair[2], const rodt_pressure read[2], rodt_air_check changed,
                         char sentence[ORDER_SIZE])
{
    char low[WORD_SIZE], high[WORD_SIZE], first[SAID_SIZE], second[SAID_SIZE], other[SAID_SIZE];
    const rodt_air_check kept = pair[changed == pair[0]];
    (void)air_check_title(pair[0], first);
    (void)air_check_title(pair[1], second);
    bool odd = is_likely(changed, read[changed != pair[0]]) && !is_likely(kept, read[changed == pair[0]]);
    if (odd)
        snprintf(sentence, ORDER_SIZE, say("%s at %s psi must be below %s at %s: %s is the odd one; back %s mends it"),
                 first, format_pressure(read[0], low), second, format_pressure(read[1], high),
                 air_check_title(kept, other), rodt_air_check_name(kept));
    else
        snprintf(sentence, ORDER_SIZE, say("%s at %s psi must be below %s at %s: look at the gauge again"), first,
                 format_pressure(read[0], low), second, format_pressure(read[1], high));
}

/* As the pressure falls the compressor starts before the warning comes on, and it stops above where it starts. */
static void warn_order(warning_list *warnings, const inspection_record *trial, rodt_air_check changed)
{
    static const rodt_air_check pairs[][2] = {{RODT_AIR_CHECK_CUT_IN, RODT_AIR_CHECK_CUT_OUT},
                                              {RODT_AIR_CHECK_WARNING, RODT_AIR_CHECK_CUT_IN},
                                              {RODT_AIR_CHECK_WARNING, RODT_AIR_CHECK_CUT_OUT}};
    for (size_t i = 0; i < COUNT_OF(pairs); i++) {
        rodt_pressure read[2];
        char sentence[ORDER_SIZE];
        bool asked = changed == pairs[i][0] || changed == pairs[i][1];
        if (!asked || !read_check(trial, pairs[i][0], &read[0]) || !read_check(trial, pairs[i][1], &read[1]) ||
            rodt_pressure_compare(read[0], read[1]) < 0)
            continue;
        format_order(pairs[i], read, changed, sentence);
        warn(warnings, sentence);
    }
}

static void warn_pressure(warning_list *warnings, const inspection_record *trial, const walk_item *item)
{
    rodt_pressure read;
    const char *text = walk_value(trial, item).text;
    if (text == NULL || rodt_pressure_parse(text, &read, NULL) != RODT_OK)
        return;
    warn_gauge(warnings, item, read);
    if (item->id == ASK_PRESSURE)
        warn_order(warnings, trial, item->check);
}

#define BUILD_UP_LEAST 5 /* seconds, a choice of ours */

/* A test that is too short passes what a whole one would fail. */
static void warn_seconds(const walk *of, warning_list *warnings, const inspection_record *trial, const walk_item *item)
{
    rodt_ratio seconds;
    char minute[WALK_ANSWER_MAX];
    const char *text = walk_value(trial, item).text;
    if (text == NULL || !read_ratio(text, true, &seconds))
        return;
    int64_t least = item->id == ASK_LENGTH ? walk_minute(of, item->check, minute) ? 60 : 120 : BUILD_UP_LEAST;
    if (seconds.num >= least * seconds.den)
        return;
    warn(warnings, item->id == ASK_LENGTH
                       ? say("that is shorter than the test of the rule: a leak may not show")
                       : say("that is hardly the time of a build-up: start and stop the clock again"));
}

static void warn_check(walk *of, warning_list *warnings, const inspection_record *trial, const walk_item *item)
{
    const inspection *judged = walk_judge(of, trial);
    int check = walk_find_check(trial, item->check);
    if (judged == NULL || check == WALK_NONE)
        return;
    const rodt_air_finding *finding = &judged->air[check];
    if (walk_questions[item->id].kind == WALK_PRESSURE)
        warn_pressure(warnings, trial, item);
    if (walk_questions[item->id].kind == WALK_CLOCK)
        warn_seconds(of, warnings, trial, item);
    if (finding->missing == RODT_AIR_MISSING_SENSE && item->id == ASK_AFTER)
        warn(warnings, say("the two pressures contradict each other: look at the gauge again"));
    if (finding->missing == RODT_AIR_MISSING_SPAN && item->id == ASK_SECONDS)
        warn(warnings, say("the rule set times another span, so this time proves nothing"));
}

/* --- The vehicle -------------------------------------------------------------------------------------- */

static bool has_reading(const record_value *end)
{
    return end[END_CHAMBER].text != NULL || end[END_RELEASED].text != NULL || end[END_APPLIED].text != NULL;
}

#define MANY_AXLES 12 /* a choice of ours; more are rare, and 22 is quickly typed for 2 */

static void warn_axles(walk *of, warning_list *warnings, const inspection_record *trial)
{
    char sentence[SAID_SIZE];
    size_t lost = 0;
    for (size_t i = trial->end_count; i < of->record.end_count; i++)
        lost += has_reading(of->record.ends[i]);
    snprintf(sentence, sizeof sentence,
             say_number("what was entered of %zu wheel end is dropped then",
                        "what was entered of %zu wheel ends is dropped then", lost), lost);
    if (lost > 0)
        warn(warnings, sentence);
    if (trial->head[HEAD_BRAKES].number != of->record.head[HEAD_BRAKES].number) {
        snprintf(sentence, sizeof sentence,
                 say("the record says %d brakes; that is dropped then, and both ends of every axle are counted"),
                 of->record.head[HEAD_BRAKES].number);
        warn(warnings, sentence);
    }
    if (trial->end_count > (size_t)2 * MANY_AXLES)
        warn(warnings, say("that is a lot of axles"));
}

static void warn_chocks(walk *of, warning_list *warnings)
{
    if (walk_is_bad(of))
        warn(warnings, say("this vehicle must not be driven: do the chocks really have to go?"));
    else if (walk_is_unsettled(of))
        warn(warnings, say("it is not settled that this vehicle may be driven: do the chocks really have to go?"));
}

size_t walk_each_warning(walk *of, const inspection_record *trial, const walk_item *item, vehicle_line line,
                         void *context)
{
    warning_list warnings = {line, context, 0};
    record_value value = walk_value(trial, item);
    if (item->end != WALK_NONE)
        warn_end(of, &warnings, trial, item);
    else if (item->check != RODT_AIR_CHECK_NONE)
        warn_check(of, &warnings, trial, item);
    else if (item->id == ASK_PSI || item->id == ASK_PSI_AFTER)
        warn_window(&warnings, trial, item);
    else if (item->id == ASK_AXLES)
        warn_axles(of, &warnings, trial);
    else if ((item->id == ASK_ENGINE || item->id == ASK_SPRING) && value.text != NULL && strcmp(value.text, "on") == 0)
        warn(&warnings, item->id == ASK_SPRING && !walk_parking_failed(trial)
                            ? say("then no stroke proves anything: every verdict would be undetermined; if it does "
                                  "not release, type never")
                            : say("then no stroke proves anything: every verdict would be undetermined"));
    else if (item->id == ASK_PARKED && value.text != NULL && strcmp(value.text, STEP_NEVER) == 0)
        warn(&warnings, say("leave the chocks in: nothing else holds this vehicle"));
    else if (item->id == ASK_CHOCKS_AWAY && value.text != NULL && strcmp(value.text, "yes") == 0)
        warn_chocks(of, &warnings);
    return warnings.count;
}
