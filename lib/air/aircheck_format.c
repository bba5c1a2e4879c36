/* SPDX-License-Identifier: Apache-2.0 */
/* An air check in words: what was found, what is asked for, what would have been defective. */
#include "air/aircheck.h"
#include "core/text.h"

#include <string.h>

/* --- Words ------------------------------------------------------------------------------------------- */

static const struct check_words {
    const char *found; /* before the measured figure; of a yes/no check what a yes says */
    const char *other; /* of a yes/no check: what a no says, and how a defect reads */
    const char *fault;
} checks[RODT_AIR_CHECK_END] = {
    [RODT_AIR_CHECK_NONE] = {"", "", ""},
    [RODT_AIR_CHECK_WARNING] = {"the low-pressure warning came on at ", "", ""},
    [RODT_AIR_CHECK_BUILD_UP] = {" took ", "", ""},
    [RODT_AIR_CHECK_CUT_OUT] = {"the governor cut out at ", "", ""},
    [RODT_AIR_CHECK_CUT_IN] = {"the governor cut in at ", "", ""},
    [RODT_AIR_CHECK_LOSS_RELEASED] = {"brakes released, ", "", ""},
    [RODT_AIR_CHECK_LOSS_APPLIED] = {"brakes applied, ", "", ""},
    [RODT_AIR_CHECK_RESERVE] = {"", "", ""},
    [RODT_AIR_CHECK_SPRING_BRAKE] = {"the parking brake held",
                                 "the parking brake did not hold", "if the parking brake does not hold"},
    [RODT_AIR_CHECK_TRACTOR_PROTECTION] = {"the tractor kept ", "", ""},
    [RODT_AIR_CHECK_SUPPLY_VALVE] = {"the trailer supply valve closed at ", "", ""},
    [RODT_AIR_CHECK_PARKING_VALVE] = {"the parking valve popped out at ", "", ""},
    [RODT_AIR_CHECK_DRAIN] = {"the drain valves move freely and the reservoirs emptied",
                          "a drain valve is stuck or a reservoir did not empty",
                          "if a drain valve is stuck or a reservoir does not empty"},
    [RODT_AIR_CHECK_AUDIBLE_LEAK] = {"a leak was heard", "no leak was heard",
                                 "if a leak is heard"},
    [RODT_AIR_CHECK_CONTAMINATION] = {"oil or sludge came out of a reservoir", "no oil or sludge came out",
                                  "if oil or sludge comes out"},
};

/* --- Figures ----------------------------------------------------------------------------------------- */

/* A gauge is divided into halves of halves; other parts are written as decimals. */
static bool is_plain(rodt_ratio value) { return (value.den & (value.den - 1)) == 0 && value.den <= 16; }

#define DIGITS_MAX 6u

/* Digits after the point that write the value exactly; DIGITS_MAX + 1 = it takes more. */
static unsigned exact_digits(rodt_ratio value)
{
    unsigned digits = 0;
    while (value.den != 1 && digits <= DIGITS_MAX) {
        if (!rodti_exact_multiply(value, (rodt_ratio){10, 1}, &value))
            return DIGITS_MAX + 1;
        digits++;
    }
    return digits;
}

/* The next digit of rest / den, and what it leaves. Ten times the rest may not fit, so it is added ten times. */
static int64_t take_digit(int64_t *rest, int64_t den)
{
    int64_t digit = 0, left = 0;
    for (int i = 0; i < 10; i++) {
        bool full = left >= den - *rest;
        left = full ? left - (den - *rest) : left + *rest;
        digit += full;
    }
    *rest = left;
    return digit;
}

/* No figure of an air check is below zero, and there is at least one digit. A half is rounded up. */
static void put_decimal(text_writer *writer, rodt_ratio value, unsigned digits)
{
    int64_t whole = value.num / value.den, rest = value.num % value.den, part = 0, scale = 1;
    for (unsigned i = 0; i < digits; i++) {
        part = part * 10 + take_digit(&rest, value.den);
        scale *= 10;
    }
    part += rest >= value.den - rest;
    if (part == scale) {
        whole++;
        part = 0;
    }
    rodti_text_putf(writer, "%lld.%0*lld", (long long)whole, (int)digits, (long long)part);
}

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

