/* SPDX-License-Identifier: Apache-2.0 */
/* Reservoirs: Table V cell by cell, the multiples and the formula of 49 CFR 571.121 with worked values, and what any
 * estimate of a full application must keep. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <string.h>
#include <cmocka.h>

#include "core/common.h"
#include "core/exact.h"
#include "rodtravel/aircheck.h"
#include "support.h"

static rodt_length inches(const char *text)
{
    rodt_length length = {0};
    assert_int_equal(rodt_length_parse(text, &length, NULL), RODT_OK);
    return length;
}

static rodt_chamber clamp(const char *size, const char *rated)
{
    rodt_chamber chamber = {.family = RODT_FAMILY_CLAMP};
    memcpy(chamber.size, size, strlen(size) + 1);
    if (rated[0] != '\0')
        chamber.rated_stroke = inches(rated);
    return chamber;
}

static void expect_ratio(rodt_ratio ratio, int64_t num, int64_t den)
{
    assert_int_equal(ratio.num, num);
    assert_int_equal(ratio.den, den);
}

static void expect_volume(const char *size, const char *rated, const char *volume)
{
    rodt_chamber chamber = clamp(size, rated);
    rodt_ratio found = {0};
    rodt_length wanted = {0};
    assert_int_equal(rodt_chamber_rated_volume(&chamber, &found), RODT_OK);
    assert_true(read_fraction(volume, &wanted.num, &wanted.den));
    expect_ratio(found, wanted.num, wanted.den);
}

/* Both ends of the full stroke are inside, nothing else is, and there is no other row. */
static void table_v_cell_by_cell(void **state)
{
    (void)state;
    csv_file file;
    char *cells[4];
    size_t count = 0;
    csv_open(&file, CASES "/us-571-121-table-v.csv");
    while (csv_read_case(&file, cells, 4, "type")) {
        const rodt_volume_row *row = rodt_volume_row_at(count++);
        assert_non_null(row);
        assert_string_equal(row->size, cells[0]);
        assert_int_equal(rodt_length_compare(row->stroke_from, inches(cells[1])), 0);
        assert_int_equal(rodt_length_compare(row->stroke_until, inches(cells[2])), 0);
        assert_string_equal(row->source->id, "us-121-v");
        expect_volume(cells[0], "", cells[3]);
        expect_volume(cells[0], cells[1], cells[3]);
        expect_volume(cells[0], cells[2], cells[3]);
    }
    csv_close(&file);
    assert_int_equal(count, 9);
    assert_int_equal(rodt_volume_row_count(), count);
    assert_null(rodt_volume_row_at(count));
}

static void outside_table_v_the_actual_volume_counts(void **state)
{
    (void)state;
    rodt_ratio volume = {7, 3};
    const rodt_chamber outside[] = {clamp("24", "2.25"), clamp("20", "3"), clamp("30", "2.49"), clamp("30", "3.21"),
                                    clamp("6", ""), {.family = RODT_FAMILY_BOLT, .size = "C"},
                                    {.family = RODT_FAMILY_ROTOCHAMBER, .size = "30"}, {.family = RODT_FAMILY_DD_3, .size = "30"}};
    for (size_t i = 0; i < COUNT_OF(outside); i++)
        assert_int_equal(rodt_chamber_rated_volume(&outside[i], &volume), RODT_E_UNKNOWN_CHAMBER);
    const rodt_chamber nothing = {0};
    rodt_chamber sound = clamp("30", "");
    assert_int_equal(rodt_chamber_rated_volume(&nothing, &volume), RODT_E_ARGUMENT);
    assert_int_equal(rodt_chamber_rated_volume(NULL, &volume), RODT_E_ARGUMENT);
    assert_int_equal(rodt_chamber_rated_volume(&sound, NULL), RODT_E_ARGUMENT);
    expect_ratio(volume, 7, 3);
    sound.family = RODT_FAMILY_UNKNOWN; /* a bare type number is a clamp chamber */
    assert_int_equal(rodt_chamber_rated_volume(&sound, &volume), RODT_OK);
    expect_ratio(volume, 89, 1);
}

static rodt_ratio required(int64_t chambers, bool trailer)
{
    rodt_ratio volume = {0};
    assert_int_equal(rodt_reservoir_required_volume((rodt_ratio){chambers, 1}, trailer, &volume), RODT_OK);
    return volume;
}

