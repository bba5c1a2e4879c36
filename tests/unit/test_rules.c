/* SPDX-License-Identifier: Apache-2.0 */
/* Rule sets and the limit for a chamber on a day. Figures of us-fmcsr: 49 CFR 393.47(e), read in the text as
 * amended by 77 FR 46638 and by 86 FR 57076. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <string.h>
#include <cmocka.h>

#include "core/common.h"
#include "rules/find_limit.h"
#include "rules/rated_stroke.h"
#include "rodtravel/aircheck.h"
#include "rodtravel/rules.h"

static rodt_length inches(const char *text)
{
    rodt_length length = {0};
    assert_int_equal(rodt_length_parse(text, &length, NULL), RODT_OK);
    return length;
}

static rodt_date on(const char *text)
{
    rodt_date date = {0};
    if (text[0] != '\0')
        assert_int_equal(rodt_date_parse_iso(text, &date, NULL), RODT_OK);
    return date;
}

static rodt_chamber chamber_of(rodt_family family, const char *size, rodt_stroke_class stroke_class)
{
    rodt_chamber chamber = {.family = family, .stroke_class = stroke_class};
    assert_in_range(strlen(size), 0, sizeof chamber.size - 1);
    memcpy(chamber.size, size, strlen(size));
    return chamber;
}

static rodt_limit_answer ask(const char *rules, const rodt_chamber *chamber, const char *day)
{
    rodt_limit_answer answer;
    memset(&answer, 0x5A, sizeof answer);
    assert_non_null(rodt_rules_find(rules));
    assert_int_equal(rodt_rules_find_limit(rodt_rules_find(rules), chamber, on(day), &answer, NULL), RODT_OK);
    return answer;
}

static void expect_length(rodt_length length, const char *text)
{
    char written[RODT_LENGTH_TEXT_SIZE] = "";
    if (rodt_length_given(length))
        assert_int_equal(rodt_length_format(length, written, sizeof written, NULL), RODT_OK);
    assert_string_equal(written, text);
}

/* Asks us-fmcsr for a clamp chamber. */
static rodt_limit_answer ask_clamp(const char *size, rodt_stroke_class stroke_class, const char *rated, const char *day)
{
    rodt_chamber chamber = chamber_of(RODT_FAMILY_CLAMP, size, stroke_class);
    if (rated[0] != '\0')
        chamber.rated_stroke = inches(rated);
    return ask("us-fmcsr", &chamber, day);
}

static void expect_clamp(const char *size, rodt_stroke_class stroke_class, const char *rated, const char *day,
                         const char *limit)
{
    rodt_limit_answer answer = ask_clamp(size, stroke_class, rated, day);
    assert_int_equal(answer.law_basis, RODT_BASIS_TABLE);
    expect_length(answer.limit, limit);
    expect_length(answer.law_limit, limit);
    assert_non_null(answer.law_row);
    assert_ptr_equal(answer.source, answer.law_row->source);
    assert_int_equal(answer.evidence, RODT_EVIDENCE_CHECKED);
}

static void rule_sets_stand_in_order(void **state)
{
    (void)state;
    static const char *const ids[] = {"us-fmcsr", "us-periodic", "ca-nsc", "ca-on", "rated-80", "us-inuse", "us-newvehicle",
                                      "us-oos", "us-cdl", "us-cdl-later", "us-cdl-skills", "us-ca", "us-nh", "us-nv", "us-sc", "us-tx", "ca-ab",
                                      "ca-bc", "ca-nb", "ca-nl", "ca-qc", "ca-sk", "au", "nz"};
    assert_int_equal(rodt_rules_count(), COUNT_OF(ids));
    for (size_t i = 0; i < COUNT_OF(ids); i++) {
        const rodt_rules *rules = rodt_rules_at(i);
        assert_string_equal(rodt_rules_id(rules), ids[i]);
        assert_ptr_equal(rodt_rules_find(ids[i]), rules);
        assert_true(rodt_rules_title(rules)[0] != '\0' && rodt_rules_authority(rules)[0] != '\0');
        assert_non_null(rodt_rules_source(rules));
        assert_null(rodt_rules_law(rules));
        bool limits = rodt_rules_limit_count(rules) > 0 || rodt_ratio_given(rodt_rules_rated_share(rules));
        assert_int_equal(rodt_rules_at_limit_passes(rules), limits);
        assert_true(limits || rodt_rules_air_count(rules) > 0);
    }
    assert_null(rodt_rules_at(COUNT_OF(ids)));
    assert_null(rodt_chamber_row_at(rodt_chamber_row_count()));
    assert_null(rodt_rules_find("US-FMCSR"));
    assert_null(rodt_rules_find(""));
    assert_null(rodt_rules_find(NULL));
    assert_string_equal(RODT_DEFAULT_RULES, ids[0]);
}

