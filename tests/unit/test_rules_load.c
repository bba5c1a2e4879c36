/* SPDX-License-Identifier: Apache-2.0 */
/* A carrier's own limits on top of a law. The tables are invented; the law's figures are those of 49 CFR
 * 393.47(e)(1). */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <cmocka.h>

#include "core/common.h"
#include "rodtravel/column_text.h"
#include "rodtravel/describe.h"
#include "rules/rules_load.h"
#include "rules/tables.h"

#define HEAD "family,size,class,limit\n"

static rodt_status load_on(const char *law, const char *text, rodt_rules **out, rodt_error *error)
{
    return rodt_rules_load(rodt_rules_find(law), "own.csv", text, strlen(text), out, error);
}

static rodt_rules *load(const char *text)
{
    rodt_rules *rules = NULL;
    rodt_error error = {0};
    rodt_status status = load_on("us-fmcsr", text, &rules, &error);
    if (status != RODT_OK)
        fail_msg("%u:%u: %s: %s", (unsigned)error.line, (unsigned)error.column, error.field, error.text);
    return rules;
}

static void expect_fault_on(const char *law, const char *text, rodt_status status, uint32_t line, uint32_t column,
                            const char *field, const char *sentence)
{
    rodt_rules *rules = NULL;
    rodt_error error = {0};
    assert_int_equal(load_on(law, text, &rules, &error), status);
    assert_null(rules);
    assert_string_equal(error.text, sentence);
    assert_string_equal(error.field, field);
    assert_int_equal(error.status, status);
    assert_int_equal(error.line, line);
    assert_int_equal(error.column, column);
    assert_int_equal(load_on(law, text, &rules, NULL), status);
}

static void expect_fault(const char *text, uint32_t line, uint32_t column, const char *field, const char *sentence)
{
    expect_fault_on("us-fmcsr", text, RODT_E_TABLE, line, column, field, sentence);
}

static void expect_laxer(const char *text, uint32_t line, uint32_t column, const char *sentence)
{
    expect_fault_on("us-fmcsr", text, RODT_E_LAXER, line, column, "limit", sentence);
}

static rodt_length inches(const char *text)
{
    rodt_length length = {0};
    if (text[0] != '\0')
        assert_int_equal(rodt_length_parse(text, &length, NULL), RODT_OK);
    return length;
}

/* Both limits of a clamp chamber, or of a bolt-type one where the size is a letter; "" = not given. */
static void expect_limits(const rodt_rules *rules, const char *size, rodt_stroke_class stroke_class, const char *rated,
                          const char *day, const char *limit, const char *law_limit)
{
    rodt_chamber chamber = {.family = size[0] >= 'A' ? RODT_FAMILY_BOLT : RODT_FAMILY_CLAMP};
    rodt_date date = {0};
    rodt_limit_answer answer;
    memcpy(chamber.size, size, strlen(size));
    chamber.stroke_class = stroke_class;
    chamber.rated_stroke = inches(rated);
    if (day[0] != '\0')
        assert_int_equal(rodt_date_parse_iso(day, &date, NULL), RODT_OK);
    assert_int_equal(rodt_rules_find_limit(rules, &chamber, date, &answer, NULL), RODT_OK);
    assert_int_equal(rodt_length_compare(answer.limit, inches(limit)), 0);
    assert_int_equal(rodt_length_compare(answer.law_limit, inches(law_limit)), 0);
    assert_true(answer.own_row == NULL || answer.own_row->limit.den != 0);
    bool own_judges = rodt_length_compare(answer.limit, answer.law_limit) != 0;
    assert_ptr_equal(answer.source, own_judges ? answer.own_row->source : answer.law_source);
    assert_int_equal(answer.evidence, own_judges ? answer.own_row->evidence : answer.law_evidence);
}

static void a_stricter_row_judges(void **state)
{
    (void)state;
    rodt_rules *rules = load(HEAD "clamp,30,standard,1 7/8\nclamp,30,long,2 1/4\nbolt,C,any,1 3/4\n");
    expect_limits(rules, "30", RODT_STROKE_CLASS_STANDARD, "", "", "1 7/8", "2");
    expect_limits(rules, "30", RODT_STROKE_CLASS_LONG, "", "2024-01-01", "2 1/4", "2 1/2");
    expect_limits(rules, "C", RODT_STROKE_CLASS_UNKNOWN, "", "2024-01-01", "1 3/4", "1 3/4");
    expect_limits(rules, "24", RODT_STROKE_CLASS_STANDARD, "", "", "1 3/4", "1 3/4");
    expect_limits(rules, "30", RODT_STROKE_CLASS_STANDARD, "", "2012-09-04", "", "");
    rodt_rules_unref(rules);
}

