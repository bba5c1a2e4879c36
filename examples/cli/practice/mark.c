/* SPDX-License-Identifier: Apache-2.0 */
/* Marks answers by the library's exact figures, and names what was probably done in a wrong one. */
#include "practice/practice.h"
#include "ui/exit_status.h"
#include "ui/format.h"
#include "ui/language.h"
#include "ui/wrap.h"

#include <stdio.h>
#include <string.h>

/* --- Mistakes by name --------------------------------------------------------------------------------- */

static const struct {
    const char *word;
    const char *sentence;
    bool endangers;
} kinds[MISTAKE_KINDS] = {
    [MISTAKE_NONE] = {"", "", false},
    [MISTAKE_WRONG_WAY] = {"wrong-way", TO_SAY("subtracted the wrong way: the stroke is applied less released"), false},
    [MISTAKE_APPLIED] = {"applied-as-stroke",
                         TO_SAY("took the applied reading as the stroke: the released one is still to be "
                                "subtracted"), false},
    [MISTAKE_RELEASED] = {"released-as-stroke", TO_SAY("took the released reading as the stroke"), false},
    [MISTAKE_SUM] = {"added", TO_SAY("added the readings instead of subtracting them"), false},
    [MISTAKE_HAND_PULL] = {"free-stroke", TO_SAY("took the free stroke, pulled by hand, as the applied stroke"), false},
    [MISTAKE_BORROW] = {"borrow",
                        TO_SAY("forgot to borrow from the whole: the fraction of the applied reading is the "
                               "smaller one"), false},
    [MISTAKE_TICK] = {"one-tick", TO_SAY("read a tape wrong by one tick"), false},
    [MISTAKE_READING] = {"reading", TO_SAY("read the tape wrong: the pin is at another tick"), false},
    [MISTAKE_CARRIED] = {"carried", TO_SAY("subtracted right, from a reading that is wrong"), false},
    [MISTAKE_SWAPPED_UNSEEN] = {"swapped-unseen",
                                TO_SAY("subtracted the smaller from the larger: applied is below released, "
                                       "so there is no stroke"), false},
    [MISTAKE_STROKE] = {"stroke", TO_SAY("the stroke is another one: read both tapes again, then subtract"), false},
    [MISTAKE_RATED] = {"rated-stroke", TO_SAY("took the rated stroke, stamped on the housing, as the limit"), false},
    [MISTAKE_OTHER_CLASS] = {"other-class",
                             TO_SAY("took the limit of the other stroke class: look for the signs of long "
                                    "stroke"), false},
    [MISTAKE_OTHER_ROW] = {"other-row",
                           TO_SAY("took the other long-stroke row of this size: only a marked rated stroke "
                                  "of 3 in gives the longer limit"), false},
    [MISTAKE_SPRING_SIZE] = {"spring-size",
                             TO_SAY("took the spring brake's size as the chamber's: the first number counts"), false},
    [MISTAKE_FAMILY] = {"other-family", TO_SAY("took the limit of another kind of housing"), false},
    [MISTAKE_DAY] = {"other-day", TO_SAY("took the limit of another day: this one changed"), false},
    [MISTAKE_LIMIT] = {"limit", TO_SAY("the limit is another one: look in the table for this chamber"), false},
    [MISTAKE_AT_LIMIT] = {"at-limit",
                          TO_SAY("failed a stroke exactly at the limit: it must be greater to fail"), false},
    [MISTAKE_PASSED_OVER] = {"passed-over", TO_SAY("passed a brake that is out of adjustment"), true},
    [MISTAKE_PASSED_DEAD] = {"passed-dead",
                             TO_SAY("passed a brake that does not move: none is not a short stroke"), true},
    [MISTAKE_PASSED_UNPROVEN] = {"passed-unproven", TO_SAY("passed a brake of which nothing is proven"), true},
    [MISTAKE_FAILED_UNPROVEN] = {"failed-unproven", TO_SAY("failed a brake of which nothing is proven"), false},
    [MISTAKE_EXCUSED] = {"left-open", TO_SAY("left open what is proven"), false},
    [MISTAKE_FOLLOWS] = {"follows", TO_SAY("follows from the wrong stroke or limit"), false},
    [MISTAKE_VERDICT] = {"verdict", TO_SAY("the verdict does not follow from the figures"), false},
    [MISTAKE_REASON] = {"reason", TO_SAY("this reason does not decide the verdict"), false},
    [MISTAKE_HALF_AS_WHOLE] = {"half-as-whole",
                               TO_SAY("counted a brake that is over by less than 1/4 in as a whole one"), false},
    [MISTAKE_HALF_LEFT] = {"half-left-out",
                           TO_SAY("left out the brakes that are over by less than 1/4 in: each counts half"), false},
    [MISTAKE_UNKNOWN_COUNTED] = {"unknown-counted", TO_SAY("counted undetermined brakes as defective"), false},
    [MISTAKE_COUNT_OF] = {"count", TO_SAY("the count is another one"), false},
    [MISTAKE_CRITERION] = {"criterion", TO_SAY("the criterion gives another outcome"), false},
};

