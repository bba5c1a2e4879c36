/* SPDX-License-Identifier: Apache-2.0 */
/* The forms of a word beside a number, {argument?form|form}. */
#include "message/message.h"

#include "core/exact.h"

#include <string.h>

const char *rodti_template_form(const template_part *part, size_t index, size_t *size)
{
    const char *form = part->forms;
    const char *end = form + part->forms_size;
    for (;; index--) {
        const char *bar = memchr(form, '|', (size_t)(end - form));
        *size = (size_t)((bar != NULL ? bar : end) - form);
        if (index == 0)
            return form;
        if (bar == NULL)
            return NULL;
        form = bar + 1;
    }
}

/* --- Plurals ----------------------------------------------------------------------------------------- */

size_t rodti_plural_forms(uint32_t rule)
{
    static const uint8_t forms[RODT_PLURAL_RULE_END] = {[RODT_PLURAL_RULE_ALIKE] = 1,
                                                   [RODT_PLURAL_RULE_ONE_OTHER] = 2,
                                                   [RODT_PLURAL_RULE_BELOW_TWO] = 2,
                                                   [RODT_PLURAL_RULE_ONE_FEW_MANY] = 3};
    return rule < RODT_PLURAL_RULE_END ? forms[rule] : 0;
}

static size_t one_few_many(rodt_ratio number)
{
    int64_t last = number.num % 10, last_two = number.num % 100;
    if (number.den != 1)
        return 1;
    if (last == 1 && last_two != 11)
        return 0;
    return last >= 2 && last <= 4 && (last_two < 12 || last_two > 14) ? 1 : 2;
}

size_t rodti_plural_index(uint32_t rule, rodt_ratio number)
{
    switch (rule) {
    case RODT_PLURAL_RULE_ONE_OTHER: return rodti_exact_compare(number, (rodt_ratio){1, 1}) != 0;
    case RODT_PLURAL_RULE_BELOW_TWO: return rodti_exact_compare(number, (rodt_ratio){2, 1}) >= 0;
    case RODT_PLURAL_RULE_ONE_FEW_MANY: return one_few_many(number);
    default: return 0;
    }
}
