/* SPDX-License-Identifier: Apache-2.0 */
/* The reader of CSV where its source or the memory fails, and files whose lines end in a carriage return. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <errno.h>
#include <stdlib.h>

#include "byte_source.h"
#include "failing_calls.h"

static given text(const char *bytes) { return (given){.bytes = bytes, .size = strlen(bytes)}; }

/* Nothing is read from a record that its source did not give completely, even if it looks complete. */
static void a_source_that_fails_ends_the_input(void **state)
{
    (void)state;
    static const struct {
        const char *bytes;
        size_t records; /* before the fault */
    } inputs[] = {{"", 0}, {"a", 0}, {"a\r", 0}, {"\"a", 0}, {"\"a\"", 0}, {"\"a\"\r", 0}, {"aa\n", 1}, {"a\nb,\"c\"", 1},
                  {"a\n\"b\n", 1}, {"a\n\"b\"\r", 1}, {"a\nb\r", 1}, {"a\nb\nc,", 2}};
    for (size_t i = 0; i < sizeof inputs / sizeof inputs[0]; i++) {
        for (size_t most = 0; most < 3; most++) {
            given from = text(inputs[i].bytes);
            from.fails = true;
            from.most = most;
            csv_reader reader;
            csv_record record;
            assert_true(csv_open(&reader, source_of(&from), ','));
            for (size_t k = 0; k < inputs[i].records; k++)
                assert_int_equal(csv_next(&reader, &record), CSV_RECORD);
            assert_int_equal(csv_next(&reader, &record), CSV_E_SOURCE);
            assert_int_equal(reader.fault_line, inputs[i].records + 1);
            assert_int_equal(csv_next(&reader, &record), CSV_E_SOURCE);
            assert_int_equal(csv_complete_size(&reader), 0);
            csv_close(&reader);
        }
    }
}

typedef struct expected {
    const char *text;
    uint64_t line;
    size_t cells;
    bool bad_quotes;
} expected;

static void expect_records(const char *bytes, const expected *records, size_t count)
{
    for (size_t most = 0; most < 4; most++) {
        given from = text(bytes);
        from.most = most;
        csv_reader reader;
        csv_record record;
        assert_true(csv_open(&reader, source_of(&from), ','));
        for (size_t i = 0; i < count; i++) {
            assert_int_equal(csv_next(&reader, &record), CSV_RECORD);
            assert_int_equal(record.size, strlen(records[i].text));
            assert_memory_equal(record.bytes, records[i].text, record.size);
            assert_int_equal(record.line, records[i].line);
            assert_int_equal(record.count, records[i].cells);
            assert_int_equal(record.bad_quotes, records[i].bad_quotes);
            assert_int_equal(record.line_end_size, 1);
        }
        assert_int_equal(csv_next(&reader, &record), CSV_END);
        csv_close(&reader);
    }
}

/* Where lines end in a carriage return, one within quotes counts as a line unless a line feed follows. */
static void lines_are_counted_within_quotes(void **state)
{
    (void)state;
    static const expected by_return[] = {
        {"a,b", 1, 2, false}, {"\"x\ry\",\"p\r\nq\"", 2, 2, false}, {"c", 5, 1, false}, {"\"z", 6, 1, true}};
    static const expected by_feed[] = {{"a,b", 1, 2, false}, {"\"x\ry\",\"p\r\nq\"", 2, 2, false}, {"c", 4, 1, false}};
    expect_records("a,b\r\"x\ry\",\"p\r\nq\"\rc\r\"z\r", by_return, 4);
    expect_records("a,b\n\"x\ry\",\"p\r\nq\"\nc\n", by_feed, 3);
}

