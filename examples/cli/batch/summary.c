/* SPDX-License-Identifier: Apache-2.0 */
/* What `rodtravel batch` counts, and says at the end on standard error. */
#include "batch/batch.h"
#include "ui/message.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

batch_tally batch_tally_of(const rodt_finding *finding, bool undated, bool in_detail)
{
    batch_tally tally = {.reasons = finding->reasons,
                         .verdict = (uint8_t)finding->verdict,
                         .family = (uint8_t)finding->chamber.family,
                         .stroke_class = (uint8_t)finding->chamber.stroke_class,
                         .used = in_detail ? batch_used_step(finding) : 0,
                         .undated = undated};
    _Static_assert(sizeof tally.size == RODT_SIZE_TEXT_SIZE, "the size of a chamber fits");
    memcpy(tally.size, finding->chamber.size, sizeof tally.size);
    return tally;
}

static uint64_t key_of(const batch_tally *tally)
{
    uint64_t key = (uint64_t)tally->family << 40 | (uint64_t)tally->stroke_class << 32;
    for (int i = 0; i < RODT_SIZE_TEXT_SIZE && tally->size[i] != '\0'; i++)
        key |= (uint64_t)(unsigned char)tally->size[i] << 8 * i;
    return key;
}

/* A file with more kinds than fit is no fleet; the last place takes the rest. */
static size_t count_chamber(batch_counts *counts, const batch_tally *tally, uint64_t rows)
{
    uint64_t key = key_of(tally);
    size_t at = 0;
    while (at < counts->chambers && counts->chamber[at].key != key)
        at++;
    if (at == BATCH_CHAMBERS_MAX)
        at--;
    if (at == counts->chambers) {
        counts->chambers++;
        counts->chamber[at].key = key;
        counts->chamber[at].chamber = (rodt_chamber){.family = (rodt_family)tally->family,
                                                     .stroke_class = (rodt_stroke_class)tally->stroke_class};
        memcpy(counts->chamber[at].chamber.size, tally->size, RODT_SIZE_TEXT_SIZE);
    }
    counts->chamber[at].verdict[tally->verdict] += rows;
    return at;
}

void batch_count(batch_counts *counts, const batch_tally *tally, uint64_t rows, bool in_detail)
{
    counts->rows += rows;
    counts->verdict[tally->verdict] += rows;
    counts->undated += tally->undated ? rows : 0;
    if (!in_detail)
        return;
    for (int reason = 0; reason < RODT_REASON_END; reason++)
        counts->reason[reason] += (tally->reasons >> reason & 1u) * rows;
    batch_used_count(counts->used, tally, count_chamber(counts, tally, rows), rows);
}

void batch_count_passed(batch_counts *counts, const passthrough_counts *passed, uint64_t line)
{
    passthrough_counts *sum = &counts->passed;
    sum->headers += passed->headers;
    sum->empty_records += passed->empty_records;
    sum->empty_lines += passed->empty_lines;
    sum->met |= passed->met;
    sum->unread |= passed->unread;
    for (int flaw = 0; flaw < BATCH_FLAWS; flaw++) {
        if (sum->flaw[flaw] == 0 && passed->flaw[flaw] > 0)
            sum->flaw_line[flaw] = line + passed->flaw_line[flaw] - 1;
        sum->flaw[flaw] += passed->flaw[flaw];
    }
}

static void print_count(const char *name, uint64_t count)
{
    if (count > 0)
        fprintf(stderr, "  %-26s %12" PRIu64 "\n", name, count);
}

const char *batch_chamber_name(const batch_counts *counts, size_t at, char text[RODT_CHAMBER_TEXT_SIZE])
{
    if (at == BATCH_CHAMBERS_MAX - 1)
        return "(other)";
    if (rodt_chamber_format(&counts->chamber[at].chamber, text, RODT_CHAMBER_TEXT_SIZE) != RODT_OK)
        return "(not read)";
    return text;
}

