/* SPDX-License-Identifier: Apache-2.0 */
/* rodtravel practice: invented vehicles to read, subtract, look up and judge; at a terminal, on paper, from a file. */
#include "io/atomic_file.h"
#include "practice/checks.h"
#include "commands.h"
#include "input/rule_context.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/json_writer.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/options.h"
#include "ui/wrap.h"

#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum {
    PRACTICE_SEED, PRACTICE_COUNT, PRACTICE_FAULTS, PRACTICE_VEHICLE, PRACTICE_LEVEL, PRACTICE_RULES,
    PRACTICE_AS_OF, PRACTICE_METRIC, PRACTICE_CHECKS, PRACTICE_SHEET, PRACTICE_KEY, PRACTICE_ANSWERS, PRACTICE_ASCII,
    PRACTICE_DESCRIBE, PRACTICE_JSON
};

static const option_spec options[] = {
    [PRACTICE_SEED] = {"seed", "N", "makes the vehicle; the same seed makes the same one on every machine. Chosen and "
                                    "shown if not given", false},
    [PRACTICE_COUNT] = {"count", "N", "so many vehicles, of the seeds N, N + 1 and so on; 1 if not given", false},
    [PRACTICE_FAULTS] = {"faults", "N", "pass over seeds whose vehicle has fewer than N brakes out of adjustment or "
                                        "inoperative, for a class that must find some", false},
    [PRACTICE_VEHICLE] = {"vehicle", "any|truck|bus|combination", "what it is; the seed decides if not given", false},
    [PRACTICE_LEVEL] = {"level", "basic|mixed|hard", "basic: plain marks and good conditions; mixed (if not given): "
                                                     "as a yard finds them; hard: traps all over", false},
    [PRACTICE_RULES] = {"rules", "ID", "rule set that judges; " RODT_DEFAULT_RULES " if not given", false},
    [PRACTICE_AS_OF] = {"as-of", "DATE", "day of the inspection; the seed decides if not given", false},
    [PRACTICE_METRIC] = {"metric", NULL, "the tape is in millimetres, and so is a number without a unit", false},
    [PRACTICE_CHECKS] = {"checks", NULL, "the checks in the cab instead of strokes: good or defective, minor or major, "
                                         "and what to do", false},
    [PRACTICE_SHEET] = {"sheet", "FILE", "write the sheet to be filled in; a page if FILE ends in .html, else text",
                        false},
    [PRACTICE_KEY] = {"key", "FILE", "write the answer key, in the same way", false},
    [PRACTICE_ANSWERS] = {"answers", "FILE", "mark the answers of a file instead of asking", false},
    [PRACTICE_ASCII] = {"ascii", NULL, "draw the tape with plain ASCII", false},
    [PRACTICE_DESCRIBE] = {"describe", NULL, "say in words where the pin is instead of drawing the tape", false},
    [PRACTICE_JSON] = {"json", NULL, "sheet, key and marks as JSON, one object a vehicle and line", false},
};

#define PRACTICE_FAULTS_MAX 12u

typedef struct session {
    const command_line *from;
    practice_setting setting; /* of the first vehicle */
    unsigned count;
    unsigned faults; /* brakes that each vehicle has to fail, at least */
    practice *vehicle;
} session;

/* --- Options ------------------------------------------------------------------------------------------ */

/* Plain digits, at most 19 of them: those fit whatever they are. */
static int read_number(const char *name, const char *text, uint64_t most, uint64_t *out)
{
    uint64_t value = 0;
    size_t digits = strspn(text, "0123456789");
    for (size_t i = 0; i < digits && digits <= 19; i++)
        value = value * 10 + (uint64_t)(text[i] - '0');
    if (digits == 0 || digits > 19 || text[digits] != '\0' || value > most)
        return print_error("--%s is a whole number up to %llu, not \"%s\"", name, (unsigned long long)most, text);
    *out = value;
    return STATUS_CONTINUE;
}

static int read_numbers(const command_line *from, session *out)
{
    const char *seed = option_value(from, PRACTICE_SEED), *count = option_value(from, PRACTICE_COUNT);
    const char *faults = option_value(from, PRACTICE_FAULTS);
    uint64_t vehicles = 1, least = 0;
    int status = STATUS_CONTINUE;
    if (seed != NULL)
        status = read_number("seed", seed, UINT64_C(1000000000000000000), &out->setting.seed);
    else
        out->setting.seed = practice_any_seed();
    if (status == STATUS_CONTINUE && count != NULL)
        status = read_number("count", count, PRACTICE_VEHICLES_MAX, &vehicles);
    if (status == STATUS_CONTINUE && vehicles == 0)
        status = print_error("--count is 1 at least");
    if (status == STATUS_CONTINUE && faults != NULL)
        status = read_number("faults", faults, PRACTICE_FAULTS_MAX, &least);
    out->count = (unsigned)vehicles;
    out->faults = (unsigned)least;
    return status;
}

