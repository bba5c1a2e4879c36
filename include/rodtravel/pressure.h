/* SPDX-License-Identifier: Apache-2.0 */
/* Exact gauge pressures in psi, read from "95", "95 psi" or "655 kPa". */
#ifndef RODTRAVEL_PRESSURE_H
#define RODTRAVEL_PRESSURE_H

#include <stdbool.h>

#include "ratio.h"
#include "style.h"

#ifdef __cplusplus
extern "C" {
#endif

/* A gauge pressure: num / den psi in lowest terms, den > 0. All zero bytes mean "not recorded". */
typedef struct rodt_pressure {
    int64_t num; /* numerator, in psi */
    int64_t den; /* denominator; 0 = not recorded */
} rodt_pressure;

/* Greatest pressure that is read as a gauge reading: 300 psi. (A plausibility bound, not law.) */
#define RODT_PRESSURE_MAX_PSI 300

/* Room for any pressure written by this library, with the closing zero byte. */
#define RODT_PRESSURE_TEXT_SIZE 64

/* True if the pressure was recorded. */
RODT_INLINE bool rodt_pressure_given(rodt_pressure pressure) { return pressure.den != 0; }

/* Makes num/den psi. RODT_OK; RODT_E_ARGUMENT: den is zero or out is NULL; RODT_E_RANGE: no fit. */
RODT_API RODT_MUST_CHECK rodt_status rodt_pressure_from_psi(int64_t num, int64_t den, rodt_pressure *out);

/* Makes num/den kPa, exactly: 1 psi = 8896443230521/1290320000 Pa, from the pound-force of 4.4482216152605 N and the
 * inch of 25.4 mm (NIST SP 811, appendix B, exact factors). Statuses as rodt_pressure_from_psi. */
RODT_API RODT_MUST_CHECK rodt_status rodt_pressure_from_kpa(int64_t num, int64_t den, rodt_pressure *out);

/*
 * Reads one gauge pressure: "95", "92.5 psi", "655 kPa". Without a unit the number is psi. Statuses and
 * manners as rodt_length_parse; RODT_E_IMPLAUSIBLE above 300 psi.
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_pressure_parse(const char *text, rodt_pressure *out, rodt_error *error);

/*
 * As rodt_pressure_parse, for size bytes that need not be closed by a zero byte, with the style of the form.
 *
 * style    NULL for psi and a decimal point
 * written  NULL, or gets the unit in which the text was written
 *
 * RODT_E_ARGUMENT  also for a style with an unknown unit or a reserve
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_pressure_parse_n(const char *text, size_t size, const rodt_style *style,
                                                           rodt_pressure *out, RODT_ENUM32(rodt_pressure_unit) *written,
                                                           rodt_error *error);

/* Returns -1, 0 or 1; exact. A pressure that is not recorded is before every other. */
RODT_API int rodt_pressure_compare(rodt_pressure a, rodt_pressure b);

/* The number of a pressure in a unit, exactly. RODT_OK; RODT_E_ARGUMENT: it is not recorded, there is no such unit, or
 * out is NULL; RODT_E_RANGE: it does not fit in 64-bit parts. */
RODT_API RODT_MUST_CHECK rodt_status rodt_pressure_convert(rodt_pressure pressure, rodt_pressure_unit unit,
                                                           rodt_ratio *out);

/* Writes psi as "95" or, where it is no whole number, as a mixed fraction, "92 1/2", without the unit.
 * Statuses as rodt_length_format. */
RODT_API rodt_status rodt_pressure_format(rodt_pressure pressure, char *text, size_t size, size_t *needed);

/* Writes a pressure in the unit that it was read in, with it: "95 psi", "92 1/2 psi", "650 kPa", "650.5 kPa". Exact:
 * rodt_pressure_parse reads it back to the same pressure. One that has no number in kPa, of at most six decimals, is
 * written in psi. Statuses as rodt_length_format; RODT_E_ARGUMENT also for a unit that is none. */
RODT_API rodt_status rodt_pressure_format_unit(rodt_pressure pressure, rodt_pressure_unit unit, char *text, size_t size,
                                               size_t *needed);

#ifdef __cplusplus
}
#endif
#endif
