/* SPDX-License-Identifier: Apache-2.0 */
/* Structural index of CSV: 64 bytes at a time become bit masks of their delimiters and quotes, and from these come
 * the ends of cells, of rows and of the complete records of a buffer. There are three variants of one meaning:
 * portable, SSE2 and AVX2. They are inline, so that a loop over rows is compiled for one processor as a whole. The
 * reference is csv_reader.c, which also reads everything that is refused here. */
#ifndef CSV_INDEX_H
#define CSV_INDEX_H

#include "ui/compiler.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#if defined(__x86_64__) && defined(__GNUC__)
#define SCAN_X86 1
#include <immintrin.h>
#endif

/* Bytes of a block. As many bytes after the end of a row or a buffer must be readable, and room for so many more cell
 * ends than a row may have is needed. */
#define SCAN_STEP 64u
#define SCAN_GROUP 12u
#define SCAN_ENDS_MORE (SCAN_STEP + SCAN_GROUP)

/* Delimiters of a block, the first byte as the lowest bit. */
typedef struct delimiter_masks {
    uint64_t newline;
    uint64_t separator;
    uint64_t special; /* not 0 if a quote or a zero byte is in the block */
} delimiter_masks;

typedef delimiter_masks scan_finder(const char *bytes, char separator);

/* Writes down the positions of bits, counted from `base`, and returns how many they are. */
typedef uint32_t scan_writer(uint64_t bits, uint32_t base, uint32_t *positions);

/* Writes down where the cells of a row end, the last one at its line feed, and returns how many they are. 0: the
 * row is for csv_next, because its quotes are bad, a line ends within them, there is a zero byte, or it has more
 * than `most` cells. A line feed must follow. */
uint32_t split_row(const char *bytes, char separator, uint32_t most, uint32_t *ends);

/* Size of the complete records at the start of a buffer, up to the first that csv_next might read otherwise: one
 * with a bad quote, or one of several lines with `cells_max` bytes or more, because it could have too many cells. A
 * buffer of `cells_max` bytes or more may be left earlier, but only at the end of a record. */
size_t csv_complete_prefix(const char *bytes, size_t size, char separator, size_t cells_max);

/* --- Rows without quotes ------------------------------------------------------------------------------- */

/* Bytes that are split at once; there is room for as many cell ends and SCAN_ENDS_MORE. */
#ifndef SPLIT_BYTES /* a test makes it small */
#define SPLIT_BYTES 8192u
#endif

/* How many rows of so many cells come before the first that has fewer or more, which there must be. */
uint32_t csv_rows_of_width(const char *bytes, const uint32_t *ends, uint32_t cells);

ALWAYS_INLINE uint32_t scan_count_bits(uint64_t bits)
{
#if defined(__GNUC__)
    return (uint32_t)__builtin_popcountll(bits);
#else
    uint32_t count = 0;
    for (; bits != 0; bits &= bits - 1)
        count++;
    return count;
#endif
}

/* True if each of these rows has its line feed after its last cell. */
ALWAYS_INLINE bool end_in_lines(const char *bytes, const uint32_t *ends, uint32_t cells, uint32_t rows)
{
    bool good = true;
    for (uint32_t i = 1; i <= rows; i++)
        good &= bytes[ends[(size_t)i * cells - 1]] == '\n';
    return good;
}

/* Writes down the ends of the rows at the start that have `cells` cells each, counted from the first byte. Blocks are
 * taken one after the other wherever rows end, since no processor predicts how long a row is. Returns the number of
 * rows. 0: the next row has other cells, a quote or a zero byte in its blocks, or does not fit. */
ALWAYS_INLINE uint32_t split_rows(const char *bytes, size_t size, char separator, uint32_t cells, uint32_t *ends,
                                  scan_finder *find, scan_writer *write)
{
    const uint32_t blocks = (uint32_t)(size < SPLIT_BYTES ? size : SPLIT_BYTES) / SCAN_STEP;
    uint32_t count = 0;
    uint32_t lines = 0;
    for (uint32_t i = 0; i < blocks; i++) {
        const delimiter_masks found = find(bytes + (size_t)i * SCAN_STEP, separator);
        if (found.special != 0)
            break;
        count += write(found.separator | found.newline, i * SCAN_STEP, ends + count);
        lines += scan_count_bits(found.newline);
    }
    const uint32_t rows = count / cells;
    return lines == rows && end_in_lines(bytes, ends, cells, rows) ? rows : csv_rows_of_width(bytes, ends, cells);
}

/* --- Quotes -------------------------------------------------------------------------------------------- */

/* All that counts among 64 bytes. */
typedef struct byte_masks {
    uint64_t newline;
    uint64_t separator;
    uint64_t quote;
    uint64_t carriage_return;
    uint64_t zero;
} byte_masks;

typedef byte_masks scan_byte_finder(const char *bytes, char separator);

/* Bit i of the result is the parity of the bits 0 to i. */
typedef uint64_t scan_parity(uint64_t bits);

