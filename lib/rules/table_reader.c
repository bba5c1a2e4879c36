/* SPDX-License-Identifier: Apache-2.0 */
/* Reads a table of the project. The compiler of the released tables and the loader of a carrier's own
 * limits use it, so that both understand a file in the same way. */
#include "rules/table_reader.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

static void report(table_reader *reader, rodt_error *fault)
{
    reader->valid = false;
    reader->on_fault(reader->context, fault);
}

static void name_field(rodt_error *fault, const char *name)
{
    size_t size = strlen(name);
    if (size >= sizeof fault->field)
        size = sizeof fault->field - 1;
    memcpy(fault->field, name, size);
    fault->field[size] = '\0';
}

static void fault_at(table_reader *reader, uint32_t line, uint32_t column, rodt_status status,
                     const char *field, const char *format, va_list arguments) PRINTF_LIKE(6, 0);

static void fault_at(table_reader *reader, uint32_t line, uint32_t column, rodt_status status,
                     const char *field, const char *format, va_list arguments)
{
    char sentence[2 * RODT_ERROR_TEXT_SIZE]; /* rodti_text_error cuts it to size between two characters */
    vsnprintf(sentence, sizeof sentence, format, arguments);
    rodt_error fault;
    rodti_text_error(&fault, status, column, "%s", sentence);
    fault.line = line;
    name_field(&fault, field);
    report(reader, &fault);
}

void rodti_table_fault(table_reader *reader, size_t column, uint32_t at, rodt_status status, const char *format, ...)
{
    uint32_t start = reader->cells[column].column;
    va_list arguments;
    va_start(arguments, format);
    fault_at(reader, reader->line, start == 0 ? 0 : start + at - 1, status, reader->columns[column].name, format,
             arguments);
    va_end(arguments);
}

void rodti_table_value_fault(table_reader *reader, size_t column, const rodt_error *error)
{
    rodt_error fault = *error;
    uint32_t start = reader->cells[column].column;
    fault.status = RODT_E_TABLE;
    fault.line = reader->line;
    fault.column = start == 0 || error->column == 0 ? start : start + error->column - 1;
    name_field(&fault, reader->columns[column].name);
    report(reader, &fault);
}

void rodti_table_row_fault(table_reader *reader, uint32_t line, rodt_status status, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    fault_at(reader, line, 0, status, "", format, arguments);
    va_end(arguments);
}

static void line_fault(table_reader *reader, uint32_t column, const char *format, ...) PRINTF_LIKE(3, 4);

static void line_fault(table_reader *reader, uint32_t column, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    fault_at(reader, reader->line, column, RODT_E_TABLE, "", format, arguments);
    va_end(arguments);
}

/* Takes the next line off the text; false at the end. The line end is not part of it. */
static bool take_line(table_reader *reader, const char **line, size_t *size)
{
    if (reader->at == reader->end)
        return false;
    size_t left = (size_t)(reader->end - reader->at);
    const char *stop = memchr(reader->at, '\n', left);
    size_t length = stop == NULL ? left : (size_t)(stop - reader->at);
    *line = reader->at;
    reader->at += stop == NULL ? length : length + 1;
    reader->line++;
    if (length > 0 && (*line)[length - 1] == '\r')
        length--;
    *size = length;
    return true;
}

/* A spreadsheet's "#REF!" is a cell that nobody can read, and its row is not lost. */
static bool is_comment(const char *line, size_t size)
{
    return size > 0 && line[0] == '#' && (size == 1 || line[1] == ' ' || line[1] == '\t' || line[1] == '\r');
}

bool rodti_table_ignores(const char *line, size_t size)
{
    if (is_comment(line, size))
        return true;
    rodti_text_trim(&line, &size);
    return size == 0;
}

/* The next line that holds cells; false at the end. One that is too long is reported and passed over. */
static bool take_row(table_reader *reader, const char **line, size_t *size)
{
    while (take_line(reader, line, size)) {
        if (rodti_table_ignores(*line, *size))
            continue;
        if (*size <= TABLE_LINE_MAX)
            return true;
        line_fault(reader, 0, "the line is longer than %d bytes", TABLE_LINE_MAX);
    }
    return false;
}

