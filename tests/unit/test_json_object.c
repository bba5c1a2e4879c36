/* SPDX-License-Identifier: Apache-2.0 */
/* One JSON object, byte by byte: what RFC 8259 allows, what it does not, and texts with escapes. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <string.h>

#include "io/json_object.h"

static json_status last_status(const char *bytes, size_t size)
{
    json_object_reader reader;
    json_member member;
    json_status status;
    json_object_open(&reader, bytes, size);
    do
        status = json_object_next(&reader, &member);
    while (status == JSON_MEMBER);
    return status;
}

/* An object that is cut off anywhere is none. */
static void objects_are_read_to_their_end(void **state)
{
    (void)state;
    static const char *const objects[] = {
        "{}", " \t\r\n{ } ", "{\r\n\t\"a\" :\n1\r,\t\"b\":[\n]}", "{\"a\":\"\\u0009\\uABcdx\"}", "{\"a\":\"\\\"\\\\\\/\\b\\f\\n\\r\\t\"}", "{\"a\":-0.5e+1,\"b\":1E-2,\"c\":[]}",
        "{\"a\":[{\"b\":[1,true]},null,{},\"]\"],\"c\":false}",
        "{ \"a\" : [ { \"b\" : [ 1 , true ] } , [\n] ] , \"c\" : { } }"};
    for (size_t i = 0; i < sizeof objects / sizeof objects[0]; i++) {
        size_t size = strlen(objects[i]), closed = size;
        while (objects[i][closed - 1] != '}')
            closed--;
        assert_int_equal(last_status(objects[i], size), JSON_END);
        for (size_t cut = 0; cut < closed; cut++)
            assert_int_equal(last_status(objects[i], cut), JSON_BAD);
    }
}

static void what_is_no_object_is_refused(void **state)
{
    (void)state;
    static const char *const bytes[] = {
        "[]", "{a:1}", "{\"a\"}", "{\"a\":}", "{\"a\":01}", "{\"a\":1.}", "{\"a\":1e}", "{\"a\":.5}", "{\"a\":+1}", "{\"a\":tru}",
        "{\"a\":1,}", "{\"a\":1 \"b\":2}", "{\"a\":[1,]}", "{\"a\":[1}", "{\"a\":{\"b\"}}", "{\"a\":\"\\x\"}", "{\"a\":\"\x01\"}",
        "{\"a\":\"\\u00/0\"}", "{\"a\":\"\\u00:0\"}", "{\"a\":\"\\u00@0\"}", "{\"a\":\"\\u00G0\"}", "{\"a\":\"\\u00`0\"}",
        "{\"a\":\"\\u00g0\"}", "{} x"};
    for (size_t i = 0; i < sizeof bytes / sizeof bytes[0]; i++)
        assert_int_equal(last_status(bytes[i], strlen(bytes[i])), JSON_BAD);
    static const char zero[] = "{\"a\":\"\\\0\"}";
    assert_int_equal(last_status(zero, sizeof zero - 1), JSON_BAD);
}

static void an_array_has_elements(void **state)
{
    (void)state;
    static const char array[] = " [1, \"two\" ,{ \"a\": [3] } ]\n";
    static const json_kind kinds[] = {JSON_NUMBER, JSON_TEXT, JSON_NESTED};
    json_object_reader reader;
    json_member element;
    json_object_open(&reader, array, sizeof array - 1);
    for (size_t i = 0; i < 3; i++) {
        assert_int_equal(json_array_next(&reader, &element), JSON_MEMBER);
        assert_int_equal(element.kind, kinds[i]);
    }
    assert_int_equal(json_array_next(&reader, &element), JSON_END);
    static const char *const none[] = {"", "{}", "[", "[1", "[1 2]", "[1,]", "[,1]", "[1]]", "[\"a\":1]"};
    for (size_t i = 0; i < sizeof none / sizeof none[0]; i++) {
        json_status status;
        json_object_open(&reader, none[i], strlen(none[i]));
        while ((status = json_array_next(&reader, &element)) == JSON_MEMBER)
            continue;
        assert_int_equal(status, JSON_BAD);
    }
}

static void a_text_is_resolved(void **state)
{
    (void)state;
    static const struct {
        const char *from, *text; /* NULL = half a character */
    } texts[] = {{"", ""},
                 {"plain", "plain"},
                 {"plain\\tplain", "plain\tplain"},
                 {"\\\"\\\\\\/\\b\\f\\n\\r\\t", "\"\\/\b\f\n\r\t"},
                 {"\\u0041\\u00e9\\u20AC\\uD7FF\\uE000", "A\xC3\xA9\xE2\x82\xAC\xED\x9F\xBF\xEE\x80\x80"},
                 {"\\uD83D\\uDE9B", "\xF0\x9F\x9A\x9B"},
                 {"\\uD800\\uDC00\\uDBFF\\uDFFF", "\xF0\x90\x80\x80\xF4\x8F\xBF\xBF"},
                 {"\\uDC00", NULL},
                 {"\\uDFFF", NULL},
                 {"\\uD83D", NULL},
                 {"\\uD83D plain", NULL},
                 {"\\uD83D\\n plain", NULL},
                 {"\\uD83D\\uDBFF", NULL},
                 {"\\uD83D\\uE000", NULL}};
    char text[32];
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        size_t size = json_object_text((json_span){texts[i].from, strlen(texts[i].from)}, text, sizeof text);
        if (texts[i].text == NULL) {
            assert_int_equal(size, JSON_NO_TEXT);
            continue;
        }
        assert_string_equal(text, texts[i].text);
        assert_int_equal(size, strlen(texts[i].text));
        for (size_t room = 0; room <= size; room++)
            assert_int_equal(json_object_text((json_span){texts[i].from, strlen(texts[i].from)}, text, room), JSON_NO_TEXT);
    }
}

/* Each byte at each place of a name that is read in words: what ends it, what may not be in it, and what may. */
static void each_byte_of_a_name_is_looked_at(void **state)
{
    (void)state;
    for (size_t size = 1; size <= 20; size++) {
        for (size_t at = 0; at < size; at++) {
            for (int byte = 0; byte < 256; byte++) {
                char bytes[32] = "{\"nnnnnnnnnnnnnnnnnnnn";
                json_object_reader reader;
                json_member member;
                bytes[2 + at] = (char)byte;
                memcpy(bytes + 2 + size, "\":1}", 4);
                json_object_open(&reader, bytes, size + 6);
                const bool escapes = byte == '\\' && at + 1 < size; /* \n */
                const bool is_good = byte >= 0x20 && byte != '"' && (byte != '\\' || escapes);
                assert_int_equal(json_object_next(&reader, &member), is_good ? JSON_MEMBER : JSON_BAD);
                assert_true(!is_good || member.name.size == size);
            }
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(objects_are_read_to_their_end), cmocka_unit_test(what_is_no_object_is_refused),
        cmocka_unit_test(an_array_has_elements), cmocka_unit_test(a_text_is_resolved),
        cmocka_unit_test(each_byte_of_a_name_is_looked_at)};
    return cmocka_run_group_tests_name("json_object", tests, NULL, NULL);
}
