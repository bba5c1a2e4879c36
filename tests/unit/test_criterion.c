/* SPDX-License-Identifier: Apache-2.0 */
/* Counting brakes by the roadside criterion: how a finding counts, published sums, every count up to 40 brakes. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <stdlib.h>
#include <string.h>

#include "rodtravel/rodtravel.h"
#include "rules/tables.h"
#include "support.h"

/* A type 30 standard (limit 2 in, 49 CFR 393.47(e)(1)) with the stroke in 64ths of an inch at a pressure in psi. */
static rodt_finding type_30_by(const rodt_rules *rules, int64_t stroke, int64_t psi)
{
    rodt_reading reading = {0};
    rodt_finding finding;
    assert_int_equal(rodt_chamber_parse("clamp 30 standard", &reading.chamber, NULL), RODT_OK);
    assert_int_equal(rodt_length_from_inches(2, 1, &reading.released), RODT_OK);
    assert_int_equal(rodt_length_from_inches(128 + stroke, 64, &reading.applied), RODT_OK);
    assert_int_equal(rodt_pressure_from_psi(psi, 1, &reading.pressure), RODT_OK);
    assert_int_equal(rodt_reading_judge(&reading, rules, &finding, NULL), RODT_OK);
    return finding;
}

static rodt_finding type_30(int64_t stroke) { return type_30_by(rodt_rules_find("us-fmcsr"), stroke, 95); }

static void assert_ratio(rodt_ratio ratio, int64_t num, int64_t den)
{
    if (ratio.num != num || ratio.den != den)
        fail_msg("%lld/%lld is not %lld/%lld", (long long)ratio.num, (long long)ratio.den, (long long)num,
                 (long long)den);
}

static rodt_count judged(rodt_tally tally, uint32_t brakes)
{
    rodt_count count;
    memset(&count, 0xA5, sizeof count);
    assert_int_equal(rodt_tally_judge(&tally, brakes, &count, NULL), RODT_OK);
    return count;
}

/* --- How one finding counts ------------------------------------------------------------------------------- */

/* Weights as described in the trade press in August 2021: over by 1/4 in or more one, less half. */
static void weights_change_at_the_limit_and_a_quarter_beyond(void **state)
{
    (void)state;
    for (int64_t stroke = 1; stroke <= 160; stroke++) {
        rodt_finding finding = type_30(stroke);
        rodt_defect expected = stroke <= 128   ? RODT_DEFECT_NONE
                               : stroke < 144 ? RODT_DEFECT_HALF
                                              : RODT_DEFECT_FULL;
        assert_int_equal(rodt_finding_defect(&finding), expected);
    }
}

static void a_dead_brake_is_one_and_an_unproven_one_is_unknown(void **state)
{
    (void)state;
    const rodt_rules *law = rodt_rules_find("us-fmcsr");
    rodt_finding dead = type_30(0), swapped = type_30(-8);
    rodt_finding low_pass = type_30_by(law, 100, 80), low_fail = type_30_by(law, 144, 80);
    rodt_finding high_pass = type_30_by(law, 100, 110), high_fail = type_30_by(law, 144, 110);
    assert_int_equal(rodt_finding_defect(&dead), RODT_DEFECT_FULL);
    assert_int_equal(rodt_finding_defect(&swapped), RODT_DEFECT_UNKNOWN);
    assert_int_equal(rodt_finding_defect(&low_pass), RODT_DEFECT_UNKNOWN);
    assert_int_equal(rodt_finding_defect(&low_fail), RODT_DEFECT_FULL);
    assert_int_equal(rodt_finding_defect(&high_pass), RODT_DEFECT_NONE);
    assert_int_equal(rodt_finding_defect(&high_fail), RODT_DEFECT_UNKNOWN);
    assert_int_equal(rodt_finding_defect(NULL), RODT_DEFECT_UNKNOWN);
}

