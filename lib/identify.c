/* SPDX-License-Identifier: Apache-2.0 */
/* From clues to candidates. Every chamber of the tables is held against every clue; nothing is excluded on
 * second-hand figures, and where the clues cannot all be true the chambers that most of them allow stay. */
#include "rodtravel/identify.h"

#include "common.h"

#include <string.h>

/* Published diameters of three families lie within 1/16 in (1.6 mm) of each other: clamp 30, DD-3 30 and
 * bolt C (49 CFR 393.47(e)). A tape on a dirty housing does no better, so so much is always left open. */
static const rodt_length spread = {1, 16};
static const rodt_length default_division = {1, 8};
static const rodt_ratio half = {1, 2};

/* Clues that point at some chambers; a round port or a missing tag only ranks. */
#define STRONG_CLUES                                                                                          \
    (RODT_CLUE_STAMP | RODT_CLUE_FAMILY | RODT_CLUE_RATED_STROKE | RODT_CLUE_DIAMETER)

typedef struct clue_scene {
    const rodt_clues *clues;
    const rodt_rules *rules;
    rodt_date day;
    rodt_length tolerance; /* of the diameter */
    rodt_identification *answer;
    rodt_status status;
} clue_scene;

static unsigned count_bits(uint32_t bits)
{
    unsigned count = 0;
    for (; bits != 0; bits &= bits - 1)
        count++;
    return count;
}

static void weigh(rodt_candidate *candidate, uint32_t clue, bool agrees)
{
    if (agrees)
        candidate->clues_for |= clue;
    else
        candidate->clues_against |= clue;
}

static bool is_size(const rodt_chamber *chamber, const char *size) { return strcmp(chamber->size, size) == 0; }

/* --- One candidate against each clue ----------------------------------------------------------------- */

static void weigh_stamp(const clue_scene *scene, rodt_candidate *candidate)
{
    const rodt_chamber *stamp = &scene->clues->stamp;
    const rodt_chamber *chamber = &candidate->chamber;
    if (stamp->size[0] == '\0')
        return;
    bool family = stamp->family == RODT_FAMILY_UNKNOWN || stamp->family == chamber->family;
    bool open_class = stamp->stroke_class == RODT_CLASS_UNKNOWN || chamber->stroke_class == RODT_CLASS_UNKNOWN;
    weigh(candidate, RODT_CLUE_STAMP,
          is_size(chamber, stamp->size) && family && (open_class || stamp->stroke_class == chamber->stroke_class));
}

/* A sign of long stroke speaks against every other chamber; its absence is only a hint for standard. */
static void weigh_long_sign(uint32_t clue, bool sign, bool absence, rodt_candidate *candidate)
{
    if (sign)
        weigh(candidate, clue, candidate->chamber.stroke_class == RODT_CLASS_LONG);
    else if (absence && candidate->chamber.stroke_class != RODT_CLASS_LONG)
        candidate->clues_for |= clue;
}

/* True if another row of the same chamber and class is published for just this rated stroke. */
static bool has_row_for_rated(const clue_scene *scene, const rodt_chamber *chamber)
{
    for (size_t i = 0; i < rodt_rules_limit_count(scene->rules); i++) {
        const rodt_limit *row = rodt_rules_limit(scene->rules, i);
        if (row->family == chamber->family && row->stroke_class == chamber->stroke_class &&
            is_size(chamber, row->size) && rodt_length_given(row->rated_stroke) &&
            (rodt_length_compare(row->rated_stroke, scene->clues->rated_stroke) == 0 ||
             rodt_length_compare(row->rated_stroke_mm, scene->clues->rated_stroke) == 0))
            return true;
    }
    return false;
}

static bool is_standard_rated(const rodt_chamber *chamber, rodt_length rated)
{
    for (size_t i = 0; i < rodt_chamber_row_count(); i++) {
        const rodt_chamber_row *row = rodt_chamber_row_at(i);
        if (row->family == chamber->family && is_size(chamber, row->size))
            return rodt_length_given(row->standard_rated_stroke) &&
                   rodt_length_compare(row->standard_rated_stroke, rated) == 0;
    }
    return false;
}

