/* SPDX-License-Identifier: Apache-2.0 */
/* One wheel end: every step from two readings to a verdict, and the properties that hold for all of them. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <string.h>

#include "judge/judge.h"
#include "rodtravel/rodtravel.h"
#include "rules/tables.h"

static rodt_length inches(int64_t num, int64_t den)
{
    rodt_length length;
    assert_int_equal(rodt_length_from_inches(num, den, &length), RODT_OK);
    return length;
}

static rodt_pressure psi(int64_t value)
{
    rodt_pressure pressure;
    assert_int_equal(rodt_pressure_from_psi(value, 1, &pressure), RODT_OK);
    return pressure;
}

static rodt_date day(int year, int month, int of_month)
{
    rodt_date date;
    assert_int_equal(rodt_date_make(year, month, of_month, &date), RODT_OK);
    return date;
}

/* A reading with nothing odd about it; each test changes what it is about. Readings in 64ths of an inch. */
static rodt_reading reading(const char *chamber, int64_t released, int64_t applied)
{
    rodt_reading made = {0};
    assert_int_equal(rodt_chamber_parse(chamber, &made.chamber, NULL), RODT_OK);
    made.released = inches(released, 64);
    made.applied = inches(applied, 64);
    made.pressure = psi(95);
    made.day = day(2024, 5, 6);
    return made;
}

static rodt_finding judged_by(const char *rules, const rodt_reading *made)
{
    rodt_finding finding;
    memset(&finding, 0xA5, sizeof finding);
    assert_int_equal(rodt_reading_judge(made, rodt_rules_find(rules), &finding, NULL), RODT_OK);
    return finding;
}

static rodt_finding judged(rodt_reading made) { return judged_by("us-fmcsr", &made); }

#define HAS(finding, reason) assert_true(rodt_finding_has(&(finding), RODT_REASON_##reason))
#define HAS_NOT(finding, reason) assert_false(rodt_finding_has(&(finding), RODT_REASON_##reason))

/* 49 CFR 393.47(e)(1): type 30 has 2 in and "must not be greater than" lets the limit itself pass. */
static void at_under_and_over_the_limit(void **state)
{
    (void)state;
    rodt_finding at = judged(reading("clamp 30 standard", 136, 136 + 128));
    rodt_finding under = judged(reading("clamp 30 standard", 136, 136 + 127));
    rodt_finding over = judged(reading("clamp 30 standard", 136, 136 + 129));
    assert_int_equal(at.verdict, RODT_VERDICT_IN_ADJUSTMENT);
    assert_true(at.reasons == RODT_REASON_BIT(RODT_REASON_AT_LIMIT));
    assert_int_equal(under.verdict, RODT_VERDICT_IN_ADJUSTMENT);
    assert_true(under.reasons == RODT_REASON_BIT(RODT_REASON_WITHIN_LIMIT));
    assert_int_equal(over.verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    assert_true(over.reasons == RODT_REASON_BIT(RODT_REASON_OVER_LIMIT));
    assert_int_equal(rodt_length_compare(at.margin, inches(0, 1)), 0);
    assert_int_equal(rodt_length_compare(under.margin, inches(1, 64)), 0);
    assert_int_equal(rodt_length_compare(over.margin, inches(-1, 64)), 0);
    assert_int_equal(over.law_basis, RODT_BASIS_TABLE);
    assert_non_null(over.source);
    assert_non_null(over.law_row);
    assert_string_equal(over.law_row->published, "2");
}

static void no_movement_is_inoperative_whatever_the_limit(void **state)
{
    (void)state;
    rodt_finding known = judged(reading("24 standard", 160, 160));
    rodt_finding unlisted = judged(reading("18", 160, 160));
    assert_int_equal(known.verdict, RODT_VERDICT_INOPERATIVE);
    HAS(known, NO_MOVEMENT);
    HAS_NOT(known, HARDLY_MOVED);
    HAS_NOT(known, WITHIN_LIMIT);
    assert_int_equal(unlisted.verdict, RODT_VERDICT_INOPERATIVE);
    HAS(unlisted, NO_PUBLISHED_LIMIT);
}

/* The verdict stays that of the law: at 1/2 in there is no doubt, a sixty-fourth below there is. */
static void a_rod_that_hardly_moves_is_a_doubt(void **state)
{
    (void)state;
    rodt_finding whole = judged(reading("clamp 30 standard", 136, 136 + 32));
    rodt_finding hardly = judged(reading("clamp 30 standard", 136, 136 + 31));
    rodt_finding unlisted = judged(reading("18", 136, 136 + 1));
    assert_int_equal(whole.verdict, RODT_VERDICT_IN_ADJUSTMENT);
    HAS_NOT(whole, HARDLY_MOVED);
    assert_int_equal(hardly.verdict, RODT_VERDICT_IN_ADJUSTMENT);
    HAS(hardly, HARDLY_MOVED);
    HAS(hardly, WITHIN_LIMIT);
    assert_int_equal(unlisted.verdict, RODT_VERDICT_UNDETERMINED);
    HAS(unlisted, HARDLY_MOVED);
}

static void swapped_readings_give_no_stroke(void **state)
{
    (void)state;
    rodt_finding finding = judged(reading("T30", 264, 136));
    assert_int_equal(finding.verdict, RODT_VERDICT_UNDETERMINED);
    HAS(finding, READINGS_SWAPPED);
    assert_false(rodt_length_given(finding.applied_stroke));
    assert_false(rodt_length_given(finding.margin));
    assert_int_equal(rodt_length_compare(finding.limit, inches(2, 1)), 0);
}

static void missing_facts_are_named_and_the_rest_is_computed(void **state)
{
    (void)state;
    rodt_reading no_applied = reading("24", 144, 0);
    no_applied.applied = (rodt_length){0, 0};
    rodt_finding finding = judged(no_applied);
    assert_int_equal(finding.verdict, RODT_VERDICT_UNDETERMINED);
    HAS(finding, APPLIED_MISSING);
    HAS_NOT(finding, RELEASED_MISSING);
    HAS_NOT(finding, READINGS_SWAPPED);
    assert_int_equal(rodt_length_compare(finding.limit, inches(7, 4)), 0);

    rodt_reading unreadable = reading("24", 144, 200);
    unreadable.released = (rodt_length){0, 0};
    unreadable.reasons = RODT_REASON_BIT(RODT_REASON_RELEASED_UNREADABLE);
    finding = judged(unreadable);
    HAS(finding, RELEASED_UNREADABLE);
    HAS_NOT(finding, RELEASED_MISSING);
    HAS_NOT(finding, READINGS_SWAPPED);

    rodt_reading no_chamber = reading("24", 128, 216);
    memset(&no_chamber.chamber, 0, sizeof no_chamber.chamber);
    finding = judged(no_chamber);
    assert_int_equal(finding.verdict, RODT_VERDICT_UNDETERMINED);
    assert_true(finding.reasons == RODT_REASON_BIT(RODT_REASON_CHAMBER_MISSING));
    no_chamber.reasons = RODT_REASON_BIT(RODT_REASON_CHAMBER_UNREADABLE);
    assert_true(judged(no_chamber).reasons == no_chamber.reasons);
    assert_int_equal(finding.evidence, RODT_EVIDENCE_NONE); /* of a limit that there is not */
    assert_int_equal(rodt_length_compare(finding.applied_stroke, inches(11, 8)), 0);

    rodt_reading nothing = {0};
    finding = judged(nothing);
    assert_int_equal(finding.verdict, RODT_VERDICT_UNDETERMINED);
    HAS(finding, RELEASED_MISSING);
    HAS(finding, APPLIED_MISSING);
    HAS(finding, CHAMBER_MISSING);
    HAS(finding, PRESSURE_NOT_RECORDED);
}

/* Stroke is monotone in pressure: low air can hide an excess, high air can make one. Window of us-fmcsr:
 * 90 to 100 psi, both ends inside. */
static void pressure_outside_the_window_takes_one_side_away(void **state)
{
    (void)state;
    static const struct {
        int pressure;
        rodt_verdict pass;
        rodt_verdict fail;
    } cases[] = {
        {89, RODT_VERDICT_UNDETERMINED, RODT_VERDICT_OUT_OF_ADJUSTMENT},   {90, RODT_VERDICT_IN_ADJUSTMENT, RODT_VERDICT_OUT_OF_ADJUSTMENT},
        {100, RODT_VERDICT_IN_ADJUSTMENT, RODT_VERDICT_OUT_OF_ADJUSTMENT}, {101, RODT_VERDICT_IN_ADJUSTMENT, RODT_VERDICT_UNDETERMINED},
        {1, RODT_VERDICT_UNDETERMINED, RODT_VERDICT_OUT_OF_ADJUSTMENT},    {145, RODT_VERDICT_IN_ADJUSTMENT, RODT_VERDICT_UNDETERMINED},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        for (int after = 0; after <= 1; after++) {
            rodt_reading pass = reading("30 standard", 128, 240);
            rodt_reading fail = reading("30 standard", 128, 260);
            rodt_reading dead = reading("30 standard", 128, 128);
            rodt_pressure value = psi(cases[i].pressure);
            if (after)
                pass.pressure_after = fail.pressure_after = dead.pressure_after = value;
            else
                pass.pressure = fail.pressure = dead.pressure = value;
            assert_int_equal(judged(pass).verdict, cases[i].pass);
            assert_int_equal(judged(fail).verdict, cases[i].fail);
            assert_int_equal(judged(dead).verdict, RODT_VERDICT_INOPERATIVE);
        }
    }
}

/* 49 CFR 396, Appendix A, 1.a(5)(a): 80 to 90 psi; the two windows share 90 psi alone. */
static void each_rule_set_has_its_own_window(void **state)
{
    (void)state;
    static const struct {
        int pressure;
        rodt_verdict roadside;
        rodt_verdict periodic;
    } cases[] = {{79, RODT_VERDICT_UNDETERMINED, RODT_VERDICT_UNDETERMINED}, {80, RODT_VERDICT_UNDETERMINED, RODT_VERDICT_IN_ADJUSTMENT},
                 {85, RODT_VERDICT_UNDETERMINED, RODT_VERDICT_IN_ADJUSTMENT}, {90, RODT_VERDICT_IN_ADJUSTMENT, RODT_VERDICT_IN_ADJUSTMENT},
                 {95, RODT_VERDICT_IN_ADJUSTMENT, RODT_VERDICT_IN_ADJUSTMENT}};
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        rodt_reading pass = reading("30 standard", 128, 250);
        pass.pressure = psi(cases[i].pressure);
        assert_int_equal(judged_by("us-fmcsr", &pass).verdict, cases[i].roadside);
        assert_int_equal(judged_by("us-periodic", &pass).verdict, cases[i].periodic);
    }
}

