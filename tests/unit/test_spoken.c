/* SPDX-License-Identifier: Apache-2.0 */
/* What a person says after a reading: made from the reading, in forms for good, defective and undetermined. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include <string.h>

#include "message_text.h"
#include "rodtravel/rodtravel.h"
#include "rules/tables.h"

static rodt_pressure gauge(const char *text)
{
    rodt_pressure pressure = {0};
    assert_int_equal(rodt_pressure_parse(text, &pressure, NULL), RODT_OK);
    return pressure;
}

static void expect_air(const char *rules, rodt_air_reading reading, const char *wanted)
{
    rodt_air_finding finding;
    char text[RODT_SENTENCE_SIZE];
    assert_int_equal(rodt_air_reading_judge(&reading, rodt_rules_find(rules), &finding, NULL), RODT_OK);
    assert_int_equal(rodt_air_finding_spoken_format(&finding, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, wanted);
}

static void a_gauge_is_spoken(void **state)
{
    (void)state;
    rodt_air_reading warning = {.check = RODT_AIR_CHECK_WARNING, .pressure = gauge("62")};
    expect_air("ca-on", warning,
               "The low-pressure warning came on at 62 psi; that is good. Below 55 psi it would be a major defect.");
    expect_air("us-cdl", warning,
               "The low-pressure warning came on at 62 psi; that is good. Below 60 psi it would be defective.");
    warning.pressure = gauge("54");
    expect_air("ca-on", warning,
               "The low-pressure warning came on at 54 psi; that is a major defect, and nobody drives the vehicle until "
               "it is repaired. Required: not less than 55 psi.");
    expect_air("us-cdl", warning,
               "The low-pressure warning came on at 54 psi; that is defective, and I report it and do not drive. "
               "Required: not less than 60 psi.");
    expect_air("us-cdl", (rodt_air_reading){.check = RODT_AIR_CHECK_PARKING_VALVE, .pressure = gauge("30")},
               "The parking valve popped out at 30 psi. Nothing is defective by a usual figure: pops out at the maker's "
               "figure, usually 20 to 45 psi.");
    expect_air("us-fmcsr", (rodt_air_reading){.check = RODT_AIR_CHECK_WARNING, .pressure = gauge("70"), .built = {1970, 0, 0}},
               "The low-pressure warning came on at 70 psi; that is good. Below 55 psi, or below half of the governor's "
               "cut-out if that is less, that is defective, and I report it and do not drive.");
}

static void what_never_came_is_spoken(void **state)
{
    (void)state;
    expect_air("ca-on", (rodt_air_reading){.check = RODT_AIR_CHECK_WARNING, .answer = RODT_RECORDED_NO},
               "The low-pressure warning never came on; that is a major defect, and nobody drives the vehicle until it is "
               "repaired. Required: not less than 55 psi.");
    expect_air("us-cdl", (rodt_air_reading){.check = RODT_AIR_CHECK_PARKING_VALVE, .answer = RODT_RECORDED_NO},
               "The parking valve never popped out; that is defective, and I report it and do not drive.");
}

static void a_loss_is_spoken(void **state)
{
    (void)state;
    rodt_air_reading loss = {.check = RODT_AIR_CHECK_LOSS_APPLIED, .before = gauge("110"), .after = gauge("107")};
    expect_air("ca-on", loss, "Brakes applied, 110 psi to 107 psi in 60 s is 3 psi per minute; that is good. Above 3 psi "
                              "per minute it would be a major defect.");
    loss.vehicle = RODT_VEHICLE_CLASS_COMBINATION;
    expect_air("ca-on", loss, "Brakes applied, 110 psi to 107 psi in 60 s is 3 psi per minute; that is good. Above 4 psi "
                              "per minute it would be a major defect.");
}

static void an_answer_is_spoken(void **state)
{
    (void)state;
    expect_air("ca-on", (rodt_air_reading){.check = RODT_AIR_CHECK_AUDIBLE_LEAK, .answer = RODT_RECORDED_YES},
               "A leak was heard; that is a minor defect, and I write it in the report and tell the carrier.");
    expect_air("ca-qc", (rodt_air_reading){.check = RODT_AIR_CHECK_SPRING_BRAKE, .answer = RODT_RECORDED_YES},
               "The parking brake held; that is good. If the parking brake does not hold, that is defective, and I report "
               "it and do not drive.");
    expect_air("us-fmcsr", (rodt_air_reading){.check = RODT_AIR_CHECK_SPRING_BRAKE, .answer = RODT_RECORDED_NO},
               "The parking brake did not hold; that is defective, and I report it and do not drive. (This rule is "
               "common practice, no source.)");
    expect_air("ca-on", (rodt_air_reading){.check = RODT_AIR_CHECK_DRAIN}, "Drain valves: I have not done this check.");
    expect_air("us-nv", (rodt_air_reading){.check = RODT_AIR_CHECK_CUT_OUT, .pressure = gauge("120")},
               "The governor cut out at 120 psi; that decides nothing: the rule set us-nv has no figure for this check and vehicle.");
}

/* What is said as data: every clause and figure, and nothing more. */
static const struct {
    const char *rules;
    rodt_air_reading reading;
    const char *message;
} as_data[] = {
    {"ca-on", {.check = RODT_AIR_CHECK_WARNING, .pressure = {55, 1}},
     "air.spoken.good found=air.found.warning figure=55/1 value.psi 1 would_be=air.spoken.be-major "
     "is=air.spoken.is-major when=air.edge.below bound=55/1 value.psi 1"},
    {"ca-on", {.check = RODT_AIR_CHECK_WARNING, .pressure = {54, 1}},
     "air.spoken.defective found=air.found.warning figure=54/1 value.psi 1 is=air.spoken.is-major "
     "required=air.required.not-less-than bound=55/1 value.psi 1"},
    {"ca-on", {.check = RODT_AIR_CHECK_WARNING},
     "air.spoken.not-done title=air.title.warning"},
    {"ca-on", {.check = RODT_AIR_CHECK_WARNING, .before = {60, 1}},
     "air.spoken.undetermined found=air.title.warning missing=air.missing.value"},
    {"us-nh", {.check = RODT_AIR_CHECK_WARNING, .pressure = {70, 1}, .cut_out = {120, 1}},
     "air.spoken.good-if found=air.found.warning figure=70/1 value.psi 1 would_be=air.spoken.be-defective "
     "is=air.spoken.is-defective when=air.edge.below bound=60/1 value.psi 1"},
    {"us-nh", {.check = RODT_AIR_CHECK_WARNING, .answer = RODT_RECORDED_NO},
     "air.spoken.defective found=air.never.warning is=air.spoken.is-defective required=air.required.half-cut-out"},
    {"ca-on", {.check = RODT_AIR_CHECK_BUILD_UP, .before = {85, 1}, .after = {100, 1}, .seconds = {90, 1}},
     "air.spoken.good found=air.found.build-up span=air.span.pressures start=85/1 value.psi 1 stop=100/1 value.psi 1 "
     "seconds=90/1 value.seconds 1 would_be=air.spoken.be-minor is=air.spoken.is-minor when=air.edge.above "
     "bound=120/1 value.seconds 1"},
    {"nz", {.check = RODT_AIR_CHECK_BUILD_UP, .vehicle = RODT_VEHICLE_CLASS_SINGLE, .answer = RODT_RECORDED_NO},
     "air.spoken.defective found=air.never.build-up is=air.spoken.is-defective required=air.required.not-more-than "
     "bound=180/1 value.seconds 1"},
    {"us-fmcsr", {.check = RODT_AIR_CHECK_RESERVE, .before = {110, 1}, .after = {88, 1}, .applications = 3},
     "air.spoken.unconfirmed spoken=air.spoken.undetermined evidence=evidence.second-hand found=air.found.fall "
     "before=110/1 value.psi 1 after=88/1 value.psi 1 seconds=60/1 value.seconds 1 missing=air.missing.applications "
     "applications=1/1"},
    {"us-fmcsr", {.check = RODT_AIR_CHECK_SPRING_BRAKE, .answer = RODT_RECORDED_NO},
     "air.spoken.rule-unconfirmed spoken=air.spoken.defective-rule evidence=evidence.common-practice "
     "found=air.found.spring-brake.no is=air.spoken.is-defective required=air.required.published published=\"must "
     "hold\""},
    {"ca-on", {.check = RODT_AIR_CHECK_AUDIBLE_LEAK, .answer = RODT_RECORDED_YES},
     "air.spoken.defective-rule found=air.found.audible-leak.yes is=air.spoken.is-minor "
     "required=air.required.published published=\"no leak heard\""},
    {"us-cdl", {.check = RODT_AIR_CHECK_PARKING_VALVE, .pressure = {30, 1}},
     "air.spoken.noted found=air.found.parking-valve figure=30/1 value.psi 1 edge=air.edge.usual published=\"pops "
     "out at the maker's figure, usually 20 to 45 psi\""},
    {"us-cdl", {.check = RODT_AIR_CHECK_PARKING_VALVE, .answer = RODT_RECORDED_NO},
     "air.spoken.defective-rule found=air.never.parking-valve is=air.spoken.is-defective "
     "required=air.required.between bound=45/1 value.psi 1 from=20/1 1"},
};

