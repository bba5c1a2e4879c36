/* SPDX-License-Identifier: Apache-2.0 */
/* The vehicle as a whole: axles that do not match, what to do next, scenes from the road, force. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <string.h>

#include "rodtravel/rodtravel.h"

#define COUNT_OF(array) (sizeof(array) / sizeof((array)[0]))
#define ENDS_MAX 100

static rodt_length inches(int64_t num, int64_t den)
{
    rodt_length length;
    assert_int_equal(rodt_length_from_inches(num, den, &length), RODT_OK);
    return length;
}

/* A wheel end that matches its neighbour; the stroke in 16ths of an inch. */
static rodt_wheel_end end(const char *position, const char *chamber, int64_t stroke)
{
    rodt_wheel_end made = {0};
    assert_int_equal(rodt_position_parse_n(position, strlen(position), &made.position, NULL), RODT_OK);
    assert_int_equal(rodt_chamber_parse(chamber, &made.reading.chamber, NULL), RODT_OK);
    made.reading.released = inches(2, 1);
    made.reading.applied = inches(32 + stroke, 16);
    assert_int_equal(rodt_pressure_from_psi(95, 1, &made.reading.pressure), RODT_OK);
    assert_int_equal(rodt_date_make(2024, 5, 6, &made.reading.day), RODT_OK);
    return made;
}

/* As many wheel ends as there are axles' ends, all with the same stroke. */
static void fill(rodt_wheel_end *ends, size_t count, const char *chamber, int64_t stroke)
{
    for (size_t i = 0; i < count; i++) {
        ends[i] = end("1L", chamber, stroke);
        ends[i].position.axle = (int16_t)(i / 2 + 1);
        ends[i].position.side = i % 2 == 0 ? RODT_SIDE_LEFT : RODT_SIDE_RIGHT;
    }
}

static rodt_finding findings[ENDS_MAX];
static rodt_advice advice[ENDS_MAX];

static rodt_vehicle_finding judged(const rodt_wheel_end *ends, size_t count, uint32_t brakes)
{
    rodt_vehicle_finding vehicle;
    memset(&vehicle, 0xA5, sizeof vehicle);
    assert_int_equal(
        rodt_vehicle_judge(ends, count, brakes, rodt_rules_find("us-fmcsr"), findings, advice, &vehicle, NULL), RODT_OK);
    return vehicle;
}

static rodt_axle_finding pair(rodt_wheel_end left, rodt_wheel_end right)
{
    const rodt_wheel_end ends[] = {left, right};
    return judged(ends, 2, 0).axles[0];
}

static void set_stroke(rodt_wheel_end *wheel_end, int64_t stroke)
{
    wheel_end->reading.applied = inches(32 + stroke, 16);
}

static void assert_ratio(rodt_ratio ratio, int64_t num, int64_t den)
{
    assert_true(ratio.num == num && ratio.den == den);
}

/* --- Axles ------------------------------------------------------------------------------------------------ */

static void axles_are_put_together_in_any_order(void **state)
{
    (void)state;
    const rodt_wheel_end ends[] = {end("3R", "30 standard", 24), end("1L", "20 standard", 24),
                                   end("3L", "30 standard", 24), end("2R", "30 standard", 24),
                                   end("1R", "20 standard", 24)};
    rodt_vehicle_finding vehicle = judged(ends, COUNT_OF(ends), 6);
    assert_int_equal(vehicle.axle_count, 3);
    static const size_t places[3][2] = {{1, 4}, {SIZE_MAX, 3}, {2, 0}};
    for (size_t i = 0; i < 3; i++) {
        assert_int_equal(vehicle.axles[i].axle, i + 1);
        assert_true(vehicle.axles[i].left == places[i][0] && vehicle.axles[i].right == places[i][1]);
    }
    assert_int_equal(vehicle.axles[1].mismatches, RODT_AXLE_MISMATCH_END_MISSING);
    assert_int_equal(vehicle.axles[0].mismatches | vehicle.axles[2].mismatches, 0);
    assert_int_equal(vehicle.count.unmeasured, 1);
    assert_int_equal(vehicle.in_adjustment, 5);
    assert_int_equal(vehicle.count.outcome, RODT_OUTCOME_BELOW_CRITERION); /* one open brake of six is 16 2/3 % */
    assert_int_equal(vehicle.mismatched_axles, 0);
    for (size_t i = 0; i < sizeof vehicle.axles[3]; i++) /* beyond the last one there is nothing */
        assert_int_equal(((const unsigned char *)&vehicle.axles[3])[i], 0);
}

