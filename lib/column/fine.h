/* SPDX-License-Identifier: Apache-2.0 */
/* Lengths in parts of an inch that are so fine that every plain length (length_plain.h) is a whole number of them. */
#ifndef RODT_FINE_H
#define RODT_FINE_H

#include "quantity/length_plain.h"
#include "quantity/length_unit.h"
#include "rodtravel/column.h"

#define FINE_PER_INCH INT64_C(127000000000)
#define FINE_PER_UNIT (FINE_PER_INCH / RODT_COLUMN_PER_INCH)

_Static_assert(FINE_PER_INCH % RODT_COLUMN_PER_INCH == 0, "a unit of columns is whole parts");
_Static_assert(PLAIN_DECIMALS == 6 && FINE_PER_INCH / 127 % 1000000 == 0, "six decimals of an inch or a metric unit");
_Static_assert(PLAIN_WHOLE_DIGITS == 3 && FINE_PER_INCH % 512 == 0, "the largest power of two below a bar");

static inline int64_t fine_of_length(const plain_length *length)
{
    const rodt_ratio each = rodti_inches_of[length->unit];
    return length->number.num * (FINE_PER_INCH / each.den * each.num / length->number.den);
}

#endif
