/* SPDX-License-Identifier: Apache-2.0 */
/* Digits, decimals and fractions of a tape, one byte after the other. Everything that is not plain, and everything that
 * is wrong, is refused without a reason. */
#include "core/number_plain.h"
#include "core/number_parse.h"

#include <string.h>

const uint32_t rodti_power_of_ten[PLAIN_DECIMALS + 1] = {1, 10, 100, 1000, 10000, 100000, 1000000};

#if NUMBER_DECIMALS
const unsigned char rodti_word_decimals[16][8] = {[3] = {0, 1},       [4] = {0, 2, 1},    [5] = {0, 3, 2, 1},
                                                  [6] = {0, 4, 3, 2}, [7] = {0, 5, 4, 3}, [8] = {0, 6, 5, 4}};
#endif

/* The value of a digit here; 10 and more = it is none, or the text ends. */
static uint32_t digit_at(const char *at, const char *end)
{
    return at != end ? (uint32_t)(unsigned char)*at - '0' : 10;
}

static bool is_at(const char *at, const char *end, char wanted) { return at != end && *at == wanted; }

static const char *skip_blanks(const char *at, const char *end)
{
    while (at != end && (*at == ' ' || *at == '\t'))
        at++;
    return at;
}

/* Without a leading zero, which is an error but in "0" itself. NULL: no digit, or too many. */
static const char *take_whole(const char *at, const char *end, uint32_t *value)
{
    const char *const start = at;
    uint32_t read = digit_at(at, end);
    uint32_t digit;
    if (read > 9)
        return NULL;
    while ((digit = digit_at(++at, end)) <= 9) {
        if (read == 0 || at - start >= PLAIN_WHOLE_DIGITS)
            return NULL;
        read = read * 10 + digit;
    }
    *value = read;
    return at;
}

static const char *take_decimals(const char *at, const char *end, uint32_t whole, plain_number *out)
{
    const char *const start = at;
    uint32_t digit;
    for (; (digit = digit_at(at, end)) <= 9; at++) {
        if (at - start >= PLAIN_DECIMALS)
            return NULL;
        whole = whole * 10 + digit;
    }
    *out = (plain_number){whole, rodti_power_of_ten[at - start], false};
    return at != start ? skip_blanks(at, end) : NULL;
}

/* A fraction of one character of two bytes, behind a whole number or by itself. NULL: it is none. */
static const char *take_vulgar(const char *at, const char *end, uint32_t whole, plain_number *out)
{
    if (!is_at(at, end, '\xC2') || at + 1 == end)
        return NULL;
    const number_vulgar *part = rodti_number_vulgar((unsigned char)at[1]);
    if (part == NULL)
        return NULL;
    *out = (plain_number){whole * part->den + part->num, part->den, true};
    return skip_blanks(at + 2, end);
}

/* At the digits below the bar. */
static const char *take_below(const char *at, const char *end, uint32_t whole, uint32_t num, plain_number *out)
{
    uint32_t den;
    at = take_whole(at, end, &den);
    if (at == NULL || den < 2 || (den & (den - 1)) != 0)
        return NULL;
    *out = (plain_number){whole * den + num, den, true};
    return skip_blanks(at, end);
}

/* After a whole number and what joins it to a fraction. */
static const char *take_part(const char *at, const char *end, uint32_t whole, plain_number *out)
{
    uint32_t num;
    at = take_whole(at, end, &num);
    if (at == NULL || !is_at(at, end, '/'))
        return NULL;
    at = take_below(at + 1, end, whole, num, out);
    return at != NULL && num < out->den ? at : NULL;
}

const char *rodti_number_plain(const char *text, const char *end, bool decimal_comma, plain_number *out)
{
    uint32_t whole;
    const char *at = take_whole(text, end, &whole);
    if (at == NULL)
        return take_vulgar(text, end, 0, out);
    if (is_at(at, end, decimal_comma ? ',' : '.'))
        return take_decimals(at + 1, end, whole, out);
    if (is_at(at, end, '/'))
        return at - text == 1 ? take_below(at + 1, end, 0, whole, out) : NULL;
    const bool hyphen = is_at(at, end, '-');
    at = hyphen ? at + 1 : skip_blanks(at, end);
    if (hyphen || digit_at(at, end) <= 9)
        return take_part(at, end, whole, out);
    if (is_at(at, end, '\xC2'))
        return take_vulgar(at, end, whole, out);
    *out = (plain_number){whole, 1, false};
    return at;
}

const char *rodti_plain_end(const char *rest, const char *end)
{
    if (end == NULL)
        end = rest + strlen(rest);
    while (end != rest && end[-1] == ' ')
        end--;
    return end;
}
