/* SPDX-License-Identifier: Apache-2.0 */
/* The steps of an inspection: which a rule set has, by which rows, and what is said with them. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <string.h>
#include <cmocka.h>

#include "core/common.h"
#include "message_text.h"
#include "rodtravel/rodtravel.h"
#include "rules/tables.h"

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
    vehicle.built = (rodt_date){1975, 2, 28};
    assert_true(count_rows("us-fmcsr", RODT_STEP_WARNING, &vehicle) >= 1);
    vehicle.built = (rodt_date){1975, 0, 0}; /* until its end of February, or from March on */
    assert_int_equal(count_rows("us-fmcsr", RODT_STEP_WARNING, &vehicle), 2);
    vehicle.built = (rodt_date){2015, 0, 0};
    assert_int_equal(rodt_step_row_at(RODT_STEP_WARNING, rodt_rules_find("us-fmcsr"), &vehicle, 0)->value.num, 60);
    vehicle = (rodt_air_reading){.towed_units = 2}; /* which is a combination, though nobody says so */
    assert_int_equal(count_rows("ca-on", RODT_STEP_LOSS_APPLIED, &vehicle), 1);
    assert_int_equal(count_rows("ca-on", RODT_STEP_SECURE, NULL), 0);
    assert_null(rodt_step_row_at(RODT_STEP_WARNING, NULL, NULL, 0));
}

/* Invented rows of a carrier and of a law: the law's is left out where the carrier's is for each of its vehicles. */
static const struct {
    rodt_air_limit own, law;
    bool replaced;
} replacements[] = {
#define AIR .check = RODT_AIR_CHECK_CUT_IN, .value = {90, 1}, .comparison = RODT_COMPARISON_NOT_LESS_THAN
#define ANY AIR, .towed_units = -1
#define TRAIN AIR, .vehicle = RODT_VEHICLE_CLASS_COMBINATION
    {{ANY}, {ANY}, true},
    {{ANY, .measure = RODT_AIR_MEASURE_KPA}, {ANY}, false},
    {{ANY, .vehicle = RODT_VEHICLE_CLASS_BUS}, {ANY}, false},
    {{ANY, .vehicle = RODT_VEHICLE_CLASS_BUS}, {ANY, .vehicle = RODT_VEHICLE_CLASS_BUS}, true},
    {{ANY}, {ANY, .vehicle = RODT_VEHICLE_CLASS_BUS}, true},
    {{ANY, .span = RODT_AIR_SPAN_WARNING}, {ANY}, false},
    {{ANY}, {TRAIN, .towed_units = 2}, true},
    {{AIR, .towed_units = 0}, {ANY}, false},
    {{TRAIN, .towed_units = 2}, {TRAIN, .towed_units = 2}, true},
    {{TRAIN, .towed_units = 2}, {TRAIN, .towed_units = 3}, false},
    {{TRAIN, .towed_units = 2}, {TRAIN, .towed_units = 2, .towed_or_more = true}, false},
    {{TRAIN, .towed_units = 2, .towed_or_more = true}, {TRAIN, .towed_units = 2, .towed_or_more = true}, true},
    {{TRAIN, .towed_units = 2, .towed_or_more = true}, {TRAIN, .towed_units = 2}, true},
    {{ANY, .built_from = {2001, 1, 1}}, {ANY}, false},
    {{ANY, .built_from = {2001, 1, 1}}, {ANY, .built_from = {2001, 1, 1}}, true},
    {{ANY, .built_from = {2001, 1, 1}}, {ANY, .built_from = {2000, 12, 31}}, false},
    {{ANY}, {ANY, .built_from = {2001, 1, 1}}, true},
    {{ANY, .built_until = {2001, 1, 1}}, {ANY}, false},
    {{ANY, .built_until = {2001, 1, 1}}, {ANY, .built_until = {2001, 1, 1}}, true},
    {{ANY, .built_until = {2001, 1, 1}}, {ANY, .built_until = {2001, 1, 2}}, false},
    {{ANY}, {ANY, .built_until = {2001, 1, 1}}, true},
#undef AIR
#undef ANY
#undef TRAIN
};

