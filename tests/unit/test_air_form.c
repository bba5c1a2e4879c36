/* SPDX-License-Identifier: Apache-2.0 */
/* Times and air checks as texts. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <cmocka.h>

#include "core/common.h"
#include "rodtravel/rodtravel.h"
#include "support.h"

static void times_are_read(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        int64_t num, den;
        bool comma;
    } cases[] = {{"45", 45, 1, false}, {" 45 s ", 45, 1, false}, {"45sec", 45, 1, false}, {"45 seconds", 45, 1, false},
                 {"31.25", 125, 4, false}, {"31,25 s", 125, 4, true}, {"1:30", 90, 1, false}, {"0:31.5", 63, 2, false},
                 {"01:30", 90, 1, false}, {"1 min 30 s", 90, 1, false}, {"1min30s", 90, 1, false}, {"1 min 30", 90, 1, false},
                 {"2 minutes", 120, 1, false}, {"1.5 min", 90, 1, false}, {"1,5 min", 90, 1, true}, {"1 1/2 min", 90, 1, false},
                 {"0", 0, 1, false}, {"1440:00", 86400, 1, false}, {"0:31,5", 63, 2, true},
                 {"1:59", 119, 1, false}, {"1 min 59 s", 119, 1, false}, {"0:00", 0, 1, false}, {"1:30.12345", 1802469, 20000, false},
                 {"3 secs", 3, 1, false}, {"4 second", 4, 1, false}, {"1 seconde", 1, 1, false}, {"2 secondes", 2, 1, false},
                 {"2 mins", 120, 1, false}, {"1 minute", 60, 1, false}, {"0 min 5 s", 5, 1, false}};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_ratio seconds;
        rodt_error error;
        const rodt_style style = {.decimal_comma = cases[i].comma};
        if (rodt_seconds_parse_n(cases[i].text, strlen(cases[i].text), &style, &seconds, &error) != RODT_OK)
            fail_msg("%s: %s", cases[i].text, error.text);
        assert_int_equal(seconds.num, cases[i].num);
        assert_int_equal(seconds.den, cases[i].den);
    }
}

#define TWO_DIGITS "two digits of seconds are expected after the colon: 1:30"
#define BELOW_SIXTY "the seconds beside minutes are below 60"
#define A_DAY "no check takes more than a day"
#define SECONDS_AFTER "seconds are expected after minutes"
#define PART_OF_MINUTE "a part of a minute and seconds beside it: write 1 min 30 s"
static const struct {
    const char *text;
    rodt_status status;
    uint32_t column;
    const char *sentence;
} no_times[] = {
    {"", RODT_E_EMPTY, 0, "nothing is written here"},
    {"-", RODT_E_EMPTY, 1, "nothing is written here"},
    {"n/a", RODT_E_EMPTY, 1, "nothing is written here"},
    {":30", RODT_E_SYNTAX, 1, "a number was expected here, not :"},
    {"1:5", RODT_E_SYNTAX, 3, TWO_DIGITS},
    {"1:300", RODT_E_SYNTAX, 3, TWO_DIGITS},
    {"1:", RODT_E_SYNTAX, 3, TWO_DIGITS},
    {"1:30x", RODT_E_SYNTAX, 3, TWO_DIGITS},
    {"1:30.", RODT_E_SYNTAX, 3, TWO_DIGITS},
    {"1:30.x", RODT_E_SYNTAX, 3, TWO_DIGITS},
    {"1:30.123456", RODT_E_SYNTAX, 3, TWO_DIGITS},
    {" 1: 30", RODT_E_SYNTAX, 4, TWO_DIGITS},
    {"1:75", RODT_E_SYNTAX, 3, BELOW_SIXTY},
    {"1:60", RODT_E_SYNTAX, 3, BELOW_SIXTY},
    {"1 min 60 s", RODT_E_SYNTAX, 7, BELOW_SIXTY},
    {"1:30:00", RODT_E_AMBIGUOUS, 5, "a spreadsheet may have made hours of it: write 1 min 30 s"},
    {"123456:00", RODT_E_SYNTAX, 7, "s, min or the end of the text was expected here, not :"},
    {"1.5 min 30 s", RODT_E_AMBIGUOUS, 9, PART_OF_MINUTE},
    {"1 1/2 min 30", RODT_E_AMBIGUOUS, 11, PART_OF_MINUTE},
    {"<45", RODT_E_AMBIGUOUS, 1, "this is a bound or an estimate; write the one value that was read"},
    {"1,5", RODT_E_AMBIGUOUS, 2, "a comma can part decimals or thousands; write a point, or set the decimal comma"},
    {"2 h", RODT_E_UNIT, 3, "a time is in s or min"},
    {"1 min 3 min", RODT_E_UNIT, 7, SECONDS_AFTER},
    {"1 min 3 h", RODT_E_UNIT, 7, SECONDS_AFTER},
    {"-5", RODT_E_NEGATIVE, 1, "a reading cannot be below zero"},
    {"86401", RODT_E_IMPLAUSIBLE, 1, A_DAY},
    {"1440:01", RODT_E_IMPLAUSIBLE, 1, A_DAY},
    {"12345:00", RODT_E_IMPLAUSIBLE, 1, A_DAY},
    {"9999999999", RODT_E_IMPLAUSIBLE, 1, A_DAY},
    {"1 min 9999999999 s", RODT_E_IMPLAUSIBLE, 7, A_DAY},
    {"999999999.999999999 minutes", RODT_E_IMPLAUSIBLE, 1, A_DAY},
    {"x", RODT_E_SYNTAX, 1, "a number was expected here, not x"},
    {"2 minutes x", RODT_E_SYNTAX, 11, "a number was expected here, not x"},
    {"45 s x", RODT_E_SYNTAX, 6, "s, min or the end of the text was expected here, not x"},
    {"2 minutes 5 s x", RODT_E_SYNTAX, 15, "s, min or the end of the text was expected here, not x"},
    {"999999999 minutes 0.000000001 s", RODT_E_RANGE, 19, /* the sum does not fit in 64 bits */
     "there are more digits than a reading can have"}};

