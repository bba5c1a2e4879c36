/* SPDX-License-Identifier: Apache-2.0 */
/* The table compiler: what it holds of the tables while it reads, checks and writes them. */
#ifndef RODT_TABLEC_H
#define RODT_TABLEC_H

#include <stdio.h>

#include "core/common.h"
#include "rules/tables.h"
#include "rules/table_reader.h"

#define ROWS_MAX 1000
#define POOL_SIZE 262144

enum { FILE_SOURCES, FILE_CHAMBERS, FILE_LIMITS, FILE_RULES, FILE_VEHICLE, FILE_AIR, FILE_VOLUMES, FILE_COUNT };

/* Every `line` is that of the row in its file. Ids are texts until all files are read. */
typedef struct source_row {
    uint32_t line;
    rodt_source source;
    rodt_date read_on;
    bool used;
} source_row;

typedef struct chamber_row {
    uint32_t line;
    rodt_chamber_row row;
    const char *diameter_source;
    const char *rated_source;
    const char *rated_evidence_text;
    rodt_evidence rated_evidence;
    bool used;
} chamber_row;

typedef struct limit_row {
    uint32_t line;
    const char *rules;
    const char *source;
    rodt_limit row;
} limit_row;

typedef struct rules_row {
    uint32_t line;
    const char *id;
    const char *title;
    const char *authority;
    const char *source;
    rodt_evidence evidence;
    rodt_date from;
    rodt_date until;
    bool at_limit_passes;
    bool at_limit_said;
    const char *limits_of;
    rodt_pressure pressure_from;
    rodt_pressure pressure_until;
    const char *pressure_source;
    rodt_evidence pressure_evidence;
    const char *pressure_evidence_text;
    rodt_ratio rated_share;
    const char *rated_share_source;
    rodt_evidence rated_share_evidence;
    const char *rated_share_evidence_text;
} rules_row;

typedef struct vehicle_row {
    uint32_t line;
    unsigned part; /* vehicle_part */
    rodt_ratio value;
    const char *wording;
    const char *source;
    rodt_evidence evidence;
} vehicle_row;

typedef struct air_row {
    uint32_t line;
    const char *rules;
    const char *source;
    rodt_air_limit row;
} air_row;

typedef enum volume_what { VOLUME_CHAMBER, VOLUME_TRUCK, VOLUME_TRAILER, VOLUME_WHATS } volume_what;

/* A multiple is a volume row without a size; the volume is the multiple then. */
typedef struct volume_line {
    uint32_t line;
    unsigned what; /* volume_what */
    const char *source;
    rodt_volume_row row;
} volume_line;

typedef struct tables {
    const char *paths[FILE_COUNT];
    int current; /* file that is being read */
    unsigned faults;
    size_t source_count;
    size_t chamber_count;
    size_t limit_count;
    size_t rules_count;
    size_t vehicle_count;
    size_t air_count;
    size_t volume_count;
    source_row sources[ROWS_MAX];
    chamber_row chambers[ROWS_MAX];
    limit_row limits[ROWS_MAX];
    rules_row rules[ROWS_MAX];
    vehicle_row vehicle[ROWS_MAX];
    air_row air[ROWS_MAX];
    volume_line volumes[ROWS_MAX];
    size_t pool_used;
    char pool[POOL_SIZE]; /* every text of the rows */
} tables;

/* Prints "file:line: sentence" and counts it. */
void tables_fault(tables *t, int file, uint32_t line, const char *format, ...) PRINTF_LIKE(4, 5);

/* The parts of the table of the vehicle as they are written in it, in the order of vehicle_part. */
extern const char *const vehicle_part_names[VEHICLE_PARTS];

/* Looks up an id; NULL if there is none. */
source_row *tables_source(tables *t, const char *id);
rules_row *tables_rules(tables *t, const char *id);

/* Keeps the text of a cell beyond the row that it was read in. */
const char *tables_keep(tables *t, const table_reader *reader, size_t column);

/* Notes that a source is cited, and that words said to be read in it were read. */
void tables_cite(tables *t, int file, uint32_t line, const char *id, rodt_evidence evidence);

/* The tables of air checks and of volumes: columns, reading of one row, checks, writing. */
#define AIR_COLUMNS 22
#define VOLUME_COLUMNS 6
extern const table_column air_columns[AIR_COLUMNS];
extern const table_column volume_columns[VOLUME_COLUMNS];
void tables_read_air(tables *t, table_reader *reader);
void tables_read_volume(tables *t, table_reader *reader);
void tables_check_air(tables *t);
void tables_check_volumes(tables *t);
bool tables_has_air(const tables *t, const char *rules);
void tables_write_air(const tables *t, FILE *out);
void tables_write_volumes(const tables *t, FILE *out);

/* Pieces of C that every table is written with; each ends in ", ". */
void write_text(FILE *out, const char *text);
void write_fraction(FILE *out, int64_t num, int64_t den);
void write_date(FILE *out, rodt_date date);
void write_source_reference(const tables *t, FILE *out, const char *id);

/* Compares every row with every other that it has to do with, and reports all faults. */
void tables_check(tables *t);

/* Writes the constant arrays of lib/row.h. The rows are sound. */
void tables_write(const tables *t, FILE *out);

#endif