static void a_carriers_own_limit_makes_no_defect(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit\nclamp,30,standard,1 3/4\n";
    rodt_rules *own = NULL;
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "own", table, sizeof table - 1, &own, NULL),
                     RODT_OK);
    rodt_finding within_law = type_30_by(own, 120, 95), half = type_30_by(own, 129, 95), full = type_30_by(own, 144, 95);
    assert_int_equal(within_law.verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    assert_int_equal(rodt_finding_defect(&within_law), RODT_DEFECT_NONE);
    assert_int_equal(rodt_finding_defect(&half), RODT_DEFECT_HALF);
    assert_int_equal(rodt_finding_defect(&full), RODT_DEFECT_FULL);
    rodt_finding at_law = type_30_by(own, 128, 95);
    assert_int_equal(at_law.verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    assert_int_equal(rodt_finding_defect(&at_law), RODT_DEFECT_NONE); /* "not greater than" */
    rodt_rules_unref(own);
}

/* Whether the rod hardly moved is no matter of marks. Invented limit. */
static void a_small_excess_over_a_carriers_limit_is_none(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit\nclamp,30,standard,1/4\n";
    rodt_rules *own = NULL;
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "own", table, sizeof table - 1, &own, NULL), RODT_OK);
    rodt_finding hardly = type_30_by(own, 24, 95);
    assert_int_equal(hardly.verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    assert_true(rodt_finding_has(&hardly, RODT_REASON_HARDLY_MOVED));
    assert_int_equal(rodt_finding_defect(&hardly), RODT_DEFECT_NONE);
    rodt_rules_unref(own);
}

/* A law that says "less than" has the first half a defect exactly at its limit. Invented: no such law is in the tables. */
static void a_stroke_at_a_limit_that_does_not_pass_is_half_a_defect(void **state)
{
    (void)state;
    struct rodt_rules less_than = *rodt_rules_find("us-fmcsr");
    less_than.at_limit_passes = false;
    rodt_finding under = type_30_by(&less_than, 127, 95), at = type_30_by(&less_than, 128, 95);
    assert_int_equal(under.verdict, RODT_VERDICT_IN_ADJUSTMENT);
    assert_int_equal(rodt_finding_defect(&under), RODT_DEFECT_NONE);
    assert_int_equal(at.verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    assert_int_equal(rodt_finding_defect(&at), RODT_DEFECT_HALF);
}

/* By how much a brake is over is not known without a limit of the law, or where the excess does not fit: a stroke in
 * parts of 2^29 x 5^12 and a limit marked in millimetres have no common 64-bit denominator. Invented limit. */
static void an_excess_that_nobody_can_say_has_no_weight(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit\nclamp,18,standard,1\n";
    rodt_rules *own = NULL;
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "own", table, sizeof table - 1, &own, NULL), RODT_OK);
    rodt_form text = {.chamber = "18 standard", .released = "1/536870912", .applied = "1 156250001/244140625"};
    rodt_finding finding;
    assert_int_equal(rodt_form_judge(&text, own, &finding, NULL), RODT_OK);
    assert_int_equal(finding.verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    assert_int_equal(rodt_finding_defect(&finding), RODT_DEFECT_UNKNOWN);
    text.marked_limit = "40 mm";
    assert_int_equal(rodt_form_judge(&text, own, &finding, NULL), RODT_OK);
    assert_true(rodt_finding_has(&finding, RODT_REASON_OVER_LIMIT));
    assert_int_equal(rodt_finding_defect(&finding), RODT_DEFECT_UNKNOWN);
    text.marked_limit = "1 1/2";
    assert_int_equal(rodt_form_judge(&text, own, &finding, NULL), RODT_OK);
    assert_int_equal(rodt_finding_defect(&finding), RODT_DEFECT_HALF);
    finding.applied_stroke = (rodt_length){0, 0};
    assert_int_equal(rodt_finding_defect(&finding), RODT_DEFECT_UNKNOWN);
    finding.verdict = (rodt_verdict)RODT_VERDICT_END;
    assert_int_equal(rodt_finding_defect(&finding), RODT_DEFECT_UNKNOWN);
    rodt_rules_unref(own);
}

