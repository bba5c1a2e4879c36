/* SPDX-License-Identifier: Apache-2.0 */
/* The recoder: iconv between two blocks of its own, so that a character never has to fit what is asked for. */
#include "recode.h"

#include <errno.h>
#include <iconv.h>
#include <string.h>

recode_status recode_open(recode *recode, const char *encoding, csv_source from)
{
    /* An empty name would be the encoding of the surroundings; behind a slash stand wishes, such as to leave
     * out what cannot be read. Neither is a name. */
    if (encoding[0] == '\0' || strchr(encoding, '/') != NULL)
        return RECODE_E_NAME;
    memset(recode, 0, sizeof *recode);
    recode->from = from;
    errno = 0;
    iconv_t converter = iconv_open("UTF-8", encoding);
    if (converter == (iconv_t)-1)
        return errno == EINVAL ? RECODE_E_NAME : RECODE_E_MEMORY;
    recode->converter = converter;
    return RECODE_GOOD;
}

void recode_close(recode *recode) { iconv_close((iconv_t)recode->converter); }

static void refill(recode *recode)
{
    size_t rest = recode->in_end - recode->in_begin;
    memmove(recode->in, recode->in + recode->in_begin, rest);
    recode->in_begin = 0;
    recode->in_end = rest;
    long got = recode->from.read(recode->from.context, recode->in + rest, RECODE_BLOCK - rest);
    if (got < 0)
        recode->fault = RECODE_E_SOURCE;
    else if (got == 0)
        recode->source_done = true;
    else
        recode->in_end += (size_t)got;
}

/* The converter is told the end once: an encoding with shifts may hold something back. */
static void finish(recode *recode, char *out, size_t room)
{
    size_t left = room;
    iconv((iconv_t)recode->converter, NULL, NULL, &out, &left);
    recode->out_end += room - left;
    recode->finished = true;
}

/* Takes input through the converter into the empty out block. */
static void convert(recode *recode)
{
    char *in = recode->in + recode->in_begin;
    char *out = recode->out;
    size_t in_left = recode->in_end - recode->in_begin;
    size_t out_left = sizeof recode->out;
    size_t answer = iconv((iconv_t)recode->converter, &in, &in_left, &out, &out_left);
    int reason = answer == (size_t)-1 ? errno : 0;
    size_t taken = recode->in_end - recode->in_begin - in_left;
    recode->in_begin += taken;
    recode->position += taken;
    recode->out_begin = 0;
    recode->out_end = sizeof recode->out - out_left;
    if (reason == EILSEQ)
        recode->fault = RECODE_E_BYTES;
    else if (recode->source_done && reason == EINVAL)
        recode->fault = RECODE_E_CUT;
    else if (recode->source_done && reason == 0)
        finish(recode, out, out_left);
    else if (reason != E2BIG)
        refill(recode);
}

static long recode_read(void *context, char *buffer, size_t size)
{
    recode *recode = context;
    while (recode->out_begin == recode->out_end) {
        if (recode->fault != RECODE_GOOD)
            return -1;
        if (recode->finished)
            return 0;
        convert(recode);
    }
    size_t count = recode->out_end - recode->out_begin;
    if (count > size)
        count = size;
    memcpy(buffer, recode->out + recode->out_begin, count);
    recode->out_begin += count;
    return (long)count;
}

csv_source recode_source(recode *recode) { return (csv_source){.read = recode_read, .context = recode}; }
