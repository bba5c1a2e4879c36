/* SPDX-License-Identifier: Apache-2.0 */
/* The limits of a rule set on one page: big figures for the clamp-type chambers, the signs of a long stroke drawn,
 * other chambers and the sources small. It is black on white, and fits A4 and Letter. The unit is 1/10 mm. */
#include "commands/limit_card.h"
#include "commands/limits_table.h"
#include "ui/format.h"
#include "ui/language.h"
#include "ui/markup.h"
#include "ui/utf8.h"

#include <string.h>

#define WIDTH 1900
#define HEIGHT 2550
#define TABLE_TOP 860
#define TABLE_END 2080 /* with other chambers below */
#define SMALL_TOP 2130
#define SMALL_WIDTH 138 /* characters of a line of sources */
#define NONE_TOP 2330 /* where there are none, it is said */

typedef struct card {
    const rule_context *context;
    FILE *to;
    bool unconfirmed;
} card;

/* --- Texts ------------------------------------------------------------------------------------------- */

static void put_text(const card *on, int x, int y, int size, const char *style, const char *text)
{
    fprintf(on->to, "<text x=\"%d\" y=\"%d\" font-size=\"%d\"%s>", x, y, size, style);
    markup_text(on->to, text);
    fputs("</text>\n", on->to);
}

#define MIDDLE " text-anchor=\"middle\""
#define BOLD " font-weight=\"700\""

/* Lines of so many characters; returns where the next would be. */
static int put_lines(const card *on, int y, int size, size_t width, const char *text)
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

/* --- Limits ------------------------------------------------------------------------------------------ */

/* True for a row of its own for a rated stroke that is marked on the housing. */
static bool is_marked(const rodt_limit *row) { return row != NULL && rodt_length_given(row->rated_stroke); }

static bool find_limit(card *on, const rodt_limit *row, rodt_stroke_class stroke_class, bool marked,
                       rodt_limit_answer *out)
{
    rodt_chamber chamber = {.family = row->family, .stroke_class = stroke_class};
    const rodt_length three = {3, 1};
    snprintf(chamber.size, sizeof chamber.size, "%s", row->size);
    if (marked)
        chamber.rated_stroke = three;
    bool found = rodt_rules_find_limit(on->context->rules, &chamber, on->context->day, out, NULL) == RODT_OK &&
                 rodt_length_given(out->limit) && (!marked || is_marked(out->law_row));
    on->unconfirmed = on->unconfirmed || (found && out->evidence > RODT_EVIDENCE_CHECKED);
    return found;
}

/* A limit in millimetres is never laxer than in inches. */
static const char *format_card_mm(rodt_length limit, char text[WORD_SIZE])
{
    if (rodt_length_format_decimal(limit, RODT_UNIT_MM, 1, RODT_ROUNDING_DOWN, text, WORD_SIZE, NULL) != RODT_OK)
        text[0] = '\0';
    return text;
}

static void put_cell(card *on, int x, int y, const rodt_limit_answer *answer)
{
    char inches[WORD_SIZE], mm[WORD_SIZE], text[2 * WORD_SIZE];
    snprintf(text, sizeof text, say("%s in%s"), format_length(answer->limit, inches),
             answer->evidence > RODT_EVIDENCE_CHECKED ? " *" : "");
    put_text(on, x, y, 80, MIDDLE BOLD, text);
    snprintf(text, sizeof text, "%s mm", format_card_mm(answer->limit, mm));
    put_text(on, x, y + 46, 40, MIDDLE, text);
}

/* The rows of the law name the sizes; each size once. */
static bool is_first(const rodt_rules *law, size_t index)
{
    const rodt_limit *row = rodt_rules_limit_at(law, index);
    for (size_t i = 0; i < index; i++) {
        const rodt_limit *before = rodt_rules_limit_at(law, i);
        if (before->family == row->family && strcmp(before->size, row->size) == 0)
            return false;
    }
    return true;
}

static void put_row(card *on, int y, const rodt_limit *row)
{
    rodt_limit_answer answer;
    put_text(on, 140, y + 20, 100, MIDDLE BOLD, row->size);
    if (find_limit(on, row, RODT_STROKE_CLASS_STANDARD, false, &answer))
        put_cell(on, 580, y, &answer);
    if (find_limit(on, row, RODT_STROKE_CLASS_LONG, false, &answer))
        put_cell(on, 1080, y, &answer);
    if (find_limit(on, row, RODT_STROKE_CLASS_LONG, true, &answer))
        put_cell(on, 1620, y, &answer);
    fprintf(on->to, "<path d=\"M0 %dh%d\" stroke-width=\"2\"/>\n", y + 66, WIDTH);
}

