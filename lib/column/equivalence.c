/* SPDX-License-Identifier: Apache-2.0 */
/* Classes of days, pressures and lengths: within a class no result can differ. */
#include "column/equivalence.h"

/* Days on which something begins, up to `day`, and days after which something ended, before it. The sum grows with
 * every such day and with no other, so two days have the same sum only if nothing changed between them. */
static uint32_t count_changes(rodt_date from, rodt_date until, rodt_date day)
{
    uint32_t begun = rodt_date_given(from) && rodt_date_compare(from, day) <= 0;
    uint32_t ended = rodt_date_given(until) && rodt_date_compare(until, day) < 0;
    return begun + ended;
}

static uint32_t count_of(const rodt_rules *rules, rodt_date day)
{
    uint32_t count = count_changes(rodt_rules_from(rules), rodt_rules_until(rules), day);
    for (size_t i = 0; i < rodt_rules_limit_count(rules); i++) {
        const rodt_limit *row = rodt_rules_limit_at(rules, i);
        count += count_changes(row->from, row->until, day);
    }
    return count;
}

uint32_t rodti_equivalence_day(const rodt_rules *rules, rodt_date day)
{
    if (!rodt_date_given(day))
        return 0;
    const rodt_rules *law = rodt_rules_law(rules);
    return 1 + count_of(rules, day) + (law != NULL ? count_of(law, day) : 0);
}

pressure_class rodti_equivalence_pressure(const rodt_rules *rules, rodt_pressure pressure)
{
    rodt_pressure from = rodt_rules_pressure_from(rules);
    rodt_pressure until = rodt_rules_pressure_until(rules);
    if (!rodt_pressure_given(pressure))
        return PRESSURE_NOT_GIVEN;
    if (pressure.num == 0)
        return PRESSURE_NO_AIR;
    if (!rodt_pressure_given(from))
        return PRESSURE_INSIDE;
    if (rodt_pressure_compare(pressure, from) < 0)
        return PRESSURE_BELOW;
    return rodt_pressure_compare(pressure, until) > 0 ? PRESSURE_ABOVE : PRESSURE_INSIDE;
}

bool rodti_equivalence_length(rodt_length length, int32_t *units)
{
    if (length.den <= 0 || length.num < 0 || RODT_COLUMN_PER_INCH % length.den != 0)
        return false;
    int64_t each = RODT_COLUMN_PER_INCH / length.den;
    if (length.num > INT32_MAX / each)
        return false;
    *units = (int32_t)(length.num * each);
    return true;
}
