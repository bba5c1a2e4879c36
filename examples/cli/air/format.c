/* SPDX-License-Identifier: Apache-2.0 */
/* The answers of `rodtravel air`, for people and for programs. */
#include "air/air.h"
#include "ui/exit_status.h"
#include "ui/format.h"
#include "ui/json_writer.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/wrap.h"

#include <stdio.h>
#include <string.h>

#define INDENT 8u
#define SENTENCE_SIZE 600

/* --- One check, for people --------------------------------------------------------------------------- */

static const char *result_words(rodt_air_result result)
{
    switch (result) {
    case RODT_AIR_RESULT_GOOD: return say("good");
    case RODT_AIR_RESULT_DEFECTIVE: return say("defective");
    case RODT_AIR_RESULT_UNDETERMINED: return say("undetermined");
    case RODT_AIR_RESULT_NOTED: return say("noted");
    case RODT_AIR_RESULT_NOT_DONE: break;
    }
    return say("not-done");
}

static void print_result(const rodt_air_finding *finding)
{
    static const paint_kind paints[] = {[RODT_AIR_RESULT_NOT_DONE] = PAINT_OPEN,
                                        [RODT_AIR_RESULT_GOOD] = PAINT_GOOD,
                                        [RODT_AIR_RESULT_DEFECTIVE] = PAINT_BAD,
                                        [RODT_AIR_RESULT_UNDETERMINED] = PAINT_OPEN,
                                        [RODT_AIR_RESULT_NOTED] = PAINT_OPEN};
    char spaced[40], word[40];
    snprintf(spaced, sizeof spaced, " %s ", result_words((rodt_air_result)finding->result));
    char title[SAID_SIZE], text[SAID_SIZE + 60];
    rodt_message message;
    (void)say_message(rodt_air_check_message((rodt_air_check)finding->reading.check, &message), &message, title,
                      sizeof title);
    snprintf(text, sizeof text,
             finding->major   ? say("%s, a major defect")
             : finding->minor ? say("%s, a minor defect")
                              : "%s",
             title);
    print_title(stdout, paints[finding->result], format_capitals(spaced, word, sizeof word), text);
    putchar('\n');
}

/* The rule set that has the row that judged: the carrier's, or the law below it. */
static const rodt_rules *judging_rules(const rodt_air_finding *finding)
{
    const rodt_rules *law = rodt_rules_air_law(finding->rules);
    return law == NULL || finding->row == finding->own_row ? finding->rules : law;
}

static void print_row(const rodt_air_limit *row, const rodt_rules *rules)
{
    char words[RODT_SOURCE_TEXT_SIZE], line[RODT_SOURCE_TEXT_SIZE + 200], text[AIR_RULE_SIZE];
    char evidence[SAID_SIZE];
    print_wrapped(stdout, say("Rule"), INDENT, air_row_rule(row, text));
    if (air_row_whom(row, text)[0] != '\0')
        print_wrapped(stdout, "", INDENT, text);
    if (row->setup[0] != '\0')
        print_wrapped(stdout, say("How"), INDENT, say_table_text(row->setup));
    snprintf(line, sizeof line, "%s: %s (%s)", rodt_rules_id(rules), format_source(row->source, words),
             say_evidence((rodt_evidence)row->evidence, evidence));
    print_wrapped(stdout, say("Source"), INDENT, line);
}

/* What the law says beside a carrier's figure, and where. */
static void print_law(const rodt_air_limit *row, const rodt_rules *law)
{
    char words[RODT_SOURCE_TEXT_SIZE], line[RODT_SOURCE_TEXT_SIZE + AIR_RULE_SIZE + 200], text[AIR_RULE_SIZE];
    char evidence[SAID_SIZE];
    snprintf(line, sizeof line, "%s; %s: %s (%s)", air_row_rule(row, text), rodt_rules_id(law),
             format_source(row->source, words), say_evidence((rodt_evidence)row->evidence, evidence));
    print_wrapped(stdout, say("Law"), INDENT, line);
}

