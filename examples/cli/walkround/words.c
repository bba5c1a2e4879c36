/* SPDX-License-Identifier: Apache-2.0 */
/* The words that a person may type: the English ones always, and those of the chosen language. Capitals and accents do
 * not matter. */
#include "walkround/walkround.h"
#include "ui/compiler.h"

#include <string.h>

#define LATIN 0xC3u /* the first byte of a letter of Latin-1 in UTF-8; the second one is 0x80 to 0xBF */

/* The next letter in lower case and without its accent; another byte as it is. */
static char next_letter(const char **text)
{
    static const char plain[] = "aaaaaaaceeeeiiii*nooooo*ouuuuy**aaaaaaaceeeeiiii*nooooo*ouuuuy*y";
    const unsigned char first = (unsigned char)*(*text)++;
    const unsigned char second = first == LATIN ? (unsigned char)**text : 0;
    if (second >= 0x80 && second < 0xC0) {
        ++*text;
        return plain[second - 0x80];
    }
    return first >= 'A' && first <= 'Z' ? (char)(first + ('a' - 'A')) : (char)first;
}

/* The text behind a word of `size` bytes, or NULL if it begins otherwise. */
static const char *skip_word(const char *text, const char *word, size_t size)
{
    for (const char *end = word + size; word < end;) {
        if (*text == '\0' || next_letter(&text) != next_letter(&word))
            return NULL;
    }
    return text;
}

/* The text behind one of the words of a list, where that is followed by a blank or by nothing. */
static const char *skip_one(const char *text, const char *list)
{
    for (size_t size; *list != '\0'; list += strspn(list, ", ")) {
        size = strcspn(list, ",");
        const char *rest = skip_word(text, list, size);
        if (rest != NULL && (*rest == '\0' || *rest == ' '))
            return rest + strspn(rest, " ");
        list += size;
    }
    return NULL;
}

const char *walk_text_after(const char *text, const char *words)
{
    const char *rest = skip_one(text, words);
    return rest != NULL ? rest : skip_one(text, say(words));
}

static bool is_one(const char *text, const char *list)
{
    for (size_t size; *list != '\0'; list += strspn(list, ", ")) {
        size = strcspn(list, ",");
        const char *rest = skip_word(text, list, size);
        if (rest != NULL && *rest == '\0')
            return true;
        list += size;
    }
    return false;
}

bool walk_is_word(const char *text, const char *words) { return is_one(text, words) || is_one(text, say(words)); }

/* The last one, which is the longest. */
static const char *last_of(const char *words)
{
    const char *comma = strrchr(words, ',');
    return comma != NULL ? comma + 1 + strspn(comma + 1, " ") : words;
}

const char *walk_say_answer(const walk_word *words, const char *meaning)
{
    for (size_t i = 0; words != NULL && words[i].spellings != NULL; i++) {
        const char *said = say(words[i].spellings);
        if (strcmp(words[i].meaning, meaning) == 0)
            return said == words[i].spellings ? meaning : last_of(said);
    }
    return meaning;
}
