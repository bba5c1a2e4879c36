/* SPDX-License-Identifier: Apache-2.0 */
/* A hash table with open addressing; items and their texts stand in blocks, in the order in which they came. */
#include "batch/inspection.h"
#include "batch/large_memory.h"
#include "ui/compiler.h"

#include <stdlib.h>
#include <string.h>

#define SLOTS (INSPECTIONS_MAX * 2u)
#define ITEM_BYTES (INSPECTIONS_MAX * sizeof(inspection))
#define NAME_BLOCK ((size_t)64 << 10)

typedef struct name_block {
    struct name_block *next;
    size_t used, size;
    char bytes[];
} name_block;

bool inspection_table_open(inspection_table *table)
{
    *table = (inspection_table){.items = large_memory(ITEM_BYTES + SLOTS * sizeof *table->slots)};
    if (table->items == NULL)
        return false;
    table->slots = (uint64_t *)(void *)(table->items + INSPECTIONS_MAX);
    memset(table->slots, 0, SLOTS * sizeof *table->slots);
    return true;
}

void inspection_table_clear(inspection_table *table)
{
    while (table->names != NULL) {
        name_block *next = table->names->next;
        free(table->names);
        table->names = next;
    }
    table->count = 0;
    table->has_undated = false;
    table->name_bytes = 0;
    memset(table->slots, 0, SLOTS * sizeof *table->slots);
}

void inspection_table_close(inspection_table *table)
{
    if (table->slots != NULL)
        inspection_table_clear(table);
    free(table->items);
    *table = (inspection_table){0};
}

bool inspection_table_is_full(const inspection_table *table)
{
    return table->count >= INSPECTIONS_MAX || table->name_bytes >= NAME_BYTES_MAX;
}

/* --- Finding ------------------------------------------------------------------------------------------- */

static uint32_t day_number(rodt_date day)
{
    return (uint32_t)day.year << 16 | (uint32_t)day.month << 8 | (uint32_t)day.day;
}

/* An odd factor: days of one vehicle never meet in the low bits. */
static uint64_t hash_of(const inspection_key *key)
{
    return key->hash + day_number(key->day) * UINT64_C(0x9E3779B97F4A7C15);
}

/* The upper half of the hash, and the number of the item. */
static uint64_t slot_of(uint64_t hash, size_t number) { return (hash & ~UINT64_C(0xFFFFFFFF)) | number; }

static bool is_same(const inspection_key *one, const inspection_key *other)
{
    return one->hash == other->hash && one->folded_size == other->folded_size &&
           inspection_same_day(one->day, other->day) &&
           memcmp(inspection_folded(one), inspection_folded(other), one->folded_size) == 0;
}

/* The slot of the key, or the free one for it. */
static uint64_t *find_slot(const inspection_table *table, const inspection_key *key)
{
    uint64_t hash = hash_of(key);
    size_t at = (size_t)(hash % SLOTS);
    while (table->slots[at] != 0 && (((table->slots[at] ^ hash) >> 32) != 0 ||
                                     !is_same(&table->items[(uint32_t)table->slots[at] - 1].key, key)))
        at = (at + 1) % SLOTS;
    return &table->slots[at];
}

void inspection_fetch_counts(const inspection *one) { FETCH(&one->tally); }

void inspection_fetch_slot(const inspection_table *table, const inspection_key *key)
{
    FETCH(&table->slots[(size_t)(hash_of(key) % SLOTS)]);
}

inspection *inspection_find(const inspection_table *table, const inspection_key *key)
{
    uint64_t slot = *find_slot(table, key);
    return slot == 0 ? NULL : &table->items[(uint32_t)slot - 1];
}

/* --- Adding -------------------------------------------------------------------------------------------- */

/* NULL: no memory. */
static const char *keep_text(inspection_table *table, const char *text, size_t size)
{
    name_block *block = table->names;
    if (block == NULL || size > block->size - block->used) {
        size_t room = size > NAME_BLOCK ? size : NAME_BLOCK;
        block = malloc(sizeof *block + room);
        if (block == NULL)
            return NULL;
        *block = (name_block){table->names, 0, room};
        table->names = block;
    }
    char *to = block->bytes + block->used;
    if (size > 0)
        memcpy(to, text, size);
    block->used += size;
    table->name_bytes += size;
    return to;
}

inspection *inspection_add(inspection_table *table, const inspection *one)
{
    inspection added = *one;
    table->has_undated = table->has_undated || !rodt_date_given(one->key.day);
    added.key.name = keep_text(table, one->key.name, (size_t)one->key.name_size + one->key.folded_size);
    added.other = one->other == NULL ? NULL : keep_text(table, one->other, one->other_size);
    if (added.key.name == NULL || (one->other != NULL && added.other == NULL))
        return NULL;
    table->items[table->count++] = added;
    *find_slot(table, &added.key) = slot_of(hash_of(&added.key), table->count);
    return &table->items[table->count - 1];
}

/* --- Counting ------------------------------------------------------------------------------------------ */

bool inspection_note_spelling(inspection_table *table, inspection *one, const char *name, size_t size)
{
    if (one->other != NULL || (one->key.name_size == size && memcmp(one->key.name, name, size) == 0))
        return true;
    one->other = keep_text(table, name, size);
    one->other_size = (uint16_t)size;
    return one->other != NULL;
}

static void merge_remarks(inspection *to, const inspection *later)
{
    to->remarks |= later->remarks;
    if (!inspection_same_day(to->day, later->day))
        to->remarks |= REMARK_MIXED_DAYS;
    for (size_t i = 0; i < sizeof to->seen; i++) {
        if ((to->seen[i] & later->seen[i]) != 0)
            to->remarks |= REMARK_POSITION_TWICE;
        to->seen[i] = (unsigned char)(to->seen[i] | later->seen[i]);
    }
}

rodt_status inspection_merge(inspection_table *table, inspection *to, const inspection *later)
{
    if (!inspection_tally_add(&to->tally, &later->tally))
        return RODT_E_RANGE;
    for (int i = 0; i < 4; i++)
        to->verdict[i] += later->verdict[i];
    merge_remarks(to, later);
    bool good = inspection_note_spelling(table, to, later->key.name, later->key.name_size) &&
                (later->other == NULL || inspection_note_spelling(table, to, later->other, later->other_size));
    return good ? RODT_OK : RODT_E_MEMORY;
}
