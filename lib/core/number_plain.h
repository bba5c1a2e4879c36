/* SPDX-License-Identifier: Apache-2.0 */
/* The fast path of number_parse.c: numbers as nearly everybody writes them, read in one pass. */
#ifndef RODT_NUMBER_PLAIN_H
#define RODT_NUMBER_PLAIN_H

#include <string.h>

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

extern const uint32_t rodti_power_of_ten[PLAIN_DECIMALS + 1];

/* --- Decimals alone -------------------------------------------------------------------------------------- */

/* A decimal of up to 8 bytes that are a word, filled up with zero bytes. */
typedef struct word_decimal {
    uint32_t num; /* whole number and decimals */
    uint32_t decimals;
    bool is_read; /* else the number says nothing, and there are up to PLAIN_DECIMALS decimals */
} word_decimal;

#if defined(__BYTE_ORDER__) && __BYTE_ORDER__ == __ORDER_LITTLE_ENDIAN__
#define NUMBER_DECIMALS 1

#define NUMBER_EACH UINT64_C(0x0101010101010101)

/* The number that eight digits are, the first in the lowest byte; a digit is its value. */
INLINE uint32_t number_of_digits(uint64_t digits)
{
    const uint64_t half = UINT64_C(0x000000FF000000FF);
    digits = digits * 10 + (digits >> 8); /* pairs, in every other byte */
    return (uint32_t)(((digits & half) * (100 + (UINT64_C(1000000) << 32)) +
                       (digits >> 16 & half) * (1 + (UINT64_C(10000) << 32))) >> 32);
}

/* True if each byte is the value of a digit. */
INLINE bool number_all_digits(uint64_t digits)
{
    return (((digits + NUMBER_EACH * 0x76) | digits) & NUMBER_EACH * 0x80) == 0;
}

/* The digits, six at most, at the end of a text of 4 bytes or more, all at a time. False: there are fewer, or too few
 * bytes before them. */
INLINE bool number_last_digits(const char *text, size_t size, size_t digits, uint32_t *value)
{
    uint64_t word;
    uint32_t last;
    if (size >= sizeof word) {
        memcpy(&word, text + size - sizeof word, sizeof word);
    } else {
        memcpy(&last, text + size - sizeof last, sizeof last);
        word = (uint64_t)last << 32;
    }
    word = (word ^ NUMBER_EACH * '0') & UINT64_MAX << 8 * (8 - digits);
    if (!number_all_digits(word)) /* a byte that was not loaded is no digit either */
        return false;
    *value = number_of_digits(word);
    return true;
}

/* Decimals of a text by its size and the place of its point; 0 = it has too few or too many digits on either side. */
extern const unsigned char rodti_word_decimals[16][8];

/* What number_decimals reads of a text of up to 15 bytes, without a branch. */
INLINE word_decimal number_decimal_word(uint64_t word, unsigned size, bool decimal_comma)
{
    const uint64_t other = word ^ NUMBER_EACH * (decimal_comma ? ',' : '.');
    const uint64_t found = (other - NUMBER_EACH) & ~other & NUMBER_EACH * 0x80; /* the lowest is the point */
    const uint64_t before = ((found & (0 - found)) >> 7) - 1;
    const unsigned whole = (unsigned)__builtin_ctzll(found | UINT64_C(1) << 63) / 8;
    const uint64_t digits = (((word & before) | (word >> 8 & ~before)) ^ NUMBER_EACH * '0') << 8 * ((9 - size) & 7);
    const unsigned decimals = rodti_word_decimals[size][whole];
    const bool has_zero_before = (whole > 1) & ((word & 0xFF) == '0');
    return (word_decimal){number_of_digits(digits), decimals,
                          (decimals != 0) & !has_zero_before & number_all_digits(digits)};
}

/* Reads a text that is a whole number and decimals and nothing else, as rodti_number_plain does. False: that one has
 * the answer. */
INLINE bool number_decimals(const char *text, size_t size, bool decimal_comma, plain_number *out)
{
    const char point = decimal_comma ? ',' : '.';
    uint32_t whole = size >= 4 ? (uint32_t)(unsigned char)text[0] - '0' : 10;
    uint32_t value;
    size_t at = 1;
    if (whole > 9)
        return false;
    for (; text[at] != point; at++) {
        const uint32_t digit = (uint32_t)(unsigned char)text[at] - '0';
        if (digit > 9 || whole == 0 || at >= PLAIN_WHOLE_DIGITS)
            return false;
        whole = whole * 10 + digit;
    }
    const size_t digits = size - at - 1;
    if (digits - 1 >= PLAIN_DECIMALS || !number_last_digits(text, size, digits, &value))
        return false;
    const uint32_t den = rodti_power_of_ten[digits];
    *out = (plain_number){whole * den + value, den, false};
    return true;
}

#else
#define NUMBER_DECIMALS 0

INLINE word_decimal number_decimal_word(uint64_t word, unsigned size, bool decimal_comma)
{
    (void)word, (void)size, (void)decimal_comma;
    return (word_decimal){0, 0, false};
}

INLINE bool number_decimals(const char *text, size_t size, bool decimal_comma, plain_number *out)
{
    (void)text, (void)size, (void)decimal_comma, (void)out;
    return false;
}

#endif

/* The end of what follows a number, without the blanks behind it. */
const char *rodti_plain_end(const char *rest, const char *end);

#endif