/* The published rated strokes of the standard class are second-hand, so they only speak for a chamber. A
 * limit that reaches the full travel cannot be right for the housing, and speaks against it. */
static void weigh_rated(const clue_scene *scene, bool rated_row, rodt_candidate *candidate)
{
    rodt_length rated = scene->clues->rated_stroke;
    if (!rodt_length_given(rated))
        return;
    bool own_row = has_row_for_rated(scene, &candidate->chamber);
    bool impossible = rodt_length_given(candidate->limit) && rodt_length_compare(candidate->limit, rated) >= 0;
    if (rated_row || own_row || impossible)
        weigh(candidate, RODT_CLUE_RATED_STROKE, rated_row && own_row && !impossible);
    else if (candidate->chamber.stroke_class != RODT_CLASS_LONG && is_standard_rated(&candidate->chamber, rated))
        candidate->clues_for |= RODT_CLUE_RATED_STROKE;
}

static void weigh_diameter(clue_scene *scene, rodt_candidate *candidate)
{
    rodt_length measured = scene->clues->diameter;
    if (!rodt_length_given(measured) || !rodt_length_given(candidate->diameter))
        return;
    bool larger = rodt_length_compare(measured, candidate->diameter) >= 0;
    rodt_status status = rodt_length_subtract(larger ? measured : candidate->diameter,
                                              larger ? candidate->diameter : measured, &candidate->diameter_distance);
    if (status != RODT_OK)
        scene->status = status;
    else
        weigh(candidate, RODT_CLUE_DIAMETER,
              rodt_length_compare(candidate->diameter_distance, scene->tolerance) <= 0);
}

static rodt_length published_diameter(const rodt_chamber *chamber)
{
    for (size_t i = 0; i < rodt_chamber_row_count(); i++) {
        const rodt_chamber_row *row = rodt_chamber_row_at(i);
        if (row->family == chamber->family && is_size(chamber, row->size))
            return row->outside_diameter;
    }
    return (rodt_length){0, 0};
}

/* The limit of a candidate needs the marked rated stroke where no row stands (80 % of it). */
static void find_limit(clue_scene *scene, rodt_candidate *candidate)
{
    rodt_chamber chamber = candidate->chamber;
    rodt_limit_answer found;
    if (!rodt_length_given(chamber.rated_stroke))
        chamber.rated_stroke = scene->clues->rated_stroke;
    rodt_status status = rodt_rules_find_limit(scene->rules, &chamber, scene->day, &found);
    if (status != RODT_OK)
        scene->status = status;
    else
        candidate->limit = found.limit;
}

static rodt_candidate hold_against_clues(clue_scene *scene, const rodt_chamber *chamber, rodt_length row_limit)
{
    const rodt_clues *clues = scene->clues;
    rodt_candidate candidate;
    memset(&candidate, 0, sizeof candidate);
    candidate.chamber = *chamber;
    candidate.limit = row_limit;
    candidate.diameter = published_diameter(chamber);
    if (!rodt_length_given(row_limit))
        find_limit(scene, &candidate);
    weigh_stamp(scene, &candidate);
    if (clues->family != RODT_FAMILY_UNKNOWN)
        weigh(&candidate, RODT_CLUE_FAMILY, clues->family == chamber->family);
    weigh_long_sign(RODT_CLUE_PORT, clues->port == RODT_PORT_SQUARE, clues->port == RODT_PORT_ROUND, &candidate);
    weigh_long_sign(RODT_CLUE_TAG, clues->tag == RODT_TAG_TRAPEZOID, clues->tag == RODT_TAG_NONE, &candidate);
    weigh_rated(scene, rodt_length_given(chamber->rated_stroke), &candidate);
    weigh_diameter(scene, &candidate);
    return candidate;
}

/* --- The list, best first ---------------------------------------------------------------------------- */