static size_t count_sizes(const rodt_rules *law, bool clamp)
{
    size_t count = 0;
    const rodt_limit *row;
    for (size_t i = 0; (row = rodt_rules_limit_at(law, i)) != NULL; i++)
        count += (row->family == RODT_FAMILY_CLAMP) == clamp && is_first(law, i);
    return count;
}

static void put_table(card *on, const rodt_rules *law)
{
    size_t count = count_sizes(law, true);
    int bottom = count_sizes(law, false) > 0 ? TABLE_END : NONE_TOP - 80;
    int step = (bottom - TABLE_TOP) / (int)(count > 0 ? count : 1), y = TABLE_TOP + step / 2;
    const rodt_limit *row;
    fprintf(on->to, "<path d=\"M0 %dh%d\" stroke-width=\"8\"/>\n", TABLE_TOP - 40, WIDTH);
    for (size_t i = 0; (row = rodt_rules_limit_at(law, i)) != NULL; i++) {
        if (row->family != RODT_FAMILY_CLAMP || !is_first(law, i))
            continue;
        put_row(on, y, row);
        y += step;
    }
}

/* Four in a line: "bolt A  1 3/8 in  34.9 mm". */
static void put_others(card *on, const rodt_rules *law)
{
    size_t count = 0;
    if (count_sizes(law, false) == 0)
        put_text(on, 0, NONE_TOP, 40, "", say("Bolt, rotochamber and DD-3 chambers have no limit in this rule set."));
    const rodt_limit *row;
    for (size_t i = 0; (row = rodt_rules_limit_at(law, i)) != NULL; i++) {
        rodt_limit_answer answer;
        char text[200], inches[WORD_SIZE], mm[WORD_SIZE], name[RODT_CHAMBER_TEXT_SIZE];
        rodt_chamber chamber = {.family = row->family};
        if (row->family == RODT_FAMILY_CLAMP || !is_first(law, i) ||
            !find_limit(on, row, RODT_STROKE_CLASS_UNKNOWN, false, &answer))
            continue;
        snprintf(chamber.size, sizeof chamber.size, "%s", row->size);
        snprintf(text, sizeof text, say("%s: %s in%s, %s mm"), format_chamber(&chamber, name),
                 format_length(answer.limit, inches), answer.evidence > RODT_EVIDENCE_CHECKED ? " *" : "",
                 format_card_mm(answer.limit, mm));
        put_text(on, (int)(count % 3) * 640, SMALL_TOP + (int)(count / 3) * 44, 33, "", text);
        count++;
    }
}

/* --- Signs of a long stroke -------------------------------------------------------------------------- */

/* Under a sign: on two lines where so many characters do not fit on one. */
static void put_caption(const card *on, int x, size_t width, const char *text)
{
    char first[100];
    const char *rest = columns_of_text(text) > width ? strrchr(text, ' ') : NULL;
    snprintf(first, sizeof first, "%.*s", (int)(rest != NULL ? (size_t)(rest - text) : strlen(text)), text);
    put_text(on, x, 630, 38, MIDDLE, first);
    if (rest != NULL)
        put_text(on, x, 674, 38, MIDDLE, rest + 1);
}

/* Over a column of limits: smaller where it is long. */
static void put_heading(const card *on, int x, const char *text)
{
    put_text(on, x, 760, columns_of_text(text) > 17 ? 42 : 50, MIDDLE BOLD, text);
}

static void put_signs(const card *on)
{
    fputs("<g fill=\"none\" stroke-width=\"7\">\n"
          "<circle cx=\"580\" cy=\"500\" r=\"70\"/><circle cx=\"580\" cy=\"500\" r=\"34\"/>\n"
          "<rect x=\"880\" y=\"430\" width=\"140\" height=\"140\"/><circle cx=\"950\" cy=\"500\" r=\"34\"/>\n"
          "<path d=\"M1130 560h180l-35-120h-110z\"/><circle cx=\"1220\" cy=\"466\" r=\"14\"/>\n"
          "<rect x=\"1420\" y=\"430\" width=\"400\" height=\"140\" rx=\"20\"/></g>\n", on->to);
    put_text(on, 1220, 546, 42, MIDDLE, "3.0");
    put_text(on, 1620, 530, 80, MIDDLE BOLD, "30 L");
    put_text(on, 140, 515, 44, MIDDLE, say("Look for:"));
    put_caption(on, 580, 20, say("round ports"));
    put_caption(on, 950, 13, say("square ports"));
    put_caption(on, 1220, 13, say("trapezoid tag"));
    put_caption(on, 1620, 22, say("L or LS in the mark"));
    put_heading(on, 140, say("Type"));
    put_heading(on, 580, say("Standard"));
    put_heading(on, 1080, say("Long stroke"));
    put_heading(on, 1620, say("Long, marked 3 in"));
}

/* --- The page ---------------------------------------------------------------------------------------- */

