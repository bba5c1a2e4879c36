/* SPDX-License-Identifier: Apache-2.0 */
/* One enumeration as data: its numbers, stable words and sentences. describe.h lists all of them. */
#ifndef RODTRAVEL_ENUMERATION_H
#define RODTRAVEL_ENUMERATION_H

#include <stdbool.h>

#include "status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* One enumerator. Rows live as long as the program, and a later version may add members: use pointers to rows that the
 * library gives, never copies. No text is NULL. */
typedef struct rodt_enumerator {
    int64_t number;     /* its value in C */
    const char *symbol; /* its name in C, "RODT_VERDICT_IN_ADJUSTMENT" */
    const char *word;   /* the stable word, "in-adjustment"; never empty, never renamed */
    const char *text;   /* what it means, a phrase or a sentence in English without a full stop; can be empty and can
                           be reworded */
} rodt_enumerator;

/* An enumeration of the library; opaque, constant, alive as long as the program. */
typedef struct rodt_enumeration rodt_enumeration;

/* Its name in C, "rodt_verdict". NULL gives "". */
RODT_API const char *rodt_enumeration_name(const rodt_enumeration *enumeration);

/* True if the numbers are bits, 1, 2, 4 ..., and a set holds their sum. False if they count: a set of such enumerators
 * holds (uint64_t)1 << number. */
RODT_API bool rodt_enumeration_is_bits(const rodt_enumeration *enumeration);

/* The enumerators in the order of their numbers; NULL beyond the count. Numbers can have gaps. */
RODT_API size_t rodt_enumerator_count(const rodt_enumeration *enumeration);
RODT_API const rodt_enumerator *rodt_enumerator_at(const rodt_enumeration *enumeration, size_t index);

/* The enumerator of a number; NULL if there is none. */
RODT_API const rodt_enumerator *rodt_enumerator_of(const rodt_enumeration *enumeration, int64_t number);

/* The enumerator of a word, whatever its capitals (ASCII) and the blanks around it; NULL if there is none. What people
 * write in a form is read by a _parse function, such as rodt_unit_parse. */
RODT_API const rodt_enumerator *rodt_enumerator_find(const rodt_enumeration *enumeration, const char *word);

/* As rodt_enumerator_find, for size bytes that need not be closed by a zero byte. */
RODT_API const rodt_enumerator *rodt_enumerator_find_n(const rodt_enumeration *enumeration, const char *word,
                                                       size_t size);

#ifdef __cplusplus
}
#endif
#endif
