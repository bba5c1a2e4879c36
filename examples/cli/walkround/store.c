/* SPDX-License-Identifier: Apache-2.0 */
/* Answers in a record: where each one is kept, what was skipped, and wheel ends that copy their neighbours. */
#include "input/air_words.h"
#include "walkround/walkround.h"
#include "ui/compiler.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* --- Texts ------------------------------------------------------------------------------------------- */

struct walk_text {
    walk_text *next;
    char text[];
};

const char *walk_keep(walk *of, const char *text)
{
    size_t size = strlen(text) + 1;
    walk_text *kept = malloc(sizeof *kept + size);
    if (kept == NULL)
        return NULL;
    memcpy(kept->text, text, size);
    kept->next = of->texts;
    of->texts = kept;
    return kept->text;
}

void walk_free_texts(walk *of)
{
    while (of->texts != NULL) {
        walk_text *next = of->texts->next;
        free(of->texts);
        of->texts = next;
    }
}

/* --- Steps ------------------------------------------------------------------------------------------- */

void walk_step_name(const inspection_record *record, const walk_item *item, char name[WALK_NAME_SIZE])
{
    const char *question = walk_questions[item->id].name;
    if (item->end != WALK_NONE)
        snprintf(name, WALK_NAME_SIZE, "%.20s %s", record->ends[item->end][END_POSITION].text, question);
    else if (item->check != RODT_AIR_CHECK_NONE)
        snprintf(name, WALK_NAME_SIZE, "%s %s", rodt_air_check_name(item->check), question);
    else
        snprintf(name, WALK_NAME_SIZE, "%s", question);
}

void walk_clues_name(const inspection_record *record, int end, char name[WALK_NAME_SIZE])
{
    snprintf(name, WALK_NAME_SIZE, "%.20s%s", record->ends[end][END_POSITION].text, STEP_CLUES);
}

static void drop_step(inspection_record *record, size_t step)
{
    record->step_count--;
    memmove(record->steps[step], record->steps[step + 1], (record->step_count - step) * sizeof record->steps[0]);
    memset(record->steps[record->step_count], 0, sizeof record->steps[0]);
}

bool walk_set_step(walk *of, inspection_record *record, const char *name, const char *answer)
{
    int step = record_find_step(record, name);
    if (answer == NULL) {
        if (step != WALK_NONE)
            drop_step(record, (size_t)step);
        return true;
    }
    if (step == WALK_NONE && record->step_count == RECORD_STEPS_MAX)
        return false;
    record_value *values = record->steps[step == WALK_NONE ? record->step_count : (size_t)step];
    const char *kept_name = step == WALK_NONE ? walk_keep(of, name) : values[STEP_NAME].text;
    const char *kept = walk_keep(of, answer);
    if (kept_name == NULL || kept == NULL)
        return false;
    values[STEP_NAME].text = kept_name;
    values[STEP_ANSWER].text = kept;
    record->step_count += step == WALK_NONE;
    return true;
}

/* --- Checks ------------------------------------------------------------------------------------------ */

int walk_find_check(const inspection_record *record, rodt_air_check check)
{
    for (size_t i = 0; i < record->check_count; i++) {
        if (air_check_of(record->checks[i][CHECK_NAME].text) == check)
            return (int)i;
    }
    return WALK_NONE;
}

static record_value *make_check(inspection_record *record, rodt_air_check check)
{
    int found = walk_find_check(record, check);
    if (found != WALK_NONE)
        return record->checks[found];
    if (record->check_count == RECORD_CHECKS_MAX)
        return NULL;
    record_value *values = record->checks[record->check_count++];
    values[CHECK_NAME].text = rodt_air_check_name(check);
    return values;
}

bool walk_never_came(const inspection_record *record, rodt_air_check check)
{
    int entry = walk_find_check(record, check);
    const char *answer = entry == WALK_NONE ? NULL : record->checks[entry][CHECK_ANSWER].text;
    return answer != NULL && strcmp(answer, "no") == 0 && walk_can_be_never(check);
}

