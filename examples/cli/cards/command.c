/* SPDX-License-Identifier: Apache-2.0 */
/* rodtravel cards: what one does, sees and says at each step of an inspection, to read aloud or to print. */
#include "cards/cards.h"
#include "commands.h"
#include "input/air_words.h"
#include "input/numbers.h"
#include "input/rule_context.h"
#include "io/atomic_file.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/message.h"

enum { CARDS_RULES, CARDS_VEHICLE, CARDS_TOWED, CARDS_BUILT, CARDS_HTML };

static const option_spec options[] = {
    [CARDS_RULES] = {"rules", "ID", "rule set whose figures are on the cards; " RODT_DEFAULT_RULES " if not given",
                     false},
    [CARDS_VEHICLE] = {"vehicle", "single|combination|bus", "the figures and steps of this vehicle alone", false},
    [CARDS_TOWED] = {"towed", "N", "towed units of a combination", false},
    [CARDS_BUILT] = {"built", "DATE", "day or year of build", false},
    [CARDS_HTML] = {"html", "FILE",
                    "write the cards as one page to print: four to a sheet of A4 or Letter, with cut marks", false},
};

static int read_towed(const command_line *from, int16_t *out)
{
    const char *text = option_value(from, CARDS_TOWED);
    rodt_ratio number = {0, 0};
    if (text == NULL)
        return STATUS_CONTINUE;
    if (!read_ratio(text, false, &number) || number.den != 1 || number.num < 1 ||
        number.num > RODT_AIR_COUNT_MAX)
        return print_error("--towed is a whole number, 1 to %d, not \"%s\"", RODT_AIR_COUNT_MAX, text);
    *out = (int16_t)number.num;
    return STATUS_CONTINUE;
}

static int read_vehicle(const command_line *from, rodt_air_reading *out)
{
    rodt_error error;
    int vehicle = RODT_VEHICLE_CLASS_ANY;
    int status = choose_option(from, CARDS_VEHICLE, vehicle_words, VEHICLE_WORDS, &vehicle);
    if (status == STATUS_CONTINUE)
        status = read_towed(from, &out->towed_units);
    if (status != STATUS_CONTINUE)
        return status;
    out->vehicle = (rodt_vehicle_class)(out->towed_units > 0 && vehicle == RODT_VEHICLE_CLASS_ANY
                                            ? (int)RODT_VEHICLE_CLASS_COMBINATION
                                            : vehicle);
    if (out->towed_units > 0 && out->vehicle != RODT_VEHICLE_CLASS_COMBINATION)
        return print_error("only a combination has towed units");
    if (option_given(from, CARDS_BUILT) &&
        read_built_day(option_value(from, CARDS_BUILT), &out->built, &error) != RODT_OK)
        return print_option_error(from, CARDS_BUILT, &error);
    return STATUS_CONTINUE;
}

static int write_page(const card_deck *deck, const char *name)
{
    atomic_file file;
    int status = atomic_file_open(name, &file);
    if (status != STATUS_CONTINUE)
        return status;
    cards_write_html(deck, file.to);
    return atomic_file_close(&file, true);
}

static int answer(const card_deck *deck, const char *page)
{
    if (page != NULL)
        return write_page(deck, page);
    cards_print(deck, stdout);
    return STATUS_CONTINUE;
}

static int run(int argc, char **argv)
{
    command_line from;
    rule_context context;
    card_deck deck = {.rules = NULL};
    int status = parse_arguments(&cards_command, argc, argv, 0, 0, &from);
    if (status != STATUS_CONTINUE)
        return status;
    status = read_vehicle(&from, &deck.vehicle);
    if (status != STATUS_CONTINUE)
        return status;
    status = rule_context_open(option_value(&from, CARDS_RULES), NULL, NULL, NULL, &context);
    if (status == STATUS_CONTINUE) {
        deck.rules = context.air_rules;
        status = answer(&deck, option_value(&from, CARDS_HTML));
    }
    rule_context_close(&context);
    return status == STATUS_CONTINUE ? STATUS_GOOD : status;
}

static const file_argument files[] = {{CARDS_HTML, true}};

const command_spec cards_command = {
    .name = "cards",
    .operands = "",
    .summary = "the inspection step by step, to say aloud and to print",
    .help = "Shows each step of an inspection in four sentences: what I do, what I see, why that is good, and what "
            "would be defective, with the figures of the rule set. Read aloud they are what an examiner asks for.\n"
            "\n"
            "  rodtravel cards --rules ca-on --vehicle single\n"
            "  rodtravel cards --rules us-cdl --vehicle combination --towed 1 --html cards.html\n"
            "\n"
            "A page prints as cards of A6 with cut marks, four to a sheet of A4; on Letter they are 9 mm shorter. "
            "They need no colour. A figure that was not read in its source says so at the foot of its card.\n",
    .options = options,
    .option_count = COUNT_OF(options),
    .files = files,
    .file_count = COUNT_OF(files),
    .run = run,
};
