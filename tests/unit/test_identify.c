/* SPDX-License-Identifier: Apache-2.0 */
/* Which chambers are left by what was seen, what settles them, and by which limit to judge until then. Limits and
 * diameters: 49 CFR 393.47(e)(1). Signs of long stroke and rated strokes: accounts of SAE J1817, second-hand. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "core/common.h"
#include "rodtravel/identify.h"
#include "support.h"

/* What a person says; NULL = nothing. */
typedef struct seen {
    const char *stamp;
    const char *rated;
    const char *diameter;
    const char *division;
    rodt_family family;
    rodt_port port;
    rodt_tag tag;
} seen;

static const rodt_date newest = {0};

static rodt_length length_of(const char *text)
{
    rodt_length length = {0};
    if (text != NULL)
        assert_int_equal(rodt_length_parse(text, &length, NULL), RODT_OK);
    return length;
}

static rodt_clues clues_of(const seen *what)
{
    rodt_clues clues = {.family = what->family, .port = what->port, .tag = what->tag};
    if (what->stamp != NULL)
        assert_int_equal(rodt_chamber_parse(what->stamp, &clues.stamp, NULL), RODT_OK);
    clues.rated_stroke = length_of(what->rated);
    clues.diameter = length_of(what->diameter);
    clues.diameter_division = length_of(what->division);
    return clues;
}

static rodt_identification identify_by(const char *rules, seen what)
{
    rodt_identification found;
    rodt_clues clues = clues_of(&what);
    assert_int_equal(rodt_clues_identify(&clues, rodt_rules_find(rules), newest, &found, NULL), RODT_OK);
    return found;
}

static rodt_identification identify(seen what) { return identify_by("us-fmcsr", what); }

static void put_length(char *text, size_t size, const char *before, rodt_length length)
{
    char written[RODT_LENGTH_TEXT_SIZE] = "none";
    size_t used = strlen(text);
    if (rodt_length_given(length))
        assert_int_equal(rodt_length_format(length, written, sizeof written, NULL), RODT_OK);
    snprintf(text + used, size - used, "%s%s", before, written);
}

/* "clamp 20 long, rated 3: 2 1/2 | ...", best first. */
static void expect(rodt_identification found, const char *candidates, const char *strict)
{
    char text[4000] = "";
    char limit[RODT_LENGTH_TEXT_SIZE] = "";
    for (size_t i = 0; i < found.count; i++) {
        char name[RODT_CHAMBER_TEXT_SIZE];
        size_t used = strlen(text);
        assert_int_equal(rodt_chamber_format(&found.candidates[i].chamber, name, sizeof name, NULL), RODT_OK);
        snprintf(text + used, sizeof text - used, "%s%s", i > 0 ? " | " : "", name);
        if (rodt_length_given(found.candidates[i].chamber.rated_stroke))
            put_length(text, sizeof text, ", rated ", found.candidates[i].chamber.rated_stroke);
        put_length(text, sizeof text, ": ", found.candidates[i].limit);
    }
    put_length(limit, sizeof limit, "", found.strict_limit);
    assert_string_equal(text, candidates);
    assert_string_equal(limit, strict);
}

static const char *const every_30 =
    "clamp 30 standard: 2 | DD-3 30: 2 1/4 | rotochamber 30: 2 1/4 | clamp 30 long: 2 1/2";

/* ---- The stamp ---- */

static void test_stamp_alone(void **state)
{
    (void)state;
    expect(identify((seen){.stamp = "30"}), every_30, "2");
    expect(identify((seen){.stamp = "clamp 30"}), "clamp 30 standard: 2 | clamp 30 long: 2 1/2", "2");
    expect(identify((seen){.stamp = "30L"}), "clamp 30 long: 2 1/2", "2 1/2");
    expect(identify((seen){.stamp = "clamp 30 standard"}), "clamp 30 standard: 2", "2");
    expect(identify((seen){.stamp = "bolt C"}), "bolt C: 1 3/4", "1 3/4");
    expect(identify((seen){.stamp = "DD-3"}), "DD-3 30: 2 1/4", "2 1/4");
    expect(identify((seen){.stamp = "50"}), "rotochamber 50: 3", "3");
    expect(identify((seen){.stamp = "clamp 6"}), "clamp 6 standard: 1 1/4", "1 1/4");
    expect(identify((seen){.stamp = "24LS"}), "clamp 24 long: 2 | clamp 24 long, rated 3: 2 1/2", "2");
}

/* The first number is the service chamber, and the second one stays with it. */
static void test_double_marks(void **state)
{
    (void)state;
    expect(identify((seen){.stamp = "24/30"}),
           "clamp 24/30 standard: 1 3/4 | clamp 24/30 long: 2 | clamp 24/30 long, rated 3: 2 1/2", "1 3/4");
    expect(identify((seen){.stamp = "3030", .rated = "2.5"}), "clamp 30/30 standard: 2", "2");
}

/* No table has 18: it is listed as stamped, and what is marked on it limits its stroke by 393.47(e)(2). */
static void test_stamp_of_no_table(void **state)
{
    (void)state;
    expect(identify((seen){.stamp = "18"}), "18: none", "none");
    expect(identify((seen){.stamp = "18", .rated = "2.5"}), "18, rated 2 1/2: 2", "2");
    expect(identify((seen){.stamp = "clamp 36 long"}), "clamp 36 long: none", "none");
    expect(identify((seen){.stamp = "36L", .rated = "3"}), "clamp 36 long, rated 3: 2 2/5", "2 2/5");
    rodt_identification found = identify((seen){.stamp = "18", .diameter = "8 1/8", .family = RODT_FAMILY_CLAMP});
    expect(found, "clamp 18: none", "none");
    assert_int_equal(found.contradiction, 0);
}

