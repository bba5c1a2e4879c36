/* SPDX-License-Identifier: Apache-2.0 */
/* Values that no text could have are refused by every function that judges, with the field and a sentence. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>

#include <cmocka.h>

#include "core/common.h"
#include "rodtravel/identify.h"
#include "rodtravel/vehicle.h"

#include <string.h>

static const rodt_rules *us(void) { return rodt_rules_find("us-fmcsr"); }

/* A good one; each test spoils one member. */
static rodt_reading good(void)
{
    rodt_reading reading = {0};
    assert_int_equal(rodt_chamber_parse("36 standard", &reading.chamber, NULL), RODT_OK);
    reading.released = (rodt_length){17, 8};
    reading.applied = (rodt_length){35, 8};
    reading.pressure = (rodt_pressure){95, 1};
    reading.pressure_after = (rodt_pressure){185, 2};
    reading.division = (rodt_length){1, 16};
    reading.day = (rodt_date){2021, 10, 13};
    return reading;
}

static void expect_error(const rodt_error *error, const char *field)
{
    assert_int_equal(error->status, RODT_E_ARGUMENT);
    assert_string_equal(error->field, field);
    assert_true(strlen(error->text) > 10);
    assert_string_not_equal(error->text, rodt_status_text(RODT_E_ARGUMENT));
}

