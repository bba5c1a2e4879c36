/* SPDX-License-Identifier: Apache-2.0 */
/* Reading one length: a number and its unit. */
#include "rodtravel/length.h"

#include "core/number_parse.h"
#include "quantity/lost_blank.h"

#include <string.h>

typedef struct unit_word {
    const char *word;
    rodt_unit unit;
    bool only_behind_fraction;
} unit_word;

/* The most frequent ones first. A single apostrophe is not here: it means feet. */
static const unit_word unit_words[] = {
    {"\"", RODT_UNIT_INCH, false},
    {"in", RODT_UNIT_INCH, false},
    {"mm", RODT_UNIT_MM, false},
    {"cm", RODT_UNIT_CM, false},
    {"\xE2\x80\xB3", RODT_UNIT_INCH, false}, /* U+2033 double prime */
    {"\xE2\x80\x9D", RODT_UNIT_INCH, false}, /* U+201D closing quote */
    {"\xE2\x80\x9C", RODT_UNIT_INCH, false}, /* U+201C opening quote */
    {"in.", RODT_UNIT_INCH, false},
    {"ins", RODT_UNIT_INCH, false},
    {"inch", RODT_UNIT_INCH, false},
    {"inches", RODT_UNIT_INCH, false},
    {"po", RODT_UNIT_INCH, false},
    {"pouce", RODT_UNIT_INCH, false},
    {"pouces", RODT_UNIT_INCH, false},
    {"of an inch", RODT_UNIT_INCH, true},
    {"''", RODT_UNIT_INCH, false},
    {"\xE2\x80\xB2\xE2\x80\xB2", RODT_UNIT_INCH, false}, /* two U+2032 primes */
    {"mm.", RODT_UNIT_MM, false},
    {"cm.", RODT_UNIT_CM, false},
    {"millimetre", RODT_UNIT_MM, false},
    {"millimetres", RODT_UNIT_MM, false},
    {"millimeter", RODT_UNIT_MM, false},
    {"millimeters", RODT_UNIT_MM, false},
    {"centimetre", RODT_UNIT_CM, false},
    {"centimetres", RODT_UNIT_CM, false},
    {"centimeter", RODT_UNIT_CM, false},
    {"centimeters", RODT_UNIT_CM, false},
};

static bool find_unit(const char *text, size_t size, bool behind_fraction, rodt_unit *unit)
{
    for (size_t i = 0; i < COUNT_OF(unit_words); i++) {
        const unit_word *word = &unit_words[i];
        if (text_is_word(text, size, word->word) && (behind_fraction || !word->only_behind_fraction)) {
            *unit = word->unit;
            return true;
        }
    }
    return false;
}

bool rodt_unit_find(const char *text, size_t size, rodt_unit *out)
{
    if (text == NULL || out == NULL)
        return false;
    text_trim(&text, &size);
    return find_unit(text, size, false, out);
}

const char *rodt_unit_name(rodt_unit unit)
{
    static const char *const names[] = {[RODT_UNIT_INCH] = "in", [RODT_UNIT_MM] = "mm", [RODT_UNIT_CM] = "cm"};
    return (unsigned)unit < COUNT_OF(names) ? names[unit] : "";
}

/* 1 in is 127/5 mm by definition. */
static bool to_inches(number value, rodt_unit unit, number *inches)
{
    static const number inches_of[] = {
        [RODT_UNIT_INCH] = {1, 1}, [RODT_UNIT_MM] = {5, 127}, [RODT_UNIT_CM] = {50, 127}};
    *inches = value;
    return unit == RODT_UNIT_INCH || number_multiply(value, inches_of[unit], inches);
}

static bool refuse(number_problem *problem, rodt_status status, uint32_t column, const char *sentence)
{
    *problem = (number_problem){status, column, NULL, sentence};
    return false;
}

/* No finer than what can be kept, no longer than a rod can stand out. */
static bool check_size(const number_text *read, rodt_unit unit, uint32_t column, number *inches,
                       number_problem *problem)
{
    static const char too_long[] = "no rod position or stroke is longer than 24 in; is a decimal point lost?";
    if (read->is_too_large)
        return refuse(problem, RODT_E_IMPLAUSIBLE, column, too_long);
    if (!to_inches(read->value, unit, inches) || inches->den > NUMBER_DEN_MAX)
        return refuse(problem, RODT_E_RANGE, column, "there are more digits than a reading can have");
    if (!number_is_on_a_tape(inches->den))
        return refuse(problem, RODT_E_SYNTAX, column, "no tape is divided like this");
    if (number_compare(*inches, (number){RODT_LENGTH_MAX_INCHES, 1}) > 0)
        return refuse(problem, RODT_E_IMPLAUSIBLE, column, too_long);
    return true;
}