static void test_marked_limit(void **state)
{
    (void)state;
    rodt_clues clues = {.stamp = {.size = "18", .marked_limit = {3, 2}, .rated_stroke = {5, 2}}};
    rodt_identification found;
    assert_int_equal(rodt_clues_identify(&clues, rodt_rules_find("us-fmcsr"), newest, &found, NULL), RODT_OK);
    assert_int_equal(found.count, 1);
    assert_int_equal(rodt_length_compare(found.strict_limit, (rodt_length){3, 2}), 0);
}

/* ---- Diameters ---- */

/* All three lie within 1/16 in of each other; no division of a tape tells them apart. */
static void test_three_families_within_a_sixteenth(void **state)
{
    (void)state;
    static const char *const readings[] = {"8 3/32", "8 1/8", "8 1/16", "206 mm", "205.6 mm"};
    static const char *const divisions[] = {NULL, "1/16", "1/32", "1 mm"};
    for (size_t i = 0; i < COUNT_OF(readings); i++) {
        for (size_t j = 0; j < COUNT_OF(divisions); j++) {
            rodt_identification found = identify((seen){.diameter = readings[i], .division = divisions[j]});
            assert_int_equal(found.count, 4);
            assert_int_equal(found.next_observation, RODT_OBSERVATION_FAMILY);
            assert_int_equal(rodt_length_compare(found.strict_limit, (rodt_length){7, 4}), 0);
        }
    }
    expect(identify((seen){.diameter = "8 1/8", .division = "1/32"}),
           "DD-3 30: 2 1/4 | clamp 30 standard: 2 | clamp 30 long: 2 1/2 | bolt C: 1 3/4", "1 3/4");
}

static bool is_listed(const rodt_identification *found, rodt_family family, const char *size)
{
    for (size_t i = 0; i < found->count; i++) {
        if (found->candidates[i].chamber.family == family && strcmp(found->candidates[i].chamber.size, size) == 0)
            return true;
    }
    return false;
}

/* Bolt C is 8 1/16 in wide. Half a division and 1/16 in: at the edge inside, 1/64 in beyond it outside. */
static void test_edge_of_the_tolerance(void **state)
{
    (void)state;
    static const struct {
        const char *diameter;
        const char *division;
        bool inside;
    } cases[] = {{"8 9/64", "1/32", true}, {"8 5/32", "1/32", false}, {"8 3/16", NULL, true},
                 {"8 13/64", NULL, false}, {"7 15/16", NULL, true},   {"7 59/64", NULL, false}};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_identification found = identify((seen){.diameter = cases[i].diameter, .division = cases[i].division});
        assert_int_equal(is_listed(&found, RODT_FAMILY_BOLT, "C"), cases[i].inside);
    }
}

static void test_same_diameter(void **state)
{
    (void)state;
    rodt_identification found = identify((seen){.diameter = "5 1/4", .division = "1/32"});
    expect(found, "bolt D: 1 1/4 | clamp 9 standard: 1 3/8", "1 1/4");
    assert_int_equal(found.next_observation, RODT_OBSERVATION_FAMILY);
    assert_int_equal(rodt_length_compare(found.candidates[0].diameter_distance, (rodt_length){0, 1}), 0);
    assert_int_equal(found.candidates[1].clues_for, RODT_CLUE_DIAMETER);
}

static void test_no_chamber_is_so_small(void **state)
{
    (void)state;
    rodt_identification found = identify((seen){.diameter = "2"});
    expect(found, "", "none");
    assert_int_equal(found.contradiction, 0);
    assert_int_equal(found.next_observation, RODT_OBSERVATION_NOTHING);
}

/* Every two chambers that a tape read to eighths cannot tell apart are both listed. */
static void test_close_pairs(void **state)
{
    (void)state;
    unsigned pairs = 0;
    for (size_t i = 0; i < rodt_chamber_row_count(); i++) {
        const rodt_chamber_row *row = rodt_chamber_row_at(i);
        rodt_clues clues = {.diameter = row->outside_diameter};
        rodt_identification found;
        assert_int_equal(rodt_clues_identify(&clues, rodt_rules_find("us-fmcsr"), newest, &found, NULL), RODT_OK);
        for (size_t j = 0; j < rodt_chamber_row_count(); j++) {
            const rodt_chamber_row *other = rodt_chamber_row_at(j);
            rodt_length apart;
            assert_int_equal(rodt_length_subtract(row->outside_diameter, other->outside_diameter, &apart), RODT_OK);
            bool close = llabs(apart.num) * 8 <= apart.den;
            assert_int_equal(is_listed(&found, other->family, other->size), close);
            pairs += close && i != j;
        }
    }
    assert_true(pairs >= 8);
}

/* ---- Long stroke ---- */

/* Port and tag say long, so the size has its long rows; the rated stroke of just 3 in (76 mm) chooses among two. */
static void test_signs_of_long_stroke(void **state)
{
    (void)state;
    expect(identify((seen){.stamp = "clamp 30", .port = RODT_PORT_SQUARE}), "clamp 30 long: 2 1/2", "2 1/2");
    expect(identify((seen){.stamp = "30", .tag = RODT_TAG_TRAPEZOID}), "clamp 30 long: 2 1/2", "2 1/2");
    rodt_identification found = identify((seen){.stamp = "20", .port = RODT_PORT_SQUARE});
    expect(found, "clamp 20 long: 2 | clamp 20 long, rated 3: 2 1/2", "2");
    assert_int_equal(found.next_observation, RODT_OBSERVATION_RATED_STROKE);
    expect(identify((seen){.stamp = "20", .port = RODT_PORT_SQUARE, .rated = "3"}),
           "clamp 20 long, rated 3: 2 1/2", "2 1/2");
    expect(identify((seen){.stamp = "24L", .rated = "76 mm"}), "clamp 24 long, rated 3: 2 1/2", "2 1/2");
    expect(identify((seen){.stamp = "24L", .rated = "76.2 mm"}), "clamp 24 long, rated 3: 2 1/2", "2 1/2");
    expect(identify((seen){.stamp = "24L", .rated = "75 mm"}), "clamp 24 long: 2", "2");
    expect(identify((seen){.stamp = "24L", .rated = "2.5"}), "clamp 24 long: 2", "2");
}

