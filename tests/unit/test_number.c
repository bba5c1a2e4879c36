/* SPDX-License-Identifier: Apache-2.0 */
/* Exact numbers: the 64-bit way against GNU MP, the form of results, every way of sharing a variable. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>

#include <cmocka.h>

#include "core/number.h"
#include "support.h"

#define DRAWS 60000

typedef bool (*operation)(number a, number b, number *out);

static const struct {
    const char *name;
    operation fast;
    operation exact;
} operations[] = {
    {"add", number_add, number_add_exact},
    {"subtract", number_subtract, number_subtract_exact},
    {"multiply", number_multiply, number_multiply_exact},
    {"divide", number_divide, number_divide_exact},
};

static const number untouched = {77, 78};

static bool equal(number a, number b) { return a.num == b.num && a.den == b.den; }

/* A number in lowest terms; drawn again when there is none. */
static number draw(uint64_t *state)
{
    number result;
    while (!number_make_exact(chance_number(state), chance_number(state), &result))
        ;
    return result;
}

static void check_operation(size_t i, number a, number b)
{
    number fast = untouched;
    number exact = untouched;
    bool fits = operations[i].fast(a, b, &fast);
    if (fits != operations[i].exact(a, b, &exact) || !equal(fast, exact))
        fail_msg("%s of %lld/%lld and %lld/%lld differs", operations[i].name, (long long)a.num,
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
    for (int n = 0; n < DRAWS; n++) {
        number a = draw(&seed);
        number b = n % 8 == 0 ? a : draw(&seed);
        for (size_t i = 0; i < COUNT_OF(operations); i++)
            check_operation(i, a, b);
        assert_int_equal(number_compare(a, b), number_compare_exact(a, b));
    }
}

static void test_both_ways_make_alike(void **state)
{
    (void)state;
    uint64_t seed = 2;
    for (int n = 0; n < DRAWS; n++) {
        int64_t num = chance_number(&seed);
        int64_t den = chance_number(&seed);
        number fast = untouched;
        number exact = untouched;
        assert_int_equal(number_make(num, den, &fast), number_make_exact(num, den, &exact));
        assert_true(equal(fast, exact));
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
        number a;
        number b;
        number sum;
        number product;
        assert_true(number_make(p, q, &a) && number_make(r, s, &b));
        assert_true(number_add(a, b, &sum) && number_multiply(a, b, &product));
        assert_int_equal(sum.num * q * s, (p * s + r * q) * sum.den);
        assert_int_equal(product.num * q * s, p * r * product.den);
        int64_t difference = p * s - r * q;
        assert_int_equal(number_compare(a, b), (difference > 0) - (difference < 0));
    }
}

static void test_shared_variables(void **state)
{
    (void)state;
    uint64_t seed = 3;
    for (int n = 0; n < DRAWS / 4; n++) {
        number a = draw(&seed);
        number b = draw(&seed);
        size_t i = (size_t)n % COUNT_OF(operations);
        number apart = a;
        bool fits = operations[i].fast(a, b, &apart);
        number first = a;
        assert_int_equal(operations[i].fast(first, b, &first), fits);
        number second = b;
        assert_int_equal(operations[i].fast(a, second, &second), fits);
        assert_true(equal(first, fits ? apart : a) && equal(second, fits ? apart : b));
        number self = a;
        number twice = a;
        assert_int_equal(operations[i].fast(self, self, &self), operations[i].exact(a, a, &twice));
        assert_true(equal(self, twice));
    }
}

static void test_ends_of_the_range(void **state)
{
    (void)state;
    number out = untouched;
    number smallest = {INT64_MIN, 1};
    number one = {1, 1};
    assert_true(number_make(INT64_MIN, 1, &out) && equal(out, smallest));
    assert_true(number_make(INT64_MIN, INT64_MIN, &out) && equal(out, one));
    assert_true(number_make(INT64_MIN, -2, &out) && equal(out, (number){INT64_C(1) << 62, 1}));
    assert_true(number_make(0, INT64_MIN, &out) && equal(out, (number){0, 1}));
    out = untouched;
    assert_false(number_make(INT64_MIN, -1, &out));
    assert_false(number_make(1, INT64_MIN, &out));
    assert_false(number_make(1, 0, &out));
    assert_false(number_subtract((number){0, 1}, smallest, &out));
    assert_false(number_divide(one, (number){0, 1}, &out));
    assert_false(number_divide(one, smallest, &out));
    assert_false(number_add((number){INT64_MAX, 1}, one, &out));
    assert_true(equal(out, untouched));
    assert_true(number_add((number){INT64_MAX, 3}, (number){INT64_MIN, 3}, &out) &&
                equal(out, (number){-1, 3}));
    assert_int_equal(
        number_compare((number){INT64_MAX, INT64_MAX - 1}, (number){INT64_MAX - 1, INT64_MAX - 2}), -1);
}

/* Results that fit although what is between does not: only the wide way gives them. */
static void test_fits_after_all(void **state)
{
    (void)state;
    number out;
    number odd = {INT64_C(3037000501), INT64_C(3037000503)};
    number other = {INT64_C(3037000503), INT64_C(3037000501)};
    assert_true(number_multiply(odd, other, &out) && equal(out, (number){1, 1}));
    assert_true(number_divide(odd, odd, &out) && equal(out, (number){1, 1}));
    number a = {INT64_MAX, INT64_C(4294967296)};
    assert_true(number_subtract(a, a, &out) && equal(out, (number){0, 1}));
}

static void test_round(void **state)
{
    (void)state;
    static const struct {
        number value;
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
        assert_int_equal(number_round(cases[i].value, NUMBER_HALF_EVEN), cases[i].half_even);
        assert_int_equal(number_round(cases[i].value, NUMBER_HALF_UP), cases[i].half_up);
        assert_int_equal(number_round(cases[i].value, NUMBER_DOWN), cases[i].down);
        assert_int_equal(number_round(cases[i].value, NUMBER_UP), cases[i].up);
    }
}

/* base^power by products that still fit, compared the plain way. */
static void powers_are_compared_exactly(void **state)
{
    (void)state;
    uint64_t seed = 11;
    for (int i = 0; i < 2000; i++) {
        number base = {(int64_t)(chance(&seed) % 12), 1 + (int64_t)(chance(&seed) % 12)};
        number value = {(int64_t)(chance(&seed) % 100), 1 + (int64_t)(chance(&seed) % 100)};
        number power = {1, 1};
        assert_true(number_make(base.num, base.den, &base) && number_make(value.num, value.den, &value));
        for (unsigned n = 0; n <= 12; n++) {
            assert_int_equal(number_compare_power(base, n, value), number_compare(power, value));
            assert_int_equal(number_compare_power(base, n, power), 0);
            assert_true(number_multiply(power, base, &power));
        }
    }
    const number large = {INT64_MAX, INT64_MAX - 1}, one = {1, 1};
    assert_int_equal(number_compare_power(large, NUMBER_POWER_MAX, one), 1);
    assert_int_equal(number_compare_power((number){INT64_MAX - 1, INT64_MAX}, NUMBER_POWER_MAX, one), -1);
    assert_int_equal(number_compare_power((number){INT64_MAX, 1}, NUMBER_POWER_MAX, (number){INT64_MAX, 1}), 1);
    assert_int_equal(number_compare_power(large, NUMBER_POWER_MAX, (number){1, INT64_MAX}), 1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(powers_are_compared_exactly),
        cmocka_unit_test(test_both_ways_agree),
        cmocka_unit_test(test_both_ways_make_alike),
        cmocka_unit_test(test_schoolbook),
        cmocka_unit_test(test_shared_variables),
        cmocka_unit_test(test_ends_of_the_range),
        cmocka_unit_test(test_fits_after_all),
        cmocka_unit_test(test_round),
    };
    return cmocka_run_group_tests_name("number", tests, NULL, NULL);
}
