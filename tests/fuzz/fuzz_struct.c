/* SPDX-License-Identifier: Apache-2.0 */
/* Fuzz target: structs that say anything, filled by their description; only pointers point somewhere. What judges them
 * leaves its result alone on failure, and what it judged can be said; every writer writes just what it asked room for,
 * or nothing. */
#include <stdlib.h>
#include <string.h>

#include <rodtravel/rodtravel.h>

#include "source.h"

#define ENDS_MOST 4

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/* What is chosen once for an input. */
static struct {
    const rodt_rules *rules;
    const rodt_catalogue *catalogue;
    uint32_t options;
    uint32_t number; /* of an enumerator */
    rodt_date day;
} chosen;

/* --- Filling a struct --------------------------------------------------------------------------------- */

static void fill(source *from, const rodt_record *record, char *value);

static uint64_t number(source *from, size_t bytes)
{
    uint64_t value = 0;
    for (size_t i = 0; i < bytes; i++)
        value = value << 8 | byte(from);
    return value;
}

static void put(void *at, size_t size, uint64_t value)
{
    uint8_t value8 = (uint8_t)value;
    uint16_t value16 = (uint16_t)value;
    uint32_t value32 = (uint32_t)value;
    switch (size) {
    case 1: memcpy(at, &value8, sizeof value8); break;
    case 2: memcpy(at, &value16, sizeof value16); break;
    case 4: memcpy(at, &value32, sizeof value32); break;
    default: memcpy(at, &value, sizeof value); break;
    }
}

/* Not given, of a tape or a gauge, or anything. */
static void put_fraction(source *from, void *at)
{
    uint8_t choice = byte(from);
    rodt_ratio made = {0, 0};
    if (choice >= 240)
        made = (rodt_ratio){(int64_t)number(from, 8), (int64_t)number(from, 8)};
    else if (choice >= 176)
        made = (rodt_ratio){byte(from), choice % 4 == 0 ? 1 : (int64_t)1 << choice % 7};
    else if (choice >= 96)
        demand(rodt_ratio_make(8 + choice % 40, 8, &made) == RODT_OK);
    memcpy(at, &made, sizeof made);
}

static void put_number(source *from, const rodt_member *member, void *at)
{
    uint8_t choice = byte(from);
    size_t known = rodt_enumerator_count(member->enumeration);
    if (choice < 224 && known > 0)
        put(at, member->size, (uint64_t)rodt_enumerator_at(member->enumeration, choice % known)->number);
    else
        put(at, member->size, choice < 224 ? choice % 12u : number(from, member->size));
}

static void put_date(source *from, void *at)
{
    uint8_t choice = byte(from);
    rodt_date made = {(int16_t)(2000 + choice % 40), (int8_t)(1 + choice % 12), (int8_t)(1 + choice % 28)};
    if (choice < 64)
        made = (rodt_date){0, 0, 0};
    if (choice >= 240)
        made = (rodt_date){(int16_t)number(from, 2), (int8_t)byte(from), (int8_t)byte(from)};
    memcpy(at, &made, sizeof made);
}

static void put_text(source *from, const rodt_member *member, char *at)
{
    static const char *const written[] = {"", "30", "24", "C", "20", "36", "released", "x"};
    uint8_t choice = byte(from);
    memset(at, 0, member->size);
    if (choice < 224) {
        size_t size = strlen(written[choice % 8]);
        memcpy(at, written[choice % 8], size < member->size ? size : member->size - 1);
        return;
    }
    for (size_t i = 0; i < member->size; i++)
        at[i] = (char)byte(from);
    if (choice < 250)
        at[member->size - 1] = '\0';
}

/* A row of a table may be that of another rule set. */
static const void *any_row(source *from, const rodt_record *record)
{
    const rodt_rules *rules = rodt_rules_at(byte(from) % rodt_rules_count());
    size_t row = byte(from);
    const char *name = rodt_record_name(record);
    if (row >= 224)
        return NULL;
    if (strcmp(name, "rodt_limit") == 0 && rodt_rules_limit_count(rules) > 0)
        return rodt_rules_limit_at(rules, row % rodt_rules_limit_count(rules));
    if (strcmp(name, "rodt_air_limit") == 0 && rodt_rules_air_count(rules) > 0)
        return rodt_rules_air_at(rules, row % rodt_rules_air_count(rules));
    return strcmp(name, "rodt_source") == 0 ? rodt_rules_source(rules) : NULL;
}

