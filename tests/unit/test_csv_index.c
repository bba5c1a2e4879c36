/* SPDX-License-Identifier: Apache-2.0 */
/* The structural index of CSV: every variant that this processor has, against the reference reader of the same bytes. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "io/csv_index.h"
#include "byte_source.h"

#define SIZE_MOST 400u
#define MOST 12u

#ifdef SCAN_X86

/* What the processor of this test does not have. */
static const char *missing = "";

bool plain_processor_has(const char *feature)
{
    return strcmp(feature, missing) != 0 && __builtin_cpu_supports("avx2") && __builtin_cpu_supports("bmi") &&
           __builtin_cpu_supports("popcnt") && __builtin_cpu_supports("pclmul") && __builtin_cpu_supports("sse4.2");
}

#endif

/* As good as chance, and the same in every run. */
static size_t chance(uint64_t *state)
{
    *state = *state * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
    return (size_t)(*state >> 33);
}

/* Splits rows without quotes. */
typedef uint32_t rows_splitter(const char *bytes, size_t size, char separator, uint32_t cells, uint32_t *ends);

static uint32_t split_rows_8(const char *bytes, size_t size, char separator, uint32_t cells, uint32_t *ends)
{
    return split_rows(bytes, size, separator, cells, ends, scan_find_8, scan_write);
}

#ifdef SCAN_X86

static uint32_t split_rows_16(const char *bytes, size_t size, char separator, uint32_t cells, uint32_t *ends)
{
    return split_rows(bytes, size, separator, cells, ends, scan_find_16, scan_write);
}

SCAN_AVX2 static uint32_t split_rows_32(const char *bytes, size_t size, char separator, uint32_t cells, uint32_t *ends)
{
    return split_rows(bytes, size, separator, cells, ends, scan_find_32, scan_write_group);
}

#endif

/* The cells of the record, up to the line feed. */
static void compare(uint32_t count, const uint32_t *ends, const csv_record *record)
{
    assert_int_equal(count, record->count);
    assert_false(record->bad_quotes);
    assert_int_equal(ends[count - 1] + 1, record->size + record->line_end_size);
    for (uint32_t i = 0; i < count; i++) {
        uint32_t carriage_return = i + 1 == count && record->line_end_size == 2;
        assert_int_equal(ends[i] - carriage_return, record->cells[i].end);
        assert_int_equal(i == 0 ? 0 : ends[i - 1] + 1, record->cells[i].start);
    }
}

/* True if the row is for the reference reader: it is too long, has a zero byte, a line end within quotes, or bad quotes. */
static bool is_refused(const char *bytes, const csv_record *record)
{
    return memchr(bytes, '\0', record->size) != NULL || record->count > MOST || record->bad_quotes ||
           memchr(bytes, '\n', record->size) != NULL;
}

/* The reader gets a first line that ends in a line feed, and what comes after it. */
static void open_after_first_line(csv_reader *reader, given *from, char separator)
{
    csv_record record;
    assert_true(csv_open(reader, source_of(from), separator));
    assert_int_equal(csv_next(reader, &record), CSV_RECORD);
}

static void check(row_splitter *split, const char *row, char separator, const csv_record *record)
{
    static uint32_t ends[MOST + SCAN_ENDS_MORE];
    uint32_t count = split(row, separator, MOST, ends);
    assert_int_equal(count == 0, is_refused(row, record));
    if (count != 0)
        compare(count, ends, record);
}

/* `bytes` are a first line of `first` bytes and a row, and SCAN_STEP bytes after it. */
static void check_all(const char *bytes, size_t first, size_t size, char separator)
{
    given from = {.bytes = bytes, .size = size};
    csv_reader reader;
    csv_record record;
    csv_index_variant variant;
    open_after_first_line(&reader, &from, separator);
    assert_int_equal(csv_next(&reader, &record), CSV_RECORD);
    for (size_t i = 0; csv_index_get_variant(i, &variant); i++)
        check(variant.split_row, bytes + first, separator, &record);
    csv_close(&reader);
}

/* Draws a row from the first few characters: few separators, many, quotes, the bytes next to a delimiter in the alphabet,
 * those with the high bit. */
