/* SPDX-License-Identifier: Apache-2.0 */
/* `rodtravel vehicle`: a small file of one vehicle in, its judgement out. */
#ifndef VEHICLE_H
#define VEHICLE_H

#include "input/columns.h"
#include "input/rule_context.h"
#include "ui/format.h"
#include "ui/language.h"
#include "ui/json_writer.h"
#include "ui/wrap.h"

#include <rodtravel/rodtravel.h>

#define VEHICLE_ENDS_MAX ((size_t)2 * RODT_AXLES_MAX)

/* How the file is written and judged. */
typedef struct vehicle_options {
    const char *file;  /* "-" = standard input */
    uint32_t brakes;   /* 0 = both ends of every axle up to the last one in the file */
    const char *encoding; /* NULL = UTF-8, unchecked */
    char separator;
    bool separator_given;
    rodt_style style;
    rodt_date_order date_order;
    column_request columns;
    const rule_context *context;
} vehicle_options;

/* One vehicle or combination, wheel end by wheel end in the order of the file. */
typedef struct vehicle_record {
    size_t count;
    bool brakes_given; /* their number was given, not taken from the axles */
    bool axle_1_steers; /* it is known to */
    rodt_wheel_end ends[VEHICLE_ENDS_MAX];
    rodt_finding findings[VEHICLE_ENDS_MAX];
    rodt_error errors[VEHICLE_ENDS_MAX]; /* the first text of the wheel end that could not be read */
    rodt_advice advice[VEHICLE_ENDS_MAX];
    rodt_vehicle_finding vehicle;
} vehicle_record;

/* Reads the file and judges it. Returns STATUS_CONTINUE or an exit status; what was wrong is said on stderr. */
int vehicle_read(const vehicle_options *options, vehicle_record *out);

/* All of it (text.c), and its parts for a report that has more to say between them. */
void vehicle_print(const vehicle_record *record, bool sources);
void vehicle_print_counts(const vehicle_record *record);
void vehicle_print_findings(const vehicle_record *record);
void vehicle_print_sources(const vehicle_record *record);
void vehicle_print_caution(void);

int vehicle_write_json(const vehicle_record *record); /* statuses as json_end */
void vehicle_put_json(json_writer *json, const vehicle_record *record); /* the object alone */

/* Combines the wheel ends (summary.c); brakes and statuses as rodt_vehicle_combine. */
rodt_status vehicle_combine(vehicle_record *record, uint32_t brakes);

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
const char *vehicle_warning(const rodt_vehicle_finding *vehicle); /* NULL = none */
const char *vehicle_caution(void);

/* --- One finding for a person (finding.c) -------------------------------------------------------- */

const char *verdict_words(rodt_verdict verdict); /* "in adjustment" */
paint_kind verdict_paint(const rodt_finding *finding);

/* A bar of so many columns and a sign for the limit, at most 60; plain = ASCII. */
#define BAR_SIZE 256
void finding_bar(const rodt_finding *finding, unsigned width, bool plain, char text[BAR_SIZE]);

/* The sentence of one reason; false = the finding does not have it. */
bool finding_reason(const rodt_finding *finding, rodt_reason reason, char sentence[SAID_SIZE]);

/* A line for each reason, the deciding one first. Up to `most` of those that say something new, or all. Returns how
 * many were left out. */
#define FINDING_ALL_REASONS SIZE_MAX
size_t finding_each_reason(const rodt_finding *finding, size_t most, vehicle_line line, void *context);

/* Whether a reason says nothing that changes what to do: the verdict is the same without it. */
bool finding_is_routine(const rodt_finding *finding, rodt_reason reason);

/* A line for each other meaning that a reading can have. */
void finding_each_hint(const rodt_finding *finding, vehicle_line line, void *context);

/* More travel than the housing has by the published list, where no mark says it. */
bool finding_is_beyond_travel(const rodt_finding *finding);

/* As the tape shows it: parts of an inch by halves, other parts as a decimal, or millimetres. */
const char *tape_word(const rodt_finding *finding, rodt_length length, char word[WORD_SIZE]);

#define MARGIN_SIZE (WORD_SIZE + 16)
const char *margin_words(const rodt_finding *finding, char words[MARGIN_SIZE]); /* "over by 1/8" */

#endif
