/* SPDX-License-Identifier: Apache-2.0 */
/* Two tape readings to a verdict. The order matters: measure, find the limit, compare, then downgrade for the
 * conditions of the test. */
#include "core/error.h"
#include "core/exact.h"
#include "core/fault.h"
#include "core/text.h"
#include "judge/judge.h"
#include "judge/reasons.h"
#include "rules/find_limit.h"

#include <string.h>

static void add_reason(rodt_finding *finding, rodt_reason reason) { finding->reasons |= REASON_BIT(reason); }

static void start(const rodt_reading *reading, const rodt_rules *rules, rodt_finding *finding)
{
    memset(finding, 0, sizeof *finding);
    finding->reasons = reading->reasons;
    finding->chamber = reading->chamber;
    finding->released = reading->released;
    finding->applied = reading->applied;
    finding->unit = reading->unit;
    finding->pressure_unit = reading->pressure_unit;
    finding->division = reading->division;
    finding->pressure = reading->pressure;
    finding->pressure_after = reading->pressure_after;
    finding->day = reading->day;
    finding->other_day = reading->other_day;
    memcpy(finding->other_released, reading->other_released, sizeof finding->other_released);
    memcpy(finding->other_applied, reading->other_applied, sizeof finding->other_applied);
    finding->rules = rules;
}

/* --- What was measured ------------------------------------------------------------------------------- */

static void add_missing(rodt_finding *finding, rodt_reason missing, rodt_reason unreadable)
{
    if (!rodt_finding_has(finding, unreadable))
        add_reason(finding, missing);
}

static rodt_status measure(rodt_finding *finding)
{
    bool complete = true;
    if (!rodt_length_given(finding->released)) {
        add_missing(finding, RODT_REASON_RELEASED_MISSING, RODT_REASON_RELEASED_UNREADABLE);
        complete = false;
    }
    if (!rodt_length_given(finding->applied)) {
        add_missing(finding, RODT_REASON_APPLIED_MISSING, RODT_REASON_APPLIED_UNREADABLE);
        complete = false;
    }
    if (!complete)
        return RODT_OK;
    rodt_length stroke;
    rodt_status status = rodt_length_subtract(finding->applied, finding->released, &stroke);
    if (status == RODT_OK && stroke.num >= 0)
        finding->applied_stroke = stroke;
    else if (rodt_length_compare(finding->applied, finding->released) >= 0)
        return status;
    else
        add_reason(finding, RODT_REASON_READINGS_SWAPPED);
    return RODT_OK;
}

/* --- What limits it ---------------------------------------------------------------------------------- */

static bool is_same_limit(const rodt_limit_answer *a, const rodt_limit_answer *b)
{
    return a->law_basis == b->law_basis && rodt_length_compare(a->limit, b->limit) == 0 &&
           rodt_length_compare(a->law_limit, b->law_limit) == 0;
}

/* With a date that nobody can read, a limit is known only if it never changed. A table changes on the
 * first day of a row, so the days of all rows of `table` are enough. */
static bool is_constant(const rodt_finding *finding, const rodt_rules *table, const rodt_limit_answer *newest)
{
    for (size_t i = 0; i < rodt_rules_limit_count(table); i++) {
        rodt_limit_answer then;
        rodti_rules_find_limit(finding->rules, &finding->chamber, rodt_rules_limit_at(table, i)->from, &then);
        if (!is_same_limit(newest, &then))
            return false;
    }
    return true;
}

/* True if the limit is the same on every day that the inspection can have been on. */
static bool is_day_irrelevant(const rodt_finding *finding, const rodt_limit_answer *answer)
{
    if (rodt_finding_has(finding, RODT_REASON_DATE_UNREADABLE))
        return is_constant(finding, finding->rules, answer) &&
               is_constant(finding, rodt_rules_law(finding->rules), answer);
    if (!rodt_date_given(finding->other_day))
        return true;
    rodt_limit_answer other;
    rodti_rules_find_limit(finding->rules, &finding->chamber, finding->other_day, &other);
    return is_same_limit(answer, &other);
}

