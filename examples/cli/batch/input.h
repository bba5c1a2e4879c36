/* SPDX-License-Identifier: Apache-2.0 */
/* The input of `rodtravel batch`: a file or standard input, compressed or not, in UTF-8 or another encoding. */
#ifndef BATCH_INPUT_H
#define BATCH_INPUT_H

#include "io/decompress.h"
#include "io/transcode.h"

#include <stdbool.h>
#include <stdint.h>

/* Look at `name` and `descriptor` only. */
typedef struct batch_input {
    const char *name; /* as messages call it */
    int descriptor;
    int error;        /* errno of a read that failed */
    bool waits;       /* it is no file: reads may block */
    uint64_t size;    /* of a file; 0 = not known */
    uint64_t bytes_read;
    decompressor *decompressor;
    const char *encoding;
    transcoder *transcoder; /* NULL: the bytes are UTF-8, unchecked */
} batch_input;

/* Opens a file, or standard input for "-". encoding may be NULL. False: said on stderr. */
bool batch_input_open(batch_input *input, const char *file, const char *encoding);

csv_source batch_input_source(batch_input *input);

/* Prints why the source failed. */
void batch_input_explain(const batch_input *input);

/* True for a file that is too small for a second thread. */
bool batch_input_is_small(const batch_input *input);

void batch_input_close(batch_input *input);

#endif
