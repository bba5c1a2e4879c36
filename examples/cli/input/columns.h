/* SPDX-License-Identifier: Apache-2.0 */
/* Which column of a file, or which member of a JSON object, holds which field of a wheel end. */
#ifndef COLUMNS_H
#define COLUMNS_H

#include "io/csv_reader.h"
#include "ui/options.h"

#include <rodtravel/rodtravel.h>

/* Longest heading, and longest cell, that can be read; a longer one means nothing. */
#define COLUMN_TEXT_SIZE 512
#define COLUMN_NONE ((size_t)-1)

#define FIELD_BIT(field) (1u << (unsigned)(field))
#define FIELDS_OF_READING (FIELD_BIT(RODT_READING_FIELDS) - 1u)
#define FIELDS_OF_VEHICLE (FIELDS_OF_READING | (FIELD_BIT(RODT_FIELD_END) - FIELD_BIT(RODT_FIELD_ROOM)))
#define FIELDS_NEEDED (FIELD_BIT(RODT_FIELD_NEEDED) - 1u)

/* What a command reads, and what its options say about it. */
typedef struct column_request {
    const char *heading[RODT_FIELD_END]; /* from --column; NULL = the headings of the field, "" = do not read it */
    uint32_t fields;                     /* FIELD_BITs that are read; others only if `heading` names them */
    uint32_t needed;                     /* FIELD_BITs that must be there */
    bool members;                        /* lines of JSON in place of a table */
} column_request;

/* The columns of a file. */
typedef struct columns {
    size_t column[RODT_FIELD_END]; /* COLUMN_NONE: the file does not have it */
    char heading[RODT_FIELD_END][COLUMN_TEXT_SIZE]; /* of that column */
} columns;

/* Reads every `--column FIELD=HEADING` of the command line into request->heading; FIELD is one of request->fields.
 * Returns STATUS_CONTINUE or an exit status. */
int column_request_read(const command_line *from, size_t option, column_request *request);

/* Finds the columns in a header line. Two columns of one field, a column of two fields and a needed field without a
 * column are errors, said on stderr, and so is what is no text or no CSV: false. A column that looks meant but is not
 * read is named there. The separator serves a hint. */
bool columns_find(columns *found, const column_request *request, const csv_record *header, char separator);

/* True if the record has all headings that are needed, each once at least. Says nothing. */
bool columns_are_headings(const column_request *request, const csv_record *record);

/* Finds the one column with a heading that an option names. False: none, or two, said on stderr. */
bool columns_find_heading(const csv_record *header, const char *heading, const char *option, size_t *column);

/* The text of a heading; "" if it is too long or holds a zero byte. */
void columns_heading(const csv_record *header, size_t column, char text[COLUMN_TEXT_SIZE]);

/* The same for lines of JSON, which have no header: no field has a column, and the headings are those of --column.
 * False: --column gives one name of a member to two fields. */
bool columns_of_members(columns *found, const column_request *request);

/* The field that a heading or a name is read as; RODT_FIELD_NONE = none. */
rodt_field columns_field(const column_request *request, const char *heading, size_t size);

/* The field that a heading probably means although it is not read; RODT_FIELD_NONE = none. */
rodt_field columns_meant(const column_request *request, const char *heading, size_t size);

/* Looks at the first text under a field. A text that can be no value of the field is named on stderr with the remedy,
 * and the field is read all the same. False: under "unit" it names a vehicle, so the field must not be read. */
bool columns_check_first(const column_request *request, rodt_field field, const char *text);

/* The same for every column of the first row. A column that must not be read becomes COLUMN_NONE. */
void columns_check_first_row(columns *found, const column_request *request, const csv_record *row);

/* True if a column of the file is one that columns_check_first_row looks at; otherwise nobody need wait for that
 * row. */
bool columns_need_first_row(const columns *found, const column_request *request);

/* False: a heading names another unit than the one that bare numbers are read in ("Released (mm)"), said on stderr. */
bool columns_unit_agrees(const columns *found, rodt_unit unit);

#endif
