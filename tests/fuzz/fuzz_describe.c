/* SPDX-License-Identifier: Apache-2.0 */
/* Fuzz target: values of records set by path and text. What is set has a text that sets the same value again; what is
 * refused changes nothing; the JSON of any such record fits in the room that it asks for. */
#include <stdlib.h>
#include <string.h>

#include <rodtravel/rodtravel.h>

#include "source.h"

#define TEXTS_MOST 24
#define TEXT_MOST 64
#define RECORD_MOST 32768

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static char texts[TEXTS_MOST][TEXT_MOST]; /* what text pointers point to */

static const char *any_text(source *from, char *room)
{
    static const char *const written[] = {"2 1/8", "31/8", "-1 3/4", "95 psi", "30L",  "2021-10-14", "1998", "1L",
                                          "true",  "no",   "12",     "-3",     "long", "over-limit, at-limit", "", "0.8"};
    uint8_t choice = byte(from);
    size_t size = choice & 1 ? byte(from) % (TEXT_MOST - 1u) : 0;
    for (size_t i = 0; i < size; i++)
        room[i] = (char)byte(from);
    room[size] = '\0';
    if ((choice & 1) == 0)
        strcpy(room, written[choice / 2 % 16]);
    return choice == 254 ? NULL : room;
}

static void append(char *path, size_t *used, const char *more)
{
    for (; *more != '\0' && *used + 1 < 160; more++)
        path[(*used)++] = *more;
    path[*used] = '\0';
}

/* Names of members as deep as there are records, with indexes and bytes of another kind. */
static void make_path(source *from, const rodt_record *record, char path[160])
{
    size_t used = 0;
    path[0] = '\0';
    for (int depth = 0; depth < 4 && record != NULL; depth++) {
        const rodt_member *member = rodt_member_at(record, byte(from) % rodt_member_count(record));
        const char index[] = {'[', (char)('0' + byte(from) % 10), ']', '\0'};
        append(path, &used, depth > 0 ? "." : "");
        append(path, &used, member->name);
        append(path, &used, member->count > 1 || index[1] == '9' ? index : "");
        record = member->record;
    }
    uint8_t damage = byte(from);
    if (damage >= 224 && used > 0)
        path[damage % used] = (char)byte(from);
}

static void check_set(const rodt_record *record, char *value, char *again, const char *path)
{
    char text[1024];
    const void *at = NULL;
    size_t size = rodt_record_size(record);
    const rodt_member *member = rodt_record_locate(record, value, path, &at);
    demand(member != NULL && (const char *)at >= value && (const char *)at + member->size <= value + size);
    demand(rodt_record_text_format(record, value, path, text, sizeof text, NULL) == RODT_OK);
    if (member->kind == RODT_MEMBER_KIND_TEXT_POINTER)
        return;
    memcpy(again, value, size);
    demand(rodt_record_set_text(record, again, path, text, NULL) == RODT_OK);
    demand(memcmp(again + ((const char *)at - value), at, member->size) == 0);
}

static void check_json(const rodt_record *record, const char *value)
{
    size_t needed = 0;
    demand(rodt_record_json_format(record, value, 0, NULL, 0, &needed) == RODT_E_SPACE && needed > 2);
    char *text = malloc(needed);
    demand(text != NULL);
    demand(rodt_record_json_format(record, value, 0, text, needed - 1, NULL) == RODT_E_SPACE);
    demand(rodt_record_json_format(record, value, 0, text, needed, NULL) == RODT_OK);
    demand(strlen(text) == needed - 1 && text[0] == '{' && text[needed - 2] == '}');
    free(text);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    source from = {data, size};
    const rodt_record *record = rodt_record_at(byte(&from) % rodt_record_count());
    size_t bytes = rodt_record_size(record);
    demand(bytes <= RECORD_MOST);
    char *value = calloc(3, bytes); /* the record, and two copies */
    demand(value != NULL);
    for (size_t i = 0; i < TEXTS_MOST && from.left > 0; i++) {
        char path[160];
        rodt_error error = {0};
        make_path(&from, record, path);
        const char *text = any_text(&from, texts[i]);
        memcpy(value + bytes, value, bytes);
        rodt_status status = rodt_record_set_text(record, value, path, text, &error);
        if (status == RODT_OK) {
            check_set(record, value, value + 2 * bytes, path);
        } else {
            demand(error.status == status && error.text[0] != '\0');
            demand(memcmp(value, value + bytes, bytes) == 0);
        }
    }
    check_json(record, value);
    free(value);
    return 0;
}
