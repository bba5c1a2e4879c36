/* SPDX-License-Identifier: Apache-2.0 */
/* Values of the library as members of a report: one line each, for a person or a page. */
#include "describe/json.h"

void rodti_json_message(json_buffer *json, rodt_status made, const rodt_message *message)
{
    char text[RODT_REPORT_SENTENCE_SIZE];
    bool said = made == RODT_OK && message->code != RODT_MESSAGE_NONE;
    bool written = said && rodt_message_format(message, json->catalogue, text, sizeof text, NULL) == RODT_OK;
    json->broken = json->broken || (json->catalogue != NULL && said && !written);
    rodti_json_text(json, written ? text : NULL);
}

void rodti_json_sentence(json_buffer *json, const char *key, rodt_status made, const rodt_message *message)
{
    rodti_json_key(json, key);
    rodti_json_message(json, made, message);
}

void rodti_json_ratio(json_buffer *json, const char *key, rodt_ratio value)
{
    rodti_json_key(json, key);
    rodti_json_exact(json, value, "");
}

void rodti_json_length(json_buffer *json, const char *key, rodt_length length)
{
    rodti_json_key(json, key);
    rodti_json_exact(json, (rodt_ratio){length.num, length.den}, "in");
}

void rodti_json_pressure(json_buffer *json, const char *key, rodt_pressure pressure)
{
    rodti_json_key(json, key);
    rodti_json_exact(json, (rodt_ratio){pressure.num, pressure.den}, "psi");
}

void rodti_json_as_read(json_buffer *json, const char *key, rodt_pressure pressure, uint32_t unit)
{
    char text[RODT_PRESSURE_TEXT_SIZE];
    bool given = rodt_pressure_format_unit(pressure, (rodt_pressure_unit)unit, text, sizeof text, NULL) == RODT_OK;
    rodti_json_pair(json, key, given ? text : NULL);
}

void rodti_json_units(json_buffer *json, bool lengths, bool pressures)
{
    if (!lengths && !pressures)
        return;
    rodti_json_key(json, "units");
    rodti_json_open(json, '{');
    if (lengths)
        rodti_json_pair(json, "length", "in");
    if (pressures)
        rodti_json_pair(json, "pressure", "psi");
    rodti_json_close(json, '}');
}

void rodti_json_date(json_buffer *json, const char *key, rodt_date day)
{
    char text[RODT_DATE_TEXT_SIZE];
    rodti_json_pair(json, key, rodt_date_format(day, text, sizeof text, NULL) == RODT_OK ? text : NULL);
}

void rodti_json_chamber(json_buffer *json, const char *key, const rodt_chamber *chamber)
{
    char name[RODT_CHAMBER_TEXT_SIZE];
    rodti_json_pair(json, key, rodt_chamber_format(chamber, name, sizeof name, NULL) == RODT_OK ? name : NULL);
}

void rodti_json_source(json_buffer *json, const char *key, const rodt_source *source)
{
    char words[RODT_SOURCE_TEXT_SIZE];
    bool written = source != NULL && rodt_source_format(source, words, sizeof words, NULL) == RODT_OK;
    rodti_json_pair(json, key, written ? words : NULL);
}

void rodti_json_evidence(json_buffer *json, const char *key, const rodt_source *source, uint32_t evidence)
{
    rodti_json_pair(json, key, source != NULL ? rodt_evidence_name((rodt_evidence)evidence) : NULL);
}

void rodti_json_reasons(json_buffer *json, const rodt_finding *finding)
{
    rodti_json_key(json, "reasons");
    rodti_json_open(json, '[');
    for (int i = 0; i < RODT_REASON_END; i++)
        if (rodt_finding_has(finding, (rodt_reason)i))
            rodti_json_text(json, rodt_reason_name((rodt_reason)i));
    rodti_json_close(json, ']');
}

void rodti_json_read_in(json_buffer *json, const rodt_source *source, uint32_t evidence)
{
    rodti_json_source(json, "source", source);
    rodti_json_evidence(json, "evidence", source, evidence);
}

void rodti_json_stroke(json_buffer *json, const rodt_finding *finding)
{
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
}

void rodti_json_proof(json_buffer *json, const rodt_finding *finding)
{
    rodt_message message;
    bool given = finding->proof != RODT_PROOF_NOT_ASKED;
    rodti_json_pair(json, "proof", given ? rodt_proof_name((rodt_proof)finding->proof) : NULL);
    rodti_json_ratio(json, "probability_over", finding->probability_over);
    rodti_json_sentence(json, "proof_sentence", rodt_finding_proof_message(finding, &message), &message);
}

void rodti_json_grounds(json_buffer *json, const rodt_finding *finding)
{
    rodti_json_date(json, "as_of", finding->day);
    rodti_json_read_in(json, finding->source, finding->evidence);
    rodti_json_source(json, "law_source", finding->law_source);
    rodti_json_evidence(json, "law_evidence", finding->law_source, finding->law_evidence);
    rodti_json_pressure(json, "psi", finding->pressure);
    rodti_json_pressure(json, "psi_after", finding->pressure_after);
    rodti_json_as_read(json, "pressure", finding->pressure, finding->pressure_unit);
    rodti_json_as_read(json, "pressure_after", finding->pressure_after, finding->pressure_unit);
}

void rodti_json_rules(json_buffer *json, const rodt_rules *rules, const rodt_rules *law)
{
    rodti_json_pair(json, "rules", rodt_rules_id(law != NULL ? law : rules));
    rodti_json_pair(json, "own_limits", law != NULL ? rodt_rules_id(rules) : NULL);
}
