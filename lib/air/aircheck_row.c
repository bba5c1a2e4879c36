/* SPDX-License-Identifier: Apache-2.0 */
/* One reading and one row: brought to the same measure, exactly, and compared as the row is worded. */
#include "air/aircheck.h"
#include "core/always.h"

static void set_missing(air_outcome *out, rodt_air_missing missing)
{
    out->result = RODT_AIR_RESULT_UNDETERMINED;
    out->missing = missing;
}

/* psi as they are, or in kPa. The factor has its home in pressure.c. */
static bool to_measure(rodt_air_measure measure, rodt_ratio *psi)
{
    rodt_pressure kpa;
    rodt_status made = rodt_pressure_from_kpa(1, 1, &kpa);
    if (measure != RODT_AIR_MEASURE_KPA && measure != RODT_AIR_MEASURE_KPA_PER_MINUTE)
        return true;
    return ALWAYS(made == RODT_OK) /* it is a constant */ && rodti_exact_divide(*psi, EXACT(kpa), psi);
}

/* --- What was measured. Each leaves out->missing at nothing when *value is set; false = no fit. ------- */

static bool measure_pressure(const rodt_air_limit *row, const rodt_air_reading *reading, air_outcome *out,
                             rodt_ratio *value)
{
    if (!rodt_pressure_given(reading->pressure)) {
        set_missing(out, RODT_AIR_MISSING_VALUE);
        return true;
    }
    *value = EXACT(reading->pressure);
    if (row->below_cut_out) {
        if (!rodt_pressure_given(reading->cut_out))
            set_missing(out, RODT_AIR_MISSING_CUT_OUT);
        else if (rodt_pressure_compare(reading->pressure, reading->cut_out) > 0)
            set_missing(out, RODT_AIR_MISSING_SENSE);
        else if (!rodti_exact_subtract(EXACT(reading->cut_out), *value, value))
            return false;
    }
    return to_measure(row->measure, value);
}

/* Both readings of a test that can only lose pressure. */
static bool has_fall(const rodt_air_reading *reading, air_outcome *out)
{
    if (!rodt_pressure_given(reading->before) || !rodt_pressure_given(reading->after))
        set_missing(out, RODT_AIR_MISSING_VALUE);
    else if (rodt_pressure_compare(reading->after, reading->before) > 0)
        set_missing(out, RODT_AIR_MISSING_SENSE);
    return out->missing == RODT_AIR_MISSING_NOTHING;
}

static bool measure_loss(const rodt_air_limit *row, const rodt_air_reading *reading, air_outcome *out,
                         rodt_ratio *value)
{
    const rodt_ratio minute = {60, 1};
    rodt_ratio seconds = rodt_ratio_given(reading->seconds) ? reading->seconds : minute;
    if (!has_fall(reading, out))
        return true;
    if (seconds.num == 0) {
        set_missing(out, RODT_AIR_MISSING_VALUE);
        return true;
    }
    return rodti_exact_subtract(EXACT(reading->before), EXACT(reading->after), value) &&
           rodti_exact_multiply(*value, minute, value) && rodti_exact_divide(*value, seconds, value) &&
           to_measure(row->measure, value);
}

static bool measure_reserve(const rodt_air_limit *row, const rodt_air_reading *reading, air_outcome *out,
                            rodt_ratio *value)
{
    const rodt_ratio whole = {100, 1};
    if (!has_fall(reading, out))
        return true;
    if (reading->before.num == 0)
        set_missing(out, RODT_AIR_MISSING_VALUE);
    else if (reading->applications != 0 && reading->applications != row->applications)
        set_missing(out, RODT_AIR_MISSING_APPLICATIONS);
    if (out->missing != RODT_AIR_MISSING_NOTHING)
        return true;
    if (!rodti_exact_divide(EXACT(reading->after), EXACT(reading->before), value) ||
        !rodti_exact_multiply(*value, whole, value))
        return false;
    return row->measure == RODT_AIR_MEASURE_PERCENT_LEFT || rodti_exact_subtract(whole, *value, value);
}

