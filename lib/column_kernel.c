/* SPDX-License-Identifier: Apache-2.0 */
/* The inner loops of columns. They decide nothing: a stroke is counted into a region, and the word of the region was
 * worked out beforehand. No branch hangs on a cell, so that compilers make vectors of them; on x86-64 a second copy
 * is made for processors that load a vector from a table. */
#include "column.h"

#if defined(__x86_64__) && defined(__GNUC__)
#define WIDE __attribute__((target("avx2")))
#define INLINE static inline __attribute__((always_inline))
#define HAS_WIDE 1
#define ONE_BY_ONE __attribute__((noinline))
#else
#define INLINE static inline
#define HAS_WIDE 0
#define ONE_BY_ONE
#endif

_Static_assert(RODT_REASON_END == 32, "a column of reasons has 32 bits");
_Static_assert((int)RODT_REASON_DATE_AMBIGUOUS == (int)WORD_VERDICT + 1, "the verdict has two bits");
_Static_assert(REGION_INCOMPLETE + CELL_KINDS * CELL_KINDS <= RODT_COLUMN_REGIONS, "room for every region");

INLINE void put(const column_answers *out, size_t row, int32_t moved, int32_t kind, uint32_t word)
{
    out->stroke[row] = moved | column_mask(moved < 0) | column_mask(kind != 0);
    out->verdict[row] = (uint8_t)(word >> WORD_VERDICT & 3u);
    out->reasons[row] = word & WORD_REASONS;
}

INLINE void loop_plain(const rodt_column_plan *plan, const column_plain *in, size_t count, const column_answers *out,
                       int32_t steps)
{
    const column_plain cells = *in;
    const column_answers answers = *out;
    const int32_t codes = (int32_t)plan->codes;
    const int32_t eras = (int32_t)plan->eras;
    const int32_t era = (int32_t)COLUMN_ERA_OF_PLAN(plan);
    const int32_t *step = plan->step[0];
    const uint32_t *words = plan->words;
    ROWS_ARE_INDEPENDENT
    for (size_t i = 0; i < count; i++) {
        int32_t released = cells.released[i];
        int32_t applied = cells.applied[i];
        int32_t code = cells.chamber[i] < codes ? cells.chamber[i] : RODT_COLUMN_CHAMBER_UNREADABLE;
        int32_t entry = code * eras + era;
        int32_t moved = (applied & column_mask(applied > 0)) - (released & column_mask(released > 0));
        int32_t kind = (column_mask(released < 0) & (CELL_KINDS * CELL_UNREADABLE)) +
                       (column_mask(applied < 0) & CELL_UNREADABLE);
        int32_t counted = column_region(moved, step, steps, entry);
        int32_t region = kind != 0 ? REGION_INCOMPLETE + kind : counted;
        put(&answers, i, moved, kind, words[entry * REGIONS_OF_ENTRY + region]);
    }
}

INLINE void loop_rows(const rodt_column_plan *plan, const column_rows *in, size_t count, const column_answers *out,
                      int32_t steps)
{
    const column_rows cells = *in;
    const column_answers answers = *out;
    const int32_t *step = plan->step[0];
    const uint32_t *words = plan->words;
    ROWS_ARE_INDEPENDENT
    for (size_t i = 0; i < count; i++) {
        int32_t moved = cells.applied[i] - cells.released[i];
        int32_t counted = column_region(moved, step, steps, cells.entry[i]);
        int32_t kind = cells.kind[i];
        int32_t region = kind != 0 ? REGION_INCOMPLETE + kind : counted;
        put(&answers, i, moved, kind, words[cells.word[i] + region]);
    }
}

/* Rows whose codes are looked up together, by loads of one at a time: a vector of loads is slower. */
#define PACKED 512

typedef struct packed_rows {
    uint64_t code[PACKED];
    uint32_t word[PACKED];
} packed_rows;

ONE_BY_ONE static void look_up(const uint64_t *packed, const uint8_t *chamber, int count, packed_rows *rows)
{
    for (int i = 0; i < count; i++)
        rows->code[i] = packed[chamber[i]];
}

INLINE uint32_t word_of(const rodt_column_changes *changes, int32_t released, int32_t applied, int32_t step,
                        uint32_t common)
{
    int32_t moved = (applied & column_mask(applied > 0)) - (released & column_mask(released > 0));
    uint32_t no_released = (uint32_t)column_mask(released < 0);
    uint32_t no_applied = (uint32_t)column_mask(applied < 0);
    uint32_t limit = 0u - (common >> WORD_VERDICT & 1u);
    uint32_t change = ((uint32_t)column_mask(moved > 0) & changes->within) ^
                      ((uint32_t)column_mask(moved >= step) & (changes->within ^ changes->at)) ^
                      ((uint32_t)column_mask(moved > step) & (changes->at ^ changes->over));
    change &= limit;
    change ^= ((uint32_t)column_mask(moved < 0) & changes->swapped) ^
              ((uint32_t)column_mask(moved == 0) & changes->still);
    change &= ~(no_released | no_applied);
    change ^= (no_released & WORD_RELEASED_UNREADABLE) ^ (no_applied & WORD_APPLIED_UNREADABLE);
    return (common & WORD_REASONS) ^ change;
}

