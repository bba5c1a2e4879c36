/* SPDX-License-Identifier: Apache-2.0 */
/* Sheet and key as one page that needs nothing but itself, for A4 and Letter. */
#include "ui/markup.h"
#include "practice/practice.h"
#include "ui/format.h"
#include "ui/language.h"
#include "ui/wrap.h"

#include <stdio.h>
#include <string.h>

static const char *const style =
    "*{box-sizing:border-box}body{margin:0;background:#eee;color:#111;font:15px/1.35 system-ui,sans-serif}"
    "main{max-width:54rem;margin:0 auto;padding:1rem 1.2rem;background:#fff}"
    "h1{font-size:1.35rem;margin:0 0 .3rem;display:flex;justify-content:space-between;flex-wrap:wrap;gap:0 "
    "1rem}"
    "h2{font-size:1.02rem;margin:0 0 .15rem}p{margin:.15rem 0}.small{font-size:.8rem;color:#333}"
    ".who{display:grid;grid-template-columns:2fr 1fr;gap:1.5rem;margin:.8rem 0 .7rem}"
    ".fill{border-bottom:1px solid #111;min-height:2.6em;font-size:.78rem}"
    ".lists{border:1px solid #777;padding:.3rem .6rem;margin:.4rem 0}"
    ".ends{display:grid;grid-template-columns:1fr 1fr;gap:.6rem}"
    ".end{border:1.5px solid #111;padding:.4rem .6rem .55rem;min-width:0;overflow-wrap:anywhere;display:flex;"
    "flex-direction:column}.end .answers{margin-top:auto}"
    ".end p{font-size:.86rem}.name{font-size:.8rem;font-weight:600;margin-top:.3rem}"
    ".seen{display:grid;grid-template-columns:9.5rem minmax(0,1fr);gap:.6rem;align-items:start}"
    ".seen h2{margin-bottom:-1em}"
    ".chamber,.tape{display:block;width:100%;height:auto}.chamber *{fill:#e6e4dc;stroke:#111;"
    "stroke-width:2}.chamber .dark{fill:#111}.chamber text{font-size:18px;font-weight:700;text-anchor:middle;"
    "fill:#111;stroke:none}"
    ".chamber .less{font-size:14px}.chamber .rated{font-size:11px}.chamber .field{fill:#fff;stroke-width:1}"
    ".tape rect{fill:#fbf7e4;stroke:#111}"
    ".tape .tick{stroke:#111;stroke-width:1.3;fill:none}.tape .pin{fill:#8c1c13}"
    ".tape text{font:700 14px system-ui,sans-serif;text-anchor:middle}"
    ".sum{display:grid;grid-template-columns:1fr auto 1fr auto 1fr;gap:.1rem "
    ".5rem;align-items:end;margin-top:.4rem}"
    ".answers{display:grid;grid-template-columns:1fr 1fr;gap:.1rem .9rem;margin-top:.2rem}"
    ".end .answers{grid-template-columns:auto 1fr 1fr;align-items:end;margin-top:.4rem}"
    ".vehicle+.vehicle{margin-top:2rem;border-top:3px solid #111;padding-top:1rem}"
    ".whole{border:1.5px solid #111;padding:.4rem .6rem;margin:.6rem 0}"
    ".ends+.summary{margin-top:.4rem}.summary+.ends{margin-top:.4rem}"
    ".summary{display:grid;grid-template-columns:2fr 3fr;gap:0 .8rem;align-items:start}"
    ".summary table{font-size:.72rem;margin:0}.summary .whole{margin:0}.summary th{white-space:nowrap}"
    ".boxes{margin:.35rem 0}.boxes span{display:inline-block;margin:0 .9rem .1rem 0;white-space:nowrap}"
    ".boxes span:before{content:\"\";display:inline-block;width:.9em;height:.9em;border:1.3px solid "
    "#111;margin-right:.35em;vertical-align:-.1em}"
    "table{border-collapse:collapse;width:100%;font-size:.85rem;margin:.4rem "
    "0}caption{text-align:left;font-weight:700}"
    "th,td{text-align:left;padding:.15rem .5rem .15rem 0;border-bottom:1px solid #888;vertical-align:top}"
    "ul{margin:.1rem 0 .5rem;padding-left:1.2rem;font-size:.86rem}"
    "@media screen and "
    "(max-width:40rem){.ends,.who,.summary{grid-template-columns:minmax(0,1fr)}.summary th{white-space:normal}"
    "main{padding:.7rem}"
    ".key thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}"
    ".key tbody tr{display:grid;grid-template-columns:repeat(3,minmax(0,1fr));gap:.1rem .6rem;border:1.5px "
    "solid #111;"
    "margin:.5rem 0;padding:.35rem .6rem}.key th,.key td{border:0;padding:0;order:2;overflow-wrap:anywhere}"
    ".key tbody th{font-size:1.2rem;order:0}.key .verdict{order:1;grid-column:2/-1;font-weight:700}"
    ".key .reason{grid-column:1/-1}"
    ".key td[data-l]:before{content:attr(data-l);display:block;font-size:.75rem;font-weight:400;color:#444}}"
    ".gauges{display:flex;gap:.6rem;margin-top:auto}.gauge{width:7rem;height:7rem}"
    "@media print{@page{margin:10mm}html{font-size:10.5pt}body{background:#fff;font-size:9pt;line-height:1.2}"
    ".end{padding:.2rem .5rem .4rem}.ends{gap:.35rem}.name{margin:.1rem 0 0}.end p{margin:.05rem 0}"
    ".fill{min-height:2.3em}.boxes{margin:.15rem 0}.boxes span{margin-right:.5rem}"
    ".end .boxes,.summary .boxes{font-size:7pt}"
    ".summary .small{font-size:6pt}.who{margin:.3rem 0 "
    ".4rem}.whole{margin:.35rem 0}"
    ".seen{grid-template-columns:7.5rem minmax(0,1fr)}"
    "main{max-width:none;padding:0}"
    ".end,.whole,.keep,.summary,tr,li{break-inside:avoid}.vehicle+.vehicle{break-before:page;border:0;margin:0;"
    "padding:0}h2{break-after:avoid}"
    "*{print-color-adjust:exact;-webkit-print-color-adjust:exact}}";

