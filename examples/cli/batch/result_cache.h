/* SPDX-License-Identifier: Apache-2.0 */
/* What was met before: cells by their text, and answers by what the cells of a row come to. It decides nothing. */
#ifndef MEMO_H
#define MEMO_H

#include "io/csv_index.h"
#include "ui/compiler.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

/* What a row counts for in a summary, in few bytes. */
typedef struct batch_tally {
    uint64_t reasons;
    char size[4]; /* of the chamber, as in rodt_chamber */
    uint16_t used; /* 1 more than the stroke in half percents of the limit, rounded up; 0 = one is missing */
    uint8_t verdict;
    uint8_t family;
    uint8_t stroke_class;
    bool undated; /* no day of its own */
} batch_tally;

/* --- Cells ------------------------------------------------------------------------------------------- */

/* Longest text of a cell that is kept; one of less than half of it is found faster. Texts with zero bytes are not kept,
 * so that a text and the zero bytes behind it are no other text. */
#define MEMO_TEXT 32u
#define MEMO_HALF (MEMO_TEXT / 2)

/* Places in which something that was met can stand, one behind the other; nearly all stand in the first. */
#define MEMO_PLACES 8u

/* A cell that was met. The marks of the cells of a row are put together by "or", their units by addition. */
typedef struct memo_cell {
    uint64_t text[2]; /* the first MEMO_HALF bytes, filled up with zero bytes; where nothing is, no short text */
    uint64_t mark;
    uint32_t size;    /* memo_size of the text; 0 = nothing is here */
    uint32_t units;
} memo_cell;

typedef uint64_t memo_hasher(uint64_t a, uint64_t b);

/* The cells of one column, found by a hash. */
typedef struct memo_cells {
    memo_cell *cells;
    uint64_t (*more)[2]; /* the second half of each text; NULL = all are short */
    size_t places;       /* bits of a hash that are an offset from the first place, in bytes */
    unsigned bits;       /* of a place */
    unsigned most_bits;
    memo_hasher *hash;
    uint32_t used;
    uint32_t turn;       /* which of the places is forgotten next */
} memo_cells;

/* So many bits has a place at most. */
bool memo_cells_open(memo_cells *of, unsigned most_bits);
void memo_cells_close(memo_cells *of);

/* Keeps a cell of up to MEMO_TEXT bytes; others may be forgotten for it. Nothing happens without memory. MEMO_TEXT
 * bytes of the text must be readable. */
void memo_cells_keep(memo_cells *of, const char *text, const memo_cell *cell);

/* Bytes that are taken, and behind them bytes that are not: loaded from the middle on, a mask. */
extern const unsigned char memo_mask[2 * MEMO_TEXT];

/* What is kept as the size: `tag`, a multiple of 65536, tells apart texts that are read in different units. */
#define MEMO_TAG 0xFFFF0000u
ALWAYS_INLINE uint32_t memo_size(uint32_t size, uint32_t tag) { return (size + 1u) | tag; }

/* Half of a text as words; MEMO_HALF bytes must be readable. */
ALWAYS_INLINE void memo_load(const char *text, const unsigned char *mask, uint64_t words[2])
{
    uint64_t masks[2];
    memcpy(words, text, MEMO_HALF);
    memcpy(masks, mask, MEMO_HALF);
    words[0] &= masks[0];
    words[1] &= masks[1];
}

/* Every bit is as good as chance: both halves of a long product are folded together. A sum of products would not do:
 * what is met differs in a few digits, whose products stand in rows, and rows fill all places of one key. */
ALWAYS_INLINE uint64_t memo_hash_any(uint64_t a, uint64_t b)
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

/* What a processor with SCAN_AVX2 has for it: a sum that no two texts of a few digits share. */
#ifdef SCAN_X86
SCAN_AVX2 ALWAYS_INLINE uint64_t memo_hash_sum(uint64_t a, uint64_t b)
{
    return _mm_crc32_u64(_mm_crc32_u64(0, a), b);
}
#endif

/* The one of this processor, which all tables go by. */
memo_hasher *memo_hash(void);

