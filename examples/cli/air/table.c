/* SPDX-License-Identifier: Apache-2.0 */
/* The air checks of a rule set as a table. */
#include "air/air.h"
#include "ui/format.h"
#include "ui/json_writer.h"
#include "ui/language.h"
#include "ui/wrap.h"

#include <stdio.h>
#include <string.h>

#define INDENT 21u

/* The end of a text that goes on; after a comma if there is something to go on from. */
static size_t next_part(char text[AIR_WHOM_SIZE])
{
    size_t used = strlen(text);
    return used == 0 ? 0 : used + (size_t)snprintf(text + used, AIR_WHOM_SIZE - used, ", ");
}

const char *air_row_whom(const rodt_air_limit *row, char text[AIR_WHOM_SIZE])
{
    static const char *const vehicles[] = {"", TO_SAY("single vehicle"), TO_SAY("combination"), TO_SAY("bus")};
    const char *vehicle = say(vehicles[row->vehicle]);
    unsigned long towed = (unsigned long)row->towed_units;
    text[0] = '\0';
    if (row->towed_units < 0)
        snprintf(text, AIR_WHOM_SIZE, "%s", vehicle);
    else if (row->towed_or_more)
        snprintf(text, AIR_WHOM_SIZE,
                 say_number("%s with %lu or more towed unit", "%s with %lu or more towed units", towed), vehicle,
                 towed);
    else
        snprintf(text, AIR_WHOM_SIZE, say_number("%s with %lu towed unit", "%s with %lu towed units", towed), vehicle,
                 towed);
    char day[WORD_SIZE];
    size_t used = 0;
    if (rodt_date_given(row->built_from) && (used = next_part(text)) < AIR_WHOM_SIZE)
        snprintf(text + used, AIR_WHOM_SIZE - used, say("built from %s on"), format_date(row->built_from, day));
    if (rodt_date_given(row->built_until) && (used = next_part(text)) < AIR_WHOM_SIZE)
        snprintf(text + used, AIR_WHOM_SIZE - used, say("built until %s"), format_date(row->built_until, day));
    return text;
}

const char *air_check_title(rodt_air_check check, char text[SAID_SIZE])
{
    rodt_message message;
    (void)say_message(rodt_air_check_message(check, &message), &message, text, SAID_SIZE);
    return text;
}

const char *air_row_rule(const rodt_air_limit *row, char text[AIR_RULE_SIZE])
{
    char from[WORD_SIZE], to[WORD_SIZE];
    const char *words = say_table_text(row->published);
    if (rodt_pressure_given(row->start))
        snprintf(text, AIR_RULE_SIZE, say("%s; timed from %s to %s psi"), words,
                 format_pressure(row->start, from), format_pressure(row->stop, to));
    else
        snprintf(text, AIR_RULE_SIZE,
                 row->span == RODT_AIR_SPAN_RECOVERY
                     ? say("%s; timed after a full application, back to the pressure before")
                     : "%s",
                 words);
    return text;
}

static void print_row(const rodt_air_limit *row)
{
    char edge[SAID_SIZE], text[AIR_WHOM_SIZE], rule[AIR_RULE_SIZE], line[600], words[RODT_SOURCE_TEXT_SIZE];
    char evidence[SAID_SIZE];
    rodt_message message;
    print_wrapped(stdout, rodt_air_check_name(row->check), INDENT, air_row_rule(row, rule));
    if (row->setup[0] != '\0') {
        snprintf(line, sizeof line, say("how: %s"), say_table_text(row->setup));
        print_wrapped(stdout, "", INDENT, line);
    }
    if (air_row_whom(row, text)[0] != '\0')
        print_wrapped(stdout, "", INDENT, text);
    if (row->kind != RODT_AIR_KIND_USUAL &&
        say_message(rodt_air_limit_edge_message(row, &message), &message, edge, sizeof edge))
        print_wrapped(stdout, "", INDENT, edge);
    snprintf(line, sizeof line, "%s (%s)", format_source(row->source, words), say_evidence(row->evidence, evidence));
    print_wrapped(stdout, "", INDENT, line);
}

void print_air_table(const rodt_rules *rules)
{
    char line[300];
    snprintf(line, sizeof line, say("%s: air checks"), rodt_rules_id(rules));
    print_headline(stdout, PAINT_STRONG, line);
    print_wrapped(stdout, "", 0, say(rodt_rules_title(rules)));
    putchar('\n');
    for (size_t i = 0; i < rodt_rules_air_count(rules); i++)
        print_row(rodt_rules_air_at(rules, i));
    if (rodt_rules_air_count(rules) == 0)
        print_wrapped(stdout, "", 0, say("no air check is in this rule set"));
    putchar('\n');
    print_wrapped(stdout, "", 0, say("Only what was read in its source is shown as law. The cited document decides."));
}

static rodt_status format_row(const void *row, char *text, size_t size, size_t *needed)
{
    return rodt_air_limit_json_format(row, NULL, 0, text, size, needed);
}

static void write_rows(json_writer *json, const char *key, const rodt_rules *rules)
{
    json_key(json, key);
    json_open(json, '[');
    for (size_t i = 0; i < rodt_rules_air_count(rules); i++)
        json_record(json, format_row, rodt_rules_air_at(rules, i));
    json_close(json, ']');
}

void write_air_table(json_writer *json, const rodt_rules *rules, const rodt_rules *own)
{
    json_pair(json, "rules", rodt_rules_id(rules));
    write_rows(json, "air", rules);
    if (own != NULL && rodt_rules_air_count(own) > 0)
        write_rows(json, "own_air", own);
}
