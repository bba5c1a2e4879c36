/* SPDX-License-Identifier: Apache-2.0 */
/* Which chambers are left by what was seen, what settles them, and by which limit to judge until then. What holds for
 * any clues is in test_identify_laws.c. Limits and
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

static void put_clues(char *text, size_t size, const char *sign, uint32_t clues)
{
    for (uint32_t clue = 1; clue != 0; clue <<= 1) {
        size_t used = strlen(text);
        if ((clues & clue) != 0)
            snprintf(text + used, size - used, " %s%s", sign, rodt_clue_name((rodt_clue)clue));
    }
}

/* " +stamp -diameter | ...", of each candidate what supports it and what is against it. */
static void expect_clues(rodt_identification found, const char *clues)
{
    char text[1000] = "";
    for (size_t i = 0; i < found.count; i++) {
        put_clues(text, sizeof text, "+", found.candidates[i].clues_for);
        put_clues(text, sizeof text, "-", found.candidates[i].clues_against);
        snprintf(text + strlen(text), sizeof text - strlen(text), i + 1 < found.count ? " |" : "");
    }
    assert_string_equal(text, clues);
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

/* One character is a size, too, and one that no table has. */
static void short_stamps(void **state)
{
    (void)state;
    expect(identify((seen){.stamp = "9"}), "clamp 9 standard: 1 3/8 | rotochamber 9: 1 1/2", "1 3/8");
    const rodt_clues five = {.stamp = {.size = "5"}};
    rodt_identification found;
    assert_int_equal(rodt_clues_identify(&five, rodt_rules_find("us-fmcsr"), newest, &found, NULL), RODT_OK);
    expect(found, "5: none", "none");
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

/* What is for a candidate counts before its limit; a mark of another chamber says nothing. */
static void rated_strokes_rank(void **state)
{
    (void)state;
    rodt_identification found = identify((seen){.stamp = "20", .rated = "3"});
    expect(found, "clamp 20 long, rated 3: 2 1/2 | rotochamber 20: 2", "2");
    expect_clues(found, " +stamp +rated-stroke | +stamp");
    expect_clues(identify((seen){.stamp = "clamp 20", .rated = "57 mm"}), " +stamp +rated-stroke | +stamp");
    found = identify((seen){.stamp = "clamp 30", .rated = "3"});
    expect(found, "clamp 30 standard: 2 | clamp 30 long: 2 1/2", "2");
    expect_clues(found, " +stamp | +stamp");
    /* These rules do not print the millimetres beside 3 in. */
    expect(identify_by("ca-nsc", (seen){.stamp = "24L", .rated = "76 mm"}), "clamp 24 long, rated 3: 2 1/2", "2 1/2");
    const rodt_clues three = {.stamp = {.rated_stroke = {3, 1}, .family = RODT_FAMILY_CLAMP, .size = "24"}};
    assert_int_equal(rodt_clues_identify(&three, rodt_rules_find("us-fmcsr"), newest, &found, NULL), RODT_OK);
    expect(found, "clamp 24 long, rated 3: 2 1/2", "2 1/2");
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

/* Without a class a sign of long stroke says nothing, and without a share of the rated stroke the mark neither. */
static void marks_that_say_nothing(void **state)
{
    (void)state;
    expect_clues(identify_by("rated-80", (seen){.stamp = "clamp 30", .port = RODT_PORT_SQUARE}), " +stamp");
    expect(identify_by("ca-nsc", (seen){.stamp = "bolt C", .rated = "2.5"}), "bolt C: none", "none");
}

/* Rows of a carrier on a law without any, and one that repeats the first row of its law. */
static void own_rows_and_the_first_of_the_law(void **state)
{
    (void)state;
    static const struct {
        const char *law, *table;
        seen what;
        const char *candidates, *strict;
    } cases[] = {
        {"rated-80", "clamp,30,long,3,2 1/8\nclamp,30,standard,,1 7/8\n", {.stamp = "clamp 30", .rated = "3"},
         "clamp 30 long, rated 3: 2 1/8", "2 1/8"},
        {"us-fmcsr", "clamp,6,standard,,1 1/8\n", {.stamp = "clamp 6"}, "clamp 6 standard: 1 1/8", "1 1/8"},
        {"us-fmcsr", "clamp,36,any,,2\n", {.stamp = "clamp 36"}, "clamp 36 standard: 2", "2"}};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        char table[200];
        rodt_rules *own;
        rodt_identification found;
        rodt_clues clues = clues_of(&cases[i].what);
        snprintf(table, sizeof table, "family,size,class,rated_stroke,limit\n%s", cases[i].table);
        assert_int_equal(rodt_rules_load(rodt_rules_find(cases[i].law), "own", table, strlen(table), &own, NULL),
                         RODT_OK);
        assert_int_equal(rodt_clues_identify(&clues, own, newest, &found, NULL), RODT_OK);
        expect(found, cases[i].candidates, cases[i].strict);
        rodt_rules_unref(own);
    }
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

/* A tag makes a chamber long that the law has no long row for. */
static void a_sign_without_a_row(void **state)
{
    (void)state;
    expect(identify((seen){.stamp = "clamp 36", .tag = RODT_TAG_TRAPEZOID}), "clamp 36 long: none", "none");
    expect(identify((seen){.stamp = "clamp 36", .port = RODT_PORT_SQUARE}), "clamp 36 long: none", "none");
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

/* Two clues go before one, whatever the limits are; the spring brake's size stays with the stamp that it is on. */
static void more_clues_go_before(void **state)
{
    (void)state;
    seen what = {.stamp = "roto 36", .family = RODT_FAMILY_ROTOCHAMBER, .diameter = "5 1/4"};
    expect_knot(what, RODT_CLUE_STAMP | RODT_CLUE_FAMILY | RODT_CLUE_DIAMETER,
                "rotochamber 36: 2 3/4 | bolt D: 1 1/4 | clamp 9 standard: 1 3/8", "1 1/4");
    expect_clues(identify(what), " +stamp +family -diameter | +diameter -stamp -family | +diameter -stamp -family");
    expect_knot((seen){.stamp = "24/30", .diameter = "5 1/4"}, RODT_CLUE_STAMP | RODT_CLUE_DIAMETER,
                "bolt D: 1 1/4 | clamp 9 standard: 1 3/8 | clamp 24/30 standard: 1 3/4 | clamp 24/30 long: 2 | "
                "clamp 24/30 long, rated 3: 2 1/2",
                "1 1/4");
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

/* A tape settles what family and stamp leave open, if nobody measured yet: 36 and 50 lie within 1/8 in of each other,
 * and of a chamber that no table has no diameter is known. */
static void what_to_look_at_when_stamp_and_family_disagree(void **state)
{
    (void)state;
    static const struct {
        seen what;
        rodt_observation next;
    } cases[] = {{{.stamp = "clamp 30 standard"}, RODT_OBSERVATION_DIAMETER},
                 {{.stamp = "clamp 30 standard", .diameter = "2"}, RODT_OBSERVATION_STAMP},
                 {{.stamp = "clamp 36"}, RODT_OBSERVATION_STAMP},
                 {{.stamp = "clamp 50"}, RODT_OBSERVATION_STAMP}};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        seen what = cases[i].what;
        what.family = RODT_FAMILY_ROTOCHAMBER;
        assert_int_equal(identify(what).next_observation, cases[i].next);
    }
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

/* ---- Arguments and words ---- */

static void expect_refused(const rodt_clues *clues, const char *field, const char *text)
{
    rodt_identification found;
    rodt_error error;
    memset(&found, 0x5A, sizeof found);
    rodt_identification before = found;
    assert_int_equal(rodt_clues_identify(clues, rodt_rules_find("us-fmcsr"), newest, &found, &error), RODT_E_ARGUMENT);
    assert_int_equal(error.status, RODT_E_ARGUMENT);
    assert_string_equal(error.field, field);
    assert_string_equal(error.text, text);
    assert_memory_equal(&found, &before, sizeof found);
    assert_int_equal(rodt_clues_identify(clues, rodt_rules_find("us-fmcsr"), newest, &found, NULL), RODT_E_ARGUMENT);
}

static void test_refusals(void **state)
{
    (void)state;
    rodt_identification found;
    rodt_clues round = {.port = RODT_PORT_ROUND};
    assert_int_equal(rodt_clues_identify(&round, NULL, newest, &found, NULL), RODT_E_UNKNOWN_RULES);
    rodt_error error;
    assert_int_equal(rodt_clues_identify(&round, rodt_rules_find("us-fmcsr"), newest, NULL, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.field, "");
    assert_string_equal(error.text, "room for an identification is needed");
    expect_refused(NULL, "", "clues are needed");
    static const char none[] = "there is no clue at all", family[] = "there is no such family of chambers",
                      digits[] = "there are more digits than a reading can have";
    static const struct {
        rodt_clues clues;
        const char *field, *text;
    } cases[] = {
        {{.family = RODT_FAMILY_UNKNOWN}, "", none},
        {{.diameter_division = {1, 8}}, "", none},
        {{.stamp = {.marked_limit = {2, 1}}}, "", none},
        {{.family = (rodt_family)5}, "family", family},
        {{.port = (rodt_port)3}, "port", "a port is round, square or not seen"},
        {{.tag = (rodt_tag)-1}, "tag", "a tag is a trapezoid, none or not seen"},
        {{.tag = (rodt_tag)3}, "tag", "a tag is a trapezoid, none or not seen"},
        {{.stamp = {.family = (rodt_family)5}}, "chamber", family},
        {{.stamp = {.stroke_class = (rodt_stroke_class)3}}, "stroke_class",
         "the stroke class of a chamber is standard, long or unknown"},
        {{.stamp = {.size = {'3', '0', '3', '0'}}}, "chamber",
         "the text of a size is not closed by a zero byte"},
        {{.diameter = {-8, 1}}, "diameter", "the figure is below zero"},
        {{.diameter = {8, -1}}, "diameter", "the denominator is below zero"},
        {{.diameter = {8, 1}, .diameter_division = {0, 1}}, "diameter_division", "the length is zero"},
        {{.rated_stroke = {0, 1}}, "rated_stroke", "the length is zero"},
        {{.diameter = {INT64_MAX, INT64_MAX - 1}}, "diameter", digits},
        {{.diameter = {8, 1}, .diameter_division = {1, INT64_MAX}}, "diameter_division", digits},
        {{.port = RODT_PORT_ROUND, .reserved = {0, 0, 0, 1}}, "reserved", "the reserve of clues is zero"}};
    for (size_t i = 0; i < COUNT_OF(cases); i++)
        expect_refused(&cases[i].clues, cases[i].field, cases[i].text);
}

static void test_words(void **state)
{
    (void)state;
    static const char *const names[] = {"stamp", "family", "port-shape", "tag", "rated-stroke", "diameter"};
    for (size_t i = 0; i < COUNT_OF(names); i++)
        assert_string_equal(rodt_clue_name((rodt_clue)(1u << i)), names[i]);
    assert_string_equal(rodt_port_name(RODT_PORT_SQUARE), "square");
    assert_string_equal(rodt_tag_name(RODT_TAG_TRAPEZOID), "trapezoid");
    assert_string_equal(rodt_observation_name(RODT_OBSERVATION_DIAMETER), "diameter");
    assert_string_equal(rodt_clue_name((rodt_clue)0), "");
    assert_string_equal(rodt_clue_name((rodt_clue)(RODT_CLUE_STAMP | RODT_CLUE_PORT_SHAPE)), "");
    assert_string_equal(rodt_clue_name((rodt_clue)64), "");
    for (int i = RODT_OBSERVATION_NOTHING; i < RODT_OBSERVATION_END; i++) {
        for (int j = RODT_OBSERVATION_NOTHING; j < i; j++)
            assert_string_not_equal(rodt_observation_text((rodt_observation)i),
                                    rodt_observation_text((rodt_observation)j));
    }
    assert_string_equal(rodt_observation_text((rodt_observation)77), "");
    rodt_message message;
    static const rodt_message_code codes[RODT_OBSERVATION_END] = {
        RODT_MESSAGE_OBSERVATION_NOTHING,   RODT_MESSAGE_OBSERVATION_FAMILY,       RODT_MESSAGE_OBSERVATION_STAMP,
        RODT_MESSAGE_OBSERVATION_LONG_SIGN, RODT_MESSAGE_OBSERVATION_RATED_STROKE, RODT_MESSAGE_OBSERVATION_DIAMETER};
    for (int i = RODT_OBSERVATION_NOTHING; i < RODT_OBSERVATION_END; i++) {
        assert_int_equal(rodt_observation_message((rodt_observation)i, &message), RODT_OK);
        assert_int_equal(message.code, codes[i]);
    }
    assert_int_equal(rodt_observation_message((rodt_observation)RODT_OBSERVATION_END, &message), RODT_OK);
    assert_int_equal(message.code, RODT_MESSAGE_NONE);
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
        cmocka_unit_test(short_stamps),
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
        cmocka_unit_test(rated_strokes_rank),
        cmocka_unit_test(test_mark_in_doubt),
        cmocka_unit_test(test_family_not_asked),
        cmocka_unit_test(test_nothing_but_a_family),
        cmocka_unit_test(test_one_limit_settles),
        cmocka_unit_test(test_limits_of_the_day),
        cmocka_unit_test(test_other_rules),
        cmocka_unit_test(marks_that_say_nothing),
        cmocka_unit_test(signs_on_a_stamp_of_no_table),
        cmocka_unit_test(a_sign_without_a_row),
        cmocka_unit_test(each_member_of_a_stamp_is_a_clue),
        cmocka_unit_test(a_day_that_there_is_not),
        cmocka_unit_test(more_kinds_than_room),
        cmocka_unit_test(test_own_limits),
        cmocka_unit_test(own_rows_and_the_first_of_the_law),
        cmocka_unit_test(test_stamp_against_diameter),
        cmocka_unit_test(more_clues_go_before),
        cmocka_unit_test(test_stamp_against_family),
        cmocka_unit_test(test_family_against_diameter),
        cmocka_unit_test(test_square_port_with_standard_rated_stroke),
        cmocka_unit_test(test_rated_stroke_that_none_can_have),
        cmocka_unit_test(test_long_sign_on_other_families),
        cmocka_unit_test(what_to_look_at_when_stamp_and_family_disagree),
        cmocka_unit_test(test_refusals),
        cmocka_unit_test(test_words),
    };
    return cmocka_run_group_tests_name("identify", tests, NULL, NULL);
}