static void expect_window(const char *id, int64_t from, int64_t until, rodt_evidence evidence)
{
    const rodt_rules *rules = rodt_rules_find(id);
    rodt_pressure low = rodt_rules_pressure_from(rules), high = rodt_rules_pressure_until(rules);
    assert_true(low.num == from && low.den == 1 && high.num == until && high.den == 1);
    assert_non_null(rodt_rules_pressure_source(rules));
    assert_int_equal(rodt_rules_pressure_evidence(rules), evidence);
}

/* 90-100 psi: roadside inspection procedure and Ontario's handbook, chapter 11; 80-90 psi: Appendix A to 49 CFR
 * Part 396, item 1.a(5)(a); for Standard 11 from memory. */
static void windows_differ_by_rule_set(void **state)
{
    (void)state;
    expect_window("us-fmcsr", 90, 100, RODT_EVIDENCE_CHECKED);
    expect_window("us-periodic", 80, 90, RODT_EVIDENCE_CHECKED);
    expect_window("ca-nsc", 90, 100, RODT_EVIDENCE_FROM_MEMORY);
    expect_window("ca-on", 90, 100, RODT_EVIDENCE_CHECKED);
    const rodt_rules *rules = rodt_rules_find("rated-80");
    assert_false(rodt_pressure_given(rodt_rules_pressure_from(rules)));
    assert_false(rodt_pressure_given(rodt_rules_pressure_until(rules)));
    assert_null(rodt_rules_pressure_source(rules));
}

/* What the trade there takes as known. */
static bool is_practice(const rodt_limit *row)
{
    return row->stroke_class == RODT_STROKE_CLASS_STANDARD &&
           (strcmp(row->size, "20") == 0 || strcmp(row->size, "30") == 0);
}

static void what_was_not_read_is_not_law(void **state)
{
    (void)state;
    const rodt_rules *rules = rodt_rules_find("ca-nsc");
    assert_int_equal(rodt_rules_evidence(rules), RODT_EVIDENCE_FROM_MEMORY);
    assert_int_equal(rodt_rules_limit_count(rules), 14);
    for (size_t i = 0; i < rodt_rules_limit_count(rules); i++)
        assert_int_equal(rodt_rules_limit_at(rules, i)->evidence, is_practice(rodt_rules_limit_at(rules, i))
                                                                      ? RODT_EVIDENCE_COMMON_PRACTICE
                                                                      : RODT_EVIDENCE_FROM_MEMORY);
    const rodt_rules *ontario = rodt_rules_find("ca-on");
    assert_int_equal(rodt_rules_limit_count(ontario), 14);
    for (size_t i = 0; i < 14; i++) {
        const rodt_limit *row = rodt_rules_limit_at(ontario, i), *same = rodt_rules_limit_at(rules, i);
        assert_true(strcmp(row->size, same->size) == 0 && rodt_length_compare(row->limit, same->limit) == 0);
        assert_string_equal(row->source->id, is_practice(row) ? "ca-on-practice" : "ca-on-587-5");
        assert_int_equal(row->evidence, same->evidence);
    }
    assert_string_equal(rodt_rules_major_source(ontario)->id, "ca-on-199-1");
    assert_null(rodt_rules_major_source(rules));
    assert_null(rodt_rules_major_source(NULL));
    assert_int_equal(rodt_rules_evidence(rodt_rules_find("rated-80")), RODT_EVIDENCE_SECOND_HAND);
    assert_string_equal(rodt_evidence_text(RODT_EVIDENCE_NONE), "none");
    assert_string_equal(rodt_evidence_text(RODT_EVIDENCE_CHECKED), "read in the source");
    assert_string_equal(rodt_evidence_text(RODT_EVIDENCE_SECOND_HAND), "second-hand, unconfirmed");
    assert_string_equal(rodt_evidence_text(RODT_EVIDENCE_FROM_MEMORY), "from memory, unconfirmed");
    assert_string_equal(rodt_evidence_text(RODT_EVIDENCE_COMMON_PRACTICE), "common practice, no source");
    assert_string_equal(rodt_evidence_text((rodt_evidence)77), "from memory, unconfirmed");
}

