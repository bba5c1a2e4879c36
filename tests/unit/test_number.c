/* SPDX-License-Identifier: Apache-2.0 */
/* The grammar of one number, character by character, and the reason and the place of every refusal. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>

#include <cmocka.h>

#include "core/number_parse.h"
#include "rodtravel/rodtravel.h"

#include <string.h>

/* --- What is read ------------------------------------------------------------------------------------ */

static const struct {
    const char *text;
    bool comma;
    int64_t num, den; /* 0/0 = too large */
    bool is_fraction, is_bare;
    uint32_t above, below; /* of a fraction without a whole number */
    uint32_t column;
    const char *unit;
    uint32_t unit_column;
} read[] = {
    {"0", false, 0, 1, false, true, 0, 0, 1, "", 2},
    {" +2 in ", false, 2, 1, false, true, 0, 0, 2, "in", 5},
    {"\r\n2\n", false, 2, 1, false, true, 0, 0, 3, "", 4},
    {"2.", false, 0, -1, false, false, 0, 0, 1, "", 0},
    {"2.5mm", false, 5, 2, false, false, 0, 0, 1, "mm", 4},
    {".5", false, 1, 2, false, false, 0, 0, 1, "", 3},
    {"+.5", false, 1, 2, false, false, 0, 0, 1, "", 4},
    {"2,5", false, 2, 1, false, true, 0, 0, 1, ",5", 2},
    {"2,5", true, 5, 2, false, false, 0, 0, 1, "", 4},
    {"2.5", true, 5, 2, false, false, 0, 0, 1, "", 4},
    {",125", true, 1, 8, false, false, 0, 0, 1, "", 5},
    {".125", true, 1, 8, false, false, 0, 0, 1, "", 5},
    {"0.125", true, 1, 8, false, false, 0, 0, 1, "", 6},
    {"1.25", true, 5, 4, false, false, 0, 0, 1, "", 5},
    {"1.2500", true, 5, 4, false, false, 0, 0, 1, "", 7},
    {"1,125", true, 9, 8, false, false, 0, 0, 1, "", 6},
    {"1.125", false, 9, 8, false, false, 0, 0, 1, "", 6},
    {"1.25.5", false, 5, 4, false, false, 0, 0, 1, ".5", 5},
    {"1.9", false, 19, 10, false, false, 0, 0, 1, "", 4},
    {"0.000000001", false, 1, 1000000000, false, false, 0, 0, 1, "", 12},
    {"0.000000001024", false, 1, 976562500, false, false, 0, 0, 1, "", 15}, /* twelve decimals, but no finer part */
    {"0.50000000000000000000", false, 1, 2, false, false, 0, 0, 1, "", 23},
    {"1000000000.5", false, 2000000001, 2, false, false, 0, 0, 1, "", 13},
    {"1000000000", false, 1000000000, 1, false, true, 0, 0, 1, "", 11},
    {"1000000001", false, 0, 0, false, true, 0, 0, 1, "", 11},
    {"99999999999999999999999", false, 0, 0, false, true, 0, 0, 1, "", 24},
    {"1000000001.5", false, 0, 0, false, false, 0, 0, 1, "", 13},
    {"3/4", false, 3, 4, true, false, 3, 4, 1, "", 4},
    {"6/8 in", false, 3, 4, true, false, 6, 8, 1, "in", 5},
    {"31/8", false, 31, 8, true, false, 31, 8, 1, "", 5},
    {"3\xE2\x81\x84" "4", false, 3, 4, true, false, 3, 4, 1, "", 4},
    {"3\xE2\x88\x95" "4", false, 3, 4, true, false, 3, 4, 1, "", 4},
    {"9\xE2\x81\x84" "8", false, 9, 8, true, false, 9, 8, 1, "", 4},
    {"10\xE2\x81\x84" "16", false, 5, 8, true, false, 10, 16, 1, "", 6},
    {"1000000000/2", false, 500000000, 1, true, false, 1000000000, 2, 1, "", 13},
    {"1000000001/2", false, 0, 0, true, false, 0, 0, 1, "", 13},
    {"1/1000000000", false, 1, 1000000000, true, false, 1, 1000000000, 1, "", 13},
    {"1 1000000001/5", false, 0, -1, false, false, 0, 0, 1, "", 0},
    {"45000/1", false, 45000, 1, true, false, 45000, 1, 1, "", 8},
    {"45000.0", false, 45000, 1, false, false, 0, 0, 1, "", 8},
    {"45000 x", false, 45000, 1, false, true, 0, 0, 1, "x", 7},
    {"29999", false, 29999, 1, false, true, 0, 0, 1, "", 6},
    {"60001", false, 60001, 1, false, true, 0, 0, 1, "", 6},
    {"1 3/4", false, 7, 4, true, false, 0, 0, 1, "", 6},
    {"2\t0/4", false, 2, 1, true, false, 0, 0, 1, "", 6},
    {"1-3/4x", false, 7, 4, true, false, 0, 0, 1, "x", 6},
    {"1\xE2\x80\x90" "3/4", false, 7, 4, true, false, 0, 0, 1, "", 6},
    {"1\xE2\x80\x91" "3/4", false, 7, 4, true, false, 0, 0, 1, "", 6},
    {"1\xE2\x80\x92" "3/4", false, 1, 1, false, true, 0, 0, 1, "\xE2\x80\x92" "3/4", 2},
    {"12 15\xE2\x81\x84" "16", false, 207, 16, true, false, 0, 0, 1, "", 9},
    {"\xC2\xBD", false, 1, 2, true, false, 0, 0, 1, "", 2},
    {"+\xC2\xBD in", false, 1, 2, true, false, 0, 0, 1, "in", 4},
    {"3\xC2\xBE", false, 15, 4, true, false, 0, 0, 1, "", 3},
    {"3-\xC2\xBE", false, 15, 4, true, false, 0, 0, 1, "", 4},
    {"3 \xC2\xBE\"", false, 15, 4, true, false, 0, 0, 1, "\"", 4},
    {"1000000000 \xE2\x85\x92", false, INT64_C(10000000001), 10, true, false, 0, 0, 1, "", 13},
};

