/* SPDX-License-Identifier: Apache-2.0 */
/* rodtravel walkround: the guided inspection, from the chocks to the verdict. */
#include "walkround/walkround.h"
#include "commands.h"
#include "input/file_options.h"
#include "input/numbers.h"
#include "input/rule_context.h"
#include "input/text_file.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/options.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

enum {
    ROUND_RULES, ROUND_AIR_RULES, ROUND_LIMITS, ROUND_AS_OF, ROUND_UNIT, ROUND_ANSWERS, ROUND_ORDER,
    ROUND_RESERVOIRS, ROUND_CAUTIONS, ROUND_SKIPPED, ROUND_SPEAK, ROUND_BACK, ROUND_FROM
};

static const option_spec options[] = {
    [ROUND_RULES] = {"rules", "ID",
                     "rule set of the strokes, or a word of its title: ontario; " RODT_DEFAULT_RULES
                     " if not given", false},
    [ROUND_AIR_RULES] = {"air-rules", "ID", "rule set of the air checks; that of the strokes if not given", false},
    [ROUND_LIMITS] = {"limits", "FILE", "a carrier's own, stricter limits on top of the rule set", false},
    [ROUND_AS_OF] = {"as-of", "DATE", "day of the inspection; today if not given", false},
    [ROUND_UNIT] = {"unit", "in|mm|cm", "unit of lengths that name none; inches if not given", false},
    [ROUND_ANSWERS] = {"answers", "FILE",
                       "take the answers from FILE, one a line as they would be typed; - is standard input", false},
    [ROUND_ORDER] = {"order", "round|axle",
                     "down the left side and up the right, or both ends of each axle; round if not given", false},
    [ROUND_RESERVOIRS] = {"reservoirs", "IN3", "volume of the reservoirs in cubic inches, for the estimate", false},
    [ROUND_CAUTIONS] = {"cautions-confirmed", NULL, "for scripts: confirms the cautions; the record says so", false},
    [ROUND_SKIPPED] = {"skipped", NULL, "ask again what was skipped", false},
    [ROUND_SPEAK] = {"speak", NULL, "at each step what one does, sees and says aloud", false},
    [ROUND_BACK] = {"back", "PLACE", "ask first, again, the last question of a wheel end or check, such as 2L", false},
    [ROUND_FROM] = {"from", "LAST",
                    "begin from the last record of this vehicle: chambers, adjusters and arms stay, readings are new",
                    false},
};

/* The id, where a word of the title was given. */
static const char *rules_option(const command_line *from, size_t option)
{
    const char *name = option_value(from, option);
    const rodt_rules *rules = name != NULL ? rules_by_name(name) : NULL;
    return rules != NULL ? rodt_rules_id(rules) : name;
}

static int read_options(const command_line *from, walk *of, walk_start *start)
{
    static const choice orders[] = {{"round", 0}, {"axle", 1}};
    int by_axle = 0;
    RODT_ENUM32(rodt_unit) unit = RODT_UNIT_IN;
    const char *volume = option_value(from, ROUND_RESERVOIRS);
    int status = choose_option(from, ROUND_ORDER, orders, COUNT_OF(orders), &by_axle);
    if (status == STATUS_CONTINUE)
        status = read_unit_option(from, ROUND_UNIT, &unit);
    if (status == STATUS_CONTINUE && volume != NULL &&
        (!read_ratio(volume, false, &of->reservoirs) || of->reservoirs.num == 0))
        status = print_error("--reservoirs is a number such as 5568, not \"%s\"", volume);
    *start = (walk_start){rules_option(from, ROUND_RULES), rules_option(from, ROUND_AIR_RULES),
                          option_value(from, ROUND_AS_OF),
                          option_given(from, ROUND_UNIT) ? rodt_unit_name(unit) : NULL,
                          option_value(from, ROUND_FROM)};
    of->by_axle = by_axle != 0;
    of->again = option_given(from, ROUND_SKIPPED);
    of->speak = option_given(from, ROUND_SPEAK);
    of->back = option_value(from, ROUND_BACK);
    of->limits_file = option_value(from, ROUND_LIMITS);
    return status;
}

static void print_start(const walk *of)
{
    const record_value *head = of->record.head;
    size_t at_once = record_step(&of->record, STEP_LIMITS) != NULL;
    bool last = record_step(&of->record, STEP_FROM) != NULL && record_step(&of->record, STEP_CAUTIONS) == NULL;
    bool begun = !last && (of->record.step_count > at_once || of->record.end_count > 0);
    const char *air = head[HEAD_AIR_RULES].text;
    walk_print("", 0,
               begun ? say("Going on with %s, %s, rule set %s%s%s.")
                     : say("New record %s, %s, rule set %s%s%s."),
               of->file, head[HEAD_DATE].text, head[HEAD_RULES].text, air != NULL ? say(", air by ") : "",
               air != NULL ? air : "");
    if (last)
        walk_print(
            "", 0,
            say("Kept from the record of %s: the vehicle, its chambers, adjusters and arms. Readings, air "
                "checks and conditions are asked for; show lists what was kept."),
            record_step(&of->record, STEP_FROM));
    walk_print_last(of);
    if (begun)
        walk_print("", 0, "%s", say("Every earlier answer is kept."));
    else
        walk_print(
            "", 0, "%s",
            say("At every question: help or ?, back or <, skip or -, show or =, note TEXT, quit or q. Every "
                "answer is saved immediately."));
}