bool walk_can_be_never(rodt_air_check check)
{
    return check == RODT_AIR_CHECK_WARNING || check == RODT_AIR_CHECK_BUILD_UP || check == RODT_AIR_CHECK_CUT_OUT ||
           check == RODT_AIR_CHECK_CUT_IN || check == RODT_AIR_CHECK_TRACTOR_PROTECTION ||
           check == RODT_AIR_CHECK_SUPPLY_VALVE || check == RODT_AIR_CHECK_PARKING_VALVE;
}

/* What was waited for did not come: there is no figure beside that. */
bool walk_set_never(inspection_record *record, const walk_item *item)
{
    record_value *values = make_check(record, item->check);
    if (values == NULL)
        return false;
    values[walk_questions[item->id].key] = (record_value){NULL, 0};
    values[CHECK_ANSWER].text = "no";
    return true;
}

/* A check that has nothing but its name was skipped. */
static bool is_bare(const record_value *check)
{
    for (int key = CHECK_NAME + 1; key < CHECK_REMARK; key++) {
        if (check[key].text != NULL || check[key].number > 0)
            return false;
    }
    return true;
}

/* --- Units -------------------------------------------------------------------------------------------- */

static const char *kind_of_unit(const inspection_record *record, size_t index, bool dolly)
{
    const char *vehicle = record->head[HEAD_VEHICLE].text;
    if (index > 0)
        return dolly ? UNIT_DOLLY : UNIT_TRAILER;
    if (vehicle != NULL && strcmp(vehicle, "combination") == 0)
        return UNIT_TRACTOR;
    return vehicle != NULL && strcmp(vehicle, "bus") == 0 ? "bus" : "truck";
}

void walk_set_units(inspection_record *record, const walk_units *units)
{
    int towed = 0;
    if (units->count != record->unit_count)
        memset(record->units, 0, sizeof record->units);
    record->unit_count = units->count;
    for (size_t i = 0; i < units->count; i++) {
        record->units[i][UNIT_KIND].text = kind_of_unit(record, i, units->units[i].dolly);
        record->units[i][UNIT_AXLES].number = units->units[i].axles;
        towed += i > 0 && !units->units[i].dolly;
    }
    if (units->count > 1)
        record->head[HEAD_TOWED].number = towed > 0 ? towed : 1;
}

void walk_format_units(const inspection_record *record, char *text, size_t size)
{
    size_t used = 0;
    for (size_t i = 0; i < record->unit_count && used < size; i++)
        used += (size_t)snprintf(text + used, size - used, "%s%s%d", i > 0 ? " " : "",
                                 strcmp(record->units[i][UNIT_KIND].text, UNIT_DOLLY) == 0 ? "d" : "",
                                 record->units[i][UNIT_AXLES].number);
}

static record_value find_plate(const inspection_record *record)
{
    record_value found = {NULL, 0};
    for (size_t i = 0; i < record->unit_count && found.text == NULL; i++)
        found = record->units[i][UNIT_PLATE];
    return found;
}

void walk_format_plates(const inspection_record *record, char *text, size_t size)
{
    size_t used = 0;
    for (size_t i = 0; i < record->unit_count && used < size; i++) {
        const char *plate = record->units[i][UNIT_PLATE].text;
        used += (size_t)snprintf(text + used, size - used, "%s%s", i > 0 ? ", " : "", plate != NULL ? plate : "");
    }
}

static bool set_plate(walk *of, inspection_record *record, size_t index, const char *text, size_t size)
{
    char plate[WALK_ANSWER_MAX];
    for (; size > 0 && strchr(" \t", *text) != NULL; size--)
        text++;
    while (size > 0 && strchr(" \t", text[size - 1]) != NULL)
        size--;
    snprintf(plate, sizeof plate, "%.*s", (int)size, text);
    const char *kept = size > 0 ? walk_keep(of, plate) : NULL;
    record->units[index][UNIT_KIND].text = record->units[index][UNIT_KIND].text != NULL
                                               ? record->units[index][UNIT_KIND].text
                                               : kind_of_unit(record, index, false);
    record->units[index][UNIT_PLATE].text = kept;
    return size == 0 || kept != NULL;
}

