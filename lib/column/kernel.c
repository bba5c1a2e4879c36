/* SPDX-License-Identifier: Apache-2.0 */
/* The inner loops of columns. They make no decision: a stroke is sorted into a region, whose result was computed
 * before. There are no data-dependent branches, so that the loops vectorize; on x86-64 a second copy is made
 * for processors with AVX2. Table entries are gathered with scalar loads, which are faster than vector gathers. */
#include "column/kernel.h"

#include "column/block.h"

#if defined(__x86_64__) && defined(__GNUC__)
#define WIDE __attribute__((target("avx2")))
#define HAS_WIDE 1
#define NOINLINE_GATHER __attribute__((noinline))
#else
#define HAS_WIDE 0
#define NOINLINE_GATHER
#endif

#if defined(__GNUC__)
#define FETCH(address) __builtin_prefetch(address)
#else
#define FETCH(address) (void)(address)
#endif

/* Short loops lose a fifth where they cross a line of the instruction cache. */
#if defined(__clang__)
#define UNROLL_4 _Pragma("clang loop unroll_count(4)")
#elif defined(__GNUC__)
#define UNROLL_4 _Pragma("GCC unroll 4")
#else
#define UNROLL_4
#endif

/* --- Results ----------------------------------------------------------------------------------------- */

NOINLINE_GATHER static void look_up_results(const column_result *restrict results,
                                            const int32_t *restrict region, size_t count, uint8_t *restrict verdict,
                                            uint64_t *restrict reasons)
{
    UNROLL_4
    for (size_t i = 0; i < count; i++) {
        const column_result *found = &results[region[i]];
        reasons[i] = found->reasons;
        verdict[i] = found->verdict;
    }
}

NOINLINE_GATHER static void look_up_flags(const column_result *restrict results, const int32_t *restrict region,
                                          size_t count, uint8_t *restrict flags)
{
    UNROLL_4
    for (size_t i = 0; i < count; i++)
        flags[i] = results[region[i]].flags;
}

NOINLINE_GATHER static void look_up_limits(const column_result *restrict results, const int32_t *restrict region,
                                           size_t count, int32_t *restrict limit)
{
    UNROLL_4
    for (size_t i = 0; i < count; i++)
        limit[i] = results[region[i]].limit;
}

INLINE void put(const rodt_column_plan *plan, const int32_t *region, size_t row, size_t count,
                const rodt_column_out *out)
{
    look_up_results(plan->results, region, count, out->verdict + row, out->reasons + row);
    if (out->flags != NULL)
        look_up_flags(plan->results, region, count, out->flags + row);
    if (out->limit != NULL)
        look_up_limits(plan->results, region, count, out->limit + row);
}

/* --- Rows of any kind -------------------------------------------------------------------------------- */

NOINLINE_GATHER static void look_up_step(const column_steps *steps, const int32_t *entry, size_t count,
                                         int32_t *out)
{
    UNROLL_4
    for (size_t i = 0; i < count; i++)
        out[i] = steps[entry[i]].low;
}

NOINLINE_GATHER static void look_up_steps(const column_steps *steps, const int32_t *entry, size_t count,
                                     column_steps *out)
{
    UNROLL_4
    for (size_t i = 0; i < count; i++)
        out[i] = steps[entry[i]];
}

typedef struct readings {
    const int32_t *released;
    const int32_t *applied;
} readings;

INLINE readings take_readings(const rodt_column_in *in, size_t row, size_t count, column_block *block)
{
    readings found = {block->released, block->applied};
    take_valid(in->released_valid, in->row_valid, row, count, &block->released_valid);
    take_valid(in->applied_valid, in->row_valid, row, count, &block->applied_valid);
    if (in->released != NULL)
        found.released = in->released + row;
    else
        narrow(in->released64 + row, count, block->released);
    if (in->applied != NULL)
        found.applied = in->applied + row;
    else
        narrow(in->applied64 + row, count, block->applied);
    return found;
}

