/* SPDX-License-Identifier: Apache-2.0 */
/* Why a text is no number: the most helpful reason. Runs only after parsing failed. */
#include "core/number_parse.h"

#include "core/always.h"
#include "core/month.h"

/* Everything that the searches below need to know. */
typedef struct failure {
    text_cursor start; /* on the first character that is no blank */
    const number_problem *problem;
    bool decimal_comma;
    rodt_error *error;
} failure;

static rodt_status set_error(const failure *f, rodt_status status, const text_cursor *at, rodt_message_code sentence)
{
    return rodti_error(f->error, status, at->column, sentence);
}

/* ---- Nothing, and invisible characters ---- */

static bool rest_is(const text_cursor *cursor, const char *word)
{
    return rodti_text_is_word((const char *)cursor->at, (size_t)(cursor->end - cursor->at), word);
}

static bool is_dash(uint32_t code)
{
    return code == '-' || (code >= 0x2010 && code <= 0x2015) || code == 0x2212;
}

static bool is_nothing(text_cursor cursor)
{
    static const char *const words[] = {"n/a", "na", "n.a.", "n/m", "none", "null", "nil"};
    for (size_t i = 0; i < COUNT_OF(words); i++) {
        if (rest_is(&cursor, words[i]))
            return true;
    }
    while (is_dash(cursor.code))
        rodti_text_next(&cursor);
    return cursor.code == TEXT_END;
}

static bool find_invisible(text_cursor *cursor)
{
    char shown[TEXT_SHOWN_SIZE];
    for (; cursor->code != TEXT_END; rodti_text_next(cursor)) {
        rodti_text_show(cursor->code, shown);
        if (cursor->code > 0x7F && shown[0] == 'U' && !rodti_text_is_blank(cursor->code))
            return true;
    }
    return false;
}

/* ---- Dates ---- */

static uint32_t count_digits(text_cursor *cursor)
{
    uint32_t count = 0;
    for (; text_is_digit(cursor->code); rodti_text_next(cursor))
        count++;
    return count;
}

/* A name of a month and a number beside it, in either order: 2-Jan, Jan-04, 01-févr, 4 mars 2024. */
static bool is_named_date(text_cursor cursor)
{
    uint32_t digits = count_digits(&cursor);
    if (digits > 0 && (cursor.code == '-' || cursor.code == '/' || cursor.code == '.' || cursor.code == ' '))
        rodti_text_next(&cursor);
    if (digits > 4 || rodti_month_read(&cursor) == 0)
        return false;
    if (digits > 0)
        return true;
    while (cursor.code != TEXT_END && !text_is_digit(cursor.code) && !text_is_letter(cursor.code))
        rodti_text_next(&cursor);
    return text_is_digit(cursor.code);
}

/* Three numbers with one separator, one of them a year of four digits or a last one of two; or two numbers
 * of which one starts with a zero, as no fraction does. */
static bool is_numeric_date(text_cursor cursor)
{
    bool zero = cursor.code == '0';
    uint32_t first = count_digits(&cursor);
    uint32_t separator = cursor.code;
    if (first == 0 || (separator != '/' && separator != '-' && separator != '.'))
        return false;
    rodti_text_next(&cursor);
    zero = (zero && first == 2) || cursor.code == '0';
    uint32_t second = count_digits(&cursor);
    if (cursor.code != separator)
        return separator == '/' && zero && first <= 2 && second == 2 && cursor.code == TEXT_END;
    rodti_text_next(&cursor);
    uint32_t third = count_digits(&cursor);
    return second > 0 && second <= 2 && (first == 4 || third == 4 || (first <= 2 && third == 2));
}

/* ---- Bounds, ranges, commas, units ---- */

static void skip_letters(text_cursor *cursor)
{
    while (text_is_letter(cursor->code))
        rodti_text_next(cursor);
}

/* The next run of letters from the cursor on starts at *at and ends at the cursor. False at the end. */
static bool next_word(text_cursor *cursor, text_cursor *at)
{
    while (cursor->code != TEXT_END && !text_is_letter(cursor->code))
        rodti_text_next(cursor);
    *at = *cursor;
    skip_letters(cursor);
    return cursor->at > at->at;
}

static bool is_one_of(const text_cursor *at, const text_cursor *end, const char *const *words, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        if (rodti_text_is_word((const char *)at->at, (size_t)(end->at - at->at), words[i]))
            return true;
    }
    return false;
}

