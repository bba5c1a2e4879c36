/* SPDX-License-Identifier: Apache-2.0 */
/* The fast paths of the readers against the grammar behind them: a sign or a blank before a text says nothing, and only
 * the fast paths refuse it. So every text is read twice, and both times must come to the same. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "core/number_plain.h"
#include "rodtravel/rodtravel.h"
#include "support.h"

/* Drawn texts; an argument asks for more. */
static size_t texts = 1000;

#define TEXT_ROOM 64

/* --- What is plain ----------------------------------------------------------------------------------- */

typedef struct plain_case {
    const char *text;
    uint32_t num;
    uint32_t den; /* 0 = it is not plain */
    const char *rest;
} plain_case;

static const plain_case cases[] = {
    {"0", 0, 1, ""},          {"2", 2, 1, ""},         {"24", 24, 1, ""},       {"609", 609, 1, ""},
    {"2 in", 2, 1, "in"},     {"2\tin", 2, 1, "in"},   {"2.5", 25, 10, ""},     {"2.125mm", 2125, 1000, "mm"},
    {"0.5", 5, 10, ""},       {"1.123456", 1123456, 1000000, ""},               {"1.500000 cm", 1500000, 1000000, "cm"},
    {"3/8", 3, 8, ""},        {"9/8", 9, 8, ""},       {"2 1/8", 17, 8, ""},    {"2  1/8 in", 17, 8, "in"},
    {"2-1/8", 17, 8, ""},     {"12 13/16", 205, 16, ""},                        {"1 1/512", 513, 512, ""},
    {"2\xC2\xBD", 5, 2, ""},  {"2 \xC2\xBC in", 9, 4, "in"},                    {"\xC2\xBE", 3, 4, ""},
    {"5/8 of an inch", 5, 8, "of an inch"},            {"1,5", 1, 1, ",5"},     {"1/8/24", 1, 8, "/24"},
    {"2-", 0, 0, ""},         {"2-x", 0, 0, ""},       {"", 0, 0, ""},          {" 2", 0, 0, ""},
    {"+2", 0, 0, ""},         {"x", 0, 0, ""},         {"02", 0, 0, ""},        {"00", 0, 0, ""},
    {"1000", 0, 0, ""},       {"2.", 0, 0, ""},        {".5", 0, 0, ""},        {"1.1234567", 0, 0, ""},
    {"31/8", 0, 0, ""},       {"1/0", 0, 0, ""},       {"1/1", 0, 0, ""},       {"1/3", 0, 0, ""},
    {"1/08", 0, 0, ""},       {"1/", 0, 0, ""},        {"1/x", 0, 0, ""},       {"2 3", 0, 0, ""},
    {"2 3x", 0, 0, ""},       {"2 9/8", 0, 0, ""},     {"2 8/8", 0, 0, ""},     {"2 01/8", 0, 0, ""},
    {"2 1/3", 0, 0, ""},      {"2 1/", 0, 0, ""},      {"2 1234/8", 0, 0, ""},  {"2\xC2\xA0" "1/8", 0, 0, ""},
    {"1/2", 1, 2, ""},        {"2 1/2", 5, 2, ""},       {"2.59", 259, 100, ""},   {"909 9/16", 14553, 16, ""},                        {"\xC3\xBD", 0, 0, ""},
    {"2\xC2", 0, 0, ""},      {"\xC2", 0, 0, ""},      {"2\xE2\x80\xB3", 2, 1, "\xE2\x80\xB3"}};

/* Closed by a zero byte, and in a room of exactly its size, where reading on is seen by the sanitizers. */
static void check_plain(const plain_case *wanted)
{
    char room[TEXT_ROOM];
    const size_t size = strlen(wanted->text);
    plain_number read = {77, 78, false}, other = read;
    char *const text = room + sizeof room - size;
    memcpy(text, wanted->text, size);
    const char *rest = rodti_number_plain(wanted->text, NULL, false, &read);
    const char *exact = rodti_number_plain(text, text + size, false, &other);
    assert_int_equal(rest != NULL, wanted->den != 0);
    assert_int_equal(exact != NULL, wanted->den != 0);
    if (rest == NULL)
        return;
    assert_string_equal(rest, wanted->rest);
    assert_int_equal(text + size - exact, strlen(wanted->rest));
    assert_int_equal(read.num, wanted->num);
    assert_int_equal(read.den, wanted->den);
    assert_int_equal(other.num, wanted->num);
    assert_int_equal(other.den, wanted->den);
    assert_int_equal(read.is_fraction, read.den > 1 && (read.den & (read.den - 1)) == 0);
    assert_int_equal(read.is_fraction, other.is_fraction);
}