const char *practice_mistake_name(practice_mistake mistake) { return kinds[mistake].word; }

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

static practice_mistake mark_reading(const practice *of, rodt_length right, const practice_answer *answer)
{
    if (!answer->none && !answer->negative && is_same(right, answer->length))
        return MISTAKE_NONE;
    return !answer->none && is_a_tick_off(of, right, answer->length) ? MISTAKE_TICK : MISTAKE_READING;
}

/* The difference of the person's own readings: the slip was at the tape. */
static bool is_own_difference(const practice_answer *answers)
{
    rodt_length difference;
    return rodt_length_subtract(answers[ASK_APPLIED].length, answers[ASK_RELEASED].length, &difference) == RODT_OK &&
           is_same(difference, answers[ASK_STROKE].length);
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
    if (of->setting.unit == RODT_UNIT_IN && forgot_borrow(finding, given))
        return MISTAKE_BORROW;
    return is_a_tick_off(of, right, given) ? MISTAKE_TICK : MISTAKE_STROKE;
}

static practice_mistake mark_own_stroke(const practice *of, size_t end, const practice_answer *answers)
{
    practice_mistake mistake = mark_stroke(of, end, &answers[ASK_STROKE]);
    bool read = answers[ASK_RELEASED].given && answers[ASK_APPLIED].given;
    return mistake != MISTAKE_NONE && read && is_own_difference(answers) ? MISTAKE_CARRIED : mistake;
}

/* --- Limit -------------------------------------------------------------------------------------------- */

static bool has_limit(const practice *of, const rodt_chamber *chamber, rodt_date day, rodt_length given)
{
    rodt_limit_answer answer;
    return rodt_rules_find_limit(of->setting.rules, chamber, day, &answer, NULL) == RODT_OK &&
           is_same(answer.limit, given);
}

/* The chamber that this one was taken for. */
static practice_mistake mistaken_for(const practice *of, const rodt_chamber *chamber, rodt_length given)
{
    rodt_chamber other = *chamber;
    other.rated_stroke = (rodt_length){0, 0}; /* it would contradict the other class */
    other.stroke_class =
        chamber->stroke_class == RODT_STROKE_CLASS_LONG ? RODT_STROKE_CLASS_STANDARD : RODT_STROKE_CLASS_LONG;
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
    for (int family = RODT_FAMILY_CLAMP; family < RODT_FAMILY_END; family++) {
        other.family = (rodt_family)family;
        if (other.family != chamber->family && has_limit(of, &other, of->day, given))
            return MISTAKE_FAMILY;
    }
    return MISTAKE_LIMIT;
}

