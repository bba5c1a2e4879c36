/* SPDX-License-Identifier: Apache-2.0 */
/* The header line of a file for `rodtravel batch`: its columns, and whether a record further down repeats it. */
#include "batch/header.h"
#include "ui/compiler.h"
#include "ui/language.h"
#include "ui/message.h"

#include <stdlib.h>
#include <string.h>

/* Files that are often taken for tables of text, by their first bytes, and the way out. */
static const struct {
    const char *magic, *sentence;
} other_files[] = {
    {"\xFF\xFE", TO_SAY("this is UTF-16 text: say --encoding utf-16")},
    {"\xFE\xFF", TO_SAY("this is UTF-16 text: say --encoding utf-16")},
    {"PK\x03\x04", TO_SAY("this is a workbook or another archive, not text: save the sheet as CSV (UTF-8) first")},
    {"\xD0\xCF\x11\xE0", TO_SAY("this is an old workbook, not text: save the sheet as CSV (UTF-8) first")},
    {"PAR1", TO_SAY("this is a Parquet file, not text: the Python package reads it")},
    {"ARROW1", TO_SAY("this is an Arrow file, not text: the Python package reads it")},
    {"SQLite format 3", TO_SAY("this is a database, not text: write the table as CSV first")}};

static bool is_text(const csv_record *record)
{
    for (size_t i = 0; i < COUNT_OF(other_files); i++) {
        size_t size = strlen(other_files[i].magic);
        if (record->size < size || memcmp(record->bytes, other_files[i].magic, size) != 0)
            continue;
        print_error("%s", say(other_files[i].sentence));
        return false;
    }
    if (memchr(record->bytes, '\0', record->size) == NULL)
        return true;
    print_error("this is not a text file: there are zero bytes in its first line");
    return false;
}

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
    if (!is_text(record))
        return false;
    if (record->bad_quotes) {
        print_error("the header line is not CSV: a quote is not closed, or not at the end of a cell");
        return false;
    }
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
