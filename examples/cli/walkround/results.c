/* SPDX-License-Identifier: Apache-2.0 */
/* The results of a walk-round: the judgement, by the same functions as the report, and what was entered. */
#include "walkround/walkround.h"
#include "input/rule_context.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/format.h"
#include "ui/language.h"
#include "ui/utf8.h"
#include "ui/wrap.h"

#include <stdio.h>
#include <string.h>

const inspection *walk_judge(walk *of, const inspection_record *record)
{
    inspection *judged = &of->judged;
    memset(judged, 0, sizeof *judged);
    judged->record = *record;
    if (record->end_count == 0 || record_judge(judged, &of->context) != STATUS_CONTINUE)
        return NULL;
    return judged;
}

int walk_status(walk *of, bool finished)
{
    const inspection *judged = walk_judge(of, &of->record);
    if (judged == NULL)
        return STATUS_UNDETERMINED;
    int status = inspection_status(judged);
    return status == STATUS_GOOD && !finished ? STATUS_UNDETERMINED : status;
}

/* Of the brakes, or of a check before the pull: the pull itself is what these answers decide about. */
static bool has_status(const inspection *judged, int status, rodt_air_result result)
{
    if (vehicle_status(&judged->vehicle.vehicle) == status)
        return true;
    for (size_t i = 0; i < judged->record.check_count; i++)
        if (judged->air[i].result == result && !judged->air[i].minor &&
            judged->air[i].reading.check != RODT_AIR_CHECK_SPRING_BRAKE)
            return true;
    return false;
}

bool walk_is_bad(walk *of)
{
    const inspection *judged = walk_judge(of, &of->record);
    return judged != NULL &&
           (walk_parking_failed(&of->record) || has_status(judged, STATUS_OUT, RODT_AIR_RESULT_DEFECTIVE));
}

bool walk_is_unsettled(walk *of)
{
    const inspection *judged = walk_judge(of, &of->record);
    return judged == NULL || has_status(judged, STATUS_UNDETERMINED, RODT_AIR_RESULT_UNDETERMINED);
}

/* --- After an answer --------------------------------------------------------------------------------- */

/* Why a wheel end is undetermined: the first of these that it has decided it. */
static const rodt_reason doubts[] = {
    RODT_REASON_CHAMBER_MISSING,   RODT_REASON_RELEASED_MISSING,     RODT_REASON_APPLIED_MISSING,
    RODT_REASON_READINGS_SWAPPED,  RODT_REASON_PRESSURE_LOW,         RODT_REASON_PRESSURE_HIGH,
    RODT_REASON_ENGINE_RUNNING,    RODT_REASON_SPRING_BRAKE_APPLIED, RODT_REASON_NO_PUBLISHED_LIMIT,
    RODT_REASON_RULES_NOT_IN_FORCE, RODT_REASON_LOST_BLANK};

static bool format_doubt(const rodt_finding *finding, char sentence[SAID_SIZE])
{
    for (size_t i = 0; finding->verdict == RODT_VERDICT_UNDETERMINED && i < COUNT_OF(doubts); i++) {
        if (finding_reason(finding, doubts[i], sentence))
            return true;
    }
    return false;
}

static const char *verdict_word(rodt_verdict verdict)
{
    static const char *const words[] = {[RODT_VERDICT_UNDETERMINED] = TO_SAY("undetermined"),
                                        [RODT_VERDICT_IN_ADJUSTMENT] = TO_SAY("in-adjustment"),
                                        [RODT_VERDICT_OUT_OF_ADJUSTMENT] = TO_SAY("out-of-adjustment"),
                                        [RODT_VERDICT_INOPERATIVE] = TO_SAY("inoperative")};
    return say(words[verdict]);
}

static void print_end(const inspection *judged, int end)
{
    const rodt_finding *finding = &judged->vehicle.findings[end];
    char stroke[WORD_SIZE], limit[WORD_SIZE], margin[MARGIN_SIZE], sentence[SAID_SIZE];
    if (!rodt_length_given(finding->released) || !rodt_length_given(finding->applied))
        return;
    walk_print("  ", 2, say("stroke %s, limit %s, %s: %s"), tape_word(finding, finding->applied_stroke, stroke),
               tape_word(finding, finding->limit, limit), margin_words(finding, margin),
               verdict_word(finding->verdict));
    if (format_doubt(finding, sentence))
        walk_print("  ", 2, "%s", sentence);
}

