/* SPDX-License-Identifier: Apache-2.0 */
/* Errors of the readers as data: each code is given by some text, and says in English what the error says. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "core/common.h"
#include "core/error.h"
#include "core/fault.h"
#include "core/template.h"
#include "core/text.h"
#include "rodtravel/rodtravel.h"

#define FIRST RODT_MESSAGE_STATUS_ARGUMENT
#define ROOM 1000

/* --- Readers ----------------------------------------------------------------------------------------- */

typedef rodt_status (*reader)(const char *text, rodt_error *error);

static rodt_status read_length(const char *text, rodt_error *error)
{
    rodt_length out;
    return rodt_length_parse(text, &out, error);
}

static rodt_status read_comma(const char *text, rodt_error *error)
{
    rodt_length out;
    return rodt_length_parse_n(text, strlen(text), &(rodt_style){.decimal_comma = true}, &out, NULL, error);
}

static rodt_status read_pressure(const char *text, rodt_error *error)
{
    rodt_pressure out;
    return rodt_pressure_parse(text, &out, error);
}

static rodt_status read_seconds(const char *text, rodt_error *error)
{
    rodt_ratio out;
    return rodt_seconds_parse(text, &out, error);
}

static rodt_status read_date(const char *text, rodt_error *error)
{
    rodt_date out;
    return rodt_date_parse(text, &out, error);
}

static rodt_status read_month_first(const char *text, rodt_error *error)
{
    rodt_date out;
    return rodt_date_parse_n(text, strlen(text), RODT_DATE_ORDER_MONTH_FIRST, &out, error);
}

static rodt_status read_chamber(const char *text, rodt_error *error)
{
    rodt_chamber out;
    return rodt_chamber_parse(text, &out, error);
}

static rodt_status read_class(const char *text, rodt_error *error)
{
    RODT_ENUM32(rodt_stroke_class) out;
    return rodt_stroke_class_parse(text, &out, error);
}

static rodt_status read_unit(const char *text, rodt_error *error)
{
    RODT_ENUM32(rodt_unit) out;
    return rodt_unit_parse(text, &out, error);
}

static rodt_status read_position(const char *text, rodt_error *error)
{
    rodt_position out;
    return rodt_position_parse(text, &out, error);
}

static rodt_status read_adjuster(const char *text, rodt_error *error)
{
    RODT_ENUM32(rodt_adjuster) out;
    return rodt_adjuster_parse(text, &out, error);
}

/* "FIELD=text" of a wheel end whose other texts are fine. */
static rodt_status read_form(const char *text, rodt_error *error)
{
    rodt_form form = {.chamber = "30", .released = "2", .applied = "4"};
    rodt_reading reading;
    rodt_error found;
    const char *value = strchr(text, '=');
    RODT_ENUM32(rodt_field) field;
    assert_int_equal(rodt_field_find_n(text, (size_t)(value - text), &field), RODT_OK);
    rodt_form_set(&form, (rodt_field)field, value + 1);
    assert_int_equal(rodt_form_parse(&form, &reading, &found), RODT_OK);
    if (error != NULL)
        *error = found;
    return (rodt_status)found.status;
}

/* A rule set that there is not. */
static rodt_status judge_by(const char *text, rodt_error *error)
{
    const rodt_form form = {.chamber = "30", .released = "2", .applied = "4"};
    rodt_finding finding;
    return rodt_form_judge(&form, rodt_rules_find(text), &finding, error);
}

/* "MEMBER=text" of a check of a warning. */
static rodt_status read_air(const char *text, rodt_error *error)
{
    rodt_air_form form = {.check = "warning", .pressure = "60"};
    rodt_air_reading reading;
    char path[40];
    const char *value = strchr(text, '=');
    const rodt_record *of = rodt_record_find("rodt_air_form");
    snprintf(path, sizeof path, "%.*s", (int)(value - text), text);
    for (size_t i = 0; i < rodt_member_count(of); i++) {
        const rodt_member *member = rodt_member_at(of, i);
        if (strcmp(member->name, path) == 0)
            memcpy((char *)&form + member->offset, &(const char *){value + 1}, sizeof(const char *));
    }
    return rodt_air_form_parse(&form, &reading, error);
}

