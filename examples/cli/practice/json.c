/* SPDX-License-Identifier: Apache-2.0 */
/* Sheet and key for programs: one object a vehicle. The sheet says no answer; its tapes are drawn, row by row. */
#include "practice/practice.h"
#include "ui/format.h"
#include "ui/json_writer.h"
#include "ui/wrap.h"

#include <inttypes.h>
#include <stdio.h>

static void put_head(json_writer *json, const practice *of, const char *kind)
{
    char seed[24];
    snprintf(seed, sizeof seed, "%" PRIu64, of->setting.seed);
    json_pair(json, "practice", kind);
    json_pair(json, "seed", seed);
    json_pair(json, "program", rodt_version());
    json_pair(json, "tables", rodt_tables_edition());
    json_pair(json, "rules", rodt_rules_id(of->setting.rules));
    json_date(json, "as_of", of->day);
    json_pair(json, "level", practice_level_name(of->setting.level));
    json_pair(json, "vehicle", practice_build_name(of->build));
    json_pair(json, "unit", of->setting.unit == RODT_UNIT_MM ? "mm" : "in");
}

static void put_tape(json_writer *json, const practice *of, const char *key, rodt_length at)
{
    char words[TAPE_TEXT_SIZE];
    practice_tape tape;
    practice_tape_draw(at, of->setting.unit, of->setting.ascii, false, &tape);
    practice_tape_describe(at, of->setting.unit, words);
    json_key(json, key);
    json_open(json, '{');
    json_key(json, "tape");
    json_open(json, '[');
    for (size_t i = 0; i < TAPE_ROWS; i++)
        json_text(json, tape.rows[i]);
    json_close(json, ']');
    json_pair(json, "words", words);
    json_close(json, '}');
}

static void put_seen(json_writer *json, const practice *of, size_t end)
{
    const practice_end *seen = &of->seen[end];
    const rodt_reading *reading = &of->judged.ends[end].reading;
    bool clamp = reading->chamber.family == RODT_FAMILY_CLAMP;
    char position[RODT_POSITION_TEXT_SIZE], words[PRACTICE_TEXT_SIZE];
    practice_format_position(of, end, position);
    json_pair(json, "position", position);
    json_pair(json, "housing", rodt_family_name(reading->chamber.family));
    json_pair(json, "stamp", seen->stamp);
    json_length(json, "rated_stroke", reading->chamber.rated_stroke);
    json_pair(json, "ports", !clamp ? NULL : seen->port == RODT_PORT_SQUARE ? "square" : "round");
    json_pair(json, "tag", !clamp ? NULL : seen->tag == RODT_TAG_TRAPEZOID ? "trapezoid" : "none");
    json_pair(json, "said", seen->hearsay ? "long" : NULL);
    practice_describe_marks(of, end, words);
    json_pair(json, "marks", words);
}

static void put_conditions(json_writer *json, const practice *of, size_t end)
{
    const rodt_reading *reading = &of->judged.ends[end].reading;
    char words[PRACTICE_TEXT_SIZE];
    json_pressure(json, "psi", reading->pressure);
    json_pressure(json, "psi_after", reading->pressure_after);
    json_pair(json, "engine", reading->engine_running == RODT_RECORDED_YES ? "on" : "off");
    json_pair(json, "spring_brake", reading->spring_brake_applied == RODT_RECORDED_YES ? "on" : "released");
    json_pair(json, "drum", reading->drum == RODT_DRUM_HOT ? "hot" : "cold");
    json_length(json, "hand_pull", of->seen[end].hand_pull);
    practice_describe_conditions(of, end, words);
    json_pair(json, "conditions", words);
}

void practice_json_sheet(json_writer *json, const practice *of)
{
    json_open(json, '{');
    put_head(json, of, "sheet");
    json_pair(json, "caution", PRACTICE_CAUTION);
    json_key(json, "wheel_ends");
    json_open(json, '[');
    for (size_t i = 0; i < of->judged.count; i++) {
        json_open(json, '{');
        put_seen(json, of, i);
        put_conditions(json, of, i);
        put_tape(json, of, "released", of->judged.ends[i].reading.released);
        put_tape(json, of, "applied", of->judged.ends[i].reading.applied);
        json_close(json, '}');
    }
    json_close(json, ']');
    json_close(json, '}');
}

/* --- Key ---------------------------------------------------------------------------------------------- */

static void put_line(void *context, const char *label, const char *text)
{
    (void)label;
    json_text(context, text);
}

static void put_reasons(json_writer *json, const rodt_finding *finding)
{
    json_reasons(json, finding->reasons);
    json_pair(json, "deciding", rodt_reason_name(practice_deciding_reason(finding)));
}

static void put_truth(json_writer *json, const practice *of, size_t end)
{
    const rodt_finding *finding = &of->judged.findings[end];
    char position[RODT_POSITION_TEXT_SIZE], chamber[RODT_CHAMBER_TEXT_SIZE];
    practice_format_position(of, end, position);
    json_pair(json, "position", position);
    bool known = rodt_chamber_format(&finding->chamber, chamber, sizeof chamber, NULL) == RODT_OK;
    json_pair(json, "chamber", known ? chamber : "-");
    json_length(json, "released", finding->released);
    json_length(json, "applied", finding->applied);
    json_length(json, "applied_stroke", finding->applied_stroke);
    json_length(json, "limit", finding->limit);
    json_length(json, "margin", finding->margin);
    json_pair(json, "verdict", rodt_verdict_name(finding->verdict));
    put_reasons(json, finding);
    json_key(json, "why");
    json_open(json, '[');
    practice_each_reason(of, end, put_line, json);
    practice_each_lesson(of, end, put_line, json);
    json_close(json, ']');
    json_source(json, "source", finding->source);
    json_pair(json, "evidence", finding->source != NULL ? rodt_evidence_name(finding->evidence) : NULL);
}

static void put_count(json_writer *json, const practice *of)
{
    const rodt_count *count = &of->judged.vehicle.count;
    char brakes[24], words[PRACTICE_TEXT_SIZE];
    paint_kind paint;
    snprintf(brakes, sizeof brakes, "%lu", (unsigned long)count->brakes);
    json_pair(json, "brakes", brakes);
    json_length(json, "defective", (rodt_length){count->defective.num, count->defective.den});
    json_length(json, "share", (rodt_length){count->share.num, count->share.den});
    json_pair(json, "outcome", rodt_outcome_name(count->outcome));
    practice_format_count(of, words);
    json_pair(json, "count", words);
    json_pair(json, "in_all", vehicle_headline(&of->judged, &paint));
}

void practice_json_key(json_writer *json, const practice *of)
{
    char words[PRACTICE_TEXT_SIZE];
    json_open(json, '{');
    put_head(json, of, "key");
    practice_format_command(of, words);
    json_pair(json, "again", words);
    json_key(json, "wheel_ends");
    json_open(json, '[');
    for (size_t i = 0; i < of->judged.count; i++) {
        json_open(json, '{');
        put_truth(json, of, i);
        json_close(json, '}');
    }
    json_close(json, ']');
    put_count(json, of);
    json_key(json, "axles");
    json_open(json, '[');
    vehicle_each_axle(&of->judged, put_line, json);
    json_close(json, ']');
    json_close(json, '}');
}
