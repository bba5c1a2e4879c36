/* SPDX-License-Identifier: Apache-2.0 */
/* Lengths: exact numbers of inches. */
#include "rodtravel/length.h"

#include "core/number.h"

/* The roundings of the public interface are those of number.h. */
_Static_assert((int)RODT_ROUND_HALF_EVEN == (int)NUMBER_HALF_EVEN, "same number");
_Static_assert((int)RODT_ROUND_HALF_UP == (int)NUMBER_HALF_UP, "same number");
_Static_assert((int)RODT_ROUND_DOWN == (int)NUMBER_DOWN, "same number");
_Static_assert((int)RODT_ROUND_UP == (int)NUMBER_UP, "same number");

static number number_of(rodt_length length) { return (number){length.num, length.den}; }

static rodt_status deliver(bool fits, number value, rodt_length *out)
{
    if (!fits)
        return RODT_E_RANGE;
    *out = (rodt_length){value.num, value.den};
    return RODT_OK;
}

/* A negative denominator can only be written by hand, and would turn every comparison around. */
static bool is_sound(rodt_length length) { return length.den > 0; }

rodt_status rodt_length_from_inches(int64_t num, int64_t den, rodt_length *out)
{
    number value;
    if (den == 0 || out == NULL)
        return RODT_E_ARGUMENT;
    bool fits = number_make(num, den, &value);
    return deliver(fits, value, out);
}

/* 1 in is 127/5 mm by definition, so millimetres never leave the rationals. */
rodt_status rodt_length_from_mm(int64_t num, int64_t den, rodt_length *out)
{
    number value;
    if (den == 0 || out == NULL)
        return RODT_E_ARGUMENT;
    bool fits = number_make(num, den, &value) && number_divide(value, (number){127, 5}, &value);
    return deliver(fits, value, out);
}

int rodt_length_compare(rodt_length a, rodt_length b)
{
    if (!is_sound(a) || !is_sound(b))
        return (int)is_sound(a) - (int)is_sound(b);
    return number_compare(number_of(a), number_of(b));
}

rodt_status rodt_length_add(rodt_length a, rodt_length b, rodt_length *out)
{
    number value;
    if (!is_sound(a) || !is_sound(b) || out == NULL)
        return RODT_E_ARGUMENT;
    bool fits = number_add(number_of(a), number_of(b), &value);
    return deliver(fits, value, out);
}

rodt_status rodt_length_subtract(rodt_length a, rodt_length b, rodt_length *out)
{
    number value;
    if (!is_sound(a) || !is_sound(b) || out == NULL)
        return RODT_E_ARGUMENT;
    bool fits = number_subtract(number_of(a), number_of(b), &value);
    return deliver(fits, value, out);
}

rodt_status rodt_length_scale(rodt_length length, rodt_ratio factor, rodt_length *out)
{
    number value;
    if (!is_sound(length) || factor.den <= 0 || out == NULL)
        return RODT_E_ARGUMENT;
    bool fits = number_multiply(number_of(length), (number){factor.num, factor.den}, &value);
    return deliver(fits, value, out);
}

rodt_status rodt_length_round(rodt_length length, rodt_length division, rodt_rounding rounding,
                              rodt_length *out)
{
    number value;
    if (!is_sound(length) || !is_sound(division) || division.num <= 0 || out == NULL)
        return RODT_E_ARGUMENT;
    if ((unsigned)rounding > RODT_ROUND_UP)
        return RODT_E_ARGUMENT;
    bool fits = number_divide(number_of(length), number_of(division), &value);
    if (!fits)
        return RODT_E_RANGE;
    number count = {number_round(value, (number_rounding)rounding), 1};
    fits = number_multiply(count, number_of(division), &value);
    return deliver(fits, value, out);
}
