/* SPDX-License-Identifier: Apache-2.0 */
/* The judgement of a vehicle for a person in a yard: the outcome, the wheel ends, what is odd, what to do next. */
#include "vehicle.h"

#include <string.h>

#define INDENT 10
#define LIST_SIZE 400

/* --- The outcome -------------------------------------------------------------------------------------- */

static bool steering_dead(const rodt_vehicle_finding *vehicle)
{
    for (size_t i = 0; i < vehicle->axle_count; i++) {
        if ((vehicle->axles[i].odd & RODT_AXLE_STEERING_DEAD) != 0)
            return true;
    }
    return false;
}

static const char *headline(const rodt_vehicle_finding *vehicle, paint_kind *paint)
{
    bool some_out = vehicle->out_of_adjustment + vehicle->inoperative > 0;
    *paint = PAINT_BAD;
    if (vehicle->count.outcome == RODT_OUTCOME_OUT_OF_SERVICE)
        return "OUT OF SERVICE";
    if (steering_dead(vehicle))
        return "OUT OF SERVICE IF AXLE 1 STEERS";
    if (vehicle->count.outcome == RODT_OUTCOME_AMBIGUOUS)
        return "AMBIGUOUS: OUT OF SERVICE BY PERCENT, NOT BY THE CHART";
    if (some_out && vehicle->count.outcome == RODT_OUTCOME_UNDETERMINED)
        return "DEFECTIVE: WHETHER OUT OF SERVICE IS OPEN";
    if (some_out)
        return "DEFECTIVE, BELOW THE OUT-OF-SERVICE CRITERION";
    if (vehicle->odd_axles > 0)
        return "DEFECTIVE: AN AXLE DOES NOT MATCH";
    *paint = PAINT_OPEN;
    if (vehicle->undetermined + vehicle->count.unmeasured > 0)
        return "UNDETERMINED: NOT EVERY BRAKE IS PROVEN";
    *paint = PAINT_GOOD;
    return "ALL BRAKES IN ADJUSTMENT";
}

static void print_outcome(const vehicle_record *record)
{
    const rodt_vehicle_finding *vehicle = &record->vehicle;
    char sentence[RODT_SENTENCE_SIZE];
    paint_kind paint;
    const char *words = headline(vehicle, &paint);
    print_painted(stdout, paint, words);
    putchar('\n');
    if (rodt_count_write(&vehicle->count, sentence, sizeof sentence) == RODT_OK)
        print_wrapped(stdout, "Count", INDENT, sentence);
    snprintf(sentence, sizeof sentence,
             "%lu in adjustment, %lu out (%lu by 1/4 or more, %lu by less), %lu inoperative, %lu undetermined, %lu not "
             "given",
             (unsigned long)vehicle->in_adjustment, (unsigned long)vehicle->out_of_adjustment,
             (unsigned long)(vehicle->count.tally.full - vehicle->count.tally.inoperative),
             (unsigned long)vehicle->count.tally.half, (unsigned long)vehicle->inoperative,
             (unsigned long)vehicle->undetermined, (unsigned long)vehicle->count.unmeasured);
    print_wrapped(stdout, "Brakes", INDENT, sentence);
    snprintf(sentence, sizeof sentence, "%lu brakes are counted: %s", (unsigned long)vehicle->count.brakes,
             record->brakes_said ? "their number was said" : "both ends of every axle in the file");
    print_wrapped(stdout, "", INDENT, sentence);
    if (vehicle->count.outcome == RODT_OUTCOME_AMBIGUOUS)
        print_wrapped(stdout, "", INDENT, "No public text settles whether a half brake that reaches the percentage is "
                                          "enough. Take it as out of service.");
}

/* --- Wheel ends --------------------------------------------------------------------------------------- */

/* As the tape shows it: parts of an inch by halves, other parts as a decimal, or millimetres. */
static const char *tape_word(const rodt_finding *finding, rodt_length length, char word[WORD_SIZE])
{
    if (!rodt_length_given(length))
        return "-";
    bool mm = finding->unit != RODT_UNIT_INCH;
    if (!mm && length.den <= 128 && (length.den & (length.den - 1)) == 0)
        return length_word(length, word);
    char digits[WORD_SIZE - 4];
    rodt_status status = rodt_length_write_decimal(length, mm ? RODT_UNIT_MM : RODT_UNIT_INCH, mm ? 2 : 3,
                                                   RODT_ROUND_HALF_EVEN, digits, sizeof digits);
    if (status == RODT_OK)
        snprintf(word, WORD_SIZE, "%s%s", digits, mm ? " mm" : "");
    return status == RODT_OK ? word : "-";
}

