/* SPDX-License-Identifier: Apache-2.0 */
/* Calendar dates: a rule of law holds from one day to another. */
#ifndef RODTRAVEL_DATE_H
#define RODTRAVEL_DATE_H

#include <stdbool.h>

#include "status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* A day of the Gregorian calendar. All zero bytes mean "not given". */
typedef struct rodt_date {
    int16_t year; /* 1900 to 2199 */
    int8_t month; /* 1 to 12 */
    int8_t day;   /* 1 to 31 */
} rodt_date;

/* "YYYY-MM-DD" and the closing zero byte. */
#define RODT_DATE_TEXT_SIZE 11

/* The order of the numbers in a date such as 06/05/2024. A date with both numbers below 13 is ambiguous unless the
 * caller knows the order of the file. A leading year of four digits needs no order. */
typedef enum rodt_date_order RODT_ENUM_TYPE {
    RODT_DATE_ORDER_UNKNOWN = 0,     /* not known; such a date can be ambiguous */
    RODT_DATE_ORDER_DAY_FIRST = 1,   /* 14/10/2021 */
    RODT_DATE_ORDER_MONTH_FIRST = 2, /* 10/14/2021 */
    RODT_DATE_ORDER_YEAR_FIRST = 3   /* years of two digits: 21/10/14 */
} rodt_date_order;
#define RODT_DATE_ORDER_END 4 /* one more than the last; grows in later versions */

/* The stable word of an order, "day-first"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_date_order_name(rodt_date_order order);

/* Finds an order by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_date_order_find(const char *word, RODT_ENUM32(rodt_date_order) *out);

/* True if the date was given. */
RODT_INLINE bool rodt_date_given(rodt_date date) { return date.year != 0; }

/* Returns -1, 0 or 1 as a is before, on or after b. A date that is not given is before every other. */
RODT_API int rodt_date_compare(rodt_date a, rodt_date b);

/* Makes a date. RODT_OK; RODT_E_ARGUMENT: no such day, a year outside 1900 to 2199, or out is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_date_make(int year, int month, int day, rodt_date *out);

/* Days since 1970-01-01, as columns have them: 2021-10-14 is 18914. RODT_OK; RODT_E_ARGUMENT: there is no such day, or
 * days is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_date_to_days(rodt_date date, int32_t *days);

/* The date of a number of days since 1970-01-01. RODT_OK; RODT_E_ARGUMENT: out is NULL; RODT_E_RANGE: it is not of 1900
 * to 2199. */
RODT_API RODT_MUST_CHECK rodt_status rodt_date_from_days(int32_t days, rodt_date *out);

/* Reads an ISO 8601 calendar date, "2021-10-14". Statuses as rodt_date_parse_n, without RODT_E_AMBIGUOUS. */
RODT_API RODT_MUST_CHECK rodt_status rodt_date_parse_iso(const char *text, rodt_date *out, rodt_error *error);

/*
 * Reads a date from a form: 2021-10-14 (a time after it, "2021-10-14T08:30" or with a blank, is accepted and
 * dropped), 2021/10/14, 14-OCT-21, 14-oct.-21, 14 Oct 2021, 10/14/2021, 14/10/2021. A year of two digits is 2000 to
 * 2069 or 1970 to 1999, and "21/10/14" can be 14 October 2021 or 21 October 2014.
 *
 * text, size  UTF-8; need not be closed by a zero byte
 * order       the order of day, month and year in dates made of numbers only
 * out         the date
 *
 * RODT_OK           *out is the date
 * RODT_E_EMPTY      nothing but blanks
 * RODT_E_SYNTAX     not a date, no such day, or a date that contradicts the order
 * RODT_E_AMBIGUOUS  the numbers can be two days or three and order is unknown; read it again with each order to get
 *                   its meanings
 * RODT_E_ARGUMENT   text or out is NULL, or order is unknown to this version
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_date_parse_n(const char *text, size_t size, rodt_date_order order,
                                                       rodt_date *out, rodt_error *error);

/* As rodt_date_parse_n, for a text with a closing zero byte and an order that is unknown. */
RODT_API RODT_MUST_CHECK rodt_status rodt_date_parse(const char *text, rodt_date *out, rodt_error *error);

/* True if the text is a date in another order, but none in the declared order: 10/14/2021 in a file of days first.
 * Then the other dates of the file may be read wrongly, too. */
RODT_API bool rodt_date_contradicts(const char *text, size_t size, rodt_date_order order);

/* Writes "YYYY-MM-DD". Statuses as rodt_length_format; RODT_DATE_TEXT_SIZE bytes are always enough. */
RODT_API rodt_status rodt_date_format(rodt_date date, char *text, size_t size, size_t *needed);

#ifdef __cplusplus
}
#endif
#endif
