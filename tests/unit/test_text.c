/* SPDX-License-Identifier: Apache-2.0 */
/* UTF-8 cursor, blanks, located errors, the bounded writer. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>

#include <cmocka.h>

#include "core/text.h"

#include <stdio.h>
#include <string.h>

static const rodt_error untouched = {.status = RODT_OK, .line = 7, .column = 8, .field = "x", .text = "y"};

static void check_codes(const char *text, size_t size, const uint32_t *codes, size_t count)
{
    text_cursor cursor;
    rodti_text_start(&cursor, text, size);
    for (size_t i = 0; i < count; i++) {
        assert_int_equal(cursor.code, codes[i]);
        assert_int_equal(cursor.column, i + 1);
        rodti_text_next(&cursor);
    }
    assert_true(cursor.code == TEXT_END && cursor.bytes == 0);
    uint32_t column = cursor.column;
    rodti_text_next(&cursor);
    assert_int_equal(cursor.column, column);
}

static void test_cursor_counts_characters(void **state)
{
    (void)state;
    static const uint32_t codes[] = {'1', 0xBD, 0x2033, 0x1F600, 'x'};
    check_codes("1\xC2\xBD\xE2\x80\xB3\xF0\x9F\x98\x80x", 11, codes, COUNT_OF(codes));
    static const uint32_t with_zero[] = {'1', 0, '2'};
    check_codes("1\0002", 3, with_zero, COUNT_OF(with_zero));
    check_codes("", 0, with_zero, 0);
    static const uint32_t after_broken[] = {'1', TEXT_BAD, '2', TEXT_BAD, TEXT_BAD, 0x80, '3', 0x7F, '4'};
    check_codes("1\x80" "2\xE2\x80\xC2\x80" "3\x7F" "4", 10, after_broken, COUNT_OF(after_broken));
}

/* The first and the last character of each number of bytes, and their neighbours, which are none. */
static void test_ends_of_the_forms(void **state)
{
    (void)state;
    static const struct {
        const char *bytes;
        uint32_t code; /* TEXT_BAD = every byte is broken */
    } cases[] = {
        {"\x7F", 0x7F},              {"\x80", TEXT_BAD},             {"\xBF", TEXT_BAD},     {"\xC1\xBF", TEXT_BAD},
        {"\xC2\x80", 0x80},          {"\xDF\xBF", 0x7FF},           {"\xE0\x9F\xBF", TEXT_BAD},
        {"\xE0\xA0\x80", 0x800},     {"\xED\x9F\xBF", 0xD7FF},     {"\xED\xA0\x80", TEXT_BAD},
        {"\xED\xBF\xBF", TEXT_BAD},  {"\xEE\x80\x80", 0xE000},     {"\xEF\xBF\xBF", 0xFFFF},
        {"\xF0\x8F\xBF\xBF", TEXT_BAD}, {"\xF0\x90\x80\x80", 0x10000}, {"\xF3\xB0\x81\x82", 0xF0042},
        {"\xF4\x8F\xBF\xBF", 0x10FFFF}, {"\xF4\x90\x80\x80", TEXT_BAD}, {"\xF5\x80\x80\x80", TEXT_BAD},
        {"\xF8\x80\x80\x80", TEXT_BAD}, {"\xFF", TEXT_BAD},          {"\xC2", TEXT_BAD},     {"\xE1\x80\xC0", TEXT_BAD},
        {"\xE1\xC0\x80", TEXT_BAD},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        static const uint32_t bad[] = {TEXT_BAD, TEXT_BAD, TEXT_BAD, TEXT_BAD};
        size_t size = strlen(cases[i].bytes);
        bool is_bad = cases[i].code == TEXT_BAD;
        check_codes(cases[i].bytes, size, is_bad ? bad : &cases[i].code, is_bad ? size : 1);
    }
}

/* Broken forms: RFC 3629, section 3 and 4. One byte is taken at a time. */
static void test_broken_bytes(void **state)
{
    (void)state;
    static const uint32_t bad[] = {TEXT_BAD, TEXT_BAD, TEXT_BAD, TEXT_BAD};
    check_codes("\x80", 1, bad, 1);             /* a byte that only continues */
    check_codes("\xC0\xB1", 2, bad, 2);         /* overlong form of '1' */
    check_codes("\xE0\x80\xB1", 3, bad, 3);     /* overlong, three bytes */
    check_codes("\xF0\x80\x80\xB1", 4, bad, 4); /* overlong, four bytes */
    check_codes("\xED\xA0\x80", 3, bad, 3);     /* surrogate */
    check_codes("\xF4\x90\x80\x80", 4, bad, 4); /* above U+10FFFF */
    check_codes("\xF5", 1, bad, 1);
    check_codes("\xE2\x80", 2, bad, 2); /* cut off */
    static const uint32_t recovers[] = {TEXT_BAD, '1'};
    check_codes("\xE2"
                "1",
                2, recovers, 2);
}

