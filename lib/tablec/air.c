/* SPDX-License-Identifier: Apache-2.0 */
/* Consistency checks of the tables of air checks and of volumes. */
#include <string.h>

#include "rules/air_row.h"
#include "tablec/steps.h"

static void check_air_row(tables *t, const air_row *air)
{
    if (tables_rules(t, air->rules) == NULL)
        tables_fault(t, FILE_AIR, air->line, "rule set \"%s\" is not in the table of rule sets", air->rules);
    char fault[RODT_ERROR_TEXT_SIZE];
    if (!rodti_air_row_fits(&air->row, fault, sizeof fault))
        tables_fault(t, FILE_AIR, air->line, "%s", fault);
    tables_cite(t, FILE_AIR, air->line, &air->cited);
}

static bool clash(const air_row *a, const air_row *b)
{
    return strcmp(a->rules, b->rules) == 0 && rodti_air_rows_clash(&a->row, &b->row);
}

void tables_check_air(tables *t)
{
    for (size_t i = 0; i < t->air_count; i++) {
        check_air_row(t, &t->air[i]);
        for (size_t k = 0; k < i; k++) {
            if (clash(&t->air[k], &t->air[i]))
                tables_fault(t, FILE_AIR, t->air[i].line, "the check is in line %u already",
                             (unsigned)t->air[k].line);
        }
    }
}

static bool is_same_volume(const volume_line *a, const volume_line *b)
{
    return a->what == b->what && strcmp(a->row.size, b->row.size) == 0;
}

static void check_volume(tables *t, const volume_line *line)
{
    bool chamber = line->what == VOLUME_CHAMBER;
    if (line->row.volume.num <= 0)
        tables_fault(t, FILE_VOLUMES, line->line, "the figure must be above zero");
    if (chamber && rodt_length_compare(line->row.stroke_from, line->row.stroke_until) >= 0)
        tables_fault(t, FILE_VOLUMES, line->line, "the full strokes are not in order");
    if (!chamber && (line->row.size[0] != '\0' || rodt_length_given(line->row.stroke_from) ||
                     rodt_length_given(line->row.stroke_until)))
        tables_fault(t, FILE_VOLUMES, line->line, "a multiple has neither a size nor a full stroke");
    tables_cite(t, FILE_VOLUMES, line->line, &line->cited);
}

void tables_check_volumes(tables *t)
{
    size_t count[VOLUME_WHATS] = {0};
    for (size_t i = 0; i < t->volume_count; i++) {
        check_volume(t, &t->volumes[i]);
        count[t->volumes[i].what]++;
        for (size_t k = 0; k < i; k++) {
            if (is_same_volume(&t->volumes[k], &t->volumes[i]))
                tables_fault(t, FILE_VOLUMES, t->volumes[i].line, "the volume is in line %u already",
                             (unsigned)t->volumes[k].line);
        }
    }
    for (size_t what = 0; what < VOLUME_WHATS; what++) {
        if (count[what] == 0)
            tables_fault(t, FILE_VOLUMES, 0, "no row for \"%s\"", volume_words[what]);
    }
}
