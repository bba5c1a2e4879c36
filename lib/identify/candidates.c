/* SPDX-License-Identifier: Apache-2.0 */
/* The chambers of the tables against the clues. A class that the rule set has no row for is no kind of its own:
 * what is listed is what a limit depends on. */
#include "identify/candidates.h"

#include "identify/next_observation.h"
#include "rules/find_limit.h"
#include "rules/rated_stroke.h"

#include <stdio.h>
#include <string.h>

/* What one clue says of one chamber. */
typedef enum match { MATCH_SILENT, MATCH_YES, MATCH_DOUBTFUL, MATCH_NO } match;

/* A chamber of the tables in one stroke class. */
typedef struct chamber_kind {
    const rodt_chamber_row *row;
    rodt_stroke_class stroke_class;
    rodt_length rated_stroke; /* given = a row of limits that holds only for this mark */
    rodt_length rated_stroke_mm;
} chamber_kind;

/* --- Rows ---------------------------------------------------------------------------------------------- */

/* The law's rows, and after them the carrier's own. */
static const rodt_limit *limit_at(const match_query *q, size_t index)
{
    size_t count = rodt_rules_limit_count(q->law);
    if (index < count || q->law == q->rules)
        return rodt_rules_limit_at(q->law, index);
    return rodt_rules_limit_at(q->rules, index - count);
}

/* The class of the chambers that a row is for, where it says one. */
static rodt_stroke_class class_of(const rodt_limit *limit)
{
    return limit->stroke_class == RODT_STROKE_CLASS_ANY ? RODT_STROKE_CLASS_UNKNOWN
                                                        : (rodt_stroke_class)limit->stroke_class;
}

static bool is_of(const rodt_limit *limit, const rodt_chamber_row *row)
{
    return limit->family == row->family && strcmp(limit->size, row->size) == 0;
}

/* Rows that differ in nothing but their days are one kind. */
static bool is_first_of_its_kind(const match_query *q, size_t index)
{
    const rodt_limit *limit = limit_at(q, index);
    for (size_t i = 0; i < index; i++) {
        const rodt_limit *before = limit_at(q, i);
        if (before->family == limit->family && before->stroke_class == limit->stroke_class &&
            strcmp(before->size, limit->size) == 0 &&
            rodt_length_compare(before->rated_stroke, limit->rated_stroke) == 0)
            return false;
    }
    return true;
}

/* --- One kind against the clues -------------------------------------------------------------------- */

static match match_if(bool condition) { return condition ? MATCH_YES : MATCH_NO; }

/* Only clamp chambers are built for long stroke (common practice, no source). */
static match match_long_sign(const chamber_kind *v)
{
    if (v->row->family != RODT_FAMILY_CLAMP && v->row->family != RODT_FAMILY_UNKNOWN)
        return MATCH_NO;
    return v->stroke_class == RODT_STROKE_CLASS_UNKNOWN ? MATCH_SILENT
                                                        : match_if(v->stroke_class == RODT_STROKE_CLASS_LONG);
}

static match match_stamp(const rodt_chamber *stamp, const chamber_kind *v)
{
    if (stamp->size[0] == '\0' && stamp->family == RODT_FAMILY_UNKNOWN)
        return MATCH_SILENT;
    return match_if((stamp->family == RODT_FAMILY_UNKNOWN || stamp->family == v->row->family) &&
                   (stamp->size[0] == '\0' || strcmp(stamp->size, v->row->size) == 0));
}

/* A family with one limit for all matches whatever class is stamped on it by name. */
static match match_stamped_class(const rodt_chamber *stamp, const chamber_kind *v)
{
    if (stamp->stroke_class == RODT_STROKE_CLASS_LONG && stamp->family == RODT_FAMILY_UNKNOWN)
        return match_long_sign(v);
    if (stamp->stroke_class == RODT_STROKE_CLASS_UNKNOWN || v->stroke_class == RODT_STROKE_CLASS_UNKNOWN)
        return MATCH_SILENT;
    return match_if(stamp->stroke_class == v->stroke_class);
}

/* True if a row of the same chamber requires this rated stroke. */
static bool has_own_row(const match_query *q, const chamber_kind *v, rodt_length mark)
{
    const rodt_limit *limit;
    for (size_t i = 0; (limit = limit_at(q, i)) != NULL; i++) {
        if (is_of(limit, v->row) && rodti_rated_stroke_is_marked(limit->rated_stroke, limit->rated_stroke_mm, mark))
            return true;
    }
    return false;
}