static void check_random(const char *characters, size_t all, uint64_t *state)
{
    static char bytes[2 + SIZE_MOST + 1 + SCAN_STEP] = "h\n";
    size_t kinds = 2 + chance(state) % (all - 1);
    size_t plain = chance(state) % 12; /* bytes between delimiters */
    size_t size = 2 + chance(state) % SIZE_MOST;
    for (size_t i = 2; i < sizeof bytes; i++)
        bytes[i] = chance(state) % (plain + 1) == 0 ? characters[chance(state) % kinds] : 'x';
    bytes[size] = '\n';
    check_all(bytes, 2, size + 1, ',');
}

static void test_random_rows(void **unused)
{
    static const char plain[] = {',', 'x', ',' + 1, '\n' - 1, '\n' + 1, '"' + 1, '"' - 1, (char)(',' | 0x80),
                                 (char)('\n' | 0x80), (char)('"' | 0x80), 0, '\r'};
    static const char quoted[] = {',', '"', 'x', '\n', '\r', 0};
    uint64_t state = 11;
    (void)unused;
    for (size_t run = 0; run < 6000; run++) {
        check_random(plain, sizeof plain, &state);
        check_random(quoted, sizeof quoted, &state);
    }
}

/* Rows of which none may be refused. */
static void test_plain_and_quoted_rows(void **unused)
{
    static const char *const rows[] = {"a,b,c\n", "\n", ",\n", "\"a\",\"b,c\",\"\"\n", "\"3 5/8\"\"\",4\r\n", "3 5/8\",x\n",
                                       "\"a\"\r\n", ",,,,,,,,,,,\r\n",
                                       "\"a\rb\",c\n", "\"a,\"\",\",5/8\",\"\"\n"};
    static const uint32_t counts[] = {3, 1, 2, 3, 2, 2, 1, 12, 2, 3};
    uint32_t ends[MOST + SCAN_ENDS_MORE];
    (void)unused;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        char bytes[2 + 64 + SCAN_STEP] = "h\n";
        memcpy(bytes + 2, rows[i], strlen(rows[i]));
        check_all(bytes, 2, strlen(bytes), ',');
        assert_int_equal(split_row(bytes + 2, ',', MOST, ends), counts[i]);
        assert_int_equal(split_row(bytes + 2, ',', counts[i] - 1, ends), 0);
    }
}

/* Rows that are refused for a quote or a zero byte. */
#define zeros "................................................................"
static void test_bad_rows(void **unused)
{
    static const char *const rows[] = {"\"a\n", "\"a\"b,c\n", "\"a\nb\"\n", "\"a\"\rb\n", "a,\"b\"\"\n", "\"\"\"\n"};
    uint32_t ends[MOST + SCAN_ENDS_MORE];
    (void)unused;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        char bytes[64 + SCAN_STEP] = "";
        memcpy(bytes, rows[i], strlen(rows[i]));
        assert_int_equal(split_row(bytes, ',', MOST, ends), 0);
    }
    assert_int_equal(split_row("a,\0,c\n" zeros, ',', MOST, ends), 0);
    assert_int_equal(split_row("a,\"\0\",c\n" zeros, ',', MOST, ends), 0);
}

/* --- Rows without quotes ------------------------------------------------------------------------------- */

/* Rows of so many cells at the start, one by one: each of bytes that are no quote and no zero byte, up to the last block
 * that has none of those and is in the buffer. */
static uint32_t rows_one_by_one(const char *bytes, size_t size, uint32_t cells, uint32_t *ends)
{
    size_t plain = 0;
    uint32_t count = 0;
    while (plain + SCAN_STEP <= size && plain < SPLIT_BYTES && memchr(bytes + plain, '"', SCAN_STEP) == NULL &&
           memchr(bytes + plain, '\0', SCAN_STEP) == NULL)
        plain += SCAN_STEP;
    for (size_t at = 0; at < plain; at++) {
        if (bytes[at] != ',' && bytes[at] != '\n')
            continue;
        if ((bytes[at] == '\n') != (count % cells + 1 == cells))
            break;
        ends[count++] = (uint32_t)at;
    }
    return count / cells;
}

static void check_rows(rows_splitter *split, const char *bytes, size_t size, uint32_t cells)
{
    static uint32_t expected[SPLIT_BYTES], ends[SPLIT_BYTES + SCAN_ENDS_MORE];
    const uint32_t rows = rows_one_by_one(bytes, size, cells, expected);
    assert_int_equal(split(bytes, size, ',', cells, ends), rows);
    assert_memory_equal(ends, expected, (size_t)rows * cells * sizeof *ends);
}

