/* SPDX-License-Identifier: Apache-2.0 */
/* A record as JSON. One table of keys serves reading and writing, so that a record is rewritten as it was read. */
#include "record/record.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/message.h"

#include <errno.h>
#include <jansson.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define FILE_MAX ((size_t)1 << 20)

/* --- Memory ------------------------------------------------------------------------------------------- */

/* Where Jansson finds no memory for a byte of a text it leaves the byte out and goes on: 2 1/8 would be 2 18. */
static bool memory_failed;

static void *allocate(size_t size)
{
    void *found = malloc(size);
    memory_failed = memory_failed || found == NULL;
    return found;
}

static void watch_memory(void)
{
    memory_failed = false;
    json_set_alloc_funcs(allocate, free);
}

/* --- Reading ------------------------------------------------------------------------------------------ */

typedef struct place {
    const char *file;
    char where[RECORD_WHERE_SIZE]; /* "" = the record itself */
} place;

static int print_entry_error(const place *at, const char *key, const char *what)
{
    return print_error("%s: %s%s%s: %s", at->file, at->where, at->where[0] == '\0' ? "" : ", ", key, what);
}

static int read_number(const place *at, const record_key *key, const json_t *value, int *out)
{
    char what[160];
    snprintf(what, sizeof what, say("a whole number from 1 to %d, without quotes, is expected"), key->most);
    bool whole = json_is_integer(value);
    if (!whole || json_integer_value(value) < 1 || json_integer_value(value) > key->most)
        return print_entry_error(at, record_key_name(key), what);
    *out = (int)json_integer_value(value);
    return STATUS_CONTINUE;
}

static int read_text(const place *at, const record_key *key, const json_t *value, const char **out)
{
    if (json_is_number(value))
        return print_entry_error(at, record_key_name(key),
                                 say("is a number; every reading is a text in quotes, such as \"2 1/8\""));
    if (!json_is_string(value))
        return print_entry_error(at, record_key_name(key), say("a text in quotes is expected"));
    const char *text = json_string_value(value);
    if (text[strspn(text, " \t\r\n")] == '\0')
        return print_entry_error(at, record_key_name(key), say("is empty; leave out what was not recorded"));
    *out = text;
    return STATUS_CONTINUE;
}

static int find_key(const record_key *keys, size_t count, const char *name)
{
    for (size_t i = 0; i < count; i++) {
        const char *key = record_key_name(&keys[i]);
        if (rodt_heading_equal(key, strlen(key), name, strlen(name)))
            return (int)i;
    }
    return -1;
}

static int read_entry(const place *at, const record_key *key, const json_t *value, record_value *out)
{
    if (out->text != NULL || out->number != 0)
        return print_entry_error(at, record_key_name(key), say("is there twice"));
    return key->most > 0 ? read_number(at, key, value, &out->number) : read_text(at, key, value, &out->text);
}

/* `others` are names that the object may have beside its keys, closed by NULL. */
static int read_object(const place *at, json_t *object, const record_key *keys, size_t count,
                       const char *const *others, record_value *out)
{
    const char *name;
    json_t *value;
    json_object_foreach (object, name, value) {
        int key = find_key(keys, count, name);
        const char *const *other = others;
        while (*other != NULL && strcmp(*other, name) != 0)
            other++;
        if (key < 0 && *other == NULL)
            return print_entry_error(at, name, say("there is no such entry in a record"));
        int status = key < 0 ? STATUS_CONTINUE : read_entry(at, &keys[key], value, &out[key]);
        if (status != STATUS_CONTINUE)
            return status;
    }
    for (size_t i = 0; i < count; i++) {
        if (keys[i].needed && out[i].text == NULL)
            return print_entry_error(at, record_key_name(&keys[i]), say("is missing"));
    }
    return STATUS_CONTINUE;
}

/* A list of entries of one kind. */
typedef struct entry_list {
    const char *name;
    const char *label; /* the entry that tells one from another in messages */
    const char *too_many;
    const record_key *keys;
    size_t key_count;
    size_t most;
    bool needed;
    record_value *values; /* key_count for each entry */
    size_t *count;
} entry_list;

static void name_entry(const entry_list *list, const json_t *entry, size_t index, char where[RECORD_WHERE_SIZE])
{
    const char *label = json_string_value(json_object_get(entry, list->label));
    snprintf(where, RECORD_WHERE_SIZE, say("%s, entry %zu%s%.24s%s"), list->name, index + 1, label != NULL ? " (" : "",
             label != NULL ? label : "", label != NULL ? ")" : "");
}

