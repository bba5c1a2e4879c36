/* SPDX-License-Identifier: Apache-2.0 */
/* Exact lengths: read from a tape's spelling, added, compared and written without rounding. */
#ifndef RODTRAVEL_LENGTH_H
#define RODTRAVEL_LENGTH_H

#include <stdbool.h>

#include "ratio.h"
#include "style.h"

#ifdef __cplusplus
extern "C" {
#endif

/*
 * An exact length: num / den inches, in lowest terms, den > 0. A value of all zero bytes means "not
 * given". Compare two of them with rodt_length_compare, not member by member with other numbers; make
 * them with the functions below, which reduce to lowest terms.
 */
typedef struct rodt_length {
    int64_t num; /* numerator, in inches */
    int64_t den; /* denominator; 0 = not given */
} rodt_length;

/* Greatest length that is read as a reading of a rod, a stroke or a chamber: 24 in. Anything longer is
 * a lost decimal point. (A plausibility bound of this library, not a figure of law.) */
#define RODT_LENGTH_MAX_INCHES 24

/* Room for any length written by this library, with the closing zero byte. */
#define RODT_LENGTH_TEXT_SIZE 64

/*
 * Makes the length of num/den inches.
 *
 * RODT_OK          *out holds it in lowest terms
 * RODT_E_ARGUMENT  den is zero, or out is NULL
 * RODT_E_RANGE     it does not fit (only INT64_MIN can cause this)
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_length_from_inches(int64_t num, int64_t den, rodt_length *out);

/* Makes the length of num/den millimetres; 1 in = 25.4 mm exactly. Statuses as rodt_length_from_inches; RODT_E_RANGE
 * also when the number of inches does not fit. */
RODT_API RODT_MUST_CHECK rodt_status rodt_length_from_mm(int64_t num, int64_t den, rodt_length *out);

/*
 * Reads one length as a person writes it on a form: "1 3/4", "2-1/8 in", "4 13/16\"", "1½", ".875",
 * "44.45 mm", "4.5 cm". The unit may be in, in., inch(es), po, an inch mark, mm or cm; without one the
 * number is inches. A fraction such as 1/8 is inches only: no metric tape has eighths. Digits are plain
 * ASCII. Never guesses: a text that could mean two values, and one that means none, is an error, and so is a
 * fraction that is on no tape, such as a sixth or a third: it is a sixteenth or a thirty-second that lost a
 * digit. A blank that was lost is not noticed here: "31/8" is read as it is written, 3 7/8 in. A text that is judged
 * goes through what notices it: a form or a column (stroke.h, column_text.h), rodt_record_set_text, or
 * rodt_length_parse_strict. Reads neither the locale nor any global state. The result is 0 to 24 in.
 *
 * text   zero-terminated UTF-8
 * out    the length
 * error  NULL, or gets status, column and a sentence
 *
 * RODT_OK             *out is the length
 * RODT_E_EMPTY        nothing but blanks, a dash, "n/a"
 * RODT_E_SYNTAX       not a length; the column is where the reading stopped
 * RODT_E_AMBIGUOUS    more than one meaning (1,000; 2 - 1/4; 1 to 2; "2+"; "<2")
 * RODT_E_UNIT         feet, psi or another unit, or two units
 * RODT_E_DATE_CELL    "2-Jan", "1/4/2024", 45293: a spreadsheet made a date of it
 * RODT_E_NEGATIVE     below zero
 * RODT_E_IMPLAUSIBLE  above 24 in
 * RODT_E_RANGE        finer than one part in 1 000 000 000
 * RODT_E_ARGUMENT     text or out is NULL; of rodt_length_parse_n also a style with an unknown unit or a reserve
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_length_parse(const char *text, rodt_length *out, rodt_error *error);

/*
 * As rodt_length_parse, for a text of size bytes that need not be closed by a zero byte (a zero byte
 * inside is an error like any other character), with the style of the form that it is on.
 *
 * style    NULL for inches and a decimal point
 * written  NULL, or gets the unit in which the text was written
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_length_parse_n(const char *text, size_t size, const rodt_style *style,
                                                         rodt_length *out, RODT_ENUM32(rodt_unit) *written,
                                                         rodt_error *error);

/*
 * As rodt_length_parse, and refuses a fraction that may be a mixed one whose blank was lost: "31/8" can be 3 1/8. For a
 * length whose second value is kept nowhere: a mark, a diameter, an arm, a reading that is filled by hand.
 *
 * RODT_E_AMBIGUOUS  also for such a fraction
 * Other statuses as rodt_length_parse.
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_length_parse_strict(const char *text, rodt_length *out, rodt_error *error);

/* As rodt_length_parse_strict, with the arguments of rodt_length_parse_n. On failure *written is untouched, too. */
RODT_API RODT_MUST_CHECK rodt_status rodt_length_parse_strict_n(const char *text, size_t size,
                                                                const rodt_style *style, rodt_length *out,
                                                                RODT_ENUM32(rodt_unit) *written, rodt_error *error);

/* True if the value was given (its denominator is not zero). */
RODT_INLINE bool rodt_length_given(rodt_length length) { return length.den != 0; }

/* Returns -1, 0 or 1 as a is shorter than, equal to or longer than b; exact for every value. A length
 * that is not given is before every other. */
RODT_API int rodt_length_compare(rodt_length a, rodt_length b);

/*
 * *out = a + b and *out = a - b, exactly. out may point to a or b of the caller.
 *
 * RODT_OK          done
 * RODT_E_ARGUMENT  a or b is not given, or out is NULL
 * RODT_E_RANGE     the exact result does not fit in 64-bit parts
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_length_add(rodt_length a, rodt_length b, rodt_length *out);
RODT_API RODT_MUST_CHECK rodt_status rodt_length_subtract(rodt_length a, rodt_length b, rodt_length *out);

/* *out = length * factor, exactly; 4/5 of a rated stroke is a length. Statuses as rodt_length_add. */
RODT_API RODT_MUST_CHECK rodt_status rodt_length_scale(rodt_length length, rodt_ratio factor, rodt_length *out);

/*
 * Rounds a length to a whole number of divisions (the nearest sixteenth: division 1/16 in).
 *
 * RODT_OK          done; *out may equal length
 * RODT_E_ARGUMENT  a value is not given, division is not above zero, rounding is unknown, out is NULL
 * RODT_E_RANGE     the result does not fit
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_length_round(rodt_length length, rodt_length division, rodt_rounding rounding,
                                                       rodt_length *out);

/*
 * Writes inches as a mixed fraction in lowest terms: "1 3/4", "2", "5/16", "-1/8", "0". Exact: reading
 * the text of a length that was read, or of a sum of such lengths, gives the same length, unless it is
 * below zero or above 24 in: no reading is.
 *
 * text, size, needed  as in status.h; RODT_LENGTH_TEXT_SIZE bytes are always enough
 *
 * RODT_OK          text holds it, with a closing zero byte
 * RODT_E_ARGUMENT  the length is not given, or text is NULL and size is not 0
 * RODT_E_SPACE     size is too small; text is untouched
 */
RODT_API rodt_status rodt_length_format(rodt_length length, char *text, size_t size, size_t *needed);

/*
 * Writes a decimal number with exactly `digits` digits (0 to 12) after the point, in inches, millimetres
 * or centimetres, without the unit: "1.7500", "44.45". Statuses as rodt_length_format; RODT_E_ARGUMENT
 * also for an unknown unit or rounding, or more than 12 digits; RODT_E_RANGE if it does not fit.
 */
RODT_API rodt_status rodt_length_format_decimal(rodt_length length, rodt_unit unit, unsigned digits,
                                                rodt_rounding rounding, char *text, size_t size,
                                                size_t *needed);

#ifdef __cplusplus
}
#endif
#endif
