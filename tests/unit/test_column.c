/* SPDX-License-Identifier: Apache-2.0 */
/* Columns: every answer is that of rodt_reading_judge for the same row, whatever the cells are. The figures of the scale
 * follow from 1 in = 25.4 mm (NIST SP 811, appendix B); all else is compared with the scalar way. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#if defined(__linux__)
#include <sys/mman.h>
#include <unistd.h>
#endif

#include "column/check.h"
#include "column/kernel.h"
#include "column/plan.h"
#include "column_expect.h"
#include "rodtravel/rodtravel.h"
#include "support.h"

#define MOST 1031 /* no multiple of any block */

static rodt_column_plan *plan;
static rodt_chamber chambers[COLUMN_CODES];

/* One set of columns with answers. */
static struct {
    int32_t released[MOST], applied[MOST], pressure[MOST], day[MOST];
    int64_t released64[MOST], applied64[MOST];
    uint8_t chamber[MOST];
    uint8_t bits[6][MOST / 8 + 2];
    int32_t stroke[MOST + 1], limit[MOST + 1];
    int64_t parts[MOST + 1];
    uint8_t verdict[MOST + 1], flags[MOST + 1];
    uint64_t reasons[MOST + 1];
} cells;

static const rodt_column_out answers = {
    .stroke = cells.stroke, .verdict = cells.verdict, .reasons = cells.reasons, .flags = cells.flags,
    .limit = cells.limit, .stroke_parts = cells.parts};

static rodt_length inches(int64_t num, int64_t den)
{
    rodt_length length;
    assert_int_equal(rodt_length_from_inches(num, den, &length), RODT_OK);
    return length;
}

static void add(const rodt_chamber *chamber)
{
    uint32_t code = 0;
    assert_int_equal(rodt_column_plan_add(plan, chamber, &code, NULL), RODT_OK);
    chambers[code] = *chamber;
}

static void add_marked(const char *mark, rodt_length rated, rodt_length marked)
{
    rodt_chamber chamber;
    assert_int_equal(rodt_chamber_parse(mark, &chamber, NULL), RODT_OK);
    chamber.rated_stroke = rated;
    chamber.marked_limit = marked;
    add(&chamber);
}

static void start(const char *rules, const rodt_reading *common)
{
    rodt_column_plan_free(plan);
    assert_int_equal(rodt_column_plan_new(rodt_rules_find(rules), common, &plan, NULL), RODT_OK);
}

static void add_simple(void)
{
    static const char *const marks[] = {"30", "T24 long", "clamp 36", "bolt C", "roto 30", "DD-3", "18", "30L"};
    for (size_t i = 0; i < sizeof marks / sizeof marks[0]; i++)
        add_marked(marks[i], (rodt_length){0, 0}, (rodt_length){0, 0});
}

static void add_odd(void)
{
    add_marked("18", inches(5, 2), (rodt_length){0, 0});
    add_marked("18", inches(5, 2), inches(17777777, 10000000)); /* between two units of a column */
    add_marked("24 long", inches(3, 1), (rodt_length){0, 0});
    add_marked("30 long", inches(2, 1), (rodt_length){0, 0});
    add_marked("18", inches(3, 4), (rodt_length){0, 0});
    add_marked("18", (rodt_length){0, 0}, inches(6, 1));
    add_marked("18", (rodt_length){0, 0}, inches(999999999, 1000000000));
}

/* --- The scalar way ---------------------------------------------------------------------------------- */

static column_expected expected[MOST];

static void expect_row(size_t i)
{
    assert_int_equal(cells.verdict[i], expected[i].verdict);
    assert_int_equal(cells.reasons[i], expected[i].reasons);
    assert_int_equal(cells.stroke[i], expected[i].stroke);
    assert_int_equal(cells.flags[i], expected[i].flags);
    assert_int_equal(cells.limit[i], expected[i].limit);
}

static void spoil_answers(void)
{
    memset(cells.verdict, 0xA5, sizeof cells.verdict);
    memset(cells.reasons, 0xA5, sizeof cells.reasons);
    memset(cells.stroke, 0xA5, sizeof cells.stroke);
    memset(cells.flags, 0xA5, sizeof cells.flags);
    memset(cells.limit, 0xA5, sizeof cells.limit);
    memset(cells.parts, 0xA5, sizeof cells.parts);
}

static void expect_rows(size_t rows)
{
    for (size_t i = 0; i < rows; i++)
        expect_row(i);
    assert_int_equal(cells.verdict[rows], 0xA5); /* nothing is written behind the last row */
    assert_int_equal(cells.flags[rows], 0xA5);
    assert_int_equal((uint32_t)cells.stroke[rows], 0xA5A5A5A5);
    assert_int_equal((uint32_t)cells.limit[rows], 0xA5A5A5A5);
    assert_int_equal(cells.reasons[rows], 0xA5A5A5A5A5A5A5A5u);
}

/* A unit is 25000 parts. */
static void expect_parts(size_t rows)
{
    for (size_t i = 0; i < rows; i++)
        assert_int_equal(cells.parts[i], expected[i].stroke == RODT_COLUMN_NO_STROKE ? RODT_COLUMN_NO_STROKE
                                                                                     : expected[i].stroke * INT64_C(25000));
    assert_int_equal((uint64_t)cells.parts[rows], 0xA5A5A5A5A5A5A5A5u);
}

/* The copy for this processor is compared as a caller gets it, then the copy for any processor. */
static void compare(const rodt_column_in *in, size_t rows, const rodt_reading *common)
{
    for (size_t i = 0; i < rows; i++)
        assert_true(column_expect(plan, chambers, common, in, i, &expected[i]));
    spoil_answers();
    assert_int_equal(rodt_column_plan_judge(plan, in, rows, &answers, NULL), RODT_OK);
    expect_rows(rows);
    expect_parts(rows);
    spoil_answers();
    rodti_column_judge_blocks_anywhere(plan, in, rows, &answers);
    expect_rows(rows);
}

