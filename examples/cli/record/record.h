/* SPDX-License-Identifier: Apache-2.0 */
/* One inspection as a record (JSON, inspection.schema.json): what was written down, and its judgement. */
#ifndef RECORD_H
#define RECORD_H

#include "air/air.h"
#include "input/rule_context.h"
#include "ui/language.h"
#include "vehicle/vehicle.h"

#include <rodtravel/rodtravel.h>

#include <stdio.h>

#define RECORD_KIND "brake-stroke-inspection"
#define RECORD_VERSION 3 /* of the format; a record of a later one is refused */
#define RECORD_CHECKS_MAX ((size_t)60)
#define RECORD_STEPS_MAX ((size_t)600)
#define RECORD_WHERE_SIZE 96
#define RECORD_SIZE_MAX ((size_t)1 << 20) /* bytes of the file */

/* The entries of a record, in the order in which they are written. */
typedef enum head_key {
    HEAD_UNIT, HEAD_DATE, HEAD_TIME, HEAD_CARRIER, HEAD_INSPECTOR, HEAD_PLACE, HEAD_ODOMETER, HEAD_RULES,
    HEAD_AIR_RULES, HEAD_LENGTH_UNIT,
    HEAD_VEHICLE, HEAD_TOWED, HEAD_BUILT, HEAD_BRAKES, HEAD_PROGRAM, HEAD_REPAIR, HEAD_REMARKS,
    HEAD_KEYS
} head_key;

typedef enum end_key {
    END_POSITION, END_CHAMBER, END_CLASS, END_RATED, END_MARKED, END_RELEASED, END_APPLIED, END_DIVISION, END_PSI,
    END_PSI_AFTER, END_ENGINE, END_SPRING, END_DRUM, END_ADJUSTER, END_ARM, END_REMARK, END_KEYS
} end_key;

typedef enum check_key {
    CHECK_NAME, CHECK_PRESSURE, CHECK_BEFORE, CHECK_AFTER, CHECK_SECONDS, CHECK_SPAN, CHECK_APPLICATIONS,
    CHECK_CUT_OUT, CHECK_ACTUAL, CHECK_REQUIRED, CHECK_ANSWER, CHECK_REMARK, CHECK_KEYS
} check_key;

/* One unit of the vehicle, from the front: what it is, its plate or number, and its axles. */
typedef enum unit_key { UNIT_KIND, UNIT_PLATE, UNIT_AXLES, UNIT_KEYS } unit_key;
#define RECORD_UNITS_MAX ((size_t)12)
#define UNIT_TRACTOR TO_SAY("tractor")
#define UNIT_TRAILER TO_SAY("trailer")
#define UNIT_DOLLY TO_SAY("dolly")

/* A step of a walk-round whose answer has no other place: what was confirmed, what was left out on purpose. */
typedef enum step_key { STEP_NAME, STEP_ANSWER, STEP_KEYS } step_key;
#define STEP_SKIPPED TO_SAY("skipped")

/* The value of a key: a text as its writer wrote it, or a whole number. NULL and 0 = not written. */
typedef struct record_value {
    const char *text;
    int number;
} record_value;

/* How a key is written. */
typedef struct record_key {
    const char *name; /* NULL = that of the field */
    rodt_field field; /* of a wheel end */
    int most; /* 0 = a text; otherwise a whole number from 1 to this */
    bool needed;
} record_key;

extern const record_key record_head_keys[HEAD_KEYS];
extern const record_key record_end_keys[END_KEYS];
extern const record_key record_check_keys[CHECK_KEYS];
extern const record_key record_step_keys[STEP_KEYS];
extern const record_key record_unit_keys[UNIT_KEYS];
const char *record_key_name(const record_key *key);

typedef struct inspection_record {
    const char *file; /* as messages call it */
    record_value head[HEAD_KEYS];
    size_t unit_count;
    record_value units[RECORD_UNITS_MAX][UNIT_KEYS];
    size_t end_count;
    record_value ends[VEHICLE_ENDS_MAX][END_KEYS];
    size_t check_count;
    record_value checks[RECORD_CHECKS_MAX][CHECK_KEYS];
    size_t step_count;
    record_value steps[RECORD_STEPS_MAX][STEP_KEYS];
    char *texts; /* of a record that was read, one after the other */
} inspection_record;

/* Unit of lengths that name none, inches if the record says nothing; false = no unit that is known. */
bool record_length_unit(const inspection_record *record, RODT_ENUM32(rodt_unit) *out);

int record_find_step(const inspection_record *record, const char *name); /* -1 = there is none */
const char *record_step(const inspection_record *record, const char *name); /* its answer, or NULL */

/* False: its vehicle is a single one or a bus, and has no trailer. */
bool record_may_tow(const inspection_record *record);

/* "2L chamber", "2L applied replaced": the name of a step in the chosen language. */
const char *record_say_step(const char *name, char text[SAID_SIZE]);

