/* SPDX-License-Identifier: Apache-2.0 */
/* A fraction whose blank may be lost is noticed on every way by which a text becomes a length that is judged. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <stdio.h>
#include <string.h>

#include <rodtravel/rodtravel.h>

/* Clamp 30, limit 2: the values of each text give different verdicts, but those of the last two. */
static const struct {
    const char *released;
    const char *applied;
    bool lost;
} readings[] = {{"31/8", "5 1/4", true}, {"2 1/4", "41/8", true}, {"113/16", "4", true},
                {"21/8", "41/8", true},  {"2 1/8", "4 1/8", false}, {"2.125", "17/4", false}};

/* --- Ways of a reading ------------------------------------------------------------------------------- */

static void by_form(const char *released, const char *applied, rodt_finding *out)
{
    const rodt_form form = {.chamber = "30", .released = released, .applied = applied};
    assert_int_equal(rodt_form_judge_row(&form, rodt_rules_find("us-fmcsr"), out, NULL), RODT_OK);
}

static void set(const char *name, void *value, const char *path, const char *text)
{
    assert_int_equal(rodt_record_set_text(rodt_record_find(name), value, path, text, NULL), RODT_OK);
}

static void by_paths(const char *released, const char *applied, rodt_finding *out)
{
    rodt_reading reading = {0};
    set("rodt_reading", &reading, "chamber", "30");
    set("rodt_reading", &reading, "released", "113/16"); /* its second values are not left behind */
    set("rodt_reading", &reading, "released", released);
    set("rodt_reading", &reading, "applied", applied);
    assert_int_equal(rodt_reading_judge(&reading, rodt_rules_find("us-fmcsr"), out, NULL), RODT_OK);
}

static void by_paths_of_an_end(const char *released, const char *applied, rodt_finding *out)
{
    rodt_wheel_end end = {0};
    set("rodt_wheel_end", &end, "reading.chamber", "30");
    set("rodt_wheel_end", &end, "reading.released", released);
    set("rodt_wheel_end", &end, "reading.applied", applied);
    assert_int_equal(rodt_reading_judge(&end.reading, rodt_rules_find("us-fmcsr"), out, NULL), RODT_OK);
}

/* A record that is written and read again, member by member in the order of its JSON. */
static void by_texts_of_a_record(const char *released, const char *applied, rodt_finding *out)
{
    static const char *const paths[] = {"chamber", "released", "applied", "other_released[0]", "other_released[1]",
                                        "other_applied[0]", "other_applied[1]"};
    const rodt_form form = {.chamber = "30", .released = released, .applied = applied};
    rodt_reading reading, again = {0};
    char text[RODT_CHAMBER_TEXT_SIZE + RODT_LENGTH_TEXT_SIZE];
    assert_int_equal(rodt_form_parse(&form, &reading, NULL), RODT_OK);
    for (size_t i = 0; i < sizeof paths / sizeof paths[0]; i++) {
        assert_int_equal(rodt_record_text_format(rodt_record_find("rodt_reading"), &reading, paths[i], text, sizeof text,
                                                 NULL), RODT_OK);
        set("rodt_reading", &again, paths[i], text);
    }
    assert_int_equal(rodt_reading_judge(&again, rodt_rules_find("us-fmcsr"), out, NULL), RODT_OK);
}

static rodt_text_cells column_of(rodt_text_span *span, const char *text)
{
    *span = (rodt_text_span){text, strlen(text)};
    return (rodt_text_cells){.layout = RODT_TEXT_LAYOUT_SPANS, .cells = span, .count = 1};
}

static void by_column(const char *released, const char *applied, rodt_finding *out)
{
    int32_t stroke;
    uint64_t reasons;
    uint8_t verdict, flags;
    rodt_text_span spans[3];
    rodt_text_plan *plan = NULL;
    rodt_text_columns in = {0};
    const rodt_column_out to = {.stroke = &stroke, .verdict = &verdict, .reasons = &reasons, .flags = &flags};
    in.field[RODT_FIELD_CHAMBER] = column_of(&spans[0], "30");
    in.field[RODT_FIELD_RELEASED] = column_of(&spans[1], released);
    in.field[RODT_FIELD_APPLIED] = column_of(&spans[2], applied);
    assert_int_equal(rodt_text_plan_new(rodt_rules_find("us-fmcsr"), NULL, &plan, NULL), RODT_OK);
    for (int call = 0; call < 2; call++) /* read, then cached */
        assert_int_equal(rodt_text_plan_judge(plan, &in, 1, &to, NULL), RODT_OK);
    rodt_text_plan_free(plan);
    *out = (rodt_finding){.verdict = verdict, .reasons = reasons};
}

/* Filled by hand, by the reader for that: the text is refused, and there is no reading. */
static void by_hand(const char *released, const char *applied, rodt_finding *out)
{
    rodt_reading reading = {0};
    assert_int_equal(rodt_chamber_parse("30", &reading.chamber, NULL), RODT_OK);
    bool read = rodt_length_parse_strict(released, &reading.released, NULL) == RODT_OK;
    read = rodt_length_parse_strict(applied, &reading.applied, NULL) == RODT_OK && read;
    assert_int_equal(rodt_reading_judge(&reading, rodt_rules_find("us-fmcsr"), out, NULL), RODT_OK);
    if (!read)
        out->reasons |= RODT_REASON_BIT(RODT_REASON_LOST_BLANK);
}

