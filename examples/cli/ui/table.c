/* SPDX-License-Identifier: Apache-2.0 */
/* A table, or a block for each of its rows. */
#include "ui/table.h"
#include "ui/language.h"
#include "ui/utf8.h"
#include "ui/wrap.h"

#include <stdbool.h>
#include <stdio.h>
#include <string.h>

#define ROW_SIZE ((size_t)400)
#define BLOCK_INDENT 4u

/* A heading of another language can be wider than its column. */
static unsigned column_width(const table_column *column)
{
    unsigned least = columns_of_text(say(column->heading)) + 1;
    return column->width > least ? column->width : least;
}

static bool fits(FILE *to, const table_column *columns, size_t count)
{
    unsigned width = 0;
    for (size_t i = 0; i < count; i++)
        width += i + 1 < count ? column_width(&columns[i]) : columns[i].width;
    return width < line_width(to);
}

/* The cells before the last one, padded. Returns the column after them. */
static unsigned join(const table_column *columns, size_t count, const char *const *cells, char line[ROW_SIZE])
{
    unsigned column = 0;
    size_t used = 0;
    for (size_t i = 0; i + 1 < count && used < ROW_SIZE; i++) {
        unsigned width = columns_of_text(cells[i]), least = width + 1, usual = column_width(&columns[i]);
        unsigned wanted = usual > least ? usual : least;
        used += (size_t)snprintf(line + used, ROW_SIZE - used, "%s%*s", cells[i], (int)(wanted - width), "");
        column += wanted;
    }
    return column;
}

void print_table_head(FILE *to, const table_column *columns, size_t count)
{
    const char *headings[16];
    char line[ROW_SIZE];
    if (!fits(to, columns, count))
        return;
    for (size_t i = 0; i < count; i++)
        headings[i] = say(columns[i].heading);
    join(columns, count, headings, line);
    fprintf(to, "%s%s\n", line, headings[count - 1]);
}

static void print_block(FILE *to, const table_column *columns, size_t count, const char *const *cells, int paint)
{
    char line[ROW_SIZE] = "";
    size_t end = paint == TABLE_PLAIN ? count : count - 1;
    fputs(cells[0], to);
    if (paint != TABLE_PLAIN) {
        fputs("  ", to);
        print_painted(to, (paint_kind)paint, cells[count - 1]);
    }
    fputc('\n', to);
    for (size_t i = 1, used = 0; i < end && used < ROW_SIZE; i++) {
        if (cells[i][0] != '\0' && strcmp(cells[i], "-") != 0)
            used += (size_t)snprintf(line + used, ROW_SIZE - used, "%s%s%s%s", used > 0 ? ", " : "",
                                     say(columns[i].label), columns[i].label[0] == '\0' ? "" : " ", cells[i]);
    }
    print_wrapped(to, "", BLOCK_INDENT, line);
}

void print_table_row(FILE *to, const table_column *columns, size_t count, const char *const *cells, int paint)
{
    char line[ROW_SIZE];
    if (!fits(to, columns, count)) {
        print_block(to, columns, count, cells, paint);
        return;
    }
    unsigned column = join(columns, count, cells, line);
    const char *last = cells[count - 1];
    if (paint == TABLE_PLAIN && column + columns_of_text(last) >= line_width(to)) {
        print_wrapped(to, line, column, last);
        return;
    }
    fputs(line, to);
    if (paint == TABLE_PLAIN)
        fputs(last, to);
    else
        print_painted(to, (paint_kind)paint, last);
    fputc('\n', to);
}
