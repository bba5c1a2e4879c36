/* SPDX-License-Identifier: Apache-2.0 */
/* The report as one page that needs nothing but itself: no script, no font, no request. */
#include "ui/markup.h"
#include "report/report.h"
#include "ui/compiler.h"
#include "ui/format.h"
#include "ui/language.h"
#include "ui/wrap.h"

#include <stdio.h>

static const char *const style =
    "*{box-sizing:border-box}"
    "body{margin:0;background:#f3f1ea;color:#111;font:1rem/1.4 system-ui,sans-serif}"
    "main{max-width:62rem;margin:0 auto;padding:1.25rem;background:#fff}"
    "h1{font-size:1.5rem;margin:0 0 .5rem}h2{font-size:1.1rem;margin:1.4rem 0 .4rem;border-bottom:2px solid #111}"
    "dl.head{display:grid;grid-template-columns:repeat(auto-fit,minmax(9.5rem,1fr));gap:.3rem 1rem;margin:0}"
    "dl.head div{min-width:0}dl.head .wide{grid-column:1/-1}dt{font-size:.8rem;color:#444}"
    "dd{margin:0;font-weight:600;overflow-wrap:anywhere}"
    ".outcome{margin:1rem 0 .5rem;padding:.6rem .8rem;border:3px solid #111}"
    ".outcome strong{display:block;font-size:1.45rem;line-height:1.2}.outcome .do{font-weight:700;margin:.25rem 0 0}"
    ".outcome.bad{border-style:double;border-width:6px;border-color:#8c1c13}.outcome.bad strong{color:#8c1c13}"
    ".outcome.open{border-style:dashed}.outcome.good{border-color:#24453c}.outcome.good strong{color:#24453c}"
    ".outcome.edge{border-color:#8a5200;border-style:groove;border-width:6px}.outcome.edge strong{color:#8a5200}"
    "p{margin:.2rem 0}.pair{display:grid;grid-template-columns:minmax(0,27rem) minmax(0,1fr);gap:0 1.5rem}"
    "figure{margin:.4rem 0}figure svg{display:block;width:100%;height:auto}figcaption{font-size:.85rem}"
    "table{border-collapse:collapse;width:100%;font-size:.9rem}"
    "caption{text-align:left;font-size:.85rem;padding:.1rem 0}"
    "th,td{text-align:left;vertical-align:top;padding:.2rem .5rem .2rem 0;border-bottom:1px solid #888}"
    "tr.bad td,tr.bad th{font-weight:700}.mark{white-space:nowrap}td.wide{padding-right:1.2rem}"
    "ul{margin:.3rem 0;padding-left:1.3rem}"
    "li{overflow-wrap:anywhere}li.source{list-style:none;font-size:.8rem;color:#444}"
    ".sources{font-size:.75rem;color:#333}.sources h2{font-size:.9rem;border-bottom-width:1px}"
    ".sources strong{font-weight:600}.caution{border:2px solid #111;padding:.4rem .8rem;margin-top:1rem}"
    ".sign{display:grid;grid-template-columns:2fr 1fr;gap:2rem;margin-top:3rem}"
    ".sign span{border-top:1px solid #111;padding-top:.2rem;font-size:.85rem}.ends td,.ends th{white-space:nowrap}"
    ".ends{font-size:.83rem}"
    "@media screen and (max-width:46rem){.pair{grid-template-columns:minmax(0,1fr)}main{padding:.8rem}"
    "thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}"
    "tbody tr{display:grid;grid-template-columns:repeat(3,minmax(0,1fr));gap:.1rem .6rem;border:1.5px solid #111;"
    "margin:.5rem 0;padding:.35rem .6rem}tbody tr.bad{border:4px double #8c1c13}"
    "tbody th,tbody td{border:0;padding:0;white-space:normal;overflow-wrap:anywhere}"
    ".ends td,.ends th{white-space:normal}tbody tr *{order:2}tbody th{font-size:1.2rem;order:0}"
    ".ends .verdict{order:1;grid-column:2/-1;font-weight:700}"
    "tbody td.big{font-size:1.15rem;font-weight:700}tbody .wide{grid-column:1/-1}"
    "tbody td[data-l]:before{content:attr(data-l);display:block;font-size:.75rem;font-weight:400;color:#444}}"
    "@media print{@page{margin:12mm}html{font-size:8.5pt}body{background:#fff;line-height:1.25}"
    "main{max-width:none;padding:0}p{margin:0}th,td{padding:.1rem .4rem .1rem 0}"
    "h2{margin:.7rem 0 .25rem;break-after:avoid}"
    ".pair{grid-template-columns:8.8cm minmax(0,1fr)}"
    "tr,li,.keep,figure,.caution,.sign{break-inside:avoid}.outcome{margin:.5rem 0 .3rem;padding:.3rem .6rem}"
    "*{print-color-adjust:exact;-webkit-print-color-adjust:exact}"
    ".sign{margin-top:2rem}.sources{font-size:6.5pt;line-height:1.2}}";

