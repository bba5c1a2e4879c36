/* SPDX-License-Identifier: Apache-2.0 */
/* Fractions that may be a mixed fraction whose blank was lost. */
#ifndef RODT_LOST_BLANK_H
#define RODT_LOST_BLANK_H

#include "core/common.h"
#include "rodtravel/length.h"

#define LOST_BLANK_MAX 2

/*
 * Values that a fraction in inches may have had before its blank was lost: "31/8" can be 3 1/8, "113/16" 11 3/16 or
 * 1 13/16. Only where the split gives a proper fraction of a tape in lowest terms. Returns how many there are.
 *
 * unit  of a number that names none
 */
size_t rodti_lost_blank_values(const char *text, size_t size, rodt_unit unit, rodt_length out[LOST_BLANK_MAX]);

#endif
