/* SPDX-License-Identifier: Apache-2.0 */
/* The judgement of a record. A record is signed, so unlike a row of a long file a text that cannot be read is refused
 * with its place. */
#include "record/record.h"
#include "input/air_words.h"
#include "input/numbers.h"
#include "input/rule_context.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/message.h"
#include "ui/options.h"

#include <stdio.h>
#include <string.h>

static void check_place(const inspection_record *record, size_t check, char where[RECORD_WHERE_SIZE])
{
    snprintf(where, RECORD_WHERE_SIZE, say("air_checks, entry %zu (%.24s)"), check + 1,
             record->checks[check][CHECK_NAME].text);
}

void record_end_place(const inspection_record *record, size_t end, char where[RECORD_WHERE_SIZE])
{
    snprintf(where, RECORD_WHERE_SIZE, say("wheel_ends, entry %zu (%.20s)"), end + 1,
             record->ends[end][END_POSITION].text);
}

/* `where` is "" for an entry of the record itself. */
static int print_entry_error(const inspection_record *record, const char *where, const char *key, const char *text,
                             const rodt_error *error)
{
    print_error("%s: %s%s%s", record->file, where, where[0] == '\0' ? "" : ", ", key);
    return print_text_error(say("the text"), text, error);
}

/* Gives *out the meaning of a word, or leaves it if none is written. */
static int read_word(const inspection_record *record, const char *where, const char *key, const char *text,
                     const choice *words, size_t count, int *out)
{
    char list[200] = "";
    for (size_t i = 0; i < count; i++) {
        if (text == NULL || strcmp(text, words[i].word) == 0) {
            *out = text == NULL ? *out : words[i].meaning;
            return STATUS_CONTINUE;
        }
        size_t used = strlen(list);
        snprintf(list + used, sizeof list - used, "%s%s", i == 0 ? "" : i + 1 == count ? say(" or ") : ", ",
                 words[i].word);
    }
    return print_error("%s: %s%s%s is %s, not \"%s\"", record->file, where, where[0] == '\0' ? "" : ", ", key, list,
                       text);
}

/* --- The head ----------------------------------------------------------------------------------------- */

static int read_rules(const inspection_record *record, head_key key, const rodt_rules **out)
{
    const char *id = record->head[key].text;
    const rodt_rules *found = id == NULL ? *out : rodt_rules_find(id);
    if (found == NULL)
        return print_error("%s: %s: there is no rule set \"%s\"; see: rodtravel limits --list", record->file,
                           record_key_name(&record_head_keys[key]), id);
    *out = found;
    return STATUS_CONTINUE;
}

int record_open_rules(const inspection_record *record, const char *limits_file, rule_context *out)
{
    const char *day = record->head[HEAD_DATE].text;
    const rodt_rules *rules = NULL;
    rodt_date date;
    rodt_error error;
    *out = (rule_context){.rules = NULL};
    if (rodt_date_parse_iso(day, &date, &error) != RODT_OK)
        return print_entry_error(record, "", "date", day, &error);
    int status = read_rules(record, HEAD_RULES, &rules);
    if (status == STATUS_CONTINUE)
        status = read_rules(record, HEAD_AIR_RULES, &rules);
    if (status != STATUS_CONTINUE)
        return status;
    return rule_context_open(record->head[HEAD_RULES].text, record->head[HEAD_AIR_RULES].text, limits_file, day, out);
}

/* --- Wheel ends --------------------------------------------------------------------------------------- */

static int read_position(const inspection *of, size_t i, const char *where, rodt_position *out)
{
    const char *text = of->record.ends[i][END_POSITION].text;
    rodt_error error;
    if (rodt_position_parse_n(text, strlen(text), out, &error) != RODT_OK)
        return print_entry_error(&of->record, where, "position", text, &error);
    for (size_t k = 0; k < i; k++) {
        const rodt_position *other = &of->vehicle.ends[k].position;
        if (other->axle == out->axle && other->side == out->side)
            return print_error("%s: %s: the position is there twice, first in entry %zu", of->record.file, where,
                               k + 1);
    }
    return STATUS_CONTINUE;
}

