/* SPDX-License-Identifier: Apache-2.0 */
/* What the commands share: exit statuses, arguments, messages, printing for people and for programs. */
#ifndef CLI_H
#define CLI_H

#include <rodtravel/rodtravel.h>

#include <stdio.h>

#define COUNT_OF(array) (sizeof(array) / sizeof((array)[0]))

/* Exit statuses; fixed. A program that cannot write its answer ends with STATUS_USAGE too. */
enum {
    STATUS_GOOD = 0,
    STATUS_OUT = 1,          /* a wheel end is out of adjustment or inoperative */
    STATUS_USAGE = 2,        /* wrong usage, or an unreadable single input */
    STATUS_UNDETERMINED = 3, /* nothing is out, but something is undetermined */
    STATUS_CONTINUE = -1     /* no exit status: go on */
};

/* --- Arguments (arguments.c) ------------------------------------------------------------------------- */

typedef struct option_spec {
    const char *name;  /* without the dashes; names that the library uses for a field are its own */
    const char *value; /* what the help calls its value; NULL = it takes none */
    const char *help;  /* one sentence without a full stop */
    bool repeats;      /* may be given more than once */
} option_spec;

/* A command: the table of main.c and the help are made of these. */
typedef struct command_spec {
    const char *name;
    const char *operands; /* as the usage line shows them */
    const char *summary;  /* one line for the list of commands */
    const char *help;     /* paragraphs between the usage line and the options; a line starting with a blank
                             is printed as it is */
    const option_spec *options;
    size_t option_count;
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
} command_line;

/* Sorts argv. Options may stand anywhere before "--"; --help is answered here. Returns STATUS_CONTINUE, or
 * the status to exit with; what was wrong is said on stderr. */
int parse_arguments(const command_spec *command, int argc, char **argv, size_t least, size_t most,
                    command_line *out);

/* The value of an option ("" for one that takes none), or NULL if it was not given. */
const char *option_value(const command_line *from, size_t option);
static inline bool option_given(const command_line *from, size_t option)
{
    return option_value(from, option) != NULL;
}

/* A word and what it stands for. */
typedef struct choice {
    const char *word;
    int meaning;
} choice;

/* Gives *out the meaning of the option's value, or leaves it if the option was not given. Returns
 * STATUS_CONTINUE or an exit status. */
int choose_option(const command_line *from, size_t option, const choice *choices, size_t count, int *out);

void print_command_help(FILE *to, const command_spec *command);

extern const command_spec stroke_command;
extern const command_spec identify_command;
extern const command_spec limits_command;
extern const command_spec batch_command;
extern const command_spec air_command;
extern const command_spec vehicle_command;
extern const command_spec report_command;
extern const command_spec walkround_command;
extern const command_spec practice_command;

/* True if the text under "unit" in a first row is no unit of length but names a vehicle, such as T-104; that is said on
 * stderr. what = "column" or "member"; NULL is no text (unit_cell.c). */
bool is_vehicle_unit(const char *text, const char *what);

/* --- Rule set and day (setting.c) -------------------------------------------------------------------- */

typedef struct rule_setting {
    const rodt_rules *rules;
    rodt_rules *own; /* a carrier's limits, or NULL */
    rodt_date day;
} rule_setting;

/* Texts may be NULL: the default rule set, no own limits, today. Returns STATUS_CONTINUE or an exit
 * status. */
int open_setting(const char *rules, const char *limits_file, const char *day, rule_setting *out);
void close_setting(rule_setting *setting);

/* --- Messages on stderr (message.c) ------------------------------------------------------------------ */

#if defined(__GNUC__)
#define PRINTF_LIKE(string, first) __attribute__((format(printf, string, first)))
#else
#define PRINTF_LIKE(string, first)
#endif

/* "rodtravel: ..." on a line of its own. Returns STATUS_USAGE. */
int complain(const char *format, ...) PRINTF_LIKE(1, 2);

/* Shows a text that could not be read, a caret under the place and the reason. `what` names it in plain
 * words ("the applied measurement"). Returns STATUS_USAGE. */
int complain_text(const char *what, const char *text, const rodt_error *error);

/* Shows a text in lines of at most so many columns, and a caret under a character of it, counted from 1; 0 = none. */
void print_place(FILE *to, unsigned columns, const char *text, uint32_t character);

/* --- For people (print.c) ---------------------------------------------------------------------------- */

#define LINE_WIDTH 80

/* One character of UTF-8 as a terminal may show it: itself, or its number in angle brackets when it is a
 * control, cannot be seen, or is no character. Returns the bytes that were taken; *width columns. */
#define SHOWN_SIZE 12
size_t show_character(const char *text, char shown[SHOWN_SIZE], unsigned *width);

/* Prints text so that no character of it can steer a terminal. */
void print_safely(FILE *to, const char *text);

/* Prints a label, then the text in lines of at most LINE_WIDTH columns that hang at `indent`. */
void print_wrapped(FILE *to, const char *label, unsigned indent, const char *text);
void print_wrapped_at(FILE *to, unsigned line_width, const char *label, unsigned indent, const char *text);

/* Columns of the screen that a text takes. */
unsigned columns_of_text(const char *text);

typedef enum paint_kind { PAINT_GOOD, PAINT_BAD, PAINT_OPEN, PAINT_STRONG } paint_kind;

/* Prints in colour where that helps a person: on a terminal, unless NO_COLOR is set. */
void print_painted(FILE *to, paint_kind paint, const char *text);

/* The texts below are written into the buffer and returned; "-" for what is not given. */
#define WORD_SIZE RODT_LENGTH_TEXT_SIZE
const char *length_word(rodt_length length, char word[WORD_SIZE]);
const char *mm_word(rodt_length length, char word[WORD_SIZE]);
const char *date_word(rodt_date date, char word[WORD_SIZE]);
const char *pressure_word(rodt_pressure pressure, char word[WORD_SIZE]);
const char *chamber_word(const rodt_chamber *chamber, char word[RODT_CHAMBER_TEXT_SIZE]);
const char *source_words(const rodt_source *source, char words[RODT_SOURCE_TEXT_SIZE]);

/* --- For programs (json.c) --------------------------------------------------------------------------- */

/* Writes JSON (RFC 8259) on one line; commas are set by the writer. */
typedef struct json_writer {
    FILE *to;
    bool first; /* nothing stands yet in the innermost object or array */
} json_writer;

void json_open(json_writer *json, char bracket);  /* '{' or '[' */
void json_close(json_writer *json, char bracket); /* '}' or ']' */
void json_key(json_writer *json, const char *key);
void json_text(json_writer *json, const char *text); /* NULL = null; bytes that are no UTF-8 become U+FFFD */
void json_bool(json_writer *json, bool value);

/* A key and its value; what is not given is null. */
void json_pair(json_writer *json, const char *key, const char *text);
void json_length(json_writer *json, const char *key, rodt_length length);
void json_date(json_writer *json, const char *key, rodt_date date);
void json_pressure(json_writer *json, const char *key, rodt_pressure pressure);
void json_source(json_writer *json, const char *key, const rodt_source *source);

/* "read in the source" or "unconfirmed". */
const char *evidence_word(rodt_evidence evidence);

#endif
