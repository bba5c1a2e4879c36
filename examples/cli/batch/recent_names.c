/* SPDX-License-Identifier: Apache-2.0 */
/* A table with open addressing, which grows. Who writes a file can make names collide; a name has few slots, so that
 * this costs no more than not to be found. */
#include "batch/recent_names.h"
#include "batch/large_memory.h"
#include "ui/compiler.h"

#include <stdlib.h>
#include <string.h>

/* Slots at the start. Tests have fewer. */
#ifndef NAMES_FIRST
#define NAMES_FIRST 1024u
#endif
#define SLOTS_MOST (INSPECTIONS_MAX * 2u)
#define PROBES 8u

/* NULL: no memory. */
static recent_name *make_slots(size_t count)
{
    const size_t size = (count + PROBES) * sizeof(recent_name);
    recent_name *made = large_memory(size);
    return made != NULL ? memset(made, 0, size) : NULL;
}

bool recent_names_open(recent_names *names)
{
    *names = (recent_names){.count = NAMES_FIRST, .slots = make_slots(NAMES_FIRST)};
    return names->slots != NULL;
}

void recent_names_close(recent_names *names)
{
    free(names->slots);
    names->slots = NULL;
}

void recent_names_clear(recent_names *names)
{
    memset(names->slots, 0, (names->count + PROBES) * sizeof *names->slots);
    names->used = 0;
}

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

static recent_name *first_slot(const recent_names *names, uint32_t hash)
{
    return names->slots + (hash & (names->count - 1));
}

void recent_names_fetch(const recent_names *names, const row_name *name)
{
    FETCH(first_slot(names, (uint32_t)name->hash));
}

static bool has_head(const recent_name *slot, const row_name *name)
{
    uint64_t one[NAME_HEAD / sizeof(uint64_t)], other[NAME_HEAD / sizeof(uint64_t)];
    memcpy(one, slot->head, sizeof one);
    memcpy(other, name, sizeof other);
    return ((one[0] ^ other[0]) | (one[1] ^ other[1]) | (one[2] ^ other[2])) == 0;
}

/* What does not fit in the head is compared with the inspection. */
static bool has_rest(const inspection_key *key, const row_name *name)
{
    return name->size <= NAME_HEAD - offsetof(row_name, bytes) ||
           (memcmp(key->cell_size, name->cell_size, sizeof key->cell_size) == 0 &&
            memcmp(key->name, name->bytes, key->name_size) == 0);
}

inspection *recent_names_find(const recent_names *names, const inspection_table *table, const row_name *name)
{
    const recent_name *slot = first_slot(names, (uint32_t)name->hash);
    for (const recent_name *const end = slot + PROBES; slot < end && slot->number != 0; slot++) {
        inspection *one = &table->items[slot->number - 1];
        if (has_head(slot, name) && has_rest(&one->key, name))
            return one;
    }
    return NULL;
}

/* The first slot that is empty, or the first of all. */
static recent_name *free_slot(recent_names *names, uint32_t hash)
{
    recent_name *const first = first_slot(names, hash);
    for (recent_name *slot = first; slot < first + PROBES; slot++) {
        if (slot->number == 0)
            return slot;
    }
    return first;
}

/* Without memory the table stays as it is. */
static void grow(recent_names *names)
{
    recent_names grown = {.count = names->count * 2, .slots = make_slots(names->count * 2), .used = names->used};
    if (grown.slots == NULL)
        return;
    for (const recent_name *slot = names->slots; slot < names->slots + names->count + PROBES; slot++) {
        if (slot->number != 0)
            *free_slot(&grown, slot->hash) = *slot;
    }
    free(names->slots);
    *names = grown;
}

void recent_names_keep(recent_names *names, const inspection_table *table, const row_name *name,
                       const inspection *one)
{
    if (names->used >= names->count / 2 && names->count < SLOTS_MOST)
        grow(names);
    recent_name *slot = free_slot(names, (uint32_t)name->hash);
    names->used++;
    memcpy(slot->head, name, sizeof slot->head);
    slot->hash = (uint32_t)name->hash;
    slot->number = (uint32_t)(one - table->items + 1);
}
