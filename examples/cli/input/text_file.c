/* SPDX-License-Identifier: Apache-2.0 */
/* Whether a file is the text that it is taken for. */
#include "input/text_file.h"
#include "ui/compiler.h"
#include "ui/language.h"
#include "ui/message.h"

#include <string.h>

/* Files that are often taken for tables of text, by their first bytes, and the way out. */
static const struct {
    const char *magic, *sentence;
} other_files[] = {
    {"\xFF\xFE", TO_SAY("this is UTF-16 text: say --encoding utf-16")},
    {"\xFE\xFF", TO_SAY("this is UTF-16 text: say --encoding utf-16")},
    {"PK\x03\x04", TO_SAY("this is a workbook or another archive, not text: save the sheet as CSV (UTF-8) first")},
    {"\xD0\xCF\x11\xE0", TO_SAY("this is an old workbook, not text: save the sheet as CSV (UTF-8) first")},
    {"PAR1", TO_SAY("this is a Parquet file, not text: judge it in Python, as examples/python/parquet_file.py does")},
    {"ARROW1", TO_SAY("this is an Arrow file, not text: judge it in Python, as examples/python/parquet_file.py does")},
    {"\xFF\xFF\xFF\xFF", /* an Arrow stream */
     TO_SAY("this is an Arrow file, not text: judge it in Python, as examples/python/parquet_file.py does")},
    {"SQLite format 3", TO_SAY("this is a database, not text: write the table as CSV first")}};

bool text_file_begins(const csv_record *record)
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
