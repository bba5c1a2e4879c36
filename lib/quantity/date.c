/* SPDX-License-Identifier: Apache-2.0 */
/* Dates: ISO 8601, and the ways in which forms and spreadsheets write a day. */
#include "rodtravel/date.h"

#include "core/month.h"
#include "core/number_parse.h"
#include "quantity/calendar.h"

#include <string.h>

int rodt_date_compare(rodt_date a, rodt_date b)
{
    int32_t left = (a.year * 100 + a.month) * 100 + a.day;
    int32_t right = (b.year * 100 + b.month) * 100 + b.day;
    return (left > right) - (left < right);
}

rodt_status rodt_date_make(int year, int month, int day, rodt_date *out)
{
    if (out == NULL || year < CALENDAR_FIRST_YEAR || year > CALENDAR_LAST_YEAR || month < 1 || month > 12)
        return RODT_E_ARGUMENT;
    if (day < 1 || day > calendar_days_in_month(year, month))
        return RODT_E_ARGUMENT;
    *out = (rodt_date){(int16_t)year, (int8_t)month, (int8_t)day};
    return RODT_OK;
}

rodt_status rodt_date_to_days(rodt_date date, int32_t *days)
{
    rodt_date valid;
    if (days == NULL || rodt_date_make(date.year, date.month, date.day, &valid) != RODT_OK)
        return RODT_E_ARGUMENT;
    *days = calendar_day_number(valid);
    return RODT_OK;
}

rodt_status rodt_date_from_days(int32_t days, rodt_date *out)
{
    if (out == NULL)
        return RODT_E_ARGUMENT;
    if (days < CALENDAR_FIRST_DAY || days > CALENDAR_LAST_DAY)
        return RODT_E_RANGE;
    *out = calendar_date(days);
    return RODT_OK;
}

/* One group of digits of a date. */
typedef struct group {
    int value;
    uint32_t digits;
    uint32_t column;
} group;

static bool read_group(text_cursor *cursor, group *out)
{
    *out = (group){0, 0, cursor->column};
    for (; text_is_digit(cursor->code) && out->digits < 5; rodti_text_next(cursor)) {
        out->value = out->value * 10 + (int)(cursor->code - '0');
        out->digits++;
    }
    return out->digits > 0 && out->digits < 5;
}

/* "T08:30", " 08:30:00", "T08:30:00.5Z", "+02:00": only the characters of a time, so that no second date and no word is
 * dropped with it. */
static bool is_time(text_cursor cursor)
{
    if (cursor.code != 'T' && cursor.code != 't' && cursor.code != ' ')
        return false;
    rodti_text_next(&cursor);
    group hour;
    if (!read_group(&cursor, &hour) || hour.digits != 2 || hour.value > 24 || cursor.code != ':')
        return false;
    for (; cursor.code != TEXT_END; rodti_text_next(&cursor)) {
        uint32_t code = cursor.code;
        if (!text_is_digit(code) && code != ':' && code != '.' && code != 'Z' && code != 'z' && code != '+' &&
            code != '-')
            return false;
    }
    return true;
}

static bool is_complete(const text_cursor *cursor) { return cursor->code == TEXT_END || is_time(*cursor); }

static rodt_status set_error(rodt_error *error, uint32_t column, rodt_message_code sentence)
{
    return rodti_error(error, RODT_E_SYNTAX, column, sentence);
}

static rodt_status store_date(const text_cursor *cursor, int year, int month, int day, rodt_date *out,
                              rodt_error *error)
{
    if (!is_complete(cursor))
        return set_error(error, cursor->column, RODT_MESSAGE_ERROR_DATE_END);
    if (rodt_date_make(year, month, day, out) != RODT_OK)
        return set_error(error, 0, RODT_MESSAGE_ERROR_NO_SUCH_DAY);
    return RODT_OK;
}

/* The cursor is after "YYYY-" or "YYYY/": after a leading year the month always comes first. */
static rodt_status read_iso(text_cursor *cursor, int year, uint32_t separator, rodt_date *out,
                            rodt_error *error)
{
    group month;
    group day;
    if (!read_group(cursor, &month) || month.digits != 2 || cursor->code != separator)
        return set_error(error, month.column, RODT_MESSAGE_ERROR_MONTH_AND_DAY);
    rodti_text_next(cursor);
    if (!read_group(cursor, &day) || day.digits != 2)
        return set_error(error, day.column, RODT_MESSAGE_ERROR_DAY);
    return store_date(cursor, year, month.value, day.value, out, error);
}

