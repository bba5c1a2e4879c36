/* SPDX-License-Identifier: Apache-2.0 */
/* The fast path of rodt_pressure_parse_n. */
#ifndef RODT_PRESSURE_PLAIN_H
#define RODT_PRESSURE_PLAIN_H

#include "core/common.h"
#include "rodtravel/pressure.h"

/*
 * Reads a pressure in psi whose number is plain (number_plain.h). False, and nothing is written:
 * rodt_pressure_parse_n has the answer.
 *
 * end  of the text; NULL = a zero byte closes it
 */
bool rodti_pressure_plain(const char *text, const char *end, const rodt_style *style, rodt_pressure *out,
                          RODT_ENUM32(rodt_pressure_unit) *written);

#endif
