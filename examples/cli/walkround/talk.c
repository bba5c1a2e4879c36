/* SPDX-License-Identifier: Apache-2.0 */
/* Plain lines on standard output, no wider than the screen. */
#include "walkround/walkround.h"
#include "ui/utf8.h"
#include "ui/wrap.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>
#include <sys/ioctl.h>
#include <unistd.h>

#define NARROWEST 24u

unsigned walk_columns(void)
{
    struct winsize size;
    memset(&size, 0, sizeof size);
    if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0 || size.ws_col == 0 || size.ws_col > LINE_WIDTH)
        return LINE_WIDTH;
    return size.ws_col < NARROWEST ? NARROWEST : size.ws_col;
}

void walk_say(const char *label, unsigned indent, const char *format, ...)
{
    char text[1500];
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(text, sizeof text, format, arguments);
    va_end(arguments);
    print_wrapped_at(stdout, walk_columns(), label, indent, text);
}

/* Room behind a question for a reading; where there is less, the answer gets a line of its own. */
#define ANSWER_ROOM 14u

void walk_prompt(const char *text)
{
    if (columns_of_text(text) + ANSWER_ROOM <= walk_columns()) {
        print_safely(stdout, text);
        fputs(": ", stdout);
    } else {
        walk_say("", 0, "%s", text);
        fputs("> ", stdout);
    }
    fflush(stdout);
}