/* Rows that may take the fast path are judged on both paths, by both copies. */
static void compare_plain(const rodt_column_in *in, size_t rows, const rodt_reading *common)
{
    compare(in, rows, common);
    spoil_answers();
    rodti_column_judge_blocks(plan, in, rows, &answers);
    expect_rows(rows);
    if (plan->steps > 1)
        return;
    spoil_answers();
    rodti_column_judge_plain_anywhere(plan, in, rows, &answers);
    expect_rows(rows);
}

/* --- Chance ------------------------------------------------------------------------------------------ */

/* Strokes close to a step of a code, and ends of the range. */
static void chance_readings(uint64_t *state, size_t i)
{
    enum { most = RODT_LENGTH_MAX_INCHES * RODT_COLUMN_PER_INCH };
    static const int32_t corners[] = {0, 1, -1, INT32_MAX, INT32_MIN, most, most + 1, 2 * RODT_COLUMN_PER_INCH};
    uint32_t entry = cells.chamber[i] < plan->codes ? cells.chamber[i] * plan->eras : 0;
    const column_steps *steps = &plan->step[chance(state) % 2][entry + chance(state) % plan->eras];
    int32_t step = chance(state) % 2 == 0 ? steps->low : steps->high;
    int32_t released = (int32_t)(chance(state) % 200) * RODT_COLUMN_PER_64TH;
    int64_t applied = released + (int64_t)step + (int64_t)(chance(state) % 3) - 1;
    if (applied > INT32_MAX || chance(state) % 3 == 0)
        applied = released + (int64_t)(chance(state) % 300) * RODT_COLUMN_PER_64TH - 20 * RODT_COLUMN_PER_64TH;
    if (chance(state) % 8 == 0)
        released = corners[chance(state) % 8];
    if (chance(state) % 8 == 0)
        applied = corners[chance(state) % 8];
    cells.released[i] = released;
    cells.applied[i] = (int32_t)applied;
    cells.released64[i] = chance(state) % 16 == 0 ? chance_number(state) : released;
    cells.applied64[i] = chance(state) % 16 == 0 ? chance_number(state) : applied;
}

static void chance_cells(uint64_t *state)
{
    static const int32_t pressures[] = {0, 79999, 80000, 89999, 90000, 90001, 95000, 100000, 100001, -1, 300000, 300001,
                                        INT32_MIN};
    static const int32_t days[] = {-25568, -25567, 84005, 84006, INT32_MIN, INT32_MAX, 0, 15587, 15588, 18913, 18914};
    for (size_t i = 0; i < MOST; i++) {
        cells.chamber[i] = (uint8_t)(chance(state) % (plan->codes + 2));
        if (chance(state) % 64 == 0)
            cells.chamber[i] = 255;
        chance_readings(state, i);
        cells.pressure[i] = pressures[chance(state) % (sizeof pressures / sizeof pressures[0])];
        cells.day[i] = days[chance(state) % (sizeof days / sizeof days[0])];
    }
    for (size_t k = 0; k < 6; k++)
        for (size_t i = 0; i < sizeof cells.bits[k]; i++)
            cells.bits[k][i] = (uint8_t)(chance(state) | chance(state) | chance(state));
}

static rodt_column_in chance_columns(uint64_t *state, size_t skip)
{
    uint64_t choice = chance(state);
    rodt_column_in in = {.chamber = cells.chamber + skip};
    if (choice & 1)
        in.released = cells.released + skip;
    else
        in.released64 = cells.released64 + skip;
    if (choice & 2)
        in.applied = cells.applied + skip;
    else
        in.applied64 = cells.applied64 + skip;
    in.psi = choice & 4 ? cells.pressure + skip : NULL;
    in.date = choice & 8 ? cells.day + skip : NULL;
    rodt_column_bits *valid[] = {&in.released_valid, &in.applied_valid, &in.chamber_valid,
                                 &in.psi_valid, &in.date_valid,     &in.row_valid};
    for (size_t k = 0; k < 6; k++)
        if (choice & (uint64_t)16 << k)
            *valid[k] = (rodt_column_bits){cells.bits[k], skip};
    return in;
}

static void compare_by(const char *rules, const rodt_reading *common, bool odd, uint64_t *state)
{
    start(rules, common);
    add_simple();
    if (odd)
        add_odd();
    for (size_t round = 0; round < 3; round++) {
        size_t skip = (size_t)(chance(state) % 16);
        size_t rows = (size_t)(chance(state) % (MOST - 16));
        chance_cells(state);
        rodt_column_in plain = {
            .released = cells.released + skip, .applied = cells.applied + skip, .chamber = cells.chamber + skip};
        rodt_column_in in = chance_columns(state, skip);
        compare_plain(&plain, rows, common);
        compare(&in, rows, common);
    }
}

/* Every rule set, with the facts that all rows share changing too: all of them where the law changed, else two in turn. */
static void chance_rows_are_judged_alike(void **state)
{
    (void)state;
    uint64_t seed = 5;
    for (size_t i = 0; i < rodt_rules_count(); i++) {
        const bool is_fmcsr = rodt_rules_at(i) == rodt_rules_find("us-fmcsr");
        for (int k = is_fmcsr ? 0 : (int)i % 4; k < 8; k += is_fmcsr ? 1 : 4) {
            rodt_reading common = {.unit = (rodt_unit)(k % 3)};
            if (k & 1)
                assert_int_equal(rodt_pressure_from_psi(85 + 5 * k, 1, &common.pressure), RODT_OK);
            if (k & 2)
                assert_int_equal(rodt_date_make(2019 + k, 6, 5, &common.day), RODT_OK);
            if (k == 2 || k == 7) /* one pair of days lies in one period of us-fmcsr, the other in two */
                assert_int_equal(rodt_date_make(2019 + k, 5, 6, &common.other_day), RODT_OK);
            if (k == 2)
                assert_int_equal(rodt_date_make(2021, 12, 5, &common.day), RODT_OK);
            common.drum = k == 4 ? RODT_DRUM_HOT : RODT_DRUM_COLD;
            common.engine_running = k == 5 ? RODT_RECORDED_YES : RODT_RECORDED_NO;
            compare_by(rodt_rules_id(rodt_rules_at(i)), &common, k & 4, &seed);
        }
    }
}

