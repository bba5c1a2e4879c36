/* SPDX-License-Identifier: Apache-2.0 */
/* A finding in words: the sum in one line, each reason as a sentence, what the tape proves. */
#include <string.h>

#include "core/exact.h"
#include "judge/judge.h"
#include "judge/reasons.h"
#include "message/message.h"
#include "rules/find_limit.h"

static void add_length(rodt_message *message, const rodt_finding *finding, const char *name, rodt_length length)
{
    rodti_message_length(message, name, length, finding->unit);
}

static void add_limit(rodt_message *message, const rodt_finding *finding, const char *name, rodt_length limit)
{
    rodti_message_limit(message, name, limit, finding->unit);
}

/* How far the stroke is over its limit. */
static void add_excess(rodt_message *message, const rodt_finding *finding)
{
    rodt_length margin = finding->margin;
    add_length(message, finding, "excess", (rodt_length){margin.num < 0 ? -margin.num : margin.num, margin.den});
}

/* A margin says something of a rod that moved. */
static bool has_margin(const rodt_finding *finding)
{
    return rodt_length_given(finding->margin) && finding->applied_stroke.num != 0;
}

/* --- The sum in one line ----------------------------------------------------------------------------- */

static rodt_message_code code_of_line(const rodt_finding *finding)
{
    bool limited = rodt_length_given(finding->limit);
    if (!rodt_length_given(finding->applied_stroke))
        return limited ? RODT_MESSAGE_LINE_NO_STROKE : RODT_MESSAGE_LINE_NOTHING;
    if (!limited)
        return RODT_MESSAGE_LINE_NO_LIMIT;
    if (!has_margin(finding))
        return RODT_MESSAGE_LINE_LIMIT;
    return finding->margin.num < 0    ? RODT_MESSAGE_LINE_OVER
           : finding->margin.num == 0 ? RODT_MESSAGE_LINE_AT_LIMIT
                                      : RODT_MESSAGE_LINE_SPARE;
}

static void add_reading(rodt_message *message, const rodt_finding *finding, const char *name, rodt_length reading,
                        rodt_reason unreadable)
{
    if (!rodt_length_given(reading) && rodt_finding_has(finding, unreadable))
        rodti_message_clause(message, name, RODT_MESSAGE_VALUE_NOT_READABLE);
    else
        add_length(message, finding, name, reading);
}

rodt_status rodt_finding_message(const rodt_finding *finding, rodt_message *out)
{
    if (finding == NULL || out == NULL)
        return RODT_E_ARGUMENT;
    rodti_message_start(out, code_of_line(finding));
    add_reading(out, finding, "released", finding->released, RODT_REASON_RELEASED_UNREADABLE);
    add_reading(out, finding, "applied", finding->applied, RODT_REASON_APPLIED_UNREADABLE);
    add_length(out, finding, "stroke", finding->applied_stroke);
    add_limit(out, finding, "limit", finding->limit);
    add_length(out, finding, "margin", finding->margin);
    add_excess(out, finding);
    return RODT_OK;
}

rodt_status rodt_finding_format(const rodt_finding *finding, char *text, size_t size, size_t *needed)
{
    rodt_message message;
    return rodti_message_say(rodt_finding_message(finding, &message), &message, text, size, needed);
}

/* --- Reasons ----------------------------------------------------------------------------------------- */

static void start(rodt_message *out, rodt_message_code code) { rodti_message_start(out, code); }

/* The reason speaks of the law's limit, which a carrier's own can be below. */
static void say_over(rodt_message *out, const rodt_finding *finding)
{
    rodt_length excess;
    bool fits = rodt_length_subtract(finding->applied_stroke, finding->law_limit, &excess) == RODT_OK;
    if (fits && excess.num == 0)
        start(out, RODT_MESSAGE_STROKE_AT_LIMIT_FAILS);
    add_length(out, finding, "excess", fits ? excess : (rodt_length){0, 0});
}

static void say_over_own(rodt_message *out, const rodt_finding *finding)
{
    if (rodt_length_given(finding->law_limit))
        start(out, RODT_MESSAGE_STROKE_OVER_OWN_LIMIT_LAW);
    add_limit(out, finding, "limit", finding->limit);
    add_limit(out, finding, "law_limit", finding->law_limit);
}

