/* SPDX-License-Identifier: Apache-2.0 */
/* UTF-8 cursor that counts columns, located errors, bounded writer. */
#ifndef RODT_TEXT_H
#define RODT_TEXT_H

#include "core/common.h"
#include "rodtravel/status.h"

#define TEXT_END 0x110000u /* after the last character */
#define TEXT_BAD 0x110001u /* bytes that are not UTF-8; one byte is taken at a time */

/* A place in a text. `code` is the character here, already decoded. */
typedef struct text_cursor {
    const unsigned char *at;
    const unsigned char *end;
    uint32_t column; /* of the character here, from 1 */
    uint32_t code;
    uint32_t bytes; /* of the character here; 0 at the end */
} text_cursor;

void rodti_text_start(text_cursor *cursor, const char *text, size_t size);
void rodti_text_next_any(text_cursor *cursor);

/* Goes on to the next character; most that follow are ASCII. A character of several bytes goes on with others. */
static inline void rodti_text_next(text_cursor *cursor)
{
    const unsigned char *next = cursor->at + 1;
    if (cursor->code == TEXT_END || next == cursor->end || *next >= 0x80) {
        rodti_text_next_any(cursor);
        return;
    }
    cursor->at = next;
    cursor->column++;
    cursor->code = *next;
}

/* Blanks that people and programs put between numbers: space, tab, no-break and thin spaces. */
bool rodti_text_is_blank(uint32_t code);
/* A cell may also end in line ends. */
void rodti_text_skip_blanks(text_cursor *cursor);

static inline bool text_is_digit(uint32_t code) { return code - '0' < 10u; }
static inline bool text_is_letter(uint32_t code) { return (code | 32u) - 'a' < 26u; }

/* Removes blanks and line ends at both ends. */
void rodti_text_trim(const char **text, size_t *size);

/* The size without a character at the end that is not complete. */
size_t rodti_text_cut(const char *text, size_t size);

/* True if size bytes of text are the ASCII word, in upper or lower case. */
bool rodti_text_is_word(const char *text, size_t size, const char *word);

/* Fills *error (may be NULL) and returns status. The field stays empty. */
rodt_status rodti_text_error(rodt_error *error, rodt_status status, uint32_t column, const char *format, ...)
    PRINTF_LIKE(4, 5);

/* Writes a character as a person can see it: itself, or "U+00AD" for an invisible one. */
#define TEXT_SHOWN_SIZE 16
void rodti_text_show(uint32_t code, char shown[TEXT_SHOWN_SIZE]);

/* The end of every public function that writes a text (status.h): copies `used` bytes and a zero byte. */
rodt_status rodti_text_copy(const char *line, size_t used, char *text, size_t size, size_t *needed);

/* Builds a text of bounded length; when it is complete, rodti_text_copy_out copies it at once, so that the
 * buffer of the caller is untouched on failure. */
typedef struct text_writer {
    size_t used;
    bool full;
    char buffer[1024];
} text_writer;

void rodti_text_begin(text_writer *writer);
void rodti_text_put(text_writer *writer, const char *text);
void rodti_text_putf(text_writer *writer, const char *format, ...) PRINTF_LIKE(2, 3);
rodt_status rodti_text_copy_out(const text_writer *writer, char *text, size_t size, size_t *needed);

#endif
