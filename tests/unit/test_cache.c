/* SPDX-License-Identifier: Apache-2.0 */
/* What is cached is found again, and nothing is taken for it: a cache that loses its entries judges everything anew. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "column/cache.h"

#include <stdio.h>

#define DAY_BITS 15u

/* Both ways to make a key, and to find a cell, agree. */
static const cell_meaning *find(const cell_cache *cells, const char *text, uint32_t size, unsigned tag)
{
    const cell_meaning *found = rodti_cell_cache_probe(cells, text, size, tag);
    if (size <= CELL_SHORT) {
        cell_key exact = cell_key_exact(text, size, cell_tag(tag));
        cell_key padded = cell_key_padded(text, size, cell_tag(tag));
        assert_memory_equal(&exact, &padded, sizeof exact);
        const cell_meaning *fast = cell_cache_find(cells, exact, rodti_cache_hash());
        assert_ptr_equal(fast, found);
    }
    return found;
}

/* Caches the day, or looks for it. */
static bool find_day(cell_cache *cells, unsigned year, unsigned month, unsigned day, bool keep)
{
    char text[CELL_TEXT + 1] = "";
    int size = snprintf(text, sizeof text, "%04u-%02u-%02u", year, month, day);
    uint32_t value = year * 10000u + month * 100u + day;
    if (keep)
        rodti_cell_cache_keep(cells, text, (size_t)size, 0, (cell_meaning){.value = value});
    const cell_meaning *found = find(cells, text, (uint32_t)size, 0);
    assert_true(found == NULL || found->value == value);
    return found != NULL;
}

static unsigned find_days(cell_cache *cells, bool keep)
{
    unsigned hits = 0;
    for (unsigned year = 2006; year < 2026; year++)
        for (unsigned month = 1; month <= 12; month++)
            for (unsigned day = 1; day <= 28; day++)
                hits += find_day(cells, year, month, day, keep);
    return hits;
}

/* Nearly all: a slot may have more entries than it can hold. */
static bool nearly(unsigned hits, unsigned all) { return hits <= all && hits >= all - all / 100; }

static void test_days_of_twenty_years(void **state)
{
    cell_cache cells;
    (void)state;
    assert_true(rodti_cell_cache_open(&cells, DAY_BITS));
    assert_int_equal(find_days(&cells, true), 20 * 12 * 28);
    assert_true(nearly(find_days(&cells, false), 20 * 12 * 28));
    rodti_cell_cache_close(&cells);
}

/* Texts of every length, of one byte each, in two units: none is ever taken for another. */
static void test_each_text_is_itself(void **state)
{
    static const char bytes[] = {'x', 0, (char)0xFF, '/', 15};
    cell_cache cells;
    unsigned hits = 0;
    (void)state;
    assert_true(rodti_cell_cache_open(&cells, 13));
    for (int pass = 0; pass < 2; pass++)
        for (uint32_t size = 0; size <= CELL_TEXT + 2; size++)
            for (uint32_t i = 0; i < 2 * sizeof bytes; i++) {
                char text[2 * CELL_TEXT + 2];
                unsigned tag = i % 2 == 0 ? 0 : 7;
                memset(text, 'y', sizeof text);
                memset(text, bytes[i / 2], size);
                uint32_t value = 1 + size * 16 + (size > 0 ? i : i % 2);
                const cell_meaning *found = find(&cells, text, size, tag);
                if (pass == 0 && size <= CELL_TEXT && found == NULL)
                    rodti_cell_cache_keep(&cells, text, size, tag, (cell_meaning){.value = value});
                assert_true(found == NULL || found->value == value);
                hits += pass == 1 && found != NULL;
            }
    assert_true(hits >= 2 * sizeof bytes * CELL_TEXT - 8);
    rodti_cell_cache_close(&cells);
}

/* Two slots and those after them: texts that begin alike, and differ in the unit or behind the sixteenth byte only, stand
 * side by side, and the oldest of them goes first. */
static void test_a_crowd(void **state)
{
    cell_cache cells;
    (void)state;
    assert_true(rodti_cell_cache_open(&cells, 1));
    for (unsigned pass = 0; pass < 2; pass++)
        for (unsigned i = 0; i < 40; i++) {
            char text[CELL_TEXT + 1];
            unsigned kept = 0;
            int size = pass == 0 ? snprintf(text, sizeof text, "%u", i) : snprintf(text, sizeof text, "inspection date, %02u", i);
            rodti_cell_cache_keep(&cells, text, (size_t)size, i % 3, (cell_meaning){.value = 1 + i});
            assert_non_null(find(&cells, text, (uint32_t)size, i % 3));
            for (unsigned k = 0; k <= i; k++) {
                size = pass == 0 ? snprintf(text, sizeof text, "%u", k) : snprintf(text, sizeof text, "inspection date, %02u", k);
                const cell_meaning *found = find(&cells, text, (uint32_t)size, k % 3);
                assert_true(found == NULL || found->value == 1 + k);
                assert_null(find(&cells, text, (uint32_t)size, 3));
                kept += found != NULL;
            }
            assert_true(kept <= 2 + CACHE_PROBES);
        }
    rodti_cell_cache_close(&cells);
}