static void say_at_limit(rodt_message *out, const rodt_finding *finding)
{
    if (!rodt_rules_at_limit_passes(finding->rules))
        start(out, RODT_MESSAGE_STROKE_AT_LIMIT_FAILS);
}

static void say_within(rodt_message *out, const rodt_finding *finding)
{
    add_length(out, finding, "margin", finding->margin);
}

static void say_beyond_rated(rodt_message *out, const rodt_finding *finding)
{
    add_limit(out, finding, "rated_stroke", finding->chamber.rated_stroke);
}

static void say_hardly(rodt_message *out, const rodt_finding *finding)
{
    add_length(out, finding, "least", STROKE_HARDLY);
}

static void add_window(rodt_message *out, const rodt_finding *finding)
{
    rodti_message_pressure(out, "from", rodt_rules_pressure_from(finding->rules));
    rodti_message_pressure(out, "until", rodt_rules_pressure_until(finding->rules));
}

/* A pressure as it was read, and the window, whose unit is named where it is another one. */
static void add_read_pressure(rodt_message *out, const rodt_finding *finding, rodt_pressure pressure)
{
    rodt_ratio kpa;
    bool in_kpa = rodti_message_in_kpa(pressure, (rodt_pressure_unit)finding->pressure_unit, &kpa);
    if (in_kpa)
        rodti_message_figure(out, "pressure", kpa, RODT_MESSAGE_VALUE_KPA, 1);
    else
        rodti_message_number(out, "pressure", EXACT(pressure), RODT_MESSAGE_VALUE_PSI);
    rodti_message_pressure(out, "from", rodt_rules_pressure_from(finding->rules));
    rodti_message_number(out, "until", EXACT(rodt_rules_pressure_until(finding->rules)),
                         in_kpa ? RODT_MESSAGE_VALUE_PSI : RODT_MESSAGE_NONE);
}

/* Which of the two recorded pressures it was that left the window. */
static void say_outside(rodt_message *out, const rodt_finding *finding, rodt_pressure bound, int side,
                        rodt_message_code after)
{
    bool before = rodt_pressure_given(finding->pressure) && rodt_pressure_compare(finding->pressure, bound) == side;
    if (!before)
        start(out, after);
    add_read_pressure(out, finding, before ? finding->pressure : finding->pressure_after);
}

static bool is_without_air(const rodt_finding *finding)
{
    return (rodt_pressure_given(finding->pressure) && finding->pressure.num == 0) ||
           (rodt_pressure_given(finding->pressure_after) && finding->pressure_after.num == 0);
}

static void say_pressure_low(rodt_message *out, const rodt_finding *finding)
{
    if (is_without_air(finding) && rodt_finding_has(finding, RODT_REASON_NO_MOVEMENT))
        start(out, RODT_MESSAGE_STROKE_PRESSURE_LOW_NO_AIR);
    else
        say_outside(out, finding, rodt_rules_pressure_from(finding->rules), -1,
                    RODT_MESSAGE_STROKE_PRESSURE_LOW_AFTER);
}

static void say_pressure_high(rodt_message *out, const rodt_finding *finding)
{
    say_outside(out, finding, rodt_rules_pressure_until(finding->rules), 1, RODT_MESSAGE_STROKE_PRESSURE_HIGH_AFTER);
}

/* A stroke within the standard limit is within the long one too; between the two it depends on a sign that
 * somebody can look for. */
static rodt_message_code code_of_assumed(const rodt_finding *finding)
{
    if (!rodt_length_given(finding->long_limit))
        return RODT_MESSAGE_STROKE_ASSUMED_STANDARD;
    if (!has_margin(finding))
        return RODT_MESSAGE_STROKE_ASSUMED_STANDARD_LONG;
    if (finding->margin.num >= 0)
        return RODT_MESSAGE_STROKE_ASSUMED_STANDARD_WITHIN;
    return rodt_length_compare(finding->applied_stroke, finding->long_limit) > 0
               ? RODT_MESSAGE_STROKE_ASSUMED_STANDARD_OVER
               : RODT_MESSAGE_STROKE_ASSUMED_STANDARD_LOOK;
}

