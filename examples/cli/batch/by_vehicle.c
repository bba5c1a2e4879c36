/* SPDX-License-Identifier: Apache-2.0 */
/* `rodtravel batch --by COLUMN`: one line an inspection in place of the rows. */
#include "batch/by_vehicle.h"
#include "batch/summary.h"
#include "io/system_random.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/utf8.h"
#include "ui/wrap.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

/* With --by there is one worker, so lines need not wait. */
static bool write_line(void *context, const char *bytes, size_t size)
{
    batch_chunk *chunk = context;
    output_bytes(&chunk->out, bytes, size);
    return chunk->out.used < OUTPUT_BLOCK || output_flush(&chunk->out);
}

/* No line is told: no row is at fault where memory or disk ends, and rows are counted some at a time, so that the one
 * at hand need not be of the vehicle that has too many. A failure of the output is reported when it is flushed. */
static bool go_on(batch_chunk *chunk, group_status status)
{
    if (status == GROUP_OK)
        return true;
    const batch_run *run = chunk->run;
    if (status == GROUP_E_DISK)
        batch_chunk_stop(chunk, 0, "%s: %s (--by %.100s)", say(group_sentence(status)),
                         say_system_error(vehicle_groups_reason(run->by)), run->options->by[0]);
    else if (status != GROUP_E_WRITE)
        batch_chunk_stop(chunk, 0, "%s (--by %.100s)", say(group_sentence(status)), run->options->by[0]);
    chunk->stopped = true;
    return false;
}

static bool is_named_twice(const batch_run *run, size_t at)
{
    for (size_t i = 0; i < at; i++) {
        if (run->by_column[i] == run->by_column[at])
            return true;
    }
    return false;
}

/* Inspections are told apart by their day, unless the name holds the date as it is written. */
static bool find_day(const batch_run *run, size_t *column)
{
    *column = run->header.columns.column[RODT_FIELD_DATE];
    for (size_t i = 0; i < run->options->by_count; i++) {
        if (run->by_column[i] == *column)
            return false;
    }
    return !run->options->pool && *column != COLUMN_NONE;
}

bool batch_by_find(batch_run *run, const csv_record *record)
{
    line_layout *layout = &run->by_layout;
    size_t day;
    *layout = (line_layout){.names = run->options->by_count, .separator = run->separator};
    for (size_t i = 0; i < layout->names; i++) {
        if (!columns_find_heading(record, run->options->by[i], "--by", &run->by_column[i]))
            return false;
        if (is_named_twice(run, i)) {
            print_error("--by names the column \"%.200s\" twice", run->options->by[i]);
            return false;
        }
        columns_heading(record, run->by_column[i], run->by_heading[i]);
        layout->heading[i] = run->by_heading[i];
    }
    if (find_day(run, &day)) {
        columns_heading(record, day, run->by_heading[NAME_CELLS_MAX]);
        layout->day_heading = run->by_heading[NAME_CELLS_MAX];
    }
    return true;
}

/* Many fleets call vehicles units; read as the unit of lengths, none of their rows could be judged. */
static bool names_no_unit(const batch_run *run)
{
    for (size_t i = 0; i < run->options->by_count; i++) {
        if (run->by_column[i] != run->header.columns.column[RODT_FIELD_UNIT])
            continue;
        print_error("\"%.200s\" is read as the unit of the lengths; if it names vehicles, add --column unit=",
                    run->options->by[i]);
        return false;
    }
    return true;
}

bool batch_by_open(batch_chunk *chunk)
{
    batch_run *run = chunk->run;
    if (!names_no_unit(run))
        return false;
    const uint64_t seed[2] = {system_random(), system_random()};
    run->by = vehicle_groups_open((line_sink){write_line, chunk}, &run->by_layout, seed);
    return go_on(chunk, run->by == NULL ? GROUP_E_MEMORY : vehicle_groups_write_header(run->by));
}

_Static_assert(COLUMN_TEXT_SIZE == VEHICLE_KEY_SIZE, "the two paths take the same keys");

/* The cells that name the vehicle; one that is longer than any name is empty. */
typedef struct name_texts {
    char text[NAME_CELLS_MAX][COLUMN_TEXT_SIZE];
    name_cell cell[NAME_CELLS_MAX];
} name_texts;

