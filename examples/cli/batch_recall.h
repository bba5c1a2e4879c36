/* SPDX-License-Identifier: Apache-2.0 */
/* How answers that are given again are found: the columns that are read, and what was met in them. */
#ifndef BATCH_RECALL_H
#define BATCH_RECALL_H

#include "batch.h"
#include "scan.h"

/* A mark with this bit belongs to a cell whose rows are judged one by one. */
#define RECALL_NEVER (UINT64_C(1) << 63)

#define RECALL_IDS 512u

/* One column that is read. */
typedef struct recall_column {
    memo_cells cells;
    size_t column;
    uint32_t last;     /* all bits if it is the last column of the file */
    uint32_t heeds;    /* bits of the tag that change what a cell of the column means */
    uint32_t gives;    /* bits of a cell's units that are a tag: the unit of a row is told to the cells behind it */
    batch_word word;
    unsigned shift;    /* where its part of the mark begins */
    uint32_t ids;      /* numbers that were given to cells, or to classes of them */
    uint32_t class_of[RECALL_IDS]; /* 0 = the number belongs to one text alone */
} recall_column;

typedef struct batch_recall {
    recall_column *columns;
    size_t count;
    memo_answers answers;
    scan_function *scan;
    scan_index *index; /* of the stretch from `from` to `until` in the buffer of the part's reader */
    size_t from;
    size_t until;
    size_t sign; /* the first sign that was not yet looked at, and the first line feed */
    size_t feed;
    size_t quote; /* where the next quote stands, or `until` */
    uint64_t again;  /* rows of the part that were answered again */
    uint64_t looked; /* rows of the part that the thorough way looked for */
    unsigned rest;  /* parts that are judged without looking, because nearly all was new */
} batch_recall;

#endif
