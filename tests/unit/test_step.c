/* SPDX-License-Identifier: Apache-2.0 */
/* The steps of an inspection: which a rule set has, by which rows, and what is said with them. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <string.h>
#include <cmocka.h>

#include "rodtravel/rodtravel.h"

static bool has(const char *rules, rodt_vehicle_class vehicle, rodt_step step)
{
    const rodt_rules *of = rodt_rules_find(rules);
    for (size_t i = 0; i < rodt_step_count(of, vehicle); i++) {
        if (rodt_step_at(of, vehicle, i) == step)
            return true;
    }
    return false;
}

static void a_rule_set_has_its_steps(void **state)
{
    (void)state;
    for (size_t r = 0; r < rodt_rules_count(); r++) {
        const rodt_rules *rules = rodt_rules_at(r);
        size_t count = rodt_step_count(rules, RODT_VEHICLE_CLASS_ANY);
        assert_int_equal(rodt_step_at(rules, RODT_VEHICLE_CLASS_ANY, 0), RODT_STEP_SECURE);
        assert_int_equal(rodt_step_at(rules, RODT_VEHICLE_CLASS_ANY, count - 1), RODT_STEP_VEHICLE);
        assert_int_equal(rodt_step_at(rules, RODT_VEHICLE_CLASS_ANY, count), RODT_STEP_NONE);
    }
    assert_true(has("ca-on", RODT_VEHICLE_CLASS_SINGLE, RODT_STEP_COMPARE));
    assert_false(has("us-cdl", RODT_VEHICLE_CLASS_SINGLE, RODT_STEP_COMPARE)); /* limits no stroke */
    assert_true(has("us-cdl", RODT_VEHICLE_CLASS_SINGLE, RODT_STEP_PARKING_VALVE));
    assert_false(has("ca-on", RODT_VEHICLE_CLASS_SINGLE, RODT_STEP_PARKING_VALVE)); /* has no row of it */
    assert_false(has("ca-on", RODT_VEHICLE_CLASS_SINGLE, RODT_STEP_TRACTOR_PROTECTION));
    assert_false(has("ca-on", RODT_VEHICLE_CLASS_BUS, RODT_STEP_SUPPLY_VALVE));
    assert_true(has("ca-on", RODT_VEHICLE_CLASS_COMBINATION, RODT_STEP_SUPPLY_VALVE));
    assert_int_equal(rodt_step_count(NULL, RODT_VEHICLE_CLASS_ANY), 0);
}

static void every_air_check_has_its_step(void **state)
{
    (void)state;
    for (int check = 1; check < RODT_AIR_CHECK_END; check++) {
        rodt_step step = rodt_step_of_check((rodt_air_check)check);
        assert_int_not_equal(step, RODT_STEP_NONE);
        if (check != RODT_AIR_CHECK_CONTAMINATION && check != RODT_AIR_CHECK_TRAILER_BRAKES) {
            assert_int_equal(rodt_step_check(step), check);
            assert_string_equal(rodt_step_name(step), rodt_air_check_name((rodt_air_check)check));
        }
    }
    assert_int_equal(rodt_step_of_check(RODT_AIR_CHECK_CONTAMINATION), RODT_STEP_DRAIN);
    assert_int_equal(rodt_step_of_check(RODT_AIR_CHECK_TRAILER_BRAKES), RODT_STEP_SUPPLY_VALVE);
    assert_int_equal(rodt_step_of_check(RODT_AIR_CHECK_NONE), RODT_STEP_NONE);
    assert_int_equal(rodt_step_of_check(RODT_AIR_CHECK_END), RODT_STEP_NONE);
    assert_int_equal(rodt_step_check(RODT_STEP_SECURE), RODT_AIR_CHECK_NONE);
    assert_int_equal(rodt_step_check((rodt_step)-1), RODT_AIR_CHECK_NONE);
}

