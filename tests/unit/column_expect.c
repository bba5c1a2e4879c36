/* SPDX-License-Identifier: Apache-2.0 */
/* One row by rodt_reading_judge: its cells become exact fractions, a pressure and a calendar day, one by one. */
#include "column_expect.h"

#include "column/plan.h"

static bool bit(rodt_column_bits bits, size_t row)
{
    size_t at = bits.from + row;
    return bits.bits == NULL || (bits.bits[at / 8] >> (at % 8) & 1) != 0;
}

/* Days are counted one by one from 1900, not by a formula. */
static rodt_date date_of(int32_t number)
{
    static rodt_date all[84005 + 25567 + 1];
    if (all[0].year == 0) {
        size_t used = 0;
        for (int year = 1900; year < 2200; year++)
            for (int i = 0; i < 12 * 31; i++)
                used += rodt_date_make(year, i / 31 + 1, i % 31 + 1, &all[used]) == RODT_OK;
    }
    return all[number + 25567];
}

static bool set_length(int64_t value, bool valid, rodt_reason unreadable, rodt_length *out, uint64_t *noted)
{
    *out = (rodt_length){0, 0};
    if (valid && value >= 0 && value <= (int64_t)RODT_LENGTH_MAX_INCHES * RODT_COLUMN_PER_INCH)
        return rodt_length_from_inches(value, RODT_COLUMN_PER_INCH, out) == RODT_OK;
    if (valid)
        *noted |= REASON_BIT(unreadable);
    return true;
}

static bool set_pressure(int32_t value, rodt_reading *reading, uint64_t *noted)
{
    reading->pressure = (rodt_pressure){0, 0};
    if (value >= 0 && value <= RODT_PRESSURE_MAX_PSI * RODT_COLUMN_PER_PSI)
        return rodt_pressure_from_psi(value, RODT_COLUMN_PER_PSI, &reading->pressure) == RODT_OK;
    *noted |= REASON_BIT(RODT_REASON_OTHER_UNREADABLE);
    return true;
}

static void set_day(int32_t day, rodt_reading *reading, uint64_t *noted)
{
    bool is_day = day >= -25567 && day <= 84005;
    reading->day = is_day ? date_of(day) : (rodt_date){0};
    reading->other_day = (rodt_date){0};
    *noted |= is_day ? 0 : REASON_BIT(RODT_REASON_DATE_UNREADABLE);
}

static void set_chamber(const rodt_column_plan *plan, const rodt_chamber *chambers, uint8_t code,
                        rodt_reading *reading, uint64_t *noted)
{
    if (code == RODT_COLUMN_CHAMBER_UNREADABLE || code >= plan->codes)
        *noted |= REASON_BIT(RODT_REASON_CHAMBER_UNREADABLE);
    else if (code != RODT_COLUMN_CHAMBER_MISSING)
        reading->chamber = chambers[code];
}

static int32_t limit_of(const rodt_finding *finding)
{
    rodt_length limit = finding->limit;
    if (!rodt_length_given(limit) || RODT_COLUMN_PER_INCH % limit.den != 0)
        return RODT_COLUMN_NO_LIMIT;
    return (int32_t)(limit.num * (RODT_COLUMN_PER_INCH / limit.den));
}

static bool judge(const rodt_column_plan *plan, const rodt_reading *reading, uint64_t noted, int64_t moved,
                  column_expected *out)
{
    const uint64_t missing = REASON_BIT(RODT_REASON_RELEASED_MISSING) | REASON_BIT(RODT_REASON_APPLIED_MISSING) |
                             REASON_BIT(RODT_REASON_CHAMBER_MISSING);
    rodt_finding finding;
    rodt_reading with_reasons = *reading;
    with_reasons.reasons = noted;
    rodt_status status = rodt_reading_judge(&with_reasons, plan->rules, &finding, NULL);
    if (status != RODT_OK)
        return false;
    bool has_stroke = rodt_length_given(finding.applied_stroke);
    out->stroke = has_stroke ? (int32_t)moved : RODT_COLUMN_NO_STROKE;
    out->verdict = (uint8_t)finding.verdict;
    out->reasons = finding.reasons;
    out->limit = limit_of(&finding);
    out->flags = (uint8_t)(((finding.reasons & missing) != 0) + 2 * (noted != 0));
    return true;
}

bool column_expect(const rodt_column_plan *plan, const rodt_chamber *chambers, const rodt_reading *common,
                   const rodt_column_in *in, size_t i, column_expected *out)
{
    rodt_reading reading = *common;
    uint64_t noted = 0;
    bool row = bit(in->row_valid, i);
    int64_t released = in->released != NULL ? in->released[i] : in->released64[i];
    int64_t applied = in->applied != NULL ? in->applied[i] : in->applied64[i];
    bool has_released = row && bit(in->released_valid, i);
    bool has_applied = row && bit(in->applied_valid, i);
    if (!set_length(released, has_released, RODT_REASON_RELEASED_UNREADABLE, &reading.released, &noted) ||
        !set_length(applied, has_applied, RODT_REASON_APPLIED_UNREADABLE, &reading.applied, &noted))
        return false;
    if (in->psi != NULL && row && bit(in->psi_valid, i) && !set_pressure(in->psi[i], &reading, &noted))
        return false;
    if (in->date != NULL && row && bit(in->date_valid, i))
        set_day(in->date[i], &reading, &noted);
    if (row && bit(in->chamber_valid, i))
        set_chamber(plan, chambers, in->chamber[i], &reading, &noted);
    bool both = rodt_length_given(reading.released) && rodt_length_given(reading.applied);
    return judge(plan, &reading, noted, both ? applied - released : 0, out);
}