/* A source that prints psi and kPa lets both be read off the gauge, though one of them is rounded. */
static bool is_printed(rodt_pressure psi, rodt_pressure kpa, rodt_pressure read)
{
    return rodt_pressure_compare(psi, read) == 0 ||
           (rodt_pressure_given(kpa) && rodt_pressure_compare(kpa, read) == 0);
}

static bool is_span(const rodt_air_limit *row, const rodt_air_reading *reading)
{
    if (row->span != reading->span)
        return false;
    return row->span != RODT_AIR_SPAN_PRESSURES || (is_printed(row->start, row->start_kpa, reading->before) &&
                                                is_printed(row->stop, row->stop_kpa, reading->after));
}

static bool measure_build_up(const rodt_air_limit *row, const rodt_air_reading *reading, air_outcome *out,
                             rodt_ratio *value)
{
    bool both = rodt_pressure_given(reading->before) && rodt_pressure_given(reading->after);
    if (both && reading->span == RODT_AIR_SPAN_PRESSURES && rodt_pressure_compare(reading->before, reading->after) >= 0)
        set_missing(out, RODT_AIR_MISSING_SENSE);
    else if (!is_span(row, reading))
        set_missing(out, RODT_AIR_MISSING_SPAN);
    else if (!rodt_ratio_given(reading->seconds))
        set_missing(out, RODT_AIR_MISSING_VALUE);
    else if (row->by_volume && (!rodt_ratio_given(reading->actual_volume) ||
                                !rodt_ratio_given(reading->required_volume) || reading->required_volume.num == 0))
        set_missing(out, RODT_AIR_MISSING_VOLUME);
    *value = reading->seconds;
    return true;
}

static bool measure(const rodt_air_limit *row, const rodt_air_reading *reading, air_outcome *out, rodt_ratio *value)
{
    switch (row->measure) {
    case RODT_AIR_MEASURE_PSI:
    case RODT_AIR_MEASURE_KPA: return measure_pressure(row, reading, out, value);
    case RODT_AIR_MEASURE_SECONDS: return measure_build_up(row, reading, out, value);
    case RODT_AIR_MEASURE_PSI_PER_MINUTE:
    case RODT_AIR_MEASURE_KPA_PER_MINUTE: return measure_loss(row, reading, out, value);
    case RODT_AIR_MEASURE_PERCENT_LEFT:
    case RODT_AIR_MEASURE_PERCENT_LOST: break;
    case RODT_AIR_MEASURE_YES_NO: return ALWAYS(false); /* an answer is judged without a figure */
    }
    return measure_reserve(row, reading, out, value);
}

/* --- What is allowed --------------------------------------------------------------------------------- */

/* 25 s x actual / required. */
static bool scale_by_volume(const rodt_air_reading *reading, rodt_ratio *allowed)
{
    return rodti_exact_multiply(*allowed, reading->actual_volume, allowed) &&
           rodti_exact_divide(*allowed, reading->required_volume, allowed);
}

/* Half of the cut-out alone, or "... or half of it, whichever is less": without the cut-out only a reading that keeps
 * the other figure is certain. */
static bool lower_to_half(const rodt_air_limit *row, const rodt_air_reading *reading, rodt_ratio measured,
                          rodt_ratio *allowed, air_outcome *out)
{
    rodt_ratio half;
    if (!rodt_pressure_given(reading->cut_out)) {
        if (!rodt_ratio_given(*allowed) || rodti_exact_compare(measured, *allowed) < 0)
            set_missing(out, RODT_AIR_MISSING_CUT_OUT);
        return true;
    }
    if (!rodti_exact_divide(EXACT(reading->cut_out), (rodt_ratio){2, 1}, &half) ||
        !to_measure(row->measure, &half))
        return false;
    if (!rodt_ratio_given(*allowed) || rodti_exact_compare(half, *allowed) < 0)
        *allowed = half;
    return true;
}

/* --- The comparison ---------------------------------------------------------------------------------- */

