/* SPDX-License-Identifier: Apache-2.0 */
/* Stories of checks on paper: sheet and key, as text and as a part of a page. */
#include "practice/checks.h"
#include "ui/markup.h"
#include "ui/wrap.h"

#include <inttypes.h>
#include <stdio.h>

static const char *title_of(const check_story *story, const check_stories *of, char title[PRACTICE_TEXT_SIZE])
{
    if (rodt_step_format(story->step, RODT_STEP_PART_TITLE, of->setting.rules, NULL, title, PRACTICE_TEXT_SIZE,
                         NULL) != RODT_OK)
        title[0] = '\0';
    return title;
}

/* --- Text -------------------------------------------------------------------------------------------- */

static void print_answer(const check_stories *of, const check_story *story, FILE *to)
{
    char why[PRACTICE_TEXT_SIZE], line[PRACTICE_TEXT_SIZE];
    snprintf(line, sizeof line, "%s%s%s; %s", checks_result(story), checks_are_ranked(of) ? ", " : "",
             checks_are_ranked(of) ? checks_rank(story) : "", checks_action_text(checks_action(story)));
    checks_explain(of, story, why);
    print_wrapped(to, "   Answer", 10, line);
    print_wrapped(to, "   Why", 10, why);
}

void checks_text_sheet(const check_stories *of, bool key, FILE *to)
{
    char words[PRACTICE_TEXT_SIZE], line[PRACTICE_TEXT_SIZE * 2], title[PRACTICE_TEXT_SIZE];
    fprintf(to, "CHECKS IN THE CAB, PRACTICE%s   seed %" PRIu64 "\n", key ? ", KEY" : "", of->setting.seed);
    checks_describe(of, words);
    print_wrapped(to, "", 0, words);
    for (size_t i = 0; i < of->count; i++) {
        char number[24];
        snprintf(number, sizeof number, "%zu.", i + 1);
        snprintf(line, sizeof line, "%s: %s", title_of(&of->list[i], of, title), of->list[i].text);
        fputc('\n', to);
        print_wrapped(to, number, 3, line);
        if (key)
            print_answer(of, &of->list[i], to);
        else
            fprintf(
                to,
                "   [ ] good  [ ] defective%s\n   What do you do? ____________________________________________\n",
                checks_are_ranked(of) ? "     [ ] minor  [ ] major" : "");
    }
    fputc('\n', to);
    print_wrapped(to, "", 0, PRACTICE_CAUTION);
}

/* --- A gauge ----------------------------------------------------------------------------------------- */

/* From 135 degrees on, clockwise over 270, in thousandths: sine and cosine of each eighteenth of the way. */
static const int arc[19][2] = {{-707, 707},  {-866, 500},  {-966, 259},  {-1000, 0},   {-966, -259},
                               {-866, -500}, {-707, -707}, {-500, -866}, {-259, -966}, {0, -1000},
                               {259, -966},  {500, -866},  {707, -707},  {866, -500},  {966, -259},
                               {1000, 0},    {966, 259},   {866, 500},   {707, 707}};

#define GAUGE_END_PSI 180 /* 10 psi an eighteenth */
#define GAUGE_END_KPA 1260

/* The point so far from the middle for a reading, in the drawing. */
static void put_point(FILE *to, char command, int64_t num, int64_t den, int radius)
{
    int64_t at = num * 18 / den, rest = num * 18 % den;
    if (at >= 18)
        at = 17, rest = den;
    int64_t x = arc[at][0] + (arc[at + 1][0] - arc[at][0]) * rest / den;
    int64_t y = arc[at][1] + (arc[at + 1][1] - arc[at][1]) * rest / den;
    fprintf(to, "%c%d %d", command, 60 + (int)(x * radius / 1000), 60 + (int)(y * radius / 1000));
}

