/* SPDX-License-Identifier: Apache-2.0 */
/* Values of the library as texts for people. */
#ifndef FORMAT_H
#define FORMAT_H

#include <rodtravel/rodtravel.h>

/* The texts below are written into the buffer and returned; "-" for what is not given. */
#define WORD_SIZE RODT_LENGTH_TEXT_SIZE
const char *format_length(rodt_length length, char word[WORD_SIZE]);
const char *format_mm(rodt_length length, char word[WORD_SIZE]);
const char *format_date(rodt_date date, char word[WORD_SIZE]);
const char *format_pressure(rodt_pressure pressure, char word[WORD_SIZE]);
const char *format_chamber(const rodt_chamber *chamber, char word[RODT_CHAMBER_TEXT_SIZE]);
const char *format_source(const rodt_source *source, char words[RODT_SOURCE_TEXT_SIZE]);

/* A number such as "38", "31.25" or "3/5". */
const char *format_ratio(rodt_ratio ratio, char word[WORD_SIZE]);

/* "in adjustment" as "IN ADJUSTMENT"; letters of ASCII and Latin-1 alone, in UTF-8. */
const char *format_capitals(const char *text, char *out, size_t size);

#endif