static void put_pointer(source *from, const rodt_member *member, void *at)
{
    static const char *const texts[] = {"2 1/8", "30", "", "not more than 3 psi", "clamp", "\xC3\xA9", "{", "a & b"};
    const void *made = NULL;
    uint8_t choice = byte(from);
    if (member->kind == RODT_MEMBER_KIND_TEXT_POINTER)
        made = texts[choice % 8];
    else if (member->kind == RODT_MEMBER_KIND_RULES)
        made = choice < 240 ? chosen.rules : choice < 250 ? rodt_rules_at(choice % rodt_rules_count()) : NULL;
    else if (member->kind == RODT_MEMBER_KIND_RECORD_POINTER)
        made = any_row(from, member->record);
    memcpy(at, &made, sizeof made);
}

static void put_member(source *from, const rodt_member *member, char *at)
{
    switch (member->kind) {
    case RODT_MEMBER_KIND_LENGTH:
    case RODT_MEMBER_KIND_PRESSURE:
    case RODT_MEMBER_KIND_RATIO: put_fraction(from, at); break;
    case RODT_MEMBER_KIND_DATE: put_date(from, at); break;
    case RODT_MEMBER_KIND_BOOLEAN: *(bool *)(void *)at = byte(from) % 2 != 0; break;
    case RODT_MEMBER_KIND_TEXT: put_text(from, member, at); break;
    case RODT_MEMBER_KIND_RECORD: fill(from, member->record, at); break;
    case RODT_MEMBER_KIND_TEXT_POINTER:
    case RODT_MEMBER_KIND_RULES:
    case RODT_MEMBER_KIND_RECORD_POINTER:
    case RODT_MEMBER_KIND_POINTER: put_pointer(from, member, at); break;
    case RODT_MEMBER_KIND_POSITION: fill(from, rodt_record_find("rodt_position"), at); break;
    case RODT_MEMBER_KIND_SET: put(at, member->size, number(from, member->size)); break;
    case RODT_MEMBER_KIND_RESERVE: memset(at, byte(from) == 255, member->size); break;
    default: put_number(from, member, at); break;
    }
}

static void fill(source *from, const rodt_record *record, char *value)
{
    for (size_t i = 0; i < rodt_member_count(record); i++) {
        const rodt_member *member = rodt_member_at(record, i);
        for (uint32_t k = 0; k < member->count; k++)
            put_member(from, member, value + member->offset + k * member->size);
    }
}

#define FILL(from, type, value) fill(from, rodt_record_find(#type), (char *)(value))

/* --- What is left alone ------------------------------------------------------------------------------- */

#define PATTERN 0x5A

static bool is_untouched(const void *value, size_t size)
{
    const uint8_t *bytes = value;
    for (size_t i = 0; i < size; i++) {
        if (bytes[i] != PATTERN)
            return false;
    }
    return true;
}

/* A refusal has a sentence, and `value` is as it was. */
static bool is_good(rodt_status status, const rodt_error *error, const void *value, size_t size)
{
    if (status == RODT_OK)
        return true;
    demand(is_untouched(value, size));
    demand(error == NULL || (error->status == status && error->text[0] != '\0' &&
                             memchr(error->text, '\0', sizeof error->text) != NULL));
    return false;
}

#define UNTOUCHED(value) memset(&(value), PATTERN, sizeof(value))
#define IS_GOOD(call, error, value) is_good(call, error, &(value), sizeof(value))

/* One writer at all sizes: for (writing w = {0}; next_size(&w);) w.status = writer(..., w.text, w.size, &w.needed); */
typedef struct writing {
    int step;
    char *text;
    size_t size, needed, full;
    rodt_status status;
} writing;

