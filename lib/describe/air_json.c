/* SPDX-License-Identifier: Apache-2.0 */
/* The finding of an air check as a report: the values that people ask for, and its sentences. */
#include "describe/json.h"

static void put_sentences(json_buffer *json, const rodt_air_finding *finding)
{
    rodt_message message;
    rodti_json_sentence(json, "sentence", rodt_air_finding_message(finding, &message), &message);
    rodti_json_sentence(json, "edge", rodt_air_finding_edge_message(finding, &message), &message);
    rodti_json_sentence(json, "note", rodt_air_finding_note_message(finding, &message), &message);
}

/* The row that judged, and what the law says by itself. */
static void put_rows(json_buffer *json, const rodt_air_finding *finding)
{
    const rodt_air_limit *row = finding->row, *law_row = finding->law_row;
    rodti_json_pair(json, "published", row != NULL ? row->published : NULL);
    rodti_json_pair(json, "setup", row != NULL ? row->setup : NULL);
    rodti_json_rules(json, finding->rules, rodt_rules_air_law(finding->rules));
    rodti_json_read_in(json, row != NULL ? row->source : NULL, row != NULL ? row->evidence : 0);
    rodti_json_pair(json, "law_result", rodt_air_result_name((rodt_air_result)finding->law_result));
    rodti_json_pair(json, "law_published", law_row != NULL ? law_row->published : NULL);
    rodti_json_source(json, "law_source", law_row != NULL ? law_row->source : NULL);
    rodti_json_evidence(json, "law_evidence", law_row != NULL ? law_row->source : NULL,
                        law_row != NULL ? law_row->evidence : 0);
}

static void make_finding(json_buffer *json, const void *context)
{
    const rodt_air_finding *finding = context;
    bool misses = finding->missing != RODT_AIR_MISSING_NOTHING;
    rodti_json_open(json, '{');
    rodti_json_pair(json, "check", rodt_air_check_name((rodt_air_check)finding->reading.check));
    rodti_json_pair(json, "result", rodt_air_result_name((rodt_air_result)finding->result));
    rodti_json_pair(json, "missing", misses ? rodt_air_missing_name((rodt_air_missing)finding->missing) : NULL);
    rodti_json_boolean(json, "major", finding->major);
    rodti_json_boolean(json, "minor", finding->minor);
    rodti_json_boolean(json, "at_limit", finding->at_limit);
    rodti_json_ratio(json, "measured", finding->measured);
    rodti_json_ratio(json, "allowed", finding->allowed);
    rodti_json_pair(json, "measure",
                    finding->row != NULL ? rodt_air_measure_name((rodt_air_measure)finding->row->measure) : NULL);
    put_sentences(json, finding);
    put_rows(json, finding);
    rodti_json_close(json, '}');
}

rodt_status rodt_air_finding_json_format(const rodt_air_finding *finding, const rodt_catalogue *catalogue,
                                         uint32_t options, char *text, size_t size, size_t *needed)
{
    if (finding == NULL || finding->rules == NULL)
        return RODT_E_ARGUMENT;
    return rodti_json_format(make_finding, finding, catalogue, options, text, size, needed);
}