static void a_loaded_rule_set_names_itself(void **state)
{
    (void)state;
    rodt_rules *rules = load(HEAD "clamp,30,standard,1 7/8\n");
    const rodt_rules *law = rodt_rules_find("us-fmcsr");
    assert_string_equal(rodt_rules_id(rules), "own.csv");
    assert_string_equal(rodt_rules_title(rules), "Carrier's own limits on top of us-fmcsr");
    assert_string_equal(rodt_rules_authority(rules), "the carrier");
    assert_ptr_equal(rodt_rules_law(rules), law);
    assert_int_equal(rodt_rules_limit_count(rules), 1);
    assert_null(rodt_rules_limit_at(rules, 1));
    const rodt_limit *row = rodt_rules_limit_at(rules, 0);
    assert_string_equal(row->published, "1 7/8");
    assert_string_equal(row->size, "30");
    assert_string_equal(row->source->document, "own.csv");
    assert_int_equal(row->evidence, RODT_EVIDENCE_NONE);
    assert_int_equal(rodt_rules_evidence(rules), RODT_EVIDENCE_NONE);
    assert_ptr_equal(rodt_rules_source(rules), row->source);
    assert_int_equal(rodt_date_compare(rodt_rules_from(rules), rodt_rules_from(law)), 0);
    assert_true(rodt_rules_at_limit_passes(rules));
    assert_int_equal(rodt_pressure_compare(rodt_rules_pressure_until(rules), rodt_rules_pressure_until(law)), 0);
    assert_ptr_equal(rodt_rules_pressure_source(rules), rodt_rules_pressure_source(law));
    rodt_rules_unref(rules);
}

static void every_column_is_read(void **state)
{
    (void)state;
    rodt_rules *rules = load("# own limits\nrules,family,size,class,rated_stroke,rated_mm,limit,limit_mm,from,until,source,"
                             "evidence\nus-fmcsr,clamp,24,long,3,76,2 1/4,57.2,2020-01-01,2020-12-31,"
                             "\"Shop rule, 7\",second-hand\n");
    const rodt_limit *row = rodt_rules_limit_at(rules, 0);
    assert_string_equal(row->source->document, "Shop rule, 7");
    assert_int_equal(row->evidence, RODT_EVIDENCE_SECOND_HAND);
    assert_int_equal(rodt_length_compare(row->printed_mm, inches("57.2 mm")), 0);
    expect_limits(rules, "24", RODT_STROKE_CLASS_LONG, "3", "2020-06-01", "2 1/4", "2 1/2");
    expect_limits(rules, "24", RODT_STROKE_CLASS_LONG, "76 mm", "2020-12-31", "2 1/4", "2 1/2");
    expect_limits(rules, "24", RODT_STROKE_CLASS_LONG, "3", "2021-01-01", "2 1/2", "2 1/2");
    expect_limits(rules, "24", RODT_STROKE_CLASS_LONG, "3", "2019-12-31", "2 1/2", "2 1/2");
    expect_limits(rules, "24", RODT_STROKE_CLASS_LONG, "", "2020-06-01", "2", "2");
    rodt_rules_unref(rules);
}

/* A comment may be empty, also where lines end in CR LF. What a spreadsheet could not work out is none. */
static void a_comment_is_a_sign_and_a_blank(void **state)
{
    (void)state;
    rodt_rules *rules = load("#\r\n#\town\r\n" HEAD "#\r\nclamp,30,standard,1 7/8\r\n#");
    expect_limits(rules, "30", RODT_STROKE_CLASS_STANDARD, "", "", "1 7/8", "2");
    rodt_rules_unref(rules);
    expect_fault(HEAD "#REF!,30,standard,1 7/8\n", 2, 1, "family",
                 "expected clamp, bolt, rotochamber or DD-3, found \"#REF!\"");
}

/* The law publishes nothing for these, so there is nothing to be laxer than. */
static void a_chamber_without_a_law_limit_may_have_its_own(void **state)
{
    (void)state;
    rodt_rules *rules = load(HEAD "clamp,18,any,1 3/4\nclamp,36,long,2 1/4\n");
    expect_limits(rules, "18", RODT_STROKE_CLASS_STANDARD, "", "", "1 3/4", "");
    expect_limits(rules, "36", RODT_STROKE_CLASS_LONG, "", "", "2 1/4", "");
    expect_limits(rules, "18", RODT_STROKE_CLASS_STANDARD, "2", "", "1 3/5", "1 3/5"); /* 4/5 of the marked rated stroke is stricter */
    rodt_rules_unref(rules);
}

static void laxer_by_one_64th_is_refused(void **state)
{
    (void)state;
    expect_laxer(HEAD "clamp,30,standard,2 1/64\n", 2, 19,
                 "2 1/64 is laxer than the law, which has 2 for clamp 30 standard");
    expect_laxer(HEAD "clamp,24,standard,1 3/4\nclamp,24,long,2 1/64\n", 3, 15,
                 "2 1/64 is laxer than the law, which has 2 for clamp 24 long");
    expect_laxer(HEAD "rotochamber,50,any,3 1/64\n", 2, 20,
                 "3 1/64 is laxer than the law, which has 3 for rotochamber 50 standard");
    rodt_rules_unref(load(HEAD "clamp,30,standard,2\nclamp,24,long,2\nrotochamber,50,any,3\n"));
}

static void a_row_of_any_class_must_satisfy_each(void **state)
{
    (void)state;
    expect_laxer("family,size,class,rated_stroke,limit\nclamp,36,any,3,2 1/2\n", 2, 16,
                 "2 1/2 is laxer than the law, which has 2 2/5 for clamp 36 long"); /* 4/5 of the marked rated stroke */
    expect_laxer(HEAD "clamp,30,any,2 1/4\n", 2, 14, "2 1/4 is laxer than the law, which has 2 for clamp 30 standard");
    rodt_rules *rules = load(HEAD "clamp,30,any,2\n");
    expect_limits(rules, "30", RODT_STROKE_CLASS_STANDARD, "", "", "2", "2");
    expect_limits(rules, "30", RODT_STROKE_CLASS_LONG, "", "", "2", "2 1/2");
    rodt_rules_unref(rules);
}

