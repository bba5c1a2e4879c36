/* SPDX-License-Identifier: Apache-2.0 */
/* Records as JSON: every record, every kind of member, hostile texts, and what does not fit. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <stdlib.h>
#include <string.h>

#include <rodtravel/rodtravel.h>

#define COUNT_OF(array) (sizeof(array) / sizeof((array)[0]))

static const char *json_of(const char *name, const void *value, uint32_t options)
{
    static char text[70000];
    size_t needed = 0;
    memset(text, 'x', sizeof text);
    assert_int_equal(rodt_record_json_format(rodt_record_find(name), value, options, text, sizeof text, &needed), RODT_OK);
    assert_int_equal(needed, strlen(text) + 1);
    return text;
}

static void values_of_every_kind(void **state)
{
    (void)state;
    rodt_wheel_end end = {.position = {1, RODT_SIDE_LEFT}, .adjuster = RODT_ADJUSTER_MANUAL, .arm_length = {11, 2}};
    end.reading = (rodt_reading){.chamber = {.family = RODT_FAMILY_DD_3, .size = "30"}, .released = {17, 8},
                                 .pressure = {185, 2}, .day = {2024, 5, 6}, .reasons = 1u << RODT_REASON_AT_LIMIT,
                                 .other_released = {{25, 8}}};
    assert_string_equal(
        json_of("rodt_wheel_end", &end, 0),
        "{\"position\": \"1L\", \"adjuster\": \"manual\", \"reading\": {\"chamber\": {\"family\": \"DD-3\", "
        "\"stroke_class\": \"unknown\", \"size\": \"30\", \"spring_size\": \"\", \"rated_stroke\": null, "
        "\"marked_limit\": null}, \"released\": \"2 1/8\", \"applied\": null, \"unit\": \"in\", \"pressure_unit\": \"psi\", \"division\": null, "
        "\"pressure\": \"92 1/2\", \"pressure_after\": null, \"day\": \"2024-05-06\", \"other_day\": null, "
        "\"engine_running\": \"not-recorded\", \"spring_brake_applied\": \"not-recorded\", \"drum\": \"not-recorded\", "
        "\"other_released\": [\"3 1/8\"], \"other_applied\": [], \"reasons\": [\"at-limit\"]}, "
        "\"arm_length\": \"5 1/2\", \"units\": {\"length\": \"in\", \"pressure\": \"psi\"}}");
    rodt_axle_finding axle = {.axle = -3, .mismatches = RODT_AXLE_MISMATCH_SIZE_DIFFERS | 1u << 31, .right = SIZE_MAX,
                              .al_left = {165, 1}};
    assert_string_equal(json_of("rodt_axle_finding", &axle, 0),
                        "{\"axle\": -3, \"mismatches\": [\"size-differs\", 31], \"left\": 0, \"right\": null, "
                        "\"stroke_difference\": null, \"al_left\": \"165\", \"al_right\": null, "
                        "\"units\": {\"length\": \"in\"}}");
    const rodt_reading later = {.other_released = {{256, 1}}, .other_applied = {{0, 0}, {1, 0}},
                                .reasons = 1u << RODT_REASON_AT_LIMIT | UINT64_C(1) << 63};
    assert_non_null(strstr(json_of("rodt_reading", &later, 0),
                           "\"other_released\": [\"256\"], \"other_applied\": [null, null], \"reasons\": [\"at-limit\", 63]"));
    rodt_count count = {.outcome = 77, .share = {-1, 4}, .brakes = UINT32_MAX};
    assert_non_null(strstr(json_of("rodt_count", &count, 0), "{\"outcome\": 77, \"brakes\": 4294967295, "));
    assert_non_null(strstr(json_of("rodt_count", &count, RODT_JSON_OPTION_PARTS),
                           "\"share\": {\"text\": \"-1/4\", \"num\": -1, \"den\": 4}, \"worst_share\": null"));
    rodt_style style = {.decimal_comma = true};
    assert_string_equal(json_of("rodt_style", &style, 0), "{\"unit\": \"in\", \"pressure_unit\": \"psi\", \"decimal_comma\": true}");
    rodt_column_bits bits = {.from = 7};
    assert_string_equal(json_of("rodt_column_bits", &bits, 0), "{\"from\": 7}");
}

static void records_behind_pointers(void **state)
{
    (void)state;
    rodt_limit_answer answer;
    rodt_chamber chamber = {.family = RODT_FAMILY_CLAMP, .stroke_class = RODT_STROKE_CLASS_LONG, .size = "30"};
    assert_int_equal(rodt_rules_find_limit(rodt_rules_find("us-fmcsr"), &chamber, (rodt_date){2024, 5, 6}, &answer, NULL),
                     RODT_OK);
    const char *json = json_of("rodt_limit_answer", &answer, 0);
    assert_non_null(strstr(json, "\"law_row\": {\"family\": \"clamp\", \"stroke_class\": \"long\", \"size\": \"30\", "));
    assert_non_null(strstr(json, "\"source\": {\"id\": \""));
    assert_non_null(strstr(json, "\"own_row\": null"));
    static const char table[] = "family,size,class,limit\nclamp,30,long,2\n";
    rodt_finding finding = {.reasons = 0};
    rodt_rules *own;
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "x", table, sizeof table - 1, &own, NULL), RODT_OK);
    assert_non_null(strstr(json_of("rodt_finding", &finding, 0), "\"rules\": null, "));
    finding.rules = own;
    assert_non_null(strstr(json_of("rodt_finding", &finding, 0), "\"rules\": \"x\", "));
    rodt_rules_unref(own);
}

/* Arrays with a count have that many elements, and never more than there is room for. */
static void arrays_have_the_elements_in_use(void **state)
{
    (void)state;
    static rodt_vehicle_finding vehicle;
    assert_non_null(strstr(json_of("rodt_vehicle_finding", &vehicle, 0), "\"axle_count\": 0, \"axles\": [], \"units\": {\"length\": \"in\"}}"));
    vehicle.axle_count = 2;
    const char *json = json_of("rodt_vehicle_finding", &vehicle, 0);
    assert_non_null(json = strstr(json, "\"axle\": 0"));
    assert_non_null(json = strstr(json + 1, "\"axle\": 0"));
    assert_null(strstr(json + 1, "\"axle\": 0"));
    vehicle.axle_count = SIZE_MAX;
    (void)json_of("rodt_vehicle_finding", &vehicle, 0);
}

