/* SPDX-License-Identifier: Apache-2.0 */
/* Reads a stream that may be compressed by gzip or Zstandard; its first bytes tell. */
#ifndef DECOMPRESS_H
#define DECOMPRESS_H

#include "io/csv_reader.h"

#include <stdbool.h>
#include <stddef.h>

#define DECOMPRESS_BLOCK 65536u

typedef enum decompress_status {
    DECOMPRESS_OK = 0,
    DECOMPRESS_E_ABSENT, /* this build has no library for it */
    DECOMPRESS_E_MEMORY,
    DECOMPRESS_E_SOURCE, /* the source failed */
    DECOMPRESS_E_BYTES,  /* the compressed bytes are damaged */
    DECOMPRESS_E_CUT     /* they end too early */
} decompress_status;

/* Read `fault` and `format` only. */
typedef struct decompressor {
    csv_source from;
    const struct compression *format; /* NULL: the bytes are taken as they are */
    void *state;
    size_t begin, end; /* what of `in` has been read and not yet taken */
    bool is_probed;
    bool source_done;
    bool inside; /* a member began and has not ended */
    decompress_status fault;
    unsigned char in[DECOMPRESS_BLOCK]; /* the last: it is not cleared at the start */
} decompressor;

/* Close it in any case. */
void decompress_open(decompressor *stream, csv_source from);

/* The bytes. It fails after the last good one; then the fault of the stream says why. */
csv_source decompress_source(decompressor *stream);

/* "gzip" or "Zstandard"; "" for what is not compressed. */
const char *decompress_format(const decompressor *stream);

void decompress_close(decompressor *stream);

#endif
