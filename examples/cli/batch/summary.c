/* SPDX-License-Identifier: Apache-2.0 */
/* What `rodtravel batch` says at the end on standard error. */
#include "batch/summary.h"
#include "ui/compiler.h"
#include "ui/message.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

static void print_count(const char *name, uint64_t count)
{
    if (count > 0)
        fprintf(stderr, "  %-26s %12" PRIu64 "\n", name, count);
}

static void print_chambers(const batch_counts *counts)
{
    char text[RODT_CHAMBER_TEXT_SIZE];
    fprintf(stderr, "chambers %31s %12s %12s %13s\n", "in adj.", "out of adj.", "inoperative",
            "undetermined");
    for (size_t i = 0; i < counts->chambers; i++) {
        const uint64_t *verdict = counts->chamber[i].verdict;
        fprintf(stderr, "  %-26s %11" PRIu64 " %12" PRIu64 " %12" PRIu64 " %13" PRIu64 "\n",
                batch_chamber_name(counts, i, text), verdict[RODT_VERDICT_IN_ADJUSTMENT],
                verdict[RODT_VERDICT_OUT_OF_ADJUSTMENT], verdict[RODT_VERDICT_INOPERATIVE],
                verdict[RODT_VERDICT_UNDETERMINED]);
    }
}

static void print_utilization(const batch_counts *counts, size_t row, const char *name)
{
    static const unsigned percents[] = {50, 90, 99, 100};
    uint64_t all = histogram_count(counts->histogram, row);
    if (all == 0)
        return;
    fprintf(stderr, "  %-26s %12" PRIu64, name, all);
    for (size_t i = 0; i < COUNT_OF(percents); i++) {
        int step = histogram_percentile(counts->histogram, row, percents[i]);
        if (step < HISTOGRAM_STEPS)
            fprintf(stderr, " %5d.%d", step / 2, step % 2 * 5);
        else
            fputs("    more", stderr);
    }
    fputc('\n', stderr);
}

static const rodt_verdict verdict_order[] = {RODT_VERDICT_IN_ADJUSTMENT, RODT_VERDICT_OUT_OF_ADJUSTMENT,
                                             RODT_VERDICT_INOPERATIVE, RODT_VERDICT_UNDETERMINED};

static void print_histogram(const batch_counts *counts)
{
    char text[RODT_CHAMBER_TEXT_SIZE];
    fputs("stroke in percent of its limit, rounded up to a half:\n", stderr);
    fprintf(stderr, "%41s %7s %7s %7s %7s\n", "counted", "p50", "p90", "p99", "most");
    print_utilization(counts, HISTOGRAM_ALL, "all");
    for (size_t i = 0; i < COUNT_OF(verdict_order); i++)
        print_utilization(counts, HISTOGRAM_VERDICT + (size_t)verdict_order[i], rodt_verdict_name(verdict_order[i]));
    for (size_t reason = 0; reason < RODT_REASON_END; reason++)
        print_utilization(counts, HISTOGRAM_REASON + reason, rodt_reason_name((rodt_reason)reason));
    for (size_t i = 0; i < counts->chambers; i++)
        print_utilization(counts, HISTOGRAM_CHAMBER + i, batch_chamber_name(counts, i, text));
}

void batch_summary(const batch_counts *counts)
{
    fprintf(stderr, "verdicts\n");
    for (size_t i = 0; i < COUNT_OF(verdict_order); i++)
        fprintf(stderr, "  %-26s %12" PRIu64 "\n", rodt_verdict_name(verdict_order[i]),
                counts->verdict[verdict_order[i]]);
    fprintf(stderr, "  %-26s %12" PRIu64 "\n", "wheel ends", counts->rows);
    fprintf(stderr, "reasons\n");
    for (int reason = 0; reason < RODT_REASON_END; reason++)
        print_count(rodt_reason_name((rodt_reason)reason), counts->reason[reason]);
    for (int error = 0; error < ROW_ERRORS; error++)
        print_count(row_error_code((row_error)error), counts->passed.errors[error]);
    print_chambers(counts);
    print_histogram(counts);
}

/* Appends "2 empty records" to a list. */
static void add_count(char *list, size_t size, uint64_t count, const char *what)
{
    size_t used = strlen(list);
    if (count > 0)
        snprintf(list + used, size - used, "%s%" PRIu64 " %s%s", used > 0 ? ", " : "", count, what,
                 count == 1 ? "" : "s");
}

static void note_row_errors(const batch_counts *counts)
{
    static const char *const what[ROW_ERRORS] = {[ROW_SHORT_RECORD] = "too few cells",
                                                  [ROW_LONG_RECORD] = "too many cells, not judged",
                                                  [ROW_BAD_QUOTES] = "broken quotes, not judged",
                                                  [ROW_BAD_OBJECT] = "no JSON object, not judged",
                                                  [ROW_MEMBER_TWICE] = "a member twice, not judged"};
    for (int error = 0; error < ROW_ERRORS; error++) {
        uint64_t count = counts->passed.errors[error];
        if (count > 0)
            print_error("%" PRIu64 " %s: %s (first on line %" PRIu64 ")", count, count == 1 ? "row" : "rows",
                     what[error], counts->passed.error_lines[error]);
    }
}

static void note_other_order(const batch_counts *counts)
{
    if (counts->other_order > 0)
        print_error("%" PRIu64 " %s a date that contradicts --date-order and is not read (first on line %" PRIu64
                    "); is the order right for the other dates?",
                    counts->other_order, counts->other_order == 1 ? "row has" : "rows have",
                    counts->passed.other_order_line);
}

/* Lines of JSON have no header that could be refused, so fields that no line had are named at the end. */
static void note_names(const batch_counts *counts, const batch_options *options)
{
    const passthrough_counts *passed = &counts->passed;
    for (int field = 0; field < BATCH_FIELDS && counts->rows > 0; field++) {
        const char *name = rodt_field_name((rodt_field)field);
        const char *given = options->columns.heading[field];
        bool found = (passed->fields_found & FIELD_BIT(field)) != 0;
        if (!found && (given != NULL ? given[0] != '\0' : field < RODT_FIELD_NEEDED))
            print_error("no object has a member \"%.100s\"; if it has another name, say --column %s=NAME",
                     given != NULL ? given : name, name);
        else if ((passed->fields_meant & FIELD_BIT(field)) != 0)
            print_error("the member \"%s\" is not read; if it is the %s of the test, say --column %s=\"%s\", otherwise "
                        "--column %s=",
                        passed->name_meant[field], name, name, passed->name_meant[field], name);
    }
}

void batch_notes(const batch_counts *counts, const batch_options *options, const rule_context *context)
{
    char list[160] = "";
    add_count(list, sizeof list, counts->passed.headers, "repeated header line");
    add_count(list, sizeof list, counts->passed.empty_records, "empty record");
    add_count(list, sizeof list, counts->passed.empty_lines, "empty line");
    if (list[0] != '\0')
        print_error("%s passed through", list);
    note_row_errors(counts);
    note_other_order(counts);
    if (options->columns.members)
        note_names(counts, options);
    rule_context_note_undated(context, counts->undated);
}