/* The limit that a long-stroke chamber of this size would have. */
static void find_long_limit(rodt_finding *finding)
{
    rodt_chamber chamber = finding->chamber;
    rodt_limit_answer answer;
    chamber.stroke_class = RODT_STROKE_CLASS_LONG;
    rodti_rules_find_limit(finding->rules, &chamber, finding->day, &answer);
    if (answer.law_basis == RODT_BASIS_TABLE && !answer.conflicting_marks)
        finding->long_limit = answer.limit;
}

static void add_basis_reasons(rodt_finding *finding)
{
    static const uint64_t reasons[RODT_BASIS_END] = {
        [RODT_BASIS_NONE] = REASON_BIT(RODT_REASON_NO_PUBLISHED_LIMIT),
        [RODT_BASIS_NOT_IN_FORCE] = REASON_BIT(RODT_REASON_RULES_NOT_IN_FORCE),
        [RODT_BASIS_RATED_SHARE] = REASON_BIT(RODT_REASON_LIMIT_FROM_RATED),
        [RODT_BASIS_MARKED_LIMIT] = REASON_BIT(RODT_REASON_LIMIT_MARKED),
        [RODT_BASIS_TABLE] = 0,
    };
    finding->reasons |= reasons[finding->law_basis];
    if (rodt_length_given(finding->law_limit) && finding->law_evidence != RODT_EVIDENCE_CHECKED)
        add_reason(finding, finding->law_evidence == RODT_EVIDENCE_COMMON_PRACTICE ? RODT_REASON_LIMIT_COMMON_PRACTICE
                                                                              : RODT_REASON_LIMIT_UNCONFIRMED);
}

static void set_limit(const rodt_limit_answer *answer, rodt_finding *finding)
{
    finding->law_basis = answer->law_basis;
    finding->limit = answer->limit;
    finding->law_limit = answer->law_limit;
    finding->law_row = answer->law_row;
    finding->own_row = answer->own_row;
    finding->source = answer->source;
    finding->evidence = answer->evidence;
    finding->law_source = answer->law_source;
    finding->law_evidence = answer->law_evidence;
    add_basis_reasons(finding);
    if (answer->conflicting_marks)
        add_reason(finding, RODT_REASON_CONFLICTING_MARKS);
    if (answer->assumed_standard) {
        add_reason(finding, RODT_REASON_ASSUMED_STANDARD);
        find_long_limit(finding);
        finding->chamber.stroke_class = RODT_STROKE_CLASS_STANDARD;
    }
    if (answer->assumed_clamp) {
        add_reason(finding, RODT_REASON_ASSUMED_CLAMP);
        finding->chamber.family = RODT_FAMILY_CLAMP;
    }
}

static void find_limit(rodt_finding *finding)
{
    if (rodt_date_given(finding->other_day))
        add_reason(finding, RODT_REASON_DATE_AMBIGUOUS);
    if (finding->chamber.size[0] == '\0') {
        add_missing(finding, RODT_REASON_CHAMBER_MISSING, RODT_REASON_CHAMBER_UNREADABLE);
        return;
    }
    rodt_limit_answer answer;
    rodti_rules_find_limit(finding->rules, &finding->chamber, finding->day, &answer);
    if (is_day_irrelevant(finding, &answer))
        set_limit(&answer, finding);
}

/* --- How the two compare ----------------------------------------------------------------------------- */

static bool is_over(const rodt_rules *rules, rodt_length stroke, rodt_length limit)
{
    int order = rodt_length_compare(stroke, limit);
    return order > 0 || (order == 0 && !rodt_rules_at_limit_passes(rules));
}

