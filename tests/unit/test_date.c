/* SPDX-License-Identifier: Apache-2.0 */
/* Dates: the calendar, ISO 8601, dates on forms. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>

#include <cmocka.h>

#include "core/common.h"
#include "core/month.h"
#include "quantity/calendar.h"
#include "rodtravel/date.h"

#include <stdio.h>
#include <string.h>

static const rodt_date untouched = {1999, 9, 9};

static bool equal(rodt_date date, int year, int month, int day)
{
    return date.year == year && date.month == month && date.day == day;
}

#define UNKNOWN RODT_DATE_ORDER_UNKNOWN
#define DAY RODT_DATE_ORDER_DAY_FIRST
#define MONTH RODT_DATE_ORDER_MONTH_FIRST
#define YEAR RODT_DATE_ORDER_YEAR_FIRST

static const struct {
    const char *text;
    rodt_date_order order;
    int year, month, day;
} dates[] = {
    {"2021-10-14", UNKNOWN, 2021, 10, 14},
    {" 2021-10-14 ", UNKNOWN, 2021, 10, 14},
    {"2021-10-14T08:30", UNKNOWN, 2021, 10, 14},
    {"2021-10-14 08:30:00", UNKNOWN, 2021, 10, 14},
    {"2021-10-14T08:30:00.5Z", UNKNOWN, 2021, 10, 14},
    {"2021-10-14t08:30z", UNKNOWN, 2021, 10, 14},
    {"2021-10-14T08:30+02:00", UNKNOWN, 2021, 10, 14},
    {"14-OCT-21", UNKNOWN, 2021, 10, 14},
    {"14 Oct 2021", UNKNOWN, 2021, 10, 14},
    {"05-JUN-24", MONTH, 2024, 6, 5},
    {"1 d\u00E9c. 2021", UNKNOWN, 2021, 12, 1},
    {"3 f\u00E9vr 2021", UNKNOWN, 2021, 2, 3},
    {"3 septembre 2020", UNKNOWN, 2020, 9, 3},
    {"3 ago 2020", UNKNOWN, 2020, 8, 3},
    {"10/14/2021", UNKNOWN, 2021, 10, 14},
    {"14/10/2021", UNKNOWN, 2021, 10, 14},
    {"10/14/2021", MONTH, 2021, 10, 14},
    {"14/10/2021", DAY, 2021, 10, 14},
    {"21/10/14", YEAR, 2021, 10, 14},
    {"21/10/14", DAY, 2014, 10, 21},
    {"21/1/4", YEAR, 2021, 1, 4},
    {"21.10.14 08:30", YEAR, 2021, 10, 14},
    {"10/31/70", UNKNOWN, 1970, 10, 31},
    {"5/6/05", DAY, 2005, 6, 5},
    {"06/05/2024", DAY, 2024, 5, 6},
    {"06/05/2024", MONTH, 2024, 6, 5},
    {"5/5/2024", UNKNOWN, 2024, 5, 5},
    {"14.10.2021", UNKNOWN, 2021, 10, 14},
    {"1/2/69", DAY, 2069, 2, 1},
    {"1/2/70", DAY, 1970, 2, 1},
    {"29/02/2024", UNKNOWN, 2024, 2, 29},
    {"2000-02-29", UNKNOWN, 2000, 2, 29},
    {"2199-12-31", UNKNOWN, 2199, 12, 31},
    {"2021/10/14", DAY, 2021, 10, 14},
    {"2024/06/05 08:30", DAY, 2024, 6, 5},
    {"14-oct.-21", UNKNOWN, 2021, 10, 14},
    {"1-f\u00E9vr.-2024", UNKNOWN, 2024, 2, 1},
    {"14.oct.21", UNKNOWN, 2021, 10, 14},
    {"1-jan-21", UNKNOWN, 2021, 1, 1},
    {"14 10 2021", UNKNOWN, 2021, 10, 14},
    {"21/10/21", UNKNOWN, 2021, 10, 21}, /* the same day with the year at either end */
    {"2021-10-14T24:00", UNKNOWN, 2021, 10, 14},
    {"2021-10-14T08:30-05:00", UNKNOWN, 2021, 10, 14},
};