/* Bytes are narrowed in a loop of their own: in one loop with the words they would ask for more registers than
 * there are. */
INLINE void loop_packed(const rodt_column_plan *plan, const column_plain *in, int count, const column_answers *out)
{
    const column_plain cells = *in;
    const column_answers answers = *out;
    const rodt_column_changes changes = plan->changes;
    packed_rows rows;
    look_up(plan->packed, cells.chamber, count, &rows);
    ROWS_ARE_INDEPENDENT
    for (int i = 0; i < count; i++) {
        int32_t released = cells.released[i];
        int32_t applied = cells.applied[i];
        int32_t moved = (applied & column_mask(applied > 0)) - (released & column_mask(released > 0));
        int32_t step = (int32_t)(uint32_t)rows.code[i];
        uint32_t word = word_of(&changes, released, applied, step, (uint32_t)(rows.code[i] >> 32));
        rows.word[i] = word;
        answers.reasons[i] = word & WORD_REASONS;
        answers.stroke[i] = moved | column_mask(moved < 0) | column_mask((released | applied) < 0);
    }
    uint8_t *verdict = out->verdict;
    ROWS_ARE_INDEPENDENT
    for (int i = 0; i < count; i++)
        verdict[i] = (uint8_t)(rows.word[i] >> WORD_VERDICT & 3u);
}

/* A whole block has a constant number of rows, so that its loop has no remainder. */
INLINE void judge_packed(const rodt_column_plan *plan, const column_plain *in, size_t count,
                         const column_answers *out)
{
    for (size_t row = 0; row < count; row += PACKED) {
        column_plain cells = {in->released + row, in->applied + row, in->chamber + row};
        column_answers answers = {out->stroke + row, out->verdict + row, out->reasons + row};
        if (count - row >= PACKED)
            loop_packed(plan, &cells, PACKED, &answers);
        else
            loop_packed(plan, &cells, (int)(count - row), &answers);
    }
}

/* Most plans have one step an entry; with a constant number of steps the loop over them disappears. */
INLINE void judge_plain(const rodt_column_plan *plan, const column_plain *in, size_t count,
                        const column_answers *out)
{
    if (plan->steps <= 1)
        loop_plain(plan, in, count, out, 1);
    else
        loop_plain(plan, in, count, out, RODT_COLUMN_STEPS);
}

INLINE void judge_rows(const rodt_column_plan *plan, const column_rows *in, size_t count, const column_answers *out)
{
    if (plan->steps <= 1)
        loop_rows(plan, in, count, out, 1);
    else
        loop_rows(plan, in, count, out, RODT_COLUMN_STEPS);
}

#if HAS_WIDE
WIDE static void judge_packed_wide(const rodt_column_plan *plan, const column_plain *in, size_t count,
                                   const column_answers *out)
{
    judge_packed(plan, in, count, out);
}

WIDE static void judge_plain_wide(const rodt_column_plan *plan, const column_plain *in, size_t count,
                                  const column_answers *out)
{
    judge_plain(plan, in, count, out);
}

WIDE static void judge_rows_wide(const rodt_column_plan *plan, const column_rows *in, size_t count,
                                 const column_answers *out)
{
    judge_rows(plan, in, count, out);
}
#endif

void column_judge_packed(const rodt_column_plan *plan, const column_plain *in, size_t count,
                         const column_answers *out)
{
#if HAS_WIDE
    if (__builtin_cpu_supports("avx2")) {
        judge_packed_wide(plan, in, count, out);
        return;
    }
#endif
    judge_packed(plan, in, count, out);
}

void column_judge_plain(const rodt_column_plan *plan, const column_plain *in, size_t count,
                        const column_answers *out)
{
#if HAS_WIDE
    if (__builtin_cpu_supports("avx2")) {
        judge_plain_wide(plan, in, count, out);
        return;
    }
#endif
    judge_plain(plan, in, count, out);
}

void column_judge_rows(const rodt_column_plan *plan, const column_rows *in, size_t count, const column_answers *out)
{
#if HAS_WIDE
    if (__builtin_cpu_supports("avx2")) {
        judge_rows_wide(plan, in, count, out);
        return;
    }
#endif
    judge_rows(plan, in, count, out);
}