static void readings_are_judged_alike(void **state)
{
    (void)state;
    static void (*const ways[])(const char *, const char *, rodt_finding *) = {
        by_form, by_paths, by_paths_of_an_end, by_texts_of_a_record, by_column, by_hand};
    for (size_t i = 0; i < sizeof readings / sizeof readings[0]; i++) {
        for (size_t way = 0; way < sizeof ways / sizeof ways[0]; way++) {
            rodt_finding finding;
            ways[way](readings[i].released, readings[i].applied, &finding);
            assert_int_equal((finding.reasons & RODT_REASON_BIT(RODT_REASON_LOST_BLANK)) != 0, readings[i].lost);
            if (readings[i].lost)
                assert_int_equal(finding.verdict, RODT_VERDICT_UNDETERMINED);
            else
                assert_int_not_equal(finding.verdict, RODT_VERDICT_UNDETERMINED);
        }
    }
}

/* --- Lengths that have no second value ----------------------------------------------------------------- */

/* Every length of a record that a caller fills, but the readings. */
static void other_lengths_are_refused(void **state)
{
    (void)state;
    size_t refused = 0;
    static union {
        long double aligned;
        char bytes[16384];
    } room;
    for (size_t i = 0; i < rodt_record_count(); i++) {
        const rodt_record *record = rodt_record_at(i);
        bool reading = strcmp(rodt_record_name(record), "rodt_reading") == 0;
        for (size_t k = 0; k < rodt_member_count(record) && rodt_record_is_input(record); k++) {
            const rodt_member *member = rodt_member_at(record, k);
            bool measured = reading && (strcmp(member->name, "released") == 0 || strcmp(member->name, "applied") == 0);
            rodt_error error = {0};
            if (member->kind != RODT_MEMBER_KIND_LENGTH || measured)
                continue;
            memset(&room, 0, sizeof room);
            assert_int_equal(rodt_record_set_text(record, room.bytes, member->name, "21/4", &error), RODT_E_AMBIGUOUS);
            assert_string_equal(error.field, member->name);
            assert_int_equal(rodt_record_set_text(record, room.bytes, member->name, "2 1/4", &error), RODT_OK);
            refused++;
        }
    }
    assert_true(refused >= 6); /* rated stroke, marked limit, arm, diameter ... */
}

static void marks_of_a_form_are_refused(void **state)
{
    (void)state;
    rodt_form form = {.chamber = "20L", .released = "1", .applied = "3", .rated_stroke = "21/4"};
    rodt_finding finding;
    rodt_error error;
    assert_int_equal(rodt_form_judge(&form, rodt_rules_find("us-fmcsr"), &finding, &error), RODT_E_AMBIGUOUS);
    assert_string_equal(error.field, "rated_stroke");
}

static void figures_of_a_table_are_refused(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit\nclamp,30,standard,11/4\n";
    rodt_rules *rules = NULL;
    rodt_error error;
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "yard", table, sizeof table - 1, &rules, &error),
                     RODT_E_TABLE);
    assert_string_equal(error.field, "limit");
    assert_non_null(strstr(error.text, "blank"));
    assert_null(rules);
}

static void the_strict_reader_leaves_its_results(void **state)
{
    (void)state;
    rodt_length length = {1, 8};
    RODT_ENUM32(rodt_unit) unit = RODT_UNIT_CM;
    rodt_error error;
    const rodt_style mm = {.unit = RODT_UNIT_MM};
    assert_int_equal(rodt_length_parse_strict("31/8", &length, NULL), RODT_E_AMBIGUOUS);
    assert_int_equal(rodt_length_parse_strict(NULL, &length, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_parse_strict_n("31/8", 4, NULL, &length, &unit, &error), RODT_E_AMBIGUOUS);
    assert_int_equal(error.column, 1);
    assert_int_equal(rodt_length_parse_strict_n("31/8 in", 7, &mm, &length, &unit, NULL), RODT_E_AMBIGUOUS);
    assert_int_equal(rodt_length_parse_strict_n("x", 1, NULL, &length, &unit, NULL), RODT_E_SYNTAX);
    assert_int_equal(rodt_length_parse_strict_n("2", 1, NULL, NULL, &unit, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_length_parse_strict_n(NULL, 0, NULL, &length, &unit, NULL), RODT_E_ARGUMENT);
    assert_true(length.num == 1 && length.den == 8 && unit == RODT_UNIT_CM);
    assert_int_equal(rodt_length_parse_strict_n("25.4", 4, &mm, &length, &unit, NULL), RODT_OK);
    assert_true(length.num == 1 && length.den == 1 && unit == RODT_UNIT_MM);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(readings_are_judged_alike),     cmocka_unit_test(other_lengths_are_refused),
        cmocka_unit_test(marks_of_a_form_are_refused),   cmocka_unit_test(figures_of_a_table_are_refused),
        cmocka_unit_test(the_strict_reader_leaves_its_results),
    };
    return cmocka_run_group_tests_name("lost_blank", tests, NULL, NULL);
}