/* Strokes that are far apart point to one bad brake even where both pass. */
static void print_axle(const inspection *judged, rodt_position position)
{
    char sentence[SAID_SIZE];
    rodt_message message;
    for (size_t i = 0; i < judged->vehicle.vehicle.axle_count; i++) {
        const rodt_axle_finding *axle = &judged->vehicle.vehicle.axles[i];
        if (axle->axle == position.axle &&
            say_message(rodt_axle_mismatch_message(axle, RODT_AXLE_MISMATCH_STROKES_DIFFER, &message), &message,
                        sentence, sizeof sentence))
            walk_print("  ", 2, "%s", sentence);
    }
}

bool walk_is_check_done(const walk *of, rodt_air_check check)
{
    for (size_t i = 0; i < of->plan.count; i++) {
        if (of->plan.items[i].check == check && !walk_answered(&of->record, &of->plan.items[i]))
            return false;
    }
    return true;
}

static void print_check(const inspection *judged, rodt_air_check check)
{
    char sentence[SAID_SIZE];
    rodt_message message;
    int entry = walk_find_check(&judged->record, check);
    if (entry != WALK_NONE &&
        say_message(rodt_air_finding_message(&judged->air[entry], &message), &message, sentence, sizeof sentence))
        walk_print("  ", 2, "%s", sentence);
}

/* What one says of the finding that an answer completed. */
static void print_spoken(const inspection *judged, const walk_item *item)
{
    char text[SAID_SIZE] = "";
    rodt_message message;
    int entry = item->check != RODT_AIR_CHECK_NONE ? walk_find_check(&judged->record, item->check) : WALK_NONE;
    if (entry != WALK_NONE)
        (void)say_message(rodt_air_finding_spoken_message(&judged->air[entry], &message), &message, text, sizeof text);
    else if (item->id == ASK_END_APPLIED)
        (void)say_message(rodt_finding_spoken_message(&judged->vehicle.findings[item->end], &message), &message, text,
                          sizeof text);
    if (text[0] != '\0')
        print_wrapped(walk_out(), say("Say"), 12, text);
}

/* It was just moved, its chocks are stowed, and nothing holds it. */
static void print_unheld(const walk *of, const walk_item *item)
{
    const char *held = walk_value(&of->record, item).text;
    if (item->check == RODT_AIR_CHECK_SPRING_BRAKE && held != NULL && strcmp(held, "no") == 0)
        walk_print("! ", 2, "%s", say("Foot on the pedal, engine off, chock the wheels."));
}

void walk_print_result(walk *of, const walk_item *item)
{
    print_unheld(of, item);
    bool check = item->check != RODT_AIR_CHECK_NONE && walk_is_check_done(of, item->check);
    if (item->end == WALK_NONE && !check)
        return;
    const inspection *judged = walk_judge(of, &of->record);
    if (judged == NULL)
        return;
    if (check)
        print_check(judged, item->check);
    if (item->end != WALK_NONE)
        print_end(judged, item->end);
    if (of->speak)
        print_spoken(judged, item);
    if (item->id == ASK_END_APPLIED)
        print_axle(judged, walk_position(&of->record, item->end));
}

/* --- Everything so far ------------------------------------------------------------------------------- */

static void print_end_entered(const inspection *judged, int end)
{
    static const struct {
        end_key key;
        const char *label;
    } parts[] = {{END_CHAMBER, " "},
                 {END_CLASS, " "},
                 {END_RATED, TO_SAY(", rated ")},
                 {END_MARKED, TO_SAY(", limit ")},
                 {END_ADJUSTER, ", "},
                 {END_ARM, TO_SAY(", arm ")},
                 {END_RELEASED, TO_SAY("; released ")},
                 {END_APPLIED, TO_SAY(", applied ")},
                 {END_REMARK, "; "}};
    const record_value *values = judged->record.ends[end];
    char line[1200];
    size_t used = (size_t)snprintf(line, sizeof line, "%.20s", values[END_POSITION].text);
    for (size_t i = 0; i < COUNT_OF(parts) && used < sizeof line; i++) {
        if (values[parts[i].key].text != NULL)
            used += (size_t)snprintf(line + used, sizeof line - used, "%s%.300s", say(parts[i].label),
                                     walk_say_entry(parts[i].key, values[parts[i].key].text));
    }
    if (values[END_APPLIED].text != NULL && used < sizeof line)
        snprintf(line + used, sizeof line - used, "%s%s", say(": "),
                 verdict_word(judged->vehicle.findings[end].verdict));
    if (strlen(line) > strlen(values[END_POSITION].text))
        walk_print("  ", 4, "%s", line);
}

