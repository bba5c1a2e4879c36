/* SPDX-License-Identifier: Apache-2.0 */
/* Positions and adjusters of wheel ends as forms have them, and what is none. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <stdio.h>
#include <string.h>

#include "rodtravel/rodtravel.h"

#define COUNT_OF(array) (sizeof(array) / sizeof((array)[0]))

static rodt_status read(const char *text, rodt_position *out, rodt_error *error)
{
    return rodt_position_parse_n(text, strlen(text), out, error);
}

static void what_people_write(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        int16_t axle;
        int16_t side;
    } cases[] = {
        {"1L", 1, RODT_SIDE_LEFT},           {"2 R", 2, RODT_SIDE_RIGHT},       {"3-left", 3, RODT_SIDE_LEFT},
        {"axle 4 right", 4, RODT_SIDE_RIGHT}, {"AXLE 4 RIGHT", 4, RODT_SIDE_RIGHT}, {"Axle5r", 5, RODT_SIDE_RIGHT},
        {"1G", 1, RODT_SIDE_LEFT},           {"1D", 1, RODT_SIDE_RIGHT},        {"2 gauche", 2, RODT_SIDE_LEFT},
        {"2 droite", 2, RODT_SIDE_RIGHT},    {"essieu 3 droit", 3, RODT_SIDE_RIGHT}, {"1LH", 1, RODT_SIDE_LEFT},
        {"1 rh", 1, RODT_SIDE_RIGHT},        {"99l", 99, RODT_SIDE_LEFT},       {"01L", 1, RODT_SIDE_LEFT},
        {"  7R \r\n", 7, RODT_SIDE_RIGHT},   {"2\xC2\xA0R", 2, RODT_SIDE_RIGHT}, {"2\xE2\x80\x91L", 2, RODT_SIDE_LEFT},
        {"2\xE2\x80\x90R", 2, RODT_SIDE_RIGHT},
        {"2 - L", 2, RODT_SIDE_LEFT},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_position position = {0, 0};
        if (read(cases[i].text, &position, NULL) != RODT_OK)
            fail_msg("\"%s\" was refused", cases[i].text);
        assert_int_equal(position.axle, cases[i].axle);
        assert_int_equal(position.side, cases[i].side);
    }
}

static void what_is_none(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        rodt_status status;
        uint32_t column;
    } cases[] = {
        {"", RODT_E_EMPTY, 1},        {"   ", RODT_E_EMPTY, 4},       {"L", RODT_E_SYNTAX, 1},
        {"L1", RODT_E_SYNTAX, 1},     {"1", RODT_E_SYNTAX, 2},        {"1X", RODT_E_SYNTAX, 2},
        {"1LL", RODT_E_SYNTAX, 2},    {"1L2", RODT_E_SYNTAX, 3},      {"1L/R", RODT_E_SYNTAX, 3},
        {"0L", RODT_E_IMPLAUSIBLE, 1}, {"100R", RODT_E_IMPLAUSIBLE, 1}, {" 100R", RODT_E_IMPLAUSIBLE, 2},
        {"99999999999999999999R", RODT_E_IMPLAUSIBLE, 1}, {"-1L", RODT_E_SYNTAX, 1}, {"1--L", RODT_E_SYNTAX, 3},
        {"1.5L", RODT_E_SYNTAX, 2},   {"axle L", RODT_E_SYNTAX, 6},   {"wheel 1 L", RODT_E_SYNTAX, 1},
        {"1 L R", RODT_E_SYNTAX, 5},  {"drive left", RODT_E_SYNTAX, 1}, {"1\xFFL", RODT_E_SYNTAX, 2},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_position position = {5, 6};
        rodt_error error = {.status = RODT_OK};
        rodt_status status = read(cases[i].text, &position, &error);
        if (status != cases[i].status || error.column != cases[i].column)
            fail_msg("\"%s\": status %d, column %u: %s", cases[i].text, status, (unsigned)error.column, error.text);
        assert_int_equal(error.status, status);
        assert_true(position.axle == 5 && position.side == 6);
    }
}

/* What was expected is said with what is there. */
static void refusals_in_words(void **state)
{
    (void)state;
    static const struct {
        const char *text, *sentence;
    } cases[] = {{"L", "the number of the axle was expected here, as in 1L or 2R; found L"},
                 {"axle R", "the number of the axle was expected here, as in 1L or 2R; found R"},
                 {"1X", "left or right was expected here, as in 1L or 2R; found X"},
                 {"1 L R", "the end was expected here, as in 1L or 2R; found R"},
                 {"", "no position; expected one such as 1L or 2R"},
                 {"100R", "axles are numbered from 1 to 99"},
                 {"990L", "axles are numbered from 1 to 99"}};
    rodt_position position;
    rodt_error error;
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        assert_int_not_equal(rodt_position_parse(cases[i].text, &position, &error), RODT_OK);
        assert_string_equal(error.text, cases[i].sentence);
    }
    RODT_ENUM32(rodt_adjuster) adjuster;
    assert_int_equal(rodt_position_parse(NULL, &position, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.text, "no text, or no place for the position");
    assert_int_equal(error.status, RODT_E_ARGUMENT);
    assert_int_equal(error.column, 0);
    assert_int_equal(rodt_adjuster_parse(NULL, &adjuster, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.text, "a text and a place for the adjuster are needed");
    assert_int_equal(error.status, RODT_E_ARGUMENT);
    assert_int_equal(error.column, 0);
    assert_int_equal(rodt_adjuster_parse("bent", &adjuster, &error), RODT_E_SYNTAX);
    assert_string_equal(error.text, "an adjuster is manual, automatic or unknown");
    assert_int_equal(error.status, RODT_E_SYNTAX);
    assert_int_equal(error.column, 1);
}

static void a_zero_byte_is_no_end(void **state)
{
    (void)state;
    rodt_position position = {5, 6};
    assert_int_equal(rodt_position_parse_n("1L\0R", 4, &position, NULL), RODT_E_SYNTAX);
    assert_int_equal(rodt_position_parse_n("1L and more", 2, &position, NULL), RODT_OK);
    assert_int_equal(position.axle, 1);
}

static void every_position_is_read_as_it_is_written(void **state)
{
    (void)state;
    for (int16_t axle = 1; axle <= RODT_AXLE_NUMBER_MAX; axle++) {
        for (uint32_t side = RODT_SIDE_LEFT; side < RODT_SIDE_END; side++) {
            char text[RODT_POSITION_TEXT_SIZE], expected[8];
            rodt_position position = {axle, side}, again = {0, 0};
            snprintf(expected, sizeof expected, "%d%c", axle, side == RODT_SIDE_LEFT ? 'L' : 'R');
            assert_int_equal(rodt_position_format(position, text, sizeof text, NULL), RODT_OK);
            assert_string_equal(text, expected);
            assert_int_equal(read(text, &again, NULL), RODT_OK);
            assert_true(again.axle == axle && again.side == side);
        }
    }
}

static void wrong_calls(void **state)
{
    (void)state;
    char text[RODT_POSITION_TEXT_SIZE] = "kept";
    rodt_position position = {1, RODT_SIDE_LEFT};
    assert_int_equal(rodt_position_parse_n(NULL, 0, &position, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_position_parse_n("1L", 2, NULL, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_position_parse(NULL, &position, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_position_parse("2R", NULL, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_position_parse("3 right", &position, NULL), RODT_OK);
    assert_true(position.axle == 3 && position.side == RODT_SIDE_RIGHT);
    position = (rodt_position){1, RODT_SIDE_LEFT};
    assert_int_equal(rodt_position_format(position, NULL, 8, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_position_format(position, text, 2, NULL), RODT_E_SPACE);
    static const rodt_position none[] = {{0, 1}, {1, 0}, {100, 1}, {1, 3}, {-1, 1}, {1, 65537}};
    for (size_t i = 0; i < COUNT_OF(none); i++)
        assert_int_equal(rodt_position_format(none[i], text, sizeof text, NULL), RODT_E_ARGUMENT);
    assert_string_equal(text, "kept");
}

/* A kind of adjuster in any case; another word leaves the result as it was. What people write is no stable word. */
static void adjusters(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        rodt_adjuster adjuster;
    } cases[] = {{"manual", RODT_ADJUSTER_MANUAL},     {" Automatic ", RODT_ADJUSTER_AUTOMATIC},
                 {"AUTO", RODT_ADJUSTER_AUTOMATIC},    {"", RODT_ADJUSTER_NOT_RECORDED},
                 {" ", RODT_ADJUSTER_NOT_RECORDED},    {"unknown", RODT_ADJUSTER_NOT_RECORDED}};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        RODT_ENUM32(rodt_adjuster) found = (rodt_adjuster)9;
        assert_int_equal(rodt_adjuster_parse(cases[i].text, &found, NULL), RODT_OK);
        assert_int_equal(found, cases[i].adjuster);
    }
    RODT_ENUM32(rodt_adjuster) kept = RODT_ADJUSTER_MANUAL;
    assert_int_equal(rodt_adjuster_parse_n("manually", 6, &kept, NULL), RODT_OK);
    assert_int_equal(rodt_adjuster_parse("bent", &kept, NULL), RODT_E_SYNTAX);
    assert_int_equal(rodt_adjuster_parse(NULL, &kept, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_adjuster_parse("manual", NULL, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_adjuster_find("auto", &kept), RODT_E_SYNTAX);
    assert_int_equal(rodt_adjuster_find("", &kept), RODT_E_SYNTAX);
    assert_int_equal(rodt_adjuster_find("unknown", &kept), RODT_E_SYNTAX);
    assert_int_equal(rodt_adjuster_find("manual", NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_adjuster_find(NULL, &kept), RODT_E_ARGUMENT);
    assert_int_equal(kept, RODT_ADJUSTER_MANUAL);
    assert_string_equal(rodt_adjuster_name(RODT_ADJUSTER_NOT_RECORDED), "not-recorded");
    assert_string_equal(rodt_adjuster_name(RODT_ADJUSTER_MANUAL), "manual");
    assert_string_equal(rodt_adjuster_name(RODT_ADJUSTER_AUTOMATIC), "automatic");
    assert_string_equal(rodt_adjuster_name((rodt_adjuster)3), "");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_people_write),
        cmocka_unit_test(what_is_none),
        cmocka_unit_test(refusals_in_words),
        cmocka_unit_test(a_zero_byte_is_no_end),
        cmocka_unit_test(every_position_is_read_as_it_is_written),
        cmocka_unit_test(adjusters),
        cmocka_unit_test(wrong_calls),
    };
    return cmocka_run_group_tests_name("position", tests, NULL, NULL);
}