/* What the blocks so far say about the next one. */
typedef struct quote_state {
    uint64_t inside;    /* all ones: it begins within quotes */
    uint64_t start;     /* 1: a quote may come first, because a cell begins, or the last byte was a closing quote */
    uint64_t closed;    /* 1: the last byte was a closing quote */
    uint64_t closed_cr; /* 1: the last bytes were a closing quote and a carriage return */
} quote_state;

#define QUOTES_BEFORE_RECORD ((quote_state){.start = 1})

/* Delimiters outside quotes, and bytes that must not follow a closing quote. */
typedef struct cell_ends {
    uint64_t delimiters;
    uint64_t bad;
} cell_ends;

/* Quotes without those within a cell that does not begin with one, such as 3 5/8": these are plain bytes. A
 * doubled quote closes and opens again. */
ALWAYS_INLINE uint64_t drop_plain_quotes(uint64_t quotes, uint64_t starts, const quote_state *state)
{
    uint64_t kept = 0;
    uint64_t inside = state->inside & 1;
    for (uint64_t left = quotes; left != 0; left &= left - 1) {
        uint64_t quote = left & (0 - left);
        if (inside == 0 && (starts & quote) == 0)
            continue;
        kept |= quote;
        starts |= inside != 0 ? quote << 1 : 0;
        inside ^= 1;
    }
    return kept;
}

/* Finds the ends of cells in the next block. */
ALWAYS_INLINE cell_ends find_cell_ends(quote_state *state, const byte_masks *of, scan_parity *parity)
{
    const uint64_t delimiters = of->newline | of->separator;
    const uint64_t starts = delimiters << 1 | state->start;
    if ((state->inside | state->closed | state->closed_cr | (of->quote & starts)) == 0) {
        state->start = delimiters >> 63;
        return (cell_ends){delimiters, 0};
    }
    uint64_t quotes = of->quote;
    uint64_t inside = parity(quotes) ^ state->inside; /* with the opening quotes, without the closing ones */
    uint64_t closing = quotes & ~inside;
    uint64_t ends = delimiters & ~inside;
    if ((quotes & inside & ~((ends | closing) << 1 | state->start)) != 0) {
        quotes = drop_plain_quotes(quotes, starts, state);
        inside = parity(quotes) ^ state->inside;
        closing = quotes & ~inside;
        ends = delimiters & ~inside;
    }
    const uint64_t after = closing << 1 | state->closed;
    const uint64_t after_cr = (after & of->carriage_return) << 1 | state->closed_cr;
    const uint64_t bad = (after & ~(ends | quotes | of->carriage_return)) | (after_cr & ~of->newline);
    *state = (quote_state){.inside = 0 - (inside >> 63), .start = (ends | closing) >> 63, .closed = closing >> 63,
                           .closed_cr = (after & of->carriage_return) >> 63};
    return (cell_ends){ends, bad};
}

/* --- Every processor ----------------------------------------------------------------------------------- */

/* The bytes of a word that are zero, as the high bit of each; exact for every byte. */
ALWAYS_INLINE uint64_t scan_zero_bytes(uint64_t word)
{
    const uint64_t low = UINT64_C(0x7F7F7F7F7F7F7F7F);
    return ~(((word & low) + low) | word | low);
}

ALWAYS_INLINE uint64_t scan_equal_8(const char *bytes, char wanted)
{
    uint64_t word;
    memcpy(&word, bytes, sizeof word);
    word = scan_zero_bytes(word ^ UINT64_C(0x0101010101010101) * (unsigned char)wanted);
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
        found.newline |= scan_equal_8(bytes + i, '\n') << i;
        found.separator |= scan_equal_8(bytes + i, separator) << i;
        found.special |= scan_equal_8(bytes + i, '"') | scan_equal_8(bytes + i, '\0');
    }
    return found;
}

ALWAYS_INLINE byte_masks scan_bytes_8(const char *bytes, char separator)
{
    byte_masks found = {0, 0, 0, 0, 0};
    for (unsigned i = 0; i < SCAN_STEP; i += 8) {
        found.newline |= scan_equal_8(bytes + i, '\n') << i;
        found.separator |= scan_equal_8(bytes + i, separator) << i;
        found.quote |= scan_equal_8(bytes + i, '"') << i;
        found.carriage_return |= scan_equal_8(bytes + i, '\r') << i;
        found.zero |= scan_equal_8(bytes + i, '\0') << i;
    }
    return found;
}