static void print_units_entered(const inspection_record *record)
{
    char unit[UNIT_TEXT_SIZE];
    for (size_t i = 0; record_format_unit(record, i, unit); i++)
        walk_print("  ", 4, say("unit %zu: %s"), i + 1, unit);
}

/* A word of the record, or what somebody typed. */
static const char *head_words(int key, const char *text)
{
    return key == HEAD_VEHICLE ? walk_say_answer(walk_questions[ASK_VEHICLE].words, text) : text;
}

static void print_head_entered(const inspection_record *record)
{
    for (int key = 0; key < HEAD_KEYS; key++) {
        const record_value *value = &record->head[key];
        if (key == HEAD_PROGRAM || (value->text == NULL && value->number == 0))
            continue;
        if (value->text != NULL)
            walk_print("  ", 4, say("%s: %s"), say(record_key_name(&record_head_keys[key])),
                       head_words(key, value->text));
        else
            walk_print("  ", 4, say("%s: %d"), say(record_key_name(&record_head_keys[key])), value->number);
    }
}

static bool are_clues(const char *step)
{
    size_t size = strlen(step), tail = strlen(STEP_CLUES);
    return size > tail && strcmp(step + size - tail, STEP_CLUES) == 0;
}

static const char *say_step_answer(const inspection_record *record, size_t step, char said[SAID_SIZE])
{
    char was[SAID_SIZE];
    const char *text = record->steps[step][STEP_ANSWER].text;
    if (record_change_at(record, step, was))
        return record_say_replaced(text, said);
    return are_clues(record->steps[step][STEP_NAME].text) ? walk_say_clues(text, said) : walk_say_step(text, said);
}

void walk_print_entered(walk *of)
{
    char name[SAID_SIZE], answer[SAID_SIZE];
    const inspection_record *record = &of->record;
    print_head_entered(record);
    print_units_entered(record);
    const inspection *judged = walk_judge(of, record);
    for (size_t i = 0; judged != NULL && i < record->check_count; i++)
        print_check(judged, judged->air[i].reading.check);
    for (size_t i = 0; judged != NULL && i < record->end_count; i++)
        print_end_entered(judged, (int)i);
    for (size_t i = 0; i < record->step_count; i++) {
        walk_print("  ", 4, say("%s: %s"), record_say_step(record->steps[i][STEP_NAME].text, name),
                   say_step_answer(record, i, answer));
    }
}

/* --- The verdict -------------------------------------------------------------------------------------- */

static void print_line(void *context, const char *label, const char *text)
{
    const char **heading = context;
    if (*heading != NULL)
        walk_print("", 0, "%s", *heading);
    *heading = NULL;
    walk_print("  ", 4, "%s%s%s", label, label[0] == '\0' ? "" : say(": "), text);
}

static void print_open_checks(const inspection *judged)
{
    const char *heading = say("Air checks not done, or not settled");
    char sentence[SAID_SIZE];
    rodt_message message;
    for (size_t i = 0; i < judged->record.check_count; i++) {
        rodt_air_result result = judged->air[i].result;
        bool open = result == RODT_AIR_RESULT_NOT_DONE || result == RODT_AIR_RESULT_UNDETERMINED;
        if (open &&
            say_message(rodt_air_finding_message(&judged->air[i], &message), &message, sentence, sizeof sentence))
            print_line(&heading, "", sentence);
    }
}

/* What decided that a brake is undetermined, once for all the wheel ends that have it in common. */
static void print_deciders(const inspection *judged)
{
    const char *heading = say("Not settled");
    for (size_t i = 0; i < judged->vehicle.count; i++) {
        char sentence[SAID_SIZE], other[SAID_SIZE], list[600] = "";
        bool said = !format_doubt(&judged->vehicle.findings[i], sentence);
        for (size_t k = 0; k < judged->vehicle.count && !said; k++) {
            size_t used = strlen(list);
            if (!format_doubt(&judged->vehicle.findings[k], other) || strcmp(sentence, other) != 0)
                continue;
            said = k < i;
            snprintf(list + used, sizeof list - used, "%s%.20s", used > 0 ? " " : "",
                     judged->record.ends[k][END_POSITION].text);
        }
        if (!said)
            print_line(&heading, list, sentence);
    }
}

static void print_headlines(const inspection *judged)
{
    inspection_outcome outcome = inspection_outcome_of(judged);
    if (outcome.air != NULL)
        print_headline(walk_out(), outcome.air_paint, outcome.air);
    if (outcome.small[0] != '\0')
        print_wrapped(walk_out(), "", 0, outcome.small);
    else
        print_headline(walk_out(), outcome.strokes_paint, outcome.strokes);
}

