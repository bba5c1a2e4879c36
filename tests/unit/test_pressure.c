/* SPDX-License-Identifier: Apache-2.0 */
/* Gauge pressures: made, read, compared, written. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>

#include <cmocka.h>

#include "core/common.h"
#include "quantity/pressure_plain.h"
#include "rodtravel/pressure.h"
#include "support.h"

#include <string.h>

static const rodt_pressure untouched = {77, 78};

static bool equal(rodt_pressure pressure, int64_t num, int64_t den)
{
    return pressure.num == num && pressure.den == den;
}

static void test_read(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        int64_t num, den;
    } cases[] = {
        {"95", 95, 1},
        {"95 psi", 95, 1},
        {"95PSI", 95, 1},
        {"92.5 psi", 185, 2},
        {"92 1/2", 185, 2},
        {" 100 psig ", 100, 1},
        {"0", 0, 1},
        {"300", 300, 1},
        {"+300", 300, 1},
        {"+95", 95, 1},
        /* 655 kPa: 655 * 1290320000000 / 8896443230521, by hand in lowest terms */
        {"655 kPa", INT64_C(845159600000000), INT64_C(8896443230521)},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_pressure pressure = untouched;
        if (rodt_pressure_parse(cases[i].text, &pressure, NULL) != RODT_OK ||
            !equal(pressure, cases[i].num, cases[i].den))
            fail_msg("\"%s\" was read as %lld/%lld", cases[i].text, (long long)pressure.num,
                     (long long)pressure.den);
        assert_true(is_canonical(pressure.num, pressure.den));
    }
}

#define TOO_HIGH "no brake gauge shows more than 300 psi; is a decimal point lost?"

static void test_refuse(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        rodt_status status;
        uint32_t column;
        const char *sentence; /* NULL: as of lengths */
    } cases[] = {
        {"", RODT_E_EMPTY, 0, NULL},
        {"n/a", RODT_E_EMPTY, 1, NULL},
        {"95 in", RODT_E_UNIT, 4, NULL},
        {"95 mm", RODT_E_UNIT, 4, NULL},
        {"6.5 bar", RODT_E_UNIT, 5, NULL},
        {"95 psi kPa", RODT_E_UNIT, 8, NULL},
        {"90-100", RODT_E_AMBIGUOUS, 4, NULL},
        {"90 to 100 psi", RODT_E_AMBIGUOUS, 4, NULL},
        {">90", RODT_E_AMBIGUOUS, 1, NULL},
        {"92,5", RODT_E_AMBIGUOUS, 3, NULL},
        {"-5", RODT_E_NEGATIVE, 1, NULL},
        {"301", RODT_E_IMPLAUSIBLE, 1, TOO_HIGH},
        {"300.01", RODT_E_IMPLAUSIBLE, 1, NULL},
        {"2069 kPa", RODT_E_IMPLAUSIBLE, 1, TOO_HIGH},
        {"9 5", RODT_E_SYNTAX, 3, NULL},
        {"95 p s i", RODT_E_SYNTAX, 4, "psi, kPa or the end of the text was expected here, not p"},
        {"9O", RODT_E_SYNTAX, 2, NULL},
        {"45293", RODT_E_DATE_CELL, 1, NULL},
        {"18446744073709551711", RODT_E_IMPLAUSIBLE, 1, TOO_HIGH},
        {"95.0000000000001", RODT_E_RANGE, 4, NULL},
        {"999999999.999999999 kPa", RODT_E_RANGE, 1,
         "there are more digits than a reading can have"}, /* its psi do not fit */
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_pressure pressure = untouched;
        rodt_error error = {0};
        rodt_status status = rodt_pressure_parse(cases[i].text, &pressure, &error);
        if (status != cases[i].status || error.column != cases[i].column || error.status != status)
            fail_msg("\"%s\": status %d column %u (%s)", cases[i].text, (int)status, (unsigned)error.column,
                     error.text);
        assert_true(equal(pressure, 77, 78));
        if (cases[i].sentence != NULL)
            assert_string_equal(error.text, cases[i].sentence);
        assert_true(error.text[0] != '\0');
    }
}

