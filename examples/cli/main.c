/* SPDX-License-Identifier: Apache-2.0 */
/* rodtravel: the stroke of air brakes at the command line. Dispatches to a command and reports write errors on
 * stdout. */
#include "commands.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/options.h"
#include "ui/wrap.h"

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

static const command_spec *const commands[] = {&stroke_command, &vehicle_command, &air_command, &walkround_command,
                                               &report_command, &identify_command, &limits_command, &batch_command,
                                               &practice_command, &cards_command};

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

static int print_help(FILE *to)
{
    print_paragraphs(to, introduction);
    for (size_t i = 0; i < COUNT_OF(commands); i++) {
        char name[40];
        snprintf(name, sizeof name, "  %s", commands[i]->name);
        print_wrapped(to, name, 13, say(commands[i]->summary));
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

static const command_spec *find_command(const char *word)
{
    for (size_t i = 0; i < COUNT_OF(commands); i++) {
        if (strcmp(word, commands[i]->name) == 0)
            return commands[i];
    }
    return NULL;
}

/* "rodtravel help", or "rodtravel help stroke", which is "rodtravel stroke --help". */
static int help(int argc, char **argv)
{
    static char option[] = "--help";
    const command_spec *command = argc > 2 ? find_command(argv[2]) : NULL;
    if (argc > 2 && command == NULL)
        return print_command_error(argv[2]);
    char *arguments[] = {argc > 2 ? argv[2] : NULL, option, NULL};
    return command != NULL ? command->run(2, arguments) : print_help(stdout);
}

static int run(int argc, char **argv)
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
        print_help(stderr);
        return STATUS_USAGE;
    }
    const char *word = argv[1];
    const command_spec *command = find_command(word);
    if (command != NULL)
        return command->run(argc - 1, argv + 1);
    if (strcmp(word, "help") == 0)
        return help(argc, argv);
    if (strcmp(word, "--help") == 0 || strcmp(word, "-h") == 0)
        return print_help(stdout);
    if (strcmp(word, "--version") == 0)
        return print_version();
    return print_command_error(word);
}

/* A file that was opened in the place of a closed stream would get what is said. */
static void fill_closed_streams(void)
{
    for (int i = STDIN_FILENO; i <= STDERR_FILENO; i++) {
        if (fcntl(i, F_GETFD) < 0)
            (void)open("/dev/null", i == STDIN_FILENO ? O_WRONLY : O_RDONLY);
    }
}

/* A full disk shows only when the last bytes are written, so the status is known after that. */
int main(int argc, char **argv)
{
    const bool wants_remarks = fcntl(STDERR_FILENO, F_GETFD) >= 0;
    fill_closed_streams();
    setvbuf(stderr, NULL, _IOLBF, BUFSIZ); /* a message is written as a line, not byte by byte */
    signal(SIGXFSZ, SIG_IGN);              /* a file that may not grow is an error, like a full disk */
    choose_language_of_arguments(argc, argv);
    int status = run(argc, argv);
    bool lost = ferror(stdout) != 0;
    errno = 0;
    if (fflush(stdout) != 0 || lost)
        return print_error("the answer could not be written: %s",
                           errno == 0 ? say("output error") : say_system_error(errno));
    lost = fflush(stderr) != 0 || ferror(stderr) != 0;
    return lost && wants_remarks ? STATUS_USAGE : status;
}
