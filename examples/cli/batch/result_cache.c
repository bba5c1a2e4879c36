/* SPDX-License-Identifier: Apache-2.0 */
/* Tables of what was met: they begin small, grow while it helps, and then forget one for another. */
#include "batch/result_cache.h"

#include <stdlib.h>

#define CELLS_FIRST_BITS 8u
#define ANSWERS_FIRST_BITS 9u

_Static_assert(MEMO_LINE % sizeof(memo_cell) == 0, "a cell stands in one line");

#define TAKEN 255, 255, 255, 255, 255, 255, 255, 255
const unsigned char memo_mask[2 * MEMO_TEXT] = {TAKEN, TAKEN, TAKEN, TAKEN, 0};

/* One place of so many is taken before the table grows: then nearly everything stands in its first place. */
#define CELL_SPACE 8
#define ANSWER_SPACE 4

static size_t first_places(unsigned bits) { return (size_t)1 << bits; }

/* What belongs into the last place may stand behind it. */
static size_t places(unsigned bits) { return first_places(bits) + MEMO_PLACES; }

/* Zeros. Nothing in it stands in two lines of a cache, if a line has a whole number of what is in it. */
static void *make_lines(size_t count, size_t size)
{
    size_t bytes = (count * size + MEMO_LINE - 1) / MEMO_LINE * MEMO_LINE;
    void *made = aligned_alloc(MEMO_LINE, bytes);
    return made != NULL ? memset(made, 0, bytes) : NULL;
}

/* --- Hash ---------------------------------------------------------------------------------------------- */

static uint64_t hash_any(uint64_t a, uint64_t b) { return memo_hash_any(a, b); }

#ifdef SCAN_X86

SCAN_AVX2 static uint64_t hash_sum(uint64_t a, uint64_t b) { return memo_hash_sum(a, b); }

memo_hasher *memo_hash(void) { return SCAN_HAS_AVX2() ? hash_sum : hash_any; }

#else

memo_hasher *memo_hash(void) { return hash_any; }

#endif

/* --- Cells ------------------------------------------------------------------------------------------- */

static bool make_cells(memo_cells *of, unsigned bits, bool more)
{
    memo_cells made = {.bits = bits, .most_bits = of->most_bits, .hash = of->hash};
    made.places = (first_places(bits) - 1) * sizeof *made.cells;
    made.cells = make_lines(places(bits), sizeof *made.cells);
    made.more = more ? calloc(places(bits), sizeof *made.more) : NULL;
    if (made.cells == NULL || (more && made.more == NULL)) {
        memo_cells_close(&made);
        return false;
    }
    for (size_t i = 0; i < places(bits); i++)
        made.cells[i].text[1] = UINT64_MAX;
    *of = made;
    return true;
}

bool memo_cells_open(memo_cells *of, unsigned most_bits)
{
    *of = (memo_cells){.most_bits = most_bits, .hash = memo_hash()};
    return make_cells(of, CELLS_FIRST_BITS, false);
}

void memo_cells_close(memo_cells *of)
{
    free(of->cells);
    free(of->more);
    of->cells = NULL;
    of->more = NULL;
}

/* A text as words, all of it. */
static void load_long(const char *text, uint32_t size, uint64_t words[4])
{
    memo_load(text, memo_mask + MEMO_TEXT - size, words);
    memo_load(text + MEMO_HALF, memo_mask + MEMO_TEXT + MEMO_HALF - size, words + 2);
}

static size_t place_of(const memo_cells *of, const uint64_t words[4])
{
    uint64_t behind = (words[2] | words[3]) != 0 ? of->hash(words[2], words[3]) * 3 : 0;
    return (size_t)(((of->hash(words[0], words[1]) + behind) & of->places) / sizeof *of->cells);
}

const memo_cell *memo_cells_find_on(const memo_cells *of, const char *text, uint32_t size, uint32_t tag)
{
    uint64_t words[4];
    if (size > MEMO_TEXT)
        return NULL;
    load_long(text, size, words);
    size_t first = place_of(of, words);
    for (size_t at = first; at < first + MEMO_PLACES && of->cells[at].size != 0; at++)
        if (of->cells[at].size == memo_size(size, tag) && memcmp(of->cells[at].text, words, MEMO_HALF) == 0 &&
            (size <= MEMO_HALF || memcmp(of->more[at], words + 2, MEMO_HALF) == 0))
            return &of->cells[at];
    return NULL;
}

/* Puts a cell into the first of its places that is free. False: there is none. */
static bool put_cell(memo_cells *of, const uint64_t words[4], const memo_cell *cell)
{
    size_t first = place_of(of, words);
    for (size_t at = first; at < first + MEMO_PLACES; at++) {
        if (of->cells[at].size != 0)
            continue;
        of->cells[at] = *cell;
        memcpy(of->cells[at].text, words, MEMO_HALF);
        if (of->more != NULL)
            memcpy(of->more[at], words + 2, MEMO_HALF);
        of->used++;
        return true;
    }
    return false;
}

