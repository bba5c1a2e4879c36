/* SPDX-License-Identifier: Apache-2.0 */
/* A truncated report looks like a short one, so an older file stays until the new one is on the disk. */
#include "io/atomic_file.h"
#include "io/output_buffer.h"
#include "ui/exit_status.h"
#include "ui/message.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static int print_failure(const char *name, int reason)
{
    return print_error("%s could not be written: %s", name, strerror(reason));
}

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

/* A link stays a link: its file is replaced. */
static bool find_target(const char *name, char target[FILE_PATH_SIZE])
{
    char *real = realpath(name, NULL);
    const char *found = real != NULL ? real : name;
    bool fits = strlen(found) + sizeof ".XXXXXX" <= FILE_PATH_SIZE;
    if (fits)
        snprintf(target, FILE_PATH_SIZE, "%s", found);
    free(real);
    return fits;
}

static int open_temporary(atomic_file *out, mode_t mode)
{
    if (!find_target(out->name, out->target))
        return print_error("the name of the file is too long");
    snprintf(out->temporary, sizeof out->temporary, "%.*s.XXXXXX", FILE_PATH_SIZE - 8, out->target);
    out->descriptor = mkstemp(out->temporary);
    if (out->descriptor >= 0 && fchmod(out->descriptor, mode) == 0)
        return STATUS_CONTINUE;
    int status = print_failure(out->name, errno);
    if (out->descriptor >= 0) {
        close(out->descriptor);
        unlink(out->temporary);
    }
    return status;
}

int atomic_file_open(const char *name, atomic_file *out)
{
    mode_t mode;
    *out = (atomic_file){.name = name};
    if (strcmp(name, "-") == 0) {
        out->to = stdout;
        return STATUS_CONTINUE;
    }
    out->to = open_memstream(&out->text, &out->size);
    if (out->to == NULL)
        return print_failure(name, errno);
    int status = STATUS_CONTINUE;
    if (is_plain(name, &mode))
        status = open_temporary(out, mode);
    else if ((out->descriptor = open(name, O_WRONLY | O_TRUNC)) < 0)
        status = print_failure(name, errno);
    if (status == STATUS_CONTINUE)
        return status;
    fclose(out->to);
    free(out->text);
    return status;
}

/* Returns 0, or the errno of what failed. */
static int write_out(atomic_file *file)
{
    output to;
    int failure = ENOMEM;
    if (output_open(&to, file->descriptor)) {
        output_bytes(&to, file->text, file->size);
        output_flush(&to);
        failure = to.failure;
        output_close(&to);
    }
    if (failure == 0 && file->temporary[0] != '\0' && fsync(file->descriptor) != 0)
        failure = errno;
    return failure;
}

/* The name of a file is on the disk only when its folder is. It is no failure if the file system cannot do that. */
static void sync_folder(const char *file)
{
    char folder[FILE_PATH_SIZE];
    const char *end = strrchr(file, '/');
    if (end == NULL)
        snprintf(folder, sizeof folder, ".");
    else
        snprintf(folder, sizeof folder, "%.*s", (int)(end - file) + 1, file);
    int descriptor = open(folder, O_RDONLY);
    if (descriptor < 0)
        return;
    (void)fsync(descriptor);
    close(descriptor);
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

static int commit(const atomic_file *file)
{
    int failure = file->fresh ? rename_fresh(file) : rename(file->temporary, file->target) == 0 ? 0 : errno;
    if (failure == 0)
        sync_folder(file->target);
    return failure;
}

int atomic_file_close(atomic_file *file, bool good)
{
    if (file->to == stdout)
        return good ? STATUS_CONTINUE : STATUS_USAGE;
    bool renames = file->temporary[0] != '\0';
    bool complete = ferror(file->to) == 0;
    int failure = fclose(file->to) == 0 && complete ? 0 : ENOMEM;
    if (failure == 0 && good)
        failure = write_out(file);
    if (close(file->descriptor) != 0 && failure == 0)
        failure = errno;
    if (failure == 0 && good && renames)
        failure = commit(file);
    free(file->text);
    if (renames && (failure != 0 || !good))
        unlink(file->temporary);
    if (failure != 0)
        return print_failure(file->name, failure);
    return good ? STATUS_CONTINUE : STATUS_USAGE;
}