/* Where the day of a row cannot be read, that of the plan does not stand for it. */
static void a_day_that_cannot_be_read_is_none(void **state)
{
    (void)state;
    const rodt_reading common = {.day = {2010, 1, 1}}; /* before the rules were in force */
    uint64_t seed = 37;
    start("us-fmcsr", &common);
    add_simple();
    chance_cells(&seed);
    for (size_t i = 0; i < MOST; i += 2)
        cells.day[i] = CALENDAR_LAST_DAY + 1;
    const rodt_column_in in = {.released = cells.released, .applied = cells.applied, .chamber = cells.chamber,
                               .date = cells.day};
    compare(&in, MOST - 16, &common);
}

static void expect_step(rodt_length length, int64_t per_inch, int64_t *steps, uint32_t *count)
{
    uint32_t at = *count;
    const int64_t step = rodt_length_given(length) ? length.num * per_inch / length.den : 0;
    for (uint32_t i = 0; i < *count; i++) {
        if (steps[i] == step)
            return;
    }
    if (!rodt_length_given(length))
        return;
    for (; at > 0 && steps[at - 1] > step; at--)
        steps[at] = steps[at - 1];
    steps[at] = step;
    ++*count;
}

/* Each length that a stroke is compared with is a step, once, in order; a length that is not given is none. */
static void steps_are_the_lengths_of_the_finding(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit\nclamp,30,standard,1 7/8\nclamp,20,standard,1 3/4\nclamp,18,standard,1\n";
    static const char *const marks[] = {"30", "20", "18", "30L", "roto 30", "DD-3", "bolt C", ""};
    static const rodt_length rated[] = {{0, 0}, {5, 2}, {1, 1}, {7, 4}, {3, 1}, {9, 5}};
    rodt_rules *own;
    unsigned counts[STROKE_STEPS + 1] = {0};
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "own", table, strlen(table), &own, NULL), RODT_OK);
    for (size_t i = 0; i < 8 * 6 * 3 * 2; i++) {
        const rodt_rules *rules = i % 2 == 0 ? own : rodt_rules_find("us-fmcsr");
        rodt_reading reading = {.unit = (rodt_unit)(i / 2 % 3)};
        const int64_t per_inch = i % 5 == 0 ? 1000000 : RODT_COLUMN_PER_INCH;
        assert_int_equal(rodt_chamber_parse(marks[i / 6 % 8], &reading.chamber, NULL),
                         marks[i / 6 % 8][0] == '\0' ? RODT_E_EMPTY : RODT_OK);
        reading.chamber.rated_stroke = rated[i / 48];
        rodt_finding finding = rodti_column_judge(&reading, rules);
        int64_t expected_steps[STROKE_STEPS] = {INT32_MAX, INT32_MAX, INT32_MAX, INT32_MAX};
        uint32_t count = 0;
        expect_step(finding.limit, per_inch, expected_steps, &count);
        expect_step(finding.law_limit, per_inch, expected_steps, &count);
        expect_step(finding.chamber.rated_stroke, per_inch, expected_steps, &count);
        if (finding.law_row != NULL && reading.unit != RODT_UNIT_IN)
            expect_step(finding.law_row->printed_mm, per_inch, expected_steps, &count);
        stroke_steps found = rodti_stroke_steps_find(&reading, rules, per_inch, INT32_MAX);
        assert_int_equal(found.count, count);
        assert_memory_equal(found.at, expected_steps, sizeof expected_steps);
        counts[count]++;
    }
    for (size_t i = 0; i < STROKE_STEPS; i++)
        assert_int_not_equal(counts[i], 0);
    rodt_rules_unref(own);
}

/* An own limit, the law's, its printed millimetres and the rated stroke; and the least pressure that is one. */
static void strokes_about_four_steps_are_judged_alike(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit\nclamp,20,standard,1 5/8\n";
    static const int32_t pressures[] = {0, 1, 95 * RODT_COLUMN_PER_PSI};
    const rodt_reading common = {.unit = RODT_UNIT_MM};
    rodt_rules *own;
    size_t rows = 0;
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "own", table, strlen(table), &own, NULL), RODT_OK);
    rodt_column_plan_free(plan);
    assert_int_equal(rodt_column_plan_new(own, &common, &plan, NULL), RODT_OK);
    add_marked("clamp 20 standard", inches(5, 2), (rodt_length){0, 0});
    assert_int_equal(plan->steps, 4);
    const int32_t steps[] = {0, 1, 13 * RODT_COLUMN_PER_INCH / 8, 7 * RODT_COLUMN_PER_INCH / 4,
                             89 * RODT_COLUMN_PER_INCH / 2 / 127 * 5, 5 * RODT_COLUMN_PER_INCH / 2, 3 * RODT_COLUMN_PER_INCH};
    for (size_t i = 0; i < 7 * 3 * 3; i++) {
        cells.released[rows] = 1; /* so the stroke is one below a step, at it and beyond */
        cells.applied[rows] = steps[i / 9] + (int32_t)(i / 3 % 3);
        cells.pressure[rows] = pressures[i % 3];
        cells.chamber[rows++] = (uint8_t)(plan->codes - 1);
    }
    compare(&(rodt_column_in){.released = cells.released, .applied = cells.applied, .chamber = cells.chamber, .psi = cells.pressure},
            rows, &common);
    rodt_rules_unref(own);
}

static void a_day_that_a_plan_does_not_have_is_later_than_any(void **state)
{
    (void)state;
    start("rated-80", NULL);
    assert_int_equal(plan->cuts, 0);
    for (size_t i = 0; i < FEW_CUTS; i++)
        assert_int_equal(plan->cut[i], INT32_MAX);
}

