/* SPDX-License-Identifier: Apache-2.0 */
/* The parts of `rodtravel batch`: options, headings, rows and the summary. */
#ifndef BATCH_H
#define BATCH_H

#include "input/columns.h"
#include "input/rule_context.h"
#include "io/csv_reader.h"
#include "io/output_buffer.h"
#include "ui/compiler.h"

#include <rodtravel/rodtravel.h>

#include <time.h>

/* The fields that are read; position with --by only. */
#define BATCH_FIELDS (RODT_FIELD_POSITION + 1)

typedef enum batch_option {
    BATCH_OPTION_RULES,
    BATCH_OPTION_LIMITS,
    BATCH_OPTION_AS_OF,
    BATCH_OPTION_COLUMN,
    BATCH_OPTION_SEPARATOR,
    BATCH_OPTION_DECIMAL_COMMA,
    BATCH_OPTION_ENCODING,
    BATCH_OPTION_UNIT,
    BATCH_OPTION_DATE_ORDER,
    BATCH_OPTION_BY,
    BATCH_OPTION_JOBS,
    BATCH_OPTION_AFRESH,
    BATCH_OPTION_FORMAT,
    BATCH_OPTION_SUMMARY
} batch_option;

/* Texts are those of the command line; NULL = not given. */
typedef struct batch_options {
    const char *file; /* "-" = standard input */
    const char *rules;
    const char *limits;
    const char *as_of;
    const char *by;                   /* heading of the column that names the vehicle; NULL = rows come out */
    const char *encoding;             /* NULL = the bytes are taken as they are */
    column_request columns;
    char separator;
    rodt_length_style style;
    rodt_date_order date_order;
    unsigned jobs; /* 0 = as many as there are processors */
    bool afresh;   /* no answer is given again */
    bool summary;
} batch_options;

int command_batch(int argc, char **argv);

/* Returns STATUS_CONTINUE or an exit status. */
int batch_options_read(int argc, char **argv, batch_options *options);

/* The header line of a file. */
typedef struct batch_header {
    columns columns;
    size_t count;
    char *bytes; /* the complete line, without its end */
    size_t size;
} batch_header;

/* Finds the columns. False: they do not fit together, said on stderr. Free it in either case. */
bool batch_header_read(batch_header *header, const csv_record *record, const batch_options *options);
void batch_header_free(batch_header *header);

/* What a record further down is: no header; the same header again; or another one, which no row after it
 * survives, because two files of different columns were joined. */
typedef enum batch_repeat { BATCH_NO_HEADER, BATCH_SAME_HEADER, BATCH_OTHER_HEADER } batch_repeat;

/* Quick: compares the bytes only. */
bool batch_header_is_repeated(const batch_header *header, const csv_record *record);
/* Thorough: compares headings, whatever their spelling and order. */
batch_repeat batch_header_compare(const batch_header *header, const csv_record *record);

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

#define BATCH_VERDICTS 4
#define BATCH_CHAMBERS_MAX 256

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
    struct batch_used *used; /* with --summary; otherwise NULL */
} batch_counts;

/* What a finding counts for; in_detail = by the part of its limit that the stroke uses, too. */
batch_tally batch_tally_of(const rodt_finding *finding, bool undated, bool in_detail);

/* Counts so many rows alike; in_detail = by reason and chamber too. */
void batch_count(batch_counts *counts, const batch_tally *tally, uint64_t rows, bool in_detail);

/* Adds what was passed in a part whose first line is `line`. */
void batch_count_passed(batch_counts *counts, const passthrough_counts *passed, uint64_t line);

void batch_summary(const batch_counts *counts);
/* The name of one of the chambers that were counted; it may stand in the text. */
const char *batch_chamber_name(const batch_counts *counts, size_t at, char text[RODT_CHAMBER_TEXT_SIZE]);

/* --- How much of their limits the strokes use (batch_used.c) -------------------------------------------- */

typedef struct batch_used batch_used;