/* Clamp 36: 2 1/4 until 2021-10-13, 2 1/2 from 2021-10-14. */
static void the_law_is_asked_on_every_day_of_a_row(void **state)
{
    (void)state;
    static const char head[] = "family,size,class,limit,from,until\n";
    static const struct {
        const char *days;
        const char *on; /* NULL = the row is good */
    } cases[] = {{",", "2012-09-05"},
                 {"2021-10-14,", NULL},
                 {"2021-10-13,", "2021-10-13"},
                 {"2021-10-13,2021-10-13", "2021-10-13"},
                 {"2010-01-01,2012-09-04", NULL},
                 {"2010-01-01,2012-09-05", "2012-09-05"},
                 {"2015-05-05,2030-01-01", "2015-05-05"},
                 {"2021-10-14,2030-01-01", NULL}};
    /* today first */
    expect_laxer("family,size,class,limit,from\nclamp,30,standard,2 1/64,2021-01-01\n", 2, 19,
                 "2 1/64 is laxer than the law, which has 2 for clamp 30 standard");
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        char text[200] = "", sentence[200] = "2 1/2 is laxer than the law, which has 2 1/4 for clamp 36 standard on ";
        strcat(strcat(strcat(strcat(text, head), "clamp,36,standard,2 1/2,"), cases[i].days), "\n");
        if (cases[i].on == NULL)
            rodt_rules_unref(load(text));
        else
            expect_laxer(text, 2, 19, strcat(sentence, cases[i].on));
    }
}

static void marks_decide_what_the_law_is(void **state)
{
    (void)state;
    static const char head[] = "family,size,class,rated_stroke,limit\n";
    char text[200] = "";
    strcat(strcat(text, head), "clamp,24,long,3,2 1/2\nclamp,24,long,,2\n");
    rodt_rules *rules = load(text);
    expect_limits(rules, "24", RODT_STROKE_CLASS_LONG, "3", "", "2 1/2", "2 1/2");
    expect_limits(rules, "24", RODT_STROKE_CLASS_LONG, "", "", "2", "2");
    rodt_rules_unref(rules);
    text[0] = '\0';
    expect_laxer(strcat(strcat(text, head), "clamp,24,long,2 7/8,2 1/2\n"), 2, 21,
                 "2 1/2 is laxer than the law, which has 2 for clamp 24 long");
    text[0] = '\0';
    expect_laxer(strcat(strcat(text, head), "clamp,18,standard,2 1/2,2 1/64\n"), 2, 25,
                 "2 1/64 is laxer than the law, which has 2 for clamp 18 standard");
}

static void broken_tables_are_refused(void **state)
{
    (void)state;
    expect_fault("", 0, 0, "", "the table is empty: there is no line that names the columns");
    expect_fault(HEAD, 0, 0, "", "the table has no rows");
    expect_fault("family,size,class,limit,colour\n", 1, 25, "", "no column is called \"colour\"");
    expect_fault("family,size,limit\nclamp,30,2\n", 1, 0, "", "the column \"class\" is missing");
    expect_fault(HEAD ",30,standard,2\n", 2, 1, "family", "the cell is empty");
    expect_fault(HEAD "clamp,,standard,2\n", 2, 7, "size", "the cell is empty");
    expect_fault(HEAD "clamp,30,,2\n", 2, 10, "class", "the cell is empty");
    expect_fault(HEAD "clamp,30,standard,\n", 2, 19, "limit", "the cell is empty");
    expect_fault(HEAD "clam,30,standard,2\n", 2, 1, "family",
                 "expected clamp, bolt, rotochamber or DD-3, found \"clam\"");
    expect_fault(HEAD "unknown,30,standard,2\n", 2, 1, "family",
                 "expected clamp, bolt, rotochamber or DD-3, found \"unknown\"");
    expect_fault(HEAD "clamp,100,standard,2\n", 2, 7, "size", "expected a type number, 1 to 99");
    expect_fault(HEAD "bolt,CC,any,2\n", 2, 6, "size", "expected the letter of a bolt-type chamber, A to G");
    expect_fault(HEAD "bolt,@,any,2\n", 2, 6, "size", "expected the letter of a bolt-type chamber, A to G");
    rodt_rules_unref(load(HEAD " Clamp ,30,STANDARD,2\n")); /* words as rodt_family_find takes them */
    expect_fault(HEAD "clamp,T30,standard,2\n", 2, 7, "size", "expected a type number, 1 to 99");
    expect_fault(HEAD "clamp,030,standard,2\n", 2, 7, "size", "expected a type number, 1 to 99");
    expect_fault(HEAD "bolt,H,any,2\n", 2, 6, "size", "expected the letter of a bolt-type chamber, A to G");
    expect_fault(HEAD "clamp,30,short,2\n", 2, 10, "class", "expected standard, long or any, found \"short\"");
    expect_fault(HEAD "clamp,30,standard,0\n", 2, 19, "limit", "the figure must be above zero");
    expect_fault("family,size,class,rated_stroke,limit\nclamp,24,long,16,2\n", 2, 15, "rated_stroke",
                 "a chamber is marked with 3/4 to 6 in");
    expect_fault("family,size,class,limit,limit_mm\nclamp,30,standard,1 7/8,74.6\n", 2, 25, "limit_mm",
                 "the printed millimetres are no rounding of the inches");
    expect_fault("family,size,class,limit,from,until\nclamp,30,standard,2,2024-01-02,2024-01-01\n", 2, 32, "until",
                 "the last day is before the first");
    expect_fault("family,size,class,rated_stroke,limit\nclamp,24,long,2,2\n", 2, 17, "limit",
                 "a limit must be below the rated stroke");
    expect_fault("rules,family,size,class,limit\nx,clamp,30,standard,2\n", 2, 1, "rules",
                 "the table is based on \"us-fmcsr\", this row on another rule set");
    expect_fault("rules,family,size,class,limit\nca-nsc,clamp,30,standard,2\n", 2, 1, "rules",
                 "the table is based on \"us-fmcsr\", this row on another rule set");
    expect_fault("family,size,class,limit,limit_mm,rated_mm\nclamp,30,standard,2,50.8,76\n", 2, 26, "rated_mm",
                 "millimetres without inches");
    expect_fault("family,size,class,limit,evidence\nclamp,30,standard,2,sure\n", 2, 21, "evidence",
                 "expected checked, second-hand, from-memory or common-practice, found \"sure\"");
}

