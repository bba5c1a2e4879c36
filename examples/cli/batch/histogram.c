/* SPDX-License-Identifier: Apache-2.0 */
/* How much of their limits the strokes of a file use. */
#include "batch/histogram.h"
#include "ui/language.h"

const histogram_point histogram_points[HISTOGRAM_POINTS] = {
    {"p50", 50}, {"p90", 90}, {"p99", 99}, {TO_SAY("most"), 100}};

/* True if the stroke is at most so many half percents of the limit; exact. */
static bool is_within(rodt_length stroke, rodt_length limit, int step)
{
    rodt_length part;
    return rodt_length_scale(limit, (rodt_ratio){step, 200}, &part) == RODT_OK &&
           rodt_length_compare(stroke, part) <= 0;
}

uint16_t histogram_step(const rodt_finding *finding)
{
    int above = -1; /* the stroke is above this step */
    int within = HISTOGRAM_STEPS;
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

void histogram_add(utilization_histogram *histogram, size_t row, uint16_t step, uint64_t count)
{
    if (step > 0)
        histogram->rows[row][step - 1] += count;
}

uint64_t histogram_count(const utilization_histogram *histogram, size_t row)
{
    uint64_t all = 0;
    for (int step = 0; step <= HISTOGRAM_STEPS; step++)
        all += histogram->rows[row][step];
    return all;
}

int histogram_percentile(const utilization_histogram *histogram, size_t row, unsigned percent)
{
    uint64_t all = histogram_count(histogram, row);
    uint64_t needed = all / 100 * percent + (all % 100 * percent + 99) / 100;
    uint64_t counted = 0;
    int step = 0;
    while (step < HISTOGRAM_STEPS && (counted += histogram->rows[row][step]) < needed)
        step++;
    return step;
}