/* 49 CFR 393.47(b). */
static void chambers_of_an_axle(void **state)
{
    (void)state;
    static const struct {
        const char *left, *right;
        uint32_t mismatches;
    } cases[] = {
        {"30 standard", "30 standard", 0},
        {"24 standard", "30 standard", RODT_AXLE_MISMATCH_SIZE_DIFFERS},
        {"24/30 standard", "24/24 standard", RODT_AXLE_MISMATCH_SPRING_DIFFERS},
        {"24/30 standard", "30/24 standard", RODT_AXLE_MISMATCH_SIZE_DIFFERS | RODT_AXLE_MISMATCH_SPRING_DIFFERS},
        {"30/30 standard", "30 standard", 0}, /* nobody wrote down the chamber behind it */
        {"30 standard", "30/30 standard", 0},
        {"clamp 30 standard", "roto 30", RODT_AXLE_MISMATCH_FAMILY_DIFFERS},
        {"roto 30", "clamp 30 standard", RODT_AXLE_MISMATCH_FAMILY_DIFFERS},
        {"30 standard", "roto 30", RODT_AXLE_MISMATCH_FAMILY_DIFFERS}, /* judged as clamp */
        {"30 standard", "30 long", RODT_AXLE_MISMATCH_CLASS_DIFFERS},
        {"30", "30 long", RODT_AXLE_MISMATCH_CLASS_DIFFERS}, /* judged as standard */
        {"30", "30 standard", 0},
        {"bolt B", "bolt C", RODT_AXLE_MISMATCH_SIZE_DIFFERS},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_axle_finding axle = pair(end("1L", cases[i].left, 24), end("1R", cases[i].right, 24));
        if (axle.mismatches != cases[i].mismatches)
            fail_msg("%s and %s: %x", cases[i].left, cases[i].right, (unsigned)axle.mismatches);
    }
}

/* The limits that judged are compared: marks that contradict each other are judged as standard. */
static void classes_that_were_judged(void **state)
{
    (void)state;
    static const struct {
        const char *left, *right;
        uint32_t mismatches;
    } cases[] = {{"30 long", "30 standard", 0}, {"30 long", "30 long", RODT_AXLE_MISMATCH_CLASS_DIFFERS}};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_wheel_end left = end("1L", cases[i].left, 24);
        left.reading.chamber.rated_stroke = (rodt_length){5, 2}; /* of the standard chamber */
        rodt_axle_finding axle = pair(left, end("1R", cases[i].right, 24));
        assert_int_equal(axle.mismatches, cases[i].mismatches);
    }
}

/* A chamber in no table is judged by its marks, and its class is the one that is said of it. */
static void classes_of_chambers_in_no_table(void **state)
{
    (void)state;
    static const struct {
        const char *left, *right;
        uint32_t mismatches;
    } cases[] = {{"18 long", "18 long", 0}, {"18 long", "18", 0}, {"18", "18 long", 0},
                 {"18 long", "18 standard", RODT_AXLE_MISMATCH_CLASS_DIFFERS}};
    for (size_t i = 0; i < COUNT_OF(cases); i++)
        assert_int_equal(pair(end("1L", cases[i].left, 24), end("1R", cases[i].right, 24)).mismatches,
                         cases[i].mismatches);
}

/* A rule set without limits assumes no family, so one that nobody wrote down is unlike none. */
static void a_family_that_is_not_known_differs_from_none(void **state)
{
    (void)state;
    static const struct {
        const char *left, *right;
        uint32_t mismatches;
    } cases[] = {{"30", "roto 30", 0}, {"roto 30", "30", 0}, {"roto 30", "roto 30", 0},
                 {"clamp 30", "roto 30", RODT_AXLE_MISMATCH_FAMILY_DIFFERS}};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        const rodt_wheel_end ends[] = {end("1L", cases[i].left, 24), end("1R", cases[i].right, 24)};
        rodt_vehicle_finding vehicle;
        assert_int_equal(rodt_vehicle_judge(ends, 2, 0, rodt_rules_find("us-inuse"), findings, NULL, &vehicle, NULL),
                         RODT_OK);
        assert_int_equal(vehicle.axles[0].mismatches, cases[i].mismatches);
    }
}

/* An end that was not given is a brake that was not measured: one full defect of seven ends is 12 1/2 % of eight. */
static void both_ends_of_every_axle_are_counted(void **state)
{
    (void)state;
    rodt_wheel_end ends[8];
    fill(ends, 8, "30 standard", 24);
    set_stroke(&ends[0], 40);
    rodt_vehicle_finding vehicle = judged(ends, 7, 0);
    assert_int_equal(vehicle.count.brakes, 8);
    assert_int_equal(vehicle.count.unmeasured, 1);
    assert_ratio(vehicle.count.share, 1, 8);
    assert_int_equal(vehicle.count.outcome, RODT_OUTCOME_UNDETERMINED);
    assert_int_equal(judged(ends, 1, 1).count.brakes, 1); /* what is said is taken */
}

/* 49 CFR 393.47(c) names no tolerance. */
static void arms_of_an_axle(void **state)
{
    (void)state;
    rodt_wheel_end left = end("2L", "30 standard", 24), right = end("2R", "30 standard", 24);
    left.arm_length = inches(11, 2);
    rodt_axle_finding axle = pair(left, right);
    assert_int_equal(axle.mismatches, 0);
    assert_ratio(axle.al_left, 165, 1);
    assert_false(rodt_ratio_given(axle.al_right));
    right.arm_length = inches(11, 2);
    assert_int_equal(pair(left, right).mismatches, 0);
    right.arm_length = inches(89, 16);
    assert_int_equal(pair(left, right).mismatches, RODT_AXLE_MISMATCH_ARM_DIFFERS | RODT_AXLE_MISMATCH_TORQUE_DIFFERS);
    right.arm_length = inches(0, 1);
    assert_int_equal(pair(left, right).mismatches, RODT_AXLE_MISMATCH_ARM_DIFFERS | RODT_AXLE_MISMATCH_TORQUE_DIFFERS);
}