/* What the readers of lengths and dates refuse is refused at the place in the line where they stopped. */
static void unreadable_figures_are_refused_in_their_place(void **state)
{
    (void)state;
    rodt_rules *rules = NULL;
    rodt_error error = {0};
    assert_int_equal(load_on("us-fmcsr", HEAD "clamp,30,standard,1 3/2\n", &rules, &error), RODT_E_TABLE);
    assert_in_range(error.column, 20, 23);
    assert_string_equal(error.field, "limit");
    assert_int_equal(load_on("us-fmcsr", "family,size,class,limit,from\nclamp,30,standard,2,2024-02-30\n", &rules, &error),
                     RODT_E_TABLE);
    assert_in_range(error.column, 21, 30);
    assert_string_equal(error.field, "from");
    assert_null(rules);
}

/* The newest row judges where no day is given, whatever the order of the rows. */
static void rows_stand_in_any_order(void **state)
{
    (void)state;
    static const char *const texts[] = {
        "family,size,class,limit,from,until\nclamp,30,any,1 7/8,,2020-01-01\nclamp,30,any,1 3/4,2020-01-02,\n",
        "family,size,class,limit,from,until\nclamp,30,any,1 3/4,2020-01-02,\nclamp,30,any,1 7/8,,2020-01-01\n"};
    for (size_t i = 0; i < COUNT_OF(texts); i++) {
        rodt_rules *own = load(texts[i]);
        expect_limits(own, "30", RODT_STROKE_CLASS_STANDARD, "", "", "1 3/4", "2");
        rodt_rules_unref(own);
    }
}

/* On a day, the row that asks for the marked rated stroke; without a day, the newest. Whatever the order. */
static void the_row_of_the_marks_or_the_newest_judges(void **state)
{
    (void)state;
    static const char *const rows[][2] = {
        {"clamp,24,long,3,1 7/8,,2020-01-01\n", "clamp,24,long,,1 3/4,,\n"},
        {"clamp,30,any,,1 7/8,2018-01-01,2018-12-31\n", "clamp,30,any,,1 3/4,2019-01-01,2019-12-31\n"}};
    for (int first = 0; first < 2; first++) {
        char text[400] = "family,size,class,rated_stroke,limit,from,until\n";
        for (size_t i = 0; i < COUNT_OF(rows); i++)
            strcat(strcat(text, rows[i][first]), rows[i][1 - first]);
        rodt_rules *own = load(text);
        expect_limits(own, "24", RODT_STROKE_CLASS_LONG, "3", "2019-01-01", "1 7/8", "2 1/2");
        expect_limits(own, "24", RODT_STROKE_CLASS_LONG, "3", "", "1 3/4", "2 1/2");
        expect_limits(own, "30", RODT_STROKE_CLASS_STANDARD, "", "", "1 3/4", "2");
        rodt_rules_unref(own);
    }
}

/* Clamp type was assumed where a row was looked up by it, were it the only one. */
static void one_row_is_enough_to_assume_by(void **state)
{
    (void)state;
    const rodt_chamber chamber = {.size = "30"};
    rodt_limit_answer answer;
    rodt_rules *own = NULL;
    assert_int_equal(load_on("rated-80", HEAD "clamp,30,any,2\n", &own, NULL), RODT_OK);
    assert_int_equal(rodt_rules_find_limit(own, &chamber, (rodt_date){0}, &answer, NULL), RODT_OK);
    assert_true(answer.assumed_clamp);
    rodt_rules_unref(own);
}

/* Where the law has no limit because the marks contradict each other, the carrier's row does not decide either. */
static void contradicting_marks_stay_without_a_limit(void **state)
{
    (void)state;
    rodt_rules *own = NULL;
    assert_int_equal(load_on("ca-nsc", HEAD "clamp,30,standard,1 7/8\n", &own, NULL), RODT_OK);
    expect_limits(own, "30", RODT_STROKE_CLASS_STANDARD, "1 1/2", "", "", "");
    expect_limits(own, "30", RODT_STROKE_CLASS_STANDARD, "2 1/2", "", "1 7/8", "2");
    rodt_rules_unref(own);
}

