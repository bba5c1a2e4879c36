/* SPDX-License-Identifier: Apache-2.0 */
/* What is known of where a stream goes: all that this folder asks of a terminal. */
#ifndef TERMINAL_H
#define TERMINAL_H

#include <stdbool.h>
#include <stdio.h>

#define LINE_WIDTH 80 /* of a file or a pipe */

/* Columns of where a stream goes: those of the terminal, 100 at most, or LINE_WIDTH. Lines end one column before. */
unsigned line_width(FILE *to);

/* Whether a person wants colour there. */
bool wants_colour(FILE *to);

#endif
