/* SPDX-License-Identifier: Apache-2.0 */
/* A finding in words: codes are stable, sentences carry the right figures, buffers are respected. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <string.h>

#include "rodtravel/rodtravel.h"
#include "rules/tables.h"

static rodt_finding judge(rodt_form text, const char *rules)
{
    rodt_finding finding;
    assert_int_equal(rodt_form_judge_row(&text, rodt_rules_find(rules), &finding, NULL), RODT_OK);
    return finding;
}

static void says(rodt_form text, const char *wanted)
{
    rodt_finding finding = judge(text, "us-fmcsr");
    char sentence[RODT_SENTENCE_SIZE];
    assert_int_equal(rodt_finding_format(&finding, sentence, sizeof sentence, NULL), RODT_OK);
    assert_string_equal(sentence, wanted);
}

static void the_sum_is_one_line(void **state)
{
    (void)state;
    says((rodt_form){.chamber = "20", .released = "3 3/8", .applied = "4 13/16"},
         "3 3/8 to 4 13/16 is 1 7/16; limit 1 3/4; 5/16 to spare");
    says((rodt_form){.chamber = "30", .released = "2 1/8", .applied = "4 1/4"},
         "2 1/8 to 4 1/4 is 2 1/8; limit 2; over by 1/8");
    says((rodt_form){.chamber = "30", .released = "2 1/8", .applied = "4 1/8"},
         "2 1/8 to 4 1/8 is 2; limit 2; exactly at the limit");
    says((rodt_form){.chamber = "30", .released = ".66", .applied = "2.47"},
         "0.66 to 2.47 is 1.81; limit 2; 0.19 to spare");
    says((rodt_form){.chamber = "20", .released = "55 mm", .applied = "101 mm"},
         "55 mm to 101 mm is 46 mm; limit 1 3/4 in (44.45 mm); over by 1.55 mm");
    says((rodt_form){.chamber = "24", .released = "3 in", .applied = "76.2 mm"},
         "76.2 mm to 76.2 mm is 0 mm; limit 1 3/4 in (44.45 mm)");
    says((rodt_form){.chamber = "30", .released = "4 1/8", .applied = "2 1/8"},
         "4 1/8 to 2 1/8 gives no stroke; limit 2");
    says((rodt_form){.chamber = "30", .released = "2-Jan", .applied = ""},
         "(not readable) to (not measured) gives no stroke; limit 2");
    says((rodt_form){.chamber = "18", .released = "2", .applied = "3 1/2"},
         "2 to 3 1/2 is 1 1/2; no limit known");
    says((rodt_form){.chamber = "30", .released = "2", .applied = "x"},
         "2 to (not readable) gives no stroke; limit 2");
    says((rodt_form){.chamber = "18", .released = "2"}, "2 to (not measured) gives no stroke; no limit known");
    says((rodt_form){.chamber = "30", .released = "2", .applied = "3"}, "2 to 3 is 1; limit 2; 1 to spare");
}

/* A released code is a promise: programs compare it. */
static void codes_are_for_ever(void **state)
{
    (void)state;
    static const char *const codes[RODT_REASON_END] = {
        "over-limit", "over-own-limit", "at-limit", "within-limit", "no-movement", "readings-swapped",
        "beyond-rated-stroke", "hardly-moved", [10] = "pressure-low", "pressure-high", "pressure-not-recorded", "engine-running",
        "spring-brake-applied", [20] = "assumed-standard", "assumed-clamp", "conflicting-marks", "no-published-limit",
        "rules-not-in-force", "limit-unconfirmed", "limit-from-rated", "limit-marked", "printed-mm-differs",
        "drum-hot", "limit-common-practice", "major-defect", [32] = "chamber-missing", "released-missing", "applied-missing", [40] = "chamber-unreadable",
        "released-unreadable", "applied-unreadable", "other-unreadable", "spreadsheet-date", "date-ambiguous",
        "date-unreadable", "lost-blank"};
    for (int i = 0; i < RODT_REASON_END; i++)
        assert_string_equal(rodt_reason_name((rodt_reason)i), codes[i] != NULL ? codes[i] : "");
    assert_string_equal(rodt_reason_name(RODT_REASON_END), "");
    assert_string_equal(rodt_reason_name((rodt_reason)-1), "");
    assert_string_equal(rodt_verdict_name(RODT_VERDICT_UNDETERMINED), "undetermined");
    assert_string_equal(rodt_verdict_name(RODT_VERDICT_IN_ADJUSTMENT), "in-adjustment");
    assert_string_equal(rodt_verdict_name(RODT_VERDICT_OUT_OF_ADJUSTMENT), "out-of-adjustment");
    assert_string_equal(rodt_verdict_name(RODT_VERDICT_INOPERATIVE), "inoperative");
    assert_string_equal(rodt_verdict_name((rodt_verdict)99), "");
    assert_string_equal(rodt_proof_name(RODT_PROOF_PROVEN_WITHIN), "proven-within");
    assert_string_equal(rodt_proof_name(RODT_PROOF_PROVEN_OVER), "proven-over");
    assert_string_equal(rodt_proof_name(RODT_PROOF_NOT_RESOLVED), "not-resolved");
    assert_string_equal(rodt_proof_name((rodt_proof)99), "");
}

static void reason_says(const rodt_finding *finding, rodt_reason reason, const char *part)
{
    char sentence[RODT_SENTENCE_SIZE];
    assert_int_equal(rodt_finding_reason_format(finding, reason, sentence, sizeof sentence, NULL), RODT_OK);
    if (strstr(sentence, part) == NULL)
        fail_msg("\"%s\" does not say \"%s\"", sentence, part);
}

