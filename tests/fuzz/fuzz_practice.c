/* SPDX-License-Identifier: Apache-2.0 */
/* Fuzz target: answers of practice. The first line is the options; with --answers among them the rest is a file of
 * answers, otherwise what somebody types. They are marked alike for people and as JSON. */
#include "command.h"
#include "source.h"

#include <stdio.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/* A form feed parts the pages of a sheet. */
static void join_pages(const outcome *made)
{
    for (char *at = made->out; (at = memchr(at, '\f', made->out_size - (size_t)(at - made->out))) != NULL;)
        *at = '\n';
}

/* `more` stands before the options, which may end in --. */
static int practise(const char *options, const char *more)
{
    char line[600];
    snprintf(line, sizeof line, "practice %s %.500s", more, options);
    const outcome *made = command_run(line);
    join_pages(made);
    demand(is_terminal_safe(made->out, made->out_size));
    demand(more[0] == '\0' || made->status == REFUSED || is_json(made->out, made->out_size));
    return made->status;
}

/* Answers are marked, and no other word is taken for the option: names of files may say anything. */
static bool marks(const char *options)
{
    static const char *const others[] = {"-json", "-h", "-k", "-sh"};
    for (size_t i = 0; i < sizeof others / sizeof others[0]; i++) {
        if (strstr(options, others[i]) != NULL)
            return false;
    }
    return strstr(options, "--answers") != NULL;
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
        if (marks(options) && status != REFUSED)
            demand(practise(options, "--json") == status);
    }
    free(text);
    return 0;
}
