/* SPDX-License-Identifier: Apache-2.0 */
#include "io/temporary_file.h"

#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdbool.h>
#include <stdlib.h>
#include <unistd.h>

/* The name is taken away at once: a program that is killed leaves nothing. */
static int open_unnamed(void)
{
    const char *folder = getenv("TMPDIR");
    char path[PATH_MAX];
    bool is_given = folder != NULL && folder[0] != '\0';
    int size = snprintf(path, sizeof path, "%s/rodtravel-XXXXXX", is_given ? folder : "/tmp");
    if ((size_t)size >= sizeof path) {
        errno = ENAMETOOLONG;
        return -1;
    }
    int descriptor = mkstemp(path);
    if (descriptor >= 0 && (unlink(path) != 0 || fcntl(descriptor, F_SETFD, FD_CLOEXEC) != 0)) {
        close(descriptor);
        return -1;
    }
    return descriptor;
}

FILE *temporary_file(void)
{
    int descriptor = open_unnamed();
    FILE *file = descriptor < 0 ? NULL : fdopen(descriptor, "w+b");
    if (file == NULL && descriptor >= 0)
        close(descriptor);
    return file;
}
