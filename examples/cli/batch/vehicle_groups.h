/* SPDX-License-Identifier: Apache-2.0 */
/* Rows of many vehicles to one line a vehicle: the count of its brakes by the roadside criterion. */
#ifndef BY_H
#define BY_H

#include <rodtravel/rodtravel.h>

/*
 * Rows are grouped by a key, the text of one column. Up to BY_OPEN_MAX vehicles stay open: their rows may stand in any
 * order, and the lines come in the order in which the vehicles came. With more vehicles than that the lines of those
 * that are open are written, and from then on the rows must be sorted by the key, because a vehicle that comes back
 * could not be told from a new one. Sorted means by bytes, or shorter keys first (numbers in order), up or down.
 * Memory stays bounded either way.
 */
#define BY_OPEN_MAX 65536u

typedef enum by_status {
    BY_OK = 0,
    BY_E_MEMORY,
    BY_E_WRITE,  /* the sink refused */
    BY_E_ORDER,  /* too many vehicles for rows that are not sorted by the key */
    BY_E_BRAKES  /* more rows of one vehicle than can be counted */
} by_status;

/* Where lines go. False stops the work. */
typedef struct by_sink {
    bool (*write)(void *context, const char *bytes, size_t size);
    void *context;
} by_sink;

/* Lines that were written, by what they say. */
typedef struct by_counts {
    uint64_t vehicles;
    uint64_t outcome[4]; /* by rodt_outcome */
} by_counts;

typedef struct vehicle_groups vehicle_groups;

/* Makes a table; separator parts the cells of its lines. NULL: no memory. */
vehicle_groups *by_open(by_sink sink, char separator);

/* Writes the line of headings; column is that of the key. */
by_status by_write_header(vehicle_groups *table, const char *column);

/* What counts of a row. */
typedef struct by_brake {
    rodt_verdict verdict;
    rodt_tally tally; /* of this brake alone */
    rodt_date day;
    rodt_position position; /* may be all zero */
} by_brake;

/* Of a finding, its day included. */
by_brake by_brake_of(const rodt_finding *finding, rodt_position position);

/* Counts a brake in; for the rest as by_add. */
by_status by_count(vehicle_groups *table, const char *key, size_t size, const by_brake *brake);

/* Counts one row in. An empty key is a vehicle of its own that nobody named: its verdict is undetermined whatever its
 * rows say. position may be all zero. */
by_status by_add(vehicle_groups *table, const char *key, size_t size, const rodt_finding *finding,
                 rodt_position position);

/* Writes the lines of all vehicles that are still open. */
by_status by_finish(vehicle_groups *table);

const by_counts *by_counted(const vehicle_groups *table);

/* A sentence for a status, or NULL for BY_OK. */
const char *by_sentence(by_status status);

void by_close(vehicle_groups *table);

#endif