static rodt_status set_member(const char *text, rodt_error *error)
{
    rodt_tally tally = {0};
    return rodt_record_set_text(rodt_record_find("rodt_tally"), &tally, "brakes", text, error);
}

/* --- Cases ------------------------------------------------------------------------------------------- */

static const struct {
    reader read;
    const char *text;
    rodt_message_code code;
    const char *english;
} cases[] = {
    {read_length, NULL, RODT_MESSAGE_STATUS_ARGUMENT, "the program passed a missing or impossible value"},
    {read_length, "n/a", RODT_MESSAGE_STATUS_EMPTY, "nothing is written here"},
    {set_member, "-1", RODT_MESSAGE_STATUS_NEGATIVE, "this cannot be below zero"},
    {read_length, "2 x", RODT_MESSAGE_ERROR_EXPECTED, "in, mm, cm or the end of the text was expected here, not x"},
    {read_length, "2.", RODT_MESSAGE_ERROR_EXPECTED, "a digit after the decimal sign was expected here, not the end"},
    {read_length, "1/x", RODT_MESSAGE_ERROR_EXPECTED, "a digit was expected here, not x"},
    {read_length, "x", RODT_MESSAGE_ERROR_EXPECTED, "a number was expected here, not x"},
    {read_length, "2 \xFF", RODT_MESSAGE_ERROR_EXPECTED, NULL},
    {read_pressure, "95 x", RODT_MESSAGE_ERROR_EXPECTED, "psi, kPa or the end of the text was expected here, not x"},
    {read_pressure, "5 psi/min", RODT_MESSAGE_ERROR_UNIT_MORE, NULL}, /* a rate, and no bound */
    {read_pressure, "min 5 psi", RODT_MESSAGE_ERROR_BOUND, NULL},
    {read_pressure, "5/min", RODT_MESSAGE_ERROR_BOUND, NULL},
    {read_seconds, "45 s x", RODT_MESSAGE_ERROR_EXPECTED, "s, min or the end of the text was expected here, not x"},
    {read_length, "l 1/8", RODT_MESSAGE_ERROR_WRITTEN_FOR, "l is written where a number was expected"},
    {read_form, "applied=", RODT_MESSAGE_ERROR_NOT_WRITTEN, "nothing is written for applied"},
    {read_air, "check=", RODT_MESSAGE_ERROR_NOT_WRITTEN, "nothing is written for check"},
    {judge_by, "atlantis", RODT_MESSAGE_ERROR_NO_RULES, "no rule set was given"},
    {read_length, "2-Jan", RODT_MESSAGE_ERROR_DATE_CELL, NULL},
    {read_length, "45293", RODT_MESSAGE_ERROR_DAY_NUMBER, NULL},
    {read_length, "-2", RODT_MESSAGE_ERROR_NEGATIVE, NULL},
    {read_length, "2\u200B1/8", RODT_MESSAGE_ERROR_INVISIBLE, "invisible character here (U+200B); type the reading again"},
    {read_length, "2,125", RODT_MESSAGE_ERROR_COMMA, NULL},
    {read_comma, "1.000", RODT_MESSAGE_ERROR_THOUSANDS, NULL},
    {read_length, "2 ft", RODT_MESSAGE_ERROR_FEET, NULL},
    {read_length, "<2", RODT_MESSAGE_ERROR_BOUND, NULL},
    {read_length, "1 to 2", RODT_MESSAGE_ERROR_RANGE, NULL},
    {read_length, "2-3", RODT_MESSAGE_ERROR_HYPHEN, NULL},
    {read_length, "2 3", RODT_MESSAGE_ERROR_SECOND_NUMBER, NULL},
    {read_length, "21\u20442", RODT_MESSAGE_ERROR_NO_BLANK, NULL},
    {read_length, "02", RODT_MESSAGE_ERROR_LEADING_ZERO, NULL},
    {read_length, "0.00000000001", RODT_MESSAGE_ERROR_DECIMALS, NULL},
    {read_length, "0.000000001 mm", RODT_MESSAGE_ERROR_DIGITS, NULL},
    {read_length, "1/0", RODT_MESSAGE_ERROR_ZERO_BELOW_BAR, NULL},
    {read_length, "1/9999999999", RODT_MESSAGE_ERROR_BELOW_BAR, NULL},
    {read_length, "1 5/4", RODT_MESSAGE_ERROR_IMPROPER, NULL},
    {read_length, "1/6", RODT_MESSAGE_ERROR_DIVISIONS, NULL},
    {read_length, "in", RODT_MESSAGE_ERROR_UNIT_ALONE, NULL},
    {read_length, "2 psi", RODT_MESSAGE_ERROR_UNIT_WRONG, NULL},
    {read_length, "2 in mm", RODT_MESSAGE_ERROR_UNIT_TWICE, NULL},
    {read_length, "2 in x", RODT_MESSAGE_ERROR_UNIT_MORE, NULL},
    {read_unit, "furlong", RODT_MESSAGE_ERROR_UNIT_WORD, NULL},
    {read_form, "unit=furlong", RODT_MESSAGE_ERROR_UNIT_OF_FORM, NULL},
    {read_length, "30", RODT_MESSAGE_ERROR_TOO_LONG, NULL},
    {read_length, "1/8 mm", RODT_MESSAGE_ERROR_METRIC_FRACTION, NULL},
    {read_form, "rated_stroke=21/4", RODT_MESSAGE_ERROR_LOST_BLANK, NULL},
    {read_form, "rated_stroke=9", RODT_MESSAGE_ERROR_MARK, NULL},
    {read_form, "division=16", RODT_MESSAGE_ERROR_DIVISION, NULL},
    {read_pressure, "900", RODT_MESSAGE_ERROR_TOO_HIGH, NULL},
    {read_seconds, "99999", RODT_MESSAGE_ERROR_TOO_LATE, NULL},
    {read_seconds, "1:75", RODT_MESSAGE_ERROR_SIXTY, NULL},
    {read_seconds, "1.5 min 30 s", RODT_MESSAGE_ERROR_PART_OF_MINUTE, NULL},
    {read_seconds, "1 min 30 min", RODT_MESSAGE_ERROR_SECONDS_AFTER, NULL},
    {read_seconds, "1:30:00", RODT_MESSAGE_ERROR_HOURS, NULL},
    {read_seconds, "1:3", RODT_MESSAGE_ERROR_COLON, NULL},
    {read_seconds, "3 weeks", RODT_MESSAGE_ERROR_TIME_UNIT, NULL},
    {read_air, "actual_volume=9 in", RODT_MESSAGE_ERROR_VOLUME_UNIT, NULL},
    {read_air, "actual_volume=999999999", RODT_MESSAGE_ERROR_VOLUME, NULL},
    {read_air, "towed_units=x", RODT_MESSAGE_ERROR_COUNT, NULL},
    {read_date, "2021", RODT_MESSAGE_ERROR_DATE, NULL},
    {read_date, "x", RODT_MESSAGE_ERROR_DATE_HERE, NULL},
    {read_date, "2021-10-14x", RODT_MESSAGE_ERROR_DATE_END, NULL},
    {read_date, "2021-02-30", RODT_MESSAGE_ERROR_NO_SUCH_DAY, NULL},
    {read_date, "2021-1-14", RODT_MESSAGE_ERROR_MONTH_AND_DAY, NULL},
    {read_date, "2021-10-4", RODT_MESSAGE_ERROR_DAY, NULL},
    {read_date, "14-XYZ-21", RODT_MESSAGE_ERROR_MONTH, NULL},
    {read_date, "14-OCT", RODT_MESSAGE_ERROR_YEAR, NULL},
    {read_date, "14-OCT-123", RODT_MESSAGE_ERROR_YEAR_DIGITS, NULL},
    {read_date, "10/14", RODT_MESSAGE_ERROR_SECOND_AND_YEAR, NULL},
    {read_date, "01/02/03", RODT_MESSAGE_ERROR_DAYS,
     "the numbers can mean 3 days; which comes first, day, month or year?"},
    {read_date, "1/2/2003", RODT_MESSAGE_ERROR_DAYS,
     "the numbers can mean 2 days; which comes first, day, month or year?"},
    {read_month_first, "14/10/2021", RODT_MESSAGE_ERROR_DATE_ORDER, NULL},
    {read_chamber, "", RODT_MESSAGE_ERROR_NO_CHAMBER, NULL},
    {read_chamber, "24-Mar", RODT_MESSAGE_ERROR_CHAMBER_DATE, NULL},
    {read_chamber, "C", RODT_MESSAGE_ERROR_CHAMBER_LETTER,
     "a letter alone can be a bolt-type size or a rated-stroke code: write \"bolt C\""},
    {read_chamber, "bolt", RODT_MESSAGE_ERROR_BOLT_LETTER, NULL},
    {read_chamber, "clamp", RODT_MESSAGE_ERROR_CHAMBER_INCOMPLETE, NULL},
    {read_chamber, "30 abcdefghijklmnopqrstuvwxyz", RODT_MESSAGE_ERROR_CHAMBER_UNEXPECTED,
     "abcdefghijklmnopqrst does not belong to a chamber mark such as 30, 24/30, 30L, bolt C or roto 30"},
    {read_chamber, "30 ?", RODT_MESSAGE_ERROR_CHAMBER_UNEXPECTED,
     "? does not belong to a chamber mark such as 30, 24/30, 30L, bolt C or roto 30"},
    {read_chamber, "30 \xFF", RODT_MESSAGE_ERROR_CHAMBER_UNEXPECTED,
     "a broken byte does not belong to a chamber mark such as 30, 24/30, 30L, bolt C or roto 30"},
    {read_chamber, "bolt clamp 30", RODT_MESSAGE_ERROR_CHAMBER_TWICE, NULL},
    {read_class, "short", RODT_MESSAGE_ERROR_STROKE_CLASS, NULL},
    {read_position, "L", RODT_MESSAGE_ERROR_POSITION_EXPECTED,
     "the number of the axle was expected here, as in 1L or 2R; found L"},
    {read_position, "1", RODT_MESSAGE_ERROR_POSITION_EXPECTED,
     "left or right was expected here, as in 1L or 2R; found the end"},
    {read_position, "1L x", RODT_MESSAGE_ERROR_POSITION_EXPECTED, "the end was expected here, as in 1L or 2R; found x"},
    {read_position, "100L", RODT_MESSAGE_ERROR_POSITION_AXLE, "axles are numbered from 1 to 99"},
    {read_position, "", RODT_MESSAGE_ERROR_POSITION_NONE, NULL},
    {read_adjuster, "bent", RODT_MESSAGE_ERROR_ADJUSTER, NULL},
    {read_form, "engine=perhaps", RODT_MESSAGE_ERROR_ENGINE, NULL},
    {read_form, "spring_brake=perhaps", RODT_MESSAGE_ERROR_SPRING_BRAKE, NULL},
    {read_form, "drum=blue", RODT_MESSAGE_ERROR_DRUM, NULL},
    {read_air, "check=brakes", RODT_MESSAGE_ERROR_CHECK, NULL},
    {read_air, "vehicle=ship", RODT_MESSAGE_ERROR_VEHICLE, NULL},
    {read_air, "span=long", RODT_MESSAGE_ERROR_SPAN, NULL},
    {read_air, "answer=perhaps", RODT_MESSAGE_ERROR_ANSWER, NULL},
};