/* The rated strokes of the standard class are second-hand, so they raise a doubt at most. That a limit lies below
 * the full travel holds for every chamber. */
static match match_rated_stroke(const match_query *q, const chamber_kind *v, rodt_length limit, rodt_length mark)
{
    rodt_length standard = v->row->standard_rated_stroke;
    rodt_limit row = {.family = v->row->family, .size = v->row->size, .stroke_class = v->stroke_class, .limit = limit};
    if (!rodt_length_given(mark))
        return MATCH_SILENT;
    if (rodt_length_given(v->rated_stroke))
        return match_if(rodti_rated_stroke_is_marked(v->rated_stroke, v->rated_stroke_mm, mark));
    if (has_own_row(q, v, mark) || (rodt_length_given(limit) && rodt_length_compare(mark, limit) <= 0))
        return MATCH_NO;
    if (v->stroke_class == RODT_STROKE_CLASS_STANDARD && rodt_length_given(standard))
        return rodti_rated_stroke_is_marked(standard, (rodt_length){0}, mark) ? MATCH_YES : MATCH_DOUBTFUL;
    return rodt_length_given(limit) && rodti_rated_stroke_contradicts(&row, mark) ? MATCH_DOUBTFUL : MATCH_SILENT;
}

static match match_diameter(const match_query *q, rodt_candidate *candidate)
{
    if (!rodti_diameter_distance(q->clues->diameter, candidate->diameter, &candidate->diameter_distance))
        return MATCH_SILENT;
    return match_if(rodt_length_compare(candidate->diameter_distance, q->tolerance) <= 0);
}

static void add_match(candidate_match *t, uint32_t clue, match how)
{
    if (how == MATCH_YES)
        t->candidate.clues_for |= clue;
    else if (how == MATCH_NO)
        t->candidate.clues_against |= clue;
    else if (how == MATCH_DOUBTFUL)
        t->doubts |= clue;
}

/* The marked rated stroke: read by itself or in the stamp. */
static rodt_length marked_stroke(const rodt_clues *clues)
{
    return rodt_length_given(clues->rated_stroke) ? clues->rated_stroke : clues->stamp.rated_stroke;
}

/* What is marked on the housing decides only where the tables are silent. */
static void find_limit_by_marks(const match_query *q, rodt_candidate *candidate)
{
    rodt_chamber marked = candidate->chamber;
    rodt_limit_answer answer;
    marked.rated_stroke = marked_stroke(q->clues);
    marked.marked_limit = q->clues->stamp.marked_limit;
    rodti_rules_find_limit(q->rules, &marked, q->day, &answer);
    if (answer.law_basis != RODT_BASIS_NONE) {
        candidate->chamber = marked;
        candidate->limit = answer.limit;
    }
}

static void find_limit(const match_query *q, rodt_candidate *candidate)
{
    rodt_limit_answer answer;
    rodti_rules_find_limit(q->rules, &candidate->chamber, q->day, &answer);
    candidate->limit = answer.limit;
    if (answer.law_basis == RODT_BASIS_NONE && !rodt_length_given(candidate->chamber.rated_stroke))
        find_limit_by_marks(q, candidate);
}

bool rodti_limit_is_lower(rodt_length limit, rodt_length other)
{
    return rodt_length_given(limit) && (!rodt_length_given(other) || rodt_length_compare(limit, other) < 0);
}

/* The limit that the chamber is judged by with the mark on it, if that is the stricter one. */
static rodt_length find_strict_limit(const match_query *q, const rodt_candidate *candidate, rodt_length mark)
{
    rodt_limit_answer answer = {.limit = candidate->limit};
    rodt_chamber marked = candidate->chamber;
    marked.rated_stroke = mark;
    if (rodt_length_given(mark))
        rodti_rules_find_limit(q->rules, &marked, q->day, &answer);
    return rodti_limit_is_lower(answer.limit, candidate->limit) ? answer.limit : candidate->limit;
}

static rodt_candidate make_candidate(const chamber_kind *v)
{
    rodt_candidate candidate = {.diameter = v->row->outside_diameter};
    candidate.chamber.family = v->row->family;
    candidate.chamber.stroke_class = v->stroke_class;
    candidate.chamber.rated_stroke = v->rated_stroke;
    snprintf(candidate.chamber.size, sizeof candidate.chamber.size, "%s", v->row->size);
    return candidate;
}

