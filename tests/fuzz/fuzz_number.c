/* SPDX-License-Identifier: Apache-2.0 */
/* Fuzz target: exact arithmetic. What is not refused is in lowest terms and obeys the rules of arithmetic; what is
 * refused leaves the result alone. Days and dates are one to one. */
#include <stdlib.h>
#include <string.h>

#include <rodtravel/rodtravel.h>

#include "source.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static const rodt_ratio untouched = {77, 770};

static int64_t any_number(source *from)
{
    static const int64_t corners[] = {0, 1, -1, INT64_MAX, INT64_MIN, INT64_MAX - 1, INT64_MIN + 1, INT64_C(1) << 32};
    uint64_t value = 0;
    uint8_t choice = byte(from);
    if (choice < 8)
        return corners[choice];
    for (size_t bytes = choice % 9; bytes > 0; bytes--)
        value = value << 8 | byte(from);
    return (int64_t)value;
}

static bool is_same(rodt_ratio a, rodt_ratio b) { return a.num == b.num && a.den == b.den; }

static bool is_lowest(rodt_ratio of)
{
    uint64_t a = of.num < 0 ? 0 - (uint64_t)of.num : (uint64_t)of.num, b = (uint64_t)of.den;
    while (b != 0) {
        uint64_t rest = a % b;
        a = b;
        b = rest;
    }
    return of.den > 0 && a == 1;
}

/* RODT_OK with a canonical result, or a status and none. */
static bool is_made(rodt_status status, rodt_ratio made)
{
    demand(status == RODT_OK ? is_lowest(made) : is_same(made, untouched));
    demand(status == RODT_OK || status == RODT_E_ARGUMENT || status == RODT_E_RANGE);
    return status == RODT_OK;
}

static bool make(source *from, rodt_ratio *out)
{
    int64_t num = any_number(from), den = any_number(from);
    *out = untouched;
    return is_made(rodt_ratio_make(num, den, out), *out);
}

/* What was added can be taken away, and what was multiplied divided. */
static void check_back(rodt_ratio a, rodt_ratio b)
{
    rodt_ratio sum = untouched, product = untouched, back = untouched;
    if (is_made(rodt_ratio_add(a, b, &sum), sum)) {
        rodt_status status = rodt_ratio_subtract(sum, b, &back);
        demand(status == RODT_OK && is_same(back, a));
        demand(rodt_ratio_compare(sum, a) == rodt_ratio_compare(b, (rodt_ratio){0, 1}));
    }
    back = untouched;
    if (is_made(rodt_ratio_multiply(a, b, &product), product) && b.num != 0) {
        rodt_status status = rodt_ratio_divide(product, b, &back);
        demand(status == RODT_OK && is_same(back, a));
    }
}

static void check_ratios(rodt_ratio a, rodt_ratio b)
{
    rodt_ratio one = untouched, other = untouched;
    demand(rodt_ratio_compare(a, b) == -rodt_ratio_compare(b, a) && rodt_ratio_compare(a, a) == 0);
    demand((rodt_ratio_compare(a, b) == 0) == is_same(a, b));
    demand(rodt_ratio_add(a, b, &one) == rodt_ratio_add(b, a, &other) && is_same(one, other));
    demand(rodt_ratio_given(a));
    check_back(a, b);
    check_back(b, a);
    one = other = untouched;
    if (!is_made(rodt_ratio_subtract(a, b, &one), one))
        return;
    rodt_status status = rodt_ratio_subtract(b, a, &other);
    demand(status != RODT_OK || (one.num == -other.num && one.den == other.den));
}

static bool is_length(rodt_status status, rodt_length made)
{
    return is_made(status, (rodt_ratio){made.num, made.den});
}

static void check_lengths(source *from, rodt_ratio factor)
{
    static const rodt_length unmade = {77, 770};
    rodt_length a = unmade, b = unmade, made = unmade;
    int64_t num = any_number(from), den = any_number(from);
    if (!is_length(rodt_length_from_inches(num, den, &a), a) || !is_length(rodt_length_from_mm(num, den, &b), b))
        return;
    demand(rodt_length_compare(a, b) >= 0 || a.num < 0);
    if (is_length(rodt_length_add(a, b, &made), made))
        demand(rodt_length_compare(made, a) >= 0 || b.num < 0);
    made = unmade;
    (void)is_length(rodt_length_subtract(a, b, &made), made);
    made = unmade;
    (void)is_length(rodt_length_scale(a, factor, &made), made);
    for (int rounding = 0; rounding < 5; rounding++) {
        made = unmade;
        if (is_length(rodt_length_round(a, b, (rodt_rounding)rounding, &made), made))
            demand(b.num > 0);
    }
}

static void check_pressures(source *from)
{
    rodt_pressure made = {77, 770};
    int64_t num = any_number(from), den = any_number(from);
    rodt_status status = byte(from) % 2 ? rodt_pressure_from_psi(num, den, &made) : rodt_pressure_from_kpa(num, den, &made);
    rodt_ratio value = untouched;
    (void)is_made(status, (rodt_ratio){made.num, made.den});
    status = rodt_pressure_convert(made, RODT_PRESSURE_UNIT_KPA, &value);
    demand(status == RODT_OK || is_same(value, untouched));
}

static void check_dates(source *from)
{
    rodt_date date = {1999, 9, 9}, again = {1999, 9, 9};
    int32_t days = (int32_t)(uint32_t)any_number(from), back = -7;
    rodt_status status = rodt_date_from_days(days, &date);
    demand(status != RODT_OK || (rodt_date_to_days(date, &back) == RODT_OK && back == days));
    demand(status == RODT_OK || date.year == 1999);
    int year = (int)(any_number(from) % 4000), month = byte(from) % 15, day = byte(from) % 34;
    if (rodt_date_make(year, month, day, &again) != RODT_OK)
        return;
    demand(rodt_date_to_days(again, &back) == RODT_OK && rodt_date_from_days(back, &date) == RODT_OK);
    demand(rodt_date_compare(date, again) == 0 && rodt_date_given(date));
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    source from = {data, size};
    rodt_ratio a, b;
    bool made = make(&from, &a);
    made = make(&from, &b) && made;
    if (made)
        check_ratios(a, b);
    check_lengths(&from, b);
    check_pressures(&from);
    check_dates(&from);
    return 0;
}