/* A round port and a lost tag prove nothing, neither for standard nor against a stamped L. */
static void test_missing_signs_prove_nothing(void **state)
{
    (void)state;
    expect(identify((seen){.stamp = "clamp 30", .port = RODT_PORT_ROUND, .tag = RODT_TAG_NONE}),
           "clamp 30 standard: 2 | clamp 30 long: 2 1/2", "2");
    rodt_identification found = identify((seen){.stamp = "30LS", .port = RODT_PORT_ROUND, .tag = RODT_TAG_NONE});
    expect(found, "clamp 30 long: 2 1/2", "2 1/2");
    assert_int_equal(found.contradiction, 0);
}

/* A rated stroke alone makes nothing long; its published figures rank, and never rule a class out. */
static void test_rated_stroke_is_no_sign(void **state)
{
    (void)state;
    expect(identify((seen){.stamp = "clamp 20", .rated = "3"}),
           "clamp 20 long, rated 3: 2 1/2", "2 1/2"); /* the mark is the sign of that row */
    expect(identify((seen){.stamp = "clamp 20", .rated = "2.5"}),
           "clamp 20 standard: 1 3/4 | clamp 20 long: 2", "1 3/4");
    expect(identify((seen){.stamp = "clamp 20", .rated = "2.25"}),
           "clamp 20 standard: 1 3/4 | clamp 20 long: 2", "1 3/4");
    expect(identify((seen){.stamp = "clamp 24", .rated = "2.5"}),
           "clamp 24 standard: 1 3/4 | clamp 24 long: 2", "1 3/4");
    expect(identify((seen){.stamp = "clamp 16", .rated = "3"}),
           "clamp 16 standard: 1 3/4 | clamp 16 long: 2", "1 3/4");
}

/* ---- Situations ---- */

/* A type 30 whose tag is gone and whose port is round: judged as standard, and a sign would change it. */
static void test_mark_in_doubt(void **state)
{
    (void)state;
    rodt_identification found = identify((seen){.stamp = "clamp 30", .port = RODT_PORT_ROUND, .tag = RODT_TAG_NONE});
    expect(found, "clamp 30 standard: 2 | clamp 30 long: 2 1/2", "2");
    assert_int_equal(found.next_observation, RODT_OBSERVATION_LONG_SIGN);
}

/* "30" from a list: the family decides whether 2 1/8 in is over. */
static void test_family_not_asked(void **state)
{
    (void)state;
    assert_int_equal(identify((seen){.stamp = "30"}).next_observation, RODT_OBSERVATION_FAMILY);
    expect(identify((seen){.stamp = "30", .family = RODT_FAMILY_ROTOCHAMBER}), "rotochamber 30: 2 1/4", "2 1/4");
    expect(identify((seen){.stamp = "30", .family = RODT_FAMILY_DD_3}), "DD-3 30: 2 1/4", "2 1/4");
}

/* Only a family: the size is what to look at. */
static void test_nothing_but_a_family(void **state)
{
    (void)state;
    rodt_identification found = identify((seen){.family = RODT_FAMILY_CLAMP});
    assert_int_equal(found.count, 15);
    assert_int_equal(found.next_observation, RODT_OBSERVATION_STAMP);
    assert_int_equal(rodt_length_compare(found.strict_limit, (rodt_length){5, 4}), 0);
    assert_int_equal(identify((seen){.port = RODT_PORT_ROUND}).count, 31);
}

/* One limit left: nothing needs to be told apart. */
static void test_one_limit_settles(void **state)
{
    (void)state;
    rodt_identification found = identify((seen){.stamp = "30", .family = RODT_FAMILY_CLAMP, .port = RODT_PORT_SQUARE});
    assert_int_equal(found.next_observation, RODT_OBSERVATION_NOTHING);
    found = identify((seen){.diameter = "6 3/16", .division = "1/32", .family = RODT_FAMILY_BOLT});
    expect(found, "bolt E: 1 3/8", "1 3/8");
    assert_int_equal(found.next_observation, RODT_OBSERVATION_NOTHING);
}

/* 86 FR 57076 changed the 36 on 2021-10-14; before 2012-09-05 the rule set has no text. */
static void test_limits_of_the_day(void **state)
{
    (void)state;
    rodt_date day;
    rodt_identification found;
    rodt_clues clues = {.stamp = {.family = RODT_FAMILY_CLAMP, .size = "36"}};
    assert_int_equal(rodt_date_make(2021, 10, 13, &day), RODT_OK);
    assert_int_equal(rodt_clues_identify(&clues, rodt_rules_find("us-fmcsr"), day, &found, NULL), RODT_OK);
    expect(found, "clamp 36 standard: 2 1/4", "2 1/4");
    assert_int_equal(rodt_date_make(2021, 10, 14, &day), RODT_OK);
    assert_int_equal(rodt_clues_identify(&clues, rodt_rules_find("us-fmcsr"), day, &found, NULL), RODT_OK);
    expect(found, "clamp 36 standard: 2 1/2", "2 1/2");
    assert_int_equal(rodt_date_make(2010, 1, 1, &day), RODT_OK);
    assert_int_equal(rodt_clues_identify(&clues, rodt_rules_find("us-fmcsr"), day, &found, NULL), RODT_OK);
    expect(found, "clamp 36 standard: none", "none");
}

/* Rules without rows draw no classes: each chamber once, limited by its mark. Rules without bolts list them bare. */
static void test_other_rules(void **state)
{
    (void)state;
    expect(identify_by("rated-80", (seen){.stamp = "clamp 30", .rated = "2.5"}), "clamp 30, rated 2 1/2: 2", "2");
    expect(identify_by("rated-80", (seen){.stamp = "clamp 30", .port = RODT_PORT_SQUARE}), "clamp 30: none", "none");
    expect(identify_by("ca-nsc", (seen){.stamp = "bolt C"}), "bolt C: none", "none");
}

