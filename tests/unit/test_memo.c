/* SPDX-License-Identifier: Apache-2.0 */
/* What `rodtravel batch` met before must be found again: a table that forgets judges everything anew. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "batch/result_cache.h"

#include <stdio.h>

#define DAY_BITS 15u

/* Both ways to find a text, of which the fast one may be used for texts without zero bytes only. */
static const memo_cell *find(const memo_cells *cells, const char *text, uint32_t size, uint32_t tag)
{
    const memo_cell *found = memo_cells_find_on(cells, text, size, tag);
    if (memchr(text, '\0', size) == NULL) {
        assert_ptr_equal(memo_cells_find(cells, text, size, true, tag, memo_hash()), found);
    }
    return found;
}

/* Keeps the day, or looks for it. */
static bool meet_day(memo_cells *cells, unsigned year, unsigned month, unsigned day, bool keep)
{
    char text[MEMO_TEXT] = "";
    int size = snprintf(text, sizeof text, "%04u-%02u-%02u", year, month, day);
    memo_cell cell = {.size = memo_size((uint32_t)size, 0), .mark = year * 10000u + month * 100u + day};
    if (keep)
        memo_cells_keep(cells, text, &cell);
    const memo_cell *found = find(cells, text, (uint32_t)size, 0);
    assert_true(found == NULL || found->mark == cell.mark);
    return found != NULL;
}

static unsigned meet_days(memo_cells *cells, bool keep)
{
    unsigned met = 0;
    for (unsigned year = 2006; year < 2026; year++)
        for (unsigned month = 1; month <= 12; month++)
            for (unsigned day = 1; day <= 28; day++)
                met += meet_day(cells, year, month, day, keep);
    return met;
}

/* Nearly all: a place may have one more than it can hold. */
static bool nearly(unsigned met, unsigned all) { return met <= all && met >= all - all / 100; }

static void test_days_of_twenty_years_are_kept(void **state)
{
    memo_cells cells;
    (void)state;
    assert_true(memo_cells_open(&cells, DAY_BITS));
    assert_int_equal(meet_days(&cells, true), 20 * 12 * 28);
    assert_true(nearly(meet_days(&cells, false), 20 * 12 * 28));
    memo_cells_close(&cells);
}

/* Texts of every length, whose signs are all alike, in two units. Those of zero bytes are not kept; none is ever taken
 * for another. */
static void test_each_text_is_found_as_it_was(void **state)
{
    static const char signs[] = {'x', 0, (char)0xFF};
    memo_cells cells;
    unsigned met = 0;
    (void)state;
    assert_true(memo_cells_open(&cells, 13));
    for (int again = 0; again < 2; again++)
        for (uint32_t size = 0; size <= MEMO_TEXT + 2; size++)
            for (uint32_t i = 0; i < 2 * sizeof signs; i++) {
                char text[2 * MEMO_TEXT];
                uint32_t tag = i % 2 << 16;
                memset(text, 'y', sizeof text);
                memset(text, signs[i / 2], size);
                memo_cell cell = {.size = memo_size(size, tag), .mark = 1 + size * 8 + (size > 0 ? i : i % 2)};
                const memo_cell *found = find(&cells, text, size, tag);
                if (again == 0 && size <= MEMO_TEXT && found == NULL)
                    memo_cells_keep(&cells, text, &cell);
                assert_true(found == NULL || found->mark == cell.mark);
                assert_true(found == NULL || size == 0 || signs[i / 2] != 0);
                met += again == 1 && found != NULL && signs[i / 2] != 0;
            }
    assert_true(met >= 2 * 2 * MEMO_TEXT - 8);
    memo_cells_close(&cells);
}

static const memo_answer *find_answer(const memo_answers *answers, uint64_t mark, uint32_t units)
{
    const memo_answer *found = memo_answers_find_on(answers, mark, units);
    assert_ptr_equal(memo_answers_find(answers, mark, units, memo_hash()), found);
    return found;
}

/* The fast hash and the one of every processor know nothing of each other, so each is looked at by itself. */
static unsigned count_places(memo_hasher *hash)
{
    static bool taken[1u << 12];
    unsigned count = 0;
    memset(taken, 0, sizeof taken);
    for (unsigned text = 0; text < 1000; text++) { /* three digits */
        uint64_t word = (text / 100 + 48) | (uint64_t)(text / 10 % 10 + 48) << 16 | (uint64_t)(text % 10 + 48) << 40;
        bool *place = &taken[hash(word, 0) >> 5 & 0xFFFu];
        count += !*place;
        *place = true;
    }
    return count;
}

static uint64_t hash_of_every_processor(uint64_t a, uint64_t b) { return memo_hash_any(a, b); }

/* As many as chance would hit of 4096 places is 887. */
static void test_texts_are_spread(void **state)
{
    (void)state;
    assert_true(count_places(memo_hash()) > 850);
    assert_true(count_places(hash_of_every_processor) > 850);
}

/* Marks as the columns of a plain file make them: a few numbers side by side, and strokes in sixteenths. */
static unsigned meet_answers(memo_answers *answers, unsigned shift, bool keep)
{
    unsigned met = 0;
    for (uint32_t stroke = 0; stroke < 44; stroke++)
        for (uint64_t kind = 0; kind < 90; kind++) {
            uint64_t mark = kind % 5 | kind / 5 % 2 << shift | kind / 10 % 3 << (shift + 5) | kind / 30 << (shift + 9);
            memo_answer answer = {.mark = mark, .units = stroke * 317500u, .size = 1};
            if (keep)
                memo_answers_keep(answers, &answer);
            met += find_answer(answers, mark, stroke * 317500u) != NULL;
        }
    return met;
}

static void test_answers_of_a_plain_file_are_kept(void **state)
{
    (void)state;
    for (unsigned shift = 9; shift < 24; shift++) {
        memo_answers answers;
        assert_true(memo_answers_open(&answers, 32768));
        assert_int_equal(meet_answers(&answers, shift, true), 44 * 90);
        assert_true(nearly(meet_answers(&answers, shift, false), 44 * 90));
        memo_answers_close(&answers);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_days_of_twenty_years_are_kept),
                                       cmocka_unit_test(test_texts_are_spread),
                                       cmocka_unit_test(test_each_text_is_found_as_it_was),
                                       cmocka_unit_test(test_answers_of_a_plain_file_are_kept)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
