/* SPDX-License-Identifier: Apache-2.0 */
/* Bytes in memory as the source of a reader. */
#ifndef BYTE_SOURCE_H
#define BYTE_SOURCE_H

#include "io/csv_reader.h"

#include <string.h>

typedef struct given {
    const char *bytes;
    size_t size;
    size_t at;
    size_t most; /* bytes at once; 0 = as many as are wanted */
    bool fails;  /* after the last byte, in place of the end */
} given;

static inline long give(void *context, char *buffer, size_t size)
{
    given *from = context;
    size_t count = from->size - from->at < size ? from->size - from->at : size;
    if (from->most > 0 && count > from->most)
        count = from->most;
    if (count == 0 && from->fails)
        return -1;
    memcpy(buffer, from->bytes + from->at, count);
    from->at += count;
    return (long)count;
}

static inline csv_source source_of(given *from) { return (csv_source){give, from}; }

#endif
