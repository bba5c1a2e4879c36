/* SPDX-License-Identifier: Apache-2.0 */
/* Exact rationals by whole numbers of several limbs: GNU MP, or plain C where it cannot be had. */
#include "core/exact.h"
#include "core/exact_wide.h"

#ifdef RODT_EXACT_PLAIN
#include "core/limbs_plain.h"
#else
#include "core/limbs_gmp.h"
#endif

/* A whole number with its sign apart. */
typedef struct wide {
    bool negative;
    limb limbs[WIDE];
} wide;

static void split(uint64_t value, limb part[HALF])
{
    for (int i = 0; i < HALF; i++)
        part[i] = (limb)(value >> (i * LIMB_BITS));
}

static uint64_t join(const limb part[HALF])
{
    uint64_t value = 0;
    for (int i = 0; i < HALF; i++)
        value |= (uint64_t)part[i] << (i * LIMB_BITS);
    return value;
}

static wide product(int64_t a, int64_t b)
{
    wide result = {.negative = (a < 0) != (b < 0)};
    limb left[HALF];
    limb right[HALF];
    split(magnitude(a), left);
    split(magnitude(b), right);
    limbs_multiply(result.limbs, left, right);
    return result;
}

/* Each product is below 2^126 in magnitude (a denominator is below 2^63), so their sum has room. */
static wide sum(wide a, wide b)
{
    wide result = a;
    if (a.negative == b.negative) {
        limbs_add(result.limbs, a.limbs, b.limbs);
    } else if (limbs_compare(a.limbs, b.limbs, WIDE) >= 0) {
        limbs_subtract(result.limbs, a.limbs, b.limbs);
    } else {
        limbs_subtract(result.limbs, b.limbs, a.limbs);
        result.negative = b.negative;
    }
    return result;
}

/* num / den as a number, if it fits. */
static bool reduce(wide num, wide den, rodt_ratio *out)
{
    if (limbs_are_zero(den.limbs, WIDE))
        return false;
    if (limbs_are_zero(num.limbs, WIDE))
        return set_signed(false, 0, 1, out);
    unsigned num_twos = limbs_trailing_zeros(num.limbs);
    unsigned den_twos = limbs_trailing_zeros(den.limbs);
    unsigned twos = num_twos < den_twos ? num_twos : den_twos;
    wide divisor = num;
    wide other = den;
    limbs_shift_down(divisor.limbs, num_twos);
    limbs_shift_down(other.limbs, den_twos);
    limbs_odd_divisor(divisor.limbs, other.limbs);
    limbs_shift_down(num.limbs, twos);
    limbs_shift_down(den.limbs, twos);
    limbs_divide(num.limbs, divisor.limbs);
    limbs_divide(den.limbs, divisor.limbs);
    if (!limbs_are_zero(num.limbs + HALF, HALF) || !limbs_are_zero(den.limbs + HALF, HALF))
        return false;
    return set_signed(num.negative != den.negative, join(num.limbs), join(den.limbs), out);
}

bool rodti_exact_wide_make(int64_t num, int64_t den, rodt_ratio *out)
{
    return reduce(product(num, 1), product(den, 1), out);
}

bool rodti_exact_wide_add(rodt_ratio a, rodt_ratio b, rodt_ratio *out)
{
    return reduce(sum(product(a.num, b.den), product(b.num, a.den)), product(a.den, b.den), out);
}

bool rodti_exact_wide_subtract(rodt_ratio a, rodt_ratio b, rodt_ratio *out)
{
    wide taken = product(b.num, a.den);
    taken.negative = !taken.negative;
    return reduce(sum(product(a.num, b.den), taken), product(a.den, b.den), out);
}

bool rodti_exact_wide_multiply(rodt_ratio a, rodt_ratio b, rodt_ratio *out)
{
    return reduce(product(a.num, b.num), product(a.den, b.den), out);
}

bool rodti_exact_wide_divide(rodt_ratio a, rodt_ratio b, rodt_ratio *out)
{
    return reduce(product(a.num, b.den), product(a.den, b.num), out);
}

int rodti_exact_wide_compare(rodt_ratio a, rodt_ratio b)
{
    wide difference = product(b.num, a.den);
    difference.negative = !difference.negative;
    difference = sum(product(a.num, b.den), difference);
    if (limbs_are_zero(difference.limbs, WIDE))
        return 0;
    return difference.negative ? -1 : 1;
}

/* ---- Powers ---- */

#define LONG_USED ((EXACT_POWER_MAX + 1) * HALF) /* limbs of a power of one part times another part */
#define LONG (LONG_USED + HALF)                  /* each limb of a part begins a sum of that length */

typedef struct long_number {
    limb limbs[LONG];
} long_number;

static void multiply_long(long_number *a, uint64_t factor)
{
    limb part[HALF];
    long_number result = {{0}};
    split(factor, part);
    /* The product of the numbers that get here has room: what is cut off is zero. */
    for (int i = 0; i < HALF; i++)
        limbs_add_product(result.limbs + i, a->limbs, LONG_USED, part[i]);
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

int rodti_exact_compare_power(rodt_ratio base, unsigned power, rodt_ratio value)
{
    long_number left = power_of((uint64_t)base.num, power, (uint64_t)value.den);
    long_number right = power_of((uint64_t)base.den, power, (uint64_t)value.num);
    int order = limbs_compare(left.limbs, right.limbs, LONG);
    return (order > 0) - (order < 0);
}
