/* SPDX-License-Identifier: Apache-2.0 */
/* Writes what the library says of itself, a row a line; tests/checks/describe.py and abi.py read it. */
#include <rodtravel/rodtravel.h>

#include <inttypes.h>
#include <stdio.h>

static const char *or_none(const char *text) { return text != NULL && text[0] != '\0' ? text : "-"; }

static void put_record(const rodt_record *record)
{
    const char *name = rodt_record_name(record);
    printf("record %s %zu %s\n", name, rodt_record_size(record), rodt_record_is_input(record) ? "input" : "result");
    for (size_t i = 0; i < rodt_member_count(record); i++) {
        const rodt_member *member = rodt_member_at(record, i);
        printf("member %s %s %" PRIu32 " %" PRIu32 " %" PRIu32 " %s %s %s %s\n", name, member->name, member->offset,
               member->size, member->count, rodt_member_kind_name(member->kind),
               or_none(rodt_enumeration_name(member->enumeration)), or_none(rodt_record_name(member->record)),
               or_none(member->used));
    }
}

static void put_enumeration(const rodt_enumeration *enumeration)
{
    const char *name = rodt_enumeration_name(enumeration);
    printf("enumeration %s %s\n", name, rodt_enumeration_is_bits(enumeration) ? "bits" : "numbers");
    for (size_t i = 0; i < rodt_enumerator_count(enumeration); i++) {
        const rodt_enumerator *row = rodt_enumerator_at(enumeration, i);
        printf("enumerator %s %s %" PRId64 " %s\n", name, row->symbol, row->number, row->word);
    }
}

int main(void)
{
    for (size_t i = 0; i < rodt_record_count(); i++)
        put_record(rodt_record_at(i));
    for (size_t i = 0; i < rodt_enumeration_count(); i++)
        put_enumeration(rodt_enumeration_at(i));
    return 0;
}
