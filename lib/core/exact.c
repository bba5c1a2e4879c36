/* SPDX-License-Identifier: Apache-2.0 */
/* Exact rationals: 64-bit arithmetic that notices every overflow, and GNU MP behind it. */
#include "core/exact.h"

#include <gmp.h>

/* The layer of GNU MP on limb arrays is used, with arrays on the stack: it neither asks for memory nor
 * ends the program when there is none, as the mpz and mpq layers may do. */
_Static_assert(GMP_NAIL_BITS == 0 && (GMP_NUMB_BITS == 64 || GMP_NUMB_BITS == 32), "limbs of 32 or 64 bits");

#define HALF (64 / GMP_NUMB_BITS) /* limbs of one 64-bit part */
#define WIDE (2 * HALF)           /* limbs of a product of two parts, and of a sum of two products */

/* ---- 64-bit way ---- */

/* Negating INT64_MIN as a signed number is not defined; as an unsigned one it is its magnitude. */
static uint64_t magnitude(int64_t value) { return value < 0 ? 0 - (uint64_t)value : (uint64_t)value; }

/* Puts signs back. The magnitude 2^63 has a negative form only, and a denominator is positive. */
static bool deliver(bool negative, uint64_t num, uint64_t den, rodt_ratio *out)
{
    if (den > INT64_MAX || num > (uint64_t)INT64_MAX + negative)
        return false;
    out->num = negative ? (int64_t)(0 - num) : (int64_t)num;
    out->den = (int64_t)den;
    return true;
}

/* Shifts out twos instead of dividing: the denominators of a tape are powers of two, and are done at once. */
static uint64_t common_divisor(uint64_t a, uint64_t b)
{
    if (a == 0 || b == 0)
        return a | b;
    int twos = __builtin_ctzll(a | b);
    a >>= __builtin_ctzll(a);
    b >>= __builtin_ctzll(b);
    while (a != b) {
        uint64_t larger = a > b ? a : b;
        uint64_t smaller = a > b ? b : a;
        if (smaller == 1)
            return UINT64_C(1) << twos;
        a = smaller;
        b = larger - smaller;
        b >>= __builtin_ctzll(b);
    }
    return a << twos;
}

bool exact_make(int64_t num, int64_t den, rodt_ratio *out)
{
    if (den == 0)
        return false;
    uint64_t n = magnitude(num);
    uint64_t d = magnitude(den);
    uint64_t divisor = common_divisor(n, d);
    return deliver((num < 0) != (den < 0) && num != 0, n / divisor, d / divisor, out);
}

bool exact_add(rodt_ratio a, rodt_ratio b, rodt_ratio *out)
{
    int64_t left;
    int64_t right;
    int64_t num;
    int64_t den;
    if (a.den == b.den && !__builtin_add_overflow(a.num, b.num, &num))
        return exact_make(num, a.den, out);
    if (__builtin_mul_overflow(a.num, b.den, &left) || __builtin_mul_overflow(b.num, a.den, &right) ||
        __builtin_add_overflow(left, right, &num) || __builtin_mul_overflow(a.den, b.den, &den))
        return exact_add_gmp(a, b, out);
    return exact_make(num, den, out);
}

bool exact_subtract(rodt_ratio a, rodt_ratio b, rodt_ratio *out)
{
    if (b.num == INT64_MIN)
        return exact_subtract_gmp(a, b, out);
    return exact_add(a, (rodt_ratio){-b.num, b.den}, out);
}

bool exact_multiply(rodt_ratio a, rodt_ratio b, rodt_ratio *out)
{
    int64_t num;
    int64_t den;
    if (__builtin_mul_overflow(a.num, b.num, &num) || __builtin_mul_overflow(a.den, b.den, &den))
        return exact_multiply_gmp(a, b, out);
    return exact_make(num, den, out);
}

bool exact_divide(rodt_ratio a, rodt_ratio b, rodt_ratio *out)
{
    int64_t num;
    int64_t den;
    if (__builtin_mul_overflow(a.num, b.den, &num) || __builtin_mul_overflow(a.den, b.num, &den))
        return exact_divide_gmp(a, b, out);
    return exact_make(num, den, out);
}

