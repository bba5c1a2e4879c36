/* SPDX-License-Identifier: Apache-2.0 */
/* The bottom of the library: small helpers that know no other part of it. */
#ifndef RODT_COMMON_H
#define RODT_COMMON_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define COUNT_OF(array) (sizeof(array) / sizeof((array)[0]))

/* For the loops over rows: each copy of them is compiled for a processor of its own, with all that they call. */
#if defined(__GNUC__)
#define INLINE static inline __attribute__((always_inline))
#else
#define INLINE static inline
#endif

/* What is at the address is needed soon. */
#if defined(__GNUC__)
#define FETCH(address) __builtin_prefetch(address)
#else
#define FETCH(address) ((void)(address))
#endif

/* For what has a copy for processors with a feature. A test says otherwise. */
#ifndef PROCESSOR_HAS
#define PROCESSOR_HAS(feature) (__builtin_cpu_supports(feature) != 0)
#endif

#if defined(__GNUC__)
#define PRINTF_LIKE(string, first) __attribute__((format(printf, string, first)))
#else
#define PRINTF_LIKE(string, first)
#endif

#endif
