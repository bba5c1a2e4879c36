/* SPDX-License-Identifier: Apache-2.0 */
/* Sentences on an inspection that a walk-round and a report share. */
#include "record/record.h"
#include "ui/exit_status.h"
#include "ui/language.h"

#include <stdio.h>
#include <string.h>

static void list_end(const inspection *of, size_t i, vehicle_line line, void *context)
{
    const vehicle_record *vehicle = &of->vehicle;
    const rodt_finding *finding = &vehicle->findings[i];
    char position[RODT_POSITION_TEXT_SIZE] = "-", words[SAID_SIZE], text[SAID_SIZE + 60];
    rodt_message message;
    if (finding->verdict != RODT_VERDICT_OUT_OF_ADJUSTMENT && finding->verdict != RODT_VERDICT_INOPERATIVE)
        return;
    (void)rodt_position_format(vehicle->ends[i].position, position, sizeof position, NULL);
    if (!say_message(rodt_finding_message(finding, &message), &message, words, sizeof words))
        return;
    snprintf(text, sizeof text, finding->verdict == RODT_VERDICT_INOPERATIVE ? say("%s; the rod did not move") : "%s",
             words);
    line(context, position, text);
}

static void list_axle(const rodt_axle_finding *axle, vehicle_line line, void *context)
{
    char sentence[SAID_SIZE];
    rodt_message message;
    for (uint32_t bit = 1; bit <= RODT_AXLE_MISMATCH_STEERING_DEAD; bit <<= 1) {
        if ((bit & RODT_AXLE_MISMATCH_LAW) != 0 &&
            say_message(rodt_axle_mismatch_message(axle, bit, &message), &message, sentence, sizeof sentence))
            line(context, "", sentence);
    }
}

/* What a rule set says of a defect; with no rank it is not driven either. */
typedef enum air_rank { RANK_GOOD, RANK_MINOR, RANK_NONE, RANK_MAJOR } air_rank;

static air_rank rank_of(const rodt_air_finding *finding)
{
    if (finding->result != RODT_AIR_RESULT_DEFECTIVE)
        return RANK_GOOD;
    return finding->major ? RANK_MAJOR : finding->minor ? RANK_MINOR : RANK_NONE;
}

static void list_air(const inspection *of, air_rank rank, const char *label, vehicle_line line, void *context)
{
    char sentence[SAID_SIZE];
    rodt_message message;
    for (size_t i = 0; i < of->record.check_count; i++) {
        if (rank_of(&of->air[i]) == rank &&
            say_message(rodt_air_finding_message(&of->air[i], &message), &message, sentence, sizeof sentence))
            line(context, label, sentence);
    }
}

/* The worst first. */
void inspection_each_defect(const inspection *of, vehicle_line line, void *context)
{
    for (size_t i = 0; i < of->vehicle.count; i++)
        if (rodt_finding_has(&of->vehicle.findings[i], RODT_REASON_MAJOR_DEFECT))
            list_end(of, i, line, context);
    list_air(of, RANK_MAJOR, say("air, major defect"), line, context);
    for (size_t i = 0; i < of->vehicle.count; i++)
        if (!rodt_finding_has(&of->vehicle.findings[i], RODT_REASON_MAJOR_DEFECT))
            list_end(of, i, line, context);
    for (size_t i = 0; i < of->vehicle.vehicle.axle_count; i++)
        list_axle(&of->vehicle.vehicle.axles[i], line, context);
    list_air(of, RANK_NONE, say("air"), line, context);
    list_air(of, RANK_MINOR, say("air, minor defect"), line, context);
}

static air_rank worst_of(const inspection *of)
{
    air_rank worst = RANK_GOOD;
    for (size_t i = 0; i < of->record.check_count; i++)
        worst = rank_of(&of->air[i]) > worst ? rank_of(&of->air[i]) : worst;
    return worst;
}