/* A carrier's own limit is what is shown where it is the stricter one. */
static void test_own_limits(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit\nclamp,30,standard,1 7/8\nclamp,36,long,2\n";
    rodt_rules *own;
    rodt_identification found;
    rodt_clues clues = {.stamp = {.family = RODT_FAMILY_CLAMP, .size = "30"}};
    const rodt_rules *law = rodt_rules_find("us-fmcsr");
    assert_int_equal(rodt_rules_load(law, "own", table, sizeof table - 1, &own, NULL), RODT_OK);
    assert_int_equal(rodt_clues_identify(&clues, own, newest, &found, NULL), RODT_OK);
    expect(found, "clamp 30 standard: 1 7/8 | clamp 30 long: 2 1/2", "1 7/8");
    memcpy(clues.stamp.size, "36", 3);
    assert_int_equal(rodt_clues_identify(&clues, own, newest, &found, NULL), RODT_OK);
    expect(found, "clamp 36 long: 2 | clamp 36 standard: 2 1/2", "2");
    rodt_rules_unref(own);
    /* A row for every class adds no kind to those of the law; a rated stroke that the law has no row for does. */
    static const char wide[] = "family,size,class,rated_stroke,limit\nclamp,30,any,,1 7/8\nclamp,36,long,3,2 1/8\n";
    assert_int_equal(rodt_rules_load(rodt_rules_find("ca-nsc"), "own", wide, sizeof wide - 1, &own, NULL), RODT_OK);
    memcpy(clues.stamp.size, "30", 3);
    assert_int_equal(rodt_clues_identify(&clues, own, newest, &found, NULL), RODT_OK);
    expect(found, "clamp 30 standard: 1 7/8 | clamp 30 long: 1 7/8", "1 7/8");
    memcpy(clues.stamp.size, "36", 3);
    assert_int_equal(rodt_clues_identify(&clues, own, newest, &found, NULL), RODT_OK);
    expect(found, "clamp 36 long, rated 3: 2 1/8 | clamp 36 standard: 2 1/4", "2 1/8");
    rodt_rules_unref(own);
}

/* A stamp of no table is long by a sign that any clamp chamber can have; its limit stays unpublished. */
static void signs_on_a_stamp_of_no_table(void **state)
{
    (void)state;
    rodt_identification found = identify((seen){.stamp = "18", .port = RODT_PORT_SQUARE});
    expect(found, "18: none", "none");
    assert_int_equal(found.contradiction, 0);
    /* Beside chambers of another family it is one that no diameter is published of. */
    found = identify((seen){.stamp = "roto 18", .family = RODT_FAMILY_CLAMP});
    assert_int_equal(found.contradiction, RODT_CLUE_STAMP | RODT_CLUE_FAMILY);
    assert_true(is_listed(&found, RODT_FAMILY_ROTOCHAMBER, "18") && is_listed(&found, RODT_FAMILY_CLAMP, "30"));
    assert_int_equal(found.next_observation, RODT_OBSERVATION_STAMP);
}

/* What a program fills by hand: any member of the stamp alone is a clue. */
static void each_member_of_a_stamp_is_a_clue(void **state)
{
    (void)state;
    const rodt_rules *law = rodt_rules_find("us-fmcsr");
    rodt_identification found;
    const rodt_clues dd3 = {.stamp = {.family = RODT_FAMILY_DD_3}};
    assert_int_equal(rodt_clues_identify(&dd3, law, newest, &found, NULL), RODT_OK);
    expect(found, "DD-3 30: 2 1/4", "2 1/4");
    const rodt_clues long_30 = {.stamp = {.size = "30", .stroke_class = RODT_STROKE_CLASS_LONG}};
    assert_int_equal(rodt_clues_identify(&long_30, law, newest, &found, NULL), RODT_OK);
    expect(found, "clamp 30 long: 2 1/2", "2 1/2");
    const rodt_clues standard = {.stamp = {.stroke_class = RODT_STROKE_CLASS_STANDARD}};
    assert_int_equal(rodt_clues_identify(&standard, law, newest, &found, NULL), RODT_OK);
    assert_true(is_listed(&found, RODT_FAMILY_CLAMP, "30") && is_listed(&found, RODT_FAMILY_BOLT, "C"));
    for (size_t i = 0; i < found.count; i++)
        assert_int_not_equal(found.candidates[i].chamber.stroke_class, RODT_STROKE_CLASS_LONG);
    const rodt_clues three = {.stamp = {.rated_stroke = {3, 1}}};
    assert_int_equal(rodt_clues_identify(&three, law, newest, &found, NULL), RODT_OK);
    assert_true(is_listed(&found, RODT_FAMILY_CLAMP, "24"));
}

static void a_day_that_there_is_not(void **state)
{
    (void)state;
    const rodt_clues clues = {.family = RODT_FAMILY_CLAMP};
    rodt_identification found = {.count = 77};
    rodt_error error;
    assert_int_equal(rodt_clues_identify(&clues, rodt_rules_find("us-fmcsr"), (rodt_date){2021, 2, 29}, &found, &error),
                     RODT_E_ARGUMENT);
    assert_string_equal(error.field, "date");
    assert_int_equal(found.count, 77);
}

