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
    demand(rodt_enumerator_of(of, found->number) == found || rodt_enumeration_is_bits(of));
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
    (void)rodt_air_says_never(text, size);
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
    check_names(text);
    free(text);
    return 0;
}
