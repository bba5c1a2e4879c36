/* SPDX-License-Identifier: Apache-2.0 */
/* Tables whose rows become blocks where the lines are too narrow for them. */
#ifndef TABLE_H
#define TABLE_H

#include <stdio.h>

typedef struct table_column {
    const char *heading;
    const char *label; /* before the cell in a block */
    unsigned width; /* with the blanks after it; of the last column the least that is good to read */
} table_column;

#define TABLE_PLAIN (-1) /* the last cell has no colour of its own */

void print_table_head(FILE *to, const table_column *columns, size_t count);

/* One row. The last cell is in the colour of a paint_kind, or TABLE_PLAIN and folds. In a block the first cell is the
 * title, with the last one beside it if that has a colour; cells that are "" or "-" are left out. */
void print_table_row(FILE *to, const table_column *columns, size_t count, const char *const *cells, int paint);

#endif
