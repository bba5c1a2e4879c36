/* SPDX-License-Identifier: Apache-2.0 */
/* The fast way of `rodtravel batch`: rows that come to what was judged before are found and answered again. It parts
 * a row without quotes, and leaves every other row, and every row with something new, to the thorough way. */
#include "batch_recall.h"

#include <string.h>

/* Looks for the signs of the next stretch. */
static void index_stretch(batch_recall *recall, const csv_reader *reader)
{
    size_t size = reader->end - reader->begin;
    recall->from = reader->begin;
    recall->until = reader->begin + (size < SCAN_MAX ? size : SCAN_MAX);
    recall->scan(reader->buffer + recall->from, recall->until - recall->from, reader->separator, recall->index);
    recall->sign = 1;
    recall->feed = 0;
    recall->quote = recall->from;
}

/* Goes on in the index from where the reader stands now. */
static void catch_up(batch_recall *recall, const csv_reader *reader)
{
    const scan_index *index = recall->index;
    size_t at = reader->begin - recall->from;
    while (recall->sign < index->sign_count && index->signs[recall->sign] < at)
        recall->sign++;
    while (recall->feed < index->feed_count && index->feeds[recall->feed] < at)
        recall->feed++;
}

static void find_quote(batch_recall *recall, const csv_reader *reader)
{
    if (recall->quote > reader->begin)
        return;
    const char *found = memchr(reader->buffer + reader->begin, '"', recall->until - reader->begin);
    recall->quote = found != NULL ? (size_t)(found - reader->buffer) : recall->until;
}

/* Most bytes that are copied in one step of a known size. */
#define ROW_STEP 64u
#define TAIL_STEP 96u
_Static_assert(MEMO_TAIL % TAIL_STEP == 0, "a tail is read in whole steps, never beyond its room");

/* Room for all rows that are left in the index, each with its answer. */
static bool make_room(batch_part *part)
{
    const batch_recall *recall = part->recall;
    size_t rows = recall->index->feed_count - recall->feed;
    return output_room(&part->out, recall->until - part->reader.begin + rows * (MEMO_TAIL + 2) + ROW_STEP + TAIL_STEP);
}

/* A row; places count from the beginning of the stretch. */
typedef struct row {
    const char *stretch;
    const uint32_t *ends; /* of its cells; in front of them, of the row before */
    uint32_t start;
    uint32_t size;
    uint32_t line_end_size;
} row;

/* The next row, if it ends in the index, has as many cells as the header, no quotes, and is no header. */
static inline bool take_row(const batch_recall *recall, const batch_header *header, uint32_t quote, row *out)
{
    const scan_index *index = recall->index;
    size_t last = recall->sign + header->count - 1;
    if (recall->feed >= index->feed_count || last >= index->sign_count)
        return false;
    uint32_t end = index->signs[last];
    if (end != index->feeds[recall->feed] || end > quote)
        return false;
    out->ends = index->signs + recall->sign;
    out->start = out->ends[-1] + 1;
    out->line_end_size = end > out->start && out->stretch[end - 1] == '\r' ? 2 : 1;
    out->size = end + 1 - out->line_end_size - out->start;
    return out->size != header->size || memcmp(out->stretch + out->start, header->bytes, out->size) != 0;
}

/* The answer to a row; NULL if it is not known. */
static inline memo_answer *find_answer(const batch_recall *recall, const row *of)
{
    uint64_t mark = 0;
    uint32_t units = 0;
    uint32_t tag = 0;
    for (size_t i = 0; i < recall->count; i++) {
        const recall_column *column = &recall->columns[i];
        uint32_t start = of->ends[(ptrdiff_t)column->column - 1] + 1;
        uint32_t end = of->ends[column->column] - (column->last & (of->line_end_size - 1));
        const memo_cell *cell =
            memo_cells_find(&column->cells, of->stretch + start, end - start, tag & column->heeds);
        if (cell == NULL)
            return NULL;
        mark |= cell->mark;
        units += cell->units & ~column->gives;
        tag |= cell->units & column->gives;
    }
    return (mark & RECALL_NEVER) == 0 ? memo_answers_find(&recall->answers, mark, units) : NULL;
}

/* Copies in steps, so up to a step too far on both sides; most texts take one. */
static inline void copy_loosely(char *to, const char *from, size_t size, size_t step)
{
    memcpy(to, from, step);
    for (size_t at = step; at < size; at += step)
        memcpy(to + at, from + at, step);
}

static inline void write_row(output *to, const row *of, const memo_answer *answer)
{
    char *at = to->buffer + to->used;
    const char *bytes = of->stretch + of->start;
    copy_loosely(at, bytes, of->size, ROW_STEP);
    at += of->size;
    copy_loosely(at, answer->tail, answer->size, TAIL_STEP);
    at += answer->size;
    memcpy(at, bytes + of->size, 2);
    to->used += of->size + answer->size + of->line_end_size;
}

/* Answers rows of the index up to the first that must be looked at. */
static void answer_rows(batch_part *part)
{
    batch_recall *recall = part->recall;
    csv_reader *reader = &part->reader;
    const batch_header *header = &part->run->header;
    uint32_t quote = (uint32_t)(recall->quote - recall->from);
    row next = {.stretch = reader->buffer + recall->from};
    uint64_t rows = 0;
    while (take_row(recall, header, quote, &next)) {
        memo_answer *answer = find_answer(recall, &next);
        if (answer == NULL)
            break;
        write_row(&part->out, &next, answer);
        memo_answers_meet(&recall->answers, answer);
        recall->sign += header->count;
        recall->feed++;
        rows++;
    }
    reader->begin = recall->from + (uint32_t)(recall->index->signs[recall->sign - 1] + 1u);
    reader->line += rows;
}

void batch_again(batch_part *part)
{
    batch_recall *recall = part->recall;
    csv_reader *reader = &part->reader;
    bool indexed = reader->begin >= recall->from && reader->begin < recall->until;
    if (indexed)
        catch_up(recall, reader);
    do {
        if (!indexed)
            index_stretch(recall, reader);
        find_quote(recall, reader);
        if (!make_room(part))
            return;
        answer_rows(part);
        /* A stretch may end within a row; the next one begins with it. */
        indexed = recall->feed < recall->index->feed_count || reader->begin == recall->from;
    } while (!indexed && reader->begin < reader->end);
}
