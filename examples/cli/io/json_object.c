/* SPDX-License-Identifier: Apache-2.0 */
/* The grammar of RFC 8259, and nothing beyond it. */
#include "io/json_object.h"

#include <stdint.h>
#include <string.h>

void json_object_open(members *walk, const char *bytes, size_t size)
{
    *walk = (members){.at = bytes, .end = bytes + size};
}

static void skip_blanks(members *walk)
{
    while (walk->at < walk->end && (*walk->at == ' ' || *walk->at == '\t' || *walk->at == '\r' || *walk->at == '\n'))
        walk->at++;
}

static bool take(members *walk, char byte)
{
    if (walk->at == walk->end || *walk->at != byte)
        return false;
    walk->at++;
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

static bool take_escape(members *walk)
{
    if (walk->at == walk->end)
        return false;
    char byte = *walk->at++;
    if (byte != 'u')
        return byte != '\0' && strchr("\"\\/bfnrt", byte) != NULL;
    for (int i = 0; i < 4; i++)
        if (walk->at == walk->end || hex_value(*walk->at++) < 0)
            return false;
    return true;
}

static bool take_text(members *walk, members_piece *out)
{
    if (!take(walk, '"'))
        return false;
    out->bytes = walk->at;
    while (walk->at < walk->end && *walk->at != '"') {
        char byte = *walk->at++;
        if ((unsigned char)byte < 0x20 || (byte == '\\' && !take_escape(walk)))
            return false;
    }
    out->size = (size_t)(walk->at - out->bytes);
    return take(walk, '"');
}

static bool take_digits(members *walk)
{
    const char *from = walk->at;
    while (walk->at < walk->end && *walk->at >= '0' && *walk->at <= '9')
        walk->at++;
    return walk->at > from;
}

static bool take_number(members *walk)
{
    (void)take(walk, '-');
    if (!take(walk, '0') && !take_digits(walk))
        return false;
    if (take(walk, '.') && !take_digits(walk))
        return false;
    if (take(walk, 'e') || take(walk, 'E')) {
        if (!take(walk, '+'))
            (void)take(walk, '-');
        return take_digits(walk);
    }
    return true;
}

static bool take_word(members *walk, const char *word)
{
    size_t size = strlen(word);
    if ((size_t)(walk->end - walk->at) < size || memcmp(walk->at, word, size) != 0)
        return false;
    walk->at += size;
    return true;
}

/* A value that is neither an object nor an array. */
static bool take_plain(members *walk, members_kind *kind, members_piece *text)
{
    if (walk->at < walk->end && *walk->at == '"') {
        *kind = MEMBERS_TEXT;
        return take_text(walk, text);
    }
    text->bytes = walk->at;
    bool good = true;
    if (take_word(walk, "null"))
        *kind = MEMBERS_NULL;
    else if (take_word(walk, "true") || take_word(walk, "false"))
        *kind = MEMBERS_BOOL;
    else {
        *kind = MEMBERS_NUMBER;
        good = take_number(walk);
    }
    text->size = (size_t)(walk->at - text->bytes);
    return good;
}

/* What comes before a value: in an object its name. */
static bool take_name(members *walk, char closing, members_piece *name)
{
    skip_blanks(walk);
    if (closing == ']')
        return true;
    if (!take_text(walk, name))
        return false;
    skip_blanks(walk);
    if (!take(walk, ':'))
        return false;
    skip_blanks(walk);
    return true;
}

/* Skips an object or an array; the stack holds the closing brackets that are due, the innermost last. */
static bool take_nested(members *walk)
{
    char closing[MEMBERS_DEPTH];
    size_t depth = 0;
    members_kind kind;
    members_piece unused;
    do {
        skip_blanks(walk);
        bool opens = walk->at < walk->end && (*walk->at == '{' || *walk->at == '[');
        if (opens) {
            if (depth == MEMBERS_DEPTH)
                return false;
            closing[depth++] = *walk->at++ == '{' ? '}' : ']';
            skip_blanks(walk);
        } else if (!take_plain(walk, &kind, &unused)) {
            return false;
        }
        bool first = opens;
        while (depth > 0 && take(walk, closing[depth - 1])) {
            depth--;
            first = false;
            skip_blanks(walk);
        }
        if (depth > 0 && ((!first && !take(walk, ',')) || !take_name(walk, closing[depth - 1], &unused)))
            return false;
        if (depth > 0)
            skip_blanks(walk);
    } while (depth > 0);
    return true;
}

static members_status take_end(members *walk)
{
    walk->close = walk->at - 1;
    skip_blanks(walk);
    return walk->at == walk->end ? MEMBERS_END : MEMBERS_BAD;
}

members_status json_object_next(members *walk, member *out)
{
    skip_blanks(walk);
    if (!walk->begun && !take(walk, '{'))
        return MEMBERS_BAD;
    walk->begun = true;
    skip_blanks(walk);
    if (take(walk, '}'))
        return take_end(walk);
    if ((walk->any && !take(walk, ',')) || !take_name(walk, '}', &out->name))
        return MEMBERS_BAD;
    walk->any = true;
    if (walk->at < walk->end && (*walk->at == '{' || *walk->at == '[')) {
        out->kind = MEMBERS_NESTED;
        out->value.bytes = walk->at;
        bool good = take_nested(walk);
        out->value.size = (size_t)(walk->at - out->value.bytes);
        return good ? MEMBERS_MEMBER : MEMBERS_BAD;
    }
    return take_plain(walk, &out->kind, &out->value) ? MEMBERS_MEMBER : MEMBERS_BAD;
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

/* The character of \uXXXX, of two of them if it takes two. Returns the bytes that were read, 0 for half a one. */
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

size_t json_object_text(members_piece piece, char *text, size_t size)
{
    const char *end = piece.bytes + piece.size;
    size_t used = 0;
    for (const char *at = piece.bytes; at < end;) {
        char out[4] = {*at};
        size_t written = 1;
        size_t read = 1;
        if (*at == '\\') {
            read = read_escape(at + 1, end, out, &written);
            if (read++ == 0)
                return MEMBERS_NO_TEXT;
        }
        if (used + written >= size)
            return MEMBERS_NO_TEXT;
        memcpy(text + used, out, written);
        used += written;
        at += read;
    }
    if (used >= size)
        return MEMBERS_NO_TEXT;
    text[used] = '\0';
    return used;
}
