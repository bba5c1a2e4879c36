/* SPDX-License-Identifier: Apache-2.0 */
/* An invented wheel end in words, and its lessons; verdicts and limits are the library's. */
#include "practice/practice.h"
#include "ui/compiler.h"
#include "ui/format.h"
#include "ui/language.h"

#include <inttypes.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

const char *practice_level_name(practice_level level)
{
    static const char *const words[] = {TO_SAY("basic"), TO_SAY("mixed"), TO_SAY("hard")};
    return words[level];
}

const char *practice_build_name(practice_build build)
{
    static const char *const words[] = {"any", "truck", "bus", "combination"};
    return words[build];
}

PRINTF_LIKE(2, 3) static void add(char words[PRACTICE_TEXT_SIZE], const char *format, ...)
{
    size_t used = strlen(words);
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(words + used, PRACTICE_TEXT_SIZE - used, format, arguments);
    va_end(arguments);
}

const char *practice_format_length(const practice *of, rodt_length length, char word[WORD_SIZE])
{
    if (of->setting.unit != RODT_UNIT_MM)
        return format_length(length, word);
    char digits[WORD_SIZE - 4];
    bool whole = rodt_length_given(length) && length.num * 127 % (length.den * 5) == 0;
    if (rodt_length_format_decimal(length, RODT_UNIT_MM, whole ? 0 : 2, RODT_ROUNDING_HALF_EVEN, digits,
                                   sizeof digits, NULL) != RODT_OK)
        return "-";
    snprintf(word, WORD_SIZE, "%s mm", digits);
    return word;
}

const char *practice_format_seed(uint64_t seed, char word[SEED_SIZE])
{
    char digits[24];
    snprintf(digits, sizeof digits, "%" PRIu64, seed);
    snprintf(word, SEED_SIZE, say("seed %s"), digits);
    return word;
}

void practice_format_position(const practice *of, size_t end, char word[RODT_POSITION_TEXT_SIZE])
{
    snprintf(word, RODT_POSITION_TEXT_SIZE, "-");
    (void)rodt_position_format(of->judged.ends[end].position, word, RODT_POSITION_TEXT_SIZE, NULL);
}

/* --- Marks and conditions ------------------------------------------------------------------------------- */

static const char *housing(rodt_family family)
{
    static const char *const words[] = {
        [RODT_FAMILY_UNKNOWN] = TO_SAY("housing not seen"),
        [RODT_FAMILY_CLAMP] = TO_SAY("two halves and a clamp band"),
        [RODT_FAMILY_BOLT] = TO_SAY("two halves and a bolted flange"),
        [RODT_FAMILY_ROTOCHAMBER] = TO_SAY("deep pot, rolling diaphragm (rotochamber)"),
        [RODT_FAMILY_DD_3] = TO_SAY("three air lines, double diaphragm (DD-3)")};
    return say(words[family]);
}

void practice_describe_marks(const practice *of, size_t end, char words[PRACTICE_TEXT_SIZE])
{
    const practice_end *seen = &of->seen[end];
    const rodt_chamber *chamber = &of->judged.ends[end].reading.chamber;
    char rated[WORD_SIZE];
    words[0] = '\0';
    add(words, say("%s; stamped \"%s\""), housing(chamber->family), seen->stamp);
    if (rodt_length_given(chamber->rated_stroke))
        add(words, say(" and \"%s in STROKE\""), format_length(chamber->rated_stroke, rated));
    if (chamber->family == RODT_FAMILY_CLAMP)
        add(words, "%s%s", seen->port == RODT_PORT_SQUARE ? say("; ports square") : say("; ports round"),
            seen->tag == RODT_TAG_TRAPEZOID ? say(", trapezoid tag") : say(", no tag"));
    if (seen->hearsay)
        add(words, "%s", say("; the driver says it is long stroke"));
}

void practice_describe_conditions(const practice *of, size_t end, char words[PRACTICE_TEXT_SIZE])
{
    const rodt_reading *reading = &of->judged.ends[end].reading;
    char word[WORD_SIZE];
    words[0] = '\0';
    if (rodt_pressure_given(reading->pressure))
        add(words, say("%s psi"), format_pressure(reading->pressure, word));
    else
        add(words, "%s", say("pressure not noted"));
    if (rodt_pressure_given(reading->pressure_after))
        add(words, say(" before the application, %s psi after it"), format_pressure(reading->pressure_after, word));
    add(words, "%s%s%s",
        reading->engine_running == RODT_RECORDED_YES ? say("; engine RUNNING") : say("; engine off"),
        reading->spring_brake_applied == RODT_RECORDED_YES ? say("; spring brakes APPLIED")
                                                           : say("; spring brakes released"),
        reading->drum == RODT_DRUM_HOT ? say("; drum HOT") : say("; drum cold"));
    if (rodt_length_given(of->seen[end].hand_pull))
        add(words, say("; pulled by hand the rod moves %s"), practice_format_length(of, of->seen[end].hand_pull, word));
}

