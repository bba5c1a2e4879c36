/* SPDX-License-Identifier: Apache-2.0 */
/* The module of a page: one call takes a request and gives the reply, both JSON. A request that cannot be taken gives
 * {"error": WORD}. */
#include "page.h"
#include "memory_files.h"
#include "ui/compiler.h"

#include <stdlib.h>
#include <string.h>

#define EXPORT(name) __attribute__((export_name(name)))

/* What is asked is not longer than its parts: a record, a carrier's limits, the last record. */
#define REQUEST_SIZE_MAX ((size_t)8 << 20)

static char *request_bytes;
static size_t request_room;
static char *reply;
static size_t reply_size;

static const struct {
    const char *action;
    const char *(*answer)(const request *from, json_writer *json);
} actions[] = {{"begin", walk_reply_begin}, {"answer", walk_reply_answer}, {"run", run_reply},
               {"report", report_reply},    {"about", about_reply},     {"checks", checks_reply}};

static const char *take(const request *from, json_writer *json)
{
    for (size_t i = 0; i < COUNT_OF(actions); i++) {
        if (strcmp(actions[i].action, from->action) == 0)
            return actions[i].answer(from, json);
    }
    return "unknown-action";
}

static void answer(size_t size, FILE *to)
{
    request from;
    json_writer json = {.to = to, .first = true};
    json_open(&json, '{');
    const char *wrong = size > request_room ? "too-long" : request_read(request_bytes, size, &from);
    if (wrong == NULL) {
        memory_clock_set(from.now);
        wrong = take(&from, &json);
    }
    if (size <= request_room)
        request_free(&from);
    if (wrong != NULL)
        json_pair(&json, "error", wrong);
    json_close(&json, '}');
}

/* Where a request of that size goes; NULL = it is too long, or there is no memory. */
EXPORT("room") char *page_room(size_t size);
EXPORT("room") char *page_room(size_t size)
{
    char *bytes = size <= REQUEST_SIZE_MAX ? realloc(request_bytes, size + 1) : NULL;
    if (bytes == NULL)
        return NULL;
    request_bytes = bytes;
    request_room = size;
    return bytes;
}

/* The reply to the request of that size; NULL = there is no memory. */
EXPORT("call") const char *page_call(size_t size);
EXPORT("call") const char *page_call(size_t size)
{
    free(reply);
    reply = NULL;
    FILE *to = open_memstream(&reply, &reply_size);
    if (to == NULL)
        return NULL;
    answer(size, to);
    bool whole = ferror(to) == 0;
    return fclose(to) == 0 && whole ? reply : NULL;
}

EXPORT("size") size_t page_size(void);
EXPORT("size") size_t page_size(void) { return reply_size; }