static void what_is_no_time_is_refused(void **state)
{
    (void)state;
    for (size_t i = 0; i < COUNT_OF(no_times); i++) {
        rodt_ratio seconds = {7, 8};
        rodt_error error;
        rodt_status status = rodt_seconds_parse(no_times[i].text, &seconds, &error);
        if (status != no_times[i].status || error.column != no_times[i].column)
            fail_msg("\"%s\" gives %d at %u: %s", no_times[i].text, (int)status, (unsigned)error.column, error.text);
        assert_string_equal(error.text, no_times[i].sentence);
        assert_int_equal(error.status, status);
        assert_true(seconds.num == 7 && seconds.den == 8);
    }
}

static void times_of_a_wrong_call(void **state)
{
    (void)state;
    rodt_ratio seconds = {7, 8};
    const rodt_style wrong = {.unit = RODT_UNIT_END};
    assert_int_equal(rodt_seconds_parse(NULL, &seconds, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_seconds_parse("45", NULL, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_seconds_parse_n("45", 2, &wrong, &seconds, NULL), RODT_E_ARGUMENT);
    assert_int_equal(seconds.num, 7);
}

static const rodt_air_form whole = {.check = "loss-applied", .vehicle = "combination", .towed_units = "1", .built = "2015",
                                    .before = "110", .after = "107 psi", .seconds = "1 min", .cut_out = "125", .cut_in = "100",
                                    .applications = "1", .answer = "yes", .actual_volume = "6960", .required_volume = "5568",
                                    .pressure = "655 kPa", .span = "warning"};

static void a_form_is_read(void **state)
{
    (void)state;
    rodt_air_reading reading;
    rodt_error error;
    assert_int_equal(rodt_air_form_parse(&whole, &reading, &error), RODT_OK);
    const rodt_air_reading expected = {.check = RODT_AIR_CHECK_LOSS_APPLIED, .vehicle = RODT_VEHICLE_CLASS_COMBINATION, .towed_units = 1,
                                       .built = {2015, 0, 0}, .before = {110, 1}, .after = {107, 1}, .seconds = {60, 1},
                                       .cut_out = {125, 1}, .cut_in = {100, 1}, .applications = 1, .answer = RODT_RECORDED_YES,
                                       .actual_volume = {6960, 1}, .required_volume = {5568, 1}, .span = RODT_AIR_SPAN_WARNING,
                                       .pressure_unit = RODT_PRESSURE_UNIT_KPA, .pressure = reading.pressure};
    assert_memory_equal(&reading, &expected, sizeof reading);
    rodt_pressure written;
    assert_int_equal(rodt_pressure_from_kpa(655, 1, &written), RODT_OK);
    assert_int_equal(rodt_pressure_compare(reading.pressure, written), 0);
    rodt_air_finding finding;
    assert_int_equal(rodt_air_form_judge(&whole, rodt_rules_find("us-cdl"), &finding, &error), RODT_OK);
    assert_int_equal(finding.result, RODT_AIR_RESULT_GOOD);
    assert_int_equal(rodt_air_form_judge(&whole, NULL, &finding, &error), RODT_E_UNKNOWN_RULES);
}

#define FIELDS 15
static const char *const names[FIELDS] = {"check", "vehicle", "towed_units", "built", "pressure", "before", "after", "cut_out",
                                          "cut_in", "seconds", "span", "applications", "actual_volume", "required_volume", "answer"};

static void each_text_is_refused_by_its_name(void **state)
{
    (void)state;
    const char *texts[FIELDS];
    for (size_t i = 0; i < FIELDS; i++) {
        rodt_air_form form = whole;
        rodt_air_reading reading = {.check = RODT_AIR_CHECK_DRAIN};
        rodt_error error = {.status = RODT_OK};
        memcpy(texts, &form, sizeof texts);
        texts[i] = "6O?";
        memcpy(&form, texts, sizeof texts);
        assert_true(rodt_air_form_parse(&form, &reading, &error) != RODT_OK);
        assert_string_equal(error.field, names[i]);
        assert_int_equal(reading.check, RODT_AIR_CHECK_DRAIN);
    }
    rodt_error error;
    rodt_air_reading reading;
    assert_int_equal(rodt_air_form_parse(&(rodt_air_form){.pressure = "60"}, &reading, &error), RODT_E_EMPTY);
    assert_string_equal(error.field, "check");
    assert_int_equal(rodt_air_form_parse(&(rodt_air_form){.check = "drain", .vehicle = "bus", .towed_units = "2"}, &reading,
                                         &error), RODT_E_ARGUMENT);
    assert_string_equal(error.field, "towed_units");
    assert_int_equal(rodt_air_form_parse(&(rodt_air_form){.check = "drain", .reserved = {"x"}}, &reading, &error),
                     RODT_E_ARGUMENT);
    assert_int_equal(rodt_air_form_parse(NULL, &reading, NULL), RODT_E_ARGUMENT);
}

static void texts_that_say_nothing_are_no_reading(void **state)
{
    (void)state;
    const rodt_air_form form = {.check = "warning", .pressure = "60", .before = "  ", .after = "n/a", .seconds = "n/a",
                                .actual_volume = "-", .required_volume = "not done", .answer = " "};
    rodt_air_reading reading;
    assert_int_equal(rodt_air_form_parse(&form, &reading, NULL), RODT_OK);
    assert_false(rodt_pressure_given(reading.before) || rodt_pressure_given(reading.after));
    assert_false(rodt_ratio_given(reading.seconds) || rodt_ratio_given(reading.actual_volume) ||
                 rodt_ratio_given(reading.required_volume));
    assert_int_equal(reading.answer, RODT_RECORDED_NOT_RECORDED);
    assert_int_equal(rodt_air_form_parse(&form, NULL, NULL), RODT_E_ARGUMENT);
}

/* The nearest texts that are read. */
static void texts_at_their_limits(void **state)
{
    (void)state;
    const rodt_air_form form = {.check = "drain", .towed_units = "12", .applications = " 0 ", .built = " 1900", .actual_volume = "1000000",
                                .required_volume = "5568 1/2", .cut_out = "655 kPa", .cut_in = "n/a"};
    const rodt_air_reading expected = {.check = RODT_AIR_CHECK_DRAIN, .towed_units = 12, .built = {1900, 0, 0},
                                       .pressure_unit = RODT_PRESSURE_UNIT_KPA, .actual_volume = {1000000, 1},
                                       .required_volume = {11137, 2}};
    rodt_air_reading reading;
    assert_int_equal(rodt_air_form_parse(&form, &reading, NULL), RODT_OK);
    assert_true(reading.cut_out.den > 0);
    reading.cut_out = (rodt_pressure){0, 0};
    assert_memory_equal(&reading, &expected, sizeof reading);
    assert_int_equal(rodt_air_form_parse(&(rodt_air_form){.check = "drain", .built = "2199"}, &reading, NULL), RODT_OK);
    assert_int_equal(reading.built.year, 2199);
    assert_int_equal(rodt_air_form_parse(&(rodt_air_form){.check = "drain", .built = "2021-05-06"}, &reading, NULL), RODT_OK);
    assert_int_equal(reading.built.day, 6);
}

#define NO_NUMBER "a whole number from 0 to 99 is expected"
#define NO_DATE "a date was expected, such as 2021-10-14"
#define NO_VOLUME "a volume is a number of cubic inches"
#define TOO_LARGE "no vehicle has so many cubic inches of reservoirs"
static const struct {
    rodt_air_form form;
    rodt_status status;
    uint32_t column;
    const char *field, *sentence;
} refusals[] = {
    {{.pressure = "60"}, RODT_E_EMPTY, 0, "check", "nothing is written for check"},
    {{.check = "  "}, RODT_E_EMPTY, 0, "check", "nothing is written for check"},
    {{.check = "none"}, RODT_E_SYNTAX, 1, "check", "there is no such check"},
    {{.check = "brakes"}, RODT_E_SYNTAX, 1, "check", "there is no such check"},
    {{.check = "drain", .vehicle = "boat"}, RODT_E_SYNTAX, 1, "vehicle", "a vehicle is single, combination, bus or any"},
    {{.check = "drain", .span = "week"}, RODT_E_SYNTAX, 1, "span", "a span is pressures, warning, applications or recovery"},
    {{.check = "drain", .towed_units = "many"}, RODT_E_SYNTAX, 1, "towed_units", NO_NUMBER},
    {{.check = "drain", .towed_units = "123"}, RODT_E_SYNTAX, 1, "towed_units", NO_NUMBER},
    {{.check = "drain", .towed_units = "1234"}, RODT_E_SYNTAX, 1, "towed_units", NO_NUMBER},
    {{.check = "drain", .towed_units = "1x"}, RODT_E_SYNTAX, 1, "towed_units", NO_NUMBER},
    {{.check = "drain", .applications = "x"}, RODT_E_SYNTAX, 1, "applications", NO_NUMBER},
    {{.check = "drain", .built = "once"}, RODT_E_SYNTAX, 1, "built", "a date was expected here, such as 2021-10-14"},
    {{.check = "drain", .built = "202"}, RODT_E_SYNTAX, 4, "built", NO_DATE},
    {{.check = "drain", .built = "20-1"}, RODT_E_SYNTAX, 4, "built", "a second number and the year were expected here"},
    {{.check = "drain", .built = "67436"}, RODT_E_SYNTAX, 1, "built", "a date was expected here, such as 2021-10-14"},
    {{.check = "drain", .built = "1899"}, RODT_E_SYNTAX, 5, "built", NO_DATE},
    {{.check = "drain", .built = "2200"}, RODT_E_SYNTAX, 5, "built", NO_DATE},
    {{.check = "drain", .built = "2021x"}, RODT_E_SYNTAX, 5, "built", NO_DATE},
    {{.check = "drain", .built = "20215"}, RODT_E_SYNTAX, 1, "built", "a date was expected here, such as 2021-10-14"},
    {{.check = "warning", .pressure = "62 mm"}, RODT_E_UNIT, 4, "pressure", "this unit does not fit here"},
    {{.check = "warning", .pressure = "never 62"}, RODT_E_SYNTAX, 1, "pressure", "a number was expected here, not n"},
    {{.check = "drain", .pressure = "never"}, RODT_E_SYNTAX, 1, "pressure", "a number was expected here, not n"},
    {{.check = "build-up", .pressure = "never"}, RODT_E_SYNTAX, 1, "pressure", "a number was expected here, not n"},
    {{.check = "warning", .seconds = "never"}, RODT_E_SYNTAX, 1, "seconds", "a number was expected here, not n"},
    {{.check = "build-up", .seconds = "an hour"}, RODT_E_SYNTAX, 1, "seconds", "a number was expected here, not a"},
    {{.check = "reserve", .before = "x"}, RODT_E_SYNTAX, 1, "before", "a number was expected here, not x"},
    {{.check = "reserve", .after = "-5"}, RODT_E_NEGATIVE, 1, "after", "a reading cannot be below zero"},
    {{.check = "warning", .cut_out = "x"}, RODT_E_SYNTAX, 1, "cut_out", "a number was expected here, not x"},
    {{.check = "warning", .cut_in = "x"}, RODT_E_SYNTAX, 1, "cut_in", "a number was expected here, not x"},
    {{.check = "build-up", .actual_volume = "x"}, RODT_E_SYNTAX, 1, "actual_volume", "a number was expected here, not x"},
    {{.check = "build-up", .actual_volume = "5 in"}, RODT_E_UNIT, 1, "actual_volume", NO_VOLUME},
    {{.check = "build-up", .required_volume = "5l"}, RODT_E_UNIT, 1, "required_volume", NO_VOLUME},
    {{.check = "build-up", .actual_volume = "1000001"}, RODT_E_IMPLAUSIBLE, 1, "actual_volume", TOO_LARGE},
    {{.check = "build-up", .actual_volume = "99999999999"}, RODT_E_IMPLAUSIBLE, 1, "actual_volume", TOO_LARGE},
    {{.check = "drain", .answer = "perhaps"}, RODT_E_SYNTAX, 1, "answer", "an answer is yes or no"},
    {{.check = "drain", .answer = "never"}, RODT_E_SYNTAX, 1, "answer", "an answer is yes or no"},
    {{.check = "drain", .reserved = {0, 0, 0, "x"}}, RODT_E_ARGUMENT, 1, "reserved", "the reserve must be NULL"},
    {{.check = "drain", .reserved = {"x", "y"}}, RODT_E_ARGUMENT, 1, "reserved", "the reserve must be NULL"},
    {{.check = "drain", .vehicle = "bus", .towed_units = "2"}, RODT_E_ARGUMENT, 0, "towed_units",
     "a single vehicle or a bus has no towed units"},
};

static void each_refusal_in_words(void **state)
{
    (void)state;
    rodt_air_reading reading;
    rodt_error error, errors[2];
    size_t count;
    for (size_t i = 0; i < COUNT_OF(refusals); i++) {
        rodt_status status = rodt_air_form_parse(&refusals[i].form, &reading, &error);
        if (status != refusals[i].status || strcmp(error.field, refusals[i].field) != 0)
            fail_msg("refusal %zu: %d, %s: %s", i, (int)status, error.field, error.text);
        assert_string_equal(error.text, refusals[i].sentence);
        assert_int_equal(error.status, status);
        assert_int_equal(error.column, refusals[i].column);
        assert_int_equal(rodt_air_form_errors(&refusals[i].form, errors, 1, &count), RODT_OK);
        assert_int_equal(count, 1);
        assert_string_equal(errors[0].text, error.text);
    }
    assert_int_equal(rodt_air_form_parse(NULL, &reading, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.text, "a form and a reading are needed");
    assert_int_equal(error.status, RODT_E_ARGUMENT);
    assert_int_equal(error.column, 0);
}
static void answers_in_two_languages(void **state)
{
    (void)state;
    static const char *const yes[] = {"yes", " Y ", "oui"}, *const no[] = {"no", " N ", "non"};
    for (size_t i = 0; i < COUNT_OF(yes); i++) {
        rodt_air_reading reading;
        assert_int_equal(rodt_air_form_parse(&(rodt_air_form){.check = "drain", .answer = yes[i]}, &reading, NULL), RODT_OK);
        assert_int_equal(reading.answer, RODT_RECORDED_YES);
        assert_int_equal(rodt_air_form_parse(&(rodt_air_form){.check = "drain", .answer = no[i]}, &reading, NULL), RODT_OK);
        assert_int_equal(reading.answer, RODT_RECORDED_NO);
    }
}

/* "none" and a dash are no reading, and a loss has nothing that could come. */
static void every_wrong_text_is_found(void **state)
{
    (void)state;
    static const char *const fields[] = {"check", "vehicle", "towed_units", "built", "pressure", "seconds", "answer"};
    const rodt_air_form form = {.check = "brakes", .vehicle = "boat", .towed_units = "many", .built = "once",
                                .pressure = "62 mm", .seconds = "an hour", .answer = "perhaps"};
    const rodt_air_form good = {.check = "warning", .pressure = "400", .style = {.pressure_unit = RODT_PRESSURE_UNIT_KPA}};
    const rodt_air_form single = {.check = "warning", .vehicle = "single", .towed_units = "1"};
    rodt_error errors[24], first;
    rodt_air_reading reading;
    size_t count = 0;
    assert_int_equal(rodt_air_form_errors(&form, NULL, 0, &count), RODT_E_SPACE);
    assert_int_equal(count, 7);
    assert_int_equal(rodt_air_form_errors(&form, errors, 24, NULL), RODT_OK);
    for (size_t i = 0; i < count; i++)
        assert_string_equal(errors[i].field, fields[i]);
    assert_int_equal(rodt_air_form_errors(&form, errors, 7, &count), RODT_OK);
    errors[0].status = RODT_OK;
    assert_int_equal(rodt_air_form_errors(&form, errors, 6, &count), RODT_E_SPACE);
    assert_int_equal(errors[0].status, RODT_OK);
    assert_int_equal(rodt_air_form_parse(&form, &reading, &first), RODT_E_SYNTAX);
    assert_string_equal(first.text, errors[0].text);
    assert_int_equal(rodt_air_form_errors(&good, NULL, 0, &count), RODT_OK);
    assert_int_equal(count, 0);
    assert_int_equal(rodt_air_form_parse(&good, &reading, NULL), RODT_OK);
    assert_int_equal(reading.pressure_unit, RODT_PRESSURE_UNIT_KPA);
    assert_int_equal(rodt_air_form_errors(&single, errors, 24, &count), RODT_OK);
    assert_int_equal(count, 1);
    assert_string_equal(errors[0].field, "towed_units");
    assert_int_equal(rodt_air_form_errors(NULL, errors, 24, &count), RODT_E_ARGUMENT);
    assert_int_equal(rodt_air_form_errors(&good, NULL, 1, &count), RODT_E_ARGUMENT);
}

static void never_is_an_answer(void **state)
{
    (void)state;
    static const char *const said[] = {"never", "No", " did not ", "none came on", "not at all", "jamais"};
    static const char *const unsaid[] = {"none", "-", "n/a", "not done", "never 62", "nothing", ""};
    rodt_air_reading reading;
    rodt_air_finding finding;
    for (size_t i = 0; i < COUNT_OF(said); i++) {
        assert_true(rodt_air_says_never(said[i], strlen(said[i])));
        const rodt_air_form forms[] = {{.check = "warning", .pressure = said[i]}, {.check = "warning", .answer = said[i]},
                                       {.check = "cut-out", .pressure = said[i]},
                                       {.check = "build-up", .seconds = said[i]}, {.check = "build-up", .answer = said[i]}};
        for (size_t k = 0; k < COUNT_OF(forms); k++) {
            assert_int_equal(rodt_air_form_judge(&forms[k], rodt_rules_find("ca-on"), &finding, NULL), RODT_OK);
            assert_int_equal(finding.result, RODT_AIR_RESULT_DEFECTIVE);
        }
    }
    for (size_t i = 0; i < COUNT_OF(unsaid); i++)
        assert_false(rodt_air_says_never(unsaid[i], strlen(unsaid[i])));
    assert_false(rodt_air_says_never(NULL, 5));
    assert_int_equal(rodt_air_form_parse(&(rodt_air_form){.check = "warning", .pressure = "none"}, &reading, NULL), RODT_OK);
    assert_int_equal(reading.answer, RODT_RECORDED_NOT_RECORDED);
    const rodt_air_form undone = {.check = "warning", .pressure = " Not done", .cut_out = "not done", .seconds = "not done",
                                  .actual_volume = "not done", .answer = "not done"};
    assert_int_equal(rodt_air_form_judge(&undone, rodt_rules_find("ca-on"), &finding, NULL), RODT_OK);
    assert_int_equal(finding.result, RODT_AIR_RESULT_NOT_DONE);
    assert_int_not_equal(rodt_air_form_parse(&(rodt_air_form){.check = "not done"}, &reading, NULL), RODT_OK);
    assert_int_not_equal(rodt_air_form_parse(&(rodt_air_form){.check = "warning", .pressure = "not done 62"}, &reading, NULL), RODT_OK);
    assert_int_not_equal(rodt_air_form_parse(&(rodt_air_form){.check = "loss-applied", .after = "never"}, &reading, NULL), RODT_OK);
    assert_int_not_equal(rodt_air_form_parse(&(rodt_air_form){.check = "drain", .pressure = "never"}, &reading, NULL), RODT_OK);
    assert_int_not_equal(rodt_air_form_parse(&(rodt_air_form){.check = "drain", .answer = "never"}, &reading, NULL), RODT_OK);
}

/* One byte of one text is damaged: the form is refused, or the reader of the text takes it as another value. */
static void damage_never_makes_a_result_better(void **state)
{
    (void)state;
    static const char bytes[] = "0123456789/. -:,xoO?";
    uint64_t seed = 20261128;
    unsigned refused = 0;
    for (unsigned i = 0; i < 20000; i++) {
        const char *texts[FIELDS];
        char damaged[24];
        rodt_air_form form = whole;
        rodt_air_finding before, after;
        rodt_air_reading reading;
        form.after = i % 2 == 0 ? "105" : "107";
        assert_int_equal(rodt_air_form_judge(&form, rodt_rules_find("us-cdl"), &before, NULL), RODT_OK);
        memcpy(texts, &form, sizeof texts);
        size_t field = (size_t)(chance(&seed) % FIELDS);
        snprintf(damaged, sizeof damaged, "%s", texts[field]);
        damaged[chance(&seed) % strlen(damaged)] = bytes[chance(&seed) % (sizeof bytes - 1)];
        texts[field] = damaged;
        memcpy(&form, texts, sizeof texts);
        if (rodt_air_form_judge(&form, rodt_rules_find("us-cdl"), &after, NULL) != RODT_OK) {
            refused++;
            continue;
        }
        /* what was taken is the value of that text alone */
        rodt_air_form alone = {.check = whole.check};
        if (field > 0) {
            memcpy(texts, &alone, sizeof texts);
            texts[field] = damaged;
            memcpy(&alone, texts, sizeof texts);
        }
        assert_int_equal(rodt_air_form_parse(&alone, &reading, NULL), RODT_OK);
        if (after.result == RODT_AIR_RESULT_GOOD && before.result != RODT_AIR_RESULT_GOOD)
            assert_true(field == 2 || field == 5 || field == 6 || field == 9 || field == 0 || field == 1);
    }
    assert_true(refused > 5000);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(times_are_read),           cmocka_unit_test(what_is_no_time_is_refused),
        cmocka_unit_test(times_of_a_wrong_call),
        cmocka_unit_test(texts_that_say_nothing_are_no_reading),
        cmocka_unit_test(texts_at_their_limits),
        cmocka_unit_test(each_refusal_in_words),
        cmocka_unit_test(answers_in_two_languages),
        cmocka_unit_test(a_form_is_read),           cmocka_unit_test(each_text_is_refused_by_its_name), cmocka_unit_test(never_is_an_answer),
        cmocka_unit_test(every_wrong_text_is_found),
        cmocka_unit_test(damage_never_makes_a_result_better),
    };
    return cmocka_run_group_tests_name("air_form", tests, NULL, NULL);
}
