/* SPDX-License-Identifier: Apache-2.0 */
/* The words of the walk-round, as they are typed and said in the chosen language. */
#include "walkround/walkround.h"
#include "air/air.h"
#include "ui/language.h"
#include "ui/utf8.h"

#include <stdio.h>
#include <string.h>
#include <strings.h>

/* An English letter is none where it begins another answer of the chosen language: c is cold, and "chaud" is hot. */
const walk_word *walk_find_word(const walk_word *words, const char *text)
{
    const walk_word *found = words;
    while (found->spellings != NULL && !is_listed(found->spellings, text))
        found++;
    if (found->spellings == NULL)
        return NULL;
    bool foreign = strlen(text) == 1 && !is_listed(say(found->spellings), text);
    for (; foreign && words->spellings != NULL; words++) {
        if (words != found && begins_listed(words->spellings, text))
            return NULL;
    }
    return found;
}

const char *walk_find_yes_no(const char *text)
{
    return is_listed(WORDS_YES, text) ? say("yes") : is_listed(WORDS_NO, text) ? say("no") : NULL;
}

const char *walk_last_of(const char *words)
{
    const char *comma = strrchr(words, ',');
    return comma != NULL ? comma + 1 + strspn(comma + 1, " ") : words;
}

const char *walk_say_answer(const walk_word *words, const char *meaning)
{
    for (size_t i = 0; words != NULL && words[i].spellings != NULL; i++) {
        const char *said = say(words[i].spellings);
        if (strcmp(words[i].meaning, meaning) == 0)
            return said == words[i].spellings ? meaning : walk_last_of(said);
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

/* The title in the language that is spoken. */
static bool is_titled(const walk_item *item, const char *title)
{
    char own[SAID_SIZE];
    return item->check != RODT_AIR_CHECK_NONE && is_same_text(air_check_title(item->check, own), title);
}

bool walk_is_about(const inspection_record *record, const walk_item *item, const char *subject)
{
    const char *name = item->end != WALK_NONE ? record->ends[item->end][END_POSITION].text
                       : item->check != RODT_AIR_CHECK_NONE ? rodt_air_check_name(item->check) : NULL;
    return name != NULL && (strcasecmp(name, subject) == 0 || is_titled(item, subject));
}

const char *walk_text_after(const char *text, const char *word)
{
    size_t size = strlen(word);
    if (strncasecmp(text, word, size) != 0 || (text[size] != '\0' && text[size] != ' '))
        return NULL;
    return text + size + strspn(text + size, " ");
}

bool walk_is_text(const char *text, uint32_t *character)
{
    char shown[SHOWN_SIZE];
    unsigned width;
    *character = 1;
    for (size_t bytes; *text != '\0'; text += bytes) {
        bytes = show_character(text, shown, &width);
        bool control = ((unsigned char)*text < 0x20 && *text != '\t') || *text == 0x7F;
        bool broken = bytes == 1 && (unsigned char)*text >= 0x80;
        if (control || broken)
            return false;
        ++*character;
    }
    return true;
}