static int read_arm(const inspection *of, size_t i, const char *where, rodt_unit unit, rodt_length *out)
{
    const char *text = of->record.ends[i][END_ARM].text;
    const rodt_style style = {.unit = unit};
    rodt_error error;
    if (text == NULL || rodt_length_parse_strict_n(text, strlen(text), &style, out, NULL, &error) == RODT_OK)
        return STATUS_CONTINUE;
    return print_entry_error(&of->record, where, "arm_length", text, &error);
}

static void fill_text(const inspection_record *record, size_t end, rodt_form *out)
{
    for (size_t key = 0; key < END_KEYS; key++)
        rodt_form_set(out, record_end_keys[key].field, record->ends[end][key].text);
}

static int judge_end(inspection *of, size_t i, const char *where, rodt_unit unit)
{
    rodt_form text = {.style = {.unit = unit}, .default_day = of->context->day};
    rodt_reading reading;
    rodt_error error;
    char why[SAID_SIZE];
    fill_text(&of->record, i, &text);
    rodt_status status = rodt_form_parse(&text, &reading, &error);
    if (status == RODT_OK && error.status != RODT_OK && error.status != RODT_E_EMPTY)
        return print_entry_error(&of->record, where, error.field, rodt_form_get(&text, field_of_error(&error)), &error);
    if (status == RODT_OK)
        status = rodt_reading_judge(&reading, of->context->rules, &of->vehicle.findings[i], NULL);
    return status == RODT_OK ? STATUS_CONTINUE
                             : print_error("%s: %s: %s", of->record.file, where, say_status(status, why));
}

static int judge_wheel_end(inspection *of, size_t i, rodt_unit unit)
{
    rodt_wheel_end *end = &of->vehicle.ends[i];
    char where[RECORD_WHERE_SIZE];
    const char *adjuster = of->record.ends[i][END_ADJUSTER].text;
    record_end_place(&of->record, i, where);
    int status = read_position(of, i, where, &end->position);
    if (status == STATUS_CONTINUE)
        status = read_arm(of, i, where, unit, &end->arm_length);
    if (status == STATUS_CONTINUE && adjuster != NULL &&
        rodt_adjuster_parse(adjuster, &end->adjuster, NULL) != RODT_OK)
        status = print_error("%s: %s, adjuster is automatic or manual, not \"%s\"", of->record.file, where, adjuster);
    return status == STATUS_CONTINUE ? judge_end(of, i, where, unit) : status;
}

static int judge_ends(inspection *of)
{
    const inspection_record *record = &of->record;
    RODT_ENUM32(rodt_unit) unit;
    int status = STATUS_CONTINUE;
    if (!record_length_unit(record, &unit))
        status = print_error("%s: length_unit is in, mm or cm, not \"%s\"", record->file,
                             record->head[HEAD_LENGTH_UNIT].text);
    else if (record->end_count == 0)
        status = print_error("%s: wheel_ends is empty; there is nothing to report yet", record->file);
    for (size_t i = 0; i < record->end_count && status == STATUS_CONTINUE; i++) {
        status = judge_wheel_end(of, i, unit);
        of->vehicle.count = i + 1;
    }
    if (status != STATUS_CONTINUE)
        return status;
    int brakes = record->head[HEAD_BRAKES].number;
    if (brakes > 0 && (size_t)brakes < record->end_count)
        return print_error("%s: brakes is %d, but there are %zu wheel ends", record->file, brakes, record->end_count);
    rodt_status combined = vehicle_combine(&of->vehicle, (uint32_t)brakes);
    char why[SAID_SIZE];
    return combined == RODT_OK ? status : print_error("%s: %s", record->file, say_status(combined, why));
}

/* --- Air checks --------------------------------------------------------------------------------------- */

