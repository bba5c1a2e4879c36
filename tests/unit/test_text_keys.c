/* SPDX-License-Identifier: Apache-2.0 */
/* Keys of cells: the same text has the same key in every layout, and it is that of the cache. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <stdlib.h>
#include <string.h>

#include "column/text_keys.h"
#include "support.h"

#define CELLS 64
#define MOST_BYTES 40

/* Sizes on both sides of what a view holds, a short text and a word; every place at the end of the bytes is met. */
static const size_t sizes[] = {5, 0, 1, 2, 3, 4, 7, 8, 9, 11, 12, 13, 14, 15, 16, 17, 31, 0, 15, 8, 3, 1};

static struct {
    char *bytes; /* of exactly the size, so that a checker sees what is read behind */
    size_t used;
    int32_t offset32[CELLS + 1];
    int64_t offset64[CELLS + 1];
    rodt_text_span span[CELLS];
    char view[CELLS][16];
    const void *buffers[1];
} texts;

static void fill(size_t count)
{
    texts.used = 0;
    for (size_t i = 0; i < count; i++)
        texts.used += sizes[i % COUNT_OF(sizes)];
    texts.bytes = malloc(texts.used > 0 ? texts.used : 1);
    assert_non_null(texts.bytes);
    texts.buffers[0] = texts.bytes;
    size_t at = 0;
    for (size_t i = 0; i < count; i++) {
        const size_t size = sizes[i % COUNT_OF(sizes)];
        texts.offset32[i] = (int32_t)at;
        texts.offset64[i] = (int64_t)at;
        texts.span[i] = (rodt_text_span){texts.bytes + at, size};
        for (size_t k = 0; k < size; k++)
            texts.bytes[at++] = (char)(unsigned char)(i * 37 + k * 11 + 1);
        const int32_t part[4] = {(int32_t)size, 0, 0, size <= 12 ? 0 : (int32_t)(at - size)};
        memcpy(texts.view[i], part, sizeof part);
        if (size > 0)
            memcpy(texts.view[i] + 4, texts.bytes + at - size, size <= 12 ? size : 4);
    }
    texts.offset32[count] = (int32_t)at;
    texts.offset64[count] = (int64_t)at;
}

static bool is_equal(cell_key a, cell_key b) { return cell_key_equal(a, b); }

static void expect_keys(const rodt_text_cells *column, size_t first, size_t count, uint64_t missing)
{
    cell_key keys[CELLS];
    rodti_text_keys(column, first, count, keys);
    for (size_t i = 0; i < count; i++) {
        const rodt_text_span span = texts.span[first + i];
        const bool is_missing = (missing >> (first + i) & 1) != 0;
        if (span.size > CELL_SHORT && !is_missing)
            assert_true(is_equal(keys[i], KEY_OF_LONG_TEXT));
        else
            assert_true(is_equal(keys[i], cell_key_exact(span.text, is_missing ? 0 : span.size, 0)));
    }
}

static rodt_text_cells column_of(rodt_text_layout layout)
{
    rodt_text_cells column = {.layout = layout, .bytes = texts.bytes, .buffers = texts.buffers};
    column.cells = layout == RODT_TEXT_LAYOUT_OFFSETS32   ? (const void *)texts.offset32
                   : layout == RODT_TEXT_LAYOUT_OFFSETS64 ? (const void *)texts.offset64
                   : layout == RODT_TEXT_LAYOUT_VIEWS     ? (const void *)texts.view
                                                          : (const void *)texts.span;
    return column;
}

static void every_layout(void **state)
{
    (void)state;
    const uint8_t valid[8] = {0x5A, 0xFF, 0x00, 0x81, 0xFF, 0xFF, 0x7F, 0xFE};
    uint64_t missing = 0;
    for (size_t i = 0; i < CELLS; i++)
        missing |= (uint64_t)((valid[i / 8] >> i % 8 & 1) == 0) << i;
    for (size_t count = 1; count <= CELLS; count++) {
        fill(count);
        for (int layout = RODT_TEXT_LAYOUT_OFFSETS32; layout < RODT_TEXT_LAYOUT_END; layout++) {
            rodt_text_cells column = column_of((rodt_text_layout)layout);
            expect_keys(&column, 0, count, 0);
            expect_keys(&column, count / 2, count - count / 2, 0);
            column.valid.bits = valid;
            expect_keys(&column, 0, count, missing);
        }
        free(texts.bytes);
    }
}

/* A column of cells that begins later, and one of numbers. */
static void later_and_numbered(void **state)
{
    (void)state;
    cell_key keys[CELLS], other[CELLS];
    uint8_t number[CELLS];
    fill(CELLS);
    for (int layout = RODT_TEXT_LAYOUT_OFFSETS32; layout < RODT_TEXT_LAYOUT_END; layout++) {
        rodt_text_cells column = column_of((rodt_text_layout)layout);
        rodti_text_keys(&column, 0, CELLS, keys);
        column.from = 9;
        rodti_text_keys(&column, 0, CELLS - 9, other);
        assert_memory_equal(other, keys + 9, (CELLS - 9) * sizeof *keys);
        column.from = 0;
        column.count = CELLS;
        column.index = number;
        column.index_width = 1;
        for (size_t i = 0; i < CELLS; i++)
            number[i] = (uint8_t)(CELLS - i);
        rodti_text_keys(&column, 0, CELLS, other);
        assert_true(is_equal(other[0], cell_key_exact("", 0, 0))); /* there is no such number */
        for (size_t i = 1; i < CELLS; i++)
            assert_true(is_equal(other[i], keys[CELLS - i]));
    }
    free(texts.bytes);
}

/* What is behind the text of a view makes no other text of it. */
static void bytes_behind_a_view(void **state)
{
    (void)state;
    char view[16] = "\3\0\0\0abcX";
    cell_key key;
    uint32_t size = 3;
    memcpy(view, &size, sizeof size);
    const rodt_text_cells column = {.layout = RODT_TEXT_LAYOUT_VIEWS, .cells = view};
    for (int more = 0; more < 9; more++) {
        memset(view + 7, 0, 9);
        view[7 + more] = 'X';
        rodti_text_keys(&column, 0, 1, &key);
        assert_int_equal(cell_key_size(key), 3);
        for (size_t other = 0; other <= CELL_SHORT; other++)
            assert_true(other == 3 || !is_equal(key, cell_key_exact("abcXXXXXXXXXXXXX", other, 0)));
    }
}

static void no_column(void **state)
{
    (void)state;
    cell_key keys[3];
    const rodt_text_cells column = {.layout = RODT_TEXT_LAYOUT_ABSENT};
    rodti_text_keys(&column, 0, 3, keys);
    for (int i = 0; i < 3; i++)
        assert_true(is_equal(keys[i], cell_key_exact("", 0, 0)));
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(every_layout), cmocka_unit_test(later_and_numbered),
                                       cmocka_unit_test(bytes_behind_a_view), cmocka_unit_test(no_column)};
    return cmocka_run_group_tests_name("text_keys", tests, NULL, NULL);
}
