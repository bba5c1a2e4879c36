/* SPDX-License-Identifier: Apache-2.0 */
/* The description of records and enumerations, and values by path: found, written, set, and refused. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <stdio.h>
#include <string.h>

#include <rodtravel/rodtravel.h>

#define COUNT_OF(array) (sizeof(array) / sizeof((array)[0]))

static const rodt_record *record(const char *name)
{
    const rodt_record *found = rodt_record_find(name);
    assert_non_null(found);
    return found;
}

/* --- Lists ------------------------------------------------------------------------------------------- */

static void lists_are_complete(void **state)
{
    (void)state;
    for (size_t i = 0; i < rodt_record_count(); i++) {
        assert_non_null(rodt_record_at(i));
        assert_ptr_equal(rodt_record_find(rodt_record_name(rodt_record_at(i))), rodt_record_at(i));
    }
    for (size_t i = 0; i < rodt_enumeration_count(); i++) {
        assert_non_null(rodt_enumeration_at(i));
        assert_ptr_equal(rodt_enumeration_find(rodt_enumeration_name(rodt_enumeration_at(i))), rodt_enumeration_at(i));
    }
    assert_string_equal(rodt_record_name(rodt_record_at(rodt_record_count() - 1)), "rodt_text_columns");
    assert_string_equal(rodt_enumeration_name(rodt_enumeration_at(rodt_enumeration_count() - 1)), "rodt_json_option");
    assert_null(rodt_record_at(rodt_record_count()));
    assert_null(rodt_record_find("rodt_nothing"));
    assert_null(rodt_record_find(NULL));
    assert_string_equal(rodt_record_name(NULL), "");
    assert_int_equal(rodt_record_size(NULL), 0);
    assert_false(rodt_record_is_input(NULL));
    assert_int_equal(rodt_member_count(NULL), 0);
    assert_null(rodt_member_at(NULL, 0));
    assert_null(rodt_enumeration_at(rodt_enumeration_count()));
    assert_null(rodt_enumeration_find("rodt_nothing"));
    assert_null(rodt_enumeration_find(NULL));
    assert_true(rodt_record_is_input(record("rodt_reading")));
    assert_true(rodt_record_is_input(record("rodt_catalogue")));
    assert_false(rodt_record_is_input(record("rodt_finding")));
    assert_int_equal(rodt_record_size(record("rodt_finding")), sizeof(rodt_finding));
}

/* Members do not overlap, are inside of their record and of a size that their kind can have. */
static void members_fill_their_record(void **state)
{
    (void)state;
    for (size_t i = 0; i < rodt_record_count(); i++) {
        const rodt_record *of = rodt_record_at(i);
        uint32_t end = 0;
        for (size_t k = 0; k < rodt_member_count(of); k++) {
            const rodt_member *member = rodt_member_at(of, k);
            bool words = member->kind == RODT_MEMBER_KIND_ENUMERATOR || member->kind == RODT_MEMBER_KIND_SET;
            bool inner = member->kind == RODT_MEMBER_KIND_RECORD || member->kind == RODT_MEMBER_KIND_RECORD_POINTER;
            assert_true(member->offset >= end && member->size > 0 && member->count > 0);
            end = member->offset + member->size * member->count;
            assert_true(end <= rodt_record_size(of));
            assert_int_equal(member->enumeration != NULL, words);
            assert_int_equal(member->record != NULL, inner);
            assert_ptr_equal(rodt_member_find(of, member->name), member);
            assert_ptr_equal(rodt_member_find_n(of, member->name, strlen(member->name)), member);
            if (member->used != NULL)
                assert_non_null(rodt_member_find(of, member->used));
            if (member->kind == RODT_MEMBER_KIND_RECORD)
                assert_int_equal(member->size, rodt_record_size(member->record));
        }
    }
}

static void kinds_have_words(void **state)
{
    (void)state;
    static const struct {
        rodt_member_kind kind;
        const char *word;
    } cases[] = {
        {RODT_MEMBER_KIND_LENGTH, "length"}, {RODT_MEMBER_KIND_PRESSURE, "pressure"},
        {RODT_MEMBER_KIND_RATIO, "ratio"}, {RODT_MEMBER_KIND_DATE, "date"}, {RODT_MEMBER_KIND_POSITION, "position"},
        {RODT_MEMBER_KIND_ENUMERATOR, "enumerator"}, {RODT_MEMBER_KIND_SET, "set"},
        {RODT_MEMBER_KIND_BOOLEAN, "boolean"}, {RODT_MEMBER_KIND_INTEGER, "integer"},
        {RODT_MEMBER_KIND_UNSIGNED, "unsigned"}, {RODT_MEMBER_KIND_INDEX, "index"}, {RODT_MEMBER_KIND_TEXT, "text"},
        {RODT_MEMBER_KIND_TEXT_POINTER, "text-pointer"}, {RODT_MEMBER_KIND_RECORD, "record"},
        {RODT_MEMBER_KIND_RECORD_POINTER, "record-pointer"}, {RODT_MEMBER_KIND_RULES, "rules"},
        {RODT_MEMBER_KIND_POINTER, "pointer"}, {RODT_MEMBER_KIND_RESERVE, "reserve"}};
    for (size_t i = 0; i < COUNT_OF(cases); i++)
        assert_string_equal(rodt_member_kind_name(cases[i].kind), cases[i].word);
    assert_string_equal(rodt_json_option_name(RODT_JSON_OPTION_PARTS), "parts");
}

