/* SPDX-License-Identifier: Apache-2.0 */
/* Finds the command of a command line. */
#ifndef DISPATCH_H
#define DISPATCH_H

#include "ui/options.h"

typedef struct command_list {
    const command_spec *const *commands;
    size_t count;
} command_list;

/* Runs it, or the help or the version, whose list of commands this is. argv[0] is the name of the program. Returns the
 * exit status. */
int dispatch(const command_list *of, int argc, char **argv);

#endif
