/* SPDX-License-Identifier: Apache-2.0 */
/* Errors on stderr: a sentence, or the text itself with a caret under the place. */
#include "ui/message.h"
#include "ui/exit_status.h"
#include "ui/language.h"
#include "ui/utf8.h"
#include "ui/wrap.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

int print_error(const char *format, ...)
{
    char text[1000];
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(text, sizeof text, say(format), arguments);
    va_end(arguments);
    fflush(stdout);
    print_wrapped(stderr, "rodtravel: ", (unsigned)strlen("rodtravel: "), text);
    return STATUS_USAGE;
}

int print_library_error(const rodt_error *error)
{
    char said[SAID_SIZE];
    return print_error("%s", say_error(error, said));
}

int print_status(const char *where, rodt_status status)
{
    char said[SAID_SIZE];
    say_status(status, said);
    return where[0] == '\0' ? print_error("%s", said) : print_error("%s: %s", where, said);
}

/* Columns of the screen that a text is shown in before it is cut. */
#define MARGIN 4u
#define WIDEST_PLACE 68u

/* Columns of the screen before the character with the given number, counted from 1. */
static unsigned columns_before(const char *text, uint32_t character)
{
    char shown[SHOWN_SIZE];
    unsigned columns = 0;
    for (uint32_t i = 1; *text != '\0' && i < character; i++) {
        unsigned width;
        text += show_character(text, shown, &width);
        columns += width;
    }
    return columns;
}

/* A long text is shown around the place only. Returns the columns before the caret. */
static unsigned print_window(FILE *to, unsigned window, const char *text, uint32_t character)
{
    uint32_t from = 1;
    while (columns_before(text, character) - columns_before(text, from) > window - 10)
        from++;
    const char *at = text;
    char shown[SHOWN_SIZE];
    unsigned width;
    for (uint32_t i = 1; i < from; i++)
        at += show_character(at, shown, &width);
    fprintf(to, "%*s%s", (int)MARGIN, "", from > 1 ? "..." : "");
    unsigned before = columns_before(text, character) - columns_before(text, from) + (from > 1 ? 3 : 0);
    for (unsigned used = 0; *at != '\0'; used += width) {
        size_t bytes = show_character(at, shown, &width);
        if (used + width > window) {
            fputs("...", to);
            break;
        }
        fputs(shown, to);
        at += bytes;
    }
    fputc('\n', to);
    return before;
}

void print_place(FILE *to, unsigned columns, const char *text, uint32_t character)
{
    unsigned before = print_window(to, columns - 2 * MARGIN, text, character);
    if (character > 0)
        fprintf(to, "%*s^\n", (int)(MARGIN + before), "");
}

int print_text_error(const char *what, const char *text, const rodt_error *error)
{
    if (text[strspn(text, " \t")] == '\0')
        return print_error("%s is missing", what);
    if (error->status == RODT_E_EMPTY)
        return print_error("%s is missing: \"%s\" means not measured", what, text);
    print_error("%s cannot be read", what);
    unsigned columns = line_width(stderr);
    print_place(stderr, columns < WIDEST_PLACE ? columns : WIDEST_PLACE, text, error->column);
    char said[SAID_SIZE];
    print_wrapped(stderr, "    ", MARGIN, say_error(error, said));
    return STATUS_USAGE;
}

rodt_field field_of_error(const rodt_error *error)
{
    RODT_ENUM32(rodt_field) field;
    return rodt_field_find(error->field, &field) == RODT_OK ? (rodt_field)field : RODT_FIELD_NONE;
}