/* Puts a cell where another one was, each of the places in turn: what is still in use is soon met again. */
static void replace_cell(memo_cells *of, const uint64_t words[4], const memo_cell *cell)
{
    size_t at = place_of(of, words) + of->turn++ % MEMO_PLACES;
    of->cells[at] = *cell;
    memcpy(of->cells[at].text, words, MEMO_HALF);
    if (of->more != NULL)
        memcpy(of->more[at], words + 2, MEMO_HALF);
}

/* Other tables of other sizes, with what stands in these. */
static bool change_cells(memo_cells *of, unsigned bits, bool more)
{
    memo_cells old = *of;
    if (!make_cells(of, bits, more))
        return false;
    for (size_t i = 0; i < places(old.bits); i++) {
        uint64_t words[4] = {old.cells[i].text[0], old.cells[i].text[1], 0, 0};
        if (old.more != NULL)
            memcpy(words + 2, old.more[i], MEMO_HALF);
        if (old.cells[i].size != 0)
            (void)put_cell(of, words, &old.cells[i]);
    }
    memo_cells_close(&old);
    return true;
}

void memo_cells_keep(memo_cells *of, const char *text, const memo_cell *cell)
{
    uint64_t words[4];
    unsigned bits = of->bits;
    uint32_t size = (cell->size & ~MEMO_TAG) - 1u;
    bool more = size > MEMO_HALF || of->more != NULL;
    bool grows = of->used >= first_places(of->bits) / CELL_SPACE && bits < of->most_bits;
    if (memchr(text, '\0', size) != NULL)
        return;
    if ((grows || more != (of->more != NULL)) && !change_cells(of, bits + grows, more))
        return;
    load_long(text, size, words);
    if (!put_cell(of, words, cell))
        replace_cell(of, words, cell);
}

/* --- Answers ----------------------------------------------------------------------------------------- */

static bool make_answers(memo_answers *of, unsigned bits)
{
    memo_answer *answers = make_lines(places(bits), sizeof *answers);
    uint32_t *met = calloc(places(bits) + 1, sizeof *met); /* one is written before it counts */
    if (answers == NULL || met == NULL) {
        free(answers);
        free(met);
        return false;
    }
    for (size_t i = 0; i < places(bits); i++)
        answers[i].mark = MEMO_NO_MARK;
    of->answers = answers;
    of->met = met;
    of->bits = bits;
    of->places = (first_places(bits) - 1) * sizeof *answers;
    of->used = of->met_count = 0;
    return true;
}

bool memo_answers_open(memo_answers *of, uint32_t most)
{
    *of = (memo_answers){.most = most, .hash = memo_hash()};
    return make_answers(of, ANSWERS_FIRST_BITS);
}

void memo_answers_close(memo_answers *of)
{
    free(of->answers);
    free(of->met);
    of->answers = NULL;
    of->met = NULL;
}

static size_t answer_place(const memo_answers *of, uint64_t mark, uint32_t units)
{
    return (size_t)((of->hash(mark, units) & of->places) / sizeof *of->answers);
}

memo_answer *memo_answers_find_on(const memo_answers *of, uint64_t mark, uint32_t units)
{
    memo_answer *answer = of->answers + answer_place(of, mark, units);
    for (uint32_t i = 0; i < MEMO_PLACES && answer->mark != MEMO_NO_MARK; i++, answer++)
        if (answer->mark == mark && answer->units == units)
            return answer;
    return NULL;
}

static bool put_answer(memo_answers *of, const memo_answer *answer)
{
    size_t first = answer_place(of, answer->mark, answer->units);
    for (size_t at = first; at < first + MEMO_PLACES; at++) {
        if (of->answers[at].mark != MEMO_NO_MARK)
            continue;
        of->answers[at] = *answer;
        of->answers[at].met = 0;
        of->used++;
        return true;
    }
    return false;
}

static void replace_answer(memo_answers *of, const memo_answer *answer)
{
    size_t first = answer_place(of, answer->mark, answer->units);
    memo_answer *at = &of->answers[first + of->turn++ % MEMO_PLACES];
    *at = *answer;
    at->met = 0;
}

static void grow_answers(memo_answers *of)
{
    memo_answers old = *of;
    if (!make_answers(of, old.bits + 1))
        return;
    for (size_t i = 0; i < places(old.bits); i++)
        if (old.answers[i].mark != MEMO_NO_MARK)
            (void)put_answer(of, &old.answers[i]);
    memo_answers_close(&old);
}

void memo_answers_keep(memo_answers *of, const memo_answer *answer)
{
    if (of->used >= first_places(of->bits) / ANSWER_SPACE && first_places(of->bits) * 2 <= of->most)
        grow_answers(of);
    if (!put_answer(of, answer))
        replace_answer(of, answer);
}

bool memo_answers_count(memo_answers *of, memo_sink *sink, void *context)
{
    for (uint32_t i = 0; i < of->met_count; i++) {
        memo_answer *answer = &of->answers[of->met[i]];
        if (!sink(context, &answer->tally, answer->met))
            return false;
        answer->met = 0;
    }
    of->met_count = 0;
    return true;
}
