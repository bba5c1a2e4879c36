/* SPDX-License-Identifier: Apache-2.0 */
/* Whether a file is the text that it is taken for, and a line of it a comment. */
#ifndef TEXT_FILE_H
#define TEXT_FILE_H

#include "io/csv_reader.h"

/* True if the first record of a file is text. Otherwise what it is, and the way out, is said on stderr. */
bool text_file_begins(const csv_record *record);

/* A line of answers that says nothing: a "#" with a blank or nothing behind it. A spreadsheet's "#REF!" is an answer
 * that nobody can read. */
static inline bool text_is_comment(const char *line)
{
    return line[0] == '#' && (line[1] == '\0' || line[1] == ' ' || line[1] == '\t');
}

#endif
