/* SPDX-License-Identifier: Apache-2.0 */
/* The fast path of length_parse.c. */
#ifndef RODT_LENGTH_PLAIN_H
#define RODT_LENGTH_PLAIN_H

#include "core/number_plain.h"
#include "rodtravel/length.h"

/* A plain number with its unit: num / den of them, not in lowest terms, at most RODT_LENGTH_MAX_INCHES. */
typedef struct plain_length {
    plain_number number;
    RODT_ENUM32(rodt_unit) unit;
} plain_length;

/*
 * Reads a length whose number is plain (number_plain.h). False, and nothing is written: rodt_length_parse_n has the
 * answer. A length that is read here has no lost blank.
 *
 * end  of the text; NULL = a zero byte closes it
 */
bool rodti_length_plain_parts(const char *text, const char *end, const rodt_style *style, plain_length *out);

/* The same in lowest terms. */
bool rodti_length_plain(const char *text, const char *end, const rodt_style *style, rodt_length *out,
                        RODT_ENUM32(rodt_unit) *written);

#endif
