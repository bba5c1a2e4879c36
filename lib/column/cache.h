/* SPDX-License-Identifier: Apache-2.0 */
/* Two caches: cells by their text, and results by the key of a row. They decide nothing. Lookups are inline, so that a
 * loop over cells is compiled for a processor as a whole. */
#ifndef RODT_CACHE_H
#define RODT_CACHE_H

#include <string.h>

#include "core/common.h"

#if defined(__x86_64__) && defined(__GNUC__)
#include <nmmintrin.h>
#define CACHE_CRC __attribute__((target("sse4.2")))
#define CACHE_HAS_CRC() PROCESSOR_HAS("sse4.2")
#endif

/* Slots in which an entry can be, one after the other; nearly all entries are in the first. */
#define CACHE_PROBES 8u

/* --- Hash -------------------------------------------------------------------------------------------- */

typedef uint64_t cache_hasher(uint64_t a, uint64_t b);

/* 64x64-bit multiply, halves folded. A linear combination would cluster: texts differ in a few digits. */
INLINE uint64_t cache_hash_any(uint64_t a, uint64_t b)
{
    a ^= UINT64_C(0x9E3779B97F4A7C15);
    b ^= UINT64_C(0xC2B2AE3D27D4EB4F);
#if defined(__SIZEOF_INT128__)
    __extension__ unsigned __int128 product = (unsigned __int128)a * b;
    return (uint64_t)product ^ (uint64_t)(product >> 64);
#else
    uint64_t upper = (a >> 32) * (b & UINT32_MAX);
    uint64_t lower = (a & UINT32_MAX) * (b & UINT32_MAX);
    uint64_t other = (a & UINT32_MAX) * (b >> 32) + (upper & UINT32_MAX) + (lower >> 32);
    return a * b ^ ((a >> 32) * (b >> 32) + (upper >> 32) + (other >> 32));
#endif
}

/* The CRC32C instruction, where the processor has it. */
#ifdef CACHE_CRC
CACHE_CRC INLINE uint64_t cache_hash_crc(uint64_t a, uint64_t b)
{
    return _mm_crc32_u64(_mm_crc32_u64(0, a), b);
}
#endif

/* The one of this processor, which all tables use. */
cache_hasher *rodti_cache_hash(void);

/* --- Cells ------------------------------------------------------------------------------------------- */

/* Longest text that is cached; one of up to CELL_SHORT bytes is found faster. */
#define CELL_TEXT 31u
#define CELL_SHORT 15u

/* What a text means in its column, or in rows of one unit: `tag` tells those apart. The key bits of the cells of a row
 * are combined by "or", their values by addition. */
typedef struct cell_meaning {
    uint64_t key_bits;
    uint32_t value;
    uint32_t slot_size; /* the cache's own: size of the text, 1 more; 0 = the slot is empty */
} cell_meaning;

/* A text of up to CELL_SHORT bytes, filled up with zero bytes, then its size and tag in one byte, so that two words are
 * all there is to compare. */
typedef struct cell_key {
    uint64_t words[2];
} cell_key;

typedef struct cached_cell {
    cell_key key;      /* of a longer text: its first CELL_SHORT bytes and a byte that no short text has */
    cell_meaning meaning;
} cached_cell;
_Static_assert(sizeof(cached_cell) == 32, "cells do not cross lines of the processor's cache");

typedef struct cell_cache {
    cached_cell *cells;
    char (*rest)[CELL_TEXT + 1 - CELL_SHORT]; /* of longer texts; NULL = there are none */
    size_t mask;        /* bits of a hash that are the offset of a slot in bytes */
    cache_hasher *hash;
    unsigned bits;      /* of a slot's number */
    unsigned most_bits;
    uint32_t used;
    uint32_t next_victim;
} cell_cache;

/* At most 1 << most_bits slots. False: no memory. */
bool rodti_cell_cache_open(cell_cache *cache, unsigned most_bits);
void rodti_cell_cache_close(cell_cache *cache);

/* Caches a text of up to CELL_TEXT bytes; another may be evicted. A longer one is not cached, nor is any without
 * memory. tag is below 8. */
void rodti_cell_cache_keep(cell_cache *cache, const char *text, size_t size, unsigned tag, cell_meaning meaning);

/* The slow path: a text of any size. NULL = not cached. */
const cell_meaning *rodti_cell_cache_probe(const cell_cache *cache, const char *text, size_t size, unsigned tag);

#if defined(__BYTE_ORDER__) && __BYTE_ORDER__ == __ORDER_LITTLE_ENDIAN__
#define CELL_LAST_BYTE 56 /* where the last byte of a word in memory is */
#else
#define CELL_LAST_BYTE 0
#endif

/* The tag as it is in a key, and back. */
INLINE uint64_t cell_tag(unsigned tag) { return (uint64_t)tag << (CELL_LAST_BYTE + 4); }
INLINE unsigned cell_tag_number(uint64_t tag) { return (unsigned)(tag >> (CELL_LAST_BYTE + 4)) & 7u; }

/* Bytes of the text of a short key. */
INLINE unsigned cell_key_size(cell_key key) { return (unsigned)(key.words[1] >> CELL_LAST_BYTE) & 15u; }

/* Bytes that are taken, then bytes that are not: read from the middle on, a mask. */
extern const unsigned char rodti_cell_masks[4 * (CELL_SHORT + 1)];