static void numbers_are_read(void **state)
{
    (void)state;
    for (size_t i = 0; i < COUNT_OF(read); i++) {
        number_quantity got;
        number_problem problem;
        bool is_read = rodti_number_parse_quantity(read[i].text, strlen(read[i].text), read[i].comma, &got, &problem);
        if (is_read != (read[i].den >= 0))
            fail_msg("\"%s\" is%s read", read[i].text, is_read ? "" : " not");
        if (!is_read)
            continue;
        const number_text *number = &got.read;
        if (number->value.num != read[i].num || number->value.den != read[i].den ||
            number->is_too_large != (read[i].den == 0) || number->is_fraction != read[i].is_fraction ||
            number->is_bare != read[i].is_bare || number->num != read[i].above || number->den != read[i].below)
            fail_msg("\"%s\" is read as %lld/%lld", read[i].text, (long long)number->value.num,
                     (long long)number->value.den);
        assert_int_equal(got.column, read[i].column);
        assert_int_equal(got.unit_size, strlen(read[i].unit));
        assert_memory_equal(got.unit, read[i].unit, got.unit_size);
        assert_int_equal(got.unit_column, read[i].unit_column);
    }
}

static void fractions_of_one_character(void **state)
{
    (void)state;
    static const struct {
        uint32_t code, num, den;
    } known[] = {
        {0xBC, 1, 4},   {0xBD, 1, 2},   {0xBE, 3, 4},   {0x2150, 1, 7}, {0x2151, 1, 9}, {0x2152, 1, 10},
        {0x2153, 1, 3}, {0x2154, 2, 3}, {0x2155, 1, 5}, {0x2156, 2, 5}, {0x2157, 3, 5}, {0x2158, 4, 5},
        {0x2159, 1, 6}, {0x215A, 5, 6}, {0x215B, 1, 8}, {0x215C, 3, 8}, {0x215D, 5, 8}, {0x215E, 7, 8},
    };
    size_t at = 0;
    for (uint32_t code = 0; code < 0x3000; code++) {
        const number_vulgar *found = rodti_number_vulgar(code);
        bool wanted = at < COUNT_OF(known) && known[at].code == code;
        assert_int_equal(found != NULL, wanted);
        if (!wanted)
            continue;
        assert_int_equal(found->num, known[at].num);
        assert_int_equal(found->den, known[at++].den);
    }
    assert_int_equal(at, COUNT_OF(known));
}