static void read_name(const batch_run *run, const csv_record *record, name_texts *name)
{
    for (size_t i = 0; i < run->options->by_count; i++) {
        size_t size = run->by_column[i] >= record->count
                          ? CSV_NO_FIT : csv_text(record, run->by_column[i], name->text[i], COLUMN_TEXT_SIZE);
        name->cell[i] = (name_cell){name->text[i], size == CSV_NO_FIT ? 0 : size};
    }
}

/* The cells of a row that is not judged may have slipped: it is of no day. */
bool batch_by_row(batch_chunk *chunk, const csv_record *record, const rodt_finding *finding)
{
    name_texts name;
    read_name(chunk->run, record, &name);
    group_brake brake = group_brake_of(finding, batch_position_of(batch_attribute(chunk, record, ATTRIBUTE_POSITION)));
    if (finding->day.year != 0)
        brake.day = batch_date_of(batch_attribute(chunk, record, ATTRIBUTE_DAY));
    return go_on(chunk, vehicle_groups_count(chunk->run->by, name.cell, &brake));
}

/* --- Cached rows ----------------------------------------------------------------------------------------- */

/* All but the day and the position, which each row has itself: so a result is in one line of the processor's cache. */
#define RESULT_SIZE offsetof(group_brake, day)
_Static_assert(RESULT_SIZE <= RESULT_BYTES, "a result holds what counts of a brake");

size_t batch_by_result(const rodt_finding *finding, char bytes[RESULT_BYTES])
{
    group_brake brake = group_brake_of(finding, (rodt_position){0});
    memcpy(bytes, &brake, RESULT_SIZE);
    return RESULT_SIZE;
}

bool batch_by_count(batch_chunk *chunk, const name_cell *name, uint32_t day, uint32_t position,
                    const cached_row *cached)
{
    group_brake brake = {.day = batch_date_of(day), .position = batch_position_of(position)};
    memcpy(&brake, cached->bytes, RESULT_SIZE);
    return go_on(chunk, name != NULL ? vehicle_groups_count(chunk->run->by, name, &brake)
                                     : vehicle_groups_count_same(chunk->run->by, &brake));
}

bool batch_by_cached(batch_chunk *chunk, const csv_record *record, const cached_row *cached)
{
    uint32_t numbers[ATTRIBUTES];
    name_texts name;
    read_name(chunk->run, record, &name);
    batch_read_attributes(chunk, record, numbers);
    return batch_by_count(chunk, name.cell, numbers[ATTRIBUTE_DAY], numbers[ATTRIBUTE_POSITION], cached);
}

bool batch_by_finish(batch_chunk *chunk) { return go_on(chunk, vehicle_groups_finish(chunk->run->by)); }

void batch_by_note(const batch_run *run)
{
    const group_counts *counts = vehicle_groups_counts(run->by);
    char one[SHORTENED_SIZE], other[SHORTENED_SIZE];
    if (counts->respelled == 0)
        return;
    print_error(run->by_layout.day_heading == NULL
                    ? say_number("%llu vehicle is spelled in several ways and counted as one (\"%s\" and \"%s\")",
                                 "%llu vehicles are spelled in several ways, each counted as one (the first \"%s\" and "
                                 "\"%s\")", (unsigned long)counts->respelled)
                    : say_number("%llu inspection names its vehicle in several ways (\"%s\" and \"%s\")",
                                 "%llu inspections name their vehicle in several ways (the first \"%s\" and \"%s\")",
                                 (unsigned long)counts->respelled),
                (unsigned long long)counts->respelled, shorten(counts->spelling[0], one),
                shorten(counts->spelling[1], other));
}

void batch_by_summary(const batch_run *run)
{
    const group_counts *counts = vehicle_groups_counts(run->by);
    const char *what = run->by_layout.day_heading != NULL ? say("inspections") : say("vehicles");
    print_wrapped(stderr, "", 0, what);
    for (int outcome = RODT_OUTCOME_UNDETERMINED; outcome < RODT_OUTCOME_END; outcome++)
        batch_summary_number(rodt_outcome_name((rodt_outcome)outcome), counts->outcome[outcome]);
    batch_summary_number(what, counts->inspections);
}