/* "psi/min" is a rate, "min 4" a bound. */
static bool is_divisor(const text_cursor *start, const text_cursor *at)
{
    return at->at - start->at >= 2 && at->at[-1] == '/' && text_is_letter(at->at[-2]);
}

/* Stops at the first of the words. */
static bool find_word(text_cursor *cursor, const char *const *words, size_t count)
{
    const text_cursor start = *cursor;
    text_cursor at;
    while (next_word(cursor, &at)) {
        if (is_one_of(&at, cursor, words, count) && !is_divisor(&start, &at)) {
            *cursor = at;
            return true;
        }
    }
    return false;
}

static bool is_bound_character(uint32_t code)
{
    return code == '<' || code == '>' || code == '~' || code == 0xB1 || code == 0x2264 || code == 0x2265 ||
           code == 0x2248;
}

static bool find_bound(text_cursor *cursor)
{
    static const char *const words[] = {"less",  "more",   "under",        "over",    "least",   "most",
                                        "below", "above",  "about",        "around",  "nearly",  "almost",
                                        "max",   "min",    "maximum",      "minimum", "environ", "moins",
                                        "plus",  "approx", "approximately"};
    text_cursor at = *cursor;
    for (; at.code != TEXT_END; rodti_text_next(&at)) {
        bool closing_plus = at.code == '+' && at.at + 1 == at.end;
        if (is_bound_character(at.code) || closing_plus) {
            *cursor = at;
            return true;
        }
    }
    return find_word(cursor, words, COUNT_OF(words));
}

/* A dash after a number; the one that joins a whole number and its fraction was read already, so that the
 * search starts where parsing stopped. */
static bool find_range(text_cursor *cursor, uint32_t stopped)
{
    static const char *const words[] = {"to", "between", "and", "or", "through"};
    text_cursor at = *cursor;
    for (; at.code != TEXT_END; rodti_text_next(&at)) {
        bool long_dash = (at.code >= 0x2012 && at.code <= 0x2015) || at.code == 0x2212;
        if (long_dash || (at.column == stopped && is_dash(at.code))) {
            *cursor = at;
            return true;
        }
    }
    return find_word(cursor, words, COUNT_OF(words));
}

static bool find_comma(text_cursor *cursor)
{
    while (cursor->code != TEXT_END && cursor->code != ',')
        rodti_text_next(cursor);
    return cursor->code == ',';
}

static bool is_foot_mark(uint32_t code) { return code == '\'' || code == 0x2019 || code == 0x2032; }

static bool find_feet(text_cursor *cursor)
{
    static const char *const words[] = {"ft", "foot", "feet", "pied", "pieds", "pie", "pies"};
    text_cursor at = *cursor;
    while (at.code != TEXT_END) {
        text_cursor mark = at;
        rodti_text_next(&at);
        if (is_foot_mark(mark.code) && at.code != mark.code) {
            *cursor = mark;
            return true;
        }
        if (is_foot_mark(mark.code))
            rodti_text_next(&at); /* two of them are an inch mark */
    }
    return find_word(cursor, words, COUNT_OF(words));
}

static bool is_inch_mark(uint32_t code)
{
    return code == '"' || code == 0x201C || code == 0x201D || code == 0x2033;
}

/* Steps over a unit of any quantity. */
static bool skip_unit(text_cursor *cursor)
{
    static const char *const words[] = {"in",  "inch", "inches", "po",  "mm",  "cm",  "m",  "km",  "yd",
                                        "mil", "mils", "psi",    "kpa", "mpa", "bar", "lb", "lbs", "kg"};
    const text_cursor at = *cursor;
    if (is_inch_mark(cursor->code)) {
        rodti_text_next(cursor);
        return true;
    }
    skip_letters(cursor);
    return is_one_of(&at, cursor, words, COUNT_OF(words));
}

/* At a unit: is it the wrong one, are there two, or is there more after it? */
static rodt_status explain_unit(const failure *f, const text_cursor *at, text_cursor after)
{
    if (after.code == '.')
        rodti_text_next(&after);
    rodti_text_skip_blanks(&after);
    text_cursor second = after;
    if (after.code == TEXT_END && f->problem->column == f->start.column)
        return set_error(f, RODT_E_SYNTAX, at, RODT_MESSAGE_ERROR_UNIT_ALONE);
    if (after.code == TEXT_END)
        return set_error(f, RODT_E_UNIT, at, RODT_MESSAGE_ERROR_UNIT_WRONG);
    if (skip_unit(&second))
        return set_error(f, RODT_E_UNIT, &after, RODT_MESSAGE_ERROR_UNIT_TWICE);
    return set_error(f, RODT_E_SYNTAX, &after, RODT_MESSAGE_ERROR_UNIT_MORE);
}

