/* SPDX-License-Identifier: Apache-2.0 */
/* The judgement of a vehicle in words, whoever shows them: the outcome, the cells, and what several wheel ends have
 * in common said once. */
#include "vehicle/vehicle.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/format.h"
#include "ui/language.h"
#include "ui/wrap.h"

#include <stdio.h>
#include <string.h>

/* --- The outcome -------------------------------------------------------------------------------------- */

static bool steering_dead(const rodt_vehicle_finding *vehicle)
{
    for (size_t i = 0; i < vehicle->axle_count; i++) {
        if ((vehicle->axles[i].mismatches & RODT_AXLE_MISMATCH_STEERING_DEAD) != 0)
            return true;
    }
    return false;
}

static bool some_have(const vehicle_record *record, rodt_reason reason)
{
    for (size_t i = 0; i < record->count; i++) {
        if (rodt_finding_has(&record->findings[i], reason))
            return true;
    }
    return false;
}

/* Every brake is in, and some rod hardly moved. A doubt of the limits stays. */
static const char *hardly_moved(const vehicle_record *record)
{
    if (some_have(record, RODT_REASON_LIMIT_UNCONFIRMED))
        return say("ALL IN ADJUSTMENT BY UNCONFIRMED LIMITS, BUT SOME HARDLY MOVED");
    if (some_have(record, RODT_REASON_LIMIT_COMMON_PRACTICE))
        return say("ALL IN ADJUSTMENT BY COMMON PRACTICE, BUT SOME HARDLY MOVED");
    return say("ALL BRAKES IN ADJUSTMENT, BUT SOME HARDLY MOVED");
}

const char *vehicle_headline(const vehicle_record *record, paint_kind *paint)
{
    const rodt_vehicle_finding *vehicle = &record->vehicle;
    bool some_out = vehicle->out_of_adjustment + vehicle->inoperative > 0;
    *paint = PAINT_BAD;
    if (vehicle->count.outcome == RODT_OUTCOME_OUT_OF_SERVICE || (steering_dead(vehicle) && record->axle_1_steers))
        return some_have(record, RODT_REASON_MAJOR_DEFECT) ? say("OUT OF SERVICE, A MAJOR DEFECT: DO NOT DRIVE")
                                                           : say("OUT OF SERVICE");
    if (steering_dead(vehicle))
        return say("OUT OF SERVICE IF AXLE 1 STEERS");
    if (vehicle->count.outcome == RODT_OUTCOME_AMBIGUOUS)
        return say("AMBIGUOUS: OUT OF SERVICE BY PERCENT, NOT BY THE CHART");
    if (some_have(record, RODT_REASON_MAJOR_DEFECT))
        return say("DEFECTIVE, A MAJOR DEFECT: DO NOT DRIVE");
    if (some_out && vehicle->count.outcome == RODT_OUTCOME_UNDETERMINED)
        return say("DEFECTIVE: WHETHER OUT OF SERVICE IS OPEN");
    if (some_out)
        return say("DEFECTIVE, BELOW THE OUT-OF-SERVICE CRITERION");
    if (vehicle->mismatched_axles > 0)
        return say("DEFECTIVE: AN AXLE DOES NOT MATCH");
    *paint = PAINT_OPEN;
    if (vehicle->undetermined + vehicle->count.unmeasured > 0)
        return say("UNDETERMINED: NOT EVERY BRAKE IS PROVEN");
    *paint = PAINT_EDGE;
    if (some_have(record, RODT_REASON_HARDLY_MOVED))
        return hardly_moved(record);
    if (some_have(record, RODT_REASON_LIMIT_UNCONFIRMED))
        return say("ALL BRAKES IN ADJUSTMENT, BUT THE LIMITS ARE UNCONFIRMED");
    if (some_have(record, RODT_REASON_LIMIT_COMMON_PRACTICE))
        return say("ALL BRAKES IN ADJUSTMENT, BY LIMITS OF COMMON PRACTICE");
    if (some_have(record, RODT_REASON_AT_LIMIT))
        return say("ALL BRAKES IN ADJUSTMENT, SOME EXACTLY AT THE LIMIT");
    *paint = PAINT_GOOD;
    return say("ALL BRAKES IN ADJUSTMENT");
}

