/* SPDX-License-Identifier: Apache-2.0 */
/* The judgement of a vehicle as one JSON object. Exact numbers are texts, counts are numbers. */
#include "vehicle/vehicle.h"
#include "ui/format.h"
#include "ui/json_writer.h"

#include <stdio.h>

static void put_percent(json_writer *json, const char *key, rodt_ratio share)
{
    rodt_ratio value;
    bool is_given = rodt_ratio_multiply(share, (rodt_ratio){100, 1}, &value) == RODT_OK;
    json_ratio(json, key, is_given ? value : (rodt_ratio){0, 0});
}

static void put_evidence(json_writer *json, const rodt_source *source, rodt_evidence evidence)
{
    json_source(json, "source", source);
    json_pair(json, "evidence", source != NULL ? rodt_evidence_name(evidence) : NULL);
}

static void put_criterion(json_writer *json, const rodt_vehicle_finding *vehicle)
{
    const rodt_count *count = &vehicle->count;
    char sentence[RODT_SENTENCE_SIZE];
    json_pair(json, "outcome", rodt_outcome_name(count->outcome));
    bool said = rodt_count_format(count, sentence, sizeof sentence, NULL) == RODT_OK;
    json_pair(json, "sentence", said ? sentence : NULL);
    json_number(json, "brakes", count->brakes);
    json_number(json, "not_given", count->unmeasured);
    json_number(json, "in_adjustment", vehicle->in_adjustment);
    json_number(json, "out_of_adjustment", vehicle->out_of_adjustment);
    json_number(json, "inoperative", vehicle->inoperative);
    json_number(json, "undetermined", vehicle->undetermined);
    json_number(json, "full_defects", count->tally.full);
    json_number(json, "half_defects", count->tally.half);
    json_number(json, "unknown_defects", count->tally.unknown);
    json_ratio(json, "defective", count->defective);
    put_percent(json, "percent", count->share);
    put_percent(json, "percent_at_worst", count->worst_share);
    put_percent(json, "percent_of_known", count->known_share);
    put_percent(json, "criterion_percent", count->criterion);
    json_number(json, "whole_needed", count->whole_needed);
    json_number(json, "mismatched_axles", vehicle->mismatched_axles);
    json_number(json, "mixed_days", vehicle->mixed_days);
}

static void put_end(json_writer *json, const vehicle_record *record, size_t i)
{
    const rodt_wheel_end *end = &record->ends[i];
    const rodt_finding *finding = &record->findings[i];
    char position[RODT_POSITION_TEXT_SIZE] = "", chamber[RODT_CHAMBER_TEXT_SIZE];
    const char *advice = rodt_advice_text(record->advice[i]);
    (void)rodt_position_format(end->position, position, sizeof position, NULL);
    json_open(json, '{');
    json_pair(json, "position", position);
    bool known = rodt_chamber_format(&finding->chamber, chamber, sizeof chamber, NULL) == RODT_OK;
    json_pair(json, "chamber", known ? chamber : NULL);
    json_length(json, "released", finding->released);
    json_length(json, "applied", finding->applied);
    json_length(json, "applied_stroke", finding->applied_stroke);
    json_length(json, "limit", finding->limit);
    json_length(json, "margin", finding->margin);
    json_pair(json, "verdict", rodt_verdict_name(finding->verdict));
    json_pair(json, "defect", rodt_defect_name(rodt_finding_defect(finding)));
    json_reasons(json, finding->reasons);
    json_pair(json, "unreadable", record->errors[i].status != RODT_OK ? record->errors[i].text : NULL);
    json_length(json, "arm_length", end->arm_length);
    json_pair(json, "adjuster", end->adjuster != RODT_ADJUSTER_NOT_RECORDED ? rodt_adjuster_name(end->adjuster) : NULL);
    json_pair(json, "advice", advice[0] != '\0' ? advice : NULL);
    json_date(json, "as_of", finding->day);
    put_evidence(json, finding->source, finding->evidence);
    json_source(json, "law_source", finding->law_source);
    json_pair(json, "law_evidence", finding->law_source != NULL ? rodt_evidence_name(finding->law_evidence) : NULL);
    json_close(json, '}');
}

static void put_mismatch(json_writer *json, const rodt_axle_finding *axle, uint32_t bit)
{
    char sentence[RODT_SENTENCE_SIZE];
    RODT_ENUM32(rodt_evidence) evidence = RODT_EVIDENCE_NONE;
    const rodt_source *source = rodt_axle_source(bit, &evidence);
    if (rodt_axle_format(axle, bit, sentence, sizeof sentence, NULL) != RODT_OK)
        return;
    json_open(json, '{');
    json_pair(json, "code", rodt_axle_mismatch_name((rodt_axle_mismatch)bit));
    json_pair(json, "sentence", sentence);
    json_key(json, "law");
    json_bool(json, (bit & RODT_AXLE_MISMATCH_LAW) != 0);
    put_evidence(json, source, evidence);
    json_close(json, '}');
}

static void put_axle(json_writer *json, const rodt_axle_finding *axle)
{
    json_open(json, '{');
    json_number(json, "axle", (uint64_t)axle->axle);
    json_length(json, "stroke_difference", axle->stroke_difference);
    json_ratio(json, "al_left", axle->al_left);
    json_ratio(json, "al_right", axle->al_right);
    json_key(json, "mismatches");
    json_open(json, '[');
    for (uint32_t bit = 1; bit <= RODT_AXLE_MISMATCH_STEERING_DEAD; bit <<= 1)
        put_mismatch(json, axle, bit);
    json_close(json, ']');
    json_close(json, '}');
}

static void put_sources(json_writer *json)
{
    json_key(json, "criterion_sources");
    json_open(json, '[');
    for (int i = 0; i < RODT_COUNT_PART_END; i++) {
        const rodt_count_part part = (rodt_count_part)i;
        RODT_ENUM32(rodt_evidence) evidence = RODT_EVIDENCE_NONE;
        const rodt_source *source = rodt_count_part_source(part, &evidence);
        json_open(json, '{');
        json_pair(json, "words", rodt_count_part_text(part));
        put_evidence(json, source, evidence);
        json_close(json, '}');
    }
    json_close(json, ']');
}

void vehicle_put_json(json_writer *json, const vehicle_record *record)
{
    const rodt_rules *rules = record->findings[0].rules;
    const rodt_rules *law = rodt_rules_law(rules);
    json_open(json, '{');
    put_criterion(json, &record->vehicle);
    json_pair(json, "rules", rodt_rules_id(law != NULL ? law : rules));
    json_pair(json, "own_limits", law != NULL ? rodt_rules_id(rules) : NULL);
    json_key(json, "wheel_ends");
    json_open(json, '[');
    for (size_t i = 0; i < record->count; i++)
        put_end(json, record, i);
    json_close(json, ']');
    json_key(json, "axles");
    json_open(json, '[');
    for (size_t i = 0; i < record->vehicle.axle_count; i++)
        put_axle(json, &record->vehicle.axles[i]);
    json_close(json, ']');
    put_sources(json);
    json_close(json, '}');
}

void vehicle_write_json(const vehicle_record *record)
{
    json_writer json = {.to = stdout, .first = true};
    vehicle_put_json(&json, record);
    putchar('\n');
}
