/* SPDX-License-Identifier: Apache-2.0 */
/* What functions of SQL have in common whatever the database: the order of arguments, and how results are written. */
#ifndef SQL_H
#define SQL_H

#include <rodtravel/rodtravel.h>

/* Every way in takes the same arguments in the same order: the rule set, and every field of a reading. */
#define SQL_ARGUMENTS (RODT_READING_FIELDS + 1)

/* No reader takes it: control characters are errors in every field. */
#define SQL_UNREADABLE "\x01"

/* RODT_FIELD_NONE is the rule set. */
rodt_field sql_argument_field(int argument);

/* "released"; of the rule set "rules". */
const char *sql_argument_name(int argument);

/* Room for any exact number with its closing zero byte. */
#define SQL_EXACT_SIZE 48

/* "-1/16", and "" for a denominator of zero. Returns its bytes. */
size_t sql_exact_write(int64_t num, int64_t den, char text[SQL_EXACT_SIZE]);

/* Reads what sql_exact_write writes. */
bool sql_exact_read(const char *text, size_t size, rodt_ratio *number);

/* Room for the words of all reasons, with their blanks and the closing zero byte. */
#define SQL_REASONS_SIZE 2048

/* "over-limit assumed-clamp". Returns its bytes. */
size_t sql_reasons_write(uint64_t reasons, char text[SQL_REASONS_SIZE]);

#endif