static void reads(const rodt_finding *finding, rodt_reason reason, const char *wanted)
{
    char sentence[RODT_SENTENCE_SIZE];
    assert_int_equal(rodt_finding_reason_format(finding, reason, sentence, sizeof sentence, NULL), RODT_OK);
    assert_string_equal(sentence, wanted);
}

/* A law that says "less than". Invented: no such law is in the tables. */
static void a_limit_that_does_not_pass_is_said(void **state)
{
    (void)state;
    static const char sentence[] = "stroke is exactly at the limit: the rule says less than, so it fails";
    struct rodt_rules less_than = *rodt_rules_find("us-fmcsr");
    less_than.at_limit_passes = false;
    const rodt_form form = {.chamber = "30", .released = "2", .applied = "4"};
    rodt_finding finding;
    assert_int_equal(rodt_form_judge(&form, &less_than, &finding, NULL), RODT_OK);
    reads(&finding, RODT_REASON_AT_LIMIT, sentence);
    less_than.limit_count = 1; /* it limits strokes all the same */
    less_than.rated_share = (rodt_ratio){0, 0};
    finding.reasons |= RODT_REASON_BIT(RODT_REASON_NO_PUBLISHED_LIMIT);
    reads(&finding, RODT_REASON_NO_PUBLISHED_LIMIT,
          "no limit is published for this chamber, and no rated stroke or limit marked on it was given");
    finding.reasons = RODT_REASON_BIT(RODT_REASON_OVER_LIMIT); /* over a carrier's limit, and at the law's */
    reads(&finding, RODT_REASON_OVER_LIMIT, sentence);
}

/* What is over a carrier's own limit alone; where the law has none, and where it has one. Invented limits. */
static void an_own_limit_is_said(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit\nclamp,18,standard,1\nclamp,20,standard,1 1/2\n";
    rodt_form form = {.chamber = "clamp 20 standard", .released = "2", .applied = "3 5/8"};
    rodt_finding finding;
    rodt_rules *own;
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "yard", table, sizeof table - 1, &own, NULL), RODT_OK);
    assert_int_equal(rodt_form_judge(&form, own, &finding, NULL), RODT_OK);
    reads(&finding, RODT_REASON_OVER_OWN_LIMIT, "over the carrier's own limit of 1 1/2, within the law's 1 3/4");
    form.chamber = "clamp 18 standard";
    assert_int_equal(rodt_form_judge(&form, own, &finding, NULL), RODT_OK);
    reads(&finding, RODT_REASON_OVER_OWN_LIMIT, "over the carrier's own limit of 1");
    rodt_rules_unref(own);
}

/* A gauge in kPa is said to a tenth. */
static void a_pressure_is_said_as_it_was_read(void **state)
{
    (void)state;
    static const rodt_form form = {.chamber = "30", .released = "2", .applied = "3", .psi = "600.1251 kPa"};
    rodt_finding finding = judge(form, "us-fmcsr");
    rodt_message message;
    reads(&finding, RODT_REASON_PRESSURE_LOW, "too little air: about 600.1 kPa, and the test asks for 90 to 100 psi; a brake "
                                              "that passes here may be bad, one that fails is");
    assert_int_equal(rodt_finding_reason_message(&finding, RODT_REASON_PRESSURE_LOW, &message), RODT_OK);
    assert_int_equal(message.arguments[0].digits, 1);
}

/* A second value that may be meant is an argument only where there is one. */
static void a_lost_blank_has_the_values_that_there_are(void **state)
{
    (void)state;
    rodt_finding finding = judge((rodt_form){.chamber = "30 standard", .released = "11/4", .applied = "4"}, "us-fmcsr");
    rodt_message message;
    assert_int_equal(rodt_finding_reason_message(&finding, RODT_REASON_LOST_BLANK, &message), RODT_OK);
    assert_int_equal(message.count, 3);
    finding = judge((rodt_form){.chamber = "30 standard", .released = "111/16", .applied = "4"}, "us-fmcsr");
    assert_int_equal(rodt_finding_reason_message(&finding, RODT_REASON_LOST_BLANK, &message), RODT_OK);
    assert_int_equal(message.count, 4);
}

