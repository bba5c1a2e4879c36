/* SPDX-License-Identifier: Apache-2.0 */
/* A finding in words: the sum in one line, each reason as a sentence, what the tape proves. */
#include "judge/reasons.h"
#include "core/exact.h"
#include "core/text.h"
#include "judge/words.h"
#include "rules/find_limit.h"

#include <string.h>

/* --- Lengths as the person measured them ------------------------------------------------------------- */

/* A tape is divided into halves of halves; anything else is better read as a decimal. */
static bool is_tape_fraction(rodt_length length)
{
    return (length.den & (length.den - 1)) == 0 && length.den <= 128;
}

/* Digits behind the point that write the value exactly, up to 6; 7 = it takes more. */
static unsigned exact_digits(rodt_length length, rodt_unit unit)
{
    rodt_ratio scaled = {length.num, length.den};
    const rodt_ratio mm = {127, 5};
    const rodt_ratio ten = {10, 1};
    if (unit != RODT_UNIT_INCH && !rodti_exact_multiply(scaled, mm, &scaled))
        return 7;
    unsigned digits = 0;
    while (scaled.den != 1 && digits < 7) {
        if (!rodti_exact_multiply(scaled, ten, &scaled))
            return 7;
        digits++;
    }
    return digits;
}

/* Unit used in messages for readings taken in `unit`; cm is reported in mm. */
static rodt_unit message_unit(rodt_unit unit) { return unit == RODT_UNIT_INCH ? RODT_UNIT_INCH : RODT_UNIT_MM; }

static void put_length(text_writer *writer, rodt_length length, rodt_unit unit)
{
    char text[RODT_LENGTH_TEXT_SIZE];
    unsigned digits = exact_digits(length, unit);
    bool decimal = message_unit(unit) == RODT_UNIT_MM || (!is_tape_fraction(length) && digits <= 6);
    if (!decimal) {
        if (rodt_length_format(length, text, sizeof text, NULL) == RODT_OK)
            rodti_text_put(writer, text);
        return;
    }
    if (digits > 6)
        rodti_text_put(writer, "about ");
    if (rodt_length_format_decimal(length, message_unit(unit), digits > 6 ? 3 : digits, RODT_ROUNDING_HALF_EVEN, text,
                                  sizeof text, NULL) == RODT_OK)
        rodti_text_put(writer, text);
    if (message_unit(unit) == RODT_UNIT_MM)
        rodti_text_put(writer, " mm");
}

/* A limit is an inch figure of law: that first, and its exact millimetres for who measures in them. */
static void put_limit(text_writer *writer, rodt_length limit, rodt_unit unit)
{
    put_length(writer, limit, RODT_UNIT_INCH);
    if (unit != RODT_UNIT_INCH) {
        rodti_text_put(writer, " in (");
        put_length(writer, limit, unit);
        rodti_text_put(writer, ")");
    }
}

static rodt_length excess(rodt_length margin)
{
    return (rodt_length){margin.num < 0 ? -margin.num : margin.num, margin.den};
}

/* --- The sum in one line ----------------------------------------------------------------------------- */

static void put_reading(text_writer *writer, const rodt_finding *finding, rodt_length reading,
                        rodt_reason unreadable)
{
    if (rodt_length_given(reading))
        put_length(writer, reading, finding->unit);
    else
        rodti_text_put(writer, rodt_finding_has(finding, unreadable) ? "(not readable)" : "(not measured)");
}

static void put_margin(text_writer *writer, const rodt_finding *finding)
{
    if (!rodt_length_given(finding->margin) || finding->applied_stroke.num == 0)
        return;
    rodti_text_put(writer, finding->margin.num < 0 ? "; over by " : "; ");
    if (finding->margin.num == 0) {
        rodti_text_put(writer, "exactly at the limit");
        return;
    }
    put_length(writer, excess(finding->margin), finding->unit);
    if (finding->margin.num > 0)
        rodti_text_put(writer, " to spare");
}

rodt_status rodt_finding_format(const rodt_finding *finding, char *text, size_t size, size_t *needed)
{
    if (finding == NULL)
        return RODT_E_ARGUMENT;
    text_writer writer;
    rodti_text_begin(&writer);
    put_reading(&writer, finding, finding->released, RODT_REASON_RELEASED_UNREADABLE);
    rodti_text_put(&writer, " to ");
    put_reading(&writer, finding, finding->applied, RODT_REASON_APPLIED_UNREADABLE);
    if (rodt_length_given(finding->applied_stroke)) {
        rodti_text_put(&writer, " is ");
        put_length(&writer, finding->applied_stroke, finding->unit);
    } else {
        rodti_text_put(&writer, " gives no stroke");
    }
    rodti_text_put(&writer, rodt_length_given(finding->limit) ? "; limit " : "; no limit known");
    if (rodt_length_given(finding->limit))
        put_limit(&writer, finding->limit, finding->unit);
    put_margin(&writer, finding);
    return rodti_text_copy_out(&writer, text, size, needed);
}

