/* SPDX-License-Identifier: Apache-2.0 */
/* Streams of other encodings: names, sources that fail, characters that are cut, blocks that are full. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <errno.h>

#include "io/transcode.h"
#include "byte_source.h"
#include "failing_calls.h"

static transcoder stream;

static void an_encoding_has_a_name(void **state)
{
    (void)state;
    static const char *const names[] = {"", "windows-1252//IGNORE", "no such encoding"};
    given from = {.bytes = ""};
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++)
        assert_int_equal(transcode_open(&stream, names[i], source_of(&from)), TRANSCODE_E_NAME);
    fail_call("iconv_open", 0, ENOMEM);
    assert_int_equal(transcode_open(&stream, "windows-1252", source_of(&from)), TRANSCODE_E_MEMORY);
    assert_true(all_failed());
}

/* The valid characters come first; then the fault says why, and where. */
static void what_stops_a_stream_is_told(void **state)
{
    (void)state;
    static const struct {
        const char *encoding, *bytes;
        size_t size;
        bool fails;
        const char *text;
        transcode_status fault;
        uint64_t position;
    } streams[] = {
        {"windows-1252", "a\x80", 2, false, "a\xE2\x82\xAC", TRANSCODE_OK, 2},
        {"windows-1252", "a\x80", 2, true, "a\xE2\x82\xAC", TRANSCODE_E_SOURCE, 2},
        {"windows-1252", "", 0, true, "", TRANSCODE_E_SOURCE, 0},
        {"UTF-16LE", "a\0\xAC\x20", 4, false, "a\xE2\x82\xAC", TRANSCODE_OK, 4},
        {"UTF-16LE", "a\0\xAC", 3, false, "a", TRANSCODE_E_CUT, 2},
        {"UTF-16LE", "a\0\xAC", 3, true, "a", TRANSCODE_E_SOURCE, 2},
        {"UTF-8", "a\xFFz", 3, false, "a", TRANSCODE_E_BYTES, 1}};
    for (size_t i = 0; i < sizeof streams / sizeof streams[0]; i++) {
        for (size_t most = 0; most < 3; most++) {
            char text[16];
            size_t size = 0;
            long got = 1;
            given from = {.bytes = streams[i].bytes, .size = streams[i].size, .most = most, .fails = streams[i].fails};
            assert_int_equal(transcode_open(&stream, streams[i].encoding, source_of(&from)), TRANSCODE_OK);
            csv_source source = transcode_source(&stream);
            for (; got > 0; size += got > 0 ? (size_t)got : 0)
                got = source.read(source.context, text + size, most == 0 ? sizeof text - size : most);
            assert_int_equal(got, streams[i].fault == TRANSCODE_OK ? 0 : -1);
            assert_int_equal(size, strlen(streams[i].text));
            assert_memory_equal(text, streams[i].text, size);
            assert_int_equal(stream.fault, streams[i].fault);
            assert_int_equal(stream.position, streams[i].position);
            transcode_close(&stream);
        }
    }
}

/* The text is three times as large as the bytes. */
static void no_character_is_lost_between_blocks(void **state)
{
    (void)state;
    static char bytes[TRANSCODE_BLOCK + 10], text[3 * sizeof bytes];
    memset(bytes, 0x80, sizeof bytes);
    given from = {.bytes = bytes, .size = sizeof bytes};
    size_t size = 0;
    assert_int_equal(transcode_open(&stream, "windows-1252", source_of(&from)), TRANSCODE_OK);
    csv_source source = transcode_source(&stream);
    for (long got = 1; got > 0; size += (size_t)got)
        got = source.read(source.context, text + size, sizeof text - size < 1000 ? sizeof text - size : 1000);
    assert_int_equal(size, sizeof text);
    for (size_t i = 0; i < size; i++)
        assert_int_equal((unsigned char)text[i], (unsigned char)"\xE2\x82\xAC"[i % 3]);
    assert_int_equal(stream.fault, TRANSCODE_OK);
    transcode_close(&stream);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(an_encoding_has_a_name),
                                       cmocka_unit_test(what_stops_a_stream_is_told),
                                       cmocka_unit_test(no_character_is_lost_between_blocks)};
    return cmocka_run_group_tests_name("transcode", tests, NULL, NULL);
}
