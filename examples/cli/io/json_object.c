/* SPDX-License-Identifier: Apache-2.0 */
/* The grammar of RFC 8259, and nothing beyond it. */
#include "io/json_object.h"

#include <stdint.h>
#include <string.h>

void json_object_open(json_object_reader *reader, const char *bytes, size_t size)
{
    *reader = (json_object_reader){.at = bytes, .end = bytes + size};
}

static void skip_blanks(json_object_reader *reader)
{
    while (reader->at < reader->end &&
           (*reader->at == ' ' || *reader->at == '\t' || *reader->at == '\r' || *reader->at == '\n'))
        reader->at++;
}

static bool take(json_object_reader *reader, char byte)
{
    if (reader->at == reader->end || *reader->at != byte)
        return false;
    reader->at++;
    return true;
}

static int hex_value(char byte)
{
    if (byte >= '0' && byte <= '9')
        return byte - '0';
    if (byte >= 'a' && byte <= 'f')
        return byte - 'a' + 10;
    return byte >= 'A' && byte <= 'F' ? byte - 'A' + 10 : -1;
}

static bool take_escape(json_object_reader *reader)
{
    if (reader->at == reader->end)
        return false;
    char byte = *reader->at++;
    if (byte != 'u')
        return byte != '\0' && strchr("\"\\/bfnrt", byte) != NULL;
    for (int i = 0; i < 4; i++)
        if (reader->at == reader->end || hex_value(*reader->at++) < 0)
            return false;
    return true;
}

/* Passes over bytes that stand for themselves in a text, eight at a time, up to the first that may not; it may stop
 * before. In a word the lowest byte that is marked is rightly so: what is borrowed goes upwards. */
static void skip_plain(json_object_reader *reader)
{
#if defined(__BYTE_ORDER__) && __BYTE_ORDER__ == __ORDER_LITTLE_ENDIAN__
    const uint64_t each = UINT64_C(0x0101010101010101);
    while (reader->end - reader->at >= 8) {
        uint64_t word;
        memcpy(&word, reader->at, sizeof word);
        const uint64_t quote = word ^ each * '"';
        const uint64_t backslash = word ^ each * '\\';
        const uint64_t marks =
            ((quote - each) & ~quote) | ((backslash - each) & ~backslash) | ((word - each * 0x20) & ~word);
        if ((marks & each * 0x80) != 0) {
            reader->at += __builtin_ctzll(marks & each * 0x80) / 8;
            return;
        }
        reader->at += 8;
    }
#else
    (void)reader;
#endif
}

static bool take_text(json_object_reader *reader, json_span *out)
{
    if (!take(reader, '"'))
        return false;
    out->bytes = reader->at;
    skip_plain(reader);
    while (reader->at < reader->end && *reader->at != '"') {
        if ((unsigned char)*reader->at < 0x20 || (*reader->at++ == '\\' && !take_escape(reader)))
            return false;
    }
    out->size = (size_t)(reader->at - out->bytes);
    return take(reader, '"');
}

static bool take_digits(json_object_reader *reader)
{
    const char *from = reader->at;
    while (reader->at < reader->end && *reader->at >= '0' && *reader->at <= '9')
        reader->at++;
    return reader->at > from;
}

static bool take_number(json_object_reader *reader)
{
    (void)take(reader, '-');
    if (!take(reader, '0') && !take_digits(reader))
        return false;
    if (take(reader, '.') && !take_digits(reader))
        return false;
    if (take(reader, 'e') || take(reader, 'E')) {
        if (!take(reader, '+'))
            (void)take(reader, '-');
        return take_digits(reader);
    }
    return true;
}

static bool take_word(json_object_reader *reader, const char *word)
{
    size_t size = strlen(word);
    if ((size_t)(reader->end - reader->at) < size || memcmp(reader->at, word, size) != 0)
        return false;
    reader->at += size;
    return true;
}

/* A value that is neither an object nor an array. */
static bool take_plain(json_object_reader *reader, json_kind *kind, json_span *text)
{
    if (reader->at < reader->end && *reader->at == '"') {
        *kind = JSON_TEXT;
        return take_text(reader, text);
    }
    text->bytes = reader->at;
    bool good = true;
    if (take_word(reader, "null"))
        *kind = JSON_NULL;
    else if (take_word(reader, "true") || take_word(reader, "false"))
        *kind = JSON_BOOL;
    else {
        *kind = JSON_NUMBER;
        good = take_number(reader);
    }
    text->size = (size_t)(reader->at - text->bytes);
    return good;
}

/* What comes before a value: in an object its name. */
static bool take_name(json_object_reader *reader, char closing, json_span *name)
{
    skip_blanks(reader);
    if (closing == ']')
        return true;
    if (!take_text(reader, name))
        return false;
    skip_blanks(reader);
    if (!take(reader, ':'))
        return false;
    skip_blanks(reader);
    return true;
}

