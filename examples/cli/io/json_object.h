/* SPDX-License-Identifier: Apache-2.0 */
/* Walks over the members of one JSON object (RFC 8259), every byte of which stays where it is. Numbers stay texts: a
 * reading is never rounded on its way. */
#ifndef MEMBERS_H
#define MEMBERS_H

#include <stdbool.h>
#include <stddef.h>

typedef enum members_kind {
    MEMBERS_TEXT,
    MEMBERS_NUMBER,
    MEMBERS_BOOL,
    MEMBERS_NULL,
    MEMBERS_NESTED /* an object or an array */
} members_kind;

/* A piece of the object; of a text, what stands between the quotes. */
typedef struct members_piece {
    const char *bytes;
    size_t size;
} members_piece;

typedef struct member {
    members_piece name;
    members_piece value;
    members_kind kind;
} member;

typedef enum members_status { MEMBERS_MEMBER, MEMBERS_END, MEMBERS_BAD } members_status;

/* A walk. Look at `close` only, at the end. */
typedef struct members {
    const char *at;
    const char *end;
    bool begun;
    bool any;          /* there is a member */
    const char *close; /* the brace that closes the object */
} members;

/* Objects and arrays inside each other. */
#define MEMBERS_DEPTH 64

/* Starts at the first of `size` bytes, which hold one object and blanks. */
void json_object_open(members *walk, const char *bytes, size_t size);

/* The next member. MEMBERS_BAD: the bytes are no such object; ask no more. */
members_status json_object_next(members *walk, member *out);

/* Returned for a text that does not fit, or that has half a character. */
#define MEMBERS_NO_TEXT ((size_t)-1)

/* Copies a text with its escapes resolved, closes it with a zero byte and returns its size; it may hold zero bytes of
 * its own. */
size_t json_object_text(members_piece piece, char *text, size_t size);

#endif
