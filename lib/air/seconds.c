/* SPDX-License-Identifier: Apache-2.0 */
/* A time as a stop watch or a person has it: 45, 31.5 s, 1:30, 1 min 30 s. */
#include "core/always.h"
#include "core/exact.h"
#include "core/number_parse.h"
#include "quantity/style.h"
#include "rodtravel/aircheck.h"

#include <string.h>

/* What only a time can have wrong. "min" is a bound elsewhere, so no other reason is looked for. */
static bool set_own(number_problem *problem, rodt_status status, uint32_t column, rodt_message_code sentence)
{
    *problem = (number_problem){.status = status, .column = column, .sentence = sentence, .is_final = true};
    return false;
}

typedef enum time_unit { UNIT_SECONDS, UNIT_MINUTES, UNIT_UNKNOWN } time_unit;

static bool is_one_of(const char *text, size_t size, const char *const *words, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        if (rodti_text_is_word(text, size, words[i]))
            return true;
    }
    return false;
}

/* The word at the cursor, which is passed, with the blanks behind it; none are seconds. */
static time_unit take_unit(text_cursor *cursor)
{
    static const char *const seconds[] = {"s", "sec", "secs", "second", "seconds", "seconde", "secondes"};
    static const char *const minutes[] = {"min", "mins", "minute", "minutes"};
    const char *start = (const char *)cursor->at;
    while (text_is_letter(cursor->code))
        rodti_text_next(cursor);
    size_t size = (size_t)((const char *)cursor->at - start);
    rodti_text_skip_blanks(cursor);
    if (size == 0 || is_one_of(start, size, seconds, COUNT_OF(seconds)))
        return UNIT_SECONDS;
    return is_one_of(start, size, minutes, COUNT_OF(minutes)) ? UNIT_MINUTES : UNIT_UNKNOWN;
}

static bool expect_end(const text_cursor *cursor, number_problem *problem)
{
    if (cursor->code == TEXT_END)
        return true;
    return rodti_number_set_expected(problem, cursor->column, RODT_MESSAGE_ERROR_WANTED_TIME_UNIT);
}

/* The number at the cursor, with the blanks behind it. */
static bool take_number(text_cursor *cursor, bool decimal_comma, rodt_ratio *out, number_problem *problem)
{
    number_text read;
    uint32_t column = cursor->column;
    if (!rodti_number_parse(cursor, decimal_comma, &read, problem))
        return false;
    if (read.is_too_large)
        return set_own(problem, RODT_E_IMPLAUSIBLE, column, RODT_MESSAGE_ERROR_TOO_LATE);
    rodti_text_skip_blanks(cursor);
    *out = read.value;
    return true;
}

static bool add_minutes(rodt_ratio minutes, rodt_ratio seconds, uint32_t column, rodt_ratio *out,
                        number_problem *problem)
{
    if (rodti_exact_compare(seconds, (rodt_ratio){60, 1}) >= 0)
        return set_own(problem, RODT_E_SYNTAX, column, RODT_MESSAGE_ERROR_SIXTY);
    bool made = rodti_exact_multiply(minutes, (rodt_ratio){60, 1}, out);
    /* A number that is read has at most 18 digits, and 60 times it fits in lowest terms. */
    if (NEVER(!made) || !rodti_exact_add(*out, seconds, out))
        return set_own(problem, RODT_E_RANGE, column, RODT_MESSAGE_ERROR_DIGITS);
    return true;
}

/* After "1 min". */
static bool parse_rest(text_cursor *cursor, bool decimal_comma, rodt_ratio minutes, rodt_ratio *out,
                       number_problem *problem)
{
    rodt_ratio seconds = {0, 1};
    uint32_t column = cursor->column;
    if (cursor->code != TEXT_END) {
        if (minutes.den != 1)
            return set_own(problem, RODT_E_AMBIGUOUS, column, RODT_MESSAGE_ERROR_PART_OF_MINUTE);
        if (!take_number(cursor, decimal_comma, &seconds, problem))
            return false;
        time_unit unit = take_unit(cursor);
        if (unit != UNIT_SECONDS)
            return set_own(problem, RODT_E_UNIT, column, RODT_MESSAGE_ERROR_SECONDS_AFTER);
    }
    return expect_end(cursor, problem) && add_minutes(minutes, seconds, column, out, problem);
}

