/* SPDX-License-Identifier: Apache-2.0 */
/* Tables of words: by number and by word. */
#include "core/words.h"

#include "core/text.h"

#include <string.h>

const char *rodt_enumeration_name(const rodt_enumeration *enumeration)
{
    return enumeration != NULL ? enumeration->name : "";
}

bool rodt_enumeration_is_bits(const rodt_enumeration *enumeration) { return enumeration != NULL && enumeration->bits; }

size_t rodt_enumerator_count(const rodt_enumeration *enumeration)
{
    return enumeration != NULL ? enumeration->count : 0;
}

const rodt_enumerator *rodt_enumerator_at(const rodt_enumeration *enumeration, size_t index)
{
    return index < rodt_enumerator_count(enumeration) ? &enumeration->list[index] : NULL;
}

const rodt_enumerator *rodt_enumerator_of(const rodt_enumeration *enumeration, int64_t number)
{
    size_t count = rodt_enumerator_count(enumeration);
    if ((uint64_t)number < count && enumeration->list[number].number == number)
        return &enumeration->list[number]; /* without a gap before it */
    for (size_t i = 0; i < count; i++)
        if (enumeration->list[i].number == number)
            return &enumeration->list[i];
    return NULL;
}

const rodt_enumerator *rodt_enumerator_find_n(const rodt_enumeration *enumeration, const char *word, size_t size)
{
    if (word == NULL)
        return NULL;
    rodti_text_trim(&word, &size);
    for (size_t i = 0; i < rodt_enumerator_count(enumeration); i++)
        if (rodti_text_is_word(word, size, enumeration->list[i].word))
            return &enumeration->list[i];
    return NULL;
}

const rodt_enumerator *rodt_enumerator_find(const rodt_enumeration *enumeration, const char *word)
{
    return rodt_enumerator_find_n(enumeration, word, word != NULL ? strlen(word) : 0);
}

const char *rodti_word_of(const rodt_enumeration *enumeration, int64_t number)
{
    const rodt_enumerator *found = rodt_enumerator_of(enumeration, number);
    return found != NULL ? found->word : "";
}

const char *rodti_text_of(const rodt_enumeration *enumeration, int64_t number)
{
    const rodt_enumerator *found = rodt_enumerator_of(enumeration, number);
    return found != NULL ? found->text : "";
}
