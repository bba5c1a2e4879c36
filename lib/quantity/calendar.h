/* SPDX-License-Identifier: Apache-2.0 */
/* The Gregorian calendar: the length of months, and days counted from 1970-01-01. */
#ifndef RODT_CALENDAR_H
#define RODT_CALENDAR_H

#include "core/common.h"
#include "rodtravel/date.h"

/* The years that a date can have, and both ends of them in days since 1970-01-01. */
#define CALENDAR_FIRST_YEAR 1900
#define CALENDAR_LAST_YEAR 2199
#define CALENDAR_FIRST_DAY (-25567)
#define CALENDAR_LAST_DAY 84005

/* From 0000-03-01 to 1970-01-01. Years are counted from March, so that the leap day is the last one. */
#define CALENDAR_EPOCH 719468

/* month is 1 to 12 */
static inline int calendar_days_in_month(int year, int month)
{
    static const int8_t days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    return days[month - 1] + (month == 2 && leap);
}

/* Days since 1970-01-01 of a valid date. */
static inline int32_t calendar_day_number(rodt_date date)
{
    int32_t year = date.year - (date.month <= 2);
    int32_t month = (date.month + 9) % 12;
    int32_t day_of_year = (153 * month + 2) / 5 + date.day - 1;
    return year * 365 + year / 4 - year / 100 + year / 400 + day_of_year - CALENDAR_EPOCH;
}

/* The date of a day number from CALENDAR_FIRST_DAY to CALENDAR_LAST_DAY. The mean length of a year finds a year that
 * is off by one near the first of March, so the search starts on the late side. */
static inline rodt_date calendar_date(int32_t number)
{
    int32_t since = number + CALENDAR_EPOCH;
    int32_t year = (int32_t)((int64_t)since * 400 / 146097) + 2;
    int32_t left;
    do {
        year--;
        left = since - (year * 365 + year / 4 - year / 100 + year / 400);
    } while (left < 0);
    int32_t month = (5 * left + 2) / 153;
    int32_t calendar_month = month < 10 ? month + 3 : month - 9;
    return (rodt_date){(int16_t)(year + (calendar_month <= 2)), (int8_t)calendar_month,
                       (int8_t)(left - (153 * month + 2) / 5 + 1)};
}

#endif
