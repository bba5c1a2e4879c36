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
static rodt_reading_text good(void)
{
    return (rodt_reading_text){.chamber = "30", .released = "2 1/8", .applied = "4", .stroke_class = "standard",
                               .psi = "95", .date = "2024-05-06"};
}

static rodt_finding row(rodt_reading_text text)
{
    rodt_finding finding;
    assert_int_equal(rodt_judge_row(&text, us(), &finding, NULL), RODT_OK);
    return finding;
}

static void refused(rodt_reading_text text, rodt_status status, const char *field)
{
    rodt_finding finding;
    rodt_finding before;
    rodt_error error;
    memset(&finding, 0x3C, sizeof finding);
    before = finding;
    assert_int_equal(rodt_judge_text(&text, us(), &finding, &error), status);
    assert_memory_equal(&finding, &before, sizeof before);
    assert_int_equal(error.status, status);
    assert_string_equal(error.field, field);
    assert_true(strlen(error.text) > 0);
    assert_int_equal(rodt_judge_text(&text, us(), &finding, NULL), status);
}

static void both_ways_agree_on_what_can_be_read(void **state)
{
    (void)state;
    rodt_reading_text text = good();
    rodt_finding strict;
    rodt_finding lenient;
    rodt_error error;
    assert_int_equal(rodt_judge_text(&text, us(), &strict, &error), RODT_OK);
    assert_int_equal(rodt_judge_row(&text, us(), &lenient, &error), RODT_OK);
    assert_int_equal(error.status, RODT_OK);
    assert_memory_equal(&strict, &lenient, sizeof strict);
    assert_int_equal(strict.verdict, RODT_IN_ADJUSTMENT);
}

static void the_first_unreadable_text_is_named(void **state)
{
    (void)state;
    rodt_reading_text text = good();
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
    refused(text, RODT_E_SYNTAX, "stroke class");
    text = good();
    text.unit = "ft";
    refused(text, RODT_E_SYNTAX, "unit");
    text = good();
    text.division = "0";
    refused(text, RODT_E_IMPLAUSIBLE, "division");
    text = good();
    text.psi = "95 mm";
    refused(text, RODT_E_UNIT, "pressure");
    text = good();
    text.date = "05/06/2024";
    refused(text, RODT_E_AMBIGUOUS, "date");
    text = good();
    text.date = "2024-02-30";
    refused(text, RODT_E_SYNTAX, "date");
    text = good();
    text.rated_stroke = "three";
    refused(text, RODT_E_SYNTAX, "rated stroke");
}

static void conditions_are_words_of_the_form(void **state)
{
    (void)state;
    rodt_reading_text text = good();
    text.engine = "off";
    text.spring_brake = " Released ";
    text.drum = "cold";
    assert_int_equal(row(text).verdict, RODT_IN_ADJUSTMENT);
    text.engine = "ON";
    rodt_finding finding = row(text);
    assert_int_equal(finding.verdict, RODT_UNDETERMINED);
    assert_true(rodt_finding_has(&finding, RODT_REASON_ENGINE_RUNNING));
    text.engine = NULL;
    text.spring_brake = "applied";
    finding = row(text);
    assert_true(rodt_finding_has(&finding, RODT_REASON_SPRING_BRAKE_APPLIED));
    text.spring_brake = NULL;
    text.drum = "hot";
    finding = row(text);
    assert_int_equal(finding.verdict, RODT_IN_ADJUSTMENT);
    assert_true(rodt_finding_has(&finding, RODT_REASON_DRUM_HOT));
    text.drum = "tepid";
    refused(text, RODT_E_SYNTAX, "drum");
    assert_int_equal(row(text).verdict, RODT_UNDETERMINED);
    text.drum = NULL;
    text.engine = "maybe";
    refused(text, RODT_E_SYNTAX, "engine");
    text.engine = NULL;
    text.spring_brake = "yes";
    refused(text, RODT_E_SYNTAX, "spring brake");
}

#define BIT(name) ((uint64_t)1 << RODT_REASON_##name)