static void offer(writing *of, size_t size)
{
    free(of->text);
    of->text = size > 0 ? malloc(size) : NULL;
    demand(size == 0 || of->text != NULL);
    if (size > 0)
        memset(of->text, PATTERN, size);
    of->size = size;
    of->needed = SIZE_MAX;
}

static bool next_size(writing *of)
{
    switch (of->step++) {
    case 0: offer(of, 0); return true;
    case 1:
        if (of->status != RODT_E_SPACE) {
            demand(of->status != RODT_OK && of->needed == SIZE_MAX);
            return false;
        }
        of->full = of->needed;
        demand(of->full > 0 && of->full < SIZE_MAX);
        offer(of, of->full - 1);
        return true;
    case 2:
        demand(of->status == RODT_E_SPACE && of->needed == of->full && is_untouched(of->text, of->size));
        offer(of, of->full);
        return true;
    default:
        demand(of->status == RODT_OK && of->needed == of->full && strlen(of->text) == of->full - 1);
        free(of->text);
        return false;
    }
}

#define WRITE(call) for (writing w = {0}; next_size(&w);) w.status = call
#define ROOM w.text, w.size, &w.needed

/* A sentence can be said in every language; what is judged can be said. */
static void check_message(rodt_status status, const rodt_message *message, bool is_judged)
{
    if (status != RODT_OK) {
        demand(is_untouched(message, sizeof *message));
        return;
    }
    demand(message->count <= RODT_MESSAGE_ARGUMENTS);
    WRITE(rodt_message_format(message, NULL, ROOM));
    WRITE(rodt_message_format(message, chosen.catalogue, ROOM));
    for (uint32_t i = 0; i < message->count; i++)
        demand(rodt_message_argument(message, message->arguments[i].name) != NULL);
    demand(!is_judged || rodt_message_format(message, chosen.catalogue, NULL, 0, NULL) == RODT_E_SPACE);
}

#define SAY(call, is_judged)                                                                                 \
    do {                                                                                                     \
        rodt_message out;                                                                                    \
        UNTOUCHED(out);                                                                                      \
        check_message(call, &out, is_judged);                                                                \
    } while (0)

/* --- Strokes ------------------------------------------------------------------------------------------ */

static void say_finding(const rodt_finding *finding, bool is_judged)
{
    rodt_reason reason = (rodt_reason)(chosen.number % 64);
    WRITE(rodt_finding_format(finding, ROOM));
    WRITE(rodt_finding_reason_format(finding, reason, ROOM));
    WRITE(rodt_finding_proof_format(finding, ROOM));
    WRITE(rodt_finding_spoken_format(finding, ROOM));
    WRITE(rodt_finding_json_format(finding, chosen.catalogue, chosen.options, ROOM));
    WRITE(rodt_limits_json_format(chosen.rules, chosen.day, finding, chosen.options, ROOM));
    SAY(rodt_finding_message(finding, &out), is_judged);
    SAY(rodt_finding_reason_message(finding, reason, &out), is_judged);
    SAY(rodt_finding_proof_message(finding, &out), is_judged);
    SAY(rodt_finding_spoken_message(finding, &out), is_judged);
    demand(rodt_finding_defect(finding) < RODT_DEFECT_END);
    demand(rodt_finding_has(finding, reason) == (finding->reasons >> reason & 1));
    demand(!is_judged || rodt_finding_format(finding, NULL, 0, NULL) == RODT_E_SPACE);
}

static void judge_reading(source *from)
{
    rodt_reading reading;
    rodt_finding finding;
    rodt_error error = {0};
    UNTOUCHED(finding);
    FILL(from, rodt_reading, &reading);
    rodt_status status = rodt_reading_judge(&reading, chosen.rules, &finding, &error);
    rodt_status checked = rodt_reading_check(&reading, NULL);
    demand(status == checked || checked == RODT_OK);
    if (IS_GOOD(status, &error, finding))
        say_finding(&finding, true);
}

static void say_any_finding(source *from)
{
    rodt_finding finding;
    FILL(from, rodt_finding, &finding);
    say_finding(&finding, false);
}

