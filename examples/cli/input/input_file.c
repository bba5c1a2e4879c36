/* SPDX-License-Identifier: Apache-2.0 */
/* A file of rows or standard input. */
#include "input/input_file.h"
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
    input_file *input = context;
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
static void read_size(input_file *input)
{
    struct stat status;
    input->waits = fstat(input->descriptor, &status) != 0 || !S_ISREG(status.st_mode);
    input->size = input->waits || status.st_size < 0 ? 0 : (uint64_t)status.st_size;
}

static bool open_transcoder(input_file *input)
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

static bool open_decompressor(input_file *input)
{
    input->decompressor = malloc(sizeof *input->decompressor);
    if (input->decompressor == NULL) {
        print_error("no memory");
        return false;
    }
    decompress_open(input->decompressor, (csv_source){.read = read_descriptor, .context = input});
    return true;
}

bool input_file_open(input_file *input, const char *file, const char *encoding)
{
    bool standard = strcmp(file, "-") == 0;
    *input = (input_file){.name = standard ? say("standard input") : file, .encoding = encoding};
    input->descriptor = standard ? STDIN_FILENO : open(file, O_RDONLY | O_CLOEXEC);
    if (input->descriptor < 0) {
        print_error("%s: %s", file, say_system_error(errno));
        return false;
    }
    read_size(input);
    if (open_decompressor(input) && (encoding == NULL || open_transcoder(input)))
        return true;
    input_file_close(input);
    return false;
}

csv_source input_file_source(input_file *input)
{
    if (input->transcoder != NULL)
        return transcode_source(input->transcoder);
    return decompress_source(input->decompressor);
}

static void explain_source(const input_file *input, bool rows_written)
{
    const char *format = decompress_format(input->decompressor);
    switch (input->decompressor->fault) {
    case DECOMPRESS_E_ABSENT:
        print_error("%s: this program was built without %s; decompress the file first", input->name, format);
        break;
    case DECOMPRESS_E_BYTES:
        print_error(rows_written ? TO_SAY("%s: the compressed data (%s) is damaged; the rows before it are written")
                                 : TO_SAY("%s: the compressed data (%s) is damaged"), input->name, format);
        break;
    case DECOMPRESS_E_CUT:
        print_error(rows_written
                        ? TO_SAY("%s: the compressed data (%s) ends too early; the rows before that are written")
                        : TO_SAY("%s: the compressed data (%s) ends too early"), input->name, format);
        break;
    case DECOMPRESS_E_MEMORY: print_error("no memory"); break;
    case DECOMPRESS_OK:
    case DECOMPRESS_E_SOURCE: print_error("%s: %s", input->name, say_system_error(input->error)); break;
    }
}

void input_file_explain(const input_file *input, bool rows_written)
{
    transcode_status fault = input->transcoder != NULL ? input->transcoder->fault : TRANSCODE_E_SOURCE;
    if (fault == TRANSCODE_E_SOURCE)
        explain_source(input, rows_written);
    else
        print_error(fault == TRANSCODE_E_CUT ? TO_SAY("%s: byte %llu: the input ends inside a character of %s")
                                             : TO_SAY("%s: byte %llu: this is no character of %s"),
                    input->name, (unsigned long long)input->transcoder->position + 1, input->encoding);
}

#define SMALL ((uint64_t)1 << 20)

bool input_file_is_small(const input_file *input) { return !input->waits && input->size < SMALL; }

void input_file_close(input_file *input)
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
