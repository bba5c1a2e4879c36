/* SPDX-License-Identifier: Apache-2.0 */
/* How much of their limits the strokes of a file use: strokes are counted by steps of half a percent, for all rows
 * and by verdict, reason and chamber. */
#ifndef BATCH_HISTOGRAM_H
#define BATCH_HISTOGRAM_H

#include <rodtravel/rodtravel.h>

#define BATCH_VERDICTS 4
#define BATCH_CHAMBERS_MAX 256

/* Steps of half a percent; the last one holds what is beyond, which is no brake and shown as "more". */
#define HISTOGRAM_STEPS 1000

/* The rows of the histogram. */
enum {
    HISTOGRAM_ALL,
    HISTOGRAM_VERDICT,
    HISTOGRAM_REASON = HISTOGRAM_VERDICT + BATCH_VERDICTS,
    HISTOGRAM_CHAMBER = HISTOGRAM_REASON + RODT_REASON_END,
    HISTOGRAM_ROWS = HISTOGRAM_CHAMBER + BATCH_CHAMBERS_MAX
};

typedef struct utilization_histogram {
    uint64_t rows[HISTOGRAM_ROWS][HISTOGRAM_STEPS + 1];
} utilization_histogram;

/* 1 more than the step of a finding's stroke; 0 = the stroke or its limit is missing. */
uint16_t histogram_step(const rodt_finding *finding);

/* Adds so many strokes to a row. */
void histogram_add(utilization_histogram *histogram, size_t row, uint16_t step, uint64_t count);

/* All strokes of a row. */
uint64_t histogram_count(const utilization_histogram *histogram, size_t row);

/* The percentiles that a summary has. */
#define HISTOGRAM_POINTS 4
typedef struct histogram_point {
    const char *name;
    unsigned percent;
} histogram_point;
extern const histogram_point histogram_points[HISTOGRAM_POINTS];

/* The first step that at least so many percent of the strokes of a row do not exceed. */
int histogram_percentile(const utilization_histogram *histogram, size_t row, unsigned percent);

#endif