/* A short arm on a large chamber can brake like a long one on a small chamber: still two faults. */
static void unlike_ends_can_have_the_same_torque(void **state)
{
    (void)state;
    rodt_wheel_end left = end("2L", "24 standard", 24), right = end("2R", "30 standard", 24);
    left.arm_length = inches(25, 4);
    right.arm_length = inches(5, 1);
    rodt_axle_finding axle = pair(left, right);
    assert_int_equal(axle.mismatches, RODT_AXLE_MISMATCH_SIZE_DIFFERS | RODT_AXLE_MISMATCH_ARM_DIFFERS);
    assert_ratio(axle.al_left, 150, 1);
    assert_ratio(axle.al_right, 150, 1);
    left = end("2L", "30 standard", 24), right = end("2R", "12 standard", 20);
    left.arm_length = inches(11, 2);
    right.arm_length = inches(55, 8);
    axle = pair(left, right);
    assert_ratio(axle.al_left, 165, 1);
    assert_ratio(axle.al_right, 165, 2);
    assert_true((axle.mismatches & RODT_AXLE_MISMATCH_TORQUE_DIFFERS) != 0);
}

/* More than half an inch: common practice of this library, no source. */
static void strokes_of_an_axle(void **state)
{
    (void)state;
    for (int64_t other = 1; other <= 32; other++) {
        rodt_axle_finding axle = pair(end("1L", "30 standard", 16), end("1R", "30 standard", other));
        int64_t difference = other > 16 ? other - 16 : 16 - other;
        assert_int_equal(rodt_length_compare(axle.stroke_difference, inches(difference, 16)), 0);
        assert_int_equal(axle.mismatches, difference > 8 ? RODT_AXLE_MISMATCH_STROKES_DIFFER : 0);
        assert_int_equal(advice[0], difference > 8 && other > 16 ? RODT_ADVICE_LOOK : RODT_ADVICE_NONE);
        assert_int_equal(advice[1], RODT_ADVICE_NONE);
    }
}

/* Strokes in parts of 2^29 x 5^12 and of 127 have no common 64-bit denominator: each is judged, they are not compared. */
static void strokes_too_fine_to_compare(void **state)
{
    (void)state;
    rodt_wheel_end left = end("1L", "30 standard", 16), right = end("1R", "30 standard", 16);
    left.reading.released = (rodt_length){1, 536870912};
    left.reading.applied = (rodt_length){244140626, 244140625};
    assert_int_equal(rodt_length_from_mm(90, 1, &right.reading.applied), RODT_OK);
    rodt_axle_finding axle = pair(left, right);
    assert_false(rodt_length_given(axle.stroke_difference));
    assert_int_equal(axle.mismatches, 0);
    assert_int_equal(findings[0].verdict, RODT_VERDICT_IN_ADJUSTMENT);
    assert_int_equal(findings[1].verdict, RODT_VERDICT_IN_ADJUSTMENT);
}

/* One that hardly moved, by less than half an inch, is nothing that is too tight: its finding says so. */
static void a_short_stroke_beside_a_longer_one(void **state)
{
    (void)state;
    for (int64_t other = 1; other <= 24; other++) {
        pair(end("1L", "30 standard", 24), end("1R", "30 standard", other));
        assert_int_equal(rodt_finding_has(&findings[1], RODT_REASON_HARDLY_MOVED), other < 8);
        assert_int_equal(advice[0], RODT_ADVICE_NONE);
        assert_int_equal(advice[1], other >= 8 && other < 16 ? RODT_ADVICE_LOOK : RODT_ADVICE_NONE);
    }
}

static void beside_a_bad_brake_a_short_stroke_is_no_sign(void **state)
{
    (void)state;
    rodt_axle_finding axle = pair(end("1L", "30 standard", 24), end("1R", "30 standard", 40));
    assert_int_equal(axle.mismatches, RODT_AXLE_MISMATCH_STROKES_DIFFER);
    assert_int_equal(advice[0], RODT_ADVICE_NONE);
    assert_int_equal(advice[1], RODT_ADVICE_FIND_ADJUSTER);
    for (int64_t dead = 0; dead <= 1; dead++) {
        axle = pair(end("2L", "30 standard", dead == 0 ? 0 : 24), end("2R", "30 standard", dead == 0 ? 24 : 0));
        assert_int_equal(axle.mismatches, 0);
        assert_int_equal(rodt_length_compare(axle.stroke_difference, inches(24, 16)), 0);
        assert_int_equal(advice[dead], RODT_ADVICE_REPAIR);
        assert_int_equal(advice[1 - dead], RODT_ADVICE_NONE);
    }
    axle = pair(end("2L", "30 standard", -1), end("2R", "30 standard", 24)); /* no stroke */
    assert_false(rodt_length_given(axle.stroke_difference));
    assert_int_equal(axle.mismatches, 0);
}

