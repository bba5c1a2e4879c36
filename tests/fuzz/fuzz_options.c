/* SPDX-License-Identifier: Apache-2.0 */
/* Fuzz target: command lines. Each line is one, with _ for a blank in a word; after an empty line comes standard input,
 * which is also the file `in`. Files that no line names stay as they are. */
#include "command.h"
#include "source.h"

#include <string.h>

#define LINES_MOST 24

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static const struct {
    const char *name, *bytes;
} files[] = {
    {"fleet.csv", "unit_no,position,chamber,released,applied,psi\nT-1,1L,30,2 1/8,4,95\nT-1,1R,24L,2,4 3/8,95\n"},
    {"air.csv", "check,pressure,before,after,vehicle\nwarning,62,,,single\nloss-applied,,100,97,single\n"},
    {"limits", "family,size,class,limit\nclamp,30,standard,1 7/8\n"},
    {"record", "{\"record\": \"brake-stroke-inspection\", \"version\": 1, \"rules\": \"us-fmcsr\", \"date\": \"2026-11-20\", "
               "\"unit\": \"T-1\", \"wheel_ends\": [{\"position\": \"1L\", \"chamber\": \"30\", \"released\": \"2 1/8\", "
               "\"applied\": \"4\", \"psi\": \"95\"}], \"air_checks\": []}"},
    {"answers", "yes\nT-7\n\n"},
};
#define FILES (sizeof files / sizeof files[0])

static void check_kept(const char *lines)
{
    for (size_t i = 0; i < FILES; i++) {
        size_t size, right = strlen(files[i].bytes);
        if (strstr(lines, files[i].name) != NULL)
            continue;
        char *bytes = command_get(files[i].name, &size);
        demand(bytes != NULL && size == right && memcmp(bytes, files[i].bytes, right) == 0);
        free(bytes);
    }
}

/* What a command shows of a foreign file goes through as it is, and sheets have form feeds. */
static bool shows_bytes(const char *line)
{
    return strncmp(line, "batch", 5) == 0 || strncmp(line, "practice", 8) == 0 || strstr(line, "=-") != NULL ||
           strstr(line, " -") != NULL;
}

static void run(char *line)
{
    char *arguments[COMMAND_ARGUMENTS_MAX + 1] = {NULL}, *next = NULL;
    size_t count = 0;
    bool safe = !shows_bytes(line), json = false;
    for (char *word = strtok_r(line, " ", &next); word != NULL && count < COMMAND_ARGUMENTS_MAX;
         word = strtok_r(NULL, " ", &next)) {
        arguments[count++] = word;
        json = json || strcmp(word, "--json") == 0;
        for (; *word != '\0'; word++)
            *word = *word == '_' ? ' ' : *word;
    }
    const outcome *made = command_run_arguments(arguments);
    demand(!safe || is_terminal_safe(made->out, made->out_size));
    bool is_value = made->out[0] == '{' || made->out[0] == '[';
    demand(!json || !is_value || strcmp(arguments[0], "batch") == 0 || is_json(made->out, made->out_size));
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    char *text = command_text(data, size), *at = text, *lines[LINES_MOST];
    int count = 0;
    command_begin();
    for (size_t i = 0; i < FILES; i++)
        command_put(files[i].name, files[i].bytes, strlen(files[i].bytes));
    while (count < LINES_MOST && size > 0) {
        lines[count] = command_line_of(&at, &size);
        if (lines[count][0] == '\0')
            break;
        count++;
    }
    command_put("in", at, size);
    command_input(at, size, false);
    char *named = malloc((size_t)(at - text) + 1);
    demand(named != NULL);
    for (char *from = text, *to = named; from <= at; from++, to++)
        *to = from == at ? '\0' : *from == '\0' ? '\n' : *from;
    for (int i = 0; i < count; i++) {
        if (!command_takes_long(lines[i]))
            run(lines[i]);
    }
    check_kept(named);
    free(named);
    free(text);
    return 0;
}
