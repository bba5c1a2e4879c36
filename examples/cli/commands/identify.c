/* SPDX-License-Identifier: Apache-2.0 */
/* rodtravel identify: which chamber it can be, by its visible marks. */
#include "commands/candidates.h"
#include "commands/limits_table.h"
#include "commands.h"
#include "input/rule_context.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/format.h"
#include "ui/json_writer.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/options.h"
#include "ui/table.h"
#include "ui/wrap.h"

#include <stdio.h>
#include <string.h>

enum {
    IDENTIFY_STAMP, IDENTIFY_FAMILY, IDENTIFY_PORT, IDENTIFY_TAG, IDENTIFY_DIAMETER, IDENTIFY_DIVISION,
    IDENTIFY_RATED, IDENTIFY_RULES, IDENTIFY_AS_OF, IDENTIFY_JSON
};

static const option_spec options[] = {
    [IDENTIFY_STAMP] = {"stamp", "TEXT", "what is stamped or cast on the housing: 30, 30L, 3030, \"bolt C\"", false},
    [IDENTIFY_FAMILY] = {"family", "WORD", "how it is built: clamp, bolt, rotochamber or dd3", false},
    [IDENTIFY_PORT] = {"port", "round|square", "shape of the air ports; square means long stroke", false},
    [IDENTIFY_TAG] = {"tag", "trapezoid|none", "tag under a clamp bolt; a trapezoid means long stroke", false},
    [IDENTIFY_DIAMETER] = {"diameter", "LEN", "outside diameter, by tape", false},
    [IDENTIFY_DIVISION] = {"division", "LEN", "graduation the diameter was read to; 1/8 if not given", false},
    [IDENTIFY_RATED] = {"rated", "LEN", "rated stroke marked on the housing", false},
    [IDENTIFY_RULES] = {"rules", "ID", "rule set of the limits; " RODT_DEFAULT_RULES " if not given", false},
    [IDENTIFY_AS_OF] = {"as-of", "DATE", "day whose limits are shown; today if not given", false},
    [IDENTIFY_JSON] = {"json", NULL, "the answer as one JSON object", false},
};

/* --- From arguments to an answer --------------------------------------------------------------------- */

static int read_length_option(const command_line *from, size_t option, rodt_length *out)
{
    rodt_error error;
    const char *text = option_value(from, option);
    if (text == NULL || rodt_length_parse_strict(text, out, &error) == RODT_OK)
        return STATUS_CONTINUE;
    return print_option_error(from, option, &error);
}

static int read_stamp(const command_line *from, rodt_family family, rodt_chamber *out)
{
    rodt_error error;
    const char *text = option_value(from, IDENTIFY_STAMP);
    return text == NULL || read_stamp_clue(text, family, out, &error) == RODT_OK
               ? STATUS_CONTINUE
               : print_option_error(from, IDENTIFY_STAMP, &error);
}

static int read_words(const command_line *from, rodt_clues *out)
{
    static const choice families[] = {{"clamp", RODT_FAMILY_CLAMP}, {"bolt", RODT_FAMILY_BOLT},
                                      {"rotochamber", RODT_FAMILY_ROTOCHAMBER}, {"dd3", RODT_FAMILY_DD_3}};
    static const choice ports[] = {{"round", RODT_PORT_ROUND}, {"square", RODT_PORT_SQUARE}};
    static const choice tags[] = {{"trapezoid", RODT_TAG_TRAPEZOID}, {"none", RODT_TAG_NONE}};
    int family = 0, port = 0, tag = 0;
    int status = choose_option(from, IDENTIFY_FAMILY, families, COUNT_OF(families), &family);
    if (status == STATUS_CONTINUE)
        status = choose_option(from, IDENTIFY_PORT, ports, COUNT_OF(ports), &port);
    if (status == STATUS_CONTINUE)
        status = choose_option(from, IDENTIFY_TAG, tags, COUNT_OF(tags), &tag);
    out->family = (rodt_family)family;
    out->port = (rodt_port)port;
    out->tag = (rodt_tag)tag;
    return status;
}

static bool has_clue(const command_line *from)
{
    static const size_t clues[] = {IDENTIFY_STAMP, IDENTIFY_FAMILY, IDENTIFY_PORT,
                                   IDENTIFY_TAG,   IDENTIFY_DIAMETER, IDENTIFY_RATED};
    for (size_t i = 0; i < COUNT_OF(clues); i++) {
        if (option_given(from, clues[i]))
            return true;
    }
    return false;
}

