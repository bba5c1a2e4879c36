/* SPDX-License-Identifier: Apache-2.0 */
/* Both libraries are optional: without one its format is refused by name. */
#include "io/decompress.h"

#include <string.h>

#ifdef HAVE_ZLIB
#include <stdlib.h>
#include <zlib.h>
#endif
#ifdef HAVE_ZSTD
#include <zstd.h>
#endif

/* Takes bytes from the input and gives up to size bytes; *given may be 0. */
typedef decompress_status step_function(decompressor *stream, char *to, size_t size, size_t *given);

typedef struct compression {
    const char *name;
    const char *magic;
    size_t magic_size;
    void *(*open)(void); /* NULL: no memory */
    step_function *step; /* NULL: this build has no library for it */
    void (*close)(void *state);
} compression;

/* --- gzip (RFC 1952) ----------------------------------------------------------------------------------- */

#ifdef HAVE_ZLIB

#define GZIP_ONLY (15 + 16) /* the greatest window, and a gzip header */

static void *open_gzip(void)
{
    z_stream *state = calloc(1, sizeof *state);
    if (state != NULL && inflateInit2(state, GZIP_ONLY) != Z_OK) {
        free(state);
        state = NULL;
    }
    return state;
}

static void close_gzip(void *state)
{
    inflateEnd(state);
    free(state);
}

static decompress_status step_gzip(decompressor *stream, char *to, size_t size, size_t *given)
{
    z_stream *state = stream->state;
    state->next_in = stream->in + stream->begin;
    state->avail_in = (unsigned)(stream->end - stream->begin);
    state->next_out = (unsigned char *)to;
    state->avail_out = (unsigned)(size < DECOMPRESS_BLOCK ? size : DECOMPRESS_BLOCK);
    const unsigned room = state->avail_out;
    int status = inflate(state, Z_NO_FLUSH);
    stream->begin = stream->end - state->avail_in;
    *given = room - state->avail_out;
    stream->inside = status != Z_STREAM_END;
    if (status == Z_STREAM_END) /* more members may follow */
        status = inflateReset(state);
    return status == Z_OK || status == Z_BUF_ERROR ? DECOMPRESS_OK
           : status == Z_MEM_ERROR                 ? DECOMPRESS_E_MEMORY : DECOMPRESS_E_BYTES;
}

#else
#define open_gzip NULL
#define step_gzip NULL
#define close_gzip NULL
#endif

/* --- Zstandard (RFC 8878) ------------------------------------------------------------------------------ */

#ifdef HAVE_ZSTD

static void *open_zstd(void) { return ZSTD_createDCtx(); }

static void close_zstd(void *state) { ZSTD_freeDCtx(state); }

/* NOLINTNEXTLINE(readability-non-const-parameter): every step writes there */
static decompress_status step_zstd(decompressor *stream, char *to, size_t size, size_t *given)
{
    ZSTD_inBuffer in = {stream->in, stream->end, stream->begin};
    ZSTD_outBuffer out = {to, size, 0};
    size_t left = ZSTD_decompressStream(stream->state, &out, &in);
    stream->begin = in.pos;
    *given = out.pos;
    stream->inside = left != 0;
    return ZSTD_isError(left) ? DECOMPRESS_E_BYTES : DECOMPRESS_OK;
}

#else
#define open_zstd NULL
#define step_zstd NULL
#define close_zstd NULL
#endif

/* --- The stream ---------------------------------------------------------------------------------------- */

static const compression formats[] = {{"gzip", "\x1F\x8B", 2, open_gzip, step_gzip, close_gzip},
                                      {"Zstandard", "\x28\xB5\x2F\xFD", 4, open_zstd, step_zstd, close_zstd}};

void decompress_open(decompressor *stream, csv_source from)
{
    memset(stream, 0, offsetof(decompressor, in));
    stream->from = from;
}

void decompress_close(decompressor *stream)
{
    if (stream->state != NULL)
        stream->format->close(stream->state);
    stream->state = NULL;
}

const char *decompress_format(const decompressor *stream)
{
    return stream->format == NULL ? "" : stream->format->name;
}

static long fail(decompressor *stream, decompress_status fault)
{
    stream->fault = fault;
    return -1;
}

/* Reads more behind what is there. False: the source failed. */
static bool fill(decompressor *stream)
{
    char *to = (char *)stream->in + stream->end;
    long got = stream->from.read(stream->from.context, to, DECOMPRESS_BLOCK - stream->end);
    stream->source_done = got == 0;
    stream->end += got > 0 ? (size_t)got : 0;
    return got >= 0;
}

static decompress_status choose_format(decompressor *stream)
{
    for (size_t i = 0; i < sizeof formats / sizeof formats[0]; i++) {
        if (stream->end >= formats[i].magic_size && memcmp(stream->in, formats[i].magic, formats[i].magic_size) == 0)
            stream->format = &formats[i];
    }
    if (stream->format == NULL)
        return DECOMPRESS_OK;
    if (stream->format->step == NULL)
        return DECOMPRESS_E_ABSENT;
    stream->state = stream->format->open();
    return stream->state != NULL ? DECOMPRESS_OK : DECOMPRESS_E_MEMORY;
}

/* A pipe may give the first bytes one by one. */
static decompress_status probe(decompressor *stream)
{
    while (stream->end < 4 && !stream->source_done) {
        if (!fill(stream))
            return DECOMPRESS_E_SOURCE;
    }
    stream->is_probed = true;
    return choose_format(stream);
}

static long read_plain(decompressor *stream, char *to, size_t size)
{
    size_t here = stream->end - stream->begin;
    if (here == 0) {
        long got = stream->source_done ? 0 : stream->from.read(stream->from.context, to, size);
        return got < 0 ? fail(stream, DECOMPRESS_E_SOURCE) : got;
    }
    here = here < size ? here : size;
    memcpy(to, stream->in + stream->begin, here);
    stream->begin += here;
    return (long)here;
}

static long read_compressed(decompressor *stream, char *to, size_t size)
{
    size_t given = 0;
    while (given == 0) {
        if (stream->begin == stream->end && !stream->source_done) {
            stream->begin = stream->end = 0;
            if (!fill(stream))
                return fail(stream, DECOMPRESS_E_SOURCE);
        }
        if (stream->begin == stream->end && !stream->inside)
            return 0;
        size_t before = stream->begin;
        decompress_status status = stream->format->step(stream, to, size, &given);
        if (status != DECOMPRESS_OK)
            return fail(stream, status);
        if (given == 0 && stream->begin == before) /* only without input is there no step forward */
            return fail(stream, DECOMPRESS_E_CUT);
    }
    return (long)given;
}

static long read_some(void *context, char *buffer, size_t size)
{
    decompressor *stream = context;
    if (stream->fault != DECOMPRESS_OK)
        return -1;
    decompress_status status = stream->is_probed ? DECOMPRESS_OK : probe(stream);
    if (status != DECOMPRESS_OK)
        return fail(stream, status);
    return stream->format == NULL ? read_plain(stream, buffer, size) : read_compressed(stream, buffer, size);
}

csv_source decompress_source(decompressor *stream)
{
    return (csv_source){.read = read_some, .context = stream};
}
