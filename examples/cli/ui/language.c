/* SPDX-License-Identifier: Apache-2.0 */
/* Sentences in the chosen language. */
#include "ui/language.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* One program speaks one language. NULL = English. */
static const ui_catalogue *chosen;
static rodt_catalogue library;

/* A number of a sentence can be typed as it is read, and the command reads a comma only where it is told so. */
static void use_language(const rodt_catalogue *sentences)
{
    chosen = NULL;
    for (size_t i = 0; sentences != NULL && i < ui_catalogue_count; i++) {
        if (strcmp(ui_catalogues[i].language, sentences->language) != 0)
            continue;
        chosen = &ui_catalogues[i];
        library = *sentences;
        library.decimal_sign = ".";
    }
}

const char *locale_of(const char *category)
{
    const char *const names[] = {"LC_ALL", category, "LANG"};
    for (size_t i = 0; i < COUNT_OF(names); i++) {
        const char *value = getenv(names[i]);
        if (value != NULL && value[0] != '\0')
            return value;
    }
    return "";
}

void choose_language_of_locale(void) { use_language(rodt_catalogue_find(locale_of("LC_MESSAGES"))); }

bool choose_language(const char *word)
{
    const char *at = strlen(word) == 2 ? strstr(LANGUAGE_WORDS, word) : NULL;
    if (at == NULL || strchr(word, '|') != NULL)
        return false;
    use_language(rodt_catalogue_find(word));
    return true;
}

const char *chosen_language(void) { return chosen != NULL ? chosen->language : "en"; }

static int compare(const void *key, const void *sentence)
{
    return strcmp(key, ((const ui_sentence *)sentence)->english);
}

static const ui_sentence *find_in(const ui_catalogue *catalogue, const char *english)
{
    return bsearch(english, catalogue->sentences, catalogue->count, sizeof *catalogue->sentences, compare);
}

static const ui_sentence *find(const char *english) { return chosen == NULL ? NULL : find_in(chosen, english); }

const char *say(const char *english)
{
    const ui_sentence *sentence = find(english);
    return sentence != NULL ? sentence->forms[0] : english;
}

const char *say_number(const char *one, const char *many, unsigned long number)
{
    const ui_sentence *sentence = find(one);
    if (sentence == NULL)
        return number == 1 ? one : many;
    bool plural = chosen->plural == RODT_PLURAL_RULE_BELOW_TWO ? number >= 2 : number != 1;
    return sentence->forms[plural && sentence->forms[1] != NULL];
}

/* --- What somebody writes ----------------------------------------------------------------------------- */

/* The next letter without its accent, small, and a hyphen for a blank; of Latin-1 in UTF-8, others byte by byte. */
static char take_letter(const char **at, const char *end)
{
    static const char plain[] = "aaaaaaaceeeeiiiidnooooo.ouuuuyts";
    unsigned char first = (unsigned char)*(*at)++;
    if (first == 0xC3 && *at < end && ((unsigned char)**at & 0xC0) == 0x80)
        return plain[(unsigned char)*(*at)++ & 0x1F];
    if (first >= 'A' && first <= 'Z')
        return (char)(first - 'A' + 'a');
    return first == ' ' || first == '_' ? '-' : (char)first;
}

/* The text behind a word of `size` bytes, or NULL if it begins otherwise. */
static const char *skip_word(const char *text, const char *end, const char *word, size_t size)
{
    const char *word_end = word + size;
    while (word < word_end) {
        if (text == end || take_letter(&text, end) != take_letter(&word, word_end))
            return NULL;
    }
    return text;
}

/* True if the text is the beginning of the word, or all of it. */
static bool matches(const char *word, const char *text, size_t size, bool whole)
{
    const char *end = word + strlen(word), *rest = skip_word(word, end, text, size);
    return rest != NULL && (!whole || rest == end);
}

static bool matches_any(const char *english, const char *text, size_t size, bool whole)
{
    bool found = matches(english, text, size, whole);
    for (size_t i = 0; !found && i < ui_catalogue_count; i++) {
        const ui_sentence *sentence = find_in(&ui_catalogues[i], english);
        found = sentence != NULL && matches(sentence->forms[0], text, size, whole);
    }
    return found;
}

bool is_said(const char *english, const char *text, size_t size) { return matches_any(english, text, size, true); }

bool is_beginning(const char *english, const char *text, size_t size)
{
    return matches_any(english, text, size, false);
}

bool is_same_text(const char *a, const char *b) { return matches(a, b, strlen(b), true); }

/* The text behind the first word of a list that it begins with; more = a blank and others may follow that word. */
static const char *skip_listed(const char *text, const char *list, bool more)
{
    for (size_t size; *list != '\0'; list += size + strspn(list + size, ", ")) {
        size = strcspn(list, ",");
        const char *rest = skip_word(text, text + strlen(text), list, size);
        if (rest != NULL && (*rest == '\0' || (more && *rest == ' ')))
            return rest + strspn(rest, " ");
    }
    return NULL;
}

bool is_listed(const char *words, const char *text)
{
    return skip_listed(text, words, false) != NULL || skip_listed(text, say(words), false) != NULL;
}

bool begins_listed(const char *words, const char *text)
{
    const char *list = say(words);
    while (*list != '\0' && !matches(list, text, strlen(text), false)) {
        list += strcspn(list, ",");
        list += strspn(list, ", ");
    }
    return *list != '\0';
}

const char *text_after_listed(const char *words, const char *text)
{
    const char *rest = skip_listed(text, words, true);
    return rest != NULL ? rest : skip_listed(text, say(words), true);
}

/* --- What the library says ---------------------------------------------------------------------------- */

const char *say_table_text(const char *text)
{
    return rodt_catalogue_text(chosen != NULL ? &library : NULL, text);
}

bool say_message(rodt_status made, const rodt_message *message, char *text, size_t size)
{
    if (made == RODT_OK &&
        rodt_message_format(message, chosen != NULL ? &library : NULL, text, size, NULL) == RODT_OK && text[0] != '\0')
        return true;
    text[0] = '\0';
    return false;
}

const char *say_error(const rodt_error *error, char text[SAID_SIZE])
{
    rodt_message message;
    if (!say_message(rodt_error_message(error, &message), &message, text, SAID_SIZE))
        snprintf(text, SAID_SIZE, "%s", error->text);
    return text;
}

const char *say_status(rodt_status status, char text[SAID_SIZE])
{
    rodt_message message;
    (void)say_message(rodt_status_message(status, &message), &message, text, SAID_SIZE);
    return text;
}

const char *say_evidence(rodt_evidence evidence, char text[SAID_SIZE])
{
    rodt_message message;
    (void)say_message(rodt_evidence_message(evidence, &message), &message, text, SAID_SIZE);
    return text;
}