static void hostile_texts(void **state)
{
    (void)state;
    static const char *const texts[][2] = {
        {"a \"quoted\" \\ text", "a \\\"quoted\\\" \\\\ text"}, {"\x01\n\x1F\x7F", "\\u0001\\u000a\\u001f\\u007f"},
        {"1\xC2\xBD \xE2\x80\x99", "1\xC2\xBD \xE2\x80\x99"}, {"\xFF\xC3", "\\ufffd\\ufffd"},
        {"\xED\xA0\x80", "\\ufffd\\ufffd\\ufffd"}, {"\xC0\xAF", "\\ufffd\\ufffd"}, {"", ""}, {"</script>", "</script>"}};
    for (size_t i = 0; i < COUNT_OF(texts); i++) {
        rodt_form form = {.chamber = texts[i][0]};
        char expected[100] = "{\"chamber\": \"";
        strcat(strcat(expected, texts[i][1]), "\", \"released\": null, ");
        assert_memory_equal(json_of("rodt_form", &form, 0), expected, strlen(expected));
    }
    rodt_chamber chamber = {.size = {'3', '0', '"', '\\'}}; /* not closed by a zero byte */
    assert_non_null(strstr(json_of("rodt_chamber", &chamber, 0), "\"size\": \"30\\\"\\\\\", \"spring_size\": \"\""));
}

/* Values that no function makes: of records without pointers, all bytes the same. */
static void strange_bytes(void **state)
{
    (void)state;
    static char zero[20000];
    rodt_tally tally;
    rodt_position position;
    rodt_air_reading air;
    for (size_t i = 0; i < rodt_record_count(); i++) {
        assert_true(rodt_record_size(rodt_record_at(i)) <= sizeof zero);
        assert_int_equal(json_of(rodt_record_name(rodt_record_at(i)), zero, 0)[0], '{');
    }
    memset(&tally, 0xA5, sizeof tally);
    memset(&position, 0xA5, sizeof position);
    memset(&air, 0xA5, sizeof air);
    assert_int_equal(json_of("rodt_tally", &tally, 0)[0], '{');
    assert_string_equal(json_of("rodt_position", &position, 0), "{\"axle\": -23131, \"side\": -1515870811}");
    assert_int_equal(json_of("rodt_air_reading", &air, RODT_JSON_OPTION_PARTS)[0], '{');
}