static void put_dial(FILE *to, bool kpa)
{
    int end = kpa ? GAUGE_END_KPA : GAUGE_END_PSI;
    fputs("<circle cx=\"60\" cy=\"60\" r=\"57\" fill=\"#fff\" stroke=\"#111\" stroke-width=\"2\"/><path d=\"", to);
    for (int i = 0; i <= 18; i++) {
        put_point(to, 'M', i, 18, 53);
        put_point(to, 'L', i, 18, i % 2 == 0 ? 44 : 48);
    }
    fputs("\" stroke=\"#111\" stroke-width=\"1.3\"/>", to);
    for (int i = 0; i <= 18; i += 3)
        fprintf(to, "<text x=\"%d\" y=\"%d\" font-size=\"9\" text-anchor=\"middle\">%d</text>",
                60 + arc[i][0] * 35 / 1000, 63 + arc[i][1] * 35 / 1000, end * i / 18);
    fprintf(to, "<text x=\"60\" y=\"92\" font-size=\"9\" text-anchor=\"middle\">%s</text>", kpa ? "kPa" : "psi");
}

/* psi are 1000 / 6.894757 thousandths of a kPa. */
static void put_gauge(FILE *to, rodt_pressure pressure, bool kpa)
{
    if (!rodt_pressure_given(pressure))
        return;
    int64_t psi = pressure.num * 1000 / pressure.den;
    int64_t num = kpa ? psi * 6894757 / 1000000 : psi;
    fputs("<svg class=\"gauge\" viewBox=\"0 0 120 120\" role=\"img\" aria-label=\"gauge\">", to);
    put_dial(to, kpa);
    fputs("<path d=\"M60 60", to);
    put_point(to, 'L', num, (int64_t)1000 * (kpa ? GAUGE_END_KPA : GAUGE_END_PSI), 47);
    fputs("\" stroke=\"#111\" stroke-width=\"3\" stroke-linecap=\"round\"/><circle cx=\"60\" cy=\"60\" "
          "r=\"4\"/></svg>\n",
          to);
}

/* --- A page ------------------------------------------------------------------------------------------ */

static void put_answer(const check_stories *of, const check_story *story, FILE *to)
{
    char why[PRACTICE_TEXT_SIZE];
    checks_explain(of, story, why);
    markup_put(to, "<p><strong>%%%</strong>: %</p>\n<p>", checks_result(story), checks_are_ranked(of) ? ", " : "",
               checks_are_ranked(of) ? checks_rank(story) : "", checks_action_text(checks_action(story)));
    markup_words(to, why);
    fputs("</p>\n", to);
}

static void put_story(const check_stories *of, const check_story *story, size_t number, bool key, FILE *to)
{
    char title[PRACTICE_TEXT_SIZE];
    fprintf(to, "<article class=\"end\">\n<h2>%zu. ", number);
    markup_put(to, "%</h2>\n<p>", title_of(story, of, title));
    markup_words(to, story->text);
    fputs("</p>\n", to);
    if (!key) {
        fputs("<div class=\"gauges\">\n", to);
        put_gauge(to, story->gauges[0], story->in_kpa);
        put_gauge(to, story->gauges[1], story->in_kpa);
        fputs("</div>\n", to);
        fprintf(to,
                "<p class=\"boxes\"><span>good</span><span>defective</span>%s</p>\n<div class=\"fill\">What do you "
                "do, and "
                "why?</div>\n",
                checks_are_ranked(of) ? "<span>minor</span><span>major</span>" : "");
    } else {
        put_answer(of, story, to);
    }
    fputs("</article>\n", to);
}

void checks_html_sheet(const check_stories *of, bool key, FILE *to)
{
    char words[PRACTICE_TEXT_SIZE];
    checks_describe(of, words);
    fprintf(to,
            "<section class=\"vehicle\">\n<h1><span>Checks in the cab, practice%s</span>"
            "<span>seed %" PRIu64 "</span></h1>\n",
            key ? ", key" : "", of->setting.seed);
    markup_put(to, "<p>%</p>\n", words);
    if (!key)
        fputs("<div class=\"who\"><div class=\"fill\">Name</div><div class=\"fill\">Date</div></div>\n", to);
    fputs("<div class=\"ends\">\n", to);
    for (size_t i = 0; i < of->count; i++)
        put_story(of, &of->list[i], i + 1, key, to);
    practice_format_version(words);
    fputs("</div>\n", to);
    markup_put(to, "<p class=\"small\">% Made by %.</p>\n</section>\n", PRACTICE_CAUTION, words);
}
