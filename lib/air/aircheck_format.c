/* SPDX-License-Identifier: Apache-2.0 */
/* An air check in words: what was found, what is asked for, what would have been defective. */
#include "air/aircheck.h"
#include "air/sentence.h"
#include "message/message.h"
#include "rules/tables.h"

#include <string.h>

/* --- Words ------------------------------------------------------------------------------------------- */

static const struct check_words {
    rodt_message_code title;
    rodt_message_code found; /* with the measured figure */
    rodt_message_code yes;   /* of a yes/no check */
    rodt_message_code no;    /* ... or what was waited for and never came */
    rodt_message_code fault; /* how a defect of a yes/no check reads */
} checks[RODT_AIR_CHECK_END] = {
#define CHECK(name, ...) [RODT_AIR_CHECK_##name] = {.title = RODT_MESSAGE_AIR_TITLE_##name, __VA_ARGS__}
#define LOSS(name) CHECK(name, .found = RODT_MESSAGE_AIR_FOUND_##name)
#define FOUND(name) CHECK(name, .found = RODT_MESSAGE_AIR_FOUND_##name, .no = RODT_MESSAGE_AIR_NEVER_##name)
#define ANSWER(name)                                                                                               \
    CHECK(name, .yes = RODT_MESSAGE_AIR_FOUND_##name##_YES, .no = RODT_MESSAGE_AIR_FOUND_##name##_NO,                  \
          .fault = RODT_MESSAGE_AIR_EDGE_##name)
    FOUND(WARNING),
    FOUND(BUILD_UP),
    FOUND(CUT_OUT),
    FOUND(CUT_IN),
    LOSS(LOSS_RELEASED),
    LOSS(LOSS_APPLIED),
    CHECK(RESERVE, .found = RODT_MESSAGE_AIR_FOUND_FALL),
    ANSWER(SPRING_BRAKE),
    CHECK(TRACTOR_PROTECTION, .found = RODT_MESSAGE_AIR_FOUND_TRACTOR_PROTECTION,
          .yes = RODT_MESSAGE_AIR_FOUND_TRACTOR_PROTECTION_YES, .no = RODT_MESSAGE_AIR_FOUND_TRACTOR_PROTECTION_NO,
          .fault = RODT_MESSAGE_AIR_EDGE_TRACTOR_PROTECTION),
    FOUND(SUPPLY_VALVE),
    FOUND(PARKING_VALVE),
    ANSWER(DRAIN),
    ANSWER(AUDIBLE_LEAK),
    ANSWER(CONTAMINATION),
    ANSWER(TRAILER_BRAKES),
};

static bool is_check(rodt_air_check check) { return (unsigned)check < RODT_AIR_CHECK_END; }

rodt_status rodt_air_check_message(rodt_air_check check, rodt_message *out)
{
    return is_check(check) ? rodti_message_sentence(checks[check].title, out) : RODT_E_ARGUMENT;
}

/* Of a row that a caller made, too. */
static bool is_row(const rodt_air_limit *row)
{
    return is_check((rodt_air_check)row->check) && (unsigned)row->kind < RODT_AIR_KIND_END &&
           (unsigned)row->comparison < RODT_COMPARISON_END && (unsigned)row->measure < RODT_AIR_MEASURE_END &&
           (unsigned)row->span < RODT_AIR_SPAN_END;
}

/* --- Figures ----------------------------------------------------------------------------------------- */

static const rodt_ratio no_bound = {0, 0};

/* Enough digits to keep a rounded figure off the bound that it does not touch. */
static unsigned telling_digits(rodt_ratio value, rodt_ratio bound)
{
    rodt_ratio distance;
    int64_t scale = 10;
    unsigned digits = 1;
    if (bound.den == 0 || !rodti_exact_subtract(value, bound, &distance) || distance.num == 0)
        return digits;
    distance.num = distance.num < 0 ? -distance.num : distance.num;
    for (; digits < DIGITS_MAX && rodti_exact_compare(distance, (rodt_ratio){1, scale}) < 0; digits++)
        scale *= 10;
    return digits;
}

static void add_figure(rodt_message *out, const char *name, rodt_ratio value, rodt_ratio bound,
                       rodt_air_measure measure)
{
    static const rodt_message_code phrases[] = {
        [RODT_AIR_MEASURE_PSI] = RODT_MESSAGE_VALUE_PSI,
        [RODT_AIR_MEASURE_KPA] = RODT_MESSAGE_VALUE_KPA,
        [RODT_AIR_MEASURE_SECONDS] = RODT_MESSAGE_VALUE_SECONDS,
        [RODT_AIR_MEASURE_PSI_PER_MINUTE] = RODT_MESSAGE_VALUE_PSI_PER_MINUTE,
        [RODT_AIR_MEASURE_KPA_PER_MINUTE] = RODT_MESSAGE_VALUE_KPA_PER_MINUTE,
        [RODT_AIR_MEASURE_PERCENT_LEFT] = RODT_MESSAGE_VALUE_PERCENT_LEFT,
        [RODT_AIR_MEASURE_PERCENT_LOST] = RODT_MESSAGE_VALUE_PERCENT_LOST,
        [RODT_AIR_MEASURE_YES_NO] = RODT_MESSAGE_NONE};
    rodti_message_figure(out, name, value, phrases[measure], telling_digits(value, bound));
}

static void add_pressure(rodt_message *out, const char *name, rodt_pressure pressure, rodt_pressure_unit unit)
{
    rodt_ratio kpa;
    bool in_kpa = rodti_message_in_kpa(pressure, unit, &kpa);
    add_figure(out, name, in_kpa ? kpa : EXACT(pressure), no_bound,
               in_kpa ? RODT_AIR_MEASURE_KPA : RODT_AIR_MEASURE_PSI);
}

/* --- What was found ---------------------------------------------------------------------------------- */

typedef struct span_ends {
    rodt_pressure start;
    rodt_pressure stop;
} span_ends;

/* "50 psi to 90 psi or 345 kPa to 620 kPa"; the kPa that a source prints beside its psi may be absent. */
static void add_span(rodt_message *out, rodt_air_span span, span_ends psi, rodt_pressure_unit unit, span_ends kpa)
{
    static const rodt_message_code events[] = {
        [RODT_AIR_SPAN_PRESSURES] = RODT_MESSAGE_AIR_SPAN_UNKNOWN,
        [RODT_AIR_SPAN_WARNING] = RODT_MESSAGE_AIR_SPAN_WARNING,
        [RODT_AIR_SPAN_APPLICATIONS] = RODT_MESSAGE_AIR_SPAN_APPLICATIONS,
        [RODT_AIR_SPAN_RECOVERY] = RODT_MESSAGE_AIR_SPAN_RECOVERY};
    bool given = span == RODT_AIR_SPAN_PRESSURES && rodt_pressure_given(psi.start) && rodt_pressure_given(psi.stop);
    bool both = given && rodt_pressure_given(kpa.start);
    rodti_message_clause(out, "span", both    ? RODT_MESSAGE_AIR_SPAN_PRESSURES_BOTH
                                      : given ? RODT_MESSAGE_AIR_SPAN_PRESSURES
                                              : events[span]);
    if (given) {
        add_pressure(out, "start", psi.start, unit);
        add_pressure(out, "stop", psi.stop, unit);
    }
    if (both) {
        add_pressure(out, "start_kpa", kpa.start, RODT_PRESSURE_UNIT_KPA);
        add_pressure(out, "stop_kpa", kpa.stop, RODT_PRESSURE_UNIT_KPA);
    }
}

void rodti_air_add_span(rodt_message *out, const rodt_air_limit *row)
{
    add_span(out, (rodt_air_span)row->span, (span_ends){row->start, row->stop}, RODT_PRESSURE_UNIT_PSI,
             (span_ends){row->start_kpa, row->stop_kpa});
}

/* A loss is of one minute where nothing else is said. */
static void add_seconds(rodt_message *out, rodt_ratio seconds)
{
    const rodt_ratio minute = {60, 1};
    add_figure(out, "seconds", rodt_ratio_given(seconds) ? seconds : minute, no_bound, RODT_AIR_MEASURE_SECONDS);
}

static void add_measured(rodt_message *out, const rodt_air_finding *finding)
{
    add_figure(out, "figure", finding->measured, finding->allowed, finding->row->measure);
}

static void find_build_up(rodt_message *out, const rodt_air_reading *reading)
{
    const span_ends none = {{0, 0}, {0, 0}};
    bool is_timed = rodt_ratio_given(reading->seconds);
    rodti_message_clause(
        out, "found", is_timed ? RODT_MESSAGE_AIR_FOUND_BUILD_UP : RODT_MESSAGE_AIR_FOUND_BUILD_UP_UNTIMED);
    add_span(out, reading->span, (span_ends){reading->before, reading->after}, reading->pressure_unit, none);
    if (is_timed)
        add_seconds(out, reading->seconds);
}

/* A loss or a reserve: "110 psi to 107 psi in 60 s is 3 psi per minute". */
static void find_fall(rodt_message *out, const rodt_air_finding *finding, rodt_message_code bare,
                      rodt_message_code with)
{
    const rodt_air_reading *reading = &finding->reading;
    bool given = rodt_pressure_given(reading->before) && rodt_pressure_given(reading->after);
    bool measured = rodt_ratio_given(finding->measured);
    if (measured || bare != RODT_MESSAGE_NONE)
        rodti_message_clause(out, "found", measured ? with : bare);
    bool alone = !measured && bare == RODT_MESSAGE_NONE;
    rodti_message_clause(out, alone ? "found" : "fall",
                         given ? RODT_MESSAGE_AIR_FOUND_FALL : RODT_MESSAGE_AIR_FOUND_NO_FALL);
    add_pressure(out, "before", reading->before, reading->pressure_unit);
    add_pressure(out, "after", reading->after, reading->pressure_unit);
    add_seconds(out, reading->seconds);
    if (measured)
        add_measured(out, finding);
}

static void find_pressure(rodt_message *out, const rodt_air_finding *finding)
{
    const rodt_air_reading *reading = &finding->reading;
    bool measured = finding->row != NULL && rodt_ratio_given(finding->measured);
    bool below = measured && finding->row->below_cut_out;
    if (!rodt_pressure_given(reading->pressure) || checks[reading->check].found == RODT_MESSAGE_NONE) {
        rodti_message_clause(out, "found", checks[reading->check].title);
        return;
    }
    rodti_message_clause(out, "found", below ? RODT_MESSAGE_AIR_FOUND_CUT_IN_BELOW : checks[reading->check].found);
    if (measured)
        add_measured(out, finding);
    else
        add_pressure(out, "figure", reading->pressure, reading->pressure_unit);
}

static rodt_message_code code_of_answer(const rodt_air_reading *reading)
{
    const struct check_words *words = &checks[reading->check];
    return reading->answer == RODT_RECORDED_YES  ? words->yes
           : reading->answer == RODT_RECORDED_NO ? words->no
                                                 : RODT_MESSAGE_NONE;
}

void rodti_air_add_found(rodt_message *out, const rodt_air_finding *finding)
{
    const rodt_air_check check = (rodt_air_check)finding->reading.check;
    const rodt_message_code answer = code_of_answer(&finding->reading);
    if (answer != RODT_MESSAGE_NONE)
        rodti_message_clause(out, "found", answer);
    else if (check == RODT_AIR_CHECK_BUILD_UP)
        find_build_up(out, &finding->reading);
    else if (check == RODT_AIR_CHECK_RESERVE)
        find_fall(out, finding, RODT_MESSAGE_NONE, RODT_MESSAGE_AIR_FOUND_RESERVE_IS);
    else if (check == RODT_AIR_CHECK_LOSS_RELEASED)
        find_fall(out, finding, RODT_MESSAGE_AIR_FOUND_LOSS_RELEASED, RODT_MESSAGE_AIR_FOUND_LOSS_RELEASED_IS);
    else if (check == RODT_AIR_CHECK_LOSS_APPLIED)
        find_fall(out, finding, RODT_MESSAGE_AIR_FOUND_LOSS_APPLIED, RODT_MESSAGE_AIR_FOUND_LOSS_APPLIED_IS);
    else
        find_pressure(out, finding);
}

/* --- What is asked for ------------------------------------------------------------------------------- */

/* The bound that judged; of a row alone, its own figure. */
static rodt_ratio bound_of(const rodt_air_limit *row, const rodt_air_finding *finding)
{
    bool judged = finding != NULL && rodt_ratio_given(finding->allowed) && row->comparison != RODT_COMPARISON_BETWEEN;
    return judged ? finding->allowed : row->value;
}

static bool is_answer(const rodt_air_limit *row)
{
    return row->comparison == RODT_COMPARISON_MUST_BE_YES || row->comparison == RODT_COMPARISON_MUST_BE_NO;
}

void rodti_air_add_required(rodt_message *out, const rodt_air_finding *finding)
{
    static const rodt_message_code words[] = {
        [RODT_COMPARISON_LESS_THAN] = RODT_MESSAGE_AIR_REQUIRED_LESS_THAN,
        [RODT_COMPARISON_NOT_MORE_THAN] = RODT_MESSAGE_AIR_REQUIRED_NOT_MORE_THAN,
        [RODT_COMPARISON_MORE_THAN] = RODT_MESSAGE_AIR_REQUIRED_MORE_THAN,
        [RODT_COMPARISON_NOT_LESS_THAN] = RODT_MESSAGE_AIR_REQUIRED_NOT_LESS_THAN,
        [RODT_COMPARISON_BETWEEN] = RODT_MESSAGE_AIR_REQUIRED_BETWEEN,
        [RODT_COMPARISON_MUST_BE_YES] = RODT_MESSAGE_AIR_REQUIRED_PUBLISHED,
        [RODT_COMPARISON_MUST_BE_NO] = RODT_MESSAGE_AIR_REQUIRED_PUBLISHED};
    const rodt_air_limit *row = finding->row;
    bool between = row->comparison == RODT_COMPARISON_BETWEEN;
    bool about = between && rodti_exact_compare(row->value, row->upper) == 0;
    if (!is_answer(row) && !rodt_ratio_given(bound_of(row, finding))) {
        rodti_message_clause(out, "required", RODT_MESSAGE_AIR_REQUIRED_HALF_CUT_OUT);
        return;
    }
    if (row->below_cut_out && !is_answer(row))
        rodti_message_clause(out, "required", RODT_MESSAGE_AIR_REQUIRED_BELOW_CUT_OUT);
    rodti_message_clause(out, "required", about ? RODT_MESSAGE_AIR_REQUIRED_ABOUT : words[row->comparison]);
    if (is_answer(row)) {
        rodti_message_text(out, "published", row->published);
        return;
    }
    add_figure(out, "bound", between ? row->upper : bound_of(row, finding), no_bound, row->measure);
    if (between)
        rodti_message_figure(out, "from", row->value, RODT_MESSAGE_NONE, 1);
}

void rodti_air_add_missing(rodt_message *out, const rodt_air_finding *finding)
{
    static const rodt_message_code words[] = {[RODT_AIR_MISSING_NOTHING] = RODT_MESSAGE_NONE,
                                              [RODT_AIR_MISSING_ROW] = RODT_MESSAGE_AIR_MISSING_ROW,
                                              [RODT_AIR_MISSING_VEHICLE] = RODT_MESSAGE_AIR_MISSING_VEHICLE,
                                              [RODT_AIR_MISSING_BUILT] = RODT_MESSAGE_AIR_MISSING_BUILT,
                                              [RODT_AIR_MISSING_VOLUME] = RODT_MESSAGE_AIR_MISSING_VOLUME,
                                              [RODT_AIR_MISSING_SPAN] = RODT_MESSAGE_AIR_MISSING_SPAN,
                                              [RODT_AIR_MISSING_VALUE] = RODT_MESSAGE_AIR_MISSING_VALUE,
                                              [RODT_AIR_MISSING_SENSE] = RODT_MESSAGE_AIR_MISSING_SENSE,
                                              [RODT_AIR_MISSING_CUT_OUT] = RODT_MESSAGE_AIR_MISSING_CUT_OUT,
                                              [RODT_AIR_MISSING_APPLICATIONS] = RODT_MESSAGE_AIR_MISSING_APPLICATIONS,
                                              [RODT_AIR_MISSING_OTHER_WAY] = RODT_MESSAGE_AIR_MISSING_OTHER_WAY};
    const rodt_air_limit *row = finding->row;
    bool is_uncounted = finding->missing == RODT_AIR_MISSING_VEHICLE &&
                        finding->reading.vehicle == RODT_VEHICLE_CLASS_COMBINATION;
    rodt_message_code doubt = finding->missing == RODT_AIR_MISSING_SENSE && !rodti_air_never_came(&finding->reading)
                                  ? rodti_air_doubt(&finding->reading)
                                  : RODT_MESSAGE_NONE;
    rodti_message_clause(out, "missing", doubt != RODT_MESSAGE_NONE ? doubt
                                         : is_uncounted             ? RODT_MESSAGE_AIR_MISSING_TOWED_UNITS
                                                                    : words[finding->missing]);
    if (finding->missing == RODT_AIR_MISSING_ROW)
        rodti_message_text(out, "rules", rodt_rules_id(finding->rules));
    if (finding->missing == RODT_AIR_MISSING_SPAN && row != NULL)
        rodti_air_add_span(out, row);
    if (finding->missing == RODT_AIR_MISSING_APPLICATIONS && row != NULL)
        rodti_message_count(out, "applications", (uint64_t)row->applications);
}

/* --- The sentence ------------------------------------------------------------------------------------ */

static rodt_message_code code_of_result(const rodt_air_finding *finding)
{
    if (finding->result == RODT_AIR_RESULT_GOOD)
        return RODT_MESSAGE_AIR_GOOD;
    return finding->major   ? RODT_MESSAGE_AIR_DEFECTIVE_MAJOR
           : finding->minor ? RODT_MESSAGE_AIR_DEFECTIVE_MINOR
                            : RODT_MESSAGE_AIR_DEFECTIVE;
}

static rodt_message_code code_of_sentence(const rodt_air_finding *finding)
{
    const rodt_air_limit *row = finding->row;
    if (finding->result == RODT_AIR_RESULT_NOT_DONE)
        return RODT_MESSAGE_AIR_NOT_DONE;
    if (finding->result == RODT_AIR_RESULT_UNDETERMINED)
        return RODT_MESSAGE_AIR_UNDETERMINED;
    if (finding->result == RODT_AIR_RESULT_NOTED)
        return row->kind == RODT_AIR_KIND_USUAL ? RODT_MESSAGE_AIR_USUAL : RODT_MESSAGE_AIR_UNLESS;
    bool is_loose = row->kind == RODT_AIR_KIND_USUAL || row->kind == RODT_AIR_KIND_EITHER;
    if (is_loose && rodti_air_never_came(&finding->reading))
        return RODT_MESSAGE_AIR_NEVER;
    if (row->measure == RODT_AIR_MEASURE_YES_NO)
        return RODT_MESSAGE_AIR_RULE;
    if (!finding->at_limit)
        return RODT_MESSAGE_AIR_REQUIRED;
    return finding->result == RODT_AIR_RESULT_GOOD ? RODT_MESSAGE_AIR_EDGE_PASSES : RODT_MESSAGE_AIR_EDGE_FAILS;
}

static rodt_message_code code_of_law(const rodt_air_finding *finding)
{
    if (finding->law_result == RODT_AIR_RESULT_DEFECTIVE)
        return RODT_MESSAGE_AIR_DEFECTIVE;
    if (finding->law_result == RODT_AIR_RESULT_GOOD)
        return RODT_MESSAGE_AIR_GOOD;
    return finding->law_result == RODT_AIR_RESULT_NOTED ? RODT_MESSAGE_AIR_LAW_NOTED
                                                        : RODT_MESSAGE_AIR_LAW_UNDETERMINED;
}

/* A carrier's figure is never law, whatever its own evidence is. */
static void start_own_sentence(rodt_message *out, const rodt_air_finding *finding)
{
    bool rule = finding->row->measure == RODT_AIR_MEASURE_YES_NO;
    if (finding->law_row == NULL) {
        rodti_message_start(out, rule ? RODT_MESSAGE_AIR_RULE_OWN : RODT_MESSAGE_AIR_FIGURE_OWN);
        rodti_message_clause(out, "finding", code_of_sentence(finding));
        return;
    }
    rodti_message_start(out, rule ? RODT_MESSAGE_AIR_RULE_OWN_BESIDE_LAW : RODT_MESSAGE_AIR_FIGURE_OWN_BESIDE_LAW);
    rodti_message_clause(out, "finding", code_of_sentence(finding));
    rodti_message_clause(out, "law", code_of_law(finding));
}

/* What was not read in its source says so around the whole sentence. */
static void start_sentence(rodt_message *out, const rodt_air_finding *finding)
{
    const rodt_air_limit *row = finding->row;
    rodt_message_code code = code_of_sentence(finding);
    if (row != NULL && row == finding->own_row) {
        start_own_sentence(out, finding);
        return;
    }
    if (code == RODT_MESSAGE_AIR_NOT_DONE || row == NULL || row->evidence == RODT_EVIDENCE_CHECKED) {
        rodti_message_start(out, code);
        return;
    }
    rodti_message_start(out, row->measure == RODT_AIR_MEASURE_YES_NO ? RODT_MESSAGE_AIR_RULE_UNCONFIRMED
                                                                     : RODT_MESSAGE_AIR_FIGURE_UNCONFIRMED);
    rodti_message_clause(out, "finding", code);
    rodti_message_clause(out, "evidence", rodti_evidence_code((rodt_evidence)row->evidence));
}

/* A result of a row has one, and every enumerator is known. */
bool rodti_air_can_be_said(const rodt_air_finding *finding)
{
    bool judged = finding->result != RODT_AIR_RESULT_NOT_DONE && finding->result != RODT_AIR_RESULT_UNDETERMINED;
    return is_check((rodt_air_check)finding->reading.check) && (unsigned)finding->result <= RODT_AIR_RESULT_NOTED &&
           (unsigned)finding->missing <= RODT_AIR_MISSING_OTHER_WAY &&
           (unsigned)finding->reading.span <= RODT_AIR_SPAN_RECOVERY &&
           (finding->row != NULL ? is_row(finding->row) : !judged && !rodt_ratio_given(finding->measured));
}

rodt_status rodt_air_finding_message(const rodt_air_finding *finding, rodt_message *out)
{
    if (finding == NULL || out == NULL || !rodti_air_can_be_said(finding))
        return RODT_E_ARGUMENT;
    start_sentence(out, finding);
    if (finding->result == RODT_AIR_RESULT_NOT_DONE) {
        rodti_message_clause(out, "title", checks[finding->reading.check].title);
        return RODT_OK;
    }
    rodti_air_add_found(out, finding);
    if (finding->result == RODT_AIR_RESULT_UNDETERMINED) {
        rodti_air_add_missing(out, finding);
        return RODT_OK;
    }
    if (code_of_sentence(finding) != RODT_MESSAGE_AIR_NEVER)
        rodti_air_add_required(out, finding);
    if (finding->result != RODT_AIR_RESULT_NOTED)
        rodti_message_clause(out, "result", code_of_result(finding));
    return RODT_OK;
}

rodt_status rodt_air_finding_format(const rodt_air_finding *finding, char *text, size_t size, size_t *needed)
{
    rodt_message message;
    return rodti_message_say(rodt_air_finding_message(finding, &message), &message, text, size, needed);
}

/* --- What would have been defective ------------------------------------------------------------------ */

static void add_bounds(rodt_message *out, const rodt_air_limit *row, const rodt_air_finding *finding)
{
    static const rodt_message_code words[RODT_COMPARISON_END] = {
                                              [RODT_COMPARISON_LESS_THAN] = RODT_MESSAGE_AIR_EDGE_OR_MORE,
                                              [RODT_COMPARISON_NOT_MORE_THAN] = RODT_MESSAGE_AIR_EDGE_ABOVE,
                                              [RODT_COMPARISON_MORE_THAN] = RODT_MESSAGE_AIR_EDGE_OR_BELOW,
                                              [RODT_COMPARISON_NOT_LESS_THAN] = RODT_MESSAGE_AIR_EDGE_BELOW,
                                              [RODT_COMPARISON_BETWEEN] = RODT_MESSAGE_AIR_EDGE_OUTSIDE};
    rodti_message_clause(out, "when", words[row->comparison]);
    add_figure(out, "bound", bound_of(row, finding), no_bound, row->measure);
    if (row->comparison == RODT_COMPARISON_BETWEEN)
        add_figure(out, "upper", row->upper, no_bound, row->measure);
}

/* What a row alone cannot put into its figure, around its bounds from the outside in. */
static void add_conditions(rodt_message *out, const rodt_air_limit *row, const rodt_air_finding *finding)
{
    bool judged = finding != NULL && rodt_ratio_given(finding->allowed);
    if (rodt_ratio_given(row->per_towed_unit) && !judged)
        rodti_message_clause(out, "when", RODT_MESSAGE_AIR_EDGE_PER_TOWED_UNIT);
    if (row->below_cut_out)
        rodti_message_clause(out, "when", RODT_MESSAGE_AIR_EDGE_UNDER_CUT_OUT);
    if (row->half_cut_out && (!judged || !rodt_pressure_given(finding->reading.cut_out)))
        rodti_message_clause(out, "when", RODT_MESSAGE_AIR_EDGE_HALF_CUT_OUT);
    if (row->by_volume && !judged)
        rodti_message_clause(out, "when", RODT_MESSAGE_AIR_EDGE_BY_VOLUME);
}

static rodt_message_code code_of_rank(const rodt_air_limit *row)
{
    static const rodt_message_code ranks[RODT_AIR_KIND_END] = {
        [RODT_AIR_KIND_LIMIT] = RODT_MESSAGE_AIR_EDGE_DEFECTIVE,
        [RODT_AIR_KIND_MAJOR] = RODT_MESSAGE_AIR_EDGE_MAJOR,
        [RODT_AIR_KIND_USUAL] = RODT_MESSAGE_AIR_EDGE_USUAL,
        [RODT_AIR_KIND_LIMIT_AND_MAJOR] = RODT_MESSAGE_AIR_EDGE_MAJOR,
        [RODT_AIR_KIND_LIMIT_AND_MINOR] = RODT_MESSAGE_AIR_EDGE_MINOR,
        [RODT_AIR_KIND_EITHER] = RODT_MESSAGE_AIR_EDGE_EITHER};
    bool answers = row->kind == RODT_AIR_KIND_EITHER && is_answer(row);
    return answers ? RODT_MESSAGE_AIR_EDGE_DEFECTIVE : ranks[row->kind];
}

void rodti_air_add_when(rodt_message *out, const rodt_air_limit *row, const rodt_air_finding *finding)
{
    if (row->measure == RODT_AIR_MEASURE_YES_NO) {
        rodti_message_clause(out, "when", checks[row->check].fault);
        return;
    }
    if (!rodt_ratio_given(bound_of(row, finding))) {
        rodti_message_clause(out, "when", RODT_MESSAGE_AIR_EDGE_UNDER_HALF);
        return;
    }
    add_conditions(out, row, finding);
    add_bounds(out, row, finding);
    if (rodt_ratio_given(row->per_towed_unit))
        add_figure(out, "more", row->per_towed_unit, no_bound, row->measure);
}

static void add_edge_of(rodt_message *out, const rodt_air_limit *row, const rodt_air_finding *finding)
{
    if (row->kind == RODT_AIR_KIND_USUAL)
        rodti_message_text(out, "published", row->published);
    else
        rodti_air_add_when(out, row, finding);
}

void rodti_air_add_edge(rodt_message *out, const char *name, const rodt_air_finding *finding)
{
    rodti_message_clause(out, name, code_of_rank(finding->row));
    add_edge_of(out, finding->row, finding);
}

static void edge_of_row(rodt_message *out, const rodt_air_limit *row, const rodt_air_finding *finding)
{
    bool never = finding != NULL && row->kind == RODT_AIR_KIND_USUAL && rodti_air_never_came(&finding->reading);
    rodti_message_start(out, never ? RODT_MESSAGE_AIR_NEVER_EDGE : code_of_rank(row));
    add_edge_of(out, row, finding);
}

rodt_status rodt_air_finding_edge_message(const rodt_air_finding *finding, rodt_message *out)
{
    if (finding == NULL || out == NULL || !rodti_air_can_be_said(finding))
        return RODT_E_ARGUMENT;
    if (finding->row == NULL)
        rodti_message_start(out, RODT_MESSAGE_NONE);
    else
        edge_of_row(out, finding->row, finding);
    return RODT_OK;
}

rodt_status rodt_air_limit_edge_message(const rodt_air_limit *row, rodt_message *out)
{
    if (row == NULL || out == NULL || !is_row(row))
        return RODT_E_ARGUMENT;
    edge_of_row(out, row, NULL);
    return RODT_OK;
}

rodt_status rodt_air_finding_edge_format(const rodt_air_finding *finding, char *text, size_t size, size_t *needed)
{
    rodt_message message;
    return rodti_message_say(rodt_air_finding_edge_message(finding, &message), &message, text, size, needed);
}

rodt_status rodt_air_limit_edge_format(const rodt_air_limit *row, char *text, size_t size, size_t *needed)
{
    rodt_message message;
    return rodti_message_say(rodt_air_limit_edge_message(row, &message), &message, text, size, needed);
}
