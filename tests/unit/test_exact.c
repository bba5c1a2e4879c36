/* SPDX-License-Identifier: Apache-2.0 */
/* Exact numbers: the fast path against the wide one, GNU MP against plain C, the form of results, and every way of
 * sharing a variable. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>

#include <cmocka.h>

#include "core/exact.h"
#include "core/exact_wide.h"
#include "core/limbs_plain.h"
#include "support.h"

#include <stdlib.h>
#include <string.h>

/* Drawn pairs of numbers; an argument asks for more. */
static int draws = 500;

/* exact_wide.c once more, in plain C. */
bool plain_make(int64_t num, int64_t den, rodt_ratio *out);
bool plain_add(rodt_ratio a, rodt_ratio b, rodt_ratio *out);
bool plain_subtract(rodt_ratio a, rodt_ratio b, rodt_ratio *out);
bool plain_multiply(rodt_ratio a, rodt_ratio b, rodt_ratio *out);
bool plain_divide(rodt_ratio a, rodt_ratio b, rodt_ratio *out);
int plain_compare(rodt_ratio a, rodt_ratio b);
int plain_compare_power(rodt_ratio base, unsigned power, rodt_ratio value);

typedef bool (*operation)(rodt_ratio a, rodt_ratio b, rodt_ratio *out);

static const struct {
    const char *name;
    operation fast;
    operation exact;
    operation plain;
} operations[] = {
    {"add", rodti_exact_add, rodti_exact_wide_add, plain_add},
    {"subtract", rodti_exact_subtract, rodti_exact_wide_subtract, plain_subtract},
    {"multiply", rodti_exact_multiply, rodti_exact_wide_multiply, plain_multiply},
    {"divide", rodti_exact_divide, rodti_exact_wide_divide, plain_divide},
};

static const rodt_ratio untouched = {77, 78};

static bool equal(rodt_ratio a, rodt_ratio b) { return a.num == b.num && a.den == b.den; }

/* A number in lowest terms; drawn again when there is none. */
static rodt_ratio draw(uint64_t *state)
{
    rodt_ratio result;
    while (!rodti_exact_wide_make(chance_number(state), chance_number(state), &result))
        ;
    return result;
}

static void check_operation(size_t i, rodt_ratio a, rodt_ratio b)
{
    rodt_ratio fast = untouched;
    rodt_ratio exact = untouched;
    bool fits = operations[i].fast(a, b, &fast);
    if (fits != operations[i].exact(a, b, &exact) || !equal(fast, exact))
        fail_msg("%s of %lld/%lld and %lld/%lld differs", operations[i].name, (long long)a.num,
                 (long long)a.den, (long long)b.num, (long long)b.den);
    rodt_ratio plain = untouched;
    if (fits != operations[i].plain(a, b, &plain) || !equal(plain, exact))
        fail_msg("plain %s of %lld/%lld and %lld/%lld differs", operations[i].name, (long long)a.num,
                 (long long)a.den, (long long)b.num, (long long)b.den);
    if (fits)
        assert_true(is_canonical(fast.num, fast.den));
    else
        assert_true(equal(fast, untouched));
}

static void test_both_ways_agree(void **state)
{
    (void)state;
    uint64_t seed = 1;
    for (int n = 0; n < draws; n++) {
        rodt_ratio a = draw(&seed);
        rodt_ratio b = n % 8 == 0 ? a : draw(&seed);
        for (size_t i = 0; i < COUNT_OF(operations); i++)
            check_operation(i, a, b);
        assert_int_equal(rodti_exact_compare(a, b), rodti_exact_wide_compare(a, b));
        assert_int_equal(rodti_exact_compare(a, b), plain_compare(a, b));
    }
}

static void test_both_ways_make_alike(void **state)
{
    (void)state;
    uint64_t seed = 2;
    for (int n = 0; n < draws; n++) {
        int64_t num = chance_number(&seed);
        int64_t den = chance_number(&seed);
        rodt_ratio fast = untouched;
        rodt_ratio exact = untouched;
        rodt_ratio plain = untouched;
        assert_int_equal(rodti_exact_make(num, den, &fast), rodti_exact_wide_make(num, den, &exact));
        assert_int_equal(plain_make(num, den, &plain), rodti_exact_wide_make(num, den, &exact));
        assert_true(equal(fast, exact) && equal(plain, exact));
        assert_true(equal(fast, untouched) || is_canonical(fast.num, fast.den));
    }
}

