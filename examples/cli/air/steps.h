/* SPDX-License-Identifier: Apache-2.0 */
/* The sentences of a step for a vehicle, as far as it is known: one of each, and the figures of several rows below. */
#ifndef STEPS_H
#define STEPS_H

#include <rodtravel/rodtravel.h>

#include <stdio.h>

#define STEP_TEXT_SIZE 1200

/* Called for each sentence with its part, and for each row of several with what it is for and its figure. */
typedef void step_line(void *context, rodt_step_part part, const char *label, const char *text);

/* `vehicle` as in rodt_step_row_at. */
void each_step_line(rodt_step step, const rodt_rules *rules, const rodt_air_reading *vehicle, step_line *line,
                    void *context);

/* What a step is called. */
const char *step_title(rodt_step step, const rodt_rules *rules, char text[STEP_TEXT_SIZE]);

/* Where the figures come from, and how they were checked; "" without a figure. */
void format_step_sources(rodt_step step, const rodt_rules *rules, const rodt_air_reading *vehicle,
                         char text[STEP_TEXT_SIZE]);

/* Prints the title and the sentences. */
void print_step(FILE *to, rodt_step step, const rodt_rules *rules, const rodt_air_reading *vehicle);

#endif
