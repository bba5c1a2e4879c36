/* SPDX-License-Identifier: Apache-2.0 */
/* Objects that one program wrote have the same members in the same order, so that all but their values is the same
 * byte by byte: their shape. An object of a known shape is read without its names being looked at one by one. */
#ifndef OBJECT_SHAPE_H
#define OBJECT_SHAPE_H

#include "io/json_object.h"

#include <rodtravel/rodtravel.h>

/* Objects with more have no shape. */
#define SHAPE_MEMBERS_MOST 64u
#define SHAPE_BYTES_MOST 2048u

/* Bytes that are compared in one step. As many after the end of the bytes of an object must be readable, and a byte
 * below a blank must be the first of them. */
#define SHAPE_STEP 16u

/* Where the values of other members go: no column is there. */
#define SHAPE_UNUSED (RODT_FIELD_ROOM - 1)

/* What is before a value, or after the last one. */
typedef struct shape_text {
    uint64_t words[2]; /* its first SHAPE_STEP bytes */
    uint64_t mask[2];
    uint32_t start; /* in the bytes of the shape */
    uint32_t size;
} shape_text;

typedef struct object_shape {
    uint32_t members; /* 0: nothing is known */
    uint32_t used;
    bool has_numbers; /* the value of a field may be a number */
    shape_text text[SHAPE_MEMBERS_MOST + 1];
    unsigned char cell[SHAPE_MEMBERS_MOST]; /* of the field that the value is of; SHAPE_UNUSED */
    unsigned char absent[RODT_READING_FIELDS]; /* fields that no value is of */
    uint32_t absent_count;
    char bytes[SHAPE_BYTES_MOST];
} object_shape;

/* Learns the shape of an object member by member: begin, add each, and end with what follows the last value, up to the
 * closing brace. A shape that does not fit has no members in the end. */
void object_shape_begin(object_shape *shape, bool has_numbers);
void object_shape_add(object_shape *shape, const char *before, size_t size, rodt_field field);
void object_shape_end(object_shape *shape, const char *after, size_t size);

typedef enum shape_match {
    SHAPE_SAME,
    SHAPE_OTHER, /* the bytes are of another shape */
    SHAPE_VALUE  /* a value is for json_object.h: a field's with an escape, or neither a text nor null */
} shape_match;

/* Reads the object at `at` if it has this shape. SHAPE_SAME: *close is behind its closing brace, and cells[field] is
 * each value as json_object.h reads it: the bytes of a text or a number; NULL for null and where there is no such
 * member. What is in other cells than those of fields is void. */
shape_match object_shape_read(const object_shape *shape, const char *at, const char *end,
                              rodt_text_span cells[RODT_FIELD_ROOM], const char **close);

/* Several shapes, of which the one that was used last is tried first. */
typedef struct object_shapes object_shapes;

/* NULL: no memory. */
object_shapes *object_shapes_open(void);
void object_shapes_close(object_shapes *shapes);

/* A bounded number is learned of each chunk. */
void object_shapes_begin_chunk(object_shapes *shapes);

/* Reads an object as object_shape_read, and returns what is behind its closing brace. NULL: it is not read. */
const char *object_shapes_read(object_shapes *shapes, const char *at, const char *end,
                               rodt_text_span cells[RODT_FIELD_ROOM]);

/* Where the shape of the object that was not read last is learned; NULL: it is not. */
object_shape *object_shapes_room(object_shapes *shapes);

#endif
