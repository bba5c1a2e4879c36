/* SPDX-License-Identifier: Apache-2.0 */
#include "sql.h"

#include <stdio.h>
#include <string.h>

static const rodt_field argument_fields[] = {
    RODT_FIELD_CHAMBER,      RODT_FIELD_RELEASED,     RODT_FIELD_APPLIED,
    RODT_FIELD_PSI,          RODT_FIELD_DATE,         RODT_FIELD_STROKE_CLASS,
    RODT_FIELD_NONE,         RODT_FIELD_RATED_STROKE, RODT_FIELD_MARKED_LIMIT,
    RODT_FIELD_PSI_AFTER,    RODT_FIELD_DIVISION,     RODT_FIELD_UNIT,
    RODT_FIELD_ENGINE,       RODT_FIELD_SPRING_BRAKE, RODT_FIELD_DRUM};

_Static_assert(sizeof argument_fields / sizeof *argument_fields == SQL_ARGUMENTS, "every field is an argument");

rodt_field sql_argument_field(int argument) { return argument_fields[argument]; }

const char *sql_argument_name(int argument)
{
    const rodt_field field = argument_fields[argument];
    return field == RODT_FIELD_NONE ? "rules" : rodt_field_name(field);
}

/* Without snprintf, which takes longer than all else of a row. Returns its bytes. */
static size_t write_integer(int64_t number, char *text)
{
    char digits[20];
    size_t count = 0, used = 0;
    uint64_t left = number < 0 ? 0 - (uint64_t)number : (uint64_t)number;
    if (number < 0)
        text[used++] = '-';
    do {
        digits[count++] = (char)('0' + left % 10);
        left /= 10;
    } while (left != 0);
    while (count > 0)
        text[used++] = digits[--count];
    return used;
}

size_t sql_exact_write(int64_t num, int64_t den, char text[SQL_EXACT_SIZE])
{
    size_t used = 0;
    if (den != 0)
        used = write_integer(num, text);
    if (den != 0 && den != 1) {
        text[used++] = '/';
        used += write_integer(den, text + used);
    }
    text[used] = '\0';
    return used;
}

/* Up to 18 digits: they fit in 64 bits. */
static bool read_digits(const char **at, const char *end, int64_t *number)
{
    const char *from = *at;
    for (*number = 0; *at < end && **at >= '0' && **at <= '9' && *at - from < 18; (*at)++)
        *number = *number * 10 + (**at - '0');
    return *at > from;
}

bool sql_exact_read(const char *at, size_t size, rodt_ratio *number)
{
    const char *end = at + size;
    const bool negative = size > 0 && *at == '-';
    int64_t num, den = 1;
    at += negative;
    if (!read_digits(&at, end, &num))
        return false;
    if (at < end && *at == '/') {
        at++;
        if (!read_digits(&at, end, &den))
            return false;
    }
    return at == end && rodt_ratio_make(negative ? -num : num, den, number) == RODT_OK;
}

size_t sql_reasons_write(uint64_t reasons, char text[SQL_REASONS_SIZE])
{
    size_t used = 0;
    text[0] = '\0';
    for (int reason = 0; reason < RODT_REASON_END && used < SQL_REASONS_SIZE; reason++) {
        if ((reasons & RODT_REASON_BIT(reason)) != 0)
            used += (size_t)snprintf(text + used, SQL_REASONS_SIZE - used, "%s%s", used > 0 ? " " : "",
                                     rodt_reason_name((rodt_reason)reason));
    }
    return strlen(text);
}