static void say_assumed_standard(rodt_message *out, const rodt_finding *finding)
{
    start(out, code_of_assumed(finding));
    add_limit(out, finding, "long_limit", finding->long_limit);
}

static const rodt_rules *law_of(const rodt_finding *finding)
{
    const rodt_rules *law = rodt_rules_law(finding->rules);
    return law != NULL ? law : finding->rules;
}

static bool is_family_of(rodt_family family, const char *size)
{
    const rodt_chamber_row *row;
    for (size_t i = 0; (row = rodt_chamber_row_at(i)) != NULL; i++) {
        if (row->family == family && strcmp(row->size, size) == 0)
            return true;
    }
    return false;
}

/* Clamp type is the strict side only where every other family of this size has a limit that day, and none a smaller
 * one. */
static rodt_message_code code_of_assumed_clamp(const rodt_finding *finding)
{
    rodt_message_code code = RODT_MESSAGE_STROKE_ASSUMED_CLAMP_STRICT;
    for (int family = RODT_FAMILY_CLAMP + 1; family < RODT_FAMILY_END; family++) {
        rodt_chamber other = finding->chamber;
        rodt_limit_answer answer;
        other.family = (rodt_family)family;
        if (!is_family_of(other.family, other.size))
            continue;
        rodti_rules_find_limit(law_of(finding), &other, finding->day, &answer);
        if (answer.law_basis != RODT_BASIS_TABLE)
            code = RODT_MESSAGE_STROKE_ASSUMED_CLAMP_OPEN;
        else if (rodt_length_compare(answer.limit, finding->law_limit) < 0)
            return RODT_MESSAGE_STROKE_ASSUMED_CLAMP_LOOK;
    }
    return code;
}

static void say_assumed_clamp(rodt_message *out, const rodt_finding *finding)
{
    start(out, code_of_assumed_clamp(finding));
}

static void say_not_in_force(rodt_message *out, const rodt_finding *finding)
{
    rodt_date from = rodt_rules_from(finding->rules);
    if (rodt_date_given(from))
        start(out, RODT_MESSAGE_STROKE_RULES_NOT_IN_FORCE_FROM);
    rodti_message_text(out, "rules", rodt_rules_id(finding->rules));
    rodti_message_date(out, "day", from);
}

static void say_unconfirmed(rodt_message *out, const rodt_finding *finding)
{
    if (finding->law_evidence != RODT_EVIDENCE_SECOND_HAND)
        start(out, RODT_MESSAGE_STROKE_LIMIT_UNCONFIRMED_FROM_MEMORY);
}

/* A rule set with air checks alone limits no stroke, whatever the chamber is. */
static void say_no_limit(rodt_message *out, const rodt_finding *finding)
{
    const rodt_rules *law = law_of(finding);
    if (law == NULL || rodt_rules_limit_count(law) > 0 || rodt_ratio_given(rodt_rules_rated_share(law)))
        return;
    start(out, RODT_MESSAGE_STROKE_NO_PUBLISHED_LIMIT_AIR_CHECKS_ONLY);
    rodti_message_text(out, "rules", rodt_rules_id(law));
}

static void say_major(rodt_message *out, const rodt_finding *finding)
{
    const rodt_source *source = rodt_rules_major_source(law_of(finding));
    rodti_message_text(out, "document", source != NULL ? source->document : "");
    rodti_message_text(out, "section", source != NULL ? source->section : "");
}

static void say_from_rated(rodt_message *out, const rodt_finding *finding)
{
    rodti_message_fraction(out, "share", rodt_rules_rated_share(finding->rules));
    add_limit(out, finding, "rated_stroke", finding->chamber.rated_stroke);
}

static void say_printed_mm(rodt_message *out, const rodt_finding *finding)
{
    rodti_message_length(out, "printed", finding->law_row->printed_mm, RODT_UNIT_MM);
    rodti_message_limit(out, "limit", finding->law_row->limit, RODT_UNIT_MM);
}