static void test_read(void **state)
{
    (void)state;
    for (size_t i = 0; i < COUNT_OF(dates); i++) {
        rodt_date date = untouched;
        rodt_error error = {0};
        rodt_status status =
            rodt_date_parse_n(dates[i].text, strlen(dates[i].text), dates[i].order, &date, &error);
        if (status != RODT_OK || !equal(date, dates[i].year, dates[i].month, dates[i].day))
            fail_msg("\"%s\": %d-%d-%d, %s", dates[i].text, date.year, date.month, date.day, error.text);
    }
}

#define HERE "a date was expected here, such as 2021-10-14"
#define FORM "a date was expected, such as 2021-10-14"
#define NO_DAY "there is no such day in the calendar, or it is not between 1900 and 2199"
#define MONTH_AND_DAY "two digits of the month and the day were expected here"
#define DAY_DIGITS "two digits of the day were expected here"
#define END "the date ends before this"
#define MONTH_NAME "a month was expected here"
#define YEAR_HERE "the year was expected here"
#define YEAR_DIGITS "a year of two or four digits was expected here"
#define SECOND_AND_YEAR "a second number and the year were expected here"
#define OTHER_ORDER "the date contradicts the order of day, month and year that was declared"
#define DAYS(count) "the numbers can mean " count " days; which comes first, day, month or year?"

