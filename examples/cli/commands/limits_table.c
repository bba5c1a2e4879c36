/* SPDX-License-Identifier: Apache-2.0 */
/* Tables of limits: aligned for people, complete for programs. */
#include "commands/limits_table.h"
#include "input/rule_context.h"
#include "ui/compiler.h"
#include "ui/format.h"
#include "ui/json_writer.h"
#include "ui/language.h"
#include "ui/table.h"
#include "ui/wrap.h"

#include <stdio.h>

#define INDENT 8u

typedef struct row_query {
    const rule_context *rules_of;
    row_filter wanted;
    const void *context;
} row_query;

static bool is_row_wanted(const row_query *query, const rodt_limit *row)
{
    return is_limit_in_force(row, query->rules_of->day) && query->wanted(row, query->context);
}

/* The next wanted row from *at on, or NULL. */
static const rodt_limit *next_row(const row_query *query, const rodt_rules *rules, size_t *at)
{
    const rodt_limit *row;
    while ((row = rodt_rules_limit_at(rules, (*at)++)) != NULL) {
        if (is_row_wanted(query, row))
            return row;
    }
    return NULL;
}

static const char *row_name(const rodt_limit *row, char word[RODT_CHAMBER_TEXT_SIZE])
{
    rodt_chamber chamber = {.family = row->family};
    snprintf(chamber.size, sizeof chamber.size, "%s", row->size);
    return format_chamber(&chamber, word);
}

/* --- For people -------------------------------------------------------------------------------------- */

static const table_column row_columns[] = {
    {TO_SAY("  chamber"), "", 19},
    {TO_SAY("class"), "", 10},
    {TO_SAY("rated"), TO_SAY("rated"), 7},
    {TO_SAY("limit"), TO_SAY("limit"), 9},
    {"mm", "mm", 7},
    {TO_SAY("from"), TO_SAY("from"), 12},
    {TO_SAY("until"), TO_SAY("until"), 10}};

/* As printed, or exact where the source prints none. */
static const char *row_mm(const rodt_limit *row, char word[WORD_SIZE])
{
    if (rodt_length_given(row->printed_mm))
        return format_mm(row->printed_mm, word);
    rodt_status status = rodt_length_format_decimal(row->limit, RODT_UNIT_MM, 2, RODT_ROUNDING_HALF_EVEN, word,
                                                    WORD_SIZE, NULL);
    return status == RODT_OK ? word : "-";
}

static void print_row(const rodt_limit *row)
{
    char name[RODT_CHAMBER_TEXT_SIZE], chamber[RODT_CHAMBER_TEXT_SIZE + 2], rated[WORD_SIZE], limit[WORD_SIZE];
    char starred[WORD_SIZE + 1], mm[WORD_SIZE], from[WORD_SIZE], until[WORD_SIZE];
    snprintf(chamber, sizeof chamber, "  %s", row_name(row, name));
    snprintf(starred, sizeof starred, "%s%s", format_length(row->limit, limit),
             evidence_mark(row->evidence));
    const char *class = rodt_stroke_class_name(row->stroke_class);
    const char *const cells[] = {chamber, say(row->stroke_class == RODT_STROKE_CLASS_ANY ? TO_SAY("any") : class),
                                 format_length(row->rated_stroke, rated), starred, row_mm(row, mm),
                                 format_date(row->from, from), format_date(row->until, until)};
    print_table_row(stdout, row_columns, COUNT_OF(row_columns), cells, TABLE_PLAIN);
}

/* Every source of the rows once, in their order. */
static void print_sources(const row_query *query, const rodt_rules *rules)
{
    const rodt_source *said[16];
    size_t count = 0;
    const rodt_limit *row;
    const char *label = say("Source");
    for (size_t at = 0; (row = next_row(query, rules, &at)) != NULL && count < COUNT_OF(said);) {
        bool known = false;
        for (size_t i = 0; i < count && !known; i++)
            known = said[i] == row->source;
        if (known)
            continue;
        char words[RODT_SOURCE_TEXT_SIZE], line[RODT_SOURCE_TEXT_SIZE + 100], evidence[SAID_SIZE];
        snprintf(line, sizeof line, "%s (%s)", format_source(row->source, words),
                 say_evidence(row->evidence, evidence));
        print_point(stdout, label, INDENT, line);
        if (row->source->address[0] != '\0')
            print_wrapped(stdout, "", INDENT + 2, row->source->address);
        said[count++] = row->source;
        label = "";
    }
}

