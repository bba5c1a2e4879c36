/* SPDX-License-Identifier: Apache-2.0 */
/* A chunk of the file and what becomes of it. */
#ifndef BATCH_CHUNK_H
#define BATCH_CHUNK_H

#include "batch/counts.h"
#include "batch/header.h"
#include "batch/progress.h"
#include "batch/vehicle_groups.h"
#include "input/rule_context.h"
#include "io/output_buffer.h"
#include "ui/compiler.h"

struct batch_cache;

/* The work on a file: what all its parts have in common. */
typedef struct batch_run {
    const batch_options *options;
    rule_context setting;
    batch_header header;
    batch_counts counts;
    bool unit_is_vehicle; /* the first object names a vehicle under "unit" */
    uint64_t line;       /* number of the first line of the part that is next in turn */
    batch_progress progress;
    struct vehicle_groups *by; /* with --by; NULL = rows come out */
    size_t by_column;
    char by_heading[COLUMN_TEXT_SIZE];
} batch_run;

#define BATCH_WORDS_SIZE 256

/*
 * A part of the file and what becomes of it. Parts are worked on by several threads, each with one of its own, and
 * delivered in the order of the file; lines are counted from the beginning of the part, which does not know its
 * place.
 */
typedef struct batch_part {
    batch_run *run;
    csv_reader reader;
    output out;
    struct batch_cache *cache; /* NULL = every row is judged */
    passthrough_counts passed;
    struct batch_tallied {
        batch_tally tally;
        uint64_t rows;
    } *tallied;                  /* what was counted, in the order of the rows */
    size_t tallied_count;
    size_t tallied_room;
    uint64_t lines;              /* how many there were */
    uint64_t taken;              /* bytes of the input that had been read when the part was taken */
    bool stopped;                /* the run ends here: by a fault of the input, or for what the words say */
    csv_status fault;
    uint64_t stop_line;          /* 0 = no line is to blame */
    char stop_words[BATCH_WORDS_SIZE];
    const char *stop_hint;       /* a second sentence, or NULL */
    char text[BATCH_FIELDS][COLUMN_TEXT_SIZE];
} batch_part;

/* Forgets what the part held: it is for the next piece of the file. */
void batch_part_clear(batch_part *part);

/* Counts rows alike. */
bool batch_part_count(batch_part *part, const batch_tally *tally, uint64_t rows);

/* Ends the run here; the sentence is said when the part is delivered. Returns false. */
bool batch_part_stop(batch_part *part, uint64_t line, const char *format, ...) PRINTF_LIKE(3, 4);

/* Counts what is wrong with a row as a whole. */
void batch_part_flaw(batch_part *part, row_error flaw, const csv_record *record);

/* The text of a column for the readers, in part->text; NULL if the row does not have it. */
const char *batch_cell(batch_part *part, const csv_record *record, rodt_field field);

/* The texts of a row for the readers, each NULL if the row does not have it. */
rodt_reading_text batch_text(const batch_run *run, const char *const cell[BATCH_FIELDS]);

/* True for a row without a day of its own. */
bool batch_is_undated(const rodt_reading_text *text);

#endif
