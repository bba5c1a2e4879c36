/* SPDX-License-Identifier: Apache-2.0 */
/* Text inside HTML and SVG. */
#ifndef MARKUP_H
#define MARKUP_H

#include <stdio.h>

/* Puts text so that no character of it is markup, also inside an attribute in double quotes; what cannot be seen, or
 * turns the writing around, is shown as its code. */
void markup_text(FILE *to, const char *text);

/* Puts a text of HTML in which no number is torn from what follows it at the end of a line: "2 1/2" would be read as
 * 1/2. */
void markup_words(FILE *to, const char *text);

/* Puts a format: every "%" is replaced by the next text, escaped. */
void markup_put(FILE *to, const char *format, ...);

#endif