/* What is no evidence is said as what was not read. */
static void evidence_has_its_sentence(void **state)
{
    (void)state;
    static const struct {
        int evidence;
        rodt_message_code code;
    } cases[] = {{RODT_EVIDENCE_NONE, RODT_MESSAGE_EVIDENCE_NONE},
                 {RODT_EVIDENCE_CHECKED, RODT_MESSAGE_EVIDENCE_CHECKED},
                 {RODT_EVIDENCE_SECOND_HAND, RODT_MESSAGE_EVIDENCE_SECOND_HAND},
                 {RODT_EVIDENCE_FROM_MEMORY, RODT_MESSAGE_EVIDENCE_FROM_MEMORY},
                 {RODT_EVIDENCE_COMMON_PRACTICE, RODT_MESSAGE_EVIDENCE_COMMON_PRACTICE},
                 {77, RODT_MESSAGE_EVIDENCE_FROM_MEMORY}};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_message message;
        assert_int_equal(rodt_evidence_message((rodt_evidence)cases[i].evidence, &message), RODT_OK);
        assert_int_equal(message.code, cases[i].code);
    }
}

/* The one cell that 86 FR 57076 changed. */
static void clamp_36_changed_on_2021_10_14(void **state)
{
    (void)state;
    expect_clamp("36", RODT_STROKE_CLASS_STANDARD, "", "2012-09-05", "2 1/4");
    expect_clamp("36", RODT_STROKE_CLASS_STANDARD, "", "2021-10-13", "2 1/4");
    expect_clamp("36", RODT_STROKE_CLASS_STANDARD, "", "2021-10-14", "2 1/2");
    expect_clamp("36", RODT_STROKE_CLASS_STANDARD, "", "2026-11-28", "2 1/2");
    expect_clamp("36", RODT_STROKE_CLASS_STANDARD, "", "", "2 1/2");
    expect_clamp("36", RODT_STROKE_CLASS_STANDARD, "3", "2021-10-13", "2 1/4");
    assert_string_equal(ask_clamp("36", RODT_STROKE_CLASS_STANDARD, "", "2021-10-13").source->edition,
                        "text as amended by 77 FR 46638");
    assert_string_equal(ask_clamp("36", RODT_STROKE_CLASS_STANDARD, "", "2021-10-14").source->edition,
                        "text as amended by 86 FR 57076");
}

static void no_text_before_2012_09_05(void **state)
{
    (void)state;
    rodt_limit_answer answer = ask_clamp("30", RODT_STROKE_CLASS_STANDARD, "", "2012-09-04");
    assert_int_equal(answer.law_basis, RODT_BASIS_NOT_IN_FORCE);
    assert_false(rodt_length_given(answer.limit) || rodt_length_given(answer.law_limit));
    assert_null(answer.law_row);
    assert_null(answer.source);
    expect_clamp("30", RODT_STROKE_CLASS_STANDARD, "", "2012-09-05", "2");
}

