/* SPDX-License-Identifier: Apache-2.0 */
/* How far a run has come: one line on a terminal, rewritten as it grows and cleared at the end. */
#include "batch/progress.h"
#include "ui/language.h"
#include "ui/wrap.h"

#include <stdio.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

/* Milliseconds before the line appears, and between two updates: short runs show none. */
#define FIRST 1000
#define NEXT 250

static int64_t milliseconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (int64_t)now.tv_sec * 1000 + now.tv_nsec / 1000000;
}

/* Not if rows are written to the same terminal. */
void batch_progress_open(batch_progress *progress, uint64_t size)
{
    *progress = (batch_progress){.wanted = isatty(STDERR_FILENO) && !isatty(STDOUT_FILENO), .size = size};
    progress->began = progress->wanted ? milliseconds() : 0;
    progress->due = progress->began + FIRST;
}

/* The time that is left, at the pace so far; empty if the size is not known. */
static void write_left(const batch_progress *progress, uint64_t bytes_read, int64_t passed, char *text, size_t size)
{
    text[0] = '\0';
    if (progress->size == 0 || bytes_read == 0 || bytes_read > progress->size)
        return;
    uint64_t seconds = (uint64_t)passed / 1000 * (progress->size - bytes_read) / bytes_read;
    snprintf(text, size, say(", %llu %% of the file, %llu min %llu s left"),
             (unsigned long long)(bytes_read * 100 / progress->size), (unsigned long long)(seconds / 60),
             (unsigned long long)(seconds % 60));
}

/* A line that wraps cannot be written over. */
static int room(void) { return (int)line_width(stderr) - 2; }

void batch_progress_show(batch_progress *progress, uint64_t rows, uint64_t bytes_read)
{
    char left[80];
    char text[160];
    int64_t now = progress->wanted ? milliseconds() : 0;
    if (!progress->wanted || now < progress->due)
        return;
    int64_t passed = now - progress->began;
    progress->due = now + NEXT;
    progress->shown = true;
    write_left(progress, bytes_read, passed, left, sizeof left);
    snprintf(text, sizeof text, say("%llu rows, %llu a second%s"), (unsigned long long)rows,
             (unsigned long long)(rows * 1000 / (uint64_t)passed), left);
    fprintf(stderr, "\r%-*.*s", room(), room(), text);
    fflush(stderr);
}

void batch_progress_hide(batch_progress *progress)
{
    if (progress->shown)
        fprintf(stderr, "\r%*s\r", room(), "");
    fflush(stderr);
    progress->shown = false;
}
