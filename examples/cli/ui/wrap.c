/* SPDX-License-Identifier: Apache-2.0 */
/* Lines that fold at a width, and colour only where it is wanted. */
#include "ui/wrap.h"
#include "ui/compiler.h"
#include "ui/language.h"
#include "ui/utf8.h"

#include <stdbool.h>
#include <stdio.h>
#include <string.h>

/* --- Folding ------------------------------------------------------------------------------------------ */

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
    static const char *const units[] = {"mm", "in", "po", "psi", "kPa", "%"};
    for (size_t i = 0; i < COUNT_OF(units); i++) {
        size_t size = strlen(units[i]);
        /* The last one begins a blank that joins. */
        if (strncmp(text, units[i], size) == 0 && strchr(" \",;:.)\xC2", text[size]) != NULL)
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

/* Where the next word goes. */
typedef struct line_place {
    FILE *to;
    unsigned width;
    unsigned indent;
    unsigned column;
    bool begun; /* a word or a label is before it */
} line_place;

static void start_line(line_place *at)
{
    fprintf(at->to, "\n%*s", (int)at->indent, "");
    at->column = at->indent;
    at->begun = false;
}

/* A word that no line can hold is cut. */
static void print_long_word(line_place *at, const char *word, size_t size)
{
    char shown[SHOWN_SIZE];
    unsigned width;
    for (const char *end = word + size; word < end;) {
        word += show_character(word, shown, &width);
        if (at->column + width >= at->width)
            start_line(at);
        fputs(shown, at->to);
        at->column += width;
    }
    at->begun = true;
}

static void put_word(line_place *at, const char *word, size_t size)
{
    unsigned width = columns_of(word, size);
    if (at->begun && at->column + 1 + width >= at->width) {
        start_line(at);
    } else if (at->begun) {
        fputc(' ', at->to);
        at->column++;
    }
    if (at->column + width >= at->width) {
        print_long_word(at, word, size);
        return;
    }
    print_word(at->to, word, size);
    at->column += width;
    at->begun = true;
}

#define LEAST_ROOM 24u
#define NARROW_INDENT 4u

/* Prints the label and the blanks after it. */
static void start_text(line_place *at, const char *label)
{
    unsigned column = columns_of_text(label);
    size_t size = strlen(label);
    fputs(label, at->to);
    at->column = column;
    at->begun = size > 0 && column >= at->indent && label[size - 1] != ' ';
    if (at->width < at->indent + LEAST_ROOM && at->indent > NARROW_INDENT) {
        at->indent = NARROW_INDENT;
        if (strspn(label, " ") < size)
            start_line(at);
        at->begun = false;
    }
    if (at->column < at->indent) {
        fprintf(at->to, "%*s", (int)(at->indent - at->column), "");
        at->column = at->indent;
    }
}

void print_wrapped(FILE *to, const char *label, unsigned indent, const char *text)
{
    line_place at = {.to = to, .width = line_width(to), .indent = indent};
    start_text(&at, label);
    for (const char *word = text + strspn(text, " "); *word != '\0'; word += strspn(word, " ")) {
        size_t size = word_size(word);
        put_word(&at, word, size);
        word += size;
    }
    fputc('\n', to);
}

void print_point(FILE *to, const char *label, unsigned indent, const char *text)
{
    char begin[80];
    unsigned columns = columns_of_text(label);
    snprintf(begin, sizeof begin, "%s%*s- ", label, columns < indent ? (int)(indent - columns) : 0, "");
    print_wrapped(to, begin, indent + 2, text);
}

/* --- Colour ------------------------------------------------------------------------------------------ */

static void paint_span(FILE *to, paint_kind paint, const char *text, size_t size)
{
    static const char *const codes[] = {[PAINT_GOOD] = "1;30;42", [PAINT_BAD] = "1;37;41", [PAINT_OPEN] = "1;30;46",
                                        [PAINT_EDGE] = "1;30;43", [PAINT_STRONG] = "1;7"};
    if (wants_colour(to))
        fprintf(to, "\033[%sm %.*s \033[0m", codes[paint], (int)size, text);
    else
        fwrite(text, 1, size, to);
}

void print_painted(FILE *to, paint_kind paint, const char *text) { paint_span(to, paint, text, strlen(text)); }

/* A blank of the colour is on either side, so a line has two columns less. */
void print_headline(FILE *to, paint_kind paint, const char *text)
{
    unsigned room = line_width(to) - 3;
    while (*text != '\0') {
        size_t size = 0;
        for (size_t end = 0; text[end] != '\0';) {
            end += strspn(text + end, " ");
            end += strcspn(text + end, " ");
            if (size > 0 && columns_of(text, end) > room)
                break;
            size = end;
        }
        paint_span(to, paint, text, size);
        fputc('\n', to);
        text += size + strspn(text + size, " ");
    }
}

void print_title(FILE *to, paint_kind paint, const char *title, const char *text)
{
    if (columns_of_text(title) + columns_of_text(text) + 4 >= line_width(to)) {
        print_headline(to, paint, title);
        print_wrapped(to, "", 0, text);
        return;
    }
    print_painted(to, paint, title);
    fprintf(to, "%s%s\n", text[0] == '\0' ? "" : "  ", text);
}

bool shows_utf8(void)
{
    static const char *const names[] = {"UTF-8", "utf-8", "UTF8", "utf8"};
    const char *locale = locale_of("LC_CTYPE");
    for (size_t i = 0; i < COUNT_OF(names); i++)
        if (strstr(locale, names[i]) != NULL)
            return true;
    return false;
}