/* True if the limit is that of another edition of the law. */
static bool is_of_another_day(const practice *of, const rodt_finding *finding, rodt_length given)
{
    for (size_t i = 0; finding->law_row != NULL && i < rodt_rules_limit_count(of->setting.rules); i++) {
        const rodt_limit *row = rodt_rules_limit_at(of->setting.rules, i), *here = finding->law_row;
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
    bool printed = finding->law_row != NULL && is_same(finding->law_row->printed_mm, given);
    if (printed || is_same(finding->limit, given))
        return MISTAKE_NONE;
    if (is_same(chamber->rated_stroke, given))
        return MISTAKE_RATED;
    if (is_of_another_day(of, finding, given))
        return MISTAKE_DAY;
    return mistaken_for(of, chamber, given);
}

/* --- Verdict and reason ------------------------------------------------------------------------------- */

/* True if the verdict is the one that the person's own two figures give. */
static bool follows(const practice_answer *answers)
{
    const practice_answer *stroke = &answers[ASK_STROKE], *limit = &answers[ASK_LIMIT];
    if (!rodt_length_given(stroke->length) || !rodt_length_given(limit->length) || stroke->negative)
        return false;
    rodt_verdict own = rodt_length_compare(stroke->length, limit->length) > 0 ? RODT_VERDICT_OUT_OF_ADJUSTMENT
                                                                              : RODT_VERDICT_IN_ADJUSTMENT;
    return own == (rodt_verdict)answers[ASK_VERDICT].word;
}

static practice_mistake mark_verdict(const rodt_finding *finding, const practice_answer *answers)
{
    rodt_verdict given = (rodt_verdict)answers[ASK_VERDICT].word;
    if (given == finding->verdict)
        return MISTAKE_NONE;
    if (given == RODT_VERDICT_UNDETERMINED)
        return rodt_finding_has(finding, RODT_REASON_PRESSURE_NOT_RECORDED) ? MISTAKE_NONE : MISTAKE_EXCUSED;
    if (finding->verdict == RODT_VERDICT_UNDETERMINED)
        return given == RODT_VERDICT_IN_ADJUSTMENT ? MISTAKE_PASSED_UNPROVEN : MISTAKE_FAILED_UNPROVEN;
    if (given == RODT_VERDICT_IN_ADJUSTMENT)
        return finding->verdict == RODT_VERDICT_INOPERATIVE ? MISTAKE_PASSED_DEAD : MISTAKE_PASSED_OVER;
    if (rodt_finding_has(finding, RODT_REASON_AT_LIMIT))
        return MISTAKE_AT_LIMIT;
    return follows(answers) ? MISTAKE_FOLLOWS : MISTAKE_VERDICT;
}

/* --- Vehicle ------------------------------------------------------------------------------------------ */

/* True if an answer means this number of half brakes; a share may be rounded at its last digit. */
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
        may_be_out = may_be_out || (vehicle->axles[i].mismatches & RODT_AXLE_MISMATCH_STEERING_DEAD) != 0;
    bool right = given == (int)vehicle->count.outcome || (may_be_out && given == (int)RODT_OUTCOME_OUT_OF_SERVICE);
    return right ? MISTAKE_NONE : MISTAKE_CRITERION;
}

static practice_mistake mark_question(const practice *of, size_t end, practice_question question,
                                      const practice_answer *answers)
{
    const rodt_finding *finding = &of->judged.findings[end];
    const practice_answer *answer = &answers[question];
    switch (question) {
    case ASK_RELEASED: return mark_reading(of, finding->released, answer);
    case ASK_APPLIED: return mark_reading(of, finding->applied, answer);
    case ASK_STROKE: return mark_own_stroke(of, end, answers);
    case ASK_LIMIT: return mark_limit(of, end, answer);
    case ASK_VERDICT: return mark_verdict(finding, answers);
    case ASK_REASON: return practice_is_deciding(finding, (rodt_reason)answer->word) ? MISTAKE_NONE : MISTAKE_REASON;
    case ASK_COUNT: return mark_count(&of->judged.vehicle.count, answer);
    case ASK_OUTCOME: return mark_outcome(of, answer->word);
    case ASK_QUESTIONS: break;
    }
    return MISTAKE_NONE;
}

void practice_mark(const practice *of, size_t end, practice_question first, practice_answers *answers)
{
    for (int i = (int)first; i < practice_group_end(first); i++)
        answers->mistakes[i] = answers->answers[i].given
                                   ? mark_question(of, end, (practice_question)i, answers->answers)
                                   : MISTAKE_NONE;
}

/* --- Marks printed ------------------------------------------------------------------------------------ */

static void put_word(const char *word, char text[PRACTICE_TEXT_SIZE])
{
    snprintf(text, PRACTICE_TEXT_SIZE, "%s", say(word));
}

static void format_answer(const practice *of, practice_question question, const practice_answer *answer,
                        char text[PRACTICE_TEXT_SIZE])
{
    char word[WORD_SIZE] = "";
    switch (question) {
    case ASK_RELEASED:
    case ASK_APPLIED:
    case ASK_STROKE:
    case ASK_LIMIT:
        snprintf(text, PRACTICE_TEXT_SIZE, "%s%s", answer->negative ? "-" : "",
                 answer->none ? say("none") : practice_format_length(of, answer->length, word));
        break;
    case ASK_VERDICT: put_word(rodt_verdict_name((rodt_verdict)answer->word), text); break;
    case ASK_REASON: put_word(practice_reason_word((rodt_reason)answer->word), text); break;
    case ASK_COUNT:
        if (answer->is_percent)
            (void)rodt_length_format_decimal(answer->length, RODT_UNIT_IN, answer->digits,
                                             RODT_ROUNDING_HALF_EVEN, word, sizeof word, NULL);
        snprintf(text, PRACTICE_TEXT_SIZE, "%s%s", answer->is_percent ? word : format_length(answer->length, word),
                 answer->is_percent ? " %" : "");
        break;
    case ASK_OUTCOME: put_word(rodt_outcome_name((rodt_outcome)answer->word), text); break;
    case ASK_QUESTIONS: text[0] = '\0';
    }
}

