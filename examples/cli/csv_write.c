/* SPDX-License-Identifier: Apache-2.0 */
/* The buffered writer. */
#include "csv_write.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#define BUFFER_SIZE ((size_t)256 << 10)

bool csv_writer_open(csv_writer *writer, int descriptor)
{
    *writer = (csv_writer){.descriptor = descriptor, .buffer = malloc(BUFFER_SIZE)};
    return writer->buffer != NULL;
}

void csv_writer_close(csv_writer *writer)
{
    free(writer->buffer);
    writer->buffer = NULL;
}

static void send_bytes(csv_writer *writer, const char *bytes, size_t size)
{
    while (size > 0 && writer->error == 0) {
        ssize_t sent = write(writer->descriptor, bytes, size);
        if (sent < 0 && errno != EINTR)
            writer->error = errno;
        if (sent > 0) {
            bytes += sent;
            size -= (size_t)sent;
        }
    }
}

bool csv_flush(csv_writer *writer)
{
    send_bytes(writer, writer->buffer, writer->used);
    writer->used = 0;
    return writer->error == 0;
}

void csv_write(csv_writer *writer, const char *bytes, size_t size)
{
    if (size > BUFFER_SIZE - writer->used)
        csv_flush(writer);
    if (size > BUFFER_SIZE) {
        send_bytes(writer, bytes, size);
        return;
    }
    memcpy(writer->buffer + writer->used, bytes, size);
    writer->used += size;
}

void csv_write_text(csv_writer *writer, const char *text) { csv_write(writer, text, strlen(text)); }

void csv_write_repeated(csv_writer *writer, char byte, size_t count)
{
    for (size_t i = 0; i < count; i++)
        csv_write(writer, &byte, 1);
}
