/* SPDX-License-Identifier: Apache-2.0 */
/* rodtravel stroke: one wheel end, two tape readings, one finding. */
#include "commands.h"
#include "commands/limits_table.h"
#include "input/rule_context.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/format.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/options.h"
#include "ui/utf8.h"
#include "ui/wrap.h"
#include "vehicle/vehicle.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

enum {
    STROKE_CLASS, STROKE_RATED, STROKE_MARKED_LIMIT, STROKE_RULES, STROKE_LIMITS, STROKE_AS_OF, STROKE_PSI,
    STROKE_PSI_AFTER, STROKE_DIVISION, STROKE_ENGINE, STROKE_SPRING_BRAKE, STROKE_DRUM, STROKE_UNIT,
    STROKE_WHY, STROKE_SHORT, STROKE_SPEAK, STROKE_JSON
};

static const option_spec options[] = {
    [STROKE_CLASS] = {"class", "standard|long", "stroke class; not given = judged as standard", false},
    [STROKE_RATED] = {"rated", "LEN", "rated stroke marked on the housing: its full travel, not the limit", false},
    [STROKE_MARKED_LIMIT] = {"marked-limit", "LEN", "limit marked on a chamber that is in no table", false},
    [STROKE_RULES] = {"rules", "ID", "rule set that judges; " RODT_DEFAULT_RULES " if not given", false},
    [STROKE_LIMITS] = {"limits", "FILE", "a carrier's own, stricter limits on top of it", false},
    [STROKE_AS_OF] = {"as-of", "DATE", "day of the inspection, 2024-05-06; today if not given", false},
    [STROKE_PSI] = {"psi", "N", "reservoir pressure before the application; 655 kPa is read too", false},
    [STROKE_PSI_AFTER] = {"psi-after", "N", "reservoir pressure after it", false},
    [STROKE_DIVISION] = {"division", "LEN", "smallest graduation that was read, 1/16 or 1 mm; then the finding says "
                                            "what the tape proves", false},
    [STROKE_ENGINE] = {"engine", "on|off", "engine during the test", false},
    [STROKE_SPRING_BRAKE] = {"spring-brake", "on|released", "spring brake during the test", false},
    [STROKE_DRUM] = {"drum", "cold|warm|hot", "temperature of the drum", false},
    [STROKE_UNIT] = {"unit", "in|mm|cm", "unit of lengths that name none; inches if not given", false},
    [STROKE_WHY] = {"why", NULL, "every reason, and every source", false},
    [STROKE_SHORT] = {"short", NULL, "one line: verdict, stroke, limit", false},
    [STROKE_SPEAK] = {"speak", NULL, "also what one says aloud after the measurement", false},
    [STROKE_JSON] = {"json", NULL, "the finding as one JSON object", false},
};

/* --- From arguments to a finding --------------------------------------------------------------------- */

/* The fields that options give; those before RODT_FIELD_NEEDED are the operands. */
static const struct {
    rodt_field field;
    size_t option;
} fields[] = {
    {RODT_FIELD_STROKE_CLASS, STROKE_CLASS}, {RODT_FIELD_RATED_STROKE, STROKE_RATED},
    {RODT_FIELD_MARKED_LIMIT, STROKE_MARKED_LIMIT}, {RODT_FIELD_PSI, STROKE_PSI},
    {RODT_FIELD_PSI_AFTER, STROKE_PSI_AFTER}, {RODT_FIELD_DIVISION, STROKE_DIVISION},
    {RODT_FIELD_UNIT, STROKE_UNIT}, {RODT_FIELD_ENGINE, STROKE_ENGINE},
    {RODT_FIELD_SPRING_BRAKE, STROKE_SPRING_BRAKE}, {RODT_FIELD_DRUM, STROKE_DRUM}};

static int print_field_error(const command_line *from, const rodt_error *error)
{
    const char *const operands[RODT_FIELD_NEEDED] = {say("the chamber"), say("the released measurement"),
                                                     say("the applied measurement")};
    const rodt_field field = field_of_error(error);
    if (field < RODT_FIELD_NEEDED)
        return print_text_error(operands[field], from->operands[field], error);
    for (size_t i = 0; i < COUNT_OF(fields); i++) {
        if (fields[i].field == field)
            return print_option_error(from, fields[i].option, error);
    }
    return print_library_error(error);
}

static int judge(const command_line *from, const rule_context *context, rodt_finding *finding)
{
    rodt_form text = {.default_day = context->day};
    rodt_error error = {.status = RODT_OK};
    for (int field = 0; field < RODT_FIELD_NEEDED; field++)
        rodt_form_set(&text, (rodt_field)field, from->operands[field]);
    for (size_t i = 0; i < COUNT_OF(fields); i++)
        rodt_form_set(&text, fields[i].field, option_value(from, fields[i].option));
    if (rodt_form_judge(&text, context->rules, finding, &error) != RODT_OK)
        return print_field_error(from, &error);
    return STATUS_CONTINUE;
}