static void plain_numbers(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++)
        check_plain(&cases[i]);
}

/* What stands behind the end of a text is no part of it. */
static void plain_numbers_end(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        size_t size;
        uint32_t num, den; /* 0 = it is not plain */
    } ends[] = {{"25", 1, 2, 1},        {"2.55", 3, 25, 10},  {"2.5", 2, 0, 0},         {"2 1/8", 1, 2, 1},   {"2 1/8", 2, 2, 1},
                {"2 1/8", 3, 0, 0},     {"2 1/8", 4, 0, 0},   {"2 1/16", 5, 0, 0},      {"2-1/8", 2, 0, 0},   {"1/81", 3, 1, 8},
                {"1/8", 2, 0, 0},       {"\xC2\xBD", 1, 0, 0}, {"2\xC2\xBD", 2, 0, 0},  {"2\xC2\xBD", 3, 5, 2}, {"2", 0, 0, 0},
                {"2 \xC2\xBD", 2, 2, 1}, {"2  x", 3, 2, 1},   {"2\t\tx", 3, 2, 1}};
    for (size_t i = 0; i < sizeof ends / sizeof ends[0]; i++) {
        plain_number got = {77, 78, false};
        const char *end = ends[i].text + ends[i].size, *rest = rodti_number_plain(ends[i].text, end, false, &got);
        assert_ptr_equal(rest, ends[i].den != 0 ? end : NULL);
        if (rest != NULL)
            assert_true(got.num == ends[i].num && got.den == ends[i].den);
    }
    static const char blanks[] = "2 in  x";
    assert_ptr_equal(rodti_plain_end(blanks + 2, blanks + 6), blanks + 4);
    assert_ptr_equal(rodti_plain_end(blanks + 4, blanks + 6), blanks + 4);
    assert_ptr_equal(rodti_plain_end(blanks + 2, NULL), blanks + 7);
}

/* What is read all at a time is read alike, and is read so. A text is in a room of exactly its size. */
static void decimals_alone(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        bool is_read;
    } texts_of[] = {
        {"2.59", true},        {"0.50", true},        {"1.123", true},     {"1.1234", true},   {"1.123456", true},
        {"609.1", true},       {"24.12345", true},    {"1.12345", false},  {"2.5", false},     {"609.123456", true},
        {"1.1234567", false},  {"609.", false},       {"02.5", false},     {"6090.5", false},  {"x.55", false},
        {"2.5x", false},       {"2.55555x", false},   {"2.x55", false},    {"2x55", false},    {"2.55 ", false},
        {"2,55", false},       {"/.55", false},       {"2.5:5", false},    {"2.5/5", false},   {"1/16", false},
        {"1:.25", false}};
    for (size_t i = 0; i < sizeof texts_of / sizeof texts_of[0]; i++) {
        char room[TEXT_ROOM];
        const size_t size = strlen(texts_of[i].text);
        char *const text = room + sizeof room - size;
        plain_number read = {77, 78, true}, other = read;
        memcpy(text, texts_of[i].text, size);
        const bool is_read = number_decimals(text, size, false, &read);
        if (is_read || NUMBER_DECIMALS)
            assert_int_equal(is_read, texts_of[i].is_read);
        if (!is_read)
            continue;
        assert_ptr_equal(rodti_number_plain(text, text + size, false, &other), text + size);
        assert_true(read.num == other.num && read.den == other.den && read.is_fraction == other.is_fraction);
    }
    plain_number read = {77, 78, true};
    assert_int_equal(number_decimals("2,59", 4, true, &read), NUMBER_DECIMALS);
    assert_int_equal(read.num, NUMBER_DECIMALS ? 259 : 77);
}

static uint64_t word_of(const char *text, size_t size)
{
    uint64_t word = 0;
    for (size_t i = 0; i < size && i < sizeof word; i++)
        word |= (uint64_t)(unsigned char)text[i] << 8 * i;
    return word;
}