void practice_html_begin(FILE *to, bool key)
{
    fprintf(to, "<!DOCTYPE html>\n<html lang=\"%s\">\n<head>\n<meta charset=\"utf-8\">\n", chosen_language());
    fputs("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
          "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n",
          to);
    markup_put(to, "<title>%</title>\n<style>", key ? say("Brake stroke practice, key") : say("Brake stroke practice"));
    fprintf(to, "%s</style>\n</head>\n<body>\n<main>\n", style);
}

void practice_html_end(FILE *to) { fputs("</main>\n</body>\n</html>\n", to); }

static void put_head(const practice *of, const char *title, FILE *to)
{
    char words[PRACTICE_TEXT_SIZE], seed[SEED_SIZE];
    markup_put(to, "<section class=\"vehicle\">\n<h1><span>%</span><span>%</span></h1>\n", title,
               practice_format_seed(of->setting.seed, seed));
    practice_describe_vehicle(of, words);
    markup_put(to, "<p>%</p>\n", words);
}

void practice_html_made(FILE *to)
{
    char words[PRACTICE_TEXT_SIZE];
    practice_format_version(words);
    markup_put(to, "<p class=\"small\">% ", say(PRACTICE_CAUTION));
    markup_put(to, say("Made by %."), words);
    fputs("</p>\n", to);
}

static void put_fill(FILE *to, const char *label) { markup_put(to, "<div class=\"fill\">%</div>", label); }

void practice_html_who(FILE *to)
{
    fputs("<div class=\"who\">", to);
    put_fill(to, say("Name"));
    put_fill(to, say("Date"));
    fputs("</div>\n", to);
}

