/* SPDX-License-Identifier: Apache-2.0 */
/* Sheet and key as text for paper: 80 columns, a form feed between pages of at most 66 lines, no wheel end split. The
 * key says what is right, and why, from the library's own findings. */
#include "practice/practice.h"
#include "ui/format.h"
#include "ui/language.h"
#include "ui/utf8.h"
#include "ui/wrap.h"

#include <stdio.h>
#include <string.h>

#define END_INDENT 6
#define KEY_INDENT 16

/* --- Lists to choose from ----------------------------------------------------------------------------- */

void practice_print_lists(FILE *to)
{
    char line[600];
    size_t used = 0;
    for (size_t i = 0; practice_reason_at(i) != RODT_REASON_END && used < sizeof line; i++)
        used += (size_t)snprintf(line + used, sizeof line - used, "%s%zu %s", i == 0 ? "" : ", ", i + 1,
                                 say(practice_reason_word(practice_reason_at(i))));
    print_wrapped(to, say("Verdict"), 10, say("in-adjustment, out-of-adjustment, inoperative or undetermined"));
    print_wrapped(to, say("Reason"), 10, line);
}

/* --- One wheel end ------------------------------------------------------------------------------------ */

static void print_tape(const practice *of, const char *name, rodt_length at, FILE *to)
{
    char words[TAPE_TEXT_SIZE];
    practice_tape tape;
    if (of->setting.described) {
        practice_tape_describe(at, of->setting.unit, words);
        char line[TAPE_TEXT_SIZE + 40];
        snprintf(line, sizeof line, say("%s: %s"), name, words);
        print_wrapped(to, "", END_INDENT, line);
        return;
    }
    practice_tape_draw(at, of->setting.unit, of->setting.ascii, line_width(to) < TAPE_COLUMNS, &tape);
    fprintf(to, "%s\n", name);
    for (size_t i = 0; i < TAPE_ROWS; i++)
        fprintf(to, "%s%s\n", line_width(to) < TAPE_COLUMNS ? "" : "    ", tape.rows[i]);
}

void practice_print_end(const practice *of, size_t end, FILE *to)
{
    char position[RODT_POSITION_TEXT_SIZE], words[PRACTICE_TEXT_SIZE];
    const rodt_reading *reading = &of->judged.ends[end].reading;
    practice_format_position(of, end, position);
    practice_describe_marks(of, end, words);
    print_wrapped(to, position, END_INDENT, words);
    practice_describe_conditions(of, end, words);
    print_wrapped(to, "", END_INDENT, words);
    print_tape(of, say("Released"), reading->released, to);
    print_tape(of, say("Applied"), reading->applied, to);
}

/* --- The sheet ---------------------------------------------------------------------------------------- */

#define SEED_COLUMN 45

static void print_title_line(const practice *of, const char *title, FILE *to)
{
    char seed[SEED_SIZE];
    unsigned used = columns_of_text(title);
    fprintf(to, "%s%*s%s\n\n", title, used < SEED_COLUMN ? (int)(SEED_COLUMN - used) : 2, "",
            practice_format_seed(of->setting.seed, seed));
}

static void print_head(const practice *of, FILE *to)
{
    char words[PRACTICE_TEXT_SIZE];
    print_title_line(of, say("BRAKE STROKE PRACTICE"), to);
    practice_describe_vehicle(of, words);
    print_wrapped(to, "", 0, words);
    print_wrapped(to, "", 0, say(PRACTICE_TAPE_NOTE));
    print_wrapped(to, "", 0, say(PRACTICE_CAUTION));
    practice_format_version(words);
    fprintf(to, "%s\n\n", words);
    practice_print_lists(to);
    fprintf(to, "\n%s\n\n", say("Name ______________________________   Date ________________"));
}

static void print_end_to_fill(const practice *of, size_t end, FILE *to)
{
    practice_print_end(of, end, to);
    fprintf(to, "    %s\n\n    %s\n    %s\n\n",
            say("Applied __________  less released __________  =  Stroke ______________"),
            say("[ ] standard  [ ] long            Limit ______________  Reason, number ___"),
            say("[ ] in adjustment  [ ] out of adjustment  [ ] inoperative  [ ] undetermined"));
}

static void print_limit(void *context, const char *label, const char *text)
{
    char line[60];
    snprintf(line, sizeof line, "  %s", label);
    print_wrapped(context, line, 26, text);
}

static void print_chart(const practice *of, FILE *to)
{
    fputc('\n', to);
    fprintf(to, say("Limits of %s by size, in inches unless a unit is given"), rodt_rules_id(of->setting.rules));
    fputc('\n', to);
    practice_each_limit(of, print_limit, to);
}