/* "3 in adjustment", where there are any. */
static void add_brakes(char text[RODT_SENTENCE_SIZE], uint32_t brakes, const char *what)
{
    size_t used = strlen(text);
    if (brakes > 0)
        snprintf(text + used, RODT_SENTENCE_SIZE - used, "%s%lu %s", used > 0 ? ", " : "", (unsigned long)brakes, what);
}

static void list_brakes(const vehicle_record *record, vehicle_line line, void *context)
{
    const rodt_vehicle_finding *vehicle = &record->vehicle;
    const rodt_tally *tally = &vehicle->count.tally;
    char text[RODT_SENTENCE_SIZE] = "";
    uint32_t good = vehicle->in_adjustment, full = tally->full - tally->inoperative, half = tally->half;
    uint32_t others = vehicle->out_of_adjustment > full + half ? vehicle->out_of_adjustment - full - half : 0;
    uint32_t dead = vehicle->inoperative, open = vehicle->undetermined, unmeasured = vehicle->count.unmeasured;
    add_brakes(text, good, say_number("in adjustment", "in adjustment", good));
    add_brakes(text, full, say_number("over by 1/4 in or more", "over by 1/4 in or more", full));
    add_brakes(text, half, say_number("over by less than 1/4 in", "over by less than 1/4 in", half));
    add_brakes(text, others, say_number("out of adjustment, not counted", "out of adjustment, not counted", others));
    add_brakes(text, dead, say_number("inoperative", "inoperative", dead));
    add_brakes(text, open, say_number("undetermined", "undetermined", open));
    add_brakes(text, unmeasured, say_number("not measured", "not measured", unmeasured));
    line(context, say("Brakes"), text);
}

static void list_halves(const rodt_count *count, vehicle_line line, void *context)
{
    char text[RODT_SENTENCE_SIZE], defective[WORD_SIZE];
    unsigned long halves = count->tally.half;
    if (halves == 0 || rodt_length_format((rodt_length){count->defective.num, count->defective.den}, defective,
                                          sizeof defective, NULL) != RODT_OK)
        return;
    snprintf(text, sizeof text,
             say_number("%lu brake over by less than 1/4 in counts half: that makes %s defective of %lu.",
                        "%lu brakes over by less than 1/4 in count half each: that makes %s defective of %lu.", halves),
             halves, defective, (unsigned long)count->brakes);
    line(context, "", text);
}

void vehicle_each_count(const vehicle_record *record, vehicle_line line, void *context)
{
    const rodt_vehicle_finding *vehicle = &record->vehicle;
    unsigned long brakes = vehicle->count.brakes;
    size_t axles = brakes / 2;
    char sentence[SAID_SIZE];
    rodt_message message;
    if (say_message(rodt_count_message(&vehicle->count, &message), &message, sentence, sizeof sentence))
        line(context, say("Count"), sentence);
    list_halves(&vehicle->count, line, context);
    list_brakes(record, line, context);
    if (record->brakes_given)
        snprintf(sentence, sizeof sentence, say("%lu brakes (you gave the number)."), brakes);
    else
        snprintf(sentence, sizeof sentence,
                 say_number("%lu brakes (%zu axle).", "%lu brakes (%zu axles).", axles), brakes, axles);
    line(context, say("Counted"), sentence);
    if (vehicle->count.outcome == RODT_OUTCOME_AMBIGUOUS)
        line(context, "", say("No public text says whether a half brake that reaches the percentage is enough. Take it "
                              "as out of service."));
}

/* --- Cells -------------------------------------------------------------------------------------------- */