static const char *limits_doubt(const practice *of)
{
    uint64_t met = 0;
    for (size_t i = 0; i < of->judged.count; i++)
        met |= of->judged.findings[i].reasons;
    return (met & RODT_REASON_BIT(RODT_REASON_LIMIT_UNCONFIRMED)) != 0       ? say(", which are unconfirmed")
           : (met & RODT_REASON_BIT(RODT_REASON_LIMIT_COMMON_PRACTICE)) != 0 ? say(", which are common practice")
                                                                             : "";
}

void practice_describe_vehicle(const practice *of, char words[PRACTICE_TEXT_SIZE])
{
    char day[WORD_SIZE];
    snprintf(words, PRACTICE_TEXT_SIZE,
             say("%s with %zu brakes, inspected on %s by the limits of %s%s. Tape in %s. Level %s."),
             of->build == PRACTICE_TRUCK ? say("Truck") : of->build == PRACTICE_BUS ? say("Bus") : say("Combination"),
             of->judged.count,
             format_date(of->day, day), rodt_rules_id(of->setting.rules),
             limits_doubt(of),
             of->setting.unit == RODT_UNIT_MM ? say("millimetres") : say("inches and sixteenths"),
             say(practice_level_name(of->setting.level)));
}

void practice_format_command(const practice *of, char words[PRACTICE_TEXT_SIZE])
{
    const practice_setting *setting = &of->setting;
    char day[WORD_SIZE];
    snprintf(words, PRACTICE_TEXT_SIZE, "rodtravel practice --seed %" PRIu64 " --level %s", setting->seed,
             practice_level_name(setting->level));
    if (setting->build != PRACTICE_ANY)
        add(words, " --vehicle %s", practice_build_name(setting->build));
    if (strcmp(rodt_rules_id(setting->rules), RODT_DEFAULT_RULES) != 0)
        add(words, " --rules %s", rodt_rules_id(setting->rules));
    if (rodt_date_given(setting->day))
        add(words, " --as-of %s", format_date(setting->day, day));
    if (setting->unit == RODT_UNIT_MM)
        add(words, " --metric");
}

void practice_format_version(char words[PRACTICE_TEXT_SIZE])
{
    snprintf(words, PRACTICE_TEXT_SIZE, say("rodtravel %s, tables of %s"), rodt_version(), rodt_tables_edition());
}

void practice_format_count(const practice *of, char words[PRACTICE_TEXT_SIZE])
{
    char sentence[SAID_SIZE];
    rodt_message message;
    const rodt_count *count = &of->judged.vehicle.count;
    (void)say_message(rodt_count_message(count, &message), &message, sentence, sizeof sentence);
    snprintf(words, PRACTICE_TEXT_SIZE, say("%s: %s"), sentence, say(rodt_outcome_name(count->outcome)));
}

/* --- Limits ------------------------------------------------------------------------------------------- */

static bool is_in_force(const practice *of, const rodt_limit *row)
{
    return rodt_date_compare(row->from, of->day) <= 0 &&
           (!rodt_date_given(row->until) || rodt_date_compare(of->day, row->until) <= 0);
}

static bool is_alike(const rodt_limit *a, const rodt_limit *b)
{
    return a->family == b->family && a->stroke_class == b->stroke_class &&
           rodt_length_given(a->rated_stroke) == rodt_length_given(b->rated_stroke);
}

/* The rows like this one, if none of them is before it. */
static void list_limits(const practice *of, size_t first, vehicle_line line, void *context)
{
    const rodt_rules *rules = of->setting.rules;
    const rodt_limit *at = rodt_rules_limit_at(rules, first), *row;
    char text[PRACTICE_TEXT_SIZE] = "", label[160], kind[80];
    char limit[WORD_SIZE], rated[WORD_SIZE];
    for (size_t i = 0; (row = rodt_rules_limit_at(rules, i)) != NULL; i++) {
        if (!is_in_force(of, row) || !is_alike(at, row))
            continue;
        if (i < first)
            return;
        add(text, "%s%s: %s", text[0] == '\0' ? "" : ", ", row->size, practice_format_length(of, row->limit, limit));
    }
    bool any = at->stroke_class == RODT_STROKE_CLASS_ANY;
    snprintf(kind, sizeof kind, "%s%s%s", rodt_family_name(at->family), any ? "" : " ",
             any ? "" : say(rodt_stroke_class_name(at->stroke_class)));
    snprintf(label, sizeof label, rodt_length_given(at->rated_stroke) ? say("%s, stamped %s") : "%s", kind,
             format_length(at->rated_stroke, rated));
    line(context, label, text);
}

