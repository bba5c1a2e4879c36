/* SPDX-License-Identifier: Apache-2.0 */
/* A table with open addressing. Who writes a file can make names collide; a name has few slots, so that this costs no
 * more than not to be found. */
#include "batch/recent_names.h"
#include "ui/compiler.h"

#include <stdlib.h>
#include <string.h>

#define SLOTS (INSPECTIONS_MAX * 2u)
#define PROBES 8u

/* Bits of the number of an inspection; the others are of its hash. */
#define NUMBER_BITS 17u
#define NUMBER_MASK ((UINT32_C(1) << NUMBER_BITS) - 1)
_Static_assert(INSPECTIONS_MAX <= NUMBER_MASK, "a slot holds the number of an inspection");

bool recent_names_open(recent_names *names)
{
    names->slots = calloc(SLOTS + PROBES, sizeof *names->slots);
    return names->slots != NULL;
}

void recent_names_close(recent_names *names)
{
    free(names->slots);
    names->slots = NULL;
}

void recent_names_clear(recent_names *names) { memset(names->slots, 0, (SLOTS + PROBES) * sizeof *names->slots); }

static uint64_t add_word(uint64_t hash, uint64_t word)
{
    hash = (hash ^ word) * UINT64_C(0x9E3779B97F4A7C15);
    return hash ^ hash >> 32;
}

void row_name_finish(row_name *name)
{
    uint32_t day;
    memcpy(&day, &name->day, sizeof day);
    uint64_t hash = add_word(name->size, day);
    for (size_t at = 0; at < name->size; at += sizeof hash) {
        uint64_t word = 0;
        memcpy(&word, name->bytes + at, sizeof word);
        hash = add_word(hash, word);
    }
    name->hash = hash;
}

static uint32_t mark_of(uint64_t hash) { return (uint32_t)(hash >> 32) & ~NUMBER_MASK; }

static const uint32_t *first_slot(const recent_names *names, const row_name *name)
{
    return names->slots + name->hash % SLOTS;
}

/* The number of the next inspection that could be it, from 1; 0 = there is none. */
static uint32_t next_number(const uint32_t **slot, const uint32_t *end, uint64_t hash)
{
    while (*slot < end && **slot != 0) {
        const uint32_t found = *(*slot)++;
        if (((found ^ mark_of(hash)) & ~NUMBER_MASK) == 0)
            return found & NUMBER_MASK;
    }
    return 0;
}

bool recent_names_fetch(const recent_names *names, const inspection_table *table, const row_name *name, int step)
{
    const uint32_t *slot = first_slot(names, name);
    if (step == FETCH_SLOT) {
        FETCH(slot);
        return true;
    }
    const uint32_t number = next_number(&slot, slot + PROBES, name->hash);
    if (number != 0)
        inspection_fetch_item(&table->items[number - 1], step);
    return number != 0;
}

static bool is_same(const inspection_key *key, const row_name *name)
{
    return key->name_size == name->size && inspection_same_day(key->day, name->day) &&
           memcmp(key->cell_size, name->cell_size, sizeof key->cell_size) == 0 &&
           memcmp(key->name, name->bytes, name->size) == 0;
}

inspection *recent_names_find(const recent_names *names, const inspection_table *table, const row_name *name)
{
    const uint32_t *slot = first_slot(names, name);
    const uint32_t *const end = slot + PROBES;
    uint32_t number;
    while ((number = next_number(&slot, end, name->hash)) != 0) {
        if (is_same(&table->items[number - 1].key, name))
            return &table->items[number - 1];
    }
    return NULL;
}

void recent_names_keep(recent_names *names, const inspection_table *table, const row_name *name,
                       const inspection *one)
{
    uint32_t *const first = names->slots + name->hash % SLOTS;
    uint32_t *slot = first;
    while (slot < first + PROBES && *slot != 0)
        slot++;
    if (slot == first + PROBES)
        slot = first;
    *slot = mark_of(name->hash) | (uint32_t)(one - table->items + 1);
}