static void a_pressure_that_nobody_wrote_down_is_said(void **state)
{
    (void)state;
    rodt_reading made = reading("30 standard", 128, 240);
    made.pressure = (rodt_pressure){0, 0};
    rodt_finding finding = judged(made);
    assert_int_equal(finding.verdict, RODT_VERDICT_IN_ADJUSTMENT);
    HAS(finding, PRESSURE_NOT_RECORDED);
    finding = judged_by("rated-80", &made); /* this rule set names no window */
    HAS_NOT(finding, PRESSURE_NOT_RECORDED);
}

static void engine_and_spring_brake_spoil_any_reading(void **state)
{
    (void)state;
    for (int64_t applied = 128; applied <= 300; applied += 43) {
        rodt_reading running = reading("30 standard", 128, applied);
        rodt_reading parked = running;
        rodt_reading stated = running;
        running.engine_running = RODT_RECORDED_YES;
        parked.spring_brake_applied = RODT_RECORDED_YES;
        stated.engine_running = stated.spring_brake_applied = RODT_RECORDED_NO;
        rodt_finding finding = judged(running);
        assert_int_equal(finding.verdict, RODT_VERDICT_UNDETERMINED);
        HAS(finding, ENGINE_RUNNING);
        finding = judged(parked);
        assert_int_equal(finding.verdict, RODT_VERDICT_UNDETERMINED);
        HAS(finding, SPRING_BRAKE_APPLIED);
        assert_int_not_equal(judged(stated).verdict, RODT_VERDICT_UNDETERMINED);
    }
}

