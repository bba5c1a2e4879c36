/* SPDX-License-Identifier: Apache-2.0 */
/* iconv between two buffers of its own, so that no character is split by the size that a reader asks for. */
#include "io/transcode.h"

#include <errno.h>
#include <iconv.h>
#include <string.h>

transcode_status transcode_open(transcoder *stream, const char *encoding, csv_source from)
{
    /* An empty name would be the encoding of the locale, and options follow a slash, such as to drop what cannot be
     * read. Neither is the name of an encoding. */
    if (encoding[0] == '\0' || strchr(encoding, '/') != NULL)
        return TRANSCODE_E_NAME;
    memset(stream, 0, sizeof *stream);
    stream->from = from;
    errno = 0;
    iconv_t converter = iconv_open("UTF-8", encoding);
    if (converter == (iconv_t)-1)
        return errno == EINVAL ? TRANSCODE_E_NAME : TRANSCODE_E_MEMORY;
    stream->converter = converter;
    return TRANSCODE_OK;
}

void transcode_close(transcoder *stream) { iconv_close((iconv_t)stream->converter); }

static void refill(transcoder *stream)
{
    size_t rest = stream->in_end - stream->in_begin;
    memmove(stream->in, stream->in + stream->in_begin, rest);
    stream->in_begin = 0;
    stream->in_end = rest;
    long got = stream->from.read(stream->from.context, stream->in + rest, TRANSCODE_BLOCK - rest);
    if (got < 0)
        stream->fault = TRANSCODE_E_SOURCE;
    else if (got == 0)
        stream->source_done = true;
    else
        stream->in_end += (size_t)got;
}

/* The converter is closed once at the end: an encoding with shift states may still hold bytes. */
static void finish(transcoder *stream, char *out, size_t room)
{
    size_t left = room;
    iconv((iconv_t)stream->converter, NULL, NULL, &out, &left);
    stream->out_end += room - left;
    stream->finished = true;
}

/* Converts into the empty output block, which has room for a character. More input is read only if nothing came out, so
 * that nobody waits for it; what is left then is at most the beginning of a character. */
static void convert(transcoder *stream)
{
    char *in = stream->in + stream->in_begin;
    char *out = stream->out;
    size_t in_left = stream->in_end - stream->in_begin;
    size_t out_left = sizeof stream->out;
    size_t result = iconv((iconv_t)stream->converter, &in, &in_left, &out, &out_left);
    int reason = result == (size_t)-1 ? errno : 0;
    size_t taken = stream->in_end - stream->in_begin - in_left;
    stream->in_begin += taken;
    stream->position += taken;
    stream->out_begin = 0;
    stream->out_end = sizeof stream->out - out_left;
    if (reason == EILSEQ)
        stream->fault = TRANSCODE_E_BYTES;
    else if (stream->source_done && reason == EINVAL)
        stream->fault = TRANSCODE_E_CUT;
    else if (stream->source_done)
        finish(stream, out, out_left);
    else if (stream->out_end == 0)
        refill(stream);
}

static long transcode_read(void *context, char *buffer, size_t size)
{
    transcoder *stream = context;
    while (stream->out_begin == stream->out_end) {
        if (stream->fault != TRANSCODE_OK)
            return -1;
        if (stream->finished)
            return 0;
        convert(stream);
    }
    size_t count = stream->out_end - stream->out_begin;
    if (count > size)
        count = size;
    memcpy(buffer, stream->out + stream->out_begin, count);
    stream->out_begin += count;
    return (long)count;
}

csv_source transcode_source(transcoder *stream) { return (csv_source){.read = transcode_read, .context = stream}; }