/* One column alone that the fast path cannot take, by a plan that it could. */
static void one_column_more_is_judged_alike(void **state)
{
    (void)state;
    const rodt_reading common = {0};
    uint64_t seed = 31;
    start("us-fmcsr", &common);
    add_simple();
    assert_in_range(plan->steps, 0, 1);
    chance_cells(&seed);
    for (int k = 0; k < 9; k++) {
        rodt_column_in in = {.released = cells.released, .applied = cells.applied, .chamber = cells.chamber};
        rodt_column_bits *valid[] = {&in.released_valid, &in.applied_valid, &in.chamber_valid, &in.row_valid};
        if (k == 0)
            in.released = NULL;
        in.released64 = k == 0 ? cells.released64 : NULL;
        if (k == 1)
            in.applied = NULL;
        in.applied64 = k == 1 ? cells.applied64 : NULL;
        in.psi = k == 2 ? cells.pressure : NULL;
        in.date = k == 3 ? cells.day : NULL;
        if (k >= 4 && k < 8)
            *valid[k - 4] = (rodt_column_bits){cells.bits[k - 4], 5};
        compare(&in, 300, &common);
    }
}

static void a_carriers_own_limits_are_judged_alike(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit\nclamp,30,standard,1 7/8\nclamp,18,standard,1 1/2\n";
    const rodt_rules *law = rodt_rules_find("us-fmcsr");
    rodt_reading common = {0};
    rodt_rules *own;
    uint64_t seed = 7;
    assert_int_equal(rodt_rules_load(law, "own", table, strlen(table), &own, NULL), RODT_OK);
    rodt_column_plan_free(plan);
    assert_int_equal(rodt_column_plan_new(own, NULL, &plan, NULL), RODT_OK);
    add_simple();
    add_odd();
    for (int round = 0; round < 10; round++) {
        chance_cells(&seed);
        rodt_column_in in = chance_columns(&seed, 3);
        compare(&in, MOST - 16, &common);
    }
    rodt_rules_unref(own);
}

/* Every stroke of 0 to 4 in by 64ths, each with its neighbours, for each chamber of the tables in every class. */
static void every_64th_is_judged_alike(void **state)
{
    (void)state;
    rodt_reading common = {.unit = RODT_UNIT_MM};
    start("us-fmcsr", &common);
    for (size_t i = 0; i < rodt_chamber_row_count(); i++) {
        for (int k = 0; k < 3; k++) {
            rodt_chamber chamber = {.family = rodt_chamber_row_at(i)->family, .stroke_class = (rodt_stroke_class)k};
            strcpy(chamber.size, rodt_chamber_row_at(i)->size);
            add(&chamber);
        }
    }
    for (uint32_t code = 0; code < plan->codes; code++) {
        for (int i = 0; i < 257 * 3; i++) {
            cells.released[i] = RODT_COLUMN_PER_64TH;
            cells.applied[i] = RODT_COLUMN_PER_64TH * (i / 3 + 1) + i % 3 - 1;
            cells.chamber[i] = (uint8_t)code;
        }
        rodt_column_in in = {.released = cells.released, .applied = cells.applied, .chamber = cells.chamber};
        compare(&in, 257 * 3, &common);
    }
}

/* Every pair of ends of the ranges and their neighbours, in 32 and in 64 bits, for a few chambers. */
static void every_pair_of_corners_is_judged_alike(void **state)
{
    (void)state;
    static const int64_t corners[] = {0, 1, -1, -2, INT32_MAX, INT32_MAX - 1, INT32_MIN, INT32_MIN + 1,
                                      RODT_COLUMN_PER_INCH, 3 * RODT_COLUMN_PER_INCH, (int64_t)INT32_MAX + 1,
                                      (int64_t)INT32_MIN - 1, INT64_MAX, INT64_MIN, UINT32_MAX, -(int64_t)UINT32_MAX,
                                      (int64_t)1 << 32, -((int64_t)1 << 32)};
    const size_t all = sizeof corners / sizeof corners[0];
    const rodt_reading common = {0};
    start("us-fmcsr", &common);
    add_simple();
    add_odd();
    for (uint32_t code = 0; code <= plan->codes; code++) {
        for (size_t i = 0; i < all * all; i++) {
            cells.released64[i] = corners[i / all];
            cells.applied64[i] = corners[i % all];
            cells.released[i] = (int32_t)corners[i / 10 % 10]; /* the first ten fit in 32 bits */
            cells.applied[i] = (int32_t)corners[i % 10];
            cells.chamber[i] = (uint8_t)code;
        }
        rodt_column_in plain = {.released = cells.released, .applied = cells.applied, .chamber = cells.chamber};
        rodt_column_in wide = {.released64 = cells.released64, .applied64 = cells.applied64, .chamber = cells.chamber};
        rodt_column_in mixed = {.released64 = cells.released64, .applied = cells.applied, .chamber = cells.chamber};
        compare_plain(&plain, all * all, &common);
        compare(&wide, all * all, &common);
        compare(&mixed, all * all, &common);
    }
}

static void every_day_is_judged_alike(void **state)
{
    (void)state;
    rodt_reading common = {0};
    start("us-fmcsr", &common);
    add_marked("36", (rodt_length){0, 0}, (rodt_length){0, 0});
    for (int32_t day = -25567 - 10; day < 84005 + 10; day += 1000) {
        for (int i = 0; i < 1000; i++) {
            cells.released[i] = RODT_COLUMN_PER_INCH;
            cells.applied[i] = RODT_COLUMN_PER_INCH * 13 / 4 + 500 * RODT_COLUMN_PER_64TH % 79376;
            cells.chamber[i] = 2;
            cells.day[i] = day + i;
        }
        rodt_column_in in = {
            .released = cells.released, .applied = cells.applied, .chamber = cells.chamber, .date = cells.day};
        compare(&in, 1000, &common);
    }
}

