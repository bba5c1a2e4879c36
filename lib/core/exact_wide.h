/* SPDX-License-Identifier: Apache-2.0 */
/* The operations of exact.h on integers of several limbs, which never overflow: the slow path of exact.c. */
#ifndef RODT_EXACT_WIDE_H
#define RODT_EXACT_WIDE_H

#include "core/common.h"
#include "rodtravel/ratio.h"

/* Negating INT64_MIN as a signed number is not defined; as an unsigned one it is its magnitude. */
static inline uint64_t magnitude(int64_t value) { return value < 0 ? 0 - (uint64_t)value : (uint64_t)value; }

/* num / den with its sign, which zero has not. The magnitude 2^63 has a negative form only, and a denominator is
 * positive. False, and *out untouched: it does not fit. */
static inline bool set_signed(bool negative, uint64_t num, uint64_t den, rodt_ratio *out)
{
    if (den > INT64_MAX || num > (uint64_t)INT64_MAX + negative)
        return false;
    out->num = negative ? (int64_t)(0 - num) : (int64_t)num;
    out->den = (int64_t)den;
    return true;
}

bool rodti_exact_wide_make(int64_t num, int64_t den, rodt_ratio *out);
bool rodti_exact_wide_add(rodt_ratio a, rodt_ratio b, rodt_ratio *out);
bool rodti_exact_wide_subtract(rodt_ratio a, rodt_ratio b, rodt_ratio *out);
bool rodti_exact_wide_multiply(rodt_ratio a, rodt_ratio b, rodt_ratio *out);
bool rodti_exact_wide_divide(rodt_ratio a, rodt_ratio b, rodt_ratio *out);
int rodti_exact_wide_compare(rodt_ratio a, rodt_ratio b);

#endif
