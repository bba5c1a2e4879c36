/* SPDX-License-Identifier: Apache-2.0 */
/* What is wrong with a value that a program filled by hand. */
#ifndef RODT_FAULT_H
#define RODT_FAULT_H

#include "core/common.h"
#include "rodtravel/ratio.h"

/* A sentence, or NULL: the value is all zero bytes, or in lowest terms, not below zero and at most `most`. `above` is
 * the sentence for more. */
const char *rodti_ratio_fault(rodt_ratio value, int64_t most, const char *above);

/* Fills *error (may be NULL) and returns RODT_E_ARGUMENT. */
rodt_status rodti_field_error(rodt_error *error, const char *field, const char *sentence);

/* The same for a rule set that is NULL; RODT_E_UNKNOWN_RULES. */
rodt_status rodti_rules_error(rodt_error *error);

/* True if every number is zero: a reserve is. */
bool rodti_is_zero(const uint64_t *reserved, size_t count);

#endif
