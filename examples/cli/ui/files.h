/* SPDX-License-Identifier: Apache-2.0 */
/* The files that a command line names: none that is written may be one that is read, or written twice. */
#ifndef FILES_H
#define FILES_H

#include "ui/options.h"

#define FILE_PATH_SIZE 4096

/* Follows links, also one to a file that is not there. False, with errno: a path that is too long, or links in a
 * circle. */
bool file_target(const char *name, char target[FILE_PATH_SIZE]);

/* The part of a path after its last slash. */
const char *file_base(const char *path);

/* Calls the folder of a path by name: "./" or what is before file_base. Returns `folder`. */
const char *file_folder(const char *path, char folder[FILE_PATH_SIZE]);

/* Refuses a line whose files, with standard output, are not all different. Returns STATUS_CONTINUE or an exit
 * status. */
int check_files(const command_line *from);

#endif
