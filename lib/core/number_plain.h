/* SPDX-License-Identifier: Apache-2.0 */
/* The fast path of number_parse.c: numbers as nearly everybody writes them, read in one pass. */
#ifndef RODT_NUMBER_PLAIN_H
#define RODT_NUMBER_PLAIN_H

#include "core/common.h"

/* num / den, not in lowest terms. */
typedef struct plain_number {
    uint32_t num;
    uint32_t den; /* a power of ten, or of a fraction one of two */
    bool is_fraction;
} plain_number;

/* Whole digits and decimals of a plain number, at most. */
#define PLAIN_WHOLE_DIGITS 3
#define PLAIN_DECIMALS 6

/*
 * Reads "2", "2.125", "3/8", "2 1/8", "2-1/8" or "2½" and the blanks after it, and gives the place of what follows.
 * NULL: the number is not plain, or none; number_parse.c then has the answer. What this function reads, that one reads
 * alike, and there is no lost blank in it.
 *
 * end  of the text; NULL = a zero byte closes it
 */
const char *rodti_number_plain(const char *text, const char *end, bool decimal_comma, plain_number *out);

/* The end of what follows a number, without the blanks behind it. */
const char *rodti_plain_end(const char *rest, const char *end);

#endif
