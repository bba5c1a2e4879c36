/* SPDX-License-Identifier: Apache-2.0 */
/* Paths: names with points between them and indexes in brackets. */
#include "describe/value.h"

#include <string.h>

/* Reads "[12]" if there is one. False: it is broken. */
static bool read_index(const char **path, size_t *index)
{
    const char *at = *path;
    *index = 0;
    if (*at != '[')
        return true;
    for (at++; *at >= '0' && *at <= '9' && *index < UINT16_MAX; at++)
        *index = *index * 10 + (size_t)(*at - '0');
    bool good = *at == ']' && at[-1] != '[';
    *path = at + good;
    return good;
}

static bool step_into(const rodt_record **record, const char **value, value_place *place)
{
    const rodt_member *member = place->member;
    if (member->kind == RODT_MEMBER_KIND_RECORD) {
        *value = place->at;
    } else if (member->kind == RODT_MEMBER_KIND_RECORD_POINTER) {
        *value = rodti_value_pointer(place->at);
        place->pointed = true;
    }
    *record = member->record; /* NULL, which has no members, for any other kind */
    return *value != NULL;
}

/* The class and the marks of a chamber are fields of the wheel end. */
static bool find_field_of_chamber(const char *name, size_t size, RODT_ENUM32(rodt_field) *out)
{
    if (rodt_field_find_n(name, size, out) != RODT_OK)
        return false;
    const rodt_field field = (rodt_field)*out;
    return field == RODT_FIELD_STROKE_CLASS || field == RODT_FIELD_RATED_STROKE || field == RODT_FIELD_MARKED_LIMIT;
}

/* Finds a member of a name, also that of a field inside of the chamber. */
static const rodt_member *find_step(const rodt_record **record, const char **inside, const char *name, size_t size)
{
    const rodt_member *found = rodt_member_find_n(*record, name, size);
    RODT_ENUM32(rodt_field) field;
    if (found != NULL || !rodti_is_of_wheel_end(*record) || !find_field_of_chamber(name, size, &field))
        return found;
    const rodt_member *chamber = rodt_member_find(*record, "chamber");
    *inside = element_at(chamber, *inside, 0);
    *record = chamber->record;
    return rodt_member_find(*record, rodt_field_name((rodt_field)field));
}

bool rodti_value_locate(const rodt_record *record, const void *value, const char *path, value_place *out)
{
    value_place place = {.pointed = false};
    const char *inside = value;
    size_t index;
    if (record == NULL || value == NULL || path == NULL)
        return false;
    do {
        size_t size = strcspn(path, ".[");
        place.member = find_step(&record, &inside, path, size);
        place.owner = record;
        path += size;
        if (place.member == NULL || !read_index(&path, &index) || index >= place.member->count)
            return false;
        place.at = element_at(place.member, inside, index);
        if (*path == '\0') {
            *out = place;
            return true;
        }
    } while (*path++ == '.' && step_into(&record, &inside, &place));
    return false;
}

const rodt_member *rodt_record_locate(const rodt_record *record, const void *value, const char *path, const void **at)
{
    value_place place;
    if (at == NULL || !rodti_value_locate(record, value, path, &place))
        return NULL;
    *at = place.at;
    return place.member;
}
