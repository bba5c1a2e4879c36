/* SPDX-License-Identifier: Apache-2.0 */
/* Which languages there are, and what they say of the texts of the tables. */
#include <string.h>

#include "message/catalogues.h"

size_t rodt_catalogue_count(void) { return rodti_catalogue_count; }

const rodt_catalogue *rodt_catalogue_at(size_t index)
{
    return index < rodti_catalogue_count ? &rodti_catalogues[index] : NULL;
}

/* True if the tags begin with the same language, in capitals or not: "fr-CA" and "FR", "fr_CA.UTF-8". The first is that
 * of a catalogue and not empty. */
static bool same_language(const char *tag, const char *other)
{
    size_t size = strcspn(tag, "-_.@");
    if (size != strcspn(other, "-_.@"))
        return false;
    while (size > 0 && ((tag[size - 1] ^ other[size - 1]) & ~0x20) == 0)
        size--;
    return size == 0;
}

const char *rodt_catalogue_text(const rodt_catalogue *catalogue, const char *english)
{
    bool has_texts = catalogue != NULL && catalogue->texts != NULL && english != NULL;
    size_t first = 0, end = has_texts ? catalogue->text_count : 0;
    while (first < end) {
        size_t middle = first + (end - first) / 2;
        int order = strcmp(english, catalogue->texts[middle].english);
        if (order == 0)
            return catalogue->texts[middle].said;
        if (order < 0)
            end = middle;
        else
            first = middle + 1;
    }
    return english;
}

const rodt_catalogue *rodt_catalogue_find(const char *language)
{
    for (size_t i = 0; language != NULL && i < rodti_catalogue_count; i++) {
        if (same_language(rodti_catalogues[i].language, language))
            return &rodti_catalogues[i];
    }
    return NULL;
}