static bool has_limit(const rodt_finding *finding)
{
    return finding->chamber.size[0] != '\0' && rodt_length_given(finding->limit);
}

static void say_date_ambiguous(rodt_message *out, const rodt_finding *finding)
{
    if (!has_limit(finding))
        start(out, RODT_MESSAGE_STROKE_DATE_AMBIGUOUS_DEPENDS);
}

static void say_date_unreadable(rodt_message *out, const rodt_finding *finding)
{
    rodt_date from = rodt_rules_from(law_of(finding));
    if (!rodt_date_given(from))
        start(out, has_limit(finding) ? RODT_MESSAGE_STROKE_DATE_UNREADABLE_SAME
                                      : RODT_MESSAGE_STROKE_DATE_UNREADABLE_DEPENDS);
    else
        start(out, has_limit(finding) ? RODT_MESSAGE_STROKE_DATE_UNREADABLE_SAME_FROM
                                      : RODT_MESSAGE_STROKE_DATE_UNREADABLE_DEPENDS_FROM);
    rodti_message_date(out, "day", from);
}

/* A lost blank is a slip of who writes fractions of inches. */
static void add_meant(rodt_message *out, const char *name, rodt_length read, const rodt_length meant[2])
{
    rodti_message_length(out, name, read, RODT_UNIT_IN);
    rodti_message_length(out, "meant", meant[0], RODT_UNIT_IN);
    if (rodt_length_given(meant[1]))
        rodti_message_length(out, "meant_too", meant[1], RODT_UNIT_IN);
}

static void say_lost_blank(rodt_message *out, const rodt_finding *finding)
{
    bool released = rodt_length_given(finding->other_released[0]),
         applied = rodt_length_given(finding->other_applied[0]);
    bool two_released = rodt_length_given(finding->other_released[1]);
    bool two_applied = rodt_length_given(finding->other_applied[1]);
    if (released && applied)
        start(out, RODT_MESSAGE_STROKE_LOST_BLANK_BOTH);
    if (released || !applied) {
        rodti_message_clause(out, "said", two_released ? RODT_MESSAGE_STROKE_LOST_BLANK_RELEASED_TWO
                                                       : RODT_MESSAGE_STROKE_LOST_BLANK_RELEASED);
        add_meant(out, "released", finding->released, finding->other_released);
    }
    if (applied) {
        rodti_message_clause(out, released ? "said_too" : "said",
                             two_applied ? RODT_MESSAGE_STROKE_LOST_BLANK_APPLIED_TWO
                                         : RODT_MESSAGE_STROKE_LOST_BLANK_APPLIED);
        add_meant(out, "applied", finding->applied, finding->other_applied);
    }
}

