/* SPDX-License-Identifier: Apache-2.0 */
/* A finding as a report of one wheel end: the values that people ask for, and its sentences. */
#include "describe/json.h"

static void put_sentences(json_buffer *json, const rodt_finding *finding)
{
    char sentence[RODT_SENTENCE_SIZE];
    rodti_json_key(json, "sentences");
    rodti_json_open(json, '[');
    for (int i = 0; i < RODT_REASON_END; i++)
        if (rodt_finding_reason_format(finding, (rodt_reason)i, sentence, sizeof sentence, NULL) == RODT_OK)
            rodti_json_text(json, sentence);
    rodti_json_close(json, ']');
}

static void put_proof(json_buffer *json, const rodt_finding *finding)
{
    char sentence[RODT_SENTENCE_SIZE];
    bool given = finding->proof != RODT_PROOF_NOT_ASKED;
    rodti_json_pair(json, "proof", given ? rodt_proof_name((rodt_proof)finding->proof) : NULL);
    rodti_json_ratio(json, "probability_over", finding->probability_over);
    bool said = given && rodt_finding_proof_format(finding, sentence, sizeof sentence, NULL) == RODT_OK;
    rodti_json_pair(json, "proof_sentence", said ? sentence : NULL);
}

static void put_law(json_buffer *json, const rodt_finding *finding)
{
    rodti_json_rules(json, finding->rules, rodt_rules_law(finding->rules));
    rodti_json_date(json, "as_of", finding->day);
    rodti_json_sources(json, finding);
    rodti_json_pressure(json, "psi", finding->pressure);
    rodti_json_pressure(json, "psi_after", finding->pressure_after);
    rodti_json_source(json, "pressure_source", rodt_rules_pressure_source(finding->rules));
}

static void make_finding(json_buffer *json, const void *context)
{
    const rodt_finding *finding = context;
    rodti_json_open(json, '{');
    rodti_json_chamber(json, "chamber", &finding->chamber);
    rodti_json_length(json, "rated_stroke", finding->chamber.rated_stroke);
    rodti_json_length(json, "released", finding->released);
    rodti_json_length(json, "applied", finding->applied);
    rodti_json_length(json, "applied_stroke", finding->applied_stroke);
    rodti_json_length(json, "limit", finding->limit);
    rodti_json_length(json, "law_limit", finding->law_limit);
    rodti_json_length(json, "long_limit", finding->long_limit);
    rodti_json_length(json, "margin", finding->margin);
    rodti_json_pair(json, "verdict", rodt_verdict_name((rodt_verdict)finding->verdict));
    rodti_json_reasons(json, finding);
    put_sentences(json, finding);
    put_proof(json, finding);
    put_law(json, finding);
    rodti_json_close(json, '}');
}

rodt_status rodt_finding_json_format(const rodt_finding *finding, uint32_t options, char *text, size_t size,
                                     size_t *needed)
{
    if (finding == NULL || finding->rules == NULL)
        return RODT_E_ARGUMENT;
    return rodti_json_format(make_finding, finding, options, text, size, needed);
}