/* Footnotes to types 20 and 24: only the marked 3 in (76 mm) rated stroke selects 2 1/2. */
static void rated_stroke_decides_the_long_row(void **state)
{
    (void)state;
    static const char *const sizes[] = {"20", "24"};
    for (size_t i = 0; i < COUNT_OF(sizes); i++) {
        expect_clamp(sizes[i], RODT_STROKE_CLASS_LONG, "", "2024-01-01", "2");
        expect_clamp(sizes[i], RODT_STROKE_CLASS_LONG, "2 1/2", "2024-01-01", "2");
        expect_clamp(sizes[i], RODT_STROKE_CLASS_LONG, "3", "2024-01-01", "2 1/2");
        expect_clamp(sizes[i], RODT_STROKE_CLASS_LONG, "76 mm", "2024-01-01", "2 1/2");
        expect_clamp(sizes[i], RODT_STROKE_CLASS_LONG, "76.2 mm", "2024-01-01", "2 1/2");
        expect_clamp(sizes[i], RODT_STROKE_CLASS_LONG, "2 63/64", "2024-01-01", "2");
        expect_clamp(sizes[i], RODT_STROKE_CLASS_LONG, "3 1/64", "2024-01-01", "2");
        expect_clamp(sizes[i], RODT_STROKE_CLASS_LONG, "3", "", "2 1/2");
        expect_clamp(sizes[i], RODT_STROKE_CLASS_STANDARD, "3", "2024-01-01", "1 3/4");
        expect_clamp(sizes[i], RODT_STROKE_CLASS_UNKNOWN, "3", "2024-01-01", "2 1/2");
        expect_clamp(sizes[i], RODT_STROKE_CLASS_UNKNOWN, "76 mm", "", "2 1/2");
        expect_clamp(sizes[i], RODT_STROKE_CLASS_UNKNOWN, "2 63/64", "2024-01-01", "1 3/4");
        assert_false(ask_clamp(sizes[i], RODT_STROKE_CLASS_UNKNOWN, "3", "").assumed_standard);
        assert_true(ask_clamp(sizes[i], RODT_STROKE_CLASS_STANDARD, "3", "").conflicting_marks);
    }
    expect_clamp("30", RODT_STROKE_CLASS_UNKNOWN, "3", "2024-01-01", "2");
    expect_clamp("16", RODT_STROKE_CLASS_UNKNOWN, "3", "2024-01-01", "1 3/4");
    expect_clamp("30", RODT_STROKE_CLASS_LONG, "3", "2024-01-01", "2 1/2");
}

static void unknown_facts_are_taken_strictly(void **state)
{
    (void)state;
    rodt_limit_answer answer = ask_clamp("30", RODT_STROKE_CLASS_UNKNOWN, "", "");
    expect_length(answer.limit, "2");
    assert_true(answer.assumed_standard && !answer.assumed_clamp);
    rodt_chamber chamber = chamber_of(RODT_FAMILY_UNKNOWN, "30", RODT_STROKE_CLASS_LONG);
    answer = ask("us-fmcsr", &chamber, "");
    expect_length(answer.limit, "2 1/2");
    assert_true(answer.assumed_clamp && !answer.assumed_standard);
    answer = ask_clamp("30", RODT_STROKE_CLASS_STANDARD, "", "");
    assert_false(answer.assumed_standard || answer.assumed_clamp);
}

/* One limit a chamber, no classes: 393.47(e)(1), tables of bolt-type, rotochamber and DD-3 actuators. */
static void families_with_one_limit_have_it_for_every_class(void **state)
{
    (void)state;
    static const rodt_stroke_class classes[] = {RODT_STROKE_CLASS_UNKNOWN, RODT_STROKE_CLASS_STANDARD, RODT_STROKE_CLASS_LONG};
    for (size_t i = 0; i < COUNT_OF(classes); i++) {
        rodt_chamber bolt = chamber_of(RODT_FAMILY_BOLT, "C", classes[i]);
        rodt_chamber roto = chamber_of(RODT_FAMILY_ROTOCHAMBER, "30", classes[i]);
        rodt_chamber dd3 = chamber_of(RODT_FAMILY_DD_3, "30", classes[i]);
        expect_length(ask("us-fmcsr", &bolt, "").limit, "1 3/4");
        expect_length(ask("us-fmcsr", &roto, "").limit, "2 1/4");
        expect_length(ask("us-fmcsr", &dd3, "").limit, "2 1/4");
        assert_false(ask("us-fmcsr", &bolt, "").assumed_standard);
    }
}

