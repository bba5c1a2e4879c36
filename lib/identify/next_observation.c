/* SPDX-License-Identifier: Apache-2.0 */
/* What to look at next. Each observation would leave some of the candidates; what counts is how many different
 * limits are among those, because the brake is judged by the limit and not by the name of its chamber. */
#include "identify/next_observation.h"

#include "core/always.h"
#include "message/message.h"

#include <string.h>

rodt_length rodti_diameter_tolerance(rodt_length division)
{
    rodt_length half = division, tolerance = DIAMETERS_APART;
    rodt_status halved = rodt_length_scale(division, (rodt_ratio){1, 2}, &half);
    rodt_status added = rodt_length_add(half, DIAMETERS_APART, &tolerance);
    /* A division that a tape has fits. */
    return ALWAYS(halved == RODT_OK && added == RODT_OK) ? tolerance : DIAMETERS_APART;
}

bool rodti_diameter_distance(rodt_length a, rodt_length b, rodt_length *out)
{
    bool a_is_longer = rodt_length_compare(a, b) > 0;
    return (a_is_longer ? rodt_length_subtract(a, b, out) : rodt_length_subtract(b, a, out)) == RODT_OK;
}

static bool same_length(rodt_length a, rodt_length b) { return rodt_length_compare(a, b) == 0; }

/* A tape distinguishes two chambers when their diameters are further from each other than the usual tolerance, and both
 * are published. */
static bool look_alike_to_a_tape(const rodt_candidate *a, const rodt_candidate *b)
{
    rodt_length apart;
    return !rodti_diameter_distance(a->diameter, b->diameter, &apart) ||
           rodt_length_compare(apart, rodti_diameter_tolerance(USUAL_DIVISION)) <= 0;
}

/* If the chamber is `truth`, would `other` still be possible after the observation? A stamp gives the size; its
 * letters L and LS count as a sign. Rated strokes are published for some long rows only. */
static bool is_left(rodt_observation observation, const rodt_candidate *truth, const rodt_candidate *other)
{
    switch (observation) {
    case RODT_OBSERVATION_FAMILY:
        return truth->chamber.family == other->chamber.family;
    case RODT_OBSERVATION_STAMP:
        return strcmp(truth->chamber.size, other->chamber.size) == 0;
    case RODT_OBSERVATION_LONG_SIGN:
        return (truth->chamber.stroke_class == RODT_STROKE_CLASS_LONG) ==
               (other->chamber.stroke_class == RODT_STROKE_CLASS_LONG);
    case RODT_OBSERVATION_RATED_STROKE:
        return same_length(truth->chamber.rated_stroke, other->chamber.rated_stroke);
    case RODT_OBSERVATION_DIAMETER:
        return look_alike_to_a_tape(truth, other);
    case RODT_OBSERVATION_NOTHING:
        break;
    }
    return true;
}

/* How many different limits are left; none published counts as one of them. */
static size_t count_limits(const rodt_identification *found, rodt_observation observation,
                           const rodt_candidate *truth)
{
    const rodt_candidate *seen[RODT_CANDIDATES_MAX] = {NULL}; /* the first of each limit */
    size_t count = 0;
    for (size_t i = 0; i < found->count; i++) {
        const rodt_candidate *other = &found->candidates[i];
        size_t known = 0;
        if (!is_left(observation, truth, other))
            continue;
        while (known < count && !same_length(seen[known]->limit, other->limit))
            known++;
        seen[known] = other;
        count += known == count;
    }
    return count;
}

static size_t worst_case(const rodt_identification *found, rodt_observation observation)
{
    size_t worst = 0;
    for (size_t i = 0; i < found->count; i++) {
        size_t left = count_limits(found, observation, &found->candidates[i]);
        worst = left > worst ? left : worst;
    }
    return worst;
}

rodt_observation rodti_find_next_observation(const rodt_identification *found, const rodt_clues *clues)
{
    rodt_observation best = RODT_OBSERVATION_NOTHING;
    size_t fewest = worst_case(found, RODT_OBSERVATION_NOTHING);
    for (int o = RODT_OBSERVATION_FAMILY; o < RODT_OBSERVATION_END; o++) {
        if (o == RODT_OBSERVATION_DIAMETER && rodt_length_given(clues->diameter))
            continue;
        size_t left = worst_case(found, (rodt_observation)o);
        if (left < fewest) {
            fewest = left;
            best = (rodt_observation)o;
        }
    }
    return best;
}

static rodt_message_code code_of(rodt_observation observation)
{
    static const rodt_message_code codes[] = {
        [RODT_OBSERVATION_NOTHING] = RODT_MESSAGE_OBSERVATION_NOTHING,
        [RODT_OBSERVATION_FAMILY] = RODT_MESSAGE_OBSERVATION_FAMILY,
        [RODT_OBSERVATION_STAMP] = RODT_MESSAGE_OBSERVATION_STAMP,
        [RODT_OBSERVATION_LONG_SIGN] = RODT_MESSAGE_OBSERVATION_LONG_SIGN,
        [RODT_OBSERVATION_RATED_STROKE] = RODT_MESSAGE_OBSERVATION_RATED_STROKE,
        [RODT_OBSERVATION_DIAMETER] = RODT_MESSAGE_OBSERVATION_DIAMETER};
    return (unsigned)observation < COUNT_OF(codes) ? codes[observation] : RODT_MESSAGE_NONE;
}

rodt_status rodt_observation_message(rodt_observation observation, rodt_message *out)
{
    return rodti_message_sentence(code_of(observation), out);
}