/* Names of another table are looked for only where it could begin. */
static void tables_have_an_end(void **state)
{
    (void)state;
    enum { ROWS = 2003 };
    static char text[64 + ROWS * 24];
    strcpy(text, HEAD);
    size_t used = strlen(text);
    for (int i = 0; i < ROWS; i++, used += strlen(text + used))
        strcpy(text + used, "clamp,30,standard,2\n");
    strcpy(text + used, "check,comparison,value,measure\n");
    rodt_rules *rules = NULL;
    rodt_error error = {0};
    assert_int_equal(load_on("us-fmcsr", text, &rules, &error), RODT_E_TABLE);
    assert_non_null(strstr(error.text, "more than"));
}

static void overlapping_rows_are_refused(void **state)
{
    (void)state;
    static const char sentence[] = "the same chamber on the same days is in line 2";
    expect_fault(HEAD "clamp,30,standard,2\nclamp,30,standard,1 7/8\n", 3, 0, "", sentence);
    expect_fault(HEAD "clamp,30,any,2\nclamp,30,standard,1 7/8\n", 3, 0, "", sentence);
    expect_fault(HEAD "clamp,24,any,1\nclamp,30,any,2\nclamp,30,any,2\n", 4, 0, "",
                 "the same chamber on the same days is in line 3");
    expect_fault(HEAD "clamp,30,long,2\nclamp,30,any,1 7/8\n", 3, 0, "", sentence);
    expect_fault("family,size,class,limit,from,until\nclamp,30,any,2,,2020-01-01\nclamp,30,any,2,2020-01-01,\n", 3, 0, "",
                 sentence);
    rodt_rules_unref(load("family,size,class,limit,from,until\nclamp,30,any,2,,2020-01-01\nclamp,30,any,2,2020-01-02,\n"));
    rodt_rules_unref(load(HEAD "clamp,30,standard,2\nclamp,30,long,2\nrotochamber,30,any,2\nDD-3,30,any,2\n"));
}

static void other_laws_can_be_stood_on(void **state)
{
    (void)state;
    rodt_rules *rules = NULL;
    assert_int_equal(load_on("us-periodic", "rules,family,size,class,limit\nus-periodic,clamp,30,standard,2\n", &rules, NULL),
                     RODT_OK);
    rodt_rules_unref(rules);
    expect_fault_on("ca-nsc", HEAD "clamp,36,standard,2 1/2\n", RODT_E_LAXER, 2, 19, "limit",
                    "2 1/2 is laxer than the law, which has 2 1/4 for clamp 36 standard");
}