/* 393.47(e)(2): not greater than 80 percent of the marked rated stroke, nor than the marked limit. */
static void unlisted_actuators_go_by_their_marks(void **state)
{
    (void)state;
    rodt_chamber chamber = chamber_of(RODT_FAMILY_CLAMP, "18", RODT_STROKE_CLASS_STANDARD);
    rodt_limit_answer answer = ask("us-fmcsr", &chamber, "2024-01-01");
    assert_int_equal(answer.law_basis, RODT_BASIS_NONE);
    assert_false(rodt_length_given(answer.limit));
    assert_null(answer.source);

    chamber.rated_stroke = inches("2 1/2");
    answer = ask("us-fmcsr", &chamber, "2024-01-01");
    assert_int_equal(answer.law_basis, RODT_BASIS_RATED_SHARE);
    expect_length(answer.limit, "2");
    assert_string_equal(answer.source->section, "393.47(e)(2)");

    chamber.marked_limit = inches("1 7/8");
    answer = ask("us-fmcsr", &chamber, "2024-01-01");
    assert_int_equal(answer.law_basis, RODT_BASIS_MARKED_LIMIT);
    expect_length(answer.limit, "1 7/8");

    static const char *const no_smaller[] = {"2", "2 1/8"};
    for (size_t i = 0; i < COUNT_OF(no_smaller); i++) {
        chamber.marked_limit = inches(no_smaller[i]);
        answer = ask("us-fmcsr", &chamber, "2024-01-01");
        assert_int_equal(answer.law_basis, RODT_BASIS_RATED_SHARE);
        expect_length(answer.limit, "2");
    }

    chamber.rated_stroke = (rodt_length){0};
    answer = ask("us-fmcsr", &chamber, "2024-01-01");
    assert_int_equal(answer.law_basis, RODT_BASIS_MARKED_LIMIT);
    expect_length(answer.limit, "2 1/8");
    assert_false(answer.assumed_standard);
}

/* The table has no long-stroke cell for types 6, 9 and 36, so a long one is in no table. */
static void no_long_row_means_unlisted(void **state)
{
    (void)state;
    static const char *const sizes[] = {"6", "9", "36"};
    for (size_t i = 0; i < COUNT_OF(sizes); i++) {
        assert_int_equal(ask_clamp(sizes[i], RODT_STROKE_CLASS_LONG, "", "").law_basis, RODT_BASIS_NONE);
        rodt_limit_answer answer = ask_clamp(sizes[i], RODT_STROKE_CLASS_LONG, "3", "");
        assert_int_equal(answer.law_basis, RODT_BASIS_RATED_SHARE);
        expect_length(answer.limit, "2 2/5");
    }
}

static void a_listed_actuator_goes_by_the_table_alone(void **state)
{
    (void)state;
    rodt_chamber chamber = chamber_of(RODT_FAMILY_CLAMP, "30", RODT_STROKE_CLASS_LONG);
    chamber.rated_stroke = inches("3");
    chamber.marked_limit = inches("2 1/4");
    expect_length(ask("us-fmcsr", &chamber, "").limit, "2 1/2"); /* 4/5 of 3 would be 2 2/5 */
}

