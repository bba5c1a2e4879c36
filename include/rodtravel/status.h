/* SPDX-License-Identifier: Apache-2.0 */
/* Status codes, and the description of an error that a text or a table gave. */
#ifndef RODTRAVEL_STATUS_H
#define RODTRAVEL_STATUS_H

#include "message_code.h"
#include "version.h"

#ifdef __cplusplus
extern "C" {
#endif

/*
 * What a function says of its own work. Every function that can fail returns one of these, and leaves
 * its results as they were unless it returns RODT_OK; the exception is rodt_chamber_reader_read, which has written the
 * codes before the row that fails. The numbers are stable; a later version may add codes inside the group that they
 * belong to by meaning.
 *
 * A function that writes a text ends in (char *text, size_t size, size_t *needed). `needed` may be NULL; else it gets
 * the bytes of the text with its closing zero byte, on RODT_OK and on RODT_E_SPACE. To ask first, pass text NULL and
 * size 0: the status is then RODT_E_SPACE. Text NULL with another size is RODT_E_ARGUMENT. A text that does not fit is
 * not cut: `text` is then untouched.
 *
 * A status never judges a brake: that is a verdict (stroke.h). "No published limit" is a verdict's
 * reason, "the text is no length" is a status.
 */
typedef enum rodt_status RODT_ENUM_TYPE {
    RODT_OK = 0,                 /* the function did its work; its results are valid */

    /* The calling program is mistaken. */
    RODT_E_ARGUMENT = 1,         /* a null pointer, an unknown enumerator, a zero denominator, an impossible date */
    RODT_E_SPACE = 2,            /* size is too small for the text; *needed says what it takes */

    /* A text cannot be read; the error says the column and what was expected. */
    RODT_E_EMPTY = 10,           /* there is nothing to read: only blanks. The readers of lengths, pressures and seconds
                                    also take a dash, "n/a" and "none" for nothing; those of chambers, classes, dates,
                                    units and positions refuse them */
    RODT_E_SYNTAX = 11,          /* the text does not have the form that is read here */
    RODT_E_AMBIGUOUS = 12,       /* the text can mean more than one value: 1,000; 2 - 1/4; a range; a bound */
    RODT_E_UNIT = 13,            /* a unit of another quantity, feet, or two units */
    RODT_E_DATE_CELL = 14,       /* a spreadsheet turned the value into a date */
    RODT_E_NEGATIVE = 15,        /* a distance or a pressure below zero */
    RODT_E_IMPLAUSIBLE = 16,     /* larger than any reading of this kind can be: a lost decimal point */
    RODT_E_RANGE = 17,           /* more digits than an exact 64-bit fraction holds */

    /* A fact is missing from the tables. */
    RODT_E_UNKNOWN_RULES = 20,   /* no rule set of that id */
    RODT_E_UNKNOWN_CHAMBER = 21, /* the text is no chamber mark that is known */

    /* A table given at run time is not valid; the error says line and column. */
    RODT_E_TABLE = 30,           /* the table is broken */
    RODT_E_LAXER = 31,           /* a limit in it is laxer than the law that it is based on */

    /* The machine. */
    RODT_E_MEMORY = 40,          /* there is no memory */

    /* A fault in this library; please report it. Never expected. */
    RODT_E_INTERNAL = 50         /* never expected */
} rodt_status;
#define RODT_STATUS_END 51 /* one more than the last; grows in later versions */

/* Returns one English sentence for a status, without a full stop; "unknown status" for any other
 * number. The text is constant and is never freed. */
RODT_API const char *rodt_status_text(rodt_status status);

/* The stable word of a status, "date-cell"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_status_name(rodt_status status);

/* Finds a status by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_status_find(const char *word, RODT_ENUM32(rodt_status) *out);

/* Room for the sentence of an error, with its closing zero byte. */
#define RODT_ERROR_TEXT_SIZE 200

/* Room for the name of the input that an error is about, with its closing zero byte. */
#define RODT_ERROR_FIELD_SIZE 32

/* Arguments of the sentence of one error, at most; and room for the words of one. */
#define RODT_ERROR_ARGUMENTS 4
#define RODT_ERROR_WORD_SIZE 28

/* What the sentence of an error is said with: a phrase of its own, or words that are in every language as they are. */
typedef struct rodt_error_argument {
    const char *name;                     /* as the template names it; constant, NULL if it is not used */
    RODT_ENUM32(rodt_message_code) code;  /* of the phrase; RODT_MESSAGE_NONE = `word` holds it */
    char word[RODT_ERROR_WORD_SIZE];      /* a character of the text, a number; UTF-8, closed by a zero byte */
} rodt_error_argument;

/*
 * What was wrong with a text, and where. Functions that take one fill it when they fail and leave it
 * alone otherwise; the exceptions are rodt_form_parse and rodt_form_judge_row, which always fill it, with RODT_OK where
 * nothing was wrong. Each of them accepts NULL when the caller does not care. A plain value: a copy is as good, and
 * stays so after the text and the rule set are gone.
 *
 * `text` is English. In another language the sentence is made of `code` and `arguments`, by rodt_error_message and a
 * catalogue (message.h).
 */
typedef struct rodt_error {
    RODT_ENUM32(rodt_status) status; /* what the function returned */
    uint32_t line;   /* 1 = first line of a table; 0 = the text has no lines */
    uint32_t column; /* 1 = first character (not byte) of the text, or of the line of a table; 0 = the whole of it */
    RODT_ENUM32(rodt_message_code) code; /* the sentence as data; RODT_MESSAGE_NONE = there is only `text` */
    char field[RODT_ERROR_FIELD_SIZE]; /* which input: "released", "chamber", a table's column; empty if there is one */
    char text[RODT_ERROR_TEXT_SIZE]; /* one sentence, UTF-8, no full stop, always closed by a zero byte */
    uint32_t count;  /* arguments that are used */
    uint32_t reserved_1; /* zero */
    rodt_error_argument arguments[RODT_ERROR_ARGUMENTS]; /* what the sentence is said with */
    uint64_t reserved[4]; /* zero */
} rodt_error;

/* "Was it so?", where "nobody wrote it down" is an answer of its own. */
typedef enum rodt_recorded RODT_ENUM_TYPE {
    RODT_RECORDED_NOT_RECORDED = 0, /* nobody wrote it down */
    RODT_RECORDED_NO = 1,      /* it was not so */
    RODT_RECORDED_YES = 2      /* it was so */
} rodt_recorded;
#define RODT_RECORDED_END 3 /* one more than the last; grows in later versions */

/* The stable word of an answer, "not-recorded"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_recorded_name(rodt_recorded recorded);

/* Finds an answer by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_recorded_find(const char *word, RODT_ENUM32(rodt_recorded) *out);

/* Edition of the tables that are compiled in, an ISO date such as "2026-11-24": the day on which the
 * last row was changed or read again in its source. Constant, never freed. */
RODT_API const char *rodt_tables_edition(void);

#ifdef __cplusplus
}
#endif
#endif
