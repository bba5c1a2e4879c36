/* SPDX-License-Identifier: Apache-2.0 */
/* Runs during the build: puts the script of a version together out of files by topic. A statement with @ARGUMENTS@ is
 * written twice, with the arguments of a wheel end as texts and as values of any type: a parameter without a type is a
 * text, and a number or a day needs no cast. @MEMBERS@ becomes the columns of a finding. */
#include <stdbool.h>
#include <stdio.h>
#include <string.h>

#include "sql.h"

static void write_arguments(const char *type)
{
    for (int i = 0; i < SQL_ARGUMENTS; i++)
        printf("%s%s %s%s", i > 0 ? ", " : "", sql_argument_name(i), type,
               i >= RODT_FIELD_NEEDED ? " DEFAULT NULL" : "");
}

/* Arrays, reserves and rows of tables have no column. NULL: this is one of them. */
static const char *member_type(const rodt_member *member)
{
    if (member->count != 1)
        return NULL;
    switch (member->kind) {
    case RODT_MEMBER_KIND_LENGTH:
    case RODT_MEMBER_KIND_PRESSURE:
    case RODT_MEMBER_KIND_RATIO: return "rodt_exact";
    case RODT_MEMBER_KIND_DATE: return "date";
    case RODT_MEMBER_KIND_RESERVE:
    case RODT_MEMBER_KIND_POINTER: return NULL;
    case RODT_MEMBER_KIND_RECORD_POINTER: return member->record == rodt_record_find("rodt_source") ? "text" : NULL;
    default: return "text";
    }
}

static void write_members(void)
{
    const rodt_record *record = rodt_record_find("rodt_finding");
    const char *between = "";
    for (size_t i = 0; i < rodt_member_count(record); i++) {
        const rodt_member *member = rodt_member_at(record, i);
        if (member_type(member) == NULL)
            continue;
        printf("%s    \"%s\" %s", between, member->name, member_type(member));
        between = ",\n";
    }
}

static void write_statement(const char *text)
{
    static const char *const types[] = {"text", "\"any\""};
    const char *arguments = strstr(text, "@ARGUMENTS@"), *members = strstr(text, "@MEMBERS@");
    if (members != NULL) {
        printf("%.*s", (int)(members - text), text);
        write_members();
        fputs(members + strlen("@MEMBERS@"), stdout);
    } else if (arguments != NULL) {
        for (size_t i = 0; i < sizeof types / sizeof *types; i++) {
            printf("%.*s", (int)(arguments - text), text);
            write_arguments(types[i]);
            fputs(arguments + strlen("@ARGUMENTS@"), stdout);
        }
    } else {
        fputs(text, stdout);
    }
}

/* A line that ends in a semicolon is the last of its statement; a comment is one by itself. */
static bool write_topic(FILE *file)
{
    char text[4000];
    size_t used = 0;
    while (fgets(text + used, (int)(sizeof text - used), file) != NULL) {
        used += strlen(text + used);
        if (text[0] == '-' || used == 1 || (used > 1 && text[used - 2] == ';')) {
            write_statement(text);
            used = 0;
        }
    }
    return used == 0 && ferror(file) == 0;
}

int main(int count, char **paths)
{
    bool written = puts("\\echo Use \"CREATE EXTENSION rodtravel\" to load this file. \\quit") >= 0;
    for (int i = 1; i < count && written; i++) {
        FILE *file = fopen(paths[i], "r");
        written = file != NULL && write_topic(file);
        if (file != NULL)
            fclose(file);
    }
    return written && fclose(stdout) == 0 ? 0 : 1;
}
