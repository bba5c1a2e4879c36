/* SPDX-License-Identifier: Apache-2.0 */
/* The judgement of a vehicle as a report: the criterion, every wheel end, every axle. */
#include "core/exact.h"
#include "describe/json.h"
#include "vehicle/words.h"

typedef struct judged_vehicle {
    const rodt_vehicle_finding *vehicle;
    const rodt_wheel_end *ends;
    size_t count;
    const rodt_finding *findings;
    const rodt_advice *advice; /* NULL = none */
    const rodt_error *errors;  /* NULL = none */
} judged_vehicle;

static void put_percent(json_buffer *json, const char *key, rodt_ratio share)
{
    rodt_ratio value;
    if (rodt_ratio_multiply(share, (rodt_ratio){100, 1}, &value) == RODT_OK)
        rodti_json_ratio(json, key, value);
    else
        rodti_json_pair(json, key, NULL);
}

static void put_criterion(json_buffer *json, const rodt_vehicle_finding *vehicle)
{
    const rodt_count *count = &vehicle->count;
    rodt_message message;
    rodti_json_pair(json, "outcome", rodt_outcome_name((rodt_outcome)count->outcome));
    rodti_json_sentence(json, "sentence", rodt_count_message(count, &message), &message);
    rodti_json_number(json, "brakes", count->brakes);
    rodti_json_number(json, "not_given", count->unmeasured);
    rodti_json_number(json, "in_adjustment", vehicle->in_adjustment);
    rodti_json_number(json, "out_of_adjustment", vehicle->out_of_adjustment);
    rodti_json_number(json, "inoperative", vehicle->inoperative);
    rodti_json_number(json, "undetermined", vehicle->undetermined);
    rodti_json_number(json, "full_defects", count->tally.full);
    rodti_json_number(json, "half_defects", count->tally.half);
    rodti_json_number(json, "unknown_defects", count->tally.unknown);
    rodti_json_ratio(json, "defective", count->defective);
    put_percent(json, "percent", count->share);
    put_percent(json, "percent_at_worst", count->worst_share);
    put_percent(json, "percent_of_known", count->known_share);
    put_percent(json, "criterion_percent", count->criterion);
    rodti_json_number(json, "whole_needed", count->whole_needed);
    rodti_json_number(json, "mismatched_axles", vehicle->mismatched_axles);
    rodti_json_number(json, "mixed_days", vehicle->mixed_days);
}

/* --- Wheel ends -------------------------------------------------------------------------------------- */

/* The first text of the wheel end that could not be read: what is wrong with it, and its field. One that is absent is
 * told by its reason. */
static void put_unreadable(json_buffer *json, const judged_vehicle *of, size_t i)
{
    const rodt_error *error = of->errors != NULL ? &of->errors[i] : NULL;
    if (error != NULL && (error->status == RODT_OK || error->status == RODT_E_EMPTY))
        error = NULL;
    rodt_message message;
    if (error != NULL && json->catalogue != NULL) {
        rodt_status made = rodt_error_message(error, &message);
        json->broken |= made != RODT_OK;
        rodti_json_sentence(json, "unreadable", made, &message);
    } else
        rodti_json_pair(json, "unreadable", error != NULL ? error->text : NULL);
    rodti_json_pair(json, "unreadable_field", error != NULL && error->field[0] != '\0' ? error->field : NULL);
}

static void put_what_to_do(json_buffer *json, const judged_vehicle *of, size_t i)
{
    const rodt_wheel_end *end = &of->ends[i];
    bool recorded = end->adjuster != RODT_ADJUSTER_NOT_RECORDED;
    const rodt_advice advice = of->advice != NULL ? of->advice[i] : RODT_ADVICE_NONE;
    bool advised = rodt_advice_text(advice)[0] != '\0';
    rodt_message message;
    rodti_json_length(json, "arm_length", end->arm_length);
    rodti_json_pair(json, "adjuster", recorded ? rodt_adjuster_name((rodt_adjuster)end->adjuster) : NULL);
    rodti_json_sentence(json, "advice", rodt_advice_message(advice, &message), &message);
    rodti_json_pair(json, "advice_code", advised ? rodt_advice_name(advice) : NULL);
}

