/* SPDX-License-Identifier: Apache-2.0 */
/* What `rodtravel batch` says at the end on standard error. */
#include "batch/summary.h"
#include "ui/compiler.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/utf8.h"
#include "ui/wrap.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#define NAME_COLUMNS 28u

/* What stands before the figures of a line: bytes are no columns in every language. */
static void print_name(const char *indent, const char *name)
{
    unsigned used = columns_of_text(name) + (unsigned)strlen(indent);
    fprintf(stderr, "%s%s%*s", indent, name, used < NAME_COLUMNS ? (int)(NAME_COLUMNS - used) : 0, "");
}

static void print_heading(const char *heading, unsigned width)
{
    unsigned used = columns_of_text(heading);
    fprintf(stderr, " %*s%s", used < width ? (int)(width - used) : 0, "", heading);
}

/* A terminal that has no room for a table. */
static bool is_narrow(void) { return line_width(stderr) < LINE_WIDTH; }

void batch_summary_number(const char *name, uint64_t count)
{
    print_name("  ", name);
    fprintf(stderr, " %*" PRIu64 "\n", is_narrow() ? 8 : 12, count);
}

static void print_count(const char *name, uint64_t count)
{
    if (count > 0)
        batch_summary_number(name, count);
}

/* --- Tables; on a narrow terminal each row is a sentence that folds ------------------------------------ */

#define FIGURES_MAX 5u
#define FIGURE_SIZE 24u

typedef struct table {
    const char *headings[FIGURES_MAX];
    unsigned widths[FIGURES_MAX];
    size_t count;
} table;

static void print_head(const char *name, const table *of)
{
    if (is_narrow()) {
        if (name[0] != '\0')
            fprintf(stderr, "%s\n", name);
        return;
    }
    print_name("", name);
    for (size_t i = 0; i < of->count; i++)
        print_heading(of->headings[i], of->widths[i]);
    fputc('\n', stderr);
}

static void print_folded(const char *name, const table *of, char figures[FIGURES_MAX][FIGURE_SIZE])
{
    char list[400] = "", label[80] = "  ";
    for (size_t i = 0; i < of->count; i++) {
        size_t used = strlen(list);
        snprintf(list + used, sizeof list - used, "%s%s %s", i > 0 ? ", " : "", of->headings[i], figures[i]);
    }
    snprintf(label + 2, sizeof label - 2, say("%s: %s"), name, "");
    print_wrapped(stderr, label, 4, list);
}

static void print_row(const char *name, const table *of, char figures[FIGURES_MAX][FIGURE_SIZE])
{
    if (is_narrow()) {
        print_folded(name, of, figures);
        return;
    }
    print_name("  ", name);
    for (size_t i = 0; i < of->count; i++)
        print_heading(figures[i], of->widths[i]);
    fputc('\n', stderr);
}

static const rodt_verdict verdict_order[] = {RODT_VERDICT_IN_ADJUSTMENT, RODT_VERDICT_OUT_OF_ADJUSTMENT,
                                             RODT_VERDICT_INOPERATIVE, RODT_VERDICT_UNDETERMINED};

static void print_chambers(const batch_counts *counts)
{
    table of = {{say("in adj."), say("out of adj."), say("inoperative"), say("undetermined")}, {11, 12, 12, 13}, 4};
    char text[RODT_CHAMBER_TEXT_SIZE], figures[FIGURES_MAX][FIGURE_SIZE];
    for (size_t i = 1; i < of.count; i++) { /* the first gives its room to the others */
        unsigned used = columns_of_text(of.headings[i]), more = used > of.widths[i] ? used - of.widths[i] : 0;
        of.widths[i] += more;
        of.widths[0] -= more < of.widths[0] ? more : 0;
    }
    print_head(say("chambers"), &of);
    for (size_t i = 0; i < counts->chambers; i++) {
        for (size_t k = 0; k < of.count; k++)
            snprintf(figures[k], FIGURE_SIZE, "%" PRIu64, counts->chamber[i].verdict[verdict_order[k]]);
        print_row(batch_chamber_name(counts, i, text), &of, figures);
    }
}

static void print_utilization(const batch_counts *counts, size_t row, const char *name, const table *of)
{
    char figures[FIGURES_MAX][FIGURE_SIZE];
    uint64_t all = histogram_count(counts->histogram, row);
    if (all == 0)
        return;
    snprintf(figures[0], FIGURE_SIZE, "%" PRIu64, all);
    for (size_t i = 0; i < HISTOGRAM_POINTS; i++) {
        int step = histogram_percentile(counts->histogram, row, histogram_points[i].percent);
        if (step < HISTOGRAM_STEPS)
            snprintf(figures[i + 1], FIGURE_SIZE, "%d.%d", step / 2, step % 2 * 5);
        else
            snprintf(figures[i + 1], FIGURE_SIZE, "%s", say("more"));
    }
    print_row(name, of, figures);
}