/* --- For people -------------------------------------------------------------------------------------- */

#define INDENT 8u

static void name_verdict(const rodt_finding *finding, char words[40])
{
    bool edge = verdict_paint(finding) == PAINT_EDGE;
    format_capitals(!edge ? verdict_words(finding->verdict)
                    : rodt_finding_has(finding, RODT_REASON_HARDLY_MOVED) ? say("in adjustment, hardly moved")
                                                                          : say("in adjustment, at the limit"),
                    words, 40);
}

static void print_verdict(const rodt_finding *finding)
{
    char word[40], chamber[RODT_CHAMBER_TEXT_SIZE];
    name_verdict(finding, word);
    char line[RODT_CHAMBER_TEXT_SIZE + 40];
    snprintf(line, sizeof line, "%s%s", format_chamber(&finding->chamber, chamber),
             rodt_finding_has(finding, RODT_REASON_LIMIT_UNCONFIRMED)       ? say("; the limit is unconfirmed")
             : rodt_finding_has(finding, RODT_REASON_LIMIT_COMMON_PRACTICE) ? say("; the limit is common practice")
                                                                            : "");
    print_title(stdout, verdict_paint(finding), word, line);
}

#define BAR_COLUMNS 40u
#define BAR_LEAST 12u

/* "2 1/8 of 2 in", a bar, "over by 1/8"; the bar has a line of its own where they do not fit. */
static void print_bar(const rodt_finding *finding)
{
    char stroke[WORD_SIZE], limit[WORD_SIZE], margin[MARGIN_SIZE], figures[2 * WORD_SIZE + 16], bar[BAR_SIZE];
    bool inches = finding->unit == RODT_UNIT_IN;
    if (!rodt_length_given(finding->applied_stroke) || !rodt_length_given(finding->limit))
        return;
    snprintf(figures, sizeof figures, inches ? say("%s of %s in") : say("%s of %s"),
             tape_word(finding, finding->applied_stroke, stroke), tape_word(finding, finding->limit, limit));
    margin_words(finding, margin);
    const char *lead = finding->verdict == RODT_VERDICT_UNDETERMINED ? "\n" : "";
    unsigned width = line_width(stdout), texts = columns_of_text(figures) + columns_of_text(margin) + 9;
    bool one_line = texts + BAR_LEAST < width;
    unsigned room = one_line ? width - texts - 1 : width - 6;
    finding_bar(finding, room < BAR_COLUMNS ? room : BAR_COLUMNS, !shows_utf8() || isatty(STDOUT_FILENO) != 1, bar);
    if (one_line)
        printf("%s  %s  [%s]  %s\n\n", lead, figures, bar, margin);
    else
        printf("%s  %s, %s\n  [%s]\n\n", lead, figures, margin, bar);
}

static void print_reason(void *context, const char *label, const char *text)
{
    const char **first = context;
    (void)label;
    print_point(stdout, *first, INDENT, text);
    *first = "";
}

/* Returns how many reasons were left out. */
static size_t print_reasons(const rodt_finding *finding, bool all)
{
    const char *label = say("Why");
    finding_each_hint(finding, print_reason, &label);
    return finding_each_reason(finding, all ? FINDING_ALL_REASONS : 2, print_reason, &label);
}

static void print_law(const rodt_finding *finding)
{
    char words[RODT_SOURCE_TEXT_SIZE], day[WORD_SIZE], line[RODT_SOURCE_TEXT_SIZE + 200], evidence[SAID_SIZE];
    const rodt_rules *law = rodt_rules_law(finding->rules);
    const char *id = rodt_rules_id(law != NULL ? law : finding->rules);
    if (finding->law_source == NULL)
        snprintf(line, sizeof line, say("%s on %s: %s"), id, format_date(finding->day, day),
                 finding->law_basis == RODT_BASIS_NOT_IN_FORCE ? say("no text for this day")
                                                                    : say("no published limit"));
    else
        snprintf(line, sizeof line, say("%s on %s: %s (%s)"), id, format_date(finding->day, day),
                 format_source(finding->law_source, words),
                 say_evidence((rodt_evidence)finding->law_evidence, evidence));
    print_wrapped(stdout, say("Law"), INDENT, line);
    if (law == NULL)
        return;
    const rodt_limit *own = finding->own_row;
    snprintf(line, sizeof line, own == NULL ? say("%s: no row for this chamber")
                                            : say("%s: a row of the carrier for this chamber"),
             rodt_rules_id(finding->rules));
    print_wrapped(stdout, say("Own"), INDENT, line);
}