/* Negative if a stands before b. A limit that is not published stands last. */
static int rank(const rodt_candidate *a, const rodt_candidate *b)
{
    int against = (int)count_bits(a->clues_against) - (int)count_bits(b->clues_against);
    int in_favour = (int)count_bits(b->clues_for) - (int)count_bits(a->clues_for);
    if (against != 0 || in_favour != 0)
        return against != 0 ? against : in_favour;
    int distance = rodt_length_compare(a->diameter_distance, b->diameter_distance);
    if (distance != 0)
        return distance;
    if (rodt_length_given(a->limit) != rodt_length_given(b->limit))
        return rodt_length_given(a->limit) ? -1 : 1;
    return rodt_length_compare(a->limit, b->limit);
}

/* Keeps the order of the table among equals, so that the answer does not depend on a sort. */
static void insert(clue_scene *scene, const rodt_candidate *candidate)
{
    rodt_identification *answer = scene->answer;
    if (answer->count == RODT_CANDIDATES_MAX) {
        scene->status = RODT_E_INTERNAL;
        return;
    }
    size_t at = answer->count++;
    for (; at > 0 && rank(candidate, &answer->candidates[at - 1]) < 0; at--)
        answer->candidates[at] = answer->candidates[at - 1];
    answer->candidates[at] = *candidate;
}

static void add_chamber(clue_scene *scene, const rodt_chamber *chamber, rodt_length row_limit)
{
    rodt_candidate candidate = hold_against_clues(scene, chamber, row_limit);
    if (scene->status == RODT_OK)
        insert(scene, &candidate);
}

static rodt_chamber chamber_of(rodt_family family, const char *size, rodt_stroke_class stroke_class)
{
    rodt_chamber chamber;
    memset(&chamber, 0, sizeof chamber);
    chamber.family = family;
    chamber.stroke_class = stroke_class;
    for (size_t i = 0; i + 1 < sizeof chamber.size && size[i] != '\0'; i++)
        chamber.size[i] = size[i];
    return chamber;
}

static bool is_in_force(const rodt_limit *row, rodt_date day)
{
    if (!rodt_date_given(day))
        return !rodt_date_given(row->until);
    return rodt_date_compare(row->from, day) <= 0 &&
           (!rodt_date_given(row->until) || rodt_date_compare(day, row->until) <= 0);
}

/* The law whose rows a carrier's own limits stand on. */
static const rodt_rules *table_of(const rodt_rules *rules)
{
    const rodt_rules *law = rodt_rules_law(rules);
    return law == NULL ? rules : law;
}

static void add_rows(clue_scene *scene)
{
    const rodt_rules *table = table_of(scene->rules);
    for (size_t i = 0; i < rodt_rules_limit_count(table); i++) {
        const rodt_limit *row = rodt_rules_limit(table, i);
        if (!is_in_force(row, scene->day))
            continue;
        rodt_chamber chamber = chamber_of(row->family, row->size, row->stroke_class);
        chamber.rated_stroke = row->rated_stroke;
        bool own = scene->rules != table;
        add_chamber(scene, &chamber, own ? (rodt_length){0, 0} : row->limit);
    }
}

static bool is_listed(const clue_scene *scene, rodt_family family, const char *size)
{
    for (size_t i = 0; i < scene->answer->count; i++) {
        const rodt_chamber *chamber = &scene->answer->candidates[i].chamber;
        if (chamber->family == family && is_size(chamber, size))
            return true;
    }
    return false;
}

/* Chambers that exist though this rule set has no limit for them, and a stamped size that no table knows. */
static void add_others(clue_scene *scene)
{
    const rodt_length none = {0, 0};
    const rodt_chamber *stamp = &scene->clues->stamp;
    bool known_size = false;
    for (size_t i = 0; i < rodt_chamber_row_count(); i++) {
        const rodt_chamber_row *row = rodt_chamber_row_at(i);
        known_size = known_size || is_size(stamp, row->size);
        if (is_listed(scene, row->family, row->size))
            continue;
        rodt_chamber chamber = chamber_of(row->family, row->size, RODT_CLASS_UNKNOWN);
        add_chamber(scene, &chamber, none);
    }
    if (stamp->size[0] != '\0' && !known_size) {
        rodt_chamber chamber = chamber_of(stamp->family, stamp->size, stamp->stroke_class);
        add_chamber(scene, &chamber, none);
    }
}

