/* SPDX-License-Identifier: Apache-2.0 */
/* The only UTF-8 decoder of the library, located errors and a bounded writer. Uses no locale: neither isalpha nor
 * tolower nor the multibyte functions. */
#include "core/text.h"

#include "core/always.h"
#include "core/sentences.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

/* Number of bytes that a first byte announces, or 0 if no character starts with it. */
static uint32_t announced_bytes(unsigned char first)
{
    if (first < 0x80)
        return 1;
    if (first < 0xC2 || first > 0xF4)
        return 0;
    return first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
}

/* Decodes one character by the rules of RFC 3629: no overlong form, no surrogate, nothing above U+10FFFF. */
static uint32_t decode(const unsigned char *at, const unsigned char *end, uint32_t *bytes)
{
    static const uint32_t smallest[] = {0x80, 0x800, 0x10000};
    uint32_t n = announced_bytes(*at);
    *bytes = 1;
    if (n == 1)
        return *at;
    if (n == 0 || (size_t)(end - at) < n)
        return TEXT_BAD;
    uint32_t code = *at & (0xFFu >> (n + 1));
    for (uint32_t i = 1; i < n; i++) {
        if ((at[i] & 0xC0) != 0x80)
            return TEXT_BAD;
        code = code << 6 | (at[i] & 0x3Fu);
    }
    if (code < smallest[n - 2] || code > 0x10FFFF || (code >= 0xD800 && code <= 0xDFFF))
        return TEXT_BAD;
    *bytes = n;
    return code;
}

static void decode_here(text_cursor *cursor)
{
    cursor->bytes = 0;
    cursor->code = TEXT_END;
    if (cursor->at < cursor->end)
        cursor->code = decode(cursor->at, cursor->end, &cursor->bytes);
}

void rodti_text_start(text_cursor *cursor, const char *text, size_t size)
{
    cursor->at = (const unsigned char *)text;
    cursor->end = cursor->at + size;
    cursor->column = 1;
    decode_here(cursor);
}

void rodti_text_next_any(text_cursor *cursor)
{
    if (cursor->code == TEXT_END)
        return;
    cursor->at += cursor->bytes;
    cursor->column++;
    decode_here(cursor);
}

bool rodti_text_is_blank(uint32_t code)
{
    return code == ' ' || code == '\t' || code == 0xA0 || code == 0x2007 || code == 0x2009 || code == 0x202F;
}

void rodti_text_skip_blanks(text_cursor *cursor)
{
    while (rodti_text_is_blank(cursor->code))
        rodti_text_next(cursor);
}

static bool is_edge(uint32_t code) { return rodti_text_is_blank(code) || code == '\n' || code == '\r'; }

/* Blanks above ASCII can be at the ends too. */
static void trim_decoded(const char **text, size_t *size)
{
    text_cursor cursor;
    rodti_text_start(&cursor, *text, *size);
    while (is_edge(cursor.code))
        rodti_text_next(&cursor);
    const unsigned char *start = cursor.at;
    const unsigned char *stop = start;
    for (; cursor.code != TEXT_END; rodti_text_next(&cursor)) {
        if (!is_edge(cursor.code))
            stop = cursor.at + cursor.bytes;
    }
    *text = (const char *)start;
    *size = (size_t)(stop - start);
}

/* Most cells have no blank at all, so only their ends are looked at. */
void rodti_text_trim(const char **text, size_t *size)
{
    const unsigned char *start = (const unsigned char *)*text;
    const unsigned char *stop = start + *size;
    while (start < stop && *start <= ' ' && is_edge(*start))
        start++;
    while (start < stop && stop[-1] <= ' ' && is_edge(stop[-1]))
        stop--;
    *text = (const char *)start;
    *size = (size_t)(stop - start);
    if (start < stop && (*start | stop[-1]) >= 0x80)
        trim_decoded(text, size);
}

bool rodti_text_is_word(const char *text, size_t size, const char *word)
{
    for (size_t i = 0; i < size; i++) {
        unsigned char a = (unsigned char)text[i];
        unsigned char b = (unsigned char)word[i];
        if (b == '\0' || (a != b && (!text_is_letter(a) || (a | 32u) != (b | 32u))))
            return false;
    }
    return word[size] == '\0';
}

