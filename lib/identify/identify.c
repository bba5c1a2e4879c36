/* SPDX-License-Identifier: Apache-2.0 */
/* Identification of a chamber. Stamp, family and diameter decide which housing it is; the signs of the stroke class and
 * the rated stroke only choose among what those leave, so that a tag can never turn one size into another. */
#include "rodtravel/identify.h"

#include <string.h>

#include "core/error.h"
#include "core/fault.h"
#include "core/text.h"
#include "identify/candidates.h"
#include "identify/next_observation.h"
#include "quantity/fault.h"

#define HOUSING_CLUES ((uint32_t)(RODT_CLUE_STAMP | RODT_CLUE_FAMILY | RODT_CLUE_DIAMETER))

typedef struct search {
    const rodt_clues *clues;
    bool seen[CLUE_SETS]; /* the sets of clues that contradict some chamber */
    rodt_identification found;
} search;

/* --- Which of them can be it -------------------------------------------------------------------------- */

static void record_conflicts(void *state, const candidate_match *matched)
{
    search *s = state;
    s->seen[matched->candidate.clues_against | matched->doubts] = true;
}

static bool is_part(uint32_t part, uint32_t whole) { return (part & ~whole) == 0; }

/* No chamber has less against it, clue for clue, in the clues of `which`; the others are those of `against`. */
static bool is_least(const search *s, uint32_t against, uint32_t which)
{
    bool same_housing = which != HOUSING_CLUES;
    for (uint32_t set = 0; set < CLUE_SETS; set++) {
        bool comparable = !same_housing || ((set ^ against) & HOUSING_CLUES) == 0;
        uint32_t less = set & which;
        if (s->seen[set] && comparable && less != (against & which) && is_part(less, against & which))
            return false;
    }
    return true;
}

/* Several sets of clues can be true together; each chamber that one of the largest such sets allows is kept. Where
 * a clue to the housing contradicts a chamber, another one must support it. */
static bool is_possible(const search *s, candidate_match *t)
{
    uint32_t all = t->candidate.clues_against | t->doubts;
    if ((all & HOUSING_CLUES) != 0 && (t->candidate.clues_for & HOUSING_CLUES) == 0)
        return false;
    if (!is_least(s, all, HOUSING_CLUES))
        return false;
    if (s->seen[all & HOUSING_CLUES])
        return is_part(t->candidate.clues_against, HOUSING_CLUES);
    t->candidate.clues_against = all;
    return is_least(s, all, ~HOUSING_CLUES);
}

/* True if some chamber has none of these clues against it. */
static bool can_all_be_true(const search *s, uint32_t clues)
{
    for (uint32_t set = 0; set < CLUE_SETS; set++) {
        if (s->seen[set] && (set & clues) == 0)
            return true;
    }
    return false;
}

static bool is_minimal_conflict(const search *s, uint32_t clues)
{
    if (can_all_be_true(s, clues))
        return false;
    for (uint32_t clue = 1; clue < CLUE_SETS; clue <<= 1) {
        if ((clues & clue) != 0 && !can_all_be_true(s, clues & ~clue))
            return false;
    }
    return true;
}

static uint32_t as_public(uint32_t clues)
{
    return (clues & STAMPED_CLASS) != 0 ? (clues & ~STAMPED_CLASS) | RODT_CLUE_STAMP : clues;
}

/* The clues of every minimal conflict set: they cannot all be true, but could without any one of them. */
static uint32_t find_contradiction(const search *s)
{
    uint32_t contradiction = 0;
    for (uint32_t clues = 1; clues < CLUE_SETS; clues++) {
        if (is_minimal_conflict(s, clues))
            contradiction |= clues;
    }
    return as_public(contradiction);
}

/* --- The answer --------------------------------------------------------------------------------------- */

static int count_bits(uint32_t bits)
{
    int count = 0;
    for (; bits != 0; bits &= bits - 1)
        count++;
    return count;
}

static bool ranks_before(const rodt_candidate *a, const rodt_candidate *b)
{
    int order = count_bits(a->clues_against) - count_bits(b->clues_against);
    if (order == 0)
        order = count_bits(b->clues_for) - count_bits(a->clues_for);
    if (order == 0)
        order = rodt_length_compare(a->diameter_distance, b->diameter_distance);
    return order < 0 || (order == 0 && rodti_limit_is_lower(a->limit, b->limit));
}

/* A carrier's own table can have more kinds than there is room for: the last one leaves, but its limit stays in
 * the strict limit. */
static void insert(rodt_identification *found, const rodt_candidate *candidate)
{
    size_t at = found->count;
    while (at > 0 && ranks_before(candidate, &found->candidates[at - 1]))
        at--;
    if (at == RODT_CANDIDATES_MAX)
        return;
    size_t after = found->count - at - (found->count == RODT_CANDIDATES_MAX);
    memmove(&found->candidates[at + 1], &found->candidates[at], after * sizeof *candidate);
    found->candidates[at] = *candidate;
    found->count += found->count < RODT_CANDIDATES_MAX;
}

