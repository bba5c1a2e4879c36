/* SPDX-License-Identifier: Apache-2.0 */
/* Values as text. */
#include "describe/value.h"

#include <inttypes.h>
#include <string.h>

/* --- By kind ----------------------------------------------------------------------------------------- */

/* Values that are not given have a zero where their text would not begin: the denominator, the axle. */
#define PUT(type, is_given, format)                                                                          \
    do {                                                                                                     \
        type value;                                                                                          \
        memcpy(&value, at, sizeof value);                                                                    \
        if (!(is_given))                                                                                     \
            return true;                                                                                     \
        if (format(value, line, sizeof line, NULL) != RODT_OK)                                               \
            return false;                                                                                    \
        rodti_text_put(writer, line);                                                                        \
        return true;                                                                                         \
    } while (0)

static bool put_date(const rodt_member *member, const char *at, text_writer *writer)
{
    rodt_date date, first;
    char line[RODT_DATE_TEXT_SIZE];
    memcpy(&date, at, sizeof date);
    if (!rodt_date_given(date))
        return true;
    if (can_be_year(member) && date.month == 0 && date.day == 0 &&
        rodt_date_make(date.year, 1, 1, &first) == RODT_OK) {
        rodti_text_putf(writer, "%d", date.year);
        return true;
    }
    if (rodt_date_format(date, line, sizeof line, NULL) != RODT_OK)
        return false;
    rodti_text_put(writer, line);
    return true;
}

/* True if the record says that its pressures were read in kPa; at: one of them, the value of the member. */
static bool is_read_in_kpa(const rodt_record *owner, const rodt_member *member, const char *at)
{
    const rodt_member *unit = rodt_member_find(owner, "pressure_unit");
    uint32_t found = RODT_PRESSURE_UNIT_PSI;
    if (unit != NULL)
        memcpy(&found, at - member->offset + unit->offset, sizeof found);
    return found == RODT_PRESSURE_UNIT_KPA;
}

/* Bare psi, or kPa with its unit. */
static bool put_pressure(const rodt_record *owner, const rodt_member *member, const char *at, text_writer *writer)
{
    char line[RODT_PRESSURE_TEXT_SIZE];
    rodt_pressure value;
    memcpy(&value, at, sizeof value);
    if (!rodt_pressure_given(value))
        return true;
    bool kpa = is_read_in_kpa(owner, member, at) &&
               rodt_pressure_format_unit(value, RODT_PRESSURE_UNIT_KPA, line, sizeof line, NULL) == RODT_OK;
    if (!kpa && rodt_pressure_format(value, line, sizeof line, NULL) != RODT_OK)
        return false;
    rodti_text_put(writer, line);
    return true;
}

static bool put_exact(const rodt_member *member, const char *at, text_writer *writer)
{
    char line[RODT_LENGTH_TEXT_SIZE];
    switch ((int)member->kind) {
    case RODT_MEMBER_KIND_LENGTH: PUT(rodt_length, rodt_length_given(value), rodt_length_format);
    case RODT_MEMBER_KIND_RATIO: PUT(rodt_ratio, rodt_ratio_given(value), rodt_ratio_format);
    default: PUT(rodt_position, value.axle != 0 || value.side != 0, rodt_position_format);
    }
}

static bool put_set(const rodt_member *member, const char *at, text_writer *writer)
{
    uint64_t set = rodti_value_unsigned(at, member->size);
    size_t start = writer->used;
    for (size_t i = 0; i < member->enumeration->count; i++) {
        const rodt_enumerator *row = &member->enumeration->list[i];
        if ((set & rodti_set_bit(member->enumeration, row)) == 0)
            continue;
        rodti_text_put(writer, writer->used > start ? ", " : "");
        rodti_text_put(writer, row->word);
    }
    return true;
}

static bool put_integer(const rodt_member *member, const char *at, text_writer *writer)
{
    if (member->kind == RODT_MEMBER_KIND_INTEGER) {
        rodti_text_putf(writer, "%" PRId64, rodti_value_signed(at, member->size));
        return true;
    }
    uint64_t value = rodti_value_unsigned(at, member->size);
    if (member->kind == RODT_MEMBER_KIND_UNSIGNED || value != SIZE_MAX)
        rodti_text_putf(writer, "%" PRIu64, value);
    return true;
}

bool rodti_value_put(const rodt_record *owner, const rodt_member *member, const char *at, text_writer *writer)
{
    const rodt_rules *rules;
    const rodt_enumerator *row;
    switch ((int)member->kind) {
    case RODT_MEMBER_KIND_PRESSURE: return put_pressure(owner, member, at, writer);
    case RODT_MEMBER_KIND_LENGTH:
    case RODT_MEMBER_KIND_RATIO:
    case RODT_MEMBER_KIND_POSITION: return put_exact(member, at, writer);
    case RODT_MEMBER_KIND_DATE: return put_date(member, at, writer);
    case RODT_MEMBER_KIND_ENUMERATOR:
        row = rodt_enumerator_of(member->enumeration, rodti_value_signed(at, member->size));
        rodti_text_put(writer, row != NULL ? row->word : "");
        return row != NULL;
    case RODT_MEMBER_KIND_SET: return put_set(member, at, writer);
    case RODT_MEMBER_KIND_BOOLEAN:
        rodti_text_put(writer, rodti_value_unsigned(at, member->size) != 0 ? "true" : "false");
        return true;
    case RODT_MEMBER_KIND_INTEGER:
    case RODT_MEMBER_KIND_UNSIGNED:
    case RODT_MEMBER_KIND_INDEX: return put_integer(member, at, writer);
    case RODT_MEMBER_KIND_RULES:
        rules = rodti_value_pointer(at);
        rodti_text_put(writer, rules != NULL ? rodt_rules_id(rules) : "");
        return true;
    default: return false;
    }
}

rodt_status rodt_record_text_format(const rodt_record *record, const void *value, const char *path, char *text,
                                    size_t size, size_t *needed)
{
    value_place place;
    text_writer writer;
    if (!rodti_value_locate(record, value, path, &place))
        return RODT_E_ARGUMENT;
    if (place.member->kind == RODT_MEMBER_KIND_TEXT || place.member->kind == RODT_MEMBER_KIND_TEXT_POINTER) {
        size_t used;
        const char *inside = rodti_value_text(place.member, place.at, &used);
        return rodti_text_copy(inside != NULL ? inside : "", used, text, size, needed);
    }
    if (place.member->kind == RODT_MEMBER_KIND_RECORD && place.member->record == &rodti_record_chamber) {
        rodt_chamber chamber;
        memcpy(&chamber, place.at, sizeof chamber);
        rodt_status status = rodt_chamber_format(&chamber, text, size, needed);
        return status == RODT_E_EMPTY ? rodti_text_copy("", 0, text, size, needed) : status;
    }
    rodti_text_begin(&writer);
    if (!rodti_value_put(place.owner, place.member, place.at, &writer))
        return RODT_E_ARGUMENT;
    return rodti_text_copy_out(&writer, text, size, needed);
}