/* Key of a short text of which CELL_SHORT + 1 bytes can be read. */
INLINE cell_key cell_key_padded(const char *text, size_t size, uint64_t tag)
{
    cell_key key;
    uint64_t mask[2];
    memcpy(&key, text, sizeof key);
    memcpy(mask, rodti_cell_masks + 2 * (CELL_SHORT + 1) - size, sizeof mask);
    key.words[0] &= mask[0];
    key.words[1] = (key.words[1] & mask[1]) | (uint64_t)size << CELL_LAST_BYTE | tag;
    return key;
}

/* The same without reading on after the text. */
INLINE cell_key cell_key_exact(const char *text, size_t size, uint64_t tag)
{
    cell_key key = {{0, 0}};
#if CELL_LAST_BYTE == 56
    uint32_t half = 0;
    if (size >= 8) {
        memcpy(&key.words[0], text, 8);
        memcpy(&key.words[1], text + size - 8, 8);
        key.words[1] = key.words[1] >> 1 >> (8 * (15 - size) + 7);
    } else if (size >= 4) {
        memcpy(&half, text, 4);
        key.words[0] = half;
        memcpy(&half, text + size - 4, 4);
        key.words[0] |= (uint64_t)half << (8 * (size - 4));
    } else {
        for (size_t i = 0; i < size; i++)
            key.words[0] |= (uint64_t)(unsigned char)text[i] << (8 * i);
    }
#else
    if (size > 0)
        memcpy(&key, text, size);
#endif
    key.words[1] |= (uint64_t)size << CELL_LAST_BYTE | tag;
    return key;
}

INLINE bool cell_key_equal(cell_key a, cell_key b)
{
    return ((a.words[0] ^ b.words[0]) | (a.words[1] ^ b.words[1])) == 0;
}

/* A short text that is not in its first slot. */
const cell_meaning *rodti_cell_cache_probe_next(const cached_cell *first, cell_key key);

/* A short text; NULL = not cached. `hash` is that of rodti_cache_hash. */
INLINE const cell_meaning *cell_cache_find(const cell_cache *cache, cell_key key, cache_hasher *hash)
{
    const char *slot = (const char *)cache->cells + (hash(key.words[0], key.words[1]) & cache->mask);
    const cached_cell *cell = (const cached_cell *)(const void *)slot;
    return cell_key_equal(cell->key, key) ? &cell->meaning : rodti_cell_cache_probe_next(cell, key);
}

/* --- Results ----------------------------------------------------------------------------------------- */

/* The key of no row. */
#define KEY_NONE UINT64_MAX

/* Rows of one key have one result. */
typedef struct row_key {
    uint64_t bits;
    uint32_t value;
} row_key;

/* A result; the bytes of its user follow. */
typedef struct cached_result {
    uint64_t bits; /* of its key */
    uint32_t value;
    uint32_t hits; /* since they were last given out */
} cached_result;

/* Results lie side by side, and their slots say where: so few slots need be in use, and little memory is touched. */
typedef struct result_cache {
    uint32_t *slots;     /* the line of the processor's cache with which a result begins; 0 = the slot is empty */
    size_t mask;         /* bits of a hash that are the number of a slot */
    cache_hasher *hash;
    char *results;       /* the first has no key */
    size_t width;        /* of a result */
    unsigned bits;       /* of a slot's number */
    uint32_t most;       /* results */
    uint32_t room;       /* for results */
    uint32_t used;
    uint32_t next_victim;
    uint32_t *hit_lines; /* of those with hits, in the order of their first */
    uint32_t hit_count;
} result_cache;

#define CACHE_LINE 64u

/* So many bytes belong to the user of a result, and there are at most so many results. False: no memory. Close it in
 * either case. */
bool rodti_result_cache_open(result_cache *cache, size_t bytes, uint32_t most);
void rodti_result_cache_close(result_cache *cache);

/* Gives the bytes of a result that is not cached yet; another may be evicted, but none with hits. NULL = no room. */
void *rodti_result_cache_keep(result_cache *cache, row_key key);

/* The slow path: a result in any slot. NULL = not cached. */
cached_result *rodti_result_cache_probe(const result_cache *cache, row_key key);

INLINE cached_result *result_at(const result_cache *cache, uint32_t line)
{
    return (cached_result *)(void *)(cache->results + (size_t)line * CACHE_LINE);
}

/* The result that a key has, if it has one. */
INLINE cached_result *result_cache_first(const result_cache *cache, row_key key, cache_hasher *hash)
{
    return result_at(cache, cache->slots[hash(key.bits, key.value) & cache->mask]);
}

INLINE bool result_has_key(const cached_result *result, row_key key)
{
    return result->bits == key.bits && result->value == key.value;
}

INLINE cached_result *result_cache_find(const result_cache *cache, row_key key, cache_hasher *hash)
{
    cached_result *result = result_cache_first(cache, key, hash);
    return result_has_key(result, key) ? result : rodti_result_cache_probe(cache, key);
}

/* Counts one row more of a result that was found. */
INLINE void result_cache_count(result_cache *cache, cached_result *result)
{
    cache->hit_lines[cache->hit_count] = (uint32_t)((size_t)((char *)result - cache->results) / CACHE_LINE);
    cache->hit_count += result->hits++ == 0;
}

#endif
