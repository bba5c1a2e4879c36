/* SPDX-License-Identifier: Apache-2.0 */
/* A chunk of the file, and the run that it belongs to. */
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
typedef struct batch_workbook batch_workbook;

/* The work on a file: what all its chunks share. */
typedef struct batch_run {
    const batch_options *options;
    rule_context context;
    char separator;
    batch_header header;
    batch_counts counts;
    bool unit_is_vehicle; /* the first object names a vehicle under "unit" */
    uint64_t line;       /* number of the first line of the chunk that is delivered next */
    batch_progress progress;
    struct vehicle_groups *by; /* with --by; NULL = rows come out */
    batch_workbook *workbook; /* with --format xlsx */
    size_t by_column[NAME_CELLS_MAX];
    char by_heading[NAME_CELLS_MAX + 1][COLUMN_TEXT_SIZE]; /* the last for the day */
    line_layout by_layout;
} batch_run;

#define BATCH_MESSAGE_SIZE 256

/* The texts that two rows differ in whose strokes alone differ, as they stand in a row. */
enum { OWN_STROKE, OWN_MARGIN, OWN_TEXTS };

typedef struct text_place {
    size_t start, end;
} text_place;

/*
 * * A chunk of the file and its output. Each worker has one, and chunks are delivered in the order of the file.
 * Lines are counted from the start of the chunk, which does not know its place in the file.
 */
typedef struct batch_chunk {
    batch_run *run;
    csv_reader reader;
    output out;
    struct batch_cache *cache; /* NULL = every row is judged */
    passthrough_counts passed;
    struct counted_tally {
        batch_tally tally;
        uint64_t rows;
    } *tallies;                  /* what was counted, in the order of the rows */
    size_t tally_count;
    size_t tally_room;
    uint64_t lines;              /* of the chunk */
    uint64_t bytes_read;         /* of the input, when the chunk was read */
    bool stopped;                /* the run ends here, because of `fault` or `stop_message` */
    csv_status fault;
    uint64_t stop_line;          /* 0 = no line is at fault */
    char stop_message[BATCH_MESSAGE_SIZE];
    const char *stop_hint;       /* a second sentence, or NULL */
    char text[BATCH_FIELDS][COLUMN_TEXT_SIZE];
    text_place own[OWN_TEXTS];   /* of the row that was written last, in `out` */
} batch_chunk;

/* Empties the chunk for the next use. */
void batch_chunk_clear(batch_chunk *chunk);

/* Counts so many rows with one tally. False: no memory. */
bool batch_chunk_count(batch_chunk *chunk, const batch_tally *tally, uint64_t rows);

/* Ends the run here; the message is printed when the chunk is delivered. Returns false. */
bool batch_chunk_stop(batch_chunk *chunk, uint64_t line, const char *format, ...) PRINTF_LIKE(3, 4);

/* The same with the sentence of a status. */
bool batch_chunk_stop_by_status(batch_chunk *chunk, uint64_t line, rodt_status status);

/* Counts a row that is not judged, or doubtful, as a whole. */
void batch_chunk_add_error(batch_chunk *chunk, row_error error, const csv_record *record);

/* The text of a column for the readers, in chunk->text; NULL if the row does not have it. */
const char *batch_cell(batch_chunk *chunk, const csv_record *record, rodt_field field);

/* The texts of a row for the readers, each NULL if the row does not have it. */
rodt_form batch_text(const batch_run *run, const char *const cell[BATCH_FIELDS]);

/* What is counted of a row that was judged. */
batch_tally batch_chunk_tally(batch_chunk *chunk, const rodt_form *text, const rodt_finding *finding,
                              const csv_record *record);

#endif
