/* SPDX-License-Identifier: Apache-2.0 */
/* What `rodtravel batch` counts. */
#ifndef BATCH_COUNTS_H
#define BATCH_COUNTS_H

#include "batch/histogram.h"

#include <rodtravel/rodtravel.h>

/* Why a row was not judged, or is doubtful, as a whole: reasons beside those of the library. */
typedef enum row_error {
    BATCH_SHORT_RECORD,
    BATCH_LONG_RECORD,
    BATCH_BAD_QUOTES,
    BATCH_BAD_OBJECT, /* a line is no JSON object */
    BATCH_TWICE,      /* two members of an object are the same word */
    BATCH_FLAWS
} row_error;

const char *batch_flaw_code(row_error flaw);

/* What was passed through without a verdict, and what was wrong with whole rows. */
typedef struct passthrough_counts {
    uint64_t headers;       /* repeated header lines */
    uint64_t empty_records; /* separators and blanks only */
    uint64_t empty_lines;
    uint64_t flaw[BATCH_FLAWS];
    uint64_t flaw_line[BATCH_FLAWS]; /* the first line of each */
    uint32_t met;    /* FIELD_BITs that some object had */
    uint32_t unread; /* FIELD_BITs that some object probably had under another name */
} passthrough_counts;

/* What a row counts for in a summary, in few bytes. */
typedef struct batch_tally {
    uint64_t reasons;
    char size[4]; /* of the chamber, as in rodt_chamber */
    uint16_t used; /* 1 more than the stroke in half percents of the limit, rounded up; 0 = one is missing */
    uint8_t verdict;
    uint8_t family;
    uint8_t stroke_class;
    bool undated; /* no day of its own */
} batch_tally;

/* What was counted. */
typedef struct batch_counts {
    uint64_t rows;
    uint64_t undated; /* judged by the day of the options */
    uint64_t verdict[BATCH_VERDICTS];
    uint64_t reason[RODT_REASON_END];
    passthrough_counts passed;
    struct {
        uint64_t key; /* family, class and size in one number */
        rodt_chamber chamber;
        uint64_t verdict[BATCH_VERDICTS];
    } chamber[BATCH_CHAMBERS_MAX]; /* the last one is for all that do not fit */
    size_t chambers;
    utilization_histogram *used; /* with --summary; otherwise NULL */
} batch_counts;

/* What a finding counts for; in_detail = by the part of its limit that the stroke uses, too. */
batch_tally batch_tally_of(const rodt_finding *finding, bool undated, bool in_detail);

/* Counts so many rows alike; in_detail = by reason and chamber too. */
void batch_count(batch_counts *counts, const batch_tally *tally, uint64_t rows, bool in_detail);

/* Adds what was passed in a part whose first line is `line`. */
void batch_count_passed(batch_counts *counts, const passthrough_counts *passed, uint64_t line);

/* The name of one of the chambers that were counted; it may be in the buffer. */
const char *batch_chamber_name(const batch_counts *counts, size_t at, char text[RODT_CHAMBER_TEXT_SIZE]);

#endif
