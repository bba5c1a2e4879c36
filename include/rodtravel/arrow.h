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

#define ARROW_FLAG_DICTIONARY_ORDERED 1 /* the values of a dictionary are in order */
#define ARROW_FLAG_NULLABLE 2 /* cells can be missing */
#define ARROW_FLAG_MAP_KEYS_SORTED 4 /* the keys of a map are in order */

/* The type of an array: a column, or a struct of columns. */
struct ArrowSchema {
    const char *format;                    /* the type, as the specification writes it */
    const char *name;                      /* of the column; can be NULL */
    const char *metadata;                  /* can be NULL */
    int64_t flags;                         /* ARROW_FLAG_ bits */
    int64_t n_children;                    /* number of children */
    struct ArrowSchema **children;         /* the columns of a struct */
    struct ArrowSchema *dictionary;        /* the type of the values of a dictionary, or NULL */
    void (*release)(struct ArrowSchema *); /* frees it; NULL = it was released */
    void *private_data;                    /* of the producer */
};

/* The cells of an array. */
struct ArrowArray {
    int64_t length;                       /* number of cells */
    int64_t null_count;                   /* missing cells; -1 = not counted */
    int64_t offset;                       /* cells before the first one */
    int64_t n_buffers;                    /* number of buffers */
    int64_t n_children;                   /* number of children */
    const void **buffers;                 /* bitmap of the cells that are there, then the cells */
    struct ArrowArray **children;         /* the columns of a struct */
    struct ArrowArray *dictionary;        /* the values of a dictionary, or NULL */
    void (*release)(struct ArrowArray *); /* frees it; NULL = it was released */
    void *private_data;                   /* of the producer */
};

#endif

#ifdef __cplusplus
}
#endif
#endif