/* --- Reasons ----------------------------------------------------------------------------------------- */

static void put_values(text_writer *writer, const char *name, rodt_length read, const rodt_length other[2])
{
    for (size_t i = 0; i < 2 && rodt_length_given(other[i]); i++) {
        rodti_text_put(writer, i > 0 ? " or " : writer->used > 0 ? "; " : "");
        if (i == 0) {
            rodti_text_put(writer, name);
            rodti_text_put(writer, " was read as ");
            put_length(writer, read, RODT_UNIT_INCH);
            rodti_text_put(writer, ", and with a lost blank it is ");
        }
        put_length(writer, other[i], RODT_UNIT_INCH);
    }
}

static void say_lost_blank(text_writer *writer, const rodt_finding *finding)
{
    put_values(writer, "released", finding->released, finding->other_released);
    put_values(writer, "applied", finding->applied, finding->other_applied);
    rodti_text_put(writer, ": the verdict depends on which was meant; write it with its blank");
}

static void say_over(text_writer *writer, const rodt_finding *finding)
{
    rodti_text_put(writer, "stroke is over the limit by ");
    put_length(writer, excess(finding->margin), finding->unit);
}

static void say_over_own(text_writer *writer, const rodt_finding *finding)
{
    rodti_text_put(writer, "over the carrier's own limit of ");
    put_limit(writer, finding->limit, finding->unit);
    if (!rodt_length_given(finding->law_limit))
        return;
    rodti_text_put(writer, ", within the law's ");
    put_limit(writer, finding->law_limit, finding->unit);
}

static void say_at_limit(text_writer *writer, const rodt_finding *finding)
{
    bool passes = rodt_rules_at_limit_passes(finding->rules);
    rodti_text_put(
        writer, passes ? "stroke is exactly at the limit: the rule says not greater than, so it passes, with "
                         "nothing to spare"
                       : "stroke is exactly at the limit: the rule says less than, so it fails");
}

static void say_within(text_writer *writer, const rodt_finding *finding)
{
    rodti_text_put(writer, "stroke is within the limit by ");
    put_length(writer, finding->margin, finding->unit);
}

static void say_beyond_rated(text_writer *writer, const rodt_finding *finding)
{
    rodti_text_put(writer, "stroke is longer than the rated stroke of ");
    put_limit(writer, finding->chamber.rated_stroke, finding->unit);
    rodti_text_put(writer, ", which this housing cannot have: identify the chamber and read again");
}

static void put_pressure(text_writer *writer, rodt_pressure pressure)
{
    char text[RODT_PRESSURE_TEXT_SIZE];
    if (rodt_pressure_format(pressure, text, sizeof text, NULL) == RODT_OK)
        rodti_text_put(writer, text);
}

static void put_window(text_writer *writer, const rodt_finding *finding)
{
    put_pressure(writer, rodt_rules_pressure_from(finding->rules));
    rodti_text_put(writer, " to ");
    put_pressure(writer, rodt_rules_pressure_until(finding->rules));
    rodti_text_put(writer, " psi");
}

/* Which of the two recorded pressures it was that left the window. */
static void put_pressure_outside(text_writer *writer, const rodt_finding *finding, bool low)
{
    int side = low ? -1 : 1;
    rodt_pressure bound = low ? rodt_rules_pressure_from(finding->rules) : rodt_rules_pressure_until(finding->rules);
    bool before = rodt_pressure_given(finding->pressure) &&
                  rodt_pressure_compare(finding->pressure, bound) == side;
    put_pressure(writer, before ? finding->pressure : finding->pressure_after);
    rodti_text_put(writer, before ? " psi is " : " psi after the application is ");
}

static bool is_without_air(const rodt_finding *finding)
{
    return (rodt_pressure_given(finding->pressure) && finding->pressure.num == 0) ||
           (rodt_pressure_given(finding->pressure_after) && finding->pressure_after.num == 0);
}

static void say_pressure_low(text_writer *writer, const rodt_finding *finding)
{
    if (is_without_air(finding) && rodt_finding_has(finding, RODT_REASON_NO_MOVEMENT)) {
        rodti_text_put(
            writer,
            "the recorded pressure is 0: without air no rod moves; build up the air and measure again");
        return;
    }
    put_pressure_outside(writer, finding, true);
    rodti_text_put(writer, "below the ");
    put_window(writer, finding);
    rodti_text_put(
        writer,
        " of the test: more air would lengthen the stroke, so a pass proves nothing and a failure stands");
}

