/* SPDX-License-Identifier: Apache-2.0 */
/* Words of every enumeration: each is found again, by its own function and by the table; what is none is not. */
#include "air/words.h"
#include "chamber/words.h"
#include "column/words.h"
#include "core/words.h"
#include "describe/words.h"
#include "identify/words.h"
#include "judge/words.h"
#include "message/words.h"
#include "quantity/words.h"
#include "rules/words.h"
#include "vehicle/words.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

/* Some number that no enumerator has. */
#define NO_NUMBER 0x7777

/* A program that knows the word must get the number back, in any capitals and between blanks. */
#define CHECK(type, name, find, table)                                                                        \
    do {                                                                                                     \
        type found = (type)NO_NUMBER;                                                                        \
        assert_string_equal(name((type)NO_NUMBER), "");                                                      \
        assert_int_equal(find("no such word", &found), RODT_E_SYNTAX);                                       \
        assert_int_equal(find(NULL, &found), RODT_E_ARGUMENT);                                               \
        assert_int_equal((int)found, NO_NUMBER);                                                             \
        for (size_t i = 0; i < rodt_enumerator_count(&table); i++) {                                         \
            const rodt_enumerator *row = rodt_enumerator_at(&table, i);                                      \
            check_row(&table, row);                                                                          \
            assert_string_equal(name((type)row->number), row->word);                                         \
            assert_int_equal(find(row->word, &found), RODT_OK);                                              \
            assert_int_equal((int)found, row->number);                                                       \
            assert_int_equal(find(row->word, NULL), RODT_E_ARGUMENT);                                        \
        }                                                                                                    \
    } while (0)

/* A symbol ends with its word. */
static void check_symbol(const rodt_enumerator *row)
{
    size_t size = strlen(row->symbol), length = strlen(row->word);
    for (size_t i = 1; i <= length; i++) {
        char sign = row->word[length - i], expected = (char)(sign >= 'a' && sign <= 'z' ? sign - 32 : sign);
        if (i >= size || row->symbol[size - i] != (sign == '-' || sign == '.' ? '_' : expected))
            fail_msg("%s is not %s", row->symbol, row->word);
    }
}

static void check_row(const rodt_enumeration *table, const rodt_enumerator *row)
{
    char loud[64] = "  ";
    assert_string_not_equal(row->word, "");
    assert_non_null(row->text);
    assert_int_equal(strncmp(row->symbol, "RODT_", 5), 0);
    assert_ptr_equal(rodt_enumerator_of(table, row->number), row);
    check_symbol(row);
    for (size_t i = 0; row->word[i] != '\0'; i++)
        loud[i + 2] = (char)(row->word[i] >= 'a' && row->word[i] <= 'z' ? row->word[i] - 32 : row->word[i]);
    strcat(loud, " \n");
    assert_ptr_equal(rodt_enumerator_find(table, loud), row);
    assert_ptr_equal(rodt_enumerator_find_n(table, loud, strlen(loud)), row);
}

static void words_are_found_again(void **state)
{
    (void)state;
    CHECK(rodt_message_code, rodt_message_code_name, rodt_message_code_find, rodti_words_message_code);
    CHECK(rodt_argument_kind, rodt_argument_kind_name, rodt_argument_kind_find, rodti_words_argument_kind);
    CHECK(rodt_plural_rule, rodt_plural_rule_name, rodt_plural_rule_find, rodti_words_plural_rule);
    CHECK(rodt_pressure_unit, rodt_pressure_unit_name, rodt_pressure_unit_find, rodti_words_pressure_unit);
    CHECK(rodt_adjuster, rodt_adjuster_name, rodt_adjuster_find, rodti_words_adjuster);
    CHECK(rodt_advice, rodt_advice_name, rodt_advice_find, rodti_words_advice);
    CHECK(rodt_air_check, rodt_air_check_name, rodt_air_check_find, rodti_words_air_check);
    CHECK(rodt_air_kind, rodt_air_kind_name, rodt_air_kind_find, rodti_words_air_kind);
    CHECK(rodt_air_measure, rodt_air_measure_name, rodt_air_measure_find, rodti_words_air_measure);
    CHECK(rodt_air_missing, rodt_air_missing_name, rodt_air_missing_find, rodti_words_air_missing);
    CHECK(rodt_air_result, rodt_air_result_name, rodt_air_result_find, rodti_words_air_result);
    CHECK(rodt_air_span, rodt_air_span_name, rodt_air_span_find, rodti_words_air_span);
    CHECK(rodt_axle_mismatch, rodt_axle_mismatch_name, rodt_axle_mismatch_find, rodti_words_axle_mismatch);
    CHECK(rodt_basis, rodt_basis_name, rodt_basis_find, rodti_words_basis);
    CHECK(rodt_clue, rodt_clue_name, rodt_clue_find, rodti_words_clue);
    CHECK(rodt_column_flag, rodt_column_flag_name, rodt_column_flag_find, rodti_words_column_flag);
    CHECK(rodt_comparison, rodt_comparison_name, rodt_comparison_find, rodti_words_comparison);
    CHECK(rodt_count_part, rodt_count_part_name, rodt_count_part_find, rodti_words_count_part);
    CHECK(rodt_date_order, rodt_date_order_name, rodt_date_order_find, rodti_words_date_order);
    CHECK(rodt_defect, rodt_defect_name, rodt_defect_find, rodti_words_defect);
    CHECK(rodt_drum, rodt_drum_name, rodt_drum_find, rodti_words_drum);
    CHECK(rodt_evidence, rodt_evidence_name, rodt_evidence_find, rodti_words_evidence);
    CHECK(rodt_family, rodt_family_name, rodt_family_find, rodti_words_family);
    CHECK(rodt_json_option, rodt_json_option_name, rodt_json_option_find, rodti_words_json_option);
    CHECK(rodt_member_kind, rodt_member_kind_name, rodt_member_kind_find, rodti_words_member_kind);
    CHECK(rodt_observation, rodt_observation_name, rodt_observation_find, rodti_words_observation);
    CHECK(rodt_outcome, rodt_outcome_name, rodt_outcome_find, rodti_words_outcome);
    CHECK(rodt_port, rodt_port_name, rodt_port_find, rodti_words_port);
    CHECK(rodt_proof, rodt_proof_name, rodt_proof_find, rodti_words_proof);
    CHECK(rodt_reason, rodt_reason_name, rodt_reason_find, rodti_words_reason);
    CHECK(rodt_recorded, rodt_recorded_name, rodt_recorded_find, rodti_words_recorded);
    CHECK(rodt_rounding, rodt_rounding_name, rodt_rounding_find, rodti_words_rounding);
    CHECK(rodt_side, rodt_side_name, rodt_side_find, rodti_words_side);
    CHECK(rodt_status, rodt_status_name, rodt_status_find, rodti_words_status);
    CHECK(rodt_step, rodt_step_name, rodt_step_find, rodti_words_step);
    CHECK(rodt_step_part, rodt_step_part_name, rodt_step_part_find, rodti_words_step_part);
    CHECK(rodt_stroke_class, rodt_stroke_class_name, rodt_stroke_class_find, rodti_words_stroke_class);
    CHECK(rodt_tag, rodt_tag_name, rodt_tag_find, rodti_words_tag);
    CHECK(rodt_text_layout, rodt_text_layout_name, rodt_text_layout_find, rodti_words_text_layout);
    CHECK(rodt_unit, rodt_unit_name, rodt_unit_find, rodti_words_unit);
    CHECK(rodt_vehicle_class, rodt_vehicle_class_name, rodt_vehicle_class_find, rodti_words_vehicle_class);
    CHECK(rodt_verdict, rodt_verdict_name, rodt_verdict_find, rodti_words_verdict);
}