/* More kinds than there is room for: the last ones leave, and their limits still count. */
static void more_kinds_than_room(void **state)
{
    (void)state;
    char table[4096] = "family,size,class,rated_stroke,limit\n";
    for (int i = 1; i <= 20; i++) {
        size_t used = strlen(table);
        snprintf(table + used, sizeof table - used, "clamp,30,long,3.%02d,%s\n", 3 * i, i == 20 ? "1" : "2");
    }
    rodt_rules *own = NULL;
    rodt_identification found;
    rodt_error error = {.status = RODT_OK};
    const rodt_clues clues = {.port = RODT_PORT_ROUND};
    rodt_status status = rodt_rules_load(rodt_rules_find("us-fmcsr"), "own", table, strlen(table), &own, &error);
    assert_string_equal(error.text, "");
    assert_int_equal(status, RODT_OK);
    assert_int_equal(rodt_clues_identify(&clues, own, newest, &found, NULL), RODT_OK);
    assert_int_equal(found.count, RODT_CANDIDATES_MAX);
    assert_int_equal(rodt_length_compare(found.strict_limit, (rodt_length){1, 1}), 0);
    assert_int_equal(rodt_length_compare(found.candidates[0].limit, (rodt_length){1, 1}), 0);
    rodt_rules_unref(own);
}

/* ---- Contradictions ---- */

static void expect_knot(seen what, uint32_t contradiction, const char *candidates, const char *strict)
{
    rodt_identification found = identify(what);
    expect(found, candidates, strict);
    assert_int_equal(found.contradiction, contradiction);
    for (size_t i = 0; i < found.count; i++) {
        assert_true(found.candidates[i].clues_against != 0);
        assert_int_equal(found.candidates[i].clues_against & ~contradiction, 0);
        assert_int_equal(found.candidates[i].clues_against & found.candidates[i].clues_for, 0);
    }
}

static void test_stamp_against_diameter(void **state)
{
    (void)state;
    expect_knot((seen){.stamp = "clamp 30", .diameter = "6 3/8"}, RODT_CLUE_STAMP | RODT_CLUE_DIAMETER,
                "clamp 16 standard: 1 3/4 | clamp 16 long: 2 | rotochamber 24: 2 | clamp 30 standard: 2 | "
                "clamp 30 long: 2 1/2",
                "1 3/4");
}

static void test_stamp_against_family(void **state)
{
    (void)state;
    expect_knot((seen){.stamp = "bolt C", .family = RODT_FAMILY_DD_3}, RODT_CLUE_STAMP | RODT_CLUE_FAMILY,
                "bolt C: 1 3/4 | DD-3 30: 2 1/4", "1 3/4");
}

static void test_family_against_diameter(void **state)
{
    (void)state;
    expect_knot((seen){.family = RODT_FAMILY_DD_3, .diameter = "5 1/4"}, RODT_CLUE_FAMILY | RODT_CLUE_DIAMETER,
                "bolt D: 1 1/4 | clamp 9 standard: 1 3/8 | DD-3 30: 2 1/4", "1 1/4");
}

/* 2 1/2 in is the rated stroke of the standard 30, and a long one could not have a limit of 2 1/2 in. */
static void test_square_port_with_standard_rated_stroke(void **state)
{
    (void)state;
    uint32_t knot = RODT_CLUE_STAMP | RODT_CLUE_PORT_SHAPE | RODT_CLUE_RATED_STROKE;
    expect_knot((seen){.stamp = "clamp 30", .port = RODT_PORT_SQUARE, .rated = "2.5"}, knot,
                "clamp 30 standard: 2 | clamp 30 long: 2 1/2", "2");
    expect_knot((seen){.stamp = "clamp 16", .port = RODT_PORT_SQUARE, .rated = "2 1/4"}, knot,
                "clamp 16 standard: 1 3/4 | clamp 16 long: 2", "1 3/4");
    expect_knot((seen){.stamp = "30L", .rated = "2.5"}, RODT_CLUE_STAMP | RODT_CLUE_RATED_STROKE,
                "clamp 30 standard: 2 | clamp 30 long: 2 1/2", "2");
}

static void test_rated_stroke_that_none_can_have(void **state)
{
    (void)state;
    expect_knot((seen){.stamp = "clamp 9", .rated = "2"}, RODT_CLUE_STAMP | RODT_CLUE_RATED_STROKE,
                "clamp 9 standard: 1 3/8", "1 3/8");
    expect_knot((seen){.stamp = "clamp 30", .rated = "1 1/2"}, RODT_CLUE_STAMP | RODT_CLUE_RATED_STROKE,
                "clamp 30 standard: 2 | clamp 30 long: 2 1/2", "1 1/5"); /* 4/5 of the mark, as a stroke is judged */
    expect_knot((seen){.stamp = "clamp 30", .port = RODT_PORT_SQUARE, .rated = "1 1/2"},
                RODT_CLUE_STAMP | RODT_CLUE_RATED_STROKE, "clamp 30 long: 2 1/2", "1 1/5");
    assert_int_equal(identify((seen){.rated = "1"}).contradiction, RODT_CLUE_RATED_STROKE);
}

/* A tag cannot make a bolt type long, and does not turn it into a clamp type either. */
static void test_long_sign_on_other_families(void **state)
{
    (void)state;
    expect_knot((seen){.family = RODT_FAMILY_BOLT, .diameter = "8 1/16", .tag = RODT_TAG_TRAPEZOID},
                RODT_CLUE_FAMILY | RODT_CLUE_TAG, "bolt C: 1 3/4", "1 3/4");
    expect_knot((seen){.stamp = "clamp 30 standard", .port = RODT_PORT_SQUARE}, RODT_CLUE_STAMP | RODT_CLUE_PORT_SHAPE,
                "clamp 30 standard: 2 | clamp 30 long: 2 1/2", "2");
}

/* ---- Laws over many clues ---- */

typedef struct drawn {
    rodt_clues clues;
    int diameter; /* in 1/128 in, 0 = none */
    int division; /* in 1/128 in */
} drawn;

