/* SPDX-License-Identifier: Apache-2.0 */
/* The vehicle from above: the front is at the top, every wheel end has a card with its stroke, its limit and a bar.
 * The meaning of a colour is also given by a word, by the mark on the wheel and by the pattern of the bar. */
#include "ui/markup.h"
#include "report/report.h"
#include "ui/format.h"
#include "ui/language.h"
#include "ui/wrap.h"

#include <stdio.h>
#include <string.h>

#define WIDTH 440
#define FIRST_ROW 122 /* middle of the foremost axle */
#define ROW 88
#define GAP 30 /* between two units, besides */
#define CARD 150
#define BAR_WIDTH 122 /* up to the limit; what is beyond it sticks out */
#define BAR_HEIGHT 14
#define EXCESS_LEAST 8
#define EXCESS_MOST 26
#define LEFT_CARD 4
#define RIGHT_CARD (WIDTH - LEFT_CARD - CARD)
#define LEFT_WHEEL 170
#define RIGHT_WHEEL (WIDTH - LEFT_WHEEL - WHEEL_WIDTH)
#define WHEEL_WIDTH 22
#define WHEEL_HEIGHT 44

typedef enum wheel_look { LOOK_GOOD, LOOK_DOUBT, LOOK_OVER, LOOK_DEAD, LOOK_OPEN } wheel_look;

static wheel_look look_of(const rodt_finding *finding)
{
    switch (finding->verdict) {
    case RODT_VERDICT_IN_ADJUSTMENT:
        return rodt_finding_has(finding, RODT_REASON_HARDLY_MOVED) ? LOOK_DOUBT : LOOK_GOOD;
    case RODT_VERDICT_OUT_OF_ADJUSTMENT: return LOOK_OVER;
    case RODT_VERDICT_INOPERATIVE: return LOOK_DEAD;
    case RODT_VERDICT_UNDETERMINED: break;
    }
    return LOOK_OPEN;
}

/* --- The vehicle -------------------------------------------------------------------------------------- */

static void put_cab(FILE *to)
{
    markup_put(to, "<text class=\"end\" x=\"220\" y=\"14\" text-anchor=\"middle\">%</text>\n", say("FRONT"));
    fputs("<path class=\"body\" d=\"M186 82V40q0-16 16-18q18-2 36 0q16 2 16 18v42z\"/>\n"
          "<path class=\"line\" d=\"M194 50q26-10 52 0M194 50l4 12h44l4-12\"/>\n", to);
}

/* The frame of one unit, from line to line; a unit that is towed has its name and a bar to the one before it. */
static void put_frame(FILE *to, int top, int bottom, const char *towed)
{
    if (towed != NULL) {
        fprintf(to, "<text class=\"end\" x=\"200\" y=\"%d\" text-anchor=\"end\">", top - GAP / 2 + 4);
        markup_put(to, "%</text>\n", towed);
        fprintf(to, "<path class=\"line\" d=\"M206 %dL220 %dL234 %dM220 %dv-8\"/>\n", top, top - GAP / 2, top,
                top - GAP / 2);
    }
    fprintf(to, "<rect class=\"body\" x=\"206\" y=\"%d\" width=\"8\" height=\"%d\"/>\n", top, bottom - top);
    fprintf(to, "<rect class=\"body\" x=\"226\" y=\"%d\" width=\"8\" height=\"%d\"/>\n", top, bottom - top);
    fprintf(to, "<path class=\"line\" d=\"M206 %dh28M206 %dh28\"/>\n", top, bottom);
}

#define QUESTION_MARK "m-4-5q0-4 4-4q5 0 5 4q0 3-3 4q-2 1-2 4m0 4v2"

/* A tick, an exclamation mark, a cross or a question mark. */
static void put_mark(FILE *to, wheel_look look, int x, int y)
{
    static const char *const marks[] = {[LOOK_GOOD] = "m-6 0l4 5l8-10", [LOOK_DOUBT] = QUESTION_MARK,
                                        [LOOK_OVER] = "m0-9v11m0 5v2", [LOOK_DEAD] = "m-6-6l12 12m0-12l-12 12",
                                        [LOOK_OPEN] = QUESTION_MARK};
    fprintf(to, "<path class=\"sign\" d=\"M%d %d%s\"/>\n", x, y, marks[look]);
}

