/* SPDX-License-Identifier: Apache-2.0 */
/* Messages on stderr. */
#ifndef MESSAGE_H
#define MESSAGE_H

#include "ui/compiler.h"

#include <rodtravel/rodtravel.h>

#include <stdio.h>

/* "rodtravel: ..." on a line of its own. Returns STATUS_USAGE. */
int print_error(const char *format, ...) PRINTF_LIKE(1, 2);

/* Why the system refused, an errno: what happens to files in the chosen language, the rest as the system says it. */
const char *say_system_error(int number);

/* The sentence of an error of the library that is about no text, and of a status, after "where: " if that is not "".
 * Return STATUS_USAGE. */
int print_library_error(const rodt_error *error);
int print_status(const char *where, rodt_status status);

/* Shows a text that could not be read, a caret under the place and the reason. `what` names it in plain
 * words ("the applied measurement"). Returns STATUS_USAGE. */
int print_text_error(const char *what, const char *text, const rodt_error *error);

/* The field of a wheel end that an error is about; RODT_FIELD_NONE if it is about none. */
rodt_field field_of_error(const rodt_error *error);

/* Shows a text in lines of at most so many columns, and a caret under a character of it, counted from 1; 0 = none. */
void print_place(FILE *to, unsigned columns, const char *text, uint32_t character);

#endif