/* Judging says the same as the check, and leaves the finding as it was. */
static void refuses(const rodt_reading *reading, const char *field)
{
    rodt_error error = {.line = 7}, again;
    rodt_finding finding, untouched;
    memset(&finding, 0x5A, sizeof finding);
    untouched = finding;
    assert_int_equal(rodt_reading_check(reading, &error), RODT_E_ARGUMENT);
    expect_error(&error, field);
    assert_int_equal(rodt_reading_check(reading, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_reading_judge(reading, us(), &finding, &again), RODT_E_ARGUMENT);
    expect_error(&again, field);
    assert_memory_equal(&finding, &untouched, sizeof untouched);
}

static void a_good_reading_passes(void **state)
{
    (void)state;
    rodt_reading reading = good(), nothing = {0};
    rodt_error error = {.status = RODT_E_INTERNAL};
    assert_int_equal(rodt_reading_check(&reading, &error), RODT_OK);
    assert_int_equal(rodt_reading_check(&nothing, &error), RODT_OK);
    assert_int_equal(rodt_chamber_check(&reading.chamber, &error), RODT_OK);
    assert_int_equal(error.status, RODT_E_INTERNAL); /* it is filled on failure only */
    rodt_finding finding;
    assert_int_equal(rodt_reading_judge(&reading, us(), &finding, &error), RODT_OK);
    assert_int_equal(error.status, RODT_E_INTERNAL);
    assert_int_equal(rodt_reading_judge(&reading, us(), NULL, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.text, "room for a finding is needed");
    assert_string_equal(error.field, "");
    assert_int_equal(rodt_reading_check(NULL, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.text, "a reading is needed");
    assert_string_equal(error.field, "");
    assert_int_equal(rodt_chamber_check(NULL, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.field, "chamber");
}

static void days_that_are_none(void **state)
{
    (void)state;
    static const rodt_date days[] = {{2021, 13, 40}, {2021, 2, 31}, {2021, 2, 29}, {1899, 12, 31}, {2200, 1, 1},
                                     {2021, 0, 0},   {0, 1, 1},     {2021, 1, 0},  {-1, 1, 1},   {0, 0, 1}, {0, 1, 0}};
    for (size_t i = 0; i < COUNT_OF(days); i++) {
        rodt_reading reading = good();
        reading.day = days[i];
        refuses(&reading, "date");
        reading = good();
        reading.other_day = days[i];
        refuses(&reading, "date");
    }
}

static void lengths_that_no_text_has(void **state)
{
    (void)state;
    static const rodt_length lengths[] = {{4, 2},   {5, 0},    {-1, 64}, {1, -64},        {-1, -64},          {1, 3},
                                          {200, 1}, {385, 16}, {0, 5},   {1, 2000000000}, {INT64_MIN, 1},     {1, 7},
                                          {1, 6},   {0, -1},   {25, 1},  {INT64_MAX, 1},  {1, INT64_MAX}};
    for (size_t i = 0; i < COUNT_OF(lengths); i++) {
        struct {
            const char *field;
            rodt_reading reading;
            rodt_length *length;
        } spoilt[] = {{.field = "released"}, {.field = "applied"},      {.field = "released"},
                      {.field = "applied"},  {.field = "division"},     {.field = "rated_stroke"},
                      {.field = "marked_limit"}, {.field = "released"},     {.field = "applied"}};
        for (size_t k = 0; k < COUNT_OF(spoilt); k++) {
            rodt_reading *reading = &spoilt[k].reading;
            rodt_length *members[] = {&reading->released,          &reading->applied,
                                      &reading->other_released[0], &reading->other_applied[1],
                                      &reading->division,          &reading->chamber.rated_stroke,
                                      &reading->chamber.marked_limit, &reading->other_released[1],
                                      &reading->other_applied[0]};
            *reading = good();
            *members[k] = lengths[i];
            refuses(reading, spoilt[k].field);
        }
    }
}

static void lengths_out_of_their_bounds(void **state)
{
    (void)state;
    rodt_reading reading = good();
    reading.division = (rodt_length){0, 1};
    refuses(&reading, "division");
    reading.division = (rodt_length){16, 1};
    refuses(&reading, "division");
    reading = good();
    reading.chamber.rated_stroke = (rodt_length){0, 1};
    refuses(&reading, "rated_stroke");
    static const rodt_length no_marks[] = {{7, 1}, {385, 64}, {47, 64}}, marks[] = {{3, 4}, {6, 1}};
    for (size_t i = 0; i < COUNT_OF(no_marks); i++) {
        reading.chamber.rated_stroke = no_marks[i];
        refuses(&reading, "rated_stroke");
    }
    for (size_t i = 0; i < COUNT_OF(marks); i++) {
        reading.chamber.rated_stroke = marks[i];
        assert_int_equal(rodt_reading_check(&reading, NULL), RODT_OK);
    }
}

static void pressures_that_no_text_has(void **state)
{
    (void)state;
    static const rodt_pressure pressures[] = {{95, -1}, {95, 0}, {190, 2}, {-5, 1}, {301, 1}, {0, 3}};
    for (size_t i = 0; i < COUNT_OF(pressures); i++) {
        rodt_reading reading = good();
        reading.pressure = pressures[i];
        refuses(&reading, "psi");
        reading = good();
        reading.pressure_after = pressures[i];
        refuses(&reading, "psi_after");
    }
}

static void sizes_that_no_mark_has(void **state)
{
    (void)state;
    static const char *const sizes[] = {"T30", "030", "c", "C", "0", "100", "3 ", "-3", "3.5"};
    for (size_t i = 0; i < COUNT_OF(sizes); i++) {
        rodt_reading reading = good();
        rodt_error error;
        strcpy(reading.chamber.size, sizes[i]);
        refuses(&reading, "chamber");
        assert_int_equal(rodt_chamber_check(&reading.chamber, &error), RODT_E_ARGUMENT);
        expect_error(&error, "chamber");
        reading = good();
        strcpy(reading.chamber.spring_size, sizes[i]);
        refuses(&reading, "chamber");
    }
    rodt_reading reading = good();
    rodt_error unclosed;
    memset(reading.chamber.size, '3', RODT_SIZE_TEXT_SIZE);
    refuses(&reading, "chamber");
    assert_int_equal(rodt_chamber_check(&reading.chamber, &unclosed), RODT_E_ARGUMENT);
    assert_string_equal(unclosed.text, "the text of a size is not closed by a zero byte");
    reading = good();
    memset(reading.chamber.spring_size, '3', RODT_SIZE_TEXT_SIZE);
    refuses(&reading, "chamber");
    static const char *const letters[] = {"CC", "@", "H", "30"};
    for (size_t i = 0; i < COUNT_OF(letters); i++) {
        rodt_error error;
        const rodt_chamber bolt = {.family = RODT_FAMILY_BOLT, .size = "C"};
        reading.chamber = bolt;
        assert_int_equal(rodt_chamber_check(&reading.chamber, &error), RODT_OK);
        strcpy(reading.chamber.size, letters[i]);
        assert_int_equal(rodt_chamber_check(&reading.chamber, &error), RODT_E_ARGUMENT);
    }
    reading.chamber = (rodt_chamber){.family = RODT_FAMILY_BOLT, .size = "30"};
    refuses(&reading, "chamber");
    static const char *const no_letters[] = {"H", "AB", "@"};
    for (size_t i = 0; i < COUNT_OF(no_letters); i++) {
        rodt_error error;
        reading.chamber = (rodt_chamber){.family = RODT_FAMILY_BOLT};
        strcpy(reading.chamber.size, no_letters[i]);
        refuses(&reading, "chamber");
        assert_int_equal(rodt_chamber_check(&reading.chamber, &error), RODT_E_ARGUMENT);
        assert_string_equal(error.text, "the size of a bolt-type chamber is a letter, A to G");
    }
    reading.chamber = (rodt_chamber){.family = RODT_FAMILY_BOLT, .size = "G"};
    assert_int_equal(rodt_reading_check(&reading, NULL), RODT_OK);
}

static void unknown_enumerators(void **state)
{
    (void)state;
    struct {
        const char *field;
        size_t offset;
        uint32_t value;
    } const wrong[] = {{"unit", offsetof(rodt_reading, unit), 3},
                       {"engine", offsetof(rodt_reading, engine_running), 3},
                       {"spring_brake", offsetof(rodt_reading, spring_brake_applied), UINT32_MAX},
                       {"spring_brake", offsetof(rodt_reading, spring_brake_applied), 3},
                       {"drum", offsetof(rodt_reading, drum), 4},
                       {"chamber", offsetof(rodt_reading, chamber.family), 5},
                       {"stroke_class", offsetof(rodt_reading, chamber.stroke_class), 4},
                       {"stroke_class", offsetof(rodt_reading, chamber.stroke_class), RODT_STROKE_CLASS_ANY}};
    for (size_t i = 0; i < COUNT_OF(wrong); i++) {
        rodt_reading reading = good();
        memcpy((char *)&reading + wrong[i].offset, &wrong[i].value, sizeof wrong[i].value);
        refuses(&reading, wrong[i].field);
    }
}

/* A reserve that is ignored could never get a meaning. */
static void reserves_and_reasons(void **state)
{
    (void)state;
    rodt_reading reading = good();
    reading.reserved[3] = 1;
    refuses(&reading, "reserved");
    reading = good();
    reading.chamber.reserved[0] = UINT64_C(1) << 63;
    refuses(&reading, "reserved");
    reading = good();
    reading.reasons = UINT64_C(1) << RODT_REASON_OVER_LIMIT;
    refuses(&reading, "reasons");
    reading.reasons = UINT64_C(1) << 63;
    refuses(&reading, "reasons");
    reading.reasons = UINT64_C(1) << RODT_REASON_OTHER_UNREADABLE;
    assert_int_equal(rodt_reading_check(&reading, NULL), RODT_OK);
}

static void what_a_form_says_beside_its_texts(void **state)
{
    (void)state;
    const rodt_form fine = {.chamber = "30", .released = "2 1/8", .applied = "4"};
    rodt_form wrong[] = {fine, fine, fine, fine, fine};
    static const char *const fields[] = {"unit", "date", "date", "reserved", "reserved"};
    rodt_finding finding;
    rodt_reading reading;
    wrong[0].style.unit = (rodt_unit)3;
    wrong[1].date_order = (rodt_date_order)4;
    wrong[2].default_day = (rodt_date){2021, 2, 30};
    wrong[3].reserved[3] = "";
    wrong[4].style.reserved[1] = 1;
    for (size_t i = 0; i < COUNT_OF(wrong); i++) {
        rodt_error error;
        assert_int_equal(rodt_form_parse(&wrong[i], &reading, &error), RODT_E_ARGUMENT);
        expect_error(&error, fields[i]);
        assert_int_equal(rodt_form_judge(&wrong[i], us(), &finding, &error), RODT_E_ARGUMENT);
        expect_error(&error, fields[i]);
        assert_int_equal(rodt_form_judge_row(&wrong[i], us(), &finding, &error), RODT_E_ARGUMENT);
        expect_error(&error, fields[i]);
    }
}

static void limits_and_clues(void **state)
{
    (void)state;
    const rodt_chamber chamber = {.size = "30"};
    rodt_limit_answer answer;
    rodt_identification found;
    rodt_error error;
    assert_int_equal(rodt_rules_find_limit(us(), &chamber, (rodt_date){2021, 2, 31}, &answer, &error),
                     RODT_E_ARGUMENT);
    expect_error(&error, "date");
    assert_int_equal(rodt_rules_find_limit(us(), &(rodt_chamber){0}, (rodt_date){0}, &answer, &error),
                     RODT_E_ARGUMENT);
    expect_error(&error, "chamber");
    rodt_clues clues = {.stamp = chamber, .reserved = {0, 0, 1, 0}};
    assert_int_equal(rodt_clues_identify(&clues, us(), (rodt_date){0}, &found, &error), RODT_E_ARGUMENT);
    expect_error(&error, "reserved");
    clues = (rodt_clues){.diameter = {1, 3}};
    assert_int_equal(rodt_clues_identify(&clues, us(), (rodt_date){0}, &found, &error), RODT_E_ARGUMENT);
    expect_error(&error, "diameter");
    clues = (rodt_clues){.stamp = {.size = "T30"}};
    assert_int_equal(rodt_clues_identify(&clues, us(), (rodt_date){0}, &found, &error), RODT_E_ARGUMENT);
    expect_error(&error, "chamber");
}

/* Of many wheel ends the error says which. */
static void wheel_ends_by_number(void **state)
{
    (void)state;
    rodt_wheel_end ends[2] = {{.position = {1, RODT_SIDE_LEFT}, .reading = good()},
                              {.position = {1, RODT_SIDE_RIGHT}, .reading = good()}};
    rodt_finding findings[2] = {{.rules = us()}, {.rules = us()}};
    rodt_vehicle_finding vehicle;
    rodt_error error;
    ends[1].reading.released = (rodt_length){4, 2};
    assert_int_equal(rodt_vehicle_judge(ends, 2, 0, us(), findings, NULL, &vehicle, &error), RODT_E_ARGUMENT);
    expect_error(&error, "released");
    assert_int_equal(error.line, 2);
    ends[1].reading = good();
    ends[1].position.side = RODT_SIDE_LEFT;
    assert_int_equal(rodt_vehicle_judge(ends, 2, 0, us(), findings, NULL, &vehicle, &error), RODT_E_ARGUMENT);
    expect_error(&error, "position");
    assert_int_equal(error.line, 2);
    ends[1].position.side = RODT_SIDE_RIGHT;
    ends[0].reserved[0] = 1;
    assert_int_equal(rodt_vehicle_combine(ends, 2, 0, findings, NULL, &vehicle, &error), RODT_E_ARGUMENT);
    expect_error(&error, "reserved");
    assert_int_equal(error.line, 1);
    ends[0].reserved[0] = 0;
    findings[1].verdict = (rodt_verdict)4;
    assert_int_equal(rodt_vehicle_combine(ends, 2, 0, findings, NULL, &vehicle, &error), RODT_E_ARGUMENT);
    expect_error(&error, "verdict");
    assert_int_equal(error.line, 2);
    assert_int_equal(rodt_vehicle_judge(ends, 2, 1, us(), findings, NULL, &vehicle, &error), RODT_E_ARGUMENT);
    expect_error(&error, "brakes");
    assert_int_equal(error.line, 0);
}

/* A rule set that was not found is a status, and getters know nothing of it. */
static void no_rule_set(void **state)
{
    (void)state;
    const rodt_rules *typo = rodt_rules_find("us-fmcrs");
    rodt_reading reading = good();
    rodt_wheel_end end = {.position = {1, RODT_SIDE_LEFT}, .reading = reading};
    const rodt_form form = {.chamber = "30", .released = "2 1/8", .applied = "4"};
    const rodt_clues clues = {.stamp = reading.chamber};
    rodt_finding finding;
    rodt_vehicle_finding vehicle;
    rodt_limit_answer answer;
    rodt_identification found;
    rodt_error error = {.status = RODT_OK};
    assert_null(typo);
    assert_int_equal(rodt_vehicle_judge(&end, 0, 0, rodt_rules_find("us-fmcsr"), &finding, NULL, &vehicle, &error),
                     RODT_E_ARGUMENT);
    assert_string_equal(error.field, "count");
    assert_int_equal(rodt_reading_judge(&reading, typo, &finding, &error), RODT_E_UNKNOWN_RULES);
    assert_int_equal(error.status, RODT_E_UNKNOWN_RULES);
    assert_true(strlen(error.text) > 10);
    assert_int_equal(rodt_form_judge(&form, typo, &finding, &error), RODT_E_UNKNOWN_RULES);
    assert_int_equal(rodt_form_judge_row(&form, typo, &finding, &error), RODT_E_UNKNOWN_RULES);
    assert_int_equal(rodt_vehicle_judge(&end, 1, 0, typo, &finding, NULL, &vehicle, &error), RODT_E_UNKNOWN_RULES);
    assert_int_equal(rodt_rules_find_limit(typo, &reading.chamber, reading.day, &answer, &error),
                     RODT_E_UNKNOWN_RULES);
    assert_int_equal(rodt_clues_identify(&clues, typo, reading.day, &found, &error), RODT_E_UNKNOWN_RULES);
    assert_string_equal(rodt_rules_id(typo), "");
    assert_string_equal(rodt_rules_title(typo), "");
    assert_string_equal(rodt_rules_authority(typo), "");
    assert_null(rodt_rules_source(typo));
    assert_int_equal(rodt_rules_evidence(typo), RODT_EVIDENCE_NONE);
    assert_false(rodt_date_given(rodt_rules_from(typo)));
    assert_false(rodt_date_given(rodt_rules_until(typo)));
    assert_null(rodt_rules_law(typo));
    assert_false(rodt_rules_at_limit_passes(typo));
    assert_false(rodt_pressure_given(rodt_rules_pressure_from(typo)));
    assert_false(rodt_pressure_given(rodt_rules_pressure_until(typo)));
    assert_null(rodt_rules_pressure_source(typo));
    assert_int_equal(rodt_rules_pressure_evidence(typo), RODT_EVIDENCE_NONE);
    assert_false(rodt_ratio_given(rodt_rules_rated_share(typo)));
    assert_int_equal(rodt_rules_limit_count(typo), 0);
    assert_null(rodt_rules_limit_at(typo, 0));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_good_reading_passes),
        cmocka_unit_test(days_that_are_none),
        cmocka_unit_test(lengths_that_no_text_has),
        cmocka_unit_test(lengths_out_of_their_bounds),
        cmocka_unit_test(pressures_that_no_text_has),
        cmocka_unit_test(sizes_that_no_mark_has),
        cmocka_unit_test(unknown_enumerators),
        cmocka_unit_test(reserves_and_reasons),
        cmocka_unit_test(what_a_form_says_beside_its_texts),
        cmocka_unit_test(limits_and_clues),
        cmocka_unit_test(wheel_ends_by_number),
        cmocka_unit_test(no_rule_set),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
