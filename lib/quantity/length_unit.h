/* SPDX-License-Identifier: Apache-2.0 */
/* The units of lengths: their words and their sizes. */
#ifndef RODT_LENGTH_UNIT_H
#define RODT_LENGTH_UNIT_H

#include "core/common.h"
#include "rodtravel/ratio.h"
#include "rodtravel/style.h"

/* One of the unit in inches: 1 in is 127/5 mm by definition. By rodt_unit. */
extern const rodt_ratio rodti_inches_of[RODT_UNIT_END];

/* Finds the word of a unit, without blanks around it. */
bool rodti_unit_word_find(const char *text, size_t size, bool after_fraction, RODT_ENUM32(rodt_unit) *unit);

#endif