/* Two digits are 1970 to 2069: no earlier inspection is in a file, no later one is recorded today. */
static bool full_year(const group *read, int *year)
{
    *year = read->value;
    if (read->digits == 2)
        *year += read->value < 70 ? 2000 : 1900;
    return read->digits == 2 || read->digits == 4;
}

static bool is_separator(uint32_t code) { return code == '-' || code == '/' || code == '.' || code == ' '; }

/* "14-OCT-21", "14 Oct 2021", "14-oct.-21"; the cursor is on the month. */
static rodt_status read_named_month(text_cursor *cursor, int day, uint32_t separator, rodt_date *out,
                                    rodt_error *error)
{
    uint32_t column = cursor->column;
    group last;
    int year;
    int month = rodti_month_read(cursor);
    if (month == 0)
        return set_error(error, column, RODT_MESSAGE_ERROR_MONTH);
    if (cursor->code == '.' && separator != '.')
        rodti_text_next(cursor);
    if (cursor->code != separator)
        return set_error(error, cursor->column, RODT_MESSAGE_ERROR_YEAR);
    rodti_text_next(cursor);
    if (!read_group(cursor, &last) || !full_year(&last, &year))
        return set_error(error, last.column, RODT_MESSAGE_ERROR_YEAR_DIGITS);
    return store_date(cursor, year, month, day, out, error);
}

/* Three groups of digits, read in one order. */
static bool make_ordered(const group parts[3], rodt_date_order order, rodt_date *out)
{
    static const int8_t index[][3] = {/* of year, month and day */
                                      [RODT_DATE_ORDER_DAY_FIRST] = {2, 1, 0},
                                      [RODT_DATE_ORDER_MONTH_FIRST] = {2, 0, 1},
                                      [RODT_DATE_ORDER_YEAR_FIRST] = {0, 1, 2}};
    const group *day = &parts[index[order][2]];
    int year;
    return full_year(&parts[index[order][0]], &year) && day->digits <= 2 &&
           rodt_date_make(year, parts[index[order][1]].value, day->value, out) == RODT_OK;
}

/* The different days that the groups can mean in the given order, or in any one if it is unknown. The third order can
 * give the first day again, but the second one only where all three are the same. */
static unsigned count_days(const group parts[3], rodt_date_order order, rodt_date days[3])
{
    unsigned count = 0;
    for (int i = RODT_DATE_ORDER_DAY_FIRST; i < RODT_DATE_ORDER_END; i++) {
        bool asked = order == RODT_DATE_ORDER_UNKNOWN || (int)order == i;
        if (asked && make_ordered(parts, (rodt_date_order)i, &days[count]) &&
            (count == 0 || rodt_date_compare(days[0], days[count]) != 0))
            count++;
    }
    return count;
}

/* Only a date that is complete can be ambiguous: the tail is checked first. */
static rodt_status store_ordered(const group parts[3], rodt_date_order order, rodt_date *out, rodt_error *error)
{
    rodt_date days[3];
    unsigned count = count_days(parts, order, days);
    if (count > 1) {
        const rodt_error_argument number = rodti_error_word("count", count == 2 ? "2" : "3");
        return rodti_error_with(error, RODT_E_AMBIGUOUS, 0, RODT_MESSAGE_ERROR_DAYS, &number, 1);
    }
    if (count == 0) {
        bool is_any = count_days(parts, RODT_DATE_ORDER_UNKNOWN, days) > 0;
        return set_error(error, 0, is_any ? RODT_MESSAGE_ERROR_DATE_ORDER : RODT_MESSAGE_ERROR_NO_SUCH_DAY);
    }
    *out = days[0];
    return RODT_OK;
}

/* "10/14/2021": the cursor is after the first separator. */
static rodt_status read_numbers(text_cursor *cursor, const group *first, uint32_t separator, rodt_date_order order,
                                rodt_date *out, rodt_error *error)
{
    group parts[3] = {*first};
    int year;
    if (!read_group(cursor, &parts[1]) || parts[1].digits > 2 || cursor->code != separator)
        return set_error(error, parts[1].column, RODT_MESSAGE_ERROR_SECOND_AND_YEAR);
    rodti_text_next(cursor);
    (void)read_group(cursor, &parts[2]);
    bool is_day = order == RODT_DATE_ORDER_YEAR_FIRST && parts[2].digits == 1; /* of two it is a year as well */
    if (!is_day && !full_year(&parts[2], &year))
        return set_error(error, parts[2].column, RODT_MESSAGE_ERROR_YEAR_DIGITS);
    if (!is_complete(cursor))
        return set_error(error, cursor->column, RODT_MESSAGE_ERROR_DATE_END);
    return store_ordered(parts, order, out, error);
}

