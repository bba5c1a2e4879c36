/* SPDX-License-Identifier: Apache-2.0 */
/* What else the command does, by its own command lines; and what it knows. */
#include "commands.h"
#include "memory_files.h"
#include "page.h"
#include "said.h"
#include "ui/compiler.h"
#include "ui/dispatch.h"
#include "ui/exit_status.h"
#include "ui/language.h"

#include <stdio.h>
#include <string.h>
#include <unistd.h>

/* Not those that wait for somebody at a terminal, and not batch, which is for files of a size that no phone has. */
static const command_spec *const commands[] = {&stroke_command,   &air_command,      &report_command, &identify_command,
                                               &limits_command, &practice_command, &cards_command};

static void put_stream(json_writer *json, const char *key, int number)
{
    const memory_file *file = memory_stream(number);
    if (file->bytes != NULL)
        file->bytes[file->size] = '\0'; /* every file has a byte more */
    json_pair(json, key, file->bytes != NULL ? file->bytes : "");
}

/* What the command wrote beside its streams; a command that wrote nothing has no such member. */
static void put_files(json_writer *json)
{
    const memory_file *file;
    bool any = false;
    for (int at = 0; (file = memory_file_written(&at)) != NULL; any = true) {
        if (!any) {
            json_key(json, "files");
            json_open(json, '{');
        }
        file->bytes[file->size] = '\0'; /* every file has a byte more */
        json_pair(json, file->name, file->bytes);
    }
    if (any)
        json_close(json, '}');
}

static const char *run_line(int count, char **line, json_writer *json)
{
    said_keep(false);
    optind = 1; /* an earlier line has moved it */
    choose_language_of_arguments(count, line);
    int status = dispatch(&(command_list){commands, COUNT_OF(commands)}, count, line);
    fflush(stdout);
    fflush(stderr);
    json_number(json, "status", (uint64_t)status);
    put_stream(json, "out", 1);
    put_stream(json, "err", 2);
    put_files(json);
    memory_streams_clear();
    return NULL;
}

static char program[] = "rodtravel", language_option[] = "--" LANGUAGE_OPTION;

const char *run_reply(const request *from, json_writer *json)
{
    char *line[REQUEST_ARGUMENTS_MAX + 8], word[8];
    int count = 0;
    line[count++] = program;
    if (from->language != NULL && snprintf(word, sizeof word, "%s", from->language) >= (int)sizeof word)
        return "bad-language";
    if (from->language != NULL) {
        line[count++] = language_option;
        line[count++] = word;
    }
    for (int i = 0; i < from->argument_count; i++)
        line[count++] = from->arguments[i];
    line[count] = NULL;
    if (!memory_input_set(from->input != NULL ? from->input : "", from->input != NULL ? strlen(from->input) : 0))
        return "no-memory";
    return run_line(count, line, json);
}

#define RECORD_NAME "inspection.json"

const char *report_reply(const request *from, json_writer *json)
{
    static const struct {
        const char *format;
        const char *options[2];
    } formats[] = {{"text", {NULL}}, {"html", {"--html", "-"}}, {"svg", {"--svg", "-"}}, {"json", {"--json"}}};
    request same = *from;
    char words[2][8], command[] = "report", name[] = RECORD_NAME;
    size_t i = 0;
    while (from->format != NULL && i < COUNT_OF(formats) && strcmp(formats[i].format, from->format) != 0)
        i++;
    if (i == COUNT_OF(formats) || from->argument_count > REQUEST_ARGUMENTS_MAX - 4)
        return "bad-format";
    if (from->record == NULL)
        return "no-record";
    if (!memory_file_set(from->name != NULL ? from->name : name, from->record, strlen(from->record)))
        return "no-memory";
    same.argument_count = 0;
    same.arguments[same.argument_count++] = command;
    for (size_t k = 0; k < COUNT_OF(words) && formats[i].options[k] != NULL; k++) {
        snprintf(words[k], sizeof words[k], "%s", formats[i].options[k]);
        same.arguments[same.argument_count++] = words[k];
    }
    for (int k = 0; k < from->argument_count; k++)
        same.arguments[same.argument_count++] = from->arguments[k];
    same.arguments[same.argument_count++] = from->name != NULL ? (char *)(uintptr_t)from->name : name;
    return run_reply(&same, json);
}

static void put_rules(json_writer *json, const rodt_rules *rules)
{
    bool strokes = rodt_rules_limit_count(rules) > 0 || rodt_ratio_given(rodt_rules_rated_share(rules));
    json_open(json, '{');
    json_pair(json, "id", rodt_rules_id(rules));
    json_pair(json, "title", say(rodt_rules_title(rules)));
    json_key(json, "strokes");
    json_bool(json, strokes);
    json_key(json, "air");
    json_bool(json, rodt_rules_air_count(rules) > 0);
    json_close(json, '}');
}

const char *about_reply(const request *from, json_writer *json)
{
    if (from->language != NULL && !choose_language(from->language))
        return "bad-language";
    json_pair(json, "version", rodt_version());
    json_pair(json, "edition", rodt_tables_edition());
    json_pair(json, "languages", LANGUAGE_WORDS);
    json_pair(json, "default_rules", RODT_DEFAULT_RULES);
    json_key(json, "rules");
    json_open(json, '[');
    for (size_t i = 0; i < rodt_rules_count(); i++)
        put_rules(json, rodt_rules_at(i));
    json_close(json, ']');
    return NULL;
}
