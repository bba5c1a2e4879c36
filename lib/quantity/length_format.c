/* SPDX-License-Identifier: Apache-2.0 */
/* Writing lengths: exact as a mixed fraction, rounded as a decimal number. */
#include "rodtravel/length.h"

#include "core/always.h"
#include "core/exact.h"
#include "core/text.h"

rodt_status rodt_length_format(rodt_length length, char *text, size_t size, size_t *needed)
{
    return rodt_ratio_format(EXACT(length), text, size, needed);
}

/* The length in parts of 10^-digits of the unit, as a whole number. */
static bool scale(rodt_length length, rodt_unit unit, unsigned digits, rodt_rounding rounding, int64_t *parts)
{
    static const rodt_ratio per_inch[] = {
        [RODT_UNIT_IN] = {1, 1}, [RODT_UNIT_MM] = {127, 5}, [RODT_UNIT_CM] = {127, 50}};
    rodt_ratio value = EXACT(length);
    rodt_ratio power = {1, 1};
    for (unsigned i = 0; i < digits; i++)
        power.num *= 10;
    bool fits = rodti_exact_multiply(per_inch[unit], power, &power);
    if (NEVER(!fits) /* 127 x 10^12 does */ || !rodti_exact_multiply(value, power, &value))
        return false;
    *parts = rodti_exact_round(value, rounding);
    return true;
}

/* Writes digits from the last one, with at least one before the point, up to `end`. Returns where they begin. */
static char *put_decimal(int64_t parts, unsigned digits, char *end)
{
    uint64_t left = parts < 0 ? 0 - (uint64_t)parts : (uint64_t)parts;
    for (unsigned i = 0; i <= digits || left != 0; i++, left /= 10) {
        if (i == digits && digits > 0)
            *--end = '.';
        *--end = (char)('0' + left % 10);
    }
    if (parts < 0)
        *--end = '-';
    return end;
}

rodt_status rodt_length_format_decimal(rodt_length length, rodt_unit unit, unsigned digits,
                                      rodt_rounding rounding, char *text, size_t size, size_t *needed)
{
    char line[RODT_LENGTH_TEXT_SIZE];
    int64_t parts;
    if (length.den <= 0 || digits > 12)
        return RODT_E_ARGUMENT;
    if ((unsigned)unit >= RODT_UNIT_END || (unsigned)rounding >= RODT_ROUNDING_END)
        return RODT_E_ARGUMENT;
    if (!scale(length, unit, digits, rounding, &parts))
        return RODT_E_RANGE;
    const char *start = put_decimal(parts, digits, line + sizeof line);
    return rodti_text_copy(start, (size_t)(line + sizeof line - start), text, size, needed);
}
