/* SPDX-License-Identifier: Apache-2.0 */
/* rodtravel: the stroke of air brakes at the command line. Finds the command and sees that its answer
 * reached whoever reads it. */
#include "cli.h"

#include <errno.h>
#include <string.h>

#ifdef HAVE_BATCH
int command_batch(int argc, char **argv);
#define BATCH_LINE "  batch       judge every row of a CSV file\n"
#else
#define BATCH_LINE ""
#endif

static const char *const help =
    "rodtravel COMMAND [OPTION]... [OPERAND]...\n"
    "\n"
    "Judges the adjustment of air brakes by their pushrod stroke, exactly, with the\n"
    "reason and the published limit.\n"
    "\n"
    "Commands:\n"
    "  stroke      judge one wheel end from two tape readings\n"
    "  identify    find out which chamber it can be\n"
    "  limits      show adjustment limits and rule sets\n" BATCH_LINE
    "\n"
    "  rodtravel stroke 30 \"2 1/8\" \"4 1/8\" --class long --psi 95\n"
    "  rodtravel identify --stamp 30 --port square\n"
    "  rodtravel limits 24L\n"
    "\n"
    "  rodtravel COMMAND --help   what a command takes\n"
    "  rodtravel --version        version, date of the tables, rule sets\n"
    "\n"
    "Exit status:\n"
    "  0  in adjustment, or answered\n"
    "  1  a wheel end is out of adjustment or inoperative\n"
    "  2  wrong usage, an input that cannot be read, or an answer that cannot be\n"
    "     written\n"
    "  3  nothing is out, but something is undetermined\n"
    "\n"
    "An aid: the cited law and a licensed inspector decide. Chock the wheels before\n"
    "you measure.\n";

static int print_version(void)
{
    printf("rodtravel %s\ntables of %s\nrule sets:", rodt_version(), rodt_tables_edition());
    for (size_t i = 0; i < rodt_rules_count(); i++)
        printf(" %s", rodt_rules_id(rodt_rules_at(i)));
    putchar('\n');
    return STATUS_GOOD;
}

static int print_help(FILE *to)
{
    fputs(help, to);
    return STATUS_GOOD;
}

static int refuse_command(const char *word)
{
    if (word[0] == '-') {
        complain("\"%s\" stands where a command is expected; options stand behind the command", word);
        return complain("see: rodtravel --help");
    }
    return complain("there is no command \"%s\"; see: rodtravel --help", word);
}

static int run(int argc, char **argv)
{
    static const command_spec *const commands[] = {&stroke_command, &identify_command, &limits_command};
    if (argc < 2) {
        print_help(stderr);
        return STATUS_USAGE;
    }
    const char *word = argv[1];
    for (size_t i = 0; i < COUNT_OF(commands); i++) {
        if (strcmp(word, commands[i]->name) == 0)
            return commands[i]->run(argc - 1, argv + 1);
    }
#ifdef HAVE_BATCH
    if (strcmp(word, "batch") == 0)
        return command_batch(argc - 1, argv + 1);
#endif
    if (strcmp(word, "--help") == 0 || strcmp(word, "-h") == 0)
        return print_help(stdout);
    if (strcmp(word, "--version") == 0)
        return print_version();
    return refuse_command(word);
}

/* A verdict that did not reach its reader must not look like one that did: a full disk shows only when
 * the last bytes are written. */
int main(int argc, char **argv)
{
    int status = run(argc, argv);
    bool failed = ferror(stdout) != 0;
    int reason = failed ? 0 : errno;
    if (fflush(stdout) != 0) {
        failed = true;
        reason = errno;
    }
    if (failed)
        return complain("the answer could not be written%s%s", reason == 0 ? "" : ": ",
                        reason == 0 ? "" : strerror(reason));
    return status;
}