static bool read_plain(const char *text, size_t size, rodt_length_style style, number *inches,
                       rodt_unit *unit, number_problem *problem)
{
    text_cursor cursor;
    number_text read;
    number_parse_start(&cursor, text, size);
    uint32_t column = cursor.column;
    if (!number_parse(&cursor, style.decimal_comma, &read, problem))
        return false;
    text_skip_blanks(&cursor);
    *unit = style.unit;
    size_t left = (size_t)(cursor.end - cursor.at);
    if (left == 0 && number_is_spreadsheet_day(&read))
        return refuse(problem, RODT_E_DATE_CELL, column, "this is the day number of a spreadsheet's date");
    if (left > 0 && !find_unit((const char *)cursor.at, left, read.is_fraction, unit)) {
        *problem = (number_problem){RODT_E_SYNTAX, cursor.column, "in, mm, cm or nothing more", NULL};
        return false;
    }
    if (read.is_fraction && *unit != RODT_UNIT_INCH)
        return refuse(problem, RODT_E_SYNTAX, column,
                      "no metric tape is divided like this; write inches (2 1/8 in) or a decimal (54.0 mm)");
    return check_size(&read, *unit, column, inches, problem);
}

/* --- A lost blank ------------------------------------------------------------------------------------- */

/* The digits in front of a bar and the denominator behind it. */
typedef struct digit_fraction {
    char digits[4];
    size_t count;
    int64_t den;
} digit_fraction;

static bool is_bar(uint32_t code) { return code == '/' || code == 0x2044 || code == 0x2215; }

/* Two or three digits, a bar, and 2 to 64; *left is what stands after them. */
static bool read_digit_fraction(text_cursor *cursor, digit_fraction *out)
{
    *out = (digit_fraction){.count = 0};
    for (; text_is_digit(cursor->code) && out->count < sizeof out->digits; text_next(cursor))
        out->digits[out->count++] = (char)cursor->code;
    if (out->count < 2 || out->count > 3 || !is_bar(cursor->code))
        return false;
    for (text_next(cursor); text_is_digit(cursor->code) && out->den < 100; text_next(cursor))
        out->den = out->den * 10 + (int64_t)(cursor->code - '0');
    return out->den >= 2 && out->den <= 64 && (out->den & (out->den - 1)) == 0;
}

static int64_t digits_value(const char *digits, size_t count)
{
    int64_t value = 0;
    for (size_t i = 0; i < count; i++)
        value = value * 10 + (digits[i] - '0');
    return value;
}

size_t lost_blank_values(const char *text, size_t size, rodt_unit unit, rodt_length out[LOST_BLANK_MAX])
{
    text_cursor cursor;
    digit_fraction read;
    size_t count = 0;
    number_parse_start(&cursor, text, size);
    if (!read_digit_fraction(&cursor, &read))
        return 0;
    text_skip_blanks(&cursor);
    size_t left = (size_t)(cursor.end - cursor.at);
    if ((left > 0 && !find_unit((const char *)cursor.at, left, true, &unit)) || unit != RODT_UNIT_INCH)
        return 0;
    for (size_t at = 1; at < read.count; at++) {
        int64_t whole = digits_value(read.digits, at);
        int64_t num = digits_value(read.digits + at, read.count - at);
        if (read.digits[0] == '0' || read.digits[at] == '0' || num % 2 == 0 || num >= read.den)
            continue;
        out[count++] = (rodt_length){whole * read.den + num, read.den};
    }
    return count;
}

rodt_status rodt_length_read(const char *text, size_t size, const rodt_length_style *style, rodt_length *out,
                             rodt_unit *written, rodt_error *error)
{
    rodt_length_style form = style != NULL ? *style : (rodt_length_style){0};
    number_problem problem;
    number inches;
    rodt_unit unit;
    if (text == NULL || out == NULL || (unsigned)form.unit > RODT_UNIT_CM)
        return text_error(error, RODT_E_ARGUMENT, 0, "%s", rodt_status_text(RODT_E_ARGUMENT));
    if (!read_plain(text, size, form, &inches, &unit, &problem))
        return number_explain_error(text, size, form.decimal_comma, &problem, error);
    *out = (rodt_length){inches.num, inches.den};
    if (written != NULL)
        *written = unit;
    return RODT_OK;
}

rodt_status rodt_length_parse(const char *text, rodt_length *out, rodt_error *error)
{
    return rodt_length_read(text, text != NULL ? strlen(text) : 0, NULL, out, NULL, error);
}
