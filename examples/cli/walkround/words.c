/* SPDX-License-Identifier: Apache-2.0 */
/* The words that a person may type: the English ones, and those of the chosen language. Capitals and accents do not
 * matter. */
#include "walkround/walkround.h"
#include "ui/language.h"

#include <stdio.h>
#include <string.h>

/* The text behind a word of `size` bytes, or NULL if it begins otherwise. */
static const char *skip_word(const char *text, const char *word, size_t size)
{
    const char *text_end = text + strlen(text), *word_end = word + size;
    while (word < word_end) {
        if (text == text_end || take_letter(&text, text_end) != take_letter(&word, word_end))
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

/* True if a word of a list begins with the letter. */
static bool begins_one(const char *letter, const char *list)
{
    while (*list != '\0' && skip_word(list, letter, 1) == NULL) {
        list += strcspn(list, ",");
        list += strspn(list, ", ");
    }
    return *list != '\0';
}

bool walk_is_word(const char *text, const char *words) { return is_one(text, words) || is_one(text, say(words)); }

/* An English letter is none where it begins another answer of the chosen language: c is cold, and "chaud" is hot. */
const walk_word *walk_find_word(const walk_word *words, const char *text)
{
    const walk_word *found = words;
    while (found->spellings != NULL && !walk_is_word(text, found->spellings))
        found++;
    if (found->spellings == NULL)
        return NULL;
    bool foreign = strlen(text) == 1 && !is_one(text, say(found->spellings));
    for (; foreign && words->spellings != NULL; words++) {
        if (words != found && begins_one(text, say(words->spellings)))
            return NULL;
    }
    return found;
}

const char *walk_find_yes_no(const char *text)
{
    return walk_is_word(text, WORDS_YES) ? say("yes") : walk_is_word(text, WORDS_NO) ? say("no") : NULL;
}

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

const char *walk_say_entry(end_key key, const char *text)
{
    const walk_id id = key == END_CLASS ? ASK_CLASS : key == END_ADJUSTER ? ASK_ADJUSTER : ASK_CHAMBER;
    return walk_say_answer(walk_questions[id].words, text);
}

const char *walk_say_step(const char *answer, char said[WALK_SAID_SIZE])
{
    size_t size = strlen(STEP_CHANGED);
    bool changed = strncmp(answer, STEP_CHANGED, size) == 0;
    snprintf(said, WALK_SAID_SIZE, changed ? say("changed: %.380s") : "%.400s", changed ? answer + size : say(answer));
    return said;
}
