/* SPDX-License-Identifier: Apache-2.0 */
/* The fast way of `rodtravel batch`: rows that come to what was judged before are found and answered again. It parts
 * a row without quotes, and leaves every other row, and every row with something new, to the thorough way. */
#include "batch_recall.h"

#include <string.h>

/* A row that is looked at; places count from the beginning of the index. */
typedef struct row {
    const char *bytes;
    uint32_t size;
    uint32_t line_end_size;
} row;

/* Looks for the signs of the next stretch. */
static void index_stretch(batch_recall *recall, const csv_reader *reader)
{
    size_t size = reader->end - reader->begin;
    recall->from = reader->begin;
    recall->until = reader->begin + (size < SCAN_MAX ? size : SCAN_MAX);
    recall->scan(reader->buffer + recall->from, recall->until - recall->from, reader->separator, recall->index);
    recall->sign = recall->feed = 0;
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

/* The next row, if it ends in the index, has as many cells as the header, no quotes, and is no header. */
static inline bool take_row(const batch_recall *recall, const batch_header *header, const csv_reader *reader, row *out)
{
    const scan_index *index = recall->index;
    size_t last = recall->sign + header->count - 1;
    if (recall->feed >= index->feed_count || last >= index->sign_count ||
        index->signs[last] != index->feeds[recall->feed])
        return false;
    size_t end = recall->from + index->signs[last];
    if (end > recall->quote)
        return false;
    out->bytes = reader->buffer + reader->begin;
    out->size = (uint32_t)(end - reader->begin);
    out->line_end_size = 1;
    if (out->size > 0 && out->bytes[out->size - 1] == '\r') {
        out->size--;
        out->line_end_size = 2;
    }
    return out->size != header->size || memcmp(out->bytes, header->bytes, out->size) != 0;
}

/* The answer to a row; NULL if it is not known. */
static inline memo_answer *find_answer(const batch_recall *recall, const batch_header *header, const row *of)
{
    const uint32_t *ends = recall->index->signs + recall->sign;
    uint32_t begin = ends[header->count - 1] + 1u - of->size - of->line_end_size;
    uint64_t mark = 0;
    uint32_t units = 0;
    uint32_t tag = 0;
    for (size_t i = 0; i < recall->count; i++) {
        const recall_column *column = &recall->columns[i];
        uint32_t start = column->column == 0 ? 0 : ends[column->column - 1] + 1u - begin;
        uint32_t end = column->column + 1 == header->count ? of->size : ends[column->column] - begin;
        const memo_cell *cell =
            memo_cells_find(&column->cells, of->bytes + start, end - start, tag & column->heeds);
        if (cell == NULL)
            return NULL;
        mark |= cell->mark;
        units += cell->units;
        tag |= cell->tag;
    }
    return (mark & RECALL_NEVER) == 0 ? memo_answers_find(&recall->answers, mark, units) : NULL;
}

#define COPY_STEP 32u

/* Copies in steps of a fixed size, so up to a step too far on both sides. */
static inline void copy_loosely(char *to, const char *from, size_t size)
{
    for (size_t at = 0; at < size; at += COPY_STEP)
        memcpy(to + at, from + at, COPY_STEP);
}

static inline void write_row(output *to, const row *of, const memo_answer *answer)
{
    char *at = to->buffer + to->used;
    copy_loosely(at, of->bytes, of->size);
    at += of->size;
    copy_loosely(at, answer->tail, answer->size);
    at += answer->size;
    memcpy(at, of->bytes + of->size, 2);
    to->used += of->size + answer->size + of->line_end_size;
}

/* One row of the index. False: it must be looked at, or there is none. */
static inline bool answer_row(batch_part *part)
{
    batch_recall *recall = part->recall;
    row next;
    if (!take_row(recall, &part->run->header, &part->reader, &next))
        return false;
    memo_answer *answer = find_answer(recall, &part->run->header, &next);
    if (answer == NULL || !output_room(&part->out, (size_t)next.size + MEMO_TAIL + 2 * COPY_STEP))
        return false;
    write_row(&part->out, &next, answer);
    memo_answers_meet(&recall->answers, answer);
    recall->sign += part->run->header.count;
    recall->feed++;
    part->reader.begin += next.size + next.line_end_size;
    part->reader.line++;
    return true;
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
        while (answer_row(part))
            ;
        /* A stretch may end within a row; the next one begins with it. */
        indexed = recall->feed < recall->index->feed_count || reader->begin == recall->from;
    } while (!indexed && reader->begin < reader->end);
}