static int read_words(const command_line *from, practice_setting *out)
{
    static const choice builds[] = {{"any", PRACTICE_ANY}, {"truck", PRACTICE_TRUCK}, {"bus", PRACTICE_BUS},
                                    {"combination", PRACTICE_COMBINATION}};
    static const choice levels[] = {{"basic", PRACTICE_BASIC}, {"mixed", PRACTICE_MIXED}, {"hard", PRACTICE_HARD}};
    int build = PRACTICE_ANY, level = PRACTICE_MIXED;
    int status = choose_option(from, PRACTICE_VEHICLE, builds, COUNT_OF(builds), &build);
    if (status == STATUS_CONTINUE)
        status = choose_option(from, PRACTICE_LEVEL, levels, COUNT_OF(levels), &level);
    out->build = (practice_build)build;
    out->level = (practice_level)level;
    return status;
}

static bool writes(const command_line *from)
{
    return option_given(from, PRACTICE_SHEET) || option_given(from, PRACTICE_KEY) || option_given(from, PRACTICE_JSON);
}

static int check_conflicts(const command_line *from)
{
    bool paper = option_given(from, PRACTICE_SHEET) || option_given(from, PRACTICE_KEY);
    if (paper && option_given(from, PRACTICE_ANSWERS))
        return print_error("--answers marks, --sheet and --key write: give one or the other");
    return STATUS_CONTINUE;
}

/* Stories have neither a tape nor a file of answers. */
static int check_checks(const command_line *from)
{
    static const size_t refused[] = {PRACTICE_METRIC,   PRACTICE_ANSWERS, PRACTICE_ASCII,
                                     PRACTICE_DESCRIBE, PRACTICE_JSON,    PRACTICE_AS_OF,
                                     PRACTICE_FAULTS};
    for (size_t i = 0; i < COUNT_OF(refused); i++) {
        if (option_given(from, refused[i]))
            return print_error("--checks does not go with --%s", options[refused[i]].name);
    }
    return STATUS_CONTINUE;
}

static int read_options(const command_line *from, const rule_context *law, session *out)
{
    practice_setting *setting = &out->setting;
    *out = (session){.from = from, .count = 1};
    int status = check_conflicts(from);
    if (status == STATUS_CONTINUE)
        status = read_words(from, setting);
    if (status == STATUS_CONTINUE)
        status = read_numbers(from, out);
    setting->rules = law->rules;
    setting->day = option_given(from, PRACTICE_AS_OF) ? law->day : (rodt_date){0, 0, 0};
    setting->unit = option_given(from, PRACTICE_METRIC) ? RODT_UNIT_MM : RODT_UNIT_IN;
    setting->described = option_given(from, PRACTICE_DESCRIBE);
    setting->ascii = option_given(from, PRACTICE_ASCII) || (!writes(from) && !shows_utf8());
    if (status == STATUS_CONTINUE && option_given(from, PRACTICE_CHECKS))
        return check_checks(from);
    if (status == STATUS_CONTINUE && !limits_strokes(law->rules))
        status = print_error("%s has air checks only: practise those with --checks", rodt_rules_id(law->rules));
    return status;
}

/* --- Files -------------------------------------------------------------------------------------------- */

/* More in a row have too few faults only where the level and the vehicle do not give as many. */
#define SEEDS_TRIED 20000u

/* The vehicles follow each other by their seeds; of->vehicle is the one before. */
static int make(const session *of, unsigned index)
{
    practice_setting setting = of->setting;
    if (index > 0)
        setting.seed = of->vehicle->setting.seed + 1;
    for (unsigned i = 0; i < SEEDS_TRIED; i++) {
        int status = practice_generate(&setting, of->vehicle);
        if (status != STATUS_CONTINUE || practice_faults(of->vehicle) >= of->faults)
            return status;
        setting.seed++;
    }
    return print_error("no vehicle of %u seeds from %llu on has %u faults", SEEDS_TRIED,
                       (unsigned long long)of->setting.seed, of->faults);
}

static bool is_page(const char *name)
{
    size_t size = strlen(name);
    return (size > 5 && strcmp(name + size - 5, ".html") == 0) || (size > 4 && strcmp(name + size - 4, ".htm") == 0);
}