void practice_html_boxes(FILE *to, const char *const *words, size_t count)
{
    for (size_t i = 0; i < count; i++)
        markup_put(to, "<span>%</span>", say(words[i]));
}

/* --- The tape, drawn ---------------------------------------------------------------------------------- */

/* The same piece and ticks as in text, in pixels. It has a label and no title, which would show the answer under the
 * mouse. */
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

static void put_drawing(FILE *to, const char *name, rodt_length at, rodt_unit unit)
{
    char words[TAPE_TEXT_SIZE];
    practice_window window = practice_window_of(at, unit, false);
    int end = LEFT + STEP * window.ticks;
    practice_tape_describe(at, unit, words);
    fprintf(to, "<svg class=\"tape\" viewBox=\"0 0 %d %d\" role=\"img\" ", WIDTH, BOTTOM + 2);
    fputs("aria-label=\"", to);
    markup_put(to, say("%: %"), name, words);
    fputs("\">\n", to);
    fprintf(to, "<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\"/>", LEFT - MARGIN, EDGE, end - LEFT + 2 * MARGIN,
            BOTTOM - EDGE);
    put_ticks(to, &window, unit);
    fprintf(to, "<path class=\"pin\" d=\"M%d %dl-5-11h10z\"/></svg>\n",
            LEFT + STEP * (window.pointer - window.first), EDGE);
}

/* --- The chamber, drawn --------------------------------------------------------------------------------- */

/* From the side: the pushrod is on the right, the air comes in at the left. */
static void put_housing(FILE *to, rodt_family family)
{
    static const char *const bodies[] = {
        [RODT_FAMILY_UNKNOWN] = "",
        [RODT_FAMILY_CLAMP] =
            "<path d=\"M64 22H42Q20 22 20 46V62Q20 86 42 86H64z\"/><path d=\"M64 22H84Q106 22 106 46V62Q106 "
            "86 84 86H64z\"/><rect x=\"59\" y=\"17\" width=\"10\" height=\"74\" rx=\"3\"/>"
            "<rect class=\"dark\" x=\"55\" y=\"88\" width=\"18\" height=\"6\"/>",
        [RODT_FAMILY_BOLT] =
            "<path d=\"M62 22H42Q20 22 20 46V62Q20 86 42 86H62z\"/><path d=\"M66 22H84Q106 22 106 46V62Q106 "
            "86 84 86H66z\"/><rect x=\"56\" y=\"10\" width=\"7\" height=\"88\"/><rect x=\"65\" y=\"10\" "
            "width=\"7\" height=\"88\"/><path class=\"dark\" d=\"M50 14h28M50 36h28M50 72h28M50 94h28\"/>",
        [RODT_FAMILY_ROTOCHAMBER] =
            "<path d=\"M20 30H92Q106 30 106 44V64Q106 78 92 78H20z\"/><path d=\"M28 24h8v60h-8z\"/>",
        [RODT_FAMILY_DD_3] =
            "<path d=\"M64 22H42Q20 22 20 46V62Q20 86 42 86H64z\"/><path d=\"M64 22H84Q106 22 106 46V62Q106 "
            "86 84 86H64z\"/><rect x=\"57\" y=\"17\" width=\"5\" height=\"74\"/><rect x=\"66\" y=\"17\" "
            "width=\"5\" height=\"74\"/><path d=\"M2 38h18M2 54h18M2 70h18\"/>"};
    fprintf(to, "<path class=\"dark\" d=\"M106 50h22v8h-22z\"/><circle cx=\"130\" cy=\"54\" r=\"5\"/>%s",
            bodies[family]);
}

/* Round ports or square ones, and the tag that hangs under a clamp bolt. */
static void put_signs(FILE *to, const practice_end *seen)
{
    if (seen->port == RODT_PORT_SQUARE)
        fputs("<rect x=\"24\" y=\"8\" width=\"14\" height=\"14\"/><rect x=\"40\" y=\"8\" width=\"14\" "
              "height=\"14\"/>",
              to);
    else
        fputs("<circle cx=\"31\" cy=\"15\" r=\"7\"/><circle cx=\"47\" cy=\"15\" r=\"7\"/>", to);
    if (seen->tag == RODT_TAG_TRAPEZOID)
        fputs("<path d=\"M54 96h20l6 16H48z\"/>", to);
}

