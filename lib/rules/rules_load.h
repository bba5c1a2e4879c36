/* SPDX-License-Identifier: Apache-2.0 */
/* The loader with the allocator as an argument, so that a test can let it fail. */
#ifndef RODT_RULES_LOAD_H
#define RODT_RULES_LOAD_H

#include "rodtravel/rules.h"

/* rodt_rules_load_with_air; memory comes from allocate and goes back through free. */
rodt_status rodti_rules_load_with(void *(*allocate)(size_t), const rodt_rules *law, const rodt_rules *air_law,
                                  const char *name, const char *text, size_t size, rodt_rules **out,
                                  rodt_error *error);

#endif