static void test_trim(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        const char *trimmed;
    } cases[] = {
        {"", ""},
        {"  ", ""},
        {" 1 3/4 ", "1 3/4"},
        {"\t2\r\n", "2"},
        {"\xC2\xA0"
         "2\xE2\x80\xAF",
         "2"},
        {"2", "2"},
        {"\xEF\xBB\xBF"
         "2",
         "\xEF\xBB\xBF"
         "2"}, /* a byte order mark is no blank */
        {"!2!", "!2!"},
        {"\u00A0" "2", "2"},
        {"2\u00A0", "2"},
        {"\n 2 \r\u00A0\n", "2"},
        {"\u2007 \u2009x y\u202F\t", "x y"},
        {" \u00A0 ", ""},
        {"\xA0" "2\xA0", "\xA0" "2\xA0"}, /* not the bytes of a character */
        {"2\u2008", "2\u2008"},
        {"\xC2\x85" "2", "\xC2\x85" "2"},
        {"2 \u00BD \u00A0", "2 \u00BD"},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        const char *text = cases[i].text;
        size_t size = strlen(text);
        rodti_text_trim(&text, &size);
        assert_int_equal(size, strlen(cases[i].trimmed));
        assert_memory_equal(text, cases[i].trimmed, size);
    }
    const char *blanks = "    x", *text = blanks; /* the rest is no part of the text */
    size_t size = 2;
    rodti_text_trim(&text, &size);
    assert_true(text == blanks + 2 && size == 0);
}

static void test_words(void **state)
{
    (void)state;
    assert_true(rodti_text_is_word("MM", 2, "mm") && rodti_text_is_word("Inch", 4, "inch") && rodti_text_is_word("", 0, ""));
    assert_false(rodti_text_is_word("mm", 1, "mm") || rodti_text_is_word("mmm", 3, "mm"));
    assert_false(rodti_text_is_word("in\0x", 4, "in\0x")); /* a word ends at its zero byte */
    assert_false(rodti_text_is_word("\r", 1, "-")); /* '\r' | 32 is '-': only letters have two cases */
    assert_false(rodti_text_is_word("@", 1, "`") || rodti_text_is_word("[", 1, "{"));
    assert_true(text_is_letter('a') && text_is_letter('Z') && !text_is_letter('@') && !text_is_letter('[') &&
                !text_is_letter(0xE9));
    assert_true(text_is_digit('0') && text_is_digit('9') && !text_is_digit('/') && !text_is_digit(':') &&
                !text_is_digit(0xFF11));
}

static void test_error(void **state)
{
    (void)state;
    rodt_error error = untouched;
    assert_int_equal(rodti_text_error(NULL, RODT_E_UNIT, 3, "%s", "x"), RODT_E_UNIT);
    assert_int_equal(rodti_text_error(&error, RODT_E_UNIT, 3, "a %s of %d", "word", 2), RODT_E_UNIT);
    assert_int_equal(error.status, RODT_E_UNIT);
    assert_int_equal(error.column, 3);
    assert_int_equal(error.line, 0);
    assert_string_equal(error.field, "");
    assert_string_equal(error.text, "a word of 2");
}

/* A sentence that is too long ends at a character's end, whatever the offset. */
static void test_long_error_is_cut_between_characters(void **state)
{
    (void)state;
    for (size_t shift = 0; shift < 4; shift++) {
        char text[2 * RODT_ERROR_TEXT_SIZE + 8] = "xxx";
        for (size_t at = shift; at + 3 < sizeof text; at += 3)
            memcpy(text + at, "\xE2\x80\xB3", 4);
        rodt_error error;
        rodti_text_error(&error, RODT_E_SYNTAX, 1, "%s", text);
        size_t size = strlen(error.text);
        assert_true(size < RODT_ERROR_TEXT_SIZE && size + 3 >= RODT_ERROR_TEXT_SIZE - 1);
        text_cursor cursor;
        for (rodti_text_start(&cursor, error.text, size); cursor.code != TEXT_END; rodti_text_next(&cursor))
            assert_true(cursor.code != TEXT_BAD);
    }
}

