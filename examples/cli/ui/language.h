/* SPDX-License-Identifier: Apache-2.0 */
/* What is said to people, in their language. Only what a command says on its screens and in its errors is translated;
 * numbers, words of the tables, CSV and JSON are the same in every language. */
#ifndef LANGUAGE_H
#define LANGUAGE_H

#include "ui/compiler.h"

#include <rodtravel/rodtravel.h>

#include <stdbool.h>
#include <stddef.h>

/* The translations; catalogc makes them of examples/cli/languages. */
typedef struct ui_sentence {
    const char *english;
    const char *forms[2]; /* one, or one and the plural */
} ui_sentence;

typedef struct ui_catalogue {
    const char *language;         /* "fr-CA" */
    const ui_sentence *sentences; /* sorted by their English */
    size_t count;
    RODT_ENUM32(rodt_plural_rule) plural;
} ui_catalogue;

extern const ui_catalogue ui_catalogues[];
extern const size_t ui_catalogue_count;

/* The value of --language, as the help writes it. */
#define LANGUAGE_OPTION "language"
#define LANGUAGE_WORDS "en|fr|es"

/* The locale of a category, "LC_CTYPE", by the environment: as setlocale reads it, without calling it. "" = not set. */
const char *locale_of(const char *category);

/* Chooses by LC_ALL, LC_MESSAGES or LANG, the first that is set; English where that names no language of ours. */
void choose_language_of_locale(void);

/* Chooses by a word of LANGUAGE_WORDS. False: it is none, and nothing changes. */
bool choose_language(const char *word);

/* Its tag, as HTML has it: "en", "fr-CA". */
const char *chosen_language(void);

/* The text in the chosen language; in English where that is chosen, or has no translation of it. The text is a constant
 * in quotes, so that the check `translations` finds it. */
const char *say(const char *english) FORMAT_ARGUMENT(1);

/* Marks a text that is said elsewhere, by say with a variable. */
#define TO_SAY(english) (english)

/* The same for a help text, of which print_paragraphs says each line, or the second column of an indented line. */
#define TO_SAY_LINES(english) english

/* Whether two texts that somebody wrote are the same, whatever their capitals, accents, hyphens and blanks. */
bool is_same_text(const char *a, const char *b);

/* Whether a text is the same as this English one or its translation, of any language. What was written in one language
 * is then read in every one. */
bool is_said(const char *english, const char *text, size_t size);

/* The same if it only begins so. */
bool is_beginning(const char *english, const char *text, size_t size);

/* Whether a text is one of these words, "y, yes", of English or the chosen language: short words, which can mean
 * something else in a third one. */
bool is_listed(const char *words, const char *text);

/* Whether one of the words begins so in the chosen language. */
bool begins_listed(const char *words, const char *text);

/* The text after one of the words, without the blanks between, or NULL if another word is there. */
const char *text_after_listed(const char *words, const char *text);

/* The same for a number: `one` is the English for 1, `many` for all others. */
const char *say_number(const char *one, const char *many, unsigned long number) FORMAT_ARGUMENT(1) FORMAT_ARGUMENT(2);

/* What a function of the library made, in the chosen language; `made` is its status. False: there is nothing to say,
 * and text is "". */
bool say_message(rodt_status made, const rodt_message *message, char *text, size_t size);

/* A text of the tables, how a check is set up or what its source requires, in the chosen language; the words of a
 * carrier's own table as they stand. */
const char *say_table_text(const char *text);

/* The sentence of an error, of a status, and of how a figure was checked. */
#define SAID_SIZE 1024
const char *say_error(const rodt_error *error, char text[SAID_SIZE]);
const char *say_status(rodt_status status, char text[SAID_SIZE]);
const char *say_evidence(rodt_evidence evidence, char text[SAID_SIZE]);

#endif