/* The inch figure is the law; who measures in millimetres reads the printed ones, so a disagreement is reported. */
static void compare_printed_mm(rodt_finding *finding)
{
    const rodt_limit *row = finding->law_row;
    if (finding->unit == RODT_UNIT_IN || row == NULL || !rodt_length_given(row->printed_mm))
        return;
    if (is_over(finding->rules, finding->applied_stroke, row->printed_mm) !=
        is_over(finding->rules, finding->applied_stroke, row->limit))
        add_reason(finding, RODT_REASON_PRINTED_MM_DIFFERS);
}

static bool is_over_law(const rodt_finding *finding)
{
    return rodt_length_given(finding->law_limit) &&
           is_over(finding->rules, finding->applied_stroke, finding->law_limit);
}

static void compare_with_limit(rodt_finding *finding)
{
    rodt_length stroke = finding->applied_stroke;
    bool over = is_over(finding->rules, stroke, finding->limit);
    if (rodt_length_compare(stroke, finding->limit) == 0)
        add_reason(finding, RODT_REASON_AT_LIMIT);
    else if (!over)
        add_reason(finding, RODT_REASON_WITHIN_LIMIT);
    else if (is_over_law(finding))
        add_reason(finding, RODT_REASON_OVER_LIMIT);
    else
        add_reason(finding, RODT_REASON_OVER_OWN_LIMIT);
    /* A carrier's own limit alone can fail a brake; only the law can pass it. */
    if (over)
        finding->verdict = RODT_VERDICT_OUT_OF_ADJUSTMENT;
    else if (rodt_length_given(finding->law_limit))
        finding->verdict = RODT_VERDICT_IN_ADJUSTMENT;
    compare_printed_mm(finding);
}

static rodt_status compare(rodt_finding *finding)
{
    rodt_length stroke = finding->applied_stroke;
    if (!rodt_length_given(stroke))
        return RODT_OK;
    if (rodt_length_given(finding->limit)) {
        rodt_status status = rodt_length_subtract(finding->limit, stroke, &finding->margin);
        if (status != RODT_OK)
            return status;
        if (stroke.num != 0)
            compare_with_limit(finding);
    }
    if (stroke.num == 0) {
        add_reason(finding, RODT_REASON_NO_MOVEMENT);
        finding->verdict = RODT_VERDICT_INOPERATIVE;
    }
    else if (rodt_length_compare(stroke, STROKE_HARDLY) < 0)
        add_reason(finding, RODT_REASON_HARDLY_MOVED);
    rodt_length rated = finding->chamber.rated_stroke;
    if (rodt_length_given(rated) && rodt_length_compare(stroke, rated) > 0) {
        add_reason(finding, RODT_REASON_BEYOND_RATED_STROKE);
        finding->verdict = RODT_VERDICT_OUT_OF_ADJUSTMENT;
    }
    return RODT_OK;
}

/* --- What takes the proof away ----------------------------------------------------------------------- */

static void compare_pressure(const rodt_rules *rules, rodt_pressure pressure, rodt_finding *finding)
{
    if (!rodt_pressure_given(pressure))
        return;
    if (rodt_pressure_compare(pressure, rodt_rules_pressure_from(rules)) < 0)
        add_reason(finding, RODT_REASON_PRESSURE_LOW);
    if (rodt_pressure_compare(pressure, rodt_rules_pressure_until(rules)) > 0)
        add_reason(finding, RODT_REASON_PRESSURE_HIGH);
}

static bool is_without_air(rodt_pressure pressure) { return rodt_pressure_given(pressure) && pressure.num == 0; }

/* Stroke grows with pressure: too little air can only hide an excess, too much can only make one. A rod that did not
 * move says the same at either, unless there was no air at all. */