static const char *air_headline(air_rank rank)
{
    switch (rank) {
    case RANK_GOOD: break;
    case RANK_MINOR: return say("AIR SYSTEM: A MINOR DEFECT");
    case RANK_NONE: return say("AIR SYSTEM DEFECTIVE: SEE THE DEFECTS");
    case RANK_MAJOR: return say("AIR SYSTEM: A MAJOR DEFECT, DO NOT DRIVE");
    }
    return NULL;
}

static const char *air_note(air_rank rank)
{
    switch (rank) {
    case RANK_GOOD: break;
    case RANK_MINOR: return say("By the air checks: A MINOR DEFECT.");
    case RANK_NONE: return say("By the air checks: DEFECTIVE.");
    case RANK_MAJOR: return say("By the air checks: A MAJOR DEFECT.");
    }
    return NULL;
}

inspection_outcome inspection_outcome_of(const inspection *of)
{
    const air_rank worst = worst_of(of);
    inspection_outcome out = {.air = air_headline(worst), .air_note = air_note(worst), .air_paint = PAINT_BAD};
    out.strokes = vehicle_headline(&of->vehicle, &out.strokes_paint);
    if (worst == RANK_MINOR)
        out.air_paint = PAINT_EDGE;
    if (out.air != NULL && out.strokes_paint != PAINT_BAD)
        snprintf(out.small, sizeof out.small, say("By the strokes: %s."), out.strokes);
    return out;
}

static bool is_air_open(const inspection *of)
{
    bool open = false;
    for (size_t i = 0; i < of->record.check_count; i++)
        open = open || of->air[i].result == RODT_AIR_RESULT_UNDETERMINED;
    return open;
}

/* A slow build-up is the one minor defect with which the source says not to drive. */
static const char *minor_warning(const inspection *of)
{
    for (size_t i = 0; i < of->record.check_count; i++)
        if (of->air[i].reading.check == RODT_AIR_CHECK_BUILD_UP && rank_of(&of->air[i]) == RANK_MINOR)
            return say("Minor defect: write it in the report and tell the carrier. With a slow build-up the handbook "
                       "says not to drive.");
    return say("Minor defect: write it in the report and tell the carrier.");
}

const char *inspection_warning(const inspection *of)
{
    if (vehicle_status(&of->vehicle.vehicle) != STATUS_OUT && worst_of(of) > RANK_MINOR)
        return vehicle_status(&of->vehicle.vehicle) == STATUS_GOOD
                   ? say("Do not drive it: report it and have it repaired. Good strokes do not make up for a defective "
                         "air system.")
                   : say("Do not drive it: report it and have it repaired.");
    const char *strokes = vehicle_warning(&of->vehicle.vehicle);
    if (strokes != NULL)
        return strokes;
    if (is_air_open(of))
        return say("Do not drive it until this is settled.");
    return worst_of(of) == RANK_MINOR ? minor_warning(of) : NULL;
}

bool inspection_format_undone(const inspection *of, char text[UNDONE_SIZE])
{
    char list[UNDONE_SIZE - 60] = "", title[120];
    rodt_message message;
    unsigned long count = 0;
    for (size_t i = 0; i < of->record.check_count; i++) {
        size_t used = strlen(list);
        if (of->air[i].result != RODT_AIR_RESULT_NOT_DONE)
            continue;
        (void)say_message(rodt_air_check_message(of->air[i].reading.check, &message), &message, title, sizeof title);
        snprintf(list + used, sizeof list - used, "%s%s", count++ > 0 ? "; " : "", title);
    }
    if (of->record.check_count == 0) {
        snprintf(text, UNDONE_SIZE, "%s", say("No air check was done."));
        return true;
    }
    snprintf(text, UNDONE_SIZE, say_number("%lu air check not done: %s", "%lu air checks not done: %s", count), count,
             list);
    return count > 0;
}

const char *record_cautions_note(const inspection_record *record)
{
    const char *how = record_step(record, STEP_CAUTIONS);
    return how != NULL && strcmp(how, STEP_BY_OPTION) == 0
               ? say("The cautions were confirmed by an option of the command, not by a person.") : NULL;
}
