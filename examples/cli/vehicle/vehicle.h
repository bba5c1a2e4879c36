/* SPDX-License-Identifier: Apache-2.0 */
/* `rodtravel vehicle`: a small file of one vehicle in, its judgement out. */
#ifndef VEHICLE_H
#define VEHICLE_H

#include "input/columns.h"
#include "input/rule_context.h"
#include "ui/format.h"
#include "ui/json_writer.h"
#include "ui/wrap.h"

#include <rodtravel/rodtravel.h>

#define VEHICLE_ENDS_MAX ((size_t)2 * RODT_AXLES_MAX)

/* How the file is written and judged. */
typedef struct vehicle_options {
    const char *file;  /* "-" = standard input */
    uint32_t brakes;   /* 0 = both ends of every axle in the file */
    char separator;
    rodt_length_style style;
    rodt_date_order date_order;
    column_request columns;
    const rule_context *context;
} vehicle_options;

/* One vehicle or combination, wheel end by wheel end in the order of the file. */
typedef struct vehicle_record {
    size_t count;
    bool brakes_given; /* their number was given, not taken from the axles */
    rodt_wheel_end ends[VEHICLE_ENDS_MAX];
    rodt_finding findings[VEHICLE_ENDS_MAX];
    rodt_error errors[VEHICLE_ENDS_MAX]; /* the first text of the wheel end that could not be read */
    rodt_advice advice[VEHICLE_ENDS_MAX];
    rodt_vehicle_finding vehicle;
} vehicle_record;

/* Reads the file and judges it. Returns STATUS_CONTINUE or an exit status; what was wrong is said on stderr. */
int vehicle_read(const vehicle_options *options, vehicle_record *out);

/* Combines the wheel ends; brakes and statuses as rodt_vehicle_combine. */
rodt_status vehicle_combine(vehicle_record *record, uint32_t brakes);

/* All of it (text.c), and its parts for a report that has more to say between them. */
void vehicle_print(const vehicle_record *record);
void vehicle_print_findings(const vehicle_record *record);
void vehicle_print_sources(const vehicle_record *record);
void vehicle_print_cautions(const char *warning); /* NULL = only the usual ones */

void vehicle_write_json(const vehicle_record *record);
void vehicle_put_json(json_writer *json, const vehicle_record *record); /* the object alone */

/* Exit status that goes with a judgement (summary.c). */
int vehicle_status(const rodt_vehicle_finding *vehicle);

/* --- In words (summary.c) ---------------------------------------------------------------------- */

/* Gets one line of a list: whom or what it is about ("" = nothing to name), and a sentence. A source of the line
 * before is in round brackets. */
typedef void (*vehicle_line)(void *context, const char *label, const char *text);

const char *vehicle_headline(const vehicle_record *record, paint_kind *paint);
void vehicle_each_count(const vehicle_record *record, vehicle_line line, void *context);
void vehicle_each_axle(const vehicle_record *record, vehicle_line line, void *context);
void vehicle_each_advice(const vehicle_record *record, vehicle_line line, void *context);
void vehicle_each_reason(const vehicle_record *record, vehicle_line line, void *context);
void vehicle_each_source(const vehicle_record *record, vehicle_line line, void *context);
bool vehicle_has_reasons(const vehicle_record *record);
const char *vehicle_warning(const rodt_vehicle_finding *vehicle); /* NULL = none */
const char *vehicle_caution(void);

/* As the tape shows it: parts of an inch by halves, other parts as a decimal, or millimetres. */
const char *tape_word(const rodt_finding *finding, rodt_length length, char word[WORD_SIZE]);

#define MARGIN_SIZE (WORD_SIZE + 16)
const char *margin_words(const rodt_finding *finding, char words[MARGIN_SIZE]); /* "over by 1/8" */

#endif
