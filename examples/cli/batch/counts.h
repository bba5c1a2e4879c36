/* SPDX-License-Identifier: Apache-2.0 */
/* What `rodtravel batch` counts. */
#ifndef BATCH_COUNTS_H
#define BATCH_COUNTS_H

#include "batch/histogram.h"

#include <rodtravel/rodtravel.h>

/* Why a row was not judged, or is doubtful, as a whole: reasons beside those of the library. */
typedef enum row_error {
    ROW_SHORT_RECORD,
    ROW_LONG_RECORD,
    ROW_BAD_QUOTES,
    ROW_BAD_OBJECT, /* a line is no JSON object */
    ROW_MEMBER_TWICE, /* two members of an object are one field */
    ROW_ERRORS
} row_error;

const char *row_error_code(row_error error);

/* Records that were passed through without a verdict, and errors of whole rows. */
typedef struct passthrough_counts {
    uint64_t headers;       /* repeated header lines */
    uint64_t empty_records; /* separators and blanks only */
    uint64_t empty_lines;
    uint64_t errors[ROW_ERRORS];
    uint64_t error_lines[ROW_ERRORS]; /* the first line of each */
    uint64_t other_order_line; /* the first line with a date that contradicts --date-order; 0 = there is none */
    uint32_t fields_found; /* FIELD_BITs that some object had */
    uint32_t fields_meant; /* FIELD_BITs that some object has not, but probably under another name */
    char name_meant[RODT_READING_FIELDS][40]; /* the first of these names */
} passthrough_counts;

/* All that is counted of a row, in few bytes. */
typedef struct batch_tally {
    uint64_t reasons;
    char size[4]; /* of the chamber, as in rodt_chamber */
    uint16_t utilization; /* histogram_step */
    uint8_t verdict;
    uint8_t family;
    uint8_t stroke_class;
    bool undated;     /* no day of its own */
    bool other_order; /* a date that contradicts --date-order */
} batch_tally;

/* What was counted. */
typedef struct batch_counts {
    uint64_t rows;
    uint64_t undated;     /* judged by the day of the options */
    uint64_t other_order; /* dates that contradict --date-order */
    uint64_t verdict[BATCH_VERDICTS];
    uint64_t reason[RODT_REASON_END];
    passthrough_counts passed;
    struct {
        uint64_t key; /* family, class and size in one number */
        rodt_chamber chamber;
        uint64_t verdict[BATCH_VERDICTS];
    } chamber[BATCH_CHAMBERS_MAX]; /* the last one is for all that do not fit */
    size_t chambers;
    utilization_histogram *histogram; /* with --summary; otherwise NULL */
} batch_counts;

/* What is counted of a finding; in_detail = its utilization, too. */
batch_tally batch_tally_of(const rodt_finding *finding, bool in_detail);

/* Counts so many rows with one tally; in_detail = by reason, chamber and utilization, too. */
void batch_counts_add(batch_counts *counts, const batch_tally *tally, uint64_t rows, bool in_detail);

/* Adds what was passed through in a chunk whose first line is `line`. */
void batch_counts_add_passthrough(batch_counts *counts, const passthrough_counts *passed, uint64_t line);

/* One of the chambers that were counted; it may be in the buffer. NULL = none could be read. */
const char *batch_chamber_text(const batch_counts *counts, size_t at, char text[RODT_CHAMBER_TEXT_SIZE]);

/* Its name in the language of the messages. */
const char *batch_chamber_name(const batch_counts *counts, size_t at, char text[RODT_CHAMBER_TEXT_SIZE]);

#endif
