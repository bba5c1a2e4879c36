/* SPDX-License-Identifier: Apache-2.0 */
/* The first words of a command line: a command, the help or the version. */
#include "ui/dispatch.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/wrap.h"

#include <stdio.h>
#include <string.h>

static const char *const introduction =
    TO_SAY_LINES("rodtravel COMMAND [OPTION]... [OPERAND]...\n"
                 "\n"
                 "Judges the adjustment of air brakes by the stroke of their pushrods: exactly, with the reason and "
                 "the published limit.\n"
                 "\n"
                 "Commands:\n");

static const char *const explanation =
    TO_SAY_LINES("\n"
                 "Examples:\n"
                 "  rodtravel stroke 30 \"2 1/8\" \"4 1/8\" --class standard --psi 95\n"
                 "  rodtravel identify --stamp 30 --port square\n"
                 "  rodtravel limits 24L\n"
                 "  rodtravel batch yard.csv --summary > judged.csv\n"
                 "  rodtravel vehicle truck.csv --brakes 10\n"
                 "\n"
                 "  rodtravel COMMAND --help   what a command takes\n"
                 "  rodtravel --version        version, date of the tables, rule sets\n"
                 "\n"
                 "Exit status:\n"
                 "  0  in adjustment, or the question is answered\n"
                 "  1  a wheel end is out of adjustment or inoperative\n"
                 "  2  wrong usage, an input that cannot be read, or an answer that could not be written\n"
                 "  3  nothing is out, but something is undetermined\n"
                 "\n"
                 "Chock the wheels before you measure. The cited law and a licensed inspector decide; this is an "
                 "aid.\n");

static int print_help(const command_list *of, FILE *to)
{
    print_paragraphs(to, introduction);
    for (size_t i = 0; i < of->count; i++) {
        char name[40];
        snprintf(name, sizeof name, "  %s", of->commands[i]->name);
        print_wrapped(to, name, 13, say(of->commands[i]->summary));
    }
    print_paragraphs(to, explanation);
    return STATUS_GOOD;
}

static int print_version(void)
{
    char ids[1000] = "";
    printf(say("rodtravel %s\ntables of %s\n"), rodt_version(), rodt_tables_edition());
    for (size_t i = 0, used = 0; i < rodt_rules_count() && used < sizeof ids; i++)
        used += (size_t)snprintf(ids + used, sizeof ids - used, "%s ", rodt_rules_id(rodt_rules_at(i)));
    print_wrapped(stdout, say("rule sets:"), 2, ids);
    return STATUS_GOOD;
}

static int print_command_error(const char *word)
{
    if (word[0] == '-')
        print_error("\"%s\" is given in place of a command; put options after the command", word);
    else
        print_error("there is no command \"%s\"", word);
    return print_error("see: rodtravel --help");
}

static const command_spec *find_command(const command_list *of, const char *word)
{
    for (size_t i = 0; i < of->count; i++) {
        if (strcmp(word, of->commands[i]->name) == 0)
            return of->commands[i];
    }
    return NULL;
}

/* "rodtravel help", or "rodtravel help stroke", which is "rodtravel stroke --help". */
static int help(const command_list *of, int argc, char **argv)
{
    static char option[] = "--help";
    const command_spec *command = argc > 2 ? find_command(of, argv[2]) : NULL;
    if (argc > 2 && command == NULL)
        return print_command_error(argv[2]);
    char *arguments[] = {argc > 2 ? argv[2] : NULL, option, NULL};
    return command != NULL ? command->run(2, arguments) : print_help(of, stdout);
}

int dispatch(const command_list *of, int argc, char **argv)
{
    int count;
    const char *language = language_argument(argc - 1, argv + 1, &count);
    if (language != NULL && check_language(language) != STATUS_CONTINUE)
        return STATUS_USAGE;
    if (language != NULL) {
        argc -= count;
        argv += count;
    }
    if (argc < 2) {
        print_help(of, stderr);
        return STATUS_USAGE;
    }
    const char *word = argv[1];
    const command_spec *command = find_command(of, word);
    if (command != NULL)
        return command->run(argc - 1, argv + 1);
    if (strcmp(word, "help") == 0)
        return help(of, argc, argv);
    if (strcmp(word, "--help") == 0 || strcmp(word, "-h") == 0)
        return print_help(of, stdout);
    if (strcmp(word, "--version") == 0)
        return print_version();
    return print_command_error(word);
}
