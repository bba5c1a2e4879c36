/* SPDX-License-Identifier: Apache-2.0 */
/* One finding for a person: its verdict, its bar, its reasons by weight, and what else a reading can mean. */
#include "ui/compiler.h"
#include "ui/language.h"
#include "vehicle/vehicle.h"

#include <stdio.h>
#include <string.h>

/* --- The verdict -------------------------------------------------------------------------------------- */

const char *verdict_words(rodt_verdict verdict)
{
    switch (verdict) {
    case RODT_VERDICT_IN_ADJUSTMENT: return say("in adjustment");
    case RODT_VERDICT_OUT_OF_ADJUSTMENT: return say("out of adjustment");
    case RODT_VERDICT_INOPERATIVE: return say("inoperative");
    case RODT_VERDICT_UNDETERMINED: break;
    }
    return say("undetermined");
}

paint_kind verdict_paint(const rodt_finding *finding)
{
    switch (finding->verdict) {
    case RODT_VERDICT_IN_ADJUSTMENT:
        return rodt_finding_has(finding, RODT_REASON_AT_LIMIT) || rodt_finding_has(finding, RODT_REASON_HARDLY_MOVED)
                   ? PAINT_EDGE : PAINT_GOOD;
    case RODT_VERDICT_UNDETERMINED: return PAINT_OPEN;
    case RODT_VERDICT_OUT_OF_ADJUSTMENT:
    case RODT_VERDICT_INOPERATIVE: break;
    }
    return PAINT_BAD;
}

/* --- The bar ------------------------------------------------------------------------------------------ */

/* The limit is at three quarters of the bar. */
#define BAR_LIMIT(width) ((int64_t)(width) * 3 / 4)

/* How many of the columns before the limit a stroke fills; less than all below it, more than all above it. */
static int64_t filled_columns(const rodt_finding *finding, unsigned width)
{
    rodt_length stroke = finding->applied_stroke, limit = finding->limit, part;
    int64_t whole = BAR_LIMIT(width);
    if (!rodt_length_given(stroke) || !rodt_length_given(limit) || limit.num <= 0 ||
        rodt_length_scale(stroke, (rodt_ratio){limit.den * whole, limit.num}, &part) != RODT_OK)
        return 0;
    int64_t filled = part.num / part.den;
    int order = rodt_length_compare(stroke, limit);
    if (order < 0 && filled >= whole)
        filled = whole - 1;
    if (order > 0 && filled <= whole)
        filled = whole + 1;
    return filled > width ? width : filled;
}

/* Signs of a column before the limit, of one that proves nothing, of the limit, of one beyond it, and of none. */
enum { SIGN_WITHIN, SIGN_OPEN, SIGN_LIMIT, SIGN_BEYOND, SIGN_EMPTY };

void finding_bar(const rodt_finding *finding, unsigned width, bool plain, char text[BAR_SIZE])
{
    static const char *const signs[2][5] = {
        {"\xE2\x96\x88", "\xE2\x96\x92", "\xE2\x94\x83", "\xE2\x96\x93", "\xC2\xB7"}, {"#", "?", "|", "!", "."}};
    int64_t filled = filled_columns(finding, width);
    bool open = finding->verdict == RODT_VERDICT_UNDETERMINED;
    size_t used = 0;
    for (int64_t i = 0; i < width && used < BAR_SIZE; i++) {
        int sign = i >= filled ? SIGN_EMPTY : open ? SIGN_OPEN : i >= BAR_LIMIT(width) ? SIGN_BEYOND : SIGN_WITHIN;
        const char *mark = i == BAR_LIMIT(width) ? signs[plain][SIGN_LIMIT] : "";
        used += (size_t)snprintf(text + used, BAR_SIZE - used, "%s%s", mark, signs[plain][sign]);
    }
}

/* --- Reasons ------------------------------------------------------------------------------------------ */

/* The deciding ones are first, whatever the verdict: only reasons that a finding has are shown. */
static const rodt_reason weights[] = {
    RODT_REASON_LOST_BLANK, RODT_REASON_READINGS_SWAPPED, RODT_REASON_NO_MOVEMENT, RODT_REASON_HARDLY_MOVED,
    RODT_REASON_CHAMBER_MISSING, RODT_REASON_RELEASED_MISSING, RODT_REASON_APPLIED_MISSING,
    RODT_REASON_CHAMBER_UNREADABLE, RODT_REASON_RELEASED_UNREADABLE, RODT_REASON_APPLIED_UNREADABLE,
    RODT_REASON_OTHER_UNREADABLE, RODT_REASON_SPREADSHEET_DATE, RODT_REASON_DATE_UNREADABLE,
    RODT_REASON_DATE_AMBIGUOUS, RODT_REASON_RULES_NOT_IN_FORCE, RODT_REASON_NO_PUBLISHED_LIMIT,
    RODT_REASON_ENGINE_RUNNING, RODT_REASON_SPRING_BRAKE_APPLIED, RODT_REASON_PRESSURE_LOW, RODT_REASON_PRESSURE_HIGH,
    RODT_REASON_BEYOND_RATED_STROKE, RODT_REASON_MAJOR_DEFECT, RODT_REASON_OVER_LIMIT, RODT_REASON_OVER_OWN_LIMIT,
    RODT_REASON_AT_LIMIT, RODT_REASON_LIMIT_COMMON_PRACTICE, RODT_REASON_PRINTED_MM_DIFFERS,
    RODT_REASON_LIMIT_UNCONFIRMED, RODT_REASON_CONFLICTING_MARKS, RODT_REASON_ASSUMED_STANDARD,
    RODT_REASON_PRESSURE_NOT_RECORDED, RODT_REASON_ASSUMED_CLAMP, RODT_REASON_LIMIT_FROM_RATED,
    RODT_REASON_LIMIT_MARKED, RODT_REASON_DRUM_HOT, RODT_REASON_WITHIN_LIMIT};