/* Skips an object or an array; the stack holds the closing brackets that are due, the innermost last. */
static bool take_nested(json_object_reader *reader)
{
    char closing[JSON_DEPTH];
    size_t depth = 0;
    json_kind kind;
    json_span unused;
    do {
        skip_blanks(reader);
        bool opens = reader->at < reader->end && (*reader->at == '{' || *reader->at == '[');
        if (opens) {
            if (depth == JSON_DEPTH)
                return false;
            closing[depth++] = *reader->at++ == '{' ? '}' : ']';
        } else if (!take_plain(reader, &kind, &unused)) {
            return false;
        }
        skip_blanks(reader);
        bool first = opens;
        while (depth > 0 && take(reader, closing[depth - 1])) {
            depth--;
            first = false;
            skip_blanks(reader);
        }
        if (depth > 0 && ((!first && !take(reader, ',')) || !take_name(reader, closing[depth - 1], &unused)))
            return false;
        if (depth > 0)
            skip_blanks(reader);
    } while (depth > 0);
    return true;
}

bool json_value_read(json_object_reader *reader, json_kind *kind, json_span *value)
{
    if (reader->at == reader->end || (*reader->at != '{' && *reader->at != '['))
        return take_plain(reader, kind, value);
    *kind = JSON_NESTED;
    value->bytes = reader->at;
    bool good = take_nested(reader);
    value->size = (size_t)(reader->at - value->bytes);
    return good;
}

static json_status take_end(json_object_reader *reader)
{
    reader->close = reader->at - 1;
    skip_blanks(reader);
    return reader->at == reader->end ? JSON_END : JSON_BAD;
}

static json_status take_next(json_object_reader *reader, char opening, char closing, json_member *out)
{
    skip_blanks(reader);
    if (!reader->begun && !take(reader, opening))
        return JSON_BAD;
    reader->begun = true;
    skip_blanks(reader);
    if (take(reader, closing))
        return take_end(reader);
    if ((reader->any && !take(reader, ',')) || !take_name(reader, closing, &out->name))
        return JSON_BAD;
    reader->any = true;
    return json_value_read(reader, &out->kind, &out->value) ? JSON_MEMBER : JSON_BAD;
}

json_status json_object_next(json_object_reader *reader, json_member *out)
{
    return take_next(reader, '{', '}', out);
}

json_status json_array_next(json_object_reader *reader, json_member *out)
{
    return take_next(reader, '[', ']', out);
}

/* --- Texts --------------------------------------------------------------------------------------------- */

static uint32_t hex_number(const char *at)
{
    uint32_t number = 0;
    for (int i = 0; i < 4; i++)
        number = number << 4 | (uint32_t)hex_value(at[i]);
    return number;
}

static size_t write_utf8(uint32_t code, char out[4])
{
    if (code < 0x80) {
        out[0] = (char)code;
        return 1;
    }
    size_t bytes = code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
    for (size_t i = bytes - 1; i > 0; i--, code >>= 6)
        out[i] = (char)(0x80 | (code & 0x3F));
    out[0] = (char)((0xF00u >> bytes & 0xFFu) | code);
    return bytes;
}

/* The character of \uXXXX, of two of them if it takes two. Returns the bytes that were read, 0 for an unpaired
 * surrogate. */
static size_t read_code(const char *at, const char *end, uint32_t *code)
{
    *code = hex_number(at);
    if (*code >= 0xDC00 && *code <= 0xDFFF)
        return 0;
    if (*code < 0xD800 || *code > 0xDBFF)
        return 4;
    if (end - at < 10 || at[4] != '\\' || at[5] != 'u')
        return 0;
    uint32_t low = hex_number(at + 6);
    if (low < 0xDC00 || low > 0xDFFF)
        return 0;
    *code = 0x10000 + ((*code - 0xD800) << 10) + (low - 0xDC00);
    return 10;
}

/* Resolves an escape; `at` is after the backslash. Returns the bytes that were read, 0 for half a character. */
static size_t read_escape(const char *at, const char *end, char out[4], size_t *written)
{
    static const char letters[] = "bfnrt";
    static const char meanings[] = "\b\f\n\r\t";
    const char *found = strchr(letters, *at);
    if (*at == 'u') {
        uint32_t code;
        size_t read = read_code(at + 1, end, &code);
        *written = read > 0 ? write_utf8(code, out) : 0;
        return read > 0 ? read + 1 : 0;
    }
    out[0] = found != NULL ? meanings[found - letters] : *at;
    *written = 1;
    return 1;
}

size_t json_object_text(json_span from, char *text, size_t size)
{
    const char *end = from.bytes + from.size;
    size_t used = 0;
    if (from.size < size && memchr(from.bytes, '\\', from.size) == NULL) {
        memcpy(text, from.bytes, from.size);
        text[from.size] = '\0';
        return from.size;
    }
    for (const char *at = from.bytes; at < end;) {
        char out[4] = {*at};
        size_t written = 1;
        size_t read = 1;
        if (*at == '\\') {
            read = read_escape(at + 1, end, out, &written);
            if (read++ == 0)
                return JSON_NO_TEXT;
        }
        if (used + written >= size)
            return JSON_NO_TEXT;
        memcpy(text + used, out, written);
        used += written;
        at += read;
    }
    if (used >= size)
        return JSON_NO_TEXT;
    text[used] = '\0';
    return used;
}