/* A limit is below the full travel: a type 30 with 2 1/2 in marked is no long-stroke chamber. */
static void long_mark_against_rated_stroke(void **state)
{
    (void)state;
    rodt_limit_answer answer = ask_clamp("30", RODT_STROKE_CLASS_LONG, "2 1/2", "");
    assert_true(answer.conflicting_marks);
    expect_length(answer.limit, "2");
    assert_false(answer.assumed_standard);
    assert_true(ask_clamp("24", RODT_STROKE_CLASS_LONG, "2", "").conflicting_marks);
    expect_length(ask_clamp("24", RODT_STROKE_CLASS_LONG, "2", "").limit, "1 3/4");
    assert_true(ask_clamp("24", RODT_STROKE_CLASS_LONG, "2 3/8", "").conflicting_marks);
    assert_false(ask_clamp("24", RODT_STROKE_CLASS_LONG, "2.4", "").conflicting_marks); /* 2 is 5/6 of it, as in type 30 */
}

/* The rated stroke of a standard chamber beside "long": one of the two was misread. Type 24 has 2 1/4 by some accounts,
 * and 2 1/2 by others. */
static void long_mark_beside_the_standard_rated_stroke(void **state)
{
    (void)state;
    static const struct {
        const char *size, *rated, *limit;
        bool conflicting;
    } cases[] = {
        {"12", "1.75", "1 3/8", true}, {"16", "2.25", "1 3/4", true},  {"16", "57 mm", "1 3/4", true},
        {"20", "2.25", "1 3/4", true}, {"20", "2 1/2", "2", false},    {"24", "2 1/2", "2", false},
        {"24", "2 1/4", "1 3/4", true}, {"30", "2.5", "2", true},      {"30", "3", "2 1/2", false},
        {"30", "2 5/8", "2", true},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_limit_answer answer = ask_clamp(cases[i].size, RODT_STROKE_CLASS_LONG, cases[i].rated, "2024-01-01");
        expect_length(answer.limit, cases[i].limit);
        assert_int_equal(answer.conflicting_marks, cases[i].conflicting);
        assert_false(answer.assumed_standard);
    }
}

/* No chamber has a limit as long as its travel: the marks are not those of one housing, and the smaller of both limits
 * is the strict side. */
static void rated_stroke_not_above_the_limit(void **state)
{
    (void)state;
    static const rodt_stroke_class classes[] = {RODT_STROKE_CLASS_UNKNOWN, RODT_STROKE_CLASS_STANDARD, RODT_STROKE_CLASS_LONG};
    for (size_t i = 0; i < COUNT_OF(classes); i++) {
        rodt_limit_answer answer = ask_clamp("30", classes[i], "1.75", "");
        assert_true(answer.conflicting_marks);
        assert_int_equal(answer.law_basis, RODT_BASIS_RATED_SHARE);
        expect_length(answer.limit, "1 2/5");
        expect_length(ask_clamp("30", classes[i], "2", "").limit, "1 3/5");
    }
    assert_false(ask_clamp("30", RODT_STROKE_CLASS_STANDARD, "2 1/64", "").conflicting_marks);
    rodt_chamber chamber = chamber_of(RODT_FAMILY_BOLT, "G", RODT_STROKE_CLASS_UNKNOWN);
    chamber.rated_stroke = inches("2");
    chamber.marked_limit = inches("1 1/2");
    rodt_limit_answer answer = ask("us-fmcsr", &chamber, "");
    assert_true(answer.conflicting_marks);
    expect_length(answer.limit, "1 1/2");
    answer = ask("ca-nsc", &(rodt_chamber){.family = RODT_FAMILY_CLAMP, .size = "30", .rated_stroke = inches("2")}, "");
    assert_true(answer.conflicting_marks);
    assert_int_equal(answer.law_basis, RODT_BASIS_NONE);
    assert_false(rodt_length_given(answer.limit));
}

/* 3 in is stamped as 76 mm on a housing, whether or not the table prints the millimetres. */
static void rated_stroke_in_whole_millimetres(void **state)
{
    (void)state;
    static const char *const ids[] = {"us-fmcsr", "us-periodic", "ca-nsc", "ca-on"};
    rodt_chamber chamber = chamber_of(RODT_FAMILY_CLAMP, "24", RODT_STROKE_CLASS_LONG);
    for (size_t i = 0; i < COUNT_OF(ids); i++) {
        chamber.rated_stroke = inches("76 mm");
        expect_length(ask(ids[i], &chamber, "").limit, "2 1/2");
        chamber.rated_stroke = inches("75 mm");
        expect_length(ask(ids[i], &chamber, "").limit, "2");
    }
}

