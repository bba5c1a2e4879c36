/* SPDX-License-Identifier: Apache-2.0 */
/* Air checks in words: names that are stable, sentences with their figures in the right unit, edges. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <cmocka.h>

#include "core/common.h"
#include "message_text.h"
#include "rodtravel/aircheck.h"

static void names_are_for_ever(void **state)
{
    (void)state;
    static const char *const checks[] = {"none", "warning", "build-up", "cut-out", "cut-in", "loss-released", "loss-applied",
                                         "reserve", "spring-brake", "tractor-protection", "supply-valve",
                                         "parking-valve", "drain", "audible-leak", "contamination", "trailer-brakes"};
    static const char *const results[] = {"not-done", "good", "defective", "undetermined", "noted"};
    static const char *const missing[] = {"nothing", "row", "vehicle", "built", "volume", "span", "value", "sense", "cut-out",
                                          "applications"};
    static const char *const measures[] = {"psi", "kPa", "seconds", "psi-per-minute", "kPa-per-minute", "percent-left", "percent-lost",
                                            "yes-no"};
    assert_int_equal(RODT_AIR_CHECK_END, COUNT_OF(checks));
    for (int i = 0; i < RODT_AIR_CHECK_END; i++) {
        assert_string_equal(rodt_air_check_name((rodt_air_check)i), checks[i]);
        assert_int_equal(rodt_air_check_title((rodt_air_check)i)[0] != '\0', i != 0);
    }
    for (size_t i = 0; i < COUNT_OF(results); i++)
        assert_string_equal(rodt_air_result_name((rodt_air_result)i), results[i]);
    for (size_t i = 0; i < COUNT_OF(missing); i++)
        assert_string_equal(rodt_air_missing_name((rodt_air_missing)i), missing[i]);
    for (size_t i = 0; i < COUNT_OF(measures); i++)
        assert_string_equal(rodt_air_measure_name((rodt_air_measure)i), measures[i]);
    assert_string_equal(rodt_air_check_name(RODT_AIR_CHECK_END), "");
    assert_string_equal(rodt_air_check_title((rodt_air_check)-1), "");
    assert_string_equal(rodt_air_result_name((rodt_air_result)99), "");
    assert_string_equal(rodt_air_missing_name((rodt_air_missing)99), "");
    assert_string_equal(rodt_air_measure_name((rodt_air_measure)99), "");
    assert_string_equal(rodt_air_span_name(RODT_AIR_SPAN_WARNING), "warning");
    assert_string_equal(rodt_air_span_name((rodt_air_span)99), "");
    assert_string_equal(rodt_vehicle_class_name(RODT_VEHICLE_CLASS_ANY), "any");
    assert_string_equal(rodt_vehicle_class_name(RODT_VEHICLE_CLASS_BUS), "bus");
    assert_string_equal(rodt_vehicle_class_name((rodt_vehicle_class)4), "");
}

static rodt_pressure gauge(const char *text)
{
    rodt_pressure pressure = {0};
    assert_int_equal(rodt_pressure_parse(text, &pressure, NULL), RODT_OK);
    return pressure;
}

static void expect(const char *rules, rodt_air_reading reading, const char *sentence, const char *edge)
{
    rodt_air_finding finding;
    char text[600];
    assert_int_equal(rodt_air_reading_judge(&reading, rodt_rules_find(rules), &finding, NULL), RODT_OK);
    assert_int_equal(rodt_air_finding_format(&finding, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, sentence);
    assert_int_equal(rodt_air_finding_edge_format(&finding, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, edge);
}

static void judged_sentences(void **state)
{
    (void)state;
    expect("us-inuse", (rodt_air_reading){.check = RODT_AIR_CHECK_WARNING, .pressure = gauge("60"), .built = {2015, 0, 0}},
           "the low-pressure warning came on at 60 psi; required: not less than 60 psi, and this is exactly the edge, "
           "which passes: good", "defective below 60 psi");
    expect("us-ca", (rodt_air_reading){.check = RODT_AIR_CHECK_CUT_OUT, .pressure = gauge("130")},
           "the governor cut out at 130 psi; required: less than 130 psi, and this is exactly the edge, which fails: "
           "defective", "defective at 130 psi or more");
    expect("ca-bc", (rodt_air_reading){.check = RODT_AIR_CHECK_CUT_OUT, .pressure = gauge("104 1/2")},
           "the governor cut out at 104 1/2 psi; required: 105 to 135 psi: defective",
           "defective below 105 psi or above 135 psi");
    expect("ca-qc", (rodt_air_reading){.check = RODT_AIR_CHECK_CUT_IN, .pressure = gauge("560 kPa")},
           "the governor cut in at 560 kPa; required: more than 550 kPa: good", "defective at 550 kPa or below");
    expect("ca-sk", (rodt_air_reading){.check = RODT_AIR_CHECK_CUT_IN, .pressure = gauge("102"), .cut_out = gauge("130")},
           "the governor cut in 28 psi below its cut-out; required: 20 to 25 psi below the cut-out: defective",
           "defective below 20 psi or above 25 psi under the cut-out");
    expect("us-fmcsr", (rodt_air_reading){.check = RODT_AIR_CHECK_WARNING, .pressure = gauge("49"), .cut_out = gauge("100"),
                                          .built = {1970, 0, 0}},
           "the low-pressure warning came on at 49 psi; required: not less than 50 psi: defective", "defective below 50 psi");
    expect("au", (rodt_air_reading){.check = RODT_AIR_CHECK_RESERVE, .before = gauge("120"), .after = gauge("50")},
           "120 psi to 50 psi is about 41.7 % left; required: not less than 50 % left: defective (figure second-hand, "
           "unconfirmed)", "defective below 50 % left");
    expect("ca-on", (rodt_air_reading){.check = RODT_AIR_CHECK_AUDIBLE_LEAK, .answer = RODT_RECORDED_YES},
           "a leak was heard; the rule: no leak heard: defective, a minor defect", "minor defect if a leak is heard");
}

/* A rounded figure never lies on the bound that the exact one missed: 413.685 kPa is a little less than 60 psi. */
static void rounding_does_not_hide_the_edge(void **state)
{
    (void)state;
    expect("ca-bc", (rodt_air_reading){.check = RODT_AIR_CHECK_WARNING, .pressure = gauge("413.685 kPa")},
           "the low-pressure warning came on at about 59.99994 psi; required: not less than 60 psi: defective",
           "defective below 60 psi");
    expect("ca-qc", (rodt_air_reading){.check = RODT_AIR_CHECK_WARNING, .pressure = gauge("55")},
           "the low-pressure warning came on at about 379.2 kPa; required: not less than 380 kPa: defective, a major "
           "defect", "major defect below 380 kPa");
}

