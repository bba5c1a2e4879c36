/* SPDX-License-Identifier: Apache-2.0 */
/* Lengths: read, refused with a reason, computed with, written and read again. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>

#include <cmocka.h>

#include "core/common.h"
#include "quantity/fault.h"
#include "quantity/length_plain.h"
#include "quantity/lost_blank.h"
#include "rodtravel/length.h"
#include "support.h"

#include <locale.h>
#include <stdio.h>
#include <string.h>

static const rodt_length untouched = {77, 78};

static bool equal(rodt_length length, int64_t num, int64_t den)
{
    return length.num == num && length.den == den;
}

/* ---- Reading ---- */

static void check_spelling(const char *id, const char *text, const char *expect, const char *value)
{
    rodt_length length = untouched;
    rodt_error error = {0};
    rodt_length wanted = untouched;
    bool accepted = rodt_length_parse(text, &length, &error) == RODT_OK;
    bool known = read_fraction(value, &wanted.num, &wanted.den);
    if (accepted && (strcmp(expect, "refuse") == 0 || !known || !equal(length, wanted.num, wanted.den)))
        fail_msg("%s \"%s\" was read as %lld/%lld", id, text, (long long)length.num, (long long)length.den);
    if (!accepted && strcmp(expect, "accept") == 0)
        fail_msg("%s \"%s\" was refused: column %u, %s", id, text, (unsigned)error.column, error.text);
    if (!accepted && (!equal(length, 77, 78) || error.status == RODT_OK || error.text[0] == '\0'))
        fail_msg("%s \"%s\" was refused without a reason, or with a result", id, text);
}

/* Sources of the texts: tests/cases/README.md. */
static void test_spellings(void **state)
{
    (void)state;
    csv_file file;
    char *cells[6];
    csv_open(&file, CASES "/spellings.csv");
    assert_int_equal(csv_read(&file, cells, 6), 6);
    assert_string_equal(cells[1], "text");
    while (csv_read(&file, cells, 6) != 0) {
        assert_true(strcmp(cells[3], "accept") == 0 || strcmp(cells[3], "refuse") == 0 ||
                    strcmp(cells[3], "either") == 0);
        check_spelling(cells[0], cells[1], cells[3], cells[4]);
    }
    assert_true(file.record > 400);
    csv_close(&file);
}

