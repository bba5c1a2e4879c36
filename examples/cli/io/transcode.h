/* SPDX-License-Identifier: Apache-2.0 */
/* Converts a stream of another encoding to UTF-8. */
#ifndef TRANSCODE_H
#define TRANSCODE_H

#include "io/csv_reader.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define TRANSCODE_BLOCK 65536u

typedef enum transcode_status {
    TRANSCODE_OK = 0,
    TRANSCODE_E_NAME,   /* no known encoding has that name */
    TRANSCODE_E_MEMORY,
    TRANSCODE_E_SOURCE, /* the source failed */
    TRANSCODE_E_BYTES,  /* bytes that are no character of the encoding; `position` is the first */
    TRANSCODE_E_CUT     /* the input ends inside a character, which begins at `position` */
} transcode_status;

/* Read `fault` and `position` only. */
typedef struct transcoder {
    csv_source from;
    void *converter;
    char in[TRANSCODE_BLOCK];
    size_t in_begin;
    size_t in_end;
    char out[TRANSCODE_BLOCK];
    size_t out_begin;
    size_t out_end;
    bool source_done;
    bool finished;
    uint64_t position; /* in the input, from 0: of the byte at in_begin */
    transcode_status fault;
} transcoder;

/* Opens a stream from the encoding of that name, such as "windows-1252", to UTF-8. TRANSCODE_OK,
 * TRANSCODE_E_NAME or TRANSCODE_E_MEMORY. Close it only if it was opened. */
transcode_status transcode_open(transcoder *stream, const char *encoding, csv_source from);

/* The converted stream. It fails after the last valid character; then its fault says why. */
csv_source transcode_source(transcoder *stream);

void transcode_close(transcoder *stream);

#endif
