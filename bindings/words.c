/* SPDX-License-Identifier: Apache-2.0 */
/* Prints what the library describes, for what a language makes of it when it is built. Every enumeration: a line with
 * the name, "rodt_verdict", then a line for each enumerator: its symbol, number, word and text, with a tab before each.
 * With the argument "records" every record: its name, then a line for each member: its name, the word of its kind, its
 * unit, how many elements, and the name of its enumeration or record. */
#include <inttypes.h>
#include <rodtravel/rodtravel.h>
#include <stdio.h>
#include <string.h>

static void print_enumeration(const rodt_enumeration *enumeration)
{
    puts(rodt_enumeration_name(enumeration));
    for (size_t row = 0; row < rodt_enumerator_count(enumeration); row++) {
        const rodt_enumerator *enumerator = rodt_enumerator_at(enumeration, row);
        printf("\t%s\t%" PRId64 "\t%s\t%s\n", enumerator->symbol, enumerator->number, enumerator->word,
               enumerator->text);
    }
}

static void print_record(const rodt_record *record)
{
    puts(rodt_record_name(record));
    for (size_t row = 0; row < rodt_member_count(record); row++) {
        const rodt_member *member = rodt_member_at(record, row);
        printf("\t%s\t%s\t%s\t%" PRIu32 "\t%s%s\n", member->name,
               rodt_member_kind_name((rodt_member_kind)member->kind), member->unit, member->count,
               rodt_enumeration_name(member->enumeration), rodt_record_name(member->record));
    }
}

int main(int argc, char **argv)
{
    const bool records = argc > 1 && strcmp(argv[1], "records") == 0;
    for (size_t i = 0; !records && i < rodt_enumeration_count(); i++)
        print_enumeration(rodt_enumeration_at(i));
    for (size_t i = 0; records && i < rodt_record_count(); i++)
        print_record(rodt_record_at(i));
    return fflush(stdout) == 0 ? 0 : 1;
}