/* --- Head --------------------------------------------------------------------------------------------- */

static void put_top(const inspection *of, FILE *to)
{
    const char *unit = of->record.head[HEAD_UNIT].text;
    fprintf(to, "<!DOCTYPE html>\n<html lang=\"%s\">\n", chosen_language());
    fputs("<head>\n<meta charset=\"utf-8\">\n"
          "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
          "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n",
          to);
    markup_put(to, "<title>%%%, %</title>\n", say("Brake inspection"), say(": "),
               unit != NULL ? unit : say("unit not named"), of->record.head[HEAD_DATE].text);
    fprintf(to, "<style>%s</style>\n</head>\n<body>\n<main>\n", style);
    markup_put(to, "<h1>%</h1>\n", say("Brake inspection"));
}

static void put_head(const inspection *of, FILE *to)
{
    fputs("<dl class=\"head\">\n", to);
    for (int key = 0; key < HEAD_KEYS; key++) {
        const char *title = report_head_title((head_key)key), *text = report_head_text(of, (head_key)key);
        if (title != NULL && text != NULL)
            markup_put(to, "<div class=\"%\"><dt>%</dt><dd>%</dd></div>\n", key == HEAD_REMARKS ? "wide" : "narrow",
                       title, text);
    }
    char unit[UNIT_TEXT_SIZE];
    for (size_t i = 0; record_format_unit(&of->record, i, unit); i++) {
        char label[40];
        snprintf(label, sizeof label, say("Unit %zu"), i + 1);
        markup_put(to, "<div class=\"narrow\"><dt>%</dt><dd>%</dd></div>\n", label, unit);
    }
    fputs("</dl>\n", to);
}

static void put_count(void *context, const char *label, const char *text)
{
    markup_put(context, "<p>%%%</p>\n", label, label[0] != '\0' ? say(": ") : "", text);
}

static void put_outcome(const inspection *of, FILE *to)
{
    static const char *const classes[] = {
        [PAINT_GOOD] = "good", [PAINT_BAD] = "bad", [PAINT_OPEN] = "open", [PAINT_EDGE] = "edge",
        [PAINT_STRONG] = "open"};
    const inspection_outcome outcome = inspection_outcome_of(of);
    const char *warning = inspection_warning(of);
    bool small = outcome.small[0] != '\0';
    char undone[UNDONE_SIZE];
    markup_put(to, "<div class=\"outcome %\">\n", classes[small ? outcome.air_paint : outcome.strokes_paint]);
    if (outcome.air != NULL)
        markup_put(to, "<strong>%</strong>\n", outcome.air);
    markup_put(to, small ? "<p>%</p>\n" : "<strong>%</strong>\n", small ? outcome.small : outcome.strokes);
    if (warning != NULL)
        markup_put(to, "<p class=\"do\">%</p>\n", warning);
    if (inspection_format_undone(of, undone))
        markup_put(to, "<p>%</p>\n", undone);
    fputs("</div>\n", to);
    vehicle_each_count(&of->vehicle, put_count, to);
}

/* --- Lists -------------------------------------------------------------------------------------------- */

/* A heading is written only over a list that is not empty. */
typedef struct html_list {
    FILE *to;
    const char *heading;
    bool begun;
} html_list;

static void put_item(void *context, const char *label, const char *text)
{
    html_list *list = context;
    if (!list->begun)
        markup_put(list->to, "<h2>%</h2>\n<ul>\n", list->heading);
    list->begun = true;
    if (text[0] == '(')
        markup_put(list->to, "<li class=\"source\">%</li>\n", text);
    else if (label[0] != '\0')
        markup_put(list->to, "<li><strong>%</strong>%%</li>\n", label, say(": "), text);
    else
        markup_put(list->to, "<li>%</li>\n", text);
}

static void end_list(html_list *list)
{
    if (list->begun)
        fputs("</ul>\n", list->to);
}

