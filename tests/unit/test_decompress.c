/* SPDX-License-Identifier: Apache-2.0 */
/* Compressed streams: whole, cut, damaged, without memory; built twice, with the libraries and without. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <errno.h>

#include "io/decompress.h"
#include "byte_source.h"
#include "failing_calls.h"

#define TEXT_SIZE 226 /* eight times "abc", a line feed, 200 "x", a line feed */

static const struct {
    const char *name, *bytes;
    size_t size, magic;
} packed[] = {
    {"gzip", "\x1F\x8B\x08\x00\x00\x00\x00\x00\x02\x03\x4B\x4C\x4A\x4E\xC4\x86\xB8\x2A\x86\x09\xE0\x02\x00\xA8\x1C\xD0\xE9\xE2"
             "\x00\x00\x00", 31, 2},
    {"Zstandard", "\x28\xB5\x2F\xFD\x24\xE2\x7D\x00\x00\x30\x61\x62\x63\x0A\x78\x0A\x02\x00\x44\x1C\x85\xFD\xDC\x10\x2B\x9D"
                  "\xEC\x94", 28, 4}};
#define PACKED (sizeof packed / sizeof packed[0])

static decompressor stream;

/* Reads up to so many bytes at once; returns how many came before the end or the fault. */
static size_t read_all(given *from, char *text, size_t room, size_t most)
{
    size_t size = 0;
    long got = 1;
    decompress_open(&stream, source_of(from));
    csv_source source = decompress_source(&stream);
    while (got > 0 && size < room) {
        got = source.read(source.context, text + size, room - size < most ? room - size : most);
        size += got > 0 ? (size_t)got : 0;
    }
    if (stream.fault != DECOMPRESS_OK)
        assert_int_equal(source.read(source.context, text, 1), -1); /* it stays */
    return size;
}

static void what_is_not_compressed_is_taken_as_it_is(void **state)
{
    (void)state;
    char text[16];
    for (size_t most = 1; most < 8; most++) {
        given from = {.bytes = "\x28\xB5plain", .size = 7, .most = most};
        assert_int_equal(read_all(&from, text, sizeof text, most), 7);
        assert_memory_equal(text, from.bytes, 7);
        assert_string_equal(decompress_format(&stream), "");
        assert_int_equal(stream.fault, DECOMPRESS_OK);
        decompress_close(&stream);
        from = (given){.bytes = "plain", .size = most < 5 ? most : 5, .fails = true};
        assert_int_equal(read_all(&from, text, sizeof text, most), from.size < 4 ? 0 : from.size);
        assert_int_equal(stream.fault, DECOMPRESS_E_SOURCE);
        decompress_close(&stream);
    }
}

#if defined(HAVE_ZLIB) && defined(HAVE_ZSTD)

#include <zlib.h>
#include <zstd.h>

int __real_inflateInit2_(z_stream *state, int bits, const char *version, int size);
int __wrap_inflateInit2_(z_stream *state, int bits, const char *version, int size);
int __wrap_inflateInit2_(z_stream *state, int bits, const char *version, int size)
{
    return call_fails("inflateInit2") ? Z_MEM_ERROR : __real_inflateInit2_(state, bits, version, size);
}

int __real_inflate(z_stream *state, int flush);
int __wrap_inflate(z_stream *state, int flush);
int __wrap_inflate(z_stream *state, int flush)
{
    return call_fails("inflate") ? Z_MEM_ERROR : __real_inflate(state, flush);
}

ZSTD_DCtx *__real_ZSTD_createDCtx(void);
ZSTD_DCtx *__wrap_ZSTD_createDCtx(void);
ZSTD_DCtx *__wrap_ZSTD_createDCtx(void) { return call_fails("ZSTD_createDCtx") ? NULL : __real_ZSTD_createDCtx(); }

static void expect_text(const char *text, size_t size)
{
    for (size_t i = 0; i < size; i++)
        assert_int_equal(text[i], i == 24 || i == 225 ? '\n' : i < 24 ? "abc"[i % 3] : 'x');
}