static void unjudged_sentences(void **state)
{
    (void)state;
    expect("us-cdl", (rodt_air_reading){.check = RODT_AIR_CHECK_WARNING}, "low-pressure warning: not done", "");
    expect("us-tx", (rodt_air_reading){.check = RODT_AIR_CHECK_WARNING, .pressure = gauge("60")},
           "the low-pressure warning came on at 60 psi: undetermined, the rule set us-tx has no figure for this check and vehicle", "");
    expect("ca-on", (rodt_air_reading){.check = RODT_AIR_CHECK_BUILD_UP, .before = gauge("80"), .after = gauge("100"),
                                       .seconds = {60, 1}},
           "80 psi to 100 psi took 60 s: undetermined, the rule times another span, 85 psi to 100 psi or 587 kPa to 690 "
           "kPa",
           "minor defect above 120 s");
    expect("nz", (rodt_air_reading){.check = RODT_AIR_CHECK_BUILD_UP, .span = RODT_AIR_SPAN_WARNING, .seconds = {125, 1}},
           "from where the warning stops to the greatest pressure took 125 s: undetermined, single vehicle, combination "
           "or bus decides", "");
    expect("us-ca", (rodt_air_reading){.check = RODT_AIR_CHECK_LOSS_APPLIED, .vehicle = RODT_VEHICLE_CLASS_COMBINATION,
                                       .before = gauge("110"), .after = gauge("105")},
           "brakes applied, 110 psi to 105 psi in 60 s: undetermined, the number of towed units decides", "");
    expect("ca-qc", (rodt_air_reading){.check = RODT_AIR_CHECK_TRACTOR_PROTECTION, .pressure = gauge("420 kPa")},
           "the tractor kept 420 kPa; required: not less than 420 kPa, and this is exactly the edge, which passes: good",
           "defective below 420 kPa");
    expect("ca-qc", (rodt_air_reading){.check = RODT_AIR_CHECK_LOSS_APPLIED, .vehicle = RODT_VEHICLE_CLASS_SINGLE,
                                       .pressure_unit = RODT_PRESSURE_UNIT_KPA, .before = gauge("800 kPa"),
                                       .after = gauge("770 kPa")},
           "brakes applied, 800 kPa to 770 kPa in 60 s is 30 kPa per minute; a major defect unless: not more than 40 kPa "
           "per minute: noted, smaller defects are not judged", "major defect above 40 kPa per minute");
}

static const rodt_air_limit *row_of(const char *rules, rodt_air_check check, rodt_vehicle_class vehicle)
{
    const rodt_rules *set = rodt_rules_find(rules);
    for (size_t i = 0; i < rodt_rules_air_count(set); i++) {
        const rodt_air_limit *row = rodt_rules_air_at(set, i);
        if (row->check == check && row->vehicle == vehicle)
            return row;
    }
    return NULL;
}

static void rows_alone(void **state)
{
    (void)state;
    char text[300];
    const struct {
        const rodt_air_limit *row;
        const char *edge;
    } cases[] = {
        {row_of("us-newvehicle", RODT_AIR_CHECK_BUILD_UP, RODT_VEHICLE_CLASS_ANY), "defective above 25 s x actual / required volume"},
        {row_of("us-inuse", RODT_AIR_CHECK_LOSS_APPLIED, RODT_VEHICLE_CLASS_COMBINATION),
         "defective above 4 psi per minute, 1 psi per minute more for each towed unit after the first"},
        {row_of("us-fmcsr", RODT_AIR_CHECK_WARNING, RODT_VEHICLE_CLASS_ANY),
         "defective below 55 psi, or below half of the governor's cut-out if that is less"}};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        assert_int_equal(rodt_air_limit_edge_format(cases[i].row, text, sizeof text, NULL), RODT_OK);
        assert_string_equal(text, cases[i].edge);
    }
}

