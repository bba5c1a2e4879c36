/* SPDX-License-Identifier: Apache-2.0 */
/* The writer: short pieces are gathered, a piece as large as the buffer goes out by itself. */
#include "output.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#define OUTPUT_BLOCK ((size_t)256 << 10)

bool output_open(output *to, int descriptor)
{
    *to = (output){.buffer = malloc(OUTPUT_BLOCK), .descriptor = descriptor};
    return to->buffer != NULL;
}

static void write_out(output *to, const char *bytes, size_t size)
{
    while (size > 0 && to->failure == 0) {
        ssize_t count = write(to->descriptor, bytes, size);
        if (count < 0 && errno == EINTR)
            continue;
        if (count < 0) {
            to->failure = errno;
            return;
        }
        bytes += count;
        size -= (size_t)count;
    }
}

bool output_flush(output *to)
{
    write_out(to, to->buffer, to->used);
    to->used = 0;
    return to->failure == 0;
}

void output_bytes(output *to, const char *bytes, size_t size)
{
    if (size > OUTPUT_BLOCK - to->used)
        output_flush(to);
    if (size >= OUTPUT_BLOCK) {
        write_out(to, bytes, size);
        return;
    }
    memcpy(to->buffer + to->used, bytes, size);
    to->used += size;
}

void output_text(output *to, const char *text) { output_bytes(to, text, strlen(text)); }

void output_close(output *to)
{
    free(to->buffer);
    to->buffer = NULL;
}
