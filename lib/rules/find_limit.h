/* SPDX-License-Identifier: Apache-2.0 */
/* rodt_rules_find_limit for a chamber and a day that were checked before. */
#ifndef RODT_FIND_LIMIT_H
#define RODT_FIND_LIMIT_H

#include "rodtravel/rules.h"

/* The chamber has a size, and rules is not NULL. A marked rated stroke that no checked chamber has gives no limit. */
void rodti_rules_find_limit(const rodt_rules *rules, const rodt_chamber *chamber, rodt_date day,
                            rodt_limit_answer *out);

#endif