static void keep_possible(void *state, const candidate_match *matched)
{
    search *s = state;
    candidate_match t = *matched;
    rodt_candidate *candidate = &t.candidate;
    if (!is_possible(s, &t))
        return;
    candidate->clues_for = as_public(candidate->clues_for);
    candidate->clues_against = as_public(candidate->clues_against);
    candidate->clues_for &= ~candidate->clues_against;
    if ((candidate->clues_for & RODT_CLUE_STAMP) != 0)
        memcpy(candidate->chamber.spring_size, s->clues->stamp.spring_size, RODT_SIZE_TEXT_SIZE);
    s->found.without_limit += !rodt_length_given(candidate->limit);
    if (rodti_limit_is_lower(t.strict_limit, s->found.strict_limit))
        s->found.strict_limit = t.strict_limit;
    insert(&s->found, candidate);
}

/* --- Entry point ----------------------------------------------------------------------------------------- */

/* Not given, or a length above zero. */
static const char *measure_fault(rodt_length length)
{
    const char *fault = rodti_length_fault(length);
    return fault == NULL && rodt_length_given(length) && length.num == 0 ? "the length is zero" : fault;
}

static rodt_status check_measures(const rodt_clues *clues, rodt_error *error)
{
    const struct {
        const char *field;
        rodt_length length;
    } measures[] = {{"rated_stroke", clues->rated_stroke},
                    {"diameter", clues->diameter},
                    {"diameter_division", clues->diameter_division}};
    for (size_t i = 0; i < COUNT_OF(measures); i++) {
        const char *fault = measure_fault(measures[i].length);
        if (fault != NULL)
            return rodti_field_error(error, measures[i].field, fault);
    }
    return RODT_OK;
}

static bool has_clue(const rodt_clues *clues)
{
    const rodt_chamber *stamp = &clues->stamp;
    return stamp->size[0] != '\0' || stamp->family != RODT_FAMILY_UNKNOWN ||
           stamp->stroke_class != RODT_STROKE_CLASS_UNKNOWN || rodt_length_given(stamp->rated_stroke) ||
           clues->family != RODT_FAMILY_UNKNOWN || clues->port != RODT_PORT_NOT_SEEN ||
           clues->tag != RODT_TAG_NOT_SEEN || rodt_length_given(clues->rated_stroke) ||
           rodt_length_given(clues->diameter);
}

static rodt_status check_clues(const rodt_clues *clues, rodt_date day, rodt_error *error)
{
    if (clues == NULL)
        return rodti_field_error(error, "", "clues are needed");
    rodt_status status = rodt_chamber_check(&clues->stamp, error);
    if (status == RODT_OK)
        status = check_measures(clues, error);
    if (status != RODT_OK)
        return status;
    if (clues->family >= RODT_FAMILY_END)
        return rodti_field_error(error, "family", "there is no such family of chambers");
    if (clues->port >= RODT_PORT_END)
        return rodti_field_error(error, "port", "a port is round, square or not seen");
    if (clues->tag >= RODT_TAG_END)
        return rodti_field_error(error, "tag", "a tag is a trapezoid, none or not seen");
    if (rodti_date_fault(day) != NULL)
        return rodti_field_error(error, "date", rodti_date_fault(day));
    if (!rodti_is_zero(clues->reserved, COUNT_OF(clues->reserved)))
        return rodti_field_error(error, "reserved", "the reserve of clues is zero");
    return has_clue(clues) ? RODT_OK : rodti_field_error(error, "", "there is no clue at all");
}

static void identify(const rodt_clues *clues, const rodt_rules *rules, rodt_date day, rodt_identification *out)
{
    const rodt_rules *law = rodt_rules_law(rules);
    match_query asked = {.clues = clues, .rules = rules, .law = law != NULL ? law : rules, .day = day};
    search s = {.clues = clues};
    bool read_to = rodt_length_given(clues->diameter_division);
    asked.tolerance = rodti_diameter_tolerance(read_to ? clues->diameter_division : USUAL_DIVISION);
    rodti_match_every_chamber(&asked, record_conflicts, &s);
    rodti_match_every_chamber(&asked, keep_possible, &s);
    if (s.found.count > 0)
        s.found.contradiction = find_contradiction(&s);
    s.found.next_observation = rodti_find_next_observation(&s.found, clues);
    *out = s.found;
}

rodt_status rodt_clues_identify(const rodt_clues *clues, const rodt_rules *rules, rodt_date day,
                                rodt_identification *out, rodt_error *error)
{
    if (out == NULL)
        return rodti_field_error(error, "", "room for an identification is needed");
    if (rules == NULL)
        return rodti_rules_error(error);
    rodt_status status = check_clues(clues, day, error);
    if (status == RODT_OK)
        identify(clues, rules, day, out);
    return status;
}