static bool has_pressure_reason(const rodt_finding *finding)
{
    return rodt_finding_has(finding, RODT_REASON_PRESSURE_LOW) ||
           rodt_finding_has(finding, RODT_REASON_PRESSURE_HIGH) ||
           rodt_finding_has(finding, RODT_REASON_PRESSURE_NOT_RECORDED);
}

/* The window of pressure can come from another document than the limit: a verdict that depends on it
 * cites that one too. */
static void print_pressure_source(const rodt_finding *finding)
{
    char words[RODT_SOURCE_TEXT_SIZE];
    char from[WORD_SIZE], until[WORD_SIZE], evidence[SAID_SIZE];
    char line[RODT_SOURCE_TEXT_SIZE + 200];
    const rodt_rules *rules = finding->rules;
    if (!has_pressure_reason(finding) || rodt_rules_pressure_source(rules) == NULL)
        return;
    snprintf(line, sizeof line, say("%s to %s psi: %s (%s)"), format_pressure(rodt_rules_pressure_from(rules), from),
             format_pressure(rodt_rules_pressure_until(rules), until),
             format_source(rodt_rules_pressure_source(rules), words),
             say_evidence(rodt_rules_pressure_evidence(rules), evidence));
    print_wrapped(stdout, say("Air"), INDENT, line);
}

static const char *next_step(rodt_verdict verdict)
{
    switch (verdict) {
    case RODT_VERDICT_OUT_OF_ADJUSTMENT:
        return say("Do not drive: report it and have it repaired. Do not adjust an automatic adjuster by hand to make "
                   "it pass: find the cause and repair it.");
    case RODT_VERDICT_INOPERATIVE:
        return say("Do not drive: this wheel end does not brake. Report it and have it repaired.");
    case RODT_VERDICT_UNDETERMINED:
        return say("Do not drive until this is settled: put it right, then measure again.");
    case RODT_VERDICT_IN_ADJUSTMENT: break;
    }
    return NULL;
}

/* The rule sets that can judge a stroke. */
static void print_other_rules(void)
{
    char line[400];
    size_t used = (size_t)snprintf(line, sizeof line, "%s",
                                   say("Choose a rule set that limits strokes with --rules:"));
    for (size_t i = 0; i < rodt_rules_count() && used < sizeof line; i++) {
        if (limits_strokes(rodt_rules_at(i)))
            used += (size_t)snprintf(line + used, sizeof line - used, " %s", rodt_rules_id(rodt_rules_at(i)));
    }
    print_wrapped(stdout, say("Next"), INDENT, line);
}

static void print_next(const rodt_finding *finding)
{
    const char *next = next_step(finding->verdict);
    bool open = finding->verdict == RODT_VERDICT_UNDETERMINED;
    if (open && finding->rules != NULL && !limits_strokes(finding->rules))
        print_other_rules();
    else if (next != NULL)
        print_wrapped(stdout, say("Next"), INDENT, next);
}

/* The sum; where there is a bar, that has the rest of it. */
static void print_sum(const rodt_finding *finding, bool all)
{
    char sentence[SAID_SIZE], released[WORD_SIZE], applied[WORD_SIZE];
    rodt_message message;
    bool barred = rodt_length_given(finding->applied_stroke) && rodt_length_given(finding->limit);
    if (barred && !all)
        snprintf(sentence, sizeof sentence, say("%s released, %s applied"),
                 tape_word(finding, finding->released, released), tape_word(finding, finding->applied, applied));
    else if (!say_message(rodt_finding_message(finding, &message), &message, sentence, sizeof sentence))
        return;
    print_wrapped(stdout, finding->unit == RODT_UNIT_IN ? say("Inches") : say("Read"), INDENT, sentence);
}

static void print_tape(const rodt_finding *finding)
{
    char sentence[SAID_SIZE];
    rodt_message message;
    if (say_message(rodt_finding_proof_message(finding, &message), &message, sentence, sizeof sentence))
        print_wrapped(stdout, say("Tape"), INDENT, sentence);
}

/* What decided an open verdict is before everything else. */
static void print_finding(const rodt_finding *finding, bool all)
{
    bool open = finding->verdict == RODT_VERDICT_UNDETERMINED;
    size_t left = 0;
    print_verdict(finding);
    putchar('\n');
    if (open)
        left = print_reasons(finding, all);
    else
        print_bar(finding);
    print_next(finding);
    if (open)
        print_bar(finding);
    else
        left = print_reasons(finding, all);
    print_tape(finding);
    print_sum(finding, all);
    print_law(finding);
    if (all)
        print_pressure_source(finding);
    print_wrapped(stdout, say("Safety"), INDENT,
                  say("Chock the wheels. The cited law and a licensed inspector decide."));
    if (left > 0)
        print_wrapped(stdout, say("More"), INDENT,
                      say_number("1 more note: --why", "more notes: --why", (unsigned long)left));
}

