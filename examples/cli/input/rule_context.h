/* SPDX-License-Identifier: Apache-2.0 */
/* Rule set, carrier limits and day: what every command judges by. */
#ifndef RULE_CONTEXT_H
#define RULE_CONTEXT_H

#include <rodtravel/rodtravel.h>

typedef struct rule_context {
    const rodt_rules *rules;
    rodt_rules *own; /* a carrier's limits, or NULL */
    rodt_date day;
    bool today; /* no day was named */
} rule_context;

/* Texts may be NULL: the default rule set, no own limits, today. Returns STATUS_CONTINUE or an exit
 * status. */
int rule_context_open(const char *rules, const char *limits_file, const char *day, rule_context *out);
void rule_context_close(rule_context *context);

/* Says on stderr that so many rows without a date were judged by the law of today, if --as-of did not name a day. */
void rule_context_note_undated(const rule_context *context, uint64_t rows);

#endif
