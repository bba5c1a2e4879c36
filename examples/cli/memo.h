/* SPDX-License-Identifier: Apache-2.0 */
/* What was met before: cells by their text, and answers by what the cells of a row come to. It decides nothing. */
#ifndef MEMO_H
#define MEMO_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

/* What a row counts for in a summary, in few bytes. */
typedef struct batch_tally {
    uint64_t reasons;
    char size[4]; /* of the chamber, as in rodt_chamber */
    uint16_t used; /* stroke by limit in half percents, rounded up; 0 = one of the two is missing */
    uint8_t verdict;
    uint8_t family;
    uint8_t stroke_class;
    bool undated; /* no day of its own */
} batch_tally;

/* --- Cells ------------------------------------------------------------------------------------------- */

/* Longest text of a cell that is kept; one of up to half of it is found faster. */
#define MEMO_TEXT 32u

/* A cell that was met. The marks of the cells of a row are put together by "or", their units by addition. */
typedef struct memo_cell {
    uint64_t text[MEMO_TEXT / 8]; /* filled up with zero bytes */
    uint64_t mark;
    uint32_t size; /* of the text and 1, and above it the tag of the unit that it was read in; 0 = nothing is here */
    uint32_t units;
    uint32_t tag;  /* what it tells the cells behind it: the unit of the row */
    uint32_t spare[3];
} memo_cell;

/* Places in which something that was met can stand, one behind the other; nearly all stand in the first. */
#define MEMO_PLACES 8u

/* The cells of one column, found by a hash. */
typedef struct memo_cells {
    memo_cell *cells;
    uint32_t count; /* a power of two */
    uint32_t used;
    bool wide;      /* some text is longer than half of MEMO_TEXT */
} memo_cells;

bool memo_cells_open(memo_cells *of);
void memo_cells_close(memo_cells *of);

/* Keeps a cell of up to MEMO_TEXT bytes; another one may be forgotten for it. Nothing happens without memory. */
void memo_cells_keep(memo_cells *of, const char *text, const memo_cell *cell);

/* Bytes that are taken, and behind them bytes that are not: loaded from the middle on, a mask. */
extern const unsigned char memo_mask[2 * MEMO_TEXT];

/* A text as words. MEMO_TEXT bytes (half of them if it is not wide) must be readable. */
static inline void memo_load(const char *text, uint32_t size, bool wide, uint64_t words[MEMO_TEXT / 8])
{
    uint64_t mask[MEMO_TEXT / 8];
    size_t bytes = wide ? MEMO_TEXT : MEMO_TEXT / 2;
    memcpy(words, text, bytes);
    memcpy(mask, memo_mask + MEMO_TEXT - size, bytes);
    for (size_t i = 0; i < bytes / 8; i++)
        words[i] &= mask[i];
}

static inline uint32_t memo_place(const memo_cells *of, const uint64_t words[MEMO_TEXT / 8], uint32_t size)
{
    uint64_t sum = words[0] * UINT64_C(0x9E3779B97F4A7C15) + words[1] * UINT64_C(0xC2B2AE3D27D4EB4F) +
                   (uint64_t)size * UINT64_C(0x165667B19E3779F9);
    if (of->wide)
        sum += words[2] * UINT64_C(0xD6E8FEB86659FD93) + words[3] * UINT64_C(0xA0761D6478BD642F);
    sum ^= sum >> 32;
    return (uint32_t)(sum * UINT64_C(0xE7037ED1A0B428DB) >> 32) & (of->count - 1);
}

static inline bool memo_is(const memo_cell *cell, const uint64_t words[MEMO_TEXT / 8], uint32_t size, bool wide)
{
    uint64_t other = (cell->text[0] ^ words[0]) | (cell->text[1] ^ words[1]) | (cell->size ^ size);
    if (wide)
        other |= (cell->text[2] ^ words[2]) | (cell->text[3] ^ words[3]);
    return other == 0;
}

/* What is kept as the size: `tag` is a multiple of 65536. */
static inline uint32_t memo_size(uint32_t size, uint32_t tag) { return (size + 1u) | tag; }

/* The cell with this text, or NULL. */
static inline const memo_cell *memo_cells_find(const memo_cells *of, const char *text, uint32_t size, uint32_t tag)
{
    uint64_t words[MEMO_TEXT / 8];
    if (size > (of->wide ? MEMO_TEXT : MEMO_TEXT / 2))
        return NULL;
    memo_load(text, size, of->wide, words);
    uint32_t kept = memo_size(size, tag);
    uint32_t place = memo_place(of, words, kept);
    for (uint32_t i = 0; i < MEMO_PLACES; i++) {
        const memo_cell *cell = &of->cells[(place + i) & (of->count - 1)];
        if (memo_is(cell, words, kept, of->wide))
            return cell;
        if (cell->size == 0)
            break;
    }
    return NULL;
}

/* --- Answers ----------------------------------------------------------------------------------------- */

#define MEMO_TAIL 160u

typedef struct memo_answer {
    uint64_t mark;
    uint32_t units;
    uint32_t met;   /* rows since the answers were last counted */
    batch_tally tally;
    uint32_t size;  /* of the tail; 0 = nothing is here */
    char tail[MEMO_TAIL]; /* all that is written behind a row, but its line end */
} memo_answer;

/* Takes what was counted: a tally that stands for so many rows. False: no memory. */
typedef bool memo_sink(void *context, const batch_tally *tally, uint64_t rows);

typedef struct memo_answers {
    memo_answer *answers;
    uint32_t count;   /* a power of two */
    uint32_t most;
    uint32_t used;
    uint32_t *met;    /* places of answers that were met since they were last counted, in the order of that */
    uint32_t met_count;
} memo_answers;

/* At most so many answers are kept. */
bool memo_answers_open(memo_answers *of, uint32_t most);
void memo_answers_close(memo_answers *of);

/* Keeps an answer; others may be forgotten for it, so count first. */
void memo_answers_keep(memo_answers *of, const memo_answer *answer);

/* Gives what was met to the sink and begins anew. */
bool memo_answers_count(memo_answers *of, memo_sink *sink, void *context);

static inline uint32_t memo_answer_place(const memo_answers *of, uint64_t mark, uint32_t units)
{
    uint64_t sum = mark * UINT64_C(0x9E3779B97F4A7C15) + units * UINT64_C(0xC2B2AE3D27D4EB4F);
    sum ^= sum >> 32;
    return (uint32_t)(sum * UINT64_C(0xE7037ED1A0B428DB) >> 32) & (of->count - 1);
}

static inline memo_answer *memo_answers_find(const memo_answers *of, uint64_t mark, uint32_t units)
{
    uint32_t place = memo_answer_place(of, mark, units);
    for (uint32_t i = 0; i < MEMO_PLACES; i++) {
        memo_answer *answer = &of->answers[(place + i) & (of->count - 1)];
        if (answer->size == 0)
            break;
        if (answer->mark == mark && answer->units == units)
            return answer;
    }
    return NULL;
}

/* Counts one row more of an answer that was found. */
static inline void memo_answers_meet(memo_answers *of, memo_answer *answer)
{
    if (answer->met++ == 0)
        of->met[of->met_count++] = (uint32_t)(answer - of->answers);
}

#endif
