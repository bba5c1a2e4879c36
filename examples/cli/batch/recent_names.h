/* SPDX-License-Identifier: Apache-2.0 */
/* Inspections by the cells that name them, as they are written: most rows are spelled like one before, and are then
 * found without what all spellings have in common. Nothing here is all there is: what is not found is looked up by its
 * key. */
#ifndef RECENT_NAMES_H
#define RECENT_NAMES_H

#include "batch/inspection.h"

/* Longer names are not kept. */
#define SHORT_NAME 64

/* The day, the size and the bytes of most names: all that is compared. */
#define NAME_HEAD 24u

/* The cells of a row that name its vehicle, and its day. Zero bytes follow the bytes, to the end of the head and of a
 * word. */
typedef struct row_name {
    rodt_date day; /* as in inspection_key */
    uint8_t size;  /* of the bytes */
    char bytes[SHORT_NAME + NAME_CELLS_MAX + sizeof(uint64_t)]; /* all cells, and of several their sizes */
    uint16_t cell_size[NAME_CELLS_MAX];
    uint64_t hash;
} row_name;
_Static_assert(offsetof(row_name, bytes) == sizeof(rodt_date) + 1, "the head is of one piece");

typedef struct recent_name {
    char head[NAME_HEAD];
    uint32_t hash;
    uint32_t number; /* of the inspection, from 1; 0 = empty */
} recent_name;
_Static_assert(sizeof(recent_name) == 32, "names do not cross lines of the processor's cache");

typedef struct recent_names {
    recent_name *slots;
    size_t count; /* of slots, a power of two; some more follow */
    size_t used;
} recent_names;

/* False: no memory. Close it in either case. */
bool recent_names_open(recent_names *names);
void recent_names_close(recent_names *names);

/* The inspections are gone. */
void recent_names_clear(recent_names *names);

/* Makes the hash, when all else is set. */
void row_name_finish(row_name *name);

/* Fetches what recent_names_find reads. */
void recent_names_fetch(const recent_names *names, const row_name *name);

/* The inspection of a name; NULL = it is not known. It is read only where the name is longer than most. */
inspection *recent_names_find(const recent_names *names, const inspection_table *table, const row_name *name);

/* Keeps an inspection of the table under a name. */
void recent_names_keep(recent_names *names, const inspection_table *table, const row_name *name,
                       const inspection *one);

#endif