static void print_margin(const rodt_finding *finding)
{
    char word[WORD_SIZE], cell[WORD_SIZE + 16] = "-";
    rodt_length margin = finding->margin;
    bool over = margin.num < 0;
    if (finding->verdict == RODT_INOPERATIVE)
        snprintf(cell, sizeof cell, "did not move");
    else if (rodt_length_given(margin) && margin.num == 0)
        snprintf(cell, sizeof cell, "at the limit");
    else if (rodt_length_given(margin))
        snprintf(cell, sizeof cell, over ? "over by %s" : "%s to spare",
                 tape_word(finding, (rodt_length){over ? -margin.num : margin.num, margin.den}, word));
    printf("%-18s", cell);
}

static paint_kind paint_of(rodt_verdict verdict)
{
    switch (verdict) {
    case RODT_IN_ADJUSTMENT: return PAINT_GOOD;
    case RODT_UNDETERMINED: return PAINT_OPEN;
    case RODT_OUT_OF_ADJUSTMENT:
    case RODT_INOPERATIVE: break;
    }
    return PAINT_BAD;
}

static void print_end(const vehicle_record *record, size_t end)
{
    const rodt_finding *finding = &record->findings[end];
    char position[RODT_POSITION_TEXT_SIZE] = "-", chamber[RODT_CHAMBER_TEXT_SIZE], stroke[WORD_SIZE], limit[WORD_SIZE];
    (void)rodt_position_write(record->ends[end].position, position, sizeof position);
    printf("%-4s%-21.20s %-10s%-7s", position, chamber_word(&finding->chamber, chamber),
           tape_word(finding, finding->applied_stroke, stroke), length_word(finding->limit, limit));
    print_margin(finding);
    print_painted(stdout, paint_of(finding->verdict), rodt_verdict_name(finding->verdict));
    putchar('\n');
}

static void print_ends(const vehicle_record *record)
{
    printf("\n%-4s%-22s%-10s%-7s%-18s%s\n", "", "Chamber", "Stroke", "Limit", "Margin", "Verdict");
    for (size_t i = 0; i < record->vehicle.axle_count; i++) {
        const rodt_axle_finding *axle = &record->vehicle.axles[i];
        if (axle->left < record->count)
            print_end(record, axle->left);
        if (axle->right < record->count)
            print_end(record, axle->right);
    }
}

/* --- What several wheel ends have in common ----------------------------------------------------------- */

static void add_position(const vehicle_record *record, size_t end, char list[LIST_SIZE])
{
    char position[RODT_POSITION_TEXT_SIZE];
    size_t used = strlen(list);
    if (rodt_position_write(record->ends[end].position, position, sizeof position) == RODT_OK)
        snprintf(list + used, LIST_SIZE - used, "%s%s", used == 0 ? "" : " ", position);
}

static void print_group(const vehicle_record *record, const char *list, size_t members, const char *text)
{
    char line[LIST_SIZE + RODT_SENTENCE_SIZE + 8];
    snprintf(line, sizeof line, "%s: %s", members == record->count && members > 1 ? "all" : list, text);
    print_wrapped(stdout, "  ", 4, line);
}

/* The verdict, the margin and the advice say these already. */
static bool is_said(rodt_reason reason)
{
    return reason == RODT_REASON_OVER_LIMIT || reason == RODT_REASON_AT_LIMIT || reason == RODT_REASON_WITHIN_LIMIT ||
           reason == RODT_REASON_NO_MOVEMENT;
}

static bool sentence_of(const vehicle_record *record, size_t end, int reason, char sentence[RODT_SENTENCE_SIZE])
{
    return !is_said((rodt_reason)reason) &&
           rodt_finding_reason_write(&record->findings[end], (rodt_reason)reason, sentence, RODT_SENTENCE_SIZE) ==
               RODT_OK;
}

/* One sentence once, with every wheel end that it is about; done by the first of them. */
static void print_reason(const vehicle_record *record, size_t end, int reason)
{
    char sentence[RODT_SENTENCE_SIZE], other[RODT_SENTENCE_SIZE], list[LIST_SIZE] = "";
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
    print_group(record, list, members, sentence);
}

static void print_unreadable(const vehicle_record *record)
{
    for (size_t i = 0; i < record->count; i++) {
        const rodt_error *error = &record->errors[i];
        char list[LIST_SIZE] = "", text[RODT_SENTENCE_SIZE];
        if (error->status == RODT_OK)
            continue;
        add_position(record, i, list);
        snprintf(text, sizeof text, "%s: %s", error->field, error->text);
        print_group(record, list, 1, text);
    }
}

static void print_reasons(const vehicle_record *record)
{
    uint64_t all = 0;
    for (size_t i = 0; i < record->count; i++)
        all |= record->findings[i].reasons;
    for (int reason = 0; reason < RODT_REASON_END; reason++)
        all &= is_said((rodt_reason)reason) ? ~((uint64_t)1 << reason) : UINT64_MAX;
    if (all == 0)
        return;
    fputs("\nTo know\n", stdout);
    for (int reason = 0; reason < RODT_REASON_END; reason++) {
        for (size_t i = 0; i < record->count; i++)
            print_reason(record, i, reason);
    }
    print_unreadable(record);
}