static void apply_pressure(const rodt_reading *reading, const rodt_rules *rules, rodt_finding *finding)
{
    if (finding->verdict == RODT_VERDICT_INOPERATIVE &&
        (is_without_air(reading->pressure) || is_without_air(reading->pressure_after))) {
        add_reason(finding, RODT_REASON_PRESSURE_LOW);
        finding->verdict = RODT_VERDICT_UNDETERMINED;
    }
    if (!rodt_pressure_given(rodt_rules_pressure_from(rules)))
        return;
    if (!rodt_pressure_given(reading->pressure))
        add_reason(finding, RODT_REASON_PRESSURE_NOT_RECORDED);
    compare_pressure(rules, reading->pressure, finding);
    compare_pressure(rules, reading->pressure_after, finding);
    if (finding->verdict == RODT_VERDICT_IN_ADJUSTMENT && rodt_finding_has(finding, RODT_REASON_PRESSURE_LOW))
        finding->verdict = RODT_VERDICT_UNDETERMINED;
    if (finding->verdict == RODT_VERDICT_OUT_OF_ADJUSTMENT && rodt_finding_has(finding, RODT_REASON_PRESSURE_HIGH))
        finding->verdict = RODT_VERDICT_UNDETERMINED;
}

/* An unreadable text may invalidate the result. An unreadable chamber invalidates only the comparison with a limit; an
 * unreadable date invalidates only a pass, and only under a rule set that was not always in force. */
static void apply_unreadable(rodt_finding *finding)
{
    const rodt_rules *law = rodt_rules_law(finding->rules) != NULL ? rodt_rules_law(finding->rules) : finding->rules;
    if (rodt_finding_has(finding, RODT_REASON_OTHER_UNREADABLE))
        finding->verdict = RODT_VERDICT_UNDETERMINED;
    if (rodt_finding_has(finding, RODT_REASON_DATE_UNREADABLE) && finding->verdict == RODT_VERDICT_IN_ADJUSTMENT &&
        (rodt_date_given(rodt_rules_from(law)) || rodt_date_given(rodt_rules_until(law))))
        finding->verdict = RODT_VERDICT_UNDETERMINED;
}

static void apply_test_conditions(const rodt_reading *reading, rodt_finding *finding)
{
    if (reading->engine_running == RODT_RECORDED_YES)
        add_reason(finding, RODT_REASON_ENGINE_RUNNING);
    if (reading->spring_brake_applied == RODT_RECORDED_YES)
        add_reason(finding, RODT_REASON_SPRING_BRAKE_APPLIED);
    if (reading->drum == RODT_DRUM_HOT)
        add_reason(finding, RODT_REASON_DRUM_HOT);
    const uint64_t spoiled =
        REASON_BIT(RODT_REASON_ENGINE_RUNNING) | REASON_BIT(RODT_REASON_SPRING_BRAKE_APPLIED);
    if ((finding->reasons & spoiled) != 0)
        finding->verdict = RODT_VERDICT_UNDETERMINED;
    apply_unreadable(finding);
}

/* --- What the tape proves ---------------------------------------------------------------------------- */

/* The error of a difference of two readings, each uniform within half a division d either way, has a
 * triangular distribution on [-d, d]; x is (limit - stroke) / d, here between -1 and 1. Derived; its variance d^2/6 is
 * the sum of two uniform ones (GUM, JCGM 100, 4.3.7 and 4.3.9). Not given where it does not fit. */
static rodt_ratio chance_over(rodt_ratio x)
{
    const rodt_ratio half = {1, 2};
    bool below = x.num >= 0;
    rodt_ratio rest = {x.den - (below ? x.num : -x.num), x.den}; /* in lowest terms, as x is */
    rodt_ratio area;
    if (!rodti_exact_multiply(rest, rest, &area) || !rodti_exact_multiply(area, half, &area))
        return (rodt_ratio){0, 0};
    return below ? area : (rodt_ratio){area.den - area.num, area.den};
}