/* Small numbers against the schoolbook formula, so that both ways cannot be wrong alike. */
static void test_schoolbook(void **state)
{
    (void)state;
    for (int64_t i = 0; i < 21 * 8 * 21 * 8; i++) {
        int64_t p = i % 21 - 10;
        int64_t q = i / 21 % 8 + 1;
        int64_t r = i / 168 % 21 - 10;
        int64_t s = i / 3528 + 1;
        rodt_ratio a;
        rodt_ratio b;
        rodt_ratio sum;
        rodt_ratio product;
        assert_true(rodti_exact_make(p, q, &a) && rodti_exact_make(r, s, &b));
        assert_true(rodti_exact_add(a, b, &sum) && rodti_exact_multiply(a, b, &product));
        assert_int_equal(sum.num * q * s, (p * s + r * q) * sum.den);
        assert_int_equal(product.num * q * s, p * r * product.den);
        int64_t difference = p * s - r * q;
        assert_int_equal(rodti_exact_compare(a, b), (difference > 0) - (difference < 0));
    }
}

/* Denominators of twos, fives, 127 and others: lowest terms by Euclid's way. */
static void test_lowest_terms(void **state)
{
    (void)state;
    for (int64_t den = 1; den <= 640; den++) {
        for (int64_t num = 0; num <= 260; num++) {
            const int64_t divisor = (int64_t)euclid((uint64_t)num, (uint64_t)den);
            rodt_ratio made;
            assert_true(rodti_exact_make(-num, -den, &made));
            assert_true(made.num == num / divisor && made.den == den / divisor);
            assert_true(rodti_exact_make(num, -den, &made));
            assert_true(made.num == -num / divisor && made.den == den / divisor);
            assert_int_equal(rodti_exact_is_reduced((rodt_ratio){-num, den}), divisor == 1);
        }
        rodt_ratio whole; /* a divisor that is a little wrong shows in large quotients */
        assert_true(rodti_exact_make(1000003 * den, den, &whole) && whole.num == 1000003 && whole.den == 1);
    }
}

static void test_shared_variables(void **state)
{
    (void)state;
    uint64_t seed = 3;
    for (int n = 0; n < draws / 4; n++) {
        rodt_ratio a = draw(&seed);
        rodt_ratio b = draw(&seed);
        size_t i = (size_t)n % COUNT_OF(operations);
        rodt_ratio apart = a;
        bool fits = operations[i].fast(a, b, &apart);
        rodt_ratio first = a;
        assert_int_equal(operations[i].fast(first, b, &first), fits);
        rodt_ratio second = b;
        assert_int_equal(operations[i].fast(a, second, &second), fits);
        assert_true(equal(first, fits ? apart : a) && equal(second, fits ? apart : b));
        rodt_ratio self = a;
        rodt_ratio twice = a;
        assert_int_equal(operations[i].fast(self, self, &self), operations[i].exact(a, a, &twice));
        assert_true(equal(self, twice));
    }
}

static void test_ends_of_the_range(void **state)
{
    (void)state;
    rodt_ratio out = untouched;
    rodt_ratio smallest = {INT64_MIN, 1};
    rodt_ratio one = {1, 1};
    assert_true(rodti_exact_make(INT64_MIN, 1, &out) && equal(out, smallest));
    assert_true(rodti_exact_make(INT64_MIN, INT64_MIN, &out) && equal(out, one));
    assert_true(rodti_exact_make(5, INT64_MAX, &out) && equal(out, (rodt_ratio){5, INT64_MAX}));
    assert_true(rodti_exact_make(INT64_MAX, 5, &out) && equal(out, (rodt_ratio){INT64_MAX, 5}));
    assert_true(rodti_exact_make(INT64_MIN, -2, &out) && equal(out, (rodt_ratio){INT64_C(1) << 62, 1}));
    assert_true(rodti_exact_make(0, INT64_MIN, &out) && equal(out, (rodt_ratio){0, 1}));
    out = untouched;
    assert_false(rodti_exact_make(INT64_MIN, -1, &out));
    assert_false(rodti_exact_make(1, INT64_MIN, &out));
    assert_false(rodti_exact_make(1, 0, &out));
    assert_false(rodti_exact_subtract((rodt_ratio){0, 1}, smallest, &out));
    assert_false(rodti_exact_divide(one, (rodt_ratio){0, 1}, &out));
    assert_false(rodti_exact_divide(one, smallest, &out));
    assert_false(rodti_exact_add((rodt_ratio){INT64_MAX, 1}, one, &out));
    assert_true(equal(out, untouched));
    assert_true(rodti_exact_add((rodt_ratio){INT64_MAX, 3}, (rodt_ratio){INT64_MIN, 3}, &out) &&
                equal(out, (rodt_ratio){-1, 3}));
    assert_int_equal(
        rodti_exact_compare((rodt_ratio){INT64_MAX, INT64_MAX - 1}, (rodt_ratio){INT64_MAX - 1, INT64_MAX - 2}), -1);
}

