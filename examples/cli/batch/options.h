/* SPDX-License-Identifier: Apache-2.0 */
/* The options of `rodtravel batch`. */
#ifndef BATCH_OPTIONS_H
#define BATCH_OPTIONS_H

#include "batch/inspection.h"
#include "input/columns.h"
#include "ui/options.h"

#include <rodtravel/rodtravel.h>

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
    BATCH_OPTION_POOL,
    BATCH_OPTION_JOBS,
    BATCH_OPTION_NO_CACHE,
    BATCH_OPTION_FORMAT,
    BATCH_OPTION_DECIMALS,
    BATCH_OPTION_SUMMARY,
    BATCH_OPTION_JSON,
    BATCH_OPTION_AFRESH, /* the older name of --no-cache */
    BATCH_OPTIONS
} batch_option;

/* Texts are those of the command line; NULL = not given. */
typedef struct batch_options {
    const char *file; /* "-" = standard input */
    const char *rules;
    const char *limits;
    const char *as_of;
    const char *encoding; /* NULL = UTF-8, unchecked */
    column_request columns;
    char separator;
    bool separator_given;
    rodt_style style;
    rodt_date_order date_order;
    unsigned jobs; /* 0 = as many as there are processors */
    bool no_cache; /* every row is judged */
    bool summary;
    bool json; /* the summary comes out in place of the rows */
    bool workbook; /* the rows come out as a worksheet */
    int decimals; /* of the results as decimal numbers; below 0 = none are written */
    const char *by[NAME_CELLS_MAX]; /* headings of the columns that name the vehicle */
    size_t by_count;                /* 0 = rows come out */
    bool pool;                      /* rows of all days are one inspection */
} batch_options;

extern const option_spec batch_option_specs[BATCH_OPTIONS];
extern const char batch_help[];

/* Reads the command line. Returns STATUS_CONTINUE or an exit status. */
int batch_options_read(const command_spec *command, int argc, char **argv, batch_options *options);

#endif
