/* SPDX-License-Identifier: Apache-2.0 */
/* Calls of the system that fail where a test wants it; the linker puts them in between. */
#ifndef FAILING_CALLS_H
#define FAILING_CALLS_H

#include <stdbool.h>

/* The call fails, with that errno, after so many that do not. There may be several. Besides names of functions:
 *   short write       moves half of its bytes
 *   unnamed           fstat says that the file has lost its name
 *   interrupted poll  a SIGTERM comes while it waits */
void fail_call(const char *call, int after, int error);

/* Whether all of them came; they are forgotten. */
bool all_failed(void);

/* For calls that only one test has. */
bool call_fails(const char *call);

#endif
