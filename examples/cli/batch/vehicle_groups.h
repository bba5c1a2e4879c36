/* SPDX-License-Identifier: Apache-2.0 */
/* Groups rows by vehicle: one line a vehicle, with the count of its brakes by the roadside criterion. */
#ifndef VEHICLE_GROUPS_H
#define VEHICLE_GROUPS_H

#include <rodtravel/rodtravel.h>

/* Rows are grouped by a key, the text of one column: without the blanks around it, whatever its capitals and the blanks
 * inside (batch/vehicle_key.h); the line has its first spelling. Up to VEHICLE_GROUPS_OPEN_MAX vehicles stay open:
 * their rows may be in any order, and the lines come in the order in which the vehicles came. With more vehicles than
 * that the lines of those that are open are written, and from then on the rows must be sorted by the key, because a
 * vehicle that comes back could not be told from a new one. Sorted means by bytes, or shorter keys first (numbers in
 * order), up or down; one vehicle must be spelled in one way then. Memory stays bounded either way. */
#define VEHICLE_GROUPS_OPEN_MAX 65536u

/* A longer key counts as empty. */
#define VEHICLE_KEY_SIZE 512

typedef enum group_status {
    GROUP_OK = 0,
    GROUP_E_MEMORY,
    GROUP_E_WRITE,  /* the sink returned false */
    GROUP_E_ORDER,  /* too many vehicles for rows that are not sorted by the key */
    GROUP_E_BRAKES  /* more rows of one vehicle than can be counted */
} group_status;

/* Where lines go. False stops the work. */
typedef struct line_sink {
    bool (*write)(void *context, const char *bytes, size_t size);
    void *context;
} line_sink;

/* Lines that were written, by outcome. */
typedef struct group_counts {
    uint64_t vehicles;
    uint64_t outcome[4]; /* by rodt_outcome */
    uint64_t respelled;  /* vehicles that have several spellings; the first two of the first of them: */
    char spelling[2][VEHICLE_KEY_SIZE];
} group_counts;

typedef struct vehicle_groups vehicle_groups;

/* Opens a table; separator splits the cells of its lines. The seed keeps keys from being chosen so that they collide;
 * nothing else depends on it. NULL: no memory. */
vehicle_groups *vehicle_groups_open(line_sink sink, char separator, const uint64_t seed[2]);

/* Writes the line of headings; column is that of the key. */
group_status vehicle_groups_write_header(vehicle_groups *table, const char *column);

/* What is counted of a row. */
typedef struct group_brake {
    rodt_verdict verdict;
    rodt_tally tally; /* of this brake alone */
    rodt_date day;
    rodt_position position; /* may be all zero */
} group_brake;

/* Of a finding, its day included. */
group_brake group_brake_of(const rodt_finding *finding, rodt_position position);

/* Counts a brake in; for the rest as vehicle_groups_add. */
group_status vehicle_groups_count(vehicle_groups *table, const char *key, size_t size, const group_brake *brake);

/* Counts one row in. An empty key is a vehicle of its own that nobody named: its verdict is undetermined whatever its
 * rows say. position may be all zero. */
group_status vehicle_groups_add(vehicle_groups *table, const char *key, size_t size, const rodt_finding *finding,
                                rodt_position position);

/* Writes the lines of all vehicles that are still open. */
group_status vehicle_groups_finish(vehicle_groups *table);

const group_counts *vehicle_groups_counts(const vehicle_groups *table);

/* A sentence for a status, or NULL for GROUP_OK. */
const char *group_sentence(group_status status);

void vehicle_groups_close(vehicle_groups *table);

#endif
