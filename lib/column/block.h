/* SPDX-License-Identifier: Apache-2.0 */
/* A block of rows and what is computed from their cells. Everything is inline, so that each copy of the kernel has
 * it in the instructions of its own processor. */
#ifndef RODT_COLUMN_BLOCK_H
#define RODT_COLUMN_BLOCK_H

#include <string.h>

#include "column/plan.h"

/* The caller has made sure that no column overlaps another; gcc cannot see it through a table, and
 * clang, which warns where such a word does not help, compares the addresses itself. */
#if defined(__GNUC__) && !defined(__clang__)
#define ROWS_ARE_INDEPENDENT _Pragma("GCC ivdep")
#else
#define ROWS_ARE_INDEPENDENT
#endif

/* Rows that are judged together: their intermediate results fit in L1. */
#define BLOCK 128

/* Where a cell is there: all ones. */
typedef struct column_valid {
    int8_t row[BLOCK];
} column_valid;

typedef struct column_block {
    column_valid released_valid;
    column_valid applied_valid;
    column_valid valid; /* of the column in hand */
    int32_t released[BLOCK]; /* 64-bit readings in 32 bits */
    int32_t applied[BLOCK];
    int32_t entry[BLOCK]; /* code * eras + era */
    int32_t slot[BLOCK];  /* regions before those of the row's pressure */
    int32_t region[BLOCK]; /* counted through all entries */
    int32_t step[BLOCK];
} column_block;

/* --- Bitmaps ----------------------------------------------------------------------------------------- */

/* Clears each bit of `out` that is clear in the bitmap; bit 0 of the first byte is that of the row. Bytes of the bitmap
 * that hold no bit of these rows are not read. */
INLINE void clear_bits(rodt_column_bits from, size_t row, size_t count, uint8_t *restrict out)
{
    if (from.bits == NULL)
        return;
    size_t first = from.from + row;
    const uint8_t *bytes = from.bits + first / 8;
    const unsigned shift = first % 8;
    size_t last = (first % 8 + count - 1) / 8;
    for (size_t i = 0; i < last; i++)
        out[i] &= (uint8_t)((bytes[i] | (unsigned)bytes[i + 1] << 8) >> shift);
    out[last] &= (uint8_t)(bytes[last] >> shift); /* of no row, if the last row's bit is one byte lower now */
}

/* Bit k of the number becomes byte k: all ones or zero. The weights are laid out in memory, so that it holds for either
 * order of bytes; no sum runs from one byte into the next. */
INLINE void spread_bits(uint8_t bits, int8_t *out)
{
    const union {
        uint8_t bytes[8];
        uint64_t word;
    } weights = {{1, 2, 4, 8, 16, 32, 64, 128}};
    const uint64_t each = UINT64_C(0x0101010101010101);
    uint64_t bytes = (each * bits) & weights.word;
    bytes = (((bytes + each * 0x7F) >> 7) & each) * 0xFF;
    memcpy(out, &bytes, sizeof bytes);
}

/* A cell is there if its own bit and that of its row say so. */
INLINE void take_valid(rodt_column_bits cells, rodt_column_bits rows, size_t row, size_t count, column_valid *out)
{
    uint8_t bits[BLOCK / 8 + 1];
    if (cells.bits == NULL && rows.bits == NULL) {
        memset(out->row, 0xFF, sizeof out->row);
        return;
    }
    memset(bits, 0xFF, sizeof bits);
    clear_bits(cells, row, count, bits);
    clear_bits(rows, row, count, bits);
    for (size_t i = 0; i < BLOCK / 8; i++)
        spread_bits(bits[i], &out->row[8 * i]);
}

/* --- Readings ---------------------------------------------------------------------------------------- */

_Static_assert(CELL_MISSING == -1, "what is not valid is set to all ones");

/* What a cell is if it holds no number that a reading can be, or 0. */
INLINE int32_t unreadable_of(int32_t given)
{
    return column_mask((given < 0) | (given > COLUMN_READING_MOST)) & CELL_UNREADABLE;
}

/* The same, or missing. */
INLINE int32_t lack_of(int32_t given, int8_t valid) { return unreadable_of(given) | ~valid; }

/* How far the rod moved; a number without meaning if a cell holds no reading. */
INLINE int32_t moved_by(int32_t released, int32_t applied)
{
    return (int32_t)((uint32_t)applied - (uint32_t)released);
}