static void advice_for_each_verdict_and_adjuster(void **state)
{
    (void)state;
    static const struct {
        int64_t stroke;
        rodt_advice advice[3]; /* by adjuster */
    } cases[] = {
        {32, {RODT_ADVICE_NONE, RODT_ADVICE_NONE, RODT_ADVICE_NONE}},
        {33, {RODT_ADVICE_FIND_ADJUSTER, RODT_ADVICE_ADJUST, RODT_ADVICE_FIND_FAULT}},
        {0, {RODT_ADVICE_REPAIR, RODT_ADVICE_REPAIR, RODT_ADVICE_REPAIR}},
        {-1, {RODT_ADVICE_MEASURE, RODT_ADVICE_MEASURE, RODT_ADVICE_MEASURE}},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        for (int adjuster = RODT_ADJUSTER_NOT_RECORDED; adjuster < RODT_ADJUSTER_END; adjuster++) {
            rodt_wheel_end one = end("2L", "30 standard", cases[i].stroke);
            one.adjuster = (rodt_adjuster)adjuster;
            judged(&one, 1, 0);
            assert_int_equal(advice[0], cases[i].advice[adjuster]);
        }
    }
}

static void other_days_are_counted(void **state)
{
    (void)state;
    rodt_wheel_end ends[4];
    fill(ends, 4, "36 standard", 38);
    assert_int_equal(judged(ends, 4, 0).mixed_days, 0);
    assert_int_equal(rodt_date_make(2021, 10, 13, &ends[2].reading.day), RODT_OK);
    rodt_vehicle_finding vehicle = judged(ends, 4, 0);
    assert_int_equal(vehicle.mixed_days, 1);
    assert_int_equal(vehicle.out_of_adjustment, 1); /* 2 3/8 in: over 2 1/4 then, within 2 1/2 later */
    assert_int_equal(vehicle.count.tally.half, 1);
    ends[0].reading.day = ends[2].reading.day; /* the day of the first one is the measure */
    ends[2].reading.day = ends[1].reading.day;
    assert_int_equal(judged(ends, 4, 0).mixed_days, 3);
}

/* --- Scenes ----------------------------------------------------------------------------------------------- */

/* N06: rods out of reach (Ontario bus handbook, 7-1-5): not measured is neither zero nor a pass. */
static void four_of_six_out_of_reach(void **state)
{
    (void)state;
    rodt_wheel_end ends[6];
    fill(ends, 6, "30 standard", 24);
    for (size_t i = 2; i < 6; i++)
        ends[i].reading.released = ends[i].reading.applied = (rodt_length){0, 0};
    rodt_vehicle_finding listed = judged(ends, 6, 0), left_out = judged(ends, 2, 6);
    assert_int_equal(listed.undetermined, 4);
    assert_int_equal(listed.count.tally.unknown, 4);
    assert_int_equal(left_out.count.unmeasured, 4);
    assert_int_equal(listed.count.outcome, RODT_OUTCOME_UNDETERMINED);
    assert_int_equal(left_out.count.outcome, RODT_OUTCOME_UNDETERMINED);
    assert_ratio(listed.count.worst_share, 2, 3);
    assert_ratio(left_out.count.worst_share, 2, 3);
}

/* N24: an automatic adjuster that was turned by hand keeps its fault (National Transportation Safety Board, May
 * 2006). */