static void compare_word(const char *text, size_t size, bool decimal_comma)
{
    const word_decimal read = number_decimal_word(word_of(text, size), (unsigned)size, decimal_comma);
    plain_number other = {0};
    const char *end = size > 0 ? rodti_number_plain(text, text + size, decimal_comma, &other) : NULL;
    const bool is_decimal = end == text + size && !other.is_fraction && other.den > 1 && text[size - 1] != ' ';
    if (read.is_read != (is_decimal && size <= 8))
        fail_msg("\"%s\" is %sread from its word", text, read.is_read ? "" : "not ");
    if (!read.is_read)
        return;
    assert_int_equal(read.num, other.num);
    assert_int_equal(rodti_power_of_ten[read.decimals], other.den);
}

/* Every short text of some characters, and longer ones in which one character is another. */
static void decimals_in_a_word(void **state)
{
    (void)state;
    static const char characters[] = "0129.,/:x -\x80";
    static const char *const longer[] = {"2.123456", "12.12345", "123.1234", "1.12345",   "12.1234", "123.123",
                                         "2.1234567", "1234.123", "609.5",   "2.123456 ", "99.9999", "00000000"};
    const size_t count = sizeof characters - 1;
    for (size_t number = 0; NUMBER_DECIMALS && number < count * count * count * count * count; number++) {
        char text[6] = "";
        size_t size = 0;
        for (size_t rest = number; size < 5; rest /= count)
            text[size++] = characters[rest % count];
        for (size = 0; size <= 5; size++) {
            char part[6] = "";
            memcpy(part, text, size);
            compare_word(part, size, false);
            compare_word(part, size, true);
        }
    }
    for (size_t i = 0; NUMBER_DECIMALS && i < sizeof longer / sizeof longer[0]; i++) {
        const size_t size = strlen(longer[i]);
        compare_word(longer[i], size, false);
        for (size_t at = 0; at < size; at++) {
            for (size_t k = 0; k < count; k++) {
                char text[12] = "";
                memcpy(text, longer[i], size);
                text[at] = characters[k];
                compare_word(text, size, false);
                compare_word(text, size, true);
            }
        }
    }
}

static void other_decimal_sign(void **state)
{
    (void)state;
    plain_number read;
    assert_string_equal(rodti_number_plain("2,5 in", NULL, true, &read), "in");
    assert_int_equal(read.num, 25);
    assert_int_equal(read.den, 10);
    assert_string_equal(rodti_number_plain("2.5", NULL, true, &read), ".5");
    assert_false(read.is_fraction);
}

/* --- The same by both ways --------------------------------------------------------------------------- */

static bool starts_with_digit(const char *text) { return text[0] >= '0' && text[0] <= '9'; }

static void compare_length(const char *text, const char *other, const rodt_style *style)
{
    rodt_length read = {77, 78}, again = read;
    RODT_ENUM32(rodt_unit) unit = RODT_UNIT_END, other_unit = RODT_UNIT_END;
    rodt_status status = rodt_length_parse_n(text, strlen(text), style, &read, &unit, NULL);
    rodt_status other_status = rodt_length_parse_n(other, strlen(other), style, &again, &other_unit, NULL);
    if ((status == RODT_OK) != (other_status == RODT_OK) || read.num != again.num || read.den != again.den ||
        unit != other_unit)
        fail_msg("\"%s\" is another length by the full reader", text);
    status = rodt_length_parse_strict_n(text, strlen(text), style, &read, NULL, NULL);
    other_status = rodt_length_parse_strict_n(other, strlen(other), style, &again, NULL, NULL);
    assert_int_equal(status == RODT_OK, other_status == RODT_OK);
}

static void compare_pressure(const char *text, const char *other, const rodt_style *style)
{
    rodt_pressure read = {77, 78}, again = read;
    RODT_ENUM32(rodt_pressure_unit) unit = RODT_PRESSURE_UNIT_END, other_unit = RODT_PRESSURE_UNIT_END;
    rodt_status status = rodt_pressure_parse_n(text, strlen(text), style, &read, &unit, NULL);
    rodt_status other_status = rodt_pressure_parse_n(other, strlen(other), style, &again, &other_unit, NULL);
    if ((status == RODT_OK) != (other_status == RODT_OK) || read.num != again.num || read.den != again.den ||
        unit != other_unit)
        fail_msg("\"%s\" is another pressure by the full reader", text);
}

static void compare_all(const char *text)
{
    char other[2 * TEXT_ROOM];
    snprintf(other, sizeof other, "+%s", text);
    for (int setting = 0; setting < 6 && starts_with_digit(text); setting++) {
        const rodt_style style = {.unit = (rodt_unit)(setting / 2),
                                  .pressure_unit = (rodt_pressure_unit)(setting / 2 % RODT_PRESSURE_UNIT_END),
                                  .decimal_comma = setting % 2 != 0};
        compare_length(text, other, &style);
        compare_pressure(text, other, &style);
    }
}

