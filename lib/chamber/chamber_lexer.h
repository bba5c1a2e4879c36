/* SPDX-License-Identifier: Apache-2.0 */
/* Lexer of a chamber mark: numbers, words and joiners. */
#ifndef RODT_CHAMBER_LEXER_H
#define RODT_CHAMBER_LEXER_H

#include "core/text.h"

typedef enum token_kind { TOKEN_END, TOKEN_NUMBER, TOKEN_WORD, TOKEN_SLASH, TOKEN_HYPHEN, TOKEN_OTHER } token_kind;

typedef struct mark_token {
    token_kind kind;
    bool gap; /* there are blanks before it */
    uint32_t column;
    const char *text;
    size_t size;
} mark_token;

/* No mark that makes sense is longer: "rotochamber - type 24 / 30 long - stroke". */
#define TOKENS_MAX 12

/* The tokens of one text. The last is followed by one of kind TOKEN_END. A text with more tokens than there is room
 * for ends in one of kind TOKEN_OTHER, which no mark has. */
typedef struct mark_tokens {
    mark_token at[TOKENS_MAX + 1];
    size_t count;
    const char *end; /* of the text */
} mark_tokens;

/* Points into the text, which has no blanks at its ends. */
void rodti_lexer_next(mark_tokens *tokens, const char *text, size_t size);

/* True if the token is the ASCII word of small letters, in upper or lower case. */
static inline bool rodti_mark_is_word(const mark_token *token, const char *word)
{
    return token->kind == TOKEN_WORD && (token->text[0] | 32) == word[0] &&
           rodti_text_is_word(token->text, token->size, word);
}

/* True for what a spreadsheet makes of "24/3" or "16-12": "24-Mar", "1/4/2024", "2024-03-24 00:00", 45375. */
bool rodti_mark_is_date(const mark_tokens *tokens);

#endif