static void check_rows_all(const char *bytes, size_t size, uint32_t cells)
{
    check_rows(split_rows_8, bytes, size, cells);
#ifdef SCAN_X86
    check_rows(split_rows_16, bytes, size, cells);
    if (scan_has_avx2())
        check_rows(split_rows_32, bytes, size, cells);
#endif
}

/* Rows of random lengths, most of one width; some have other cells, a quote, a zero byte, a line end of two bytes; two
 * faults of one block may be of the same number of cells. */
static void test_rows_of_one_width(void **unused)
{
    static char bytes[2 * SPLIT_BYTES + SCAN_STEP];
    static const char odd[] = {',', '\n', '"', 0, '\r', 'x'};
    uint64_t state = 5;
    (void)unused;
    for (size_t run = 0; run < 3000; run++) {
        const uint32_t cells = 2 + (uint32_t)chance(&state) % 15;
        const size_t longest = 1 + chance(&state) % 40;
        const size_t often = 1 + chance(&state) % 1000;
        uint32_t cell = 0;
        for (size_t i = 0; i < sizeof bytes; i++) {
            const bool ends = chance(&state) % longest == 0;
            cell += ends;
            bytes[i] = (char)(!ends ? 'x' : cell % cells == 0 ? '\n' : ',');
            if (chance(&state) % (often * 10) == 0)
                bytes[i] = odd[chance(&state) % sizeof odd];
        }
        check_rows_all(bytes, chance(&state) % (sizeof bytes - SCAN_STEP), cells);
    }
}

/* A row that has a cell more and one that has a cell less are as many cells as two good ones. */
static void test_rows_of_other_widths(void **unused)
{
    static const struct {
        const char *rows;
        uint32_t count;
    } cases[] = {{"a,b,c\nd,e,f\n", 2}, {"a,b,c\nd,e\nf,g,h,i\n", 1}, {"a,b\nc,d,e,f\n", 0}, {"a,b,c,d\ne,f\n", 0},
                 {"a,b,c\nd\ne,f\n", 1}, {"a,b,c\nd,e,\"f\"\n", 0}, {"a,b,c\r\n,,\r\n\n", 2}, {"\n\n\n", 0}};
    (void)unused;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        char bytes[2 * SCAN_STEP];
        uint32_t ends[SPLIT_BYTES + SCAN_ENDS_MORE];
        memset(bytes, 'x', sizeof bytes);
        for (size_t k = 0; cases[i].rows[k] != '\0'; k++)
            bytes[k] = cases[i].rows[k];
        assert_int_equal(split_rows_8(bytes, SCAN_STEP, ',', 3, ends), cases[i].count);
        assert_int_equal(split_rows_8(bytes, SCAN_STEP - 1, ',', 3, ends), 0); /* no whole block */
        check_rows_all(bytes, SCAN_STEP, 3);
    }
}

/* --- Complete records ---------------------------------------------------------------------------------- */

#define BUFFER 2000u

/* What the reference reader says of a record. */
typedef struct reference_record {
    size_t size; /* with its line end */
    bool bad_quotes;
    bool several_lines;
    bool complete; /* it ends in a line feed */
} reference_record;

static void read_all(const char *bytes, size_t size, reference_record records[BUFFER + 1])
{
    given from = {.bytes = bytes, .size = size};
    csv_reader reader;
    csv_record record;
    size_t count = 0;
    open_after_first_line(&reader, &from, ',');
    for (; csv_next(&reader, &record) == CSV_RECORD; count++)
        records[count] = (reference_record){
            .size = record.size + record.line_end_size,
            .bad_quotes = record.bad_quotes,
            .several_lines = memchr(record.bytes, '\n', record.size) != NULL,
            .complete = record.line_end_size > 0 && record.line_end[record.line_end_size - 1] == '\n'};
    records[count] = (reference_record){.complete = false};
    csv_close(&reader);
}