/* Its texts under the names of the form. */
static rodt_air_form form_of(const record_value check[CHECK_KEYS])
{
    return (rodt_air_form){.check = check[CHECK_NAME].text,
                           .pressure = check[CHECK_PRESSURE].text,
                           .before = check[CHECK_BEFORE].text,
                           .after = check[CHECK_AFTER].text,
                           .cut_out = check[CHECK_CUT_OUT].text,
                           .seconds = check[CHECK_SECONDS].text,
                           .actual_volume = check[CHECK_ACTUAL].text,
                           .required_volume = check[CHECK_REQUIRED].text};
}

/* The entry that the field of an error is; they are called alike but for one. */
static check_key key_of(const char *field)
{
    check_key key = CHECK_NAME;
    if (strcmp(field, "actual_volume") == 0)
        return CHECK_ACTUAL;
    while (key < CHECK_REMARK && strcmp(field, record_key_name(&record_check_keys[key])) != 0)
        key++;
    return key;
}

static int read_figures(const inspection_record *record, size_t i, const char *where, rodt_air_reading *out)
{
    const record_value *check = record->checks[i];
    const rodt_air_form form = form_of(check);
    rodt_error error;
    if (rodt_air_form_parse(&form, out, &error) != RODT_OK) {
        const check_key key = key_of(error.field);
        const char *text = check[key].text != NULL ? check[key].text : "";
        return print_entry_error(record, where, record_key_name(&record_check_keys[key]), text, &error);
    }
    out->applications = (int16_t)check[CHECK_APPLICATIONS].number;
    return STATUS_CONTINUE;
}

/* All checks have the vehicle in common, and the governor if the check does not say its own. */
static void take_vehicle(const rodt_air_reading *vehicle, rodt_air_reading *to)
{
    to->vehicle = vehicle->vehicle;
    to->towed_units = vehicle->towed_units;
    to->built = vehicle->built;
    to->cut_in = vehicle->cut_in;
    if (!rodt_pressure_given(to->cut_out))
        to->cut_out = vehicle->cut_out;
}

static int read_answers(const inspection_record *record, size_t i, const char *where, rodt_air_reading *out)
{
    static const choice answers[] = {{"yes", RODT_RECORDED_YES}, {"no", RODT_RECORDED_NO}};
    const record_value *values = record->checks[i];
    int answer = (int)out->answer /* no, of a figure that never came */, span = RODT_AIR_SPAN_PRESSURES;
    int status = read_word(record, where, "answer", values[CHECK_ANSWER].text, answers, COUNT_OF(answers), &answer);
    if (status == STATUS_CONTINUE)
        status = read_word(record, where, "span", values[CHECK_SPAN].text, span_words, SPAN_WORDS, &span);
    out->answer = (rodt_recorded)answer;
    out->span = (rodt_air_span)span;
    return status;
}

static int judge_check(inspection *of, size_t i, const rodt_air_reading *vehicle)
{
    const inspection_record *record = &of->record;
    char where[RECORD_WHERE_SIZE];
    rodt_air_reading reading;
    check_place(record, i, where);
    if (air_check_of(record->checks[i][CHECK_NAME].text) == RODT_AIR_CHECK_NONE)
        return print_error("%s: %s: there is no such check; see: rodtravel air --help", record->file, where);
    int status = read_figures(record, i, where, &reading);
    if (status == STATUS_CONTINUE)
        status = read_answers(record, i, where, &reading);
    if (status != STATUS_CONTINUE)
        return status;
    take_vehicle(vehicle, &reading);
    rodt_error error;
    rodt_status judged = rodt_air_reading_judge(&reading, of->context->air_rules, &of->air[i], &error);
    char why[SAID_SIZE];
    return judged == RODT_OK ? status : print_error("%s: %s: %s", record->file, where, say_error(&error, why));
}

static int read_vehicle(const inspection_record *record, rodt_air_reading *out)
{
    const char *built = record->head[HEAD_BUILT].text;
    int vehicle = RODT_VEHICLE_CLASS_ANY;
    rodt_error error;
    int status = read_word(record, "", "vehicle", record->head[HEAD_VEHICLE].text, vehicle_words,
                           VEHICLE_WORDS, &vehicle);
    out->vehicle = (rodt_vehicle_class)vehicle;
    out->towed_units = (int16_t)record->head[HEAD_TOWED].number;
    if (status == STATUS_CONTINUE && out->towed_units > 0 &&
        (out->vehicle == RODT_VEHICLE_CLASS_SINGLE || out->vehicle == RODT_VEHICLE_CLASS_BUS))
        status = print_error("%s: towed_units says a combination, but vehicle does not", record->file);
    if (status == STATUS_CONTINUE && built != NULL && read_built_day(built, &out->built, &error) != RODT_OK)
        status = print_entry_error(record, "", "built", built, &error);
    return status;
}