/* Agreeing clues leave those with nothing against them; otherwise those with the least against them stay,
 * if some clue points at them at all. The list is sorted by that already. */
static void keep_best(rodt_identification *answer)
{
    unsigned least = count_bits(answer->candidates[0].clues_against);
    size_t kept = 0;
    for (size_t i = 0; i < answer->count; i++) {
        const rodt_candidate *candidate = &answer->candidates[i];
        bool pointed_at = least == 0 || (candidate->clues_for & STRONG_CLUES) != 0;
        if (count_bits(candidate->clues_against) != least || !pointed_at)
            continue;
        answer->contradiction |= candidate->clues_against;
        answer->candidates[kept++] = *candidate;
    }
    memset(&answer->candidates[kept], 0, (answer->count - kept) * sizeof answer->candidates[0]);
    answer->count = kept;
    if (kept == 0)
        answer->contradiction = 0;
}

static void find_strict_limit(rodt_identification *answer)
{
    for (size_t i = 0; i < answer->count; i++) {
        rodt_length limit = answer->candidates[i].limit;
        if (rodt_length_given(limit) &&
            (!rodt_length_given(answer->strict_limit) || rodt_length_compare(limit, answer->strict_limit) < 0))
            answer->strict_limit = limit;
    }
}

/* --- What to look at next ---------------------------------------------------------------------------- */

/* Two candidates that this observation cannot tell apart. */
static bool looks_alike(rodt_observation observation, const rodt_candidate *a, const rodt_candidate *b)
{
    switch (observation) {
    case RODT_OBSERVE_FAMILY: return a->chamber.family == b->chamber.family;
    case RODT_OBSERVE_STAMP: return is_size(&a->chamber, b->chamber.size);
    case RODT_OBSERVE_LONG_SIGN:
        return (a->chamber.stroke_class == RODT_CLASS_LONG) == (b->chamber.stroke_class == RODT_CLASS_LONG);
    case RODT_OBSERVE_RATED_STROKE:
        return rodt_length_compare(a->chamber.rated_stroke, b->chamber.rated_stroke) == 0;
    case RODT_OBSERVE_DIAMETER: return rodt_length_compare(a->diameter, b->diameter) == 0;
    case RODT_OBSERVE_NOTHING: break;
    }
    return true;
}

/* How many different limits are left at worst once the observation is made. */
static size_t limits_left(const rodt_identification *answer, rodt_observation observation)
{
    size_t worst = 0;
    for (size_t i = 0; i < answer->count; i++) {
        size_t distinct = 0;
        for (size_t j = 0; j < answer->count; j++) {
            bool first = looks_alike(observation, &answer->candidates[i], &answer->candidates[j]);
            for (size_t k = 0; k < j && first; k++) {
                first = !looks_alike(observation, &answer->candidates[i], &answer->candidates[k]) ||
                        rodt_length_compare(answer->candidates[k].limit, answer->candidates[j].limit) != 0;
            }
            distinct += first;
        }
        worst = distinct > worst ? distinct : worst;
    }
    return worst;
}

static bool is_made(const rodt_clues *clues, rodt_observation observation)
{
    bool stamp = clues->stamp.size[0] != '\0';
    switch (observation) {
    case RODT_OBSERVE_FAMILY: return clues->family != RODT_FAMILY_UNKNOWN;
    case RODT_OBSERVE_STAMP: return stamp;
    case RODT_OBSERVE_LONG_SIGN:
        return clues->stamp.stroke_class == RODT_CLASS_LONG || clues->port == RODT_PORT_SQUARE ||
               clues->tag == RODT_TAG_TRAPEZOID ||
               (stamp && clues->port == RODT_PORT_ROUND && clues->tag == RODT_TAG_NONE);
    case RODT_OBSERVE_RATED_STROKE: return rodt_length_given(clues->rated_stroke);
    case RODT_OBSERVE_DIAMETER: return rodt_length_given(clues->diameter);
    case RODT_OBSERVE_NOTHING: break;
    }
    return true;
}

