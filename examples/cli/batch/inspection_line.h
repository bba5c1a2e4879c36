/* SPDX-License-Identifier: Apache-2.0 */
/* The lines of `rodtravel batch --by`. */
#ifndef BATCH_INSPECTION_LINE_H
#define BATCH_INSPECTION_LINE_H

#include "batch/inspection.h"
#include "io/output_buffer.h"

/* What the lines of a file have in common. */
typedef struct line_layout {
    const char *heading[NAME_CELLS_MAX]; /* of the columns that name a vehicle */
    size_t names;
    const char *day_heading; /* NULL: days are pooled, or the file has none */
    char separator;
} line_layout;

/* Days as they are written, so that few are formatted. All zero bytes at the start. */
#define DAYS_KEPT 512u
typedef struct day_texts {
    struct day_text {
        rodt_date day;
        uint8_t size;
        char text[RODT_DATE_TEXT_SIZE];
    } of[DAYS_KEPT];
} day_texts;

/* Writes the line of headings. */
void inspection_write_header(output *to, const line_layout *layout);

/* The outcome by the roadside criterion, no better than it could be. undated: rows of the vehicle whose day cannot be
 * read, any of which may be of this inspection; NULL = there are none. False: more brakes than can be counted. */
bool inspection_judge(const inspection *one, const inspection *undated, rodt_count *count);

void inspection_write_name(output *to, const line_layout *layout, day_texts *days, const inspection_key *key);
void inspection_write_rest(output *to, const line_layout *layout, const inspection *one, const rodt_count *count);

#endif