/* The sentence of a reason, or its first form; what it adds or makes of it. */
static const struct reason_sentence {
    rodt_message_code code;
    void (*say)(rodt_message *, const rodt_finding *); /* NULL = the sentence has no figures */
} sentences[RODT_REASON_END] = {
    [RODT_REASON_OVER_LIMIT] = {RODT_MESSAGE_STROKE_OVER_LIMIT, say_over},
    [RODT_REASON_OVER_OWN_LIMIT] = {RODT_MESSAGE_STROKE_OVER_OWN_LIMIT, say_over_own},
    [RODT_REASON_AT_LIMIT] = {RODT_MESSAGE_STROKE_AT_LIMIT_PASSES, say_at_limit},
    [RODT_REASON_WITHIN_LIMIT] = {RODT_MESSAGE_STROKE_WITHIN_LIMIT, say_within},
    [RODT_REASON_NO_MOVEMENT] = {RODT_MESSAGE_STROKE_NO_MOVEMENT, NULL},
    [RODT_REASON_READINGS_SWAPPED] = {RODT_MESSAGE_STROKE_READINGS_SWAPPED, NULL},
    [RODT_REASON_BEYOND_RATED_STROKE] = {RODT_MESSAGE_STROKE_BEYOND_RATED_STROKE,
                                         say_beyond_rated},
    [RODT_REASON_HARDLY_MOVED] = {RODT_MESSAGE_STROKE_HARDLY_MOVED, say_hardly},
    [RODT_REASON_PRESSURE_LOW] = {RODT_MESSAGE_STROKE_PRESSURE_LOW, say_pressure_low},
    [RODT_REASON_PRESSURE_HIGH] = {RODT_MESSAGE_STROKE_PRESSURE_HIGH, say_pressure_high},
    [RODT_REASON_PRESSURE_NOT_RECORDED] = {RODT_MESSAGE_STROKE_PRESSURE_NOT_RECORDED,
                                           add_window},
    [RODT_REASON_ENGINE_RUNNING] = {RODT_MESSAGE_STROKE_ENGINE_RUNNING, NULL},
    [RODT_REASON_SPRING_BRAKE_APPLIED] = {RODT_MESSAGE_STROKE_SPRING_BRAKE_APPLIED,
                                          NULL},
    [RODT_REASON_ASSUMED_STANDARD] = {RODT_MESSAGE_STROKE_ASSUMED_STANDARD,
                                      say_assumed_standard},
    [RODT_REASON_ASSUMED_CLAMP] = {RODT_MESSAGE_STROKE_ASSUMED_CLAMP_STRICT,
                                   say_assumed_clamp},
    [RODT_REASON_CONFLICTING_MARKS] = {RODT_MESSAGE_STROKE_CONFLICTING_MARKS, NULL},
    [RODT_REASON_NO_PUBLISHED_LIMIT] = {RODT_MESSAGE_STROKE_NO_PUBLISHED_LIMIT, say_no_limit},
    [RODT_REASON_RULES_NOT_IN_FORCE] = {RODT_MESSAGE_STROKE_RULES_NOT_IN_FORCE,
                                        say_not_in_force},
    [RODT_REASON_LIMIT_UNCONFIRMED] = {RODT_MESSAGE_STROKE_LIMIT_UNCONFIRMED_SECOND_HAND,
                                       say_unconfirmed},
    [RODT_REASON_LIMIT_FROM_RATED] = {RODT_MESSAGE_STROKE_LIMIT_FROM_RATED,
                                      say_from_rated},
    [RODT_REASON_LIMIT_MARKED] = {RODT_MESSAGE_STROKE_LIMIT_MARKED, NULL},
    [RODT_REASON_PRINTED_MM_DIFFERS] = {RODT_MESSAGE_STROKE_PRINTED_MM_DIFFERS,
                                        say_printed_mm},
    [RODT_REASON_DRUM_HOT] = {RODT_MESSAGE_STROKE_DRUM_HOT, NULL},
    [RODT_REASON_CHAMBER_MISSING] = {RODT_MESSAGE_STROKE_CHAMBER_MISSING, NULL},
    [RODT_REASON_RELEASED_MISSING] = {RODT_MESSAGE_STROKE_RELEASED_MISSING, NULL},
    [RODT_REASON_APPLIED_MISSING] = {RODT_MESSAGE_STROKE_APPLIED_MISSING, NULL},
    [RODT_REASON_LIMIT_COMMON_PRACTICE] = {RODT_MESSAGE_STROKE_LIMIT_COMMON_PRACTICE, NULL},
    [RODT_REASON_MAJOR_DEFECT] = {RODT_MESSAGE_STROKE_MAJOR_DEFECT, say_major},
    [RODT_REASON_CHAMBER_UNREADABLE] = {RODT_MESSAGE_STROKE_CHAMBER_UNREADABLE, NULL},
    [RODT_REASON_RELEASED_UNREADABLE] = {RODT_MESSAGE_STROKE_RELEASED_UNREADABLE,
                                         NULL},
    [RODT_REASON_APPLIED_UNREADABLE] = {RODT_MESSAGE_STROKE_APPLIED_UNREADABLE, NULL},
    [RODT_REASON_OTHER_UNREADABLE] = {RODT_MESSAGE_STROKE_OTHER_UNREADABLE, NULL},
    [RODT_REASON_SPREADSHEET_DATE] = {RODT_MESSAGE_STROKE_SPREADSHEET_DATE, NULL},
    [RODT_REASON_DATE_AMBIGUOUS] = {RODT_MESSAGE_STROKE_DATE_AMBIGUOUS_SAME,
                                    say_date_ambiguous},
    [RODT_REASON_DATE_UNREADABLE] = {RODT_MESSAGE_STROKE_DATE_UNREADABLE_SAME,
                                     say_date_unreadable},
    [RODT_REASON_LOST_BLANK] = {RODT_MESSAGE_STROKE_LOST_BLANK, say_lost_blank},
};

