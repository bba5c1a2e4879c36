/* SPDX-License-Identifier: Apache-2.0 */
/* A buffered writer of bytes to a file descriptor that remembers its first error. */
#ifndef CSV_WRITE_H
#define CSV_WRITE_H

#include <stdbool.h>
#include <stddef.h>

typedef struct csv_writer {
    int descriptor;
    int error; /* errno of the first write that failed; later calls do nothing */
    size_t used;
    char *buffer;
} csv_writer;

/* False: no memory. */
bool csv_writer_open(csv_writer *writer, int descriptor);

void csv_write(csv_writer *writer, const char *bytes, size_t size);
void csv_write_text(csv_writer *writer, const char *text);

/* Writes the same byte `count` times. */
void csv_write_repeated(csv_writer *writer, char byte, size_t count);

/* Sends what is held back. False: something could not be written; see `error`. */
bool csv_flush(csv_writer *writer);

void csv_writer_close(csv_writer *writer);

#endif
