/* SPDX-License-Identifier: Apache-2.0 */
/* Marks answers by the library's exact figures, and tells from a wrong one what was probably done. */
#include "practice/practice.h"

#include <stdio.h>
#include <string.h>

static bool is_same(rodt_length a, rodt_length b)
{
    return rodt_length_given(a) && rodt_length_given(b) && rodt_length_compare(a, b) == 0;
}

/* --- Stroke ------------------------------------------------------------------------------------------- */

/* Parts of a mixed fraction, in inches. */
static rodt_length fraction_of(rodt_length length) { return (rodt_length){length.num % length.den, length.den}; }

/* 5 1/16 - 3 5/8: either the smaller fraction was taken from the larger (2 9/16), or an inch was borrowed and not
 * taken away from the whole (2 7/16). */
static bool forgot_borrow(const rodt_finding *finding, rodt_length answer)
{
    rodt_length lower = fraction_of(finding->released), upper = fraction_of(finding->applied), wrong;
    if (rodt_length_compare(upper, lower) >= 0)
        return false;
    if (rodt_length_add(finding->applied_stroke, (rodt_length){1, 1}, &wrong) == RODT_OK && is_same(wrong, answer))
        return true;
    int64_t whole = finding->applied.num / finding->applied.den - finding->released.num / finding->released.den;
    return rodt_length_subtract(lower, upper, &wrong) == RODT_OK &&
           rodt_length_add(wrong, (rodt_length){whole, 1}, &wrong) == RODT_OK && is_same(wrong, answer);
}

static bool is_a_tick_off(const practice *of, rodt_length right, rodt_length answer)
{
    rodt_length tick = of->setting.unit == RODT_UNIT_MM ? (rodt_length){5, 127} : (rodt_length){1, 16}, wrong;
    return (rodt_length_add(right, tick, &wrong) == RODT_OK && is_same(wrong, answer)) ||
           (rodt_length_subtract(right, tick, &wrong) == RODT_OK && is_same(wrong, answer));
}

static practice_mistake mark_swapped(const rodt_finding *finding, const practice_answer *answer)
{
    rodt_length difference;
    if (answer->none)
        return MISTAKE_NONE;
    if (rodt_length_subtract(finding->released, finding->applied, &difference) != RODT_OK ||
        !is_same(difference, answer->length))
        return MISTAKE_STROKE;
    return answer->negative ? MISTAKE_NONE : MISTAKE_SWAPPED_UNSEEN;
}

static practice_mistake mark_stroke(const practice *of, size_t end, const practice_answer *answer)
{
    const rodt_finding *finding = &of->judged.findings[end];
    rodt_length right = finding->applied_stroke, given = answer->length, sum;
    if (!rodt_length_given(right))
        return mark_swapped(finding, answer);
    if (answer->none)
        return MISTAKE_STROKE;
    if (is_same(right, given))
        return answer->negative && right.num != 0 ? MISTAKE_WRONG_WAY : MISTAKE_NONE;
    if (is_same(finding->applied, given))
        return MISTAKE_APPLIED;
    if (is_same(finding->released, given))
        return MISTAKE_RELEASED;
    if (rodt_length_add(finding->released, finding->applied, &sum) == RODT_OK && is_same(sum, given))
        return MISTAKE_SUM;
    if (is_same(of->seen[end].hand_pull, given))
        return MISTAKE_HAND_PULL;
    if (of->setting.unit == RODT_UNIT_INCH && forgot_borrow(finding, given))
        return MISTAKE_BORROW;
    return is_a_tick_off(of, right, given) ? MISTAKE_TICK : MISTAKE_STROKE;
}

/* --- Limit -------------------------------------------------------------------------------------------- */

static bool has_limit(const practice *of, const rodt_chamber *chamber, rodt_date day, rodt_length given)
{
    rodt_limit_answer answer;
    return rodt_rules_find_limit(of->setting.rules, chamber, day, &answer) == RODT_OK && is_same(answer.limit, given);
}

