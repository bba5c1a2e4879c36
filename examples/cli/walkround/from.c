/* SPDX-License-Identifier: Apache-2.0 */
/* A new record begun from the last one of the unit: what stays from day to day is kept, what was read is not. */
#include "walkround/walkround.h"
#include "input/air_words.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/language.h"
#include "ui/message.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* The last record goes away; its texts must not. */
static bool keep_value(walk *of, const record_value *from, record_value *to)
{
    *to = *from;
    if (from->text != NULL)
        to->text = walk_keep(of, from->text);
    return from->text == NULL || to->text != NULL;
}

static bool keep_head(walk *of, const inspection_record *last)
{
    static const head_key kept[] = {HEAD_UNIT,        HEAD_CARRIER, HEAD_RULES, HEAD_AIR_RULES,
                                    HEAD_LENGTH_UNIT, HEAD_VEHICLE, HEAD_TOWED, HEAD_BUILT, HEAD_BRAKES};
    static const head_key offered[] = {HEAD_INSPECTOR, HEAD_PLACE};
    bool good = true;
    for (size_t i = 0; i < COUNT_OF(kept); i++)
        good = keep_value(of, &last->head[kept[i]], &of->record.head[kept[i]]) && good;
    for (size_t i = 0; i < COUNT_OF(offered); i++) {
        record_value value;
        good = keep_value(of, &last->head[offered[i]], &value) && good;
        of->offers[offered[i]] = value.text;
    }
    return good;
}

static bool keep_rows(walk *of, const inspection_record *last)
{
    static const end_key kept[] = {END_POSITION, END_CHAMBER,  END_CLASS, END_RATED,
                                   END_MARKED,   END_DIVISION, END_ADJUSTER, END_ARM};
    bool good = true;
    of->record.unit_count = last->unit_count;
    for (size_t i = 0; i < last->unit_count; i++) {
        for (size_t key = 0; key < UNIT_KEYS; key++)
            good = keep_value(of, &last->units[i][key], &of->record.units[i][key]) && good;
    }
    of->record.end_count = last->end_count;
    for (size_t i = 0; i < last->end_count; i++) {
        for (size_t key = 0; key < COUNT_OF(kept); key++)
            good = keep_value(of, &last->ends[i][kept[key]], &of->record.ends[i][kept[key]]) && good;
    }
    return good;
}

/* What was left out of the vehicle and of its wheel ends stays left out; the reservoirs stay as large as they are. */
static bool is_kept_step(const char *name, const char *answer)
{
    static const walk_id kept[] = {ASK_UNIT, ASK_CARRIER, ASK_BUILT, ASK_PLATES, ASK_CLASS, ASK_RATED, ASK_MARKED,
                                   ASK_ADJUSTER, ASK_ARM, ASK_CHAMBER};
    const char *word = strrchr(name, ' ');
    word = word != NULL ? word + 1 : name;
    for (size_t i = 0; i < COUNT_OF(kept); i++) {
        if (strcmp(word, walk_questions[kept[i]].name) == 0)
            return strcmp(answer, STEP_SKIPPED) == 0;
    }
    return strcmp(name, walk_questions[ASK_RESERVOIRS].name) == 0;
}

static bool keep_steps(walk *of, const inspection_record *last)
{
    bool good = walk_set_step(of, &of->record, STEP_FROM, last->head[HEAD_DATE].text);
    for (size_t i = 0; i < last->step_count; i++) {
        const char *name = last->steps[i][STEP_NAME].text, *answer = last->steps[i][STEP_ANSWER].text;
        if (is_kept_step(name, answer))
            good = walk_set_step(of, &of->record, name, answer) && good;
    }
    return good;
}

static void add_defect(char *list, size_t size, const char *name)
{
    size_t used = strlen(list);
    snprintf(list + used, size - used, "%s%s", used > 0 ? "; " : "", name);
}