/* A rounded stroke would stand at its limit, or be over it by nothing: as many digits as the value has. */
static bool write_digits(rodt_length length, rodt_unit unit, unsigned least, char digits[WORD_SIZE - 4])
{
    char up[WORD_SIZE - 4];
    for (unsigned count = least; count <= 12; count++) {
        if (rodt_length_format_decimal(length, unit, count, RODT_ROUNDING_DOWN, digits, sizeof up, NULL) == RODT_OK &&
            rodt_length_format_decimal(length, unit, count, RODT_ROUNDING_UP, up, sizeof up, NULL) == RODT_OK &&
            strcmp(digits, up) == 0)
            return true;
    }
    return false;
}

const char *tape_word(const rodt_finding *finding, rodt_length length, char word[WORD_SIZE])
{
    if (!rodt_length_given(length))
        return "-";
    bool mm = finding->unit != RODT_UNIT_IN;
    char digits[WORD_SIZE - 4];
    if ((!mm && length.den <= 128 && (length.den & (length.den - 1)) == 0) ||
        !write_digits(length, mm ? RODT_UNIT_MM : RODT_UNIT_IN, mm ? 2 : 3, digits))
        return format_length(length, word);
    snprintf(word, WORD_SIZE, "%s%s", digits, mm ? " mm" : "");
    return word;
}

const char *margin_words(const rodt_finding *finding, char words[MARGIN_SIZE])
{
    char word[WORD_SIZE];
    rodt_length margin = finding->margin;
    bool over = margin.num < 0;
    snprintf(words, MARGIN_SIZE, "-");
    if (finding->verdict == RODT_VERDICT_INOPERATIVE)
        snprintf(words, MARGIN_SIZE, "%s", say("did not move"));
    else if (rodt_length_given(margin) && margin.num == 0)
        snprintf(words, MARGIN_SIZE, "%s", say("at the limit"));
    else if (rodt_length_given(margin))
        snprintf(words, MARGIN_SIZE, over ? say("over by %s") : say("%s to spare"),
                 tape_word(finding, (rodt_length){over ? -margin.num : margin.num, margin.den}, word));
    return words;
}

/* --- What several wheel ends have in common ----------------------------------------------------------- */

#define LIST_SIZE 400

static void add_position(const vehicle_record *record, size_t end, char list[LIST_SIZE])
{
    char position[RODT_POSITION_TEXT_SIZE];
    size_t used = strlen(list);
    if (rodt_position_format(record->ends[end].position, position, sizeof position, NULL) == RODT_OK)
        snprintf(list + used, LIST_SIZE - used, "%s%s", used == 0 ? "" : " ", position);
}

static const char *name_ends(const vehicle_record *record, const char *list, size_t members)
{
    return members == record->count && members > 1 ? say("all") : list;
}

/* The verdict, the margin and the advice say these already. */
static bool is_shown_elsewhere(const rodt_finding *finding, rodt_reason reason)
{
    return reason == RODT_REASON_OVER_LIMIT || reason == RODT_REASON_AT_LIMIT || reason == RODT_REASON_NO_MOVEMENT ||
           finding_is_routine(finding, reason);
}

static bool sentence_of(const vehicle_record *record, size_t end, int reason, char sentence[SAID_SIZE])
{
    return !is_shown_elsewhere(&record->findings[end], (rodt_reason)reason) &&
           finding_reason(&record->findings[end], (rodt_reason)reason, sentence);
}

/* One sentence once, with every wheel end that it is about; done by the first of them. */
static void list_reason(const vehicle_record *record, size_t end, int reason, vehicle_line line, void *context)
{
    char sentence[SAID_SIZE], other[SAID_SIZE], list[LIST_SIZE] = "";
    size_t members = 0;
    if (!sentence_of(record, end, reason, sentence))
        return;
    for (size_t i = 0; i < record->count; i++) {
        if (!sentence_of(record, i, reason, other) || strcmp(sentence, other) != 0)
            continue;
        if (i < end)
            return;
        add_position(record, i, list);
        members++;
    }
    line(context, name_ends(record, list, members), sentence);
}

