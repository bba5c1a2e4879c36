/* SPDX-License-Identifier: Apache-2.0 */
/* The report as text of 80 columns. */
#include "report/report.h"
#include "ui/compiler.h"
#include "ui/format.h"
#include "ui/language.h"
#include "ui/table.h"
#include "ui/wrap.h"

#include <stdio.h>

#define INDENT 15

static void print_head(const inspection *of)
{
    print_painted(stdout, PAINT_STRONG, say("BRAKE INSPECTION"));
    putchar('\n');
    for (int key = 0; key < HEAD_KEYS; key++) {
        const char *title = report_head_title((head_key)key), *text = report_head_text(of, (head_key)key);
        if (title != NULL && text != NULL)
            print_wrapped(stdout, title, INDENT, text);
    }
    char unit[UNIT_TEXT_SIZE];
    for (size_t i = 0; record_format_unit(&of->record, i, unit); i++)
        print_wrapped(stdout, i == 0 ? say("Units") : "", INDENT, unit);
    putchar('\n');
}

/* A heading is printed only over a list that is not empty. */
typedef struct list {
    const char *heading;
} list;

static void print_line(void *context, const char *label, const char *text)
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
    print_wrapped(stdout, "  ", 4, line);
}

static void print_remarks(const inspection *of)
{
    list remarks = {say("Remarks")};
    char note[REPORT_NOTE_SIZE], title[SAID_SIZE];
    inspection_each_note(of, print_line, &remarks);
    if (report_limits_note(of, note))
        print_line(&remarks, "", note);
    if (record_cautions_note(&of->record) != NULL)
        print_line(&remarks, "", record_cautions_note(&of->record));
    for (size_t i = 0; i < of->record.end_count; i++) {
        if (of->record.ends[i][END_REMARK].text != NULL)
            print_line(&remarks, of->record.ends[i][END_POSITION].text, of->record.ends[i][END_REMARK].text);
    }
    for (size_t i = 0; i < of->record.check_count; i++) {
        if (of->record.checks[i][CHECK_REMARK].text != NULL)
            print_line(&remarks, report_air_title(of->air[i].reading.check, title),
                       of->record.checks[i][CHECK_REMARK].text);
    }
}

static void print_checks(const inspection *of)
{
    list checks = {say("Air checks")};
    char sentence[SAID_SIZE];
    rodt_message message;
    for (size_t i = 0; i < of->record.check_count; i++) {
        if (say_message(rodt_air_finding_message(&of->air[i], &message), &message, sentence, sizeof sentence))
            print_line(&checks, of->air[i].major ? say("MAJOR DEFECT") : "", sentence);
    }
    if (of->record.check_count == 0)
        print_line(&checks, "", say("none was recorded"));
}

static const table_column reading_columns[] = {
    {"", "", 4},
    {TO_SAY("Released"), TO_SAY("released"), 11},
    {TO_SAY("Applied"), TO_SAY("applied"), 11},
    {TO_SAY("psi before"), TO_SAY("psi before"), 12},
    {TO_SAY("after"), TO_SAY("after"), 7},
    {TO_SAY("Adjuster"), "", 11},
    {TO_SAY("Arm"), TO_SAY("arm"), 6}};

static void print_reading(const inspection *of, size_t end)
{
    const rodt_finding *finding = &of->vehicle.findings[end];
    const rodt_wheel_end *wheel = &of->vehicle.ends[end];
    char position[RODT_POSITION_TEXT_SIZE] = "-", released[WORD_SIZE], applied[WORD_SIZE], before[WORD_SIZE];
    char after[WORD_SIZE], arm[WORD_SIZE];
    (void)rodt_position_format(wheel->position, position, sizeof position, NULL);
    const char *const cells[] = {position,
                                 tape_word(finding, finding->released, released),
                                 tape_word(finding, finding->applied, applied),
                                 format_pressure(finding->pressure, before),
                                 format_pressure(finding->pressure_after, after),
                                 report_adjuster(wheel->adjuster),
                                 format_length(wheel->arm_length, arm)};
    print_table_row(stdout, reading_columns, COUNT_OF(reading_columns), cells, TABLE_PLAIN);
}

static void print_readings(const inspection *of)
{
    printf("\n%s\n", say("Readings"));
    print_table_head(stdout, reading_columns, COUNT_OF(reading_columns));
    for (size_t i = 0; i < of->vehicle.count; i++)
        print_reading(of, i);
}

static void print_outcome(const inspection *of)
{
    const inspection_outcome outcome = inspection_outcome_of(of);
    if (outcome.air != NULL)
        print_headline(stdout, outcome.air_paint, outcome.air);
    if (outcome.small[0] != '\0')
        print_wrapped(stdout, "", 0, outcome.small);
    else
        print_headline(stdout, outcome.strokes_paint, outcome.strokes);
    if (inspection_warning(of) != NULL)
        print_wrapped(stdout, "", 0, inspection_warning(of));
    putchar('\n');
    vehicle_print_counts(&of->vehicle);
}

void report_print(const inspection *of)
{
    char undone[UNDONE_SIZE];
    print_head(of);
    print_outcome(of);
    if (inspection_format_undone(of, undone))
        print_wrapped(stdout, "", 0, undone);
    vehicle_print_findings(&of->vehicle);
    print_readings(of);
    print_checks(of);
    inspection_each_defect(of, print_line, &(list){say("Defects")});
    print_remarks(of);
    vehicle_print_sources(&of->vehicle);
    report_each_air_source(of, print_line, &(list){NULL});
    vehicle_print_caution();
    printf("\n%s%*s%s\n", say("Signed"), (int)line_width(stdout) * 3 / 5, "", say("Date"));
}
