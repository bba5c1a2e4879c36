/* SPDX-License-Identifier: Apache-2.0 */
/* Units of lengths in headings, such as "Released (mm)". */
#include "rodtravel/fields.h"

#include <string.h>

static bool is_between(char byte)
{
    return strchr(" \t\r\n_-()[]{}/,.;:=", byte) != NULL; /* a zero byte, too */
}

static size_t word_size(const char *text, size_t size)
{
    size_t used = 0;
    while (used < size && !is_between(text[used]))
        used++;
    return used;
}

static size_t size_between(const char *text, size_t size)
{
    size_t used = 0;
    while (used < size && is_between(text[used]))
        used++;
    return used;
}

/* "in" is a unit at the end only: "in (mm)". */
static bool is_unit(const char *word, size_t size, bool last, RODT_ENUM32(rodt_unit) *unit)
{
    if (!last && rodt_heading_equal(word, size, "in", 2))
        return false;
    return rodt_unit_parse_n(word, size, unit, NULL) == RODT_OK;
}

bool rodt_heading_names_unit(const char *heading, size_t size, rodt_unit unit)
{
    RODT_ENUM32(rodt_unit) named;
    for (size_t at = 0; heading != NULL && at < size;) {
        at += size_between(heading + at, size - at);
        size_t end = at + word_size(heading + at, size - at);
        bool last = end + size_between(heading + end, size - end) == size;
        if (is_unit(heading + at, end - at, last, &named))
            return named == unit;
        at = end;
    }
    return false;
}
