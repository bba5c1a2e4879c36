/* SPDX-License-Identifier: Apache-2.0 */
/* Attributes for compilers, and the size of an array. */
#ifndef COMPILER_H
#define COMPILER_H
#include <stdio.h>

#define COUNT_OF(array) (sizeof(array) / sizeof((array)[0]))

#if defined(__GNUC__)
#define PRINTF_LIKE(string, first) __attribute__((format(printf, string, first)))
#define FORMAT_ARGUMENT(index) __attribute__((format_arg(index)))
#else
#define FORMAT_ARGUMENT(index)
#define PRINTF_LIKE(string, first)
#endif

#if defined(__GNUC__)
#define ALWAYS_INLINE static inline __attribute__((always_inline))
#else
#define ALWAYS_INLINE static inline
#endif

/* Brings what is read soon into the processor's cache. */
#if defined(__GNUC__)
#define FETCH(address) __builtin_prefetch(address)
#else
#define FETCH(address) (void)(address)
#endif

#endif
