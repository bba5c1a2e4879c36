/* SPDX-License-Identifier: Apache-2.0 */
/* Fuzz target: a carrier's own table of limits. Whatever loads is never laxer than the law. */
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <rodtravel/rodtravel.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void demand(int good)
{
    if (!good)
        abort();
}

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
    demand(answer.basis == RODT_BASIS_NOT_IN_FORCE || rodt_length_given(answer.limit));
    demand(row->source != NULL && row->published[0] != '\0');
}

static void load(const rodt_rules *law, const char *text, size_t size)
{
    rodt_rules *rules = NULL;
    rodt_error error = {0};
    rodt_status status = rodt_rules_load(law, "fuzz", text, size, &rules, &error);
    if (status != RODT_OK) {
        demand(rules == NULL && error.status == status && error.text[0] != '\0');
        demand(memchr(error.text, '\0', sizeof error.text) != NULL);
        return;
    }
    demand(rodt_rules_limit_count(rules) > 0);
    for (size_t i = 0; i < rodt_rules_limit_count(rules); i++)
        check_row(rules, rodt_rules_limit_at(rules, i));
    rodt_rules_unref(rules);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    const char *text = size == 0 ? "" : (const char *)data;
    for (size_t i = 0; i < rodt_rules_count(); i++)
        load(rodt_rules_at(i), text, size);
    return 0;
}
