/* SPDX-License-Identifier: Apache-2.0 */
/* The public functions on numbers without a unit, and how every exact number is written. */
#include "rodtravel/ratio.h"

#include "core/exact.h"
#include "core/exact_wide.h"
#include "core/text.h"
#include "core/words.h"

#include <string.h>

WORDS(rounding, ENUMERATOR(RODT_ROUNDING_HALF_EVEN, "half-even", "to the nearest, exactly midway to the even one"),
      ENUMERATOR(RODT_ROUNDING_HALF_UP, "half-up", "to the nearest, exactly midway away from zero"),
      ENUMERATOR(RODT_ROUNDING_DOWN, "down", "toward zero"), ENUMERATOR(RODT_ROUNDING_UP, "up", "away from zero"))

rodt_status rodt_ratio_make(int64_t num, int64_t den, rodt_ratio *out)
{
    if (den == 0 || out == NULL)
        return RODT_E_ARGUMENT;
    return rodti_exact_make(num, den, out) ? RODT_OK : RODT_E_RANGE;
}

rodt_status rodt_ratio_add(rodt_ratio a, rodt_ratio b, rodt_ratio *out)
{
    if (a.den <= 0 || b.den <= 0 || out == NULL)
        return RODT_E_ARGUMENT;
    return rodti_exact_add(a, b, out) ? RODT_OK : RODT_E_RANGE;
}

rodt_status rodt_ratio_multiply(rodt_ratio a, rodt_ratio b, rodt_ratio *out)
{
    if (a.den <= 0 || b.den <= 0 || out == NULL)
        return RODT_E_ARGUMENT;
    return rodti_exact_multiply(a, b, out) ? RODT_OK : RODT_E_RANGE;
}

rodt_status rodt_ratio_subtract(rodt_ratio a, rodt_ratio b, rodt_ratio *out)
{
    if (a.den <= 0 || b.den <= 0 || out == NULL)
        return RODT_E_ARGUMENT;
    return rodti_exact_subtract(a, b, out) ? RODT_OK : RODT_E_RANGE;
}

rodt_status rodt_ratio_divide(rodt_ratio a, rodt_ratio b, rodt_ratio *out)
{
    if (a.den <= 0 || b.den <= 0 || b.num == 0 || out == NULL)
        return RODT_E_ARGUMENT;
    return rodti_exact_divide(a, b, out) ? RODT_OK : RODT_E_RANGE;
}

/* A negative denominator can only be written by hand, and would turn every comparison around. */
int rodt_ratio_compare(rodt_ratio a, rodt_ratio b)
{
    if (a.den <= 0 || b.den <= 0)
        return (int)(a.den > 0) - (int)(b.den > 0);
    return rodti_exact_compare(a, b);
}

/* Returns how many digits were written. */
static size_t put_digits(char *text, uint64_t value)
{
    char digits[20];
    char *const end = digits + sizeof digits;
    char *first = end;
    do {
        *--first = (char)('0' + value % 10);
        value /= 10;
    } while (value != 0);
    memcpy(text, first, (size_t)(end - first));
    return (size_t)(end - first);
}

rodt_status rodt_ratio_format(rodt_ratio value, char *text, size_t size, size_t *needed)
{
    char line[RODT_RATIO_TEXT_SIZE];
    size_t used = 0;
    if (value.den <= 0)
        return RODT_E_ARGUMENT;
    uint64_t den = (uint64_t)value.den;
    uint64_t num = magnitude(value.num);
    if (value.num < 0)
        line[used++] = '-';
    if (num >= den || num == 0)
        used += put_digits(line + used, num / den);
    if (num % den != 0) {
        if (num >= den)
            line[used++] = ' ';
        used += put_digits(line + used, num % den);
        line[used++] = '/';
        used += put_digits(line + used, den);
    }
    return rodti_text_copy(line, used, text, size, needed);
}