/* Confirmed for a script; the word of a person is never replaced. */
static int confirm_cautions(walk *of)
{
    if (record_step(&of->record, STEP_CAUTIONS) != NULL)
        return STATUS_CONTINUE;
    if (!walk_set_step(of, &of->record, STEP_CAUTIONS, STEP_BY_OPTION))
        return print_error("no memory");
    walk_print("", 0, "%s", say("The cautions are confirmed by an option, not by a person."));
    return walk_save(of, &of->record);
}

static int open_walk(const command_line *from, walk *of)
{
    walk_start start;
    const char *answers = option_value(from, ROUND_ANSWERS);
    of->file = from->operands[0];
    of->part = WALK_PARTS;
    int status = read_options(from, of, &start);
    if (status != STATUS_CONTINUE)
        return status;
    if (!walk_input_open(answers, &of->input))
        return print_error("cannot open %s: %s", answers, say_system_error(errno));
    status = walk_open(of, &start);
    if (status != STATUS_CONTINUE)
        return status;
    print_start(of);
    if (option_given(from, ROUND_CAUTIONS))
        status = confirm_cautions(of);
    return status;
}

int walk_open_command(int argc, char **argv, walk **out)
{
    command_line from;
    *out = NULL;
    int status = parse_arguments(&walkround_command, argc, argv, 1, 1, &from);
    if (status != STATUS_CONTINUE)
        return status;
    walk *of = calloc(1, sizeof *of);
    if (of == NULL)
        return print_error("no memory");
    of->lock = -1;
    *out = of;
    return open_walk(&from, of);
}

void walk_free(walk *of)
{
    if (of == NULL)
        return;
    walk_close(of);
    rule_context_close(&of->context);
    record_free(&of->record);
    walk_free_texts(of);
    free(of);
}

static input_status read_line(walk_session *at)
{
    walk_input *input = &at->of->input;
    input_status status;
    do
        status = walk_read_line(input, at->text);
    while (status == INPUT_LINE && !walk_is_person(input) && text_is_comment(at->text));
    if (!walk_is_person(input) && status == INPUT_LINE)
        walk_echo(at->text);
    return status;
}

static int talk(walk *of)
{
    walk_session at;
    bool open = walk_begin(of, &at);
    while (open)
        open = walk_take_line(&at, read_line(&at));
    return at.status;
}

static int run(int argc, char **argv)
{
    walk *of;
    int status = walk_open_command(argc, argv, &of);
    if (status == STATUS_CONTINUE)
        status = talk(of);
    walk_free(of);
    return status;
}

static const file_argument files[] = {{FILE_OPERAND, true}, {ROUND_LIMITS, false}, {ROUND_ANSWERS, false}};

const command_spec walkround_command = {
    .name = "walkround",
    .operands = "RECORD",
    .summary = "do a guided inspection, question by question, to the verdict",
    .help = "Asks for one inspection step by step: cautions, securing, air checks, first readings of all wheel ends, "
            "the full application, second readings, verdict. RECORD is the file that keeps it, read by rodtravel "
            "report; every answer is on the disk before the next question. With the same file it goes on where it "
            "was.\n"
            "\n"
            "  rodtravel walkround T-114.json\n"
            "  rodtravel walkround T-114.json --air-rules us-inuse\n"
            "  rodtravel walkround T-114-tue.json --from T-114-mon.json\n"
            "  rodtravel walkround T-114.json --answers T-114.txt\n"
            "\n"
            "At every question:\n"
            "  Enter         takes the answer in square brackets\n"
            "  help, ?       what this step is about\n"
            "  back, <       one question back; back 3L: to the last one of that wheel end\n"
            "  again 3L      the whole wheel end once more; again warning: the whole check\n"
            "  skip, -       not done, not measured; skip 3L: the rest of that wheel end\n"
            "  never         at a gauge or a clock: it did not come, which is a defect\n"
            "  t             at seconds: a clock; it counts a leak test down and rings\n"
            "  air ID        asks the air checks of another rule set, if none was named\n"
            "  show, =       everything that was entered\n"
            "  note TEXT     a remark on this wheel end, check or vehicle\n"
            "  quit, q       stop; so do Ctrl-C and the end of the input\n"
            "\n"
            "An unlikely answer gets a warning (!); type keep or k to keep it. In a file of answers lines that begin "
            "with # are comments and an empty line is Enter; the first answer that is not accepted ends the run with "
            "status 2 and its line. A walk-round that is not finished ends with status 1 or 3.\n",
    .options = options,
    .option_count = COUNT_OF(options),
    .files = files,
    .file_count = COUNT_OF(files),
    .run = run,
};
