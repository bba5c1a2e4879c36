/* SPDX-License-Identifier: Apache-2.0 */
/* What is wrong with a value that a program filled by hand: texts are checked by those who read them. */
#include "core/error.h"
#include "core/fault.h"

#include "core/exact.h"
#include "core/text.h"

#include <stdio.h>

const char *rodti_ratio_fault(rodt_ratio value, int64_t most, const char *above)
{
    if (value.num == 0 && value.den == 0)
        return NULL;
    if (value.den == 0)
        return "the denominator is zero";
    if (value.den < 0)
        return "the denominator is below zero";
    if (value.num < 0)
        return "the figure is below zero";
    if (!rodti_exact_is_reduced(value))
        return "the fraction is not in lowest terms";
    return rodti_exact_compare(value, (rodt_ratio){most, 1}) > 0 ? above : NULL;
}

rodt_status rodti_field_error(rodt_error *error, const char *field, const char *sentence)
{
    rodti_text_error(error, RODT_E_ARGUMENT, 0, "%s", sentence);
    if (error != NULL)
        snprintf(error->field, sizeof error->field, "%s", field);
    return RODT_E_ARGUMENT;
}

rodt_status rodti_rules_error(rodt_error *error)
{
    return rodti_error(error, RODT_E_UNKNOWN_RULES, 0, RODT_MESSAGE_ERROR_NO_RULES);
}

bool rodti_is_zero(const uint64_t *reserved, size_t count)
{
    uint64_t any = 0;
    for (size_t i = 0; i < count; i++)
        any |= reserved[i];
    return any == 0;
}
