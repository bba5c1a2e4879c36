/* SPDX-License-Identifier: Apache-2.0 */
/* Any record as JSON, from its description. */
#include "describe/json.h"
#include "describe/value.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

static void put_record(json_buffer *json, const rodt_record *record, const char *value);

static void put_set(json_buffer *json, const rodt_member *member, uint64_t set)
{
    uint64_t left = set;
    rodti_json_open(json, '[');
    for (size_t i = 0; i < member->enumeration->count; i++) {
        const rodt_enumerator *row = &member->enumeration->list[i];
        const uint64_t bit = rodti_set_bit(member->enumeration, row);
        if ((set & bit) != 0)
            rodti_json_text(json, row->word);
        left &= ~bit;
    }
    for (int bit = 0; left != 0; bit++, left >>= 1) { /* of a later version: nothing is left out */
        char number[16];
        snprintf(number, sizeof number, "%d", bit);
        if ((left & 1u) != 0)
            rodti_json_plain(json, number);
    }
    rodti_json_close(json, ']');
}

static void put_enumerator(json_buffer *json, const rodt_member *member, const char *at)
{
    int64_t value = rodti_value_signed(at, member->size);
    const rodt_enumerator *row = rodt_enumerator_of(member->enumeration, value);
    char number[24];
    snprintf(number, sizeof number, "%" PRId64, value);
    if (row != NULL)
        rodti_json_text(json, row->word);
    else
        rodti_json_plain(json, number);
}

static void put_plain(json_buffer *json, const rodt_member *member, const char *at)
{
    text_writer writer;
    rodti_text_begin(&writer);
    (void)rodti_value_put(NULL, member, at, &writer);
    rodti_json_plain(json, writer.used > 0 ? writer.buffer : "null");
}

/* A text of a rule set, a day or a position; null if there is none. */
static void put_text_of(json_buffer *json, const rodt_member *member, const char *at)
{
    text_writer writer;
    rodti_text_begin(&writer);
    bool written = rodti_value_put(NULL, member, at, &writer) && writer.used > 0;
    rodti_json_text(json, written ? writer.buffer : NULL);
}

/* A pressure that was read in kPa is said so. */
static void put_exact(json_buffer *json, const rodt_record *record, const rodt_member *member, const char *at)
{
    text_writer writer;
    rodt_ratio exact;
    memcpy(&exact, at, sizeof exact); /* all three are a numerator and a denominator */
    rodti_text_begin(&writer);
    bool written = rodti_value_put(record, member, at, &writer) && writer.used > 0;
    rodti_json_exact_text(json, exact, written ? writer.buffer : NULL, member->unit);
}

/* A record holds records, a few levels deep as the table says. NOLINTBEGIN(misc-no-recursion) */
static void put_inside(json_buffer *json, const rodt_member *member, const char *at)
{
    const char *value = member->kind == RODT_MEMBER_KIND_RECORD ? at : rodti_value_pointer(at);
    if (value == NULL)
        rodti_json_plain(json, "null");
    else
        put_record(json, member->record, value);
}

static void put_value(json_buffer *json, const rodt_record *record, const rodt_member *member, const char *at)
{
    size_t size;
    const char *text;
    switch ((int)member->kind) {
    case RODT_MEMBER_KIND_LENGTH:
    case RODT_MEMBER_KIND_PRESSURE:
    case RODT_MEMBER_KIND_RATIO: put_exact(json, record, member, at); break;
    case RODT_MEMBER_KIND_ENUMERATOR: put_enumerator(json, member, at); break;
    case RODT_MEMBER_KIND_SET: put_set(json, member, rodti_value_unsigned(at, member->size)); break;
    case RODT_MEMBER_KIND_BOOLEAN:
    case RODT_MEMBER_KIND_INTEGER:
    case RODT_MEMBER_KIND_UNSIGNED:
    case RODT_MEMBER_KIND_INDEX: put_plain(json, member, at); break;
    case RODT_MEMBER_KIND_TEXT:
    case RODT_MEMBER_KIND_TEXT_POINTER:
        text = rodti_value_text(member, at, &size);
        rodti_json_text_n(json, text, size);
        break;
    case RODT_MEMBER_KIND_RECORD:
    case RODT_MEMBER_KIND_RECORD_POINTER: put_inside(json, member, at); break;
    default: put_text_of(json, member, at); break;
    }
}

static bool is_all_zero(const char *at, size_t size)
{
    for (size_t i = 0; i < size; i++)
        if (at[i] != '\0')
            return false;
    return true;
}

/* Elements in use: as the record says, or all but those at the end that are not given. */
static size_t used_elements(const rodt_record *record, const rodt_member *member, const char *value)
{
    size_t count = member->count;
    if (member->used != NULL) {
        const rodt_member *of = rodt_member_find(record, member->used);
        uint64_t used = rodti_value_unsigned(value + of->offset, of->size);
        return used < count ? (size_t)used : count;
    }
    while (count > 0 && is_all_zero(element_at(member, value, count - 1), member->size))
        count--;
    return count;
}

/* True if there is a member of the kind, in the record or inside of it. */
static bool has_kind(const rodt_record *record, rodt_member_kind kind)
{
    for (size_t i = 0; i < record->count; i++) {
        const rodt_member *member = &record->members[i];
        if (member->kind == kind || (member->record != NULL && has_kind(member->record, kind)))
            return true;
    }
    return false;
}

static void put_members(json_buffer *json, const rodt_record *record, const char *value)
{
    for (size_t i = 0; i < record->count; i++) {
        const rodt_member *member = &record->members[i];
        if (member->kind == RODT_MEMBER_KIND_RESERVE || member->kind == RODT_MEMBER_KIND_POINTER)
            continue;
        rodti_json_key(json, member->name);
        if (member->count == 1) {
            put_value(json, record, member, value + member->offset);
            continue;
        }
        rodti_json_open(json, '[');
        for (size_t k = 0; k < used_elements(record, member, value); k++)
            put_value(json, record, member, element_at(member, value, k));
        rodti_json_close(json, ']');
    }
}

static void put_record(json_buffer *json, const rodt_record *record, const char *value)
{
    rodti_json_open(json, '{');
    put_members(json, record, value);
    rodti_json_close(json, '}');
}
/* NOLINTEND(misc-no-recursion) */

typedef struct described {
    const rodt_record *record;
    const void *value;
} described;

static void make_record(json_buffer *json, const void *context)
{
    const described *of = context;
    rodti_json_open(json, '{');
    put_members(json, of->record, of->value);
    rodti_json_units(json, has_kind(of->record, RODT_MEMBER_KIND_LENGTH),
                     has_kind(of->record, RODT_MEMBER_KIND_PRESSURE));
    rodti_json_close(json, '}');
}

rodt_status rodt_record_json_format(const rodt_record *record, const void *value, uint32_t options, char *text,
                                    size_t size, size_t *needed)
{
    const described of = {record, value};
    if (record == NULL || value == NULL)
        return RODT_E_ARGUMENT;
    return rodti_json_format(make_record, &of, NULL, options, text, size, needed);
}