static void ask_chamber(source *from)
{
    rodt_chamber chamber;
    rodt_pressure pressure;
    rodt_length arm;
    rodt_ratio volume, force, factor;
    rodt_limit_answer answer;
    rodt_error error = {0};
    UNTOUCHED(volume), UNTOUCHED(force), UNTOUCHED(factor), UNTOUCHED(answer);
    FILL(from, rodt_chamber, &chamber);
    FILL(from, rodt_pressure, &pressure);
    FILL(from, rodt_length, &arm);
    rodt_status checked = rodt_chamber_check(&chamber, NULL);
    rodt_status status = rodt_rules_find_limit(chosen.rules, &chamber, chosen.day, &answer, &error);
    demand(checked == RODT_OK || status == checked);
    (void)IS_GOOD(status, &error, answer);
    (void)IS_GOOD(rodt_chamber_rated_volume(&chamber, &volume), NULL, volume);
    (void)IS_GOOD(rodt_chamber_pushrod_force(&chamber, pressure, &force), NULL, force);
    (void)IS_GOOD(rodt_chamber_al_factor(&chamber, arm, &factor), NULL, factor);
    WRITE(rodt_chamber_format(&chamber, ROOM));
    (void)rodt_chamber_add_class(&chamber, (rodt_stroke_class)(chosen.number % 5));
}

static void identify(source *from)
{
    rodt_clues clues;
    rodt_identification answer;
    rodt_error error = {0};
    UNTOUCHED(answer);
    FILL(from, rodt_clues, &clues);
    if (!IS_GOOD(rodt_clues_identify(&clues, chosen.rules, chosen.day, &answer, &error), &error, answer))
        return;
    demand(answer.next_observation < RODT_OBSERVATION_END);
    SAY(rodt_observation_message(answer.next_observation, &out), true);
    WRITE(rodt_identification_json_format(&answer, chosen.rules, chosen.day, chosen.catalogue, chosen.options, ROOM));
}

/* --- Vehicles ----------------------------------------------------------------------------------------- */

static void say_vehicle(const rodt_vehicle_finding *vehicle, const rodt_wheel_end *ends, size_t count,
                        const rodt_finding *findings, const rodt_advice *advice)
{
    WRITE(rodt_count_format(&vehicle->count, ROOM));
    SAY(rodt_count_message(&vehicle->count, &out), false);
    for (size_t i = 0; i < vehicle->axle_count && i < RODT_AXLES_MAX; i++) {
        rodt_axle_mismatch mismatch = (rodt_axle_mismatch)(1u << chosen.number % 10);
        WRITE(rodt_axle_mismatch_format(&vehicle->axles[i], mismatch, ROOM));
        SAY(rodt_axle_mismatch_message(&vehicle->axles[i], mismatch, &out), false);
    }
    WRITE(rodt_vehicle_json_format(vehicle, ends, count, findings, advice, NULL, chosen.catalogue, chosen.options, ROOM));
}

static void count_brakes(source *from, const rodt_finding *finding)
{
    rodt_tally tally, before;
    rodt_count count;
    rodt_error error = {0};
    UNTOUCHED(count);
    FILL(from, rodt_tally, &tally);
    before = tally;
    if (rodt_tally_add(&tally, finding, &error) != RODT_OK)
        demand(memcmp(&tally, &before, sizeof tally) == 0 && error.text[0] != '\0');
    (void)IS_GOOD(rodt_tally_judge(&tally, byte(from), &count, &error), &error, count);
}

