/* SPDX-License-Identifier: Apache-2.0 */
/* A piece of tape with the pin on it, two columns a tick, so that it can be read tick for tick at 80 columns. */
#include "practice/practice.h"
#include "ui/language.h"

#include <stdio.h>
#include <string.h>

#define MARGIN 2 /* columns before the first tick: room for half of a number of three digits */

/* --- Which piece -------------------------------------------------------------------------------------- */

/* Two inches, or thirty millimetres, with the pin well inside and a number on either side of it; a narrow piece has
 * half of that and begins at the number before the pin. */
practice_window practice_window_of(rodt_length at, rodt_unit unit, bool narrow)
{
    bool metric = unit == RODT_UNIT_MM;
    practice_window out = {.whole = metric ? 10 : 16, .number = metric ? 10 : 1, .ticks = metric ? 30 : 32};
    if (narrow)
        out.ticks /= 2;
    rodt_length ticks;
    if (rodt_length_scale(at, metric ? (rodt_ratio){127, 5} : (rodt_ratio){16, 1}, &ticks) == RODT_OK)
        out.pointer = (int)(ticks.num / ticks.den);
    int before = narrow ? out.pointer : out.pointer - out.whole / 2;
    out.first = before < 0 ? 0 : before / out.whole * out.whole;
    return out;
}

int practice_tick_height(int tick, rodt_unit unit)
{
    if (unit == RODT_UNIT_MM)
        return tick % 10 == 0 ? 5 : tick % 5 == 0 ? 3 : 1;
    return tick % 16 == 0 ? 5 : tick % 8 == 0 ? 4 : tick % 4 == 0 ? 3 : tick % 2 == 0 ? 2 : 1;
}

/* --- Drawn -------------------------------------------------------------------------------------------- */

/* A row as it grows: character by character, since a character of UTF-8 takes several bytes. */
typedef struct row {
    char *text;
    size_t used;
    int column;
} row;

static void put(row *to, int column, const char *character)
{
    size_t size = strlen(character);
    if (to->used + (size_t)(column > to->column ? column - to->column : 0) + size >= TAPE_ROW_SIZE)
        return;
    for (; to->column < column; to->column++)
        to->text[to->used++] = ' ';
    memcpy(to->text + to->used, character, size + 1);
    to->used += size;
    to->column++;
}

static void put_number(row *to, int column, int number)
{
    char digits[12], character[2] = "";
    snprintf(digits, sizeof digits, "%d", number);
    column -= ((int)strlen(digits) - 1) / 2;
    for (const char *at = digits; *at != '\0'; at++) {
        character[0] = *at;
        put(to, column++, character);
    }
}

/* A half, one, one and a half, two and three rows: no height is like another. */
static void put_tick(row rows[TAPE_ROWS], int column, int height, const char *half, const char *whole)
{
    put(&rows[1], column, height == 1 ? half : whole);
    if (height >= 3)
        put(&rows[2], column, height == 3 ? half : whole);
    if (height == 5)
        put(&rows[3], column, whole);
}

void practice_tape_draw(rodt_length at, rodt_unit unit, bool ascii, bool narrow, practice_tape *out)
{
    practice_window window = practice_window_of(at, unit, narrow);
    row rows[TAPE_ROWS];
    memset(out, 0, sizeof *out);
    for (size_t i = 0; i < TAPE_ROWS; i++)
        rows[i] = (row){out->rows[i], 0, 0};
    put(&rows[0], MARGIN + 2 * (window.pointer - window.first), ascii ? "v" : "\xE2\x96\xBC"); /* U+25BC */
    for (int i = 0; i <= window.ticks; i++) { /* U+2575 and U+2502 */
        int tick = window.first + i, height = practice_tick_height(tick, unit);
        put_tick(rows, MARGIN + 2 * i, height, ascii ? "'" : "\xE2\x95\xB5", ascii ? "|" : "\xE2\x94\x82");
        if (height == 5)
            put_number(&rows[TAPE_ROWS - 1], MARGIN + 2 * i, tick / window.whole * window.number);
    }
}

/* --- In words ----------------------------------------------------------------------------------------- */

static void format_ordinal(int number, char word[24])
{
    static const char *const endings[] = {TO_SAY("th"), TO_SAY("st"), TO_SAY("nd"), TO_SAY("rd")};
    int last = number % 10;
    snprintf(word, 24, "%d%s", number, say(endings[number / 10 % 10 == 1 || last > 3 ? 0 : last]));
}

void practice_tape_describe(rodt_length at, rodt_unit unit, char words[TAPE_TEXT_SIZE])
{
    practice_window window = practice_window_of(at, unit, false);
    int number = window.pointer / window.whole * window.number, beyond = window.pointer % window.whole;
    char place[24];
    if (beyond == 0) {
        snprintf(words, TAPE_TEXT_SIZE, say("the pin stands exactly at the %d"), number);
        return;
    }
    format_ordinal(beyond, place);
    if (unit == RODT_UNIT_MM)
        snprintf(words, TAPE_TEXT_SIZE, say("the pin stands at the %s millimetre after the %d"), place, number);
    else
        snprintf(words, TAPE_TEXT_SIZE, say("the pin stands at the %s sixteenth after the %d"), place, number);
}