/* Long stroke beside the rated stroke of the standard chamber, 2 1/2 in, is judged as standard, 2 in. The carrier's own
 * 1 3/4 in fails 1 7/8 in, which the law would pass if the marks did not contradict each other. Invented limit. */
static void a_pass_by_marks_that_contradict_each_other_has_no_weight(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit\nclamp,30,standard,1 3/4\n";
    rodt_rules *own = NULL;
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "own", table, sizeof table - 1, &own, NULL), RODT_OK);
    rodt_form text = {.chamber = "clamp 30 long", .released = "2", .applied = "3 7/8", .rated_stroke = "2 1/2"};
    rodt_finding finding;
    assert_int_equal(rodt_form_judge(&text, own, &finding, NULL), RODT_OK);
    assert_int_equal(finding.verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    assert_true(rodt_finding_has(&finding, RODT_REASON_CONFLICTING_MARKS));
    assert_false(rodt_finding_has(&finding, RODT_REASON_BEYOND_RATED_STROKE));
    assert_int_equal(finding.law_basis, RODT_BASIS_TABLE);
    assert_int_equal(rodt_finding_defect(&finding), RODT_DEFECT_UNKNOWN);
    text.applied = "4 1/8";
    assert_int_equal(rodt_form_judge(&text, own, &finding, NULL), RODT_OK);
    assert_int_equal(rodt_finding_defect(&finding), RODT_DEFECT_HALF);
    rodt_rules_unref(own);
}

/* A rated stroke of 1 1/2 in on a housing whose limit is 2 in: one of the two is misread, and the law has no figure
 * for the excess. */
