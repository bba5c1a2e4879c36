/* SPDX-License-Identifier: Apache-2.0 */
/* Reads a request. Nothing in it is trusted: a page keeps records that anybody may have written. */
#include "request.h"
#include "io/json_object.h"
#include "memory_files.h"
#include "ui/compiler.h"

#include <stdlib.h>
#include <string.h>
#include <time.h>

/* Where the next text goes; there is room for every text of the request. */
typedef struct text_room {
    char *at;
} text_room;

/* NULL: it is no text, has half a character, or a zero byte. */
static char *take_text(text_room *room, json_span from, json_kind kind)
{
    char *text = room->at;
    size_t size = kind == JSON_TEXT ? json_object_text(from, text, from.size + 1) : JSON_NO_TEXT;
    if (size == JSON_NO_TEXT || strlen(text) != size)
        return NULL;
    room->at += size + 1;
    return text;
}

static bool take_arguments(text_room *room, const json_member *list, request *out)
{
    json_object_reader reader;
    json_member value;
    json_status status;
    json_object_open(&reader, list->value.bytes, list->value.size);
    while ((status = json_array_next(&reader, &value)) == JSON_MEMBER) {
        if (out->argument_count == REQUEST_ARGUMENTS_MAX)
            return false;
        char *text = take_text(room, value.value, value.kind);
        if (text == NULL)
            return false;
        out->arguments[out->argument_count++] = text;
    }
    return status == JSON_END;
}

static bool take_files(text_room *room, const json_member *object)
{
    json_object_reader reader;
    json_member file;
    json_status status;
    json_object_open(&reader, object->value.bytes, object->value.size);
    while ((status = json_object_next(&reader, &file)) == JSON_MEMBER) {
        char *before = room->at;
        const char *name = take_text(room, file.name, JSON_TEXT);
        const char *text = name != NULL ? take_text(room, file.value, file.kind) : NULL;
        if (text == NULL || name[0] == '\0' || !memory_file_set(name, text, strlen(text)))
            return false;
        room->at = before;
    }
    return status == JSON_END;
}

/* "2026-11-20T06:40" and seconds if they are known: the time of the place. */
static bool read_time(const char *text, int64_t *seconds)
{
    struct tm when = {.tm_isdst = -1};
    const char *rest = strptime(text, "%Y-%m-%dT%H:%M", &when);
    if (rest == NULL)
        return false;
    if (*rest == ':')
        rest = strptime(rest, ":%S", &when);
    *seconds = (int64_t)mktime(&when);
    return rest != NULL && *rest == '\0';
}

static bool take_member(text_room *room, const json_member *member, request *out)
{
    const struct {
        const char *name;
        const char **text;
    } texts[] = {{"do", &out->action}, {"language", &out->language}, {"name", &out->name}, {"record", &out->record},
                 {"line", &out->line}, {"format", &out->format}, {"input", &out->input}};
    char *before = room->at;
    const char *name = take_text(room, member->name, JSON_TEXT);
    if (name == NULL)
        return false;
    size_t i = 0;
    while (i < COUNT_OF(texts) && strcmp(texts[i].name, name) != 0)
        i++;
    bool lists = strcmp(name, "arguments") == 0, files = strcmp(name, "files") == 0, now = strcmp(name, "now") == 0;
    room->at = before; /* the name is not needed any more */
    if (lists)
        return take_arguments(room, member, out);
    if (files)
        return take_files(room, member);
    if (i == COUNT_OF(texts) && !now)
        return false;
    const char *text = take_text(room, member->value, member->kind);
    if (i < COUNT_OF(texts))
        *texts[i].text = text;
    return text != NULL && (!now || read_time(text, &out->now));
}

const char *request_read(const char *bytes, size_t size, request *out)
{
    json_object_reader reader;
    json_member member;
    json_status status;
    *out = (request){.now = -1, .texts = malloc(size + 1)};
    if (out->texts == NULL)
        return "no-memory";
    text_room room = {out->texts};
    json_object_open(&reader, bytes, size);
    while ((status = json_object_next(&reader, &member)) == JSON_MEMBER) {
        if (!take_member(&room, &member, out))
            return "bad-member";
    }
    return status != JSON_END ? "no-json" : out->action == NULL ? "no-action" : out->now < 0 ? "no-time" : NULL;
}

void request_free(request *of) { free(of->texts); }