/* Rated stroke and division have the bounds of a reading's. */
static int read_reading_option(const command_line *from, size_t option, rodt_field field, rodt_length *out)
{
    rodt_form text = {.chamber = NULL};
    rodt_reading reading;
    rodt_error error;
    rodt_form_set(&text, field, option_value(from, option));
    if (rodt_form_parse(&text, &reading, &error) != RODT_OK ||
        (error.status != RODT_OK && error.status != RODT_E_EMPTY))
        return print_option_error(from, option, &error);
    *out = field == RODT_FIELD_DIVISION ? reading.division : reading.chamber.rated_stroke;
    return STATUS_CONTINUE;
}

static int read_clues(const command_line *from, rodt_clues *out)
{
    memset(out, 0, sizeof *out);
    if (!has_clue(from)) {
        print_error("identify needs a clue: --stamp, --family, --port, --tag, --diameter or --rated");
        return print_error("see: rodtravel identify --help");
    }
    int status = read_words(from, out);
    if (status == STATUS_CONTINUE)
        status = read_stamp(from, out->family, &out->stamp);
    if (status == STATUS_CONTINUE)
        status = read_length_option(from, IDENTIFY_DIAMETER, &out->diameter);
    if (status == STATUS_CONTINUE)
        status = read_reading_option(from, IDENTIFY_DIVISION, RODT_FIELD_DIVISION, &out->diameter_division);
    if (status == STATUS_CONTINUE)
        status = read_reading_option(from, IDENTIFY_RATED, RODT_FIELD_RATED_STROKE, &out->rated_stroke);
    return status;
}

/* --- For people -------------------------------------------------------------------------------------- */

#define INDENT 8u

/* A candidate does not say how the law of its limit was checked; its row does. */
static rodt_evidence evidence_of(const rodt_candidate *candidate, const rule_context *context)
{
    rodt_limit_answer answer;
    rodt_status status = rodt_rules_find_limit(context->rules, &candidate->chamber, context->day, &answer, NULL);
    return status == RODT_OK ? answer.law_evidence : RODT_EVIDENCE_FROM_MEMORY;
}

static rodt_evidence limit_evidence(const rodt_candidate *candidate, const rule_context *context)
{
    return rodt_length_given(candidate->limit) ? evidence_of(candidate, context) : RODT_EVIDENCE_NONE;
}

static const table_column candidate_columns[] = {
    {TO_SAY("  chamber"), "", 24},
    {TO_SAY("rated"), TO_SAY("rated"), 7},
    {TO_SAY("limit"), TO_SAY("limit"), 8},
    {TO_SAY("diameter"), TO_SAY("diameter"), 10},
    {TO_SAY("clues"), TO_SAY("by"), 28}};

static void print_candidate(const rodt_candidate *candidate, const rule_context *context)
{
    char name[RODT_CHAMBER_TEXT_SIZE], chamber[RODT_CHAMBER_TEXT_SIZE + 2], rated[WORD_SIZE], word[WORD_SIZE];
    char limit[WORD_SIZE + 1], diameter[WORD_SIZE], clues[120], against[120], reasons[260];
    snprintf(chamber, sizeof chamber, "  %s", format_chamber(&candidate->chamber, name));
    snprintf(limit, sizeof limit, "%s%s", format_length(candidate->limit, word),
             evidence_mark(limit_evidence(candidate, context)));
    name_clues(candidate->clues_for, clues, sizeof clues);
    name_clues(candidate->clues_against, against, sizeof against);
    if (against[0] == '\0')
        snprintf(reasons, sizeof reasons, "%s", clues);
    else
        snprintf(reasons, sizeof reasons, say("%s; against: %s"), clues, against);
    const char *const cells[] = {chamber, format_length(candidate->chamber.rated_stroke, rated), limit,
                                 format_length(candidate->diameter, diameter), reasons};
    print_table_row(stdout, candidate_columns, COUNT_OF(candidate_columns), cells, TABLE_PLAIN);
}

static void print_contradiction(uint32_t contradiction)
{
    char line[SAID_SIZE];
    print_wrapped(stdout, say("Note"), INDENT, say_contradiction(contradiction, line));
}

