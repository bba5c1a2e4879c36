/* SPDX-License-Identifier: Apache-2.0 */
/* rodtravel limits: the limit of one chamber, the table of a rule set, or the list of rule sets. */
#include "air/air.h"
#include "commands.h"
#include "commands/limit_card.h"
#include "commands/limits_table.h"
#include "input/rule_context.h"
#include "io/atomic_file.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/format.h"
#include "ui/json_writer.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/options.h"
#include "ui/wrap.h"
#include "vehicle/vehicle.h"

#include <stdio.h>
#include <string.h>

enum { LIMITS_CLASS, LIMITS_RATED, LIMITS_RULES, LIMITS_LIMITS, LIMITS_AS_OF, LIMITS_LIST, LIMITS_AIR,
       LIMITS_HTML, LIMITS_SVG, LIMITS_JSON };

static const option_spec options[] = {
    [LIMITS_CLASS] = {"class", "standard|long", "stroke class; not given = standard", false},
    [LIMITS_RATED] = {"rated", "LEN", "rated stroke marked on the housing", false},
    [LIMITS_RULES] = {"rules", "ID", "rule set; " RODT_DEFAULT_RULES " if not given", false},
    [LIMITS_LIMITS] = {"limits", "FILE", "a carrier's own, stricter limits on top of it", false},
    [LIMITS_AS_OF] = {"as-of", "DATE", "day whose limits are shown; today if not given", false},
    [LIMITS_LIST] = {"list", NULL, "the rule sets with their dates, sources and pressures", false},
    [LIMITS_AIR] = {"air", NULL, "the air checks of the rule set instead of its limits", false},
    [LIMITS_HTML] = {"html", "FILE", "write the limits as one page for the cab, for A4 and Letter", false},
    [LIMITS_SVG] = {"svg", "FILE", "write the same as a drawing", false},
    [LIMITS_JSON] = {"json", NULL, "the answer as one JSON object", false},
};

/* --- One chamber ------------------------------------------------------------------------------------- */

/* Everything about a limit that a finding without readings holds. */
static const rodt_reason limit_reasons[] = {
    RODT_REASON_ASSUMED_STANDARD,   RODT_REASON_ASSUMED_CLAMP,     RODT_REASON_CONFLICTING_MARKS,
    RODT_REASON_NO_PUBLISHED_LIMIT, RODT_REASON_RULES_NOT_IN_FORCE, RODT_REASON_LIMIT_UNCONFIRMED,
    RODT_REASON_LIMIT_FROM_RATED,   RODT_REASON_LIMIT_MARKED,      RODT_REASON_LIMIT_COMMON_PRACTICE};

static int print_field_error(const command_line *from, const rodt_error *error)
{
    switch ((int)field_of_error(error)) {
    case RODT_FIELD_STROKE_CLASS: return print_option_error(from, LIMITS_CLASS, error);
    case RODT_FIELD_RATED_STROKE: return print_option_error(from, LIMITS_RATED, error);
    default: return print_text_error(say("the chamber"), from->operands[0], error);
    }
}

/* A wheel end that was not measured has a limit too; missing readings are no error here. */
static int find_limit(const command_line *from, const rule_context *context, rodt_finding *finding)
{
    const rodt_form text = {.chamber = from->operands[0],
                                    .stroke_class = option_value(from, LIMITS_CLASS),
                                    .rated_stroke = option_value(from, LIMITS_RATED),
                                    .default_day = context->day};
    rodt_reading reading;
    rodt_error error;
    rodt_status status = rodt_form_parse(&text, &reading, &error);
    if (status == RODT_OK && field_of_error(&error) != RODT_FIELD_RELEASED)
        return print_field_error(from, &error);
    if (status == RODT_OK)
        status = rodt_reading_judge(&reading, context->rules, finding, NULL);
    return status == RODT_OK ? STATUS_CONTINUE : print_status("", status);
}

static bool is_of_chamber(const rodt_limit *row, const void *context)
{
    const rodt_chamber *chamber = context;
    return row->family == chamber->family && strcmp(row->size, chamber->size) == 0;
}