static void mark(const rodt_message *message, bool *said)
{
    said[message->code] = true;
    for (uint32_t i = 0; i < message->count; i++)
        said[message->arguments[i].code] = true;
}

/* The sentence of the code is that of the error, byte by byte. */
static void each_reader_says_its_code(void **state)
{
    (void)state;
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_error error = {.status = RODT_OK};
        rodt_message message;
        char text[ROOM];
        rodt_status status = cases[i].read(cases[i].text, &error);
        if (error.code != cases[i].code || error.status != status || status == RODT_OK)
            fail_msg("%s: %s, %s", cases[i].text, rodt_message_code_name((rodt_message_code)error.code), error.text);
        if (cases[i].english != NULL)
            assert_string_equal(error.text, cases[i].english);
        const rodt_error copy = error; /* a copy is as good */
        memset(&error, 0xA5, sizeof error);
        assert_int_equal(rodt_error_message(&copy, &message), RODT_OK);
        assert_int_equal(rodt_message_format(&message, NULL, text, sizeof text, NULL), RODT_OK);
        assert_string_equal(text, copy.text);
    }
}

/* Codes of statuses that no reader gives as a sentence are said by their function alone. */
static void every_code_of_errors_is_given_by_something(void **state)
{
    (void)state;
    bool said[RODT_MESSAGE_END] = {false};
    unsigned silent = 0;
    rodt_message message;
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_error error;
        (void)cases[i].read(cases[i].text, &error);
        assert_int_equal(rodt_error_message(&error, &message), RODT_OK);
        mark(&message, said);
    }
    for (int status = 1; status < RODT_STATUS_END; status++) {
        if (rodt_status_message((rodt_status)status, &message) == RODT_OK)
            mark(&message, said);
    }
    const rodt_error english = {.text = "x"};
    assert_int_equal(rodt_error_message(&english, &message), RODT_OK);
    mark(&message, said);
    said[RODT_MESSAGE_ERROR_UNIT_UNKNOWN] = true; /* behind the error of the unit, in forms */
    said[RODT_MESSAGE_ERROR_NO_TAPE] = true;      /* behind RODT_MESSAGE_ERROR_DIVISIONS, in texts */
    for (int code = FIRST; code < RODT_MESSAGE_STEP_SECURE_TITLE; code++) {
        if (said[code] || rodt_message_template((rodt_message_code)code)[0] == '\0')
            continue;
        print_message("nothing gives %s\n", rodt_message_code_name((rodt_message_code)code));
        silent++;
    }
    assert_int_equal(silent, 0);
}