static void put_number(text_writer *writer, rodt_ratio value, rodt_ratio bound)
{
    char text[RODT_LENGTH_TEXT_SIZE];
    unsigned digits = exact_digits(value);
    if (is_plain(value)) {
        if (rodt_pressure_format((rodt_pressure){value.num, value.den}, text, sizeof text, NULL) == RODT_OK)
            rodti_text_put(writer, text);
    } else if (digits <= 3) {
        put_decimal(writer, value, digits);
    } else {
        rodti_text_put(writer, "about ");
        put_decimal(writer, value, telling_digits(value, bound));
    }
}

static void put_figure(text_writer *writer, rodt_ratio value, rodt_ratio bound, rodt_air_measure measure)
{
    put_number(writer, value, bound);
    rodti_text_putf(writer, " %s", rodt_air_measure_name(measure));
}

/* A pressure that is even in kPa and not in psi was read in kPa. */
static void put_pressure(text_writer *writer, rodt_pressure pressure)
{
    const rodt_ratio none = {0, 0};
    rodt_ratio psi = {pressure.num, pressure.den}, kpa;
    rodt_pressure one;
    bool in_kpa = !is_plain(psi) && exact_digits(psi) > 3 && rodt_pressure_from_kpa(1, 1, &one) == RODT_OK &&
                  rodti_exact_divide(psi, EXACT(one), &kpa) && exact_digits(kpa) <= 3;
    put_figure(writer, in_kpa ? kpa : psi, none, in_kpa ? RODT_AIR_MEASURE_KPA : RODT_AIR_MEASURE_PSI);
}

/* --- What was found ---------------------------------------------------------------------------------- */

static void put_span(text_writer *writer, rodt_air_span span, rodt_pressure start, rodt_pressure stop)
{
    static const char *const events[] = {"", "from where the warning stops to the greatest pressure",
                                         "from after five full applications to the greatest pressure",
                                         "from after a full application back to the pressure before it"};
    if (span != RODT_AIR_SPAN_PRESSURES) {
        rodti_text_put(writer, events[span]);
        return;
    }
    if (!rodt_pressure_given(start) || !rodt_pressure_given(stop)) {
        rodti_text_put(writer, "the build-up");
        return;
    }
    put_pressure(writer, start);
    rodti_text_put(writer, " to ");
    put_pressure(writer, stop);
}

/* "50 psi to 90 psi or 345 kPa to 620 kPa" */
static void put_row_span(text_writer *writer, const rodt_air_limit *row)
{
    put_span(writer, row->span, row->start, row->stop);
    if (!rodt_pressure_given(row->start_kpa))
        return;
    rodti_text_put(writer, " or ");
    put_span(writer, row->span, row->start_kpa, row->stop_kpa);
}

/* "110 psi to 107 psi" */
static void put_fall(text_writer *writer, const rodt_air_reading *reading)
{
    if (!rodt_pressure_given(reading->before) || !rodt_pressure_given(reading->after)) {
        rodti_text_put(writer, "the pressure was not read twice");
        return;
    }
    put_pressure(writer, reading->before);
    rodti_text_put(writer, " to ");
    put_pressure(writer, reading->after);
}

static void put_seconds(text_writer *writer, rodt_ratio seconds)
{
    const rodt_ratio minute = {60, 1};
    put_number(writer, (rodt_ratio_given(seconds) ? seconds : minute), (rodt_ratio){0, 0});
    rodti_text_put(writer, " s");
}

static void put_measured(text_writer *writer, const rodt_air_finding *finding)
{
    if (!rodt_ratio_given(finding->measured))
        return;
    rodti_text_put(writer, " is ");
    put_figure(writer, finding->measured, finding->allowed, finding->row->measure);
}