static void put_findings(const inspection *of, FILE *to)
{
    html_list defects = {to, say("Defects"), false}, next = {to, say("Next"), false};
    html_list axles = {to, say("Axles"), false}, notes = {to, say("Notes"), false};
    inspection_each_defect(of, put_item, &defects);
    end_list(&defects);
    char undone[UNDONE_SIZE];
    bool open = inspection_format_undone(of, undone);
    if (!defects.begun)
        markup_put(to, "<h2>%</h2>\n<p>%%%</p>\n", say("Defects"), say("None was found."), open ? " " : "",
                   open ? undone : "");
    vehicle_each_advice(&of->vehicle, put_item, &next);
    end_list(&next);
    vehicle_each_axle(&of->vehicle, put_item, &axles);
    end_list(&axles);
    vehicle_each_reason(&of->vehicle, put_item, &notes);
    inspection_each_note(of, put_item, &notes);
    end_list(&notes);
}

static void put_remarks(const inspection *of, FILE *to)
{
    html_list remarks = {to, say("Remarks"), false};
    char note[REPORT_NOTE_SIZE], title[SAID_SIZE];
    if (report_limits_note(of, note))
        put_item(&remarks, "", note);
    if (record_cautions_note(&of->record) != NULL)
        put_item(&remarks, "", record_cautions_note(&of->record));
    for (size_t i = 0; i < of->record.end_count; i++) {
        const record_value *values = of->record.ends[i];
        if (values[END_REMARK].text != NULL)
            put_item(&remarks, values[END_POSITION].text, values[END_REMARK].text);
    }
    for (size_t i = 0; i < of->record.check_count; i++) {
        const record_value *values = of->record.checks[i];
        if (values[CHECK_REMARK].text != NULL)
            put_item(&remarks, report_air_title(of->air[i].reading.check, title), values[CHECK_REMARK].text);
    }
    end_list(&remarks);
}

static void put_sources(const inspection *of, FILE *to)
{
    html_list sources = {to, say("Sources"), false};
    fputs("<section class=\"sources\">\n", to);
    vehicle_each_source(&of->vehicle, put_item, &sources);
    report_each_air_source(of, put_item, &sources);
    end_list(&sources);
    fputs("<p>", to);
    markup_put(to, say("Judged by rodtravel %, tables of %, rule set %."), rodt_version(), rodt_tables_edition(),
               rodt_rules_id(of->context->rules));
    fputs("</p>\n</section>\n", to);
}

/* --- Tables ------------------------------------------------------------------------------------------- */

static void put_cell(FILE *to, const char *label, const char *look, const char *text)
{
    markup_put(to, "<td data-l=\"%\" class=\"%\">%</td>", label, look, text);
}

/* "95", "95 to 91": before and after the application. */
static const char *pressures(const rodt_finding *finding, char text[2 * WORD_SIZE + 8])
{
    char before[WORD_SIZE], after[WORD_SIZE];
    if (!rodt_pressure_given(finding->pressure_after))
        return format_pressure(finding->pressure, text);
    snprintf(text, 2 * WORD_SIZE + 8, say("%s to %s"), format_pressure(finding->pressure, before),
             format_pressure(finding->pressure_after, after));
    return text;
}

static void put_end(const inspection *of, size_t end, FILE *to)
{
    const rodt_finding *finding = &of->vehicle.findings[end];
    const rodt_wheel_end *wheel = &of->vehicle.ends[end];
    char position[RODT_POSITION_TEXT_SIZE] = "-", chamber[RODT_CHAMBER_TEXT_SIZE], margin[MARGIN_SIZE];
    char word[WORD_SIZE], psi[2 * WORD_SIZE + 8];
    bool bad = verdict_paint(finding) == PAINT_BAD;
    (void)rodt_position_format(wheel->position, position, sizeof position, NULL);
    markup_put(to, "<tr class=\"%\"><th scope=\"row\">%</th>", bad ? "bad" : "fine", position);
    put_cell(to, say("Stroke"), "big", tape_word(finding, finding->applied_stroke, word));
    put_cell(to, say("Limit"), "big", format_length(finding->limit, word));
    put_cell(to, say("Verdict"), "verdict", verdict_words(finding->verdict));
    put_cell(to, say("Margin"), "mark", margin_words(finding, margin));
    put_cell(to, say("Chamber"), "mark", format_chamber(&finding->chamber, chamber));
    put_cell(to, say("Released"), "mark", tape_word(finding, finding->released, word));
    put_cell(to, say("Applied"), "mark", tape_word(finding, finding->applied, word));
    put_cell(to, say("psi"), "mark", pressures(finding, psi));
    put_cell(to, say("Adjuster"), "mark", report_adjuster(wheel->adjuster));
    put_cell(to, say("Arm"), "mark", format_length(wheel->arm_length, word));
    fputs("</tr>\n", to);
}