#define INDENT 8u

static void print_limit(const rodt_finding *finding, const rule_context *context)
{
    char word[WORD_SIZE], chamber[RODT_CHAMBER_TEXT_SIZE], line[200];
    bool given = rodt_length_given(finding->limit);
    char text[RODT_CHAMBER_TEXT_SIZE + 80];
    if (given)
        snprintf(line, sizeof line, say("LIMIT %s"), format_length(finding->limit, word));
    snprintf(text, sizeof text, given ? say("%s, inches of applied stroke") : "%s",
             format_chamber(&finding->chamber, chamber));
    print_title(stdout, PAINT_STRONG, given ? line : say("LIMIT NOT KNOWN"), text);
    putchar('\n');
    const char *label = say("Why");
    for (size_t i = 0; i < COUNT_OF(limit_reasons); i++) {
        char sentence[SAID_SIZE];
        if (!finding_reason(finding, limit_reasons[i], sentence))
            continue;
        print_point(stdout, label, INDENT, sentence);
        label = "";
    }
    if (label[0] == '\0')
        putchar('\n');
    print_limit_tables(context, is_of_chamber, &finding->chamber);
}

/* What is written as JSON: the rows on a day, and what follows from them for a chamber. */
typedef struct limits_query {
    const rule_context *context;
    const rodt_finding *finding; /* NULL = the whole table */
} limits_query;

static rodt_status format_limits(const void *value, char *text, size_t size, size_t *needed)
{
    const limits_query *of = value;
    return rodt_limits_json_format(of->context->rules, of->context->day, of->finding, 0, text, size, needed);
}

static int answer_chamber(const command_line *from, const rule_context *context)
{
    rodt_finding finding = {.verdict = RODT_VERDICT_UNDETERMINED};
    int status = find_limit(from, context, &finding);
    if (status != STATUS_CONTINUE)
        return status;
    if (option_given(from, LIMITS_JSON))
        status = json_print(format_limits, &(limits_query){context, &finding});
    else
        print_limit(&finding, context);
    return status != STATUS_CONTINUE ? status : rodt_length_given(finding.limit) ? STATUS_GOOD : STATUS_UNDETERMINED;
}

/* --- The whole table --------------------------------------------------------------------------------- */

static bool is_any(const rodt_limit *row, const void *context)
{
    (void)row;
    (void)context;
    return true;
}

static bool is_in_force(const rule_context *context)
{
    const rodt_rules *law = law_of(context);
    return rodt_date_compare(rodt_rules_from(law), context->day) <= 0 &&
           (!rodt_date_given(rodt_rules_until(law)) || rodt_date_compare(context->day, rodt_rules_until(law)) <= 0);
}

static int answer_all(const command_line *from, const rule_context *context)
{
    if (option_given(from, LIMITS_CLASS) || option_given(from, LIMITS_RATED))
        return print_error("--class and --rated belong to a chamber; see: rodtravel limits --help");
    int status = STATUS_CONTINUE;
    if (option_given(from, LIMITS_JSON))
        status = json_print(format_limits, &(limits_query){context, NULL});
    else
        print_limit_tables(context, is_any, NULL);
    bool is_answered = limits_strokes(law_of(context)) && is_in_force(context);
    return status != STATUS_CONTINUE ? status : is_answered ? STATUS_GOOD : STATUS_UNDETERMINED;
}

static int answer_air(const command_line *from, const rule_context *context)
{
    if (from->operand_count > 0 || option_given(from, LIMITS_CLASS) || option_given(from, LIMITS_RATED))
        return print_error("--air goes with no chamber; see: rodtravel limits --help");
    const rodt_rules *law = law_of(context);
    int status = STATUS_CONTINUE;
    if (option_given(from, LIMITS_JSON)) {
        json_writer json = {.to = stdout, .first = true};
        json_open(&json, '{');
        write_air_table(&json, law, context->own);
        json_close(&json, '}');
        status = json_end(&json);
    } else {
        if (context->own != NULL && rodt_rules_air_count(context->own) > 0)
            print_air_table(context->own);
        print_air_table(law);
    }
    return status != STATUS_CONTINUE ? status : rodt_rules_air_count(law) > 0 ? STATUS_GOOD : STATUS_UNDETERMINED;
}

