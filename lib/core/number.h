/* SPDX-License-Identifier: Apache-2.0 */
/* Exact rationals with 64-bit parts. Only number.c sees GNU MP. */
#ifndef RODT_NUMBER_H
#define RODT_NUMBER_H

#include "core/common.h"

/* num / den in lowest terms, den > 0. All functions take and give this form; out may be an input too.
 * Each returns false, with *out as it was, when the exact result does not fit in 64-bit parts. */
typedef struct number {
    int64_t num;
    int64_t den;
} number;

/* Refuses a zero denominator; fixes the sign; reduces. */
bool number_make(int64_t num, int64_t den, number *out);

bool number_add(number a, number b, number *out);
bool number_subtract(number a, number b, number *out);
bool number_multiply(number a, number b, number *out);
bool number_divide(number a, number b, number *out); /* false also for b == 0 */

/* -1, 0 or 1; exact for every pair. */
int number_compare(number a, number b);

/* base^power compared with value, -1, 0 or 1; exact, though the power itself may not fit. Neither is below zero, and
 * power is at most NUMBER_POWER_MAX. */
#define NUMBER_POWER_MAX 99
int number_compare_power(number base, unsigned power, number value);

typedef enum number_rounding {
    NUMBER_HALF_EVEN,
    NUMBER_HALF_UP,
    NUMBER_DOWN, /* toward zero */
    NUMBER_UP    /* away from zero */
} number_rounding;

/* The nearest whole number by the rounding. Always fits. */
int64_t number_round(number a, number_rounding rounding);

/* The same operations by GNU MP alone, without the 64-bit way in front of it; for the differential test. */
bool number_make_exact(int64_t num, int64_t den, number *out);
bool number_add_exact(number a, number b, number *out);
bool number_subtract_exact(number a, number b, number *out);
bool number_multiply_exact(number a, number b, number *out);
bool number_divide_exact(number a, number b, number *out);
int number_compare_exact(number a, number b);

#endif