ALWAYS_INLINE uint64_t scan_parity_shifts(uint64_t bits)
{
    for (unsigned shift = 1; shift < 64; shift *= 2)
        bits ^= bits << shift;
    return bits;
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

ALWAYS_INLINE uint32_t scan_write(uint64_t bits, uint32_t base, uint32_t *positions)
{
    uint32_t count = 0;
    for (; bits != 0; bits &= bits - 1)
        positions[count++] = base + scan_lowest_bit(bits);
    return count;
}

/* --- x86-64 -------------------------------------------------------------------------------------------- */

#ifdef SCAN_X86

ALWAYS_INLINE uint64_t scan_equal_16(const char *bytes, char wanted)
{
    uint64_t bits = 0;
    for (unsigned i = 0; i < SCAN_STEP; i += 16) {
        __m128i loaded = _mm_loadu_si128((const __m128i *)(const void *)(bytes + i));
        bits |= (uint64_t)(uint32_t)_mm_movemask_epi8(_mm_cmpeq_epi8(loaded, _mm_set1_epi8(wanted))) << i;
    }
    return bits;
}

ALWAYS_INLINE delimiter_masks scan_find_16(const char *bytes, char separator)
{
    return (delimiter_masks){scan_equal_16(bytes, '\n'), scan_equal_16(bytes, separator),
                             scan_equal_16(bytes, '"') | scan_equal_16(bytes, '\0')};
}

ALWAYS_INLINE byte_masks scan_bytes_16(const char *bytes, char separator)
{
    return (byte_masks){scan_equal_16(bytes, '\n'), scan_equal_16(bytes, separator), scan_equal_16(bytes, '"'),
                        scan_equal_16(bytes, '\r'), scan_equal_16(bytes, '\0')};
}

/* What a function must be marked with in which the following are used, and whether this processor can run it. */
#define SCAN_AVX2 __attribute__((target("avx2,bmi,popcnt,pclmul,sse4.2")))
bool scan_has_avx2(void);

/* 64 bytes. */
typedef struct scan_halves {
    __m256i low;
    __m256i high;
} scan_halves;

SCAN_AVX2 ALWAYS_INLINE scan_halves scan_load_32(const char *bytes)
{
    return (scan_halves){_mm256_loadu_si256((const __m256i *)(const void *)bytes),
                         _mm256_loadu_si256((const __m256i *)(const void *)(bytes + 32))};
}

SCAN_AVX2 ALWAYS_INLINE uint64_t scan_equal_32(scan_halves in, char wanted)
{
    __m256i all = _mm256_set1_epi8(wanted);
    return (uint32_t)_mm256_movemask_epi8(_mm256_cmpeq_epi8(in.low, all)) |
           (uint64_t)(uint32_t)_mm256_movemask_epi8(_mm256_cmpeq_epi8(in.high, all)) << 32;
}

/* The smaller one of a byte and its difference from a quote is zero only for a quote and a zero byte. */
SCAN_AVX2 ALWAYS_INLINE uint64_t scan_special_32(scan_halves in)
{
    __m256i quotes = _mm256_set1_epi8('"');
    __m256i low = _mm256_min_epu8(in.low, _mm256_xor_si256(in.low, quotes));
    __m256i high = _mm256_min_epu8(in.high, _mm256_xor_si256(in.high, quotes));
    __m256i zeros = _mm256_cmpeq_epi8(_mm256_min_epu8(low, high), _mm256_setzero_si256());
    return (uint32_t)_mm256_movemask_epi8(zeros);
}

SCAN_AVX2 ALWAYS_INLINE delimiter_masks scan_find_32(const char *bytes, char separator)
{
    scan_halves in = scan_load_32(bytes);
    return (delimiter_masks){scan_equal_32(in, '\n'), scan_equal_32(in, separator), scan_special_32(in)};
}

SCAN_AVX2 ALWAYS_INLINE byte_masks scan_bytes_32(const char *bytes, char separator)
{
    scan_halves in = scan_load_32(bytes);
    return (byte_masks){scan_equal_32(in, '\n'), scan_equal_32(in, separator), scan_equal_32(in, '"'),
                        scan_equal_32(in, '\r'), scan_equal_32(in, '\0')};
}

/* A carry-less product with all ones is the parity of every prefix. */
SCAN_AVX2 ALWAYS_INLINE uint64_t scan_parity_product(uint64_t bits)
{
    __m128i product = _mm_clmulepi64_si128(_mm_cvtsi64_si128((long long)bits), _mm_set1_epi8((char)0xFF), 0);
    return (uint64_t)_mm_cvtsi128_si64(product);
}

/* So many positions are written whether they are set or not, and then counted: rows of one file have the same number of
 * cells, so the loop nearly always has the same length and is not mispredicted. */
SCAN_AVX2 ALWAYS_INLINE uint32_t scan_write_group(uint64_t bits, uint32_t base, uint32_t *positions)
{
    uint32_t count = (uint32_t)__builtin_popcountll(bits);
    do {
        for (unsigned i = 0; i < SCAN_GROUP; i++) {
            positions[i] = base + (uint32_t)_tzcnt_u64(bits);
            bits &= bits - 1;
        }
        positions += SCAN_GROUP;
    } while (bits != 0);
    return count;
}

#endif

/* The variants of csv_index.c, for tests. */
typedef uint32_t row_splitter(const char *bytes, char separator, uint32_t most, uint32_t *ends);
typedef size_t prefix_finder(const char *bytes, size_t size, char separator, size_t cells_max);

typedef struct csv_index_variant {
    row_splitter *split_row;
    prefix_finder *complete_prefix;
} csv_index_variant;

/* Variant 0 is portable; gives false for one that this processor does not have. */
bool csv_index_get_variant(size_t number, csv_index_variant *out);

#endif
