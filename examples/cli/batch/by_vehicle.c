/* SPDX-License-Identifier: Apache-2.0 */
/* `rodtravel batch --by COLUMN`: one line a vehicle in place of the rows. */
#include "batch/by_vehicle.h"
#include "ui/message.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

/* Rows of vehicles are worked on by one thread, so every line is next in turn. */
static bool write_line(void *context, const char *bytes, size_t size)
{
    batch_part *part = context;
    output_bytes(&part->out, bytes, size);
    return part->out.used < OUTPUT_BLOCK || output_flush(&part->out);
}

/* A failure of the output is told when it is flushed. */
static bool go_on(batch_part *part, by_status status, uint64_t line)
{
    if (status == BY_OK)
        return true;
    if (status != BY_E_WRITE)
        batch_part_stop(part, line, "%s (--by %.100s)", by_sentence(status), part->run->options->by);
    part->stopped = true;
    return false;
}

bool batch_by_find(batch_run *run, const csv_record *record)
{
    if (!columns_find_heading(record, run->options->by, "--by", &run->by_column))
        return false;
    if (csv_text(record, run->by_column, run->by_heading, sizeof run->by_heading) == CSV_NO_FIT)
        run->by_heading[0] = '\0';
    return true;
}

bool batch_by_open(batch_part *part)
{
    batch_run *run = part->run;
    /* Vehicles are called units in many a fleet; read as the unit of lengths, no row of them could be judged. */
    if (run->by_column == run->header.columns.column[RODT_FIELD_UNIT]) {
        print_error("\"%.200s\" is read as the unit of the lengths; if it names vehicles, add --column unit=",
                 run->options->by);
        return false;
    }
    run->by = by_open((by_sink){write_line, part}, run->options->separator);
    return go_on(part, run->by == NULL ? BY_E_MEMORY : by_write_header(run->by, run->by_heading), 0);
}

/* A key that is longer than any name of a vehicle names none. */
static size_t read_key(const batch_run *run, const csv_record *record, char key[COLUMN_TEXT_SIZE])
{
    if (run->by_column >= record->count)
        return 0;
    size_t size = csv_text(record, run->by_column, key, COLUMN_TEXT_SIZE);
    return size == CSV_NO_FIT ? 0 : size;
}

/* What cannot be read is no position. */
static rodt_position read_position(batch_part *part, const csv_record *record)
{
    const char *text = batch_cell(part, record, RODT_FIELD_POSITION);
    rodt_position position = {0};
    if (text != NULL)
        (void)rodt_position_read(text, strlen(text), &position, NULL);
    return position;
}

bool batch_by_row(batch_part *part, const csv_record *record, const rodt_finding *finding)
{
    const batch_run *run = part->run;
    char key[COLUMN_TEXT_SIZE];
    size_t size = read_key(run, record, key);
    return go_on(part, by_add(run->by, key, size, finding, read_position(part, record)), record->line);
}

/* --- Cached rows ----------------------------------------------------------------------------------------- */

_Static_assert(sizeof(by_brake) <= RESULT_BYTES, "a result holds what counts of a brake");

size_t batch_by_result(const rodt_finding *finding, char bytes[RESULT_BYTES])
{
    by_brake brake = by_brake_of(finding, (rodt_position){0});
    memcpy(bytes, &brake, sizeof brake);
    return sizeof brake;
}

bool batch_by_count(batch_part *part, const char *key, size_t size, const uint32_t numbers[ATTRIBUTES],
                    const cached_row *cached, uint64_t line)
{
    by_brake brake;
    memcpy(&brake, cached->bytes, sizeof brake);
    memcpy(&brake.day, &numbers[ATTRIBUTE_DAY], sizeof brake.day);
    memcpy(&brake.position, &numbers[ATTRIBUTE_POSITION], sizeof brake.position);
    return go_on(part, by_count(part->run->by, key, size, &brake), line);
}

bool batch_by_cached(batch_part *part, const csv_record *record, const cached_row *cached)
{
    uint32_t numbers[ATTRIBUTES];
    char key[COLUMN_TEXT_SIZE];
    size_t size = read_key(part->run, record, key);
    batch_read_attributes(part, record, numbers);
    return batch_by_count(part, key, size, numbers, cached, record->line);
}

bool batch_by_finish(batch_part *part) { return go_on(part, by_finish(part->run->by), 0); }

void batch_by_summary(const batch_run *run)
{
    const by_counts *counts = by_counted(run->by);
    fputs("vehicles\n", stderr);
    for (int outcome = RODT_OUTCOME_UNDETERMINED; outcome <= RODT_OUTCOME_OUT_OF_SERVICE; outcome++)
        fprintf(stderr, "  %-30s %8" PRIu64 "\n", rodt_outcome_name((rodt_outcome)outcome), counts->outcome[outcome]);
    fprintf(stderr, "  %-30s %8" PRIu64 "\n", "vehicles", counts->vehicles);
}

void batch_by_close(batch_run *run) { by_close(run->by); }
