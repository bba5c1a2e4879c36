/* SPDX-License-Identifier: Apache-2.0 */
/* The words of an enumeration: one table in the layer of the enumeration, from which its _name and _find follow. */
#ifndef RODT_WORDS_H
#define RODT_WORDS_H

#include "core/common.h"
#include "rodtravel/enumeration.h"

struct rodt_enumeration {
    const char *name;
    const rodt_enumerator *list; /* by number, rising */
    size_t count;
    bool bits;
};

#define ENUMERATOR(number, word, text) {number, #number, word, text}

/* rodti_words_NAME, the enumeration rodt_NAME made of ENUMERATOR rows. */
#define ENUMERATION(name, bits, ...)                                                                         \
    static const rodt_enumerator name##_rows[] = {__VA_ARGS__};                                              \
    const rodt_enumeration rodti_words_##name = {"rodt_" #name, name##_rows, COUNT_OF(name##_rows), bits};

#define ENUMERATION_NAME(name)                                                                               \
    const char *rodt_##name##_name(rodt_##name number) { return rodti_word_of(&rodti_words_##name, (int64_t)number); }

#define ENUMERATION_FIND(name)                                                                               \
    rodt_status rodt_##name##_find(const char *word, RODT_ENUM32(rodt_##name) *out)                          \
    {                                                                                                        \
        const rodt_enumerator *found = rodt_enumerator_find(&rodti_words_##name, word);                      \
        if (word == NULL || out == NULL)                                                                     \
            return RODT_E_ARGUMENT;                                                                          \
        if (found == NULL)                                                                                   \
            return RODT_E_SYNTAX;                                                                            \
        *out = (rodt_##name)found->number;                                                                   \
        return RODT_OK;                                                                                      \
    }

/* The table and both functions of an enumeration that counts, and of one whose numbers are bits. */
#define WORDS(name, ...) ENUMERATION(name, false, __VA_ARGS__) ENUMERATION_NAME(name) ENUMERATION_FIND(name)
#define BIT_WORDS(name, ...) ENUMERATION(name, true, __VA_ARGS__) ENUMERATION_NAME(name) ENUMERATION_FIND(name)

/* "" for a number that is none. */
const char *rodti_word_of(const rodt_enumeration *enumeration, int64_t number);
const char *rodti_text_of(const rodt_enumeration *enumeration, int64_t number);

extern const rodt_enumeration rodti_words_status, rodti_words_recorded, rodti_words_rounding;

#endif