static void a_carriers_row_replaces_the_laws(void **state)
{
    (void)state;
    const rodt_source source = {.section = "", .document = "the document"};
    for (size_t i = 0; i < COUNT_OF(replacements); i++) {
        rodt_air_limit own_row = replacements[i].own, law_row = replacements[i].law;
        own_row.published = "90 psi", law_row.published = "85 psi";
        own_row.source = law_row.source = &source;
        const rodt_rules law = {.id = "law", .air = &law_row, .air_count = 1};
        const rodt_rules own = {.id = "own", .air = &own_row, .air_count = 1, .law = &law, .air_law = &law};
        size_t count = 0;
        while (rodt_step_row_at(RODT_STEP_CUT_IN, &own, NULL, count) != NULL)
            count++;
        if (count != (replacements[i].replaced ? 1 : 2))
            fail_msg("case %u: %u rows", (unsigned)i, (unsigned)count);
        assert_ptr_equal(rodt_step_row_at(RODT_STEP_CUT_IN, &own, NULL, 0), &own_row);
        rodt_message message;
        assert_int_equal(rodt_step_message(RODT_STEP_CUT_IN, RODT_STEP_PART_GOOD, &own, &own_row, &message), RODT_OK);
        const rodt_argument *named = rodt_message_argument(&message, "source");
        assert_int_equal(named != NULL, replacements[i].replaced);
        if (named != NULL)
            assert_string_equal(named->text, "the document"); /* its section has no name */
        assert_int_equal(rodt_step_message(RODT_STEP_CUT_IN, RODT_STEP_PART_GOOD, &own, &law_row, &message), RODT_OK);
        assert_null(rodt_message_argument(&message, "source"));
    }
}

/* A rule set that ranks at all says so of each action, whichever rank comes first; a row by hand may have no set-up. */
static void ranks_and_set_ups_by_hand(void **state)
{
    (void)state;
    static const rodt_air_kind kinds[] = {RODT_AIR_KIND_LIMIT, RODT_AIR_KIND_LIMIT_AND_MINOR, RODT_AIR_KIND_LIMIT_AND_MAJOR};
    for (size_t i = 0; i < COUNT_OF(kinds); i++) {
        const rodt_air_limit row = {.check = RODT_AIR_CHECK_CUT_IN, .kind = kinds[i], .towed_units = -1, .published = "",
                                    .comparison = RODT_COMPARISON_NOT_LESS_THAN, .value = {85, 1}};
        const rodt_rules law = {.id = "law", .air = &row, .air_count = 1};
        rodt_message message;
        assert_int_equal(rodt_step_message(RODT_STEP_CUT_IN, RODT_STEP_PART_DEFECTIVE, &law, &row, &message), RODT_OK);
        assert_int_equal(rodt_message_argument(&message, "action")->code,
                         kinds[i] == RODT_AIR_KIND_LIMIT ? RODT_MESSAGE_STEP_ACTION : RODT_MESSAGE_STEP_ACTION_RANKED);
        assert_int_equal(rodt_step_message(RODT_STEP_CUT_IN, RODT_STEP_PART_DO, &law, &row, &message), RODT_OK);
        assert_int_equal(rodt_message_argument(&message, "how")->code, RODT_MESSAGE_NONE);
    }
}

/* A row that others displace is for no vehicle where they do so for all; between two of them it is for some. */
static void displaced_rows_by_hand(void **state)
{
    (void)state;
#define CUT_IN .check = RODT_AIR_CHECK_CUT_IN, .value = {90, 1}, .comparison = RODT_COMPARISON_NOT_LESS_THAN
#define TRAIN CUT_IN, .vehicle = RODT_VEHICLE_CLASS_COMBINATION
    static const struct {
        rodt_air_limit rows[3];
        rodt_date built;
        size_t count;
    } cases[] = {
        {{{CUT_IN, .towed_units = -1},
          {CUT_IN, .towed_units = -1, .built_until = {1979, 12, 31}},
          {CUT_IN, .towed_units = -1, .built_from = {1990, 1, 1}}}, {0, 0, 0}, 3},
        {{{CUT_IN, .towed_units = -1},
          {CUT_IN, .towed_units = -1, .built_until = {1979, 12, 31}},
          {CUT_IN, .towed_units = -1, .built_from = {1980, 1, 1}}}, {0, 0, 0}, 2},
        {{{CUT_IN, .towed_units = -1},
          {CUT_IN, .towed_units = -1, .built_until = {1979, 6, 30}},
          {CUT_IN, .towed_units = -1, .built_from = {1979, 9, 1}}}, {1979, 0, 0}, 3},
        {{{CUT_IN, .towed_units = -1},
          {CUT_IN, .towed_units = -1, .built_until = {1979, 6, 30}},
          {CUT_IN, .towed_units = -1, .built_from = {1979, 9, 1}}}, {1979, 7, 1}, 1},
        {{{TRAIN, .towed_units = -1}, {TRAIN, .towed_units = 1, .towed_or_more = true}, {.check = RODT_AIR_CHECK_DRAIN}}, {0, 0, 0}, 1},
        {{{CUT_IN, .towed_units = -1}, {CUT_IN, .towed_units = -1, .vehicle = RODT_VEHICLE_CLASS_SINGLE},
          {TRAIN, .towed_units = -1}}, {0, 0, 0}, 2}, /* no class of vehicles is left for the first */
        {{{TRAIN, .towed_units = -1}, {TRAIN, .towed_units = 1}, {.check = RODT_AIR_CHECK_DRAIN}}, {0, 0, 0}, 2},
    };
#undef CUT_IN
#undef TRAIN
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        const rodt_rules law = {.id = "law", .air = cases[i].rows, .air_count = COUNT_OF(cases[i].rows)};
        const rodt_air_reading vehicle = {.built = cases[i].built};
        size_t count = 0;
        while (rodt_step_row_at(RODT_STEP_CUT_IN, &law, &vehicle, count) != NULL)
            count++;
        if (count != cases[i].count)
            fail_msg("case %zu: %zu rows", i, count);
    }
}