size_t rodti_text_cut(const char *text, size_t size)
{
    size_t start = size;
    while (start > 0 && ((unsigned char)text[start - 1] & 0xC0) == 0x80)
        start--;
    bool whole = start == 0 || announced_bytes((unsigned char)text[start - 1]) == size - start + 1;
    return whole ? size : start - 1;
}

rodt_status rodti_text_error(rodt_error *error, rodt_status status, uint32_t column, const char *format, ...)
{
    if (error == NULL)
        return status;
    memset(error, 0, sizeof *error);
    error->status = status;
    error->column = column;
    va_list arguments;
    va_start(arguments, format);
    int wanted = vsnprintf(error->text, sizeof error->text, format, arguments);
    va_end(arguments);
    if (wanted >= (int)sizeof error->text)
        error->text[rodti_text_cut(error->text, sizeof error->text - 1)] = '\0';
    return status;
}

/* Controls, format characters and unusual spaces are invisible. */
static bool is_visible(uint32_t code)
{
    if (code < 0x21 || (code >= 0x7F && code <= 0xA0) || code == 0xAD)
        return false;
    if ((code >= 0x2000 && code <= 0x200F) || (code >= 0x2028 && code <= 0x202F))
        return false;
    if ((code >= 0x205F && code <= 0x206F) || code == 0x3000 || code == 0xFEFF)
        return false;
    return code < 0xE000 || (code > 0xF8FF && code < 0xFFF0);
}

/* What is visible has no more than three bytes. */
static void encode(uint32_t code, char shown[TEXT_SHOWN_SIZE])
{
    unsigned n = code < 0x80 ? 1 : code < 0x800 ? 2 : 3;
    static const unsigned char marks[] = {0, 0xC0, 0xE0};
    for (unsigned i = n; i-- > 1; code >>= 6)
        shown[i] = (char)(0x80 | (code & 0x3F));
    shown[0] = (char)(marks[n - 1] | code);
    shown[n] = '\0';
}

void rodti_text_show(uint32_t code, char shown[TEXT_SHOWN_SIZE])
{
    if (code == TEXT_END)
        memcpy(shown, SENTENCE_END, sizeof SENTENCE_END);
    else if (code == TEXT_BAD)
        memcpy(shown, SENTENCE_BROKEN_BYTE, sizeof SENTENCE_BROKEN_BYTE);
    else if (is_visible(code))
        encode(code, shown);
    else
        snprintf(shown, TEXT_SHOWN_SIZE, "U+%04X", (unsigned)code);
}

void rodti_text_begin(text_writer *writer)
{
    writer->used = 0;
    writer->full = false;
    writer->buffer[0] = '\0';
}

void rodti_text_put(text_writer *writer, const char *text)
{
    size_t size = strlen(text);
    if (size >= sizeof writer->buffer - writer->used) {
        writer->full = true;
        return;
    }
    memcpy(writer->buffer + writer->used, text, size + 1);
    writer->used += size;
}

void rodti_text_putf(text_writer *writer, const char *format, ...)
{
    size_t left = sizeof writer->buffer - writer->used;
    va_list arguments;
    va_start(arguments, format);
    int wanted = vsnprintf(writer->buffer + writer->used, left, format, arguments);
    va_end(arguments);
    if (NEVER(wanted < 0) /* that is for wide characters */ || (size_t)wanted >= left)
        writer->full = true;
    else
        writer->used += (size_t)wanted;
}

rodt_status rodti_text_copy(const char *line, size_t used, char *text, size_t size, size_t *needed)
{
    if (text == NULL && size > 0)
        return RODT_E_ARGUMENT;
    if (needed != NULL)
        *needed = used + 1;
    if (used >= size)
        return RODT_E_SPACE;
    memcpy(text, line, used);
    text[used] = '\0';
    return RODT_OK;
}

rodt_status rodti_text_copy_out(const text_writer *writer, char *text, size_t size, size_t *needed)
{
    return writer->full ? RODT_E_INTERNAL : rodti_text_copy(writer->buffer, writer->used, text, size, needed);
}