static void put_wheel(FILE *to, int x, int middle, wheel_look look)
{
    static const char *const words[] = {
        [LOOK_GOOD] = "good", [LOOK_DOUBT] = "doubt", [LOOK_OVER] = "over", [LOOK_DEAD] = "dead", [LOOK_OPEN] = "open"};
    fprintf(to, "<rect class=\"wheel %s\" x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" rx=\"5\"/>\n", words[look], x,
            middle - WHEEL_HEIGHT / 2, WHEEL_WIDTH, WHEEL_HEIGHT);
    put_mark(to, look, x + WHEEL_WIDTH / 2, middle);
}

/* --- The bar ------------------------------------------------------------------------------------------ */

/* Tenths of a pixel of a stroke where the limit has BAR_WIDTH; a drawing may round. */
static int tenths(const rodt_finding *finding)
{
    rodt_length limit = finding->limit, parts, pixel;
    if (!rodt_length_given(finding->applied_stroke) || !rodt_length_given(limit) || limit.num <= 0 ||
        rodt_length_scale(finding->applied_stroke, (rodt_ratio){limit.den * BAR_WIDTH * 10, limit.num}, &parts) !=
            RODT_OK ||
        rodt_length_round(parts, (rodt_length){1, 1}, RODT_ROUNDING_HALF_EVEN, &pixel) != RODT_OK)
        return 0;
    return pixel.num < 0 ? 0 : pixel.num > BAR_WIDTH * 20 ? BAR_WIDTH * 20 : (int)pixel.num;
}

static void put_part(FILE *to, const char *look, int x, int y, int width, int height)
{
    if (width > 0)
        fprintf(to, "<rect class=\"%s\" x=\"%d\" y=\"%d\" width=\"%d.%d\" height=\"%d\"/>\n", look, x, y, width / 10,
                width % 10, height);
}

/* A full bar is the limit. Over it the whole bar is red, and the excess sticks out. */
static void put_bar(FILE *to, const rodt_finding *finding, int x, int y)
{
    wheel_look look = look_of(finding);
    int stroke = tenths(finding), whole = BAR_WIDTH * 10, beyond = stroke > whole ? stroke - whole : 0;
    bool edge = verdict_paint(finding) == PAINT_EDGE, over = look == LOOK_OVER;
    const char *fill = look == LOOK_OPEN ? "unproven" : over ? "full" : edge ? "edge" : "fill";
    if (beyond > 0 || (over && finding->margin.num < 0))
        beyond = beyond < EXCESS_LEAST * 10 ? EXCESS_LEAST * 10 : beyond > EXCESS_MOST * 10 ? EXCESS_MOST * 10 : beyond;
    put_part(to, "track", x, y, whole, BAR_HEIGHT);
    put_part(to, fill, x, y, beyond > 0 || over ? whole : stroke, BAR_HEIGHT);
    put_part(to, look == LOOK_OPEN ? "unproven" : "excess", x + BAR_WIDTH, y - 3, beyond, BAR_HEIGHT + 6);
    if (rodt_length_given(finding->limit))
        fprintf(to, "<path class=\"limit\" d=\"M%d %dv%d\"/>\n", x + BAR_WIDTH, y - 3, BAR_HEIGHT + 6);
}

/* --- Cards -------------------------------------------------------------------------------------------- */

static const char *card_words(const rodt_finding *finding, char words[MARGIN_SIZE])
{
    char margin[MARGIN_SIZE], word[WORD_SIZE];
    bool over = finding->margin.num < 0;
    switch (look_of(finding)) {
    case LOOK_GOOD: return margin_words(finding, words);
    case LOOK_DOUBT: return say("hardly moved");
    case LOOK_OVER:
        if (over)
            snprintf(words, MARGIN_SIZE, say("OVER by %s"),
                     tape_word(finding, (rodt_length){-finding->margin.num, finding->margin.den}, word));
        else
            snprintf(words, MARGIN_SIZE, say("OUT, %.60s"), margin_words(finding, margin));
        return words;
    case LOOK_DEAD: return say("DID NOT MOVE");
    case LOOK_OPEN: break;
    }
    return say("not proven");
}

/* The name and the verdict, a figure in large digits and what is after it. */
static void put_texts(FILE *to, int x, int middle, const char *position, const char *verdict)
{
    fprintf(to, "<text x=\"%d\" y=\"%d\"><tspan class=\"name\">", x, middle - 24);
    markup_put(to, "%</tspan> <tspan class=\"word\">%</tspan></text>\n", position, verdict);
}

