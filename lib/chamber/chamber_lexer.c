/* SPDX-License-Identifier: Apache-2.0 */
/* Tokenizes a mark. Letters and digits separate without a blank ("30LS"); every other character is one token. */
#include "chamber/chamber_lexer.h"

#include "core/month.h"

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
    return code == TEXT_END ? TOKEN_END : TOKEN_OTHER;
}

static mark_token next_token(text_cursor *cursor)
{
    const unsigned char *before = cursor->at;
    rodti_text_skip_blanks(cursor);
    mark_token token = {.kind = kind_of(cursor->code), .gap = cursor->at != before, .column = cursor->column,
                   .text = (const char *)cursor->at};
    rodti_text_next(cursor);
    while (token.kind == TOKEN_NUMBER && text_is_digit(cursor->code))
        rodti_text_next(cursor);
    while (token.kind == TOKEN_WORD && text_is_letter(cursor->code))
        rodti_text_next(cursor);
    token.size = (size_t)((const char *)cursor->at - token.text);
    return token;
}

/* Joined to the token before it. */
static bool follows(const mark_token *token, token_kind kind) { return token->kind == kind && !token->gap; }

static bool is_zeros(const mark_token *number)
{
    size_t i = 0;
    while (i < number->size && number->text[i] == '0')
        i++;
    return i == number->size;
}

/* "30.0": a table that takes chambers for numbers writes them so. */
static bool is_whole_number(const mark_tokens *tokens)
{
    const mark_token *t = tokens->at;
    return tokens->count == 3 && t[0].kind == TOKEN_NUMBER && follows(&t[1], TOKEN_OTHER) &&
           (*t[1].text == '.' || *t[1].text == ',') && follows(&t[2], TOKEN_NUMBER) && is_zeros(&t[2]);
}

void rodti_lexer_next(mark_tokens *tokens, const char *text, size_t size)
{
    text_cursor cursor;
    rodti_text_start(&cursor, text, size);
    tokens->count = 0;
    tokens->end = text + size;
    do {
        tokens->at[tokens->count] = next_token(&cursor);
    } while (tokens->at[tokens->count].kind != TOKEN_END && ++tokens->count < TOKENS_MAX);
    if (tokens->count == TOKENS_MAX)
        tokens->at[TOKENS_MAX - 1].kind = TOKEN_OTHER;
    if (is_whole_number(tokens))
        tokens->count = 1;
    tokens->at[tokens->count].kind = TOKEN_END;
}

/* --- Dates that were marks ---------------------------------------------------------------------------- */

/* Numbers of more digits than a day number has are all alike. */
static unsigned value_of(const mark_token *number)
{
    unsigned value = 0;
    for (size_t i = 0; i < number->size && i < 6; i++)
        value = value * 10 + (unsigned)(number->text[i] - '0');
    return value;
}

static bool can_be_day_and_month(const mark_token *a, const mark_token *b)
{
    unsigned x = value_of(a);
    unsigned y = value_of(b);
    return x >= 1 && y >= 1 && ((x <= 31 && y <= 12) || (x <= 12 && y <= 31));
}

/* "1/4/2024", "2024-03-24"; what follows is a time. */
static bool is_number_date(const mark_token *t)
{
    if (t[0].kind != TOKEN_NUMBER || t[2].kind != TOKEN_NUMBER || t[4].kind != TOKEN_NUMBER ||
        t[1].kind != t[3].kind || (t[1].kind != TOKEN_SLASH && t[1].kind != TOKEN_HYPHEN))
        return false;
    return t[0].size == 4 ? can_be_day_and_month(&t[2], &t[4]) : can_be_day_and_month(&t[0], &t[2]);
}

/* A name with an accent is more than one token, so it is read from the text. */
static bool is_month_at(const mark_tokens *tokens, size_t index)
{
    const char *name = tokens->at[index].text;
    text_cursor cursor;
    rodti_text_start(&cursor, name, (size_t)(tokens->end - name));
    return tokens->at[index].kind == TOKEN_WORD && rodti_month_read(&cursor) != 0;
}

/* "24-Mar", "mars-24", "01-févr". */
static bool is_month_date(const mark_tokens *tokens)
{
    const mark_token *t = tokens->at;
    for (size_t i = 0; i + 2 < tokens->count; i++) {
        bool joined = t[i + 1].kind == TOKEN_HYPHEN;
        if (joined && t[i].kind == TOKEN_NUMBER && is_month_at(tokens, i + 2))
            return true;
        if (joined && t[i + 2].kind == TOKEN_NUMBER && is_month_at(tokens, i))
            return true;
    }
    return false;
}

bool rodti_mark_is_date(const mark_tokens *tokens)
{
    const mark_token *t = tokens->at;
    if (tokens->count == 1 && t->kind == TOKEN_NUMBER)
        return t->size == 5 && value_of(t) >= 30000 && value_of(t) <= 60000;
    return (tokens->count >= 5 && is_number_date(t)) || is_month_date(tokens);
}
