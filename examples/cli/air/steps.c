/* SPDX-License-Identifier: Apache-2.0 */
/* The sentences of a step: of one row with its figure, of several without it and the figures listed below. */
#include "air/steps.h"
#include "air/air.h"
#include "ui/format.h"
#include "ui/language.h"
#include "ui/wrap.h"

#include <stdio.h>
#include <string.h>

typedef struct step_query {
    rodt_step step;
    const rodt_rules *rules;
    const rodt_air_reading *vehicle;
} step_query;

static const rodt_air_limit *row_at(const step_query *of, size_t index)
{
    return rodt_step_row_at(of->step, of->rules, of->vehicle, index);
}

static const char *sentence(const step_query *of, rodt_step_part part, const rodt_air_limit *row,
                            char text[STEP_TEXT_SIZE])
{
    rodt_message message;
    (void)say_message(rodt_step_message(of->step, part, of->rules, row, &message), &message, text, STEP_TEXT_SIZE);
    return text;
}

/* True if the part says the same by every row. */
static bool is_one_sentence(const step_query *of, rodt_step_part part)
{
    char first[STEP_TEXT_SIZE], other[STEP_TEXT_SIZE];
    const rodt_air_limit *row;
    sentence(of, part, row_at(of, 0), first);
    for (size_t i = 1; (row = row_at(of, i)) != NULL; i++) {
        if (strcmp(first, sentence(of, part, row, other)) != 0)
            return false;
    }
    return true;
}

/* What one of several rows adds to a part. */
static const char *figure_of(const rodt_air_limit *row, rodt_step_part part, char text[STEP_TEXT_SIZE])
{
    if (part == RODT_STEP_PART_DO)
        return say_table_text(row->setup);
    if (part == RODT_STEP_PART_GOOD)
        return say_table_text(row->published);
    rodt_message message;
    if (part != RODT_STEP_PART_DEFECTIVE || row->kind == RODT_AIR_KIND_USUAL ||
        !say_message(rodt_air_limit_edge_message(row, &message), &message, text, STEP_TEXT_SIZE))
        text[0] = '\0';
    return text;
}

static void list_rows(const step_query *of, rodt_step_part part, step_line *line, void *context)
{
    char text[STEP_TEXT_SIZE] = "", whom[AIR_WHOM_SIZE];
    const rodt_air_limit *row;
    for (size_t i = 0; (row = row_at(of, i)) != NULL; i++) {
        const char *figure = figure_of(row, part, text);
        if (figure[0] != '\0')
            line(context, part, air_row_whom(row, whom)[0] != '\0' ? whom : say("any vehicle"), figure);
    }
}

const char *step_title(rodt_step step, const rodt_rules *rules, char text[STEP_TEXT_SIZE])
{
    const step_query of = {.step = step, .rules = rules};
    return sentence(&of, RODT_STEP_PART_TITLE, NULL, text);
}

void each_step_line(rodt_step step, const rodt_rules *rules, const rodt_air_reading *vehicle, step_line *line,
                    void *context)
{
    const step_query of = {step, rules, vehicle};
    char text[STEP_TEXT_SIZE];
    for (int i = RODT_STEP_PART_DO; i < RODT_STEP_PART_END; i++) {
        rodt_step_part part = (rodt_step_part)i;
        bool one = is_one_sentence(&of, part);
        line(context, part, "", sentence(&of, part, one ? row_at(&of, 0) : NULL, text));
        if (!one)
            list_rows(&of, part, line, context);
    }
}

void format_step_sources(rodt_step step, const rodt_rules *rules, const rodt_air_reading *vehicle,
                         char text[STEP_TEXT_SIZE])
{
    const step_query of = {step, rules, vehicle};
    const rodt_air_limit *row;
    text[0] = '\0';
    for (size_t i = 0; (row = row_at(&of, i)) != NULL; i++) {
        char words[RODT_SOURCE_TEXT_SIZE], said[SAID_SIZE], line[RODT_SOURCE_TEXT_SIZE + SAID_SIZE + 8];
        size_t used = strlen(text);
        snprintf(line, sizeof line, "%s%s (%s)", used > 0 ? "; " : "", format_source(row->source, words),
                 say_evidence((rodt_evidence)row->evidence, said));
        if (strstr(text, line + (used > 0 ? 2 : 0)) == NULL)
            snprintf(text + used, STEP_TEXT_SIZE - used, "%s", line);
    }
}

/* --- For people -------------------------------------------------------------------------------------- */

#define INDENT 12u

static void print_line(void *context, rodt_step_part part, const char *label, const char *text)
{
    const char *const labels[RODT_STEP_PART_END] = {[RODT_STEP_PART_DO] = say("Do"),
                                                    [RODT_STEP_PART_SEE] = say("See"),
                                                    [RODT_STEP_PART_GOOD] = say("Good"),
                                                    [RODT_STEP_PART_DEFECTIVE] = say("Defective")};
    char line[STEP_TEXT_SIZE + AIR_WHOM_SIZE];
    snprintf(line, sizeof line, "%s%s%s", label, label[0] != '\0' ? say(": ") : "", text);
    print_wrapped(context, label[0] != '\0' ? "          - " : labels[part], INDENT, line);
}

void print_step(FILE *to, rodt_step step, const rodt_rules *rules, const rodt_air_reading *vehicle)
{
    char title[STEP_TEXT_SIZE];
    print_headline(to, PAINT_STRONG, step_title(step, rules, title));
    each_step_line(step, rules, vehicle, print_line, to);
}
