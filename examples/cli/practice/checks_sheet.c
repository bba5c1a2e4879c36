/* SPDX-License-Identifier: Apache-2.0 */
/* Stories of checks on paper: sheet and key, as text and as a part of a page. */
#include "practice/checks.h"
#include "ui/compiler.h"
#include "ui/language.h"
#include "ui/markup.h"
#include "ui/wrap.h"

#include <stdio.h>

/* "good, none" */
static const char *format_answer(const check_stories *of, const check_story *story, char words[PRACTICE_TEXT_SIZE])
{
    bool ranked = checks_are_ranked(of);
    snprintf(words, PRACTICE_TEXT_SIZE, "%s%s%s", say(checks_result(story)), ranked ? ", " : "",
             ranked ? say(checks_rank(story)) : "");
    return words;
}

/* --- Text -------------------------------------------------------------------------------------------- */

static void print_answer(const check_stories *of, const check_story *story, FILE *to)
{
    char why[PRACTICE_TEXT_SIZE], answer[PRACTICE_TEXT_SIZE], line[PRACTICE_TEXT_SIZE + 200];
    snprintf(line, sizeof line, "%s; %s", format_answer(of, story, answer), checks_action_text(checks_action(story)));
    checks_explain(of, story, why);
    print_wrapped(to, say("   Answer"), 10, line);
    print_wrapped(to, say("   Why"), 10, why);
}

void checks_text_sheet(const check_stories *of, bool key, FILE *to)
{
    char words[PRACTICE_TEXT_SIZE], line[PRACTICE_TEXT_SIZE * 2], title[PRACTICE_TEXT_SIZE];
    fprintf(to, "%s   %s\n", key ? say("CHECKS IN THE CAB, PRACTICE, KEY") : say("CHECKS IN THE CAB, PRACTICE"),
            practice_format_seed(of->setting.seed, words));
    checks_describe(of, words);
    print_wrapped(to, "", 0, words);
    for (size_t i = 0; i < of->count; i++) {
        char number[24];
        snprintf(number, sizeof number, "%zu.", i + 1);
        checks_entitle(of, &of->list[i], title);
        snprintf(line, sizeof line, say("%s: %s"), title, of->list[i].text);
        fputc('\n', to);
        print_wrapped(to, number, 3, line);
        if (key)
            print_answer(of, &of->list[i], to);
        else
            fprintf(to, "   %s%s\n   %s\n", say("[ ] good  [ ] defective"),
                    checks_are_ranked(of) ? say("     [ ] minor  [ ] major") : "",
                    say("What do you do? ____________________________________________"));
    }
    fputc('\n', to);
    print_wrapped(to, "", 0, say(PRACTICE_CAUTION));
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
    fprintf(to, "<text x=\"60\" y=\"92\" font-size=\"9\" text-anchor=\"middle\">%s</text>", kpa ? "kPa" : say("psi"));
}

/* psi are 1000 / 6.894757 thousandths of a kPa. */
static void put_gauge(FILE *to, rodt_pressure pressure, bool kpa)
{
    if (!rodt_pressure_given(pressure))
        return;
    int64_t psi = pressure.num * 1000 / pressure.den;
    int64_t num = kpa ? psi * 6894757 / 1000000 : psi;
    markup_put(to, "<svg class=\"gauge\" viewBox=\"0 0 120 120\" role=\"img\" aria-label=\"%\">", say("gauge"));
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
    char why[PRACTICE_TEXT_SIZE], answer[PRACTICE_TEXT_SIZE];
    checks_explain(of, story, why);
    markup_put(to, "<p><strong>%</strong>%%</p>\n<p>", format_answer(of, story, answer), say(": "),
               checks_action_text(checks_action(story)));
    markup_words(to, why);
    fputs("</p>\n", to);
}

static void put_story(const check_stories *of, const check_story *story, size_t number, bool key, FILE *to)
{
    static const char *const results[] = {TO_SAY("good"), TO_SAY("defective"), TO_SAY("minor"), TO_SAY("major")};
    char title[PRACTICE_TEXT_SIZE];
    checks_entitle(of, story, title);
    fprintf(to, "<article class=\"end\">\n<h2>%zu. ", number);
    markup_put(to, "%</h2>\n<p>", title);
    markup_words(to, story->text);
    fputs("</p>\n", to);
    if (!key) {
        fputs("<div class=\"gauges\">\n", to);
        put_gauge(to, story->gauges[0], story->in_kpa);
        put_gauge(to, story->gauges[1], story->in_kpa);
        fputs("</div>\n", to);
        fputs("<p class=\"boxes\">", to);
        practice_html_boxes(to, results, checks_are_ranked(of) ? COUNT_OF(results) : 2);
        markup_put(to, "</p>\n<div class=\"fill\">%</div>\n", say("What do you do, and why?"));
    } else {
        put_answer(of, story, to);
    }
    fputs("</article>\n", to);
}

void checks_html_sheet(const check_stories *of, bool key, FILE *to)
{
    char words[PRACTICE_TEXT_SIZE], seed[SEED_SIZE];
    checks_describe(of, words);
    markup_put(to, "<section class=\"vehicle\">\n<h1><span>%</span><span>%</span></h1>\n",
               key ? say("Checks in the cab, practice, key") : say("Checks in the cab, practice"),
               practice_format_seed(of->setting.seed, seed));
    markup_put(to, "<p>%</p>\n", words);
    if (!key)
        practice_html_who(to);
    fputs("<div class=\"ends\">\n", to);
    for (size_t i = 0; i < of->count; i++)
        put_story(of, &of->list[i], i + 1, key, to);
    fputs("</div>\n", to);
    practice_html_made(to);
    fputs("</section>\n", to);
}
