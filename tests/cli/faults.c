/* SPDX-License-Identifier: Apache-2.0 */
/* Preloaded into the command: FAIL_ALLOCATION=N makes the N-th allocation fail, and all after it with
 * FAIL_ALLOCATIONS=N; COUNT_ALLOCATIONS=FILE writes how many there were. SLOW_NAMES=MS waits before and after a file
 * gets its name. */
#include <dlfcn.h>
#include <stdatomic.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

static atomic_ulong allocations;
static unsigned long fails_at, fails_from, milliseconds;

static unsigned long number_of(const char *name)
{
    const char *text = getenv(name);
    return text == NULL ? 0 : strtoul(text, NULL, 10);
}

__attribute__((constructor)) static void read_faults(void)
{
    fails_at = number_of("FAIL_ALLOCATION");
    fails_from = number_of("FAIL_ALLOCATIONS");
    milliseconds = number_of("SLOW_NAMES");
    atomic_store(&allocations, 0);
}

__attribute__((destructor)) static void write_count(void)
{
    const char *name = getenv("COUNT_ALLOCATIONS");
    unsigned long count = atomic_load(&allocations);
    FILE *to = name == NULL ? NULL : fopen(name, "w");
    if (to == NULL)
        return;
    fprintf(to, "%lu", count);
    fclose(to);
}

static bool fails(void)
{
    unsigned long number = atomic_fetch_add(&allocations, 1) + 1;
    return number == fails_at || (fails_from > 0 && number >= fails_from);
}

/* A function pointer cannot be converted from what dlsym returns. */
static void find(const char *name, void *function)
{
    void *found = dlsym(RTLD_NEXT, name);
    memcpy(function, &found, sizeof found);
}

void *malloc(size_t size)
{
    static void *(*next)(size_t);
    if (next == NULL)
        find("malloc", &next);
    return fails() ? NULL : next(size);
}

void *calloc(size_t nmemb, size_t size)
{
    static void *(*next)(size_t, size_t);
    if (next == NULL)
        find("calloc", &next);
    return fails() ? NULL : next(nmemb, size);
}

void *realloc(void *ptr, size_t size)
{
    static void *(*next)(void *, size_t);
    if (next == NULL)
        find("realloc", &next);
    return fails() ? NULL : next(ptr, size);
}

static void wait_a_while(void)
{
    struct timespec rest = {(time_t)(milliseconds / 1000), (long)(milliseconds % 1000) * 1000000};
    if (milliseconds > 0)
        nanosleep(&rest, NULL);
}

int rename(const char *old, const char *new)
{
    static int (*next)(const char *, const char *);
    find("rename", &next);
    wait_a_while();
    int result = next(old, new);
    wait_a_while();
    return result;
}

int link(const char *from, const char *to)
{
    static int (*next)(const char *, const char *);
    find("link", &next);
    wait_a_while();
    int result = next(from, to);
    wait_a_while();
    return result;
}