/* Every word of English that stands between arguments would show. */
static void errors_are_said_in_french(void **state)
{
    (void)state;
    static const char *const english[] = {" the ", " is ", " of ", " not ", " was ", " and ", "there "};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_error error;
        rodt_message message;
        char text[ROOM];
        (void)cases[i].read(cases[i].text, &error);
        assert_int_equal(rodt_error_message(&error, &message), RODT_OK);
        assert_int_equal(rodt_message_format(&message, rodt_catalogue_find("fr"), text, sizeof text, NULL), RODT_OK);
        for (size_t k = 0; k < COUNT_OF(english); k++) {
            if (strstr(text, english[k]) != NULL)
                fail_msg("\"%s\" in: %s", english[k], text);
        }
    }
    rodt_error error;
    rodt_message message;
    char text[ROOM];
    (void)read_length("2 x", &error);
    assert_int_equal(rodt_error_message(&error, &message), RODT_OK);
    assert_int_equal(rodt_message_format(&message, rodt_catalogue_find("fr"), text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, "il faut ici po, mm, cm ou la fin du texte, et non x");
}

/* --- Statuses, and errors without a code ------------------------------------------------------------- */

static void statuses_are_sentences_too(void **state)
{
    (void)state;
    for (int status = -1; status <= RODT_STATUS_END; status++) {
        rodt_message message;
        char text[ROOM];
        bool is_one = status > 0 && rodt_status_name((rodt_status)status)[0] != '\0';
        rodt_status made = rodt_status_message((rodt_status)status, &message);
        assert_int_equal(made, is_one ? RODT_OK : RODT_E_ARGUMENT);
        if (!is_one)
            continue;
        assert_int_equal(rodt_message_format(&message, NULL, text, sizeof text, NULL), RODT_OK);
        assert_string_equal(text, rodt_status_text((rodt_status)status));
    }
    assert_int_equal(rodt_status_message(RODT_E_UNIT, NULL), RODT_E_ARGUMENT);
    assert_string_equal(rodti_sentence(RODT_MESSAGE_STATUS_UNIT), rodt_status_text(RODT_E_UNIT));
    assert_string_equal(rodti_sentence(RODT_MESSAGE_STROKE_OVER_LIMIT), ""); /* a sentence, but of no error */
}

