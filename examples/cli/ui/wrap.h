/* SPDX-License-Identifier: Apache-2.0 */
/* Lines that fold, and colour where it helps. */
#ifndef WRAP_H
#define WRAP_H

#include <stdio.h>

#define LINE_WIDTH 80

/* Prints a label, then the text in lines of at most LINE_WIDTH columns that hang at `indent`. */
void print_wrapped(FILE *to, const char *label, unsigned indent, const char *text);
void print_wrapped_at(FILE *to, unsigned line_width, const char *label, unsigned indent, const char *text);

typedef enum paint_kind { PAINT_GOOD, PAINT_BAD, PAINT_OPEN, PAINT_STRONG } paint_kind;

/* Prints in colour where that helps a person: on a terminal, unless NO_COLOR is set. */
void print_painted(FILE *to, paint_kind paint, const char *text);

#endif
