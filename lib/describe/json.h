/* SPDX-License-Identifier: Apache-2.0 */
/* Writes JSON (RFC 8259) on one line into a buffer of the caller. */
#ifndef RODT_JSON_H
#define RODT_JSON_H

#include "core/common.h"
#include "rodtravel/rodtravel.h"

/* What does not fit is counted and not written. The writer sets the commas. */
typedef struct json_buffer {
    char *text;
    size_t size;
    size_t used;
    bool parts; /* RODT_JSON_OPTION_PARTS */
    bool first; /* the innermost object or array is still empty */
} json_buffer;

void rodti_json_open(json_buffer *json, char bracket);  /* '{' or '[' */
void rodti_json_close(json_buffer *json, char bracket); /* '}' or ']' */
void rodti_json_key(json_buffer *json, const char *key);

/* A value: a text of size bytes, in which those that are no UTF-8 become U+FFFD; NULL = null. */
void rodti_json_text_n(json_buffer *json, const char *text, size_t size);
void rodti_json_text(json_buffer *json, const char *text);
/* A value that is JSON already: a number, true, null. */
void rodti_json_plain(json_buffer *json, const char *text);

/* A value: an exact number as its text, or with parts; null if it is not given or cannot be written. */
void rodti_json_exact(json_buffer *json, rodt_ratio value);

/* A key and its value. */
void rodti_json_pair(json_buffer *json, const char *key, const char *text);

/* Writes a value twice, to count and to fill, so that the buffer is untouched if it does not fit. */
typedef void json_maker(json_buffer *json, const void *context);
rodt_status rodti_json_format(json_maker *make, const void *context, uint32_t options, char *text, size_t size,
                              size_t *needed);

#endif
