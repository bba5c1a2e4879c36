/* SPDX-License-Identifier: Apache-2.0 */
/* Reads a chamber mark. The text is cut into numbers, words and joiners, and each is taken by what may
 * stand at its place; whatever is left over refuses the whole, so that no half of a mark is believed. */
#include "rodtravel/chamber.h"

#include "month.h"
#include "text.h"

#include <string.h>

typedef enum token_kind { TOKEN_END, TOKEN_NUMBER, TOKEN_WORD, TOKEN_SLASH, TOKEN_HYPHEN, TOKEN_ODD } token_kind;

typedef struct mark_token {
    token_kind kind;
    bool gap; /* blanks stand before it */
    uint32_t column;
    const char *text;
    size_t size;
} mark_token;

/* No mark that makes sense is longer: "rotochamber - type 24 / 30 long - stroke". */
#define TOKENS_MAX 12

typedef struct mark_reader {
    mark_token tokens[TOKENS_MAX + 1];
    size_t count;
    size_t at;
    rodt_chamber chamber;
    bool typed; /* "type" or "T" was there */
    bool twice; /* two families or two classes were named */
} mark_reader;

static token_kind kind_of(uint32_t code)
{
    if (text_is_digit(code))
        return TOKEN_NUMBER;
    if (text_is_letter(code))
        return TOKEN_WORD;
    if (code == '/' || code == 0x2044)
        return TOKEN_SLASH;
    if (code == '-' || code == 0x2010 || code == 0x2011)
        return TOKEN_HYPHEN;
    return code == TEXT_END ? TOKEN_END : TOKEN_ODD;
}

static mark_token next_token(text_cursor *cursor)
{
    const unsigned char *before = cursor->at;
    text_skip_blanks(cursor);
    mark_token token = {.kind = kind_of(cursor->code), .gap = cursor->at != before, .column = cursor->column,
                   .text = (const char *)cursor->at};
    do
        text_next(cursor);
    while ((token.kind == TOKEN_NUMBER || token.kind == TOKEN_WORD) && kind_of(cursor->code) == token.kind);
    token.size = (size_t)((const char *)cursor->at - token.text);
    return token;
}

/* Marks that are too long keep an odd token at their end, which nothing takes. */
static void cut(mark_reader *mark, const char *text, size_t size)
{
    text_cursor cursor;
    text_start(&cursor, text, size);
    while (cursor.code == '\n' || cursor.code == '\r' || text_is_blank(cursor.code))
        text_next(&cursor);
    do {
        mark->tokens[mark->count] = next_token(&cursor);
    } while (mark->tokens[mark->count].kind != TOKEN_END && ++mark->count < TOKENS_MAX);
    if (mark->count == TOKENS_MAX)
        mark->tokens[TOKENS_MAX - 1].kind = TOKEN_ODD;
    mark->tokens[mark->count].kind = TOKEN_END;
}

static const mark_token *here(const mark_reader *mark) { return &mark->tokens[mark->at]; }

static bool is_word(const mark_token *token, const char *word)
{
    return token->kind == TOKEN_WORD && text_is_word(token->text, token->size, word);
}