/* Powers of two times powers of ten, times 127 for millimetres. */
static void denominators_of_tapes(void **state)
{
    (void)state;
    static const int64_t is_one[] = {1, 2, 4, 5, 8, 10, 25, 64, 100, 125, 127, 128, 254, 635, 1270, 3175, NUMBER_DEN_MAX};
    static const int64_t is_none[] = {3, 6, 7, 9, 11, 12, 15, 126, 129, 381, 127 * 127, 999};
    for (size_t i = 0; i < COUNT_OF(is_one); i++)
        assert_true(rodti_number_is_on_a_tape(is_one[i]));
    for (size_t i = 0; i < COUNT_OF(is_none); i++)
        assert_false(rodti_number_is_on_a_tape(is_none[i]));
}

/* --- Where the grammar stops ------------------------------------------------------------------------- */

static const struct {
    const char *text;
    bool comma;
    rodt_status status;
    uint32_t column;
    rodt_message_code wanted, sentence;
} stops[] = {
    {"", false, RODT_E_EMPTY, 0, 0, RODT_MESSAGE_STATUS_EMPTY},
    {" \r\n", false, RODT_E_EMPTY, 0, 0, RODT_MESSAGE_STATUS_EMPTY},
    {"x", false, RODT_E_SYNTAX, 1, RODT_MESSAGE_ERROR_WANTED_NUMBER, 0},
    {"+", false, RODT_E_SYNTAX, 2, RODT_MESSAGE_ERROR_WANTED_NUMBER, 0},
    {",5", false, RODT_E_SYNTAX, 1, RODT_MESSAGE_ERROR_WANTED_NUMBER, 0},
    {".", false, RODT_E_SYNTAX, 2, RODT_MESSAGE_ERROR_WANTED_DECIMAL, 0},
    {" 2.x", false, RODT_E_SYNTAX, 4, RODT_MESSAGE_ERROR_WANTED_DECIMAL, 0},
    {"00", false, RODT_E_SYNTAX, 1, 0, RODT_MESSAGE_ERROR_LEADING_ZERO},
    {" 01", false, RODT_E_SYNTAX, 2, 0, RODT_MESSAGE_ERROR_LEADING_ZERO},
    {"1/08", false, RODT_E_SYNTAX, 3, 0, RODT_MESSAGE_ERROR_LEADING_ZERO},
    {"1/", false, RODT_E_SYNTAX, 3, RODT_MESSAGE_ERROR_WANTED_DIGIT, 0},
    {"1/0", false, RODT_E_SYNTAX, 3, 0, RODT_MESSAGE_ERROR_ZERO_BELOW_BAR},
    {"21\xE2\x81\x84" "0", false, RODT_E_SYNTAX, 4, 0, RODT_MESSAGE_ERROR_ZERO_BELOW_BAR},
    {"1 1/0", false, RODT_E_SYNTAX, 5, 0, RODT_MESSAGE_ERROR_ZERO_BELOW_BAR},
    {"1/1000000001", false, RODT_E_RANGE, 3, 0, RODT_MESSAGE_ERROR_BELOW_BAR},
    {"1 4/4", false, RODT_E_SYNTAX, 5, 0, RODT_MESSAGE_ERROR_IMPROPER},
    {"1/3", false, RODT_E_SYNTAX, 3, 0, RODT_MESSAGE_ERROR_DIVISIONS},
    {"\xE2\x85\x93", false, RODT_E_SYNTAX, 1, 0, RODT_MESSAGE_ERROR_DIVISIONS},
    {"1 \xE2\x85\x93", false, RODT_E_SYNTAX, 3, 0, RODT_MESSAGE_ERROR_DIVISIONS},
    {"21\xE2\x81\x84" "2", false, RODT_E_AMBIGUOUS, 3, 0, RODT_MESSAGE_ERROR_NO_BLANK},
    {"10\xE2\x88\x95" "10", false, RODT_E_AMBIGUOUS, 3, 0, RODT_MESSAGE_ERROR_NO_BLANK},
    {"2-3", false, RODT_E_AMBIGUOUS, 3, 0, RODT_MESSAGE_ERROR_HYPHEN},
    {"2-", false, RODT_E_SYNTAX, 3, RODT_MESSAGE_ERROR_WANTED_DIGIT, 0},
    {"2- 3/4", false, RODT_E_SYNTAX, 3, RODT_MESSAGE_ERROR_WANTED_DIGIT, 0},
    {"2 3", false, RODT_E_SYNTAX, 3, 0, RODT_MESSAGE_ERROR_SECOND_NUMBER},
    {"2 03/4", false, RODT_E_SYNTAX, 3, 0, RODT_MESSAGE_ERROR_LEADING_ZERO},
    {"1.000", true, RODT_E_AMBIGUOUS, 2, 0, RODT_MESSAGE_ERROR_THOUSANDS},
    {"12.125,5", true, RODT_E_AMBIGUOUS, 3, 0, RODT_MESSAGE_ERROR_THOUSANDS},
    {"0.0000000001", false, RODT_E_RANGE, 3, 0, RODT_MESSAGE_ERROR_DECIMALS},
    {"0.0000000009955", false, RODT_E_RANGE, 3, 0, RODT_MESSAGE_ERROR_DECIMALS}, /* a digit that has no place */
    {"0.0000000015625", false, RODT_E_RANGE, 3, 0, RODT_MESSAGE_ERROR_DECIMALS},
    {"0.5000000000000000000000000000000000000001", false, RODT_E_RANGE, 3, 0, RODT_MESSAGE_ERROR_DECIMALS},
    {"30000", false, RODT_E_DATE_CELL, 1, 0, RODT_MESSAGE_ERROR_DAY_NUMBER},
    {" 60000 ", false, RODT_E_DATE_CELL, 2, 0, RODT_MESSAGE_ERROR_DAY_NUMBER},
};