static practice_answer right_answer(const practice *of, size_t end, practice_question question)
{
    const rodt_count *count = &of->judged.vehicle.count;
    const rodt_finding *finding = &of->judged.findings[end];
    practice_answer out = {.given = true};
    switch (question) {
    case ASK_RELEASED: out.length = finding->released; break;
    case ASK_APPLIED: out.length = finding->applied; break;
    case ASK_STROKE: out.length = finding->applied_stroke; break;
    case ASK_LIMIT: out.length = finding->limit; break;
    case ASK_VERDICT: out.word = (int)finding->verdict; break;
    case ASK_REASON: out.word = (int)practice_deciding_reason(finding); break;
    case ASK_COUNT: out.length = (rodt_length){count->defective.num, count->defective.den}; break;
    case ASK_OUTCOME: out.word = (int)count->outcome; break;
    case ASK_QUESTIONS: break;
    }
    out.none = question <= ASK_LIMIT && !rodt_length_given(out.length);
    return out;
}

static void print_mark(const practice *of, size_t end, practice_question question, const practice_answer *answer,
                       practice_mistake mistake)
{
    char given[PRACTICE_TEXT_SIZE], wanted[PRACTICE_TEXT_SIZE], text[3 * PRACTICE_TEXT_SIZE];
    const practice_answer right = right_answer(of, end, question);
    format_answer(of, question, answer, given);
    format_answer(of, question, &right, wanted);
    if (!answer->given)
        snprintf(text, sizeof text, say("not answered: %s"), wanted);
    else if (mistake == MISTAKE_NONE)
        snprintf(text, sizeof text, say("right: %s"), given);
    else
        snprintf(text, sizeof text, say("WRONG: %s; right is %s; %s"), given, wanted, say(kinds[mistake].sentence));
    practice_print_line(stdout, practice_question_name(question), text);
}

void practice_print_marks(const practice *of, size_t end, practice_question first, const practice_answers *answers)
{
    for (int i = (int)first; i < practice_group_end(first); i++)
        print_mark(of, end, (practice_question)i, &answers->answers[i], answers->mistakes[i]);
    if (first < ASK_COUNT) {
        practice_each_reason(of, end, practice_print_line, stdout);
        practice_each_lesson(of, end, practice_print_line, stdout);
    } else {
        practice_print_vehicle(of, stdout);
    }
}

/* --- Score -------------------------------------------------------------------------------------------- */

void practice_score_add(practice_score *score, practice_question first, const practice_answers *answers, bool left)
{
    for (int i = (int)first; i < practice_group_end(first); i++) {
        bool given = answers->answers[i].given, right = answers->mistakes[i] == MISTAKE_NONE;
        score->open += !given && !left;
        score->right += given && right;
        score->wrong += given && !right;
        score->mistakes[answers->mistakes[i]]++;
    }
}

void practice_score_merge(practice_score *total, const practice_score *part)
{
    total->right += part->right;
    total->wrong += part->wrong;
    total->open += part->open;
    for (size_t i = 0; i < MISTAKE_KINDS; i++)
        total->mistakes[i] += part->mistakes[i];
}

static void print_mistake(practice_mistake mistake, unsigned times)
{
    char label[24], line[400];
    const char *sentence = say(kinds[mistake].sentence);
    bool is_english = sentence == kinds[mistake].sentence; /* as the word is */
    snprintf(label, sizeof label, "%4u x", times);
    snprintf(line, sizeof line, "%s%s%s", is_english ? kinds[mistake].word : "", is_english ? ": " : "", sentence);
    print_wrapped(stdout, label, 8, line);
}

void practice_score_print(const practice_score *score)
{
    bool endangers = false;
    char line[100];
    snprintf(line, sizeof line, say("%u RIGHT OF %u ANSWERED"), score->right, score->right + score->wrong);
    print_painted(stdout, score->wrong > 0 ? PAINT_OPEN : PAINT_GOOD, line);
    if (score->open > 0) {
        fputs("   ", stdout);
        printf(say("%u not answered"), score->open);
    }
    putchar('\n');
    for (int i = MISTAKE_NONE + 1; i < MISTAKE_KINDS; i++) {
        if (score->mistakes[i] > 0)
            print_mistake((practice_mistake)i, score->mistakes[i]);
        endangers = endangers || (kinds[i].endangers && score->mistakes[i] > 0);
    }
    if (endangers)
        print_wrapped(stdout, "", 0, say("A brake that may be bad would have gone on the road."));
}

int practice_score_status(const practice_score *score)
{
    if (score->wrong > 0)
        return STATUS_OUT;
    return score->open > 0 ? STATUS_UNDETERMINED : STATUS_GOOD;
}