static void air_findings_as_data(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof as_data / sizeof as_data[0]; i++) {
        rodt_air_finding finding;
        rodt_message message;
        assert_int_equal(rodt_air_reading_judge(&as_data[i].reading, rodt_rules_find(as_data[i].rules), &finding, NULL), RODT_OK);
        assert_int_equal(rodt_air_finding_spoken_message(&finding, &message), RODT_OK);
        expect_message(&message, as_data[i].message);
    }
}

/* The argument of that name. */
static const rodt_argument *argument_of(const rodt_message *message, const char *name)
{
    for (uint32_t i = 0; i < message->count; i++)
        if (strcmp(message->arguments[i].name, name) == 0)
            return &message->arguments[i];
    fail_msg("%s has no %s", rodt_message_code_name((rodt_message_code)message->code), name);
    return NULL;
}

static void expect_stroke(rodt_form form, const char *rules, const char *wanted)
{
    rodt_finding finding;
    char text[RODT_SENTENCE_SIZE];
    assert_int_equal(rodt_form_judge_row(&form, rodt_rules_find(rules), &finding, NULL), RODT_OK);
    assert_int_equal(rodt_finding_spoken_format(&finding, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, wanted);
}

static void a_stroke_is_spoken(void **state)
{
    (void)state;
    expect_stroke((rodt_form){.chamber = "clamp 30", .stroke_class = "standard", .released = "2", .applied = "2 1/16",
                              .psi = "95"}, "us-fmcsr",
                  "Released 2, applied 2 1/16: the stroke is 1/16; I do not call that good yet. The rod hardly moved, "
                  "less than 1/2: look for no air, a seized part, a wrong reading (common practice, no source).");
    rodt_form form = {.chamber = "clamp 30 standard", .released = "2 1/8", .applied = "3 7/8", .psi = "95"};
    expect_stroke(form, "us-fmcsr", "Released 2 1/8, applied 3 7/8: the stroke is 1 3/4. The limit is 2; that is good. "
                                    "Above 2 it would be defective.");
    expect_stroke(form, "ca-on", "Released 2 1/8, applied 3 7/8: the stroke is 1 3/4. The limit is 2; that is good. "
                                 "Above 2 it would be a major defect. (This limit is common practice, no source.)");
    form.applied = "4 1/8";
    expect_stroke(form, "us-fmcsr", "Released 2 1/8, applied 4 1/8: the stroke is 2, exactly the limit; that is still "
                                    "good. Above 2 it would be defective.");
    form.applied = "4 1/4";
    expect_stroke(form, "us-fmcsr", "Released 2 1/8, applied 4 1/4: the stroke is 2 1/8. The limit is 2; that is over by "
                                    "1/8, so the brake is out of adjustment. That is defective, and I report it and do "
                                    "not drive.");
    form.applied = "2 1/8";
    expect_stroke(form, "us-fmcsr", "Released 2 1/8, applied 2 1/8: the rod did not move, so the brake does not "
                                    "work. That is defective, and I report it and do not drive.");
    expect_stroke(form, "ca-on", "Released 2 1/8, applied 2 1/8: the rod did not move, so the brake does not work. That is "
                                 "a major defect, and nobody drives the vehicle until it is repaired. (This limit is common "
                                 "practice, no source.)");
    form.applied = NULL;
    expect_stroke(form, "us-fmcsr", "Released 2 1/8, applied (not measured): that decides nothing. The applied position "
                                    "was not measured.");
    form.applied = "2";
    expect_stroke(form, "us-fmcsr", "Released 2 1/8, applied 2: that decides nothing. Applied is less than released: the "
                                    "readings are swapped, or one is wrong, or one was taken from a mark and not from the "
                                    "chamber face; measure again.");
}

/* 1 3/4 in of a carrier is strict beside the law's 2 in, and the rank is the law's, over its own limit alone. Invented
 * limits. */
static void a_carriers_limit_is_spoken(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit\nclamp,30,standard,1 3/4\n";
    static const struct {
        const char *law;
        const char *chamber; /* 30: as in the table of the carrier */
        const char *applied;
        const char *sentence;
    } cases[] = {
        {"ca-on", "20", "5",
         "Released 2 1/8, applied 5: the stroke is 2 7/8. The limit is 1 3/4; that is over by 1 1/8, so the brake is "
         "out of adjustment. That is a major defect, and nobody drives the vehicle until it is repaired. (This limit is common practice, no source.)"},
        {"ca-on", "20", "3",
         "Released 2 1/8, applied 3: the stroke is 7/8. The limit is 1 3/4; that is good. Above 1 3/4 it would be a "
         "major defect. (This limit is common practice, no source.)"},
        {"ca-on", "30", "3",
         "Released 2 1/8, applied 3: the stroke is 7/8. The limit is 1 3/4; that is good. Above 1 3/4 it would be "
         "defective."},
        {"ca-on", "30", "5",
         "Released 2 1/8, applied 5: the stroke is 2 7/8. The limit is 1 3/4; that is over by 1 1/8, so the brake is "
         "out of adjustment. That is a major defect, and nobody drives the vehicle until it is repaired."},
        {"ca-on", "30", "4",
         "Released 2 1/8, applied 4: the stroke is 1 7/8. The limit is 1 3/4; that is over by 1/8, so the brake is out "
         "of adjustment. That is defective, and I report it and do not drive."},
        {"us-inuse", "30", "4",
         "Released 2 1/8, applied 4: the stroke is 1 7/8. The limit is 1 3/4; that is over by 1/8, so the brake is out "
         "of adjustment. That is defective, and I report it and do not drive."}};
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        const rodt_form form = {.chamber = cases[i].chamber, .stroke_class = "standard", .released = "2 1/8",
                                .applied = cases[i].applied, .psi = "95"};
        rodt_finding finding;
        rodt_rules *own;
        char text[RODT_SENTENCE_SIZE];
        assert_int_equal(rodt_rules_load(rodt_rules_find(cases[i].law), "yard", table, sizeof table - 1, &own, NULL),
                         RODT_OK);
        assert_int_equal(rodt_form_judge_row(&form, own, &finding, NULL), RODT_OK);
        assert_int_equal(rodt_finding_spoken_format(&finding, text, sizeof text, NULL), RODT_OK);
        assert_string_equal(text, cases[i].sentence);
        rodt_rules_unref(own);
    }
}