static rodt_status read_form(text_cursor *cursor, rodt_date_order order, rodt_date *out, rodt_error *error)
{
    group first;
    if (!read_group(cursor, &first))
        return set_error(error, first.column, RODT_MESSAGE_ERROR_DATE_HERE);
    uint32_t separator = cursor->code;
    bool year_first = first.digits == 4 && (separator == '-' || separator == '/');
    if (!is_separator(separator) || (first.digits > 2 && !year_first))
        return set_error(error, cursor->column, RODT_MESSAGE_ERROR_DATE);
    rodti_text_next(cursor);
    if (year_first)
        return read_iso(cursor, first.value, separator, out, error);
    if (!text_is_digit(cursor->code))
        return read_named_month(cursor, first.value, separator, out, error);
    return read_numbers(cursor, &first, separator, order, out, error);
}

/* "2024-03-05", as most files have it; read at once. */
static bool is_plain(const char *text, size_t size)
{
    static const char form[] = "0000-00-00";
    bool plain = size == sizeof form - 1;
    for (size_t i = 0; plain && i < size; i++)
        plain = form[i] == '0' ? text_is_digit((unsigned char)text[i]) : text[i] == form[i];
    return plain;
}

static int value_of_two(const char *digits) { return (digits[0] - '0') * 10 + (digits[1] - '0'); }

static rodt_status read_plain(const char *text, rodt_date *out, rodt_error *error)
{
    int year = value_of_two(text) * 100 + value_of_two(text + 2);
    if (rodt_date_make(year, value_of_two(text + 5), value_of_two(text + 8), out) != RODT_OK)
        return set_error(error, 0, RODT_MESSAGE_ERROR_NO_SUCH_DAY);
    return RODT_OK;
}

rodt_status rodt_date_parse_n(const char *text, size_t size, rodt_date_order order, rodt_date *out,
                           rodt_error *error)
{
    text_cursor cursor;
    if (text == NULL || out == NULL || (unsigned)order >= RODT_DATE_ORDER_END)
        return rodti_error_status(error, RODT_E_ARGUMENT);
    if (is_plain(text, size))
        return read_plain(text, out, error);
    rodti_number_parse_start(&cursor, text, size);
    if (cursor.code == TEXT_END)
        return rodti_error_status(error, RODT_E_EMPTY);
    return read_form(&cursor, order, out, error);
}

rodt_status rodt_date_parse(const char *text, rodt_date *out, rodt_error *error)
{
    return rodt_date_parse_n(text, text != NULL ? strlen(text) : 0, RODT_DATE_ORDER_UNKNOWN, out, error);
}

bool rodt_date_contradicts(const char *text, size_t size, rodt_date_order order)
{
    rodt_date day;
    if (order == RODT_DATE_ORDER_UNKNOWN || rodt_date_parse_n(text, size, order, &day, NULL) != RODT_E_SYNTAX)
        return false;
    rodt_status status = rodt_date_parse_n(text, size, RODT_DATE_ORDER_UNKNOWN, &day, NULL);
    return status == RODT_OK || status == RODT_E_AMBIGUOUS;
}

rodt_status rodt_date_parse_iso(const char *text, rodt_date *out, rodt_error *error)
{
    text_cursor cursor;
    group year;
    if (text == NULL || out == NULL)
        return rodti_error_status(error, RODT_E_ARGUMENT);
    rodti_number_parse_start(&cursor, text, strlen(text));
    if (cursor.code == TEXT_END)
        return rodti_error_status(error, RODT_E_EMPTY);
    if (!read_group(&cursor, &year) || year.digits != 4 || cursor.code != '-')
        return set_error(error, year.column, RODT_MESSAGE_ERROR_DATE);
    rodti_text_next(&cursor);
    return read_iso(&cursor, year.value, '-', out, error);
}

static void put_digits(char *text, int value, int count)
{
    for (int i = count; i-- > 0; value /= 10)
        text[i] = (char)('0' + value % 10);
}

rodt_status rodt_date_format(rodt_date date, char *text, size_t size, size_t *needed)
{
    rodt_date valid;
    char line[] = "0000-00-00";
    if (rodt_date_make(date.year, date.month, date.day, &valid) != RODT_OK)
        return RODT_E_ARGUMENT;
    put_digits(line, date.year, 4);
    put_digits(line + 5, date.month, 2);
    put_digits(line + 8, date.day, 2);
    return rodti_text_copy(line, sizeof line - 1, text, size, needed);
}
