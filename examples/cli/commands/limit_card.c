/* SPDX-License-Identifier: Apache-2.0 */
/* What the page for the cab and its drawing say. */
#include "commands/limit_card.h"
#include "commands/limits_table.h"
#include "ui/compiler.h"
#include "ui/format.h"
#include "ui/language.h"

#include <string.h>

limit_card limit_card_of(const rule_context *context, FILE *to)
{
    return (limit_card){.context = context, .law = law_of(context), .to = to};
}

/* --- Sizes ------------------------------------------------------------------------------------------- */

/* The rows of the law name the sizes; each size once. */
static bool is_first(const rodt_rules *law, size_t index)
{
    const rodt_limit *row = rodt_rules_limit_at(law, index);
    for (size_t i = 0; i < index; i++) {
        const rodt_limit *before = rodt_rules_limit_at(law, i);
        if (before->family == row->family && strcmp(before->size, row->size) == 0)
            return false;
    }
    return true;
}

const rodt_limit *card_next_size(const limit_card *of, bool clamp, size_t *index)
{
    const rodt_limit *row;
    while ((row = rodt_rules_limit_at(of->law, (*index)++)) != NULL) {
        if ((row->family == RODT_FAMILY_CLAMP) == clamp && is_first(of->law, *index - 1))
            return row;
    }
    return NULL;
}

size_t card_count_sizes(const limit_card *of, bool clamp)
{
    size_t count = 0;
    for (size_t i = 0; card_next_size(of, clamp, &i) != NULL;)
        count++;
    return count;
}

/* --- Limits ------------------------------------------------------------------------------------------ */

const char *const card_column_titles[CARD_COLUMNS] = {TO_SAY("Standard"), TO_SAY("Long stroke"),
                                                       TO_SAY("Long, marked 3 in")};

static bool find_limit(limit_card *of, const rodt_limit *row, rodt_stroke_class stroke_class, bool marked,
                       rodt_limit_answer *out)
{
    rodt_chamber chamber = {.family = row->family, .stroke_class = stroke_class};
    const rodt_length three = {3, 1};
    snprintf(chamber.size, sizeof chamber.size, "%s", row->size);
    if (marked)
        chamber.rated_stroke = three;
    bool found = rodt_rules_find_limit(of->context->rules, &chamber, of->context->day, out, NULL) == RODT_OK &&
                 rodt_length_given(out->limit) &&
                 (!marked || (out->law_row != NULL && rodt_length_given(out->law_row->rated_stroke)));
    of->seen |= found ? 1u << out->evidence : 0;
    return found;
}

/* A limit in millimetres is never laxer than in inches. */
typedef struct figure_parts {
    char inches[WORD_SIZE], mm[WORD_SIZE], mark[4];
} figure_parts;

static figure_parts parts_of(const rodt_limit_answer *answer)
{
    figure_parts out;
    (void)format_length(answer->limit, out.inches);
    const char *mark = evidence_mark(answer->evidence);
    snprintf(out.mark, sizeof out.mark, "%s%s", mark[0] != '\0' ? " " : "", mark);
    if (rodt_length_format_decimal(answer->limit, RODT_UNIT_MM, 1, RODT_ROUNDING_DOWN, out.mm, sizeof out.mm, NULL) !=
        RODT_OK)
        out.mm[0] = '\0';
    return out;
}

bool card_find_figure(limit_card *of, const rodt_limit *row, card_column column, card_figure *out)
{
    rodt_limit_answer answer;
    if (!find_limit(of, row, column == CARD_STANDARD ? RODT_STROKE_CLASS_STANDARD : RODT_STROKE_CLASS_LONG,
                    column == CARD_LONG_MARKED, &answer))
        return false;
    const figure_parts parts = parts_of(&answer);
    snprintf(out->inches, sizeof out->inches, say("%s in%s"), parts.inches, parts.mark);
    snprintf(out->mm, sizeof out->mm, "%s mm", parts.mm);
    return true;
}

bool card_format_other(limit_card *of, const rodt_limit *row, char text[CARD_TEXT_SIZE])
{
    rodt_limit_answer answer;
    char name[RODT_CHAMBER_TEXT_SIZE];
    rodt_chamber chamber = {.family = row->family};
    if (!find_limit(of, row, RODT_STROKE_CLASS_UNKNOWN, false, &answer))
        return false;
    const figure_parts parts = parts_of(&answer);
    snprintf(chamber.size, sizeof chamber.size, "%s", row->size);
    snprintf(text, CARD_TEXT_SIZE, say("%s: %s in%s, %s mm"), format_chamber(&chamber, name), parts.inches, parts.mark,
             parts.mm);
    return true;
}

