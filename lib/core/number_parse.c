/* SPDX-License-Identifier: Apache-2.0 */
/* The grammar of one number: digits, decimals, fractions and mixed fractions. */
#include "core/number_parse.h"

#include "core/always.h"

/* Digits are counted up to here; a larger number is known to be too large, not how large. With it a whole
 * number times the finest part still fits in 64 bits. */
#define DIGITS_END (NUMBER_DEN_MAX + UINT64_C(1))

bool rodti_number_set_problem(number_problem *problem, rodt_status status, uint32_t column,
                              rodt_message_code sentence)
{
    *problem = (number_problem){.status = status, .column = column, .sentence = sentence};
    return false;
}

bool rodti_number_set_expected(number_problem *problem, uint32_t column, rodt_message_code wanted)
{
    *problem = (number_problem){.status = RODT_E_SYNTAX, .column = column, .wanted = wanted};
    return false;
}

void rodti_number_parse_start(text_cursor *cursor, const char *text, size_t size)
{
    const char *start = text;
    rodti_text_trim(&start, &size);
    rodti_text_start(cursor, text, (size_t)(start - text) + size);
    while (cursor->at < (const unsigned char *)start)
        rodti_text_next(cursor);
}

const number_vulgar *rodti_number_vulgar(uint32_t code)
{
    static const number_vulgar from_bc[] = {{1, 4}, {1, 2}, {3, 4}};
    static const number_vulgar from_2150[] = {{1, 7}, {1, 9}, {1, 10}, {1, 3}, {2, 3}, {1, 5}, {2, 5}, {3, 5},
                                              {4, 5}, {1, 6}, {5, 6},  {1, 8}, {3, 8}, {5, 8}, {7, 8}};
    if (code - 0xBC < COUNT_OF(from_bc))
        return &from_bc[code - 0xBC];
    return code - 0x2150 < COUNT_OF(from_2150) ? &from_2150[code - 0x2150] : NULL;
}

/* U+2010 and U+2011 are hyphens. The en dash and the minus sign are not: they separate two numbers. */
static bool is_hyphen(uint32_t code) { return code == '-' || code == 0x2010 || code == 0x2011; }

static bool is_typographic_slash(uint32_t code) { return code == 0x2044 || code == 0x2215; }

static bool is_slash(uint32_t code) { return code == '/' || is_typographic_slash(code); }

/* Tapes are divided by twos and tens, and a millimetre is 5/127 in: nothing else makes a denominator.
 * Sixths, thirds or forty-firsts are a sixteenth that lost a digit or a footnote that was glued on. */
bool rodti_number_is_on_a_tape(int64_t den)
{
    den >>= __builtin_ctzll((uint64_t)den);
    while (den % 5 == 0)
        den /= 5;
    return den == 1 || den == 127;
}

/* A leading zero is an error: it is a date or a day's number, or the rest of something else. */
static bool read_digits(text_cursor *cursor, uint64_t *value, number_problem *problem)
{
    uint32_t first = cursor->code;
    uint32_t column = cursor->column;
    uint64_t read = 0;
    if (!text_is_digit(first))
        return rodti_number_set_expected(problem, cursor->column, RODT_MESSAGE_ERROR_WANTED_DIGIT);
    for (; text_is_digit(cursor->code); rodti_text_next(cursor)) {
        read = read * 10 + (cursor->code - '0');
        if (read > DIGITS_END)
            read = DIGITS_END;
    }
    if (first == '0' && cursor->column > column + 1)
        return rodti_number_set_problem(problem, RODT_E_SYNTAX, column, RODT_MESSAGE_ERROR_LEADING_ZERO);
    *value = read;
    return true;
}

/* whole + num / den; what was read is bounded, so that this fits. */
static bool set_value(uint64_t whole, uint64_t num, uint64_t den, number_text *out)
{
    out->is_too_large = whole >= DIGITS_END || num >= DIGITS_END;
    if (out->is_too_large)
        return true;
    return rodti_exact_make((int64_t)(whole * den + num), (int64_t)den, &out->value);
}

/* Twelve decimals are taken in; whether they are too fine is known in lowest terms. */
#define SCALE_END (UINT64_C(1000) * NUMBER_DEN_MAX)

