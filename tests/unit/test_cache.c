/* SPDX-License-Identifier: Apache-2.0 */
/* What is cached is found again, and nothing is taken for it: a cache that loses its entries judges everything anew. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "column/cache.h"

#include <stdio.h>
#include <stdlib.h>

#define DAY_BITS 15u

/* Both ways to make a key, and to find a cell, agree. */
static const cell_meaning *find(const cell_cache *cells, const char *text, uint32_t size, unsigned tag)
{
    const cell_meaning *found = rodti_cell_cache_probe(cells, text, size, tag);
    if (size <= CELL_SHORT) {
        char *alone = malloc(size + 1); /* its last byte is the last that may be read */
        assert_non_null(alone);
        memcpy(alone + 1, text, size);
        cell_key exact = cell_key_exact(alone + 1, size, cell_tag(tag));
        free(alone);
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

/* --- Where entries are ------------------------------------------------------------------------------- */

/* Every entry begins its search at one slot, or at that of its first byte; the width of a slot is counted in. */
static size_t wanted_slot, slot_width;

static uint64_t hash_to_slot(uint64_t a, uint64_t b)
{
    (void)a;
    (void)b;
    return wanted_slot * slot_width;
}

static uint64_t hash_to_number(uint64_t a, uint64_t b)
{
    (void)b;
    return ((a | a >> 56) & 0xFF) * slot_width;
}

/* The slot of a text; -1 = it is not cached. */
static int cell_place(const cell_cache *cells, const char *text, size_t size, uint32_t value)
{
    const cell_meaning *found = rodti_cell_cache_probe(cells, text, size, 0);
    if (size <= CELL_SHORT)
        assert_ptr_equal(cell_cache_find(cells, cell_key_exact(text, size, 0), cells->hash), found);
    if (found == NULL)
        return -1;
    assert_int_equal(found->value, value);
    return (int)((const cached_cell *)(const void *)((const char *)found - offsetof(cached_cell, meaning)) - cells->cells);
}

/* Eight slots from that of the hash on; then the oldest of them goes, slot by slot. Of a long text the hash of its rest
 * counts three times. */
static void test_cells_go_in_turn(void **state)
{
    static const struct {
        size_t size;
        unsigned most_bits, slot, first;
    } cases[] = {{0, 3, 3, 3}, {17, 3, 3, 4}, {0, 3, 7, 7}, {17, 5, 5, 20}, {25, 5, 5, 20}, {30, 5, 5, 20}, {0, 0, 1, 0}};
    static const char begin[CELL_TEXT] = "inspection date"; /* then zero bytes */
    (void)state;
    slot_width = sizeof(cached_cell);
    for (size_t n = 0; n < sizeof cases / sizeof *cases; n++) {
        cell_cache cells;
        char texts[24][CELL_TEXT + 1];
        assert_true(rodti_cell_cache_open(&cells, cases[n].most_bits));
        cells.hash = hash_to_slot;
        wanted_slot = cases[n].slot;
        for (int i = 0; i < 24; i++) {
            const size_t size = cases[n].size + 1;
            memcpy(texts[i], begin, size);
            texts[i][size - 1] = (char)('a' + i);
            rodti_cell_cache_keep(&cells, texts[i], size, 0, (cell_meaning){.value = 7 + (uint32_t)i});
            assert_int_equal(cells.used, i < 8 ? i + 1 : 8);
            assert_int_equal(cells.bits, cases[n].most_bits);
            for (int k = 0; k <= i; k++) {
                int place = k + 8 > i ? (int)cases[n].first + k % 8 : -1;
                assert_int_equal(cell_place(&cells, texts[k], size, 7 + (uint32_t)k), place);
            }
        }
        for (size_t i = 0; i < ((size_t)1 << cells.bits) + CACHE_PROBES; i++) {
            bool used = i >= cases[n].first && i < cases[n].first + CACHE_PROBES;
            assert_int_equal(cells.cells[i].meaning.slot_size != 0, used);
        }
        rodti_cell_cache_close(&cells);
    }
}

/* A table of cells is doubled when an eighth of it is used, and begins with no more slots than it may have. */
static void test_cells_grow(void **state)
{
    static const size_t sizes[] = {1, 1, CELL_SHORT, 1, 1, 1, 1, CELL_SHORT + 3};
    (void)state;
    slot_width = sizeof(cached_cell);
    for (unsigned most_bits = 8; most_bits <= 10; most_bits++) {
        cell_cache cells;
        assert_true(rodti_cell_cache_open(&cells, most_bits));
        cells.hash = hash_to_number;
        assert_null(cells.rest);
        for (unsigned i = 0, bits = 8; i < 200; i++) {
            const char text[18] = {(char)i, 'm'};
            size_t size = sizes[i % 8];
            bits += bits < most_bits && i >= (1u << bits) / 8;
            rodti_cell_cache_keep(&cells, text, size, 0, (cell_meaning){.value = i});
            assert_int_equal(cells.bits, bits);
            assert_int_equal(cells.mask, ((1u << bits) - 1) * sizeof(cached_cell));
            assert_int_equal(cells.used, i + 1);
            assert_int_equal(cells.rest != NULL, i >= 7);
            assert_int_equal(cell_place(&cells, text, size, i), i);
        }
        for (unsigned i = 0; i < 200; i++) {
            const char text[18] = {(char)i, 'm'};
            assert_int_equal(cell_place(&cells, text, sizes[i % 8], i), i);
        }
        rodti_cell_cache_close(&cells);
        assert_null(cells.cells);
        assert_null(cells.rest);
    }
}

/* An empty slot is no empty text. */
static void test_empty_slots(void **state)
{
    cell_cache cells;
    (void)state;
    slot_width = sizeof(cached_cell);
    assert_true(rodti_cell_cache_open(&cells, 4));
    cells.hash = hash_to_slot;
    for (wanted_slot = 0; wanted_slot < 16; wanted_slot++)
        assert_int_equal(cell_place(&cells, "", 0, 0), -1);
    rodti_cell_cache_close(&cells);
}

/* A text of any length is not found, and one that is too long is not cached. */
static void test_long_texts(void **state)
{
    static char text[4000];
    cell_cache cells;
    (void)state;
    memset(text, 'x', sizeof text);
    assert_true(rodti_cell_cache_open(&cells, 8));
    for (size_t size = CELL_TEXT; size <= sizeof text; size += size == CELL_TEXT ? 1 : 100) {
        assert_null(rodti_cell_cache_probe(&cells, text, size, 0));
        rodti_cell_cache_keep(&cells, text, size, 0, (cell_meaning){.value = 7});
        assert_int_equal(rodti_cell_cache_probe(&cells, text, size, 0) != NULL, size == CELL_TEXT);
        assert_int_equal(cells.used, 1);
    }
    rodti_cell_cache_close(&cells);
}

static int result_place(const result_cache *results, row_key key)
{
    const cached_result *found = rodti_result_cache_probe(results, key);
    assert_ptr_equal(result_cache_find(results, key, results->hash), found);
    for (int i = 0; found != NULL; i++)
        if (result_at(results, results->slots[i]) == found)
            return i;
    return -1;
}

static void open_results(result_cache *results, size_t bytes, uint32_t most, cache_hasher *hash)
{
    assert_true(rodti_result_cache_open(results, bytes, most));
    results->hash = hash;
    slot_width = 1;
}

/* The slots after that of the hash, those with hits left out. */
static void test_results_go_in_turn(void **state)
{
    static const int turns[] = {5, 6, 7, 8, 9, 10, 11, 12, 6, 8, 9, 10, 11, 12, 6, 8};
    result_cache results;
    (void)state;
    open_results(&results, 4, 128, hash_to_slot);
    wanted_slot = 5;
    for (uint32_t i = 0; i < 16; i++) {
        const row_key key = {1, i};
        uint32_t *kept = rodti_result_cache_keep(&results, key);
        assert_ptr_equal(kept, result_at(&results, results.slots[turns[i]]) + 1);
        *kept = i;
        assert_int_equal(result_place(&results, key), turns[i]);
        assert_int_equal(results.used, i < 8 ? i + 1 : 8);
        if (i == 0 || i == 2) /* are never evicted */
            result_cache_count(&results, rodti_result_cache_probe(&results, key));
    }
    assert_int_equal(result_place(&results, (row_key){1, 1}), -1);
    assert_int_equal(result_place(&results, (row_key){1, 0}), 5);
    assert_int_equal(result_place(&results, (row_key){1, 2}), 7);
    assert_int_equal(result_place(&results, (row_key){2, 2}), -1);
    rodti_result_cache_close(&results);
    assert_null(results.slots);
    assert_null(results.results);
    assert_null(results.hit_lines);
}

/* All eight slots are asked for one without hits, once each. */
static void test_one_result_without_hits(void **state)
{
    result_cache results;
    (void)state;
    open_results(&results, 4, 128, hash_to_slot);
    wanted_slot = 5;
    for (uint32_t i = 0; i < 9; i++) {
        assert_non_null(rodti_result_cache_keep(&results, (row_key){1, i}));
        assert_int_equal(result_place(&results, (row_key){1, i}), i < 8 ? 5 + i : 12);
        if (i != 7)
            result_cache_count(&results, rodti_result_cache_probe(&results, (row_key){1, i}));
    }
    assert_null(rodti_result_cache_keep(&results, (row_key){1, 9}));
    for (uint32_t i = 0; i < 7; i++)
        rodti_result_cache_probe(&results, (row_key){1, i})->hits = 0;
    assert_non_null(rodti_result_cache_keep(&results, (row_key){1, 9}));
    assert_int_equal(result_place(&results, (row_key){1, 9}), 5);
    rodti_result_cache_close(&results);
}

/* Slots are doubled when a sixteenth of them is used, up to two for each result that there may be; room for results
 * when it is full. What is kept and what was counted stays. */
static void test_results_grow(void **state)
{
    static const uint32_t mosts[] = {1, 16, 17, 100, 120, 129, 256, 4096};
    (void)state;
    for (size_t n = 0; n < sizeof mosts / sizeof *mosts; n++) {
        const uint32_t most = mosts[n];
        uint32_t room = most < 16 ? most : 16;
        result_cache results;
        open_results(&results, 8, most, hash_to_number);
        for (uint32_t i = 0, bits = 8; i < 160; i++) {
            const row_key key = {i, i + 1};
            uint64_t *kept = rodti_result_cache_keep(&results, key);
            bits += i >= (1u << bits) / 16 && i < most && (1u << bits) < 2 * most;
            if (i == room)
                room = room * 2 < most ? room * 2 : most;
            assert_int_equal(results.bits, bits);
            assert_int_equal(results.mask, (1u << bits) - 1);
            assert_int_equal(results.room, room);
            assert_int_equal(results.used, i < most ? i + 1 : most);
            assert_int_equal(kept != NULL, i < most); /* none of the others is in a slot of its key */
            if (kept == NULL)
                continue;
            *kept = i;
            result_cache_count(&results, rodti_result_cache_probe(&results, key));
        }
        assert_int_equal(results.hit_count, most < 160 ? most : 160);
        for (uint32_t i = 0; i < results.hit_count; i++) {
            const cached_result *found = rodti_result_cache_probe(&results, (row_key){i, i + 1});
            assert_int_equal(result_place(&results, (row_key){i, i + 1}), i);
            assert_int_equal(result_place(&results, (row_key){i, i}), -1);
            assert_int_equal(*(const uint64_t *)(const void *)(found + 1), i);
            assert_int_equal(found->hits, 1);
            assert_ptr_equal(result_at(&results, results.hit_lines[i]), found);
        }
        result_cache_count(&results, rodti_result_cache_probe(&results, (row_key){0, 1})); /* writes one line more */
        rodti_result_cache_close(&results);
    }
}

/* A result is an odd number of lines of the processor's cache. */
static void test_widths_of_results(void **state)
{
    static const struct {
        size_t bytes, width;
    } cases[] = {{1, 64}, {64 - sizeof(cached_result), 64}, {65 - sizeof(cached_result), 192}, {200, 320}, {300, 320},
                 {305, 448}};
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        result_cache results;
        assert_true(rodti_result_cache_open(&results, cases[i].bytes, 128));
        assert_int_equal(results.width, cases[i].width);
        rodti_result_cache_close(&results);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_days_of_twenty_years), cmocka_unit_test(test_hashes_spread),
        cmocka_unit_test(test_each_text_is_itself), cmocka_unit_test(test_results_of_a_plain_file),
        cmocka_unit_test(test_a_crowd), cmocka_unit_test(test_results_with_hits_stay),
        cmocka_unit_test(test_hits_fill_the_slots), cmocka_unit_test(test_cells_go_in_turn),
        cmocka_unit_test(test_cells_grow),          cmocka_unit_test(test_results_go_in_turn),
        cmocka_unit_test(test_results_grow),        cmocka_unit_test(test_widths_of_results),
        cmocka_unit_test(test_one_result_without_hits), cmocka_unit_test(test_empty_slots),
        cmocka_unit_test(test_long_texts)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
