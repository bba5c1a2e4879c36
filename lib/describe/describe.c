/* SPDX-License-Identifier: Apache-2.0 */
/* The lists of records and enumerations, and members by name. */
#include "describe/records.h"

#include "air/words.h"
#include "chamber/words.h"
#include "column/words.h"
#include "describe/words.h"
#include "identify/words.h"
#include "judge/words.h"
#include "message/words.h"
#include "quantity/words.h"
#include "rules/words.h"
#include "vehicle/words.h"

#include <string.h>

/* In the order of the headers, closed by NULL. */
static const rodt_enumeration *const enumerations[] = {
    &rodti_words_status,      &rodti_words_recorded,     &rodti_words_member_kind,
    &rodti_words_rounding,    &rodti_words_unit,         &rodti_words_pressure_unit,
    &rodti_words_date_order,
    &rodti_words_message_code, &rodti_words_argument_kind, &rodti_words_plural_rule,
    &rodti_words_family,      &rodti_words_stroke_class, &rodti_words_evidence,
    &rodti_words_basis,       &rodti_words_port,         &rodti_words_tag,
    &rodti_words_clue,        &rodti_words_observation,  &rodti_words_field,
    &rodti_words_verdict,     &rodti_words_proof,        &rodti_words_drum,
    &rodti_words_reason,      &rodti_words_side,         &rodti_words_adjuster,
    &rodti_words_defect,      &rodti_words_outcome,      &rodti_words_axle_mismatch,
    &rodti_words_count_part,  &rodti_words_advice,       &rodti_words_air_check,
    &rodti_words_vehicle_class, &rodti_words_comparison, &rodti_words_air_measure,
    &rodti_words_air_kind,    &rodti_words_air_span,     &rodti_words_air_result,
    &rodti_words_air_missing, &rodti_words_step,         &rodti_words_step_part,
    &rodti_words_column_flag,  &rodti_words_text_layout,
    &rodti_words_json_option, NULL};

size_t rodt_enumeration_count(void) { return COUNT_OF(enumerations) - 1; }

const rodt_enumeration *rodt_enumeration_at(size_t index)
{
    return index < rodt_enumeration_count() ? enumerations[index] : NULL;
}

const rodt_enumeration *rodt_enumeration_find(const char *name)
{
    for (size_t i = 0; name != NULL && i < rodt_enumeration_count(); i++)
        if (strcmp(enumerations[i]->name, name) == 0)
            return enumerations[i];
    return NULL;
}

size_t rodt_record_count(void) { return rodti_record_total; }

const rodt_record *rodt_record_at(size_t index) { return index < rodti_record_total ? rodti_records[index] : NULL; }

const rodt_record *rodt_record_find(const char *name)
{
    for (size_t i = 0; name != NULL && i < rodti_record_total; i++)
        if (strcmp(rodti_records[i]->name, name) == 0)
            return rodti_records[i];
    return NULL;
}

const char *rodt_record_name(const rodt_record *record) { return record != NULL ? record->name : ""; }

size_t rodt_record_size(const rodt_record *record) { return record != NULL ? record->size : 0; }

bool rodt_record_is_input(const rodt_record *record) { return record != NULL && record->input; }

size_t rodt_member_count(const rodt_record *record) { return record != NULL ? record->count : 0; }

const rodt_member *rodt_member_at(const rodt_record *record, size_t index)
{
    return index < rodt_member_count(record) ? &record->members[index] : NULL;
}

static const rodt_member *find_name(const rodt_record *record, const char *name, size_t size)
{
    for (size_t i = 0; name != NULL && i < rodt_member_count(record); i++)
        if (rodt_heading_equal(name, size, record->members[i].name, strlen(record->members[i].name)))
            return &record->members[i];
    return NULL;
}

/* The member of a reading or a finding that holds a field, where it has another name. */
static const char *const other_names[RODT_FIELD_END] = {
    [RODT_FIELD_PSI] = "pressure",          [RODT_FIELD_PSI_AFTER] = "pressure_after",
    [RODT_FIELD_DATE] = "day",              [RODT_FIELD_ENGINE] = "engine_running",
    [RODT_FIELD_SPRING_BRAKE] = "spring_brake_applied"};

const rodt_member *rodt_member_find_n(const rodt_record *record, const char *name, size_t size)
{
    const bool form = record == &rodti_record_form;
    const rodt_member *found = find_name(record, name, size);
    if (found != NULL || (!form && !rodti_is_of_wheel_end(record)))
        return found;
    RODT_ENUM32(rodt_field) field;
    if (rodt_field_find_n(name, size, &field) != RODT_OK)
        return NULL;
    const char *other = form ? NULL : other_names[field];
    const char *member = other != NULL ? other : rodt_field_name((rodt_field)field);
    return find_name(record, member, strlen(member));
}

const rodt_member *rodt_member_find(const rodt_record *record, const char *name)
{
    return rodt_member_find_n(record, name, name != NULL ? strlen(name) : 0);
}

bool rodti_is_of_wheel_end(const rodt_record *record)
{
    return record == &rodti_record_reading || record == &rodti_record_finding;
}
