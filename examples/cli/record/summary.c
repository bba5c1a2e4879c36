/* SPDX-License-Identifier: Apache-2.0 */
/* Sentences on an inspection that a walk-round and a report share. */
#include "record/record.h"
#include "ui/exit_status.h"

#include <stdio.h>
#include <string.h>

static void list_end(const inspection *of, size_t i, vehicle_line line, void *context)
{
    const vehicle_record *vehicle = &of->vehicle;
    const rodt_finding *finding = &vehicle->findings[i];
    char position[RODT_POSITION_TEXT_SIZE] = "-", words[RODT_SENTENCE_SIZE];
    char text[RODT_SENTENCE_SIZE + 40];
    if (finding->verdict != RODT_VERDICT_OUT_OF_ADJUSTMENT && finding->verdict != RODT_VERDICT_INOPERATIVE)
        return;
    (void)rodt_position_format(vehicle->ends[i].position, position, sizeof position, NULL);
    if (rodt_finding_format(finding, words, sizeof words, NULL) != RODT_OK)
        return;
    snprintf(text, sizeof text, "%s%s", words,
             finding->verdict == RODT_VERDICT_INOPERATIVE ? "; the rod did not move" : "");
    line(context, position, text);
}

static void list_axle(const rodt_axle_finding *axle, vehicle_line line, void *context)
{
    char sentence[RODT_SENTENCE_SIZE];
    for (uint32_t bit = 1; bit <= RODT_AXLE_MISMATCH_STEERING_DEAD; bit <<= 1) {
        if ((bit & RODT_AXLE_MISMATCH_LAW) != 0 &&
            rodt_axle_format(axle, bit, sentence, sizeof sentence, NULL) == RODT_OK)
            line(context, "", sentence);
    }
}

void inspection_each_defect(const inspection *of, vehicle_line line, void *context)
{
    char sentence[600];
    for (size_t i = 0; i < of->vehicle.count; i++)
        list_end(of, i, line, context);
    for (size_t i = 0; i < of->vehicle.vehicle.axle_count; i++)
        list_axle(&of->vehicle.vehicle.axles[i], line, context);
    for (size_t i = 0; i < of->record.check_count; i++) {
        if (of->air[i].result == RODT_AIR_RESULT_DEFECTIVE &&
            rodt_air_finding_format(&of->air[i], sentence, sizeof sentence, NULL) == RODT_OK)
            line(context, of->air[i].major ? "air, major defect" : "air", sentence);
    }
}

bool inspection_air_defective(const inspection *of)
{
    for (size_t i = 0; i < of->record.check_count; i++) {
        if (of->air[i].result == RODT_AIR_RESULT_DEFECTIVE)
            return true;
    }
    return false;
}

static bool is_air_open(const inspection *of)
{
    bool open = false;
    for (size_t i = 0; i < of->record.check_count; i++)
        open = open || of->air[i].result == RODT_AIR_RESULT_UNDETERMINED;
    return open;
}

const char *inspection_warning(const inspection *of)
{
    if (vehicle_status(&of->vehicle.vehicle) != STATUS_OUT && inspection_air_defective(of))
        return "Do not drive it: report it and have it repaired. Good strokes do not make up for a defective air "
               "system.";
    const char *strokes = vehicle_warning(&of->vehicle.vehicle);
    if (strokes != NULL)
        return strokes;
    return is_air_open(of) ? "Do not drive it until this is settled." : NULL;
}

const char *record_cautions_note(const inspection_record *record)
{
    const char *how = record_step(record, STEP_CAUTIONS);
    return how != NULL && strcmp(how, STEP_BY_OPTION) == 0
               ? "The cautions were confirmed by an option of the command, not by a person." : NULL;
}