static void print_histogram(const batch_counts *counts)
{
    table of = {.headings = {say("counted")}, .widths = {12, 7, 7, 7, 7}, .count = HISTOGRAM_POINTS + 1};
    char text[RODT_CHAMBER_TEXT_SIZE];
    for (size_t i = 0; i < HISTOGRAM_POINTS; i++)
        of.headings[i + 1] = say(histogram_points[i].name);
    print_wrapped(stderr, "", 0, say("stroke in percent of its limit, rounded up to a half:"));
    print_head("", &of);
    print_utilization(counts, HISTOGRAM_ALL, say("all"), &of);
    for (size_t i = 0; i < COUNT_OF(verdict_order); i++)
        print_utilization(counts, HISTOGRAM_VERDICT + (size_t)verdict_order[i], rodt_verdict_name(verdict_order[i]),
                          &of);
    for (size_t reason = 0; reason < RODT_REASON_END; reason++)
        print_utilization(counts, HISTOGRAM_REASON + reason, rodt_reason_name((rodt_reason)reason), &of);
    for (size_t i = 0; i < counts->chambers; i++)
        print_utilization(counts, HISTOGRAM_CHAMBER + i, batch_chamber_name(counts, i, text), &of);
}

/* --- The whole ---------------------------------------------------------------------------------------- */

/* Verdicts and reasons are the words of the output. */
void batch_summary(const batch_counts *counts)
{
    fprintf(stderr, "%s\n", say("verdicts"));
    for (size_t i = 0; i < COUNT_OF(verdict_order); i++)
        batch_summary_number(rodt_verdict_name(verdict_order[i]), counts->verdict[verdict_order[i]]);
    batch_summary_number(say("wheel ends"), counts->rows);
    fprintf(stderr, "%s\n", say("reasons"));
    for (int reason = 0; reason < RODT_REASON_END; reason++)
        print_count(rodt_reason_name((rodt_reason)reason), counts->reason[reason]);
    for (int error = 0; error < ROW_ERRORS; error++)
        print_count(row_error_code((row_error)error), counts->passed.errors[error]);
    print_chambers(counts);
    print_histogram(counts);
}

/* Appends to a list what there is at all. */
static void add_text(char *list, size_t size, uint64_t count, const char *text)
{
    size_t used = strlen(list);
    if (count > 0)
        snprintf(list + used, size - used, "%s%s", used > 0 ? ", " : "", text);
}

static void note_passed(const passthrough_counts *passed)
{
    char list[240] = "", said[80];
    unsigned long long headers = passed->headers, records = passed->empty_records, lines = passed->empty_lines;
    snprintf(said, sizeof said, say_number("%llu repeated header line", "%llu repeated header lines",
                                           (unsigned long)headers), headers);
    add_text(list, sizeof list, headers, said);
    snprintf(said, sizeof said, say_number("%llu empty record", "%llu empty records", (unsigned long)records), records);
    add_text(list, sizeof list, records, said);
    snprintf(said, sizeof said, say_number("%llu empty line", "%llu empty lines", (unsigned long)lines), lines);
    add_text(list, sizeof list, lines, said);
    if (list[0] != '\0')
        print_error("%s passed through", list);
}

static void note_row_errors(const batch_counts *counts)
{
    static const char *const what[ROW_ERRORS] = {[ROW_SHORT_RECORD] = TO_SAY("too few cells"),
                                                  [ROW_LONG_RECORD] = TO_SAY("too many cells, not judged"),
                                                  [ROW_BAD_QUOTES] = TO_SAY("broken quotes, not judged"),
                                                  [ROW_BAD_OBJECT] = TO_SAY("no JSON object, not judged"),
                                                  [ROW_MEMBER_TWICE] = TO_SAY("a member twice, not judged")};
    for (int error = 0; error < ROW_ERRORS; error++) {
        uint64_t count = counts->passed.errors[error];
        if (count > 0)
            print_error(say_number("%llu row: %s (first on line %llu)", "%llu rows: %s (first on line %llu)",
                                   (unsigned long)count), (unsigned long long)count, say(what[error]),
                        (unsigned long long)counts->passed.error_lines[error]);
    }
}

static void note_other_order(const batch_counts *counts)
{
    if (counts->other_order > 0)
        print_error(say_number("%llu row has a date that contradicts --date-order and is not read (first on line "
                               "%llu); is the order right for the other dates?",
                               "%llu rows have a date that contradicts --date-order and is not read (first on line "
                               "%llu); is the order right for the other dates?", (unsigned long)counts->other_order),
                    (unsigned long long)counts->other_order, (unsigned long long)counts->passed.other_order_line);
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
    note_passed(&counts->passed);
    note_row_errors(counts);
    note_other_order(counts);
    if (options->columns.members)
        note_names(counts, options);
    rule_context_note_undated(context, counts->undated);
}
