/* SPDX-License-Identifier: Apache-2.0 */
/* Fuzz target: answers of practice. The first line is the options; with --answers among them the rest is a file of
 * answers, otherwise what somebody types. They are marked alike for people and as JSON. */
#include "command.h"
#include "source.h"

#include <stdio.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static int practise(const char *options, const char *more)
{
    char line[600];
    snprintf(line, sizeof line, "practice %.500s%s", options, more);
    const outcome *made = command_run(line);
    demand(is_terminal_safe(made->out, made->out_size));
    demand(more[0] == '\0' || made->status == REFUSED || is_json(made->out, made->out_size));
    return made->status;
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    char *text = command_text(data, size), *at = text;
    const char *options = command_line_of(&at, &size);
    command_begin();
    command_put("answers", at, size);
    command_input(at, size, size % 2 != 0);
    if (!command_takes_long(options)) {
        int status = practise(options, "");
        bool marks = strstr(options, "--answers") != NULL && strstr(options, "-json") == NULL && strstr(options, "-h") == NULL;
        if (marks && status != REFUSED)
            demand(practise(options, " --json") == status);
    }
    free(text);
    return 0;
}
