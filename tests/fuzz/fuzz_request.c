/* SPDX-License-Identifier: Apache-2.0 */
/* Any bytes as a request to the module of the page: it is read into texts that end inside of their room, or refused by
 * a stable word; files have names. */
#include "memory_files.h"
#include "request.h"
#include "ui/compiler.h"

#include <string.h>

#include "source.h"

static uint64_t touched;

static void touch(const char *text)
{
    for (; text != NULL && *text != '\0'; text++)
        touched += (unsigned char)*text;
}

/* In place of the files in memory. */
bool memory_file_set(const char *name, const char *bytes, size_t size)
{
    demand(name[0] != '\0' && strlen(bytes) == size);
    touch(name);
    touch(bytes);
    return true;
}

static bool is_refusal(const char *word)
{
    static const char *const words[] = {"no-memory", "bad-member", "no-json", "no-action", "no-time"};
    for (size_t i = 0; i < COUNT_OF(words); i++) {
        if (strcmp(words[i], word) == 0)
            return true;
    }
    return false;
}

static void check_texts(const request *from)
{
    const char *const texts[] = {from->language, from->name, from->record, from->line, from->format, from->input};
    demand(from->action != NULL && from->now >= 0);
    demand(from->argument_count >= 0 && from->argument_count <= REQUEST_ARGUMENTS_MAX);
    touch(from->action);
    for (size_t i = 0; i < COUNT_OF(texts); i++)
        touch(texts[i]);
    for (int i = 0; i < from->argument_count; i++) {
        demand(from->arguments[i] != NULL);
        touch(from->arguments[i]);
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    char *bytes = malloc(size + 1); /* of its own, so that a step too far is seen */
    request from;
    if (bytes == NULL)
        return 0;
    if (size > 0)
        memcpy(bytes, data, size);
    const char *wrong = request_read(bytes, size, &from);
    if (wrong == NULL)
        check_texts(&from);
    else
        demand(is_refusal(wrong));
    request_free(&from);
    free(bytes);
    return 0;
}