/* The prefix ends with a record of the reference reader; all up to there are good, and the next one is not. */
static void check_prefix(size_t safe, const reference_record *record, size_t cells_max)
{
    size_t at = 0;
    for (; at < safe; at += record++->size) {
        assert_true(record->complete && !record->bad_quotes);
        assert_true(!record->several_lines || record->size < cells_max);
    }
    assert_int_equal(at, safe);
    if (cells_max == BUFFER)
        assert_true(!record->complete || record->bad_quotes);
}

static void check_prefixes(const char *bytes, size_t first, size_t size)
{
    static reference_record records[BUFFER + 1];
    csv_index_variant variant;
    read_all(bytes, size, records);
    for (size_t i = 0; csv_index_get_variant(i, &variant); i++)
        for (size_t cells_max = 20; cells_max <= BUFFER; cells_max *= 10)
            check_prefix(variant.complete_prefix(bytes + first, size - first, ',', cells_max), records, cells_max);
}

/* Rows as files have them, mixed with adversarial ones. */
static void test_prefixes(void **unused)
{
    static const char *const rows[] = {"a,b,c\n", "\n", "\"a\",\"b,c\"\r\n", "3 5/8\",\"x\"\n", "\"a\nb\",c\n",
                                       "\"\"\"\",\"\"\n", "\"a\r\n\n\",\"b\"\n", ",\n", "\"", "a\"b\n", "\"a\"b\n", "\"a\"\r"};
    static char bytes[BUFFER + SCAN_STEP] = "h\n";
    uint64_t state = 3;
    (void)unused;
    for (size_t run = 0; run < 4000; run++) {
        size_t kinds = 4 + chance(&state) % (sizeof rows / sizeof *rows - 3);
        size_t size = 2 + chance(&state) % 400;
        size_t at = 2;
        while (at < size) {
            const char *row = rows[chance(&state) % kinds];
            size_t plain = chance(&state) % 4 == 0 ? chance(&state) % 90 : 0;
            memset(bytes + at, 'x', plain);
            memcpy(bytes + at + plain, row, strlen(row));
            at += plain + strlen(row);
        }
        check_prefixes(bytes, 2, at < 6 ? at : at - chance(&state) % 3);
    }
}

static void test_random_prefixes(void **unused)
{
    static const char characters[] = {'x', '\n', ',', '"', '\r', 0};
    static char bytes[BUFFER + SCAN_STEP] = "h\n";
    uint64_t state = 5;
    (void)unused;
    for (size_t run = 0; run < 6000; run++) {
        size_t size = 2 + chance(&state) % 300;
        size_t often = 1 + chance(&state) % 12;
        for (size_t i = 2; i < size; i++)
            bytes[i] = chance(&state) % often == 0 ? characters[chance(&state) % sizeof characters] : 'x';
        check_prefixes(bytes, 2, size);
    }
}

/* A processor without one of the features takes the variant that needs none. */
static void test_plain_processors(void **unused)
{
#ifdef SCAN_X86
    static const char *const features[] = {"avx2", "bmi", "popcnt", "pclmul", "sse4.2"};
    static const char bytes[4 + SCAN_STEP] = "\"a\"\n";
    csv_index_variant variant;
    uint32_t ends[MOST + SCAN_ENDS_MORE];
    for (size_t i = 0; i < sizeof features / sizeof *features; i++) {
        missing = features[i];
        assert_false(scan_has_avx2());
        assert_false(csv_index_get_variant(2, &variant));
        assert_true(csv_index_get_variant(1, &variant));
        assert_int_equal(split_row(bytes, ',', MOST, ends), 1);
        assert_int_equal(ends[0], 3);
        assert_int_equal(csv_complete_prefix(bytes, 4, ',', BUFFER), 4);
    }
    missing = "";
    assert_int_equal(csv_index_get_variant(2, &variant), scan_has_avx2());
    assert_int_equal(csv_complete_prefix(bytes, 4, ',', BUFFER), 4);
#endif
    (void)unused;
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_random_rows), cmocka_unit_test(test_plain_and_quoted_rows),
                                       cmocka_unit_test(test_bad_rows), cmocka_unit_test(test_rows_of_one_width),
                                       cmocka_unit_test(test_rows_of_other_widths), cmocka_unit_test(test_prefixes),
                                       cmocka_unit_test(test_random_prefixes), cmocka_unit_test(test_plain_processors)};
    return cmocka_run_group_tests_name("scan", tests, NULL, NULL);
}