/* Without an upper end `high` is below it. */
static bool holds(rodt_comparison comparison, int low, int high)
{
    switch (comparison) {
    case RODT_COMPARISON_LESS_THAN: return low < 0;
    case RODT_COMPARISON_NOT_MORE_THAN: return low <= 0;
    case RODT_COMPARISON_MORE_THAN: return low > 0;
    case RODT_COMPARISON_NOT_LESS_THAN:
    case RODT_COMPARISON_BETWEEN: break;
    /* An answer is judged without a figure. */
    case RODT_COMPARISON_MUST_BE_YES: case RODT_COMPARISON_MUST_BE_NO: return ALWAYS(false);
    }
    return low >= 0 && high <= 0;
}

static void set_result(const rodt_air_limit *row, bool good, air_outcome *out)
{
    bool major = row->kind == RODT_AIR_KIND_MAJOR || row->kind == RODT_AIR_KIND_LIMIT_AND_MAJOR;
    out->major = major && !good;
    out->minor = row->kind == RODT_AIR_KIND_LIMIT_AND_MINOR && !good;
    if (row->kind == RODT_AIR_KIND_USUAL || (row->kind == RODT_AIR_KIND_MAJOR && good))
        out->result = RODT_AIR_RESULT_NOTED;
    else if (row->kind == RODT_AIR_KIND_EITHER && !good)
        set_missing(out, RODT_AIR_MISSING_OTHER_WAY);
    else
        out->result = good ? RODT_AIR_RESULT_GOOD : RODT_AIR_RESULT_DEFECTIVE;
}

static void compare(const rodt_air_limit *row, rodt_ratio measured, rodt_ratio allowed, air_outcome *out)
{
    bool between = row->comparison == RODT_COMPARISON_BETWEEN;
    int low = rodti_exact_compare(measured, allowed);
    int high = between ? rodti_exact_compare(measured, row->upper) : -1;
    out->measured = measured;
    out->allowed = allowed;
    if (between && high >= 0)
        out->allowed = row->upper;
    out->at_limit = low == 0 || (between && high == 0);
    set_result(row, holds(row->comparison, low, high), out);
}

static void judge_answer(const rodt_air_limit *row, const rodt_air_reading *reading, air_outcome *out)
{
    rodt_recorded wanted = row->comparison == RODT_COMPARISON_MUST_BE_YES ? RODT_RECORDED_YES : RODT_RECORDED_NO;
    if (reading->answer == RODT_RECORDED_NOT_RECORDED)
        set_missing(out, RODT_AIR_MISSING_VALUE);
    else
        set_result(row, reading->answer == wanted, out);
}

/* A defect by every row, a usual figure too; a figure beside it contradicts it. */
static void judge_never(const rodt_air_limit *row, const rodt_air_reading *reading, air_outcome *out)
{
    if (rodt_pressure_given(reading->pressure) || rodt_ratio_given(reading->seconds)) {
        set_missing(out, RODT_AIR_MISSING_SENSE);
        return;
    }
    set_result(row, false, out);
    out->result = RODT_AIR_RESULT_DEFECTIVE;
    out->missing = RODT_AIR_MISSING_NOTHING;
    out->minor = false; /* slow is minor, never is not */
}

rodt_status rodti_air_judge_row(const rodt_air_limit *row, const rodt_air_reading *reading, const air_vehicle *vehicle,
                          air_outcome *out)
{
    rodt_ratio measured, allowed;
    *out = (air_outcome){.row = row, .towed_units = vehicle->towed_units};
    if (row->measure == RODT_AIR_MEASURE_YES_NO) {
        judge_answer(row, reading, out);
        return RODT_OK;
    }
    if (rodti_air_never_came(reading)) {
        judge_never(row, reading, out);
        return RODT_OK;
    }
    if (!measure(row, reading, out, &measured))
        return RODT_E_RANGE;
    if (out->missing != RODT_AIR_MISSING_NOTHING)
        return RODT_OK;
    if (!rodti_air_allowed(row, vehicle->towed_units, &allowed) ||
        (row->by_volume && !scale_by_volume(reading, &allowed)) ||
        (row->half_cut_out && !lower_to_half(row, reading, measured, &allowed, out)))
        return RODT_E_RANGE;
    if (out->missing == RODT_AIR_MISSING_NOTHING)
        compare(row, measured, allowed, out);
    else
        out->measured = measured;
    return RODT_OK;
}