static void members_are_found_by_headings(void **state)
{
    (void)state;
    const rodt_record *form = record("rodt_form");
    assert_string_equal(rodt_member_find(form, "Stroke Class")->name, "stroke_class");
    assert_string_equal(rodt_member_find(form, "inspection date")->name, "date");
    assert_string_equal(rodt_member_find(record("rodt_reading"), "inspection date")->name, "day");
    assert_string_equal(rodt_member_find(record("rodt_finding"), "psi")->name, "pressure");
    assert_null(rodt_member_find(record("rodt_chamber"), "inspection date"));
    assert_null(rodt_member_find(form, "position")); /* a field, but none of a form */
    assert_null(rodt_member_find(record("rodt_finding"), "position"));
    assert_null(rodt_member_find(form, ""));
    assert_null(rodt_member_find(form, NULL));
    assert_null(rodt_member_find(NULL, "date"));
}

/* --- Paths ------------------------------------------------------------------------------------------- */

static rodt_finding finding_of(const char *chamber, const char *released, const char *applied)
{
    rodt_form form = {.chamber = chamber, .released = released, .applied = applied, .psi = "95", .division = "1/16"};
    rodt_finding finding;
    assert_int_equal(rodt_form_judge(&form, rodt_rules_find("us-fmcsr"), &finding, NULL), RODT_OK);
    return finding;
}

static const char *text_of(const char *name, const void *value, const char *path)
{
    static char text[1000];
    size_t needed = 0;
    assert_int_equal(rodt_record_text_format(record(name), value, path, text, sizeof text, &needed), RODT_OK);
    assert_int_equal(needed, strlen(text) + 1);
    return text;
}

/* The field of an error is a path into the reading that is wrong, and into a form. */
static void every_field_is_a_path(void **state)
{
    (void)state;
    const rodt_reading reading = {.division = {1, 16}};
    const rodt_form form = {.chamber = NULL};
    const struct {
        rodt_field field;
        const void *at;
    } cases[] = {{RODT_FIELD_CHAMBER, &reading.chamber},
                 {RODT_FIELD_RELEASED, &reading.released},
                 {RODT_FIELD_APPLIED, &reading.applied},
                 {RODT_FIELD_STROKE_CLASS, &reading.chamber.stroke_class},
                 {RODT_FIELD_RATED_STROKE, &reading.chamber.rated_stroke},
                 {RODT_FIELD_MARKED_LIMIT, &reading.chamber.marked_limit},
                 {RODT_FIELD_PSI, &reading.pressure},
                 {RODT_FIELD_PSI_AFTER, &reading.pressure_after},
                 {RODT_FIELD_DIVISION, &reading.division},
                 {RODT_FIELD_DATE, &reading.day},
                 {RODT_FIELD_UNIT, &reading.unit},
                 {RODT_FIELD_ENGINE, &reading.engine_running},
                 {RODT_FIELD_SPRING_BRAKE, &reading.spring_brake_applied},
                 {RODT_FIELD_DRUM, &reading.drum}};
    assert_int_equal(sizeof cases / sizeof cases[0], RODT_READING_FIELDS);
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        const void *at = NULL;
        const char *name = rodt_field_name(cases[i].field);
        assert_non_null(rodt_record_locate(record("rodt_reading"), &reading, name, &at));
        assert_ptr_equal(at, cases[i].at);
        assert_non_null(rodt_record_locate(record("rodt_form"), &form, name, &at));
    }
    const void *at = NULL;
    assert_null(rodt_record_locate(record("rodt_reading"), &reading, "family", &at)); /* no field: chamber.family */
    assert_null(rodt_record_locate(record("rodt_reading"), &reading, "position", &at));
    rodt_reading set = {.division = {0, 0}};
    assert_int_equal(rodt_record_set_text(record("rodt_reading"), &set, "stroke_class", "long", NULL), RODT_OK);
    assert_int_equal(rodt_record_set_text(record("rodt_reading"), &set, "psi", "95", NULL), RODT_OK);
    assert_int_equal(set.chamber.stroke_class, RODT_STROKE_CLASS_LONG);
    assert_int_equal(set.pressure.num, 95);
}

