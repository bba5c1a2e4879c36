/* SPDX-License-Identifier: Apache-2.0 */
/* The limits of a rule set as one drawing: big figures for the clamp-type chambers, the signs of a long stroke, other
 * chambers and the sources small. It is black on white, and fits A4 and Letter. The unit is 1/10 mm. */
#include "commands/limit_card.h"
#include "ui/markup.h"
#include "ui/utf8.h"

#include <string.h>

#define WIDTH 1900
#define HEIGHT 2550
#define TABLE_TOP 860
#define TABLE_END 2080 /* with other chambers below */
#define SMALL_TOP 2130
#define SMALL_WIDTH 138 /* characters of a line of sources */
#define NONE_TOP 2305 /* where there are none, it is said */

/* --- Texts ------------------------------------------------------------------------------------------- */

static void put_text(const limit_card *on, int x, int y, int size, const char *style, const char *text)
{
    fprintf(on->to, "<text x=\"%d\" y=\"%d\" font-size=\"%d\"%s>", x, y, size, style);
    markup_text(on->to, text);
    fputs("</text>\n", on->to);
}

#define MIDDLE " text-anchor=\"middle\""
#define BOLD " font-weight=\"700\""

/* Lines of so many characters; returns where the next would be. */
static int put_lines(const limit_card *on, int y, int size, size_t width, const char *text)
{
    while (*text != '\0') {
        char line[400];
        size_t used = strlen(text);
        for (size_t at = used; columns_of(text, used) > width && at > 0; at--) {
            if (text[at] == ' ')
                used = at;
        }
        snprintf(line, sizeof line, "%.*s", (int)used, text);
        put_text(on, 0, y, size, "", line);
        text += used + (text[used] == ' ');
        y += size * 13 / 10;
    }
    return y;
}

/* --- The table --------------------------------------------------------------------------------------- */

static const int columns[CARD_COLUMNS] = {580, 1080, 1620}; /* their middles */

static void put_row(limit_card *on, int y, const rodt_limit *row)
{
    put_text(on, 140, y + 20, 100, MIDDLE BOLD, row->size);
    for (int column = 0; column < CARD_COLUMNS; column++) {
        card_figure figure;
        if (!card_find_figure(on, row, (card_column)column, &figure))
            continue;
        put_text(on, columns[column], y, 80, MIDDLE BOLD, figure.inches);
        put_text(on, columns[column], y + 46, 40, MIDDLE, figure.mm);
    }
    fprintf(on->to, "<path d=\"M0 %dh%d\" stroke-width=\"2\"/>\n", y + 66, WIDTH);
}

/* Over a column of limits: smaller where it is long. */
static void put_heading(const limit_card *on, int x, const char *text)
{
    put_text(on, x, 760, columns_of_text(text) > 17 ? 42 : 50, MIDDLE BOLD, text);
}

static void put_table(limit_card *on)
{
    size_t count = card_count_sizes(on, true), at = 0;
    int bottom = card_count_sizes(on, false) > 0 ? TABLE_END : NONE_TOP - 55;
    int step = (bottom - TABLE_TOP) / (int)(count > 0 ? count : 1), y = TABLE_TOP + step / 2;
    const rodt_limit *row;
    put_heading(on, 140, say(CARD_TYPE));
    for (int column = 0; column < CARD_COLUMNS; column++)
        put_heading(on, columns[column], say(card_column_titles[column]));
    fprintf(on->to, "<path d=\"M0 %dh%d\" stroke-width=\"8\"/>\n", TABLE_TOP - 40, WIDTH);
    for (; (row = card_next_size(on, true, &at)) != NULL; y += step)
        put_row(on, y, row);
}

/* Three in a line. */
static void put_others(limit_card *on)
{
    size_t count = 0;
    char text[CARD_TEXT_SIZE];
    const rodt_limit *row;
    if (card_count_sizes(on, false) == 0)
        put_lines(on, NONE_TOP, 36, 90, say(CARD_NO_OTHERS));
    for (size_t i = 0; (row = card_next_size(on, false, &i)) != NULL;) {
        if (!card_format_other(on, row, text))
            continue;
        put_text(on, (int)(count % 3) * 640, SMALL_TOP + (int)(count / 3) * 44, 33, "", text);
        count++;
    }
}

/* --- The page ---------------------------------------------------------------------------------------- */

/* Under a sign: on two lines where so many characters do not fit on one. */
static void put_caption(const limit_card *on, int x, size_t width, const char *text)
{
    char first[100];
    const char *rest = columns_of_text(text) > width ? strrchr(text, ' ') : NULL;
    snprintf(first, sizeof first, "%.*s", (int)(rest != NULL ? (size_t)(rest - text) : strlen(text)), text);
    put_text(on, x, 630, 38, MIDDLE, first);
    if (rest != NULL)
        put_text(on, x, 674, 38, MIDDLE, rest + 1);
}

static void put_signs(const limit_card *on)
{
    put_text(on, 140, 515, 44, MIDDLE, say(CARD_LOOK));
    for (size_t i = 0; i < CARD_SIGNS; i++) {
        const card_sign *sign = &card_signs[i];
        fprintf(on->to, "<g fill=\"none\" stroke-width=\"7\">%s</g>\n", sign->shapes);
        if (sign->figure_size > 0)
            put_text(on, sign->middle, sign->figure_y, sign->figure_size, MIDDLE BOLD, sign->figure);
        put_caption(on, sign->middle, sign->width, say(sign->label));
    }
}

static void put_head(const limit_card *on)
{
    char text[CARD_TEXT_SIZE];
    put_text(on, 0, 90, 90, BOLD, say(CARD_TITLE));
    put_lines(on, 160, 40, 90, card_format_rules(on, text));
    int y = put_lines(on, 240, 42, 88, card_format_conditions(on, text));
    put_lines(on, y, 42, 88, card_comparison(on));
}

static void put_foot(const limit_card *on)
{
    char text[CARD_TEXT_SIZE];
    int y = put_lines(on, 2390, 25, SMALL_WIDTH, card_format_sources(on, text));
    y = put_lines(on, y, 25, SMALL_WIDTH, card_format_marks(on, text));
    put_lines(on, y, 25, SMALL_WIDTH, card_format_foot(on, text));
}

void limit_drawing_write(const rule_context *context, FILE *to)
{
    limit_card on = limit_card_of(context, to);
    fprintf(to, "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" width=\"190mm\" height=\"255mm\" ",
            WIDTH, HEIGHT);
    markup_put(to, "role=\"img\" font-family=\"system-ui,sans-serif\" fill=\"#000\">\n<title>%</title>\n",
               say(CARD_NAME));
    fprintf(to, "<rect width=\"%d\" height=\"%d\" fill=\"#fff\"/>\n<g stroke=\"#000\">\n", WIDTH, HEIGHT);
    fputs("<style>text{stroke:none}</style>\n", to);
    put_head(&on);
    put_signs(&on);
    put_table(&on);
    put_others(&on);
    put_foot(&on);
    fputs("</g>\n</svg>\n", to);
}