/* The chambers that this one is taken for. */
static practice_mistake mistaken_for(const practice *of, const rodt_chamber *chamber, rodt_length given)
{
    rodt_chamber other = *chamber;
    other.stroke_class = chamber->stroke_class == RODT_CLASS_LONG ? RODT_CLASS_STANDARD : RODT_CLASS_LONG;
    if (has_limit(of, &other, of->day, given))
        return MISTAKE_OTHER_CLASS;
    other = *chamber;
    other.rated_stroke = rodt_length_given(chamber->rated_stroke) ? (rodt_length){0, 0} : (rodt_length){3, 1};
    if (has_limit(of, &other, of->day, given))
        return MISTAKE_OTHER_ROW;
    other = *chamber;
    snprintf(other.size, sizeof other.size, "%s", chamber->spring_size);
    if (chamber->spring_size[0] != '\0' && has_limit(of, &other, of->day, given))
        return MISTAKE_SPRING_SIZE;
    other = *chamber;
    for (int family = RODT_FAMILY_CLAMP; family <= RODT_FAMILY_DD3; family++) {
        other.family = (rodt_family)family;
        if (other.family != chamber->family && has_limit(of, &other, of->day, given))
            return MISTAKE_FAMILY;
    }
    return MISTAKE_LIMIT;
}

/* The limit that another state of the text had. */
static bool is_of_another_day(const practice *of, const rodt_finding *finding, rodt_length given)
{
    for (size_t i = 0; finding->limit_row != NULL && i < rodt_rules_limit_count(of->setting.rules); i++) {
        const rodt_limit *row = rodt_rules_limit(of->setting.rules, i), *here = finding->limit_row;
        if (row->family == here->family && row->stroke_class == here->stroke_class &&
            strcmp(row->size, here->size) == 0 && rodt_length_compare(row->rated_stroke, here->rated_stroke) == 0 &&
            is_same(row->limit, given))
            return true;
    }
    return false;
}

static practice_mistake mark_limit(const practice *of, size_t end, const practice_answer *answer)
{
    const rodt_finding *finding = &of->judged.findings[end];
    const rodt_chamber *chamber = &of->judged.ends[end].reading.chamber;
    rodt_length given = answer->length;
    if (answer->none || answer->negative)
        return MISTAKE_LIMIT;
    bool printed = finding->limit_row != NULL && is_same(finding->limit_row->printed_mm, given);
    if (printed || is_same(finding->limit, given))
        return MISTAKE_NONE;
    if (is_same(chamber->rated_stroke, given))
        return MISTAKE_RATED;
    if (is_of_another_day(of, finding, given))
        return MISTAKE_DAY;
    return mistaken_for(of, chamber, given);
}

/* --- Verdict and reason ------------------------------------------------------------------------------- */

/* What a person's own two figures would give. */
static bool follows(const practice_answer answers[ASK_END_QUESTIONS])
{
    const practice_answer *stroke = &answers[ASK_STROKE], *limit = &answers[ASK_LIMIT];
    if (!rodt_length_given(stroke->length) || !rodt_length_given(limit->length) || stroke->negative)
        return false;
    rodt_verdict own = rodt_length_compare(stroke->length, limit->length) > 0 ? RODT_OUT_OF_ADJUSTMENT
                                                                              : RODT_IN_ADJUSTMENT;
    return own == (rodt_verdict)answers[ASK_VERDICT].word;
}

static practice_mistake mark_verdict(const rodt_finding *finding, const practice_answer answers[ASK_END_QUESTIONS])
{
    rodt_verdict given = (rodt_verdict)answers[ASK_VERDICT].word;
    if (given == finding->verdict)
        return MISTAKE_NONE;
    if (given == RODT_UNDETERMINED)
        return MISTAKE_EXCUSED;
    if (finding->verdict == RODT_UNDETERMINED)
        return given == RODT_IN_ADJUSTMENT ? MISTAKE_PASSED_UNPROVEN : MISTAKE_FAILED_UNPROVEN;
    if (given == RODT_IN_ADJUSTMENT)
        return finding->verdict == RODT_INOPERATIVE ? MISTAKE_PASSED_DEAD : MISTAKE_PASSED_OVER;
    if (rodt_finding_has(finding, RODT_REASON_AT_LIMIT))
        return MISTAKE_AT_LIMIT;
    return follows(answers) ? MISTAKE_FOLLOWS : MISTAKE_VERDICT;
}

