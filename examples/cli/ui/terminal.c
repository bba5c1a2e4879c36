/* SPDX-License-Identifier: Apache-2.0 */
/* The terminal behind a stream, if there is one. */
#include "ui/terminal.h"

#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <unistd.h>

#define NARROWEST 24u
#define WIDEST 100u /* longer lines are hard to read */

unsigned line_width(FILE *to)
{
    struct winsize size;
    memset(&size, 0, sizeof size);
    if (ioctl(fileno(to), TIOCGWINSZ, &size) != 0 || size.ws_col == 0)
        return LINE_WIDTH;
    return size.ws_col < NARROWEST ? NARROWEST : size.ws_col > WIDEST ? WIDEST : size.ws_col;
}

bool wants_colour(FILE *to)
{
    const char *no_colour = getenv("NO_COLOR");
    const char *terminal = getenv("TERM");
    if (no_colour != NULL && no_colour[0] != '\0')
        return false;
    return terminal != NULL && strcmp(terminal, "dumb") != 0 && isatty(fileno(to)) == 1;
}