/* A date that contradicts the declared order is another day than its writer meant, or the order is wrong. */
static const struct {
    const char *text;
    rodt_date_order order;
    rodt_status status;
    uint32_t column;
    const char *sentence;
} refused[] = {
    {"", UNKNOWN, RODT_E_EMPTY, 0, "nothing is written here"},
    {"  ", DAY, RODT_E_EMPTY, 0, "nothing is written here"},
    {"today", UNKNOWN, RODT_E_SYNTAX, 1, HERE},
    {"45293", UNKNOWN, RODT_E_SYNTAX, 1, HERE},
    {"20211014", UNKNOWN, RODT_E_SYNTAX, 1, HERE},
    {"14010.2021", UNKNOWN, RODT_E_SYNTAX, 1, HERE},
    {"14", UNKNOWN, RODT_E_SYNTAX, 3, FORM},
    {"14:10:2021", UNKNOWN, RODT_E_SYNTAX, 3, FORM},
    {"14!10!2021", UNKNOWN, RODT_E_SYNTAX, 3, FORM},
    {"2021.10.14", UNKNOWN, RODT_E_SYNTAX, 5, FORM},
    {"2021.10-14", UNKNOWN, RODT_E_SYNTAX, 5, FORM},
    {"202x-10-14", UNKNOWN, RODT_E_SYNTAX, 4, FORM},
    {"300/1/2021", UNKNOWN, RODT_E_SYNTAX, 4, FORM},
    {"2021-02-29", UNKNOWN, RODT_E_SYNTAX, 0, NO_DAY},
    {"2100-02-29", UNKNOWN, RODT_E_SYNTAX, 0, NO_DAY},
    {"2021-13-01", UNKNOWN, RODT_E_SYNTAX, 0, NO_DAY},
    {"2021-00-01", UNKNOWN, RODT_E_SYNTAX, 0, NO_DAY},
    {"2021-04-31", UNKNOWN, RODT_E_SYNTAX, 0, NO_DAY},
    {"1899-12-31", UNKNOWN, RODT_E_SYNTAX, 0, NO_DAY},
    {"2200-01-01", UNKNOWN, RODT_E_SYNTAX, 0, NO_DAY},
    {"2021/14/10", UNKNOWN, RODT_E_SYNTAX, 0, NO_DAY},
    {"31-JUN-21", UNKNOWN, RODT_E_SYNTAX, 0, NO_DAY},
    {"13/13/2021", UNKNOWN, RODT_E_SYNTAX, 0, NO_DAY},
    {"0/10/2021", UNKNOWN, RODT_E_SYNTAX, 0, NO_DAY},
    {"7/9/0213", UNKNOWN, RODT_E_SYNTAX, 0, NO_DAY},
    {"7/9/2201", UNKNOWN, RODT_E_SYNTAX, 0, NO_DAY},
    {"1/2/1899", UNKNOWN, RODT_E_SYNTAX, 0, NO_DAY},
    {"10/11/0021", UNKNOWN, RODT_E_SYNTAX, 0, NO_DAY},
    {"2021-1-1", UNKNOWN, RODT_E_SYNTAX, 6, MONTH_AND_DAY},
    {"2021-10", UNKNOWN, RODT_E_SYNTAX, 6, MONTH_AND_DAY},
    {"2021-x0-14", UNKNOWN, RODT_E_SYNTAX, 6, MONTH_AND_DAY},
    {"2021-0:-14", UNKNOWN, RODT_E_SYNTAX, 6, MONTH_AND_DAY},
    {"2021-1/-14", UNKNOWN, RODT_E_SYNTAX, 6, MONTH_AND_DAY},
    {"2021/10-14", UNKNOWN, RODT_E_SYNTAX, 6, MONTH_AND_DAY},
    {"2021-10/14", UNKNOWN, RODT_E_SYNTAX, 6, MONTH_AND_DAY},
    {"2021-10.14", UNKNOWN, RODT_E_SYNTAX, 6, MONTH_AND_DAY},
    {"2021/1/4", UNKNOWN, RODT_E_SYNTAX, 6, MONTH_AND_DAY},
    {"2021-10-x4", UNKNOWN, RODT_E_SYNTAX, 9, DAY_DIGITS},
    {"2021-10-0:", UNKNOWN, RODT_E_SYNTAX, 9, DAY_DIGITS},
    {"2021-10-1/", UNKNOWN, RODT_E_SYNTAX, 9, DAY_DIGITS},
    {"x021-10-14", UNKNOWN, RODT_E_SYNTAX, 1, HERE},
    {"abcd-ef-gh", UNKNOWN, RODT_E_SYNTAX, 1, HERE},
    {"0000500300", UNKNOWN, RODT_E_SYNTAX, 1, HERE},
    {"2021-10-14x", UNKNOWN, RODT_E_SYNTAX, 11, END},
    {"2021-10-14xx", UNKNOWN, RODT_E_SYNTAX, 11, END},
    {"2021-10-14 2021-10-15", UNKNOWN, RODT_E_SYNTAX, 11, END},
    {"2021-10-14T8:30", UNKNOWN, RODT_E_SYNTAX, 11, END},
    {"2021-10-14T:30", UNKNOWN, RODT_E_SYNTAX, 11, END},
    {"2021-10-14T008:30", UNKNOWN, RODT_E_SYNTAX, 11, END},
    {"2021-10-14T25:00", UNKNOWN, RODT_E_SYNTAX, 11, END},
    {"2021-10-14T08.30", UNKNOWN, RODT_E_SYNTAX, 11, END},
    {"2021-10-14U08:30", UNKNOWN, RODT_E_SYNTAX, 11, END},
    {"2021-10-14u08:30", UNKNOWN, RODT_E_SYNTAX, 11, END},
    {"2021-10-14!08:30", UNKNOWN, RODT_E_SYNTAX, 11, END},
    {"2021-10-14T08:30;00", UNKNOWN, RODT_E_SYNTAX, 11, END},
    {"2021-10-14T08:30/00", UNKNOWN, RODT_E_SYNTAX, 11, END},
    {"14-OCT-21x", UNKNOWN, RODT_E_SYNTAX, 10, END},
    {"9/1/2013 8:00", UNKNOWN, RODT_E_SYNTAX, 9, END},
    {"9/1/2013 8:00 AM", UNKNOWN, RODT_E_SYNTAX, 9, END},
    {"10/11/2021x", UNKNOWN, RODT_E_SYNTAX, 11, END},
    {"14-Okt-21", UNKNOWN, RODT_E_SYNTAX, 4, MONTH_NAME},
    {"14/x/2021", UNKNOWN, RODT_E_SYNTAX, 4, MONTH_NAME},
    {"14-OCT", UNKNOWN, RODT_E_SYNTAX, 7, YEAR_HERE},
    {"14-OCT/21", UNKNOWN, RODT_E_SYNTAX, 7, YEAR_HERE},
    {"14-OCT/-21", UNKNOWN, RODT_E_SYNTAX, 7, YEAR_HERE},
    {"14-oct..-21", UNKNOWN, RODT_E_SYNTAX, 8, YEAR_HERE},
    {"14-oct.21", UNKNOWN, RODT_E_SYNTAX, 8, YEAR_HERE},
    {"14-OCT-", UNKNOWN, RODT_E_SYNTAX, 8, YEAR_DIGITS},
    {"14-OCT-1", UNKNOWN, RODT_E_SYNTAX, 8, YEAR_DIGITS},
    {"14-OCT-021", UNKNOWN, RODT_E_SYNTAX, 8, YEAR_DIGITS},
    {"14/10/x", UNKNOWN, RODT_E_SYNTAX, 7, YEAR_DIGITS},
    {"14/10/021", UNKNOWN, RODT_E_SYNTAX, 7, YEAR_DIGITS},
    {"14/10/20211", UNKNOWN, RODT_E_SYNTAX, 7, YEAR_DIGITS},
    {"21/1/4", UNKNOWN, RODT_E_SYNTAX, 6, YEAR_DIGITS},
    {"14/10", UNKNOWN, RODT_E_SYNTAX, 4, SECOND_AND_YEAR},
    {"14/10-2021", UNKNOWN, RODT_E_SYNTAX, 4, SECOND_AND_YEAR},
    {"14/123/2021", UNKNOWN, RODT_E_SYNTAX, 4, SECOND_AND_YEAR},
    {"10/14/2021", DAY, RODT_E_SYNTAX, 0, OTHER_ORDER},
    {"10/14/21", DAY, RODT_E_SYNTAX, 0, OTHER_ORDER},
    {"14/10/2021", MONTH, RODT_E_SYNTAX, 0, OTHER_ORDER},
    {"10/14/2021", YEAR, RODT_E_SYNTAX, 0, OTHER_ORDER},
    {"1/2/2024", YEAR, RODT_E_SYNTAX, 0, OTHER_ORDER},
    {"5/5/2024", YEAR, RODT_E_SYNTAX, 0, OTHER_ORDER},
    {"31/12/99", YEAR, RODT_E_SYNTAX, 0, OTHER_ORDER},
    {"13/13/2021", DAY, RODT_E_SYNTAX, 0, NO_DAY},
    {"31/4/2021", DAY, RODT_E_SYNTAX, 0, NO_DAY},
    {"32/1/2021", MONTH, RODT_E_SYNTAX, 0, NO_DAY},
    {"10/11/0021", YEAR, RODT_E_SYNTAX, 0, NO_DAY},
    {"9/1/2013 8:00", MONTH, RODT_E_SYNTAX, 9, END},
    {"1/2/4", DAY, RODT_E_SYNTAX, 5, YEAR_DIGITS},
    {"21/1/x", YEAR, RODT_E_SYNTAX, 6, YEAR_DIGITS},
    {"21/1/041", YEAR, RODT_E_SYNTAX, 6, YEAR_DIGITS},
    {"06/05/2024", UNKNOWN, RODT_E_AMBIGUOUS, 0, DAYS("2")},
    {"1/2/24", UNKNOWN, RODT_E_AMBIGUOUS, 0, DAYS("2")},
    {"1/2/2024 08:30", UNKNOWN, RODT_E_AMBIGUOUS, 0, DAYS("2")},
    {"21/10/14", UNKNOWN, RODT_E_AMBIGUOUS, 0, DAYS("2")},
    {"29/02/24", UNKNOWN, RODT_E_AMBIGUOUS, 0, DAYS("2")},
    {"10/11/10", UNKNOWN, RODT_E_AMBIGUOUS, 0, DAYS("2")},
    {"01/02/24", UNKNOWN, RODT_E_AMBIGUOUS, 0, DAYS("3")},
};

