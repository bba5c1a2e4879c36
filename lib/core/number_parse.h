/* SPDX-License-Identifier: Apache-2.0 */
/* One number as people write it on a form, and why a text is none. Lengths and pressures share it. */
#ifndef RODT_NUMBER_TEXT_H
#define RODT_NUMBER_TEXT_H

#include "core/number.h"
#include "core/text.h"

/* Finest part that is read or kept: 1/1 000 000 000. */
#define NUMBER_DEN_MAX 1000000000

/* Why a text was refused. `wanted` is a noun phrase for "... was expected here"; `sentence` stands for
 * itself; one of them is NULL. */
typedef struct number_problem {
    rodt_status status;
    uint32_t column;
    const char *wanted;
    const char *sentence;
} number_problem;

typedef struct number_text {
    number value;      /* never below zero */
    bool is_fraction;  /* a fraction was written: "of an inch" may follow */
    bool is_bare;      /* digits alone: they can be the day number of a spreadsheet */
    bool is_too_large; /* more digits than a reading can have; the value is not set */
} number_text;

/* Sets the cursor on the first character that is neither blank nor line end, and its end behind the last
 * such one; columns count from the start of the text. */
void number_parse_start(text_cursor *cursor, const char *text, size_t size);

/*
 * Reads ["+"] and one of: 2; 2.5; .5; 3/4; 1 3/4; 1-3/4; 3/4 and 1 3/4 as one character each way. Leaves
 * the cursor behind the number. False: *problem says why.
 */
bool number_parse(text_cursor *cursor, bool decimal_comma, number_text *out, number_problem *problem);

/* True for a denominator that tapes, decimals and millimetres can give in inches. */
bool number_is_on_a_tape(int64_t den);

/* Day numbers of spreadsheets from 1982 to 2064: no reading is that large, so they are told apart. */
bool number_is_spreadsheet_day(const number_text *read);

/* Fills *error (may be NULL) with the best reason for the refusal, which may be another one than where
 * the reading stopped: a date, a bound, a range, a comma. Returns its status. */
rodt_status number_explain_error(const char *text, size_t size, bool decimal_comma,
                               const number_problem *problem, rodt_error *error);

/* Writes a mixed fraction in lowest terms. RODT_OK, RODT_E_ARGUMENT, RODT_E_SPACE. */
rodt_status number_format(number value, char *text, size_t size);

#endif
