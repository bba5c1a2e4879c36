/* SPDX-License-Identifier: Apache-2.0 */
/* Parses a chamber mark. Each token is accepted by what may come at its place; one that is left over makes the whole
 * mark an error, so that no half of a mark is believed. */
#include "rodtravel/chamber.h"

#include "chamber/chamber_lexer.h"
#include "core/error.h"
#include "core/text.h"

#include <string.h>

typedef struct mark_reader {
    mark_tokens tokens;
    size_t at;
    rodt_chamber chamber;
    bool typed;     /* "type" or "T" was there */
    uint32_t size;  /* column of the size; 0 = none yet */
    uint32_t twice; /* column of a second family or class that differs from the first; 0 = none */
} mark_reader;

static const mark_token *here(const mark_reader *mark) { return &mark->tokens.at[mark->at]; }

static bool take_word(mark_reader *mark, const char *word)
{
    if (!rodti_mark_is_word(here(mark), word))
        return false;
    mark->at++;
    return true;
}

static bool take_kind(mark_reader *mark, token_kind kind)
{
    if (here(mark)->kind != kind)
        return false;
    mark->at++;
    return true;
}

static bool is_number(const mark_token *token, const char *digits)
{
    return token->kind == TOKEN_NUMBER && token->size == strlen(digits) &&
           memcmp(token->text, digits, token->size) == 0;
}

/* --- Families ---------------------------------------------------------------------------------------- */

static void name_twice(mark_reader *mark, uint32_t column)
{
    if (mark->twice == 0)
        mark->twice = column;
}

/* A hyphen that holds two things together: no blank on either side. */
static bool take_tight_hyphen(mark_reader *mark)
{
    const mark_token *hyphen = here(mark);
    if (hyphen->kind != TOKEN_HYPHEN || hyphen[0].gap || hyphen[1].gap)
        return false;
    mark->at++;
    return true;
}

/* "clamp-type", "bolt type": the word after a family says nothing more. "roto-30" is held together. */
static void skip_type_word(mark_reader *mark)
{
    size_t start = mark->at;
    (void)take_tight_hyphen(mark);
    bool type = take_word(mark, "type");
    if (!type && here(mark)->kind != TOKEN_NUMBER && here(mark)->kind != TOKEN_WORD)
        mark->at = start;
    if (type)
        (void)take_tight_hyphen(mark);
}

/* A word that says nothing more, with or without a hyphen before it. */
static void skip_word(mark_reader *mark, const char *word)
{
    size_t start = mark->at;
    (void)take_kind(mark, TOKEN_HYPHEN);
    if (!take_word(mark, word))
        mark->at = start;
}

static bool take_rotochamber(mark_reader *mark)
{
    if (take_word(mark, "rotochamber"))
        return true;
    if (!take_word(mark, "roto"))
        return false;
    skip_word(mark, "chamber");
    return true;
}

/* "bolt C", "bolted flange C". */
static bool take_bolt(mark_reader *mark)
{
    if (!take_word(mark, "bolt") && !take_word(mark, "bolted"))
        return false;
    skip_word(mark, "flange");
    return true;
}

static bool take_dd3(mark_reader *mark)
{
    if (!take_word(mark, "dd"))
        return false;
    (void)take_kind(mark, TOKEN_HYPHEN);
    if (!is_number(here(mark), "3"))
        return false;
    mark->at++;
    return true;
}

/* Where there is none, whoever asks goes back. */
static rodt_family match_family(mark_reader *mark)
{
    if (take_word(mark, "clamp"))
        return RODT_FAMILY_CLAMP;
    if (take_bolt(mark))
        return RODT_FAMILY_BOLT;
    if (take_rotochamber(mark))
        return RODT_FAMILY_ROTOCHAMBER;
    return take_dd3(mark) ? RODT_FAMILY_DD_3 : RODT_FAMILY_UNKNOWN;
}

/* Before the size or after it, there with a hyphen too: "30-clamp". */
static bool take_family(mark_reader *mark)
{
    size_t start = mark->at;
    if (mark->size != 0)
        (void)take_tight_hyphen(mark);
    uint32_t column = here(mark)->column;
    rodt_family family = match_family(mark);
    if (family == RODT_FAMILY_UNKNOWN) {
        mark->at = start;
        return false;
    }
    skip_type_word(mark);
    if (mark->chamber.family != RODT_FAMILY_UNKNOWN && mark->chamber.family != family)
        name_twice(mark, column);
    mark->chamber.family = family;
    return true;
}

