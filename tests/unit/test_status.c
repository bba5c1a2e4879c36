/* SPDX-License-Identifier: Apache-2.0 */
/* Sentences of statuses and the version. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>

#include <cmocka.h>

#include "core/common.h"
#include "rodtravel/rodtravel.h"

#include <string.h>

/* Written out by hand: a code that is forgotten in the library's list is found here. */
static const rodt_status named[] = {
    RODT_OK,          RODT_E_ARGUMENT,      RODT_E_SPACE,           RODT_E_EMPTY,    RODT_E_SYNTAX,
    RODT_E_AMBIGUOUS, RODT_E_UNIT,          RODT_E_DATE_CELL,       RODT_E_NEGATIVE, RODT_E_IMPLAUSIBLE,
    RODT_E_RANGE,     RODT_E_UNKNOWN_RULES, RODT_E_UNKNOWN_CHAMBER, RODT_E_TABLE,    RODT_E_LAXER,
    RODT_E_MEMORY,    RODT_E_INTERNAL,
};

static bool is_named(int code)
{
    for (size_t i = 0; i < COUNT_OF(named); i++) {
        if ((int)named[i] == code)
            return true;
    }
    return false;
}

static void test_every_status_has_its_sentence(void **state)
{
    (void)state;
    for (size_t i = 0; i < COUNT_OF(named); i++) {
        const char *text = rodt_status_text(named[i]);
        assert_true(strlen(text) >= 4);
        assert_true(text[strlen(text) - 1] != '.');
        assert_string_not_equal(text, "unknown status");
        for (size_t j = 0; j < i; j++)
            assert_string_not_equal(text, rodt_status_text(named[j]));
    }
}

static void test_other_numbers_are_unknown(void **state)
{
    (void)state;
    int unknown = 0;
    for (int code = -3; code <= (int)RODT_STATUS_END + 1; code++) {
        if (is_named(code))
            continue;
        assert_string_equal(rodt_status_text((rodt_status)code), "unknown status");
        unknown++;
    }
    assert_int_equal(unknown, 3 + 2 + (int)RODT_STATUS_END - (int)COUNT_OF(named));
    assert_string_equal(rodt_status_text((rodt_status)INT32_MAX), "unknown status");
    assert_string_equal(rodt_status_text((rodt_status)INT32_MIN), "unknown status");
}

/* Numbers are stable: they are kept in files and by other languages. */
static void test_numbers_stay(void **state)
{
    (void)state;
    static const int numbers[] = {0, 1, 2, 10, 11, 12, 13, 14, 15, 16, 17, 20, 21, 30, 31, 40, 50};
    assert_int_equal(COUNT_OF(numbers), COUNT_OF(named));
    for (size_t i = 0; i < COUNT_OF(numbers); i++)
        assert_int_equal((int)named[i], numbers[i]);
}

static void test_words_of_what_is_recorded(void **state)
{
    (void)state;
    static const char *const words[] = {"not-recorded", "no", "yes"};
    for (int number = 0; number <= RODT_RECORDED_END; number++)
        assert_string_equal(rodt_recorded_name((rodt_recorded)number), number < RODT_RECORDED_END ? words[number] : "");
    assert_string_equal(rodt_status_text(RODT_OK), "done");
}

static void test_version_is_three_numbers(void **state)
{
    (void)state;
    const char *at = rodt_version();
    assert_string_equal(at, RODT_VERSION);
    assert_int_equal(rodt_version_number(), RODT_VERSION_NUMBER);
    assert_true(RODT_VERSION_NUMBER >= RODT_VERSION_AT(0, 1, 0) && RODT_VERSION_NUMBER < RODT_VERSION_AT(99, 0, 0));
    int points = 0;
    assert_true(*at >= '0' && *at <= '9');
    for (; *at != '\0'; at++) {
        assert_true((*at >= '0' && *at <= '9') || *at == '.');
        points += *at == '.';
    }
    assert_int_equal(points, 2);
}

/* What says "nothing" in the place of a figure is no chamber, class, day, unit or position. */
static void test_a_dash_is_empty_for_figures_only(void **state)
{
    (void)state;
    static const char *const nothing[] = {"-", "\xe2\x80\x94", "n/a", "N/A", "none"};
    rodt_length length;
    rodt_pressure pressure;
    rodt_ratio seconds;
    rodt_chamber chamber;
    rodt_date date;
    rodt_position position;
    RODT_ENUM32(rodt_stroke_class) stroke_class;
    RODT_ENUM32(rodt_unit) unit;
    for (size_t i = 0; i < COUNT_OF(nothing); i++) {
        assert_int_equal(rodt_length_parse(nothing[i], &length, NULL), RODT_E_EMPTY);
        assert_int_equal(rodt_pressure_parse(nothing[i], &pressure, NULL), RODT_E_EMPTY);
        assert_int_equal(rodt_seconds_parse(nothing[i], &seconds, NULL), RODT_E_EMPTY);
        const rodt_status refused[] = {
            rodt_chamber_parse(nothing[i], &chamber, NULL), rodt_date_parse(nothing[i], &date, NULL),
            rodt_position_parse(nothing[i], &position, NULL), rodt_unit_parse(nothing[i], &unit, NULL),
            rodt_stroke_class_parse(nothing[i], &stroke_class, NULL)};
        for (size_t k = 0; k < COUNT_OF(refused); k++)
            assert_true(refused[k] != RODT_OK && refused[k] != RODT_E_EMPTY);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_every_status_has_its_sentence),
        cmocka_unit_test(test_other_numbers_are_unknown),
        cmocka_unit_test(test_numbers_stay),
        cmocka_unit_test(test_words_of_what_is_recorded),
        cmocka_unit_test(test_version_is_three_numbers),
        cmocka_unit_test(test_a_dash_is_empty_for_figures_only),
    };
    return cmocka_run_group_tests_name("status", tests, NULL, NULL);
}
