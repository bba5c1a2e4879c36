/* SPDX-License-Identifier: Apache-2.0 */
/* The end of a walk-round: the verdict, and the commands to go on with. */
#include "walkround/walkround.h"
#include "input/text_file.h"
#include "ui/exit_status.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/options.h"

#include <stdio.h>
#include <string.h>

/* As it can be typed; a record that was judged with limits of a carrier's own needs them again. */
void walk_print_command(const walk *of, const char *what, const char *command)
{
    const char *own = of->limits_file != NULL ? of->limits_file : "";
    const char *mark = strpbrk(of->file, " '$`\"\\*?&;|<>()") != NULL && strchr(of->file, '\'') == NULL ? "'" : "";
    const char *other = strpbrk(own, " '$`\"\\*?&;|<>()") != NULL && strchr(own, '\'') == NULL ? "'" : "";
    const char *language = language_given();
    walk_print_typed(say("%s: rodtravel %s %s%s%s%s%s%s%s%s%s"), what, command, mark, of->file, mark,
                     own[0] != '\0' ? " --limits " : "", other, own, other, language != NULL ? " --language " : "",
                     language != NULL ? language : "");
}

/* Answers after the last question mean that answers went to other questions than they were written for. */
static int refuse_rest(walk *of)
{
    char text[WALK_ANSWER_MAX];
    walk_input *input = &of->input;
    bool pipe = strcmp(input->file, say("standard input")) == 0;
    while (!pipe || memchr(input->bytes + input->at, '\n', input->used - input->at) != NULL) {
        input_status status = walk_read_line(input, text);
        if (status == INPUT_END)
            break;
        if (status != INPUT_LINE || (text[0] != '\0' && !text_is_comment(text)))
            return print_error("%s:%lu: there is an answer after the last question", input->file, input->line);
    }
    return STATUS_CONTINUE;
}

int walk_finish(walk *of)
{
    walk_print_verdict(of);
    walk_print_typed(say("Done; all is in %s."), of->file);
    walk_print_command(of, say("Whole report"), "report");
    if (walk_is_person(&of->input))
        walk_print_typed("%s", say("An answer is wrong? walkround again, with --back 2L for the last one of that wheel "
                                   "end."));
    walk_print_outcome(of);
    int status = walk_is_person(&of->input) ? STATUS_CONTINUE : refuse_rest(of);
    return status == STATUS_CONTINUE ? walk_status(of, true) : status;
}