/* --- Sizes ------------------------------------------------------------------------------------------- */

static bool is_size_number(const char *text, size_t count)
{
    return (count == 1 || count == 2) && text[0] != '0';
}

/* Only clamp-band chambers carry a spring brake in a double housing (common practice, no source). */
static void set_spring(mark_reader *mark, const char *text, size_t count)
{
    memcpy(mark->chamber.spring_size, text, count);
    if (mark->chamber.family == RODT_FAMILY_UNKNOWN)
        mark->chamber.family = RODT_FAMILY_CLAMP;
}

/* "24/30", "24 / 30", "30-30": the second number is the spring brake. "24 - 30" would be a range. */
static bool take_spring(mark_reader *mark)
{
    size_t start = mark->at;
    if (!take_kind(mark, TOKEN_SLASH) && !take_tight_hyphen(mark))
        return false;
    const mark_token *number = here(mark);
    if (number->kind != TOKEN_NUMBER || !is_size_number(number->text, number->size)) {
        mark->at = start;
        return false;
    }
    mark->at++;
    set_spring(mark, number->text, number->size);
    return true;
}

/* "24L/30": the class of the service chamber may come before the spring brake. */
static bool take_spring_after_class(mark_reader *mark)
{
    return mark->size != 0 && mark->chamber.stroke_class == RODT_STROKE_CLASS_LONG &&
           mark->chamber.spring_size[0] == '\0' && take_spring(mark);
}

static bool take_number(mark_reader *mark)
{
    const mark_token *number = here(mark);
    if (mark->size != 0)
        return false;
    if (number->size == 4 && is_size_number(number->text, 2) && is_size_number(number->text + 2, 2)) {
        mark->at++;
        mark->size = number->column;
        memcpy(mark->chamber.size, number->text, 2);
        set_spring(mark, number->text + 2, 2);
        return true;
    }
    if (!is_size_number(number->text, number->size))
        return false;
    mark->at++;
    mark->size = number->column;
    memcpy(mark->chamber.size, number->text, number->size);
    (void)take_spring(mark);
    return true;
}

static bool names_bolt(const mark_reader *mark)
{
    for (size_t i = 0; i < mark->tokens.count; i++) {
        if (rodti_mark_is_word(&mark->tokens.at[i], "bolt") || rodti_mark_is_word(&mark->tokens.at[i], "bolted"))
            return true;
    }
    return false;
}

/* 'A' to 'G' for a word that is such a letter, or '\0'. */
static char bolt_size(const mark_token *letter)
{
    unsigned char upper = (unsigned char)letter->text[0] & 0xDFu;
    return letter->size == 1 && upper <= 'G' ? (char)upper : '\0';
}

/* A letter is a size only beside the word bolt: alone it can be a code of the rated stroke. */
static bool take_letter(mark_reader *mark)
{
    const mark_token *letter = here(mark);
    if (bolt_size(letter) == '\0' || mark->size != 0 || !names_bolt(mark))
        return false;
    mark->at++;
    mark->size = letter->column;
    mark->chamber.size[0] = bolt_size(letter);
    return true;
}

/* "Type 30", "typ 30", "T30", "T-30": only before the size. */
static bool take_prefix(mark_reader *mark)
{
    size_t start = mark->at;
    if (mark->typed || mark->size != 0)
        return false;
    bool word = take_word(mark, "type") || take_word(mark, "typ");
    if (!word && !take_word(mark, "t"))
        return false;
    (void)take_tight_hyphen(mark);
    mark->typed = here(mark)->kind == TOKEN_NUMBER || (word && here(mark)->kind == TOKEN_WORD);
    if (!mark->typed)
        mark->at = start;
    return mark->typed;
}

/* --- Classes ----------------------------------------------------------------------------------------- */

static bool match_class(mark_reader *mark, RODT_ENUM32(rodt_stroke_class) *stroke_class)
{
    if (take_word(mark, "l") || take_word(mark, "ls")) {
        *stroke_class = RODT_STROKE_CLASS_LONG;
        return true;
    }
    if (take_word(mark, "long"))
        *stroke_class = RODT_STROKE_CLASS_LONG;
    else if (take_word(mark, "standard") || take_word(mark, "std"))
        *stroke_class = RODT_STROKE_CLASS_STANDARD;
    else
        return false;
    skip_word(mark, "stroke");
    return true;
}

