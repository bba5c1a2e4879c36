/* SPDX-License-Identifier: Apache-2.0 */
/* Wheel ends as text: strict for one, lenient for a file, and never a silent guess. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <string.h>

#include "rodtravel/rodtravel.h"

static const rodt_rules *us(void) { return rodt_rules_find("us-fmcsr"); }

/* Every test starts from a wheel end that passes and changes one text. */
static rodt_form good(void)
{
    return (rodt_form){.chamber = "30", .released = "2 1/8", .applied = "4", .stroke_class = "standard",
                               .psi = "95", .date = "2024-05-06"};
}

static rodt_finding row(rodt_form text)
{
    rodt_finding finding;
    assert_int_equal(rodt_form_judge_row(&text, us(), &finding, NULL), RODT_OK);
    return finding;
}

static void refused(rodt_form text, rodt_status status, const char *field)
{
    rodt_finding finding;
    rodt_finding before;
    rodt_error error;
    memset(&finding, 0x3C, sizeof finding);
    before = finding;
    assert_int_equal(rodt_form_judge(&text, us(), &finding, &error), status);
    assert_memory_equal(&finding, &before, sizeof before);
    assert_int_equal(error.status, status);
    assert_string_equal(error.field, field);
    assert_true(strlen(error.text) > 0);
    assert_int_equal(rodt_form_judge(&text, us(), &finding, NULL), status);
}

static void both_ways_agree_on_what_can_be_read(void **state)
{
    (void)state;
    rodt_form text = good();
    rodt_finding strict;
    rodt_finding lenient;
    rodt_error error;
    assert_int_equal(rodt_form_judge(&text, us(), &strict, &error), RODT_OK);
    assert_int_equal(rodt_form_judge_row(&text, us(), &lenient, &error), RODT_OK);
    assert_int_equal(error.status, RODT_OK);
    assert_memory_equal(&strict, &lenient, sizeof strict);
    assert_int_equal(strict.verdict, RODT_VERDICT_IN_ADJUSTMENT);
    error.column = 77; /* untouched without an error */
    assert_int_equal(rodt_form_judge(&text, us(), &strict, &error), RODT_OK);
    assert_int_equal(error.column, 77);
}

/* A limit marked in millimetres, parts of 127 in, has no common 64-bit denominator with these readings. */
static void readings_too_fine_for_a_limit_are_refused_with_a_sentence(void **state)
{
    (void)state;
    rodt_form text = {.chamber = "18", .released = "1/536870912", .applied = "1 1/244140625", .marked_limit = "40 mm"};
    rodt_finding finding;
    rodt_error error = {.status = RODT_OK};
    refused(text, RODT_E_RANGE, "");
    assert_int_equal(rodt_form_judge_row(&text, us(), &finding, &error), RODT_E_RANGE);
    assert_int_equal(error.status, RODT_E_RANGE);
    assert_true(strlen(error.text) > 0);
    assert_int_equal(rodt_form_judge_row(&text, us(), &finding, NULL), RODT_E_RANGE);
    rodt_form_set(&text, RODT_FIELD_MARKED_LIMIT, "1 1/2");
    rodt_form_set(&text, RODT_READING_FIELDS, "no field");
    rodt_form_set(NULL, RODT_FIELD_MARKED_LIMIT, "no form");
    assert_int_equal(rodt_form_judge(&text, us(), &finding, NULL), RODT_OK);
    assert_int_equal(finding.verdict, RODT_VERDICT_IN_ADJUSTMENT);
}

static void the_first_unreadable_text_is_named(void **state)
{
    (void)state;
    rodt_form text = good();
    text.released = "1 3/0";
    refused(text, RODT_E_SYNTAX, "released");
    text = good();
    text.applied = "2-Jan";
    refused(text, RODT_E_DATE_CELL, "applied");
    text = good();
    text.applied = "";
    refused(text, RODT_E_EMPTY, "applied");
    text = good();
    text.released = NULL;
    refused(text, RODT_E_EMPTY, "released");
    text = good();
    text.chamber = "  ";
    refused(text, RODT_E_EMPTY, "chamber");
    text = good();
    text.chamber = "banana";
    refused(text, RODT_E_UNKNOWN_CHAMBER, "chamber");
    text = good();
    text.stroke_class = "medium";
    refused(text, RODT_E_SYNTAX, "stroke_class");
    text = good();
    text.unit = "ft";
    refused(text, RODT_E_SYNTAX, "unit");
    text = good();
    text.division = "0";
    refused(text, RODT_E_IMPLAUSIBLE, "division");
    text = good();
    text.psi = "95 mm";
    refused(text, RODT_E_UNIT, "psi");
    text = good();
    text.date = "05/06/2024";
    refused(text, RODT_E_AMBIGUOUS, "date");
    text = good();
    text.date = "2024-02-30";
    refused(text, RODT_E_SYNTAX, "date");
    text = good();
    text.rated_stroke = "three";
    refused(text, RODT_E_SYNTAX, "rated_stroke");
    text = good();
    text.released = "1 3/0";
    text.applied = "2-Jan";
    refused(text, RODT_E_SYNTAX, "released");
}

static void column_of(rodt_form text, const char *field, uint32_t column)
{
    rodt_finding finding;
    rodt_error error = {.column = 77};
    assert_int_not_equal(rodt_form_judge(&text, us(), &finding, &error), RODT_OK);
    assert_string_equal(error.field, field);
    assert_int_equal(error.column, column);
}

/* A value that is refused as a whole begins at the first column; what is not there has none. */
static void the_column_is_the_place_in_the_text(void **state)
{
    (void)state;
    rodt_form text = good();
    text.division = "0";
    column_of(text, "division", 1);
    text = good();
    text.applied = "4 1/0";
    column_of(text, "applied", 5);
    text = good();
    text.applied = "";
    column_of(text, "applied", 0);
    rodt_finding finding;
    rodt_error error = {.column = 77};
    assert_int_equal(rodt_form_judge(NULL, us(), &finding, &error), RODT_E_ARGUMENT);
    assert_int_equal(error.column, 0);
}

/* Without a known unit only a text that names its own is a length: a bare number would be one of two, and a fraction
 * may be of anything. */
static void a_unit_that_nobody_knows_leaves_bare_numbers_unread(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        rodt_status status;
    } cases[] = {{"2\"", RODT_OK}, {"50 mm", RODT_OK}, {"0", RODT_OK}, {"2", RODT_E_UNIT}, {"1 3/4", RODT_E_UNIT}, {"2,5 mm", RODT_E_AMBIGUOUS},
                 {"1 3/0", RODT_E_SYNTAX}};
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        const rodt_form text = {.chamber = "30", .released = cases[i].text, .applied = "4\"", .unit = "ft"};
        rodt_error errors[RODT_FORM_ERRORS_MAX];
        size_t count = 0;
        assert_int_equal(rodt_form_errors(&text, errors, RODT_FORM_ERRORS_MAX, &count), RODT_OK);
        assert_int_equal(count, cases[i].status == RODT_OK ? 1 : 2);
        assert_string_equal(errors[0].field, "unit");
        assert_int_equal(errors[0].status, RODT_E_SYNTAX);
        if (cases[i].status != RODT_OK)
            assert_int_equal(errors[1].status, cases[i].status);
        if (cases[i].status == RODT_E_UNIT) {
            assert_int_equal(errors[1].column, 0);
            assert_string_equal(errors[1].text, "the unit of this number is not known");
        }
        rodt_finding finding = row(text);
        assert_int_equal(rodt_length_given(finding.released), cases[i].status == RODT_OK);
        assert_int_equal(finding.verdict, RODT_VERDICT_UNDETERMINED);
    }
}

