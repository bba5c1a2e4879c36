/* SPDX-License-Identifier: Apache-2.0 */
/* Inspections: what was counted of one vehicle on one day, and the table that finds them by name and day. */
#ifndef BATCH_INSPECTION_H
#define BATCH_INSPECTION_H

#include "batch/vehicle_key.h"

#include <rodtravel/rodtravel.h>
#include <string.h>

/* A vehicle is named by the cells of one to so many columns. */
#define NAME_CELLS_MAX 8

/* A longer cell counts as empty. */
#define VEHICLE_KEY_SIZE 512

#define NAME_SIZE_MAX ((size_t)NAME_CELLS_MAX * VEHICLE_KEY_SIZE)
#define FOLDED_SIZE_MAX (NAME_SIZE_MAX + NAME_CELLS_MAX * sizeof(uint16_t))

_Static_assert(sizeof(rodt_date) == sizeof(uint32_t), "a day is one number");

static inline bool inspection_same_day(rodt_date one, rodt_date other)
{
    return memcmp(&one, &other, sizeof one) == 0;
}

/* Remarks on the rows of an inspection as a whole. */
enum { REMARK_MIXED_DAYS = 1u << 0, REMARK_POSITION_TWICE = 1u << 1, REMARK_UNDATED_ROWS = 1u << 2 };

#define POSITIONS (2u * (RODT_AXLE_NUMBER_MAX + 1u))

/* Whose inspection, and of which day. */
typedef struct inspection_key {
    const char *name; /* cells as they were spelled first, one behind the other, without the blanks around them; behind
                       * them what all spellings have in common, the folded name */
    uint64_t hash;    /* of the folded name */
    uint16_t cell_size[NAME_CELLS_MAX];
    uint32_t name_size : 16, folded_size : 15, is_nameless : 1; /* a cell is empty */
    rodt_date day; /* all zero: the rows are of no day that can be read, or days are pooled */
} inspection_key;
_Static_assert(FOLDED_SIZE_MAX < 1u << 15, "a folded name has a size");

static inline const char *inspection_folded(const inspection_key *key) { return key->name + key->name_size; }

/* A rodt_tally without room for later. */
typedef struct brake_tally {
    uint32_t brakes, full, half, unknown, inoperative;
} brake_tally;

/* What is counted of every row is in the second of two lines of the processor's cache. */
typedef struct inspection {
    inspection_key key;
    uint64_t first;    /* number of its first row */
    const char *other; /* another spelling of the name; NULL = there is none */
    rodt_date day;     /* of the first row */
    uint16_t other_size;
    uint8_t remarks;
    brake_tally tally;
    uint32_t verdict[4]; /* rows by rodt_verdict */
    unsigned char seen[POSITIONS / 8]; /* positions */
} inspection;
_Static_assert(POSITIONS % 8 == 0, "whole bytes of positions");
_Static_assert(sizeof(void *) != 8 || (sizeof(inspection) == 128 && offsetof(inspection, tally) == 64),
               "an inspection is two lines of the processor's cache");

/* In the order in which they were added. All zero bytes but for what inspection_table_open sets. */
typedef struct inspection_table {
    inspection *items; /* room for INSPECTIONS_MAX */
    size_t count;
    bool has_undated; /* some are of no day */
    uint64_t *slots;
    struct name_block *names;
    size_t name_bytes;
} inspection_table;

/* Inspections that a table holds at most, and with them the bytes of their names. Tests make it smaller. */
#ifndef INSPECTIONS_MAX
#define INSPECTIONS_MAX 65536u
#endif
#define NAME_BYTES_MAX ((size_t)8 << 20)

/* False: no memory. Close it in either case. */
bool inspection_table_open(inspection_table *table);
void inspection_table_clear(inspection_table *table);
void inspection_table_close(inspection_table *table);

/* True: clear it before anything is added. */
bool inspection_table_is_full(const inspection_table *table);

/* What finds and counts in an inspection lies far apart in memory. Who has several to find fetches it for all of them
 * first. */
void inspection_fetch_counts(const inspection *one);
void inspection_fetch_slot(const inspection_table *table, const inspection_key *key);

/* NULL: there is none. */
inspection *inspection_find(const inspection_table *table, const inspection_key *key);

/* Adds what is not there yet, with a copy of its texts. NULL: no memory. */
inspection *inspection_add(inspection_table *table, const inspection *one);

/* Notes another spelling of the name, if it is one and the first. False: no memory. */
bool inspection_note_spelling(inspection_table *table, inspection *one, const char *name, size_t size);

/* False: more brakes than can be counted. */
static inline bool inspection_tally_add(brake_tally *to, const brake_tally *one)
{
    if (one->brakes > RODT_BRAKES_MAX - to->brakes)
        return false;
    to->brakes += one->brakes;
    to->full += one->full;
    to->half += one->half;
    to->unknown += one->unknown;
    to->inoperative += one->inoperative;
    return true;
}

/* Counts in what was counted later under the same key; both of the same table or not. RODT_E_RANGE: more brakes than
 * can be counted; RODT_E_MEMORY. */
rodt_status inspection_merge(inspection_table *table, inspection *to, const inspection *later);

#endif
