/* SPDX-License-Identifier: Apache-2.0 */
/* Tables with open addressing: they begin small, grow while that helps, and then evict. */
#include "column/cache.h"

#include <stdlib.h>
#ifdef _WIN32
#include <malloc.h>
#endif

#define CELLS_FIRST_BITS 8u
#define RESULTS_FIRST_BITS 8u

/* The most of a table that is used before it grows, 1/8 and 1/16: so most lookups hit the first slot. */
#define CELL_SPACE 8
#define RESULT_SPACE 16

#define RESULTS_FIRST 16u

#define REST_SIZE (CELL_TEXT + 1 - CELL_SHORT)
#define LONG_TEXT 0x80u /* in place of the size of a short one */

#define TAKEN 255, 255, 255, 255, 255, 255, 255, 255
_Alignas(64) const unsigned char rodti_cell_masks[4 * (CELL_SHORT + 1)] = {TAKEN, TAKEN, TAKEN, TAKEN, 0};


/* What belongs into the last slot may be after it. */
static size_t slot_count(unsigned bits) { return ((size_t)1 << bits) + CACHE_PROBES; }

/* Zeros that begin with a line of the processor's cache. */
static void *make_lines(size_t count, size_t size)
{
    size_t bytes = (count * size + CACHE_LINE - 1) / CACHE_LINE * CACHE_LINE;
#ifdef _WIN32
    void *made = _aligned_malloc(bytes, CACHE_LINE);
#else
    void *made = aligned_alloc(CACHE_LINE, bytes);
#endif
    return made != NULL ? memset(made, 0, bytes) : NULL;
}

static void free_lines(void *made)
{
#ifdef _WIN32
    _aligned_free(made);
#else
    free(made);
#endif
}

/* --- Hash -------------------------------------------------------------------------------------------- */

static uint64_t hash_any(uint64_t a, uint64_t b) { return cache_hash_any(a, b); }

#ifdef CACHE_CRC

CACHE_CRC static uint64_t hash_crc(uint64_t a, uint64_t b) { return cache_hash_crc(a, b); }

cache_hasher *rodti_cache_hash(void) { return CACHE_HAS_CRC() ? hash_crc : hash_any; }

#else

cache_hasher *rodti_cache_hash(void) { return hash_any; }

#endif

/* --- Cells ------------------------------------------------------------------------------------------- */

static bool make_cells(cell_cache *cache, unsigned bits, bool has_long)
{
    cell_cache made = {.bits = bits, .most_bits = cache->most_bits, .hash = cache->hash};
    made.mask = (((size_t)1 << bits) - 1) * sizeof *made.cells;
    made.cells = make_lines(slot_count(bits), sizeof *made.cells);
    made.rest = has_long ? calloc(slot_count(bits), sizeof *made.rest) : NULL;
    if (made.cells == NULL || (has_long && made.rest == NULL)) {
        rodti_cell_cache_close(&made);
        return false;
    }
    for (size_t i = 0; i < slot_count(bits); i++)
        made.cells[i].key.words[1] = UINT64_MAX;
    *cache = made;
    return true;
}

bool rodti_cell_cache_open(cell_cache *cache, unsigned most_bits)
{
    *cache = (cell_cache){.most_bits = most_bits, .hash = rodti_cache_hash()};
    return make_cells(cache, most_bits < CELLS_FIRST_BITS ? most_bits : CELLS_FIRST_BITS, false);
}

void rodti_cell_cache_close(cell_cache *cache)
{
    free_lines(cache->cells);
    free(cache->rest);
    cache->cells = NULL;
    cache->rest = NULL;
}

/* A text of up to CELL_TEXT bytes as it is cached. */
typedef struct long_key {
    cell_key key;
    char rest[REST_SIZE];
} long_key;

static long_key key_of(const char *text, size_t size, unsigned tag)
{
    long_key made = {.rest = {0}};
    if (size <= CELL_SHORT) {
        made.key = cell_key_exact(text, size, cell_tag(tag));
        return made;
    }
    made.key = cell_key_exact(text, CELL_SHORT, 0);
    made.key.words[1] &= ~((uint64_t)0xFF << CELL_LAST_BYTE);
    made.key.words[1] |= (uint64_t)(LONG_TEXT | tag) << CELL_LAST_BYTE;
    memcpy(made.rest, text + CELL_SHORT, size - CELL_SHORT);
    return made;
}