static void an_automatic_adjuster_that_is_out(void **state)
{
    (void)state;
    rodt_wheel_end before = end("3L", "30 standard", 38);
    before.adjuster = RODT_ADJUSTER_AUTOMATIC;
    judged(&before, 1, 0);
    assert_int_equal(findings[0].verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    assert_int_equal(advice[0], RODT_ADVICE_FIND_FAULT);
    assert_non_null(rodt_advice_source(advice[0], NULL));
}

/* N26, 49 CFR 393.47(b): both strokes are in, the axle is not. N27: uneven but legal. */
static void axles_of_good_brakes_that_are_not_good(void **state)
{
    (void)state;
    const rodt_wheel_end unlike[] = {end("2L", "24 standard", 24), end("2R", "30 standard", 28)};
    rodt_vehicle_finding vehicle = judged(unlike, 2, 2);
    assert_int_equal(vehicle.in_adjustment, 2);
    assert_int_equal(vehicle.mismatched_axles, 1);
    assert_int_equal(advice[0] | advice[1], RODT_ADVICE_NONE);
    assert_int_equal(vehicle.count.outcome, RODT_OUTCOME_BELOW_CRITERION);
    vehicle = judged(unlike, 2, 0); /* the axle in front of it is there too */
    assert_int_equal(vehicle.count.brakes, 4);
    assert_int_equal(vehicle.count.unmeasured, 2);
    assert_int_equal(vehicle.count.outcome, RODT_OUTCOME_UNDETERMINED);
    const rodt_wheel_end uneven[] = {end("1L", "20 standard", 14), end("1R", "20 standard", 24)};
    vehicle = judged(uneven, 2, 0);
    assert_int_equal(vehicle.in_adjustment, 2);
    assert_int_equal(vehicle.mismatched_axles, 0);
    assert_int_equal(vehicle.axles[0].mismatches, RODT_AXLE_MISMATCH_STROKES_DIFFER);
    assert_int_equal(rodt_length_compare(vehicle.axles[0].stroke_difference, inches(5, 8)), 0);
    assert_int_equal(advice[0], RODT_ADVICE_LOOK);
}

/* N28 and N29: a dead brake is one of ten; on axle 1 it is more than the count says (trade press, April 2021). */
static void one_dead_brake_on_either_axle(void **state)
{
    (void)state;
    for (size_t place = 0; place < 10; place++) {
        rodt_wheel_end ends[10];
        fill(ends, 10, "24 standard", 24);
        set_stroke(&ends[place], 0);
        rodt_vehicle_finding vehicle = judged(ends, 10, 0);
        assert_int_equal(vehicle.inoperative, 1);
        assert_int_equal(vehicle.count.outcome, RODT_OUTCOME_BELOW_CRITERION);
        assert_ratio(vehicle.count.share, 1, 10);
        assert_int_equal(vehicle.axles[place / 2].mismatches, place < 2 ? RODT_AXLE_MISMATCH_STEERING_DEAD : 0);
        set_stroke(&ends[9 - place], 32);
        vehicle = judged(ends, 10, 0);
        assert_int_equal(vehicle.count.outcome, RODT_OUTCOME_OUT_OF_SERVICE);
        assert_ratio(vehicle.count.share, 1, 5);
    }
}

/* N30: four of eight. N31: one full defect in each unit of a combination. N36: four of ten. N37: two over by exactly
 * 1/4 in, which a metric rule of 6.4 mm would not count. */
static void counts_over_the_combination(void **state)
{
    (void)state;
    static const struct {
        size_t brakes, over;
        int64_t num, den;
    } cases[] = {{8, 4, 1, 2}, {10, 2, 1, 5}, {10, 4, 2, 5}};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_wheel_end ends[10];
        fill(ends, cases[i].brakes, "30 standard", 24);
        for (size_t k = 0; k < cases[i].over; k++)
            set_stroke(&ends[cases[i].brakes - 1 - 2 * k], 36);
        rodt_vehicle_finding vehicle = judged(ends, cases[i].brakes, 0);
        assert_int_equal(vehicle.count.outcome, RODT_OUTCOME_OUT_OF_SERVICE);
        assert_ratio(vehicle.count.share, cases[i].num, cases[i].den);
        assert_int_equal(vehicle.count.tally.full, cases[i].over);
    }
}

/* N32: two burnt away, three of the other eight are full defects: 30 % of all, 37.5 % of the measured. */
static void burnt_chambers(void **state)
{
    (void)state;
    rodt_wheel_end ends[8];
    fill(ends, 8, "30 standard", 24);
    for (size_t i = 0; i < 3; i++)
        set_stroke(&ends[i * 2], 40);
    rodt_vehicle_finding vehicle = judged(ends, 8, 10);
    assert_int_equal(vehicle.count.outcome, RODT_OUTCOME_OUT_OF_SERVICE);
    assert_ratio(vehicle.count.share, 3, 10);
    assert_ratio(vehicle.count.known_share, 3, 8);
    assert_int_equal(vehicle.count.unmeasured, 2);
}

/* --- The two ways in -------------------------------------------------------------------------------------- */

/* rodt_form_judge_row knows what could not be read; its findings are taken as they are. */
static void findings_that_are_there_already(void **state)
{
    (void)state;
    rodt_wheel_end ends[2];
    rodt_vehicle_finding vehicle;
    rodt_form text = {.chamber = "30 standard", .released = "2", .applied = "2-Jan"};
    fill(ends, 2, "30 standard", 24);
    for (size_t i = 0; i < 2; i++) {
        assert_int_equal(rodt_form_judge_row(&text, rodt_rules_find("us-fmcsr"), &findings[i], NULL), RODT_OK);
        text.applied = "4 3/8";
    }
    assert_int_equal(rodt_vehicle_combine(ends, 2, 0, findings, NULL, &vehicle, NULL), RODT_OK);
    assert_int_equal(vehicle.undetermined, 1);
    assert_int_equal(vehicle.out_of_adjustment, 1);
    assert_ratio(vehicle.count.worst_share, 1, 1);
    rodt_vehicle_finding direct = judged(ends, 2, 0), again;
    assert_int_equal(rodt_vehicle_combine(ends, 2, 0, findings, advice, &again, NULL), RODT_OK);
    assert_memory_equal(&direct, &again, sizeof direct);
}

