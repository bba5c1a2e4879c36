/* SPDX-License-Identifier: Apache-2.0 */
/* What every step of the table compiler uses: faults, texts, look-ups, words. */
#include "tablec/model.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

const char *const vehicle_part_words[VEHICLE_PARTS] = {
    [VEHICLE_SHARE] = "share",       [VEHICLE_FULL_FROM] = "full_from", [VEHICLE_HALF] = "half",
    [VEHICLE_CHART] = "chart",       [VEHICLE_STEERING] = "steering",   [VEHICLE_AXLE_SIZE] = "axle_size",
    [VEHICLE_AXLE_ARM] = "axle_arm", [VEHICLE_ADJUSTER] = "adjuster"};
const char *const volume_words[VOLUME_WHATS] = {"chamber", "truck", "trailer"};
const char *const step_when_words[STEP_WHENS] = {"always", "row", "combination", "limits"};

void tables_fault(tables *t, int file, uint32_t line, const char *format, ...)
{
    fprintf(stderr, "%s:%u: ", t->paths[file], (unsigned)line);
    va_list arguments;
    va_start(arguments, format);
    vfprintf(stderr, format, arguments);
    va_end(arguments);
    fputc('\n', stderr);
    t->faults++;
}

const char *tables_file_name(const tables *t, int file)
{
    const char *slash = strrchr(t->paths[file], '/');
    return slash == NULL ? t->paths[file] : slash + 1;
}

const char *tables_keep(tables *t, const char *text)
{
    size_t size = strlen(text) + 1;
    if (size > sizeof t->pool - t->pool_used) {
        tables_fault(t, t->current, 0, "the tables hold more text than the compiler has room for");
        return "";
    }
    char *kept = t->pool + t->pool_used;
    memcpy(kept, text, size);
    t->pool_used += size;
    return kept;
}

source_row *tables_source(tables *t, const char *id)
{
    for (size_t i = 0; i < t->source_count; i++) {
        if (strcmp(t->sources[i].source.id, id) == 0)
            return &t->sources[i];
    }
    return NULL;
}

rules_row *tables_rules(tables *t, const char *id)
{
    for (size_t i = 0; i < t->rules_count; i++) {
        if (strcmp(t->rules[i].id, id) == 0)
            return &t->rules[i];
    }
    return NULL;
}

bool tables_one_chamber(const limit_row *a, const limit_row *b)
{
    return a->row.family == b->row.family && strcmp(a->row.size, b->row.size) == 0 &&
           a->row.stroke_class == b->row.stroke_class &&
           rodt_length_compare(a->row.rated_stroke, b->row.rated_stroke) == 0;
}

bool tables_limit_holds(const tables *t, const rules_row *rules, const limit_row *limit)
{
    if (strcmp(limit->rules, rules->id) == 0)
        return true;
    if (rules->limits_of == NULL || strcmp(limit->rules, rules->limits_of) != 0)
        return false;
    for (size_t i = 0; i < t->limit_count; i++) {
        if (strcmp(t->limits[i].rules, rules->id) == 0 && tables_one_chamber(&t->limits[i], limit))
            return false;
    }
    return true;
}

bool tables_has_air(const tables *t, const char *rules)
{
    for (size_t i = 0; i < t->air_count; i++) {
        if (strcmp(t->air[i].rules, rules) == 0)
            return true;
    }
    return false;
}

void tables_cite(tables *t, int file, uint32_t line, const citation *cited)
{
    source_row *source = tables_source(t, cited->source);
    if (source == NULL) {
        tables_fault(t, file, line, "source \"%s\" is not in the table of sources", cited->source);
        return;
    }
    source->used = true;
    /* A table without a column of evidence holds what was read. */
    bool checked = cited->evidence <= RODT_EVIDENCE_CHECKED;
    source->cited[file][checked ? RODT_EVIDENCE_CHECKED : cited->evidence]++;
    if (checked && !rodt_date_given(source->read_on))
        tables_fault(t, file, line, "source \"%s\" has no day on which it was read", cited->source);
}