/* --- The page for the cab ---------------------------------------------------------------------------- */

static int write_card(const rule_context *context, const char *name, bool html)
{
    atomic_file file;
    if (name == NULL)
        return STATUS_CONTINUE;
    int status = atomic_file_open(name, &file);
    if (status != STATUS_CONTINUE)
        return status;
    if (html)
        limit_page_write(context, file.to);
    else
        limit_drawing_write(context, file.to);
    return atomic_file_close(&file, true);
}

static int answer_card(const command_line *from, const rule_context *context)
{
    if (from->operand_count > 0 || option_given(from, LIMITS_CLASS) || option_given(from, LIMITS_RATED) ||
        option_given(from, LIMITS_AIR) || option_given(from, LIMITS_JSON))
        return print_error("--html and --svg go with --rules, --limits and --as-of only");
    if (rodt_rules_limit_count(law_of(context)) == 0)
        return print_error("%s has air checks only, and no limits of strokes", rodt_rules_id(law_of(context)));
    int status = write_card(context, option_value(from, LIMITS_HTML), true);
    if (status == STATUS_CONTINUE)
        status = write_card(context, option_value(from, LIMITS_SVG), false);
    if (status != STATUS_CONTINUE)
        return status;
    return is_in_force(context) ? STATUS_GOOD : STATUS_UNDETERMINED;
}

/* --- The command ------------------------------------------------------------------------------------- */

static int answer_list(const command_line *from)
{
    size_t allowed = 1u + option_given(from, LIMITS_JSON);
    if (from->operand_count > 0 || from->given_count > allowed)
        return print_error("--list goes with --json and --language only");
    if (!option_given(from, LIMITS_JSON))
        return print_rules_list(), STATUS_GOOD;
    int status = write_rules_list();
    return status == STATUS_CONTINUE ? STATUS_GOOD : status;
}

static int run(int argc, char **argv)
{
    command_line from;
    rule_context context;
    int status = parse_arguments(&limits_command, argc, argv, 0, 1, &from);
    if (status != STATUS_CONTINUE)
        return status;
    if (option_given(&from, LIMITS_LIST))
        return answer_list(&from);
    status = rule_context_open(option_value(&from, LIMITS_RULES), NULL, option_value(&from, LIMITS_LIMITS),
                               option_value(&from, LIMITS_AS_OF), &context);
    if (status == STATUS_CONTINUE)
        status = option_given(&from, LIMITS_HTML) || option_given(&from, LIMITS_SVG) ? answer_card(&from, &context)
                 : option_given(&from, LIMITS_AIR) ? answer_air(&from, &context)
                 : from.operand_count == 1 ? answer_chamber(&from, &context) : answer_all(&from, &context);
    rule_context_close(&context);
    return status;
}

static const file_argument files[] = {{LIMITS_LIMITS, false}, {LIMITS_HTML, true}, {LIMITS_SVG, true}};

const command_spec limits_command = {
    .name = "limits",
    .operands = "[CHAMBER]",
    .summary = "show adjustment limits and rule sets",
    .help = "Shows the limit of one chamber and the rows it was chosen from, or without CHAMBER the whole table of "
            "a rule set, as in force on a day.\n"
            "\n"
            "  rodtravel limits 24L --rated 3\n"
            "  rodtravel limits \"bolt C\"\n"
            "  rodtravel limits --as-of 2021-10-13\n"
            "  rodtravel limits --list\n"
            "  rodtravel limits --air --rules us-cdl\n"
            "  rodtravel limits --rules ca-on --html limits.html\n"
            "\n"
            "Exit status 3: no limit is published, or the rule set has no text for the day.\n",
    .options = options,
    .option_count = COUNT_OF(options),
    .files = files,
    .file_count = COUNT_OF(files),
    .run = run,
};