static drawn draw(uint64_t *chances)
{
    static const char *const stamps[] = {"30", "clamp 30", "30L", "24/30", "20", "bolt C", "roto 30", "DD-3",
                                         "16L", "9", "clamp 12 standard", "36", "bolt D"};
    static const char *const rated[] = {"1", "1.75", "2.25", "2.5", "3", "76 mm", "4"};
    static const int diameters[] = {1036, 1040, 1032, 672, 816, 868, 888, 728, 1152, 1035, 1050, 100};
    static const int divisions[] = {16, 8, 4};
    uint64_t c = chance(chances);
    drawn d = {.division = 16};
    if ((c & 1) != 0)
        assert_int_equal(rodt_chamber_parse(stamps[(c >> 8) % COUNT_OF(stamps)], &d.clues.stamp, NULL), RODT_OK);
    d.clues.family = (c & 6) == 0 ? (rodt_family)((c >> 12) % 5) : RODT_FAMILY_UNKNOWN;
    d.clues.port = (rodt_port)((c & 8) != 0 ? (c >> 16) % 3 : 0);
    d.clues.tag = (rodt_tag)((c & 16) != 0 ? (c >> 20) % 3 : 0);
    if ((c & 96) == 0)
        d.clues.rated_stroke = length_of(rated[(c >> 24) % COUNT_OF(rated)]);
    if ((c & 128) != 0) {
        d.diameter = diameters[(c >> 32) % COUNT_OF(diameters)];
        d.division = divisions[(c >> 40) % COUNT_OF(divisions)];
        assert_int_equal(rodt_length_from_inches(d.diameter, 128, &d.clues.diameter), RODT_OK);
        assert_int_equal(rodt_length_from_inches(d.division, 128, &d.clues.diameter_division), RODT_OK);
    }
    return d;
}

static bool try_clues(const rodt_clues *clues, rodt_identification *found)
{
    rodt_status status = rodt_clues_identify(clues, rodt_rules_find("us-fmcsr"), newest, found, NULL);
    assert_true(status == RODT_OK || status == RODT_E_ARGUMENT);
    return status == RODT_OK;
}

static int count_bits(uint32_t bits)
{
    int count = 0;
    for (; bits != 0; bits >>= 1)
        count += (bits & 1) != 0;
    return count;
}

static void check_order(const rodt_candidate *a, const rodt_candidate *b)
{
    int order = count_bits(a->clues_against) - count_bits(b->clues_against);
    if (order == 0)
        order = count_bits(b->clues_for) - count_bits(a->clues_for);
    if (order == 0)
        order = rodt_length_compare(a->diameter_distance, b->diameter_distance);
    if (order == 0 && rodt_length_given(b->limit))
        order = rodt_length_compare(a->limit, b->limit);
    assert_true(order <= 0);
}

/* Ranked as promised, the strict limit is the smallest, no clue stands on both sides, nothing stands there twice. */
static void check_form(const rodt_identification *found)
{
    bool reached = found->count == 0;
    for (size_t i = 0; i < found->count; i++) {
        const rodt_candidate *a = &found->candidates[i];
        const rodt_candidate *b = a + 1;
        assert_int_equal(a->clues_for & a->clues_against, 0);
        assert_int_equal(a->clues_against != 0, found->contradiction != 0);
        reached = reached || rodt_length_compare(a->limit, found->strict_limit) == 0;
        if (rodt_length_given(a->limit))
            assert_true(rodt_length_compare(found->strict_limit, a->limit) <= 0);
        if (i + 1 < found->count)
            check_order(a, b);
        for (size_t j = 0; j < i; j++)
            assert_memory_not_equal(&found->candidates[j].chamber, &a->chamber, sizeof a->chamber);
    }
    assert_true(reached || (found->contradiction & RODT_CLUE_RATED_STROKE) != 0);
}

static void test_form_of_many_answers(void **state)
{
    (void)state;
    uint64_t chances = 20211014;
    for (int i = 0; i < 2000; i++) {
        rodt_identification found;
        drawn d = draw(&chances);
        if (try_clues(&d.clues, &found))
            check_form(&found);
    }
}

/* Held against the rows of the law by a second hand: sizes by name, diameters in whole 128ths of an inch. */
static bool agrees(const drawn *d, const rodt_limit *row)
{
    const rodt_chamber *stamp = &d->clues.stamp;
    bool sign = d->clues.port == RODT_PORT_SQUARE || d->clues.tag == RODT_TAG_TRAPEZOID;
    if (stamp->size[0] != '\0' && strcmp(stamp->size, row->size) != 0)
        return false;
    if (stamp->family != RODT_FAMILY_UNKNOWN && stamp->family != row->family)
        return false;
    if (stamp->stroke_class != RODT_STROKE_CLASS_UNKNOWN && row->stroke_class != RODT_STROKE_CLASS_ANY &&
        stamp->stroke_class != row->stroke_class)
        return false;
    if (d->clues.family != RODT_FAMILY_UNKNOWN && d->clues.family != row->family)
        return false;
    if (sign && row->stroke_class != RODT_STROKE_CLASS_LONG)
        return false;
    for (size_t i = 0; d->diameter != 0 && i < rodt_chamber_row_count(); i++) {
        const rodt_chamber_row *chamber = rodt_chamber_row_at(i);
        rodt_length wide = chamber->outside_diameter;
        if (chamber->family == row->family && strcmp(chamber->size, row->size) == 0)
            return llabs(wide.num * (128 / wide.den) - d->diameter) <= d->division / 2 + 8;
    }
    return true;
}

/* Without a rated stroke the candidates are the rows of the law that agree, all of them and no others. */
static void test_every_agreeing_row_is_listed(void **state)
{
    (void)state;
    uint64_t chances = 48051;
    const rodt_rules *law = rodt_rules_find("us-fmcsr");
    for (int i = 0; i < 2000; i++) {
        rodt_identification found;
        drawn d = draw(&chances);
        size_t wanted = 0;
        size_t listed = 0;
        d.clues.rated_stroke = (rodt_length){0};
        for (size_t j = 0; j < rodt_rules_limit_count(law); j++) {
            const rodt_limit *row = rodt_rules_limit_at(law, j);
            wanted += !rodt_date_given(row->until) && agrees(&d, row);
        }
        if (!try_clues(&d.clues, &found) || found.contradiction != 0)
            continue;
        for (size_t j = 0; j < found.count; j++)
            listed += rodt_length_given(found.candidates[j].limit);
        assert_int_equal(listed, wanted);
    }
}