/* The fast hash and the one of every processor have nothing in common, so each is tested by itself. */
static unsigned count_slots(cache_hasher *hash)
{
    static bool used[1u << 12];
    unsigned count = 0;
    memset(used, 0, sizeof used);
    for (unsigned text = 0; text < 1000; text++) { /* three digits */
        uint64_t word = (text / 100 + 48) | (uint64_t)(text / 10 % 10 + 48) << 16 | (uint64_t)(text % 10 + 48) << 40;
        bool *slot = &used[hash(word, 0) >> 5 & 0xFFFu];
        count += !*slot;
        *slot = true;
    }
    return count;
}

static uint64_t hash_of_every_processor(uint64_t a, uint64_t b) { return cache_hash_any(a, b); }

/* A random hash would hit 887 of 4096 slots. */
static void test_hashes_spread(void **state)
{
    (void)state;
    assert_true(count_slots(rodti_cache_hash()) > 850);
    assert_true(count_slots(hash_of_every_processor) > 850);
}

/* Keys as the columns of a plain file make them: a few small numbers side by side, and strokes in sixteenths. */
static row_key key_of(uint64_t kind, uint32_t stroke, unsigned shift)
{
    return (row_key){kind % 5 | kind / 5 % 2 << shift | kind / 10 % 3 << (shift + 5) | kind / 30 << (shift + 9),
                     stroke * 317500u};
}

static unsigned find_results(result_cache *results, unsigned shift, bool keep)
{
    unsigned hits = 0;
    for (uint32_t stroke = 0; stroke < 44; stroke++)
        for (uint64_t kind = 0; kind < 90; kind++) {
            row_key key = key_of(kind, stroke, shift);
            uint32_t number = stroke * 100 + (uint32_t)kind;
            uint32_t *kept = keep ? rodti_result_cache_keep(results, key) : NULL;
            if (kept != NULL)
                *kept = number;
            cached_result *found = rodti_result_cache_probe(results, key);
            assert_ptr_equal(result_cache_find(results, key, rodti_cache_hash()), found);
            assert_true(found == NULL || *(uint32_t *)(void *)(found + 1) == number);
            hits += found != NULL;
        }
    return hits;
}

static void test_results_of_a_plain_file(void **state)
{
    (void)state;
    for (unsigned shift = 9; shift < 24; shift++) {
        result_cache results;
        assert_true(rodti_result_cache_open(&results, 150 + shift, 32768));
        assert_int_equal(find_results(&results, shift, true), 44 * 90);
        assert_true(nearly(find_results(&results, shift, false), 44 * 90));
        rodti_result_cache_close(&results);
    }
}

/* A small cache evicts, but nothing whose hits were not given out. */
static void test_results_with_hits_stay(void **state)
{
    result_cache results;
    (void)state;
    assert_true(rodti_result_cache_open(&results, 4, 64));
    const row_key first = {UINT64_C(1) << 40, 5};
    assert_non_null(rodti_result_cache_keep(&results, first));
    result_cache_count(&results, rodti_result_cache_probe(&results, first));
    (void)find_results(&results, 10, true);
    assert_true(find_results(&results, 10, false) < 44 * 90);
    assert_non_null(rodti_result_cache_probe(&results, first));
    assert_int_equal(rodti_result_cache_probe(&results, first)->hits, 1);
    assert_int_equal(results.hit_count, 1);
    rodti_result_cache_close(&results);
}

/* Where every slot of a key has hits, the key is not cached, and nothing that counts is lost. */
static void test_hits_fill_the_slots(void **state)
{
    result_cache results;
    unsigned refused = 0, kept = 0;
    (void)state;
    assert_true(rodti_result_cache_open(&results, 4, 64));
    for (uint32_t i = 0; i < 4000; i++) {
        const row_key key = {7, i};
        if (rodti_result_cache_keep(&results, key) == NULL) {
            refused++;
            assert_null(rodti_result_cache_probe(&results, key));
            assert_null(result_cache_find(&results, key, rodti_cache_hash()));
            continue;
        }
        result_cache_count(&results, rodti_result_cache_probe(&results, key));
        kept++;
    }
    assert_true(refused > 0);
    assert_int_equal(results.hit_count, kept);
    for (uint32_t i = 0; i < 4000; i++) {
        const cached_result *found = rodti_result_cache_probe(&results, (row_key){7, i});
        kept -= found != NULL && found->hits == 1;
    }
    assert_int_equal(kept, 0);
    rodti_result_cache_close(&results);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_days_of_twenty_years), cmocka_unit_test(test_hashes_spread),
        cmocka_unit_test(test_each_text_is_itself), cmocka_unit_test(test_results_of_a_plain_file),
        cmocka_unit_test(test_a_crowd), cmocka_unit_test(test_results_with_hits_stay),
        cmocka_unit_test(test_hits_fill_the_slots)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