/* What is stamped on the housing, on a field that is wide enough to be read. */
static void put_stamp(FILE *to, const char *stamp, rodt_length rated_stroke)
{
    bool rated = rodt_length_given(rated_stroke);
    char text[WORD_SIZE];
    fprintf(to, "<rect class=\"field\" x=\"11\" y=\"%d\" width=\"104\" height=\"%d\"/>", rated ? 35 : 42,
            rated ? 39 : 24);
    fprintf(to, "<text class=\"%s\" x=\"63\" y=\"%d\">", strlen(stamp) > 7 ? "less" : "large", rated ? 52 : 60);
    markup_put(to, "%</text>", stamp);
    if (!rated)
        return;
    fputs("<text class=\"rated\" x=\"63\" y=\"68\">", to);
    markup_words(to, format_length(rated_stroke, text));
    fputs(" in STROKE</text>", to);
}

static void put_chamber(const practice *of, size_t end, FILE *to)
{
    const practice_end *seen = &of->seen[end];
    const rodt_chamber *chamber = &of->judged.ends[end].reading.chamber;
    char words[PRACTICE_TEXT_SIZE];
    practice_describe_marks(of, end, words);
    markup_put(to, "<svg class=\"chamber\" viewBox=\"-14 0 152 116\" role=\"img\" aria-label=\"%\">", words);
    put_housing(to, chamber->family);
    if (chamber->family == RODT_FAMILY_CLAMP)
        put_signs(to, seen);
    put_stamp(to, seen->stamp, chamber->rated_stroke);
    fputs("</svg>\n", to);
}

/* --- Sheet -------------------------------------------------------------------------------------------- */

static void put_lists(FILE *to)
{
    fputs("<div class=\"lists small\">\n<p><strong>", to);
    markup_put(to, "%</strong> ", say("Reason, by its number:"));
    for (size_t i = 0; practice_reason_at(i) != RODT_REASON_END; i++) {
        fprintf(to, "%s%zu\xC2\xA0", i == 0 ? "" : ", ", i + 1);
        markup_text(to, say(practice_reason_word(practice_reason_at(i))));
    }
    fputs("</p>\n</div>\n", to);
}

static void put_tape(const practice *of, const char *name, rodt_length at, FILE *to)
{
    char words[TAPE_TEXT_SIZE];
    practice_tape_describe(at, of->setting.unit, words);
    markup_put(to, "<p class=\"name\">%</p>\n", name);
    if (of->setting.described)
        markup_put(to, "<p>%</p>\n", words);
    else
        put_drawing(to, name, at, of->setting.unit);
}

static void put_words(FILE *to, const char *text)
{
    fputs("<p>", to);
    markup_words(to, text);
    fputs("</p>\n", to);
}

/* What is to be filled in. */
static void put_fields(FILE *to)
{
    static const char *const classes[] = {TO_SAY("standard"), TO_SAY("long")};
    static const char *const verdicts[] = {TO_SAY("in adjustment"), TO_SAY("out of adjustment"), TO_SAY("inoperative"),
                                           TO_SAY("undetermined")};
    fputs("<div class=\"sum\">", to);
    put_fill(to, say("Applied"));
    fputs("<div>\xE2\x88\x92</div>", to);
    put_fill(to, say("Released"));
    fputs("<div>=</div>", to);
    put_fill(to, say("Stroke"));
    fputs("</div>\n<div class=\"answers\"><div class=\"boxes\">", to);
    practice_html_boxes(to, classes, COUNT_OF(classes));
    fputs("</div>", to);
    put_fill(to, say("Limit"));
    put_fill(to, say("Reason, number"));
    fputs("</div>\n<p class=\"boxes\">", to);
    practice_html_boxes(to, verdicts, COUNT_OF(verdicts));
    fputs("</p>\n", to);
}