static void values_are_written(void **state)
{
    (void)state;
    rodt_finding finding = finding_of("30L", "2 1/8", "4 3/4");
    rodt_axle_finding axle = {.axle = 3, .left = 2, .right = SIZE_MAX, .mismatches = RODT_AXLE_MISMATCH_SIZE_DIFFERS |
                                                                                    RODT_AXLE_MISMATCH_END_MISSING};
    rodt_wheel_end end = {.position = {2, RODT_SIDE_RIGHT}};
    rodt_limit_answer answer = {.assumed_clamp = true};
    static const char *const cases[][2] = {
        {"verdict", "out-of-adjustment"}, {"margin", "-1/8"}, {"chamber", "clamp 30 long"}, {"chamber.size", "30"},
        {"chamber.family", "clamp"}, {"pressure", "95"}, {"pressure_after", ""}, {"day", ""}, {"rules", "us-fmcsr"},
        {"reasons", "over-limit"}, {"law_row.source.document", "49 CFR Part 393"}, {"own_row", NULL},
        {"law_row.from", "2012-09-05"}, {"other_released[1]", ""}, {"other_released", ""}, {"evidence", "checked"}};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        char text[100] = "kept";
        if (cases[i][1] != NULL)
            assert_string_equal(text_of("rodt_finding", &finding, cases[i][0]), cases[i][1]);
        else
            assert_int_equal(rodt_record_text_format(record("rodt_finding"), &finding, cases[i][0], text, 100, NULL),
                             RODT_E_ARGUMENT);
    }
    assert_string_equal(text_of("rodt_axle_finding", &axle, "mismatches"), "size-differs, end-missing");
    assert_string_equal(text_of("rodt_axle_finding", &axle, "left"), "2");
    assert_string_equal(text_of("rodt_axle_finding", &axle, "right"), "");
    assert_string_equal(text_of("rodt_wheel_end", &end, "position"), "2R");
    assert_string_equal(text_of("rodt_wheel_end", &end, "reading.chamber"), "");
    assert_string_equal(text_of("rodt_limit_answer", &answer, "assumed_clamp"), "true");
    assert_string_equal(text_of("rodt_limit_answer", &answer, "assumed_standard"), "false");
}

static void paths_that_lead_nowhere(void **state)
{
    (void)state;
    rodt_finding finding = finding_of("30L", "2 1/8", "4 3/4");
    static const char *const wrong[] = {"", ".", "nothing", "chamber.", "chamber.nothing", ".chamber", "released.num",
                                        "other_released[2]", "other_released[", "other_released[]",
                                        "other_released[1", "other_released[-1]", "other_released[1]x",
                                        "other_released[99999999999999999999]", "released[1]", "own_row.limit",
                                        "rules.id", "law_row.source.nothing", "chamber[0]size", "released.applied"};
    for (size_t i = 0; i < COUNT_OF(wrong); i++) {
        const void *at = &finding;
        assert_null(rodt_record_locate(record("rodt_finding"), &finding, wrong[i], &at));
        assert_ptr_equal(at, &finding);
    }
    const void *at = NULL;
    assert_null(rodt_record_locate(NULL, &finding, "limit", &at));
    assert_null(rodt_record_locate(record("rodt_finding"), NULL, "limit", &at));
    assert_null(rodt_record_locate(record("rodt_finding"), &finding, NULL, &at));
    assert_null(rodt_record_locate(record("rodt_finding"), &finding, "limit", NULL));
    assert_string_equal(rodt_record_locate(record("rodt_finding"), &finding, "other_released[1]", &at)->name,
                        "other_released");
    assert_ptr_equal(at, &finding.other_released[1]);
    assert_non_null(rodt_record_locate(record("rodt_finding"), &finding, "chamber[0].size", &at));
    assert_non_null(rodt_record_locate(record("rodt_finding"), &finding, "stroke_class", &at));
    assert_ptr_equal(at, &finding.chamber.stroke_class);
    const rodt_candidate candidate = {.clues_for = 0}; /* has a chamber, but is no wheel end */
    assert_null(rodt_record_locate(record("rodt_candidate"), &candidate, "stroke_class", &at));
}

/* Indexes are decimal, of any number of digits. */
static void elements_of_a_long_array(void **state)
{
    (void)state;
    static const rodt_vehicle_finding vehicle = {.axle_count = 0};
    static const struct {
        const char *path;
        size_t index;
    } cases[] = {{"axles", 0}, {"axles[0]", 0}, {"axles[9]", 9}, {"axles[09]", 9}, {"axles[10]", 10}, {"axles[37]", 37}};
    const void *at = NULL;
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        assert_non_null(rodt_record_locate(record("rodt_vehicle_finding"), &vehicle, cases[i].path, &at));
        assert_ptr_equal(at, &vehicle.axles[cases[i].index]);
    }
    assert_null(rodt_record_locate(record("rodt_vehicle_finding"), &vehicle, "axles[40]", &at));
    assert_null(rodt_record_locate(record("rodt_vehicle_finding"), &vehicle, "axles[:]", &at));
    assert_null(rodt_record_locate(record("rodt_vehicle_finding"), &vehicle, "axles[/]", &at));
}

