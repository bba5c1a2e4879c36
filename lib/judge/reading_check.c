/* SPDX-License-Identifier: Apache-2.0 */
/* What a reading must be before it is judged: what rodt_form_parse could make of some texts. */
#include "core/fault.h"
#include "judge/fields.h"
#include "judge/reasons.h"
#include "quantity/fault.h"

/* What rodt_form_parse sets; everything else follows from the reading. */
#define PARSED_REASONS                                                                          \
    (REASON_BIT(RODT_REASON_CHAMBER_UNREADABLE) | REASON_BIT(RODT_REASON_RELEASED_UNREADABLE) | \
     REASON_BIT(RODT_REASON_APPLIED_UNREADABLE) | REASON_BIT(RODT_REASON_OTHER_UNREADABLE) |    \
     REASON_BIT(RODT_REASON_SPREADSHEET_DATE) | REASON_BIT(RODT_REASON_DATE_UNREADABLE) |       \
     REASON_BIT(RODT_REASON_CONFLICTING_MARKS))

static rodt_status refuse(rodt_error *error, rodt_field field, const char *sentence)
{
    return rodti_field_error(error, rodt_field_name(field), sentence);
}

static rodt_status check_lengths(const rodt_reading *reading, rodt_error *error)
{
    const struct {
        rodt_field field;
        rodt_length length;
    } lengths[] = {{RODT_FIELD_RELEASED, reading->released},          {RODT_FIELD_RELEASED, reading->other_released[0]},
                   {RODT_FIELD_RELEASED, reading->other_released[1]}, {RODT_FIELD_APPLIED, reading->applied},
                   {RODT_FIELD_APPLIED, reading->other_applied[0]},   {RODT_FIELD_APPLIED, reading->other_applied[1]},
                   {RODT_FIELD_DIVISION, reading->division}};
    for (size_t i = 0; i < COUNT_OF(lengths); i++) {
        const char *fault = rodti_length_fault(lengths[i].length);
        if (fault != NULL)
            return refuse(error, lengths[i].field, fault);
    }
    if (rodt_length_given(reading->division) && !rodti_is_division(reading->division))
        return refuse(error, RODT_FIELD_DIVISION, "a tape division is above 0 and at most 1/2 in");
    return RODT_OK;
}

static rodt_status check_pressures(const rodt_reading *reading, rodt_error *error)
{
    const char *fault = rodti_pressure_fault(reading->pressure);
    if (fault != NULL)
        return refuse(error, RODT_FIELD_PSI, fault);
    if (reading->pressure_unit >= RODT_PRESSURE_UNIT_END)
        return rodti_field_error(error, "pressure_unit", "the unit of a pressure is psi or kPa");
    fault = rodti_pressure_fault(reading->pressure_after);
    return fault != NULL ? refuse(error, RODT_FIELD_PSI_AFTER, fault) : RODT_OK;
}

static rodt_status check_days(const rodt_reading *reading, rodt_error *error)
{
    const char *fault = rodti_date_fault(reading->day);
    if (fault == NULL)
        fault = rodti_date_fault(reading->other_day);
    return fault != NULL ? refuse(error, RODT_FIELD_DATE, fault) : RODT_OK;
}

static rodt_status check_words(const rodt_reading *reading, rodt_error *error)
{
    if (reading->unit >= RODT_UNIT_END)
        return refuse(error, RODT_FIELD_UNIT, "the unit of a length is in, mm or cm");
    if (reading->engine_running >= RODT_RECORDED_END)
        return refuse(error, RODT_FIELD_ENGINE, "the engine was on, off or not recorded");
    if (reading->spring_brake_applied >= RODT_RECORDED_END)
        return refuse(error, RODT_FIELD_SPRING_BRAKE, "the spring brake was released, on or not recorded");
    if (reading->drum >= RODT_DRUM_END)
        return refuse(error, RODT_FIELD_DRUM, "a drum is cold, warm, hot or not recorded");
    return RODT_OK;
}

rodt_status rodt_reading_check(const rodt_reading *reading, rodt_error *error)
{
    if (reading == NULL)
        return rodti_field_error(error, "", "a reading is needed");
    rodt_status status = rodt_chamber_check(&reading->chamber, error);
    if (status == RODT_OK)
        status = check_lengths(reading, error);
    if (status == RODT_OK)
        status = check_pressures(reading, error);
    if (status == RODT_OK)
        status = check_days(reading, error);
    if (status == RODT_OK)
        status = check_words(reading, error);
    if (status == RODT_OK && (reading->reasons & ~PARSED_REASONS) != 0)
        return rodti_field_error(error, "reasons", "a reading has only reasons that rodt_form_parse gives");
    if (status == RODT_OK && !rodti_is_zero(reading->reserved, COUNT_OF(reading->reserved)))
        return rodti_field_error(error, "reserved", "the reserve of a reading is zero");
    return status;
}
