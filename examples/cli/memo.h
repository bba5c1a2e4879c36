/* SPDX-License-Identifier: Apache-2.0 */
/* What was met before: cells by their text, and answers by what the cells of a row come to. It decides nothing. */
#ifndef MEMO_H
#define MEMO_H

#include "inline.h"

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

/* Longest text of a cell that is kept; one of up to half of it is found faster. */
#define MEMO_TEXT 32u
#define MEMO_SHORT (MEMO_TEXT / 2)

/* Places in which something that was met can stand, one behind the other; nearly all stand in the first. */
#define MEMO_PLACES 8u

/* A cell that was met. The marks of the cells of a row are put together by "or", their units by addition. */
typedef struct memo_cell {
    uint64_t text[2]; /* the first MEMO_SHORT bytes, filled up with zero bytes */
    uint64_t mark;
    uint32_t size;    /* memo_size of the text; 0 = nothing is here */
    uint32_t units;
} memo_cell;

/* The cells of one column, found by a hash. */
typedef struct memo_cells {
    memo_cell *cells;
    uint64_t (*more)[2]; /* the second half of each text; NULL = all are short */
    unsigned shift;      /* 64 less the bits of a place */
    unsigned most_bits;
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
ALWAYS_INLINE uint32_t memo_size(uint32_t size, uint32_t tag) { return (size + 1u) | tag; }

/* Half of a text as words; MEMO_SHORT bytes must be readable. */
ALWAYS_INLINE void memo_load(const char *text, const unsigned char *mask, uint64_t words[2])
{
    uint64_t masks[2];
    memcpy(words, text, MEMO_SHORT);
    memcpy(masks, mask, MEMO_SHORT);
    words[0] &= masks[0];
    words[1] &= masks[1];
}

/* The upper bits are as good as chance: both halves of a long product are folded together. A sum of products would not
 * do: what is met differs in a few digits, whose products stand in rows, and rows fill all places of one key. */
ALWAYS_INLINE uint64_t memo_hash(uint64_t a, uint64_t b)
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

/* The cell with a text of any size, wherever it stands. */
const memo_cell *memo_cells_find_on(const memo_cells *of, const char *text, uint32_t size, uint32_t tag);

/* The cell with this text, or NULL. MEMO_TEXT bytes must be readable. */
ALWAYS_INLINE const memo_cell *memo_cells_find(const memo_cells *of, const char *text, uint32_t size, uint32_t tag)
{
    if (size > MEMO_SHORT)
        return memo_cells_find_on(of, text, size, tag);
    uint64_t words[2];
    memo_load(text, memo_mask + MEMO_TEXT - size, words);
    const memo_cell *cell = of->cells + (memo_hash(words[0], words[1]) >> of->shift);
    if (((cell->text[0] ^ words[0]) | (cell->text[1] ^ words[1]) | (cell->size ^ memo_size(size, tag))) == 0)
        return cell;
    return cell->size != 0 ? memo_cells_find_on(of, text, size, tag) : NULL;
}

/* --- Answers ----------------------------------------------------------------------------------------- */

#define MEMO_TAIL 192u /* a multiple of what is copied at once */

#define MEMO_LINE 64u /* bytes of a line of the cache */

/* An answer that was given; most of what is looked at stands in the first two lines of a cache. */
typedef struct memo_answer {
    _Alignas(MEMO_LINE) uint64_t mark;
    uint32_t units;
    uint32_t met;   /* rows since the answers were last counted */
    uint32_t size;  /* of the tail; 0 = nothing is here */
    char tail[MEMO_TAIL]; /* all that is written behind a row, but its line end */
    batch_tally tally;
} memo_answer;

/* Takes what was counted: a tally that stands for so many rows. False: no memory. */
typedef bool memo_sink(void *context, const batch_tally *tally, uint64_t rows);

typedef struct memo_answers {
    memo_answer *answers;
    unsigned shift;    /* 64 less the bits of a place */
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

ALWAYS_INLINE memo_answer *memo_answers_find(const memo_answers *of, uint64_t mark, uint32_t units)
{
    memo_answer *answer = of->answers + (memo_hash(mark, units) >> of->shift);
    if (answer->mark == mark && answer->units == units && answer->size != 0)
        return answer;
    return answer->size != 0 ? memo_answers_find_on(of, mark, units) : NULL;
}

/* Counts one row more of an answer that was found. */
ALWAYS_INLINE void memo_answers_meet(memo_answers *of, memo_answer *answer)
{
    of->met[of->met_count] = (uint32_t)(answer - of->answers);
    of->met_count += answer->met++ == 0;
}

#endif
