/* SPDX-License-Identifier: Apache-2.0 */
/* A file that appears complete or not at all: written under a temporary name, then renamed. */
#ifndef ATOMIC_FILE_H
#define ATOMIC_FILE_H

#include "ui/files.h"

#include <stdbool.h>
#include <stdio.h>

typedef struct atomic_file {
    FILE *to; /* the temporary file, a device, or standard output */
    const char *name;
    int replaced; /* locks the older file; -1 = there is none, or the caller has locked it */
    bool fresh; /* set after atomic_file_open: a file that has that name by now is not replaced */
    char target[FILE_PATH_SIZE];    /* the file itself, if the name is a link to it */
    char temporary[FILE_PATH_SIZE]; /* "" = written in place: a terminal, a pipe, a device */
} atomic_file;

/* "-" is standard output. A file that is protected, or that another program writes, is refused. Each returns
 * STATUS_CONTINUE, or an exit status after an error message. */
int atomic_file_open(const char *name, atomic_file *out);

/* The same for a caller who has locked the older file. */
int atomic_file_open_locked(const char *name, atomic_file *out);

/* Renames the file, if `good` and everything could be written; otherwise nothing of it remains. If the disk does not
 * confirm the new name, the file is in its place, and that is an error all the same: a power failure could still bring
 * the older one back. */
int atomic_file_close(atomic_file *file, bool good);

/* The same, and nobody else has locked the new file in between: *lock is a descriptor that does, if a plain file is in
 * its place, confirmed or not; otherwise it is unchanged. */
int atomic_file_close_locked(atomic_file *file, bool good, int *lock);

/* Refuses a file that may not be written, as opening does. */
int atomic_file_check(const char *name);

/* Removes what runs that were killed have left of this file. Opening does so, too. */
void atomic_file_clean(const char *name);

#endif