/* After the size; whole words may come before it too ("long stroke 30"), letters may not. */
static bool take_class(mark_reader *mark)
{
    size_t start = mark->at;
    bool after = mark->size != 0;
    if (after)
        (void)take_kind(mark, TOKEN_HYPHEN);
    const mark_token *word = here(mark);
    RODT_ENUM32(rodt_stroke_class) stroke_class;
    if ((!after && word->size < sizeof "std" - 1) || !match_class(mark, &stroke_class)) {
        mark->at = start;
        return false;
    }
    if (!rodt_chamber_add_class(&mark->chamber, stroke_class))
        name_twice(mark, word->column);
    return true;
}

/* "type 30 brake chamber", "clamp-type brake chamber 30": words that say nothing more. */
static bool take_chamber_word(mark_reader *mark)
{
    if (rodti_mark_is_word(here(mark), "brake") && rodti_mark_is_word(here(mark) + 1, "chamber"))
        mark->at++;
    return take_word(mark, "chamber");
}

/* --- The whole mark ---------------------------------------------------------------------------------- */

/* False: nothing that a mark has. */
static bool take_next(mark_reader *mark)
{
    switch (here(mark)->kind) {
    case TOKEN_NUMBER: return take_number(mark);
    case TOKEN_WORD:
        return take_prefix(mark) || take_family(mark) || take_letter(mark) || take_class(mark) ||
               take_chamber_word(mark);
    case TOKEN_HYPHEN: return take_family(mark) || take_class(mark);
    case TOKEN_SLASH: return take_spring_after_class(mark);
    case TOKEN_END:
    case TOKEN_OTHER: break;
    }
    return false;
}

/* Long rows are published for clamp chambers only, so a long mark names the family too. */
static void complete(rodt_chamber *chamber)
{
    if (chamber->family == RODT_FAMILY_UNKNOWN && chamber->stroke_class == RODT_STROKE_CLASS_LONG)
        chamber->family = RODT_FAMILY_CLAMP;
    if (chamber->family == RODT_FAMILY_DD_3 && chamber->size[0] == '\0')
        memcpy(chamber->size, "30", sizeof "30");
}

static bool is_consistent(const rodt_chamber *chamber)
{
    bool letter = text_is_letter((unsigned char)chamber->size[0]);
    if (chamber->size[0] == '\0' || letter != (chamber->family == RODT_FAMILY_BOLT))
        return false;
    return chamber->spring_size[0] == '\0' || chamber->family == RODT_FAMILY_CLAMP;
}

static rodt_status explain_incomplete(const mark_reader *mark, rodt_error *error)
{
    uint32_t column = mark->size != 0 ? mark->size : here(mark)->column;
    if (mark->chamber.family == RODT_FAMILY_BOLT)
        return rodti_error(error, RODT_E_UNKNOWN_CHAMBER, column, RODT_MESSAGE_ERROR_BOLT_LETTER);
    return rodti_error(error, RODT_E_UNKNOWN_CHAMBER, column, RODT_MESSAGE_ERROR_CHAMBER_INCOMPLETE);
}

#define SHOWN_LETTERS 20

/* A word or number is named completely, any other character by itself. */
static rodt_status explain_unexpected(const mark_token *found, rodt_error *error)
{
    char word[SHOWN_LETTERS + 1] = "";
    text_cursor cursor;
    rodti_text_start(&cursor, found->text, found->size);
    memcpy(word, found->text, found->size < SHOWN_LETTERS ? found->size : SHOWN_LETTERS);
    bool plain = found->kind == TOKEN_NUMBER || found->kind == TOKEN_WORD;
    const rodt_error_argument shown = plain ? rodti_error_word("found", word)
                                            : rodti_error_character("found", cursor.code);
    return rodti_error_with(error, RODT_E_UNKNOWN_CHAMBER, found->column, RODT_MESSAGE_ERROR_CHAMBER_UNEXPECTED,
                            &shown, 1);
}

