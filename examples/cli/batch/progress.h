/* SPDX-License-Identifier: Apache-2.0 */
/* How far a run has come, for a person at a terminal. */
#ifndef BATCH_PROGRESS_H
#define BATCH_PROGRESS_H

#include <stdbool.h>
#include <stdint.h>

typedef struct batch_progress {
    bool wanted;
    bool shown;
    uint64_t size; /* bytes of the input; 0 = not known */
    int64_t began; /* milliseconds of a clock that never goes back */
    int64_t due;
} batch_progress;

void batch_progress_open(batch_progress *progress, uint64_t size);
void batch_progress_show(batch_progress *progress, uint64_t rows, uint64_t bytes_read);
/* Clears the line, before anything else is printed. */
void batch_progress_hide(batch_progress *progress);

#endif
