/* SPDX-License-Identifier: Apache-2.0 */
/* Fuzz target: a record of an inspection, of any bytes or of entries that people write. It is refused with a sentence,
 * as is all that a library of JSON refuses, or it is written again as it was read, every form of its report is well-formed and says the same, and without one of
 * its readings it is no better. */
#include "command.h"
#include "record/record.h"
#include "source.h"

#include <jansson.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/* --- A record of entries ------------------------------------------------------------------------------ */

#define TEXT_MOST 60

static const char *any_text(source *from, const record_key *key)
{
    static const char *const readings[] = {"2 1/8", "4 1/8", "1 1/2", "3 1/4", "30", "30/30 LS", "24L", "bolt C", "standard", "long",
                                           "95", "95 psi", "655 kPa", "31/8", "54 mm", "1/16", "off", "on", "cold", "automatic"};
    static const char *const others[] = {"1L", "1R", "2L", "2R", "3L", "us-fmcsr", "ca-on", "eu", "2026-11-20", "06:40", "combination",
                                         "single", "2016", "in", "mm", "loss-applied", "warning", "build-up", "62", "yes", "no",
                                         "tractor", "trailer", "skipped", "limits", "2L applied replaced", "5R; axle 2", "cautions"};
    static char room[TEXT_MOST + 1];
    uint8_t pick = byte(from);
    size_t size = pick < 16 ? byte(from) % TEXT_MOST : 0;
    const char *written = key->field != RODT_FIELD_POSITION && pick % 2 ? readings[pick / 2 % 20] : others[pick / 2 % 28];
    for (size_t i = 0; i < size; i++)
        room[i] = (char)byte(from);
    if (pick >= 16)
        strcpy(room, written);
    else
        room[size] = '\0';
    if (pick >= 240)
        room[byte(from) % (strlen(room) + 1)] = (char)byte(from);
    return room;
}

static json_t *any_object(source *from, const record_key *keys, size_t count)
{
    json_t *made = json_object();
    for (size_t i = 0; i < count; i++) {
        uint8_t pick = byte(from);
        if (!keys[i].needed && pick < 96)
            continue;
        json_t *value = keys[i].most > 0 ? json_integer(pick % (keys[i].most + 2)) : json_string(any_text(from, &keys[i]));
        json_object_set_new(made, record_key_name(&keys[i]), value != NULL ? value : json_string_nocheck(""));
    }
    return made;
}

static void put_list(source *from, json_t *root, const char *name, const record_key *keys, size_t count, unsigned most)
{
    json_t *list = json_array();
    for (unsigned left = byte(from) % most; left > 0; left--)
        json_array_append_new(list, any_object(from, keys, count));
    json_object_set_new(root, name, list);
}

static char *make_record(source *from)
{
    json_t *root = any_object(from, record_head_keys, HEAD_KEYS);
    json_object_set_new(root, "record", json_string(RECORD_KIND));
    json_object_set_new(root, "version", json_integer(1 + byte(from) % 3));
    put_list(from, root, "units", record_unit_keys, UNIT_KEYS, 4);
    put_list(from, root, "wheel_ends", record_end_keys, END_KEYS, 7);
    put_list(from, root, "air_checks", record_check_keys, CHECK_KEYS, 7);
    put_list(from, root, "steps", record_step_keys, STEP_KEYS, 7);
    char *text = json_dumps(root, 0);
    json_decref(root);
    return text;
}

/* --- Its report --------------------------------------------------------------------------------------- */

static int run(const char *words, char **out, size_t *size)
{
    char line[200];
    snprintf(line, sizeof line, "%s", words);
    const outcome *made = command_run(line);
    if (out != NULL) {
        *size = made->out_size;
        *out = malloc(*size + 1);
        demand(*out != NULL);
        memcpy(*out, made->out, *size + 1);
    }
    return made->status;
}

static void check_file(const char *name, bool (*is_good)(const char *text, size_t size))
{
    size_t size;
    char *text = command_get(name, &size);
    demand(text != NULL && is_good(text, size));
    free(text);
}

static bool is_same(char *a, size_t a_size, char *b, size_t b_size)
{
    bool same = a != NULL && b != NULL && a_size == b_size && memcmp(a, b, a_size) == 0;
    free(a);
    free(b);
    return same;
}

static void check_again(int status, char *judged, size_t judged_size)
{
    char *again, *first, *second;
    size_t again_size, first_size, second_size;
    demand(run("report written --json", &again, &again_size) == status);
    demand(is_same(judged, judged_size, again, again_size));
    demand(run("report written --record twice", NULL, NULL) == status);
    first = command_get("written", &first_size);
    second = command_get("twice", &second_size);
    demand(is_same(first, first_size, second, second_size));
}

/* A wheel end without one of its readings is undetermined. */
static void check_without(const char *text, size_t size, size_t pick)
{
    static const char *const names[] = {"released", "applied"};
    json_t *root = json_loadb(text, size, JSON_REJECT_DUPLICATES, NULL);
    json_t *ends = json_object_get(root, "wheel_ends");
    json_t *end = json_array_get(ends, json_array_size(ends) == 0 ? 0 : pick / 2 % json_array_size(ends));
    if (end != NULL && json_object_del(end, names[pick % 2]) == 0) {
        char *damaged = json_dumps(root, 0);
        command_put("record", damaged, strlen(damaged));
        demand(run("report record", NULL, NULL) != GOOD);
        free(damaged);
    }
    json_decref(root);
}

static void check(const char *text, size_t size, size_t pick)
{
    char *judged, said[] = "report record";
    size_t judged_size;
    command_begin();
    command_put("record", text, size);
    int status = run("report record --json", &judged, &judged_size);
    json_t *root = json_loadb(text, size, JSON_REJECT_DUPLICATES, NULL);
    demand(status == REFUSED || (root != NULL && is_json(judged, judged_size)));
    json_decref(root);
    const outcome *shown = command_run(said);
    demand(shown->status == status && is_terminal_safe(shown->out, shown->out_size));
    demand(run("report record --html page --svg drawing --record written", NULL, NULL) == status);
    if (status == REFUSED) {
        free(judged);
        return;
    }
    check_file("page", is_markup);
    check_file("drawing", is_markup);
    check_again(status, judged, judged_size);
    check_without(text, size, pick);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    source from = {data, size};
    bool is_text = size > 0 && (data[0] == '{' || data[0] < 0x20);
    char *made = is_text ? NULL : make_record(&from);
    if (is_text || made != NULL)
        check(is_text ? (const char *)data : made, is_text ? size : strlen(made), size);
    free(made);
    return 0;
}