static rodt_status explain_letter(const mark_token *found, rodt_error *error)
{
    const rodt_error_argument size = rodti_error_word("size", (const char[]){bolt_size(found), '\0'});
    return rodti_error_with(error, RODT_E_UNKNOWN_CHAMBER, found->column, RODT_MESSAGE_ERROR_CHAMBER_LETTER, &size, 1);
}

static rodt_status explain_error(const mark_reader *mark, rodt_error *error)
{
    const mark_token *found = here(mark);
    if (mark->tokens.count == 0)
        return rodti_error(error, RODT_E_EMPTY, 0, RODT_MESSAGE_ERROR_NO_CHAMBER);
    if (rodti_mark_is_date(&mark->tokens))
        return rodti_error(error, RODT_E_DATE_CELL, 1, RODT_MESSAGE_ERROR_CHAMBER_DATE);
    if (mark->tokens.count == 1 && found->kind == TOKEN_WORD && bolt_size(found) != '\0')
        return explain_letter(found, error);
    if (found->kind == TOKEN_END)
        return explain_incomplete(mark, error);
    return explain_unexpected(found, error);
}

/* "30", as most files have it: nothing but a size. */
static bool is_bare_number(const char *text, size_t size)
{
    return is_size_number(text, size) && text_is_digit((unsigned char)text[0]) &&
           text_is_digit((unsigned char)text[size - 1]);
}

rodt_status rodt_chamber_parse_n(const char *text, size_t size, rodt_chamber *out, rodt_error *error)
{
    if (text == NULL || out == NULL)
        return rodti_text_error(error, RODT_E_ARGUMENT, 0, "a text and a place for the chamber are needed");
    if (is_bare_number(text, size)) {
        memset(out, 0, sizeof *out);
        memcpy(out->size, text, size);
        return RODT_OK;
    }
    mark_reader mark;
    memset(&mark.chamber, 0, sizeof mark.chamber);
    mark.at = 0;
    mark.typed = false;
    mark.size = mark.twice = 0;
    rodti_text_trim(&text, &size);
    rodti_lexer_next(&mark.tokens, text, size);
    while (take_next(&mark))
        ;
    complete(&mark.chamber);
    if (here(&mark)->kind != TOKEN_END || (mark.twice == 0 && !is_consistent(&mark.chamber)))
        return explain_error(&mark, error);
    if (mark.twice != 0)
        return rodti_error(error, RODT_E_AMBIGUOUS, mark.twice, RODT_MESSAGE_ERROR_CHAMBER_TWICE);
    *out = mark.chamber;
    return RODT_OK;
}

rodt_status rodt_chamber_parse(const char *text, rodt_chamber *out, rodt_error *error)
{
    return rodt_chamber_parse_n(text, text == NULL ? 0 : strlen(text), out, error);
}

rodt_status rodt_stroke_class_parse_n(const char *text, size_t size, RODT_ENUM32(rodt_stroke_class) *out,
                                      rodt_error *error)
{
    if (text == NULL || out == NULL)
        return rodti_text_error(error, RODT_E_ARGUMENT, 0, "a text and a place for the class are needed");
    rodti_text_trim(&text, &size);
    for (int i = RODT_STROKE_CLASS_STANDARD; i <= RODT_STROKE_CLASS_LONG; i++) { /* as most files have it */
        if (rodti_text_is_word(text, size, rodt_stroke_class_name((rodt_stroke_class)i))) {
            *out = (rodt_stroke_class)i;
            return RODT_OK;
        }
    }
    mark_reader mark;
    mark.at = 0;
    rodti_lexer_next(&mark.tokens, text, size);
    RODT_ENUM32(rodt_stroke_class) stroke_class = RODT_STROKE_CLASS_UNKNOWN;
    if (!take_word(&mark, "unknown"))
        (void)match_class(&mark, &stroke_class);
    if (here(&mark)->kind != TOKEN_END)
        return rodti_error(error, RODT_E_SYNTAX, here(&mark)->column, RODT_MESSAGE_ERROR_STROKE_CLASS);
    *out = stroke_class;
    return RODT_OK;
}

rodt_status rodt_stroke_class_parse(const char *text, RODT_ENUM32(rodt_stroke_class) *out, rodt_error *error)
{
    return rodt_stroke_class_parse_n(text, text == NULL ? 0 : strlen(text), out, error);
}