static void a_reader_is_not_opened_without_memory(void **state)
{
    (void)state;
    static const char *const calls[] = {"calloc", "malloc"};
    given from = text("a\n");
    csv_reader reader, chunk;
    assert_true(csv_open(&reader, source_of(&from), ','));
    for (size_t i = 0; i < sizeof calls / sizeof calls[0]; i++) {
        fail_call(calls[i], 0, ENOMEM);
        assert_false(csv_open_chunk(&chunk, &reader));
        assert_true(all_failed());
        fail_call(calls[i], 0, ENOMEM);
        assert_false(csv_open_lines(&chunk, source_of(&from)));
        assert_true(all_failed());
    }
    assert_true(csv_open_chunk(&chunk, &reader));
    csv_close(&chunk);
    csv_close(&reader);
}

/* The record before it stays as it was read. */
static void a_record_that_does_not_fit_in_memory_is_told(void **state)
{
    (void)state;
    size_t size = 2 * CSV_BLOCK;
    char *bytes = malloc(size);
    assert_non_null(bytes);
    memset(bytes, 'x', size);
    bytes[1] = '\n';
    given from = {.bytes = bytes, .size = size};
    csv_reader reader;
    csv_record record;
    assert_true(csv_open(&reader, source_of(&from), ','));
    assert_int_equal(csv_next(&reader, &record), CSV_RECORD);
    fail_call("realloc", 0, ENOMEM);
    assert_int_equal(csv_next(&reader, &record), CSV_E_MEMORY);
    assert_true(all_failed());
    assert_int_equal(reader.fault_line, 2);
    assert_int_equal(record.size, 1);
    csv_close(&reader);
    free(bytes);
}

static void more_cells_than_any_table_has_are_told(void **state)
{
    (void)state;
    char *bytes = malloc(CSV_CELLS_MAX);
    assert_non_null(bytes);
    memset(bytes, ',', CSV_CELLS_MAX);
    for (size_t cells = CSV_CELLS_MAX; cells <= CSV_CELLS_MAX + 1; cells++) {
        given from = {.bytes = bytes, .size = cells - 1};
        csv_reader reader;
        csv_record record;
        assert_true(csv_open(&reader, source_of(&from), ','));
        assert_int_equal(csv_next(&reader, &record), cells == CSV_CELLS_MAX ? CSV_RECORD : CSV_E_CELLS);
        csv_close(&reader);
    }
    free(bytes);
}

/* A line is searched in steps, and a carriage return inside is a byte like any other. */
static void a_line_ends_where_it_ends(void **state)
{
    (void)state;
    char bytes[1100];
    for (size_t size = 250; size < 1030; size += size == 265 || size == 520 ? 240 : 1) {
        for (size_t at = 0; at < size; at += at == 5 ? 240 : 1) {
            csv_reader reader;
            csv_record record;
            memset(bytes, ',', sizeof bytes);
            memcpy(bytes, "x\n", 2);
            bytes[2 + at] = '\r';
            bytes[2 + size - 1] = ',';
            memcpy(bytes + 2 + size, "\r\ny", 4);
            given from = text(bytes);
            assert_true(csv_open_lines(&reader, source_of(&from)));
            assert_int_equal(csv_next(&reader, &record), CSV_RECORD);
            assert_int_equal(csv_next(&reader, &record), CSV_RECORD);
            assert_int_equal(record.size, size);
            assert_int_equal(record.count, 1);
            assert_int_equal(record.line_end_size, 2);
            assert_int_equal(csv_next(&reader, &record), CSV_RECORD);
            assert_int_equal(record.size, 1);
            assert_int_equal(csv_next(&reader, &record), CSV_END);
            csv_close(&reader);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_source_that_fails_ends_the_input),
                                       cmocka_unit_test(lines_are_counted_within_quotes),
                                       cmocka_unit_test(a_line_ends_where_it_ends),
                                       cmocka_unit_test(a_reader_is_not_opened_without_memory),
                                       cmocka_unit_test(a_record_that_does_not_fit_in_memory_is_told),
                                       cmocka_unit_test(more_cells_than_any_table_has_are_told)};
    return cmocka_run_group_tests_name("csv_reader", tests, NULL, NULL);
}
