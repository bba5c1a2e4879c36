/* SPDX-License-Identifier: Apache-2.0 */
/* Inspections by the cells that name them, as they are written: most rows are spelled like the first of theirs, and are
 * then found without what all spellings have in common. Nothing here is all there is: what is not found is looked up
 * by its key. */
#ifndef RECENT_NAMES_H
#define RECENT_NAMES_H

#include "batch/inspection.h"

/* Longer names are not kept. */
#define SHORT_NAME 64

/* The cells of a row that name its vehicle, and its day. */
typedef struct row_name {
    uint64_t hash;
    rodt_date day; /* as in inspection_key */
    uint16_t size; /* of all cells */
    uint16_t cell_size[NAME_CELLS_MAX];
    char bytes[SHORT_NAME];
} row_name;

typedef struct recent_names {
    uint32_t *slots; /* some bits of the hash, and the number of the inspection from 1; 0 = empty */
} recent_names;

/* False: no memory. Close it in either case. */
bool recent_names_open(recent_names *names);
void recent_names_close(recent_names *names);

/* The inspections are gone. */
void recent_names_clear(recent_names *names);

/* Makes the hash, when all else is set. */
void row_name_finish(row_name *name);

/* Fetches what recent_names_find reads, step by step (FETCH_SLOT ...). False: it will not find this name. */
bool recent_names_fetch(const recent_names *names, const inspection_table *table, const row_name *name, int step);

/* The inspection whose first spelling this is; NULL = it is not known. */
inspection *recent_names_find(const recent_names *names, const inspection_table *table, const row_name *name);

/* Keeps an inspection of the table under a name. */
void recent_names_keep(recent_names *names, const inspection_table *table, const row_name *name,
                       const inspection *one);

#endif