void walk_print_verdict(walk *of)
{
    const inspection *judged = walk_judge(of, &of->record);
    if (judged == NULL)
        return;
    const vehicle_record *vehicle = &judged->vehicle;
    fputc('\n', walk_out());
    print_headlines(judged);
    print_deciders(judged);
    vehicle_each_count(vehicle, print_line, &(const char *){NULL});
    inspection_each_defect(judged, print_line, &(const char *){say("Defects")});
    print_open_checks(judged);
    vehicle_each_axle(vehicle, print_line, &(const char *){say("Axles")});
    vehicle_each_advice(vehicle, print_line, &(const char *){say("Next")});
    const char *notes = say("Notes");
    vehicle_each_reason(vehicle, print_line, &notes);
    inspection_each_note(judged, print_line, &notes);
    if (record_cautions_note(&of->record) != NULL)
        walk_print("", 0, "%s", record_cautions_note(&of->record));
    walk_print("", 0, "%s", vehicle_caution());
}

static void print_plain(void *context, const char *label, const char *text)
{
    (void)context;
    walk_print("", 0, "%s%s%s", label, label[0] == '\0' ? "" : say(": "), text);
}

/* --- The last lines ---------------------------------------------------------------------------------- */

static void add_place(char *list, size_t size, const char *heading, const char *place)
{
    size_t used = strlen(list);
    snprintf(list + used, size - used, "%s%.80s", used > 0 ? "; " : heading, place);
}

static void list_places(const inspection *judged, bool defective, char *list, size_t size)
{
    char title[SAID_SIZE];
    for (size_t i = 0; i < judged->vehicle.count; i++) {
        rodt_verdict verdict = judged->vehicle.findings[i].verdict;
        bool bad = verdict == RODT_VERDICT_OUT_OF_ADJUSTMENT || verdict == RODT_VERDICT_INOPERATIVE;
        if (defective ? bad : verdict == RODT_VERDICT_UNDETERMINED)
            add_place(list, size, defective ? say("Defective: ") : say("Not settled: "),
                      judged->record.ends[i][END_POSITION].text);
    }
    for (size_t i = 0; i < judged->record.check_count; i++) {
        rodt_air_result result = judged->air[i].result;
        if (result == (defective ? RODT_AIR_RESULT_DEFECTIVE : RODT_AIR_RESULT_UNDETERMINED))
            add_place(list, size, defective ? say("Defective: ") : say("Not settled: "),
                      air_check_title(judged->air[i].reading.check, title));
    }
}

static void list_hardly_moved(const inspection *judged, char *list, size_t size)
{
    for (size_t i = 0; i < judged->vehicle.count; i++) {
        if (rodt_finding_has(&judged->vehicle.findings[i], RODT_REASON_HARDLY_MOVED))
            add_place(list, size, say("Hardly moved, look again: "), judged->record.ends[i][END_POSITION].text);
    }
}

static void list_changed(const inspection *judged, char *list, size_t size)
{
    char what[SAID_SIZE];
    for (size_t i = 0; i < judged->record.step_count; i++) {
        if (record_change_at(&judged->record, i, what))
            add_place(list, size, say("Changed after a verdict: "), what);
    }
}

static void print_doubts(const inspection *judged)
{
    static void (*const lists[])(const inspection *, char *, size_t) = {list_hardly_moved, list_changed};
    for (size_t i = 0; i < COUNT_OF(lists); i++) {
        char list[900] = "";
        lists[i](judged, list, sizeof list);
        if (list[0] != '\0')
            walk_print("", 0, "%s.", list);
    }
    inspection_each_rise(judged, print_plain, NULL);
}

void walk_print_outcome(walk *of)
{
    const inspection *judged = walk_judge(of, &of->record);
    if (judged == NULL)
        return;
    fputc('\n', walk_out());
    print_headlines(judged);
    for (int defective = 1; defective >= 0; defective--) {
        char list[900] = "";
        list_places(judged, defective != 0, list, sizeof list);
        if (list[0] != '\0')
            walk_print("", 0, "%s.", list);
    }
    print_doubts(judged);
    if (record_step(&of->record, STEP_FROM_REPAIR) == NULL)
        walk_print_last(of);
    char undone[UNDONE_SIZE];
    if (inspection_format_undone(judged, undone))
        walk_print("", 0, "%s", undone);
    const char *warning = inspection_warning(judged);
    if (warning != NULL)
        walk_print("", 0, "%s", warning);
}
