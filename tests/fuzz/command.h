/* SPDX-License-Identifier: Apache-2.0 */
/* The whole command in this process, in a folder of its own that is emptied before each input. */
#ifndef COMMAND_H
#define COMMAND_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define COMMAND_ARGUMENTS_MAX 40
#define GOOD 0
#define BAD 1
#define REFUSED 2
#define OPEN 3 /* nothing is bad, but something is undetermined */

/* What one run of the command did. The texts are closed by a zero byte and live until the next run. */
typedef struct outcome {
    int status;
    char *out, *err;
    size_t out_size, err_size;
} outcome;

/* Empties the folder. */
void command_begin(void);

void command_put(const char *name, const char *bytes, size_t size);
/* The bytes of a file, closed by a zero byte; NULL = there is none. To be freed. */
char *command_get(const char *name, size_t *size);
void command_input(const char *bytes, size_t size, bool is_person); /* standard input of the runs that follow */

/* Runs `rodtravel` with the words of a line, which is split, or with arguments up to a NULL; no file is named outside
 * the folder. The status is one that the manual names, a refusal says why, standard error cannot steer a terminal, and
 * no temporary file is left. */
const outcome *command_run(char *line);
const outcome *command_run_arguments(char *const *arguments);

/* Any function of the command in its place: the folder is the current one, and what it prints is collected. */
const outcome *command_call(int (*call)(void *context), void *context);

/* A text that is given as a name or an answer: afterwards it is the path of no file outside the folder, nor
 * the name of a temporary one. */
void command_keep_inside(char *text, size_t size);

/* The input, closed by a zero byte. To be freed. */
char *command_text(const uint8_t *data, size_t size);

/* A practice class of many, or seeds with many faults, take their time; nothing of them reads more. */
bool command_takes_long(const char *line);

/* Cuts the first line off: its end becomes a zero byte, *text and *size are what follows. Returns the line. */
char *command_line_of(char **text, size_t *size);

/* UTF-8 without controls but line feeds, and without the signs of bidirectional text. */
bool is_terminal_safe(const char *text, size_t size);
bool is_json(const char *text, size_t size);          /* one value, or one a line */
bool is_markup(const char *text, size_t size);        /* HTML or SVG: tags match, quotes and entities are closed */

#endif