/* What the last record found is judged already: "5R; axle 2; tractor-protection". */
static bool keep_defects(walk *of, const inspection_record *last)
{
    const inspection *judged = &of->judged;
    const rodt_vehicle_finding *vehicle = &judged->vehicle.vehicle;
    const char *repair = last->head[HEAD_REPAIR].text;
    char list[RECORD_DEFECTS_SIZE] = "", axle[20];
    for (size_t i = 0; i < last->end_count; i++) {
        rodt_verdict verdict = judged->vehicle.findings[i].verdict;
        if (verdict == RODT_VERDICT_OUT_OF_ADJUSTMENT || verdict == RODT_VERDICT_INOPERATIVE)
            add_defect(list, sizeof list, last->ends[i][END_POSITION].text);
    }
    for (size_t i = 0; i < vehicle->axle_count; i++) {
        snprintf(axle, sizeof axle, AXLE_DEFECT "%d", vehicle->axles[i].axle);
        if ((vehicle->axles[i].mismatches & RODT_AXLE_MISMATCH_LAW) != 0)
            add_defect(list, sizeof list, axle);
    }
    for (size_t i = 0; i < last->check_count; i++) {
        if (judged->air[i].result == RODT_AIR_RESULT_DEFECTIVE)
            add_defect(list, sizeof list, rodt_air_check_name(judged->air[i].reading.check));
    }
    return list[0] == '\0' || (walk_set_step(of, &of->record, STEP_FROM_DEFECTS, list) &&
                               (repair == NULL || walk_set_step(of, &of->record, STEP_FROM_REPAIR, repair)));
}

/* A record that cannot be judged is no beginning. */
static int check_last(walk *of, const inspection_record *last)
{
    rule_context context;
    const char *own = record_step(last, STEP_LIMITS);
    if (last->end_count == 0)
        return print_error("%s has no wheel ends; there is nothing to begin from", last->file);
    if (own != NULL && of->limits_file == NULL)
        return print_error("%s was judged with the limits of a carrier's own; give them again: --limits %s",
                           last->file, own);
    int status = record_open_rules(last, NULL, &context);
    if (status != STATUS_CONTINUE)
        return status;
    memset(&of->judged, 0, sizeof of->judged);
    of->judged.record = *last;
    status = record_judge(&of->judged, &context);
    rule_context_close(&context);
    return status;
}

int walk_take_from(walk *of, const char *file)
{
    inspection_record *last = calloc(1, sizeof *last);
    if (last == NULL)
        return print_error("no memory");
    int status = record_read(file, last);
    if (status == STATUS_CONTINUE)
        status = check_last(of, last);
    if (status == STATUS_CONTINUE &&
        (!keep_head(of, last) || !keep_rows(of, last) || !keep_steps(of, last) || !keep_defects(of, last)))
        status = print_error("no memory");
    record_free(last);
    free(last);
    return status;
}

/* --- What was found ----------------------------------------------------------------------------------- */

void walk_print_last(const walk *of)
{
    char text[RECORD_LAST_SIZE];
    if (record_format_last(&of->record, text))
        walk_print("", 0, "%s", text);
}

void walk_print_last_of(const walk *of, const char *name)
{
    if (record_last_has(&of->record, name))
        walk_print("! ", 2, say("Defective in the last record. Repair: %s."), record_last_repair(&of->record));
}

/* --- What was kept ------------------------------------------------------------------------------------ */

size_t walk_describe_end(const inspection_record *record, int end, char *text, size_t size)
{
    static const struct {
        end_key key;
        const char *label;
    } parts[] = {{END_CHAMBER, ""},
                 {END_CLASS, " "},
                 {END_RATED, TO_SAY(", rated ")},
                 {END_MARKED, TO_SAY(", limit ")},
                 {END_ADJUSTER, ", "},
                 {END_ARM, TO_SAY(", arm ")}};
    size_t used = 0;
    text[0] = '\0';
    for (size_t i = 0; i < COUNT_OF(parts) && used < size; i++) {
        const char *value = record->ends[end][parts[i].key].text;
        if (value != NULL)
            used += (size_t)snprintf(text + used, size - used, "%s%.60s", say(parts[i].label),
                                     walk_say_entry(parts[i].key, value));
    }
    return used;
}

void walk_print_kept(const walk *of)
{
    const inspection_record *record = &of->record;
    walk_print_last(of);
    walk_print("", 0, say("From the record of %s:"), record_step(record, STEP_FROM));
    for (int i = 0; i < (int)record->end_count; i++) {
        char text[WALK_SAID_SIZE], other[WALK_SAID_SIZE], list[400] = "";
        (void)walk_describe_end(record, i, text, sizeof text);
        bool said = false;
        for (int k = 0; k < (int)record->end_count && !said; k++) {
            size_t used = strlen(list);
            (void)walk_describe_end(record, k, other, sizeof other);
            if (strcmp(text, other) != 0)
                continue;
            said = k < i;
            snprintf(list + used, sizeof list - used, "%s%.20s", used > 0 ? " " : "",
                     record->ends[k][END_POSITION].text);
        }
        if (!said)
            walk_print("  ", 4, say("%s: %s"), list, text[0] != '\0' ? text : say("nothing known"));
    }
}