static void judge_vehicle(source *from)
{
    static rodt_wheel_end ends[ENDS_MOST];
    static rodt_finding findings[ENDS_MOST];
    static rodt_vehicle_finding vehicle;
    rodt_advice advice[ENDS_MOST];
    rodt_error error = {0};
    size_t count = byte(from) % (ENDS_MOST + 1);
    uint32_t brakes = byte(from);
    UNTOUCHED(vehicle), UNTOUCHED(advice), UNTOUCHED(findings);
    for (size_t i = 0; i < count; i++)
        FILL(from, rodt_wheel_end, &ends[i]);
    rodt_status status = rodt_vehicle_judge(ends, count, brakes, chosen.rules, findings, advice, &vehicle, &error);
    if (IS_GOOD(status, &error, vehicle)) {
        say_vehicle(&vehicle, ends, count, findings, advice);
    } else {
        demand(is_untouched(advice, sizeof advice) && is_untouched(findings, sizeof findings));
        for (size_t i = 0; i < count; i++)
            FILL(from, rodt_finding, &findings[i]);
    }
    UNTOUCHED(vehicle);
    if (IS_GOOD(rodt_vehicle_combine(ends, count, brakes, findings, advice, &vehicle, &error), &error, vehicle))
        say_vehicle(&vehicle, ends, count, findings, advice);
    count_brakes(from, &findings[0]);
}

static void say_any_vehicle(source *from)
{
    static rodt_wheel_end ends[1];
    static rodt_finding findings[1];
    static rodt_vehicle_finding vehicle;
    rodt_advice advice[1] = {(rodt_advice)(chosen.number % 9)};
    FILL(from, rodt_wheel_end, &ends[0]);
    FILL(from, rodt_finding, &findings[0]);
    FILL(from, rodt_vehicle_finding, &vehicle);
    say_vehicle(&vehicle, ends, 1, findings, advice);
}

/* --- Air ---------------------------------------------------------------------------------------------- */

static void say_air(const rodt_air_finding *finding, bool is_judged)
{
    WRITE(rodt_air_finding_format(finding, ROOM));
    WRITE(rodt_air_finding_edge_format(finding, ROOM));
    WRITE(rodt_air_finding_note_format(finding, ROOM));
    WRITE(rodt_air_finding_spoken_format(finding, ROOM));
    WRITE(rodt_air_finding_json_format(finding, chosen.catalogue, chosen.options, ROOM));
    SAY(rodt_air_finding_message(finding, &out), is_judged);
    SAY(rodt_air_finding_edge_message(finding, &out), is_judged);
    SAY(rodt_air_finding_note_message(finding, &out), is_judged);
    SAY(rodt_air_finding_spoken_message(finding, &out), is_judged);
    demand(!is_judged || rodt_air_finding_format(finding, NULL, 0, NULL) == RODT_E_SPACE);
}

static void judge_air(source *from)
{
    rodt_air_reading reading;
    rodt_air_finding finding;
    rodt_error error = {0};
    UNTOUCHED(finding);
    FILL(from, rodt_air_reading, &reading);
    rodt_status status = rodt_air_reading_judge(&reading, chosen.rules, &finding, &error);
    demand(status == RODT_OK || status == RODT_E_RANGE || rodt_air_reading_check(&reading, NULL) == status);
    if (IS_GOOD(status, &error, finding))
        say_air(&finding, true);
    rodt_step step = (rodt_step)(chosen.number % RODT_STEP_END);
    const rodt_air_limit *row = rodt_step_row_at(step, chosen.rules, &reading, byte(from) % 3u);
    for (int part = 0; part <= RODT_STEP_PART_END; part++) {
        WRITE(rodt_step_format(step, (rodt_step_part)part, chosen.rules, row, ROOM));
        SAY(rodt_step_message(step, (rodt_step_part)part, chosen.rules, row, &out), true);
    }
}

static void say_any_air(source *from)
{
    rodt_air_finding finding;
    FILL(from, rodt_air_finding, &finding);
    say_air(&finding, false);
}

static void estimate(source *from)
{
    rodt_pressure pressure, least, after;
    rodt_ratio reservoir, chambers, part, made;
    unsigned count;
    UNTOUCHED(after), UNTOUCHED(made), UNTOUCHED(count);
    FILL(from, rodt_pressure, &pressure);
    FILL(from, rodt_pressure, &least);
    FILL(from, rodt_ratio, &reservoir);
    FILL(from, rodt_ratio, &chambers);
    FILL(from, rodt_ratio, &part);
    (void)IS_GOOD(rodt_reservoir_estimate_application(pressure, reservoir, chambers, part, &after), NULL, after);
    (void)IS_GOOD(rodt_reservoir_estimate_applications(pressure, least, reservoir, chambers, part, &count), NULL, count);
    if (IS_GOOD(rodt_reservoir_required_volume(chambers, byte(from) % 2 != 0, &made), NULL, made))
        UNTOUCHED(made);
    (void)IS_GOOD(rodt_reservoir_build_up_seconds(reservoir, chambers, &made), NULL, made);
}

