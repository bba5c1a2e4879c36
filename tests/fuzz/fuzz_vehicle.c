/* SPDX-License-Identifier: Apache-2.0 */
/* Fuzz target: tables of wheel ends. The first line is the command with its options, the rest is the
 * file `in`. It has one status for people and as JSON. */
#include "command.h"
#include "source.h"

#include <stdio.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static int run(const char *words, const char *more)
{
    char line[600];
    snprintf(line, sizeof line, "%.500s%s", words, more);
    const outcome *made = command_run(line);
    demand(is_terminal_safe(made->out, made->out_size));
    demand(more[0] == '\0' || made->status == REFUSED || is_json(made->out, made->out_size));
    return made->status;
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    char *text = command_text(data, size), *at = text;
    const char *words = command_line_of(&at, &size);
    bool is_table = strncmp(words, "vehicle", 7) == 0;
    command_begin();
    command_put("in", at, size);
    command_input(at, size, false);
    if (is_table && strstr(words, "-json") == NULL && strstr(words, "-h") == NULL)
        demand(run(words, "") == run(words, " --json"));
    free(text);
    return 0;
}
