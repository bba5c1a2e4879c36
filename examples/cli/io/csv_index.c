/* SPDX-License-Identifier: Apache-2.0 */
/* Rows with quotes, or near them, sign by sign. */
#include "io/csv_index.h"

/* What stands behind the quote that closes the cell that begins here; NULL: none does, or a line ends before it. */
static const char *behind_quotes(const char *at)
{
    for (at++; *at != '\n' && *at != '\r' && *at != '\0'; at++) {
        if (*at != '"')
            continue;
        if (at[1] != '"')
            return at + 1;
        at++;
    }
    return NULL;
}

/* Where the cell ends that begins here; NULL: its quotes are bad, or a zero byte is in it. */
static const char *cell_end(const char *at, char separator)
{
    if (*at == '"') {
        at = behind_quotes(at);
        if (at == NULL || (*at != separator && *at != '\n' && (*at != '\r' || at[1] != '\n')))
            return NULL;
    }
    while (*at != separator && *at != '\n' && *at != '\0')
        at++;
    return *at != '\0' ? at : NULL;
}

uint32_t split_row_scalar(const char *bytes, char separator, uint32_t most, uint32_t *ends)
{
    const char *at = bytes;
    for (uint32_t count = 0; count < most; at++) {
        at = cell_end(at, separator);
        if (at == NULL)
            return 0;
        ends[count++] = (uint32_t)(at - bytes);
        if (*at == '\n')
            return count;
    }
    return 0;
}