int exact_compare(rodt_ratio a, rodt_ratio b)
{
    int64_t left = a.num;
    int64_t right = b.num;
    if (a.den != b.den &&
        (__builtin_mul_overflow(a.num, b.den, &left) || __builtin_mul_overflow(b.num, a.den, &right)))
        return exact_compare_gmp(a, b);
    return (left > right) - (left < right);
}

/* True if the part that is cut off moves a value away from zero. */
static bool rounds_away(uint64_t rest, uint64_t den, bool odd, rodt_rounding rounding)
{
    uint64_t other = den - rest;
    switch (rounding) {
    case RODT_ROUND_DOWN:
        return false;
    case RODT_ROUND_UP:
        return true;
    case RODT_ROUND_HALF_UP:
        return rest >= other;
    case RODT_ROUND_HALF_EVEN:
    default:
        return rest > other || (rest == other && odd);
    }
}

int64_t exact_round(rodt_ratio a, rodt_rounding rounding)
{
    int64_t whole = a.num / a.den;
    uint64_t rest = magnitude(a.num % a.den);
    if (rest == 0 || !rounds_away(rest, (uint64_t)a.den, whole % 2 != 0, rounding))
        return whole;
    return a.num < 0 ? whole - 1 : whole + 1;
}

/* ---- GNU MP ---- */

/* A whole number with its sign apart. */
typedef struct wide {
    bool negative;
    mp_limb_t limb[WIDE];
} wide;

static void split(uint64_t value, mp_limb_t limb[HALF])
{
    for (int i = 0; i < HALF; i++)
        limb[i] = (mp_limb_t)(value >> (i * GMP_NUMB_BITS));
}

static uint64_t join(const mp_limb_t limb[HALF])
{
    uint64_t value = 0;
    for (int i = 0; i < HALF; i++)
        value |= (uint64_t)limb[i] << (i * GMP_NUMB_BITS);
    return value;
}

/* Limbs in use; the functions of GNU MP want the highest one not to be zero. */
static mp_size_t used(const mp_limb_t *limb, mp_size_t count)
{
    while (count > 0 && limb[count - 1] == 0)
        count--;
    return count;
}

static wide product(int64_t a, int64_t b)
{
    wide result = {.negative = (a < 0) != (b < 0)};
    mp_limb_t left[HALF];
    mp_limb_t right[HALF];
    split(magnitude(a), left);
    split(magnitude(b), right);
    mpn_mul_n(result.limb, left, right, HALF);
    return result;
}

/* Each product is below 2^126 in magnitude (a denominator is below 2^63), so their sum has room. */
static wide sum(wide a, wide b)
{
    wide result = a;
    if (a.negative == b.negative) {
        mpn_add_n(result.limb, a.limb, b.limb, WIDE);
    } else if (mpn_cmp(a.limb, b.limb, WIDE) >= 0) {
        mpn_sub_n(result.limb, a.limb, b.limb, WIDE);
    } else {
        mpn_sub_n(result.limb, b.limb, a.limb, WIDE);
        result.negative = b.negative;
    }
    return result;
}

static void shift_down(mp_limb_t limb[WIDE], mp_bitcnt_t bits)
{
    mp_size_t limbs = (mp_size_t)(bits / GMP_NUMB_BITS);
    unsigned rest = (unsigned)(bits % GMP_NUMB_BITS);
    for (mp_size_t i = 0; i < WIDE; i++)
        limb[i] = i + limbs < WIDE ? limb[i + limbs] : 0;
    if (rest != 0)
        mpn_rshift(limb, limb, WIDE, rest);
}

/* The greatest odd divisor of two numbers that are not zero. mpn_gcd destroys its inputs and, by the
 * older manuals, wants odd ones with the larger first. */
static mp_size_t odd_divisor(wide a, wide b, mp_limb_t divisor[WIDE])
{
    shift_down(a.limb, mpn_scan1(a.limb, 0));
    shift_down(b.limb, mpn_scan1(b.limb, 0));
    bool swap = mpn_cmp(a.limb, b.limb, WIDE) < 0;
    mp_limb_t *larger = swap ? b.limb : a.limb;
    mp_limb_t *smaller = swap ? a.limb : b.limb;
    return mpn_gcd(divisor, larger, used(larger, WIDE), smaller, used(smaller, WIDE));
}