static void expect(rodt_status status, const rodt_wheel_end *ends, size_t count, uint32_t brakes)
{
    rodt_vehicle_finding vehicle, kept;
    memset(&vehicle, 0x5A, sizeof vehicle);
    memset(findings, 0x5A, sizeof findings);
    memset(advice, 0x5A, sizeof advice);
    kept = vehicle;
    assert_int_equal(rodt_vehicle_judge(ends, count, brakes, rodt_rules_find("us-fmcsr"), findings, advice, &vehicle, NULL),
                     status);
    assert_memory_equal(&vehicle, &kept, sizeof vehicle);
    for (size_t i = 0; i < sizeof findings; i++)
        assert_int_equal(((const unsigned char *)findings)[i], 0x5A);
    for (size_t i = 0; i < sizeof advice; i++)
        assert_int_equal(((const unsigned char *)advice)[i], 0x5A);
}

static void wrong_wheel_ends_leave_everything_as_it_was(void **state)
{
    (void)state;
    rodt_wheel_end ends[ENDS_MAX];
    fill(ends, ENDS_MAX, "30 standard", 24);
    expect(RODT_E_ARGUMENT, ends, 0, 0);
    expect(RODT_E_ARGUMENT, ends, 4, 3);
    expect(RODT_E_RANGE, ends, 82, 0); /* 41 axles */
    rodt_vehicle_finding vehicle;
    rodt_error error = {.status = RODT_OK};
    assert_int_equal(rodt_vehicle_judge(ends, 82, 0, rodt_rules_find("us-fmcsr"), findings, NULL, &vehicle, &error),
                     RODT_E_RANGE);
    assert_int_equal(error.status, RODT_E_RANGE);
    assert_int_equal(rodt_vehicle_judge(ends, 82, 0, rodt_rules_find("us-fmcsr"), findings, NULL, &vehicle, NULL),
                     RODT_E_RANGE);
    expect(RODT_E_RANGE, ends, 4, RODT_BRAKES_MAX + 1);
    ends[3].position = ends[0].position;
    expect(RODT_E_ARGUMENT, ends, 4, 0);
    static const rodt_position none[] = {{0, 0}, {2, 0}, {0, 1}, {2, 3}, {100, 1}, {-2, 1}};
    for (size_t i = 0; i < COUNT_OF(none); i++) {
        ends[3].position = none[i];
        expect(RODT_E_ARGUMENT, ends, 4, 0);
    }
    fill(ends, 4, "30 standard", 24);
    ends[3].arm_length = (rodt_length){-1, 2};
    expect(RODT_E_ARGUMENT, ends, 4, 0);
    ends[3].arm_length = (rodt_length){1, -2};
    expect(RODT_E_ARGUMENT, ends, 4, 0);
    fill(ends, 4, "30 standard", 24);
    ends[3].adjuster = (rodt_adjuster)3;
    expect(RODT_E_ARGUMENT, ends, 4, 0);
    fill(ends, 4, "30 standard", 24);
    ends[3].reading.applied.num = -1;
    expect(RODT_E_ARGUMENT, ends, 4, 0);
}

