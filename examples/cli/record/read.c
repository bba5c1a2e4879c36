/* SPDX-License-Identifier: Apache-2.0 */
/* A record from JSON. One table of keys serves reading and writing, so that a record is rewritten as it was read. */
#include "record/record.h"
#include "io/json_object.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/message.h"
#include "ui/utf8.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* --- Entries ------------------------------------------------------------------------------------------ */

typedef struct place {
    const char *file;
    char where[RECORD_WHERE_SIZE]; /* "" = the record itself */
    char **room;                   /* where the next text goes; there is room for every text of the file */
} place;

/* A text with its escapes resolved. NULL: it has half a character, or a zero byte. */
static const char *take_text(const place *at, json_span from)
{
    char *text = *at->room;
    size_t size = json_object_text(from, text, from.size + 1);
    if (size == JSON_NO_TEXT || strlen(text) != size)
        return NULL;
    *at->room += size + 1;
    return text;
}

/* False: it is no whole number, or has more digits than any that is meant. */
static bool read_whole(const json_member *value, long long *out)
{
    char text[18];
    size_t size = value->value.size;
    bool whole = value->kind == JSON_NUMBER && size < sizeof text;
    for (size_t i = 0; whole && i < size; i++)
        whole = value->value.bytes[i] >= '0' && value->value.bytes[i] <= '9';
    if (!whole)
        return false;
    memcpy(text, value->value.bytes, size);
    text[size] = '\0';
    *out = strtoll(text, NULL, 10);
    return true;
}

static int print_entry_error(const place *at, const char *key, const char *what)
{
    return print_error("%s: %s%s%s: %s", at->file, at->where, at->where[0] == '\0' ? "" : ", ", key, what);
}

static int read_number(const place *at, const record_key *key, const json_member *value, int *out)
{
    char what[160];
    long long number;
    snprintf(what, sizeof what, say("a whole number from 1 to %d, without quotes, is expected"), key->most);
    if (!read_whole(value, &number) || number < 1 || number > key->most)
        return print_entry_error(at, record_key_name(key), what);
    *out = (int)number;
    return STATUS_CONTINUE;
}

