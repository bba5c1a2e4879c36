/* SPDX-License-Identifier: Apache-2.0 */
/* Lines that fold at the width of where they go, and colour where it helps. */
#ifndef WRAP_H
#define WRAP_H

#include "ui/terminal.h"

#include <stdbool.h>
#include <stdio.h>

/* Prints a label, then the text in lines that fold at the width of the stream and hang at `indent`. Where that leaves
 * too little room, the label has a line of its own. */
void print_wrapped(FILE *to, const char *label, unsigned indent, const char *text);

/* The same as one of several points under a label: those after the first have the label "". */
void print_point(FILE *to, const char *label, unsigned indent, const char *text);

/* PAINT_EDGE: good, with nothing to spare. */
typedef enum paint_kind { PAINT_GOOD, PAINT_BAD, PAINT_OPEN, PAINT_EDGE, PAINT_STRONG } paint_kind;

/* Prints in colour where that helps a person: on a terminal, unless NO_COLOR is set. */
void print_painted(FILE *to, paint_kind paint, const char *text);

/* The same as lines of their own, which fold. */
void print_headline(FILE *to, paint_kind paint, const char *text);

/* The same, and a text after it, or on lines of its own where both do not fit. */
void print_title(FILE *to, paint_kind paint, const char *title, const char *text);

/* Whether the terminal says that it shows UTF-8. */
bool shows_utf8(void);

#endif
