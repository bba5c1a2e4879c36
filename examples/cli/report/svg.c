/* SPDX-License-Identifier: Apache-2.0 */
/* The vehicle from above: the front is at the top, every wheel end has a card with its stroke, its limit and a bar.
 * The meaning of a colour is also given by a word, by the mark on the wheel and by the pattern of the bar. */
#include "ui/markup.h"
#include "report/report.h"
#include "ui/format.h"
#include "ui/wrap.h"

#include <stdio.h>
#include <string.h>

#define WIDTH 440
#define FIRST_ROW 122 /* middle of the foremost axle */
#define ROW 82
#define CARD 150
#define BAR_WIDTH 148
#define BAR_HEIGHT 13
#define LEFT_CARD 4
#define RIGHT_CARD (WIDTH - LEFT_CARD - CARD)
#define LEFT_WHEEL 170
#define RIGHT_WHEEL (WIDTH - LEFT_WHEEL - WHEEL_WIDTH)
#define WHEEL_WIDTH 22
#define WHEEL_HEIGHT 44

typedef enum wheel_look { LOOK_GOOD, LOOK_OVER, LOOK_DEAD, LOOK_OPEN } wheel_look;

static wheel_look look_of(rodt_verdict verdict)
{
    switch (verdict) {
    case RODT_VERDICT_IN_ADJUSTMENT: return LOOK_GOOD;
    case RODT_VERDICT_OUT_OF_ADJUSTMENT: return LOOK_OVER;
    case RODT_VERDICT_INOPERATIVE: return LOOK_DEAD;
    case RODT_VERDICT_UNDETERMINED: break;
    }
    return LOOK_OPEN;
}

/* --- The vehicle -------------------------------------------------------------------------------------- */

static void put_frame(FILE *to, int bottom)
{
    int height = bottom - 78;
    fputs("<text class=\"end\" x=\"220\" y=\"14\" text-anchor=\"middle\">FRONT</text>\n"
          "<path class=\"body\" d=\"M186 82V40q0-16 16-18q18-2 36 0q16 2 16 18v42z\"/>\n"
          "<path class=\"line\" d=\"M194 50q26-10 52 0M194 50l4 12h44l4-12\"/>\n", to);
    fprintf(to, "<rect class=\"body\" x=\"206\" y=\"82\" width=\"8\" height=\"%d\"/>\n", height);
    fprintf(to, "<rect class=\"body\" x=\"226\" y=\"82\" width=\"8\" height=\"%d\"/>\n", height);
    fprintf(to, "<path class=\"line\" d=\"M206 %dh28\"/>\n", bottom + 4);
    fprintf(to, "<text class=\"end\" x=\"220\" y=\"%d\" text-anchor=\"middle\">REAR</text>\n", bottom + 20);
}

/* A tick, an exclamation mark, a cross or a question mark. */
static void put_mark(FILE *to, wheel_look look, int x, int y)
{
    static const char *const marks[] = {[LOOK_GOOD] = "m-6 0l4 5l8-10", [LOOK_OVER] = "m0-9v11m0 5v2",
                                        [LOOK_DEAD] = "m-6-6l12 12m0-12l-12 12",
                                        [LOOK_OPEN] = "m-4-5q0-4 4-4q5 0 5 4q0 3-3 4q-2 1-2 4m0 4v2"};
    fprintf(to, "<path class=\"sign\" d=\"M%d %d%s\"/>\n", x, y, marks[look]);
}

static void put_wheel(FILE *to, int x, int middle, wheel_look look)
{
    static const char *const words[] = {
        [LOOK_GOOD] = "good", [LOOK_OVER] = "over", [LOOK_DEAD] = "dead", [LOOK_OPEN] = "open"};
    fprintf(to, "<rect class=\"wheel %s\" x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" rx=\"5\"/>\n", words[look], x,
            middle - WHEEL_HEIGHT / 2, WHEEL_WIDTH, WHEEL_HEIGHT);
    put_mark(to, look, x + WHEEL_WIDTH / 2, middle);
}

/* --- The bar ------------------------------------------------------------------------------------------ */

/* Tenths of a pixel that a length takes on a bar that is `whole` long; a drawing may round. */
static int tenths(rodt_length length, rodt_length whole)
{
    rodt_length parts, pixel;
    if (!rodt_length_given(length) || !rodt_length_given(whole) ||
        rodt_length_scale(length, (rodt_ratio){whole.den * BAR_WIDTH * 10, whole.num}, &parts) != RODT_OK ||
        rodt_length_round(parts, (rodt_length){1, 1}, RODT_ROUNDING_HALF_EVEN, &pixel) != RODT_OK)
        return 0;
    return pixel.num < 0 ? 0 : pixel.num > BAR_WIDTH * 10 ? BAR_WIDTH * 10 : (int)pixel.num;
}

