/* SPDX-License-Identifier: Apache-2.0 */
/* One character of UTF-8: its bytes, its width, and how a terminal may show it. */
#ifndef UTF8_H
#define UTF8_H

#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

/* Bytes of the UTF-8 character at the start of `size` bytes (at least 1), 1 to 4; 0 = none is there. */
size_t utf8_bytes(const char *text, size_t size);

/* Copies a text for a message, cut to what a line can hold. Returns `shown`. */
#define SHORTENED_SIZE 64
const char *shorten(const char *text, char shown[SHORTENED_SIZE]);

/* One character of UTF-8 as a terminal may show it: itself, or its number in angle brackets when it is a
 * control, cannot be seen, or is no character. Returns the bytes that were taken; *width columns. */
#define SHOWN_SIZE 12
size_t show_character(const char *text, char shown[SHOWN_SIZE], unsigned *width);

/* Prints text so that no character of it can steer a terminal. */
void print_safely(FILE *to, const char *text);

/* Columns of the screen that a text takes, or its first size bytes. */
unsigned columns_of(const char *text, size_t size);
unsigned columns_of_text(const char *text);

#endif
