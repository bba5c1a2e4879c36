/* SPDX-License-Identifier: Apache-2.0 */
/* How answers that are given again are found: the columns that are read, and what was met in them. */
#ifndef BATCH_RECALL_H
#define BATCH_RECALL_H

#include "batch/batch.h"
#include "io/csv_index.h"
#include "ui/compiler.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* A mark with this bit belongs to a cell whose rows are judged one by one; with that one, to a reading that is missing
 * or cannot be read, so that there is no stroke, whatever the other reading is. */
#define RECALL_NEVER (UINT64_C(1) << 63)
#define RECALL_NO_STROKE (UINT64_C(1) << 62)

#define RECALL_IDS 512u

/* One column that is read. */
typedef struct recall_column {
    memo_cells cells;
    size_t before;     /* place in `ends` of the end of the cell before it */
    uint32_t heeds;    /* bits of the tag that change what a cell of the column means */
    uint32_t gives;    /* bits of a cell's units that are a tag: the unit of a row is told to the cells behind it */
    rodt_field word;
    unsigned shift;    /* where its part of the mark begins */
    uint32_t ids;      /* numbers that were given to cells, or to classes of them */
    uint64_t class_of[RECALL_IDS]; /* 0 = the number belongs to one text alone */
} recall_column;

/* Answers rows of the part again, as batch_again. */
typedef void batch_answerer(batch_part *part);

typedef struct batch_recall {
    recall_column *columns;
    size_t count;
    bool has_unit;   /* a column tells the unit of each row, and is the first of the columns */
    recall_column told[BATCH_BY_TOLD]; /* with --by; the units of a cell are what it tells. Without such a column
                                          `before` is COLUMN_NONE */
    uint32_t told_nothing[BATCH_BY_TOLD]; /* what a row tells that does not have it */
    memo_cells names; /* of the members of objects; the units of a cell are what the name means */
    memo_answers answers;
    batch_answerer *answer_rows;
    uint32_t *ends;  /* of the cells of a row; in front of them, the place before the row */
    uint64_t again;  /* rows of the part that were answered again */
    uint64_t looked; /* rows of the part that the thorough way looked for */
    unsigned rest;   /* parts that are judged without looking, because nearly all was new */
    unsigned next_rest; /* as many next time */
} batch_recall;

/* The fastest way that this processor has. */
batch_answerer *batch_again_choose(void);

/* What the cells of a row come to, as one number for all rows that the same answer fits (recall.h). */
ALWAYS_INLINE uint32_t recall_stroke(uint64_t mark, uint32_t units)
{
    uint32_t stroke = units > INT32_MAX ? UINT32_MAX : units;
    return (mark & RECALL_NO_STROKE) != 0 ? 0 : stroke;
}

#endif
