/* SPDX-License-Identifier: Apache-2.0 */
/* A finding as a report of one wheel end: the values that people ask for, and its sentences. */
#include "describe/json.h"

#include <string.h>

static void put_length(json_buffer *json, const char *key, rodt_length length)
{
    rodti_json_key(json, key);
    rodti_json_exact(json, (rodt_ratio){length.num, length.den});
}

static void put_pressure(json_buffer *json, const char *key, rodt_pressure pressure)
{
    rodti_json_key(json, key);
    rodti_json_exact(json, (rodt_ratio){pressure.num, pressure.den});
}

static void put_source(json_buffer *json, const char *key, const rodt_source *source)
{
    char words[RODT_SENTENCE_SIZE];
    bool written = source != NULL && rodt_source_format(source, words, sizeof words, NULL) == RODT_OK;
    rodti_json_pair(json, key, written ? words : NULL);
}

static void put_reasons(json_buffer *json, const rodt_finding *finding)
{
    char sentence[RODT_SENTENCE_SIZE];
    rodti_json_key(json, "reasons");
    rodti_json_open(json, '[');
    for (int i = 0; i < RODT_REASON_END; i++)
        if (rodt_finding_has(finding, (rodt_reason)i))
            rodti_json_text(json, rodt_reason_name((rodt_reason)i));
    rodti_json_close(json, ']');
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
    rodti_json_key(json, "probability_over");
    rodti_json_exact(json, finding->probability_over);
    bool said = given && rodt_finding_proof_format(finding, sentence, sizeof sentence, NULL) == RODT_OK;
    rodti_json_pair(json, "proof_sentence", said ? sentence : NULL);
}

static const char *evidence_of(const rodt_source *source, uint32_t evidence)
{
    return source != NULL ? rodt_evidence_name((rodt_evidence)evidence) : NULL;
}

/* Of the limit that judged, and of the law's. */
static void put_sources(json_buffer *json, const rodt_finding *finding)
{
    put_source(json, "source", finding->source);
    rodti_json_pair(json, "evidence", evidence_of(finding->source, finding->evidence));
    put_source(json, "law_source", finding->law_source);
    rodti_json_pair(json, "law_evidence", evidence_of(finding->law_source, finding->law_evidence));
}

static void put_law(json_buffer *json, const rodt_finding *finding)
{
    char day[RODT_DATE_TEXT_SIZE];
    const rodt_rules *law = rodt_rules_law(finding->rules);
    rodti_json_pair(json, "rules", rodt_rules_id(law != NULL ? law : finding->rules));
    rodti_json_pair(json, "own_limits", law != NULL ? rodt_rules_id(finding->rules) : NULL);
    rodti_json_pair(json, "as_of", rodt_date_format(finding->day, day, sizeof day, NULL) == RODT_OK ? day : NULL);
    put_sources(json, finding);
    put_pressure(json, "psi", finding->pressure);
    put_pressure(json, "psi_after", finding->pressure_after);
    put_source(json, "pressure_source", rodt_rules_pressure_source(finding->rules));
}

static void make_finding(json_buffer *json, const void *context)
{
    const rodt_finding *finding = context;
    char chamber[RODT_CHAMBER_TEXT_SIZE];
    bool named = rodt_chamber_format(&finding->chamber, chamber, sizeof chamber, NULL) == RODT_OK;
    rodti_json_open(json, '{');
    rodti_json_pair(json, "chamber", named ? chamber : NULL);
    put_length(json, "rated_stroke", finding->chamber.rated_stroke);
    put_length(json, "released", finding->released);
    put_length(json, "applied", finding->applied);
    put_length(json, "applied_stroke", finding->applied_stroke);
    put_length(json, "limit", finding->limit);
    put_length(json, "law_limit", finding->law_limit);
    put_length(json, "long_limit", finding->long_limit);
    put_length(json, "margin", finding->margin);
    rodti_json_pair(json, "verdict", rodt_verdict_name((rodt_verdict)finding->verdict));
    put_reasons(json, finding);
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