/* How a check is set up is in its sentence, however short; nothing is added where it is empty or not there. */
static void a_set_up_is_said(void **state)
{
    (void)state;
    const rodt_rules *rules = rodt_rules_find("us-cdl");
    rodt_air_limit row = *rodt_step_row_at(RODT_STEP_WARNING, rules, NULL, 0);
    char without[RODT_SENTENCE_SIZE], text[RODT_SENTENCE_SIZE];
    row.setup = NULL;
    assert_int_equal(rodt_step_format(RODT_STEP_WARNING, RODT_STEP_PART_DO, rules, &row, without, sizeof without, NULL), RODT_OK);
    assert_null(strchr(without, '('));
    row.setup = "";
    assert_int_equal(rodt_step_format(RODT_STEP_WARNING, RODT_STEP_PART_DO, rules, &row, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, without);
    row.setup = "x";
    assert_int_equal(rodt_step_format(RODT_STEP_WARNING, RODT_STEP_PART_DO, rules, &row, text, sizeof text, NULL), RODT_OK);
    assert_non_null(strstr(text, " (x)"));
}

static size_t count_rows(const char *rules, rodt_step step, const rodt_air_reading *vehicle)
{
    size_t count = 0;
    while (rodt_step_row_at(step, rodt_rules_find(rules), vehicle, count) != NULL)
        count++;
    return count;
}

static void the_rows_are_those_that_can_judge(void **state)
{
    (void)state;
    rodt_air_reading vehicle = {.vehicle = RODT_VEHICLE_CLASS_ANY};
    assert_int_equal(count_rows("ca-on", RODT_STEP_LOSS_APPLIED, NULL), 3);
    vehicle.vehicle = RODT_VEHICLE_CLASS_SINGLE;
    assert_int_equal(count_rows("ca-on", RODT_STEP_LOSS_APPLIED, &vehicle), 1);
    vehicle.vehicle = RODT_VEHICLE_CLASS_COMBINATION;
    assert_int_equal(count_rows("ca-on", RODT_STEP_LOSS_APPLIED, &vehicle), 2);
    vehicle.towed_units = 3;
    assert_int_equal(count_rows("ca-on", RODT_STEP_LOSS_APPLIED, &vehicle), 1);
    assert_int_equal(rodt_step_row_at(RODT_STEP_LOSS_APPLIED, rodt_rules_find("ca-on"), &vehicle, 0)->value.num, 6);
    vehicle = (rodt_air_reading){.vehicle = RODT_VEHICLE_CLASS_BUS};
    assert_int_equal(count_rows("us-newvehicle", RODT_STEP_CUT_IN, &vehicle), 1); /* a bus has its own row */
    assert_int_equal(rodt_step_row_at(RODT_STEP_CUT_IN, rodt_rules_find("us-newvehicle"), &vehicle, 0)->value.num, 85);
    assert_int_equal(count_rows("us-fmcsr", RODT_STEP_WARNING, &vehicle), 3); /* by day of build */
    vehicle.built = (rodt_date){2015, 0, 0};
    assert_int_equal(count_rows("us-fmcsr", RODT_STEP_WARNING, &vehicle), 1);
    assert_int_equal(rodt_step_row_at(RODT_STEP_WARNING, rodt_rules_find("us-fmcsr"), &vehicle, 0)->value.num, 60);
    assert_int_equal(count_rows("ca-on", RODT_STEP_SECURE, NULL), 0);
    assert_null(rodt_step_row_at(RODT_STEP_WARNING, NULL, NULL, 0));
}

static void expect(rodt_step step, rodt_step_part part, const char *rules, const rodt_air_limit *row, const char *wanted)
{
    char text[RODT_SENTENCE_SIZE];
    assert_int_equal(rodt_step_format(step, part, rodt_rules_find(rules), row, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, wanted);
}

static void figures_are_filled_in(void **state)
{
    (void)state;
    const rodt_air_limit *row = rodt_step_row_at(RODT_STEP_WARNING, rodt_rules_find("ca-on"), NULL, 0);
    expect(RODT_STEP_WARNING, RODT_STEP_PART_TITLE, "ca-on", row, "Low air warning");
    expect(RODT_STEP_WARNING, RODT_STEP_PART_DO, "ca-on", row,
           "I bring the air pressure down until the low air warning comes on (ignition on, start above 90 psi, pressure "
           "brought down by pumping the pedal).");
    expect(RODT_STEP_WARNING, RODT_STEP_PART_SEE, "ca-on", row,
           "I see the light come on or hear the buzzer, and I read the gauge at that moment.");
    expect(RODT_STEP_WARNING, RODT_STEP_PART_GOOD, "ca-on", row,
           "That is good, because the warning comes on while there is still air to stop with: on at 380 kPa (55 psi) or "
           "above.");
    expect(RODT_STEP_WARNING, RODT_STEP_PART_DEFECTIVE, "ca-on", row,
           "It would be defective if the warning came on too late (below 55 psi), or did not come on at all. That is a "
           "major defect.");
    row = rodt_step_row_at(RODT_STEP_BUILD_UP, rodt_rules_find("ca-on"), NULL, 0);
    expect(RODT_STEP_BUILD_UP, RODT_STEP_PART_SEE, "ca-on", row,
           "I see the gauge rise without a stop (85 psi to 100 psi or 587 kPa to 690 kPa) and read the time that it "
           "took.");
    row = rodt_step_row_at(RODT_STEP_PARKING_VALVE, rodt_rules_find("us-cdl"), NULL, 0);
    expect(RODT_STEP_PARKING_VALVE, RODT_STEP_PART_DEFECTIVE, "us-cdl", row,
           "It would be defective if the valve popped out at a wrong pressure, or stayed in."); /* a usual figure only */
    expect(RODT_STEP_APPLICATION, RODT_STEP_PART_DO, "ca-on", NULL,
           "I bring the reservoirs to 90 to 100 psi, stop the engine, make sure that nobody is at the rods, press the "
           "pedal all the way down and hold it.");
    expect(RODT_STEP_APPLICATION, RODT_STEP_PART_DO, "us-nv", NULL,
           "I bring the reservoirs to the pressure that the maker gives, stop the engine, make sure that nobody is at "
           "the rods, press the pedal all the way down and hold it.");
    expect(RODT_STEP_COMPARE, RODT_STEP_PART_GOOD, "ca-on", NULL,
           "That is good, because the stroke is within the limit, and the brake has push left. A stroke exactly at the "
           "limit still passes.");
}

static void a_stroke_has_the_rank_of_its_schedule(void **state)
{
    (void)state;
    expect(RODT_STEP_COMPARE, RODT_STEP_PART_DEFECTIVE, "ca-on", NULL,
           "It would be defective if the stroke were over the limit. That is a major defect. I do not adjust an automatic "
           "adjuster by hand to make it pass: I have the cause found and repaired.");
    expect(RODT_STEP_COMPARE, RODT_STEP_PART_DEFECTIVE, "us-fmcsr", NULL,
           "It would be defective if the stroke were over the limit. I do not adjust an automatic adjuster by hand to make "
           "it pass: I have the cause found and repaired.");
}

static void without_a_figure_a_sentence_is_whole(void **state)
{
    (void)state;
    expect(RODT_STEP_WARNING, RODT_STEP_PART_DO, "us-nv", NULL,
           "I bring the air pressure down until the low air warning comes on.");
    expect(RODT_STEP_WARNING, RODT_STEP_PART_GOOD, "us-nv", NULL,
           "That is good, because the warning comes on while there is still air to stop with.");
    expect(RODT_STEP_WARNING, RODT_STEP_PART_DEFECTIVE, "us-nv", NULL,
           "It would be defective if the warning came on too late, or did not come on at all.");
    expect(RODT_STEP_VEHICLE, RODT_STEP_PART_DEFECTIVE, "us-nv", NULL,
           "It would be defective if one check or one brake were. Then I do not drive: I report it and have it "
           "repaired.");
    expect(RODT_STEP_VEHICLE, RODT_STEP_PART_DEFECTIVE, "ca-on", NULL,
           "It would be defective if one check or one brake were. A minor defect I write in the report, and I tell the "
           "carrier. With a major defect nobody drives the vehicle: I report it and have it repaired.");
}

static void nonsense_is_refused(void **state)
{
    (void)state;
    const rodt_rules *rules = rodt_rules_find("ca-on");
    const rodt_air_limit *row = rodt_step_row_at(RODT_STEP_WARNING, rules, NULL, 0);
    rodt_message message;
    assert_int_equal(rodt_step_message(RODT_STEP_NONE, RODT_STEP_PART_DO, rules, NULL, &message), RODT_E_ARGUMENT);
    assert_int_equal(rodt_step_message(RODT_STEP_END, RODT_STEP_PART_DO, rules, NULL, &message), RODT_E_ARGUMENT);
    assert_int_equal(rodt_step_message(RODT_STEP_DRAIN, RODT_STEP_PART_END, rules, NULL, &message), RODT_E_ARGUMENT);
    assert_int_equal(rodt_step_message(RODT_STEP_DRAIN, RODT_STEP_PART_DO, rules, row, &message), RODT_E_ARGUMENT);
    assert_int_equal(rodt_step_message(RODT_STEP_DRAIN, RODT_STEP_PART_DO, rules, NULL, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_step_message(RODT_STEP_DRAIN, RODT_STEP_PART_DO, NULL, NULL, &message), RODT_E_UNKNOWN_RULES);
    RODT_ENUM32(rodt_step) step = RODT_STEP_DRAIN;
    assert_int_equal(rodt_step_find(" Build-Up ", &step), RODT_OK);
    assert_int_equal(step, RODT_STEP_BUILD_UP);
    assert_int_equal(rodt_step_find("dance", &step), RODT_E_SYNTAX);
    RODT_ENUM32(rodt_step_part) part = RODT_STEP_PART_DO;
    assert_int_equal(rodt_step_part_find("good", &part), RODT_OK);
    assert_int_equal(part, RODT_STEP_PART_GOOD);
    assert_string_equal(rodt_step_part_name(RODT_STEP_PART_DEFECTIVE), "defective");
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_rule_set_has_its_steps),
                                       cmocka_unit_test(every_air_check_has_its_step),
                                       cmocka_unit_test(a_set_up_is_said), cmocka_unit_test(the_rows_are_those_that_can_judge),
                                       cmocka_unit_test(figures_are_filled_in),
                                       cmocka_unit_test(a_stroke_has_the_rank_of_its_schedule),
                                       cmocka_unit_test(without_a_figure_a_sentence_is_whole),
                                       cmocka_unit_test(nonsense_is_refused)};
    return cmocka_run_group_tests_name("step", tests, NULL, NULL);
}
