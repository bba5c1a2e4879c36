/* SPDX-License-Identifier: Apache-2.0 */
/* A number that nobody can predict, from the system. */
#ifndef SYSTEM_RANDOM_H
#define SYSTEM_RANDOM_H

#include <stdint.h>

/* Where the system has no source of such numbers, one of the time and the process. */
uint64_t system_random(void);

#endif