/* Over by the travel of its housing alone, without a limit that is known; not moved, whatever the limit is. */
static void a_stroke_without_a_limit_is_spoken(void **state)
{
    (void)state;
    rodt_form form = {.chamber = "painted", .released = "1", .applied = "5", .rated_stroke = "3", .psi = "95"};
    expect_stroke(form, "us-fmcsr", "Released 1, applied 5: the stroke is 4. That is defective, and I report it and do not "
                                    "drive. The chamber cannot be read.");
    expect_stroke(form, "ca-on", "Released 1, applied 5: the stroke is 4. That is a major defect, and nobody drives the vehicle "
                                 "until it is repaired. The chamber cannot be read.");
    form.applied = "1";
    expect_stroke(form, "us-fmcsr", "Released 1, applied 1: the rod did not move, so the brake does not work. That is defective, and "
                                    "I report it and do not drive.");
    form = (rodt_form){.chamber = "clamp 24 standard", .released = "2", .applied = "3", .psi = "95"};
    expect_stroke(form, "ca-nsc", "Released 2, applied 3: the stroke is 1. The limit is 1 3/4; that is good. Above 1 3/4 it would be "
                                  "defective. (This limit is from memory, unconfirmed.)");
    form.applied = "4";
    expect_stroke(form, "ca-nsc", "Released 2, applied 4: the stroke is 2. The limit is 1 3/4; that is over by 1/4, so the brake is "
                                  "out of adjustment. That is defective, and I report it and do not drive. (This limit is "
                                  "from memory, unconfirmed.)");
    form.applied = "3 3/4";
    expect_stroke(form, "ca-nsc", "Released 2, applied 3 3/4: the stroke is 1 3/4, exactly the limit; that is still good. Above 1 "
                                  "3/4 it would be defective. (This limit is from memory, unconfirmed.)");
}