/* Filled by hand: no margin, no day a text starts on, no blank that was lost, an excess that does not fit. */
static void a_finding_by_hand_is_said_without_what_it_lacks(void **state)
{
    (void)state;
    rodt_finding finding = {.rules = rodt_rules_find("ca-nsc"), .applied_stroke = {1, 1}, .limit = {2, 1},
                            .long_limit = {5, 2}, .reasons = UINT64_MAX};
    char text[RODT_SENTENCE_SIZE];
    assert_int_equal(rodt_finding_format(&finding, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, "(not readable) to (not readable) is 1; limit 2");
    finding.reasons &= ~RODT_REASON_BIT(RODT_REASON_RELEASED_UNREADABLE);
    assert_int_equal(rodt_finding_format(&finding, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, "(not measured) to (not readable) is 1; limit 2");
    finding.released = finding.applied = (rodt_length){1, 1};
    assert_int_equal(rodt_finding_format(&finding, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, "1 to 1 is 1; limit 2");
    reads(&finding, RODT_REASON_ASSUMED_STANDARD,
          "stroke class not known: judged as standard; long stroke of this size has the limit 2 1/2");
    reads(&finding, RODT_REASON_RULES_NOT_IN_FORCE, "the rule set ca-nsc has no text for the day");
    reads(&finding, RODT_REASON_LOST_BLANK, "released was read as 1, and with a lost blank it is (not measured): the verdict depends on which was meant; "
          "write it with its blank");
    reads(&finding, RODT_REASON_DATE_AMBIGUOUS, "the date can mean two days; the limit can depend on which it is");
    finding.applied_stroke = (rodt_length){INT64_MAX, 1};
    finding.law_limit = (rodt_length){1, 3};
    reads(&finding, RODT_REASON_OVER_LIMIT, "stroke is over the limit by (not measured)");
    rodt_message message;
    assert_int_equal(rodt_finding_reason_message(&finding, RODT_REASON_OVER_LIMIT, &message), RODT_OK);
    assert_int_equal(message.count, 1);
    assert_int_equal(message.arguments[0].number.num, 0);
    assert_int_equal(message.arguments[0].number.den, 0);
}

/* Stored findings come back without the rule set: a sentence that speaks of it is refused, never guessed. */
static void a_finding_without_rules_is_safe(void **state)
{
    (void)state;
    rodt_finding finding = judge((rodt_form){.chamber = "30", .released = "2", .applied = "4"}, "us-fmcsr");
    char sentence[RODT_SENTENCE_SIZE];
    rodt_message message;
    finding.rules = NULL;
    finding.law_row = finding.own_row = NULL;
    finding.source = NULL;
    assert_true(rodt_finding_has(&finding, RODT_REASON_ASSUMED_CLAMP));
    assert_int_equal(rodt_finding_format(&finding, sentence, sizeof sentence, NULL), RODT_OK);
    assert_int_equal(rodt_finding_proof_format(&finding, sentence, sizeof sentence, NULL), RODT_OK);
    assert_int_equal(rodt_finding_json_format(&finding, NULL, 0, sentence, sizeof sentence, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_finding_defect(&finding), RODT_DEFECT_NONE);
    finding.reasons = UINT64_MAX;
    static const uint64_t spoken =
        RODT_REASON_BIT(RODT_REASON_AT_LIMIT) | RODT_REASON_BIT(RODT_REASON_PRESSURE_LOW) |
        RODT_REASON_BIT(RODT_REASON_PRESSURE_HIGH) | RODT_REASON_BIT(RODT_REASON_PRESSURE_NOT_RECORDED) |
        RODT_REASON_BIT(RODT_REASON_ASSUMED_CLAMP) | RODT_REASON_BIT(RODT_REASON_RULES_NOT_IN_FORCE) |
        RODT_REASON_BIT(RODT_REASON_LIMIT_FROM_RATED) | RODT_REASON_BIT(RODT_REASON_PRINTED_MM_DIFFERS) |
        RODT_REASON_BIT(RODT_REASON_DATE_UNREADABLE) | RODT_REASON_BIT(RODT_REASON_MAJOR_DEFECT);
    for (int i = 0; i < RODT_REASON_END; i++) {
        bool refused = rodt_reason_name((rodt_reason)i)[0] == '\0' || (spoken >> i & 1) != 0;
        rodt_status status = refused ? RODT_E_ARGUMENT : RODT_OK;
        assert_int_equal(rodt_finding_reason_format(&finding, (rodt_reason)i, sentence, sizeof sentence, NULL), status);
        assert_int_equal(rodt_finding_reason_message(&finding, (rodt_reason)i, &message), status);
    }
}

/* The law's limit is 1 3/4, the carrier's own 1 1/2: the reason speaks of the law. */
static void an_excess_is_over_the_law(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit\nclamp,20,standard,1 1/2\n";
    const rodt_form over = {.chamber = "20 standard", .released = "2", .applied = "3 13/16"};
    rodt_finding finding;
    rodt_rules *own;
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "yard", table, sizeof table - 1, &own, NULL),
                     RODT_OK);
    assert_int_equal(rodt_form_judge(&over, own, &finding, NULL), RODT_OK);
    reason_says(&finding, RODT_REASON_OVER_LIMIT, "over the limit by 1/16");
    rodt_rules_unref(own);
}

/* A finding that was filled by hand can lack what its reasons speak of, or hold a chamber that no mark has. */
static void a_finding_without_its_facts_is_safe(void **state)
{
    (void)state;
    rodt_finding finding = judge((rodt_form){.chamber = "30", .released = "2", .applied = "4 1/4"}, "us-fmcsr");
    finding.law_limit = (rodt_length){0, 0};
    reason_says(&finding, RODT_REASON_OVER_LIMIT, "stroke is over the limit");
    finding.reasons |= RODT_REASON_BIT(RODT_REASON_MAJOR_DEFECT); /* no text of this rule set ranks defects */
    reason_says(&finding, RODT_REASON_MAJOR_DEFECT, "major defect");
    finding.law_limit = (rodt_length){2, 1};
    reason_says(&finding, RODT_REASON_ASSUMED_CLAMP, "chamber; if yours is bolted or a rotochamber, say so");
    finding.rules = rodt_rules_find("rated-80"); /* four fifths of this do not fit, so there is no limit */
    finding.chamber.rated_stroke = (rodt_length){INT64_MAX, 2};
    reason_says(&finding, RODT_REASON_ASSUMED_CLAMP, "another kind of this size has no limit here");
    /* No other kind has this size; a bolt chamber's letter; a rotochamber with the same limit. */
    finding = judge((rodt_form){.chamber = "6", .released = "2", .applied = "3"}, "us-fmcsr");
    finding.rules = rodt_rules_find("rated-80");
    reads(&finding, RODT_REASON_ASSUMED_CLAMP, "checked as a clamp-band chamber; if yours is bolted or a rotochamber, say so");
    finding = judge((rodt_form){.chamber = "24 standard", .released = "2", .applied = "3"}, "us-fmcsr");
    finding.law_limit = judge((rodt_form){.chamber = "roto 24", .released = "2", .applied = "3"}, "us-fmcsr").law_limit;
    reads(&finding, RODT_REASON_ASSUMED_CLAMP, "checked as a clamp-band chamber; if yours is bolted or a rotochamber, say so");
    strcpy(finding.chamber.size, "C");
    reads(&finding, RODT_REASON_ASSUMED_CLAMP, "checked as a clamp-band chamber; another kind of this size has a smaller "
                                               "limit: if yours is bolted or a rotochamber, say so");
}

static void sentences_carry_their_figures(void **state)
{
    (void)state;
    rodt_finding finding = judge((rodt_form){.chamber = "30", .released = "2", .applied = "4 1/8",
                                                     .psi = "85"}, "us-fmcsr");
    reason_says(&finding, RODT_REASON_OVER_LIMIT, "by 1/8");
    reason_says(&finding, RODT_REASON_PRESSURE_LOW, "too little air: 85 psi, and the test asks for 90 to 100");
    reason_says(&finding, RODT_REASON_ASSUMED_STANDARD, "the limit 2 1/2");
    finding = judge((rodt_form){.chamber = "30", .released = "2", .applied = "4 1/8", .psi = "95",
                                        .psi_after = "102 1/2"}, "us-fmcsr");
    reason_says(&finding, RODT_REASON_PRESSURE_HIGH, "too much air: 102 1/2 psi after the application, and");
    finding = judge((rodt_form){.chamber = "24", .released = "50 mm", .applied = "94.5 mm"}, "us-fmcsr");
    reason_says(&finding, RODT_REASON_PRINTED_MM_DIFFERS, "44.5 mm");
    reason_says(&finding, RODT_REASON_PRESSURE_NOT_RECORDED, "90 to 100 psi");
    finding = judge((rodt_form){.chamber = "30", .released = "2", .applied = "5", .rated_stroke = "2.5"},
                    "us-fmcsr");
    reason_says(&finding, RODT_REASON_BEYOND_RATED_STROKE, "rated stroke of 2 1/2");
    finding = judge((rodt_form){.chamber = "30", .released = "2", .applied = "4", .rated_stroke = "2.5"},
                    "rated-80");
    reason_says(&finding, RODT_REASON_LIMIT_FROM_RATED, "4/5 of the rated stroke of 2 1/2");
    finding = judge((rodt_form){.chamber = "30", .released = "2", .applied = "4", .date = "2011-01-31"},
                    "us-fmcsr");
    reason_says(&finding, RODT_REASON_RULES_NOT_IN_FORCE, "2012-09-05");
    finding = judge((rodt_form){.chamber = "24", .released = "2", .applied = "3 1/2"}, "ca-nsc");
    reason_says(&finding, RODT_REASON_LIMIT_UNCONFIRMED, "unconfirmed");
    reason_says(&finding, RODT_REASON_ASSUMED_CLAMP, "another kind of this size has no limit here");
    finding = judge((rodt_form){.chamber = "30", .stroke_class = "long", .released = "2", .applied = "4"},
                    "us-fmcsr");
    reason_says(&finding, RODT_REASON_ASSUMED_CLAMP, "another kind of this size has a smaller limit");
    finding = judge((rodt_form){.chamber = "30", .released = "2", .applied = "4 1/8"}, "ca-on");
    reason_says(&finding, RODT_REASON_LIMIT_COMMON_PRACTICE, "common practice of the trade, no source");
    reason_says(&finding, RODT_REASON_MAJOR_DEFECT, "a major defect (O. Reg. 199/07");
    finding = judge((rodt_form){.chamber = "30", .released = "2", .applied = "4"}, "us-cdl");
    reason_says(&finding, RODT_REASON_NO_PUBLISHED_LIMIT, "the rule set us-cdl has air checks only");
    finding = judge((rodt_form){.chamber = "18", .released = "2", .applied = "4"}, "us-fmcsr");
    reason_says(&finding, RODT_REASON_NO_PUBLISHED_LIMIT, "no limit is published");
}

/* Every form of a sentence as a whole: what is beside the window, at it, without air; what a mark leaves open; the days
 * and blanks that decide. */
static const struct {
    rodt_form form;
    const char *rules;
    rodt_reason reason;
    const char *sentence;
} cases[] = {
    {{.chamber = "30 standard", .released = "2", .applied = "4"}, "us-fmcsr", RODT_REASON_ASSUMED_CLAMP,
     "checked as a clamp-band chamber; if yours is bolted or a rotochamber, say so"},
    {{.chamber = "30 standard", .released = "2", .applied = "4"}, "us-fmcsr", RODT_REASON_PRESSURE_NOT_RECORDED,
     "reservoir pressure not recorded; the test asks for 90 to 100 psi"},
    {{.chamber = "30 standard", .released = "2", .applied = "4"}, "us-fmcsr", RODT_REASON_AT_LIMIT,
     "stroke is exactly at the limit: the rule says not greater than, so it passes, with nothing to "
     "spare"},
    {{.chamber = "30 standard", .released = "2", .applied = "4", .psi = "85"}, "us-fmcsr", RODT_REASON_PRESSURE_LOW,
     "too little air: 85 psi, and the test asks for 90 to 100; a brake that passes here may be bad, "
     "one that fails is"},
    {{.chamber = "30 standard", .released = "2", .applied = "4", .psi = "600 kPa"}, "us-fmcsr", RODT_REASON_PRESSURE_LOW,
     "too little air: 600 kPa, and the test asks for 90 to 100 psi; a brake that passes here may be "
     "bad, one that fails is"},
    {{.chamber = "30 standard", .released = "2", .applied = "4", .psi = "90", .psi_after = "89"}, "us-fmcsr", RODT_REASON_PRESSURE_LOW,
     "too little air: 89 psi after the application, and the test asks for 90 to 100; a brake that "
     "passes here may be bad, one that fails is"},
    {{.chamber = "30 standard", .released = "2", .applied = "2", .psi = "0"}, "us-fmcsr", RODT_REASON_PRESSURE_LOW,
     "the recorded pressure is 0: without air no rod moves; build up the air and measure again"},
    {{.chamber = "30 standard", .released = "2", .applied = "2", .psi = "0"}, "us-fmcsr", RODT_REASON_NO_MOVEMENT,
     "the rod did not move: look for a broken or seized part, or no air"},
    {{.chamber = "30 standard", .released = "2", .applied = "2", .psi = "95", .psi_after = "0"}, "us-fmcsr", RODT_REASON_PRESSURE_LOW,
     "the recorded pressure is 0: without air no rod moves; build up the air and measure again"},
    {{.chamber = "30 standard", .released = "2", .applied = "4", .psi = "0"}, "us-fmcsr", RODT_REASON_PRESSURE_LOW,
     "too little air: 0 psi, and the test asks for 90 to 100; a brake that passes here may be bad, "
     "one that fails is"},
    {{.chamber = "30 standard", .released = "2", .applied = "2", .psi = "80"}, "us-fmcsr", RODT_REASON_PRESSURE_LOW,
     "too little air: 80 psi, and the test asks for 90 to 100; a brake that passes here may be bad, "
     "one that fails is"},
    {{.chamber = "30 standard", .released = "2", .applied = "4", .psi = "101"}, "us-fmcsr", RODT_REASON_PRESSURE_HIGH,
     "too much air: 101 psi, and the test asks for 90 to 100; a brake that fails here may be good, "
     "one that passes is"},
    {{.chamber = "30 standard", .released = "2", .applied = "4", .psi = "100", .psi_after = "101"}, "us-fmcsr", RODT_REASON_PRESSURE_HIGH,
     "too much air: 101 psi after the application, and the test asks for 90 to 100; a brake that "
     "fails here may be good, one that passes is"},
    {{.chamber = "clamp 36", .released = "2", .applied = "4", .psi = "95"}, "us-fmcsr", RODT_REASON_ASSUMED_STANDARD,
     "stroke class not known: judged as standard"},
    {{.chamber = "clamp 30", .released = "2", .psi = "95"}, "us-fmcsr", RODT_REASON_ASSUMED_STANDARD,
     "stroke class not known: judged as standard; long stroke of this size has the limit 2 1/2"},
    {{.chamber = "clamp 30", .released = "2", .applied = "4", .psi = "95"}, "us-fmcsr", RODT_REASON_ASSUMED_STANDARD,
     "stroke class not known: judged as standard; long stroke of this size has the limit 2 1/2, so "
     "the stroke is within it either way"},
    {{.chamber = "clamp 30", .released = "2", .applied = "4 1/64", .psi = "95"}, "us-fmcsr", RODT_REASON_ASSUMED_STANDARD,
     "stroke class not known: judged as standard; long stroke of this size has the limit 2 1/2 and "
     "the stroke is within that: look for a sign (L or LS in the mark, square ports, trapezoid tag)"},
    {{.chamber = "clamp 30", .released = "2", .applied = "4 1/64", .psi = "95"}, "us-fmcsr", RODT_REASON_OVER_LIMIT,
     "stroke is over the limit by 1/64"},
    {{.chamber = "clamp 30", .released = "2", .applied = "4 1/2", .psi = "95"}, "us-fmcsr", RODT_REASON_ASSUMED_STANDARD,
     "stroke class not known: judged as standard; long stroke of this size has the limit 2 1/2 and "
     "the stroke is within that: look for a sign (L or LS in the mark, square ports, trapezoid tag)"},
    {{.chamber = "clamp 30", .released = "2", .applied = "4 33/64", .psi = "95"}, "us-fmcsr", RODT_REASON_ASSUMED_STANDARD,
     "stroke class not known: judged as standard; long stroke of this size has the limit 2 1/2, so "
     "the stroke is over it either way"},
    {{.chamber = "24", .stroke_class = "standard", .released = "2", .applied = "3", .psi = "95"}, "us-fmcsr", RODT_REASON_ASSUMED_CLAMP,
     "checked as a clamp-band chamber; if yours is bolted or a rotochamber, say so"},
    {{.chamber = "6", .stroke_class = "standard", .released = "2", .applied = "3", .psi = "95"}, "us-fmcsr", RODT_REASON_ASSUMED_CLAMP,
     "checked as a clamp-band chamber; if yours is bolted or a rotochamber, say so"},
    {{.chamber = "30", .stroke_class = "long", .released = "2", .applied = "3", .psi = "95"}, "us-fmcsr", RODT_REASON_ASSUMED_CLAMP,
     "checked as a clamp-band chamber; another kind of this size has a smaller limit: if yours is "
     "bolted or a rotochamber, say so"},
    {{.chamber = "20", .stroke_class = "long", .rated_stroke = "3", .released = "2", .applied = "3", .psi = "95"}, "us-fmcsr", RODT_REASON_ASSUMED_CLAMP,
     "checked as a clamp-band chamber; another kind of this size has a smaller limit: if yours is "
     "bolted or a rotochamber, say so"},
    {{.chamber = "30", .released = "2", .applied = "3", .psi = "95"}, "ca-nsc", RODT_REASON_ASSUMED_CLAMP,
     "checked as a clamp-band chamber; another kind of this size has no limit here, so look at yours"},
    {{.chamber = "30", .released = "2", .applied = "3", .psi = "95"}, "ca-nsc", RODT_REASON_LIMIT_COMMON_PRACTICE,
     "the limit is common practice of the trade, no source: look it up before you rely on it"},
    {{.chamber = "24", .released = "2", .applied = "3", .psi = "95"}, "ca-on", RODT_REASON_ASSUMED_CLAMP,
     "checked as a clamp-band chamber; another kind of this size has no limit here, so look at yours"},
    {{.chamber = "24", .released = "2", .applied = "3", .psi = "95"}, "ca-on", RODT_REASON_LIMIT_UNCONFIRMED,
     "the limit is unconfirmed (from memory): it was not read in its source and is not law; look it "
     "up before you rely on it"},
    {{.chamber = "36 clamp", .released = "2", .applied = "3", .psi = "85"}, "us-periodic", RODT_REASON_LIMIT_UNCONFIRMED,
     "the limit is unconfirmed (second-hand): it was not read in its source and is not law; look it "
     "up before you rely on it"},
    {{.chamber = "clamp 18 standard", .released = "2", .applied = "3", .psi = "95"}, "us-fmcsr", RODT_REASON_NO_PUBLISHED_LIMIT,
     "no limit is published for this chamber, and no rated stroke or limit marked on it was given"},
    {{.chamber = "clamp 18 standard", .released = "2", .applied = "3", .psi = "95"}, "ca-nsc", RODT_REASON_NO_PUBLISHED_LIMIT,
     "no limit is published for this chamber, and no rated stroke or limit marked on it was given"},
    {{.chamber = "clamp 18 standard", .released = "2", .applied = "3", .rated_stroke = "2 1/4"}, "rated-80", RODT_REASON_LIMIT_FROM_RATED,
     "the limit is 4/5 of the rated stroke of 2 1/4 marked on the housing"},
    {{.chamber = "clamp 18 standard", .released = "2", .applied = "3", .rated_stroke = "2 1/4"}, "rated-80", RODT_REASON_WITHIN_LIMIT,
     "stroke is within the limit by 0.8"},
    {{.chamber = "clamp 18 standard", .released = "2", .applied = "3"}, "rated-80", RODT_REASON_NO_PUBLISHED_LIMIT,
     "no limit is published for this chamber, and no rated stroke or limit marked on it was given"},
    {{.chamber = "clamp 30 standard", .released = "2", .applied = "3", .psi = "95"}, "us-inuse", RODT_REASON_NO_PUBLISHED_LIMIT,
     "the rule set us-inuse has air checks only and limits no stroke; choose a rule set that does"},
    {{.chamber = "clamp 30 standard", .released = "2", .applied = "3", .psi = "95", .date = "2012-09-04"}, "us-fmcsr", RODT_REASON_RULES_NOT_IN_FORCE,
     "the rule set us-fmcsr has no text for the day; it starts on 2012-09-05"},
    {{.chamber = "clamp 24 standard", .released = "50", .applied = "94.5", .unit = "mm", .psi = "95"}, "us-fmcsr", RODT_REASON_PRINTED_MM_DIFFERS,
     "the printed 44.5 mm would judge otherwise; the inch figure decides: 1 3/4 in (44.45 mm)"},
    {{.chamber = "clamp 24 standard", .released = "50", .applied = "94.5", .unit = "mm", .psi = "95"}, "us-fmcsr", RODT_REASON_OVER_LIMIT,
     "stroke is over the limit by 0.05 mm"},
    {{.chamber = "clamp 36 standard", .released = "2", .applied = "3", .psi = "95", .date = "10/12/2021"}, "us-fmcsr", RODT_REASON_DATE_AMBIGUOUS,
     "the date can mean two days; the limit can depend on which it is"},
    {{.chamber = "clamp 30 standard", .released = "2", .applied = "3", .psi = "95", .date = "10/12/2021"}, "us-fmcsr", RODT_REASON_DATE_AMBIGUOUS,
     "the date can mean two days; the limit is the same on both"},
    {{.released = "2", .applied = "3", .psi = "95", .date = "10/12/2021"}, "us-fmcsr", RODT_REASON_DATE_AMBIGUOUS,
     "the date can mean two days; the limit can depend on which it is"},
    {{.chamber = "clamp 30 standard", .released = "2", .applied = "3", .psi = "95", .date = "soon"}, "us-fmcsr", RODT_REASON_DATE_UNREADABLE,
     "the date cannot be read; the limit never changed, but an inspection before 2012-09-05 is under "
     "no text of the rule set"},
    {{.chamber = "clamp 36 standard", .released = "2", .applied = "3", .psi = "95", .date = "soon"}, "us-fmcsr", RODT_REASON_DATE_UNREADABLE,
     "the date cannot be read; the limit can depend on it, but an inspection before 2012-09-05 is under "
     "no text of the rule set"},
    {{.chamber = "clamp 30 standard", .released = "2", .applied = "3", .psi = "95", .date = "soon"}, "ca-nsc", RODT_REASON_DATE_UNREADABLE,
     "the date cannot be read; the limit never changed"},
    {{.released = "2", .applied = "3", .psi = "95", .date = "soon"}, "ca-nsc", RODT_REASON_DATE_UNREADABLE,
     "the date cannot be read; the limit can depend on it"},
    {{.chamber = "6", .released = "2", .applied = "3", .psi = "95", .date = "10/12/2021"}, "us-fmcsr", RODT_REASON_DATE_AMBIGUOUS,
     "the date can mean two days; the limit is the same on both"},
    {{.marked_limit = "2", .released = "2", .applied = "3", .psi = "95", .date = "10/12/2021"}, "us-fmcsr", RODT_REASON_DATE_AMBIGUOUS,
     "the date can mean two days; the limit can depend on which it is"},
    {{.chamber = "clamp 30 standard", .released = "11/4", .applied = "4", .psi = "95"}, "us-fmcsr", RODT_REASON_LOST_BLANK,
     "released was read as 2 3/4, and with a lost blank it is 1 1/4: the verdict depends on which was "
     "meant; write it with its blank"},
    {{.chamber = "clamp 30 standard", .released = "11/4", .applied = "31/8", .psi = "95"}, "us-fmcsr", RODT_REASON_LOST_BLANK,
     "released was read as 2 3/4, and with a lost blank it is 1 1/4; applied was read as 3 7/8, and "
     "with a lost blank it is 3 1/8: the verdict depends on which was meant; write it with its blank"},
    {{.chamber = "clamp 30 standard", .released = "11/16", .applied = "111/16", .psi = "95"}, "us-fmcsr", RODT_REASON_LOST_BLANK,
     "released was read as 11/16, and with a lost blank it is 1 1/16; applied was read as 6 15/16, "
     "and with a lost blank it is 1 11/16 or 11 1/16: the verdict depends on which was meant; write "
     "it with its blank"},
    {{.chamber = "clamp 30 standard", .released = "111/16", .applied = "4", .psi = "95"}, "us-fmcsr", RODT_REASON_LOST_BLANK,
     "released was read as 6 15/16, and with a lost blank it is 1 11/16 or 11 1/16: the verdict "
     "depends on which was meant; write it with its blank"},
    {{.chamber = "clamp 30 standard", .released = "2", .applied = "5", .psi = "95"}, "ca-on", RODT_REASON_MAJOR_DEFECT,
     "a brake that is over its limit or does not work is a major defect (O. Reg. 199/07, Commercial "
     "Motor Vehicle Inspections, Schedule 1, item 1; section 19): do not drive, report it"},
    {{.chamber = "clamp 30 standard", .rated_stroke = "2 1/2", .released = "2", .applied = "5", .psi = "95"}, "us-fmcsr", RODT_REASON_BEYOND_RATED_STROKE,
     "stroke is longer than the rated stroke of 2 1/2, which this housing cannot have: identify the "
     "chamber and read again"},
};

static void each_form_of_a_sentence_is_said(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        rodt_finding finding;
        char text[RODT_SENTENCE_SIZE];
        assert_int_equal(rodt_form_judge_row(&cases[i].form, rodt_rules_find(cases[i].rules), &finding, NULL), RODT_OK);
        if (rodt_finding_reason_format(&finding, cases[i].reason, text, sizeof text, NULL) != RODT_OK)
            fail_msg("\"%s\" is not said", cases[i].sentence);
        assert_string_equal(text, cases[i].sentence);
    }
}

static void the_proof_is_a_sentence(void **state)
{
    (void)state;
    char sentence[RODT_SENTENCE_SIZE];
    rodt_finding finding = judge((rodt_form){.chamber = "30", .released = "2", .applied = "4",
                                                     .division = "1/8"}, "us-fmcsr");
    assert_int_equal(rodt_finding_proof_format(&finding, sentence, sizeof sentence, NULL), RODT_OK);
    assert_string_equal(sentence, "not resolved by this tape: read to 1/8, the true stroke may lie on either side "
                                  "of the limit; chance of being over 1/2");
    finding = judge((rodt_form){.chamber = "30", .released = "2", .applied = "4 1/8", .division = "1/8"}, "us-fmcsr");
    assert_int_equal(rodt_finding_proof_format(&finding, sentence, sizeof sentence, NULL), RODT_OK);
    assert_string_equal(sentence, "not resolved by this tape: read to 1/8, the true stroke is at best exactly "
                                  "the limit");
    finding.probability_over = (rodt_ratio){0, 0};
    assert_int_equal(rodt_finding_proof_format(&finding, sentence, sizeof sentence, NULL), RODT_OK);
    assert_string_equal(sentence, "not resolved by this tape: read to 1/8, the true stroke may lie on either side of the "
                                  "limit");
    finding.proof = RODT_PROOF_PROVEN_OVER;
    assert_int_equal(rodt_finding_proof_format(&finding, sentence, sizeof sentence, NULL), RODT_OK);
    assert_string_equal(sentence, "proven over: even at its best the tape, read to 1/8, puts the stroke over the limit");
    finding.proof = RODT_PROOF_PROVEN_WITHIN;
    assert_int_equal(rodt_finding_proof_format(&finding, sentence, sizeof sentence, NULL), RODT_OK);
    assert_string_equal(sentence, "proven within: even at its worst the tape, read to 1/8, keeps the stroke within the "
                                  "limit");
    finding.proof = RODT_PROOF_NOT_RESOLVED;
    finding.probability_over = (rodt_ratio){0, 1};
    assert_int_equal(rodt_finding_proof_format(&finding, sentence, sizeof sentence, NULL), RODT_OK);
    assert_non_null(strstr(sentence, "the true stroke is at worst exactly the limit"));
    finding.proof = RODT_PROOF_NOT_ASKED;
    finding.probability_over = (rodt_ratio){0, 0};
    assert_int_equal(rodt_finding_proof_format(&finding, sentence, sizeof sentence, NULL), RODT_OK);
    assert_string_equal(sentence, "");
}

/* Every reason of every finding of a wide sweep has a sentence that fits the room that is promised. */
static void every_reason_fits_its_room(void **state)
{
    (void)state;
    static const char *const chambers[] = {"30", "24/30 LS", "bolt C", "18", "", "??", "36"};
    static const char *const lengths[] = {"2", "4.123456789", "63.5 mm", "0", "2-Jan", "", "5 9/16"};
    static const char *const days[] = {"", "10/11/2021", "soon", "2010-01-01"};
    static const char *const rules[] = {"us-fmcsr", "ca-on", "rated-80"};
    char sentence[RODT_SENTENCE_SIZE];
    size_t count = 0;
    for (size_t c = 0; c < 7 * 7 * 7 * 4 * 3; c++) {
        rodt_form text = {.chamber = chambers[c % 7], .released = lengths[c / 7 % 7],
                                  .applied = lengths[c / 49 % 7], .date = days[c / 343 % 4], .division = "0.5 mm",
                                  .rated_stroke = c % 2 ? "76.2 mm" : "2 1/4", .psi = c % 3 ? "88" : "655 kPa"};
        rodt_finding finding = judge(text, rules[c / 1372]);
        assert_int_equal(rodt_finding_format(&finding, sentence, sizeof sentence, NULL), RODT_OK);
        assert_int_equal(rodt_finding_proof_format(&finding, sentence, sizeof sentence, NULL), RODT_OK);
        assert_true(finding.reasons != 0);
        for (int r = 0; r < RODT_REASON_END; r++) {
            rodt_status wanted = rodt_finding_has(&finding, (rodt_reason)r) ? RODT_OK : RODT_E_ARGUMENT;
            assert_int_equal(
                rodt_finding_reason_format(&finding, (rodt_reason)r, sentence, sizeof sentence, NULL),
                wanted);
            count += wanted == RODT_OK;
        }
    }
    assert_true(count > 10000);
}

static void a_small_buffer_stays_untouched(void **state)
{
    (void)state;
    rodt_finding finding = judge((rodt_form){.chamber = "20", .released = "2", .applied = "3"}, "us-fmcsr");
    char text[RODT_SENTENCE_SIZE] = "before";
    assert_int_equal(rodt_finding_format(&finding, text, 10, NULL), RODT_E_SPACE);
    assert_int_equal(rodt_finding_reason_format(&finding, RODT_REASON_WITHIN_LIMIT, text, 5, NULL), RODT_E_SPACE);
    assert_string_equal(text, "before");
    assert_int_equal(rodt_finding_format(NULL, text, sizeof text, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_finding_format(&finding, NULL, 100, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_finding_reason_format(&finding, RODT_REASON_END, text, sizeof text, NULL), RODT_E_ARGUMENT);
    rodt_message message;
    assert_int_equal(rodt_finding_reason_message(NULL, RODT_REASON_WITHIN_LIMIT, &message), RODT_E_ARGUMENT);
    assert_int_equal(rodt_finding_reason_message(&finding, RODT_REASON_WITHIN_LIMIT, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_finding_proof_message(&finding, NULL), RODT_E_ARGUMENT);
    finding.reasons = UINT64_MAX; /* a gap between two groups is no reason */
    assert_int_equal(rodt_finding_reason_format(&finding, (rodt_reason)9, text, sizeof text, NULL), RODT_E_ARGUMENT);
    assert_false(rodt_finding_has(&finding, (rodt_reason)64));
    assert_int_equal(rodt_finding_proof_format(NULL, text, sizeof text, NULL), RODT_E_ARGUMENT);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_sum_is_one_line),         cmocka_unit_test(codes_are_for_ever),
        cmocka_unit_test(a_finding_without_rules_is_safe),
        cmocka_unit_test(an_excess_is_over_the_law),
        cmocka_unit_test(a_limit_that_does_not_pass_is_said),
        cmocka_unit_test(an_own_limit_is_said),
        cmocka_unit_test(a_pressure_is_said_as_it_was_read),
        cmocka_unit_test(a_lost_blank_has_the_values_that_there_are),
        cmocka_unit_test(a_finding_by_hand_is_said_without_what_it_lacks),
        cmocka_unit_test(a_finding_without_its_facts_is_safe),
        cmocka_unit_test(sentences_carry_their_figures), cmocka_unit_test(each_form_of_a_sentence_is_said), cmocka_unit_test(the_proof_is_a_sentence),
        cmocka_unit_test(every_reason_fits_its_room),  cmocka_unit_test(a_small_buffer_stays_untouched),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
