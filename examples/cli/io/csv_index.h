/* SPDX-License-Identifier: Apache-2.0 */
/* Parts a row into its cells, 64 bytes at a time: bytes become sets of bits, whose places are then written down. There
 * are three ways of one meaning; they are inline, so that a loop over rows is compiled for a processor as a whole. */
#ifndef SCAN_H
#define SCAN_H

#include "ui/compiler.h"

#include <stdint.h>
#include <string.h>

#if defined(__x86_64__) && defined(__GNUC__)
#define SCAN_X86 1
#include <immintrin.h>
#endif

/* So many bytes behind the line feed of a row must be readable, and so many ends more than a row may have are
 * written. */
#define SCAN_STEP 64u
#define SCAN_ENDS_MORE (SCAN_STEP + 8u)

/* Where signs stand among 64 bytes, the first as the lowest bit. */
typedef struct delimiter_masks {
    uint64_t feeds;
    uint64_t separators;
    uint64_t odd; /* not 0 if a quote or a zero byte is among them */
} delimiter_masks;

/* Finds the signs; writes down their places, counted from `base`, and returns how many they are. */
typedef delimiter_masks scan_finder(const char *bytes, char separator);
typedef uint32_t scan_writer(uint64_t bits, uint32_t base, uint32_t *places);

/* A row sign by sign, as csv_next would part it. 0: its quotes are bad, a line ends within them, there is a zero byte,
 * or there are more than `most` cells. A line feed must follow. */
uint32_t split_row_scalar(const char *bytes, char separator, uint32_t most, uint32_t *ends);

/* The same, many signs at a time: writes down where the cells of the row end that begins here, the last at its line
 * feed, and returns how many they are. */
ALWAYS_INLINE uint32_t split_row(const char *bytes, char separator, uint32_t most, uint32_t *ends, scan_finder *find,
                                scan_writer *write)
{
    delimiter_masks found = find(bytes, separator);
    uint64_t inside = found.feeds ^ (found.feeds - 1); /* up to the first line feed; all, if there is none */
    uint32_t count = write((found.separators | found.feeds) & inside, 0, ends);
    uint64_t odd = found.odd;
    for (uint32_t at = SCAN_STEP; found.feeds == 0 && count <= most; at += SCAN_STEP) {
        found = find(bytes + at, separator);
        inside = found.feeds ^ (found.feeds - 1);
        count += write((found.separators | found.feeds) & inside, at, ends + count);
        odd |= found.odd;
    }
    if (odd != 0)
        return split_row_scalar(bytes, separator, most, ends);
    return count <= most ? count : 0;
}

/* --- Every processor ----------------------------------------------------------------------------------- */

/* The bytes of a word that are zero, as the high bit of each; exact for every byte. */
ALWAYS_INLINE uint64_t scan_zero_bytes(uint64_t word)
{
    const uint64_t low = UINT64_C(0x7F7F7F7F7F7F7F7F);
    return ~(((word & low) + low) | word | low);
}

ALWAYS_INLINE uint64_t scan_equal_8(const char *bytes, char sign)
{
    uint64_t word;
    memcpy(&word, bytes, sizeof word);
    word = scan_zero_bytes(word ^ UINT64_C(0x0101010101010101) * (unsigned char)sign);
    unsigned char marked[8];
    uint64_t bits = 0;
    if (word == 0)
        return 0;
    memcpy(marked, &word, sizeof marked);
    for (unsigned i = 0; i < 8; i++)
        bits |= (uint64_t)(marked[i] >> 7) << i;
    return bits;
}

ALWAYS_INLINE delimiter_masks scan_find_8(const char *bytes, char separator)
{
    delimiter_masks found = {0, 0, 0};
    for (unsigned i = 0; i < SCAN_STEP; i += 8) {
        found.feeds |= scan_equal_8(bytes + i, '\n') << i;
        found.separators |= scan_equal_8(bytes + i, separator) << i;
        found.odd |= scan_equal_8(bytes + i, '"') | scan_equal_8(bytes + i, '\0');
    }
    return found;
}

