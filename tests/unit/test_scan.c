/* SPDX-License-Identifier: Apache-2.0 */
/* The command's fast way to part a row: every kind of it, also those that this processor does not need, against the
 * thorough reader of the same file. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "io/csv_reader.h"
#include "io/csv_index.h"

#define SIZE_MOST 400u
#define MOST 12u

/* As good as chance, and the same in every run. */
static uint64_t chance(uint64_t *state)
{
    *state = *state * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
    return *state >> 33;
}

/* What the thorough reader gets: a first line that ends in a line feed, and the row behind it. */
typedef struct given {
    const char *bytes;
    size_t size;
    size_t at;
} given;

static long give(void *context, char *buffer, size_t size)
{
    given *from = context;
    size_t count = from->size - from->at < size ? from->size - from->at : size;
    memcpy(buffer, from->bytes + from->at, count);
    from->at += count;
    return (long)count;
}

typedef uint32_t parting(const char *bytes, char separator, uint32_t most, uint32_t *ends);

static uint32_t part_8(const char *bytes, char separator, uint32_t most, uint32_t *ends)
{
    return split_row(bytes, separator, most, ends, scan_find_8, scan_write);
}

#ifdef SCAN_X86

static uint32_t part_16(const char *bytes, char separator, uint32_t most, uint32_t *ends)
{
    return split_row(bytes, separator, most, ends, scan_find_16, scan_write);
}

SCAN_AVX2 static uint32_t part_32(const char *bytes, char separator, uint32_t most, uint32_t *ends)
{
    return split_row(bytes, separator, most, ends, scan_find_32, scan_write_8);
}

#endif

/* Zero if the row is left to the thorough reader; otherwise the cells of the record, up to the line feed. */
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

/* True if the row may be left: it is too long, has a zero byte, a line end within quotes, or bad quotes. */
static bool may_be_left(const char *bytes, const csv_record *record)
{
    bool zero = memchr(bytes, '\0', record->size) != NULL;
    bool quote_and_return = memchr(bytes, '"', record->size) != NULL && memchr(bytes, '\r', record->size) != NULL;
    return zero || record->count > MOST || record->bad_quotes || quote_and_return || memchr(bytes, '\n', record->size) != NULL;
}

/* `bytes` are a first line of `first` bytes and a row, and SCAN_STEP bytes behind it. */
static void check(parting *part, const char *bytes, size_t first, size_t size, char separator)
{
    static uint32_t ends[MOST + SCAN_ENDS_MORE];
    given from = {bytes, size, 0};
    csv_reader reader;
    csv_record record;
    assert_true(csv_open(&reader, (csv_source){give, &from}, separator));
    assert_int_equal(csv_next(&reader, &record), CSV_RECORD);
    assert_int_equal(csv_next(&reader, &record), CSV_RECORD);
    uint32_t count = part(bytes + first, separator, MOST, ends);
    if (count != 0)
        compare(count, ends, &record);
    else
        assert_true(may_be_left(bytes + first, &record));
    csv_close(&reader);
}

static void check_all(const char *bytes, size_t first, size_t size, char separator)
{
    check(part_8, bytes, first, size, separator);
#ifdef SCAN_X86
    check(part_16, bytes, first, size, separator);
    if (SCAN_HAS_AVX2())
        check(part_32, bytes, first, size, separator);
#endif
}

/* Draws a row from the first few signs: few separators, many, quotes, the bytes next to a sign in the alphabet, those
 * with the high bit. */
static void check_random(const char *signs, size_t all, uint64_t *state)
{
    static char bytes[2 + SIZE_MOST + 1 + SCAN_STEP] = "h\n";
    size_t kinds = 2 + chance(state) % (all - 1);
    size_t plain = chance(state) % 12; /* bytes between signs */
    size_t size = 2 + chance(state) % SIZE_MOST;
    for (size_t i = 2; i < sizeof bytes; i++)
        bytes[i] = chance(state) % (plain + 1) == 0 ? signs[chance(state) % kinds] : 'x';
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

/* Rows of which none may be left to the thorough reader. */
static void test_plain_and_quoted_rows(void **unused)
{
    static const char *const rows[] = {"a,b,c\n", "\n", ",\n", "\"a\",\"b,c\",\"\"\n", "\"3 5/8\"\"\",4\r\n", "3 5/8\",x\n",
                                       "\"a\"\r\n", ",,,,,,,,,,,\r\n"};
    static const uint32_t counts[] = {3, 1, 2, 3, 2, 2, 1, 12};
    uint32_t ends[MOST + SCAN_ENDS_MORE];
    (void)unused;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        char bytes[2 + 64 + SCAN_STEP] = "h\n";
        memcpy(bytes + 2, rows[i], strlen(rows[i]));
        check_all(bytes, 2, strlen(bytes), ',');
        assert_int_equal(part_8(bytes + 2, ',', MOST, ends), counts[i]);
        assert_int_equal(part_8(bytes + 2, ',', counts[i] - 1, ends), 0);
    }
}

/* Rows that are left to the thorough reader for a quote or a zero byte. */
#define zeros "................................................................"
static void test_bad_rows(void **unused)
{
    static const char *const rows[] = {"\"a\n", "\"a\"b,c\n", "\"a\rb\"\n", "\"a\"\rb\n", "a,\"b\"\"\n", "\"\"\"\n"};
    uint32_t ends[MOST + SCAN_ENDS_MORE];
    (void)unused;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        char bytes[64 + SCAN_STEP] = "";
        memcpy(bytes, rows[i], strlen(rows[i]));
        assert_int_equal(part_8(bytes, ',', MOST, ends), 0);
    }
    assert_int_equal(part_8("a,\0,c\n" zeros, ',', MOST, ends), 0);
    assert_int_equal(part_8("a,\"\0\",c\n" zeros, ',', MOST, ends), 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_random_rows), cmocka_unit_test(test_plain_and_quoted_rows),
                                       cmocka_unit_test(test_bad_rows)};
    return cmocka_run_group_tests_name("scan", tests, NULL, NULL);
}