/* Results that fit although what is between does not: only the wide way gives them. */
static void test_fits_after_all(void **state)
{
    (void)state;
    rodt_ratio out;
    rodt_ratio odd = {INT64_C(3037000501), INT64_C(3037000503)};
    rodt_ratio other = {INT64_C(3037000503), INT64_C(3037000501)};
    assert_true(rodti_exact_multiply(odd, other, &out) && equal(out, (rodt_ratio){1, 1}));
    assert_true(rodti_exact_divide(odd, odd, &out) && equal(out, (rodt_ratio){1, 1}));
    /* More than a limb of twos above and below the bar, and exactly one. */
    const int64_t half = INT64_C(1) << 62, thirty_two = INT64_C(1) << 32;
    assert_true(rodti_exact_add((rodt_ratio){half + 1, half}, (rodt_ratio){half - 1, half}, &out) &&
                equal(out, (rodt_ratio){2, 1}));
    assert_true(rodti_exact_add((rodt_ratio){half + 1, thirty_two}, (rodt_ratio){half - 1, thirty_two}, &out) &&
                equal(out, (rodt_ratio){INT64_C(1) << 31, 1}));
    assert_true(plain_add((rodt_ratio){half + 1, half}, (rodt_ratio){half - 1, half}, &out) &&
                equal(out, (rodt_ratio){2, 1}));
    assert_true(plain_add((rodt_ratio){half + 1, thirty_two}, (rodt_ratio){half - 1, thirty_two}, &out) &&
                equal(out, (rodt_ratio){INT64_C(1) << 31, 1}));
    rodt_ratio a = {INT64_MAX, INT64_C(4294967296)};
    assert_true(rodti_exact_subtract(a, a, &out) && equal(out, (rodt_ratio){0, 1}));
}

/* Limbs between two others, which stay. */
#define STAYS 0xA5A5A5A5u

typedef struct fenced {
    limb before, limbs[WIDE], behind;
} fenced;

static fenced fence(limb a, limb b, limb c, limb d) { return (fenced){STAYS, {a, b, c, d}, STAYS}; }

static void check_limbs(const fenced *got, limb a, limb b, limb c, limb d)
{
    const fenced wanted = fence(a, b, c, d);
    assert_memory_equal(got, &wanted, sizeof wanted);
}

static void test_words_of_roundings(void **state)
{
    (void)state;
    static const char *const words[] = {"half-even", "half-up", "down", "up"};
    for (int number = 0; number <= RODT_ROUNDING_END; number++)
        assert_string_equal(rodt_rounding_name((rodt_rounding)number), number < RODT_ROUNDING_END ? words[number] : "");
}