bool finding_reason(const rodt_finding *finding, rodt_reason reason, char sentence[SAID_SIZE])
{
    rodt_message message;
    return say_message(rodt_finding_reason_message(finding, reason, &message), &message, sentence, SAID_SIZE);
}

bool finding_is_routine(const rodt_finding *finding, rodt_reason reason)
{
    rodt_message message;
    if (rodt_finding_reason_message(finding, reason, &message) != RODT_OK)
        return false;
    return message.code == RODT_MESSAGE_STROKE_ASSUMED_CLAMP_STRICT ||
           message.code == RODT_MESSAGE_STROKE_ASSUMED_CLAMP_OPEN || reason == RODT_REASON_WITHIN_LIMIT ||
           (reason == RODT_REASON_OVER_LIMIT && finding->margin.num < 0) ||
           message.code == RODT_MESSAGE_STROKE_ASSUMED_STANDARD_WITHIN ||
           (reason == RODT_REASON_AT_LIMIT && finding->verdict == RODT_VERDICT_UNDETERMINED);
}

size_t finding_each_reason(const rodt_finding *finding, size_t most, vehicle_line line, void *context)
{
    size_t shown = 0, left = 0;
    for (size_t i = 0; i < COUNT_OF(weights); i++) {
        char sentence[SAID_SIZE];
        if (!finding_reason(finding, weights[i], sentence))
            continue;
        if (shown == most || (most != FINDING_ALL_REASONS && finding_is_routine(finding, weights[i]))) {
            left++;
            continue;
        }
        line(context, "", sentence);
        shown++;
    }
    return left;
}

/* --- What else it can mean ---------------------------------------------------------------------------- */

bool finding_is_beyond_travel(const rodt_finding *finding)
{
    const rodt_chamber *chamber = &finding->chamber;
    if (chamber->stroke_class == RODT_STROKE_CLASS_LONG || rodt_length_given(chamber->rated_stroke))
        return false;
    for (size_t i = 0; i < rodt_chamber_row_count(); i++) {
        const rodt_chamber_row *row = rodt_chamber_row_at(i);
        if (row->family == chamber->family && strcmp(row->size, chamber->size) == 0 &&
            rodt_length_given(row->standard_rated_stroke))
            return rodt_length_compare(finding->applied_stroke, row->standard_rated_stroke) > 0;
    }
    return false;
}

/* A chamber of the same name that has a marked stroke, and with it a limit that the stroke keeps. */
static const rodt_limit *row_by_rated(const rodt_finding *finding)
{
    const rodt_limit *row, *own = finding->law_row;
    if (own == NULL || finding->margin.num >= 0 || rodt_length_given(finding->chamber.rated_stroke))
        return NULL;
    const rodt_rules *law = rodt_rules_law(finding->rules);
    for (size_t i = 0; (row = rodt_rules_limit_at(law != NULL ? law : finding->rules, i)) != NULL; i++) {
        if (row->family == own->family && row->stroke_class == own->stroke_class && strcmp(row->size, own->size) == 0 &&
            rodt_length_given(row->rated_stroke) && !rodt_date_given(row->until) &&
            rodt_length_compare(finding->applied_stroke, row->limit) <= 0)
            return row;
    }
    return NULL;
}

static void hint_blank(const char *name, rodt_length read, const rodt_length meant[2], vehicle_line line, void *context)
{
    char text[SAID_SIZE], word[WORD_SIZE], first[WORD_SIZE], second[WORD_SIZE];
    if (!rodt_length_given(meant[0]))
        return;
    snprintf(text, sizeof text,
             rodt_length_given(meant[1]) ? say("%s was read as %s. If you meant %s or %s, write it with its blank.")
                                         : say("%s was read as %s. If you meant %s, write it with its blank."),
             name, format_length(read, word), format_length(meant[0], first), format_length(meant[1], second));
    line(context, "", text);
}

void finding_each_hint(const rodt_finding *finding, vehicle_line line, void *context)
{
    char text[SAID_SIZE], limit[WORD_SIZE], rated[WORD_SIZE], chamber[RODT_CHAMBER_TEXT_SIZE];
    if (!rodt_finding_has(finding, RODT_REASON_LOST_BLANK)) {
        hint_blank(say("The released reading"), finding->released, finding->other_released, line, context);
        hint_blank(say("The applied reading"), finding->applied, finding->other_applied, line, context);
    }
    const rodt_limit *row = row_by_rated(finding);
    if (row != NULL) {
        snprintf(text, sizeof text,
                 say("Read the stroke stamped on the housing: a %s stamped %s in has the limit %s."),
                 format_chamber(&finding->chamber, chamber), format_length(row->rated_stroke, rated),
                 format_length(row->limit, limit));
        line(context, "", text);
    }
    if (!rodt_finding_has(finding, RODT_REASON_BEYOND_RATED_STROKE) && finding_is_beyond_travel(finding))
        line(context, "", say("That is more than the full travel of a standard chamber of this size: look at the "
                              "chamber and the tape again."));
}
