/* SPDX-License-Identifier: Apache-2.0 */
/* Reports in JSON: an air check, a vehicle, which chamber it can be, a rule set and its rows. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <rodtravel/rodtravel.h>

static const rodt_date day = {2026, 11, 24};

/* What a report writes; `made` is the last of its text. */
#define REPORT(made, function, ...)                                                                                \
    static char made[70000];                                                                                       \
    size_t made##_needed = 0;                                                                                      \
    assert_int_equal(function(__VA_ARGS__, NULL, 0, &made##_needed), RODT_E_SPACE);                                \
    assert_true(made##_needed <= sizeof made);                                                                     \
    memset(made, 'x', sizeof made);                                                                                \
    assert_int_equal(function(__VA_ARGS__, made, made##_needed - 1, NULL), RODT_E_SPACE);                          \
    assert_int_equal(made[0], 'x');                                                                                \
    assert_int_equal(function(__VA_ARGS__, made, made##_needed, NULL), RODT_OK);                                   \
    assert_int_equal(strlen(made) + 1, made##_needed)

static void has(const char *text, const char *part)
{
    if (strstr(text, part) == NULL)
        fail_msg("%s\nis not in\n%s", part, text);
}

/* The report goes on with this; *at is behind it then. */
static void next_is(const char **at, const char *part)
{
    if (strncmp(*at, part, strlen(part)) != 0)
        fail_msg("%s\nis not next in\n%.500s", part, *at);
    *at += strlen(part);
}

static void next_quoted_is(const char **at, const char *text)
{
    next_is(at, text != NULL ? "\"" : "null");
    next_is(at, text != NULL ? text : "");
    next_is(at, text != NULL ? "\"" : "");
}

static void next_member_is(const char **at, const char *key, const char *text)
{
    next_quoted_is(at, key);
    next_is(at, ": ");
    next_quoted_is(at, text);
    next_is(at, ", ");
}

static void next_source_is(const char **at, const rodt_source *source, uint32_t evidence)
{
    char line[RODT_SOURCE_TEXT_SIZE] = "";
    if (source != NULL)
        assert_int_equal(rodt_source_format(source, line, sizeof line, NULL), RODT_OK);
    next_member_is(at, "source", source != NULL ? line : NULL);
    next_is(at, "\"evidence\": ");
    next_quoted_is(at, source != NULL ? rodt_evidence_name((rodt_evidence)evidence) : NULL);
}

/* Filled by hand, so that a report of them holds no words of a table. */
static const rodt_source code = {.document = "Code", .section = "1.2", .edition = "2020"};
static const rodt_source law_text = {.document = "Law", .section = "", .edition = ""};

static void an_air_check(void **state)
{
    (void)state;
    const rodt_air_reading reading = {.check = RODT_AIR_CHECK_WARNING, .pressure = {125, 2}};
    rodt_air_finding finding;
    assert_int_equal(rodt_air_reading_judge(&reading, rodt_rules_find("us-cdl"), &finding, NULL), RODT_OK);
    REPORT(text, rodt_air_finding_json_format, &finding, NULL, 0);
    has(text, "{\"check\": \"warning\", \"result\": \"good\", \"missing\": null, \"major\": false, \"minor\": false, "
              "\"at_limit\": false, \"measured\": \"62 1/2\", \"allowed\": \"60\", \"measure\": \"psi\", "
              "\"sentence\": \"the low-pressure warning came on at 62 1/2 psi; required: ");
    has(text, "\"note\": null, \"published\": \"");
    has(text, "\"rules\": \"us-cdl\", \"own_limits\": null, \"source\": \"");
    has(text, "\"law_result\": \"good\", \"law_published\": \"");
    REPORT(parts, rodt_air_finding_json_format, &finding, NULL, RODT_JSON_OPTION_PARTS);
    has(parts, "\"measured\": {\"text\": \"62 1/2\", \"num\": 125, \"den\": 2}, ");
    assert_int_equal(rodt_air_finding_json_format(&finding, NULL, 64, text, sizeof text, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_air_finding_json_format(NULL, NULL, 0, text, sizeof text, NULL), RODT_E_ARGUMENT);
    finding.rules = NULL;
    assert_int_equal(rodt_air_finding_json_format(&finding, NULL, 0, text, sizeof text, NULL), RODT_E_ARGUMENT);
}

/* The carrier's figure judges; what the law says by itself is beside it. */
static void an_air_check_by_a_carriers_figure(void **state)
{
    (void)state;
    static const char table[] = "check,vehicle,comparison,value,measure,source\n"
                                "loss-applied,single,not-more-than,2,psi-per-minute,Shop bulletin 7\n";
    const rodt_air_reading reading = {.check = RODT_AIR_CHECK_LOSS_APPLIED, .vehicle = RODT_VEHICLE_CLASS_SINGLE,
                                      .before = {110, 1}, .after = {107, 1}};
    rodt_air_finding finding;
    rodt_rules *own;
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-cdl"), "own.csv", table, strlen(table), &own, NULL), RODT_OK);
    assert_int_equal(rodt_air_reading_judge(&reading, own, &finding, NULL), RODT_OK);
    REPORT(text, rodt_air_finding_json_format, &finding, NULL, 0);
    has(text, "\"result\": \"defective\"");
    has(text, "\"allowed\": \"2\", ");
    has(text, "\"rules\": \"us-cdl\", \"own_limits\": \"own.csv\", \"source\": \"Shop bulletin 7\"");
    has(text, "\"law_result\": \"good\", \"law_published\": \"");
    has(text, "\"law_evidence\": \"checked\"}");
    rodt_rules_unref(own);
}

/* Every member of the report in its order. */
static void an_air_check_as_a_whole(void **state)
{
    (void)state;
    const rodt_air_reading reading = {.check = RODT_AIR_CHECK_WARNING, .pressure = {125, 2}};
    rodt_air_finding finding;
    assert_int_equal(rodt_air_reading_judge(&reading, rodt_rules_find("us-cdl"), &finding, NULL), RODT_OK);
    rodt_air_limit row = *finding.row, law_row = row;
    row.published = "above 60";
    row.setup = "key on";
    row.source = &code;
    row.evidence = RODT_EVIDENCE_SECOND_HAND;
    law_row.published = "above 55";
    law_row.source = &law_text;
    law_row.evidence = RODT_EVIDENCE_FROM_MEMORY;
    finding.row = &row;
    finding.law_row = &law_row;
    finding.law_result = RODT_AIR_RESULT_DEFECTIVE;
    finding.major = true;
    finding.at_limit = true;
    finding.missing = RODT_AIR_MISSING_ROW;
    REPORT(text, rodt_air_finding_json_format, &finding, NULL, 0);
    const char *at = text;
    next_is(&at, "{\"check\": \"warning\", \"result\": \"good\", \"missing\": \"row\", \"major\": true, \"minor\": "
                 "false, \"at_limit\": true, \"measured\": \"62 1/2\", \"allowed\": \"60\", \"measure\": \"psi\", "
                 "\"sentence\": \"the low-pressure warning came on at 62 1/2 psi; required: not less than 60 psi, "
                 "and this is exactly the edge, which passes: good (figure second-hand, unconfirmed)\", \"edge\": "
                 "\"defective below 60 psi\", \"note\": null, \"published\": \"above 60\", \"setup\": \"key on\", "
                 "\"rules\": \"us-cdl\", \"own_limits\": null, \"source\": \"Code, 1.2, 2020\", \"evidence\": "
                 "\"second-hand\", \"law_result\": \"defective\", \"law_published\": \"above 55\", \"law_source\": "
                 "\"Law\", \"law_evidence\": \"from-memory\"}");
    assert_string_equal(at, "");
    finding.minor = true;
    finding.major = finding.at_limit = false;
    finding.row = finding.law_row = NULL;
    REPORT(bare, rodt_air_finding_json_format, &finding, NULL, 0);
    has(bare, "\"major\": false, \"minor\": true, \"at_limit\": false, ");
    has(bare, "\"published\": null, \"setup\": null, \"rules\": \"us-cdl\", \"own_limits\": null, \"source\": null, "
              "\"evidence\": null, \"law_result\": \"defective\", \"law_published\": null, \"law_source\": null, "
              "\"law_evidence\": null}");
}

/* A row that is missing, and what the words of a gauge in kPa need. */
static void remarks_on_an_air_check(void **state)
{
    (void)state;
    rodt_air_reading reading = {.check = RODT_AIR_CHECK_LOSS_APPLIED, .vehicle = RODT_VEHICLE_CLASS_SINGLE};
    rodt_air_finding finding;
    char note[RODT_SENTENCE_SIZE];
    assert_int_equal(rodt_pressure_from_kpa(700, 1, &reading.after), RODT_OK);
    for (int kpa = 721; kpa <= 722; kpa++) {
        assert_int_equal(rodt_pressure_from_kpa(kpa, 1, &reading.before), RODT_OK);
        assert_int_equal(rodt_air_reading_judge(&reading, rodt_rules_find("ca-on"), &finding, NULL), RODT_OK);
        assert_int_equal(rodt_air_finding_note_format(&finding, note, sizeof note, NULL), RODT_OK);
        assert_int_equal(strstr(note, "whole kPa") != NULL, kpa == 721);
        assert_int_equal(note[0] != '\0', kpa == 721);
    }
    assert_int_equal(rodt_air_finding_note_format(NULL, note, sizeof note, NULL), RODT_E_ARGUMENT);
    reading = (rodt_air_reading){.check = RODT_AIR_CHECK_CUT_OUT, .pressure = {120, 1}};
    assert_int_equal(rodt_air_reading_judge(&reading, rodt_rules_find("rated-80"), &finding, NULL), RODT_OK);
    REPORT(text, rodt_air_finding_json_format, &finding, NULL, 0);
    has(text, "\"result\": \"undetermined\", \"missing\": \"row\"");
    has(text, "\"measure\": null, ");
    has(text, "\"published\": null, \"setup\": null, \"rules\": \"rated-80\", \"own_limits\": null, "
              "\"source\": null, \"evidence\": null, ");
}

#define ENDS 2

typedef struct judged {
    rodt_wheel_end ends[ENDS];
    rodt_finding findings[ENDS];
    rodt_advice advice[ENDS];
    rodt_error errors[ENDS];
    rodt_vehicle_finding vehicle;
} judged;

/* The left brake is over, the right one has an unreadable measurement. */
static void judge_vehicle(judged *of)
{
    static const char *const applied[ENDS] = {"4 1/8", "4 1/8 or so"};
    memset(of, 0, sizeof *of);
    for (int i = 0; i < ENDS; i++) {
        const rodt_form form = {.chamber = i == 0 ? "30" : "24", .released = "2", .applied = applied[i], .psi = "95",
                                .stroke_class = "standard", .default_day = day};
        assert_int_equal(rodt_form_judge_row(&form, rodt_rules_find("us-fmcsr"), &of->findings[i], &of->errors[i]),
                         RODT_OK);
        of->ends[i] = (rodt_wheel_end){.position = {1, i == 0 ? RODT_SIDE_LEFT : RODT_SIDE_RIGHT},
                                       .adjuster = i == 0 ? RODT_ADJUSTER_MANUAL : RODT_ADJUSTER_NOT_RECORDED};
    }
    assert_int_equal(rodt_vehicle_combine(of->ends, ENDS, 6, of->findings, of->advice, &of->vehicle, NULL), RODT_OK);
}

static void a_vehicle(void **state)
{
    (void)state;
    judged of;
    judge_vehicle(&of);
    REPORT(text, rodt_vehicle_json_format, &of.vehicle, of.ends, ENDS, of.findings, of.advice, of.errors, NULL, 0);
    has(text, "{\"outcome\": \"undetermined\", \"sentence\": \"");
    has(text, "\"brakes\": 6, \"not_given\": 4, \"in_adjustment\": 0, \"out_of_adjustment\": 1, ");
    has(text, "\"percent\": \"8 1/3\", ");
    has(text, "\"rules\": \"us-fmcsr\", \"own_limits\": null, \"wheel_ends\": [{\"position\": \"1L\", "
              "\"chamber\": \"clamp 30 standard\", \"rated_stroke\": null, \"released\": \"2\", "
              "\"applied\": \"4 1/8\", \"applied_stroke\": \"2 1/8\", \"limit\": \"2\", \"law_limit\": \"2\", "
              "\"long_limit\": null, \"margin\": \"-1/8\", "
              "\"verdict\": \"out-of-adjustment\", \"defect\": \"half\", "
              "\"reasons\": [\"over-limit\", \"assumed-clamp\"], "
              "\"proof\": null, \"probability_over\": null, \"proof_sentence\": null, "
              "\"unreadable\": null, \"unreadable_field\": null, \"arm_length\": null, \"adjuster\": \"manual\", "
              "\"advice\": \"adjust it, measure again, and look at lining and drum\", \"advice_code\": \"adjust\", ");
    has(text, "{\"position\": \"1R\", ");
    has(text, "\"applied\": null, ");
    has(text, of.errors[1].text);
    has(text, "\", \"unreadable_field\": \"applied\", ");
    has(text, "\"adjuster\": null, ");
    has(text, "\"advice_code\": \"measure\", ");
    has(text, "\"law_evidence\": \"checked\", \"psi\": \"95\", \"psi_after\": null, "
              "\"pressure\": \"95 psi\", \"pressure_after\": null}, ");
    has(text, "\"as_of\": \"2026-11-24\", \"source\": \"49 CFR ");
    has(text, "\"axles\": [{\"axle\": 1, \"stroke_difference\": null, \"al_left\": null, \"al_right\": null, "
              "\"mismatches\": [{\"code\": \"size-differs\", \"sentence\": \"");
    has(text, "\"criterion_sources\": [{\"words\": \"");
    REPORT(bare, rodt_vehicle_json_format, &of.vehicle, of.ends, ENDS, of.findings, NULL, NULL, NULL, 0);
    has(bare, "\"unreadable\": null, \"unreadable_field\": null, \"arm_length\": null, \"adjuster\": \"manual\", "
              "\"advice\": null, \"advice_code\": null, ");
    assert_null(strstr(bare, of.errors[1].text));
}

/* A wheel end has what the report of its stroke has, under the same names and with the same values. */
static void a_wheel_end_as_its_stroke(void **state)
{
    (void)state;
    const rodt_form form = {.chamber = "24", .released = "2", .applied = "3 3/4", .psi = "95", .psi_after = "85",
                            .rated_stroke = "2 1/2", .division = "1/8", .default_day = day};
    const rodt_wheel_end end = {.position = {1, RODT_SIDE_LEFT}};
    rodt_finding finding;
    rodt_vehicle_finding vehicle;
    static const char *const keys[] = {"\"chamber\": ", "\"rated_stroke\": \"", "\"law_limit\": ", "\"long_limit\": ",
                                       "\"margin\": ",  "\"proof\": \"",        "\"probability_over\": ",
                                       "\"psi\": \"95",  "\"psi_after\": \"85"};
    assert_int_equal(rodt_form_judge(&form, rodt_rules_find("us-fmcsr"), &finding, NULL), RODT_OK);
    assert_int_equal(rodt_vehicle_combine(&end, 1, 0, &finding, NULL, &vehicle, NULL), RODT_OK);
    REPORT(stroke, rodt_finding_json_format, &finding, NULL, 0);
    REPORT(whole, rodt_vehicle_json_format, &vehicle, &end, 1, &finding, NULL, NULL, NULL, 0);
    for (size_t i = 0; i < sizeof keys / sizeof keys[0]; i++) {
        char member[200];
        const char *start = strstr(stroke, keys[i]);
        assert_non_null(start);
        snprintf(member, sizeof member, "%.*s", (int)(strstr(start, ", ") - start), start);
        has(strstr(whole, "\"wheel_ends\""), member);
    }
}

/* From the count to the first axle; figures that no judgement makes together. */
static const char wheel_ends_as_written[] =
    "\"brakes\": 6, \"not_given\": 17, \"in_adjustment\": 11, \"out_of_adjustment\": 12, \"inoperative\": 13, "
    "\"undetermined\": 14, \"full_defects\": 0, \"half_defects\": 1, \"unknown_defects\": 1, \"defective\": \"9 "
    "1/2\", \"percent\": \"12 1/2\", \"percent_at_worst\": \"25\", \"percent_of_known\": null, "
    "\"criterion_percent\": \"20\", \"whole_needed\": 18, \"mismatched_axles\": 15, \"mixed_days\": 16, \"rules\": "
    "\"us-fmcsr\", \"own_limits\": null, \"wheel_ends\": [{\"position\": \"1L\", \"chamber\": \"clamp 30 standard\", "
    "\"rated_stroke\": null, \"released\": \"2\", \"applied\": \"4 1/8\", \"applied_stroke\": \"2 1/8\", \"limit\": "
    "\"2\", \"law_limit\": \"2\", \"long_limit\": null, \"margin\": \"-1/8\", \"verdict\": \"out-of-adjustment\", "
    "\"defect\": \"half\", \"reasons\": [\"over-limit\", \"assumed-clamp\"], \"proof\": null, \"probability_over\": "
    "null, \"proof_sentence\": null, \"unreadable\": null, \"unreadable_field\": null, \"arm_length\": \"5 1/2\", "
    "\"adjuster\": \"manual\", \"advice\": \"adjust it, measure again, and look at lining and drum\", "
    "\"advice_code\": \"adjust\", \"as_of\": \"2026-11-24\", \"source\": \"Code, 1.2, 2020\", \"evidence\": "
    "\"checked\", \"law_source\": \"Law\", \"law_evidence\": \"from-memory\", \"psi\": \"95\", \"psi_after\": null, "
    "\"pressure\": \"95 psi\", \"pressure_after\": null}, {\"position\": \"1R\", \"chamber\": \"clamp 24 standard\", "
    "\"rated_stroke\": null, \"released\": \"2\", \"applied\": null, \"applied_stroke\": null, \"limit\": \"1 3/4\", "
    "\"law_limit\": \"1 3/4\", \"long_limit\": null, \"margin\": null, \"verdict\": \"undetermined\", \"defect\": "
    "\"unknown\", \"reasons\": [\"assumed-clamp\", \"applied-unreadable\"], \"proof\": null, \"probability_over\": "
    "null, \"proof_sentence\": null, \"unreadable\": \"this can be a range or a difference; write one value, such as "
    "2 1/8\", \"unreadable_field\": \"applied\", \"arm_length\": null, \"adjuster\": null, \"advice\": \"not "
    "checked: fix what is named, measure again\", \"advice_code\": \"measure\", \"as_of\": \"2026-11-24\", "
    "\"source\": \"Code, 1.2, 2020\", \"evidence\": \"checked\", \"law_source\": \"Law\", \"law_evidence\": "
    "\"from-memory\", \"psi\": \"95\", \"psi_after\": null, \"pressure\": \"95 psi\", \"pressure_after\": null}], "
    "\"axles\": [{\"axle\": 1, \"stroke_difference\": \"3/4\", \"al_left\": \"165\", \"al_right\": \"132\", "
    "\"mismatches\": [";

/* Each figure another one. */
static void fill_vehicle(judged *of)
{
    judge_vehicle(of);
    rodt_count *count = &of->vehicle.count;
    of->vehicle.in_adjustment = 11;
    of->vehicle.out_of_adjustment = 12;
    of->vehicle.inoperative = 13;
    of->vehicle.undetermined = 14;
    of->vehicle.mismatched_axles = 15;
    of->vehicle.mixed_days = 16;
    count->unmeasured = 17;
    count->whole_needed = 18;
    count->defective = (rodt_ratio){19, 2};
    count->share = (rodt_ratio){1, 8};
    count->worst_share = (rodt_ratio){1, 4};
    count->known_share = (rodt_ratio){0, 0};
    count->criterion = (rodt_ratio){1, 5};
    of->vehicle.axle_count = 2;
    of->vehicle.axles[0] = (rodt_axle_finding){.axle = 1, .mismatches = RODT_AXLE_MISMATCH_SIZE_DIFFERS |
                                              RODT_AXLE_MISMATCH_TORQUE_DIFFERS, .stroke_difference = {3, 4},
                                              .al_left = {165, 1}, .al_right = {132, 1}};
    of->vehicle.axles[1] = (rodt_axle_finding){.axle = 2, .mismatches = 1u << 31};
    of->ends[0].arm_length = (rodt_length){11, 2};
    for (int i = 0; i < ENDS; i++) {
        of->findings[i].source = &code;
        of->findings[i].law_source = &law_text;
        of->findings[i].law_evidence = RODT_EVIDENCE_FROM_MEMORY;
    }
}

/* Every member of the report in its order: two wheel ends and two axles. */
static void a_vehicle_as_a_whole(void **state)
{
    (void)state;
    judged of;
    fill_vehicle(&of);
    REPORT(text, rodt_vehicle_json_format, &of.vehicle, of.ends, ENDS, of.findings, of.advice, of.errors, NULL, 0);
    const char *at = text;
    rodt_message message;
    char sentence[RODT_REPORT_SENTENCE_SIZE];
    assert_int_equal(rodt_count_format(&of.vehicle.count, sentence, sizeof sentence, NULL), RODT_OK);
    next_is(&at, "{\"outcome\": \"undetermined\", ");
    next_member_is(&at, "sentence", sentence);
    next_is(&at, wheel_ends_as_written);
    for (int i = 0; i < 2; i++) {
        rodt_axle_mismatch bit = i == 0 ? RODT_AXLE_MISMATCH_SIZE_DIFFERS : RODT_AXLE_MISMATCH_TORQUE_DIFFERS;
        RODT_ENUM32(rodt_evidence) evidence = RODT_EVIDENCE_NONE;
        const rodt_source *source = rodt_axle_mismatch_source(bit, &evidence);
        assert_int_equal(rodt_axle_mismatch_message(&of.vehicle.axles[0], bit, &message), RODT_OK);
        assert_int_equal(rodt_message_format(&message, NULL, sentence, sizeof sentence, NULL), RODT_OK);
        next_is(&at, i == 0 ? "{" : "}, {");
        next_member_is(&at, "code", rodt_axle_mismatch_name(bit));
        next_member_is(&at, "sentence", sentence);
        next_is(&at, i == 0 ? "\"law\": true, " : "\"law\": false, ");
        next_source_is(&at, source, evidence);
    }
    next_is(&at, "}]}, {\"axle\": 2, \"stroke_difference\": null, \"al_left\": null, \"al_right\": null, "
                 "\"mismatches\": []}], \"criterion_sources\": [");
    for (int i = 0; i < RODT_COUNT_PART_END; i++) {
        RODT_ENUM32(rodt_evidence) evidence = RODT_EVIDENCE_NONE;
        const rodt_source *source = rodt_count_part_source((rodt_count_part)i, &evidence);
        next_is(&at, i == 0 ? "{" : "}, {");
        next_member_is(&at, "words", rodt_count_part_text((rodt_count_part)i));
        next_source_is(&at, source, evidence);
    }
    next_is(&at, "}], \"units\": {\"length\": \"in\", \"pressure\": \"psi\"}}");
    assert_string_equal(at, "");
}

/* The rule set is that of the wheel ends that count; what follows in memory is another matter. */
static void one_wheel_end_of_two(void **state)
{
    (void)state;
    judged of;
    judge_vehicle(&of);
    of.findings[1].rules = rodt_rules_find("ca-on");
    REPORT(text, rodt_vehicle_json_format, &of.vehicle, of.ends, 1, of.findings, of.advice, of.errors, NULL, 0);
    has(text, "\"rules\": \"us-fmcsr\", ");
}

/* What a program filled by hand and left open is null, not a guess. */
static void a_wheel_end_by_hand(void **state)
{
    (void)state;
    judged of;
    judge_vehicle(&of);
    of.ends[0].position = (rodt_position){0, 0};
    of.errors[1].field[0] = '\0';
    REPORT(text, rodt_vehicle_json_format, &of.vehicle, of.ends, ENDS, of.findings, NULL, of.errors, NULL, 0);
    has(text, "{\"position\": null, ");
    has(text, "{\"position\": \"1R\", ");
    has(text, of.errors[1].text);
    has(text, "\", \"unreadable_field\": null, ");
    assert_null(strstr(text, "\"unreadable_field\": \"applied\""));
    of.errors[1].field[0] = 'x'; /* one character is a name, too */
    of.errors[1].field[1] = '\0';
    REPORT(named, rodt_vehicle_json_format, &of.vehicle, of.ends, ENDS, of.findings, NULL, of.errors, NULL, 0);
    has(named, "\"unreadable_field\": \"x\", ");
    of.errors[1] = (rodt_error){.status = RODT_E_EMPTY, .text = "nothing is written here", .field = "applied"};
    REPORT(absent, rodt_vehicle_json_format, &of.vehicle, of.ends, ENDS, of.findings, NULL, of.errors, NULL, 0);
    assert_null(strstr(absent, "\"unreadable_field\": \"applied\"")); /* absent is not unreadable */
}

static void no_vehicle(void **state)
{
    (void)state;
    char text[20] = "as it was";
    judged of;
    judge_vehicle(&of);
#define REFUSED(...) assert_int_equal(rodt_vehicle_json_format(__VA_ARGS__, text, sizeof text, NULL), RODT_E_ARGUMENT)
    REFUSED(NULL, of.ends, ENDS, of.findings, NULL, NULL, NULL, 0);
    REFUSED(&of.vehicle, NULL, ENDS, of.findings, NULL, NULL, NULL, 0);
    REFUSED(&of.vehicle, of.ends, 0, of.findings, NULL, NULL, NULL, 0);
    REFUSED(&of.vehicle, of.ends, ENDS, NULL, NULL, NULL, NULL, 0);
    REFUSED(&of.vehicle, of.ends, ENDS, of.findings, NULL, NULL, NULL, 2);
    of.vehicle.axle_count = RODT_AXLES_MAX;
    static char all[70000];
    assert_int_equal(rodt_vehicle_json_format(&of.vehicle, of.ends, ENDS, of.findings, NULL, NULL, NULL, 0, all, sizeof all,
                                              NULL),
                     RODT_OK);
    of.vehicle.axle_count = RODT_AXLES_MAX + 1;
    REFUSED(&of.vehicle, of.ends, ENDS, of.findings, NULL, NULL, NULL, 0);
    of.vehicle.axle_count = 1;
    of.findings[1].rules = rodt_rules_find("ca-on");
    REFUSED(&of.vehicle, of.ends, ENDS, of.findings, NULL, NULL, NULL, 0);
    of.findings[1].rules = NULL;
    REFUSED(&of.vehicle, of.ends, ENDS, of.findings, NULL, NULL, NULL, 0);
    of.findings[0].rules = NULL;
    REFUSED(&of.vehicle, of.ends, 1, of.findings, NULL, NULL, NULL, 0);
    assert_string_equal(text, "as it was");
}

static void which_chamber(void **state)
{
    (void)state;
    const rodt_rules *rules = rodt_rules_find("us-fmcsr");
    rodt_clues clues = {.port = RODT_PORT_SQUARE};
    rodt_identification answer;
    assert_int_equal(rodt_chamber_parse("30", &clues.stamp, NULL), RODT_OK);
    assert_int_equal(rodt_clues_identify(&clues, rules, day, &answer, NULL), RODT_OK);
    REPORT(text, rodt_identification_json_format, &answer, rules, day, NULL, 0);
    has(text, "{\"strict_limit\": \"2 1/2\", \"without_limit\": 0, ");
    has(text, "\"candidates\": [{\"chamber\": \"clamp 30 long\", \"family\": \"clamp\", \"size\": \"30\", "
              "\"class\": \"long\", \"rated_stroke\": null, \"limit\": \"2 1/2\", \"evidence\": \"checked\", ");
    has(text, "\"clues_for\": [\"stamp\", \"port-shape\"], \"clues_against\": []}");
    has(text, "\"contradiction\": [], \"next_observation\": \"nothing\", \"next\": \"nothing is open\", "
              "\"rules\": \"us-fmcsr\", \"own_limits\": null, \"as_of\": \"2026-11-24\", \"units\": {\"length\": \"in\"}}");
    assert_int_equal(rodt_identification_json_format(NULL, rules, day, NULL, 0, text, sizeof text, NULL),
                     RODT_E_ARGUMENT);
    assert_int_equal(rodt_identification_json_format(&answer, NULL, day, NULL, 0, text, sizeof text, NULL),
                     RODT_E_ARGUMENT);
    answer.count = RODT_CANDIDATES_MAX;
    static char all[70000];
    assert_int_equal(rodt_identification_json_format(&answer, rules, day, NULL, 0, all, sizeof all, NULL), RODT_OK);
    answer.count = RODT_CANDIDATES_MAX + 1;
    assert_int_equal(rodt_identification_json_format(&answer, rules, day, NULL, 0, text, sizeof text, NULL),
                     RODT_E_ARGUMENT);
}

/* Every member of the report in its order, of an answer filled by hand; bits that are no clue are passed over. */
static void which_chamber_as_a_whole(void **state)
{
    (void)state;
    const rodt_identification answer = {
        .count = 2,
        .candidates = {{.chamber = {.family = RODT_FAMILY_CLAMP, .stroke_class = RODT_STROKE_CLASS_LONG, .size = "24",
                                    .rated_stroke = {3, 1}},
                        .limit = {5, 2}, .diameter = {231, 32}, .diameter_distance = {1, 32}, .clues_for = UINT32_MAX},
                       {.chamber = {.family = RODT_FAMILY_BOLT, .size = "C"}, .clues_against = RODT_CLUE_TAG}},
        .strict_limit = {7, 4},
        .without_limit = 1,
        .contradiction = RODT_CLUE_STAMP | RODT_CLUE_DIAMETER,
        .next_observation = RODT_OBSERVATION_NOTHING};
    REPORT(text, rodt_identification_json_format, &answer, rodt_rules_find("us-fmcsr"), day, NULL, 0);
    assert_string_equal(text, "{\"strict_limit\": \"1 3/4\", \"without_limit\": 1, \"candidates\": [{\"chamber\": "
                              "\"clamp 24 long\", \"family\": \"clamp\", \"size\": \"24\", \"class\": \"long\", "
                              "\"rated_stroke\": \"3\", \"limit\": \"2 1/2\", \"evidence\": \"checked\", "
                              "\"diameter\": \"7 7/32\", \"diameter_distance\": \"1/32\", \"clues_for\": "
                              "[\"stamp\", \"family\", \"port-shape\", \"tag\", \"rated-stroke\", \"diameter\"], "
                              "\"clues_against\": []}, {\"chamber\": \"bolt C\", \"family\": \"bolt\", \"size\": "
                              "\"C\", \"class\": \"unknown\", \"rated_stroke\": null, \"limit\": null, "
                              "\"evidence\": null, \"diameter\": null, \"diameter_distance\": null, \"clues_for\": "
                              "[], \"clues_against\": [\"tag\"]}], \"contradiction\": [\"stamp\", \"diameter\"], "
                              "\"next_observation\": \"nothing\", \"next\": null, \"rules\": \"us-fmcsr\", "
                              "\"own_limits\": null, \"as_of\": \"2026-11-24\", \"units\": {\"length\": \"in\"}}");
}

/* That nothing is open is said only where one limit is left, and nothing is against it. */
static void nothing_is_open(void **state)
{
    (void)state;
    const rodt_rules *rules = rodt_rules_find("us-fmcsr");
    rodt_clues clues = {.port = RODT_PORT_SQUARE};
    rodt_identification sure, answer;
    assert_int_equal(rodt_chamber_parse("30", &clues.stamp, NULL), RODT_OK);
    assert_int_equal(rodt_clues_identify(&clues, rules, day, &sure, NULL), RODT_OK);
    for (int i = 0; i < 6; i++) {
        answer = sure;
        answer.candidates[1].limit = (rodt_length){3, 1};
        answer.count += i == 5;
        answer.without_limit = i == 1;
        answer.contradiction = i == 2 ? RODT_CLUE_STAMP : 0;
        answer.strict_limit.num -= i == 3;
        answer.next_observation = i == 4 ? RODT_OBSERVATION_DIAMETER : RODT_OBSERVATION_NOTHING;
        REPORT(text, rodt_identification_json_format, &answer, rules, day, NULL, 0);
        has(text, i == 0   ? "\"next_observation\": \"nothing\", \"next\": \"nothing is open\", "
                  : i == 4 ? "\"next_observation\": \"diameter\", \"next\": \""
                           : "\"next_observation\": \"nothing\", \"next\": null, ");
    }
    answer = sure;
    memset(&answer.candidates[0].chamber, 0, sizeof answer.candidates[0].chamber); /* no chamber has no law */
    REPORT(text, rodt_identification_json_format, &answer, rules, day, NULL, 0);
    has(text, "\"candidates\": [{\"chamber\": null, ");
    has(text, "\"limit\": \"2 1/2\", \"evidence\": null, ");
}

/* Without a limit nothing is left to distinguish, but much is open. */
static void no_limit_to_distinguish(void **state)
{
    (void)state;
    const rodt_rules *rules = rodt_rules_find("us-fmcsr");
    const rodt_clues clues = {.stamp = {.size = "99"}};
    rodt_identification answer;
    assert_int_equal(rodt_clues_identify(&clues, rules, day, &answer, NULL), RODT_OK);
    REPORT(text, rodt_identification_json_format, &answer, rules, day, NULL, 0);
    has(text, "{\"strict_limit\": null, \"without_limit\": 1, ");
    has(text, "\"limit\": null, \"evidence\": null, ");
    has(text, "\"next\": null, ");
}

static const rodt_limit *row_of(const rodt_rules *rules, const char *size, rodt_stroke_class stroke_class)
{
    const rodt_limit *row;
    for (size_t i = 0; (row = rodt_rules_limit_at(rules, i)) != NULL; i++)
        if (strcmp(row->size, size) == 0 && row->stroke_class == stroke_class && row->family == RODT_FAMILY_CLAMP)
            return row;
    return NULL;
}

/* Every member of the rows in their order, filled by hand. */
static void rows_as_a_whole(void **state)
{
    (void)state;
    const rodt_limit limit = {.family = RODT_FAMILY_CLAMP, .stroke_class = RODT_STROKE_CLASS_LONG, .size = "24",
                              .rated_stroke = {3, 1}, .limit = {5, 2}, .printed_mm = {41, 508}, /* 2.05 mm */
                              .from = {2012, 9, 5}, .until = {2021, 10, 13}, .source = &code,
                              .evidence = RODT_EVIDENCE_SECOND_HAND};
    rodt_air_limit figure = {.check = RODT_AIR_CHECK_CUT_OUT, .kind = RODT_AIR_KIND_LIMIT_AND_MINOR,
                             .vehicle = RODT_VEHICLE_CLASS_SINGLE, .towed_units = 0, .towed_or_more = true,
                             .comparison = RODT_COMPARISON_BETWEEN, .measure = RODT_AIR_MEASURE_PSI,
                             .value = {120, 1}, .upper = {135, 1}, .built_from = {1975, 3, 1},
                             .built_until = {1998, 2, 28}, .published = "120 to 135", .setup = "engine on",
                             .source = &law_text, .evidence = RODT_EVIDENCE_CHECKED};
    rodt_message edge;
    char sentence[RODT_REPORT_SENTENCE_SIZE];
    REPORT(row, rodt_limit_json_format, &limit, 0);
    assert_string_equal(row, "{\"chamber\": \"clamp 24\", \"family\": \"clamp\", \"size\": \"24\", \"class\": "
                             "\"long\", \"rated_stroke\": \"3\", \"limit\": \"2 1/2\", \"printed_mm\": \"2.1\", "
                             "\"from\": \"2012-09-05\", \"until\": \"2021-10-13\", \"source\": \"Code, 1.2, 2020\", "
                             "\"evidence\": \"second-hand\"}");
    assert_int_equal(rodt_air_limit_edge_message(&figure, &edge), RODT_OK);
    assert_int_equal(rodt_message_format(&edge, NULL, sentence, sizeof sentence, NULL), RODT_OK);
    REPORT(check, rodt_air_limit_json_format, &figure, NULL, 0);
    const char *at = check;
    next_is(&at, "{\"check\": \"cut-out\", \"kind\": \"limit-and-minor\", \"published\": \"120 to 135\", \"value\": "
                 "\"120\", \"upper\": \"135\", \"measure\": \"psi\", ");
    next_member_is(&at, "edge", sentence);
    next_is(&at, "\"vehicle\": \"single\", \"towed_units\": 0, \"towed_or_more\": true, \"built_from\": "
                 "\"1975-03-01\", \"built_until\": \"1998-02-28\", \"setup\": \"engine on\", \"source\": \"Law\", "
                 "\"evidence\": \"checked\"}");
    assert_string_equal(at, "");
}

/* Every member of a rule set in its order. */
static void a_rule_set_as_a_whole(void **state)
{
    (void)state;
    const rodt_rules *rules = rodt_rules_find("us-fmcsr");
    char line[RODT_SOURCE_TEXT_SIZE];
    REPORT(text, rodt_rules_json_format, rules, 0);
    const char *at = text;
    next_is(&at, "{\"rules\": \"us-fmcsr\", ");
    next_member_is(&at, "title", rodt_rules_title(rules));
    next_member_is(&at, "authority", rodt_rules_authority(rules));
    next_is(&at, "\"from\": \"2012-09-05\", \"until\": null, ");
    next_source_is(&at, rodt_rules_source(rules), rodt_rules_evidence(rules));
    next_is(&at, ", \"at_limit_passes\": true, \"psi_from\": \"90\", \"psi_until\": \"100\", \"pressure_source\": \"");
    assert_int_equal(rodt_source_format(rodt_rules_pressure_source(rules), line, sizeof line, NULL), RODT_OK);
    next_is(&at, line);
    assert_string_equal(at, "\"}");
}

static void a_rule_set_and_its_rows(void **state)
{
    (void)state;
    const rodt_rules *rules = rodt_rules_find("us-fmcsr");
    REPORT(set, rodt_rules_json_format, rules, 0);
    has(set, "{\"rules\": \"us-fmcsr\", \"title\": \"");
    has(set, "\"at_limit_passes\": true, \"psi_from\": \"90\", \"psi_until\": \"100\", \"pressure_source\": \"");
    REPORT(row, rodt_limit_json_format, row_of(rules, "30", RODT_STROKE_CLASS_STANDARD), 0);
    has(row, "{\"chamber\": \"clamp 30\", \"family\": \"clamp\", \"size\": \"30\", \"class\": \"standard\", "
             "\"rated_stroke\": null, \"limit\": \"2\", \"printed_mm\": \"50.8\", \"from\": \"2012-09-05\", "
             "\"until\": null, \"source\": \"49 CFR ");
    REPORT(figure, rodt_air_limit_json_format, rodt_rules_air_at(rules, 0), NULL, 0);
    has(figure, "{\"check\": \"");
    has(figure, "\"vehicle\": \"any\", \"towed_units\": null, \"towed_or_more\": false, ");
    assert_int_equal(rodt_rules_json_format(NULL, 0, set, sizeof set, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_limit_json_format(NULL, 0, set, sizeof set, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_air_limit_json_format(NULL, NULL, 0, set, sizeof set, NULL), RODT_E_ARGUMENT);
}

/* --- Languages --------------------------------------------------------------------------------------- */

/* The member holds the message in French, and not in English. */
/* A row without printed millimetres, or that was filled by hand with what no source has. */
static void rows_that_lack_something(void **state)
{
    (void)state;
    const rodt_rules *rules = rodt_rules_find("us-fmcsr");
    char document[RODT_SOURCE_TEXT_SIZE + 1];
    memset(document, 'x', sizeof document);
    document[sizeof document - 1] = '\0';
    const rodt_source source = {.document = document, .section = "", .edition = ""};
    rodt_limit row = *row_of(rules, "30", RODT_STROKE_CLASS_STANDARD);
    row.printed_mm = (rodt_length){0, 0};
    REPORT(none, rodt_limit_json_format, &row, 0);
    has(none, "\"printed_mm\": null, ");
    row.printed_mm = (rodt_length){INT64_MAX, 1};
    row.source = &source;
    REPORT(huge, rodt_limit_json_format, &row, 0);
    has(huge, "\"printed_mm\": null, ");
    has(huge, "\"source\": null, \"evidence\": \"checked\"");
}

/* A figure is for one number of towed units, or for any. */
static void towed_units_of_a_figure(void **state)
{
    (void)state;
    size_t counts[2] = {0, 0};
    for (size_t i = 0; i < rodt_rules_count(); i++) {
        const rodt_rules *rules = rodt_rules_at(i);
        for (size_t k = 0; k < rodt_rules_air_count(rules); k++) {
            const rodt_air_limit *row = rodt_rules_air_at(rules, k);
            char wanted[40] = "\"towed_units\": null, ";
            if (row->towed_units >= 0)
                snprintf(wanted, sizeof wanted, "\"towed_units\": %d, ", row->towed_units);
            REPORT(text, rodt_air_limit_json_format, row, NULL, 0);
            has(text, wanted);
            counts[row->towed_units >= 0]++;
        }
    }
    assert_true(counts[0] > 0 && counts[1] > 0);
}

static void has_french(const char *text, const char *member, rodt_status made, const rodt_message *message)
{
    char sentence[RODT_REPORT_SENTENCE_SIZE], english[RODT_REPORT_SENTENCE_SIZE], part[RODT_REPORT_SENTENCE_SIZE + 40];
    assert_int_equal(made, RODT_OK);
    assert_int_equal(
        rodt_message_format(message, rodt_catalogue_find("fr"), sentence, sizeof sentence, NULL), RODT_OK);
    assert_int_equal(rodt_message_format(message, NULL, english, sizeof english, NULL), RODT_OK);
    assert_string_not_equal(sentence, english);
    snprintf(part, sizeof part, "%s\"%s\"", member, sentence);
    has(text, part);
    assert_null(strstr(text, english));
}

static void a_vehicle_in_french(void **state)
{
    (void)state;
    rodt_message message;
    judged of;
    judge_vehicle(&of);
    REPORT(text, rodt_vehicle_json_format, &of.vehicle, of.ends, ENDS, of.findings, of.advice, of.errors,
           rodt_catalogue_find("fr"), 0);
    has_french(text, "\"sentence\": ", rodt_count_message(&of.vehicle.count, &message), &message);
    has_french(text, "\"unreadable\": ", rodt_error_message(&of.errors[1], &message), &message);
    has_french(text, "\"advice\": ", rodt_advice_message(of.advice[0], &message), &message);
    has_french(text, "\"code\": \"size-differs\", \"sentence\": ",
               rodt_axle_mismatch_message(&of.vehicle.axles[0], RODT_AXLE_MISMATCH_SIZE_DIFFERS, &message), &message);
    has(text, "{\"outcome\": \"undetermined\", \"sentence\": \"");
    has(text, "\"percent\": \"8 1/3\", ");
    has(text, "\"margin\": \"-1/8\", \"verdict\": \"out-of-adjustment\", \"defect\": \"half\", ");
    has(text, "\"advice_code\": \"adjust\", ");
    of.errors[1].count = RODT_ERROR_ARGUMENTS + 1;
    assert_int_equal(rodt_vehicle_json_format(&of.vehicle, of.ends, ENDS, of.findings, NULL, of.errors,
                                              rodt_catalogue_find("fr"), 0, text, sizeof text, NULL),
                     RODT_E_ARGUMENT);
}

static void a_finding_in_french(void **state)
{
    (void)state;
    const rodt_form form = {.chamber = "24", .released = "2", .applied = "3 3/4", .division = "1/8",
                            .stroke_class = "standard", .default_day = day};
    rodt_finding finding;
    rodt_message message;
    assert_int_equal(rodt_form_judge(&form, rodt_rules_find("us-fmcsr"), &finding, NULL), RODT_OK);
    REPORT(text, rodt_finding_json_format, &finding, rodt_catalogue_find("fr"), 0);
    has_french(text, "\"sentences\": [", rodt_finding_reason_message(&finding, RODT_REASON_AT_LIMIT, &message),
               &message);
    has_french(text, "\", ", rodt_finding_reason_message(&finding, RODT_REASON_PRESSURE_NOT_RECORDED, &message),
               &message);
    has_french(text, "\"proof_sentence\": ", rodt_finding_proof_message(&finding, &message), &message);
    has(text, "\"applied_stroke\": \"1 3/4\", \"limit\": \"1 3/4\", ");
    has(text, "\"reasons\": [\"at-limit\", \"pressure-not-recorded\", ");
}

static void other_reports_in_french(void **state)
{
    (void)state;
    const rodt_catalogue *french = rodt_catalogue_find("fr");
    const rodt_air_reading reading = {.check = RODT_AIR_CHECK_WARNING, .pressure = {125, 2}};
    const rodt_rules *rules = rodt_rules_find("us-cdl");
    const rodt_clues clues = {.port = RODT_PORT_SQUARE};
    rodt_air_finding finding;
    rodt_identification answer;
    rodt_message message;
    assert_int_equal(rodt_air_reading_judge(&reading, rules, &finding, NULL), RODT_OK);
    REPORT(check, rodt_air_finding_json_format, &finding, french, 0);
    has_french(check, "\"sentence\": ", rodt_air_finding_message(&finding, &message), &message);
    has_french(check, "\"edge\": ", rodt_air_finding_edge_message(&finding, &message), &message);
    has(check, "\"measured\": \"62 1/2\", \"allowed\": \"60\", \"measure\": \"psi\", ");
    REPORT(row, rodt_air_limit_json_format, finding.row, french, 0);
    has_french(row, "\"edge\": ", rodt_air_limit_edge_message(finding.row, &message), &message);
    rules = rodt_rules_find("us-fmcsr");
    assert_int_equal(rodt_clues_identify(&clues, rules, day, &answer, NULL), RODT_OK);
    REPORT(chamber, rodt_identification_json_format, &answer, rules, day, french, 0);
    has_french(chamber, "\"next\": ", rodt_observation_message((rodt_observation)answer.next_observation, &message),
               &message);
}

/* Every member of the report in its order, with the sentences of two reasons. */
static void a_finding_as_a_whole(void **state)
{
    (void)state;
    const rodt_form form = {.chamber = "24", .released = "2", .applied = "3 7/8", .stroke_class = "standard",
                            .rated_stroke = "2 1/2", .psi = "95", .psi_after = "85", .division = "1/8",
                            .default_day = day};
    rodt_finding finding;
    char line[RODT_SOURCE_TEXT_SIZE];
    assert_int_equal(rodt_form_judge(&form, rodt_rules_find("us-fmcsr"), &finding, NULL), RODT_OK);
    finding.source = &code;
    finding.evidence = RODT_EVIDENCE_SECOND_HAND;
    finding.law_source = &law_text;
    finding.law_evidence = RODT_EVIDENCE_FROM_MEMORY;
    REPORT(text, rodt_finding_json_format, &finding, NULL, 0);
    const char *at = text;
    next_is(&at, "{\"chamber\": \"clamp 24 standard\", \"rated_stroke\": \"2 1/2\", \"released\": \"2\", "
                 "\"applied\": \"3 7/8\", \"applied_stroke\": \"1 7/8\", \"limit\": \"1 3/4\", \"law_limit\": \"1 "
                 "3/4\", \"long_limit\": null, \"margin\": \"-1/8\", \"verdict\": \"out-of-adjustment\", "
                 "\"reasons\": [\"over-limit\", \"pressure-low\", \"assumed-clamp\"], \"sentences\": [\"stroke is "
                 "over the limit by 1/8\", \"too little air: 85 psi after the application, and the test asks for 90 "
                 "to 100; a brake that passes here may be bad, one that fails is\", \"checked as a clamp-band "
                 "chamber; if yours is bolted or a rotochamber, say so\"], \"proof\": \"not-resolved\", "
                 "\"probability_over\": \"1\", \"proof_sentence\": \"not resolved by this tape: read to 1/8, the "
                 "true stroke is at best exactly the limit\", \"rules\": \"us-fmcsr\", \"own_limits\": null, "
                 "\"as_of\": \"2026-11-24\", \"source\": \"Code, 1.2, 2020\", \"evidence\": \"second-hand\", "
                 "\"law_source\": \"Law\", \"law_evidence\": \"from-memory\", \"psi\": \"95\", \"psi_after\": "
                 "\"85\", \"pressure\": \"95 psi\", \"pressure_after\": \"85 psi\", \"pressure_source\": \"");
    assert_int_equal(rodt_source_format(rodt_rules_pressure_source(finding.rules), line, sizeof line, NULL), RODT_OK);
    next_is(&at, line);
    next_is(&at, "\", \"units\": {\"length\": \"in\", \"pressure\": \"psi\"}}");
    assert_string_equal(at, "");
    finding.reasons = UINT64_MAX; /* also reasons of a later version */
    REPORT(all, rodt_finding_json_format, &finding, NULL, 0);
    at = strstr(all, "\"reasons\": [");
    assert_non_null(at);
    next_is(&at, "\"reasons\": [");
    for (int i = 0; i < RODT_REASON_END; i++) {
        next_is(&at, i == 0 ? "\"" : ", \"");
        next_is(&at, rodt_reason_name((rodt_reason)i));
        next_is(&at, "\"");
    }
    next_is(&at, "], \"sentences\": [");
}

/* A report never lacks a sentence in silence. */
static void broken_catalogues(void **state)
{
    (void)state;
    static char endless[RODT_REPORT_SENTENCE_SIZE + 1];
    static const char *templates[RODT_MESSAGE_END];
    rodt_catalogue catalogue = {.language = "fr", .count = RODT_MESSAGE_END, .decimal_sign = ","};
    const rodt_air_reading reading = {.check = RODT_AIR_CHECK_WARNING, .pressure = {125, 2}};
    rodt_air_finding finding;
    rodt_message edge;
    char text[4000] = "as it was";
    assert_int_equal(rodt_air_reading_judge(&reading, rodt_rules_find("us-cdl"), &finding, NULL), RODT_OK);
    assert_int_equal(rodt_air_finding_edge_message(&finding, &edge), RODT_OK);
#define IN_IT rodt_air_finding_json_format(&finding, &catalogue, 0, text, sizeof text, NULL)
    assert_int_equal(IN_IT, RODT_E_ARGUMENT); /* no templates */
    catalogue.templates = templates;
    templates[edge.code] = "defective {nothing";
    assert_int_equal(IN_IT, RODT_E_ARGUMENT);
    memset(endless, 'x', sizeof endless - 1);
    templates[edge.code] = endless;
    assert_int_equal(IN_IT, RODT_E_ARGUMENT);
    assert_string_equal(text, "as it was");
    catalogue.decimal_sign = NULL;
    endless[RODT_REPORT_SENTENCE_SIZE - 1] = '\0';
    assert_int_equal(IN_IT, RODT_E_ARGUMENT);
    const rodt_identification none = {.count = 0}; /* has no sentence that would show it */
    const rodt_rules *rules = rodt_rules_find("us-fmcsr");
    assert_int_equal(rodt_identification_json_format(&none, rules, day, &catalogue, 0, text, sizeof text, NULL),
                     RODT_E_ARGUMENT);
    catalogue = (rodt_catalogue){.language = "fr", .count = RODT_MESSAGE_END, .decimal_sign = ","};
    assert_int_equal(rodt_identification_json_format(&none, rules, day, &catalogue, 0, text, sizeof text, NULL),
                     RODT_E_ARGUMENT);
    catalogue.templates = templates;
    assert_int_equal(IN_IT, RODT_OK);
    has(text, endless);
}

/* The rows of a day, and what they come to for one chamber that nobody measured. */
static void limits_of_a_chamber(void **state)
{
    (void)state;
    const rodt_form form = {.chamber = "24", .default_day = day};
    const rodt_rules *law = rodt_rules_find("us-fmcsr");
    rodt_reading reading;
    rodt_finding finding;
    assert_int_equal(rodt_form_parse(&form, &reading, NULL), RODT_OK);
    assert_int_equal(rodt_reading_judge(&reading, law, &finding, NULL), RODT_OK);
    REPORT(text, rodt_limits_json_format, law, day, &finding, 0);
    has(text, "{\"chamber\": \"clamp 24 standard\", \"rated_stroke\": null, \"limit\": \"1 3/4\", \"law_limit\": ");
    has(text, "\"reasons\": [\"assumed-standard\", \"assumed-clamp\"], \"source\": \"49 CFR ");
    has(text, "\"rules\": \"us-fmcsr\", \"title\": \"");
    has(text, "\"as_of\": \"2026-11-24\", \"limits\": [{\"chamber\": \"clamp 24\", ");
    has(text, "], \"units\": {\"length\": \"in\"}}");
    assert_null(strstr(text, "\"size\": \"30\""));
    REPORT(all, rodt_limits_json_format, law, day, NULL, 0);
    assert_ptr_equal(strstr(all, "{\"rules\": \"us-fmcsr\", "), all);
    has(all, "\"size\": \"30\"");
    assert_null(strstr(all, "own_limits"));
    REPORT(newest, rodt_limits_json_format, law, (rodt_date){0}, NULL, 0);
    has(newest, "\"as_of\": null, \"limits\": [{");
    has(newest, "\"until\": null, ");
    assert_null(strstr(newest, "\"until\": \""));
    /* Clamp 36 before and after 86 FR 57076, and the day before the first text. */
    static const struct {
        rodt_date day;
        const char *limit;
    } days[] = {{{2012, 9, 4}, NULL}, {{2012, 9, 5}, "2 1/4"}, {{2021, 10, 13}, "2 1/4"}, {{2021, 10, 14}, "2 1/2"}};
    for (size_t i = 0; i < sizeof days / sizeof *days; i++) {
        char row[140];
        snprintf(row, sizeof row, "\"chamber\": \"clamp 36\", \"family\": \"clamp\", \"size\": \"36\", \"class\": "
                 "\"standard\", \"rated_stroke\": null, \"limit\": \"%s\", ", days[i].limit != NULL ? days[i].limit : "");
        REPORT(of_day, rodt_limits_json_format, law, days[i].day, NULL, 0);
        if (days[i].limit == NULL)
            has(of_day, "\"limits\": []");
        else
            has(of_day, row);
        const char *first = strstr(of_day, "\"chamber\": \"clamp 36\""); /* of two rows only one is in force */
        assert_true(first == NULL ? days[i].limit == NULL : strstr(first + 1, "\"chamber\": \"clamp 36\"") == NULL);
    }
    assert_int_equal(rodt_limits_json_format(NULL, day, NULL, 0, NULL, 0, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_limits_json_format(law, (rodt_date){2024, 2, 30}, NULL, 0, NULL, 0, NULL), RODT_E_ARGUMENT);
}

/* Every member of the report in its order, with what a finding says of its limit and nothing else. */
static void limits_as_a_whole(void **state)
{
    (void)state;
    const rodt_rules *rules = rodt_rules_find("us-fmcsr");
    rodt_finding finding = {.reasons = UINT64_MAX, .limit = {9, 4}, .law_limit = {5, 2}, .long_limit = {3, 1},
                            .source = &code, .evidence = RODT_EVIDENCE_SECOND_HAND, .law_source = &law_text,
                            .law_evidence = RODT_EVIDENCE_FROM_MEMORY};
    finding.chamber = (rodt_chamber){.family = RODT_FAMILY_DD_3, .size = "30", .rated_stroke = {3, 1}};
    REPORT(text, rodt_limits_json_format, rules, day, &finding, 0);
    const char *at = text;
    next_is(&at, "{\"chamber\": \"DD-3 30\", \"rated_stroke\": \"3\", \"limit\": \"2 1/4\", \"law_limit\": \"2 "
                 "1/2\", \"long_limit\": \"3\", \"reasons\": [\"assumed-standard\", \"assumed-clamp\", "
                 "\"conflicting-marks\", \"no-published-limit\", \"rules-not-in-force\", \"limit-unconfirmed\", "
                 "\"limit-from-rated\", \"limit-marked\", \"limit-common-practice\"], \"source\": \"Code, 1.2, "
                 "2020\", \"evidence\": \"second-hand\", \"law_source\": \"Law\", \"law_evidence\": "
                 "\"from-memory\", \"rules\": \"us-fmcsr\", ");
    next_member_is(&at, "title", rodt_rules_title(rules));
    next_is(&at, "\"as_of\": \"2026-11-24\", \"limits\": [{\"chamber\": \"DD-3 30\", \"family\": \"DD-3\", "
                 "\"size\": \"30\", \"class\": \"any\", \"rated_stroke\": null, \"limit\": \"2 1/4\", "
                 "\"printed_mm\": \"57.2\", \"from\": \"2012-09-05\", \"until\": null, \"source\": \"49 CFR Part "
                 "393, 393.47(e)(1), text as amended by 86 FR 57076\", \"evidence\": \"checked\"}], \"units\": "
                 "{\"length\": \"in\"}}");
    assert_string_equal(at, "");
}

/* A carrier's own rows are beside those of the law. Invented limit. */
static void limits_of_a_carrier(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit\nclamp,30,standard,1 3/4\n";
    rodt_rules *own;
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "yard", table, sizeof table - 1, &own, NULL), RODT_OK);
    REPORT(text, rodt_limits_json_format, own, day, NULL, 0);
    has(text, "{\"rules\": \"us-fmcsr\", ");
    has(text, "], \"own_limits\": \"yard\", \"own_rows\": [{\"chamber\": \"clamp 30\", ");
    has(text, "\"limit\": \"1 3/4\", \"printed_mm\": null, ");
    rodt_rules_unref(own);
}

/* The gauge was in kPa: the report says what it showed, the record keeps it, and no number is without a unit. */
static void a_gauge_in_kpa(void **state)
{
    (void)state;
    const rodt_form form = {.chamber = "30", .released = "2", .applied = "4", .psi = "650 kPa"};
    rodt_finding finding;
    assert_int_equal(rodt_form_judge(&form, rodt_rules_find("us-fmcsr"), &finding, NULL), RODT_OK);
    REPORT(text, rodt_finding_json_format, &finding, NULL, 0);
    has(text, "\"pressure\": \"650 kPa\", \"pressure_after\": null, ");
    has(text, ", \"units\": {\"length\": \"in\", \"pressure\": \"psi\"}}");
    REPORT(record, rodt_record_json_format, rodt_record_find("rodt_finding"), &finding, 0);
    has(record, "\"pressure_unit\": \"kpa\"");
    has(record, "\"pressure\": \"650 kPa\"");
    REPORT(parts, rodt_record_json_format, rodt_record_find("rodt_finding"), &finding, RODT_JSON_OPTION_PARTS);
    has(parts, "\"pressure\": {\"text\": \"650 kPa\", \"num\": ");
    has(parts, ", \"unit\": \"psi\"}");
    has(parts, "\"limit\": {\"text\": \"2\", \"num\": 2, \"den\": 1, \"unit\": \"in\"}");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_air_check),
        cmocka_unit_test(an_air_check_by_a_carriers_figure),
        cmocka_unit_test(an_air_check_as_a_whole),
        cmocka_unit_test(remarks_on_an_air_check),
        cmocka_unit_test(a_vehicle),
        cmocka_unit_test(a_vehicle_as_a_whole),
        cmocka_unit_test(one_wheel_end_of_two),
        cmocka_unit_test(a_wheel_end_as_its_stroke),
        cmocka_unit_test(a_wheel_end_by_hand),
        cmocka_unit_test(no_vehicle),
        cmocka_unit_test(which_chamber),
        cmocka_unit_test(which_chamber_as_a_whole),
        cmocka_unit_test(nothing_is_open),
        cmocka_unit_test(no_limit_to_distinguish),
        cmocka_unit_test(rows_that_lack_something),
        cmocka_unit_test(towed_units_of_a_figure),
        cmocka_unit_test(a_rule_set_and_its_rows),
        cmocka_unit_test(rows_as_a_whole),
        cmocka_unit_test(a_rule_set_as_a_whole),
        cmocka_unit_test(limits_of_a_chamber),
        cmocka_unit_test(limits_as_a_whole),
        cmocka_unit_test(limits_of_a_carrier),
        cmocka_unit_test(a_gauge_in_kpa),
        cmocka_unit_test(a_vehicle_in_french),
        cmocka_unit_test(a_finding_in_french),
        cmocka_unit_test(a_finding_as_a_whole),
        cmocka_unit_test(other_reports_in_french),
        cmocka_unit_test(broken_catalogues),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
