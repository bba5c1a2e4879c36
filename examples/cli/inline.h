/* SPDX-License-Identifier: Apache-2.0 */
/* For functions that must become part of a loop that is compiled for one kind of processor. */
#ifndef INLINE_H
#define INLINE_H

#if defined(__GNUC__)
#define ALWAYS_INLINE static inline __attribute__((always_inline))
#else
#define ALWAYS_INLINE static inline
#endif

#endif