static void what_has_no_code_stands_in_english(void **state)
{
    (void)state;
    const rodt_reading reading = {.pressure = {95, -1}};
    rodt_error error;
    rodt_message message;
    char text[ROOM];
    assert_int_equal(rodt_reading_check(&reading, &error), RODT_E_ARGUMENT);
    assert_int_equal(error.code, RODT_MESSAGE_NONE);
    assert_int_equal(rodt_error_message(&error, &message), RODT_OK);
    assert_int_equal(message.code, RODT_MESSAGE_ERROR_ENGLISH);
    assert_string_equal(rodti_sentence(RODT_MESSAGE_NONE), "");
    assert_int_equal(rodt_message_format(&message, rodt_catalogue_find("fr"), text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, error.text);
}

static void a_table_passes_the_code_of_a_cell_on(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit\nclamp,30,standard,1 5/4\n";
    rodt_rules *rules = NULL;
    rodt_error error;
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "own.csv", table, strlen(table), &rules, &error),
                     RODT_E_TABLE);
    assert_int_equal(error.code, RODT_MESSAGE_ERROR_IMPROPER);
    assert_string_equal(error.text, "a fraction after a whole number must be less than one");
    assert_string_equal(error.field, "limit");
    assert_int_equal(error.line, 2);
    assert_int_equal(error.column, 23);
}

