/* SPDX-License-Identifier: Apache-2.0 */
/* The rows of limits on a day, and what they come to for one chamber. */
#include "describe/json.h"
#include "quantity/fault.h"

#include <string.h>

typedef struct limits_query {
    const rodt_rules *rules;
    rodt_date day;
    const rodt_finding *finding; /* NULL = every row */
} limits_query;

static bool is_in_force(const rodt_limit *row, rodt_date day)
{
    if (!rodt_date_given(day))
        return !rodt_date_given(row->until);
    return rodt_date_compare(row->from, day) <= 0 &&
           (!rodt_date_given(row->until) || rodt_date_compare(day, row->until) <= 0);
}

static bool is_wanted(const limits_query *query, const rodt_limit *row)
{
    const rodt_finding *finding = query->finding;
    return is_in_force(row, query->day) &&
           (finding == NULL ||
            (row->family == finding->chamber.family && strcmp(row->size, finding->chamber.size) == 0));
}

/* --- One chamber ------------------------------------------------------------------------------------- */

/* What a finding without readings says of its limit. */
static void put_reasons(json_buffer *json, const rodt_finding *finding)
{
    static const uint64_t reasons =
        RODT_REASON_BIT(RODT_REASON_ASSUMED_STANDARD) | RODT_REASON_BIT(RODT_REASON_ASSUMED_CLAMP) |
        RODT_REASON_BIT(RODT_REASON_CONFLICTING_MARKS) | RODT_REASON_BIT(RODT_REASON_NO_PUBLISHED_LIMIT) |
        RODT_REASON_BIT(RODT_REASON_RULES_NOT_IN_FORCE) | RODT_REASON_BIT(RODT_REASON_LIMIT_UNCONFIRMED) |
        RODT_REASON_BIT(RODT_REASON_LIMIT_FROM_RATED) | RODT_REASON_BIT(RODT_REASON_LIMIT_MARKED) |
        RODT_REASON_BIT(RODT_REASON_LIMIT_COMMON_PRACTICE);
    const rodt_finding of_limit = {.reasons = finding->reasons & reasons};
    rodti_json_reasons(json, &of_limit);
}

static void put_chamber(json_buffer *json, const rodt_finding *finding)
{
    rodti_json_chamber(json, "chamber", &finding->chamber);
    rodti_json_length(json, "rated_stroke", finding->chamber.rated_stroke);
    rodti_json_length(json, "limit", finding->limit);
    rodti_json_length(json, "law_limit", finding->law_limit);
    rodti_json_length(json, "long_limit", finding->long_limit);
    put_reasons(json, finding);
    rodti_json_read_in(json, finding->source, finding->evidence);
    rodti_json_source(json, "law_source", finding->law_source);
    rodti_json_evidence(json, "law_evidence", finding->law_source, finding->law_evidence);
}

/* --- The rows ---------------------------------------------------------------------------------------- */

static void put_rows(json_buffer *json, const char *key, const limits_query *query, const rodt_rules *rules)
{
    const rodt_limit *row;
    rodti_json_key(json, key);
    rodti_json_open(json, '[');
    for (size_t i = 0; (row = rodt_rules_limit_at(rules, i)) != NULL; i++)
        if (is_wanted(query, row))
            rodti_json_limit(json, row);
    rodti_json_close(json, ']');
}

static void make_limits(json_buffer *json, const void *context)
{
    const limits_query *query = context;
    const rodt_rules *of_own = rodt_rules_law(query->rules), *law = of_own != NULL ? of_own : query->rules;
    rodti_json_open(json, '{');
    if (query->finding != NULL)
        put_chamber(json, query->finding);
    rodti_json_pair(json, "rules", rodt_rules_id(law));
    rodti_json_pair(json, "title", rodt_rules_title(law));
    rodti_json_date(json, "as_of", query->day);
    put_rows(json, "limits", query, law);
    if (of_own != NULL) {
        rodti_json_pair(json, "own_limits", rodt_rules_id(query->rules));
        put_rows(json, "own_rows", query, query->rules);
    }
    rodti_json_units(json, true, false);
    rodti_json_close(json, '}');
}

rodt_status rodt_limits_json_format(const rodt_rules *rules, rodt_date day, const rodt_finding *finding,
                                    uint32_t options, char *text, size_t size, size_t *needed)
{
    const limits_query query = {rules, day, finding};
    if (rules == NULL || rodti_date_fault(day) != NULL)
        return RODT_E_ARGUMENT;
    return rodti_json_format(make_limits, &query, NULL, options, text, size, needed);
}