static void the_scale_is_exact(void **state)
{
    (void)state;
    rodt_length mm;
    rodt_length hundredth;
    assert_int_equal(rodt_length_from_mm(1, 1, &mm), RODT_OK);
    assert_int_equal(rodt_length_from_mm(1, 100, &hundredth), RODT_OK);
    assert_int_equal(rodt_length_compare(mm, inches(RODT_COLUMN_PER_MM, RODT_COLUMN_PER_INCH)), 0);
    assert_int_equal(rodt_length_compare(hundredth, inches(RODT_COLUMN_PER_MM / 100, RODT_COLUMN_PER_INCH)), 0);
    assert_int_equal(rodt_length_compare(inches(1, 64), inches(RODT_COLUMN_PER_64TH, RODT_COLUMN_PER_INCH)), 0);
    assert_int_equal(RODT_COLUMN_PER_INCH % 10000, 0);
}

/* --- Wrong arguments --------------------------------------------------------------------------------- */

/* The error of a call that is refused: its field, and a part of its sentence. */
static rodt_error error;

static void expect_error(rodt_status status, const char *field, const char *part)
{
    assert_int_equal(error.status, status);
    assert_string_equal(error.field, field);
    assert_int_equal(error.column, 0);
    assert_non_null(strstr(error.text, part));
    memset(&error, 0, sizeof error);
}

static void wrong_plans_are_refused(void **state)
{
    (void)state;
    const rodt_rules *rules = rodt_rules_find("us-fmcsr");
    rodt_reading common = {.unit = RODT_UNIT_IN};
    rodt_column_plan *made = NULL;
    assert_int_equal(rodt_column_plan_new(NULL, NULL, &made, &error), RODT_E_UNKNOWN_RULES);
    expect_error(RODT_E_UNKNOWN_RULES, "", "no rule set was given");
    assert_int_equal(rodt_column_plan_new(rules, NULL, NULL, &error), RODT_E_ARGUMENT);
    expect_error(RODT_E_ARGUMENT, "", "room for a plan is needed");
    memcpy(&common.unit, &(uint32_t){9}, sizeof common.unit);
    assert_int_equal(rodt_column_plan_new(rules, &common, &made, &error), RODT_E_ARGUMENT);
    expect_error(RODT_E_ARGUMENT, "unit", "unit of a length");
    common = (rodt_reading){.day = {2021, 2, 31}};
    assert_int_equal(rodt_column_plan_new(rules, &common, &made, &error), RODT_E_ARGUMENT);
    expect_error(RODT_E_ARGUMENT, "date", "");
    common = (rodt_reading){.reserved = {[3] = 1}};
    assert_int_equal(rodt_column_plan_new(rules, &common, &made, &error), RODT_E_ARGUMENT);
    expect_error(RODT_E_ARGUMENT, "reserved", "zero");
    assert_null(made);
    rodt_column_plan_free(NULL);
}

/* What a plan does not use of the common facts may be anything. */
static void readings_of_a_plan_are_not_used(void **state)
{
    (void)state;
    const rodt_reading common = {.released = {-1, 3}, .other_released = {{1, 0}}, .other_applied = {{1, 0}},
                                 .chamber = {.size = "x"}, .division = {1, 1}};
    start("us-fmcsr", &common);
}

static void chambers_that_are_none_are_refused(void **state)
{
    (void)state;
    rodt_chamber chamber = {.size = "30"};
    uint32_t code = 77;
    start("us-fmcsr", NULL);
    for (int i = 0; i < 3; i++) {
        assert_int_equal(rodt_column_plan_add(i == 0 ? NULL : plan, i == 1 ? NULL : &chamber, i == 2 ? NULL : &code, &error),
                         RODT_E_ARGUMENT);
        expect_error(RODT_E_ARGUMENT, "", "a plan, a chamber and room for its code are needed");
    }
    chamber.rated_stroke = (rodt_length){-1, 1};
    assert_int_equal(rodt_column_plan_add(plan, &chamber, &code, &error), RODT_E_ARGUMENT);
    expect_error(RODT_E_ARGUMENT, "rated_stroke", "below zero");
    assert_int_equal(code, 77);
}

/* A plan takes as many chambers as a byte has codes, and what it said of the first ones stays so. */
static void a_plan_grows(void **state)
{
    (void)state;
    rodt_reading common = {0};
    uint64_t seed = 17;
    start("us-fmcsr", &common);
    for (int64_t i = 0; i < COLUMN_CODES - 2; i++)
        add_marked("18", inches(3 * 128 + i, 128), (rodt_length){0, 0});
    assert_int_equal(plan->codes, COLUMN_CODES);
    uint32_t code = 77;
    assert_int_equal(rodt_column_plan_add(plan, &chambers[2], &code, &error), RODT_E_SPACE);
    expect_error(RODT_E_SPACE, "", "254 chambers");
    assert_int_equal(code, 77);
    chance_cells(&seed);
    rodt_column_in in = {.released = cells.released, .applied = cells.applied, .chamber = cells.chamber};
    compare_plain(&in, MOST - 16, &common);
}

/* A copy answers as the plan does, and outlives it. */
static void a_copy_is_a_plan_of_its_own(void **state)
{
    (void)state;
    const rodt_reading common = {.drum = RODT_DRUM_HOT};
    uint64_t seed = 19;
    rodt_column_plan *copy = NULL;
    start("us-fmcsr", &common);
    add_simple();
    assert_int_equal(rodt_column_plan_copy(plan, &copy), RODT_OK);
    assert_int_equal(rodt_column_plan_copy(NULL, &copy), RODT_E_ARGUMENT);
    assert_int_equal(rodt_column_plan_copy(plan, NULL), RODT_E_ARGUMENT);
    assert_int_equal(copy->codes, plan->codes);
    rodt_column_plan_free(plan);
    plan = copy;
    add_odd();
    chance_cells(&seed);
    rodt_column_in in = chance_columns(&seed, 0);
    compare(&in, MOST - 16, &common);
}