/* What the governor did is compared with the other checks, so that none of them passes that cannot be beside it. */
static void take_governor(const inspection_record *record, rodt_air_reading *out)
{
    for (size_t i = 0; i < record->check_count; i++) {
        const char *text = record->checks[i][CHECK_PRESSURE].text;
        rodt_air_check check = air_check_of(record->checks[i][CHECK_NAME].text);
        rodt_pressure *to = check == RODT_AIR_CHECK_CUT_OUT  ? &out->cut_out
                            : check == RODT_AIR_CHECK_CUT_IN ? &out->cut_in
                                                             : NULL;
        if (text != NULL && to != NULL && rodt_pressure_parse(text, to, NULL) != RODT_OK)
            *to = (rodt_pressure){0};
    }
}

static int judge_checks(inspection *of)
{
    rodt_air_reading vehicle = {.check = RODT_AIR_CHECK_NONE};
    int status = read_vehicle(&of->record, &vehicle);
    take_governor(&of->record, &vehicle);
    of->vehicle.axle_1_steers = vehicle.vehicle != RODT_VEHICLE_CLASS_ANY;
    for (size_t i = 0; i < of->record.check_count && status == STATUS_CONTINUE; i++)
        status = judge_check(of, i, &vehicle);
    return status;
}

/* --- Units -------------------------------------------------------------------------------------------- */

static int check_unit_kinds(const inspection_record *record)
{
    static const choice kinds[] = {
        {TO_SAY("truck"), 0}, {UNIT_TRACTOR, 0}, {TO_SAY("bus"), 0}, {UNIT_TRAILER, 0}, {UNIT_DOLLY, 0}};
    int status = STATUS_CONTINUE, kind = 0;
    for (size_t i = 0; i < record->unit_count && status == STATUS_CONTINUE; i++) {
        char where[RECORD_WHERE_SIZE];
        snprintf(where, sizeof where, say("units, entry %zu"), i + 1);
        status = read_word(record, where, "kind", record->units[i][UNIT_KIND].text, kinds, COUNT_OF(kinds), &kind);
    }
    return status;
}

/* Their axles are those of the wheel ends. */
static int check_units(const inspection *of)
{
    const inspection_record *record = &of->record;
    int axles = 0, last = 0;
    size_t named = 0;
    for (size_t i = 0; i < record->unit_count; i++) {
        axles += record->units[i][UNIT_AXLES].number;
        named += record->units[i][UNIT_AXLES].number > 0;
    }
    for (size_t i = 0; i < record->end_count; i++)
        last = of->vehicle.ends[i].position.axle > last ? of->vehicle.ends[i].position.axle : last;
    if (named > 0 && named < record->unit_count)
        return print_error("%s: units: axles is there for some units only; give it for all of them, or for none",
                           record->file);
    if (named > 0 && axles < last)
        return print_error("%s: units: they have %d axles, but there is a wheel end of axle %d", record->file, axles,
                           last);
    return check_unit_kinds(record);
}

int record_judge(inspection *of, const rule_context *context)
{
    of->context = context;
    int status = judge_ends(of);
    if (status == STATUS_CONTINUE)
        status = check_units(of);
    return status == STATUS_CONTINUE ? judge_checks(of) : status;
}

int inspection_status(const inspection *of)
{
    int status = vehicle_status(&of->vehicle.vehicle);
    for (size_t i = 0; i < of->record.check_count; i++) {
        int air = air_status(of->air[i].result);
        if (air == STATUS_OUT || status == STATUS_GOOD)
            status = air;
    }
    return status;
}
