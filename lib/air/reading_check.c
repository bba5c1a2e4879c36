/* SPDX-License-Identifier: Apache-2.0 */
/* What a reading of an air check must be before it is judged: each member by itself, and those that belong together. */
#include "core/exact.h"
#include "core/fault.h"
#include "core/text.h"
#include "rodtravel/aircheck.h"

static rodt_status check_figures(const rodt_air_reading *reading, rodt_error *error)
{
    static const char gauge[] = "no brake gauge shows more than 300 psi";
    static const char time[] = "no check takes more than a day";
    static const char volume[] = "no vehicle has reservoirs of more than 1000000 cubic inches";
    const struct {
        const char *field;
        rodt_ratio value;
        int64_t most;
        const char *above;
    } figures[] = {{"pressure", EXACT(reading->pressure), RODT_PRESSURE_MAX_PSI, gauge},
                   {"before", EXACT(reading->before), RODT_PRESSURE_MAX_PSI, gauge},
                   {"after", EXACT(reading->after), RODT_PRESSURE_MAX_PSI, gauge},
                   {"cut_out", EXACT(reading->cut_out), RODT_PRESSURE_MAX_PSI, gauge},
                   {"cut_in", EXACT(reading->cut_in), RODT_PRESSURE_MAX_PSI, gauge},
                   {"seconds", reading->seconds, RODT_SECONDS_MAX, time},
                   {"actual_volume", reading->actual_volume, RODT_VOLUME_MAX_CUBIC_INCHES, volume},
                   {"required_volume", reading->required_volume, RODT_VOLUME_MAX_CUBIC_INCHES, volume}};
    for (size_t i = 0; i < COUNT_OF(figures); i++) {
        const char *fault = rodti_ratio_fault(figures[i].value, figures[i].most, figures[i].above);
        if (fault != NULL)
            return rodti_field_error(error, figures[i].field, fault);
    }
    return RODT_OK;
}

static rodt_status check_words(const rodt_air_reading *reading, rodt_error *error)
{
    if (reading->check == RODT_AIR_CHECK_NONE || (unsigned)reading->check >= RODT_AIR_CHECK_END)
        return rodti_field_error(error, "check", "there is no such check");
    if ((unsigned)reading->vehicle >= RODT_VEHICLE_CLASS_END)
        return rodti_field_error(error, "vehicle", "there is no such class of vehicles");
    if ((unsigned)reading->pressure_unit >= RODT_PRESSURE_UNIT_END)
        return rodti_field_error(error, "pressure_unit", "the unit of a pressure is psi or kPa");
    if ((unsigned)reading->span >= RODT_AIR_SPAN_END)
        return rodti_field_error(error, "span", "there is no such timed span");
    if ((unsigned)reading->answer >= RODT_RECORDED_END)
        return rodti_field_error(error, "answer", "an answer is yes, no or not recorded");
    return RODT_OK;
}

static rodt_status check_counts(const rodt_air_reading *reading, rodt_error *error)
{
    bool alone = reading->vehicle == RODT_VEHICLE_CLASS_SINGLE || reading->vehicle == RODT_VEHICLE_CLASS_BUS;
    if (reading->towed_units < 0 || reading->towed_units > RODT_AIR_COUNT_MAX)
        return rodti_field_error(error, "towed_units", "there are 0 to 99 towed units");
    if (reading->towed_units > 0 && alone)
        return rodti_field_error(error, "towed_units", "a single vehicle or a bus has no towed units");
    if (reading->applications < 0 || reading->applications > RODT_AIR_COUNT_MAX)
        return rodti_field_error(error, "applications", "there are 0 to 99 full applications");
    return RODT_OK;
}

/* A year alone is a day of build too. */
static bool is_built(rodt_date date)
{
    rodt_date made;
    if (date.month == 0 && date.day == 0)
        return date.year == 0 || rodt_date_make(date.year, 1, 1, &made) == RODT_OK;
    return rodt_date_make(date.year, date.month, date.day, &made) == RODT_OK;
}

rodt_status rodt_air_reading_check(const rodt_air_reading *reading, rodt_error *error)
{
    if (reading == NULL)
        return rodti_text_error(error, RODT_E_ARGUMENT, 0, "a reading is needed");
    rodt_status status = check_words(reading, error);
    if (status == RODT_OK)
        status = check_counts(reading, error);
    if (status == RODT_OK && !is_built(reading->built))
        status = rodti_field_error(error, "built", "there is no such day, or its year is not 1900 to 2199");
    if (status == RODT_OK)
        status = check_figures(reading, error);
    if (status == RODT_OK && !rodti_is_zero(reading->reserved, COUNT_OF(reading->reserved)))
        status = rodti_field_error(error, "reserved", "the reserve must be zero");
    return status;
}
