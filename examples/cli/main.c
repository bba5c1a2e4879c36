/* SPDX-License-Identifier: Apache-2.0 */
/* rodtravel: the stroke of air brakes at the command line. The streams, and write errors on stdout. */
#include "commands.h"
#include "ui/compiler.h"
#include "ui/dispatch.h"
#include "ui/exit_status.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/options.h"

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <unistd.h>

static const command_spec *const commands[] = {&stroke_command, &vehicle_command, &air_command, &walkround_command,
                                               &report_command, &identify_command, &limits_command, &batch_command,
                                               &practice_command, &cards_command,    &page_command};

/* A file that was opened in the place of a closed stream would get what is said. */
static void fill_closed_streams(void)
{
    for (int i = STDIN_FILENO; i <= STDERR_FILENO; i++) {
        if (fcntl(i, F_GETFD) < 0)
            (void)open("/dev/null", i == STDIN_FILENO ? O_WRONLY : O_RDONLY);
    }
}

/* A full disk shows only when the last bytes are written, so the status is known after that. */
int main(int argc, char **argv)
{
    const bool wants_remarks = fcntl(STDERR_FILENO, F_GETFD) >= 0;
    fill_closed_streams();
    setvbuf(stderr, NULL, _IOLBF, BUFSIZ); /* a message is written as a line, not byte by byte */
    signal(SIGXFSZ, SIG_IGN);              /* a file that may not grow is an error, like a full disk */
    choose_language_of_arguments(argc, argv);
    int status = dispatch(&(command_list){commands, COUNT_OF(commands)}, argc, argv);
    bool lost = ferror(stdout) != 0;
    errno = 0;
    if (fflush(stdout) != 0 || lost)
        return print_error("the answer could not be written: %s",
                           errno == 0 ? say("output error") : say_system_error(errno));
    lost = fflush(stderr) != 0 || ferror(stderr) != 0;
    return lost && wants_remarks ? STATUS_USAGE : status;
}