#define LARGE_MOST 7 /* characters that fit as large digits */

static void put_figures(FILE *to, int x, int middle, const char *large, const char *rest)
{
    fprintf(to, "<text class=\"figures\" x=\"%d\" y=\"%d\">", x, middle - 2);
    markup_put(to, "<tspan class=\"%\">%</tspan> %</text>\n", strlen(large) > LARGE_MOST ? "word" : "large", large,
               rest);
}

static void put_card(FILE *to, const vehicle_record *vehicle, size_t end, int x, int middle)
{
    const rodt_finding *finding = &vehicle->findings[end];
    char position[RODT_POSITION_TEXT_SIZE] = "-", words[MARGIN_SIZE], stroke[WORD_SIZE], limit[WORD_SIZE];
    char rest[WORD_SIZE + 32];
    bool given = rodt_length_given(finding->applied_stroke);
    (void)rodt_position_format(vehicle->ends[end].position, position, sizeof position, NULL);
    if (rodt_length_given(finding->limit))
        snprintf(rest, sizeof rest, say("of %s in"), format_length(finding->limit, limit));
    else
        snprintf(rest, sizeof rest, "%s", say("no limit known"));
    put_texts(to, x, middle, position, card_words(finding, words));
    put_figures(to, x, middle, given ? tape_word(finding, finding->applied_stroke, stroke) : say("no stroke"), rest);
    put_bar(to, finding, x, middle + 10);
}

static void put_side(FILE *to, const vehicle_record *vehicle, const rodt_axle_finding *axle, bool left, int middle)
{
    size_t end = left ? axle->left : axle->right;
    char position[RODT_POSITION_TEXT_SIZE] = "-";
    rodt_position place = {axle->axle, left ? RODT_SIDE_LEFT : RODT_SIDE_RIGHT};
    int x = left ? LEFT_CARD : RIGHT_CARD;
    bool known = end < vehicle->count;
    put_wheel(to, left ? LEFT_WHEEL : RIGHT_WHEEL, middle, known ? look_of(&vehicle->findings[end]) : LOOK_OPEN);
    if (known) {
        put_card(to, vehicle, end, x, middle);
        return;
    }
    (void)rodt_position_format(place, position, sizeof position, NULL);
    put_texts(to, x, middle, position, say("not recorded"));
    put_figures(to, x, middle, say("not measured"), "");
}

/* --- The drawing -------------------------------------------------------------------------------------- */

/* The patterns are a drawing's own, so that a page and a file by itself look alike. */
static void put_style(FILE *to)
{
    fputs("<style>.rt text{font-family:system-ui,sans-serif;font-size:13px;fill:#111}"
          ".rt .name{font-weight:700;font-size:18px}.rt .word{font-weight:600}"
          ".rt .figures{font-size:12.5px}.rt .large{font-size:21px;font-weight:700}"
          ".rt .end{font-size:11px;letter-spacing:2px}"
          ".rt .body{fill:#e6e4dc;stroke:#111;stroke-width:1.5}.rt .line{fill:none;stroke:#111;stroke-width:1.5}"
          ".rt .axle{stroke:#111;stroke-width:6}.rt .wheel{stroke:#111;stroke-width:2}"
          ".rt .good{fill:#24453c}.rt .over{fill:#8c1c13}.rt .dead{fill:#8c1c13}"
          ".rt .doubt{fill:#b26a00}.rt .open{fill:#5b5b5b;stroke-dasharray:4 3}"
          ".rt .sign{fill:none;stroke:#fff;stroke-width:3;stroke-linecap:round}"
          ".rt .track{fill:#fff;stroke:#111;stroke-width:1}.rt .fill{fill:#24453c}.rt .edge{fill:#b26a00}"
          ".rt .full{fill:#8c1c13}"
          ".rt .excess{fill:url(#rt-excess);stroke:#8c1c13;stroke-width:1.5}.rt .unproven{fill:url(#rt-unproven)}"
          ".rt .limit{stroke:#111;stroke-width:2.5}</style>\n"
          "<defs><pattern id=\"rt-excess\" width=\"5\" height=\"5\" patternUnits=\"userSpaceOnUse\" "
          "patternTransform=\"rotate(45)\"><path d=\"M0 0h5v5H0z\" fill=\"#fff\"/><path d=\"M0 0h3v5H0z\" "
          "fill=\"#8c1c13\"/></pattern>\n"
          "<pattern id=\"rt-unproven\" width=\"5\" height=\"5\" patternUnits=\"userSpaceOnUse\"><path d=\"M0 "
          "0h5v5H0z\" fill=\"#fff\"/><path d=\"M1 1h2v2H1z\" fill=\"#333\"/></pattern></defs>\n", to);
}