/* How to give the fact that decides. */
static const char *missing_step(rodt_air_missing missing)
{
    switch (missing) {
    case RODT_AIR_MISSING_ROW: return say("Choose a rule set that has one with --rules:");
    case RODT_AIR_MISSING_VEHICLE:
        return say("Give --vehicle single, combination or bus, and --towed for the units of a combination.");
    case RODT_AIR_MISSING_BUILT: return say("Give the day of build: --built 1998 or --built 1975-03-01.");
    case RODT_AIR_MISSING_VOLUME:
        return say("Give --reservoirs IN3 and --chambers LIST, or take a rule set with a fixed time.");
    case RODT_AIR_MISSING_SPAN:
        return say("Time the span of the rule and give it with --from and --to, or with --start.");
    case RODT_AIR_MISSING_VALUE: return say("Give the reading; rodtravel air --help shows how.");
    case RODT_AIR_MISSING_SENSE: return say("Read the gauge again.");
    case RODT_AIR_MISSING_CUT_OUT: return say("Give the governor's cut-out: --cut-out 125.");
    case RODT_AIR_MISSING_APPLICATIONS:
        return say("Do the test with the number of applications that the rule asks for.");
    case RODT_AIR_MISSING_OTHER_WAY: return say("Time the other way too and give it with --start.");
    case RODT_AIR_MISSING_NOTHING: break;
    }
    return NULL;
}

static const char *next_step(const rodt_air_finding *finding)
{
    switch (finding->result) {
    case RODT_AIR_RESULT_DEFECTIVE:
        return finding->minor
                   ? say("Write it on the inspection report, tell the operator and have it repaired.")
                   : say("Do not drive: report it and have it repaired.");
    case RODT_AIR_RESULT_UNDETERMINED: return missing_step(finding->missing);
    case RODT_AIR_RESULT_NOTED: return say("No limit was judged. Compare with the vehicle maker's figure.");
    case RODT_AIR_RESULT_NOT_DONE: return say("Nothing was recorded; rodtravel air --help shows how.");
    case RODT_AIR_RESULT_GOOD: break;
    }
    return NULL;
}

static bool has_check(const rodt_rules *rules, rodt_air_check check)
{
    for (size_t i = 0; i < rodt_rules_air_count(rules); i++) {
        if (rodt_rules_air_at(rules, i)->check == check)
            return true;
    }
    return false;
}

static void print_next(const rodt_air_finding *finding)
{
    char line[SAID_SIZE];
    const char *next = next_step(finding);
    if (next == NULL)
        return;
    size_t used = (size_t)snprintf(line, sizeof line, "%s", next);
    bool list = finding->result == RODT_AIR_RESULT_UNDETERMINED && finding->missing == RODT_AIR_MISSING_ROW;
    for (size_t i = 0; list && i < rodt_rules_count() && used < sizeof line; i++) {
        const rodt_rules *rules = rodt_rules_at(i);
        if (rules != finding->rules && has_check(rules, finding->reading.check))
            used += (size_t)snprintf(line + used, sizeof line - used, " %s", rodt_rules_id(rules));
    }
    print_wrapped(stdout, say("Next"), INDENT, line);
}

void print_air_finding(const rodt_air_finding *finding)
{
    char sentence[SAID_SIZE];
    rodt_message message;
    print_result(finding);
    if (say_message(rodt_air_finding_message(finding, &message), &message, sentence, sizeof sentence))
        print_wrapped(stdout, say("Found"), INDENT, sentence);
    if (say_message(rodt_air_finding_edge_message(finding, &message), &message, sentence, sizeof sentence))
        print_wrapped(stdout, say("Limit"), INDENT, sentence);
    if (finding->row != NULL) {
        print_row(finding->row, judging_rules(finding));
        if (finding->row == finding->own_row && finding->law_row != NULL)
            print_law(finding->law_row, rodt_rules_air_law(finding->rules));
        if (say_message(rodt_air_finding_note_message(finding, &message), &message, sentence, sizeof sentence))
            print_wrapped(stdout, say("Note"), INDENT, sentence);
    }
    print_next(finding);
    print_wrapped(stdout, say("Safety"), INDENT,
                  say("Chock the wheels. The cited law and a licensed inspector decide."));
}

/* --- One check, for programs ------------------------------------------------------------------------- */

static rodt_status format_finding(const void *finding, char *text, size_t size, size_t *needed)
{
    return rodt_air_finding_json_format(finding, NULL, 0, text, size, needed);
}

void put_air_finding(json_writer *json, const rodt_air_finding *finding) { json_record(json, format_finding, finding); }

int write_air_finding(const rodt_air_finding *finding) { return json_print(format_finding, finding); }

/* --- The estimate ------------------------------------------------------------------------------------ */

/* An estimate is no better than a tenth. */
static const char *tenths(rodt_pressure pressure, char word[WORD_SIZE])
{
    const rodt_length plain = {pressure.num, pressure.den};
    rodt_status status =
        rodt_length_format_decimal(plain, RODT_UNIT_IN, 1, RODT_ROUNDING_HALF_EVEN, word, WORD_SIZE, NULL);
    return status == RODT_OK ? word : "-";
}