static void test_plain_limbs(void **state)
{
    (void)state;
    const limb most = 0xFFFFFFFFu;
    fenced a = fence(most, most, most, 5), b = fence(most, most, most, 7), result = fence(9, 9, 9, 9);
    limbs_multiply(result.limbs, a.limbs, b.limbs);
    check_limbs(&result, 1, 0, most - 1, most);
    result = fence(1, 0, 0, 0);
    limbs_add_product(result.limbs, a.limbs, WIDE, 1);
    check_limbs(&result, 0, 0, 0, 6);
    limbs_add_product(result.limbs, a.limbs, 2, most); /* what is carried is cut off */
    check_limbs(&result, 1, most, 0, 6);
    limbs_add(result.limbs, a.limbs, b.limbs);
    check_limbs(&result, most - 1, most, most, 13);
    limbs_subtract(result.limbs, result.limbs, a.limbs);
    check_limbs(&result, most, most, most, 7);
    limbs_subtract(result.limbs, result.limbs, a.limbs);
    check_limbs(&result, 0, 0, 0, 2);
    assert_int_equal(limbs_compare(a.limbs, b.limbs, WIDE), -1);
    assert_int_equal(limbs_compare(b.limbs, a.limbs, WIDE), 1);
    assert_int_equal(limbs_compare(a.limbs, b.limbs, WIDE - 1), 0);
    assert_true(limbs_are_zero(result.limbs, WIDE - 1) && !limbs_are_zero(result.limbs, WIDE));
    assert_true(limbs_are_zero(result.limbs, 0));
    assert_int_equal(limbs_trailing_zeros(result.limbs), 97);
    limbs_shift_down(result.limbs, 97);
    check_limbs(&result, 1, 0, 0, 0);
    result = fence(0x10, 0x32, 0x54, 0x76);
    limbs_shift_down(result.limbs, 4);
    check_limbs(&result, 0x20000001, 0x40000003, 0x60000005, 7);
    limbs_shift_down(result.limbs, 64);
    check_limbs(&result, 0x60000005, 7, 0, 0);
    limbs_shift_down(result.limbs, 0);
    check_limbs(&result, 0x60000005, 7, 0, 0);
    a = fence(15, 0, 0, 0), b = fence(25, 0, 0, 0);
    limbs_odd_divisor(a.limbs, b.limbs);
    check_limbs(&a, 5, 0, 0, 0);
    a = fence(25, 0, 0, 5), b = fence(5, 0, 0, 1);
    limbs_divide(a.limbs, b.limbs);
    check_limbs(&a, 5, 0, 0, 0);
    a = fence(6, 0, 0, 0), b = fence(2, 0, 0, 0);
    limbs_divide(a.limbs, b.limbs);
    check_limbs(&a, 3, 0, 0, 0);
    a = fence(most, most, most, most), b = fence(3, 0, 0, 0);
    limbs_divide(a.limbs, b.limbs);
    check_limbs(&a, most / 3, most / 3, most / 3, most / 3);
    check_limbs(&b, 3, 0, 0, 0);
}

static void test_round(void **state)
{
    (void)state;
    static const struct {
        rodt_ratio value;
        int64_t half_even, half_up, down, up;
    } cases[] = {
        {{5, 2}, 2, 3, 2, 3},
        {{7, 2}, 4, 4, 3, 4},
        {{-5, 2}, -2, -3, -2, -3},
        {{-7, 2}, -4, -4, -3, -4},
        {{1, 2}, 0, 1, 0, 1},
        {{-1, 2}, 0, -1, 0, -1},
        {{9, 4}, 2, 2, 2, 3},
        {{11, 4}, 3, 3, 2, 3},
        {{-9, 4}, -2, -2, -2, -3},
        {{6, 1}, 6, 6, 6, 6},
        {{0, 1}, 0, 0, 0, 0},
        {{1, 3}, 0, 0, 0, 1},
        {{INT64_MAX, 2}, INT64_C(1) << 62, INT64_C(1) << 62, (INT64_C(1) << 62) - 1, INT64_C(1) << 62},
        {{INT64_MIN, 1}, INT64_MIN, INT64_MIN, INT64_MIN, INT64_MIN},
        {{INT64_MAX - 1, INT64_MAX}, 1, 1, 0, 1},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        assert_int_equal(rodti_exact_round(cases[i].value, RODT_ROUNDING_HALF_EVEN), cases[i].half_even);
        assert_int_equal(rodti_exact_round(cases[i].value, RODT_ROUNDING_HALF_UP), cases[i].half_up);
        assert_int_equal(rodti_exact_round(cases[i].value, RODT_ROUNDING_DOWN), cases[i].down);
        assert_int_equal(rodti_exact_round(cases[i].value, RODT_ROUNDING_UP), cases[i].up);
    }
}

