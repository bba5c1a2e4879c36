/* SPDX-License-Identifier: Apache-2.0 */
/* Rule set, carrier limits and day: what every command judges by. */
#ifndef RULE_CONTEXT_H
#define RULE_CONTEXT_H

#include <rodtravel/rodtravel.h>

typedef struct rule_context {
    const rodt_rules *rules;
    const rodt_rules *air_rules; /* for the air checks */
    rodt_rules *own; /* a carrier's limits, which are both then; or NULL */
    rodt_date day;
    bool today; /* no day was named */
} rule_context;

/* The rule set of an id, or of a word of its title that no other one has: "ontario". NULL = there is none. */
const rodt_rules *rules_by_name(const char *name);

/* Texts may be NULL: the default rule set, the same for the air checks, no own limits, today. Returns STATUS_CONTINUE
 * or an exit status. */
int rule_context_open(const char *rules, const char *air_rules, const char *limits_file, const char *day,
                      rule_context *out);
void rule_context_close(rule_context *context);

/* The rows of air checks that judge: those of the law, then a carrier's own. NULL beyond them. */
const rodt_air_limit *air_row_at(const rodt_rules *rules, size_t index);

/* Says on stderr that so many rows without a date were judged by the law of today, if --as-of did not name a day. */
void rule_context_note_undated(const rule_context *context, uint64_t rows);

/* Whether a rule set judges strokes at all; some have air checks only. */
static inline bool limits_strokes(const rodt_rules *rules)
{
    return rodt_rules_limit_count(rules) > 0 || rodt_ratio_given(rodt_rules_rated_share(rules));
}

#endif
