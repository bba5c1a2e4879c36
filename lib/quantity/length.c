/* SPDX-License-Identifier: Apache-2.0 */
/* Lengths: exact numbers of inches. */
#include "rodtravel/length.h"

#include "core/exact.h"

static rodt_status store_result(bool fits, rodt_ratio value, rodt_length *out)
{
    if (!fits)
        return RODT_E_RANGE;
    *out = (rodt_length){value.num, value.den};
    return RODT_OK;
}

/* A negative denominator can only be written by hand, and would turn every comparison around. */
static bool is_valid(rodt_length length) { return length.den > 0; }

rodt_status rodt_length_from_inches(int64_t num, int64_t den, rodt_length *out)
{
    rodt_ratio value;
    if (den == 0 || out == NULL)
        return RODT_E_ARGUMENT;
    bool fits = rodti_exact_make(num, den, &value);
    return store_result(fits, value, out);
}

/* 1 in is 127/5 mm by definition, so millimetres never leave the rationals. */
rodt_status rodt_length_from_mm(int64_t num, int64_t den, rodt_length *out)
{
    rodt_ratio value;
    if (den == 0 || out == NULL)
        return RODT_E_ARGUMENT;
    bool fits = rodti_exact_make(num, den, &value) && rodti_exact_divide(value, (rodt_ratio){127, 5}, &value);
    return store_result(fits, value, out);
}

int rodt_length_compare(rodt_length a, rodt_length b) { return rodt_ratio_compare(EXACT(a), EXACT(b)); }

rodt_status rodt_length_add(rodt_length a, rodt_length b, rodt_length *out)
{
    rodt_ratio value;
    if (!is_valid(a) || !is_valid(b) || out == NULL)
        return RODT_E_ARGUMENT;
    bool fits = rodti_exact_add(EXACT(a), EXACT(b), &value);
    return store_result(fits, value, out);
}

rodt_status rodt_length_subtract(rodt_length a, rodt_length b, rodt_length *out)
{
    rodt_ratio value;
    if (!is_valid(a) || !is_valid(b) || out == NULL)
        return RODT_E_ARGUMENT;
    bool fits = rodti_exact_subtract(EXACT(a), EXACT(b), &value);
    return store_result(fits, value, out);
}

rodt_status rodt_length_scale(rodt_length length, rodt_ratio factor, rodt_length *out)
{
    rodt_ratio value;
    if (!is_valid(length) || factor.den <= 0 || out == NULL)
        return RODT_E_ARGUMENT;
    bool fits = rodti_exact_multiply(EXACT(length), EXACT(factor), &value);
    return store_result(fits, value, out);
}

rodt_status rodt_length_round(rodt_length length, rodt_length division, rodt_rounding rounding,
                              rodt_length *out)
{
    rodt_ratio value;
    if (!is_valid(length) || !is_valid(division) || division.num <= 0 || out == NULL)
        return RODT_E_ARGUMENT;
    if ((unsigned)rounding >= RODT_ROUNDING_END)
        return RODT_E_ARGUMENT;
    bool fits = rodti_exact_divide(EXACT(length), EXACT(division), &value);
    if (!fits)
        return RODT_E_RANGE;
    rodt_ratio count = {rodti_exact_round(value, rounding), 1};
    fits = rodti_exact_multiply(count, EXACT(division), &value);
    return store_result(fits, value, out);
}
