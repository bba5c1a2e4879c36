/* SPDX-License-Identifier: Apache-2.0 */
/* What identification keeps for any clues: the form of its answer, the rows it lists, the limit it agrees on. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdlib.h>
#include <string.h>

#include "core/common.h"
#include "rodtravel/identify.h"
#include "support.h"

static const rodt_date newest = {0};

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
    static const rodt_length rated[] = {{1, 1}, {7, 4}, {9, 4}, {5, 2}, {3, 1}, {380, 127}, {4, 1}};
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
        d.clues.rated_stroke = rated[(c >> 24) % COUNT_OF(rated)];
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
    static const rodt_length marks[] = {{3, 2}, {7, 4},  {2, 1},     {9, 4}, {285, 127}, /* 57 mm */
                                        {5, 2}, {11, 4}, {380, 127}, {3, 1}, {7, 2}};
    const rodt_chamber_row *row;
    for (size_t i = 0; (row = rodt_chamber_row_at(i)) != NULL; i++) {
        for (size_t n = 0; n < COUNT_OF(ids) * COUNT_OF(marks) * 3; n++) {
            rodt_chamber chamber = {.family = row->family, .stroke_class = (rodt_stroke_class)(n % 3)};
            memcpy(chamber.size, row->size, strlen(row->size) + 1);
            chamber.rated_stroke = marks[n / 3 % COUNT_OF(marks)];
            check_agreement(rodt_rules_find(ids[n / 3 / COUNT_OF(marks)]), &chamber, row->standard_rated_stroke);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_limit_of_a_stroke_agrees),
        cmocka_unit_test(test_form_of_many_answers),
        cmocka_unit_test(test_every_agreeing_row_is_listed),
        cmocka_unit_test(test_agreeing_clues_never_tighten),
    };
    return cmocka_run_group_tests_name("identify_laws", tests, NULL, NULL);
}