/* --- Signs of a long stroke -------------------------------------------------------------------------- */

const card_sign card_signs[CARD_SIGNS] = {
    {580, 20, "505 425 150 150", "<circle cx=\"580\" cy=\"500\" r=\"70\"/><circle cx=\"580\" cy=\"500\" r=\"34\"/>",
     "", 0, 0, TO_SAY("round ports: no sign")},
    {950, 13, "875 425 150 150",
     "<rect x=\"880\" y=\"430\" width=\"140\" height=\"140\"/><circle cx=\"950\" cy=\"500\" r=\"34\"/>", "", 0, 0,
     TO_SAY("square ports")},
    {1220, 13, "1120 425 200 150",
     "<path d=\"M1130 560h180l-35-120h-110z\"/><circle cx=\"1220\" cy=\"466\" r=\"14\"/>", "3.0", 546, 42,
     TO_SAY("trapezoid tag")},
    {1620, 22, "1415 425 410 150", "<rect x=\"1420\" y=\"430\" width=\"400\" height=\"140\" rx=\"20\"/>", "30 L", 530,
     80, TO_SAY("L or LS in the mark")}};

/* --- Sentences --------------------------------------------------------------------------------------- */

const char *card_format_rules(const limit_card *of, char text[CARD_TEXT_SIZE])
{
    snprintf(text, CARD_TEXT_SIZE, say("%s: %s"), rodt_rules_id(of->context->rules), say(rodt_rules_title(of->law)));
    return text;
}

const char *card_format_conditions(const limit_card *of, char text[CARD_TEXT_SIZE])
{
    char from[WORD_SIZE], until[WORD_SIZE];
    if (rodt_pressure_given(rodt_rules_pressure_from(of->law)))
        snprintf(text, CARD_TEXT_SIZE,
                 say("Reservoirs %s to %s psi, engine off, parking brake released, wheels chocked, pedal all the way "
                     "down."),
                 format_pressure(rodt_rules_pressure_from(of->law), from),
                 format_pressure(rodt_rules_pressure_until(of->law), until));
    else
        snprintf(text, CARD_TEXT_SIZE, "%s",
                 say("Engine off, parking brake released, wheels chocked, pedal all the way down."));
    return text;
}

const char *card_comparison(const limit_card *of)
{
    return rodt_rules_at_limit_passes(of->law)
               ? say("Stroke = applied reading - released reading. A stroke exactly at the limit passes. No sign of "
                     "a long stroke: standard.")
               : say("Stroke = applied reading - released reading. A stroke exactly at the limit fails. No sign of "
                     "a long stroke: standard.");
}

const char *card_format_marks(const limit_card *of, char text[CARD_TEXT_SIZE])
{
    static const rodt_evidence kinds[] = {RODT_EVIDENCE_FROM_MEMORY, RODT_EVIDENCE_COMMON_PRACTICE};
    text[0] = '\0';
    for (size_t i = 0; i < COUNT_OF(kinds); i++) {
        const char *note = evidence_mark_note(kinds[i], of->seen);
        size_t used = strlen(text);
        if (note != NULL)
            snprintf(text + used, CARD_TEXT_SIZE - used, "%s%s %s.", used > 0 ? " " : "", evidence_mark(kinds[i]),
                     note);
    }
    return text;
}

const char *card_format_sources(const limit_card *of, char text[CARD_TEXT_SIZE])
{
    char source[RODT_SOURCE_TEXT_SIZE], said[SAID_SIZE], words[RODT_SOURCE_TEXT_SIZE + SAID_SIZE + 4];
    const rodt_limit *row;
    text[0] = '\0';
    for (size_t i = 0; (row = rodt_rules_limit_at(of->law, i)) != NULL; i++) {
        size_t used = strlen(text);
        if (!is_limit_in_force(row, of->context->day))
            continue;
        snprintf(words, sizeof words, "%s (%s)", format_source(row->source, source),
                 say_evidence((rodt_evidence)row->evidence, said));
        if (strstr(text, words) == NULL && used + strlen(words) + 3 < CARD_TEXT_SIZE)
            snprintf(text + used, CARD_TEXT_SIZE - used, "%s%s", used > 0 ? "; " : "", words);
    }
    return text;
}

const char *card_format_foot(const limit_card *of, char text[CARD_TEXT_SIZE])
{
    char day[WORD_SIZE];
    snprintf(text, CARD_TEXT_SIZE,
             say("Millimetres are rounded down. Limits of %s; rodtravel %s, tables of %s. The cited law and a "
                 "licensed inspector decide."),
             format_date(of->context->day, day), rodt_version(), rodt_tables_edition());
    return text;
}
