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

/* The digits of 0 to 99. */
#define UNITS(t) t "0" t "1" t "2" t "3" t "4" t "5" t "6" t "7" t "8" t "9"
static const char pairs[] = UNITS("0") UNITS("1") UNITS("2") UNITS("3") UNITS("4") UNITS("5") UNITS("6") UNITS("7")
    UNITS("8") UNITS("9");

static char *put_pair(char *end, const char *pair)
{
    *--end = pair[1];
    *--end = pair[0];
    return end;
}

/* Puts the digits before `end`, two by two, and returns where they begin; one byte before them may be changed. */
static char *put_digits(char *end, uint64_t value)
{
    for (; value >= 100; value /= 100)
        end = put_pair(end, pairs + value % 100 * 2);
    return put_pair(end, pairs + value * 2) + (value < 10);
}

/* --- Numbers below 10^8 ---------------------------------------------------------------------------------- */

#if defined(__BYTE_ORDER__) && __BYTE_ORDER__ == __ORDER_LITTLE_ENDIAN__ && defined(__GNUC__)

static bool is_small(uint64_t num, uint64_t den) { return num < 100000000 && den < 100000000; }

/* Puts the digits at `at`, all eight at a time, and returns their end; up to eight bytes are written. Without a branch,
 * as nobody can foretell how many digits a part of an inch has. */
static char *put_small(char *at, uint32_t value)
{
    const uint64_t halves = value / 10000 | (uint64_t)(value % 10000) << 32;
    const uint64_t hundreds = halves * 10486 >> 20 & UINT64_C(0x0000007F0000007F);
    const uint64_t quarters = hundreds | (halves - hundreds * 100) << 16;
    const uint64_t tens = quarters * 103 >> 10 & UINT64_C(0x000F000F000F000F);
    uint64_t digits = tens | (quarters - tens * 10) << 8; /* the first one is the lowest byte */
    const int zeros = __builtin_ctzll(digits | UINT64_C(1) << 56) / 8;
    digits = (digits | UINT64_C(0x3030303030303030)) >> 8 * zeros;
    memcpy(at, &digits, sizeof digits);
    return at + 8 - zeros;
}

/* The text needs less room than RODT_RATIO_TEXT_SIZE, and all of that may be written. */
static size_t format_small(bool negative, uint32_t num, uint32_t den, char *text)
{
    const uint32_t whole = num / den;
    const uint32_t part = num - whole * den;
    char *at = text;
    *at = '-';
    at += negative;
    if (whole != 0 || part == 0)
        at = put_small(at, whole);
    if (part != 0) {
        *at = ' ';
        at = put_small(at + (whole != 0), part);
        *at = '/';
        at = put_small(at + 1, den);
    }
    *at = '\0';
    return (size_t)(at - text);
}

_Static_assert(RODT_RATIO_TEXT_SIZE >= sizeof "-12345678 12345678/12345678" + 8, "digits are put eight at a time");

#else

static bool is_small(uint64_t num, uint64_t den)
{
    (void)num, (void)den;
    return false;
}

static size_t format_small(bool negative, uint32_t num, uint32_t den, char *text)
{
    (void)negative, (void)num, (void)den, (void)text;
    return 0;
}

#endif

/* --- All numbers ----------------------------------------------------------------------------------------- */

rodt_status rodt_ratio_format(rodt_ratio value, char *text, size_t size, size_t *needed)
{
    char line[RODT_RATIO_TEXT_SIZE];
    char *const end = line + sizeof line;
    char *at = end;
    if (value.den <= 0)
        return RODT_E_ARGUMENT;
    const uint64_t den = (uint64_t)value.den;
    const uint64_t num = magnitude(value.num);
    if (size >= sizeof line && text != NULL && is_small(num, den)) {
        const size_t used = format_small(value.num < 0, (uint32_t)num, (uint32_t)den, text);
        if (needed != NULL)
            *needed = used + 1;
        return RODT_OK;
    }
    const uint64_t whole = num / den;
    const uint64_t part = num - whole * den;
    if (part != 0) {
        at = put_digits(at, den);
        *--at = '/';
        at = put_digits(at, part);
        if (whole != 0)
            *--at = ' ';
    }
    if (whole != 0 || part == 0)
        at = put_digits(at, whole);
    if (value.num < 0)
        *--at = '-';
    return rodti_text_copy(at, (size_t)(end - at), text, size, needed);
}
