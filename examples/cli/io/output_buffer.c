/* SPDX-License-Identifier: Apache-2.0 */
/* A buffer that grows, because the output of one chunk of the input is written at once. */
#include "io/output_buffer.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

bool output_open(output *to, int descriptor)
{
    *to = (output){.buffer = malloc(OUTPUT_BLOCK), .capacity = OUTPUT_BLOCK, .descriptor = descriptor};
    return to->buffer != NULL;
}

/* Returns how much was written. */
static size_t write_out(output *to)
{
    size_t written = 0;
    while (written < to->used && to->failure == 0) {
        ssize_t count = write(to->descriptor, to->buffer + written, to->used - written);
        if (count >= 0)
            written += (size_t)count;
        else if (errno != EINTR)
            to->failure = errno;
    }
    return written;
}

/* A row that was cut off can be read as another one. Only a file takes it back: what is no file has no end. */
static void take_back(const output *to, size_t written)
{
    struct stat file;
    off_t end = lseek(to->descriptor, 0, SEEK_CUR);
    if (end < (off_t)written || fstat(to->descriptor, &file) != 0 || file.st_size != end)
        return;
    if (ftruncate(to->descriptor, end - (off_t)written) == 0)
        (void)lseek(to->descriptor, end - (off_t)written, SEEK_SET);
}

bool output_flush(output *to)
{
    size_t written = to->descriptor != OUTPUT_NOWHERE ? write_out(to) : 0;
    if (to->failure != 0 && written > 0)
        take_back(to, written);
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
    if (size == 0 || !output_room(to, size)) /* nothing may be a null pointer */
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
