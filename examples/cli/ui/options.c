/* SPDX-License-Identifier: Apache-2.0 */
/* The command line: sorted by getopt_long, strictly, and explained from the same tables. */
#include "ui/options.h"
#include "ui/exit_status.h"
#include "ui/files.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/utf8.h"
#include "ui/wrap.h"

#include <getopt.h>
#include <stdio.h>
#include <string.h>

enum { ARGUMENT = 1, HELP = 'h', LANGUAGE = 'l', FIRST_OPTION = 0x100, OWN_OPTIONS = 2 };

/* getopt_long takes a prefix for the full name; a script that relies on that would break with the
 * next option, so only full names are taken. */
static bool is_full_name(const char *argument, const char *name)
{
    size_t size = strlen(name);
    return strncmp(argument, "--", 2) == 0 && strncmp(argument + 2, name, size) == 0 &&
           (argument[2 + size] == '\0' || argument[2 + size] == '=');
}

static int print_unknown_option(const command_spec *command, const char *argument)
{
    bool number = argument[1] != '\0' && strchr("0123456789.", argument[1]) != NULL;
    print_error("%s has no option \"%s\"", command->name, argument);
    if (number)
        print_error("a distance is never below zero; put \"--\" before an operand that begins with a dash");
    return print_error("see: rodtravel %s --help", command->name);
}

static int add_option(command_line *out, size_t option, const char *value)
{
    const option_spec *spec = &out->command->options[option];
    if (!spec->repeats && option_given(out, option))
        return print_error("--%s is given twice", spec->name);
    if (out->given_count == OPTIONS_MAX)
        return print_error("more than %d options are given", OPTIONS_MAX);
    out->given[out->given_count].option = option;
    out->given[out->given_count].value = value == NULL ? "" : value;
    out->given_count++;
    return STATUS_CONTINUE;
}

const char *language_argument(int argc, char **argv, int *count)
{
    size_t size = strlen("--" LANGUAGE_OPTION);
    if (argc < 1 || !is_full_name(argv[0], LANGUAGE_OPTION))
        return NULL;
    *count = argv[0][size] == '=' ? 1 : 2;
    return *count == 1 ? argv[0] + size + 1 : argc > 1 ? argv[1] : NULL;
}

void choose_language_of_arguments(int argc, char **argv)
{
    int count;
    choose_language_of_locale();
    for (int i = 1; i < argc && argv[i] != NULL && strcmp(argv[i], "--") != 0; i++) {
        const char *word = language_argument(argc - i, argv + i, &count);
        if (word != NULL && choose_language(word))
            return;
    }
}

static const char *given_language;

int check_language(const char *word)
{
    if (!choose_language(word))
        return print_error("--language is en, fr or es, not \"%s\"", word);
    given_language = word;
    return STATUS_CONTINUE;
}

const char *language_given(void) { return given_language; }

static int add_language(command_line *out, const char *word)
{
    if (out->has_language)
        return print_error("--%s is given twice", LANGUAGE_OPTION);
    out->has_language = true;
    return check_language(word);
}

static int add_operand(command_line *out, size_t most, const char *text)
{
    if (out->operand_count == most && most == 0)
        return print_error("%s takes no operand, but \"%s\" is given", out->command->name, text);
    if (out->operand_count == most) {
        print_error("too many operands: \"%s\" is one more than %s takes", text, out->command->name);
        return print_error("put a measurement with a blank in it in quotes: \"1 3/4\"");
    }
    out->operands[out->operand_count++] = text;
    return STATUS_CONTINUE;
}

static int check_operand_count(const command_line *from, size_t least)
{
    if (from->operand_count >= least)
        return STATUS_CONTINUE;
    print_error("%s needs %s", from->command->name, say(from->command->operands));
    return print_error("only %zu of %zu operands are given; see: rodtravel %s --help", from->operand_count, least,
                       from->command->name);
}

static void fill_long_options(const command_spec *command, struct option *options)
{
    for (size_t i = 0; i < command->option_count; i++) {
        options[i] = (struct option){command->options[i].name,
                                     command->options[i].value == NULL ? no_argument : required_argument, NULL,
                                     FIRST_OPTION + (int)i};
    }
    options[command->option_count] = (struct option){"help", no_argument, NULL, HELP};
    options[command->option_count + 1] = (struct option){LANGUAGE_OPTION, required_argument, NULL, LANGUAGE};
    options[command->option_count + OWN_OPTIONS] = (struct option){NULL, 0, NULL, 0};
}

/* One result of getopt_long; `argument` is its element of argv. */
static int take_argument(command_line *out, int answer, const char *argument, size_t most)
{
    const command_spec *command = out->command;
    if (answer == ARGUMENT)
        return add_operand(out, most, optarg);
    if (answer == HELP && (strcmp(argument, "-h") == 0 || is_full_name(argument, "help"))) {
        print_command_help(stdout, command);
        return STATUS_GOOD;
    }
    if (answer == ':')
        return print_error("option %s needs a value", argument);
    if (answer == LANGUAGE && is_full_name(argument, LANGUAGE_OPTION))
        return add_language(out, optarg);
    size_t option = (size_t)(answer - FIRST_OPTION);
    if (answer < FIRST_OPTION || !is_full_name(argument, command->options[option].name))
        return print_unknown_option(command, argument);
    return add_option(out, option, optarg);
}