/* A law that says "less than". Invented: no such law is in the tables. */
static void a_limit_that_does_not_pass_is_spoken(void **state)
{
    (void)state;
    struct rodt_rules less_than = *rodt_rules_find("us-fmcsr");
    less_than.at_limit_passes = false;
    rodt_form form = {.chamber = "clamp 30 standard", .released = "2", .applied = "4", .psi = "95"};
    static const char *const sentences[] = {
        "Released 2, applied 4: the stroke is 2, exactly the limit, and it must be less, so the brake is out of "
        "adjustment. That is defective, and I report it and do not drive.",
        "Released 2, applied 3: the stroke is 1. The limit is 2; that is good. At 2 or more it would be defective."};
    for (size_t i = 0; i < 2; i++) {
        rodt_finding finding;
        char text[RODT_SENTENCE_SIZE];
        assert_int_equal(rodt_form_judge_row(&form, &less_than, &finding, NULL), RODT_OK);
        assert_int_equal(rodt_finding_spoken_format(&finding, text, sizeof text, NULL), RODT_OK);
        assert_string_equal(text, sentences[i]);
        form.applied = "3";
    }
}

/* The first of these is said, whatever else there is; other reasons only alone. */
static void the_reason_to_be_put_right_first_is_spoken(void **state)
{
    (void)state;
    static const rodt_reason order[] = {
        RODT_REASON_CHAMBER_MISSING,    RODT_REASON_CHAMBER_UNREADABLE,   RODT_REASON_RELEASED_MISSING,
        RODT_REASON_APPLIED_MISSING,    RODT_REASON_RELEASED_UNREADABLE,  RODT_REASON_APPLIED_UNREADABLE,
        RODT_REASON_READINGS_SWAPPED,   RODT_REASON_BEYOND_RATED_STROKE,  RODT_REASON_LOST_BLANK,
        RODT_REASON_ENGINE_RUNNING,     RODT_REASON_SPRING_BRAKE_APPLIED, RODT_REASON_PRESSURE_LOW,
        RODT_REASON_PRESSURE_HIGH,      RODT_REASON_RULES_NOT_IN_FORCE,   RODT_REASON_NO_PUBLISHED_LIMIT,
        RODT_REASON_DATE_AMBIGUOUS,     RODT_REASON_DATE_UNREADABLE,      RODT_REASON_OTHER_UNREADABLE};
    rodt_finding finding = {.rules = rodt_rules_find("us-fmcsr")};
    const rodt_limit row = {.limit = {2, 1}};
    rodt_message message, reason;
    finding.law_row = &row;
    uint64_t left = 0;
    for (int i = 0; i < RODT_REASON_END; i++) {
        if (rodt_reason_name((rodt_reason)i)[0] == '\0')
            continue;
        left |= RODT_REASON_BIT(i);
        finding.reasons = RODT_REASON_BIT(i);
        assert_int_equal(rodt_finding_spoken_message(&finding, &message), RODT_OK);
        assert_int_equal(message.code, RODT_MESSAGE_STROKE_SPOKEN_UNDETERMINED);
        assert_int_equal(rodt_finding_reason_message(&finding, (rodt_reason)i, &reason), RODT_OK);
        assert_int_equal(argument_of(&message, "reason")->code, reason.code);
    }
    for (size_t i = 0; i < sizeof order / sizeof order[0]; i++) {
        finding.reasons = left;
        assert_int_equal(rodt_finding_spoken_message(&finding, &message), RODT_OK);
        assert_int_equal(rodt_finding_reason_message(&finding, order[i], &reason), RODT_OK);
        assert_int_equal(argument_of(&message, "reason")->code, reason.code);
        left &= ~RODT_REASON_BIT(order[i]);
    }
    finding.reasons = 0;
    assert_int_equal(rodt_finding_spoken_message(&finding, &message), RODT_E_ARGUMENT);
}