/* The cell with a text of any size, wherever it stands. */
const memo_cell *memo_cells_find_on(const memo_cells *of, const char *text, uint32_t size, uint32_t tag);

/* The same for a text without zero bytes, where no tags were kept but 0 if it is not `tagged`; `hash` is that of
 * memo_hash. MEMO_TEXT bytes must be readable. */
ALWAYS_INLINE const memo_cell *memo_cells_find(const memo_cells *of, const char *text, uint32_t size, bool tagged,
                                               uint32_t tag, memo_hasher *hash)
{
    if (size >= MEMO_HALF)
        return memo_cells_find_on(of, text, size, tag);
    uint64_t words[2];
    memo_load(text, memo_mask + MEMO_TEXT - size, words);
    const char *place = (const char *)of->cells + (hash(words[0], words[1]) & of->places);
    const memo_cell *cell = (const memo_cell *)(const void *)place;
    bool same = ((cell->text[0] ^ words[0]) | (cell->text[1] ^ words[1])) == 0;
    if (same && (!tagged || ((cell->size ^ tag) & MEMO_TAG) == 0))
        return cell;
    return memo_cells_find_on(of, text, size, tag);
}

/* --- Answers ----------------------------------------------------------------------------------------- */

/* No row has such a mark. */
#define MEMO_NO_MARK UINT64_MAX

#define MEMO_TAIL 192u /* a multiple of what is copied at once */

#define MEMO_LINE 64u /* bytes of a line of the cache */

/* An answer that was given; most of what is looked at stands in the first two lines of a cache. */
typedef struct memo_answer {
    _Alignas(MEMO_LINE) uint64_t mark; /* MEMO_NO_MARK = nothing is here */
    uint32_t units;
    uint32_t met;   /* rows since the answers were last counted */
    uint32_t size;  /* of the tail */
    char tail[MEMO_TAIL]; /* all that is written behind a row, but its line end */
    batch_tally tally;
} memo_answer;

/* Places are told apart by bits of a hash that are an offset already. */
#define MEMO_IS_POWER(size) (((size) & ((size) - 1)) == 0)
_Static_assert(MEMO_IS_POWER(sizeof(memo_cell)) && MEMO_IS_POWER(sizeof(memo_answer)), "an offset is a set of bits");

/* Takes what was counted: a tally that stands for so many rows. False: no memory. */
typedef bool memo_sink(void *context, const batch_tally *tally, uint64_t rows);

typedef struct memo_answers {
    memo_answer *answers;
    size_t places;     /* bits of a hash that are an offset from the first place, in bytes */
    unsigned bits;     /* of a place */
    memo_hasher *hash;
    uint32_t most;
    uint32_t used;
    uint32_t turn;     /* which of the places is forgotten next */
    uint32_t *met;     /* places of answers that were met since they were last counted, in the order of that */
    uint32_t met_count;
} memo_answers;

/* At most so many answers are kept. */
bool memo_answers_open(memo_answers *of, uint32_t most);
void memo_answers_close(memo_answers *of);

/* Keeps an answer; others may be forgotten for it, so count first. */
void memo_answers_keep(memo_answers *of, const memo_answer *answer);

/* Gives what was met to the sink and begins anew. */
bool memo_answers_count(memo_answers *of, memo_sink *sink, void *context);

/* The answer, wherever it stands, or NULL. */
memo_answer *memo_answers_find_on(const memo_answers *of, uint64_t mark, uint32_t units);

ALWAYS_INLINE memo_answer *memo_answers_find(const memo_answers *of, uint64_t mark, uint32_t units, memo_hasher *hash)
{
    char *place = (char *)of->answers + (hash(mark, units) & of->places);
    memo_answer *answer = (memo_answer *)(void *)place;
    return answer->mark == mark && answer->units == units ? answer : memo_answers_find_on(of, mark, units);
}

/* Counts one row more of an answer that was found. */
ALWAYS_INLINE void memo_answers_meet(memo_answers *of, memo_answer *answer)
{
    of->met[of->met_count] = (uint32_t)(answer - of->answers);
    of->met_count += answer->met++ == 0;
}

#endif
