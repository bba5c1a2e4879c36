/* SPDX-License-Identifier: Apache-2.0 */
/* Gauge pressures: exact numbers of psi, read and written. */
#include "rodtravel/pressure.h"

#include "core/number_parse.h"

#include <string.h>

/* 1 psi in kPa. A pound-force is 4.4482216152605 N and an inch 25.4 mm, both exactly, so that a psi is
 * 8896443230521/1290320000 Pa (NIST SP 811, appendix B). */
static const number kpa_per_psi = {8896443230521, 1290320000000};

static rodt_status deliver(bool fits, number value, rodt_pressure *out)
{
    if (!fits)
        return RODT_E_RANGE;
    *out = (rodt_pressure){value.num, value.den};
    return RODT_OK;
}

rodt_status rodt_pressure_from_psi(int64_t num, int64_t den, rodt_pressure *out)
{
    number value;
    if (den == 0 || out == NULL)
        return RODT_E_ARGUMENT;
    bool fits = number_make(num, den, &value);
    return deliver(fits, value, out);
}

rodt_status rodt_pressure_from_kpa(int64_t num, int64_t den, rodt_pressure *out)
{
    number value;
    if (den == 0 || out == NULL)
        return RODT_E_ARGUMENT;
    bool fits = number_make(num, den, &value) && number_divide(value, kpa_per_psi, &value);
    return deliver(fits, value, out);
}

int rodt_pressure_compare(rodt_pressure a, rodt_pressure b)
{
    bool a_given = a.den > 0;
    bool b_given = b.den > 0;
    if (!a_given || !b_given)
        return (int)a_given - (int)b_given;
    return number_compare((number){a.num, a.den}, (number){b.num, b.den});
}

rodt_status rodt_pressure_format(rodt_pressure pressure, char *text, size_t size)
{
    return number_format((number){pressure.num, pressure.den}, text, size);
}

static bool find_unit(const char *text, size_t size, bool *is_kpa)
{
    *is_kpa = text_is_word(text, size, "kpa");
    return *is_kpa || size == 0 || text_is_word(text, size, "psi") || text_is_word(text, size, "psig");
}

static bool refuse(number_problem *problem, rodt_status status, uint32_t column, const char *sentence)
{
    *problem = (number_problem){status, column, NULL, sentence};
    return false;
}

static bool check_size(const number_text *read, bool is_kpa, uint32_t column, number *psi,
                       number_problem *problem)
{
    static const char too_high[] = "no brake gauge shows more than 300 psi; is a decimal point lost?";
    *psi = read->value;
    if (read->is_too_large)
        return refuse(problem, RODT_E_IMPLAUSIBLE, column, too_high);
    if (is_kpa && !number_divide(*psi, kpa_per_psi, psi))
        return refuse(problem, RODT_E_RANGE, column, "there are more digits than a reading can have");
    if (number_compare(*psi, (number){RODT_PRESSURE_MAX_PSI, 1}) > 0)
        return refuse(problem, RODT_E_IMPLAUSIBLE, column, too_high);
    return true;
}

static bool read_plain(const char *text, size_t size, bool decimal_comma, number *psi,
                       number_problem *problem)
{
    text_cursor cursor;
    number_text read;
    bool is_kpa;
    number_parse_start(&cursor, text, size);
    uint32_t column = cursor.column;
    if (!number_parse(&cursor, decimal_comma, &read, problem))
        return false;
    text_skip_blanks(&cursor);
    size_t left = (size_t)(cursor.end - cursor.at);
    if (left == 0 && number_is_spreadsheet_day(&read))
        return refuse(problem, RODT_E_DATE_CELL, column, "this is the day number of a spreadsheet's date");
    if (!find_unit((const char *)cursor.at, left, &is_kpa)) {
        *problem = (number_problem){RODT_E_SYNTAX, cursor.column, "psi, kPa or nothing more", NULL};
        return false;
    }
    return check_size(&read, is_kpa, column, psi, problem);
}

rodt_status rodt_pressure_read(const char *text, size_t size, bool decimal_comma, rodt_pressure *out,
                               rodt_error *error)
{
    number_problem problem;
    number psi;
    if (text == NULL || out == NULL)
        return text_error(error, RODT_E_ARGUMENT, 0, "%s", rodt_status_text(RODT_E_ARGUMENT));
    if (!read_plain(text, size, decimal_comma, &psi, &problem))
        return number_explain_error(text, size, decimal_comma, &problem, error);
    *out = (rodt_pressure){psi.num, psi.den};
    return RODT_OK;
}

rodt_status rodt_pressure_parse(const char *text, rodt_pressure *out, rodt_error *error)
{
    return rodt_pressure_read(text, text != NULL ? strlen(text) : 0, false, out, error);
}
