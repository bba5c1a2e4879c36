/* SPDX-License-Identifier: Apache-2.0 */
/* The judgement of a vehicle for a person in a yard: outcome, wheel ends, what does not match, what to do next. */
#include "vehicle/vehicle.h"
#include "ui/format.h"
#include "ui/wrap.h"

#include <stdio.h>
#include <string.h>

#define INDENT 10

static void print_count(void *context, const char *label, const char *text)
{
    (void)context;
    print_wrapped(stdout, label, INDENT, text);
}

static void print_outcome(const vehicle_record *record)
{
    paint_kind paint;
    const char *words = vehicle_headline(record, &paint);
    print_painted(stdout, paint, words);
    putchar('\n');
    vehicle_each_count(record, print_count, NULL);
}

/* --- Wheel ends --------------------------------------------------------------------------------------- */

static paint_kind paint_of(rodt_verdict verdict)
{
    switch (verdict) {
    case RODT_VERDICT_IN_ADJUSTMENT: return PAINT_GOOD;
    case RODT_VERDICT_UNDETERMINED: return PAINT_OPEN;
    case RODT_VERDICT_OUT_OF_ADJUSTMENT:
    case RODT_VERDICT_INOPERATIVE: break;
    }
    return PAINT_BAD;
}

static void print_end(const vehicle_record *record, size_t end)
{
    const rodt_finding *finding = &record->findings[end];
    char position[RODT_POSITION_TEXT_SIZE] = "-", chamber[RODT_CHAMBER_TEXT_SIZE], stroke[WORD_SIZE], limit[WORD_SIZE];
    char margin[MARGIN_SIZE];
    (void)rodt_position_format(record->ends[end].position, position, sizeof position, NULL);
    printf("%-4s%-21.20s %-10s%-7s%-18s", position, format_chamber(&finding->chamber, chamber),
           tape_word(finding, finding->applied_stroke, stroke), format_length(finding->limit, limit),
           margin_words(finding, margin));
    print_painted(stdout, paint_of(finding->verdict), rodt_verdict_name(finding->verdict));
    putchar('\n');
}

static void print_ends(const vehicle_record *record)
{
    printf("\n%-4s%-22s%-10s%-7s%-18s%s\n", "", "Chamber", "Stroke", "Limit", "Margin", "Verdict");
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
    snprintf(line, sizeof line, "%s%s%s", label, label[0] == '\0' ? "" : ": ", text);
    print_wrapped(stdout, text[0] == '(' ? "    " : "  ", 4, line);
}

void vehicle_print_findings(const vehicle_record *record)
{
    print_outcome(record);
    print_ends(record);
    vehicle_each_axle(record, print_list_line, &(list){"Axles"});
    vehicle_each_advice(record, print_list_line, &(list){"Next"});
    if (vehicle_has_reasons(record))
        vehicle_each_reason(record, print_list_line, &(list){"Notes"});
}

void vehicle_print_sources(const vehicle_record *record)
{
    vehicle_each_source(record, print_list_line, &(list){"Sources"});
}

void vehicle_print_cautions(const char *warning)
{
    putchar('\n');
    if (warning != NULL)
        print_wrapped(stdout, "", 0, warning);
    print_wrapped(stdout, "", 0, vehicle_caution());
}

void vehicle_print(const vehicle_record *record)
{
    vehicle_print_findings(record);
    vehicle_print_sources(record);
    vehicle_print_cautions(vehicle_warning(&record->vehicle));
}