static void numbers_stop(void **state)
{
    (void)state;
    for (size_t i = 0; i < COUNT_OF(stops); i++) {
        number_quantity got;
        number_problem problem;
        if (rodti_number_parse_quantity(stops[i].text, strlen(stops[i].text), stops[i].comma, &got, &problem))
            fail_msg("\"%s\" is read", stops[i].text);
        if (problem.status != stops[i].status || problem.column != stops[i].column ||
            problem.wanted != stops[i].wanted || problem.sentence != stops[i].sentence || problem.is_final)
            fail_msg("\"%s\": status %d, column %u, %s", stops[i].text, (int)problem.status, (unsigned)problem.column,
                     rodt_message_code_name(problem.sentence));
    }
}

/* --- The reason that helps most ---------------------------------------------------------------------- */

#define EXPECTED RODT_E_SYNTAX, RODT_MESSAGE_ERROR_EXPECTED
#define EMPTY RODT_E_EMPTY, RODT_MESSAGE_STATUS_EMPTY
#define INVISIBLE RODT_E_SYNTAX, RODT_MESSAGE_ERROR_INVISIBLE
#define DATE RODT_E_DATE_CELL, RODT_MESSAGE_ERROR_DATE_CELL
#define NEGATIVE RODT_E_NEGATIVE, RODT_MESSAGE_ERROR_NEGATIVE
#define COMMA RODT_E_AMBIGUOUS, RODT_MESSAGE_ERROR_COMMA
#define FEET RODT_E_UNIT, RODT_MESSAGE_ERROR_FEET
#define BOUND RODT_E_AMBIGUOUS, RODT_MESSAGE_ERROR_BOUND
#define RANGE RODT_E_AMBIGUOUS, RODT_MESSAGE_ERROR_RANGE
#define ZERO RODT_E_SYNTAX, RODT_MESSAGE_ERROR_LEADING_ZERO
#define DIVISIONS RODT_E_SYNTAX, RODT_MESSAGE_ERROR_DIVISIONS
#define ALONE RODT_E_SYNTAX, RODT_MESSAGE_ERROR_UNIT_ALONE
#define WRONG RODT_E_UNIT, RODT_MESSAGE_ERROR_UNIT_WRONG
#define TWICE RODT_E_UNIT, RODT_MESSAGE_ERROR_UNIT_TWICE
#define MORE RODT_E_SYNTAX, RODT_MESSAGE_ERROR_UNIT_MORE
#define WRITTEN_FOR RODT_E_SYNTAX, RODT_MESSAGE_ERROR_WRITTEN_FOR