static void test_refuse(void **state)
{
    (void)state;
    for (size_t i = 0; i < COUNT_OF(refused); i++) {
        rodt_date date = untouched;
        rodt_error error = {0};
        rodt_status status =
            rodt_date_parse_n(refused[i].text, strlen(refused[i].text), refused[i].order, &date, &error);
        if (status != refused[i].status || error.status != status || error.column != refused[i].column ||
            error.count != (status == RODT_E_AMBIGUOUS) || strcmp(error.text, refused[i].sentence) != 0)
            fail_msg("\"%s\": status %d column %u (%s)", refused[i].text, (int)status, (unsigned)error.column,
                     error.text);
        assert_true(equal(date, 1999, 9, 9));
    }
}

/* What stands behind the text is no part of it. */
static void test_bounded_text(void **state)
{
    (void)state;
    rodt_date date = untouched;
    assert_int_equal(rodt_date_parse_n("2021-10-14", 9, UNKNOWN, &date, NULL), RODT_E_SYNTAX);
    assert_int_equal(rodt_date_parse_n("2021-10-14", 11, UNKNOWN, &date, NULL), RODT_E_SYNTAX);
    assert_int_equal(rodt_date_parse_n("2021-10-14\0", 12, UNKNOWN, &date, NULL), RODT_E_SYNTAX);
    assert_true(equal(date, 1999, 9, 9));
    assert_int_equal(rodt_date_parse_n("2021-10-120", 10, UNKNOWN, &date, NULL), RODT_OK);
    assert_true(equal(date, 2021, 10, 12));
    assert_int_equal(rodt_date_parse_n("2021-10-011", 10, UNKNOWN, &date, NULL), RODT_OK);
    assert_true(equal(date, 2021, 10, 1));
}

