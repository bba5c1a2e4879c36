/* SPDX-License-Identifier: Apache-2.0 */
/* Gauge pressures: exact numbers of psi, read and written. */
#include "rodtravel/pressure.h"

#include "core/exact.h"
#include "core/number_parse.h"
#include "core/number_plain.h"
#include "quantity/pressure_plain.h"
#include "quantity/style.h"

#include <inttypes.h>
#include <string.h>

/* 1 psi in kPa. A pound-force is 4.4482216152605 N and an inch 25.4 mm, both exactly, so that a psi is
 * 8896443230521/1290320000 Pa (NIST SP 811, appendix B). */
static const rodt_ratio kpa_per_psi = {8896443230521, 1290320000000};

static rodt_status store_result(bool fits, rodt_ratio value, rodt_pressure *out)
{
    if (!fits)
        return RODT_E_RANGE;
    *out = (rodt_pressure){value.num, value.den};
    return RODT_OK;
}

rodt_status rodt_pressure_from_psi(int64_t num, int64_t den, rodt_pressure *out)
{
    rodt_ratio value;
    if (den == 0 || out == NULL)
        return RODT_E_ARGUMENT;
    bool fits = rodti_exact_make(num, den, &value);
    return store_result(fits, value, out);
}

rodt_status rodt_pressure_from_kpa(int64_t num, int64_t den, rodt_pressure *out)
{
    rodt_ratio value;
    if (den == 0 || out == NULL)
        return RODT_E_ARGUMENT;
    bool fits = rodti_exact_make(num, den, &value) && rodti_exact_divide(value, kpa_per_psi, &value);
    return store_result(fits, value, out);
}

int rodt_pressure_compare(rodt_pressure a, rodt_pressure b) { return rodt_ratio_compare(EXACT(a), EXACT(b)); }

rodt_status rodt_pressure_convert(rodt_pressure pressure, rodt_pressure_unit unit, rodt_ratio *out)
{
    rodt_ratio value = EXACT(pressure);
    if (!rodt_pressure_given(pressure) || (unsigned)unit >= RODT_PRESSURE_UNIT_END || out == NULL)
        return RODT_E_ARGUMENT;
    if (unit == RODT_PRESSURE_UNIT_KPA && !rodti_exact_multiply(value, kpa_per_psi, &value))
        return RODT_E_RANGE;
    *out = value;
    return RODT_OK;
}

rodt_status rodt_pressure_format(rodt_pressure pressure, char *text, size_t size, size_t *needed)
{
    return rodt_ratio_format(EXACT(pressure), text, size, needed);
}

/* A number of at most six decimals. False: it has more. */
static bool put_decimal(rodt_ratio value, text_writer *writer)
{
    int64_t scale = 1;
    int digits = 0;
    for (; digits < 6 && scale % value.den != 0; digits++)
        scale *= 10;
    if (scale % value.den != 0)
        return false;
    rodti_text_putf(writer, "%" PRId64, value.num / value.den);
    if (digits > 0)
        rodti_text_putf(writer, ".%0*" PRId64, digits, value.num % value.den * (scale / value.den));
    return true;
}

rodt_status rodt_pressure_format_unit(rodt_pressure pressure, rodt_pressure_unit unit, char *text, size_t size,
                                      size_t *needed)
{
    char psi[RODT_PRESSURE_TEXT_SIZE];
    rodt_ratio kpa;
    text_writer writer;
    if ((unsigned)unit >= RODT_PRESSURE_UNIT_END || pressure.num < 0)
        return RODT_E_ARGUMENT;
    rodt_status status = rodt_pressure_format(pressure, psi, sizeof psi, NULL);
    if (status != RODT_OK)
        return status;
    rodti_text_begin(&writer);
    if (unit == RODT_PRESSURE_UNIT_KPA && rodt_pressure_convert(pressure, unit, &kpa) == RODT_OK &&
        put_decimal(kpa, &writer))
        rodti_text_put(&writer, " kPa");
    else
        rodti_text_putf(&writer, "%s psi", psi);
    return rodti_text_copy_out(&writer, text, size, needed);
}