static const struct {
    const char *text;
    bool comma;
    uint32_t column;
    rodt_status status;
    rodt_message_code code;
} reasons[] = {
    /* Nothing. */
    {" n/a", false, 2, EMPTY},
    {"NA", false, 1, EMPTY},
    {"n.a.", false, 1, EMPTY},
    {"n/m", false, 1, EMPTY},
    {"none", false, 1, EMPTY},
    {"null", false, 1, EMPTY},
    {"nil", false, 1, EMPTY},
    {"nils", false, 1, EXPECTED},
    {"-", false, 1, EMPTY},
    {"\u2010\u2011\u2012\u2013\u2014\u2015\u2212", false, 1, EMPTY},
    {"\u200F", false, 1, INVISIBLE},
    {"\u2016", false, 1, EXPECTED},
    {"\u2211", false, 1, EXPECTED},
    {"\u2213", false, 1, EXPECTED},
    {"-x", false, 1, RANGE},
    /* Invisible characters. */
    {"2\x7F", false, 2, EXPECTED},
    {"2\xC2\x80", false, 2, INVISIBLE},
    {"2x\u200B", false, 3, INVISIBLE},
    {"2 U", false, 3, EXPECTED},
    {"2\u00A0x", false, 3, EXPECTED},
    {"2\u2007x", false, 3, EXPECTED},
    {"2\u2009x", false, 3, EXPECTED},
    {"2\u202Fx", false, 3, EXPECTED},
    {"2\u2008x", false, 2, INVISIBLE},
    {"2\xFF", false, 2, EXPECTED},
    /* Dates with a name. */
    {" 2-Jan", false, 2, DATE},
    {"2/Jan", false, 1, DATE},
    {"2.Jan", false, 1, DATE},
    {"2 Jan", false, 1, DATE},
    {"2Jan", false, 1, DATE},
    {"2_Jan", false, 2, EXPECTED},
    {"2  Jan", false, 4, EXPECTED},
    {"2-Jan-04", false, 1, DATE},
    {"1234 Jan", false, 1, DATE},
    {"12345 Jan", false, 7, EXPECTED},
    {"Jan4", false, 1, DATE},
    {"Jan. -4", false, 1, DATE},
    {"-Jan 4", false, 1, RANGE},
    {"Jan", false, 1, EXPECTED},
    {"Jan. x4", false, 1, EXPECTED},
    /* Dates of numbers. */
    {"01/02", false, 1, DATE},
    {"1/02", false, 1, DATE},
    {"10/02", false, 1, DATE},
    {"0/02", false, 1, DATE},
    {"01/12", false, 1, DATE},
    {"10/12", false, 4, DIVISIONS},
    {"01/2", false, 1, ZERO},
    {"01/122", false, 1, ZERO},
    {"001/12", false, 1, ZERO},
    {"123/04", false, 5, ZERO},
    {"01/04x", false, 1, ZERO},
    {"01-04", false, 1, ZERO},
    {"1/2/24", false, 1, DATE},
    {"12/4/24", false, 1, DATE},
    {"1/2/2024", false, 1, DATE},
    {"1-2-2024", false, 1, DATE},
    {"1.2.2024x", false, 1, DATE},
    {"2024/1/2", false, 1, DATE},
    {"2024-10-2", false, 1, DATE},
    {"1/10/24", false, 1, DATE},
    {"1/2/3", false, 4, EXPECTED},
    {"1/2/245", false, 4, EXPECTED},
    {"1/2/20245", false, 4, EXPECTED},
    {"123/4/24", false, 6, EXPECTED},
    {"12345/4/24", false, 8, EXPECTED},
    {"2024//2", false, 6, EXPECTED},
    {"1/128/2024", false, 6, EXPECTED},
    {"1/2-2024", false, 4, RANGE},
    {"/1/24", false, 1, EXPECTED},
    {"1x2x24", false, 2, EXPECTED},
    /* Below zero. */
    {" -2", false, 2, NEGATIVE},
    {"\u2013 2", false, 1, NEGATIVE},
    {"-.5", false, 1, NEGATIVE},
    {"-\u00BC", false, 1, NEGATIVE},
    {"-\u00BE", false, 1, NEGATIVE},
    {"-\u00BB", false, 1, RANGE},
    {"-\u00BF", false, 1, RANGE},
    {"-\u2150", false, 1, NEGATIVE},
    {"-\u215E", false, 1, NEGATIVE},
    {"-\u214F", false, 1, RANGE},
    {"-\u215F", false, 1, RANGE},
    {"--2", false, 1, RANGE},
    {"2-x", false, 3, EXPECTED},
    /* Commas. */
    {"2,5", false, 2, COMMA},
    {"2x,", false, 3, COMMA},
    {"2,x", true, 3, EXPECTED},
    /* Feet. */
    {"2'", false, 2, FEET},
    {"2\u2019", false, 2, FEET},
    {"2\u2032", false, 2, FEET},
    {"2'\u2019", false, 2, FEET},
    {"2'' x", false, 2, EXPECTED},
    {"2'''", false, 4, FEET},
    {"2 FT", false, 3, FEET},
    {"2 pies", false, 3, FEET},
    {"2 ftx", false, 3, EXPECTED},
    {"2 x ft", false, 5, FEET},
    /* Bounds. */
    {"<2", false, 1, BOUND},
    {">2", false, 1, BOUND},
    {"~2", false, 1, BOUND},
    {"\u00B12", false, 1, BOUND},
    {"\u22642", false, 1, BOUND},
    {"\u22652", false, 1, BOUND},
    {"\u22482", false, 1, BOUND},
    {"=2", false, 1, EXPECTED},
    {"?2", false, 1, EXPECTED},
    {"2+", false, 2, BOUND},
    {"2 + x", false, 3, EXPECTED},
    {"max 2", false, 1, BOUND},
    {"maxx 2", false, 1, EXPECTED},
    {"maxi 2", false, 1, EXPECTED},
    {"x approximately 2", false, 3, BOUND},
    {"approximatelyxxx 2", false, 1, EXPECTED},
    {"2 psi/min", false, 6, MORE},
    {"/min 2", false, 2, BOUND},
    {"1/min", false, 3, BOUND},
    {"x/min", false, 1, EXPECTED},
    {"x/min max", false, 7, BOUND},
    {"x min", false, 3, BOUND},
    {"/x/min", false, 1, EXPECTED},
    /* Ranges. */
    {"2 - 3", false, 3, RANGE},
    {"2 \u2010 3", false, 3, RANGE},
    {"2 x \u2011 3", false, 3, EXPECTED},
    {"2x\u2012" "3", false, 3, RANGE},
    {"2x\u2015" "3", false, 3, RANGE},
    {"2x\u2212" "3", false, 3, RANGE},
    {"2x\u2016" "3", false, 2, EXPECTED},
    {"2x\u2211" "3", false, 2, EXPECTED},
    {"2x\u2213" "3", false, 2, EXPECTED},
    {"2 to 3", false, 3, RANGE},
    {"2 tot 3", false, 3, EXPECTED},
    /* Units. */
    {"in", false, 1, ALONE},
    {" in.", false, 2, ALONE},
    {"\"", false, 1, ALONE},
    {"\u201C", false, 1, ALONE},
    {"\u201D", false, 1, ALONE},
    {"\u2033", false, 1, ALONE},
    {"in 2", false, 4, MORE},
    {"2 psi", false, 3, WRONG},
    {"2 psi. ", false, 3, WRONG},
    {"2 in mm", false, 6, TWICE},
    {"2 in.mm", false, 6, TWICE},
    {"2 in \"", false, 6, TWICE},
    {"2 in 3", false, 6, MORE},
    {"2 in. 3", false, 7, MORE},
    {"2 in..", false, 6, MORE},
    {"2\" x", false, 4, MORE},
    {"2 of an inch", false, 3, EXPECTED},
    {"2 \u201E", false, 3, EXPECTED},
    {"1/2 psi", false, 5, WRONG},
    {"1/psi", false, 3, WRONG},
    /* Digits that a pen or a scanner left so. */
    {"2 l/4", false, 3, WRITTEN_FOR},
    {"l 1/4", false, 1, WRITTEN_FOR},
    {"2 l", false, 3, WRITTEN_FOR},
    {"2 lx", false, 3, EXPECTED},
    {"1/O", false, 3, WRITTEN_FOR},
    {"2 a/4", false, 3, EXPECTED},
};