/* Statuses and columns, counted in characters by hand. */
static const struct {
    const char *text;
    rodt_status status;
    uint32_t column;
} refused[] = {
    {"", RODT_E_EMPTY, 0},
    {"   ", RODT_E_EMPTY, 0},
    {"n/a", RODT_E_EMPTY, 1},
    {"-", RODT_E_EMPTY, 1},
    {"None", RODT_E_EMPTY, 1},
    {"a", RODT_E_SYNTAX, 1},
    {"  a", RODT_E_SYNTAX, 3},
    {"1 3/A", RODT_E_SYNTAX, 5},
    {"1½1", RODT_E_SYNTAX, 3},
    {"1 3/", RODT_E_SYNTAX, 5},
    {"1 3/0", RODT_E_SYNTAX, 5},
    {"1 3/2", RODT_E_SYNTAX, 5},
    {"1 3 4", RODT_E_SYNTAX, 3},
    {"01", RODT_E_SYNTAX, 1},
    {"2.", RODT_E_SYNTAX, 3},
    {"1 1/6", RODT_E_SYNTAX, 5},
    {"1\u00AD3/4", RODT_E_SYNTAX, 2},
    {"½ \u200B", RODT_E_SYNTAX, 3},
    {"1 in 3/4", RODT_E_SYNTAX, 6},
    {"in", RODT_E_SYNTAX, 1},
    {"\xFF", RODT_E_SYNTAX, 1},
    {"1,000", RODT_E_AMBIGUOUS, 2},
    {"1,75", RODT_E_AMBIGUOUS, 2},
    {"2 - 1/4", RODT_E_AMBIGUOUS, 3},
    {"1 to 2", RODT_E_AMBIGUOUS, 3},
    {"2+", RODT_E_AMBIGUOUS, 2},
    {"<2", RODT_E_AMBIGUOUS, 1},
    {"1–3/8", RODT_E_AMBIGUOUS, 2},
    {"38-57", RODT_E_AMBIGUOUS, 4},
    {"21⁄2", RODT_E_AMBIGUOUS, 3},
    {"2'", RODT_E_UNIT, 2},
    {"1 ft", RODT_E_UNIT, 3},
    {"95 psi", RODT_E_UNIT, 4},
    {"98/127 mm", RODT_E_SYNTAX, 1},
    {"2 4/4", RODT_E_SYNTAX, 5},
    {"2 of an inch", RODT_E_SYNTAX, 3},
    {"1/3/4", RODT_E_SYNTAX, 3},
    {"1/12", RODT_E_SYNTAX, 3},
    {"1/2/24", RODT_E_DATE_CELL, 1},
    {"9999999999/1000000000", RODT_E_IMPLAUSIBLE, 1},
    {"1 in mm", RODT_E_UNIT, 6},
    {"2-Jan", RODT_E_DATE_CELL, 1},
    {"01-f\u00E9vr", RODT_E_DATE_CELL, 1},
    {"1/4/2024", RODT_E_DATE_CELL, 1},
    {"45293", RODT_E_DATE_CELL, 1},
    {"01/02", RODT_E_DATE_CELL, 1},
    {"01-F\u00C9VR", RODT_E_DATE_CELL, 1},
    {"3 AO\u00DBT", RODT_E_DATE_CELL, 1},
    {"3 ao\u00FBt", RODT_E_DATE_CELL, 1},
    {"3 ao\u00FAt", RODT_E_SYNTAX, 3},
    {"Jan. 4", RODT_E_DATE_CELL, 1},
    {"Jan.", RODT_E_SYNTAX, 1},
    {"Jan. x4", RODT_E_SYNTAX, 1},
    {"123/04", RODT_E_SYNTAX, 5},
    {"01/04x", RODT_E_SYNTAX, 1},
    {"1/123/2024", RODT_E_SYNTAX, 3},
    {"123/4/24", RODT_E_SYNTAX, 6},
    {"12/4/24", RODT_E_DATE_CELL, 1},
    {"/min 4", RODT_E_AMBIGUOUS, 2},
    {"4 psi/min", RODT_E_SYNTAX, 6},
    {"1\u2032", RODT_E_UNIT, 2},
    {"1\u2032 3", RODT_E_UNIT, 2},
    {"1 mm \u2033", RODT_E_UNIT, 6},
    {"1 mm \"", RODT_E_UNIT, 6},
    {"1 mm \u201C", RODT_E_UNIT, 6},
    {"1 mm \u201D", RODT_E_UNIT, 6},
    {"1 mm \u201E", RODT_E_SYNTAX, 6},
    {"2\u00A0x", RODT_E_SYNTAX, 3},
    {"2 abcdefghijklmnopq", RODT_E_SYNTAX, 3},
    {"a''", RODT_E_SYNTAX, 1},
    {"-.5", RODT_E_NEGATIVE, 1},
    {"-\u00BB", RODT_E_AMBIGUOUS, 1},
    {"-\u00BC", RODT_E_NEGATIVE, 1},
    {"-\u00BE", RODT_E_NEGATIVE, 1},
    {"-\u00BF", RODT_E_AMBIGUOUS, 1},
    {"-\u214F", RODT_E_AMBIGUOUS, 1},
    {"-\u2150", RODT_E_NEGATIVE, 1},
    {"-\u215E", RODT_E_NEGATIVE, 1},
    {"-\u215F", RODT_E_AMBIGUOUS, 1},
    {"-1 1/4", RODT_E_NEGATIVE, 1},
    {"−2", RODT_E_NEGATIVE, 1},
    {"175in", RODT_E_IMPLAUSIBLE, 1},
    {"24 1/64", RODT_E_IMPLAUSIBLE, 1},
    {"610 mm", RODT_E_IMPLAUSIBLE, 1},
    {"18446744073709551617 3/4", RODT_E_IMPLAUSIBLE, 1},
    {"45293 mm", RODT_E_IMPLAUSIBLE, 1},
    {"3/18446744073709551620", RODT_E_RANGE, 3},
    {"2.0000000000000000001", RODT_E_RANGE, 3},
    {"0.00000000001", RODT_E_RANGE, 3},
};

static void test_reasons(void **state)
{
    (void)state;
    for (size_t i = 0; i < COUNT_OF(refused); i++) {
        rodt_length length = untouched;
        rodt_error error = {.line = 9};
        rodt_status status = rodt_length_parse(refused[i].text, &length, &error);
        if (status != refused[i].status || error.status != status || error.column != refused[i].column)
            fail_msg("\"%s\": status %d column %u (%s)", refused[i].text, (int)status, (unsigned)error.column,
                     error.text);
        assert_true(equal(length, 77, 78));
        assert_int_equal(error.line, 0);
        assert_true(strlen(error.text) > 10 && error.text[strlen(error.text) - 1] != '.');
        assert_int_equal(rodt_length_parse(refused[i].text, &length, NULL), status);
    }
}