static void put_end(const practice *of, size_t end, FILE *to)
{
    char position[RODT_POSITION_TEXT_SIZE], words[PRACTICE_TEXT_SIZE];
    const rodt_reading *reading = &of->judged.ends[end].reading;
    practice_format_position(of, end, position);
    practice_describe_marks(of, end, words);
    markup_put(to, "<article class=\"end\">\n<div class=\"seen\">\n<div>\n<h2>%</h2>\n", position);
    put_chamber(of, end, to);
    fputs("</div>\n<div>\n", to);
    put_words(to, words);
    practice_describe_conditions(of, end, words);
    put_words(to, words);
    fputs("</div>\n</div>\n", to);
    put_tape(of, say("Released"), reading->released, to);
    put_tape(of, say("Applied"), reading->applied, to);
    put_fields(to);
    fputs("</article>\n", to);
}

static void put_limit(void *context, const char *label, const char *text)
{
    markup_put(context, "<tr><th scope=\"row\">%</th>", label);
    fputs("<td>", context);
    markup_words(context, text);
    fputs("</td></tr>\n", context);
}

static void put_chart(const practice *of, FILE *to)
{
    fputs("<table class=\"keep\">\n<caption>", to);
    markup_put(to, say("Limits of % by size, inches unless a unit is given"), rodt_rules_id(of->setting.rules));
    fputs("</caption>\n<tbody>\n", to);
    practice_each_limit(of, put_limit, to);
    fputs("</tbody>\n</table>\n", to);
}

/* What is filled in last, beside the limits that are needed from the first wheel end on. */
static void put_summary(const practice *of, FILE *to)
{
    static const char *const outcomes[] = {TO_SAY("out of service"), TO_SAY("below criterion"), TO_SAY("ambiguous"),
                                           TO_SAY("undetermined")};
    char brakes[100];
    snprintf(brakes, sizeof brakes, say("Defective brakes, of %zu"), of->judged.count);
    markup_put(to, "<div class=\"summary\">\n<div>\n<div class=\"whole\">\n<h2>%</h2>\n<div class=\"answers\">",
               say("Vehicle, at the end"));
    put_fill(to, brakes);
    put_fill(to, say("Share, %"));
    markup_put(to, "</div>\n<p class=\"boxes\">% ", say("By the roadside criterion:"));
    practice_html_boxes(to, outcomes, COUNT_OF(outcomes));
    fputs("</p>\n</div>\n", to);
    practice_html_made(to);
    fputs("</div>\n", to);
    put_chart(of, to);
    fputs("</div>\n", to);
}

/* So many wheel ends are above the summary on the first sheet; six are on a sheet without it. */
#define FIRST_SHEET ((size_t)4)

static void put_ends(const practice *of, size_t from, size_t until, FILE *to)
{
    fputs("<div class=\"ends\">\n", to);
    for (size_t i = from; i < until && i < of->judged.count; i++)
        put_end(of, i, to);
    fputs("</div>\n", to);
}

void practice_html_sheet(const practice *of, FILE *to)
{
    put_head(of, say("Brake stroke practice"), to);
    markup_put(to, "<p>%</p>\n", say(PRACTICE_TAPE_NOTE));
    put_lists(to);
    practice_html_who(to);
    put_ends(of, 0, FIRST_SHEET, to);
    put_summary(of, to);
    if (of->judged.count > FIRST_SHEET)
        put_ends(of, FIRST_SHEET, of->judged.count, to);
    fputs("</section>\n", to);
}

/* --- Key ---------------------------------------------------------------------------------------------- */

