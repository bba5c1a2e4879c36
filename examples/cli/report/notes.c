/* SPDX-License-Identifier: Apache-2.0 */
/* What a report says beyond the judgement of the vehicle, whatever form it has. */
#include "record/record.h"
#include "ui/format.h"

#include <stdio.h>
#include <string.h>

const char *report_head_title(head_key key)
{
    static const char *const titles[HEAD_KEYS] = {[HEAD_UNIT] = "Unit",           [HEAD_DATE] = "Date",
                                                  [HEAD_INSPECTOR] = "Inspector", [HEAD_PLACE] = "Place",
                                                  [HEAD_ODOMETER] = "Odometer",   [HEAD_RULES] = "Rule set",
                                                  [HEAD_AIR_RULES] = "Air checks by", [HEAD_BUILT] = "Built",
                                                  [HEAD_REMARKS] = "Remarks"};
    return titles[key];
}

static void say_end(const inspection *of, size_t i, vehicle_line line, void *context)
{
    const vehicle_record *vehicle = &of->vehicle;
    const rodt_finding *finding = &vehicle->findings[i];
    char position[RODT_POSITION_TEXT_SIZE] = "-", words[RODT_SENTENCE_SIZE];
    char text[RODT_SENTENCE_SIZE + 40];
    if (finding->verdict != RODT_OUT_OF_ADJUSTMENT && finding->verdict != RODT_INOPERATIVE)
        return;
    (void)rodt_position_format(vehicle->ends[i].position, position, sizeof position);
    if (rodt_finding_format(finding, words, sizeof words) != RODT_OK)
        return;
    snprintf(text, sizeof text, "%s%s", words, finding->verdict == RODT_INOPERATIVE ? "; the rod did not move" : "");
    line(context, position, text);
}

static void say_axle(const rodt_axle_finding *axle, vehicle_line line, void *context)
{
    char sentence[RODT_SENTENCE_SIZE];
    for (uint32_t bit = 1; bit <= RODT_AXLE_STEERING_DEAD; bit <<= 1) {
        if ((bit & RODT_AXLE_LAW) != 0 && rodt_axle_format(axle, bit, sentence, sizeof sentence) == RODT_OK)
            line(context, "", sentence);
    }
}

void report_each_defect(const inspection *of, vehicle_line line, void *context)
{
    char sentence[600];
    for (size_t i = 0; i < of->vehicle.count; i++)
        say_end(of, i, line, context);
    for (size_t i = 0; i < of->vehicle.vehicle.axle_count; i++)
        say_axle(&of->vehicle.vehicle.axles[i], line, context);
    for (size_t i = 0; i < of->record.check_count; i++) {
        if (of->air[i].result == RODT_AIR_DEFECTIVE &&
            rodt_air_finding_format(&of->air[i], sentence, sizeof sentence) == RODT_OK)
            line(context, of->air[i].major ? "air, major defect" : "air", sentence);
    }
}

bool report_air_defective(const inspection *of)
{
    for (size_t i = 0; i < of->record.check_count; i++) {
        if (of->air[i].result == RODT_AIR_DEFECTIVE)
            return true;
    }
    return false;
}

const char *report_warning(const inspection *of)
{
    const char *strokes = vehicle_warning(&of->vehicle.vehicle);
    if (strokes != NULL || !report_air_defective(of))
        return strokes;
    return "Do not drive it: report it and have it repaired. Good strokes do not make up for a defective air system.";
}

void report_each_air_source(const inspection *of, vehicle_line line, void *context)
{
    for (size_t i = 0; i < of->record.check_count; i++) {
        const rodt_air_limit *row = of->air[i].row;
        char words[RODT_SOURCE_TEXT_SIZE], text[RODT_SOURCE_TEXT_SIZE + 80];
        bool known = row == NULL;
        for (size_t k = 0; k < i && !known; k++)
            known = of->air[k].row != NULL && of->air[k].row->source == row->source &&
                    of->air[k].row->evidence == row->evidence;
        if (known)
            continue;
        snprintf(text, sizeof text, "%s (%s)", format_source(row->source, words), rodt_evidence_text(row->evidence));
        line(context, rodt_check_title(of->air[i].reading.check), text);
    }
}

static const char *step_of(const inspection_record *record, const char *name)
{
    for (size_t i = 0; i < record->step_count; i++) {
        if (strcmp(record->steps[i][STEP_NAME].text, name) == 0)
            return record->steps[i][STEP_ANSWER].text;
    }
    return "";
}

const char *report_cautions_note(const inspection_record *record)
{
    return strcmp(step_of(record, STEP_CAUTIONS), STEP_BY_OPTION) == 0
               ? "The cautions were confirmed by an option of the command, not by a person." : NULL;
}

bool report_limits_note(const inspection *of, char note[REPORT_NOTE_SIZE])
{
    const char *own = step_of(&of->record, STEP_LIMITS);
    if (own[0] == '\0' || of->setting.own != NULL)
        return false;
    snprintf(note, REPORT_NOTE_SIZE, "The walk-round was judged by stricter limits of the carrier's own as well "
             "(%.400s); this report is without them.", own);
    return true;
}