static void print_short(const rodt_finding *finding)
{
    char word[40], stroke[WORD_SIZE], limit[WORD_SIZE], chamber[RODT_CHAMBER_TEXT_SIZE], line[4 * WORD_SIZE + 80];
    bool inches = finding->unit == RODT_UNIT_IN && rodt_length_given(finding->limit);
    name_verdict(finding, word);
    snprintf(line, sizeof line, inches ? say("%s %s of %s in, %s%s") : say("%s %s of %s, %s%s"), word,
             tape_word(finding, finding->applied_stroke, stroke), tape_word(finding, finding->limit, limit),
             format_chamber(&finding->chamber, chamber),
             rodt_finding_has(finding, RODT_REASON_LIMIT_UNCONFIRMED)       ? say(", unconfirmed")
             : rodt_finding_has(finding, RODT_REASON_LIMIT_COMMON_PRACTICE) ? say(", common practice")
                                                                            : "");
    print_wrapped(stdout, "", 0, line);
}

static void print_spoken(const rodt_finding *finding)
{
    char text[SAID_SIZE];
    rodt_message message;
    if (say_message(rodt_finding_spoken_message(finding, &message), &message, text, sizeof text))
        print_wrapped(stdout, say("Say"), INDENT, text);
}

/* --- For programs ------------------------------------------------------------------------------------ */

static rodt_status format_finding(const void *finding, char *text, size_t size, size_t *needed)
{
    return rodt_finding_json_format(finding, NULL, 0, text, size, needed);
}

/* --- The command ------------------------------------------------------------------------------------- */

static int status_of(rodt_verdict verdict)
{
    switch (verdict) {
    case RODT_VERDICT_IN_ADJUSTMENT: return STATUS_GOOD;
    case RODT_VERDICT_OUT_OF_ADJUSTMENT:
    case RODT_VERDICT_INOPERATIVE: return STATUS_OUT;
    case RODT_VERDICT_UNDETERMINED: break;
    }
    return STATUS_UNDETERMINED;
}

static int run(int argc, char **argv)
{
    command_line from;
    rule_context context;
    rodt_finding finding;
    int status = parse_arguments(&stroke_command, argc, argv, 3, 3, &from);
    if (status != STATUS_CONTINUE)
        return status;
    status = rule_context_open(option_value(&from, STROKE_RULES), NULL, option_value(&from, STROKE_LIMITS),
                               option_value(&from, STROKE_AS_OF), &context);
    if (status == STATUS_CONTINUE)
        status = judge(&from, &context, &finding);
    if (status == STATUS_CONTINUE) {
        if (option_given(&from, STROKE_JSON))
            status = json_print(format_finding, &finding);
        else if (option_given(&from, STROKE_SHORT))
            print_short(&finding);
        else
            print_finding(&finding, option_given(&from, STROKE_WHY));
        if (option_given(&from, STROKE_SPEAK) && !option_given(&from, STROKE_JSON))
            print_spoken(&finding);
        status = status == STATUS_CONTINUE ? status_of((rodt_verdict)finding.verdict) : status;
    }
    rule_context_close(&context);
    return status;
}

static const file_argument files[] = {{STROKE_LIMITS, false}};

const command_spec stroke_command = {
    .name = "stroke",
    .operands = "CHAMBER RELEASED APPLIED",
    .summary = "judge one wheel end from two tape readings",
    .help = "Judges one wheel end. RELEASED and APPLIED are the distances from the chamber face to the clevis pin, "
            "brakes released and fully applied; their difference is the applied stroke. Write them as the tape "
            "reads: \"2 1/8\", 2-1/8, 2.125, \"54 mm\".\n"
            "\n"
            "CHAMBER is the mark on the housing: 20, T30, 30L, \"24 long\", 3030 (the first number is the service "
            "chamber), \"bolt C\", \"roto 30\", dd3.\n"
            "\n"
            "  rodtravel stroke 30 \"2 1/8\" \"4 1/8\" --class standard --psi 95\n"
            "  rodtravel stroke 24L \"2 in\" \"4 1/2 in\" --rated 3 --division 1/16\n"
            "  rodtravel stroke 30 54 105 --unit mm --as-of 2021-10-13\n"
            "\n"
            "Before: chock the wheels, release the spring brakes, stop the engine, bring the reservoirs into the "
            "window of the rule set (90 to 100 psi for " RODT_DEFAULT_RULES "), hold a full application.\n",
    .options = options,
    .option_count = COUNT_OF(options),
    .files = files,
    .file_count = COUNT_OF(files),
    .run = run,
};
