/* SPDX-License-Identifier: Apache-2.0 */
/* rodtravel air: one air-system check, or the estimate of full applications. */
#include "air/air.h"
#include "air/steps.h"
#include "input/air_words.h"
#include "commands.h"
#include "input/rule_context.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/options.h"
#include "ui/wrap.h"

#include <stdio.h>
#include <string.h>

#define SPOKEN_INDENT 12u

static const option_spec options[AIR_OPTIONS] = {
    [AIR_SECONDS] = {"seconds", "TIME",
                     "build-up: the time; loss: length of the test, 60 if not given; 2:05 is minutes and seconds",
                     false},
    [AIR_FROM] = {"from", "PSI", "build-up: pressure at which the time starts", false},
    [AIR_TO] = {"to", "PSI", "build-up: pressure at which it ends", false},
    [AIR_START] = {"start", "warning|applications|recovery",
                   "build-up: timed from where the warning stops, from after five full applications, or from after one "
                   "back to the pressure before it; instead of --from and --to", false},
    [AIR_BEFORE] = {"before", "PSI", "loss, reserve: pressure before", false},
    [AIR_AFTER] = {"after", "PSI", "loss, reserve: pressure after", false},
    [AIR_APPLICATIONS] = {"applications", "N", "reserve: full applications made; as the rule asks if not given", false},
    [AIR_VEHICLE] = {"vehicle", "single|combination|bus", "which vehicle it is", false},
    [AIR_TOWED] = {"towed", "N", "towed units of a combination", false},
    [AIR_BUILT] = {"built", "DATE", "day or year of build", false},
    [AIR_CUT_OUT] = {"cut-out", "PSI", "warning, cut-in: the governor's cut-out", false},
    [AIR_CUT_IN] = {"cut-in", "PSI", "warning, cut-out: the governor's cut-in", false},
    [AIR_RESERVOIRS] = {"reservoirs", "IN3", "build-up, estimate: volume of the reservoirs in cubic inches", false},
    [AIR_CHAMBERS] = {"chambers", "LIST", "build-up, estimate: chambers that they serve, such as 20,20,30,30", false},
    [AIR_PSI] = {"psi", "PSI", "estimate: pressure before the first application", false},
    [AIR_FILL] = {"fill", "PART", "estimate: part of the rated volume that an application fills; 1 if not given",
                  false},
    [AIR_FLOOR] = {"floor", "PSI", "estimate: least pressure; start of the rule set's window if not given", false},
    [AIR_RULES] = {"rules", "ID", "rule set; " RODT_DEFAULT_RULES " if not given", false},
    [AIR_LIMITS] = {"limits", "FILE", "a carrier's own, stricter figures on top of it", false},
    [AIR_SPEAK] = {"speak", NULL, "also what one does, sees and says aloud, and what would have been defective", false},
    [AIR_JSON] = {"json", NULL, "the answer as one JSON object", false},
};

int air_status(rodt_air_result result)
{
    switch (result) {
    case RODT_AIR_RESULT_GOOD:
    case RODT_AIR_RESULT_NOTED: return STATUS_GOOD; /* a usual figure is no limit */
    case RODT_AIR_RESULT_DEFECTIVE: return STATUS_OUT;
    case RODT_AIR_RESULT_NOT_DONE:
    case RODT_AIR_RESULT_UNDETERMINED: break;
    }
    return STATUS_UNDETERMINED;
}

static int answer_estimate(const command_line *from, const rodt_rules *rules)
{
    static const size_t taken[] = {AIR_PSI, AIR_FILL, AIR_FLOOR, AIR_RESERVOIRS, AIR_CHAMBERS, AIR_RULES, AIR_JSON};
    air_estimate estimate;
    size_t known = 0;
    for (size_t i = 0; i < COUNT_OF(taken); i++)
        known += option_given(from, taken[i]);
    if (known < from->given_count)
        return print_error("estimate takes --psi, --reservoirs, --chambers, --fill, --floor, --rules and --json only");
    int status = read_air_estimate(from, rules, &estimate);
    if (status != STATUS_CONTINUE)
        return status;
    return option_given(from, AIR_JSON) ? write_air_estimate(&estimate) : print_air_estimate(&estimate);
}

