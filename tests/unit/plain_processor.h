/* SPDX-License-Identifier: Apache-2.0 */
/* Included in front of files of the library that have a copy for some processors: this one has no feature. */
#ifndef PLAIN_PROCESSOR_H
#define PLAIN_PROCESSOR_H

#include <stdbool.h>

bool plain_processor_has(const char *feature);
#define PROCESSOR_HAS(feature) (plain_processor_has(feature) != 0) /* counted as the condition that it replaces */

#endif