/* base^power by products that still fit, compared the plain way. */
static void powers_are_compared_exactly(void **state)
{
    (void)state;
    uint64_t seed = 11;
    for (int i = 0; i < draws / 20; i++) {
        rodt_ratio base = {(int64_t)(chance(&seed) % 12), 1 + (int64_t)(chance(&seed) % 12)};
        rodt_ratio value = {(int64_t)(chance(&seed) % 100), 1 + (int64_t)(chance(&seed) % 100)};
        rodt_ratio power = {1, 1};
        assert_true(rodti_exact_make(base.num, base.den, &base) && rodti_exact_make(value.num, value.den, &value));
        for (unsigned n = 0; n <= 12; n++) {
            assert_int_equal(rodti_exact_compare_power(base, n, value), rodti_exact_compare(power, value));
            assert_int_equal(rodti_exact_compare_power(base, n, power), 0);
            assert_int_equal(plain_compare_power(base, n, value), rodti_exact_compare_power(base, n, value));
            assert_true(rodti_exact_multiply(power, base, &power));
        }
    }
    static const struct {
        rodt_ratio base;
        unsigned power;
        rodt_ratio value;
        int order;
    } parts[] = {
        {{INT64_C(1) << 32, 1}, 1, {1, 1}, 1},
        {{INT64_C(1) << 32, 1}, 1, {(INT64_C(1) << 32) + 1, 1}, -1},
        {{(INT64_C(1) << 32) + 1, 1}, 1, {INT64_C(1) << 32, 1}, 1},
        {{(INT64_C(1) << 32) + 1, 1}, 1, {(INT64_C(1) << 32) + 1, 1}, 0},
        {{INT64_C(1) << 31, 1}, 2, {INT64_C(1) << 62, 1}, 0},
        {{1, INT64_C(1) << 31}, 2, {1, INT64_C(1) << 62}, 0},
        {{INT64_C(1) << 31, 1}, 2, {(INT64_C(1) << 62) + 1, 1}, -1},
        {{INT64_C(3037000500), 1}, 2, {INT64_MAX, 1}, 1},
        {{INT64_C(3037000499), 1}, 2, {INT64_MAX, 1}, -1},
        {{INT64_MAX, 1}, EXACT_POWER_MAX, {INT64_MAX, 1}, 1},
        {{1, INT64_MAX}, EXACT_POWER_MAX, {1, INT64_MAX}, -1},
    };
    for (size_t i = 0; i < COUNT_OF(parts); i++) {
        assert_int_equal(rodti_exact_compare_power(parts[i].base, parts[i].power, parts[i].value), parts[i].order);
        assert_int_equal(plain_compare_power(parts[i].base, parts[i].power, parts[i].value), parts[i].order);
    }
    const rodt_ratio large = {INT64_MAX, INT64_MAX - 1}, one = {1, 1};
    assert_int_equal(rodti_exact_compare_power(large, EXACT_POWER_MAX, one), 1);
    assert_int_equal(rodti_exact_compare_power((rodt_ratio){INT64_MAX - 1, INT64_MAX}, EXACT_POWER_MAX, one), -1);
    assert_int_equal(rodti_exact_compare_power((rodt_ratio){INT64_MAX, 1}, EXACT_POWER_MAX, (rodt_ratio){INT64_MAX, 1}), 1);
    assert_int_equal(rodti_exact_compare_power(large, EXACT_POWER_MAX, (rodt_ratio){1, INT64_MAX}), 1);
    assert_int_equal(plain_compare_power(large, EXACT_POWER_MAX, (rodt_ratio){1, INT64_MAX}), 1);
    assert_int_equal(plain_compare_power((rodt_ratio){INT64_MAX - 1, INT64_MAX}, EXACT_POWER_MAX, one), -1);
}