static int read_list(const char *file, const json_t *root, const entry_list *list)
{
    static const char *const none[] = {NULL};
    place at = {file, ""};
    const json_t *entries = json_object_get(root, list->name);
    if (entries == NULL && !list->needed)
        return STATUS_CONTINUE;
    if (!json_is_array(entries))
        return print_entry_error(&at, list->name,
                                 entries == NULL ? say("is missing") : say("a list in square brackets is expected"));
    if (json_array_size(entries) > list->most)
        return print_entry_error(&at, list->name, say(list->too_many));
    for (size_t i = 0; i < json_array_size(entries); i++) {
        json_t *entry = json_array_get(entries, i);
        name_entry(list, entry, i, at.where);
        if (!json_is_object(entry))
            return print_entry_error(&at, "entry", say("an object in curly brackets is expected"));
        int status = read_object(&at, entry, list->keys, list->key_count, none, list->values + i * list->key_count);
        if (status != STATUS_CONTINUE)
            return status;
        *list->count = i + 1;
    }
    return STATUS_CONTINUE;
}

static int read_lists(inspection_record *out, const json_t *root)
{
    const entry_list lists[] = {
        {"wheel_ends", "position", TO_SAY("there are more wheel ends than any vehicle has"), record_end_keys, END_KEYS,
         VEHICLE_ENDS_MAX, true, out->ends[0], &out->end_count},
        {"units", "kind", TO_SAY("there are more units than any combination has"), record_unit_keys, UNIT_KEYS,
         RECORD_UNITS_MAX, false, out->units[0], &out->unit_count},
        {"air_checks", "check", TO_SAY("there are more checks than anybody does"), record_check_keys, CHECK_KEYS,
         RECORD_CHECKS_MAX, false, out->checks[0], &out->check_count},
        {"steps", "step", TO_SAY("there are more steps than any walk-round has"), record_step_keys, STEP_KEYS,
         RECORD_STEPS_MAX, false, out->steps[0], &out->step_count}};
    int status = STATUS_CONTINUE;
    for (size_t i = 0; i < COUNT_OF(lists) && status == STATUS_CONTINUE; i++)
        status = read_list(out->file, root, &lists[i]);
    return status;
}

/* Checked first: another version may have other entries. */
static int read_version(const place *at, const json_t *root)
{
    const char *kind = json_string_value(json_object_get(root, "record"));
    const json_t *version = json_object_get(root, "version");
    char what[240];
    if (kind == NULL || strcmp(kind, RECORD_KIND) != 0) {
        snprintf(what, sizeof what, say("\"%s\" is expected; this is no record of an inspection"), RECORD_KIND);
        return print_entry_error(at, "record", what);
    }
    bool whole = json_is_integer(version);
    if (!whole || json_integer_value(version) < 1)
        return print_entry_error(at, "version", say("a whole number, the version of the record, is expected"));
    if (json_integer_value(version) <= RECORD_VERSION)
        return STATUS_CONTINUE;
    snprintf(what, sizeof what,
             say("the record is of version %lld, and this program, rodtravel %s, reads up to version %d; a newer "
                 "rodtravel reads it"), (long long)json_integer_value(version), rodt_version(), RECORD_VERSION);
    return print_entry_error(at, "version", what);
}

static int read_record(inspection_record *out, json_t *root)
{
    static const char *const others[] = {"record", "version", "wheel_ends", "air_checks", "steps", "units", NULL};
    place at = {out->file, ""};
    if (!json_is_object(root))
        return print_error("%s: a record is one object in curly brackets", out->file);
    int status = read_version(&at, root);
    if (status == STATUS_CONTINUE)
        status = read_object(&at, root, record_head_keys, HEAD_KEYS, others, out->head);
    return status == STATUS_CONTINUE ? read_lists(out, root) : status;
}

static int parse(inspection_record *out, const char *text, size_t size)
{
    json_error_t error;
    watch_memory();
    out->tree = json_loadb(text, size, JSON_REJECT_DUPLICATES, &error);
    if (memory_failed)
        return print_error("no memory to read %s", out->file);
    if (out->tree == NULL)
        return print_error("%s:%d:%d: this is no JSON: %s", out->file, error.line, error.column, error.text);
    return read_record(out, out->tree);
}

