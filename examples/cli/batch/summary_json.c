/* SPDX-License-Identifier: Apache-2.0 */
/* What `rodtravel batch` counted, as one JSON object on standard output. */
#include "batch/by_vehicle.h"
#include "batch/summary.h"
#include "ui/json_writer.h"

#include <stdio.h>

static void put_verdicts(json_writer *json, const uint64_t verdict[BATCH_VERDICTS])
{
    json_key(json, "verdicts");
    json_open(json, '{');
    for (int i = 0; i < BATCH_VERDICTS; i++)
        json_number(json, rodt_verdict_name((rodt_verdict)i), verdict[i]);
    json_close(json, '}');
}

/* Those that there are; row errors are reasons, too. */
static void put_reasons(json_writer *json, const batch_counts *counts)
{
    json_key(json, "reasons");
    json_open(json, '{');
    for (int reason = 0; reason < RODT_REASON_END; reason++) {
        if (counts->reason[reason] > 0)
            json_number(json, rodt_reason_name((rodt_reason)reason), counts->reason[reason]);
    }
    for (int error = 0; error < ROW_ERRORS; error++) {
        if (counts->passed.errors[error] > 0)
            json_number(json, row_error_code((row_error)error), counts->passed.errors[error]);
    }
    json_close(json, '}');
}

/* "50.5": a step in percent; null = beyond the last one. */
static void put_step(json_writer *json, int step)
{
    if (step < HISTOGRAM_STEPS)
        json_tenths(json, (uint64_t)step * 5);
    else
        json_text(json, NULL);
}

/* What the percentiles are counted from, so that the summaries of parts of a fleet can be added up. */
static void put_steps(json_writer *json, const uint64_t steps[HISTOGRAM_STEPS + 1])
{
    json_key(json, "steps");
    json_open(json, '[');
    for (int step = 0; step <= HISTOGRAM_STEPS; step++) {
        if (steps[step] == 0)
            continue;
        json_open(json, '[');
        put_step(json, step);
        json_count(json, steps[step]);
        json_close(json, ']');
    }
    json_close(json, ']');
}

/* Strokes in percent of their limits, rounded up to a half. */
static void put_used(json_writer *json, const char *key, const utilization_histogram *histogram, size_t row)
{
    uint64_t all = histogram_count(histogram, row);
    if (all == 0)
        return;
    json_key(json, key);
    json_open(json, '{');
    json_number(json, "counted", all);
    for (size_t i = 0; i < HISTOGRAM_POINTS; i++) {
        json_key(json, histogram_points[i].name);
        put_step(json, histogram_percentile(histogram, row, histogram_points[i].percent));
    }
    put_steps(json, histogram->rows[row]);
    json_close(json, '}');
}

static void put_used_by_word(json_writer *json, const utilization_histogram *histogram)
{
    json_key(json, "used_percent_by_verdict");
    json_open(json, '{');
    for (int i = 0; i < BATCH_VERDICTS; i++)
        put_used(json, rodt_verdict_name((rodt_verdict)i), histogram, HISTOGRAM_VERDICT + (size_t)i);
    json_close(json, '}');
    json_key(json, "used_percent_by_reason");
    json_open(json, '{');
    for (size_t i = 0; i < RODT_REASON_END; i++)
        put_used(json, rodt_reason_name((rodt_reason)i), histogram, HISTOGRAM_REASON + i);
    json_close(json, '}');
}

static void put_chambers(json_writer *json, const batch_counts *counts)
{
    char text[RODT_CHAMBER_TEXT_SIZE];
    json_key(json, "chambers");
    json_open(json, '[');
    for (size_t i = 0; i < counts->chambers; i++) {
        json_open(json, '{');
        json_pair(json, "chamber", batch_chamber_text(counts, i, text));
        put_verdicts(json, counts->chamber[i].verdict);
        put_used(json, "used_percent", counts->histogram, HISTOGRAM_CHAMBER + i);
        json_close(json, '}');
    }
    json_close(json, ']');
}

static void put_passed(json_writer *json, const passthrough_counts *passed)
{
    json_key(json, "passed_through");
    json_open(json, '{');
    json_number(json, "headers", passed->headers);
    json_number(json, "empty_records", passed->empty_records);
    json_number(json, "empty_lines", passed->empty_lines);
    json_close(json, '}');
}

static void put_inspections(json_writer *json, const batch_run *run)
{
    const group_counts *counts = vehicle_groups_counts(run->by);
    json_key(json, run->by_layout.day_heading != NULL ? "inspections" : "vehicles");
    json_open(json, '{');
    json_number(json, "count", counts->inspections);
    json_key(json, "verdicts");
    json_open(json, '{');
    for (int outcome = RODT_OUTCOME_UNDETERMINED; outcome < RODT_OUTCOME_END; outcome++)
        json_number(json, rodt_outcome_name((rodt_outcome)outcome), counts->outcome[outcome]);
    json_close(json, '}');
    json_close(json, '}');
}

int batch_summary_json(const batch_run *run)
{
    const batch_counts *counts = &run->counts;
    json_writer json = {.to = stdout, .first = true};
    json_open(&json, '{');
    json_pair(&json, "rules", rodt_rules_id(run->context.rules));
    json_number(&json, "wheel_ends", counts->rows);
    put_verdicts(&json, counts->verdict);
    put_reasons(&json, counts);
    json_number(&json, "undated", counts->undated);
    json_date(&json, "as_of", run->context.day);
    put_used(&json, "used_percent", counts->histogram, HISTOGRAM_ALL);
    put_used_by_word(&json, counts->histogram);
    put_chambers(&json, counts);
    put_passed(&json, &counts->passed);
    if (run->by != NULL)
        put_inspections(&json, run);
    json_close(&json, '}');
    return json_end(&json);
}
