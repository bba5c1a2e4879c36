/* SPDX-License-Identifier: Apache-2.0 */
/* The entries of a record: the one list that reading, writing and judging go by, and how an entry is found. */
#include "record/record.h"
#include "input/air_words.h"

#include <stdio.h>
#include <string.h>

const record_key record_head_keys[HEAD_KEYS] = {
    [HEAD_UNIT] = {.name = TO_SAY("unit")},
    [HEAD_DATE] = {.name = TO_SAY("date"), .needed = true},
    [HEAD_TIME] = {.name = TO_SAY("time")},
    [HEAD_CARRIER] = {.name = TO_SAY("carrier")},
    [HEAD_INSPECTOR] = {.name = TO_SAY("inspector")},
    [HEAD_PLACE] = {.name = TO_SAY("place")},
    [HEAD_ODOMETER] = {.name = TO_SAY("odometer")},
    [HEAD_RULES] = {.name = TO_SAY("rules"), .needed = true},
    [HEAD_AIR_RULES] = {.name = TO_SAY("air_rules")},
    [HEAD_LENGTH_UNIT] = {.name = TO_SAY("length_unit")},
    [HEAD_VEHICLE] = {.name = TO_SAY("vehicle")},
    [HEAD_TOWED] = {.name = TO_SAY("towed_units"), .most = 99},
    [HEAD_BUILT] = {.name = TO_SAY("built")},
    [HEAD_BRAKES] = {.name = TO_SAY("brakes"), .most = 999},
    [HEAD_PROGRAM] = {.name = "program"},
    [HEAD_REPAIR] = {.name = TO_SAY("repair")},
    [HEAD_REMARKS] = {.name = TO_SAY("remarks")},
};

const record_key record_end_keys[END_KEYS] = {
    [END_POSITION] = {.field = RODT_FIELD_POSITION, .needed = true},
    [END_CHAMBER] = {.field = RODT_FIELD_CHAMBER},
    [END_CLASS] = {.field = RODT_FIELD_STROKE_CLASS},
    [END_RATED] = {.field = RODT_FIELD_RATED_STROKE},
    [END_MARKED] = {.field = RODT_FIELD_MARKED_LIMIT},
    [END_RELEASED] = {.field = RODT_FIELD_RELEASED},
    [END_APPLIED] = {.field = RODT_FIELD_APPLIED},
    [END_DIVISION] = {.field = RODT_FIELD_DIVISION},
    [END_PSI] = {.field = RODT_FIELD_PSI},
    [END_PSI_AFTER] = {.field = RODT_FIELD_PSI_AFTER},
    [END_ENGINE] = {.field = RODT_FIELD_ENGINE},
    [END_SPRING] = {.field = RODT_FIELD_SPRING_BRAKE},
    [END_DRUM] = {.field = RODT_FIELD_DRUM},
    [END_ADJUSTER] = {.field = RODT_FIELD_ADJUSTER},
    [END_ARM] = {.field = RODT_FIELD_ARM_LENGTH},
    [END_REMARK] = {.name = "remark", .field = RODT_FIELD_NONE},
};

const record_key record_check_keys[CHECK_KEYS] = {
    [CHECK_NAME] = {.name = "check", .needed = true},
    [CHECK_PRESSURE] = {.name = "pressure"},
    [CHECK_BEFORE] = {.name = "before"},
    [CHECK_AFTER] = {.name = "after"},
    [CHECK_SECONDS] = {.name = "seconds"},
    [CHECK_SPAN] = {.name = "span"},
    [CHECK_APPLICATIONS] = {.name = "applications", .most = 99},
    [CHECK_CUT_OUT] = {.name = "cut_out"},
    [CHECK_ACTUAL] = {.name = "reservoir_volume"},
    [CHECK_REQUIRED] = {.name = "required_volume"},
    [CHECK_ANSWER] = {.name = "answer"},
    [CHECK_REMARK] = {.name = "remark"},
};

const record_key record_unit_keys[UNIT_KEYS] = {
    [UNIT_KIND] = {.name = "kind", .needed = true},
    [UNIT_PLATE] = {.name = "plate"},
    [UNIT_AXLES] = {.name = "axles", .most = RODT_AXLES_MAX},
};

