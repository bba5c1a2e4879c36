/* SPDX-License-Identifier: Apache-2.0 */
/* From wheel ends to a vehicle: their axles, what does not match on them, what to do next. */
#include "rodtravel/vehicle.h"

#include "core/always.h"
#include "core/exact.h"
#include "core/fault.h"
#include "judge/judge.h"
#include "quantity/fault.h"
#include "rules/tables.h"
#include "core/text.h"

#include <string.h>

#define NO_END SIZE_MAX

/* --- Force, as information ---------------------------------------------------------------------------- */

/* A type number is about the area of the diaphragm in square inches; a letter says nothing of the kind. */
static bool find_type(const rodt_chamber *chamber, rodt_ratio *out)
{
    int64_t type = 0;
    size_t i = 0;
    for (; i < sizeof chamber->size && chamber->size[i] != '\0'; i++) {
        if (!text_is_digit((unsigned char)chamber->size[i]))
            return false;
        type = type * 10 + (chamber->size[i] - '0');
    }
    *out = (rodt_ratio){type, 1};
    return type > 0 && i < sizeof chamber->size;
}

static rodt_status times_type(const rodt_chamber *chamber, int64_t num, int64_t den, rodt_ratio *out)
{
    rodt_ratio type, factor;
    if (chamber == NULL || out == NULL || den <= 0 || num < 0 || !find_type(chamber, &type))
        return RODT_E_ARGUMENT;
    bool made = rodti_exact_make(num, den, &factor);
    if (NEVER(!made) /* it only gets smaller */ || !rodti_exact_multiply(type, factor, out))
        return RODT_E_RANGE;
    return RODT_OK;
}

rodt_status rodt_chamber_pushrod_force(const rodt_chamber *chamber, rodt_pressure pressure, rodt_ratio *pounds)
{
    return times_type(chamber, pressure.num, pressure.den, pounds);
}

rodt_status rodt_chamber_al_factor(const rodt_chamber *chamber, rodt_length arm_length, rodt_ratio *factor)
{
    return times_type(chamber, arm_length.num, arm_length.den, factor);
}

/* --- Axles -------------------------------------------------------------------------------------------- */

static bool is_position(rodt_position position)
{
    return position.axle >= 1 && position.axle <= RODT_AXLE_NUMBER_MAX &&
           (position.side == RODT_SIDE_LEFT || position.side == RODT_SIDE_RIGHT);
}

static rodt_status refuse(rodt_error *error, rodt_field field, const char *sentence)
{
    return rodti_field_error(error, rodt_field_name(field), sentence);
}

static rodt_status set_status(rodt_error *error, rodt_status status)
{
    if (error != NULL)
        error->status = status;
    return status;
}

/* Of an array of things the error names the one, counted from 1. */
static rodt_status set_line(rodt_error *error, size_t index, rodt_status status)
{
    if (error != NULL)
        error->line = (uint32_t)(index + 1);
    return status;
}

/* The axle with the number, inserted if it is new. NULL: there are too many. */
static rodt_axle_finding *find_or_add_axle(rodt_vehicle_finding *vehicle, int16_t axle)
{
    size_t i = 0;
    while (i < vehicle->axle_count && vehicle->axles[i].axle < axle)
        i++;
    rodt_axle_finding *place = &vehicle->axles[i];
    if (i < vehicle->axle_count && place->axle == axle)
        return place;
    if (vehicle->axle_count == RODT_AXLES_MAX)
        return NULL;
    memmove(place + 1, place, (vehicle->axle_count - i) * sizeof *place);
    place->axle = axle;
    place->left = NO_END;
    place->right = NO_END;
    vehicle->axle_count++;
    return place;
}

/* A wheel end without its reading. */
static rodt_status check_end(const rodt_wheel_end *end, rodt_error *error)
{
    const char *fault = rodti_length_fault(end->arm_length);
    if (!is_position(end->position))
        return refuse(error, RODT_FIELD_POSITION, "a position is an axle of 1 to 99 and its left or right side");
    if (end->adjuster >= RODT_ADJUSTER_END)
        return refuse(error, RODT_FIELD_ADJUSTER, "an adjuster is manual, automatic or not recorded");
    if (fault != NULL)
        return refuse(error, RODT_FIELD_ARM_LENGTH, fault);
    if (!rodti_is_zero(end->reserved, COUNT_OF(end->reserved)))
        return rodti_field_error(error, "reserved", "the reserve of a wheel end is zero");
    return RODT_OK;
}