static void put_row(const practice *of, size_t end, FILE *to)
{
    const rodt_finding *finding = &of->judged.findings[end];
    char position[RODT_POSITION_TEXT_SIZE], chamber[RODT_CHAMBER_TEXT_SIZE], released[WORD_SIZE], applied[WORD_SIZE];
    char stroke[WORD_SIZE], limit[WORD_SIZE];
    bool given = rodt_length_given(finding->applied_stroke);
    practice_format_position(of, end, position);
    markup_put(to, "<tr><th scope=\"row\">%</th><td data-l=\"%\"><strong>%</strong></td>", position, say("Stroke"),
               given ? practice_format_length(of, finding->applied_stroke, stroke) : say("none"));
    markup_put(to, "<td data-l=\"%\">%</td>", say("Limit"), practice_format_length(of, finding->limit, limit));
    markup_put(to, "<td class=\"verdict\" data-l=\"%\">%</td><td class=\"reason\" data-l=\"%\">%</td>", say("Verdict"),
               verdict_words(finding->verdict), say("Reason"),
               say(practice_reason_word(practice_deciding_reason(finding))));
    markup_put(to, "<td data-l=\"%\">%</td><td data-l=\"%\">%</td><td data-l=\"%\">%</td></tr>\n", say("Released"),
               practice_format_length(of, finding->released, released), say("Applied"),
               practice_format_length(of, finding->applied, applied), say("Chamber"),
               format_chamber(&finding->chamber, chamber));
}

static void put_item(void *context, const char *label, const char *text)
{
    if (label[0] != 'L') /* the law is named once, below */
        markup_put(context, "<li>%</li>\n", text);
}

static void put_source(void *context, const char *label, const char *text)
{
    fputs("<li>", context);
    markup_put(context, say("%: %"), label, text);
    fputs("</li>\n", context);
}

static void put_axle(void *context, const char *label, const char *text)
{
    (void)label;
    markup_put(context, "<li>%</li>\n", text);
}

static void put_why(const practice *of, size_t end, FILE *to)
{
    char position[RODT_POSITION_TEXT_SIZE];
    practice_format_position(of, end, position);
    markup_put(to, "<div class=\"keep\">\n<h2>%</h2>\n<ul>\n", position);
    practice_each_reason(of, end, put_item, to);
    practice_each_lesson(of, end, put_item, to);
    fputs("</ul>\n</div>\n", to);
}

static void put_whole(const practice *of, FILE *to)
{
    char words[PRACTICE_TEXT_SIZE];
    paint_kind paint;
    practice_format_count(of, words);
    markup_put(to, "<div class=\"whole\">\n<h2>%</h2>\n<p>%</p>\n<p><strong>%</strong></p>\n<ul>\n", say("Vehicle"),
               words, vehicle_headline(&of->judged, &paint));
    vehicle_each_axle(&of->judged, put_axle, to);
    markup_put(to, "</ul>\n</div>\n<h2>%</h2>\n<ul>\n", say("Sources"));
    vehicle_each_source(&of->judged, put_source, to);
    fputs("</ul>\n", to);
}

void practice_html_key(const practice *of, FILE *to)
{
    static const char *const headings[] = {TO_SAY("Place"),  TO_SAY("Stroke"),   TO_SAY("Limit"),   TO_SAY("Verdict"),
                                           TO_SAY("Reason"), TO_SAY("Released"), TO_SAY("Applied"), TO_SAY("Chamber")};
    char words[PRACTICE_TEXT_SIZE];
    put_head(of, say("Brake stroke practice, key"), to);
    practice_format_command(of, words);
    markup_put(to, "<p class=\"small\">% <code>%</code></p>\n", say("Again with:"), words);
    fputs("<table class=\"key\">\n<thead><tr>", to);
    for (size_t i = 0; i < COUNT_OF(headings); i++)
        markup_put(to, "<th scope=\"col\">%</th>", say(headings[i]));
    fputs("</tr></thead>\n<tbody>\n", to);
    for (size_t i = 0; i < of->judged.count; i++)
        put_row(of, i, to);
    fputs("</tbody>\n</table>\n", to);
    put_whole(of, to);
    markup_put(to, "<h2>%</h2>\n", say("Why"));
    for (size_t i = 0; i < of->judged.count; i++)
        put_why(of, i, to);
    practice_html_made(to);
    fputs("</section>\n", to);
}