static void wrong_arguments_are_refused(void **state)
{
    (void)state;
    const rodt_rules *law = rodt_rules_find("us-fmcsr");
    rodt_rules *own = load(HEAD "clamp,30,standard,2\n");
    rodt_rules *rules = NULL;
    rodt_error error = {0};
    assert_int_equal(rodt_rules_load(own, "x", HEAD, sizeof HEAD - 1, &rules, &error), RODT_E_ARGUMENT);
    assert_int_equal(error.status, RODT_E_ARGUMENT);
    assert_int_equal(rodt_rules_load(NULL, "x", HEAD, sizeof HEAD - 1, &rules, &error), RODT_E_UNKNOWN_RULES);
    assert_string_equal(error.text, "no rule set was given");
    assert_int_equal(rodt_rules_load(law, NULL, HEAD, sizeof HEAD - 1, &rules, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_rules_load(law, "x", NULL, 0, &rules, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_rules_load(law, "x", HEAD, sizeof HEAD - 1, NULL, NULL), RODT_E_ARGUMENT);
    assert_null(rules);
    rodt_rules_unref(own);
    rodt_rules_unref(NULL);
}

/* A finding points into the rule set that judged it. Users leave in any order. */
static void a_finding_outlives_the_first_user(void **state)
{
    (void)state;
    const rodt_form form = {.chamber = "30 standard", .released = "2", .applied = "3 15/16", .psi = "95"};
    rodt_rules *own = load(HEAD "clamp,30,standard,1 7/8\n");
    rodt_text_plan *plan;
    rodt_finding finding;
    char text[RODT_SENTENCE_SIZE];
    assert_int_equal(rodt_form_judge(&form, own, &finding, NULL), RODT_OK);
    assert_int_equal(rodt_text_plan_new(own, NULL, &plan, NULL), RODT_OK);
    assert_ptr_equal(rodt_rules_ref(finding.rules), own);
    rodt_rules_unref(own); /* who loaded it */
    assert_string_equal(rodt_rules_id(finding.rules), "own.csv");
    assert_string_equal(finding.own_row->published, "1 7/8");
    assert_int_equal(rodt_finding_reason_format(&finding, RODT_REASON_OVER_OWN_LIMIT, text, sizeof text, NULL),
                     RODT_OK);
    rodt_rules_unref(finding.rules);
    rodt_text_plan_free(plan); /* the last user */
}

/* Source and evidence are of the limit that judged; the law's are beside them. */
static void a_finding_names_both_sources(void **state)
{
    (void)state;
    rodt_form form = {.chamber = "30 standard", .released = "2", .applied = "3 15/16", .psi = "95"};
    rodt_rules *own = load("family,size,class,limit,source,evidence\nclamp,30,standard,1 7/8,Shop rule 7,second-hand\n"
                           "clamp,24,standard,1 3/4,Shop rule 8,\n");
    rodt_finding finding;
    assert_int_equal(rodt_form_judge(&form, own, &finding, NULL), RODT_OK);
    assert_string_equal(finding.source->document, "Shop rule 7");
    assert_int_equal(finding.evidence, RODT_EVIDENCE_SECOND_HAND);
    assert_string_equal(finding.law_source->document, "49 CFR Part 393");
    assert_int_equal(finding.law_evidence, RODT_EVIDENCE_CHECKED);
    assert_false(rodt_finding_has(&finding, RODT_REASON_LIMIT_UNCONFIRMED)); /* only a law can be confirmed */
    char json[4000];
    assert_int_equal(rodt_finding_json_format(&finding, NULL, 0, json, sizeof json, NULL), RODT_OK);
    assert_non_null(strstr(json, "\"source\": \"Shop rule 7\", \"evidence\": \"second-hand\", \"law_source\": "
                                 "\"49 CFR Part 393, "));
    assert_non_null(strstr(json, "\"law_evidence\": \"checked\""));
    form.chamber = "24 standard"; /* the same limit as the law: the law judges */
    assert_int_equal(rodt_form_judge(&form, own, &finding, NULL), RODT_OK);
    assert_non_null(finding.own_row);
    assert_ptr_equal(finding.source, finding.law_source);
    assert_int_equal(finding.evidence, RODT_EVIDENCE_CHECKED);
    form.chamber = "20 standard";
    assert_int_equal(rodt_form_judge(&form, own, &finding, NULL), RODT_OK);
    assert_ptr_equal(finding.source, finding.law_source);
    assert_int_equal(finding.law_evidence, RODT_EVIDENCE_CHECKED);
    rodt_rules_unref(own);
}

static void compiled_in_rule_sets_are_not_counted(void **state)
{
    (void)state;
    const rodt_rules *law = rodt_rules_find("us-fmcsr");
    assert_ptr_equal(rodt_rules_ref(law), law);
    for (int i = 0; i < 3; i++)
        rodt_rules_unref(law);
    assert_string_equal(rodt_rules_id(law), "us-fmcsr");
    assert_null(rodt_rules_ref(NULL));
}

static void names_are_cut_between_characters(void **state)
{
    (void)state;
    static const char text[] = HEAD "clamp,30,standard,2\n";
    char name[] = "abcdefghijklmnopqrstuvwxyzabcdefghijk\xE2\x82\xAC.csv"; /* the 38th character is three bytes */
    rodt_rules *rules = NULL;
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), name, text, strlen(text), &rules, NULL), RODT_OK);
    assert_string_equal(rodt_rules_id(rules), "abcdefghijklmnopqrstuvwxyzabcdefghijk");
    rodt_rules_unref(rules);
    static const char as_long[] = "own limits, names as long as they may b\xC3"; /* 40 bytes, and without the first 39 */
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), as_long + 1, text, strlen(text), &rules, NULL), RODT_OK);
    assert_string_equal(rodt_rules_id(rules), as_long + 1);
    rodt_rules_unref(rules);
}

/* A finding that was kept names its rule set: a carrier's must not look like the law. */
static void a_name_that_misleads_is_refused(void **state)
{
    (void)state;
    static const char text[] = HEAD "clamp,30,standard,2\n";
    static const char *const names[] = {"", "  ", "us-fmcsr", "us-cdl", "own\n", "\x1b[1m", "own\x7f"};
    const rodt_rules *law = rodt_rules_find("us-fmcsr");
    rodt_rules *rules = NULL;
    for (size_t i = 0; i < COUNT_OF(names); i++) {
        rodt_error error = {0};
        assert_int_equal(rodt_rules_load(law, names[i], text, strlen(text), &rules, &error), RODT_E_ARGUMENT);
        assert_int_equal(error.status, RODT_E_ARGUMENT);
        assert_string_equal(error.field, "name");
        assert_true(strlen(error.text) > 10);
        assert_null(rules);
    }
    assert_int_equal(rodt_rules_load(law, "us-fmcsr.csv", text, strlen(text), &rules, NULL), RODT_OK);
    rodt_rules_unref(rules);
}

/* Type 14 and 18 have no limit in any law, and a place in the table of volumes. */
static void rows_that_never_act_are_refused(void **state)
{
    (void)state;
    static const char long_stroke[] = "no chamber has a stroke of more than 6 in";
    expect_fault(HEAD "clamp,30,standard,1 7/8\nclamp,31,standard,1 7/8\n", 3, 7, "size",
                 "no table of chambers has clamp 31");
    expect_fault(HEAD "rotochamber,18,any,1\n", 2, 13, "size", "no table of chambers has rotochamber 18");
    expect_fault(HEAD "DD-3,24,any,1\n", 2, 6, "size", "no table of chambers has DD-3 24");
    expect_fault_on("ca-nsc", HEAD "bolt,A,any,9\n", RODT_E_TABLE, 2, 12, "limit", long_stroke);
    expect_fault(HEAD "clamp,18,standard,6 1/64\n", 2, 19, "limit", long_stroke);
    rodt_rules *rules = NULL;
    assert_int_equal(load_on("ca-nsc", HEAD "clamp,14,any,1 1/2\nclamp,18,any,1 3/4\nbolt,A,any,6\nDD-3,30,any,2\n",
                             &rules, NULL), RODT_OK);
    rodt_rules_unref(rules);
}