static void write_one(const session *of, unsigned index, bool key, bool page, FILE *to)
{
    if (option_given(of->from, PRACTICE_JSON)) {
        json_writer json = {.to = to, .first = true};
        (key ? practice_json_key : practice_json_sheet)(&json, of->vehicle);
        fputc('\n', to);
    } else if (page) {
        (key ? practice_html_key : practice_html_sheet)(of->vehicle, to);
    } else {
        if (index > 0)
            fputc('\f', to);
        (key ? practice_text_key : practice_text_sheet)(of->vehicle, to);
    }
}

static int write_file(const session *of, size_t option)
{
    const char *name = option_value(of->from, option);
    bool key = option == PRACTICE_KEY;
    atomic_file file;
    if (name == NULL)
        return STATUS_CONTINUE;
    bool page = is_page(name) && !option_given(of->from, PRACTICE_JSON);
    int status = atomic_file_open(name, &file);
    if (status != STATUS_CONTINUE)
        return status;
    if (page)
        practice_html_begin(file.to, key);
    for (unsigned i = 0; i < of->count && status == STATUS_CONTINUE; i++) {
        status = make(of, i);
        if (status == STATUS_CONTINUE)
            write_one(of, i, key, page, file.to);
    }
    if (page)
        practice_html_end(file.to);
    return atomic_file_close(&file, status == STATUS_CONTINUE);
}

/* Without a file to write, sheet and key go out together. */
static int write_both(const session *of)
{
    for (unsigned i = 0; i < of->count; i++) {
        json_writer json = {.to = stdout, .first = true};
        int status = make(of, i);
        if (status != STATUS_CONTINUE)
            return status;
        json_open(&json, '{');
        json_key(&json, "sheet");
        practice_json_sheet(&json, of->vehicle);
        json_key(&json, "key");
        practice_json_key(&json, of->vehicle);
        json_close(&json, '}');
        putchar('\n');
    }
    return STATUS_GOOD;
}

/* JSON is the same in every language. */
static int write_files(const session *of)
{
    if (option_given(of->from, PRACTICE_JSON))
        (void)choose_language("en");
    if (!option_given(of->from, PRACTICE_SHEET) && !option_given(of->from, PRACTICE_KEY))
        return write_both(of);
    int status = write_file(of, PRACTICE_SHEET);
    if (status == STATUS_CONTINUE)
        status = write_file(of, PRACTICE_KEY);
    if (status != STATUS_CONTINUE)
        return status;
    if (!option_given(of->from, PRACTICE_SEED))
        fprintf(stderr, "seed %" PRIu64 "\n", of->setting.seed);
    return STATUS_GOOD;
}

/* --- Questions ---------------------------------------------------------------------------------------- */

static int mark_answers(const session *of)
{
    answer_file *answers = NULL;
    practice_score score = {0};
    bool as_json = option_given(of->from, PRACTICE_JSON);
    int status = option_given(of->from, PRACTICE_SEED)
                     ? answer_file_open(option_value(of->from, PRACTICE_ANSWERS), of->setting.unit, &answers)
                     : print_error("--answers needs the --seed of the sheet");
    for (unsigned i = 0; i < of->count && status == STATUS_CONTINUE; i++) {
        status = make(of, i);
        if (status == STATUS_CONTINUE)
            status = answer_file_mark(answers, of->vehicle, of->count == 1, as_json, &score);
    }
    if (status == STATUS_CONTINUE)
        status = answer_file_finish(answers);
    answer_file_close(answers);
    if (status != STATUS_CONTINUE)
        return status;
    if (!as_json)
        practice_score_print(&score);
    return practice_score_status(&score);
}

static int end_interview(const practice_score *score, bool stayed)
{
    practice_score_print(score);
    if (!stayed)
        puts(say("Ended early."));
    if (practice_read_failure() != 0)
        return print_error("the answers cannot be read: %s", say_system_error(practice_read_failure()));
    return !stayed && score->wrong == 0 ? STATUS_UNDETERMINED : practice_score_status(score);
}

static int ask(const session *of)
{
    practice_score score = {0};
    int status = STATUS_CONTINUE;
    bool stayed = true;
    for (unsigned i = 0; i < of->count && stayed && status == STATUS_CONTINUE; i++) {
        status = make(of, i);
        if (status == STATUS_CONTINUE)
            stayed = practice_interview(of->vehicle, &score);
        putchar('\n');
    }
    if (status != STATUS_CONTINUE)
        return status;
    return end_interview(&score, stayed);
}

/* --- Checks in the cab -------------------------------------------------------------------------------- */