static size_t cell_slot(const cell_cache *cache, const long_key *key)
{
    uint64_t rest[2];
    memcpy(rest, key->rest, sizeof rest);
    uint64_t hash = cache->hash(key->key.words[0], key->key.words[1]);
    if ((rest[0] | rest[1]) != 0)
        hash += cache->hash(rest[0], rest[1]) * 3;
    return (size_t)(hash & cache->mask) / sizeof *cache->cells;
}

static bool is_cell(const cell_cache *cache, size_t at, const long_key *key, size_t size)
{
    const cached_cell *cell = &cache->cells[at];
    return cell->meaning.slot_size == size + 1 && memcmp(&cell->key, &key->key, sizeof key->key) == 0 &&
           (size <= CELL_SHORT || memcmp(cache->rest[at], key->rest, REST_SIZE) == 0);
}

const cell_meaning *rodti_cell_cache_probe_next(const cached_cell *first, cell_key key)
{
    for (size_t i = 1; i < CACHE_PROBES && first[i - 1].meaning.slot_size != 0; i++)
        if (cell_key_equal(first[i].key, key))
            return &first[i].meaning;
    return NULL;
}

const cell_meaning *rodti_cell_cache_probe(const cell_cache *cache, const char *text, size_t size, unsigned tag)
{
    if (size > CELL_TEXT)
        return NULL;
    long_key key = key_of(text, size, tag);
    size_t first = cell_slot(cache, &key);
    for (size_t at = first; at < first + CACHE_PROBES && cache->cells[at].meaning.slot_size != 0; at++)
        if (is_cell(cache, at, &key, size))
            return &cache->cells[at].meaning;
    return NULL;
}

static void set_cell(cell_cache *cache, size_t at, const long_key *key, const cached_cell *cell)
{
    cache->cells[at] = *cell;
    cache->cells[at].key = key->key;
    if (cache->rest != NULL)
        memcpy(cache->rest[at], key->rest, REST_SIZE);
}

/* Puts a cell into the first of its slots that is empty. False: there is none. */
static bool put_cell(cell_cache *cache, const long_key *key, const cached_cell *cell)
{
    size_t first = cell_slot(cache, key);
    for (size_t at = first; at < first + CACHE_PROBES; at++) {
        if (cache->cells[at].meaning.slot_size == 0) {
            set_cell(cache, at, key, cell);
            cache->used++;
            return true;
        }
    }
    return false;
}

/* The same cells in tables of another size. */
static bool change_cells(cell_cache *cache, unsigned bits, bool has_long)
{
    cell_cache old = *cache;
    if (!make_cells(cache, bits, has_long))
        return false;
    for (size_t i = 0; i < slot_count(old.bits); i++) {
        long_key key = {.key = old.cells[i].key, .rest = {0}};
        if (old.rest != NULL)
            memcpy(key.rest, old.rest[i], REST_SIZE);
        if (old.cells[i].meaning.slot_size != 0)
            (void)put_cell(cache, &key, &old.cells[i]);
    }
    rodti_cell_cache_close(&old);
    return true;
}

void rodti_cell_cache_keep(cell_cache *cache, const char *text, size_t size, unsigned tag, cell_meaning meaning)
{
    if (size > CELL_TEXT)
        return;
    bool has_long = size > CELL_SHORT || cache->rest != NULL;
    bool grows = cache->used >= ((size_t)1 << cache->bits) / CELL_SPACE && cache->bits < cache->most_bits;
    if ((grows || has_long != (cache->rest != NULL)) && !change_cells(cache, cache->bits + grows, has_long))
        return;
    const long_key key = key_of(text, size, tag);
    meaning.slot_size = (uint32_t)size + 1;
    const cached_cell cell = {.meaning = meaning};
    /* Victims in turn: a cell that is still in use soon comes back. */
    if (!put_cell(cache, &key, &cell))
        set_cell(cache, cell_slot(cache, &key) + cache->next_victim++ % CACHE_PROBES, &key, &cell);
}

/* --- Results ----------------------------------------------------------------------------------------- */

static bool make_slots(result_cache *cache, unsigned bits)
{
    uint32_t *slots = calloc(slot_count(bits), sizeof *slots);
    if (slots == NULL)
        return false;
    cache->slots = slots;
    cache->bits = bits;
    cache->mask = ((size_t)1 << bits) - 1;
    return true;
}

