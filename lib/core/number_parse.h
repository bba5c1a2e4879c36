/* SPDX-License-Identifier: Apache-2.0 */
/* One number as people write it on a form, and why a text is none. Lengths and pressures share it. */
#ifndef RODT_NUMBER_PARSE_H
#define RODT_NUMBER_PARSE_H

#include "core/error.h"
#include "core/exact.h"
#include "core/text.h"

/* Finest part that is read or kept: 1/1 000 000 000. */
#define NUMBER_DEN_MAX 1000000000

/* Why a text is no number. `wanted` is a noun phrase for "... was expected here"; `sentence` is complete; one of them
 * is RODT_MESSAGE_NONE. */
typedef struct number_problem {
    rodt_status status;
    uint32_t column;
    rodt_message_code wanted;
    rodt_message_code sentence;
    bool is_final; /* no better reason is to be looked for */
} number_problem;

typedef struct number_text {
    rodt_ratio value;  /* never below zero */
    bool is_fraction;  /* a fraction was written: "of an inch" may follow */
    bool is_bare;      /* digits alone: they can be the day number of a spreadsheet */
    bool is_too_large; /* more digits than a reading can have; the value is 0/0 */
    uint32_t num;      /* of a fraction without a whole number, as written: 31/8; otherwise 0 */
    uint32_t den;
} number_text;

/* A number and what follows it, which must be a unit. */
typedef struct number_quantity {
    number_text read;
    uint32_t column;      /* of the number */
    const char *unit;     /* without the blanks around it; it need not be closed by a zero byte */
    size_t unit_size;     /* 0 = none is written */
    uint32_t unit_column;
} number_quantity;

/* A fraction of one character. */
typedef struct number_vulgar {
    uint8_t num;
    uint8_t den;
} number_vulgar;

/* NULL: the character is none. */
const number_vulgar *rodti_number_vulgar(uint32_t code);

/* Sets the cursor on the first character that is neither blank nor line end, and its end after the last such one;
 * columns count from the start of the text. */
void rodti_number_parse_start(text_cursor *cursor, const char *text, size_t size);

/* Reads ["+"] and one of: 2; 2.5; .5; 3/4; 1 3/4; 1-3/4; the same with a fraction of one character. Leaves the cursor
 * after the number. False: *problem says why. */
bool rodti_number_parse(text_cursor *cursor, bool decimal_comma, number_text *out, number_problem *problem);

/* Reads a number with the blanks around it and the rest of the text. False also for the day number of a date. */
bool rodti_number_parse_quantity(const char *text, size_t size, bool decimal_comma, number_quantity *out,
                           number_problem *problem);

/* Each sets *problem, to a complete sentence or to what was expected, and returns false. */
bool rodti_number_set_problem(number_problem *problem, rodt_status status, uint32_t column,
                              rodt_message_code sentence);
bool rodti_number_set_expected(number_problem *problem, uint32_t column, rodt_message_code wanted);

/* True for a denominator that tapes, decimals and millimetres can give in inches. */
bool rodti_number_is_on_a_tape(int64_t den);

/* Fills *error (may be NULL) with the most helpful reason, which may be another one than where the parser stopped: a
 * date, a bound, a range, a comma. Returns its status. */
rodt_status rodti_number_explain_error(const char *text, size_t size, bool decimal_comma,
                               const number_problem *problem, rodt_error *error);

#endif
