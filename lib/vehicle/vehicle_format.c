/* SPDX-License-Identifier: Apache-2.0 */
/* The vehicle in words: the count in one line, what does not match on an axle, what to do next, and the sources. */
#include "rodtravel/vehicle.h"

#include "core/exact.h"
#include "message/message.h"
#include "rules/tables.h"

/* --- Sources ------------------------------------------------------------------------------------------ */

static const rodt_source *source_of(vehicle_part part, RODT_ENUM32(rodt_evidence) *evidence)
{
    if (part >= VEHICLE_PARTS)
        return NULL;
    if (evidence != NULL)
        *evidence = rodti_table_vehicle[part].evidence;
    return rodti_table_vehicle[part].source;
}

/* The parts of the criterion come first, in the same order. */
_Static_assert((int)VEHICLE_STEERING == (int)RODT_COUNT_PART_STEERING,
               "a part of a vehicle for each part of the criterion");

const rodt_source *rodt_count_part_source(rodt_count_part part, RODT_ENUM32(rodt_evidence) *evidence)
{
    return (unsigned)part < RODT_COUNT_PART_END ? source_of((vehicle_part)part, evidence) : NULL;
}

const char *rodt_count_part_text(rodt_count_part part)
{
    return (unsigned)part < RODT_COUNT_PART_END ? rodti_table_vehicle[part].wording : "";
}

static vehicle_part part_of_axle(uint32_t bit)
{
    switch (bit) {
    case RODT_AXLE_MISMATCH_SIZE_DIFFERS:
    case RODT_AXLE_MISMATCH_SPRING_DIFFERS: return VEHICLE_AXLE_SIZE;
    case RODT_AXLE_MISMATCH_ARM_DIFFERS: return VEHICLE_AXLE_ARM;
    case RODT_AXLE_MISMATCH_STEERING_DEAD: return VEHICLE_STEERING;
    default: return VEHICLE_PARTS;
    }
}

const rodt_source *rodt_axle_mismatch_source(rodt_axle_mismatch mismatch, RODT_ENUM32(rodt_evidence) *evidence)
{
    return source_of(part_of_axle((uint32_t)mismatch), evidence);
}

const rodt_source *rodt_advice_source(rodt_advice advice, RODT_ENUM32(rodt_evidence) *evidence)
{
    bool cited = advice == RODT_ADVICE_FIND_FAULT || advice == RODT_ADVICE_FIND_ADJUSTER;
    return source_of(cited ? VEHICLE_ADJUSTER : VEHICLE_PARTS, evidence);
}

/* --- The count ---------------------------------------------------------------------------------------- */

static void add_percent(rodt_message *message, const char *name, rodt_ratio share)
{
    rodt_ratio percent = {0, 0};
    if (rodt_ratio_given(share))
        (void)rodti_exact_multiply(share, (rodt_ratio){100, 1}, &percent);
    rodti_message_number(message, name, percent, RODT_MESSAGE_VALUE_PERCENT);
}

static const rodt_message_code code_of_outcome[RODT_OUTCOME_END] = {
    [RODT_OUTCOME_UNDETERMINED] = RODT_MESSAGE_COUNT_BELOW,
    [RODT_OUTCOME_BELOW_CRITERION] = RODT_MESSAGE_COUNT_BELOW,
    [RODT_OUTCOME_AMBIGUOUS] = RODT_MESSAGE_COUNT_CHART,
    [RODT_OUTCOME_OUT_OF_SERVICE] = RODT_MESSAGE_COUNT_REACHED};

/* Unknown brakes can only add to what is counted; how far is what a person must know. */
static rodt_message_code code_of_open(const rodt_count *count)
{
    bool worst = count->outcome == RODT_OUTCOME_UNDETERMINED;
    if (rodt_ratio_given(count->known_share))
        return worst ? RODT_MESSAGE_COUNT_UNKNOWN_BOTH : RODT_MESSAGE_COUNT_UNKNOWN_KNOWN;
    return worst ? RODT_MESSAGE_COUNT_UNKNOWN_WORST : RODT_MESSAGE_COUNT_UNKNOWN;
}

rodt_status rodt_count_message(const rodt_count *count, rodt_message *out)
{
    if (count == NULL || out == NULL || count->outcome >= RODT_OUTCOME_END)
        return RODT_E_ARGUMENT;
    uint64_t open = (uint64_t)count->tally.unknown + count->unmeasured;
    rodti_message_start(out, open > 0 ? RODT_MESSAGE_COUNT_OPEN : RODT_MESSAGE_COUNT_ALL);
    if (!rodt_ratio_given(count->share)) {
        rodti_message_start(out, RODT_MESSAGE_COUNT_NONE);
        return RODT_OK;
    }
    rodti_message_clause(out, "outcome", code_of_outcome[count->outcome]);
    if (open > 0)
        rodti_message_clause(out, "open", code_of_open(count));
    rodti_message_number(out, "defective", EXACT(count->defective), RODT_MESSAGE_NONE);
    rodti_message_count(out, "brakes", count->brakes);
    add_percent(out, "share", count->share);
    add_percent(out, "criterion", count->criterion);
    rodti_message_count(out, "whole", count->whole_needed);
    rodti_message_count(out, "unknown", open);
    rodti_message_count(out, "known", count->brakes - open);
    add_percent(out, "known_share", count->known_share);
    add_percent(out, "worst_share", count->worst_share);
    return RODT_OK;
}

