/* SPDX-License-Identifier: Apache-2.0 */
/* How much of their limits the strokes of a file use, for the summary of `rodtravel batch`: every stroke by its limit
 * falls into a step of half a percent, and the steps are counted by verdict, reason and chamber. */
#include "batch/batch.h"
#include "ui/compiler.h"

#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>

/* Steps of half a percent; the last one holds what is beyond, which is no brake and shown as "more". */
#define STEPS 1000

enum { ROW_ALL, ROW_VERDICT, ROW_REASON = ROW_VERDICT + BATCH_VERDICTS, ROW_CHAMBER = ROW_REASON + RODT_REASON_END,
       ROWS = ROW_CHAMBER + BATCH_CHAMBERS_MAX };

struct batch_used {
    uint64_t rows[ROWS][STEPS + 1];
};

batch_used *batch_used_open(void) { return calloc(1, sizeof(batch_used)); }

void batch_used_close(batch_used *used) { free(used); }

/* True if the stroke is at most so many half percents of the limit; exact. */
static bool is_within(rodt_length stroke, rodt_length limit, int step)
{
    rodt_length part;
    return rodt_length_scale(limit, (rodt_ratio){step, 200}, &part) == RODT_OK &&
           rodt_length_compare(stroke, part) <= 0;
}

uint16_t batch_used_step(const rodt_finding *finding)
{
    int above = -1; /* the stroke is above this step */
    int within = STEPS;
    if (!rodt_length_given(finding->applied_stroke) || !rodt_length_given(finding->limit))
        return 0;
    while (within - above > 1) {
        int middle = (above + within) / 2;
        if (is_within(finding->applied_stroke, finding->limit, middle))
            within = middle;
        else
            above = middle;
    }
    return (uint16_t)(within + 1);
}

void batch_used_count(batch_used *used, const batch_tally *tally, size_t chamber, uint64_t rows)
{
    if (tally->used == 0)
        return;
    unsigned step = tally->used - 1u;
    used->rows[ROW_ALL][step] += rows;
    used->rows[ROW_VERDICT + tally->verdict][step] += rows;
    used->rows[ROW_CHAMBER + chamber][step] += rows;
    for (int reason = 0; reason < RODT_REASON_END; reason++)
        used->rows[ROW_REASON + reason][step] += (tally->reasons >> reason & 1u) * rows;
}

/* The first step that at least so many of a hundred strokes do not exceed. */
static int percentile(const uint64_t steps[STEPS + 1], uint64_t all, unsigned percent)
{
    uint64_t needed = all / 100 * percent + (all % 100 * percent + 99) / 100;
    uint64_t met = 0;
    int step = 0;
    while (step < STEPS && (met += steps[step]) < needed)
        step++;
    return step;
}

static void print_row(const batch_used *used, size_t row, const char *name)
{
    static const unsigned percents[] = {50, 90, 99, 100};
    uint64_t all = 0;
    for (int step = 0; step <= STEPS; step++)
        all += used->rows[row][step];
    if (all == 0)
        return;
    fprintf(stderr, "  %-26s %12" PRIu64, name, all);
    for (size_t i = 0; i < COUNT_OF(percents); i++) {
        int step = percentile(used->rows[row], all, percents[i]);
        if (step < STEPS)
            fprintf(stderr, " %5d.%d", step / 2, step % 2 * 5);
        else
            fputs("    more", stderr);
    }
    fputc('\n', stderr);
}

void batch_used_summary(const batch_counts *counts)
{
    static const rodt_verdict order[] = {RODT_IN_ADJUSTMENT, RODT_OUT_OF_ADJUSTMENT, RODT_INOPERATIVE,
                                         RODT_UNDETERMINED};
    char text[RODT_CHAMBER_TEXT_SIZE];
    const batch_used *used = counts->used;
    fputs("stroke in percent of its limit, rounded up to a half:\n", stderr);
    fprintf(stderr, "%41s %7s %7s %7s %7s\n", "counted", "p50", "p90", "p99", "most");
    print_row(used, ROW_ALL, "all");
    for (size_t i = 0; i < COUNT_OF(order); i++)
        print_row(used, ROW_VERDICT + (size_t)order[i], rodt_verdict_name(order[i]));
    for (size_t reason = 0; reason < RODT_REASON_END; reason++)
        print_row(used, ROW_REASON + reason, rodt_reason_code((rodt_reason)reason));
    for (size_t i = 0; i < counts->chambers; i++)
        print_row(used, ROW_CHAMBER + i, batch_chamber_name(counts, i, text));
}