/* "never (2026-11-20 06:40); 62 (2026-11-20 06:45)": what an answer was, its words in the chosen language. */
const char *record_say_replaced(const char *text, char said[SAID_SIZE]);

/* The record with its judgement. */
typedef struct inspection {
    inspection_record record;
    const rule_context *context; /* what judged */
    vehicle_record vehicle;
    rodt_air_finding air[RECORD_CHECKS_MAX];
} inspection;

/* Reading and writing (read.c, write.c). Each returns STATUS_CONTINUE or an exit status, and says what was wrong and
 * where. */
int record_read(const char *file, inspection_record *out);
int record_write(const inspection_record *record, FILE *to);
void record_free(inspection_record *record);

/* --- Judging (judge.c). Statuses as above. ------------------------------------------------------------ */

/* Opens the rule set of a record as it was on its day, under a carrier's limits if there is a file of them. */
int record_open_rules(const inspection_record *record, const char *limits_file, rule_context *out);

/* Judges what was read; `context` is of this record and outlives the inspection. */
int record_judge(inspection *of, const rule_context *context);

/* "wheel_ends, entry 3 (2L)": the place of an entry, for messages. */
void record_end_place(const inspection_record *record, size_t end, char where[RECORD_WHERE_SIZE]);

/* Exit status that goes with the judgement. */
int inspection_status(const inspection *of);

/* "tractor A 12345, 3 axles": a unit in words; false = there is none of that index. */
#define UNIT_TEXT_SIZE ((size_t)480)
bool record_format_unit(const inspection_record *record, size_t index, char text[UNIT_TEXT_SIZE]);

/* --- The judgement in words (summary.c) --------------------------------------------------------------- */

/* Every defect, a line each: label and sentence. */
void inspection_each_defect(const inspection *of, vehicle_line line, void *context);

/* The headlines of air and strokes: that of the strokes leaves the air out. */
typedef struct inspection_outcome {
    const char *air; /* with the rank of the worst defect; NULL = there is none */
    const char *air_note; /* the same as a sentence, while the walk-round lasts; NULL */
    const char *strokes;
    char small[160]; /* strokes that are not bad beside air that is, which would look like half a pass; "" = no such */
    paint_kind air_paint, strokes_paint;
} inspection_outcome;
inspection_outcome inspection_outcome_of(const inspection *of);

/* The warning against driving the vehicle, by strokes or air, defective or not settled; NULL = none. */
const char *inspection_warning(const inspection *of);

/* "2 air checks not done: low-pressure warning; drain valves.", or that none was; false = every recorded one was. */
#define UNDONE_SIZE ((size_t)900)
bool inspection_format_undone(const inspection *of, char text[UNDONE_SIZE]);

/* What the entries say about each other, a line each (changes.c): the parking brake, a pressure that rose, changes. */
void inspection_each_note(const inspection *of, vehicle_line line, void *context);
void inspection_each_rise(const inspection *of, vehicle_line line, void *context); /* the pressure alone */

/* Of a parking brake that does not release, or does not set: the answer of these steps. */
#define STEP_NEVER TO_SAY("never")
#define STEP_RELEASED TO_SAY("spring_brake")
#define STEP_PARKED TO_SAY("parked")

/* The step that keeps what an answer was before it was changed after a verdict: its name goes before this. */
#define STEP_REPLACED TO_SAY(" replaced")
bool record_bare_step(const char *name, char bare[RECORD_WHERE_SIZE]); /* without that; true = it was there */
/* `what` gets "2L applied"; false = another step. */
bool record_change_at(const inspection_record *record, size_t step, char what[SAID_SIZE]);

/* What the record before this one found, where a walk-round began from it (last.c): the answers of these steps. */
#define STEP_FROM_DEFECTS TO_SAY("from_defects") /* "5R; axle 2; tractor-protection" */
#define STEP_FROM_REPAIR TO_SAY("from_repair")
#define AXLE_DEFECT "axle "
#define RECORD_DEFECTS_SIZE ((size_t)2 * SAID_SIZE) /* every wheel end, axle and check, in every language */
#define RECORD_LAST_SIZE (RECORD_DEFECTS_SIZE + SAID_SIZE)
bool record_format_last(const inspection_record *record, char text[RECORD_LAST_SIZE]); /* false = no defect */
bool record_last_has(const inspection_record *record, const char *name); /* a position or the word of a check */
const char *record_last_repair(const inspection_record *record);

/* The cautions of a walk-round are confirmed by a person, or the report says that they were not; NULL = they were, or
 * nothing is known. */
#define STEP_CAUTIONS TO_SAY("cautions")
#define STEP_BY_OPTION TO_SAY("by option")
const char *record_cautions_note(const inspection_record *record);

#define STEP_LIMITS TO_SAY("limits") /* the step that names the file of the carrier's limits */

#endif