/* A line while it is split into cells. What is kept of it is never longer than it was, and a closing zero
 * byte replaces a comma, so line_text always has room. */
typedef struct splitter {
    text_cursor cursor;
    char *kept;
} splitter;

static bool is_valid(uint32_t code) { return code != TEXT_BAD && (code >= ' ' || code == '\t'); }

static bool keep(table_reader *reader, splitter *split)
{
    text_cursor *cursor = &split->cursor;
    if (!is_valid(cursor->code)) {
        line_fault(reader, cursor->column, "a byte that is no text; save the table as UTF-8");
        return false;
    }
    memcpy(split->kept, cursor->at, cursor->bytes);
    split->kept += cursor->bytes;
    rodti_text_next(cursor);
    return true;
}

static bool keep_plain(table_reader *reader, splitter *split)
{
    while (split->cursor.code != ',' && split->cursor.code != TEXT_END) {
        if (split->cursor.code == '"') {
            line_fault(reader, split->cursor.column, "a double quote inside a cell; put the whole cell in quotes"
                                                     " and write the quote twice");
            return false;
        }
        if (!keep(reader, split))
            return false;
    }
    return true;
}

/* Keeps what is between the quotes; false without a closing quote. */
static bool keep_to_quote(table_reader *reader, splitter *split)
{
    text_cursor *cursor = &split->cursor;
    uint32_t opened = cursor->column;
    rodti_text_next(cursor);
    while (cursor->code != TEXT_END) {
        if (cursor->code == '"') {
            rodti_text_next(cursor);
            if (cursor->code != '"')
                return true;
        }
        if (!keep(reader, split))
            return false;
    }
    line_fault(reader, opened, "the quote that opens here is not closed on its line");
    return false;
}

static bool keep_quoted(table_reader *reader, splitter *split)
{
    if (!keep_to_quote(reader, split))
        return false;
    rodti_text_skip_blanks(&split->cursor);
    if (split->cursor.code == ',' || split->cursor.code == TEXT_END)
        return true;
    line_fault(reader, split->cursor.column, "expected a comma after the closing quote");
    return false;
}

/* Blanks around a text do not count; the column is then that of its first character. */
static table_cell trimmed(const char *text, size_t size, uint32_t column)
{
    text_cursor cursor;
    rodti_text_start(&cursor, text, size);
    rodti_text_skip_blanks(&cursor);
    rodti_text_trim(&text, &size);
    return (table_cell){text, size, column + cursor.column - 1};
}

static bool keep_cell(table_reader *reader, splitter *split, table_cell *cell)
{
    rodti_text_skip_blanks(&split->cursor);
    char *text = split->kept;
    uint32_t column = split->cursor.column;
    bool quoted = split->cursor.code == '"';
    if (!(quoted ? keep_quoted(reader, split) : keep_plain(reader, split)))
        return false;
    *cell = trimmed(text, (size_t)(split->kept - text), quoted ? column + 1 : column);
    text[cell->text - text + (ptrdiff_t)cell->size] = '\0';
    *split->kept++ = '\0';
    return true;
}

/* Splits a line into at most TABLE_FIELDS_MAX cells; 0 after a fault. */
static size_t split_line(table_reader *reader, const char *line, size_t size, table_cell *cells)
{
    splitter split = {.kept = reader->line_text};
    rodti_text_start(&split.cursor, line, size);
    for (size_t count = 0; count < TABLE_FIELDS_MAX; count++) {
        if (!keep_cell(reader, &split, &cells[count]))
            return 0;
        if (split.cursor.code == TEXT_END)
            return count + 1;
        rodti_text_next(&split.cursor);
    }
    line_fault(reader, split.cursor.column, "more than %d cells", TABLE_FIELDS_MAX);
    return 0;
}

/* Invisible characters are named, blanks excepted. */
void rodti_table_show(const table_cell *cell, char shown[TABLE_SHOWN_SIZE])
{
    text_cursor cursor;
    size_t used = 0;
    rodti_text_start(&cursor, cell->text, cell->size);
    for (; cursor.code != TEXT_END && used + TEXT_SHOWN_SIZE <= TABLE_SHOWN_SIZE; rodti_text_next(&cursor)) {
        if (cursor.code == ' ') {
            shown[used++] = ' ';
            continue;
        }
        rodti_text_show(cursor.code, shown + used);
        used += strlen(shown + used);
    }
    shown[used] = '\0';
}