void practice_each_limit(const practice *of, vehicle_line line, void *context)
{
    const rodt_limit *row;
    for (size_t i = 0; (row = rodt_rules_limit_at(of->setting.rules, i)) != NULL; i++) {
        if (is_in_force(of, row))
            list_limits(of, i, line, context);
    }
}

/* --- Reasons ------------------------------------------------------------------------------------------ */

static const struct {
    rodt_reason reason;
    const char *word;
} reasons[] = {{RODT_REASON_WITHIN_LIMIT, TO_SAY("within-limit")},
               {RODT_REASON_AT_LIMIT, TO_SAY("at-limit")},
               {RODT_REASON_OVER_LIMIT, TO_SAY("over-limit")},
               {RODT_REASON_BEYOND_RATED_STROKE, TO_SAY("beyond-rated-stroke")},
               {RODT_REASON_NO_MOVEMENT, TO_SAY("no-movement")},
               {RODT_REASON_READINGS_SWAPPED, TO_SAY("readings-swapped")},
               {RODT_REASON_PRESSURE_LOW, TO_SAY("pressure-low")},
               {RODT_REASON_PRESSURE_HIGH, TO_SAY("pressure-high")},
               {RODT_REASON_ENGINE_RUNNING, TO_SAY("engine-running")},
               {RODT_REASON_SPRING_BRAKE_APPLIED, TO_SAY("spring-brake-applied")},
               {RODT_REASON_PRESSURE_NOT_RECORDED, TO_SAY("pressure-not-recorded")}};

rodt_reason practice_reason_at(size_t index)
{
    return index < COUNT_OF(reasons) ? reasons[index].reason : RODT_REASON_END;
}

const char *practice_reason_word(rodt_reason reason)
{
    for (size_t i = 0; i < COUNT_OF(reasons); i++) {
        if (reasons[i].reason == reason)
            return reasons[i].word;
    }
    return "";
}

/* The verdict that a reason leads to by itself. */
static rodt_verdict verdict_by(rodt_reason reason, const rodt_finding *finding)
{
    if (reason == RODT_REASON_WITHIN_LIMIT)
        return RODT_VERDICT_IN_ADJUSTMENT;
    if (reason == RODT_REASON_AT_LIMIT)
        return rodt_rules_at_limit_passes(finding->rules) ? RODT_VERDICT_IN_ADJUSTMENT : RODT_VERDICT_OUT_OF_ADJUSTMENT;
    if (reason == RODT_REASON_OVER_LIMIT || reason == RODT_REASON_BEYOND_RATED_STROKE)
        return RODT_VERDICT_OUT_OF_ADJUSTMENT;
    if (reason == RODT_REASON_PRESSURE_NOT_RECORDED) /* what the others lead to, it leaves unproven */
        return finding->verdict;
    return reason == RODT_REASON_NO_MOVEMENT ? RODT_VERDICT_INOPERATIVE : RODT_VERDICT_UNDETERMINED;
}

bool practice_is_deciding(const rodt_finding *finding, rodt_reason reason)
{
    bool listed = false;
    for (size_t i = 0; practice_reason_at(i) != RODT_REASON_END; i++)
        listed = listed || practice_reason_at(i) == reason;
    return listed && rodt_finding_has(finding, reason) && verdict_by(reason, finding) == finding->verdict;
}

rodt_reason practice_deciding_reason(const rodt_finding *finding)
{
    for (size_t i = 0; practice_reason_at(i) != RODT_REASON_END; i++) {
        if (practice_is_deciding(finding, practice_reason_at(i)))
            return practice_reason_at(i);
    }
    return RODT_REASON_END;
}

