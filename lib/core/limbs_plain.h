/* SPDX-License-Identifier: Apache-2.0 */
/* Whole numbers of a few limbs in plain C, for builds where GNU MP cannot be had; proven equal to it by
 * tests/unit/test_exact.c. Only exact_wide.c includes this. */
#ifndef RODT_LIMBS_PLAIN_H
#define RODT_LIMBS_PLAIN_H

#include <stdbool.h>
#include <stdint.h>

typedef uint32_t limb;

#define LIMB_BITS 32
#define HALF 2 /* limbs of one 64-bit part */
#define WIDE 4 /* limbs of a product of two parts, and of a sum of two products */

/* result += a * factor, over count limbs; what is carried beyond them is cut off. */
static inline void limbs_add_product(limb *result, const limb *a, int count, limb factor)
{
    uint64_t carry = 0;
    for (int i = 0; i < count; i++) {
        carry += (uint64_t)a[i] * factor + result[i];
        result[i] = (limb)carry;
        carry >>= LIMB_BITS;
    }
}

static inline void limbs_multiply(limb result[WIDE], const limb a[HALF], const limb b[HALF])
{
    limb wide[WIDE] = {a[0], a[1], 0, 0};
    for (int i = 0; i < WIDE; i++)
        result[i] = 0;
    for (int i = 0; i < HALF; i++)
        limbs_add_product(result + i, wide, WIDE - i, b[i]);
}

static inline void limbs_add(limb result[WIDE], const limb a[WIDE], const limb b[WIDE])
{
    uint64_t carry = 0;
    for (int i = 0; i < WIDE; i++) {
        carry += (uint64_t)a[i] + b[i];
        result[i] = (limb)carry;
        carry >>= LIMB_BITS;
    }
}

/* a is not below b. */
static inline void limbs_subtract(limb result[WIDE], const limb a[WIDE], const limb b[WIDE])
{
    uint64_t borrow = 0;
    for (int i = 0; i < WIDE; i++) {
        uint64_t difference = (uint64_t)a[i] - b[i] - borrow;
        result[i] = (limb)difference;
        borrow = difference >> 63;
    }
}

static inline int limbs_compare(const limb *a, const limb *b, int count)
{
    while (count-- > 0) {
        if (a[count] != b[count])
            return a[count] < b[count] ? -1 : 1;
    }
    return 0;
}

static inline bool limbs_are_zero(const limb *a, int count)
{
    while (count > 0 && a[count - 1] == 0)
        count--;
    return count == 0;
}

/* a is not zero. */
static inline unsigned limbs_trailing_zeros(const limb a[WIDE])
{
    unsigned bits = 0;
    while ((a[bits / LIMB_BITS] >> bits % LIMB_BITS & 1) == 0)
        bits++;
    return bits;
}

static inline void limbs_shift_down(limb a[WIDE], unsigned bits)
{
    unsigned limbs = bits / LIMB_BITS;
    unsigned rest = bits % LIMB_BITS;
    for (unsigned i = 0; i < WIDE; i++) {
        uint64_t pair = i + limbs < WIDE ? a[i + limbs] : 0;
        if (i + limbs + 1 < WIDE)
            pair |= (uint64_t)a[i + limbs + 1] << LIMB_BITS;
        a[i] = (limb)(pair >> rest);
    }
}

/* Greatest common divisor of two odd numbers, which are used up; it replaces a. */
static inline void limbs_odd_divisor(limb a[WIDE], limb b[WIDE])
{
    int order;
    while ((order = limbs_compare(a, b, WIDE)) != 0) {
        limb *larger = order > 0 ? a : b;
        limbs_subtract(larger, larger, order > 0 ? b : a);
        limbs_shift_down(larger, limbs_trailing_zeros(larger));
    }
}

/* value /= divisor, which is not zero and leaves no remainder; one bit of the quotient at a time. */
static inline void limbs_divide(limb value[WIDE], const limb divisor[WIDE])
{
    limb rest[WIDE] = {0};
    for (int bit = WIDE * LIMB_BITS - 1; bit >= 0; bit--) {
        limb *place = &value[bit / LIMB_BITS];
        limb mask = (limb)1 << bit % LIMB_BITS;
        limbs_add(rest, rest, rest);
        rest[0] |= (*place & mask) != 0;
        *place &= ~mask;
        if (limbs_compare(rest, divisor, WIDE) >= 0) {
            limbs_subtract(rest, rest, divisor);
            *place |= mask;
        }
    }
}

#endif
