/* SPDX-License-Identifier: Apache-2.0 */
/* Copies in steps of a known size, which is faster than to the byte. */
#ifndef LOOSE_COPY_H
#define LOOSE_COPY_H

#include "ui/compiler.h"

#include <stdint.h>
#include <string.h>

/* Most bytes that are copied in one step. */
#define STEP 96u

/* A step for short texts. */
#define SMALL_STEP 16u

/* Up to a step too far on both sides. */
ALWAYS_INLINE void copy_in_steps(char *to, const char *from, uint32_t size, uint32_t step)
{
    memcpy(to, from, step);
    for (uint32_t at = step; at < size; at += step)
        memcpy(to + at, from + at, step);
}

/* Most texts take one step. */
ALWAYS_INLINE void copy_loosely(char *to, const char *from, uint32_t size) { copy_in_steps(to, from, size, STEP); }

#endif
