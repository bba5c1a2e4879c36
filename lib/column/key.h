/* SPDX-License-Identifier: Apache-2.0 */
/* Keys of rows of texts: each cell maps to a class, the classes and the stroke form the key (equivalence.h). */
#ifndef RODT_KEY_H
#define RODT_KEY_H

#include "column/cache.h"
#include "column/fine.h"
#include "rodtravel/column_text.h"

/* A row with such a cell has no key: its result depends on more than the classes. */
#define KEY_UNCACHEABLE (UINT64_C(1) << 63)

/* A reading is missing or cannot be read, so there is no stroke, whatever the other reading is. */
#define KEY_NO_STROKE (UINT64_C(1) << 62)

#define KEY_CLASSES 512u

/* The value of a measurement that is plain, but no whole number of units: rodti_key_read_plain has its parts. */
#define KEY_VALUE_FINE ((uint32_t)INT32_MIN)

/* Longest text of a cell that any reader takes, its zero byte included. */
#define KEY_TEXT_SIZE 256u

/* Cells of one class are equivalent. */
typedef enum class_kind {
    CLASS_NOTHING,
    CLASS_VALUE,
    CLASS_TWO_DAYS,
    CLASS_UNREADABLE,  /* and why, as reasons */
    CLASS_OTHER_ORDER, /* the same of a date that contradicts the order; callers count these */
    CLASS_OWN          /* equivalent to no other text */
} class_kind;

typedef struct key_class {
    uint64_t value;
    class_kind kind;
} key_class;

/* The cells of one field. The class of a cell has its number in the key bits; 0 = nothing is written. */
typedef struct key_field {
    cell_cache cells;
    unsigned shift;
    uint64_t tag_mask; /* not 0 = the unit of the row changes what a cell means */
    uint32_t reads;         /* cells that were not cached, since the caller last cleared it */
    uint32_t backoff_left;  /* the caller's: blocks to read without the cache, now and next time */
    uint32_t backoff_next;
    uint32_t classes;
    key_class class_at[KEY_CLASSES];
} key_field;

typedef struct key_builder {
    const rodt_rules *rules;
    rodt_form form; /* its texts hold for cells with nothing in them; none is blank */
    bool is_stream;         /* rows without a readable chamber have no key */
    fine_table fine;        /* for measurements */
    key_field field[RODT_READING_FIELDS];
} key_builder;

/* False: no memory. Close it in either case. */
bool rodti_key_open(key_builder *builder, const rodt_rules *rules, const rodt_form *form, bool is_stream);
void rodti_key_close(key_builder *builder);

/* True for NULL and for a text that holds nothing, as the readers see it. */
bool rodti_key_is_blank(const char *text);

/* The tag of a row's cells, from the meaning of its unit. */
INLINE unsigned key_tag(const key_builder *builder, uint64_t key_bits)
{
    return (unsigned)(key_bits >> builder->field[RODT_FIELD_UNIT].shift) & 7u;
}

/* Builds the key from the key bits and the summed cell values; all negative strokes share one. */
INLINE row_key key_of_row(uint64_t bits, uint32_t sum)
{
    uint32_t stroke = sum > INT32_MAX ? UINT32_MAX : sum;
    return (row_key){bits, (bits & KEY_NO_STROKE) != 0 ? 0 : stroke};
}

/* The two readings of the tape. */
INLINE bool key_is_measurement(rodt_field field)
{
    return field == RODT_FIELD_RELEASED || field == RODT_FIELD_APPLIED;
}

/* A cell with nothing in it, in a row of a stream. */
INLINE cell_meaning key_of_nothing(rodt_field field)
{
    return (cell_meaning){
        .key_bits = key_is_measurement(field) ? KEY_NO_STROKE : field == RODT_FIELD_CHAMBER ? KEY_UNCACHEABLE : 0};
}

/* What a measurement adds to its row. */
typedef struct key_part {
    uint64_t bits;
    int64_t fine; /* parts (fine.h) */
} key_part;

/* Reads a measurement (released or applied) without the cache. False: it is not plain, and needs
 * rodti_key_read_cell. */
bool rodti_key_read_plain(key_builder *builder, rodt_field field, rodt_text_span cell, unsigned tag, key_part *out);

/* Tags that rows have. */
#define KEY_TAGS 8

/* A measurement without a unit of its own, in rows of one tag. */
typedef struct key_unit {
    uint64_t bits; /* what it adds to its row */
    int64_t most;  /* parts of the longest that is read; below zero = the unit of the row is unreadable */
    int64_t parts[PLAIN_DECIMALS + 1]; /* by decimals */
} key_unit;

/* Of each tag; one that no row has yet is as of an unreadable unit. */
void rodti_key_units(key_builder *builder, rodt_field field, key_unit units[KEY_TAGS]);

/*
 * Reads a cell that is not cached, and caches it.
 *
 * cell  as it is in memory
 * text  what it says, closed by a zero byte; NULL = nothing
 * unit  the same of the row's unit
 * tag   of the row; 0 where the field has no tag_mask
 */
cell_meaning rodti_key_read_cell(key_builder *builder, rodt_field field, rodt_text_span cell, const char *text,
                           const char *unit, unsigned tag);

#endif
