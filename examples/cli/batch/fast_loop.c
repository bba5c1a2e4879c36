/* SPDX-License-Identifier: Apache-2.0 */
/* The fast way of `rodtravel batch`: rows that come to what was judged before are found and answered again. Every
 * other row, and every row with something new, is left to the thorough way. */
#include "batch/cache_key.h"
#include "ui/compiler.h"

#include <string.h>

/* Most bytes that are copied in one step of a known size. */
#define STEP 96u
_Static_assert(MEMO_TAIL % STEP == 0, "a tail is read in whole steps, never beyond its room");
_Static_assert(CSV_PAD >= STEP && CSV_PAD >= SCAN_STEP && CSV_PAD >= MEMO_TEXT, "rows are read beyond their ends");

/* A row that was parted. */
typedef struct row {
    const char *bytes;
    const uint32_t *ends; /* of its cells, the line end left out; the first is that of the row before */
    uint32_t size;
    uint32_t line_end_size;
} row;

/* Sees to the line end of a row, which has two cells at least. */
ALWAYS_INLINE row make_row(const char *bytes, uint32_t *ends, uint32_t count)
{
    uint32_t feed = ends[count];
    uint32_t carriage_return = bytes[feed - 1] == '\r';
    ends[count] = feed - carriage_return;
    return (row){.bytes = bytes, .ends = ends, .size = feed - carriage_return, .line_end_size = 1 + carriage_return};
}

/* The answer to a row; NULL if it is not known. */
ALWAYS_INLINE memo_answer *find_answer(const batch_recall *recall, const row *of, bool has_unit, memo_hasher *hash)
{
    uint64_t mark = 0;
    uint32_t units = 0;
    uint32_t tag = 0;
    const recall_column *const end = recall->columns + recall->count;
    for (const recall_column *column = recall->columns; column < end; column++) {
        uint32_t start = of->ends[column->before] + 1;
        uint32_t size = of->ends[column->before + 1] - start;
        const memo_cell *cell =
            memo_cells_find(&column->cells, of->bytes + start, size, has_unit, tag & column->heeds, hash);
        if (cell == NULL)
            return NULL;
        mark |= cell->mark;
        units += has_unit ? cell->units & ~column->gives : cell->units;
        tag |= has_unit ? cell->units & column->gives : 0;
    }
    if ((mark & RECALL_NEVER) != 0)
        return NULL;
    return memo_answers_find(&recall->answers, mark, recall_stroke(mark, units), hash);
}

/* Copies in steps, so up to a step too far on both sides; most texts take one. */
ALWAYS_INLINE void copy_loosely(char *to, const char *from, uint32_t size)
{
    memcpy(to, from, STEP);
    for (uint32_t at = STEP; at < size; at += STEP)
        memcpy(to + at, from + at, STEP);
}

ALWAYS_INLINE void write_row(output *to, const row *of, const memo_answer *answer)
{
    char *at = to->buffer + to->used;
    copy_loosely(at, of->bytes, of->size);
    at += of->size;
    copy_loosely(at, answer->tail, answer->size);
    at += answer->size;
    memcpy(at, of->bytes + of->size, 2);
    to->used += of->size + answer->size + of->line_end_size;
}

/* A row of a vehicle (--by). False: it must be looked at, or the part was stopped. */
static bool count_row(batch_part *part, const row *of, const memo_answer *answer, uint64_t line)
{
    const batch_recall *recall = part->recall;
    uint32_t told[BATCH_BY_TOLD];
    size_t by = part->run->by_column;
    uint32_t start = of->ends[by] + 1;
    for (size_t i = 0; i < BATCH_BY_TOLD; i++) {
        const recall_column *column = &recall->told[i];
        told[i] = recall->told_nothing[i];
        if (column->before == COLUMN_NONE)
            continue;
        uint32_t first = of->ends[column->before] + 1;
        uint32_t size = of->ends[column->before + 1] - first;
        const memo_cell *cell = memo_cells_find_on(&column->cells, of->bytes + first, size, 0);
        if (cell == NULL)
            return false;
        told[i] = cell->units;
    }
    return batch_by_plain(part, of->bytes + start, of->ends[by + 1] - start, told, answer, line);
}

static bool is_header(const batch_header *header, const row *of)
{
    return of->size == header->size && memcmp(of->bytes, header->bytes, of->size) == 0;
}

/* Answers rows up to the first that must be looked at. plain = they are written, and no column tells their unit. */
ALWAYS_INLINE void answer_rows(batch_part *part, scan_finder *find, scan_writer *write, memo_hasher *hash, bool plain)
{
    batch_recall *recall = part->recall;
    csv_reader *reader = &part->reader;
    const batch_header *header = &part->run->header;
    const uint32_t count = (uint32_t)header->count;
    const char separator = reader->separator;
    const char *at = reader->buffer + reader->begin;
    const char *end = reader->buffer + reader->end;
    const bool by = !plain && part->run->by != NULL;
    uint64_t rows = 0;
    while (at < end && split_row(at, separator, count, recall->ends + 1, find, write) == count) {
        row next = make_row(at, recall->ends, count);
        if (next.size + next.line_end_size > (size_t)(end - at) || is_header(header, &next) ||
            !output_room(&part->out, next.size + MEMO_TAIL + 2 * STEP))
            break;
        memo_answer *answer = find_answer(recall, &next, !plain, hash);
        if (answer == NULL || (by && !count_row(part, &next, answer, reader->line + rows)))
            break;
        if (!by)
            write_row(&part->out, &next, answer);
        memo_answers_meet(&recall->answers, answer);
        at += next.size + next.line_end_size;
        rows++;
    }
    reader->begin = (size_t)(at - reader->buffer);
    reader->line += rows;
}

/* --- One loop for each kind of processor ----------------------------------------------------------------- */

#ifdef SCAN_X86

static void answer_16(batch_part *part) { answer_rows(part, scan_find_16, scan_write, memo_hash_any, false); }

SCAN_AVX2 static void answer_32(batch_part *part)
{
    if (part->recall->has_unit || part->run->by != NULL)
        answer_rows(part, scan_find_32, scan_write_8, memo_hash_sum, false);
    else
        answer_rows(part, scan_find_32, scan_write_8, memo_hash_sum, true);
}

batch_answerer *batch_again_choose(void) { return SCAN_HAS_AVX2() ? answer_32 : answer_16; }

#else

static void answer_8(batch_part *part) { answer_rows(part, scan_find_8, scan_write, memo_hash_any, false); }

batch_answerer *batch_again_choose(void) { return answer_8; }

#endif
