/* SPDX-License-Identifier: Apache-2.0 */
/* Whether a file is the text that it is taken for. */
#ifndef TEXT_FILE_H
#define TEXT_FILE_H

#include "io/csv_reader.h"

/* True if the first record of a file is text. Otherwise what it is, and the way out, is said on stderr. */
bool text_file_begins(const csv_record *record);

#endif
