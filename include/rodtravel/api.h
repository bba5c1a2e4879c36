/* SPDX-License-Identifier: Apache-2.0 */
/* What every header declares its functions and enumerations with. */
#ifndef RODTRAVEL_API_H
#define RODTRAVEL_API_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* Declares a public function. On Windows a program that links the static library defines RODT_STATIC; RODT_BUILDING is
 * the library's own. */
#if defined(_WIN32) && !defined(RODT_STATIC)
#ifdef RODT_BUILDING
#define RODT_API __declspec(dllexport)
#else
#define RODT_API __declspec(dllimport)
#endif
#elif defined(__GNUC__)
#define RODT_API __attribute__((visibility("default")))
#else
#define RODT_API
#endif

/* Defines a function of one line in a header. The library has it as a symbol too, for callers that are not in C. */
#ifndef RODT_INLINE
#define RODT_INLINE static inline
#endif

/* The compiler warns of a call that drops the status: where it is not RODT_OK the result is as it was, often nothing at
 * all. The functions that write a text or a message do not have it, nor does rodt_form_parse, whose reading says itself
 * what could not be read. */
#if defined(__GNUC__)
#define RODT_MUST_CHECK __attribute__((warn_unused_result))
#else
#define RODT_MUST_CHECK
#endif

/*
 * Enumerators are kept in 32 bits, whatever a compiler's options say of the size of an enum: RODT_ENUM32(rodt_verdict)
 * is the type of such a member, and of what a function writes one to. It needs no cast: in C it is a number, in C++ it
 * is the enum itself.
 */
#if defined(SWIG)
#define RODT_ENUM_TYPE
#define RODT_ENUM32(type) type
#elif defined(__cplusplus) || (defined(__STDC_VERSION__) && __STDC_VERSION__ >= 202311L)
#define RODT_ENUM_TYPE : uint32_t
#define RODT_ENUM32(type) type
#else
#define RODT_ENUM_TYPE
#define RODT_ENUM32(type) uint32_t
#endif

#endif