/* It extends by `out` pixels above and below the bar. */
static void put_part(FILE *to, const char *pattern, int x, int y, int from, int until, int out)
{
    if (until > from)
        fprintf(to, "<rect class=\"%s\" x=\"%d.%d\" y=\"%d\" width=\"%d.%d\" height=\"%d\"/>\n", pattern, x + from / 10,
                from % 10, y - out, (until - from) / 10, (until - from) % 10, BAR_HEIGHT + 2 * out);
}

static void put_bar(FILE *to, const rodt_finding *finding, rodt_length whole, int x, int y)
{
    wheel_look look = look_of(finding->verdict);
    int stroke = tenths(finding->applied_stroke, whole), limit = tenths(finding->limit, whole);
    int inside = limit > 0 && stroke > limit ? limit : stroke;
    fprintf(to, "<rect class=\"track\" x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\"/>\n", x, y, BAR_WIDTH, BAR_HEIGHT);
    put_part(to, look == LOOK_OPEN ? "unproven" : "fill", x, y, 0, inside, 0);
    put_part(to, look == LOOK_OPEN ? "unproven" : "excess", x, y, inside, stroke, look == LOOK_OPEN ? 0 : 3);
    if (limit > 0)
        fprintf(to, "<path class=\"limit\" d=\"M%d.%d %dv%d\"/><path class=\"flag\" d=\"M%d.%d %dl-5-7h10z\"/>\n",
                x + limit / 10, limit % 10, y - 2, BAR_HEIGHT + 6, x + limit / 10, limit % 10, y);
}

/* One scale for all bars, so that they can be compared: a quarter more than the longest limit or stroke. */
static rodt_length scale_of(const vehicle_record *vehicle)
{
    rodt_length most = {1, 1}, whole;
    for (size_t i = 0; i < vehicle->count; i++) {
        const rodt_finding *finding = &vehicle->findings[i];
        if (rodt_length_compare(finding->limit, most) > 0)
            most = finding->limit;
        if (rodt_length_compare(finding->applied_stroke, most) > 0)
            most = finding->applied_stroke;
    }
    bool fits = rodt_length_scale(most, (rodt_ratio){5, 4}, &whole) == RODT_OK &&
                rodt_length_round(whole, (rodt_length){1, 4}, RODT_ROUNDING_UP, &whole) == RODT_OK;
    return fits ? whole : most;
}

/* --- Cards -------------------------------------------------------------------------------------------- */

static const char *card_words(const rodt_finding *finding, char words[MARGIN_SIZE])
{
    char margin[MARGIN_SIZE];
    switch (look_of(finding->verdict)) {
    case LOOK_GOOD: return margin_words(finding, words);
    case LOOK_OVER:
        margin_words(finding, margin);
        if (strncmp(margin, "over", 4) == 0)
            snprintf(words, MARGIN_SIZE, "OVER%.60s", margin + 4);
        else
            snprintf(words, MARGIN_SIZE, "OUT, %.60s", margin);
        return words;
    case LOOK_DEAD: return "DID NOT MOVE";
    case LOOK_OPEN: break;
    }
    return "not proven";
}

static void put_texts(FILE *to, int x, int middle, const char *position, const char *verdict, const char *figures)
{
    fprintf(to, "<text x=\"%d\" y=\"%d\"><tspan class=\"name\">", x, middle - 18);
    markup_put(to, "%</tspan> <tspan class=\"word\">%</tspan></text>\n", position, verdict);
    fprintf(to, "<text class=\"figures\" x=\"%d\" y=\"%d\">", x, middle - 2);
    markup_put(to, "%</text>\n", figures);
}

static void put_card(FILE *to, const vehicle_record *vehicle, size_t end, rodt_length whole, int x, int middle)
{
    const rodt_finding *finding = &vehicle->findings[end];
    char position[RODT_POSITION_TEXT_SIZE] = "-", words[MARGIN_SIZE], stroke[WORD_SIZE], limit[WORD_SIZE];
    char figures[2 * WORD_SIZE + 32];
    bool given = rodt_length_given(finding->applied_stroke);
    (void)rodt_position_format(vehicle->ends[end].position, position, sizeof position, NULL);
    const char *unit = finding->unit == RODT_UNIT_IN && given ? " in" : "";
    const char *moved = given ? tape_word(finding, finding->applied_stroke, stroke) : "no stroke";
    if (rodt_length_given(finding->limit))
        snprintf(figures, sizeof figures, "%s%s, limit %s in", moved, unit, format_length(finding->limit, limit));
    else
        snprintf(figures, sizeof figures, "%s%s, no limit known", moved, unit);
    put_texts(to, x, middle, position, card_words(finding, words), figures);
    put_bar(to, finding, whole, x, middle + 9);
}

