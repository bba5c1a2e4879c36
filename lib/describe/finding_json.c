/* SPDX-License-Identifier: Apache-2.0 */
/* A finding as a report of one wheel end: the values that people ask for, and its sentences. */
#include "describe/json.h"

static void put_sentences(json_buffer *json, const rodt_finding *finding)
{
    rodt_message message;
    rodti_json_key(json, "sentences");
    rodti_json_open(json, '[');
    for (int i = 0; i < RODT_REASON_END; i++)
        if (rodt_finding_reason_message(finding, (rodt_reason)i, &message) == RODT_OK)
            rodti_json_message(json, RODT_OK, &message);
    rodti_json_close(json, ']');
}

static void make_finding(json_buffer *json, const void *context)
{
    const rodt_finding *finding = context;
    rodti_json_open(json, '{');
    rodti_json_stroke(json, finding);
    rodti_json_reasons(json, finding);
    put_sentences(json, finding);
    rodti_json_proof(json, finding);
    rodti_json_rules(json, finding->rules, rodt_rules_law(finding->rules));
    rodti_json_grounds(json, finding);
    rodti_json_source(json, "pressure_source", rodt_rules_pressure_source(finding->rules));
    rodti_json_units(json, true, true);
    rodti_json_close(json, '}');
}

rodt_status rodt_finding_json_format(const rodt_finding *finding, const rodt_catalogue *catalogue,
                                     uint32_t options, char *text, size_t size, size_t *needed)
{
    if (finding == NULL || finding->rules == NULL)
        return RODT_E_ARGUMENT;
    return rodti_json_format(make_finding, finding, catalogue, options, text, size, needed);
}
