/* SPDX-License-Identifier: Apache-2.0 */
/* Exact numbers without a unit: factors, shares, volumes in cubic inches, seconds. */
#ifndef RODTRAVEL_RATIO_H
#define RODTRAVEL_RATIO_H

#include <stdbool.h>

#include "status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* num / den in lowest terms, den > 0. A value of all zero bytes means "not given", so that a zeroed struct holds no
 * invented number. */
typedef struct rodt_ratio {
    int64_t num; /* numerator */
    int64_t den; /* denominator; 0 = not given */
} rodt_ratio;

/* How a number that does not fit is rounded when it is written; nothing else in the library rounds. */
typedef enum rodt_rounding RODT_ENUM_TYPE {
    RODT_ROUNDING_HALF_EVEN = 0, /* nearest; exactly midway to the even one, as NIST Handbook 44 reads a rule */
    RODT_ROUNDING_HALF_UP = 1,   /* nearest; exactly midway away from zero, as printed tables of limits do */
    RODT_ROUNDING_DOWN = 2,      /* toward zero */
    RODT_ROUNDING_UP = 3         /* away from zero */
} rodt_rounding;
#define RODT_ROUNDING_END 4 /* one more than the last; grows in later versions */

/* The stable word of a way of rounding, "half-even"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_rounding_name(rodt_rounding rounding);

/* Finds a way of rounding by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is
 * none; RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_rounding_find(const char *word, RODT_ENUM32(rodt_rounding) *out);

/* Room for any ratio written by this library, with the closing zero byte. */
#define RODT_RATIO_TEXT_SIZE 64

/* True if the value was given (its denominator is not zero). */
RODT_INLINE bool rodt_ratio_given(rodt_ratio ratio) { return ratio.den != 0; }

/*
 * Makes num/den in lowest terms.
 *
 * RODT_OK          *out holds it
 * RODT_E_ARGUMENT  den is zero, or out is NULL
 * RODT_E_RANGE     it does not fit (only INT64_MIN can cause this)
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_ratio_make(int64_t num, int64_t den, rodt_ratio *out);

/*
 * *out = a + b, a * b, a - b and a / b, exactly. out may point to a or b of the caller.
 *
 * RODT_OK          done
 * RODT_E_ARGUMENT  a or b is not given, out is NULL, or the b of a quotient is zero
 * RODT_E_RANGE     the exact result does not fit in 64-bit parts
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_ratio_add(rodt_ratio a, rodt_ratio b, rodt_ratio *out);
RODT_API RODT_MUST_CHECK rodt_status rodt_ratio_multiply(rodt_ratio a, rodt_ratio b, rodt_ratio *out);
RODT_API RODT_MUST_CHECK rodt_status rodt_ratio_subtract(rodt_ratio a, rodt_ratio b, rodt_ratio *out);
RODT_API RODT_MUST_CHECK rodt_status rodt_ratio_divide(rodt_ratio a, rodt_ratio b, rodt_ratio *out);

/* Returns -1, 0 or 1 as a is below, equal to or above b; exact. One that is not given is before every other. */
RODT_API int rodt_ratio_compare(rodt_ratio a, rodt_ratio b);

/*
 * Writes a mixed fraction in lowest terms: "1 3/4", "2", "5/16", "-1/8", "0".
 *
 * text, size, needed  as in status.h; RODT_RATIO_TEXT_SIZE bytes are always enough
 *
 * RODT_OK          text holds it, with a closing zero byte
 * RODT_E_ARGUMENT  the ratio is not given, or text is NULL and size is not 0
 * RODT_E_SPACE     size is too small; text is untouched
 */
RODT_API rodt_status rodt_ratio_format(rodt_ratio ratio, char *text, size_t size, size_t *needed);

#ifdef __cplusplus
}
#endif
#endif
