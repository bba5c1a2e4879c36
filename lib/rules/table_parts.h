/* SPDX-License-Identifier: Apache-2.0 */
/* A carrier's text: a table of limits, a table of air checks, or both, each from its line of names on. */
#ifndef RODT_TABLE_PARTS_H
#define RODT_TABLE_PARTS_H

#include "rules/table_reader.h"

enum { PART_LIMITS, PART_AIR, PARTS };

typedef struct table_part {
    const char *text; /* NULL = the text has no such table */
    size_t size;
    uint32_t line; /* lines of the text before it */
} table_part;

/* The columns of the two tables, as a carrier needs them. */
typedef struct table_kind {
    const table_column *columns;
    size_t count;
} table_kind;
extern const table_kind rodti_part_kinds[PARTS];

/* Finds the tables. False after a fault was written to *fault. */
bool rodti_table_find_parts(const char *text, size_t size, table_part parts[PARTS], rodt_error *fault);

#endif