static void say_pressure_high(text_writer *writer, const rodt_finding *finding)
{
    put_pressure_outside(writer, finding, false);
    rodti_text_put(writer, "above the ");
    put_window(writer, finding);
    rodti_text_put(
        writer,
        " of the test: less air would shorten the stroke, so a failure proves nothing and a pass stands");
}

static void say_pressure_missing(text_writer *writer, const rodt_finding *finding)
{
    rodti_text_put(writer, "reservoir pressure not recorded; the test asks for ");
    put_window(writer, finding);
}

/* A stroke within the standard limit is within the long one too; between the two it depends on a sign that
 * somebody can look for. */
static void say_assumed_standard(text_writer *writer, const rodt_finding *finding)
{
    rodti_text_put(writer, "stroke class not known: judged as standard");
    if (!rodt_length_given(finding->long_limit))
        return;
    rodti_text_put(writer, "; long stroke of this size has the limit ");
    put_limit(writer, finding->long_limit, finding->unit);
    if (!rodt_length_given(finding->margin) || finding->applied_stroke.num == 0)
        return;
    if (finding->margin.num >= 0)
        rodti_text_put(writer, ", so the stroke is within it either way");
    else if (rodt_length_compare(finding->applied_stroke, finding->long_limit) > 0)
        rodti_text_put(writer, ", so the stroke is over it either way");
    else
        rodti_text_put(writer, " and the stroke is within that: look for a sign (L or LS in the mark, square ports, "
                         "trapezoid tag)");
}

/* True if no other family of this size has a smaller limit that day. */
static bool is_strict_family(const rodt_finding *finding)
{
    const rodt_rules *law = rodt_rules_law(finding->rules) != NULL ? rodt_rules_law(finding->rules) : finding->rules;
    for (int family = RODT_FAMILY_CLAMP + 1; family <= RODT_FAMILY_DD3; family++) {
        rodt_chamber other = finding->chamber;
        rodt_limit_answer answer;
        other.family = (rodt_family)family;
        if (rodti_rules_find_limit(law, &other, finding->day, &answer) == RODT_OK &&
            answer.basis == RODT_BASIS_TABLE && rodt_length_compare(answer.limit, finding->law_limit) < 0)
            return false;
    }
    return true;
}

static void say_assumed_clamp(text_writer *writer, const rodt_finding *finding)
{
    rodti_text_put(writer, "the kind of housing was not said: taken as clamp type");
    rodti_text_put(writer, is_strict_family(finding) ? ", the strict side"
                                               : "; another kind of this size has a smaller limit, so look at it");
}

static void say_not_in_force(text_writer *writer, const rodt_finding *finding)
{
    char day[RODT_DATE_TEXT_SIZE];
    rodti_text_put(writer, rodt_rules_id(finding->rules));
    rodti_text_put(writer, " has no text for the day");
    if (rodt_date_format(rodt_rules_from(finding->rules), day, sizeof day, NULL) == RODT_OK) {
        rodti_text_put(writer, "; it starts on ");
        rodti_text_put(writer, day);
    }
}

static void say_unconfirmed(text_writer *writer, const rodt_finding *finding)
{
    rodti_text_put(writer, "the limit is unconfirmed (");
    rodti_text_put(writer, finding->evidence == RODT_EVIDENCE_SECOND_HAND ? "second-hand" : "from memory");
    rodti_text_put(writer, "): it was not read in its source and is not law; look it up before you rely on it");
}

static void say_from_rated(text_writer *writer, const rodt_finding *finding)
{
    rodt_ratio share = rodt_rules_rated_share(finding->rules);
    rodti_text_putf(writer, "the limit is %lld/%lld of the rated stroke of ", (long long)share.num,
                    (long long)share.den);
    put_limit(writer, finding->chamber.rated_stroke, finding->unit);
    rodti_text_put(writer, " marked on the housing");
}

static void say_printed_mm(text_writer *writer, const rodt_finding *finding)
{
    rodti_text_put(writer, "the printed ");
    put_length(writer, finding->limit_row->printed_mm, RODT_UNIT_MM);
    rodti_text_put(writer, " would judge otherwise; the inch figure decides: ");
    put_limit(writer, finding->limit_row->limit, RODT_UNIT_MM);
}

static bool has_limit(const rodt_finding *finding)
{
    return finding->chamber.size[0] != '\0' && rodt_length_given(finding->limit);
}

static void say_date_ambiguous(text_writer *writer, const rodt_finding *finding)
{
    rodti_text_put(writer, "the date can mean two days");
    rodti_text_put(writer, has_limit(finding) ? "; the limit is the same on both"
                                              : "; the limit depends on which it is");
}