static bool rests_on_rows(const rodt_identification *found)
{
    for (size_t i = 0; i < found->count; i++) {
        rodt_limit_answer answer;
        const rodt_rules *law = rodt_rules_find("us-fmcsr");
        assert_int_equal(rodt_rules_find_limit(law, &found->candidates[i].chamber, newest, &answer, NULL), RODT_OK);
        if (answer.law_basis != RODT_BASIS_TABLE)
            return false;
    }
    return found->count > 0 && found->contradiction == 0;
}

static void check_less_known(const rodt_clues *less, const rodt_identification *more)
{
    rodt_identification before;
    if (try_clues(less, &before) && rests_on_rows(&before))
        assert_true(rodt_length_compare(before.strict_limit, more->strict_limit) <= 0);
}

/* One more clue that agrees leaves the strict limit or raises it. (A chamber outside the tables is another matter:
 * long stroke makes a 36 one, and four fifths of its rated stroke are below the standard limit.) */
static void test_agreeing_clues_never_tighten(void **state)
{
    (void)state;
    uint64_t chances = 57076;
    for (int i = 0; i < 1000; i++) {
        rodt_identification found;
        drawn d = draw(&chances);
        if (!try_clues(&d.clues, &found) || !rests_on_rows(&found))
            continue;
        rodt_clues less = d.clues;
        less.family = RODT_FAMILY_UNKNOWN;
        check_less_known(&less, &found);
        less = d.clues;
        less.port = RODT_PORT_NOT_SEEN;
        check_less_known(&less, &found);
        less.tag = RODT_TAG_NOT_SEEN;
        check_less_known(&less, &found);
        less = d.clues;
        less.rated_stroke = (rodt_length){0};
        check_less_known(&less, &found);
        less = d.clues;
        less.diameter = (rodt_length){0};
        check_less_known(&less, &found);
        less = d.clues;
        memset(&less.stamp, 0, sizeof less.stamp);
        check_less_known(&less, &found);
    }
}

/* ---- One limit for one set of marks ---- */

/* A stroke is judged by the limit that identification gives for the same marks, and both name a contradiction. Beyond
 * that, identification doubts a mark that is not the second-hand rated stroke of the standard chamber; the limit is the
 * same with and without that doubt. */
static void check_agreement(const rodt_rules *rules, const rodt_chamber *chamber, rodt_length standard)
{
    rodt_limit_answer answer;
    rodt_identification found;
    rodt_clues clues = {.stamp = *chamber, .rated_stroke = chamber->rated_stroke};
    clues.stamp.rated_stroke = (rodt_length){0};
    assert_int_equal(rodt_rules_find_limit(rules, chamber, newest, &answer, NULL), RODT_OK);
    assert_int_equal(rodt_clues_identify(&clues, rules, newest, &found, NULL), RODT_OK);
    bool doubted = chamber->stroke_class != RODT_STROKE_CLASS_LONG && rodt_length_given(standard) &&
                   rodt_length_compare(chamber->rated_stroke, standard) != 0;
    char text[RODT_CHAMBER_TEXT_SIZE], mark[RODT_LENGTH_TEXT_SIZE];
    rodt_chamber_format(chamber, text, sizeof text, NULL);
    rodt_length_format(chamber->rated_stroke, mark, sizeof mark, NULL);
    if (answer.conflicting_marks != (found.contradiction != 0) && (answer.conflicting_marks || !doubted))
        fail_msg("%s rated %s: conflicting marks %d, contradiction %u", text, mark, answer.conflicting_marks,
                 (unsigned)found.contradiction);
    if (rodt_length_given(answer.limit) && rodt_length_compare(answer.limit, found.strict_limit) != 0)
        fail_msg("%s rated %s: two limits", text, mark);
}

static void test_limit_of_a_stroke_agrees(void **state)
{
    (void)state;
    static const char *const ids[] = {"us-fmcsr", "us-periodic", "ca-nsc", "ca-on"};
    static const char *const marks[] = {"1 1/2", "1 3/4", "2", "2 1/4", "57 mm", "2 1/2", "2 3/4", "76 mm", "3", "3 1/2"};
    const rodt_chamber_row *row;
    for (size_t i = 0; (row = rodt_chamber_row_at(i)) != NULL; i++) {
        for (size_t n = 0; n < COUNT_OF(ids) * COUNT_OF(marks) * 3; n++) {
            rodt_chamber chamber = {.family = row->family, .stroke_class = (rodt_stroke_class)(n % 3)};
            memcpy(chamber.size, row->size, strlen(row->size) + 1);
            chamber.rated_stroke = length_of(marks[n / 3 % COUNT_OF(marks)]);
            check_agreement(rodt_rules_find(ids[n / 3 / COUNT_OF(marks)]), &chamber, row->standard_rated_stroke);
        }
    }
}

/* ---- Arguments and words ---- */

static void expect_refused(const rodt_clues *clues, rodt_status status)
{
    rodt_identification found;
    memset(&found, 0x5A, sizeof found);
    rodt_identification before = found;
    assert_int_equal(rodt_clues_identify(clues, rodt_rules_find("us-fmcsr"), newest, &found, NULL), status);
    assert_memory_equal(&found, &before, sizeof found);
}

