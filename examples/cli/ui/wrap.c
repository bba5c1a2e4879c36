/* SPDX-License-Identifier: Apache-2.0 */
/* Lines that fold at a width, and colour only where it is wanted. */
#include "ui/wrap.h"
#include "ui/compiler.h"
#include "ui/utf8.h"

#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

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