int record_read(const char *file, inspection_record *out)
{
    bool standard = strcmp(file, "-") == 0;
    memset(out, 0, sizeof *out);
    out->file = standard ? say("standard input") : file;
    FILE *from = standard ? stdin : fopen(file, "rb");
    if (from == NULL)
        return print_error("cannot open %s: %s", file, say_system_error(errno));
    char *text = malloc(FILE_MAX);
    size_t size = text != NULL ? fread(text, 1, FILE_MAX, from) : 0;
    int status = STATUS_CONTINUE;
    if (text == NULL)
        status = print_error("no memory to read %s", out->file);
    else if (ferror(from) != 0)
        status = print_error("cannot read %s: %s", out->file, say_system_error(errno));
    else if (size == FILE_MAX)
        status = print_error("%s is too long for a record", out->file);
    if (!standard)
        fclose(from);
    if (status == STATUS_CONTINUE)
        status = parse(out, text, size);
    free(text);
    return status;
}

void record_free(inspection_record *record) { json_decref(record->tree); }

/* --- Writing ------------------------------------------------------------------------------------------ */

static int put_values(json_t *object, const record_value *values, const record_key *keys, size_t count)
{
    int failed = 0;
    for (size_t i = 0; i < count; i++) {
        if (values[i].text != NULL)
            failed |= json_object_set_new(object, record_key_name(&keys[i]), json_string(values[i].text));
        else if (values[i].number > 0)
            failed |= json_object_set_new(object, record_key_name(&keys[i]), json_integer(values[i].number));
    }
    return failed;
}

static int put_entry(json_t *list, const record_value *values, const record_key *keys, size_t count)
{
    json_t *entry = json_object();
    return put_values(entry, values, keys, count) | json_array_append_new(list, entry);
}

/* A list that version 1 did not have is written only if something is in it. */
static int put_list(json_t *root, const char *name, const record_value *values, size_t count, const record_key *keys,
                    size_t key_count, bool always)
{
    json_t *list = json_array();
    int failed = 0;
    for (size_t i = 0; i < count; i++)
        failed |= put_entry(list, values + i * key_count, keys, key_count);
    if (count > 0 || always)
        return failed | json_object_set_new(root, name, list);
    json_decref(list);
    return failed;
}

/* The oldest version that has all entries of the record, so that as many readers as possible read it. */
static int version_of(const inspection_record *record)
{
    static const head_key newer[] = {HEAD_TIME, HEAD_CARRIER, HEAD_REPAIR};
    bool third = record->unit_count > 0;
    for (size_t i = 0; i < COUNT_OF(newer); i++)
        third = third || record->head[newer[i]].text != NULL;
    return third ? RECORD_VERSION : record->step_count > 0 ? 2 : 1;
}

static int put_record(json_t *root, const inspection_record *record)
{
    int failed = json_object_set_new(root, "record", json_string(RECORD_KIND));
    failed |= json_object_set_new(root, "version", json_integer(version_of(record)));
    failed |= put_values(root, record->head, record_head_keys, HEAD_KEYS);
    failed |= put_list(root, "units", record->units[0], record->unit_count, record_unit_keys, UNIT_KEYS, false);
    failed |= put_list(root, "wheel_ends", record->ends[0], record->end_count, record_end_keys, END_KEYS, true);
    failed |= put_list(root, "air_checks", record->checks[0], record->check_count, record_check_keys, CHECK_KEYS, true);
    return failed | put_list(root, "steps", record->steps[0], record->step_count, record_step_keys, STEP_KEYS, false);
}

int record_write(const inspection_record *record, FILE *to)
{
    watch_memory();
    json_t *root = json_object();
    bool put = put_record(root, record) == 0;
    bool fits = json_dumpb(root, NULL, 0, JSON_INDENT(2)) + strlen("\n") < FILE_MAX;
    bool written = put && fits && json_dumpf(root, to, JSON_INDENT(2)) == 0 && fputc('\n', to) != EOF;
    int status = STATUS_CONTINUE;
    if (!put || memory_failed)
        status = print_error("no memory, or a text that is no UTF-8, while the record was written");
    else if (!fits)
        status = print_error("the record would be longer than 1 MiB, and nobody could read it again");
    else if (!written)
        status = print_error("the record could not be written: %s", say_system_error(errno));
    json_decref(root);
    return status;
}