static void put_description(FILE *to, const inspection *of)
{
    const char *unit = of->record.head[HEAD_UNIT].text;
    paint_kind paint;
    markup_put(to, "<title id=\"rt-title\">% %</title>\n",
               unit != NULL ? say("Pushrod strokes of") : say("Pushrod strokes"), unit != NULL ? unit : "");
    markup_put(to, "<desc id=\"rt-desc\">% %.</desc>\n",
               say("The vehicle from above, front at the top: stroke and limit of every wheel end, with a bar."),
               vehicle_headline(&of->vehicle, &paint));
}

/* --- Units -------------------------------------------------------------------------------------------- */

/* Number of the unit that an axle belongs to, from 0; all are of one where the record does not say. */
static size_t unit_of(const inspection *of, int16_t axle)
{
    const inspection_record *record = &of->record;
    int last = 0;
    for (size_t i = 0; i < record->unit_count; i++) {
        last += record->units[i][UNIT_AXLES].number;
        if (axle <= last)
            return i;
    }
    return 0;
}

/* Line of the middle of each axle. Returns the line at the end of the drawing. */
static int place_axles(const inspection *of, int middles[RODT_AXLES_MAX])
{
    const rodt_vehicle_finding *vehicle = &of->vehicle.vehicle;
    int line = FIRST_ROW;
    for (size_t i = 0; i < vehicle->axle_count; i++) {
        bool next = i > 0 && unit_of(of, vehicle->axles[i].axle) != unit_of(of, vehicle->axles[i - 1].axle);
        line += (i > 0 ? ROW : 0) + (next ? GAP : 0);
        middles[i] = line;
    }
    return line + 30;
}

static void put_frames(FILE *to, const inspection *of, const int middles[RODT_AXLES_MAX])
{
    const rodt_vehicle_finding *vehicle = &of->vehicle.vehicle;
    int top = 82;
    put_cab(to);
    for (size_t i = 0; i < vehicle->axle_count; i++) {
        bool last = i + 1 == vehicle->axle_count;
        if (!last && unit_of(of, vehicle->axles[i].axle) == unit_of(of, vehicle->axles[i + 1].axle))
            continue;
        const char *kind = of->record.units[unit_of(of, vehicle->axles[i].axle)][UNIT_KIND].text;
        put_frame(to, top, middles[i] + 34, top > 82 ? say(kind) : NULL);
        top = last ? top : middles[i + 1] - 34;
    }
}

void report_write_svg(const inspection *of, FILE *to, bool alone)
{
    const vehicle_record *vehicle = &of->vehicle;
    int middles[RODT_AXLES_MAX] = {FIRST_ROW}, bottom = place_axles(of, middles);
    if (alone)
        fputs("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n", to);
    fprintf(to, "<svg%s class=\"rt\" viewBox=\"0 0 %d %d\" role=\"img\" aria-labelledby=\"rt-title rt-desc\">\n",
            alone ? " xmlns=\"http://www.w3.org/2000/svg\"" : "", WIDTH, bottom + 28);
    put_description(to, of);
    put_style(to);
    if (alone)
        fprintf(to, "<rect width=\"%d\" height=\"%d\" fill=\"#fff\"/>\n", WIDTH, bottom + 28);
    put_frames(to, of, middles);
    for (size_t i = 0; i < vehicle->vehicle.axle_count; i++) {
        fprintf(to, "<path class=\"axle\" d=\"M%d %dH%d\"/>\n", LEFT_WHEEL + WHEEL_WIDTH, middles[i], RIGHT_WHEEL);
        put_side(to, vehicle, &vehicle->vehicle.axles[i], true, middles[i]);
        put_side(to, vehicle, &vehicle->vehicle.axles[i], false, middles[i]);
    }
    fprintf(to, "<text class=\"end\" x=\"220\" y=\"%d\" text-anchor=\"middle\">", bottom + 22);
    markup_put(to, "%</text>\n", say("REAR"));
    fputs("</svg>\n", to);
}
