/* SPDX-License-Identifier: Apache-2.0 */
/* Positions and adjusters of wheel ends: read from what people write on a form, and written. */
#include "rodtravel/vehicle.h"

#include "core/number_parse.h"
#include "core/text.h"
#include "vehicle/words.h"

#include <string.h>

static const struct {
    const char *word;
    rodt_side side;
} side_words[] = {
    {"l", RODT_SIDE_LEFT},       {"lh", RODT_SIDE_LEFT},       {"left", RODT_SIDE_LEFT},
    {"g", RODT_SIDE_LEFT},       {"gauche", RODT_SIDE_LEFT},   {"r", RODT_SIDE_RIGHT},
    {"rh", RODT_SIDE_RIGHT},     {"right", RODT_SIDE_RIGHT},   {"d", RODT_SIDE_RIGHT},
    {"droite", RODT_SIDE_RIGHT}, {"droit", RODT_SIDE_RIGHT},
};

#define AXLE_NUMBER_MAX_TEXT "99"

/* The word at the cursor, which moves after it. */
static size_t read_word(text_cursor *cursor, const char **word)
{
    *word = (const char *)cursor->at;
    while (text_is_letter(cursor->code))
        rodti_text_next(cursor);
    return (size_t)((const char *)cursor->at - *word);
}

static rodt_status set_error(rodt_error *error, const text_cursor *cursor, rodt_message_code expected)
{
    const rodt_error_argument arguments[] = {rodti_error_phrase("wanted", expected),
                                             rodti_error_character("found", cursor->code)};
    return rodti_error_with(error, RODT_E_SYNTAX, cursor->column, RODT_MESSAGE_ERROR_POSITION_EXPECTED, arguments,
                            COUNT_OF(arguments));
}

/* "axle 4 right": the word says nothing that the number does not. */
static bool skip_axle_word(text_cursor *cursor)
{
    const char *word;
    size_t size = read_word(cursor, &word);
    rodti_text_skip_blanks(cursor);
    return size == 0 || rodti_text_is_word(word, size, "axle") || rodti_text_is_word(word, size, "essieu");
}

static int16_t read_axle(text_cursor *cursor)
{
    int16_t axle = 0;
    for (; text_is_digit(cursor->code); rodti_text_next(cursor)) {
        if (axle <= RODT_AXLE_NUMBER_MAX)
            axle = (int16_t)(axle * 10 + (int16_t)(cursor->code - '0'));
    }
    return axle;
}

static void skip_separator(text_cursor *cursor)
{
    rodti_text_skip_blanks(cursor);
    if (cursor->code == '-' || cursor->code == 0x2010 || cursor->code == 0x2011)
        rodti_text_next(cursor);
    rodti_text_skip_blanks(cursor);
}

static rodt_side read_side(text_cursor *cursor)
{
    const char *word;
    size_t size = read_word(cursor, &word);
    for (size_t i = 0; i < COUNT_OF(side_words); i++) {
        if (rodti_text_is_word(word, size, side_words[i].word))
            return side_words[i].side;
    }
    return RODT_SIDE_UNKNOWN;
}

static rodt_status read_position(text_cursor *cursor, rodt_position *out, rodt_error *error)
{
    text_cursor start = *cursor;
    if (!skip_axle_word(cursor))
        return set_error(error, &start, RODT_MESSAGE_ERROR_WANTED_AXLE);
    start = *cursor;
    if (!text_is_digit(cursor->code))
        return set_error(error, &start, RODT_MESSAGE_ERROR_WANTED_AXLE);
    int16_t axle = read_axle(cursor);
    if (axle < 1 || axle > RODT_AXLE_NUMBER_MAX) {
        const rodt_error_argument most = rodti_error_word("most", AXLE_NUMBER_MAX_TEXT);
        return rodti_error_with(error, RODT_E_IMPLAUSIBLE, start.column, RODT_MESSAGE_ERROR_POSITION_AXLE, &most, 1);
    }
    skip_separator(cursor);
    start = *cursor;
    rodt_side side = read_side(cursor);
    if (side == RODT_SIDE_UNKNOWN)
        return set_error(error, &start, RODT_MESSAGE_ERROR_WANTED_SIDE);
    rodti_text_skip_blanks(cursor);
    if (cursor->code != TEXT_END)
        return set_error(error, cursor, RODT_MESSAGE_ERROR_WANTED_END);
    *out = (rodt_position){.axle = axle, .side = side};
    return RODT_OK;
}

rodt_status rodt_position_parse_n(const char *text, size_t size, rodt_position *out, rodt_error *error)
{
    if (text == NULL || out == NULL)
        return rodti_text_error(error, RODT_E_ARGUMENT, 0, "no text, or no place for the position");
    text_cursor cursor;
    rodti_number_parse_start(&cursor, text, size);
    if (cursor.code == TEXT_END)
        return rodti_error(error, RODT_E_EMPTY, cursor.column, RODT_MESSAGE_ERROR_POSITION_NONE);
    return read_position(&cursor, out, error);
}

rodt_status rodt_position_parse(const char *text, rodt_position *out, rodt_error *error)
{
    return rodt_position_parse_n(text, text != NULL ? strlen(text) : 0, out, error);
}

rodt_status rodt_position_format(rodt_position position, char *text, size_t size, size_t *needed)
{
    if (position.axle < 1 || position.axle > RODT_AXLE_NUMBER_MAX ||
        (position.side != RODT_SIDE_LEFT && position.side != RODT_SIDE_RIGHT))
        return RODT_E_ARGUMENT;
    text_writer writer;
    rodti_text_begin(&writer);
    rodti_text_putf(&writer, "%d%c", position.axle, position.side == RODT_SIDE_LEFT ? 'L' : 'R');
    return rodti_text_copy_out(&writer, text, size, needed);
}

/* --- Adjusters --------------------------------------------------------------------------------------- */

rodt_status rodt_adjuster_parse_n(const char *text, size_t size, RODT_ENUM32(rodt_adjuster) *out, rodt_error *error)
{
    if (text == NULL || out == NULL)
        return rodti_text_error(error, RODT_E_ARGUMENT, 0, "a text and a place for the adjuster are needed");
    rodti_text_trim(&text, &size);
    const rodt_enumerator *found = rodt_enumerator_find_n(&rodti_words_adjuster, text, size);
    if (size == 0 || rodti_text_is_word(text, size, "unknown"))
        *out = RODT_ADJUSTER_NOT_RECORDED;
    else if (rodti_text_is_word(text, size, "auto"))
        *out = RODT_ADJUSTER_AUTOMATIC;
    else if (found != NULL)
        *out = (rodt_adjuster)found->number;
    else
        return rodti_error(error, RODT_E_SYNTAX, 1, RODT_MESSAGE_ERROR_ADJUSTER);
    return RODT_OK;
}

rodt_status rodt_adjuster_parse(const char *text, RODT_ENUM32(rodt_adjuster) *out, rodt_error *error)
{
    return rodt_adjuster_parse_n(text, text != NULL ? strlen(text) : 0, out, error);
}