static void rated_80_knows_no_table(void **state)
{
    (void)state;
    rodt_chamber chamber = chamber_of(RODT_FAMILY_UNKNOWN, "30", RODT_STROKE_CLASS_UNKNOWN);
    assert_int_equal(ask("rated-80", &chamber, "").law_basis, RODT_BASIS_NONE);
    chamber.rated_stroke = inches("3");
    rodt_limit_answer answer = ask("rated-80", &chamber, "1990-01-01");
    assert_int_equal(answer.law_basis, RODT_BASIS_RATED_SHARE);
    expect_length(answer.limit, "2 2/5");
    assert_int_equal(answer.evidence, RODT_EVIDENCE_SECOND_HAND);
    assert_false(answer.assumed_clamp || answer.assumed_standard);
}

/* Standard 11 and the handbook are silent on unlisted actuators as far as they were read. */
static void canada_says_nothing_of_unlisted_actuators(void **state)
{
    (void)state;
    rodt_chamber chamber = chamber_of(RODT_FAMILY_BOLT, "C", RODT_STROKE_CLASS_UNKNOWN);
    chamber.rated_stroke = inches("2 1/4");
    chamber.marked_limit = inches("1 3/4");
    assert_int_equal(ask("ca-nsc", &chamber, "").law_basis, RODT_BASIS_NONE);
    chamber.rated_stroke = (rodt_length){0};
    assert_int_equal(ask("ca-nsc", &chamber, "").law_basis, RODT_BASIS_NONE);
    assert_false(rodt_ratio_given(rodt_rules_rated_share(rodt_rules_find("ca-on"))));
    rodt_ratio share = rodt_rules_rated_share(rodt_rules_find("us-fmcsr"));
    assert_true(share.num == 4 && share.den == 5);
}