static void print_spoken(const rodt_air_finding *finding)
{
    char text[SAID_SIZE];
    rodt_message message;
    putchar('\n');
    print_step(stdout, rodt_step_of_check((rodt_air_check)finding->reading.check), finding->rules,
               &finding->reading);
    if (say_message(rodt_air_finding_spoken_message(finding, &message), &message, text, sizeof text))
        print_wrapped(stdout, say("Say"), SPOKEN_INDENT, text);
}

static int answer_check(const command_line *from, rodt_air_check check, const rodt_rules *rules)
{
    rodt_air_reading reading;
    rodt_air_finding finding;
    int status = read_air_check(from, check, &reading);
    if (status != STATUS_CONTINUE)
        return status;
    rodt_error error;
    if (rodt_air_reading_judge(&reading, rules, &finding, &error) != RODT_OK)
        return print_library_error(&error);
    if (option_given(from, AIR_JSON))
        status = write_air_finding(&finding);
    else
        print_air_finding(&finding);
    if (option_given(from, AIR_SPEAK) && !option_given(from, AIR_JSON))
        print_spoken(&finding);
    return status == STATUS_CONTINUE ? air_status(finding.result) : status;
}

static int print_check_error(const char *word)
{
    char words[300] = "";
    for (int i = RODT_AIR_CHECK_NONE + 1; i < RODT_AIR_CHECK_END; i++) {
        size_t used = strlen(words);
        snprintf(words + used, sizeof words - used, "%s, ", rodt_air_check_name((rodt_air_check)i));
    }
    return print_error("there is no check \"%s\"; there are %sestimate", word, words);
}

static int run(int argc, char **argv)
{
    command_line from;
    rule_context context;
    int status = parse_arguments(&air_command, argc, argv, 1, 2, &from);
    if (status != STATUS_CONTINUE)
        return status;
    bool estimate = strcmp(from.operands[0], "estimate") == 0;
    rodt_air_check check = air_check_of(from.operands[0]);
    if (!estimate && check == RODT_AIR_CHECK_NONE)
        return print_check_error(from.operands[0]);
    status = rule_context_open(option_value(&from, AIR_RULES), NULL, option_value(&from, AIR_LIMITS), NULL, &context);
    if (status == STATUS_CONTINUE)
        status = estimate ? answer_estimate(&from, context.air_rules) : answer_check(&from, check, context.air_rules);
    rule_context_close(&context);
    return status;
}

static const file_argument files[] = {{AIR_LIMITS, false}};

const command_spec air_command = {
    .name = "air",
    .operands = "CHECK [READING]",
    .summary = "judge an air-system check, or estimate full applications",
    .help = "Judges one check of the air system done in the cab, by the published edge of a rule set. READING is a "
            "pressure in psi (or \"655 kPa\") or a word; checks of two readings take options. For a warning, a "
            "governor, a valve or a build-up that never came, READING is never.\n"
            "\n"
            "  rodtravel air warning 62\n"
            "  rodtravel air warning never\n"
            "  rodtravel air build-up --seconds 38 --from 85 --to 100 --rules us-cdl\n"
            "  rodtravel air cut-out 125 --rules us-inuse\n"
            "  rodtravel air cut-in 100 --rules us-inuse\n"
            "  rodtravel air loss-released --before 110 --after 109 --vehicle single\n"
            "  rodtravel air loss-applied --before 110 --after 107 --towed 1\n"
            "  rodtravel air reserve --before 120 --after 105\n"
            "  rodtravel air spring-brake holds|moves\n"
            "  rodtravel air tractor-protection 45, supply-valve 35, parking-valve 30\n"
            "  rodtravel air tractor-protection holds|escapes    air from the service line\n"
            "  rodtravel air drain free|stuck\n"
            "  rodtravel air contamination found|none    moisture, oil or sludge\n"
            "  rodtravel air trailer-brakes apply|none   on loss of supply\n"
            "  rodtravel air audible-leak heard|none\n"
            "  rodtravel air estimate --psi 100 --reservoirs 2848 --chambers 30,30,30,30\n"
            "\n"
            "The figures of a rule set: rodtravel limits --air --rules ID. Exit status 1: defective; 3: undetermined; "
            "0 also where the rule set has a usual figure only, which is no limit.\n",
    .options = options,
    .option_count = COUNT_OF(options),
    .files = files,
    .file_count = COUNT_OF(files),
    .run = run,
};