/* A cell that holds no reading invalidates the stroke and lowers the interval. */
INLINE void subtract(readings from, size_t count, column_block *restrict block, int32_t *restrict stroke)
{
    ROWS_ARE_INDEPENDENT
    for (size_t i = 0; i < count; i++) {
        int32_t no_released = lack_of(from.released[i], block->released_valid.row[i]);
        int32_t no_applied = lack_of(from.applied[i], block->applied_valid.row[i]);
        int32_t moved = moved_by(from.released[i], from.applied[i]);
        int32_t found = moved | column_mask(moved < 0) | column_mask((no_released | no_applied) < 0);
        stroke[i] = found;
        block->region[i] = block->entry[i] * REGIONS_OF_ENTRY + block->slot[i] + column_start(found) +
                           CELLS(no_released, no_applied);
    }
}

INLINE void count_step(const rodt_column_plan *plan, size_t count, column_block *block, const int32_t *stroke)
{
    look_up_step(plan->step[0], block->entry, count, block->step);
    ROWS_ARE_INDEPENDENT
    for (size_t i = 0; i < count; i++)
        block->region[i] += column_past(stroke[i], block->step[i]);
}

INLINE void count_steps(const column_steps *of_entries, size_t count, column_block *restrict block,
                        const int32_t *restrict stroke)
{
    column_steps steps[BLOCK];
    look_up_steps(of_entries, block->entry, count, steps);
    ROWS_ARE_INDEPENDENT
    for (size_t i = 0; i < count; i++)
        block->region[i] += column_past(stroke[i], steps[i].low) + column_past(stroke[i], steps[i].high);
}

/* Loops over one column after the other defeat the hardware prefetcher. So the rows of the next block are prefetched
 * here, a column at a time between two loops. */
INLINE void prefetch_rows(const void *column, size_t width, size_t row, size_t rows)
{
    const size_t line = 64;
    if (column == NULL || rows - row < 2 * BLOCK)
        return;
    const char *first = (const char *)column + (row + BLOCK) * width;
    for (size_t i = 0; i < BLOCK * width; i += line)
        FETCH(first + i);
}

INLINE void judge_block(const rodt_column_plan *plan, const rodt_column_in *in, size_t row, size_t rows,
                        column_block *block, const rodt_column_out *out)
{
    int32_t *stroke = out->stroke + row;
    size_t count = rows - row < BLOCK ? rows - row : BLOCK;
    prefetch_rows(in->released, sizeof *in->released, row, rows);
    prefetch_rows(in->released64, sizeof *in->released64, row, rows);
    prefetch_rows(out->reasons, sizeof *out->reasons, row, rows);
    take_codes(plan, in, row, count, block);
    prefetch_rows(in->applied, sizeof *in->applied, row, rows);
    prefetch_rows(in->applied64, sizeof *in->applied64, row, rows);
    take_days(plan, in, row, count, block);
    prefetch_rows(in->date, sizeof *in->date, row, rows);
    take_pressures(plan, in, row, count, block);
    prefetch_rows(in->psi, sizeof *in->psi, row, rows);
    subtract(take_readings(in, row, count, block), count, block, stroke);
    prefetch_rows(out->stroke, sizeof *out->stroke, row, rows);
    if (plan->steps <= 1)
        count_step(plan, count, block, stroke);
    else
        count_steps(plan->step[0], count, block, stroke);
    if (plan->steps > 2)
        count_steps(plan->step[1], count, block, stroke);
    prefetch_rows(in->chamber, sizeof *in->chamber, row, rows);
    prefetch_rows(out->verdict, sizeof *out->verdict, row, rows);
    put(plan, block->region, row, count, out);
}

INLINE void judge_blocks(const rodt_column_plan *plan, const rodt_column_in *in, size_t rows,
                         const rodt_column_out *out)
{
    column_block block;
    memset(block.slot, 0, sizeof block.slot); /* without a column of pressures it stays so */
    for (size_t row = 0; row < rows; row += BLOCK)
        judge_block(plan, in, row, rows, &block, out);
}

