/* SPDX-License-Identifier: Apache-2.0 */
/* Writes bytes to a file descriptor through one large buffer, and remembers the first failure. */
#ifndef OUTPUT_H
#define OUTPUT_H

#include <stdbool.h>
#include <stddef.h>

typedef struct output {
    char *buffer;
    size_t used;
    int descriptor;
    int failure; /* errno of the first write that failed; 0 = none. Nothing is written after it */
} output;

/* False: no memory. */
bool output_open(output *to, int descriptor);

void output_bytes(output *to, const char *bytes, size_t size);
void output_text(output *to, const char *text);

/* Writes what is held back. True if every byte so far has been written. */
bool output_flush(output *to);

/* Frees the buffer; flush before. */
void output_close(output *to);

#endif