bool walk_set_plates(walk *of, inspection_record *record, const char *text)
{
    bool known = record->unit_count > 0 && record->units[0][UNIT_AXLES].number > 0;
    size_t count = 0, most = known ? record->unit_count : RECORD_UNITS_MAX;
    bool good = true;
    for (size_t i = 0; i < record->unit_count; i++)
        record->units[i][UNIT_PLATE].text = NULL;
    for (const char *end; good; text = end + 1) {
        end = text + strcspn(text, ",");
        if (count == most)
            return false;
        good = set_plate(of, record, count++, text, (size_t)(end - text));
        if (*end == '\0')
            break;
    }
    record->unit_count = known ? record->unit_count : count;
    return good;
}

bool walk_is_parking(const walk_item *item) { return item->id == ASK_SPRING || item->id == ASK_PARKED; }

bool walk_parking_failed(const inspection_record *record)
{
    static const walk_id ids[] = {ASK_SPRING, ASK_PARKED};
    for (size_t i = 0; i < COUNT_OF(ids); i++) {
        const char *answer = record_step(record, walk_questions[ids[i]].name);
        if (answer != NULL && strcmp(answer, STEP_NEVER) == 0)
            return true;
    }
    return false;
}

/* --- Values ------------------------------------------------------------------------------------------ */

record_value walk_value(const inspection_record *record, const walk_item *item)
{
    const walk_question *question = &walk_questions[item->id];
    char name[WALK_NAME_SIZE];
    record_value none = {NULL, 0};
    int check = item->check == RODT_AIR_CHECK_NONE ? WALK_NONE : walk_find_check(record, item->check);
    switch (question->location) {
    case WALK_HEAD: return record->head[question->key];
    case WALK_UNITS: return find_plate(record);
    case WALK_END: return record->ends[item->end][question->key];
    case WALK_ALL_ENDS: return record->end_count > 0 ? record->ends[0][question->key] : none;
    case WALK_CHECK: return check == WALK_NONE ? none : record->checks[check][question->key];
    case WALK_STEP: break;
    }
    if (item->id == ASK_AXLES)
        return (record_value){NULL, (int)(record->end_count + 1) / 2};
    walk_step_name(record, item, name);
    return (record_value){record_step(record, name), 0};
}

bool walk_skipped(const inspection_record *record, const walk_item *item)
{
    char name[WALK_NAME_SIZE];
    if (item->check != RODT_AIR_CHECK_NONE) {
        int check = walk_find_check(record, item->check);
        if (check != WALK_NONE && is_bare(record->checks[check]))
            return true;
    }
    walk_step_name(record, item, name);
    const char *answer = record_step(record, name);
    return answer != NULL && strcmp(answer, STEP_SKIPPED) == 0;
}

/* Another chamber has other marks, so those of the old one are no answers any more. */
static void reopen_marks(walk *of, inspection_record *record, const walk_item *item)
{
    static const walk_id marks[] = {ASK_CLASS, ASK_RATED, ASK_MARKED};
    for (size_t i = 0; i < COUNT_OF(marks); i++) {
        walk_item mark = {marks[i], item->part, item->end, RODT_AIR_CHECK_NONE};
        char name[WALK_NAME_SIZE];
        record->ends[item->end][walk_questions[marks[i]].key] = (record_value){NULL, 0};
        walk_step_name(record, &mark, name);
        (void)walk_set_step(of, record, name, NULL);
    }
}

/* Units whose axles are known stay. */
static void forget_plates(inspection_record *record)
{
    bool known = record->unit_count > 0 && record->units[0][UNIT_AXLES].number > 0;
    for (size_t i = 0; i < record->unit_count; i++)
        record->units[i][UNIT_PLATE].text = NULL;
    record->unit_count = known ? record->unit_count : 0;
}

static void put(walk *of, inspection_record *record, const walk_item *item, record_value value)
{
    const walk_question *question = &walk_questions[item->id];
    if (question->location == WALK_HEAD)
        record->head[question->key] = value;
    if (question->location == WALK_UNITS && value.text == NULL)
        forget_plates(record);
    if (question->location == WALK_END)
        record->ends[item->end][question->key] = value;
    for (size_t i = 0; question->location == WALK_ALL_ENDS && i < record->end_count; i++)
        record->ends[i][question->key] = value;
    if (item->id == ASK_CHAMBER)
        reopen_marks(of, record, item);
    if (item->id == ASK_VEHICLE && (value.text == NULL || strcmp(value.text, "combination") != 0))
        record->head[HEAD_TOWED] = (record_value){NULL, 0};
    if (item->id == ASK_VEHICLE)
        record->unit_count = 0;
}