static void what_does_not_fit(void **state)
{
    (void)state;
    char text[64];
    size_t needed = 0;
    const rodt_record *of = rodt_record_find("rodt_date");
    const rodt_date day = {2024, 5, 6};
    static const char json[] = "{\"year\": 2024, \"month\": 5, \"day\": 6}";
    for (size_t size = 0; size < sizeof json; size++) {
        memset(text, 'x', sizeof text);
        assert_int_equal(rodt_record_json_format(of, &day, 0, text, size, &needed), RODT_E_SPACE);
        assert_int_equal(needed, sizeof json);
        for (size_t i = 0; i < sizeof text; i++)
            assert_int_equal(text[i], 'x');
    }
    assert_int_equal(rodt_record_json_format(of, &day, 0, text, sizeof json, NULL), RODT_OK);
    assert_string_equal(text, json);
    assert_int_equal(text[sizeof json], 'x');
    assert_int_equal(rodt_record_json_format(of, &day, 0, NULL, 0, &needed), RODT_E_SPACE);
    assert_int_equal(rodt_record_json_format(of, &day, 0, NULL, 10, &needed), RODT_E_ARGUMENT);
    assert_int_equal(rodt_record_json_format(of, &day, 0, NULL, 1, &needed), RODT_E_ARGUMENT);
    assert_int_equal(rodt_record_json_format(of, &day, 2, text, sizeof text, &needed), RODT_E_ARGUMENT);
    assert_int_equal(rodt_record_json_format(NULL, &day, 0, text, sizeof text, &needed), RODT_E_ARGUMENT);
    assert_int_equal(rodt_record_json_format(of, NULL, 0, text, sizeof text, &needed), RODT_E_ARGUMENT);
}

static void a_finding_as_a_report(void **state)
{
    (void)state;
    rodt_form form = {.chamber = "30", .released = "2 1/8", .applied = "4 1/4", .stroke_class = "standard",
                      .psi = "95", .date = "2024-05-06"};
    rodt_finding finding;
    char text[4000];
    size_t needed;
    assert_int_equal(rodt_form_judge(&form, rodt_rules_find("us-fmcsr"), &finding, NULL), RODT_OK);
    assert_int_equal(rodt_finding_json_format(&finding, NULL, 0, text, sizeof text, &needed), RODT_OK);
    assert_int_equal(needed, strlen(text) + 1);
    static const char start[] = "{\"chamber\": \"clamp 30 standard\", \"rated_stroke\": null, \"released\": \"2 1/8\", ";
    assert_ptr_equal(strstr(text, start), text);
    assert_non_null(strstr(text, "\"verdict\": \"out-of-adjustment\", \"reasons\": [\"over-limit\""));
    assert_non_null(strstr(text, "\"proof\": null, \"probability_over\": null, \"proof_sentence\": null, "));
    assert_int_equal(rodt_finding_json_format(&finding, NULL, RODT_JSON_OPTION_PARTS, text, sizeof text, NULL),
                     RODT_OK);
    assert_non_null(strstr(text, "\"limit\": {\"text\": \"2\", \"num\": 2, \"den\": 1, \"unit\": \"in\"}"));
    assert_int_equal(rodt_finding_json_format(&finding, NULL, 0, text, 20, NULL), RODT_E_SPACE);
    assert_int_equal(rodt_finding_json_format(NULL, NULL, 0, text, sizeof text, NULL), RODT_E_ARGUMENT);
    finding.rules = NULL;
    assert_int_equal(rodt_finding_json_format(&finding, NULL, 0, text, sizeof text, NULL), RODT_E_ARGUMENT);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(values_of_every_kind), cmocka_unit_test(records_behind_pointers),
        cmocka_unit_test(arrays_have_the_elements_in_use), cmocka_unit_test(hostile_texts),
        cmocka_unit_test(strange_bytes), cmocka_unit_test(what_does_not_fit),
        cmocka_unit_test(a_finding_as_a_report)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
