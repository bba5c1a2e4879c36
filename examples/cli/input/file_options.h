/* SPDX-License-Identifier: Apache-2.0 */
/* Options that say how a file of wheel ends is written. Each function returns STATUS_CONTINUE or an exit status; *out
 * is untouched if the option was not given. */
#ifndef FILE_OPTIONS_H
#define FILE_OPTIONS_H

#include "ui/options.h"

#include <rodtravel/rodtravel.h>

/* "in", "mm", "cm". */
int read_unit_option(const command_line *from, size_t option, RODT_ENUM32(rodt_unit) *out);

/* "dmy", "mdy", "ymd". */
int read_date_order_option(const command_line *from, size_t option, rodt_date_order *out);

/* What may split the cells of a line. */
#define SEPARATORS ",;\t|:!#$%&*<=>?@^_~"

/* One character that no number, fraction, date or code has in it, or the word tab. */
int read_separator_option(const command_line *from, size_t option, char *out);

#endif