ALWAYS_INLINE unsigned scan_lowest_bit(uint64_t bits)
{
#if defined(__GNUC__)
    return (unsigned)__builtin_ctzll(bits);
#else
    unsigned at = 0;
    while ((bits >> at & 1) == 0)
        at++;
    return at;
#endif
}

ALWAYS_INLINE uint32_t scan_write(uint64_t bits, uint32_t base, uint32_t *places)
{
    uint32_t count = 0;
    for (; bits != 0; bits &= bits - 1)
        places[count++] = base + scan_lowest_bit(bits);
    return count;
}

/* --- x86-64 -------------------------------------------------------------------------------------------- */

#ifdef SCAN_X86

ALWAYS_INLINE uint64_t scan_equal_16(const char *bytes, char sign)
{
    uint64_t bits = 0;
    for (unsigned i = 0; i < SCAN_STEP; i += 16) {
        __m128i loaded = _mm_loadu_si128((const __m128i *)(const void *)(bytes + i));
        bits |= (uint64_t)(uint32_t)_mm_movemask_epi8(_mm_cmpeq_epi8(loaded, _mm_set1_epi8(sign))) << i;
    }
    return bits;
}

ALWAYS_INLINE delimiter_masks scan_find_16(const char *bytes, char separator)
{
    return (delimiter_masks){scan_equal_16(bytes, '\n'), scan_equal_16(bytes, separator),
                        scan_equal_16(bytes, '"') | scan_equal_16(bytes, '\0')};
}

/* What a function must be marked with in which these are used. */
#define SCAN_AVX2 __attribute__((target("avx2,bmi,popcnt,sse4.2")))
#define SCAN_HAS_AVX2()                                                                                                \
    (__builtin_cpu_supports("avx2") && __builtin_cpu_supports("bmi") && __builtin_cpu_supports("popcnt") && \
     __builtin_cpu_supports("sse4.2"))

/* 64 bytes. */
typedef struct scan_halves {
    __m256i low;
    __m256i high;
} scan_halves;

SCAN_AVX2 ALWAYS_INLINE uint64_t scan_equal_32(scan_halves in, char sign)
{
    __m256i signs = _mm256_set1_epi8(sign);
    return (uint32_t)_mm256_movemask_epi8(_mm256_cmpeq_epi8(in.low, signs)) |
           (uint64_t)(uint32_t)_mm256_movemask_epi8(_mm256_cmpeq_epi8(in.high, signs)) << 32;
}

/* The smaller one of a byte and its difference from a quote is zero only for a quote and a zero byte. */
SCAN_AVX2 ALWAYS_INLINE uint64_t scan_odd_32(scan_halves in)
{
    __m256i quotes = _mm256_set1_epi8('"');
    __m256i low = _mm256_min_epu8(in.low, _mm256_xor_si256(in.low, quotes));
    __m256i high = _mm256_min_epu8(in.high, _mm256_xor_si256(in.high, quotes));
    __m256i zeros = _mm256_cmpeq_epi8(_mm256_min_epu8(low, high), _mm256_setzero_si256());
    return (uint32_t)_mm256_movemask_epi8(zeros);
}

SCAN_AVX2 ALWAYS_INLINE delimiter_masks scan_find_32(const char *bytes, char separator)
{
    scan_halves in = {_mm256_loadu_si256((const __m256i *)(const void *)bytes),
                      _mm256_loadu_si256((const __m256i *)(const void *)(bytes + 32))};
    return (delimiter_masks){scan_equal_32(in, '\n'), scan_equal_32(in, separator), scan_odd_32(in)};
}

/* Eight places are written whether they are signs or not, and then counted: rows of one file have the same number of
 * cells, so the loop nearly always has the same length and is not mispredicted. */
SCAN_AVX2 ALWAYS_INLINE uint32_t scan_write_8(uint64_t bits, uint32_t base, uint32_t *places)
{
    uint32_t count = (uint32_t)__builtin_popcountll(bits);
    do {
        for (unsigned i = 0; i < 8; i++) {
            places[i] = base + (uint32_t)_tzcnt_u64(bits);
            bits &= bits - 1;
        }
        places += 8;
    } while (bits != 0);
    return count;
}

#endif

#endif