static rodt_status place_end(const rodt_wheel_end *ends, size_t i, rodt_vehicle_finding *vehicle, rodt_error *error)
{
    rodt_status status = check_end(&ends[i], error);
    if (status != RODT_OK)
        return status;
    rodt_axle_finding *axle = find_or_add_axle(vehicle, ends[i].position.axle);
    if (axle == NULL) {
        refuse(error, RODT_FIELD_POSITION, "these are more axles than a vehicle can have here");
        return set_status(error, RODT_E_RANGE);
    }
    size_t *end = ends[i].position.side == RODT_SIDE_LEFT ? &axle->left : &axle->right;
    if (*end != NO_END)
        return refuse(error, RODT_FIELD_POSITION, "this position is there twice");
    *end = i;
    return RODT_OK;
}

static rodt_status place_ends(const rodt_wheel_end *ends, size_t count, rodt_vehicle_finding *vehicle,
                              rodt_error *error)
{
    for (size_t i = 0; i < count; i++) {
        rodt_status status = place_end(ends, i, vehicle, error);
        if (status != RODT_OK)
            return set_line(error, i, status);
    }
    return RODT_OK;
}

/* --- What does not match on an axle ------------------------------------------------------------------- */

static bool texts_differ(const char *a, const char *b)
{
    return a[0] != '\0' && b[0] != '\0' && strncmp(a, b, RODT_SIZE_TEXT_SIZE) != 0;
}

/* The stroke class whose limit judged: marks that contradict each other are judged as standard, whatever they say. */
static rodt_stroke_class judged_class(const rodt_finding *finding)
{
    const rodt_limit *row = finding->law_row;
    bool said = row != NULL && row->stroke_class != RODT_STROKE_CLASS_ANY;
    return (rodt_stroke_class)(said ? row->stroke_class : finding->chamber.stroke_class);
}

static uint32_t compare_chambers(const rodt_finding *left_end, const rodt_finding *right_end)
{
    const rodt_chamber *left = &left_end->chamber, *right = &right_end->chamber;
    rodt_stroke_class left_class = judged_class(left_end), right_class = judged_class(right_end);
    uint32_t mismatches = 0;
    if (texts_differ(left->size, right->size))
        mismatches |= RODT_AXLE_MISMATCH_SIZE_DIFFERS;
    if (texts_differ(left->spring_size, right->spring_size))
        mismatches |= RODT_AXLE_MISMATCH_SPRING_DIFFERS;
    if (left->family != RODT_FAMILY_UNKNOWN && right->family != RODT_FAMILY_UNKNOWN && left->family != right->family)
        mismatches |= RODT_AXLE_MISMATCH_FAMILY_DIFFERS;
    if (left_class != RODT_STROKE_CLASS_UNKNOWN && right_class != RODT_STROKE_CLASS_UNKNOWN &&
        left_class != right_class)
        mismatches |= RODT_AXLE_MISMATCH_CLASS_DIFFERS;
    return mismatches;
}

/* Half an inch is a choice of this library: no law has a figure for it. A rod that did not move is named by itself, and
 * a stroke that is not given differs from none. */
static void compare_strokes(const rodt_finding *left, const rodt_finding *right, rodt_axle_finding *axle)
{
    const rodt_length bound = {1, 2};
    rodt_length a = left->applied_stroke, b = right->applied_stroke;
    bool ordered = rodt_length_compare(a, b) >= 0;
    if (rodt_length_subtract(ordered ? a : b, ordered ? b : a, &axle->stroke_difference) != RODT_OK)
        return;
    bool moved = left->verdict != RODT_VERDICT_INOPERATIVE && right->verdict != RODT_VERDICT_INOPERATIVE;
    if (moved && rodt_length_compare(axle->stroke_difference, bound) > 0)
        axle->mismatches |= RODT_AXLE_MISMATCH_STROKES_DIFFER;
}

static void compare_arms(const rodt_wheel_end *left, const rodt_wheel_end *right, rodt_axle_finding *axle)
{
    if (rodt_length_given(left->arm_length) && rodt_length_given(right->arm_length) &&
        rodt_length_compare(left->arm_length, right->arm_length) != 0)
        axle->mismatches |= RODT_AXLE_MISMATCH_ARM_DIFFERS;
    rodt_ratio a = axle->al_left, b = axle->al_right;
    if (rodt_ratio_given(a) && rodt_ratio_given(b) && (a.num != b.num || a.den != b.den))
        axle->mismatches |= RODT_AXLE_MISMATCH_TORQUE_DIFFERS;
}

static bool is_inoperative(const rodt_finding *findings, size_t end)
{
    return end != NO_END && findings[end].verdict == RODT_VERDICT_INOPERATIVE;
}

