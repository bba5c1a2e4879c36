/* SPDX-License-Identifier: Apache-2.0 */
#include "failing_calls.h"

#include <errno.h>
#include <iconv.h>
#include <poll.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/types.h>
#include <unistd.h>

#define PLANS 4

/* The ones that are to come; NULL = none. */
static struct {
    const char *call;
    int after;
    int error;
} plans[PLANS];

void fail_call(const char *call, int after, int error)
{
    size_t at = 0;
    while (plans[at].call != NULL)
        at++;
    plans[at].call = call;
    plans[at].after = after;
    plans[at].error = error;
}

bool all_failed(void)
{
    bool all = true;
    for (size_t i = 0; i < PLANS; i++) {
        all = all && plans[i].call == NULL;
        plans[i].call = NULL;
    }
    return all;
}

bool call_fails(const char *call)
{
    for (size_t i = 0; i < PLANS; i++) {
        if (plans[i].call == NULL || strcmp(plans[i].call, call) != 0 || plans[i].after-- > 0)
            continue;
        plans[i].call = NULL;
        errno = plans[i].error;
        return true;
    }
    return false;
}

#define WRAPPED(type, failure, call, name, parameters, arguments) \
    type __real_##call parameters; \
    type __wrap_##call parameters; \
    type __wrap_##call parameters { return call_fails(name) ? (failure) : __real_##call arguments; }
WRAPPED(int, -1, flock, "flock", (int descriptor, int operation), (descriptor, operation))
WRAPPED(int, -1, fchmod, "fchmod", (int descriptor, mode_t mode), (descriptor, mode))
WRAPPED(int, -1, fsync, "fsync", (int descriptor), (descriptor))
WRAPPED(int, -1, link, "link", (const char *name, const char *other), (name, other))
WRAPPED(int, -1, unlink, "unlink", (const char *name), (name))
WRAPPED(int, -1, rename, "rename", (const char *name, const char *other), (name, other))
WRAPPED(int, -1, access, "access", (const char *name, int mode), (name, mode))
WRAPPED(int, -1, lstat64, "lstat", (const char *name, struct stat *out), (name, out))
WRAPPED(int, -1, mkstemp64, "mkstemp", (char *name), (name))
WRAPPED(int, -1, open64, "open", (const char *name, int flags), (name, flags))
WRAPPED(int, -1, fcntl64, "fcntl", (int descriptor, int command, int value), (descriptor, command, value))
WRAPPED(int, -1, ftruncate64, "ftruncate", (int descriptor, off_t size), (descriptor, size))
WRAPPED(FILE *, NULL, fdopen, "fdopen", (int descriptor, const char *mode), (descriptor, mode))
WRAPPED(FILE *, NULL, fopen64, "fopen", (const char *name, const char *mode), (name, mode))
WRAPPED(size_t, 0, fread, "fread", (void *bytes, size_t size, size_t count, FILE *file), (bytes, size, count, file))
WRAPPED(void *, NULL, malloc, "malloc", (size_t size), (size))
WRAPPED(void *, NULL, calloc, "calloc", (size_t count, size_t size), (count, size))
WRAPPED(void *, NULL, realloc, "realloc", (void *from, size_t size), (from, size))
WRAPPED(iconv_t, (iconv_t)-1, iconv_open, "iconv_open", (const char *to, const char *from), (to, from))

/* A file is closed even if that fails. */
int __real_fclose(FILE *file);
int __wrap_fclose(FILE *file);
int __wrap_fclose(FILE *file)
{
    int status = __real_fclose(file);
    return call_fails("fclose") ? -1 : status;
}

uid_t __real_geteuid(void);
uid_t __wrap_geteuid(void);
uid_t __wrap_geteuid(void) { return __real_geteuid() + (call_fails("geteuid") ? 1 : 0); }

int __real_fstat64(int descriptor, struct stat *out);
int __wrap_fstat64(int descriptor, struct stat *out);
int __wrap_fstat64(int descriptor, struct stat *out)
{
    int status = call_fails("fstat") ? -1 : __real_fstat64(descriptor, out);
    if (status == 0 && call_fails("unnamed"))
        out->st_nlink = 0;
    return status;
}

ssize_t __real_write(int descriptor, const void *bytes, size_t size);
ssize_t __wrap_write(int descriptor, const void *bytes, size_t size);
ssize_t __wrap_write(int descriptor, const void *bytes, size_t size)
{
    if (call_fails("write"))
        return -1;
    return __real_write(descriptor, bytes, call_fails("short write") ? size / 2 : size);
}

int __real_poll(struct pollfd *of, nfds_t count, int milliseconds);
int __wrap_poll(struct pollfd *of, nfds_t count, int milliseconds);
int __wrap_poll(struct pollfd *of, nfds_t count, int milliseconds)
{
    if (!call_fails("interrupted poll"))
        return call_fails("poll") ? -1 : __real_poll(of, count, milliseconds);
    raise(SIGTERM);
    errno = EINTR;
    return -1;
}
