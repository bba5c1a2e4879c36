/* SPDX-License-Identifier: Apache-2.0 */
/* The table compiler: the rows of all tables in memory, and what reading, checking and writing share. */
#ifndef RODT_TABLEC_H
#define RODT_TABLEC_H

#include "core/common.h"
#include "rules/table_reader.h"
#include "rodtravel/step.h"
#include "rules/tables.h"

#define ROWS_MAX 1000
#define POOL_SIZE 262144

enum {
    FILE_SOURCES,
    FILE_CHAMBERS,
    FILE_LIMITS,
    FILE_RULES,
    FILE_VEHICLE,
    FILE_AIR,
    FILE_VOLUMES,
    FILE_STEPS,
    FILE_COUNT
};

/* Versions that a bill of materials names: the library's own, and those of the first materials of bill.c; "none" = not
 * in the build. */
#define BILL_VERSIONS 5

/* What a figure is based on. An id is a text until all files are read. */
typedef struct citation {
    const char *source; /* NULL = the cell is empty */
    RODT_ENUM32(rodt_evidence) evidence;
    bool has_evidence; /* false = the cell is empty */
} citation;

/* Every row begins with its line in its file. */
typedef struct source_row {
    uint32_t line;
    rodt_source source;
    rodt_date read_on;
    bool used;
    uint32_t cited[FILE_COUNT][RODT_EVIDENCE_END]; /* figures that rest on it */
} source_row;

typedef struct chamber_row {
    uint32_t line;
    rodt_chamber_row row;
    citation diameter;
    citation rated;
    bool used;
} chamber_row;

typedef struct limit_row {
    uint32_t line;
    const char *rules;
    citation cited;
    rodt_limit row;
} limit_row;

typedef struct rules_row {
    uint32_t line;
    const char *id;
    const char *title;
    const char *authority;
    citation cited;
    rodt_date from;
    rodt_date until;
    unsigned at_limit; /* of at_limit_words */
    const char *limits_of; /* NULL = none */
    rodt_pressure pressure_from;
    rodt_pressure pressure_until;
    citation pressure;
    rodt_ratio rated_share;
    citation share;
    citation major; /* NULL source = a brake over its limit has no rank */
} rules_row;

typedef enum at_limit { AT_LIMIT_NOT_SAID, AT_LIMIT_FAILS, AT_LIMIT_PASSES } at_limit;

typedef struct vehicle_row {
    uint32_t line;
    unsigned part; /* vehicle_part */
    rodt_ratio value;
    const char *wording;
    citation cited;
} vehicle_row;

typedef struct air_row {
    uint32_t line;
    const char *rules;
    citation cited;
    rodt_air_limit row;
} air_row;

typedef enum volume_what { VOLUME_CHAMBER, VOLUME_TRUCK, VOLUME_TRAILER, VOLUME_WHATS } volume_what;

/* A multiple is a volume row without a size; the volume is the multiple then. */
typedef struct volume_line {
    uint32_t line;
    unsigned what; /* volume_what */
    citation cited;
    rodt_volume_row row;
} volume_line;

typedef struct step_row {
    uint32_t line;
    rodt_step step;
    RODT_ENUM32(rodt_air_check) check;
    unsigned when; /* step_when */
    const char *texts[RODT_STEP_PART_END];
} step_row;

typedef struct tables {
    const char *paths[FILE_COUNT];
    const char *versions[BILL_VERSIONS];
    int current; /* file that is being read */
    unsigned faults;
    size_t source_count;
    size_t chamber_count;
    size_t limit_count;
    size_t rules_count;
    size_t vehicle_count;
    size_t air_count;
    size_t volume_count;
    size_t step_count;
    source_row sources[ROWS_MAX];
    chamber_row chambers[ROWS_MAX];
    limit_row limits[ROWS_MAX];
    rules_row rules[ROWS_MAX];
    vehicle_row vehicle[ROWS_MAX];
    air_row air[ROWS_MAX];
    volume_line volumes[ROWS_MAX];
    step_row steps[ROWS_MAX];
    size_t pool_used;
    char pool[POOL_SIZE]; /* every text of the rows */
} tables;

/* The words of cells that messages repeat, in the order of their enumerations. */
extern const char *const vehicle_part_words[VEHICLE_PARTS];
extern const char *const volume_words[VOLUME_WHATS];
extern const char *const step_when_words[STEP_WHENS];

/* Prints "file:line: sentence" and counts it. */
void tables_fault(tables *t, int file, uint32_t line, const char *format, ...) PRINTF_LIKE(4, 5);

/* The name of a table without its folder. */
const char *tables_file_name(const tables *t, int file);

/* Copies a text into the pool; it lives as long as the tables. */
const char *tables_keep(tables *t, const char *text);

/* Looks up an id; NULL if there is none. */
source_row *tables_source(tables *t, const char *id);
rules_row *tables_rules(tables *t, const char *id);

/* True if the row of limits holds under the rule set: its own, or one of the rule set that it refers to, as far as no
 * row of its own replaces it. */
bool tables_limit_holds(const tables *t, const rules_row *rules, const limit_row *limit);

/* True if two rows are of one chamber and differ in nothing but rule set, days and figures. */
bool tables_one_chamber(const limit_row *a, const limit_row *b);

/* True if the rule set has a row of air checks. */
bool tables_has_air(const tables *t, const char *rules);

/* Marks the source as cited, and reports one that is missing, or that was not read though the figure was. */
void tables_cite(tables *t, int file, uint32_t line, const citation *cited);

#endif
