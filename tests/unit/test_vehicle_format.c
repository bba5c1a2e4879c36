/* SPDX-License-Identifier: Apache-2.0 */
/* The vehicle in words: the count, each mismatch of an axle, each advice, and the sources. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <string.h>

#include "rodtravel/rodtravel.h"

#define COUNT_OF(array) (sizeof(array) / sizeof((array)[0]))

static void words_of_the_outcome_are_for_ever(void **state)
{
    (void)state;
    assert_string_equal(rodt_outcome_name(RODT_OUTCOME_UNDETERMINED), "undetermined");
    assert_string_equal(rodt_outcome_name(RODT_OUTCOME_BELOW_CRITERION), "below-criterion");
    assert_string_equal(rodt_outcome_name(RODT_OUTCOME_AMBIGUOUS), "ambiguous");
    assert_string_equal(rodt_outcome_name(RODT_OUTCOME_OUT_OF_SERVICE), "out-of-service");
    assert_string_equal(rodt_outcome_name((rodt_outcome)9), "");
}

static void the_count_in_one_line(void **state)
{
    (void)state;
    static const struct {
        uint32_t brakes, full, half, unknown, said;
        const char *text;
    } cases[] = {
        {10, 2, 0, 0, 0, "2 of 10 brakes defective, 20 %: 20 % is reached"},
        {10, 1, 1, 0, 0, "1 1/2 of 10 brakes defective, 15 %: below 20 %"},
        {10, 0, 0, 0, 0, "0 of 10 brakes defective, 0 %: below 20 %"},
        {6, 1, 1, 0, 0,
         "1 1/2 of 6 brakes defective, 25 %: 20 % is reached, but not the 2 whole brakes of the chart"},
        {2, 0, 1, 0, 0, "1/2 of 2 brakes defective, 25 %: 20 % is reached, but not the 1 whole brake of the chart"},
        {8, 1, 1, 0, 0, "1 1/2 of 8 brakes defective, 18 3/4 %: below 20 %"},
        {6, 1, 0, 0, 0, "1 of 6 brakes defective, 16 2/3 %: below 20 %"},
        {1, 1, 0, 0, 0, "1 of 1 brake defective, 100 %: 20 % is reached"},
        {8, 3, 0, 0, 10,
         "3 of 10 brakes defective, 30 %: 20 % is reached; 2 brakes not checked; of the 8 checked: 37 1/2 %"},
        {10, 1, 0, 1, 0,
         "1 of 10 brakes defective, 10 %: below 20 %; 1 brake not checked; of the 9 checked: 11 1/9 %, at "
         "worst 20 % of all"},
        {10, 0, 0, 1, 0, "0 of 10 brakes defective, 0 %: below 20 %; 1 brake not checked; of the 9 checked: 0 %"},
        {4, 0, 0, 4, 0, "0 of 4 brakes defective, 0 %: below 20 %; 4 brakes not checked, at worst 100 % of all"},
        {0, 0, 0, 0, 0, "no brake was counted"},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_tally tally = {cases[i].brakes, cases[i].full, cases[i].half, cases[i].unknown, 0, {0}};
        rodt_count count;
        char text[RODT_SENTENCE_SIZE], kept[8] = "kept";
        assert_int_equal(rodt_tally_judge(&tally, cases[i].said, &count, NULL), RODT_OK);
        assert_int_equal(rodt_count_format(&count, text, sizeof text, NULL), RODT_OK);
        assert_string_equal(text, cases[i].text);
        assert_int_equal(rodt_count_format(&count, kept, sizeof kept, NULL), RODT_E_SPACE);
        assert_string_equal(kept, "kept");
    }
}

static void the_longest_count_fits(void **state)
{
    (void)state;
    rodt_tally tally = {999999997, 1, 3, 99999989, 1, {0}};
    rodt_count count;
    char text[RODT_SENTENCE_SIZE];
    assert_int_equal(rodt_tally_judge(&tally, 999999999, &count, NULL), RODT_OK);
    assert_int_equal(rodt_count_format(&count, text, sizeof text, NULL), RODT_OK);
}

/* A count by hand: what is not given is not said, and no argument of the message has it. */
static void a_count_without_its_shares(void **state)
{
    (void)state;
    const rodt_count count = {.brakes = 4, .unmeasured = 1, .tally = {.brakes = 3, .unknown = 1}, .share = {0, 1}, .defective = {0, 1},
                              .criterion = {1, 5}, .outcome = RODT_OUTCOME_BELOW_CRITERION};
    char text[RODT_SENTENCE_SIZE];
    rodt_message message;
    assert_int_equal(rodt_count_format(&count, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, "0 of 4 brakes defective, 0 %: below 20 %; 2 brakes not checked");
    assert_int_equal(rodt_count_message(&count, &message), RODT_OK);
    const rodt_argument *known = rodt_message_argument(&message, "known_share");
    assert_true(known->number.num == 0 && known->number.den == 0);
    assert_int_equal(rodt_message_argument(&message, "known")->number.num, 2);
    assert_int_equal(rodt_count_message(&(rodt_count){.brakes = 4, .share = {0, 1}}, &message), RODT_OK);
    assert_null(rodt_message_argument(&message, "open")); /* every brake is known */
    assert_int_equal(rodt_count_message(&(rodt_count){.brakes = 0}, &message), RODT_OK);
    assert_int_equal(message.count, 0);
}

static void each_mismatch_of_an_axle(void **state)
{
    (void)state;
    static const struct {
        uint32_t bit;
        const char *text;
    } cases[] = {
        {RODT_AXLE_MISMATCH_SIZE_DIFFERS, "axle 2: the chambers differ in size; both ends of an axle must have the same (49 CFR "
                                 "Part 393, 393.47(b))"},
        {RODT_AXLE_MISMATCH_SPRING_DIFFERS, "axle 2: the spring brake chambers differ in size; both ends of an axle must have "
                                   "the same (49 CFR Part 393, 393.47(b))"},
        {RODT_AXLE_MISMATCH_FAMILY_DIFFERS,
         "axle 2: the housings are of different kinds: look whether one was identified wrongly"},
        {RODT_AXLE_MISMATCH_CLASS_DIFFERS,
         "axle 2: one chamber is judged as long stroke and one as standard: look at the marks of both"},
        {RODT_AXLE_MISMATCH_ARM_DIFFERS, "axle 2: the arms of the slack adjusters differ in length; both ends of an axle must "
                                "have the same (49 CFR Part 393, 393.47(c))"},
        {RODT_AXLE_MISMATCH_STROKES_DIFFER,
         "axle 2: the strokes differ by 5/8 in: no law has a figure for it; look for the cause"},
        {RODT_AXLE_MISMATCH_TORQUE_DIFFERS, "axle 2: type number x arm length is 165 left and 180 right: the ends do not brake "
                                   "alike (information)"},
        {RODT_AXLE_MISMATCH_END_MISSING, "axle 2: the right end was not given, so nothing is known of it"},
        {RODT_AXLE_MISMATCH_STEERING_DEAD,
         "axle 2: a brake does not work: if this axle steers, the vehicle is out of service by that alone (North "
         "American Standard Out-of-Service Criteria, steering-axle brakes; second-hand, unconfirmed)"},
    };
    rodt_axle_finding axle = {.axle = 2, .left = 0, .right = SIZE_MAX, .stroke_difference = {5, 8},
                              .al_left = {165, 1}, .al_right = {180, 1}};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        char text[RODT_SENTENCE_SIZE], kept[8] = "kept";
        axle.mismatches = ~cases[i].bit;
        assert_int_equal(rodt_axle_mismatch_format(&axle, cases[i].bit, kept, sizeof kept, NULL), RODT_E_ARGUMENT);
        axle.mismatches = cases[i].bit;
        assert_int_equal(rodt_axle_mismatch_format(&axle, cases[i].bit, text, sizeof text, NULL), RODT_OK);
        assert_string_equal(text, cases[i].text);
        assert_int_equal(rodt_axle_mismatch_format(&axle, cases[i].bit, kept, sizeof kept, NULL), RODT_E_SPACE);
        assert_string_equal(kept, "kept");
    }
    char text[RODT_SENTENCE_SIZE];
    rodt_message message;
    axle.left = SIZE_MAX;
    axle.mismatches = RODT_AXLE_MISMATCH_END_MISSING;
    assert_int_equal(rodt_axle_mismatch_format(&axle, axle.mismatches, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, "axle 2: the left end was not given, so nothing is known of it");
    assert_int_equal(rodt_axle_mismatch_message(&axle, axle.mismatches, &message), RODT_OK);
    assert_int_equal(rodt_message_argument(&message, "evidence")->code, RODT_MESSAGE_EVIDENCE_NONE);
}

static void wrong_bits(void **state)
{
    (void)state;
    rodt_axle_finding axle = {.axle = 2, .mismatches = UINT32_MAX};
    char text[RODT_SENTENCE_SIZE];
    static const uint32_t wrong[] = {0, 3, RODT_AXLE_MISMATCH_LAW, RODT_AXLE_MISMATCH_STEERING_DEAD << 1, 1u << 31};
    rodt_message message;
    for (size_t i = 0; i < COUNT_OF(wrong); i++) {
        assert_int_equal(rodt_axle_mismatch_format(&axle, wrong[i], text, sizeof text, NULL), RODT_E_ARGUMENT);
        assert_int_equal(rodt_axle_mismatch_message(&axle, wrong[i], &message), RODT_E_ARGUMENT);
    }
    assert_int_equal(rodt_axle_mismatch_format(NULL, 1, text, sizeof text, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_axle_mismatch_format(&axle, 1, NULL, 1, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_count_format(NULL, text, sizeof text, NULL), RODT_E_ARGUMENT);
    axle.mismatches = RODT_AXLE_MISMATCH_SIZE_DIFFERS;
    assert_int_equal(rodt_axle_mismatch_message(&axle, RODT_AXLE_MISMATCH_SIZE_DIFFERS, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_axle_mismatch_message(&axle, RODT_AXLE_MISMATCH_SIZE_DIFFERS, &message), RODT_OK);
    /* No outcome is said of a count that has none. */
    rodt_count count = {.brakes = 4, .share = {1, 2}, .outcome = RODT_OUTCOME_OUT_OF_SERVICE};
    assert_int_equal(rodt_count_message(&count, &message), RODT_OK);
    assert_int_equal(rodt_count_message(&count, NULL), RODT_E_ARGUMENT);
    count.outcome = (rodt_outcome)RODT_OUTCOME_END;
    assert_int_equal(rodt_count_message(&count, &message), RODT_E_ARGUMENT);
}

static void each_advice_says_something_of_its_own(void **state)
{
    (void)state;
    rodt_message message;
    assert_string_equal(rodt_advice_text(RODT_ADVICE_NONE), "");
    assert_string_equal(rodt_advice_text((rodt_advice)99), "");
    for (int i = RODT_ADVICE_ADJUST; i < RODT_ADVICE_END; i++) {
        const char *text = rodt_advice_text((rodt_advice)i);
        assert_in_range(strlen(text), 10, RODT_SENTENCE_SIZE - 1);
        for (int k = RODT_ADVICE_ADJUST; k < i; k++)
            assert_string_not_equal(text, rodt_advice_text((rodt_advice)k));
        assert_int_equal(rodt_advice_message((rodt_advice)i, &message), RODT_OK);
        assert_string_equal(rodt_message_template(message.code), text);
    }
    assert_non_null(strstr(rodt_advice_text(RODT_ADVICE_FIND_FAULT), "do not adjust it by hand to make it pass"));
    assert_null(strstr(rodt_advice_text(RODT_ADVICE_ADJUST), "automatic"));
    assert_int_equal(rodt_advice_message((rodt_advice)99, &message), RODT_OK);
    assert_int_equal(message.code, RODT_MESSAGE_NONE);
}

/* Only the share is read in its source; whoever prints the others must say so. */
static void sources_and_how_they_were_checked(void **state)
{
    (void)state;
    static const rodt_evidence expected[RODT_COUNT_PART_END] = {
        RODT_EVIDENCE_CHECKED, RODT_EVIDENCE_SECOND_HAND, RODT_EVIDENCE_SECOND_HAND, RODT_EVIDENCE_FROM_MEMORY,
        RODT_EVIDENCE_SECOND_HAND};
    RODT_ENUM32(rodt_evidence) evidence;
    for (int i = 0; i < RODT_COUNT_PART_END; i++) {
        const rodt_count_part part = (rodt_count_part)i;
        const char *word = rodt_count_part_name(part);
        RODT_ENUM32(rodt_count_part) same = RODT_COUNT_PART_END;
        assert_int_equal(rodt_count_part_find(word, &same), RODT_OK);
        assert_int_equal(same, part);
        assert_non_null(rodt_count_part_source(part, NULL));
        assert_non_null(rodt_count_part_source(part, &evidence));
        assert_int_equal(evidence, expected[part]);
        assert_string_not_equal(rodt_count_part_text(part), "");
    }
    assert_null(rodt_count_part_source((rodt_count_part)RODT_COUNT_PART_END, &evidence));
    assert_string_equal(rodt_count_part_text((rodt_count_part)RODT_COUNT_PART_END), "");
    assert_non_null(strstr(rodt_count_part_text(RODT_COUNT_PART_SHARE), "equal to or greater than 20 percent"));
    assert_string_equal(rodt_axle_mismatch_source(RODT_AXLE_MISMATCH_SIZE_DIFFERS, &evidence)->section, "393.47(b)");
    assert_int_equal(evidence, RODT_EVIDENCE_CHECKED);
    assert_string_equal(rodt_axle_mismatch_source(RODT_AXLE_MISMATCH_ARM_DIFFERS, &evidence)->section, "393.47(c)");
    assert_null(rodt_axle_mismatch_source(RODT_AXLE_MISMATCH_STROKES_DIFFER, &evidence));
    assert_null(rodt_axle_mismatch_source(0, NULL));
    assert_ptr_equal(rodt_axle_mismatch_source(RODT_AXLE_MISMATCH_STEERING_DEAD, NULL), rodt_count_part_source(RODT_COUNT_PART_STEERING, NULL));
    assert_string_equal(rodt_advice_source(RODT_ADVICE_FIND_FAULT, &evidence)->body,
                        "National Transportation Safety Board");
    assert_null(rodt_advice_source(RODT_ADVICE_ADJUST, &evidence));
    assert_ptr_equal(rodt_advice_source(RODT_ADVICE_FIND_ADJUSTER, NULL), rodt_advice_source(RODT_ADVICE_FIND_FAULT, NULL));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(words_of_the_outcome_are_for_ever),
        cmocka_unit_test(the_count_in_one_line),
        cmocka_unit_test(the_longest_count_fits),
        cmocka_unit_test(a_count_without_its_shares),
        cmocka_unit_test(each_mismatch_of_an_axle),
        cmocka_unit_test(wrong_bits),
        cmocka_unit_test(each_advice_says_something_of_its_own),
        cmocka_unit_test(sources_and_how_they_were_checked),
    };
    return cmocka_run_group_tests_name("vehicle_format", tests, NULL, NULL);
}
