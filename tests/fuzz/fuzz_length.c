/* SPDX-License-Identifier: Apache-2.0 */
/* Any bytes as a length, a pressure and a date: refused with a reason, or read to a value that is in its
 * range, in lowest terms, and the same when it is written and read again. */
#include <rodtravel/rodtravel.h>

#include <stdlib.h>
#include <string.h>

#include "source.h"

static bool is_canonical(int64_t num, int64_t den)
{
    if (num < 0 || den <= 0)
        return false;
    while (den != 0) {
        int64_t rest = num % den;
        num = den;
        den = rest;
    }
    return num == 1;
}

/* A sign before a number says nothing, and only the full reader takes it: the fast paths must come to the same. */
static void check_full_reader(const char *text, size_t size, const rodt_style *style, rodt_length length)
{
    char other[64] = "+";
    rodt_length again = {0, 0};
    if (size == 0 || size >= sizeof other - 1 || text[0] < '0' || text[0] > '9')
        return;
    memcpy(other + 1, text, size);
    bool is_read = rodt_length_parse_n(other, size + 1, style, &again, NULL, NULL) == RODT_OK;
    demand(is_read == (length.den != 0) && again.num == length.num && again.den == length.den);
}

/* A refusal names its status, a column inside the text and a closed sentence. */
static void check_refusal(rodt_status status, const rodt_error *error, size_t size)
{
    demand(status == error->status);
    demand(error->column <= size + 1);
    demand(memchr(error->text, '\0', sizeof error->text) != NULL);
    demand(error->text[0] != '\0');
    demand(strcmp(rodt_status_text(status), "unknown status") != 0);
}

/* Twelve decimals of an inch or a millimetre either fit or are refused; three always fit. */
static void check_decimal(rodt_length length)
{
    char written[RODT_LENGTH_TEXT_SIZE];
    rodt_status status =
        rodt_length_format_decimal(length, RODT_UNIT_MM, 12, RODT_ROUNDING_HALF_EVEN, written, sizeof written, NULL);
    demand(status == RODT_OK || status == RODT_E_RANGE);
    demand(rodt_length_format_decimal(length, RODT_UNIT_MM, 3, RODT_ROUNDING_HALF_UP, written, sizeof written, NULL) ==
            RODT_OK);
    demand(strlen(written) >= 5 && written[strlen(written) - 4] == '.');
}

static void check_strict(rodt_status status, rodt_length length, rodt_length strict)
{
    demand(status == RODT_OK || status == RODT_E_AMBIGUOUS);
    demand(length.num == strict.num && length.den == strict.den);
}

static void check_length(const char *text, size_t size, rodt_style style)
{
    static const rodt_length untouched = {77, 78};
    rodt_length length = untouched;
    rodt_length again = untouched;
    RODT_ENUM32(rodt_unit) unit;
    rodt_error error;
    char written[RODT_LENGTH_TEXT_SIZE];
    rodt_status status = rodt_length_parse_n(text, size, &style, &length, &unit, &error);
    if (status != RODT_OK) {
        check_refusal(status, &error, size);
        demand(length.num == 77 && length.den == 78);
        check_full_reader(text, size, &style, (rodt_length){0, 0});
        return;
    }
    check_full_reader(text, size, &style, length);
    demand(is_canonical(length.num, length.den));
    demand(rodt_length_compare(length, (rodt_length){RODT_LENGTH_MAX_INCHES, 1}) <= 0);
    demand(rodt_length_format(length, written, sizeof written, NULL) == RODT_OK);
    demand(rodt_length_parse(written, &again, NULL) == RODT_OK);
    demand(length.num == again.num && length.den == again.den);
    status = rodt_length_parse_strict(written, &again, NULL);
    check_strict(status, length, again);
    status = rodt_length_parse_strict_n(text, size, &style, &again, NULL, NULL);
    check_strict(status, length, again);
    check_decimal(length);
}

static void check_pressure(const char *text, size_t size, rodt_style style)
{
    rodt_pressure pressure = {77, 78}, again;
    RODT_ENUM32(rodt_pressure_unit) unit;
    rodt_error error;
    char written[RODT_PRESSURE_TEXT_SIZE];
    rodt_status status = rodt_pressure_parse_n(text, size, &style, &pressure, &unit, &error);
    if (status != RODT_OK) {
        check_refusal(status, &error, size);
        demand(pressure.num == 77 && pressure.den == 78);
        return;
    }
    demand(is_canonical(pressure.num, pressure.den));
    demand(rodt_pressure_compare(pressure, (rodt_pressure){RODT_PRESSURE_MAX_PSI, 1}) <= 0);
    demand(rodt_pressure_format(pressure, written, sizeof written, NULL) == RODT_OK);
    demand(rodt_pressure_format_unit(pressure, (rodt_pressure_unit)unit, written, sizeof written, NULL) == RODT_OK);
    demand(rodt_pressure_parse(written, &again, NULL) != RODT_OK || rodt_pressure_compare(again, pressure) == 0);
}

static void check_date(const char *text, size_t size, rodt_date_order order)
{
    rodt_date date = {1999, 9, 9};
    rodt_date again;
    rodt_error error;
    char written[RODT_DATE_TEXT_SIZE];
    rodt_status status = rodt_date_parse_n(text, size, order, &date, &error);
    demand(status == RODT_E_SYNTAX || !rodt_date_contradicts(text, size, order));
    if (status != RODT_OK) {
        check_refusal(status, &error, size);
        demand(date.year == 1999 && date.month == 9 && date.day == 9);
        return;
    }
    demand(rodt_date_format(date, written, sizeof written, NULL) == RODT_OK);
    demand(rodt_date_parse_iso(written, &again, NULL) == RODT_OK);
    demand(rodt_date_compare(date, again) == 0);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/* Every setting of a form, one after the other. */
int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static const char nothing[1] = "";
    const char *text = data != NULL ? (const char *)data : nothing;
    for (int setting = 0; setting < 6; setting++) {
        rodt_style style = {.unit = (rodt_unit)(setting / 2), .decimal_comma = setting % 2 != 0};
        check_length(text, size, style);
        style.pressure_unit = (rodt_pressure_unit)(setting / 2 % RODT_PRESSURE_UNIT_END);
        check_pressure(text, size, style);
    }
    for (int order = RODT_DATE_ORDER_UNKNOWN; order <= RODT_DATE_ORDER_MONTH_FIRST; order++)
        check_date(text, size, (rodt_date_order)order);
    return 0;
}
