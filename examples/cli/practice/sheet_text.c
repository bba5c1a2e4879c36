/* SPDX-License-Identifier: Apache-2.0 */
/* The sheet for paper: text of 80 columns, a form feed between pages of at most 60 lines, no wheel end torn apart. */
#include "practice/practice.h"
#include "ui/wrap.h"

#include <inttypes.h>
#include <stdio.h>

#define INDENT 6

/* --- Lists to choose from ----------------------------------------------------------------------------- */

void practice_print_lists(FILE *to)
{
    char line[400];
    size_t used = 0;
    for (size_t i = 0; practice_reason_at(i) != RODT_REASON_END && used < sizeof line; i++)
        used += (size_t)snprintf(line + used, sizeof line - used, "%s%zu %s", i == 0 ? "" : ", ", i + 1,
                                 rodt_reason_code(practice_reason_at(i)));
    fputs("Verdict   in-adjustment, out-of-adjustment, inoperative or undetermined\n", to);
    print_wrapped(to, "Reason", 10, line);
}

/* --- One wheel end ------------------------------------------------------------------------------------ */

static void print_tape(const practice *of, const char *name, rodt_length at, FILE *to)
{
    char words[TAPE_WORDS_SIZE];
    practice_tape tape;
    if (of->setting.described) {
        practice_tape_describe(at, of->setting.unit, words);
        fprintf(to, "      %s: %s\n", name, words);
        return;
    }
    practice_tape_draw(at, of->setting.unit, of->setting.ascii, &tape);
    fprintf(to, "%s\n", name);
    for (size_t i = 0; i < TAPE_ROWS; i++)
        fprintf(to, "    %s\n", tape.rows[i]);
}

void practice_print_end(const practice *of, size_t end, FILE *to)
{
    char position[RODT_POSITION_TEXT_SIZE], words[PRACTICE_WORDS_SIZE];
    const rodt_reading *reading = &of->judged.ends[end].reading;
    practice_position(of, end, position);
    practice_marks_words(of, end, words);
    print_wrapped(to, position, INDENT, words);
    practice_conditions_words(of, end, words);
    print_wrapped(to, "", INDENT, words);
    print_tape(of, "Released", reading->released, to);
    print_tape(of, "Applied", reading->applied, to);
}

/* --- The sheet ---------------------------------------------------------------------------------------- */

static void print_head(const practice *of, FILE *to)
{
    char words[PRACTICE_WORDS_SIZE], line[120];
    snprintf(line, sizeof line, "BRAKE STROKE PRACTICE                        seed %" PRIu64, of->setting.seed);
    fprintf(to, "%s\n\n", line);
    practice_about_words(of, words);
    print_wrapped(to, "", 0, words);
    print_wrapped(to, "", 0, PRACTICE_TAPE_NOTE);
    print_wrapped(to, "", 0, PRACTICE_CAUTION);
    practice_made_words(words);
    fprintf(to, "%s\n\n", words);
    practice_print_lists(to);
    fputs("\nName ______________________________   Date ________________\n\n", to);
}

static void print_end_to_fill(const practice *of, size_t end, FILE *to)
{
    practice_print_end(of, end, to);
    fputs("      Stroke _________ Limit _________ Verdict __________________ Reason _____\n\n", to);
}

static void print_vehicle_to_fill(const practice *of, FILE *to)
{
    fprintf(to, "Vehicle\n      Defective brakes, of %zu __________  Share __________ %%\n", of->judged.count);
    fputs("      By the roadside criterion   [ ] out-of-service   [ ] below-criterion\n"
          "                                  [ ] ambiguous        [ ] undetermined\n", to);
}

static void print_page_head(const practice *of, unsigned page, FILE *to)
{
    fprintf(to, "\fBrake stroke practice, seed %" PRIu64 ", page %u\n\n", of->setting.seed, page);
}

/* Two wheel ends fit under the head, four on every page behind it. */
void practice_write_sheet(const practice *of, FILE *to)
{
    unsigned page = 1;
    print_head(of, to);
    for (size_t i = 0; i < of->judged.count; i++) {
        if (i % 4 == 2)
            print_page_head(of, ++page, to);
        print_end_to_fill(of, i, to);
    }
    if (of->judged.count % 4 == 2)
        print_page_head(of, ++page, to);
    print_vehicle_to_fill(of, to);
}