static void print_vehicle_to_fill(const practice *of, FILE *to)
{
    fprintf(to, "%s\n\n      ", say("Vehicle"));
    fprintf(to, say("Defective brakes, of %zu ______________  Share ______________ %%"), of->judged.count);
    fprintf(to, "\n\n      %s\n      %s\n",
            say("By the roadside criterion   [ ] out of service   [ ] below criterion"),
            say("                            [ ] ambiguous        [ ] undetermined"));
    print_chart(of, to);
}

static void print_page_head(const practice *of, unsigned page, FILE *to)
{
    char seed[SEED_SIZE];
    fputc('\f', to);
    fprintf(to, say("Brake stroke practice, %s, page %u"), practice_format_seed(of->setting.seed, seed), page);
    fputs("\n\n", to);
}

#define ENDS_OF_A_PAGE 3u

/* One wheel end fits under the head, three on every page after it, and the limits with the vehicle at the end. */
void practice_text_sheet(const practice *of, FILE *to)
{
    unsigned page = 1;
    print_head(of, to);
    for (size_t i = 0; i < of->judged.count; i++) {
        if (i % ENDS_OF_A_PAGE == 1)
            print_page_head(of, ++page, to);
        print_end_to_fill(of, i, to);
    }
    if (of->judged.count % ENDS_OF_A_PAGE == 1)
        print_page_head(of, ++page, to);
    print_vehicle_to_fill(of, to);
}

/* --- The key ------------------------------------------------------------------------------------------ */

void practice_print_line(void *to, const char *label, const char *text)
{
    char indented[60];
    snprintf(indented, sizeof indented, "      %s", say(label));
    print_wrapped(to, indented, KEY_INDENT, text);
}

/* The law is the same for most wheel ends of a vehicle: said once at the end of the key. */
static void print_line_but_law(void *context, const char *label, const char *text)
{
    if (strcmp(label, "Law") != 0)
        practice_print_line(context, label, text);
}

static const char *format_stroke(const practice *of, const rodt_finding *finding, char word[WORD_SIZE])
{
    bool given = rodt_length_given(finding->applied_stroke);
    return given ? practice_format_length(of, finding->applied_stroke, word) : say("none");
}

static void print_answers(const practice *of, size_t end, FILE *to)
{
    const rodt_finding *finding = &of->judged.findings[end];
    char chamber[RODT_CHAMBER_TEXT_SIZE], released[WORD_SIZE], applied[WORD_SIZE], stroke[WORD_SIZE], limit[WORD_SIZE];
    char position[RODT_POSITION_TEXT_SIZE], text[300];
    practice_format_position(of, end, position);
    snprintf(text, sizeof text, say("stroke %s, limit %s, %s, %s"), format_stroke(of, finding, stroke),
             practice_format_length(of, finding->limit, limit), say(rodt_verdict_name(finding->verdict)),
             say(practice_reason_word(practice_deciding_reason(finding))));
    print_wrapped(to, position, END_INDENT, text);
    snprintf(text, sizeof text, say("%s; released %s, applied %s"), format_chamber(&finding->chamber, chamber),
             practice_format_length(of, finding->released, released),
             practice_format_length(of, finding->applied, applied));
    practice_print_line(to, TO_SAY("Read"), text);
}

static void print_axle(void *context, const char *label, const char *text)
{
    (void)label;
    practice_print_line(context, TO_SAY("Axle"), text);
}

void practice_print_vehicle(const practice *of, FILE *to)
{
    char words[PRACTICE_TEXT_SIZE];
    paint_kind paint;
    practice_format_count(of, words);
    print_wrapped(to, say("Vehicle"), 9, words);
    practice_print_line(to, TO_SAY("In all"), vehicle_headline(&of->judged, &paint));
    vehicle_each_axle(&of->judged, print_axle, to);
}

static void print_source(void *context, const char *label, const char *text)
{
    char line[800];
    snprintf(line, sizeof line, say("%s: %s"), label, text);
    practice_print_line(context, TO_SAY("Source"), line);
}

void practice_text_key(const practice *of, FILE *to)
{
    char words[PRACTICE_TEXT_SIZE];
    print_title_line(of, say("BRAKE STROKE PRACTICE, KEY"), to);
    practice_describe_vehicle(of, words);
    print_wrapped(to, "", 0, words);
    practice_format_version(words);
    fprintf(to, "%s\n", words);
    practice_format_command(of, words);
    print_wrapped(to, say("Again with:"), 12, words);
    fputc('\n', to);
    for (size_t i = 0; i < of->judged.count; i++) {
        print_answers(of, i, to);
        practice_each_reason(of, i, print_line_but_law, to);
        practice_each_lesson(of, i, practice_print_line, to);
        fputc('\n', to);
    }
    practice_print_vehicle(of, to);
    vehicle_each_source(&of->judged, print_source, to);
    print_wrapped(to, "", 0, say(PRACTICE_CAUTION));
}
