/* SPDX-License-Identifier: Apache-2.0 */
/* A file that is there whole or not at all: written under another name, then renamed. */
#ifndef KEEP_H
#define KEEP_H

#include <stdbool.h>
#include <stddef.h>
#include <stdio.h>

#define KEEP_PATH_SIZE 4096

typedef struct atomic_file {
    FILE *to;       /* memory, or standard output */
    const char *name;
    char *text;     /* what was put there; the file gets it in one piece */
    size_t size;
    int descriptor;
    bool fresh; /* set behind atomic_file_open: a file of that name that is there by now is not replaced */
    char target[KEEP_PATH_SIZE];    /* the file itself, where the name is a link to it */
    char temporary[KEEP_PATH_SIZE]; /* "" = written in place: a terminal, a pipe, a device */
} atomic_file;

/* "-" is standard output. Each returns STATUS_CONTINUE, or an exit status after it said what was wrong. */
int atomic_file_open(const char *name, atomic_file *out);

/* Gives the file its name, if `good` and everything could be written; otherwise nothing of it stays. */
int atomic_file_close(atomic_file *file, bool good);

#endif
