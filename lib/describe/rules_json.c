/* SPDX-License-Identifier: Apache-2.0 */
/* A rule set and its rows as reports, for a table on a page. */
#include "describe/json.h"

#include <stdio.h>

/* --- A limit ----------------------------------------------------------------------------------------- */

/* A row is for every chamber of its size and class. */
static void put_name(json_buffer *json, const rodt_limit *row)
{
    rodt_chamber chamber = {.family = row->family};
    snprintf(chamber.size, sizeof chamber.size, "%s", row->size);
    rodti_json_chamber(json, "chamber", &chamber);
}

/* As printed: with one decimal. */
static void put_mm(json_buffer *json, rodt_length printed)
{
    char text[RODT_LENGTH_TEXT_SIZE];
    bool given = rodt_length_given(printed) &&
                 rodt_length_format_decimal(printed, RODT_UNIT_MM, 1, RODT_ROUNDING_HALF_UP, text, sizeof text,
                                            NULL) == RODT_OK;
    rodti_json_pair(json, "printed_mm", given ? text : NULL);
}

void rodti_json_limit(json_buffer *json, const rodt_limit *row)
{
    rodti_json_open(json, '{');
    put_name(json, row);
    rodti_json_pair(json, "family", rodt_family_name((rodt_family)row->family));
    rodti_json_pair(json, "size", row->size);
    rodti_json_pair(json, "class", rodt_stroke_class_name((rodt_stroke_class)row->stroke_class));
    rodti_json_length(json, "rated_stroke", row->rated_stroke);
    rodti_json_length(json, "limit", row->limit);
    put_mm(json, row->printed_mm);
    rodti_json_date(json, "from", row->from);
    rodti_json_date(json, "until", row->until);
    rodti_json_read_in(json, row->source, row->evidence);
    rodti_json_close(json, '}');
}

static void make_limit(json_buffer *json, const void *context) { rodti_json_limit(json, context); }

rodt_status rodt_limit_json_format(const rodt_limit *row, uint32_t options, char *text, size_t size, size_t *needed)
{
    return row == NULL ? RODT_E_ARGUMENT : rodti_json_format(make_limit, row, NULL, options, text, size, needed);
}

/* --- A figure of an air check ------------------------------------------------------------------------ */

static void put_whom(json_buffer *json, const rodt_air_limit *row)
{
    rodti_json_pair(json, "vehicle", rodt_vehicle_class_name((rodt_vehicle_class)row->vehicle));
    if (row->towed_units >= 0)
        rodti_json_number(json, "towed_units", row->towed_units);
    else
        rodti_json_pair(json, "towed_units", NULL);
    rodti_json_boolean(json, "towed_or_more", row->towed_or_more);
    rodti_json_date(json, "built_from", row->built_from);
    rodti_json_date(json, "built_until", row->built_until);
}

static void make_air_limit(json_buffer *json, const void *context)
{
    const rodt_air_limit *row = context;
    rodt_message message;
    rodti_json_open(json, '{');
    rodti_json_pair(json, "check", rodt_air_check_name((rodt_air_check)row->check));
    rodti_json_pair(json, "kind", rodt_air_kind_name((rodt_air_kind)row->kind));
    rodti_json_pair(json, "published", row->published);
    rodti_json_ratio(json, "value", row->value);
    rodti_json_ratio(json, "upper", row->upper);
    rodti_json_pair(json, "measure", rodt_air_measure_name((rodt_air_measure)row->measure));
    rodti_json_sentence(json, "edge", rodt_air_limit_edge_message(row, &message), &message);
    put_whom(json, row);
    rodti_json_pair(json, "setup", row->setup);
    rodti_json_read_in(json, row->source, row->evidence);
    rodti_json_close(json, '}');
}

rodt_status rodt_air_limit_json_format(const rodt_air_limit *row, const rodt_catalogue *catalogue, uint32_t options,
                                       char *text, size_t size, size_t *needed)
{
    if (row == NULL)
        return RODT_E_ARGUMENT;
    return rodti_json_format(make_air_limit, row, catalogue, options, text, size, needed);
}

/* --- A rule set -------------------------------------------------------------------------------------- */

static void make_rules(json_buffer *json, const void *context)
{
    const rodt_rules *rules = context;
    rodti_json_open(json, '{');
    rodti_json_pair(json, "rules", rodt_rules_id(rules));
    rodti_json_pair(json, "title", rodt_rules_title(rules));
    rodti_json_pair(json, "authority", rodt_rules_authority(rules));
    rodti_json_date(json, "from", rodt_rules_from(rules));
    rodti_json_date(json, "until", rodt_rules_until(rules));
    rodti_json_read_in(json, rodt_rules_source(rules), rodt_rules_evidence(rules));
    rodti_json_boolean(json, "at_limit_passes", rodt_rules_at_limit_passes(rules));
    rodti_json_pressure(json, "psi_from", rodt_rules_pressure_from(rules));
    rodti_json_pressure(json, "psi_until", rodt_rules_pressure_until(rules));
    rodti_json_source(json, "pressure_source", rodt_rules_pressure_source(rules));
    rodti_json_close(json, '}');
}

rodt_status rodt_rules_json_format(const rodt_rules *rules, uint32_t options, char *text, size_t size, size_t *needed)
{
    return rules == NULL ? RODT_E_ARGUMENT : rodti_json_format(make_rules, rules, NULL, options, text, size, needed);
}
