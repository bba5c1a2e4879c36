/* SPDX-License-Identifier: Apache-2.0 */
/* The judgement of a vehicle for a person in a yard: outcome, wheel ends, what does not match, what to do next. */
#include "vehicle/vehicle.h"
#include "ui/compiler.h"
#include "ui/format.h"
#include "ui/language.h"
#include "ui/table.h"
#include "ui/wrap.h"

#include <stdio.h>
#include <string.h>

#define INDENT 10

static void print_count(void *context, const char *label, const char *text)
{
    (void)context;
    print_wrapped(stdout, label, INDENT, text);
}

void vehicle_print_counts(const vehicle_record *record) { vehicle_each_count(record, print_count, NULL); }

static void print_outcome(const vehicle_record *record, const char *warning)
{
    paint_kind paint;
    const char *words = vehicle_headline(record, &paint);
    print_headline(stdout, paint, words);
    if (warning != NULL)
        print_wrapped(stdout, "", 0, warning);
    putchar('\n');
    vehicle_print_counts(record);
}

/* --- Wheel ends --------------------------------------------------------------------------------------- */

static const table_column end_columns[] = {
    {"", "", 4},
    {TO_SAY("Chamber"), "", 21},
    {TO_SAY("Stroke"), TO_SAY("stroke"), 10},
    {TO_SAY("Limit"), TO_SAY("limit"), 7},
    {TO_SAY("Margin"), "", 17},
    {TO_SAY("Verdict"), "", 19}};

static void print_end(const vehicle_record *record, size_t end)
{
    const rodt_finding *finding = &record->findings[end];
    char position[RODT_POSITION_TEXT_SIZE] = "-", chamber[RODT_CHAMBER_TEXT_SIZE], stroke[WORD_SIZE], limit[WORD_SIZE];
    char margin[MARGIN_SIZE];
    (void)rodt_position_format(record->ends[end].position, position, sizeof position, NULL);
    const char *const cells[] = {position, format_chamber(&finding->chamber, chamber),
                                 tape_word(finding, finding->applied_stroke, stroke),
                                 format_length(finding->limit, limit), margin_words(finding, margin),
                                 verdict_words(finding->verdict)};
    print_table_row(stdout, end_columns, COUNT_OF(end_columns), cells, (int)verdict_paint(finding));
}

static void print_ends(const vehicle_record *record)
{
    putchar('\n');
    print_table_head(stdout, end_columns, COUNT_OF(end_columns));
    for (size_t i = 0; i < record->vehicle.axle_count; i++) {
        const rodt_axle_finding *axle = &record->vehicle.axles[i];
        if (axle->left < record->count)
            print_end(record, axle->left);
        if (axle->right < record->count)
            print_end(record, axle->right);
    }
}

/* --- Lists -------------------------------------------------------------------------------------------- */

/* A heading is printed only over a list that is not empty, so with the first line. */
typedef struct list {
    const char *heading; /* NULL = printed already */
} list;

static void print_list_line(void *context, const char *label, const char *text)
{
    char line[1200];
    list *of = context;
    if (of->heading != NULL)
        printf("\n%s\n", of->heading);
    of->heading = NULL;
    if (label[0] == '\0')
        snprintf(line, sizeof line, "%s", text);
    else
        snprintf(line, sizeof line, say("%s: %s"), label, text);
    print_wrapped(stdout, text[0] == '(' ? "    " : "  ", 4, line);
}

void vehicle_print_findings(const vehicle_record *record)
{
    print_ends(record);
    vehicle_each_axle(record, print_list_line, &(list){say("Axles")});
    vehicle_each_advice(record, print_list_line, &(list){say("Next")});
    vehicle_each_reason(record, print_list_line, &(list){say("Notes")});
}

void vehicle_print_sources(const vehicle_record *record)
{
    vehicle_each_source(record, print_list_line, &(list){say("Sources")});
}

void vehicle_print_caution(void)
{
    putchar('\n');
    print_wrapped(stdout, "", 0, vehicle_caution());
}

void vehicle_print(const vehicle_record *record, bool sources)
{
    print_outcome(record, vehicle_warning(&record->vehicle));
    vehicle_print_findings(record);
    if (sources)
        vehicle_print_sources(record);
    vehicle_print_caution();
    if (!sources)
        print_wrapped(stdout, "", 0, say("Where limits and criterion come from: --why"));
}