/* Makes room for so many results. False: no memory, and those that are there stay. */
static bool make_room(result_cache *cache, uint32_t room)
{
    const size_t lines = (size_t)room + 1; /* one is written before it counts */
    uint32_t *hit_lines = realloc(cache->hit_lines, lines * sizeof *hit_lines);
    if (hit_lines == NULL)
        return false;
    cache->hit_lines = hit_lines;
    char *results = make_lines((size_t)room + 1, cache->width);
    if (results == NULL)
        return false;
    if (cache->results != NULL)
        memcpy(results, cache->results, (cache->used + 1) * cache->width);
    else
        ((cached_result *)(void *)results)->bits = KEY_NONE;
    free_lines(cache->results);
    cache->results = results;
    cache->room = room;
    return true;
}

/* An odd number of lines, so that the first lines of results are in all sets of the processor's cache. */
static size_t width_of(size_t bytes)
{
    return ((sizeof(cached_result) + bytes + CACHE_LINE - 1) / CACHE_LINE | 1) * CACHE_LINE;
}

bool rodti_result_cache_open(result_cache *cache, size_t bytes, uint32_t most)
{
    *cache = (result_cache){.most = most, .hash = rodti_cache_hash(), .width = width_of(bytes)};
    return make_slots(cache, RESULTS_FIRST_BITS) && make_room(cache, most < RESULTS_FIRST ? most : RESULTS_FIRST);
}

void rodti_result_cache_close(result_cache *cache)
{
    free(cache->slots);
    free_lines(cache->results);
    free(cache->hit_lines);
    cache->slots = NULL;
    cache->results = NULL;
    cache->hit_lines = NULL;
}

/* The slots of a key begin with it. */
static uint32_t *first_slot(const result_cache *cache, row_key key)
{
    return cache->slots + (size_t)(cache->hash(key.bits, key.value) & cache->mask);
}

cached_result *rodti_result_cache_probe(const result_cache *cache, row_key key)
{
    const uint32_t *slot = first_slot(cache, key);
    for (size_t i = 0; i < CACHE_PROBES; i++)
        if (result_has_key(result_at(cache, slot[i]), key))
            return result_at(cache, slot[i]);
    return NULL;
}

static uint32_t *find_empty(const result_cache *cache, row_key key)
{
    uint32_t *slot = first_slot(cache, key);
    for (size_t i = 0; i < CACHE_PROBES; i++)
        if (slot[i] == 0)
            return &slot[i];
    return NULL;
}

/* Victims in turn, those with hits left out. */
static uint32_t *find_victim(result_cache *cache, row_key key)
{
    uint32_t *slot = first_slot(cache, key);
    for (size_t i = 0; i < CACHE_PROBES; i++) {
        uint32_t *victim = slot + cache->next_victim++ % CACHE_PROBES;
        if (*victim != 0 && result_at(cache, *victim)->hits == 0)
            return victim;
    }
    return NULL;
}

/* Twice as many slots for the same results. One whose slots are taken, which is rare, is lost; its hits are not. */
static void grow_slots(result_cache *cache)
{
    const size_t count = slot_count(cache->bits);
    uint32_t *old = cache->slots;
    if (!make_slots(cache, cache->bits + 1))
        return;
    for (size_t i = 0; i < count; i++) {
        const cached_result *result = result_at(cache, old[i]);
        uint32_t *to = old[i] != 0 ? find_empty(cache, (row_key){result->bits, result->value}) : NULL;
        if (to != NULL)
            *to = old[i];
    }
    free(old);
}

/* Makes slots and results more, where that helps and there is memory. */
static void grow_results(result_cache *cache)
{
    const size_t slots = (size_t)1 << cache->bits;
    if (cache->used >= slots / RESULT_SPACE && slots / 2 < cache->most)
        grow_slots(cache);
    if (cache->used == cache->room && cache->room < cache->most)
        (void)make_room(cache, cache->room > cache->most / 2 ? cache->most : cache->room * 2);
}

void *rodti_result_cache_keep(result_cache *cache, row_key key)
{
    grow_results(cache);
    uint32_t *slot = cache->used < cache->room ? find_empty(cache, key) : NULL;
    if (slot != NULL)
        *slot = ++cache->used * (uint32_t)(cache->width / CACHE_LINE);
    else
        slot = find_victim(cache, key);
    if (slot == NULL)
        return NULL;
    cached_result *result = result_at(cache, *slot);
    *result = (cached_result){.bits = key.bits, .value = key.value};
    return result + 1;
}