/* Every word of a unit, after a whole number and alone; "of an inch" needs a fraction. */
static void test_unit_words(void **state)
{
    (void)state;
    static const struct {
        const char *word;
        rodt_unit unit;
    } words[] = {
        {"\"", RODT_UNIT_IN},         {"in", RODT_UNIT_IN},          {"in.", RODT_UNIT_IN},        {"ins", RODT_UNIT_IN},
        {"inch", RODT_UNIT_IN},       {"inches", RODT_UNIT_IN},      {"po", RODT_UNIT_IN},         {"pouce", RODT_UNIT_IN},
        {"pouces", RODT_UNIT_IN},     {"''", RODT_UNIT_IN},          {"\u2032\u2032", RODT_UNIT_IN}, {"\u2033", RODT_UNIT_IN},
        {"\u201C", RODT_UNIT_IN},     {"\u201D", RODT_UNIT_IN},      {"mm", RODT_UNIT_MM},         {"mm.", RODT_UNIT_MM},
        {"millimetre", RODT_UNIT_MM}, {"millimetres", RODT_UNIT_MM}, {"millimeter", RODT_UNIT_MM}, {"millimeters", RODT_UNIT_MM},
        {"cm", RODT_UNIT_CM},         {"cm.", RODT_UNIT_CM},         {"centimetre", RODT_UNIT_CM}, {"centimetres", RODT_UNIT_CM},
        {"centimeter", RODT_UNIT_CM}, {"centimeters", RODT_UNIT_CM},
    };
    for (size_t i = 0; i < COUNT_OF(words); i++) {
        char text[40];
        rodt_length read;
        RODT_ENUM32(rodt_unit) unit = words[i].unit == RODT_UNIT_IN ? RODT_UNIT_MM : RODT_UNIT_IN;
        snprintf(text, sizeof text, "2 %s", words[i].word);
        assert_int_equal(rodt_length_parse(text, &read, NULL), RODT_OK);
        assert_true(words[i].unit == RODT_UNIT_IN   ? equal(read, 2, 1)
                    : words[i].unit == RODT_UNIT_MM ? equal(read, 10, 127)
                                                    : equal(read, 100, 127));
        assert_int_equal(rodt_unit_parse(words[i].word, &unit, NULL), RODT_OK);
        assert_int_equal(unit, words[i].unit);
    }
    rodt_length half;
    RODT_ENUM32(rodt_unit) unit;
    assert_int_equal(rodt_length_parse("1/2 of an inch", &half, NULL), RODT_OK);
    assert_int_equal(rodt_unit_parse("of an inch", &unit, NULL), RODT_E_SYNTAX);
}

/* Zeros in front of, between and behind the decimals. */
/* What a pen or a scanner leaves in place of a digit is named; a word that begins so is not. */
static void damaged_digits_are_named(void **state)
{
    (void)state;
    static const char damaged[] = "lIOoSBZ|\\!";
    for (const char *sign = damaged; *sign != '\0'; sign++) {
        const char alone[] = {'2', ' ', *sign, '/', '4', '\0'}, word[] = {'2', ' ', *sign, 'q', '\0'};
        rodt_length length = untouched;
        rodt_error error;
        assert_int_equal(rodt_length_parse(alone, &length, &error), RODT_E_SYNTAX);
        assert_int_equal(error.code, RODT_MESSAGE_ERROR_WRITTEN_FOR);
        assert_int_equal(error.column, 3);
        assert_int_equal(rodt_length_parse(word, &length, &error), RODT_E_SYNTAX);
        assert_int_equal(error.code, RODT_MESSAGE_ERROR_EXPECTED);
    }
}

static void test_decimals(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        int64_t num, den;
    } cases[] = {
        {"1.105", 221, 200},        {"2.005", 401, 200}, {"1.10", 11, 10},
        {"1.020300", 10203, 10000}, {"3.00000", 3, 1},   {"0.100000001", 100000001, 1000000000},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_length length = untouched;
        assert_int_equal(rodt_length_parse(cases[i].text, &length, NULL), RODT_OK);
        assert_true(equal(length, cases[i].num, cases[i].den));
    }
}

static rodt_status read_styled(const char *text, rodt_style style, rodt_length *length,
                               RODT_ENUM32(rodt_unit) *unit)
{
    *length = untouched;
    return rodt_length_parse_n(text, strlen(text), &style, length, unit, NULL);
}

static void test_decimal_comma(void **state)
{
    (void)state;
    static const rodt_style comma = {.decimal_comma = true};
    static const struct {
        const char *text;
        rodt_status status;
        int64_t num, den;
    } cases[] = {
        {"2,125", RODT_OK, 17, 8},         {"1,75", RODT_OK, 7, 4},
        {"63,5 mm", RODT_OK, 5, 2},        {",5", RODT_OK, 1, 2},
        {"1,000", RODT_OK, 1, 1},          {"1.75", RODT_OK, 7, 4},
        {"0.875", RODT_OK, 7, 8},          {"1 3/4", RODT_OK, 7, 4},
        {"1,5 po", RODT_OK, 3, 2},         {"1.000", RODT_E_AMBIGUOUS, 0, 0},
        {"2.125", RODT_E_AMBIGUOUS, 0, 0}, {"1.2,5", RODT_E_SYNTAX, 0, 0},
        {"1,2,3", RODT_E_SYNTAX, 0, 0},    {"1,", RODT_E_SYNTAX, 0, 0},
        {"1,3/4", RODT_E_SYNTAX, 0, 0},    {"12.345,6", RODT_E_AMBIGUOUS, 0, 0},
        {"1,75; 2", RODT_E_SYNTAX, 0, 0},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_length length;
        rodt_status status = read_styled(cases[i].text, comma, &length, NULL);
        bool right = status == RODT_OK ? equal(length, cases[i].num, cases[i].den) : equal(length, 77, 78);
        if (status != cases[i].status || !right)
            fail_msg("\"%s\": status %d, %lld/%lld", cases[i].text, (int)status, (long long)length.num,
                     (long long)length.den);
    }
}

