/* SPDX-License-Identifier: Apache-2.0 */
/* A record as JSON, an entry a line. */
#include "record/record.h"
#include "ui/exit_status.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/utf8.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

typedef struct record_writer {
    FILE *to;       /* NULL = only counts */
    size_t size;    /* bytes so far */
    unsigned depth; /* of objects and lists */
    bool first;     /* the innermost of them is still empty */
    bool broken;    /* a text is no UTF-8 */
    bool failed;
} record_writer;

static void put(record_writer *out, const char *text, size_t size)
{
    out->size += size;
    if (out->to != NULL && fwrite(text, 1, size, out->to) != size)
        out->failed = true;
}

static void put_word(record_writer *out, const char *word) { put(out, word, strlen(word)); }

static void put_line_end(record_writer *out)
{
    put_word(out, "\n");
    for (unsigned i = 0; i < out->depth; i++)
        put_word(out, "  ");
}

static void separate(record_writer *out)
{
    if (!out->first)
        put_word(out, ",");
    put_line_end(out);
    out->first = false;
}

static void open_list(record_writer *out, const char *bracket)
{
    put_word(out, bracket);
    out->depth++;
    out->first = true;
}

static void close_list(record_writer *out, const char *bracket)
{
    out->depth--;
    if (!out->first)
        put_line_end(out);
    put_word(out, bracket);
    out->first = false;
}

static void put_character(record_writer *out, const char *text, size_t bytes)
{
    static const char escaped[] = "\"\\\b\f\n\r\t", letters[] = "\"\\bfnrt";
    const char *found = strchr(escaped, *text);
    char escape[8];
    if (found != NULL)
        snprintf(escape, sizeof escape, "\\%c", letters[found - escaped]);
    else if ((unsigned char)*text < 0x20)
        snprintf(escape, sizeof escape, "\\u%04X", (unsigned)*text);
    else {
        put(out, text, bytes);
        return;
    }
    put_word(out, escape);
}

static void put_text(record_writer *out, const char *text)
{
    size_t left = strlen(text), bytes;
    put_word(out, "\"");
    for (; left > 0 && !out->broken; text += bytes, left -= bytes) {
        bytes = utf8_bytes(text, left);
        out->broken = bytes == 0;
        if (!out->broken)
            put_character(out, text, bytes);
    }
    put_word(out, "\"");
}

static void put_key(record_writer *out, const char *key)
{
    separate(out);
    put_text(out, key);
    put_word(out, ": ");
}

static void put_number(record_writer *out, int number)
{
    char text[16];
    snprintf(text, sizeof text, "%d", number);
    put_word(out, text);
}

static void put_values(record_writer *out, const record_value *values, const record_key *keys, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        if (values[i].text == NULL && values[i].number == 0)
            continue;
        put_key(out, record_key_name(&keys[i]));
        if (values[i].text != NULL)
            put_text(out, values[i].text);
        else
            put_number(out, values[i].number);
    }
}

/* A list that version 1 did not have is written only if something is in it. */
static void put_list(record_writer *out, const char *name, const record_value *values, size_t count,
                     const record_key *keys, size_t key_count, bool always)
{
    if (count == 0 && !always)
        return;
    put_key(out, name);
    open_list(out, "[");
    for (size_t i = 0; i < count; i++) {
        separate(out);
        open_list(out, "{");
        put_values(out, values + i * key_count, keys, key_count);
        close_list(out, "}");
    }
    close_list(out, "]");
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

static void put_record(record_writer *out, const inspection_record *record)
{
    open_list(out, "{");
    put_key(out, "record");
    put_text(out, RECORD_KIND);
    put_key(out, "version");
    put_number(out, version_of(record));
    put_values(out, record->head, record_head_keys, HEAD_KEYS);
    put_list(out, "units", record->units[0], record->unit_count, record_unit_keys, UNIT_KEYS, false);
    put_list(out, "wheel_ends", record->ends[0], record->end_count, record_end_keys, END_KEYS, true);
    put_list(out, "air_checks", record->checks[0], record->check_count, record_check_keys, CHECK_KEYS, true);
    put_list(out, "steps", record->steps[0], record->step_count, record_step_keys, STEP_KEYS, false);
    close_list(out, "}");
    put_word(out, "\n");
}

int record_write(const inspection_record *record, FILE *to)
{
    record_writer count = {.to = NULL}, out = {.to = to};
    put_record(&count, record);
    if (count.broken)
        return print_error("a text of the record is no UTF-8, so it is not written");
    if (count.size >= RECORD_SIZE_MAX)
        return print_error("the record would be longer than 1 MiB, and nobody could read it again");
    put_record(&out, record);
    return out.failed ? print_error("the record could not be written: %s", say_system_error(errno)) : STATUS_CONTINUE;
}