/* A row for every clamp type that a table of chambers or of volumes has, and for every chamber of other families. */
static void rows_of_every_chamber_act(void **state)
{
    (void)state;
    for (int family = RODT_FAMILY_CLAMP; family <= RODT_FAMILY_DD_3; family++) {
        for (int size = 1; size <= (family == RODT_FAMILY_BOLT ? 7 : 99); size++) {
            char text[100], written[8] = "";
            bool known = false;
            rodt_rules *rules = NULL;
            if (family == RODT_FAMILY_BOLT)
                written[0] = (char)('A' + size - 1);
            else
                snprintf(written, sizeof written, "%d", size);
            for (size_t i = 0; i < rodt_chamber_row_count(); i++)
                known |= rodt_chamber_row_at(i)->family == (rodt_family)family &&
                         strcmp(rodt_chamber_row_at(i)->size, written) == 0;
            for (size_t i = 0; i < rodti_table_volumes_count; i++)
                known |= family == RODT_FAMILY_CLAMP && strcmp(rodti_table_volumes[i].size, written) == 0;
            snprintf(text, sizeof text, HEAD "%s,%s,any,1\n", rodt_family_name((rodt_family)family), written);
            assert_int_equal(load_on("us-fmcsr", text, &rules, NULL), known ? RODT_OK : RODT_E_TABLE);
            rodt_rules_unref(rules);
        }
    }
}

/* The last block that was given out, and what lies behind it. */
static struct {
    unsigned char *at;
    size_t size;
} given;
enum { BEHIND = 4096, UNUSED = 0x5A };

static void *note_block(size_t size)
{
    given.at = malloc(size + BEHIND);
    given.size = size;
    assert_non_null(given.at);
    memset(given.at, UNUSED, size + BEHIND);
    return given.at;
}

/* How many bytes at the end of the block for a text are not used. */
static size_t spare_bytes(const char *text, size_t size)
{
    rodt_rules *rules = NULL;
    assert_int_equal(rodti_rules_load_with(note_block, rodt_rules_find("us-fmcsr"), NULL,
                                           "a name of thirty-nine bytes, and no more", text, size, &rules, NULL), RODT_OK);
    size_t used = given.size + BEHIND;
    while (given.at[used - 1] == UNUSED)
        used--;
    assert_in_range(used, 1, given.size);
    rodt_rules_unref(rules);
    return given.size - used;
}

/* A row of air checks has room for words that it may not need. Where an address takes half of the widest number, its
 * alignment may take some bytes, too. */
static void a_block_is_as_large_as_what_it_holds(void **state)
{
    (void)state;
    static const char limits[] = "family,size,class,limit,source\nclamp,30,standard,1 7/8,A\nclamp,24,standard,1 3/4,B\n"
                                 "bolt,C,any,1,C\n";
    static const char checks[] = "check,comparison,value,measure,published,setup,source\n"
                                 "cut-in,not-less-than,90,psi,as published,a,A\ncut-out,not-less-than,90,psi,as,b,B\n";
    char both[sizeof limits + sizeof checks];
    const size_t padding = sizeof(void *) < sizeof(int64_t) ? sizeof(void *) : 0;
    assert_in_range(spare_bytes(limits, sizeof limits - 1), 0, padding);
    static const char longer[] = "check,comparison,value,measure,published,setup,source\n"
                                 "cut-in,not-less-than,90,psi,as published elsewhere,as set up,A\n"
                                 "cut-out,not-less-than,90,psi,as,b,a long source\n";
    const size_t each = spare_bytes(checks, sizeof checks - 1) / 2;
    assert_in_range(each, 100, 300);
    assert_in_range(spare_bytes(longer, sizeof longer - 1), 2 * each - padding, 2 * each + padding);
    strcat(strcpy(both, limits), checks);
    assert_in_range(spare_bytes(both, sizeof both - 2), 2 * each - padding, 2 * each + padding);
}

static void hostile_sizes_are_refused(void **state)
{
    (void)state;
    enum { MOST = 1024 * 1024 };
    static char text[MOST + 1];
    memset(text, '#', sizeof text);
    rodt_rules *rules = NULL;
    rodt_error fault = {0};
    const rodt_rules *law = rodt_rules_find("us-fmcsr");
    assert_int_equal(rodt_rules_load(law, "x", text, sizeof text, &rules, &fault), RODT_E_TABLE);
    assert_string_equal(fault.text, "this is longer than any table of limits");
    assert_int_equal(fault.column, 0);
    static const char table[] = HEAD "clamp,30,standard,2\n# ";
    memcpy(text, table, sizeof table - 1);
    assert_int_equal(rodt_rules_load(law, "x", text, MOST, &rules, NULL), RODT_OK);
    rodt_rules_unref(rules);
    rules = NULL;
    size_t used = strlen(HEAD);
    memcpy(text, HEAD, used);
    static const char row[] = "clamp,9,any,1\n";
    for (unsigned i = 0; i < 1001; i++, used += strlen(row))
        memcpy(text + used, row, strlen(row));
    rodt_error error = {0};
    assert_int_equal(rodt_rules_load(law, "x", text, used - strlen(row), &rules, &error), RODT_E_TABLE);
    assert_string_equal(error.text, "the same chamber on the same days is in line 2");
    assert_int_equal(rodt_rules_load(law, "x", text, used, &rules, &error), RODT_E_TABLE);
    assert_string_equal(error.text, "more than 1000 rows");
    assert_null(rules);
}

