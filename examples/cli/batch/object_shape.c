/* SPDX-License-Identifier: Apache-2.0 */
#include "batch/object_shape.h"
#include "io/csv_index.h"
#include "ui/compiler.h"

#include <stdlib.h>
#include <string.h>

_Static_assert(RODT_READING_FIELDS <= SHAPE_UNUSED, "no reading has a field there");

/* --- Learning ------------------------------------------------------------------------------------------ */

void object_shape_begin(object_shape *shape, bool has_numbers)
{
    shape->members = shape->used = 0;
    shape->has_numbers = has_numbers;
}

/* More members than there can be: the shape does not fit. */
#define NO_SHAPE UINT32_MAX

static bool add_text(object_shape *shape, const char *bytes, size_t size)
{
    if (shape->members > SHAPE_MEMBERS_MOST || size > sizeof shape->bytes - shape->used)
        return false;
    shape_text *text = &shape->text[shape->members];
    const size_t first = size < SHAPE_STEP ? size : SHAPE_STEP;
    *text = (shape_text){.start = shape->used, .size = (uint32_t)size};
    memcpy(text->words, bytes, first);
    memset(text->mask, 0xFF, first);
    memcpy(shape->bytes + shape->used, bytes, size);
    shape->used += (uint32_t)size;
    return true;
}

void object_shape_add(object_shape *shape, const char *before, size_t size, rodt_field field)
{
    if (shape->members >= SHAPE_MEMBERS_MOST || !add_text(shape, before, size)) {
        shape->members = NO_SHAPE;
        return;
    }
    shape->cell[shape->members++] = (unsigned char)(field < SHAPE_UNUSED ? (int)field : SHAPE_UNUSED);
}

void object_shape_end(object_shape *shape, const char *after, size_t size)
{
    if (!add_text(shape, after, size))
        shape->members = 0;
    shape->absent_count = 0;
    for (int field = 0; field < RODT_READING_FIELDS; field++) {
        if (memchr(shape->cell, field, shape->members) == NULL)
            shape->absent[shape->absent_count++] = (unsigned char)field;
    }
}

/* --- Reading ------------------------------------------------------------------------------------------- */

ALWAYS_INLINE bool is_text(const object_shape *shape, const shape_text *text, const char *at, const char *end)
{
    uint64_t words[2];
    memcpy(words, at, sizeof words);
    if ((((words[0] ^ text->words[0]) & text->mask[0]) | ((words[1] ^ text->words[1]) & text->mask[1])) != 0)
        return false;
    return text->size <= SHAPE_STEP ||
           (text->size <= (size_t)(end - at) && memcmp(at, shape->bytes + text->start, text->size) == 0);
}

/* The first byte that does not stand for itself in a text: there is one at the end. */
ALWAYS_INLINE const char *plain_end(const char *at)
{
#ifdef SCAN_X86
    const __m128i quote = _mm_set1_epi8('"'), backslash = _mm_set1_epi8('\\'), control = _mm_set1_epi8(0x1F);
    for (;; at += SHAPE_STEP) {
        const __m128i bytes = _mm_loadu_si128((const __m128i *)(const void *)at);
        const __m128i marks = _mm_or_si128(_mm_or_si128(_mm_cmpeq_epi8(bytes, quote), _mm_cmpeq_epi8(bytes, backslash)),
                                           _mm_cmpeq_epi8(_mm_min_epu8(bytes, control), bytes));
        const uint32_t found = (uint32_t)_mm_movemask_epi8(marks);
        if (found != 0)
            return at + scan_lowest_bit(found);
    }
#else
    while (*at != '"' && *at != '\\' && (unsigned char)*at > 0x1F)
        at++;
    return at;
#endif
}

/* Any other value than a plain text. NULL: there is none that may stand there. */
static const char *read_other(const object_shape *shape, const char *at, const char *end, bool is_unused,
                              rodt_text_span *cell)
{
    json_object_reader reader;
    json_kind kind;
    json_span value;
    json_object_open(&reader, at, (size_t)(end - at));
    if (!json_value_read(&reader, &kind, &value) ||
        (!is_unused && kind != JSON_NULL && !(kind == JSON_NUMBER && shape->has_numbers)))
        return NULL;
    *cell = kind == JSON_NULL ? (rodt_text_span){NULL, 0} : (rodt_text_span){value.bytes, value.size};
    return reader.at;
}

shape_match object_shape_read(const object_shape *shape, const char *at, const char *end,
                              rodt_text_span cells[RODT_FIELD_ROOM], const char **close)
{
    const shape_text *text = shape->text;
    for (uint32_t i = 0; i < shape->absent_count; i++)
        cells[shape->absent[i]] = (rodt_text_span){NULL, 0};
    for (uint32_t i = 0; i < shape->members; i++, text++) {
        if (!is_text(shape, text, at, end))
            return SHAPE_OTHER;
        at += text->size;
        rodt_text_span *cell = &cells[shape->cell[i]];
        const char *stop = *at == '"' ? plain_end(at + 1) : at;
        if (stop > at && *stop == '"') {
            *cell = (rodt_text_span){at + 1, (size_t)(stop - at - 1)};
            at = stop + 1;
            continue;
        }
        at = read_other(shape, at, end, shape->cell[i] == SHAPE_UNUSED, cell);
        if (at == NULL)
            return SHAPE_VALUE;
    }
    if (!is_text(shape, text, at, end))
        return SHAPE_OTHER;
    *close = at + text->size;
    return SHAPE_SAME;
}

/* --- Several shapes ------------------------------------------------------------------------------------ */

/* A file that leaves out what is empty has several; and so many are learned of a chunk at most, since one of which
 * every object has a shape of its own would be slower. */
#define SHAPES 4u
#define LEARNED_MOST 16u

struct object_shapes {
    object_shape shape[SHAPES];
    uint32_t last;    /* that was found or learned */
    uint32_t learned; /* of this chunk */
    bool is_new;      /* the object that was not read last has none of them */
};

object_shapes *object_shapes_open(void) { return calloc(1, sizeof(object_shapes)); }

void object_shapes_close(object_shapes *shapes) { free(shapes); }

void object_shapes_begin_chunk(object_shapes *shapes) { shapes->learned = 0; }

object_shape *object_shapes_room(object_shapes *shapes)
{
    if (!shapes->is_new || shapes->learned == LEARNED_MOST)
        return NULL;
    shapes->is_new = false;
    shapes->last = shapes->learned++ % SHAPES;
    return &shapes->shape[shapes->last];
}

const char *object_shapes_read(object_shapes *shapes, const char *at, const char *end,
                               rodt_text_span cells[RODT_FIELD_ROOM])
{
    const char *close = NULL;
    shape_match match = SHAPE_OTHER;
    for (uint32_t i = 0; i < SHAPES && match == SHAPE_OTHER; i++) {
        const uint32_t tried = (shapes->last + i) % SHAPES;
        if (shapes->shape[tried].members == 0)
            continue;
        match = object_shape_read(&shapes->shape[tried], at, end, cells, &close);
        if (match == SHAPE_SAME)
            shapes->last = tried;
    }
    shapes->is_new = match == SHAPE_OTHER;
    return match == SHAPE_SAME ? close : NULL;
}
