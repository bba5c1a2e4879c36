/* SPDX-License-Identifier: Apache-2.0 */
/* The answer key: what is right, and why, from the library's own findings. */
#include "practice/practice.h"
#include "ui/format.h"
#include "ui/wrap.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#define INDENT 16

static void print_line(void *context, const char *label, const char *text)
{
    char mark[32];
    snprintf(mark, sizeof mark, "      %s", label);
    print_wrapped(context, mark, INDENT, text);
}

/* The law is the same for most wheel ends of a vehicle: said once at the end of the key. */
static void print_line_but_law(void *context, const char *label, const char *text)
{
    if (strcmp(label, "Law") != 0)
        print_line(context, label, text);
}

static const char *stroke_word(const practice *of, const rodt_finding *finding, char word[WORD_SIZE])
{
    bool given = rodt_length_given(finding->applied_stroke);
    return given ? practice_length_word(of, finding->applied_stroke, word) : "none";
}

static void print_answers(const practice *of, size_t end, FILE *to)
{
    const rodt_finding *finding = &of->judged.findings[end];
    char chamber[RODT_CHAMBER_TEXT_SIZE], released[WORD_SIZE], applied[WORD_SIZE], stroke[WORD_SIZE], limit[WORD_SIZE];
    char position[RODT_POSITION_TEXT_SIZE], text[300];
    practice_position(of, end, position);
    snprintf(text, sizeof text, "stroke %s, limit %s, %s, %s", stroke_word(of, finding, stroke),
             practice_length_word(of, finding->limit, limit), rodt_verdict_name(finding->verdict),
             rodt_reason_code(practice_deciding(finding)));
    print_wrapped(to, position, 6, text);
    snprintf(text, sizeof text, "%s; released %s, applied %s", format_chamber(&finding->chamber, chamber),
             practice_length_word(of, finding->released, released),
             practice_length_word(of, finding->applied, applied));
    print_line(to, "Read", text);
}

void practice_print_truth(const practice *of, size_t end, FILE *to)
{
    practice_each_reason(of, end, print_line, to);
    practice_each_lesson(of, end, print_line, to);
}

static void print_axle(void *context, const char *label, const char *text)
{
    (void)label;
    print_line(context, "Axle", text);
}

void practice_print_vehicle_truth(const practice *of, FILE *to)
{
    char words[PRACTICE_WORDS_SIZE];
    paint_kind paint;
    practice_count_words(of, words);
    print_wrapped(to, "Vehicle", 9, words);
    print_line(to, "In all", vehicle_headline(&of->judged, &paint));
    vehicle_each_axle(&of->judged, print_axle, to);
}

static void print_source(void *context, const char *label, const char *text)
{
    char line[800];
    snprintf(line, sizeof line, "%s: %s", label, text);
    print_line(context, "Source", line);
}

void practice_write_key(const practice *of, FILE *to)
{
    char words[PRACTICE_WORDS_SIZE];
    fprintf(to, "BRAKE STROKE PRACTICE, KEY                   seed %" PRIu64 "\n\n", of->setting.seed);
    practice_about_words(of, words);
    print_wrapped(to, "", 0, words);
    practice_made_words(words);
    fprintf(to, "%s\n", words);
    practice_repeat_words(of, words);
    print_wrapped(to, "Again with:", 12, words);
    fputc('\n', to);
    for (size_t i = 0; i < of->judged.count; i++) {
        print_answers(of, i, to);
        practice_each_reason(of, i, print_line_but_law, to);
        practice_each_lesson(of, i, print_line, to);
        fputc('\n', to);
    }
    practice_print_vehicle_truth(of, to);
    vehicle_each_source(&of->judged, print_source, to);
    print_wrapped(to, "", 0, PRACTICE_CAUTION);
}