static bool find_unit(const char *text, size_t size, RODT_ENUM32(rodt_pressure_unit) *unit)
{
    if (size == 0)
        return true;
    bool is_kpa = rodti_text_is_word(text, size, "kpa");
    *unit = is_kpa ? RODT_PRESSURE_UNIT_KPA : RODT_PRESSURE_UNIT_PSI;
    return is_kpa || rodti_text_is_word(text, size, "psi") || rodti_text_is_word(text, size, "psig");
}

/* No finer than what can be kept, and no more than a gauge shows. */
static bool to_psi(const number_quantity *written, bool is_kpa, rodt_ratio *psi, number_problem *problem)
{
    *psi = written->read.value;
    if (written->read.is_too_large)
        return rodti_number_set_problem(problem, RODT_E_IMPLAUSIBLE, written->column, RODT_MESSAGE_ERROR_TOO_HIGH);
    if (is_kpa && !rodti_exact_divide(*psi, kpa_per_psi, psi))
        return rodti_number_set_problem(problem, RODT_E_RANGE, written->column, RODT_MESSAGE_ERROR_DIGITS);
    if (rodti_exact_compare(*psi, (rodt_ratio){RODT_PRESSURE_MAX_PSI, 1}) > 0)
        return rodti_number_set_problem(problem, RODT_E_IMPLAUSIBLE, written->column, RODT_MESSAGE_ERROR_TOO_HIGH);
    return true;
}

static bool parse_psi(const char *text, size_t size, const rodt_style *style, RODT_ENUM32(rodt_pressure_unit) *unit,
                      rodt_ratio *psi, number_problem *problem)
{
    number_quantity written;
    if (!rodti_number_parse_quantity(text, size, style->decimal_comma, &written, problem))
        return false;
    if (find_unit(written.unit, written.unit_size, unit))
        return to_psi(&written, *unit == RODT_PRESSURE_UNIT_KPA, psi, problem);
    return rodti_number_set_expected(problem, written.unit_column, RODT_MESSAGE_ERROR_WANTED_PRESSURE_UNIT);
}

bool rodti_pressure_plain(const char *text, const char *end, const rodt_style *style, rodt_pressure *out,
                          RODT_ENUM32(rodt_pressure_unit) *written)
{
    plain_number read;
    rodt_ratio psi;
    RODT_ENUM32(rodt_pressure_unit) unit = style->pressure_unit;
    const char *rest = rodti_number_plain(text, end, style->decimal_comma, &read);
    if (rest == NULL || !find_unit(rest, (size_t)(rodti_plain_end(rest, end) - rest), &unit) ||
        unit != RODT_PRESSURE_UNIT_PSI || read.num > (uint64_t)RODT_PRESSURE_MAX_PSI * read.den)
        return false;
    (void)rodti_exact_make(read.num, read.den, &psi); /* far below 64 bits */
    *out = (rodt_pressure){psi.num, psi.den};
    *written = unit;
    return true;
}

rodt_status rodt_pressure_parse_n(const char *text, size_t size, const rodt_style *style, rodt_pressure *out,
                                  RODT_ENUM32(rodt_pressure_unit) *written, rodt_error *error)
{
    number_problem problem;
    rodt_ratio psi;
    if (text == NULL || out == NULL || !rodti_is_style(style))
        return rodti_error_status(error, RODT_E_ARGUMENT);
    const rodt_style form = style != NULL ? *style : (rodt_style){0};
    RODT_ENUM32(rodt_pressure_unit) unit = form.pressure_unit;
    if (!rodti_pressure_plain(text, text + size, &form, out, &unit)) {
        if (!parse_psi(text, size, &form, &unit, &psi, &problem))
            return rodti_number_explain_error(text, size, form.decimal_comma, &problem, error);
        *out = (rodt_pressure){psi.num, psi.den};
    }
    if (written != NULL)
        *written = unit;
    return RODT_OK;
}

rodt_status rodt_pressure_parse(const char *text, rodt_pressure *out, rodt_error *error)
{
    return rodt_pressure_parse_n(text, text != NULL ? strlen(text) : 0, NULL, out, NULL, error);
}
