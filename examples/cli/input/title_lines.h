/* SPDX-License-Identifier: Apache-2.0 */
/* Lines before the header of a file: the separator as spreadsheets name it ("sep=;"), and titles. */
#ifndef TITLE_LINES_H
#define TITLE_LINES_H

#include "input/columns.h"

/* As many lines, and bytes, are looked at for a header. */
#define TITLE_LINES_MAX 30u
#define TITLE_BYTES_MAX ((size_t)64 << 10)

/* Zero before its first use. */
typedef struct title_lines {
    char *bytes; /* the lines before the header as they came, with their ends */
    size_t size;
    size_t count;
    csv_cell *cells;
} title_lines;

/* Finds the header of a file, whose first record is given: the first one that has the headings that are needed. A line
 * "sep=;" sets *separator and that of the reader, unless *separator was given on the command line (is_given). What is
 * passed over is said on stderr. Where no record is a header, the first one is it, so that the caller can say what it
 * lacks. CSV_RECORD: *header is the header, valid as long as the lines. Anything else is the fault of the reader. */
csv_status titles_pass(title_lines *lines, csv_reader *reader, const column_request *request, bool is_given,
                       char *separator, csv_record *header);

void titles_free(title_lines *lines);

#endif
