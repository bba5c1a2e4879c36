/* SPDX-License-Identifier: Apache-2.0 */
/* Gauge pressures: exact numbers of psi, read and written. */
#include "rodtravel/pressure.h"

#include "core/exact.h"
#include "core/number_parse.h"

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

rodt_status rodt_pressure_format(rodt_pressure pressure, char *text, size_t size, size_t *needed)
{
    return rodt_ratio_format(EXACT(pressure), text, size, needed);
}

static bool find_unit(const char *text, size_t size, bool *is_kpa)
{
    *is_kpa = rodti_text_is_word(text, size, "kpa");
    return *is_kpa || size == 0 || rodti_text_is_word(text, size, "psi") || rodti_text_is_word(text, size, "psig");
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

static bool parse_psi(const char *text, size_t size, bool decimal_comma, rodt_ratio *psi, number_problem *problem)
{
    number_quantity written;
    bool is_kpa;
    if (!rodti_number_parse_quantity(text, size, decimal_comma, &written, problem))
        return false;
    if (find_unit(written.unit, written.unit_size, &is_kpa))
        return to_psi(&written, is_kpa, psi, problem);
    return rodti_number_set_expected(problem, written.unit_column, RODT_MESSAGE_ERROR_WANTED_PRESSURE_UNIT);
}

rodt_status rodt_pressure_parse_n(const char *text, size_t size, bool decimal_comma, rodt_pressure *out,
                               rodt_error *error)
{
    number_problem problem;
    rodt_ratio psi;
    if (text == NULL || out == NULL)
        return rodti_error_status(error, RODT_E_ARGUMENT);
    if (!parse_psi(text, size, decimal_comma, &psi, &problem))
        return rodti_number_explain_error(text, size, decimal_comma, &problem, error);
    *out = (rodt_pressure){psi.num, psi.den};
    return RODT_OK;
}

rodt_status rodt_pressure_parse(const char *text, rodt_pressure *out, rodt_error *error)
{
    return rodt_pressure_parse_n(text, text != NULL ? strlen(text) : 0, false, out, error);
}
