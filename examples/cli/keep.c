/* SPDX-License-Identifier: Apache-2.0 */
/* A report that was cut off looks like one that ends early, so an older file stays until the new one is on the disk. */
#define _XOPEN_SOURCE 700 /* realpath */
#include "keep.h"

#include "cli.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static int refuse(const char *name)
{
    return complain("%s could not be written: %s", name, errno == 0 ? "output error" : strerror(errno));
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
static bool find_target(const char *name, char target[KEEP_PATH_SIZE])
{
    char *real = realpath(name, NULL);
    const char *found = real != NULL ? real : name;
    bool fits = strlen(found) + sizeof ".XXXXXX" <= KEEP_PATH_SIZE;
    if (fits)
        strcpy(target, found);
    free(real);
    return fits;
}

static int open_beside(kept_file *out, mode_t mode)
{
    if (!find_target(out->name, out->target))
        return complain("the name of the file is too long");
    snprintf(out->temporary, sizeof out->temporary, "%.*s.XXXXXX", KEEP_PATH_SIZE - 8, out->target);
    int descriptor = mkstemp(out->temporary);
    if (descriptor < 0) {
        out->temporary[0] = '\0';
        return refuse(out->name);
    }
    bool open = fchmod(descriptor, mode) == 0 && (out->to = fdopen(descriptor, "wb")) != NULL;
    if (open)
        return STATUS_CONTINUE;
    int status = refuse(out->name);
    close(descriptor);
    unlink(out->temporary);
    return status;
}

/* Whatever fits waits for keep_close, where the reason of a failure is still known. */
#define KEEP_BLOCK ((size_t)1 << 20)

static int open_kept(const char *name, kept_file *out)
{
    mode_t mode;
    *out = (kept_file){.name = name};
    if (strcmp(name, "-") == 0) {
        out->to = stdout;
        return STATUS_CONTINUE;
    }
    if (is_plain(name, &mode))
        return open_beside(out, mode);
    out->to = fopen(name, "wb");
    return out->to != NULL ? STATUS_CONTINUE : refuse(name);
}

int keep_open(const char *name, kept_file *out)
{
    int status = open_kept(name, out);
    if (status == STATUS_CONTINUE && out->to != stdout)
        (void)setvbuf(out->to, NULL, _IOFBF, KEEP_BLOCK);
    return status;
}

int keep_close(kept_file *file, bool good)
{
    bool beside = file->temporary[0] != '\0';
    if (file->to == stdout)
        return good ? STATUS_CONTINUE : STATUS_USAGE;
    errno = 0;
    bool written = ferror(file->to) == 0 && fflush(file->to) == 0 && (!beside || fsync(fileno(file->to)) == 0);
    int reason = errno;
    bool closed = fclose(file->to) == 0;
    reason = written && !closed ? errno : reason;
    written = written && closed;
    if (written && good && (!beside || rename(file->temporary, file->target) == 0))
        return STATUS_CONTINUE;
    errno = written ? errno : reason;
    int status = good ? refuse(file->name) : STATUS_USAGE;
    if (beside)
        unlink(file->temporary);
    return status;
}
