/* SPDX-License-Identifier: Apache-2.0 */
/* Turns a stream of another encoding into UTF-8. */
#ifndef RECODE_H
#define RECODE_H

#include "io/csv_reader.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define RECODE_BLOCK 65536u

typedef enum recode_status {
    RECODE_GOOD = 0,
    RECODE_E_NAME,   /* no encoding of that name is known here */
    RECODE_E_MEMORY,
    RECODE_E_SOURCE, /* the source failed */
    RECODE_E_BYTES,  /* bytes that are no character of the encoding; `position` is the first */
    RECODE_E_CUT     /* the input ends inside a character, which begins at `position` */
} recode_status;

/* A recoder. Look at `fault` and `position` only. */
typedef struct recode {
    csv_source from;
    void *converter;
    char in[RECODE_BLOCK];
    size_t in_begin;
    size_t in_end;
    char out[RECODE_BLOCK];
    size_t out_begin;
    size_t out_end;
    bool source_done;
    bool finished;
    uint64_t position; /* in the input, from 0: of the byte at in_begin */
    recode_status fault;
} recode;

/* Makes a recoder from the encoding of that name, such as "windows-1252", to UTF-8. RECODE_GOOD,
 * RECODE_E_NAME or RECODE_E_MEMORY. Close it only if it is good. */
recode_status transcode_open(recode *stream, const char *encoding, csv_source from);

/* The recoded stream. It fails behind the last good character; then its fault says why. */
csv_source transcode_source(recode *stream);

void transcode_close(recode *stream);

#endif
