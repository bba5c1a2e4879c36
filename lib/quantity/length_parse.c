/* SPDX-License-Identifier: Apache-2.0 */
/* Reading one length: a number and its unit; the number itself: core/number_parse.c. */
#include "rodtravel/length.h"

#include "core/always.h"
#include "core/exact.h"
#include "core/fault.h"
#include "core/number_parse.h"
#include "quantity/length_plain.h"
#include "quantity/length_unit.h"
#include "quantity/lost_blank.h"
#include "quantity/style.h"

#include <string.h>

rodt_status rodt_unit_parse_n(const char *text, size_t size, RODT_ENUM32(rodt_unit) *out, rodt_error *error)
{
    if (text == NULL || out == NULL)
        return rodti_error_status(error, RODT_E_ARGUMENT);
    rodti_text_trim(&text, &size);
    if (size == 0)
        return rodti_error_status(error, RODT_E_EMPTY);
    if (!rodti_unit_word_find(text, size, false, out))
        return rodti_error(error, RODT_E_SYNTAX, 1, RODT_MESSAGE_ERROR_UNIT_WORD);
    return RODT_OK;
}

rodt_status rodt_unit_parse(const char *text, RODT_ENUM32(rodt_unit) *out, rodt_error *error)
{
    return rodt_unit_parse_n(text, text != NULL ? strlen(text) : 0, out, error);
}

/* Finds the unit; `unit` is that of a number that names none. */
static bool parse_with_unit(const char *text, size_t size, bool decimal_comma, number_quantity *written,
                            RODT_ENUM32(rodt_unit) *unit, number_problem *problem)
{
    if (!rodti_number_parse_quantity(text, size, decimal_comma, written, problem))
        return false;
    if (written->unit_size > 0 &&
        !rodti_unit_word_find(written->unit, written->unit_size, written->read.is_fraction, unit))
        return rodti_number_set_expected(problem, written->unit_column, RODT_MESSAGE_ERROR_WANTED_LENGTH_UNIT);
    if (written->read.is_fraction && *unit != RODT_UNIT_IN)
        return rodti_number_set_problem(problem, RODT_E_SYNTAX, written->column, RODT_MESSAGE_ERROR_METRIC_FRACTION);
    return true;
}

/* No finer than what can be kept, no longer than a rod can reach. */
static bool to_inches(const number_quantity *written, rodt_unit unit, rodt_ratio *inches, number_problem *problem)
{
    *inches = written->read.value;
    if (written->read.is_too_large)
        return rodti_number_set_problem(problem, RODT_E_IMPLAUSIBLE, written->column, RODT_MESSAGE_ERROR_TOO_LONG);
    bool fits = true;
    if (unit != RODT_UNIT_IN)
        fits = rodti_exact_multiply(*inches, rodti_inches_of[unit], inches);
    /* A metric number is a decimal one of at most 10^9, in parts of at most 10^9: that times 50 fits. */
    if (NEVER(!fits) || inches->den > NUMBER_DEN_MAX)
        return rodti_number_set_problem(problem, RODT_E_RANGE, written->column, RODT_MESSAGE_ERROR_DIGITS);
    if (rodti_exact_compare(*inches, (rodt_ratio){RODT_LENGTH_MAX_INCHES, 1}) > 0)
        return rodti_number_set_problem(problem, RODT_E_IMPLAUSIBLE, written->column, RODT_MESSAGE_ERROR_TOO_LONG);
    return true;
}

/* A tape divides inches into 2 to 64 equal parts, and its fractions are written in lowest terms. */
static bool is_tape_fraction(uint32_t num, uint32_t den)
{
    return den <= 64 && (den & (den - 1)) == 0 && num % 2 == 1 && num < den;
}

size_t rodti_lost_blank_values(const char *text, size_t size, rodt_unit unit, rodt_length out[LOST_BLANK_MAX])
{
    number_quantity written;
    number_problem problem;
    RODT_ENUM32(rodt_unit) found = unit;
    size_t count = 0;
    if (!parse_with_unit(text, size, false, &written, &found, &problem) || found != RODT_UNIT_IN)
        return 0;
    uint32_t digits = written.read.num, den = written.read.den;
    for (uint32_t place = 100; place >= 10; place /= 10) {
        uint32_t whole = digits / place, num = digits % place;
        /* no number starts with a zero */
        if (digits < 1000 && whole > 0 && num >= place / 10 && is_tape_fraction(num, den))
            out[count++] = (rodt_length){(int64_t)whole * den + num, den};
    }
    return count;
}

rodt_status rodt_length_parse_n(const char *text, size_t size, const rodt_style *style, rodt_length *out,
                             RODT_ENUM32(rodt_unit) *written, rodt_error *error)
{
    rodt_style form = style != NULL ? *style : (rodt_style){0};
    number_problem problem;
    number_quantity parsed;
    rodt_ratio inches;
    RODT_ENUM32(rodt_unit) unit = form.unit;
    if (text == NULL || out == NULL || !rodti_is_style(style))
        return rodti_error_status(error, RODT_E_ARGUMENT);
    if (!rodti_length_plain(text, text + size, &form, out, &unit)) {
        if (!parse_with_unit(text, size, form.decimal_comma, &parsed, &unit, &problem) ||
            !to_inches(&parsed, unit, &inches, &problem))
            return rodti_number_explain_error(text, size, form.decimal_comma, &problem, error);
        *out = (rodt_length){inches.num, inches.den};
    }
    if (written != NULL)
        *written = unit;
    return RODT_OK;
}

rodt_status rodt_length_parse_strict_n(const char *text, size_t size, const rodt_style *style, rodt_length *out,
                                       RODT_ENUM32(rodt_unit) *written, rodt_error *error)
{
    rodt_length value, other[LOST_BLANK_MAX];
    RODT_ENUM32(rodt_unit) unit = RODT_UNIT_IN;
    if (out == NULL)
        return rodti_error_status(error, RODT_E_ARGUMENT);
    rodt_status status = rodt_length_parse_n(text, size, style, &value, &unit, error);
    if (status != RODT_OK)
        return status;
    if (rodti_lost_blank_values(text, size, unit, other) > 0)
        return rodti_error(error, RODT_E_AMBIGUOUS, 1, RODT_MESSAGE_ERROR_LOST_BLANK);
    *out = value;
    if (written != NULL)
        *written = unit;
    return RODT_OK;
}

rodt_status rodt_length_parse(const char *text, rodt_length *out, rodt_error *error)
{
    return rodt_length_parse_n(text, text != NULL ? strlen(text) : 0, NULL, out, NULL, error);
}

rodt_status rodt_length_parse_strict(const char *text, rodt_length *out, rodt_error *error)
{
    return rodt_length_parse_strict_n(text, text != NULL ? strlen(text) : 0, NULL, out, NULL, error);
}