/* --- Rows, errors and every other record ---------------------------------------------------------------- */

static void say_rows(source *from)
{
    rodt_limit limit;
    rodt_air_limit air;
    rodt_source where;
    rodt_error error;
    FILL(from, rodt_source, &where);
    FILL(from, rodt_limit, &limit);
    FILL(from, rodt_air_limit, &air);
    FILL(from, rodt_error, &error);
    limit.source = air.source = &where;
    WRITE(rodt_source_format(&where, ROOM));
    WRITE(rodt_limit_json_format(&limit, chosen.options, ROOM));
    WRITE(rodt_air_limit_json_format(&air, chosen.catalogue, chosen.options, ROOM));
    WRITE(rodt_air_limit_edge_format(&air, ROOM));
    WRITE(rodt_rules_json_format(chosen.rules, chosen.options, ROOM));
    SAY(rodt_air_limit_edge_message(&air, &out), false);
    SAY(rodt_error_message(&error, &out), false);
    SAY(rodt_air_check_message((rodt_air_check)chosen.number, &out), true);
    SAY(rodt_evidence_message((rodt_evidence)chosen.number, &out), true);
    SAY(rodt_advice_message((rodt_advice)chosen.number, &out), true);
    SAY(rodt_status_message((rodt_status)chosen.number, &out), true);
}

static void say_quantities(source *from)
{
    rodt_length length;
    rodt_pressure pressure;
    rodt_ratio ratio;
    rodt_date date;
    rodt_position position;
    FILL(from, rodt_length, &length);
    FILL(from, rodt_pressure, &pressure);
    FILL(from, rodt_ratio, &ratio);
    FILL(from, rodt_date, &date);
    FILL(from, rodt_position, &position);
    WRITE(rodt_length_format(length, ROOM));
    WRITE(rodt_length_format_decimal(length, (rodt_unit)(chosen.number % 4), chosen.number % 16,
                                     (rodt_rounding)(chosen.number % 5), ROOM));
    WRITE(rodt_pressure_format(pressure, ROOM));
    WRITE(rodt_pressure_format_unit(pressure, (rodt_pressure_unit)(chosen.number % 3), ROOM));
    WRITE(rodt_ratio_format(ratio, ROOM));
    WRITE(rodt_date_format(date, ROOM));
    WRITE(rodt_position_format(position, ROOM));
}

static void say_any_record(source *from)
{
    const rodt_record *record = rodt_record_at(byte(from) % rodt_record_count());
    char *value = calloc(1, rodt_record_size(record));
    demand(value != NULL);
    fill(from, record, value);
    WRITE(rodt_record_json_format(record, value, chosen.options, ROOM));
    for (size_t i = 0; i < rodt_member_count(record); i++)
        WRITE(rodt_record_text_format(record, value, rodt_member_at(record, i)->name, ROOM));
    free(value);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static void (*const parts[])(source *from) = {judge_reading, say_any_finding, ask_chamber, identify, judge_vehicle,
                                                  say_any_vehicle, judge_air, say_any_air, estimate, say_rows,
                                                  say_quantities, say_any_record};
    source from = {data, size};
    uint8_t part = byte(&from);
    chosen.rules = rodt_rules_at(byte(&from) % rodt_rules_count());
    chosen.catalogue = rodt_catalogue_at(byte(&from) % (rodt_catalogue_count() + 1));
    chosen.options = byte(&from) % 2;
    chosen.number = byte(&from);
    put_date(&from, &chosen.day);
    parts[part % (sizeof parts / sizeof parts[0])](&from);
    return 0;
}