static void put_head(const card *on, const rodt_rules *law)
{
    char text[300], from[WORD_SIZE], until[WORD_SIZE];
    put_text(on, 0, 90, 90, BOLD, say("Pushrod stroke: not more than this"));
    snprintf(text, sizeof text, "%s: %s", rodt_rules_id(on->context->rules), rodt_rules_title(law));
    put_lines(on, 160, 40, 90, text);
    if (rodt_pressure_given(rodt_rules_pressure_from(law)))
        snprintf(text, sizeof text,
                 say("Reservoirs %s to %s psi, engine off, parking brake released, wheels chocked, pedal all the way "
                     "down."),
                 format_pressure(rodt_rules_pressure_from(law), from),
                 format_pressure(rodt_rules_pressure_until(law), until));
    else
        snprintf(text, sizeof text, "%s",
                 say("Engine off, parking brake released, wheels chocked, pedal all the way down."));
    int y = put_lines(on, 240, 42, 88, text);
    put_lines(on, y, 42, 88,
              rodt_rules_at_limit_passes(law)
                  ? say("Stroke = applied reading - released reading. A stroke exactly at the limit passes. No sign of "
                        "a long stroke: standard.")
                  : say("Stroke = applied reading - released reading. A stroke exactly at the limit fails. No sign of "
                        "a long stroke: standard."));
}

/* Each source of a row in force once, with how it was read. */
static int put_sources(const card *on, const rodt_rules *law)
{
    char text[1200] = "", source[RODT_SOURCE_TEXT_SIZE], said[SAID_SIZE], words[RODT_SOURCE_TEXT_SIZE + SAID_SIZE + 4];
    const rodt_limit *row;
    for (size_t i = 0; (row = rodt_rules_limit_at(law, i)) != NULL; i++) {
        size_t used = strlen(text);
        if (!is_limit_in_force(row, on->context->day))
            continue;
        snprintf(words, sizeof words, "%s (%s)", format_source(row->source, source),
                 say_evidence((rodt_evidence)row->evidence, said));
        if (strstr(text, words) == NULL && used + strlen(words) + 3 < sizeof text)
            snprintf(text + used, sizeof text - used, "%s%s", used > 0 ? "; " : "", words);
    }
    return put_lines(on, 2390, 25, SMALL_WIDTH, text);
}

static void put_foot(const card *on, const rodt_rules *law)
{
    char text[500], day[WORD_SIZE];
    int y = put_sources(on, law);
    snprintf(text, sizeof text,
             say("%sMillimetres are rounded down. Limits of %s; rodtravel %s, tables of %s. The cited law and a "
                 "licensed inspector decide."),
             on->unconfirmed ? say("* unconfirmed: not read in a source, or common practice; not law. ") : "",
             format_date(on->context->day, day), rodt_version(), rodt_tables_edition());
    put_lines(on, y, 25, SMALL_WIDTH, text);
}

static void put_drawing(card *on, bool html)
{
    const rodt_rules *law = law_of(on->context);
    fprintf(on->to, "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\"%s role=\"img\" ", WIDTH, HEIGHT,
            html ? "" : " width=\"190mm\" height=\"255mm\"");
    markup_put(on->to, "font-family=\"system-ui,sans-serif\" fill=\"#000\">\n<title>%</title>\n",
               say("Adjustment limits"));
    if (!html)
        fprintf(on->to, "<rect width=\"%d\" height=\"%d\" fill=\"#fff\"/>\n", WIDTH, HEIGHT);
    fputs("<g stroke=\"#000\">\n", on->to);
    fputs("<style>text{stroke:none}</style>\n", on->to);
    put_head(on, law);
    put_signs(on);
    put_table(on, law);
    put_others(on, law);
    put_foot(on, law);
    fputs("</g>\n</svg>\n", on->to);
}

static void put_page_head(FILE *to)
{
    const char *title = say("Adjustment limits");
    fprintf(to, "<!DOCTYPE html>\n<html lang=\"%s\">\n<head>\n<meta charset=\"utf-8\">\n", chosen_language());
    fputs("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
          "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n",
          to);
    markup_put(to, "<title>%</title>\n", title);
    fputs("<style>body{margin:0;background:#fff}"
          "svg{display:block;width:100%;max-width:190mm;height:auto;margin:0 auto;padding:2mm;box-sizing:border-box}"
          "h1{position:absolute;clip-path:inset(50%);margin:0}"
          "@media print{@page{margin:8mm}svg{padding:0}}</style>\n</head>\n<body>\n<main>\n", to);
    markup_put(to, "<h1>%</h1>\n", title);
}

void limit_card_write(const rule_context *context, bool html, FILE *to)
{
    card on = {context, to, false};
    if (html)
        put_page_head(to);
    put_drawing(&on, html);
    if (html)
        fputs("</main>\n</body>\n</html>\n", to);
}
