/* SPDX-License-Identifier: Apache-2.0 */
/* The version of these headers, for the preprocessor, and that of the library that runs. */
#ifndef RODTRAVEL_VERSION_H
#define RODTRAVEL_VERSION_H

#include "api.h"

#ifdef __cplusplus
extern "C" {
#endif

/* The parts of the version of these headers. */
#define RODT_VERSION_MAJOR 0
#define RODT_VERSION_MINOR 1
#define RODT_VERSION_PATCH 0

/* Parts of RODT_VERSION; not for programs. */
#define RODT_VERSION_JOIN_(major, minor, patch) #major "." #minor "." #patch
#define RODT_VERSION_TEXT_(major, minor, patch) RODT_VERSION_JOIN_(major, minor, patch)

/* "0.1.0" */
#define RODT_VERSION RODT_VERSION_TEXT_(RODT_VERSION_MAJOR, RODT_VERSION_MINOR, RODT_VERSION_PATCH)

/* A number that grows with every version, for comparisons: #if RODT_VERSION_NUMBER >= RODT_VERSION_AT(0, 2, 0) */
#define RODT_VERSION_AT(major, minor, patch) ((major) * 1000000 + (minor) * 1000 + (patch))
#define RODT_VERSION_NUMBER RODT_VERSION_AT(RODT_VERSION_MAJOR, RODT_VERSION_MINOR, RODT_VERSION_PATCH)

/* Version of the library that runs, "major.minor.patch", and as a number (RODT_VERSION_AT). Constant, never freed. */
RODT_API const char *rodt_version(void);
RODT_API uint32_t rodt_version_number(void);

#ifdef __cplusplus
}
#endif
#endif