static void divide_out(wide *value, const mp_limb_t *divisor, mp_size_t limbs)
{
    mp_limb_t quotient[WIDE] = {0};
    mp_limb_t rest[WIDE];
    mpn_tdiv_qr(quotient, rest, 0, value->limb, WIDE, divisor, limbs);
    for (int i = 0; i < WIDE; i++)
        value->limb[i] = quotient[i];
}

/* num / den as a number, if it fits. */
static bool reduce(wide num, wide den, rodt_ratio *out)
{
    if (used(den.limb, WIDE) == 0)
        return false;
    if (used(num.limb, WIDE) == 0)
        return deliver(false, 0, 1, out);
    mp_bitcnt_t num_twos = mpn_scan1(num.limb, 0);
    mp_bitcnt_t den_twos = mpn_scan1(den.limb, 0);
    mp_bitcnt_t twos = num_twos < den_twos ? num_twos : den_twos;
    mp_limb_t divisor[WIDE];
    mp_size_t limbs = odd_divisor(num, den, divisor);
    shift_down(num.limb, twos);
    shift_down(den.limb, twos);
    divide_out(&num, divisor, limbs);
    divide_out(&den, divisor, limbs);
    if (used(num.limb, WIDE) > HALF || used(den.limb, WIDE) > HALF)
        return false;
    return deliver(num.negative != den.negative, join(num.limb), join(den.limb), out);
}

bool exact_make_gmp(int64_t num, int64_t den, rodt_ratio *out)
{
    return reduce(product(num, 1), product(den, 1), out);
}

bool exact_add_gmp(rodt_ratio a, rodt_ratio b, rodt_ratio *out)
{
    return reduce(sum(product(a.num, b.den), product(b.num, a.den)), product(a.den, b.den), out);
}

bool exact_subtract_gmp(rodt_ratio a, rodt_ratio b, rodt_ratio *out)
{
    wide taken = product(b.num, a.den);
    taken.negative = !taken.negative;
    return reduce(sum(product(a.num, b.den), taken), product(a.den, b.den), out);
}

bool exact_multiply_gmp(rodt_ratio a, rodt_ratio b, rodt_ratio *out)
{
    return reduce(product(a.num, b.num), product(a.den, b.den), out);
}

bool exact_divide_gmp(rodt_ratio a, rodt_ratio b, rodt_ratio *out)
{
    return reduce(product(a.num, b.den), product(a.den, b.num), out);
}

int exact_compare_gmp(rodt_ratio a, rodt_ratio b)
{
    wide difference = product(b.num, a.den);
    difference.negative = !difference.negative;
    difference = sum(product(a.num, b.den), difference);
    if (used(difference.limb, WIDE) == 0)
        return 0;
    return difference.negative ? -1 : 1;
}

/* ---- Powers ---- */

#define LONG ((EXACT_POWER_MAX + 1) * HALF) /* limbs of a power of one part times another part */

typedef struct long_number {
    mp_limb_t limb[LONG];
} long_number;

static void multiply_long(long_number *a, uint64_t factor)
{
    mp_limb_t part[HALF];
    long_number result = {{0}};
    split(factor, part);
    /* The product of the numbers that get here has room: what is cut off is zero. */
    for (int i = 0; i < HALF; i++)
        mpn_addmul_1(result.limb + i, a->limb, LONG - i, part[i]);
    *a = result;
}

/* factor x base^power */
static long_number power_of(uint64_t base, unsigned power, uint64_t factor)
{
    long_number result = {{1}};
    for (unsigned i = 0; i < power; i++)
        multiply_long(&result, base);
    multiply_long(&result, factor);
    return result;
}

int exact_compare_power(rodt_ratio base, unsigned power, rodt_ratio value)
{
    long_number left = power_of((uint64_t)base.num, power, (uint64_t)value.den);
    long_number right = power_of((uint64_t)base.den, power, (uint64_t)value.num);
    int order = mpn_cmp(left.limb, right.limb, LONG);
    return (order > 0) - (order < 0);
}
