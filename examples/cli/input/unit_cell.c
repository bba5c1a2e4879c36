/* SPDX-License-Identifier: Apache-2.0 */
/* A column called "unit" names the unit of the lengths, or the vehicle, which fleets call a unit too. */
#include "input/unit_cell.h"
#include "ui/compiler.h"
#include "ui/message.h"

#include <string.h>

static bool is_digit(char sign) { return sign >= '0' && sign <= '9'; }

static bool ends_in(const char *text, size_t size, const char *end)
{
    size_t count = strlen(end);
    if (size < count)
        return false;
    for (size_t i = 0; i < count; i++) {
        char sign = text[size - count + i];
        if ((sign >= 'A' && sign <= 'Z' ? (char)(sign - 'A' + 'a') : sign) != end[i])
            return false;
    }
    return true;
}

/* "64", "64ths", "1/64", "0.1 mm": readings counted in parts; whoever took such a row for one in inches would err. */
static bool may_be_division(const char *text, size_t size)
{
    static const char *const ends[] = {"th", "ths", "mm", "cm", "in", "inch", "inches", "po"};
    static const char *const parts[] = {"1", "2", "4", "8", "10", "16", "32", "64", "100", "128", "1000"};
    for (size_t i = 0; i < COUNT_OF(ends); i++)
        if (ends_in(text, size, ends[i]))
            return true;
    for (size_t i = 0; i < COUNT_OF(parts); i++)
        if (strlen(parts[i]) == size && memcmp(parts[i], text, size) == 0)
            return true;
    return false;
}

static bool names_vehicle(const char *text)
{
    bool digit = false;
    if (text == NULL)
        return false;
    text += strspn(text, " \t");
    size_t size = strlen(text);
    while (size > 0 && (text[size - 1] == ' ' || text[size - 1] == '\t'))
        size--;
    for (size_t i = 0; i < size; i++) {
        if (strchr("/.,\"'", text[i]) != NULL || (unsigned char)text[i] >= 0x80)
            return false;
        digit = digit || is_digit(text[i]);
    }
    return digit && !may_be_division(text, size);
}

bool is_vehicle_unit(const char *text, const char *what)
{
    if (!names_vehicle(text))
        return false;
    print_error("the %s \"unit\" names vehicles (\"%.40s\"), so it is not read as the unit of the lengths", what, text);
    return true;
}