/* Their sentences speak of the rule set. */
#define REASONS_OF_RULES                                                                                      \
    (REASON_BIT(RODT_REASON_AT_LIMIT) | REASON_BIT(RODT_REASON_PRESSURE_LOW) |                                \
     REASON_BIT(RODT_REASON_PRESSURE_HIGH) | REASON_BIT(RODT_REASON_PRESSURE_NOT_RECORDED) |                  \
     REASON_BIT(RODT_REASON_ASSUMED_CLAMP) | REASON_BIT(RODT_REASON_RULES_NOT_IN_FORCE) |                     \
     REASON_BIT(RODT_REASON_LIMIT_FROM_RATED) | REASON_BIT(RODT_REASON_DATE_UNREADABLE) |                     \
     REASON_BIT(RODT_REASON_MAJOR_DEFECT))

/* False for a finding that lost what the sentence speaks of: one that was filled by hand, or kept without it. */
static bool can_say(const rodt_finding *finding, rodt_reason reason)
{
    if (reason == RODT_REASON_PRINTED_MM_DIFFERS)
        return finding->law_row != NULL;
    return finding->rules != NULL || (REASONS_OF_RULES & REASON_BIT(reason)) == 0;
}

rodt_status rodt_finding_reason_message(const rodt_finding *finding, rodt_reason reason, rodt_message *out)
{
    if (finding == NULL || out == NULL || rodt_reason_name(reason)[0] == '\0' || !rodt_finding_has(finding, reason) ||
        !can_say(finding, reason))
        return RODT_E_ARGUMENT;
    start(out, sentences[reason].code);
    if (sentences[reason].say != NULL)
        sentences[reason].say(out, finding);
    return RODT_OK;
}

rodt_status rodt_finding_reason_format(const rodt_finding *finding, rodt_reason reason, char *text, size_t size,
                                       size_t *needed)
{
    rodt_message message;
    return rodti_message_say(rodt_finding_reason_message(finding, reason, &message), &message, text, size, needed);
}

/* --- Proof ------------------------------------------------------------------------------------------- */

/* Where the tape at its worst comes to the limit and not beyond, one side has no chance: it is certain, and still not
 * proven, so no chance is said. */
static rodt_message_code code_of_proof(const rodt_finding *finding)
{
    rodt_ratio over = finding->probability_over;
    if (finding->proof == RODT_PROOF_PROVEN_WITHIN)
        return RODT_MESSAGE_PROOF_WITHIN;
    if (finding->proof == RODT_PROOF_PROVEN_OVER)
        return RODT_MESSAGE_PROOF_OVER;
    if (finding->proof != RODT_PROOF_NOT_RESOLVED)
        return RODT_MESSAGE_NONE;
    if (!rodt_ratio_given(over))
        return RODT_MESSAGE_PROOF_NO_CHANCE;
    return over.num == over.den ? RODT_MESSAGE_PROOF_AT_BEST
           : over.num == 0      ? RODT_MESSAGE_PROOF_AT_WORST
                                : RODT_MESSAGE_PROOF_EITHER;
}

rodt_status rodt_finding_proof_message(const rodt_finding *finding, rodt_message *out)
{
    if (finding == NULL || out == NULL)
        return RODT_E_ARGUMENT;
    start(out, code_of_proof(finding));
    add_length(out, finding, "division", finding->division);
    if (out->code == RODT_MESSAGE_PROOF_EITHER)
        rodti_message_fraction(out, "chance", finding->probability_over);
    return RODT_OK;
}

rodt_status rodt_finding_proof_format(const rodt_finding *finding, char *text, size_t size, size_t *needed)
{
    rodt_message message;
    return rodti_message_say(rodt_finding_proof_message(finding, &message), &message, text, size, needed);
}
