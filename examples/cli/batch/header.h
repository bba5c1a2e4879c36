/* SPDX-License-Identifier: Apache-2.0 */
/* The header line of a file. */
#ifndef BATCH_HEADER_H
#define BATCH_HEADER_H

#include "batch/options.h"
#include "input/columns.h"
#include "io/csv_reader.h"

/* The header line of a file. */
typedef struct batch_header {
    columns columns;
    size_t count;
    char *bytes; /* the complete line, without its end */
    size_t size;
} batch_header;

/* Finds the columns. False: they do not fit together, said on stderr. Free it in either case. */
bool batch_header_read(batch_header *header, const csv_record *record, const column_request *request, char separator);
void batch_header_free(batch_header *header);

/* A record further down: no header; the same header again; or another one, so that no row after it can be read,
 * because two files of different columns were joined. */
typedef enum batch_repeat { BATCH_NO_HEADER, BATCH_SAME_HEADER, BATCH_OTHER_HEADER } batch_repeat;

/* Compares the bytes only. */
bool batch_header_is_repeated(const batch_header *header, const csv_record *record);
/* Compares the headings, whatever their spelling and order. */
batch_repeat batch_header_compare(const batch_header *header, const csv_record *record);

#endif