static void say_date_unreadable(text_writer *writer, const rodt_finding *finding)
{
    const rodt_rules *law = rodt_rules_law(finding->rules) != NULL ? rodt_rules_law(finding->rules) : finding->rules;
    char day[RODT_DATE_TEXT_SIZE];
    rodti_text_put(writer, "the date cannot be read");
    rodti_text_put(writer, has_limit(finding) ? "; the limit never changed" : "; the limit depends on it");
    if (rodt_date_format(rodt_rules_from(law), day, sizeof day, NULL) == RODT_OK)
        rodti_text_putf(writer, ", but an inspection before %s is under no text of the rule set", day);
}

/* Of the sentences with figures; the others are the text of the reason. */
static void (*const sentence_makers[RODT_REASON_END])(text_writer *, const rodt_finding *) = {
    [RODT_REASON_OVER_LIMIT] = say_over,
    [RODT_REASON_OVER_OWN_LIMIT] = say_over_own,
    [RODT_REASON_AT_LIMIT] = say_at_limit,
    [RODT_REASON_WITHIN_LIMIT] = say_within,
    [RODT_REASON_BEYOND_RATED_STROKE] = say_beyond_rated,
    [RODT_REASON_PRESSURE_LOW] = say_pressure_low,
    [RODT_REASON_PRESSURE_HIGH] = say_pressure_high,
    [RODT_REASON_PRESSURE_NOT_RECORDED] = say_pressure_missing,
    [RODT_REASON_ASSUMED_STANDARD] = say_assumed_standard,
    [RODT_REASON_ASSUMED_CLAMP] = say_assumed_clamp,
    [RODT_REASON_RULES_NOT_IN_FORCE] = say_not_in_force,
    [RODT_REASON_LIMIT_UNCONFIRMED] = say_unconfirmed,
    [RODT_REASON_LIMIT_FROM_RATED] = say_from_rated,
    [RODT_REASON_PRINTED_MM_DIFFERS] = say_printed_mm,
    [RODT_REASON_DATE_AMBIGUOUS] = say_date_ambiguous,
    [RODT_REASON_DATE_UNREADABLE] = say_date_unreadable,
    [RODT_REASON_LOST_BLANK] = say_lost_blank,
};

rodt_status rodt_finding_reason_format(const rodt_finding *finding, rodt_reason reason, char *text,
                                       size_t size, size_t *needed)
{
    if (finding == NULL || (unsigned)reason >= RODT_REASON_END ||
        !rodt_finding_has(finding, reason))
        return RODT_E_ARGUMENT;
    text_writer writer;
    rodti_text_begin(&writer);
    if (sentence_makers[reason] != NULL)
        sentence_makers[reason](&writer, finding);
    else
        rodti_text_put(&writer, rodti_text_of(&rodti_words_reason, reason));
    return rodti_text_copy_out(&writer, text, size, needed);
}

/* --- Proof ------------------------------------------------------------------------------------------- */

/* Where the tape at its worst comes to the limit and not beyond, one side has no chance. */
static const char *say_sides(rodt_ratio over)
{
    if (rodt_ratio_given(over) && over.num == over.den)
        return ", the true stroke is at best the limit itself";
    if (rodt_ratio_given(over) && over.num == 0)
        return ", the true stroke is at worst the limit itself";
    return ", the true stroke may lie on either side of the limit";
}

rodt_status rodt_finding_proof_format(const rodt_finding *finding, char *text, size_t size, size_t *needed)
{
    static const char *const said[] = {
        [RODT_PROOF_WITHIN] = "proven within: even at its worst the tape, read to ",
        [RODT_PROOF_OVER] = "proven over: even at its best the tape, read to ",
        [RODT_PROOF_NOT_RESOLVED] = "not resolved by this tape: read to ",
    };
    static const char *const rest[] = {
        [RODT_PROOF_WITHIN] = ", keeps the stroke within the limit",
        [RODT_PROOF_OVER] = ", puts the stroke over the limit",
        [RODT_PROOF_NOT_RESOLVED] = NULL,
    };
    if (finding == NULL)
        return RODT_E_ARGUMENT;
    text_writer writer;
    rodti_text_begin(&writer);
    if (finding->proof != RODT_PROOF_NOT_ASKED) {
        rodti_text_put(&writer, said[finding->proof]);
        put_length(&writer, finding->division, finding->unit);
        rodti_text_put(&writer, rest[finding->proof] != NULL ? rest[finding->proof]
                                                             : say_sides(finding->probability_over));
    }
    if (rodt_ratio_given(finding->probability_over) && finding->proof == RODT_PROOF_NOT_RESOLVED)
        rodti_text_putf(&writer, "; chance of being over %lld/%lld", (long long)finding->probability_over.num,
                  (long long)finding->probability_over.den);
    return rodti_text_copy_out(&writer, text, size, needed);
}
