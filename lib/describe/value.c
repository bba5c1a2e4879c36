/* SPDX-License-Identifier: Apache-2.0 */
/* Values as they are in memory. */
#include "describe/value.h"

#include <string.h>

int64_t rodti_value_signed(const char *at, size_t size)
{
    int8_t one;
    int16_t two;
    int32_t four;
    int64_t eight;
    switch (size) {
    case 1: return memcpy(&one, at, 1), one;
    case 2: return memcpy(&two, at, 2), two;
    case 4: return memcpy(&four, at, 4), four;
    default: return memcpy(&eight, at, 8), eight;
    }
}

uint64_t rodti_value_unsigned(const char *at, size_t size)
{
    uint64_t value = (uint64_t)rodti_value_signed(at, size);
    return size < 8 ? value & (((uint64_t)1 << 8 * size) - 1) : value;
}

const void *rodti_value_pointer(const char *at)
{
    const void *pointer;
    memcpy(&pointer, at, sizeof pointer);
    return pointer;
}

uint64_t rodti_set_bit(const rodt_enumeration *enumeration, const rodt_enumerator *row)
{
    return enumeration->bits ? (uint64_t)row->number : (uint64_t)1 << row->number;
}

const char *rodti_value_text(const rodt_member *member, const char *at, size_t *size)
{
    const char *text = member->kind == RODT_MEMBER_KIND_TEXT ? at : rodti_value_pointer(at);
    const char *end = NULL;
    if (member->kind == RODT_MEMBER_KIND_TEXT)
        end = memchr(at, '\0', member->size);
    *size = end != NULL ? (size_t)(end - at) : text == at ? member->size : text != NULL ? strlen(text) : 0;
    return text;
}