static void put_reading(text_writer *writer, const rodt_air_finding *finding)
{
    const rodt_air_reading *reading = &finding->reading;
    const struct check_words *words = &checks[reading->check];
    if (!rodt_pressure_given(reading->pressure)) {
        rodti_text_put(writer, rodt_air_check_title(reading->check));
        return;
    }
    bool below = finding->row != NULL && finding->row->below_cut_out && rodt_ratio_given(finding->measured);
    rodti_text_put(writer, below ? "the governor cut in " : words->found);
    if (finding->row != NULL && rodt_ratio_given(finding->measured))
        put_figure(writer, finding->measured, finding->allowed, finding->row->measure);
    else
        put_pressure(writer, reading->pressure);
    rodti_text_put(writer, below ? " below its cut-out" : "");
}

static void put_found(text_writer *writer, const rodt_air_finding *finding)
{
    const rodt_air_reading *reading = &finding->reading;
    const struct check_words *words = &checks[reading->check];
    if (words->fault[0] != '\0') {
        rodti_text_put(writer, reading->answer == RODT_RECORDED_YES  ? words->found
                         : reading->answer == RODT_RECORDED_NO ? words->other
                                                               : rodt_air_check_title(reading->check));
    } else if (reading->check == RODT_AIR_CHECK_BUILD_UP) {
        put_span(writer, reading->span, reading->before, reading->after);
        rodti_text_put(writer, rodt_ratio_given(reading->seconds) ? words->found : " was not timed");
        if (rodt_ratio_given(reading->seconds))
            put_seconds(writer, reading->seconds);
    } else if (reading->check == RODT_AIR_CHECK_RESERVE) {
        put_fall(writer, reading);
        put_measured(writer, finding);
    } else if (reading->check == RODT_AIR_CHECK_LOSS_RELEASED || reading->check == RODT_AIR_CHECK_LOSS_APPLIED) {
        rodti_text_put(writer, words->found);
        put_fall(writer, reading);
        rodti_text_put(writer, " in ");
        put_seconds(writer, reading->seconds);
        put_measured(writer, finding);
    } else {
        put_reading(writer, finding);
    }
}

/* --- What is asked for ------------------------------------------------------------------------------- */

/* The bound that judged; of a row alone, its own figure. */
static rodt_ratio bound_of(const rodt_air_limit *row, const rodt_air_finding *finding)
{
    bool judged = finding != NULL && rodt_ratio_given(finding->allowed) && row->comparison != RODT_COMPARISON_BETWEEN;
    return (judged ? finding->allowed : row->value);
}

static void put_required(text_writer *writer, const rodt_air_finding *finding)
{
    static const char *const words[] = {[RODT_COMPARISON_LESS_THAN] = "less than ",
                                        [RODT_COMPARISON_NOT_MORE_THAN] = "not more than ",
                                        [RODT_COMPARISON_MORE_THAN] = "more than ",
                                        [RODT_COMPARISON_NOT_LESS_THAN] = "not less than ",
                                        [RODT_COMPARISON_BETWEEN] = ""};
    const rodt_ratio none = {0, 0};
    const rodt_air_limit *row = finding->row;
    if (row->comparison == RODT_COMPARISON_MUST_BE_YES || row->comparison == RODT_COMPARISON_MUST_BE_NO) {
        rodti_text_put(writer, row->published);
        return;
    }
    rodti_text_put(writer, words[row->comparison]);
    if (row->comparison == RODT_COMPARISON_BETWEEN && rodti_exact_compare(row->value, row->upper) == 0) {
        rodti_text_put(writer, "about ");
    } else if (row->comparison == RODT_COMPARISON_BETWEEN) {
        put_number(writer, row->value, none);
        rodti_text_put(writer, " to ");
    }
    rodt_ratio bound = row->comparison == RODT_COMPARISON_BETWEEN ? row->upper : bound_of(row, finding);
    put_figure(writer, bound, none, row->measure);
    rodti_text_put(writer, row->below_cut_out ? " below the cut-out" : "");
}

