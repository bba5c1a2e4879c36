/* SPDX-License-Identifier: Apache-2.0 */
/* The cards as one page: four to a sheet, A6 on A4, a little shorter on Letter, with cut marks. Nothing depends on
 * colour. */
#include "air/steps.h"
#include "cards/cards.h"
#include "ui/language.h"
#include "ui/markup.h"
#include "ui/utf8.h"

#include <string.h>

static const char *const style =
    "*{box-sizing:border-box}h1{max-width:210mm;margin:4mm auto;font-size:15pt}"
    "body{margin:0;background:#ddd;color:#000;font:11.5pt/1.3 system-ui,sans-serif}"
    ".sheet{position:relative;display:grid;grid-template-columns:105mm 105mm;grid-auto-rows:139mm;width:210mm;"
    "margin:4mm auto;background:#fff}"
    ".card{padding:8mm 8mm 5mm;display:flex;flex-direction:column;overflow:hidden;min-width:0}"
    ".card h2{font-size:14.5pt;line-height:1.15;margin:0 0 1.5mm;display:flex;justify-content:space-between;gap:3mm;"
    "border-bottom:.8mm solid #000;padding-bottom:1mm}"
    ".card h2 span{font-size:10pt;font-weight:400;white-space:nowrap;align-self:flex-end}"
    "dl{margin:0}dt{font-size:8.5pt;font-weight:700;letter-spacing:.06em;margin-top:1.6mm}"
    "dd{margin:0}dd+dd{font-size:9.5pt;line-height:1.2;padding-left:3mm}"
    ".bad{border-left:1.2mm solid #000;padding-left:2.5mm;margin-top:1.6mm}.bad dt{margin-top:0}"
    ".large dd{font-size:13.5pt}.small dd{font-size:10.5pt;line-height:1.22}.small dd+dd{font-size:9pt}"
    ".least dd{font-size:9.5pt;line-height:1.2}.least dd+dd{font-size:8.2pt}"
    ".tiny dd{font-size:8.5pt;line-height:1.15}.tiny dd+dd{font-size:7.3pt;line-height:1.15}"
    ".foot{margin-top:auto;padding-top:1.5mm;font-size:6.8pt;line-height:1.15;color:#222}"
    ".cut{position:absolute;width:8mm;height:8mm;margin:-4mm 0 0 -4mm;"
    "background:linear-gradient(#000,#000) center/.2mm 100% no-repeat,linear-gradient(#000,#000) center/100% .2mm "
    "no-repeat}"
    "@media screen and (max-width:52rem){h1{padding:0 1rem}.sheet{display:block;width:auto;margin:0}.cut{display:none}"
    ".card{border-bottom:2px dashed #000;padding:1rem}.card dd{font-size:12.5pt}.card dd+dd{font-size:11pt}}"
    "@media print{@page{margin:0}h1{display:none}body{background:#fff}"
    ".sheet{margin:0 auto;break-after:page;break-inside:avoid;overflow:hidden}"
    ".sheet:last-of-type{break-after:auto}*{print-color-adjust:exact;-webkit-print-color-adjust:exact}}"
    /* A page is 100vh high: half of A4 is A6, half of Letter a little less. */
    "@media print{.sheet{grid-auto-rows:min(148mm,calc(50vh - .2mm))}}";

static void put_head(FILE *to)
{
    fprintf(to, "<!DOCTYPE html>\n<html lang=\"%s\">\n<head>\n<meta charset=\"utf-8\">\n",
            chosen_language());
    fputs("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
          "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n",
          to);
    markup_put(to, "<title>%</title>\n", say("Inspection, step by step"));
    fprintf(to, "<style>%s</style>\n</head>\n<body>\n<main>\n", style);
}

static void put_line(void *context, rodt_step_part part, const char *label, const char *text)
{
    static const char *const labels[RODT_STEP_PART_END] = {[RODT_STEP_PART_DO] = TO_SAY("I DO"),
                                                           [RODT_STEP_PART_SEE] = TO_SAY("I SEE"),
                                                           [RODT_STEP_PART_GOOD] = TO_SAY("GOOD, BECAUSE"),
                                                           [RODT_STEP_PART_DEFECTIVE] = TO_SAY("DEFECTIVE, IF")};
    FILE *to = context;
    if (label[0] != '\0') {
        markup_put(to, "<dd>%%", label, say(": "));
    } else {
        fprintf(to, "%s<div%s>\n", part == RODT_STEP_PART_DO ? "" : "</div>",
                part == RODT_STEP_PART_DEFECTIVE ? " class=\"bad\"" : "");
        markup_put(to, "<dt>%</dt><dd>", say(labels[part]));
    }
    markup_words(to, text);
    fputs("</dd>\n", to);
}

static void count_line(void *context, rodt_step_part part, const char *label, const char *text)
{
    (void)part;
    *(size_t *)context += columns_of_text(label) + columns_of_text(text) + 40;
}

/* Characters of a line of the title, and of the sentences that its second line has the place of. */
#define TITLE_LINE 20
#define TITLE_SHARE 60

/* The size of the type by the characters of a card; those of its source are half as wide and high. */
static const char *type_of(size_t sentences, size_t title, size_t source)
{
    size_t size = sentences + title / TITLE_LINE * TITLE_SHARE + source / 2;
    return size > 1200 ? " tiny" : size > 930 ? " least" : size > 760 ? " small" : size < 540 ? " large" : "";
}

static void put_card(const card_deck *deck, rodt_step step, size_t number, size_t count, FILE *to)
{
    char title[STEP_TEXT_SIZE], source[STEP_TEXT_SIZE], place[60];
    size_t size = 0;
    each_step_line(step, deck->rules, &deck->vehicle, count_line, &size);
    snprintf(place, sizeof place, say("%zu of %zu"), number, count);
    format_step_sources(step, deck->rules, &deck->vehicle, source);
    step_title(step, deck->rules, title);
    markup_put(to, "<article class=\"card%\">\n<h2>% <span>%</span></h2>\n<dl>\n",
               type_of(size, columns_of_text(title), columns_of_text(source)), title, place);
    each_step_line(step, deck->rules, &deck->vehicle, put_line, to);
    markup_put(to, "</div></dl>\n<p class=\"foot\">%%%</p>\n</article>\n", rodt_rules_id(deck->rules),
               source[0] != '\0' ? say(": ") : "", source);
}

/* Nine crosses: the corners of four cards. */
static void put_cuts(FILE *to)
{
    for (int i = 0; i < 9; i++)
        fprintf(to, "<div class=\"cut\" style=\"left:%d%%;top:%d%%\"></div>", i % 3 * 50, i / 3 * 50);
    fputc('\n', to);
}

void cards_write_html(const card_deck *deck, FILE *to)
{
    rodt_vehicle_class vehicle = (rodt_vehicle_class)deck->vehicle.vehicle;
    size_t count = rodt_step_count(deck->rules, vehicle);
    char text[CARDS_TEXT_SIZE];
    put_head(to);
    markup_put(to, "<h1>%, %</h1>\n", rodt_rules_id(deck->rules), cards_describe(deck, text));
    for (size_t i = 0; i < count; i++) {
        if (i % 4 == 0)
            fputs("<section class=\"sheet\">\n", to);
        put_card(deck, rodt_step_at(deck->rules, vehicle, i), i + 1, count, to);
        if (i % 4 == 3 || i + 1 == count) {
            put_cuts(to);
            fputs("</section>\n", to);
        }
    }
    fputs("</main>\n</body>\n</html>\n", to);
}