static void list_unreadable(const vehicle_record *record, vehicle_line line, void *context)
{
    for (size_t i = 0; i < record->count; i++) {
        const rodt_error *error = &record->errors[i];
        char list[LIST_SIZE] = "", text[SAID_SIZE + RODT_ERROR_FIELD_SIZE], said[SAID_SIZE];
        if (error->status == RODT_OK || error->status == RODT_E_EMPTY) /* its reason says that nothing was given */
            continue;
        add_position(record, i, list);
        snprintf(text, sizeof text, "%s: %s", error->field, say_error(error, said));
        line(context, list, text);
    }
}

/* A hint names its wheel end, which a reason that many share does not. */
typedef struct hint_list {
    const vehicle_record *record;
    size_t end;
    vehicle_line line;
    void *context;
} hint_list;

static void list_hint(void *context, const char *label, const char *text)
{
    const hint_list *list = context;
    char position[LIST_SIZE] = "";
    (void)label;
    add_position(list->record, list->end, position);
    list->line(list->context, position, text);
}

void vehicle_each_reason(const vehicle_record *record, vehicle_line line, void *context)
{
    for (int reason = 0; reason < RODT_REASON_END; reason++) {
        for (size_t i = 0; i < record->count; i++)
            list_reason(record, i, reason, line, context);
    }
    for (size_t i = 0; i < record->count; i++)
        finding_each_hint(&record->findings[i], list_hint, &(hint_list){record, i, line, context});
    list_unreadable(record, line, context);
}

/* --- Axles -------------------------------------------------------------------------------------------- */

void vehicle_each_axle(const vehicle_record *record, vehicle_line line, void *context)
{
    const rodt_vehicle_finding *vehicle = &record->vehicle;
    char sentence[SAID_SIZE];
    rodt_message message;
    for (size_t i = 0; i < vehicle->axle_count; i++) {
        for (uint32_t bit = 1; bit <= RODT_AXLE_MISMATCH_STEERING_DEAD; bit <<= 1) {
            if (say_message(rodt_axle_mismatch_message(&vehicle->axles[i], bit, &message), &message, sentence,
                            sizeof sentence))
                line(context, "", sentence);
        }
    }
    if (vehicle->mixed_days > 0)
        line(context, "", say("the wheel ends are of more than one day, each judged by the law of its own; a count "
                              "over several days is no inspection"));
}

/* --- Next --------------------------------------------------------------------------------------------- */

static void list_advice_source(rodt_advice advice, vehicle_line line, void *context)
{
    RODT_ENUM32(rodt_evidence) evidence;
    char words[RODT_SOURCE_TEXT_SIZE], text[RODT_SOURCE_TEXT_SIZE + SAID_SIZE], said[SAID_SIZE];
    const rodt_source *source = rodt_advice_source(advice, &evidence);
    if (source == NULL)
        return;
    snprintf(text, sizeof text, "(%s; %s)", format_source(source, words), say_evidence(evidence, said));
    line(context, "", text);
}

void vehicle_each_advice(const vehicle_record *record, vehicle_line line, void *context)
{
    static const rodt_advice order[] = {RODT_ADVICE_REPAIR,        RODT_ADVICE_FIND_FAULT, RODT_ADVICE_ADJUST,
                                        RODT_ADVICE_FIND_ADJUSTER, RODT_ADVICE_MEASURE,    RODT_ADVICE_LOOK};
    for (size_t a = 0; a < COUNT_OF(order); a++) {
        char list[LIST_SIZE] = "", sentence[SAID_SIZE];
        rodt_message message;
        size_t members = 0;
        for (size_t i = 0; i < record->count; i++) {
            if (record->advice[i] != order[a])
                continue;
            add_position(record, i, list);
            members++;
        }
        if (members == 0 ||
            !say_message(rodt_advice_message(order[a], &message), &message, sentence, sizeof sentence))
            continue;
        line(context, name_ends(record, list, members), sentence);
        list_advice_source(order[a], line, context);
    }
}

