/* SPDX-License-Identifier: Apache-2.0 */
/* Fuzz target: a carrier's own tables of limits and of air checks. Whatever loads is never laxer than the law. */
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <rodtravel/rodtravel.h>

#include "source.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void check_row(const rodt_rules *rules, const rodt_limit *row)
{
    bool any = row->stroke_class == RODT_STROKE_CLASS_ANY;
    rodt_chamber chamber = {.family = row->family,
                            .stroke_class = any ? RODT_STROKE_CLASS_UNKNOWN : row->stroke_class,
                            .rated_stroke = row->rated_stroke};
    rodt_limit_answer answer;
    demand(strlen(row->size) < sizeof chamber.size);
    memcpy(chamber.size, row->size, strlen(row->size));
    demand(rodt_rules_find_limit(rules, &chamber, row->until, &answer, NULL) == RODT_OK);
    if (rodt_length_given(answer.law_limit))
        demand(rodt_length_compare(row->limit, answer.law_limit) <= 0 || answer.own_row != row);
    demand(answer.law_basis == RODT_BASIS_NOT_IN_FORCE || rodt_length_given(answer.limit));
    demand(row->source != NULL && row->published[0] != '\0');
}

/* A reading at the row's own figure: the law may find it defective, the carrier may not find it good then. */
static void check_air_row(const rodt_rules *rules, const rodt_air_limit *row)
{
    char edge[RODT_SENTENCE_SIZE];
    rodt_air_finding finding;
    rodt_air_reading reading = {.check = row->check,
                                .vehicle = row->vehicle,
                                .towed_units = row->towed_units > 0 ? row->towed_units : 0,
                                .span = row->span,
                                .before = {100, 1},
                                .after = {97, 1},
                                .pressure = {60, 1},
                                .seconds = {45, 1},
                                .built = row->built_from};
    demand(row->source != NULL && row->published[0] != '\0' && row->kind == RODT_AIR_KIND_LIMIT);
    demand(rodt_air_limit_edge_format(row, edge, sizeof edge, NULL) == RODT_OK);
    rodt_status status = rodt_air_reading_judge(&reading, rules, &finding, NULL);
    demand(status == RODT_OK || status == RODT_E_RANGE);
    if (status == RODT_OK && finding.law_result == RODT_AIR_RESULT_DEFECTIVE)
        demand(finding.result == RODT_AIR_RESULT_DEFECTIVE);
    if (status == RODT_OK && finding.law_result == RODT_AIR_RESULT_UNDETERMINED && finding.law_row != NULL)
        demand(finding.result != RODT_AIR_RESULT_GOOD);
}

static void load(const rodt_rules *law, const char *text, size_t size)
{
    rodt_rules *rules = NULL;
    rodt_error error = {0};
    rodt_status status = rodt_rules_load_with_air(law, law, "fuzz", text, size, &rules, &error);
    if (status != RODT_OK) {
        demand(rules == NULL && error.status == status && error.text[0] != '\0');
        demand(memchr(error.text, '\0', sizeof error.text) != NULL);
        return;
    }
    demand(rodt_rules_limit_count(rules) + rodt_rules_air_count(rules) > 0);
    for (size_t i = 0; i < rodt_rules_limit_count(rules); i++)
        check_row(rules, rodt_rules_limit_at(rules, i));
    for (size_t i = 0; i < rodt_rules_air_count(rules); i++)
        check_air_row(rules, rodt_rules_air_at(rules, i));
    rodt_rules_unref(rules);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    const char *text = size == 0 ? "" : (const char *)data;
    load(rodt_rules_at(size % rodt_rules_count()), text, size);
    load(rodt_rules_find(RODT_DEFAULT_RULES), text, size);
    return 0;
}