/* A factor that cannot be given, for a letter or for want of an arm, stays not given. */
static void find_factor(const rodt_wheel_end *ends, const rodt_finding *findings, size_t end, rodt_ratio *factor)
{
    rodt_ratio made;
    if (end != NO_END && rodt_chamber_al_factor(&findings[end].chamber, ends[end].arm_length, &made) == RODT_OK)
        *factor = made;
}

static void judge_axle(const rodt_wheel_end *ends, const rodt_finding *findings, rodt_axle_finding *axle)
{
    find_factor(ends, findings, axle->left, &axle->al_left);
    find_factor(ends, findings, axle->right, &axle->al_right);
    if (axle->axle == 1 && (is_inoperative(findings, axle->left) || is_inoperative(findings, axle->right)))
        axle->mismatches |= RODT_AXLE_MISMATCH_STEERING_DEAD;
    if (axle->left == NO_END || axle->right == NO_END) {
        axle->mismatches |= RODT_AXLE_MISMATCH_END_MISSING;
        return;
    }
    axle->mismatches |= compare_chambers(&findings[axle->left], &findings[axle->right]);
    compare_strokes(&findings[axle->left], &findings[axle->right], axle);
    compare_arms(&ends[axle->left], &ends[axle->right], axle);
}

/* --- What to do next ---------------------------------------------------------------------------------- */

static rodt_advice advise(rodt_verdict verdict, rodt_adjuster adjuster)
{
    static const rodt_advice over[RODT_ADJUSTER_END] = {[RODT_ADJUSTER_NOT_RECORDED] = RODT_ADVICE_FIND_ADJUSTER,
                                                        [RODT_ADJUSTER_MANUAL] = RODT_ADVICE_ADJUST,
                                                        [RODT_ADJUSTER_AUTOMATIC] = RODT_ADVICE_FIND_FAULT};
    static const rodt_advice others[RODT_VERDICT_END] = {[RODT_VERDICT_UNDETERMINED] = RODT_ADVICE_MEASURE,
                                                         [RODT_VERDICT_IN_ADJUSTMENT] = RODT_ADVICE_NONE,
                                                         [RODT_VERDICT_INOPERATIVE] = RODT_ADVICE_REPAIR};
    return verdict == RODT_VERDICT_OUT_OF_ADJUSTMENT ? over[adjuster] : others[verdict];
}

/* Beside a brake that is out, the shorter stroke is the good one and no sign of anything. Of a rod that hardly moved
 * its finding says already what to look for. */
static void advise_axle(const rodt_axle_finding *axle, const rodt_finding *findings, rodt_advice *advice)
{
    if ((axle->mismatches & RODT_AXLE_MISMATCH_STROKES_DIFFER) == 0)
        return;
    const rodt_finding *left = &findings[axle->left], *right = &findings[axle->right];
    if (left->verdict != RODT_VERDICT_IN_ADJUSTMENT || right->verdict != RODT_VERDICT_IN_ADJUSTMENT)
        return;
    size_t shorter = rodt_length_compare(left->applied_stroke, right->applied_stroke) < 0 ? axle->left : axle->right;
    if (!rodt_finding_has(&findings[shorter], RODT_REASON_HARDLY_MOVED))
        advice[shorter] = RODT_ADVICE_LOOK;
}

/* --- The vehicle -------------------------------------------------------------------------------------- */

static void count_finding(const rodt_finding *finding, const rodt_finding *first, rodt_vehicle_finding *vehicle)
{
    vehicle->in_adjustment += finding->verdict == RODT_VERDICT_IN_ADJUSTMENT;
    vehicle->out_of_adjustment += finding->verdict == RODT_VERDICT_OUT_OF_ADJUSTMENT;
    vehicle->inoperative += finding->verdict == RODT_VERDICT_INOPERATIVE;
    vehicle->undetermined += finding->verdict == RODT_VERDICT_UNDETERMINED;
    vehicle->mixed_days += rodt_date_compare(finding->day, first->day) != 0;
}

/* An axle has two ends, and axles are counted through every unit: what was not given up to the last axle is a brake
 * that was not measured. */
static rodt_status count_brakes(const rodt_finding *findings, size_t count, uint32_t brakes,
                                rodt_vehicle_finding *vehicle, rodt_error *error)
{
    rodt_tally tally = {0};
    for (size_t i = 0; i < count; i++) {
        rodt_status status = rodt_tally_add(&tally, &findings[i], error);
        if (status != RODT_OK)
            return set_line(error, i, status);
        count_finding(&findings[i], &findings[0], vehicle);
    }
    uint32_t last = (uint32_t)vehicle->axles[vehicle->axle_count - 1].axle;
    return rodt_tally_judge(&tally, brakes > 0 ? brakes : 2 * last, &vehicle->count, error);
}