/* The last byte that fits, and the first that does not. */
static void test_error_of_exactly_its_room(void **state)
{
    (void)state;
    char text[RODT_ERROR_TEXT_SIZE + 2];
    rodt_error error;
    memset(text, 'x', sizeof text);
    for (size_t size = RODT_ERROR_TEXT_SIZE - 2; size <= RODT_ERROR_TEXT_SIZE; size++) {
        rodti_text_error(&error, RODT_E_SYNTAX, 1, "%.*s", (int)size, text);
        assert_int_equal(strlen(error.text), size < RODT_ERROR_TEXT_SIZE ? size : RODT_ERROR_TEXT_SIZE - 1);
    }
    memcpy(text + RODT_ERROR_TEXT_SIZE - 2, "\u00E9", 3);
    rodti_text_error(&error, RODT_E_SYNTAX, 1, "%s", text);
    assert_int_equal(strlen(error.text), RODT_ERROR_TEXT_SIZE - 2);
    text[RODT_ERROR_TEXT_SIZE - 1] = '\0';
    rodti_text_error(&error, RODT_E_SYNTAX, 1, "%s", text); /* broken, but not by its room */
    assert_int_equal(strlen(error.text), RODT_ERROR_TEXT_SIZE - 1);
}

static void test_show(void **state)
{
    (void)state;
    static const struct {
        uint32_t code;
        const char *shown;
    } cases[] = {
        {'a', "a"},         {0xBD, "\xC2\xBD"},     {0x2033, "\xE2\x80\xB3"}, {0x1F600, "U+1F600"},
        {0, "U+0000"},      {' ', "U+0020"},        {0x7F, "U+007F"},         {0xA0, "U+00A0"},
        {0xAD, "U+00AD"},   {0x200B, "U+200B"},     {0x202F, "U+202F"},       {0x2060, "U+2060"},
        {0x205E, "\xE2\x81\x9E"}, {0x206F, "U+206F"}, {0x2070, "\xE2\x81\xB0"}, {0x3000, "U+3000"}, {0x3001, "\xE3\x80\x81"},
        {0xFFEF, "\xEF\xBF\xAF"}, {0xFFF0, "U+FFF0"}, {0xF8FF, "U+F8FF"}, {0xF900, "\xEF\xA4\x80"},
        {0xFEFF, "U+FEFF"}, {0x10FFFF, "U+10FFFF"}, {TEXT_END, "the end"},    {TEXT_BAD, "a broken byte"},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        char shown[TEXT_SHOWN_SIZE];
        rodti_text_show(cases[i].code, shown);
        assert_string_equal(shown, cases[i].shown);
    }
}

/* What is written for an invisible character, and that every other is itself. */
static void test_show_every_character(void **state)
{
    (void)state;
    static const struct {
        uint32_t first, last;
    } invisible[] = {{0, 0x20},          {0x7F, 0xA0},       {0xAD, 0xAD},     {0x2000, 0x200F},   {0x2028, 0x202F},
                     {0x205F, 0x206F},   {0x3000, 0x3000},   {0xE000, 0xF8FF}, {0xFEFF, 0xFEFF},   {0xFFF0, 0x1000F}};
    size_t at = 0;
    for (uint32_t code = 0; code <= 0x1000F; code++) {
        char shown[TEXT_SHOWN_SIZE], wanted[TEXT_SHOWN_SIZE];
        text_cursor cursor;
        at += code > invisible[at].last ? 1 : 0;
        rodti_text_show(code, shown);
        rodti_text_start(&cursor, shown, strlen(shown));
        snprintf(wanted, sizeof wanted, "U+%04X", (unsigned)code);
        if (code >= invisible[at].first)
            assert_string_equal(shown, wanted);
        else if (code < 0xD800 || code > 0xDFFF)
            assert_true(cursor.code == code && cursor.bytes == strlen(shown));
    }
}