/* An excess that does not fit, of a finding that was filled by hand, is none. */
static void an_excess_that_does_not_fit_is_not_spoken(void **state)
{
    (void)state;
    const rodt_finding finding = {.verdict = RODT_VERDICT_OUT_OF_ADJUSTMENT, .applied_stroke = {INT64_MAX, 1},
                                  .limit = {1, 3}, .margin = {-1, 1}, .rules = rodt_rules_find("us-fmcsr")};
    rodt_message message;
    assert_int_equal(rodt_finding_spoken_message(&finding, &message), RODT_OK);
    assert_int_equal(argument_of(&message, "excess")->number.num, 0);
    assert_int_equal(argument_of(&message, "excess")->number.den, 0);
    assert_string_equal(message.arguments[0].name, "edge"); /* nothing of a limit that is not confirmed */
}

/* A finding that was filled by hand may hold any reason and no other: it is said all the same. */
static void any_reason_of_a_finding_is_spoken(void **state)
{
    (void)state;
    rodt_finding finding = {.rules = rodt_rules_find("us-fmcsr"), .reasons = RODT_REASON_BIT(RODT_REASON_DRUM_HOT)};
    char text[RODT_SENTENCE_SIZE];
    assert_int_equal(rodt_finding_spoken_format(&finding, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, "Released (not measured), applied (not measured): that decides nothing. The drum was hot, "
                              "which lengthens the stroke: judged as found; measure again when it is cold.");
}

/* A finding by hand without the figure that was allowed is said with its condition; a carrier's own row is never doubted. */
static void what_is_said_of_a_good_figure(void **state)
{
    (void)state;
    const rodt_air_limit row = {.check = RODT_AIR_CHECK_WARNING, .measure = RODT_AIR_MEASURE_PSI, .published = "", .value = {60, 1},
                                .comparison = RODT_COMPARISON_NOT_LESS_THAN, .evidence = RODT_EVIDENCE_SECOND_HAND};
    rodt_air_finding finding = {.row = &row, .own_row = &row, .result = RODT_AIR_RESULT_GOOD, .measured = {70, 1},
                                .reading = {.check = RODT_AIR_CHECK_WARNING, .pressure = {70, 1}},
                                .rules = rodt_rules_find("us-cdl")};
    rodt_message message;
    assert_int_equal(rodt_air_finding_spoken_message(&finding, &message), RODT_OK);
    assert_int_equal(message.code, RODT_MESSAGE_AIR_SPOKEN_GOOD_IF);
    finding.allowed = (rodt_ratio){60, 1};
    assert_int_equal(rodt_air_finding_spoken_message(&finding, &message), RODT_OK);
    assert_int_equal(message.code, RODT_MESSAGE_AIR_SPOKEN_GOOD);
    finding.own_row = NULL;
    assert_int_equal(rodt_air_finding_spoken_message(&finding, &message), RODT_OK);
    assert_int_equal(message.code, RODT_MESSAGE_AIR_SPOKEN_UNCONFIRMED);
    const rodt_air_limit answer = {.check = RODT_AIR_CHECK_SPRING_BRAKE, .measure = RODT_AIR_MEASURE_YES_NO, .published = "",
                                   .comparison = RODT_COMPARISON_MUST_BE_YES};
    finding.row = finding.own_row = &answer;
    assert_int_equal(rodt_air_finding_spoken_message(&finding, &message), RODT_OK);
    assert_int_equal(message.code, RODT_MESSAGE_AIR_SPOKEN_GOOD_IF);
}

static void nonsense_is_refused(void **state)
{
    (void)state;
    rodt_message message;
    rodt_finding finding = {.verdict = RODT_VERDICT_IN_ADJUSTMENT};
    rodt_air_finding air = {.result = RODT_AIR_RESULT_GOOD, .reading = {.check = RODT_AIR_CHECK_WARNING}};
    assert_int_equal(rodt_finding_spoken_message(NULL, &message), RODT_E_ARGUMENT);
    assert_int_equal(rodt_finding_spoken_message(&finding, NULL), RODT_E_ARGUMENT);
    assert_false(rodt_finding_has(&(rodt_finding){.reasons = UINT64_MAX}, (rodt_reason)64)); /* no bit of a finding */
    assert_true(rodt_finding_has(&(rodt_finding){.reasons = UINT64_MAX}, (rodt_reason)63));
    assert_int_equal(rodt_finding_spoken_message(&finding, &message), RODT_E_ARGUMENT);
    finding.applied_stroke = (rodt_length){1, 1};
    assert_int_equal(rodt_finding_spoken_message(&finding, &message), RODT_E_ARGUMENT); /* good by no rule set */
    finding.limit = (rodt_length){2, 1};
    assert_int_equal(rodt_finding_spoken_message(&finding, &message), RODT_E_ARGUMENT);
    finding.rules = rodt_rules_find("us-fmcsr");
    assert_int_equal(rodt_finding_spoken_message(&finding, &message), RODT_OK);
    finding.applied_stroke = (rodt_length){0, 0};
    assert_int_equal(rodt_finding_spoken_message(&finding, &message), RODT_E_ARGUMENT);
    finding.verdict = RODT_VERDICT_UNDETERMINED;
    assert_int_equal(rodt_finding_spoken_message(&finding, &message), RODT_E_ARGUMENT);
    assert_int_equal(rodt_air_finding_spoken_message(NULL, &message), RODT_E_ARGUMENT);
    assert_int_equal(rodt_air_finding_spoken_message(&air, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_air_finding_spoken_message(&air, &message), RODT_E_ARGUMENT); /* good by no row */
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(what_is_said_of_a_good_figure),
        cmocka_unit_test(air_findings_as_data), cmocka_unit_test(a_gauge_is_spoken), cmocka_unit_test(a_loss_is_spoken),
                                       cmocka_unit_test(what_never_came_is_spoken),
                                       cmocka_unit_test(an_answer_is_spoken), cmocka_unit_test(a_stroke_is_spoken),
                                       cmocka_unit_test(a_carriers_limit_is_spoken),
                                       cmocka_unit_test(any_reason_of_a_finding_is_spoken),
                                       cmocka_unit_test(a_stroke_without_a_limit_is_spoken),
                                       cmocka_unit_test(a_limit_that_does_not_pass_is_spoken),
                                       cmocka_unit_test(the_reason_to_be_put_right_first_is_spoken),
                                       cmocka_unit_test(an_excess_that_does_not_fit_is_not_spoken),
                                       cmocka_unit_test(nonsense_is_refused)};
    return cmocka_run_group_tests_name("spoken", tests, NULL, NULL);
}