/* Closing zeros say nothing of the value and may be many, so a zero counts when a digit follows it. */
static bool read_decimals(text_cursor *cursor, uint64_t whole, number_text *out, number_problem *problem)
{
    uint32_t column = cursor->column;
    uint64_t num = 0;
    uint64_t den = 1;
    uint64_t scale = 1;
    for (; text_is_digit(cursor->code); rodti_text_next(cursor)) {
        if (scale <= SCALE_END)
            scale *= 10;
        if (cursor->code == '0')
            continue;
        if (scale > SCALE_END)
            return rodti_number_set_problem(problem, RODT_E_RANGE, column, RODT_MESSAGE_ERROR_DECIMALS);
        num = num * (scale / den) + (cursor->code - '0');
        den = scale;
    }
    rodt_ratio part;
    bool made = rodti_exact_make((int64_t)num, (int64_t)den, &part);
    if (NEVER(!made) /* twelve digits fit */ || part.den > NUMBER_DEN_MAX)
        return rodti_number_set_problem(problem, RODT_E_RANGE, column, RODT_MESSAGE_ERROR_DECIMALS);
    return set_value(whole, (uint64_t)part.num, (uint64_t)part.den, out);
}

/* After the decimal separator. In a file with decimal commas three digits after a point may be a group of thousands,
 * as in 1.000; no group follows a single zero or nothing. */
static bool read_decimal(text_cursor *cursor, bool decimal_comma, uint64_t whole, number_text *out,
                         number_problem *problem)
{
    bool is_other = decimal_comma && cursor->code == '.';
    uint32_t column = cursor->column;
    rodti_text_next(cursor);
    if (!text_is_digit(cursor->code))
        return rodti_number_set_expected(problem, cursor->column, RODT_MESSAGE_ERROR_WANTED_DECIMAL);
    if (!read_decimals(cursor, whole, out, problem))
        return false;
    if (is_other && whole != 0 && cursor->column - column == 4)
        return rodti_number_set_problem(problem, RODT_E_AMBIGUOUS, column, RODT_MESSAGE_ERROR_THOUSANDS);
    return true;
}

/* True for a decimal separator; with a decimal comma a point is accepted too. */
static bool is_decimal_sign(uint32_t code, bool decimal_comma)
{
    return code == '.' || (decimal_comma && code == ',');
}

static bool check_fraction(bool has_whole, uint64_t num, uint64_t den, uint32_t column,
                           number_problem *problem)
{
    if (den == 0)
        return rodti_number_set_problem(problem, RODT_E_SYNTAX, column, RODT_MESSAGE_ERROR_ZERO_BELOW_BAR);
    if (den > NUMBER_DEN_MAX)
        return rodti_number_set_problem(problem, RODT_E_RANGE, column, RODT_MESSAGE_ERROR_BELOW_BAR);
    if (has_whole && num >= den)
        return rodti_number_set_problem(problem, RODT_E_SYNTAX, column, RODT_MESSAGE_ERROR_IMPROPER);
    if (!rodti_number_is_on_a_tape((int64_t)den))
        return rodti_number_set_problem(problem, RODT_E_SYNTAX, column, RODT_MESSAGE_ERROR_DIVISIONS);
    return true;
}

/* At the fraction bar. Text that lost its raised digits writes 2 1/2 as 21/2 with the typographic bar, so
 * that an improper fraction with that bar and two digits above it has two meanings. */
static bool read_bar(text_cursor *cursor, bool has_whole, uint64_t whole, uint64_t num, number_text *out,
                     number_problem *problem)
{
    uint32_t bar = cursor->code;
    uint32_t bar_column = cursor->column;
    uint64_t den;
    rodti_text_next(cursor);
    uint32_t column = cursor->column;
    if (!read_digits(cursor, &den, problem) || !check_fraction(has_whole, num, den, column, problem))
        return false;
    if (is_typographic_slash(bar) && num >= den && num >= 10)
        return rodti_number_set_problem(problem, RODT_E_AMBIGUOUS, bar_column, RODT_MESSAGE_ERROR_NO_BLANK);
    out->is_fraction = true;
    if (!has_whole && num < DIGITS_END) {
        out->num = (uint32_t)num;
        out->den = (uint32_t)den;
    }
    return set_value(whole, num, den, out);
}