static int read_text(const place *at, const record_key *key, const json_member *value, const char **out)
{
    if (value->kind == JSON_NUMBER)
        return print_entry_error(at, record_key_name(key),
                                 say("is a number; every reading is a text in quotes, such as \"2 1/8\""));
    if (value->kind != JSON_TEXT)
        return print_entry_error(at, record_key_name(key), say("a text in quotes is expected"));
    const char *text = take_text(at, value->value);
    if (text == NULL)
        return print_entry_error(at, record_key_name(key), say("holds half a character or a zero byte"));
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

static int read_entry(const place *at, const record_key *key, const json_member *value, record_value *out)
{
    if (out->text != NULL || out->number != 0)
        return print_entry_error(at, record_key_name(key), say("is there twice"));
    return key->most > 0 ? read_number(at, key, value, &out->number) : read_text(at, key, value, &out->text);
}

static int check_needed(const place *at, const record_key *keys, size_t count, const record_value *values)
{
    for (size_t i = 0; i < count; i++) {
        if (keys[i].needed && values[i].text == NULL)
            return print_entry_error(at, record_key_name(&keys[i]), say("is missing"));
    }
    return STATUS_CONTINUE;
}

/* Lists and what tells the kind of a record, which are not among the keys of its head. */
typedef enum other_entry {
    OTHER_RECORD, OTHER_VERSION, OTHER_UNITS, OTHER_ENDS, OTHER_CHECKS, OTHER_STEPS, OTHERS
} other_entry;

static const char *const other_names[OTHERS] = {"record", "version", "units", "wheel_ends", "air_checks", "steps"};

static int find_other(const char *name)
{
    int other = 0;
    while (other < OTHERS && strcmp(other_names[other], name) != 0)
        other++;
    return other;
}

/* The entries of an object. others: of the record itself, whose other entries are read elsewhere. */
static int read_object(const place *at, json_span object, bool others, const record_key *keys, size_t count,
                       record_value *out)
{
    json_object_reader reader;
    json_member member;
    json_object_open(&reader, object.bytes, object.size);
    while (json_object_next(&reader, &member) == JSON_MEMBER) {
        char *before = *at->room;
        const char *name = take_text(at, member.name);
        int key = name != NULL ? find_key(keys, count, name) : -1;
        if (key < 0 && (name == NULL || !others || find_other(name) == OTHERS))
            return print_entry_error(at, name != NULL ? name : "?", say("there is no such entry in a record"));
        *at->room = before;
        int status = key < 0 ? STATUS_CONTINUE : read_entry(at, &keys[key], &member, &out[key]);
        if (status != STATUS_CONTINUE)
            return status;
    }
    return check_needed(at, keys, count, out);
}

/* --- Lists -------------------------------------------------------------------------------------------- */

/* A list of entries of one kind. */
typedef struct entry_list {
    other_entry name;
    int label; /* the key that tells one entry from another in messages */
    const char *too_many;
    const record_key *keys;
    size_t key_count;
    size_t most;
    bool needed;
    record_value *values; /* key_count for each entry */
    size_t *count;
} entry_list;

/* The text that tells an entry from another; "" = it has none. It is forgotten with the next text. */
static const char *find_label(const place *at, const entry_list *list, const json_member *entry)
{
    json_object_reader reader;
    json_member member;
    const char *name, *label = NULL;
    char *before = *at->room;
    json_object_open(&reader, entry->value.bytes, entry->value.size);
    while (label == NULL && json_object_next(&reader, &member) == JSON_MEMBER) {
        *at->room = before;
        name = take_text(at, member.name);
        if (name != NULL && member.kind == JSON_TEXT && strcmp(name, record_key_name(&list->keys[list->label])) == 0)
            label = take_text(at, member.value);
    }
    *at->room = before;
    return label != NULL ? label : "";
}

static bool is_object(const json_member *value) { return value->kind == JSON_NESTED && value->value.bytes[0] == '{'; }
static bool is_array(const json_member *value) { return value->kind == JSON_NESTED && value->value.bytes[0] == '['; }

static void name_entry(place *at, const entry_list *list, const json_member *entry, size_t index)
{
    const char *label = find_label(at, list, entry);
    bool given = label[0] != '\0';
    snprintf(at->where, sizeof at->where, say("%s, entry %zu%s%.24s%s"), other_names[list->name], index + 1,
             given ? " (" : "", label, given ? ")" : "");
}

static int read_list(place at, const json_member *entries, const entry_list *list)
{
    json_object_reader reader;
    json_member entry;
    const char *name = other_names[list->name];
    if (entries == NULL)
        return list->needed ? print_entry_error(&at, name, say("is missing")) : STATUS_CONTINUE;
    if (!is_array(entries))
        return print_entry_error(&at, name, say("a list in square brackets is expected"));
    json_object_open(&reader, entries->value.bytes, entries->value.size);
    for (size_t i = 0; json_array_next(&reader, &entry) == JSON_MEMBER; i++) {
        at.where[0] = '\0';
        if (i == list->most)
            return print_entry_error(&at, name, say(list->too_many));
        name_entry(&at, list, &entry, i);
        if (!is_object(&entry))
            return print_entry_error(&at, "entry", say("an object in curly brackets is expected"));
        int status =
            read_object(&at, entry.value, false, list->keys, list->key_count, list->values + i * list->key_count);
        if (status != STATUS_CONTINUE)
            return status;
        *list->count = i + 1;
    }
    return STATUS_CONTINUE;
}

/* --- The record --------------------------------------------------------------------------------------- */

/* The entries of a record that are not of its head; NULL = not there. */
typedef struct other_values {
    json_member member[OTHERS];
    const json_member *found[OTHERS];
} other_values;

static int read_lists(inspection_record *out, const place *at, const other_values *others)
{
    const entry_list lists[] = {
        {OTHER_ENDS, END_POSITION, TO_SAY("there are more wheel ends than any vehicle has"), record_end_keys, END_KEYS,
         VEHICLE_ENDS_MAX, true, out->ends[0], &out->end_count},
        {OTHER_UNITS, UNIT_KIND, TO_SAY("there are more units than any combination has"), record_unit_keys, UNIT_KEYS,
         RECORD_UNITS_MAX, false, out->units[0], &out->unit_count},
        {OTHER_CHECKS, CHECK_NAME, TO_SAY("there are more checks than anybody does"), record_check_keys, CHECK_KEYS,
         RECORD_CHECKS_MAX, false, out->checks[0], &out->check_count},
        {OTHER_STEPS, STEP_NAME, TO_SAY("there are more steps than any walk-round has"), record_step_keys, STEP_KEYS,
         RECORD_STEPS_MAX, false, out->steps[0], &out->step_count}};
    int status = STATUS_CONTINUE;
    for (size_t i = 0; i < COUNT_OF(lists) && status == STATUS_CONTINUE; i++)
        status = read_list(*at, others->found[lists[i].name], &lists[i]);
    return status;
}

static bool is_record(const place *at, const other_values *others)
{
    char *before = *at->room;
    const json_member *kind = others->found[OTHER_RECORD];
    const char *text = kind != NULL && kind->kind == JSON_TEXT ? take_text(at, kind->value) : NULL;
    *at->room = before;
    return text != NULL && strcmp(text, RECORD_KIND) == 0;
}

/* Checked first: another version may have other entries. */
static int read_version(const place *at, const other_values *others)
{
    const json_member *value = others->found[OTHER_VERSION];
    long long version;
    char what[240];
    if (!is_record(at, others)) {
        snprintf(what, sizeof what, say("\"%s\" is expected; this is no record of an inspection"), RECORD_KIND);
        return print_entry_error(at, "record", what);
    }
    if (value == NULL || !read_whole(value, &version) || version < 1)
        return print_entry_error(at, "version", say("a whole number, the version of the record, is expected"));
    if (version <= RECORD_VERSION)
        return STATUS_CONTINUE;
    snprintf(what, sizeof what,
             say("the record is of version %lld, and this program, rodtravel %s, reads up to version %d; a newer "
                 "rodtravel reads it"), version, rodt_version(), RECORD_VERSION);
    return print_entry_error(at, "version", what);
}

/* The line and the character in it, both from 1. */
static int print_no_json(const place *at, const char *text, const char *found)
{
    unsigned long line = 1, character = 1;
    for (; text < found; text++) {
        bool ends = *text == '\n';
        line += ends;
        character = ends ? 1 : character + (((unsigned char)*text & 0xC0) != 0x80);
    }
    return print_error("%s:%lu:%lu: this is no JSON", at->file, line, character);
}

static int find_others(const place *at, const char *text, size_t size, other_values *out)
{
    json_object_reader reader;
    json_status status;
    json_member member;
    memset(out, 0, sizeof *out);
    json_object_open(&reader, text, size);
    while ((status = json_object_next(&reader, &member)) == JSON_MEMBER) {
        char *before = *at->room;
        const char *name = take_text(at, member.name);
        int other = name != NULL ? find_other(name) : OTHERS;
        *at->room = before;
        if (other == OTHERS)
            continue;
        if (out->found[other] != NULL)
            return print_entry_error(at, other_names[other], say("is there twice"));
        out->member[other] = member;
        out->found[other] = &out->member[other];
    }
    return status == JSON_END ? STATUS_CONTINUE : print_no_json(at, text, reader.at);
}

/* Bytes that are no UTF-8 are no JSON. */
static const char *find_broken(const char *text, size_t size)
{
    size_t bytes;
    for (; size > 0; text += bytes, size -= bytes) {
        bytes = utf8_bytes(text, size);
        if (bytes == 0)
            return text;
    }
    return NULL;
}

static bool is_list(const char *text, size_t size)
{
    json_object_reader reader;
    json_member unused;
    json_object_open(&reader, text, size);
    return json_array_next(&reader, &unused) != JSON_BAD || reader.begun;
}

static int parse(inspection_record *out, const char *text, size_t size)
{
    other_values others;
    out->texts = malloc(size + 1);
    if (out->texts == NULL)
        return print_error("no memory to read %s", out->file);
    char *room = out->texts;
    const place at = {out->file, "", &room};
    const char *broken = find_broken(text, size);
    if (broken != NULL)
        return print_no_json(&at, text, broken);
    if (is_list(text, size))
        return print_error("%s: a record is one object in curly brackets", out->file);
    int status = find_others(&at, text, size, &others);
    if (status == STATUS_CONTINUE)
        status = read_version(&at, &others);
    if (status == STATUS_CONTINUE)
        status = read_object(&at, (json_span){text, size}, true, record_head_keys, HEAD_KEYS, out->head);
    return status == STATUS_CONTINUE ? read_lists(out, &at, &others) : status;
}

/* The whole of a file; NULL if that failed, and is said. */
static char *read_whole_file(const char *name, FILE *from, size_t *size)
{
    char *text = malloc(RECORD_SIZE_MAX);
    *size = text != NULL ? fread(text, 1, RECORD_SIZE_MAX, from) : 0;
    if (text != NULL && ferror(from) == 0 && *size < RECORD_SIZE_MAX)
        return text;
    if (text == NULL)
        print_error("no memory to read %s", name);
    else if (ferror(from) != 0)
        print_error("cannot read %s: %s", name, say_system_error(errno));
    else
        print_error("%s is too long for a record", name);
    free(text);
    return NULL;
}

int record_read(const char *file, inspection_record *out)
{
    bool standard = strcmp(file, "-") == 0;
    size_t size;
    memset(out, 0, sizeof *out);
    out->file = standard ? say("standard input") : file;
    FILE *from = standard ? stdin : fopen(file, "rb");
    if (from == NULL)
        return print_error("cannot open %s: %s", file, say_system_error(errno));
    char *text = read_whole_file(out->file, from, &size);
    if (!standard)
        fclose(from);
    int status = text != NULL ? parse(out, text, size) : STATUS_USAGE;
    free(text);
    return status;
}

void record_free(inspection_record *record)
{
    free(record->texts);
    record->texts = NULL;
}
