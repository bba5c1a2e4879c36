/* SPDX-License-Identifier: Apache-2.0 */
/* `rodtravel air`: one air-system check, or an estimate of full applications. */
#ifndef AIR_H
#define AIR_H

#include "ui/json_writer.h"
#include "ui/language.h"
#include "ui/options.h"

#include <rodtravel/rodtravel.h>

/* Options of the command, in the order of its table. */
enum {
    AIR_SECONDS,
    AIR_FROM,
    AIR_TO,
    AIR_START,
    AIR_BEFORE,
    AIR_AFTER,
    AIR_APPLICATIONS,
    AIR_VEHICLE,
    AIR_TOWED,
    AIR_BUILT,
    AIR_CUT_OUT,
    AIR_CUT_IN,
    AIR_RESERVOIRS,
    AIR_CHAMBERS,
    AIR_PSI,
    AIR_FILL,
    AIR_FLOOR,
    AIR_RULES,
    AIR_LIMITS,
    AIR_SPEAK,
    AIR_JSON,
    AIR_OPTIONS
};

/* Volumes in in3, as far as they were given. */
typedef struct air_volumes {
    rodt_ratio reservoirs;
    rodt_ratio chambers; /* all together, by Table V */
    rodt_ratio required;
} air_volumes;

/* The input of an estimate. */
typedef struct air_estimate {
    rodt_pressure pressure;
    rodt_pressure floor;
    rodt_ratio fill;
    air_volumes volumes;
} air_estimate;

/* Each reads what the command line says, and returns STATUS_CONTINUE or an exit status (parse.c). */
int read_air_check(const command_line *from, rodt_air_check check, rodt_air_reading *out);
int read_air_estimate(const command_line *from, const rodt_rules *rules, air_estimate *out);

/* Exit status that goes with a result (command.c). */
int air_status(rodt_air_result result);

/* (format.c) */
void print_air_finding(const rodt_air_finding *finding);
int write_air_finding(const rodt_air_finding *finding); /* statuses as json_end */
void put_air_finding(json_writer *json, const rodt_air_finding *finding); /* the object alone */
int print_air_estimate(const air_estimate *estimate);
int write_air_estimate(const air_estimate *estimate);

#define AIR_WHOM_SIZE 200

/* The vehicles that a row is for, "combination with 2 or more towed units, built from 1975-03-01 on"; "" = any
 * (table.c). */
const char *air_row_whom(const rodt_air_limit *row, char text[AIR_WHOM_SIZE]);

#define AIR_RULE_SIZE 500

/* The title of a check (table.c). */
const char *air_check_title(rodt_air_check check, char text[SAID_SIZE]);

/* The words of a row, and what is timed (table.c). */
const char *air_row_rule(const rodt_air_limit *row, char text[AIR_RULE_SIZE]);

/* The air checks of a rule set (table.c). */
void print_air_table(const rodt_rules *rules);
void write_air_table(json_writer *json, const rodt_rules *rules, const rodt_rules *own); /* own may be NULL */

#endif