static void errors_that_were_filled_by_hand(void **state)
{
    (void)state;
    rodt_error error;
    rodt_message message;
    (void)read_length("2 x", &error);
    assert_int_equal(rodt_error_message(NULL, &message), RODT_E_ARGUMENT);
    assert_int_equal(rodt_error_message(&error, NULL), RODT_E_ARGUMENT);
    rodt_error wrong = error;
    wrong.count = RODT_ERROR_ARGUMENTS;
    for (uint32_t i = 0; i < RODT_ERROR_ARGUMENTS; i++)
        wrong.arguments[i].name = "as many as there is room for";
    assert_int_equal(rodt_error_message(&wrong, &message), RODT_OK);
    assert_int_equal(message.count, RODT_ERROR_ARGUMENTS);
    wrong.count = 1;
    assert_int_equal(rodt_error_message(&wrong, &message), RODT_OK);
    assert_int_equal(message.count, 1);
    wrong.count = RODT_ERROR_ARGUMENTS + 1;
    assert_int_equal(rodt_error_message(&wrong, &message), RODT_E_ARGUMENT);
    wrong = error;
    wrong.arguments[0].name = NULL;
    assert_int_equal(rodt_error_message(&wrong, &message), RODT_E_ARGUMENT);
    wrong = error;
    memset(wrong.arguments[1].word, 'x', sizeof wrong.arguments[1].word);
    assert_int_equal(rodt_error_message(&wrong, &message), RODT_E_ARGUMENT);
    wrong = error;
    memset(wrong.text, 'x', sizeof wrong.text);
    assert_int_equal(rodt_error_message(&wrong, &message), RODT_E_ARGUMENT);
}

/* Words are cut between two characters, as sentences are. */
static void long_words_are_cut(void **state)
{
    (void)state;
    const rodt_error_argument cut = rodti_error_word("found", "123456789012345678901234567\u00E9");
    assert_string_equal(cut.word, "123456789012345678901234567");
    const rodt_error_argument before = rodti_error_word("found", "12345678901234567890123456\u00E9");
    assert_string_equal(before.word, "12345678901234567890123456");
    const rodt_error_argument whole = rodti_error_word("found", "1234567890123456789012345\u00E9");
    assert_string_equal(whole.word, "1234567890123456789012345\u00E9");
}

/* --- The parts that sentences are made of ------------------------------------------------------------ */

