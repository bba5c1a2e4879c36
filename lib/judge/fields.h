/* SPDX-License-Identifier: Apache-2.0 */
/* Fields whose value is one word of a few. */
#ifndef RODT_FIELDS_H
#define RODT_FIELDS_H

#include "core/common.h"
#include "rodtravel/stroke.h"

/* A word and its meaning, an enumerator of the field's own type. */
typedef struct field_word {
    const char *word;
    int meaning;
} field_word;

typedef struct field_words {
    const field_word *list;
    size_t count;
} field_words;

/* The words of engine, spring_brake and drum; none for other fields of a reading. */
field_words rodti_words_of_field(rodt_field field);

/* True for a length that can be the division of a tape. */
bool rodti_is_division(rodt_length length);

/* Finds a text among words, whatever its capitals and the blanks around it. */
bool rodti_field_word_find(field_words words, const char *text, size_t size, int *meaning);

#endif