static check_stories make_checks(const session *of, unsigned index)
{
    practice_setting setting = of->setting;
    check_stories stories;
    setting.seed += index;
    checks_generate(&setting, &stories);
    return stories;
}

static int write_checks(const session *of, size_t option)
{
    const char *name = option_value(of->from, option);
    bool key = option == PRACTICE_KEY;
    atomic_file file;
    if (name == NULL)
        return STATUS_CONTINUE;
    int status = atomic_file_open(name, &file);
    if (status != STATUS_CONTINUE)
        return status;
    if (is_page(name))
        practice_html_begin(file.to, key);
    for (unsigned i = 0; i < of->count; i++) {
        check_stories stories = make_checks(of, i);
        if (i > 0 && !is_page(name))
            fputc('\f', file.to);
        (is_page(name) ? checks_html_sheet : checks_text_sheet)(&stories, key, file.to);
    }
    if (is_page(name))
        practice_html_end(file.to);
    return atomic_file_close(&file, true);
}

static int ask_checks(const session *of)
{
    practice_score score = {0};
    bool stayed = true;
    for (unsigned i = 0; i < of->count && stayed; i++) {
        check_stories stories = make_checks(of, i);
        stayed = checks_interview(&stories, &score);
        putchar('\n');
    }
    return end_interview(&score, stayed);
}

static int practise_checks(const session *of)
{
    if (!writes(of->from))
        return ask_checks(of);
    int status = write_checks(of, PRACTICE_SHEET);
    if (status == STATUS_CONTINUE)
        status = write_checks(of, PRACTICE_KEY);
    if (status == STATUS_CONTINUE && !option_given(of->from, PRACTICE_SEED))
        fprintf(stderr, "seed %" PRIu64 "\n", of->setting.seed);
    return status == STATUS_CONTINUE ? STATUS_GOOD : status;
}

static int practise(const command_line *from, const rule_context *law)
{
    session of;
    int status = read_options(from, law, &of);
    if (status != STATUS_CONTINUE)
        return status;
    if (option_given(from, PRACTICE_CHECKS))
        return practise_checks(&of);
    of.vehicle = malloc(sizeof *of.vehicle);
    if (of.vehicle == NULL)
        return print_error("no memory");
    if (option_given(from, PRACTICE_ANSWERS))
        status = mark_answers(&of);
    else
        status = writes(from) ? write_files(&of) : ask(&of);
    free(of.vehicle);
    return status;
}

static int run(int argc, char **argv)
{
    command_line from;
    rule_context law;
    int status = parse_arguments(&practice_command, argc, argv, 0, 0, &from);
    if (status != STATUS_CONTINUE)
        return status;
    status = rule_context_open(option_value(&from, PRACTICE_RULES), NULL, NULL, option_value(&from, PRACTICE_AS_OF),
                               &law);
    return status == STATUS_CONTINUE ? practise(&from, &law) : status;
}

static const file_argument files[] = {{PRACTICE_ANSWERS, false}, {PRACTICE_SHEET, true}, {PRACTICE_KEY, true}};

const command_spec practice_command = {
    .name = "practice",
    .operands = "[OPTION]...",
    .summary = "practise on invented vehicles: read the tape, subtract, judge",
    .help =
        "Shows the wheel ends of an invented vehicle: the marks on the chamber, the conditions, and two "
        "pieces of tape with the pin on them. It asks for both readings, the applied stroke, the limit, the "
        "verdict and the reason, finally for the count of the vehicle, marks the answers exactly and says "
        "why. Practice, not an inspection.\n"
        "\n"
        "  rodtravel practice\n"
        "  rodtravel practice --seed 7 --faults 2 --sheet sheet.html --key key.html\n"
        "  rodtravel practice --seed 7 --answers filled.txt\n"
        "  rodtravel practice --checks --rules ca-on\n"
        "\n"
        "Equal seeds make equal vehicles, with the same options and edition of the tables. A file of answers "
        "has a line for each wheel end: stroke, limit, verdict, reason (number or word); then the vehicle. An"
        " answer may be left out; \"none\" is one too. With several vehicles, the seed of each is"
        " above its lines:\n"
        "\n"
        "  seed 7\n"
        "  1L: 1 7/16; 1 3/4; in; within-limit\n"
        "  vehicle: 1 1/2; below\n"
        "\n"
        "Exit status: 0 every answer is right, or the files are written; 1 an answer is wrong; 3 none is "
        "wrong, but some question is not answered.\n",
    .options = options,
    .option_count = COUNT_OF(options),
    .files = files,
    .file_count = COUNT_OF(files),
    .run = run,
};
