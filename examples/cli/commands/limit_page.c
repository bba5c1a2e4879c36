/* SPDX-License-Identifier: Apache-2.0 */
/* The limits of a rule set as one page of text that needs nothing but itself: for a telephone, and for A4 and
 * Letter. */
#include "commands/limit_card.h"
#include "ui/markup.h"

#include <string.h>

static const char *const style =
    "*{box-sizing:border-box}body{margin:0;background:#fff;color:#000;font:1rem/1.35 system-ui,sans-serif}"
    "main{max-width:46rem;margin:0 auto;padding:.8rem}h1{font-size:1.6rem;line-height:1.15;margin:0 0 .4rem}"
    "p{margin:.3rem 0}.signs{display:flex;flex-wrap:wrap;gap:.4rem 1.4rem;align-items:end;margin:.8rem 0}"
    "figure{margin:0;text-align:center}figure svg{height:3.4rem;display:block;margin:0 auto}"
    "table{border-collapse:collapse;width:100%;margin:.6rem 0}th,td{text-align:center;padding:.25rem .2rem;"
    "border-bottom:1px solid #000}thead th{border-bottom:3px solid #000;vertical-align:bottom}"
    "tbody th{font-size:1.9rem}td strong{display:block;font-size:1.45rem;line-height:1.2;white-space:nowrap}"
    "ul{list-style:none;margin:.6rem 0;padding:0;display:grid;gap:0 1rem;"
    "grid-template-columns:repeat(auto-fit,minmax(14rem,1fr))}.small{font-size:.9rem;overflow-wrap:anywhere}"
    "@media screen and (max-width:30rem){tbody th{font-size:1.5rem}td strong{font-size:1.1rem}}"
    "@media print{@page{margin:9mm}html{font-size:11pt}main{max-width:none;padding:0}"
    "h1{font-size:26pt}tbody th{font-size:27pt}td strong{font-size:22pt}td,tbody th{padding:.8mm 0}"
    ".signs{justify-content:space-between;flex-wrap:nowrap;gap:3mm}figure svg{height:17mm}figcaption{line-height:1.15}"
    "ul{grid-template-columns:repeat(3,1fr)}ul,.small{font-size:9pt;line-height:1.25}}";

static void put_words(const limit_card *on, const char *element, const char *text)
{
    if (text[0] == '\0')
        return;
    fprintf(on->to, "<%s>", element);
    markup_words(on->to, text);
    fprintf(on->to, "</%.*s>\n", (int)strcspn(element, " "), element);
}

static void put_sign(const limit_card *on, const card_sign *sign)
{
    fprintf(on->to, "<figure><svg viewBox=\"%s\" aria-hidden=\"true\"><g fill=\"none\" stroke=\"#000\" "
            "stroke-width=\"7\">%s</g>", sign->box, sign->shapes);
    if (sign->figure_size > 0)
        fprintf(on->to, "<text x=\"%d\" y=\"%d\" font-size=\"%d\" font-weight=\"700\" text-anchor=\"middle\">%s</text>",
                sign->middle, sign->figure_y, sign->figure_size, sign->figure);
    markup_put(on->to, "</svg><figcaption>%</figcaption></figure>\n", say(sign->label));
}

static void put_signs(const limit_card *on)
{
    fputs("<div class=\"signs\">\n", on->to);
    put_words(on, "p", say(CARD_LOOK));
    for (size_t i = 0; i < CARD_SIGNS; i++)
        put_sign(on, &card_signs[i]);
    fputs("</div>\n", on->to);
}

static void put_row(limit_card *on, const rodt_limit *row)
{
    markup_put(on->to, "<tr><th scope=\"row\">%</th>", row->size);
    for (int column = 0; column < CARD_COLUMNS; column++) {
        card_figure figure;
        if (card_find_figure(on, row, (card_column)column, &figure))
            markup_put(on->to, "<td><strong>%</strong>%</td>", figure.inches, figure.mm);
        else
            fputs("<td></td>", on->to);
    }
    fputs("</tr>\n", on->to);
}

static void put_table(limit_card *on)
{
    const rodt_limit *row;
    markup_put(on->to, "<table>\n<thead><tr><th scope=\"col\">%</th>", say(CARD_TYPE));
    for (int column = 0; column < CARD_COLUMNS; column++)
        markup_put(on->to, "<th scope=\"col\">%</th>", say(card_column_titles[column]));
    fputs("</tr></thead>\n<tbody>\n", on->to);
    for (size_t i = 0; (row = card_next_size(on, true, &i)) != NULL;)
        put_row(on, row);
    fputs("</tbody>\n</table>\n", on->to);
}

static void put_others(limit_card *on)
{
    char text[CARD_TEXT_SIZE];
    const rodt_limit *row;
    if (card_count_sizes(on, false) == 0) {
        put_words(on, "p", say(CARD_NO_OTHERS));
        return;
    }
    fputs("<ul>\n", on->to);
    for (size_t i = 0; (row = card_next_size(on, false, &i)) != NULL;) {
        if (card_format_other(on, row, text))
            put_words(on, "li", text);
    }
    fputs("</ul>\n", on->to);
}

void limit_page_write(const rule_context *context, FILE *to)
{
    limit_card on = limit_card_of(context, to);
    char text[CARD_TEXT_SIZE];
    fprintf(to, "<!DOCTYPE html>\n<html lang=\"%s\">\n<head>\n<meta charset=\"utf-8\">\n", chosen_language());
    fputs("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
          "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n",
          to);
    markup_put(to, "<title>%</title>\n", say(CARD_NAME));
    fprintf(to, "<style>%s</style>\n</head>\n<body>\n<main>\n", style);
    put_words(&on, "h1", say(CARD_TITLE));
    put_words(&on, "p", card_format_rules(&on, text));
    put_words(&on, "p", card_format_conditions(&on, text));
    put_words(&on, "p", card_comparison(&on));
    put_signs(&on);
    put_table(&on);
    put_others(&on);
    put_words(&on, "p", card_format_marks(&on, text));
    put_words(&on, "p class=\"small\"", card_format_sources(&on, text));
    put_words(&on, "p class=\"small\"", card_format_foot(&on, text));
    fputs("</main>\n</body>\n</html>\n", to);
}