/* Each refusal names the wheel end, the field and what is wrong with it. */
static void refusals_in_words(void **state)
{
    (void)state;
    static const char no_position[] = "a position is an axle of 1 to 99 and its left or right side";
    static const struct {
        rodt_wheel_end second;
        size_t count;
        uint32_t line;
        const char *field, *sentence;
    } cases[] = {
        {{.position = {0, RODT_SIDE_LEFT}}, 2, 2, "position", no_position},
        {{.position = {1, RODT_SIDE_LEFT}}, 2, 2, "position", "this position is there twice"},
        {{.position = {1, RODT_SIDE_RIGHT}, .adjuster = RODT_ADJUSTER_END}, 2, 2, "adjuster",
         "an adjuster is manual, automatic or not recorded"},
        {{.position = {1, RODT_SIDE_RIGHT}, .arm_length = {25, 1}}, 2, 2, "arm_length",
         "no rod position or stroke is longer than 24 in"},
        {{.position = {1, RODT_SIDE_RIGHT}, .reserved = {0, 0, 0, 1}}, 2, 2, "reserved", "the reserve of a wheel end is zero"},
        {{.position = {1, RODT_SIDE_RIGHT}}, 0, 0, "count", "one wheel end is needed at least"},
    };
    rodt_vehicle_finding vehicle;
    rodt_error error;
    const rodt_rules *law = rodt_rules_find("us-fmcsr");
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        const rodt_wheel_end ends[2] = {end("1L", "30 standard", 24), cases[i].second};
        error = (rodt_error){.status = RODT_OK};
        assert_int_equal(rodt_vehicle_judge(ends, cases[i].count, 0, law, findings, NULL, &vehicle, &error), RODT_E_ARGUMENT);
        assert_string_equal(error.field, cases[i].field);
        assert_string_equal(error.text, cases[i].sentence);
        assert_int_equal(error.status, RODT_E_ARGUMENT);
        assert_int_equal(error.line, cases[i].line);
    }
    assert_int_equal(rodt_vehicle_judge(NULL, 2, 0, law, findings, NULL, &vehicle, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.field, "ends");
    rodt_wheel_end ends[ENDS_MAX];
    fill(ends, ENDS_MAX, "30 standard", 24);
    error = (rodt_error){.status = RODT_OK};
    assert_int_equal(rodt_vehicle_judge(ends, 2, 0, NULL, findings, NULL, &vehicle, &error), RODT_E_UNKNOWN_RULES);
    assert_int_equal(error.line, 0);
    assert_int_equal(rodt_vehicle_judge(ends, 82, 0, law, NULL, NULL, &vehicle, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.field, "");
    assert_string_equal(error.text, "findings of the wheel ends and room for that of the vehicle are needed");
    assert_int_equal(rodt_vehicle_judge(ends, 82, 0, law, findings, NULL, &vehicle, &error), RODT_E_RANGE);
    assert_string_equal(error.field, "position");
    assert_string_equal(error.text, "these are more axles than a vehicle can have here");
    assert_int_equal(error.line, 81);
    ends[0].reading.applied.num = -1;
    assert_int_equal(rodt_vehicle_judge(ends, 2, 0, law, findings, NULL, &vehicle, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.field, "applied");
    assert_int_equal(error.line, 1);
}

static void wrong_calls(void **state)
{
    (void)state;
    rodt_wheel_end one = end("1L", "30 standard", 24);
    rodt_vehicle_finding vehicle;
    const rodt_rules *law = rodt_rules_find("us-fmcsr");
    assert_int_equal(rodt_vehicle_judge(NULL, 1, 0, law, findings, NULL, &vehicle, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_vehicle_judge(&one, 1, 0, NULL, findings, NULL, &vehicle, NULL), RODT_E_UNKNOWN_RULES);
    assert_int_equal(rodt_vehicle_judge(&one, 1, 0, law, NULL, NULL, &vehicle, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_vehicle_judge(&one, 1, 0, law, findings, NULL, NULL, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_vehicle_judge(&one, 1, 0, law, findings, NULL, &vehicle, NULL), RODT_OK);
    assert_int_equal(rodt_vehicle_combine(NULL, 1, 0, findings, NULL, &vehicle, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_vehicle_combine(&one, 1, 0, NULL, NULL, &vehicle, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_vehicle_combine(&one, 0, 0, findings, NULL, &vehicle, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_vehicle_combine(&one, 1, 0, findings, NULL, NULL, NULL), RODT_E_ARGUMENT);
}

static void refuse_combined(const rodt_wheel_end *ends, const char *field, uint32_t line, const char *sentence)
{
    rodt_vehicle_finding vehicle, kept;
    rodt_error error;
    memset(&vehicle, 0x5A, sizeof vehicle);
    memset(advice, 0x5A, sizeof advice);
    kept = vehicle;
    assert_int_equal(rodt_vehicle_combine(ends, 2, 0, findings, advice, &vehicle, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.field, field);
    assert_string_equal(error.text, sentence);
    assert_int_equal(error.line, line);
    assert_int_equal(error.status, RODT_E_ARGUMENT);
    assert_memory_equal(&vehicle, &kept, sizeof vehicle);
    assert_int_equal(((const unsigned char *)advice)[0], 0x5A);
}

static void a_vehicle_has_one_rule_set(void **state)
{
    (void)state;
    const rodt_rules *us = rodt_rules_find("us-fmcsr"), *ontario = rodt_rules_find("ca-on");
    static const char one[] = "all findings of a vehicle are of one rule set";
    rodt_wheel_end ends[2];
    rodt_vehicle_finding vehicle;
    fill(ends, 2, "30 standard", 24);
    assert_int_equal(rodt_reading_judge(&ends[0].reading, us, &findings[0], NULL), RODT_OK);
    assert_int_equal(rodt_reading_judge(&ends[1].reading, ontario, &findings[1], NULL), RODT_OK);
    refuse_combined(ends, "rules", 2, one);
    findings[1].rules = NULL;
    refuse_combined(ends, "rules", 2, one);
    findings[0].rules = NULL;
    refuse_combined(ends, "rules", 1, one);
    findings[0].rules = findings[1].rules = us;
    findings[1].reserved[7] = 1;
    refuse_combined(ends, "reserved", 2, "the reserve of a finding is zero");
    findings[1].reserved[7] = 0;
    assert_int_equal(rodt_vehicle_combine(ends, 2, 0, findings, advice, &vehicle, NULL), RODT_OK);
}

static void forty_axles(void **state)
{
    (void)state;
    rodt_wheel_end ends[2 * RODT_AXLES_MAX];
    fill(ends, COUNT_OF(ends), "30 standard", 36);
    rodt_vehicle_finding vehicle = judged(ends, COUNT_OF(ends), 0);
    assert_int_equal(vehicle.axle_count, RODT_AXLES_MAX);
    assert_int_equal(vehicle.axles[RODT_AXLES_MAX - 1].axle, RODT_AXLES_MAX);
    assert_ratio(vehicle.count.share, 1, 1);
    /* The second half from behind: each is put in between. The last axle of all is number 99. */
    for (size_t i = RODT_AXLES_MAX; i < COUNT_OF(ends); i++)
        ends[i].position.axle = (int16_t)(RODT_AXLE_NUMBER_MAX - (i - RODT_AXLES_MAX) / 2);
    rodt_vehicle_finding turned = judged(ends, COUNT_OF(ends), 0);
    assert_int_equal(turned.axle_count, RODT_AXLES_MAX);
    for (size_t i = 0; i < RODT_AXLES_MAX; i++) {
        size_t from = i < RODT_AXLES_MAX / 2 ? i : RODT_AXLES_MAX / 2 * 3 - 1 - i;
        assert_int_equal(turned.axles[i].axle, ends[2 * from].position.axle);
        assert_true(turned.axles[i].left == 2 * from && turned.axles[i].right == 2 * from + 1);
    }
}

/* --- Force ------------------------------------------------------------------------------------------------ */

static rodt_chamber chamber_of(const char *text)
{
    rodt_chamber chamber;
    assert_int_equal(rodt_chamber_parse(text, &chamber, NULL), RODT_OK);
    return chamber;
}

/* Type 30 at 100 psi is 3,000 lbf: British Columbia, guide for commercial drivers. With a 6 in arm 180 in3. */
static void force_and_factor(void **state)
{
    (void)state;
    rodt_chamber chamber = chamber_of("30/30 long"), letter = chamber_of("bolt C"), unknown = {0};
    rodt_pressure pressure;
    rodt_ratio out = {7, 8};
    assert_int_equal(rodt_pressure_from_psi(100, 1, &pressure), RODT_OK);
    assert_int_equal(rodt_chamber_pushrod_force(&chamber, pressure, &out), RODT_OK);
    assert_ratio(out, 3000, 1);
    assert_int_equal(rodt_chamber_al_factor(&chamber, inches(6, 1), &out), RODT_OK);
    assert_ratio(out, 180, 1);
    assert_int_equal(rodt_chamber_al_factor(&chamber, inches(0, 1), &out), RODT_OK);
    assert_ratio(out, 0, 1);
    assert_int_equal(rodt_chamber_pushrod_force(&(rodt_chamber){.size = "1"}, pressure, &out), RODT_OK);
    assert_ratio(out, 100, 1);
    out = (rodt_ratio){7, 8};
    assert_int_equal(rodt_chamber_pushrod_force(&letter, pressure, &out), RODT_E_ARGUMENT);
    assert_int_equal(rodt_chamber_pushrod_force(&unknown, pressure, &out), RODT_E_ARGUMENT);
    assert_int_equal(rodt_chamber_pushrod_force(NULL, pressure, &out), RODT_E_ARGUMENT);
    assert_int_equal(rodt_chamber_pushrod_force(&chamber, (rodt_pressure){0, 0}, &out), RODT_E_ARGUMENT);
    assert_int_equal(rodt_chamber_pushrod_force(&chamber, (rodt_pressure){INT64_MAX, 1}, &out), RODT_E_RANGE);
    assert_int_equal(rodt_chamber_pushrod_force(&chamber, pressure, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_chamber_al_factor(&chamber, (rodt_length){-1, 1}, &out), RODT_E_ARGUMENT);
    memcpy(unknown.size, "9999", sizeof unknown.size);
    assert_int_equal(rodt_chamber_pushrod_force(&unknown, pressure, &out), RODT_E_ARGUMENT);
    assert_ratio(out, 7, 8);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(axles_are_put_together_in_any_order),
        cmocka_unit_test(chambers_of_an_axle),
        cmocka_unit_test(arms_of_an_axle),
        cmocka_unit_test(unlike_ends_can_have_the_same_torque),
        cmocka_unit_test(strokes_of_an_axle),
        cmocka_unit_test(strokes_too_fine_to_compare),
        cmocka_unit_test(a_short_stroke_beside_a_longer_one),
        cmocka_unit_test(beside_a_bad_brake_a_short_stroke_is_no_sign),
        cmocka_unit_test(advice_for_each_verdict_and_adjuster),
        cmocka_unit_test(other_days_are_counted),
        cmocka_unit_test(four_of_six_out_of_reach),
        cmocka_unit_test(an_automatic_adjuster_that_is_out),
        cmocka_unit_test(classes_that_were_judged),
        cmocka_unit_test(classes_of_chambers_in_no_table),
        cmocka_unit_test(a_family_that_is_not_known_differs_from_none),
        cmocka_unit_test(both_ends_of_every_axle_are_counted),
        cmocka_unit_test(axles_of_good_brakes_that_are_not_good),
        cmocka_unit_test(one_dead_brake_on_either_axle),
        cmocka_unit_test(counts_over_the_combination),
        cmocka_unit_test(burnt_chambers),
        cmocka_unit_test(findings_that_are_there_already),
        cmocka_unit_test(wrong_wheel_ends_leave_everything_as_it_was),
        cmocka_unit_test(wrong_calls),
        cmocka_unit_test(refusals_in_words),
        cmocka_unit_test(a_vehicle_has_one_rule_set),
        cmocka_unit_test(forty_axles),
        cmocka_unit_test(force_and_factor),
    };
    return cmocka_run_group_tests_name("vehicle", tests, NULL, NULL);
}
