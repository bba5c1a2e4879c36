/* SPDX-License-Identifier: Apache-2.0 */
/* A file that appears complete or not at all: written under a temporary name, then renamed. */
#ifndef ATOMIC_FILE_H
#define ATOMIC_FILE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdio.h>

#define FILE_PATH_SIZE 4096

typedef struct atomic_file {
    FILE *to;       /* memory, or standard output */
    const char *name;
    char *text;     /* what was written so far; the file gets all of it at once */
    size_t size;
    int descriptor;
    bool fresh; /* set after atomic_file_open: a file that has that name by now is not replaced */
    char target[FILE_PATH_SIZE];    /* the file itself, if the name is a link to it */
    char temporary[FILE_PATH_SIZE]; /* "" = written in place: a terminal, a pipe, a device */
} atomic_file;

/* "-" is standard output. Each returns STATUS_CONTINUE, or an exit status after an error message. */
int atomic_file_open(const char *name, atomic_file *out);

/* Renames the file, if `good` and everything could be written; otherwise nothing of it remains. */
int atomic_file_close(atomic_file *file, bool good);

#endif
