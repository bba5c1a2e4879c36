/* SPDX-License-Identifier: Apache-2.0 */
/* Collects bytes in memory, writes them to a file descriptor on request, and keeps the first failure. */
#ifndef OUTPUT_BUFFER_H
#define OUTPUT_BUFFER_H

#include "ui/compiler.h"

#include <stdbool.h>
#include <stddef.h>

/* Bytes that should be collected before they are written. */
#ifndef OUTPUT_BLOCK /* a test makes it small */
#define OUTPUT_BLOCK ((size_t)256 << 10)
#endif

#define OUTPUT_NOWHERE (-1)

typedef struct output {
    char *buffer;
    size_t used;
    size_t capacity;
    int descriptor; /* OUTPUT_NOWHERE = what is collected is dropped */
    int failure; /* errno of what failed first, a write or the memory; 0 = nothing. Nothing is written after it */
} output;

/* False: no memory. */
bool output_open(output *to, int descriptor);

void output_bytes(output *to, const char *bytes, size_t size);
void output_text(output *to, const char *text);

/* Makes room for `size` bytes more. False: no memory, or something failed before. */
bool output_grow(output *to, size_t size);
ALWAYS_INLINE bool output_room(output *to, size_t size)
{
    return (size <= to->capacity - to->used && to->failure == 0) || output_grow(to, size);
}

/* Writes what was collected; a file gets all of it or nothing. True if every byte so far has been written. */
bool output_flush(output *to);

/* Frees the buffer; flush before. */
void output_close(output *to);

#endif