/* Sentences as data, with the first row of the step: every clause and figure, and nothing more. */
static const struct {
    const char *rules;
    rodt_step step;
    rodt_step_part part;
    const char *message;
} as_data[] = {
    {"ca-on", RODT_STEP_SECURE, RODT_STEP_PART_TITLE,
     "step.secure.title"},
    {"ca-on", RODT_STEP_SECURE, RODT_STEP_PART_DO,
     "step.secure.do how="},
    {"ca-on", RODT_STEP_SECURE, RODT_STEP_PART_GOOD,
     "step.secure.good required= at_limit=step.at-limit-passes"},
    {"ca-on", RODT_STEP_WARNING, RODT_STEP_PART_TITLE,
     "step.warning.title"},
    {"ca-on", RODT_STEP_WARNING, RODT_STEP_PART_DO,
     "step.warning.do how=step.how setup=\"ignition on, start above 90 psi, pressure brought down by pumping the pedal\""},
    {"ca-on", RODT_STEP_WARNING, RODT_STEP_PART_SEE,
     "step.warning.see span="},
    {"ca-on", RODT_STEP_WARNING, RODT_STEP_PART_GOOD,
     "step.warning.good required=step.required published=\"on at 380 kPa (55 psi) or above\" at_limit=step.at-limit-passes"},
    {"ca-on", RODT_STEP_WARNING, RODT_STEP_PART_DEFECTIVE,
     "step.warning.defective action=step.action-ranked rank=step.major limit=step.limit when=air.edge.below bound=55/1 "
     "value.psi 1"},
    {"ca-on", RODT_STEP_BUILD_UP, RODT_STEP_PART_SEE,
     "step.build-up.see span=step.span span=air.span.pressures.both start=85/1 value.psi 1 stop=100/1 value.psi 1 "
     "start_kpa=587/1 value.kpa 1 stop_kpa=690/1 value.kpa 1"},
    {"ca-on", RODT_STEP_BUILD_UP, RODT_STEP_PART_DEFECTIVE,
     "step.build-up.defective action=step.action-ranked rank=step.minor limit=step.limit when=air.edge.above bound=120/1 "
     "value.seconds 1"},
    {"ca-on", RODT_STEP_SPRING_BRAKE, RODT_STEP_PART_GOOD,
     "step.spring-brake.good required= at_limit=step.at-limit-passes"},
    {"ca-on", RODT_STEP_SPRING_BRAKE, RODT_STEP_PART_DEFECTIVE,
     "step.spring-brake.defective action=step.action-ranked rank=step.major limit="},
    {"ca-on", RODT_STEP_APPLICATION, RODT_STEP_PART_DO,
     "step.application.do how= window=step.window from=90/1 until=100/1"},
    {"us-nv", RODT_STEP_APPLICATION, RODT_STEP_PART_DO,
     "step.application.do how= window=step.window-none from= until="},
    {"us-nv", RODT_STEP_APPLICATION, RODT_STEP_PART_GOOD,
     "step.application.good required= at_limit=step.at-limit-fails"},
    {"ca-on", RODT_STEP_COMPARE, RODT_STEP_PART_DEFECTIVE,
     "step.compare.defective action=step.action-ranked rank=step.major limit="},
};

static void sentences_as_data(void **state)
{
    (void)state;
    for (size_t i = 0; i < COUNT_OF(as_data); i++) {
        const rodt_rules *rules = rodt_rules_find(as_data[i].rules);
        rodt_message message;
        assert_int_equal(rodt_step_message(as_data[i].step, as_data[i].part, rules,
                                           rodt_step_row_at(as_data[i].step, rules, NULL, 0), &message), RODT_OK);
        expect_message(&message, as_data[i].message);
    }
}

