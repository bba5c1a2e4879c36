/* SPDX-License-Identifier: Apache-2.0 */
/* A file of rows or standard input, compressed or not, in UTF-8 or another encoding. */
#ifndef INPUT_FILE_H
#define INPUT_FILE_H

#include "io/decompress.h"
#include "io/transcode.h"

#include <stdbool.h>
#include <stdint.h>

/* Look at `name` and `descriptor` only. */
typedef struct input_file {
    const char *name; /* as messages call it */
    int descriptor;
    int error;        /* errno of a read that failed */
    bool waits;       /* it is no file: reads may block */
    uint64_t size;    /* of a file; 0 = not known */
    uint64_t bytes_read;
    decompressor *decompressor;
    const char *encoding;
    transcoder *transcoder; /* NULL: the bytes are UTF-8, unchecked */
} input_file;

/* Opens a file, or standard input for "-". encoding may be NULL. False: said on stderr. */
bool input_file_open(input_file *input, const char *file, const char *encoding);

csv_source input_file_source(input_file *input);

/* Prints why the source failed; rows_written = what was read before came out as rows. */
void input_file_explain(const input_file *input, bool rows_written);

/* True for a file that is too small for a second thread. */
bool input_file_is_small(const input_file *input);

void input_file_close(input_file *input);

#endif
