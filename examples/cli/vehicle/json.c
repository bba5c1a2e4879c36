/* SPDX-License-Identifier: Apache-2.0 */
/* The judgement of a vehicle as one JSON object. */
#include "vehicle/vehicle.h"
#include "ui/json_writer.h"

static rodt_status format_vehicle(const void *value, char *text, size_t size, size_t *needed)
{
    const vehicle_record *record = value;
    return rodt_vehicle_json_format(&record->vehicle, record->ends, record->count, record->findings, record->advice,
                                    record->errors, NULL, 0, text, size, needed);
}

void vehicle_put_json(json_writer *json, const vehicle_record *record) { json_record(json, format_vehicle, record); }

int vehicle_write_json(const vehicle_record *record) { return json_print(format_vehicle, record); }
