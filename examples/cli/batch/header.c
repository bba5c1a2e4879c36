/* SPDX-License-Identifier: Apache-2.0 */
/* The header line of a file for `rodtravel batch`: its columns, and whether a record further down repeats it. */
#include "batch/header.h"
#include "ui/compiler.h"
#include "ui/language.h"
#include "ui/message.h"

#include <stdlib.h>
#include <string.h>

bool batch_header_read(batch_header *header, const csv_record *record, const column_request *request, char separator)
{
    header->count = record->count;
    header->size = record->size;
    header->bytes = malloc(record->size + 1);
    if (header->bytes == NULL) {
        print_error("no memory");
        return false;
    }
    memcpy(header->bytes, record->bytes, record->size);
    return columns_find(&header->columns, request, record, separator);
}

void batch_header_free(batch_header *header) { free(header->bytes); }

bool batch_header_is_repeated(const batch_header *header, const csv_record *record)
{
    return record->size == header->size && memcmp(record->bytes, header->bytes, header->size) == 0;
}

static bool is_heading(const csv_record *record, size_t column, const char *heading)
{
    char text[COLUMN_TEXT_SIZE];
    columns_heading(record, column, text);
    return rodt_heading_equal(text, strlen(text), heading, strlen(heading));
}

static bool has_heading(const csv_record *record, const char *heading)
{
    size_t i = 0;
    while (i < record->count && !is_heading(record, i, heading))
        i++;
    return i < record->count;
}

/* Separators without a heading at the end of a line name no other column. */
static bool names_more_columns(const batch_header *header, const csv_record *record)
{
    size_t i = header->count;
    while (i < record->count && is_heading(record, i, ""))
        i++;
    return i < record->count;
}

batch_repeat batch_header_compare(const batch_header *header, const csv_record *record)
{
    const columns *read = &header->columns;
    bool same = !names_more_columns(header, record);
    for (int field = 0; field < RODT_FIELD_NEEDED; field++)
        if (!has_heading(record, read->heading[field]))
            return BATCH_NO_HEADER;
    for (int field = 0; field < RODT_FIELD_END && same; field++) {
        if (read->column[field] == COLUMN_NONE)
            continue;
        if (read->column[field] >= record->count)
            return BATCH_OTHER_HEADER;
        same = is_heading(record, read->column[field], read->heading[field]);
    }
    return same ? BATCH_SAME_HEADER : BATCH_OTHER_HEADER;
}
