/* SPDX-License-Identifier: Apache-2.0 */
/* Tables of limits and of rule sets, for people and for programs. */
#ifndef LIMITS_H
#define LIMITS_H

#include "input/rule_context.h"
#include "ui/json_writer.h"

#include <rodtravel/rodtravel.h>

/* The law of a setting, also where a carrier's limits stand on it. */
static inline const rodt_rules *law_of(const rule_context *setting)
{
    const rodt_rules *law = rodt_rules_law(setting->rules);
    return law != NULL ? law : setting->rules;
}

typedef bool (*row_filter)(const rodt_limit *row, const void *context);

/* The rows in force on the day of the setting that pass the filter, with their sources. */
void print_limit_tables(const rule_context *setting, row_filter wanted, const void *context);

/* The same as members of the object that is open. */
void write_limit_tables(json_writer *json, const rule_context *setting, row_filter wanted, const void *context);

/* What the asterisk behind a limit means. */
void print_unconfirmed(void);

void print_rules_list(void);
void write_rules_list(void);

#endif