static void judge_axles(const rodt_wheel_end *ends, const rodt_finding *findings, rodt_advice *advice,
                        rodt_vehicle_finding *vehicle)
{
    for (size_t i = 0; i < vehicle->axle_count; i++) {
        judge_axle(ends, findings, &vehicle->axles[i]);
        vehicle->mismatched_axles += (vehicle->axles[i].mismatches & RODT_AXLE_MISMATCH_LAW) != 0;
        if (advice != NULL)
            advise_axle(&vehicle->axles[i], findings, advice);
    }
}

static rodt_status check_arguments(const rodt_wheel_end *ends, size_t count, const rodt_finding *findings,
                                   const rodt_vehicle_finding *out, rodt_error *error)
{
    if (ends == NULL || count == 0)
        return rodti_field_error(error, ends == NULL ? "ends" : "count", "one wheel end is needed at least");
    if (findings == NULL || out == NULL)
        return rodti_field_error(error, "", "findings of the wheel ends and room for that of the vehicle are needed");
    return RODT_OK;
}

/* One vehicle is judged by one law: the limits of two rule sets cannot be counted together. */
static rodt_status check_findings(const rodt_finding *findings, size_t count, rodt_error *error)
{
    for (size_t i = 0; i < count; i++) {
        const rodt_finding *finding = &findings[i];
        if (!rodti_is_zero(finding->reserved, COUNT_OF(finding->reserved)))
            return set_line(error, i, rodti_field_error(error, "reserved", "the reserve of a finding is zero"));
        if (finding->rules == NULL || finding->rules != findings[0].rules)
            return set_line(error, i,
                            rodti_field_error(error, "rules", "all findings of a vehicle are of one rule set"));
    }
    return RODT_OK;
}

rodt_status rodt_vehicle_combine(const rodt_wheel_end *ends, size_t count, uint32_t brakes,
                                 const rodt_finding *findings, rodt_advice *advice, rodt_vehicle_finding *out,
                                 rodt_error *error)
{
    rodt_vehicle_finding vehicle;
    rodt_status status = check_arguments(ends, count, findings, out, error);
    if (status != RODT_OK)
        return status;
    memset(&vehicle, 0, sizeof vehicle);
    status = place_ends(ends, count, &vehicle, error);
    if (status == RODT_OK)
        status = check_findings(findings, count, error);
    if (status == RODT_OK)
        status = count_brakes(findings, count, brakes, &vehicle, error);
    if (status != RODT_OK)
        return status;
    for (size_t i = 0; advice != NULL && i < count; i++)
        advice[i] = advise((rodt_verdict)findings[i].verdict, (rodt_adjuster)ends[i].adjuster);
    judge_axles(ends, findings, advice, &vehicle);
    *out = vehicle;
    return RODT_OK;
}

/* Results are untouched on failure, so all that can fail is done once before the first finding is written. */
static rodt_status check_all(const rodt_wheel_end *ends, size_t count, uint32_t brakes, const rodt_rules *rules,
                             rodt_error *error)
{
    rodt_vehicle_finding vehicle;
    rodt_tally tally = {.brakes = (uint32_t)count};
    memset(&vehicle, 0, sizeof vehicle);
    rodt_status status = place_ends(ends, count, &vehicle, error);
    if (status == RODT_OK)
        status = rodt_tally_judge(&tally, brakes, &vehicle.count, error);
    for (size_t i = 0; i < count && status == RODT_OK; i++) {
        rodt_finding finding;
        status = rodt_reading_judge(&ends[i].reading, rules, &finding, error);
        if (status != RODT_OK)
            set_line(error, i, status);
    }
    return status;
}

rodt_status rodt_vehicle_judge(const rodt_wheel_end *ends, size_t count, uint32_t brakes, const rodt_rules *rules,
                               rodt_finding *findings, rodt_advice *advice, rodt_vehicle_finding *out,
                               rodt_error *error)
{
    rodt_status status = check_arguments(ends, count, findings, out, error);
    if (status == RODT_OK && rules == NULL)
        status = rodti_rules_error(error);
    if (status == RODT_OK)
        status = check_all(ends, count, brakes, rules, error);
    for (size_t i = 0; i < count && status == RODT_OK; i++)
        status = rodti_reading_judge(&ends[i].reading, rules, &findings[i]);
    return status == RODT_OK ? rodt_vehicle_combine(ends, count, brakes, findings, advice, out, error) : status;
}