/* A law that changes on so many days that no table of fixed size holds them. */
static void a_law_may_change_on_many_days(void **state)
{
    (void)state;
    static char table[8192] = "family,size,class,limit,from,until\n";
    const rodt_reading common = {0};
    rodt_rules *own;
    uint64_t seed = 23;
    size_t used = strlen(table);
    for (int year = 1990; year < 2060; year++)
        used += (size_t)snprintf(table + used, sizeof table - used, "clamp,30,standard,1 %d/64,%d-01-01,%d-12-31\n",
                                 1 + year % 47, year, year);
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "own", table, used, &own, &error), RODT_OK);
    rodt_column_plan_free(plan);
    assert_int_equal(rodt_column_plan_new(own, &common, &plan, NULL), RODT_OK);
    rodt_rules_unref(own); /* the plan is a user, too */
    assert_true(plan->cuts > 70);
    add_simple();
    chance_cells(&seed);
    for (size_t i = 0; i < MOST; i++)
        cells.day[i] = plan->cut[chance(&seed) % plan->cuts] + (int32_t)(chance(&seed) % 3) - 1;
    rodt_column_in in = {
        .released = cells.released, .applied = cells.applied, .chamber = cells.chamber, .date = cells.day};
    compare(&in, MOST - 16, &common);
    rodt_column_plan_free(plan);
    plan = NULL;
}

/* The first and the last day that a date can be. */
static void a_law_may_last_as_long_as_the_calendar(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit,from,until\nclamp,30,standard,1 3/4,1900-01-01,2199-12-31\n";
    const rodt_reading common = {0};
    rodt_rules *own;
    uint64_t seed = 29;
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "own", table, strlen(table), &own, &error), RODT_OK);
    rodt_column_plan_free(plan);
    assert_int_equal(rodt_column_plan_new(own, &common, &plan, NULL), RODT_OK);
    rodt_rules_unref(own);
    add_simple();
    chance_cells(&seed);
    for (size_t i = 0; i < MOST; i++)
        cells.day[i] = (i % 2 == 0 ? -25567 : 84005) + (int32_t)(chance(&seed) % 3) - 1;
    rodt_column_in in = {
        .released = cells.released, .applied = cells.applied, .chamber = cells.chamber, .date = cells.day};
    compare(&in, MOST - 16, &common);
    rodt_column_plan_free(plan);
    plan = NULL;
}

static void add_days(const rodt_date from, const rodt_date until, bool *is_cut)
{
    if (rodt_date_given(from))
        is_cut[calendar_day_number(from) - CALENDAR_FIRST_DAY] = true;
    if (rodt_date_given(until))
        is_cut[calendar_day_number(until) - CALENDAR_FIRST_DAY + 1] = true;
}

/* The days on which something begins, and those after something ended, each once, in order; the first day of the calendar
 * is none. Room is kept in groups, and what is not used stands for a day that never comes. */
static void cuts_are_the_days_of_the_rows(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit,from,until\nclamp,20,standard,1 3/4,2016-07-01,2017-08-31\n"
                                "clamp,30,standard,1 3/4,1900-01-01,2199-12-31\nclamp,16,standard,1 1/2,2011-02-03,2014-05-06\n"
                                "clamp,24,standard,1 3/4,2012-03-04,2012-03-04\nclamp,24,standard,1 5/8,2012-03-05,\n"
                                "clamp,12,standard,1 1/4,2199-12-31,\n";
    static bool is_cut[CALENDAR_LAST_DAY - CALENDAR_FIRST_DAY + 2];
    const rodt_rules *law = rodt_rules_find("us-fmcsr");
    rodt_rules *own;
    assert_int_equal(rodt_rules_load(law, "own", table, strlen(table), &own, &error), RODT_OK);
    for (int with_own = 0; with_own < 2; with_own++) {
        const rodt_rules *all[] = {law, own};
        uint32_t cuts = 0;
        memset(is_cut, 0, sizeof is_cut);
        for (int k = 0; k <= with_own; k++) {
            add_days(rodt_rules_from(all[k]), rodt_rules_until(all[k]), is_cut);
            for (size_t i = 0; i < rodt_rules_limit_count(all[k]); i++)
                add_days(rodt_rules_limit_at(all[k], i)->from, rodt_rules_limit_at(all[k], i)->until, is_cut);
        }
        rodt_column_plan_free(plan);
        assert_int_equal(rodt_column_plan_new(all[with_own], NULL, &plan, NULL), RODT_OK);
        for (int32_t day = 1; day <= CALENDAR_LAST_DAY - CALENDAR_FIRST_DAY; day++) {
            if (is_cut[day])
                assert_int_equal(plan->cut[cuts++], day + CALENDAR_FIRST_DAY);
        }
        assert_int_equal(plan->cuts, cuts);
        assert_int_equal(plan->eras, cuts + 3);
        while (cuts < FEW_CUTS || (cuts - FEW_CUTS) % CUT_GROUP != 0)
            assert_int_equal(plan->cut[cuts++], INT32_MAX);
    }
    rodt_rules_unref(own);
}

