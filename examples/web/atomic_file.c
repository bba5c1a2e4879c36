/* SPDX-License-Identifier: Apache-2.0 */
/* A file in memory that is replaced when it is complete: in place of io/atomic_file.c. */
#include "io/atomic_file.h"
#include "memory_files.h"
#include "ui/exit_status.h"
#include "ui/message.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <unistd.h>

#define TEMPORARY "\1"

void atomic_file_clean(const char *name) { (void)name; }

int atomic_file_check(const char *name)
{
    (void)name;
    return STATUS_CONTINUE;
}

int atomic_file_open(const char *name, atomic_file *out)
{
    *out = (atomic_file){.name = name, .replaced = -1};
    out->to = strcmp(name, "-") == 0 ? stdout : fopen(TEMPORARY, "w");
    return out->to != NULL ? STATUS_CONTINUE
                           : print_error("%s could not be written: %s", name, say_system_error(errno));
}

int atomic_file_open_locked(const char *name, atomic_file *out) { return atomic_file_open(name, out); }

int atomic_file_close_locked(atomic_file *file, bool good, int *lock)
{
    if (file->to == stdout)
        return good ? STATUS_CONTINUE : STATUS_USAGE;
    bool whole = ferror(file->to) == 0;
    whole = fclose(file->to) == 0 && whole;
    if (!good || !whole || !memory_file_rename(TEMPORARY, file->name)) {
        memory_file_remove(TEMPORARY);
        return good ? print_error("%s could not be written: %s", file->name, say_system_error(ENOSPC)) : STATUS_USAGE;
    }
    if (lock != NULL)
        *lock = open(file->name, O_RDONLY);
    return STATUS_CONTINUE;
}

int atomic_file_close(atomic_file *file, bool good) { return atomic_file_close_locked(file, good, NULL); }
