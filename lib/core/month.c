/* SPDX-License-Identifier: Apache-2.0 */
/* Names of months. Only letters that occur in them are known: ASCII, é and û. */
#include "core/month.h"

#include <string.h>

#define NAME_MAX_LETTERS 10

/* Each name is known from three letters on, unless they begin another month, too: "sept" and "septembre", but neither
 * "se" nor "jui". */
#define NAME_MIN_LETTERS 3

typedef struct month_name {
    const char *name;
    uint8_t month;
} month_name;

static const month_name names[] = {
    {"january", 1},    {"janvier", 1},   {"enero", 1},      {"february", 2},   {"fevrier", 2},   {"febrero", 2},
    {"march", 3},      {"mars", 3},      {"marzo", 3},      {"april", 4},      {"avril", 4},     {"abril", 4},
    {"may", 5},        {"mai", 5},       {"mayo", 5},       {"june", 6},       {"juin", 6},      {"junio", 6},
    {"july", 7},       {"juillet", 7},   {"julio", 7},      {"august", 8},     {"aout", 8},      {"agosto", 8},
    {"september", 9},  {"septembre", 9}, {"septiembre", 9}, {"setiembre", 9},  {"october", 10},  {"octobre", 10},
    {"octubre", 10},   {"november", 11}, {"novembre", 11},  {"noviembre", 11}, {"december", 12}, {"decembre", 12},
    {"diciembre", 12},
};

/* The letter in lower case without its accent, or 0. */
static char plain_letter(uint32_t code)
{
    if (text_is_letter(code))
        return (char)(code | 32u);
    if (code == 0xE9 || code == 0xC9)
        return 'e';
    if (code == 0xFB || code == 0xDB)
        return 'u';
    return '\0';
}

static int find_month(const char *letters, size_t count)
{
    int found = 0;
    for (size_t i = 0; i < COUNT_OF(names); i++) {
        if (count < NAME_MIN_LETTERS || strncmp(letters, names[i].name, count) != 0)
            continue;
        if (found != 0 && found != names[i].month)
            return 0;
        found = names[i].month;
    }
    return found;
}

int rodti_month_read(text_cursor *cursor)
{
    char letters[NAME_MAX_LETTERS];
    size_t count = 0;
    text_cursor ahead = *cursor;
    for (char letter; (letter = plain_letter(ahead.code)) != '\0'; rodti_text_next(&ahead)) {
        if (count == sizeof letters)
            return 0;
        letters[count++] = letter;
    }
    int month = find_month(letters, count);
    if (month != 0)
        *cursor = ahead;
    return month;
}