/* Returns the number of rows; *seen gets the bits of their evidence. */
static size_t print_rows(const row_query *query, const rodt_rules *rules, uint32_t *seen)
{
    const rodt_limit *row;
    size_t count = 0;
    for (size_t at = 0; (row = next_row(query, rules, &at)) != NULL; count++) {
        if (count == 0)
            print_table_head(stdout, row_columns, COUNT_OF(row_columns));
        print_row(row);
        *seen |= 1u << row->evidence;
    }
    if (count > 0)
        putchar('\n');
    return count;
}

const char *evidence_mark(rodt_evidence evidence)
{
    return evidence <= RODT_EVIDENCE_CHECKED ? "" : evidence == RODT_EVIDENCE_COMMON_PRACTICE ? "+" : "*";
}

const char *evidence_mark_note(rodt_evidence evidence, uint32_t seen)
{
    bool practice = evidence == RODT_EVIDENCE_COMMON_PRACTICE;
    uint32_t bits = practice ? 1u << RODT_EVIDENCE_COMMON_PRACTICE
                             : 1u << RODT_EVIDENCE_SECOND_HAND | 1u << RODT_EVIDENCE_FROM_MEMORY;
    if ((seen & bits) == 0)
        return NULL;
    return practice ? say("common practice, no source: not law")
                    : say("unconfirmed: not read in its source, and not law");
}

void print_evidence_marks(uint32_t seen)
{
    static const rodt_evidence kinds[] = {RODT_EVIDENCE_FROM_MEMORY, RODT_EVIDENCE_COMMON_PRACTICE};
    for (size_t i = 0; i < COUNT_OF(kinds); i++) {
        if (evidence_mark_note(kinds[i], seen) != NULL)
            print_wrapped(stdout, evidence_mark(kinds[i]), INDENT, evidence_mark_note(kinds[i], seen));
    }
}

/* Returns false if there is no row to show, and says so. */
static bool print_table(const row_query *query, const rodt_rules *rules)
{
    uint32_t seen = 0;
    putchar('\n');
    if (print_rows(query, rules, &seen) == 0) {
        print_wrapped(stdout, "  ", 2,
                      rodt_rules_limit_count(rules) == 0 ? say("It has no rows for single chambers.")
                                                         : say("No row."));
        putchar('\n');
        return false;
    }
    print_evidence_marks(seen);
    print_sources(query, rules);
    return true;
}

static void print_share(const rodt_rules *law)
{
    char line[300];
    rodt_ratio share = rodt_rules_rated_share(law);
    if (!rodt_ratio_given(share))
        return;
    snprintf(line, sizeof line,
             say("a chamber without a row has %lld/%lld of the rated stroke marked on it, and not more than a limit "
                 "marked on it"), (long long)share.num, (long long)share.den);
    print_wrapped(stdout, say("Other"), INDENT, line);
}

static void print_window(const rodt_rules *law)
{
    char from[WORD_SIZE], until[WORD_SIZE], words[RODT_SOURCE_TEXT_SIZE], line[RODT_SOURCE_TEXT_SIZE + 200];
    char evidence[SAID_SIZE];
    if (!rodt_pressure_given(rodt_rules_pressure_from(law)))
        return;
    snprintf(line, sizeof line, say("%s to %s psi in the reservoirs: %s (%s)"),
             format_pressure(rodt_rules_pressure_from(law), from),
             format_pressure(rodt_rules_pressure_until(law), until),
             format_source(rodt_rules_pressure_source(law), words),
             say_evidence(rodt_rules_pressure_evidence(law), evidence));
    print_wrapped(stdout, say("Air"), INDENT, line);
}

static bool starts_later(const rodt_rules *law, rodt_date day)
{
    return rodt_date_compare(day, rodt_rules_from(law)) < 0;
}

