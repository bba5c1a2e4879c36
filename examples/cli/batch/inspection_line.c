/* SPDX-License-Identifier: Apache-2.0 */
/* The outcome of an inspection, and its line. */
#include "batch/inspection_line.h"
#include "ui/compiler.h"

#include <stdio.h>
#include <string.h>

/* --- The outcome --------------------------------------------------------------------------------------- */

/* From the best to the worst. */
static int rank_of(rodt_outcome outcome)
{
    static const int rank[] = {[RODT_OUTCOME_BELOW_CRITERION] = 0, [RODT_OUTCOME_UNDETERMINED] = 1,
                               [RODT_OUTCOME_AMBIGUOUS] = 2, [RODT_OUTCOME_OUT_OF_SERVICE] = 3};
    return rank[outcome];
}

static void worsen(rodt_count *count, rodt_outcome outcome)
{
    if (rank_of(outcome) > rank_of((rodt_outcome)count->outcome))
        count->outcome = outcome;
}

bool inspection_judge(const inspection *one, const inspection *undated, rodt_count *count)
{
    rodt_count with_all;
    const brake_tally *of = &one->tally;
    const rodt_tally tally = {.brakes = of->brakes, .full = of->full, .half = of->half, .unknown = of->unknown,
                              .inoperative = of->inoperative};
    if (rodt_tally_judge(&tally, 0, count, NULL) != RODT_OK)
        return false;
    if (one->key.is_nameless)
        count->outcome = RODT_OUTCOME_UNDETERMINED;
    if (undated == one)
        worsen(count, RODT_OUTCOME_UNDETERMINED);
    if (undated == NULL || undated == one)
        return true;
    if (rodt_tally_judge(&tally, tally.brakes + undated->tally.brakes, &with_all, NULL) != RODT_OK)
        return false;
    worsen(count, (rodt_outcome)with_all.outcome);
    return true;
}

/* --- The line ------------------------------------------------------------------------------------------ */

/* Quotes only a cell that needs it (RFC 4180). */
static void put_cell(output *to, char separator, const char *text, size_t size)
{
    bool plain = true;
    for (size_t i = 0; i < size && plain; i++)
        plain = text[i] != separator && text[i] != '"' && text[i] != '\n' && text[i] != '\r';
    if (plain) {
        output_bytes(to, text, size);
        return;
    }
    output_text(to, "\"");
    for (size_t i = 0; i < size; i++)
        output_bytes(to, text[i] == '"' ? "\"\"" : text + i, text[i] == '"' ? 2 : 1);
    output_text(to, "\"");
}

static void put_text(output *to, char separator, const char *text)
{
    output_bytes(to, &separator, 1);
    output_text(to, text);
}

static void put_count(output *to, char separator, uint64_t count)
{
    char text[24];
    char *at = text + sizeof text;
    do {
        *--at = (char)('0' + count % 10);
        count /= 10;
    } while (count != 0);
    output_bytes(to, &separator, 1);
    output_bytes(to, at, (size_t)(text + sizeof text - at));
}

/* An exact number as a mixed fraction, like a length without its unit. */
static void put_ratio(output *to, char separator, rodt_ratio ratio, int64_t times)
{
    char text[RODT_LENGTH_TEXT_SIZE] = "";
    rodt_length value;
    if (rodt_length_scale((rodt_length){ratio.num, ratio.den}, (rodt_ratio){times, 1}, &value) != RODT_OK ||
        rodt_length_format(value, text, sizeof text, NULL) != RODT_OK)
        text[0] = '\0';
    put_text(to, separator, text);
}

static void put_remarks(output *to, char separator, unsigned remarks)
{
    static const char *const words[] = {"mixed-days", "position-twice", "undated-rows"}; /* by bit */
    const char *before = "";
    put_text(to, separator, "");
    for (unsigned i = 0; i < COUNT_OF(words); i++) {
        if ((remarks & 1u << i) == 0)
            continue;
        output_text(to, before);
        output_text(to, words[i]);
        before = " ";
    }
}

void inspection_write_header(output *to, const line_layout *layout)
{
    static const char *const headings[] = {"brakes",    "in_adjustment", "out_of_adjustment", "inoperative",
                                           "undetermined", "defective",  "percent",           "verdict",
                                           "whole_needed", "remarks"};
    for (size_t i = 0; i < layout->names; i++) {
        output_bytes(to, &layout->separator, i > 0);
        put_cell(to, layout->separator, layout->heading[i], strlen(layout->heading[i]));
    }
    if (layout->day_heading != NULL) {
        output_bytes(to, &layout->separator, 1);
        put_cell(to, layout->separator, layout->day_heading, strlen(layout->day_heading));
    }
    for (size_t i = 0; i < COUNT_OF(headings); i++)
        put_text(to, layout->separator, headings[i]);
    output_text(to, "\n");
}

static void put_day(output *to, char separator, day_texts *days, rodt_date day)
{
    struct day_text *known = &days->of[((unsigned)day.month * 32u + (unsigned)day.day) % DAYS_KEPT];
    if (!inspection_same_day(known->day, day)) {
        *known = (struct day_text){.day = day};
        if (rodt_date_format(day, known->text, sizeof known->text, NULL) == RODT_OK)
            known->size = RODT_DATE_TEXT_SIZE - 1;
    }
    if (!output_room(to, 1 + sizeof known->text))
        return;
    char *at = to->buffer + to->used;
    *at = separator;
    memcpy(at + 1, known->text, sizeof known->text);
    to->used += 1u + known->size;
}

void inspection_write_name(output *to, const line_layout *layout, day_texts *days, const inspection_key *key)
{
    const char *at = key->name;
    for (size_t i = 0; i < layout->names; at += key->cell_size[i++]) {
        output_bytes(to, &layout->separator, i > 0);
        put_cell(to, layout->separator, at, key->cell_size[i]);
    }
    if (layout->day_heading != NULL)
        put_day(to, layout->separator, days, key->day);
}

void inspection_write_rest(output *to, const line_layout *layout, const inspection *one, const rodt_count *count)
{
    static const rodt_verdict order[] = {RODT_VERDICT_IN_ADJUSTMENT, RODT_VERDICT_OUT_OF_ADJUSTMENT,
                                         RODT_VERDICT_INOPERATIVE, RODT_VERDICT_UNDETERMINED};
    put_count(to, layout->separator, count->brakes);
    for (size_t i = 0; i < COUNT_OF(order); i++)
        put_count(to, layout->separator, one->verdict[order[i]]);
    put_ratio(to, layout->separator, count->defective, 1);
    put_ratio(to, layout->separator, count->share, 100);
    put_text(to, layout->separator, rodt_outcome_name((rodt_outcome)count->outcome));
    put_count(to, layout->separator, count->whole_needed);
    put_remarks(to, layout->separator, one->remarks);
    output_text(to, "\n");
}