/* S5.1.2.1: 12 times; S5.2.1.1: 8 times. */
static void required_volumes(void **state)
{
    (void)state;
    expect_ratio(required(2 * 54 + 4 * 89, false), 5568, 1); /* tractor */
    expect_ratio(required(4 * 89, true), 2848, 1);           /* trailer, one reservoir for both axles */
    expect_ratio(required(2 * 54 + 2 * 89, false), 3432, 1); /* straight truck */
    rodt_ratio volume = {7, 3};
    assert_int_equal(rodt_reservoir_required_volume((rodt_ratio){0, 1}, false, &volume), RODT_E_ARGUMENT);
    assert_int_equal(rodt_reservoir_required_volume((rodt_ratio){0, 0}, false, &volume), RODT_E_ARGUMENT);
    assert_int_equal(rodt_reservoir_required_volume((rodt_ratio){-1, 1}, false, &volume), RODT_E_ARGUMENT);
    assert_int_equal(rodt_reservoir_required_volume((rodt_ratio){1, 0}, false, &volume), RODT_E_ARGUMENT);
    assert_int_equal(rodt_reservoir_required_volume((rodt_ratio){1, 1}, false, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_reservoir_required_volume((rodt_ratio){INT64_MAX, 1}, false, &volume), RODT_E_RANGE);
    expect_ratio(volume, 7, 3);
}

/* S5.1.1: 25 s x actual / required. */
static void build_up_seconds(void **state)
{
    (void)state;
    const rodt_ratio need = {5568, 1};
    rodt_ratio time = {7, 3};
    assert_int_equal(rodt_reservoir_build_up_seconds(need, need, &time), RODT_OK);
    expect_ratio(time, 25, 1);
    assert_int_equal(rodt_reservoir_build_up_seconds((rodt_ratio){6960, 1}, need, &time), RODT_OK);
    expect_ratio(time, 125, 4);
    assert_int_equal(rodt_reservoir_build_up_seconds((rodt_ratio){0, 1}, need, &time), RODT_E_ARGUMENT);
    assert_int_equal(rodt_reservoir_build_up_seconds(need, (rodt_ratio){0, 0}, &time), RODT_E_ARGUMENT);
    assert_int_equal(rodt_reservoir_build_up_seconds(need, need, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_reservoir_build_up_seconds((rodt_ratio){INT64_MAX, 1}, (rodt_ratio){2, 3}, &time), RODT_E_RANGE);
    expect_ratio(time, 125, 4);
}

/* --- The estimate ------------------------------------------------------------------------------------ */

static const rodt_ratio whole = {1, 1};

static rodt_pressure after_one(int64_t psi, rodt_ratio reservoir, rodt_ratio chambers, rodt_ratio fill)
{
    rodt_pressure after = {0};
    assert_int_equal(rodt_reservoir_estimate_application((rodt_pressure){psi, 1}, reservoir, chambers, fill, &after), RODT_OK);
    return after;
}

/* (100 + 14.7) x 12 / 13 - 14.7, by hand: 91.176923... = 11853/130. */
static void one_application_by_hand(void **state)
{
    (void)state;
    rodt_pressure after = after_one(100, (rodt_ratio){12, 1}, whole, whole);
    assert_int_equal(after.num, 11853);
    assert_int_equal(after.den, 130);
    after = after_one(100, (rodt_ratio){12, 1}, whole, (rodt_ratio){0, 1});
    assert_int_equal(rodt_pressure_compare(after, (rodt_pressure){100, 1}), 0);
    after = after_one(0, (rodt_ratio){12, 1}, whole, whole); /* a gauge has no figure below zero */
    assert_true(after.num == 0 && after.den == 1);
}

/* Boyle: the air in the reservoir before is the air in reservoir and chambers after. */
static void air_is_conserved(void **state)
{
    (void)state;
    uint64_t seed = 5;
    const rodt_ratio atmosphere = {147, 10};
    for (int i = 0; i < 20000; i++) {
        int64_t psi = 20 + (int64_t)(chance(&seed) % 200);
        rodt_ratio reservoir = {500 + (int64_t)(chance(&seed) % 9000), 1}, chambers = {25 + (int64_t)(chance(&seed) % 400), 1};
        rodt_ratio fill = {(int64_t)(chance(&seed) % 11), 10};
        rodt_pressure after = after_one(psi, reservoir, chambers, fill);
        rodt_ratio before_air, after_air, volume;
        assert_true(rodti_exact_make(fill.num, fill.den, &volume));
        assert_true(rodti_exact_multiply(volume, (rodt_ratio){chambers.num, 1}, &volume));
        assert_true(rodti_exact_add(volume, (rodt_ratio){reservoir.num, 1}, &volume));
        assert_true(rodti_exact_add((rodt_ratio){psi, 1}, atmosphere, &before_air));
        assert_true(rodti_exact_multiply(before_air, (rodt_ratio){reservoir.num, 1}, &before_air));
        assert_true(rodti_exact_add(EXACT(after), atmosphere, &after_air));
        assert_true(rodti_exact_multiply(after_air, volume, &after_air));
        if (after.num > 0)
            assert_int_equal(rodti_exact_compare(before_air, after_air), 0);
    }
}

static unsigned count_of(int64_t psi, int64_t floor, rodt_ratio reservoir, rodt_ratio chambers, rodt_ratio fill)
{
    unsigned count = 1000;
    assert_int_equal(rodt_reservoir_estimate_applications((rodt_pressure){psi, 1}, (rodt_pressure){floor, 1}, reservoir, chambers,
                                                fill, &count), RODT_OK);
    return count;
}

/* More air, a larger reservoir, smaller chambers, less filling, a lower floor: never a lower pressure, never fewer. */
static void the_estimate_is_monotone(void **state)
{
    (void)state;
    uint64_t seed = 7;
    for (int i = 0; i < 5000; i++) {
        int64_t psi = 60 + (int64_t)(chance(&seed) % 90), floor = (int64_t)(chance(&seed) % 100);
        int64_t v = 500 + (int64_t)(chance(&seed) % 9000), c = 25 + (int64_t)(chance(&seed) % 400);
        int64_t f = 1 + (int64_t)(chance(&seed) % 9);
        const rodt_ratio reservoir = {v, 1}, chambers = {c, 1}, fill = {f, 10}, more = {f + 1, 10};
        rodt_pressure base = after_one(psi, reservoir, chambers, fill);
        assert_true(rodt_pressure_compare(base, (rodt_pressure){psi, 1}) < 0);
        assert_true(rodt_pressure_compare(base, after_one(psi + 1, reservoir, chambers, fill)) < 0);
        assert_true(rodt_pressure_compare(base, after_one(psi, (rodt_ratio){v + 1, 1}, chambers, fill)) < 0);
        assert_true(rodt_pressure_compare(base, after_one(psi, reservoir, (rodt_ratio){c + 1, 1}, fill)) > 0);
        assert_true(rodt_pressure_compare(base, after_one(psi, reservoir, chambers, more)) > 0);
        unsigned count = count_of(psi, floor, reservoir, chambers, fill);
        assert_true(count <= count_of(psi + 1, floor, reservoir, chambers, fill));
        assert_true(count >= count_of(psi, floor + 1, reservoir, chambers, fill));
        assert_true(count >= count_of(psi, floor, reservoir, chambers, more));
        assert_true((count > 0) == (rodt_pressure_compare(base, (rodt_pressure){floor, 1}) >= 0 || base.num == 0));
    }
}

static void counts_at_their_ends(void **state)
{
    (void)state;
    const rodt_ratio v12 = {12, 1};
    assert_int_equal(count_of(100, 60, v12, whole, whole), 5);
    assert_int_equal(count_of(59, 60, v12, whole, whole), 0);
    assert_int_equal(count_of(60, 60, v12, whole, whole), 0);
    assert_int_equal(count_of(60, 60, v12, whole, (rodt_ratio){0, 1}), 99);
    assert_int_equal(count_of(120, 60, (rodt_ratio){1000000, 1}, whole, whole), 99);
    /* 294/10 x (1/2)^1 = 147/10: exactly the floor of 0 after one application is kept. */
    unsigned count = 7;
    assert_int_equal(rodt_reservoir_estimate_applications((rodt_pressure){147, 10}, (rodt_pressure){0, 1}, whole, whole, whole, &count),
                     RODT_OK);
    assert_int_equal(count, 1);
}

/* No estimate is rounded: each step that does not fit in 64 bits alone is a status. */
static void what_does_not_fit_is_said(void **state)
{
    (void)state;
    const rodt_pressure p = {100, 1};
    const rodt_ratio one = {1, 1};
    const struct {
        rodt_pressure pressure;
        rodt_ratio reservoir, chambers, fill;
    } cases[] = {{p, one, {1, 4000000007}, {1, 4000000009}},                                /* what is filled */
                 {p, {1, 4000000007}, {1, 4000000009}, one},                                /* the sum */
                 {p, {5000000000000000001, 2}, {5000000000000000003, 2}, one},              /* the part that stays */
                 {{1, 4611686018427387905}, one, one, one},                                 /* the absolute pressure */
                 {{1, 4000000007}, one, {1, 1000000007}, one},                              /* its part */
                 {{3, 10}, one, {2000000000000000003, 1}, one}};                            /* the gauge again */
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_pressure after = {7, 3};
        if (rodt_reservoir_estimate_application(cases[i].pressure, cases[i].reservoir, cases[i].chambers, cases[i].fill,
                                                &after) != RODT_E_RANGE)
            fail_msg("case %u fits", (unsigned)i);
        assert_int_equal(after.num, 7);
    }
    unsigned count = 42;
    const rodt_pressure fine = {1, 4611686018427387905}, a = {1, 4000000000000003}, b = {1, 3000000000000007};
    assert_int_equal(rodt_reservoir_estimate_applications(p, p, cases[0].reservoir, cases[0].chambers, cases[0].fill, &count),
                     RODT_E_RANGE);
    assert_int_equal(rodt_reservoir_estimate_applications(fine, p, one, one, one, &count), RODT_E_RANGE);
    assert_int_equal(rodt_reservoir_estimate_applications(p, fine, one, one, one, &count), RODT_E_RANGE);
    assert_int_equal(rodt_reservoir_estimate_applications(a, b, one, one, one, &count), RODT_E_RANGE);
    assert_int_equal(count, 42);
    rodt_ratio seconds = {7, 8};
    assert_int_equal(rodt_reservoir_build_up_seconds((rodt_ratio){INT64_MAX, 1}, one, &seconds), RODT_E_RANGE);
    assert_int_equal(rodt_reservoir_build_up_seconds((rodt_ratio){100000000000000003, 1}, (rodt_ratio){1, 1000000007}, &seconds),
                     RODT_E_RANGE);
    assert_int_equal(seconds.num, 7);
}

static void wrong_inputs_are_refused(void **state)
{
    (void)state;
    rodt_chamber open = {.family = RODT_FAMILY_CLAMP};
    rodt_ratio volume = {7, 8};
    memset(open.size, '3', sizeof open.size);
    assert_int_equal(rodt_chamber_rated_volume(&open, &volume), RODT_E_ARGUMENT);
    const rodt_pressure p = {100, 1}, none = {0, 0}, low = {-1, 1}, endless = {5, 0};
    const rodt_ratio v = {5568, 1}, c = {464, 1}, zero = {0, 1}, over = {11, 10}, below = {-1, 2}, missing = {0, 0};
    rodt_pressure after = {7, 3};
    unsigned count = 42;
    const struct {
        rodt_pressure pressure;
        rodt_ratio reservoir, chambers, fill;
    } wrong[] = {{none, v, c, whole}, {endless, v, c, whole}, {low, v, c, whole},   {p, zero, c, whole}, {p, missing, c, whole}, {p, v, zero, whole},
                 {p, v, below, whole}, {p, v, c, over},     {p, v, c, below},    {p, v, c, missing}};
    for (size_t i = 0; i < COUNT_OF(wrong); i++) {
        assert_int_equal(rodt_reservoir_estimate_application(wrong[i].pressure, wrong[i].reservoir, wrong[i].chambers, wrong[i].fill,
                                                   &after), RODT_E_ARGUMENT);
        assert_int_equal(rodt_reservoir_estimate_applications(wrong[i].pressure, p, wrong[i].reservoir, wrong[i].chambers,
                                                    wrong[i].fill, &count), RODT_E_ARGUMENT);
    }
    assert_int_equal(rodt_reservoir_estimate_application(p, v, c, whole, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_reservoir_estimate_applications(p, none, v, c, whole, &count), RODT_E_ARGUMENT);
    assert_int_equal(rodt_reservoir_estimate_applications(p, p, v, c, whole, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_reservoir_estimate_application((rodt_pressure){INT64_MAX, 1}, v, c, whole, &after), RODT_E_RANGE);
    assert_int_equal(rodt_reservoir_estimate_applications((rodt_pressure){INT64_MAX, 1}, p, v, c, whole, &count), RODT_E_RANGE);
    assert_int_equal(after.num, 7);
    assert_int_equal(count, 42);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_does_not_fit_is_said),
        cmocka_unit_test(table_v_cell_by_cell),
        cmocka_unit_test(outside_table_v_the_actual_volume_counts),
        cmocka_unit_test(required_volumes),
        cmocka_unit_test(build_up_seconds),
        cmocka_unit_test(one_application_by_hand),
        cmocka_unit_test(counts_at_their_ends),
        cmocka_unit_test(wrong_inputs_are_refused),
        /* what takes longer */
        cmocka_unit_test(air_is_conserved),
        cmocka_unit_test(the_estimate_is_monotone),
    };
    return cmocka_run_group_tests_name("reservoir", tests, NULL, NULL);
}