static void test_refusals(void **state)
{
    (void)state;
    rodt_identification found;
    rodt_clues round = {.port = RODT_PORT_ROUND};
    assert_int_equal(rodt_clues_identify(NULL, rodt_rules_find("us-fmcsr"), newest, &found, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_clues_identify(&round, NULL, newest, &found, NULL), RODT_E_UNKNOWN_RULES);
    assert_int_equal(rodt_clues_identify(&round, rodt_rules_find("us-fmcsr"), newest, NULL, NULL), RODT_E_ARGUMENT);
    expect_refused(&(rodt_clues){0}, RODT_E_ARGUMENT);
    expect_refused(&(rodt_clues){.diameter_division = {1, 8}}, RODT_E_ARGUMENT);
    expect_refused(&(rodt_clues){.family = (rodt_family)5}, RODT_E_ARGUMENT);
    expect_refused(&(rodt_clues){.port = (rodt_port)3}, RODT_E_ARGUMENT);
    expect_refused(&(rodt_clues){.tag = (rodt_tag)-1}, RODT_E_ARGUMENT);
    expect_refused(&(rodt_clues){.stamp = {.family = (rodt_family)5}}, RODT_E_ARGUMENT);
    expect_refused(&(rodt_clues){.stamp = {.stroke_class = (rodt_stroke_class)3}}, RODT_E_ARGUMENT);
    expect_refused(&(rodt_clues){.stamp = {.size = {'3', '0', '3', '0'}}}, RODT_E_ARGUMENT);
    expect_refused(&(rodt_clues){.diameter = {-8, 1}}, RODT_E_ARGUMENT);
    expect_refused(&(rodt_clues){.diameter = {8, -1}}, RODT_E_ARGUMENT);
    expect_refused(&(rodt_clues){.diameter = {8, 1}, .diameter_division = {0, 1}}, RODT_E_ARGUMENT);
    expect_refused(&(rodt_clues){.rated_stroke = {0, 1}}, RODT_E_ARGUMENT);
    expect_refused(&(rodt_clues){.diameter = {INT64_MAX, INT64_MAX - 1}}, RODT_E_ARGUMENT);
    expect_refused(&(rodt_clues){.diameter = {8, 1}, .diameter_division = {1, INT64_MAX}}, RODT_E_ARGUMENT);
}

static void test_words(void **state)
{
    (void)state;
    static const char *const names[] = {"stamp", "family", "port-shape", "tag", "rated-stroke", "diameter"};
    for (size_t i = 0; i < COUNT_OF(names); i++)
        assert_string_equal(rodt_clue_name((rodt_clue)(1u << i)), names[i]);
    assert_string_equal(rodt_clue_name((rodt_clue)0), "");
    assert_string_equal(rodt_clue_name((rodt_clue)(RODT_CLUE_STAMP | RODT_CLUE_PORT_SHAPE)), "");
    assert_string_equal(rodt_clue_name((rodt_clue)64), "");
    for (int i = RODT_OBSERVATION_NOTHING; i < RODT_OBSERVATION_END; i++) {
        for (int j = RODT_OBSERVATION_NOTHING; j < i; j++)
            assert_string_not_equal(rodt_observation_text((rodt_observation)i),
                                    rodt_observation_text((rodt_observation)j));
    }
    assert_string_equal(rodt_observation_text((rodt_observation)77), "");
}

/* A limit that is not known can be a smaller one. */
static void a_candidate_without_a_limit_is_counted(void **state)
{
    (void)state;
    rodt_clues clues = {.diameter = {65, 8}};
    rodt_identification found;
    assert_int_equal(rodt_clues_identify(&clues, rodt_rules_find("us-fmcsr"), (rodt_date){0}, &found, NULL), RODT_OK);
    assert_int_equal(found.without_limit, 0);
    assert_int_equal(rodt_clues_identify(&clues, rodt_rules_find("ca-on"), (rodt_date){0}, &found, NULL), RODT_OK);
    assert_true(rodt_length_given(found.strict_limit));
    assert_int_equal(found.without_limit, 2);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_candidate_without_a_limit_is_counted),
        cmocka_unit_test(test_stamp_alone),
        cmocka_unit_test(test_double_marks),
        cmocka_unit_test(test_stamp_of_no_table),
        cmocka_unit_test(test_marked_limit),
        cmocka_unit_test(test_three_families_within_a_sixteenth),
        cmocka_unit_test(test_edge_of_the_tolerance),
        cmocka_unit_test(test_same_diameter),
        cmocka_unit_test(test_no_chamber_is_so_small),
        cmocka_unit_test(test_close_pairs),
        cmocka_unit_test(test_signs_of_long_stroke),
        cmocka_unit_test(test_missing_signs_prove_nothing),
        cmocka_unit_test(test_rated_stroke_is_no_sign),
        cmocka_unit_test(test_mark_in_doubt),
        cmocka_unit_test(test_family_not_asked),
        cmocka_unit_test(test_nothing_but_a_family),
        cmocka_unit_test(test_one_limit_settles),
        cmocka_unit_test(test_limits_of_the_day),
        cmocka_unit_test(test_other_rules),
        cmocka_unit_test(signs_on_a_stamp_of_no_table),
        cmocka_unit_test(each_member_of_a_stamp_is_a_clue),
        cmocka_unit_test(a_day_that_there_is_not),
        cmocka_unit_test(more_kinds_than_room),
        cmocka_unit_test(test_own_limits),
        cmocka_unit_test(test_stamp_against_diameter),
        cmocka_unit_test(test_stamp_against_family),
        cmocka_unit_test(test_family_against_diameter),
        cmocka_unit_test(test_square_port_with_standard_rated_stroke),
        cmocka_unit_test(test_rated_stroke_that_none_can_have),
        cmocka_unit_test(test_limit_of_a_stroke_agrees),
        cmocka_unit_test(test_long_sign_on_other_families),
        cmocka_unit_test(test_form_of_many_answers),
        cmocka_unit_test(test_every_agreeing_row_is_listed),
        cmocka_unit_test(test_agreeing_clues_never_tighten),
        cmocka_unit_test(test_refusals),
        cmocka_unit_test(test_words),
    };
    return cmocka_run_group_tests_name("identify", tests, NULL, NULL);
}
