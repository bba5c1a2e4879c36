/* SPDX-License-Identifier: Apache-2.0 */
/* The input of `rodtravel batch`. */
#include "batch/input.h"
#include "io/interrupt.h"
#include "ui/language.h"
#include "ui/message.h"

#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static long read_descriptor(void *context, char *buffer, size_t size)
{
    batch_input *input = context;
    ssize_t got;
    do {
        if (input->waits ? !interrupt_or_ready(input->descriptor) : interrupt_requested()) {
            input->error = EINTR;
            return -1;
        }
        got = read(input->descriptor, buffer, size);
    } while (got < 0 && errno == EINTR);
    if (got < 0)
        input->error = errno;
    else
        input->bytes_read += (uint64_t)got;
    return (long)got;
}

/* Only a file has a size. */
static void read_size(batch_input *input)
{
    struct stat status;
    input->waits = fstat(input->descriptor, &status) != 0 || !S_ISREG(status.st_mode);
    input->size = input->waits || status.st_size < 0 ? 0 : (uint64_t)status.st_size;
}

static bool open_transcoder(batch_input *input)
{
    csv_source bytes = decompress_source(input->decompressor);
    input->transcoder = malloc(sizeof *input->transcoder);
    if (input->transcoder == NULL) {
        print_error("no memory");
        return false;
    }
    transcode_status status = transcode_open(input->transcoder, input->encoding, bytes);
    if (status == TRANSCODE_OK)
        return true;
    free(input->transcoder);
    input->transcoder = NULL;
    if (status == TRANSCODE_E_MEMORY)
        print_error("no memory");
    else
        print_error("the encoding \"%s\" is not known here; common names are windows-1252, "
                 "iso-8859-1 and utf-16",
                 input->encoding);
    return false;
}

static bool open_decompressor(batch_input *input)
{
    input->decompressor = malloc(sizeof *input->decompressor);
    if (input->decompressor == NULL) {
        print_error("no memory");
        return false;
    }
    decompress_open(input->decompressor, (csv_source){.read = read_descriptor, .context = input});
    return true;
}

bool batch_input_open(batch_input *input, const char *file, const char *encoding)
{
    bool standard = strcmp(file, "-") == 0;
    *input = (batch_input){.name = standard ? say("standard input") : file, .encoding = encoding};
    input->descriptor = standard ? STDIN_FILENO : open(file, O_RDONLY | O_CLOEXEC);
    if (input->descriptor < 0) {
        print_error("%s: %s", file, say_system_error(errno));
        return false;
    }
    read_size(input);
    if (open_decompressor(input) && (encoding == NULL || open_transcoder(input)))
        return true;
    batch_input_close(input);
    return false;
}

csv_source batch_input_source(batch_input *input)
{
    if (input->transcoder != NULL)
        return transcode_source(input->transcoder);
    return decompress_source(input->decompressor);
}

static void explain_source(const batch_input *input)
{
    const char *format = decompress_format(input->decompressor);
    switch (input->decompressor->fault) {
    case DECOMPRESS_E_ABSENT:
        print_error("%s: this program was built without %s; decompress the file first", input->name, format);
        break;
    case DECOMPRESS_E_BYTES:
        print_error("%s: the compressed data (%s) is damaged; the rows before it are written", input->name, format);
        break;
    case DECOMPRESS_E_CUT:
        print_error("%s: the compressed data (%s) ends too early; the rows before that are written", input->name,
                    format);
        break;
    case DECOMPRESS_E_MEMORY: print_error("no memory"); break;
    case DECOMPRESS_OK:
    case DECOMPRESS_E_SOURCE: print_error("%s: %s", input->name, say_system_error(input->error)); break;
    }
}

void batch_input_explain(const batch_input *input)
{
    transcode_status fault = input->transcoder != NULL ? input->transcoder->fault : TRANSCODE_E_SOURCE;
    if (fault == TRANSCODE_E_SOURCE)
        explain_source(input);
    else
        print_error(fault == TRANSCODE_E_CUT ? TO_SAY("%s: byte %llu: the input ends inside a character of %s")
                                             : TO_SAY("%s: byte %llu: this is no character of %s"),
                    input->name, (unsigned long long)input->transcoder->position + 1, input->encoding);
}

#define SMALL ((uint64_t)1 << 20)

bool batch_input_is_small(const batch_input *input) { return !input->waits && input->size < SMALL; }

void batch_input_close(batch_input *input)
{
    if (input->transcoder != NULL)
        transcode_close(input->transcoder);
    free(input->transcoder);
    if (input->decompressor != NULL)
        decompress_close(input->decompressor);
    free(input->decompressor);
    if (input->descriptor > STDERR_FILENO)
        close(input->descriptor);
}
