/* SPDX-License-Identifier: Apache-2.0 */
/* What a page asks for: one JSON object. */
#ifndef REQUEST_H
#define REQUEST_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define REQUEST_ARGUMENTS_MAX 64

typedef struct request {
    const char *action, *language, *name, *record, *line, *format, *input; /* NULL = not there */
    int64_t now; /* seconds, as memory_clock_set takes them */
    int argument_count;
    char *arguments[REQUEST_ARGUMENTS_MAX];
    char *texts; /* all of the above, one after the other */
} request;

/* Its files are there afterwards. NULL, or a stable word of what is wrong. The texts
 * are freed by request_free, whatever it is. */
const char *request_read(const char *bytes, size_t size, request *out);
void request_free(request *of);

#endif