static void put_headings(FILE *to, const char *const *headings, size_t count)
{
    fputs("<thead><tr>", to);
    for (size_t i = 0; i < count; i++)
        markup_put(to, "<th scope=\"col\">%</th>", say(headings[i]));
    fputs("</tr></thead>\n<tbody>\n", to);
}

static void put_ends(const inspection *of, FILE *to)
{
    static const char *const headings[] = {TO_SAY("Place"), TO_SAY("Stroke"), TO_SAY("Limit"), TO_SAY("Verdict"),
                                           TO_SAY("Margin"), TO_SAY("Chamber"), TO_SAY("Released"), TO_SAY("Applied"),
                                           TO_SAY("psi"), TO_SAY("Adjuster"), TO_SAY("Arm")};
    markup_put(to, "<div class=\"keep\">\n<h2>%</h2>\n<table class=\"ends\">\n<caption>%</caption>\n",
               say("Wheel ends"), say("Inches unless a unit is given; psi before the application, and after it; "
                                      "arm: length of the slack adjuster."));
    put_headings(to, headings, COUNT_OF(headings));
    for (size_t i = 0; i < of->vehicle.vehicle.axle_count; i++) {
        const rodt_axle_finding *axle = &of->vehicle.vehicle.axles[i];
        if (axle->left < of->vehicle.count)
            put_end(of, axle->left, to);
        if (axle->right < of->vehicle.count)
            put_end(of, axle->right, to);
    }
    fputs("</tbody>\n</table>\n</div>\n", to);
}

static void put_checks(const inspection *of, FILE *to)
{
    static const char *const headings[] = {TO_SAY("Check"), TO_SAY("Result"), TO_SAY("You found")};
    char sentence[SAID_SIZE], title[SAID_SIZE];
    rodt_message message;
    if (of->record.check_count == 0) {
        markup_put(to, "<h2>%</h2>\n<p>%</p>\n", say("Air checks"), say("None was recorded."));
        return;
    }
    markup_put(to, "<div class=\"keep\">\n<h2>%</h2>\n<table>\n", say("Air checks"));
    put_headings(to, headings, COUNT_OF(headings));
    for (size_t i = 0; i < of->record.check_count; i++) {
        const rodt_air_finding *finding = &of->air[i];
        bool said = say_message(rodt_air_finding_message(finding, &message), &message, sentence, sizeof sentence);
        markup_put(to, "<tr class=\"%\"><th scope=\"row\" class=\"wide\">%</th><td class=\"wide mark\">%%</td>"
                   "<td class=\"wide\">%</td></tr>\n",
                   finding->result == RODT_AIR_RESULT_DEFECTIVE ? "bad" : "fine",
                   report_air_title(finding->reading.check, title), report_air_result(finding->result),
                   finding->major ? say(", major") : finding->minor ? say(", minor") : "", said ? sentence : "-");
    }
    fputs("</tbody>\n</table>\n</div>\n", to);
}

/* --- The page ----------------------------------------------------------------------------------------- */

static void put_drawing(const inspection *of, FILE *to)
{
    markup_put(to, "<div class=\"pair\">\n<div>\n<h2>%</h2>\n<figure>\n", say("From above"));
    report_write_svg(of, to, false);
    markup_put(to, "<figcaption>%</figcaption>\n</figure>\n</div>\n<div>\n",
               say("A full bar is the limit. Red and longer is over it; dotted is not proven."));
    put_findings(of, to);
    fputs("</div>\n</div>\n", to);
}

/* The first sheet is the verdict, what to do and who says so; figures and sources may go to the next one. */
static void put_signature(FILE *to)
{
    markup_put(to, "<div class=\"caution\"><p>%</p></div>\n", vehicle_caution());
    markup_put(to, "<div class=\"sign\"><span>%</span><span>%</span></div>\n", say("Signature of the inspector"),
               say("Date"));
}

void report_write_html(const inspection *of, FILE *to)
{
    put_top(of, to);
    put_head(of, to);
    put_outcome(of, to);
    put_drawing(of, to);
    put_signature(to);
    put_ends(of, to);
    put_checks(of, to);
    put_remarks(of, to);
    put_sources(of, to);
    fputs("</main>\n</body>\n</html>\n", to);
}
