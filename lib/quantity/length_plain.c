/* SPDX-License-Identifier: Apache-2.0 */
/* Lengths as nearly everybody writes them: a plain number, and a unit that length_unit.c knows. */
#include "quantity/length_plain.h"

#include "core/exact.h"
#include "quantity/length_unit.h"

/* The unit behind a number; *unit stays where none is written. */
static bool find_unit(const char *rest, const char *end, bool after_fraction, RODT_ENUM32(rodt_unit) *unit)
{
    if (end == NULL ? *rest == '\0' : rest == end)
        return true;
    end = rodti_plain_end(rest, end);
    return rodti_unit_word_find(rest, (size_t)(end - rest), after_fraction, unit);
}

static bool is_within(const plain_length *length)
{
    const rodt_ratio inches = rodti_inches_of[length->unit];
    return (int64_t)length->number.num * inches.num <= RODT_LENGTH_MAX_INCHES * inches.den * length->number.den;
}

bool rodti_length_plain_parts(const char *text, const char *end, const rodt_style *style, plain_length *out)
{
    plain_length read = {.unit = style->unit};
    const char *rest = end;
    if (end == NULL || !number_decimals(text, (size_t)(end - text), style->decimal_comma, &read.number))
        rest = rodti_number_plain(text, end, style->decimal_comma, &read.number);
    if (rest == NULL || !find_unit(rest, end, read.number.is_fraction, &read.unit) ||
        (read.number.is_fraction && read.unit != RODT_UNIT_IN) || !is_within(&read))
        return false;
    *out = read;
    return true;
}

bool rodti_length_plain(const char *text, const char *end, const rodt_style *style, rodt_length *out,
                        RODT_ENUM32(rodt_unit) *written)
{
    plain_length read;
    rodt_ratio inches;
    if (!rodti_length_plain_parts(text, end, style, &read))
        return false;
    const rodt_ratio each = rodti_inches_of[read.unit];
    (void)rodti_exact_make(read.number.num * each.num, read.number.den * each.den, &inches); /* far below 64 bits */
    *out = (rodt_length){inches.num, inches.den};
    *written = read.unit;
    return true;
}
