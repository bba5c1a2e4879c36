/* SPDX-License-Identifier: Apache-2.0 */
/* `rodtravel batch --by COLUMN`: one line a vehicle in place of the rows. */
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

/* A failure of the output is reported when it is flushed. */
static bool go_on(batch_chunk *chunk, group_status status, uint64_t line)
{
    if (status == GROUP_OK)
        return true;
    if (status != GROUP_E_WRITE)
        batch_chunk_stop(chunk, line, "%s (--by %.100s)", say(group_sentence(status)), chunk->run->options->by);
    chunk->stopped = true;
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

bool batch_by_open(batch_chunk *chunk)
{
    batch_run *run = chunk->run;
    /* Many fleets call vehicles units; read as the unit of lengths, none of their rows could be judged. */
    if (run->by_column == run->header.columns.column[RODT_FIELD_UNIT]) {
        print_error("\"%.200s\" is read as the unit of the lengths; if it names vehicles, add --column unit=",
                 run->options->by);
        return false;
    }
    const uint64_t seed[2] = {system_random(), system_random()};
    run->by = vehicle_groups_open((line_sink){write_line, chunk}, run->options->separator, seed);
    return go_on(chunk, run->by == NULL ? GROUP_E_MEMORY : vehicle_groups_write_header(run->by, run->by_heading), 0);
}

_Static_assert(COLUMN_TEXT_SIZE == VEHICLE_KEY_SIZE, "the two paths take the same keys");

/* A key that is longer than any name is empty. */
static size_t read_key(const batch_run *run, const csv_record *record, char key[COLUMN_TEXT_SIZE])
{
    if (run->by_column >= record->count)
        return 0;
    size_t size = csv_text(record, run->by_column, key, COLUMN_TEXT_SIZE);
    return size == CSV_NO_FIT ? 0 : size;
}

/* What cannot be read is no position. */
static rodt_position read_position(batch_chunk *chunk, const csv_record *record)
{
    const char *text = batch_cell(chunk, record, RODT_FIELD_POSITION);
    rodt_position position;
    bool is_read = text != NULL && rodt_position_parse_n(text, strlen(text), &position, NULL) == RODT_OK;
    return is_read ? position : (rodt_position){0, 0};
}

bool batch_by_row(batch_chunk *chunk, const csv_record *record, const rodt_finding *finding)
{
    const batch_run *run = chunk->run;
    char key[COLUMN_TEXT_SIZE];
    size_t size = read_key(run, record, key);
    return go_on(chunk, vehicle_groups_add(run->by, key, size, finding, read_position(chunk, record)), record->line);
}

/* --- Cached rows ----------------------------------------------------------------------------------------- */

_Static_assert(sizeof(group_brake) <= RESULT_BYTES, "a result holds what counts of a brake");

size_t batch_by_result(const rodt_finding *finding, char bytes[RESULT_BYTES])
{
    group_brake brake = group_brake_of(finding, (rodt_position){0});
    memcpy(bytes, &brake, sizeof brake);
    return sizeof brake;
}

bool batch_by_count(batch_chunk *chunk, const char *key, size_t size, const uint32_t numbers[ATTRIBUTES],
                    const cached_row *cached, uint64_t line)
{
    group_brake brake;
    memcpy(&brake, cached->bytes, sizeof brake);
    memcpy(&brake.day, &numbers[ATTRIBUTE_DAY], sizeof brake.day);
    brake.position = batch_position_of(numbers[ATTRIBUTE_POSITION]);
    return go_on(chunk, vehicle_groups_count(chunk->run->by, key, size, &brake), line);
}

bool batch_by_cached(batch_chunk *chunk, const csv_record *record, const cached_row *cached)
{
    uint32_t numbers[ATTRIBUTES];
    char key[COLUMN_TEXT_SIZE];
    size_t size = read_key(chunk->run, record, key);
    batch_read_attributes(chunk, record, numbers);
    return batch_by_count(chunk, key, size, numbers, cached, record->line);
}

bool batch_by_finish(batch_chunk *chunk) { return go_on(chunk, vehicle_groups_finish(chunk->run->by), 0); }

void batch_by_note(const batch_run *run)
{
    const group_counts *counts = vehicle_groups_counts(run->by);
    char one[SHORTENED_SIZE], other[SHORTENED_SIZE];
    if (counts->respelled > 0)
        print_error(say_number("%llu vehicle is spelled in several ways and counted as one (\"%s\" and \"%s\")",
                               "%llu vehicles are spelled in several ways, each counted as one (the first \"%s\" and "
                               "\"%s\")", (unsigned long)counts->respelled),
                    (unsigned long long)counts->respelled, shorten(counts->spelling[0], one),
                    shorten(counts->spelling[1], other));
}

void batch_by_summary(const batch_run *run)
{
    const group_counts *counts = vehicle_groups_counts(run->by);
    print_wrapped(stderr, "", 0, say("vehicles"));
    for (int outcome = RODT_OUTCOME_UNDETERMINED; outcome < RODT_OUTCOME_END; outcome++)
        batch_summary_number(rodt_outcome_name((rodt_outcome)outcome), counts->outcome[outcome]);
    batch_summary_number(say("vehicles"), counts->vehicles);
}

void batch_by_close(batch_run *run) { vehicle_groups_close(run->by); }