static void the_best_reason_is_given(void **state)
{
    (void)state;
    for (size_t i = 0; i < COUNT_OF(reasons); i++) {
        const rodt_style style = {.decimal_comma = reasons[i].comma};
        rodt_length length = {77, 78};
        rodt_error error = {.line = 9};
        rodt_status status = rodt_length_parse_n(reasons[i].text, strlen(reasons[i].text), &style, &length, NULL, &error);
        if (status != reasons[i].status || error.code != reasons[i].code || error.column != reasons[i].column)
            fail_msg("\"%s\": status %d, column %u, %s: %s", reasons[i].text, (int)status, (unsigned)error.column,
                     rodt_message_code_name((rodt_message_code)error.code), error.text);
        assert_int_equal(error.status, status);
        assert_true(length.num == 77 && length.den == 78);
        assert_int_equal(
            rodt_length_parse_n(reasons[i].text, strlen(reasons[i].text), &style, &length, NULL, NULL), status);
    }
}

/* A cell in the middle of a file: its neighbours are no part of it. */
static void neighbours_are_not_read(void **state)
{
    (void)state;
    rodt_length length;
    rodt_error error;
    assert_int_equal(rodt_length_parse_n(&"x/min 2"[1], 6, NULL, &length, NULL, &error), RODT_E_AMBIGUOUS);
    assert_int_equal(error.code, RODT_MESSAGE_ERROR_BOUND);
    assert_int_equal(error.column, 2);
    assert_int_equal(rodt_length_parse_n("2 in mm", 5, NULL, &length, NULL, &error), RODT_OK);
}

