/* SPDX-License-Identifier: Apache-2.0 */
/* Integers of a few limbs by GNU MP. This uses its mpn layer, with limb arrays on the stack: mpn neither allocates nor
 * ends the program when memory runs out, as the mpz and mpq layers may do. Only exact_wide.c includes this. */
#ifndef RODT_LIMBS_GMP_H
#define RODT_LIMBS_GMP_H

#include <gmp.h>
#include <stdbool.h>
#include <string.h>

_Static_assert(GMP_NAIL_BITS == 0 && (GMP_NUMB_BITS == 64 || GMP_NUMB_BITS == 32), "limbs of 32 or 64 bits");

typedef mp_limb_t limb;

#define LIMB_BITS GMP_NUMB_BITS
#define HALF (64 / LIMB_BITS) /* limbs of one 64-bit part */
#define WIDE (2 * HALF)       /* limbs of a product of two parts, and of a sum of two products */

static inline void limbs_add_product(limb *result, const limb *a, int count, limb factor)
{
    mpn_addmul_1(result, a, count, factor);
}

static inline void limbs_multiply(limb result[WIDE], const limb a[HALF], const limb b[HALF])
{
    mpn_mul_n(result, a, b, HALF);
}

static inline void limbs_add(limb result[WIDE], const limb a[WIDE], const limb b[WIDE])
{
    mpn_add_n(result, a, b, WIDE);
}

/* a is not below b. */
static inline void limbs_subtract(limb result[WIDE], const limb a[WIDE], const limb b[WIDE])
{
    mpn_sub_n(result, a, b, WIDE);
}

static inline int limbs_compare(const limb *a, const limb *b, int count) { return mpn_cmp(a, b, count); }

/* Limbs in use; the functions of GNU MP want the highest one not to be zero. */
static inline int limbs_used(const limb *a, int count)
{
    while (count > 0 && a[count - 1] == 0)
        count--;
    return count;
}

static inline bool limbs_are_zero(const limb *a, int count) { return limbs_used(a, count) == 0; }

/* a is not zero. */
static inline unsigned limbs_trailing_zeros(const limb a[WIDE]) { return (unsigned)mpn_scan1(a, 0); }

static inline void limbs_shift_down(limb a[WIDE], unsigned bits)
{
    limb longer[2 * WIDE] = {0};
    memcpy(longer, a, WIDE * sizeof *a);
    memcpy(a, longer + bits / LIMB_BITS, WIDE * sizeof *a);
    if (bits % LIMB_BITS != 0)
        mpn_rshift(a, a, WIDE, bits % LIMB_BITS);
}

/* Greatest common divisor of two odd numbers, which are used up; it replaces a. By the older manuals mpn_gcd wants the
 * larger one first. */
static inline void limbs_odd_divisor(limb a[WIDE], limb b[WIDE])
{
    limb divisor[WIDE] = {0};
    bool swap = mpn_cmp(a, b, WIDE) < 0;
    limb *larger = swap ? b : a;
    limb *smaller = swap ? a : b;
    mpn_gcd(divisor, larger, limbs_used(larger, WIDE), smaller, limbs_used(smaller, WIDE));
    memcpy(a, divisor, sizeof divisor);
}

/* value /= divisor, which is not zero and leaves no remainder. */
static inline void limbs_divide(limb value[WIDE], const limb divisor[WIDE])
{
    limb quotient[WIDE] = {0};
    limb rest[WIDE];
    mpn_tdiv_qr(quotient, rest, 0, value, WIDE, divisor, limbs_used(divisor, WIDE));
    memcpy(value, quotient, sizeof quotient);
}

#endif