void practice_each_reason(const practice *of, size_t end, vehicle_line line, void *context)
{
    const rodt_finding *finding = &of->judged.findings[end];
    char sentence[SAID_SIZE], words[RODT_SOURCE_TEXT_SIZE], source[RODT_SOURCE_TEXT_SIZE + SAID_SIZE + 4];
    for (int reason = 0; reason < RODT_REASON_END; reason++) {
        if (finding_reason(finding, (rodt_reason)reason, sentence))
            line(context, TO_SAY("Why"), sentence);
    }
    if (finding->law_source == NULL)
        return;
    snprintf(source, sizeof source, "%s (%s)", format_source(finding->law_source, words),
             say_evidence((rodt_evidence)finding->law_evidence, sentence));
    line(context, TO_SAY("Law"), source);
}

/* --- Lessons ------------------------------------------------------------------------------------------ */

#define MIND TO_SAY("Mind")

static bool find_limit(const practice *of, const rodt_chamber *chamber, rodt_date day, char word[WORD_SIZE])
{
    rodt_limit_answer answer;
    bool found = rodt_rules_find_limit(of->setting.rules, chamber, day, &answer, NULL) == RODT_OK &&
                 rodt_length_given(answer.limit);
    if (found)
        practice_format_length(of, answer.limit, word);
    return found;
}

static void teach_marks(const practice *of, size_t end, vehicle_line line, void *context)
{
    const rodt_chamber *chamber = &of->judged.ends[end].reading.chamber;
    const practice_end *seen = &of->seen[end];
    char text[PRACTICE_TEXT_SIZE];
    if (chamber->spring_size[0] != '\0' && strcmp(chamber->spring_size, chamber->size) != 0) {
        snprintf(text, sizeof text, say("\"%s\" is a type %s: the first number is the service chamber, the second the "
                                        "spring brake"), seen->stamp, chamber->size);
        line(context, MIND, text);
    }
    if (seen->hearsay)
        line(context, MIND,
             say("what somebody says is no sign of long stroke; without a sign it is judged as standard"));
    if (chamber->stroke_class == RODT_STROKE_CLASS_LONG && strchr(seen->stamp, 'L') == NULL)
        line(context, MIND, seen->port == RODT_PORT_SQUARE ? say("square ports are a sign of long stroke")
                                                           : say("a trapezoid tag is a sign of long stroke"));
    if (rodt_length_given(chamber->rated_stroke))
        line(context, MIND, say("the stroke stamped on a housing is the rated stroke, its full travel, and never "
                                "the limit"));
}

/* Two chambers of one name, and one chamber on two days. */
static void teach_limit(const practice *of, size_t end, vehicle_line line, void *context)
{
    const rodt_finding *finding = &of->judged.findings[end];
    rodt_chamber other = of->judged.ends[end].reading.chamber;
    char text[PRACTICE_TEXT_SIZE], here[WORD_SIZE] = "-", there[WORD_SIZE] = "-";
    const char *judged = practice_format_length(of, finding->limit, here);
    if (find_limit(of, &other, (rodt_date){0, 0, 0}, there) && strcmp(judged, there) != 0) {
        snprintf(text, sizeof text, say("the limit of this chamber is %s today; on the day of this sheet it was %s"),
                 there, judged);
        line(context, MIND, text);
    }
    bool three = finding->law_row != NULL && rodt_length_given(finding->law_row->rated_stroke);
    other.rated_stroke = (rodt_length){0, 0};
    if (three && find_limit(of, &other, of->day, there)) {
        snprintf(text, sizeof text, say("long stroke alone would give %s; the marked rated stroke makes it %s"), there,
                 judged);
        line(context, MIND, text);
    }
}

static void teach_measuring(const practice *of, size_t end, vehicle_line line, void *context)
{
    const rodt_finding *finding = &of->judged.findings[end];
    if (of->seen[end].trap == TRAP_MIXED_METHODS)
        line(context, MIND, say("two ways of measuring may have been mixed: a mark made at the chamber face gives the "
                                "stroke at once, a distance to the pin needs a second one"));
    if (rodt_length_given(of->seen[end].hand_pull))
        line(context, MIND, say("what the rod moves by hand is free stroke; no limit is meant for it"));
    if (practice_is_deciding(finding, RODT_REASON_PRESSURE_NOT_RECORDED))
        line(context, MIND, say("the pressure was not noted: until it is, the stroke proves nothing; undetermined, for "
                                "that reason, is right, too"));
    if (rodt_finding_has(finding, RODT_REASON_SPRING_BRAKE_APPLIED))
        line(context, MIND, say("with the spring brakes on the rod was out already: release them, then measure "
                                "both again"));
}

void practice_each_lesson(const practice *of, size_t end, vehicle_line line, void *context)
{
    teach_marks(of, end, line, context);
    teach_limit(of, end, line, context);
    teach_measuring(of, end, line, context);
}