static void conditions_are_words_of_the_form(void **state)
{
    (void)state;
    rodt_form text = good();
    text.engine = "off";
    text.spring_brake = " Released ";
    text.drum = "cold";
    assert_int_equal(row(text).verdict, RODT_VERDICT_IN_ADJUSTMENT);
    text.engine = "ON";
    rodt_finding finding = row(text);
    assert_int_equal(finding.verdict, RODT_VERDICT_UNDETERMINED);
    assert_true(rodt_finding_has(&finding, RODT_REASON_ENGINE_RUNNING));
    text.engine = NULL;
    text.spring_brake = "applied";
    finding = row(text);
    assert_true(rodt_finding_has(&finding, RODT_REASON_SPRING_BRAKE_APPLIED));
    text.spring_brake = NULL;
    text.drum = "hot";
    finding = row(text);
    assert_int_equal(finding.verdict, RODT_VERDICT_IN_ADJUSTMENT);
    assert_true(rodt_finding_has(&finding, RODT_REASON_DRUM_HOT));
    text.drum = "tepid";
    refused(text, RODT_E_SYNTAX, "drum");
    assert_int_equal(row(text).verdict, RODT_VERDICT_UNDETERMINED);
    text.drum = NULL;
    text.engine = "maybe";
    refused(text, RODT_E_SYNTAX, "engine");
    text.engine = NULL;
    text.spring_brake = "yes";
    refused(text, RODT_E_SYNTAX, "spring_brake");
}

#define BIT(name) RODT_REASON_BIT(RODT_REASON_##name)

/* A form with every text; what is a length names its unit. */
static rodt_form full(void)
{
    return (rodt_form){.chamber = "30", .released = "2 1/8 in", .applied = "4 in", .stroke_class = "standard",
                       .rated_stroke = "2 1/2 in", .marked_limit = "2 in", .psi = "95", .psi_after = "93",
                       .division = "1/16 in", .date = "2024-05-06", .unit = "in", .engine = "off",
                       .spring_brake = "released", .drum = "cold"};
}

#define NO_MARK "a chamber is marked with 3/4 to 6 in; leave it blank for none, and write the unit: 3 in"
#define LOST_BLANK "a blank may be lost here: write 2 1/4, not 21/4"
#define DATE_CELL "this is a date; a spreadsheet makes dates of fractions"
#define NO_DIVISION "a tape division is above 0 and at most 1/2 in; for sixteenths write 1/16"
#define DAYS(count) "the numbers can mean " count " days; which comes first, day, month or year?"

static const struct refusal {
    rodt_field field;
    const char *text;
    rodt_status status; /* RODT_OK: the text says nothing */
    uint32_t column;
    uint64_t reasons;
    const char *sentence;
} refusals[] = {
    {RODT_FIELD_UNIT, "ft", RODT_E_SYNTAX, 1, BIT(OTHER_UNREADABLE), "the unit of a length is in, mm or cm"},
    {RODT_FIELD_UNIT, " ", RODT_OK, 0, 0, ""},
    {RODT_FIELD_CHAMBER, " ", RODT_E_EMPTY, 0, 0, "nothing is written for chamber"},
    {RODT_FIELD_CHAMBER, "banana", RODT_E_UNKNOWN_CHAMBER, 1, BIT(CHAMBER_UNREADABLE),
     "banana does not belong to a chamber mark such as 30, 24/30, 30L, bolt C or roto 30"},
    {RODT_FIELD_STROKE_CLASS, "medium", RODT_E_SYNTAX, 1, BIT(OTHER_UNREADABLE),
     "a stroke class is standard, long or unknown"},
    {RODT_FIELD_STROKE_CLASS, " ", RODT_OK, 0, 0, ""},
    {RODT_FIELD_RATED_STROKE, "three", RODT_E_SYNTAX, 1, BIT(OTHER_UNREADABLE), "a number was expected here, not t"},
    {RODT_FIELD_RATED_STROKE, "21/4", RODT_E_AMBIGUOUS, 1, BIT(OTHER_UNREADABLE), LOST_BLANK},
    {RODT_FIELD_RATED_STROKE, "0", RODT_E_IMPLAUSIBLE, 1, BIT(OTHER_UNREADABLE), NO_MARK},
    {RODT_FIELD_RATED_STROKE, "n/a", RODT_OK, 0, 0, ""},
    {RODT_FIELD_MARKED_LIMIT, "113/16", RODT_E_AMBIGUOUS, 1, BIT(OTHER_UNREADABLE), LOST_BLANK},
    {RODT_FIELD_MARKED_LIMIT, "1/2", RODT_E_IMPLAUSIBLE, 1, BIT(OTHER_UNREADABLE), NO_MARK},
    {RODT_FIELD_MARKED_LIMIT, "2-Jan", RODT_E_DATE_CELL, 1, BIT(OTHER_UNREADABLE) | BIT(SPREADSHEET_DATE), DATE_CELL},
    {RODT_FIELD_RELEASED, "", RODT_E_EMPTY, 0, 0, "nothing is written for released"},
    {RODT_FIELD_RELEASED, "n/a", RODT_E_EMPTY, 0, 0, "nothing is written for released"},
    {RODT_FIELD_RELEASED, "2 1/0 in", RODT_E_SYNTAX, 5, BIT(RELEASED_UNREADABLE),
     "a fraction cannot have zero below its bar"},
    {RODT_FIELD_RELEASED, "2-Jan", RODT_E_DATE_CELL, 1, BIT(RELEASED_UNREADABLE) | BIT(SPREADSHEET_DATE), DATE_CELL},
    {RODT_FIELD_APPLIED, "-", RODT_E_EMPTY, 0, 0, "nothing is written for applied"},
    {RODT_FIELD_APPLIED, "\u00A0", RODT_E_EMPTY, 0, 0, "nothing is written for applied"},
    {RODT_FIELD_APPLIED, "feet", RODT_E_UNIT, 1, BIT(APPLIED_UNREADABLE),
     "feet do not fit here; write inches or millimetres"},
    {RODT_FIELD_PSI, "95 mm", RODT_E_UNIT, 4, BIT(OTHER_UNREADABLE), "this unit does not fit here"},
    {RODT_FIELD_PSI, "n/a", RODT_OK, 0, 0, ""},
    {RODT_FIELD_PSI, " ", RODT_OK, 0, 0, ""},
    {RODT_FIELD_PSI_AFTER, "-3", RODT_E_NEGATIVE, 1, BIT(OTHER_UNREADABLE), "a reading cannot be below zero"},
    {RODT_FIELD_PSI_AFTER, "5-Jan", RODT_E_DATE_CELL, 1, BIT(OTHER_UNREADABLE) | BIT(SPREADSHEET_DATE), DATE_CELL},
    {RODT_FIELD_DIVISION, "0", RODT_E_IMPLAUSIBLE, 1, BIT(OTHER_UNREADABLE), NO_DIVISION},
    {RODT_FIELD_DIVISION, "1", RODT_E_IMPLAUSIBLE, 1, BIT(OTHER_UNREADABLE), NO_DIVISION},
    {RODT_FIELD_DIVISION, "coarse", RODT_E_SYNTAX, 1, BIT(OTHER_UNREADABLE), "a number was expected here, not c"},
    {RODT_FIELD_ENGINE, "maybe", RODT_E_SYNTAX, 1, BIT(OTHER_UNREADABLE), "the engine was on or off"},
    {RODT_FIELD_ENGINE, " ", RODT_OK, 0, 0, ""},
    {RODT_FIELD_SPRING_BRAKE, "yes", RODT_E_SYNTAX, 1, BIT(OTHER_UNREADABLE), "the spring brake was released or on"},
    {RODT_FIELD_DRUM, "tepid", RODT_E_SYNTAX, 1, BIT(OTHER_UNREADABLE), "a drum is cold, warm or hot"},
    {RODT_FIELD_DATE, "soon", RODT_E_SYNTAX, 1, BIT(DATE_UNREADABLE), "a date was expected here, such as 2021-10-14"},
    {RODT_FIELD_DATE, "!", RODT_E_SYNTAX, 1, BIT(DATE_UNREADABLE), "a date was expected here, such as 2021-10-14"},
    {RODT_FIELD_DATE, " ", RODT_OK, 0, 0, ""},
    {RODT_FIELD_DATE, "\u00A0", RODT_OK, 0, 0, ""},
    {RODT_FIELD_DATE, "10/11/12", RODT_E_AMBIGUOUS, 0, BIT(DATE_UNREADABLE), DAYS("3")},
};