static void prove(rodt_finding *finding)
{
    if (!rodt_length_given(finding->division) || !rodt_length_given(finding->margin))
        return;
    rodt_ratio margin = EXACT(finding->margin);
    rodt_ratio division = EXACT(finding->division);
    rodt_ratio past = {-margin.num, margin.den};
    bool at_passes = rodt_rules_at_limit_passes(finding->rules);
    int within = rodti_exact_compare(margin, division);
    int over = rodti_exact_compare(past, division);
    finding->proof = RODT_PROOF_NOT_RESOLVED;
    if (within > 0 || (within == 0 && at_passes))
        finding->proof = RODT_PROOF_PROVEN_WITHIN;
    if (over > 0 || (over == 0 && !at_passes))
        finding->proof = RODT_PROOF_PROVEN_OVER;
    rodt_ratio x;
    if (within >= 0 || over >= 0)
        finding->probability_over = (rodt_ratio){over >= 0, 1};
    else if (rodti_exact_divide(margin, division, &x))
        finding->probability_over = chance_over(x);
}

/* --- The judgement ------------------------------------------------------------------------------------ */

static rodt_status judge_once(const rodt_reading *reading, const rodt_rules *rules, rodt_finding *finding)
{
    start(reading, rules, finding);
    rodt_status status = measure(finding);
    find_limit(finding);
    if (status == RODT_OK)
        status = compare(finding);
    if (status != RODT_OK)
        return status;
    apply_pressure(reading, rules, finding);
    apply_test_conditions(reading, finding);
    prove(finding);
    return RODT_OK;
}

/* One of the values that a text may mean; 0 is the one it was read as. False: no such alternative. */
static bool choose_value(rodt_length *length, const rodt_length other[2], size_t choice)
{
    if (choice > 0)
        *length = other[choice - 1];
    return rodt_length_given(*length) || choice == 0;
}

/* Where a lost blank would change the verdict, nothing is proven. */
static rodt_status try_lost_blanks(const rodt_reading *reading, const rodt_rules *rules, rodt_finding *finding)
{
    const rodt_verdict verdict = finding->verdict;
    if (!rodt_length_given(reading->other_released[0]) && !rodt_length_given(reading->other_applied[0]))
        return RODT_OK;
    for (size_t i = 1; i < 9; i++) {
        rodt_reading other = *reading;
        rodt_finding found;
        if (!choose_value(&other.released, reading->other_released, i % 3) ||
            !choose_value(&other.applied, reading->other_applied, i / 3))
            continue;
        rodt_status status = judge_once(&other, rules, &found);
        if (status != RODT_OK)
            return status;
        if (found.verdict != verdict) {
            add_reason(finding, RODT_REASON_LOST_BLANK);
            finding->verdict = RODT_VERDICT_UNDETERMINED;
        }
    }
    return RODT_OK;
}

/* The rank of a brake that is out, where the law's text has one. */
static void rank(const rodt_rules *rules, rodt_finding *finding)
{
    const rodt_rules *law = rodt_rules_law(rules) != NULL ? rodt_rules_law(rules) : rules;
    bool over_law = finding->verdict == RODT_VERDICT_OUT_OF_ADJUSTMENT &&
                    !rodt_finding_has(finding, RODT_REASON_OVER_OWN_LIMIT);
    if ((over_law || finding->verdict == RODT_VERDICT_INOPERATIVE) && rodt_rules_major_source(law) != NULL)
        add_reason(finding, RODT_REASON_MAJOR_DEFECT);
}

rodt_status rodti_reading_judge(const rodt_reading *reading, const rodt_rules *rules, rodt_finding *out)
{
    rodt_finding finding;
    rodt_status status = judge_once(reading, rules, &finding);
    if (status == RODT_OK)
        status = try_lost_blanks(reading, rules, &finding);
    if (status != RODT_OK)
        return status;
    rank(rules, &finding);
    *out = finding;
    return RODT_OK;
}

rodt_status rodt_reading_judge(const rodt_reading *reading, const rodt_rules *rules, rodt_finding *out,
                               rodt_error *error)
{
    if (out == NULL)
        return rodti_field_error(error, "", "room for a finding is needed");
    if (rules == NULL)
        return rodti_rules_error(error);
    rodt_status status = rodt_reading_check(reading, error);
    if (status != RODT_OK)
        return status;
    status = rodti_reading_judge(reading, rules, out);
    return status == RODT_OK ? status : rodti_error_status(error, status);
}