/* Ties go to the earlier observation: those that take a look stand before those that take a tape. */
static void choose_observation(const rodt_clues *clues, rodt_identification *answer)
{
    size_t best = limits_left(answer, RODT_OBSERVE_NOTHING);
    for (int i = RODT_OBSERVE_FAMILY; i <= RODT_OBSERVE_DIAMETER; i++) {
        rodt_observation observation = (rodt_observation)i;
        if (is_made(clues, observation))
            continue;
        size_t left = limits_left(answer, observation);
        if (left < best) {
            best = left;
            answer->settle_by = observation;
        }
    }
}

/* --- The question ------------------------------------------------------------------------------------ */

static bool is_sound(const rodt_clues *clues)
{
    const rodt_length lengths[] = {clues->rated_stroke, clues->diameter, clues->diameter_division};
    for (size_t i = 0; i < COUNT_OF(lengths); i++) {
        if (lengths[i].den < 0 || lengths[i].num < 0)
            return false;
    }
    return (unsigned)clues->family <= RODT_FAMILY_DD3 && (unsigned)clues->port <= RODT_PORT_SQUARE &&
           (unsigned)clues->tag <= RODT_TAG_TRAPEZOID && (unsigned)clues->stamp.family <= RODT_FAMILY_DD3 &&
           (unsigned)clues->stamp.stroke_class <= RODT_CLASS_LONG &&
           memchr(clues->stamp.size, '\0', sizeof clues->stamp.size) != NULL;
}

static bool has_clue(const rodt_clues *clues)
{
    return clues->stamp.size[0] != '\0' || clues->family != RODT_FAMILY_UNKNOWN ||
           clues->port != RODT_PORT_NOT_SEEN || clues->tag != RODT_TAG_NOT_SEEN ||
           rodt_length_given(clues->rated_stroke) || rodt_length_given(clues->diameter);
}

static rodt_status find_tolerance(clue_scene *scene)
{
    rodt_length division = scene->clues->diameter_division;
    if (!rodt_length_given(division))
        division = default_division;
    rodt_status status = rodt_length_scale(division, half, &division);
    return status == RODT_OK ? rodt_length_add(division, spread, &scene->tolerance) : status;
}

rodt_status rodt_identify(const rodt_clues *clues, const rodt_rules *rules, rodt_date day, rodt_identification *out)
{
    if (clues == NULL || rules == NULL || out == NULL || !is_sound(clues) || !has_clue(clues))
        return RODT_E_ARGUMENT;
    rodt_identification answer;
    memset(&answer, 0, sizeof answer);
    clue_scene scene = {.clues = clues, .rules = rules, .day = day, .answer = &answer, .status = RODT_OK};
    scene.status = find_tolerance(&scene);
    if (scene.status == RODT_OK)
        add_rows(&scene);
    if (scene.status == RODT_OK)
        add_others(&scene);
    if (scene.status != RODT_OK)
        return scene.status;
    keep_best(&answer);
    find_strict_limit(&answer);
    choose_observation(clues, &answer);
    *out = answer;
    return RODT_OK;
}

const char *rodt_observation_text(rodt_observation observation)
{
    switch (observation) {
    case RODT_OBSERVE_FAMILY:
        return "look at what holds the housing together: a clamp band, a flange with bolts, or three air lines "
               "(DD-3)";
    case RODT_OBSERVE_STAMP: return "clean the housing and read the type that is stamped or cast on it";
    case RODT_OBSERVE_LONG_SIGN:
        return "look for a sign of long stroke: L or LS in the mark, square ports, a trapezoid tag";
    case RODT_OBSERVE_RATED_STROKE: return "read the rated stroke that is marked on the housing or its tag";
    case RODT_OBSERVE_DIAMETER: return "measure the outside diameter of the housing with a tape";
    case RODT_OBSERVE_NOTHING: break;
    }
    return "nothing else would change the limit";
}

const char *rodt_clue_name(uint32_t clue)
{
    static const char *const names[] = {"stamp", "family", "port shape", "tag", "rated stroke", "diameter"};
    for (size_t i = 0; i < COUNT_OF(names); i++) {
        if (clue == (uint32_t)1 << i)
            return names[i];
    }
    return "";
}