static void print_heading(const rodt_identification *answer)
{
    char limit[WORD_SIZE];
    char line[200];
    if (answer->count == 0)
        snprintf(line, sizeof line, "%s", say("NO CHAMBER FITS"));
    else if (!rodt_length_given(answer->strict_limit))
        snprintf(line, sizeof line, "%s", say("NO PUBLISHED LIMIT FOR WHAT FITS"));
    else if (candidates_have_one_limit(answer))
        snprintf(line, sizeof line, say("LIMIT %s"), format_length(answer->strict_limit, limit));
    else if (answer->without_limit > 0)
        snprintf(line, sizeof line, say("NO LIMIT IS SAFE: %lu OF THE %zu CHAMBERS THAT FIT HAVE NONE HERE"),
                 (unsigned long)answer->without_limit, answer->count);
    else
        snprintf(line, sizeof line, say("USE LIMIT %s in: %zu CHAMBERS FIT, YOU DO NOT YET KNOW WHICH"),
                 format_length(answer->strict_limit, limit), answer->count);
    print_headline(stdout, answer->count == 0 ? PAINT_OPEN : PAINT_STRONG, line);
    putchar('\n');
}

static void print_candidates(const rodt_identification *answer, const rule_context *context)
{
    uint32_t seen = 0;
    if (answer->count == 0)
        return;
    print_table_head(stdout, candidate_columns, COUNT_OF(candidate_columns));
    for (size_t i = 0; i < answer->count; i++) {
        print_candidate(&answer->candidates[i], context);
        seen |= 1u << limit_evidence(&answer->candidates[i], context);
    }
    putchar('\n');
    print_evidence_marks(seen);
}

static void print_answer(const rodt_identification *answer, const rodt_clues *clues, const rule_context *context)
{
    char line[200], day[WORD_SIZE], next[SAID_SIZE];
    print_heading(answer);
    print_candidates(answer, context);
    if (answer->contradiction != 0)
        print_contradiction(answer->contradiction);
    if (clues->port == RODT_PORT_ROUND)
        print_wrapped(stdout, say("Note"), INDENT,
                      say("A round port decides nothing; a square one is a sign of long stroke."));
    print_wrapped(stdout, say("Next"), INDENT, say_next_observation(answer, next));
    snprintf(line, sizeof line, say("limits of %s on %s, in inches; see: rodtravel limits"),
             rodt_rules_id(context->rules), format_date(context->day, day));
    print_wrapped(stdout, say("Law"), INDENT, line);
}

/* --- For programs ------------------------------------------------------------------------------------ */

typedef struct identified {
    const rodt_identification *answer;
    const rule_context *context;
} identified;

static rodt_status format_answer(const void *value, char *text, size_t size, size_t *needed)
{
    const identified *of = value;
    return rodt_identification_json_format(of->answer, of->context->rules, of->context->day, NULL, 0, text, size,
                                           needed);
}

/* --- The command ------------------------------------------------------------------------------------- */

static int answer_clues(const command_line *from, const rodt_clues *clues, const rule_context *context)
{
    rodt_identification answer;
    rodt_status status = rodt_clues_identify(clues, context->rules, context->day, &answer, NULL);
    if (status != RODT_OK)
        return print_status("", status);
    int written = STATUS_CONTINUE;
    if (option_given(from, IDENTIFY_JSON))
        written = json_print(format_answer, &(identified){&answer, context});
    else
        print_answer(&answer, clues, context);
    bool answered = answer.contradiction == 0 && rodt_length_given(answer.strict_limit) && answer.without_limit == 0;
    return written != STATUS_CONTINUE ? written : answered ? STATUS_GOOD : STATUS_UNDETERMINED;
}

static int run(int argc, char **argv)
{
    command_line from;
    rodt_clues clues;
    rule_context context;
    int status = parse_arguments(&identify_command, argc, argv, 0, 0, &from);
    if (status == STATUS_CONTINUE)
        status = read_clues(&from, &clues);
    if (status == STATUS_CONTINUE)
        status = rule_context_open(option_value(&from, IDENTIFY_RULES), NULL, NULL, option_value(&from, IDENTIFY_AS_OF),
                                   &context);
    if (status == STATUS_CONTINUE)
        status = answer_clues(&from, &clues, &context);
    return status;
}

const command_spec identify_command = {
    .name = "identify",
    .operands = "[OPTION]...",
    .summary = "find out which chamber it can be",
    .help = "Lists the chambers that what you see can mean, the limit of each, and what to look at next. As long "
            "as more than one is left, judge by the smallest limit. A diameter alone seldom decides: families "
            "overlap, and standard and long stroke are equally wide.\n"
            "\n"
            "  rodtravel identify --stamp 30 --port square\n"
            "  rodtravel identify --diameter \"8 1/8\" --family clamp\n"
            "\n"
            "Exit status 3: no chamber fits, one that fits has no limit, or the clues contradict each other.\n",
    .options = options,
    .option_count = COUNT_OF(options),
    .run = run,
};
