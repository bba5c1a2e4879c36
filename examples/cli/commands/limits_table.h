/* SPDX-License-Identifier: Apache-2.0 */
/* Tables of limits and of rule sets, for people and for programs. */
#ifndef LIMITS_H
#define LIMITS_H

#include "input/rule_context.h"

#include <rodtravel/rodtravel.h>

/* The law of a rule context, also under a carrier's limits. */
static inline const rodt_rules *law_of(const rule_context *rules_of)
{
    const rodt_rules *law = rodt_rules_law(rules_of->rules);
    return law != NULL ? law : rules_of->rules;
}

static inline bool is_limit_in_force(const rodt_limit *row, rodt_date day)
{
    return rodt_date_compare(row->from, day) <= 0 &&
           (!rodt_date_given(row->until) || rodt_date_compare(day, row->until) <= 0);
}

typedef bool (*row_filter)(const rodt_limit *row, const void *context);

/* The rows in force on the day of the context that pass the filter, with their sources. */
void print_limit_tables(const rule_context *rules_of, row_filter wanted, const void *context);

/* What follows a figure by the way it was checked: "*", "+" or nothing. */
const char *evidence_mark(rodt_evidence evidence);

/* What such a mark means, if the bit of its evidence is seen; NULL = it is not. */
const char *evidence_mark_note(rodt_evidence evidence, uint32_t seen);

/* Explains the marks; seen has the bit 1 << evidence of each figure shown. */
void print_evidence_marks(uint32_t seen);

void print_rules_list(void);
int write_rules_list(void); /* statuses as json_end */

#endif