/* What does not fit in 32 bits is no reading; the halves are looked at by themselves, since a vector holds twice as
 * many of them. */
INLINE void narrow(const int64_t *cells, size_t count, int32_t *out)
{
    ROWS_ARE_INDEPENDENT
    for (size_t i = 0; i < count; i++) {
        int32_t low = (int32_t)(uint32_t)((uint64_t)cells[i] & UINT32_MAX);
        int32_t high = (int32_t)(uint32_t)((uint64_t)cells[i] >> 32);
        out[i] = low | column_mask(high != 0);
    }
}

/* --- Codes, days and pressures ----------------------------------------------------------------------- */

_Static_assert(RODT_COLUMN_CHAMBER_MISSING == 0, "a code that is masked away must be the missing one");

INLINE void take_codes(const rodt_column_plan *plan, const rodt_column_in *in, size_t row, size_t count,
                       column_block *block)
{
    const uint8_t *codes = in->chamber + row;
    const int32_t known = (int32_t)plan->codes;
    const int32_t eras = (int32_t)plan->eras;
    const int32_t era = (int32_t)COLUMN_ERA_OF_PLAN(plan);
    take_valid(in->chamber_valid, in->row_valid, row, count, &block->valid);
    ROWS_ARE_INDEPENDENT
    for (size_t i = 0; i < count; i++) {
        int32_t code = codes[i] < known ? codes[i] : RODT_COLUMN_CHAMBER_UNREADABLE;
        block->entry[i] = (code & block->valid.row[i]) * eras + era;
    }
}

INLINE bool in_calendar(int32_t day) { return (day >= CALENDAR_FIRST_DAY) & (day <= CALENDAR_LAST_DAY); }

/* The era of a day is the number of cuts that have passed; those that a plan does not have pass on no day. With a
 * constant number of cuts the loop over them disappears. */
INLINE void find_eras(const rodt_column_plan *plan, const int32_t *days, size_t count, column_block *block)
{
    const int32_t of_plan = (int32_t)COLUMN_ERA_OF_PLAN(plan);
    const int32_t unreadable = (int32_t)COLUMN_ERA_UNREADABLE(plan);
    ROWS_ARE_INDEPENDENT
    for (size_t i = 0; i < count; i++) {
        int32_t era = 0;
        for (size_t k = 0; k < FEW_CUTS; k++)
            era += days[i] >= plan->cut[k];
        era = column_pick(in_calendar(days[i]), unreadable, era);
        block->entry[i] += (era - of_plan) & block->valid.row[i];
    }
}

INLINE void add_eras(const int32_t *cut, const int32_t *days, size_t count, column_block *block)
{
    ROWS_ARE_INDEPENDENT
    for (size_t i = 0; i < count; i++) {
        int32_t passed = 0;
        for (size_t k = 0; k < CUT_GROUP; k++)
            passed += days[i] >= cut[k];
        block->entry[i] += passed & column_mask(in_calendar(days[i])) & block->valid.row[i];
    }
}

INLINE void take_days(const rodt_column_plan *plan, const rodt_column_in *in, size_t row, size_t count,
                      column_block *block)
{
    if (in->date == NULL)
        return;
    take_valid(in->date_valid, in->row_valid, row, count, &block->valid);
    find_eras(plan, in->date + row, count, block);
    for (size_t k = FEW_CUTS; k < plan->cuts; k += CUT_GROUP)
        add_eras(plan->cut + k, in->date + row, count, block);
}

_Static_assert(PRESSURE_OF_PLAN == 0, "a slot that is masked away must be that of the plan");

INLINE void take_pressures(const rodt_column_plan *plan, const rodt_column_in *in, size_t row, size_t count,
                           column_block *block)
{
    const int32_t from = plan->pressure_from;
    const int32_t until = plan->pressure_until;
    if (in->psi == NULL)
        return;
    const int32_t *pressures = in->psi + row;
    take_valid(in->psi_valid, in->row_valid, row, count, &block->valid);
    ROWS_ARE_INDEPENDENT
    for (size_t i = 0; i < count; i++) {
        int32_t slot = PRESSURE_NONE + (pressures[i] > 0) + (pressures[i] >= from) + (pressures[i] > until);
        slot = column_pick((pressures[i] < 0) | (pressures[i] > COLUMN_PRESSURE_MOST), slot, PRESSURE_UNREADABLE);
        block->slot[i] = (slot & block->valid.row[i]) * REGIONS;
    }
}

#endif
