/* SPDX-License-Identifier: Apache-2.0 */
/* Exact rationals with 64-bit parts. */
#ifndef RODT_EXACT_H
#define RODT_EXACT_H

#include "core/common.h"
#include "rodtravel/ratio.h"

/* The number of a length or a pressure; they have the same two members. */
#define EXACT(x) ((rodt_ratio){(x).num, (x).den})

/* All functions take and give lowest terms with den > 0; out may be an input too. Each returns false, with *out as it
 * was, when the exact result does not fit in 64-bit parts. */

/* Rejects a zero denominator; normalizes the sign; reduces. */
bool rodti_exact_make(int64_t num, int64_t den, rodt_ratio *out);

/* True for lowest terms; den > 0. */
bool rodti_exact_is_reduced(rodt_ratio value);

bool rodti_exact_add(rodt_ratio a, rodt_ratio b, rodt_ratio *out);
bool rodti_exact_subtract(rodt_ratio a, rodt_ratio b, rodt_ratio *out);
bool rodti_exact_multiply(rodt_ratio a, rodt_ratio b, rodt_ratio *out);
bool rodti_exact_divide(rodt_ratio a, rodt_ratio b, rodt_ratio *out); /* false also for b == 0 */

/* -1, 0 or 1; exact for every pair. */
int rodti_exact_compare(rodt_ratio a, rodt_ratio b);

/* base^power compared with value, -1, 0 or 1; exact, though the power itself may not fit. Neither is below zero, and
 * power is at most EXACT_POWER_MAX. */
#define EXACT_POWER_MAX 99
int rodti_exact_compare_power(rodt_ratio base, unsigned power, rodt_ratio value);

/* The nearest whole number by the rounding. Always fits. */
int64_t rodti_exact_round(rodt_ratio a, rodt_rounding rounding);

#endif
