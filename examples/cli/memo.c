/* SPDX-License-Identifier: Apache-2.0 */
/* Tables of what was met: they begin small, grow while it helps, and then forget. */
#include "memo.h"

#include <stdlib.h>

#define CELLS_FIRST 256u
#define CELLS_MOST 8192u
#define ANSWERS_FIRST 1024u

#define TAKEN 255, 255, 255, 255, 255, 255, 255, 255
const unsigned char memo_mask[2 * MEMO_TEXT] = {TAKEN, TAKEN, TAKEN, TAKEN, 0};

/* --- Cells ------------------------------------------------------------------------------------------- */

bool memo_cells_open(memo_cells *of)
{
    *of = (memo_cells){.cells = calloc(CELLS_FIRST, sizeof *of->cells), .count = CELLS_FIRST};
    return of->cells != NULL;
}

void memo_cells_close(memo_cells *of)
{
    free(of->cells);
    of->cells = NULL;
}

/* Puts a cell into the first of its places that is free. False: there is none. */
static bool put_cell(memo_cells *of, const memo_cell *cell)
{
    uint32_t first = memo_place(of, cell->text, cell->size);
    for (uint32_t i = 0; i < MEMO_PLACES; i++) {
        memo_cell *place = &of->cells[(first + i) & (of->count - 1)];
        if (place->size != 0)
            continue;
        *place = *cell;
        of->used++;
        return true;
    }
    return false;
}

/* Forgets everything: what is still in use is soon met again. */
static void forget_cells(memo_cells *of)
{
    memset(of->cells, 0, of->count * sizeof *of->cells);
    of->used = 0;
}

/* Most cells should stand in the first of their places: so the tables stay thin. */
static void grow_cells(memo_cells *of)
{
    memo_cells old = *of;
    memo_cell *grown = calloc((size_t)old.count * 2, sizeof *grown);
    if (grown == NULL)
        return;
    *of = (memo_cells){.cells = grown, .count = old.count * 2, .wide = old.wide};
    for (uint32_t i = 0; i < old.count; i++)
        if (old.cells[i].size != 0)
            (void)put_cell(of, &old.cells[i]);
    free(old.cells);
}

void memo_cells_keep(memo_cells *of, const char *text, const memo_cell *cell)
{
    memo_cell kept = *cell;
    memset(kept.text, 0, sizeof kept.text);
    uint32_t size = (cell->size & 0xFFFFu) - 1u;
    memcpy(kept.text, text, size);
    if (size > MEMO_TEXT / 2)
        of->wide = true; /* short texts keep their places: the words that are new are zero */
    if (of->used >= of->count / 8 && of->count < CELLS_MOST)
        grow_cells(of);
    if (put_cell(of, &kept))
        return;
    forget_cells(of);
    (void)put_cell(of, &kept);
}

/* --- Answers ----------------------------------------------------------------------------------------- */

static bool make_answers(memo_answers *of, uint32_t count)
{
    memo_answer *answers = calloc(count, sizeof *answers);
    uint32_t *met = calloc(count, sizeof *met);
    if (answers == NULL || met == NULL) {
        free(answers);
        free(met);
        return false;
    }
    of->answers = answers;
    of->met = met;
    of->count = count;
    of->used = of->met_count = 0;
    return true;
}

bool memo_answers_open(memo_answers *of, uint32_t most)
{
    *of = (memo_answers){.most = most};
    return make_answers(of, most < ANSWERS_FIRST ? most : ANSWERS_FIRST);
}

void memo_answers_close(memo_answers *of)
{
    free(of->answers);
    free(of->met);
    of->answers = NULL;
    of->met = NULL;
}

static bool put_answer(memo_answers *of, const memo_answer *answer)
{
    uint32_t first = memo_answer_place(of, answer->mark, answer->units);
    for (uint32_t i = 0; i < MEMO_PLACES; i++) {
        memo_answer *place = &of->answers[(first + i) & (of->count - 1)];
        if (place->size != 0)
            continue;
        *place = *answer;
        place->met = 0;
        of->used++;
        return true;
    }
    return false;
}

static void forget_answers(memo_answers *of)
{
    memset(of->answers, 0, of->count * sizeof *of->answers);
    of->used = 0;
}

static void grow_answers(memo_answers *of)
{
    memo_answers old = *of;
    if (!make_answers(of, old.count * 2))
        return;
    for (uint32_t i = 0; i < old.count; i++)
        if (old.answers[i].size != 0)
            (void)put_answer(of, &old.answers[i]);
    memo_answers_close(&old);
}

void memo_answers_keep(memo_answers *of, const memo_answer *answer)
{
    if (of->used >= of->count / 4 && of->count < of->most)
        grow_answers(of);
    if (put_answer(of, answer))
        return;
    forget_answers(of);
    (void)put_answer(of, answer);
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
