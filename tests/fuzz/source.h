/* SPDX-License-Identifier: Apache-2.0 */
/* The bytes that a fuzz target makes its input of. */
#ifndef SOURCE_H
#define SOURCE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
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

/* What must hold for every input. */
static inline void demand(bool good)
{
    if (!good)
        abort();
}

#endif