/* The last row of a carrier and of a law, and what stands behind it. */
static void rows_at_their_ends(void **state)
{
    (void)state;
    const rodt_source source = {.section = "1.2", .document = "the document"};
    rodt_air_limit own_rows[3], law_rows[2];
    for (size_t i = 0; i < COUNT_OF(own_rows); i++)
        own_rows[i] = (rodt_air_limit){.check = RODT_AIR_CHECK_CUT_IN, .comparison = RODT_COMPARISON_NOT_LESS_THAN, .towed_units = -1,
                                       .value = {90, 1}, .published = "90 psi", .source = &source};
    law_rows[0] = law_rows[1] = own_rows[0];
    own_rows[0].check = RODT_AIR_CHECK_CUT_OUT;
    own_rows[2].kind = law_rows[1].kind = RODT_AIR_KIND_LIMIT_AND_MAJOR;
    const rodt_rules law = {.id = "law", .air = law_rows, .air_count = 1};
    const rodt_rules own = {.id = "own", .air = own_rows, .air_count = 2, .law = &law, .air_law = &law};
    rodt_message message;
    assert_ptr_equal(rodt_step_row_at(RODT_STEP_CUT_IN, &own, NULL, 0), &own_rows[1]);
    assert_null(rodt_step_row_at(RODT_STEP_CUT_IN, &own, NULL, 1)); /* the law's row is replaced */
    assert_int_equal(rodt_step_message(RODT_STEP_CUT_IN, RODT_STEP_PART_GOOD, &own, &own_rows[1], &message), RODT_OK);
    expect_message(&message, "step.cut-in.good required=step.required-own.beside-law published=\"90 psi\" law=\"90 psi\" "
                             "source=\"1.2\" at_limit=step.at-limit-fails");
    assert_int_equal(rodt_step_message(RODT_STEP_CUT_IN, RODT_STEP_PART_DEFECTIVE, &law, NULL, &message), RODT_OK);
    assert_int_equal(rodt_message_argument(&message, "action")->code, RODT_MESSAGE_STEP_ACTION);
    const rodt_rules ranked = {.id = "ranked", .air = law_rows, .air_count = 2};
    assert_int_equal(rodt_step_message(RODT_STEP_CUT_IN, RODT_STEP_PART_DEFECTIVE, &ranked, NULL, &message), RODT_OK);
    assert_int_equal(rodt_message_argument(&message, "action")->code, RODT_MESSAGE_STEP_ACTION_RANKED);
}

/* One row or one limit of strokes is enough for a step. */
static void one_row_is_enough(void **state)
{
    (void)state;
    const rodt_air_limit row = {.check = RODT_AIR_CHECK_RESERVE, .towed_units = -1};
    const rodt_rules rows = {.id = "rows", .air = &row, .air_count = 1}, limits = {.id = "limits", .limit_count = 1};
    const rodt_rules none = {.id = "none"};
    size_t always = rodt_step_count(&none, RODT_VEHICLE_CLASS_SINGLE);
    assert_int_equal(rodt_step_count(&rows, RODT_VEHICLE_CLASS_SINGLE), always + 1);
    assert_int_equal(rodt_step_count(&limits, RODT_VEHICLE_CLASS_SINGLE), always + 6);
    assert_int_equal(rodt_step_count(&none, RODT_VEHICLE_CLASS_ANY), always + 2);
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
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_carriers_row_replaces_the_laws),
        cmocka_unit_test(ranks_and_set_ups_by_hand),
        cmocka_unit_test(displaced_rows_by_hand),
        cmocka_unit_test(sentences_as_data),
        cmocka_unit_test(rows_at_their_ends),
        cmocka_unit_test(one_row_is_enough),
        cmocka_unit_test(a_rule_set_has_its_steps),
                                       cmocka_unit_test(every_air_check_has_its_step),
                                       cmocka_unit_test(a_set_up_is_said), cmocka_unit_test(the_rows_are_those_that_can_judge),
                                       cmocka_unit_test(figures_are_filled_in),
                                       cmocka_unit_test(a_stroke_has_the_rank_of_its_schedule),
                                       cmocka_unit_test(without_a_figure_a_sentence_is_whole),
                                       cmocka_unit_test(nonsense_is_refused)};
    return cmocka_run_group_tests_name("step", tests, NULL, NULL);
}