static void put_end(json_buffer *json, const judged_vehicle *of, size_t i)
{
    const rodt_finding *finding = &of->findings[i];
    char position[RODT_POSITION_TEXT_SIZE];
    bool placed = rodt_position_format(of->ends[i].position, position, sizeof position, NULL) == RODT_OK;
    rodti_json_open(json, '{');
    rodti_json_pair(json, "position", placed ? position : NULL);
    rodti_json_stroke(json, finding);
    rodti_json_pair(json, "defect", rodt_defect_name(rodt_finding_defect(finding)));
    rodti_json_reasons(json, finding);
    rodti_json_proof(json, finding);
    put_unreadable(json, of, i);
    put_what_to_do(json, of, i);
    rodti_json_grounds(json, finding);
    rodti_json_close(json, '}');
}

/* --- Axles ------------------------------------------------------------------------------------------- */

static void put_mismatch(json_buffer *json, const rodt_axle_finding *axle, const rodt_enumerator *row)
{
    const uint32_t bit = (uint32_t)row->number;
    rodt_message message;
    RODT_ENUM32(rodt_evidence) evidence = RODT_EVIDENCE_NONE;
    if (rodt_axle_mismatch_message(axle, bit, &message) != RODT_OK)
        return;
    const rodt_source *source = rodt_axle_mismatch_source(bit, &evidence);
    rodti_json_open(json, '{');
    rodti_json_pair(json, "code", row->word);
    rodti_json_sentence(json, "sentence", RODT_OK, &message);
    rodti_json_boolean(json, "law", (bit & RODT_AXLE_MISMATCH_LAW) != 0);
    rodti_json_read_in(json, source, evidence);
    rodti_json_close(json, '}');
}

static void put_axle(json_buffer *json, const rodt_axle_finding *axle)
{
    const rodt_enumerator *row;
    rodti_json_open(json, '{');
    rodti_json_number(json, "axle", axle->axle);
    rodti_json_length(json, "stroke_difference", axle->stroke_difference);
    rodti_json_ratio(json, "al_left", axle->al_left);
    rodti_json_ratio(json, "al_right", axle->al_right);
    rodti_json_key(json, "mismatches");
    rodti_json_open(json, '[');
    for (size_t i = 0; (row = rodt_enumerator_at(&rodti_words_axle_mismatch, i)) != NULL; i++)
        put_mismatch(json, axle, row);
    rodti_json_close(json, ']');
    rodti_json_close(json, '}');
}

/* --- The whole --------------------------------------------------------------------------------------- */

static void put_criterion_sources(json_buffer *json)
{
    rodti_json_key(json, "criterion_sources");
    rodti_json_open(json, '[');
    for (int i = 0; i < RODT_COUNT_PART_END; i++) {
        RODT_ENUM32(rodt_evidence) evidence = RODT_EVIDENCE_NONE;
        const rodt_source *source = rodt_count_part_source((rodt_count_part)i, &evidence);
        rodti_json_open(json, '{');
        rodti_json_pair(json, "words", rodt_count_part_text((rodt_count_part)i));
        rodti_json_read_in(json, source, evidence);
        rodti_json_close(json, '}');
    }
    rodti_json_close(json, ']');
}

static void make_vehicle(json_buffer *json, const void *context)
{
    const judged_vehicle *of = context;
    const rodt_rules *rules = of->findings[0].rules;
    rodti_json_open(json, '{');
    put_criterion(json, of->vehicle);
    rodti_json_rules(json, rules, rodt_rules_law(rules));
    rodti_json_key(json, "wheel_ends");
    rodti_json_open(json, '[');
    for (size_t i = 0; i < of->count; i++)
        put_end(json, of, i);
    rodti_json_close(json, ']');
    rodti_json_key(json, "axles");
    rodti_json_open(json, '[');
    for (size_t i = 0; i < of->vehicle->axle_count; i++)
        put_axle(json, &of->vehicle->axles[i]);
    rodti_json_close(json, ']');
    put_criterion_sources(json);
    rodti_json_units(json, true, true);
    rodti_json_close(json, '}');
}

rodt_status rodt_vehicle_json_format(const rodt_vehicle_finding *vehicle, const rodt_wheel_end *ends, size_t count,
                                     const rodt_finding *findings, const rodt_advice *advice, const rodt_error *errors,
                                     const rodt_catalogue *catalogue, uint32_t options, char *text, size_t size,
                                     size_t *needed)
{
    const judged_vehicle of = {vehicle, ends, count, findings, advice, errors};
    if (vehicle == NULL || ends == NULL || count == 0 || findings == NULL || vehicle->axle_count > RODT_AXLES_MAX)
        return RODT_E_ARGUMENT;
    for (size_t i = 0; i < count; i++)
        if (findings[i].rules == NULL || findings[i].rules != findings[0].rules)
            return RODT_E_ARGUMENT;
    return rodti_json_format(make_vehicle, &of, catalogue, options, text, size, needed);
}