static size_t find_column(const table_reader *reader, const char *name)
{
    size_t i = 0;
    while (i < reader->column_count && strcmp(reader->columns[i].name, name) != 0)
        i++;
    return i;
}

/* Records which column of the reader's list a cell of the line of names begins. */
static void map_column(table_reader *reader, size_t field, const table_cell *cell)
{
    size_t column = find_column(reader, cell->text);
    reader->column_of_field[field] = column;
    char shown[TABLE_SHOWN_SIZE];
    rodti_table_show(cell, shown);
    if (column == reader->column_count) {
        bool semicolons = memchr(cell->text, ';', cell->size) != NULL;
        line_fault(reader, cell->column, "no column is called \"%s\"%s", shown,
                   semicolons ? "; cells must be separated by commas, not by semicolons" : "");
        return;
    }
    if (reader->cells[column].column != 0)
        line_fault(reader, cell->column, "the column \"%s\" is there twice", shown);
    reader->cells[column].column = cell->column;
}

static void map_columns(table_reader *reader, const table_cell *names)
{
    for (size_t field = 0; field < reader->field_count; field++)
        map_column(reader, field, &names[field]);
    for (size_t i = 0; i < reader->column_count; i++) {
        if (reader->columns[i].required && reader->cells[i].column == 0)
            line_fault(reader, 0, "the column \"%s\" is missing", reader->columns[i].name);
    }
}

const char *rodti_table_after_mark(const char *text, size_t size)
{
    static const char mark[] = {'\xEF', '\xBB', '\xBF'};
    return size >= sizeof mark && memcmp(text, mark, sizeof mark) == 0 ? text + sizeof mark : text;
}

bool rodti_table_open(table_reader *reader, const char *text, size_t size, const table_column *columns,
                size_t column_count, table_on_fault *on_fault, void *context)
{
    memset(reader, 0, sizeof *reader);
    reader->at = rodti_table_after_mark(text, size);
    reader->end = text + size;
    reader->columns = columns;
    reader->column_count = column_count;
    reader->on_fault = on_fault;
    reader->context = context;
    reader->valid = true;
    const char *line;
    size_t line_size;
    if (!take_row(reader, &line, &line_size)) {
        rodti_table_row_fault(reader, 0, RODT_E_TABLE, "the table is empty: there is no line that names the columns");
        return false;
    }
    table_cell names[TABLE_FIELDS_MAX];
    reader->field_count = split_line(reader, line, line_size, names);
    if (reader->field_count > 0)
        map_columns(reader, names);
    return reader->valid;
}

static bool has_required_cells(table_reader *reader)
{
    bool complete = true;
    for (size_t i = 0; i < reader->column_count; i++) {
        if (reader->columns[i].required && table_empty(reader, i)) {
            rodti_table_fault(reader, i, 1, RODT_E_TABLE, "the cell is empty");
            complete = false;
        }
    }
    return complete;
}

/* Splits a line and sorts its cells by column. */
static bool sort_cells(table_reader *reader, const char *line, size_t size)
{
    table_cell fields[TABLE_FIELDS_MAX];
    size_t count = split_line(reader, line, size, fields);
    if (count == 0)
        return false;
    if (count != reader->field_count) {
        line_fault(reader, 0, "expected %u cells, as many as there are columns, but there are %u",
                   (unsigned)reader->field_count, (unsigned)count);
        return false;
    }
    for (size_t i = 0; i < reader->column_count; i++)
        reader->cells[i].text = "";
    for (size_t field = 0; field < count; field++)
        reader->cells[reader->column_of_field[field]] = fields[field];
    return has_required_cells(reader);
}

bool rodti_table_next(table_reader *reader)
{
    const char *line;
    size_t size;
    while (take_row(reader, &line, &size)) {
        if (sort_cells(reader, line, size))
            return true;
    }
    return false;
}
