/* SPDX-License-Identifier: Apache-2.0 */
/* Files in memory, and a clock that is told: what the C library asks of a system is answered here, so that the module
 * has no imports. */
#ifndef MEMORY_FILES_H
#define MEMORY_FILES_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

typedef struct memory_file {
    char *name; /* NULL = there is none */
    char *bytes;
    size_t size, room;
    bool written; /* by the command, and complete */
} memory_file;

/* A file with these bytes, in place of one of that name. False: there is no memory, or too many files. */
bool memory_file_set(const char *name, const char *bytes, size_t size);
const memory_file *memory_file_find(const char *name); /* NULL = there is none */
bool memory_file_rename(const char *from, const char *to); /* and it is written */
const memory_file *memory_file_written(int *at); /* the next one from *at on, which begins at 0; NULL = no more */
void memory_file_remove(const char *name);
void memory_files_remove_all(void); /* also what was written to the streams */

/* What was written to standard output (1) or to standard error (2), and that it is not any more. */
const memory_file *memory_stream(int number);
void memory_streams_clear(void);

/* What standard input has to read. */
bool memory_input_set(const char *bytes, size_t size);

/* The time of the place, as if it were UTC. */
void memory_clock_set(int64_t seconds);

#endif
