/* SPDX-License-Identifier: Apache-2.0 */
/* Names of months. Only letters that occur in them are known: ASCII, é and û. */
#include "core/month.h"

#include <string.h>

#define NAME_MAX_LETTERS 10

/* Each name is known from `shortest` letters on: "sept" and "septembre", but not "se". */
typedef struct month_name {
    const char *name;
    uint8_t shortest;
    uint8_t month;
} month_name;

static const month_name names[] = {
    {"january", 3, 1},   {"janvier", 3, 1},    {"enero", 3, 1},     {"february", 3, 2},   {"fevrier", 3, 2},
    {"febrero", 3, 2},   {"march", 3, 3},      {"mars", 3, 3},      {"marzo", 3, 3},      {"april", 3, 4},
    {"avril", 3, 4},     {"abril", 3, 4},      {"may", 3, 5},       {"mai", 3, 5},        {"mayo", 3, 5},
    {"june", 3, 6},      {"juin", 4, 6},       {"junio", 3, 6},     {"july", 3, 7},       {"juillet", 4, 7},
    {"julio", 3, 7},     {"august", 3, 8},     {"aout", 3, 8},      {"agosto", 3, 8},     {"september", 3, 9},
    {"septembre", 3, 9}, {"septiembre", 3, 9}, {"setiembre", 3, 9}, {"october", 3, 10},   {"octobre", 3, 10},
    {"octubre", 3, 10},  {"november", 3, 11},  {"novembre", 3, 11}, {"noviembre", 3, 11}, {"december", 3, 12},
    {"decembre", 3, 12}, {"diciembre", 3, 12},
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
    for (size_t i = 0; i < COUNT_OF(names); i++) {
        if (count >= names[i].shortest && count <= strlen(names[i].name) &&
            memcmp(letters, names[i].name, count) == 0)
            return names[i].month;
    }
    return 0;
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
