/* SPDX-License-Identifier: Apache-2.0 */
/* The judged record as one JSON object: the head as written, then the judgements. */
#include "report/report.h"
#include "ui/json_writer.h"

#include <stdio.h>

static void put_head(json_writer *json, const inspection *of)
{
    for (int key = 0; key < HEAD_KEYS; key++) {
        const record_value *value = &of->record.head[key];
        const char *name = record_key_name(&record_head_keys[key]);
        if (value->number > 0)
            json_number(json, name, (uint64_t)value->number);
        else
            json_pair(json, name, value->text);
    }
    json_key(json, "units");
    json_open(json, '[');
    for (size_t i = 0; i < of->record.unit_count; i++) {
        const record_value *unit = of->record.units[i];
        json_open(json, '{');
        json_pair(json, "kind", unit[UNIT_KIND].text);
        json_pair(json, "plate", unit[UNIT_PLATE].text);
        if (unit[UNIT_AXLES].number > 0)
            json_number(json, "axles", (uint64_t)unit[UNIT_AXLES].number);
        json_close(json, '}');
    }
    json_close(json, ']');
}

int report_write_json(const inspection *of)
{
    json_writer json = {.to = stdout, .first = true};
    json_open(&json, '{');
    json_key(&json, "head");
    json_open(&json, '{');
    put_head(&json, of);
    json_close(&json, '}');
    json_key(&json, "stroke");
    vehicle_put_json(&json, &of->vehicle);
    json_key(&json, "air_checks");
    json_open(&json, '[');
    for (size_t i = 0; i < of->record.check_count; i++)
        put_air_finding(&json, &of->air[i]);
    json_close(&json, ']');
    json_close(&json, '}');
    return json_end(&json);
}
