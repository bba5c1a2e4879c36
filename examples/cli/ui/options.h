/* SPDX-License-Identifier: Apache-2.0 */
/* Options and operands of a command, and its help. */
#ifndef OPTIONS_H
#define OPTIONS_H

#include <rodtravel/rodtravel.h>

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

typedef struct option_spec {
    const char *name;  /* without the dashes; names that the library uses for a field are its own */
    const char *value; /* what the help calls its value; NULL = it takes none; this and the help are said */
    const char *help;  /* one sentence without a full stop; NULL = an older name, which is not listed */
    bool repeats;      /* may be given more than once */
} option_spec;

/* An option whose value is a file, or FILE_OPERAND for the first operand, which is "-" if none is given. */
#define FILE_OPERAND SIZE_MAX
typedef struct file_argument {
    size_t option;
    bool written;
} file_argument;

/* A command: the table of main.c and the help are made of these. The check `translations` finds their texts. */
typedef struct command_spec {
    const char *name;
    const char *operands; /* as the usage line shows them */
    const char *summary;  /* one line for the list of commands */
    const char *help;     /* paragraphs between the usage line and the options; a line starting with a blank
                             is printed as it is */
    const option_spec *options;
    size_t option_count;
    const file_argument *files; /* what it reads and writes by name: no two may be one file */
    size_t file_count;
    int (*run)(int argc, char **argv); /* argv[0] is the name of the command; returns an exit status */
} command_spec;

#define OPTIONS_MAX 64
#define OPERANDS_MAX 8

/* The arguments, sorted. The texts are those of argv. */
typedef struct command_line {
    const command_spec *command;
    struct {
        size_t option; /* index in command->options */
        const char *value;
    } given[OPTIONS_MAX]; /* in the order of the command line */
    size_t given_count;
    const char *operands[OPERANDS_MAX];
    size_t operand_count; /* at most `most` of parse_arguments */
    bool has_language; /* --language, which every command takes, is among its arguments */
} command_line;

/* Chooses the language by --language, wherever it is before "--", or by the locale: before anything is said. */
void choose_language_of_arguments(int argc, char **argv);

/* The value of --language at the start of the arguments, NULL = another argument is there; *count = how many it is. */
const char *language_argument(int argc, char **argv, int *count);

/* Refuses a language that the command does not speak. Returns STATUS_CONTINUE or an exit status. */
int check_language(const char *word);

/* The last one that was not refused, as it was given before the command or after it; NULL = that of the locale. */
const char *language_given(void);

/* Sorts argv. Options may be anywhere before "--"; --help and --language are handled here. An output that is an input
 * or another output is refused. Returns STATUS_CONTINUE, or the status to exit with; errors are printed on stderr. */
int parse_arguments(const command_spec *command, int argc, char **argv, size_t least, size_t most,
                    command_line *out);

/* The value of an option ("" for one that takes none), or NULL if it was not given. */
const char *option_value(const command_line *from, size_t option);
static inline bool option_given(const command_line *from, size_t option)
{
    return option_value(from, option) != NULL;
}

/* Shows the value of an option that could not be read, like print_text_error. Returns STATUS_USAGE. */
int print_option_error(const command_line *from, size_t option, const rodt_error *error);

/* A word and its meaning. */
typedef struct choice {
    const char *word;
    int meaning;
} choice;

/* Gives *out the meaning of the option's value, or leaves it if the option was not given. Returns
 * STATUS_CONTINUE or an exit status. */
int choose_option(const command_line *from, size_t option, const choice *choices, size_t count, int *out);

/* Lines that fold; the columns of a table, set apart by two blanks after an indented beginning, hang. */
void print_paragraphs(FILE *to, const char *text);

void print_command_help(FILE *to, const command_spec *command);

#endif