static void check_error(const rodt_error *error, const struct refusal *wanted)
{
    if (error->status != wanted->status || error->column != wanted->column || strcmp(error->text, wanted->sentence) != 0)
        fail_msg("\"%s\": status %d column %u (%s)", wanted->text, (int)error->status, (unsigned)error->column, error->text);
    assert_string_equal(error->field, wanted->status != RODT_OK ? rodt_field_name(wanted->field) : "");
}

/* What cannot be read is as if it were not there, but for its reason, and is told alike by all that reads the form. */
static void each_text_is_refused_by_its_own_sentence(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof refusals / sizeof refusals[0]; i++) {
        const struct refusal *wanted = &refusals[i];
        rodt_form form = full(), without = full();
        rodt_reading reading, other;
        rodt_finding finding;
        rodt_error error, errors[2] = {{.status = RODT_OK}, {.column = 77}};
        size_t count = 99;
        rodt_form_set(&form, wanted->field, wanted->text);
        rodt_form_set(&without, wanted->field, NULL);
        memset(&reading, 0x3C, sizeof reading);
        assert_int_equal(rodt_form_parse(&form, &reading, &error), RODT_OK);
        assert_int_equal(rodt_form_parse(&without, &other, NULL), RODT_OK);
        check_error(&error, wanted);
        other.reasons = wanted->reasons;
        assert_memory_equal(&reading, &other, sizeof other);
        assert_int_equal(rodt_form_judge(&form, us(), &finding, &error), wanted->status);
        if (wanted->status != RODT_OK)
            check_error(&error, wanted);
        assert_int_equal(rodt_form_judge_row(&form, us(), &finding, &error), RODT_OK);
        check_error(&error, wanted);
        assert_int_equal(rodt_form_errors(&form, errors, 2, &count), RODT_OK);
        assert_int_equal(count, wanted->status != RODT_OK);
        check_error(&errors[0], wanted);
        assert_int_equal(errors[1].column, 77);
    }
}

/* The first text that cannot be read is named, and only without one the first that is absent. */
static void what_cannot_be_read_comes_before_what_is_absent(void **state)
{
    (void)state;
    static const char *const cases[][4] = {
        {"", "x", "4", "released"}, {"", "x", "y", "released"}, {"x", "", "y", "chamber"}, {"x", "y", "", "chamber"},
        {"", "", "y", "applied"},   {"", "", "", "chamber"},    {"30", "", "", "released"}};
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        const rodt_form form = {.chamber = cases[i][0], .released = cases[i][1], .applied = cases[i][2]};
        rodt_reading reading;
        rodt_finding finding;
        rodt_error error;
        assert_int_equal(rodt_form_parse(&form, &reading, &error), RODT_OK);
        assert_string_equal(error.field, cases[i][3]);
        assert_int_not_equal(rodt_form_judge(&form, us(), &finding, &error), RODT_OK);
        assert_string_equal(error.field, cases[i][3]);
    }
}

/* Every text gives its member, and a lost blank the values beside it. */
static void every_text_becomes_its_member(void **state)
{
    (void)state;
    rodt_form form = {.chamber = "30", .released = "31/8", .applied = "113/16", .stroke_class = " long ",
                      .rated_stroke = "3", .marked_limit = "63.5 mm", .psi = "650 kPa", .psi_after = "+95",
                      .division = "1 mm", .date = "05/06/2024", .unit = " in ", .engine = "on", .spring_brake = "on",
                      .drum = "warm"};
    rodt_reading reading, wanted = {0};
    rodt_error error;
    assert_int_equal(rodt_chamber_parse("30", &wanted.chamber, NULL), RODT_OK);
    assert_true(rodt_chamber_add_class(&wanted.chamber, RODT_STROKE_CLASS_LONG));
    wanted.chamber.rated_stroke = (rodt_length){3, 1};
    wanted.chamber.marked_limit = (rodt_length){5, 2};
    wanted.released = (rodt_length){31, 8};
    wanted.other_released[0] = (rodt_length){25, 8};
    wanted.applied = (rodt_length){113, 16};
    wanted.other_applied[0] = (rodt_length){29, 16};
    wanted.other_applied[1] = (rodt_length){179, 16};
    assert_int_equal(rodt_pressure_from_kpa(650, 1, &wanted.pressure), RODT_OK);
    wanted.pressure_after = (rodt_pressure){95, 1};
    wanted.pressure_unit = RODT_PRESSURE_UNIT_KPA;
    wanted.division = (rodt_length){5, 127};
    wanted.day = (rodt_date){2024, 6, 5};
    wanted.other_day = (rodt_date){2024, 5, 6};
    wanted.engine_running = wanted.spring_brake_applied = RODT_RECORDED_YES;
    wanted.drum = RODT_DRUM_WARM;
    assert_int_equal(rodt_form_parse(&form, &reading, &error), RODT_OK);
    assert_int_equal(error.status, RODT_OK);
    assert_memory_equal(&reading, &wanted, sizeof wanted);
    /* the unit of the last length that is no inch; the last day of three that are two */
    form.released = "5.08";
    form.applied = "10 in";
    form.unit = "cm";
    form.date = "10/11/10";
    wanted.released = (rodt_length){2, 1};
    wanted.applied = (rodt_length){10, 1};
    memset(wanted.other_released, 0, sizeof wanted.other_released);
    memset(wanted.other_applied, 0, sizeof wanted.other_applied);
    wanted.unit = RODT_UNIT_CM;
    wanted.chamber.rated_stroke = (rodt_length){1, 1};
    form.rated_stroke = "2.54";
    wanted.day = (rodt_date){2010, 11, 10};
    wanted.other_day = (rodt_date){2010, 10, 11};
    form.drum = "cold";
    wanted.drum = RODT_DRUM_COLD;
    form.chamber = " 30";
    form.applied = "\u00A010 in\u00A0";
    assert_int_equal(rodt_form_parse(&form, &reading, NULL), RODT_OK);
    assert_memory_equal(&reading, &wanted, sizeof wanted);
    form.spring_brake = "off";
    wanted.spring_brake_applied = RODT_RECORDED_NO;
    form.drum = " x";
    form.date = "21/10/14";
    wanted.drum = RODT_DRUM_NOT_RECORDED;
    wanted.reasons = BIT(OTHER_UNREADABLE);
    wanted.day = (rodt_date){2014, 10, 21};
    wanted.other_day = (rodt_date){2021, 10, 14};
    assert_int_equal(rodt_form_parse(&form, &reading, NULL), RODT_OK);
    assert_memory_equal(&reading, &wanted, sizeof wanted);
}

