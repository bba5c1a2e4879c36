/* SPDX-License-Identifier: Apache-2.0 */
/* Helpers of the unit tests: tables of cases, reproducible chance, the form of exact numbers. */
#ifndef TEST_SUPPORT_H
#define TEST_SUPPORT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* A file of RFC 4180 records, read as a whole. */
typedef struct csv_file {
    char *bytes;
    size_t size;
    size_t at;
    unsigned record; /* number of the record that was read last; the heading is 1 */
} csv_file;

/* Both end the test when the file is missing or broken. */
void csv_open(csv_file *file, const char *path);
void csv_close(csv_file *file);

/* Reads the next record into at most `most` cells, valid until csv_close. Returns their number, 0 at the end
 * of the file. */
size_t csv_read(csv_file *file, char *cells[], size_t most);

/* Reads the next case: comments and the heading, which begins with that cell, are passed over. False at the end of the
 * file. Ends the test where a case has other than `width` cells. */
bool csv_read_case(csv_file *file, char *cells[], size_t width, const char *heading);

/* The next number of a fixed sequence. */
uint64_t chance(uint64_t *state);

/* A 64-bit number that is often small, often at the ends of the range, often around a power of two. */
int64_t chance_number(uint64_t *state);

/* Greatest common divisor by Euclid's way, which the library does not use. */
uint64_t euclid(uint64_t a, uint64_t b);

/* True for num/den in lowest terms with den above zero. */
bool is_canonical(int64_t num, int64_t den);

/* Reads "7/4" or "2". False if it is no fraction of 64-bit parts. */
bool read_fraction(const char *text, int64_t *num, int64_t *den);

#endif