/* Characters that a pen, a scanner or a keyboard leaves in place of a digit or the fraction bar. */
static bool is_damaged_character(uint32_t code)
{
    return code == 'l' || code == 'I' || code == 'O' || code == 'o' || code == 'S' || code == 'B' ||
           code == 'Z' || code == '|' || code == '\\' || code == '!';
}

/* ---- The order of the reasons ---- */

static bool starts_below_zero(text_cursor cursor)
{
    if (!is_dash(cursor.code))
        return false;
    rodti_text_next(&cursor);
    rodti_text_skip_blanks(&cursor);
    return text_is_digit(cursor.code) || cursor.code == '.' || (cursor.code >= 0xBC && cursor.code <= 0xBE) ||
           (cursor.code >= 0x2150 && cursor.code <= 0x215E);
}

/* Reasons that are sure when the text has their form. */
static bool explain_form(const failure *f, rodt_status *status)
{
    text_cursor at = f->start;
    if (is_nothing(at)) {
        *status = set_error(f, RODT_E_EMPTY, &at, RODT_MESSAGE_STATUS_EMPTY);
    } else if (is_named_date(at) || is_numeric_date(at)) {
        *status = set_error(f, RODT_E_DATE_CELL, &at, RODT_MESSAGE_ERROR_DATE_CELL);
    } else if (starts_below_zero(at)) {
        *status = set_error(f, RODT_E_NEGATIVE, &at, RODT_MESSAGE_ERROR_NEGATIVE);
    } else if (find_invisible(&at)) {
        const rodt_error_argument found = rodti_error_character("found", at.code);
        *status = rodti_error_with(f->error, RODT_E_SYNTAX, at.column, RODT_MESSAGE_ERROR_INVISIBLE, &found, 1);
    } else {
        return false;
    }
    return true;
}

/* Reasons that a character or a word in the text gives. */
static bool explain_character(const failure *f, rodt_status *status)
{
    text_cursor at = f->start;
    if (!f->decimal_comma && find_comma(&at))
        *status = set_error(f, RODT_E_AMBIGUOUS, &at, RODT_MESSAGE_ERROR_COMMA);
    else if ((at = f->start, find_feet(&at)))
        *status = set_error(f, RODT_E_UNIT, &at, RODT_MESSAGE_ERROR_FEET);
    else if ((at = f->start, find_bound(&at)))
        *status = set_error(f, RODT_E_AMBIGUOUS, &at, RODT_MESSAGE_ERROR_BOUND);
    else if ((at = f->start, find_range(&at, f->problem->column)))
        *status = set_error(f, RODT_E_AMBIGUOUS, &at, RODT_MESSAGE_ERROR_RANGE);
    else
        return false;
    return true;
}

/* What is written where parsing stopped. */
static rodt_status explain_place(const failure *f)
{
    const number_problem *problem = f->problem;
    text_cursor at = f->start;
    if (problem->sentence != RODT_MESSAGE_NONE)
        return rodti_error(f->error, problem->status, problem->column, problem->sentence);
    /* The column of a problem is in the text. */
    while (at.column < problem->column && ALWAYS(at.code != TEXT_END))
        rodti_text_next(&at);
    text_cursor after = at;
    if (skip_unit(&after))
        return explain_unit(f, &at, after);
    const rodt_error_argument arguments[] = {rodti_error_character("found", at.code),
                                             rodti_error_phrase("wanted", problem->wanted)};
    after = at;
    rodti_text_next(&after);
    bool damaged = is_damaged_character(at.code) && !text_is_letter(after.code);
    return rodti_error_with(f->error, problem->status, at.column,
                            damaged ? RODT_MESSAGE_ERROR_WRITTEN_FOR : RODT_MESSAGE_ERROR_EXPECTED, arguments,
                            COUNT_OF(arguments));
}

rodt_status rodti_number_explain_error(const char *text, size_t size, bool decimal_comma,
                               const number_problem *problem, rodt_error *error)
{
    failure f = {.problem = problem, .decimal_comma = decimal_comma, .error = error};
    rodt_status status = problem->status;
    rodti_number_parse_start(&f.start, text, size);
    bool open = !problem->is_final && (status == RODT_E_SYNTAX || status == RODT_E_AMBIGUOUS);
    if (open && (explain_form(&f, &status) || explain_character(&f, &status)))
        return status;
    return explain_place(&f);
}
