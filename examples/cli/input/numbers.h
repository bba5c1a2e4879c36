/* SPDX-License-Identifier: Apache-2.0 */
/* Numbers and years as people type them, exactly. */
#ifndef NUMBERS_H
#define NUMBERS_H

#include <rodtravel/rodtravel.h>

/* Reads "31", "31.25" or "3/5", never below zero; with clock a time, as rodt_seconds_parse. */
bool read_ratio(const char *text, bool clock, rodt_ratio *out);

/* Reads a day, or a year by itself: month and day are 0 then. */
rodt_status read_built_day(const char *text, rodt_date *out, rodt_error *error);

#endif
