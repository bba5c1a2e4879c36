/* SPDX-License-Identifier: Apache-2.0 */
/* Lengths in parts of an inch that are so fine that every plain length (length_plain.h) is a whole number of them. */
#ifndef RODT_FINE_H
#define RODT_FINE_H

#include "column/steps.h"
#include "core/exact_wide.h"
#include "quantity/length_plain.h"
#include "quantity/length_unit.h"
#include "rodtravel/column.h"

#define FINE_PER_INCH RODT_COLUMN_PARTS_PER_INCH
#define FINE_PER_UNIT (FINE_PER_INCH / RODT_COLUMN_PER_INCH)

_Static_assert(FINE_PER_INCH % RODT_COLUMN_PER_INCH == 0, "a unit of columns is whole parts");
_Static_assert(PLAIN_DECIMALS == 6 && FINE_PER_INCH / 127 % 1000000 == 0, "six decimals of an inch or a metric unit");
_Static_assert(PLAIN_WHOLE_DIGITS == 3 && FINE_PER_INCH % 512 == 0, "the largest power of two below a bar");

/* Parts in each unit by the number of its decimals, so that no length is divided. */
typedef struct fine_table {
    int64_t parts[RODT_UNIT_END][PLAIN_DECIMALS + 1];
} fine_table;

INLINE void fine_fill(fine_table *table)
{
    for (int unit = 0; unit < RODT_UNIT_END; unit++) {
        int64_t each = FINE_PER_INCH / rodti_inches_of[unit].den * rodti_inches_of[unit].num;
        for (int decimals = 0; decimals <= PLAIN_DECIMALS; decimals++, each /= 10)
            table->parts[unit][decimals] = each;
    }
}

/* The zeros of a denominator in binary are its decimals, or those of a fraction of an inch. */
INLINE int64_t fine_of_length(const plain_length *length, const fine_table *table)
{
    const int zeros = __builtin_ctz(length->number.den);
    return length->number.num *
           (length->number.is_fraction ? FINE_PER_INCH >> zeros : table->parts[length->unit][zeros]);
}

/* Times 5 it is 1 in 64 bits, so that a multiple of 5 is divided by it; only of those the product is that small. */
#define FIFTH UINT64_C(0xCCCCCCCCCCCCCCCD)

/* The length of so many parts, in lowest terms: a part has the factors 2 and 5 nine times each, and 127.
 * Nothing has all of them. */
INLINE rodt_length fine_to_length(int64_t parts)
{
    uint64_t num = magnitude(parts);
    uint64_t den = FINE_PER_INCH;
    const int halves = __builtin_ctzll(num | den);
    num >>= halves;
    den >>= halves;
    for (int i = 0; i < 9 && num * FIFTH <= UINT64_MAX / 5; i++, num *= FIFTH)
        den *= FIFTH;
    if (num % 127 == 0) {
        num /= 127;
        den /= 127;
    }
    return (rodt_length){parts < 0 ? -(int64_t)num : (int64_t)num, (int64_t)den};
}

/* STROKE_MOVED in parts. */
#define FINE_MOVED (STROKE_MOVED * FINE_PER_UNIT)

/* Regions of a stroke in which a result is the same: negative, none, hardly any, then as they follow each other: up to
 * the first step, at it, beyond it ... */
#define FINE_REGIONS (4 + 2 * STROKE_STEPS)

INLINE uint32_t fine_region(const int64_t step[STROKE_STEPS], int64_t stroke)
{
    int32_t region = 1 + (stroke < 0 ? -1 : stroke > 0) + (stroke >= FINE_MOVED);
    for (int k = 0; k < STROKE_STEPS; k++)
        region += (stroke >= step[k]) + (stroke > step[k]);
    return (uint32_t)region;
}

#endif