static void refuse_columns(const rodt_column_in *in, size_t rows, const rodt_column_out *out, const char *field,
                           const char *part)
{
    memset(cells.verdict, 0x5A, sizeof cells.verdict);
    assert_int_equal(rodt_column_plan_judge(plan, in, rows, out, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_column_plan_judge(plan, in, rows, out, &error), RODT_E_ARGUMENT);
    expect_error(RODT_E_ARGUMENT, field, part);
    assert_int_equal(cells.verdict[0], 0x5A);
}

static void wrong_columns_are_refused(void **state)
{
    (void)state;
    start("us-fmcsr", NULL);
    const rodt_column_in good = {.released = cells.released, .applied = cells.applied, .chamber = cells.chamber};
    assert_int_equal(rodt_column_plan_judge(NULL, &good, 9, &answers, &error), RODT_E_ARGUMENT);
    expect_error(RODT_E_ARGUMENT, "", "a plan, columns and room for the answers are needed");
    refuse_columns(NULL, 9, &answers, "", "needed");
    refuse_columns(&good, 9, NULL, "", "needed");
    refuse_columns(&good, SIZE_MAX, &answers, "", "so many rows");
    rodt_column_in in = good;
    in.released = NULL;
    refuse_columns(&in, 9, &answers, "released", "needed");
    in = good;
    in.applied = NULL;
    refuse_columns(&in, 9, &answers, "applied", "needed");
    in.chamber = NULL; /* the first fault is told */
    refuse_columns(&in, 9, &answers, "applied", "needed");
    in = good;
    in.released64 = cells.released64;
    refuse_columns(&in, 9, &answers, "released", "twice");
    in = good;
    in.applied64 = cells.applied64;
    refuse_columns(&in, 9, &answers, "applied", "twice");
    in = good;
    in.chamber = NULL;
    refuse_columns(&in, 9, &answers, "chamber", "needed");
    in = good;
    in.reserved[3] = 1;
    refuse_columns(&in, 9, &answers, "reserved", "to be judged");
    rodt_column_out out = answers;
    out.reasons = NULL;
    refuse_columns(&good, 9, &out, "reasons", "needed");
    out = answers;
    out.verdict = NULL;
    refuse_columns(&good, 9, &out, "verdict", "needed");
    out = answers;
    out.stroke = NULL;
    refuse_columns(&good, 9, &out, "stroke", "needed");
    out = answers;
    out.reserved[0] = 1;
    refuse_columns(&good, 9, &out, "reserved", "answers");
}

/* Answers may lie beside any other column but not on one; columns that are only read may be the same. */
static void columns_may_not_overlap_answers(void **state)
{
    (void)state;
    start("us-fmcsr", NULL);
    rodt_column_in in = {.released = cells.released, .applied = cells.released, .chamber = cells.chamber};
    rodt_column_out out = answers;
    rodt_reading common = {0};
    memset(&cells, 0, sizeof cells);
    compare(&in, 100, &common);
    out.stroke = cells.released;
    refuse_columns(&in, 100, &out, "stroke", "the column released");
    out.stroke = cells.released + 99;
    refuse_columns(&in, 100, &out, "stroke", "the column released");
    out.stroke = cells.released + 100;
    assert_int_equal(rodt_column_plan_judge(plan, &in, 100, &out, NULL), RODT_OK);
    out.stroke = cells.stroke;
    out.verdict = cells.flags + 99;
    refuse_columns(&in, 100, &out, "verdict", "the column flags");
    out.verdict = cells.verdict;
    out.limit = cells.stroke + 99;
    refuse_columns(&in, 100, &out, "stroke", "the column limit");
    out.limit = cells.released + 99;
    refuse_columns(&in, 100, &out, "limit", "the column released");
    out.limit = NULL; /* it is optional */
    out.stroke_parts = (int64_t *)(void *)cells.reasons;
    refuse_columns(&in, 100, &out, "reasons", "the column stroke_parts");
    out.stroke_parts = NULL; /* so is this */
    assert_int_equal(rodt_column_plan_judge(plan, &in, 100, &out, NULL), RODT_OK);
    compare(&in, 0, &common);
}

/* Every column, those of answers first. */
typedef struct placed {
    rodt_column_in in;
    rodt_column_out out;
} placed;

static const struct {
    const char *name;
    size_t at, width;
} places[] = {{"stroke", offsetof(placed, out.stroke), 4},      {"verdict", offsetof(placed, out.verdict), 1},
              {"reasons", offsetof(placed, out.reasons), 8},    {"flags", offsetof(placed, out.flags), 1},
              {"limit", offsetof(placed, out.limit), 4},        {"stroke_parts", offsetof(placed, out.stroke_parts), 8},
              {"released", offsetof(placed, in.released), 4},   {"applied", offsetof(placed, in.applied), 4},
              {"chamber", offsetof(placed, in.chamber), 1},     {"psi", offsetof(placed, in.psi), 4},
              {"date", offsetof(placed, in.date), 4},           {"released", offsetof(placed, in.released64), 8},
              {"applied", offsetof(placed, in.applied64), 8}};

/* An address may be none of a column: nothing is read there. */
static void place(placed *all, size_t column, uintptr_t address)
{
    memcpy((char *)all + places[column].at, &address, sizeof address);
}

/* Columns of 10 rows far from each other; of the readings those with 32 bits, but for a column with 64. */
static placed spread(size_t other)
{
    placed all;
    memset(&all, 0, sizeof all);
    for (size_t i = 0; i < sizeof places / sizeof *places; i++) {
        if (i < 11 || i == other)
            place(&all, i, 4096 * (i + 1));
    }
    if (other >= 11)
        place(&all, other - 5, 0);
    return all;
}

static void expect_pair(size_t written, size_t other, uintptr_t address, bool apart)
{
    char sentence[80];
    placed all = spread(other);
    place(&all, other, address);
    snprintf(sentence, sizeof sentence, "this column of answers overlaps the column %s", places[other].name);
    for (int both = other < 6; both >= 0; both--) {
        rodt_status status = both == 1 ? rodti_column_check_out(&all.out, 10, &error) : rodti_column_check(&all.in, 10, &all.out, &error);
        assert_int_equal(status, apart ? RODT_OK : RODT_E_ARGUMENT);
        if (apart)
            continue;
        assert_string_equal(error.text, sentence);
        expect_error(RODT_E_ARGUMENT, places[written].name, "");
    }
}

/* A column may begin where another ends; not one byte before. */
static void each_pair_of_columns_is_held_apart(void **state)
{
    (void)state;
    for (size_t written = 0; written < 6; written++)
        for (size_t other = written + 1; other < sizeof places / sizeof *places; other++) {
            const uintptr_t start = 4096 * (written + 1);
            expect_pair(written, other, start + 10 * places[written].width, true);
            expect_pair(written, other, start + 10 * places[written].width - 1, false);
            expect_pair(written, other, start - 10 * places[other].width, true);
            expect_pair(written, other, start - 10 * places[other].width + 1, false);
        }
}

/* The most rows that memory could hold, and columns that are not there: they take no part of it. */
static void many_rows_are_held_apart(void **state)
{
    (void)state;
    const size_t most = SIZE_MAX / 16, rows = SIZE_MAX / 128 + 1;
    placed all = spread(0);
    assert_int_equal(rodti_column_check_out(&all.out, most + 1, &error), RODT_E_ARGUMENT);
    expect_error(RODT_E_ARGUMENT, "", "no memory holds so many rows");
    assert_int_equal(rodti_column_check_out(&all.out, most, &error), RODT_E_ARGUMENT);
    expect_error(RODT_E_ARGUMENT, "stroke", "overlaps the column verdict");
    place(&all, 0, rows / 2);
    place(&all, 1, rows * 8);
    place(&all, 2, rows * 16);
    place(&all, 3, 0);
    place(&all, 4, 0);
    place(&all, 5, 0);
    assert_int_equal(rodti_column_check_out(&all.out, rows, &error), RODT_OK);
}

#if defined(__linux__)
/* Of every second page nothing may be touched, so that cells at the end of the one before cannot be overrun. */
#define PAGES 26

static char *pages;
static size_t page;

static void protect_pages(int protection)
{
    for (size_t i = 1; i < PAGES; i += 2)
        assert_int_equal(mprotect(pages + i * page, page, protection), 0);
}

static void *last_cells(size_t which, size_t rows, size_t width) { return pages + (2 * which + 1) * page - rows * width; }

/* Nothing is read or written behind the last row, nor bits behind its bit. */
static void columns_end_with_their_last_row(void **state)
{
    (void)state;
    page = (size_t)sysconf(_SC_PAGESIZE);
    pages = aligned_alloc(page, PAGES * page);
    assert_non_null(pages);
    memset(pages, 0, PAGES * page);
    protect_pages(PROT_NONE);
    start("us-fmcsr", NULL);
    add_simple();
    for (size_t rows = 1; rows < 150; rows++)
        for (size_t from = 0; from < 8; from++) {
            const rodt_column_bits bits = {last_cells(0, (from + rows + 7) / 8, 1), from};
            const rodt_column_out out = {.stroke = last_cells(1, rows, 4), .verdict = last_cells(2, rows, 1),
                                         .reasons = last_cells(3, rows, 8), .flags = last_cells(4, rows, 1),
                                         .limit = last_cells(12, rows, 4)};
            rodt_column_in in = {.released = last_cells(5, rows, 4), .applied = last_cells(6, rows, 4),
                                 .chamber = last_cells(7, rows, 1)};
            assert_int_equal(rodt_column_plan_judge(plan, &in, rows, &out, NULL), RODT_OK);
            in.released_valid = in.psi_valid = in.row_valid = bits;
            in.psi = last_cells(8, rows, 4);
            in.date = last_cells(9, rows, 4);
            assert_int_equal(rodt_column_plan_judge(plan, &in, rows, &out, NULL), RODT_OK);
            in.released = in.applied = NULL;
            in.released64 = last_cells(10, rows, 8);
            in.applied64 = last_cells(11, rows, 8);
            assert_int_equal(rodt_column_plan_judge(plan, &in, rows, &out, NULL), RODT_OK);
        }
    protect_pages(PROT_READ | PROT_WRITE);
    free(pages);
}
#endif

/* Programs that were built with one version run with the next: no size of the engine's own may be in their headers. */
static void headers_say_nothing_of_the_inside(void **state)
{
    (void)state;
#if defined(RODT_COLUMN_CODES) || defined(RODT_COLUMN_CUTS) || defined(RODT_COLUMN_ENTRIES) ||                             \
    defined(RODT_COLUMN_STEPS) || defined(RODT_COLUMN_PRESSURES) || defined(RODT_COLUMN_REGIONS)
    fail_msg("a header gives a size of the inside of a plan");
#endif
}

static int free_plan(void **state)
{
    (void)state;
    rodt_column_plan_free(plan);
    return 0;
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_scale_is_exact),
        cmocka_unit_test(strokes_about_four_steps_are_judged_alike),
        cmocka_unit_test(a_day_that_a_plan_does_not_have_is_later_than_any),
        cmocka_unit_test(wrong_plans_are_refused),
        cmocka_unit_test(readings_of_a_plan_are_not_used),
        cmocka_unit_test(chambers_that_are_none_are_refused),
        cmocka_unit_test(wrong_columns_are_refused),
        cmocka_unit_test(columns_may_not_overlap_answers),
        cmocka_unit_test(each_pair_of_columns_is_held_apart),
        cmocka_unit_test(many_rows_are_held_apart),
#if defined(__linux__)
        cmocka_unit_test(columns_end_with_their_last_row),
#endif
        cmocka_unit_test(steps_are_the_lengths_of_the_finding),
        cmocka_unit_test(a_day_that_cannot_be_read_is_none),
        cmocka_unit_test(one_column_more_is_judged_alike),
        cmocka_unit_test(cuts_are_the_days_of_the_rows),
        cmocka_unit_test(a_law_may_change_on_many_days),
        cmocka_unit_test(a_law_may_last_as_long_as_the_calendar),
        cmocka_unit_test(a_carriers_own_limits_are_judged_alike),
        cmocka_unit_test(a_copy_is_a_plan_of_its_own),
        cmocka_unit_test(every_pair_of_corners_is_judged_alike),
        cmocka_unit_test(every_day_is_judged_alike),
        cmocka_unit_test(every_64th_is_judged_alike),
        cmocka_unit_test(a_plan_grows),
        cmocka_unit_test(chance_rows_are_judged_alike),
        cmocka_unit_test(headers_say_nothing_of_the_inside),
    };
    return cmocka_run_group_tests(tests, NULL, free_plan);
}