/* A file is judged by both days; one wheel end is asked. */
static void one_form_is_asked_which_day_it_was(void **state)
{
    (void)state;
    rodt_form form = full();
    rodt_finding finding;
    rodt_error error, errors[1];
    size_t count;
    const struct refusal wanted = {RODT_FIELD_DATE, "", RODT_E_AMBIGUOUS, 0, 0, DAYS("2")};
    form.date = "05/06/2024";
    assert_int_equal(rodt_form_judge(&form, us(), &finding, &error), RODT_E_AMBIGUOUS);
    check_error(&error, &wanted);
    assert_int_equal(rodt_form_errors(&form, errors, 1, &count), RODT_OK);
    assert_int_equal(count, 1);
    check_error(&errors[0], &wanted);
    assert_int_equal(rodt_form_judge_row(&form, us(), &finding, &error), RODT_OK);
    assert_int_equal(error.status, RODT_OK);
}

/* What a program gives beside the texts, and places for results, have sentences of their own. */
static void a_form_that_is_filled_wrongly_is_refused(void **state)
{
    (void)state;
    static const struct {
        rodt_form form;
        const char *field;
        const char *sentence;
    } cases[] = {
        {{.style = {.unit = RODT_UNIT_END}}, "unit", "the unit of a length is in, mm or cm"},
        {{.style = {.pressure_unit = RODT_PRESSURE_UNIT_END}}, "psi", "the unit of a pressure is psi or kPa"},
        {{.date_order = RODT_DATE_ORDER_END}, "date", "there is no such order of a date"},
        {{.default_day = {2021, 2, 29}}, "date",
         "there is no such day in the calendar, or it is not between 1900 and 2199"},
        {{.style = {.reserved = {1, 0}}}, "reserved", "the reserve of a style is zero"},
        {{.style = {.reserved = {0, 1}}}, "reserved", "the reserve of a style is zero"},
        {{.reserved = {"x"}}, "reserved", "the reserve of a form is NULL"},
        {{.reserved = {[3] = "x"}}, "reserved", "the reserve of a form is NULL"},
    };
    rodt_reading reading, before;
    rodt_finding finding;
    rodt_error error;
    memset(&reading, 0x3C, sizeof reading);
    before = reading;
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        assert_int_equal(rodt_form_parse(&cases[i].form, &reading, &error), RODT_E_ARGUMENT);
        assert_memory_equal(&reading, &before, sizeof before);
        assert_int_equal(error.status, RODT_E_ARGUMENT);
        assert_string_equal(error.field, cases[i].field);
        assert_string_equal(error.text, cases[i].sentence);
        assert_int_equal(rodt_form_judge(&cases[i].form, us(), &finding, &error), RODT_E_ARGUMENT);
        assert_string_equal(error.text, cases[i].sentence);
        assert_int_equal(rodt_form_errors(&cases[i].form, NULL, 0, NULL), RODT_E_ARGUMENT);
    }
}

