/* SPDX-License-Identifier: Apache-2.0 */
/* A finding as the person who measured says it aloud: readings, stroke and limit, and why that is good or is not. */
#include "message/message.h"
#include "rules/tables.h"
#include "rodtravel/stroke.h"

static void add_length(rodt_message *out, const rodt_finding *finding, const char *name, rodt_length length)
{
    rodti_message_length(out, name, length, finding->unit);
}

/* The rank of a brake over its limit, by the law's own text; a carrier's stricter limit has none. */
static void add_rank(rodt_message *out, const rodt_finding *finding)
{
    const rodt_rules *law = rodt_rules_law(finding->rules);
    bool ranked = rodt_length_compare(finding->limit, finding->law_limit) == 0 &&
                  rodt_rules_major_source(law != NULL ? law : finding->rules) != NULL;
    bool major = rodt_finding_has(finding, RODT_REASON_MAJOR_DEFECT);
    rodti_message_clause(out, "would_be",
                         ranked ? RODT_MESSAGE_AIR_SPOKEN_BE_MAJOR : RODT_MESSAGE_AIR_SPOKEN_BE_DEFECTIVE);
    rodti_message_clause(out, "is", major ? RODT_MESSAGE_AIR_SPOKEN_IS_MAJOR : RODT_MESSAGE_AIR_SPOKEN_IS_DEFECTIVE);
}

/* What a reading lacks is said by the reason; so this is "not measured" also for what cannot be read. */
static void add_figures(rodt_message *out, const rodt_finding *finding)
{
    rodt_length excess;
    bool fits = rodt_length_subtract(finding->applied_stroke, finding->limit, &excess) == RODT_OK;
    add_length(out, finding, "released", finding->released);
    add_length(out, finding, "applied", finding->applied);
    add_length(out, finding, "stroke", finding->applied_stroke);
    rodti_message_limit(out, "limit", finding->limit, finding->unit);
    add_length(out, finding, "excess", fits ? excess : (rodt_length){0, 0});
}

/* The reasons that leave a finding open, the first to be put right first. */
static rodt_reason open_reason(const rodt_finding *finding)
{
    static const rodt_reason first[] = {
        RODT_REASON_CHAMBER_MISSING,    RODT_REASON_CHAMBER_UNREADABLE,   RODT_REASON_RELEASED_MISSING,
        RODT_REASON_APPLIED_MISSING,    RODT_REASON_RELEASED_UNREADABLE,  RODT_REASON_APPLIED_UNREADABLE,
        RODT_REASON_READINGS_SWAPPED,   RODT_REASON_BEYOND_RATED_STROKE,  RODT_REASON_LOST_BLANK,
        RODT_REASON_ENGINE_RUNNING,     RODT_REASON_SPRING_BRAKE_APPLIED, RODT_REASON_PRESSURE_LOW,
        RODT_REASON_PRESSURE_HIGH,      RODT_REASON_RULES_NOT_IN_FORCE,   RODT_REASON_NO_PUBLISHED_LIMIT,
        RODT_REASON_DATE_AMBIGUOUS,     RODT_REASON_DATE_UNREADABLE,      RODT_REASON_OTHER_UNREADABLE};
    for (size_t i = 0; i < COUNT_OF(first); i++) {
        if (rodt_finding_has(finding, first[i]))
            return first[i];
    }
    for (int reason = 0; reason < RODT_REASON_END; reason++) {
        if (rodt_finding_has(finding, (rodt_reason)reason))
            return (rodt_reason)reason;
    }
    return RODT_REASON_END;
}

/* A sentence that ends with a reason, in whose clause the same names can be. */
static rodt_status say_reason(const rodt_finding *finding, rodt_message_code code, rodt_reason named,
                              rodt_message *out)
{
    rodt_message reason;
    rodt_status status = rodt_finding_reason_message(finding, named, &reason);
    if (status != RODT_OK)
        return status;
    rodti_message_start(out, code);
    add_length(out, finding, "released", finding->released);
    add_length(out, finding, "applied", finding->applied);
    add_length(out, finding, "stroke", finding->applied_stroke);
    add_rank(out, finding);
    rodti_message_append(out, "reason", &reason);
    return RODT_OK;
}

static rodt_message_code code_of_spoken(const rodt_finding *finding)
{
    bool at_limit = finding->margin.num == 0;
    if (finding->verdict == RODT_VERDICT_INOPERATIVE)
        return RODT_MESSAGE_STROKE_SPOKEN_INOPERATIVE;
    if (finding->verdict == RODT_VERDICT_IN_ADJUSTMENT)
        return at_limit ? RODT_MESSAGE_STROKE_SPOKEN_GOOD_AT_LIMIT : RODT_MESSAGE_STROKE_SPOKEN_GOOD;
    return at_limit ? RODT_MESSAGE_STROKE_SPOKEN_OUT_AT_LIMIT : RODT_MESSAGE_STROKE_SPOKEN_OUT;
}

/* A stroke longer than the housing allows is out of adjustment by that alone. */
static bool is_limited(const rodt_finding *finding)
{
    return rodt_length_given(finding->limit) || finding->verdict == RODT_VERDICT_INOPERATIVE;
}

/* A limit of the law that was not read in its source is never said as law. A carrier's own has no evidence. */
static void start(rodt_message *out, const rodt_finding *finding)
{
    bool unconfirmed = finding->evidence != RODT_EVIDENCE_NONE &&
                       (rodt_finding_has(finding, RODT_REASON_LIMIT_UNCONFIRMED) ||
                        rodt_finding_has(finding, RODT_REASON_LIMIT_COMMON_PRACTICE));
    rodti_message_start(out, unconfirmed ? RODT_MESSAGE_STROKE_SPOKEN_UNCONFIRMED : code_of_spoken(finding));
    if (!unconfirmed)
        return;
    rodti_message_clause(out, "spoken", code_of_spoken(finding));
    rodti_message_clause(out, "evidence", rodti_evidence_code((rodt_evidence)finding->evidence));
}

rodt_status rodt_finding_spoken_message(const rodt_finding *finding, rodt_message *out)
{
    if (finding == NULL || out == NULL)
        return RODT_E_ARGUMENT;
    if (finding->verdict == RODT_VERDICT_UNDETERMINED)
        return say_reason(finding, RODT_MESSAGE_STROKE_SPOKEN_UNDETERMINED, open_reason(finding), out);
    if (!rodt_length_given(finding->applied_stroke) || finding->rules == NULL)
        return RODT_E_ARGUMENT;
    if (!is_limited(finding))
        return say_reason(finding, RODT_MESSAGE_STROKE_SPOKEN_OUT_NO_LIMIT, open_reason(finding), out);
    if (finding->verdict == RODT_VERDICT_IN_ADJUSTMENT && rodt_finding_has(finding, RODT_REASON_HARDLY_MOVED))
        return say_reason(finding, RODT_MESSAGE_STROKE_SPOKEN_HARDLY, RODT_REASON_HARDLY_MOVED, out);
    start(out, finding);
    bool passes = rodt_rules_at_limit_passes(finding->rules);
    rodti_message_clause(out, "edge",
                         passes ? RODT_MESSAGE_STROKE_SPOKEN_ABOVE : RODT_MESSAGE_STROKE_SPOKEN_AT_OR_ABOVE);
    add_rank(out, finding);
    add_figures(out, finding);
    return RODT_OK;
}

rodt_status rodt_finding_spoken_format(const rodt_finding *finding, char *text, size_t size, size_t *needed)
{
    rodt_message message;
    return rodti_message_say(rodt_finding_spoken_message(finding, &message), &message, text, size, needed);
}