/* --- Sources ------------------------------------------------------------------------------------------ */

static void list_source(const char *what, const rodt_source *source, rodt_evidence evidence, vehicle_line line,
                        void *context)
{
    char words[RODT_SOURCE_TEXT_SIZE], text[RODT_SOURCE_TEXT_SIZE + SAID_SIZE], said[SAID_SIZE];
    const char *named = format_source(source, words);
    snprintf(text, sizeof text, "%s (%s)", named, say_evidence(evidence, said));
    line(context, what, evidence != RODT_EVIDENCE_NONE ? text : named);
}

static void list_law_sources(const vehicle_record *record, vehicle_line line, void *context)
{
    for (size_t i = 0; i < record->count; i++) {
        const rodt_finding *finding = &record->findings[i];
        bool known = finding->law_source == NULL;
        for (size_t k = 0; k < i && !known; k++)
            known = record->findings[k].law_source == finding->law_source &&
                    record->findings[k].law_evidence == finding->law_evidence;
        if (!known)
            list_source(say("limits"), finding->law_source, finding->law_evidence, line, context);
    }
}

/* Where a carrier's own limit judged. */
static void list_own_sources(const vehicle_record *record, vehicle_line line, void *context)
{
    for (size_t i = 0; i < record->count; i++) {
        const rodt_finding *finding = &record->findings[i];
        bool known = finding->source == finding->law_source;
        for (size_t k = 0; k < i && !known; k++)
            known = record->findings[k].source == finding->source &&
                    record->findings[k].evidence == finding->evidence;
        if (!known)
            list_source(say("own limits"), finding->source, finding->evidence, line, context);
    }
}

void vehicle_each_source(const vehicle_record *record, vehicle_line line, void *context)
{
    list_law_sources(record, line, context);
    list_own_sources(record, line, context);
    for (int i = 0; i < RODT_COUNT_PART_END; i++) {
        const rodt_count_part part = (rodt_count_part)i;
        RODT_ENUM32(rodt_evidence) evidence;
        const rodt_source *source = rodt_count_part_source(part, &evidence);
        bool half = part == RODT_COUNT_PART_HALF && record->vehicle.count.tally.half == 0;
        bool chart = part == RODT_COUNT_PART_CHART && record->vehicle.count.outcome != RODT_OUTCOME_AMBIGUOUS;
        bool steering = part == RODT_COUNT_PART_STEERING;
        if (!half && !chart && !steering)
            list_source(rodt_count_part_text(part), source, evidence, line, context);
    }
}

/* --- Cautions ----------------------------------------------------------------------------------------- */

const char *vehicle_warning(const rodt_vehicle_finding *vehicle)
{
    if (vehicle->out_of_adjustment + vehicle->inoperative + vehicle->mismatched_axles == 0)
        return vehicle->undetermined + vehicle->count.unmeasured > 0 ? say("Do not drive it until this is settled.")
                                                                     : NULL;
    return say("Do not drive it: report it and have it repaired. Every brake over its limit is a violation by itself, "
               "below the criterion too.");
}

const char *vehicle_caution(void)
{
    return say("Chock the wheels. Never get under a vehicle that can roll, never open a spring brake. The cited law "
               "and a licensed inspector decide.");
}

int vehicle_status(const rodt_vehicle_finding *vehicle)
{
    if (vehicle->out_of_adjustment + vehicle->inoperative + vehicle->mismatched_axles > 0)
        return STATUS_OUT;
    return vehicle->undetermined + vehicle->count.unmeasured > 0 ? STATUS_UNDETERMINED : STATUS_GOOD;
}

rodt_status vehicle_combine(vehicle_record *record, uint32_t brakes)
{
    record->brakes_given = brakes > 0;
    return rodt_vehicle_combine(record->ends, record->count, brakes, record->findings,
                                record->advice, &record->vehicle, NULL);
}
