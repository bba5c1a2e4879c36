/* SPDX-License-Identifier: Apache-2.0 */
/* What the record before this one found: a new day does not make it good. */
#include "input/air_words.h"
#include "record/record.h"
#include "ui/format.h"
#include "ui/language.h"

#include <stdio.h>
#include <string.h>

/* The next name of the list, which ends at a semicolon. */
static const char *next_defect(const char *list, size_t *size)
{
    list += strspn(list, "; ");
    *size = strcspn(list, ";");
    return list;
}

/* A check by its title, an axle by its number, a wheel end as it is in the list. */
static const char *title_of(const char *name, size_t size, char title[SAID_SIZE])
{
    char number[RECORD_WHERE_SIZE];
    snprintf(title, SAID_SIZE, "%.*s", (int)size, name);
    rodt_air_check check = air_check_of(title);
    if (check != RODT_AIR_CHECK_NONE)
        return air_check_title(check, title);
    if (strncmp(title, AXLE_DEFECT, strlen(AXLE_DEFECT)) != 0)
        return title;
    snprintf(number, sizeof number, "%.20s", title + strlen(AXLE_DEFECT));
    snprintf(title, SAID_SIZE, say("axle %s"), number);
    return title;
}

const char *record_last_repair(const inspection_record *record)
{
    const char *repair = record_step(record, STEP_FROM_REPAIR);
    return repair != NULL ? repair : say("not recorded");
}

bool record_last_has(const inspection_record *record, const char *name)
{
    const char *at = record_step(record, STEP_FROM_DEFECTS);
    for (size_t size; at != NULL && *(at = next_defect(at, &size)) != '\0'; at += size) {
        if (strlen(name) == size && strncmp(at, name, size) == 0)
            return true;
    }
    return false;
}

bool record_format_last(const inspection_record *record, char text[RECORD_LAST_SIZE])
{
    const char *at = record_step(record, STEP_FROM_DEFECTS);
    char list[RECORD_DEFECTS_SIZE] = "", title[SAID_SIZE];
    for (size_t size; at != NULL && *(at = next_defect(at, &size)) != '\0'; at += size) {
        size_t used = strlen(list);
        snprintf(list + used, sizeof list - used, "%s%s", used > 0 ? "; " : "", title_of(at, size, title));
    }
    if (list[0] != '\0')
        snprintf(text, RECORD_LAST_SIZE, say("Last record: DEFECTIVE (%s). Repair: %s."), list,
                 record_last_repair(record));
    return list[0] != '\0';
}