static void put_side(FILE *to, const vehicle_record *vehicle, const rodt_axle_finding *axle, bool left,
                     rodt_length whole, int middle)
{
    size_t end = left ? axle->left : axle->right;
    char position[RODT_POSITION_TEXT_SIZE] = "-";
    rodt_position place = {axle->axle, left ? RODT_SIDE_LEFT : RODT_SIDE_RIGHT};
    int x = left ? LEFT_CARD : RIGHT_CARD;
    bool known = end < vehicle->count;
    put_wheel(to, left ? LEFT_WHEEL : RIGHT_WHEEL, middle, known ? look_of(vehicle->findings[end].verdict) : LOOK_OPEN);
    if (known) {
        put_card(to, vehicle, end, whole, x, middle);
        return;
    }
    (void)rodt_position_format(place, position, sizeof position, NULL);
    put_texts(to, x, middle, position, "not recorded", "not measured");
}

/* --- The drawing -------------------------------------------------------------------------------------- */

/* The patterns are a drawing's own, so that a page and a file by itself look alike. */
static void put_style(FILE *to)
{
    fputs("<style>.rt text{font-family:system-ui,sans-serif;font-size:13px;fill:#111}"
          ".rt .name{font-weight:700;font-size:17px}.rt .word{font-weight:600}"
          ".rt .figures{font-size:12.5px}.rt .end{font-size:11px;letter-spacing:2px}"
          ".rt .body{fill:#e6e4dc;stroke:#111;stroke-width:1.5}.rt .line{fill:none;stroke:#111;stroke-width:1.5}"
          ".rt .axle{stroke:#111;stroke-width:6}.rt .wheel{stroke:#111;stroke-width:2}"
          ".rt .good{fill:#24453c}.rt .over{fill:#8c1c13}.rt .dead{fill:#8c1c13}"
          ".rt .open{fill:#5b5b5b;stroke-dasharray:4 3}"
          ".rt .sign{fill:none;stroke:#fff;stroke-width:3;stroke-linecap:round}"
          ".rt .track{fill:#fff;stroke:#111;stroke-width:1}.rt .fill{fill:#24453c}"
          ".rt .excess{fill:url(#rt-excess);stroke:#8c1c13;stroke-width:1.5}.rt .unproven{fill:url(#rt-unproven)}"
          ".rt .limit{stroke:#111;stroke-width:2.5}.rt .flag{fill:#111}</style>\n"
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
    markup_put(to, "<title id=\"rt-title\">Pushrod strokes% %</title>\n", unit != NULL ? " of" : "",
               unit != NULL ? unit : "");
    markup_put(to, "<desc id=\"rt-desc\">The vehicle from above, front at the top: stroke and limit of every wheel "
               "end, with a bar. %.</desc>\n", vehicle_headline(&of->vehicle, &paint));
}

void report_write_svg(const inspection *of, FILE *to, bool alone)
{
    const vehicle_record *vehicle = &of->vehicle;
    size_t axles = vehicle->vehicle.axle_count;
    int bottom = FIRST_ROW + ROW * (int)(axles > 0 ? axles - 1 : 0) + 30;
    rodt_length whole = scale_of(vehicle);
    if (alone)
        fputs("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n", to);
    fprintf(to, "<svg%s class=\"rt\" viewBox=\"0 0 %d %d\" role=\"img\" aria-labelledby=\"rt-title rt-desc\">\n",
            alone ? " xmlns=\"http://www.w3.org/2000/svg\"" : "", WIDTH, bottom + 28);
    put_description(to, of);
    put_style(to);
    if (alone)
        fprintf(to, "<rect width=\"%d\" height=\"%d\" fill=\"#fff\"/>\n", WIDTH, bottom + 28);
    put_frame(to, bottom);
    for (size_t i = 0; i < axles; i++) {
        int middle = FIRST_ROW + ROW * (int)i;
        fprintf(to, "<path class=\"axle\" d=\"M%d %dH%d\"/>\n", LEFT_WHEEL + WHEEL_WIDTH, middle, RIGHT_WHEEL);
        put_side(to, vehicle, &vehicle->vehicle.axles[i], true, whole, middle);
        put_side(to, vehicle, &vehicle->vehicle.axles[i], false, whole, middle);
    }
    fputs("</svg>\n", to);
}