static void print_equal(const rodt_rules *law)
{
    if (!limits_strokes(law)) {
        print_wrapped(stdout, say("Air"), INDENT, say("it has air checks only: rodtravel limits --air"));
        return;
    }
    print_wrapped(stdout, say("Equal"), INDENT,
                  rodt_rules_at_limit_passes(law) ? say("a stroke exactly at the limit passes")
                                                  : say("a stroke exactly at the limit fails"));
}

void print_limit_tables(const rule_context *rules_of, row_filter wanted, const void *context)
{
    const row_query query = {rules_of, wanted, context};
    const rodt_rules *law = law_of(rules_of);
    char day[WORD_SIZE], line[300];
    snprintf(line, sizeof line, say("%s on %s: %s"), rodt_rules_id(law), format_date(rules_of->day, day),
             say(rodt_rules_title(law)));
    print_wrapped(stdout, "", 0, line);
    if (starts_later(law, rules_of->day)) {
        snprintf(line, sizeof line, say("It has no text for that day; it starts on %s."),
                 format_date(rodt_rules_from(law), day));
        print_wrapped(stdout, "", 0, line);
        return;
    }
    bool found = print_table(&query, law);
    print_equal(law);
    if (!found || context == NULL)
        print_share(law);
    if (context == NULL)
        print_window(law);
    if (found)
        print_wrapped(stdout, say("Unit"), INDENT,
                      say("inches decide; mm are as printed in the source, which rounds them, or to two decimals where "
                          "it prints none"));
    if (rules_of->own != NULL) {
        putchar('\n');
        print_wrapped(stdout, say("A carrier's own limits:"), 0, rodt_rules_id(rules_of->own));
        print_table(&query, rules_of->own);
    }
}

static void print_rules(const rodt_rules *rules)
{
    char words[RODT_SOURCE_TEXT_SIZE], day[WORD_SIZE], line[RODT_SOURCE_TEXT_SIZE + SAID_SIZE + 100];
    char evidence[SAID_SIZE];
    print_painted(stdout, PAINT_STRONG, rodt_rules_id(rules));
    putchar('\n');
    print_wrapped(stdout, "", INDENT, say(rodt_rules_title(rules)));
    print_wrapped(stdout, "", INDENT, rodt_rules_authority(rules));
    format_source(rodt_rules_source(rules), words);
    say_evidence(rodt_rules_evidence(rules), evidence);
    if (rodt_date_given(rodt_rules_from(rules)))
        snprintf(line, sizeof line, say("%s (%s); judges from %s"), words, evidence,
                 format_date(rodt_rules_from(rules), day));
    else
        snprintf(line, sizeof line, "%s (%s)", words, evidence);
    print_wrapped(stdout, say("Law"), INDENT, line);
    print_window(rules);
    print_share(rules);
    if (rodt_rules_air_count(rules) > 0) {
        snprintf(line, sizeof line,
                 limits_strokes(rules) ? say("%zu rows: rodtravel limits --air --rules %s")
                                       : say("%zu rows, and no limits of strokes: rodtravel limits --air --rules %s"),
                 rodt_rules_air_count(rules), rodt_rules_id(rules));
        print_wrapped(stdout, say("Checks"), INDENT, line);
    }
    putchar('\n');
}

void print_rules_list(void)
{
    for (size_t i = 0; i < rodt_rules_count(); i++)
        print_rules(rodt_rules_at(i));
    char line[200];
    snprintf(line, sizeof line, say("%s judges where no rule set is named. Its limits: rodtravel limits"),
             RODT_DEFAULT_RULES);
    print_wrapped(stdout, "", 0, line);
}

/* --- For programs ------------------------------------------------------------------------------------ */

static rodt_status format_rules(const void *rules, char *text, size_t size, size_t *needed)
{
    return rodt_rules_json_format(rules, 0, text, size, needed);
}

int write_rules_list(void)
{
    json_writer json = {.to = stdout, .first = true};
    json_open(&json, '{');
    json_key(&json, "rule_sets");
    json_open(&json, '[');
    for (size_t i = 0; i < rodt_rules_count(); i++)
        json_record(&json, format_rules, rodt_rules_at(i));
    json_close(&json, ']');
    json_close(&json, '}');
    return json_end(&json);
}
