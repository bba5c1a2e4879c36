/* SPDX-License-Identifier: Apache-2.0 */
/* Notes that every form of the report has beside the judgement. */
#include "report/report.h"
#include "ui/format.h"
#include "ui/language.h"

#include <stdio.h>
#include <string.h>

const char *report_head_title(head_key key)
{
    static const char *const titles[HEAD_KEYS] = {
        [HEAD_UNIT] = TO_SAY("Unit number"), [HEAD_DATE] = TO_SAY("Date"), [HEAD_TIME] = TO_SAY("Time"),
        [HEAD_CARRIER] = TO_SAY("Carrier"), [HEAD_INSPECTOR] = TO_SAY("Inspector"), [HEAD_PLACE] = TO_SAY("Place"),
        [HEAD_ODOMETER] = TO_SAY("Odometer"), [HEAD_RULES] = TO_SAY("Rule set"),
        [HEAD_AIR_RULES] = TO_SAY("Air checks by"),
        [HEAD_BUILT] = TO_SAY("Built"), [HEAD_REPAIR] = TO_SAY("Repaired"), [HEAD_REMARKS] = TO_SAY("Remarks")};
    return titles[key] != NULL ? say(titles[key]) : NULL;
}

const char *report_head_text(const inspection *of, head_key key)
{
    const char *text = of->record.head[key].text;
    bool named = text != NULL && (key == HEAD_RULES || key == HEAD_AIR_RULES);
    const rodt_rules *rules = named ? rodt_rules_find(text) : NULL;
    return rules != NULL ? say(rodt_rules_title(rules)) : text;
}

const char *report_adjuster(rodt_adjuster adjuster)
{
    switch (adjuster) {
    case RODT_ADJUSTER_MANUAL: return say("manual");
    case RODT_ADJUSTER_AUTOMATIC: return say("automatic");
    case RODT_ADJUSTER_NOT_RECORDED: break;
    }
    return "-";
}

const char *report_air_result(rodt_air_result result)
{
    return result == RODT_AIR_RESULT_NOT_DONE ? say("not done") : say(rodt_air_result_name(result));
}

const char *report_air_title(rodt_air_check check, char text[SAID_SIZE])
{
    rodt_message message;
    (void)say_message(rodt_air_check_message(check, &message), &message, text, SAID_SIZE);
    return text;
}

/* Rows of the checks, two a check: the one that judged and, where that is the carrier's own, the law's. */
#define ROWS_OF_CHECK ((size_t)2)

static const rodt_air_limit *row_at(const inspection *of, size_t i)
{
    const rodt_air_finding *finding = &of->air[i / ROWS_OF_CHECK];
    if (i % ROWS_OF_CHECK == 0)
        return finding->row;
    return finding->row == finding->own_row ? finding->law_row : NULL;
}

static void list_air_source(const rodt_air_limit *row, bool own, vehicle_line line, void *context)
{
    char words[RODT_SOURCE_TEXT_SIZE], text[RODT_SOURCE_TEXT_SIZE + SAID_SIZE], label[SAID_SIZE + 40];
    char title[SAID_SIZE], evidence[SAID_SIZE];
    snprintf(label, sizeof label, own ? say("own figure, %s") : "%s", report_air_title(row->check, title));
    snprintf(text, sizeof text, "%s (%s)", format_source(row->source, words), say_evidence(row->evidence, evidence));
    line(context, label, row->evidence != RODT_EVIDENCE_NONE ? text : words);
}

void report_each_air_source(const inspection *of, vehicle_line line, void *context)
{
    for (size_t i = 0; i < of->record.check_count * ROWS_OF_CHECK; i++) {
        const rodt_air_limit *row = row_at(of, i);
        bool known = row == NULL;
        for (size_t k = 0; k < i && !known; k++) {
            const rodt_air_limit *other = row_at(of, k);
            known = other != NULL && other->source == row->source && other->evidence == row->evidence;
        }
        if (!known)
            list_air_source(row, row == of->air[i / ROWS_OF_CHECK].own_row, line, context);
    }
}

bool report_limits_note(const inspection *of, char note[REPORT_NOTE_SIZE])
{
    const char *own = record_step(&of->record, STEP_LIMITS);
    if (own == NULL || of->context->own != NULL)
        return false;
    snprintf(note, REPORT_NOTE_SIZE, say("The walk-round was judged by stricter limits of the carrier's own as well "
                                         "(%.400s); this report is without them."), own);
    return true;
}
