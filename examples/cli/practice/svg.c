/* SPDX-License-Identifier: Apache-2.0 */
/* The piece of tape as a drawing: the same window and ticks as the text has. It has a label instead of a title, since
 * a title would show the answer under the mouse. */
#include "ui/markup.h"
#include "practice/practice.h"

#include <stdio.h>

#define LEFT 20
#define STEP 10 /* pixels a tick */
#define WIDTH 360
#define MARGIN 18 /* half of a number of three digits */
#define EDGE 13
#define BOTTOM 53

static void put_ticks(FILE *to, const practice_window *window, rodt_unit unit)
{
    static const int reaches[] = {0, 7, 11, 15, 19, 24};
    fputs("<path class=\"tick\" d=\"", to);
    for (int i = 0; i <= window->ticks; i++)
        fprintf(to, "M%d %dv%d", LEFT + STEP * i, EDGE, reaches[practice_tick_height(window->first + i, unit)]);
    fputs("\"/>", to);
    for (int i = 0; i <= window->ticks; i++) {
        if (practice_tick_height(window->first + i, unit) == 5)
            fprintf(to, "<text x=\"%d\" y=\"%d\">%d</text>", LEFT + STEP * i, BOTTOM - 3,
                    (window->first + i) / window->whole * window->number);
    }
}

void practice_write_svg(FILE *to, const char *name, rodt_length at, rodt_unit unit)
{
    char words[TAPE_WORDS_SIZE];
    practice_window window = practice_window_of(at, unit);
    int end = LEFT + STEP * window.ticks;
    practice_tape_describe(at, unit, words);
    fprintf(to, "<svg class=\"tape\" viewBox=\"0 0 %d %d\" role=\"img\" ", WIDTH, BOTTOM + 2);
    markup_put(to, "aria-label=\"%: %\">\n", name, words);
    fprintf(to, "<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\"/>", LEFT - MARGIN, EDGE, end - LEFT + 2 * MARGIN,
            BOTTOM - EDGE);
    put_ticks(to, &window, unit);
    fprintf(to, "<path class=\"pin\" d=\"M%d %dl-5-11h10z\"/></svg>\n",
            LEFT + STEP * (window.pointer - window.first), EDGE);
}
