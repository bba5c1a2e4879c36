/* SPDX-License-Identifier: Apache-2.0 */
/* Groups rows by vehicle and day: one line an inspection, with the count of its brakes by the roadside criterion. */
#ifndef VEHICLE_GROUPS_H
#define VEHICLE_GROUPS_H

#include "batch/inspection_line.h"

/* Rows are grouped by a name, the texts of one or more columns: without the blanks around them, whatever their capitals
 * and the blanks inside (batch/vehicle_key.h), and by the day of the row if the layout has a heading for it. The rows
 * may be in any order; the lines come in the order of the first row of each, with the first spelling. What does not
 * fit in memory (INSPECTIONS_MAX) waits in temporary files. */

typedef enum group_status {
    GROUP_OK = 0,
    GROUP_E_MEMORY,
    GROUP_E_WRITE,    /* the sink returned false */
    GROUP_E_DISK,     /* a temporary file failed; vehicle_groups_reason says why */
    GROUP_E_TOO_MANY, /* inspections of one vehicle */
    GROUP_E_BRAKES    /* more rows of one inspection than can be counted */
} group_status;

/* Where whole lines go, several at a time. False stops the work. */
typedef struct line_sink {
    bool (*write)(void *context, const char *bytes, size_t size);
    void *context;
} line_sink;

/* Lines that were written, by outcome. */
typedef struct group_counts {
    uint64_t inspections;
    uint64_t outcome[4];     /* by rodt_outcome */
    uint64_t respelled;      /* inspections of a vehicle that has several spellings; two of the first of them: */
    uint64_t respelled_row;
    char spelling[2][VEHICLE_KEY_SIZE];
} group_counts;

typedef struct vehicle_groups vehicle_groups;

/* Opens the groups; the texts of the layout must outlive them. The seed keeps names from being chosen so that they
 * collide; nothing else depends on it. NULL: no memory. */
vehicle_groups *vehicle_groups_open(line_sink sink, const line_layout *layout, const uint64_t seed[2]);

/* Writes the line of headings. */
group_status vehicle_groups_write_header(vehicle_groups *groups);

/* What is counted of a row. */
typedef struct group_brake {
    rodt_verdict verdict;
    brake_tally tally; /* of this brake alone */
    rodt_date day;    /* all zero: it has none that can be read */
    rodt_position position; /* may be all zero */
} group_brake;

/* Of a finding, its day included. */
group_brake group_brake_of(const rodt_finding *finding, rodt_position position);

/* A cell that names a vehicle. */
typedef struct name_cell {
    const char *text;
    size_t size;
} name_cell;

/* A number below 2^31 for a name of so many cells, the same for all spellings of one vehicle and in every run, so that
 * rows can be sent to the machine that counts their vehicle. Vehicles that share one do no harm. */
uint32_t vehicle_groups_share(const name_cell *name, size_t cells);

/* Counts a brake in. A name with an empty cell is a vehicle that nobody named: its outcome is undetermined whatever its
 * rows say. A row whose day cannot be read could be of any inspection of its vehicle: it makes none of them better.
 * Some rows wait to be counted together, so the status can be that of a row before. */
group_status vehicle_groups_count(vehicle_groups *groups, const name_cell *name, const group_brake *brake);

/* The same for a row with the name and the day of the one that was counted before it. */
group_status vehicle_groups_count_same(vehicle_groups *groups, const group_brake *brake);

/* Writes the lines. */
group_status vehicle_groups_finish(vehicle_groups *groups);

const group_counts *vehicle_groups_counts(const vehicle_groups *groups);

/* The errno of GROUP_E_DISK. */
int vehicle_groups_reason(const vehicle_groups *groups);

/* A sentence for a status, or NULL for GROUP_OK; that of GROUP_E_DISK is without the reason. */
const char *group_sentence(group_status status);

void vehicle_groups_close(vehicle_groups *groups);

#endif