rodt_status rodt_count_format(const rodt_count *count, char *text, size_t size, size_t *needed)
{
    rodt_message message;
    return rodti_message_say(rodt_count_message(count, &message), &message, text, size, needed);
}

/* --- Axles -------------------------------------------------------------------------------------------- */

static rodt_message_code code_of_axle(const rodt_axle_finding *axle, uint32_t bit)
{
    switch (bit) {
    case RODT_AXLE_MISMATCH_SIZE_DIFFERS: return RODT_MESSAGE_AXLE_SIZE_DIFFERS;
    case RODT_AXLE_MISMATCH_SPRING_DIFFERS: return RODT_MESSAGE_AXLE_SPRING_DIFFERS;
    case RODT_AXLE_MISMATCH_FAMILY_DIFFERS: return RODT_MESSAGE_AXLE_FAMILY_DIFFERS;
    case RODT_AXLE_MISMATCH_CLASS_DIFFERS: return RODT_MESSAGE_AXLE_CLASS_DIFFERS;
    case RODT_AXLE_MISMATCH_ARM_DIFFERS: return RODT_MESSAGE_AXLE_ARM_DIFFERS;
    case RODT_AXLE_MISMATCH_STROKES_DIFFER: return RODT_MESSAGE_AXLE_STROKES_DIFFER;
    case RODT_AXLE_MISMATCH_TORQUE_DIFFERS: return RODT_MESSAGE_AXLE_TORQUE_DIFFERS;
    case RODT_AXLE_MISMATCH_END_MISSING:
        return axle->left == SIZE_MAX ? RODT_MESSAGE_AXLE_LEFT_MISSING : RODT_MESSAGE_AXLE_RIGHT_MISSING;
    case RODT_AXLE_MISMATCH_STEERING_DEAD: return RODT_MESSAGE_AXLE_STEERING_DEAD;
    default: return RODT_MESSAGE_NONE;
    }
}

rodt_status rodt_axle_mismatch_message(const rodt_axle_finding *axle, rodt_axle_mismatch mismatch, rodt_message *out)
{
    const uint32_t bit = (uint32_t)mismatch;
    RODT_ENUM32(rodt_evidence) evidence = RODT_EVIDENCE_NONE;
    const rodt_source *source = rodt_axle_mismatch_source(mismatch, &evidence);
    if (axle == NULL || out == NULL || (axle->mismatches & bit) == 0 || code_of_axle(axle, bit) == RODT_MESSAGE_NONE)
        return RODT_E_ARGUMENT;
    rodti_message_start(out, source == NULL                      ? RODT_MESSAGE_AXLE_SAID
                             : evidence == RODT_EVIDENCE_CHECKED ? RODT_MESSAGE_AXLE_CITED
                                                                 : RODT_MESSAGE_AXLE_CITED_UNCONFIRMED);
    rodti_message_clause(out, "said", code_of_axle(axle, bit));
    rodti_message_clause(out, "evidence", rodti_evidence_code(evidence));
    rodti_message_number(out, "axle", (rodt_ratio){axle->axle, 1}, RODT_MESSAGE_NONE);
    rodti_message_number(out, "difference", EXACT(axle->stroke_difference), RODT_MESSAGE_NONE);
    rodti_message_number(out, "left", axle->al_left, RODT_MESSAGE_NONE);
    rodti_message_number(out, "right", axle->al_right, RODT_MESSAGE_NONE);
    if (source != NULL) {
        rodti_message_text(out, "document", source->document);
        rodti_message_text(out, "section", source->section);
    }
    return RODT_OK;
}

rodt_status rodt_axle_mismatch_format(const rodt_axle_finding *axle, rodt_axle_mismatch mismatch, char *text,
                                      size_t size, size_t *needed)
{
    rodt_message message;
    return rodti_message_say(rodt_axle_mismatch_message(axle, mismatch, &message), &message, text, size, needed);
}

/* --- Advice ------------------------------------------------------------------------------------------- */

static rodt_message_code code_of_advice(rodt_advice advice)
{
    switch (advice) {
    case RODT_ADVICE_ADJUST: return RODT_MESSAGE_ADVICE_ADJUST;
    case RODT_ADVICE_FIND_FAULT: return RODT_MESSAGE_ADVICE_FIND_FAULT;
    case RODT_ADVICE_FIND_ADJUSTER: return RODT_MESSAGE_ADVICE_FIND_ADJUSTER;
    case RODT_ADVICE_REPAIR: return RODT_MESSAGE_ADVICE_REPAIR;
    case RODT_ADVICE_MEASURE: return RODT_MESSAGE_ADVICE_MEASURE;
    case RODT_ADVICE_LOOK: return RODT_MESSAGE_ADVICE_LOOK;
    case RODT_ADVICE_NONE: break;
    }
    return RODT_MESSAGE_NONE;
}

rodt_status rodt_advice_message(rodt_advice advice, rodt_message *out)
{
    return rodti_message_sentence(code_of_advice(advice), out);
}