static void a_file_goes_on_and_names_what_it_could_not_read(void **state)
{
    (void)state;
    static const struct {
        const char *chamber, *released, *applied, *psi, *day;
        rodt_verdict verdict;
        uint64_t reasons; /* all of these */
        const char *field;
    } cases[] = {
        {"30", "2-Jan", "4", "95", "", RODT_VERDICT_UNDETERMINED, BIT(RELEASED_UNREADABLE) | BIT(SPREADSHEET_DATE),
         "released"},
        {"30", "2", "empty Cell", "95", "", RODT_VERDICT_UNDETERMINED, BIT(APPLIED_UNREADABLE), "applied"},
        {"30", "2", "", "95", "", RODT_VERDICT_UNDETERMINED, BIT(APPLIED_MISSING), "applied"},
        {"30", "2", "n/a", "95", "", RODT_VERDICT_UNDETERMINED, BIT(APPLIED_MISSING), "applied"},
        {"", "2", "3 3/8", "95", "", RODT_VERDICT_UNDETERMINED, BIT(CHAMBER_MISSING), "chamber"},
        {"painted", "2", "3 3/8", "95", "", RODT_VERDICT_UNDETERMINED, BIT(CHAMBER_UNREADABLE), "chamber"},
        {"painted", "2", "2", "95", "", RODT_VERDICT_INOPERATIVE, BIT(CHAMBER_UNREADABLE) | BIT(NO_MOVEMENT), "chamber"},
        {"30", "2", "3 3/8", "9O", "", RODT_VERDICT_UNDETERMINED, BIT(OTHER_UNREADABLE), "psi"},
        {"30", "2", "3 3/8", "95", "soon", RODT_VERDICT_UNDETERMINED, BIT(DATE_UNREADABLE) | BIT(WITHIN_LIMIT), "date"},
        {"30", "2", "4 3/8", "95", "soon", RODT_VERDICT_OUT_OF_ADJUSTMENT, BIT(DATE_UNREADABLE) | BIT(OVER_LIMIT), "date"},
        {"36", "2", "4 3/8", "95", "soon", RODT_VERDICT_UNDETERMINED, BIT(DATE_UNREADABLE), "date"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        rodt_form text = {.chamber = cases[i].chamber, .released = cases[i].released,
                                  .applied = cases[i].applied, .psi = cases[i].psi, .date = cases[i].day};
        rodt_finding finding;
        rodt_error error;
        assert_int_equal(rodt_form_judge_row(&text, us(), &finding, &error), RODT_OK);
        assert_int_equal(finding.verdict, cases[i].verdict);
        assert_true((finding.reasons & cases[i].reasons) == cases[i].reasons);
        assert_string_equal(error.field, cases[i].field);
    }
}

static void what_can_be_computed_still_is(void **state)
{
    (void)state;
    rodt_form text = good();
    text.chamber = "";
    assert_int_equal(row(text).applied_stroke.num, 15);
    text = good();
    text.applied = "45293";
    rodt_finding finding = row(text);
    assert_false(rodt_length_given(finding.applied_stroke));
    assert_int_equal(finding.limit.num, 2);
    assert_true(rodt_finding_has(&finding, RODT_REASON_SPREADSHEET_DATE));
    assert_false(rodt_finding_has(&finding, RODT_REASON_APPLIED_MISSING));
}

/* 06/05/2024: either way the limit of a clamp 36 is the one since 2021-10-14. 10/11/2021: 10 November has
 * the new limit, 11 October the old one. */
static void an_ambiguous_date_is_judged_on_both_days(void **state)
{
    (void)state;
    rodt_form text = good();
    text.chamber = "36";
    text.released = "2";
    text.applied = "4 1/2";
    text.date = "06/05/2024";
    rodt_finding finding = row(text);
    assert_int_equal(finding.verdict, RODT_VERDICT_IN_ADJUSTMENT);
    assert_true(rodt_finding_has(&finding, RODT_REASON_DATE_AMBIGUOUS));
    text.date = "10/11/2021";
    assert_int_equal(row(text).verdict, RODT_VERDICT_UNDETERMINED);
    text.date_order = RODT_DATE_ORDER_DAY_FIRST;
    assert_int_equal(row(text).verdict, RODT_VERDICT_IN_ADJUSTMENT);
    text.date_order = RODT_DATE_ORDER_MONTH_FIRST;
    assert_int_equal(row(text).verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
}

static void a_row_without_a_date_has_the_day_of_the_form(void **state)
{
    (void)state;
    rodt_form text = good();
    text.chamber = "36";
    text.released = "2";
    text.applied = "4 1/2";
    text.date = "";
    assert_int_equal(rodt_date_make(2021, 10, 13, &text.default_day), RODT_OK);
    assert_int_equal(row(text).verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    text.date = "14-OCT-21";
    assert_int_equal(row(text).verdict, RODT_VERDICT_IN_ADJUSTMENT);
    rodt_reading reading;
    text.date = "soon"; /* a day that was written is not that of the form */
    assert_int_equal(rodt_form_parse(&text, &reading, NULL), RODT_OK);
    assert_false(rodt_date_given(reading.day));
}

static void the_unit_in_the_cell_beats_the_column_and_that_the_form(void **state)
{
    (void)state;
    rodt_form text = good();
    text.style.unit = RODT_UNIT_MM;
    text.released = "50";
    text.applied = "100.8";
    rodt_finding finding = row(text);
    assert_int_equal(finding.limit.num, 2);
    assert_int_equal(finding.verdict, RODT_VERDICT_IN_ADJUSTMENT); /* exactly 50.8 mm */
    assert_true(rodt_finding_has(&finding, RODT_REASON_AT_LIMIT));
    assert_int_equal(finding.unit, RODT_UNIT_MM);
    text.unit = " in ";
    text.released = "2";
    text.applied = "101.6 mm";
    finding = row(text);
    assert_true(rodt_finding_has(&finding, RODT_REASON_AT_LIMIT));
    assert_int_equal(finding.unit, RODT_UNIT_MM);
}

static void a_decimal_comma_is_read_only_when_it_was_said(void **state)
{
    (void)state;
    rodt_form text = good();
    text.released = "2,125";
    text.applied = "4,125";
    refused(text, RODT_E_AMBIGUOUS, "released");
    text.style.decimal_comma = true;
    rodt_finding finding = row(text);
    assert_true(rodt_finding_has(&finding, RODT_REASON_AT_LIMIT));
}

static void contradicting_classes_are_strict_and_said(void **state)
{
    (void)state;
    rodt_form text = good();
    text.chamber = "30LS";
    text.stroke_class = "standard";
    text.applied = "4 1/4";
    rodt_finding finding = row(text);
    assert_int_equal(finding.verdict, RODT_VERDICT_OUT_OF_ADJUSTMENT);
    assert_true(rodt_finding_has(&finding, RODT_REASON_CONFLICTING_MARKS));
    text.stroke_class = "long";
    finding = row(text);
    assert_int_equal(finding.verdict, RODT_VERDICT_IN_ADJUSTMENT);
    assert_false(rodt_finding_has(&finding, RODT_REASON_CONFLICTING_MARKS));
}

/* The finest texts that a reader takes, in both units: whatever it takes can be subtracted. */
static void the_finest_readings_can_be_subtracted(void **state)
{
    (void)state;
    rodt_form text = good();
    text.released = "1.000000001";
    text.applied = "50.123457 mm";
    text.rated_stroke = "2.999999999";
    text.chamber = "18";
    rodt_finding finding = row(text);
    assert_true(rodt_length_given(finding.applied_stroke));
    assert_true(rodt_length_given(finding.margin));
}

typedef struct text_case {
    rodt_form text;
    rodt_verdict verdict;
    uint64_t reasons; /* all of these */
    uint64_t without; /* none of these */
} text_case;

static void judge_all(const text_case *cases, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        rodt_finding finding = row(cases[i].text);
        if (finding.verdict != cases[i].verdict || (finding.reasons & cases[i].reasons) != cases[i].reasons ||
            (finding.reasons & cases[i].without) != 0)
            fail_msg("case %zu: verdict %s, reasons %#llx", i, rodt_verdict_name(finding.verdict),
                     (unsigned long long)finding.reasons);
    }
}

/* 31/8 keeps its value 3 7/8; where 3 1/8 would have another verdict nothing is proven. */
static void a_lost_blank_proves_nothing_where_it_matters(void **state)
{
    (void)state;
    static const text_case cases[] = {
        {{.chamber = "30", .released = "31/8", .applied = "5 1/2"}, RODT_VERDICT_UNDETERMINED, BIT(LOST_BLANK), 0},
        {{.chamber = "30", .released = "21/8", .applied = "4 1/4"}, RODT_VERDICT_UNDETERMINED, BIT(LOST_BLANK), 0},
        {{.chamber = "30", .released = "1 1/2", .applied = "33/8 in"}, RODT_VERDICT_UNDETERMINED,
         BIT(LOST_BLANK) | BIT(OVER_LIMIT), 0},
        {{.chamber = "30", .released = "1", .applied = "213/16"}, RODT_VERDICT_UNDETERMINED, BIT(LOST_BLANK), 0},
        {{.chamber = "30", .released = "11/4", .applied = "4 1/4"}, RODT_VERDICT_UNDETERMINED, BIT(LOST_BLANK), 0},
        /* both values pass, or both fail */
        {{.chamber = "30", .released = "21/8", .applied = "3 1/2"}, RODT_VERDICT_IN_ADJUSTMENT, 0, BIT(LOST_BLANK)},
        {{.chamber = "20", .released = "1 1/8", .applied = "31/8"}, RODT_VERDICT_OUT_OF_ADJUSTMENT, 0, BIT(LOST_BLANK)},
        /* no split is a fraction of a tape in lowest terms */
        {{.chamber = "30", .released = "28/16", .applied = "3 3/4"}, RODT_VERDICT_IN_ADJUSTMENT, 0, BIT(LOST_BLANK)},
        {{.chamber = "30", .released = "20/8", .applied = "4 1/2"}, RODT_VERDICT_IN_ADJUSTMENT, 0, BIT(LOST_BLANK)},
        {{.chamber = "30", .released = "2 1/8", .applied = "4 1/8"}, RODT_VERDICT_IN_ADJUSTMENT, 0, BIT(LOST_BLANK)},
    };
    judge_all(cases, sizeof cases / sizeof cases[0]);
    rodt_finding finding = row(cases[0].text);
    char sentence[RODT_SENTENCE_SIZE];
    assert_int_equal(
        rodt_finding_reason_format(&finding, RODT_REASON_LOST_BLANK, sentence, sizeof sentence, NULL),
        RODT_OK);
    assert_non_null(strstr(sentence, "3 7/8"));
    assert_non_null(strstr(sentence, "3 1/8"));
}

static void an_unknown_unit_gives_bare_numbers_no_value(void **state)
{
    (void)state;
    rodt_form text = {.chamber = "30", .released = "54", .applied = "100", .unit = "ells"};
    rodt_finding finding = row(text);
    assert_int_equal(finding.verdict, RODT_VERDICT_UNDETERMINED);
    assert_false(rodt_length_given(finding.applied_stroke));
    assert_false(rodt_finding_has(&finding, RODT_REASON_RELEASED_MISSING));
    text.released = "54 mm";
    text.applied = "100 mm";
    finding = row(text);
    assert_int_equal(finding.verdict, RODT_VERDICT_UNDETERMINED);
    assert_true(rodt_length_given(finding.applied_stroke));
    static const char *const known[] = {"in.", "Inches", "pouce", "centimeter", "millimeters", "mm.", "\""};
    for (size_t i = 0; i < sizeof known / sizeof known[0]; i++) {
        text.unit = known[i];
        assert_int_equal(row(text).verdict, RODT_VERDICT_IN_ADJUSTMENT);
    }
}

static void numbers_that_no_chamber_and_no_tape_has_are_unreadable(void **state)
{
    (void)state;
    static const text_case cases[] = {
        {{.chamber = "24", .stroke_class = "long", .rated_stroke = "3", .released = "57", .applied = "114", .unit = "mm"},
         RODT_VERDICT_UNDETERMINED, BIT(OTHER_UNREADABLE), BIT(BEYOND_RATED_STROKE)},
        {{.chamber = "24", .stroke_class = "long", .rated_stroke = "3 in", .released = "57", .applied = "114",
          .unit = "mm"}, RODT_VERDICT_IN_ADJUSTMENT, 0, BIT(OTHER_UNREADABLE)},
        {{.chamber = "30", .rated_stroke = "0", .released = "1", .applied = "2"}, RODT_VERDICT_UNDETERMINED,
         BIT(OTHER_UNREADABLE), BIT(BEYOND_RATED_STROKE)},
        {{.chamber = "20", .stroke_class = "long", .rated_stroke = "21/4", .released = "1", .applied = "3"},
         RODT_VERDICT_UNDETERMINED, BIT(OTHER_UNREADABLE), 0}, /* 2 1/4 with its blank lost would be a contradiction */
        {{.chamber = "18", .marked_limit = "13/4", .released = "1", .applied = "3"}, RODT_VERDICT_UNDETERMINED,
         BIT(OTHER_UNREADABLE), 0},
        {{.chamber = "30", .rated_stroke = "5/2", .released = "1", .applied = "2"}, RODT_VERDICT_IN_ADJUSTMENT, 0,
         BIT(OTHER_UNREADABLE)},
        {{.chamber = "30", .psi = "#N/A", .released = "1", .applied = "2"}, RODT_VERDICT_UNDETERMINED, BIT(OTHER_UNREADABLE),
         0}, /* an error of a spreadsheet is no blank */
        {{.chamber = "30", .psi = "n/a", .released = "1", .applied = "2"}, RODT_VERDICT_IN_ADJUSTMENT,
         BIT(PRESSURE_NOT_RECORDED), BIT(OTHER_UNREADABLE)},
        {{.chamber = "30", .marked_limit = "0", .released = "1", .applied = "2"}, RODT_VERDICT_UNDETERMINED,
         BIT(OTHER_UNREADABLE), 0},
        {{.chamber = "30", .division = "16", .released = "1", .applied = "2"}, RODT_VERDICT_UNDETERMINED,
         BIT(OTHER_UNREADABLE), 0},
        {{.chamber = "30", .division = "1/2", .released = "1", .applied = "2"}, RODT_VERDICT_IN_ADJUSTMENT, 0,
         BIT(OTHER_UNREADABLE)},
        {{.chamber = "30", .released = "2 1/8", .applied = "4 1/4", .unit = "mm"}, RODT_VERDICT_UNDETERMINED,
         BIT(RELEASED_UNREADABLE) | BIT(APPLIED_UNREADABLE), 0},
    };
    judge_all(cases, sizeof cases / sizeof cases[0]);
}

/* A condition or an entry that cannot be read may be one that takes the proof away. */
static void an_unreadable_entry_proves_nothing(void **state)
{
    (void)state;
    static const text_case cases[] = {
        {{.chamber = "30", .released = "2", .applied = "2", .spring_brake = "aplied"}, RODT_VERDICT_UNDETERMINED,
         BIT(NO_MOVEMENT) | BIT(OTHER_UNREADABLE), 0},
        {{.chamber = "30", .released = "2", .applied = "5", .engine = "onn"}, RODT_VERDICT_UNDETERMINED,
         BIT(OVER_LIMIT) | BIT(OTHER_UNREADABLE), 0},
        {{.chamber = "30", .released = "1", .applied = "3", .psi = "95", .date = "2010-9-1"}, RODT_VERDICT_UNDETERMINED,
         BIT(DATE_UNREADABLE) | BIT(AT_LIMIT), 0},
        {{.chamber = "36", .released = "1", .applied = "3 3/8", .psi = "95", .date = "9/1/2013 8:00"},
         RODT_VERDICT_UNDETERMINED, BIT(DATE_UNREADABLE), 0},
        {{.chamber = "36", .released = "1", .applied = "3 3/8", .date = "10/11/2021x"}, RODT_VERDICT_UNDETERMINED,
         BIT(DATE_UNREADABLE), 0},
        {{.chamber = "36", .released = "1", .applied = "3 3/8", .date = "21/10/14"}, RODT_VERDICT_UNDETERMINED,
         BIT(DATE_AMBIGUOUS), 0}, /* 2014-10-21 or 2021-10-14 */
        {{.chamber = "30", .released = "1", .applied = "2", .date = "10/11/12"}, RODT_VERDICT_UNDETERMINED,
         BIT(DATE_UNREADABLE), 0}, /* three days */
        {{.chamber = "36", .released = "1", .applied = "3 3/8", .date = "10/14/2021",
          .date_order = RODT_DATE_ORDER_DAY_FIRST}, RODT_VERDICT_UNDETERMINED, BIT(DATE_UNREADABLE), 0},
        /* an unreadable chamber and one that is missing say the same of a rod beyond its rated stroke */
        {{.chamber = "painted", .released = "1", .applied = "5", .rated_stroke = "3"}, RODT_VERDICT_OUT_OF_ADJUSTMENT,
         BIT(BEYOND_RATED_STROKE), 0},
        {{.chamber = "", .released = "1", .applied = "5", .rated_stroke = "3"}, RODT_VERDICT_OUT_OF_ADJUSTMENT,
         BIT(BEYOND_RATED_STROKE), 0},
    };
    judge_all(cases, sizeof cases / sizeof cases[0]);
}

/* Without air no rod moves; too little air still moves one. */
static void no_movement_without_air_proves_nothing(void **state)
{
    (void)state;
    static const text_case cases[] = {
        {{.chamber = "30", .released = "1", .applied = "1", .psi = "0"}, RODT_VERDICT_UNDETERMINED,
         BIT(NO_MOVEMENT) | BIT(PRESSURE_LOW), 0},
        {{.chamber = "30", .released = "1", .applied = "1", .psi = "95", .psi_after = "0 kPa"}, RODT_VERDICT_UNDETERMINED,
         BIT(NO_MOVEMENT) | BIT(PRESSURE_LOW), 0},
        {{.chamber = "30", .released = "1", .applied = "1", .psi = "5"}, RODT_VERDICT_INOPERATIVE,
         BIT(NO_MOVEMENT) | BIT(PRESSURE_LOW), 0},
        {{.chamber = "30", .released = "1", .applied = "1"}, RODT_VERDICT_INOPERATIVE, BIT(NO_MOVEMENT), BIT(PRESSURE_LOW)},
        {{.chamber = "30", .released = "1", .applied = "4", .psi = "0"}, RODT_VERDICT_OUT_OF_ADJUSTMENT,
         BIT(OVER_LIMIT) | BIT(PRESSURE_LOW), 0},
    };
    judge_all(cases, sizeof cases / sizeof cases[0]);
    rodt_finding finding = row(cases[0].text);
    char sentence[RODT_SENTENCE_SIZE];
    assert_int_equal(rodt_finding_reason_format(&finding, RODT_REASON_PRESSURE_LOW, sentence, sizeof sentence, NULL),
                     RODT_OK);
    assert_non_null(strstr(sentence, "without air"));
}

/* The footnotes of 49 CFR 393.47(e)(1) make the 3 in stroke itself the sign of the long row; long stroke beside the
 * rated stroke of the standard chamber is a contradiction. */
static void the_rated_stroke_is_a_sign_of_the_class(void **state)
{
    (void)state;
    static const text_case cases[] = {
        {{.chamber = "24", .rated_stroke = "3", .released = "1", .applied = "3 1/2"}, RODT_VERDICT_IN_ADJUSTMENT, BIT(AT_LIMIT),
         BIT(ASSUMED_STANDARD) | BIT(CONFLICTING_MARKS)},
        {{.chamber = "20", .rated_stroke = "76 mm", .released = "1", .applied = "3 1/2"}, RODT_VERDICT_IN_ADJUSTMENT,
         BIT(AT_LIMIT), BIT(ASSUMED_STANDARD)},
        {{.chamber = "24", .stroke_class = "standard", .rated_stroke = "3", .released = "1", .applied = "3 1/2"},
         RODT_VERDICT_OUT_OF_ADJUSTMENT, BIT(OVER_LIMIT), 0},
        {{.chamber = "20L", .rated_stroke = "2 1/4", .released = "2", .applied = "4"}, RODT_VERDICT_OUT_OF_ADJUSTMENT,
         BIT(CONFLICTING_MARKS) | BIT(OVER_LIMIT), 0},
        {{.chamber = "16", .stroke_class = "long", .rated_stroke = "2 1/4", .released = "2", .applied = "4"},
         RODT_VERDICT_OUT_OF_ADJUSTMENT, BIT(CONFLICTING_MARKS), 0},
        {{.chamber = "20L", .rated_stroke = "2 1/2", .released = "2", .applied = "4"}, RODT_VERDICT_IN_ADJUSTMENT,
         BIT(AT_LIMIT), BIT(CONFLICTING_MARKS)},
    };
    judge_all(cases, sizeof cases / sizeof cases[0]);
}

static void parsing_judges_nothing(void **state)
{
    (void)state;
    rodt_form text = {.chamber = "30", .released = "2-Jan", .psi = "9O"};
    rodt_reading reading;
    rodt_error error;
    assert_int_equal(rodt_form_parse(&text, &reading, &error), RODT_OK);
    assert_int_equal(reading.reasons,
                     BIT(RELEASED_UNREADABLE) | BIT(SPREADSHEET_DATE) | BIT(OTHER_UNREADABLE));
    assert_string_equal(error.field, "released"); /* unreadable comes before absent */
    text = (rodt_form){.chamber = "30", .released = "2"};
    assert_int_equal(rodt_form_parse(&text, &reading, &error), RODT_OK);
    assert_int_equal(error.status, RODT_E_EMPTY);
    assert_string_equal(error.field, "applied");
    assert_int_equal(rodt_form_parse(NULL, &reading, &error), RODT_E_ARGUMENT);
    assert_int_equal(rodt_form_parse(&text, NULL, NULL), RODT_E_ARGUMENT);
}

static void texts_are_found_by_field(void **state)
{
    (void)state;
    rodt_form text = {.drum = "hot", .psi_after = "91"};
    assert_string_equal(rodt_form_get(&text, RODT_FIELD_DRUM), "hot");
    assert_string_equal(rodt_form_get(&text, RODT_FIELD_PSI_AFTER), "91");
    for (int field = 0; field < RODT_READING_FIELDS; field++) {
        rodt_form one = {.chamber = NULL};
        rodt_form_set(&one, (rodt_field)field, "here");
        for (int other = 0; other < RODT_READING_FIELDS; other++)
            assert_true((rodt_form_get(&one, (rodt_field)other) != NULL) == (other == field));
    }
    rodt_form_set(&text, RODT_FIELD_POSITION, "1L");
    assert_null(rodt_form_get(&text, RODT_FIELD_POSITION));
    text.chamber = "30";
    assert_null(rodt_form_get(&text, (rodt_field)RODT_READING_FIELDS));
    assert_null(rodt_form_get(NULL, RODT_FIELD_DRUM));
}

/* A page marks every field at once; the library has no room of its own. */
static void every_wrong_field_is_found(void **state)
{
    (void)state;
    static const char *const fields[] = {"unit",     "chamber", "stroke_class", "rated_stroke", "released",
                                         "applied", "psi",     "psi_after",    "division",     "engine",
                                         "spring_brake", "drum", "date"};
    const rodt_form form = {.chamber = "round", .released = "feet", .stroke_class = "longish", .rated_stroke = "21/4",
                            .psi = "12 mm", .psi_after = "-3", .division = "2", .date = "31/02/2024", .unit = "ell",
                            .engine = "perhaps", .spring_brake = "no idea", .drum = "lukewarm"};
    rodt_error errors[RODT_FORM_ERRORS_MAX], first;
    rodt_reading reading;
    size_t count = 0;
    assert_int_equal(rodt_form_errors(&form, NULL, 0, &count), RODT_E_SPACE);
    assert_int_equal(count, 13);
    errors[0].status = 77;
    assert_int_equal(rodt_form_errors(&form, errors, 12, &count), RODT_E_SPACE);
    assert_int_equal(errors[0].status, 77);
    assert_int_equal(rodt_form_errors(&form, errors, 13, NULL), RODT_OK);
    for (size_t i = 0; i < sizeof fields / sizeof fields[0]; i++) {
        assert_string_equal(errors[i].field, fields[i]);
        assert_true(errors[i].status != RODT_OK && errors[i].text[0] != '\0');
    }
    assert_int_equal(errors[5].status, RODT_E_EMPTY); /* nobody wrote the applied reading */
    assert_int_equal(rodt_form_parse(&form, &reading, &first), RODT_OK);
    assert_string_equal(first.text, errors[0].text);
}

/* No error, if and only if the form can be judged. */
static void errors_of_a_form_are_those_of_its_judge(void **state)
{
    (void)state;
    static const char *const texts[] = {NULL, "", "31/8", "2 1/8", "two", "06/05/2024", "14/10/2024", "on", "30", "cold"};
    size_t refused = 0;
    for (int field = 0; field < RODT_READING_FIELDS; field++) {
        for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
            rodt_form form = good();
            rodt_finding finding;
            rodt_error errors[RODT_FORM_ERRORS_MAX], error = {.status = RODT_OK};
            size_t count = 99;
            rodt_form_set(&form, (rodt_field)field, texts[i]);
            assert_int_equal(rodt_form_errors(&form, errors, RODT_FORM_ERRORS_MAX, &count), RODT_OK);
            rodt_status status = rodt_form_judge(&form, us(), &finding, &error);
            assert_int_equal(count > 0, status != RODT_OK);
            refused += count;
            if (count > 0) {
                assert_string_equal(errors[0].text, error.text);
                assert_string_equal(errors[0].field, error.field);
            }
        }
    }
    assert_true(refused > 50);
    rodt_form form = good();
    size_t count;
    form.date_order = (rodt_date_order)77;
    assert_int_equal(rodt_form_errors(&form, NULL, 0, &count), RODT_E_ARGUMENT);
    assert_int_equal(rodt_form_errors(NULL, NULL, 0, &count), RODT_E_ARGUMENT);
    form = good();
    assert_int_equal(rodt_form_errors(&form, NULL, 1, &count), RODT_E_ARGUMENT);
    form.style.pressure_unit = (rodt_pressure_unit)2;
    assert_int_equal(rodt_form_errors(&form, NULL, 0, &count), RODT_E_ARGUMENT);
}

/* What was read is kept: a gauge in kPa is spoken of in kPa, and no fraction of psi is made of it. */
static void the_unit_of_a_pressure_is_kept(void **state)
{
    (void)state;
    rodt_form form = good();
    rodt_reading reading;
    rodt_finding finding;
    rodt_error error;
    char text[RODT_SENTENCE_SIZE];
    form.psi = "500";
    form.style.pressure_unit = RODT_PRESSURE_UNIT_KPA;
    assert_int_equal(rodt_form_parse(&form, &reading, &error), RODT_OK);
    assert_int_equal(error.status, RODT_OK);
    assert_int_equal(reading.pressure_unit, RODT_PRESSURE_UNIT_KPA);
    assert_int_equal(rodt_reading_judge(&reading, us(), &finding, NULL), RODT_OK);
    assert_int_equal(finding.pressure_unit, RODT_PRESSURE_UNIT_KPA);
    assert_int_equal(rodt_finding_reason_format(&finding, RODT_REASON_PRESSURE_LOW, text, sizeof text, NULL), RODT_OK);
    assert_non_null(strstr(text, ": 500 kPa, and the test asks for 90 to 100 psi;"));
    form.psi = "80 psi";
    assert_int_equal(rodt_form_judge(&form, us(), &finding, NULL), RODT_OK);
    assert_int_equal(finding.pressure_unit, RODT_PRESSURE_UNIT_PSI);
    assert_int_equal(rodt_finding_reason_format(&finding, RODT_REASON_PRESSURE_LOW, text, sizeof text, NULL), RODT_OK);
    assert_non_null(strstr(text, ": 80 psi, and the test asks for 90 to 100;"));
    reading.pressure_unit = 2;
    assert_int_equal(rodt_reading_check(&reading, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.field, "pressure_unit");
}

static void null_pointers_are_refused(void **state)
{
    (void)state;
    rodt_form text = good();
    rodt_finding finding;
    rodt_reading reading;
    rodt_error error;
    static rodt_status (*const judges[])(const rodt_form *, const rodt_rules *, rodt_finding *, rodt_error *) = {
        rodt_form_judge, rodt_form_judge_row};
    for (size_t i = 0; i < 2; i++) {
        assert_int_equal(judges[i](NULL, us(), &finding, NULL), RODT_E_ARGUMENT);
        assert_int_equal(judges[i](NULL, us(), &finding, &error), RODT_E_ARGUMENT);
        assert_string_equal(error.text, "a form and room for its result are needed");
        assert_string_equal(error.field, "");
        assert_int_equal(judges[i](&text, NULL, &finding, NULL), RODT_E_UNKNOWN_RULES);
        assert_int_equal(judges[i](&text, NULL, &finding, &error), RODT_E_UNKNOWN_RULES);
        assert_int_equal(error.status, RODT_E_UNKNOWN_RULES);
        assert_int_equal(judges[i](&text, us(), NULL, NULL), RODT_E_ARGUMENT);
        assert_int_equal(judges[i](&text, us(), NULL, &error), RODT_E_ARGUMENT);
        assert_string_equal(error.text, "room for a finding is needed");
        assert_string_equal(error.field, "");
    }
    assert_int_equal(rodt_form_parse(NULL, &reading, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.text, "a form and room for its result are needed");
    assert_string_equal(error.field, "");
    assert_int_equal(rodt_form_parse(&text, NULL, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.text, "a form and room for its result are needed");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(both_ways_agree_on_what_can_be_read),
        cmocka_unit_test(readings_too_fine_for_a_limit_are_refused_with_a_sentence),
        cmocka_unit_test(the_first_unreadable_text_is_named),
        cmocka_unit_test(the_column_is_the_place_in_the_text),
        cmocka_unit_test(every_wrong_field_is_found),
        cmocka_unit_test(errors_of_a_form_are_those_of_its_judge),
        cmocka_unit_test(the_unit_of_a_pressure_is_kept),
        cmocka_unit_test(a_unit_that_nobody_knows_leaves_bare_numbers_unread),
        cmocka_unit_test(conditions_are_words_of_the_form),
        cmocka_unit_test(a_file_goes_on_and_names_what_it_could_not_read),
        cmocka_unit_test(what_can_be_computed_still_is),
        cmocka_unit_test(an_ambiguous_date_is_judged_on_both_days),
        cmocka_unit_test(a_row_without_a_date_has_the_day_of_the_form),
        cmocka_unit_test(the_unit_in_the_cell_beats_the_column_and_that_the_form),
        cmocka_unit_test(a_decimal_comma_is_read_only_when_it_was_said),
        cmocka_unit_test(contradicting_classes_are_strict_and_said),
        cmocka_unit_test(the_finest_readings_can_be_subtracted),
        cmocka_unit_test(a_lost_blank_proves_nothing_where_it_matters),
        cmocka_unit_test(an_unknown_unit_gives_bare_numbers_no_value),
        cmocka_unit_test(numbers_that_no_chamber_and_no_tape_has_are_unreadable),
        cmocka_unit_test(an_unreadable_entry_proves_nothing),
        cmocka_unit_test(no_movement_without_air_proves_nothing),
        cmocka_unit_test(the_rated_stroke_is_a_sign_of_the_class),
        cmocka_unit_test(parsing_judges_nothing),
        cmocka_unit_test(texts_are_found_by_field),
        cmocka_unit_test(null_pointers_are_refused),
        cmocka_unit_test(each_text_is_refused_by_its_own_sentence),
        cmocka_unit_test(what_cannot_be_read_comes_before_what_is_absent),
        cmocka_unit_test(every_text_becomes_its_member),
        cmocka_unit_test(one_form_is_asked_which_day_it_was),
        cmocka_unit_test(a_form_that_is_filled_wrongly_is_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
