/* SPDX-License-Identifier: Apache-2.0 */
/* A truncated report looks like a short one, so an older file stays until the new one is on the disk. */
#include "io/atomic_file.h"
#include "ui/exit_status.h"
#include "ui/message.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

static int print_failure(const char *name, int reason)
{
    return print_error("%s could not be written: %s", name, say_system_error(reason));
}

/* --- Temporary names ---------------------------------------------------------------------------------- */

/* Long enough that nobody else calls a file so. */
#define MARK ".rodtravel-"
#define RANDOM "XXXXXX"
#define BASE_MAX 255

/* What all temporary names of a file begin with, in its folder. A long name is cut between two characters. */
static void temporary_prefix(const char *target, char prefix[BASE_MAX + 1])
{
    const char *base = file_base(target);
    size_t size = strlen(base), room = BASE_MAX - strlen(MARK RANDOM);
    if (size > room) {
        size = room;
        while (size > 0 && ((unsigned char)base[size] & 0xC0) == 0x80)
            size--;
    }
    snprintf(prefix, BASE_MAX + 1, "%.*s%s", (int)size, base, MARK);
}

static bool is_temporary(const char *name, const char *prefix)
{
    size_t size = strlen(prefix);
    return strncmp(name, prefix, size) == 0 && strlen(name) == size + strlen(RANDOM);
}

/* A writer has its file locked as long as it lives. */
static void remove_left(int folder, const char *name)
{
    struct stat found;
    int descriptor = openat(folder, name, O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC);
    if (descriptor < 0)
        return;
    if (fstat(descriptor, &found) == 0 && S_ISREG(found.st_mode) && found.st_uid == geteuid() &&
        flock(descriptor, LOCK_EX | LOCK_NB) == 0)
        (void)unlinkat(folder, name, 0);
    close(descriptor);
}

static void remove_all_left(const char *target)
{
    char path[FILE_PATH_SIZE], prefix[BASE_MAX + 1];
    DIR *folder = opendir(file_folder(target, path));
    if (folder == NULL)
        return;
    temporary_prefix(target, prefix);
    for (const struct dirent *entry = readdir(folder); entry != NULL; entry = readdir(folder)) {
        if (is_temporary(entry->d_name, prefix))
            remove_left(dirfd(folder), entry->d_name);
    }
    closedir(folder);
}

void atomic_file_clean(const char *name)
{
    char target[FILE_PATH_SIZE];
    if (file_target(name, target))
        remove_all_left(target);
}

/* --- Opening ------------------------------------------------------------------------------------------ */

/* Renaming over a device would take the device away. */
static bool is_plain(const char *name, mode_t *mode)
{
    struct stat found;
    mode_t mask = umask(0);
    umask(mask);
    *mode = 0666 & ~mask;
    if (stat(name, &found) != 0)
        return true;
    *mode = found.st_mode & 0777;
    return S_ISREG(found.st_mode);
}

/* A folder lets a file be replaced that may not be written, and root may write any. */
int atomic_file_check(const char *name)
{
    struct stat found;
    if (stat(name, &found) != 0 || !S_ISREG(found.st_mode))
        return STATUS_CONTINUE;
    if ((found.st_mode & 0222) == 0 || access(name, W_OK) != 0)
        return print_error("%s is protected against writing; it is not replaced", name);
    return STATUS_CONTINUE;
}

static int lock_replaced(atomic_file *out)
{
    out->replaced = open(out->target, O_RDONLY | O_CLOEXEC);
    if (out->replaced >= 0 && flock(out->replaced, LOCK_EX | LOCK_NB) != 0 && errno == EWOULDBLOCK)
        return print_error("another program is writing %s; it is not replaced", out->name);
    return STATUS_CONTINUE;
}

/* Whoever removes what was left may have found the file before it was locked. Returns the descriptor or -1. */
static int make_temporary(atomic_file *out)
{
    char folder[FILE_PATH_SIZE], prefix[BASE_MAX + 1];
    struct stat made = {.st_nlink = 0};
    int descriptor = -1;
    temporary_prefix(out->target, prefix);
    while (made.st_nlink == 0) {
        if (descriptor >= 0)
            close(descriptor);
        int size = snprintf(out->temporary, sizeof out->temporary, "%s%s" RANDOM, file_folder(out->target, folder),
                            prefix);
        errno = ENAMETOOLONG;
        if (size >= (int)sizeof out->temporary || (descriptor = mkstemp(out->temporary)) < 0)
            break;
        (void)flock(descriptor, LOCK_EX);
        if (fstat(descriptor, &made) != 0)
            break;
    }
    return descriptor;
}