bool walk_set(walk *of, inspection_record *record, const walk_item *item, record_value value)
{
    const walk_question *question = &walk_questions[item->id];
    char name[WALK_NAME_SIZE];
    walk_step_name(record, item, name);
    if (question->location == WALK_STEP)
        return walk_set_step(of, record, name, value.text);
    if (question->location == WALK_CHECK) {
        record_value *values = make_check(record, item->check);
        if (values == NULL)
            return false;
        if (walk_never_came(record, item->check))
            values[CHECK_ANSWER].text = NULL;
        values[question->key] = value;
    }
    put(of, record, item, value);
    return walk_set_step(of, record, name, NULL);
}

bool walk_skip(walk *of, inspection_record *record, const walk_item *item)
{
    char name[WALK_NAME_SIZE];
    walk_step_name(record, item, name);
    if (!walk_set(of, record, item, (record_value){NULL, 0}))
        return false;
    int check = item->check == RODT_AIR_CHECK_NONE ? WALK_NONE : walk_find_check(record, item->check);
    return (check != WALK_NONE && is_bare(record->checks[check])) || walk_set_step(of, record, name, STEP_SKIPPED);
}

/* Adds to a remark that is there. */
static bool add_remark(walk *of, record_value *value, const char *text)
{
    char both[2 * WALK_ANSWER_MAX];
    bool more = value->text != NULL;
    snprintf(both, sizeof both, "%s%s%s", more ? value->text : "", more ? "; " : "", text);
    const char *kept = strlen(both) + 1 < sizeof both ? walk_keep(of, both) : NULL;
    if (kept != NULL)
        value->text = kept;
    return kept != NULL;
}

bool walk_note(walk *of, inspection_record *record, const walk_item *item, const char *text)
{
    if (item->end != WALK_NONE)
        return add_remark(of, &record->ends[item->end][END_REMARK], text);
    if (item->check == RODT_AIR_CHECK_NONE)
        return add_remark(of, &record->head[HEAD_REMARKS], text);
    int check = walk_find_check(record, item->check);
    return check == WALK_NONE ? add_remark(of, &record->head[HEAD_REMARKS], text)
                              : add_remark(of, &record->checks[check][CHECK_REMARK], text);
}

static void drop_check(inspection_record *record, size_t i)
{
    record->check_count--;
    memmove(record->checks[i], record->checks[i + 1], (record->check_count - i) * sizeof record->checks[0]);
    memset(record->checks[record->check_count], 0, sizeof record->checks[0]);
}

void walk_forget_skipped(inspection_record *record)
{
    for (size_t i = record->step_count; i-- > 0;) {
        if (strcmp(record->steps[i][STEP_ANSWER].text, STEP_SKIPPED) == 0)
            drop_step(record, i);
    }
    for (size_t i = record->check_count; i-- > 0;) {
        if (is_bare(record->checks[i]) && record->checks[i][CHECK_REMARK].text == NULL)
            drop_check(record, i);
    }
}

void walk_drop_bare_check(inspection_record *record, rodt_air_check check)
{
    int entry = walk_find_check(record, check);
    if (entry != WALK_NONE && is_bare(record->checks[entry]))
        drop_check(record, (size_t)entry);
}

/* --- Wheel ends: as many as there are axles, described like their neighbours -------------------------- */

/* The answers that one wheel end most likely shares with another. */
static const walk_id described[] = {ASK_CHAMBER, ASK_CLASS, ASK_RATED, ASK_MARKED, ASK_ADJUSTER, ASK_ARM};

void walk_forget_description(walk *of, inspection_record *record, int end)
{
    for (size_t i = 0; i < COUNT_OF(described); i++) {
        walk_item item = {described[i], WALK_RELEASED, end, RODT_AIR_CHECK_NONE};
        char name[WALK_NAME_SIZE];
        record->ends[end][walk_questions[described[i]].key] = (record_value){NULL, 0};
        walk_step_name(record, &item, name);
        (void)walk_set_step(of, record, name, NULL);
    }
}

