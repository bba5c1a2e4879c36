/* SPDX-License-Identifier: Apache-2.0 */
/* Which chamber it can be, as a report. */
#include "describe/json.h"
#include "identify/words.h"

typedef struct identified {
    const rodt_identification *answer;
    const rodt_rules *rules;
    rodt_date day;
} identified;

static void put_clues(json_buffer *json, const char *key, uint32_t clues)
{
    rodti_json_key(json, key);
    rodti_json_open(json, '[');
    for (size_t i = 0; i < rodti_words_clue.count; i++)
        if ((clues & (uint32_t)rodti_words_clue.list[i].number) != 0)
            rodti_json_text(json, rodti_words_clue.list[i].word);
    rodti_json_close(json, ']');
}

/* A candidate does not say how the law of its limit was checked; its row does. */
static void put_evidence(json_buffer *json, const identified *of, const rodt_candidate *candidate)
{
    rodt_limit_answer limit;
    bool found = rodt_length_given(candidate->limit) &&
                 rodt_rules_find_limit(of->rules, &candidate->chamber, of->day, &limit, NULL) == RODT_OK;
    rodti_json_pair(json, "evidence", found ? rodt_evidence_name((rodt_evidence)limit.law_evidence) : NULL);
}

static void put_candidate(json_buffer *json, const identified *of, const rodt_candidate *candidate)
{
    const rodt_chamber *chamber = &candidate->chamber;
    rodti_json_open(json, '{');
    rodti_json_chamber(json, "chamber", chamber);
    rodti_json_pair(json, "family", rodt_family_name((rodt_family)chamber->family));
    rodti_json_pair(json, "size", chamber->size);
    rodti_json_pair(json, "class", rodt_stroke_class_name((rodt_stroke_class)chamber->stroke_class));
    rodti_json_length(json, "rated_stroke", chamber->rated_stroke);
    rodti_json_length(json, "limit", candidate->limit);
    put_evidence(json, of, candidate);
    rodti_json_length(json, "diameter", candidate->diameter);
    rodti_json_length(json, "diameter_distance", candidate->diameter_distance);
    put_clues(json, "clues_for", candidate->clues_for);
    put_clues(json, "clues_against", candidate->clues_against);
    rodti_json_close(json, '}');
}

/* Whatever it is, the limit is the same. */
static bool has_one_limit(const rodt_identification *answer)
{
    for (size_t i = 0; i < answer->count; i++)
        if (rodt_length_compare(answer->candidates[i].limit, answer->strict_limit) != 0)
            return false;
    return answer->without_limit == 0 && answer->contradiction == 0;
}

/* That nothing is open is said only where it is so. */
static void put_next(json_buffer *json, const rodt_identification *answer)
{
    const rodt_observation next = (rodt_observation)answer->next_observation;
    bool open = next != RODT_OBSERVATION_NOTHING;
    bool said = rodt_length_given(answer->strict_limit) && (open || has_one_limit(answer));
    rodt_message message;
    if (said)
        rodti_json_sentence(json, "next", rodt_observation_message(next, &message), &message);
    else
        rodti_json_pair(json, "next", NULL);
}

static void make_identification(json_buffer *json, const void *context)
{
    const identified *of = context;
    const rodt_identification *answer = of->answer;
    rodti_json_open(json, '{');
    rodti_json_length(json, "strict_limit", answer->strict_limit);
    rodti_json_number(json, "without_limit", answer->without_limit);
    rodti_json_key(json, "candidates");
    rodti_json_open(json, '[');
    for (size_t i = 0; i < answer->count; i++)
        put_candidate(json, of, &answer->candidates[i]);
    rodti_json_close(json, ']');
    put_clues(json, "contradiction", answer->contradiction);
    rodti_json_pair(json, "next_observation",
                    rodt_observation_name((rodt_observation)answer->next_observation));
    put_next(json, answer);
    rodti_json_rules(json, of->rules, rodt_rules_law(of->rules));
    rodti_json_date(json, "as_of", of->day);
    rodti_json_units(json, true, false);
    rodti_json_close(json, '}');
}

rodt_status rodt_identification_json_format(const rodt_identification *answer, const rodt_rules *rules, rodt_date day,
                                            const rodt_catalogue *catalogue, uint32_t options, char *text, size_t size,
                                            size_t *needed)
{
    const identified of = {answer, rules, day};
    if (answer == NULL || rules == NULL || answer->count > RODT_CANDIDATES_MAX)
        return RODT_E_ARGUMENT;
    return rodti_json_format(make_identification, &of, catalogue, options, text, size, needed);
}