static void print_chambers(const batch_counts *counts)
{
    char text[RODT_CHAMBER_TEXT_SIZE];
    fprintf(stderr, "chambers %31s %12s %12s %13s\n", "in adj.", "out of adj.", "inoperative",
            "undetermined");
    for (size_t i = 0; i < counts->chambers; i++) {
        const uint64_t *verdict = counts->chamber[i].verdict;
        fprintf(stderr, "  %-26s %11" PRIu64 " %12" PRIu64 " %12" PRIu64 " %13" PRIu64 "\n",
                batch_chamber_name(counts, i, text), verdict[RODT_IN_ADJUSTMENT], verdict[RODT_OUT_OF_ADJUSTMENT],
                verdict[RODT_INOPERATIVE], verdict[RODT_UNDETERMINED]);
    }
}

void batch_summary(const batch_counts *counts)
{
    static const rodt_verdict order[] = {RODT_IN_ADJUSTMENT, RODT_OUT_OF_ADJUSTMENT, RODT_INOPERATIVE,
                                         RODT_UNDETERMINED};
    fprintf(stderr, "verdicts\n");
    for (size_t i = 0; i < sizeof order / sizeof order[0]; i++)
        fprintf(stderr, "  %-26s %12" PRIu64 "\n", rodt_verdict_name(order[i]), counts->verdict[order[i]]);
    fprintf(stderr, "  %-26s %12" PRIu64 "\n", "wheel ends", counts->rows);
    fprintf(stderr, "reasons\n");
    for (int reason = 0; reason < RODT_REASON_END; reason++)
        print_count(rodt_reason_code((rodt_reason)reason), counts->reason[reason]);
    for (int flaw = 0; flaw < BATCH_FLAWS; flaw++)
        print_count(batch_flaw_code((row_error)flaw), counts->passed.flaw[flaw]);
    print_chambers(counts);
    batch_used_summary(counts);
}

/* Appends "2 empty records" to a list. */
static void add_part(char *list, size_t size, uint64_t count, const char *what)
{
    size_t used = strlen(list);
    if (count > 0)
        snprintf(list + used, size - used, "%s%" PRIu64 " %s%s", used > 0 ? ", " : "", count, what,
                 count == 1 ? "" : "s");
}

static void note_flaws(const batch_counts *counts)
{
    static const char *const what[BATCH_FLAWS] = {[BATCH_SHORT_RECORD] = "too few cells",
                                                  [BATCH_LONG_RECORD] = "too many cells, not judged",
                                                  [BATCH_BAD_QUOTES] = "broken quotes, not judged",
                                                  [BATCH_BAD_OBJECT] = "no JSON object, not judged",
                                                  [BATCH_TWICE] = "a member twice, not judged"};
    for (int flaw = 0; flaw < BATCH_FLAWS; flaw++) {
        uint64_t count = counts->passed.flaw[flaw];
        if (count > 0)
            print_error("%" PRIu64 " %s: %s (first on line %" PRIu64 ")", count, count == 1 ? "row" : "rows",
                     what[flaw], counts->passed.flaw_line[flaw]);
    }
}

/* Lines of JSON have no header that could be refused, so what no line had is said at the end. */
static void note_names(const batch_counts *counts, const batch_options *options)
{
    const passthrough_counts *passed = &counts->passed;
    for (int field = 0; field < BATCH_FIELDS && counts->rows > 0; field++) {
        const char *name = rodt_field_name((rodt_field)field);
        const char *given = options->columns.heading[field];
        bool met = (passed->met & FIELD_BIT(field)) != 0;
        if (!met && (given != NULL ? given[0] != '\0' : field < RODT_FIELD_NEEDED))
            print_error("no object has a member \"%.100s\"; if it has another name, say --column %s=NAME",
                     given != NULL ? given : name, name);
        else if (!met && (passed->unread & FIELD_BIT(field)) != 0)
            print_error("members that could be the %s are not read; if one is, say --column %s=NAME, otherwise "
                     "--column %s=",
                     name, name, name);
    }
}

void batch_notes(const batch_counts *counts, const batch_options *options, const rule_context *context)
{
    char list[160] = "";
    add_part(list, sizeof list, counts->passed.headers, "repeated header line");
    add_part(list, sizeof list, counts->passed.empty_records, "empty record");
    add_part(list, sizeof list, counts->passed.empty_lines, "empty line");
    if (list[0] != '\0')
        print_error("%s passed through", list);
    note_flaws(counts);
    if (options->columns.members)
        note_names(counts, options);
    rule_context_note_undated(context, counts->undated);
}