static void put_missing(text_writer *writer, const rodt_air_finding *finding)
{
    static const char *const words[] = {
        [RODT_AIR_MISSING_NOTHING] = "",
        [RODT_AIR_MISSING_ROW] = " has no figure for this check and vehicle",
        [RODT_AIR_MISSING_VEHICLE] = "single vehicle, combination or bus decides",
        [RODT_AIR_MISSING_BUILT] = "the day of build decides",
        [RODT_AIR_MISSING_VOLUME] = "the actual and the required reservoir volume decide",
        [RODT_AIR_MISSING_SPAN] = "the rule times another span, ",
        [RODT_AIR_MISSING_VALUE] = "a pressure, a time or an answer of the check is missing",
        [RODT_AIR_MISSING_SENSE] = "the readings contradict each other: read them again",
        [RODT_AIR_MISSING_CUT_OUT] = "the governor's cut-out decides",
        [RODT_AIR_MISSING_APPLICATIONS] = "the rule asks for another number of full applications, ",
        [RODT_AIR_MISSING_OTHER_WAY] = "this way fails, but the rule accepts another way too: check that one"};
    if (finding->missing == RODT_AIR_MISSING_ROW)
        rodti_text_put(writer, rodt_rules_id(finding->rules));
    bool is_uncounted = finding->missing == RODT_AIR_MISSING_VEHICLE &&
                        finding->reading.vehicle == RODT_VEHICLE_CLASS_COMBINATION;
    rodti_text_put(writer, is_uncounted ? "the number of towed units decides" : words[finding->missing]);
    if (finding->row != NULL && finding->missing == RODT_AIR_MISSING_SPAN)
        put_row_span(writer, finding->row);
    if (finding->row != NULL && finding->missing == RODT_AIR_MISSING_APPLICATIONS)
        rodti_text_putf(writer, "%d", finding->row->applications);
}

static const char *rank_of_defect(const rodt_air_finding *finding)
{
    if (finding->major)
        return ", a major defect";
    return finding->minor ? ", a minor defect" : "";
}

static void put_result(text_writer *writer, const rodt_air_finding *finding)
{
    const rodt_air_limit *row = finding->row;
    if (finding->result == RODT_AIR_RESULT_NOTED)
        rodti_text_put(writer, row->kind == RODT_AIR_KIND_USUAL ? "; usual: " : "; a major defect unless: ");
    else
        rodti_text_put(writer, row->measure == RODT_AIR_MEASURE_YES_NO ? "; the rule: " : "; required: ");
    put_required(writer, finding);
    if (finding->at_limit && finding->result != RODT_AIR_RESULT_NOTED)
        rodti_text_putf(writer, ", and this is exactly the edge, which %s",
                  finding->result == RODT_AIR_RESULT_GOOD ? "passes" : "fails");
    rodti_text_putf(writer, ": %s%s", rodt_air_result_name(finding->result), rank_of_defect(finding));
    if (finding->result == RODT_AIR_RESULT_NOTED)
        rodti_text_put(writer, row->kind == RODT_AIR_KIND_USUAL ? ", which is not a limit"
                                                                : ", smaller defects are not judged");
}

rodt_status rodt_air_finding_format(const rodt_air_finding *finding, char *text, size_t size, size_t *needed)
{
    if (finding == NULL || (unsigned)finding->reading.check >= RODT_AIR_CHECK_END)
        return RODT_E_ARGUMENT;
    text_writer writer;
    rodti_text_begin(&writer);
    if (finding->result == RODT_AIR_RESULT_NOT_DONE) {
        rodti_text_putf(&writer, "%s: not done", rodt_air_check_title(finding->reading.check));
        return rodti_text_copy_out(&writer, text, size, needed);
    }
    put_found(&writer, finding);
    if (finding->result == RODT_AIR_RESULT_UNDETERMINED) {
        rodti_text_put(&writer, ": undetermined, ");
        put_missing(&writer, finding);
    } else {
        put_result(&writer, finding);
    }
    if (finding->row != NULL && finding->row->evidence != RODT_EVIDENCE_CHECKED)
        rodti_text_putf(&writer, " (%s %s)", finding->row->measure == RODT_AIR_MEASURE_YES_NO ? "rule" : "figure",
                  rodt_evidence_text(finding->row->evidence));
    return rodti_text_copy_out(&writer, text, size, needed);
}

