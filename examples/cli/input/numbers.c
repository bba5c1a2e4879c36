/* SPDX-License-Identifier: Apache-2.0 */
/* Numbers and years as people type them, exactly. */
#include "input/numbers.h"

#include <string.h>

static bool is_digit(char sign) { return sign >= '0' && sign <= '9'; }

/* At most 9 digits, so that nothing made of two such numbers overflows. */
static bool read_digits(const char **at, int64_t *value, unsigned *digits)
{
    *value = 0;
    for (*digits = 0; is_digit(**at) && *digits <= 9; (*digits)++)
        *value = *value * 10 + (*(*at)++ - '0');
    return *digits > 0 && *digits <= 9;
}

/* "31", "31.25", "3/5". */
static bool read_terms(const char *text, rodt_ratio *out)
{
    const char *at = text;
    int64_t whole, part = 0, den = 1;
    unsigned digits;
    if (!read_digits(&at, &whole, &digits))
        return false;
    char sign = *at;
    if (sign != '\0') {
        at++;
        if (!read_digits(&at, &part, &digits) || *at != '\0')
            return false;
    }
    if (sign == '.') {
        if (digits > 6)
            return false;
        for (; digits > 0; digits--)
            den *= 10;
        *out = (rodt_ratio){whole * den + part, den};
    } else if (sign == '/' && part > 0) {
        *out = (rodt_ratio){whole, part};
    } else if (sign == '\0') {
        *out = (rodt_ratio){whole, 1};
    } else {
        return false;
    }
    return true;
}

bool read_ratio(const char *text, bool clock, rodt_ratio *out)
{
    rodt_ratio read;
    if (clock)
        return rodt_seconds_parse(text, out, NULL) == RODT_OK;
    return read_terms(text, &read) && rodt_ratio_make(read.num, read.den, out) == RODT_OK;
}

rodt_status read_built_day(const char *text, rodt_date *out, rodt_error *error)
{
    rodt_ratio year;
    if (strlen(text) == 4 && read_ratio(text, false, &year) && year.den == 1 && year.num >= 1900 && year.num <= 2199) {
        *out = (rodt_date){(int16_t)year.num, 0, 0};
        return RODT_OK;
    }
    return rodt_date_parse_iso(text, out, error);
}