static void out_by_the_marks_alone_has_no_weight(void **state)
{
    (void)state;
    rodt_form text = {.chamber = "30 standard", .released = "2", .applied = "3 3/4", .rated_stroke = "1 1/2"};
    rodt_finding finding;
    assert_int_equal(rodt_form_judge(&text, rodt_rules_find("us-fmcsr"), &finding, NULL), RODT_OK);
    assert_int_equal(finding.verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    assert_int_equal(rodt_finding_defect(&finding), RODT_DEFECT_UNKNOWN);
    text.applied = "4 1/2";
    assert_int_equal(rodt_form_judge(&text, rodt_rules_find("us-fmcsr"), &finding, NULL), RODT_OK);
    assert_int_equal(rodt_finding_defect(&finding), RODT_DEFECT_FULL);
    finding.rules = NULL;
    assert_int_equal(rodt_finding_defect(&finding), RODT_DEFECT_UNKNOWN);
}

/* --- Sums ------------------------------------------------------------------------------------------------- */

static rodt_tally tally_of(const int64_t *strokes, size_t count)
{
    rodt_tally tally = {0};
    for (size_t i = 0; i < count; i++) {
        rodt_finding finding = type_30(strokes[i]);
        assert_int_equal(rodt_tally_add(&tally, &finding, NULL), RODT_OK);
    }
    return tally;
}

/* From memory of the handbook's example: type 30 at 2 1/4 in is one, a pair at 2 1/8 in is one. */
static void a_pair_at_two_and_an_eighth_is_one_brake(void **state)
{
    (void)state;
    const int64_t pair[] = {136, 136}, single[] = {144};
    assert_ratio(judged(tally_of(pair, 2), 10).defective, 1, 1);
    assert_ratio(judged(tally_of(single, 1), 10).defective, 1, 1);
    assert_int_equal(judged(tally_of(pair, 2), 10).outcome, RODT_OUTCOME_UNDETERMINED); /* eight are not measured */
}

static void ten_brakes(void **state)
{
    (void)state;
    const int64_t mixed[10] = {144, 136, 136, 96, 96, 96, 96, 96, 96, 96};
    const int64_t halves[10] = {136, 136, 136, 96, 96, 96, 96, 96, 96, 96};
    rodt_count out = judged(tally_of(mixed, 10), 0), below = judged(tally_of(halves, 10), 0);
    assert_int_equal(out.outcome, RODT_OUTCOME_OUT_OF_SERVICE);
    assert_ratio(out.share, 1, 5);
    assert_int_equal(out.whole_needed, 2);
    assert_int_equal(below.outcome, RODT_OUTCOME_BELOW_CRITERION);
    assert_ratio(below.share, 3, 20);
    assert_ratio(below.known_share, 3, 20);
}

/* One of each kind, the dead one among the full defects. */
static void each_brake_is_counted_once(void **state)
{
    (void)state;
    const int64_t strokes[] = {0, 144, 144, 136, 136, 136, 96, -8};
    const rodt_tally expected = {.brakes = 8, .full = 3, .half = 3, .unknown = 1, .inoperative = 1};
    rodt_tally tally = tally_of(strokes, 8);
    assert_memory_equal(&tally, &expected, sizeof tally);
}

static rodt_outcome outcome_of(const char *word)
{
    if (strcmp(word, "yes") == 0)
        return RODT_OUTCOME_OUT_OF_SERVICE;
    if (strcmp(word, "ambiguous") == 0)
        return RODT_OUTCOME_AMBIGUOUS;
    assert_string_equal(word, "no");
    return RODT_OUTCOME_BELOW_CRITERION;
}

static uint32_t small_number(const char *text)
{
    int64_t num, den;
    assert_true(read_fraction(text, &num, &den) && den == 1 && num >= 0 && num < 1000);
    return (uint32_t)num;
}

static void published_and_worked_vehicles(void **state)
{
    (void)state;
    enum { ID, BRAKES, FULL, HALF, PERCENT, OUT, WHY, CELLS };
    csv_file file;
    char *cells[CELLS];
    size_t rows = 0;
    csv_open(&file, CASES "/vehicles.csv");
    assert_int_equal(csv_read(&file, cells, CELLS), CELLS);
    while (csv_read(&file, cells, CELLS) == CELLS) {
        rodt_tally tally = {small_number(cells[BRAKES]), small_number(cells[FULL]), small_number(cells[HALF]), 0, 0, {0}};
        rodt_count count = judged(tally, 0);
        int64_t num, den;
        assert_true(read_fraction(cells[PERCENT], &num, &den));
        if (count.outcome != outcome_of(cells[OUT]) || count.share.num * 100 * den != num * count.share.den)
            fail_msg("%s: %s, %lld/%lld", cells[ID], rodt_outcome_name(count.outcome), (long long)count.share.num,
                     (long long)count.share.den);
        rows++;
    }
    csv_close(&file);
    assert_int_equal(rows, 37);
}

/* The second way: whole numbers of half brakes only, five times the sum against the brakes. */
static rodt_outcome expected_outcome(uint32_t brakes, uint32_t halves, uint32_t open)
{
    uint32_t whole = (brakes + 4) / 5;
    if (5 * halves >= 2 * brakes)
        return halves >= 2 * whole ? RODT_OUTCOME_OUT_OF_SERVICE : RODT_OUTCOME_AMBIGUOUS;
    return 5 * (halves + 2 * open) >= 2 * brakes ? RODT_OUTCOME_UNDETERMINED : RODT_OUTCOME_BELOW_CRITERION;
}

static void assert_share(rodt_ratio share, uint32_t halves, uint32_t brakes)
{
    assert_true(is_canonical(share.num, share.den));
    assert_true(share.num * 2 * (int64_t)brakes == share.den * (int64_t)halves);
}

static void compare_count(uint32_t brakes, uint32_t full, uint32_t half, uint32_t unknown)
{
    rodt_tally tally = {full + half + unknown, full, half, unknown, 0, {0}};
    uint32_t halves = 2 * full + half;
    rodt_count count = judged(tally, brakes);
    uint32_t open = unknown + count.unmeasured;
    assert_int_equal(count.unmeasured, brakes - tally.brakes);
    assert_int_equal(count.outcome, expected_outcome(brakes, halves, open));
    assert_int_equal(count.whole_needed, (brakes + 4) / 5);
    assert_share(count.share, halves, brakes);
    assert_share(count.worst_share, halves + 2 * open, brakes);
    assert_ratio(count.criterion, 1, 5);
    if (open < brakes)
        assert_share(count.known_share, halves, brakes - open);
    else
        assert_false(rodt_ratio_given(count.known_share));
}

/* Also with the brakes that are neither defective nor unknown left unmeasured instead of good. */
static void every_count_up_to_forty_brakes(void **state)
{
    (void)state;
    for (uint32_t brakes = 1; brakes <= 40; brakes++) {
        for (uint32_t full = 0; full <= brakes; full++) {
            for (uint32_t half = 0; full + half <= brakes; half++) {
                for (uint32_t unknown = 0; full + half + unknown <= brakes; unknown++) {
                    rodt_tally tally = {brakes, full, half, unknown, 0, {0}};
                    rodt_count count = judged(tally, 0);
                    assert_int_equal(count.outcome, expected_outcome(brakes, 2 * full + half, unknown));
                    assert_share(count.share, 2 * full + half, brakes);
                    compare_count(brakes, full, half, unknown);
                }
            }
        }
    }
}

/* Of the vehicles with 4 to 24 brakes in pairs these are the ones that the two readings part on. */
static void ambiguous_numbers_of_brakes(void **state)
{
    (void)state;
    for (uint32_t brakes = 4; brakes <= 24; brakes += 2) {
        bool found = false;
        for (uint32_t halves = 0; halves <= 2 * brakes; halves++) {
            rodt_tally tally = {brakes, halves / 2, halves % 2, 0, 0, {0}};
            found = found || judged(tally, 0).outcome == RODT_OUTCOME_AMBIGUOUS;
        }
        assert_int_equal(found, brakes == 6 || brakes == 12 || brakes == 16 || brakes == 22);
    }
}

/* The chart, from memory: 4 -> 1, 6 8 10 -> 2, 12 14 -> 3, 16 18 20 -> 4, 22 -> 5. */
static void chart_of_whole_brakes(void **state)
{
    (void)state;
    static const uint32_t chart[][2] = {{4, 1},  {6, 2},  {8, 2},  {10, 2}, {12, 3},
                                        {14, 3}, {16, 4}, {18, 4}, {20, 4}, {22, 5}};
    for (size_t i = 0; i < sizeof chart / sizeof chart[0]; i++)
        assert_int_equal(judged((rodt_tally){chart[i][0], 0, 0, 0, 0, {0}}, 0).whole_needed, chart[i][1]);
}

static void no_brake_is_no_answer(void **state)
{
    (void)state;
    rodt_count count = judged((rodt_tally){0}, 0);
    assert_int_equal(count.outcome, RODT_OUTCOME_UNDETERMINED);
    assert_false(rodt_ratio_given(count.share));
    assert_false(rodt_ratio_given(count.known_share));
    assert_ratio(count.defective, 0, 1);
    count = judged((rodt_tally){0}, 6);
    assert_int_equal(count.outcome, RODT_OUTCOME_UNDETERMINED);
    assert_ratio(count.worst_share, 1, 1);
}

static void wrong_calls(void **state)
{
    (void)state;
    rodt_tally tally = {4, 1, 1, 1, 1, {0}}, full = {.brakes = RODT_BRAKES_MAX};
    rodt_finding finding = type_30(100);
    rodt_count count, kept;
    memset(&count, 0x5A, sizeof count);
    kept = count;
    assert_int_equal(rodt_tally_add(NULL, &finding, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_tally_add(&tally, NULL, NULL), RODT_E_ARGUMENT);
    rodt_error error = {0};
    assert_int_equal(rodt_tally_add(NULL, &finding, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.text, "a tally and a finding are needed");
    assert_int_equal(rodt_tally_judge(NULL, 0, &count, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.text, "a tally and room for its count are needed");
    assert_int_equal(rodt_tally_add(&full, &finding, &error), RODT_E_RANGE);
    assert_int_equal(error.status, RODT_E_RANGE);
    assert_string_equal(error.field, "brakes");
    assert_int_equal(full.brakes, RODT_BRAKES_MAX);
    assert_int_equal(rodt_tally_judge(NULL, 0, &count, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_tally_judge(&tally, 0, NULL, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_tally_judge(&tally, 3, &count, NULL), RODT_E_ARGUMENT);
    error = (rodt_error){0};
    assert_int_equal(rodt_tally_judge(&tally, RODT_BRAKES_MAX + 1, &count, &error), RODT_E_RANGE);
    assert_string_equal(error.field, "brakes");
    rodt_tally over = {.brakes = RODT_BRAKES_MAX + 1}, reserved = tally;
    assert_int_equal(rodt_tally_judge(&over, 0, &count, &error), RODT_E_RANGE);
    for (size_t i = 0; i < sizeof reserved.reserved / sizeof reserved.reserved[0]; i++) {
        reserved.reserved[i] = 1;
        assert_int_equal(rodt_tally_judge(&reserved, 0, &count, &error), RODT_E_ARGUMENT);
        assert_string_equal(error.field, "reserved");
        reserved.reserved[i] = 0;
    }
    rodt_count most;
    assert_int_equal(rodt_tally_judge(&tally, RODT_BRAKES_MAX, &most, NULL), RODT_OK);
    assert_int_equal(most.unmeasured, RODT_BRAKES_MAX - 4);
    static const rodt_tally broken[] = {{4, 5, 0, 0, 0, {0}}, {4, 2, 2, 1, 0, {0}}, {4, 1, 0, 0, 2, {0}},
                                        {4, UINT32_MAX, 5, 0, 0, {0}}};
    for (size_t i = 0; i < sizeof broken / sizeof broken[0]; i++) {
        assert_int_equal(rodt_tally_judge(&broken[i], 0, &count, &error), RODT_E_ARGUMENT);
        assert_string_equal(error.field, "tally");
    }
    assert_int_equal(rodt_tally_judge(&tally, 3, &count, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.field, "brakes");
    assert_memory_equal(&count, &kept, sizeof count);
    full.full = RODT_BRAKES_MAX;
    assert_int_equal(rodt_tally_judge(&full, 0, &count, NULL), RODT_OK);
    assert_int_equal(count.outcome, RODT_OUTCOME_OUT_OF_SERVICE);
    full.full = full.inoperative = 0; /* 10^9 brakes of 10^9, and the last one that can be counted */
    full.brakes = RODT_BRAKES_MAX - 1;
    assert_int_equal(rodt_tally_add(&full, &finding, NULL), RODT_OK);
    assert_int_equal(rodt_tally_judge(&full, RODT_BRAKES_MAX, &count, NULL), RODT_OK);
    assert_int_equal(count.whole_needed, RODT_BRAKES_MAX / 5);
    assert_int_equal(rodt_tally_add(&full, &finding, NULL), RODT_E_RANGE);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(weights_change_at_the_limit_and_a_quarter_beyond),
        cmocka_unit_test(a_dead_brake_is_one_and_an_unproven_one_is_unknown),
        cmocka_unit_test(a_small_excess_over_a_carriers_limit_is_none),
        cmocka_unit_test(a_carriers_own_limit_makes_no_defect),
        cmocka_unit_test(a_stroke_at_a_limit_that_does_not_pass_is_half_a_defect),
        cmocka_unit_test(an_excess_that_nobody_can_say_has_no_weight),
        cmocka_unit_test(a_pass_by_marks_that_contradict_each_other_has_no_weight),
        cmocka_unit_test(out_by_the_marks_alone_has_no_weight),
        cmocka_unit_test(a_pair_at_two_and_an_eighth_is_one_brake),
        cmocka_unit_test(ten_brakes),
        cmocka_unit_test(each_brake_is_counted_once),
        cmocka_unit_test(published_and_worked_vehicles),
        cmocka_unit_test(every_count_up_to_forty_brakes),
        cmocka_unit_test(ambiguous_numbers_of_brakes),
        cmocka_unit_test(chart_of_whole_brakes),
        cmocka_unit_test(no_brake_is_no_answer),
        cmocka_unit_test(wrong_calls),
    };
    return cmocka_run_group_tests_name("criterion", tests, NULL, NULL);
}
