/* SPDX-License-Identifier: Apache-2.0 */
/* Values inside of records: where they are, as text, and from text. */
#ifndef RODT_VALUE_H
#define RODT_VALUE_H

#include "core/text.h"
#include "describe/records.h"

#include <string.h>

typedef struct value_place {
    const rodt_record *owner; /* the record that the member is of */
    const rodt_member *member;
    const char *at;
    bool pointed; /* a pointer leads there, so it is not the caller's to change */
} value_place;

/* The day of build of a vehicle may be a year alone. */
static inline bool can_be_year(const rodt_member *member) { return strcmp(member->name, "built") == 0; }

/* False: there is no such path. */
bool rodti_value_locate(const rodt_record *record, const void *value, const char *path, value_place *out);

/* An element of an array; its member's kind and size say what it is. */
static inline const char *element_at(const rodt_member *member, const char *record, size_t index)
{
    return record + member->offset + index * member->size;
}

/* The numbers of kinds with a width, and the pointers. */
int64_t rodti_value_signed(const char *at, size_t size);
uint64_t rodti_value_unsigned(const char *at, size_t size);
const void *rodti_value_pointer(const char *at);

/* The bit of an enumerator in a set. */
uint64_t rodti_set_bit(const rodt_enumeration *enumeration, const rodt_enumerator *row);

/* The bytes of a text; NULL = there is none. */
const char *rodti_value_text(const rodt_member *member, const char *at, size_t *size);

/* Puts a value that is neither a text nor a record, "" for one that is not given. False: it has no text. The record of
 * `owner` says in which unit a pressure was read. */
bool rodti_value_put(const rodt_record *owner, const rodt_member *member, const char *at, text_writer *writer);

#endif