static void buffers_and_arguments(void **state)
{
    (void)state;
    const rodt_air_reading reading = {.check = RODT_AIR_CHECK_WARNING, .pressure = {62, 1}};
    rodt_air_finding finding, broken;
    char text[200] = "as it was";
    assert_int_equal(rodt_air_reading_judge(&reading, rodt_rules_find("us-cdl"), &finding, NULL), RODT_OK);
    assert_int_equal(rodt_air_finding_format(&finding, text, 10, NULL), RODT_E_SPACE);
    assert_int_equal(rodt_air_finding_edge_format(&finding, text, 10, NULL), RODT_E_SPACE);
    assert_int_equal(rodt_air_limit_edge_format(finding.row, text, 10, NULL), RODT_E_SPACE);
    assert_int_equal(rodt_air_finding_format(NULL, text, sizeof text, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_air_finding_format(&finding, NULL, 100, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_air_finding_edge_format(NULL, text, sizeof text, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_air_limit_edge_format(NULL, text, sizeof text, NULL), RODT_E_ARGUMENT);
    broken = finding;
    broken.reading.check = RODT_AIR_CHECK_END;
    assert_int_equal(rodt_air_finding_format(&broken, text, sizeof text, NULL), RODT_E_ARGUMENT);
    assert_string_equal(text, "as it was");
}

/* A row that a caller made may hold any number. */
static void rows_with_unknown_enumerators(void **state)
{
    (void)state;
    const rodt_air_reading reading = {.check = RODT_AIR_CHECK_WARNING, .pressure = {62, 1}};
    rodt_air_finding finding;
    char text[200] = "as it was";
    rodt_message message = {.count = 7};
    assert_int_equal(rodt_air_reading_judge(&reading, rodt_rules_find("us-cdl"), &finding, NULL), RODT_OK);
    for (int i = 0; i < 5; i++) {
        rodt_air_limit row = *finding.row;
        rodt_air_finding broken = finding;
        broken.row = &row;
        assert_int_equal(rodt_air_limit_edge_format(&row, text, sizeof text, NULL), RODT_OK);
        strcpy(text, "as it was");
        switch (i) {
        case 0: row.check = RODT_AIR_CHECK_END; break;
        case 1: row.kind = RODT_AIR_KIND_END; break;
        case 2: row.comparison = RODT_COMPARISON_END; break;
        case 3: row.measure = RODT_AIR_MEASURE_END; break;
        default: row.span = RODT_AIR_SPAN_END; break;
        }
        assert_int_equal(rodt_air_limit_edge_format(&row, text, sizeof text, NULL), RODT_E_ARGUMENT);
        assert_int_equal(rodt_air_finding_edge_format(&broken, text, sizeof text, NULL), RODT_E_ARGUMENT);
        assert_int_equal(rodt_air_finding_format(&broken, text, sizeof text, NULL), RODT_E_ARGUMENT);
        assert_int_equal(rodt_air_finding_spoken_format(&broken, text, sizeof text, NULL), RODT_E_ARGUMENT);
        assert_int_equal(rodt_air_limit_edge_message(&row, &message), RODT_E_ARGUMENT);
        assert_string_equal(text, "as it was");
        assert_int_equal(message.count, 7);
    }
}

/* A finding that was filled by hand: each enumerator that is none, alone, and a figure of no row. */
static void what_cannot_be_said_is_refused(void **state)
{
    (void)state;
    const rodt_air_reading reading = {.check = RODT_AIR_CHECK_WARNING, .pressure = {62, 1}};
    rodt_air_finding good, wrong[5];
    rodt_message message;
    assert_int_equal(rodt_air_reading_judge(&reading, rodt_rules_find("us-cdl"), &good, NULL), RODT_OK);
    assert_int_equal(rodt_air_finding_message(&good, &message), RODT_OK);
    for (size_t i = 0; i < COUNT_OF(wrong); i++)
        wrong[i] = good;
    wrong[0].result = RODT_AIR_RESULT_END;
    wrong[1].missing = RODT_AIR_MISSING_END;
    wrong[2].reading.span = RODT_AIR_SPAN_END;
    wrong[3] = (rodt_air_finding){.reading = reading, .result = RODT_AIR_RESULT_UNDETERMINED, .measured = {62, 1}};
    wrong[4].reading.check = (rodt_air_check)-1;
    wrong[4].reading.answer = RODT_RECORDED_NO;
    for (size_t i = 0; i < COUNT_OF(wrong); i++) {
        assert_int_equal(rodt_air_finding_message(&wrong[i], &message), RODT_E_ARGUMENT);
        assert_int_equal(rodt_air_finding_edge_message(&wrong[i], &message), RODT_E_ARGUMENT);
    }
    wrong[3].measured = (rodt_ratio){0, 0};
    assert_int_equal(rodt_air_finding_message(&wrong[3], &message), RODT_OK);
    assert_int_equal(rodt_air_finding_message(&good, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_air_finding_edge_message(&good, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_air_limit_edge_message(good.row, NULL), RODT_E_ARGUMENT);
}

/* Without a row there is no span and no number of applications to say. */
static void what_is_missing_of_no_row(void **state)
{
    (void)state;
    static const rodt_air_missing missing[] = {RODT_AIR_MISSING_SPAN, RODT_AIR_MISSING_APPLICATIONS};
    for (size_t i = 0; i < COUNT_OF(missing); i++) {
        const rodt_air_finding finding = {.reading = {.check = RODT_AIR_CHECK_RESERVE}, .missing = missing[i],
                                          .result = RODT_AIR_RESULT_UNDETERMINED, .rules = rodt_rules_find("us-cdl")};
        char text[300] = "as it was";
        assert_int_equal(rodt_air_finding_format(&finding, text, sizeof text, NULL), RODT_E_ARGUMENT);
        assert_string_equal(text, "as it was");
    }
}

/* Findings as data: every clause and figure, and nothing more. */
static const struct {
    const char *rules;
    rodt_air_reading reading;
    const char *message, *edge;
} as_data[] = {
    {"us-tx", {.check = RODT_AIR_CHECK_WARNING, .pressure = {100, 1}},
     "air.undetermined found=air.found.warning figure=100/1 value.psi 1 missing=air.missing.row rules=\"us-tx\"",
     "none"},
    {"us-nh", {.check = RODT_AIR_CHECK_WARNING, .pressure = {100, 1}},
     "air.undetermined found=air.found.warning figure=100/1 value.psi 1 missing=air.missing.cut-out",
     "air.edge.defective when=air.edge.under-half"},
    {"ca-on", {.check = RODT_AIR_CHECK_WARNING, .answer = RODT_RECORDED_NO},
     "air.required found=air.never.warning required=air.required.not-less-than bound=55/1 value.psi 1 "
     "result=air.defective.major",
     "air.edge.major when=air.edge.below bound=55/1 value.psi 1"},
    {"ca-on", {.check = RODT_AIR_CHECK_WARNING, .answer = RODT_RECORDED_NO, .pressure = {100, 1}},
     "air.undetermined found=air.never.warning missing=air.missing.sense",
     "air.edge.major when=air.edge.below bound=55/1 value.psi 1"},
    {"ca-on", {.check = RODT_AIR_CHECK_WARNING, .pressure = {100, 1}},
     "air.undetermined found=air.found.warning figure=100/1 value.psi 1 missing=air.doubt.too-high",
     "air.edge.major when=air.edge.below bound=55/1 value.psi 1"},
    {"ca-on", {.check = RODT_AIR_CHECK_WARNING, .before = {60, 1}},
     "air.undetermined found=air.title.warning missing=air.missing.value",
     "air.edge.major when=air.edge.below bound=55/1 value.psi 1"},
    {"us-nh", {.check = RODT_AIR_CHECK_WARNING, .pressure = {70, 1}},
     "air.undetermined found=air.found.warning figure=70/1 value.psi 1 missing=air.missing.cut-out",
     "air.edge.defective when=air.edge.under-half"},
    {"us-nh", {.check = RODT_AIR_CHECK_WARNING, .answer = RODT_RECORDED_NO},
     "air.required found=air.never.warning required=air.required.half-cut-out result=air.defective",
     "air.edge.defective when=air.edge.under-half"},
    {"us-fmcsr", {.check = RODT_AIR_CHECK_WARNING, .pressure = {54, 1}, .built = {1970, 0, 0}},
     "air.undetermined found=air.found.warning figure=54/1 value.psi 1 missing=air.missing.cut-out",
     "air.edge.defective when=air.edge.half-cut-out when=air.edge.below bound=55/1 value.psi 1"},
    {"ca-on", {.check = RODT_AIR_CHECK_BUILD_UP, .before = {85, 1}, .after = {100, 1}},
     "air.undetermined found=air.found.build-up.untimed span=air.span.pressures start=85/1 value.psi 1 stop=100/1 "
     "value.psi 1 missing=air.missing.value",
     "air.edge.minor when=air.edge.above bound=120/1 value.seconds 1"},
    {"ca-on", {.check = RODT_AIR_CHECK_BUILD_UP, .before = {85, 1}, .seconds = {90, 1}},
     "air.undetermined found=air.found.build-up span=air.span.unknown seconds=90/1 value.seconds 1 "
     "missing=air.missing.span span=air.span.pressures.both start=85/1 value.psi 1 stop=100/1 value.psi 1 "
     "start_kpa=587/1 value.kpa 1 stop_kpa=690/1 value.kpa 1",
     "air.edge.minor when=air.edge.above bound=120/1 value.seconds 1"},
    {"ca-on", {.check = RODT_AIR_CHECK_BUILD_UP, .after = {100, 1}, .seconds = {90, 1}},
     "air.undetermined found=air.found.build-up span=air.span.unknown seconds=90/1 value.seconds 1 "
     "missing=air.missing.span span=air.span.pressures.both start=85/1 value.psi 1 stop=100/1 value.psi 1 "
     "start_kpa=587/1 value.kpa 1 stop_kpa=690/1 value.kpa 1",
     "air.edge.minor when=air.edge.above bound=120/1 value.seconds 1"},
    {"ca-on", {.check = RODT_AIR_CHECK_BUILD_UP, .span = RODT_AIR_SPAN_WARNING, .before = {85, 1}, .after = {100, 1}, .seconds = {90, 1}},
     "air.undetermined found=air.found.build-up span=air.span.warning seconds=90/1 value.seconds 1 "
     "missing=air.missing.span span=air.span.pressures.both start=85/1 value.psi 1 stop=100/1 value.psi 1 "
     "start_kpa=587/1 value.kpa 1 stop_kpa=690/1 value.kpa 1",
     "air.edge.minor when=air.edge.above bound=120/1 value.seconds 1"},
    {"nz", {.check = RODT_AIR_CHECK_BUILD_UP, .vehicle = RODT_VEHICLE_CLASS_SINGLE, .answer = RODT_RECORDED_NO},
     "air.never found=air.never.build-up result=air.defective",
     "air.edge.either when=air.edge.above bound=180/1 value.seconds 1"},
    {"nz", {.check = RODT_AIR_CHECK_BUILD_UP, .vehicle = RODT_VEHICLE_CLASS_SINGLE, .built = {2001, 0, 0}, .span = RODT_AIR_SPAN_WARNING, .seconds = {150, 1}},
     "air.required found=air.found.build-up span=air.span.warning seconds=150/1 value.seconds 1 "
     "required=air.required.not-more-than bound=180/1 value.seconds 1 result=air.good",
     "air.edge.either when=air.edge.above bound=180/1 value.seconds 1"},
    {"nz", {.check = RODT_AIR_CHECK_BUILD_UP, .vehicle = RODT_VEHICLE_CLASS_SINGLE, .built = {2001, 0, 0}, .span = RODT_AIR_SPAN_APPLICATIONS, .seconds = {95, 1}},
     "air.undetermined found=air.found.build-up span=air.span.applications seconds=95/1 value.seconds 1 "
     "missing=air.missing.other-way",
     "air.edge.either when=air.edge.above bound=90/1 value.seconds 1"},
    {"ca-sk", {.check = RODT_AIR_CHECK_CUT_IN, .pressure = {102, 1}},
     "air.undetermined found=air.found.cut-in figure=102/1 value.psi 1 missing=air.missing.cut-out",
     "air.edge.defective when=air.edge.under-cut-out when=air.edge.outside bound=20/1 value.psi 1 upper=25/1 "
     "value.psi 1"},
    {"us-cdl", {.check = RODT_AIR_CHECK_LOSS_APPLIED, .vehicle = RODT_VEHICLE_CLASS_SINGLE, .before = {110, 1}},
     "air.undetermined found=air.found.loss-applied fall=air.found.no-fall before=110/1 value.psi 1 after=value.psi "
     "1 seconds=60/1 value.seconds 1 missing=air.missing.value",
     "air.edge.defective when=air.edge.above bound=3/1 value.psi-per-minute 1"},
    {"us-cdl", {.check = RODT_AIR_CHECK_LOSS_RELEASED, .vehicle = RODT_VEHICLE_CLASS_SINGLE, .before = {110, 1}, .after = {109, 1}, .seconds = {30, 1}},
     "air.edge-fails found=air.found.loss-released.is fall=air.found.fall before=110/1 value.psi 1 after=109/1 "
     "value.psi 1 seconds=30/1 value.seconds 1 figure=2/1 value.psi-per-minute 1 required=air.required.less-than "
     "bound=2/1 value.psi-per-minute 1 result=air.defective",
     "air.edge.defective when=air.edge.or-more bound=2/1 value.psi-per-minute 1"},
    {"us-cdl", {.check = RODT_AIR_CHECK_LOSS_RELEASED, .before = {110, 1}, .after = {111, 1}},
     "air.undetermined found=air.found.loss-released fall=air.found.fall before=110/1 value.psi 1 after=111/1 "
     "value.psi 1 seconds=60/1 value.seconds 1 missing=air.missing.sense",
     "air.edge.defective when=air.edge.or-more bound=2/1 value.psi-per-minute 1"},
    {"us-fmcsr", {.check = RODT_AIR_CHECK_RESERVE, .before = {110, 1}, .after = {88, 1}, .applications = 3},
     "air.figure-unconfirmed finding=air.undetermined evidence=evidence.second-hand found=air.found.fall "
     "before=110/1 value.psi 1 after=88/1 value.psi 1 seconds=60/1 value.seconds 1 missing=air.missing.applications "
     "applications=1/1",
     "air.edge.defective when=air.edge.below bound=70/1 value.percent-left 1"},
    {"us-fmcsr", {.check = RODT_AIR_CHECK_RESERVE, .before = {110, 1}},
     "air.figure-unconfirmed finding=air.undetermined evidence=evidence.second-hand found=air.found.no-fall "
     "before=110/1 value.psi 1 after=value.psi 1 seconds=60/1 value.seconds 1 missing=air.missing.value",
     "air.edge.defective when=air.edge.below bound=70/1 value.percent-left 1"},
    {"ca-qc", {.check = RODT_AIR_CHECK_SPRING_BRAKE, .answer = RODT_RECORDED_YES},
     "air.rule found=air.found.spring-brake.yes required=air.required.published published=\"holds on the flat "
     "against a gentle pull\" result=air.good",
     "air.edge.defective when=air.edge.spring-brake"},
    {"us-fmcsr", {.check = RODT_AIR_CHECK_SPRING_BRAKE, .answer = RODT_RECORDED_NO},
     "air.rule-unconfirmed finding=air.rule evidence=evidence.common-practice found=air.found.spring-brake.no "
     "required=air.required.published published=\"must hold\" result=air.defective",
     "air.edge.defective when=air.edge.spring-brake"},
    {"ca-on", {.check = RODT_AIR_CHECK_SPRING_BRAKE, .pressure = {60, 1}},
     "air.rule-unconfirmed finding=air.undetermined evidence=evidence.common-practice found=air.title.spring-brake "
     "missing=air.missing.value",
     "air.edge.major when=air.edge.spring-brake"},
    {"us-cdl", {.check = RODT_AIR_CHECK_PARKING_VALVE, .pressure = {30, 1}},
     "air.usual found=air.found.parking-valve figure=30/1 value.psi 1 required=air.required.between bound=45/1 "
     "value.psi 1 from=20/1 1",
     "air.edge.usual published=\"pops out at the maker's figure, usually 20 to 45 psi\""},
    {"us-cdl", {.check = RODT_AIR_CHECK_PARKING_VALVE, .answer = RODT_RECORDED_NO},
     "air.never found=air.never.parking-valve result=air.defective",
     "air.never.edge published=\"pops out at the maker's figure, usually 20 to 45 psi\""},
    {"ca-qc", {.check = RODT_AIR_CHECK_TRACTOR_PROTECTION, .answer = RODT_RECORDED_YES},
     "air.undetermined found=air.found.tractor-protection.yes missing=air.missing.value",
     "air.edge.defective when=air.edge.below bound=420/1 value.kpa 1"},
    {"us-inuse", {.check = RODT_AIR_CHECK_LOSS_APPLIED, .vehicle = RODT_VEHICLE_CLASS_COMBINATION, .towed_units = 2, .before = {110, 1}, .after = {105, 1}},
     "air.edge-passes found=air.found.loss-applied.is fall=air.found.fall before=110/1 value.psi 1 after=105/1 "
     "value.psi 1 seconds=60/1 value.seconds 1 figure=5/1 value.psi-per-minute 1 required=air.required.not-more-than "
     "bound=5/1 value.psi-per-minute 1 result=air.good",
     "air.edge.defective when=air.edge.above bound=5/1 value.psi-per-minute 1 more=1/1 value.psi-per-minute 1"},
    {"ca-qc", {.check = RODT_AIR_CHECK_LOSS_APPLIED, .vehicle = RODT_VEHICLE_CLASS_COMBINATION, .towed_units = 1, .before = {110, 1}, .after = {107, 1}},
     "air.unless found=air.found.loss-applied.is fall=air.found.fall before=110/1 value.psi 1 after=107/1 value.psi "
     "1 seconds=60/1 value.seconds 1 figure=26689329691563/1290320000000 value.kpa-per-minute 1 "
     "required=air.required.not-more-than bound=48/1 value.kpa-per-minute 1",
     "air.edge.major when=air.edge.above bound=48/1 value.kpa-per-minute 1"},
};

static void findings_as_data(void **state)
{
    (void)state;
    for (size_t i = 0; i < COUNT_OF(as_data); i++) {
        rodt_air_finding finding;
        rodt_message message;
        assert_int_equal(rodt_air_reading_judge(&as_data[i].reading, rodt_rules_find(as_data[i].rules), &finding, NULL), RODT_OK);
        assert_int_equal(rodt_air_finding_message(&finding, &message), RODT_OK);
        expect_message(&message, as_data[i].message);
        assert_int_equal(rodt_air_finding_edge_message(&finding, &message), RODT_OK);
        expect_message(&message, as_data[i].edge);
    }
}

/* Enough digits that a figure beside its bound is not rounded onto it, and no more. */
static void digits_keep_off_the_bound(void **state)
{
    (void)state;
    static const struct {
        rodt_ratio measured, allowed;
        int digits;
    } cases[] = {
        {{60, 1}, {60, 1}, 1},          {{59, 1}, {60, 1}, 1},      {{61, 10}, {6, 1}, 1},      {{59, 10}, {6, 1}, 1},
        {{615, 100}, {6, 1}, 1},        {{664, 109}, {6, 1}, 2},    {{601, 100}, {6, 1}, 2},    {{599, 100}, {6, 1}, 2},
        {{631, 105}, {6, 1}, 3},        {{6001, 1000}, {6, 1}, 3},  {{600001, 100000}, {6, 1}, 5}, {{6000001, 1000000}, {6, 1}, 6},
        {{6000000001, 1000000000}, {6, 1}, 6}, {{1, 4000000007}, {1, 4000000009}, 1}, /* the difference does not fit */
    };
    const rodt_air_limit row = {.check = RODT_AIR_CHECK_WARNING, .comparison = RODT_COMPARISON_NOT_LESS_THAN, .published = "",
                                .evidence = RODT_EVIDENCE_CHECKED};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        const rodt_air_finding finding = {.row = &row, .result = RODT_AIR_RESULT_DEFECTIVE, .measured = cases[i].measured,
                                          .allowed = cases[i].allowed,
                                          .reading = {.check = RODT_AIR_CHECK_WARNING, .pressure = {1, 1}}};
        rodt_message message;
        assert_int_equal(rodt_air_finding_message(&finding, &message), RODT_OK);
        if (rodt_message_argument(&message, "figure")->digits != cases[i].digits)
            fail_msg("case %zu: %d", i, rodt_message_argument(&message, "figure")->digits);
    }
}

/* A carrier's figure with each answer of the law; a figure that is both ends; a row with a finding that was not done. */
static void findings_by_hand(void **state)
{
    (void)state;
    static const struct {
        rodt_air_result law;
        const char *message;
    } cases[] = {{RODT_AIR_RESULT_DEFECTIVE, "air.defective"},
                 {RODT_AIR_RESULT_GOOD, "air.good"},
                 {RODT_AIR_RESULT_NOTED, "air.law.noted"},
                 {RODT_AIR_RESULT_UNDETERMINED, "air.law.undetermined"}};
    rodt_air_limit row = {.check = RODT_AIR_CHECK_WARNING, .comparison = RODT_COMPARISON_NOT_LESS_THAN, .published = "as it says",
                          .value = {60, 1}, .upper = {60, 1}, .evidence = RODT_EVIDENCE_SECOND_HAND};
    rodt_air_finding finding = {.row = &row, .own_row = &row, .law_row = &row, .result = RODT_AIR_RESULT_DEFECTIVE,
                                .measured = {50, 1}, .allowed = {60, 1},
                                .reading = {.check = RODT_AIR_CHECK_WARNING, .pressure = {50, 1}}};
    rodt_message message;
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        char expected[400];
        snprintf(expected, sizeof expected, "air.figure-own.beside-law finding=air.required law=%s found=air.found.warning "
                 "figure=50/1 value.psi 1 required=air.required.not-less-than bound=60/1 value.psi 1 result=air.defective",
                 cases[i].message);
        finding.law_result = cases[i].law;
        assert_int_equal(rodt_air_finding_message(&finding, &message), RODT_OK);
        expect_message(&message, expected);
    }
    finding.law_row = finding.own_row = NULL;
    row.comparison = RODT_COMPARISON_BETWEEN;
    row.evidence = RODT_EVIDENCE_CHECKED;
    assert_int_equal(rodt_air_finding_message(&finding, &message), RODT_OK);
    expect_message(&message, "air.required found=air.found.warning figure=50/1 value.psi 1 required=air.required.about "
                             "bound=60/1 value.psi 1 from=60/1 1 result=air.defective");
    row.measure = RODT_AIR_MEASURE_YES_NO;
    row.comparison = RODT_COMPARISON_MUST_BE_YES;
    finding.own_row = finding.law_row = &row;
    finding.law_result = RODT_AIR_RESULT_GOOD;
    assert_int_equal(rodt_air_finding_message(&finding, &message), RODT_OK);
    expect_message(&message, "air.rule-own.beside-law finding=air.rule law=air.good found=air.found.warning figure=50/1 1 "
                             "required=air.required.published published=\"as it says\" result=air.defective");
    row.evidence = RODT_EVIDENCE_SECOND_HAND;
    finding.own_row = NULL;
    finding.result = RODT_AIR_RESULT_NOT_DONE;
    assert_int_equal(rodt_air_finding_message(&finding, &message), RODT_OK);
    expect_message(&message, "air.not-done title=air.title.warning");
    const rodt_air_finding open = {.result = RODT_AIR_RESULT_UNDETERMINED, .reading = finding.reading};
    assert_int_equal(rodt_air_finding_message(&open, &message), RODT_OK);
    expect_message(&message, "air.undetermined found=air.found.warning figure=50/1 value.psi 1 missing=");
    assert_int_equal(rodt_air_check_message((rodt_air_check)-1, &message), RODT_E_ARGUMENT);
}

/* The psi of a row are psi, though they are whole kPa. */
static void the_span_of_a_row(void **state)
{
    (void)state;
    rodt_air_limit row = {.check = RODT_AIR_CHECK_BUILD_UP, .comparison = RODT_COMPARISON_NOT_MORE_THAN, .published = "",
                          .measure = RODT_AIR_MEASURE_SECONDS, .value = {60, 1}, .evidence = RODT_EVIDENCE_CHECKED,
                          .start = gauge("600 kPa"), .stop = gauge("700 kPa")};
    const rodt_air_finding finding = {.row = &row, .result = RODT_AIR_RESULT_UNDETERMINED, .missing = RODT_AIR_MISSING_SPAN,
                                      .reading = {.check = RODT_AIR_CHECK_BUILD_UP, .seconds = {1, 20}}};
    rodt_message message;
    assert_int_equal(rodt_air_finding_message(&finding, &message), RODT_OK);
    assert_int_equal(rodt_message_argument(&message, "start")->code, RODT_MESSAGE_VALUE_PSI);
    assert_int_equal(rodt_message_argument(&message, "stop")->code, RODT_MESSAGE_VALUE_PSI);
    assert_int_equal(rodt_message_argument(&message, "seconds")->digits, 1); /* it has no bound to keep off */
}

/* One of two ways is no defect by itself; an answer is. */
static void one_of_two_answers(void **state)
{
    (void)state;
    const rodt_air_limit answer = {.check = RODT_AIR_CHECK_AUDIBLE_LEAK, .kind = RODT_AIR_KIND_EITHER, .published = "",
                                   .measure = RODT_AIR_MEASURE_YES_NO, .comparison = RODT_COMPARISON_MUST_BE_NO};
    const rodt_air_limit figure = {.check = RODT_AIR_CHECK_WARNING, .kind = RODT_AIR_KIND_EITHER, .published = "",
                                   .measure = RODT_AIR_MEASURE_PSI, .comparison = RODT_COMPARISON_NOT_LESS_THAN, .value = {60, 1}};
    rodt_message message;
    assert_int_equal(rodt_air_limit_edge_message(&answer, &message), RODT_OK);
    assert_int_equal(message.code, RODT_MESSAGE_AIR_EDGE_DEFECTIVE);
    assert_int_equal(rodt_air_limit_edge_message(&figure, &message), RODT_OK);
    assert_int_equal(message.code, RODT_MESSAGE_AIR_EDGE_EITHER);
}

/* 60 psi are 413.7 kPa, and a gauge in whole kPa shows 414; the note stands where the other printed figure can decide. */
static void a_note_at_the_printed_kpa(void **state)
{
    (void)state;
    const rodt_air_limit plain = {.check = RODT_AIR_CHECK_WARNING, .measure = RODT_AIR_MEASURE_PSI, .published = "60 psi (414 kPa)",
                                  .comparison = RODT_COMPARISON_NOT_LESS_THAN, .value = {60, 1}};
    rodt_air_limit rows[9];
    for (size_t i = 0; i < COUNT_OF(rows); i++)
        rows[i] = plain;
    rows[1].measure = RODT_AIR_MEASURE_PSI_PER_MINUTE;
    rows[2].measure = RODT_AIR_MEASURE_PERCENT_LEFT;
    rows[3].published = "60 psi";
    rows[4].published = "415 kPa";
    rows[5].published = "kPa 1415";
    rows[6].published = "kPa 4150, .415";
    rows[7].by_volume = true;
    rows[8].upper = (rodt_ratio){60, 1};
    const rodt_ratio at_414 = {6004, 100}, at_415 = {602, 10}, below = {50, 1}, none = {0, 0}, sixty = {60, 1};
    const struct {
        const rodt_air_limit *row;
        rodt_ratio measured, allowed;
        bool at_limit;
        rodt_air_result result;
        rodt_message_code note;
    } cases[] = {
        {&rows[0], at_414, sixty, false, RODT_AIR_RESULT_GOOD, RODT_MESSAGE_AIR_NOTE_PRINTED_KPA},
        {&rows[1], at_414, sixty, false, RODT_AIR_RESULT_GOOD, RODT_MESSAGE_AIR_NOTE_PRINTED_KPA},
        {&rows[2], at_414, sixty, false, RODT_AIR_RESULT_GOOD, RODT_MESSAGE_NONE},
        {&rows[3], at_414, sixty, false, RODT_AIR_RESULT_GOOD, RODT_MESSAGE_NONE},
        {&rows[0], at_414, sixty, true, RODT_AIR_RESULT_GOOD, RODT_MESSAGE_NONE},
        {&rows[0], none, sixty, false, RODT_AIR_RESULT_GOOD, RODT_MESSAGE_NONE},
        {&rows[0], below, sixty, false, RODT_AIR_RESULT_GOOD, RODT_MESSAGE_NONE},
        {&rows[0], at_415, sixty, false, RODT_AIR_RESULT_GOOD, RODT_MESSAGE_NONE}, /* 415 is not printed */
        {&rows[4], at_415, sixty, false, RODT_AIR_RESULT_GOOD, RODT_MESSAGE_AIR_NOTE_PRINTED_KPA},
        {&rows[5], at_415, sixty, false, RODT_AIR_RESULT_GOOD, RODT_MESSAGE_NONE},
        {&rows[6], at_415, sixty, false, RODT_AIR_RESULT_GOOD, RODT_MESSAGE_NONE},
        {&rows[0], at_414, none, false, RODT_AIR_RESULT_GOOD, RODT_MESSAGE_NONE},
        {&rows[0], {100000, 1}, {100000, 1}, false, RODT_AIR_RESULT_GOOD, RODT_MESSAGE_AIR_NOTE_PRINTED_KPA},
        {&rows[0], {100001, 1}, {100001, 1}, false, RODT_AIR_RESULT_GOOD, RODT_MESSAGE_NONE},
        {&rows[0], at_414, {60001, 1000}, false, RODT_AIR_RESULT_GOOD, RODT_MESSAGE_AIR_NOTE_PRINTED_KPA},
        {&rows[0], at_414, {60061, 1001}, false, RODT_AIR_RESULT_GOOD, RODT_MESSAGE_NONE},
        {&rows[8], at_414, {10, 1}, false, RODT_AIR_RESULT_GOOD, RODT_MESSAGE_AIR_NOTE_PRINTED_KPA},
        {&rows[7], below, sixty, false, RODT_AIR_RESULT_DEFECTIVE, RODT_MESSAGE_AIR_NOTE_VOLUME},
        {&rows[7], below, sixty, false, RODT_AIR_RESULT_GOOD, RODT_MESSAGE_NONE},
        {&rows[0], below, sixty, false, RODT_AIR_RESULT_DEFECTIVE, RODT_MESSAGE_NONE},
        {NULL, below, sixty, false, RODT_AIR_RESULT_DEFECTIVE, RODT_MESSAGE_NONE},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        const rodt_air_finding finding = {.row = cases[i].row, .measured = cases[i].measured, .allowed = cases[i].allowed,
                                          .at_limit = cases[i].at_limit, .result = cases[i].result};
        rodt_message message;
        assert_int_equal(rodt_air_finding_note_message(&finding, &message), RODT_OK);
        if (message.code != cases[i].note)
            fail_msg("case %u: %u", (unsigned)i, (unsigned)message.code);
    }
}

/* Beside an edge in psi: each whole kPa from half to half, up to 2 kPa off where that figure is printed. 60 psi are 414
 * kPa. The other edges are those where the rounding of an edge to whole kPa is nearest to going wrong. */
static void each_kpa_around_an_edge(void **state)
{
    (void)state;
    static const struct {
        const char *published;
        int64_t kpa, parts; /* measured */
        rodt_ratio edge;
        bool noted;
    } cases[] = {
        {"in kPa", 827, 2, {60, 1}, true},    {"in kPa", 829, 2, {60, 1}, false},   {"in kPa", 413, 1, {60, 1}, false},
        {"412 kPa", 412, 1, {60, 1}, true},   {"411 kPa", 411, 1, {60, 1}, false},  {"416 kPa", 416, 1, {60, 1}, true},
        {"417 kPa", 417, 1, {60, 1}, false},  {"412 kPa", 2056, 5, {60, 1}, false}, {"412 kPa", 345, 1, {60, 1}, false},
        {"at 415 kPa", 415, 1, {60, 1}, true}, {"4152 kPa", 415, 1, {60, 1}, false}, {"in kPa", 417, 1, {121, 2}, true},
        {"in kPa", 1788, 1, {1297, 5}, true}, {"in kPa", 1126, 1, {4081, 25}, true}, {"in kPa", 282, 1, {2613, 64}, true},
        {"in kPa", 1188, 1, {9136, 53}, true}, {"in kPa", 1920, 1, {1392, 5}, true}, {"in kPa", 1395, 1, {1012, 5}, true},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        const rodt_air_limit row = {.check = RODT_AIR_CHECK_WARNING, .measure = RODT_AIR_MEASURE_PSI, .published = cases[i].published};
        rodt_pressure measured;
        rodt_message message;
        assert_int_equal(rodt_pressure_from_kpa(cases[i].kpa, cases[i].parts, &measured), RODT_OK);
        const rodt_air_finding finding = {.row = &row, .measured = {measured.num, measured.den}, .allowed = cases[i].edge};
        assert_int_equal(rodt_air_finding_note_message(&finding, &message), RODT_OK);
        if (message.code != (cases[i].noted ? RODT_MESSAGE_AIR_NOTE_PRINTED_KPA : RODT_MESSAGE_NONE))
            fail_msg("case %zu: %u", i, (unsigned)message.code);
    }
    assert_int_equal(rodt_air_finding_note_message(NULL, NULL), RODT_E_ARGUMENT);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_cannot_be_said_is_refused),
        cmocka_unit_test(what_is_missing_of_no_row),
        cmocka_unit_test(findings_as_data),
        cmocka_unit_test(digits_keep_off_the_bound),
        cmocka_unit_test(findings_by_hand),
        cmocka_unit_test(the_span_of_a_row),
        cmocka_unit_test(one_of_two_answers),
        cmocka_unit_test(a_note_at_the_printed_kpa),
        cmocka_unit_test(each_kpa_around_an_edge),
        cmocka_unit_test(names_are_for_ever),
        cmocka_unit_test(judged_sentences),
        cmocka_unit_test(rounding_does_not_hide_the_edge),
        cmocka_unit_test(unjudged_sentences),
        cmocka_unit_test(rows_alone),
        cmocka_unit_test(buffers_and_arguments),
        cmocka_unit_test(rows_with_unknown_enumerators),
    };
    return cmocka_run_group_tests_name("aircheck_format", tests, NULL, NULL);
}
