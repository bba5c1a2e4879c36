/* SPDX-License-Identifier: Apache-2.0 */
/* All text is escaped by one function, so none can be forgotten. */
#include "ui/markup.h"
#include "ui/utf8.h"

#include <stdarg.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>

static void put_byte(FILE *to, char byte)
{
    switch (byte) {
    case '&': fputs("&amp;", to); break;
    case '<': fputs("&lt;", to); break;
    case '>': fputs("&gt;", to); break;
    case '"': fputs("&quot;", to); break;
    case '\'': fputs("&#39;", to); break;
    default: fputc(byte, to);
    }
}

void markup_text(FILE *to, const char *text)
{
    char shown[SHOWN_SIZE];
    unsigned width;
    while (*text != '\0') {
        text += show_character(text, shown, &width);
        for (const char *at = shown; *at != '\0'; at++)
            put_byte(to, *at);
    }
}

void markup_words(FILE *to, const char *text)
{
    while (*text != '\0') {
        char part[400];
        size_t size = strcspn(text, " "), next = size + (text[size] == ' ');
        bool holds = size > 0 && text[size] == ' ' && strchr("0123456789", text[size - 1]) != NULL;
        snprintf(part, sizeof part, "%.*s", (int)(holds ? size : next), text);
        markup_text(to, part);
        fputs(holds ? "&nbsp;" : "", to);
        text += next;
    }
}

void markup_put(FILE *to, const char *format, ...)
{
    va_list texts;
    va_start(texts, format);
    for (const char *at = format; *at != '\0'; at++) {
        if (*at == '%')
            markup_text(to, va_arg(texts, const char *));
        else
            fputc(*at, to);
    }
    va_end(texts);
}