rodt_position walk_position(const inspection_record *record, int end)
{
    rodt_position position;
    const char *text = record->ends[end][END_POSITION].text;
    bool is_read = rodt_position_parse_n(text, strlen(text), &position, NULL) == RODT_OK;
    return is_read ? position : (rodt_position){0, 0};
}

/* Without this the steps of a removed wheel end would come back with it. */
static void forget_end(walk *of, inspection_record *record, int end)
{
    char name[WALK_NAME_SIZE];
    for (int id = 0; id < ASK_IDS; id++) {
        walk_item item = {(walk_id)id, WALK_RELEASED, end, RODT_AIR_CHECK_NONE};
        if (walk_questions[id].location != WALK_END)
            continue;
        walk_step_name(record, &item, name);
        (void)walk_set_step(of, record, name, NULL);
    }
    walk_clues_name(record, end, name);
    (void)walk_set_step(of, record, name, NULL);
    memset(record->ends[end], 0, sizeof record->ends[end]);
}

/* A new wheel end gets the answers that apply to all. */
static bool add_end(walk *of, inspection_record *record, int axle, int side)
{
    static const end_key common[] = {END_DIVISION, END_PSI, END_PSI_AFTER, END_ENGINE, END_SPRING, END_DRUM};
    char text[RODT_POSITION_TEXT_SIZE];
    record_value *values = record->ends[record->end_count];
    if (rodt_position_format((rodt_position){(int16_t)axle, (rodt_side)side}, text, sizeof text, NULL) != RODT_OK)
        return false;
    values[END_POSITION].text = walk_keep(of, text);
    for (size_t i = 0; record->end_count > 0 && i < COUNT_OF(common); i++)
        values[common[i]] = record->ends[0][common[i]];
    record->end_count++;
    return values[END_POSITION].text != NULL;
}

static bool has_end(const inspection_record *record, int axle, int side)
{
    for (size_t i = 0; i < record->end_count; i++) {
        rodt_position position = walk_position(record, (int)i);
        if (position.axle == axle && (int)position.side == side)
            return true;
    }
    return false;
}

/* The number of brakes that an older record says is of its own axles. */
bool walk_drops_brakes(const inspection_record *record, int axles)
{
    return record->head[HEAD_BRAKES].number > 0 && (size_t)axles * 2 != record->end_count;
}

bool walk_set_axles(walk *of, inspection_record *record, int axles)
{
    if (walk_drops_brakes(record, axles))
        record->head[HEAD_BRAKES].number = 0;
    while (record->end_count > 0 && walk_position(record, (int)record->end_count - 1).axle > axles)
        forget_end(of, record, (int)--record->end_count);
    for (int axle = 1; axle <= axles; axle++) {
        for (int side = RODT_SIDE_LEFT; side < RODT_SIDE_END; side++) {
            if (record->end_count == VEHICLE_ENDS_MAX)
                return has_end(record, axle, side);
            if (!has_end(record, axle, side) && !add_end(of, record, axle, side))
                return false;
        }
    }
    return true;
}

/* --- Neighbours -------------------------------------------------------------------------------------- */

/* The other end of the axle; without one the nearest axle before it. */
int walk_template_end(const inspection_record *record, int end)
{
    rodt_position at = walk_position(record, end);
    int best = WALK_NONE, distance = RODT_AXLE_NUMBER_MAX + 1;
    for (int i = 0; i < (int)record->end_count; i++) {
        rodt_position other = walk_position(record, i);
        int far = at.axle - other.axle;
        if (i == end || record->ends[i][END_CHAMBER].text == NULL || far < 0 || (far > 0 && other.side != at.side))
            continue;
        if (far < distance) {
            best = i;
            distance = far;
        }
    }
    return best;
}

bool walk_copy_end(walk *of, inspection_record *record, int from, int to)
{
    bool good = true;
    for (size_t i = 0; i < COUNT_OF(described); i++) {
        walk_item template_end = {described[i], WALK_RELEASED, from, RODT_AIR_CHECK_NONE};
        walk_item item = {described[i], WALK_RELEASED, to, RODT_AIR_CHECK_NONE};
        record_value value = walk_value(record, &template_end);
        if (walk_skipped(record, &template_end))
            good = walk_skip(of, record, &item) && good;
        else if (value.text != NULL)
            good = walk_set(of, record, &item, value) && good;
    }
    return good;
}
