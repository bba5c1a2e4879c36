/* SPDX-License-Identifier: Apache-2.0 */
/* A walk-round from request to request. The page keeps its record; what is kept here is gone with the page. */
#include "page.h"
#include "memory_files.h"
#include "said.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/language.h"
#include "ui/options.h"

#include <string.h>
#include <unistd.h>

#define NAME "inspection.json"

static walk *open_walk;
static walk_session session;
static bool is_over;
static char file_name[WALK_ANSWER_MAX], language[8];

static void put_record(json_writer *json)
{
    const memory_file *file = memory_file_find(open_walk != NULL ? open_walk->file : file_name);
    if (file == NULL) {
        json_pair(json, "record", NULL);
        return;
    }
    file->bytes[file->size] = '\0'; /* every file has a byte more */
    json_pair(json, "record", file->bytes);
}

static void put_progress(json_writer *json, const walk *of)
{
    size_t done = 0;
    for (size_t i = 0; i < of->plan.count; i++)
        done += walk_answered(&of->record, &of->plan.items[i]);
    json_key(json, "progress");
    json_open(json, '{');
    json_number(json, "at", done);
    json_number(json, "of", of->plan.count);
    json_close(json, '}');
}

static const char *put_reply(json_writer *json, int status)
{
    json_key(json, "said");
    said_write(json);
    json_key(json, "question");
    if (is_over)
        json_text(json, NULL);
    else
        put_question(json, &session);
    put_record(json);
    if (open_walk != NULL) {
        put_progress(json, open_walk);
        put_vehicle(json, open_walk);
        put_outcome(json, open_walk);
    }
    json_key(json, "over");
    json_bool(json, is_over);
    json_key(json, "status");
    if (is_over)
        json_count(json, (uint64_t)status);
    else
        json_text(json, NULL);
    said_forget();
    return NULL;
}

static void forget(void)
{
    walk_free(open_walk);
    open_walk = NULL;
    is_over = true;
}

/* The line of a terminal: walkround OPTION... -- NAME. */
static int open_arguments(const request *from)
{
    char *line[REQUEST_ARGUMENTS_MAX + 8];
    static char program[] = "rodtravel", command[] = "walkround", option[] = "--" LANGUAGE_OPTION, end[] = "--";
    int count = 0;
    line[count++] = program;
    line[count++] = command;
    line[count++] = option;
    line[count++] = language;
    for (int i = 0; i < from->argument_count; i++)
        line[count++] = from->arguments[i];
    line[count++] = end;
    line[count++] = file_name;
    line[count] = NULL;
    optind = 1; /* an earlier line has moved it */
    choose_language_of_arguments(count, line);
    return walk_open_command(count - 1, line + 1, &open_walk);
}

const char *walk_reply_begin(const request *from, json_writer *json)
{
    const char *name = from->name != NULL ? from->name : NAME;
    if (name[0] == '\0' || strlen(name) >= sizeof file_name || strcmp(name, "-") == 0)
        return "bad-name";
    const char *word = from->language != NULL ? from->language : "en";
    if (strlen(word) != 2)
        return "bad-language";
    forget();
    said_keep(true);
    memcpy(file_name, name, strlen(name) + 1);
    memcpy(language, word, strlen(word) + 1);
    if (from->record != NULL && from->record[0] != '\0' &&
        !memory_file_set(name, from->record, strlen(from->record)))
        return "no-memory";
    if (from->record == NULL || from->record[0] == '\0')
        memory_file_remove(name);
    int status = open_arguments(from);
    if (status == STATUS_CONTINUE) {
        is_over = !walk_begin(open_walk, &session);
        status = session.status;
    }
    return put_reply(json, status);
}

/* As a terminal gives it: without the blanks around it. */
static input_status take_line(const char *line, char text[WALK_ANSWER_MAX])
{
    line += strspn(line, " \t");
    size_t size = strlen(line);
    while (size > 0 && strchr(" \t\r\n", line[size - 1]) != NULL)
        size--;
    if (size >= WALK_ANSWER_MAX)
        return INPUT_LONG;
    memcpy(text, line, size);
    text[size] = '\0';
    return INPUT_LINE;
}

const char *walk_reply_answer(const request *from, json_writer *json)
{
    if (open_walk == NULL || is_over)
        return "no-question";
    if (from->line == NULL)
        return "no-line";
    input_status status = take_line(from->line, session.text);
    is_over = !walk_take_line(&session, status);
    return put_reply(json, session.status);
}