const record_key record_step_keys[STEP_KEYS] = {
    [STEP_NAME] = {.name = "step", .needed = true},
    [STEP_ANSWER] = {.name = "answer", .needed = true},
};

const char *record_key_name(const record_key *key)
{
    return key->name != NULL ? key->name : rodt_field_name(key->field);
}

bool record_length_unit(const inspection_record *record, RODT_ENUM32(rodt_unit) *out)
{
    const char *text = record->head[HEAD_LENGTH_UNIT].text;
    *out = RODT_UNIT_IN;
    return text == NULL || rodt_unit_parse_n(text, strlen(text), out, NULL) == RODT_OK;
}

int record_find_step(const inspection_record *record, const char *name)
{
    for (size_t i = 0; i < record->step_count; i++) {
        if (strcmp(record->steps[i][STEP_NAME].text, name) == 0)
            return (int)i;
    }
    return -1;
}

const char *record_step(const inspection_record *record, const char *name)
{
    int step = record_find_step(record, name);
    return step < 0 ? NULL : record->steps[step][STEP_ANSWER].text;
}

bool record_may_tow(const inspection_record *record)
{
    const char *vehicle = record->head[HEAD_VEHICLE].text;
    return vehicle == NULL || (strcmp(vehicle, "single") != 0 && strcmp(vehicle, "bus") != 0);
}

bool record_format_unit(const inspection_record *record, size_t index, char text[UNIT_TEXT_SIZE])
{
    if (index >= record->unit_count)
        return false;
    const record_value *unit = record->units[index];
    const char *plate = unit[UNIT_PLATE].text;
    int axles = unit[UNIT_AXLES].number, used;
    used = snprintf(text, UNIT_TEXT_SIZE, "%.20s%s%.400s", say(unit[UNIT_KIND].text), plate != NULL ? " " : "",
                    plate != NULL ? plate : "");
    if (axles > 0)
        snprintf(text + used, UNIT_TEXT_SIZE - (size_t)used,
                 say_number(", %d axle", ", %d axles", (unsigned long)axles), axles);
    return true;
}

/* Of a check its title, but in English, where its name is one. */
static const char *say_subject(const char *name, char text[SAID_SIZE])
{
    rodt_air_check check = air_check_of(name);
    if (check == RODT_AIR_CHECK_NONE || strcmp(chosen_language(), "en") == 0)
        return name;
    (void)air_check_title(check, text);
    snprintf(text + strlen(text), SAID_SIZE - strlen(text), ",");
    return text;
}

bool record_bare_step(const char *name, char bare[RECORD_WHERE_SIZE])
{
    size_t size = strlen(name), tail = strlen(STEP_REPLACED);
    bool replaced = size > tail && strcmp(name + size - tail, STEP_REPLACED) == 0;
    snprintf(bare, RECORD_WHERE_SIZE, "%.*s", (int)(replaced ? size - tail : size), name);
    return replaced;
}

const char *record_say_step(const char *name, char text[SAID_SIZE])
{
    char bare[RECORD_WHERE_SIZE], title[SAID_SIZE];
    bool replaced = record_bare_step(name, bare);
    char *blank = strrchr(bare, ' ');
    if (blank != NULL)
        *blank = '\0';
    snprintf(text, SAID_SIZE, "%.700s%s%.200s%.40s", blank != NULL ? say_subject(bare, title) : "",
             blank != NULL ? " " : "", say(blank != NULL ? blank + 1 : bare), replaced ? say(STEP_REPLACED) : "");
    return text;
}

const char *record_say_replaced(const char *text, char said[SAID_SIZE])
{
    char word[RECORD_WHERE_SIZE];
    for (size_t used = 0; ; used = strlen(said)) {
        const char *when = strstr(text, " (");
        size_t size = when != NULL ? (size_t)(when - text) : strlen(text);
        size_t rest = when != NULL ? strcspn(when, ";") : 0;
        snprintf(word, sizeof word, "%.*s", (int)size, text);
        text += size;
        rest += strspn(text + rest, "; ");
        snprintf(said + used, SAID_SIZE - used, "%s%.*s", say(word), (int)rest, text);
        text += rest;
        if (*text == '\0')
            return said;
    }
}