static void a_file_goes_on_and_names_what_it_could_not_read(void **state)
{
    (void)state;
    static const struct {
        const char *chamber, *released, *applied, *psi, *day;
        rodt_verdict verdict;
        uint64_t reasons; /* all of these */
        const char *field;
    } cases[] = {
        {"30", "2-Jan", "4", "95", "", RODT_UNDETERMINED, BIT(RELEASED_UNREADABLE) | BIT(SPREADSHEET_DATE),
         "released"},
        {"30", "2", "empty Cell", "95", "", RODT_UNDETERMINED, BIT(APPLIED_UNREADABLE), "applied"},
        {"30", "2", "", "95", "", RODT_UNDETERMINED, BIT(APPLIED_MISSING), "applied"},
        {"30", "2", "n/a", "95", "", RODT_UNDETERMINED, BIT(APPLIED_MISSING), "applied"},
        {"", "2", "3 3/8", "95", "", RODT_UNDETERMINED, BIT(CHAMBER_MISSING), "chamber"},
        {"painted", "2", "3 3/8", "95", "", RODT_UNDETERMINED, BIT(CHAMBER_UNREADABLE), "chamber"},
        {"painted", "2", "2", "95", "", RODT_INOPERATIVE, BIT(CHAMBER_UNREADABLE) | BIT(NO_MOVEMENT), "chamber"},
        {"30", "2", "3 3/8", "9O", "", RODT_UNDETERMINED, BIT(OTHER_UNREADABLE), "pressure"},
        {"30", "2", "3 3/8", "95", "soon", RODT_IN_ADJUSTMENT, BIT(DATE_UNREADABLE), "date"},
        {"36", "2", "4 3/8", "95", "soon", RODT_UNDETERMINED, BIT(DATE_UNREADABLE), "date"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        rodt_reading_text text = {.chamber = cases[i].chamber, .released = cases[i].released,
                                  .applied = cases[i].applied, .psi = cases[i].psi, .date = cases[i].day};
        rodt_finding finding;
        rodt_error error;
        assert_int_equal(rodt_judge_row(&text, us(), &finding, &error), RODT_OK);
        assert_int_equal(finding.verdict, cases[i].verdict);
        assert_true((finding.reasons & cases[i].reasons) == cases[i].reasons);
        assert_string_equal(error.field, cases[i].field);
    }
}

static void what_can_be_computed_still_is(void **state)
{
    (void)state;
    rodt_reading_text text = good();
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
    rodt_reading_text text = good();
    text.chamber = "36";
    text.released = "2";
    text.applied = "4 1/2";
    text.date = "06/05/2024";
    rodt_finding finding = row(text);
    assert_int_equal(finding.verdict, RODT_IN_ADJUSTMENT);
    assert_true(rodt_finding_has(&finding, RODT_REASON_DATE_AMBIGUOUS));
    text.date = "10/11/2021";
    assert_int_equal(row(text).verdict, RODT_UNDETERMINED);
    text.date_order = RODT_DATE_ORDER_DAY_FIRST;
    assert_int_equal(row(text).verdict, RODT_IN_ADJUSTMENT);
    text.date_order = RODT_DATE_ORDER_MONTH_FIRST;
    assert_int_equal(row(text).verdict, RODT_OUT_OF_ADJUSTMENT);
}

static void a_row_without_a_date_has_the_day_of_the_form(void **state)
{
    (void)state;
    rodt_reading_text text = good();
    text.chamber = "36";
    text.released = "2";
    text.applied = "4 1/2";
    text.date = "";
    assert_int_equal(rodt_date_make(2021, 10, 13, &text.default_day), RODT_OK);
    assert_int_equal(row(text).verdict, RODT_OUT_OF_ADJUSTMENT);
    text.date = "14-OCT-21";
    assert_int_equal(row(text).verdict, RODT_IN_ADJUSTMENT);
}

static void the_unit_in_the_cell_beats_the_column_and_that_the_form(void **state)
{
    (void)state;
    rodt_reading_text text = good();
    text.style.unit = RODT_UNIT_MM;
    text.released = "50";
    text.applied = "100.8";
    rodt_finding finding = row(text);
    assert_int_equal(finding.limit.num, 2);
    assert_int_equal(finding.verdict, RODT_IN_ADJUSTMENT); /* exactly 50.8 mm */
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
    rodt_reading_text text = good();
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
    rodt_reading_text text = good();
    text.chamber = "30LS";
    text.stroke_class = "standard";
    text.applied = "4 1/4";
    rodt_finding finding = row(text);
    assert_int_equal(finding.verdict, RODT_OUT_OF_ADJUSTMENT);
    assert_true(rodt_finding_has(&finding, RODT_REASON_CONFLICTING_MARKS));
    text.stroke_class = "long";
    finding = row(text);
    assert_int_equal(finding.verdict, RODT_IN_ADJUSTMENT);
    assert_false(rodt_finding_has(&finding, RODT_REASON_CONFLICTING_MARKS));
}

/* Fractions with odd denominators near the reader's bound: their difference does not fit in 64 bits. */
static void readings_too_fine_for_one_fraction_are_refused(void **state)
{
    (void)state;
    rodt_reading_text text = good();
    rodt_error error;
    rodt_finding finding;
    text.released = "1.000000001";
    text.applied = "50.1234567 mm";
    rodt_status status = rodt_judge_text(&text, us(), &finding, &error);
    assert_true(status == RODT_OK || status == RODT_E_RANGE);
    assert_int_equal(rodt_judge_row(&text, us(), &finding, NULL), RODT_OK);
    assert_true(status == RODT_OK || finding.verdict == RODT_UNDETERMINED);
}

static void null_pointers_are_refused(void **state)
{
    (void)state;
    rodt_reading_text text = good();
    rodt_finding finding;
    assert_int_equal(rodt_judge_text(NULL, us(), &finding, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_judge_text(&text, NULL, &finding, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_judge_text(&text, us(), NULL, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_judge_row(NULL, us(), &finding, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_judge_row(&text, NULL, &finding, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_judge_row(&text, us(), NULL, NULL), RODT_E_ARGUMENT);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(both_ways_agree_on_what_can_be_read),
        cmocka_unit_test(the_first_unreadable_text_is_named),
        cmocka_unit_test(conditions_are_words_of_the_form),
        cmocka_unit_test(a_file_goes_on_and_names_what_it_could_not_read),
        cmocka_unit_test(what_can_be_computed_still_is),
        cmocka_unit_test(an_ambiguous_date_is_judged_on_both_days),
        cmocka_unit_test(a_row_without_a_date_has_the_day_of_the_form),
        cmocka_unit_test(the_unit_in_the_cell_beats_the_column_and_that_the_form),
        cmocka_unit_test(a_decimal_comma_is_read_only_when_it_was_said),
        cmocka_unit_test(contradicting_classes_are_strict_and_said),
        cmocka_unit_test(readings_too_fine_for_one_fraction_are_refused),
        cmocka_unit_test(null_pointers_are_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