static void the_first_part_of_a_template(void **state)
{
    (void)state;
    static const struct {
        const char *template;
        template_kind kind;
        size_t at, size;             /* of its text */
        size_t forms, forms_size;    /* 0 = none */
        bool capital;
        size_t behind;
    } parts[] = {
        {"", TEMPLATE_END, 0, 0, 0, 0, false, 0},
        {"ab", TEMPLATE_TEXT, 0, 2, 0, 0, false, 2},
        {"ab{c}", TEMPLATE_TEXT, 0, 2, 0, 0, false, 2},
        {"ab}}", TEMPLATE_TEXT, 0, 2, 0, 0, false, 2},
        {"{{ab}", TEMPLATE_TEXT, 0, 1, 0, 0, false, 2},
        {"}}ab", TEMPLATE_TEXT, 0, 1, 0, 0, false, 2},
        {"aab", TEMPLATE_TEXT, 0, 3, 0, 0, false, 3},
        {"{name}x", TEMPLATE_ARGUMENT, 1, 4, 0, 0, false, 6},
        {"{^n}x", TEMPLATE_ARGUMENT, 2, 1, 0, 0, true, 4},
        {"{n?a|b}x", TEMPLATE_PLURAL, 1, 1, 3, 3, false, 7},
        {"{^n?a|b}", TEMPLATE_PLURAL, 2, 1, 4, 3, true, 8},
        {"{n?}", TEMPLATE_PLURAL, 1, 1, 3, 0, false, 4},
        {"}x", TEMPLATE_BROKEN, 0, 1, 0, 0, false, 0},
        {"{}", TEMPLATE_BROKEN, 0, 1, 0, 0, false, 0},
        {"{^}", TEMPLATE_BROKEN, 0, 1, 0, 0, false, 0},
        {"{?a}", TEMPLATE_BROKEN, 0, 1, 0, 0, false, 0},
        {"{n", TEMPLATE_BROKEN, 0, 1, 0, 0, false, 0},
        {"{n{", TEMPLATE_BROKEN, 0, 1, 0, 0, false, 0},
        {"{n?a", TEMPLATE_BROKEN, 0, 1, 0, 0, false, 0},
        {"{n?a{", TEMPLATE_BROKEN, 0, 1, 0, 0, false, 0},
    };
    for (size_t i = 0; i < COUNT_OF(parts); i++) {
        const char *template = parts[i].template, *at = template;
        const template_part part = rodti_template_next(&at);
        assert_int_equal(part.kind, parts[i].kind);
        assert_ptr_equal(part.text, template + parts[i].at);
        assert_int_equal(part.size, parts[i].size);
        assert_ptr_equal(part.forms, parts[i].forms > 0 ? template + parts[i].forms : NULL);
        assert_int_equal(part.forms_size, parts[i].forms_size);
        assert_int_equal(part.capital, parts[i].capital);
        assert_ptr_equal(at, template + parts[i].behind);
    }
    const char *at = "{name}";
    const template_part part = rodti_template_next(&at);
    assert_true(rodti_template_is(&part, "name"));
    assert_false(rodti_template_is(&part, "nam") || rodti_template_is(&part, "names") || rodti_template_is(&part, "game"));
}

/* Arguments: a phrase by its code, a word as it stands, a character as it is shown. */
static void the_arguments_of_a_sentence(void **state)
{
    (void)state;
    const rodt_error_argument arguments[] = {rodti_error_character("found", 'x'),
                                             rodti_error_phrase("wanted", RODT_MESSAGE_ERROR_WANTED_DIGIT),
                                             rodti_error_word("wanted", "what is not counted")};
    rodt_error error;
    memset(&error, 0xA5, sizeof error);
    assert_int_equal(rodti_error_with(&error, RODT_E_SYNTAX, 7, RODT_MESSAGE_ERROR_EXPECTED, arguments, 2), RODT_E_SYNTAX);
    assert_string_equal(error.text, "a digit was expected here, not x");
    assert_int_equal(error.status, RODT_E_SYNTAX);
    assert_int_equal(error.code, RODT_MESSAGE_ERROR_EXPECTED);
    assert_int_equal(error.column, 7);
    assert_int_equal(error.line, 0);
    assert_string_equal(error.field, "");
    assert_int_equal(error.count, 2);
    assert_memory_equal(error.arguments, arguments, 2 * sizeof *arguments);
    assert_null(error.arguments[2].name);
    assert_int_equal(rodti_error_with(NULL, RODT_E_UNIT, 7, RODT_MESSAGE_ERROR_EXPECTED, arguments, 2), RODT_E_UNIT);
    assert_int_equal(rodti_error(&error, RODT_E_UNIT, 3, RODT_MESSAGE_ERROR_FEET), RODT_E_UNIT);
    assert_true(error.status == RODT_E_UNIT && error.column == 3 && error.count == 0);
    assert_string_equal(error.text, rodti_sentence(RODT_MESSAGE_ERROR_FEET));
    assert_int_equal(rodti_error_status(&error, RODT_E_SPACE), RODT_E_SPACE);
    assert_true(error.status == RODT_E_SPACE && error.column == 0 && error.code == RODT_MESSAGE_STATUS_SPACE);
    assert_int_equal(rodti_status_code(RODT_OK), RODT_MESSAGE_NONE);
    assert_int_equal(rodti_status_code((rodt_status)3), RODT_MESSAGE_NONE);
    assert_int_equal(rodti_error_character("found", TEXT_END).code, RODT_MESSAGE_ERROR_FOUND_END);
    assert_int_equal(rodti_error_character("found", TEXT_BAD).code, RODT_MESSAGE_ERROR_FOUND_BROKEN_BYTE);
    assert_string_equal(rodti_error_character("found", 0x200B).word, "U+200B");
    assert_string_equal(rodti_error_character("found", 0x200B).name, "found");
}