static void test_unit_of_the_form(void **state)
{
    (void)state;
    rodt_length length;
    RODT_ENUM32(rodt_unit) unit = RODT_UNIT_IN;
    assert_int_equal(read_styled("44.45", (rodt_style){.unit = RODT_UNIT_MM}, &length, &unit),
                     RODT_OK);
    assert_true(equal(length, 7, 4) && unit == RODT_UNIT_MM);
    assert_int_equal(read_styled("4.445", (rodt_style){.unit = RODT_UNIT_CM}, &length, &unit),
                     RODT_OK);
    assert_true(equal(length, 7, 4) && unit == RODT_UNIT_CM);
    assert_int_equal(read_styled("1 3/4 in", (rodt_style){.unit = RODT_UNIT_MM}, &length, &unit),
                     RODT_OK);
    assert_true(equal(length, 7, 4) && unit == RODT_UNIT_IN);
    assert_int_equal(read_styled("610", (rodt_style){.unit = RODT_UNIT_MM}, &length, &unit),
                     RODT_E_IMPLAUSIBLE);
    assert_int_equal(read_styled("2", (rodt_style){.unit = (rodt_unit)3}, &length, &unit),
                     RODT_E_ARGUMENT);
    assert_true(equal(length, 77, 78) && unit == RODT_UNIT_IN);
}