static rodt_status count_applications(const air_estimate *from, unsigned *count)
{
    return rodt_reservoir_estimate_applications(from->pressure, from->floor, from->volumes.reservoirs,
                                                from->volumes.chambers, from->fill, count);
}

static rodt_status apply(const air_estimate *from, rodt_pressure before, rodt_pressure *after)
{
    return rodt_reservoir_estimate_application(before, from->volumes.reservoirs, from->volumes.chambers,
                                               from->fill, after);
}

#define SHOWN_APPLICATIONS 5u

/* The first few, as long as the exact figure fits. */
static void print_steps(const air_estimate *estimate)
{
    rodt_pressure pressure = estimate->pressure;
    char word[WORD_SIZE], line[200] = "";
    size_t used = 0;
    for (unsigned i = 1; i <= SHOWN_APPLICATIONS && apply(estimate, pressure, &pressure) == RODT_OK; i++) {
        int size = snprintf(line + used, sizeof line - used, "%s", i == 1 ? "" : ", ");
        used += size > 0 ? (size_t)size : 0;
        size = snprintf(line + used, sizeof line - used, say("%s psi after %u"), tenths(pressure, word), i);
        used += size > 0 ? (size_t)size : 0;
    }
    print_wrapped(stdout, say("Air"), INDENT, line);
}

#define MANY_APPLICATIONS 99u /* the count ends there */

static void print_count(const air_estimate *estimate, unsigned count)
{
    char floor[WORD_SIZE], line[300];
    format_pressure(estimate->floor, floor);
    if (count == 0)
        snprintf(line, sizeof line, say("already the first full application goes below %s psi"), floor);
    else if (count == MANY_APPLICATIONS)
        snprintf(line, sizeof line, say("%u or more full applications keep %s psi or more; recharge then"), count,
                 floor);
    else
        snprintf(line, sizeof line,
                 say_number("%u full application keeps %s psi or more; recharge then",
                            "%u full applications keep %s psi or more; recharge then", count), count, floor);
    print_wrapped(stdout, say("Count"), INDENT, line);
}

static int print_range_error(void)
{
    char text[SAID_SIZE];
    return print_error("%s", say_status(RODT_E_RANGE, text));
}

int print_air_estimate(const air_estimate *estimate)
{
    char a[WORD_SIZE], b[WORD_SIZE], c[WORD_SIZE], line[300];
    unsigned count;
    if (count_applications(estimate, &count) != RODT_OK)
        return print_range_error();
    snprintf(line, sizeof line, say("full applications from %s psi, engine off"),
             format_pressure(estimate->pressure, a));
    print_title(stdout, PAINT_OPEN, say(" ESTIMATE "), line);
    putchar('\n');
    print_steps(estimate);
    print_count(estimate, count);
    snprintf(line, sizeof line,
             say("reservoirs of %s cubic inches, chambers of %s by Table V of 49 CFR 571.121, filled to %s of that"),
             format_ratio(estimate->volumes.reservoirs, a), format_ratio(estimate->volumes.chambers, b),
             format_ratio(estimate->fill, c));
    print_wrapped(stdout, say("From"), INDENT, line);
    print_wrapped(stdout, say("Note"), INDENT,
                  say("An estimate by Boyle's law, no figure of law: no leaks, no heat. The gauge decides."));
    print_wrapped(stdout, say("Safety"), INDENT,
                  say("Chock the wheels. The cited law and a licensed inspector decide."));
    return STATUS_GOOD;
}

int write_air_estimate(const air_estimate *estimate)
{
    char word[WORD_SIZE];
    unsigned count;
    rodt_pressure after;
    json_writer json = {.to = stdout, .first = true};
    if (count_applications(estimate, &count) != RODT_OK || apply(estimate, estimate->pressure, &after) != RODT_OK)
        return print_range_error();
    json_open(&json, '{');
    json_pair(&json, "check", "estimate");
    json_key(&json, "estimate");
    json_bool(&json, true);
    json_pressure(&json, "psi", estimate->pressure);
    json_pressure(&json, "floor", estimate->floor);
    json_ratio(&json, "reservoirs", estimate->volumes.reservoirs);
    json_ratio(&json, "chambers", estimate->volumes.chambers);
    json_ratio(&json, "fill", estimate->fill);
    json_pressure(&json, "psi_after_one", after);
    json_pair(&json, "psi_after_one_rounded", tenths(after, word));
    snprintf(word, sizeof word, "%u", count);
    json_pair(&json, "applications", word);
    json_close(&json, '}');
    putchar('\n');
    return STATUS_GOOD;
}
