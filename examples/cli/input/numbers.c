/* SPDX-License-Identifier: Apache-2.0 */
/* Numbers and years as people type them, exactly. */
#include "input/numbers.h"

#include <string.h>

static rodt_status set(rodt_air_reading *reading, const char *path, const char *text, rodt_error *error)
{
    return rodt_record_set_text(rodt_record_find("rodt_air_reading"), reading, path, text, error);
}

bool read_ratio(const char *text, bool clock, rodt_ratio *out)
{
    rodt_air_reading reading = {.check = RODT_AIR_CHECK_NONE};
    if (clock)
        return rodt_seconds_parse(text, out, NULL) == RODT_OK;
    if (set(&reading, "actual_volume", text, NULL) != RODT_OK || !rodt_ratio_given(reading.actual_volume) ||
        reading.actual_volume.num < 0)
        return false;
    *out = reading.actual_volume;
    return true;
}

rodt_status read_built_day(const char *text, rodt_date *out, rodt_error *error)
{
    rodt_air_reading reading = {.check = RODT_AIR_CHECK_NONE};
    if (strlen(text) != 4) /* records have days in one form */
        return rodt_date_parse_iso(text, out, error);
    rodt_status status = set(&reading, "built", text, error);
    if (status == RODT_OK)
        *out = reading.built;
    return status;
}
