/* SPDX-License-Identifier: Apache-2.0 */
/* Reads a table of the project: CSV with named columns and '#' comments, cell by cell, without allocation. */
#ifndef RODT_TABLE_READER_H
#define RODT_TABLE_READER_H

#include "core/common.h"
#include "rodtravel/chamber.h"
#include "rodtravel/date.h"
#include "rodtravel/enumeration.h"
#include "rodtravel/length.h"
#include "rodtravel/pressure.h"
#include "core/text.h"

/*
 * The form: UTF-8, with or without a byte order mark; lines end in LF or CRLF. Empty lines are ignored, and comments: a
 * '#' with a blank or nothing behind it. The first other line names the columns, in any order; every line after it is a
 * row with as many cells. A cell may be in double quotes, in which a double quote is doubled; it ends on its line.
 * Blanks around a cell do not count.
 */
#define TABLE_FIELDS_MAX 24
#define TABLE_LINE_MAX 2000

typedef struct table_column {
    const char *name;
    bool required; /* the column, and a text in each of its cells */
} table_column;

/* The text of a cell is closed by a zero byte and lives until the next row is read. */
typedef struct table_cell {
    const char *text;
    size_t size;
    uint32_t column; /* of its first character in the line; 0 = the table does not have the column */
} table_cell;

/* Called for each fault, in file order: line, column in the line, name of the table's column, sentence. */
typedef void table_on_fault(void *context, const rodt_error *fault);

typedef struct table_reader {
    const char *at;
    const char *end;
    uint32_t line; /* of the row that was read last */
    const table_column *columns;
    size_t column_count;
    size_t field_count; /* cells in each line */
    size_t column_of_field[TABLE_FIELDS_MAX];
    table_cell cells[TABLE_FIELDS_MAX]; /* by column */
    table_on_fault *on_fault;
    void *context;
    bool valid; /* false after the first fault */
    char line_text[TABLE_LINE_MAX + 1];
} table_reader;

/* Sets a reader on a text and reads the line of names. False if the rows cannot be read then. */
bool rodti_table_open(table_reader *reader, const char *text, size_t size, const table_column *columns,
                size_t column_count, table_on_fault *on_fault, void *context);

/* Reads the next row; false at the end. A line that cannot be split is a fault and is passed over. */
bool rodti_table_next(table_reader *reader);

/* The text behind its byte order mark, if it has one. */
const char *rodti_table_after_mark(const char *text, size_t size);

/* True for a line that says nothing: a comment or an empty one. */
bool rodti_table_ignores(const char *line, size_t size);

/* Reports a fault in a cell of the row; at counts characters of the cell from 1. */
void rodti_table_fault(table_reader *reader, size_t column, uint32_t at, rodt_status status, const char *format, ...)
    PRINTF_LIKE(5, 6);

/* Reports what a parser of values said of a cell, at its column in the line. */
void rodti_table_value_fault(table_reader *reader, size_t column, const rodt_error *error);

/* Reports a fault of the whole row. */
void rodti_table_row_fault(table_reader *reader, uint32_t line, rodt_status status, const char *format, ...)
    PRINTF_LIKE(4, 5);

static inline bool table_empty(const table_reader *reader, size_t column)
{
    return reader->cells[column].size == 0;
}

/* Copies the beginning of a cell for a sentence. */
#define TABLE_SHOWN_SIZE 64
void rodti_table_show(const table_cell *cell, char shown[TABLE_SHOWN_SIZE]);

/* The readers of cells. An empty cell gives "not given". Each returns false after it reported a fault;
 * *out is as it was then. */
bool rodti_table_length(table_reader *reader, size_t column, rodt_unit unit, rodt_length *out);
bool rodti_table_pressure(table_reader *reader, size_t column, rodt_pressure *out);
bool rodti_table_ratio(table_reader *reader, size_t column, rodt_ratio *out);
/* A number without a unit and without the bounds of a reading. */
bool rodti_table_number(table_reader *reader, size_t column, rodt_ratio *out);
bool rodti_table_date(table_reader *reader, size_t column, rodt_date *out);

/* A word of an enumeration whose numbers have no gap, from its enumerator `first` on; an empty cell gives 0. */
bool rodti_table_name(table_reader *reader, size_t column, const rodt_enumeration *of, uint32_t first, uint32_t *out);

/* One of the words, as its place in the list; an empty cell gives the first. */
bool rodti_table_word(table_reader *reader, size_t column, const char *const *words, size_t count, unsigned *out);

#endif