/* --- Plain rows -------------------------------------------------------------------------------------- */

NOINLINE_GATHER static void look_up_codes(const column_code *codes, const uint8_t *chamber, size_t count,
                                     column_code *out)
{
    UNROLL_4
    for (size_t i = 0; i < count; i++)
        out[i] = codes[chamber[i]];
}

INLINE void subtract_plain(const int32_t *released, const int32_t *applied, const column_code *codes,
                           size_t count, int32_t *restrict stroke, int32_t *restrict region)
{
    ROWS_ARE_INDEPENDENT
    for (size_t i = 0; i < count; i++) {
        int32_t no_released = unreadable_of(released[i]);
        int32_t no_applied = unreadable_of(applied[i]);
        int32_t moved = moved_by(released[i], applied[i]);
        int32_t found = moved | column_mask(moved < 0) | column_mask((no_released | no_applied) < 0);
        stroke[i] = found;
        region[i] = codes[i].first + column_start(found) + column_past(found, codes[i].step) +
                    CELLS(no_released, no_applied);
    }
}

INLINE void judge_plain_block(const rodt_column_plan *plan, const rodt_column_in *in, size_t row, size_t count,
                              size_t rows, const rodt_column_out *out)
{
    column_code codes[BLOCK];
    int32_t region[BLOCK];
    prefetch_rows(out->stroke, sizeof *out->stroke, row, rows);
    prefetch_rows(out->reasons, sizeof *out->reasons, row, rows);
    prefetch_rows(out->verdict, sizeof *out->verdict, row, rows);
    look_up_codes(plan->code, in->chamber + row, count, codes);
    subtract_plain(in->released + row, in->applied + row, codes, count, out->stroke + row, region);
    put(plan, region, row, count, out);
}

/* A whole block has a constant number of rows, so that its loop has no remainder. */
INLINE void judge_plain(const rodt_column_plan *plan, const rodt_column_in *in, size_t rows,
                         const rodt_column_out *out)
{
    size_t row = 0;
    for (; rows - row >= BLOCK; row += BLOCK)
        judge_plain_block(plan, in, row, BLOCK, rows, out);
    judge_plain_block(plan, in, row, rows - row, rows, out);
}

/* --- Copies ------------------------------------------------------------------------------------------ */

void rodti_column_judge_blocks_anywhere(const rodt_column_plan *plan, const rodt_column_in *in, size_t rows,
                                  const rodt_column_out *out)
{
    judge_blocks(plan, in, rows, out);
}

void rodti_column_judge_plain_anywhere(const rodt_column_plan *plan, const rodt_column_in *in, size_t rows,
                                  const rodt_column_out *out)
{
    judge_plain(plan, in, rows, out);
}

#if HAS_WIDE
WIDE static void judge_blocks_wide(const rodt_column_plan *plan, const rodt_column_in *in, size_t rows,
                                   const rodt_column_out *out)
{
    judge_blocks(plan, in, rows, out);
}

WIDE static void judge_plain_wide(const rodt_column_plan *plan, const rodt_column_in *in, size_t rows,
                                   const rodt_column_out *out)
{
    judge_plain(plan, in, rows, out);
}
#endif

void rodti_column_judge_blocks(const rodt_column_plan *plan, const rodt_column_in *in, size_t rows,
                         const rodt_column_out *out)
{
#if HAS_WIDE
    if (PROCESSOR_HAS("avx2")) {
        judge_blocks_wide(plan, in, rows, out);
        return;
    }
#endif
    rodti_column_judge_blocks_anywhere(plan, in, rows, out);
}

void rodti_column_judge_plain(const rodt_column_plan *plan, const rodt_column_in *in, size_t rows,
                         const rodt_column_out *out)
{
#if HAS_WIDE
    if (PROCESSOR_HAS("avx2")) {
        judge_plain_wide(plan, in, rows, out);
        return;
    }
#endif
    rodti_column_judge_plain_anywhere(plan, in, rows, out);
}