static void a_hot_drum_is_judged_as_found(void **state)
{
    (void)state;
    rodt_reading hot = reading("30 standard", 128, 128 + 144);
    hot.drum = RODT_DRUM_HOT;
    rodt_finding finding = judged(hot);
    assert_int_equal(finding.verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    HAS(finding, DRUM_HOT);
    hot.drum = RODT_DRUM_COLD;
    finding = judged(hot);
    HAS_NOT(finding, DRUM_HOT);
}

static void unknown_class_and_family_are_strict_and_named(void **state)
{
    (void)state;
    rodt_finding finding = judged(reading("30", 128, 128 + 136));
    assert_int_equal(finding.verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    HAS(finding, ASSUMED_STANDARD);
    HAS(finding, ASSUMED_CLAMP);
    assert_int_equal(finding.chamber.family, RODT_FAMILY_CLAMP);
    assert_int_equal(finding.chamber.stroke_class, RODT_STROKE_CLASS_STANDARD);
    assert_int_equal(rodt_length_compare(finding.long_limit, inches(5, 2)), 0);
    finding = judged(reading("36", 128, 256));
    HAS(finding, ASSUMED_STANDARD);
    assert_false(rodt_length_given(finding.long_limit)); /* no long row is published for 36 */
    finding = judged(reading("bolt C", 128, 200));
    HAS_NOT(finding, ASSUMED_STANDARD);
    HAS_NOT(finding, ASSUMED_CLAMP);
}

static void beyond_the_rated_stroke_is_out_and_doubted(void **state)
{
    (void)state;
    rodt_reading made = reading("30 standard", 128, 128 + 176);
    made.chamber.rated_stroke = inches(5, 2);
    rodt_finding finding = judged(made);
    assert_int_equal(finding.verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    HAS(finding, BEYOND_RATED_STROKE);
    made.applied = inches(128 + 160, 64); /* exactly the rated stroke is possible */
    finding = judged(made);
    assert_int_equal(finding.verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    HAS_NOT(finding, BEYOND_RATED_STROKE);
}

/* 49 CFR 393.47(e)(2): an actuator in no table has 80 % of the marked rated stroke, and not more than a
 * marked limit. */
static void an_unlisted_chamber_is_judged_by_its_marks(void **state)
{
    (void)state;
    rodt_reading made = reading("18", 128, 128 + 115); /* 1 51/64 in; 4/5 of 2 1/4 is 1 4/5 */
    rodt_finding finding = judged(made);
    assert_int_equal(finding.verdict, RODT_VERDICT_UNDETERMINED);
    HAS(finding, NO_PUBLISHED_LIMIT);
    made.chamber.rated_stroke = inches(9, 4);
    finding = judged(made);
    assert_int_equal(finding.verdict, RODT_VERDICT_IN_ADJUSTMENT);
    HAS(finding, LIMIT_FROM_RATED);
    assert_int_equal(rodt_length_compare(finding.limit, inches(9, 5)), 0);
    made.applied = inches(128 + 116, 64);
    assert_int_equal(judged(made).verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    made.chamber.marked_limit = inches(7, 4);
    made.applied = inches(128 + 113, 64);
    finding = judged(made);
    assert_int_equal(finding.verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    HAS(finding, LIMIT_MARKED);
    made.chamber.rated_stroke = (rodt_length){0, 0};
    assert_int_equal(judged(made).verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
}

/* 49 CFR 393.47(e)(1) before and after 86 FR 57076: clamp 36 has 2 1/4, from 2021-10-14 on 2 1/2. */
static void a_day_that_is_in_doubt_matters_only_where_the_limit_changed(void **state)
{
    (void)state;
    rodt_reading made = reading("36 standard", 128, 128 + 150);
    made.day = day(2021, 10, 13);
    assert_int_equal(judged(made).verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    made.day = day(2021, 10, 14);
    assert_int_equal(judged(made).verdict, RODT_VERDICT_IN_ADJUSTMENT);
    made.other_day = day(2021, 10, 13);
    rodt_finding finding = judged(made);
    assert_int_equal(finding.verdict, RODT_VERDICT_UNDETERMINED);
    HAS(finding, DATE_AMBIGUOUS);
    assert_false(rodt_length_given(finding.limit));
    made = reading("30 standard", 128, 128 + 120);
    made.other_day = day(2021, 1, 2);
    finding = judged(made);
    assert_int_equal(finding.verdict, RODT_VERDICT_IN_ADJUSTMENT);
    HAS(finding, DATE_AMBIGUOUS);
}

/* A carrier's own limit that changed once is as unknown, though the law's never changed. Invented limits. */
static void a_day_in_doubt_counts_for_a_carriers_limit_too(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit,from,until\nclamp,20,standard,1 5/8,2019-01-01,2021-12-31\n"
                                "clamp,20,standard,1 1/2,2022-01-01,\n";
    rodt_rules *own;
    rodt_error error;
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "yard", table, sizeof table - 1, &own, &error), RODT_OK);
    rodt_reading made = reading("clamp 20 standard", 64, 64 + 80);
    rodt_finding finding;
    assert_int_equal(rodt_reading_judge(&made, own, &finding, NULL), RODT_OK);
    assert_int_equal(rodt_length_compare(finding.limit, inches(3, 2)), 0);
    made.other_day = day(2021, 5, 6);
    assert_int_equal(rodt_reading_judge(&made, own, &finding, NULL), RODT_OK);
    assert_false(rodt_length_given(finding.limit));
    made.other_day = day(2022, 5, 6);
    assert_int_equal(rodt_reading_judge(&made, own, &finding, NULL), RODT_OK);
    assert_int_equal(rodt_length_compare(finding.limit, inches(3, 2)), 0);
    made.day = made.other_day = (rodt_date){0};
    made.reasons = RODT_REASON_BIT(RODT_REASON_DATE_UNREADABLE);
    assert_int_equal(rodt_reading_judge(&made, own, &finding, NULL), RODT_OK);
    assert_false(rodt_length_given(finding.limit));
    rodt_rules_unref(own);
}

static void expect_own(const rodt_rules *law, const char *table, rodt_reading made, const char *limit)
{
    rodt_rules *own;
    rodt_finding finding;
    rodt_length expected;
    assert_int_equal(rodt_rules_load(law, "yard", table, strlen(table), &own, NULL), RODT_OK);
    assert_int_equal(rodt_reading_judge(&made, own, &finding, NULL), RODT_OK);
    assert_int_equal(rodt_length_given(finding.limit), limit != NULL);
    if (limit != NULL) {
        assert_int_equal(rodt_length_parse(limit, &expected, NULL), RODT_OK);
        assert_int_equal(rodt_length_compare(finding.limit, expected), 0);
    }
    rodt_rules_unref(own);
}

/* Every row of both rule sets counts, wherever it stands: ca-nsc has no row with a day, us-fmcsr has, for a clamp 36.
 * Invented limits. */
static void a_day_that_nobody_can_read_counts_for_every_row(void **state)
{
    (void)state;
    static const char old_first[] = "family,size,class,limit,from,until\nclamp,20,standard,1 5/8,2019-01-01,2021-12-31\n"
                                    "clamp,20,standard,1 1/2,2022-01-01,\n";
    static const char new_first[] = "family,size,class,limit,from,until\nclamp,20,standard,1 1/2,2022-01-01,\n"
                                    "clamp,20,standard,1 5/8,2019-01-01,2021-12-31\n";
    static const char undated[] = "family,size,class,limit\nclamp,20,standard,1 1/2\n";
    const rodt_rules *nsc = rodt_rules_find("ca-nsc"), *us = rodt_rules_find("us-fmcsr");
    rodt_reading made = reading("clamp 20 standard", 64, 64 + 80), changed = reading("clamp 36 standard", 64, 64 + 80);
    made.day = changed.day = (rodt_date){0};
    made.reasons = changed.reasons = RODT_REASON_BIT(RODT_REASON_DATE_UNREADABLE);
    expect_own(nsc, old_first, made, NULL);
    expect_own(nsc, new_first, made, NULL);
    expect_own(nsc, undated, made, "1 1/2");
    expect_own(us, undated, made, "1 1/2");
    expect_own(us, undated, changed, NULL);
}

/* A stroke of 126/64 in under a limit of 2 in, and two other readings at either end: each pair of them counts, and a
 * pair alone takes the proof away. */
static void every_pair_of_other_readings_counts(void **state)
{
    (void)state;
    for (int pair = 1; pair < 9; pair++) {
        rodt_reading made = reading("30 standard", 128, 128 + 126);
        int released = pair % 3, applied = pair / 3;
        int64_t step = released > 0 && applied > 0 ? 2 : 3;
        for (int i = 1; i <= 2; i++) {
            made.other_released[i - 1] = inches(i == released ? 128 - step : 128 + 20, 64);
            made.other_applied[i - 1] = inches(i == applied ? 254 + step : 254 - 20, 64);
        }
        rodt_finding finding = judged(made);
        assert_int_equal(finding.verdict, RODT_VERDICT_UNDETERMINED);
        HAS(finding, LOST_BLANK);
        made.other_released[0] = made.other_released[1] = inches(127, 64);
        made.other_applied[0] = made.other_applied[1] = inches(255, 64);
        finding = judged(made);
        assert_int_equal(finding.verdict, RODT_VERDICT_IN_ADJUSTMENT);
        HAS_NOT(finding, LOST_BLANK);
    }
}

/* Without air nothing moves, and that says nothing of the brake; the window of a rule set is no matter. */
static void no_movement_without_air_is_undetermined(void **state)
{
    (void)state;
    rodt_reading made = reading("30 standard", 160, 160);
    made.pressure = (rodt_pressure){0, 1};
    made.chamber.rated_stroke = inches(5, 2);
    assert_false(rodt_pressure_given(rodt_rules_pressure_from(rodt_rules_find("rated-80"))));
    rodt_finding finding = judged_by("rated-80", &made);
    assert_int_equal(finding.verdict, RODT_VERDICT_UNDETERMINED);
    HAS(finding, PRESSURE_LOW);
    made.pressure = psi(1);
    finding = judged_by("rated-80", &made);
    assert_int_equal(finding.verdict, RODT_VERDICT_INOPERATIVE);
    HAS_NOT(finding, PRESSURE_LOW);
}

/* What limits a stroke is said by one reason alone. */
static void each_basis_has_its_own_reason(void **state)
{
    (void)state;
    rodt_reading made = reading("clamp 18 standard", 128, 128 + 100);
    assert_true(judged(made).reasons == RODT_REASON_BIT(RODT_REASON_NO_PUBLISHED_LIMIT));
    made.chamber.rated_stroke = inches(9, 4);
    uint64_t within = RODT_REASON_BIT(RODT_REASON_WITHIN_LIMIT);
    assert_true(judged(made).reasons == (within | RODT_REASON_BIT(RODT_REASON_LIMIT_FROM_RATED)));
    made.chamber.marked_limit = inches(7, 4);
    assert_true(judged(made).reasons == (within | RODT_REASON_BIT(RODT_REASON_LIMIT_MARKED)));
    made.day = day(2012, 9, 4);
    assert_true(judged(made).reasons == RODT_REASON_BIT(RODT_REASON_RULES_NOT_IN_FORCE));
}

/* The long row of the table is shown beside an assumed standard one; type 36 has none, whatever is marked. */
static void the_long_limit_is_one_of_the_table(void **state)
{
    (void)state;
    rodt_finding finding = judged(reading("clamp 30", 128, 128 + 100));
    HAS(finding, ASSUMED_STANDARD);
    assert_int_equal(rodt_length_compare(finding.long_limit, inches(5, 2)), 0);
    rodt_reading marked = reading("clamp 36", 128, 128 + 100);
    marked.chamber.rated_stroke = inches(13, 4);
    finding = judged(marked);
    HAS(finding, ASSUMED_STANDARD);
    assert_false(rodt_length_given(finding.long_limit));
}

/* What else a text may mean stays with the finding. */
static void the_other_readings_are_kept(void **state)
{
    (void)state;
    rodt_reading made = reading("30 standard", 128, 240);
    made.other_released[0] = inches(130, 64);
    made.other_applied[0] = inches(241, 64);
    rodt_finding finding = judged(made);
    assert_memory_equal(finding.other_released, made.other_released, sizeof made.other_released);
    assert_memory_equal(finding.other_applied, made.other_applied, sizeof made.other_applied);
}

static void a_day_before_the_text_has_no_verdict(void **state)
{
    (void)state;
    rodt_reading made = reading("30 standard", 128, 128 + 120);
    made.day = day(2012, 9, 4);
    rodt_finding finding = judged(made);
    assert_int_equal(finding.verdict, RODT_VERDICT_UNDETERMINED);
    HAS(finding, RULES_NOT_IN_FORCE);
    made.day = day(2012, 9, 5);
    assert_int_equal(judged(made).verdict, RODT_VERDICT_IN_ADJUSTMENT);
}

/* 49 CFR 393.47(e)(1) prints 1 3/4 in (44.5 mm) and 1 3/8 in (34.9 mm); 1 in is 25.4 mm exactly. */
static void the_inch_figure_decides_against_the_printed_millimetres(void **state)
{
    (void)state;
    rodt_reading made = reading("24 standard", 0, 0);
    assert_int_equal(rodt_length_from_mm(50, 1, &made.released), RODT_OK);
    assert_int_equal(rodt_length_from_mm(945, 10, &made.applied), RODT_OK);
    made.unit = RODT_UNIT_MM;
    rodt_finding finding = judged(made);
    assert_int_equal(finding.verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    HAS(finding, PRINTED_MM_DIFFERS);
    made.unit = RODT_UNIT_IN;
    finding = judged(made);
    HAS_NOT(finding, PRINTED_MM_DIFFERS);

    made = reading("12 standard", 0, 0);
    assert_int_equal(rodt_length_from_mm(50, 1, &made.released), RODT_OK);
    assert_int_equal(rodt_length_from_mm(8492, 100, &made.applied), RODT_OK);
    made.unit = RODT_UNIT_MM;
    finding = judged(made);
    assert_int_equal(finding.verdict, RODT_VERDICT_IN_ADJUSTMENT);
    HAS(finding, PRINTED_MM_DIFFERS);
    assert_int_equal(rodt_length_from_mm(8440, 100, &made.applied), RODT_OK);
    finding = judged(made);
    HAS_NOT(finding, PRINTED_MM_DIFFERS);
}

static rodt_finding with_division(int64_t stroke, int64_t stroke_den, bool mm, rodt_length division)
{
    rodt_reading made = reading("30 standard", 128, 128);
    rodt_length step;
    assert_int_equal(mm ? rodt_length_from_mm(stroke, stroke_den, &step)
                        : rodt_length_from_inches(stroke, stroke_den, &step), RODT_OK);
    assert_int_equal(rodt_length_add(made.released, step, &made.applied), RODT_OK);
    made.division = division;
    return judged(made);
}

static void assert_chance(rodt_finding finding, rodt_proof proof, int64_t num, int64_t den)
{
    assert_int_equal(finding.proof, proof);
    assert_int_equal(finding.probability_over.num, num);
    assert_int_equal(finding.probability_over.den, den);
}

/* Derived figures: triangular law of the difference of two readings, each uniform within half a division
 * (GUM, JCGM 100, 4.3.7, 4.3.9). With d = 1 mm and 50.8 mm: 50 mm gives (1/5)^2/2 = 1/50; 51 mm gives
 * 1 - (4/5)^2/2 = 17/25. */
static void the_tape_proves_or_does_not(void **state)
{
    (void)state;
    rodt_length eighth = inches(1, 8);
    rodt_length mm;
    assert_int_equal(rodt_length_from_mm(1, 1, &mm), RODT_OK);
    assert_chance(with_division(15, 8, false, eighth), RODT_PROOF_PROVEN_WITHIN, 0, 1);
    assert_chance(with_division(2, 1, false, eighth), RODT_PROOF_NOT_RESOLVED, 1, 2);
    assert_chance(with_division(17, 8, false, eighth), RODT_PROOF_NOT_RESOLVED, 1, 1);
    assert_chance(with_division(145, 64, false, eighth), RODT_PROOF_PROVEN_OVER, 1, 1);
    assert_chance(with_division(50, 1, true, mm), RODT_PROOF_NOT_RESOLVED, 1, 50);
    assert_chance(with_division(51, 1, true, mm), RODT_PROOF_NOT_RESOLVED, 17, 25);
    assert_chance(with_division(49, 1, true, mm), RODT_PROOF_PROVEN_WITHIN, 0, 1);
    assert_chance(with_division(52, 1, true, mm), RODT_PROOF_PROVEN_OVER, 1, 1);
    rodt_finding unasked = judged(reading("30 standard", 128, 240));
    assert_int_equal(unasked.proof, RODT_PROOF_NOT_ASKED);
    assert_false(rodt_ratio_given(unasked.probability_over));
}

/* 2 - 2 - 1/5^7 + 1/2^19 is margin enough for a sixteenth to say nothing, and too fine for its chance. */
static void a_chance_that_does_not_fit_is_not_given(void **state)
{
    (void)state;
    static const struct {
        rodt_length released, applied;
    } cases[] = {{{1, 524288}, {2 * 78125 + 1, 78125}}, /* half of the area does not fit */
                 {{1, 536870912}, {2 * INT64_C(244140625) + 1, 244140625}}, /* the area does not */
                 {{1, 536870912}, {2 * INT64_C(248046875) + 1, 248046875}}}; /* 5^9 x 127 */
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        rodt_reading made = reading("30 standard", 0, 0);
        made.released = cases[i].released;
        made.applied = cases[i].applied;
        made.division = inches(1, 16);
        rodt_finding finding = judged(made);
        assert_int_equal(finding.verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
        assert_chance(finding, RODT_PROOF_NOT_RESOLVED, 0, 0);
    }
    /* What is proven has a chance of 0 or 1 all the same; nor does a margin in parts of this division fit. */
    rodt_reading made = reading("30 standard", 0, 0);
    made.released = (rodt_length){1, 536870912};
    assert_int_equal(rodt_length_from_mm(1, 1, &made.division), RODT_OK);
    made.applied = (rodt_length){INT64_C(2) * 244140625 + 1, 244140625};
    assert_chance(judged(made), RODT_PROOF_NOT_RESOLVED, 0, 0);
    made.applied = (rodt_length){INT64_C(244140625) + 1, 244140625};
    assert_chance(judged(made), RODT_PROOF_PROVEN_WITHIN, 0, 1);
    made.applied = (rodt_length){INT64_C(3) * 244140625 + 1, 244140625};
    assert_chance(judged(made), RODT_PROOF_PROVEN_OVER, 1, 1);
    made.applied = (rodt_length){INT64_C(2) * 244140625 + 1, 244140625};
    assert_chance(judged(made), RODT_PROOF_NOT_RESOLVED, 0, 0);
    /* A limit in parts of 5^13, a stroke in parts of 127 and a division in parts of 2^29. */
    made = reading("18", 0, 0);
    made.chamber.rated_stroke = (rodt_length){610351563, 244140625};
    made.released = (rodt_length){0, 1};
    assert_int_equal(rodt_length_from_mm(50, 1, &made.applied), RODT_OK);
    made.division = (rodt_length){268435455, 536870912};
    assert_chance(judged(made), RODT_PROOF_NOT_RESOLVED, 0, 0);
}

static void the_division_never_changes_the_verdict(void **state)
{
    (void)state;
    for (int64_t stroke = 1; stroke <= 200; stroke++) {
        rodt_reading made = reading("24 standard", 100, 100 + stroke);
        rodt_verdict verdict = judged(made).verdict;
        made.division = inches(1, 4);
        assert_int_equal(judged(made).verdict, verdict);
    }
}

/* For every chamber: once over, always over; the same offset on both readings changes nothing. */
static void verdicts_are_monotone_and_shift_with_the_tape(void **state)
{
    (void)state;
    const rodt_rules *rules = rodt_rules_find("us-fmcsr");
    for (size_t i = 0; i < rodt_rules_limit_count(rules); i++) {
        const rodt_limit *row = rodt_rules_limit_at(rules, i);
        rodt_reading made = reading("30", 0, 0);
        memset(&made.chamber, 0, sizeof made.chamber);
        made.chamber.family = row->family;
        made.chamber.stroke_class =
            row->stroke_class == RODT_STROKE_CLASS_ANY ? RODT_STROKE_CLASS_UNKNOWN : row->stroke_class;
        made.chamber.rated_stroke = row->rated_stroke;
        memcpy(made.chamber.size, row->size, strlen(row->size) + 1);
        rodt_verdict before = RODT_VERDICT_IN_ADJUSTMENT;
        for (int64_t stroke = 1; stroke <= 256; stroke++) {
            made.released = inches(0, 1);
            made.applied = inches(stroke, 64);
            rodt_finding low = judged(made);
            made.released = inches(321, 64);
            made.applied = inches(321 + stroke, 64);
            rodt_finding high = judged(made);
            assert_int_equal(low.verdict, high.verdict);
            assert_int_equal(rodt_length_compare(low.applied_stroke, high.applied_stroke), 0);
            assert_true(low.verdict == before || before == RODT_VERDICT_IN_ADJUSTMENT);
            before = low.verdict;
        }
        assert_int_equal(before, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    }
}

/* A house rule of 1 5/8 in on a type 20: fails the house, passes the law. Invented limits. */
static void a_carriers_limit_is_stricter_and_both_are_said(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit\nclamp,20,standard,1 5/8\n";
    rodt_rules *own;
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "yard", table, sizeof table - 1, &own, NULL),
                     RODT_OK);
    static const struct {
        int64_t stroke;
        rodt_verdict verdict;
        rodt_reason reason;
    } cases[] = {{103, RODT_VERDICT_IN_ADJUSTMENT, RODT_REASON_WITHIN_LIMIT},
                 {104, RODT_VERDICT_IN_ADJUSTMENT, RODT_REASON_AT_LIMIT},
                 {105, RODT_VERDICT_OUT_OF_ADJUSTMENT, RODT_REASON_OVER_OWN_LIMIT},
                 {112, RODT_VERDICT_OUT_OF_ADJUSTMENT, RODT_REASON_OVER_OWN_LIMIT},
                 {113, RODT_VERDICT_OUT_OF_ADJUSTMENT, RODT_REASON_OVER_LIMIT}};
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        rodt_reading made = reading("clamp 20 standard", 64, 64 + cases[i].stroke);
        rodt_finding finding;
        assert_int_equal(rodt_reading_judge(&made, own, &finding, NULL), RODT_OK);
        assert_int_equal(finding.verdict, cases[i].verdict);
        assert_true(rodt_finding_has(&finding, cases[i].reason));
        assert_int_equal(rodt_length_compare(finding.limit, inches(13, 8)), 0);
        assert_int_equal(rodt_length_compare(finding.law_limit, inches(7, 4)), 0);
        assert_non_null(finding.own_row);
        assert_non_null(finding.law_row);
    }
    rodt_reading other = reading("clamp 30 standard", 64, 64 + 128);
    rodt_finding finding;
    assert_int_equal(rodt_reading_judge(&other, own, &finding, NULL), RODT_OK);
    assert_int_equal(finding.verdict, RODT_VERDICT_IN_ADJUSTMENT);
    assert_null(finding.own_row);
    rodt_rules_unref(own);
}

/* us-inuse limits no stroke and says nothing of a stroke exactly at a limit, so the carrier's limit fails it. Invented
 * limit. */
static void a_limit_that_the_rule_set_does_not_let_pass_fails_at_the_limit(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit\nclamp,30,standard,1 3/4\n";
    rodt_rules *own;
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-inuse"), "yard", table, sizeof table - 1, &own, NULL), RODT_OK);
    static const struct {
        int64_t stroke;
        rodt_verdict verdict;
        rodt_reason reason;
        rodt_proof proof;
    } cases[] = {{103, RODT_VERDICT_UNDETERMINED, RODT_REASON_WITHIN_LIMIT, RODT_PROOF_PROVEN_WITHIN},
                 {104, RODT_VERDICT_UNDETERMINED, RODT_REASON_WITHIN_LIMIT, RODT_PROOF_NOT_RESOLVED},
                 {111, RODT_VERDICT_UNDETERMINED, RODT_REASON_WITHIN_LIMIT, RODT_PROOF_NOT_RESOLVED},
                 {112, RODT_VERDICT_OUT_OF_ADJUSTMENT, RODT_REASON_AT_LIMIT, RODT_PROOF_NOT_RESOLVED},
                 {113, RODT_VERDICT_OUT_OF_ADJUSTMENT, RODT_REASON_OVER_OWN_LIMIT, RODT_PROOF_NOT_RESOLVED},
                 {119, RODT_VERDICT_OUT_OF_ADJUSTMENT, RODT_REASON_OVER_OWN_LIMIT, RODT_PROOF_NOT_RESOLVED},
                 {120, RODT_VERDICT_OUT_OF_ADJUSTMENT, RODT_REASON_OVER_OWN_LIMIT, RODT_PROOF_PROVEN_OVER},
                 {121, RODT_VERDICT_OUT_OF_ADJUSTMENT, RODT_REASON_OVER_OWN_LIMIT, RODT_PROOF_PROVEN_OVER}};
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        rodt_reading made = reading("clamp 30 standard", 64, 64 + cases[i].stroke);
        rodt_finding finding;
        made.division = inches(1, 8);
        assert_int_equal(rodt_reading_judge(&made, own, &finding, NULL), RODT_OK);
        assert_int_equal(finding.verdict, cases[i].verdict);
        assert_true(rodt_finding_has(&finding, cases[i].reason));
        assert_int_equal(finding.proof, cases[i].proof);
    }
    rodt_rules_unref(own);
}

/* Clamp 36 has 2 1/4 in until 2021-10-13 and 2 1/2 in since, and the carrier 2 in on both days: the law that is named
 * is in doubt, so nothing passes. Invented limit. */
static void a_day_in_doubt_matters_though_the_carriers_limit_is_the_same(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit\nclamp,36,standard,2\n";
    rodt_rules *own;
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "yard", table, sizeof table - 1, &own, NULL), RODT_OK);
    rodt_reading made = reading("36 standard", 64, 64 + 120);
    rodt_finding finding;
    made.day = day(2021, 10, 14);
    assert_int_equal(rodt_reading_judge(&made, own, &finding, NULL), RODT_OK);
    assert_int_equal(finding.verdict, RODT_VERDICT_IN_ADJUSTMENT);
    made.other_day = day(2021, 10, 13);
    assert_int_equal(rodt_reading_judge(&made, own, &finding, NULL), RODT_OK);
    assert_int_equal(finding.verdict, RODT_VERDICT_UNDETERMINED);
    HAS(finding, DATE_AMBIGUOUS);
    assert_false(rodt_length_given(finding.limit));
    rodt_rules_unref(own);
}

/* Either end of its time makes a rule set one that was not always in force. Invented ends. */
static void a_day_that_nobody_can_read_passes_only_under_a_rule_set_without_ends(void **state)
{
    (void)state;
    struct rodt_rules always = *rodt_rules_find("ca-nsc"), from = always, until = always;
    rodt_reading made = reading("30 standard", 128, 240), over = reading("30 standard", 128, 260);
    rodt_finding finding;
    from.from = day(2012, 9, 5);
    until.until = day(2199, 12, 31);
    made.day = over.day = (rodt_date){0};
    made.reasons = over.reasons = RODT_REASON_BIT(RODT_REASON_DATE_UNREADABLE);
    const struct {
        const rodt_rules *rules;
        rodt_verdict pass;
    } cases[] = {{&always, RODT_VERDICT_IN_ADJUSTMENT}, {&from, RODT_VERDICT_UNDETERMINED}, {&until, RODT_VERDICT_UNDETERMINED}};
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        assert_int_equal(rodt_reading_judge(&made, cases[i].rules, &finding, NULL), RODT_OK);
        assert_int_equal(finding.verdict, cases[i].pass);
        assert_int_equal(rodt_reading_judge(&over, cases[i].rules, &finding, NULL), RODT_OK);
        assert_int_equal(finding.verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    }
}

/* Type 18 is in no table: the house can fail it, but nothing passes it. Invented limit. */
static void a_carriers_limit_alone_cannot_pass_a_brake(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit\nclamp,18,standard,1 1/2\n";
    rodt_rules *own;
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "yard", table, sizeof table - 1, &own, NULL),
                     RODT_OK);
    rodt_reading made = reading("18", 64, 64 + 96);
    rodt_finding finding;
    assert_int_equal(rodt_reading_judge(&made, own, &finding, NULL), RODT_OK);
    assert_int_equal(finding.verdict, RODT_VERDICT_UNDETERMINED);
    HAS(finding, NO_PUBLISHED_LIMIT);
    made.applied = inches(64 + 97, 64);
    assert_int_equal(rodt_reading_judge(&made, own, &finding, NULL), RODT_OK);
    assert_int_equal(finding.verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    HAS(finding, OVER_OWN_LIMIT);
    HAS_NOT(finding, OVER_LIMIT);
    rodt_rules_unref(own);
}

static void unconfirmed_limits_are_marked(void **state)
{
    (void)state;
    rodt_reading made = reading("24 standard", 128, 240);
    rodt_finding finding = judged_by("ca-nsc", &made);
    HAS(finding, LIMIT_UNCONFIRMED);
    HAS_NOT(finding, LIMIT_COMMON_PRACTICE);
    made = reading("30 standard", 128, 240);
    finding = judged_by("ca-on", &made);
    HAS(finding, LIMIT_COMMON_PRACTICE);
    HAS_NOT(finding, LIMIT_UNCONFIRMED);
    HAS_NOT(finding, MAJOR_DEFECT);
    finding = judged_by("ca-nsc", &made);
    assert_int_not_equal(finding.evidence, RODT_EVIDENCE_CHECKED);
    finding = judged_by("us-fmcsr", &made);
    HAS_NOT(finding, LIMIT_UNCONFIRMED);
}

/* O. Reg. 199/07, Schedule 1, item 1: a stroke over the limit and an inoperative brake; not what proves nothing, and not
 * what is over the carrier's own limit alone. */
static void ontario_ranks_what_is_out(void **state)
{
    (void)state;
    rodt_reading over = reading("30 standard", 128, 128 + 136), dead = reading("30 standard", 128, 128);
    rodt_finding finding = judged_by("ca-on", &over);
    HAS(finding, MAJOR_DEFECT);
    finding = judged_by("ca-on", &dead);
    HAS(finding, MAJOR_DEFECT);
    finding = judged_by("us-fmcsr", &over);
    HAS_NOT(finding, MAJOR_DEFECT);
    over.engine_running = RODT_RECORDED_YES;
    finding = judged_by("ca-on", &over);
    HAS_NOT(finding, MAJOR_DEFECT);
    static const char table[] = "family,size,class,limit\nclamp,30,standard,1 3/4\n";
    rodt_rules *own;
    assert_int_equal(rodt_rules_load(rodt_rules_find("ca-on"), "yard", table, sizeof table - 1, &own, NULL), RODT_OK);
    rodt_reading between = reading("30 standard", 128, 128 + 120);
    assert_int_equal(rodt_reading_judge(&between, own, &finding, NULL), RODT_OK);
    HAS(finding, OVER_OWN_LIMIT);
    HAS_NOT(finding, MAJOR_DEFECT);
    over.engine_running = RODT_RECORDED_NOT_RECORDED;
    assert_int_equal(rodt_reading_judge(&over, own, &finding, NULL), RODT_OK);
    HAS(finding, MAJOR_DEFECT);
    rodt_rules_unref(own);
}

static void refused(rodt_reading made, const rodt_rules *rules, rodt_finding *finding)
{
    rodt_finding untouched = *finding;
    assert_int_equal(rodt_reading_judge(&made, rules, finding, NULL), RODT_E_ARGUMENT);
    assert_memory_equal(finding, &untouched, sizeof untouched);
}

static void values_that_no_reader_makes_are_refused(void **state)
{
    (void)state;
    const rodt_rules *rules = rodt_rules_find("us-fmcsr");
    rodt_reading good = reading("30", 128, 240);
    rodt_finding finding;
    memset(&finding, 0x5A, sizeof finding);
    rodt_reading bad = good;
    bad.released = inches(-1, 64);
    refused(bad, rules, &finding);
    bad = good;
    bad.pressure = (rodt_pressure){-5, 1};
    refused(bad, rules, &finding);
    bad = good;
    bad.division = inches(0, 1);
    refused(bad, rules, &finding);
    bad = good;
    bad.drum = (rodt_drum)9;
    refused(bad, rules, &finding);
    bad = good;
    bad.engine_running = (rodt_recorded)7;
    refused(bad, rules, &finding);
    bad = good;
    bad.unit = (rodt_unit)5;
    refused(bad, rules, &finding);
    bad = good;
    bad.chamber.family = (rodt_family)77;
    refused(bad, rules, &finding);
    assert_int_equal(rodt_reading_judge(&good, NULL, &finding, NULL), RODT_E_UNKNOWN_RULES);
    assert_int_equal(rodt_reading_judge(NULL, rules, &finding, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_reading_judge(&good, rules, NULL, NULL), RODT_E_ARGUMENT);
}

static void readings_too_fine_to_subtract_are_a_status(void **state)
{
    (void)state;
    rodt_reading made = reading("30", 128, 240);
    rodt_finding finding;
    made.released = (rodt_length){1, INT64_MAX};
    made.applied = (rodt_length){3, INT64_MAX - 1};
    assert_int_equal(rodti_reading_judge(&made, rodt_rules_find("us-fmcsr"), &finding), RODT_E_RANGE);
    assert_int_equal(rodt_reading_judge(&made, rodt_rules_find("us-fmcsr"), &finding, NULL), RODT_E_ARGUMENT);
}

/* A stroke in parts of 2^29 x 5^12 and a limit in millimetres, parts of 127, have no common 64-bit denominator. */
static void a_margin_that_does_not_fit_is_a_status(void **state)
{
    (void)state;
    const rodt_rules *rules = rodt_rules_find("us-fmcsr");
    rodt_reading made = reading("18", 64, 128);
    rodt_finding finding, untouched;
    rodt_error error;
    memset(&finding, 0x5A, sizeof finding);
    untouched = finding;
    assert_int_equal(rodt_length_from_mm(40, 1, &made.chamber.marked_limit), RODT_OK);
    rodt_reading lost = made; /* only what a lost blank would make of it is so fine */
    lost.other_released[0] = made.released = (rodt_length){1, 536870912};
    lost.other_applied[0] = made.applied = (rodt_length){244140626, 244140625};
    assert_int_equal(rodt_reading_judge(&made, rules, &finding, &error), RODT_E_RANGE);
    assert_int_equal(error.status, RODT_E_RANGE);
    assert_int_equal(rodt_reading_judge(&lost, rules, &finding, &error), RODT_E_RANGE);
    assert_int_equal(error.status, RODT_E_RANGE);
    assert_memory_equal(&finding, &untouched, sizeof finding);
    lost.other_applied[0] = (rodt_length){0, 0};
    assert_int_equal(rodt_reading_judge(&lost, rules, &finding, NULL), RODT_OK);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(at_under_and_over_the_limit),
        cmocka_unit_test(no_movement_is_inoperative_whatever_the_limit),
        cmocka_unit_test(a_rod_that_hardly_moves_is_a_doubt),
        cmocka_unit_test(swapped_readings_give_no_stroke),
        cmocka_unit_test(missing_facts_are_named_and_the_rest_is_computed),
        cmocka_unit_test(pressure_outside_the_window_takes_one_side_away),
        cmocka_unit_test(each_rule_set_has_its_own_window),
        cmocka_unit_test(a_pressure_that_nobody_wrote_down_is_said),
        cmocka_unit_test(engine_and_spring_brake_spoil_any_reading),
        cmocka_unit_test(a_hot_drum_is_judged_as_found),
        cmocka_unit_test(unknown_class_and_family_are_strict_and_named),
        cmocka_unit_test(beyond_the_rated_stroke_is_out_and_doubted),
        cmocka_unit_test(an_unlisted_chamber_is_judged_by_its_marks),
        cmocka_unit_test(a_day_that_is_in_doubt_matters_only_where_the_limit_changed),
        cmocka_unit_test(a_day_in_doubt_counts_for_a_carriers_limit_too),
        cmocka_unit_test(a_day_that_nobody_can_read_counts_for_every_row),
        cmocka_unit_test(every_pair_of_other_readings_counts),
        cmocka_unit_test(no_movement_without_air_is_undetermined),
        cmocka_unit_test(each_basis_has_its_own_reason),
        cmocka_unit_test(the_long_limit_is_one_of_the_table),
        cmocka_unit_test(the_other_readings_are_kept),
        cmocka_unit_test(a_day_before_the_text_has_no_verdict),
        cmocka_unit_test(the_inch_figure_decides_against_the_printed_millimetres),
        cmocka_unit_test(the_tape_proves_or_does_not),
        cmocka_unit_test(a_chance_that_does_not_fit_is_not_given),
        cmocka_unit_test(the_division_never_changes_the_verdict),
        cmocka_unit_test(verdicts_are_monotone_and_shift_with_the_tape),
        cmocka_unit_test(a_carriers_limit_is_stricter_and_both_are_said),
        cmocka_unit_test(a_limit_that_the_rule_set_does_not_let_pass_fails_at_the_limit),
        cmocka_unit_test(a_day_in_doubt_matters_though_the_carriers_limit_is_the_same),
        cmocka_unit_test(a_day_that_nobody_can_read_passes_only_under_a_rule_set_without_ends),
        cmocka_unit_test(a_carriers_limit_alone_cannot_pass_a_brake),
        cmocka_unit_test(unconfirmed_limits_are_marked), cmocka_unit_test(ontario_ranks_what_is_out),
        cmocka_unit_test(values_that_no_reader_makes_are_refused),
        cmocka_unit_test(readings_too_fine_to_subtract_are_a_status),
        cmocka_unit_test(a_margin_that_does_not_fit_is_a_status),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