static void a_table_can_be_asked_anything(void **state)
{
    (void)state;
    assert_string_equal(rodt_enumeration_name(&rodti_words_status), "rodt_status");
    assert_string_equal(rodt_enumeration_name(NULL), "");
    assert_false(rodt_enumeration_is_bits(&rodti_words_status));
    assert_false(rodt_enumeration_is_bits(&rodti_words_message_code));
    assert_true(rodt_enumeration_is_bits(&rodti_words_clue));
    assert_false(rodt_enumeration_is_bits(NULL));
    assert_int_equal(rodt_enumerator_count(NULL), 0);
    assert_null(rodt_enumerator_at(NULL, 0));
    assert_null(rodt_enumerator_at(&rodti_words_clue, 6));
    assert_null(rodt_enumerator_of(NULL, 0));
    assert_null(rodt_enumerator_of(&rodti_words_status, -1));
    assert_null(rodt_enumerator_of(&rodti_words_status, INT64_MAX));
    assert_null(rodt_enumerator_find(NULL, "ok"));
    assert_null(rodt_enumerator_find(&rodti_words_status, ""));
    assert_null(rodt_enumerator_find(&rodti_words_status, "okay"));
}

/* What is no evidence was not read. */
static void texts_of_what_is_none(void **state)
{
    (void)state;
    assert_string_equal(rodt_evidence_text((rodt_evidence)NO_NUMBER), rodt_evidence_text(RODT_EVIDENCE_FROM_MEMORY));
    assert_string_equal(rodt_air_check_title((rodt_air_check)NO_NUMBER), "");
    assert_string_equal(rodt_air_check_title(RODT_AIR_CHECK_DRAIN), "drain valves");
}

/* Rows with a gap between their numbers, one without a number that counts, and one behind the end. */
static void rows_are_counted(void **state)
{
    (void)state;
    static const rodt_enumerator rows[] = {
        {0, "A", "a", "first"}, {1, "B", "b", "second"}, {5, "C", "c", "third"}, {6, "D", "d", "fourth"}};
    const rodt_enumeration table = {.name = "t", .list = rows, .count = 3};
    for (int64_t number = -2; number < 9; number++) {
        size_t at = number == 5 ? 2 : (size_t)number;
        const rodt_enumerator *wanted = number == 0 || number == 1 || number == 5 ? &rows[at] : NULL;
        assert_ptr_equal(rodt_enumerator_of(&table, number), wanted);
        assert_string_equal(rodti_word_of(&table, number), wanted != NULL ? wanted->word : "");
        assert_string_equal(rodti_text_of(&table, number), wanted != NULL ? wanted->text : "");
    }
    assert_ptr_equal(rodt_enumerator_at(&table, 2), &rows[2]);
    assert_null(rodt_enumerator_at(&table, 3));
    assert_ptr_equal(rodt_enumerator_find(&table, "c"), &rows[2]);
    assert_null(rodt_enumerator_find(&table, "d"));
    assert_ptr_equal(rodt_enumerator_find_n(&table, "bad", 1), &rows[1]);
    assert_null(rodt_enumerator_find_n(&table, NULL, 1));
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(words_are_found_again),
                                       cmocka_unit_test(a_table_can_be_asked_anything),
                                       cmocka_unit_test(texts_of_what_is_none),
                                       cmocka_unit_test(rows_are_counted)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