static const char whole_table[] =
    "\xEF\xBB\xBF# own\r\nrules,family,size,class,rated_stroke,rated_mm,limit,limit_mm,from,until,source,evidence\r\n"
    "us-fmcsr,clamp,24,long,3,76,2 1/4,57.2,2020-01-01,2020-12-31,\"Rule \"\"7\"\"\",second-hand\r\n"
    ",bolt,G,any,,,1\xC2\xBE,,2021-10-14,,,\r\n";

/* Cut anywhere, a table loads or is refused with a sentence; nothing is read beyond its end. */
static void every_beginning_of_a_table_is_safe(void **state)
{
    (void)state;
    unsigned loaded = 0;
    for (size_t size = 0; size < sizeof whole_table; size++) {
        char *copy = malloc(size + (size == 0));
        assert_non_null(copy);
        memcpy(copy, whole_table, size);
        rodt_rules *rules = NULL;
        rodt_error error = {0};
        rodt_status status = rodt_rules_load(rodt_rules_find("us-fmcsr"), "x", copy, size, &rules, &error);
        assert_true(status == RODT_OK ? rules != NULL : rules == NULL && error.text[0] != '\0');
        loaded += status == RODT_OK;
        rodt_rules_unref(rules);
        free(copy);
    }
    assert_in_range(loaded, 1, 10);
}

static void every_changed_byte_is_safe(void **state)
{
    (void)state;
    char copy[sizeof whole_table];
    static const char signs[] = {'\0', '"', ',', '\n', '\xFF', '9', ' '};
    for (size_t i = 0; i + 1 < sizeof copy; i++) {
        for (size_t k = 0; k < sizeof signs; k++) {
            memcpy(copy, whole_table, sizeof copy);
            copy[i] = signs[k];
            rodt_rules *rules = NULL;
            rodt_status status =
                rodt_rules_load(rodt_rules_find("us-fmcsr"), "x", copy, sizeof copy - 1, &rules, NULL);
            assert_true((status == RODT_OK) == (rules != NULL));
            rodt_rules_unref(rules);
        }
    }
}

static void *no_memory(size_t size)
{
    (void)size;
    return NULL;
}

static void no_memory_is_a_status(void **state)
{
    (void)state;
    static const char text[] = HEAD "clamp,30,standard,2\n";
    rodt_rules *rules = NULL;
    rodt_error error = {0};
    assert_int_equal(rodti_rules_load_with(no_memory, rodt_rules_find("us-fmcsr"), NULL, "x", text, strlen(text), &rules, &error),
                     RODT_E_MEMORY);
    assert_null(rules);
    assert_int_equal(error.status, RODT_E_MEMORY);
    assert_true(error.text[0] != '\0');
    /* A table that cannot be read asks for none. */
    assert_int_equal(rodti_rules_load_with(no_memory, rodt_rules_find("us-fmcsr"), NULL, "x", "x\n", 2, &rules, &error),
                     RODT_E_TABLE);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_stricter_row_judges),
        cmocka_unit_test(a_loaded_rule_set_names_itself),
        cmocka_unit_test(every_column_is_read),
        cmocka_unit_test(a_comment_is_a_sign_and_a_blank),
        cmocka_unit_test(a_chamber_without_a_law_limit_may_have_its_own),
        cmocka_unit_test(laxer_by_one_64th_is_refused),
        cmocka_unit_test(a_row_of_any_class_must_satisfy_each),
        cmocka_unit_test(the_law_is_asked_on_every_day_of_a_row),
        cmocka_unit_test(marks_decide_what_the_law_is),
        cmocka_unit_test(broken_tables_are_refused),
        cmocka_unit_test(unreadable_figures_are_refused_in_their_place),
        cmocka_unit_test(rows_stand_in_any_order),
        cmocka_unit_test(the_row_of_the_marks_or_the_newest_judges),
        cmocka_unit_test(one_row_is_enough_to_assume_by),
        cmocka_unit_test(contradicting_marks_stay_without_a_limit),
        cmocka_unit_test(tables_have_an_end),
        cmocka_unit_test(overlapping_rows_are_refused),
        cmocka_unit_test(other_laws_can_be_stood_on),
        cmocka_unit_test(wrong_arguments_are_refused),
        cmocka_unit_test(a_finding_outlives_the_first_user),
        cmocka_unit_test(a_finding_names_both_sources),
        cmocka_unit_test(compiled_in_rule_sets_are_not_counted),
        cmocka_unit_test(names_are_cut_between_characters),
        cmocka_unit_test(a_name_that_misleads_is_refused),
        cmocka_unit_test(rows_that_never_act_are_refused),
        cmocka_unit_test(rows_of_every_chamber_act),
        cmocka_unit_test(a_block_is_as_large_as_what_it_holds),
        cmocka_unit_test(hostile_sizes_are_refused),
        cmocka_unit_test(every_beginning_of_a_table_is_safe),
        cmocka_unit_test(every_changed_byte_is_safe),
        cmocka_unit_test(no_memory_is_a_status),
    };
    return cmocka_run_group_tests_name("rules_load", tests, NULL, NULL);
}