void practice_mark_end(const practice *of, size_t end, const practice_answer answers[ASK_END_QUESTIONS],
                       practice_mistake mistakes[ASK_END_QUESTIONS])
{
    const rodt_finding *finding = &of->judged.findings[end];
    for (size_t i = 0; i < ASK_END_QUESTIONS; i++)
        mistakes[i] = MISTAKE_NONE;
    if (answers[ASK_STROKE].given)
        mistakes[ASK_STROKE] = mark_stroke(of, end, &answers[ASK_STROKE]);
    if (answers[ASK_LIMIT].given)
        mistakes[ASK_LIMIT] = mark_limit(of, end, &answers[ASK_LIMIT]);
    if (answers[ASK_VERDICT].given)
        mistakes[ASK_VERDICT] = mark_verdict(finding, answers);
    if (answers[ASK_REASON].given && !practice_decides(finding, (rodt_reason)answers[ASK_REASON].word))
        mistakes[ASK_REASON] = MISTAKE_REASON;
}

/* --- Vehicle ------------------------------------------------------------------------------------------ */

/* Whether an answer means so many half brakes; a share is taken as rounded where its writer stopped. */
static bool means(const practice_answer *answer, int64_t halves, int64_t brakes)
{
    int64_t num = answer->length.num, den = answer->length.den, scale = 2;
    if (!answer->is_percent)
        return num * 2 == halves * den;
    for (unsigned i = 0; i < answer->digits; i++)
        scale *= 10;
    int64_t off = halves * 50 * den - num * brakes;
    return (off < 0 ? -off : off) * scale <= brakes * den;
}

static practice_mistake mark_count(const rodt_count *count, const practice_answer *answer)
{
    int64_t full = count->tally.full, half = count->tally.half, brakes = count->brakes;
    int64_t right = 2 * full + half;
    if (means(answer, right, brakes))
        return MISTAKE_NONE;
    if (half > 0 && means(answer, right + half, brakes))
        return MISTAKE_HALF_AS_WHOLE;
    if (half > 0 && means(answer, 2 * full, brakes))
        return MISTAKE_HALF_LEFT;
    int64_t unknown = (int64_t)count->tally.unknown + count->unmeasured;
    return unknown > 0 && means(answer, right + 2 * unknown, brakes) ? MISTAKE_UNKNOWN_COUNTED : MISTAKE_COUNT_OF;
}

/* Out of service is never wrong where the count is ambiguous, or a steering axle may decide by itself. */
static practice_mistake mark_outcome(const practice *of, int given)
{
    const rodt_vehicle_finding *vehicle = &of->judged.vehicle;
    bool may_be_out = vehicle->count.outcome == RODT_OUTCOME_AMBIGUOUS;
    for (size_t i = 0; i < vehicle->axle_count; i++)
        may_be_out = may_be_out || (vehicle->axles[i].odd & RODT_AXLE_STEERING_DEAD) != 0;
    bool right = given == (int)vehicle->count.outcome || (may_be_out && given == (int)RODT_OUTCOME_OUT_OF_SERVICE);
    return right ? MISTAKE_NONE : MISTAKE_CRITERION;
}

void practice_mark_vehicle(const practice *of, const practice_answer answers[2], practice_mistake mistakes[2])
{
    mistakes[0] = answers[0].given ? mark_count(&of->judged.vehicle.count, &answers[0]) : MISTAKE_NONE;
    mistakes[1] = answers[1].given ? mark_outcome(of, answers[1].word) : MISTAKE_NONE;
}
