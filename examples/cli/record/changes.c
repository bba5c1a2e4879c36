/* SPDX-License-Identifier: Apache-2.0 */
/* What the entries of a record say about each other: readings that were changed, a pressure that rose. */
#include "record/record.h"
#include "ui/format.h"
#include "ui/language.h"

#include <stdio.h>
#include <string.h>

bool record_change_at(const inspection_record *record, size_t step, char what[SAID_SIZE])
{
    char bare[RECORD_WHERE_SIZE];
    bool replaced = record_bare_step(record->steps[step][STEP_NAME].text, bare);
    if (replaced)
        (void)record_say_step(bare, what);
    return replaced;
}

static void list_changes(const inspection_record *record, vehicle_line line, void *context)
{
    char what[SAID_SIZE], text[SAID_SIZE], was[SAID_SIZE];
    for (size_t i = 0; i < record->step_count; i++) {
        if (!record_change_at(record, i, what))
            continue;
        snprintf(text, sizeof text, say("changed after a verdict; it was %.300s"),
                 record_say_replaced(record->steps[i][STEP_ANSWER].text, was));
        line(context, what, text);
    }
}

/* With the engine off an application takes pressure; the gauge was read wrongly, or the engine ran. */
void inspection_each_rise(const inspection *of, vehicle_line line, void *context)
{
    char before[WORD_SIZE], after[WORD_SIZE], text[SAID_SIZE];
    for (size_t i = 0; i < of->vehicle.count; i++) {
        const rodt_finding *finding = &of->vehicle.findings[i];
        if (!rodt_pressure_given(finding->pressure) || !rodt_pressure_given(finding->pressure_after) ||
            rodt_pressure_compare(finding->pressure_after, finding->pressure) <= 0)
            continue;
        snprintf(text, sizeof text,
                 say("The reservoir pressure rose from %s to %s psi though brakes were applied: look at the gauge and "
                     "the engine, then measure again."),
                 format_pressure(finding->pressure, before), format_pressure(finding->pressure_after, after));
        line(context, "", text);
        return;
    }
}

static void list_parking(const inspection_record *record, vehicle_line line, void *context)
{
    static const char *const failures[][2] = {{STEP_RELEASED, TO_SAY("The parking brake does not release.")},
                                              {STEP_PARKED, TO_SAY("The parking brake does not set.")}};
    for (size_t i = 0; i < COUNT_OF(failures); i++) {
        const char *answer = record_step(record, failures[i][0]);
        if (answer != NULL && strcmp(answer, STEP_NEVER) == 0)
            line(context, "", say(failures[i][1]));
    }
}

void inspection_each_note(const inspection *of, vehicle_line line, void *context)
{
    char last[RECORD_LAST_SIZE];
    list_parking(&of->record, line, context);
    if (record_format_last(&of->record, last))
        line(context, "", last);
    inspection_each_rise(of, line, context);
    list_changes(&of->record, line, context);
}