static bool take_digits(text_cursor *cursor, int64_t *value, unsigned *digits)
{
    *value = 0;
    for (*digits = 0; text_is_digit(cursor->code) && *digits < 5; (*digits)++, rodti_text_next(cursor))
        *value = *value * 10 + (cursor->code - '0');
    return *digits > 0;
}

/* "1:30", "0:31.5": two digits after the colon, then perhaps decimals. */
static bool parse_clock(text_cursor cursor, int64_t minutes, bool decimal_comma, rodt_ratio *out,
                        number_problem *problem)
{
    rodti_text_next(&cursor);
    uint32_t column = cursor.column;
    int64_t whole, part = 0, scale = 1;
    unsigned digits;
    bool good = take_digits(&cursor, &whole, &digits) && digits == 2;
    if (good && cursor.code == (decimal_comma ? ',' : '.')) {
        rodti_text_next(&cursor);
        good = take_digits(&cursor, &part, &digits);
        for (; digits > 0; digits--)
            scale *= 10;
    }
    if (cursor.code == ':')
        return set_own(problem, RODT_E_AMBIGUOUS, cursor.column, RODT_MESSAGE_ERROR_HOURS);
    if (!good || cursor.code != TEXT_END)
        return set_own(problem, RODT_E_SYNTAX, column, RODT_MESSAGE_ERROR_COLON);
    rodt_ratio seconds;
    bool made = rodti_exact_make(whole * scale + part, scale, &seconds);
    return ALWAYS(made) /* seven digits fit */ &&
           add_minutes((rodt_ratio){minutes, 1}, seconds, column, out, problem);
}

static bool parse_time(const char *text, size_t size, bool decimal_comma, rodt_ratio *out, number_problem *problem)
{
    text_cursor cursor;
    int64_t minutes;
    unsigned digits;
    rodti_number_parse_start(&cursor, text, size);
    text_cursor clock = cursor;
    if (take_digits(&clock, &minutes, &digits) && clock.code == ':')
        return parse_clock(clock, minutes, decimal_comma, out, problem);
    if (!take_number(&cursor, decimal_comma, out, problem))
        return false;
    uint32_t column = cursor.column;
    switch (take_unit(&cursor)) {
    case UNIT_MINUTES: return parse_rest(&cursor, decimal_comma, *out, out, problem);
    case UNIT_UNKNOWN: return set_own(problem, RODT_E_UNIT, column, RODT_MESSAGE_ERROR_TIME_UNIT);
    case UNIT_SECONDS: break;
    }
    return expect_end(&cursor, problem);
}

rodt_status rodt_seconds_parse_n(const char *text, size_t size, const rodt_style *style, rodt_ratio *out,
                                 rodt_error *error)
{
    number_problem problem = {.status = RODT_OK};
    rodt_ratio seconds;
    if (text == NULL || out == NULL || !rodti_is_style(style))
        return rodti_error_status(error, RODT_E_ARGUMENT);
    if (!parse_time(text, size, rodti_has_comma(style), &seconds, &problem))
        return rodti_number_explain_error(text, size, rodti_has_comma(style), &problem, error);
    if (rodti_exact_compare(seconds, (rodt_ratio){RODT_SECONDS_MAX, 1}) > 0)
        return rodti_error(error, RODT_E_IMPLAUSIBLE, 1, RODT_MESSAGE_ERROR_TOO_LATE);
    *out = seconds;
    return RODT_OK;
}

rodt_status rodt_seconds_parse(const char *text, rodt_ratio *out, rodt_error *error)
{
    return rodt_seconds_parse_n(text, text != NULL ? strlen(text) : 0, NULL, out, error);
}