static void check_candidate(const match_query *q, const chamber_kind *v, candidate_match *t)
{
    const rodt_clues *clues = q->clues;
    *t = (candidate_match){.candidate = make_candidate(v)};
    find_limit(q, &t->candidate);
    t->strict_limit = find_strict_limit(q, &t->candidate, marked_stroke(clues));
    rodt_length limit = t->candidate.limit;
    add_match(t, RODT_CLUE_STAMP, match_stamp(&clues->stamp, v));
    add_match(t, STAMPED_CLASS, match_stamped_class(&clues->stamp, v));
    add_match(t, STAMPED_CLASS, match_rated_stroke(q, v, limit, clues->stamp.rated_stroke));
    add_match(t, RODT_CLUE_RATED_STROKE, match_rated_stroke(q, v, limit, clues->rated_stroke));
    add_match(t, RODT_CLUE_DIAMETER, match_diameter(q, &t->candidate));
    if (clues->family != RODT_FAMILY_UNKNOWN)
        add_match(t, RODT_CLUE_FAMILY, match_if(clues->family == v->row->family));
    if (clues->port == RODT_PORT_SQUARE)
        add_match(t, RODT_CLUE_PORT_SHAPE, match_long_sign(v));
    if (clues->tag == RODT_TAG_TRAPEZOID)
        add_match(t, RODT_CLUE_TAG, match_long_sign(v));
}

/* --- Every chamber in every class ----------------------------------------------------------------------- */

typedef struct iterator {
    const match_query *query;
    match_visitor *visit;
    void *state;
} iterator;

static void visit(const iterator *w, chamber_kind v)
{
    candidate_match matched;
    check_candidate(w->query, &v, &matched);
    w->visit(w->state, &matched);
}

static bool has_long_sign(const rodt_clues *clues)
{
    return clues->port == RODT_PORT_SQUARE || clues->tag == RODT_TAG_TRAPEZOID ||
           clues->stamp.stroke_class == RODT_STROKE_CLASS_LONG;
}

/* Long stroke without a row of its own (6, 9, 36) is a chamber without a published limit, and is thought of only
 * where a sign supports it. */
static void visit_chamber(const iterator *w, const rodt_chamber_row *row)
{
    bool has_class[RODT_STROKE_CLASS_LONG + 1] = {false, false, false}, has_any = false;
    const rodt_limit *limit;
    for (size_t i = 0; (limit = limit_at(w->query, i)) != NULL; i++) {
        rodt_stroke_class stroke_class = class_of(limit);
        bool adds_nothing = stroke_class == RODT_STROKE_CLASS_UNKNOWN && has_class[RODT_STROKE_CLASS_STANDARD];
        if (!is_of(limit, row) || adds_nothing || !is_first_of_its_kind(w->query, i))
            continue;
        has_class[stroke_class] = has_any = true;
        visit(w, (chamber_kind){row, stroke_class, limit->rated_stroke, limit->rated_stroke_mm});
    }
    if (has_class[RODT_STROKE_CLASS_STANDARD] && !has_class[RODT_STROKE_CLASS_LONG] && has_long_sign(w->query->clues))
        visit(w, (chamber_kind){.row = row, .stroke_class = RODT_STROKE_CLASS_LONG});
    if (!has_any)
        visit(w, (chamber_kind){.row = row});
}

static bool is_listed(const rodt_chamber *stamp)
{
    const rodt_chamber_row *row;
    for (size_t i = 0; (row = rodt_chamber_row_at(i)) != NULL; i++) {
        if (strcmp(stamp->size, row->size) == 0 &&
            (stamp->family == RODT_FAMILY_UNKNOWN || stamp->family == row->family))
            return true;
    }
    return false;
}

/* A stamped size that no table knows is a chamber all the same: what is marked on it can limit its stroke. */
static void visit_stamp(const iterator *w)
{
    const rodt_clues *clues = w->query->clues;
    const rodt_chamber *stamp = &clues->stamp;
    rodt_family family = stamp->family != RODT_FAMILY_UNKNOWN ? stamp->family : clues->family;
    rodt_chamber_row row = {.family = family, .size = stamp->size};
    if (stamp->size[0] != '\0' && !is_listed(stamp))
        visit(w, (chamber_kind){.row = &row, .stroke_class = stamp->stroke_class});
}

void rodti_match_every_chamber(const match_query *query, match_visitor *visitor, void *state)
{
    const iterator w = {query, visitor, state};
    const rodt_chamber_row *row;
    for (size_t i = 0; (row = rodt_chamber_row_at(i)) != NULL; i++)
        visit_chamber(&w, row);
    visit_stamp(&w);
}
