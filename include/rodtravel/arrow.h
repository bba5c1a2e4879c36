/* SPDX-License-Identifier: Apache-2.0 */
/* The two structs of the Arrow C Data Interface, an open standard of the Apache Arrow project that is published under
 * the Apache License 2.0 for copying into other programs; the members are those of the specification. */
#ifndef RODTRAVEL_ARROW_H
#define RODTRAVEL_ARROW_H

#include <stdint.h>

#ifdef __cplusplus
extern "C" {
#endif

/* Every program that copies them uses this guard, so that two copies can meet in one file. */
#ifndef ARROW_C_DATA_INTERFACE
#define ARROW_C_DATA_INTERFACE

#define ARROW_FLAG_DICTIONARY_ORDERED 1
#define ARROW_FLAG_NULLABLE 2
#define ARROW_FLAG_MAP_KEYS_SORTED 4

struct ArrowSchema {
    const char *format;
    const char *name;
    const char *metadata;
    int64_t flags;
    int64_t n_children;
    struct ArrowSchema **children;
    struct ArrowSchema *dictionary;
    void (*release)(struct ArrowSchema *);
    void *private_data;
};

struct ArrowArray {
    int64_t length;
    int64_t null_count;
    int64_t offset;
    int64_t n_buffers;
    int64_t n_children;
    const void **buffers;
    struct ArrowArray **children;
    struct ArrowArray *dictionary;
    void (*release)(struct ArrowArray *);
    void *private_data;
};

#endif

#ifdef __cplusplus
}
#endif
#endif
