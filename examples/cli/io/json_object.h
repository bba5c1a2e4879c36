/* SPDX-License-Identifier: Apache-2.0 */
/* Reads the members of one JSON object, or the elements of an array, in place (RFC 8259). Numbers stay texts: a reading
 * is never rounded on its way. */
#ifndef JSON_OBJECT_H
#define JSON_OBJECT_H

#include <stdbool.h>
#include <stddef.h>

typedef enum json_kind {
    JSON_TEXT,
    JSON_NUMBER,
    JSON_BOOL,
    JSON_NULL,
    JSON_NESTED /* an object or an array */
} json_kind;

/* Bytes of the object; of a text, what is between the quotes. */
typedef struct json_span {
    const char *bytes;
    size_t size;
} json_span;

typedef struct json_member {
    json_span name;
    json_span value;
    json_kind kind;
} json_member;

typedef enum json_status { JSON_MEMBER, JSON_END, JSON_BAD } json_status;

/* Read `close` and `any` only, at the end. */
typedef struct json_object_reader {
    const char *at;
    const char *end;
    bool begun;
    bool any;          /* there is a member */
    const char *close; /* the brace that closes the object */
} json_object_reader;

/* Objects and arrays inside each other. */
#define JSON_DEPTH 64

/* Starts at the first of `size` bytes, which hold one object or array and blanks. */
void json_object_open(json_object_reader *reader, const char *bytes, size_t size);

/* The next member. JSON_BAD: the bytes are no such object, as `at` shows; ask no more. */
json_status json_object_next(json_object_reader *reader, json_member *out);

/* The next element of an array, a member without a name. */
json_status json_array_next(json_object_reader *reader, json_member *out);

/* Reads a value that `at` is before. False: there is none. */
bool json_value_read(json_object_reader *reader, json_kind *kind, json_span *value);

/* Returned for a text that does not fit, or that has half a character. */
#define JSON_NO_TEXT ((size_t)-1)

/* Copies a text with its escapes resolved, closes it with a zero byte and returns its size; it may hold zero bytes of
 * its own. */
size_t json_object_text(json_span from, char *text, size_t size);

#endif