/* Only `size` bytes belong to the text; a zero byte among them is no end. */
static void test_bounded_text(void **state)
{
    (void)state;
    rodt_length length = untouched;
    assert_int_equal(rodt_length_parse_n("1 3/4XYZ", 5, NULL, &length, NULL, NULL), RODT_OK);
    assert_true(equal(length, 7, 4));
    assert_int_equal(rodt_length_parse_n("1 3/4", 4, NULL, &length, NULL, NULL), RODT_E_SYNTAX);
    assert_int_equal(rodt_length_parse_n("2\0", 2, NULL, &length, NULL, NULL), RODT_E_SYNTAX);
    assert_int_equal(rodt_length_parse_n("2 1/2\r\n", 7, NULL, &length, NULL, NULL), RODT_OK);
    assert_int_equal(rodt_length_parse_n("2\xE2\x80", 3, NULL, &length, NULL, NULL), RODT_E_SYNTAX);
    assert_int_equal(rodt_length_parse_n("", 0, NULL, &length, NULL, NULL), RODT_E_EMPTY);
    assert_int_equal(rodt_length_parse(NULL, &length, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_parse("2", NULL, NULL), RODT_E_ARGUMENT);
}

/* ---- Writing ---- */

static void check_round_trip(int64_t num, int64_t den)
{
    char text[RODT_LENGTH_TEXT_SIZE];
    rodt_length length;
    rodt_length again = untouched;
    assert_int_equal(rodt_length_from_inches(num, den, &length), RODT_OK);
    assert_true(is_canonical(length.num, length.den));
    assert_int_equal(rodt_length_format(length, text, sizeof text, NULL), RODT_OK);
    if (rodt_length_parse(text, &again, NULL) != RODT_OK || !equal(again, length.num, length.den))
        fail_msg("%lld/%lld is written as \"%s\", which is not read back", (long long)num, (long long)den,
                 text);
}

static void test_round_trips(void **state)
{
    (void)state;
    static const int64_t divisions[] = {64, 128, 10, 100, 1000, 127, 1270};
    for (size_t i = 0; i < COUNT_OF(divisions); i++) {
        for (int64_t n = 0; n <= RODT_LENGTH_MAX_INCHES * divisions[i]; n++)
            check_round_trip(n, divisions[i]);
    }
}

/* Every tenth of a millimetre: text to length to text. */
static void test_millimetres(void **state)
{
    (void)state;
    for (int n = 0; n <= 6096; n++) {
        char text[32];
        char again[RODT_LENGTH_TEXT_SIZE];
        rodt_length length;
        rodt_length made;
        snprintf(text, sizeof text, "%d.%d mm", n / 10, n % 10);
        assert_int_equal(rodt_length_parse(text, &length, NULL), RODT_OK);
        assert_int_equal(rodt_length_from_mm(n, 10, &made), RODT_OK);
        assert_true(equal(length, made.num, made.den) && is_canonical(made.num, made.den));
        assert_int_equal(
            rodt_length_format_decimal(length, RODT_UNIT_MM, 1, RODT_ROUNDING_HALF_EVEN, again, sizeof again, NULL),
            RODT_OK);
        assert_memory_equal(again, text, strlen(again));
        assert_string_equal(text + strlen(again), " mm");
    }
}

static void test_write(void **state)
{
    (void)state;
    static const struct {
        rodt_length length;
        const char *text;
    } cases[] = {
        {{7, 4}, "1 3/4"},
        {{2, 1}, "2"},
        {{5, 16}, "5/16"},
        {{-1, 8}, "-1/8"},
        {{-9, 4}, "-2 1/4"},
        {{0, 1}, "0"},
        {{-3, 1}, "-3"},
        {{225, 127}, "1 98/127"},
        {{INT64_MIN, 1}, "-9223372036854775808"},
        {{INT64_MIN, 3}, "-3074457345618258602 2/3"},
        {{INT64_MAX, INT64_C(4611686018427387905)}, "1 4611686018427387902/4611686018427387905"},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        char text[RODT_LENGTH_TEXT_SIZE];
        size_t size = strlen(cases[i].text);
        assert_int_equal(rodt_length_format(cases[i].length, text, sizeof text, NULL), RODT_OK);
        assert_string_equal(text, cases[i].text);
        assert_int_equal(rodt_length_format(cases[i].length, text, size + 1, NULL), RODT_OK);
        memset(text, '#', sizeof text);
        assert_int_equal(rodt_length_format(cases[i].length, text, size, NULL), RODT_E_SPACE);
        assert_int_equal(text[0], '#');
    }
    assert_int_equal(rodt_length_format((rodt_length){0}, (char[9]){0}, 9, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_format((rodt_length){1, 2}, NULL, 9, NULL), RODT_E_ARGUMENT);
}

static void check_decimal(int64_t num, int64_t den, rodt_unit unit, unsigned digits, rodt_rounding rounding,
                          const char *wanted)
{
    char text[RODT_LENGTH_TEXT_SIZE] = "#";
    rodt_length length = {num, den};
    assert_int_equal(rodt_length_format_decimal(length, unit, digits, rounding, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, wanted);
    assert_int_equal(rodt_length_format_decimal(length, unit, digits, rounding, text, strlen(wanted), NULL),
                     RODT_E_SPACE);
    assert_string_equal(text, wanted);
}

static void test_write_decimal(void **state)
{
    (void)state;
    check_decimal(7, 4, RODT_UNIT_IN, 4, RODT_ROUNDING_HALF_EVEN, "1.7500");
    check_decimal(7, 4, RODT_UNIT_MM, 2, RODT_ROUNDING_HALF_EVEN, "44.45");
    check_decimal(7, 4, RODT_UNIT_MM, 1, RODT_ROUNDING_HALF_EVEN, "44.4");
    check_decimal(7, 4, RODT_UNIT_MM, 1, RODT_ROUNDING_HALF_UP, "44.5");
    check_decimal(7, 4, RODT_UNIT_MM, 0, RODT_ROUNDING_DOWN, "44");
    check_decimal(7, 4, RODT_UNIT_CM, 3, RODT_ROUNDING_UP, "4.445");
    check_decimal(1, 64, RODT_UNIT_IN, 12, RODT_ROUNDING_HALF_EVEN, "0.015625000000");
    check_decimal(-1, 64, RODT_UNIT_IN, 3, RODT_ROUNDING_HALF_EVEN, "-0.016");
    check_decimal(-1, 64, RODT_UNIT_IN, 1, RODT_ROUNDING_HALF_EVEN, "0.0");
    check_decimal(0, 1, RODT_UNIT_CM, 0, RODT_ROUNDING_UP, "0");
    check_decimal(5, 2, RODT_UNIT_IN, 0, RODT_ROUNDING_HALF_EVEN, "2");
    char text[9] = "#";
    rodt_length two = {2, 1};
    assert_int_equal(rodt_length_format_decimal(two, (rodt_unit)3, 1, RODT_ROUNDING_UP, text, 9, NULL),
                     RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_format_decimal(two, RODT_UNIT_MM, 13, RODT_ROUNDING_UP, text, 9, NULL),
                     RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_format_decimal(two, RODT_UNIT_MM, 1, (rodt_rounding)4, text, 9, NULL),
                     RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_format_decimal((rodt_length){0}, RODT_UNIT_MM, 1, RODT_ROUNDING_UP, text, 9, NULL),
                     RODT_E_ARGUMENT);
    assert_int_equal(
        rodt_length_format_decimal((rodt_length){INT64_MAX, 1}, RODT_UNIT_MM, 12, RODT_ROUNDING_UP, text, 9, NULL),
        RODT_E_RANGE);
    assert_string_equal(text, "#");
}

/* ---- Arithmetic ---- */

static void test_add_and_subtract(void **state)
{
    (void)state;
    rodt_length a = {81, 16};
    rodt_length b = {29, 8};
    rodt_length huge = {INT64_MAX, 1};
    rodt_length out = untouched;
    assert_int_equal(rodt_length_subtract(a, b, &out), RODT_OK);
    assert_true(equal(out, 23, 16));
    assert_int_equal(rodt_length_add(out, b, &out), RODT_OK);
    assert_true(equal(out, 81, 16));
    assert_int_equal(rodt_length_subtract(b, a, &b), RODT_OK);
    assert_true(equal(b, -23, 16));
    out = untouched;
    assert_int_equal(rodt_length_add(huge, huge, &out), RODT_E_RANGE);
    assert_int_equal(rodt_length_add(a, (rodt_length){0}, &out), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_subtract((rodt_length){0}, a, &out), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_subtract((rodt_length){1, -2}, a, &out), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_subtract(a, a, NULL), RODT_E_ARGUMENT);
    assert_true(equal(out, 77, 78));
}

static void test_compare(void **state)
{
    (void)state;
    rodt_length none = {0};
    rodt_length zero = {0, 1};
    assert_int_equal(rodt_length_compare((rodt_length){7, 4}, (rodt_length){1, 4}), 1);
    assert_int_equal(rodt_length_compare((rodt_length){7, 4}, (rodt_length){225, 127}), -1);
    assert_int_equal(rodt_length_compare((rodt_length){7, 4}, (rodt_length){7, 4}), 0);
    assert_int_equal(rodt_length_compare(none, (rodt_length){-7, 4}), -1);
    assert_int_equal(rodt_length_compare(zero, none), 1);
    assert_int_equal(rodt_length_compare(none, none), 0);
}

static void test_scale_and_round(void **state)
{
    (void)state;
    rodt_length out = untouched;
    rodt_length sixteenth = {1, 16};
    assert_int_equal(rodt_length_scale((rodt_length){5, 2}, (rodt_ratio){4, 5}, &out), RODT_OK);
    assert_true(equal(out, 2, 1));
    assert_int_equal(rodt_length_round((rodt_length){225, 127}, sixteenth, RODT_ROUNDING_HALF_EVEN, &out),
                     RODT_OK);
    assert_true(equal(out, 7, 4));
    assert_int_equal(rodt_length_round((rodt_length){1, 32}, sixteenth, RODT_ROUNDING_HALF_EVEN, &out), RODT_OK);
    assert_true(equal(out, 0, 1));
    assert_int_equal(rodt_length_round((rodt_length){1, 32}, sixteenth, RODT_ROUNDING_HALF_UP, &out), RODT_OK);
    assert_true(equal(out, 1, 16));
    out = untouched;
    assert_int_equal(rodt_length_scale((rodt_length){5, 2}, (rodt_ratio){0}, &out), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_round((rodt_length){5, 2}, (rodt_length){0, 1}, RODT_ROUNDING_UP, &out),
                     RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_round((rodt_length){5, 2}, sixteenth, (rodt_rounding)-1, &out),
                     RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_round((rodt_length){5, 2}, sixteenth, (rodt_rounding)RODT_ROUNDING_END, &out),
                     RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_round((rodt_length){INT64_MAX, 1}, sixteenth, RODT_ROUNDING_UP, &out),
                     RODT_E_RANGE);
    /* A length that is not given has no sum, no part and no division, on either side. */
    const rodt_length two = {2, 1}, none = {0, 0};
    const rodt_ratio half = {1, 2};
    assert_int_equal(rodt_length_add(none, two, &out), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_add(two, none, &out), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_add(two, two, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_scale(none, half, &out), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_scale(two, half, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_round(none, sixteenth, RODT_ROUNDING_UP, &out), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_round(two, none, RODT_ROUNDING_UP, &out), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_round(two, sixteenth, RODT_ROUNDING_UP, NULL), RODT_E_ARGUMENT);
    assert_true(equal(out, 77, 78));
}

static void test_make(void **state)
{
    (void)state;
    rodt_length out = untouched;
    assert_int_equal(rodt_length_from_inches(1, 0, &out), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_from_inches(1, 2, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_from_mm(1, 0, &out), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_from_inches(INT64_MIN, -1, &out), RODT_E_RANGE);
    assert_int_equal(rodt_length_from_mm(INT64_MAX - 1, 1, &out), RODT_E_RANGE);
    assert_int_equal(rodt_length_from_mm(1, 2, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_from_mm(INT64_MIN, -1, &out), RODT_E_RANGE);
    assert_true(equal(out, 77, 78));
    assert_int_equal(rodt_length_from_inches(6, -8, &out), RODT_OK);
    assert_true(equal(out, -3, 4));
    assert_int_equal(rodt_length_from_mm(254, 10, &out), RODT_OK);
    assert_true(equal(out, 1, 1));
}

#define TOO_LONG "no rod position or stroke is longer than 24 in; is a decimal point lost?"

/* The longest and the finest lengths that are read, and the sentences of what is beyond them. */
static void test_ends_of_lengths(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        rodt_length length; /* den 0 = refused */
        rodt_status status;
        uint32_t column;
        const char *sentence;
    } cases[] = {
        {"+24", {24, 1}, RODT_OK, 0, ""},
        {"+24 1/64", {0, 0}, RODT_E_IMPLAUSIBLE, 1, TOO_LONG},
        {"99999999999999999999", {0, 0}, RODT_E_IMPLAUSIBLE, 1, TOO_LONG},
        {"+0.000000001", {1, 1000000000}, RODT_OK, 0, ""},
        {"+0.000000001 mm", {0, 0}, RODT_E_RANGE, 1, "there are more digits than a reading can have"},
        {"+1/8 mm", {0, 0}, RODT_E_SYNTAX, 1,
         "no metric tape has fractions; write inches (2 1/8 in) or a decimal (54.0 mm)"},
        {"+1 x", {0, 0}, RODT_E_SYNTAX, 4, "in, mm, cm or the end of the text was expected here, not x"},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_length length = {0, 0};
        rodt_error error = {.status = RODT_OK};
        assert_int_equal(rodt_length_parse(cases[i].text, &length, &error), cases[i].status);
        assert_true(equal(length, cases[i].length.num, cases[i].length.den));
        assert_int_equal(error.column, cases[i].column);
        assert_string_equal(error.text, cases[i].sentence);
    }
    assert_null(rodti_length_fault((rodt_length){1, 1000000000}));
    assert_string_equal(rodti_length_fault((rodt_length){1, 1000000001}), "there are more digits than a reading can have");
    assert_string_equal(rodti_length_fault((rodt_length){1, 7}), "no tape is divided like this");
}

/* What is plain, and what is not: its unit, its size, a fraction of millimetres. */
static void test_plain_lengths(void **state)
{
    (void)state;
    static const char *const refused_texts[] = {"2 x",    "25",           "24.1",   "610 mm", "1/8 mm",
                                                "1/8 cm", "2 of an inch", "2 in x", "61 cm",  "x"};
    static const struct {
        const char *text;
        size_t size;
        rodt_length length;
        RODT_ENUM32(rodt_unit) unit;
    } cases[] = {
        {"24", 2, {24, 1}, RODT_UNIT_IN},       {"609.6 mm ", 9, {24, 1}, RODT_UNIT_MM},
        {"60.96cm", 7, {24, 1}, RODT_UNIT_CM},  {"5/8 OF an inch", 14, {5, 8}, RODT_UNIT_IN},
        {"2 1/8 in 3", 9, {17, 8}, RODT_UNIT_IN}, {"2 1/8 in 3", 1, {2, 1}, RODT_UNIT_IN},
        {"2 1/8 in 3", 5, {17, 8}, RODT_UNIT_IN}, {"0", 1, {0, 1}, RODT_UNIT_IN},
    };
    const rodt_style style = {.unit = RODT_UNIT_IN};
    RODT_ENUM32(rodt_unit) unit = RODT_UNIT_END;
    rodt_length length = untouched;
    for (size_t i = 0; i < COUNT_OF(refused_texts); i++)
        assert_false(rodti_length_plain(refused_texts[i], NULL, &style, &length, &unit));
    assert_true(equal(length, 77, 78) && unit == RODT_UNIT_END);
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        const char *const ends[] = {cases[i].text + cases[i].size, NULL};
        for (size_t k = 0; k < (strlen(cases[i].text) == cases[i].size ? 2 : 1); k++) {
            assert_true(rodti_length_plain(cases[i].text, ends[k], &style, &length, &unit));
            assert_true(equal(length, cases[i].length.num, cases[i].length.den) && unit == cases[i].unit);
        }
    }
}

static void test_strict(void **state)
{
    (void)state;
    rodt_length length = untouched;
    rodt_error error = {.status = RODT_OK};
    RODT_ENUM32(rodt_unit) unit = RODT_UNIT_CM;
    assert_int_equal(rodt_length_parse_strict_n("31/8", 4, NULL, &length, &unit, &error), RODT_E_AMBIGUOUS);
    assert_true(equal(length, 77, 78) && unit == RODT_UNIT_CM);
    assert_int_equal(error.column, 1);
    assert_string_equal(error.text, "a blank may be lost here: write 2 1/4, not 21/4");
    assert_int_equal(rodt_length_parse_strict_n("3 1/8", 5, NULL, &length, &unit, &error), RODT_OK);
    assert_true(equal(length, 25, 8) && unit == RODT_UNIT_IN);
    assert_int_equal(rodt_length_parse_strict("x", &length, NULL), RODT_E_SYNTAX);
    assert_int_equal(rodt_length_parse_strict("x", NULL, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_parse_strict(NULL, &length, NULL), RODT_E_ARGUMENT);
    assert_true(equal(length, 25, 8));
}

/* A program with a decimal comma, where there is such a locale: the answers are the same. */
static void test_units(void **state)
{
    (void)state;
    static const struct { const char *text; rodt_unit unit; } words[] = {
        {"in", RODT_UNIT_IN}, {" Inches ", RODT_UNIT_IN}, {"\"", RODT_UNIT_IN}, {"po", RODT_UNIT_IN},
        {"MM", RODT_UNIT_MM}, {"millimetres", RODT_UNIT_MM}, {"cm", RODT_UNIT_CM}, {"centimeters", RODT_UNIT_CM}};
    for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
        RODT_ENUM32(rodt_unit) unit = RODT_UNIT_IN;
        assert_int_equal(rodt_unit_parse(words[i].text, &unit, NULL), RODT_OK);
        assert_int_equal(unit, words[i].unit);
    }
    RODT_ENUM32(rodt_unit) unit = RODT_UNIT_CM;
    rodt_error error = {.status = RODT_OK};
    assert_int_equal(rodt_unit_parse("furlong", &unit, &error), RODT_E_SYNTAX);
    assert_string_equal(error.text, "a unit of length is in, mm or cm");
    assert_int_equal(error.column, 1);
    assert_int_equal(rodt_unit_parse(" ", &unit, NULL), RODT_E_EMPTY);
    assert_int_equal(rodt_unit_parse(NULL, &unit, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_unit_parse("in", NULL, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_unit_parse_n("cm3", 2, &unit, NULL), RODT_OK);
    assert_int_equal(rodt_unit_find("inches", &unit), RODT_E_SYNTAX); /* what people write is no stable word */
    assert_int_equal(rodt_unit_find("", &unit), RODT_E_SYNTAX);
    assert_int_equal(unit, RODT_UNIT_CM);
    assert_string_equal(rodt_unit_name(RODT_UNIT_IN), "in");
    assert_string_equal(rodt_unit_name(RODT_UNIT_MM), "mm");
    assert_string_equal(rodt_unit_name(RODT_UNIT_CM), "cm");
    assert_string_equal(rodt_unit_name((rodt_unit)9), "");
}

/* A reserve that is ignored could never get a meaning. */
static void test_style_reserve(void **state)
{
    (void)state;
    const rodt_style style = {.reserved = {0, 1}}, of_pressure = {.pressure_unit = RODT_PRESSURE_UNIT_END},
                     unit = {.unit = RODT_UNIT_END};
    rodt_length out = untouched;
    assert_int_equal(rodt_length_parse_n("2", 1, &style, &out, NULL, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_parse_n("2", 1, &of_pressure, &out, NULL, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_parse_n("2", 1, &unit, &out, NULL, NULL), RODT_E_ARGUMENT);
    assert_true(equal(out, 77, 78));
}

static void test_locale_changes_nothing(void **state)
{
    static const char *const locales[] = {
        "de_DE.UTF-8", "fr_FR.UTF-8", "fr_CA.UTF-8", "es_ES.UTF-8", "nl_NL.UTF-8",
        "it_IT.UTF-8", "de_DE.utf8",  "fr_FR.utf8",  "pl_PL.UTF-8", ""};
    for (size_t i = 0; i < COUNT_OF(locales) && setlocale(LC_ALL, locales[i]) == NULL; i++)
        ;
    test_spellings(state);
    test_write_decimal(state);
    test_millimetres(state);
    assert_non_null(setlocale(LC_ALL, "C"));
}

/* The values that a fraction may have had before its blank was lost. */
static void test_lost_blank(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        RODT_ENUM32(rodt_unit) unit;
        const char *values[LOST_BLANK_MAX]; /* NULL = no more */
    } cases[] = {
        {"31/8", RODT_UNIT_IN, {"3 1/8"}},      {" +31/8 in ", RODT_UNIT_IN, {"3 1/8"}},
        {"31/8\"", RODT_UNIT_MM, {"3 1/8"}},      {"113/16", RODT_UNIT_IN, {"1 13/16", "11 3/16"}},
        {"11\u204416", RODT_UNIT_IN, {"1 1/16"}}, {"101/16", RODT_UNIT_IN, {"10 1/16"}},  {"11/16", RODT_UNIT_IN, {"1 1/16"}},
        {"31/8", RODT_UNIT_MM, {NULL}},           {"38/8", RODT_UNIT_IN, {NULL}},
        {"32/8", RODT_UNIT_IN, {NULL}},         {"30/8", RODT_UNIT_IN, {NULL}},
        {"3 1/8", RODT_UNIT_IN, {NULL}},        {"31/10", RODT_UNIT_IN, {NULL}},
        {"1131/16", RODT_UNIT_IN, {NULL}},      {"7/8", RODT_UNIT_IN, {NULL}},
        {"31/128", RODT_UNIT_IN, {NULL}},       {"31/8 mm", RODT_UNIT_IN, {NULL}},
        {"31/8x", RODT_UNIT_IN, {NULL}},        {"", RODT_UNIT_IN, {NULL}},
        {"31/2", RODT_UNIT_IN, {"3 1/2"}},      {"31/1", RODT_UNIT_IN, {NULL}},
        {"31/64", RODT_UNIT_IN, {"3 1/64"}},    {"109/16", RODT_UNIT_IN, {"10 9/16"}},
        {"999/16", RODT_UNIT_IN, {"99 9/16"}},  {"1001/16", RODT_UNIT_IN, {NULL}},
        {"31\u00A0mm", RODT_UNIT_IN, {NULL}},    {"1/8", RODT_UNIT_IN, {NULL}},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_length values[LOST_BLANK_MAX];
        char text[RODT_LENGTH_TEXT_SIZE];
        size_t count = rodti_lost_blank_values(cases[i].text, strlen(cases[i].text), cases[i].unit, values);
        for (size_t k = 0; k < LOST_BLANK_MAX; k++) {
            assert_int_equal(k < count, cases[i].values[k] != NULL);
            if (k < count && rodt_length_format(values[k], text, sizeof text, NULL) == RODT_OK)
                assert_string_equal(text, cases[i].values[k]);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_spellings),
        cmocka_unit_test(test_lost_blank),
        cmocka_unit_test(test_reasons),
        cmocka_unit_test(damaged_digits_are_named),
        cmocka_unit_test(test_unit_words),
        cmocka_unit_test(test_decimals),
        cmocka_unit_test(test_decimal_comma),
        cmocka_unit_test(test_unit_of_the_form),
        cmocka_unit_test(test_bounded_text),
        cmocka_unit_test(test_round_trips),
        cmocka_unit_test(test_millimetres),
        cmocka_unit_test(test_write),
        cmocka_unit_test(test_write_decimal),
        cmocka_unit_test(test_add_and_subtract),
        cmocka_unit_test(test_compare),
        cmocka_unit_test(test_scale_and_round),
        cmocka_unit_test(test_make),
        cmocka_unit_test(test_ends_of_lengths),
        cmocka_unit_test(test_strict),
        cmocka_unit_test(test_plain_lengths),
        cmocka_unit_test(test_units),
        cmocka_unit_test(test_style_reserve),
        cmocka_unit_test(test_locale_changes_nothing),
    };
    return cmocka_run_group_tests_name("length", tests, NULL, NULL);
}
