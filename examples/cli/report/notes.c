/* SPDX-License-Identifier: Apache-2.0 */
/* Notes that every form of the report has beside the judgement. */
#include "report/report.h"
#include "ui/format.h"

#include <stdio.h>
#include <string.h>

const char *report_head_title(head_key key)
{
    static const char *const titles[HEAD_KEYS] = {
        [HEAD_UNIT] = "Unit",         [HEAD_DATE] = "Date",           [HEAD_TIME] = "Time",
        [HEAD_CARRIER] = "Carrier",   [HEAD_INSPECTOR] = "Inspector", [HEAD_PLACE] = "Place",
        [HEAD_ODOMETER] = "Odometer", [HEAD_RULES] = "Rule set",      [HEAD_AIR_RULES] = "Air checks by",
        [HEAD_BUILT] = "Built",       [HEAD_REPAIR] = "Repaired",     [HEAD_REMARKS] = "Remarks"};
    return titles[key];
}

const char *report_head_text(const inspection *of, head_key key)
{
    const char *text = of->record.head[key].text;
    bool named = text != NULL && (key == HEAD_RULES || key == HEAD_AIR_RULES);
    const rodt_rules *rules = named ? rodt_rules_find(text) : NULL;
    return rules != NULL ? rodt_rules_title(rules) : text;
}

const char *report_adjuster(rodt_adjuster adjuster)
{
    return adjuster == RODT_ADJUSTER_NOT_RECORDED ? "-" : rodt_adjuster_name(adjuster);
}

const char *report_air_result(rodt_air_result result)
{
    return result == RODT_AIR_RESULT_NOT_DONE ? "not done" : rodt_air_result_name(result);
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
    char words[RODT_SOURCE_TEXT_SIZE], text[RODT_SOURCE_TEXT_SIZE + 80], label[100];
    bool checked = row->evidence != RODT_EVIDENCE_NONE;
    snprintf(label, sizeof label, "%s%s", own ? "own figure, " : "", rodt_air_check_title(row->check));
    snprintf(text, sizeof text, "%s%s%s%s", format_source(row->source, words), checked ? " (" : "",
             checked ? rodt_evidence_text(row->evidence) : "", checked ? ")" : "");
    line(context, label, text);
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
    snprintf(note, REPORT_NOTE_SIZE, "The walk-round was judged by stricter limits of the carrier's own as well "
             "(%.400s); this report is without them.", own);
    return true;
}