/* By any number of bytes, and two members one after the other. */
static void whole_streams_are_read(void **state)
{
    (void)state;
    char text[2 * TEXT_SIZE + 1], bytes[64];
    for (size_t i = 0; i < PACKED; i++) {
        memcpy(bytes, packed[i].bytes, packed[i].size);
        memcpy(bytes + packed[i].size, packed[i].bytes, packed[i].size);
        for (size_t most = 1; most < 2 * TEXT_SIZE; most = most * 3 + 1) {
            given from = {.bytes = bytes, .size = 2 * packed[i].size, .most = most};
            assert_int_equal(read_all(&from, text, sizeof text, most), 2 * TEXT_SIZE);
            expect_text(text, TEXT_SIZE);
            expect_text(text + TEXT_SIZE, TEXT_SIZE);
            assert_string_equal(decompress_format(&stream), packed[i].name);
            assert_int_equal(stream.fault, DECOMPRESS_OK);
            decompress_close(&stream);
        }
    }
    static char large[DECOMPRESS_BLOCK + 1];
    given from = {.bytes = packed[0].bytes, .size = packed[0].size};
    assert_int_equal(read_all(&from, large, sizeof large, sizeof large), TEXT_SIZE);
    expect_text(large, TEXT_SIZE);
    decompress_close(&stream);
}

/* What came before is good; a source that fails there is told apart. */
static void a_stream_that_is_cut_is_told(void **state)
{
    (void)state;
    char text[TEXT_SIZE + 1];
    for (size_t i = 0; i < PACKED; i++) {
        for (size_t size = packed[i].magic; size < packed[i].size; size++) {
            for (size_t most = 1; most <= sizeof text; most *= 15) {
                for (int fails = 0; fails < 2; fails++) {
                    given from = {.bytes = packed[i].bytes, .size = size, .most = most, .fails = fails};
                    expect_text(text, read_all(&from, text, sizeof text, most));
                    assert_int_equal(stream.fault, fails ? DECOMPRESS_E_SOURCE : DECOMPRESS_E_CUT);
                    decompress_close(&stream);
                }
            }
        }
    }
}

static void damaged_bytes_are_told(void **state)
{
    (void)state;
    char text[TEXT_SIZE + 1], bytes[64];
    for (size_t i = 0; i < PACKED; i++) {
        memcpy(bytes, packed[i].bytes, packed[i].size);
        bytes[packed[i].size - 5] ^= 1; /* of the check sum, or of what it is of */
        given from = {.bytes = bytes, .size = packed[i].size};
        (void)read_all(&from, text, sizeof text, sizeof text);
        assert_int_equal(stream.fault, DECOMPRESS_E_BYTES);
        decompress_close(&stream);
    }
}

static void without_memory_nothing_is_read(void **state)
{
    (void)state;
    static const struct {
        size_t packed;
        const char *call;
    } faults[] = {{0, "calloc"}, {0, "inflateInit2"}, {0, "inflate"}, {1, "ZSTD_createDCtx"}};
    char text[TEXT_SIZE];
    for (size_t i = 0; i < sizeof faults / sizeof faults[0]; i++) {
        given from = {.bytes = packed[faults[i].packed].bytes, .size = packed[faults[i].packed].size};
        fail_call(faults[i].call, 0, ENOMEM);
        assert_int_equal(read_all(&from, text, sizeof text, sizeof text), 0);
        assert_true(all_failed());
        assert_int_equal(stream.fault, DECOMPRESS_E_MEMORY);
        decompress_close(&stream);
    }
}

#define TESTS \
    cmocka_unit_test(whole_streams_are_read), cmocka_unit_test(a_stream_that_is_cut_is_told), \
    cmocka_unit_test(damaged_bytes_are_told), cmocka_unit_test(without_memory_nothing_is_read)

#else

static void a_format_without_its_library_is_refused_by_name(void **state)
{
    (void)state;
    char text[TEXT_SIZE];
    for (size_t i = 0; i < PACKED; i++) {
        given from = {.bytes = packed[i].bytes, .size = packed[i].size};
        assert_int_equal(read_all(&from, text, sizeof text, sizeof text), 0);
        assert_int_equal(stream.fault, DECOMPRESS_E_ABSENT);
        assert_string_equal(decompress_format(&stream), packed[i].name);
        decompress_close(&stream);
    }
}

#define TESTS cmocka_unit_test(a_format_without_its_library_is_refused_by_name)

#endif

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(what_is_not_compressed_is_taken_as_it_is), TESTS};
    return cmocka_run_group_tests_name("decompress", tests, NULL, NULL);
}
