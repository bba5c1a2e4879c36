/* SPDX-License-Identifier: Apache-2.0 */
/* Fuzz target: any bytes as a word, a heading, a name. What is found has a name that is found again; what is refused
 * leaves the result alone; texts with and without a size are read alike. */
#include <stdlib.h>
#include <string.h>

#include <rodtravel/rodtravel.h>

#include "source.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/* Every enumeration with a reader of its own. */
#define EACH_ENUMERATION(X)\
    X(air_check) X(air_result) X(air_missing) X(air_measure) X(air_kind) X(air_span) X(vehicle_class)        \
    X(comparison) X(family) X(stroke_class) X(column_flag) X(text_layout) X(date_order) X(member_kind)       \
    X(json_option) X(field) X(clue) X(observation) X(port) X(tag) X(message_code) X(argument_kind)           \
    X(plural_rule) X(rounding) X(evidence) X(basis) X(status) X(recorded) X(step) X(step_part) X(verdict)    \
    X(proof) X(reason) X(drum) X(unit) X(pressure_unit) X(side) X(adjuster) X(defect) X(outcome)             \
    X(count_part) X(axle_mismatch) X(advice)

#define UNTOUCHED 12345u

/* A name is found again, whatever number it is of. */
#define CHECK(of)                                                                                            \
    static void check_##of(const char *text)                                                                 \
    {                                                                                                        \
        RODT_ENUM32(rodt_##of) found = (RODT_ENUM32(rodt_##of))UNTOUCHED, again;                             \
        const rodt_enumeration *described = rodt_enumeration_find("rodt_" #of);                              \
        rodt_status status = rodt_##of##_find(text, &found);                                                 \
        demand(status == RODT_OK || rodt_enumerator_find(described, text) == NULL);                          \
        demand(status == RODT_OK || ((uint32_t)found == UNTOUCHED && status == RODT_E_SYNTAX));              \
        const char *name = rodt_##of##_name((rodt_##of)found);                                               \
        demand(status != RODT_OK || name[0] != '\0');                                                        \
        demand(name[0] == '\0' || (rodt_##of##_find(name, &again) == RODT_OK && again == found));            \
    }
EACH_ENUMERATION(CHECK)

static void check_words(const char *text)
{
#define CALL(of) check_##of(text);
    EACH_ENUMERATION(CALL)
}

/* --- The description ---------------------------------------------------------------------------------- */

static void check_enumeration(const rodt_enumeration *of, const char *text, size_t size)
{
    const rodt_enumerator *found = rodt_enumerator_find(of, text);
    demand(found == rodt_enumerator_find_n(of, text, size));
    demand(rodt_enumeration_find(rodt_enumeration_name(of)) == of);
    if (found == NULL)
        return;
    demand(rodt_enumeration_is_bits(of) || rodt_enumerator_of(of, found->number) == found);
    demand(found >= rodt_enumerator_at(of, 0) && found <= rodt_enumerator_at(of, rodt_enumerator_count(of) - 1));
}

static void check_description(const char *text, size_t size)
{
    for (size_t i = 0; i < rodt_enumeration_count(); i++)
        check_enumeration(rodt_enumeration_at(i), text, size);
    for (size_t i = 0; i < rodt_record_count(); i++) {
        const rodt_record *record = rodt_record_at(i);
        const rodt_member *member = rodt_member_find(record, text);
        demand(member == rodt_member_find_n(record, text, size));
        demand(rodt_record_find(rodt_record_name(record)) == record);
        demand(!rodt_record_is_input(record) || rodt_record_size(record) > 0);
    }
    const rodt_record *named = rodt_record_find(text);
    demand(named == NULL || strcmp(rodt_record_name(named), text) == 0);
}

/* --- Texts of a form ---------------------------------------------------------------------------------- */

static void check_fields(const char *text, size_t size)
{
    RODT_ENUM32(rodt_field) field = (RODT_ENUM32(rodt_field))UNTOUCHED, again = (RODT_ENUM32(rodt_field))UNTOUCHED;
    rodt_form form = {.chamber = NULL};
    demand(rodt_field_find(text, &field) == rodt_field_find_n(text, size, &again) && field == again);
    for (int i = 0; i < RODT_READING_FIELDS; i++) {
        (void)rodt_field_accepts((rodt_field)i, text, size);
        rodt_form_set(&form, (rodt_field)i, text);
        demand(rodt_form_get(&form, (rodt_field)i) == text);
    }
    (void)rodt_field_meant(text, size);
    demand(rodt_heading_equal(text, size, text, size));
}

static void check_forms(const char *text, size_t size)
{
    RODT_ENUM32(rodt_unit) unit = (RODT_ENUM32(rodt_unit))UNTOUCHED, same_unit = unit;
    RODT_ENUM32(rodt_adjuster) adjuster = (RODT_ENUM32(rodt_adjuster))UNTOUCHED, same_adjuster = adjuster;
    rodt_error error;
    rodt_status status = rodt_unit_parse_n(text, size, &unit, &error);
    demand(status == rodt_unit_parse(text, &same_unit, NULL) && unit == same_unit);
    demand(status == RODT_OK || ((uint32_t)unit == UNTOUCHED && error.status == status && error.text[0] != '\0'));
    status = rodt_adjuster_parse_n(text, size, &adjuster, &error);
    demand(status == rodt_adjuster_parse(text, &same_adjuster, NULL) && adjuster == same_adjuster);
    demand(status == RODT_OK || ((uint32_t)adjuster == UNTOUCHED && error.status == status && error.text[0] != '\0'));
    demand(!rodt_unit_is_vehicle(text, size) || size > 0);
    demand(rodt_heading_names_unit(text, size, RODT_UNIT_IN) + rodt_heading_names_unit(text, size, RODT_UNIT_MM) +
           rodt_heading_names_unit(text, size, RODT_UNIT_CM) <= 1);
    (void)rodt_air_says_never(text, size);
}

/* --- Texts with and without a size -------------------------------------------------------------------- */

#define TWINS(type, alone, with_size)                                                                        \
    do {                                                                                                     \
        type a, b;                                                                                           \
        memset(&a, 0x5A, sizeof a);                                                                          \
        memset(&b, 0x5A, sizeof b);                                                                          \
        rodt_status status = alone;                                                                          \
        demand(with_size == status && memcmp(&a, &b, sizeof a) == 0);                                        \
    } while (0)

static void check_twins(const char *text, size_t size)
{
    TWINS(rodt_length, rodt_length_parse(text, &a, NULL), rodt_length_parse_n(text, size, NULL, &b, NULL, NULL));
    TWINS(rodt_pressure, rodt_pressure_parse(text, &a, NULL), rodt_pressure_parse_n(text, size, NULL, &b, NULL, NULL));
    TWINS(rodt_ratio, rodt_seconds_parse(text, &a, NULL), rodt_seconds_parse_n(text, size, NULL, &b, NULL));
    TWINS(rodt_date, rodt_date_parse(text, &a, NULL), rodt_date_parse_n(text, size, RODT_DATE_ORDER_UNKNOWN, &b, NULL));
    TWINS(rodt_position, rodt_position_parse(text, &a, NULL), rodt_position_parse_n(text, size, &b, NULL));
    TWINS(rodt_chamber, rodt_chamber_parse(text, &a, NULL), rodt_chamber_parse_n(text, size, &b, NULL));
    TWINS(RODT_ENUM32(rodt_stroke_class), rodt_stroke_class_parse(text, &a, NULL), rodt_stroke_class_parse_n(text, size, &b, NULL));
}

/* --- Numbers and rows --------------------------------------------------------------------------------- */

/* Every number has a text, if only an empty one. */
static void check_number(uint32_t number)
{
    RODT_ENUM32(rodt_evidence) evidence = RODT_EVIDENCE_NONE;
    demand(rodt_air_check_title((rodt_air_check)number) != NULL && rodt_status_text((rodt_status)number)[0] != '\0');
    demand(rodt_observation_text((rodt_observation)number) != NULL && rodt_evidence_text((rodt_evidence)number) != NULL);
    demand(rodt_count_part_text((rodt_count_part)number) != NULL && rodt_advice_text((rodt_advice)number) != NULL);
    (void)rodt_count_part_source((rodt_count_part)number, &evidence);
    (void)rodt_axle_mismatch_source((rodt_axle_mismatch)number, &evidence);
    (void)rodt_advice_source((rodt_advice)number, &evidence);
    demand(evidence < RODT_EVIDENCE_END);
    rodt_step step = rodt_step_of_check((rodt_air_check)number);
    demand(step == RODT_STEP_NONE || number < RODT_AIR_CHECK_END);
    (void)rodt_step_check((rodt_step)number);
    demand((number < rodt_volume_row_count()) == (rodt_volume_row_at(number) != NULL));
    demand((number < rodt_chamber_row_count()) == (rodt_chamber_row_at(number) != NULL));
}

static void check_rules(const rodt_rules *rules, rodt_vehicle_class vehicle)
{
    rodt_date from = rodt_rules_from(rules), until = rodt_rules_until(rules);
    demand(rodt_rules_title(rules)[0] != '\0' && rodt_rules_authority(rules)[0] != '\0' && rodt_rules_source(rules) != NULL);
    demand(rodt_rules_evidence(rules) < RODT_EVIDENCE_END && rodt_rules_pressure_evidence(rules) < RODT_EVIDENCE_END);
    demand(!rodt_date_given(until) || rodt_date_compare(from, until) <= 0);
    demand(rodt_rules_law(rules) == NULL && rodt_rules_air_law(rules) == NULL);
    demand(rodt_pressure_given(rodt_rules_pressure_from(rules)) == (rodt_rules_pressure_source(rules) != NULL));
    demand(rodt_pressure_compare(rodt_rules_pressure_from(rules), rodt_rules_pressure_until(rules)) <= 0);
    (void)rodt_rules_at_limit_passes(rules), (void)rodt_rules_major_source(rules), (void)rodt_rules_rated_share(rules);
    for (size_t i = 0; i < rodt_step_count(rules, vehicle); i++)
        demand(rodt_step_at(rules, vehicle, i) != RODT_STEP_NONE);
    demand(rodt_step_at(rules, vehicle, rodt_step_count(rules, vehicle)) == RODT_STEP_NONE);
}

static void check_names(const char *text)
{
    const rodt_rules *rules = rodt_rules_find(text);
    const rodt_catalogue *catalogue = rodt_catalogue_find(text);
    demand(rules == NULL || rodt_rules_find(rodt_rules_id(rules)) == rules);
    demand(rodt_catalogue_text(catalogue, text) != NULL && rodt_catalogue_text(NULL, text) == text);
    for (size_t i = 0; i < rodt_catalogue_count(); i++)
        demand(rodt_catalogue_text(rodt_catalogue_at(i), text)[0] != '\0' || text[0] == '\0');
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    char *text = malloc(size + 1);
    demand(text != NULL);
    if (size > 0)
        memcpy(text, data, size);
    text[size] = '\0';
    size = strlen(text);
    check_words(text);
    check_description(text, size);
    check_fields(text, size);
    check_forms(text, size);
    check_twins(text, size);
    check_names(text);
    uint32_t number = (uint32_t)(size > 1 ? size * 256u : 0) + (unsigned char)text[0];
    check_number(number % 300);
    check_rules(rodt_rules_at(number % rodt_rules_count()), (rodt_vehicle_class)(number % 5));
    free(text);
    return 0;
}