static bool read_vulgar(text_cursor *cursor, uint64_t whole, const number_vulgar *part, number_text *out,
                        number_problem *problem)
{
    if (!check_fraction(false, part->num, part->den, cursor->column, problem))
        return false;
    rodti_text_next(cursor);
    out->is_fraction = true;
    return set_value(whole, part->num, part->den, out);
}

/* After a whole number and what joins it to a fraction. */
static bool read_joined(text_cursor *cursor, bool hyphen, uint64_t whole, number_text *out,
                        number_problem *problem)
{
    const number_vulgar *part = rodti_number_vulgar(cursor->code);
    uint32_t column = cursor->column;
    uint64_t num;
    if (part != NULL)
        return read_vulgar(cursor, whole, part, out, problem);
    if (!read_digits(cursor, &num, problem))
        return false;
    if (is_slash(cursor->code))
        return read_bar(cursor, true, whole, num, out, problem);
    if (hyphen)
        return rodti_number_set_problem(problem, RODT_E_AMBIGUOUS, column, RODT_MESSAGE_ERROR_HYPHEN);
    return rodti_number_set_problem(problem, RODT_E_SYNTAX, column, RODT_MESSAGE_ERROR_SECOND_NUMBER);
}

/* After the first whole number. A blank may lead to a fraction or to a unit. */
static bool read_after_whole(text_cursor *cursor, uint64_t whole, number_text *out, number_problem *problem)
{
    text_cursor ahead = *cursor;
    bool hyphen = is_hyphen(cursor->code);
    if (hyphen)
        rodti_text_next(&ahead);
    else
        rodti_text_skip_blanks(&ahead);
    bool joined = text_is_digit(ahead.code) || rodti_number_vulgar(ahead.code) != NULL;
    if (joined || hyphen) {
        *cursor = ahead;
        return read_joined(cursor, hyphen, whole, out, problem);
    }
    out->is_bare = true;
    return set_value(whole, 0, 1, out);
}

bool rodti_number_parse(text_cursor *cursor, bool decimal_comma, number_text *out, number_problem *problem)
{
    uint64_t whole;
    *out = (number_text){0};
    if (cursor->code == TEXT_END)
        return rodti_number_set_problem(problem, RODT_E_EMPTY, 0, RODT_MESSAGE_STATUS_EMPTY);
    if (cursor->code == '+')
        rodti_text_next(cursor);
    const number_vulgar *part = rodti_number_vulgar(cursor->code);
    if (part != NULL)
        return read_vulgar(cursor, 0, part, out, problem);
    if (is_decimal_sign(cursor->code, decimal_comma))
        return read_decimal(cursor, decimal_comma, 0, out, problem);
    if (!text_is_digit(cursor->code))
        return rodti_number_set_expected(problem, cursor->column, RODT_MESSAGE_ERROR_WANTED_NUMBER);
    if (!read_digits(cursor, &whole, problem))
        return false;
    if (is_decimal_sign(cursor->code, decimal_comma))
        return read_decimal(cursor, decimal_comma, whole, out, problem);
    if (is_slash(cursor->code))
        return read_bar(cursor, false, 0, whole, out, problem);
    return read_after_whole(cursor, whole, out, problem);
}

/* Day numbers of spreadsheets from 1982 to 2064: no reading is that large, so they are told apart. */
static bool is_spreadsheet_day(const number_text *read)
{
    return read->is_bare && read->value.num >= 30000 && read->value.num <= 60000;
}

bool rodti_number_parse_quantity(const char *text, size_t size, bool decimal_comma, number_quantity *out,
                           number_problem *problem)
{
    text_cursor cursor;
    rodti_number_parse_start(&cursor, text, size);
    out->column = cursor.column;
    if (!rodti_number_parse(&cursor, decimal_comma, &out->read, problem))
        return false;
    rodti_text_skip_blanks(&cursor);
    out->unit = (const char *)cursor.at;
    out->unit_size = (size_t)(cursor.end - cursor.at);
    out->unit_column = cursor.column;
    if (out->unit_size > 0 || !is_spreadsheet_day(&out->read))
        return true;
    return rodti_number_set_problem(problem, RODT_E_DATE_CELL, out->column, RODT_MESSAGE_ERROR_DAY_NUMBER);
}
