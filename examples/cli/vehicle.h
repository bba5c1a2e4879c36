/* SPDX-License-Identifier: Apache-2.0 */
/* The parts of `rodtravel vehicle`: a small file of one vehicle in, its judgement out. */
#ifndef VEHICLE_H
#define VEHICLE_H

#include "cli.h"

#define VEHICLE_ENDS_MAX ((size_t)2 * RODT_AXLES_MAX)

/* How the file is written and judged. */
typedef struct vehicle_options {
    const char *file;  /* "-" = standard input */
    uint32_t brakes;   /* 0 = both ends of every axle in the file */
    char separator;
    rodt_length_style style;
    const rule_setting *setting;
} vehicle_options;

/* One vehicle or combination, wheel end by wheel end in the order of the file. */
typedef struct vehicle_record {
    size_t count;
    bool brakes_said; /* their number was said, not taken from the axles */
    rodt_wheel_end ends[VEHICLE_ENDS_MAX];
    rodt_finding findings[VEHICLE_ENDS_MAX];
    rodt_error errors[VEHICLE_ENDS_MAX]; /* the first text of the wheel end that could not be read */
    rodt_advice advice[VEHICLE_ENDS_MAX];
    rodt_vehicle_finding vehicle;
} vehicle_record;

/* Reads the file and judges it. Returns STATUS_CONTINUE or an exit status; what was wrong is said on stderr. */
int vehicle_read(const vehicle_options *options, vehicle_record *out);

void vehicle_print(const vehicle_record *record);
void vehicle_write_json(const vehicle_record *record);

#endif
