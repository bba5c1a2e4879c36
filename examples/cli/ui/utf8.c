/* SPDX-License-Identifier: Apache-2.0 */
/* UTF-8 for people: nothing that could steer a terminal, everything unseen made visible. */
#include "ui/utf8.h"
#include "ui/compiler.h"

#include <stdbool.h>
#include <stdio.h>
#include <string.h>

/* Decodes by RFC 3629. Returns the bytes, or 0 if no character is here. */
static size_t decode(const unsigned char *at, uint32_t *code)
{
    static const uint32_t smallest[] = {0, 0, 0x80, 0x800, 0x10000};
    size_t bytes = at[0] < 0x80 ? 1 : at[0] < 0xC2 ? 0 : at[0] < 0xE0 ? 2 : at[0] < 0xF0 ? 3 : at[0] < 0xF5 ? 4 : 0;
    if (bytes <= 1) {
        *code = at[0];
        return bytes;
    }
    *code = at[0] & (0xFFu >> (bytes + 1));
    for (size_t i = 1; i < bytes; i++) {
        if ((at[i] & 0xC0) != 0x80)
            return 0;
        *code = *code << 6 | (at[i] & 0x3Fu);
    }
    bool valid = *code >= smallest[bytes] && *code <= 0x10FFFF && (*code < 0xD800 || *code > 0xDFFF);
    return valid ? bytes : 0;
}

size_t utf8_bytes(const char *text, size_t size)
{
    unsigned char bytes[4] = {0}; /* a character that is cut off is none */
    uint32_t code;
    memcpy(bytes, text, size < sizeof bytes ? size : sizeof bytes);
    return decode(bytes, &code);
}

const char *shorten(const char *text, char shown[SHORTENED_SIZE])
{
    size_t size = strlen(text);
    size_t cut = size < SHORTENED_SIZE ? size : SHORTENED_SIZE - 4;
    while (cut < size && cut > 0 && ((unsigned char)text[cut] & 0xC0) == 0x80)
        cut--;
    memcpy(shown, text, cut);
    memcpy(shown + cut, cut < size ? "..." : "", cut < size ? 4 : 1);
    return shown;
}

typedef struct range {
    uint32_t first;
    uint32_t last;
} range;

/* The ranges are in order, and most characters are before the first or the second. */
static bool is_in(uint32_t code, const range *ranges, size_t count)
{
    for (size_t i = 0; i < count && code >= ranges[i].first; i++) {
        if (code <= ranges[i].last)
            return true;
    }
    return false;
}

/* Control, invisible and private characters, and numbers that are none: a person must see that they are there, and
 * XML forbids some. */
static bool is_unseen(uint32_t code)
{
    static const range unseen[] = {{0x00, 0x1F},     {0x7F, 0x9F},     {0xAD, 0xAD},      {0x061C, 0x061C},
                                   {0x180E, 0x180E}, {0x200B, 0x200F}, {0x2028, 0x202E},  {0x2060, 0x206F},
                                   {0xE000, 0xF8FF}, {0xFEFF, 0xFEFF}, {0xFFF0, 0xFFFB},  {0xE0000, 0x10FFFF}};
    bool none = (code & 0xFFFE) == 0xFFFE || (code >= 0xFDD0 && code <= 0xFDEF);
    return none || is_in(code, unseen, COUNT_OF(unseen));
}

/* The usual East Asian and emoji blocks take two columns; marks on the character before take none. */
static unsigned width_of(uint32_t code)
{
    static const range none[] = {{0x0300, 0x036F}, {0x1AB0, 0x1AFF}, {0x1DC0, 0x1DFF},
                                 {0x20D0, 0x20FF}, {0xFE00, 0xFE0F}, {0xFE20, 0xFE2F}};
    static const range two[] = {{0x1100, 0x115F},   {0x2E80, 0x303E},   {0x3041, 0xA4CF}, {0xAC00, 0xD7A3},
                                {0xF900, 0xFAFF},   {0xFE30, 0xFE6F},   {0xFF01, 0xFF60}, {0xFFE0, 0xFFE6},
                                {0x1F300, 0x1FAFF}, {0x20000, 0x3FFFD}};
    return is_in(code, none, COUNT_OF(none)) ? 0 : is_in(code, two, COUNT_OF(two)) ? 2 : 1;
}

size_t show_character(const char *text, char shown[SHOWN_SIZE], unsigned *width)
{
    uint32_t code;
    size_t bytes = decode((const unsigned char *)text, &code);
    if (bytes > 0 && !is_unseen(code)) {
        memcpy(shown, text, bytes);
        shown[bytes] = '\0';
        *width = width_of(code);
        return bytes;
    }
    if (bytes == 0)
        snprintf(shown, SHOWN_SIZE, "<%02X>", (unsigned char)*text);
    else
        snprintf(shown, SHOWN_SIZE, "<U+%04X>", (unsigned)code);
    *width = (unsigned)strlen(shown);
    return bytes == 0 ? 1 : bytes;
}

void print_safely(FILE *to, const char *text)
{
    char shown[SHOWN_SIZE];
    unsigned width;
    while (*text != '\0') {
        text += show_character(text, shown, &width);
        fputs(shown, to);
    }
}

unsigned columns_of(const char *text, size_t size)
{
    char shown[SHOWN_SIZE];
    unsigned columns = 0;
    for (const char *at = text; at < text + size;) {
        unsigned width;
        at += show_character(at, shown, &width);
        columns += width;
    }
    return columns;
}

unsigned columns_of_text(const char *text) { return columns_of(text, strlen(text)); }