/* --- Axles -------------------------------------------------------------------------------------------- */

static void print_axles(const vehicle_record *record)
{
    const rodt_vehicle_finding *vehicle = &record->vehicle;
    char sentence[RODT_SENTENCE_SIZE];
    bool begun = false;
    for (size_t i = 0; i < vehicle->axle_count; i++) {
        for (uint32_t bit = 1; bit <= RODT_AXLE_STEERING_DEAD; bit <<= 1) {
            if (rodt_axle_write(&vehicle->axles[i], bit, sentence, sizeof sentence) != RODT_OK)
                continue;
            fputs(begun ? "" : "\nAxles\n", stdout);
            begun = true;
            print_wrapped(stdout, "  ", 4, sentence);
        }
    }
    if (vehicle->mixed_days > 0) {
        fputs(begun ? "" : "\nAxles\n", stdout);
        print_wrapped(stdout, "  ", 4, "the wheel ends are of more than one day, each judged by the law of its own; a "
                                       "count over several days is no inspection");
    }
}

/* --- Next --------------------------------------------------------------------------------------------- */

static void print_advice_source(rodt_advice advice)
{
    rodt_evidence evidence;
    char words[RODT_SOURCE_TEXT_SIZE], line[RODT_SOURCE_TEXT_SIZE + 40];
    const rodt_source *source = rodt_advice_source(advice, &evidence);
    if (source == NULL)
        return;
    snprintf(line, sizeof line, "(%s; %s)", source_words(source, words), rodt_evidence_text(evidence));
    print_wrapped(stdout, "    ", 4, line);
}

static void print_next(const vehicle_record *record)
{
    static const rodt_advice order[] = {RODT_ADVICE_REPAIR,        RODT_ADVICE_FIND_FAULT, RODT_ADVICE_ADJUST,
                                        RODT_ADVICE_FIND_ADJUSTER, RODT_ADVICE_MEASURE,    RODT_ADVICE_LOOK};
    bool begun = false;
    for (size_t a = 0; a < COUNT_OF(order); a++) {
        char list[LIST_SIZE] = "";
        size_t members = 0;
        for (size_t i = 0; i < record->count; i++) {
            if (record->advice[i] != order[a])
                continue;
            add_position(record, i, list);
            members++;
        }
        if (members == 0)
            continue;
        fputs(begun ? "" : "\nNext\n", stdout);
        begun = true;
        print_group(record, list, members, rodt_advice_text(order[a]));
        print_advice_source(order[a]);
    }
}

/* --- Sources ------------------------------------------------------------------------------------------ */

static void print_source(const char *what, const rodt_source *source, rodt_evidence evidence)
{
    char words[RODT_SOURCE_TEXT_SIZE], line[2 * RODT_SOURCE_TEXT_SIZE];
    snprintf(line, sizeof line, "%s: %s (%s)", what, source_words(source, words), rodt_evidence_text(evidence));
    print_wrapped(stdout, "  ", 4, line);
}

static void print_limit_sources(const vehicle_record *record)
{
    for (size_t i = 0; i < record->count; i++) {
        const rodt_finding *finding = &record->findings[i];
        bool known = finding->source == NULL;
        for (size_t k = 0; k < i && !known; k++)
            known = record->findings[k].source == finding->source &&
                    record->findings[k].evidence == finding->evidence;
        if (!known)
            print_source("limits", finding->source, finding->evidence);
    }
}

static void print_sources(const vehicle_record *record)
{
    fputs("\nWhere it comes from\n", stdout);
    print_limit_sources(record);
    for (size_t part = 0; part < RODT_COUNT_PARTS; part++) {
        rodt_evidence evidence;
        const rodt_source *source = rodt_count_source(part, &evidence);
        bool half = part == 2 && record->vehicle.count.tally.half == 0;
        bool chart = part == 3 && record->vehicle.count.outcome != RODT_OUTCOME_AMBIGUOUS;
        bool steering = part == 4;
        if (!half && !chart && !steering)
            print_source(rodt_count_words(part), source, evidence);
    }
}

void vehicle_print(const vehicle_record *record)
{
    const rodt_vehicle_finding *vehicle = &record->vehicle;
    print_outcome(record);
    print_ends(record);
    print_axles(record);
    print_next(record);
    print_reasons(record);
    print_sources(record);
    putchar('\n');
    if (vehicle->out_of_adjustment + vehicle->inoperative + vehicle->odd_axles > 0)
        print_wrapped(stdout, "", 0, "Do not drive it: report it and have it repaired. Every brake over its limit is a "
                                     "violation by itself, below the criterion too.");
    print_wrapped(stdout, "", 0,
                  "Chock the wheels. Never get under a vehicle that can roll, never open a spring brake. The cited law "
                  "and a licensed inspector decide.");
}
