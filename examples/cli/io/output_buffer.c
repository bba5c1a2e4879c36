/* SPDX-License-Identifier: Apache-2.0 */
/* A buffer that grows, because the output of one chunk of the input is written at once. */
#include "io/output_buffer.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

bool output_open(output *to, int descriptor)
{
    *to = (output){.buffer = malloc(OUTPUT_BLOCK), .capacity = OUTPUT_BLOCK, .descriptor = descriptor};
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

bool output_grow(output *to, size_t size)
{
    if (to->failure != 0)
        return false;
    size_t capacity = to->capacity;
    while (size > capacity - to->used)
        capacity *= 2;
    char *grown = realloc(to->buffer, capacity);
    if (grown == NULL) {
        to->failure = ENOMEM;
        return false;
    }
    to->buffer = grown;
    to->capacity = capacity;
    return true;
}

void output_bytes(output *to, const char *bytes, size_t size)
{
    if (!output_room(to, size))
        return;
    memcpy(to->buffer + to->used, bytes, size);
    to->used += size;
}

void output_text(output *to, const char *text) { output_bytes(to, text, strlen(text)); }

void output_close(output *to)
{
    free(to->buffer);
    to->buffer = NULL;
}