/* NULL: no memory. */
batch_used *batch_used_open(void);
void batch_used_close(batch_used *used);
/* What stands in a tally. */
uint16_t batch_used_step(const rodt_finding *finding);
void batch_used_count(batch_used *used, const batch_tally *tally, size_t chamber, uint64_t rows);
void batch_used_summary(const batch_counts *counts);

/* What was passed through without a verdict, what is wrong with whole rows, which law judged undated ones. */
void batch_notes(const batch_counts *counts, const batch_options *options, const rule_context *context);

/* How far the run has come, for a person at a terminal (batch_progress.c). */
typedef struct batch_progress {
    bool wanted;
    bool shown;
    uint64_t size; /* bytes of the input; 0 = not known */
    int64_t began; /* milliseconds of a clock that only goes on */
    int64_t due;
} batch_progress;

void batch_progress_open(batch_progress *progress, uint64_t size);
void batch_progress_show(batch_progress *progress, uint64_t rows, uint64_t taken);
/* Takes the line away, before anything else is said. */
void batch_progress_hide(batch_progress *progress);

struct vehicle_groups;
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

/* Makes a part for a thread. False: no memory. Close it in either case. */
bool batch_part_open(batch_part *part, batch_run *run, const csv_reader *whole);
/* Attaches a cache, if that is wanted. Call after the header has been read. There are as many parts as jobs. */
bool batch_part_open_cache(batch_part *part, unsigned jobs);
void batch_part_close(batch_part *part);

/* Forgets what the part held: it is for the next piece of the file. */
void batch_part_clear(batch_part *part);

/* Judges what the part's reader holds. */
void batch_part_judge(batch_part *part);

/* Counts rows alike. */
bool batch_part_count(batch_part *part, const batch_tally *tally, uint64_t rows);

/* Ends the run here; the sentence is said when the part is delivered. Returns false. */
bool batch_part_stop(batch_part *part, uint64_t line, const char *format, ...) PRINTF_LIKE(3, 4);

#define BATCH_JOBS_MOST 16u

/* Judges a file to its end, on several threads if that is wanted. False: the run stopped before the end, said on
 * stderr. The first part holds what was made of the header. */
struct batch_input;
bool batch_relay(batch_run *run, batch_part *first, csv_reader *reader, const struct batch_input *input, unsigned jobs);

/* Writes and counts a part; its turn has come. False: the run must stop, said on stderr. */
bool batch_deliver(batch_part *part, const struct batch_input *input);

void batch_write_header(batch_part *part, const csv_record *record);

/* Judges and writes one record. False: the run must stop. */
bool batch_row(batch_part *part, const csv_record *record);

/* Judges and writes one line that should be an object (batch_object.c). False: the run must stop. */
bool batch_object(batch_part *part, const csv_record *record);

/* Looks at the members of the first object, as columns_check_first_row does at a row. */
void batch_object_check_first(batch_part *part, const csv_record *record);

/* The texts of a row for the readers, each NULL if the row does not have it. */
rodt_reading_text batch_text(const batch_run *run, const char *const cell[BATCH_FIELDS]);

/* True for a row without a day of its own. */
bool batch_is_undated(const rodt_reading_text *text);

/* Counts a row that was judged, after all cached ones before it. False: no memory. */
bool batch_count_row(batch_part *part, const batch_tally *tally);

/* Counts what is wrong with a row as a whole. */
void batch_part_flaw(batch_part *part, row_error flaw, const csv_record *record);

/* The text of a column for the readers, in part->text; NULL if the row does not have it. */
const char *batch_cell(batch_part *part, const csv_record *record, rodt_field field);

/* --- Vehicles ------------------------------------------------------------------------------------------ */

/* One line a vehicle (--by); false as for a row. The column is looked for in the header first. */
bool batch_by_find(batch_run *run, const csv_record *record);
bool batch_by_open(batch_part *part);
bool batch_by_row(batch_part *part, const csv_record *record, const rodt_finding *finding);
bool batch_by_finish(batch_part *part);
void batch_by_summary(const batch_run *run);
void batch_by_close(batch_run *run);

#endif
