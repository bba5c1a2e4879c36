/* SPDX-License-Identifier: Apache-2.0 */
/* Errors on stderr: a sentence, or the text itself with a caret under the place. */
#include "ui/message.h"
#include "ui/exit_status.h"
#include "ui/language.h"
#include "ui/utf8.h"
#include "ui/wrap.h"

#include <errno.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define TEXT_SIZE 1000
#define TEXT_HEAD 300

static void format_text(char text[TEXT_SIZE], const char *format, va_list arguments) PRINTF_LIKE(2, 0);

/* A name may be longer than any sentence; what is said of it comes last. */
static void format_text(char text[TEXT_SIZE], const char *format, va_list arguments)
{
    va_list again;
    va_copy(again, arguments);
    int size = vsnprintf(text, TEXT_SIZE, format, arguments);
    char *whole = size >= TEXT_SIZE ? malloc((size_t)size + 1) : NULL;
    if (whole != NULL) {
        vsnprintf(whole, (size_t)size + 1, format, again);
        size_t tail = TEXT_SIZE - TEXT_HEAD - sizeof "...";
        snprintf(text + TEXT_HEAD, TEXT_SIZE - TEXT_HEAD, "...%s", whole + (size_t)size - tail);
        free(whole);
    }
    va_end(again);
}

int print_error(const char *format, ...)
{
    char text[TEXT_SIZE];
    va_list arguments;
    va_start(arguments, format);
    format_text(text, say(format), arguments);
    va_end(arguments);
    fflush(stdout);
    print_wrapped(stderr, "rodtravel: ", (unsigned)strlen("rodtravel: "), text);
    return STATUS_USAGE;
}

const char *say_system_error(int number)
{
    switch (number) {
    case ENOENT: return say("No such file or directory");
    case EACCES: return say("Permission denied");
    case EISDIR: return say("Is a directory");
    case ENOTDIR: return say("Not a directory");
    case ENOSPC: return say("No space left on device");
    case EROFS: return say("Read-only file system");
    default: return strerror(number);
    }
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

/* What is shown before the place: the first bytes are left out if it is far behind. */
typedef struct text_window {
    const char *from;
    const char *place;
    unsigned columns; /* between them */
} text_window;

/* Goes on to the place, and drops characters at the start as soon as there are too many: each is looked at twice. */
static text_window find_window(const char *text, uint32_t character, unsigned room)
{
    text_window at = {text, text, 0};
    char shown[SHOWN_SIZE];
    unsigned width;
    for (uint32_t i = 1; i < character && *at.place != '\0'; i++) {
        at.place += show_character(at.place, shown, &width);
        at.columns += width;
        while (at.columns > room) {
            at.from += show_character(at.from, shown, &width);
            at.columns -= width;
        }
    }
    return at;
}

/* A long text is shown around the place only. Returns the columns before the caret. */
static unsigned print_window(FILE *to, unsigned window, const char *text, uint32_t character)
{
    text_window of = find_window(text, character, window - 10);
    const char *before = of.from > text ? "..." : "";
    char shown[SHOWN_SIZE];
    unsigned width;
    fprintf(to, "%*s%s", (int)MARGIN, "", before);
    for (unsigned used = 0; *of.from != '\0'; used += width) {
        size_t bytes = show_character(of.from, shown, &width);
        if (used + width > window) {
            fputs("...", to);
            break;
        }
        fputs(shown, to);
        of.from += bytes;
    }
    fputc('\n', to);
    return of.columns + (unsigned)strlen(before);
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