static void test_read_bounded_and_comma(void **state)
{
    (void)state;
    rodt_pressure pressure = untouched;
    assert_int_equal(rodt_pressure_parse_n("955", 2, NULL, &pressure, NULL, NULL), RODT_OK);
    assert_true(equal(pressure, 95, 1));
    assert_int_equal(rodt_pressure_parse_n("92,5 psi", 8, &(rodt_style){.decimal_comma = true}, &pressure, NULL, NULL),
                     RODT_OK);
    assert_true(equal(pressure, 185, 2));
    assert_int_equal(rodt_pressure_parse_n("95", 2, NULL, NULL, NULL, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_pressure_parse(NULL, &pressure, NULL), RODT_E_ARGUMENT);
}

/* A unit in the text is stronger than that of the form. */
static void test_unit_that_was_written(void **state)
{
    (void)state;
    const rodt_style kpa = {.unit = RODT_UNIT_MM, .pressure_unit = RODT_PRESSURE_UNIT_KPA};
    rodt_pressure bare, named;
    RODT_ENUM32(rodt_pressure_unit) unit = RODT_PRESSURE_UNIT_PSI;
    assert_int_equal(rodt_pressure_parse_n("650", 3, &kpa, &bare, &unit, NULL), RODT_OK);
    assert_int_equal(unit, RODT_PRESSURE_UNIT_KPA);
    assert_int_equal(rodt_pressure_parse("650 kPa", &named, NULL), RODT_OK);
    assert_int_equal(rodt_pressure_compare(bare, named), 0);
    assert_int_equal(rodt_pressure_parse_n("95 psi", 6, &kpa, &named, &unit, NULL), RODT_OK);
    assert_int_equal(unit, RODT_PRESSURE_UNIT_PSI);
    assert_true(equal(named, 95, 1));
    assert_int_equal(rodt_pressure_parse_n("650 kPa", 7, NULL, &named, &unit, NULL), RODT_OK);
    assert_int_equal(unit, RODT_PRESSURE_UNIT_KPA);
    const rodt_style unknown = {.pressure_unit = (rodt_pressure_unit)2}, reserved = {.reserved = {0, 1}};
    assert_int_equal(rodt_pressure_parse_n("95", 2, &unknown, &named, &unit, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_pressure_parse_n("95", 2, &reserved, &named, &unit, NULL), RODT_E_ARGUMENT);
}

/* What is plain, and what is not: another unit, more than a gauge shows. */
static void test_plain_pressures(void **state)
{
    (void)state;
    static const char *const texts[] = {"95 x", "301", "655 kPa", "300.1 psi", "x"};
    const rodt_style style = {.pressure_unit = RODT_PRESSURE_UNIT_PSI}, kpa = {.pressure_unit = RODT_PRESSURE_UNIT_KPA};
    static const char text[] = "95.5 PSI 3";
    RODT_ENUM32(rodt_pressure_unit) unit = RODT_PRESSURE_UNIT_END;
    rodt_pressure pressure = untouched;
    for (size_t i = 0; i < COUNT_OF(texts); i++)
        assert_false(rodti_pressure_plain(texts[i], NULL, &style, &pressure, &unit));
    assert_false(rodti_pressure_plain("95", NULL, &kpa, &pressure, &unit));
    assert_true(equal(pressure, 77, 78) && unit == RODT_PRESSURE_UNIT_END);
    assert_true(rodti_pressure_plain("95.5 PSI ", NULL, &style, &pressure, &unit));
    assert_true(equal(pressure, 191, 2) && unit == RODT_PRESSURE_UNIT_PSI);
    assert_true(rodti_pressure_plain("300", NULL, &style, &pressure, &unit));
    assert_true(equal(pressure, 300, 1));
    assert_true(rodti_pressure_plain(text, text + 9, &kpa, &pressure, &unit));
    assert_true(equal(pressure, 191, 2));
    assert_true(rodti_pressure_plain(text, text + 2, &style, &pressure, &unit));
    assert_true(equal(pressure, 95, 1));
}

static void check_as_read(const char *text, const char *expected)
{
    rodt_pressure pressure, again;
    RODT_ENUM32(rodt_pressure_unit) unit;
    char written[RODT_PRESSURE_TEXT_SIZE];
    assert_int_equal(rodt_pressure_parse_n(text, strlen(text), NULL, &pressure, &unit, NULL), RODT_OK);
    assert_int_equal(
        rodt_pressure_format_unit(pressure, (rodt_pressure_unit)unit, written, sizeof written, NULL), RODT_OK);
    assert_string_equal(written, expected);
    assert_int_equal(rodt_pressure_parse(written, &again, NULL), RODT_OK);
    assert_int_equal(rodt_pressure_compare(again, pressure), 0);
}

static void test_write_as_it_was_read(void **state)
{
    (void)state;
    char text[RODT_PRESSURE_TEXT_SIZE] = "#";
    rodt_ratio number;
    rodt_pressure finer;
    assert_int_equal(rodt_pressure_from_kpa(6501234567, 10000000, &finer), RODT_OK);
    assert_int_equal(rodt_pressure_format_unit(finer, RODT_PRESSURE_UNIT_KPA, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, "94 2601634980170/8896443230521 psi"); /* seven decimals are no short number */
    check_as_read("650 kPa", "650 kPa");
    check_as_read("650.5 kPa", "650.5 kPa");
    check_as_read("0.05 kpa", "0.05 kPa");
    check_as_read("0 kPa", "0 kPa");
    check_as_read("650.123456 kPa", "650.123456 kPa");
    check_as_read("95", "95 psi");
    check_as_read("92.5 psi", "92 1/2 psi");
    assert_int_equal(
        rodt_pressure_format_unit((rodt_pressure){95, 1}, RODT_PRESSURE_UNIT_KPA, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, "95 psi"); /* it has no short number of kPa, so it was not read in kPa */
    assert_int_equal(rodt_pressure_format_unit((rodt_pressure){95, 1}, (rodt_pressure_unit)2, text, 9, NULL),
                     RODT_E_ARGUMENT);
    assert_int_equal(rodt_pressure_format_unit((rodt_pressure){0}, RODT_PRESSURE_UNIT_PSI, text, 9, NULL),
                     RODT_E_ARGUMENT);
    assert_int_equal(rodt_pressure_format_unit((rodt_pressure){95, 1}, RODT_PRESSURE_UNIT_PSI, text, 6, NULL),
                     RODT_E_SPACE);
    assert_int_equal(rodt_pressure_convert((rodt_pressure){1, 1}, RODT_PRESSURE_UNIT_KPA, &number), RODT_OK);
    assert_true(number.num == INT64_C(8896443230521) && number.den == INT64_C(1290320000000));
    assert_int_equal(rodt_pressure_convert((rodt_pressure){185, 2}, RODT_PRESSURE_UNIT_PSI, &number), RODT_OK);
    assert_true(number.num == 185 && number.den == 2);
    assert_int_equal(rodt_pressure_convert((rodt_pressure){1, 1}, RODT_PRESSURE_UNIT_KPA, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_pressure_convert((rodt_pressure){0}, RODT_PRESSURE_UNIT_KPA, &number), RODT_E_ARGUMENT);
    assert_int_equal(rodt_pressure_convert((rodt_pressure){1, 1}, (rodt_pressure_unit)2, &number), RODT_E_ARGUMENT);
    assert_int_equal(rodt_pressure_convert((rodt_pressure){INT64_MAX, 1}, RODT_PRESSURE_UNIT_KPA, &number),
                     RODT_E_RANGE);
    /* What has no exact number of kPa is said in psi; a vacuum is no gauge pressure. */
    assert_int_equal(rodt_pressure_format_unit((rodt_pressure){INT64_MAX, 1}, RODT_PRESSURE_UNIT_KPA, text, sizeof text,
                                               NULL), RODT_OK);
    assert_string_equal(text, "9223372036854775807 psi");
    assert_int_equal(rodt_pressure_format_unit((rodt_pressure){-95, 1}, RODT_PRESSURE_UNIT_PSI, text, sizeof text, NULL),
                     RODT_E_ARGUMENT);
}

/* 1 psi = 6.894757 kPa to seven digits: NIST SP 811, appendix B.8. */
static void test_kilopascals(void **state)
{
    (void)state;
    rodt_pressure low;
    rodt_pressure high;
    rodt_pressure psi;
    assert_int_equal(rodt_pressure_from_kpa(68947565, 10000000, &low), RODT_OK);
    assert_int_equal(rodt_pressure_from_kpa(68947575, 10000000, &high), RODT_OK);
    assert_int_equal(rodt_pressure_from_psi(1, 1, &psi), RODT_OK);
    assert_int_equal(rodt_pressure_compare(low, psi), -1);
    assert_int_equal(rodt_pressure_compare(high, psi), 1);
    assert_int_equal(rodt_pressure_from_kpa(INT64_C(8896443230521), INT64_C(1290320000000), &low), RODT_OK);
    assert_true(equal(low, 1, 1));
}

static void test_make_and_compare(void **state)
{
    (void)state;
    rodt_pressure out = untouched;
    assert_int_equal(rodt_pressure_from_psi(1, 0, &out), RODT_E_ARGUMENT);
    assert_int_equal(rodt_pressure_from_kpa(1, 0, &out), RODT_E_ARGUMENT);
    assert_int_equal(rodt_pressure_from_psi(1, 1, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_pressure_from_kpa(1, 1, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_pressure_from_psi(INT64_MIN, -1, &out), RODT_E_RANGE);
    assert_int_equal(rodt_pressure_from_kpa(INT64_MIN, -1, &out), RODT_E_RANGE);
    assert_int_equal(rodt_pressure_from_kpa(INT64_MAX - 1, 1, &out), RODT_E_RANGE);
    assert_true(equal(out, 77, 78));
    assert_int_equal(rodt_pressure_compare((rodt_pressure){0}, (rodt_pressure){0, 1}), -1);
    assert_int_equal(rodt_pressure_compare((rodt_pressure){90, 1}, (rodt_pressure){179, 2}), 1);
    assert_int_equal(rodt_pressure_compare((rodt_pressure){0}, (rodt_pressure){0}), 0);
}

static void test_write(void **state)
{
    (void)state;
    char text[RODT_PRESSURE_TEXT_SIZE] = "#";
    assert_int_equal(rodt_pressure_format((rodt_pressure){185, 2}, text, 6, NULL), RODT_E_SPACE);
    assert_int_equal(rodt_pressure_format((rodt_pressure){0}, text, sizeof text, NULL), RODT_E_ARGUMENT);
    assert_string_equal(text, "#");
    assert_int_equal(rodt_pressure_format((rodt_pressure){185, 2}, text, 7, NULL), RODT_OK);
    assert_string_equal(text, "92 1/2");
    assert_int_equal(rodt_pressure_format((rodt_pressure){95, 1}, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, "95");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_read),
        cmocka_unit_test(test_refuse),
        cmocka_unit_test(test_read_bounded_and_comma),
        cmocka_unit_test(test_unit_that_was_written),
        cmocka_unit_test(test_write_as_it_was_read),
        cmocka_unit_test(test_plain_pressures),
        cmocka_unit_test(test_kilopascals),
        cmocka_unit_test(test_make_and_compare),
        cmocka_unit_test(test_write),
    };
    return cmocka_run_group_tests_name("pressure", tests, NULL, NULL);
}