static void texts_that_cannot_be_written(void **state)
{
    (void)state;
    rodt_finding finding = finding_of("30L", "2 1/8", "4 3/4");
    char text[8] = "kept";
    size_t needed = 0;
    const rodt_record *of = record("rodt_finding");
    assert_int_equal(rodt_record_text_format(of, &finding, "verdict", text, sizeof text, &needed), RODT_E_SPACE);
    assert_int_equal(needed, sizeof "out-of-adjustment");
    assert_string_equal(text, "kept");
    assert_int_equal(rodt_record_text_format(of, &finding, "verdict", NULL, 0, &needed), RODT_E_SPACE);
    assert_int_equal(rodt_record_text_format(of, &finding, "reserved", text, sizeof text, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_record_text_format(of, &finding, "source", text, sizeof text, NULL), RODT_E_ARGUMENT);
    finding.verdict = 77;
    assert_int_equal(rodt_record_text_format(of, &finding, "verdict", text, sizeof text, NULL), RODT_E_ARGUMENT);
    finding.limit = (rodt_length){1, -2};
    assert_int_equal(rodt_record_text_format(of, &finding, "limit", text, sizeof text, NULL), RODT_E_ARGUMENT);
    memset(finding.chamber.size, '3', sizeof finding.chamber.size); /* not closed: only its own bytes are read */
    assert_int_equal(rodt_record_text_format(of, &finding, "chamber.size", text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, "3333");
    assert_int_equal(rodt_record_text_format(of, &finding, "nothing", text, sizeof text, NULL), RODT_E_ARGUMENT);
    const rodt_wheel_end end = {.position = {0, RODT_SIDE_LEFT}}; /* of no axle */
    assert_int_equal(rodt_record_text_format(record("rodt_wheel_end"), &end, "position", text, sizeof text, NULL),
                     RODT_E_ARGUMENT);
    assert_int_equal(rodt_record_text_format(record("rodt_wheel_end"), &end, "reading", text, sizeof text, NULL),
                     RODT_E_ARGUMENT);
    finding.pressure = (rodt_pressure){-95, 1}; /* no gauge shows it in kPa */
    finding.pressure_unit = RODT_PRESSURE_UNIT_KPA;
    assert_string_equal(text_of("rodt_finding", &finding, "pressure"), "-95");
    const rodt_form form = {.chamber = NULL};
    assert_string_equal(text_of("rodt_form", &form, "chamber"), "");
    finding.pressure = (rodt_pressure){95, 1};
    finding.pressure_unit = 77; /* no unit of this version */
    assert_string_equal(text_of("rodt_finding", &finding, "pressure"), "95");
    finding.pressure = (rodt_pressure){95, -1};
    assert_int_equal(rodt_record_text_format(of, &finding, "pressure", text, sizeof text, NULL), RODT_E_ARGUMENT);
    const rodt_candidate candidate = {.clues_for = UINT32_MAX}; /* also bits that are no clue */
    assert_string_equal(text_of("rodt_candidate", &candidate, "clues_for"),
                        "stamp, family, port-shape, tag, rated-stroke, diameter");
    finding.pressure_unit = RODT_PRESSURE_UNIT_PSI;
}

/* --- Setting ----------------------------------------------------------------------------------------- */

static void a_form_is_set_by_headings(void **state)
{
    (void)state;
    rodt_form form = {.chamber = NULL};
    rodt_finding finding;
    static const char *const cells[][2] = {{"Chamber", "30"}, {"released", "2 1/8"}, {"Applied", "4 1/8"},
                                           {"stroke class", "standard"}, {"Pressure", "95"}};
    for (size_t i = 0; i < COUNT_OF(cells); i++)
        assert_int_equal(rodt_record_set_text(record("rodt_form"), &form, cells[i][0], cells[i][1], NULL), RODT_OK);
    assert_ptr_equal(form.psi, cells[4][1]);
    assert_int_equal(rodt_record_set_text(record("rodt_form"), &form, "style.unit", "in", NULL), RODT_OK);
    assert_int_equal(rodt_form_judge(&form, rodt_rules_find("us-fmcsr"), &finding, NULL), RODT_OK);
    assert_int_equal(finding.verdict, RODT_VERDICT_IN_ADJUSTMENT);
    assert_int_equal(rodt_record_set_text(record("rodt_form"), &form, "chamber", NULL, NULL), RODT_OK);
    assert_null(form.chamber);
}

static void values_are_set_by_their_readers(void **state)
{
    (void)state;
    rodt_wheel_end end = {.adjuster = RODT_ADJUSTER_NOT_RECORDED};
    const rodt_record *of = record("rodt_wheel_end");
    static const char *const texts[][3] = {
        {"position", "3-left", "3L"}, {"adjuster", "Automatic", "automatic"}, {"reading.chamber", "T30 LS", "clamp 30 long"},
        {"reading.chamber.size", "24", "24"}, {"reading.released", "2-1/8 in", "2 1/8"},
        {"reading.applied", "101.6 mm", "4"}, {"reading.pressure", "92.5", "92 1/2"},
        {"reading.pressure", "655 kPa", "655 kPa"}, {"reading.pressure_unit", NULL, "psi"},
        {"reading.pressure_after", "0.5 kPa", "0.5 kPa"}, {"reading.pressure_unit", "kPa", "kpa"},
        {"reading.pressure", "92.5", "92 1/2 psi"},
        {"reading.day", "2024/05/06", "2024-05-06"}, {"reading.engine_running", "no", "no"}, {"arm_length", "6", "6"},
        {"reading.other_applied[1]", "3 1/8", "3 1/8"}, {"reading.drum", " HOT ", "hot"}, {"arm_length", "", ""},
        {"reading.reasons", "chamber-unreadable,spreadsheet-date", "chamber-unreadable, spreadsheet-date"},
        {"reading.reasons", "", ""}, {"position", NULL, ""}};
    for (size_t i = 0; i < COUNT_OF(texts); i++) {
        rodt_error error = {.status = RODT_OK};
        if (rodt_record_set_text(of, &end, texts[i][0], texts[i][1], &error) != RODT_OK)
            fail_msg("%s = %s: %s", texts[i][0], texts[i][1], error.text);
        if (texts[i][2] != NULL)
            assert_string_equal(text_of("rodt_wheel_end", &end, texts[i][0]), texts[i][2]);
    }
}

/* "31/8" may be 3 1/8: what else a reading may mean is kept beside it, and goes with the next text. */
static void a_lost_blank_sets_two_values(void **state)
{
    (void)state;
    rodt_reading reading = {.reasons = 0};
    const rodt_record *of = record("rodt_reading");
    const rodt_length none[2] = {{0, 0}, {0, 0}};
    assert_int_equal(rodt_record_set_text(of, &reading, "released", "31/8", NULL), RODT_OK);
    assert_string_equal(text_of("rodt_reading", &reading, "released"), "3 7/8");
    assert_string_equal(text_of("rodt_reading", &reading, "other_released"), "3 1/8");
    assert_int_equal(rodt_record_set_text(of, &reading, "applied", "113/16", NULL), RODT_OK);
    assert_string_equal(text_of("rodt_reading", &reading, "other_applied"), "1 13/16");
    assert_string_equal(text_of("rodt_reading", &reading, "other_applied[1]"), "11 3/16");
    assert_int_equal(rodt_record_set_text(of, &reading, "released", "2", NULL), RODT_OK);
    assert_memory_equal(reading.other_released, none, sizeof none);
    assert_string_equal(text_of("rodt_reading", &reading, "other_applied"), "1 13/16");
    assert_int_equal(rodt_record_set_text(of, &reading, "applied", "", NULL), RODT_OK);
    assert_memory_equal(reading.other_applied, none, sizeof none);
    assert_int_equal(rodt_record_set_text(of, &reading, "released", "31/8", NULL), RODT_OK);
    assert_int_equal(rodt_record_set_text(of, &reading, "released", NULL, NULL), RODT_OK);
    assert_false(rodt_length_given(reading.released));
    assert_memory_equal(reading.other_released, none, sizeof none);
}

/* Exact numbers of a result have no bound of a tape; sets of bits, truth values, numbers with a sign, and no index. */
static void each_kind_is_set(void **state)
{
    (void)state;
    static const struct {
        const char *of, *path, *text, *written;
    } cases[] = {{"rodt_finding", "margin", "-1 3/4", "-1 3/4"},
                 {"rodt_finding", "margin", "-200", "-200"},
                 {"rodt_finding", "margin", "7/8", "7/8"},
                 {"rodt_finding", "margin", "2-1/8", "2 1/8"},
                 {"rodt_finding", "pressure", "1000", "1000"},
                 {"rodt_finding", "pressure", "95 psi", "95"},
                 {"rodt_finding", "probability_over", "1/3", "1/3"},
                 {"rodt_finding", "probability_over", "0.25", "1/4"},
                 {"rodt_finding", "probability_over", "4/8", "1/2"},
                 {"rodt_air_limit", "start", "100", "100"}, /* no unit is kept beside it */
                 {"rodt_air_limit", "start", "700 kPa", "101 669033388197/1270920461503"},
                 {"rodt_air_reading", "towed_units", "300", "300"},
                 {"rodt_air_reading", "towed_units", "32767", "32767"},
                 {"rodt_ratio", "num", "9223372036854775807", "9223372036854775807"},
                 {"rodt_ratio", "num", "-9223372036854775807", "-9223372036854775807"},
                 {"rodt_air_reading", "towed_units", "-1", "-1"},
                 {"rodt_air_reading", "towed_units", "-0", "0"},
                 {"rodt_tally", "full", "-0", "0"},
                 {"rodt_tally", "full", "4294967295", "4294967295"},
                 {"rodt_style", "decimal_comma", "true", "true"},
                 {"rodt_style", "decimal_comma", "YES", "true"},
                 {"rodt_style", "decimal_comma", "false", "false"},
                 {"rodt_style", "decimal_comma", "no", "false"},
                 {"rodt_axle_finding", "mismatches", "arm-differs,size-differs", "size-differs, arm-differs"},
                 {"rodt_axle_finding", "left", "3", "3"},
                 {"rodt_axle_finding", "left", "", ""}};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        union {
            rodt_finding finding;
            rodt_air_limit limit;
            char bytes[4000];
        } value;
        memset(&value, 0, sizeof value);
        rodt_error error = {.status = RODT_OK};
        if (rodt_record_set_text(record(cases[i].of), &value, cases[i].path, cases[i].text, &error) != RODT_OK)
            fail_msg("%s.%s = %s: %s", cases[i].of, cases[i].path, cases[i].text, error.text);
        assert_string_equal(text_of(cases[i].of, &value, cases[i].path), cases[i].written);
    }
    rodt_axle_finding axle = {.left = 7};
    assert_int_equal(rodt_record_set_text(record("rodt_axle_finding"), &axle, "left", NULL, NULL), RODT_OK);
    assert_true(axle.left == SIZE_MAX);
}

static const char no_member[] = "there is no member to be set at this path";

static const struct {
    const char *of, *path, *text;
    rodt_status status;
    const char *field;
    uint32_t column;
    const char *sentence;
} wrong_texts[] = {
    {"rodt_reading", "released", "two", RODT_E_SYNTAX, "released", 1, "a number was expected here, not t"},
    {"rodt_reading", "released", "-1/8", RODT_E_NEGATIVE, "released", 1, "a reading cannot be below zero"},
    {"rodt_reading", "released", "200",
     RODT_E_IMPLAUSIBLE, "released", 1, "no rod position or stroke is longer than 24 in; is a decimal point lost?"},
    {"rodt_reading", "chamber.size", "30303", RODT_E_SPACE, "size", 0, "at most 3 bytes fit here"},
    {"rodt_reading", "chamber.size", "3\xFF", RODT_E_SYNTAX, "size", 2, "this is not UTF-8"},
    {"rodt_reading", "chamber", "F",
     RODT_E_UNKNOWN_CHAMBER, "chamber", 1,
     "a letter alone can be a bolt-type size or a rated-stroke code: write \"bolt F\""},
    {"rodt_reading", "pressure", "95 in", RODT_E_UNIT, "pressure", 4, "this unit does not fit here"},
    {"rodt_reading", "day", "2021-02-31",
     RODT_E_SYNTAX, "day", 0, "there is no such day in the calendar, or it is not between 1900 and 2199"},
    {"rodt_reading", "day", "05/06/2024",
     RODT_E_AMBIGUOUS, "day", 0, "the numbers can mean 2 days; which comes first, day, month or year?"},
    {"rodt_reading", "drum", "tepid", RODT_E_SYNTAX, "drum", 1, "expected one of: not-recorded, cold, warm, hot"},
    {"rodt_catalogue", "reserved", "1", RODT_E_ARGUMENT, "", 0, no_member},
    {"rodt_reading", "reasons", "at-limit, no such",
     RODT_E_SYNTAX, "reasons", 1,
     "expected one of: over-limit, over-own-limit, at-limit, within-limit, no-movement, readings-swapped, "
     "beyond-rated-stroke, hardly-moved, pressure-low, pressure-high, pressure-not-recorded, …"},
    {"rodt_reading", "reserved", "1", RODT_E_ARGUMENT, "", 0, no_member},
    {"rodt_reading", "nothing", "1", RODT_E_ARGUMENT, "", 0, no_member},
    {"rodt_finding", "rules", "us-fmcsr", RODT_E_ARGUMENT, "", 0, no_member},
    {"rodt_finding", "law_row.limit", "9", RODT_E_ARGUMENT, "", 0, no_member},
    {"rodt_finding", "law_row.published", "9", RODT_E_ARGUMENT, "", 0, no_member},
    {"rodt_finding", "source", "9", RODT_E_ARGUMENT, "", 0, no_member},
    {"rodt_finding", "margin", "-2/16", RODT_E_NEGATIVE, "margin", 1, "a reading cannot be below zero"},
    {"rodt_finding", "margin", "9223372036854775807 1/2",
     RODT_E_IMPLAUSIBLE, "margin", 1, "no rod position or stroke is longer than 24 in; is a decimal point lost?"},
    {"rodt_finding", "margin", "2 1/0", RODT_E_SYNTAX, "margin", 5, "a fraction cannot have zero below its bar"},
    {"rodt_finding", "margin", "2 x",
     RODT_E_SYNTAX, "margin", 3, "in, mm, cm or the end of the text was expected here, not x"},
    {"rodt_finding", "margin", "2 1/x", RODT_E_SYNTAX, "margin", 5, "a digit was expected here, not x"},
    {"rodt_finding", "probability_over", "99999999999999999999",
     RODT_E_RANGE, "probability_over", 1, "there are more digits than a reading can have"},
    {"rodt_finding", "probability_over", "1/2 in",
     RODT_E_SYNTAX, "probability_over", 4, "only a number was expected here"},
    {"rodt_finding", "probability_over", "half",
     RODT_E_SYNTAX, "probability_over", 1, "a number was expected here, not h"},
    {"rodt_source", "document", "49 CFR", RODT_E_ARGUMENT, "", 0, no_member},
    {"rodt_wheel_end", "reading", "30", RODT_E_ARGUMENT, "", 0, no_member},
    {"rodt_air_reading", "seconds", "1 minute", RODT_E_SYNTAX, "seconds", 2, "only a number was expected here"},
    {"rodt_air_reading", "towed_units", "40000", RODT_E_RANGE, "towed_units", 1, "this number does not fit"},
    {"rodt_air_reading", "towed_units", "99999999999999999999",
     RODT_E_RANGE, "towed_units", 1, "this number does not fit"},
    {"rodt_air_reading", "towed_units", "2+", RODT_E_SYNTAX, "towed_units", 1, "a whole number was expected here"},
    {"rodt_air_reading", "towed_units", "2x", RODT_E_SYNTAX, "towed_units", 1, "a whole number was expected here"},
    {"rodt_air_reading", "towed_units", "-", RODT_E_SYNTAX, "towed_units", 1, "a whole number was expected here"},
    {"rodt_tally", "full", "-1", RODT_E_NEGATIVE, "full", 1, "this cannot be below zero"},
    {"rodt_tally", "full", "4294967296", RODT_E_RANGE, "full", 1, "this number does not fit"},
    {"rodt_style", "decimal_comma", "perhaps", RODT_E_SYNTAX, "decimal_comma", 1, "expected true or false"},
    {"rodt_reading", "chamber.size", "3030", RODT_E_SPACE, "size", 0, "at most 3 bytes fit here"},
    {"rodt_reading", "released", "31/8 mm",
     RODT_E_SYNTAX, "released", 1, "no metric tape has fractions; write inches (2 1/8 in) or a decimal (54.0 mm)"},
    {"rodt_wheel_end", "arm_length", "31/8",
     RODT_E_AMBIGUOUS, "arm_length", 1, "a blank may be lost here: write 2 1/4, not 21/4"},
    {"rodt_candidate", "limit", "31/8",
     RODT_E_AMBIGUOUS, "limit", 1, "a blank may be lost here: write 2 1/4, not 21/4"},
    {"rodt_air_reading", "built", "05/06/1998",
     RODT_E_AMBIGUOUS, "built", 0, "the numbers can mean 2 days; which comes first, day, month or year?"},
    {"rodt_air_reading", "towed_units", "2:", RODT_E_SYNTAX, "towed_units", 1, "a whole number was expected here"},
    {"rodt_air_reading", "towed_units", "2/", RODT_E_SYNTAX, "towed_units", 1, "a whole number was expected here"},
    {"rodt_air_reading", "towed_units", "10000000000000000000000",
     RODT_E_RANGE, "towed_units", 1, "this number does not fit"},
    {"rodt_air_reading", "towed_units", "99999999999999999999:",
     RODT_E_SYNTAX, "towed_units", 1, "a whole number was expected here"},
    {"rodt_ratio", "num", "9223372036854775808", RODT_E_RANGE, "num", 1, "this number does not fit"},
    {"rodt_ratio", "num", "99999999999999999999", RODT_E_RANGE, "num", 1, "this number does not fit"},
    {"rodt_finding", "probability_over", "0,5",
     RODT_E_SYNTAX, "probability_over", 2, "only a number was expected here"},
    {"rodt_finding", "probability_over", ",5", RODT_E_AMBIGUOUS, "probability_over", 1,
     "a comma can part decimals or thousands; write a point, or set the decimal comma"},
    {"rodt_air_reading", "check", "no such", RODT_E_SYNTAX, "check", 1,
     "expected one of: none, warning, build-up, cut-out, cut-in, loss-released, loss-applied, reserve, spring-brake, "
     "tractor-protection, supply-valve, parking-valve, drain, audible-leak, …"},
    {"rodt_column_in", "released", "1", RODT_E_ARGUMENT, "", 0, no_member}};

static void wrong_texts_change_nothing(void **state)
{
    (void)state;
    for (size_t i = 0; i < COUNT_OF(wrong_texts); i++) {
        union {
            rodt_finding finding;
            rodt_reading reading;
            char bytes[4000];
        } value, kept;
        rodt_error error = {.status = RODT_OK};
        memset(&value, 0, sizeof value);
        if (strcmp(wrong_texts[i].of, "rodt_finding") == 0)
            value.finding = finding_of("30L", "2 1/8", "4 3/4");
        kept = value;
        if (rodt_record_set_text(record(wrong_texts[i].of), &value, wrong_texts[i].path, wrong_texts[i].text, &error) != wrong_texts[i].status)
            fail_msg("%s.%s = %s: %d %s", wrong_texts[i].of, wrong_texts[i].path, wrong_texts[i].text, (int)error.status, error.text);
        assert_int_equal(error.status, wrong_texts[i].status);
        assert_string_equal(error.field, wrong_texts[i].field);
        assert_int_equal(error.column, wrong_texts[i].column);
        assert_string_equal(error.text, wrong_texts[i].sentence);
        assert_memory_equal(&value, &kept, sizeof value);
        assert_int_equal(rodt_record_set_text(record(wrong_texts[i].of), &value, wrong_texts[i].path, wrong_texts[i].text, NULL),
                         wrong_texts[i].status);
    }
    rodt_reading reading = {.reasons = 0};
    assert_int_equal(rodt_record_set_text(NULL, &reading, "drum", "hot", NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_record_set_text(record("rodt_reading"), NULL, "drum", "hot", NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_record_set_text(record("rodt_reading"), &reading, NULL, "hot", NULL), RODT_E_ARGUMENT);
}

/* As rodt_air_form_parse makes it from "1998"; a day of anything else needs its month. */
static void a_day_of_build_may_be_a_year(void **state)
{
    (void)state;
    const rodt_record *of = record("rodt_air_reading");
    rodt_air_reading reading = {.built = {0, 0, 0}};
    rodt_air_form form = {.check = "cut-out", .built = "1998", .pressure = "125"};
    rodt_air_finding finding = {.result = RODT_AIR_RESULT_UNDETERMINED};
    rodt_reading stroke = {.reasons = 0};
    char json[4000];
    assert_int_equal(rodt_air_form_parse(&form, &finding.reading, NULL), RODT_OK);
    assert_string_equal(text_of("rodt_air_finding", &finding, "reading.built"), "1998");
    assert_int_equal(rodt_record_set_text(of, &reading, "built", "1998", NULL), RODT_OK);
    assert_memory_equal(&reading.built, &finding.reading.built, sizeof reading.built);
    assert_int_equal(rodt_record_json_format(of, &reading, 0, json, sizeof json, NULL), RODT_OK);
    assert_non_null(strstr(json, "\"built\": \"1998\""));
    assert_int_equal(rodt_record_set_text(of, &reading, "built", "1998-03-04", NULL), RODT_OK);
    assert_string_equal(text_of("rodt_air_reading", &reading, "built"), "1998-03-04");
    assert_int_equal(rodt_record_set_text(of, &reading, "built", "1899", NULL), RODT_E_SYNTAX);
    assert_int_equal(rodt_record_set_text(record("rodt_reading"), &stroke, "day", "1998", NULL), RODT_E_SYNTAX);
    reading.built = (rodt_date){1899, 0, 0};
    assert_int_equal(rodt_record_text_format(of, &reading, "built", json, sizeof json, NULL), RODT_E_ARGUMENT);
    reading.built = (rodt_date){1998, 3, 0};
    assert_int_equal(rodt_record_text_format(of, &reading, "built", json, sizeof json, NULL), RODT_E_ARGUMENT);
    reading.built = (rodt_date){1998, 0, 4};
    assert_int_equal(rodt_record_text_format(of, &reading, "built", json, sizeof json, NULL), RODT_E_ARGUMENT);
}

/* A long list ends between two words; a short one is whole. */
static void a_list_of_words_is_cut_between_words(void **state)
{
    (void)state;
    rodt_reading reading = {.reasons = 0};
    rodt_error error;
    assert_int_equal(rodt_record_set_text(record("rodt_reading"), &reading, "reasons", "no such", &error),
                     RODT_E_SYNTAX);
    const char *end = strstr(error.text, ", …");
    assert_non_null(end);
    assert_string_equal(end, ", …");
    const char *word = end;
    while (word[-1] != ' ')
        word--;
    rodt_reason reason;
    for (reason = (rodt_reason)0; reason < RODT_REASON_END; reason = (rodt_reason)(reason + 1))
        if (strlen(rodt_reason_name(reason)) == (size_t)(end - word) &&
            memcmp(rodt_reason_name(reason), word, (size_t)(end - word)) == 0)
            break;
    assert_true(reason < RODT_REASON_END);
    assert_int_equal(rodt_record_set_text(record("rodt_reading"), &reading, "drum", "tepid", &error), RODT_E_SYNTAX);
    assert_null(strstr(error.text, "…"));
}

/* What is written is read back to the same value: a stored finding is restored member by member. */
static void what_is_written_is_read_back(void **state)
{
    (void)state;
    static const char *const strokes[][2] = {{"2 1/8", "4 3/4"}, {"54 mm", "120.5 mm"}, {"2", "2"}, {".875", "4.001"}};
    const rodt_record *of = record("rodt_finding");
    for (size_t i = 0; i < COUNT_OF(strokes); i++) {
        rodt_finding finding = finding_of("24L", strokes[i][0], strokes[i][1]);
        for (size_t k = 0; k < rodt_member_count(of); k++) {
            const rodt_member *member = rodt_member_at(of, k);
            rodt_finding other;
            char text[400];
            memset(&other, 0, sizeof other);
            if (rodt_record_text_format(of, &finding, member->name, text, sizeof text, NULL) != RODT_OK ||
                member->kind == RODT_MEMBER_KIND_RULES)
                continue;
            assert_int_equal(rodt_record_set_text(of, &other, member->name, text, NULL), RODT_OK);
            if (memcmp((char *)&other + member->offset, (char *)&finding + member->offset, member->size) != 0)
                fail_msg("%s: %s", member->name, text);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(lists_are_complete),           cmocka_unit_test(members_fill_their_record),
        cmocka_unit_test(kinds_have_words),             cmocka_unit_test(members_are_found_by_headings), cmocka_unit_test(every_field_is_a_path),
                                       cmocka_unit_test(values_are_written),
        cmocka_unit_test(paths_that_lead_nowhere),      cmocka_unit_test(elements_of_a_long_array),
        cmocka_unit_test(texts_that_cannot_be_written),
        cmocka_unit_test(a_form_is_set_by_headings),    cmocka_unit_test(values_are_set_by_their_readers),
        cmocka_unit_test(a_lost_blank_sets_two_values), cmocka_unit_test(each_kind_is_set),
        cmocka_unit_test(wrong_texts_change_nothing),   cmocka_unit_test(what_is_written_is_read_back),
        cmocka_unit_test(a_day_of_build_may_be_a_year), cmocka_unit_test(a_list_of_words_is_cut_between_words)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
