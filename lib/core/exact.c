/* SPDX-License-Identifier: Apache-2.0 */
/* Exact rationals: 64-bit arithmetic that notices every overflow, and exact_wide.c for what overflows. */
#include "core/exact.h"
#include "core/exact_wide.h"

/* b is not zero. Takes out twos, then fives, instead of dividing: the denominators of a tape are powers of two, those
 * of decimals are powers of ten, and both are done then. Those of millimetres have the prime 127 left. */
static uint64_t common_divisor(uint64_t a, uint64_t b)
{
    if (a == 0)
        return b;
    uint64_t divisor = UINT64_C(1) << __builtin_ctzll(a | b);
    a >>= __builtin_ctzll(a);
    b >>= __builtin_ctzll(b);
    for (; b % 5 == 0 && a % 5 == 0; b /= 5) {
        a /= 5;
        divisor *= 5;
    }
    while (b % 5 == 0)
        b /= 5;
    if (b == 1)
        return divisor;
    if (b == 127)
        return a % 127 == 0 ? divisor * 127 : divisor;
    while (a != b) {
        uint64_t larger = a > b ? a : b;
        uint64_t smaller = a > b ? b : a;
        a = smaller;
        b = larger - smaller;
        b >>= __builtin_ctzll(b);
    }
    return a * divisor;
}

bool rodti_exact_make(int64_t num, int64_t den, rodt_ratio *out)
{
    if (den == 0)
        return false;
    uint64_t n = magnitude(num);
    uint64_t d = magnitude(den);
    if ((d & (d - 1)) == 0) { /* as on nearly every tape */
        const int halves = __builtin_ctzll(n | d);
        return set_signed((num < 0) != (den < 0), n >> halves, d >> halves, out);
    }
    uint64_t divisor = common_divisor(n, d);
    if (divisor > 1) {
        n /= divisor;
        d /= divisor;
    }
    return set_signed((num < 0) != (den < 0), n, d, out);
}

bool rodti_exact_is_reduced(rodt_ratio value)
{
    uint64_t den = (uint64_t)value.den;
    bool is_power_of_two = (den & (den - 1)) == 0;
    return is_power_of_two ? den == 1 || value.num % 2 != 0 : common_divisor(magnitude(value.num), den) == 1;
}

bool rodti_exact_add(rodt_ratio a, rodt_ratio b, rodt_ratio *out)
{
    int64_t left;
    int64_t right;
    int64_t num;
    int64_t den;
    if (a.den == b.den && !__builtin_add_overflow(a.num, b.num, &num))
        return rodti_exact_make(num, a.den, out);
    if (__builtin_mul_overflow(a.num, b.den, &left) || __builtin_mul_overflow(b.num, a.den, &right) ||
        __builtin_add_overflow(left, right, &num) || __builtin_mul_overflow(a.den, b.den, &den))
        return rodti_exact_wide_add(a, b, out);
    return rodti_exact_make(num, den, out);
}

bool rodti_exact_subtract(rodt_ratio a, rodt_ratio b, rodt_ratio *out)
{
    if (b.num == INT64_MIN)
        return rodti_exact_wide_subtract(a, b, out);
    return rodti_exact_add(a, (rodt_ratio){-b.num, b.den}, out);
}

bool rodti_exact_multiply(rodt_ratio a, rodt_ratio b, rodt_ratio *out)
{
    int64_t num;
    int64_t den;
    if (__builtin_mul_overflow(a.num, b.num, &num) || __builtin_mul_overflow(a.den, b.den, &den))
        return rodti_exact_wide_multiply(a, b, out);
    return rodti_exact_make(num, den, out);
}

bool rodti_exact_divide(rodt_ratio a, rodt_ratio b, rodt_ratio *out)
{
    int64_t num;
    int64_t den;
    if (__builtin_mul_overflow(a.num, b.den, &num) || __builtin_mul_overflow(a.den, b.num, &den))
        return rodti_exact_wide_divide(a, b, out);
    return rodti_exact_make(num, den, out);
}

int rodti_exact_compare(rodt_ratio a, rodt_ratio b)
{
    int64_t left = a.num;
    int64_t right = b.num;
    if (a.den != b.den &&
        (__builtin_mul_overflow(a.num, b.den, &left) || __builtin_mul_overflow(b.num, a.den, &right)))
        return rodti_exact_wide_compare(a, b);
    return (left > right) - (left < right);
}

/* True if the part that is cut off moves a value away from zero. */
static bool rounds_away(uint64_t rest, uint64_t den, bool odd, rodt_rounding rounding)
{
    uint64_t other = den - rest;
    switch (rounding) {
    case RODT_ROUNDING_DOWN:
        return false;
    case RODT_ROUNDING_UP:
        return true;
    case RODT_ROUNDING_HALF_UP:
        return rest >= other;
    case RODT_ROUNDING_HALF_EVEN:
        break;
    }
    return rest > other || (rest == other && odd);
}

int64_t rodti_exact_round(rodt_ratio a, rodt_rounding rounding)
{
    int64_t whole = a.num / a.den;
    uint64_t rest = magnitude(a.num % a.den);
    if (rest == 0 || !rounds_away(rest, (uint64_t)a.den, whole % 2 != 0, rounding))
        return whole;
    return a.num < 0 ? whole - 1 : whole + 1;
}