/* The next argument, or -1 at the end. A single hyphen is an operand, but the end to some C libraries. */
static int next_argument(int argc, char **argv, const struct option *options)
{
    /* "-" returns operands in order, so that no environment variable changes the parsing. */
    int answer = getopt_long(argc, argv, "-:h", options, NULL);
    if (answer != -1 || optind >= argc || strcmp(argv[optind], "-") != 0 || strcmp(argv[optind - 1], "--") == 0)
        return answer;
    optarg = argv[optind++];
    return ARGUMENT;
}

int parse_arguments(const command_spec *command, int argc, char **argv, size_t least, size_t most,
                    command_line *out)
{
    struct option options[OPTIONS_MAX + OWN_OPTIONS + 1];
    fill_long_options(command, options);
    memset(out, 0, sizeof *out);
    out->command = command;
    opterr = 0;
    for (;;) {
        const char *argument = optind < argc ? argv[optind] : "";
        int answer = next_argument(argc, argv, options);
        if (answer == -1)
            break;
        int status = take_argument(out, answer, argument, most);
        if (status != STATUS_CONTINUE)
            return status;
    }
    for (; optind < argc; optind++) {
        int status = add_operand(out, most, argv[optind]);
        if (status != STATUS_CONTINUE)
            return status;
    }
    int status = check_operand_count(out, least);
    return status == STATUS_CONTINUE ? check_files(out) : status;
}

const char *option_value(const command_line *from, size_t option)
{
    for (size_t i = 0; i < from->given_count; i++) {
        if (from->given[i].option == option)
            return from->given[i].value;
    }
    return NULL;
}

int print_option_error(const command_line *from, size_t option, const rodt_error *error)
{
    char what[80];
    snprintf(what, sizeof what, say("the value of --%s"), from->command->options[option].name);
    return print_text_error(what, option_value(from, option), error);
}

static int print_choice_error(const char *name, const choice *choices, size_t count, const char *text)
{
    char words[200] = "";
    for (size_t i = 0; i < count; i++) {
        const char *joint = i == 0 ? "" : i + 1 == count ? say(" or ") : ", ";
        size_t used = strlen(words);
        snprintf(words + used, sizeof words - used, "%s%s", joint, choices[i].word);
    }
    return print_error("--%s is %s, not \"%s\"", name, words, text);
}

int choose_option(const command_line *from, size_t option, const choice *choices, size_t count, int *out)
{
    const char *text = option_value(from, option);
    if (text == NULL)
        return STATUS_CONTINUE;
    for (size_t i = 0; i < count; i++) {
        if (strcmp(text, choices[i].word) == 0) {
            *out = choices[i].meaning;
            return STATUS_CONTINUE;
        }
    }
    return print_choice_error(from->command->options[option].name, choices, count, text);
}

/* --- Help -------------------------------------------------------------------------------------------- */

#define HELP_INDENT 28

static void print_option(FILE *to, const char *name, const char *value, const char *help)
{
    char label[200];
    snprintf(label, sizeof label, "  --%s%s%s", name, value == NULL ? "" : " ",
             value == NULL ? "" : say(value));
    print_wrapped(to, label, HELP_INDENT, say(help));
}

/* The blanks at the start of a line, and where the second column of a table begins; 0 = there is none. */
static size_t find_indents(const char *line, size_t *first)
{
    *first = strspn(line, " ");
    for (const char *at = line + *first; *first > 0 && (at = strstr(at, "  ")) != NULL; at++) {
        size_t begin = (size_t)(at - line) + strspn(at, " ");
        if (line[begin] != '\0')
            return begin;
    }
    return 0;
}

/* An example is the same in every language. */
static void print_example(FILE *to, const char *line, size_t indent)
{
    if (columns_of_text(line) < line_width(to))
        fprintf(to, "%s\n", line);
    else
        print_wrapped(to, "", (unsigned)indent, line + indent);
}

/* The name of a column is the same in every language, too. */
static void print_line(FILE *to, const char *line)
{
    RODT_ENUM32(rodt_field) field;
    char name[200], label[400];
    size_t first, second = find_indents(line, &first), size = second;
    if (first == 0) {
        print_wrapped(to, "", 0, say(line));
        return;
    }
    if (second == 0) {
        print_example(to, line, first);
        return;
    }
    while (line[size - 1] == ' ')
        size--;
    snprintf(name, sizeof name, "%.*s", (int)(size - first), line + first);
    snprintf(label, sizeof label, "%*s%s", (int)first, "", rodt_field_find(name, &field) == RODT_OK ? name : say(name));
    bool fits = columns_of_text(label) < line_width(to);
    if (!fits)
        print_wrapped(to, "", 2, label);
    print_wrapped(to, fits ? label : "", (unsigned)second, say(line + second));
}

void print_paragraphs(FILE *to, const char *text)
{
    while (*text != '\0') {
        char line[1000];
        size_t size = strcspn(text, "\n");
        snprintf(line, sizeof line, "%.*s", (int)size, text);
        print_line(to, line);
        text += size + (text[size] == '\n');
    }
}

void print_command_help(FILE *to, const command_spec *command)
{
    char usage[200];
    snprintf(usage, sizeof usage, "rodtravel %s %s\n", command->name, say(command->operands));
    print_paragraphs(to, usage);
    fputc('\n', to);
    print_paragraphs(to, command->help);
    print_paragraphs(to, TO_SAY_LINES("\nOptions, before, between or after the operands:\n"));
    for (size_t i = 0; i < command->option_count; i++)
        if (command->options[i].help != NULL)
            print_option(to, command->options[i].name, command->options[i].value,
                         command->options[i].help);
    print_option(to, LANGUAGE_OPTION, LANGUAGE_WORDS,
                 TO_SAY("language of what is said; that of the locale if not given"));
    print_option(to, "help", NULL, TO_SAY("this text"));
}