/* --- Values that were filled by hand ----------------------------------------------------------------- */

static void faults_of_a_ratio(void **state)
{
    (void)state;
    static const struct {
        rodt_ratio value;
        const char *fault;
    } faults[] = {
        {{0, 0}, NULL},
        {{0, 1}, NULL},
        {{1, 2}, NULL},
        {{12, 1}, NULL},
        {{25, 2}, "too much"},
        {{1, 0}, "the denominator is zero"},
        {{-1, 0}, "the denominator is zero"},
        {{0, -1}, "the denominator is below zero"},
        {{-1, -2}, "the denominator is below zero"},
        {{-1, 2}, "the figure is below zero"},
        {{2, 4}, "the fraction is not in lowest terms"},
        {{0, 2}, "the fraction is not in lowest terms"},
        {{0, 3}, "the fraction is not in lowest terms"},
    };
    for (size_t i = 0; i < COUNT_OF(faults); i++) {
        const char *fault = rodti_ratio_fault(faults[i].value, 12, "too much");
        assert_int_equal(fault != NULL, faults[i].fault != NULL);
        if (fault != NULL)
            assert_string_equal(fault, faults[i].fault);
    }
    rodt_error error;
    assert_int_equal(rodti_field_error(NULL, "released", "too much"), RODT_E_ARGUMENT);
    assert_int_equal(rodti_field_error(&error, "released", "too much"), RODT_E_ARGUMENT);
    assert_true(error.status == RODT_E_ARGUMENT && error.column == 0);
    assert_string_equal(error.field, "released");
    assert_string_equal(error.text, "too much");
    assert_int_equal(rodti_rules_error(&error), RODT_E_UNKNOWN_RULES);
    assert_true(error.status == RODT_E_UNKNOWN_RULES && error.column == 0 && error.code == RODT_MESSAGE_ERROR_NO_RULES);
    assert_true(rodti_is_zero((const uint64_t[]){0, 0, 1}, 2) && rodti_is_zero(NULL, 0));
    assert_false(rodti_is_zero((const uint64_t[]){0, 1}, 2) || rodti_is_zero((const uint64_t[]){7, 0}, 2) || rodti_is_zero((const uint64_t[]){3, 5}, 2));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_reader_says_its_code),
        cmocka_unit_test(every_code_of_errors_is_given_by_something),
        cmocka_unit_test(errors_are_said_in_french),
        cmocka_unit_test(statuses_are_sentences_too),
        cmocka_unit_test(what_has_no_code_stands_in_english),
        cmocka_unit_test(a_table_passes_the_code_of_a_cell_on),
        cmocka_unit_test(errors_that_were_filled_by_hand),
        cmocka_unit_test(long_words_are_cut),
        cmocka_unit_test(the_first_part_of_a_template),
        cmocka_unit_test(the_arguments_of_a_sentence),
        cmocka_unit_test(faults_of_a_ratio),
    };
    return cmocka_run_group_tests_name("error", tests, NULL, NULL);
}