static bool take_word(mark_reader *mark, const char *word)
{
    if (!is_word(here(mark), word))
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

static bool set_family(mark_reader *mark, rodt_family family)
{
    if (mark->chamber.family != RODT_FAMILY_UNKNOWN && mark->chamber.family != family)
        mark->twice = true;
    mark->chamber.family = family;
    return true;
}

/* "clamp-type", "bolt type": the word after a family says nothing more. */
static void skip_type_word(mark_reader *mark)
{
    size_t start = mark->at;
    bool hyphen = take_kind(mark, TOKEN_HYPHEN);
    if (!take_word(mark, "type") && hyphen)
        mark->at = start;
}

static bool take_rotochamber(mark_reader *mark)
{
    if (take_word(mark, "rotochamber"))
        return true;
    if (!take_word(mark, "roto"))
        return false;
    size_t start = mark->at;
    (void)take_kind(mark, TOKEN_HYPHEN);
    if (!take_word(mark, "chamber"))
        mark->at = start;
    return true;
}

static bool take_dd3(mark_reader *mark)
{
    size_t start = mark->at;
    if (!take_word(mark, "dd"))
        return false;
    (void)take_kind(mark, TOKEN_HYPHEN);
    if (is_number(here(mark), "3")) {
        mark->at++;
        return true;
    }
    mark->at = start;
    return false;
}

static bool take_family(mark_reader *mark)
{
    rodt_family family = RODT_FAMILY_UNKNOWN;
    if (take_word(mark, "clamp"))
        family = RODT_FAMILY_CLAMP;
    else if (take_word(mark, "bolt") || take_word(mark, "bolted"))
        family = RODT_FAMILY_BOLT;
    else if (take_rotochamber(mark))
        family = RODT_FAMILY_ROTOCHAMBER;
    else if (take_dd3(mark))
        family = RODT_FAMILY_DD3;
    else
        return false;
    skip_type_word(mark);
    return set_family(mark, family);
}

/* --- Sizes ------------------------------------------------------------------------------------------- */

static void set_size(char size[RODT_SIZE_TEXT_SIZE], const char *text, size_t count)
{
    memset(size, 0, RODT_SIZE_TEXT_SIZE);
    memcpy(size, text, count);
}

static bool is_size_number(const char *text, size_t count)
{
    return (count == 1 || count == 2) && text[0] != '0';
}

/* Only clamp-band chambers carry a spring brake in a double housing (common practice, no source). */
static void set_spring(mark_reader *mark, const char *text, size_t count)
{
    set_size(mark->chamber.spring_size, text, count);
    if (mark->chamber.family == RODT_FAMILY_UNKNOWN)
        mark->chamber.family = RODT_FAMILY_CLAMP;
}

/* "24/30", "30-30": the second number is the spring brake. */
static bool take_spring(mark_reader *mark)
{
    size_t start = mark->at;
    if (!take_kind(mark, TOKEN_SLASH) && !take_kind(mark, TOKEN_HYPHEN))
        return false;
    const mark_token *number = here(mark);
    if (number->kind != TOKEN_NUMBER || number->gap || !is_size_number(number->text, number->size)) {
        mark->at = start;
        return false;
    }
    mark->at++;
    set_spring(mark, number->text, number->size);
    return true;
}

static bool take_number(mark_reader *mark)
{
    const mark_token *number = here(mark);
    if (number->kind != TOKEN_NUMBER || mark->chamber.size[0] != '\0')
        return false;
    if (number->size == 4 && is_size_number(number->text, 2) && is_size_number(number->text + 2, 2)) {
        mark->at++;
        set_size(mark->chamber.size, number->text, 2);
        set_spring(mark, number->text + 2, 2);
        return true;
    }
    if (!is_size_number(number->text, number->size))
        return false;
    mark->at++;
    set_size(mark->chamber.size, number->text, number->size);
    (void)take_spring(mark);
    return true;
}

static bool names_bolt(const mark_reader *mark)
{
    for (size_t i = 0; i < mark->count; i++) {
        if (is_word(&mark->tokens[i], "bolt") || is_word(&mark->tokens[i], "bolted"))
            return true;
    }
    return false;
}

/* 'A' to 'G' for such a letter, or '\0'. */
static char bolt_size(const mark_token *letter)
{
    unsigned char upper = (unsigned char)letter->text[0] & 0xDFu;
    return letter->size == 1 && upper >= 'A' && upper <= 'G' ? (char)upper : '\0';
}

/* A letter is a size only beside the word bolt: alone it can be a code of the rated stroke. */
static bool take_letter(mark_reader *mark)
{
    const mark_token *letter = here(mark);
    if (letter->kind != TOKEN_WORD || bolt_size(letter) == '\0' || mark->chamber.size[0] != '\0' || !names_bolt(mark))
        return false;
    mark->at++;
    mark->chamber.size[0] = bolt_size(letter);
    return true;
}

/* "Type 30", "typ 30", "T30": only in front of the size. */
static bool take_prefix(mark_reader *mark)
{
    size_t start = mark->at;
    if (mark->typed || mark->chamber.size[0] != '\0')
        return false;
    bool word = take_word(mark, "type") || take_word(mark, "typ");
    if (!word && !take_word(mark, "t"))
        return false;
    mark->typed = here(mark)->kind == TOKEN_NUMBER || (word && here(mark)->kind == TOKEN_WORD);
    if (!mark->typed)
        mark->at = start;
    return mark->typed;
}

/* --- Classes ----------------------------------------------------------------------------------------- */

static bool match_class(mark_reader *mark, rodt_stroke_class *stroke_class)
{
    if (take_word(mark, "l") || take_word(mark, "ls")) {
        *stroke_class = RODT_CLASS_LONG;
        return true;
    }
    if (take_word(mark, "long"))
        *stroke_class = RODT_CLASS_LONG;
    else if (take_word(mark, "standard") || take_word(mark, "std"))
        *stroke_class = RODT_CLASS_STANDARD;
    else
        return false;
    size_t start = mark->at;
    (void)take_kind(mark, TOKEN_HYPHEN);
    if (!take_word(mark, "stroke"))
        mark->at = start;
    return true;
}

static bool take_class(mark_reader *mark)
{
    size_t start = mark->at;
    if (mark->chamber.size[0] == '\0')
        return false;
    (void)take_kind(mark, TOKEN_HYPHEN);
    rodt_stroke_class stroke_class;
    if (!match_class(mark, &stroke_class)) {
        mark->at = start;
        return false;
    }
    if (!rodt_chamber_add_class(&mark->chamber, stroke_class))
        mark->twice = true;
    return true;
}

/* --- The whole mark ---------------------------------------------------------------------------------- */

/* Long rows are published for clamp chambers only, so a long mark names the family too. */
static void complete(rodt_chamber *chamber)
{
    if (chamber->family == RODT_FAMILY_UNKNOWN && chamber->stroke_class == RODT_CLASS_LONG)
        chamber->family = RODT_FAMILY_CLAMP;
    if (chamber->family == RODT_FAMILY_DD3 && chamber->size[0] == '\0')
        set_size(chamber->size, "30", 2);
}

static bool is_consistent(const rodt_chamber *chamber)
{
    bool letter = text_is_letter((unsigned char)chamber->size[0]);
    if (chamber->size[0] == '\0' || letter != (chamber->family == RODT_FAMILY_BOLT))
        return false;
    return chamber->spring_size[0] == '\0' || chamber->family == RODT_FAMILY_CLAMP;
}

/* "24-Mar", "mar-24", "1/4/2024", "2024-03-24". */
static bool is_date(const mark_reader *mark)
{
    const mark_token *t = mark->tokens;
    if (mark->count == 5 && t[0].kind == TOKEN_NUMBER && t[2].kind == TOKEN_NUMBER && t[4].kind == TOKEN_NUMBER)
        return t[1].kind == t[3].kind && (t[1].kind == TOKEN_SLASH || t[1].kind == TOKEN_HYPHEN);
    for (size_t i = 0; i + 2 < mark->count; i++) {
        if (t[i + 1].kind != TOKEN_HYPHEN)
            continue;
        const mark_token *name = t[i].kind == TOKEN_WORD ? &t[i] : &t[i + 2];
        const mark_token *number = t[i].kind == TOKEN_WORD ? &t[i + 2] : &t[i];
        text_cursor cursor;
        text_start(&cursor, name->text, name->size);
        if (number->kind == TOKEN_NUMBER && month_read(&cursor) != 0)
            return true;
    }
    return false;
}

static rodt_status refuse(const mark_reader *mark, rodt_error *error)
{
    const mark_token *odd = here(mark);
    if (mark->count == 0)
        return text_error(error, RODT_E_EMPTY, 0, "there is no chamber");
    if (is_date(mark))
        return text_error(error, RODT_E_DATE_CELL, 1, "a spreadsheet made a date of this chamber mark");
    if (mark->count == 1 && odd->kind == TOKEN_WORD && odd->size == 1 && bolt_size(odd) != '\0')
        return text_error(error, RODT_E_UNKNOWN_CHAMBER, odd->column,
                          "a letter alone can be a bolt-type size or a rated-stroke code: write \"bolt %c\"",
                          bolt_size(odd));
    if (mark->chamber.family == RODT_FAMILY_BOLT && odd->kind == TOKEN_END)
        return text_error(error, RODT_E_UNKNOWN_CHAMBER, odd->column, "a bolt-type chamber has a letter, A to G");
    if (odd->kind == TOKEN_END)
        return text_error(error, RODT_E_UNKNOWN_CHAMBER, odd->column,
                          "this is no whole chamber mark: a type number such as 30, 24/30 or 30L was expected");
    char shown[TEXT_SHOWN_SIZE];
    text_cursor cursor;
    text_start(&cursor, odd->text, odd->size);
    text_show(cursor.code, shown);
    return text_error(error, RODT_E_UNKNOWN_CHAMBER, odd->column,
                      "%s does not belong to a chamber mark such as 30, 24/30, 30L, bolt C or roto 30", shown);
}

rodt_status rodt_chamber_read(const char *text, size_t size, rodt_chamber *out, rodt_error *error)
{
    if (text == NULL || out == NULL)
        return text_error(error, RODT_E_ARGUMENT, 0, "a text and a place for the chamber are needed");
    mark_reader mark;
    memset(&mark.chamber, 0, sizeof mark.chamber);
    mark.count = mark.at = 0;
    mark.typed = mark.twice = false;
    text_trim(&text, &size);
    cut(&mark, text, size);
    while (take_prefix(&mark) || take_family(&mark) || take_letter(&mark) || take_number(&mark) ||
           take_class(&mark))
        continue;
    complete(&mark.chamber);
    if (mark.twice)
        return text_error(error, RODT_E_AMBIGUOUS, 1, "this names two kinds of chamber at once");
    if (here(&mark)->kind != TOKEN_END || !is_consistent(&mark.chamber))
        return refuse(&mark, error);
    *out = mark.chamber;
    return RODT_OK;
}

rodt_status rodt_chamber_parse(const char *text, rodt_chamber *out, rodt_error *error)
{
    return rodt_chamber_read(text, text == NULL ? 0 : strlen(text), out, error);
}

rodt_status rodt_stroke_class_read(const char *text, size_t size, rodt_stroke_class *out, rodt_error *error)
{
    if (text == NULL || out == NULL)
        return text_error(error, RODT_E_ARGUMENT, 0, "a text and a place for the class are needed");
    text_trim(&text, &size);
    mark_reader mark;
    memset(&mark, 0, sizeof mark);
    cut(&mark, text, size);
    rodt_stroke_class stroke_class = RODT_CLASS_UNKNOWN;
    if (mark.count > 0 && !take_word(&mark, "unknown") && !match_class(&mark, &stroke_class))
        return text_error(error, RODT_E_SYNTAX, 1, "a stroke class is standard, long or unknown");
    if (here(&mark)->kind != TOKEN_END)
        return text_error(error, RODT_E_SYNTAX, here(&mark)->column, "a stroke class is standard, long or unknown");
    *out = stroke_class;
    return RODT_OK;
}
