/* SPDX-License-Identifier: Apache-2.0 */
#include "input/title_lines.h"
#include "input/file_options.h"
#include "ui/language.h"
#include "ui/message.h"

#include <stdlib.h>
#include <string.h>

void titles_free(title_lines *lines)
{
    free(lines->bytes);
    free(lines->cells);
    *lines = (title_lines){0};
}

/* False: no memory. */
static bool keep_line(title_lines *lines, const csv_record *record)
{
    size_t size = record->size + record->line_end_size;
    char *grown = realloc(lines->bytes, lines->size + size + 1);
    if (grown == NULL)
        return false;
    lines->bytes = grown;
    memcpy(grown + lines->size, record->bytes, record->size);
    memcpy(grown + lines->size + record->size, record->line_end, record->line_end_size);
    lines->size += size;
    lines->count++;
    return true;
}

/* Copies the cells of the first record; its bytes are the first ones that are kept. */
static bool keep_first(title_lines *lines, const csv_record *record)
{
    lines->cells = malloc(record->count * sizeof *lines->cells);
    if (lines->cells == NULL)
        return false;
    memcpy(lines->cells, record->cells, record->count * sizeof *lines->cells);
    return keep_line(lines, record);
}

/* The separator that the line names; 0 = it is no such line. */
static char named_separator(const csv_record *record)
{
    const char *text = record->bytes;
    bool is_named = record->size == 5 && rodt_heading_equal(text, 3, "sep", 3) && text[3] == '=';
    return is_named && strchr(SEPARATORS, text[4]) != NULL && text[4] != '\0' ? text[4] : '\0';
}

static csv_status take_separator(title_lines *lines, csv_reader *reader, bool is_given, char *separator,
                                 csv_record *header)
{
    char named = named_separator(header);
    if (named == '\0')
        return CSV_RECORD;
    print_error("line %llu: \"sep=%c\" names the separator", (unsigned long long)header->line, named);
    if (is_given && named != *separator)
        print_error("--separator says another one, which is used");
    else
        csv_set_separator(reader, *separator = named);
    return keep_line(lines, header) ? csv_next(reader, header) : CSV_E_MEMORY;
}

/* The record that was kept first, behind what was kept before it. */
static csv_record first_record(const title_lines *lines, size_t at, const csv_record *first)
{
    csv_record record = *first;
    record.bytes = lines->bytes + at;
    record.line_end = record.bytes + first->size;
    record.cells = lines->cells;
    return record;
}

/* Reads on to a record that is a header. CSV_END: there is none near the start. */
static csv_status read_on(title_lines *lines, csv_reader *reader, const column_request *request, csv_record *header)
{
    csv_status status = CSV_RECORD;
    while (status == CSV_RECORD && lines->count < TITLE_LINES_MAX && lines->size < TITLE_BYTES_MAX) {
        status = csv_next(reader, header);
        if (status == CSV_RECORD && columns_are_headings(request, header))
            return CSV_RECORD;
        if (status == CSV_RECORD && !keep_line(lines, header))
            return CSV_E_MEMORY;
    }
    return status == CSV_E_MEMORY || status == CSV_E_SOURCE ? status : CSV_END;
}

static csv_status pass_titles(title_lines *lines, csv_reader *reader, const column_request *request, csv_record *header)
{
    const csv_record first = *header;
    size_t before = lines->count, at = lines->size;
    if (columns_are_headings(request, header) || memchr(header->bytes, '\0', header->size) != NULL)
        return CSV_RECORD;
    if (!keep_first(lines, header))
        return CSV_E_MEMORY;
    csv_status status = read_on(lines, reader, request, header);
    if (status == CSV_RECORD)
        print_error(say_number("line %llu holds the headings; %llu line before it is not read",
                               "line %llu holds the headings; %llu lines before it are not read",
                               (unsigned long)(lines->count - before)),
                    (unsigned long long)header->line, (unsigned long long)(lines->count - before));
    else if (status == CSV_END)
        *header = first_record(lines, at, &first);
    return status == CSV_END ? CSV_RECORD : status;
}

csv_status titles_pass(title_lines *lines, csv_reader *reader, const column_request *request, bool is_given,
                       char *separator, csv_record *header)
{
    csv_status status = take_separator(lines, reader, is_given, separator, header);
    return status == CSV_RECORD ? pass_titles(lines, reader, request, header) : status;
}