static void test_iso(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        rodt_status status;
        uint32_t column;
        const char *sentence;
    } cases[] = {
        {"14/10/2021", RODT_E_SYNTAX, 1, FORM}, {"21-10-14", RODT_E_SYNTAX, 1, FORM},
        {"2021/10/14", RODT_E_SYNTAX, 1, FORM}, {"2021.10.14", RODT_E_SYNTAX, 1, FORM},
        {" x", RODT_E_SYNTAX, 2, FORM},         {" ", RODT_E_EMPTY, 0, "nothing is written here"},
        {"2021-10-14x", RODT_E_SYNTAX, 11, END},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_date date = untouched;
        rodt_error error = {0};
        assert_int_equal(rodt_date_parse_iso(cases[i].text, &date, &error), cases[i].status);
        assert_int_equal(error.status, cases[i].status);
        assert_int_equal(error.column, cases[i].column);
        assert_string_equal(error.text, cases[i].sentence);
        assert_true(equal(date, 1999, 9, 9));
    }
}

static void test_parse(void **state)
{
    (void)state;
    rodt_date date = untouched;
    assert_int_equal(rodt_date_parse_iso(NULL, &date, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_date_parse_iso("2021-10-14", NULL, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_date_parse_n("1/2/24", 6, (rodt_date_order)4, &date, NULL), RODT_E_ARGUMENT);
    assert_true(equal(date, 1999, 9, 9));
    assert_int_equal(rodt_date_parse_iso("2021-10-14", &date, NULL), RODT_OK);
    assert_true(equal(date, 2021, 10, 14));
    assert_int_equal(rodt_date_parse("1/2/2024", &date, NULL), RODT_E_AMBIGUOUS);
    assert_int_equal(rodt_date_parse(NULL, &date, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_date_parse("2 Jan 2024", NULL, NULL), RODT_E_ARGUMENT);
    assert_true(equal(date, 2021, 10, 14));
    assert_int_equal(rodt_date_parse("14/11/2022", &date, NULL), RODT_OK);
    assert_true(equal(date, 2022, 11, 14));
}

/* Every day that is written is read back, each behind the one before. */
static void test_every_day(void **state)
{
    (void)state;
    rodt_date before = {0};
    int days = 0;
    assert_int_equal(calendar_day_number((rodt_date){1970, 1, 1}), 0);
    for (int n = 1900 * 12; n < 2200 * 12; n++) {
        for (int day = 0; day <= 32; day++) {
            rodt_date date;
            rodt_date again;
            char text[RODT_DATE_TEXT_SIZE];
            if (rodt_date_make(n / 12, n % 12 + 1, day, &date) != RODT_OK)
                continue;
            assert_int_equal(rodt_date_format(date, text, sizeof text, NULL), RODT_OK);
            assert_int_equal(rodt_date_parse_iso(text, &again, NULL), RODT_OK);
            assert_int_equal(rodt_date_compare(date, again), 0);
            assert_int_equal(rodt_date_compare(before, date), -1);
            assert_int_equal(rodt_date_compare(date, before), 1);
            assert_int_equal(calendar_day_number(date), CALENDAR_FIRST_DAY + days);
            rodt_date counted = calendar_date(CALENDAR_FIRST_DAY + days);
            if (rodt_date_compare(counted, date) != 0)
                fail_msg("%s: %d-%d-%d", text, counted.year, counted.month, counted.day);
            before = date;
            days++;
        }
    }
    assert_int_equal(calendar_day_number(before), CALENDAR_LAST_DAY);
    assert_int_equal(days,
                     300 * 365 + 73); /* leap years: the 75 that divide by four, but not 1900 and 2100 */
}

static void test_make_and_write(void **state)
{
    (void)state;
    char text[RODT_DATE_TEXT_SIZE] = "#";
    rodt_date date = untouched;
    assert_int_equal(rodt_date_make(2021, 0, 1, &date), RODT_E_ARGUMENT);
    assert_int_equal(rodt_date_make(2021, 13, 1, &date), RODT_E_ARGUMENT);
    assert_int_equal(rodt_date_make(2021, 2, 29, &date), RODT_E_ARGUMENT);
    assert_int_equal(rodt_date_make(1899, 1, 1, &date), RODT_E_ARGUMENT);
    assert_int_equal(rodt_date_make(2200, 1, 1, &date), RODT_E_ARGUMENT);
    assert_int_equal(rodt_date_make(2021, 1, 1, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_date_format((rodt_date){0}, text, sizeof text, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_date_format(date, NULL, 11, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_date_format(date, text, 10, NULL), RODT_E_SPACE);
    assert_string_equal(text, "#");
    assert_true(equal(date, 1999, 9, 9));
    assert_int_equal(rodt_date_format(date, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, "1999-09-09");
}

static void test_dates_in_another_order(void **unused)
{
    static const char *const texts[] = {"10/14/2021", "14/10/2021", "10/11/2021", "2021-10-14", "x", "", "32/10/2021"};
    static const bool day_first[] = {true, false, false, false, false, false, false};
    static const bool month_first[] = {false, true, false, false, false, false, false};
    static const bool year_first[] = {true, true, true, false, false, false, false}; /* 10/11/2021 can be two days */
    (void)unused;
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        size_t size = strlen(texts[i]);
        assert_int_equal(rodt_date_contradicts(texts[i], size, RODT_DATE_ORDER_DAY_FIRST), day_first[i]);
        assert_int_equal(rodt_date_contradicts(texts[i], size, RODT_DATE_ORDER_MONTH_FIRST), month_first[i]);
        assert_int_equal(rodt_date_contradicts(texts[i], size, RODT_DATE_ORDER_YEAR_FIRST), year_first[i]);
        assert_false(rodt_date_contradicts(texts[i], size, RODT_DATE_ORDER_UNKNOWN));
    }
}

static void test_days_and_dates(void **state)
{
    (void)state;
    rodt_date date = {1900, 1, 1}, next;
    int32_t days, before = -25568;
    for (; rodt_date_to_days(date, &days) == RODT_OK; date = next, before = days) {
        assert_int_equal(days, before + 1);
        assert_int_equal(rodt_date_from_days(days, &next), RODT_OK);
        assert_int_equal(rodt_date_compare(next, date), 0);
        if (rodt_date_from_days(days + 1, &next) != RODT_OK)
            break;
    }
    assert_true(date.year == 2199 && date.month == 12 && date.day == 31);
    assert_int_equal(rodt_date_to_days((rodt_date){2021, 10, 14}, &days), RODT_OK);
    assert_int_equal(days, 18914);
    assert_int_equal(rodt_date_from_days(0, &date), RODT_OK);
    assert_true(date.year == 1970 && date.month == 1 && date.day == 1);
    assert_int_equal(rodt_date_to_days((rodt_date){2021, 2, 29}, &days), RODT_E_ARGUMENT);
    assert_int_equal(rodt_date_to_days((rodt_date){2021, 2, 28}, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_date_from_days(0, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_date_from_days(INT32_MAX, &date), RODT_E_RANGE);
    assert_int_equal(rodt_date_from_days(INT32_MIN, &date), RODT_E_RANGE);
}

/* A run of letters at the start of a text; 0 and the cursor where it was for what is no month. */
static void check_month(const char *text, size_t letters, int wanted)
{
    text_cursor cursor;
    rodti_text_start(&cursor, text, strlen(text));
    if (rodti_month_read(&cursor) != wanted)
        fail_msg("\"%s\" is not month %d", text, wanted);
    assert_int_equal(cursor.column, wanted != 0 ? letters + 1 : 1);
}

/* Every month whole and cut to each length; what is shorter than three letters, or ends otherwise, is none. */
static void test_names_of_months(void **state)
{
    (void)state;
    static const char *const names[][5] = {
        {"January", "janvier", "enero"},  {"FEBRUARY", "fevrier", "febrero"}, {"march", "mars", "marzo"},
        {"april", "avril", "abril"},      {"may", "mai", "mayo"},             {"june", "juin", "junio"},
        {"july", "juillet", "julio"},     {"august", "aout", "agosto"},       {"september", "septembre", "septiembre", "setiembre"},
        {"october", "octobre", "octubre"}, {"november", "novembre", "noviembre"}, {"december", "decembre", "diciembre"}};
    for (size_t month = 0; month < COUNT_OF(names); month++) {
        for (const char *const *name = names[month]; *name != NULL; name++) {
            char text[16];
            for (size_t size = 1; size <= strlen(*name); size++) {
                bool known = size >= 3 && !(size == 3 && (strcmp(*name, "juin") == 0 || strcmp(*name, "juillet") == 0));
                snprintf(text, sizeof text, "%.*s", (int)size, *name);
                check_month(text, size, known ? (int)month + 1 : 0);
            }
            snprintf(text, sizeof text, "%s-x", *name);
            check_month(text, strlen(*name), (int)month + 1);
            snprintf(text, sizeof text, "%sq", *name);
            check_month(text, 0, 0);
        }
    }
    check_month("f\u00E9vr", 4, 2);
    check_month("F\u00C9VR", 4, 2);
    check_month("ao\u00FBt", 4, 8);
    check_month("AO\u00DBT", 4, 8);
    check_month("ao\u00FAt", 0, 0);
    check_month("", 0, 0);
    char long_word[400] = "septiembre";
    memset(long_word + 10, 'e', sizeof long_word - 11);
    check_month(long_word, 0, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_days_and_dates),
        cmocka_unit_test(test_names_of_months),
        cmocka_unit_test(test_dates_in_another_order),
        cmocka_unit_test(test_read),      cmocka_unit_test(test_refuse),         cmocka_unit_test(test_parse),
        cmocka_unit_test(test_bounded_text), cmocka_unit_test(test_iso),
        cmocka_unit_test(test_every_day), cmocka_unit_test(test_make_and_write),
    };
    return cmocka_run_group_tests_name("date", tests, NULL, NULL);
}
