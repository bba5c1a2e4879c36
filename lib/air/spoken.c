/* SPDX-License-Identifier: Apache-2.0 */
/* An air finding as the person who made it says it aloud: what was found, whether that is good, and what else would
 * have been. */
#include "air/sentence.h"
#include "core/always.h"
#include "rules/tables.h"

static rodt_message_code code_of_defect(bool major, bool minor)
{
    return major   ? RODT_MESSAGE_AIR_SPOKEN_IS_MAJOR
           : minor ? RODT_MESSAGE_AIR_SPOKEN_IS_MINOR
                   : RODT_MESSAGE_AIR_SPOKEN_IS_DEFECTIVE;
}

static rodt_message_code code_of_edge(const rodt_air_limit *row)
{
    return air_is_major(row)   ? RODT_MESSAGE_AIR_SPOKEN_BE_MAJOR
           : air_is_minor(row) ? RODT_MESSAGE_AIR_SPOKEN_BE_MINOR
                               : RODT_MESSAGE_AIR_SPOKEN_BE_DEFECTIVE;
}

/* "If a leak is heard, that is"; a bound alone is said as "below 55 psi it would be". */
static bool is_condition(const rodt_air_finding *finding)
{
    const rodt_air_limit *row = finding->row;
    return row->measure == RODT_AIR_MEASURE_YES_NO || row->half_cut_out || !rodt_ratio_given(finding->allowed);
}

/* What never came is a defect by a usual figure too, which is no bound. */
static bool has_bound(const rodt_air_limit *row)
{
    return row->measure != RODT_AIR_MEASURE_YES_NO && row->kind != RODT_AIR_KIND_USUAL;
}

static rodt_message_code code_of_spoken(const rodt_air_finding *finding)
{
    switch ((rodt_air_result)finding->result) {
    case RODT_AIR_RESULT_GOOD:
        return is_condition(finding) ? RODT_MESSAGE_AIR_SPOKEN_GOOD_IF : RODT_MESSAGE_AIR_SPOKEN_GOOD;
    case RODT_AIR_RESULT_DEFECTIVE:
        return has_bound(finding->row) ? RODT_MESSAGE_AIR_SPOKEN_DEFECTIVE : RODT_MESSAGE_AIR_SPOKEN_DEFECTIVE_RULE;
    case RODT_AIR_RESULT_NOTED: return RODT_MESSAGE_AIR_SPOKEN_NOTED;
    case RODT_AIR_RESULT_UNDETERMINED: return RODT_MESSAGE_AIR_SPOKEN_UNDETERMINED;
    case RODT_AIR_RESULT_NOT_DONE: break;
    }
    return RODT_MESSAGE_AIR_SPOKEN_NOT_DONE;
}

/* A figure of the law that was not read in its source is never said as law. */
static void start(rodt_message *out, const rodt_air_finding *finding)
{
    const rodt_air_limit *row = finding->row;
    rodt_message_code code = code_of_spoken(finding);
    if (row == NULL || row == finding->own_row || row->evidence == RODT_EVIDENCE_CHECKED) {
        rodti_message_start(out, code);
        return;
    }
    rodti_message_start(out, row->measure == RODT_AIR_MEASURE_YES_NO ? RODT_MESSAGE_AIR_SPOKEN_RULE_UNCONFIRMED
                                                                     : RODT_MESSAGE_AIR_SPOKEN_UNCONFIRMED);
    rodti_message_clause(out, "spoken", code);
    rodti_message_clause(out, "evidence", rodti_evidence_code((rodt_evidence)row->evidence));
}

rodt_status rodt_air_finding_spoken_message(const rodt_air_finding *finding, rodt_message *out)
{
    rodt_message title;
    if (finding == NULL || out == NULL || !rodti_air_can_be_said(finding))
        return RODT_E_ARGUMENT;
    start(out, finding);
    if (finding->result == RODT_AIR_RESULT_NOT_DONE) {
        rodt_status status = rodt_air_check_message((rodt_air_check)finding->reading.check, &title);
        if (NEVER(status != RODT_OK)) /* what can be said has a check */
            return status;
        rodti_message_clause(out, "title", (rodt_message_code)title.code);
        return RODT_OK;
    }
    rodti_air_add_found(out, finding);
    if (finding->result == RODT_AIR_RESULT_UNDETERMINED) {
        rodti_air_add_missing(out, finding);
    } else if (finding->result == RODT_AIR_RESULT_NOTED) {
        rodti_air_add_edge(out, "edge", finding);
    } else if (finding->result == RODT_AIR_RESULT_GOOD) {
        rodti_message_clause(out, "would_be", code_of_edge(finding->row));
        rodti_message_clause(out, "is", code_of_defect(air_is_major(finding->row), air_is_minor(finding->row)));
        rodti_air_add_when(out, finding->row, finding);
    } else {
        rodti_message_clause(out, "is", code_of_defect(finding->major, finding->minor));
        rodti_air_add_required(out, finding);
    }
    return RODT_OK;
}

rodt_status rodt_air_finding_spoken_format(const rodt_air_finding *finding, char *text, size_t size, size_t *needed)
{
    rodt_message message;
    return rodti_message_say(rodt_air_finding_spoken_message(finding, &message), &message, text, size, needed);
}
