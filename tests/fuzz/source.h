/* SPDX-License-Identifier: Apache-2.0 */
/* The bytes that a fuzz target makes its input of. */
#ifndef SOURCE_H
#define SOURCE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

/* What was given, and zeros behind its end. */
typedef struct source {
    const uint8_t *data;
    size_t left;
} source;

static inline uint8_t byte(source *from)
{
    if (from->left == 0)
        return 0;
    from->left--;
    return *from->data++;
}

/* What must hold for every input; what does not is named with its line. */
#define demand(good) demand_at(good, __FILE__, __LINE__)
static inline void demand_at(bool good, const char *file, int line)
{
    if (good)
        return;
    fprintf(stderr, "%s:%d: does not hold\n", file, line);
    abort();
}

#endif