/* A reason that is final, or that no other can better, stays. */
static void some_reasons_stay(void **state)
{
    (void)state;
    static const struct {
        number_problem problem;
        rodt_status status;
        rodt_message_code code;
    } cases[] = {
        {{RODT_E_SYNTAX, 2, 0, RODT_MESSAGE_ERROR_COLON, true}, RODT_E_SYNTAX, RODT_MESSAGE_ERROR_COLON},
        {{RODT_E_SYNTAX, 2, 0, RODT_MESSAGE_ERROR_COLON, false}, BOUND},
        {{RODT_E_AMBIGUOUS, 2, 0, RODT_MESSAGE_ERROR_HYPHEN, false}, BOUND},
        {{RODT_E_RANGE, 2, 0, RODT_MESSAGE_ERROR_DIGITS, false}, RODT_E_RANGE, RODT_MESSAGE_ERROR_DIGITS},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_error error;
        assert_int_equal(rodti_number_explain_error("<2", 2, false, &cases[i].problem, &error), cases[i].status);
        assert_int_equal(error.code, cases[i].code);
        assert_int_equal(error.column, cases[i].code == RODT_MESSAGE_ERROR_BOUND ? 1 : 2);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(numbers_are_read),           cmocka_unit_test(fractions_of_one_character),
        cmocka_unit_test(denominators_of_tapes),      cmocka_unit_test(numbers_stop),
        cmocka_unit_test(the_best_reason_is_given),   cmocka_unit_test(some_reasons_stay),
        cmocka_unit_test(neighbours_are_not_read),
    };
    return cmocka_run_group_tests_name("number", tests, NULL, NULL);
}