static int open_temporary(atomic_file *out, mode_t mode)
{
    int descriptor = make_temporary(out);
    if (descriptor >= 0 && fchmod(descriptor, mode) == 0 && (out->to = fdopen(descriptor, "w")) != NULL)
        return STATUS_CONTINUE;
    int status = print_failure(out->name, errno);
    if (descriptor >= 0) {
        close(descriptor);
        unlink(out->temporary);
    }
    return status;
}

static void close_replaced(const atomic_file *of)
{
    if (of->replaced >= 0)
        close(of->replaced);
}

static int open_plain(atomic_file *out, mode_t mode, bool locked)
{
    if (!file_target(out->name, out->target))
        return print_failure(out->name, errno);
    int status = atomic_file_check(out->name);
    if (status == STATUS_CONTINUE && !locked)
        status = lock_replaced(out);
    if (status == STATUS_CONTINUE) {
        remove_all_left(out->target);
        status = open_temporary(out, mode);
    }
    if (status != STATUS_CONTINUE)
        close_replaced(out);
    return status;
}

static int open_file(const char *name, bool locked, atomic_file *out)
{
    mode_t mode;
    *out = (atomic_file){.name = name, .replaced = -1};
    if (strcmp(name, "-") == 0) {
        out->to = stdout;
        return STATUS_CONTINUE;
    }
    if (is_plain(name, &mode))
        return open_plain(out, mode, locked);
    out->to = fopen(name, "w");
    return out->to != NULL ? STATUS_CONTINUE : print_failure(name, errno);
}

int atomic_file_open(const char *name, atomic_file *out) { return open_file(name, false, out); }

int atomic_file_open_locked(const char *name, atomic_file *out) { return open_file(name, true, out); }

/* --- Closing ------------------------------------------------------------------------------------------ */

/* The name of a file is on the disk only when its folder is. Returns 0, or the errno of what failed. It is no failure
 * if the file system cannot do that, or if the folder may be written and not read. */
static int sync_folder(const char *file)
{
    char folder[FILE_PATH_SIZE];
    int descriptor = open(file_folder(file, folder), O_RDONLY | O_CLOEXEC);
    if (descriptor < 0)
        return errno == EACCES ? 0 : errno;
    int failure = fsync(descriptor) == 0 || errno == EINVAL ? 0 : errno;
    close(descriptor);
    return failure;
}

/* A link fails if something has the name. Some file systems have no links; there a check must do.
 * Returns 0, or the errno of what failed. */
static int rename_fresh(const atomic_file *file)
{
    struct stat found;
    if (link(file->temporary, file->target) == 0)
        return unlink(file->temporary) == 0 ? 0 : errno;
    if (errno == EEXIST || lstat(file->target, &found) == 0)
        return EEXIST;
    return rename(file->temporary, file->target) == 0 ? 0 : errno;
}

/* An earlier call has seen the errno. The disk says it again: this file will not stay. */
static int ask_errno(const atomic_file *file)
{
    bool stays = file->temporary[0] == '\0';
    return !stays && write(fileno(file->to), "", 1) < 0 ? errno : EIO;
}

/* Returns 0, or the errno of what failed: nothing has been renamed then. */
static int write_out(const atomic_file *file)
{
    if (fflush(file->to) != 0)
        return errno;
    if (ferror(file->to) != 0)
        return ask_errno(file);
    if (file->temporary[0] == '\0')
        return 0;
    if (fsync(fileno(file->to)) != 0)
        return errno;
    return file->fresh ? rename_fresh(file) : rename(file->temporary, file->target) == 0 ? 0 : errno;
}

int atomic_file_close_locked(atomic_file *file, bool good, int *lock)
{
    if (file->to == stdout)
        return good ? STATUS_CONTINUE : STATUS_USAGE;
    bool renames = file->temporary[0] != '\0';
    int failure = 0, kept = -1;
    if (good && renames && lock != NULL && (kept = fcntl(fileno(file->to), F_DUPFD_CLOEXEC, 0)) < 0)
        failure = errno;
    if (good && failure == 0)
        failure = write_out(file);
    if (fclose(file->to) != 0 && good && !renames && failure == 0)
        failure = errno;
    good = good && failure == 0;
    int doubt = good && renames ? sync_folder(file->target) : 0;
    if (!good && renames)
        unlink(file->temporary);
    close_replaced(file);
    if (good && lock != NULL)
        *lock = kept;
    else if (kept >= 0)
        close(kept);
    if (failure != 0)
        return print_failure(file->name, failure);
    if (doubt != 0)
        return print_error("%s is complete and in its place, but the disk has not confirmed that: %s", file->name,
                           say_system_error(doubt));
    return good ? STATUS_CONTINUE : STATUS_USAGE;
}

int atomic_file_close(atomic_file *file, bool good) { return atomic_file_close_locked(file, good, NULL); }