/* Every text of the cases, and random ones made of what numbers and units are made of. */
static void spellings(void **state)
{
    (void)state;
    csv_file file;
    char *cells[6];
    unsigned count = 0;
    csv_open(&file, CASES "/spellings.csv");
    for (; csv_read_case(&file, cells, 6, "id"); count++) {
        compare_all(cells[1]);
    }
    csv_close(&file);
    assert_true(count > 100);
}

static void random_texts(void **state)
{
    (void)state;
    static const char *const pieces[] = {"0", "1", "2", "3", "8", "16", "64", "25", "127", "9", "5", ".", ",", "/", " ",
                                         "-", " ", "/", ".", "in", "mm", "cm", "\"", " in", " psi", "kPa", "\xC2\xBD", "\t",
                                         "\xE2\x85\x9B", "00", "000", "\xC2\xA0", "\n", "of an inch", "/8", "x"};
    uint64_t seed = 20261129;
    for (size_t i = 0; i < texts; i++) {
        char text[TEXT_ROOM] = "";
        for (uint64_t k = 1 + chance(&seed) % 7; k > 0; k--)
            strncat(text, pieces[chance(&seed) % (sizeof pieces / sizeof pieces[0])], sizeof text - strlen(text) - 1);
        compare_all(text);
    }
}

/* A day in ISO form and a bare size, with a blank before them, by the full readers. */
static void days_and_sizes(void **state)
{
    (void)state;
    static const char digits[] = "0123456789-/x ";
    uint64_t seed = 11;
    for (size_t i = 0; i < texts; i++) {
        char text[16];
        rodt_date day = {1, 1, 1}, other = day;
        snprintf(text, sizeof text, " %04u-%02u-%02u", 1895 + (unsigned)(chance(&seed) % 310),
                 (unsigned)(chance(&seed) % 14), (unsigned)(chance(&seed) % 33));
        if (chance(&seed) % 2 != 0)
            text[1 + chance(&seed) % 10] = digits[chance(&seed) % (sizeof digits - 1)];
        rodt_date_order order = (rodt_date_order)(chance(&seed) % RODT_DATE_ORDER_END);
        rodt_status status = rodt_date_parse_n(text + 1, 10, order, &day, NULL);
        assert_int_equal(status, rodt_date_parse_n(text, 11, order, &other, NULL));
        assert_memory_equal(&day, &other, sizeof day);
    }
    for (unsigned a = 1; a < 127; a++) {
        for (unsigned b = 0; b < 127; b++) {
            const char text[] = {' ', (char)a, (char)b, '\0'};
            rodt_chamber read = {0}, again = {0};
            rodt_status status = rodt_chamber_parse_n(text + 1, strlen(text) - 1, &read, NULL);
            assert_int_equal(rodt_chamber_parse_n(text, strlen(text), &again, NULL), status);
            assert_memory_equal(&read, &again, sizeof read);
        }
    }
}

/* A text that is not plain, and one that says nothing, in a form. */
static void texts_of_a_form(void **state)
{
    (void)state;
    const rodt_form form = {.chamber = "30", .released = "\xE2\x85\x9D", .applied = "\x01", .psi = "", .division = " "};
    rodt_reading reading;
    rodt_error error;
    assert_int_equal(rodt_form_parse(&form, &reading, &error), RODT_OK);
    assert_true(reading.released.num == 5 && reading.released.den == 8);
    assert_string_equal(error.field, "applied");
    assert_false(rodt_length_given(reading.division));
    assert_false(rodt_pressure_given(reading.pressure));
}

int main(int count, char **words)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(plain_numbers), cmocka_unit_test(plain_numbers_end),
                                       cmocka_unit_test(decimals_alone), cmocka_unit_test(decimals_in_a_word),
                                       cmocka_unit_test(other_decimal_sign),
                                       cmocka_unit_test(spellings), cmocka_unit_test(random_texts), cmocka_unit_test(days_and_sizes),
                                       cmocka_unit_test(texts_of_a_form)};
    if (count > 1)
        texts = strtoul(words[1], NULL, 10);
    return cmocka_run_group_tests_name("plain", tests, NULL, NULL);
}