/* An incomplete character at the end is left out; a complete one stays. */
static void test_cut(void **state)
{
    (void)state;
    static const char text[] = "a\u00E9\u20AC\U0001F600"; /* 1, 2, 3 and 4 bytes */
    static const size_t sizes[] = {0, 1, 1, 3, 3, 3, 6, 6, 6, 6, 10};
    for (size_t size = 0; size < COUNT_OF(sizes); size++)
        assert_int_equal(rodti_text_cut(text, size), sizes[size]);
    assert_int_equal(rodti_text_cut(&"a\x80\x80\x80"[2], 2), 2); /* what stands before a text is no part of it */
    /* What a first byte announces is whole; bytes that announce nothing are left out. */
    static const char *const whole[] = {"\x7F", "\xC2\x80", "\xDF\xBF", "\xE0\x80\x80", "\xEF\x80\x80",
                                        "\xF0\x80\x80\x80", "\xF4\x80\x80\x80", "\xBF"};
    static const char *const broken[] = {"\xC1\x80", "\xE0\x80", "\xDF\x80\x80", "\xEF\x80\x80\x80", "\xF5\x80\x80\x80"};
    for (size_t i = 0; i < COUNT_OF(whole); i++)
        assert_int_equal(rodti_text_cut(whole[i], strlen(whole[i])), strlen(whole[i]));
    for (size_t i = 0; i < COUNT_OF(broken); i++)
        assert_int_equal(rodti_text_cut(broken[i], strlen(broken[i])), 0);
}

static void test_writer(void **state)
{
    (void)state;
    text_writer writer;
    char text[8] = "#";
    memset(writer.buffer, '#', sizeof writer.buffer);
    rodti_text_begin(&writer);
    assert_string_equal(writer.buffer, "");
    rodti_text_put(&writer, "abc\0?");
    assert_memory_equal(writer.buffer, "abc\0#", 5);
    rodti_text_putf(&writer, "%d", 42);
    assert_int_equal(rodti_text_copy_out(&writer, text, 5, NULL), RODT_E_SPACE);
    assert_int_equal(rodti_text_copy_out(&writer, NULL, 9, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodti_text_copy_out(&writer, NULL, 1, NULL), RODT_E_ARGUMENT);
    assert_string_equal(text, "#");
    size_t needed = 0;
    assert_int_equal(rodti_text_copy_out(&writer, NULL, 0, &needed), RODT_E_SPACE);
    assert_int_equal(needed, 6);
    assert_int_equal(rodti_text_copy_out(&writer, text, 6, NULL), RODT_OK);
    assert_string_equal(text, "abc42");
    rodti_text_putf(&writer, "%s", "");
    assert_int_equal(rodti_text_copy_out(&writer, text, 6, NULL), RODT_OK);
    assert_string_equal(text, "abc42");
}

/* What the writer itself cannot hold is not cut: nothing is copied out at all. */
static void test_full_writer(void **state)
{
    (void)state;
    text_writer writer;
    char text[2048] = "#";
    rodti_text_begin(&writer);
    for (size_t i = 0; i < sizeof writer.buffer - 1; i++)
        rodti_text_put(&writer, "a");
    assert_int_equal(rodti_text_copy_out(&writer, text, sizeof text, NULL), RODT_OK);
    assert_int_equal(strlen(text), sizeof writer.buffer - 1);
    rodti_text_putf(&writer, "%s", "b");
    assert_int_equal(rodti_text_copy_out(&writer, text, sizeof text, NULL), RODT_E_INTERNAL);
    rodti_text_begin(&writer);
    rodti_text_put(&writer, text);
    rodti_text_put(&writer, "b");
    assert_int_equal(rodti_text_copy_out(&writer, text, sizeof text, NULL), RODT_E_INTERNAL);
    assert_int_equal(writer.used, sizeof writer.buffer - 1);
    assert_string_equal(writer.buffer, text);
    assert_int_equal(text[0], 'a');
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_cursor_counts_characters),
        cmocka_unit_test(test_broken_bytes),
        cmocka_unit_test(test_trim),
        cmocka_unit_test(test_words),
        cmocka_unit_test(test_error),
        cmocka_unit_test(test_long_error_is_cut_between_characters),
        cmocka_unit_test(test_error_of_exactly_its_room),
        cmocka_unit_test(test_ends_of_the_forms),
        cmocka_unit_test(test_show),
        cmocka_unit_test(test_show_every_character),
        cmocka_unit_test(test_cut), cmocka_unit_test(test_writer),
        cmocka_unit_test(test_full_writer),
    };
    return cmocka_run_group_tests_name("text", tests, NULL, NULL);
}