static void wrong_arguments_change_nothing(void **state)
{
    (void)state;
    const rodt_rules *rules = rodt_rules_find("us-fmcsr");
    rodt_chamber good = chamber_of(RODT_FAMILY_CLAMP, "30", RODT_STROKE_CLASS_STANDARD);
    rodt_chamber bad[4] = {good, good, good, good};
    bad[0].family = (rodt_family)5;
    bad[1].stroke_class = (rodt_stroke_class)3;
    bad[2].size[0] = '\0';
    memset(bad[3].size, '3', sizeof bad[3].size);
    rodt_limit_answer answer, before;
    memset(&answer, 0x5A, sizeof answer);
    before = answer;
    for (size_t i = 0; i < COUNT_OF(bad); i++)
        assert_int_equal(rodt_rules_find_limit(rules, &bad[i], on(""), &answer, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_rules_find_limit(NULL, &good, on(""), &answer, NULL), RODT_E_UNKNOWN_RULES);
    assert_int_equal(rodt_rules_find_limit(rules, NULL, on(""), &answer, NULL), RODT_E_ARGUMENT);
    rodt_error error;
    assert_int_equal(rodt_rules_find_limit(rules, &good, on(""), NULL, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.field, "");
    assert_string_equal(error.text, "room for an answer is needed");
    rodt_chamber far = chamber_of(RODT_FAMILY_CLAMP, "18", RODT_STROKE_CLASS_STANDARD);
    far.rated_stroke = (rodt_length){1, INT64_MAX};
    assert_int_equal(rodt_rules_find_limit(rules, &far, on(""), &answer, NULL), RODT_E_ARGUMENT);
    assert_memory_equal(&answer, &before, sizeof answer);
    /* A finding by hand is explained without a check: a mark that does not fit gives no limit and contradicts nothing. */
    far.rated_stroke = (rodt_length){INT64_MAX, 3};
    rodti_rules_find_limit(rules, &far, on(""), &answer);
    assert_int_equal(answer.law_basis, RODT_BASIS_NONE);
    assert_false(rodt_length_given(answer.limit));
    const rodt_limit row = {.stroke_class = RODT_STROKE_CLASS_LONG, .limit = {5, 2}};
    assert_false(rodti_rated_stroke_contradicts(&row, far.rated_stroke));
    assert_true(rodti_rated_stroke_contradicts(&row, (rodt_length){299, 100}));
    assert_false(rodti_rated_stroke_contradicts(&row, (rodt_length){3, 1}));
    assert_false(rodti_rated_stroke_is_marked((rodt_length){3, 1}, (rodt_length){0, 0}, (rodt_length){0, 0}));
    assert_true(rodti_rated_stroke_is_marked(inches("72.5 mm"), (rodt_length){0, 0}, inches("73 mm")));
    assert_false(rodti_rated_stroke_is_marked(inches("72.5 mm"), (rodt_length){0, 0}, inches("72 mm")));
    assert_false(rodti_rated_stroke_is_marked((rodt_length){0, 0}, (rodt_length){0, 0}, inches("72 mm")));
}

static void sources_write_as_one_line(void **state)
{
    (void)state;
    char text[RODT_SOURCE_TEXT_SIZE];
    rodt_limit_answer answer = ask_clamp("30", RODT_STROKE_CLASS_STANDARD, "", "");
    assert_int_equal(rodt_source_format(answer.source, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, "49 CFR Part 393, 393.47(e)(1), text as amended by 86 FR 57076");
    size_t needed = strlen(text) + 1;
    char small[] = "as it was";
    assert_int_equal(rodt_source_format(answer.source, text, needed, NULL), RODT_OK);
    assert_int_equal(rodt_source_format(answer.source, small, sizeof small, NULL), RODT_E_SPACE);
    assert_string_equal(small, "as it was");
    rodt_source no_section = *answer.source;
    no_section.section = "";
    assert_int_equal(rodt_source_format(&no_section, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, "49 CFR Part 393, text as amended by 86 FR 57076");
    assert_int_equal(rodt_source_format(&(rodt_source){"x", "", "A", "B", "", ""}, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, "A, B");
    assert_int_equal(rodt_source_format(NULL, text, sizeof text, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_source_format(answer.source, NULL, 1, NULL), RODT_E_ARGUMENT);
    for (size_t r = 0; r < rodt_rules_count(); r++)
        assert_int_equal(rodt_source_format(rodt_rules_source(rodt_rules_at(r)), text, sizeof text, NULL), RODT_OK);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(rule_sets_stand_in_order),
        cmocka_unit_test(windows_differ_by_rule_set),
        cmocka_unit_test(what_was_not_read_is_not_law),
        cmocka_unit_test(evidence_has_its_sentence),
        cmocka_unit_test(clamp_36_changed_on_2021_10_14),
        cmocka_unit_test(no_text_before_2012_09_05),
        cmocka_unit_test(rated_stroke_decides_the_long_row),
        cmocka_unit_test(unknown_facts_are_taken_strictly),
        cmocka_unit_test(families_with_one_limit_have_it_for_every_class),
        cmocka_unit_test(unlisted_actuators_go_by_their_marks),
        cmocka_unit_test(no_long_row_means_unlisted),
        cmocka_unit_test(a_listed_actuator_goes_by_the_table_alone),
        cmocka_unit_test(long_mark_against_rated_stroke),
        cmocka_unit_test(long_mark_beside_the_standard_rated_stroke),
        cmocka_unit_test(rated_stroke_not_above_the_limit),
        cmocka_unit_test(rated_stroke_in_whole_millimetres),
        cmocka_unit_test(rated_80_knows_no_table),
        cmocka_unit_test(canada_says_nothing_of_unlisted_actuators),
        cmocka_unit_test(wrong_arguments_change_nothing),
        cmocka_unit_test(sources_write_as_one_line),
    };
    return cmocka_run_group_tests_name("rules", tests, NULL, NULL);
}
