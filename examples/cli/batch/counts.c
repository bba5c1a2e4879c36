/* SPDX-License-Identifier: Apache-2.0 */
/* What `rodtravel batch` counts. */
#include "batch/counts.h"
#include "ui/language.h"
#include "input/columns.h"

#include <string.h>

const char *row_error_code(row_error error)
{
    static const char *const codes[ROW_ERRORS] = {"short-record", "long-record", "bad-quotes", "bad-object",
                                                   "member-twice"};
    return codes[error];
}

batch_tally batch_tally_of(const rodt_finding *finding, bool in_detail)
{
    batch_tally tally = {.reasons = finding->reasons,
                         .verdict = (uint8_t)finding->verdict,
                         .family = (uint8_t)finding->chamber.family,
                         .stroke_class = (uint8_t)finding->chamber.stroke_class,
                         .utilization = in_detail ? histogram_step(finding) : 0};
    _Static_assert(sizeof tally.size == RODT_SIZE_TEXT_SIZE, "the size of a chamber fits");
    memcpy(tally.size, finding->chamber.size, sizeof tally.size);
    return tally;
}

/* What could not be read is one kind, whatever else is marked on it. */
static uint64_t key_of(const batch_tally *tally)
{
    if (tally->family == RODT_FAMILY_UNKNOWN && tally->size[0] == '\0')
        return 0;
    uint64_t key = (uint64_t)tally->family << 40 | (uint64_t)tally->stroke_class << 32;
    for (int i = 0; i < RODT_SIZE_TEXT_SIZE && tally->size[i] != '\0'; i++)
        key |= (uint64_t)(unsigned char)tally->size[i] << 8 * i;
    return key;
}

/* The last entry takes all kinds that do not fit; no fleet has so many. */
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

void batch_counts_add(batch_counts *counts, const batch_tally *tally, uint64_t rows, bool in_detail)
{
    counts->rows += rows;
    counts->verdict[tally->verdict] += rows;
    counts->undated += tally->undated ? rows : 0;
    counts->other_order += tally->other_order ? rows : 0;
    if (!in_detail)
        return;
    for (size_t reason = 0; reason < RODT_REASON_END; reason++) {
        uint64_t count = (tally->reasons >> reason & 1u) * rows;
        counts->reason[reason] += count;
        histogram_add(counts->histogram, HISTOGRAM_REASON + reason, tally->utilization, count);
    }
    size_t chamber = count_chamber(counts, tally, rows);
    histogram_add(counts->histogram, HISTOGRAM_ALL, tally->utilization, rows);
    histogram_add(counts->histogram, HISTOGRAM_VERDICT + (size_t)tally->verdict, tally->utilization, rows);
    histogram_add(counts->histogram, HISTOGRAM_CHAMBER + chamber, tally->utilization, rows);
}

void batch_counts_add_passthrough(batch_counts *counts, const passthrough_counts *passed, uint64_t line)
{
    passthrough_counts *sum = &counts->passed;
    sum->headers += passed->headers;
    sum->empty_records += passed->empty_records;
    sum->empty_lines += passed->empty_lines;
    if (sum->other_order_line == 0 && passed->other_order_line > 0)
        sum->other_order_line = line + passed->other_order_line - 1;
    sum->fields_found |= passed->fields_found;
    for (int field = 0; field < RODT_READING_FIELDS; field++)
        if ((passed->fields_meant & ~sum->fields_meant & FIELD_BIT(field)) != 0)
            memcpy(sum->name_meant[field], passed->name_meant[field], sizeof sum->name_meant[field]);
    sum->fields_meant |= passed->fields_meant;
    for (int error = 0; error < ROW_ERRORS; error++) {
        if (sum->errors[error] == 0 && passed->errors[error] > 0)
            sum->error_lines[error] = line + passed->error_lines[error] - 1;
        sum->errors[error] += passed->errors[error];
    }
}

const char *batch_chamber_text(const batch_counts *counts, size_t at, char text[RODT_CHAMBER_TEXT_SIZE])
{
    if (at == BATCH_CHAMBERS_MAX - 1)
        return "(other)";
    if (rodt_chamber_format(&counts->chamber[at].chamber, text, RODT_CHAMBER_TEXT_SIZE, NULL) != RODT_OK)
        return NULL;
    return text;
}

const char *batch_chamber_name(const batch_counts *counts, size_t at, char text[RODT_CHAMBER_TEXT_SIZE])
{
    const char *name = batch_chamber_text(counts, at, text);
    return name != NULL ? name : say("(not read)");
}
