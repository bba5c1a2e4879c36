/* SPDX-License-Identifier: Apache-2.0 */
/* Texts for people: nothing that steers a terminal, lines that fit it, colour only where it is wanted. */
#include "cli.h"

#include <stdlib.h>
#include <string.h>
#include <unistd.h>

/* --- Characters -------------------------------------------------------------------------------------- */

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
    bool sound = *code >= smallest[bytes] && *code <= 0x10FFFF && (*code < 0xD800 || *code > 0xDFFF);
    return sound ? bytes : 0;
}

typedef struct range {
    uint32_t first;
    uint32_t last;
} range;

static bool is_in(uint32_t code, const range *ranges, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        if (code >= ranges[i].first && code <= ranges[i].last)
            return true;
    }
    return false;
}

/* Controls, signs without a shape, private ones: a person must be told that they are there. */
static bool is_unseen(uint32_t code)
{
    static const range unseen[] = {{0x00, 0x1F},     {0x7F, 0x9F},     {0xAD, 0xAD},      {0x061C, 0x061C},
                                   {0x180E, 0x180E}, {0x200B, 0x200F}, {0x2028, 0x202E},  {0x2060, 0x206F},
                                   {0xE000, 0xF8FF}, {0xFEFF, 0xFEFF}, {0xFFF0, 0xFFFB},  {0xE0000, 0x10FFFF}};
    return is_in(code, unseen, COUNT_OF(unseen));
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

/* --- Lines ------------------------------------------------------------------------------------------- */

static unsigned columns_of(const char *text, size_t size)
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

static void print_word(FILE *to, const char *word, size_t size)
{
    char shown[SHOWN_SIZE];
    unsigned width;
    for (const char *at = word; at < word + size;) {
        at += show_character(at, shown, &width);
        fputs(shown, to);
    }
}

static bool begins_unit(const char *text)
{
    static const char *const units[] = {"mm", "in", "psi", "kPa"};
    for (size_t i = 0; i < COUNT_OF(units); i++) {
        size_t size = strlen(units[i]);
        if (strncmp(text, units[i], size) == 0 && strchr(" \",;:.)", text[size]) != NULL)
            return true;
    }
    return false;
}

/* A number, its fraction and its unit ("1 3/4", "54 mm") stay on one line. */
static size_t word_size(const char *text)
{
    size_t size = strcspn(text, " ");
    while (size > 0 && text[size] == ' ' && text[size - 1] >= '0' && text[size - 1] <= '9') {
        const char *next = text + size + 1;
        size_t digits = strspn(next, "0123456789");
        if (!begins_unit(next) && (digits == 0 || next[digits] != '/'))
            break;
        size += 1 + strcspn(next, " ");
    }
    return size;
}

void print_wrapped(FILE *to, const char *label, unsigned indent, const char *text)
{
    print_wrapped_at(to, LINE_WIDTH, label, indent, text);
}

void print_wrapped_at(FILE *to, unsigned line_width, const char *label, unsigned indent, const char *text)
{
    unsigned column = columns_of(label, strlen(label));
    bool begun = column >= indent && column > 0;
    fputs(label, to);
    if (column < indent || (begun && label[strlen(label) - 1] == ' ')) {
        fprintf(to, "%*s", (int)(column < indent ? indent - column : 0), "");
        column = column < indent ? indent : column;
        begun = false;
    }
    for (const char *at = text + strspn(text, " "); *at != '\0'; at += strspn(at, " ")) {
        size_t size = word_size(at);
        unsigned width = columns_of(at, size);
        if (begun && column + 1 + width >= line_width) {
            fprintf(to, "\n%*s", (int)indent, "");
            column = indent;
        } else if (begun) {
            fputc(' ', to);
            column++;
        }
        print_word(to, at, size);
        column += width;
        begun = true;
        at += size;
    }
    fputc('\n', to);
}

/* --- Colour ------------------------------------------------------------------------------------------ */

static bool wants_colour(FILE *to)
{
    const char *no_colour = getenv("NO_COLOR");
    const char *terminal = getenv("TERM");
    if (no_colour != NULL && no_colour[0] != '\0')
        return false;
    return terminal != NULL && strcmp(terminal, "dumb") != 0 && isatty(fileno(to)) == 1;
}

void print_painted(FILE *to, paint_kind paint, const char *text)
{
    static const char *const codes[] = {
        [PAINT_GOOD] = "1;30;42", [PAINT_BAD] = "1;37;41", [PAINT_OPEN] = "1;30;43", [PAINT_STRONG] = "1;7"};
    if (wants_colour(to))
        fprintf(to, "\033[%sm %s \033[0m", codes[paint], text);
    else
        fputs(text, to);
}

/* --- Words ------------------------------------------------------------------------------------------- */

const char *length_word(rodt_length length, char word[WORD_SIZE])
{
    return rodt_length_write(length, word, WORD_SIZE) == RODT_OK ? word : "-";
}

/* Printed millimetres have one decimal; the exact value may have more. */
const char *mm_word(rodt_length length, char word[WORD_SIZE])
{
    rodt_status status = rodt_length_write_decimal(length, RODT_UNIT_MM, 1, RODT_ROUND_HALF_UP, word, WORD_SIZE);
    return status == RODT_OK ? word : "-";
}

const char *date_word(rodt_date date, char word[WORD_SIZE])
{
    return rodt_date_write(date, word, WORD_SIZE) == RODT_OK ? word : "-";
}

const char *pressure_word(rodt_pressure pressure, char word[WORD_SIZE])
{
    return rodt_pressure_write(pressure, word, WORD_SIZE) == RODT_OK ? word : "-";
}

const char *chamber_word(const rodt_chamber *chamber, char word[RODT_CHAMBER_TEXT_SIZE])
{
    return rodt_chamber_write(chamber, word, RODT_CHAMBER_TEXT_SIZE) == RODT_OK ? word : "-";
}

const char *source_words(const rodt_source *source, char words[RODT_SOURCE_TEXT_SIZE])
{
    return rodt_source_write(source, words, RODT_SOURCE_TEXT_SIZE) == RODT_OK ? words : "-";
}