/* The public functions check what the inner ones rely on. */
static void test_ratios(void **state)
{
    (void)state;
    const rodt_ratio none = {0, 0}, most = {INT64_MAX, 1};
    rodt_ratio ratio = untouched;
    assert_int_equal(rodt_ratio_make(1, 0, &ratio), RODT_E_ARGUMENT);
    assert_int_equal(rodt_ratio_make(1, 2, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_ratio_make(INT64_MIN, -1, &ratio), RODT_E_RANGE);
    /* Each operand, and the place for the result, alone is a reason. */
    rodt_status (*const each[])(rodt_ratio, rodt_ratio, rodt_ratio *) = {rodt_ratio_add, rodt_ratio_subtract,
                                                                         rodt_ratio_multiply, rodt_ratio_divide};
    for (size_t i = 0; i < COUNT_OF(each); i++) {
        assert_int_equal(each[i](none, most, &ratio), RODT_E_ARGUMENT);
        assert_int_equal(each[i](most, none, &ratio), RODT_E_ARGUMENT);
        assert_int_equal(each[i](most, most, NULL), RODT_E_ARGUMENT);
        assert_int_equal(each[i]((rodt_ratio){1, 2}, (rodt_ratio){-1, 2}, &(rodt_ratio){0, 1}), RODT_OK);
    }
    assert_true(equal(ratio, untouched));
    assert_int_equal(rodt_ratio_add(most, most, &ratio), RODT_E_RANGE);
    assert_int_equal(rodt_ratio_multiply(untouched, none, &ratio), RODT_E_ARGUMENT);
    assert_int_equal(rodt_ratio_multiply(most, most, &ratio), RODT_E_RANGE);
    assert_int_equal(rodt_ratio_compare(ratio, untouched), 0);
    assert_int_equal(rodt_ratio_compare(none, (rodt_ratio){-1, 1}), -1);
    assert_int_equal(rodt_ratio_compare(none, none), 0);
    assert_int_equal(rodt_ratio_make(30, -8, &ratio), RODT_OK);
    assert_true(ratio.num == -15 && ratio.den == 4);
    assert_int_equal(rodt_ratio_add(ratio, (rodt_ratio){1, 4}, &ratio), RODT_OK);
    assert_int_equal(rodt_ratio_multiply(ratio, (rodt_ratio){1, 2}, &ratio), RODT_OK);
    char text[RODT_RATIO_TEXT_SIZE] = "#";
    assert_int_equal(rodt_ratio_format(ratio, text, 5, NULL), RODT_E_SPACE);
    assert_int_equal(rodt_ratio_format(none, text, sizeof text, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_ratio_format(ratio, NULL, sizeof text, NULL), RODT_E_ARGUMENT);
    assert_string_equal(text, "#");
    assert_int_equal(rodt_ratio_format(ratio, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, "-1 3/4");
}

/* Whole numbers, fractions and both, and the room that each needs. */
static void test_numbers_are_written(void **state)
{
    (void)state;
    static const struct {
        rodt_ratio value;
        const char *text;
    } cases[] = {
        {{0, 1}, "0"},
        {{1, 1}, "1"},
        {{-1, 1}, "-1"},
        {{7, 1}, "7"},
        {{-7, 1}, "-7"},
        {{10, 1}, "10"},
        {{1, 2}, "1/2"},
        {{-1, 2}, "-1/2"},
        {{3, 2}, "1 1/2"},
        {{-3, 2}, "-1 1/2"},
        {{9, 10}, "9/10"},
        {{100, 3}, "33 1/3"},
        {{INT64_MIN, 1}, "-9223372036854775808"},
        {{INT64_MIN, INT64_MAX}, "-1 1/9223372036854775807"},
        {{INT64_MAX, 2}, "4611686018427387903 1/2"},
        {{99999999, 1}, "99999999"},
        {{-99999999, 99999998}, "-1 1/99999998"},
        {{100000000, 1}, "100000000"},
        {{1, 99999999}, "1/99999999"},
        {{1, 100000000}, "1/100000000"},
        {{100000000, 99999999}, "1 1/99999999"},
        {{1002003, 1000000}, "1 2003/1000000"},
        {{-41, 16}, "-2 9/16"},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        char text[RODT_RATIO_TEXT_SIZE] = "#";
        const size_t size = strlen(cases[i].text);
        size_t needed = 0;
        assert_int_equal(rodt_ratio_format(cases[i].value, text, size, &needed), RODT_E_SPACE);
        assert_true(needed == size + 1 && strcmp(text, "#") == 0);
        assert_int_equal(rodt_ratio_format(cases[i].value, text, size + 1, &needed), RODT_OK);
        assert_string_equal(text, cases[i].text);
        needed = 0;
        memset(text, '#', sizeof text);
        assert_int_equal(rodt_ratio_format(cases[i].value, text, sizeof text, &needed), RODT_OK);
        assert_string_equal(text, cases[i].text);
        assert_int_equal(needed, size + 1);
    }
    assert_int_equal(rodt_ratio_format((rodt_ratio){1, -2}, (char[9]){0}, 9, NULL), RODT_E_ARGUMENT);
}

/* What has no denominator above zero is below every number, and no two of these differ. */
static void test_numbers_are_compared(void **state)
{
    (void)state;
    static const rodt_ratio rising[] = {{INT64_MIN, 1}, {-3, 2}, {-1, 1}, {0, 1}, {1, 2}, {1, 1}, {INT64_MAX, 1}};
    static const rodt_ratio none[] = {{0, 0}, {5, 0}, {1, -1}, {-1, -2}};
    for (size_t i = 0; i < COUNT_OF(rising); i++) {
        for (size_t k = 0; k < COUNT_OF(rising); k++)
            assert_int_equal(rodt_ratio_compare(rising[i], rising[k]), (int)(i > k) - (int)(i < k));
        for (size_t k = 0; k < COUNT_OF(none); k++) {
            assert_int_equal(rodt_ratio_compare(rising[i], none[k]), 1);
            assert_int_equal(rodt_ratio_compare(none[k], rising[i]), -1);
            assert_int_equal(rodt_ratio_compare(none[k], none[i % COUNT_OF(none)]), 0);
        }
    }
}

static void test_public_difference_and_quotient(void **state)
{
    (void)state;
    rodt_ratio out = {7, 8};
    assert_int_equal(rodt_ratio_subtract((rodt_ratio){1, 2}, (rodt_ratio){3, 4}, &out), RODT_OK);
    assert_true(out.num == -1 && out.den == 4);
    assert_int_equal(rodt_ratio_divide((rodt_ratio){1, 2}, (rodt_ratio){-3, 4}, &out), RODT_OK);
    assert_true(out.num == -2 && out.den == 3);
    assert_int_equal(rodt_ratio_divide((rodt_ratio){1, 2}, (rodt_ratio){0, 1}, &out), RODT_E_ARGUMENT);
    assert_int_equal(rodt_ratio_divide((rodt_ratio){1, 2}, (rodt_ratio){1, 0}, &out), RODT_E_ARGUMENT);
    assert_int_equal(rodt_ratio_divide((rodt_ratio){1, 2}, (rodt_ratio){2, 1}, &(rodt_ratio){0, 1}), RODT_OK);
    assert_int_equal(rodt_ratio_divide((rodt_ratio){1, 2}, (rodt_ratio){1, 2}, &(rodt_ratio){0, 1}), RODT_OK);
    assert_int_equal(rodt_ratio_divide((rodt_ratio){1, 2}, (rodt_ratio){0, 0}, &out), RODT_E_ARGUMENT);
    assert_int_equal(rodt_ratio_subtract((rodt_ratio){1, 2}, (rodt_ratio){1, -2}, &out), RODT_E_ARGUMENT);
    assert_int_equal(rodt_ratio_subtract((rodt_ratio){INT64_MIN, 1}, (rodt_ratio){1, 1}, &out), RODT_E_RANGE);
    assert_int_equal(rodt_ratio_divide((rodt_ratio){INT64_MAX, 1}, (rodt_ratio){1, 2}, &out), RODT_E_RANGE);
    assert_true(out.num == -2 && out.den == 3);
}

int main(int count, char **words)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_numbers_are_written),
        cmocka_unit_test(test_numbers_are_compared),
        cmocka_unit_test(test_public_difference_and_quotient),
        cmocka_unit_test(test_schoolbook),
        cmocka_unit_test(test_lowest_terms),
        cmocka_unit_test(test_ends_of_the_range),
        cmocka_unit_test(test_fits_after_all),
        cmocka_unit_test(test_words_of_roundings),
        cmocka_unit_test(test_plain_limbs),
        cmocka_unit_test(test_round),
        cmocka_unit_test(test_ratios),
        cmocka_unit_test(powers_are_compared_exactly),
        cmocka_unit_test(test_both_ways_agree),
        cmocka_unit_test(test_both_ways_make_alike),
        cmocka_unit_test(test_shared_variables),
    };
    if (count > 1)
        draws = atoi(words[1]);
    return cmocka_run_group_tests_name("exact", tests, NULL, NULL);
}
