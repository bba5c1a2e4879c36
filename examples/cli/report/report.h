/* SPDX-License-Identifier: Apache-2.0 */
/* The report of an inspection: its forms, and what they all say beyond the judgement. */
#ifndef REPORT_H
#define REPORT_H

#include "record/record.h"

#include <stdio.h>

void report_print(const inspection *of);                           /* text.c */
int report_write_json(const inspection *of);                       /* json.c; statuses as json_end */
void report_write_html(const inspection *of, FILE *to);            /* html.c */
void report_write_svg(const inspection *of, FILE *to, bool alone); /* svg.c; alone = a file by itself */

/* "unit", "date" and so on as a person reads them; NULL for a key that the head of a report does not show. */
const char *report_head_title(head_key key);

/* The value of such a key in words of people, or NULL; "ca-on" as the title of that rule set. */
const char *report_head_text(const inspection *of, head_key key);

const char *report_adjuster(rodt_adjuster adjuster);         /* "manual", "-" */
const char *report_air_result(rodt_air_result result);       /* "not done" */
const char *report_air_title(rodt_air_check check, char text[SAID_SIZE]);

/* The walk-round was judged by a carrier's own limits and this report is not: says so in `note` and returns true. */
#define REPORT_NOTE_SIZE ((size_t)600)
bool report_limits_note(const inspection *of, char note[REPORT_NOTE_SIZE]);

/* Sources of the air checks, each once; the law's too where a carrier's own figure judged. */
void report_each_air_source(const inspection *of, vehicle_line line, void *context);

#endif