/* --- What would have been defective ------------------------------------------------------------------ */

static void put_bounds(text_writer *writer, const rodt_air_limit *row, const rodt_air_finding *finding)
{
    static const char *const before[] = {[RODT_COMPARISON_LESS_THAN] = "at ",
                                         [RODT_COMPARISON_NOT_MORE_THAN] = "above ",
                                         [RODT_COMPARISON_MORE_THAN] = "at ",
                                         [RODT_COMPARISON_NOT_LESS_THAN] = "below ",
                                         [RODT_COMPARISON_BETWEEN] = "below "};
    const rodt_ratio none = {0, 0};
    rodti_text_put(writer, before[row->comparison]);
    put_figure(writer, bound_of(row, finding), none, row->measure);
    rodti_text_put(writer, row->comparison == RODT_COMPARISON_LESS_THAN   ? " or more"
                     : row->comparison == RODT_COMPARISON_MORE_THAN ? " or below"
                                                         : "");
    if (row->comparison == RODT_COMPARISON_BETWEEN) {
        rodti_text_put(writer, " or above ");
        put_figure(writer, row->upper, none, row->measure);
    }
}

/* What a row alone cannot put into its figure. */
static void put_conditions(text_writer *writer, const rodt_air_limit *row, const rodt_air_finding *finding)
{
    bool judged = finding != NULL && rodt_ratio_given(finding->allowed);
    if (row->by_volume && !judged)
        rodti_text_put(writer, " x actual / required volume");
    if (row->half_cut_out && !(judged && rodt_pressure_given(finding->reading.cut_out)))
        rodti_text_put(writer, ", or below half of the governor's cut-out if that is less");
    if (row->below_cut_out)
        rodti_text_put(writer, " under the cut-out");
    if (rodt_ratio_given(row->per_towed_unit) && !judged) {
        rodti_text_put(writer, ", ");
        put_figure(writer, row->per_towed_unit, (rodt_ratio){0, 0}, row->measure);
        rodti_text_put(writer, " more for each towed unit after the first");
    }
}

static void put_edge(text_writer *writer, const rodt_air_limit *row, const rodt_air_finding *finding)
{
    if (row->kind == RODT_AIR_KIND_USUAL) {
        rodti_text_putf(writer, "nothing is defective by a usual figure: %s", row->published);
        return;
    }
    static const char *const ranks[] = {[RODT_AIR_KIND_LIMIT] = "defective ", [RODT_AIR_KIND_MAJOR] = "major defect ",
                                        [RODT_AIR_KIND_LIMIT_MAJOR] = "major defect ",
                                        [RODT_AIR_KIND_LIMIT_MINOR] = "minor defect ",
                                        [RODT_AIR_KIND_EITHER] = "defective "};
    rodti_text_put(writer, ranks[row->kind]);
    if (row->measure == RODT_AIR_MEASURE_YES_NO) {
        rodti_text_put(writer, checks[row->check].fault);
        return;
    }
    put_bounds(writer, row, finding);
    put_conditions(writer, row, finding);
    rodti_text_put(writer, row->kind == RODT_AIR_KIND_EITHER ? ", unless another way passes" : "");
}

rodt_status rodt_air_edge_format(const rodt_air_finding *finding, char *text, size_t size, size_t *needed)
{
    if (finding == NULL)
        return RODT_E_ARGUMENT;
    text_writer writer;
    rodti_text_begin(&writer);
    if (finding->row != NULL)
        put_edge(&writer, finding->row, finding);
    return rodti_text_copy_out(&writer, text, size, needed);
}

rodt_status rodt_air_limit_edge_format(const rodt_air_limit *row, char *text, size_t size, size_t *needed)
{
    if (row == NULL)
        return RODT_E_ARGUMENT;
    text_writer writer;
    rodti_text_begin(&writer);
    put_edge(&writer, row, NULL);
    return rodti_text_copy_out(&writer, text, size, needed);
}
